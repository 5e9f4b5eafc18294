/* The bands under a strip, a row each with what fills its cells; then, where several runs of power share the way, a row
 * of figures for each that is not drawn. A band that has nothing to say of a strip takes no room. */
#include "layout_private.h"

#include "documents/shown_private.h"

#include <math.h>

enum BandDrawn { BAND_CELLS, BAND_WAY, BAND_CAPACITY, BAND_RUN };

static const double pad_mm = 0.5, way_head_mm = 5.4;

static const struct Pen rule_pen = {INK_BLACK, WIDTH_RULE, DASH_NONE};
static const struct Pen no_pen = {INK_NONE, 0, DASH_NONE};
static const struct TextStyle bold_style = {.size_mm = TYPE_PLAIN, .bold = true, .ink = INK_BLACK};

static const struct Band {
    enum BandDrawn drawn;
    enum Saying name, note;
    void (*fill)(struct Cell *cell, int segment);
} bands[] = {
    {BAND_WAY, SAY_BAND_WAY, SAY_BAND_WAY_NOTE, cells_way},
    {BAND_CELLS, SAY_BAND_CONDITIONS, SAY_BAND_CONDITIONS_NOTE, cells_conditions},
    {BAND_CAPACITY, SAY_NOTHING, SAY_NOTHING, NULL},
    {BAND_CELLS, SAY_BAND_GROUND, SAY_BAND_GROUND_NOTE, cells_ground},
    {BAND_CELLS, SAY_BAND_MARKS, SAY_BAND_MARKS_NOTE, cells_marks},
    {BAND_CELLS, SAY_BAND_CAUTIONS, SAY_NOTHING, cells_flags},
};
enum { BANDS = (int)(sizeof bands / sizeof bands[0]) };

int bands_count(const struct RouteLayout *layout)
{
    return BANDS + layout->plan->run_count;
}

/* The run of a row of figures; NULL where it has none of its own. Runs with the same figures have one for all. */
static const struct PlanRun *band_run(const struct RouteLayout *layout, int band)
{
    const int run = band - BANDS;
    return run >= 0 && run != layout->main_run && layout->first_like[run] == run && layout->plan->runs[run].rated
               ? &layout->plan->runs[run]
               : NULL;
}

static const struct Say *names_like(const struct RouteLayout *layout, int run)
{
    const struct Say *names = NULL;
    for (int i = run; i < layout->plan->run_count; i++) {
        if (i != layout->main_run && layout->first_like[i] == run) {
            names = say_list(layout->arena, SAY_COMMA, names, say_name(layout->plan->runs[i].settled->name));
        }
    }
    return names;
}

static struct Cell new_cell(const struct RouteLayout *layout, double width_mm)
{
    return (struct Cell){.layout = layout, .width_mm = width_mm, .size_mm = TYPE_PLAIN, .pitch_mm = LINE_PITCH};
}

static struct Cell filled(const struct RouteLayout *layout, const struct Strip *strip, int band, int segment)
{
    struct Cell cell = new_cell(layout, strip->column_mm - 2 * CELL_PAD);
    const struct PlanRun *run = band_run(layout, band);
    if (band < BANDS && bands[band].fill != NULL) {
        bands[band].fill(&cell, segment);
    } else if (run != NULL) {
        const struct Rating *rating = layout_rating_at(run, segment);
        const bool lowest = layout_governs(run, segment);
        if (rating != NULL && rating->lacks != NULL) {
            cell_put(&cell, say(layout->arena, SAY_NO_FIGURE_SHORT), true);
        } else if (rating != NULL) {
            cell_put(&cell, say_alone(layout->arena, say_fixed(rating->capacity_a, 1, UNIT_A)), lowest);
            cell_put(&cell,
                     !lowest ? NULL
                             : say(layout->arena, rating->capacity_a < run->rating_a ? SAY_LOWEST_TOO_LOW : SAY_LOWEST),
                     true);
        }
    }
    return cell;
}

