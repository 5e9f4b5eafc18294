/* Merging: what becomes one line, what stays apart, and that nothing is lost or bought in vain. */
#include "order_rig.h"
#include "said.h"

#include <math.h>
#include <string.h>

enum { ROUNDS = 20, SEEDS_A_ROUND = 25 }; /* a round a process */

static const struct OrderList *merged(struct Arena *arena, const struct OrderJob *jobs, int count)
{
    const struct OrderList *list = order_merge(arena, jobs, count, NULL);
    ck_assert_ptr_nonnull(list);
    return list;
}

/* Twelve for one job and forty for another, in packs of 25: 52 are three packs, apart they would be 1 + 2. */
START_TEST(packs_are_rounded_once)
{
    struct Arena *arena = arena_new();
    struct Part a = order_part(arena, AISLE_FIXINGS, "clip", "Clip", 12);
    a.pack = 25;
    a.packs = 1;
    a.pack_word = "bag";
    struct Part b = a;
    b.quantity = 40;
    b.packs = 2;
    const struct OrderJob jobs[] = {order_job(arena, "barn", &a, 1), order_job(arena, "shed", &b, 1)};
    const struct OrderList *list = merged(arena, jobs, 2);
    ck_assert_int_eq(list->count, 1);
    ck_assert_int_eq(list->lines[0].packs, 3);
    ck_assert_int_eq(list->lines[0].packs_apart, 3);
    ck_assert_double_eq(list->lines[0].buy, 75);
    ck_assert_double_eq(list->lines[0].over, 23);
    ck_assert_double_eq(list->lines[0].by_job[0], 12);
    ck_assert_double_eq(list->lines[0].by_job[1], 40);
    ck_assert_str_eq(list->lines[0].unit_code, "XBG");
    ck_assert_double_eq(list->lines[0].unit_quantity, 3);
    b.quantity = 13; /* 25 together: one bag, apart two */
    b.packs = 1;
    list = merged(arena, jobs, 2);
    ck_assert_int_eq(list->lines[0].packs, 1);
    ck_assert_int_eq(list->lines[0].packs_apart, 2);
    ck_assert_double_eq(list->lines[0].over, 0);
    arena_free(arena);
}
END_TEST

/* Equal codes with anything else different are different things to the counter. */
START_TEST(only_like_things_are_one_line)
{
    struct Arena *arena = arena_new();
    struct Part parts[8];
    for (int i = 0; i < 8; i++) {
        parts[i] = order_part(arena, AISLE_FIXINGS, "fixing-feeder", "Clip", 10);
    }
    parts[1].description = as_is(arena, "Another clip");
    parts[2].standard = "BS 1";
    parts[3].unit = "m";
    parts[4].pack = 25;
    parts[5].pack_word = "bag";
    parts[6].code = "fixing-other";
    parts[7].aisle = AISLE_SUNDRIES;
    struct OrderJob jobs[8];
    for (int i = 0; i < 8; i++) {
        jobs[i] = order_job(arena, "x", &parts[i], 1);
    }
    ck_assert_int_eq(merged(arena, jobs, 8)->count, 8);
    for (int i = 1; i < 8; i++) {
        parts[i] = parts[0];
    }
    const struct OrderList *list = merged(arena, jobs, 8);
    ck_assert_int_eq(list->count, 1);
    ck_assert_double_eq(list->lines[0].quantity, 80);
    arena_free(arena);
}
END_TEST

