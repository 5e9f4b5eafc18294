/* The scale up. A finer one shows the way better but makes strips higher, so the finest is taken that needs no more
 * sheets than a modest one would. */
#include "layout_private.h"

#include <math.h>

static const double modest_mm = 20, most_mm = 70; /* drawn range of heights in a strip */
static const double steepest_ratio = 5;           /* how much finer than the scale across it may be */

double layout_up_mm(const struct RouteLayout *layout, double height_m)
{
    return height_m * 1000 / layout->up;
}

static void measure_strip(const struct RouteLayout *layout, struct Strip *strip)
{
    strip->low_m = INFINITY;
    strip->high_m = -INFINITY;
    for (int i = strip->first; i <= strip->last; i++) {
        const struct Stretch *stretch = &layout->stretches[i];
        strip->low_m = fmin(strip->low_m, fmin(stretch->from_m, stretch->to_m));
        strip->high_m = fmax(strip->high_m, fmax(stretch->from_m, stretch->to_m));
        if (stretch->ground != GROUND_NONE) {
            strip->low_m = fmin(strip->low_m, fmin(stretch->ground_from_m, stretch->ground_to_m));
            strip->high_m = fmax(strip->high_m, fmax(stretch->ground_from_m, stretch->ground_to_m));
        }
    }
    if (strip->first > 0) { /* where the strip before ends, in case there is a step */
        strip->low_m = fmin(strip->low_m, layout->stretches[strip->first - 1].to_m);
        strip->high_m = fmax(strip->high_m, layout->stretches[strip->first - 1].to_m);
    }
    if (strip->first == 0) { /* the level of the start belongs to the first strip */
        strip->low_m = fmin(strip->low_m, 0);
        strip->high_m = fmax(strip->high_m, 0);
    }
}

/* Heights depend on the scale: covers are drawn no shallower than can be seen. Returns the greatest drawn range. */
static double try_scale(struct RouteLayout *layout, double up)
{
    double range_m = 0;
    layout->up = up;
    layout_heights(layout);
    for (int s = 0; s < layout->strip_count; s++) {
        measure_strip(layout, &layout->strips[s]);
        range_m = fmax(range_m, layout->strips[s].high_m - layout->strips[s].low_m);
    }
    return layout_up_mm(layout, range_m);
}

/* A strip is never higher than a sheet: at the modest range the highest boxes in two rows still leave room. */
static bool fits_sheet(const struct RouteLayout *layout)
{
    for (int s = 0; s < layout->strip_count; s++) {
        if (layout_strip_places(layout, &layout->strips[s]).end_mm > layout_sheet_room(layout, false)) {
            return false;
        }
    }
    return true;
}

/* The table of runs alone on a sheet looks lost: the first strip stands below it when it can. */
bool layout_begins_on_first_sheet(const struct RouteLayout *layout)
{
    double table_mm = (layout->plan->run_count + 1) * RUN_ROW + RUN_GAP;
    return table_mm + layout_strip_places(layout, &layout->strips[0]).end_mm <= layout_sheet_room(layout, true);
}

bool layout_scale_up(struct RouteLayout *layout)
{
    int first = SCALE_FIRST;
    while (first < SCALE_STEPS - 1 && (layout_standard_scale(first) * steepest_ratio < layout->across ||
                                       try_scale(layout, layout_standard_scale(first)) > most_mm)) {
        first++;
    }
    int modest = first;
    while (modest < SCALE_STEPS - 1 && try_scale(layout, layout_standard_scale(modest)) > modest_mm) {
        modest++;
    }
    try_scale(layout, layout_standard_scale(modest));
    int sheets = layout_sheet_count(layout);
    bool begins = layout_begins_on_first_sheet(layout);
    for (int step = first; step <= modest; step++) {
        try_scale(layout, layout_standard_scale(step));
        if (fits_sheet(layout) && layout_sheet_count(layout) <= sheets &&
            (layout_begins_on_first_sheet(layout) || !begins)) {
            return true;
        }
    }
    return fits_sheet(layout);
}
