/* What no order of work can beat. Of any set of tasks that share so many hands: the least that must come before one of
 * them, their work shared out evenly, the least that must come after one. */
#include "day_private.h"

/* Which tasks share what. */
enum Shared {
    SHARED_HANDS,         /* all tasks, all hands */
    SHARED_ELECTRICIANS,  /* what electricians must do */
    SHARED_ALONE,         /* no two of them at once: each takes more than half of the hands */
    SHARED_ALONE_SKILLED, /* likewise of the electricians */
    SHAREDS
};

/* The share of one task in what is shared out: 0 where it takes no part in it. */
static int64_t work_s(const struct DayJob *job, enum Shared shared, const struct DayTask *task)
{
    switch (shared) {
    case SHARED_HANDS: return task->hands * task->span.likely_s;
    case SHARED_ELECTRICIANS: return task->skilled * task->span.likely_s;
    case SHARED_ALONE: return 2 * task->hands > job->hands ? task->span.likely_s : 0;
    case SHARED_ALONE_SKILLED: return 2 * task->skilled > job->skilled ? task->span.likely_s : 0;
    case SHAREDS: break;
    }
    return 0;
}

static int64_t sharers(const struct DayJob *job, enum Shared shared)
{
    return shared == SHARED_HANDS ? job->hands : shared == SHARED_ELECTRICIANS ? job->skilled : 1;
}

/* The tail of a task without itself. */
static int64_t after_s(const struct DayJob *job, const struct DayChains *chains, int task)
{
    return chains->tail_s[task] - job->tasks[task].span.likely_s;
}

static int64_t largest(int64_t a, int64_t b)
{
    return a > b ? a : b;
}

/* Those with the most after them first: so many steps as tasks squared, which is what the bound takes too. */
static int *by_after(struct Arena *arena, const struct DayJob *job, const struct DayChains *chains)
{
    int *order = arena_array(arena, (size_t)job->task_count + 1, sizeof *order);
    for (int n = 0; order != NULL && n < job->task_count; n++) {
        int at = n;
        for (; at > 0 && after_s(job, chains, order[at - 1]) < after_s(job, chains, n); at--) {
            order[at] = order[at - 1];
        }
        order[at] = n;
    }
    return order;
}

/* Over all tasks that begin no sooner than `head` and end no later before the end than the last that was added: of each
 * head the sets grow by a task at a time. */
static int64_t bound_from(const struct DayJob *job, const struct DayChains *chains, const int *order, int64_t head)
{
    int64_t work[SHAREDS] = {0}, bound = 0;
    for (int n = 0; n < job->task_count; n++) {
        const int task = order[n];
        if (chains->head_s[task] < head) {
            continue;
        }
        for (int s = 0; s < SHAREDS; s++) {
            const int64_t more = work_s(job, (enum Shared)s, &job->tasks[task]), by = sharers(job, (enum Shared)s);
            work[s] += more;
            if (more > 0) {
                bound = largest(bound, head + (work[s] + by - 1) / by + after_s(job, chains, task));
            }
        }
    }
    return bound;
}

int64_t day_bound(struct Arena *arena, const struct DayJob *job)
{
    struct DayChains chains;
    int at = 0;
    if (day_chains(arena, job, &chains, &at) != DAY_GOOD) {
        return 0;
    }
    const int *order = by_after(arena, job, &chains);
    int64_t bound = 0;
    for (int i = 0; order != NULL && i < job->task_count; i++) {
        bound = largest(
            bound, largest(chains.head_s[i] + chains.tail_s[i], bound_from(job, &chains, order, chains.head_s[i])));
    }
    return bound;
}
