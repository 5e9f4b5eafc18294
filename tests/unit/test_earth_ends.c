/* What is joined to earth at the two ends, as the papers say it, for every protective conductor, armoured and not, on
 * an island, on exported earth and where nobody surveyed it. Whole routes are planned and the papers' words looked for:
 * an island's earth core that is told to be joined at both ends would carry the supply's earth into the outbuilding. */
#include "fault_rig.h"
#include "printed.h"

#include "documents/documents.h"
#include "run_suite.h"

#include <string.h>

#define ISLAND                                                                                                         \
    "earthing: {far-end: island, electrode: {rods: 2, length: 2.4 m, diameter: 16 mm, spacing: 3 m}, "                 \
    "board-residual: 30 mA}"
#define SEPARATE_RUN "  cpc: {kind: earth, cable: {type: BS6004-single, size: 10 mm2}}"

static const char not_here[] = "do NOT join it to the earth here";
static const char two_earths[] = "The two earths apart";

/* Each row: the cable, further runs, how the far end is earthed; what plan.xml says and what it must not. */
static const struct {
    const char *cable, *runs, *top;
    const char *says[4], *never[3];
} rows[] = {
    {"type: BS5467, cores: 3, cpc: core",
     NULL,
     ISLAND,
     {"what=\"Armour\" state=\"NOT CONNECTED\"", "what=\"Earth core\" state=\"NOT CONNECTED\"", not_here, two_earths},
     {"colour=\"black\" sleeve=\"green-and-yellow\" supply=\"earth bar\" far=\"earth bar\"",
      "between=\"the protective core, end to end"}},
    {"type: BS5467, cores: 3, cpc: core-and-armour",
     NULL,
     ISLAND,
     {"what=\"Earth core\" state=\"NOT CONNECTED\"", not_here, "between=\"the armour, gland to gland", two_earths},
     {"far=\"earth bar\"", "core and armour share a fault"}},
    {"type: BS5467, cores: 2, cpc: armour",
     NULL,
     ISLAND,
     {"what=\"Armour\" state=\"NOT CONNECTED\"", two_earths, "between=\"the armour, gland to gland"},
     {"what=\"Earth core\"", "far=\"earth bar\"", not_here}},
    {"type: BS5467, cores: 3, cpc: armour",
     NULL,
     ISLAND,
     {"supply=\"spare: earth bar\"", not_here, two_earths},
     {"far=\"earth bar\"", "far=\"spare"}},
    {"type: BS5467, cores: 2, cpc: separate",
     SEPARATE_RUN,
     ISLAND,
     {"what=\"Earth cable alongside\" state=\"NOT CONNECTED\"", "Do NOT join it to the earth here", two_earths,
      "the separate protective conductor is taken to be joined"},
     {"far=\"earth bar\""}},
    {"type: BS5467, cores: 2, cpc: none",
     NULL,
     ISLAND,
     {"what=\"Armour\" state=\"NOT CONNECTED\"", two_earths},
     {"what=\"Earth core\"", "far=\"earth bar\""}},
    {"type: BS7211-multicore, cores: 3, cpc: core",
     NULL,
     ISLAND,
     {"what=\"Earth core\" state=\"NOT CONNECTED\"", not_here, two_earths, "colour=\"green-and-yellow\""},
     {"what=\"Armour\"", "far=\"earth bar\""}},
    {"type: BS5467, cores: 3, cpc: core",
     NULL,
     "earthing: {far-end: export}",
     {"what=\"Armour\" state=\"CONNECTED\"", "what=\"Earth core\" state=\"CONNECTED\"", "far=\"earth bar\""},
     {"NOT CONNECTED", not_here, two_earths}},
    {"type: BS5467, cores: 3, cpc: core",
     NULL,
     NULL,
     {"what=\"Armour\" state=\"ASK FIRST\"", "what=\"Earth core\" state=\"ASK FIRST\"", "far=\"ASK FIRST",
      "ASK FIRST before this gland is bought"},
     {"far=\"earth bar\""}},
};
enum { ROWS = (int)(sizeof rows / sizeof rows[0]) };

