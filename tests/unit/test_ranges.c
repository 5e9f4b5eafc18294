/* Quantities surveyed as a range: a verdict never passes where any point of the range fails, and the order suffices
 * everywhere. Each point is planned from a file that has one value in place of the range, with the cable and device of
 * the range's plan written into it. */
#include "made_route.h"
#include "run_suite.h"
#include "said.h"
#include "sweep_depth.h"

#include "library/library_private.h"

#include <math.h>
#include <string.h>

enum { SAMPLE = 40, DEEP = 300, INSIDE = 4, TEXT_MOST = 4096, SETS_MOST = 5 };

struct Case {
    int low_mm[2], high_mm[2]; /* of two segments; alike: no range */
    int low_a, high_a;
    const char *device, *way;
    int loop_mohm;
};

static struct Case made_case(uint32_t seed)
{
    static const char *const devices[] = {
        "{kind: MCB, curve: B, breaking-capacity: 6 kA}", "{kind: gG, breaking-capacity: 16 kA}",
        "{kind: MCB, curve: C, breaking-capacity: 6 kA}", "{kind: BS88-3, breaking-capacity: 16 kA}"};
    static const char *const ways[] = {"buried, depth: 600 mm", "wall", "fence",
                                       "duct, depth: 500 mm, duct: {size: 100 mm}"};
    uint32_t state = seed * 2654435761u + 17;
    struct Case made = {.loop_mohm = made_between(&state, 100, 900)};
    const int ranges = made_between(&state, 1, 3);
    for (int i = 0; i < 2; i++) {
        made.low_mm[i] = made_between(&state, 2000, 70000);
        made.high_mm[i] = made.low_mm[i] + (i < ranges ? made_between(&state, 200, 40000) : 0);
    }
    made.low_a = made_between(&state, 6, 60);
    made.high_a = made.low_a + (ranges == 3 ? made_between(&state, 1, 20) : 0);
    made.device = devices[made_between(&state, 0, 3)];
    made.way = ways[made_between(&state, 0, 3)];
    return made;
}

static const char *amount(char out[64], double low, double high, const char *unit)
{
    snprintf(out, 64, low < high ? "%.4f %s to %.4f %s" : "%.4f %s", low, unit, high, unit);
    return out;
}

static struct Wend *planned(const struct Case *made, const char *const *sets, int count)
{
    char text[TEXT_MOST], load[64], one[64], two[64];
    const int length = snprintf(
        text, sizeof text,
        "wend: 1\njob: {title: Byre}\nsupply: {system: TN-S, loop-impedance: 0.%03d ohm, fault-current: 1.2 kA}\n"
        "earthing: {far-end: export, extraneous-parts: no}\nruns:\n  byre:\n    load: {current: %s}\n    device: %s\n"
        "    cable: {type: BS5467, cores: 3, cpc: core}\nsegments:\n  - {name: one, way: %s, length: %s}\n"
        "  - {name: two, way: tray, length: %s}\n",
        made->loop_mohm, amount(load, made->low_a, made->high_a, "A"), made->device, made->way,
        amount(one, made->low_mm[0] / 1000.0, made->high_mm[0] / 1000.0, "m"),
        amount(two, made->low_mm[1] / 1000.0, made->high_mm[1] / 1000.0, "m"));
    return wend_plan_changed("byre", text, (size_t)length, sets, count);
}

static double part_of(const struct PartsList *parts, const char *code)
{
    double most = 0;
    for (int i = 0; i < parts->count; i++) {
        const struct Part *part = &parts->parts[i];
        most = text_same(part->code, code) ? fmax(most, part->pack > 0 ? part->packs : part->quantity) : most;
    }
    return most;
}

