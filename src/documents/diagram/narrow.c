/* The same facts for a phone: one segment under the other in the walker's order, 360 dots wide, no type under 12 dots.
 * At the left runs the cable with its way drawn round it; it is not to scale, so metres and level stand at each break.
 * At the right is what the cells of the sheet say, with a bar of what the segment carries. */
#include "layout_private.h"

#include "documents/shown_private.h"

#include <math.h>

static const double width = 360, margin = 8, cable_x = 83, text_x = 106, type = 13, pitch = 17.5;
static const double radius = 11.6, scale = 3.4, bar_width = 168, bar_height = 14;

static const struct Pen rule_pen = {INK_BLACK, 0.8, DASH_NONE};
static const struct Pen thing_pen = {INK_BLACK, 2, DASH_NONE};
static const struct Pen no_pen = {INK_NONE, 0, DASH_NONE};

struct Narrow {
    struct RouteLayout *layout;
    struct Drawing *drawing;
    struct Drawing nothing; /* drawn on to learn how high a text is */
    double y;               /* where the next thing goes */
};

static struct TextStyle style_of(bool bold, enum Anchor anchor)
{
    return (struct TextStyle){.size_mm = type, .bold = bold, .ink = INK_BLACK, .anchor = anchor};
}

static struct Cell new_cell(const struct Narrow *narrow, double left)
{
    return (struct Cell){
        .layout = narrow->layout, .width_mm = width - margin - left, .size_mm = type, .pitch_mm = pitch};
}

static void put_cell(struct Narrow *narrow, const struct Cell *cell, double left)
{
    cell_draw(cell, narrow->drawing, left, narrow->y);
    narrow->y += cell_height(cell);
}

static void put_said(struct Narrow *narrow, const struct Say *said, double left, bool bold)
{
    struct Cell cell = new_cell(narrow, left);
    cell_put(&cell, said, bold);
    put_cell(narrow, &cell, left);
}

static void put_rule(struct Narrow *narrow, double left)
{
    drawing_line(narrow->drawing, rule_pen, left, narrow->y, width - margin, narrow->y);
}

/* ---- the head ---- */

static void put_verdict(struct Narrow *narrow)
{
    const struct RouteLayout *layout = narrow->layout;
    const enum Verdict verdict = layout->plan->verdict;
    const double word_width = 78;
    struct TextStyle word = style_of(true, ANCHOR_MIDDLE);
    word.size_mm = 21;
    word.ink = verdict == VERDICT_FAIL ? INK_WHITE : INK_BLACK;
    struct Cell cell = new_cell(narrow, margin + word_width + 8);
    cell.width_mm -= 6;
    cell_put(&cell, verdict_said(layout), false);
    const double height = fmax(cell_height(&cell) + 8, 40);
    const struct Pen pen = {INK_BLACK, 2, verdict == VERDICT_OPEN ? DASH_LONG : DASH_NONE};
    drawing_rect(narrow->drawing, pen, INK_WHITE, margin, narrow->y, width - 2 * margin, height);
    drawing_rect(narrow->drawing, pen, verdict == VERDICT_FAIL ? INK_BLACK : INK_WHITE, margin, narrow->y, word_width,
                 height);
    drawing_text(narrow->drawing, word, margin + word_width / 2, narrow->y + height / 2 + 7.5, verdict_word(verdict));
    cell_draw(&cell, narrow->drawing, margin + word_width + 8, narrow->y + (height - cell_height(&cell)) / 2);
    narrow->y += height + 10;
}

