/* Whether the cable goes round the bends of a segment. The radius is the inside one, of bend and of table. */
#include "mechanics_private.h"

#include <math.h>

/* A data cable's maker may allow less without a screen; whether it has one was not surveyed. */
static bool bend_factor(enum CableType type, double size_mm2, double overall_mm, double *out_factor)
{
    if (cable_kind(type)->bend == BEND_DATA) {
        *out_factor = bend_radius_data_factor(true);
        return true;
    }
    return bend_radius_factor(type, size_mm2, overall_mm, out_factor);
}

static enum Trust bend_trust(enum CableType type)
{
    return cable_kind(type)->bend == BEND_DATA ? bend_radius_data_ref()->trust : bend_radius_trust(type);
}

static struct SayArg bend_source(struct Arena *arena, enum CableType type)
{
    return say_part(table_row_said(
        arena, cable_kind(type)->bend == BEND_DATA ? bend_radius_data_ref() : bend_radius_ref(), bend_trust(type)));
}

bool bend_least_radius_mm(enum CableType type, double size_mm2, double overall_mm, double *out_mm)
{
    double factor;
    if (!bend_factor(type, size_mm2, overall_mm, &factor)) {
        return false;
    }
    *out_mm = factor * overall_mm;
    return true;
}

struct Bends bend_look(const struct Segment *segment)
{
    struct Bends bends = {0};
    for (int i = 0; i < segment->bend_count; i++) {
        const struct Bend *bend = &segment->bends[i];
        bends.total_deg += bend->angle_deg;
        if (!bend->radius_m.given) {
            bends.open++;
            continue;
        }
        if (bends.surveyed == 0 || bend->radius_m.value < bends.tightest_m) {
            bends.tightest_m = bend->radius_m.value;
        }
        bends.surveyed++;
    }
    return bends;
}

/* Bends that the cable's way brings with it, so that nobody chooses them when the cable is laid. */
static bool bends_are_there(const struct Segment *segment)
{
    return (survey_duct(segment->way) && segment->duct_laid == LAID_EXISTING) || survey_enclosed(segment->way);
}

struct SayArg say_needed_mm(double value_mm)
{
    return say_fixed(ceil(value_mm - 1e-9), 0, UNIT_MM);
}

struct SayArg say_there_mm(double value_mm)
{
    return say_fixed(floor(value_mm + 1e-9), 0, UNIT_MM);
}

static void work_bend(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                      const struct CableBody *body, struct Check *out)
{
    double factor;
    if (out->result == CHECK_NOT_DUE ||
        !bend_factor(run->run->cable.type, trial->size_mm2, body->overall_mm, &factor)) {
        return;
    }
    struct Steps steps = steps_begin(arena);
    const struct SayArg source = bend_source(arena, run->run->cable.type);
    steps_figure(&steps, say_term(SAY_STEP_OVERALL_DIAMETER), say_term(SAY_STEP_OF_THE_CABLE), "", body->overall_mm,
                 UNIT_MM, say_term(body->source));
    steps_figure(&steps, say_term(SAY_STEP_BEND_FACTOR), say_term(SAY_STEP_BY_KIND_AND_SIZE), "", factor, UNIT_NONE,
                 source);
    steps_figure(&steps, say_term(SAY_STEP_LEAST_RADIUS), say_term(SAY_STEP_FACTOR_TIMES_D),
                 arena_print(arena, "%s x %s", steps_number(&steps, factor), steps_number(&steps, body->overall_mm)),
                 out->limit, UNIT_MM, source);
    steps_figure(&steps, say_term(SAY_STEP_TIGHTEST_RADIUS), say_term(SAY_STEP_AS_SURVEYED), "", out->value, UNIT_MM,
                 say_term(SAY_STEP_AS_SURVEYED));
    steps_end(&steps, out);
}

/* A bend in a duct that the cable stands in place may still be tight to draw it through. */
static const struct Say *drawn_warning(struct Arena *arena, const struct RunDesign *run, const struct Segment *segment,
                                       const struct Bends *bends, double overall_mm)
{
    double factor;
    if (!survey_duct(segment->way) || bends->surveyed == 0 ||
        !bend_radius_drawn_factor(run->run->cable.type, &factor) ||
        within(factor * overall_mm, bends->tightest_m * 1000)) {
        return NULL;
    }
    return say(arena, SAY_BEND_DRAWN_THROUGH, say_fixed(factor * overall_mm, 0, UNIT_MM));
}

static const struct Say *word_bend(struct Arena *arena, const struct RunDesign *run, const struct Segment *segment,
                                   const struct Bends *bends, const struct CableBody *body, const struct Check *check)
{
    if (check->unknown) {
        return say(arena, SAY_BEND_RADIUS_MISSING, say_count(segment->bend_count), say_needed_mm(check->limit));
    }
    if (check->result == CHECK_NOT_DUE) {
        return say(arena, SAY_BEND_RADIUS_YOURS, say_needed_mm(check->limit));
    }
    return say_then(arena, say(arena, SAY_BEND_TIGHTEST, say_there_mm(check->value), say_needed_mm(check->limit)),
                    drawn_warning(arena, run, segment, bends, body->overall_mm));
}

