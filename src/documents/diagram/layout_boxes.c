/* Draws the boxes under a strip and the leaders to them. Places and texts are settled before. */
#include "layout_private.h"

static const struct Pen leader_pen = {INK_GREY, WIDTH_HAIR, DASH_NONE};
static const struct Pen box_pen = {INK_GREY, WIDTH_HAIR, DASH_NONE};
static const struct Pen governing_pen = {INK_BLACK, WIDTH_HEAVY, DASH_NONE};

/* Straight down out of the field, slanting to the box's place, and for the second row down between two boxes. */
static void draw_leader(struct Drawing *drawing, const struct Label *label, const struct StripPlaces *places,
                        double top_mm)
{
    drawing_path(drawing, leader_pen, INK_NONE);
    drawing_move(drawing, label->at_mm, top_mm);
    drawing_to(drawing, label->at_mm, places->field_end_mm);
    drawing_to(drawing, label->entry_mm, places->row_mm[0] - 1.2);
    drawing_to(drawing, label->entry_mm, places->row_mm[label->row]);
}

static void draw_sign(const struct RouteLayout *layout, struct Drawing *drawing, const struct Label *label, double x_mm,
                      double y_mm)
{
    if (label->is_end) {
        layout_draw_end(drawing, label->sign, x_mm, y_mm);
    } else {
        layout_draw_number(drawing, layout->sign_radius_mm, x_mm, y_mm, label->sign);
    }
}

static void draw_box(const struct RouteLayout *layout, struct Drawing *drawing, const struct Label *label,
                     struct DrawBox box)
{
    static const struct TextStyle name_style = {.size_mm = TYPE_PLAIN, .bold = true, .ink = INK_BLACK};
    static const struct TextStyle line_style = {.size_mm = TYPE_SMALL, .ink = INK_BLACK};
    static const struct TextStyle strong_style = {.size_mm = TYPE_SMALL, .bold = true, .ink = INK_BLACK};
    drawing_rect(drawing, label->governs ? governing_pen : box_pen, INK_WHITE, box.left_mm, box.top_mm,
                 box.right_mm - box.left_mm, box.bottom_mm - box.top_mm);
    draw_sign(layout, drawing, label, box.left_mm + layout->sign_radius_mm + 1.6,
              box.top_mm + layout->sign_radius_mm + 1.4);
    double y_mm = box.top_mm + BOX_PAD_TOP + 3.2;
    for (int i = 0; i < label->name_count; i++, y_mm += NAME_PITCH) {
        drawing_text(drawing, name_style, box.left_mm + 2 * layout->sign_radius_mm + 2.8, y_mm, label->names[i]);
    }
    y_mm = box.top_mm + BOX_PAD_TOP + layout_box_head(layout, label) + 4.1;
    for (int i = 0; i < label->line_count; i++, y_mm += LINE_PITCH) {
        bool strong = i >= label->line_count - label->strong_count;
        drawing_text(drawing, strong ? strong_style : line_style, box.left_mm + 2, y_mm, label->lines[i]);
    }
    for (int i = 0; i < label->flag_count; i++, y_mm += LINE_PITCH) {
        if (i == 0) {
            layout_draw_flag(drawing, box.left_mm + 2.3, y_mm + 0.3, 2.7);
        }
        drawing_text(drawing, strong_style, box.left_mm + 2 + FLAG_INDENT, y_mm, label->flags[i]);
    }
}

void layout_draw_labels(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                        const struct StripPlaces *places, const double *leader_top_mm)
{
    for (int i = 0; i < strip->label_count; i++) {
        draw_leader(drawing, &strip->labels[i], places, leader_top_mm[i]);
    }
    for (int i = 0; i < strip->label_count; i++) {
        const struct Label *label = &strip->labels[i];
        double top_mm = places->row_mm[label->row];
        struct DrawBox box = {label->left_mm, top_mm, label->left_mm + strip->box_width_mm,
                              top_mm + strip->row_height_mm[label->row]};
        draw_box(layout, drawing, label, box);
    }
}