START_TEST(each_end_is_said)
{
    struct Wend *wend = rig_plan(&(struct RigRoute){.cable = rows[_i].cable,
                                                    .runs = rows[_i].runs,
                                                    .top = rows[_i].top,
                                                    .device = "kind: RCBO, curve: B, rating: 32 A, residual: 100 mA"});
    const struct Bytes xml = printed(wend);
    ck_assert_ptr_nonnull(xml.data);
    for (int k = 0; k < 4 && rows[_i].says[k] != NULL; k++) {
        ck_assert_msg(strstr(xml.data, rows[_i].says[k]) != NULL, "%s: lacks %s", rows[_i].cable, rows[_i].says[k]);
    }
    for (int k = 0; k < 3 && rows[_i].never[k] != NULL; k++) {
        ck_assert_msg(strstr(xml.data, rows[_i].never[k]) == NULL, "%s: has %s", rows[_i].cable, rows[_i].never[k]);
    }
    wend_free(wend);
}
END_TEST

/* A motor stands on the earth of the installation that it belongs to: its core and armour are joined without a question
 * being asked. A charging point may not, so for that the question stays. */
START_TEST(equipment_of_one_installation)
{
    for (int i = 0; i < 2; i++) {
        struct Wend *wend =
            rig_plan(&(struct RigRoute){.cable = "type: BS5467, cores: 3, cpc: core",
                                        .run = i == 0 ? "feeds: equipment" : "feeds: equipment\n    use: charging"});
        const struct Bytes xml = printed(wend);
        ck_assert_int_eq(strstr(xml.data, "what=\"Armour\" state=\"CONNECTED\"") != NULL, 1);
        ck_assert_int_eq(strstr(xml.data, "what=\"Earth core\" state=\"ASK FIRST\"") != NULL, i == 1);
        ck_assert_int_eq(strstr(xml.data, "Leave it unconnected") != NULL, i == 1);
        ck_assert_int_eq(strstr(xml.data, "ASK FIRST before this gland is bought") != NULL, i == 1);
        wend_free(wend);
    }
}
END_TEST

/* The drawing says it too. */
START_TEST(the_drawing_says_it)
{
    struct Wend *wend = rig_plan(&(struct RigRoute){.cable = "type: BS5467, cores: 3, cpc: core",
                                                    .top = ISLAND,
                                                    .device = "kind: RCBO, curve: B, rating: 32 A, residual: 100 mA"});
    const struct WendBytes svg = wend_document(wend, WEND_DIAGRAM_SVG);
    ck_assert_ptr_nonnull(svg.data);
    /* a plate each for armour and earth core, joined here and not there */
    static const char *const plates[] = {">CONNECTED</text>", ">NOT CONNECTED</text>"};
    for (int i = 0; i < 2; i++) {
        const char *first = strstr(svg.data, plates[i]);
        ck_assert_ptr_nonnull(first);
        ck_assert_ptr_nonnull(strstr(first + 1, plates[i]));
    }
    ck_assert_ptr_nonnull(strstr(svg.data, "cap\u00a0it"));
    wend_free(wend);
}
END_TEST

#define RUN_LIKE(name) "  " name ": {load: {current: 9 A}, cable: {type: BS5467, cores: 3, size: 10 mm2}}\n"

/* Runs whose ends are alike are told in one entry: of seven none is left out of the drawing, nor its gland. */
START_TEST(the_drawing_keeps_every_gland)
{
    struct Wend *wend = rig_plan(&(struct RigRoute){.cable = "type: BS5467, cores: 3, size: 10 mm2",
                                                    .runs = RUN_LIKE("kiln") RUN_LIKE("loft") RUN_LIKE("barn")
                                                        RUN_LIKE("yard") RUN_LIKE("mill") RUN_LIKE("shed")});
    const struct WendBytes svg = wend_document(wend, WEND_DIAGRAM_SVG);
    ck_assert_ptr_nonnull(svg.data);
    ck_assert_ptr_null(strstr(svg.data, " more: see")); /* ends begin with how many */
    ck_assert_ptr_nonnull(strstr(svg.data, "kiln, loft,"));
    int glands = 0;
    for (const char *at = strstr(svg.data, "BW-20"); at != NULL; at = strstr(at + 1, "BW-20")) {
        glands++;
    }
    ck_assert_int_ge(glands, 2); /* at either end */
    wend_free(wend);
}
END_TEST