/* How thick the cable is is not known; but no thinner than the least that it can be. */
static struct CableBody least_body(const struct RunDesign *run, const struct Trial *trial)
{
    return (struct CableBody){.overall_mm = mechanics_least_mm(&run->run->cable, trial->size_mm2),
                              .source = SAY_SOURCE_LEAST_DIAMETER};
}

static bool too_tight_at_least(const struct RunDesign *run, const struct Trial *trial, const struct Bends *bends,
                               struct Check *out)
{
    const struct CableBody body = least_body(run, trial);
    double least_mm;
    if (!(body.overall_mm > 0) || bends->surveyed == 0 ||
        !bend_least_radius_mm(run->run->cable.type, trial->size_mm2, body.overall_mm, &least_mm) ||
        within(least_mm, bends->tightest_m * 1000)) {
        return false;
    }
    out->at_least = true;
    out->limit = least_mm;
    out->value = bends->tightest_m * 1000;
    out->result = CHECK_FAIL;
    return true;
}

void decide_bend(const struct RunDesign *run, const struct Trial *trial, int stretch, struct Check *out)
{
    const struct Segment *segment = segment_at(run, stretch);
    const struct Cable *cable = &run->run->cable;
    const struct Bends bends = bend_look(segment);
    struct CableBody body;
    double least_mm;
    out->trust = bend_trust(cable->type);
    if (!mechanics_body(cable, trial->size_mm2, &body)) {
        if (!too_tight_at_least(run, trial, &bends, out)) {
            check_unsettled(out, settles_key("cable: diameter"), NULL);
        }
        return;
    }
    if (!bend_least_radius_mm(cable->type, trial->size_mm2, body.overall_mm, &least_mm)) {
        check_unsettled(out, settles_reading(SAY_SETTLED_BY_BEND_RADIUS), NULL);
        return;
    }
    if (cable_kind(cable->type)->bend == BEND_DATA) {
        out->cite = (struct Cite){.standard = "ISO/IEC 11801"};
        out->rule = SAY_RULE_DATA_BENDS;
    }
    out->at_least = true;
    out->limit = least_mm;
    out->value = bends.tightest_m * 1000;
    if (bends.surveyed > 0 && !within(least_mm, out->value)) {
        out->result = CHECK_FAIL;
    } else if (bends.open > 0 && bends_are_there(segment)) {
        check_unsettled(out, settles_key("bends: radius"), NULL);
    } else {
        out->result = bends.surveyed > 0 ? CHECK_PASS : CHECK_NOT_DUE;
    }
}

void say_bend(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int stretch,
              struct Check *out)
{
    const struct Segment *segment = segment_at(run, stretch);
    const struct Bends bends = bend_look(segment);
    struct CableBody body;
    double least_mm;
    if (!mechanics_body(&run->run->cable, trial->size_mm2, &body)) {
        out->text = say(arena, SAY_THIS_DIAMETER_NOT_HELD);
        if (out->result == CHECK_FAIL) {
            body = least_body(run, trial);
            out->text =
                say(arena, SAY_BEND_TIGHTEST_OF_CABLE_NOT_HELD, say_there_mm(out->value), say_needed_mm(out->limit));
            work_bend(arena, run, trial, &body, out);
        }
    } else if (!bend_least_radius_mm(run->run->cable.type, trial->size_mm2, body.overall_mm, &least_mm)) {
        out->text = say(arena, SAY_BEND_NO_LEAST_RADIUS);
    } else {
        out->text = word_bend(arena, run, segment, &bends, &body, out);
        work_bend(arena, run, trial, &body, out);
    }
}

const struct PlanBend *plan_bends(struct Arena *arena, const struct RunDesign *run, const struct PlanRun *planned,
                                  int *out_count)
{
    struct PlanBend *list = arena_array(arena, (size_t)run->run->along_count + 1, sizeof *list);
    int at = 0;
    *out_count = 0;
    for (int i = 0; list != NULL && i < run->run->along_count; i++) {
        const struct Segment *segment = segment_at(run, i);
        const struct Check *check = segment->bend_count > 0 ? mechanics_next(planned, "bend", &at) : NULL;
        if (check != NULL) {
            const struct Bends bends = bend_look(segment);
            list[(*out_count)++] = (struct PlanBend){.segment = run->run->along[i],
                                                     .count = segment->bend_count,
                                                     .total_deg = bends.total_deg,
                                                     .tightest_mm = bends.tightest_m * 1000,
                                                     .least_mm = check->limit,
                                                     .result = check->result,
                                                     .unknown = check->unknown,
                                                     .text = check->text};
        }
    }
    return list;
}
