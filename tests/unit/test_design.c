/* The calculations of the design stage, one by one. Expected figures are worked by hand in the comments from the
 * published tables; the tables themselves are held against their sources in test_tables.c. */
#include "run_suite.h"

#include "design/design.h"
#include "design/terms/design_private.h"

#include <math.h>

static struct Quantity given(double value)
{
    return (struct Quantity){.value = value, .given = true};
}

static struct Load amperes(double current_a, int phases)
{
    return (struct Load){.current_a = given(current_a), .phases = phases, .diversity = {.value = 1}};
}

static struct Load watts(double power_w, double power_factor, int phases)
{
    return (struct Load){
        .power_w = given(power_w), .power_factor = given(power_factor), .phases = phases, .diversity = {.value = 1}};
}

START_TEST(current_of_one_load)
{
    const struct Load kettle = watts(2300, 1, 1);
    ck_assert_double_eq_tol(load_current_a(&kettle, 230), 10.0, 1e-12);
    const struct Load motor = watts(6000, 0.8, 1); /* 6000 / (230 x 0.8) */
    ck_assert_double_eq_tol(load_current_a(&motor, 230), 32.608695652, 1e-9);
    const struct Load lathe = watts(7500, 0.86, 3); /* 7500 / (3 x 230 x 0.86) */
    ck_assert_double_eq_tol(load_current_a(&lathe, 230), 12.639029322, 1e-9);
    struct Load half = amperes(20, 1);
    half.diversity = given(0.5);
    ck_assert_double_eq_tol(load_current_a(&half, 230), 10.0, 1e-12);
    struct Load apparent = watts(4600, 1, 1);
    apparent.power_is_apparent = true;
    apparent.power_factor = (struct Quantity){.value = 1};
    ck_assert_double_eq_tol(load_current_a(&apparent, 230), 20.0, 1e-12);
}
END_TEST

START_TEST(loads_on_three_lines_fill_the_least_loaded)
{
    /* 10 to L1, 8 to L2, 6 to L3, then 5 to L3 (6 is least), then 4 to L2 (8 is least) */
    const struct Load loads[] = {amperes(10, 1), amperes(8, 1), amperes(6, 1), amperes(5, 1), amperes(4, 1)};
    const struct Run run = {.loads = loads, .load_count = 5};
    const struct Demand demand = load_demand(&run, 3, 230);
    ck_assert_double_eq_tol(demand.currents.line_a[0], 10, 1e-12);
    ck_assert_double_eq_tol(demand.currents.line_a[1], 12, 1e-12);
    ck_assert_double_eq_tol(demand.currents.line_a[2], 11, 1e-12);
    ck_assert_int_eq(demand.heaviest, 1);
    ck_assert_double_eq_tol(demand.design_a, 12, 1e-12);
}
END_TEST

START_TEST(power_factors_add_as_active_and_reactive_parts)
{
    struct Load loads[] = {amperes(10, 1), amperes(10, 1)};
    loads[0].power_factor = given(1.0);
    loads[1].power_factor = given(0.6);
    const struct Run run = {.loads = loads, .load_count = 2};
    /* active 10 + 6 = 16, reactive 8: cos = 16 / sqrt(320) */
    ck_assert_double_eq_tol(load_demand(&run, 1, 230).power_factor, 0.894427191, 1e-9);
    loads[0].power_factor.given = false;
    ck_assert_double_eq(load_demand(&run, 1, 230).power_factor, 0);
}
END_TEST

START_TEST(smallest_device_that_carries)
{
    double rating_a = 0;
    ck_assert(device_smallest(DEVICE_MCB, 26.0, &rating_a));
    ck_assert_double_eq(rating_a, 32);
    ck_assert(device_smallest(DEVICE_MCB, 32.0, &rating_a));
    ck_assert_double_eq(rating_a, 32);
    ck_assert(device_smallest(DEVICE_MCB, 32.001, &rating_a));
    ck_assert_double_eq(rating_a, 40);
    ck_assert(device_smallest(DEVICE_BS3036, 26.0, &rating_a));
    ck_assert_double_eq(rating_a, 30);
    ck_assert(!device_smallest(DEVICE_MCB, 126.0, &rating_a));
}
END_TEST

START_TEST(drop_figure_by_power_factor)
{
    struct DropFigure figure;
    ck_assert(drop_figure(edition_held(), DROP_4E4B, 10, 1, &figure)); /* 4.7, one figure */
    ck_assert_double_eq_tol(drop_effective_mv(&figure, 0), 4.7, 1e-12);
    ck_assert_double_eq_tol(drop_effective_mv(&figure, 0.9), 4.23, 1e-12);
    ck_assert(drop_figure(edition_held(), DROP_4E4B, 50, 1, &figure)); /* r 0.99 x 0.155 z 1.00 */
    ck_assert_double_eq_tol(drop_effective_mv(&figure, 0), 1.00, 1e-12);
    ck_assert_double_eq_tol(drop_effective_mv(&figure, 0.8), 0.99 * 0.8 + 0.155 * 0.6, 1e-12);
}
END_TEST

