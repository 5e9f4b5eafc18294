/* Worked examples that others published, as far as the tables alone answer them. */
#include "csv_file.h"
#include "fault_suites.h"
#include "tables/fault_tables.h"

#include <math.h>
#include <stdio.h>

static double cell(const struct CsvFile *file, int row, const char *head)
{
    return csv_number(file, row, csv_column(file, head));
}

/* The program's own k for a line of the case; NAN for the metals and sizes that it does not have. */
static double k_of(const char *name)
{
    static const struct {
        const char *name;
        enum KTable k;
        double degc;
    } known[] = {
        {"live_core_70", K_LIVE, 70},    {"live_core_90", K_LIVE, 90}, {"separate_70", K_SEPARATE, 70},
        {"separate_90", K_SEPARATE, 90}, {"armour_70", K_ARMOUR, 70},  {"armour_90", K_ARMOUR, 90},
    };
    for (size_t at = 0; at < sizeof known / sizeof known[0]; at++) {
        if (text_same(known[at].name, name)) {
            return k_value(edition_held(), known[at].k, known[at].degc);
        }
    }
    return NAN;
}

START_TEST(k_from_temperatures)
{
    struct CsvFile file = csv_open("cases/k-from-temperatures.csv");
    int own = 0;
    for (int row = 0; row < file.rows; row++) {
        const char *const material = csv_text(&file, row, csv_column(&file, "material"));
        const bool copper = text_same(material, "copper");
        const bool steel = text_same(material, "steel");
        const double factor = copper ? 226 : steel ? 78 : 148;
        const double beta = copper ? 234.5 : steel ? 202 : 228;
        ck_assert(copper || steel || text_same(material, "aluminium"));
        const double hot = cell(&file, row, "end_degc") + beta;
        const double cold = cell(&file, row, "start_degc") + beta;
        const double k = factor * sqrt(log(hot / cold));
        ck_assert_double_eq_tol(k, cell(&file, row, "expected"), cell(&file, row, "tolerance"));
        const double ours = k_of(csv_text(&file, row, 0));
        if (isfinite(ours)) {
            ck_assert_double_eq_tol(ours, k, cell(&file, row, "tolerance"));
            ck_assert(csv_same(ours, cell(&file, row, "expected")));
            own++;
        }
    }
    ck_assert_int_eq(file.rows, 11);
    ck_assert_int_eq(own, 6);
    csv_close(&file);
}
END_TEST

START_TEST(cable_withstands)
{
    struct CsvFile file = csv_open("cases/withstand-handbook.csv");
    for (int row = 0; row < file.rows; row++) {
        const double ampere_root_s =
            k_value(edition_held(), K_LIVE, cell(&file, row, "insulation_degc")) * cell(&file, row, "size_mm2");
        ck_assert_double_eq_tol(ampere_root_s / sqrt(cell(&file, row, "time_s")) / 1000,
                                cell(&file, row, "expected_ka"), cell(&file, row, "tolerance"));
    }
    ck_assert_int_eq(file.rows, 6);
    csv_close(&file);
}
END_TEST

START_TEST(residual_limits)
{
    struct CsvFile file = csv_open("cases/residual-limits-guide.csv");
    for (int row = 0; row < file.rows; row++) {
        ck_assert_double_eq_tol(residual_loop_limit_ohm(edition_held(), cell(&file, row, "residual_ma") / 1000),
                                cell(&file, row, "expected_ohm"), cell(&file, row, "tolerance"));
    }
    ck_assert_int_eq(file.rows, 5);
    csv_close(&file);
}
END_TEST

