/* Where nobody said what place it is: for which kinds of place the plan as it stands would fall short. */
#include "fault_private.h"

/* What a kind of place would ask for beyond what the plan has. */
struct Short {
    double residual_a; /* 0 nothing */
    bool earth, depth;
};

static void short_of_depth(const struct Edition *edition, const struct Survey *survey, const struct Run *run,
                           enum Location location, struct Short *out)
{
    const bool asked = location_asks_depth(edition, location);
    for (int i = 0; asked && i < run->along_count && !out->depth; i++) {
        const struct Segment *segment = &survey->segments[run->along[i]];
        const struct LocationRule *rule =
            survey_in_ground(segment->way) ? location_depth_rule(edition, location, segment) : NULL;
        out->depth = rule != NULL && !within(rule->value, segment->depth_m.value);
    }
}

static struct Short short_of(const struct Survey *survey, const struct Plan *plan, enum Location location)
{
    struct Short found = {0};
    const bool exports = survey->supply.system == SYSTEM_TN_C_S && survey->earthing.far_end != FAR_END_ISLAND;
    found.earth =
        exports && !location_takes_earth(location_rule(plan->edition, location, TOPIC_EARTH), &survey->earthing);
    for (int r = 0; r < plan->run_count; r++) {
        const struct PlanRun *run = &plan->runs[r];
        const struct LocationRule *rule =
            run->rated ? location_residual_rule(plan->edition, location, run->settled, run->rating_a) : NULL;
        if (rule != NULL && !location_residual_met(rule, &run->settled->device)) {
            const bool stricter = found.residual_a <= 0 || rule->value < found.residual_a;
            found.residual_a = stricter ? rule->value : found.residual_a;
        }
        if (run->rated) {
            short_of_depth(plan->edition, survey, run->settled, location, &found);
        }
    }
    return found;
}

/* What a kind of place is asked for; `residual_a` 0 looks at the earth or the depth. */
struct Need {
    double residual_a;
    bool earth;
};

static bool has_need(const struct Short *found, const struct Need *need)
{
    if (need->residual_a > 0) {
        return found->residual_a > 0 && !(found->residual_a < need->residual_a) &&
               !(found->residual_a > need->residual_a);
    }
    return need->earth ? found->earth : found->depth;
}

/* "farm, event"; NULL when there is none. */
static const struct Say *places(struct Arena *arena, const struct Short *found, const struct Need *need)
{
    const struct Say *list = NULL;
    for (int i = 0; i < LOCATION_COUNT; i++) {
        if (i != LOCATION_ORDINARY && has_need(&found[i], need)) {
            list = say_list(arena, SAY_COMMA, list, say_word(WORDS_LOCATION, i));
        }
    }
    return list;
}

const struct Say *location_would_change(struct Arena *arena, const struct Survey *survey, const struct Plan *plan)
{
    const double *residual_a = NULL;
    const int residuals = residual_ratings(&residual_a);
    struct Short found[LOCATION_COUNT];
    for (int i = 0; i < LOCATION_COUNT; i++) {
        found[i] = short_of(survey, plan, (enum Location)i);
    }
    const struct Say *all = NULL;
    for (int i = 0; i < residuals; i++) {
        const struct Say *where = places(arena, found, &(struct Need){.residual_a = residual_a[i]});
        if (where != NULL) {
            const struct SayArg residual = residual_ma(residual_a[i]);
            all = say_list(arena, SAY_SEMICOLON, all,
                           say_part(say(arena, SAY_RESIDUAL_DEVICE_FOR, residual, say_part(where))));
        }
    }
    const struct Say *earth = places(arena, found, &(struct Need){.earth = true});
    const struct Say *depth = places(arena, found, &(struct Need){0});
    if (earth != NULL) {
        all = say_list(arena, SAY_SEMICOLON, all, say_part(say(arena, SAY_OTHER_EARTH_FOR, say_part(earth))));
    }
    if (depth != NULL) {
        all = say_list(arena, SAY_SEMICOLON, all, say_part(say(arena, SAY_MORE_DEPTH_FOR, say_part(depth))));
    }
    return all;
}
