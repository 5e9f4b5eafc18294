/* The day as JSON: times in minutes from the beginning of the work. */
#include "documents/documents.h"
#include "documents/shown_private.h"

#include "json_out.h"

static void add_minutes(struct JsonOut *out, struct JsonNode *node, const char *name, int64_t seconds)
{
    json_number(out, node, name, (double)seconds / 60);
}

static void add_chance(struct Arena *arena, struct JsonOut *out, struct JsonNode *root, const struct Work *work)
{
    struct JsonNode *chance = json_object(out, root, "chance");
    json_number(out, chance, "in-time", (double)work->chance.in_time / work->chance.trials);
    json_number(out, chance, "trials", work->chance.trials);
    json_digits(out, chance, "seed", arena_print(arena, "%llu", (unsigned long long)work->seed));
    json_text(out, chance, "distribution", "triangular");
    add_minutes(out, chance, "half-min", work->chance.half_s);
    add_minutes(out, chance, "nine-in-ten-min", work->chance.nine_s);
}

static void add_task(struct Arena *arena, struct JsonOut *out, struct JsonNode *list, const struct Plan *plan,
                     const struct Work *work, int task)
{
    const struct WorkTask *row = &work->tasks[task];
    const struct DayTask *day = &work->job.tasks[task];
    struct JsonNode *node = json_object(out, list, "");
    json_text(out, node, "task", labour_task_word(row->kind));
    if (row->run >= 0) {
        json_text(out, node, "run", plan->runs[row->run].settled->name);
    }
    json_text_if(out, node, "end", row->end == PART_AT_START ? "start" : row->end == PART_AT_FINISH ? "finish" : "");
    json_text(out, node, "title", shown_said(arena, row->title));
    if (row->counted) {
        json_number(out, node, "quantity", row->quantity);
    }
    json_yes(out, node, "time-known", row->timed);
    if (row->timed) {
        add_minutes(out, node, "low-min", day->span.low_s);
        add_minutes(out, node, "likely-min", day->span.likely_s);
        add_minutes(out, node, "high-min", day->span.high_s);
    }
    json_number(out, node, "hands", day->hands);
    json_number(out, node, "electricians", day->skilled);
    if (work->schedule.places != NULL && work->untimed == 0) {
        const struct DayPlace *place = &work->schedule.places[task];
        add_minutes(out, node, "start-min", place->start_s);
        add_minutes(out, node, "end-min", place->end_s);
        struct JsonNode *who = json_list(out, node, "who");
        for (int h = 0; h < work->job.hands; h++) {
            if ((place->who >> h & 1U) != 0) {
                json_number(out, who, "", h + 1);
            }
        }
    }
    json_text_if(out, node, "not-before", row->hold != NULL ? shown_said(arena, row->hold) : "");
    struct JsonNode *after = json_list(out, node, "after");
    for (int i = 0; i < day->after_count; i++) {
        json_text(out, after, "", shown_said(arena, work->tasks[day->after[i]].title));
    }
}

struct Bytes document_day_json(struct Arena *arena, const struct Plan *plan, const struct Work *work)
{
    struct JsonOut *out = json_out_new(arena);
    struct JsonNode *root = json_root(out);
    const struct DaySchedule *schedule = &work->schedule;
    json_text(out, root, "route", plan->route);
    json_changes(out, root, plan->survey);
    json_text(out, root, "verdict", verdict_word(plan->verdict));
    json_number(out, root, "hands", work->job.hands);
    json_number(out, root, "electricians", work->job.skilled);
    add_minutes(out, root, "day-min", work->day_s);
    json_text(out, root, "figures", work->labour->source);
    json_yes(out, root, "figures-built-in", work->labour->built_in);
    json_yes(out, root, "time-known", schedule->fault == DAY_GOOD && work->untimed == 0);
    if (schedule->fault != DAY_GOOD) {
        json_text(out, root, "no-order", shown_said(arena, work_fault_said(arena, work)));
    } else {
        add_minutes(out, root, "bound-min", schedule->bound_s);
    }
    if (schedule->fault == DAY_GOOD && work->untimed == 0) {
        add_minutes(out, root, "end-min", schedule->end_s);
    }
    if (work->chance.trials > 0) {
        add_chance(arena, out, root, work);
    }
    struct JsonNode *before = json_list(out, root, "before");
    for (int i = 0; i < work->before_count; i++) {
        json_text(out, before, "", shown_said(arena, work->before[i]));
    }
    struct JsonNode *chain = json_list(out, root, "chain");
    for (int i = 0; i < work->chain_count && work->untimed == 0; i++) {
        json_text(out, chain, "", shown_said(arena, work->tasks[work->chain[i]].title));
    }
    struct JsonNode *tasks = json_list(out, root, "tasks");
    for (int i = 0; i < work->count; i++) {
        add_task(arena, out, tasks, plan, work, schedule->order != NULL ? schedule->order[i] : i);
    }
    return json_out_finish(out);
}
