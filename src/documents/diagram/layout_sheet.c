/* Sheets: paper, frame, heading and foot. Blocks are laid on them from the top; one that does not fit begins the next.
 */
#include "layout_private.h"

#include "documents/shown_private.h"

enum {
    FOOT_LINES = 3,
    CAUTION_LINES_MOST = 4,
    RULES_LINES_MOST = 2,
    LINES_MOST = CAUTION_LINES_MOST + RULES_LINES_MOST
};

static const double first_heading_mm = 17.2, heading_mm = 10, foot_pad_mm = 2.6;
static const double foot_block_mm = 62; /* scales, rules and sheet number, at the right of the foot */
static const struct Pen frame_pen = {INK_BLACK, WIDTH_PLAIN, DASH_NONE};
static const struct Pen rule_pen = {INK_BLACK, WIDTH_HAIR, DASH_NONE};
static const struct TextStyle small_style = {.size_mm = TYPE_SMALL, .ink = INK_BLACK};
static const struct TextStyle right_style = {.size_mm = TYPE_SMALL, .ink = INK_BLACK, .anchor = ANCHOR_RIGHT};

/* At the left of the foot: the first caution, and by which edition the plan is made. */
static int foot_lines(const struct RouteLayout *layout, const char **lines)
{
    const double width_mm = INNER_RIGHT - INNER_LEFT - foot_block_mm - 4;
    int count = 0;
    if (layout->plan->caution_count > 0) {
        const char *text =
            arena_print(layout->arena, "CAUTION: %s", shown_said(layout->arena, layout->plan->cautions[0].text));
        count =
            type_wrap(layout->arena, shown_text(layout->arena, text), small_style, width_mm, CAUTION_LINES_MOST, lines);
    }
    const char *rules = arena_print(layout->arena, "Rules: %s.", shown_said(layout->arena, layout->plan->rules_text));
    return count + type_wrap(layout->arena, shown_text(layout->arena, rules), small_style, width_mm, RULES_LINES_MOST,
                             lines + count);
}

static double foot_height(const struct RouteLayout *layout)
{
    const char *lines[LINES_MOST];
    const int count = foot_lines(layout, lines);
    return foot_pad_mm + (count < FOOT_LINES ? FOOT_LINES : count) * LINE_PITCH;
}

double layout_sheet_room(const struct RouteLayout *layout, bool first)
{
    return SHEET_HEIGHT - 2 * SHEET_MARGIN - (first ? first_heading_mm : heading_mm) - foot_height(layout) - 2;
}

static const char *job_line(const struct RouteLayout *layout)
{
    const struct Job *job = &layout->plan->survey->job;
    const char *const texts[] = {job->site, job->reference, job->surveyed};
    struct TextBuilder line = text_builder(layout->arena);
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        if (texts[i] != NULL && *texts[i] != '\0') {
            text_print(&line, "%s%s%s", line.length > 0 ? "  \xC2\xB7  " : "", i == 2 ? "surveyed " : "", texts[i]);
        }
    }
    return shown_text(layout->arena, text_done(&line));
}

/* A pass says how far it goes, a fail what to do. */
static const char *verdict_text(const struct RouteLayout *layout)
{
    const struct Plan *plan = layout->plan;
    const char *words = shown_said(layout->arena, plan->verdict_text);
    if (plan->verdict == VERDICT_FAIL) {
        return arena_print(layout->arena, "DO NOT BUILD YET: %s", words);
    }
    if (plan->verdict == VERDICT_OPEN) {
        return arena_print(layout->arena, "SETTLE FIRST: %s", words);
    }
    const char *warnings = plan->warning_count == 0
                               ? ""
                               : arena_print(layout->arena, "%d warning%s: see the design sheet; ", plan->warning_count,
                                             plan->warning_count == 1 ? "" : "s");
    return plan->not_checked_count == 0
               ? arena_print(layout->arena, "%s%s", warnings, words)
               : arena_print(layout->arena, "%s%s; NOT checked: %s%s", warnings, words, plan->not_checked[0].id,
                             plan->not_checked_count > 1 ? " and more" : "");
}

static const char *verdict_again(enum Verdict verdict)
{
    switch (verdict) {
    case VERDICT_FAIL: return "verdict: FAIL, DO NOT BUILD YET";
    case VERDICT_OPEN: return "verdict: OPEN, NOT EVERY CHECK COULD BE MADE";
    case VERDICT_PASS: break;
    }
    return "verdict: PASS";
}

/* The verdict stands in words in a frame of its own, upper right; one that is open in a broken frame. */
static void draw_verdict(struct SheetFlow *flow, double top_mm)
{
    static const struct TextStyle word_style = {.size_mm = 5, .bold = true, .ink = INK_BLACK, .anchor = ANCHOR_MIDDLE};
    const struct RouteLayout *layout = flow->layout;
    double width_mm = 84, left_mm = INNER_RIGHT - width_mm, word_mm = 20;
    const enum Dash dash = layout->plan->verdict == VERDICT_OPEN ? DASH_LONG : DASH_NONE;
    drawing_rect(flow->drawing, (struct Pen){INK_BLACK, WIDTH_BOLD, dash}, INK_NONE, left_mm, top_mm + 3, width_mm,
                 12.4);
    drawing_line(flow->drawing, rule_pen, left_mm + word_mm, top_mm + 3, left_mm + word_mm, top_mm + 15.4);
    drawing_text(flow->drawing, word_style, left_mm + word_mm / 2, top_mm + 11, verdict_word(layout->plan->verdict));
    const char *lines[2];
    int count = type_wrap(layout->arena, shown_text(layout->arena, verdict_text(layout)), small_style,
                          width_mm - word_mm - 5, 2, lines);
    for (int i = 0; i < count; i++) {
        drawing_text(flow->drawing, small_style, left_mm + word_mm + 2.5,
                     top_mm + (count == 1 ? 10.2 : 8.2) + i * LINE_PITCH, lines[i]);
    }
}