/* 67 m and 41 m of one cable: one article, two lengths, and both runs have the same name. */
START_TEST(lengths_stay_lengths)
{
    struct Arena *arena = arena_new();
    struct Part barn = order_part(arena, AISLE_CABLE, "cable-BS5467-3x10-feeder", "3-core 10 mm2", 67);
    barn.article = "cable-BS5467-3x10";
    barn.unit = "m";
    barn.length_m = 67;
    struct Part shed = barn;
    shed.quantity = shed.needed = shed.length_m = 41;
    shed.code = "cable-BS5467-3x10-supply";
    shed.uses = order_use(arena, "supply");
    const struct OrderJob jobs[] = {order_job(arena, "barn", &barn, 1), order_job(arena, "shed", &shed, 1)};
    const struct OrderList *list = merged(arena, jobs, 2);
    ck_assert_int_eq(list->count, 1);
    const struct OrderLine *line = &list->lines[0];
    ck_assert_str_eq(line->code, "cable-BS5467-3x10");
    ck_assert_str_eq(said(arena, line->cut),
                     "cut 67 m (barn: feeder), 41 m (shed: supply), each one length without a joint");
    ck_assert_int_eq(line->piece_count, 2);
    ck_assert_double_eq(line->pieces[0].length_m, 67);
    ck_assert_int_eq(line->pieces[1].job, 1);
    ck_assert_double_eq(line->buy, 108);
    ck_assert_str_eq(line->unit_code, "MTR");
    /* in coils of 50 m a sum of 108 m would be 3 coils, but 67 m comes out of none: what is bought apart stands */
    barn.pack = shed.pack = 50;
    barn.pack_word = shed.pack_word = "coil";
    barn.packs = 2;
    shed.packs = 1;
    list = merged(arena, jobs, 2);
    ck_assert_int_eq(list->lines[0].packs, 3);
    arena_free(arena);
}
END_TEST

START_TEST(jobs_of_one_name_are_told_apart)
{
    struct Arena *arena = arena_new();
    const struct Part part = order_part(arena, AISLE_FIXINGS, "clip", "Clip", 10);
    const struct OrderJob jobs[] = {order_job(arena, "shed", &part, 1), order_job(arena, "shed", &part, 1),
                                    order_job(arena, "shed (2)", &part, 1), order_job(arena, "shed", &part, 1)};
    const struct OrderList *list = merged(arena, jobs, 4);
    static const char *const names[] = {"shed", "shed (2)", "shed (2) (2)", "shed (3)"};
    for (int i = 0; i < 4; i++) {
        ck_assert_str_eq(list->jobs[i].name, names[i]);
    }
    arena_free(arena);
}
END_TEST

START_TEST(remarks_stand_once)
{
    struct Arena *arena = arena_new();
    struct Part parts[3];
    struct OrderJob jobs[3];
    for (int i = 0; i < 3; i++) {
        parts[i] = order_part(arena, AISLE_FIXINGS, "clip", "Clip", 10);
        parts[i].note = as_is(arena, i == 1 ? "size from the maker's sheet" : "metal");
        jobs[i] = order_job(arena, i == 0 ? "a" : i == 1 ? "b" : "c", &parts[i], 1);
    }
    const struct OrderList *list = merged(arena, jobs, 3);
    ck_assert_str_eq(said(arena, list->lines[0].note), "a, c: metal; b: size from the maker's sheet");
    ck_assert_int_eq(list->note_count, 2);
    ck_assert_str_eq(said(arena, merged(arena, jobs, 1)->lines[0].note), "metal");
    jobs[1].pass = false;
    jobs[1].verdict = VERDICT_FAIL;
    ck_assert(!merged(arena, jobs, 3)->pass);
    ck_assert(merged(arena, jobs, 1)->pass);
    arena_free(arena);
}
END_TEST

/* A list given in packs already: packs are added, whatever is in them. */
START_TEST(lists_in_packs_and_unknown_units)
{
    struct Arena *arena = arena_new();
    struct Part parts[2] = {order_part(arena, AISLE_LABELS, "label", "Labels", 2),
                            order_part(arena, AISLE_SUNDRIES, "oil", "Oil", 3)};
    parts[0].unit = "pack";
    parts[0].needed = 15;
    parts[0].pack = 10;
    parts[0].packs = 2;
    parts[1].unit = "drop";
    const struct OrderJob jobs[] = {order_job(arena, "a", parts, 2), order_job(arena, "b", parts, 2)};
    const struct OrderList *list = merged(arena, jobs, 2);
    ck_assert_double_eq(list->lines[0].buy, 4);
    ck_assert_int_eq(list->lines[0].packs, 4);
    ck_assert_str_eq(list->lines[0].unit_code, "XPK");
    ck_assert_double_eq(list->lines[0].unit_quantity, 4);
    ck_assert_str_eq(list->lines[1].unit_code, "");
    ck_assert_double_eq(list->lines[1].unit_quantity, 6);
    arena_free(arena);
}
END_TEST

