/* The check of ducts, on made-up ways. */
#include "mechanics_rig.h"
#include "said.h"

#include <string.h>

/* 3-core 10 mm2 alone in 63 mm: (19.5 / 47)^2 = 17.2 % of 53. In 32 mm: (19.5 / 24)^2 = 66 %, too much; 40 mm: 42.3 %.
 */
START_TEST(one_cable)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    const struct Check check = mechanics_check(&rig, 10, "duct-fill:path");
    ck_assert_int_eq(check.result, CHECK_PASS);
    ck_assert_double_eq_tol(check.value, 17.2, 0.05);
    ck_assert_double_eq_tol(check.limit, 53, 1e-9);
    text_has(plainly(check.text), "40 mm duct would do");
    rig.segments[0].duct_size_mm = surveyed(32);
    mechanics_fails(&rig, 10, "duct-fill:path");
    text_has(plainly(mechanics_check(&rig, 10, "duct-fill:path").text), "Take 40 mm or larger");
    rig.segments[0].duct_size_mm = surveyed(40);
    mechanics_passes(&rig, 10, "duct-fill:path");
    text_has(plainly(mechanics_check(&rig, 10, "duct-fill:path").text), "No smaller one");
    /* between two sizes of the list the smaller one's bore */
    rig.segments[0].duct_size_mm = surveyed(39);
    mechanics_fails(&rig, 10, "duct-fill:path");
    mechanics_free(&rig);
}
END_TEST

/* The least bore of a size is from memory, a bore that was measured is not. */
START_TEST(as_sure_as_the_bore_is)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    struct Check check = mechanics_check(&rig, 10, "duct-fill:path");
    ck_assert_int_eq(check.trust, TRUST_PARTLY_FROM_MEMORY);
    text_has(plain_source(&check), "BS EN 61386-24");
    rig.segments[0].duct_bore_mm = surveyed(50);
    check = mechanics_check(&rig, 10, "duct-fill:path");
    ck_assert_int_eq(check.trust, TRUST_PUBLISHED);
    ck_assert_ptr_null(strstr(plain_source(&check), "memory"));
    mechanics_free(&rig);
}
END_TEST

/* Common practice, no source: a three-core 10 mm2 armoured cable and one data cable through a 63 mm duct with a draw
 * wire is an ordinary pull with room to spare. (19.5^2 + 7.5^2) / 47^2 = 19.8 % of 31. */
START_TEST(ordinary_duct)
{
    static const double lengths_m[] = {3, 10, 26};
    for (int i = 0; i < 3; i++) {
        for (int bends = 0; bends <= 1; bends++) {
            struct MechanicsRig rig;
            mechanics_make(&rig);
            rig.segments[0].length_m = surveyed(lengths_m[i]);
            struct Run *link = mechanics_add_run(&rig, "link", RUN_DATA, CABLE_EN50288, 0);
            link->cable.diameter_mm = surveyed(7.5);
            if (bends > 0) {
                mechanics_bend(&rig, 0, 90, 0.6);
            }
            const struct Check fill = mechanics_check(&rig, 10, "duct-fill:path");
            ck_assert_int_eq(fill.result, CHECK_PASS);
            ck_assert_double_eq_tol(fill.value, 19.8, 0.05);
            ck_assert_double_eq_tol(fill.limit, 31, 1e-9);
            const struct Check pull = mechanics_check(&rig, 10, "pull:path");
            ck_assert_int_eq(pull.result, CHECK_PASS);
            ck_assert_double_lt(pull.value, pull.limit / 2);
            text_has(plainly(pull.text), "with link");
            mechanics_free(&rig);
        }
    }
}
END_TEST

/* Two right angles of no surveyed radius over 30 m pass too, with less to spare. Common practice, no source. */
START_TEST(ordinary_duct_with_two_bends)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    rig.segments[0].length_m = surveyed(30);
    mechanics_add_run(&rig, "link", RUN_DATA, CABLE_EN50288, 0)->cable.diameter_mm = surveyed(7.5);
    mechanics_bend(&rig, 0, 90, 0);
    mechanics_bend(&rig, 0, 90, 0);
    mechanics_passes(&rig, 10, "duct-fill:path");
    mechanics_passes(&rig, 10, "pull:path");
    mechanics_free(&rig);
}
END_TEST

