/* Terminations, enclosures, devices and the outbuilding's earth. */
#include "said.h"
#include "takeoff_rig.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const char wall[] = "- {name: a, way: wall, length: 4 m, fixed-to: brick}\n";

static struct TakeOff ended(const char *cable, const char *start, const char *finish, const char *top)
{
    char run[512];
    snprintf(run, sizeof run, "    load: {current: 6 A}\n    cable: %s\n    start: %s\n    finish: %s\n", cable, start,
             finish);
    return takeoff_with(run, wall, top);
}

#define TEN "{type: BS5467, cores: 3, size: 10 mm2}"

/* The letter by where the end is (BS 6121, gland makers' guide: BW has no seal, CW seals the sheath, E1W both). */
START_TEST(letter_by_place)
{
    static const struct {
        const char *end, *code;
        bool washer;
    } rows[] = {{"{place: indoors}", "gland-BW-20", false},
                {"{place: outdoors}", "gland-CW-20", true},
                {"{place: wet}", "gland-E1W-20", true}};
    for (int i = 0; i < 3; i++) {
        struct TakeOff takeoff = ended(TEN, rows[i].end, "{into: free}", "");
        ck_assert_double_eq(takeoff_needed(&takeoff, rows[i].code), 1);
        ck_assert_int_eq(takeoff_part(&takeoff, rows[i].code)->packs, 1); /* a kit has two of everything */
        ck_assert_str_eq(takeoff_part(&takeoff, rows[i].code)->pack_word, "kit");
        ck_assert_str_eq(takeoff_part(&takeoff, rows[i].code)->standard, "BS 6121, BS EN 62444");
        ck_assert_double_eq(takeoff_needed(&takeoff, "washer-M20"), rows[i].washer ? 1 : 0);
        takeoff_free(&takeoff);
    }
}
END_TEST

/* A plastic enclosure does not earth the armour; a metal one does. Not said: taken as plastic. */
START_TEST(banjo_where_the_enclosure_does_not_earth)
{
    static const struct {
        const char *end;
        double leads;
    } rows[] = {{"{}", 2}, {"{enclosure: plastic}", 2}, {"{enclosure: metal}", 0}};
    for (int i = 0; i < 3; i++) {
        struct TakeOff takeoff = ended(TEN, rows[i].end, rows[i].end, "");
        ck_assert_double_eq(takeoff_needed(&takeoff, "banjo-bolt"), rows[i].leads);
        ck_assert_double_eq(takeoff_needed(&takeoff, "earth-lead-10"), rows[i].leads);
        bool assumed = false;
        for (int k = 0; k < takeoff.plan->assumption_count; k++) {
            assumed = assumed || said_has(takeoff.plan->assumptions[k].text, "does not earth the armour");
        }
        ck_assert_int_eq(assumed, i == 0);
        takeoff_free(&takeoff);
    }
}
END_TEST

/* Where a make a twentieth fatter or thinner would not fit, or makes are known to differ, the list says to measure. */
START_TEST(measure_where_the_size_is_in_doubt)
{
    static const struct {
        const char *cable;
        bool measure;
    } rows[] = {
        {"{type: BS5467, cores: 3, size: 10 mm2}", false},             /* 19.5 and 13.1 in a gland to 20.9 and 14.0 */
        {"{type: BS5467, cores: 3, size: 4 mm2}", true},               /* 15.3 in a gland to 15.9 */
        {"{type: BS5467, cores: 2, size: 6 mm2, cpc: armour}", false}, /* 15.9 and 10.5 in a gland from 12.5 to 20.9 */
        {"{type: BS5467, cores: 3, size: 25 mm2}", true},              /* shaped or circular conductors */
        {"{type: BS5467, cores: 4, size: 35 mm2}", true},
        {"{type: BS5467, cores: 4, size: 50 mm2}", false}, /* 32.0 in a gland to 33.9: 33.6 fits; 25.0: 26.25 in 26.3 */
        {"{type: BS5467, cores: 2, size: 95 mm2, cpc: armour}", true}, /* 33.1 in a gland to 33.9 */
        {"{type: BS6346, cores: 3, size: 4 mm2}", true},               /* no dimensions held */
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct TakeOff takeoff = ended(rows[i].cable, "{}", "{into: free}", "");
        const struct Part *gland = NULL;
        for (int k = 0; k < takeoff.parts->count; k++) {
            gland = strncmp(takeoff.parts->parts[k].code, "gland-", 6) == 0 ? &takeoff.parts->parts[k] : gland;
        }
        ck_assert_ptr_nonnull(gland);
        ck_assert_msg((strstr(takeoff_note(&takeoff, gland), "measure") != NULL) == rows[i].measure, "%s: %s",
                      rows[i].cable, takeoff_note(&takeoff, gland));
        takeoff_free(&takeoff);
    }
}
END_TEST

