/* Marks that stand on the run or around it: numbers, letters, breaks, the ground. */
#include "layout_private.h"

#include <math.h>

static const struct Pen mark_pen = {INK_BLACK, WIDTH_PLAIN, DASH_NONE};
static const struct TextStyle mark_style = {
    .size_mm = TYPE_SMALL, .bold = true, .ink = INK_BLACK, .anchor = ANCHOR_MIDDLE};

void layout_draw_number(struct Drawing *drawing, double radius_mm, double x_mm, double y_mm, const char *number)
{
    drawing_circle(drawing, mark_pen, INK_WHITE, x_mm, y_mm, radius_mm);
    drawing_text(drawing, mark_style, x_mm, y_mm + 1, number);
}

void layout_draw_end(struct Drawing *drawing, const char *letter, double x_mm, double y_mm)
{
    drawing_rect(drawing, (struct Pen){INK_BLACK, WIDTH_BOLD, DASH_NONE}, INK_WHITE, x_mm - END_HALF, y_mm - END_HALF,
                 2 * END_HALF, 2 * END_HALF);
    drawing_text(drawing, mark_style, x_mm, y_mm + 1, letter);
}

void layout_draw_gland(struct Drawing *drawing, double wall_mm, double y_mm, double side)
{
    drawing_path(drawing, (struct Pen){INK_BLACK, WIDTH_THIN, DASH_NONE}, INK_BLACK);
    drawing_move(drawing, wall_mm, y_mm - 1.4);
    drawing_to(drawing, wall_mm - side * 2, y_mm - 0.6);
    drawing_to(drawing, wall_mm - side * 2, y_mm + 0.6);
    drawing_to(drawing, wall_mm, y_mm + 1.4);
    drawing_close(drawing);
}

void layout_draw_break(struct Drawing *drawing, double x_mm, double y_mm)
{
    drawing_path(drawing, (struct Pen){INK_NONE, 0, DASH_NONE}, INK_WHITE);
    drawing_move(drawing, x_mm - 1.5, y_mm + 3);
    drawing_to(drawing, x_mm + 0.3, y_mm - 3);
    drawing_to(drawing, x_mm + 1.5, y_mm - 3);
    drawing_to(drawing, x_mm - 0.3, y_mm + 3);
    drawing_close(drawing);
    drawing_path(drawing, mark_pen, INK_NONE);
    for (int i = 0; i < 2; i++) {
        double shift = i * 1.2;
        drawing_move(drawing, x_mm - 1.5 + shift, y_mm + 3);
        drawing_to(drawing, x_mm - 0.8 + shift, y_mm + 0.7);
        drawing_to(drawing, x_mm - 1.2 + shift, y_mm + 0.1);
        drawing_to(drawing, x_mm + shift, y_mm - 0.1);
        drawing_to(drawing, x_mm - 0.4 + shift, y_mm - 0.7);
        drawing_to(drawing, x_mm + 0.3 + shift, y_mm - 3);
    }
}

void layout_draw_ground(struct Drawing *drawing, enum Ground ground, double x1_mm, double y1_mm, double x2_mm,
                        double y2_mm, double stroke_mm)
{
    if (ground != GROUND_KNOWN) {
        drawing_line(drawing, (struct Pen){INK_GROUND, WIDTH_THIN, DASH_LONG}, x1_mm, y1_mm, x2_mm, y2_mm);
        return;
    }
    drawing_line(drawing, (struct Pen){INK_GROUND, WIDTH_PLAIN, DASH_NONE}, x1_mm, y1_mm, x2_mm, y2_mm);
    double pitch_mm = 2.4;
    drawing_path(drawing, (struct Pen){INK_GROUND, WIDTH_HAIR, DASH_NONE}, INK_NONE);
    int count = (int)floor((x2_mm - x1_mm - stroke_mm) / pitch_mm);
    for (int i = 0; i <= count; i++) {
        double x_mm = x1_mm + stroke_mm + i * pitch_mm;
        double y_mm = y1_mm + (y2_mm - y1_mm) * (x_mm - x1_mm) / (x2_mm - x1_mm);
        drawing_move(drawing, x_mm, y_mm);
        drawing_to(drawing, x_mm - stroke_mm, y_mm + stroke_mm);
    }
}
