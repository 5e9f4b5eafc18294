/* Both ends of every range, and what lies just outside; which key goes with which way and kind of run. The figures are
 * typed here a second time, so that a slip in the field tables shows. */
#include "read_route.h"
#include "test_read.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct RangeRow {
    enum ReadSlot slot;
    const char *text; /* %s: the value */
    const char *least, *most, *below, *above;
};

#define ISLAND "earthing: {far-end: island, electrode: "

static const struct RangeRow ranges[] = {
    {SLOT_SUPPLY, "phases: %s", "1", "3", "0", "4"},
    {SLOT_SUPPLY, "voltage: %s", "100 V", "1000 V", "99.9 V", "1000.1 V"},
    {SLOT_SUPPLY, "fault-current: %s", "10 A", "200 kA", "9.9 A", "200.1 kA"},
    {SLOT_SUPPLY, "drop-before: %s", "0 %", "15 %", "-0.1 %", "15.1 %"},
    {SLOT_SUPPLY, "neutral-size: %s", "4 mm2", "1000 mm2", "3.9 mm2", "1001 mm2"},
    {SLOT_SUPPLY, "earthing-conductor: %s", "2.5 mm2", "300 mm2", "2.4 mm2", "301 mm2"},
    {SLOT_TOP, "conditions: {air: %s}", "-40 degC", "90 degC", "-40.1 degC", "90.1 degC"},
    {SLOT_TOP, "conditions: {ground: %s}", "-20 degC", "80 degC", "-20.1 degC", "80.1 degC"},
    {SLOT_TOP, "conditions: {soil-thermal: %s}", "0.3 K.m/W", "10 K.m/W", "0.29 K.m/W", "10.1 K.m/W"},
    {SLOT_TOP, "conditions: {soil-electrical: %s}", "1 ohm.m", "100000 ohm.m", "0.9 ohm.m", "100001 ohm.m"},
    {SLOT_TOP, "conditions: {terminals: %s}", "70 degC", "90 degC", "69 degC", "91 degC"},
    {SLOT_TOP, ISLAND "{rods: %s, length: 1 m, diameter: 16 mm}}", "1", "100", "0", "101"},
    {SLOT_TOP, ISLAND "{rods: 1, length: %s, diameter: 16 mm}}", "0.3 m", "60 m", "29.9 cm", "60.1 m"},
    {SLOT_TOP, ISLAND "{rods: 1, length: 1 m, diameter: %s}}", "5 mm", "100 mm", "4.9 mm", "100.1 mm"},
    {SLOT_TOP, ISLAND "{rods: 1, length: 1 m, diameter: 9 mm, spacing: %s}}", "0.1 m", "100 m", "99 mm", "100.1 m"},
    {SLOT_TOP, ISLAND "{measured: %s}}", "0.1 ohm", "5000 ohm", "99 mohm", "5001 ohm"},
    {SLOT_TOP, "earthing: {far-end: export, board-residual: %s}", "10 mA", "10 A", "9.9 mA", "10.1 A"},
    {SLOT_TOP, "parts: {spare-cable: %s}", "0 %", "100 %", "-1 %", "101 %"},
    {SLOT_TOP, "parts: {spare-fixings: %s}", "0 %", "100 %", "-1 %", "101 %"},
    {SLOT_LOAD, "current: %s", "0.01 A", "4 kA", "9 mA", "4.1 kA"},
    {SLOT_LOAD, "power: %s", "1 W", "3000 kW", "0.9 W", "3001 kVA"},
    {SLOT_LOAD, "power: 1 kW, power-factor: %s", "0.3", "1", "0.29", "1.01"},
    {SLOT_LOAD, "current: 1 A, diversity: %s", "1 %", "100 %", "0.9 %", "101 %"},
    {SLOT_DEVICE, "rating: %s", "0.5 A", "4000 A", "0.4 A", "4001 A"},
    {SLOT_DEVICE, "kind: RCBO, residual: %s", "6 mA", "30 A", "5.9 mA", "30.1 A"},
    {SLOT_DEVICE, "trip-5-s: %s", "5 A", "20 kA", "4.9 A", "20.1 kA"},
    {SLOT_DEVICE, "breaking-capacity: %s", "0.5 kA", "200 kA", "499 A", "201 kA"},
    {SLOT_RUN, "drop-limit: %s", "0.1 %", "15 %", "0.09 %", "15.1 %"},
    {SLOT_RUN, "third-harmonic: %s", "0 %", "100 %", "-1 %", "101 %"},
    {SLOT_RUN, "start-current: %s", "0.1 A", "5000 A", "0.09 A", "5001 A"},
    {SLOT_RUN, "start-multiple: %s", "1", "20", "0.9", "21"},
    {SLOT_RUN, "start-power-factor: %s", "0.1", "1", "0.09", "1.1"},
    {SLOT_RUN, "start: {tail: %s}", "0 m", "20 m", "-0.1 m", "20.1 m"},
    {SLOT_RUN, "finish: {loop: %s}", "0 m", "50 m", "-0.1 m", "50.1 m"},
    {SLOT_RUNS, "link: {kind: data, cable: {type: EN50288, cores: %s}}", "1", "200", "0", "201"},
    {SLOT_RUNS, "bond: {kind: earth, cable: {type: BS6004-single, size: 6 mm2, cores: %s}}", "1", "5", "0", "6"},
    {SLOT_RUNS, "link: {kind: data, cable: {type: EN50288, diameter: %s}}", "1 mm", "150 mm", "0.9 mm", "151 mm"},
    {SLOT_SEGMENTS, "- {name: b, way: wall, length: %s}", "0.01 m", "5000 m", "9 mm", "5001 m"},
    {SLOT_SEGMENTS, "- {name: b, way: wall, length: 5000 m, rise: %s}", "-5000 m", "5000 m", "-5001 m", "5001 m"},
    {SLOT_SEGMENT, "way: wall, air: %s", "-40 degC", "90 degC", "-40.1 degC", "90.1 degC"},
    {SLOT_SEGMENT, "way: wall, ground: %s", "-20 degC", "80 degC", "-20.1 degC", "80.1 degC"},
    {SLOT_SEGMENT, "way: wall, soil-thermal: %s", "0.3 K.m/W", "10 K.m/W", "0.29 K.m/W", "10.1 K.m/W"},
    {SLOT_SEGMENT, "way: wall, insulation: surrounded, insulated-length: %s", "1 mm", "4 m", "0.9 mm", "5001 m"},
    {SLOT_SEGMENT, "way: wall, heading: %s", "0 deg", "360 deg", "-1 deg", "360.1 deg"},
    {SLOT_SEGMENT, "way: wall, beside: {circuits: %s}", "1", "100", "0", "101"},
    {SLOT_SEGMENT, "way: duct, beside: {circuits: 1, arrangement: duct-spaced, gap: %s}", "1 mm", "10 m", "0.9 mm",
     "10.1 m"},
    {SLOT_SEGMENT, "way: wall, bends: [{angle: %s}]", "1 deg", "180 deg", "0.9 deg", "181 deg"},
    {SLOT_SEGMENTS, "- {name: b, way: wall, length: 99 m, bends: [{angle: 90 deg, radius: %s}]}", "5 mm", "20 m",
     "4.9 mm", "20.1 m"},
    {SLOT_SEGMENT, "way: ceiling, thickness: %s", "1 mm", "5 m", "0.9 mm", "5.1 m"},
    {SLOT_SEGMENT, "way: conduit, size: %s", "5 mm", "200 mm", "4.9 mm", "201 mm"},
    {SLOT_SEGMENT, "way: trunking, size: 50 mm x %s", "5 mm", "1000 mm", "4.9 mm", "1001 mm"},
    {SLOT_SEGMENT, "way: duct, duct: {size: %s}", "10 mm", "1000 mm", "9.9 mm", "1001 mm"},
    {SLOT_SEGMENT, "way: buried, depth: %s", "50 mm", "10 m", "49 mm", "10.1 m"},
};

