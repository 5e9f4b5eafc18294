/** The work of a day: who does what and when, what no order of work can beat, and how likely it is to be done in time.
 * A library of its own that knows tasks, hands and seconds only. */
#ifndef WEND_DAY_H
#define WEND_DAY_H

#include "base/base.h"

#include <stdint.h>

enum {
    DAY_TASKS_MOST = 400,
    DAY_HANDS_MOST = 4,
    DAY_SECONDS_MOST = 366 * 24 * 3600, /**< of one task */
    DAY_TRIALS_MOST = 1000000
};

/** How long a task takes: low <= likely <= high. */
struct DaySpan {
    int64_t low_s, likely_s, high_s;
};

struct DayTask {
    struct DaySpan span;
    int hands;       /**< that it takes at once, 1 or more */
    int skilled;     /**< of them those that must be electricians */
    int after_count; /**< tasks that must be done before it begins */
    const int *after;
};

struct DayJob {
    int task_count;
    const struct DayTask *tasks;
    int hands;   /**< 1 to DAY_HANDS_MOST */
    int skilled; /**< of them electricians: the first so many hands; they do other work too */
};

/** Why a job has no schedule. */
enum DayFault {
    DAY_GOOD,
    DAY_BAD_TASK, /**< a span, a number of hands or a task to wait for that cannot be */
    DAY_TOO_MANY, /**< tasks */
    DAY_TOO_FEW,  /**< hands or electricians for task `at` */
    DAY_CIRCLE,   /**< tasks wait for each other, `at` among them */
    DAY_NO_MEMORY,
};

/** When a task is done and by whom: bit 0 of `who` is the first hand. */
struct DayPlace {
    int64_t start_s, end_s;
    unsigned who;
};

struct DaySchedule {
    enum DayFault fault;
    int at;                        /**< the task of the fault */
    const struct DayPlace *places; /**< one a task, at its likely time; NULL with a fault */
    const int *order;              /**< the tasks in the order in which they begin, as they were given out */
    int64_t end_s;                 /**< when all is done */
    int64_t bound_s;               /**< no order of work is done before this */
};

/** List scheduling: of the tasks that may begin the one with the longest work behind it is given out first, by several
 * rules of rank, and the best of those schedules is taken. A task is not broken off, and its hands stay with it. */
struct DaySchedule day_schedule(struct Arena *arena, const struct DayJob *job);

/** No order of work is done before this: the longest chain; what all hands, and all electricians, have to do together,
 * with what must come before and after it. 0 for a job with a fault. */
int64_t day_bound(struct Arena *arena, const struct DayJob *job);

/** Numbers by lot, the same from any compiler. */
struct DayLot {
    uint64_t state;
};
struct DayLot day_lot(uint64_t seed);
/** From 0 up to but not including 1. */
double day_lot_part(struct DayLot *lot);
/** By lot from a triangular distribution with these ends and this mode. */
double day_triangular(struct DayLot *lot, const struct DaySpan *span);

struct DayChance {
    int trials;
    int in_time;            /**< of them, done within the limit */
    double mean_s, sd_s;    /**< of when all is done */
    int64_t half_s, nine_s; /**< half of the days, nine of ten, are done by then */
};
/** The schedule's order of work and hands again and again, each task's time by lot and for itself. Trials 0: without
 * memory, or for a schedule with a fault. */
struct DayChance day_chance(struct Arena *arena, const struct DayJob *job, const struct DaySchedule *schedule,
                            int64_t limit_s, int trials, uint64_t seed);

#endif
