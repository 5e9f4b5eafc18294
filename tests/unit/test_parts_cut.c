/* Cutting plans of parts: what a list of pieces and a list of lengths become in words, in the order and on a route. */
#include "run_suite.h"
#include "said.h"

#include "buying/parts_cut_private.h"
#include "library/library_stages.h"
#include "wend/wend.h"

#include <string.h>

#define COUNT(list) ((int)(sizeof(list) / sizeof(list)[0]))

static struct PartsCut decide(struct Arena *arena, int pieces, const struct PartPiece *piece, int lengths,
                              const double *length_m, int offcuts, const double *offcut_m)
{
    const struct PartsCut asked = {.code = "cable-x",
                                   .description = NULL,
                                   .whole = PART_DRUMS,
                                   .piece_count = pieces,
                                   .pieces = piece,
                                   .length_count = lengths,
                                   .lengths_m = length_m,
                                   .offcut_count = offcuts,
                                   .offcuts_m = offcut_m};
    struct PartsCut out;
    ck_assert(parts_cut(arena, &asked, &out));
    return out;
}

/* 62 + 30 of one drum of 100 m, 45 of one of 50 m: 150 m, 13 m waste; 2 x 100 m would be 200 m. */
START_TEST(drums_are_told_in_words)
{
    static const struct PartPiece pieces[] = {
        {.name = "feeder", .length_m = 62}, {.name = "kiln", .length_m = 30}, {.name = "lamp", .length_m = 45}};
    static const double lengths_m[] = {50, 100};
    struct Arena *arena = arena_new();
    const struct PartsCut cut = decide(arena, 3, pieces, 2, lengths_m, 0, NULL);
    ck_assert(cut.planned && cut.proved);
    ck_assert_double_eq(cut.bought_m, 150);
    ck_assert_double_eq(cut.waste_m, 13);
    ck_assert_double_eq(cut.cut_m, 137);
    ck_assert_int_eq(cut.whole_lengths, 2);
    ck_assert_str_eq(said(arena, cut.buy_text), "1 drum of 100 m, 1 drum of 50 m");
    ck_assert_str_eq(said(arena, cut.result_text),
                     "150 m bought, 13 m of it waste; proved: no plan buys less, or as much in fewer drums");
    ck_assert_int_eq(cut.opened_count, 2);
    ck_assert_str_eq(said(arena, cut.opened[0].what), "drum of 100 m");
    ck_assert_str_eq(said(arena, cut.opened[0].piece_text), "feeder 62 m, kiln 30 m");
    ck_assert_str_eq(said(arena, cut.opened[0].left_text), "8 m");
    ck_assert_str_eq(said(arena, cut.note), "");
    arena_free(arena);
}
END_TEST

/* 182 drums of 100 m where 177.3 m x 100 is the bound: 178 at least, so 4 too many at most. */
START_TEST(a_plan_that_is_not_proved_says_how_far_it_may_be_off)
{
    static const double lengths_m[] = {100, 50};
    struct PartsCut asked = {.whole = PART_DRUMS, .length_count = 1, .lengths_m = lengths_m};
    struct CuttingPlan plan = {.bought_mm = 18200000, .bound_mm = 17730000};
    struct Arena *arena = arena_new();
    ck_assert_str_eq(said(arena, parts_cut_proof(arena, &plan, &asked)),
                     "not proved to be the best: some plan may buy less, but none less than 17730 m; at most 4 drums "
                     "above the best possible");
    asked.whole = PART_LENGTHS;
    plan.bound_mm = 18100000;
    ck_assert_str_eq(said(arena, parts_cut_proof(arena, &plan, &asked)),
                     "not proved to be the best: some plan may buy less, but none less than 18100 m; at most 1 length "
                     "above the best possible");
    asked.length_count = 2;
    ck_assert_str_eq(said(arena, parts_cut_proof(arena, &plan, &asked)),
                     "not proved to be the best: some plan may buy less, but none less than 18100 m; at most 100 m "
                     "above the best possible");
    plan.proved = true;
    ck_assert_str_eq(said(arena, parts_cut_proof(arena, &plan, &asked)),
                     "proved: no plan buys less, or as much in fewer lengths");
    arena_free(arena);
}
END_TEST

