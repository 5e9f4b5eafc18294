/* The order of the layout, from the plan to a finished drawing list. Sheets are laid out twice: the first time to learn
 * how many there are, since each says "sheet 2 of 3". */
#include "layout_private.h"

#include "documents/shown_private.h"

#include <math.h>

const char *layout_metres(const struct RouteLayout *layout, double value_m)
{
    double rounded = floor(value_m * 100 + 0.5) / 100;
    return number_significant(layout->arena, rounded, 9);
}

const char *layout_said(const struct RouteLayout *layout, const struct Say *said)
{
    const struct Words signs = {.language = layout->language, .medium = MEDIUM_SIGNS, .together = true};
    return words_said(layout->arena, &signs, said);
}

static bool copy_stretches(struct RouteLayout *layout)
{
    layout->stretch_count = layout->plan->segment_count;
    layout->stretches = arena_array(layout->arena, (size_t)layout->stretch_count, sizeof *layout->stretches);
    if (layout->stretches == NULL) {
        return false;
    }
    for (int i = 0; i < layout->stretch_count; i++) {
        const struct PlanSegment *segment = &layout->plan->segments[i];
        layout->stretches[i] =
            (struct Stretch){.segment = segment, .number = i + 1, .length_m = segment->surveyed->length_m.value};
    }
    return true;
}

static bool make_strips(struct RouteLayout *layout, int labels_most)
{
    layout->labels_most = labels_most;
    layout_scale(layout);
    for (int s = 0; s < layout->strip_count; s++) {
        layout_chainage_rows(layout, &layout->strips[s]);
        layout_labels(layout, &layout->strips[s]);
    }
    if (layout->failed || layout->strip_count == 0) {
        return false;
    }
    layout->ribbon_apart = layout->too_high = false;
    if (!layout_scale_up(layout)) { /* the strips alone are as high as a sheet */
        layout->ribbon_apart = true;
        layout->too_high = !layout_scale_up(layout);
    }
    return true;
}

enum { CHOICES = 4, GOOD_ENOUGH = 1024 * 256 };

static const int choices[CHOICES] = {ONE_ROW_MOST, ONE_ROW_MOST - 2, ONE_ROW_MOST - 3, TWO_ROWS_MOST};

/* A ribbon away from its strip is worse than a first sheet with nothing but its table, that than another sheet, and
 * that than another cut in the way. */
static int badness(const struct RouteLayout *layout)
{
    int empty =
        (layout->too_high ? 4 : 0) + (layout->ribbon_apart ? 2 : 0) + (layout_begins_on_first_sheet(layout) ? 0 : 1);
    return (empty * 1024 + layout_sheet_count(layout)) * 256 + layout->strip_count;
}

/* Few high strips or many low ones: two rows of boxes, one, or fewer boxes that are wider and lower. */
static bool prepare(struct RouteLayout *layout)
{
    if (!copy_stretches(layout)) {
        return false;
    }
    layout_ends(layout);
    layout_cautions(layout);
    layout_view(layout);
    layout->ribbon_run = layout_tightest_run(layout->plan);
    if (layout->failed) {
        return false;
    }
    int best = 0, least = 0;
    for (int i = 0; i < CHOICES; i++) {
        if (!make_strips(layout, choices[i])) {
            return false;
        }
        int bad = badness(layout);
        if (i == 0 || bad < least) {
            best = i;
            least = bad;
        }
        if (i == 0 && layout->strip_count == 1 && bad < GOOD_ENOUGH) {
            break;
        }
    }
    if (!make_strips(layout, choices[best])) {
        return false;
    }
    return !arena_failed(layout->arena);
}

static const char *description(const struct RouteLayout *layout)
{
    const struct Plan *plan = layout->plan;
    struct TextBuilder text = text_builder(layout->arena);
    text_print(&text, "A cable way of %d stretches, %s m long, drawn as an unfolded elevation.", layout->stretch_count,
               layout_metres(layout, layout->stretches[layout->stretch_count - 1].segment->to_m));
    for (int i = 0; i < plan->run_count && i < 6; i++) {
        const struct PlanRun *run = &plan->runs[i];
        if (run->rated) {
            text_print(&text, " %s: %s %s, %s.", run->settled->name, shown_size(layout->arena, run),
                       survey_word(WORDS_CABLE, (int)run->settled->cable.type),
                       shown_said(layout->arena, run->device_text));
        }
    }
    text_print(&text, " Result: %s, %s.", verdict_word(plan->verdict), shown_said(layout->arena, plan->verdict_text));
    return shown_text(layout->arena, text_done(&text));
}

const struct Drawing *layout_drawing(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                     enum Language language)
{
    struct RouteLayout layout = {.arena = arena, .plan = plan, .parts = parts, .language = language};
    struct Drawing *drawing = arena_alloc(arena, sizeof *drawing);
    if (drawing == NULL || plan->segment_count == 0 || !prepare(&layout)) {
        return NULL;
    }
    int sheet_count = 0;
    for (int pass = 0; pass < 2; pass++) {
        *drawing = drawing_new(arena);
        struct SheetFlow flow = {.layout = &layout, .drawing = drawing, .sheet_count = sheet_count};
        layout_fill_sheets(&flow);
        sheet_count = flow.sheet;
    }
    drawing->title = shown_text(arena, arena_print(arena, "Run diagram: %s", plan->survey->job.title));
    drawing->description = description(&layout);
    drawing->language = language;
    return drawing->failed || layout.failed || arena_failed(arena) ? NULL : drawing;
}
