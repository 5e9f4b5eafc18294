/* The order of the layout, from the plan to a finished drawing list. Sheets are laid out twice: the first time to learn
 * how many there are, since each says "sheet 2 of 3". */
#include "layout_private.h"

#include "documents/shown_private.h"

#include <math.h>

const char *layout_said(const struct RouteLayout *layout, const struct Say *said)
{
    const struct Words signs = {.language = layout->language, .medium = MEDIUM_SIGNS, .together = true};
    return words_said(layout->arena, &signs, said);
}

const char *layout_term(const struct RouteLayout *layout, enum Saying id)
{
    return layout_said(layout, say(layout->arena, id));
}

struct SayArg layout_metres(double value_m)
{
    return say_digits(floor(value_m * 100 + 0.5) / 100, 9, UNIT_M);
}

bool layout_follows(const struct RouteLayout *layout, int run, int segment)
{
    const struct Run *surveyed = layout->plan->runs[run].settled;
    for (int i = 0; i < surveyed->along_count; i++) {
        if (surveyed->along[i] == segment) {
            return true;
        }
    }
    return false;
}

static int tightest_run(const struct Plan *plan)
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

/* The same device, load and capacity everywhere. */
static bool same_figures(const struct PlanRun *a, const struct PlanRun *b)
{
    bool same = a->rated == b->rated && a->rating_a == b->rating_a && a->design_current_a == b->design_current_a &&
                a->governing == b->governing && a->rating_count == b->rating_count;
    for (int i = 0; same && i < a->rating_count; i++) {
        const struct Rating *one = &a->ratings[i], *other = &b->ratings[i];
        same = one->segment == other->segment && one->capacity_a == other->capacity_a &&
               (one->lacks == NULL) == (other->lacks == NULL);
    }
    return same;
}

static void find_like(struct RouteLayout *layout)
{
    const struct Plan *plan = layout->plan;
    layout->first_like = arena_array(layout->arena, (size_t)plan->run_count, sizeof *layout->first_like);
    layout->failed = layout->failed || layout->first_like == NULL;
    for (int i = 0; !layout->failed && i < plan->run_count; i++) {
        int first = 0;
        while (first < i && (first == layout->main_run || !same_figures(&plan->runs[first], &plan->runs[i]))) {
            first++;
        }
        layout->first_like[i] = first;
    }
}

bool layout_begin(struct RouteLayout *layout, struct Arena *arena, const struct Plan *plan,
                  const struct PartsList *parts, enum Language language)
{
    *layout = (struct RouteLayout){.arena = arena, .plan = plan, .parts = parts, .language = language, .up = 1};
    layout->stretch_count = plan->segment_count;
    layout->stretches = arena_array(arena, (size_t)layout->stretch_count, sizeof *layout->stretches);
    if (layout->stretches == NULL || plan->segment_count == 0) {
        return false;
    }
    for (int i = 0; i < layout->stretch_count; i++) {
        const struct PlanSegment *segment = &plan->segments[i];
        layout->stretches[i] =
            (struct Stretch){.segment = segment, .number = i + 1, .length_m = segment->surveyed->length_m.value};
    }
    layout_ends(layout);
    layout->main_run = tightest_run(plan);
    find_like(layout);
    return !layout->failed;
}

void layout_describe(const struct RouteLayout *layout, struct Drawing *drawing)
{
    struct Arena *arena = layout->arena;
    const struct Plan *plan = layout->plan;
    const double length_m = layout->stretches[layout->stretch_count - 1].segment->to_m;
    const struct Say *shows = say(arena, SAY_DIAGRAM_SHOWS, say_count(layout->stretch_count), layout_metres(length_m));
    for (int i = 0; i < plan->run_count && i < 6; i++) {
        const struct PlanRun *run = &plan->runs[i];
        if (run->rated) {
            shows = say_then(arena, shows,
                             say(arena, SAY_DIAGRAM_RUN, say_name(run->settled->name),
                                 say_digits(run->size_mm2, 4, UNIT_MM2), say_part(run->device_text)));
        }
    }
    shows = say_then(
        arena, shows,
        say(arena, SAY_DIAGRAM_RESULT, say_name(verdict_word(plan->verdict)), say_part(plan_verdict_said(plan))));
    drawing->title =
        shown_text(arena, layout_said(layout, say(arena, SAY_DIAGRAM_TITLE, say_name(plan->survey->job.title))));
    drawing->description = shown_text(arena, layout_said(layout, shows));
    drawing->language = layout->language;
}

