/* Cutting plans: published ones, small ones worked by hand, wrong jobs, short budgets and lack of memory. */
#include "cutting_suites.h"

#include "csv_file.h"
#include "cutting_rig.h"

/* One rig for a test; each test runs in a process of its own. */
static struct Rig *make_rig(void)
{
    struct Rig *rig = malloc(sizeof *rig);
    ck_assert_ptr_nonnull(rig);
    rig_clear(rig);
    return rig;
}

/* Orders of one length of bar; the sources stand in the file, row by row: "Linear Programming", 1983, chapter 13 (453
 * raws of 100 in); a modelling-language textbook, 2001 (47 of 110 in); a mathematics forum, 2009 (7 bars of 10 ft, 13
 * ft of scrap). Inches and feet are whole numbers here, and the planner's unit is any whole one. */
START_TEST(published_orders)
{
    static const char *const names[] = {"raws-100", "raws-110", "nineteen"};
    struct CsvFile file = csv_open("cases/cutting-bars.csv");
    struct Rig *rig = make_rig();
    const int name_at = csv_column(&file, "case");
    int bars = 0, scrap = 0, bar = 0;
    for (int row = 0; row < file.rows; row++) {
        if (text_same(csv_text(&file, row, name_at), names[_i])) {
            rig_piece(rig, (int)csv_number(&file, row, csv_column(&file, "piece")),
                      (int)csv_number(&file, row, csv_column(&file, "pieces")));
            bar = (int)csv_number(&file, row, csv_column(&file, "bar"));
            bars = (int)csv_number(&file, row, csv_column(&file, "expected_bars"));
            scrap = (int)csv_number(&file, row, csv_column(&file, "expected_scrap"));
        }
    }
    ck_assert_int_gt(rig->job.piece_count, 0);
    rig_stock(rig, bar, CUTTING_UNLIMITED);
    struct Arena *arena = arena_new();
    const struct CuttingPlan *plan = rig_plan(arena, rig);
    ck_assert(plan->proved);
    ck_assert_int_eq(plan->drums, bars);
    ck_assert_int_eq(plan->bound_mm, (int64_t)bars * bar);
    ck_assert_int_eq(plan->bought_mm, (int64_t)bars * bar);
    ck_assert_int_eq(plan->waste_mm, scrap);
    arena_free(arena);
    free(rig);
    csv_close(&file);
}
END_TEST

START_TEST(nothing_wanted_buys_nothing)
{
    struct Rig *rig = make_rig();
    struct Arena *arena = arena_new();
    const struct CuttingPlan *plan = rig_plan(arena, rig);
    ck_assert(plan->proved && plan->price_known);
    ck_assert_int_eq(plan->opened_count, 0);
    rig_stock(rig, 50000, CUTTING_UNLIMITED);
    ck_assert_int_eq(rig_plan(arena, rig)->bought_mm, 0);
    arena_free(arena);
    free(rig);
}
END_TEST

/* 62 m cannot come from 50 m drums, and is never jointed; without the 100 m drum it is impossible, with it is cut. */
START_TEST(a_piece_longer_than_all_stock_is_impossible)
{
    struct Rig *rig = make_rig();
    rig_piece(rig, 20000, 1);
    rig_piece(rig, 62000, 1);
    rig_stock(rig, 50000, CUTTING_UNLIMITED);
    rig_stock(rig, 100000, 0); /* none to be had */
    struct Arena *arena = arena_new();
    const struct CuttingPlan *plan = rig_plan(arena, rig);
    ck_assert(plan->proved);
    ck_assert_int_eq(plan->impossible_count, 1);
    ck_assert_int_eq(plan->impossible[0], 1);
    ck_assert_int_eq(plan->bought_mm, 50000);
    rig->stock[1].available = 1;
    plan = rig_plan(arena, rig);
    ck_assert_int_eq(plan->impossible_count, 0);
    ck_assert_int_eq(plan->bought_mm, 100000); /* 62 + 20 of one 100 m drum, not 100 and 50 */
    ck_assert_int_eq(plan->drums, 1);
    arena_free(arena);
    free(rig);
}
END_TEST

