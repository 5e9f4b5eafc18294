/* One strip of the elevation: running metres above, the run with its ground in the middle, boxes below. */
#include "layout_private.h"

#include <math.h>

static const double heading_mm = 4.2, field_pad_mm = 6.4, row_gap_mm = 2.2, strip_gap_mm = 3;

static const struct Pen cable_pen = {INK_BLACK, WIDTH_HEAVY, DASH_NONE};
static const struct Pen hair_pen = {INK_PALE, WIDTH_HAIR, DASH_NONE};
static const struct Pen thin_pen = {INK_BLACK, WIDTH_THIN, DASH_NONE};

static bool any_governing(const struct RouteLayout *layout, const struct Strip *strip)
{
    for (int i = strip->first; i <= strip->last; i++) {
        if (layout_governs(layout->plan, i)) {
            return true;
        }
    }
    return false;
}

/* Leaders that go far aside get more height for it. */
static double slant_height(const struct Strip *strip)
{
    double aside_mm = 0;
    for (int i = 0; i < strip->label_count; i++) {
        aside_mm = fmax(aside_mm, fabs(strip->labels[i].entry_mm - strip->labels[i].at_mm));
    }
    return fmin(4.6 + aside_mm / 14, 9);
}

struct StripPlaces layout_strip_places(const struct RouteLayout *layout, const struct Strip *strip)
{
    struct StripPlaces places = {.heading_mm = heading_mm};
    places.chainage_mm = heading_mm + 3 + strip->chainage_rows * CHAINAGE_PITCH;
    places.bracket_mm = places.chainage_mm + 2.6;
    places.elevation_mm = places.chainage_mm + (any_governing(layout, strip) ? 6.4 : 1.6);
    double range_mm = layout_up_mm(layout, strip->high_m - strip->low_m);
    places.zero_mm = places.elevation_mm + field_pad_mm + layout_up_mm(layout, strip->high_m);
    places.field_end_mm = places.elevation_mm + range_mm + 2 * field_pad_mm;
    places.row_mm[0] = places.field_end_mm + slant_height(strip);
    places.row_mm[1] = places.row_mm[0] + strip->row_height_mm[0] + row_gap_mm;
    places.end_mm = (strip->row_count == 2 ? places.row_mm[1] + strip->row_height_mm[1]
                                           : places.row_mm[0] + strip->row_height_mm[0]) +
                    strip_gap_mm;
    return places;
}

/* ---- the field of the elevation ---- */

struct Field {
    const struct RouteLayout *layout;
    struct Drawing *drawing;
    const struct Strip *strip;
    double top_mm, zero_mm, end_mm; /* on the sheet */
};

static double level_mm(const struct Field *field, double height_m)
{
    return field->zero_mm - layout_up_mm(field->layout, height_m);
}

/* The finest of 1, 2, 5 and their tens that keeps numbers 6 mm apart. */
static double axis_step(const struct RouteLayout *layout, int *decimals)
{
    static const double leads[] = {1, 2, 5};
    for (int step = 0;; step++) {
        int tens = step / 3 - 2;
        double step_m = leads[step % 3] * pow(10, tens);
        if (layout_up_mm(layout, step_m) >= 6 || step > 30) {
            *decimals = step < 3 ? 2 : step < 6 ? 1 : 0;
            return step_m;
        }
    }
}

static void draw_axis(const struct Field *field)
{
    static const struct TextStyle style = {.size_mm = TYPE_SMALL, .ink = INK_BLACK, .anchor = ANCHOR_RIGHT};
    static const struct TextStyle unit_style = {.size_mm = TYPE_SMALL, .ink = INK_GREY};
    struct Drawing *drawing = field->drawing;
    double x_mm = INNER_LEFT + 13;
    int decimals = 0;
    double step_m = axis_step(field->layout, &decimals);
    drawing_text(drawing, unit_style, INNER_LEFT, field->top_mm + 0.4, "height, m");
    drawing_line(drawing, thin_pen, x_mm, field->top_mm + 2, x_mm, field->end_mm - 1);
    double low_m = (field->zero_mm - (field->end_mm - 2)) / 1000 * field->layout->up;
    double high_m = (field->zero_mm - (field->top_mm + 5)) / 1000 * field->layout->up;
    for (double k = ceil(low_m / step_m); k * step_m <= high_m; k++) {
        double y_mm = level_mm(field, k * step_m);
        struct TextBuilder text = text_builder(drawing->arena);
        text_add(&text, k > 0 ? "+" : k < 0 ? "\xE2\x88\x92" : "");
        number_add(&text, fabs(k * step_m), k < 0 || k > 0 ? decimals : 0);
        drawing_text(drawing, style, x_mm - 1.8, y_mm + 1, text_done(&text));
        drawing_line(drawing, thin_pen, x_mm - 1.2, y_mm, x_mm, y_mm);
    }
}

