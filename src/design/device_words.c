/* The device as a counter has to be asked for it: what was surveyed, what a rule demands where the survey is silent,
 * and what stays open. */
#include "design/faults/fault_private.h"

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
    const struct LocationRule *rule =
        location_residual_rule(work->edition, work->survey->job.location, work->run, work->rating_a);
    return work->run->use == USE_CHARGING ? clause_figures()->charging_residual_a : rule != NULL ? rule->value : 0;
}

/* The code names the device alone; its pieces are the same in every language. */
static void code_device(struct TextBuilder *code, struct Arena *arena, const struct RunDesign *work)
{
    const struct Device *device = &work->run->device;
    text_add(code, survey_word(WORDS_DEVICE, (int)device->kind));
    if (breaker(device)) {
        text_print(code, "-%s", survey_word(WORDS_CURVE, (int)device->curve));
    } else {
        text_add(code, device->kind == DEVICE_GG ? "-fuse-BS-88-2" : "-fuse");
    }
    text_print(code, "-%s-A", number_significant(arena, work->rating_a, 4));
    if (device->residual_a.given) {
        text_print(code, "-%s-mA", number_significant(arena, device->residual_a.value * 1000, 4));
    }
}

static void code_residual(struct TextBuilder *code, struct Arena *arena, const struct RunDesign *work)
{
    const struct Device *device = &work->run->device;
    const enum ResidualType type = device->residual_type_given ? device->residual_type : RESIDUAL_A;
    const double due_a = demanded_a(work);
    if (!device->residual_a.given && due_a > 0) {
        text_print(code, "-%s-mA", number_significant(arena, due_a * 1000, 4));
    } else if (!device->residual_a.given) {
        text_add(code, "-residual-open");
    }
    text_print(code, "-%s%s", survey_word(WORDS_RESIDUAL_TYPE, (int)type), device->time_delayed ? "-S" : "");
}

/* A breaker's; a fuse is bought for each line. */
static void code_poles(struct TextBuilder *code, const struct RunDesign *work)
{
    const int lines = work->demand.currents.lines;
    if (!residual(&work->run->device)) {
        text_print(code, "-%dp", lines);
    } else if (lines == 3 || breaks_neutral(work)) {
        text_print(code, "-%dp", lines + (survey_neutral(work->run, lines) ? 1 : 0));
    } else {
        text_add(code, "-1pn");
    }
    if (work->run->device.senses_neutral && lines == 3) {
        text_add(code, "-n");
    }
}

/* The least that it may break where its breaking capacity is open, kA; 0 not known. */
static double breaking_least_ka(const struct RunDesign *work)
{
    const double least_a = fault_current_any_a(work);
    return least_a > 0 ? ceil(least_a / 100 - 1e-9) / 10 : 0;
}

static void code_breaking(struct TextBuilder *code, struct Arena *arena, const struct RunDesign *work)
{
    const struct Quantity *given = &work->run->device.breaking_capacity_a;
    const double least_ka = breaking_least_ka(work);
    if (given->given) {
        text_print(code, "-%skA", number_significant(arena, given->value / 1000, 4));
    } else if (least_ka > 0) {
        text_print(code, "-open%skA", number_text(arena, least_ka, 1));
    } else {
        text_add(code, "-open");
    }
}

static const char *code_of(struct Arena *arena, const struct RunDesign *work)
{
    struct TextBuilder code = text_builder(arena);
    code_device(&code, arena, work);
    if (residual(&work->run->device)) {
        code_residual(&code, arena, work);
    }
    if (breaker(&work->run->device)) {
        code_poles(&code, work);
    }
    code_breaking(&code, arena, work);
    return text_done(&code);
}

/* BS EN 60898-1 and 61009-1, clause 6, from memory: the rated current after the letter of its curve, the rated residual
 * current, S in a box for a selective one, the breaking capacity in amperes in a box. */
static const struct Say *marks_said(struct Arena *arena, const struct RunDesign *work)
{
    const struct Device *device = &work->run->device;
    const struct Quantity *residual_a = &device->residual_a;
    const struct Quantity *breaking_a = &device->breaking_capacity_a;
    if (!breaker(device)) {
        return NULL;
    }
    return say(arena, SAY_DEVICE_MARKED, say_word(WORDS_CURVE, (int)device->curve),
               say_digits(work->rating_a, 4, UNIT_A),
               residual_a->given ? say_digits(residual_a->value, 4, UNIT_A) : say_term(SAY_NOTHING),
               say_term(residual(device) && device->time_delayed ? SAY_S_IN_A_BOX : SAY_NOTHING),
               say_part(breaking_a->given ? say(arena, SAY_IN_A_BOX, say_digits(breaking_a->value, 6, UNIT_A)) : NULL),
               say_name(device->kind == DEVICE_RCBO ? "BS EN 61009-1" : "BS EN 60898-1"));
}

static const struct Say *note_of(struct Arena *arena, const struct RunDesign *work)
{
    const struct Device *device = &work->run->device;
    const bool delayed = residual(device) && device->time_delayed;
    const bool type_open = residual(device) && !device->residual_type_given;
    const bool lacks = !residual(device) && work->run->feeds != FEEDS_BOARD && demanded_a(work) > 0;
    const struct Say *const remarks[] = {
        marks_said(arena, work),
        delayed ? say(arena, SAY_DELAYED_HARDLY_STOCKED) : NULL,
        type_open ? say(arena, SAY_TYPE_NOT_SURVEYED) : NULL,
        lacks ? say(arena, SAY_LACKS_RESIDUAL, residual_ma(demanded_a(work))) : NULL,
        say(arena, breaker(device) ? SAY_OF_THE_BOARDS_MAKE : SAY_FUSE_ALONE),
    };
    const struct Say *note = NULL;
    for (size_t i = 0; i < sizeof remarks / sizeof remarks[0]; i++) {
        note = say_list(arena, SAY_SEMICOLON, note, say_part(remarks[i]));
    }
    return note;
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
    const double least_ka = breaking_least_ka(work);
    if (given->given) {
        return say(arena, SAY_BREAKING_CAPACITY, say_digits(given->value / 1000, 4, UNIT_KA));
    }
    return least_ka > 0 ? say(arena, SAY_BREAKING_CAPACITY_LEAST, say_fixed(least_ka, 1, UNIT_KA))
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
    out->device_full = full_said(design->arena, work);
    out->device_code = code_of(design->arena, work);
    out->device_note = note_of(design->arena, work);
}