static void put_facts(struct Narrow *narrow)
{
    const struct RouteLayout *layout = narrow->layout;
    struct Fact facts[FACTS_MOST];
    const int count = sheet_facts(layout, facts);
    const double name_width = 66;
    for (int i = 0; i < count; i++) {
        drawing_text(narrow->drawing, style_of(false, ANCHOR_LEFT), margin, narrow->y + 13.2,
                     layout_term(layout, facts[i].name));
        put_said(narrow, say_alone(layout->arena, say_name(facts[i].text)), margin + name_width, facts[i].bold);
    }
    for (int i = 0; layout->plan->run_count > 1 && i < layout->plan->run_count; i++) {
        put_said(narrow, run_said(layout, &layout->plan->runs[i]), margin, false);
    }
}

static void put_head(struct Narrow *narrow)
{
    const struct RouteLayout *layout = narrow->layout;
    const struct Job *job = &layout->plan->survey->job;
    struct Cell title = new_cell(narrow, margin);
    title.size_mm = 20;
    title.pitch_mm = 25;
    narrow->y = 8;
    cell_put(&title, say_alone(layout->arena, say_name(job->title)), true);
    put_cell(narrow, &title, margin);
    const char *const texts[] = {job->site, job->reference};
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        if (texts[i] != NULL && *texts[i] != '\0') {
            put_said(narrow, say_alone(layout->arena, say_name(texts[i])), margin, false);
        }
    }
    narrow->y += 6;
    put_verdict(narrow);
    put_facts(narrow);
    narrow->y += 8;
    put_rule(narrow, margin);
    narrow->y += 10;
}

/* ---- cautions ---- */

static void put_flag(struct Narrow *narrow, int caution)
{
    const struct RouteLayout *layout = narrow->layout;
    drawing_text(narrow->drawing, style_of(true, ANCHOR_LEFT), text_x, narrow->y + 13.2,
                 arena_print(layout->arena, "!%d", caution + 1));
    put_said(narrow, flag_short(layout, caution), text_x + 36, false);
}

/* Those of a whole run, in words where it begins. */
static void put_run_flags(struct Narrow *narrow, const struct Run *run)
{
    const struct RouteLayout *layout = narrow->layout;
    bool named = layout->plan->run_count == 1;
    for (int i = 0; i < layout->plan->caution_count; i++) {
        if (!flag_of_run(&layout->plan->cautions[i], run)) {
            continue;
        }
        if (!named) {
            put_said(narrow, say_alone(layout->arena, say_name(run->name)), text_x, true);
        }
        named = true;
        put_flag(narrow, i);
    }
}

/* ---- ends ---- */

static void put_end(struct Narrow *narrow, int end)
{
    const struct RouteLayout *layout = narrow->layout;
    const int boundary = layout->ends[end].boundary;
    const struct PlanRun *only = layout->plan->run_count == 1 ? &layout->plan->runs[0] : NULL;
    draw_end(narrow->drawing, layout->ends[end].letter, cable_x, narrow->y + 13, 13);
    put_said(narrow, say(layout->arena, end_name(layout, boundary)), text_x, true);
    if (only != NULL && only->rated) {
        narrow->y +=
            draw_earth_column(layout, narrow->drawing, only, layout_run_boundary(only->settled, true) == boundary,
                              text_x, narrow->y, type, width - margin);
    }
    struct Cell cell = new_cell(narrow, text_x);
    cells_end(&cell, end);
    put_cell(narrow, &cell, text_x);
    for (int i = 0; i < layout->plan->run_count; i++) {
        if (layout_run_boundary(layout->plan->runs[i].settled, false) == boundary) {
            put_run_flags(narrow, layout->plan->runs[i].settled);
        }
    }
    narrow->y += 12;
}

/* ---- a segment ---- */

