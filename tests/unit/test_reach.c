/* How much more a plan bears, against a scan of the file itself: at what is claimed and everywhere before it the route
 * passes with the same cable and device written into it, and a tenth beyond it does not. And what differs between two
 * plans. */
#include "run_suite.h"
#include "said.h"

#include "design/design.h"
#include "library/library_private.h"

#include <math.h>
#include <string.h>

enum { TEXT_MOST = 4096, SETS_MOST = 4, SCANNED = 12 };

static struct Wend *planned(int load_a, double field_m, const char *fault, const char *const *sets, int count)
{
    char text[TEXT_MOST];
    const int length =
        snprintf(text, sizeof text,
                 "wend: 1\njob: {title: Byre}\nsupply: {system: TN-S, loop-impedance: 0.35 ohm%s}\n"
                 "earthing: {far-end: export, extraneous-parts: no}\nruns:\n  byre:\n    load: {current: %d "
                 "A}\n    device: {kind: MCB, curve: B, breaking-capacity: 6 kA}\n"
                 "    cable: {type: BS5467, cores: 3, cpc: core}\nsegments:\n"
                 "  - {name: wall, way: wall, length: 6 m}\n"
                 "  - {name: pipe, way: duct, length: 4 m, depth: 600 mm, duct: {size: 63 mm}}\n"
                 "  - {name: field, way: buried, length: %g m, depth: 600 mm}\n",
                 fault, load_a, field_m);
    return wend_plan_changed("byre", text, (size_t)length, sets, count);
}

static const char known[] = ", fault-current: 1.2 kA";

/* The verdict of the file with the cable and device of the plan, and one more thing, written into it. */
static enum WendVerdict with(const struct Wend *wend, int load_a, double field_m, const char *change)
{
    const struct PlanRun *run = &wend->plan->runs[0];
    char size[64], rating[64];
    snprintf(size, sizeof size, "runs.byre.cable.size=%g mm2", run->size_mm2);
    snprintf(rating, sizeof rating, "runs.byre.device.rating=%g A", run->rating_a);
    const char *const sets[SETS_MOST] = {size, rating, change};
    struct Wend *other = planned(load_a, field_m, known, sets, 3);
    ck_assert_msg(wend_status(other) <= WEND_CHECK_FAILS, "%s: %s", change,
                  wend_diagnostics_printed(wend_diagnostics(other), "f"));
    const enum WendVerdict verdict = wend_verdict(other);
    wend_free(other);
    return verdict;
}

static void change_of(const struct Wend *wend, const struct Reach *reach, double more, char out[64])
{
    if (reach->segment < 0) {
        snprintf(out, 64, "runs.byre.load.current=%.4f A", reach->now + more);
    } else {
        snprintf(out, 64, "segments.%s.length=%.4f m", wend->plan->segments[reach->segment].surveyed->name,
                 reach->now + more);
    }
}

static const struct {
    int load_a;
    double field_m;
} rows[] = {{6, 4}, {13, 30}, {20, 55}, {31, 12}, {32, 80}, {47, 140}, {60, 25}};
enum { ROWS = (int)(sizeof rows / sizeof rows[0]) };

START_TEST(against_a_scan_of_the_file)
{
    const int load_a = rows[_i].load_a;
    const double field_m = rows[_i].field_m;
    struct Wend *wend = planned(load_a, field_m, known, NULL, 0);
    ck_assert_msg(wend_verdict(wend) == WEND_PASS, "%s", wend_verdict_text(wend));
    const struct Reaches reaches = library_reaches(wend);
    ck_assert_int_eq(reaches.count, 4); /* the load and three segments */
    for (int i = 0; i < reaches.count; i++) {
        const struct Reach *reach = &reaches.list[i];
        char change[64];
        for (int k = 0; k <= SCANNED; k++) {
            change_of(wend, reach, reach->more * k / SCANNED, change);
            ck_assert_msg(with(wend, load_a, field_m, change) == WEND_PASS, "%s does not pass", change);
        }
        ck_assert_msg(reach->ends, "%s: no end", change);
        change_of(wend, reach, reach->more + 0.1, change);
        ck_assert_msg(with(wend, load_a, field_m, change) != WEND_PASS, "%s passes", change);
        ck_assert_ptr_nonnull(reach->check);
    }
    wend_free(wend);
}
END_TEST

/* What reach and ranges stand on: with its own sizes and devices fixed a plan is the same plan. */
START_TEST(fixed_as_it_is)
{
    struct Wend *wend = planned(rows[_i].load_a, rows[_i].field_m, known, NULL, 0);
    const struct Survey *fixed = design_fixed(wend->arena, wend->plan->survey, wend->plan);
    struct Replanned other;
    ck_assert(replan_begin(PLAN_WHOLE, &other));
    replan_survey(wend, fixed, &other);
    ck_assert_ptr_nonnull(other.staged.plan);
    const struct PlanRun *one = &wend->plan->runs[0];
    const struct PlanRun *two = &other.staged.plan->runs[0];
    ck_assert_int_eq(other.staged.plan->verdict, wend->plan->verdict);
    ck_assert_double_eq_tol(one->size_mm2, two->size_mm2, 1e-12);
    ck_assert(say_same(one->device_text, two->device_text));
    ck_assert_int_eq(one->check_count, two->check_count);
    for (int i = 0; i < one->check_count; i++) {
        ck_assert_int_eq(one->checks[i].result, two->checks[i].result);
        ck_assert_double_eq_tol(one->checks[i].value, two->checks[i].value, 1e-12);
    }
    replan_end(wend, &other);
    wend_free(wend);
}
END_TEST

