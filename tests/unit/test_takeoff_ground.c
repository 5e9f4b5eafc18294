/* Trenches, ducts and holes. */
#include "takeoff_rig.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* A worked example of the trade (30 m of 63 mm duct, trench 300 mm wide, 600 mm of cover, 75 mm of sand under and
 * over): trench 0.738 m deep, sand 1.823 m3 in place, 2.49 m3 of loose spoil, 2.10 m3 = 3.5 t of sand to buy, 5 bulk
 * bags. Its source: a duct and trench note with the sum shown; bulking 1.3, settling 15 %, 1650 kg/m3 from memory. */
START_TEST(worked_trench)
{
    struct TakeOff takeoff = takeoff_of(
        "- {name: a, way: duct, length: 30 m, duct: {size: 63 mm}, depth: 600 mm, bedding: yes, under: drive, "
        "dig: hand}\n");
    const struct PartsWay *way = takeoff_way(&takeoff, "a", -1);
    ck_assert_double_eq_tol(way->trench_depth_m, 0.738, 1e-9);
    ck_assert_double_eq_tol(way->trench_width_m, 0.3, 1e-9);
    ck_assert_double_eq_tol(way->sand_m3, 1.823, 0.0006);
    ck_assert_double_eq_tol(way->spoil_m3, 2.49, 0.006);
    const struct Part *sand = takeoff_part(&takeoff, "sand");
    ck_assert_double_eq_tol(sand->quantity, 2.10 * 1650, 12);
    ck_assert_int_eq(sand->packs, 5);
    ck_assert_double_eq(takeoff_needed(&takeoff, "warning-tape"), 30);
    ck_assert_double_eq(takeoff_part(&takeoff, "warning-tape")->quantity, 32); /* 5 % more */
    takeoff_free(&takeoff);
}
END_TEST

/* A duct is laid on the trench's own bottom unless sand is asked for; cable laid direct always lies in sand unless the
 * survey says otherwise. A bucket of 300 mm in place of 150 mm: 20 x (0.3 x 0.1695 - 0.000299) = 1.011 m3. Tape always.
 */
START_TEST(sand_where_cable_lies_in_it)
{
    static const struct {
        const char *keys;
        double sand_m3, width_m, depth_m;
    } rows[] = {
        {"way: duct, duct: {size: 63 mm}", 0, 0.3, 0.663},
        {"way: duct, duct: {size: 63 mm}, bedding: yes", 20 * (0.3 * 0.213 - 0.0031172), 0.3, 0.738},
        {"way: buried", 20 * (0.3 * 0.1695 - 0.00029865), 0.3, 0.6945},
        {"way: buried, bedding: no", 0, 0.3, 0.6195},
        {"way: buried, dig: machine", 20 * (0.15 * 0.1695 - 0.00029865), 0.15, 0.6945},
        {"way: buried, dig: machine, trench-width: 300 mm", 20 * (0.3 * 0.1695 - 0.00029865), 0.3, 0.6945},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char segments[160];
        snprintf(segments, sizeof segments, "- {name: a, length: 20 m, depth: 600 mm, under: path, %s}\n",
                 rows[i].keys);
        struct TakeOff takeoff = takeoff_of(segments);
        const struct PartsWay *way = takeoff_way(&takeoff, "a", -1);
        ck_assert_double_eq_tol(way->sand_m3, rows[i].sand_m3, 1e-5);
        ck_assert_double_eq_tol(way->trench_width_m, rows[i].width_m, 1e-9);
        ck_assert_double_eq_tol(way->trench_depth_m, rows[i].depth_m, 1e-9);
        ck_assert_int_eq(takeoff_part(&takeoff, "sand") != NULL, rows[i].sand_m3 > 0);
        ck_assert_int_eq(takeoff_says(way, "No sand"), !(rows[i].sand_m3 > 0));
        ck_assert_double_eq(takeoff_needed(&takeoff, "warning-tape"), 20);
        takeoff_free(&takeoff);
    }
}
END_TEST

/* Two ducts in one trench: two ducts, one trench of 300 + 150 mm by hand, one tape, and the sand that was asked for
 * once: 20 x (0.45 x 0.213 - 2 x 0.0031172) = 1.7923 m3. Whichever of them the file has first. */