static int reports_of(const struct RangeRow *row, const char *value, const char **told)
{
    char filled[256];
    const char *hole = strstr(row->text, "%s");
    ck_assert_ptr_nonnull(hole);
    snprintf(filled, sizeof filled, "%.*s%s%s", (int)(hole - row->text), row->text, value, hole + 2);
    char *text = read_route_with(row->slot, filled);
    struct ReadRoute route = read_route_text(text);
    int errors = (int)diag_errors(route.diag);
    *told = "nothing";
    for (size_t i = 0; i < diag_count(route.diag); i++) {
        if (diag_at(route.diag, i)->severity == DIAG_ERROR) {
            *told = diag_name(diag_at(route.diag, i)->code);
        }
    }
    ck_assert((route.survey == NULL) == (errors > 0));
    read_route_free(&route);
    free(text);
    return errors;
}

START_TEST(ranges_hold_at_both_ends)
{
    const struct RangeRow *row = &ranges[_i];
    const char *told = NULL;
    ck_assert_msg(reports_of(row, row->least, &told) == 0, "%s with %s: %s", row->text, row->least, told);
    ck_assert_msg(reports_of(row, row->most, &told) == 0, "%s with %s: %s", row->text, row->most, told);
    const char *const outside[] = {row->below, row->above};
    for (int i = 0; i < 2; i++) {
        ck_assert_msg(reports_of(row, outside[i], &told) == 1, "%s with %s: %s", row->text, outside[i], told);
        ck_assert_msg(text_same(told, "number-out-of-range") || text_same(told, "number-not-one-of"), "%s with %s: %s",
                      row->text, outside[i], told);
    }
}
END_TEST

