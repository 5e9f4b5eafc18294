/* Conduit, trunking, tray, ladder and catenary. */
#include "takeoff_rig.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* Armoured cable is not drawn into conduit or trunking: what they hold here is round cable of 11 mm. */
static struct TakeOff inner(const char *segments)
{
    return takeoff_with(
        "    load: {current: 6 A}\n    cable: {type: BS6004-multicore, cores: 3, size: 4 mm2, diameter: 11 mm}\n",
        segments, "");
}

/* Plastic conduit 25 mm, 13 m with three right angles: five lengths of 3 m, saddles by Table D3 at 1.5 m, two more at
 * each bend, seven joints between five lengths and three bends, a box for the 10 m and a box for the two right angles
 * that are passed, adaptors at every end, two expansion couplers. */
START_TEST(conduit)
{
    struct TakeOff takeoff =
        inner("- {name: a, way: conduit, length: 13 m, size: 25 mm, material: plastic, bends: 3, fixed-to: brick}\n");
    ck_assert_double_eq(takeoff_needed(&takeoff, "conduit-plastic-25"), 13);
    ck_assert_int_eq(takeoff_part(&takeoff, "conduit-plastic-25")->packs, 5);
    ck_assert_double_eq(takeoff_needed(&takeoff, "conduit-coupler-plastic-25"), 7);
    ck_assert_double_eq(takeoff_needed(&takeoff, "conduit-bend-plastic-25"), 3);
    ck_assert_double_eq(takeoff_needed(&takeoff, "conduit-box-plastic-25"), 2);
    ck_assert_double_eq(takeoff_needed(&takeoff, "conduit-adaptor-plastic-25"), 6);
    ck_assert_double_eq(takeoff_needed(&takeoff, "conduit-expansion-plastic-25"), 2);
    ck_assert_double_eq(takeoff_needed(&takeoff, "conduit-saddle-25"),
                        10 + 6 + 4); /* 13 / 1.5 = 9 and one; two a bend and a box */
    ck_assert_double_eq(takeoff_needed(&takeoff, "plug-7"), 20);
    ck_assert_double_eq(takeoff_needed(&takeoff, "conduit-bush-plastic-25"), 0);
    ck_assert_double_eq(takeoff_needed(&takeoff, "solvent-cement"), 1);
    takeoff_free(&takeoff);
}
END_TEST

/* Pieces are lengths and made bends, and every two of them are joined: 5.4 m and two bends are four pieces. An end at a
 * board takes an adaptor or a flange, an end that the cable only leaves by takes a bush or a cap. Steel is not glued,
 * and 3.6 m of it are told to come in one length of 3.75 m as well. */
START_TEST(pieces_and_entries)
{
    static const struct {
        const char *segments, *kind;
        double joints, boards, open;
        const char *board, *end;
    } rows[] = {
        {"- {name: c, way: conduit, length: 5.4 m, size: 32 mm, material: plastic, bends: 2}\n", "plastic-32", 3, 2, 0,
         "conduit-adaptor", "conduit-bush"},
        {"- {name: c, way: conduit, length: 5.4 m, size: 32 mm, material: plastic, bends: 2}\n- {name: w, way: wall, "
         "length: "
         "1 m}\n",
         "plastic-32", 3, 1, 1, "conduit-adaptor", "conduit-bush"},
        {"- {name: w, way: wall, length: 1 m}\n- {name: c, way: conduit, length: 3.6 m, size: 32 mm, material: "
         "steel}\n- "
         "{name: v, way: wall, length: 1 m}\n",
         "steel-32", 1, 0, 2, "conduit-adaptor", "conduit-bush"},
        {"- {name: c, way: trunking, length: 5.4 m, size: 50 x 50 mm, bends: 1}\n- {name: w, way: wall, length: 1 m}\n",
         "steel-50x50", 2, 1, 1, "trunking-flange", "trunking-end"},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct TakeOff takeoff = inner(rows[i].segments);
        char code[64];
        snprintf(code, sizeof code, "%.*s-coupler-%s", (int)strcspn(rows[i].end, "-"), rows[i].end, rows[i].kind);
        ck_assert_double_eq(takeoff_needed(&takeoff, code), rows[i].joints);
        snprintf(code, sizeof code, "%s-%s", rows[i].board, rows[i].kind);
        ck_assert_double_eq(takeoff_needed(&takeoff, code), rows[i].boards);
        snprintf(code, sizeof code, "%s-%s", rows[i].end, rows[i].kind);
        ck_assert_double_eq(takeoff_needed(&takeoff, code), rows[i].open);
        ck_assert_int_eq(takeoff_part(&takeoff, "solvent-cement") != NULL, i < 2);
        takeoff_free(&takeoff);
    }
    struct TakeOff steel = inner(rows[2].segments);
    ck_assert_ptr_nonnull(strstr(takeoff_note(&steel, takeoff_part(&steel, "conduit-steel-32")), "lengths of 3.75 m"));
    takeoff_free(&steel);
}
END_TEST

