/* One strip of the elevation: running metres above, the run with its ground in the middle, boxes below. */
#include "layout_private.h"

#include <math.h>

static const double heading_mm = 4.2, row_gap_mm = 2.2, strip_gap_mm = 3;

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
    /* room for the signs beside the cables, and for a number with its flag */
    double pad_mm = fmax(6.4 + layout_cable_spread(layout), layout->sign_radius_mm + FLAG_HEIGHT + 1);
    places.zero_mm = places.elevation_mm + pad_mm + layout_up_mm(layout, strip->high_m);
    places.pulls_mm = places.elevation_mm + range_mm + 2 * pad_mm;
    places.ribbon_mm = places.pulls_mm + layout_pulls_height(layout, strip);
    places.field_end_mm =
        places.ribbon_mm + (layout->ribbon_apart ? 0 : layout_ribbon_height(layout, strip, layout->ribbon_run));
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
    if (!layout->known_ground && field->zero_mm > field->top_mm + 2 && field->zero_mm < field->end_mm) {
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
                                            cover_mm >= 5 ? cover_mm * 0.45 : 0, layout_cable_spread(layout)});
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

/* Ends of a stretch's line as drawn, `off` mm to the lower side of the middle. */
static struct SignPlace line_of(const struct Field *field, int index, double off)
{
    const struct Stretch *stretch = &field->layout->stretches[index];
    double y1 = level_mm(field, stretch->from_m), y2 = level_mm(field, stretch->to_m);
    double length = hypot(stretch->width_mm, y2 - y1);
    double nx = -(y2 - y1) / length * off, ny = stretch->width_mm / length * off;
    return (struct SignPlace){.x1_mm = stretch->x_mm + nx,
                              .y1_mm = y1 + ny,
                              .x2_mm = stretch->x_mm + stretch->width_mm + nx,
                              .y2_mm = y2 + ny};
}

static bool reaches(const struct RouteLayout *layout, int run, int boundary)
{
    const struct Run *surveyed = layout->plan->runs[run].settled;
    return layout_run_boundary(surveyed, false) == boundary || layout_run_boundary(surveyed, true) == boundary;
}

/* One run's line through the strip. Steps into the ground and out of it are drawn by going on from where the stretch
 * before ended. Numbers and letters are painted over it on white. */
static void draw_run_line(const struct Field *field, int run)
{
    const struct RouteLayout *layout = field->layout;
    double off = layout_cable_offset(layout, run);
    bool on = false;
    for (int i = field->strip->first; i <= field->strip->last; i++) {
        if (!layout_follows(layout, run, i)) {
            on = false;
            continue;
        }
        struct SignPlace line = line_of(field, i, off);
        if (!on) {
            drawing_path(field->drawing, layout_cable_pen(layout, run), INK_NONE);
            drawing_is_cable(field->drawing);
            bool comes_in = i > 0 && i == field->strip->first && layout_follows(layout, run, i - 1);
            double before_mm = comes_in ? level_mm(field, layout->stretches[i - 1].to_m) + off
                                        : line.y1_mm; /* a step between strips */
            bool outer = i == 0 && reaches(layout, run, 0);
            drawing_move(field->drawing, outer ? layout->stretches[0].x_mm - (END_REACH - END_HALF) : line.x1_mm,
                         outer ? level_mm(field, layout->stretches[0].from_m) + off : before_mm);
            on = true;
        }
        drawing_to(field->drawing, line.x1_mm, line.y1_mm);
        drawing_to(field->drawing, line.x2_mm, line.y2_mm);
        if (i + 1 == layout->stretch_count && reaches(layout, run, layout->stretch_count)) {
            drawing_to(field->drawing, layout->stretches[i].x_mm + layout->stretches[i].width_mm + END_REACH - END_HALF,
                       level_mm(field, layout->stretches[i].to_m) + off);
        }
    }
}

/* A stretch that no run follows is still part of the way. */
static void draw_unused(const struct Field *field, int index)
{
    const struct RouteLayout *layout = field->layout;
    for (int run = 0; run < layout->plan->run_count; run++) {
        if (layout_follows(layout, run, index)) {
            return;
        }
    }
    struct SignPlace line = line_of(field, index, 0);
    drawing_line(field->drawing, hair_pen, line.x1_mm, line.y1_mm, line.x2_mm, line.y2_mm);
    drawing_is_cable(field->drawing);
}

static void draw_stretch_marks(const struct Field *field, int index)
{
    const struct RouteLayout *layout = field->layout;
    const struct Stretch *stretch = &layout->stretches[index];
    struct SignPlace line = line_of(field, index, 0);
    double dx = line.x2_mm - line.x1_mm, dy = line.y2_mm - line.y1_mm;
    if (stretch->shortened) {
        double at = 0.76;
        layout_draw_break(field->drawing, line.x1_mm + dx * at, line.y1_mm + dy * at);
    }
    double x_mm = line.x1_mm + dx / 2, y_mm = line.y1_mm + dy / 2;
    if (*layout_flag_numbers(layout, "", stretch->number - 1) != '\0') {
        layout_draw_flag(field->drawing, x_mm, y_mm - layout->sign_radius_mm, FLAG_HEIGHT);
    }
    layout_draw_number(field->drawing, layout->sign_radius_mm, x_mm, y_mm,
                       arena_print(layout->arena, "%d", stretch->number));
}

static bool gland_at(const struct Plan *plan, int boundary)
{
    for (int i = 0; i < plan->run_count; i++) {
        const struct Run *run = plan->runs[i].settled;
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
    if (gland_at(layout->plan, finish ? layout->stretch_count : 0)) {
        layout_draw_gland(field->drawing, x_mm + side * (END_REACH - END_HALF), y_mm, side);
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
    return layout->strip_count == 1
               ? arena_print(layout->arena, "The whole way, %s m", to)
               : arena_print(layout->arena, "Strip %d of %d: from %s m to %s m, across 1:%s", index + 1,
                             layout->strip_count, from, to, number_text(layout->arena, strip->across, 0));
}

void layout_draw_strip(struct RouteLayout *layout, struct Drawing *drawing, int index, double top_mm)
{
    static const struct TextStyle heading_style = {.size_mm = 3.4, .bold = true, .ink = INK_BLACK};
    struct Strip *strip = &layout->strips[index];
    struct StripPlaces places = layout_strip_places(layout, strip);
    struct Field field = {
        layout, drawing, strip, top_mm + places.elevation_mm, top_mm + places.zero_mm, top_mm + places.pulls_mm};
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
    for (int run = 0; run < layout->plan->run_count; run++) {
        draw_run_line(&field, run);
    }
    for (int i = strip->first; i <= strip->last; i++) {
        draw_unused(&field, i);
        draw_stretch_marks(&field, i);
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
    layout_draw_pulls(layout, drawing, strip, top_mm + places.pulls_mm);
    if (places.field_end_mm > places.ribbon_mm) {
        layout_draw_ribbon(layout, drawing, strip, layout->ribbon_run, top_mm + places.ribbon_mm);
    }
    drawing_group_end(drawing);
}
