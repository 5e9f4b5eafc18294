/* Strips, one a sheet: as many segments on each as its sheet holds with all that is said of them, so that a route that
 * fits one sheet stands on one. The scale of each strip is the finest with which it fits the axis; the scale of heights
 * is one for all. */
#include "layout_private.h"

#include <math.h>

enum { COLUMNS_MOST = 12, COLUMNS_LEAST = 5, COLUMNS_CROWDED = 8 };

static const double column_most_mm = 60, profile_least_mm = 23.5, profile_good_mm = 36, profile_most_mm = 66;

double layout_round_step(int step)
{
    static const double leads[] = {1, 2, 5};
    const int tens = step / 3 - 1;
    return leads[step % 3] * pow(10, tens);
}

double layout_fitting_scale(double length_m, double room_mm, double least)
{
    static const double leads[] = {1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 7.5};
    enum { LEADS = (int)(sizeof leads / sizeof leads[0]), TENS_MOST = 8 };
    for (int step = LEADS; step < LEADS * TENS_MOST; step++) {
        const int tens = step / LEADS;
        const double scale = leads[step % LEADS] * pow(10, tens);
        if (scale >= least && length_m * 1000 / scale <= room_mm) {
            return scale;
        }
    }
    return 1e9;
}

double layout_up_mm(const struct RouteLayout *layout, double height_m)
{
    return height_m * 1000 / layout->up;
}

static double strip_length(const struct RouteLayout *layout, const struct Strip *strip)
{
    return layout->stretches[strip->last].segment->to_m - layout->stretches[strip->first].segment->from_m;
}

static void place_strip(struct RouteLayout *layout, struct Strip *strip)
{
    const int count = strip->last - strip->first + 1;
    strip->column_mm = fmin(column_most_mm, CELLS_WIDTH / count);
    strip->across = layout_fitting_scale(strip_length(layout, strip), AXIS_WIDTH, 10);
    for (int i = strip->first; i <= strip->last; i++) {
        struct Stretch *stretch = &layout->stretches[i];
        stretch->x_mm = AXIS_LEFT + (stretch->segment->from_m - layout->stretches[strip->first].segment->from_m) *
                                        1000 / strip->across;
        stretch->width_mm = (stretch->segment->to_m - stretch->segment->from_m) * 1000 / strip->across;
        stretch->cell_mm = CELLS_LEFT + (i - strip->first) * strip->column_mm;
    }
}

/* What the sheet holds beside the profile. */
static double rest_of(const struct RouteLayout *layout, const struct Strip *strip)
{
    const int own = bands_count(layout) - layout->plan->run_count;
    double rest_mm = sheet_heading_height(layout, strip->first == 0) + sheet_foot_height() +
                     strip_block_height(layout, strip) - strip->profile_mm;
    rest_mm += strip->first == 0 ? runs_table_height(layout) : 0;
    for (int i = 0; i < (strip->holds >= HOLDS_RUNS ? bands_count(layout) : own); i++) {
        rest_mm += band_height(layout, strip, i);
    }
    for (int i = 0; strip->holds >= HOLDS_KEYS && i < BELOW_COUNT; i++) {
        rest_mm += i == BELOW_ENDS && strip->holds < HOLDS_ALL ? 0 : below_height(layout, strip, (enum Below)i);
    }
    return rest_mm;
}

/* Strips of nearly the same number of segments. False as soon as one does not fit its sheet. */
static bool try_columns(struct RouteLayout *layout, int most, enum StripHolds holds, bool whatever)
{
    /* where the sheet need not hold all, the profile need not be as low as it can be */
    const double wanted_mm = holds == HOLDS_ALL || holds == HOLDS_ITSELF ? profile_least_mm : profile_good_mm;
    const int count = (layout->stretch_count + most - 1) / most;
    layout->strip_count = count;
    for (int s = 0; s < count; s++) {
        struct Strip *strip = &layout->strips[s];
        *strip = (struct Strip){.first = (int)((long long)layout->stretch_count * s / count),
                                .last = (int)((long long)layout->stretch_count * (s + 1) / count) - 1};
        strip->holds = holds;
        place_strip(layout, strip);
        strip->rest_mm = rest_of(layout, strip);
        const double left_mm = SHEET_HEIGHT - 2 * SHEET_MARGIN - strip->rest_mm;
        strip->profile_mm = fmin(fmax(left_mm, profile_least_mm), profile_most_mm);
        if (left_mm < wanted_mm && !whatever) {
            return false;
        }
    }
    return true;
}

static void choose_columns(struct RouteLayout *layout)
{
    for (int holds = HOLDS_ALL; holds >= HOLDS_ITSELF; holds--) {
        for (int most = COLUMNS_MOST; most >= COLUMNS_LEAST; most--) {
            if (try_columns(layout, most, (enum StripHolds)holds, false)) {
                return;
            }
        }
    }
    try_columns(layout, COLUMNS_CROWDED, HOLDS_ITSELF, true);
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
}

/* What the scale leaves of a profile's height stays white at the foot of the sheet, not between its bands. */
static void close_up(struct RouteLayout *layout)
{
    for (int s = 0; s < layout->strip_count; s++) {
        struct Strip *strip = &layout->strips[s];
        const double drawn_mm = layout_up_mm(layout, strip->high_m - strip->low_m) + profile_pads(layout);
        strip->profile_mm = fmin(strip->profile_mm, fmax(drawn_mm, profile_least_mm));
    }
}

/* The finest scale with which the heights of every strip fit its profile. What is in the ground depends on the scale.
 */
static void choose_up(struct RouteLayout *layout)
{
    bool fits = false;
    for (double least = 50; !fits && least < 1e8; least = layout->up * 1.001) {
        layout->up = layout_fitting_scale(0, 1, least);
        layout_heights(layout);
        fits = true;
        for (int s = 0; s < layout->strip_count; s++) {
            struct Strip *strip = &layout->strips[s];
            measure_strip(layout, strip);
            fits =
                fits && layout_up_mm(layout, strip->high_m - strip->low_m) <= strip->profile_mm - profile_pads(layout);
        }
    }
}

void layout_strips(struct RouteLayout *layout)
{
    layout->strips = arena_array(layout->arena, (size_t)layout->stretch_count, sizeof *layout->strips);
    if (layout->strips == NULL) {
        layout->failed = true;
        return;
    }
    layout->up = 100;
    layout_heights(layout); /* risers and steps are counted among the signs, whatever the scale */
    choose_columns(layout);
    choose_up(layout);
    close_up(layout);
}
