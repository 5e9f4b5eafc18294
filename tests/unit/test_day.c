/* The order of work against every order of work, for jobs of up to eight tasks by lot, and the simulation against what
 * is known of triangular distributions in closed form. */
#include "day/day.h"

#include "run_suite.h"
#include "sweep_depth.h"

#include <check.h>
#include <math.h>
#include <stdio.h>

enum { TASKS_MOST = 8 };

struct Small {
    struct DayTask tasks[TASKS_MOST];
    int after[TASKS_MOST][TASKS_MOST];
    struct DayJob job;
};

static int between(struct DayLot *lot, int least, int most)
{
    return least + (int)(day_lot_part(lot) * (most - least + 1));
}

static struct DaySpan always(int64_t seconds)
{
    return (struct DaySpan){seconds, seconds, seconds};
}

/* A job whose every task can be done by its hands. */
static void make_small(struct Small *small, struct DayLot *lot, int count)
{
    const int hands = between(lot, 1, 4);
    const int skilled = between(lot, 1, hands);
    const int links = between(lot, 0, 60); /* of a hundred */
    for (int i = 0; i < count; i++) {
        struct DayTask *task = &small->tasks[i];
        *task = (struct DayTask){.span = always(between(lot, 1, 20)), .after = small->after[i]};
        task->hands = between(lot, 0, 2) > 0 ? 1 : between(lot, 1, hands);
        const int able = task->hands < skilled ? task->hands : skilled;
        task->skilled = between(lot, 0, 1) * between(lot, 0, able);
        for (int k = 0; k < i; k++) {
            if (between(lot, 0, 99) < links) {
                small->after[i][task->after_count++] = k;
            }
        }
    }
    small->job = (struct DayJob){count, small->tasks, hands, skilled};
}

/* ---- every order of work ---- */

struct Search {
    const struct DayJob *job;
    bool done[TASKS_MOST];
    int64_t end_s[TASKS_MOST], free_s[DAY_HANDS_MOST], best_s;
};

static int ones(unsigned set)
{
    int count = 0;
    for (; set != 0; set >>= 1) {
        count += (int)(set & 1U);
    }
    return count;
}

/* Of hands alike in skill and in when they are free the first stands for all. */
static bool first_of_its_like(const struct Search *search, unsigned who)
{
    for (int h = 1; h < search->job->hands; h++) {
        const bool alike = search->free_s[h] == search->free_s[h - 1] && h != search->job->skilled;
        if (alike && (who >> h & 1U) != 0 && (who >> (h - 1) & 1U) == 0) {
            return false;
        }
    }
    return true;
}

static void try_all(struct Search *search, int given, int64_t end_s);

static void try_task(struct Search *search, int task, int given, int64_t end_s)
{
    const struct DayTask *row = &search->job->tasks[task];
    int64_t ready = 0;
    for (int i = 0; i < row->after_count; i++) {
        if (!search->done[row->after[i]]) {
            return;
        }
        ready = search->end_s[row->after[i]] > ready ? search->end_s[row->after[i]] : ready;
    }
    for (unsigned who = 1; who < 1U << search->job->hands; who++) {
        if (ones(who) != row->hands || ones(who & ((1U << search->job->skilled) - 1)) < row->skilled ||
            !first_of_its_like(search, who)) {
            continue;
        }
        int64_t kept[DAY_HANDS_MOST], begin = ready;
        for (int h = 0; h < search->job->hands; h++) {
            kept[h] = search->free_s[h];
            begin = (who >> h & 1U) != 0 && kept[h] > begin ? kept[h] : begin;
        }
        const int64_t end = begin + row->span.likely_s;
        if (end < search->best_s) {
            for (int h = 0; h < search->job->hands; h++) {
                search->free_s[h] = (who >> h & 1U) != 0 ? end : kept[h];
            }
            search->done[task] = true;
            search->end_s[task] = end;
            try_all(search, given + 1, end > end_s ? end : end_s);
            search->done[task] = false;
            for (int h = 0; h < search->job->hands; h++) {
                search->free_s[h] = kept[h];
            }
        }
    }
}

static void try_all(struct Search *search, int given, int64_t end_s)
{
    if (given == search->job->task_count) {
        search->best_s = end_s < search->best_s ? end_s : search->best_s;
        return;
    }
    for (int i = 0; i < search->job->task_count && end_s < search->best_s; i++) {
        if (!search->done[i]) {
            try_task(search, i, given, end_s);
        }
    }
}

