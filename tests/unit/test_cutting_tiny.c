/* Cutting plans of jobs so small that every possibility can be tried: the plan as given back, the search without its
 * aids, and the worth of a bin. */
#include "cutting_suites.h"

#include "cutting/cutting_private.h"
#include "cutting_rig.h"
#include "sweep_depth.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { TINY_PIECES = 7, TINY_BINS = 40 };

/* The three sums in order of weight; also how the best is compared. */
struct Sums {
    int64_t bought_mm;
    int drums, offcuts;
};

static bool better(const struct Sums *a, const struct Sums *b)
{
    if (a->bought_mm != b->bought_mm) {
        return a->bought_mm < b->bought_mm;
    }
    return a->drums != b->drums ? a->drums < b->drums : a->offcuts < b->offcuts;
}

struct Tiny {
    int bins, length_mm[TINY_BINS];
    bool bought[TINY_BINS];
    int64_t sum_mm[1 << TINY_PIECES]; /* of the pieces in each set */
    struct Sums best[1 << TINY_PIECES];
};

static void list_bins(struct Tiny *tiny, const struct Rig *rig)
{
    for (int i = 0; i < rig->job.stock_count; i++) {
        const int available = rig->stock[i].available;
        const int count = available == CUTTING_UNLIMITED || available > TINY_PIECES ? TINY_PIECES : available;
        for (int n = 0; n < count; n++) {
            tiny->length_mm[tiny->bins] = rig->stock[i].length_mm;
            tiny->bought[tiny->bins++] = true;
        }
    }
    for (int i = 0; i < rig->job.offcut_count; i++) {
        tiny->length_mm[tiny->bins++] = rig->offcuts[i].length_mm;
    }
}

/* The best sums for every set of pieces: one bin after another takes any subset that fits. */
static void try_everything(struct Tiny *tiny, const struct Rig *rig)
{
    const unsigned sets = 1u << rig->job.piece_count;
    memset(tiny, 0, sizeof *tiny);
    list_bins(tiny, rig);
    for (unsigned set = 0; set < sets; set++) {
        tiny->best[set].bought_mm = set == 0 ? 0 : INT64_MAX;
        for (int i = 0; i < rig->job.piece_count; i++) {
            tiny->sum_mm[set] += (set >> i & 1) != 0 ? rig->pieces[i].length_mm : 0;
        }
    }
    for (int bin = 0; bin < tiny->bins; bin++) {
        for (unsigned set = sets - 1; set > 0; set--) {
            for (unsigned part = set; part > 0; part = (part - 1) & set) {
                struct Sums sums = tiny->best[set & ~part];
                if (tiny->sum_mm[part] > tiny->length_mm[bin] || sums.bought_mm == INT64_MAX) {
                    continue;
                }
                sums.bought_mm += tiny->bought[bin] ? tiny->length_mm[bin] : 0;
                sums.drums += tiny->bought[bin] ? 1 : 0;
                sums.offcuts += tiny->bought[bin] ? 0 : 1;
                tiny->best[set] = better(&sums, &tiny->best[set]) ? sums : tiny->best[set];
            }
        }
    }
}

static const struct RigFamily tiny_families[] = {
    {1, 7, 1, 20, 1, 0, 1, {20}, 0, false, 0},
    {2, 7, 1, 20, 1, 0, 2, {13, 20}, 2, false, 2},
    {3, 7, 2, 12, 1, 0, 3, {12, 17, 21}, 2, false, 3},
    {3, 7, 3, 11, 1, 3, 3, {11, 14, 19}, 2, true, 3},
    {4, 7, 5, 30, 1, 0, 2, {24, 37}, 1, true, 2},
    {4, 7, 1, 9, 1, 0, 0, {0}, 0, false, 5},
    {5, 7, 20, 70, 1, 0, 3, {100, 131, 150}, 0, false, 3},
};
enum { TINY_FAMILIES = (int)(sizeof tiny_families / sizeof tiny_families[0]) };

static int tiny_seeds(void)
{
    return sweep_depth(30, 120);
}

static int set_cut(const struct CuttingPlan *plan)
{
    int set = 0;
    for (int o = 0; o < plan->opened_count; o++) {
        for (int i = 0; i < plan->opened[o].piece_count; i++) {
            set |= 1 << plan->opened[o].pieces[i];
        }
    }
    return set;
}

START_TEST(tiny_jobs_against_every_possibility)
{
    struct Rig *rig = malloc(sizeof *rig);
    struct Tiny *tiny = malloc(sizeof *tiny);
    ck_assert(rig != NULL && tiny != NULL);
    for (int seed = 0; seed < tiny_seeds(); seed++) {
        struct Arena *arena = arena_new();
        rig_chance(rig, &tiny_families[_i], seed);
        try_everything(tiny, rig);
        const struct CuttingPlan *plan = rig_plan(arena, rig);
        ck_assert(plan->proved);
        const int everything = (1 << rig->job.piece_count) - 1, cut = set_cut(plan);
        int64_t most_mm = 0, impossible_mm = 0;
        for (int set = 0; set <= everything; set++) {
            const bool can = tiny->best[set].bought_mm < INT64_MAX;
            most_mm = can && tiny->sum_mm[set] > most_mm ? tiny->sum_mm[set] : most_mm;
        }
        for (int i = 0; i < plan->impossible_count; i++) {
            impossible_mm += rig->pieces[plan->impossible[i]].length_mm;
        }
        ck_assert_msg(plan->uncut_mm == tiny->sum_mm[everything] - impossible_mm - most_mm, "seed %d: uncut", seed);
        ck_assert_msg(plan->bought_mm == tiny->best[cut].bought_mm, "seed %d: bought", seed);
        ck_assert_msg(plan->drums == tiny->best[cut].drums, "seed %d: drums", seed);
        ck_assert_msg(plan->offcuts_used == tiny->best[cut].offcuts, "seed %d: offcuts", seed);
        arena_free(arena);
    }
    free(tiny);
    free(rig);
}
END_TEST

