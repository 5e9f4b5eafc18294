/* Cutting across the jobs: one drum serves two sheds, nothing is cut twice, and never more is bought than apart. */
#include "order_rig.h"
#include "said.h"

#include "documents/documents.h"

#include <math.h>
#include <string.h>

enum { PIECES_MOST = 8, ROUNDS = 10, SEEDS_A_ROUND = 20 };

/* What one job wants of one cable, and what it names to cut it from. */
struct Wanted {
    const char *name;
    int piece_count, length_count, offcut_count;
    double pieces_m[PIECES_MOST], lengths_m[PIECES_MOST], offcuts_m[PIECES_MOST];
    int have[PIECES_MOST];
};

/* The job's list as it is handed out: already cut for itself, the drums in one line; with a clip besides. */
static struct OrderJob job_of(struct Arena *arena, const struct Wanted *wanted)
{
    struct Part *parts = arena_array(arena, PIECES_MOST + 1, sizeof *parts);
    struct PartPiece *pieces = arena_array(arena, PIECES_MOST, sizeof *pieces);
    struct PartsCut *cut = arena_alloc(arena, sizeof *cut);
    ck_assert(parts != NULL && pieces != NULL && cut != NULL);
    for (int i = 0; i < wanted->piece_count; i++) {
        const char *run = arena_print(arena, "run%d", i);
        parts[i] = order_part(arena, AISLE_CABLE, arena_print(arena, "cable-3x10-%s", run), "3-core 10 mm2",
                              wanted->pieces_m[i]);
        parts[i].article = "cable-3x10";
        parts[i].unit = "m";
        parts[i].length_m = wanted->pieces_m[i];
        parts[i].uses = order_use(arena, run);
        pieces[i] = (struct PartPiece){.name = run, .length_m = wanted->pieces_m[i]};
    }
    parts[wanted->piece_count] = order_part(arena, AISLE_FIXINGS, "clip", "Clip", 5);
    struct OrderJob job = order_job(arena, wanted->name, parts, wanted->piece_count + 1);
    const struct PartsCut asked = {.code = "cable-3x10",
                                   .description = as_is(arena, "3-core 10 mm2"),
                                   .whole = PART_DRUMS,
                                   .piece_count = wanted->piece_count,
                                   .pieces = pieces,
                                   .length_count = wanted->length_count,
                                   .lengths_m = wanted->lengths_m,
                                   .have = wanted->have,
                                   .offcut_count = wanted->offcut_count,
                                   .offcuts_m = wanted->offcuts_m};
    ck_assert(parts_cut(arena, &asked, cut));
    job.parts = parts_with_cuts(arena, job.parts, 1, cut);
    ck_assert_ptr_nonnull(job.parts);
    return job;
}

static const struct OrderLine *cable_line(struct Arena *arena, const struct Wanted *wanted, int count)
{
    struct OrderJob jobs[6];
    for (int i = 0; i < count; i++) {
        jobs[i] = job_of(arena, &wanted[i]);
    }
    const struct OrderList *list = order_merge(arena, jobs, count, NULL);
    ck_assert_ptr_nonnull(list);
    ck_assert_int_eq(list->count, 2); /* the cable and the clip */
    ck_assert_str_eq(list->lines[0].code, "cable-3x10");
    return &list->lines[0];
}

/* 67 m for one and 30 m for the other: apart two drums of 100 m, together one. */
START_TEST(one_drum_for_two_jobs)
{
    struct Arena *arena = arena_new();
    const struct Wanted wanted[] = {{"barn", 1, 1, 0, {67}, {100}, {0}, {0}}, {"shed", 1, 1, 0, {30}, {100}, {0}, {0}}};
    const struct OrderLine *line = cable_line(arena, wanted, 2);
    ck_assert_double_eq(line->buy, 100);
    ck_assert_int_eq(line->whole_lengths, 1);
    ck_assert_double_eq(line->quantity, 97);
    ck_assert_double_eq(line->over, 3);
    ck_assert_double_eq(line->by_job[0], 67);
    ck_assert_double_eq(line->by_job[1], 30);
    ck_assert_str_eq(said(arena, line->buy_text), "1 drum of 100 m");
    ck_assert_str_eq(line->unit_code, "MTR");
    ck_assert_double_eq(line->unit_quantity, 100);
    const char *due = "drum of 100 m: barn: run0 67 m, shed: run0 30 m, 3 m over; ";
    ck_assert_msg(strncmp(said(arena, line->cut), due, strlen(due)) == 0, "%s", said(arena, line->cut));
    arena_free(arena);
}
END_TEST