/* What it carries from 0 A: the load grey, the device a heavy tick, what the lowest has to spare black. */
static void put_bar(struct Narrow *narrow, int segment)
{
    const struct RouteLayout *layout = narrow->layout;
    const struct PlanRun *run = layout->main_run < 0 ? NULL : &layout->plan->runs[layout->main_run];
    const struct Rating *rating = run == NULL ? NULL : layout_rating_at(run, segment);
    if (rating == NULL) {
        return;
    }
    if (rating->lacks != NULL) {
        put_said(narrow, say(layout->arena, SAY_NO_FIGURE_SHORT), text_x, true);
        return;
    }
    double most_a = fmax(run->rating_a, run->design_current_a);
    for (int i = 0; i < run->rating_count; i++) {
        most_a = fmax(most_a, run->ratings[i].capacity_a);
    }
    const double per_a = bar_width / most_a, top = narrow->y + 3, device_x = text_x + run->rating_a * per_a;
    const double end_x = text_x + rating->capacity_a * per_a;
    const bool lowest = layout_main_governs(layout, segment), short_of = rating->capacity_a < run->rating_a;
    drawing_rect(narrow->drawing, no_pen, INK_LOAD, text_x, top, run->design_current_a * per_a, bar_height);
    if (lowest) {
        drawing_rect(narrow->drawing, no_pen, INK_BLACK, fmin(device_x, end_x), top, fabs(end_x - device_x),
                     bar_height);
    }
    drawing_rect(narrow->drawing, (struct Pen){INK_BLACK, 1.6, DASH_NONE}, INK_NONE, text_x, top,
                 rating->capacity_a * per_a, bar_height);
    drawing_line(narrow->drawing, (struct Pen){INK_BLACK, 3, DASH_NONE}, device_x, top - 3, device_x,
                 top + bar_height + 3);
    drawing_text(narrow->drawing, style_of(lowest, ANCHOR_RIGHT), width - margin, top + 12,
                 layout_said(layout, say_alone(layout->arena, say_fixed(rating->capacity_a, 1, UNIT_A))));
    narrow->y += bar_height + 9;
    if (lowest) {
        const struct Say *word = say(layout->arena, short_of ? SAY_LOWEST_TOO_LOW : SAY_LOWEST);
        const struct Say *spare = say(layout->arena, short_of ? SAY_VOLTS_SHORT : SAY_SPARE,
                                      say_fixed(fabs(rating->capacity_a - run->rating_a), 1, UNIT_A));
        put_said(narrow, say_list(layout->arena, SAY_COMMA, word, say_part(spare)), text_x, true);
    }
}

static void put_flags(struct Narrow *narrow, int segment)
{
    const struct RouteLayout *layout = narrow->layout;
    for (int i = 0; i < layout->plan->caution_count; i++) {
        if (flag_at(&layout->plan->cautions[i], segment)) {
            put_flag(narrow, i);
        }
    }
}

static void put_text(struct Narrow *narrow, int segment)
{
    const struct RouteLayout *layout = narrow->layout;
    const struct Stretch *stretch = &layout->stretches[segment];
    const double length_width = 76;
    draw_number(narrow->drawing, text_x + radius, narrow->y + 12, radius, segment + 1,
                layout_main_governs(layout, segment));
    struct Cell name = new_cell(narrow, text_x + 34);
    name.width_mm -= length_width;
    cell_put(&name, say_alone(layout->arena, say_name(stretch->segment->surveyed->name)), true);
    drawing_text(narrow->drawing, style_of(true, ANCHOR_RIGHT), width - margin, narrow->y + 17,
                 layout_said(layout, say_alone(layout->arena, layout_metres(stretch->length_m))));
    narrow->y += 4;
    put_cell(narrow, &name, text_x + 34);
    narrow->y += segment >= 99 ? 7 : 5; /* a number of three figures has a larger circle */
    void (*const fills[])(struct Cell *, int) = {cells_way, cells_ground, cells_marks, cells_conditions};
    for (size_t i = 0; i < sizeof fills / sizeof fills[0]; i++) {
        struct Cell cell = new_cell(narrow, text_x);
        fills[i](&cell, segment);
        put_cell(narrow, &cell, text_x);
    }
    put_bar(narrow, segment);
    put_flags(narrow, segment);
    narrow->y += 8;
}

