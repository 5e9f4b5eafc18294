/* How much more the plan would bear, each with a bar: what there is, and what may come to it. */
#include "documents/documents.h"

#include "documents/shown_private.h"
#include "summary_private.h"

#include <math.h>

enum { NAME_AT = 2, NAME_COLUMNS = 18, MORE_COLUMNS = 12, BAR_COLUMNS = 24 };

static double longest(const struct Reaches *reaches, bool of_load)
{
    double most = 0;
    for (int i = 0; i < reaches->count; i++) {
        const struct Reach *reach = &reaches->list[i];
        most = (reach->segment < 0) == of_load ? fmax(most, reach->now + reach->more) : most;
    }
    return most;
}

/* "=====++++": of the whole width so much is there, so much may come to it. */
static void add_bar(struct SummaryPage *page, const struct Reach *reach, double most)
{
    const int there = (int)lround(BAR_COLUMNS * reach->now / most);
    const int end = (int)lround(BAR_COLUMNS * (reach->now + reach->more) / most);
    text_add_char(&page->text, '|');
    for (int i = 0; i < BAR_COLUMNS; i++) {
        text_add(&page->text, i < there ? "=" : i < end ? "+" : " ");
    }
    text_add(&page->text, reach->ends ? "| " : "> ");
}

static void add_one(struct SummaryPage *page, const struct Plan *plan, const struct Reach *reach, double most)
{
    struct Arena *arena = page->arena;
    const bool of_load = reach->segment < 0;
    const char *name = of_load ? plan->runs[reach->run].settled->name : plan->segments[reach->segment].surveyed->name;
    const struct SayArg more = say_fixed(reach->more, 1, of_load ? UNIT_A : UNIT_M);
    const struct Say *end = !reach->ends           ? say(arena, SAY_REACH_NO_END)
                            : reach->check == NULL ? say(arena, SAY_REACH_NO_PLAN)
                                                   : reach->check;
    summary_cell(page, "", NAME_AT);
    summary_cell(page, name, NAME_COLUMNS);
    text_add_char(&page->text, ' ');
    summary_cell(page, shown_said(arena, say(arena, SAY_REACH_MORE, more)), -MORE_COLUMNS);
    text_add_char(&page->text, ' ');
    add_bar(page, reach, most);
    summary_cell(page, shown_said(arena, end),
                 SUMMARY_COLUMNS - NAME_AT - NAME_COLUMNS - MORE_COLUMNS - BAR_COLUMNS - 5);
    while (page->text.length > 0 && page->text.data[page->text.length - 1] == ' ') {
        page->text.length--;
    }
    text_add_char(&page->text, '\n');
}

static void add_kind(struct SummaryPage *page, const struct Plan *plan, const struct Reaches *reaches, bool of_load)
{
    const double most = longest(reaches, of_load);
    bool any = false;
    for (int i = 0; i < reaches->count; i++) {
        const struct Reach *reach = &reaches->list[i];
        if ((reach->segment < 0) != of_load) {
            continue;
        }
        if (!any) {
            summary_head(page, of_load ? SAY_REACH_OF_LOAD : SAY_REACH_OF_LENGTH);
        }
        any = true;
        add_one(page, plan, reach, most);
    }
}

static void add_open(struct SummaryPage *page, const struct Plan *plan)
{
    for (int i = 0; i < plan->open_count; i++) {
        summary_line(page, 0, NAME_AT + 7, i == 0 ? SAY_LEAD_OPEN : SAY_NOTHING, TINT_STRONG, plan->open[i].text);
    }
}

struct Bytes document_reach_text(struct Arena *arena, const struct Plan *plan, const struct Reaches *reaches)
{
    enum { TEXT_AT = 11 };
    struct SummaryPage page = {.arena = arena, .text = text_builder(arena)};
    summary_changes(&page, plan);
    if (plan->verdict == VERDICT_FAIL) {
        summary_item(&page, 0, NAME_AT, "", TINT_NONE, shown_said(arena, say(arena, SAY_REACH_FAILS_NOW)));
        summary_verdict(&page, plan, TEXT_AT);
        return summary_finish(&page);
    }
    if (plan->verdict == VERDICT_OPEN) {
        summary_item(&page, 0, NAME_AT, "", TINT_NONE,
                     shown_said(arena, say(arena, SAY_REACH_OPEN, say_count(plan->open_count))));
        add_open(&page, plan);
    }
    for (int i = 0; i < plan->run_count; i++) {
        const struct PlanRun *run = &plan->runs[i];
        if (run->rated) {
            summary_line(&page, 0, TEXT_AT, SAY_FACT_CABLE, TINT_NONE,
                         say(arena, SAY_REACH_AS_PLANNED, say_name(run->settled->name),
                             say_part(summary_cable(arena, run)), say_part(run->device_text)));
        }
    }
    add_kind(&page, plan, reaches, true);
    add_kind(&page, plan, reaches, false);
    if (reaches->left_out > 0) {
        summary_item(&page, 0, NAME_AT, "", TINT_NONE,
                     shown_said(arena, say(arena, SAY_REACH_LEFT_OUT, say_count(reaches->left_out))));
    }
    summary_item(&page, 0, NAME_AT, "", TINT_NONE, shown_said(arena, say(arena, SAY_REACH_LEGEND)));
    summary_verdict(&page, plan, TEXT_AT);
    return summary_finish(&page);
}