/* Three of one kind: 3-core 2.5 mm2 of 14.1 mm. 47 mm of bore are 3.33 times that, 3.3 % short of the band; 40 mm of
 * duct (30 mm) is overfull; 50 mm (37 mm): 2.62, 2.755 in a bend, 43.6 %: overfull too. */
START_TEST(three_alike)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    mechanics_add_run(&rig, "second", RUN_POWER, CABLE_BS5467, 3);
    mechanics_add_run(&rig, "third", RUN_POWER, CABLE_BS5467, 3);
    mechanics_passes(&rig, 2.5, "duct-fill:path");
    rig.segments[0].duct_size_mm = surveyed(50);
    mechanics_fails(&rig, 2.5, "duct-fill:path");
    ck_assert_double_eq_tol(mechanics_check(&rig, 2.5, "duct-fill:path").limit, 40, 1e-9);
    /* 4 mm2 are 15.3 mm: 63 mm is 3.07 times that, 31.8 %: not full, but it jams; 75 mm, 3.66, does not */
    rig.segments[0].duct_size_mm = surveyed(63);
    mechanics_fails(&rig, 4, "duct-fill:path");
    const struct Check jammed = mechanics_check(&rig, 4, "duct-fill:path");
    ck_assert(jammed.at_least);
    ck_assert_double_eq_tol(jammed.value, 47 / 15.3, 1e-9);
    ck_assert_double_eq_tol(jammed.limit, 3.2, 1e-9);
    text_has(plainly(jammed.text), "wedge");
    text_has(plainly(jammed.text), "Take 75 mm");
    const struct Check pull = mechanics_check(&rig, 4, "pull:path");
    ck_assert_int_eq(pull.result, CHECK_NOT_DUE);
    ck_assert(!pull.unknown);
    rig.segments[0].duct_size_mm = surveyed(75);
    mechanics_passes(&rig, 4, "duct-fill:path");
    mechanics_passes(&rig, 4, "pull:path");
    /* 90 mm of duct (67 mm) and cables of 24.4 mm: 39.8 %, 2.746 times straight, 2.883 in a bend; 24.47 mm are overfull
     */
    rig.segments[0].duct_size_mm = surveyed(90);
    for (int i = 0; i < 3; i++) {
        rig.runs[i].cable.diameter_mm = surveyed(24.47);
    }
    ck_assert_double_eq_tol(mechanics_check(&rig, 16, "duct-fill:path").value, 40.02, 0.01);
    for (int i = 0; i < 3; i++) {
        rig.runs[i].cable.diameter_mm = surveyed(24.4);
    }
    /* as sold it has any bore from 67 to 90 mm, 2.746 to 3.69 times: nobody knows until it is measured */
    const struct Check doubt = mechanics_check(&rig, 16, "duct-fill:path");
    ck_assert(doubt.result == CHECK_NOT_DUE && doubt.unknown);
    text_has(plainly(doubt.text), "in a bore of 68 to 79 mm the three would wedge");
    text_has(plainly(doubt.text), "Take 110 mm");
    rig.segments[0].duct_bore_mm = surveyed(67);
    mechanics_passes(&rig, 16, "duct-fill:path");
    ck_assert_ptr_null(strstr(plainly(mechanics_check(&rig, 16, "duct-fill:path").text), "Take"));
    rig.segments[0].duct_bore_mm = surveyed(72); /* 2.95 times */
    text_has(plainly(mechanics_check(&rig, 16, "duct-fill:path").text), "Take 110 mm");
    rig.segments[0].duct_size_mm = surveyed(110); /* whose least bore, 82 mm, would do: 3.2 x 24.4 = 78.1 mm */
    text_has(plainly(mechanics_check(&rig, 16, "duct-fill:path").text), "Take a bore of 79 mm or more");
    rig.segments[0].duct_size_mm = surveyed(90);
    rig.segments[0].duct_bore_mm = surveyed(67);
    mechanics_bend(&rig, 0, 90, 0.9);
    mechanics_fails(&rig, 16, "duct-fill:path");
    text_has(plainly(mechanics_check(&rig, 16, "duct-fill:path").text), "5 % wider in a bend");
    mechanics_free(&rig);
}
END_TEST