/* A surveyed diameter goes before the table's 19.5 mm: what a size 20 takes (12.5 to 20.9 mm) is told to be measured
 * under the armour, what it does not take gets no size. */
START_TEST(surveyed_diameter_goes_first)
{
    struct TakeOff takeoff = ended("{type: BS5467, cores: 3, size: 10 mm2, diameter: 20 mm}", "{}", "{into: free}", "");
    ck_assert_ptr_nonnull(strstr(takeoff_note(&takeoff, takeoff_part(&takeoff, "gland-BW-20")), "20.0 mm overall"));
    ck_assert_ptr_nonnull(strstr(takeoff_note(&takeoff, takeoff_part(&takeoff, "gland-BW-20")), "measure"));
    ck_assert_ptr_nonnull(takeoff_part(&takeoff, "fixing-hook-8")); /* 20.3 mm */
    takeoff_free(&takeoff);
    takeoff = ended("{type: BS5467, cores: 3, size: 10 mm2, diameter: 24 mm}", "{}", "{into: free}", "");
    ck_assert_ptr_null(takeoff_part(&takeoff, "gland-BW-20"));
    ck_assert_ptr_nonnull(
        strstr(takeoff_note(&takeoff, takeoff_part(&takeoff, "gland-BW-BS5467-3x10")), "does not take 24.0 mm"));
    ck_assert_ptr_nonnull(takeoff_part(&takeoff, "fixing-hook-10")); /* 25.4 mm */
    takeoff_free(&takeoff);
}
END_TEST

/* BS 6724 is built to the dimensions of BS 5467: the list knows what the checks know. */
START_TEST(low_smoke_armoured_like_armoured)
{
    struct TakeOff takeoff = ended("{type: BS6724, cores: 3, size: 10 mm2}", "{}", "{into: free}", "");
    ck_assert_double_eq(takeoff_needed(&takeoff, "gland-BW-20"), 1);
    ck_assert_double_eq(takeoff_needed(&takeoff, "fixing-hook-8"), 11); /* as for BS 5467 of 19.5 mm: 4 / 0.4 + 1 */
    takeoff_free(&takeoff);
}
END_TEST

/* Nothing is left out without a word: what a data cable and an earth cable end in. */
START_TEST(what_other_runs_end_in)
{
    static const char *const rows[] = {"", ", start: {into: free}, finish: {into: free}"};
    for (int i = 0; i < 2; i++) {
        char text[512];
        snprintf(text, sizeof text,
                 "wend: 1\njob: {title: t}\nsupply: {system: TN-S, loop-impedance: 0.3 ohm}\nruns:\n"
                 "  one: {load: {current: 9 A}, cable: {type: BS5467, cores: 3, size: 10 mm2}}\n"
                 "  link: {kind: data, cable: {type: EN50288, diameter: 7 mm}%s}\n"
                 "segments:\n- {name: a, way: wall, length: 4 m, fixed-to: timber}\n",
                 rows[i]);
        struct TakeOff takeoff = takeoff_text(text);
        ck_assert_int_eq(takeoff_notes(&takeoff, "What data and earth cables end in is not counted"), i == 0);
        takeoff_free(&takeoff);
    }
}
END_TEST