START_TEST(a_piece_longer_than_any_drum_is_said_plainly)
{
    static const struct PartPiece pieces[] = {{.name = "feeder", .length_m = 120}, {.name = "lamp", .length_m = 45}};
    static const double lengths_m[] = {50, 100};
    struct Arena *arena = arena_new();
    const struct PartsCut cut = decide(arena, 2, pieces, 2, lengths_m, 0, NULL);
    ck_assert(cut.planned && cut.proved);
    ck_assert_int_eq(cut.by_metre_count, 1);
    ck_assert_int_eq(cut.by_metre[0], 0);
    ck_assert_double_eq(cut.bought_m, 50);
    ck_assert_str_eq(
        said(arena, cut.note),
        "longer than any drum or offcut named: feeder 120 m; buy by the metre in one length, no joint is planned");
    arena_free(arena);
}
END_TEST

START_TEST(offcuts_alone_leave_the_rest_to_the_metre)
{
    static const struct PartPiece pieces[] = {{.name = "a", .length_m = 10}, {.name = "b", .length_m = 9}};
    static const double offcuts_m[] = {12};
    struct Arena *arena = arena_new();
    const struct PartsCut cut = decide(arena, 2, pieces, 0, NULL, 1, offcuts_m);
    ck_assert_str_eq(said(arena, cut.buy_text), "nothing to buy");
    ck_assert_double_eq(cut.cut_m, 10); /* the longer one: less is left to be bought */
    ck_assert_int_eq(cut.by_metre_count, 1);
    ck_assert_int_eq(cut.by_metre[0], 1);
    ck_assert_str_eq(said(arena, cut.note), "not enough offcuts: b 9 m not cut; buy by the metre");
    ck_assert_str_eq(said(arena, cut.opened[0].what), "offcut of 12 m");
    arena_free(arena);
}
END_TEST

/* Lengths in millimetres: a piece is rounded up, a drum down, and neither by what a double leaves. */
START_TEST(a_millimetre_decides)
{
    static const struct PartPiece fits[] = {{.name = "a", .length_m = 16.7}, {.name = "b", .length_m = 33.3}},
                                  not [] = {{.name = "a", .length_m = 16.7}, {.name = "b", .length_m = 33.3001}};
    static const double lengths_m[] = {50};
    struct Arena *arena = arena_new();
    ck_assert_int_eq(decide(arena, 2, fits, 1, lengths_m, 0, NULL).whole_lengths, 1);
    ck_assert_int_eq(decide(arena, 2, not, 1, lengths_m, 0, NULL).whole_lengths, 2);
    arena_free(arena);
}
END_TEST

START_TEST(without_stock_there_is_no_plan)
{
    static const struct PartPiece pieces[] = {{.name = "a", .length_m = 10}};
    struct Arena *arena = arena_new();
    const struct PartsCut cut = decide(arena, 1, pieces, 0, NULL, 0, NULL);
    ck_assert(!cut.planned);
    ck_assert_str_eq(said(arena, cut.note), "");
    ck_assert_int_eq(cut.piece_count, 1); /* still there for whoever has something to cut it from */
    static const double too_long[] = {20000};
    const struct PartsCut wrong = decide(arena, 1, pieces, 1, too_long, 0, NULL);
    ck_assert(!wrong.planned);
    ck_assert_str_eq(said(arena, wrong.note), "no cutting plan: a length is not between 1 mm and 10000 m");
    arena_free(arena);
}
END_TEST

static const char *uses_of(struct Arena *arena, const struct Part *part)
{
    return said(arena, parts_uses_said(arena, part->use_count, part->uses));
}