static double drawn_cover(const struct RouteLayout *layout, const struct Stretch *stretch)
{
    return stretch->ground == GROUND_KNOWN ? layout_up_mm(layout, stretch->ground_from_m - stretch->from_m) : 0;
}

static void draw_surroundings(const struct Field *field)
{
    const struct RouteLayout *layout = field->layout;
    struct Drawing *drawing = field->drawing;
    if (!layout->known_ground && field->zero_mm > field->top_mm && field->zero_mm < field->end_mm) {
        struct Pen pen = {INK_GROUND, WIDTH_THIN, DASH_CHAIN};
        drawing_line(drawing, pen, INNER_LEFT + 13, field->zero_mm, INNER_RIGHT, field->zero_mm);
    }
    for (int i = field->strip->first; i <= field->strip->last; i++) {
        const struct Stretch *stretch = &layout->stretches[i];
        if (stretch->ground != GROUND_NONE) {
            layout_draw_ground(drawing, stretch->ground, stretch->x_mm, level_mm(field, stretch->ground_from_m),
                               stretch->x_mm + stretch->width_mm, level_mm(field, stretch->ground_to_m),
                               fmin(1.8, 0.4 * drawn_cover(layout, stretch)));
        }
    }
    for (int i = field->strip->first; i <= field->strip->last; i++) {
        const struct Stretch *stretch = &layout->stretches[i];
        const struct Segment *surveyed = stretch->segment->surveyed;
        double cover_mm = drawn_cover(layout, stretch);
        layout_draw_sign(drawing, surveyed->way, surveyed->insulation,
                         (struct SignPlace){stretch->x_mm, level_mm(field, stretch->from_m),
                                            stretch->x_mm + stretch->width_mm, level_mm(field, stretch->to_m),
                                            cover_mm >= 5 ? cover_mm * 0.45 : 0});
    }
}

/* Where an end's square stands: on the lower of the two sides, but only on what this strip shows. */
static double boundary_level(const struct Field *field, int boundary)
{
    const struct RouteLayout *layout = field->layout;
    double before_mm = level_mm(field, layout->stretches[boundary - 1].to_m);
    return boundary <= field->strip->last ? fmax(before_mm, level_mm(field, layout->stretches[boundary].from_m))
                                          : before_mm;
}

/* How much of the cable an end's square hides, along the cable. */
static double hidden_by_square(double dx_mm, double dy_mm)
{
    double length_mm = hypot(dx_mm, dy_mm);
    return END_HALF * length_mm / fmax(fabs(dx_mm), fabs(dy_mm));
}

/* A square stands on the lower side of a step: the cable on the upper side is drawn to its end. */
static bool square_at(const struct Field *field, int boundary, double y_mm)
{
    return layout_end_at(field->layout, boundary) >= 0 && fabs(boundary_level(field, boundary) - y_mm) < 0.01;
}

/* The cable is drawn up to the signs that stand on it and on from behind them: nothing is written across it. */
static void draw_stretch_cable(const struct Field *field, int index)
{
    const struct RouteLayout *layout = field->layout;
    const struct Stretch *stretch = &layout->stretches[index];
    double x1 = stretch->x_mm, y1 = level_mm(field, stretch->from_m);
    double dx = stretch->width_mm, dy = level_mm(field, stretch->to_m) - y1;
    double length = hypot(dx, dy), sign = layout->sign_radius_mm;
    bool end_before = index > field->strip->first && square_at(field, index, y1);
    bool end_after = index + 1 < layout->stretch_count && square_at(field, index + 1, y1 + dy);
    double from = end_before ? hidden_by_square(dx, dy) : 0;
    double to = length - (end_after ? hidden_by_square(dx, dy) : 0);
    const double cuts[4] = {from, length / 2 - sign, length / 2 + sign, to};
    drawing_path(field->drawing, cable_pen, INK_NONE);
    drawing_is_cable(field->drawing);
    for (int i = 0; i < 4; i += 2) {
        if (cuts[i + 1] > cuts[i]) {
            drawing_move(field->drawing, x1 + dx * cuts[i] / length, y1 + dy * cuts[i] / length);
            drawing_to(field->drawing, x1 + dx * cuts[i + 1] / length, y1 + dy * cuts[i + 1] / length);
        }
    }
    if (stretch->shortened) {
        double at = 0.76;
        layout_draw_break(field->drawing, x1 + dx * at, y1 + dy * at);
    }
    layout_draw_number(field->drawing, sign, x1 + dx / 2, y1 + dy / 2,
                       arena_print(layout->arena, "%d", stretch->number));
}