START_TEST(conductor_temperature_by_appendix_4)
{
    /* BS 7671 Appendix 4, 6.1, the example of 6 mm2 flat cable clipped: It 47 A, Ib 26 A, all factors 1:
     * Ct = (300 - (1 - 0.306) x 40) / 300 = 0.907, 7.3 becomes 6.62 mV/A/m. */
    const double degc = conductor_temperature(70, false, 26, 47, 1, 1);
    ck_assert_double_eq_tol(degc, 70 - (1 - 676.0 / 2209.0) * 40, 1e-9);
    ck_assert_double_eq_tol(resistance_ratio(degc, 70), 0.907, 0.0005);
    ck_assert_double_eq_tol(resistance_ratio(degc, 70) * 7.3, 6.62, 0.005);
    /* fully loaded it is the table's temperature, whatever the factors */
    ck_assert_double_eq_tol(conductor_temperature(90, false, 100 * 0.91 * 0.78, 100, 0.91, 0.78), 90, 1e-9);
    ck_assert_double_eq_tol(conductor_temperature(90, true, 100 * 0.93 * 1.28, 100, 0.93, 1.28), 90, 1e-9);
    /* and unloaded the ambient one: Ca of 40 degC for 70 degC is sqrt(30/40) */
    ck_assert_double_eq_tol(conductor_temperature(70, false, 0, 100, sqrt(0.75), 1), 40, 1e-9);
    ck_assert_double_eq(resistance_ratio(95, 90), 1);
}
END_TEST

START_TEST(sun_adds_twenty_kelvin)
{
    /* The derivation's own results relative to the 30 degC table value: 0.816 and 0.707 at 30 degC air; at 40 degC
     * 0.707 and 0.50, of which Ca is sqrt(50/60) and sqrt(30/40). */
    ck_assert_double_eq_tol(sun_factor(90, 30), 0.816, 0.0005);
    ck_assert_double_eq_tol(sun_factor(70, 30), 0.707, 0.0005);
    ck_assert_double_eq_tol(sun_factor(90, 40) * sqrt(50.0 / 60), 0.707, 0.0005);
    ck_assert_double_eq_tol(sun_factor(70, 40) * sqrt(30.0 / 40), 0.50, 0.0005);
    ck_assert_double_eq(sun_factor(70, 50), 0);
}
END_TEST

/* A stretch of `way` as the reader leaves it when nothing else is said. */
static struct Segment stretch(enum Way way)
{
    return (struct Segment){.name = "x",
                            .way = way,
                            .length_m = given(5),
                            .air_degc = {.value = 30},
                            .ground_degc = {.value = 20},
                            .soil_thermal_k_m_per_w = {.value = 2.5},
                            .insulated_length_m = {.value = 5},
                            .depth_m = {.value = 0.7}};
}

static struct Extent extent_of(const struct Segment *segment, int other_runs)
{
    struct Extent extent;
    const int along = 0;
    const int loaded_runs = 1 + other_runs;
    const struct Survey survey = {.segments = segment, .segment_count = 1};
    const struct Run run = {.along = &along, .along_count = 1};
    place_extents(&survey, &run, &loaded_runs, &extent);
    return extent;
}

/* A kind of each family. */
static const struct CableKind *one_of(enum Family family)
{
    static const enum CableType types[] = {[FAMILY_ARMOURED] = CABLE_BS5467,
                                           [FAMILY_MULTICORE] = CABLE_BS7211_MULTICORE,
                                           [FAMILY_FLAT] = CABLE_BS6004_FLAT};
    return cable_kind(types[family]);
}

static struct Situation place_at(const struct Segment *segment, enum Family family, int other_runs)
{
    const struct Extent extent = extent_of(segment, other_runs);
    return place_segment(edition_held(), segment, one_of(family), 70, &extent);
}

static bool wall_at(const struct Segment *segment, enum Family family, struct Situation *out)
{
    const struct Extent extent = extent_of(segment, 0);
    return place_wall(edition_held(), segment, one_of(family), 70, &extent, out);
}

/* Three partial lengths: the middle one may meet either of its neighbours, not both, for they are one length each. */
START_TEST(partial_insulation_may_meet_at_a_cut)
{
    struct Segment segments[4] = {stretch(WAY_LOFT_VOID), stretch(WAY_LOFT_VOID), stretch(WAY_LOFT_VOID),
                                  stretch(WAY_WALL)};
    const double insulated_m[] = {0.2, 0.2, 0.1, 0};
    for (int i = 0; i < 3; i++) {
        segments[i].insulation = INSULATION_SURROUNDED;
        segments[i].insulated_length_m = given(insulated_m[i]);
    }
    const int along[] = {0, 1, 2, 3};
    const int loaded_runs[] = {1, 1, 1, 1};
    const struct Survey survey = {.segments = segments, .segment_count = 4};
    const struct Run run = {.along = along, .along_count = 4};
    struct Extent extents[4];
    place_extents(&survey, &run, loaded_runs, extents);
    ck_assert_double_eq_tol(extents[0].surrounded_m, 0.4, 1e-12);
    ck_assert_double_eq_tol(extents[1].surrounded_m, 0.4, 1e-12);
    ck_assert_double_eq_tol(extents[2].surrounded_m, 0.3, 1e-12);
    ck_assert_double_eq(extents[3].surrounded_m, 0);
    segments[1].length_m = given(0.2); /* the middle one wholly: all three may be one */
    place_extents(&survey, &run, loaded_runs, extents);
    for (int i = 0; i < 3; i++) {
        ck_assert_double_eq_tol(extents[i].surrounded_m, 0.5, 1e-12);
    }
}
END_TEST