/* Two lines of one article become one that orders whole drums; a line of another stays as it is. */
START_TEST(lines_of_the_article_become_one)
{
    static const struct PartPiece pieces[] = {
        {.name = "feeder", .length_m = 62}, {.name = "long", .length_m = 130}, {.name = "lamp", .length_m = 45}};
    static const double lengths_m[] = {110};
    static const struct Run runs[] = {{.name = "feeder"}, {.name = "long"}, {.name = "lamp"}, {.name = "bell"}};
    static const struct PartUse uses[] = {{.whom = PART_FOR_RUN, .run = &runs[0]},
                                          {.whom = PART_FOR_RUN, .run = &runs[1]},
                                          {.whom = PART_FOR_RUN, .run = &runs[2]},
                                          {.whom = PART_FOR_RUN, .run = &runs[3]}};
    static const struct Say kept = {.id = SAY_NOTE_METAL};
    static const struct Part parts[] = {
        {.code = "cable-x-feeder",
         .article = "cable-x",
         .quantity = 62,
         .unit = "m",
         .needed = 62,
         .use_count = 1,
         .uses = &uses[0]},
        {.code = "cable-x-long",
         .article = "cable-x",
         .quantity = 130,
         .unit = "m",
         .needed = 130,
         .use_count = 1,
         .uses = &uses[1]},
        {.code = "cable-x-lamp",
         .article = "cable-x",
         .quantity = 45,
         .unit = "m",
         .needed = 45,
         .use_count = 1,
         .uses = &uses[2]},
        {.code = "cable-xx", .quantity = 7, .unit = "m", .needed = 7, .use_count = 1, .uses = &uses[3], .note = &kept},
    };
    const struct PartsList list = {.count = COUNT(parts), .parts = parts};
    struct Arena *arena = arena_new();
    const struct PartsCut cut = decide(arena, 3, pieces, 1, lengths_m, 0, NULL);
    const struct PartsList *out = parts_with_cuts(arena, &list, 1, &cut);
    ck_assert_ptr_nonnull(out);
    ck_assert_int_eq(out->count, 3);
    ck_assert_str_eq(out->parts[0].code, "cable-x");
    ck_assert_double_eq(out->parts[0].quantity, 110);
    ck_assert_double_eq(out->parts[0].needed, 107);
    ck_assert_str_eq(uses_of(arena, &out->parts[0]), "feeder; long; lamp");
    ck_assert_str_eq(out->parts[1].code, "cable-x-metre");
    ck_assert_double_eq(out->parts[1].quantity, 130);
    ck_assert_double_eq(out->parts[1].length_m, 130);
    ck_assert_str_eq(uses_of(arena, &out->parts[1]), "long");
    ck_assert_str_eq(parts_article(&out->parts[1]), "cable-x");
    ck_assert_ptr_eq(out->parts[2].note, &kept);
    ck_assert_int_eq(out->cut_count, 1);
    arena_free(arena);
}
END_TEST

static const char head[] =
    "wend: 1\n"
    "job: {title: Two sheds}\n"
    "supply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
    "runs:\n"
    "  near:\n"
    "    load: {current: 10 A}\n"
    "    cable: {type: BS5467, cores: 3, size: 2.5 mm2}\n"
    "    along: [yard]\n"
    "  far:\n"
    "    load: {current: 10 A}\n"
    "    cable: {type: BS5467, cores: 3, size: 2.5 mm2}\n"
    "segments:\n"
    "  - {name: yard, way: duct, length: 37 m, duct: {size: 63 mm}, depth: 600 mm, legs: included}\n"
    "  - {name: slope, way: duct, length: 12 m, duct: {size: 63 mm}, depth: 600 mm, legs: included}\n"
    "parts:\n"
    "  spare-cable: 0 %\n";

static struct Wend *plan_with(struct Arena *arena, const char *stock)
{
    const char *text = arena_print(arena, "%s%s", head, stock);
    struct Wend *wend = wend_plan("two", text, strlen(text));
    ck_assert_msg(wend_status(wend) <= WEND_CHECK_FAILS, "%s", wend_diagnostics_printed(wend_diagnostics(wend), "two"));
    return wend;
}

/* near 37 + 1 = 38 m, far 49 + 1 = 50 m, of one cable: stock named for one run is for both. 88 m of one drum. */
START_TEST(runs_of_one_cable_share_drums)
{
    struct Arena *arena = arena_new();
    struct Wend *wend = plan_with(arena, "  stock:\n    - {run: far, lengths: [100 m, 50 m]}\n");
    const struct PartsList *parts = wend_parts(wend);
    ck_assert_int_eq(parts->cut_count, 1); /* the duct, for which nothing is named, is sold in coils */
    const struct PartsCut *cut = &parts->cuts[0];
    ck_assert_str_eq(cut->code, "cable-BS5467-3x2.5");
    ck_assert(cut->planned && cut->proved);
    ck_assert_str_eq(said(arena, cut->buy_text), "1 drum of 100 m"); /* 50 + 50 buys as much, in two */
    ck_assert_str_eq(said(arena, cut->opened[0].piece_text), "far 50 m, near 38 m");
    ck_assert_double_eq(parts->parts[0].quantity, 100);
    ck_assert_str_eq(uses_of(arena, &parts->parts[0]), "near; far");
    wend_free(wend);
    arena_free(arena);
}
END_TEST

