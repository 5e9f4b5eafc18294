/* Rating factors and dimensions against physics and against each other. Some models have a constant that was chosen to
 * suit (inner resistance, diameter, fin constant): those test the shape of a column, not its level. */
#include "csv_file.h"
#include "table_suites.h"
#include "tables/tables.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

/* A conductor at Tc sheds its heat into surroundings at Ta: Ca = sqrt((Tc - Ta) / (Tc - base)). */
START_TEST(ambient_by_formula)
{
    const double conductor_degc = _i == 0 ? 70 : 90;
    int rows = 0;
    for (int degc = 10; degc <= 80; degc += 5) {
        struct Figure figure;
        if (degc >= 30 && ambient_air(edition_held(), conductor_degc, degc, &figure)) {
            const double due = sqrt((conductor_degc - degc) / (conductor_degc - 30));
            ck_assert_double_le(fabs(figure.value - due), 0.0075);
            rows++;
        }
        if (ambient_ground(edition_held(), conductor_degc, degc, &figure)) {
            const double due = sqrt((conductor_degc - degc) / (conductor_degc - 20));
            ck_assert_double_le(fabs(figure.value - due), 0.0075);
            rows++;
        }
    }
    ck_assert_int_eq(rows, _i == 0 ? 7 + 11 : 11 + 15);
    /* below its base the air table gives less than the formula, never more */
    struct Figure cool;
    ck_assert(ambient_air(edition_held(), conductor_degc, 25, &cool));
    ck_assert_double_gt(cool.value, 1);
    ck_assert_double_lt(cool.value, sqrt((conductor_degc - 25) / (conductor_degc - 30)));
}
END_TEST

/* Soil is only a part of the whole thermal resistance, so Cs stays nearer to 1 than sqrt(2.5 / resistivity). */
START_TEST(soil_within_its_bound)
{
    static const double resistivity[] = {0.5, 0.7, 1.0, 1.5, 2.0, 2.5, 3.0};
    double before = 9;
    for (int at = 0; at < 7; at++) {
        struct Figure figure;
        ck_assert(soil_resistivity(edition_held(), resistivity[at], _i == 1, &figure));
        const double bound = sqrt(2.5 / resistivity[at]);
        ck_assert_double_le(resistivity[at] < 2.5 ? figure.value - bound : bound - figure.value, 0.02);
        ck_assert_double_lt(figure.value, before);
        before = figure.value;
        if (_i == 1) { /* in a duct the soil matters less, so the factor is nearer to 1 */
            struct Figure direct;
            ck_assert(soil_resistivity(edition_held(), resistivity[at], false, &direct));
            ck_assert_double_le(fabs(figure.value - 1), fabs(direct.value - 1));
        }
    }
}
END_TEST

/* Outside resistance rho / (2 pi) ln(4 L / D) and a fixed inner part, soil of 1.2 K.m/W. */
START_TEST(depth_by_model)
{
    static const double depth_m[] = {0.5, 0.7, 1.0, 1.25, 1.5, 1.75, 2.0, 2.5, 3.0};
    const double diameter_m = _i == 0 ? 0.03 : 0.10;
    const double inner = _i == 0 ? 0.45 : 0.70;
    const double at_base = 1.2 / (2 * pi) * log(4 * 0.7 / diameter_m) + inner;
    double before = 9;
    for (int at = 0; at < 9; at++) {
        struct Figure figure;
        ck_assert(laying_depth(edition_held(), depth_m[at], _i == 1, &figure));
        const double here = 1.2 / (2 * pi) * log(4 * depth_m[at] / diameter_m) + inner;
        ck_assert_double_le(fabs(figure.value - sqrt(at_base / here)), 0.025);
        ck_assert_double_lt(figure.value, before);
        before = figure.value;
    }
}
END_TEST

/* n cables that shed no more heat together than one alone could carry 1 / sqrt n each; they never do worse. */
START_TEST(grouping_in_air_within_its_bounds)
{
    const enum GroupAir column = (enum GroupAir)_i;
    double before = 9;
    for (int circuits = 1; circuits <= 20; circuits++) {
        struct Figure figure;
        ck_assert(grouping_air(edition_held(), column, circuits, &figure));
        ck_assert_double_le(figure.value, before);
        ck_assert(figure.value >= 1 / sqrt(figure.row) - 0.005 || (column == GROUP_CEILING_LAYER && circuits == 1));
        ck_assert_double_le(figure.value, 1);
        before = figure.value;
    }
}
END_TEST

