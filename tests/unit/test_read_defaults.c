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

static void check_assumed(const struct Survey *survey, const char *const (*expected)[2], int count)
{
    for (int i = 0; i < count && i < survey->assumed_count; i++) {
        ck_assert_str_eq(survey->assumed[i].where, expected[i][0]);
        ck_assert_str_eq(survey->assumed[i].text, expected[i][1]);
    }
    ck_assert_int_eq(survey->assumed_count, count);
}

START_TEST(assumptions_of_the_smallest_route)
{
    static const char *const expected[][2] = {
        {"supply.phases", "phases taken as 1"},
        {"supply.voltage", "voltage taken as 230 V"},
        {"supply.drop-before", "voltage drop before these runs taken as 0 %"},
        {"supply.neutral-size", "copper size of the supply's neutral taken as 35 mm2"},
        {"supply.earthing-conductor", "earthing conductor of the installation taken as 16 mm2"},
        {"conditions.air", "air taken as 30 degC"},
        {"conditions.ground", "ground taken as 20 degC"},
        {"conditions.soil-thermal", "thermal resistivity of the soil taken as 2.5 K.m/W"},
        {"conditions.soil-electrical", "electrical resistivity of the soil taken as 100 ohm.m"},
        {"conditions.terminals", "terminals taken as 70 degC"},
        {"earthing.far-end", "far end taken as export: the supply's earth goes with the cable"},
        {"runs.feeder.feeds", "feeds taken as board"},
        {"runs.feeder.use", "use taken as general"},
        {"runs.feeder.load.diversity", "diversity taken as 100 %"},
        {"runs.feeder.load.power-factor", "power factor taken as 1"},
        {"runs.feeder.device.kind", "device taken as MCB"},
        {"runs.feeder.device.curve", "curve taken as B"},
        {"runs.feeder.cable.cpc", "protective conductor (cpc) taken as core"},
        {"runs.feeder.drop-limit", "drop limit taken as 5 %"},
        {"runs.feeder.start", "start taken as in an enclosure, indoors, with a tail of 0.5 m and a loop of 0 m"},
        {"runs.feeder.finish", "finish taken as in an enclosure, indoors, with a tail of 0.5 m and a loop of 0 m"},
        {"segments.loft.fixed-to", "fixed to timber"},
        {"parts.spare-cable", "spare cable taken as 5 % (a habit and not a rule)"},
        {"parts.spare-fixings", "spare fixings taken as 10 % (a habit and not a rule)"},
    };
    struct ReadRoute route = read_good(least);
    check_assumed(route.survey, expected, (int)(sizeof expected / sizeof expected[0]));
    read_route_free(&route);
}
END_TEST

/* A row: put `text` into a slot; then this is assumed (or, with NULL, this `where` is not). */
struct AssumedRow {
    enum ReadSlot slot;
    const char *text;
    const char *where;
    const char *assumed;
};

