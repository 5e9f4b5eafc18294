/* The line of running metres above a strip: a tick and a number at every boundary; broken where a stretch is not to
 * scale. */
#include "layout_private.h"

static const struct Pen thin_pen = {INK_BLACK, WIDTH_THIN, DASH_NONE};

/* The number at boundary `index` of a strip, and where. */
static const char *chainage_at(const struct RouteLayout *layout, const struct Strip *strip, int index, double *x_mm)
{
    bool last = index > strip->last;
    const struct Stretch *stretch = &layout->stretches[last ? strip->last : index];
    *x_mm = stretch->x_mm + (last ? stretch->width_mm : 0);
    return layout_metres(layout, last ? stretch->segment->to_m : stretch->segment->from_m);
}

/* First row where there is room, else the second. Boundaries stand further apart than half a number is wide, so two
 * rows hold them all. With `drawing` NULL it only counts the rows. */
static int chainage_rows(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                         double line_mm)
{
    static const struct TextStyle style = {.size_mm = TYPE_SMALL, .ink = INK_BLACK, .anchor = ANCHOR_MIDDLE};
    double right_mm[2] = {0, 0};
    int rows = 1;
    for (int i = strip->first; i <= strip->last + 1; i++) {
        double x_mm = 0;
        const char *text = chainage_at(layout, strip, i, &x_mm);
        double half_mm = type_width_mm(text, style.size_mm, false) / 2;
        int row = x_mm - half_mm >= right_mm[0] ? 0 : 1;
        right_mm[row] = x_mm + half_mm + 1.2;
        rows = row == 1 ? 2 : rows;
        if (drawing != NULL) {
            drawing_text(drawing, style, x_mm, line_mm - 1.9 - row * CHAINAGE_PITCH, text);
        }
    }
    return rows;
}

void layout_chainage_rows(const struct RouteLayout *layout, struct Strip *strip)
{
    strip->chainage_rows = chainage_rows(layout, NULL, strip, 0);
}

void layout_draw_chainage(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                          double line_mm)
{
    static const struct TextStyle unit_style = {.size_mm = TYPE_SMALL, .ink = INK_GREY};
    drawing_text(drawing, unit_style, INNER_LEFT, line_mm - 1.9, "along, m");
    chainage_rows(layout, drawing, strip, line_mm);
    for (int i = strip->first; i <= strip->last; i++) {
        const struct Stretch *stretch = &layout->stretches[i];
        bool to_scale = !stretch->widened && !stretch->shortened;
        struct Pen pen = {INK_BLACK, WIDTH_PLAIN, to_scale ? DASH_NONE : DASH_SHORT};
        double right_mm = stretch->x_mm + stretch->width_mm;
        drawing_line(drawing, pen, stretch->x_mm, line_mm, right_mm, line_mm);
        drawing_line(drawing, thin_pen, right_mm, line_mm - 1, right_mm, line_mm + 1);
    }
    double left_mm = layout->stretches[strip->first].x_mm;
    drawing_line(drawing, thin_pen, left_mm, line_mm - 1, left_mm, line_mm + 1);
}