/* At `shares` of the way through each range. */
static void hold_at(const struct Case *made, const struct Wend *range, const double shares[3])
{
    const struct PlanRun *run = &range->plan->runs[0];
    char words[SETS_MOST][64];
    const char *sets[SETS_MOST];
    for (int i = 0; i < 2; i++) {
        snprintf(words[i], 64, "segments.%s.length=%.4f m", i == 0 ? "one" : "two",
                 (made->low_mm[i] + shares[i] * (made->high_mm[i] - made->low_mm[i])) / 1000.0);
    }
    snprintf(words[2], 64, "runs.byre.load.current=%.4f A", made->low_a + shares[2] * (made->high_a - made->low_a));
    snprintf(words[3], 64, "runs.byre.cable.size=%g mm2", run->size_mm2);
    snprintf(words[4], 64, "runs.byre.device.rating=%g A", run->rating_a);
    for (int i = 0; i < SETS_MOST; i++) {
        sets[i] = words[i];
    }
    struct Wend *point = planned(made, sets, SETS_MOST);
    ck_assert_msg(wend_status(point) <= WEND_CHECK_FAILS, "%s",
                  wend_diagnostics_printed(wend_diagnostics(point), "point"));
    ck_assert_msg(wend_verdict(point) >= wend_verdict(range), "%s, %s, %s with %s, %s: %s", words[0], words[1],
                  words[2], words[3], words[4], wend_verdict_text(point));
    for (int i = 0; i < point->parts->count; i++) {
        const char *code = point->parts->parts[i].code;
        ck_assert_msg(part_of(range->parts, code) >= part_of(point->parts, code) - 1e-9, "%s at %s, %s", code, words[0],
                      words[1]);
    }
    wend_free(point);
}

START_TEST(never_passes_where_a_point_fails)
{
    const int routes = sweep_depth(SAMPLE, DEEP);
    int passed = 0, failed = 0, refused = 0;
    for (uint32_t seed = 0; seed < (uint32_t)routes; seed++) {
        const struct Case made = made_case(seed);
        struct Wend *range = planned(&made, NULL, 0);
        if (wend_status(range) > WEND_CHECK_FAILS) {
            refused++;
            wend_free(range);
            continue;
        }
        uint32_t state = seed + 99;
        passed += wend_verdict(range) == WEND_PASS;
        failed += wend_verdict(range) == WEND_FAIL;
        for (int corner = 0; corner < 8; corner++) {
            hold_at(&made, range, (const double[3]){corner & 1, corner >> 1 & 1, corner >> 2 & 1});
        }
        for (int i = 0; i < INSIDE; i++) {
            const double shares[3] = {made_between(&state, 0, 1000) / 1000.0, made_between(&state, 0, 1000) / 1000.0,
                                      made_between(&state, 0, 1000) / 1000.0};
            hold_at(&made, range, shares);
        }
        wend_free(range);
    }
    fprintf(stderr, "ranges: %d passed, %d failed, %d refused of %d\n", passed, failed, refused, routes);
    ck_assert_int_gt(passed, routes / 2);
    ck_assert_int_gt(failed, 0);
}
END_TEST

/* What the range costs is the difference of the plans at its two ends. */
START_TEST(says_what_it_holds_for_and_costs)
{
    const struct Case made = {.low_mm = {18000, 6000},
                              .high_mm = {60000, 6000},
                              .low_a = 26,
                              .high_a = 26,
                              .device = "{kind: MCB, curve: B, breaking-capacity: 6 kA}",
                              .way = "wall",
                              .loop_mohm = 200};
    struct Case low = made, high = made;
    low.high_mm[0] = low.low_mm[0];
    high.low_mm[0] = high.high_mm[0];
    struct Wend *range = planned(&made, NULL, 0);
    struct Wend *least = planned(&low, NULL, 0);
    struct Wend *most = planned(&high, NULL, 0);
    ck_assert_int_eq(wend_verdict(range), WEND_PASS);
    ck_assert(least->plan->runs[0].size_mm2 < most->plan->runs[0].size_mm2);
    ck_assert_double_eq_tol(range->plan->runs[0].size_mm2, most->plan->runs[0].size_mm2, 1e-9);
    const char *held = NULL, *costs = NULL;
    for (int i = 0; i < wend_warning_count(range); i++) {
        const char *text = wend_warning_text(range, i);
        held = strstr(text, "one length was surveyed as 18.0000 m to 60.0000 m") != NULL ? text : held;
        costs = strstr(text, "at their lesser ends") != NULL ? text : costs;
    }
    ck_assert(!range->plan->runs[0].size_was_given); /* where the larger end decides, its own plan is shown */
    ck_assert_double_eq_tol(range->plan->runs[0].drop_percent, most->plan->runs[0].drop_percent, 1e-9);
    const struct WendBytes reach = wend_answer_text(wend_reach(range));
    ck_assert_ptr_nonnull(strstr(arena_text(range->arena, reach.data, reach.length), "at 60.0000 m alone"));
    ck_assert_ptr_nonnull(held);
    ck_assert_ptr_nonnull(costs);
    char expected[128];
    snprintf(expected, sizeof expected,
             "takes %g mm2, 32 A and %d m to order; at their lesser ends %g mm2, 32 A and %d m",
             most->plan->runs[0].size_mm2, most->plan->runs[0].order_length_m, least->plan->runs[0].size_mm2,
             least->plan->runs[0].order_length_m);
    ck_assert_msg(strstr(costs, expected) != NULL, "%s: %s", expected, costs);
    wend_free(most);
    wend_free(least);
    wend_free(range);
}
END_TEST

