/* Bends, ducts and drawing in as part of the choice of size, on whole routes. */
#include "mechanics_route.h"
#include "said.h"

#include <math.h>
#include <string.h>

/* Common practice, no source: a three-core 10 mm2 armoured cable and one data cable drawn with a draw wire through a
 * 63 mm duct is an ordinary pull with room to spare. */
START_TEST(an_ordinary_pull)
{
    struct Wend *wend = mechanics_plan(&(struct MechanicsRoute){
        .cable = "{type: BS5467, cores: 3, size: 10 mm2}",
        .runs = "  link:\n    kind: data\n    cable: {type: EN50288, diameter: 7.5 mm}\n",
        .segments = "  - {name: path, way: duct, length: 30 m, duct: {size: 63 mm, rope: yes}, bends: 1}\n"});
    const struct Check *fill = route_check(wend, 0, "duct-fill:path");
    const struct Check *pull = route_check(wend, 0, "pull:path");
    ck_assert_int_eq(fill->result, CHECK_PASS);
    /* (19.5^2 + 7.5^2) / 47^2 */
    ck_assert_double_eq_tol(fill->value, (19.5 * 19.5 + 7.5 * 7.5) / (47.0 * 47) * 100, 1e-9);
    ck_assert(fill->value < fill->limit * 2 / 3);
    ck_assert_int_eq(pull->result, CHECK_PASS);
    ck_assert(pull->value < pull->limit / 3); /* room to spare */
    route_says(plainly(pull->text), "with link");
    /* what is not held of the data cable is not passed in silence */
    ck_assert_int_eq(route_check(wend, 1, "duct-fill:path")->result, CHECK_PASS);
    ck_assert(route_check(wend, 1, "pull:path")->unknown);
    ck_assert(route_not_checked(wend, "pull:path", "link"));
    ck_assert(!route_not_checked(wend, "pull:path", "feeder"));
    wend_free(wend);
}
END_TEST

/* 1 A over 130 m level: 1.5 mm2 would carry it, but 0.33 kg/m x 9.81 x 0.6 x 130 = 252 N is more than its copper's
 * 3 x 1.5 x 50 = 225 N. The smallest that stands its own pull is the choice. */
START_TEST(the_pull_decides)
{
    struct Wend *wend = mechanics_plan(&(struct MechanicsRoute){
        .load = "{current: 1 A}", .segments = "  - {name: path, way: duct, length: 130 m, duct: {size: 63 mm}}\n"});
    const struct PlanRun *run = &wend_result(wend)->runs[0];
    ck_assert(run->pass);
    ck_assert_double_eq_tol(run->options[0].size_mm2, 1.5, 1e-9);
    ck_assert_str_eq(plain_ids(&run->options[0].fails), "pull");
    route_says(plainly(run->options[0].why), "it stands 225 N");
    ck_assert_double_eq_tol(run->size_mm2, 2.5, 1e-9);
    route_says(plainly(run->why_not_smaller), "Not 1.5 mm2: drawn in, dry");
    wend_free(wend);
}
END_TEST

/* No cable of the table goes through a 25 mm duct (bore 18 mm, 53 %: 13.1 mm): what is best electrically stands, since
 * a duct can be changed. */
START_TEST(the_load_ranks_first)
{
    struct Wend *wend = mechanics_plan(&(struct MechanicsRoute){
        .load = "{current: 38 A}", .segments = "  - {name: path, way: duct, length: 20 m, duct: {size: 25 mm}}\n"});
    const struct PlanRun *run = &wend_result(wend)->runs[0];
    ck_assert(!run->pass);
    ck_assert_int_eq(wend_status(wend), WEND_CHECK_FAILS);
    ck_assert_int_eq(route_check(wend, 0, "capacity")->result, CHECK_PASS);
    ck_assert_int_eq(route_check(wend, 0, "drop")->result, CHECK_PASS);
    ck_assert_int_eq(route_check(wend, 0, "duct-fill:path")->result, CHECK_FAIL);
    route_says(plainly(wend_result(wend)->verdict_text), "duct-fill:path fails on feeder");
    for (int i = 0; i < run->option_count; i++) { /* nor does one whose diameter nobody holds */
        ck_assert(!run->options[i].pass);
        ck_assert_int_ne(run->options[i].verdict, VERDICT_PASS);
        ck_assert((run->options[i].fails.count > 0) == (run->options[i].verdict == VERDICT_FAIL));
        ck_assert((run->options[i].open.count > 0) == (run->options[i].verdict == VERDICT_OPEN) ||
                  run->options[i].verdict == VERDICT_FAIL);
        ck_assert(run->options[i].why != NULL);
    }
    ck_assert_double_lt(run->size_mm2, 50);
    wend_free(wend);
}
END_TEST

/* Where nobody holds the diameter nothing passes: it is said, for each. */
START_TEST(unknown_is_listed)
{
    struct Wend *wend = mechanics_plan(&(struct MechanicsRoute){
        .cable = "{type: BS6346, cores: 3, size: 10 mm2}",
        .segments = "  - {name: path, way: duct, length: 20 m, duct: {size: 63 mm}}\n"
                    "  - {name: gable, way: wall, length: 4 m, bends: [{angle: 90 deg, radius: 200 mm}]}\n"});
    static const char *const ids[] = {"duct-fill:path", "pull:path", "bend:gable"};
    for (size_t i = 0; i < sizeof ids / sizeof ids[0]; i++) {
        const struct Check *check = route_check(wend, 0, ids[i]);
        ck_assert(check->unknown && check->result == CHECK_NOT_DUE);
        ck_assert(route_not_checked(wend, ids[i], "feeder"));
    }
    const struct PlanRun *run = &wend_result(wend)->runs[0];
    ck_assert_double_le(run->cable_facts.overall_mm, 0);
    ck_assert(said_has(run->cable_facts.text, "was not surveyed"));
    ck_assert_double_le(run->start_end.needs_mm, 0);
    wend_free(wend);
}
END_TEST