START_TEST(a_hole_takes_the_air_of_its_neighbours)
{
    struct Segment segments[4] = {stretch(WAY_LOFT_VOID), stretch(WAY_WALL), stretch(WAY_THROUGH_WALL),
                                  stretch(WAY_BURIED)};
    segments[0].air_degc = given(55);
    segments[0].name = "loft";
    segments[1].air_degc = given(40);
    segments[1].name = "wall";
    const int along[] = {0, 1, 2, 3};
    const int loaded_runs[] = {1, 1, 1, 1};
    const struct Survey survey = {.segments = segments, .segment_count = 4};
    const struct Run run = {.along = along, .along_count = 4};
    struct Extent extents[4];
    place_extents(&survey, &run, loaded_runs, extents);
    ck_assert_double_eq(extents[2].warmest_degc, 40);
    ck_assert_str_eq(extents[2].air_as, "wall");
    segments[1].air_degc = given(25); /* cooler than the route's own 30 degC */
    place_extents(&survey, &run, loaded_runs, extents);
    ck_assert_double_eq(extents[2].warmest_degc, 30);
    ck_assert_ptr_null(extents[2].air_as);
}
END_TEST

/* Under 0.35 m a guard counts as clipped, with what it joins on to; from there on method B. */
START_TEST(a_short_guard_on_armoured_cable)
{
    struct Segment segments[2] = {stretch(WAY_CONDUIT), stretch(WAY_TRUNKING)};
    segments[0].length_m = given(0.34);
    struct Situation situation = place_at(&segments[0], FAMILY_ARMOURED, 0);
    ck_assert_str_eq(method_name(situation.method), "C");
    ck_assert_int_eq(situation.judgement, SAY_JUDGED_SHORT_GUARD_AS_CLIPPED);
    ck_assert_str_eq(method_name(place_at(&segments[0], FAMILY_MULTICORE, 0).method), "B");
    segments[0].length_m = given(0.35);
    situation = place_at(&segments[0], FAMILY_ARMOURED, 0);
    ck_assert_str_eq(method_name(situation.method), "B");
    ck_assert_int_eq(situation.table, CAPACITY_4D2A);
    ck_assert_int_eq(situation.judgement, SAY_JUDGED_ENCLOSED_AS_UNARMOURED);
    segments[0].length_m = segments[1].length_m = given(0.2);
    const int along[] = {0, 1};
    const int loaded_runs[] = {1, 1};
    const struct Survey survey = {.segments = segments, .segment_count = 2};
    const struct Run run = {.along = along, .along_count = 2};
    struct Extent extents[2];
    place_extents(&survey, &run, loaded_runs, extents);
    ck_assert_str_eq(
        method_name(place_segment(edition_held(), &segments[0], one_of(FAMILY_ARMOURED), 70, &extents[0]).method), "B");
}
END_TEST

/* Every kind of cable in every way, with insulation or without: never by a table that is hotter than its insulation or
 * its terminals, and the table has the method. */
START_TEST(no_kind_is_rated_hotter_than_it_stands)
{
    static const double terminals_degc[] = {70, 90};
    const enum CableType type = (enum CableType)_i;
    const struct CableKind *kind = cable_kind(type);
    int covered = 0;
    for (int row = 0; kind->family != FAMILY_NONE && row < WAY_COUNT * INSULATION_COUNT * 2; row++) {
        const double degc = fmin(kind->insulation_degc, terminals_degc[row % 2]);
        struct Segment segment = stretch((enum Way)(row / 2 % WAY_COUNT));
        segment.insulation = (enum Insulation)(row / 2 / WAY_COUNT);
        segment.wall = WALL_INSULATED_CAVITY;
        const struct Extent extent = extent_of(&segment, 0);
        struct Situation found[2] = {place_segment(edition_held(), &segment, kind, degc, &extent)};
        if (segment.way == WAY_THROUGH_WALL) {
            ck_assert(place_wall(edition_held(), &segment, kind, degc, &extent, &found[1]));
        }
        for (int i = 0; i < 2; i++) {
            if (found[i].covered) {
                covered++;
                ck_assert_msg(capacity_degc(edition_held(), found[i].table) <= degc, "kind %d, way %d", _i,
                              (int)segment.way);
                ck_assert_double_eq(found[i].conductor_degc, degc);
                ck_assert(capacity_has_method(edition_held(), found[i].table, found[i].method, 2));
            }
        }
    }
    ck_assert(kind->family == FAMILY_NONE || covered > WAY_COUNT);
}
END_TEST

struct PlaceRow {
    enum Way way;
    enum Insulation insulation;
    const char *armoured, *multicore, *flat; /* method, NULL: not covered */
};
static const struct PlaceRow place_rows[] = {
    {WAY_WALL, INSULATION_NONE, "C", "C", "C"},
    {WAY_FENCE, INSULATION_NONE, "C", "C", "C"},
    {WAY_BEAM, INSULATION_NONE, "C", "C", "C"},
    {WAY_LOFT_VOID, INSULATION_NONE, "C", "C", "C"},
    {WAY_LOFT_VOID, INSULATION_ONE_SIDE, "C", "A", "101"},
    {WAY_LOFT_VOID, INSULATION_SURROUNDED, "C", "C", "103"},
    {WAY_UNDER_FLOOR, INSULATION_NONE, "B", "B", "B"},
    {WAY_UNDER_FLOOR, INSULATION_SURROUNDED, "C", "C", "103"},
    {WAY_STUD_WALL, INSULATION_NONE, "C", "A", "103"},
    {WAY_STUD_WALL, INSULATION_ONE_SIDE, "C", "A", "102"},
    {WAY_CEILING, INSULATION_NONE, "B", "B", "B"},
    {WAY_CEILING, INSULATION_ONE_SIDE, "C", "A", "101"},
    {WAY_CONDUIT, INSULATION_NONE, "B", "B", "B"},
    {WAY_TRUNKING, INSULATION_NONE, "B", "B", "B"},
    {WAY_TRAY, INSULATION_NONE, "E", "E", "C"},
    {WAY_LADDER, INSULATION_NONE, "E", "E", "C"},
    {WAY_CATENARY, INSULATION_NONE, "E", "E", "C"},
    {WAY_DUCT, INSULATION_NONE, "D", NULL, NULL},
    {WAY_BURIED, INSULATION_NONE, "D", NULL, NULL},
};