static void draw_hole(struct Narrow *narrow, double middle)
{
    const double half = 19, high = 14;
    drawing_rect(narrow->drawing, no_pen, INK_WHITE, cable_x - half, middle - high, 2 * half, 2 * high);
    drawing_path(narrow->drawing, rule_pen, INK_NONE);
    for (int i = 0; cable_x - half + 7 * i < cable_x + half - 6; i++) {
        const double x = cable_x - half + 7 * i;
        drawing_move(narrow->drawing, x, middle + high);
        drawing_to(narrow->drawing, fmin(x + 2 * high, cable_x + half),
                   middle + high - fmin(2 * high, cable_x + half - x));
    }
    for (int side = -1; side <= 1; side += 2) {
        drawing_line(narrow->drawing, thing_pen, cable_x - half, middle + side * high, cable_x + half,
                     middle + side * high);
    }
}

/* Between two heights on the screen: what is round the cable, and how far it rises. */
static void draw_way(struct Narrow *narrow, int segment, double top, double bottom)
{
    const struct RouteLayout *layout = narrow->layout;
    const struct Stretch *stretch = &layout->stretches[segment];
    const struct Segment *surveyed = stretch->segment->surveyed;
    const double rise_m = surveyed->rise_m.value, middle = (top + bottom) / 2;
    if (surveyed->way == WAY_THROUGH_WALL) {
        draw_hole(narrow, middle);
    } else {
        dress_way(narrow->drawing, surveyed->way, (struct WayPiece){cable_x, top, cable_x, bottom, 0, scale});
    }
    if (fabs(rise_m) >= 0.005 && bottom - top > 70) {
        const double tip = rise_m > 0 ? -1 : 1, x = 14;
        drawing_line(narrow->drawing, (struct Pen){INK_BLACK, 1.4, DASH_NONE}, x, middle - 22 * tip, x,
                     middle - 8 * tip);
        drawing_path(narrow->drawing, no_pen, INK_BLACK);
        drawing_move(narrow->drawing, x, middle - 4 * tip);
        drawing_to(narrow->drawing, x - 3.5, middle - 11 * tip);
        drawing_to(narrow->drawing, x + 3.5, middle - 11 * tip);
        drawing_close(narrow->drawing);
        drawing_text(narrow->drawing, style_of(false, ANCHOR_LEFT), margin, middle + 4 + (tip > 0 ? 14 : -2),
                     number_text(layout->arena, fabs(rise_m), 2));
    }
}

/* Metres from the start and level, on white beside the cable. */
static void draw_break(const struct Narrow *narrow, double y, double from_start_m, double level_m)
{
    struct Arena *arena = narrow->layout->arena;
    drawing_line(narrow->drawing, thing_pen, cable_x - 10, y, cable_x + 10, y);
    draw_text_on_white(narrow->drawing, style_of(true, ANCHOR_RIGHT), cable_x - 13, y + 3,
                       number_text(arena, from_start_m, 2));
    draw_text_on_white(narrow->drawing, style_of(false, ANCHOR_RIGHT), cable_x - 13, y + 3 + pitch,
                       arena_print(arena, "%s%s",
                                   level_m > 0.004    ? "+"
                                   : level_m < -0.004 ? "\xE2\x88\x92"
                                                      : "",
                                   number_text(arena, fabs(level_m), 2)));
}

