/* The table of runs at the head of the drawing: what was chosen for each, and whether it passes. */
#include "layout_private.h"

#include "documents/shown_private.h"

enum { COLUMN_COUNT = 8 };

#define SAMPLE 10.0 /* a run's line before its name, mm */

static const struct TextStyle cell_style = {.size_mm = TYPE_PLAIN, .ink = INK_BLACK};
static const struct TextStyle strong_style = {.size_mm = TYPE_PLAIN, .bold = true, .ink = INK_BLACK};
static const struct TextStyle head_style = {.size_mm = TYPE_SMALL, .ink = INK_GREY};
static const struct Pen rule_pen = {INK_PALE, WIDTH_HAIR, DASH_NONE};

static const struct {
    const char *head;
    double width_mm;
} columns[COLUMN_COUNT] = {
    {"run", 33},  {"ends", 12},        {"cable", 56}, {"device", 40}, {"route / electrical / to order", 45},
    {"drop", 17}, {"governed by", 38}, {"result", 30}};

/* The names stand behind samples of their lines. */
static void draw_cells(struct SheetFlow *flow, double top_mm, const char *const *texts, const struct TextStyle *styles)
{
    double sample_mm = flow->layout->plan->run_count > 1 ? SAMPLE : 0, x_mm = INNER_LEFT;
    for (int i = 0; i < COLUMN_COUNT; i++) {
        const char *shown = shown_text(flow->drawing->arena, texts[i]);
        double indent_mm = i == 0 ? sample_mm : 0;
        drawing_text(flow->drawing, styles[i], x_mm + indent_mm, top_mm + 3.4,
                     type_cut(flow->drawing->arena, shown, styles[i], columns[i].width_mm - 2 - indent_mm));
        x_mm += columns[i].width_mm;
    }
    drawing_line(flow->drawing, rule_pen, INNER_LEFT, top_mm + RUN_ROW, INNER_RIGHT, top_mm + RUN_ROW);
}

static void draw_head(struct SheetFlow *flow, double top_mm)
{
    const char *texts[COLUMN_COUNT];
    struct TextStyle styles[COLUMN_COUNT];
    for (int i = 0; i < COLUMN_COUNT; i++) {
        texts[i] = columns[i].head;
        styles[i] = head_style;
    }
    draw_cells(flow, top_mm, texts, styles);
}

static const char *cable_text(struct Arena *arena, const struct PlanRun *run)
{
    struct TextBuilder text = text_builder(arena);
    if (run->settled->cable.cores > 0) {
        text_print(&text, "%d-core ", run->settled->cable.cores);
    }
    if (run->size_mm2 > 0) {
        text_print(&text, "%s ", shown_size(arena, run));
    }
    text_add(&text, survey_word(WORDS_CABLE, (int)run->settled->cable.type));
    return text_done(&text);
}

static const char *result_text(struct Arena *arena, const struct PlanRun *run)
{
    if (!run->rated) {
        return "not rated";
    }
    struct TextBuilder text = text_builder(arena);
    text_print(&text, "%s%s", verdict_word(run->verdict), run->verdict == VERDICT_PASS ? "" : ":");
    for (int i = 0; i < run->check_count; i++) {
        const struct Check *check = &run->checks[i];
        if (run->verdict == VERDICT_FAIL ? check->result == CHECK_FAIL : check->open) {
            text_print(&text, " %s", run->checks[i].id);
        }
    }
    return text_done(&text);
}

static const char *ends_text(const struct RouteLayout *layout, const struct Run *run)
{
    int start = layout_end_at(layout, layout_run_boundary(run, false));
    int finish = layout_end_at(layout, layout_run_boundary(run, true));
    return start < 0 || finish < 0 ? ""
                                   : arena_print(layout->arena, "%s\xE2\x80\x93%s", layout->ends[start].letter,
                                                 layout->ends[finish].letter);
}

static const char *governing_text(const struct RouteLayout *layout, const struct PlanRun *run)
{
    if (!run->rated || run->governing < 0 || run->governing >= run->rating_count) {
        return "";
    }
    int segment = run->ratings[run->governing].segment;
    return arena_print(layout->arena, "%d %s", segment + 1, layout->plan->segments[segment].surveyed->name);
}

static void draw_run(struct SheetFlow *flow, double top_mm, int index)
{
    const struct RouteLayout *layout = flow->layout;
    const struct PlanRun *run = &layout->plan->runs[index];
    struct Arena *arena = layout->arena;
    int decimals = run->route_length_m < 1000 ? 2 : 1;
    const char *lengths = arena_print(arena, "%s / %s / %d m", number_text(arena, run->route_length_m, decimals),
                                      number_text(arena, run->electrical_length_m, decimals), run->order_length_m);
    const char *drop = run->rated ? arena_print(arena, "%s %%", number_text(arena, run->drop_percent, 2)) : "";
    const char *const texts[COLUMN_COUNT] = {run->settled->name,
                                             ends_text(layout, run->settled),
                                             cable_text(arena, run),
                                             shown_said(arena, run->device_text),
                                             lengths,
                                             drop,
                                             governing_text(layout, run),
                                             result_text(arena, run)};
    struct TextStyle styles[COLUMN_COUNT];
    for (int i = 0; i < COLUMN_COUNT; i++) {
        styles[i] = i == 0 || i == COLUMN_COUNT - 1 ? strong_style : cell_style;
    }
    draw_cells(flow, top_mm, texts, styles);
    if (layout->plan->run_count > 1) {
        drawing_line(flow->drawing, layout_cable_pen(layout, index), INNER_LEFT, top_mm + 2.5,
                     INNER_LEFT + SAMPLE - 1.8, top_mm + 2.5);
    }
}

void layout_draw_run_head(struct SheetFlow *flow)
{
    draw_head(flow, layout_place(flow, RUN_ROW));
}

void layout_draw_run(struct SheetFlow *flow, int run)
{
    int sheet = flow->sheet;
    double top_mm = layout_place(flow, RUN_ROW);
    if (flow->sheet != sheet) { /* the head again on a new sheet */
        draw_head(flow, top_mm);
        top_mm = layout_place(flow, RUN_ROW);
    }
    draw_run(flow, top_mm, run);
}