static void place_is(const struct PlaceRow *row, enum Family family, const char *method)
{
    struct Segment segment = stretch(row->way);
    segment.insulation = row->insulation;
    const struct Situation situation = place_at(&segment, family, 0);
    if (method == NULL) {
        ck_assert_msg(!situation.covered, "way %d family %d should not be covered", (int)row->way, (int)family);
        ck_assert_ptr_nonnull(situation.lacks);
        ck_assert_int_eq(situation.lacks->message, PHRASE_NOT_FOR_GROUND);
        ck_assert_int_eq(situation.lacks->said, SAY_NOT_FOR_GROUND);
        return;
    }
    ck_assert_msg(situation.covered, "way %d family %d should be covered", (int)row->way, (int)family);
    ck_assert_str_eq(method_name(situation.method), method);
}

START_TEST(method_of_each_way_and_cable)
{
    place_is(&place_rows[_i], FAMILY_ARMOURED, place_rows[_i].armoured);
    place_is(&place_rows[_i], FAMILY_MULTICORE, place_rows[_i].multicore);
    place_is(&place_rows[_i], FAMILY_FLAT, place_rows[_i].flat);
}
END_TEST

START_TEST(flat_cable_on_a_ceiling_by_thickness)
{
    struct Segment segment = stretch(WAY_CEILING);
    segment.insulation = INSULATION_ONE_SIDE;
    segment.thickness_m = given(0.1);
    ck_assert_str_eq(method_name(place_at(&segment, FAMILY_FLAT, 0).method), "100");
    segment.thickness_m = given(0.15);
    ck_assert_str_eq(method_name(place_at(&segment, FAMILY_FLAT, 0).method), "101");
}
END_TEST

static double factor_of(const struct Segment *segment, int other_runs, double size_mm2, const char *symbol)
{
    const struct Situation situation = place_at(segment, FAMILY_ARMOURED, other_runs);
    const struct RunTerms terms = {.conductor_degc = 70, .type = CABLE_BS5467, .cores = 3};
    struct Factor factors[RATING_FACTORS_MOST];
    int count = 0;
    ck_assert_ptr_null(segment_factors(NULL, &situation, &terms, size_mm2, factors, &count).lacks);
    for (int i = 0; i < count; i++) {
        if (text_same(factors[i].symbol, symbol)) {
            return factors[i].value;
        }
    }
    return 1;
}

START_TEST(grouping_by_arrangement)
{
    struct Segment segment = stretch(WAY_WALL);
    segment.has_beside = true;
    segment.beside = (struct Beside){.circuits = 2, .arrangement = ARRANGEMENT_BUNCHED};
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cg"), 0.70, 1e-12); /* 4C1, 3 bunched */
    ck_assert_double_eq_tol(factor_of(&segment, 1, 6, "Cg"), 0.65, 1e-12); /* and one more run of this file */
    segment.beside.arrangement = ARRANGEMENT_SINGLE_LAYER;
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cg"), 0.79, 1e-12); /* 4C1, single layer on a wall */
    segment.beside.arrangement = ARRANGEMENT_SPACED;
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cg"), 1.0, 1e-12);
    segment.beside.gap_m = given(0.02); /* under two diameters of 16.6 mm */
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cg"), 0.79, 1e-12);
    segment.way = WAY_TRAY;
    segment.beside = (struct Beside){.circuits = 3, .arrangement = ARRANGEMENT_SINGLE_LAYER};
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cg"), 0.77, 1e-12); /* 4C1, 4 on perforated tray */
    segment.way = WAY_LADDER;
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cg"), 0.80, 1e-12);
}
END_TEST

/* Table 4C1, ladder: four bunched 0.65, five 0.60; four and five in a layer 0.80. */
START_TEST(a_neighbour_never_helps_the_runs_of_the_file)
{
    struct Segment segment = stretch(WAY_LADDER);
    ck_assert_double_eq_tol(factor_of(&segment, 3, 6, "Cg"), 0.65, 1e-12);
    segment.has_beside = true;
    segment.beside = (struct Beside){.circuits = 1, .arrangement = ARRANGEMENT_SPACED};
    ck_assert_double_eq_tol(factor_of(&segment, 3, 6, "Cg"), 0.65, 1e-12);
    segment.beside.arrangement = ARRANGEMENT_SINGLE_LAYER;
    ck_assert_double_eq_tol(factor_of(&segment, 3, 6, "Cg"), 0.60, 1e-12);
    segment.lie = LIE_LAYER;
    ck_assert_double_eq_tol(factor_of(&segment, 3, 6, "Cg"), 0.80, 1e-12);
    segment.beside.arrangement = ARRANGEMENT_BUNCHED;
    ck_assert_double_eq_tol(factor_of(&segment, 3, 6, "Cg"), 0.60, 1e-12);
    segment.beside.arrangement = ARRANGEMENT_SPACED;
    segment.lie = LIE_SPACED;
    ck_assert_double_eq_tol(factor_of(&segment, 3, 6, "Cg"), 1.0, 1e-12);
    segment.way = WAY_CONDUIT; /* how they lie in a pipe is no choice */
    ck_assert_double_eq_tol(factor_of(&segment, 3, 6, "Cg"), 0.65, 1e-12);
    segment = stretch(WAY_BURIED); /* 4C2: two touching 0.75, two a diameter apart 0.80, three touching 0.65 */
    segment.lie = LIE_SPACED;
    ck_assert_double_eq_tol(factor_of(&segment, 1, 6, "Cg"), 0.80, 1e-12);
    segment.has_beside = true;
    segment.beside = (struct Beside){.circuits = 1, .arrangement = ARRANGEMENT_DUCT_SPACED, .gap_m = given(0.5)};
    ck_assert_double_eq_tol(factor_of(&segment, 1, 6, "Cg"), 0.70, 1e-12); /* three, a diameter apart at the closest */
    segment.lie = LIE_BUNCHED;
    ck_assert_double_eq_tol(factor_of(&segment, 1, 6, "Cg"), 0.65, 1e-12);
}
END_TEST