/* 40 % are allowed for three cables and 31 % for two: a third one, thin or unknown, does not make two of them fit. */
START_TEST(one_more_makes_no_room)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    mechanics_add_run(&rig, "second", RUN_POWER, CABLE_BS5467, 3);
    mechanics_fails(&rig, 10, "duct-fill:path"); /* two of 19.5 mm in 47 mm: 34.4 % */
    struct Run *link = mechanics_add_run(&rig, "link", RUN_DATA, CABLE_EN50288, 0);
    mechanics_fails(&rig, 10, "duct-fill:path");
    link->cable.diameter_mm = surveyed(7.5); /* 37.0 % */
    mechanics_fails(&rig, 10, "duct-fill:path");
    const struct Check pair = mechanics_check(&rig, 10, "duct-fill:path");
    ck_assert_double_eq_tol(pair.value, 2 * 19.5 * 19.5 / (47 * 47) * 100, 1e-9);
    ck_assert_double_eq_tol(pair.limit, 31, 1e-9);
    text_has(plainly(pair.text), "The two thickest of 3 cables alone fill 34.4 %");
    text_has(plainly(pair.text), "Take 75 mm");
    rig.segments[0].duct_bore_mm = surveyed(50); /* 30.4 % */
    mechanics_passes(&rig, 10, "duct-fill:path");
    mechanics_free(&rig);
}
END_TEST

/* Three that wedge, 3.07 times, do not pass by a thin one that goes in with them; nor do three that may. */
START_TEST(one_more_does_not_free_three)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    mechanics_add_run(&rig, "second", RUN_POWER, CABLE_BS5467, 3);
    mechanics_add_run(&rig, "third", RUN_POWER, CABLE_BS5467, 3);
    mechanics_fails(&rig, 4, "duct-fill:path");
    mechanics_add_run(&rig, "link", RUN_DATA, CABLE_EN50288, 0)->cable.diameter_mm = surveyed(7.5);
    mechanics_unknown(&rig, 4, "duct-fill:path", "three alone");
    rig.segments[0].duct_bore_mm = surveyed(48.5); /* 3.17 times */
    mechanics_unknown(&rig, 4, "duct-fill:path", "three alone");
    rig.segments[0].duct_bore_mm = surveyed(49.5); /* 3.24 times */
    mechanics_passes(&rig, 4, "duct-fill:path");
    mechanics_free(&rig);
}
END_TEST

/* A run whose size is given counts with its own, one to be chosen with this trial's. */
START_TEST(sizes_of_the_others)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    struct Run *second = mechanics_add_run(&rig, "second", RUN_POWER, CABLE_BS5467, 3);
    const double alike = mechanics_check(&rig, 10, "duct-fill:path").value;
    ck_assert_double_eq_tol(alike, 2 * 19.5 * 19.5 / (47 * 47) * 100, 1e-9);
    second->cable.size_mm2 = surveyed(1.5);
    ck_assert_double_eq_tol(mechanics_check(&rig, 10, "duct-fill:path").value,
                            (19.5 * 19.5 + 12.6 * 12.6) / (47 * 47) * 100, 1e-9);
    /* this run's own size is the trial's even where one was surveyed: alternatives try others */
    rig.runs[0].cable.size_mm2 = surveyed(25);
    ck_assert_double_eq_tol(mechanics_check(&rig, 10, "duct-fill:path").value,
                            (19.5 * 19.5 + 12.6 * 12.6) / (47 * 47) * 100, 1e-9);
    /* a changed copy of the run is the same run */
    const struct Run copy = rig.runs[0];
    rig.design.run = &copy;
    ck_assert_double_eq_tol(mechanics_check(&rig, 10, "duct-fill:path").value,
                            (19.5 * 19.5 + 12.6 * 12.6) / (47 * 47) * 100, 1e-9);
    /* a run that goes another way does not count */
    second->along_count = 0;
    ck_assert_double_eq_tol(mechanics_check(&rig, 10, "duct-fill:path").value, 19.5 * 19.5 / (47 * 47) * 100, 1e-9);
    mechanics_free(&rig);
}
END_TEST

