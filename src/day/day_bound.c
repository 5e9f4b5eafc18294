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

/* Over all tasks that begin no sooner than one and end no later before the end than another. */
static int64_t bound_between(const struct DayJob *job, const struct DayChains *chains, enum Shared shared, int64_t head,
                             int64_t after)
{
    int64_t work = 0;
    for (int i = 0; i < job->task_count; i++) {
        if (chains->head_s[i] >= head && after_s(job, chains, i) >= after) {
            work += work_s(job, shared, &job->tasks[i]);
        }
    }
    const int64_t by = sharers(job, shared);
    return work == 0 ? 0 : head + (work + by - 1) / by + after;
}

static int64_t largest(int64_t a, int64_t b)
{
    return a > b ? a : b;
}

int64_t day_bound(struct Arena *arena, const struct DayJob *job)
{
    struct DayChains chains;
    int at = 0;
    if (day_chains(arena, job, &chains, &at) != DAY_GOOD) {
        return 0;
    }
    int64_t bound = 0;
    for (int i = 0; i < job->task_count; i++) {
        bound = largest(bound, chains.head_s[i] + chains.tail_s[i]);
        for (int k = 0; k < job->task_count; k++) {
            const int64_t head = chains.head_s[i], after = after_s(job, &chains, k);
            for (int s = 0; s < SHAREDS; s++) {
                bound = largest(bound, bound_between(job, &chains, (enum Shared)s, head, after));
            }
        }
    }
    return bound;
}
