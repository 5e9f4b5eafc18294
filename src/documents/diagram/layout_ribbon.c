/* The ribbon under the elevation, at the same metres: what each stretch carries as a line of steps against the device's
 * rating and the load, so that the worst place is seen at a glance, and under it the voltage along the run.
 *
 * Capacity is drawn from nought; the voltage only between its start and the lowest allowed, else no drop could be seen.
 * Numbers stand in rows of their own on white, so that leaders may pass behind them. */
#include "layout_private.h"

#include "documents/shown_private.h"

#include <math.h>

static const double signs_mm = 4.8, numbers_mm = 4.2, steps_mm = 12, volts_mm = 4.4, slope_mm = 7, end_mm = 1.4;
static const double heading_mm = 5, stretch_row_mm = 4.2, block_gap_mm = 3;
static const double label_pitch_mm = 3.5;

static const struct Pen no_pen = {INK_NONE, 0, DASH_NONE};
static const struct Pen pale_pen = {INK_PALE, WIDTH_HAIR, DASH_NONE};
static const struct Pen step_pen = {INK_BLACK, WIDTH_BOLD, DASH_NONE};
static const struct Pen heavy_pen = {INK_BLACK, 1.0, DASH_NONE};
static const struct Pen device_pen = {INK_BLACK, WIDTH_PLAIN, DASH_LONG};
static const struct Pen load_pen = {INK_BLACK, WIDTH_THIN, DASH_SHORT};

/* A stretch as the ribbon sees it. */
struct RibbonStretch {
    const struct Rating *rating; /* NULL: the run is not here */
    double left_v, right_v;
};

struct Ribbon {
    const struct RouteLayout *layout;
    struct Drawing *drawing;
    const struct Strip *strip;
    const struct PlanRun *run;
    const struct RibbonStretch *stretches;
    double most_a;                 /* top of the steps */
    double high_v, low_v, limit_v; /* limit 0: not known */
};

const struct Rating *layout_rating_at(const struct PlanRun *run, int segment)
{
    for (int i = 0; run->rated && i < run->rating_count; i++) {
        if (run->ratings[i].segment == segment) {
            return &run->ratings[i];
        }
    }
    return NULL;
}

int layout_tightest_run(const struct Plan *plan)
{
    int tightest = -1;
    for (int i = 0; i < plan->run_count; i++) {
        const struct PlanRun *run = &plan->runs[i];
        if (run->rated && run->rating_count > 0 &&
            (tightest < 0 ||
             run->capacity_a * plan->runs[tightest].rating_a < plan->runs[tightest].capacity_a * run->rating_a)) {
            tightest = i;
        }
    }
    return tightest;
}

static bool any_condition(const struct Strip *strip, const struct PlanRun *run)
{
    enum Condition first;
    for (int i = strip->first; i <= strip->last; i++) {
        const struct Rating *rating = layout_rating_at(run, i);
        if (rating != NULL && layout_conditions(rating, &first, 1) > 0) {
            return true;
        }
    }
    return false;
}

double layout_ribbon_height(const struct RouteLayout *layout, const struct Strip *strip, int run)
{
    for (int i = strip->first; run >= 0 && i <= strip->last; i++) {
        if (layout_rating_at(&layout->plan->runs[run], i) != NULL) {
            return (any_condition(strip, &layout->plan->runs[run]) ? signs_mm : 0) + numbers_mm + steps_mm + volts_mm +
                   slope_mm + end_mm;
        }
    }
    return 0;
}

/* The voltage falls from the run's start, which need not be the left end of the way. */
static bool prepare(struct Ribbon *ribbon)
{
    const struct RouteLayout *layout = ribbon->layout;
    const struct PlanRun *run = ribbon->run;
    struct RibbonStretch *stretches = arena_array(layout->arena, (size_t)layout->stretch_count, sizeof *stretches);
    if (stretches == NULL) {
        return false;
    }
    double before = layout->plan->survey->supply.drop_before_percent.value;
    bool forward = layout_run_boundary(run->settled, false) < layout_run_boundary(run->settled, true);
    double at_v = run->voltage_v * (1 - before / 100);
    ribbon->high_v = at_v;
    ribbon->most_a = fmax(run->rating_a, run->design_current_a);
    for (int i = 0; i < run->rating_count; i++) {
        const struct Rating *rating = &run->ratings[i];
        double next_v = at_v - rating->drop_v;
        if (rating->segment >= 0 && rating->segment < layout->stretch_count) {
            stretches[rating->segment] =
                (struct RibbonStretch){rating, forward ? at_v : next_v, forward ? next_v : at_v};
        }
        at_v = next_v;
        ribbon->most_a = fmax(ribbon->most_a, rating->capacity_a);
    }
    ribbon->limit_v = run->drop_limit_percent > 0 ? run->voltage_v * (1 - run->drop_limit_percent / 100) : 0;
    ribbon->low_v = ribbon->limit_v > 0 ? fmin(ribbon->limit_v, at_v) : at_v;
    ribbon->stretches = stretches;
    return true;
}