START_TEST(two_ducts_in_one_trench)
{
    static const char *const segments[] = {
        "- {name: path, way: duct, length: 20 m, duct: {size: 63 mm}, depth: 600 mm, bedding: yes, under: path, dig: "
        "hand}\n",
        "- {name: twin, way: duct, length: 20 m, duct: {size: 63 mm}, depth: 600 mm, under: path, trench: path}\n"};
    static const char runs[] =
        "wend: 1\njob: {title: t}\nsupply: {system: TN-S, loop-impedance: 0.3 ohm}\nruns:\n"
        "  feeder: {load: {current: 6 A}, cable: {type: BS5467, cores: 3, size: 10 mm2}, along: [path]}\n"
        "  link: {kind: data, cable: {type: EN50288, diameter: 8 mm}, along: [twin]}\nsegments:\n";
    char text[1024];
    snprintf(text, sizeof text, "%s%s%s", runs, segments[_i], segments[1 - _i]);
    struct TakeOff takeoff = takeoff_text(text);
    const struct PartsWay *way = takeoff_way(&takeoff, "path", -1);
    ck_assert_double_eq_tol(way->trench_width_m, 0.45, 1e-9);
    ck_assert_double_eq_tol(way->trench_depth_m, 0.738, 1e-9);
    ck_assert_double_eq_tol(way->sand_m3, 20 * (0.45 * 0.213 - 2 * 0.0031172), 1e-4);
    ck_assert_double_eq(takeoff_needed(&takeoff, "warning-tape"), 20);
    ck_assert_double_eq_tol(takeoff_needed(&takeoff, "sand"), way->sand_m3 * 1650, 0.01);
    ck_assert_double_eq(takeoff_needed(&takeoff, "duct-63-coil-25"), 40);
    ck_assert_double_eq(takeoff_needed(&takeoff, "duct-bung-63"), 4);
    const struct PartsWay *twin = takeoff_way(&takeoff, "twin", -1);
    ck_assert_double_le(twin->trench_m, 0);
    ck_assert(takeoff_says(twin, "Lies in the trench of path"));
    takeoff_free(&takeoff);
}
END_TEST

/* Length and 5 %, in a coil that holds it; rope 3 m longer than the duct; a bung at each end. */
static const struct {
    const char *segments;
    const char *code;
    double quantity, packs, couplers, bends, rope, bungs;
} ducts[] = {
    {"- {name: a, way: duct, length: 20 m, duct: {size: 63 mm}}\n", "duct-63-coil-25", 21, 1, 0, 0, 23, 2},
    {"- {name: a, way: duct, length: 24 m, duct: {size: 63 mm}}\n", "duct-63-coil-50", 26, 1, 0, 0, 27, 2},
    {"- {name: a, way: duct, length: 60 m, duct: {size: 63 mm}, bends: 2}\n", "duct-63-coil-50", 63, 2, 5, 2, 63, 2},
    /* one duct that was surveyed in two stretches */
    {"- {name: a, way: duct, length: 14 m, duct: {size: 63 mm}}\n- {name: b, way: duct, length: 10 m, duct: {size: 63 "
     "mm}}\n",
     "duct-63-coil-50", 26, 1, 0, 0, 27, 2},
    /* two ducts with a wall between them */
    {"- {name: a, way: duct, length: 14 m, duct: {size: 63 mm}}\n- {name: w, way: wall, length: 1 m}\n- {name: b, way: "
     "duct, "
     "length: 7 m, duct: {size: 63 mm}}\n",
     "duct-63-coil-25", 23, 1, 0, 0, 27, 4},
    /* rigid lengths of 6 m: 21 m / 6 m = 4 of them, three joints */
    {"- {name: a, way: duct, length: 20 m, duct: {size: 110 mm}}\n", "duct-110-length-6", 21, 4, 3, 0, 23, 2},
};

START_TEST(new_duct)
{
    struct TakeOff takeoff = takeoff_of(ducts[_i].segments);
    const struct Part *duct = takeoff_part(&takeoff, ducts[_i].code);
    const char *size = strstr(ducts[_i].code, "110") != NULL ? "110" : "63";
    char code[64];
    ck_assert_ptr_nonnull(duct);
    ck_assert_double_eq(duct->quantity, ducts[_i].quantity);
    ck_assert_int_eq(duct->packs, (int)ducts[_i].packs);
    snprintf(code, sizeof code, "duct-coupler-%s", size);
    ck_assert_double_eq(takeoff_needed(&takeoff, code), ducts[_i].couplers);
    if (ducts[_i].couplers > 0) {
        ck_assert_double_eq(takeoff_part(&takeoff, code)->quantity, ducts[_i].couplers + 1);
    }
    snprintf(code, sizeof code, "duct-bend-%s-90", size);
    ck_assert_double_eq(takeoff_needed(&takeoff, code), ducts[_i].bends);
    ck_assert_double_eq(takeoff_needed(&takeoff, "draw-rope"), ducts[_i].rope);
    snprintf(code, sizeof code, "duct-bung-%s", size);
    ck_assert_double_eq(takeoff_needed(&takeoff, code), ducts[_i].bungs);
    /* drawn in dry with force to spare, but for 60 m round two bends */
    ck_assert((takeoff_part(&takeoff, "pulling-compound") != NULL) == (_i == 2));
    takeoff_free(&takeoff);
}
END_TEST