/* Conduit and trunking that were surveyed in two stretches are one: no part differs. */
START_TEST(cut_in_two_is_one)
{
    static const char *const rows[][2] = {
        {"- {name: a, way: conduit, length: 13 m, size: 25 mm, material: plastic, bends: 3, fixed-to: brick}\n",
         "- {name: a, way: conduit, length: 4.7 m, size: 25 mm, material: plastic, bends: 1, fixed-to: brick}\n"
         "- {name: b, way: conduit, length: 8.3 m, size: 25 mm, material: plastic, bends: 2, fixed-to: brick}\n"},
        {"- {name: a, way: trunking, length: 7 m, size: 50 x 50 mm, bends: 1, fixed-to: timber}\n",
         "- {name: a, way: trunking, length: 6.9 m, size: 50 x 50 mm, fixed-to: timber}\n"
         "- {name: b, way: trunking, length: 0.1 m, size: 50 x 50 mm, bends: 1, fixed-to: timber}\n"},
    };
    for (int i = 0; i < 2; i++) {
        struct TakeOff whole = inner(rows[i][0]);
        struct TakeOff cut = inner(rows[i][1]);
        ck_assert_int_eq(whole.parts->count, cut.parts->count);
        for (int k = 0; k < whole.parts->count; k++) {
            const struct Part *part = &whole.parts->parts[k];
            ck_assert_double_eq_tol(takeoff_needed(&cut, part->code), part->needed, 1e-9);
        }
        takeoff_free(&whole);
        takeoff_free(&cut);
    }
}
END_TEST

/* The limits themselves: 10 m and two right angles are within them. */
START_TEST(conduit_boxes_by_limit)
{
    static const struct {
        const char *rest;
        double boxes;
    } rows[] = {{"length: 10 m, bends: 2", 0},   {"length: 10.1 m, bends: 2", 1},
                {"length: 10 m, bends: 3", 1},   {"length: 20 m, bends: 0", 1},
                {"length: 20.1 m, bends: 0", 2}, {"length: 5 m, bends: [{angle: 45 deg}, {angle: 150 deg}]", 1}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char segments[160];
        snprintf(segments, sizeof segments, "- {name: a, way: conduit, size: 20 mm, material: steel, %s}\n",
                 rows[i].rest);
        struct TakeOff takeoff = inner(segments);
        ck_assert_double_eq(takeoff_needed(&takeoff, "conduit-box-steel-20"), rows[i].boxes);
        ck_assert_double_eq(takeoff_needed(&takeoff, "conduit-expansion-steel-20"), 0);
        takeoff_free(&takeoff);
    }
}
END_TEST

/* Trunking 50 x 50: Table D4 at 1.25 m for insulating, the closer of the two, since the survey does not say. */
START_TEST(trunking)
{
    struct TakeOff takeoff = inner("- {name: a, way: trunking, length: 7 m, size: 50 x 50 mm, fixed-to: timber}\n");
    ck_assert_double_eq(takeoff_needed(&takeoff, "trunking-steel-50x50"), 7);
    ck_assert_int_eq(takeoff_part(&takeoff, "trunking-steel-50x50")->packs, 3);
    ck_assert_double_eq(takeoff_needed(&takeoff, "trunking-coupler-steel-50x50"), 2);
    ck_assert_double_eq(takeoff_needed(&takeoff, "trunking-flange-steel-50x50"), 2); /* a board at either end */
    ck_assert_double_eq(takeoff_needed(&takeoff, "trunking-end-steel-50x50"), 0);
    ck_assert_double_eq(takeoff_needed(&takeoff, "screw-wood-10x40-zinc"), 7); /* 7 / 1.25 = 6 and one */
    takeoff_free(&takeoff);
    takeoff = inner("- {name: a, way: trunking, length: 7 m, size: 100.26 x 50.046 mm}\n"); /* told to four figures */
    bool told = false;
    for (int i = 0; i < takeoff.parts->count; i++) {
        told = told || strstr(takeoff_described(&takeoff, &takeoff.parts->parts[i]), "100.3x50.05 mm") != NULL;
    }
    ck_assert(told);
    takeoff_free(&takeoff);
}
END_TEST