/* One sum of a tiny job by the tree, without quick plans and, if `alone`, without the linear programme: a filling left
 * out, or a bound set too high, then shows. -1 when there is no plan. */
static int64_t sum_by_tree(struct Arena *arena, const struct Rig *rig, bool alone, int64_t bought_most_mm)
{
    struct CuttingKinds kinds;
    struct CuttingPool pool = {.arena = arena};
    struct CuttingAnswer answer;
    ck_assert(cutting_kinds(arena, &rig->job, &kinds));
    struct CuttingCase problem = {.type_count = kinds.type_count,
                                  .length_mm = kinds.length_mm,
                                  .wanted = kinds.wanted,
                                  .pieces = kinds.pieces,
                                  .class_count = kinds.class_count,
                                  .classes = kinds.classes,
                                  .mm_in_unit = 1,
                                  .no_quick_plans = true,
                                  .no_programme = alone};
    for (int c = 0; c < kinds.class_count; c++) {
        kinds.classes[c].cost = kinds.classes[c].bought ? kinds.classes[c].length_mm : 0;
        if (bought_most_mm >= 0) {
            kinds.classes[c].side[0] = kinds.classes[c].cost;
            kinds.classes[c].cost = kinds.classes[c].bought ? 1 : 0;
        }
    }
    if (bought_most_mm >= 0) {
        problem.side_count = 1;
        problem.side_most[0] = bought_most_mm;
    }
    ck_assert(cutting_solve(arena, &problem, NULL, &pool, 1000000, &answer));
    ck_assert(!answer.solved || answer.bound == answer.cost);
    return answer.solved ? answer.cost : -1;
}

/* The most that a bin can be worth, against a table over every length. */
START_TEST(worth_of_a_bin)
{
    enum { CAPACITY = 60, TYPES = 5 };
    struct Chance chance = chance_start(_i);
    int length_mm[TYPES], wanted[TYPES];
    double worth[TYPES], most[CAPACITY + 1] = {0};
    struct CuttingItem items[TYPES];
    const struct CuttingCase problem = {.type_count = TYPES, .length_mm = length_mm, .wanted = wanted};
    for (int type = 0; type < TYPES; type++) {
        length_mm[type] = 40 - 7 * type - chance_between(&chance, 0, 6);
        wanted[type] = chance_between(&chance, 0, 4);
        worth[type] = length_mm[type] * (8 + chance_between(&chance, 0, 4)) / 100.0;
        for (int copy = 0; copy < wanted[type]; copy++) {
            for (int sum = CAPACITY; sum >= length_mm[type]; sum--) {
                most[sum] = fmax(most[sum], most[sum - length_mm[type]] + worth[type]);
            }
        }
    }
    struct CuttingKnapsack knapsack = {.items = items};
    cutting_knapsack_load(&knapsack, &problem, wanted, worth);
    for (int capacity = 1; capacity <= CAPACITY; capacity++) {
        bool found;
        const double bound = cutting_knapsack_most(&knapsack, capacity, 0, 100000, &found);
        double best = 0;
        ck_assert_double_eq_tol(bound, most[capacity], 1e-9);
        ck_assert_double_ge(bound, most[capacity]);
        ck_assert(found == (most[capacity] > 0));
        for (int i = 0; found && i < knapsack.count; i++) {
            ck_assert_int_le(items[i].best, wanted[items[i].type]);
            best += items[i].best * worth[items[i].type];
        }
        ck_assert_double_eq_tol(best, most[capacity], 1e-9);
        ck_assert_double_ge(cutting_knapsack_most(&knapsack, capacity, 0, 2, &found), most[capacity]); /* cut short */
    }
}
END_TEST

START_TEST(tiny_jobs_by_the_tree)
{
    struct Rig *rig = malloc(sizeof *rig);
    struct Tiny *tiny = malloc(sizeof *tiny);
    ck_assert(rig != NULL && tiny != NULL);
    int solved = 0;
    for (int seed = 0; seed < tiny_seeds(); seed++) {
        struct Arena *arena = arena_new();
        rig_chance(rig, &tiny_families[_i], seed);
        try_everything(tiny, rig);
        const struct Sums *best = &tiny->best[(1 << rig->job.piece_count) - 1];
        if (rig_plan(arena, rig)->impossible_count == 0) {
            const bool can = best->bought_mm < INT64_MAX;
            for (int alone = 0; alone <= 1; alone++) {
                ck_assert_msg(sum_by_tree(arena, rig, alone == 1, -1) == (can ? best->bought_mm : -1),
                              "seed %d: bought", seed);
                ck_assert_msg(!can || sum_by_tree(arena, rig, alone == 1, best->bought_mm) == best->drums,
                              "seed %d: drums", seed);
            }
            solved += can ? 1 : 0;
        }
        arena_free(arena);
    }
    ck_assert_int_gt(solved, sweep_depth(1, 5));
    free(tiny);
    free(rig);
}
END_TEST

void add_cutting_tiny(Suite *suite)
{
    TCase *tiny = tcase_create("tiny");
    tcase_set_timeout(tiny, 60);
    tcase_add_loop_test(tiny, tiny_jobs_against_every_possibility, 0, TINY_FAMILIES);
    tcase_add_loop_test(tiny, worth_of_a_bin, 0, 300);
    tcase_add_loop_test(tiny, tiny_jobs_by_the_tree, 0, TINY_FAMILIES);
    suite_add_tcase(suite, tiny);
}