struct UnlikeRow {
    enum Way way;
    int other_runs;
    double size_mm2, least_mm2, most_mm2;
    double expected;
};
/* BS 7671 Appendix 4, 2.3.3: beyond three neighbouring sizes 1 / sqrt(n); within them Tables 4C1, 4C2. */
static const struct UnlikeRow unlike_rows[] = {
    {WAY_TRUNKING, 2, 2.5, 95, 95, 0.577350269}, /* 1 / sqrt 3 */
    {WAY_TRUNKING, 2, 95, 2.5, 95, 0.577350269}, /* and for the large one */
    {WAY_CONDUIT, 1, 2.5, 6, 6, 0.80},           /* 2.5, 4, 6: alike */
    {WAY_CONDUIT, 1, 2.5, 10, 10, 0.707106781},  /* 2.5, 4, 6, 10: not */
    {WAY_CONDUIT, 3, 6, 10, 16, 0.65},           /* 6, 10, 16: alike */
    {WAY_DUCT, 3, 6, 2.5, 10, 0.5},              /* 2.5 to 10, four circuits */
    {WAY_WALL, 1, 6, 25, 25, 0.707106781},       /* bunched on a wall: the safe side */
    {WAY_BURIED, 1, 6, 25, 25, 0.707106781},     /* under 0.75 of Table 4C2 */
    {WAY_BURIED, 8, 6, 25, 25, 0.333333333},     /* under 0.41 */
    {WAY_TRUNKING, 1, 25, 0, 0, 0.80},           /* no other size is known */
};

START_TEST(sizes_far_apart_take_the_formula)
{
    const struct UnlikeRow *row = &unlike_rows[_i];
    const struct Segment segment = stretch(row->way);
    struct Situation situation = place_at(&segment, FAMILY_MULTICORE, row->other_runs);
    struct Factor factor;
    situation.others = (struct Span){row->least_mm2, row->most_mm2};
    ck_assert(grouping_factor(NULL, &situation, row->size_mm2, 0, &factor));
    ck_assert_double_eq_tol(factor.value, row->expected, 1e-9);
}
END_TEST

START_TEST(circuits_beside_may_be_surveyed_as_unlike)
{
    struct Segment segment = stretch(WAY_TRUNKING);
    segment.has_beside = true;
    segment.beside = (struct Beside){.circuits = 2, .arrangement = ARRANGEMENT_BUNCHED};
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cg"), 0.70, 1e-12);
    segment.beside.unlike = true;
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cg"), 1 / sqrt(3.0), 1e-12);
    segment.way = WAY_WALL;
    segment.beside.arrangement = ARRANGEMENT_SPACED; /* clear of it: no group, whatever the sizes */
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cg"), 1.0, 1e-12);
    segment.way = WAY_DUCT;
    segment.beside = (struct Beside){.circuits = 1, .arrangement = ARRANGEMENT_DUCT_TOUCHING, .unlike = true};
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cg"), 1 / sqrt(2.0), 1e-12); /* under 0.85 of Table 4C3 */
    ck_assert_double_eq_tol(factor_of(&segment, 1, 6, "Cg"), 0.80 / sqrt(2.0), 1e-12);
}
END_TEST

START_TEST(grouping_in_the_ground)
{
    struct Segment segment = stretch(WAY_BURIED);
    ck_assert_double_eq_tol(factor_of(&segment, 1, 6, "Cg"), 0.75, 1e-12); /* 4C2, 2 touching */
    segment.has_beside = true;
    segment.beside = (struct Beside){.circuits = 1, .arrangement = ARRANGEMENT_SPACED, .gap_m = given(0.3)};
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cg"), 0.90, 1e-12); /* the 0.25 m column */
    segment.beside.gap_m = given(0.1);
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cg"), 0.80, 1e-12); /* over one diameter of 16.6 mm */
    segment.beside.gap_m = given(0.01);
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cg"), 0.75, 1e-12);
    segment.way = WAY_DUCT;
    segment.beside = (struct Beside){.circuits = 2, .arrangement = ARRANGEMENT_DUCT_SPACED, .gap_m = given(0.25)};
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cg"), 0.85, 1e-12);        /* 4C3, 3 ducts */
    ck_assert_double_eq_tol(factor_of(&segment, 1, 6, "Cg"), 0.85 * 0.80, 1e-12); /* two in this duct, bunched */
    segment.beside.arrangement = ARRANGEMENT_BUNCHED;
    ck_assert_double_eq_tol(factor_of(&segment, 1, 6, "Cg"), 0.65, 1e-12); /* four in this duct */
}
END_TEST