/* The band's name at the left. */
static struct Cell name_cell(const struct RouteLayout *layout, int band)
{
    struct Cell cell = new_cell(layout, CELLS_LEFT - FRAME_LEFT - 1);
    const struct PlanRun *run = band_run(layout, band);
    if (run != NULL) {
        cell_put(&cell, say(layout->arena, SAY_BAND_CAPACITY_OF, say_part(names_like(layout, band - BANDS))), true);
        cell_put(&cell,
                 say(layout->arena, SAY_BAND_CAPACITY_NOTE, say_digits(run->rating_a, 4, UNIT_A),
                     say_fixed(run->design_current_a, 1, UNIT_A)),
                 false);
    } else if (band < BANDS && bands[band].name != SAY_NOTHING) {
        cell_put(&cell, say(layout->arena, bands[band].name), true);
        if (bands[band].note != SAY_NOTHING) {
            cell_put(&cell, say(layout->arena, bands[band].note), false);
        }
    }
    return cell;
}

static bool has_capacity(const struct RouteLayout *layout, const struct Strip *strip)
{
    for (int i = strip->first; layout->main_run >= 0 && i <= strip->last; i++) {
        if (layout_rating_at(&layout->plan->runs[layout->main_run], i) != NULL) {
            return true;
        }
    }
    return false;
}

double band_height(const struct RouteLayout *layout, const struct Strip *strip, int band)
{
    if (band < BANDS && bands[band].drawn == BAND_CAPACITY) {
        return has_capacity(layout, strip) ? CAPACITY_HEIGHT : 0;
    }
    double height_mm = 0;
    for (int i = strip->first; i <= strip->last; i++) {
        const struct Cell cell = filled(layout, strip, band, i);
        height_mm = fmax(height_mm, cell_height(&cell));
    }
    const struct Cell name = name_cell(layout, band);
    const double head_mm = band < BANDS && bands[band].drawn == BAND_WAY ? way_head_mm : 0;
    return height_mm > 0 ? fmax(height_mm + head_mm, cell_height(&name)) + 2 * pad_mm : 0;
}

static void draw_way_head(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                          int segment, double top_mm)
{
    static const struct TextStyle length_style = {
        .size_mm = TYPE_LARGE, .bold = true, .ink = INK_BLACK, .anchor = ANCHOR_RIGHT};
    const struct Stretch *stretch = &layout->stretches[segment];
    sign_draw(drawing, way_sign(stretch->segment->surveyed->way), stretch->cell_mm + CELL_PAD, top_mm + 0.6, 0.8);
    drawing_text(drawing, length_style, stretch->cell_mm + strip->column_mm - CELL_PAD, top_mm + 4.2,
                 layout_said(layout, say_alone(layout->arena, layout_metres(stretch->length_m))));
}

void band_draw(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip, int band,
               double top_mm)
{
    const double height_mm = band_height(layout, strip, band);
    const bool capacity = band < BANDS && bands[band].drawn == BAND_CAPACITY;
    const bool way = band < BANDS && bands[band].drawn == BAND_WAY;
    const struct Cell name = name_cell(layout, band);
    for (int i = strip->first; i <= strip->last; i++) {
        const struct Stretch *stretch = &layout->stretches[i];
        if (layout_main_governs(layout, i) && band_run(layout, band) == NULL) {
            drawing_rect(drawing, no_pen, INK_SHADE, stretch->cell_mm, top_mm, strip->column_mm, height_mm);
        }
    }
    drawing_line(drawing, rule_pen, FRAME_LEFT, top_mm, FRAME_RIGHT, top_mm);
    cell_draw(&name, drawing, FRAME_LEFT, top_mm + pad_mm);
    for (int i = strip->first; i <= strip->last + 1; i++) {
        const double x_mm = CELLS_LEFT + (i - strip->first) * strip->column_mm;
        drawing_line(drawing, rule_pen, x_mm, top_mm, x_mm, top_mm + height_mm);
    }
    if (capacity) {
        capacity_draw(layout, drawing, strip, top_mm);
    }
    for (int i = strip->first; i <= strip->last; i++) {
        const struct Cell cell = filled(layout, strip, band, i);
        if (way) {
            draw_way_head(layout, drawing, strip, i, top_mm);
        }
        cell_draw(&cell, drawing, layout->stretches[i].cell_mm + CELL_PAD, top_mm + pad_mm + (way ? way_head_mm : 0));
    }
}

/* ---- capacity ---- */

struct Steps {
    const struct RouteLayout *layout;
    struct Drawing *drawing;
    const struct Strip *strip;
    const struct PlanRun *run;
    double base_mm, per_a;
};

static double amps_mm(const struct Steps *steps, double amps)
{
    return steps->base_mm - amps * steps->per_a;
}