/* ---- numbers on white ---- */

static void draw_number(const struct Ribbon *ribbon, double x_mm, double y_mm, const char *text, bool strong)
{
    struct TextStyle style = {.size_mm = TYPE_SMALL, .bold = strong, .ink = INK_BLACK, .anchor = ANCHOR_MIDDLE};
    double width_mm = type_width_mm(text, style.size_mm, strong) + 0.7;
    struct Pen frame = {INK_BLACK, WIDTH_PLAIN, DASH_NONE};
    drawing_rect(ribbon->drawing, strong ? frame : no_pen, INK_WHITE, x_mm - width_mm / 2, y_mm - 2.75, width_mm, 3.55);
    drawing_text(ribbon->drawing, style, x_mm, y_mm, text);
}

static double middle_of(const struct Stretch *stretch)
{
    return stretch->x_mm + stretch->width_mm / 2;
}

static void draw_conditions(const struct Ribbon *ribbon, double middle_mm)
{
    for (int i = ribbon->strip->first; i <= ribbon->strip->last; i++) {
        const struct Stretch *stretch = &ribbon->layout->stretches[i];
        enum Condition conditions[CONDITION_COUNT];
        int room = (int)floor((stretch->width_mm - 0.8) / CONDITION_PITCH);
        const struct Rating *rating = ribbon->stretches[i].rating;
        int count =
            rating == NULL ? 0 : layout_conditions(rating, conditions, room < CONDITION_COUNT ? room : CONDITION_COUNT);
        double left_mm = middle_of(stretch) - count * CONDITION_PITCH / 2;
        if (count > 0) {
            drawing_rect(ribbon->drawing, no_pen, INK_WHITE, left_mm, middle_mm - 2, count * CONDITION_PITCH, 4);
        }
        for (int k = 0; k < count; k++) {
            layout_draw_condition(ribbon->drawing, conditions[k], left_mm + (k + 0.5) * CONDITION_PITCH, middle_mm);
        }
    }
}

static bool governs(const struct Ribbon *ribbon, int index)
{
    const struct PlanRun *run = ribbon->run;
    return run->governing >= 0 && run->governing < run->rating_count && run->ratings[run->governing].segment == index;
}

static void draw_capacities(const struct Ribbon *ribbon, double base_mm)
{
    struct Arena *arena = ribbon->layout->arena;
    for (int i = ribbon->strip->first; i <= ribbon->strip->last; i++) {
        const struct Rating *rating = ribbon->stretches[i].rating;
        if (rating != NULL) {
            draw_number(ribbon, middle_of(&ribbon->layout->stretches[i]), base_mm,
                        number_text(arena, rating->capacity_a, rating->capacity_a < 1000 ? 1 : 0), governs(ribbon, i));
        }
    }
}

/* ---- the steps ---- */

static double step_y(const struct Ribbon *ribbon, double base_mm, double current_a)
{
    return base_mm - current_a / ribbon->most_a * (steps_mm - 1);
}

/* Where the device is larger than what the stretch carries, the gap between them is hatched. */
static void draw_shortfall(const struct Ribbon *ribbon, int index, double base_mm)
{
    const struct Stretch *stretch = &ribbon->layout->stretches[index];
    double high_mm = step_y(ribbon, base_mm, ribbon->run->rating_a);
    double low_mm = step_y(ribbon, base_mm, ribbon->stretches[index].rating->capacity_a), pitch_mm = 1.1;
    drawing_path(ribbon->drawing, (struct Pen){INK_BLACK, WIDTH_HAIR, DASH_NONE}, INK_NONE);
    int count = (int)floor((stretch->width_mm - 0.4) / pitch_mm);
    for (int i = 0; i <= count; i++) {
        drawing_move(ribbon->drawing, stretch->x_mm + 0.2 + i * pitch_mm, high_mm);
        drawing_to(ribbon->drawing, stretch->x_mm + 0.2 + i * pitch_mm, low_mm);
    }
}