static bool warned_of(const struct Wend *wend, const char *words)
{
    bool found = false;
    for (int i = 0; i < wend_warning_count(wend); i++) {
        found = found || strstr(wend_warning_text(wend, i), words) != NULL;
    }
    return found;
}

/* One wall, with a drum of 50 m at hand. */
static struct Wend *with_a_drum(const char *length, const char *size)
{
    char text[TEXT_MOST];
    const int bytes = snprintf(
        text, sizeof text,
        "wend: 1\njob: {title: Byre}\nsupply: {system: TN-S, loop-impedance: 0.2 ohm, fault-current: 1.2 kA}\n"
        "earthing: {far-end: export, extraneous-parts: no}\nparts: {stock: [{run: byre, lengths: [50 m]}]}\nruns:\n"
        "  byre:\n    load: {current: 26 A}\n    device: {kind: MCB, curve: B, breaking-capacity: 6 kA}\n"
        "    cable: {type: BS5467, cores: 3, cpc: core%s}\nsegments:\n  - {name: one, way: wall, length: %s}\n",
        size, length);
    struct Wend *wend = wend_plan("byre", text, (size_t)bytes);
    ck_assert_msg(wend_status(wend) <= WEND_CHECK_FAILS, "%s",
                  wend_diagnostics_printed(wend_diagnostics(wend), "byre"));
    return wend;
}

/* The drum would do for the lesser end alone; beside the length for the larger end it would be bought for nothing. */
START_TEST(cuts_for_the_larger_end)
{
    struct Wend *least = with_a_drum("18 m", "");
    struct Wend *most = with_a_drum("60 m", "");
    struct Wend *range = with_a_drum("18 m to 60 m", "");
    int cables[3] = {0, 0, 0};
    const struct Wend *const all[3] = {least, most, range};
    for (int w = 0; w < 3; w++) {
        for (int i = 0; i < all[w]->parts->count; i++) {
            cables[w] += strncmp(all[w]->parts->parts[i].code, "cable-", 6) == 0;
        }
    }
    ck_assert_int_eq(least->parts->cuts[0].whole_lengths, 1);
    ck_assert_int_eq(most->parts->cuts[0].by_metre_count, 1);
    ck_assert_int_eq(range->parts->cuts[0].by_metre_count, 1);
    ck_assert_int_eq(cables[1], 1);
    ck_assert_int_eq(cables[2], 1);
    wend_free(range);
    wend_free(most);
    wend_free(least);
}
END_TEST

START_TEST(says_no_cost_of_what_fails)
{
    struct Wend *passes = with_a_drum("18 m to 60 m", "");
    struct Wend *fails = with_a_drum("18 m to 60 m", ", size: 1.5 mm2");
    ck_assert_int_eq(wend_verdict(fails), WEND_FAIL);
    ck_assert(warned_of(passes, "at their lesser ends"));
    ck_assert(!warned_of(fails, "at their lesser ends"));
    ck_assert(warned_of(fails, "the verdict is the worst of plans at 9 points"));
    wend_free(fails);
    wend_free(passes);
}
END_TEST