/* n equal heat sources in a row at depth L, each warmed by the others and their images above the ground. */
static double row_of_sources(int count, double apart_m, double diameter_m, double inner, double k_m_per_w)
{
    const double depth_m = 0.7;
    const double own = inner + k_m_per_w / (2 * pi) * log(4 * depth_m / diameter_m);
    double worst = 0;
    for (int at = 0; at < count; at++) {
        double sum = 0;
        for (int other = 0; other < count; other++) {
            if (other != at) {
                const double between_m = fabs((at - other) * apart_m);
                sum += log(hypot(2 * depth_m, between_m) / between_m);
            }
        }
        worst = fmax(worst, k_m_per_w / (2 * pi) * sum);
    }
    return sqrt(own / (own + worst));
}

START_TEST(buried_groups)
{
    static const double gap_m[GROUP_BURIED_COUNT] = {0, 0.035, 0.125, 0.25, 0.5};
    for (int column = 0; column < GROUP_BURIED_COUNT; column++) {
        double before = 1;
        for (int circuits = 2; circuits <= 20; circuits++) {
            struct Figure figure;
            struct Figure wider;
            ck_assert(grouping_buried(edition_held(), (enum GroupBuried)column, circuits, &figure));
            ck_assert_double_le(figure.value, before);
            before = figure.value;
            if (column + 1 < GROUP_BURIED_COUNT) {
                ck_assert(grouping_buried(edition_held(), (enum GroupBuried)(column + 1), circuits, &wider));
                ck_assert_double_le(figure.value, wider.value);
            }
            if ((int)figure.row == circuits) {
                const double model = row_of_sources(circuits, gap_m[column] + 0.035, 0.035, 0.35, 2.5);
                ck_assert_double_le(fabs(figure.value - model), circuits <= 6 ? 0.03 : 0.07);
            }
        }
    }
}
END_TEST

START_TEST(grouped_ducts)
{
    static const double gap_m[GROUP_DUCTS_COUNT] = {0, 0.25, 0.5, 1.0};
    for (int column = 0; column < GROUP_DUCTS_COUNT; column++) {
        double before = 1;
        for (int circuits = 2; circuits <= 20; circuits++) {
            struct Figure figure;
            struct Figure wider;
            ck_assert(grouping_ducts(edition_held(), (enum GroupDucts)column, circuits, &figure));
            ck_assert_double_le(figure.value, before);
            before = figure.value;
            if (column + 1 < GROUP_DUCTS_COUNT) {
                ck_assert(grouping_ducts(edition_held(), (enum GroupDucts)(column + 1), circuits, &wider));
                ck_assert_double_le(figure.value, wider.value);
            }
            /* beyond six the print falls under the model, to the safe side; above it, nowhere */
            const double model = row_of_sources(circuits, gap_m[column] + 0.11, 0.11, 1.3, 2.5);
            ck_assert_double_le(figure.value - model, 0.045);
            ck_assert(circuits > 6 || model - figure.value <= 0.045);
        }
    }
}
END_TEST

/* A duct keeps cables further apart than the same gap between the cables does. */
START_TEST(ducts_no_worse_than_direct)
{
    static const enum GroupBuried direct[] = {BURIED_TOUCHING, BURIED_250_MM, BURIED_500_MM};
    static const enum GroupDucts ducts[] = {DUCTS_TOUCHING, DUCTS_250_MM, DUCTS_500_MM};
    for (int at = 0; at < 3; at++) {
        for (int circuits = 1; circuits <= 20; circuits++) {
            struct Figure one;
            struct Figure other;
            ck_assert(grouping_buried(edition_held(), direct[at], circuits, &one));
            ck_assert(grouping_ducts(edition_held(), ducts[at], circuits, &other));
            ck_assert_double_ge(other.value, one.value);
        }
    }
}
END_TEST

/* Current that the middle of an insulated length allows: the conductor is a fin that carries heat to the cooler parts,
 * and within the insulation it sheds a quarter (0.5 squared) of what it sheds outside. `m` is the fin constant, 1/m. */
static double fin(double length_mm, double m)
{
    const double half_m = length_mm / 2000;
    const double inside = m / 2;
    return 1 / sqrt(4 - 3 * m / (inside * sinh(inside * half_m) + m * cosh(inside * half_m)));
}

START_TEST(insulation_falls_to_half)
{
    static const double length_mm[] = {50, 100, 200, 400, 500};
    double before = 1;
    double best = 9;
    for (int tenths = 20; tenths < 400; tenths++) {
        double worst = 0;
        for (int at = 0; at < 5; at++) {
            struct Figure figure;
            ck_assert(insulation_length(edition_held(), length_mm[at], &figure));
            worst = fmax(worst, fabs(figure.value - fin(length_mm[at], tenths / 10.0)));
        }
        best = fmin(best, worst);
    }
    ck_assert_double_le(best, 0.035); /* one constant fits all five lengths */
    for (int at = 0; at < 5; at++) {
        struct Figure figure;
        ck_assert(insulation_length(edition_held(), length_mm[at], &figure));
        ck_assert_double_lt(figure.value, before);
        before = figure.value;
    }
    ck_assert(csv_same(before, 0.5));
}
END_TEST