/* Offcuts named for either run are at hand for both: 50 m for the far one and 38 m for the near one, nothing bought. */
START_TEST(offcuts_of_runs_of_one_cable_add_up)
{
    struct Arena *arena = arena_new();
    struct Wend *wend = plan_with(arena, "  stock:\n    - {run: near, offcuts: [50 m, 20 m]}\n"
                                         "    - {run: far, offcuts: [38 m]}\n");
    const struct PartsCut *cut = &wend_parts(wend)->cuts[0];
    ck_assert_int_eq(cut->offcut_count, 3);
    ck_assert_double_eq(cut->offcuts_m[0], 50);
    ck_assert_double_eq(cut->offcuts_m[1], 20);
    ck_assert_double_eq(cut->offcuts_m[2], 38);
    ck_assert(cut->planned && cut->proved);
    ck_assert_double_eq(cut->bought_m, 0);
    ck_assert_double_eq(cut->cut_m, 88);
    ck_assert_int_eq(cut->opened_count, 2);
    ck_assert_str_eq(said(arena, cut->opened[0].piece_text), "far 50 m");
    ck_assert_str_eq(said(arena, cut->opened[1].piece_text), "near 38 m");
    wend_free(wend);
    arena_free(arena);
}
END_TEST

/* One drum of 60 m is there and no other: the longer piece is cut from it, the shorter is said to be left, loudly, and
 * stays in the order by the metre. With two drums both are cut; named twice, the least number holds. */
START_TEST(limited_stock_leaves_pieces_and_says_so)
{
    struct Arena *arena = arena_new();
    struct Wend *wend = plan_with(arena, "  stock:\n    - {run: far, lengths: [{length: 60 m, have: 1}]}\n");
    const struct PartsList *parts = wend_parts(wend);
    const char *due = "STOCK TOO SHORT (1 drum of 60 m): near 38 m not cut; buy by the metre or add stock";
    ck_assert_str_eq(said(arena, parts->cuts[0].buy_text), "1 drum of 60 m");
    ck_assert_str_eq(said(arena, parts->cuts[0].note), due);
    ck_assert_double_eq(parts->parts[0].quantity, 60);
    ck_assert_str_eq(parts->parts[1].code, "cable-BS5467-3x2.5-metre");
    ck_assert_double_eq(parts->parts[1].quantity, 38);
    ck_assert_str_eq(said(arena, parts->parts[1].note), due);
    ck_assert_ptr_nonnull(strstr(wend_document(wend, WEND_PARTS_CSV).data, due));
    wend_free(wend);
    wend = plan_with(arena, "  stock:\n    - {run: far, lengths: [{length: 60 m, have: 2}]}\n");
    ck_assert_str_eq(said(arena, wend_parts(wend)->cuts[0].buy_text), "2 drums of 60 m");
    ck_assert_str_eq(said(arena, wend_parts(wend)->cuts[0].note), "");
    wend_free(wend);
    wend = plan_with(arena, "  stock:\n    - {run: far, lengths: [{length: 60 m, have: 2}]}\n"
                            "    - {run: near, lengths: [60 m, {length: 60 m, have: 1}]}\n");
    ck_assert_str_eq(said(arena, wend_parts(wend)->cuts[0].note), due);
    wend_free(wend);
    arena_free(arena);
}
END_TEST

/* The far run passes 37 + 12 m of one duct: with 5 % 51.45, in whole metres 52 m; of lengths of 25 m two whole ones and
 * 2 m of a third. Offcuts of 2.5 m save that. The couplers are counted for these lengths: two, and one spare. */
START_TEST(duct_longer_than_a_length_is_coupled)
{
    struct Arena *arena = arena_new();
    struct Wend *wend = plan_with(arena, "  stock:\n    - {duct: 63 mm, lengths: [25 m]}\n");
    const struct PartsCut *cut = &wend_parts(wend)->cuts[1];
    ck_assert_str_eq(cut->code, "duct-63");
    ck_assert_int_eq(cut->piece_count, 3);
    ck_assert_str_eq(said(arena, cut->buy_text), "3 lengths of 25 m");
    ck_assert_str_eq(said(arena, cut->opened[0].piece_text), "yard + slope (1 of 3, coupled) 25 m");
    ck_assert_str_eq(said(arena, cut->opened[2].piece_text), "yard + slope (3 of 3, coupled) 2 m");
    ck_assert_double_eq(cut->waste_m, 23);
    wend_free(wend);
    wend = plan_with(arena,
                     "  stock:\n    - {duct: 63 mm, lengths: [20 m]}\n    - {duct: 63 mm, lengths: [25 m], offcuts: "
                     "[2.5 m]}\n");
    const struct PartsList *parts = wend_parts(wend);
    ck_assert_str_eq(said(arena, parts->cuts[1].buy_text), "2 lengths of 25 m");
    int seen = 0;
    for (int i = 0; i < parts->count; i++) {
        const struct Part *part = &parts->parts[i];
        if (text_same(part->code, "duct-63")) {
            ck_assert_double_eq(part->quantity, 50);
            ck_assert_int_eq(part->pack, 0);
            seen++;
        } else if (text_same(part->code, "duct-coupler-63")) {
            ck_assert_double_eq(part->quantity, 3);
            seen++;
        }
    }
    ck_assert_int_eq(seen, 2);
    wend_free(wend);
    arena_free(arena);
}
END_TEST

