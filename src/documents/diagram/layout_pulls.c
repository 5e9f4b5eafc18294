/* The row between the elevation and its ribbon that says how the cable is drawn in: an arrow over each pull, away from
 * the drum, and squares where a cable can be got at. Forces stand in the boxes. Runs that are drawn in beside each
 * other have arrows below each other, each in the pattern of its run. */
#include "layout_private.h"

#include <math.h>

enum { ROWS_MOST = 3 };

static const double row_mm = 4.2, pit_half_mm = 1.3;

/* First and last stretch of a pull, in the order of the way. */
struct PullSpan {
    int first, last;
    bool to_right; /* the cable goes with the metres */
};

static struct PullSpan span_of(const struct PlanRun *run, const struct PlanPull *pull)
{
    int a = run->settled->along[pull->first], b = run->settled->along[pull->first + pull->count - 1];
    bool forward = layout_run_boundary(run->settled, false) < layout_run_boundary(run->settled, true);
    return (struct PullSpan){a < b ? a : b, a < b ? b : a, forward != pull->from_far};
}

static bool in_strip(const struct Strip *strip, struct PullSpan span)
{
    return span.first <= strip->last && span.last >= strip->first;
}

static bool run_is_drawn(const struct PlanRun *run, const struct Strip *strip)
{
    for (int i = 0; i < run->pull_count; i++) {
        if (in_strip(strip, span_of(run, &run->pulls[i]))) {
            return true;
        }
    }
    return false;
}

static int row_count(const struct RouteLayout *layout, const struct Strip *strip)
{
    int rows = 0;
    for (int i = 0; i < layout->plan->run_count && rows < ROWS_MOST; i++) {
        rows += run_is_drawn(&layout->plan->runs[i], strip);
    }
    return rows;
}

double layout_pulls_height(const struct RouteLayout *layout, const struct Strip *strip)
{
    int rows = row_count(layout, strip);
    return rows > 0 ? rows * row_mm + 0.8 : 0;
}

bool layout_any_pull(const struct Plan *plan)
{
    for (int i = 0; i < plan->run_count; i++) {
        if (plan->runs[i].pull_count > 0) {
            return true;
        }
    }
    return false;
}

void layout_draw_pit(struct Drawing *drawing, double x_mm, double y_mm, bool surveyed)
{
    drawing_rect(drawing, (struct Pen){INK_BLACK, WIDTH_PLAIN, surveyed ? DASH_NONE : DASH_SHORT}, INK_WHITE,
                 x_mm - pit_half_mm, y_mm - pit_half_mm, 2 * pit_half_mm, 2 * pit_half_mm);
    if (surveyed) {
        drawing_line(drawing, (struct Pen){INK_BLACK, WIDTH_THIN, DASH_NONE}, x_mm - pit_half_mm, y_mm + pit_half_mm,
                     x_mm + pit_half_mm, y_mm - pit_half_mm);
    }
}

void layout_draw_arrow(struct Drawing *drawing, struct Pen pen, double from_mm, double to_mm, double y_mm)
{
    double side = to_mm > from_mm ? 1 : -1;
    drawing_line(drawing, pen, from_mm, y_mm, to_mm - side * 1.6, y_mm);
    drawing_path(drawing, (struct Pen){INK_BLACK, WIDTH_THIN, DASH_NONE}, INK_BLACK);
    drawing_move(drawing, to_mm, y_mm);
    drawing_to(drawing, to_mm - side * 2.4, y_mm - 1);
    drawing_to(drawing, to_mm - side * 2.4, y_mm + 1);
    drawing_close(drawing);
}

/* A pull that goes on in another strip has its head only where it ends. */
static void draw_pull(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip, int run,
                      const struct PlanPull *pull, double y_mm)
{
    struct PullSpan span = span_of(&layout->plan->runs[run], pull);
    if (!in_strip(strip, span)) {
        return;
    }
    const struct Stretch *first = &layout->stretches[span.first > strip->first ? span.first : strip->first];
    const struct Stretch *last = &layout->stretches[span.last < strip->last ? span.last : strip->last];
    struct Pen pen = layout_cable_pen(layout, run);
    pen.width_mm = WIDTH_PLAIN;
    double left_mm = first->x_mm + 0.8, right_mm = last->x_mm + last->width_mm - 0.8;
    bool ends_here = span.to_right ? span.last <= strip->last : span.first >= strip->first;
    double from_mm = span.to_right ? left_mm : right_mm, to_mm = span.to_right ? right_mm : left_mm;
    if (ends_here) {
        layout_draw_arrow(drawing, pen, from_mm, to_mm, y_mm);
    } else {
        drawing_line(drawing, pen, from_mm, y_mm, to_mm, y_mm);
    }
    if (pull->either && pull->worked) { /* no end is better: a head at both */
        layout_draw_arrow(drawing, pen, to_mm, from_mm, y_mm);
    }
}

/* Where one pit would do, from the start of the pull along the run. */
static void draw_wanted_pit(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                            const struct PlanRun *run, const struct PlanPull *pull, double y_mm)
{
    double left_m = pull->pit_at_m;
    bool forward = layout_run_boundary(run->settled, false) < layout_run_boundary(run->settled, true);
    for (int i = pull->first; i < pull->first + pull->count && pull->pit_at_m > 0; i++) {
        int index = run->settled->along[i];
        const struct Stretch *stretch = &layout->stretches[index];
        if (left_m <= stretch->length_m + 0.005) {
            double part = fmin(left_m / stretch->length_m, 1);
            if (index >= strip->first && index <= strip->last) {
                layout_draw_pit(drawing, stretch->x_mm + stretch->width_mm * (forward ? part : 1 - part), y_mm, false);
            }
            return;
        }
        left_m -= stretch->length_m;
    }
}

static void draw_surveyed_pits(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                               double y_mm)
{
    for (int i = strip->first; i <= strip->last; i++) {
        const struct Stretch *stretch = &layout->stretches[i];
        enum Pits pits = stretch->segment->surveyed->pits;
        if (pits == PITS_START || pits == PITS_BOTH) {
            layout_draw_pit(drawing, stretch->x_mm, y_mm, true);
        }
        if (pits == PITS_END || pits == PITS_BOTH) {
            layout_draw_pit(drawing, stretch->x_mm + stretch->width_mm, y_mm, true);
        }
    }
}

void layout_draw_pulls(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                       double top_mm)
{
    static const struct TextStyle grey_style = {.size_mm = TYPE_SMALL, .ink = INK_GREY};
    int rows = row_count(layout, strip), row = 0;
    if (rows == 0) {
        return;
    }
    drawing_text(drawing, grey_style, INNER_LEFT, top_mm + 3.1, "drawn in");
    for (int i = 0; i < layout->plan->run_count && row < rows; i++) {
        const struct PlanRun *run = &layout->plan->runs[i];
        if (!run_is_drawn(run, strip)) {
            continue;
        }
        double y_mm = top_mm + (row + 0.5) * row_mm;
        for (int k = 0; k < run->pull_count; k++) {
            draw_pull(layout, drawing, strip, i, &run->pulls[k], y_mm);
            draw_wanted_pit(layout, drawing, strip, run, &run->pulls[k], y_mm);
        }
        draw_surveyed_pits(layout, drawing, strip, y_mm);
        row++;
    }
}
