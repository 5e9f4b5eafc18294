/* The block of a strip: plates of the ends, profile, voltage and the bar on the true axis, the fan from its breaks to
 * the columns, the figures at the breaks and the columns' heads. */
#include "layout_private.h"

#include "documents/shown_private.h"

#include <math.h>

static const double lane_mm = 5.2, volts_mm = 8, bar_mm = 8, bar_box_mm = 3.8, fan_mm = 4.2, head_pad_mm = 1;
static const double radius_mm = 2.4;

static const struct Pen rule_pen = {INK_BLACK, WIDTH_RULE, DASH_NONE};
static const struct Pen thing_pen = {INK_BLACK, WIDTH_THING, DASH_NONE};
static const struct Pen no_pen = {INK_NONE, 0, DASH_NONE};
static const struct TextStyle plain_style = {.size_mm = TYPE_PLAIN, .ink = INK_BLACK};
static const struct TextStyle bold_style = {.size_mm = TYPE_PLAIN, .bold = true, .ink = INK_BLACK};
static const struct TextStyle note_style = {.size_mm = TYPE_PLAIN, .ink = INK_GREY};

static bool has_volts(const struct RouteLayout *layout, const struct Strip *strip)
{
    return volts_at(layout, strip->first) > 0 || volts_at(layout, strip->last + 1) > 0;
}

static double breaks_height(const struct RouteLayout *layout, const struct Strip *strip)
{
    return (has_volts(layout, strip) ? 3 : 2) * LINE_PITCH + 1;
}

/* From the left of a segment's column to its name, past the circle with its number. */
static double head_indent(int index)
{
    return 2 * number_radius(radius_mm, index + 1) + 1.8;
}

/* Where a name would be broken inside a word beside its number, all names stand under theirs. */
static bool names_under(const struct RouteLayout *layout, const struct Strip *strip)
{
    for (int i = strip->first; i <= strip->last; i++) {
        const char *name = shown_text(layout->arena, layout->stretches[i].segment->surveyed->name);
        if (type_widest_piece_mm(layout->arena, name, TYPE_PLAIN, true) >
            strip->column_mm - head_indent(i) - CELL_PAD) {
            return true;
        }
    }
    return false;
}

static struct Cell name_cell(const struct RouteLayout *layout, const struct Strip *strip, int index)
{
    const double indent_mm = names_under(layout, strip) ? CELL_PAD : head_indent(index);
    struct Cell cell = {.layout = layout,
                        .width_mm = strip->column_mm - indent_mm - CELL_PAD,
                        .size_mm = TYPE_PLAIN,
                        .pitch_mm = LINE_PITCH};
    cell_put(&cell, say_alone(layout->arena, say_name(layout->stretches[index].segment->surveyed->name)), true);
    return cell;
}

double strip_heads_height(const struct RouteLayout *layout, const struct Strip *strip)
{
    const double number_mm = 2 * radius_mm + 1.6, over_mm = names_under(layout, strip) ? number_mm : 0;
    double height_mm = number_mm;
    for (int i = strip->first; i <= strip->last; i++) {
        const struct Cell cell = name_cell(layout, strip, i);
        height_mm = fmax(height_mm, over_mm + cell_height(&cell) + (over_mm > 0 ? 1 : 2) * head_pad_mm);
    }
    return height_mm;
}

/* Plates of the only run's ends, and what strip comes before and after. */
static double lane_height(const struct RouteLayout *layout)
{
    return layout->plan->run_count == 1 || layout->strip_count > 1 ? lane_mm : 1;
}

double strip_block_height(const struct RouteLayout *layout, const struct Strip *strip)
{
    return lane_height(layout) + strip->profile_mm + (has_volts(layout, strip) ? volts_mm : 0) + bar_mm + fan_mm +
           breaks_height(layout, strip) + strip_heads_height(layout, strip);
}

void strip_heads_draw(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                      double top_mm)
{
    const double height_mm = strip_heads_height(layout, strip);
    const bool under = names_under(layout, strip);
    const double number_mm = top_mm + (under ? radius_mm + 0.8 : height_mm / 2);
    drawing_line(drawing, rule_pen, FRAME_LEFT, top_mm, FRAME_RIGHT, top_mm);
    drawing_text(drawing, bold_style, FRAME_LEFT, top_mm + height_mm / 2 + 1, layout_term(layout, SAY_BAND_SEGMENT));
    for (int i = strip->first; i <= strip->last; i++) {
        const struct Stretch *stretch = &layout->stretches[i];
        const struct Cell cell = name_cell(layout, strip, i);
        drawing_rect(drawing, no_pen, layout_main_governs(layout, i) ? INK_SHADE : INK_WHITE, stretch->cell_mm, top_mm,
                     strip->column_mm, height_mm);
        drawing_line(drawing, rule_pen, stretch->cell_mm, top_mm, stretch->cell_mm, top_mm + height_mm);
        draw_number(drawing, stretch->cell_mm + number_radius(radius_mm, i + 1) + 0.6, number_mm, radius_mm, i + 1,
                    layout_main_governs(layout, i));
        cell_draw(&cell, drawing, stretch->cell_mm + (under ? CELL_PAD : head_indent(i)),
                  under ? top_mm + 2 * radius_mm + 1.6 : top_mm + (height_mm - cell_height(&cell)) / 2);
    }
    const double end_mm = layout->stretches[strip->last].cell_mm + strip->column_mm;
    drawing_line(drawing, rule_pen, end_mm, top_mm, end_mm, top_mm + height_mm);
}