/* 70 m can be bought as 50 + 25 (75) or as one drum of 75: as long, one drum fewer. */
START_TEST(of_equal_length_the_fewest_drums)
{
    struct Rig *rig = make_rig();
    rig_piece(rig, 45000, 1);
    rig_piece(rig, 25000, 1);
    rig_stock(rig, 25000, CUTTING_UNLIMITED);
    rig_stock(rig, 50000, CUTTING_UNLIMITED);
    struct Arena *arena = arena_new();
    ck_assert_int_eq(rig_plan(arena, rig)->drums, 2);
    rig_stock(rig, 75000, CUTTING_UNLIMITED);
    const struct CuttingPlan *plan = rig_plan(arena, rig);
    ck_assert(plan->proved);
    ck_assert_int_eq(plan->bought_mm, 75000);
    ck_assert_int_eq(plan->drums, 1);
    arena_free(arena);
    free(rig);
}
END_TEST

/* 30 + 20 + 12 m from 50 m drums: two drums, or one and the offcut of 12.5 m. Three offcuts of 10 m help nothing, and
 * are left alone; 8 m more fill the drum's end and cost nothing. */
START_TEST(offcuts_are_used_where_they_save_and_only_there)
{
    struct Rig *rig = make_rig();
    rig_piece(rig, 30000, 1);
    rig_piece(rig, 20000, 1);
    rig_piece(rig, 12000, 1);
    rig_stock(rig, 50000, CUTTING_UNLIMITED);
    for (int i = 0; i < 3; i++) {
        rig_offcut(rig, 10000);
    }
    struct Arena *arena = arena_new();
    const struct CuttingPlan *plan = rig_plan(arena, rig);
    ck_assert_int_eq(plan->bought_mm, 100000);
    ck_assert_int_eq(plan->offcuts_used, 0);
    rig_offcut(rig, 12500);
    plan = rig_plan(arena, rig);
    ck_assert(plan->proved);
    ck_assert_int_eq(plan->bought_mm, 50000);
    ck_assert_int_eq(plan->waste_mm, 0); /* the 0.5 m left of the offcut is no bought waste */
    ck_assert_int_eq(plan->offcuts_used, 1);
    arena_free(arena);
    free(rig);
}
END_TEST

/* 130 m are wanted and two drums of 50 m to be had: 30 + 20 and 25 + 25 fill both, so that the other 30 m stay uncut
 * and no plan leaves less. Longest first would cut 30 + 20, 30 and leave 25 + 25 of which neither fits beside 30. */
START_TEST(limited_stock_leaves_the_least_uncut)
{
    struct Rig *rig = make_rig();
    rig_piece(rig, 30000, 2);
    rig_piece(rig, 25000, 2);
    rig_piece(rig, 20000, 1);
    rig_stock(rig, 50000, 2);
    struct Arena *arena = arena_new();
    const struct CuttingPlan *plan = rig_plan(arena, rig);
    ck_assert(plan->proved);
    ck_assert_int_eq(plan->uncut_mm, 30000); /* 30 + 20 and 25 + 25 fill both drums */
    ck_assert_int_eq(plan->uncut_count, 1);
    ck_assert_int_eq(plan->bought_mm, 100000);
    rig->stock[0].available = 3;
    ck_assert_int_eq(rig_plan(arena, rig)->uncut_count, 0);
    arena_free(arena);
    free(rig);
}
END_TEST

/* Of two stocks of one length the cheaper goes first; a price that is not known makes the sum unknown. */
START_TEST(prices_choose_among_equal_lengths_only)
{
    struct Rig *rig = make_rig();
    rig_piece(rig, 40000, 3);
    rig_stock(rig, 50000, CUTTING_UNLIMITED);
    rig_stock(rig, 50000, 2);
    rig->stock[0].price = 9000;
    rig->stock[1].price = 8000;
    struct Arena *arena = arena_new();
    const struct CuttingPlan *plan = rig_plan(arena, rig);
    ck_assert_int_eq(plan->buy[0], 1);
    ck_assert_int_eq(plan->buy[1], 2);
    ck_assert(plan->price_known);
    ck_assert_int_eq(plan->price, 25000);
    rig->stock[0].price = CUTTING_PRICE_UNKNOWN;
    plan = rig_plan(arena, rig);
    ck_assert_int_eq(plan->buy[1], 2);
    ck_assert(!plan->price_known);
    ck_assert_int_eq(plan->price, 0);
    arena_free(arena);
    free(rig);
}
END_TEST