START_TEST(documents_tell_the_plan)
{
    struct Arena *arena = arena_new();
    struct Wend *wend = plan_with(arena, "  stock:\n    - {run: near, lengths: [45 m], offcuts: [9 m]}\n");
    const char *summary = wend_document(wend, WEND_SUMMARY_TEXT).data;
    ck_assert_ptr_nonnull(strstr(summary, "Cutting plan"));
    ck_assert_ptr_nonnull(strstr(summary, "near 38 m; 7 m left over"));
    ck_assert_ptr_nonnull(strstr(summary, "longer than any drum or offcut named: far 50 m"));
    const char *xml = wend_document(wend, WEND_PLAN_XML).data;
    ck_assert_ptr_nonnull(strstr(xml, "<cutting code=\"cable-BS5467-3x2.5\""));
    ck_assert_ptr_nonnull(strstr(xml, "<by-metre>"));
    ck_assert_ptr_null(strstr(xml, "<prices"));
    const char *csv = wend_document(wend, WEND_PARTS_CSV).data;
    ck_assert_ptr_nonnull(
        strstr(csv, ",,,Cut from a drum of 45 m,,near 38 m,7 m left over,,,,,cable-BS5467-3x2.5,,,,,,,OPEN,"));
    wend_free(wend);
    arena_free(arena);
}
END_TEST

/* Memory that fails anywhere gives no plan, and enough of it gives one. */
START_TEST(failing_memory_gives_nothing)
{
    static const struct PartPiece pieces[] = {
        {.name = "feeder", .length_m = 62}, {.name = "long", .length_m = 130}, {.name = "lamp", .length_m = 45}};
    static const double lengths_m[] = {50, 100}, offcuts_m[] = {3, 47};
    const struct PartsCut asked = {.code = "cable-x",
                                   .description = NULL,
                                   .whole = PART_DRUMS,
                                   .piece_count = 3,
                                   .pieces = pieces,
                                   .length_count = 2,
                                   .lengths_m = lengths_m,
                                   .offcut_count = 2,
                                   .offcuts_m = offcuts_m};
    static const struct Run all = {.name = "all"};
    static const struct PartUse use = {.whom = PART_FOR_RUN, .run = &all};
    const struct Part part = {.code = "cable-x", .quantity = 237, .unit = "m", .use_count = 1, .uses = &use};
    const struct PartsList list = {.count = 1, .parts = &part};
    int failed = 0;
    bool done = false;
    for (long blocks = 0; blocks < 1000 && !done; blocks++) {
        struct Arena *arena = arena_new();
        struct PartsCut cut;
        arena_fail_after(arena, blocks);
        done = parts_cut(arena, &asked, &cut) && parts_with_cuts(arena, &list, 1, &cut) != NULL;
        ck_assert(done != arena_failed(arena));
        failed += done ? 0 : 1;
        arena_free(arena);
    }
    ck_assert(done && failed > 0);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("cutting of parts");
    TCase *tests = tcase_create("cut");
    tcase_add_test(tests, drums_are_told_in_words);
    tcase_add_test(tests, a_piece_longer_than_any_drum_is_said_plainly);
    tcase_add_test(tests, offcuts_alone_leave_the_rest_to_the_metre);
    tcase_add_test(tests, a_millimetre_decides);
    tcase_add_test(tests, without_stock_there_is_no_plan);
    tcase_add_test(tests, lines_of_the_article_become_one);
    tcase_add_test(tests, runs_of_one_cable_share_drums);
    tcase_add_test(tests, offcuts_of_runs_of_one_cable_add_up);
    tcase_add_test(tests, limited_stock_leaves_pieces_and_says_so);
    tcase_add_test(tests, duct_longer_than_a_length_is_coupled);
    tcase_add_test(tests, a_plan_that_is_not_proved_says_how_far_it_may_be_off);
    tcase_add_test(tests, documents_tell_the_plan);
    tcase_add_test(tests, failing_memory_gives_nothing);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