static double sum_of(const struct OrderLine *line, int jobs)
{
    double sum = 0;
    for (int j = 0; j < jobs; j++) {
        sum += line->by_job[j];
    }
    return sum;
}

/* Everything that must hold of one line, whatever was merged. */
static void check_line(const struct OrderLine *line, int jobs, unsigned seed)
{
    ck_assert_msg(fabs(sum_of(line, jobs) - line->quantity) < 1e-9, "seed %u: the split is not the sum", seed);
    ck_assert_msg(fabs(line->quantity + line->over - line->buy) < 1e-9, "seed %u: something is lost", seed);
    ck_assert_msg(line->packs <= line->packs_apart, "seed %u: %s takes more packs", seed, line->code);
    ck_assert_msg(line->pack == 0 || line->piece_count > 0 || line->over < line->pack, "seed %u: a pack in vain", seed);
    ck_assert_msg((line->pack > 0) == (line->packs > 0), "seed %u: packs of %s", seed, line->code);
    ck_assert_msg(order_code_known(line->unit_code), "seed %u: no such code: %s", seed, line->unit_code);
    ck_assert_msg(fabs(line->unit_quantity - (line->by_package ? (double)line->packs : line->buy)) < 1e-9,
                  "seed %u: quantity by code", seed);
    double cut = 0;
    for (int i = 0; i < line->piece_count; i++) {
        cut += line->pieces[i].length_m;
    }
    ck_assert_msg(line->piece_count == 0 || fabs(cut - line->quantity) < 1e-9, "seed %u: lengths are lost", seed);
}

static void check_nothing_is_lost_nor_bought_in_vain(unsigned seed)
{
    struct Arena *arena = arena_new();
    const int count = 1 + (int)seed % 7;
    const struct OrderJob *jobs = order_random_jobs(arena, count, seed);
    const struct OrderList *list = merged(arena, jobs, count);
    double parts = 0, lines = 0, needed = 0, needed_lines = 0;
    long apart = 0, apart_lines = 0;
    for (int j = 0; j < count; j++) {
        double of_job = 0, of_lines = 0;
        for (int i = 0; i < jobs[j].parts->count; i++) {
            of_job += jobs[j].parts->parts[i].quantity;
            needed += jobs[j].parts->parts[i].needed;
            apart += jobs[j].parts->parts[i].packs;
        }
        for (int i = 0; i < list->count; i++) {
            of_lines += list->lines[i].by_job[j];
        }
        ck_assert_msg(fabs(of_job - of_lines) < 1e-6, "seed %u: job %d has lost something", seed, j);
        parts += of_job;
    }
    for (int i = 0; i < list->count; i++) {
        check_line(&list->lines[i], count, seed);
        lines += list->lines[i].quantity;
        needed_lines += list->lines[i].needed;
        apart_lines += list->lines[i].packs_apart;
        ck_assert(i == 0 || list->lines[i - 1].aisle <= list->lines[i].aisle);
    }
    ck_assert(fabs(parts - lines) < 1e-6 && fabs(needed - needed_lines) < 1e-6);
    ck_assert_int_eq(apart, apart_lines);
    arena_free(arena);
}

START_TEST(nothing_is_lost_nor_bought_in_vain)
{
    for (int i = 0; i < SEEDS_A_ROUND; i++) {
        check_nothing_is_lost_nor_bought_in_vain((unsigned)(_i * SEEDS_A_ROUND + i));
    }
}
END_TEST