/* The two resistances of the example, as the tables have them, and the published loop that comes of them. */
START_TEST(armour_as_protective_conductor)
{
    struct CsvFile file = csv_open("cases/loop-armour-forum.csv");
    for (int row = 0; row < file.rows; row++) {
        struct Armour armour;
        double line_ohm_per_m = 0;
        ck_assert(conductor_resistance(cell(&file, row, "size_mm2"), &line_ohm_per_m));
        ck_assert(armour_figures(CABLE_BS5467, (int)cell(&file, row, "cores"), cell(&file, row, "size_mm2"), &armour));
        ck_assert(csv_same(1000 * line_ohm_per_m, 1.15));
        ck_assert(csv_same(1000 * armour.max_ohm_per_m, 3.1));
        const double warmer = 1 + cell(&file, row, "armour_alpha_per_k") * (cell(&file, row, "armour_degc") - 20);
        const double r = line_ohm_per_m * cell(&file, row, "line_factor") +
                         armour.max_ohm_per_m * cell(&file, row, "armour_multiplier") * warmer;
        const double x = cell(&file, row, "x_mohm_per_m") / 1000;
        ck_assert_double_eq_tol(cell(&file, row, "length_m") * sqrt(r * r + x * x), cell(&file, row, "expected_ohm"),
                                cell(&file, row, "tolerance"));
    }
    ck_assert_int_eq(file.rows, 2);
    csv_close(&file);
}
END_TEST

/* The smallest size of Table 4D2A that carries a current by method C with three loaded conductors. */
static double smallest_carrying(double amperes)
{
    const double *sizes_mm2 = NULL;
    const int sizes = capacity_sizes(edition_held(), CAPACITY_4D2A, &sizes_mm2);
    for (int at = 0; at < sizes; at++) {
        double carries_a = 0;
        if (capacity_amperes(edition_held(), CAPACITY_4D2A, sizes_mm2[at], METHOD_C, 3, &carries_a) &&
            carries_a >= amperes) {
            return sizes_mm2[at];
        }
    }
    return 0;
}

START_TEST(third_harmonic_example)
{
    struct CsvFile file = csv_open("cases/harmonic-annex-e-example.csv");
    for (int row = 0; row < file.rows; row++) {
        bool on_neutral = false;
        const double third_percent = cell(&file, row, "third_percent");
        const double factor = harmonic_factor(third_percent, &on_neutral);
        const double line_a = cell(&file, row, "line_a");
        const double look_up_a = (on_neutral ? 3 * third_percent / 100 * line_a : line_a) / factor;
        ck_assert_double_eq_tol(look_up_a, cell(&file, row, "expected_a"), cell(&file, row, "tolerance"));
        ck_assert(csv_same(smallest_carrying(look_up_a), cell(&file, row, "expected_mm2")));
    }
    ck_assert_int_eq(file.rows, 4);
    csv_close(&file);
}
END_TEST

/* Worked by hand: an 80 A fuse to BS 88-3 lets 428 A flow for 5 s, which takes 20.8 mm2 of a 90 degC cable's armour. A
 * 2-core 6 mm2 cable has that much and a 4 mm2 one has not. A class 3 B40 at 6 kA takes 5.05 mm2. */
START_TEST(armour_behind_a_fuse)
{
    double trip_a = 0;
    ck_assert(device_trip_current(edition_held(), DEVICE_BS88_3, CURVE_COUNT, 80, 5, &trip_a));
    ck_assert_double_eq_tol(trip_a, 428.4, 0.05);
    const double least_mm2 = sqrt(trip_a * trip_a * 5) / k_value(edition_held(), K_ARMOUR, 90);
    ck_assert_double_eq_tol(least_mm2, 20.8, 0.05);
    struct Armour armour;
    ck_assert(armour_figures(CABLE_BS5467, 2, 6, &armour) && armour.area_mm2 >= least_mm2);
    ck_assert(armour_figures(CABLE_BS5467, 2, 4, &armour) && armour.area_mm2 < least_mm2);
    double a2s = 0;
    ck_assert(let_through_class_3(CURVE_B, 40, 6000, &a2s));
    ck_assert_double_eq_tol(sqrt(a2s) / k_value(edition_held(), K_ARMOUR, 90), 5.05, 0.005);
}
END_TEST

Suite *suite_fault_cases(void)
{
    Suite *suite = suite_create("published fault examples");
    TCase *tests = tcase_create("cases");
    tcase_add_test(tests, k_from_temperatures);
    tcase_add_test(tests, cable_withstands);
    tcase_add_test(tests, residual_limits);
    tcase_add_test(tests, armour_as_protective_conductor);
    tcase_add_test(tests, third_harmonic_example);
    tcase_add_test(tests, armour_behind_a_fuse);
    suite_add_tcase(suite, tests);
    return suite;
}
