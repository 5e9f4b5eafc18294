/* The working of a figure for someone who follows it with a pocket calculator: formula, numbers, result, source. */
#include "documents/documents.h"

#include "documents/shown_private.h"
#include "summary_private.h"

#include <math.h>

enum { STEP_AT = 2, LINE_AT = 6, TEXT_AT = 8, LABEL_AT = 2, LABEL_TEXT_AT = 12 };

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

static const struct Say *result_said(struct Arena *arena, const struct Check *check)
{
    const struct SayArg text = say_part(check->text);
    switch (check->result) {
    case CHECK_PASS: return say(arena, SAY_EXPLAINS_PASS, text);
    case CHECK_FAIL: return say(arena, SAY_EXPLAINS_FAIL, text);
    case CHECK_NOT_DUE: break;
    }
    if (check->open) {
        return say(arena, SAY_EXPLAINS_OPEN, say_part(settles_said(arena, &check->settles)), text);
    }
    return check->unknown ? check->text : say(arena, SAY_EXPLAINS_NOT_DUE, text);
}

/* "32 A, which must not exceed 45.4662 A: 13.4662 A to spare" */
static void add_compared(struct SummaryPage *page, double value, double limit, bool at_least, enum Unit unit)
{
    struct Arena *arena = page->arena;
    const double margin = at_least ? value - limit : limit - value;
    const enum Saying saying = at_least ? (margin >= 0 ? SAY_COMPARED_REACHES : SAY_COMPARED_SHORT)
                                        : (margin >= 0 ? SAY_COMPARED_WITHIN : SAY_COMPARED_TOO_MUCH);
    summary_line(
        page, LABEL_AT, LABEL_TEXT_AT, SAY_LEAD_COMPARED, TINT_NONE,
        say(arena, saying, say_digits(value, 7, unit), say_digits(limit, 7, unit), say_digits(fabs(margin), 7, unit)));
}

static const char *stretch_name(const struct Plan *plan, const struct Rating *rating)
{
    return plan->segments[rating->segment].surveyed->name;
}

static void add_warning(struct SummaryPage *page, const struct Rating *rating)
{
    if (rating->warning != NULL) {
        summary_line(page, LABEL_AT, LABEL_TEXT_AT, SAY_LEAD_MIND, TINT_NONE, rating->warning);
    }
}

static void explain_capacity(struct SummaryPage *page, const struct Plan *plan, const struct PlanRun *run,
                             const struct Check *check, const struct Question *question)
{
    const struct Rating *rating = question->stretch;
    const bool governs = rating->segment == run->ratings[run->governing].segment;
    const struct SayArg here = say_name(stretch_name(plan, rating));
    summary_line(page, LABEL_AT, LABEL_TEXT_AT, SAY_LABEL_STRETCH, TINT_NONE,
                 governs ? say(page->arena, run->gaps > 0 ? SAY_STRETCH_GOVERNS_OF_KNOWN : SAY_STRETCH_GOVERNS, here)
                         : say(page->arena, SAY_STRETCH_DOES_NOT_GOVERN, here,
                               say_name(stretch_name(plan, &run->ratings[run->governing]))));
    add_warning(page, rating);
    if (rating->lacks != NULL) {
        summary_line(page, LABEL_AT, LABEL_TEXT_AT, SAY_LEAD_MIND, TINT_NONE, rating->lacks);
        return;
    }
    add_steps(page, rating->steps, rating->step_count);
    add_compared(page, check->value, rating->capacity_a, check->at_least, check->unit);
}

static void explain_drop_part(struct SummaryPage *page, const struct Plan *plan, const struct Check *check,
                              const struct Rating *rating)
{
    summary_line(page, LABEL_AT, LABEL_TEXT_AT, SAY_LEAD_RUN, TINT_NONE, say(page->arena, SAY_DROP_OF_WHOLE_RUN));
    add_steps(page, check->steps, check->step_count);
    summary_line(page, LABEL_AT, LABEL_TEXT_AT, SAY_LABEL_STRETCH, TINT_NONE,
                 say(page->arena, SAY_ITS_PART_OF_DROP, say_name(stretch_name(plan, rating))));
    add_steps(page, rating->drop_steps, rating->drop_step_count);
}

static void explain_whole(struct SummaryPage *page, const struct Check *check)
{
    if (check->step_count == 0) {
        summary_line(page, LABEL_AT, LABEL_TEXT_AT, SAY_LEAD_WORKING, TINT_NONE,
                     say(page->arena, check->result == CHECK_NOT_DUE ? SAY_NOTHING_COMPARED : SAY_RULE_DECIDES));
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
    summary_heading(page,
                    shown_said(page->arena, say(page->arena, SAY_EXPLAINED, say_name(check->id),
                                                say_name(run->settled->name), say_name(shown_size(page->arena, run)))));
    summary_line(page, LABEL_AT, LABEL_TEXT_AT, SAY_LEAD_OUTCOME, TINT_NONE, result_said(page->arena, check));
    summary_line(page, LABEL_AT, LABEL_TEXT_AT, SAY_LEAD_RULE, TINT_NONE, check_source_said(page->arena, check));
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