/* Tables 4C2 and 4C3, the row of three circuits, whose columns all differ: each column from its own gap on, and what is
 * a millimetre closer by the column before. A 6 mm2 cable is 16.6 mm thick. */
static const struct {
    enum Way way;
    double gap_m, factor;
} column_rows[] = {
    {WAY_BURIED, 0, 0.70}, /* spaced, and no gap said */
    {WAY_BURIED, 0.016, 0.65}, {WAY_BURIED, 0.017, 0.70}, {WAY_BURIED, 0.124, 0.70}, {WAY_BURIED, 0.125, 0.75},
    {WAY_BURIED, 0.249, 0.75}, {WAY_BURIED, 0.25, 0.80},  {WAY_BURIED, 0.499, 0.80}, {WAY_BURIED, 0.5, 0.85},
    {WAY_DUCT, 0, 0.75},       {WAY_DUCT, 0.249, 0.75},   {WAY_DUCT, 0.25, 0.85},    {WAY_DUCT, 0.499, 0.85},
    {WAY_DUCT, 0.5, 0.90},     {WAY_DUCT, 0.999, 0.90},   {WAY_DUCT, 1.0, 0.95},
};

START_TEST(columns_begin_at_their_gap)
{
    struct Segment segment = stretch(column_rows[_i].way);
    segment.has_beside = true;
    segment.beside = (struct Beside){.circuits = 2, .arrangement = ARRANGEMENT_DUCT_SPACED};
    if (column_rows[_i].way == WAY_BURIED) {
        segment.beside.arrangement = ARRANGEMENT_SPACED;
    }
    if (column_rows[_i].gap_m > 0) {
        segment.beside.gap_m = given(column_rows[_i].gap_m);
    }
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cg"), column_rows[_i].factor, 1e-12);
}
END_TEST

START_TEST(insulation_counts_by_its_own_length)
{
    struct Segment segment = stretch(WAY_LOFT_VOID);
    segment.insulation = INSULATION_SURROUNDED;
    segment.insulated_length_m = given(0.1);
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Ci"), 0.78, 1e-12);
    segment.insulated_length_m = given(0.15); /* next longer row */
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Ci"), 0.63, 1e-12);
    segment.insulated_length_m = given(2);
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Ci"), 0.50, 1e-12);
    segment.insulated_length_m = given(0.1);
    ck_assert_double_eq_tol(factor_of(&segment, 0, 16, "Ci"), 0.50, 1e-12); /* the table ends at 10 mm2 */
}
END_TEST

START_TEST(ground_factors)
{
    struct Segment segment = stretch(WAY_DUCT);
    segment.ground_degc.value = 30;
    segment.soil_thermal_k_m_per_w.value = 1.2; /* next drier row 1.5 */
    segment.depth_m.value = 0.7;
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Ca"), 0.89, 1e-12);
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cs"), 1.10, 1e-12);
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cd"), 1.00, 1e-12);
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cc"), 0.9, 1e-12);
    segment.depth_m.value = 0.9; /* deeper than the soil table speaks of: no gain; Cd by the 1.0 m row */
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cs"), 1.0, 1e-12);
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cd"), 0.98, 1e-12);
    segment.depth_m.value = 0.5; /* shallow: no gain */
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cd"), 1.0, 1e-12);
    segment.way = WAY_BURIED;
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cs"), 1.28, 1e-12);
}
END_TEST

START_TEST(fuse_and_ground_factors_stand_together)
{
    struct Segment segment = stretch(WAY_BURIED);
    const struct Situation situation = place_at(&segment, FAMILY_ARMOURED, 0);
    const struct RunTerms terms = {.conductor_degc = 70, .semi_enclosed = true, .type = CABLE_BS5467, .cores = 3};
    ck_assert_double_eq_tol(segment_factors(NULL, &situation, &terms, 6, NULL, NULL).product, 0.9 * 0.725, 1e-12);
}
END_TEST

static void same_sums_for_sizes(const struct Situation *kept, const struct RunTerms *terms)
{
    static const double sizes_mm2[] = {1.5, 10, 16, 95};
    for (int i = 0; i < 4; i++) {
        const struct FactorSums own = segment_factors(NULL, kept, terms, sizes_mm2[i], NULL, NULL);
        const struct FactorSums sums = factor_sums(kept, terms, sizes_mm2[i]);
        ck_assert_double_eq(sums.product, own.product);
        ck_assert_double_eq(sums.ambient, own.ambient);
        ck_assert_double_eq(sums.own, own.own);
    }
}

/* What is kept for all sizes is what each size comes to; where more than insulation asks for the size nothing is kept.
 */
START_TEST(factors_kept_for_every_size)
{
    const struct RunTerms terms = {.conductor_degc = 70, .type = CABLE_BS5467, .cores = 3};
    struct Segment segment = stretch(WAY_WALL);
    segment.has_beside = true;
    segment.beside = (struct Beside){.circuits = 3, .arrangement = ARRANGEMENT_SPACED};
    for (int gap = 0; gap < 2; gap++) {
        segment.beside.gap_m = gap > 0 ? given(0.05) : segment.beside.gap_m;
        for (int runs = 0; runs < 2; runs++) {
            struct Situation kept = place_at(&segment, FAMILY_ARMOURED, runs);
            factors_by_size(&terms, &kept);
            ck_assert(kept.two_sums == (gap == 0 && runs == 0));
            same_sums_for_sizes(&kept, &terms);
        }
    }
    segment = stretch(WAY_LOFT_VOID);
    segment.insulation = INSULATION_SURROUNDED;
    segment.insulated_length_m = given(0.05);
    struct Situation insulated = place_at(&segment, FAMILY_ARMOURED, 0);
    factors_by_size(&terms, &insulated);
    ck_assert(insulated.two_sums && insulated.thin.product > insulated.thick.product);
    same_sums_for_sizes(&insulated, &terms);
}
END_TEST

