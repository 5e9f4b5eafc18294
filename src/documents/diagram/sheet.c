/* Sheets: paper, heading and foot. What belongs to a strip is laid on them from the top; what has no room goes on on
 * the next under the heads of the columns. */
#include "layout_private.h"

#include "documents/shown_private.h"

#include <math.h>

static const double title_mm = 76, facts_left_mm = FRAME_LEFT + 80, fact_name_mm = 16, plate_mm = 88, word_mm = 24;
static const double heading_mm = 9, foot_mm = 5.4, heading_pad_mm = 0.8, bar_mm = 60;
enum { TITLE_LINES_MOST = 3, VERDICT_LINES_MOST = 16, FACT_LINES_MOST = 3 };

static const struct Pen thing_pen = {INK_BLACK, WIDTH_THING, DASH_NONE};
static const struct Pen no_pen = {INK_NONE, 0, DASH_NONE};
static const struct TextStyle plain_style = {.size_mm = TYPE_PLAIN, .ink = INK_BLACK};
static const struct TextStyle bold_style = {.size_mm = TYPE_PLAIN, .bold = true, .ink = INK_BLACK};
static const struct TextStyle note_style = {.size_mm = TYPE_PLAIN, .ink = INK_GREY};

/* ---- the heading ---- */

static const char *title_text(const struct RouteLayout *layout)
{
    return shown_text(layout->arena, layout->plan->survey->job.title);
}

/* Site and reference, with the date behind them where it fits into one line, else below. */
static int job_lines(const struct RouteLayout *layout, const char **lines)
{
    struct Arena *arena = layout->arena;
    const struct Job *job = &layout->plan->survey->job;
    const char *const texts[] = {job->site, job->reference};
    const struct Say *list = NULL, *date = NULL;
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        if (texts[i] != NULL && *texts[i] != '\0') {
            list = say_list(arena, SAY_COMMA, list, say_name(texts[i]));
        }
    }
    if (job->surveyed != NULL && *job->surveyed != '\0') {
        date = say(arena, SAY_JOB_SURVEYED, say_name(job->surveyed));
    }
    const char *whole =
        shown_text(arena, layout_said(layout, date == NULL ? list : say_list(arena, SAY_COMMA, list, say_part(date))));
    if (date == NULL || type_width_mm(whole, TYPE_PLAIN, false) <= title_mm) {
        return type_wrap(arena, whole, plain_style, title_mm, TITLE_LINES_MOST, lines);
    }
    const int count =
        type_wrap(arena, shown_text(arena, layout_said(layout, list)), plain_style, title_mm, TITLE_LINES_MOST, lines);
    return count +
           type_wrap(arena, shown_text(arena, layout_said(layout, date)), plain_style, title_mm, 1, lines + count);
}

const struct Say *verdict_said(const struct RouteLayout *layout)
{
    const struct Plan *plan = layout->plan;
    struct Arena *arena = layout->arena;
    const struct Say *said = plan_verdict_said(plan);
    if (plan->verdict != VERDICT_PASS) {
        return say(arena, plan->verdict == VERDICT_FAIL ? SAY_VERDICT_FAILS : SAY_VERDICT_OPEN, say_part(said));
    }
    if (plan->warning_count > 0) {
        said = say(arena, SAY_VERDICT_WARNED, say_count(plan->warning_count), say_part(said));
    }
    for (int i = 0; i < plan->survey->range_count; i++) {
        const struct SurveyRange *range = &plan->survey->ranges[i];
        said = say_list(
            arena, SAY_SEMICOLON, said,
            say_part(say(arena, SAY_RANGE_DRAWN, say_name(range->named), say_name(range->text), say_name(range->at))));
    }
    return plan->not_checked_count == 0
               ? said
               : say(arena, plan->not_checked_count > 1 ? SAY_VERDICT_UNCHECKED_MORE : SAY_VERDICT_UNCHECKED,
                     say_part(said), say_part(plan->not_checked[0].title));
}

static struct TextStyle title_style(const struct RouteLayout *layout)
{
    static const double sizes[] = {6, 5.2, 4.6, 4};
    struct TextStyle style = {.bold = true, .ink = INK_BLACK};
    for (size_t i = 0; i < sizeof sizes / sizeof sizes[0]; i++) {
        style.size_mm = sizes[i];
        if (type_width_mm(title_text(layout), style.size_mm, true) <= title_mm) {
            break;
        }
    }
    return style;
}