static int64_t optimum(const struct DayJob *job)
{
    struct Search search = {.job = job, .best_s = INT64_MAX};
    try_all(&search, 0, 0);
    return search.best_s;
}

/* ---- what must hold of any schedule ---- */

static void check_places(const struct DayJob *job, const struct DaySchedule *schedule)
{
    int64_t last = 0;
    for (int i = 0; i < job->task_count; i++) {
        const struct DayTask *task = &job->tasks[i];
        const struct DayPlace *place = &schedule->places[i];
        ck_assert_int_ge(place->start_s, 0);
        ck_assert_int_eq(place->end_s - place->start_s, task->span.likely_s);
        ck_assert_int_eq(ones(place->who), task->hands);
        ck_assert_int_ge(ones(place->who & ((1U << job->skilled) - 1)), task->skilled);
        ck_assert_uint_lt(place->who, 1U << job->hands);
        for (int k = 0; k < task->after_count; k++) {
            ck_assert_int_le(schedule->places[task->after[k]].end_s, place->start_s);
        }
        for (int k = 0; k < i; k++) {
            const struct DayPlace *other = &schedule->places[k];
            ck_assert((other->who & place->who) == 0 || other->end_s <= place->start_s ||
                      place->end_s <= other->start_s);
        }
        last = place->end_s > last ? place->end_s : last;
    }
    ck_assert_int_eq(last, schedule->end_s);
}

START_TEST(test_against_every_order)
{
    const int jobs = sweep_depth(200, 6000);
    struct DayLot lot = day_lot(12);
    int best = 0, tight = 0;
    double worst = 1, sum = 0;
    struct Arena *arena = arena_new();
    for (int n = 0; n < jobs; n++) {
        struct Small small;
        make_small(&small, &lot, 1 + n % TASKS_MOST);
        struct Arena *scratch = arena_scratch(arena);
        const struct DaySchedule schedule = day_schedule(scratch, &small.job);
        ck_assert_int_eq(schedule.fault, DAY_GOOD);
        check_places(&small.job, &schedule);
        const int64_t least = optimum(&small.job);
        ck_assert_int_le(schedule.bound_s, least);
        ck_assert_int_ge(schedule.end_s, least);
        const double ratio = (double)schedule.end_s / (double)least;
        worst = ratio > worst ? ratio : worst;
        sum += ratio;
        best += schedule.end_s == least;
        tight += schedule.bound_s == least;
    }
    printf("day: %d jobs, %d at the optimum, %d with the bound at it; ratio %.4f on the whole, %.4f at worst\n", jobs,
           best, tight, sum / jobs, worst);
    fflush(stdout);
    ck_assert_msg(best * 100 >= jobs * 95 && worst < 1.31, "list scheduling has become worse: %d of %d, %.3f", best,
                  jobs, worst);
    ck_assert_msg(tight * 100 >= jobs * 70, "the bound has become weaker: %d of %d", tight, jobs);
    arena_free(arena);
}
END_TEST

/* Worked by hand: digging (60, anyone), drilling (30, electrician) and glanding (30, electrician) at once, then drawing
 * with two hands (20) behind digging and drilling. With two hands of whom one is an electrician: 60, then 20. */
START_TEST(test_worked_by_hand)
{
    struct Arena *arena = arena_new();
    const int both[] = {0, 1};
    const struct DayTask tasks[] = {{always(60), 1, 0, 0, NULL},
                                    {always(30), 1, 1, 0, NULL},
                                    {always(30), 1, 1, 0, NULL},
                                    {always(20), 2, 1, 2, both}};
    const struct DayJob two = {4, tasks, 2, 1};
    const struct DaySchedule schedule = day_schedule(arena, &two);
    ck_assert_int_eq(schedule.end_s, 80);
    ck_assert_int_eq(schedule.bound_s, 80);
    ck_assert_uint_eq(schedule.places[0].who, 2); /* the electrician keeps free for what only he may do */
    ck_assert_int_eq(schedule.places[3].start_s, 60);
    const struct DayJob one = {3, tasks, 1, 1};
    ck_assert_int_eq(day_schedule(arena, &one).end_s, 120);
    ck_assert_int_eq(day_bound(arena, &one), 120);
    arena_free(arena);
}
END_TEST