#define THREE "system: TN-S, phases: 3, loop-impedance: 0.3 ohm, fault-current: 1 kA"

/* Three lines and an earth have no neutral to be measured against; BS 7671 643.3, 643.6, 643.7.3.201. What the polarity
 * row points at is on the sheet. */
static const struct {
    const char *supply, *cable, *load, *top;
    const char *says[5], *never[5];
} sheets[] = {
    {THREE,
     "type: BS5467, cores: 4, size: 10 mm2",
     "current: 10 A, phases: 3",
     "earthing: {far-end: export}",
     {"blanks=\"L-L Mohm|L-E Mohm\"", "line to line and line to earth, at the origin and at the far end",
      "line to line 398 V, each line to earth 230 V", "colour=\"blue\" sleeve=\"green-and-yellow\"",
      "as the core table below"},
     {"L-N Mohm", "N-E Mohm", "line to neutral and line to earth, at the origin", "test button",
      "line to neutral 230"}},
    {THREE,
     "type: BS5467, cores: 5, size: 10 mm2",
     "current: 10 A, phases: 3",
     "earthing: {far-end: export}",
     {"blanks=\"L-L Mohm|L-N Mohm|L-E Mohm|N-E Mohm\"", "take twice the line to neutral reading"},
     {"this run has no neutral"}},
    {"system: TN-S, loop-impedance: 0.3 ohm, fault-current: 1 kA",
     "type: BS6004-multicore, cores: 3, size: 10 mm2",
     "current: 10 A",
     "earthing: {far-end: export}",
     {"blanks=\"L-N Mohm|L-E Mohm|N-E Mohm\"", "colour=\"blue\" sleeve=\"none\"", "as the core table below",
      "L-N and L-E 230 V"},
     {"L-L Mohm", "twice the line to neutral"}},
    {"system: TN-S, loop-impedance: 0.3 ohm, fault-current: 1 kA",
     "type: BS5467, cores: 4, size: 10 mm2",
     "current: 10 A",
     "earthing: {far-end: export}",
     {"each core the same, and marked the same, at both ends"},
     {"core table", "<core "}},
    {"system: TN-S, loop-impedance: 0.3 ohm, fault-current: 1 kA",
     "type: BS5467, cores: 2, size: 10 mm2, cpc: armour",
     "current: 10 A",
     ISLAND,
     {"at most 1666 ohm", "test button of each residual device",
      "the armour to the outbuilding's earth bar; supply end not made off yet"},
     {"1667 ohm"}},
};
enum { SHEETS = (int)(sizeof sheets / sizeof sheets[0]) };

START_TEST(only_what_can_be_read)
{
    struct Wend *wend = rig_plan(&(struct RigRoute){.supply = sheets[_i].supply,
                                                    .cable = sheets[_i].cable,
                                                    .load = sheets[_i].load,
                                                    .top = sheets[_i].top,
                                                    .device = "kind: MCB, curve: B, rating: 16 A"});
    const struct Bytes xml = printed(wend);
    ck_assert_ptr_nonnull(xml.data);
    const char *tests = strstr(xml.data, "<tests ");
    ck_assert_ptr_nonnull(tests);
    for (int k = 0; k < 5 && sheets[_i].says[k] != NULL; k++) {
        ck_assert_msg(strstr(tests, sheets[_i].says[k]) != NULL, "%s: lacks %s", sheets[_i].cable, sheets[_i].says[k]);
    }
    for (int k = 0; k < 5 && sheets[_i].never[k] != NULL; k++) {
        ck_assert_msg(strstr(tests, sheets[_i].never[k]) == NULL, "%s: has %s", sheets[_i].cable, sheets[_i].never[k]);
    }
    wend_free(wend);
}
END_TEST

/* The first live row comes before anything is energised: BS 7671 643.6. */
START_TEST(supply_polarity_comes_first)
{
    struct Wend *wend = rig_plan(&(struct RigRoute){.cable = "type: BS5467, cores: 3"});
    const struct Bytes xml = printed(wend);
    const char *live = strstr(xml.data, "group=\"live\"");
    ck_assert_ptr_nonnull(live);
    static const char polarity[] = "group=\"live\" name=\"Polarity of the supply";
    ck_assert_int_eq(strncmp(live, polarity, sizeof polarity - 1), 0);
    wend_free(wend);
}
END_TEST