static const char *text_of(const struct Wend *wend, struct WendBytes bytes)
{
    ck_assert_ptr_nonnull(bytes.data);
    return arena_text(wend->arena, bytes.data, bytes.length);
}

START_TEST(says_first_what_is_open)
{
    struct Wend *wend = planned(20, 55, "", NULL, 0);
    ck_assert_int_eq(wend_verdict(wend), WEND_OPEN);
    const char *text = text_of(wend, wend_answer_text(wend_reach(wend)));
    const char *open = strstr(text, "The plan is OPEN");
    const char *first = strstr(text, "More of each segment");
    ck_assert_msg(open != NULL && first != NULL && open < first, "%s", text);
    ck_assert_msg(strstr(text, wend->plan->open[0].id) != NULL, "%s", text);
    wend_free(wend);
}
END_TEST

START_TEST(nothing_more_of_what_fails)
{
    const char *const sets[] = {"runs.byre.cable.size=1.5 mm2"};
    struct Wend *wend = planned(47, 140, known, sets, 1);
    ck_assert_int_eq(wend_verdict(wend), WEND_FAIL);
    ck_assert_int_eq(library_reaches(wend).count, 0);
    ck_assert_ptr_null(strstr(text_of(wend, wend_answer_text(wend_reach(wend))), "+"));
    wend_free(wend);
}
END_TEST

/* ---- what differs ---- */

static double cable_m(const struct PartsDifferences *parts, bool fetch)
{
    double metres = 0;
    for (int i = 0; i < parts->count; i++) {
        if (strncmp(parts->list[i].part->code, "cable-", 6) == 0) {
            metres += fetch ? parts->list[i].fetch : parts->list[i].back;
        }
    }
    return metres;
}

/* A cable is fetched whole when the one at hand is too short, and none is when it is long enough. */
START_TEST(cable_is_never_pieced_together)
{
    struct Wend *near = planned(20, 36, known, NULL, 0);
    struct Wend *far = planned(20, 45, known, NULL, 0);
    ck_assert_double_eq_tol(near->plan->runs[0].size_mm2, far->plan->runs[0].size_mm2, 1e-9);
    const struct PartsDifferences longer = parts_differ(far->arena, near->parts, far->parts);
    ck_assert_double_eq_tol(cable_m(&longer, true), far->plan->runs[0].order_length_m, 1e-9);
    ck_assert_double_eq_tol(cable_m(&longer, false), near->plan->runs[0].order_length_m, 1e-9);
    const struct PartsDifferences shorter = parts_differ(near->arena, far->parts, near->parts);
    ck_assert_double_eq_tol(cable_m(&shorter, true), 0, 1e-9);
    ck_assert_double_eq_tol(cable_m(&shorter, false), 0, 1e-9);
    ck_assert_int_eq(parts_differ(near->arena, near->parts, near->parts).count, 0);
    wend_free(far);
    wend_free(near);
}
END_TEST

/* What is fetched and brought back makes of the one list the other. */
START_TEST(fetched_and_brought_back_add_up)
{
    for (int a = 0; a < ROWS; a++) {
        struct Wend *old = planned(rows[_i].load_a, rows[_i].field_m, known, NULL, 0);
        struct Wend *now = planned(rows[a].load_a, rows[a].field_m, known, NULL, 0);
        const struct PartsDifferences parts = parts_differ(now->arena, old->parts, now->parts);
        for (int i = 0; i < now->parts->count; i++) {
            const struct Part *part = &now->parts->parts[i];
            double count = 0;
            for (int k = 0; k < old->parts->count; k++) {
                const struct Part *had = &old->parts->parts[k];
                count += text_same(had->code, part->code) ? (had->pack > 0 ? had->packs : had->quantity) : 0;
            }
            for (int k = 0; k < parts.count; k++) {
                count += text_same(parts.list[k].part->code, part->code) ? parts.list[k].fetch - parts.list[k].back : 0;
            }
            const double wanted = part->pack > 0 ? part->packs : part->quantity;
            const bool cable = strncmp(part->code, "cable-", 6) == 0; /* a longer one at hand serves */
            ck_assert_msg(fabs(count - wanted) < 1e-9 || (cable && count > wanted), "%s: %g, not %g", part->code, count,
                          wanted);
        }
        wend_free(now);
        wend_free(old);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("reach");
    TCase *cases = tcase_create("reach");
    tcase_set_timeout(cases, 300);
    tcase_add_loop_test(cases, against_a_scan_of_the_file, 0, ROWS);
    tcase_add_loop_test(cases, fixed_as_it_is, 0, ROWS);
    tcase_add_test(cases, says_first_what_is_open);
    tcase_add_test(cases, nothing_more_of_what_fails);
    tcase_add_test(cases, cable_is_never_pieced_together);
    tcase_add_loop_test(cases, fetched_and_brought_back_add_up, 0, ROWS);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