/* By its thickness where that is known, down to the thinnest that may be surveyed, else by its kind. */
START_TEST(what_holds_a_thin_cable_names_it)
{
    static const struct {
        const char *cable, *code, *what;
    } rows[] = {{"EN50288, diameter: 1 mm", "grommet-1.0", "Grommet for cable 1.0 mm overall"},
                {"EN50288, diameter: 1 mm", "fixing-clip-1.0", "clip for cable 1.0 mm overall"},
                {"EN50288", "grommet-EN50288-0mm", "Grommet for data cable"},
                {"EN50288", "fixing-EN50288-0mm", "clip for data cable"}};
    for (int i = 0; i < 4; i++) {
        char text[512];
        snprintf(text, sizeof text,
                 "wend: 1\njob: {title: t}\nsupply: {system: TN-S, loop-impedance: 0.3 ohm}\nruns:\n"
                 "  one: {load: {current: 9 A}, cable: {type: BS5467, cores: 3, size: 10 mm2}}\n"
                 "  link: {kind: data, cable: {type: %s}}\n"
                 "segments:\n- {name: a, way: wall, length: 4 m, fixed-to: timber}\n",
                 rows[i].cable);
        struct TakeOff takeoff = takeoff_text(text);
        const struct Part *part = takeoff_part(&takeoff, rows[i].code);
        ck_assert_ptr_nonnull(part);
        ck_assert_ptr_nonnull(strstr(takeoff_described(&takeoff, part), rows[i].what));
        takeoff_free(&takeoff);
    }
}
END_TEST

START_TEST(sheathed_cable_has_a_gland_of_its_own)
{
    static const char cable[] = "{type: BS6004-multicore, cores: 3, size: 4 mm2, diameter: 11 mm}";
    struct TakeOff takeoff = ended(cable, "{place: indoors}", "{place: outdoors}", "");
    ck_assert_double_eq(takeoff_needed(&takeoff, "grommet-11.0"), 0);
    ck_assert_double_eq(takeoff_needed(&takeoff, "gland-A2-11.0"), 2); /* 522.8.5: something grips it indoors too */
    ck_assert_double_eq(takeoff_needed(&takeoff, "banjo-bolt"), 0);
    takeoff_free(&takeoff);
    /* flat cable goes through a grommet, and so does what ends in an accessory, which has a grip of its own */
    takeoff = ended("{type: BS6004-flat, size: 4 mm2, diameter: 11 mm}", "{}", "{place: outdoors}", "");
    ck_assert_double_eq(takeoff_needed(&takeoff, "grommet-11.0"), 1);
    ck_assert_double_eq(takeoff_needed(&takeoff, "gland-A2-11.0"), 1);
    takeoff_free(&takeoff);
    takeoff = ended(cable, "{into: accessory}", "{}", "");
    ck_assert_double_eq(takeoff_needed(&takeoff, "grommet-11.0"), 1);
    ck_assert_double_eq(takeoff_needed(&takeoff, "gland-A2-11.0"), 1);
    takeoff_free(&takeoff);
}
END_TEST

/* A conduit brings the cable into the box by its own adaptor: no grommet and no gland at that end. */
START_TEST(conduit_brings_its_cable_in)
{
    static const char run[] = "    load: {current: 6 A}\n    cable: {type: BS6004-multicore, cores: 3, size: 4 mm2, "
                              "diameter: 11 mm}\n    finish: {place: outdoors}\n";
    struct TakeOff takeoff = takeoff_with(
        run, "- {name: a, way: conduit, length: 4 m, size: 25 mm, material: plastic, fixed-to: brick}\n", "");
    ck_assert_double_eq(takeoff_needed(&takeoff, "grommet-11.0"), 0);
    ck_assert_double_eq(takeoff_needed(&takeoff, "gland-A2-11.0"), 0);
    takeoff_free(&takeoff);
    takeoff = takeoff_with(run,
                           "- {name: a, way: conduit, length: 4 m, size: 25 mm, material: plastic, fixed-to: brick}\n"
                           "- {name: b, way: wall, length: 2 m, fixed-to: brick}\n",
                           "");
    ck_assert_double_eq(takeoff_needed(&takeoff, "gland-A2-11.0"), 1);
    takeoff_free(&takeoff);
}
END_TEST