/* Whole orders merged: never more packs than two orders, and the order of the jobs changes no number. */
static void check_orders_merge_like_jobs(unsigned seed)
{
    struct Arena *arena = arena_new();
    struct OrderJob *jobs = order_random_jobs(arena, 6, seed + 5000U);
    const struct OrderList *all = merged(arena, jobs, 6), *left = merged(arena, jobs, 3),
                           *right = merged(arena, jobs + 3, 3);
    long packs = 0, apart = 0;
    double bought = 0, bought_apart = 0;
    for (int i = 0; i < all->count; i++) {
        packs += all->lines[i].packs;
        bought += all->lines[i].buy;
    }
    for (int i = 0; i < left->count; i++) {
        apart += left->lines[i].packs;
        bought_apart += left->lines[i].buy;
    }
    for (int i = 0; i < right->count; i++) {
        apart += right->lines[i].packs;
        bought_apart += right->lines[i].buy;
    }
    ck_assert_int_le(packs, apart);
    ck_assert(bought <= bought_apart + 1e-9);
    const struct OrderJob first = jobs[0];
    jobs[0] = jobs[5];
    jobs[5] = first;
    const struct OrderList *turned = merged(arena, jobs, 6);
    ck_assert_int_eq(turned->count, all->count);
    for (int i = 0; i < all->count; i++) {
        const struct OrderLine *line = &all->lines[i];
        int at = 0;
        while (at < turned->count && (!text_same(turned->lines[at].code, line->code) ||
                                      !say_same(turned->lines[at].description, line->description))) {
            at++;
        }
        ck_assert_int_lt(at, turned->count);
        ck_assert(fabs(turned->lines[at].buy - line->buy) < 1e-9);
        ck_assert_int_eq(turned->lines[at].packs, line->packs);
        ck_assert(fabs(turned->lines[at].by_job[0] - line->by_job[5]) < 1e-9);
    }
    arena_free(arena);
}

START_TEST(orders_merge_like_jobs)
{
    for (int i = 0; i < SEEDS_A_ROUND; i++) {
        check_orders_merge_like_jobs((unsigned)(_i * SEEDS_A_ROUND + i));
    }
}
END_TEST

/* Memory that ends after each number of bytes: no list, or the whole of it. */
START_TEST(memory_runs_out)
{
    struct Arena *made = arena_new();
    const struct OrderJob *jobs = order_random_jobs(made, 4, 77);
    const struct OrderList *whole = merged(made, jobs, 4);
    int failed = 0, done = 0;
    for (size_t used_up = ORDER_USED_UP_LEAST; used_up < ORDER_USED_UP_MOST; used_up += 16) {
        struct Arena *arena = order_arena_short(used_up, 0);
        const struct OrderList *list = order_merge(arena, jobs, 4, NULL);
        done += list != NULL;
        failed += list == NULL;
        ck_assert((list != NULL) != arena_failed(arena));
        ck_assert(list == NULL || list->count == whole->count);
        arena_free(arena);
    }
    ck_assert_int_gt(failed, 100);
    ck_assert_int_gt(done, 100);
    arena_free(made);
}
END_TEST

Suite *suite_order_merge(void)
{
    Suite *suite = suite_create("order: merging");
    TCase *tests = tcase_create("merging");
    tcase_set_timeout(tests, 120);
    tcase_add_test(tests, packs_are_rounded_once);
    tcase_add_test(tests, only_like_things_are_one_line);
    tcase_add_test(tests, lengths_stay_lengths);
    tcase_add_test(tests, jobs_of_one_name_are_told_apart);
    tcase_add_test(tests, remarks_stand_once);
    tcase_add_test(tests, lists_in_packs_and_unknown_units);
    tcase_add_loop_test(tests, nothing_is_lost_nor_bought_in_vain, 0, ROUNDS);
    tcase_add_loop_test(tests, orders_merge_like_jobs, 0, ROUNDS);
    tcase_add_test(tests, memory_runs_out);
    suite_add_tcase(suite, tests);
    return suite;
}