/* ---- jobs whose shortest day is known in closed form ---- */

enum { MANY = 60 };

/* Tasks of one length and one hand on so many hands: as many rounds as they fill. Behind all of them one that takes
 * every hand, before all of them one of one. */
START_TEST(test_rounds_with_head_and_tail)
{
    struct Arena *arena = arena_new();
    int waits[MANY], first[1] = {0};
    struct DayTask tasks[MANY + 2];
    int optimal = 0, jobs = 0;
    for (int hands = 1; hands <= DAY_HANDS_MOST; hands++) {
        for (int n = 1; n <= MANY; n++) {
            tasks[0] = (struct DayTask){.span = always(7), .hands = 1};
            for (int i = 0; i < n; i++) {
                tasks[1 + i] = (struct DayTask){.span = always(10), .hands = 1, .after_count = 1, .after = first};
                waits[i] = 1 + i;
            }
            tasks[1 + n] = (struct DayTask){.span = always(13), .hands = hands, .after_count = n, .after = waits};
            const struct DayJob job = {n + 2, tasks, hands, 0};
            const struct DaySchedule schedule = day_schedule(arena, &job);
            const int rounds = (n + hands - 1) / hands;
            check_places(&job, &schedule);
            ck_assert_int_eq(schedule.end_s, 7 + 10 * rounds + 13);
            ck_assert_int_le(schedule.bound_s, schedule.end_s);
            ck_assert_int_ge(schedule.bound_s, 7 + (10 * n + hands - 1) / hands + 13); /* as if tasks could be split */
            optimal += schedule.bound_s == schedule.end_s;
            jobs++;
        }
    }
    printf("day: %d jobs in rounds, all at the optimum, %d with the bound at it\n", jobs, optimal);
    arena_free(arena);
}
END_TEST

/* Independent tasks of one hand: no order beats the longest, or the work shared out evenly (the time that they take
 * where they may be broken off: McNaughton, 1959); list scheduling stays within 2 - 1/hands of it (Graham, 1966), which
 * is the least that must hold. In one chain nothing is shared. */
START_TEST(test_work_shared_evenly)
{
    struct Arena *arena = arena_new();
    struct DayLot lot = day_lot(31);
    struct DayTask tasks[MANY];
    int after[MANY];
    for (int n = 0; n < 400; n++) {
        const int hands = between(&lot, 1, DAY_HANDS_MOST), count = between(&lot, 1, MANY);
        int64_t work = 0, longest = 0;
        for (int i = 0; i < count; i++) {
            tasks[i] = (struct DayTask){.span = always(between(&lot, 1, 600)), .hands = 1};
            work += tasks[i].span.likely_s;
            longest = tasks[i].span.likely_s > longest ? tasks[i].span.likely_s : longest;
        }
        const struct DayJob job = {count, tasks, hands, 0};
        const int64_t shared = (work + hands - 1) / hands, least = shared > longest ? shared : longest;
        struct Arena *scratch = arena_scratch(arena);
        const struct DaySchedule schedule = day_schedule(scratch, &job);
        ck_assert_int_eq(schedule.bound_s, least);
        ck_assert_int_ge(schedule.end_s, least);
        ck_assert_int_le(schedule.end_s * hands, least * (2 * hands - 1));
        for (int i = 0; i < count; i++) { /* one chain */
            after[i] = i - 1;
            tasks[i].after = &after[i];
            tasks[i].after_count = i > 0;
        }
        ck_assert_int_eq(day_schedule(scratch, &job).end_s, work);
        ck_assert_int_eq(day_bound(scratch, &job), work);
    }
    arena_free(arena);
}
END_TEST

/* Tasks of one length that wait in trees, towards one or away from one: with `over[k]` tasks that have more than k of
 * them behind (before) themselves, no day is shorter than k + over[k] / hands, rounded up, and by the longest chain
 * first none is longer (Hu, 1961). */
static int64_t tree_optimum(const int *level, int count, int hands)
{
    int64_t most = 0;
    for (int k = 0; k < count; k++) {
        int over = 0;
        for (int i = 0; i < count; i++) {
            over += level[i] > k;
        }
        const int64_t rounds = over > 0 ? k + (over + hands - 1) / hands : 0;
        most = rounds > most ? rounds : most;
    }
    return most;
}