static void lacks_is(const struct Situation *situation, enum DiagPhrase told, enum Saying says)
{
    const struct RunTerms terms = {.conductor_degc = 70, .type = CABLE_BS5467, .cores = 3};
    const struct Lack *lacks = segment_factors(NULL, situation, &terms, 6, NULL, NULL).lacks;
    ck_assert_ptr_nonnull(lacks);
    ck_assert_int_eq(lacks->message, told);
    ck_assert_int_eq(lacks->said, says);
}

START_TEST(what_tables_do_not_give_is_said)
{
    struct Segment segment = stretch(WAY_WALL);
    segment.air_degc.value = 65;
    struct Situation situation = place_at(&segment, FAMILY_ARMOURED, 0);
    lacks_is(&situation, PHRASE_AIR_TOO_WARM, SAY_AIR_TOO_WARM);
    segment = stretch(WAY_BURIED);
    segment.soil_thermal_k_m_per_w.value = 3.5;
    situation = place_at(&segment, FAMILY_ARMOURED, 0);
    lacks_is(&situation, PHRASE_SOIL_TOO_DRY, SAY_SOIL_TOO_DRY);
    segment = stretch(WAY_BURIED);
    segment.ground_degc.value = 70;
    situation = place_at(&segment, FAMILY_ARMOURED, 0);
    lacks_is(&situation, PHRASE_GROUND_TOO_WARM, SAY_GROUND_TOO_WARM);
    segment = stretch(WAY_BURIED);
    segment.depth_m.value = 3.1;
    situation = place_at(&segment, FAMILY_ARMOURED, 0);
    lacks_is(&situation, PHRASE_TOO_DEEP, SAY_TOO_DEEP);
    segment = stretch(WAY_WALL);
    segment.has_beside = true;
    segment.beside.circuits = 20;
    situation = place_at(&segment, FAMILY_ARMOURED, 0);
    lacks_is(&situation, PHRASE_GROUP_TOO_LARGE, SAY_GROUP_TOO_LARGE);
    segment = stretch(WAY_WALL);
    segment.air_degc.value = 50;
    segment.sun = SUN_FULL;
    situation = place_at(&segment, FAMILY_ARMOURED, 0);
    lacks_is(&situation, PHRASE_SUN_TOO_WARM, SAY_SUN_TOO_WARM);
}
END_TEST

/* Tables 4C1, 4C2 and 4C3 end at twenty circuits, and between two rows the larger group is taken; nothing is
 * extrapolated. */
START_TEST(a_group_past_its_table_has_no_factor)
{
    struct Segment segment = stretch(WAY_BURIED);
    ck_assert_double_eq_tol(factor_of(&segment, 9, 6, "Cg"), 0.36, 1e-12); /* ten by the row of twelve */
    ck_assert_double_eq_tol(factor_of(&segment, 19, 6, "Cg"), 0.29, 1e-12);
    struct Situation situation = place_at(&segment, FAMILY_ARMOURED, 20);
    lacks_is(&situation, PHRASE_GROUP_TOO_LARGE, SAY_GROUP_TOO_LARGE);
    segment = stretch(WAY_DUCT);
    ck_assert_double_eq_tol(factor_of(&segment, 19, 6, "Cg"), 0.38, 1e-12); /* twenty in one duct, bunched */
    situation = place_at(&segment, FAMILY_ARMOURED, 20);
    lacks_is(&situation, PHRASE_GROUP_TOO_LARGE, SAY_GROUP_TOO_LARGE);
    segment.has_beside = true;
    segment.beside = (struct Beside){.circuits = 19, .arrangement = ARRANGEMENT_DUCT_TOUCHING};
    ck_assert_double_eq_tol(factor_of(&segment, 0, 6, "Cg"), 0.34, 1e-12); /* twenty ducts */
    segment.beside.circuits = 20;
    situation = place_at(&segment, FAMILY_ARMOURED, 0);
    lacks_is(&situation, PHRASE_GROUP_TOO_LARGE, SAY_GROUP_TOO_LARGE);
}
END_TEST

START_TEST(a_wall_adds_only_what_it_is_made_of)
{
    struct Situation wall;
    struct Segment segment = stretch(WAY_THROUGH_WALL);
    segment.length_m = given(0.3);
    segment.insulated_length_m = (struct Quantity){.value = 0.3};
    segment.wall = WALL_CAVITY;
    ck_assert(!wall_at(&segment, FAMILY_ARMOURED, &wall));
    segment.wall = WALL_INSULATED_CAVITY;
    ck_assert(wall_at(&segment, FAMILY_ARMOURED, &wall));
    ck_assert_double_eq_tol(wall.insulated_mm, 300, 1e-9);
    segment.wall = WALL_STONE;
    segment.length_m = given(0.6);
    ck_assert(wall_at(&segment, FAMILY_ARMOURED, &wall));
    ck_assert_str_eq(method_name(wall.method), "C");
    ck_assert_double_eq(wall.insulated_mm, 0);
    segment.wall = WALL_TIMBER;
    ck_assert(wall_at(&segment, FAMILY_MULTICORE, &wall));
    ck_assert_str_eq(method_name(wall.method), "A");
    ck_assert(wall_at(&segment, FAMILY_ARMOURED, &wall));
    ck_assert_double_eq_tol(wall.insulated_mm, 600, 1e-9);
}
END_TEST