static void draw_heading(struct SheetFlow *flow, double top_mm)
{
    static const struct TextStyle title_style = {.size_mm = 5.4, .bold = true, .ink = INK_BLACK};
    static const struct TextStyle again_style = {.size_mm = 3.8, .bold = true, .ink = INK_BLACK};
    static const struct TextStyle job_style = {.size_mm = 3.2, .ink = INK_BLACK};
    struct RouteLayout *layout = flow->layout;
    const char *title = shown_text(layout->arena, layout->plan->survey->job.title);
    if (flow->sheet > 1) {
        drawing_text(flow->drawing, again_style, INNER_LEFT, top_mm + 6.6,
                     type_cut(layout->arena, title, again_style, 200));
        drawing_text(flow->drawing, right_style, INNER_RIGHT, top_mm + 6.4, verdict_again(layout->plan->verdict));
        return;
    }
    double width_mm = INNER_RIGHT - INNER_LEFT - 90;
    drawing_text(flow->drawing, title_style, INNER_LEFT, top_mm + 8.4,
                 type_cut(layout->arena, title, title_style, width_mm));
    drawing_text(flow->drawing, job_style, INNER_LEFT, top_mm + 14.4,
                 type_cut(layout->arena, job_line(layout), job_style, width_mm));
    draw_verdict(flow, top_mm);
}

static const char *scale_text(const struct RouteLayout *layout)
{
    const char *up = number_text(layout->arena, layout->up, 0);
    for (int s = 0; s < layout->strip_count; s++) {
        if (layout->strips[s].across < layout->across) {
            return arena_print(layout->arena, "across as said, up 1:%s", up);
        }
    }
    return arena_print(layout->arena, "across 1:%s, up 1:%s", number_text(layout->arena, layout->across, 0), up);
}

static void draw_foot(struct SheetFlow *flow, double bottom_mm)
{
    static const struct TextStyle sheet_style = {
        .size_mm = TYPE_SMALL, .bold = true, .ink = INK_BLACK, .anchor = ANCHOR_RIGHT};
    struct RouteLayout *layout = flow->layout;
    struct Drawing *drawing = flow->drawing;
    double top_mm = bottom_mm - foot_height(layout);
    drawing_line(drawing, rule_pen, FRAME_LEFT, top_mm, FRAME_RIGHT, top_mm);
    drawing_line(drawing, rule_pen, INNER_RIGHT - foot_block_mm, top_mm, INNER_RIGHT - foot_block_mm, bottom_mm);
    const char *lines[LINES_MOST];
    const int count = foot_lines(layout, lines);
    for (int i = 0; i < count; i++) {
        drawing_text(drawing, small_style, INNER_LEFT, top_mm + 4.4 + i * LINE_PITCH, lines[i]);
    }
    drawing_text(drawing, right_style, INNER_RIGHT, top_mm + 4.4, scale_text(layout));
    drawing_text(drawing, sheet_style, INNER_RIGHT, top_mm + 4.4 + 2 * LINE_PITCH,
                 arena_print(layout->arena, "sheet %d of %d", flow->sheet, flow->sheet_count));
}

void layout_end_sheet(struct SheetFlow *flow)
{
    if (flow->sheet > 0) {
        drawing_group_end(flow->drawing);
    }
}

void layout_next_sheet(struct SheetFlow *flow)
{
    layout_end_sheet(flow);
    struct Drawing *drawing = flow->drawing;
    double top_mm = flow->sheet * SHEET_HEIGHT;
    flow->sheet++;
    drawing->width_mm = SHEET_WIDTH;
    drawing->height_mm = flow->sheet * SHEET_HEIGHT;
    drawing_group(drawing, arena_print(drawing->arena, "sheet-%d", flow->sheet),
                  arena_print(drawing->arena, "Sheet %d of %d", flow->sheet, flow->sheet_count));
    drawing_rect(drawing, (struct Pen){INK_NONE, 0, DASH_NONE}, INK_WHITE, 0, top_mm, SHEET_WIDTH, SHEET_HEIGHT);
    drawing_rect(drawing, frame_pen, INK_NONE, FRAME_LEFT, top_mm + SHEET_MARGIN, FRAME_RIGHT - FRAME_LEFT,
                 SHEET_HEIGHT - 2 * SHEET_MARGIN);
    draw_heading(flow, top_mm + SHEET_MARGIN);
    draw_foot(flow, top_mm + SHEET_HEIGHT - SHEET_MARGIN);
    flow->y_mm = top_mm + SHEET_MARGIN + (flow->sheet == 1 ? first_heading_mm : heading_mm);
}

double layout_place(struct SheetFlow *flow, double height_mm)
{
    double foot_mm = flow->sheet * SHEET_HEIGHT - SHEET_MARGIN - foot_height(flow->layout);
    if (flow->sheet == 0 || flow->y_mm + height_mm > foot_mm) {
        layout_next_sheet(flow);
    }
    double top_mm = flow->y_mm;
    flow->y_mm += height_mm;
    return top_mm;
}