START_TEST(test_trees_of_equal_tasks)
{
    struct Arena *arena = arena_new();
    struct DayLot lot = day_lot(54);
    const bool towards = _i == 0;
    int tight = 0;
    for (int n = 0; n < 300; n++) {
        const int hands = between(&lot, 1, DAY_HANDS_MOST), count = between(&lot, 1, MANY),
                  near = between(&lot, 1, MANY);
        struct DayTask tasks[MANY];
        int waits[MANY][MANY], level[MANY];
        for (int i = 0; i < count; i++) { /* each but the first hangs on one before it */
            const int parent = i == 0 ? -1 : between(&lot, i > near ? i - near : 0, i - 1);
            tasks[i] = (struct DayTask){.span = always(60), .hands = 1, .after = waits[i]};
            level[i] = parent < 0 ? 1 : level[parent] + 1;
            if (parent >= 0 && towards) {
                waits[parent][tasks[parent].after_count++] = i;
            } else if (parent >= 0) {
                waits[i][tasks[i].after_count++] = parent;
            }
        }
        struct Arena *scratch = arena_scratch(arena);
        const struct DayJob job = {count, tasks, hands, 0};
        const struct DaySchedule schedule = day_schedule(scratch, &job);
        check_places(&job, &schedule);
        ck_assert_int_eq(schedule.end_s, 60 * tree_optimum(level, count, hands));
        ck_assert_int_le(schedule.bound_s, schedule.end_s);
        ck_assert_int_gt(schedule.bound_s, schedule.end_s - 60); /* as if the last round could be split */
        tight += schedule.bound_s == schedule.end_s;
    }
    printf("day: 300 trees %s one task, all at the optimum, %d with the bound at it\n", towards ? "towards" : "from",
           tight);
    arena_free(arena);
}
END_TEST

/* With memory that fails at each allocation: what comes out is right or is not there. */
START_TEST(test_memory)
{
    struct Small small;
    struct DayLot lot = day_lot(5);
    make_small(&small, &lot, TASKS_MOST);
    struct Arena *whole = arena_new();
    const struct DaySchedule right = day_schedule(whole, &small.job);
    const struct DayChance sure = day_chance(whole, &small.job, &right, 60, 500, 1);
    bool failed = true;
    long tried = 0;
    for (; failed && tried < 1000; tried++) {
        struct Arena *arena = arena_new_of(64); /* a block for nearly each thing that is asked for */
        arena_fail_after(arena, tried);
        const struct DaySchedule schedule = day_schedule(arena, &small.job);
        const struct DayChance chance = day_chance(arena, &small.job, &schedule, 60, 500, 1);
        failed = arena_failed(arena);
        ck_assert(schedule.fault == DAY_NO_MEMORY || schedule.fault == DAY_GOOD);
        ck_assert(failed || schedule.fault == DAY_GOOD);
        if (schedule.fault == DAY_GOOD) {
            ck_assert_int_eq(schedule.end_s, right.end_s);
            ck_assert_int_eq(schedule.bound_s, right.bound_s);
            ck_assert_mem_eq(schedule.order, right.order, TASKS_MOST * sizeof *right.order);
        }
        ck_assert(chance.trials == (failed ? 0 : 500));
        if (!failed) {
            ck_assert_int_eq(chance.in_time, sure.in_time);
            ck_assert_int_eq(chance.nine_s, sure.nine_s);
        }
        arena_free(arena);
    }
    ck_assert_int_ge(tried, 8); /* allocations there are */
    ck_assert(!failed);
    arena_free(whole);
}
END_TEST

static struct DaySchedule of_one(struct Arena *arena, const struct DayTask *task, int hands, int skilled)
{
    const struct DayJob job = {1, task, hands, skilled};
    return day_schedule(arena, &job);
}

/* By hand: of two tasks of 100 s that each take more than half of those who can do them one waits for the other; by
 * their work alone, 4 x 100 s by three, 134 s would do. */