/* Left: title, site, date. Draws where `drawing` is not NULL; returns the height. */
static double title_block(const struct RouteLayout *layout, struct Drawing *drawing, double top_mm)
{
    const struct TextStyle style = title_style(layout);
    const char *lines[TITLE_LINES_MOST + 1];
    double y_mm = top_mm;
    int count = type_wrap(layout->arena, title_text(layout), style, title_mm, TITLE_LINES_MOST, lines);
    for (int i = 0; i < count; i++, y_mm += 1.2 * style.size_mm) {
        if (drawing != NULL) {
            drawing_text(drawing, style, FRAME_LEFT, y_mm + style.size_mm, lines[i]);
        }
    }
    count = job_lines(layout, lines);
    for (int i = 0; i < count; i++, y_mm += LINE_PITCH) {
        if (drawing != NULL) {
            drawing_text(drawing, plain_style, FRAME_LEFT, y_mm + 3.6, lines[i]);
        }
    }
    return y_mm + 1.2 - top_mm;
}

/* Middle: the facts of the only run. `right_mm`, unless NULL, is where they end. */
static double facts_block(const struct RouteLayout *layout, struct Drawing *drawing, double top_mm, double *right_mm)
{
    struct Fact facts[FACTS_MOST];
    const int count = sheet_facts(layout, facts);
    const double width_mm = FRAME_RIGHT - plate_mm - facts_left_mm - fact_name_mm - 3;
    double y_mm = top_mm;
    for (int i = 0; i < count; i++) {
        struct TextStyle style = plain_style;
        const char *lines[FACT_LINES_MOST];
        style.bold = facts[i].bold;
        const int wrapped = type_wrap(layout->arena, facts[i].text, style, width_mm, FACT_LINES_MOST, lines);
        for (int k = 0; k < wrapped; k++, y_mm += LINE_PITCH) {
            if (drawing != NULL && k == 0) {
                drawing_text(drawing, note_style, facts_left_mm, y_mm + 2.75, layout_term(layout, facts[i].name));
            }
            if (drawing != NULL) {
                drawing_text(drawing, style, facts_left_mm + fact_name_mm, y_mm + 2.75, lines[k]);
            }
            if (right_mm != NULL) {
                *right_mm =
                    fmax(*right_mm, facts_left_mm + fact_name_mm + type_width_mm(lines[k], style.size_mm, style.bold));
            }
        }
    }
    return y_mm - top_mm;
}

/* How wide the plate is: one with much to say goes as far to the left as the facts leave room. */
static double plate_width(const struct RouteLayout *layout, const char *text)
{
    static const double step_mm = 10, facts_gap_mm = 4;
    enum { LINES_WANTED = 3 };
    const char *lines[VERDICT_LINES_MOST];
    double left_mm = facts_left_mm, width_mm = plate_mm;
    facts_block(layout, NULL, 0, &left_mm);
    const double most_mm = FRAME_RIGHT - left_mm - facts_gap_mm;
    while (width_mm < most_mm && type_wrap(layout->arena, text, plain_style, width_mm - word_mm - 4, VERDICT_LINES_MOST,
                                           lines) > LINES_WANTED) {
        width_mm = fmin(width_mm + step_mm, most_mm);
    }
    return width_mm;
}

/* Right: the verdict in a frame of its own: black where the plan fails, broken where it is open. */
static double verdict_block(const struct RouteLayout *layout, struct Drawing *drawing, double top_mm)
{
    const enum Verdict verdict = layout->plan->verdict;
    const char *lines[VERDICT_LINES_MOST];
    const char *text = shown_text(layout->arena, layout_said(layout, verdict_said(layout)));
    const double width_mm = plate_width(layout, text), left_mm = FRAME_RIGHT - width_mm;
    const int count = type_wrap(layout->arena, text, plain_style, width_mm - word_mm - 4, VERDICT_LINES_MOST, lines);
    const double height_mm = fmax(count * LINE_PITCH + 2, 11.5);
    if (drawing != NULL) {
        const struct TextStyle word_style = {.size_mm = 6,
                                             .bold = true,
                                             .ink = verdict == VERDICT_FAIL ? INK_WHITE : INK_BLACK,
                                             .anchor = ANCHOR_MIDDLE};
        const struct Pen pen = {INK_BLACK, 0.7, verdict == VERDICT_OPEN ? DASH_LONG : DASH_NONE};
        drawing_rect(drawing, pen, INK_WHITE, left_mm, top_mm, width_mm, height_mm);
        drawing_rect(drawing, pen, verdict == VERDICT_FAIL ? INK_BLACK : INK_WHITE, left_mm, top_mm, word_mm,
                     height_mm);
        drawing_text(drawing, word_style, left_mm + word_mm / 2, top_mm + height_mm / 2 + 2.2, verdict_word(verdict));
        for (int i = 0; i < count; i++) {
            drawing_text(drawing, plain_style, left_mm + word_mm + 2,
                         top_mm + (height_mm - count * LINE_PITCH) / 2 + 2.75 + i * LINE_PITCH, lines[i]);
        }
    }
    return height_mm;
}

