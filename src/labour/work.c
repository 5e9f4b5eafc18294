/* A plan as work: its tasks get their times, and an order in which they are done. */
#include "work_private.h"

#include <math.h>

enum Saying work_kind_said(enum TaskKind kind)
{
    static const enum Saying kinds[TASK_KINDS] = {
        [TASK_SET_OUT] = SAY_WORK_SET_OUT, [TASK_DIG] = SAY_WORK_DIG,
        [TASK_DUCT] = SAY_WORK_DUCT,       [TASK_DRILL] = SAY_WORK_DRILL,
        [TASK_FIX] = SAY_WORK_FIX,         [TASK_RODS] = SAY_WORK_DRIVE_RODS,
        [TASK_DRAW] = SAY_WORK_DRAW,       [TASK_REINSTATE] = SAY_WORK_REINSTATE,
        [TASK_GLAND] = SAY_WORK_GLAND,     [TASK_TERMINATE] = SAY_WORK_TERMINATE,
        [TASK_TEST] = SAY_WORK_TEST,       [TASK_LABEL] = SAY_WORK_LABEL};
    return (unsigned)kind < TASK_KINDS ? kinds[kind] : SAY_NOTHING;
}

const struct Say *work_time_said(struct Arena *arena, int64_t seconds)
{
    const int minutes = (int)((seconds + 59) / 60);
    return minutes < 60        ? say(arena, SAY_WORK_MINUTES, say_count(minutes))
           : minutes % 60 == 0 ? say(arena, SAY_WORK_HOURS_WHOLE, say_count(minutes / 60))
                               : say(arena, SAY_WORK_HOURS, say_count(minutes / 60), say_count(minutes % 60));
}

const char *work_clock_text(struct Arena *arena, int64_t seconds)
{
    const int minutes = (int)(seconds / 60);
    return arena_print(arena, "%d:%02d", minutes / 60, minutes % 60);
}

const struct Say *work_chance_said(struct Arena *arena, const struct Work *work)
{
    const int percent = (int)((int64_t)work->chance.in_time * 100 / work->chance.trials);
    return percent > 99  ? say(arena, SAY_WORK_CHANCE_OVER)
           : percent < 1 ? say(arena, SAY_WORK_CHANCE_UNDER)
                         : say(arena, SAY_AS_IS, say_fixed(percent, 0, UNIT_PERCENT));
}

/* Whole minutes, rounded up, one at least: a schedule to the second would say more than anybody knows. What is longer
 * than a task may be is one second beyond, which the schedule refuses. */
static int64_t span_s(double minutes, double quantity)
{
    const double seconds = ceil(minutes * quantity - 1e-9) * 60;
    return seconds < 60 ? 60 : seconds > (double)DAY_SECONDS_MOST ? (int64_t)DAY_SECONDS_MOST + 1 : (int64_t)seconds;
}

/* Where the file does not say how many hands a task takes, fewer do it too, with as much work in all: common practice,
 * no source. */
static void time_task(const struct Labour *labour, int hands, struct WorkTask *task, struct DayTask *out)
{
    const struct LabourFigure *figure = &labour->tasks[task->kind];
    task->timed = task->counted && figure->given;
    out->hands = labour_hands(labour, task->kind);
    out->skilled = labour_electrician(labour, task->kind) ? 1 : 0;
    const double quantity = task->quantity * out->hands;
    task->fewer = figure->hands == 0 && out->hands > hands;
    out->hands = task->fewer ? hands : out->hands;
    if (task->timed) {
        out->span = (struct DaySpan){span_s(figure->low_min.value, quantity / out->hands),
                                     span_s(figure->likely_min.value, quantity / out->hands),
                                     span_s(figure->high_min.value, quantity / out->hands)};
    }
}

static const int *waited_for(const struct Gathering *all, int task, int *count)
{
    int *list = arena_array(all->arena, (size_t)all->room, sizeof *list);
    for (int k = 0; list != NULL && k < all->count; k++) {
        if (all->waits[(size_t)task * (size_t)all->room + (size_t)k]) {
            list[(*count)++] = k;
        }
    }
    return list;
}