static const struct AssumedRow rows[] = {
    {SLOT_SUPPLY, "phases: 1", "supply.phases", NULL},
    {SLOT_TOP, "conditions: {air: 30 degC}", "conditions.air", NULL},
    {SLOT_TOP, "conditions: {air: 30 degC}", "conditions.ground", "ground taken as 20 degC"},
    {SLOT_TOP, "earthing: {far-end: export}", "earthing.far-end", NULL},
    {SLOT_TOP, "earthing: {far-end: island, electrode: {rods: 3, length: 1.2 m, diameter: 16 mm}}",
     "earthing.electrode.spacing", "rod spacing taken as 1.2 m, one rod's length"},
    {SLOT_TOP, "earthing: {far-end: island, electrode: {rods: 1, length: 1.2 m, diameter: 16 mm}}",
     "earthing.electrode.spacing", NULL},
    {SLOT_LOAD, "power: 3 kVA", "runs.feeder.load.power-factor", NULL},
    {SLOT_LOAD, "current: 3 A", "runs.feeder.load.power-factor", NULL},
    {SLOT_LOAD, "power: 3 kW", "runs.feeder.load.power-factor", "power factor taken as 1"},
    {SLOT_DEVICE, "kind: gG", "runs.feeder.device.curve", NULL},
    {SLOT_DEVICE, "kind: RCBO, residual: 30 mA", "runs.feeder.device.curve", "curve taken as B"},
    {SLOT_DEVICE, "kind: MCB", "runs.feeder.device.kind", NULL},
    {SLOT_RUN, "use: lighting", "runs.feeder.drop-limit", "drop limit taken as 3 % for lighting"},
    {SLOT_RUN, "start: {tail: 1 m}", "runs.feeder.start.into", "end taken as enclosure"},
    {SLOT_RUN, "start: {tail: 1 m}", "runs.feeder.start.loop", "loop taken as 0 m"},
    {SLOT_RUN, "start: {tail: 1 m}", "runs.feeder.start.tail", NULL},
    {SLOT_RUN, "start: {into: free}", "runs.feeder.start.tail", "tail taken as 0.5 m"},
    {SLOT_RUN, "start: {into: free}", "runs.feeder.start.place", "place taken as indoors"},
    {SLOT_SEGMENT, "way: fence", "segments.a.fixed-to", "fixed to timber"},
    {SLOT_SEGMENT, "way: fence, fixed-to: steel", "segments.a.fixed-to", NULL},
    {SLOT_SEGMENT, "way: beam", "segments.a.fixed-to", "fixed to timber"},
    {SLOT_SEGMENT, "way: loft-void", "segments.a.fixed-to", "fixed to timber"},
    {SLOT_SEGMENT, "way: wall", "segments.a.fixed-to", NULL},
    {SLOT_SEGMENT, "way: tray", "segments.a.fixed-to", NULL},
    {SLOT_SEGMENT, "way: fence", "segments.a.sun", "taken as shaded from the sun"},
    {SLOT_SEGMENT, "way: catenary", "segments.a.sun", "taken as shaded from the sun"},
    {SLOT_SEGMENT, "way: catenary, sun: full", "segments.a.sun", NULL},
    {SLOT_SEGMENT, "way: wall", "segments.a.sun", NULL},
    {SLOT_SEGMENT, "way: duct", "segments.a.duct.laid", "duct taken as new"},
    {SLOT_SEGMENT, "way: duct, duct: {size: 50 mm}", "segments.a.duct.laid", "duct taken as new"},
    {SLOT_SEGMENT, "way: duct, duct: {laid: existing}", "segments.a.duct.laid", NULL},
    {SLOT_SEGMENT, "way: duct", "segments.a.depth", "depth taken as 600 mm (common practice, no source)"},
    {SLOT_SEGMENT, "way: buried", "segments.a.depth", "depth taken as 600 mm (common practice, no source)"},
    {SLOT_SEGMENT, "way: buried, depth: 0.6 m", "segments.a.depth", NULL},
    {SLOT_SEGMENT, "way: wall, beside: {circuits: 1}", "segments.a.beside.arrangement",
     "circuits beside it taken as bunched"},
    {SLOT_SEGMENT, "way: wall, beside: {circuits: 1, arrangement: spaced}", "segments.a.beside.arrangement", NULL},
};

static const char *assumed_at(const struct Survey *survey, const char *where)
{
    const char *found = NULL;
    for (int i = 0; i < survey->assumed_count; i++) {
        if (text_same(survey->assumed[i].where, where)) {
            ck_assert_msg(found == NULL, "%s is assumed twice", where);
            found = survey->assumed[i].text;
        }
    }
    return found;
}

START_TEST(each_default_is_told_when_used)
{
    const struct AssumedRow *row = &rows[_i];
    char *text = read_route_with(row->slot, row->text);
    struct ReadRoute route = read_good(text);
    const char *found = assumed_at(route.survey, row->where);
    if (row->assumed == NULL) {
        ck_assert_msg(found == NULL, "with %s: %s", row->text, found);
    } else {
        ck_assert_msg(found != NULL, "with %s nothing is said of %s", row->text, row->where);
        ck_assert_str_eq(found, row->assumed);
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
    ck_assert_str_eq(assumed_at(route.survey, "runs.f.cable.cores"), "cores taken as 3");
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
    ck_assert_str_eq(assumed_at(route.survey, "runs.f.cable.cpc-run"),
                     "separate cpc taken as the run bond, the only earth run");
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
    ck_assert_str_eq(assumed_at(route.survey, "segments.fixed-to"), "fixed to timber: rail-a, rail-b");
    ck_assert_str_eq(assumed_at(route.survey, "segments.sun"), "taken as shaded from the sun: rail-a, rail-b");
    read_route_free(&route);
    for (int i = 0; i < 30; i++) {
        char line[64];
        snprintf(line, sizeof line, "- {name: f%d, way: fence, length: 1 m}\n", i);
        strcat(text, line);
    }
    route = read_good(text);
    ck_assert_str_eq(assumed_at(route.survey, "segments.fixed-to"),
                     "fixed to timber: rail-a, rail-b, f0, f1, f2, f3, f4, f5, f6, f7, f8, f9 and 20 more");
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
