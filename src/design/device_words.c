/* The device as a counter has to be asked for it: what was surveyed, what a rule demands where the survey is silent,
 * and what stays open. */
#include "design/faults/fault_private.h"
#include "plan/say.h"

#include <math.h>

static bool breaker(const struct Device *device)
{
    return device->kind == DEVICE_MCB || device->kind == DEVICE_RCBO;
}

static bool residual(const struct Device *device)
{
    return device->kind == DEVICE_RCBO || device->residual_a.given;
}

/* 722.531.3 for charging points, 708.415.1 and 709.531.2 for pitches and berths; on a TT supply the neutral is no
 * earthed conductor to be relied on (all but the first from memory). */
static bool breaks_neutral(const struct RunDesign *work)
{
    const enum Location location = work->survey->job.location;
    return work->run->use == USE_CHARGING || work->tt || location == LOCATION_CARAVAN_PARK ||
           location == LOCATION_MARINA;
}

/* The residual current that a rule asks for where the survey gives none: 722.531.3 for charging points, else what the
 * kind of place asks (411.3.3, Part 7). 0: none does. */
static double demanded_a(const struct RunDesign *work)
{
    const struct LocationRule *rule = location_residual_rule(work->survey->job.location, work->run, work->rating_a);
    return work->run->use == USE_CHARGING ? 0.030 : rule != NULL ? rule->value : 0;
}

static void add_residual(struct TextBuilder *text, struct TextBuilder *code, struct Arena *arena,
                         const struct RunDesign *work)
{
    const struct Device *device = &work->run->device;
    if (!device->residual_a.given) {
        const double due_a = demanded_a(work);
        const char *due = number_significant(arena, due_a * 1000, 4);
        text_add(text, due_a > 0 ? arena_print(arena, " %s mA", due) : ", residual current: ask");
        text_add(code, due_a > 0 ? arena_print(arena, "-%s-mA", due) : "-residual-open");
    }
    const enum ResidualType type = device->residual_type_given ? device->residual_type : RESIDUAL_A;
    text_print(text, ", type %s%s", survey_word(WORDS_RESIDUAL_TYPE, (int)type),
               device->time_delayed ? ", time-delayed (S)" : "");
    text_print(code, "-%s%s", survey_word(WORDS_RESIDUAL_TYPE, (int)type), device->time_delayed ? "-S" : "");
}

static void add_poles(struct TextBuilder *text, struct TextBuilder *code, const struct RunDesign *work)
{
    const struct Device *device = &work->run->device;
    const int lines = work->demand.currents.lines;
    if (!breaker(device)) {
        return; /* a fuse is bought for each line */
    }
    const bool neutral = survey_neutral(work->run, lines);
    if (!residual(device)) {
        text_print(text, ", %d-pole", lines);
        text_print(code, "-%dp", lines);
    } else if (lines == 3 || breaks_neutral(work)) {
        const int poles = lines + (neutral ? 1 : 0);
        text_print(text, ", %d-pole%s", poles, neutral ? ", breaks the neutral" : "");
        text_print(code, "-%dp", poles);
    } else {
        text_add(text, ", 1-pole and neutral");
        text_add(code, "-1pn");
    }
    if (device->senses_neutral && lines == 3) {
        text_add(text, ", overcurrent release in the neutral too");
        text_add(code, "-n");
    }
}

static void add_breaking(struct TextBuilder *text, struct TextBuilder *code, struct Arena *arena,
                         const struct RunDesign *work)
{
    const struct Quantity *given = &work->run->device.breaking_capacity_a;
    if (given->given) {
        const char *capacity = number_significant(arena, given->value / 1000, 4);
        text_print(text, ", breaking capacity %s kA", capacity);
        text_print(code, "-%skA", capacity);
        return;
    }
    const double least_a = fault_current_any_a(work);
    const char *least = least_a > 0 ? number_text(arena, ceil(least_a / 100 - 1e-9) / 10, 1) : "";
    text_add(text, ", breaking capacity: ask");
    text_add(code, "-open");
    if (least_a > 0) {
        text_print(text, ", not below %s kA", least);
        text_print(code, "%skA", least);
    }
}

/* BS EN 60898-1 and 61009-1, clause 6, from memory: the rated current after the letter of its curve, the rated residual
 * current, S in a box for a selective one, the breaking capacity in amperes in a box. */
static void add_marks(struct TextBuilder *note, struct Arena *arena, const struct RunDesign *work)
{
    const struct Device *device = &work->run->device;
    if (!breaker(device)) {
        return;
    }
    text_print(note, "marked %s%s", survey_word(WORDS_CURVE, (int)device->curve),
               number_significant(arena, work->rating_a, 4));
    if (device->residual_a.given) {
        text_print(note, ", %s A", number_significant(arena, device->residual_a.value, 4));
    }
    text_add(note, residual(device) && device->time_delayed ? ", S in a box" : "");
    if (device->breaking_capacity_a.given) {
        text_print(note, ", %s in a box", number_significant(arena, device->breaking_capacity_a.value, 6));
    }
    text_print(note, " (%s clause 6, from memory); ", device->kind == DEVICE_RCBO ? "BS EN 61009-1" : "BS EN 60898-1");
}