static void in_order(const char *text, int count, const char *const *parts)
{
    const char *at = text;
    for (int i = 0; i < count; i++) {
        at = strstr(at, parts[i]);
        ck_assert_msg(at != NULL, "not there, or too early: %s", parts[i]);
    }
}

/* A trench is filled over an empty duct; the building keeps its supply until the supply end is opened; that the two
 * earths are apart shows only before that. */
START_TEST(day_in_order)
{
    static const char *const day[] = {"Ducts: rope in",           "Cable: one feeds",      "Test the laid cable",
                                      "Terminate the far end",    "Two earths apart",      "isolate, lock off",
                                      "Terminate the supply end", "Polarity of the supply"};
    static const char *const stretch[] = {"<work>", "Tape 400 down", "duct 63, rope, then bungs", "sand 75 under"};
    struct Wend *wend =
        rig_plan(&(struct RigRoute){.cable = "type: BS5467, cores: 3",
                                    .top = ISLAND,
                                    .device = "kind: RCBO, curve: B, rating: 32 A, residual: 100 mA",
                                    .segments = "{name: a, way: duct, length: 20 m, duct: {size: 63 mm}, "
                                                "under: drive, bedding: yes}"});
    const struct Bytes xml = printed(wend);
    ck_assert_ptr_nonnull(strstr(strstr(xml.data, "<day"), "ends stopped; sand, photograph"));
    in_order(strstr(xml.data, "<day"), 8, day);
    in_order(xml.data, 4, stretch);
    ck_assert_ptr_null(strstr(xml.data, "laid cable uncovered"));
    wend_free(wend);
}
END_TEST

/* A duct needs no sand of its own: neither the stretch nor the day speaks of it unless it was asked for. */
START_TEST(duct_without_sand)
{
    struct Wend *wend = rig_plan(
        &(struct RigRoute){.cable = "type: BS5467, cores: 3",
                           .segments = "{name: a, way: duct, length: 20 m, duct: {size: 63 mm}, under: drive}"});
    const struct Bytes xml = printed(wend);
    ck_assert_ptr_nonnull(strstr(xml.data, "Ducts: rope in, ends stopped; photograph"));
    const char *work = strstr(xml.data, "<work>");
    ck_assert_ptr_nonnull(work);
    ck_assert_ptr_null(strstr(work, "sand 75 mm"));
    ck_assert_ptr_nonnull(strstr(work, "no sand, stones out"));
    wend_free(wend);
}
END_TEST

/* What lies in the ground without a duct is tested while it can be seen. */
START_TEST(buried_cable_is_tested_open)
{
    static const char *const day[] = {"Cable: one feeds", "laid cable uncovered", "Cover it"};
    struct Wend *wend = rig_plan(&(struct RigRoute){.cable = "type: BS5467, cores: 3",
                                                    .segments = "{name: a, way: buried, length: 20 m, under: lawn}"});
    const struct Bytes xml = printed(wend);
    in_order(strstr(xml.data, "<day"), 3, day);
    ck_assert_ptr_null(strstr(xml.data, "Ducts: lay them"));
    ck_assert_ptr_null(strstr(xml.data, "Show the customer the test button"));
    wend_free(wend);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("earth at the ends");
    TCase *tests = tcase_create("ends");
    tcase_set_timeout(tests, 60);
    tcase_add_loop_test(tests, each_end_is_said, 0, ROWS);
    tcase_add_test(tests, equipment_of_one_installation);
    tcase_add_test(tests, the_drawing_says_it);
    tcase_add_test(tests, the_drawing_keeps_every_gland);
    tcase_add_loop_test(tests, only_what_can_be_read, 0, SHEETS);
    tcase_add_test(tests, supply_polarity_comes_first);
    tcase_add_test(tests, day_in_order);
    tcase_add_test(tests, duct_without_sand);
    tcase_add_test(tests, buried_cable_is_tested_open);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