static bool time_all(const struct Gathering *all, struct Work *work, int hands)
{
    const struct Labour *labour = work->labour;
    struct DayTask *tasks = arena_array(all->arena, (size_t)all->room, sizeof *tasks);
    for (int i = 0; tasks != NULL && i < all->count; i++) {
        time_task(labour, hands, &all->tasks[i], &tasks[i]);
        tasks[i].after = waited_for(all, i, &tasks[i].after_count);
        work->untimed += !all->tasks[i].timed;
    }
    const int electricians = (int)labour->electricians.value;
    work->job = (struct DayJob){all->count, tasks, hands, electricians < hands ? electricians : hands};
    return tasks != NULL;
}

/* What an end waited for: of the tasks that end just when it begins one that it waits for, or that its hands did. */
static int before_in_chain(const struct Work *work, int task)
{
    const struct DayPlace *places = work->schedule.places;
    for (int i = 0; i < work->job.tasks[task].after_count; i++) {
        const int before = work->job.tasks[task].after[i];
        if (places[before].end_s == places[task].start_s && places[before].start_s < places[task].start_s) {
            return before;
        }
    }
    for (int i = 0; i < work->count; i++) {
        if (places[i].end_s == places[task].start_s && (places[i].who & places[task].who) != 0 &&
            places[i].start_s < places[task].start_s) {
            return i;
        }
    }
    return -1;
}

static bool find_chain(struct Arena *arena, struct Work *work)
{
    int *chain = arena_array(arena, (size_t)work->count + 1, sizeof *chain);
    int task = -1;
    for (int i = 0; chain != NULL && i < work->count; i++) {
        task = task < 0 && work->schedule.places[i].end_s == work->schedule.end_s ? i : task;
    }
    for (; task >= 0; task = before_in_chain(work, task)) {
        chain[work->chain_count++] = task;
    }
    for (int i = 0; chain != NULL && i < work->chain_count / 2; i++) {
        const int other = chain[i];
        chain[i] = chain[work->chain_count - 1 - i];
        chain[work->chain_count - 1 - i] = other;
    }
    work->chain = chain;
    return chain != NULL;
}

const struct Work *work_of(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                           const struct WorkAsked *asked)
{
    const struct Labour *labour = asked->labour;
    const int hands = asked->hands > 0 ? asked->hands : (int)labour->hands.value;
    struct Gathering all = {.arena = arena, .plan = plan, .parts = parts, .labour = labour, .hands = hands};
    struct Work *work = arena_alloc(arena, sizeof *work);
    if (work == NULL || !work_gather(&all)) {
        return NULL;
    }
    work->labour = labour;
    work->seed = asked->seed;
    work->count = all.count;
    work->tasks = all.tasks;
    work->day_s = (int64_t)(labour->day_min.value * 60);
    work->before = work_before(arena, plan, &work->before_count);
    if (!time_all(&all, work, hands)) {
        return NULL;
    }
    work->schedule = day_schedule(arena, &work->job);
    if (work->schedule.fault == DAY_GOOD && !find_chain(arena, work)) {
        return NULL;
    }
    if (work->schedule.fault == DAY_GOOD && work->untimed == 0) {
        work->chance = day_chance(arena, &work->job, &work->schedule, work->day_s, WORK_TRIALS, work->seed);
    }
    return arena_failed(arena) ? NULL : work;
}

const struct Say *work_fault_said(struct Arena *arena, const struct Work *work)
{
    const struct DaySchedule *schedule = &work->schedule;
    if (schedule->fault == DAY_GOOD) {
        return NULL;
    }
    if (schedule->fault == DAY_TOO_MANY || work->count == 0) {
        return say(arena, SAY_WORK_TOO_MANY, say_count(work->count));
    }
    const struct SayArg title = say_part(work->tasks[schedule->at].title);
    if (schedule->fault == DAY_TOO_FEW && work->job.tasks[schedule->at].skilled > work->job.skilled) {
        return say(arena, SAY_WORK_NO_ELECTRICIAN, title);
    }
    return schedule->fault == DAY_TOO_FEW
               ? say(arena, SAY_WORK_TOO_FEW, title, say_count(work->job.tasks[schedule->at].hands),
                     say_count(work->job.hands), say_count(work->job.skilled))
               : say(arena, SAY_WORK_TOO_LONG, title);
}