static const char *note_of(struct Arena *arena, const struct RunDesign *work)
{
    const struct Device *device = &work->run->device;
    struct TextBuilder note = text_builder(arena);
    add_marks(&note, arena, work);
    if (residual(device) && device->time_delayed) {
        text_add(&note, "a delayed RCBO is hardly stocked: or a delayed RCCB, BS EN 61008-1, with an MCB (common "
                        "practice, no source); ");
    }
    if (residual(device) && !device->residual_type_given) {
        text_add(&note,
                 "type A, not surveyed: AC is for loads known to draw no direct current (531.3.3, from memory); ");
    }
    if (!residual(device) && work->run->feeds != FEEDS_BOARD && demanded_a(work) > 0) {
        text_print(&note, "has no residual part: what it feeds wants one of %s mA; ",
                   number_significant(arena, demanded_a(work) * 1000, 4));
    }
    text_add(&note, breaker(device) ? "of the make and type that the board at the supply end takes"
                                    : "the fuse alone, one a line: its holder is not counted");
    return text_done(&note);
}

/* "RCBO B 32 A 30 mA" as a part of a code: blanks are strokes. */
static void add_device(struct TextBuilder *text, const char *blank, struct Arena *arena, const struct RunDesign *work)
{
    const struct Device *device = &work->run->device;
    text_add(text, survey_word(WORDS_DEVICE, (int)device->kind));
    if (breaker(device)) {
        text_print(text, "%s%s", blank, survey_word(WORDS_CURVE, (int)device->curve));
    } else {
        text_print(text, "%sfuse", blank);
        if (device->kind == DEVICE_GG) {
            text_print(text, "%sBS%s88-2", blank, blank);
        }
    }
    text_print(text, "%s%s%sA", blank, number_significant(arena, work->rating_a, 4), blank);
    if (device->residual_a.given) {
        text_print(text, "%s%s%smA", blank, number_significant(arena, device->residual_a.value * 1000, 4), blank);
    }
}

static const struct Say *type_said(struct Arena *arena, const struct Device *device)
{
    const enum ResidualType type = device->residual_type_given ? device->residual_type : RESIDUAL_A;
    return say(arena, SAY_RESIDUAL_TYPE, say_word(WORDS_RESIDUAL_TYPE, (int)type),
               say_term(device->time_delayed ? SAY_TIME_DELAYED : SAY_NOTHING));
}

static const struct Say *poles_said(struct Arena *arena, const struct RunDesign *work)
{
    const struct Device *device = &work->run->device;
    const int lines = work->demand.currents.lines;
    if (!breaker(device)) {
        return NULL; /* a fuse is bought for each line */
    }
    if (!residual(device)) {
        return say(arena, SAY_POLES, say_count(lines));
    }
    if (lines != 3 && !breaks_neutral(work)) {
        return say(arena, SAY_ONE_POLE_AND_NEUTRAL);
    }
    return survey_neutral(work->run, lines) ? say(arena, SAY_POLES_WITH_NEUTRAL, say_count(lines + 1))
                                            : say(arena, SAY_POLES, say_count(lines));
}

static const struct Say *breaking_said(struct Arena *arena, const struct RunDesign *work)
{
    const struct Quantity *given = &work->run->device.breaking_capacity_a;
    const double least_a = fault_current_any_a(work);
    if (given->given) {
        return say(arena, SAY_BREAKING_CAPACITY, say_digits(given->value / 1000, 4, UNIT_KA));
    }
    return least_a > 0 ? say(arena, SAY_BREAKING_CAPACITY_LEAST, say_fixed(ceil(least_a / 100 - 1e-9) / 10, 1, UNIT_KA))
                       : say(arena, SAY_BREAKING_CAPACITY_OPEN);
}

static const struct Say *full_said(struct Arena *arena, const struct RunDesign *work)
{
    const struct Device *device = &work->run->device;
    const bool has_residual = residual(device);
    const double residual_a = device->residual_a.given ? device->residual_a.value : has_residual ? demanded_a(work) : 0;
    const bool in_neutral = breaker(device) && device->senses_neutral && work->demand.currents.lines == 3;
    return say(arena, SAY_DEVICE_IN_FULL, say_part(device_said(arena, device, work->rating_a, residual_a)),
               say_term(has_residual && residual_a <= 0 ? SAY_RESIDUAL_OPEN : SAY_NOTHING),
               say_part(has_residual ? type_said(arena, device) : NULL), say_part(poles_said(arena, work)),
               say_term(in_neutral ? SAY_RELEASE_IN_NEUTRAL : SAY_NOTHING), say_part(breaking_said(arena, work)));
}

void device_describe(const struct Design *design, const struct RunDesign *work, struct PlanRun *out)
{
    struct Arena *arena = design->arena;
    struct TextBuilder text = text_builder(arena);
    struct TextBuilder code = text_builder(arena);
    add_device(&text, " ", arena, work);
    add_device(&code, "-", arena, work);
    if (residual(&work->run->device)) {
        add_residual(&text, &code, arena, work);
    }
    add_poles(&text, &code, work);
    add_breaking(&text, &code, arena, work);
    out->device_full = full_said(arena, work);
    out->device_full_text = text_done(&text);
    out->device_code = text_done(&code);
    out->device_note = note_of(arena, work);
}