/* The frame round the column of the lowest segment, over what was drawn of it on a sheet. */
static void frame_lowest(const struct SheetFlow *flow, double top_mm)
{
    const struct RouteLayout *layout = flow->layout;
    for (int i = flow->strip->first; !flow->counts && i <= flow->strip->last; i++) {
        if (layout_main_governs(layout, i)) {
            drawing_rect(flow->drawing, (struct Pen){INK_ACCENT, 0.9, DASH_NONE}, INK_NONE,
                         layout->stretches[i].cell_mm, top_mm, flow->strip->column_mm, flow->y_mm - top_mm);
        }
    }
}

/* The next sheet of a strip, under the heads of its columns. */
static void flow_heads(struct SheetFlow *flow)
{
    sheet_next(flow);
    if (!flow->counts) {
        strip_heads_draw(flow->layout, flow->drawing, flow->strip, flow->y_mm);
    }
    flow->y_mm += strip_heads_height(flow->layout, flow->strip);
}

/* A band on this sheet, or on the next under the heads of the columns. `framed_mm`: where the frame of the lowest
 * segment begins on the sheet; NULL where there is none. */
static void flow_band(struct SheetFlow *flow, int band, double *framed_mm)
{
    struct RouteLayout *layout = flow->layout;
    const double height_mm = band_height(layout, flow->strip, band);
    if (height_mm > 0 && !sheet_has_room(flow, height_mm)) {
        if (framed_mm != NULL) {
            frame_lowest(flow, *framed_mm);
        }
        flow_heads(flow);
        if (framed_mm != NULL) {
            *framed_mm = flow->y_mm - strip_heads_height(layout, flow->strip);
        }
    }
    if (height_mm > 0 && !flow->counts) {
        band_draw(layout, flow->drawing, flow->strip, band, flow->y_mm);
    }
    flow->y_mm += height_mm > 0 ? height_mm : 0;
}

static void flow_own_bands(struct SheetFlow *flow)
{
    double framed_mm = flow->y_mm - strip_heads_height(flow->layout, flow->strip);
    const int own = bands_count(flow->layout) - flow->layout->plan->run_count;
    for (int band = 0; band < own; band++) {
        flow_band(flow, band, &framed_mm);
    }
    frame_lowest(flow, framed_mm);
}

static bool has_run_bands(const struct SheetFlow *flow)
{
    bool has = false;
    for (int run = flow->layout->plan->run_count; run > 0; run--) {
        has = has || band_height(flow->layout, flow->strip, bands_count(flow->layout) - run) > 0;
    }
    return has;
}

/* Other runs have their own lowest segments, so the frame has ended before their rows. */
static void flow_run_bands(struct SheetFlow *flow)
{
    for (int run = flow->layout->plan->run_count; run > 0; run--) {
        flow_band(flow, bands_count(flow->layout) - run, NULL);
    }
}

/* The profile, with what stands on it. */
static void flow_block(struct SheetFlow *flow, int index)
{
    struct RouteLayout *layout = flow->layout;
    if (!flow->counts) {
        drawing_group(flow->drawing, arena_print(layout->arena, "strip-%d", index + 1), "");
        strip_block_draw(layout, flow->drawing, index, flow->y_mm);
        drawing_group_end(flow->drawing);
    }
    flow->y_mm += strip_block_height(layout, flow->strip);
}