START_TEST(tray_and_ladder)
{
    static const char *const ways[] = {"tray", "ladder"};
    for (int i = 0; i < 2; i++) {
        char segments[128];
        char code[64];
        snprintf(segments, sizeof segments, "- {name: a, way: %s, length: 6 m, bends: 1, fixed-to: concrete}\n",
                 ways[i]);
        struct TakeOff takeoff = takeoff_of(segments);
        snprintf(code, sizeof code, "%s-steel", ways[i]);
        ck_assert_double_eq(takeoff_needed(&takeoff, code), 6);
        ck_assert_int_eq(takeoff_part(&takeoff, code)->packs, 2);
        snprintf(code, sizeof code, "%s-support", ways[i]);
        ck_assert_double_eq(takeoff_needed(&takeoff, code), 8);            /* 6 / 1.2 and one; two at the bend */
        ck_assert_double_eq(takeoff_needed(&takeoff, "anchor-m6x50"), 16); /* two a support */
        /* 6 / 0.4 and one, two at the bend: tied to the tray, cleated to the rungs, and nothing screwed */
        ck_assert_double_eq(takeoff_needed(&takeoff, i == 0 ? "tie-stainless" : "cleat-rung-19.5"), 18);
        ck_assert_double_eq(takeoff_needed(&takeoff, "fixing-hook-8"), 0);
        snprintf(code, sizeof code, "%s-coupler-steel", ways[i]);
        ck_assert_double_eq(takeoff_needed(&takeoff, code), 2); /* two lengths and a bend */
        takeoff_free(&takeoff);
    }
}
END_TEST

/* The width is part of the article. What others lie in is there already unless it is surveyed as new, and the other way
 * about. */
START_TEST(width_and_whether_it_is_there)
{
    struct TakeOff wide = takeoff_of("- {name: a, way: tray, length: 6 m, size: 150 mm, fixed-to: brick}\n");
    ck_assert_double_eq(takeoff_needed(&wide, "tray-steel-150"), 6);
    ck_assert_ptr_nonnull(strstr(takeoff_described(&wide, takeoff_part(&wide, "tray-steel-150")), "150 mm"));
    takeoff_free(&wide);
    struct TakeOff fresh = takeoff_of("- {name: a, way: ladder, length: 6 m, laid: new, beside: {circuits: 2}}\n");
    ck_assert_double_eq(takeoff_needed(&fresh, "ladder-steel"), 6);
    takeoff_free(&fresh);
    struct TakeOff old = takeoff_of("- {name: a, way: ladder, length: 6 m, laid: existing}\n");
    ck_assert_double_eq(takeoff_needed(&old, "ladder-steel"), 0);
    ck_assert(takeoff_notes(&old, "there already and not counted: a."));
    takeoff_free(&old);
}
END_TEST

/* EN 13411-5: 3 grips an eye for 6 mm (the row of 6.5), 4 for 8 mm; not on strand; asked where nobody said which. */
START_TEST(grips_by_the_wire)
{
    static const struct {
        const char *keys, *code;
        double grips;
        bool asked;
    } rows[] = {
        {"wire: rope, wire-size: 6 mm", "catenary-grip-6", 6, false},
        {"wire: rope, wire-size: 8 mm", "catenary-grip-8", 8, false},
        {"wire: strand, wire-size: 8 mm", "catenary-dead-end-8", 2, false},
        {"wire-size: 6 mm", "catenary-grip-6", 6, true},
        {"wire: rope", "catenary-grip", 8, true},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char segments[120];
        snprintf(segments, sizeof segments, "- {name: a, way: catenary, length: 9 m, %s}\n", rows[i].keys);
        struct TakeOff takeoff = takeoff_of(segments);
        ck_assert_double_eq(takeoff_needed(&takeoff, rows[i].code), rows[i].grips);
        ck_assert_int_eq(takeoff_notes(&takeoff, "ASK which wire"), rows[i].asked);
        takeoff_free(&takeoff);
    }
}
END_TEST