/* A step down into the ground or up out of it, at the boundary before a stretch. */
static void draw_step(const struct Field *field, int index)
{
    const struct Stretch *stretch = &field->layout->stretches[index];
    double before_mm = level_mm(field, field->layout->stretches[index - 1].to_m);
    double after_mm = level_mm(field, stretch->from_m);
    if (fabs(before_mm - after_mm) < 0.01) {
        return;
    }
    double low_mm = fmax(before_mm, after_mm);
    bool square = index > field->strip->first && layout_end_at(field->layout, index) >= 0;
    double hidden_mm = square ? END_HALF : 0;
    if (low_mm - hidden_mm > fmin(before_mm, after_mm)) {
        drawing_path(field->drawing, cable_pen, INK_NONE);
        drawing_is_cable(field->drawing);
        drawing_move(field->drawing, stretch->x_mm, fmin(before_mm, after_mm));
        drawing_to(field->drawing, stretch->x_mm, low_mm - hidden_mm);
    }
}

static bool gland_at(const struct Plan *plan, int boundary)
{
    for (int i = 0; i < plan->run_count; i++) {
        const struct Run *run = plan->runs[i].surveyed;
        if (survey_armoured(run->cable.type) &&
            ((layout_run_boundary(run, false) == boundary && run->start.into != INTO_FREE) ||
             (layout_run_boundary(run, true) == boundary && run->finish.into != INTO_FREE))) {
            return true;
        }
    }
    return false;
}

/* At the way's own ends the square stands beside the cable, with a gland where armour is held. */
static void draw_outer_end(const struct Field *field, const char *letter, bool finish)
{
    const struct RouteLayout *layout = field->layout;
    const struct Stretch *stretch = &layout->stretches[finish ? layout->stretch_count - 1 : 0];
    double x_mm = stretch->x_mm + (finish ? stretch->width_mm : 0);
    double y_mm = level_mm(field, finish ? stretch->to_m : stretch->from_m);
    double side = finish ? 1 : -1;
    drawing_path(field->drawing, cable_pen, INK_NONE);
    drawing_is_cable(field->drawing);
    drawing_move(field->drawing, x_mm, y_mm);
    drawing_to(field->drawing, x_mm + side * (END_REACH - END_HALF), y_mm);
    if (gland_at(layout->plan, finish ? layout->stretch_count : 0)) {
        double wall_mm = x_mm + side * (END_REACH - END_HALF);
        drawing_path(field->drawing, thin_pen, INK_BLACK);
        drawing_move(field->drawing, wall_mm, y_mm - 1.4);
        drawing_to(field->drawing, wall_mm - side * 2, y_mm - 0.6);
        drawing_to(field->drawing, wall_mm - side * 2, y_mm + 0.6);
        drawing_to(field->drawing, wall_mm, y_mm + 1.4);
        drawing_close(field->drawing);
    }
    layout_draw_end(field->drawing, letter, x_mm + side * END_REACH, y_mm);
}

static void draw_ends(const struct Field *field)
{
    const struct RouteLayout *layout = field->layout;
    for (int i = 0; i < layout->end_count; i++) {
        int boundary = layout->ends[i].boundary;
        if (boundary == 0) {
            if (field->strip->first == 0) {
                draw_outer_end(field, layout->ends[i].letter, false);
            }
        } else if (boundary - 1 >= field->strip->first && boundary - 1 <= field->strip->last) {
            const struct Stretch *before = &layout->stretches[boundary - 1];
            if (boundary == layout->stretch_count) {
                draw_outer_end(field, layout->ends[i].letter, true);
            } else {
                layout_draw_end(field->drawing, layout->ends[i].letter, before->x_mm + before->width_mm,
                                boundary_level(field, boundary));
            }
        }
    }
}

/* Thin lines from each number of metres down to the cable. */
static void draw_projections(const struct Field *field, double chainage_mm)
{
    for (int i = field->strip->first; i <= field->strip->last + 1; i++) {
        bool last = i > field->strip->last;
        const struct Stretch *stretch = &field->layout->stretches[last ? field->strip->last : i];
        double y_mm = level_mm(field, last ? stretch->to_m : stretch->from_m);
        if (!last && i > field->strip->first) {
            y_mm = fmin(y_mm, level_mm(field, field->layout->stretches[i - 1].to_m));
        }
        double x_mm = stretch->x_mm + (last ? stretch->width_mm : 0);
        drawing_line(field->drawing, hair_pen, x_mm, chainage_mm + 1, x_mm, y_mm);
    }
}

