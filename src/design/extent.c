/* What of a stretch goes on over the joins of the survey: insulation, the thickness of a wall, warm air.
 *
 * A survey may cut one length of insulation into two stretches; the cable is none the cooler for it. So insulation that
 * covers the whole of neighbouring stretches counts as one length, and so does a hole that was written as two. */
#include "design_private.h"

/* Length of a stretch that insulation touches, 0 where none does. */
static double insulated_m(const struct Segment *segment)
{
    const bool in_wall = segment->way == WAY_THROUGH_WALL && segment->wall == WALL_INSULATED_CAVITY;
    const bool touched = segment->insulation == INSULATION_SURROUNDED || segment->insulation == INSULATION_ONE_SIDE;
    return touched || in_wall ? segment->insulated_length_m.value : 0;
}

static bool wholly_insulated(const struct Segment *segment)
{
    const double length_m = insulated_m(segment);
    return length_m > 0 && within(segment->length_m.value, length_m);
}

static bool is_hole(const struct Segment *segment)
{
    return segment->way == WAY_THROUGH_WALL;
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

void place_extents(const struct Survey *survey, const struct Run *run, const int *loaded_runs, struct Extent *out)
{
    bool any_air = false;
    double warmest_degc = 0;
    for (int i = 0; i < run->along_count; i++) {
        const struct Segment *segment = &survey->segments[run->along[i]];
        if (!survey_in_ground(segment->way) && (!any_air || segment->air_degc.value > warmest_degc)) {
            warmest_degc = segment->air_degc.value;
            any_air = true;
        }
        out[i].surrounded_m = insulated_m(segment);
        out[i].other_runs = loaded_runs[run->along[i]] - 1;
    }
    double length_m;
    for (int i = 0; i < run->along_count; i++) {
        for (const int end = chain_end(survey, run, i, wholly_insulated, &length_m); i < end; i++) {
            out[i].surrounded_m = length_m;
        }
    }
    for (int i = 0; i < run->along_count; i++) {
        for (const int end = chain_end(survey, run, i, is_hole, &length_m); i < end; i++) {
            out[i].wall_m = length_m;
        }
    }
    for (int i = 0; i < run->along_count; i++) {
        const struct Segment *segment = &survey->segments[run->along[i]];
        out[i].warmest_degc = warmest_degc;
        if (segment->thickness_m.given && is_hole(segment)) {
            out[i].wall_m = segment->thickness_m.value;
        }
    }
}