/* 514.3.1, 514.4.2, 543.3.201: the core that is not of its colour, or bare, is sleeved over the whole tail at both
 * ends. */
START_TEST(sleeving_by_the_core_table)
{
    static const struct {
        const char *cable, *code;
        double needed;
    } rows[] = {
        {TEN, "sleeving-blue-10", 1.1},             /* 3-core: grey is the neutral, 0.6 + 0.5 m */
        {TEN, "sleeving-green-and-yellow-10", 1.1}, /* and black the earth */
        {"{type: BS5467, cores: 2, size: 10 mm2, cpc: armour}", "sleeving-blue-10", 0},
        {"{type: BS6004-flat, size: 4 mm2}", "sleeving-green-and-yellow-4-bare", 1.1},
        {"{type: BS6004-multicore, cores: 3, size: 4 mm2}", "sleeving-green-and-yellow-4", 0},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct TakeOff takeoff = ended(rows[i].cable, "{tail: 0.6 m}", "{tail: 0.5 m, loop: 1 m}", "");
        ck_assert_msg(fabs(takeoff_needed(&takeoff, rows[i].code) - rows[i].needed) < 1e-9, "%s of %s", rows[i].code,
                      rows[i].cable);
        ck_assert_int_eq(takeoff_notes(&takeoff, "Sleeving is not counted"), false);
        takeoff_free(&takeoff);
    }
    struct TakeOff takeoff = ended("{type: BS5467, cores: 4, size: 10 mm2}", "{}", "{}", "");
    ck_assert(takeoff_notes(&takeoff, "Sleeving is not counted")); /* four cores on one line: which does what is open */
    takeoff_free(&takeoff);
}
END_TEST

/* 514.8.1 at the device, and what it is fed from at the far end; the isolator of equipment has one of its own. */
START_TEST(labels_of_a_circuit)
{
    struct TakeOff takeoff = ended(TEN, "{}", "{}", "");
    ck_assert_double_eq(takeoff_needed(&takeoff, "label-circuit"), 2);
    ck_assert_double_eq(takeoff_needed(&takeoff, "label-isolator"), 0);
    takeoff_free(&takeoff);
    takeoff = ended(TEN, "{}", "{into: free}", "");
    ck_assert_double_eq(takeoff_needed(&takeoff, "label-circuit"), 1);
    takeoff_free(&takeoff);
    takeoff = ended(TEN "\n    feeds: equipment", "{}", "{}", "");
    ck_assert_double_eq(takeoff_needed(&takeoff, "label-isolator"), 1);
    takeoff_free(&takeoff);
}
END_TEST

