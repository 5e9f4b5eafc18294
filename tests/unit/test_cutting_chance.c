/* Cutting plans for jobs by chance: against every possibility tried where jobs are tiny, and properties that hold for
 * any job where they are not. */
#include "cutting_suites.h"

#include "cutting_rig.h"
#include "sweep_depth.h"

#include <stdlib.h>

/* What jobs bring: hundreds of pieces, a handful of stock lengths, lengths that come again, some offcuts. */
static const struct RigFamily job_families[] = {
    {100, 200, 3000, 45000, 500, 0, 2, {50000, 100000}, 0, false, 10},
    {100, 300, 5000, 90000, 1000, 20, 3, {50000, 100000, 500000}, 12, false, 6},
    {60, 120, 1000, 6000, 50, 0, 3, {6000, 7300, 9100}, 20, false, 5},
    {200, 400, 500, 3000, 100, 0, 2, {3000, 6000}, 0, false, 10},
    {40, 80, 700, 5800, 1, 15, 2, {5800, 6400}, 0, false, 4},
};
enum { JOB_FAMILIES = (int)(sizeof job_families / sizeof job_families[0]) };

static int job_seeds(void)
{
    return sweep_depth(1, 4);
}

static void same_sums(const struct CuttingPlan *a, const struct CuttingPlan *b)
{
    ck_assert_int_eq(a->uncut_mm, b->uncut_mm);
    ck_assert_int_eq(a->bought_mm, b->bought_mm);
    ck_assert_int_eq(a->waste_mm, b->waste_mm);
    ck_assert_int_eq(a->drums, b->drums);
    ck_assert_int_eq(a->offcuts_used, b->offcuts_used);
    ck_assert_int_eq(a->proved, b->proved);
    ck_assert_int_eq(a->bound_mm, b->bound_mm);
}

START_TEST(jobs_are_proved_and_their_order_says_nothing)
{
    struct Rig *rig = malloc(sizeof *rig), *shuffled = malloc(sizeof *rig);
    ck_assert(rig != NULL && shuffled != NULL);
    for (int seed = 0; seed < job_seeds(); seed++) {
        struct Arena *arena = arena_new();
        rig_chance(rig, &job_families[_i], seed);
        const struct CuttingPlan *plan = rig_plan(arena, rig);
        ck_assert_msg(plan->proved, "family %d seed %d is not proved", _i, seed);
        rig_copy(shuffled, rig);
        struct Chance chance = chance_start(seed + 1000);
        for (int i = rig->job.piece_count - 1; i > 0; i--) {
            const int other = chance_between(&chance, 0, i);
            const struct CuttingPiece kept = shuffled->pieces[i];
            shuffled->pieces[i] = shuffled->pieces[other];
            shuffled->pieces[other] = kept;
        }
        for (int i = 0; i < rig->job.stock_count; i++) {
            shuffled->stock[i] = rig->stock[rig->job.stock_count - 1 - i];
        }
        for (int i = 0; i < rig->job.offcut_count; i++) {
            shuffled->offcuts[i] = rig->offcuts[rig->job.offcut_count - 1 - i];
        }
        same_sums(plan, rig_plan(arena, shuffled));
        arena_free(arena);
    }
    free(shuffled);
    free(rig);
}
END_TEST

START_TEST(one_more_piece_never_buys_less)
{
    struct Rig *rig = malloc(sizeof *rig);
    ck_assert_ptr_nonnull(rig);
    for (int seed = 0; seed < job_seeds(); seed++) {
        rig_chance(rig, &job_families[_i], seed + 50);
        const int all = rig->job.piece_count;
        int64_t before_mm = 0;
        for (rig->job.piece_count = all - 6; rig->job.piece_count <= all; rig->job.piece_count++) {
            struct Arena *arena = arena_new();
            const struct CuttingPlan *plan = rig_plan(arena, rig);
            ck_assert(plan->proved && plan->uncut_count == 0);
            ck_assert_int_ge(plan->bought_mm, before_mm);
            before_mm = plan->bought_mm;
            arena_free(arena);
        }
    }
    free(rig);
}
END_TEST

