/* The way of a cable into the ground and out of it, on whole routes: what is added, what is not, what is asked. Lengths
 * of lines and earths include every metre of cable (BS 7671 525, 411.4.4): the sums are worked by hand. */
#include "mechanics_route.h"
#include "printed.h"

#include <stdio.h>
#include <string.h>

static struct Wend *follow(const char *segments)
{
    return mechanics_plan(&(struct MechanicsRoute){.cable = "{type: BS5467, cores: 3, size: 10 mm2}",
                                                   .run = "    start: {tail: 0.3 m}\n    finish: {tail: 0.3 m}\n",
                                                   .segments = segments});
}

struct LegsRow {
    const char *what, *segments;
    double legs_m, electrical_m;
    int order_m;
    bool asked;
};
static const struct LegsRow rows[] = {
    /* 0.8 + 6 + 0.8 + 2 x 0.9 + 0.6 = 10.0; x 1.05 = 10.5 */
    {"down and up by the depth",
     "  - {name: a, way: wall, length: 0.8 m, rise: -0.8 m}\n"
     "  - {name: b, way: buried, length: 6 m, depth: 900 mm}\n"
     "  - {name: c, way: wall, length: 0.8 m, rise: 0.8 m}\n",
     1.8, 10.0, 11, false},
    /* 7.6 + 0.6 = 8.2; 8.61 */
    {"surveyed already",
     "  - {name: a, way: wall, length: 0.8 m, rise: -0.8 m}\n"
     "  - {name: b, way: buried, length: 6 m, depth: 900 mm, legs: included}\n"
     "  - {name: c, way: wall, length: 0.8 m, rise: 0.8 m}\n",
     0, 8.2, 9, false},
    /* 0.6 down, 0.4 to 1 m, 0.25 up to 0.75 m, none into the duct as deep, 0.75 up: 2.0 */
    {"only the difference between two depths, at both ends of the run",
     "  - {name: a, way: buried, length: 5 m, depth: 600 mm}\n"
     "  - {name: b, way: duct, length: 5 m, depth: 1 m, duct: {size: 63 mm}}\n"
     "  - {name: c, way: buried, length: 5 m, depth: 750 mm}\n"
     "  - {name: d, way: duct, length: 5 m, depth: 750 mm, duct: {size: 63 mm}}\n",
     2.0, 22.6, 24, false},
    /* twice down and up */
    {"out of the ground and in again",
     "  - {name: a, way: buried, length: 5 m, depth: 600 mm}\n"
     "  - {name: b, way: fence, length: 4 m}\n"
     "  - {name: c, way: buried, length: 5 m, depth: 500 mm}\n",
     2.2, 16.8, 18, false},
    {"a fall as deep as the trench, of the stretch itself",
     "  - {name: a, way: wall, length: 3 m}\n"
     "  - {name: b, way: duct, length: 9 m, rise: -0.6 m, depth: 600 mm, duct: {size: 63 mm}}\n",
     1.2, 13.8, 15, true},
    {"a climb as high as the trench is deep, on the wall behind it",
     "  - {name: a, way: buried, length: 9 m, depth: 600 mm}\n"
     "  - {name: b, way: wall, length: 3 m, rise: 0.62 m}\n",
     1.2, 13.8, 15, true},
    {"a climb before the ground is no step down",
     "  - {name: a, way: wall, length: 3 m, rise: 0.6 m}\n"
     "  - {name: b, way: buried, length: 9 m, depth: 600 mm}\n",
     1.2, 13.8, 15, false},
    {"the ground slopes, as surveyed",
     "  - {name: a, way: wall, length: 3 m}\n"
     "  - {name: b, way: duct, length: 9 m, rise: -0.6 m, depth: 600 mm, legs: added, duct: {size: 63 mm}}\n",
     1.2, 13.8, 15, false},
    {"nothing in the ground", "  - {name: a, way: wall, length: 3 m}\n", 0, 3.6, 4, false},
};

START_TEST(what_is_added)
{
    const struct LegsRow *row = &rows[_i];
    struct Wend *wend = follow(row->segments);
    const struct PlanRun *run = &wend_result(wend)->runs[0];
    ck_assert_msg(run->legs_m > row->legs_m - 1e-9 && run->legs_m < row->legs_m + 1e-9, "%s: %.9g", row->what,
                  run->legs_m);
    ck_assert_double_eq_tol(run->electrical_length_m, row->electrical_m, 1e-9);
    ck_assert_int_eq(run->order_length_m, row->order_m);
    ck_assert_double_eq_tol(run->drop_v, 4.7 * 16 * row->electrical_m / 1000, 1e-9); /* 4E4B, 10 mm2 */
    ck_assert_double_eq_tol(run->readings.r1_20_ohm, 1.83 * row->electrical_m / 1000, 1e-9);
    ck_assert_msg(route_told(wend, "leg-or-fall") == row->asked, "%s", row->what);
    wend_free(wend);
}
END_TEST