/* A litre to 30 m where lubricant is wanted, or may be. A friction that was surveyed does not say with what. Dry round
 * four bends near the far end is too much for the cable. */
START_TEST(compound_where_lubricant_is_wanted)
{
    static const struct {
        const char *pull, *segments;
        double litres;
    } rows[] = {
        {"", "- {name: a, way: duct, length: 35 m, duct: {size: 63 mm}}\n", 0},
        {"    pull: {lubricant: no}\n", "- {name: a, way: duct, length: 35 m, duct: {size: 63 mm}}\n", 0},
        {"    pull: {lubricant: yes}\n", "- {name: a, way: duct, length: 35 m, duct: {size: 63 mm}}\n", 2},
        {"    pull: {friction: 0.3}\n", "- {name: a, way: duct, length: 35 m, duct: {size: 63 mm}}\n", 2},
        {"    pull: {friction: 0.3, lubricant: no}\n", "- {name: a, way: duct, length: 35 m, duct: {size: 63 mm}}\n",
         0},
        {"", "- {name: a, way: duct, length: 35 m, bends: 6, duct: {size: 63 mm}}\n", 2},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char run[200];
        snprintf(run, sizeof run, "    load: {current: 10 A}\n    cable: {type: BS5467, cores: 3, size: 10 mm2}\n%s",
                 rows[i].pull);
        struct TakeOff takeoff = takeoff_with(run, rows[i].segments, "");
        ck_assert_msg(takeoff_needed(&takeoff, "pulling-compound") >= rows[i].litres &&
                          takeoff_needed(&takeoff, "pulling-compound") <= rows[i].litres,
                      "row %zu: %g", i, takeoff_needed(&takeoff, "pulling-compound"));
        takeoff_free(&takeoff);
    }
}
END_TEST

/* A duct that is there already needs no trench: bungs, and a rope where none lies in it. */
START_TEST(existing_duct)
{
    for (int roped = 0; roped <= 1; roped++) {
        struct TakeOff takeoff =
            takeoff_of(roped ? "- {name: a, way: duct, length: 20 m, duct: {size: 63 mm, laid: existing, rope: yes}}\n"
                             : "- {name: a, way: duct, length: 20 m, duct: {size: 63 mm, laid: existing}}\n");
        int ground = 0;
        for (int i = 0; i < takeoff.parts->count; i++) {
            ground += takeoff.parts->parts[i].aisle == AISLE_GROUNDWORK;
        }
        ck_assert_int_eq(ground, roped ? 1 : 2);
        ck_assert_double_eq(takeoff_needed(&takeoff, "duct-bung-63"), 2);
        ck_assert_double_eq(takeoff_needed(&takeoff, "draw-rope"), roped ? 0 : 23);
        ck_assert(takeoff_way(&takeoff, "a", -1)->trench_m <= 0);
        takeoff_free(&takeoff);
    }
}
END_TEST

/* A pit where two stretches of one duct meet is one pit, whichever of them says so, and opens two ends more. */
START_TEST(draw_pits)
{
    static const struct {
        const char *first, *second;
        double pits, bungs;
    } rows[] = {{"none", "none", 0, 2}, {"end", "none", 1, 4},  {"none", "start", 1, 4},
                {"end", "start", 1, 4}, {"both", "both", 3, 4}, {"start", "end", 2, 2}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char segments[256];
        snprintf(segments, sizeof segments,
                 "- {name: a, way: duct, length: 14 m, duct: {size: 63 mm}, draw-pits: %s}\n"
                 "- {name: b, way: duct, length: 10 m, duct: {size: 63 mm}, draw-pits: %s}\n",
                 rows[i].first, rows[i].second);
        struct TakeOff takeoff = takeoff_of(segments);
        ck_assert_double_eq(takeoff_needed(&takeoff, "draw-pit"), rows[i].pits);
        ck_assert_double_eq(takeoff_needed(&takeoff, "duct-bung-63"), rows[i].bungs);
        takeoff_free(&takeoff);
    }
}
END_TEST

