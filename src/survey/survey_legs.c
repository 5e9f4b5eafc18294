/* The legs of a run: cable that goes down into the ground and comes up out of it, between one stretch and the next. */
#include "survey.h"

#include <math.h>

static const struct Segment *stretch_at(const struct Survey *survey, const struct Run *run, int at)
{
    return at < 0 || at >= run->along_count ? NULL : &survey->segments[run->along[at]];
}

/* How deep the cable lies on a stretch; above ground and beyond an end of the run it lies at the surface. */
static double depth_of(const struct Segment *segment)
{
    return segment != NULL && survey_in_ground(segment->way) ? segment->depth_m.value : 0;
}

static bool said_included(const struct Segment *segment)
{
    return segment != NULL && survey_in_ground(segment->way) && segment->legs == LEGS_INCLUDED;
}

bool survey_leg(const struct Survey *survey, const struct Run *run, int at, struct Leg *out)
{
    const struct Segment *before = stretch_at(survey, run, at - 1);
    const struct Segment *after = stretch_at(survey, run, at);
    const double down_m = depth_of(after) - depth_of(before);
    if (!(fabs(down_m) > 1e-9)) {
        return false;
    }
    *out = (struct Leg){.length_m = fabs(down_m),
                        .down = down_m > 0,
                        .included = said_included(before) || said_included(after),
                        .stretch = down_m > 0 ? at : at - 1};
    return true;
}

double survey_leg_m(const struct Survey *survey, const struct Run *run, int stretch)
{
    double length_m = 0;
    struct Leg leg = {0};
    for (int at = stretch; at <= stretch + 1; at++) {
        if (survey_leg(survey, run, at, &leg) && leg.stretch == stretch && !leg.included) {
            length_m += leg.length_m;
        }
    }
    return length_m;
}

double survey_electrical_m(const struct Survey *survey, const struct Run *run)
{
    double length_m =
        run->start.tail_m.value + run->start.loop_m.value + run->finish.tail_m.value + run->finish.loop_m.value;
    for (int i = 0; i < run->along_count; i++) {
        length_m += survey->segments[run->along[i]].length_m.value + survey_leg_m(survey, run, i);
    }
    return length_m;
}

int survey_before(const struct Survey *survey, int segment)
{
    int before = -1;
    for (int r = 0; r < survey->run_count; r++) {
        const struct Run *run = &survey->runs[r];
        const int at = survey_stretch(run, segment);
        if (at < 1 || run->along[at - 1] >= segment) {
            continue;
        }
        if (run->along[at - 1] == segment - 1) {
            return segment - 1;
        }
        before = before < 0 ? run->along[at - 1] : before;
    }
    return before < 0 ? segment - 1 : before;
}