/* A greedy cut fails here: 6 + 4, 6 + 4, 5 + 5 fill three lengths of 10, while 6, 6, 5 + 4, 5 + 4 takes four. The plan
 * lists like bins together, longest piece first. */
START_TEST(the_plan_is_in_order)
{
    struct Rig *rig = make_rig();
    rig_piece(rig, 4, 2);
    rig_piece(rig, 5, 2);
    rig_piece(rig, 6, 2);
    rig_stock(rig, 10, CUTTING_UNLIMITED);
    struct Arena *arena = arena_new();
    const struct CuttingPlan *plan = rig_plan(arena, rig);
    ck_assert_int_eq(plan->drums, 3);
    static const int expected[3][2] = {{4, 0}, {5, 1}, {2, 3}};
    for (int o = 0; o < 3; o++) {
        ck_assert_int_eq(plan->opened[o].piece_count, 2);
        ck_assert_int_eq(plan->opened[o].pieces[0], expected[o][0]);
        ck_assert_int_eq(plan->opened[o].pieces[1], expected[o][1]);
    }
    arena_free(arena);
    free(rig);
}
END_TEST

/* Without steps for a search the plan stands, says that it is not proved, and its bounds hold. */
START_TEST(a_short_budget_is_said)
{
    static const struct RigFamily family = {40, 40, 20, 70, 1, 0, 3, {100, 131, 157}, 0, false, 4};
    struct Rig *rig = make_rig();
    int unproved = 0;
    for (int seed = 0; seed < 30; seed++) {
        struct Arena *arena = arena_new();
        rig_chance(rig, &family, seed);
        const struct CuttingPlan *best = rig_plan(arena, rig);
        ck_assert(best->proved);
        for (int steps = 1; steps <= 64; steps *= 8) {
            rig->job.most_steps = steps;
            const struct CuttingPlan *plan = rig_plan(arena, rig);
            unproved += plan->proved ? 0 : 1;
            ck_assert_int_le(plan->bound_mm, best->bought_mm);
            ck_assert_int_ge(plan->bought_mm, best->bought_mm);
            ck_assert(!plan->proved || plan->bought_mm == best->bought_mm);
            ck_assert(plan->drums >= best->drums || plan->bought_mm > best->bought_mm);
        }
        arena_free(arena);
    }
    ck_assert_int_gt(unproved, 20);
    free(rig);
}
END_TEST

/* More different lengths than the search takes on: quick rules give a plan, and bounds that hold. No three pieces fit a
 * bar (3 x 2001 > 6001), so that 550 bars are the fewest; by length alone 2805550 / 6001 gives 468. */
START_TEST(too_many_lengths_get_a_quick_plan)
{
    struct Rig *rig = make_rig();
    for (int i = 0; i < 1100; i++) {
        rig_piece(rig, 2001 + i, 1);
    }
    rig_stock(rig, 6001, CUTTING_UNLIMITED);
    struct Arena *arena = arena_new();
    const struct CuttingPlan *plan = rig_plan(arena, rig);
    ck_assert_int_eq(plan->drums, 550);
    ck_assert_int_ge(plan->bound_mm, 468 * 6001);
    ck_assert(!plan->proved);
    ck_assert_int_eq(plan->uncut_count, 0);
    arena_free(arena);
    free(rig);
}
END_TEST

