/* What of a stretch goes on over the joins of the survey: insulation, the thickness of a wall, warm air.
 *
 * A survey may cut one length of insulation into two stretches; the cable is none the cooler for it. So insulation that
 * covers the whole of neighbouring stretches counts as one length, and so does a hole that was written as two. Where
 * only a part of a stretch is insulated nobody says which: it counts as lying at the cut, against the longer neighbour.
 */
#include "rating_private.h"

/* Length of a stretch that insulation touches, 0 where none does. */
static double insulated_m(const struct Segment *segment)
{
    const bool in_wall = survey_hole(segment->way) && segment->wall == WALL_INSULATED_CAVITY;
    const bool touched = segment->insulation == INSULATION_SURROUNDED || segment->insulation == INSULATION_ONE_SIDE;
    if (touched || in_wall) {
        return segment->insulated_length_m.value;
    }
    return survey_way(segment->way)->round == ROUND_STUDS ? segment->length_m.value : 0;
}

static bool wholly_insulated(const struct Segment *segment)
{
    const double length_m = insulated_m(segment);
    return length_m > 0 && within(segment->length_m.value, length_m);
}

static bool is_hole(const struct Segment *segment)
{
    return survey_hole(segment->way);
}

/* The end of the chain of stretches from `start` that belong together, and their length. */
static int chain_end(const struct Survey *survey, const struct Run *run, int start,
                     bool (*belongs)(const struct Segment *), double *length_m)
{
    int end = start;
    *length_m = 0;
    while (end < run->along_count && belongs(&survey->segments[run->along[end]])) {
        *length_m += survey->segments[run->along[end++]].length_m.value;
    }
    return end;
}

static bool is_pipe(const struct Segment *segment)
{
    return survey_enclosed(segment->way) || is_hole(segment);
}

/* Insulation that may reach a stretch from its neighbour, which itself is reached by `beyond_m`. */
static double reach_m(const struct Segment *neighbour, double beyond_m)
{
    return insulated_m(neighbour) + (wholly_insulated(neighbour) ? beyond_m : 0);
}

static void join_insulation(const struct Survey *survey, const struct Run *run, struct Extent *out)
{
    double reach = 0;
    for (int i = 0; i < run->along_count; i++) {
        const struct Segment *segment = &survey->segments[run->along[i]];
        out[i].insulated_m = insulated_m(segment);
        out[i].surrounded_m = reach; /* what reaches it from before */
        reach = reach_m(segment, reach);
    }
    reach = 0;
    for (int i = run->along_count - 1; i >= 0; i--) {
        const struct Segment *segment = &survey->segments[run->along[i]];
        const double before = out[i].surrounded_m;
        const double others = wholly_insulated(segment) ? before + reach : before > reach ? before : reach;
        out[i].surrounded_m = out[i].insulated_m > 0 ? out[i].insulated_m + others : 0;
        reach = reach_m(segment, reach);
    }
}

static void warm(struct Extent *out, const struct Segment *neighbour)
{
    if (neighbour != NULL && neighbour->air_degc.value > out->warmest_degc) {
        out->warmest_degc = neighbour->air_degc.value;
        out->air_as = neighbour->name;
    }
}

/* The air of a hole that does not say: the route's own, or that of the stretches in air that it lies between. */
static void find_air(const struct Survey *survey, const struct Run *run, struct Extent *out)
{
    const struct Segment *last = NULL;
    for (int i = 0; i < run->along_count; i++) {
        const struct Segment *segment = &survey->segments[run->along[i]];
        out[i].warmest_degc = segment->air_degc.value;
        out[i].air_as = NULL;
        warm(&out[i], last);
        last = is_hole(segment) ? last : survey_in_ground(segment->way) ? NULL : segment;
    }
    last = NULL;
    for (int i = run->along_count - 1; i >= 0; i--) {
        const struct Segment *segment = &survey->segments[run->along[i]];
        warm(&out[i], last);
        last = is_hole(segment) ? last : survey_in_ground(segment->way) ? NULL : segment;
    }
}

void place_extents(const struct Survey *survey, const struct Run *run, const int *loaded_runs, struct Extent *out)
{
    join_insulation(survey, run, out);
    find_air(survey, run, out);
    double length_m;
    for (int i = 0; i < run->along_count; i++) {
        out[i].other_runs = loaded_runs[run->along[i]] - 1;
        out[i].wall_m = out[i].pipe_m = 0;
    }
    for (int i = 0; i < run->along_count; i++) {
        for (const int end = chain_end(survey, run, i, is_pipe, &length_m); i < end; i++) {
            out[i].pipe_m = length_m;
        }
    }
    for (int i = 0; i < run->along_count; i++) {
        for (const int end = chain_end(survey, run, i, is_hole, &length_m); i < end; i++) {
            out[i].wall_m = length_m;
        }
    }
    for (int i = 0; i < run->along_count; i++) {
        const struct Segment *segment = &survey->segments[run->along[i]];
        if (segment->thickness_m.given && is_hole(segment)) {
            out[i].wall_m = segment->thickness_m.value;
        }
    }
}