/* One more offcut, or one more length to be had, never makes a job dearer. */
START_TEST(more_to_cut_from_never_buys_more)
{
    struct Rig *rig = malloc(sizeof *rig);
    ck_assert_ptr_nonnull(rig);
    for (int seed = 0; seed < job_seeds(); seed++) {
        struct Arena *arena = arena_new();
        rig_chance(rig, &job_families[_i], seed + 90);
        const struct CuttingPlan *plan = rig_plan(arena, rig);
        rig_offcut(rig, rig->pieces[0].length_mm);
        const struct CuttingPlan *with_offcut = rig_plan(arena, rig);
        ck_assert(plan->proved && with_offcut->proved);
        ck_assert_int_le(with_offcut->bought_mm, plan->bought_mm);
        rig_stock(rig, 3 * rig->stock[0].length_mm / 5, CUTTING_UNLIMITED);
        const struct CuttingPlan *with_stock = rig_plan(arena, rig);
        ck_assert_int_le(with_stock->bound_mm, with_offcut->bought_mm);
        ck_assert(!with_stock->proved || with_stock->bought_mm <= with_offcut->bought_mm);
        arena_free(arena);
    }
    free(rig);
}
END_TEST

/* Bars cut into pieces by chance, so that a plan without any waste is known to exist, and often no other: nothing but a
 * whole search finds it. As many bars as were cut are to be had, or no end of them. */
START_TEST(bars_cut_up_are_put_together_again)
{
    struct Rig *rig = malloc(sizeof *rig);
    ck_assert_ptr_nonnull(rig);
    static const int bars_mm[] = {1000, 1310, 1570};
    for (int seed = 0; seed < 40; seed++) {
        struct Chance chance = chance_start(seed + 100 * _i);
        int number[3] = {0};
        int64_t sum_mm = 0;
        rig_clear(rig);
        for (int bar = 0; bar < 2 + _i; bar++) {
            const int kind = chance_between(&chance, 0, 2);
            int left_mm = bars_mm[kind];
            sum_mm += left_mm;
            number[kind]++;
            while (left_mm > 500) {
                const int length_mm = chance_between(&chance, 120, 480);
                rig_piece(rig, length_mm, 1);
                left_mm -= length_mm;
            }
            rig_piece(rig, left_mm, 1);
        }
        for (int kind = 0; kind < 3; kind++) {
            rig_stock(rig, bars_mm[kind], seed % 2 == 0 ? number[kind] : CUTTING_UNLIMITED);
        }
        struct Arena *arena = arena_new();
        const struct CuttingPlan *plan = rig_plan(arena, rig);
        ck_assert_msg(plan->proved, "%d bars, seed %d: not proved", 2 + _i, seed);
        ck_assert_msg(plan->uncut_count == 0, "%d bars, seed %d: a piece is uncut", 2 + _i, seed);
        ck_assert_int_eq(plan->bought_mm, sum_mm);
        ck_assert_int_eq(plan->waste_mm, 0);
        arena_free(arena);
    }
    free(rig);
}
END_TEST

void add_cutting_chance(Suite *suite)
{
    TCase *chance = tcase_create("by chance");
    tcase_set_timeout(chance, 60);
    tcase_add_loop_test(chance, bars_cut_up_are_put_together_again, 0, 7);
    tcase_add_loop_test(chance, jobs_are_proved_and_their_order_says_nothing, 0, JOB_FAMILIES);
    tcase_add_loop_test(chance, one_more_piece_never_buys_less, 0, JOB_FAMILIES);
    tcase_add_loop_test(chance, more_to_cut_from_never_buys_more, 0, JOB_FAMILIES);
    suite_add_tcase(suite, chance);
}