/* ---- the lane of the ends ---- */

static void draw_lane(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                      double base_mm)
{
    struct Arena *arena = layout->arena;
    const int number = (int)(strip - layout->strips);
    const struct PlanRun *only = layout->plan->run_count == 1 ? &layout->plan->runs[0] : NULL;
    struct TextStyle right_style = bold_style;
    right_style.anchor = ANCHOR_RIGHT;
    if (strip->first > 0) {
        drawing_text(drawing, bold_style, CELLS_LEFT, base_mm,
                     layout_said(layout, say(arena, SAY_FROM_SHEET, say_count(number))));
    }
    if (strip->last + 1 < layout->stretch_count) {
        drawing_text(drawing, right_style, FRAME_RIGHT, base_mm,
                     layout_said(layout, say(arena, SAY_TO_SHEET, say_count(number + 2))));
    }
    for (int side = 0; side < 2; side++) { /* the supply end at the left, the far end at the right */
        const int boundary = side == 0 ? strip->first : strip->last + 1;
        const int end = layout_end_at(layout, boundary);
        if (only == NULL || !only->rated || end < 0) {
            continue;
        }
        const bool finish = layout_run_boundary(only->settled, true) == boundary;
        const char *name = layout_said(layout, say(arena, SAY_SPACE, say_name(layout->ends[end].letter),
                                                   say_term(finish ? SAY_END_FAR : SAY_END_SUPPLY)));
        const double name_mm = type_width_mm(name, TYPE_PLAIN, true) + 2.4;
        double left_mm = CELLS_LEFT;
        if (side == 1) { /* drawn once to learn how wide it is, on nothing */
            struct Drawing nothing = drawing_new(arena);
            left_mm = FRAME_RIGHT - name_mm -
                      draw_earth_plates(layout, &nothing, only, finish, 0, base_mm, TYPE_PLAIN) + TYPE_PLAIN - 0.1;
        }
        drawing_text(drawing, bold_style, left_mm, base_mm, name);
        draw_earth_plates(layout, drawing, only, finish, left_mm + name_mm, base_mm, TYPE_PLAIN);
    }
}

/* ---- voltage ---- */

double volts_at(const struct RouteLayout *layout, int boundary)
{
    if (layout->main_run < 0) {
        return 0;
    }
    const struct PlanRun *run = &layout->plan->runs[layout->main_run];
    const int start = layout_run_boundary(run->settled, false), finish = layout_run_boundary(run->settled, true);
    if (boundary < (start < finish ? start : finish) || boundary > (start < finish ? finish : start)) {
        return 0;
    }
    double volts = run->voltage_v * (1 - layout->plan->survey->supply.drop_before_percent.value / 100);
    for (int i = 0; i < run->rating_count; i++) {
        const int segment = run->ratings[i].segment;
        volts -= start < finish ? (segment < boundary ? run->ratings[i].drop_v : 0)
                                : (segment >= boundary ? run->ratings[i].drop_v : 0);
    }
    return volts;
}

static double limit_volts(const struct RouteLayout *layout)
{
    const struct PlanRun *run = &layout->plan->runs[layout->main_run];
    return run->drop_limit_percent > 0 ? run->voltage_v * (1 - run->drop_limit_percent / 100) : 0;
}

/* Of both ends and the limit, with room above and below. */
struct VoltScale {
    double high_v, low_v, top_mm;
};

static double volt_mm(const struct VoltScale *scale, double volts)
{
    return scale->top_mm + 1.8 + (scale->high_v - volts) / fmax(scale->high_v - scale->low_v, 1e-6) * (volts_mm - 3.6);
}