static void flow_below(struct SheetFlow *flow, enum Below below)
{
    struct RouteLayout *layout = flow->layout;
    const double height_mm = below_height(layout, flow->strip, below);
    if (height_mm <= 0) {
        return;
    }
    if (!sheet_has_room(flow, height_mm)) {
        sheet_next(flow);
    }
    if (!flow->counts) {
        below_draw(layout, flow->drawing, flow->strip, below, flow->y_mm);
    }
    flow->y_mm += height_mm;
}

static void flow_strip(struct SheetFlow *flow, int index)
{
    struct RouteLayout *layout = flow->layout;
    flow->strip = &layout->strips[index];
    sheet_next(flow);
    if (index == 0) {
        const double table_mm = runs_table_height(layout);
        if (!flow->counts) {
            runs_table_draw(layout, flow->drawing, flow->y_mm);
        }
        flow->y_mm += table_mm;
        if (!sheet_has_room(flow, strip_block_height(layout, flow->strip))) {
            sheet_next(flow);
        }
    }
    flow_block(flow, index);
    flow_own_bands(flow);
    if (flow->strip->holds != HOLDS_KEYS) {
        flow_run_bands(flow);
    }
    if (flow->strip->holds == HOLDS_ALL || flow->strip->holds == HOLDS_ITSELF) {
        flow_below(flow, BELOW_ENDS);
    }
    flow_below(flow, BELOW_FLAGS);
    flow_below(flow, BELOW_SIGNS);
    if (flow->strip->holds == HOLDS_KEYS && has_run_bands(flow)) {
        flow_heads(flow);
        flow_run_bands(flow);
    }
    if (flow->strip->holds == HOLDS_KEYS || flow->strip->holds == HOLDS_RUNS) {
        flow_below(flow, BELOW_ENDS);
    }
}

static void fill_sheets(struct SheetFlow *flow)
{
    struct RouteLayout *layout = flow->layout;
    for (int i = 0; i < layout->strip_count; i++) {
        flow_strip(flow, i);
    }
    if (layout->view != NULL) {
        static const double over_mm = 2;
        if (!sheet_has_room(flow, layout_view_height(layout, 0) + over_mm)) {
            flow->strip = NULL;
            sheet_next(flow);
        }
        if (!flow->counts) {
            layout_view_height(layout, sheet_room(flow) - over_mm);
            layout_draw_view(layout, flow->drawing, flow->y_mm + over_mm);
        }
    }
    sheet_end(flow);
}

/* Gone through twice, because each sheet says how many there are: once to count them. */
static bool lay_out(struct RouteLayout *layout, struct Drawing *drawing, const struct SheetsTaken *taken)
{
    layout_strips(layout);
    layout_view(layout);
    *drawing = drawing_new(layout->arena);
    layout_describe(layout, drawing);
    if (layout->failed) {
        return false;
    }
    struct SheetFlow counting = {.layout = layout, .drawing = drawing, .counts = true};
    fill_sheets(&counting);
    if (layout->failed || (taken != NULL && !taken->begin(taken->context, drawing, counting.sheet))) {
        return false;
    }
    struct SheetFlow flow = {.layout = layout, .drawing = drawing, .sheet_count = counting.sheet, .taken = taken};
    fill_sheets(&flow);
    return !drawing->failed && !layout->failed && !arena_failed(layout->arena);
}

bool layout_sheets(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts, enum Language language,
                   const char *mark, const struct SheetsTaken *taken)
{
    struct RouteLayout layout;
    struct Drawing drawing;
    if (!layout_begin(&layout, arena, plan, parts, language)) {
        return false;
    }
    layout.mark = mark;
    return lay_out(&layout, &drawing, taken);
}

const struct Drawing *layout_drawing(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                     enum Language language, const char *mark)
{
    struct RouteLayout layout;
    struct Drawing *drawing = arena_alloc(arena, sizeof *drawing);
    if (drawing == NULL || !layout_begin(&layout, arena, plan, parts, language)) {
        return NULL;
    }
    layout.mark = mark;
    return lay_out(&layout, drawing, NULL) ? drawing : NULL;
}
