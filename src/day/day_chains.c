/* Looks a job over, and finds the longest chains of tasks that wait for each other. */
#include "day_private.h"

bool day_able(const struct DayJob *job, const struct DayTask *task)
{
    return task->hands <= job->hands && task->skilled <= job->skilled;
}

static bool task_good(const struct DayJob *job, const struct DayTask *task)
{
    const struct DaySpan *span = &task->span;
    bool good = span->low_s >= 0 && span->low_s <= span->likely_s && span->likely_s <= span->high_s &&
                span->high_s <= DAY_SECONDS_MOST && task->hands >= 1 && task->skilled >= 0 &&
                task->skilled <= task->hands && task->after_count >= 0 && task->after_count < job->task_count;
    for (int i = 0; good && i < task->after_count; i++) {
        good = task->after[i] >= 0 && task->after[i] < job->task_count;
    }
    return good;
}

static enum DayFault look_over(const struct DayJob *job, int *at)
{
    *at = 0;
    if (job->task_count < 0 || job->task_count > DAY_TASKS_MOST) {
        return DAY_TOO_MANY;
    }
    if (job->hands < 1 || job->hands > DAY_HANDS_MOST || job->skilled < 0 || job->skilled > job->hands) {
        return DAY_BAD_TASK;
    }
    for (int i = 0; i < job->task_count; i++) {
        *at = i;
        if (!task_good(job, &job->tasks[i])) {
            return DAY_BAD_TASK;
        }
        if (!day_able(job, &job->tasks[i])) {
            return DAY_TOO_FEW;
        }
    }
    return DAY_GOOD;
}

/* Every task behind those that it waits for; the first that cannot be placed is in a circle or behind one. */
static bool sort(const struct DayJob *job, int *sorted, bool *placed, int *at)
{
    int count = 0;
    bool more = true;
    while (more) {
        more = false;
        for (int i = 0; i < job->task_count; i++) {
            bool free = !placed[i];
            for (int k = 0; free && k < job->tasks[i].after_count; k++) {
                free = placed[job->tasks[i].after[k]];
            }
            if (free) {
                placed[i] = true;
                sorted[count++] = i;
                more = true;
            }
        }
    }
    for (*at = 0; *at < job->task_count && placed[*at];) {
        (*at)++;
    }
    return count == job->task_count;
}

static void measure(const struct DayJob *job, const struct DayChains *chains)
{
    for (int i = 0; i < job->task_count; i++) {
        const int task = chains->sorted[i];
        for (int k = 0; k < job->tasks[task].after_count; k++) {
            const int before = job->tasks[task].after[k];
            const int64_t end_s = chains->head_s[before] + job->tasks[before].span.likely_s;
            chains->head_s[task] = end_s > chains->head_s[task] ? end_s : chains->head_s[task];
            chains->followers[before]++;
        }
    }
    for (int i = job->task_count - 1; i >= 0; i--) {
        const int task = chains->sorted[i];
        chains->tail_s[task] += job->tasks[task].span.likely_s;
        for (int k = 0; k < job->tasks[task].after_count; k++) {
            const int before = job->tasks[task].after[k];
            if (chains->tail_s[task] > chains->tail_s[before]) {
                chains->tail_s[before] = chains->tail_s[task];
            }
        }
    }
}

enum DayFault day_chains(struct Arena *arena, const struct DayJob *job, struct DayChains *out, int *at)
{
    const enum DayFault fault = look_over(job, at);
    if (fault != DAY_GOOD) {
        return fault;
    }
    const size_t room = (size_t)job->task_count + 1;
    *out = (struct DayChains){.head_s = arena_array(arena, room, sizeof *out->head_s),
                              .tail_s = arena_array(arena, room, sizeof *out->tail_s),
                              .sorted = arena_array(arena, room, sizeof *out->sorted),
                              .followers = arena_array(arena, room, sizeof *out->followers)};
    bool *placed = arena_array(arena, room, sizeof *placed);
    if (out->head_s == NULL || out->tail_s == NULL || out->sorted == NULL || out->followers == NULL || placed == NULL) {
        return DAY_NO_MEMORY;
    }
    if (!sort(job, out->sorted, placed, at)) {
        return DAY_CIRCLE;
    }
    measure(job, out);
    return DAY_GOOD;
}