START_TEST(supports_in_their_order)
{
    static const double overall_mm[] = {10, 18, 30};
    for (int at = 0; at < 3; at++) {
        double spacing_m[2][2];
        for (int armoured = 0; armoured <= 1; armoured++) {
            for (int vertical = 0; vertical <= 1; vertical++) {
                ck_assert(support_spacing(armoured, overall_mm[at], vertical, &spacing_m[armoured][vertical]));
            }
            ck_assert_double_le(spacing_m[armoured][0], spacing_m[armoured][1]);
        }
        ck_assert_double_le(spacing_m[0][0], spacing_m[1][0]);
        ck_assert_double_le(spacing_m[0][1], spacing_m[1][1]);
    }
}
END_TEST

START_TEST(cables_hold_together)
{
    static const double sizes_mm2[] = {1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95};
    int cables = 0;
    for (int cores = 2; cores <= 5; cores++) {
        double before_kg = 0;
        for (int at = 0; at < (cores < 5 ? 11 : 8); at++) {
            struct CableDimensions dims;
            ck_assert(cable_dimensions(CABLE_BS5467, cores, sizes_mm2[at], &dims));
            ck_assert_double_gt(dims.weight_kg_per_km, before_kg);
            ck_assert_double_gt(dims.weight_kg_per_km, cores * 8.96 * sizes_mm2[at]); /* more than its copper */
            /* what is left over armour and bedding is the sheath */
            const double sheath_mm = (dims.overall_mm - dims.under_armour_mm) / 2 - dims.wire_mm;
            ck_assert_double_ge(sheath_mm, 1.2);
            ck_assert_double_le(sheath_mm, 2.3);
            before_kg = dims.weight_kg_per_km;
            cables++;
        }
    }
    ck_assert_int_eq(cables, 41);
}
END_TEST

/* Each make of each cable goes into its usual gland, but for one that is known not to. */
START_TEST(usual_glands_take_their_cables)
{
    struct CsvFile makes = csv_open("cable-dims.csv");
    struct CsvFile glands = csv_open("gland-size.csv");
    int outgrown = 0;
    for (int row = 0; row < makes.rows; row++) {
        struct CableDimensions dims;
        const double size_mm2 = csv_number(&makes, row, 1);
        ck_assert(cable_dimensions(CABLE_BS5467, (int)csv_number(&makes, row, 0), size_mm2, &dims));
        int gland = 0;
        while (!text_same(csv_text(&glands, gland, 0), dims.usual_gland)) {
            gland++;
        }
        const double under_mm = csv_number(&makes, row, csv_column(&makes, "under_armour_mm"));
        const double overall_mm = csv_number(&makes, row, csv_column(&makes, "overall_mm"));
        ck_assert_double_ge(under_mm, csv_number(&glands, gland, csv_column(&glands, "inner_min_mm")));
        ck_assert_double_ge(overall_mm, csv_number(&glands, gland, csv_column(&glands, "outer_min_mm")));
        ck_assert_double_ge(dims.wire_mm, csv_number(&glands, gland, csv_column(&glands, "wire_min_mm")));
        ck_assert_double_le(dims.wire_mm, csv_number(&glands, gland, csv_column(&glands, "wire_max_mm")));
        if (under_mm > csv_number(&glands, gland, csv_column(&glands, "inner_max_mm")) ||
            overall_mm > csv_number(&glands, gland, csv_column(&glands, "outer_max_mm"))) {
            /* both lists give 25, which takes the shaped make; the circular one needs 32 */
            ck_assert_str_eq(csv_text(&makes, row, 0), "2");
            ck_assert_str_eq(csv_text(&makes, row, 1), "35");
            ck_assert_str_eq(csv_text(&makes, row, 2), "circular");
            outgrown++;
        }
    }
    ck_assert_int_eq(outgrown, 1);
    csv_close(&glands);
    csv_close(&makes);
}
END_TEST

Suite *suite_factor_physics(void)
{
    Suite *suite = suite_create("factors and dimensions against physics");
    TCase *tests = tcase_create("physics");
    tcase_add_loop_test(tests, ambient_by_formula, 0, 2);
    tcase_add_loop_test(tests, soil_within_its_bound, 0, 2);
    tcase_add_loop_test(tests, depth_by_model, 0, 2);
    tcase_add_loop_test(tests, grouping_in_air_within_its_bounds, 0, GROUP_AIR_COUNT);
    tcase_add_test(tests, buried_groups);
    tcase_add_test(tests, grouped_ducts);
    tcase_add_test(tests, ducts_no_worse_than_direct);
    tcase_add_test(tests, insulation_falls_to_half);
    tcase_add_test(tests, supports_in_their_order);
    tcase_add_test(tests, cables_hold_together);
    tcase_add_test(tests, usual_glands_take_their_cables);
    suite_add_tcase(suite, tests);
    return suite;
}