double sheet_heading_height(const struct RouteLayout *layout, bool first)
{
    return first ? fmax(fmax(title_block(layout, NULL, 0), facts_block(layout, NULL, 0, NULL)),
                        verdict_block(layout, NULL, 0)) +
                       heading_pad_mm
                 : heading_mm;
}

/* The whole way as a short bar with the part that this sheet shows in black; nothing where it shows the whole. */
static void draw_whole(const struct SheetFlow *flow, double top_mm)
{
    const struct RouteLayout *layout = flow->layout;
    const double left_mm = FRAME_RIGHT - plate_mm - bar_mm - 6;
    const double all_m = layout->stretches[layout->stretch_count - 1].segment->to_m;
    const double from_m = layout->stretches[flow->strip->first].segment->from_m;
    const double to_m = layout->stretches[flow->strip->last].segment->to_m;
    if (flow->strip->first == 0 && flow->strip->last == layout->stretch_count - 1) {
        return;
    }
    drawing_rect(flow->drawing, no_pen, INK_BLACK, left_mm + from_m / all_m * bar_mm, top_mm,
                 (to_m - from_m) / all_m * bar_mm, 2);
    drawing_rect(flow->drawing, thing_pen, INK_NONE, left_mm, top_mm, bar_mm, 2);
}

static void draw_heading(const struct SheetFlow *flow, double top_mm)
{
    static const struct TextStyle again_style = {.size_mm = TYPE_LARGE, .bold = true, .ink = INK_BLACK};
    const struct RouteLayout *layout = flow->layout;
    if (flow->sheet == 1) {
        title_block(layout, flow->drawing, top_mm);
        facts_block(layout, flow->drawing, top_mm, NULL);
        verdict_block(layout, flow->drawing, top_mm);
        return;
    }
    static const enum Saying again[] = {
        [VERDICT_FAIL] = SAY_FAILS_AGAIN, [VERDICT_OPEN] = SAY_OPEN_AGAIN, [VERDICT_PASS] = SAY_NOTHING};
    const enum Verdict verdict = layout->plan->verdict;
    const char *word = verdict == VERDICT_PASS ? verdict_word(verdict) : layout_term(layout, again[verdict]);
    const double width_mm = type_width_mm(word, TYPE_LARGE, true) + 0.8 * TYPE_LARGE;
    const char *lines[2];
    const int count = type_wrap(layout->arena, title_text(layout), again_style,
                                FRAME_RIGHT - plate_mm - bar_mm - 10 - FRAME_LEFT, 2, lines);
    for (int i = 0; i < count; i++) {
        drawing_text(flow->drawing, again_style, FRAME_LEFT, top_mm + (count == 1 ? 4.6 : 3.2 + i * 1.15 * TYPE_LARGE),
                     lines[i]);
    }
    if (flow->strip != NULL) {
        draw_whole(flow, top_mm + 2.2);
    }
    draw_plate(flow->drawing, FRAME_RIGHT - width_mm, top_mm + 4.6, TYPE_LARGE, word, verdict == VERDICT_FAIL,
               verdict == VERDICT_OPEN);
}

/* ---- the foot ---- */

double sheet_foot_height(void)
{
    return foot_mm;
}