START_TEST(test_more_than_half)
{
    struct Arena *arena = arena_new();
    const struct DayTask of_hands[2] = {{.span = always(100), .hands = 2}, {.span = always(100), .hands = 2}};
    const struct DayTask of_skilled[2] = {{.span = always(100), .hands = 2, .skilled = 2},
                                          {.span = always(100), .hands = 2, .skilled = 2}};
    const struct DayJob three_hands = {2, of_hands, 3, 0}, three_electricians = {2, of_skilled, 4, 3};
    const struct DayJob two_pairs = {2, of_hands, 4, 0};
    ck_assert_int_eq(day_bound(arena, &three_hands), 200);
    ck_assert_int_eq(day_bound(arena, &three_electricians), 200);
    ck_assert_int_eq(day_bound(arena, &two_pairs), 100);
    arena_free(arena);
}
END_TEST

START_TEST(test_refusals)
{
    struct Arena *arena = arena_new();
    const int other[] = {1}, itself[] = {0}, nobody[] = {7};
    const struct DayTask bad[] = {{{-1, 2, 3}, 1, 0, 0, NULL}, {{3, 2, 4}, 1, 0, 0, NULL},
                                  {{1, 5, 4}, 1, 0, 0, NULL},  {{1, 2, (int64_t)DAY_SECONDS_MOST + 1}, 1, 0, 0, NULL},
                                  {{1, 2, 3}, 0, 0, 0, NULL},  {{1, 2, 3}, 1, 2, 0, NULL},
                                  {{1, 2, 3}, 1, 0, 1, nobody}};
    for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
        ck_assert_msg(of_one(arena, &bad[i], 4, 4).fault == DAY_BAD_TASK, "%zu", i);
    }
    const struct DayTask two_hands = {always(1), 2, 0, 0, NULL}, skilled = {always(1), 2, 2, 0, NULL};
    ck_assert_int_eq(of_one(arena, &two_hands, 1, 1).fault, DAY_TOO_FEW);
    ck_assert_int_eq(of_one(arena, &skilled, 2, 1).fault, DAY_TOO_FEW);
    ck_assert_int_eq(of_one(arena, &two_hands, 5, 1).fault, DAY_BAD_TASK);
    ck_assert_int_eq(of_one(arena, &two_hands, 2, 3).fault, DAY_BAD_TASK);
    const struct DayTask circle[] = {{always(1), 1, 0, 1, other}, {always(1), 1, 0, 1, itself}};
    const struct DayJob round = {2, circle, 2, 1};
    const struct DaySchedule none = day_schedule(arena, &round);
    ck_assert_int_eq(none.fault, DAY_CIRCLE);
    ck_assert_int_eq(day_bound(arena, &round), 0);
    ck_assert_int_eq(day_chance(arena, &round, &none, 10, 100, 1).trials, 0);
    const struct DayJob many = {DAY_TASKS_MOST + 1, circle, 2, 1};
    ck_assert_int_eq(day_schedule(arena, &many).fault, DAY_TOO_MANY);
    const struct DayJob empty = {0, NULL, 2, 1};
    ck_assert_int_eq(day_schedule(arena, &empty).end_s, 0);
    arena_free(arena);
}
END_TEST

/* ---- the simulation ---- */

static double mean_of(const struct DaySpan *span)
{
    return (double)(span->low_s + span->likely_s + span->high_s) / 3;
}

static double variance_of(const struct DaySpan *span)
{
    const double a = (double)span->low_s, c = (double)span->likely_s, b = (double)span->high_s;
    return (a * a + b * b + c * c - a * b - a * c - b * c) / 18;
}

/* The share of a triangular distribution up to x. */
static double up_to(const struct DaySpan *span, double x)
{
    const double a = (double)span->low_s, c = (double)span->likely_s, b = (double)span->high_s;
    return x <= a   ? 0
           : x >= b ? 1
           : x <= c ? (x - a) * (x - a) / ((b - a) * (c - a))
                    : 1 - (b - x) * (b - x) / ((b - a) * (b - c));
}