START_TEST(catenary)
{
    struct TakeOff takeoff =
        takeoff_of("- {name: a, way: catenary, length: 9 m}\n- {name: b, way: catenary, length: 3 m}\n");
    ck_assert_double_eq(takeoff_needed(&takeoff, "catenary-wire"), 13); /* the span and half a metre at each end */
    ck_assert_double_eq(takeoff_needed(&takeoff, "catenary-eye"), 2);
    ck_assert_double_eq(takeoff_needed(&takeoff, "catenary-thimble"), 2);
    ck_assert_double_eq(takeoff_needed(&takeoff, "catenary-grip"), 8);
    ck_assert_double_eq(takeoff_needed(&takeoff, "catenary-strainer"), 1);
    ck_assert_double_eq(takeoff_needed(&takeoff, "tie-stainless"), 31); /* 12 / 0.4 and one */
    ck_assert_int_eq(takeoff_way(&takeoff, "a", 0)->fixings + takeoff_way(&takeoff, "b", 0)->fixings, 31);
    takeoff_free(&takeoff);
}
END_TEST

/* What holds other circuits is there already: nothing of it is bought, the cable's own fixings are. */
START_TEST(there_already)
{
    static const char *const segments[] = {"way: conduit, size: 32 mm", "way: trunking, size: 50 x 50 mm", "way: tray",
                                           "way: ladder", "way: catenary"};
    for (int i = 0; i < 5; i++) {
        char text[160];
        snprintf(text, sizeof text, "- {name: a, %s, length: 6 m, beside: {circuits: 1}}\n", segments[i]);
        struct TakeOff takeoff = inner(text);
        for (int k = 0; k < takeoff.parts->count; k++) {
            ck_assert_int_ne((int)takeoff.parts->parts[k].aisle, AISLE_CONTAINMENT);
        }
        ck_assert(takeoff_notes(&takeoff, "there already and not counted: a."));
        takeoff_free(&takeoff);
    }
}
END_TEST

/* Three trays of 2 m that do not meet want three lengths of 3 m, though they come to 6 m; of 1.5 m two are enough.
 * Three ducts of 15 m, 15.75 m with their spare, want three coils of 25 m; one of 45 m (47.25 m) comes in a coil of 50
 * m. */
START_TEST(what_is_left_of_a_length)
{
    static const struct {
        const char *way, *code;
        double length_m, packs, quantity;
    } rows[] = {
        {"tray", "tray-steel", 2, 3, 9},        {"tray", "tray-steel", 1.5, 2, 4.5},
        {"tray", "tray-steel", 4, 4, 12}, /* a length each, and 1 m more each: 3 + 1 */
        {"duct", "duct-63-coil-25", 15, 3, 75}, {"duct", "duct-110-length-6", 2, 2, 7},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char segments[512];
        int at = 0;
        for (int k = 0; k < 3; k++) {
            const char *duct = strncmp(rows[i].code, "duct", 4) != 0 ? ""
                               : strstr(rows[i].code, "110") != NULL ? ", duct: {size: 110 mm}"
                                                                     : ", duct: {size: 63 mm}";
            at += snprintf(segments + at, sizeof segments - (size_t)at,
                           "- {name: a%d, way: %s, length: %g m%s}\n- {name: b%d, way: beam, length: 1 m}\n", k,
                           rows[i].way, rows[i].length_m, duct, k);
        }
        struct TakeOff takeoff = takeoff_of(segments);
        const struct Part *part = takeoff_part(&takeoff, rows[i].code);
        ck_assert_ptr_nonnull(part);
        ck_assert_msg(part->packs == (int)rows[i].packs, "row %d: %d", (int)i, part->packs);
        ck_assert_double_eq_tol(part->quantity, rows[i].quantity, 1e-9);
        ck_assert_int_eq(strstr(takeoff_note(&takeoff, part), "do not meet") != NULL, i == 0 || i == 3);
        takeoff_free(&takeoff);
    }
}
END_TEST

Suite *suite_takeoff_held(void)
{
    Suite *suite = suite_create("containment");
    TCase *tests = tcase_create("containment");
    tcase_add_test(tests, conduit);
    tcase_add_test(tests, cut_in_two_is_one);
    tcase_add_test(tests, conduit_boxes_by_limit);
    tcase_add_test(tests, trunking);
    tcase_add_test(tests, tray_and_ladder);
    tcase_add_test(tests, catenary);
    tcase_add_test(tests, grips_by_the_wire);
    tcase_add_test(tests, width_and_whether_it_is_there);
    tcase_add_test(tests, pieces_and_entries);
    tcase_add_test(tests, there_already);
    tcase_add_test(tests, what_is_left_of_a_length);
    suite_add_tcase(suite, tests);
    return suite;
}