static void draw_scale_bar(const struct SheetFlow *flow, double base_mm)
{
    const struct RouteLayout *layout = flow->layout;
    int step = 0;
    while (step < 24 && layout_round_step(step + 1) * 1000 / flow->strip->across <= 30) {
        step++;
    }
    const double bar_m = layout_round_step(step), half_mm = bar_m * 500 / flow->strip->across;
    drawing_rect(flow->drawing, (struct Pen){INK_BLACK, 0.3, DASH_NONE}, INK_WHITE, FRAME_LEFT, base_mm - 2,
                 2 * half_mm, 1.6);
    drawing_rect(flow->drawing, no_pen, INK_BLACK, FRAME_LEFT, base_mm - 2, half_mm, 1.6);
    drawing_text(
        flow->drawing, plain_style, FRAME_LEFT + 2 * half_mm + 1.6, base_mm,
        layout_said(layout, say(layout->arena, SAY_SHEET_SCALES, say_digits(bar_m, 6, UNIT_M),
                                say_fixed(flow->strip->across, 0, UNIT_NONE), say_fixed(layout->up, 0, UNIT_NONE))));
}

static void draw_foot(const struct SheetFlow *flow, double top_mm)
{
    const struct RouteLayout *layout = flow->layout;
    struct TextStyle right_style = plain_style, right_bold = bold_style;
    right_style.anchor = right_bold.anchor = ANCHOR_RIGHT;
    drawing_line(flow->drawing, thing_pen, FRAME_LEFT, top_mm, FRAME_RIGHT, top_mm);
    if (flow->strip != NULL) {
        draw_scale_bar(flow, top_mm + 4.2);
    }
    const char *sheet =
        layout_said(layout, say(layout->arena, SAY_SHEET_OF, say_count(flow->sheet), say_count(flow->sheet_count)));
    const char *rules = shown_text(layout->arena, layout->plan->rules_edition);
    const double sheet_mm = type_width_mm(sheet, TYPE_PLAIN, true) + 4;
    drawing_text(flow->drawing, right_bold, FRAME_RIGHT, top_mm + 4.2, sheet);
    drawing_text(flow->drawing, right_style, FRAME_RIGHT - sheet_mm, top_mm + 4.2, rules);
    const char *rule = layout_term(layout, SAY_SHEET_RULE);
    const double rules_mm = FRAME_RIGHT - sheet_mm - type_width_mm(rules, TYPE_PLAIN, false) - 5;
    drawing_text(flow->drawing, right_style, rules_mm, top_mm + 4.2, rule);
    if (layout->mark != NULL) {
        drawing_text(flow->drawing, right_style, rules_mm - type_width_mm(rule, TYPE_PLAIN, false) - 5, top_mm + 4.2,
                     arena_print(layout->arena, "%s %s", layout_term(layout, SAY_LABEL_SHEET_MARK), layout->mark));
    }
}

/* ---- the flow ---- */

void sheet_end(struct SheetFlow *flow)
{
    if (flow->sheet == 0 || flow->counts) {
        return;
    }
    drawing_group_end(flow->drawing);
    if (flow->taken != NULL) {
        flow->taken->sheet(flow->taken->context, flow->drawing, flow->sheet);
        drawing_forget(flow->drawing);
    }
}

void sheet_next(struct SheetFlow *flow)
{
    sheet_end(flow);
    struct Drawing *drawing = flow->drawing;
    const double top_mm = flow->sheet * SHEET_HEIGHT;
    flow->sheet++;
    drawing->width_mm = SHEET_WIDTH;
    drawing->height_mm = flow->sheet * SHEET_HEIGHT;
    flow->y_mm = top_mm + SHEET_MARGIN + sheet_heading_height(flow->layout, flow->sheet == 1);
    if (flow->counts) {
        return;
    }
    drawing_group(drawing, arena_print(drawing->arena, "sheet-%d", flow->sheet),
                  layout_said(flow->layout, say(drawing->arena, SAY_SHEET_TITLE, say_count(flow->sheet),
                                                say_count(flow->sheet_count))));
    drawing_rect(drawing, no_pen, INK_WHITE, 0, top_mm, SHEET_WIDTH, SHEET_HEIGHT);
    draw_heading(flow, top_mm + SHEET_MARGIN);
    draw_foot(flow, top_mm + SHEET_HEIGHT - SHEET_MARGIN - foot_mm);
}

bool sheet_has_room(const struct SheetFlow *flow, double height_mm)
{
    return height_mm <= sheet_room(flow) + 1e-6;
}

double sheet_room(const struct SheetFlow *flow)
{
    return flow->sheet * SHEET_HEIGHT - SHEET_MARGIN - foot_mm - flow->y_mm;
}