static void draw_steps(const struct Ribbon *ribbon, double base_mm)
{
    bool on = false;
    for (int i = ribbon->strip->first; i <= ribbon->strip->last; i++) {
        const struct Stretch *stretch = &ribbon->layout->stretches[i];
        const struct Rating *rating = ribbon->stretches[i].rating;
        if (rating != NULL && rating->capacity_a < ribbon->run->rating_a) {
            draw_shortfall(ribbon, i, base_mm);
        }
        if (rating != NULL && governs(ribbon, i)) {
            double y_mm = step_y(ribbon, base_mm, rating->capacity_a);
            drawing_line(ribbon->drawing, heavy_pen, stretch->x_mm, y_mm, stretch->x_mm + stretch->width_mm, y_mm);
        }
    }
    for (int i = ribbon->strip->first; i <= ribbon->strip->last; i++) {
        const struct Stretch *stretch = &ribbon->layout->stretches[i];
        const struct Rating *rating = ribbon->stretches[i].rating;
        if (rating == NULL) {
            on = false;
            continue;
        }
        double y_mm = step_y(ribbon, base_mm, rating->capacity_a);
        if (!on) {
            drawing_path(ribbon->drawing, step_pen, INK_NONE);
        }
        (on ? drawing_to : drawing_move)(ribbon->drawing, stretch->x_mm, y_mm);
        drawing_to(ribbon->drawing, stretch->x_mm + stretch->width_mm, y_mm);
        on = true;
    }
}

/* ---- the voltage ---- */

static double volt_y(const struct Ribbon *ribbon, double top_mm, double voltage_v)
{
    double range_v = ribbon->high_v - ribbon->low_v;
    return top_mm + (range_v > 0 ? (ribbon->high_v - voltage_v) / range_v : 0) * (slope_mm - 1);
}

static void draw_voltages(const struct Ribbon *ribbon, double base_mm)
{
    struct Arena *arena = ribbon->layout->arena;
    for (int i = ribbon->strip->first; i <= ribbon->strip->last; i++) {
        const struct Stretch *stretch = &ribbon->layout->stretches[i];
        const struct RibbonStretch *here = &ribbon->stretches[i];
        if (here->rating == NULL) {
            continue;
        }
        if (i == ribbon->strip->first || here[-1].rating == NULL) {
            draw_number(ribbon, stretch->x_mm, base_mm, number_text(arena, here->left_v, 1), false);
        }
        draw_number(ribbon, stretch->x_mm + stretch->width_mm, base_mm, number_text(arena, here->right_v, 1), false);
    }
}

static void draw_slope(const struct Ribbon *ribbon, double top_mm)
{
    bool on = false;
    for (int i = ribbon->strip->first; i <= ribbon->strip->last; i++) {
        const struct Stretch *stretch = &ribbon->layout->stretches[i];
        const struct RibbonStretch *here = &ribbon->stretches[i];
        if (here->rating == NULL) {
            on = false;
            continue;
        }
        if (!on) {
            drawing_path(ribbon->drawing, step_pen, INK_NONE);
            drawing_move(ribbon->drawing, stretch->x_mm, volt_y(ribbon, top_mm, here->left_v));
        }
        drawing_to(ribbon->drawing, stretch->x_mm + stretch->width_mm, volt_y(ribbon, top_mm, here->right_v));
        on = true;
    }
}

/* ---- the whole ---- */

static void draw_label(const struct Ribbon *ribbon, double y_mm, const char *text, enum Ink ink)
{
    struct TextStyle style = {.size_mm = TYPE_SMALL, .ink = ink};
    drawing_text(ribbon->drawing, style, INNER_LEFT, y_mm,
                 type_cut(ribbon->layout->arena, text, style, WAY_LEFT - END_REACH - 0.6 - INNER_LEFT));
}

static double right_end(const struct Ribbon *ribbon)
{
    const struct Stretch *last = &ribbon->layout->stretches[ribbon->strip->last];
    return last->x_mm + last->width_mm;
}

/* The two lines' names at the left are pushed apart when the lines lie close together. */
static void draw_levels(const struct Ribbon *ribbon, double base_mm)
{
    const struct PlanRun *run = ribbon->run;
    struct Arena *arena = ribbon->layout->arena;
    double device_mm = step_y(ribbon, base_mm, run->rating_a), load_mm = step_y(ribbon, base_mm, run->design_current_a);
    double right_mm = right_end(ribbon);
    drawing_line(ribbon->drawing, pale_pen, WAY_LEFT, base_mm, right_mm, base_mm);
    drawing_line(ribbon->drawing, load_pen, WAY_LEFT - 4, load_mm, right_mm, load_mm);
    drawing_line(ribbon->drawing, device_pen, WAY_LEFT - 4, device_mm, right_mm, device_mm);
    double lowest_mm = base_mm + 0.4, highest_mm = base_mm - steps_mm + 2.6;
    double low_mm = fmin(fmax(fmax(device_mm, load_mm) + 1, highest_mm + label_pitch_mm), lowest_mm);
    double high_mm = fmax(fmin(fmin(device_mm, load_mm) + 1, low_mm - label_pitch_mm), highest_mm);
    bool device_high = device_mm <= load_mm;
    draw_label(ribbon, device_high ? high_mm : low_mm,
               arena_print(arena, "In %s A", number_significant(arena, run->rating_a, 4)), INK_BLACK);
    draw_label(ribbon, device_high ? low_mm : high_mm,
               arena_print(arena, "Ib %s A", number_text(arena, run->design_current_a, 1)), INK_BLACK);
}

