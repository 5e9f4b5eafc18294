/* The legs of a run as the plan holds them, and the question that a rise as long as the depth raises. */
#include "design.h"

#include "design/terms/design_private.h"

#include <math.h>

void describe_legs(const struct Design *design, const struct Run *run, struct PlanRun *out)
{
    struct PlanLeg *legs = arena_array(design->arena, (size_t)run->along_count + 1, sizeof *legs);
    struct Leg leg;
    for (int at = 0; legs != NULL && at <= run->along_count; at++) {
        if (!survey_leg(design->survey, run, at, &leg)) {
            continue;
        }
        const int other = leg.stretch == at ? at - 1 : at;
        legs[out->leg_count++] = (struct PlanLeg){
            .segment = run->along[leg.stretch],
            .other = other < 0 || other >= run->along_count ? -1 : run->along[other],
            .length_m = leg.length_m,
            .down = leg.down,
            .included = leg.included,
        };
        out->legs_m += leg.included ? 0 : leg.length_m;
    }
    out->legs = legs;
}

/* Whether a stretch goes up or down, as the leg does, by just as much. */
static bool rises_alike(const struct Survey *survey, const struct Run *run, int stretch, const struct Leg *leg)
{
    if (stretch < 0 || stretch >= run->along_count) {
        return false;
    }
    const double rise_m = survey->segments[run->along[stretch]].rise_m.value;
    return fabs(rise_m + (leg->down ? leg->length_m : -leg->length_m)) <= site_practice()->rise_alike_m;
}

/* The stretch whose rise may be that leg once more, -1: none. */
static int asked_about(const struct Survey *survey, const struct Run *run, int at, const struct Leg *leg)
{
    const int other = leg->stretch == at ? at - 1 : at;
    if (other >= 0 && other < run->along_count && survey_in_ground(survey->segments[run->along[other]].way)) {
        return -1; /* from one depth to another: such a small step is nobody's rise */
    }
    return rises_alike(survey, run, leg->stretch, leg) ? leg->stretch
           : rises_alike(survey, run, other, leg)      ? other
                                                       : -1;
}

static void ask(const struct Design *design, const struct Segment *ground, int index, const struct Leg *leg)
{
    const struct Segment *rising = &design->survey->segments[index];
    diag_report_of(design->diag, DIAG_SEGMENT(index), MSG_LEG_OR_FALL, rising->rise_m.mark, 1,
                   DIAG_WORDS(rising->name, diag_phrase(leg->down ? PHRASE_FALL : PHRASE_RISE),
                              number_significant(design->arena, fabs(rising->rise_m.value), 4),
                              diag_phrase(leg->down ? PHRASE_DOWN_INTO : PHRASE_UP_OUT_OF), ground->name,
                              number_significant(design->arena, leg->length_m, 4), ground->name));
}

/* Each stretch in the ground asks at most once, whoever follows it. */
bool warn_of_legs(const struct Design *design)
{
    const struct Survey *survey = design->survey;
    bool *asked = arena_array(design->arena, (size_t)survey->segment_count, sizeof *asked);
    for (int r = 0; asked != NULL && r < survey->run_count; r++) {
        const struct Run *run = &survey->runs[r];
        for (int at = 0; at <= run->along_count; at++) {
            struct Leg leg;
            if (!survey_leg(survey, run, at, &leg)) {
                continue;
            }
            const int ground = run->along[leg.stretch];
            const int rising = asked_about(survey, run, at, &leg);
            if (rising >= 0 && !asked[ground] && !survey->segments[ground].legs_given) {
                ask(design, &survey->segments[ground], run->along[rising], &leg);
                asked[ground] = true;
            }
        }
    }
    return asked != NULL;
}