static void draw_brackets(const struct Field *field, double bracket_mm)
{
    static const struct Pen pen = {INK_BLACK, WIDTH_HEAVY, DASH_NONE};
    static const struct TextStyle style = {
        .size_mm = TYPE_SMALL, .bold = true, .ink = INK_BLACK, .anchor = ANCHOR_MIDDLE};
    for (int i = field->strip->first; i <= field->strip->last; i++) {
        if (!layout_governs(field->layout->plan, i)) {
            continue;
        }
        const struct Stretch *stretch = &field->layout->stretches[i];
        double left = stretch->x_mm + 0.8, right = stretch->x_mm + stretch->width_mm - 0.8;
        drawing_path(field->drawing, pen, INK_NONE);
        drawing_move(field->drawing, left, bracket_mm + 2.2);
        drawing_to(field->drawing, left, bracket_mm);
        drawing_to(field->drawing, right, bracket_mm);
        drawing_to(field->drawing, right, bracket_mm + 2.2);
        if (right - left > type_width_mm("governs", style.size_mm, true) + 3) {
            drawing_text(field->drawing, style, (left + right) / 2, bracket_mm + 3.4, "governs");
        }
    }
}

/* Where each leader leaves the run. */
static void leader_tops(const struct Field *field, double *tops)
{
    const struct RouteLayout *layout = field->layout;
    for (int i = 0; i < field->strip->label_count; i++) {
        const struct Label *label = &field->strip->labels[i];
        if (label->is_end) {
            int boundary = label->end->boundary;
            double y_mm =
                boundary == 0 ? level_mm(field, layout->stretches[0].from_m) : boundary_level(field, boundary);
            tops[i] = y_mm + END_HALF;
        } else {
            double middle_m = (label->stretch->from_m + label->stretch->to_m) / 2;
            tops[i] = level_mm(field, middle_m) + layout->sign_radius_mm;
        }
    }
}

static const char *heading_text(const struct RouteLayout *layout, int index)
{
    const struct Strip *strip = &layout->strips[index];
    const char *from = layout_metres(layout, layout->stretches[strip->first].segment->from_m);
    const char *to = layout_metres(layout, layout->stretches[strip->last].segment->to_m);
    return layout->strip_count == 1 ? arena_print(layout->arena, "The whole way, %s m", to)
                                    : arena_print(layout->arena, "Strip %d of %d: from %s m to %s m", index + 1,
                                                  layout->strip_count, from, to);
}

void layout_draw_strip(struct RouteLayout *layout, struct Drawing *drawing, int index, double top_mm)
{
    static const struct TextStyle heading_style = {.size_mm = 3.4, .bold = true, .ink = INK_BLACK};
    struct Strip *strip = &layout->strips[index];
    struct StripPlaces places = layout_strip_places(layout, strip);
    struct Field field = {
        layout, drawing, strip, top_mm + places.elevation_mm, top_mm + places.zero_mm, top_mm + places.field_end_mm};
    double *tops = arena_array(layout->arena, (size_t)strip->label_count, sizeof *tops);
    if (tops == NULL || strip->labels == NULL) {
        layout->failed = true;
        return;
    }
    const char *heading = heading_text(layout, index);
    drawing_group(drawing, arena_print(layout->arena, "strip-%d", index + 1), heading);
    drawing_text(drawing, heading_style, INNER_LEFT, top_mm + places.heading_mm, heading);
    layout_draw_chainage(layout, drawing, strip, top_mm + places.chainage_mm);
    draw_axis(&field);
    draw_projections(&field, top_mm + places.chainage_mm);
    draw_surroundings(&field);
    for (int i = strip->first; i <= strip->last; i++) {
        if (i > 0) { /* a step between two strips is drawn at the beginning of the second */
            draw_step(&field, i);
        }
        draw_stretch_cable(&field, i);
    }
    if (strip->first > 0) {
        layout_draw_break(drawing, layout->stretches[strip->first].x_mm - 1,
                          level_mm(&field, layout->stretches[strip->first - 1].to_m));
    }
    if (strip->last + 1 < layout->stretch_count) {
        const struct Stretch *last = &layout->stretches[strip->last];
        bool ends = layout_end_at(layout, strip->last + 1) >= 0;
        layout_draw_break(drawing, last->x_mm + last->width_mm + (ends ? END_HALF + 1 : 1),
                          level_mm(&field, last->to_m));
    }
    draw_ends(&field);
    draw_brackets(&field, top_mm + places.bracket_mm);
    leader_tops(&field, tops);
    struct StripPlaces on_sheet = places;
    on_sheet.field_end_mm += top_mm;
    on_sheet.row_mm[0] += top_mm;
    on_sheet.row_mm[1] += top_mm;
    layout_draw_labels(layout, drawing, strip, &on_sheet, tops);
    drawing_group_end(drawing);
}