/* An island: the armour stops short of the outbuilding's earth, and the earth is of its own. */
START_TEST(island_keeps_the_armour_apart)
{
    struct TakeOff takeoff =
        ended(TEN, "{enclosure: metal}", "{place: outdoors, enclosure: metal}",
              "earthing: {far-end: island, electrode: {rods: 3, length: 2.4 m, diameter: 16 mm, spacing: 4 m}, "
              "board-residual: 30 mA}\n");
    const struct Part *gland = takeoff_part(&takeoff, "gland-insulating-19.5mm");
    ck_assert_ptr_nonnull(gland);
    ck_assert_double_eq(gland->needed, 1);
    ck_assert_ptr_nonnull(strstr(takeoff_note(&takeoff, gland), "NOT joined"));
    ck_assert_double_eq(takeoff_needed(&takeoff, "armour-sleeve-19.5mm"), 1);
    ck_assert_double_eq(takeoff_needed(&takeoff, "washer-M20"), 0); /* a stuffing gland has its own */
    ck_assert_double_eq(takeoff_needed(&takeoff, "gland-CW-20"), 0);
    ck_assert_double_eq(takeoff_needed(&takeoff, "gland-BW-20"), 1);
    ck_assert_double_eq(takeoff_needed(&takeoff, "earth-rod-16"), 6);         /* 3 rods of 2.4 m in sections of 1.2 m */
    ck_assert_double_eq(takeoff_needed(&takeoff, "earth-rod-coupler-16"), 3); /* one less than sections, each rod */
    ck_assert_double_eq(takeoff_needed(&takeoff, "earth-rod-stud-16"), 1);
    ck_assert_double_eq(takeoff_needed(&takeoff, "earth-clamp-16"), 3);
    ck_assert_ptr_nonnull(
        strstr(takeoff_note(&takeoff, takeoff_part(&takeoff, "earth-clamp-16")), "a conductor of 16 mm2"));
    ck_assert_double_eq(takeoff_needed(&takeoff, "earth-pit"), 3);
    ck_assert_double_eq(takeoff_needed(&takeoff, "label-earth"), 4);
    ck_assert_int_eq(takeoff_part(&takeoff, "label-earth")->packs, 1);
    /* two gaps of 4 m, and 5 m to the bar, that nobody measured; size by Table 54.1 */
    ck_assert_double_eq(takeoff_needed(&takeoff, "earthing-conductor-16"), 13);
    ck_assert_ptr_nonnull(
        strstr(takeoff_note(&takeoff, takeoff_part(&takeoff, "earthing-conductor-16")), "an allowance"));
    ck_assert_ptr_nonnull(takeoff_part(&takeoff, "label-armour"));
    takeoff_free(&takeoff);
}
END_TEST

/* One rod has no gap: only what goes to the bar, as surveyed, in whole metres. */
START_TEST(earthing_conductor_to_the_bar)
{
    struct TakeOff takeoff = ended(
        TEN, "{enclosure: metal}", "{enclosure: metal}",
        "earthing: {far-end: island, electrode: {rods: 1, length: 2.4 m, diameter: 16 mm, conductor-length: 6.3 m}, "
        "board-residual: 30 mA}\n");
    const struct Part *part = takeoff_part(&takeoff, "earthing-conductor-16");
    ck_assert_ptr_nonnull(part);
    ck_assert_double_eq_tol(part->needed, 6.3, 1e-9);
    ck_assert_double_eq(part->quantity, 7);
    ck_assert_ptr_null(strstr(takeoff_note(&takeoff, part), "allowance"));
    takeoff_free(&takeoff);
}
END_TEST

/* One label for each armour that stops short, though the electrode itself is there already. */
START_TEST(a_label_for_each_armour)
{
    struct TakeOff takeoff = takeoff_text(
        "wend: 1\njob: {title: t}\nsupply: {system: TN-S, loop-impedance: 0.3 ohm}\n"
        "earthing: {far-end: island, electrode: {measured: 20 ohm}, board-residual: 30 mA}\nruns:\n"
        "  one: {load: {current: 9 A}, cable: {type: BS5467, cores: 3, size: 10 mm2}}\n"
        "  two: {load: {current: 9 A}, cable: {type: BS5467, cores: 3, size: 10 mm2}}\n"
        "  loose: {load: {current: 9 A}, cable: {type: BS5467, cores: 3, size: 10 mm2}, finish: {into: free}}\n"
        "  link: {kind: data, cable: {type: EN50288, diameter: 7 mm}}\n"
        "segments:\n- {name: a, way: wall, length: 4 m, fixed-to: timber}\n");
    ck_assert_double_eq(takeoff_needed(&takeoff, "gland-insulating-19.5mm"), 2);
    ck_assert_double_eq(takeoff_needed(&takeoff, "label-armour"), 2);
    takeoff_free(&takeoff);
}
END_TEST

/* BS 7671 514.13.1: also where the outbuilding's metalwork is bonded to the supply's earth. */
START_TEST(a_label_at_the_bond)
{
    struct TakeOff takeoff = ended(TEN, "{}", "{}", "earthing: {far-end: export, extraneous-parts: yes}\n");
    ck_assert_double_eq(takeoff_needed(&takeoff, "label-earth"), 1);
    ck_assert_ptr_nonnull(strstr(takeoff_note(&takeoff, takeoff_part(&takeoff, "label-earth")), "how many"));
    takeoff_free(&takeoff);
    takeoff = ended(TEN, "{}", "{}", "earthing: {far-end: export, extraneous-parts: no}\n");
    ck_assert_double_eq(takeoff_needed(&takeoff, "label-earth"), 0);
    takeoff_free(&takeoff);
}
END_TEST