/* From 0 A up: so that the highest step has room for its figure and the lowest segment for its three. */
static double amps_scale(const struct Steps *steps)
{
    const struct PlanRun *run = steps->run;
    double most_a = fmax(run->rating_a, run->design_current_a);
    for (int i = 0; i < run->rating_count; i++) {
        most_a = fmax(most_a, run->ratings[i].capacity_a);
    }
    return fmin((CAPACITY_HEIGHT - 5.2) / fmax(most_a, 0.001),
                (CAPACITY_HEIGHT - 8.6) / fmax(fmax(run->capacity_a, run->rating_a), 0.001));
}

static void draw_levels(const struct Steps *steps)
{
    struct Arena *arena = steps->layout->arena;
    const struct PlanRun *run = steps->run;
    const double device_mm = amps_mm(steps, run->rating_a), load_mm = amps_mm(steps, run->design_current_a);
    const double top_mm = steps->base_mm + 0.6 - CAPACITY_HEIGHT;
    struct TextStyle right_bold = bold_style, right_plain = bold_style;
    right_bold.anchor = right_plain.anchor = ANCHOR_RIGHT;
    right_plain.bold = false;
    const bool several = steps->layout->plan->run_count > 1;
    const char *name =
        layout_said(steps->layout, several ? say(arena, SAY_BAND_CAPACITY_OF, say_name(run->settled->name))
                                           : say(arena, SAY_BAND_CAPACITY));
    const char *lines[2];
    const int count = type_wrap(arena, shown_text(arena, name), bold_style, CELLS_LEFT - FRAME_LEFT - 1, 2, lines);
    for (int i = 0; i < count; i++) {
        drawing_text(steps->drawing, bold_style, FRAME_LEFT, top_mm + 3.6 + i * LINE_PITCH, lines[i]);
    }
    const double least_mm = top_mm + 3.6 + count * LINE_PITCH, most_mm = steps->base_mm - 0.4;
    const double load_base_mm = fmin(fmax(load_mm + 1, least_mm + LINE_PITCH), most_mm);
    const double device_base_mm = fmin(fmax(device_mm + 1, least_mm), load_base_mm - LINE_PITCH);
    drawing_text(steps->drawing, right_bold, CELLS_LEFT - 1, device_base_mm,
                 layout_said(steps->layout, say(arena, SAY_BAND_DEVICE, say_digits(run->rating_a, 4, UNIT_A))));
    drawing_text(steps->drawing, right_plain, CELLS_LEFT - 1, load_base_mm,
                 layout_said(steps->layout, say(arena, SAY_BAND_LOAD, say_fixed(run->design_current_a, 1, UNIT_A))));
}

/* The lowest segment: its word, its figure, and what it has to spare as a solid block as high as it is large. */
static void draw_lowest(const struct Steps *steps, double left_mm, const struct Rating *rating)
{
    struct Arena *arena = steps->layout->arena;
    const double width_mm = steps->strip->column_mm, device_mm = amps_mm(steps, steps->run->rating_a);
    const double at_mm = amps_mm(steps, rating->capacity_a), spare_a = rating->capacity_a - steps->run->rating_a;
    const double block_mm = fabs(device_mm - at_mm), top_mm = fmin(device_mm, at_mm);
    struct TextStyle style = {.size_mm = TYPE_PLAIN, .bold = true, .ink = INK_ACCENT, .anchor = ANCHOR_MIDDLE};
    const double x_mm = left_mm + width_mm / 2;
    drawing_rect(steps->drawing, no_pen, INK_BLACK, left_mm, top_mm, width_mm, fmax(block_mm, 0.6));
    drawing_text(steps->drawing, style, x_mm, top_mm - 5.4,
                 layout_term(steps->layout, spare_a < 0 ? SAY_LOWEST_TOO_LOW : SAY_LOWEST));
    style.ink = INK_BLACK;
    const struct SayArg amps = say_fixed(rating->capacity_a, 1, UNIT_A), spare = say_fixed(fabs(spare_a), 1, UNIT_A);
    const char *spare_text = layout_said(steps->layout, say(arena, spare_a < 0 ? SAY_VOLTS_SHORT : SAY_SPARE, spare));
    style.bold = type_width_mm(spare_text, style.size_mm, true) < width_mm;
    const bool inside = block_mm >= 2.9 && type_width_mm(spare_text, style.size_mm, style.bold) < width_mm;
    const char *both = layout_said(steps->layout, spare_a < 0 ? say_list(arena, SAY_COMMA, say_alone(arena, amps),
                                                                         say_part(say(arena, SAY_VOLTS_SHORT, spare)))
                                                              : say(arena, SAY_CAPACITY_AND_SPARE, amps, spare));
    struct TextStyle figure_style = style;
    figure_style.size_mm = TYPE_LARGE;
    figure_style.bold = true;
    const bool together = !inside && type_width_mm(both, TYPE_LARGE, true) < width_mm;
    drawing_text(steps->drawing, figure_style, x_mm, top_mm - 1.2,
                 together ? both : layout_said(steps->layout, say_alone(arena, amps)));
    if (inside) {
        style.ink = INK_WHITE;
        drawing_text(steps->drawing, style, x_mm, top_mm + block_mm / 2 + 0.95, spare_text);
    }
}