/* A drum that one job names serves the other too; one piece is longer than all and comes by the metre. */
START_TEST(stock_of_one_serves_all)
{
    struct Arena *arena = arena_new();
    const struct Wanted wanted[] = {{"barn", 1, 1, 0, {40}, {50}, {0}, {0}},
                                    {"shed", 2, 0, 0, {10, 60}, {0}, {0}, {0}}};
    const struct OrderLine *line = cable_line(arena, wanted, 2);
    ck_assert_double_eq(line->buy, 110);
    ck_assert_double_eq(line->over, 0);
    ck_assert_str_eq(said(arena, line->buy_text), "1 drum of 50 m, and 60 m by the metre");
    arena_free(arena);
}
END_TEST

/* The counter has one drum, say both; one says so for the other too. What it does not reach for is left, and said. */
START_TEST(limited_drums_are_shared)
{
    struct Arena *arena = arena_new();
    struct Wanted wanted[] = {{"barn", 1, 1, 0, {67}, {100}, {0}, {1}}, {"shed", 1, 1, 0, {40}, {100}, {0}, {2}}};
    const struct OrderLine *line = cable_line(arena, wanted, 2);
    ck_assert_double_eq(line->buy, 140);
    ck_assert_str_eq(said(arena, line->buy_text), "1 drum of 100 m, and 40 m by the metre");
    ck_assert_ptr_nonnull(
        strstr(said(arena, line->cut), "STOCK TOO SHORT (1 drum of 100 m): shed: run0 40 m not cut; buy by the metre"));
    wanted[0].have[0] = 0;
    line = cable_line(arena, wanted, 2);
    ck_assert_str_eq(said(arena, line->buy_text), "2 drums of 100 m");
    ck_assert_ptr_null(strstr(said(arena, line->cut), "STOCK TOO SHORT"));
    arena_free(arena);
}
END_TEST

/* Both name the offcut on the shelf: there is one of it, not two. A job that names two has two. */
START_TEST(an_offcut_is_used_once)
{
    struct Arena *arena = arena_new();
    struct Wanted wanted[] = {{"barn", 1, 0, 1, {12}, {0}, {12}, {0}}, {"shed", 1, 0, 1, {11}, {0}, {12}, {0}}};
    const struct OrderLine *line = cable_line(arena, wanted, 2);
    ck_assert_double_eq(line->at_hand, 12);
    ck_assert_double_eq(line->buy, 11);
    ck_assert_double_eq(line->over, 0);
    ck_assert_str_eq(said(arena, line->buy_text), "11 m");
    wanted[1].offcut_count = 2;
    wanted[1].offcuts_m[1] = 12;
    line = cable_line(arena, wanted, 2);
    ck_assert_double_eq(line->at_hand, 23);
    ck_assert_double_eq(line->buy, 0);
    ck_assert_str_eq(said(arena, line->buy_text), "nothing to buy");
    arena_free(arena);
}
END_TEST

/* What offcuts give wholly is on the list for the bags and not on the order to the wholesaler. */
START_TEST(nothing_to_buy_is_not_ordered)
{
    struct Arena *arena = arena_new();
    const struct Wanted wanted = {"barn", 1, 0, 1, {12}, {0}, {15}, {0}};
    const struct OrderJob job = job_of(arena, &wanted);
    const struct OrderList *list = order_merge(arena, &job, 1, NULL);
    const struct Order order = order_details("x");
    const char *csv = document_order_csv(arena, NULL, list).data, *xml = document_order_ubl(arena, &order, list).data;
    ck_assert_ptr_nonnull(strstr(csv, "nothing to buy,0,m,3-core 10 mm2"));
    ck_assert_ptr_null(strstr(xml, "cable-3x10"));
    ck_assert_ptr_nonnull(strstr(xml, "<cbc:LineCountNumeric>1<"));
    arena_free(arena);
}
END_TEST