START_TEST(exported_earth_has_no_rods)
{
    struct TakeOff takeoff = ended(TEN, "{}", "{}", "");
    for (int i = 0; i < takeoff.parts->count; i++) {
        ck_assert_int_ne((int)takeoff.parts->parts[i].aisle, AISLE_EARTHING);
    }
    ck_assert_ptr_null(takeoff_part(&takeoff, "gland-insulating-19.5mm"));
    takeoff_free(&takeoff);
}
END_TEST

/* What an article is for is said of four runs; where it is fitted is known of all of them, also of runs and stretches
 * that are named to mislead. */
START_TEST(every_run_keeps_its_glands)
{
    static const char *const names[] = {"start", "a: finish", "b; a: start", "c and 2 more", "d, finish", "e", "f"};
    char text[2048] = "wend: 1\njob: {title: t}\nsupply: {system: TN-S, loop-impedance: 0.3 ohm}\nruns:\n";
    for (int i = 0; i < 7; i++) {
        char run[128];
        snprintf(run, sizeof run, "  \"%s\": {load: {current: 9 A}, cable: " TEN "}\n", names[i]);
        strcat(text, run);
    }
    strcat(text, "segments:\n- {name: finish, way: wall, length: 4 m, fixed-to: timber}\n");
    struct TakeOff takeoff = takeoff_text(text);
    const struct Part *gland = takeoff_part(&takeoff, "gland-BW-20");
    ck_assert_str_eq(takeoff_uses(&takeoff, "gland-BW-20"),
                     "start: start, finish; a: finish: start, finish; b; a: start: start, finish; "
                     "c and 2 more: start, finish and 3 more runs");
    ck_assert_int_eq(gland->use_count, 14);
    for (int i = 0; i < 7; i++) {
        const struct Run *run = takeoff.plan->runs[i].settled;
        ck_assert_str_eq(run->name, names[i]);
        ck_assert(parts_used_at(gland, run, PART_AT_START));
        ck_assert(parts_used_at(gland, run, PART_AT_FINISH));
        ck_assert(!parts_used_at(takeoff_part(&takeoff, "fixing-hook-8"), run, PART_AT_FINISH)); /* a stretch's name */
    }
    ck_assert(!parts_used_at(gland, &(struct Run){.name = "a"}, PART_AT_START));
    takeoff_free(&takeoff);
}
END_TEST

Suite *suite_takeoff_ends(void)
{
    Suite *suite = suite_create("ends");
    TCase *tests = tcase_create("ends");
    tcase_add_test(tests, letter_by_place);
    tcase_add_test(tests, banjo_where_the_enclosure_does_not_earth);
    tcase_add_test(tests, measure_where_the_size_is_in_doubt);
    tcase_add_test(tests, what_other_runs_end_in);
    tcase_add_test(tests, what_holds_a_thin_cable_names_it);
    tcase_add_test(tests, surveyed_diameter_goes_first);
    tcase_add_test(tests, low_smoke_armoured_like_armoured);
    tcase_add_test(tests, sheathed_cable_has_a_gland_of_its_own);
    tcase_add_test(tests, island_keeps_the_armour_apart);
    tcase_add_test(tests, earthing_conductor_to_the_bar);
    tcase_add_test(tests, a_label_for_each_armour);
    tcase_add_test(tests, a_label_at_the_bond);
    tcase_add_test(tests, exported_earth_has_no_rods);
    tcase_add_test(tests, conduit_brings_its_cable_in);
    tcase_add_test(tests, sleeving_by_the_core_table);
    tcase_add_test(tests, labels_of_a_circuit);
    tcase_add_test(tests, every_run_keeps_its_glands);
    suite_add_tcase(suite, tests);
    return suite;
}