static void draw_volts(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                       double top_mm)
{
    struct Arena *arena = layout->arena;
    const struct PlanRun *run = &layout->plan->runs[layout->main_run];
    const double limit_v = limit_volts(layout);
    struct VoltScale scale = {0, limit_v > 0 ? limit_v : INFINITY, top_mm};
    for (int i = 0; i <= layout->stretch_count; i += layout->stretch_count > 0 ? layout->stretch_count : 1) {
        const int boundary = layout_run_boundary(run->settled, i > 0);
        scale.high_v = fmax(scale.high_v, volts_at(layout, boundary));
        scale.low_v = fmin(scale.low_v, volts_at(layout, boundary));
    }
    drawing_line(drawing, rule_pen, FRAME_LEFT, top_mm, FRAME_RIGHT, top_mm);
    drawing_text(drawing, bold_style, FRAME_LEFT, top_mm + 3.4, layout_term(layout, SAY_BAND_VOLTAGE));
    const struct Stretch *last = &layout->stretches[strip->last];
    const double right_mm = last->x_mm + last->width_mm;
    if (limit_v > 0) {
        drawing_text(drawing, note_style, FRAME_LEFT, top_mm + 3.4 + LINE_PITCH,
                     layout_said(layout, say(arena, SAY_BAND_VOLTAGE_LIMIT, say_fixed(limit_v, 1, UNIT_V))));
        drawing_line(drawing, (struct Pen){INK_BLACK, WIDTH_THING, DASH_LONG}, AXIS_LEFT, volt_mm(&scale, limit_v),
                     right_mm, volt_mm(&scale, limit_v));
    }
    drawing_path(drawing, (struct Pen){INK_BLACK, 0.7, DASH_NONE}, INK_NONE);
    bool on = false;
    double at_v = 0;
    for (int i = strip->first; i <= strip->last + 1; i++) {
        const double volts = volts_at(layout, i);
        const double x_mm = i > strip->last ? right_mm : layout->stretches[i].x_mm;
        if (volts > 0) {
            (on ? drawing_to : drawing_move)(drawing, x_mm, volt_mm(&scale, volts));
            at_v = volts;
        }
        on = volts > 0;
    }
    drawing_text(drawing, bold_style, right_mm + 1.6, top_mm + 3.4,
                 layout_said(layout, say_alone(arena, say_fixed(at_v, 1, UNIT_V))));
    if (limit_v > 0 && strip->last + 1 == layout->stretch_count) {
        const struct SayArg left = say_fixed(fabs(at_v - limit_v), 1, UNIT_V);
        drawing_text(drawing, plain_style, right_mm + 1.6, top_mm + 3.4 + LINE_PITCH,
                     layout_said(layout, say(arena, at_v >= limit_v ? SAY_VOLTS_LEFT : SAY_VOLTS_SHORT, left)));
    }
}

/* ---- bar and fan ---- */

static double bar_step(double across)
{
    int step = 0;
    while (step < 24 && layout_round_step(step) * 1000 / across < 18) {
        step++;
    }
    return layout_round_step(step);
}

static void draw_bar(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                     double top_mm)
{
    static const struct TextStyle middle_style = {.size_mm = TYPE_PLAIN, .ink = INK_BLACK, .anchor = ANCHOR_MIDDLE};
    const double box_mm = top_mm + bar_mm - bar_box_mm, step_m = bar_step(strip->across);
    const struct Stretch *first = &layout->stretches[strip->first], *last = &layout->stretches[strip->last];
    const double from_m = first->segment->from_m, to_m = last->segment->to_m, right_mm = last->x_mm + last->width_mm;
    drawing_text(drawing, bold_style, FRAME_LEFT, box_mm + 2.9, layout_term(layout, SAY_BAND_BAR));
    for (double k = ceil(from_m / step_m - 1e-9); k * step_m <= to_m + 1e-9; k++) {
        const double x_mm = AXIS_LEFT + (k * step_m - from_m) * 1000 / strip->across;
        drawing_line(drawing, rule_pen, x_mm, box_mm - 0.9, x_mm, box_mm);
        draw_text_on_white(drawing, middle_style, x_mm, box_mm - 1.5,
                           number_text(layout->arena, k * step_m, step_m < 0.999 ? 1 : 0));
    }
    drawing_rect(drawing, no_pen, INK_WHITE, first->x_mm, box_mm, right_mm - first->x_mm, bar_box_mm);
    for (int i = strip->first; i <= strip->last; i++) {
        const struct Stretch *stretch = &layout->stretches[i];
        const bool black = i % 2 == 0;
        struct TextStyle style = {
            .size_mm = TYPE_PLAIN, .bold = true, .ink = black ? INK_WHITE : INK_BLACK, .anchor = ANCHOR_MIDDLE};
        if (black) {
            drawing_rect(drawing, no_pen, INK_BLACK, stretch->x_mm, box_mm, stretch->width_mm, bar_box_mm);
        }
        const char *number = arena_print(layout->arena, "%d", i + 1);
        if (stretch->width_mm > type_width_mm(number, style.size_mm, true) + 1.6) {
            drawing_text(drawing, style, stretch->x_mm + stretch->width_mm / 2, box_mm + 2.9, number);
        }
    }
    drawing_rect(drawing, thing_pen, INK_NONE, first->x_mm, box_mm, right_mm - first->x_mm, bar_box_mm);
    drawing_text(drawing, bold_style, right_mm + 1.6, box_mm + 2.9,
                 layout_said(layout, say_alone(layout->arena, layout_metres(to_m))));
}