/* One task: its share within x, for many x, against the distribution; five standard errors of a share are allowed. */
START_TEST(test_one_triangular)
{
    static const struct DaySpan spans[] = {{1000, 2000, 6000}, {0, 0, 3600}, {600, 3600, 3600}, {5, 5000, 9000}};
    enum { TRIALS = 20000, STEPS = 9 };
    struct Arena *arena = arena_new();
    for (size_t i = 0; i < sizeof spans / sizeof spans[0]; i++) {
        const struct DayTask task = {spans[i], 1, 0, 0, NULL};
        const struct DayJob job = {1, &task, 1, 1};
        const struct DaySchedule schedule = day_schedule(arena, &job);
        for (int k = 1; k < STEPS; k++) {
            const int64_t limit = spans[i].low_s + (spans[i].high_s - spans[i].low_s) * k / STEPS;
            const struct DayChance chance = day_chance(arena, &job, &schedule, limit, TRIALS, 7 + (uint64_t)k);
            const double share = up_to(&spans[i], (double)limit);
            ck_assert_int_eq(chance.trials, TRIALS);
            ck_assert_double_le(fabs((double)chance.in_time / TRIALS - share), 5 * sqrt(share * (1 - share) / TRIALS));
        }
        const struct DayChance all = day_chance(arena, &job, &schedule, spans[i].high_s, TRIALS, 3);
        ck_assert_int_eq(all.in_time, TRIALS);
        ck_assert_double_le(fabs(up_to(&spans[i], (double)all.half_s) - 0.5), 0.02);
        ck_assert_double_le(fabs(up_to(&spans[i], (double)all.nine_s) - 0.9), 0.02);
        ck_assert_int_eq(day_chance(arena, &job, &schedule, spans[i].low_s - 1, TRIALS, 3).in_time, 0);
    }
    arena_free(arena);
}
END_TEST

/* Two in a row: means and variances add up. Side by side: both are done in time with the product of the shares. */
START_TEST(test_two_triangulars)
{
    enum { TRIALS = 40000 };
    struct Arena *arena = arena_new();
    const int first[] = {0};
    const struct DaySpan one = {1200, 1800, 5400}, other = {600, 2400, 3000};
    const struct DayTask row[] = {{one, 1, 0, 0, NULL}, {other, 1, 0, 1, first}};
    const struct DayJob in_row = {2, row, 1, 1};
    const struct DaySchedule after = day_schedule(arena, &in_row);
    const struct DayChance sum = day_chance(arena, &in_row, &after, 5000, TRIALS, 1);
    const double variance = variance_of(&one) + variance_of(&other);
    ck_assert_double_le(fabs(sum.mean_s - mean_of(&one) - mean_of(&other)), 5 * sqrt(variance / TRIALS));
    ck_assert_double_le(fabs(sum.sd_s / sqrt(variance) - 1), 0.02);
    const struct DayTask side[] = {{one, 1, 0, 0, NULL}, {other, 1, 0, 0, NULL}};
    const struct DayJob at_once = {2, side, 2, 1};
    const struct DaySchedule beside = day_schedule(arena, &at_once);
    const struct DayChance both = day_chance(arena, &at_once, &beside, 2500, TRIALS, 1);
    const double share = up_to(&one, 2500) * up_to(&other, 2500);
    ck_assert_double_le(fabs((double)both.in_time / TRIALS - share), 5 * sqrt(share * (1 - share) / TRIALS));
    arena_free(arena);
}
END_TEST

/* The same seed gives the same, from any compiler: these are written down from whole-number arithmetic done apart. */
START_TEST(test_lot)
{
    struct DayLot lot = day_lot(1), again = day_lot(1), other = day_lot(2);
    int same = 0, low = 0;
    for (int i = 0; i < 10000; i++) {
        const double part = day_lot_part(&lot);
        ck_assert(part >= 0 && part < 1);
        ck_assert_double_eq(part, day_lot_part(&again));
        same += part == day_lot_part(&other);
        low += part < 0.25;
    }
    ck_assert_int_eq(same, 0);
    ck_assert_int_ge(low, 2350);
    ck_assert_int_le(low, 2650);
    struct DayLot first = day_lot(1);
    ck_assert_int_eq((int64_t)(day_lot_part(&first) * 9007199254740992.0), INT64_C(1515064668189546));
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("day");
    TCase *tests = tcase_create("day");
    tcase_set_timeout(tests, 120);
    tcase_add_test(tests, test_against_every_order);
    tcase_add_test(tests, test_worked_by_hand);
    tcase_add_test(tests, test_more_than_half);
    tcase_add_test(tests, test_rounds_with_head_and_tail);
    tcase_add_test(tests, test_work_shared_evenly);
    tcase_add_loop_test(tests, test_trees_of_equal_tasks, 0, 2);
    tcase_add_test(tests, test_memory);
    tcase_add_test(tests, test_refusals);
    tcase_add_test(tests, test_one_triangular);
    tcase_add_test(tests, test_two_triangulars);
    tcase_add_test(tests, test_lot);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
