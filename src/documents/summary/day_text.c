/* The day in 80 columns: how long, how likely, what to settle before, what to do first, who does what when. */
#include "documents/documents.h"

#include "documents/shown_private.h"
#include "summary_private.h"

enum { LEAD_AT = 9, ITEM_AT = 2, TIME_COLUMNS = 7, WHO_COLUMNS = 8, TITLE_COLUMNS = 42, HOLD_AT = 26 };

/* "E1 H1": electricians first, each kind counted for itself. */
static const char *who_text(struct Arena *arena, const struct DayJob *job, unsigned who)
{
    struct TextBuilder text = text_builder(arena);
    for (int h = 0; h < job->hands; h++) {
        if ((who >> h & 1U) != 0) {
            const bool skilled = h < job->skilled;
            text_print(&text, "%s%c%d", text.length > 0 ? " " : "", skilled ? 'E' : 'H',
                       skilled ? h + 1 : h + 1 - job->skilled);
        }
    }
    return text_done(&text);
}

static void add_time(struct SummaryPage *page, const struct Work *work)
{
    struct Arena *arena = page->arena;
    const struct DaySchedule *schedule = &work->schedule;
    if (schedule->fault != DAY_GOOD) {
        summary_line(page, 0, LEAD_AT, SAY_DAY_LEAD_TIME, TINT_STRONG, work_fault_said(arena, work));
        return;
    }
    const struct SayArg bound = say_part(work_time_said(arena, schedule->bound_s));
    summary_line(page, 0, LEAD_AT, SAY_DAY_LEAD_TIME, TINT_STRONG,
                 work->untimed > 0 ? say(arena, SAY_DAY_TIME_NOT_KNOWN, say_count(work->untimed), bound)
                                   : say(arena, SAY_DAY_TIME, say_part(work_time_said(arena, schedule->end_s)), bound));
}

static void add_chance(struct SummaryPage *page, const struct Work *work)
{
    struct Arena *arena = page->arena;
    const struct DayChance *chance = &work->chance;
    if (chance->trials == 0) {
        summary_line(page, 0, LEAD_AT, SAY_DAY_LEAD_CHANCE, TINT_STRONG, say(arena, SAY_NOT_KNOWN));
        return;
    }
    summary_line(page, 0, LEAD_AT, SAY_DAY_LEAD_CHANCE, TINT_STRONG,
                 say(arena, SAY_DAY_CHANCE, say_part(work_chance_said(arena, work)),
                     say_part(work_time_said(arena, work->day_s)), say_part(work_time_said(arena, chance->half_s)),
                     say_part(work_time_said(arena, chance->nine_s)), say_count(chance->trials),
                     say_name(arena_print(arena, "%llu", (unsigned long long)work->seed))));
}

static void add_figures(struct SummaryPage *page, const struct Labour *labour)
{
    struct Arena *arena = page->arena;
    const struct Say *said = labour->built_in          ? say(arena, SAY_DAY_FIGURES_BUILT_IN, say_name(labour->source))
                             : *labour->source != '\0' ? say(arena, SAY_AS_IS, say_name(labour->source))
                                                       : say(arena, SAY_DAY_FIGURES_NO_SOURCE);
    summary_line(page, 0, LEAD_AT, SAY_DAY_LEAD_FIGURES, TINT_STRONG, said);
}

static void add_before(struct SummaryPage *page, const struct Work *work)
{
    summary_gap(page);
    summary_head(page, SAY_DAY_BEFORE);
    for (int i = 0; i < work->before_count; i++) {
        summary_item(page, ITEM_AT, ITEM_AT + 2, "-", TINT_NONE, shown_said(page->arena, work->before[i]));
    }
    if (work->before_count == 0) {
        summary_line(page, ITEM_AT, ITEM_AT + 2, SAY_NOTHING, TINT_NONE, say(page->arena, SAY_DAY_NOTHING_BEFORE));
    }
}

static void add_chain(struct SummaryPage *page, const struct Work *work)
{
    const struct Say *list = NULL;
    for (int i = 0; i < work->chain_count; i++) {
        list = say_list(page->arena, SAY_SEMICOLON, list, say_part(work->tasks[work->chain[i]].title));
    }
    if (list != NULL && work->untimed == 0) {
        summary_gap(page);
        summary_head(page, SAY_DAY_FIRST);
        summary_item(page, ITEM_AT, ITEM_AT + 2, "", TINT_NONE, shown_said(page->arena, list));
    }
}

static void add_task(struct SummaryPage *page, const struct Work *work, int task)
{
    struct Arena *arena = page->arena;
    const struct WorkTask *row = &work->tasks[task];
    const struct DayPlace *place = work->schedule.places != NULL ? &work->schedule.places[task] : NULL;
    const bool timed = place != NULL && work->untimed == 0;
    summary_cell(page, timed ? work_clock_text(arena, place->start_s) : "-", -TIME_COLUMNS);
    summary_cell(page, timed ? work_clock_text(arena, place->end_s) : "-", -TIME_COLUMNS);
    summary_cell(page, "", 2);
    summary_cell(page, timed ? who_text(arena, &work->job, place->who) : "", WHO_COLUMNS + 1);
    summary_cell(page, shown_said(arena, row->title), TITLE_COLUMNS);
    text_add_char(&page->text, ' ');
    text_add(&page->text,
             row->amount != NULL ? shown_said(arena, row->amount) : shown_said(arena, say(arena, SAY_NOT_KNOWN)));
    text_add_char(&page->text, '\n');
    if (row->hold != NULL) {
        summary_item(page, 0, HOLD_AT, "", TINT_NONE,
                     shown_said(arena, say(arena, SAY_DAY_AFTER_HOLD, say_part(row->hold))));
    }
    if (row->fewer) {
        summary_item(page, 0, HOLD_AT, "", TINT_NONE, shown_said(arena, say(arena, SAY_WORK_FEWER_HANDS)));
    }
    if (!row->timed) {
        summary_item(page, 0, HOLD_AT, "", TINT_NONE, shown_said(arena, say(arena, SAY_DAY_TASK_NO_TIME)));
    }
}

struct Bytes document_day_text(struct Arena *arena, const struct Plan *plan, const struct Work *work)
{
    struct SummaryPage page = {.arena = arena, .text = text_builder(arena)};
    summary_changes(&page, plan);
    summary_heading(&page, shown_said(arena, say(arena, SAY_DAY_OF, say_name(plan->route), say_count(work->job.hands),
                                                 say_count(work->job.skilled))));
    add_time(&page, work);
    add_chance(&page, work);
    add_figures(&page, work->labour);
    add_before(&page, work);
    add_chain(&page, work);
    summary_gap(&page);
    summary_head(&page, SAY_DAY_WORK);
    for (int i = 0; i < work->count; i++) {
        add_task(&page, work, work->schedule.order != NULL ? work->schedule.order[i] : i);
    }
    summary_item(&page, 0, ITEM_AT, "", TINT_NONE, shown_said(arena, say(arena, SAY_DAY_ESTIMATE)));
    summary_verdict(&page, plan, LEAD_AT);
    return summary_finish(&page);
}
