/* Cables that share the way lie side by side: each run has its own place in the bundle and its own pattern of line, the
 * same from one end to the other. Beyond seven the rest are drawn as one. */
#include "layout_private.h"

#include <math.h>

enum { LINES_MOST = 7 };

static const double pitch_mm = 1.5, bundle_mm = 5.0;

static int line_count(const struct RouteLayout *layout)
{
    return layout->plan->run_count < LINES_MOST ? layout->plan->run_count : LINES_MOST;
}

static int line_of(const struct RouteLayout *layout, int run)
{
    int last = line_count(layout) - 1;
    return run < last ? run : last;
}

struct Pen layout_cable_pen(const struct RouteLayout *layout, int run)
{
    static const enum Dash patterns[LINES_MOST] = {DASH_NONE, DASH_LONG, DASH_CHAIN, DASH_SHORT,
                                                   DASH_NONE, DASH_LONG, DASH_SHORT};
    int line = line_of(layout, run), count = line_count(layout);
    double width_mm = count == 1 ? WIDTH_CABLE : line < 4 ? 0.8 : WIDTH_THING;
    return (struct Pen){INK_BLACK, width_mm, patterns[line]};
}

static double line_pitch(const struct RouteLayout *layout)
{
    int count = line_count(layout);
    return count < 2 ? 0 : fmin(pitch_mm, bundle_mm / (count - 1));
}

double layout_cable_offset(const struct RouteLayout *layout, int run)
{
    return (line_of(layout, run) - (line_count(layout) - 1) / 2.0) * line_pitch(layout);
}

double layout_cable_spread(const struct RouteLayout *layout)
{
    return (line_count(layout) - 1) / 2.0 * line_pitch(layout);
}
