/* How likely the day is to be done in time: the same order of work with each task's time by lot. */
#include "day_private.h"

#include <math.h>
#include <stdlib.h>

struct DayLot day_lot(uint64_t seed)
{
    struct DayLot lot = {seed * UINT64_C(2) + 1};
    day_lot_part(&lot); /* neighbouring seeds part */
    day_lot_part(&lot);
    return lot;
}

/* A linear congruence modulo 2^64, its high bits folded onto the rest. Whole numbers only, so that every compiler comes
 * to the same. */
double day_lot_part(struct DayLot *lot)
{
    lot->state = lot->state * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
    uint64_t bits = lot->state;
    bits ^= bits >> 29;
    bits *= UINT64_C(0x9E3779B97F4A7C15);
    bits ^= bits >> 32;
    return (double)(bits >> 11) / 9007199254740992.0; /* 2^53 */
}

/* The inverse of its distribution; of + - x / and sqrt alone, which are rounded alike everywhere. */
double day_triangular(struct DayLot *lot, const struct DaySpan *span)
{
    const double part = day_lot_part(lot);
    const double low = (double)span->low_s, likely = (double)span->likely_s, high = (double)span->high_s;
    const double width = high - low;
    if (!(width > 0)) {
        return low;
    }
    return part * width < likely - low ? low + sqrt(part * width * (likely - low))
                                       : high - sqrt((1 - part) * width * (high - likely));
}

static int by_size(const void *left, const void *right)
{
    const double a = *(const double *)left, b = *(const double *)right;
    return a < b ? -1 : a > b;
}

/* One day: when all is done. `end_s` has room for every task. */
static double one_day(const struct DayJob *job, const struct DaySchedule *schedule, struct DayLot *lot, double *end_s)
{
    double free_s[DAY_HANDS_MOST] = {0};
    double last = 0;
    for (int n = 0; n < job->task_count; n++) {
        const int task = schedule->order[n];
        const unsigned who = schedule->places[task].who;
        double begin = 0;
        for (int i = 0; i < job->tasks[task].after_count; i++) {
            begin = fmax(begin, end_s[job->tasks[task].after[i]]);
        }
        for (int h = 0; h < job->hands; h++) {
            begin = (who >> h & 1U) != 0 ? fmax(begin, free_s[h]) : begin;
        }
        end_s[task] = begin + day_triangular(lot, &job->tasks[task].span);
        for (int h = 0; h < job->hands; h++) {
            free_s[h] = (who >> h & 1U) != 0 ? end_s[task] : free_s[h];
        }
        last = fmax(last, end_s[task]);
    }
    return last;
}

struct DayChance day_chance(struct Arena *arena, const struct DayJob *job, const struct DaySchedule *schedule,
                            int64_t limit_s, int trials, uint64_t seed)
{
    struct DayChance out = {0};
    if (schedule->fault != DAY_GOOD || schedule->places == NULL || trials < 1 || trials > DAY_TRIALS_MOST) {
        return out;
    }
    double *end_s = arena_array(arena, (size_t)job->task_count + 1, sizeof *end_s);
    double *days_s = arena_array(arena, (size_t)trials, sizeof *days_s);
    if (end_s == NULL || days_s == NULL) {
        return out;
    }
    struct DayLot lot = day_lot(seed);
    double sum = 0;
    for (int i = 0; i < trials; i++) {
        days_s[i] = one_day(job, schedule, &lot, end_s);
        sum += days_s[i];
        out.in_time += days_s[i] <= (double)limit_s;
    }
    out.mean_s = sum / trials;
    double squares = 0;
    for (int i = 0; i < trials; i++) {
        squares += (days_s[i] - out.mean_s) * (days_s[i] - out.mean_s);
    }
    out.sd_s = trials > 1 ? sqrt(squares / (trials - 1)) : 0;
    qsort(days_s, (size_t)trials, sizeof *days_s, by_size);
    out.half_s = (int64_t)ceil(days_s[(trials - 1) / 2]);
    out.nine_s = (int64_t)ceil(days_s[(int)(((int64_t)trials * 9 + 9) / 10) - 1]);
    out.trials = trials;
    return out;
}