static void draw_fan(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                     double top_mm)
{
    for (int i = strip->first; i <= strip->last; i++) {
        const struct Stretch *stretch = &layout->stretches[i];
        if (layout_main_governs(layout, i)) {
            drawing_path(drawing, no_pen, INK_LOAD);
            drawing_move(drawing, stretch->x_mm, top_mm);
            drawing_to(drawing, stretch->x_mm + stretch->width_mm, top_mm);
            drawing_to(drawing, stretch->cell_mm + strip->column_mm, top_mm + fan_mm);
            drawing_to(drawing, stretch->cell_mm, top_mm + fan_mm);
            drawing_close(drawing);
        }
    }
    drawing_path(drawing, rule_pen, INK_NONE);
    for (int i = strip->first; i <= strip->last + 1; i++) {
        const bool behind = i > strip->last;
        const struct Stretch *stretch = &layout->stretches[behind ? i - 1 : i];
        drawing_move(drawing, stretch->x_mm + (behind ? stretch->width_mm : 0), top_mm);
        drawing_to(drawing, stretch->cell_mm + (behind ? strip->column_mm : 0), top_mm + fan_mm);
    }
}

/* Metres, level and volts at each edge of a column. */
static void draw_breaks(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                        double top_mm)
{
    static const enum Saying names[] = {SAY_BAND_METRES, SAY_BAND_LEVEL, SAY_BAND_VOLTS};
    struct Arena *arena = layout->arena;
    const int rows = has_volts(layout, strip) ? 3 : 2;
    for (int row = 0; row < rows; row++) {
        const double base_mm = top_mm + 3.3 + row * LINE_PITCH;
        drawing_text(drawing, row == 0 ? bold_style : note_style, FRAME_LEFT, base_mm, layout_term(layout, names[row]));
        for (int i = strip->first; i <= strip->last + 1; i++) {
            const bool behind = i > strip->last;
            const struct Stretch *stretch = &layout->stretches[behind ? i - 1 : i];
            const struct PlanSegment *segment = stretch->segment;
            const double level_m = behind ? segment->height_to_m : segment->height_from_m, volts = volts_at(layout, i);
            struct TextStyle style = row == 0 ? bold_style : plain_style;
            style.anchor = behind ? ANCHOR_RIGHT : i == strip->first ? ANCHOR_LEFT : ANCHOR_MIDDLE;
            const char *text = row == 0    ? number_text(arena, behind ? segment->to_m : segment->from_m, 2)
                               : row == 1  ? arena_print(arena, "%s%s",
                                                        level_m > 0.004    ? "+"
                                                         : level_m < -0.004 ? "\xE2\x88\x92"
                                                                            : "",
                                                         number_text(arena, fabs(level_m), 2))
                               : volts > 0 ? number_text(arena, volts, 1)
                                           : "";
            drawing_text(drawing, style,
                         stretch->cell_mm + (behind              ? strip->column_mm - 0.1
                                             : i == strip->first ? 0.6
                                                                 : 0),
                         base_mm, text);
        }
    }
}

void strip_block_draw(struct RouteLayout *layout, struct Drawing *drawing, int index, double top_mm)
{
    const struct Strip *strip = &layout->strips[index];
    double y_mm = top_mm + lane_height(layout);
    draw_lane(layout, drawing, strip, top_mm + 4);
    drawing_text(drawing, bold_style, FRAME_LEFT, y_mm + 2.9, layout_term(layout, SAY_BAND_PROFILE));
    profile_draw(layout, drawing, strip, y_mm);
    y_mm += strip->profile_mm;
    if (has_volts(layout, strip)) {
        draw_volts(layout, drawing, strip, y_mm);
        y_mm += volts_mm;
    }
    draw_bar(layout, drawing, strip, y_mm);
    draw_fan(layout, drawing, strip, y_mm + bar_mm);
    draw_breaks(layout, drawing, strip, y_mm + bar_mm + fan_mm);
    strip_heads_draw(layout, drawing, strip, y_mm + bar_mm + fan_mm + breaks_height(layout, strip));
}