START_TEST(insulation_and_walls_go_on_over_joins)
{
    struct Segment segments[4] = {stretch(WAY_LOFT_VOID), stretch(WAY_LOFT_VOID), stretch(WAY_THROUGH_WALL),
                                  stretch(WAY_THROUGH_WALL)};
    for (int i = 0; i < 4; i++) {
        segments[i].length_m = given(0.2);
        segments[i].insulated_length_m = (struct Quantity){.value = 0.2};
        segments[i].insulation = i < 2 ? INSULATION_SURROUNDED : INSULATION_NONE;
    }
    segments[0].air_degc = given(45);
    const int along[] = {0, 1, 2, 3};
    const int loaded_runs[] = {1, 2, 1, 1};
    const struct Survey survey = {.segments = segments, .segment_count = 4};
    const struct Run run = {.along = along, .along_count = 4};
    struct Extent extents[4];
    place_extents(&survey, &run, loaded_runs, extents);
    ck_assert_double_eq_tol(extents[0].surrounded_m, 0.4, 1e-12);
    ck_assert_double_eq_tol(extents[1].surrounded_m, 0.4, 1e-12);
    ck_assert_double_eq(extents[2].surrounded_m, 0);
    ck_assert_double_eq_tol(extents[2].wall_m, 0.4, 1e-12);
    ck_assert_double_eq_tol(extents[3].wall_m, 0.4, 1e-12);
    ck_assert_double_eq_tol(extents[3].warmest_degc, 30, 1e-12); /* not that of a stretch further off */
    ck_assert_int_eq(extents[1].other_runs, 1);
    segments[1].insulated_length_m = given(0.1); /* only a part: it may lie at either cut */
    place_extents(&survey, &run, loaded_runs, extents);
    ck_assert_double_eq_tol(extents[0].surrounded_m, 0.3, 1e-12);
    ck_assert_double_eq_tol(extents[1].surrounded_m, 0.3, 1e-12);
    ck_assert_double_eq_tol(extents[1].insulated_m, 0.1, 1e-12);
}
END_TEST

/* BS EN 61386-24; which is the next larger duct is asked by number, from the smallest on. */
START_TEST(ducts_come_in_their_sizes)
{
    static const double nominal_mm[] = {25, 32, 40, 50, 63, 75, 90, 110, 125, 160, 180, 200};
    enum { SIZES = (int)(sizeof nominal_mm / sizeof nominal_mm[0]) };
    for (int i = 0; i < SIZES; i++) {
        ck_assert_double_eq(design_duct_size(i), nominal_mm[i]);
    }
    ck_assert_double_eq(design_duct_size(-1), 0);
    ck_assert_double_eq(design_duct_size(SIZES), 0);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("design");
    TCase *calculations = tcase_create("calculations");
    tcase_add_test(calculations, current_of_one_load);
    tcase_add_test(calculations, loads_on_three_lines_fill_the_least_loaded);
    tcase_add_test(calculations, power_factors_add_as_active_and_reactive_parts);
    tcase_add_test(calculations, smallest_device_that_carries);
    tcase_add_test(calculations, drop_figure_by_power_factor);
    tcase_add_test(calculations, conductor_temperature_by_appendix_4);
    tcase_add_test(calculations, sun_adds_twenty_kelvin);
    suite_add_tcase(suite, calculations);
    TCase *places = tcase_create("places");
    tcase_add_loop_test(places, method_of_each_way_and_cable, 0, (int)(sizeof place_rows / sizeof place_rows[0]));
    tcase_add_test(places, flat_cable_on_a_ceiling_by_thickness);
    tcase_add_test(places, grouping_by_arrangement);
    tcase_add_test(places, a_neighbour_never_helps_the_runs_of_the_file);
    tcase_add_loop_test(places, sizes_far_apart_take_the_formula, 0, (int)(sizeof unlike_rows / sizeof unlike_rows[0]));
    tcase_add_test(places, circuits_beside_may_be_surveyed_as_unlike);
    tcase_add_test(places, grouping_in_the_ground);
    tcase_add_loop_test(places, columns_begin_at_their_gap, 0, (int)(sizeof column_rows / sizeof column_rows[0]));
    tcase_add_test(places, insulation_counts_by_its_own_length);
    tcase_add_test(places, ground_factors);
    tcase_add_test(places, fuse_and_ground_factors_stand_together);
    tcase_add_test(places, factors_kept_for_every_size);
    tcase_add_test(places, what_tables_do_not_give_is_said);
    tcase_add_test(places, a_group_past_its_table_has_no_factor);
    tcase_add_test(places, a_wall_adds_only_what_it_is_made_of);
    tcase_add_test(places, insulation_and_walls_go_on_over_joins);
    tcase_add_test(places, partial_insulation_may_meet_at_a_cut);
    tcase_add_test(places, a_hole_takes_the_air_of_its_neighbours);
    tcase_add_test(places, a_short_guard_on_armoured_cable);
    tcase_add_test(places, ducts_come_in_their_sizes);
    tcase_add_loop_test(places, no_kind_is_rated_hotter_than_it_stands, 0, CABLE_COUNT);
    suite_add_tcase(suite, places);
    return run_suite(suite);
}
