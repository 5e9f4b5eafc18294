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
    tcase_add_test(tests, test_refusals);
    tcase_add_test(tests, test_one_triangular);
    tcase_add_test(tests, test_two_triangulars);
    tcase_add_test(tests, test_lot);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