struct WrongJob {
    enum CuttingFault fault;
    int index;
    void (*spoil)(struct Rig *rig);
};
static void spoil_count(struct Rig *rig)
{
    rig->job.piece_count = CUTTING_PIECES_MOST + 1;
}
static void spoil_offcut_count(struct Rig *rig)
{
    rig->job.offcut_count = -1;
}
static void spoil_piece(struct Rig *rig)
{
    rig->pieces[2].length_mm = 0;
}
static void spoil_stock(struct Rig *rig)
{
    rig->stock[1].length_mm = CUTTING_LENGTH_MOST_MM + 1;
}
static void spoil_available(struct Rig *rig)
{
    rig->stock[1].available = -2;
}
static void spoil_price(struct Rig *rig)
{
    rig->stock[0].price = -5;
}
static void spoil_offcut(struct Rig *rig)
{
    rig->offcuts[0].length_mm = -1;
}
static void spoil_steps(struct Rig *rig)
{
    rig->job.most_steps = -1;
}
static const struct WrongJob wrong_jobs[] = {
    {CUTTING_TOO_MANY, 0, spoil_count},        {CUTTING_TOO_MANY, 0, spoil_offcut_count},
    {CUTTING_PIECE_LENGTH, 2, spoil_piece},    {CUTTING_STOCK_LENGTH, 1, spoil_stock},
    {CUTTING_STOCK_COUNT, 1, spoil_available}, {CUTTING_STOCK_COUNT, 0, spoil_price},
    {CUTTING_OFFCUT_LENGTH, 0, spoil_offcut},  {CUTTING_NEGATIVE_STEPS, 0, spoil_steps},
};

static void sound_job(struct Rig *rig)
{
    rig_clear(rig);
    rig_piece(rig, 30, 3);
    rig_piece(rig, 23, 3);
    rig_stock(rig, 70, 2);
    rig_stock(rig, 60, 1);
    rig_offcut(rig, 25);
}

START_TEST(wrong_jobs_are_named)
{
    struct Rig *rig = make_rig();
    struct Arena *arena = arena_new();
    sound_job(rig);
    rig_plan(arena, rig);
    wrong_jobs[_i].spoil(rig);
    const struct CuttingPlan *plan = cutting_plan(arena, &rig->job);
    ck_assert_ptr_nonnull(plan);
    ck_assert_int_eq(plan->fault, wrong_jobs[_i].fault);
    ck_assert_int_eq(plan->fault_index, wrong_jobs[_i].index);
    ck_assert_int_eq(plan->opened_count, 0);
    ck_assert(!plan->proved);
    arena_free(arena);
    free(rig);
}
END_TEST

/* Memory that fails at any point gives NULL, and enough of it gives a plan. */
START_TEST(failing_memory_gives_no_plan)
{
    struct Rig *rig = make_rig();
    static const struct RigFamily family = {40, 40, 20, 70, 1, 0, 2, {100, 131}, 1, true, 3};
    rig_chance(rig, &family, 4);
    bool planned = false;
    int failed = 0;
    for (long blocks = 0; blocks < 2000 && !planned; blocks++) {
        struct Arena *arena = arena_new();
        ck_assert_ptr_nonnull(arena);
        arena_fail_after(arena, blocks);
        const struct CuttingPlan *plan = cutting_plan(arena, &rig->job);
        planned = plan != NULL;
        failed += planned ? 0 : 1;
        ck_assert(planned != arena_failed(arena));
        arena_free(arena);
    }
    ck_assert(planned && failed > 0);
    free(rig);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("cutting");
    TCase *known = tcase_create("known");
    tcase_add_loop_test(known, published_orders, 0, 3);
    tcase_add_test(known, nothing_wanted_buys_nothing);
    tcase_add_test(known, a_piece_longer_than_all_stock_is_impossible);
    tcase_add_test(known, of_equal_length_the_fewest_drums);
    tcase_add_test(known, offcuts_are_used_where_they_save_and_only_there);
    tcase_add_test(known, limited_stock_leaves_the_least_uncut);
    tcase_add_test(known, prices_choose_among_equal_lengths_only);
    tcase_add_test(known, the_plan_is_in_order);
    suite_add_tcase(suite, known);
    TCase *hard = tcase_create("faults and budgets");
    tcase_set_timeout(hard, 30);
    tcase_add_test(hard, a_short_budget_is_said);
    tcase_add_test(hard, too_many_lengths_get_a_quick_plan);
    tcase_add_loop_test(hard, wrong_jobs_are_named, 0, (int)(sizeof wrong_jobs / sizeof wrong_jobs[0]));
    tcase_add_test(hard, failing_memory_gives_no_plan);
    suite_add_tcase(suite, hard);
    add_cutting_tiny(suite);
    add_cutting_chance(suite);
    return run_suite(suite);
}