/* TT supplies take what the slot's route, which is TN-S, warns of. */
START_TEST(ranges_of_a_supply_without_earth)
{
    static const char *const rows[][2] = {
        {"electrode-resistance: 0.1 ohm", ""},
        {"electrode-resistance: 5000 ohm", ""},
        {"electrode-resistance: 0.09 ohm", "number-out-of-range"},
        {"electrode-resistance: 5001 ohm", "number-out-of-range"},
        {"loop-impedance: 0.001 ohm", ""},
        {"loop-impedance: 2000 ohm", ""},
        {"loop-impedance: 0.9 mohm", "number-out-of-range"},
        {"loop-impedance: 2001 ohm", "number-out-of-range"},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char text[512];
        snprintf(text, sizeof text,
                 "wend: 1\njob: {title: t}\nsupply: {system: TT, %s}\nruns: {f: {load: {current: 1 A}, "
                 "cable: {type: BS5467, cores: 3}}}\nsegments: [{name: a, way: wall, length: 1 m}]\n",
                 rows[i][0]);
        struct ReadRoute route = read_route_text(text);
        bool refused = rows[i][1][0] != '\0';
        ck_assert_int_eq((int)diag_count(route.diag), refused ? 1 : 0);
        ck_assert_int_eq(read_route_told(&route, "number-out-of-range"), refused ? 1 : 0);
        read_route_free(&route);
    }
}
END_TEST

/* ---- keys by way ---- */

struct WayKey {
    const char *text;
    const char *ways; /* that take it, each between spaces */
};

static const struct WayKey way_keys[] = {
    {"rise: 1 m", NULL}, /* NULL: all */
    {"heading: NE", NULL},
    {"bends: 1", NULL},
    {"notes: x", NULL},
    {"air: 30 degC", NULL},
    {"ground: 20 degC", NULL},
    {"soil-thermal: 2 K.m/W", NULL},
    {"beside: {circuits: 1}", NULL},
    {"fixed-to: steel", " wall fence beam loft-void conduit trunking tray ladder "},
    {"sun: full", " wall fence beam conduit trunking tray ladder catenary "},
    {"insulation: surrounded", " wall beam loft-void under-floor stud-wall ceiling through-wall "},
    {"thickness: 100 mm", " ceiling through-wall "},
    {"wall: stone", " through-wall "},
    {"fire-barrier: yes", " through-wall "},
    {"sleeve: yes", " through-wall "},
    {"size: 25 mm", " conduit tray ladder "},
    {"size: 25 x 25 mm", " trunking "},
    {"material: steel", " conduit "},
    {"duct: {size: 50 mm}", " duct "},
    {"depth: 600 mm", " duct buried "},
    {"under: bed", " duct buried "},
    {"legs: included", " duct buried "},
    {"bedding: yes", " duct buried "},
    {"trench-width: 300 mm", " duct buried "},
    {"laid: existing", " conduit trunking tray ladder catenary "},
    {"wire: rope", " catenary "},
    {"wire-size: 6 mm", " catenary "},
    {"dig: hand", " duct buried "},
};