void layout_draw_ribbon(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip, int run,
                        double top_mm)
{
    struct Ribbon ribbon = {.layout = layout, .drawing = drawing, .strip = strip, .run = &layout->plan->runs[run]};
    if (layout_ribbon_height(layout, strip, run) <= 0 || !prepare(&ribbon)) {
        return;
    }
    drawing_group(drawing, "",
                  arena_print(layout->arena, "%s: what each stretch carries, and the voltage along it",
                              shown_text(layout->arena, ribbon.run->settled->name)));
    if (any_condition(strip, ribbon.run)) {
        draw_label(&ribbon, top_mm + 3.2, "lowered by", INK_GREY);
        draw_conditions(&ribbon, top_mm + 2.2);
        top_mm += signs_mm;
    }
    draw_label(&ribbon, top_mm + 3.1, "carries, A", INK_GREY);
    draw_capacities(&ribbon, top_mm + 3.1);
    double base_mm = top_mm + numbers_mm + steps_mm;
    draw_levels(&ribbon, base_mm);
    draw_steps(&ribbon, base_mm);
    draw_label(&ribbon, base_mm + 3.9, "volts", INK_GREY);
    draw_voltages(&ribbon, base_mm + 3.9);
    double slope_top_mm = base_mm + volts_mm + 0.8;
    if (ribbon.limit_v > 0) {
        double limit_mm = volt_y(&ribbon, slope_top_mm, ribbon.limit_v);
        drawing_line(drawing, device_pen, WAY_LEFT - 4, limit_mm, right_end(&ribbon), limit_mm);
        draw_label(&ribbon, limit_mm + 1,
                   arena_print(layout->arena, "limit %s", number_text(layout->arena, ribbon.limit_v, 1)), INK_BLACK);
    }
    draw_slope(&ribbon, slope_top_mm);
    drawing_group_end(drawing);
}

/* ---- as a block of its own ---- */

double layout_ribbon_block_height(const struct RouteLayout *layout, const struct Strip *strip, int run)
{
    double height_mm = layout_ribbon_height(layout, strip, run);
    return height_mm > 0 ? heading_mm + stretch_row_mm + height_mm + block_gap_mm : 0;
}

void layout_draw_ribbon_block(struct RouteLayout *layout, struct Drawing *drawing, int strip, int run, double top_mm)
{
    static const struct TextStyle heading_style = {.size_mm = 3.4, .bold = true, .ink = INK_BLACK};
    static const struct TextStyle grey_style = {.size_mm = TYPE_SMALL, .ink = INK_GREY};
    static const struct TextStyle number_style = {.size_mm = TYPE_SMALL, .ink = INK_BLACK, .anchor = ANCHOR_MIDDLE};
    const struct Strip *shown = &layout->strips[strip];
    const struct PlanRun *planned = &layout->plan->runs[run];
    const char *name = shown_text(layout->arena, planned->settled->name);
    const char *what = "what each stretch carries against its device, and the voltage along it";
    const char *heading = layout->strip_count == 1 ? arena_print(layout->arena, "%s: %s", name, what)
                                                   : arena_print(layout->arena, "%s, strip %d of %d: %s", name,
                                                                 strip + 1, layout->strip_count, what);
    drawing_text(drawing, heading_style, INNER_LEFT, top_mm + 3.6,
                 type_cut(layout->arena, heading, heading_style, INNER_RIGHT - INNER_LEFT));
    double row_mm = top_mm + heading_mm;
    drawing_text(drawing, grey_style, INNER_LEFT, row_mm + 3, "stretch");
    for (int i = shown->first; i <= shown->last; i++) {
        if (layout_rating_at(planned, i) != NULL) {
            drawing_text(drawing, number_style, middle_of(&layout->stretches[i]), row_mm + 3,
                         arena_print(layout->arena, "%d", i + 1));
        }
    }
    layout_draw_ribbon(layout, drawing, shown, run, row_mm + stretch_row_mm);
}