static void draw_steps(const struct Steps *steps)
{
    static const struct TextStyle middle_style = {.size_mm = TYPE_PLAIN, .ink = INK_BLACK, .anchor = ANCHOR_MIDDLE};
    static const struct TextStyle gap_style = {
        .size_mm = TYPE_PLAIN, .bold = true, .ink = INK_ACCENT, .anchor = ANCHOR_MIDDLE};
    const struct RouteLayout *layout = steps->layout;
    bool on = false;
    drawing_path(steps->drawing, (struct Pen){INK_BLACK, 0.9, DASH_NONE}, INK_NONE);
    for (int i = steps->strip->first; i <= steps->strip->last; i++) {
        const struct Rating *rating = layout_rating_at(steps->run, i);
        const double left_mm = layout->stretches[i].cell_mm;
        const bool held = rating != NULL && rating->lacks == NULL;
        if (held) {
            (on ? drawing_to : drawing_move)(steps->drawing, left_mm, amps_mm(steps, rating->capacity_a));
            drawing_to(steps->drawing, left_mm + steps->strip->column_mm, amps_mm(steps, rating->capacity_a));
        }
        on = held;
    }
    for (int i = steps->strip->first; i <= steps->strip->last; i++) {
        const struct Rating *rating = layout_rating_at(steps->run, i);
        const double left_mm = layout->stretches[i].cell_mm;
        if (rating == NULL) {
            continue;
        }
        if (rating->lacks != NULL) {
            drawing_text(steps->drawing, gap_style, left_mm + steps->strip->column_mm / 2,
                         amps_mm(steps, steps->run->rating_a) - 1.2, layout_term(layout, SAY_NO_FIGURE_SHORT));
        } else if (layout_governs(steps->run, i)) {
            draw_lowest(steps, left_mm, rating);
        } else {
            drawing_text(steps->drawing, middle_style, left_mm + steps->strip->column_mm / 2,
                         fmin(amps_mm(steps, rating->capacity_a), amps_mm(steps, steps->run->rating_a)) - 1.2,
                         layout_said(layout, say_alone(layout->arena, say_fixed(rating->capacity_a, 1, UNIT_A))));
        }
    }
}

void capacity_draw(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip, double top_mm)
{
    struct Steps steps = {.layout = layout,
                          .drawing = drawing,
                          .strip = strip,
                          .run = &layout->plan->runs[layout->main_run],
                          .base_mm = top_mm + CAPACITY_HEIGHT - 0.6};
    steps.per_a = amps_scale(&steps);
    for (int i = strip->first; i <= strip->last; i++) {
        if (layout_rating_at(steps.run, i) != NULL) {
            const double left_mm = layout->stretches[i].cell_mm, right_mm = left_mm + strip->column_mm;
            const double load_mm = amps_mm(&steps, steps.run->design_current_a);
            const double device_mm = amps_mm(&steps, steps.run->rating_a);
            drawing_rect(drawing, no_pen, INK_LOAD, left_mm, load_mm, strip->column_mm, steps.base_mm - load_mm);
            drawing_line(drawing, rule_pen, left_mm, load_mm, right_mm, load_mm);
            drawing_line(drawing, (struct Pen){INK_BLACK, WIDTH_THING, DASH_LONG}, left_mm, device_mm, right_mm,
                         device_mm);
        }
    }
    draw_levels(&steps);
    draw_steps(&steps);
}
