/* Relations that hold whatever the figures are, over routes made up at random with a fixed seed:
 * a longer run never drops less; one stretch more never raises the capacity; the order of stretches never changes it;
 * cutting a stretch in two changes nothing; a larger cable never drops more; a chosen size passes every check and the
 * next smaller one does not. */
#include "made_route.h"
#include "run_suite.h"

#include "wend/wend.h"

#include <math.h>
#include <string.h>

enum { ROUTES = 400 };

struct Result {
    double capacity_a, drop_percent, expected_percent;
};

static struct Wend *plan_made(const struct MadeRoute *made)
{
    char text[MADE_TEXT_MOST];
    made_write(made, text);
    struct Wend *wend = wend_plan("made", text, strlen(text));
    ck_assert_msg(wend_result(wend) != NULL, "%s\n%s", wend_diagnostics_text(wend, "made.yaml"), text);
    const char *fault = plan_check(wend_result(wend));
    ck_assert_msg(fault == NULL, "%s\n%s", fault, text);
    return wend;
}

static struct Result result_of(const struct MadeRoute *made)
{
    struct Wend *wend = plan_made(made);
    const struct PlanRun *run = &wend_result(wend)->runs[0];
    const struct Result result = {run->capacity_a, run->drop_percent, run->drop_at_load_temperature_percent};
    wend_free(wend);
    return result;
}

static void same(double a, double b, const char *what, int seed)
{
    ck_assert_msg(fabs(a - b) <= 1e-9 * fmax(fabs(a), fabs(b)), "route %d: %s: %.12g and %.12g", seed, what, a, b);
}

START_TEST(longer_never_drops_less)
{
    for (int seed = 1; seed <= ROUTES; seed++) {
        struct MadeRoute made = made_route((uint32_t)seed);
        made.size = 10;
        const struct Result before = result_of(&made);
        made.stretches[seed % made.count].length_mm += 1 + seed * 37 % 5000;
        const struct Result after = result_of(&made);
        ck_assert_msg(after.drop_percent > before.drop_percent, "route %d", seed);
    }
}
END_TEST

START_TEST(one_stretch_more_never_carries_more)
{
    for (int seed = 1; seed <= ROUTES; seed++) {
        struct MadeRoute made = made_route((uint32_t)seed);
        made.size = 10;
        const struct Result before = result_of(&made);
        uint32_t state = (uint32_t)seed * 977 + 5;
        const int at = made_between(&state, 0, made.count);
        memmove(&made.stretches[at + 1], &made.stretches[at], (size_t)(made.count - at) * sizeof made.stretches[0]);
        made.stretches[at] = made_stretch(&state);
        made.count++;
        const struct Result after = result_of(&made);
        ck_assert_msg(after.capacity_a <= before.capacity_a + 1e-9, "route %d: %.9g, then %.9g", seed,
                      before.capacity_a, after.capacity_a);
        ck_assert_msg(after.drop_percent > before.drop_percent, "route %d", seed);
    }
}
END_TEST

START_TEST(order_never_matters)
{
    for (int seed = 1; seed <= ROUTES; seed++) {
        struct MadeRoute made = made_route((uint32_t)seed);
        made.size = 16;
        /* A wall of two holes in a row is thicker than either: keep holes apart from each other in both orders. */
        int holes = 0;
        for (int i = 0; i < made.count; i++) {
            holes += strcmp(made.stretches[i].way, "through-wall") == 0;
        }
        if (holes > 1) {
            continue;
        }
        const struct Result before = result_of(&made);
        uint32_t state = (uint32_t)seed * 31 + 7;
        for (int i = made.count - 1; i > 0; i--) {
            const int j = made_between(&state, 0, i);
            const struct MadeStretch kept = made.stretches[i];
            made.stretches[i] = made.stretches[j];
            made.stretches[j] = kept;
        }
        const struct Result after = result_of(&made);
        same(before.capacity_a, after.capacity_a, "capacity", seed);
        same(before.drop_percent, after.drop_percent, "drop", seed);
    }
}
END_TEST

START_TEST(cutting_a_stretch_changes_nothing)
{
    for (int seed = 1; seed <= ROUTES; seed++) {
        struct MadeRoute made = made_route((uint32_t)seed);
        made.size = 6;
        const struct Result before = result_of(&made);
        const int at = seed % made.count;
        memmove(&made.stretches[at + 1], &made.stretches[at], (size_t)(made.count - at) * sizeof made.stretches[0]);
        made.stretches[at].length_mm /= 2;
        made.stretches[at + 1].length_mm -= made.stretches[at].length_mm;
        made.count++;
        const struct Result after = result_of(&made);
        same(before.capacity_a, after.capacity_a, "capacity", seed);
        same(before.drop_percent, after.drop_percent, "drop", seed);
        same(before.expected_percent, after.expected_percent, "expected drop", seed);
    }
}
END_TEST

START_TEST(larger_never_drops_more)
{
    static const int sizes[] = {4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300};
    for (int seed = 1; seed <= ROUTES; seed += 5) {
        struct MadeRoute made = made_route((uint32_t)seed);
        double before = 1e9;
        for (int i = 0; i < (int)(sizeof sizes / sizeof sizes[0]); i++) {
            made.size = sizes[i];
            const double drop = result_of(&made).drop_percent;
            ck_assert_msg(drop <= before, "route %d: %d mm2 drops %g after %g", seed, sizes[i], drop, before);
            before = drop;
        }
    }
}
END_TEST

START_TEST(chosen_passes_and_next_smaller_does_not)
{
    int passed = 0;
    for (int seed = 1; seed <= ROUTES; seed++) {
        struct MadeRoute made = made_route((uint32_t)seed);
        struct Wend *wend = plan_made(&made);
        const struct PlanRun *run = &wend_result(wend)->runs[0];
        ck_assert_int_eq(run->option_count, 16);
        ck_assert_int_eq(wend_status(wend), run->pass ? WEND_PASSES : WEND_CHECK_FAILS);
        for (int i = 0; i < run->option_count; i++) {
            const struct Option *option = &run->options[i];
            ck_assert_msg((option->verdict == VERDICT_FAIL) == (option->fails[0] != '\0'), "route %d", seed);
            if (run->pass && option->size_mm2 < run->size_mm2) {
                ck_assert_msg(!option->pass && option->why[0] != '\0', "route %d", seed);
            }
        }
        passed += run->pass;
        wend_free(wend);
    }
    ck_assert_int_gt(passed, ROUTES / 2); /* else the routes made here test nothing */
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("relations");
    TCase *relations = tcase_create("relations");
    tcase_set_timeout(relations, 120);
    tcase_add_test(relations, longer_never_drops_less);
    tcase_add_test(relations, one_stretch_more_never_carries_more);
    tcase_add_test(relations, order_never_matters);
    tcase_add_test(relations, cutting_a_stretch_changes_nothing);
    tcase_add_test(relations, larger_never_drops_more);
    tcase_add_test(relations, chosen_passes_and_next_smaller_does_not);
    suite_add_tcase(suite, relations);
    return run_suite(suite);
}