/* Shared trench and duct are counted once; each further cable laid direct widens the trench. */
START_TEST(shared_once)
{
    static const char head[] = "wend: 1\njob: {title: t}\nsupply: {system: TN-S, loop-impedance: 0.3 ohm}\nruns:\n"
                               "  one: {load: {current: 9 A}, cable: {type: BS5467, cores: 3, size: 10 mm2}}\n";
    static const char more[] = "  link: {kind: data, cable: {type: EN50288, diameter: 7 mm}}\n";
    static const char rest[] = "segments:\n- {name: d, way: duct, length: 10 m, duct: {size: 63 mm}}\n"
                               "- {name: b, way: buried, length: 10 m, dig: machine, under: bed}\n";
    char text[1024];
    snprintf(text, sizeof text, "%s%s", head, rest);
    struct TakeOff alone = takeoff_text(text);
    snprintf(text, sizeof text, "%s%s%s", head, more, rest);
    struct TakeOff both = takeoff_text(text);
    static const char *const same[] = {"duct-63-coil-25", "warning-tape", "draw-rope", "duct-bung-63", "cable-cover"};
    for (int i = 0; i < 5; i++) {
        ck_assert(takeoff_needed(&alone, same[i]) > 0);
        ck_assert_double_eq(takeoff_needed(&alone, same[i]), takeoff_needed(&both, same[i]));
    }
    ck_assert_double_eq_tol(takeoff_way(&alone, "b", -1)->trench_width_m, 0.15, 1e-9);
    ck_assert_double_eq_tol(takeoff_way(&both, "b", -1)->trench_width_m, 0.3, 1e-9);
    ck_assert_double_eq_tol(takeoff_way(&both, "d", -1)->trench_width_m, 0.3, 1e-9);
    ck_assert(takeoff_says(takeoff_way(&both, "d", -1), "2 cables are drawn in"));
    takeoff_free(&alone);
    takeoff_free(&both);
}
END_TEST

/* Cover against what lies above: 450 mm under lawn and path, 600 mm under drive and bed (a network operator's manual).
 */
START_TEST(cover_by_what_lies_above)
{
    static const struct {
        const char *under;
        int depth_mm;
        bool less;
    } rows[] = {{"lawn", 450, false},  {"lawn", 440, true}, {"path", 450, false}, {"drive", 590, true},
                {"drive", 600, false}, {"bed", 500, true},  {"bed", 1300, false}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char segments[128];
        snprintf(segments, sizeof segments, "- {name: a, way: buried, length: 9 m, under: %s, depth: %d mm}\n",
                 rows[i].under, rows[i].depth_mm);
        struct TakeOff takeoff = takeoff_of(segments);
        const struct PartsWay *way = takeoff_way(&takeoff, "a", -1);
        ck_assert_int_eq(takeoff_says(way, "522.8.10"), rows[i].less);
        ck_assert_int_eq(takeoff_says(way, "Support the sides"), rows[i].depth_mm > 1200);
        takeoff_free(&takeoff);
    }
}
END_TEST

/* A 19.5 mm cable and a fifth is 23.4 mm: the 25 mm drill. In a sleeve of bore 24 mm, 32 mm outside, the 35 mm one. */
static const struct {
    const char *segments;
    double hole_mm, drill_mm, sleeve_m;
    const char *seal;
} holes[] = {
    {"- {name: h, way: through-wall, length: 300 mm, thickness: 250 mm}\n", 25, 310, 0, "sealant"},
    {"- {name: h, way: through-wall, length: 300 mm, thickness: 250 mm, sleeve: yes}\n", 35, 310, 0.25, "sealant"},
    {"- {name: h, way: through-wall, length: 300 mm, fire-barrier: yes}\n", 25, 360, 0, "fire-seal"},
    /* one hole surveyed as two leaves */
    {"- {name: h, way: through-wall, length: 150 mm}\n- {name: i, way: through-wall, length: 150 mm}\n", 25, 360, 0,
     "sealant"},
};

