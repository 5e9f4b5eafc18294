/* What the language fills in: each default's value, and the exact list of assumptions that is told of it. */
#include "read_route.h"
#include "test_read.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char *const least =
    "wend: 1\n"
    "job: {title: t}\n"
    "supply: {system: TN-C-S, loop-impedance: 0.35 ohm}\n"
    "runs: {feeder: {load: {power: 3 kW}, cable: {type: BS5467, cores: 3}}}\n"
    "segments: [{name: gable, way: wall, length: 4 m}, {name: loft, way: loft-void, length: 9 m}]\n";

static bool near(double a, double b)
{
    return a - b < 1e-9 && b - a < 1e-9;
}

#define IS_DEFAULT(quantity, expected)                                                                                 \
    do {                                                                                                               \
        ck_assert(!(quantity).given);                                                                                  \
        ck_assert_msg(near((quantity).value, expected), #quantity " is not " #expected);                               \
    } while (false)

static struct ReadRoute read_good(const char *text)
{
    struct ReadRoute route = read_route_text(text);
    ck_assert_msg(route.survey != NULL, "%s", read_route_reports(&route));
    return route;
}

START_TEST(values_of_the_smallest_route)
{
    struct ReadRoute route = read_good(least);
    const struct Survey *survey = route.survey;
    ck_assert_int_eq(survey->supply.phases, 1);
    IS_DEFAULT(survey->supply.voltage_v, 230);
    IS_DEFAULT(survey->supply.drop_before_percent, 0);
    IS_DEFAULT(survey->supply.neutral_mm2, 35);
    IS_DEFAULT(survey->supply.earthing_conductor_mm2, 16);
    IS_DEFAULT(survey->conditions.air_degc, 30);
    IS_DEFAULT(survey->conditions.ground_degc, 20);
    IS_DEFAULT(survey->conditions.soil_thermal_k_m_per_w, 2.5);
    IS_DEFAULT(survey->conditions.soil_electrical_ohm_m, 100);
    IS_DEFAULT(survey->conditions.terminals_degc, 70);
    ck_assert(!survey->earthing.given && !survey->earthing.has_electrode && !survey->earthing.extraneous_parts_given);
    ck_assert_int_eq(survey->earthing.far_end, FAR_END_EXPORT);
    IS_DEFAULT(survey->parts.spare_cable_percent, 5);
    IS_DEFAULT(survey->parts.spare_fixings_percent, 10);
    const struct Run *run = &survey->runs[0];
    ck_assert_int_eq(run->kind, RUN_POWER);
    ck_assert_int_eq(run->feeds, FEEDS_BOARD);
    ck_assert_int_eq(run->use, USE_GENERAL);
    IS_DEFAULT(run->loads[0].power_factor, 1);
    IS_DEFAULT(run->loads[0].diversity, 1);
    ck_assert_int_eq(run->loads[0].phases, 1);
    ck_assert(!run->device.given && !run->device.kind_given && !run->device.curve_given);
    ck_assert_int_eq(run->device.kind, DEVICE_MCB);
    ck_assert_int_eq(run->device.curve, CURVE_B);
    ck_assert(!run->device.rating_a.given && !run->device.residual_a.given && !run->device.time_delayed);
    ck_assert_int_eq(run->cable.cpc, CPC_CORE);
    ck_assert(!run->cable.size_mm2.given);
    IS_DEFAULT(run->drop_limit_percent, 5);
    ck_assert_int_eq(run->finish.into, INTO_ENCLOSURE);
    ck_assert_int_eq(run->finish.place, PLACE_INDOORS);
    IS_DEFAULT(run->start.tail_m, 0.5);
    IS_DEFAULT(run->start.loop_m, 0);
    const struct Segment *segment = &survey->segments[0];
    IS_DEFAULT(segment->rise_m, 0);
    IS_DEFAULT(segment->air_degc, 30);
    IS_DEFAULT(segment->insulated_length_m, 4);
    ck_assert_int_eq(segment->fixed_to, SURFACE_COUNT);
    ck_assert_int_eq(segment->sun, SUN_SHADED);
    ck_assert_int_eq(segment->insulation, INSULATION_NONE);
    ck_assert(!segment->insulation_given);
    read_route_free(&route);
}
END_TEST

/* What is assumed at a key: a figure, or a word. */
struct Expected {
    const char *where;
    enum AssumedWhat what;
    double value;
    int word;
};

static void check_one(const struct Assumed *found, const struct Expected *expected)
{
    ck_assert_str_eq(found->where, expected->where);
    ck_assert_int_eq(found->what, expected->what);
    ck_assert_double_eq_tol(found->value, expected->value, 1e-12);
    ck_assert_int_eq(found->word, expected->word);
}

static void check_assumed(const struct Survey *survey, const struct Expected *expected, int count)
{
    for (int i = 0; i < count && i < survey->assumed_count; i++) {
        check_one(&survey->assumed[i], &expected[i]);
    }
    ck_assert_int_eq(survey->assumed_count, count);
}

START_TEST(assumptions_of_the_smallest_route)
{
    static const struct Expected expected[] = {
        {"supply.phases", ASSUMED_PHASES, 1, 0},
        {"supply.voltage", ASSUMED_VOLTAGE, 230, 0},
        {"supply.drop-before", ASSUMED_DROP_BEFORE, 0, 0},
        {"supply.neutral-size", ASSUMED_NEUTRAL_SIZE, 35, 0},
        {"supply.earthing-conductor", ASSUMED_EARTHING_CONDUCTOR, 16, 0},
        {"conditions.air", ASSUMED_AIR, 30, 0},
        {"conditions.ground", ASSUMED_GROUND, 20, 0},
        {"conditions.soil-thermal", ASSUMED_SOIL_THERMAL, 2.5, 0},
        {"conditions.soil-electrical", ASSUMED_SOIL_ELECTRICAL, 100, 0},
        {"conditions.terminals", ASSUMED_TERMINALS, 70, 0},
        {"earthing.far-end", ASSUMED_EXPORT, 0, 0},
        {"runs.feeder.feeds", ASSUMED_FEEDS, 0, FEEDS_BOARD},
        {"runs.feeder.use", ASSUMED_USE, 0, USE_GENERAL},
        {"runs.feeder.load.diversity", ASSUMED_DIVERSITY, 1, 0},
        {"runs.feeder.load.power-factor", ASSUMED_POWER_FACTOR, 1, 0},
        {"runs.feeder.device.kind", ASSUMED_DEVICE_KIND, 0, DEVICE_MCB},
        {"runs.feeder.device.curve", ASSUMED_CURVE, 0, CURVE_B},
        {"runs.feeder.cable.cpc", ASSUMED_CPC, 0, CPC_CORE},
        {"runs.feeder.drop-limit", ASSUMED_DROP_LIMIT, 5, 0},
        {"runs.feeder.start", ASSUMED_START, 0, 0},
        {"runs.feeder.finish", ASSUMED_FINISH, 0, 0},
        {"segments.loft.fixed-to", ASSUMED_TIMBER, 0, 0},
        {"parts.spare-cable", ASSUMED_SPARE_CABLE, 5, 0},
        {"parts.spare-fixings", ASSUMED_SPARE_FIXINGS, 10, 0},
    };
    struct ReadRoute route = read_good(least);
    check_assumed(route.survey, expected, (int)(sizeof expected / sizeof expected[0]));
    read_route_free(&route);
}
END_TEST

/* A row: put `text` into a slot; then this is assumed (or, with ASSUMED_NOTHING, nothing is at that `where`). */
struct AssumedRow {
    enum ReadSlot slot;
    const char *text;
    struct Expected expected;
};

static const struct AssumedRow rows[] = {
    {SLOT_SUPPLY, "phases: 1", {"supply.phases", ASSUMED_NOTHING, 0, 0}},
    {SLOT_TOP, "conditions: {air: 30 degC}", {"conditions.air", ASSUMED_NOTHING, 0, 0}},
    {SLOT_TOP, "conditions: {air: 30 degC}", {"conditions.ground", ASSUMED_GROUND, 20, 0}},
    {SLOT_TOP, "earthing: {far-end: export}", {"earthing.far-end", ASSUMED_NOTHING, 0, 0}},
    {SLOT_TOP,
     "earthing: {far-end: island, electrode: {rods: 3, length: 1.2 m, diameter: 16 mm}}",
     {"earthing.electrode.spacing", ASSUMED_ROD_SPACING, 1.2, 0}},
    {SLOT_TOP,
     "earthing: {far-end: island, electrode: {rods: 1, length: 1.2 m, diameter: 16 mm}}",
     {"earthing.electrode.spacing", ASSUMED_NOTHING, 0, 0}},
    {SLOT_LOAD, "power: 3 kVA", {"runs.feeder.load.power-factor", ASSUMED_NOTHING, 0, 0}},
    {SLOT_LOAD, "current: 3 A", {"runs.feeder.load.power-factor", ASSUMED_NOTHING, 0, 0}},
    {SLOT_LOAD, "power: 3 kW", {"runs.feeder.load.power-factor", ASSUMED_POWER_FACTOR, 1, 0}},
    {SLOT_DEVICE, "kind: gG", {"runs.feeder.device.curve", ASSUMED_NOTHING, 0, 0}},
    {SLOT_DEVICE, "kind: RCBO, residual: 30 mA", {"runs.feeder.device.curve", ASSUMED_CURVE, 0, CURVE_B}},
    {SLOT_DEVICE, "kind: MCB", {"runs.feeder.device.kind", ASSUMED_NOTHING, 0, 0}},
    {SLOT_RUN, "use: lighting", {"runs.feeder.drop-limit", ASSUMED_DROP_LIMIT_LIGHTING, 3, 0}},
    {SLOT_RUN, "start: {tail: 1 m}", {"runs.feeder.start.into", ASSUMED_INTO, 0, INTO_ENCLOSURE}},
    {SLOT_RUN, "start: {tail: 1 m}", {"runs.feeder.start.loop", ASSUMED_LOOP, 0, 0}},
    {SLOT_RUN, "start: {tail: 1 m}", {"runs.feeder.start.tail", ASSUMED_NOTHING, 0, 0}},
    {SLOT_RUN, "start: {into: free}", {"runs.feeder.start.tail", ASSUMED_TAIL, 0.5, 0}},
    {SLOT_RUN, "start: {into: free}", {"runs.feeder.start.place", ASSUMED_PLACE, 0, PLACE_INDOORS}},
    {SLOT_SEGMENT, "way: fence", {"segments.a.fixed-to", ASSUMED_TIMBER, 0, 0}},
    {SLOT_SEGMENT, "way: fence, fixed-to: steel", {"segments.a.fixed-to", ASSUMED_NOTHING, 0, 0}},
    {SLOT_SEGMENT, "way: beam", {"segments.a.fixed-to", ASSUMED_TIMBER, 0, 0}},
    {SLOT_SEGMENT, "way: loft-void", {"segments.a.fixed-to", ASSUMED_TIMBER, 0, 0}},
    {SLOT_SEGMENT, "way: wall", {"segments.a.fixed-to", ASSUMED_NOTHING, 0, 0}},
    {SLOT_SEGMENT, "way: tray", {"segments.a.fixed-to", ASSUMED_NOTHING, 0, 0}},
    {SLOT_SEGMENT, "way: fence", {"segments.a.sun", ASSUMED_SHADED, 0, 0}},
    {SLOT_SEGMENT, "way: catenary", {"segments.a.sun", ASSUMED_SHADED, 0, 0}},
    {SLOT_SEGMENT, "way: catenary, sun: full", {"segments.a.sun", ASSUMED_NOTHING, 0, 0}},
    {SLOT_SEGMENT, "way: wall", {"segments.a.sun", ASSUMED_NOTHING, 0, 0}},
    {SLOT_SEGMENT, "way: wall, where: outside", {"segments.a.sun", ASSUMED_SHADED, 0, 0}},
    {SLOT_SEGMENT, "way: tray, where: outside, sun: full", {"segments.a.sun", ASSUMED_NOTHING, 0, 0}},
    {SLOT_SEGMENT, "way: fence, where: outside", {"segments.a.sun", ASSUMED_SHADED, 0, 0}},
    {SLOT_SEGMENT, "way: fence, where: inside", {"segments.a.sun", ASSUMED_NOTHING, 0, 0}},
    {SLOT_SEGMENT, "way: wall, where: inside", {"segments.a.sun", ASSUMED_NOTHING, 0, 0}},
    {SLOT_SEGMENT, "way: duct", {"segments.a.duct.laid", ASSUMED_NEW_DUCT, 0, 0}},
    {SLOT_SEGMENT, "way: duct, duct: {size: 50 mm}", {"segments.a.duct.laid", ASSUMED_NEW_DUCT, 0, 0}},
    {SLOT_SEGMENT, "way: duct, duct: {laid: existing}", {"segments.a.duct.laid", ASSUMED_NOTHING, 0, 0}},
    {SLOT_SEGMENT, "way: duct", {"segments.a.depth", ASSUMED_DEPTH, 0, 0}},
    {SLOT_SEGMENT, "way: buried", {"segments.a.depth", ASSUMED_DEPTH, 0, 0}},
    {SLOT_SEGMENT, "way: buried, depth: 0.6 m", {"segments.a.depth", ASSUMED_NOTHING, 0, 0}},
    {SLOT_SEGMENT, "way: wall, beside: {circuits: 1}", {"segments.a.beside.arrangement", ASSUMED_BESIDE_BUNCHED, 0, 0}},
    {SLOT_SEGMENT,
     "way: wall, beside: {circuits: 1, arrangement: spaced}",
     {"segments.a.beside.arrangement", ASSUMED_NOTHING, 0, 0}},
};

static const struct Assumed *assumed_at(const struct Survey *survey, const char *where)
{
    const struct Assumed *found = NULL;
    for (int i = 0; i < survey->assumed_count; i++) {
        if (text_same(survey->assumed[i].where, where)) {
            ck_assert_msg(found == NULL, "%s is assumed twice", where);
            found = &survey->assumed[i];
        }
    }
    return found;
}

START_TEST(each_default_is_told_when_used)
{
    const struct AssumedRow *row = &rows[_i];
    char *text = read_route_with(row->slot, row->text);
    struct ReadRoute route = read_good(text);
    const struct Assumed *found = assumed_at(route.survey, row->expected.where);
    if (row->expected.what == ASSUMED_NOTHING) {
        ck_assert_msg(found == NULL, "with %s something is assumed of %s", row->text, row->expected.where);
    } else {
        ck_assert_msg(found != NULL, "with %s nothing is assumed of %s", row->text, row->expected.where);
        check_one(found, &row->expected);
    }
    read_route_free(&route);
    free(text);
}
END_TEST

START_TEST(flat_cable_has_three_cores)
{
    struct ReadRoute route =
        read_good("wend: 1\njob: {title: t}\nsupply: {system: TT}\nruns:\n  f: {load: {current: 1 A}, "
                  "cable: {type: BS6004-flat}}\nsegments: [{name: a, way: wall, length: 1 m}]\n");
    ck_assert_int_eq(route.survey->runs[0].cable.cores, 3);
    check_one(assumed_at(route.survey, "runs.f.cable.cores"),
              &(struct Expected){"runs.f.cable.cores", ASSUMED_CORES, 3, 0});
    ck_assert_int_eq(assumed_at(route.survey, "runs.f.cable.cores")->run, 0);
    ck_assert_int_eq(assumed_at(route.survey, "conditions.air")->run, -1);
    ck_assert(!route.survey->supply.loop_ohm.given);
    read_route_free(&route);
}
END_TEST

START_TEST(the_only_earth_run_is_the_cpc)
{
    struct ReadRoute route = read_good("wend: 1\njob: {title: t}\nsupply: {system: TT}\nruns:\n"
                                       "  f: {load: {current: 1 A}, cable: {type: BS5467, cores: 2, cpc: separate}}\n"
                                       "  bond: {kind: earth, cable: {type: BS6004-single, size: 6 mm2}}\n"
                                       "segments: [{name: a, way: wall, length: 1 m}]\n");
    ck_assert_int_eq(route.survey->runs[0].cable.cpc_run, 1);
    ck_assert_int_eq(assumed_at(route.survey, "runs.f.cable.cpc-run")->what, ASSUMED_CPC_RUN);
    ck_assert_int_eq(assumed_at(route.survey, "runs.f.cable.cpc-run")->run, 0);
    read_route_free(&route);
}
END_TEST

/* Many segments make one line, not many. */
START_TEST(segments_share_an_assumption)
{
    char text[4096];
    strcpy(text, "wend: 1\njob: {title: t}\nsupply: {system: TT}\nruns:\n  f: {load: {current: 1 A}, cable: {type: "
                 "BS5467, cores: 3}}\nsegments:\n- {name: rail-a, way: fence, length: 1 m}\n");
    strcat(text, "- {name: wall, way: wall, length: 1 m}\n- {name: rail-b, way: fence, length: 1 m}\n");
    struct ReadRoute route = read_good(text);
    const struct Assumed *timber = assumed_at(route.survey, "segments.fixed-to");
    ck_assert_int_eq(timber->what, ASSUMED_TIMBER);
    ck_assert_int_eq(timber->segment_count, 2);
    ck_assert_int_eq(timber->segments[0], 0);
    ck_assert_int_eq(timber->segments[1], 2);
    ck_assert_int_eq(assumed_at(route.survey, "segments.sun")->what, ASSUMED_SHADED);
    ck_assert_int_eq(assumed_at(route.survey, "segments.sun")->segment_count, 2);
    read_route_free(&route);
    for (int i = 0; i < 30; i++) {
        char line[64];
        snprintf(line, sizeof line, "- {name: f%d, way: fence, length: 1 m}\n", i);
        strcat(text, line);
    }
    route = read_good(text);
    ck_assert_int_eq(assumed_at(route.survey, "segments.fixed-to")->segment_count, 32);
    read_route_free(&route);
}
END_TEST

TCase *read_defaults_tests(void)
{
    TCase *tests = tcase_create("defaults");
    tcase_add_test(tests, values_of_the_smallest_route);
    tcase_add_test(tests, assumptions_of_the_smallest_route);
    tcase_add_loop_test(tests, each_default_is_told_when_used, 0, (int)(sizeof rows / sizeof rows[0]));
    tcase_add_test(tests, flat_cable_has_three_cores);
    tcase_add_test(tests, the_only_earth_run_is_the_cpc);
    tcase_add_test(tests, segments_share_an_assumption);
    return tests;
}
