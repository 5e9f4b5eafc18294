/* The working of a figure for someone who follows it with a pocket calculator: formula, numbers, result, source. */
#include "documents/documents.h"

#include "documents/shown_private.h"
#include "summary_private.h"

#include <math.h>

enum { STEP_AT = 2, LINE_AT = 6, TEXT_AT = 8, LABEL_AT = 2, LABEL_TEXT_AT = 12 };

/* number_significant() ends at a thousand million. */
static const char *amount(struct Arena *arena, double value)
{
    return fabs(value) < 1e9 ? number_significant(arena, value, 7)
                             : arena_print(arena, "%s x 10^6", number_significant(arena, value / 1e6, 7));
}

static void add_steps(struct SummaryPage *page, const struct Step *steps, int count)
{
    struct Arena *arena = page->arena;
    for (int i = 0; i < count; i++) {
        const struct Step *step = &steps[i];
        summary_item(page, STEP_AT, LINE_AT, arena_print(arena, "%d.", i + 1), TINT_NONE,
                     shown_said(arena, step->what));
        if (step->formula != NULL) {
            summary_item(page, LINE_AT, TEXT_AT, "", TINT_NONE, shown_said(arena, step->formula));
        }
        if (*step->numbers != '\0') {
            summary_item(page, LINE_AT, TEXT_AT, "=", TINT_NONE, step->numbers);
        }
        const char *source = step->source != NULL ? arena_print(arena, "  [%s]", shown_said(arena, step->source)) : "";
        summary_item(page, LINE_AT, TEXT_AT, "=", TINT_NONE,
                     arena_print(arena, "%s%s", shown_result(arena, step), source));
    }
}

static const char *result_text(struct Arena *arena, const struct Check *check)
{
    const char *text = shown_said(arena, check->text);
    switch (check->result) {
    case CHECK_PASS: return arena_print(arena, "PASS: %s", text);
    case CHECK_FAIL: return arena_print(arena, "FAIL: %s", text);
    case CHECK_NOT_DUE: break;
    }
    if (check->open) {
        return arena_print(arena, "OPEN: could not be checked: give %s. %s",
                           shown_said(arena, settles_said(arena, &check->settles)), text);
    }
    return check->unknown ? text : arena_print(arena, "not due: %s", text);
}

/* "32 A, which must not exceed 45.4662 A: 13.4662 A to spare" */
static void add_compared(struct SummaryPage *page, double value, double limit, bool at_least, enum Unit of)
{
    struct Arena *arena = page->arena;
    const char *unit = shown_unit(arena, of);
    const double margin = at_least ? value - limit : limit - value;
    summary_item(page, LABEL_AT, LABEL_TEXT_AT, "Compared", TINT_NONE,
                 arena_print(arena, "%s %s, which must %s %s %s: %s %s %s", amount(arena, value), unit,
                             at_least ? "reach" : "not exceed", amount(arena, limit), unit, amount(arena, fabs(margin)),
                             unit,
                             margin >= 0 ? "to spare"
                             : at_least  ? "short"
                                         : "too much"));
}

static const char *stretch_name(const struct Plan *plan, const struct Rating *rating)
{
    return plan->segments[rating->segment].surveyed->name;
}

static void add_warning(struct SummaryPage *page, const struct Rating *rating)
{
    if (rating->warning != NULL) {
        summary_item(page, LABEL_AT, LABEL_TEXT_AT, "Mind", TINT_NONE, shown_said(page->arena, rating->warning));
    }
}

static void explain_capacity(struct SummaryPage *page, const struct Plan *plan, const struct PlanRun *run,
                             const struct Check *check, const struct Question *question)
{
    const struct Rating *rating = question->stretch;
    const bool governs = rating->segment == run->ratings[run->governing].segment;
    summary_item(page, LABEL_AT, LABEL_TEXT_AT, "Stretch", TINT_NONE,
                 arena_print(page->arena, "%s%s", stretch_name(plan, rating),
                             governs ? ", which governs: no stretch of the run carries less"
                                     : arena_print(page->arena, "; %s governs",
                                                   stretch_name(plan, &run->ratings[run->governing]))));
    add_warning(page, rating);
    add_steps(page, rating->steps, rating->step_count);
    add_compared(page, check->value, rating->capacity_a, check->at_least, check->unit);
}

static void explain_drop_part(struct SummaryPage *page, const struct Plan *plan, const struct Check *check,
                              const struct Rating *rating)
{
    summary_item(page, LABEL_AT, LABEL_TEXT_AT, "Run", TINT_NONE, "the drop of the whole run");
    add_steps(page, check->steps, check->step_count);
    summary_item(page, LABEL_AT, LABEL_TEXT_AT, "Stretch", TINT_NONE,
                 arena_print(page->arena, "%s, its part of that", stretch_name(plan, rating)));
    add_steps(page, rating->drop_steps, rating->drop_step_count);
}

static void explain_whole(struct SummaryPage *page, const struct Check *check)
{
    if (check->step_count == 0) {
        summary_item(page, LABEL_AT, LABEL_TEXT_AT, "Working", TINT_NONE,
                     check->result == CHECK_NOT_DUE ? "none: nothing is compared"
                                                    : "none: the rule above decides, or a figure is missing, as said");
        return;
    }
    add_steps(page, check->steps, check->step_count);
    if (check->result != CHECK_NOT_DUE && check->unit != UNIT_NONE) {
        add_compared(page, check->value, check->limit, check->at_least, check->unit);
    }
}

static void explain(struct SummaryPage *page, const struct Plan *plan, const struct Question *question)
{
    const struct PlanRun *run = &plan->runs[question->run];
    const struct Check *check = &run->checks[question->check];
    summary_heading(page, arena_print(page->arena, "%s of %s%s%s", check->id, run->settled->name,
                                      run->size_mm2 > 0 ? ", " : "", shown_size(page->arena, run)));
    summary_item(page, LABEL_AT, LABEL_TEXT_AT, "Result", TINT_NONE, result_text(page->arena, check));
    summary_item(page, LABEL_AT, LABEL_TEXT_AT, "Rule", TINT_NONE, check->source);
    if (question->stretch != NULL && text_same(check->id, "capacity")) {
        explain_capacity(page, plan, run, check, question);
    } else if (question->stretch != NULL) {
        explain_drop_part(page, plan, check, question->stretch);
    } else {
        explain_whole(page, check);
    }
}

struct Bytes document_explain_text(struct Arena *arena, const struct Plan *plan, const struct Question *questions,
                                   int count)
{
    struct SummaryPage page = {.arena = arena, .text = text_builder(arena)};
    for (int i = 0; i < count; i++) {
        if (i > 0) {
            summary_gap(&page);
        }
        explain(&page, plan, &questions[i]);
    }
    return summary_finish(&page);
}

struct Bytes document_name_list(struct Arena *arena, const char *lead, const char *const *names, int count)
{
    struct SummaryPage page = {.arena = arena, .text = text_builder(arena)};
    struct TextBuilder list = text_builder(arena);
    for (int i = 0; i < count; i++) {
        text_print(&list, "%s%s", i > 0 ? ", " : "", names[i]);
    }
    summary_item(&page, 0, 2, "", TINT_NONE, arena_print(arena, "%s: %s", lead, text_done(&list)));
    return summary_finish(&page);
}