/* What is wrong at one point of a range alone is told as of a route without one, with its line: nothing is planned. */
static const struct {
    const char *load, *segment, *fault;
    int line;
} faults[] = {
    {"20 A", "way: loft-void, length: 1 m to 3 m, insulation: surrounded, insulated-length: 2 m",
     "insulated-length-long", 9},
    {"20 A to 900 A", "way: wall, length: 3 m", "device-none-carries", 6},
    {"20 A to 900 A", "way: wall, length: 3 m to 4 m", "device-none-carries", 6},
};

START_TEST(what_is_wrong_at_one_point_is_told)
{
    char text[1024];
    snprintf(text, sizeof text,
             "wend: 1\njob: {title: Byre}\nsupply: {system: TN-S, loop-impedance: 0.35 ohm}\nruns:\n"
             "  byre: {load: {current: %s}, cable: {type: BS5467, cores: 3},\n"
             "    device: {kind: MCB, curve: B, breaking-capacity: 6 kA}}\nsegments:\n"
             "  - {name: one, way: wall, length: 5 m}\n  - {name: two, %s}\n",
             faults[_i].load, faults[_i].segment);
    struct Wend *wend = wend_plan("byre", text, strlen(text));
    const struct WendDiagnostics *told = wend_diagnostics(wend);
    ck_assert_int_eq(wend_status(wend), WEND_INPUT_WRONG);
    ck_assert_ptr_null(wend_document(wend, WEND_SUMMARY_TEXT).data);
    int named = 0;
    for (size_t i = 0; i < wend_diagnostics_count(told); i++) {
        named += strcmp(wend_diagnostic_name(told, i), faults[_i].fault) == 0 &&
                 wend_diagnostic_line(told, i) == faults[_i].line;
    }
    ck_assert_msg(named == 1, "%s", wend_diagnostics_printed(told, "byre"));
    wend_free(wend);
}
END_TEST

/* Whoever has one sheet of it knows that it was planned for a range, the card and the list for the counter too; what is
 * said of it is in the signs of paper. */
START_TEST(every_paper_says_so)
{
    static const enum WendDocument papers[] = {WEND_DIAGRAM_SVG, WEND_PARTS_CSV,   WEND_BRIEF_HTML, WEND_CARD_HTML,
                                               WEND_PARTS_HTML,  WEND_DESIGN_HTML, WEND_TEST_HTML};
    struct Wend *range = with_a_drum("18 m to 60 m", ""), *one = with_a_drum("60 m", "");
    for (size_t i = 0; i < sizeof papers / sizeof papers[0]; i++) {
        const char *says = papers[i] == WEND_PARTS_CSV ? "one length 18 m to 60 m" : "RANGE one length";
        ck_assert_msg(strstr(wend_document(range, papers[i]).data, says) != NULL, "document %d", (int)papers[i]);
        ck_assert_msg(strstr(wend_document(one, papers[i]).data, says) == NULL, "document %d", (int)papers[i]);
    }
    const char *brief = wend_document(range, WEND_BRIEF_HTML).data;
    ck_assert(warned_of(range, " mm2, "));
    ck_assert_ptr_null(strstr(brief, " mm2, "));
    ck_assert_ptr_nonnull(strstr(brief, " mm\xC2\xB2, "));
    wend_free(one);
    wend_free(range);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("ranges");
    TCase *cases = tcase_create("ranges");
    tcase_set_timeout(cases, 600);
    tcase_add_test(cases, never_passes_where_a_point_fails);
    tcase_add_test(cases, says_what_it_holds_for_and_costs);
    tcase_add_test(cases, cuts_for_the_larger_end);
    tcase_add_test(cases, says_no_cost_of_what_fails);
    tcase_add_loop_test(cases, what_is_wrong_at_one_point_is_told, 0, (int)(sizeof faults / sizeof faults[0]));
    tcase_add_test(cases, every_paper_says_so);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
