/* Whether a data cable may lie with power in one duct, conduit or trunking. BS 7671 528.1 asks that it is insulated for
 * the highest voltage there, or has a duct or a compartment of its own; armour round the power is not taken for that.
 * What voltage a data cable is insulated for only its maker says: without it the check is not made. */
#include "mechanics_private.h"

#include <math.h>

bool segregation_due(const struct Survey *survey, const struct Run *run, int segment)
{
    if (run->kind != RUN_DATA) {
        return false;
    }
    const enum Way way = survey->segments[segment].way;
    if (!survey_shut_in(way)) {
        return false;
    }
    const struct Segment *there = &survey->segments[segment];
    return survey_powered(survey, segment) || (there->has_beside && there->beside.circuits > 0 && survey_enclosed(way));
}

/* Between any two conductors of the supply: two circuits may be on two lines. */
static double highest_v(const struct Supply *supply)
{
    return supply->voltage_v.value * (supply->phases == 3 ? sqrt(3.0) : 1);
}

bool segregation_passes(const struct Survey *survey, const struct Run *run)
{
    const struct Quantity *insulated_v = &run->cable.insulated_for_v;
    return insulated_v->given && within(highest_v(&survey->supply), insulated_v->value);
}

static void work(struct Arena *arena, const struct Supply *supply, struct Check *out)
{
    struct Steps steps = steps_begin(arena);
    const char *u0 = steps_number(&steps, supply->voltage_v.value);
    const bool three = supply->phases == 3;
    steps_figure(&steps, say_term(SAY_STEP_HIGHEST_VOLTAGE), say_calculation(three ? "sqrt(3) x U0" : "U0"),
                 three ? arena_print(arena, "sqrt(3) x %s", u0) : "", out->limit, UNIT_V,
                 say_term(SAY_STEP_AS_SURVEYED));
    steps_figure(&steps, say_term(SAY_STEP_DATA_INSULATION), say_term(SAY_STEP_MAKERS_FIGURE), "", out->value, UNIT_V,
                 say_term(SAY_STEP_AS_SURVEYED));
    steps_end(&steps, out);
}

void decide_segregation(const struct RunDesign *run, const struct Trial *trial, int stretch, struct Check *out)
{
    (void)trial;
    (void)stretch;
    const struct Quantity *insulated_v = &run->run->cable.insulated_for_v;
    out->value = insulated_v->given ? insulated_v->value : 0;
    out->limit = highest_v(&run->survey->supply);
    out->at_least = true;
    if (!insulated_v->given) {
        check_unsettled(out, settles_key("cable: insulated-for"), NULL);
        return;
    }
    out->result = segregation_passes(run->survey, run->run) ? CHECK_PASS : CHECK_FAIL;
}

void say_segregation(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int stretch,
                     struct Check *out)
{
    (void)trial;
    const struct SayArg own =
        say_term(survey_way(segment_at(run, stretch)->way)->round == ROUND_TRUNKING ? SAY_A_COMPARTMENT_OF_ITS_OWN
                                                                                    : SAY_A_DUCT_OF_ITS_OWN);
    const struct SayArg least = say_fixed(ceil(out->limit - 1e-9), 0, UNIT_V);
    if (out->unknown) {
        out->text = say(arena, SAY_SEGREGATION_NOT_SURVEYED, least, own);
        return;
    }
    const struct SayArg has = say_digits(out->value, 4, UNIT_V);
    out->text = out->result == CHECK_PASS ? say(arena, SAY_SEGREGATION_MAY_SHARE, has, least)
                                          : say(arena, SAY_SEGREGATION_KEEP_OUT, has, least, own);
    work(arena, &run->survey->supply, out);
}