START_TEST(what_is_not_known)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    rig.segments[0].duct_size_mm = (struct Quantity){0};
    mechanics_unknown(&rig, 10, "duct-fill:path", "size of the duct");
    text_has(plainly(mechanics_check(&rig, 10, "duct-fill:path").text), "40 mm would do");
    mechanics_unknown(&rig, 10, "pull:path", "size of the duct");
    rig.segments[0].duct_size_mm = surveyed(20);
    mechanics_unknown(&rig, 10, "duct-fill:path", "no bore");
    rig.segments[0].duct_size_mm = surveyed(63);
    struct Run *link = mechanics_add_run(&rig, "link", RUN_DATA, CABLE_EN50288, 0);
    mechanics_unknown(&rig, 10, "duct-fill:path", "another cable");
    mechanics_unknown(&rig, 10, "pull:path", "another cable");
    link->cable.diameter_mm = surveyed(7.5);
    mechanics_passes(&rig, 10, "duct-fill:path");
    /* no thinner than 95 mm2, which does not go in; in a wide duct that shows nothing */
    mechanics_fails(&rig, 120, "duct-fill:path");
    rig.segments[0].duct_size_mm = surveyed(160);
    mechanics_unknown(&rig, 120, "duct-fill:path", "this cable");
    mechanics_free(&rig);
}
END_TEST

/* Circuits beside a duct lie in it, unless they have ducts of their own. */
START_TEST(cables_in_the_duct_already)
{
    static const struct {
        enum Arrangement arrangement;
        bool inside;
    } rows[] = {{ARRANGEMENT_BUNCHED, true},
                {ARRANGEMENT_SINGLE_LAYER, true},
                {ARRANGEMENT_SPACED, false},
                {ARRANGEMENT_DUCT_TOUCHING, false},
                {ARRANGEMENT_DUCT_SPACED, false}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct MechanicsRig rig;
        mechanics_make(&rig);
        rig.segments[0].has_beside = true;
        rig.segments[0].beside = (struct Beside){.circuits = 1, .arrangement = rows[i].arrangement};
        if (rows[i].inside) {
            mechanics_unknown(&rig, 10, "duct-fill:path", "beside");
            mechanics_unknown(&rig, 10, "pull:path", "beside");
        } else {
            mechanics_passes(&rig, 10, "duct-fill:path");
        }
        mechanics_free(&rig);
    }
}
END_TEST

/* 2-core 70 mm2 is 29.0 mm: in 40 mm of duct (30 mm) 93 %; two of 3-core 16 mm2 (21.6 mm) in 75 mm (56 mm) are 29.8 %,
 * over 85 % of 31: a word where the duct bends. */
START_TEST(words_on_bends)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    mechanics_add_run(&rig, "second", RUN_POWER, CABLE_BS5467, 3);
    rig.segments[0].duct_size_mm = surveyed(75);
    ck_assert_ptr_null(strstr(plainly(mechanics_check(&rig, 16, "duct-fill:path").text), "15 %"));
    mechanics_bend(&rig, 0, 90, 0.6);
    const struct Check check = mechanics_check(&rig, 16, "duct-fill:path");
    ck_assert_int_eq(check.result, CHECK_PASS);
    ck_assert_double_eq_tol(check.value, 29.8, 0.05);
    text_has(plainly(check.text), "15 %");
    mechanics_free(&rig);
}
END_TEST

START_TEST(too_much_for_any)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    for (int i = 0; i < 5; i++) {
        static const char *const names[] = {"b", "c", "d", "e", "f"};
        mechanics_add_run(&rig, names[i], RUN_POWER, CABLE_BS5467, 4)->cable.diameter_mm = surveyed(60);
    }
    mechanics_fails(&rig, 10, "duct-fill:path");
    text_has(plainly(mechanics_check(&rig, 10, "duct-fill:path").text), "a duct each");
    mechanics_free(&rig);
}
END_TEST

Suite *suite_mechanics_ducts(void)
{
    Suite *suite = suite_create("check of ducts");
    TCase *tests = tcase_create("ducts");
    tcase_add_test(tests, one_cable);
    tcase_add_test(tests, ordinary_duct);
    tcase_add_test(tests, as_sure_as_the_bore_is);
    tcase_add_test(tests, ordinary_duct_with_two_bends);
    tcase_add_test(tests, three_alike);
    tcase_add_test(tests, one_more_makes_no_room);
    tcase_add_test(tests, one_more_does_not_free_three);
    tcase_add_test(tests, sizes_of_the_others);
    tcase_add_test(tests, what_is_not_known);
    tcase_add_test(tests, cables_in_the_duct_already);
    tcase_add_test(tests, words_on_bends);
    tcase_add_test(tests, too_much_for_any);
    suite_add_tcase(suite, tests);
    return suite;
}