START_TEST(keys_go_with_their_ways)
{
    const struct WayKey *row = &way_keys[_i];
    for (int way = 0; way < WAY_COUNT; way++) {
        const char *word = survey_word(WORDS_WAY, way);
        char between[32];
        char segment[96];
        snprintf(between, sizeof between, " %s ", word);
        snprintf(segment, sizeof segment, "way: %s, %s", word, row->text);
        char *text = read_route_with(SLOT_SEGMENT, segment);
        struct ReadRoute route = read_route_text(text);
        if (row->ways == NULL || strstr(row->ways, between) != NULL) {
            ck_assert_msg(route.survey != NULL && diag_count(route.diag) == 0, "%s: %s", segment,
                          read_route_reports(&route));
        } else {
            ck_assert_msg(diag_count(route.diag) == 1 && route.survey == NULL, "%s: %s", segment,
                          read_route_reports(&route));
            bool size = strncmp(row->text, "size", 4) == 0 &&
                        (way == WAY_CONDUIT || way == WAY_TRUNKING || way == WAY_TRAY || way == WAY_LADDER);
            ck_assert_msg(size || read_route_told(&route, "key-of-other-way") == 1, "%s", read_route_reports(&route));
        }
        read_route_free(&route);
        free(text);
    }
}
END_TEST

struct KindKey {
    const char *text;
    bool power, earth, data;
};

static const struct KindKey kind_keys[] = {
    {"serves: x", true, true, true},
    {"along: [a]", true, true, true},
    {"start: {tail: 1 m}", true, true, true},
    {"finish: {tail: 1 m}", true, true, true},
    {"feeds: sockets", true, false, false},
    {"use: heating", true, false, false},
    {"third-harmonic: 9 %", true, false, false},
    {"start-multiple: 6", true, false, false},
    {"start-power-factor: 0.3", true, false, false},
    {"drop-limit: 4 %", true, false, false},
    {"device: {kind: gG}", true, false, false},
    {"load: {current: 2 A}", true, false, false},
};

static char *run_of(int kind, const char *text, char run[256])
{
    static const char *const cables[] = {[RUN_POWER] = "{type: BS5467, cores: 3}",
                                         [RUN_EARTH] = "{type: BS6004-single, size: 6 mm2}",
                                         [RUN_DATA] = "{type: EN50288}"};
    bool own_load = strncmp(text, "load", 4) == 0;
    snprintf(run, 256, "more: {kind: %s, cable: %s, %s%s}", survey_word(WORDS_RUN_KIND, kind), cables[kind],
             kind == RUN_POWER && !own_load ? "load: {current: 1 A}, " : "", text);
    return run;
}

START_TEST(keys_go_with_their_kinds_of_run)
{
    const struct KindKey *row = &kind_keys[_i];
    const bool taken[] = {[RUN_POWER] = row->power, [RUN_EARTH] = row->earth, [RUN_DATA] = row->data};
    for (int kind = 0; kind < RUN_KIND_COUNT; kind++) {
        char run[256];
        char *text = read_route_with(SLOT_RUNS, run_of(kind, row->text, run));
        struct ReadRoute route = read_route_text(text);
        ck_assert_msg((int)diag_count(route.diag) == (taken[kind] ? 0 : 1), "%s: %s", text, read_route_reports(&route));
        ck_assert_int_eq(read_route_told(&route, "key-of-other-kind"), taken[kind] ? 0 : 1);
        read_route_free(&route);
        free(text);
    }
}
END_TEST

#define LOOP(tests, name, rows) tcase_add_loop_test(tests, name, 0, (int)(sizeof(rows) / sizeof(rows)[0]))

TCase *read_ranges_tests(void)
{
    TCase *tests = tcase_create("ranges");
    LOOP(tests, ranges_hold_at_both_ends, ranges);
    tcase_add_test(tests, ranges_of_a_supply_without_earth);
    LOOP(tests, keys_go_with_their_ways, way_keys);
    LOOP(tests, keys_go_with_their_kinds_of_run, kind_keys);
    return tests;
}