/* Two runs that both choose and share a duct: what stands in the plan is what comes of the sizes written down. */
START_TEST(two_choices_in_one_duct)
{
    static const char segments[] = "  - {name: path, way: duct, length: 30 m, duct: {size: 110 mm}}\n";
    struct Wend *wend = mechanics_plan(
        &(struct MechanicsRoute){.load = "{current: 10 A}",
                                 .runs = "  second:\n    load: {current: 60 A}\n    cable: {type: BS5467, cores: 3}\n",
                                 .segments = segments});
    const struct Plan *plan = wend_result(wend);
    ck_assert(plan->runs[1].size_mm2 > plan->runs[0].size_mm2);
    struct Arena *arena = arena_new();
    struct Wend *given = mechanics_plan(&(struct MechanicsRoute){
        .load = "{current: 10 A}",
        .cable = arena_print(arena, "{type: BS5467, cores: 3, size: %s mm2}",
                             number_significant(arena, plan->runs[0].size_mm2, 4)),
        .runs = arena_print(arena,
                            "  second:\n    load: {current: 60 A}\n    cable: {type: BS5467, cores: 3, size: %s mm2}\n",
                            number_significant(arena, plan->runs[1].size_mm2, 4)),
        .segments = segments});
    static const char *const ids[] = {"duct-fill:path", "pull:path"};
    for (int r = 0; r < 2; r++) {
        for (size_t i = 0; i < sizeof ids / sizeof ids[0]; i++) {
            const struct Check *chosen = route_check(wend, r, ids[i]);
            const struct Check *written = route_check(given, r, ids[i]);
            ck_assert_double_eq_tol(chosen->value, written->value, 1e-9);
            ck_assert_int_eq(chosen->result, written->result);
            ck_assert_str_eq(plainly(chosen->text), plainly(written->text));
        }
    }
    arena_free(arena);
    wend_free(given);
    wend_free(wend);
}
END_TEST

/* The first run fits as long as the second is taken to be as thin; once that turns out to be thick it does not, and the
 * plan says so. */
START_TEST(a_later_choice_spoils_it)
{
    struct Wend *wend = mechanics_plan(
        &(struct MechanicsRoute){.load = "{current: 5 A}",
                                 .runs = "  second:\n    load: {current: 60 A}\n    cable: {type: BS5467, cores: 3}\n",
                                 .segments = "  - {name: path, way: duct, length: 10 m, duct: {size: 50 mm}}\n"});
    const struct PlanRun *first = &wend_result(wend)->runs[0];
    ck_assert_int_eq(route_check(wend, 0, "duct-fill:path")->result, CHECK_FAIL);
    ck_assert(!first->pass && !wend_result(wend)->pass);
    for (int i = 0; i < first->option_count; i++) {
        if (first->options[i].chosen) {
            ck_assert(!first->options[i].pass);
            route_says(plain_ids(&first->options[i].fails), "duct-fill");
            ck_assert(first->options[i].why != NULL);
        }
    }
    wend_free(wend);
}
END_TEST

enum { MANY = 300, MANY_CHECKS = 3 * MANY };

/* More checks than any fixed room: three on each of three hundred stretches. */
START_TEST(three_hundred_ducts)
{
    struct Arena *arena = arena_new();
    struct TextBuilder segments = text_builder(arena);
    for (int i = 0; i < MANY; i++) {
        text_print(&segments,
                   "  - {name: d%d, way: duct, length: 2 m, duct: {size: 63 mm}, draw-pits: %s, "
                   "bends: [{angle: 20 deg, radius: 900 mm}]}\n",
                   i, i % 10 == 9 ? "end" : "none");
    }
    struct Wend *wend = mechanics_plan(&(struct MechanicsRoute){.segments = text_done(&segments)});
    const struct PlanRun *run = &wend_result(wend)->runs[0];
    ck_assert_int_ge(run->check_count, MANY_CHECKS);
    ck_assert_int_eq(run->bend_count, MANY);
    ck_assert_int_eq(run->pull_count, MANY / 10);
    double length_m = 0;
    for (int i = 0; i < run->pull_count; i++) {
        length_m += run->pulls[i].length_m;
        ck_assert_double_eq_tol(run->pulls[i].bends_deg, 200, 1e-9);
        ck_assert(run->pulls[i].worked && run->pulls[i].result == CHECK_PASS);
    }
    ck_assert_double_eq_tol(length_m, 2.0 * MANY, 1e-6);
    ck_assert_int_eq(route_check(wend, 0, "pull:d290")->result, CHECK_PASS);
    ck_assert_int_eq(route_check(wend, 0, "pull:d291")->result, CHECK_NOT_DUE);
    wend_free(wend);
    arena_free(arena);
}
END_TEST

TCase *mechanics_choice_tests(void)
{
    TCase *tests = tcase_create("choice");
    tcase_add_test(tests, an_ordinary_pull);
    tcase_add_test(tests, the_pull_decides);
    tcase_add_test(tests, the_load_ranks_first);
    tcase_add_test(tests, unknown_is_listed);
    tcase_add_test(tests, two_choices_in_one_duct);
    tcase_add_test(tests, a_later_choice_spoils_it);
    tcase_add_test(tests, three_hundred_ducts);
    return tests;
}