static void put_segment(struct Narrow *narrow, int segment)
{
    const struct RouteLayout *layout = narrow->layout;
    const double top = narrow->y;
    struct Drawing *drawing = narrow->drawing;
    /* the text first, on nothing, to learn how high it is: the frame and the way go under it */
    narrow->drawing = &narrow->nothing;
    put_text(narrow, segment);
    drawing_forget(narrow->drawing);
    narrow->drawing = drawing;
    const double bottom = narrow->y;
    if (layout_main_governs(layout, segment)) {
        drawing_rect(drawing, (struct Pen){INK_ACCENT, 3, DASH_NONE}, INK_SHADE, text_x - 5, top + 2,
                     width - text_x + 2, bottom - top - 4);
    } else {
        drawing_line(drawing, rule_pen, text_x, bottom, width - margin, bottom);
    }
    draw_way(narrow, segment, top, bottom);
    drawing_line(drawing, (struct Pen){INK_BLACK, 6, DASH_NONE}, cable_x, top, cable_x, bottom);
    drawing_is_cable(drawing);
    draw_break(narrow, top, layout->stretches[segment].segment->from_m,
               layout->stretches[segment].segment->height_from_m);
    narrow->y = top;
    put_text(narrow, segment);
}

static void put_key(struct Narrow *narrow)
{
    const struct RouteLayout *layout = narrow->layout;
    struct Arena *arena = layout->arena;
    put_rule(narrow, margin);
    narrow->y += 8;
    if (layout->main_run >= 0) {
        const struct PlanRun *run = &layout->plan->runs[layout->main_run];
        put_said(narrow, say(arena, SAY_NARROW_BARS, say_name(run->settled->name)), margin, true);
        put_said(narrow,
                 say(arena, SAY_NARROW_KEY, say_fixed(run->design_current_a, 1, UNIT_A),
                     say_digits(run->rating_a, 4, UNIT_A)),
                 margin, false);
    }
    put_said(narrow, say(arena, SAY_NARROW_LEFT), margin, false);
    put_said(narrow, say(arena, SAY_SHEET_RULE), margin, true);
    narrow->y += 8;
}

static void hand_on(struct Narrow *narrow, const struct SheetsTaken *taken, int number)
{
    if (taken != NULL) {
        taken->sheet(taken->context, narrow->drawing, number);
        drawing_forget(narrow->drawing);
    }
}

static bool lay_out(struct RouteLayout *layout, struct Drawing *drawing, const struct SheetsTaken *taken)
{
    *drawing = drawing_new(layout->arena);
    layout->narrow = true;
    drawing->dots = true;
    drawing->width_mm = width;
    layout_describe(layout, drawing);
    if (taken != NULL && !taken->begin(taken->context, drawing, layout->stretch_count + 2)) {
        return false;
    }
    struct Narrow narrow = {.layout = layout, .drawing = drawing, .nothing = drawing_new(layout->arena)};
    put_head(&narrow);
    for (int i = 0; i <= layout->stretch_count; i++) {
        const int end = layout_end_at(layout, i);
        if (end >= 0 && i == layout->stretch_count) {
            draw_break(&narrow, narrow.y, layout->stretches[i - 1].segment->to_m,
                       layout->stretches[i - 1].segment->height_to_m);
            narrow.y += 36;
        }
        if (end >= 0) {
            put_end(&narrow, end);
        }
        if (i < layout->stretch_count) {
            put_segment(&narrow, i);
        }
        hand_on(&narrow, taken, i + 1);
    }
    put_key(&narrow);
    hand_on(&narrow, taken, layout->stretch_count + 2);
    drawing->height_mm = ceil(narrow.y);
    return !drawing->failed && !layout->failed && !arena_failed(layout->arena);
}

bool layout_narrow_parts(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                         enum Language language, const struct SheetsTaken *taken, double *height)
{
    struct RouteLayout layout;
    struct Drawing drawing;
    if (!layout_begin(&layout, arena, plan, parts, language) || !lay_out(&layout, &drawing, taken)) {
        return false;
    }
    *height = drawing.height_mm;
    return true;
}

const struct Drawing *layout_narrow(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                    enum Language language)
{
    struct RouteLayout layout;
    struct Drawing *drawing = arena_alloc(arena, sizeof *drawing);
    if (drawing == NULL || !layout_begin(&layout, arena, plan, parts, language)) {
        return NULL;
    }
    return lay_out(&layout, drawing, NULL) ? drawing : NULL;
}