static struct Wanted random_wanted(unsigned *state, const char *name)
{
    static const double lengths_m[] = {25, 50, 100};
    struct Wanted wanted = {.name = name, .piece_count = 1 + (int)order_draw(state, 5)};
    for (int i = 0; i < wanted.piece_count; i++) {
        wanted.pieces_m[i] = 1 + order_draw(state, 90);
    }
    wanted.length_count = 3;
    memcpy(wanted.lengths_m, lengths_m, sizeof lengths_m);
    return wanted;
}

/* With one store of drums for all: never more metres than apart, every length in exactly one drum. */
static void check_cut(unsigned seed)
{
    struct Arena *arena = arena_new();
    unsigned state = seed * 2654435761U + 9U;
    struct Wanted wanted[4];
    double apart_m = 0, asked_m = 0;
    int pieces = 0;
    for (int i = 0; i < 4; i++) {
        wanted[i] = random_wanted(&state, arena_print(arena, "job%d", i));
        pieces += wanted[i].piece_count;
        for (int p = 0; p < wanted[i].piece_count; p++) {
            asked_m += wanted[i].pieces_m[p];
        }
        const struct OrderJob job = job_of(arena, &wanted[i]);
        apart_m += job.parts->cuts[0].bought_m;
    }
    const struct OrderLine *line = cable_line(arena, wanted, 4);
    ck_assert_msg(line->buy <= apart_m + 1e-9, "seed %u: more than apart", seed);
    ck_assert_msg(fabs(line->quantity - asked_m) < 1e-9, "seed %u: lengths are lost", seed);
    ck_assert_msg(fabs(line->quantity + line->over - line->buy - line->at_hand) < 1e-9, "seed %u: sums", seed);
    int named = 0;
    for (int i = 0; i < 4; i++) {
        for (int p = 0; p < wanted[i].piece_count; p++) {
            const char *due =
                arena_print(arena, "job%d: run%d %s m", i, p, number_significant(arena, wanted[i].pieces_m[p], 9));
            const char *at = strstr(said(arena, line->cut), due);
            named += at != NULL && strstr(at + 1, due) == NULL;
        }
    }
    ck_assert_msg(named == pieces, "seed %u: %d of %d lengths in %s", seed, named, pieces, said(arena, line->cut));
    arena_free(arena);
}

START_TEST(never_more_than_apart)
{
    for (int i = 0; i < SEEDS_A_ROUND; i++) {
        check_cut((unsigned)(_i * SEEDS_A_ROUND + i));
    }
}
END_TEST

START_TEST(memory_runs_out)
{
    struct Arena *made = arena_new();
    const struct Wanted wanted = {"barn", 3, 2, 1, {40, 31, 12}, {50, 100}, {15}, {0}};
    const struct OrderJob job = job_of(made, &wanted);
    int failed = 0, done = 0;
    for (long blocks = 0; blocks < 3; blocks++) {
        for (size_t used_up = ORDER_USED_UP_LEAST; used_up < ORDER_USED_UP_MOST; used_up += 160) {
            struct Arena *arena = order_arena_short(used_up, blocks);
            const struct OrderList *list = order_merge(arena, &job, 1, NULL);
            ck_assert((list != NULL) != arena_failed(arena));
            done += list != NULL;
            failed += list == NULL;
            arena_free(arena);
        }
    }
    ck_assert_int_gt(failed, 20);
    ck_assert_int_gt(done, 20);
    arena_free(made);
}
END_TEST

Suite *suite_order_cut(void)
{
    Suite *suite = suite_create("order: cutting");
    TCase *tests = tcase_create("cutting");
    tcase_set_timeout(tests, 120);
    tcase_add_test(tests, one_drum_for_two_jobs);
    tcase_add_test(tests, stock_of_one_serves_all);
    tcase_add_test(tests, limited_drums_are_shared);
    tcase_add_test(tests, an_offcut_is_used_once);
    tcase_add_test(tests, nothing_to_buy_is_not_ordered);
    tcase_add_loop_test(tests, never_more_than_apart, 0, ROUNDS);
    tcase_add_test(tests, memory_runs_out);
    suite_add_tcase(suite, tests);
    return suite;
}