/* A leg lies in the ground: it counts with the stretch there, and wall and stretch carry what they carried. */
START_TEST(a_leg_counts_with_the_ground)
{
    struct Wend *wend = follow(rows[0].segments);
    const struct PlanRun *run = &wend_result(wend)->runs[0];
    ck_assert_double_eq_tol(run->ratings[0].electrical_length_m, 0.8 + 0.3, 1e-9);
    ck_assert_double_eq_tol(run->ratings[1].electrical_length_m, 6 + 1.8, 1e-9);
    ck_assert_double_eq_tol(run->ratings[2].electrical_length_m, 0.8 + 0.3, 1e-9);
    struct Wend *without = follow(rows[1].segments);
    for (int i = 0; i < 3; i++) {
        ck_assert_double_eq(run->ratings[i].capacity_a, wend_result(without)->runs[0].ratings[i].capacity_a);
    }
    wend_free(without);
    wend_free(wend);
}
END_TEST

/* Wherever a trench is cut in two, and whatever is said of the one half that is said of the other, nothing changes. */
START_TEST(cutting_the_trench_changes_nothing)
{
    for (int cut_mm = 100; cut_mm < 6000; cut_mm += 700) {
        for (int included = 0; included < 2; included++) {
            const char *legs = included ? ", legs: included" : "";
            char text[400];
            snprintf(text, sizeof text,
                     "  - {name: a, way: wall, length: 0.8 m}\n"
                     "  - {name: b, way: buried, length: %d mm, depth: 900 mm%s}\n"
                     "  - {name: b2, way: buried, length: %d mm, depth: 900 mm%s}\n"
                     "  - {name: c, way: wall, length: 0.8 m}\n",
                     cut_mm, legs, 6000 - cut_mm, legs);
            struct Wend *wend = follow(text);
            ck_assert_double_eq_tol(wend_result(wend)->runs[0].electrical_length_m, included ? 8.2 : 10.0, 1e-9);
            ck_assert_int_eq(wend_result(wend)->runs[0].leg_count, 2);
            wend_free(wend);
        }
    }
}
END_TEST

/* Every paper that gives the length says what the way into the ground and out of it has added. */
START_TEST(legs_are_told)
{
    struct Wend *wend = follow(rows[0].segments);
    const struct PlanLeg *leg = &wend_result(wend)->runs[0].legs[0];
    ck_assert(leg->down && !leg->included && leg->segment == 1 && leg->other == 0);
    const char *xml = printed(wend).data;
    route_says(xml, "legs-m=\"1.8\"");
    route_says(xml, "<leg segment=\"b\" other=\"a\" goes=\"down\" length-m=\"0.9\" survey=\"added\"/>");
    route_says(xml, "<leg segment=\"b\" other=\"c\" goes=\"up\" length-m=\"0.9\" survey=\"added\"/>");
    route_says(xml, "with tails and loops and 1.8 m into and out of the ground 10.00 m");
    route_says(xml, "In from a, 0.9 m: slow bend, guarded by ____.");
    route_says(xml, "Steps in and out not measured: cut the cable last.");
    route_says(wend_document(wend, WEND_SUMMARY_TEXT).data, "and 1.8 m into and");
    route_says(wend_document(wend, WEND_DIAGRAM_SVG).data, "1.8");
    wend_free(wend);
    wend = follow(rows[1].segments);
    const char *measured = printed(wend).data;
    route_says(measured, "In from a, 0.9 m: slow bend, guarded by ____.");
    ck_assert_ptr_null(strstr(measured, "not measured: cut the cable last"));
    wend_free(wend);
}
END_TEST

TCase *mechanics_legs_tests(void)
{
    TCase *tests = tcase_create("legs");
    tcase_add_loop_test(tests, what_is_added, 0, (int)(sizeof rows / sizeof rows[0]));
    tcase_add_test(tests, a_leg_counts_with_the_ground);
    tcase_add_test(tests, cutting_the_trench_changes_nothing);
    tcase_add_test(tests, legs_are_told);
    return tests;
}
