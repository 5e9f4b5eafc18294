/* List scheduling by several ranks; the best schedule is kept. */
#include "day_private.h"

#include <string.h>

/* What decides between tasks that may begin. */
enum Rank { RANK_TAIL, RANK_TAIL_AND_HANDS, RANK_FOLLOWERS, RANK_LONGEST, RANK_SHORTEST, RANKS };
/* What is given out next: whatever can begin first, by rank where several can; or by rank alone. */
enum Given { GIVEN_EARLIEST, GIVEN_BY_RANK, GIVENS };

struct Trial {
    const struct DayJob *job;
    const struct DayChains *chains;
    enum Rank rank;
    enum Given given;
    struct DayPlace *places;
    int *order;
    bool *done;
    int64_t free_s[DAY_HANDS_MOST]; /* when each hand has nothing more to do */
    int64_t end_s;
};

static int64_t rank_of(const struct Trial *trial, int task)
{
    const struct DayTask *row = &trial->job->tasks[task];
    switch (trial->rank) {
    case RANK_TAIL: return trial->chains->tail_s[task];
    case RANK_TAIL_AND_HANDS: return trial->chains->tail_s[task] + row->span.likely_s * (row->hands - 1);
    case RANK_FOLLOWERS:
        return (int64_t)trial->chains->followers[task] * DAY_SECONDS_MOST + trial->chains->tail_s[task];
    case RANK_LONGEST: return row->span.likely_s;
    case RANK_SHORTEST: return -row->span.likely_s;
    case RANKS: break;
    }
    return 0;
}

static int64_t ready_s(const struct Trial *trial, int task)
{
    int64_t ready = 0;
    for (int i = 0; i < trial->job->tasks[task].after_count; i++) {
        const int64_t end_s = trial->places[trial->job->tasks[task].after[i]].end_s;
        ready = end_s > ready ? end_s : ready;
    }
    return ready;
}

static int ones(unsigned set)
{
    int count = 0;
    for (; set != 0; set &= set - 1) {
        count++;
    }
    return count;
}

/* When these hands can begin; `waste_s` is what they stand about before, and electricians cost more. */
static int64_t begin_s(const struct Trial *trial, unsigned who, int64_t ready, int64_t *waste_s)
{
    int64_t begin = ready;
    for (int h = 0; h < trial->job->hands; h++) {
        begin = (who >> h & 1U) != 0 && trial->free_s[h] > begin ? trial->free_s[h] : begin;
    }
    *waste_s = 0;
    for (int h = 0; h < trial->job->hands; h++) {
        *waste_s += (who >> h & 1U) != 0 ? begin - trial->free_s[h] : 0;
    }
    return begin;
}

static bool fits(const struct DayJob *job, const struct DayTask *task, unsigned who)
{
    return ones(who) == task->hands && ones(who & ((1U << job->skilled) - 1)) >= task->skilled;
}

/* The hands that can begin first; among those the fewest electricians, then the least standing about. */
static struct DayPlace place_of(const struct Trial *trial, int task)
{
    const struct DayTask *row = &trial->job->tasks[task];
    const int64_t ready = ready_s(trial, task);
    const unsigned skilled = (1U << trial->job->skilled) - 1;
    struct DayPlace best = {.who = 0};
    int64_t best_waste = 0;
    for (unsigned who = 1; who < 1U << trial->job->hands; who++) {
        int64_t waste = 0;
        if (!fits(trial->job, row, who)) {
            continue;
        }
        const int64_t begin = begin_s(trial, who, ready, &waste);
        const int more = ones(who & skilled) - ones(best.who & skilled);
        if (best.who == 0 || begin < best.start_s ||
            (begin == best.start_s && (more < 0 || (more == 0 && waste < best_waste)))) {
            best = (struct DayPlace){begin, begin + row->span.likely_s, who};
            best_waste = waste;
        }
    }
    return best;
}

static bool may_begin(const struct Trial *trial, int task)
{
    bool may = !trial->done[task];
    for (int i = 0; may && i < trial->job->tasks[task].after_count; i++) {
        may = trial->done[trial->job->tasks[task].after[i]];
    }
    return may;
}

static bool better(const struct Trial *trial, int task, const struct DayPlace *place, int than,
                   const struct DayPlace *than_place)
{
    if (than < 0) {
        return true;
    }
    if (trial->given == GIVEN_EARLIEST && place->start_s != than_place->start_s) {
        return place->start_s < than_place->start_s;
    }
    return rank_of(trial, task) > rank_of(trial, than);
}

static void give_out(struct Trial *trial)
{
    const int count = trial->job->task_count;
    memset(trial->done, 0, (size_t)count * sizeof *trial->done);
    memset(trial->free_s, 0, sizeof trial->free_s);
    trial->end_s = 0;
    for (int n = 0; n < count; n++) {
        int next = -1;
        struct DayPlace at = {.who = 0};
        for (int i = 0; i < count; i++) {
            if (may_begin(trial, i)) {
                const struct DayPlace place = place_of(trial, i);
                if (better(trial, i, &place, next, &at)) {
                    next = i;
                    at = place;
                }
            }
        }
        trial->places[next] = at;
        trial->order[n] = next;
        trial->done[next] = true;
        for (int h = 0; h < trial->job->hands; h++) {
            trial->free_s[h] = (at.who >> h & 1U) != 0 ? at.end_s : trial->free_s[h];
        }
        trial->end_s = at.end_s > trial->end_s ? at.end_s : trial->end_s;
    }
}

struct DaySchedule day_schedule(struct Arena *arena, const struct DayJob *job)
{
    struct DayChains chains;
    struct DaySchedule out = {.fault = DAY_GOOD};
    out.fault = day_chains(arena, job, &chains, &out.at);
    if (out.fault != DAY_GOOD) {
        return out;
    }
    const size_t room = (size_t)job->task_count + 1;
    struct DayPlace *places = arena_array(arena, room, sizeof *places);
    int *order = arena_array(arena, room, sizeof *order);
    struct Trial trial = {.job = job,
                          .chains = &chains,
                          .places = arena_array(arena, room, sizeof *trial.places),
                          .order = arena_array(arena, room, sizeof *trial.order),
                          .done = arena_array(arena, room, sizeof *trial.done)};
    if (places == NULL || order == NULL || trial.places == NULL || trial.order == NULL || trial.done == NULL) {
        return (struct DaySchedule){.fault = DAY_NO_MEMORY};
    }
    out.bound_s = day_bound(arena, job);
    if (arena_failed(arena)) { /* no bound */
        return (struct DaySchedule){.fault = DAY_NO_MEMORY};
    }
    bool any = false;
    for (int i = 0; i < RANKS * GIVENS && (!any || out.end_s > out.bound_s); i++) {
        trial.rank = (enum Rank)(i % RANKS);
        trial.given = (enum Given)(i / RANKS);
        give_out(&trial);
        if (!any || trial.end_s < out.end_s) {
            out.end_s = trial.end_s;
            memcpy(places, trial.places, room * sizeof *places);
            memcpy(order, trial.order, room * sizeof *order);
        }
        any = true;
    }
    out.places = places;
    out.order = order;
    return out;
}