START_TEST(through_the_wall)
{
    struct TakeOff takeoff = takeoff_of(holes[_i].segments);
    const struct PartsWay *way = takeoff_way(&takeoff, "h", 0);
    ck_assert_double_eq(way->hole_mm, holes[_i].hole_mm);
    ck_assert_double_eq(way->drill_mm, holes[_i].drill_mm);
    ck_assert_double_eq_tol(takeoff_needed(&takeoff, "wall-sleeve-32"), holes[_i].sleeve_m, 1e-9);
    ck_assert_ptr_nonnull(takeoff_part(&takeoff, holes[_i].seal));
    ck_assert(takeoff_says(way, "falling 1 in 40 to the outside"));
    takeoff_free(&takeoff);
}
END_TEST

/* What the seal fills is the ring round the cable, 25 mm deep at both faces: (25^2 - 19.5^2) x pi / 4 x 50 mm = 9.6 ml.
 */
START_TEST(seal_by_volume)
{
    struct TakeOff takeoff = takeoff_of("- {name: h, way: through-wall, length: 300 mm}\n");
    ck_assert_double_eq_tol(takeoff_needed(&takeoff, "sealant"), 9.61 / 310, 0.0006);
    ck_assert_double_eq(takeoff_part(&takeoff, "sealant")->quantity, 1);
    takeoff_free(&takeoff);
    takeoff = takeoff_with("    load: {current: 6 A}\n    cable: {type: BS6346, cores: 3, size: 4 mm2}\n",
                           "- {name: h, way: through-wall, length: 300 mm}\n", "");
    ck_assert(takeoff_notes(&takeoff, "The hole is not worked out"));
    ck_assert_ptr_null(takeoff_part(&takeoff, "sealant"));
    takeoff_free(&takeoff);
}
END_TEST

/* A sleeve says nothing of a cable whose diameter nobody knows; the fire wall is made good all the same. */
START_TEST(unknown_cable_in_a_sleeve)
{
    struct TakeOff takeoff =
        takeoff_with("    load: {current: 6 A}\n    cable: {type: BS6346, cores: 3, size: 4 mm2}\n",
                     "- {name: h, way: through-wall, length: 300 mm, sleeve: yes, fire-barrier: yes}\n", "");
    ck_assert(takeoff_notes(&takeoff, "nor its sleeve and its sealant"));
    ck_assert_ptr_null(takeoff_part(&takeoff, "wall-sleeve-25"));
    ck_assert_double_eq(takeoff_way(&takeoff, "h", 0)->hole_mm, 0);
    ck_assert_double_eq(takeoff_needed(&takeoff, "fire-seal"), 1);
    ck_assert(takeoff_says(takeoff_way(&takeoff, "h", 0), "Fire barrier"));
    takeoff_free(&takeoff);
}
END_TEST

/* The trench of a cable whose diameter nobody knows leaves it out, and the list says so. */
START_TEST(unknown_cable_in_the_ground)
{
    static const char ground[] = "- {name: g, way: buried, length: 10 m, under: lawn}\n";
    struct TakeOff takeoff =
        takeoff_with("    load: {current: 6 A}\n    cable: {type: BS6346, cores: 3, size: 4 mm2}\n", ground, "");
    ck_assert(takeoff_notes(&takeoff, "leave out a duct or cable whose size is not known"));
    takeoff_free(&takeoff);
    takeoff = takeoff_of(ground);
    ck_assert(!takeoff_notes(&takeoff, "leave out"));
    takeoff_free(&takeoff);
}
END_TEST

Suite *suite_takeoff_ground(void)
{
    Suite *suite = suite_create("ground and walls");
    TCase *tests = tcase_create("ground");
    tcase_add_test(tests, worked_trench);
    tcase_add_loop_test(tests, two_ducts_in_one_trench, 0, 2);
    tcase_add_test(tests, sand_where_cable_lies_in_it);
    tcase_add_loop_test(tests, new_duct, 0, (int)(sizeof ducts / sizeof ducts[0]));
    tcase_add_test(tests, compound_where_lubricant_is_wanted);
    tcase_add_test(tests, existing_duct);
    tcase_add_test(tests, draw_pits);
    tcase_add_test(tests, shared_once);
    tcase_add_test(tests, cover_by_what_lies_above);
    tcase_add_loop_test(tests, through_the_wall, 0, (int)(sizeof holes / sizeof holes[0]));
    tcase_add_test(tests, seal_by_volume);
    tcase_add_test(tests, unknown_cable_in_a_sleeve);
    tcase_add_test(tests, unknown_cable_in_the_ground);
    suite_add_tcase(suite, tests);
    return suite;
}
