/* k, least sizes of protective conductors and the third-harmonic reduction: published copies both ways, and the physics
 * of a conductor that heats without loss. */
#include "csv_file.h"
#include "fault_suites.h"
#include "tables/fault_tables.h"

#include <math.h>
#include <stdio.h>

static double cell(const struct CsvFile *file, int row, const char *head)
{
    return csv_number(file, row, csv_column(file, head));
}

static bool says(const struct CsvFile *file, int row, const char *head, const char *text)
{
    return text_same(csv_text(file, row, csv_column(file, head)), text);
}

/* IEC 60364-5-54 Annex A: K and beta of a metal. */
static const struct {
    const char *material;
    double k, beta;
} metals[] = {{"copper", 226, 234.5}, {"aluminium", 148, 228}, {"steel", 78, 202}, {"lead", 41, 230}};

/* The print rounds to whole numbers, which is up to 2.4 % of the smallest of them (lead, 23 for 23.5). */
START_TEST(k_follows_from_temperatures)
{
    struct CsvFile file = csv_open("k-values.csv");
    int rows = 0;
    for (int row = 0; row < file.rows; row++) {
        for (size_t metal = 0; metal < sizeof metals / sizeof metals[0]; metal++) {
            if (says(&file, row, "material", metals[metal].material)) {
                const double hot = cell(&file, row, "t_final_C") + metals[metal].beta;
                const double cold = cell(&file, row, "t_initial_C") + metals[metal].beta;
                const double k = metals[metal].k * sqrt(log(hot / cold));
                ck_assert_msg(fabs(cell(&file, row, "k") - k) <= 0.5, "row %d", row);
                ck_assert_double_le(fabs(cell(&file, row, "k") / k - 1), 0.024);
                ck_assert_double_le(fabs(cell(&file, row, "k") / cell(&file, row, "k_calc") - 1), 0.024);
                rows++;
            }
        }
    }
    ck_assert_int_eq(rows, 7 + 6 + 5 + 8 + 3 + 9); /* 43.1, 54.2 to 54.6 */
    ck_assert_int_eq(rows, file.rows);
    csv_close(&file);
}
END_TEST

static const struct {
    const char *table, *material;
    enum KTable k;
} k_tables[] = {{"43.1", "copper", K_LIVE},
                {"54.2", "copper", K_SEPARATE},
                {"54.3", "copper", K_CORE},
                {"54.4", "steel", K_ARMOUR}};
enum { K_TABLES = sizeof k_tables / sizeof k_tables[0] };

START_TEST(k_equals_print)
{
    struct CsvFile file = csv_open("k-values.csv");
    int cells = 0;
    for (int row = 0; row < file.rows; row++) {
        for (int at = 0; at < K_TABLES; at++) {
            if (!says(&file, row, "table", k_tables[at].table) ||
                !says(&file, row, "material", k_tables[at].material)) {
                continue;
            }
            const bool cool = says(&file, row, "insulation", "70C thermoplastic");
            if (cool || says(&file, row, "insulation", "90C thermosetting")) {
                ck_assert_msg(csv_same(k_value(edition_held(), k_tables[at].k, cool ? 70 : 90), cell(&file, row, "k")),
                              "%s", k_tables[at].table);
                cells++;
            }
        }
    }
    ck_assert_int_eq(cells, 2 * K_TABLES);
    printf("compared %3d cells of %s\n", cells, file.name);
    csv_close(&file);
}
END_TEST

START_TEST(k_of_no_insulation_is_the_lower)
{
    static const double odd_degc[] = {0, 60, 69.9, 80, 105, -70, NAN};
    for (size_t degc = 0; degc < sizeof odd_degc / sizeof odd_degc[0]; degc++) {
        for (int at = 0; at < K_TABLES; at++) {
            const double lower =
                fmin(k_value(edition_held(), k_tables[at].k, 70), k_value(edition_held(), k_tables[at].k, 90));
            ck_assert(csv_same(k_value(edition_held(), k_tables[at].k, odd_degc[degc]), lower));
        }
    }
    ck_assert(csv_same(k_value(edition_held(), K_LIVE, 80), 115));
    ck_assert(csv_same(k_value(edition_held(), K_ARMOUR, 80), 46));
}
END_TEST

START_TEST(protective_size_equals_print)
{
    struct CsvFile file = csv_open("protective-54.7.csv");
    for (int row = 0; row < file.rows; row++) {
        const double line_mm2 = cell(&file, row, "line_mm2");
        const double due_mm2 = cell(&file, row, "protective_mm2");
        ck_assert(csv_same(protective_by_table_mm2(edition_held(), line_mm2, 143, 143), due_mm2));
        ck_assert(csv_same(protective_by_table_mm2(edition_held(), line_mm2, 115, 143),
                           due_mm2)); /* never under the same material */
        ck_assert(csv_same(protective_by_table_mm2(edition_held(), line_mm2, 115, 51), due_mm2 * 115 / 51));
    }
    ck_assert_int_eq(file.rows, 17);
    printf("compared %3d cells of %s\n", file.rows, file.name);
    csv_close(&file);
    ck_assert(csv_same(protective_by_table_mm2(edition_held(), 35.5, 143, 143), 17.75)); /* just above a band */
    ck_assert(csv_same(protective_by_table_mm2(edition_held(), 20, 143, 143), 16));
    ck_assert(csv_same(protective_by_table_mm2(edition_held(), 0.75, 143, 143), 0.75));
    ck_assert(csv_same(protective_by_table_mm2(edition_held(), 0.1 * 3 * 50 + 1, 143, 143), 16));
}
END_TEST

START_TEST(protective_size_of_nonsense_is_out_of_reach)
{
    static const double odd[] = {0, -6, NAN, INFINITY};
    for (size_t at = 0; at < sizeof odd / sizeof odd[0]; at++) {
        ck_assert(isinf(protective_by_table_mm2(edition_held(), odd[at], 143, 46)));
        ck_assert(isinf(protective_by_table_mm2(edition_held(), 6, odd[at], 46)));
        ck_assert(isinf(protective_by_table_mm2(edition_held(), 6, 143, odd[at])));
    }
}
END_TEST

/* The copy of the armour table has the least steel by Table 54.7 to one decimal, and whether the armour is that much.
 */
START_TEST(armour_by_table_54_7)
{
    struct CsvFile file = csv_open("armour-bs5467.csv");
    const int met = csv_column(&file, "table54_7_met_by_armour");
    int cells = 0;
    int passed = 0;
    int failed = 0;
    for (int row = 0; row < file.rows; row++) {
        const double line_mm2 = cell(&file, row, "csa_mm2");
        const double least_mm2 = protective_by_table_mm2(edition_held(), line_mm2, k_value(edition_held(), K_LIVE, 90),
                                                         k_value(edition_held(), K_ARMOUR, 90));
        ck_assert_double_eq_tol(least_mm2, cell(&file, row, "table54_7_min_steel_mm2"), 0.05 + 1e-9);
        cells++;
        struct Armour armour;
        if (csv_blank(&file, row, met)) {
            continue;
        }
        ck_assert(armour_figures(CABLE_BS6724, (int)cell(&file, row, "cores"), line_mm2, &armour));
        const bool yes =
            text_same(csv_text(&file, row, met), "yes") || text_same(csv_text(&file, row, met), "marginal-yes");
        ck_assert(yes || text_same(csv_text(&file, row, met), "no") ||
                  text_same(csv_text(&file, row, met), "marginal-no"));
        ck_assert_msg((armour.area_mm2 >= least_mm2) == yes, "row %d", row);
        passed += yes;
        failed += !yes;
    }
    ck_assert_int_eq(cells, 64);
    ck_assert_int_eq(passed + failed, 48);
    ck_assert_int_eq(passed, 5 + 8 + 11);
    printf("compared %3d cells of %s with Table 54.7 (%d met, %d not)\n", cells + 48, file.name, passed, failed);
    csv_close(&file);
    /* and the ratios by hand */
    ck_assert_double_eq_tol(k_value(edition_held(), K_LIVE, 90) / k_value(edition_held(), K_ARMOUR, 90), 3.109, 0.0005);
    ck_assert_double_eq_tol(k_value(edition_held(), K_LIVE, 70) / k_value(edition_held(), K_ARMOUR, 70), 2.255, 0.0005);
}
END_TEST

/* Just over, in the middle of and at the end of a band; a blank end is tried far out. */
static void band_points(const struct CsvFile *file, int row, int from, int to, double points[3])
{
    const double over = csv_number(file, row, from);
    const double end = csv_blank(file, row, to) ? 1000 : csv_number(file, row, to);
    points[0] = over + 0.01;
    points[1] = (over + end) / 2;
    points[2] = end;
}

START_TEST(bonding_equals_print)
{
    struct CsvFile file = csv_open("bonding-54.8.csv");
    for (int row = 0; row < file.rows; row++) {
        double points[3];
        band_points(&file, row, csv_column(&file, "over_mm2"), csv_column(&file, "up_to_mm2"), points);
        for (int at = 0; at < 3; at++) {
            double bonding_mm2 = -7;
            ck_assert(bonding_tn_c_s(edition_held(), points[at], &bonding_mm2));
            ck_assert(csv_same(bonding_mm2, cell(&file, row, "bonding_mm2")));
        }
    }
    ck_assert_int_eq(file.rows, 5);
    printf("compared %3d cells of %s\n", file.rows, file.name);
    csv_close(&file);
    double untouched = -7;
    ck_assert(!bonding_tn_c_s(edition_held(), 0, &untouched) && !bonding_tn_c_s(edition_held(), -35, &untouched));
    ck_assert(!bonding_tn_c_s(edition_held(), NAN, &untouched) &&
              !bonding_tn_c_s(edition_held(), INFINITY, &untouched));
    ck_assert(csv_same(untouched, -7));
}
END_TEST

START_TEST(buried_earthing_equals_print)
{
    struct CsvFile file = csv_open("buried-earthing-54.1.csv");
    for (int row = 0; row < file.rows; row++) {
        const bool sheathed = says(&file, row, "sheathed", "yes");
        const bool mechanically = says(&file, row, "mechanically_protected", "yes");
        ck_assert(
            csv_same(buried_earthing_mm2(edition_held(), sheathed, mechanically), cell(&file, row, "copper_mm2")));
    }
    ck_assert_int_eq(file.rows, 4);
    printf("compared %3d cells of %s\n", file.rows, file.name);
    csv_close(&file);
}
END_TEST

START_TEST(harmonic_equals_print)
{
    struct CsvFile file = csv_open("harmonic-annex-e.csv");
    for (int row = 0; row < file.rows; row++) {
        double points[3];
        band_points(&file, row, csv_column(&file, "over_percent"), csv_column(&file, "up_to_percent"), points);
        for (int at = 0; at < 3; at++) {
            bool on_neutral = !says(&file, row, "sized_on", "neutral");
            ck_assert(csv_same(harmonic_factor(points[at], &on_neutral), cell(&file, row, "factor")));
            ck_assert_int_eq(on_neutral, says(&file, row, "sized_on", "neutral"));
        }
    }
    ck_assert_int_eq(file.rows, 4);
    printf("compared %3d cells of %s\n", 2 * file.rows, file.name);
    csv_close(&file);
    bool on_neutral = true;
    ck_assert(csv_same(harmonic_factor(0, &on_neutral), 1) && !on_neutral);
}
END_TEST

/* Each pair of the copy is a sum of two figures of the program; 1.20 and 1.28 are 1 + 0.004 (t - 20). */
START_TEST(line_and_protective_pairs)
{
    struct CsvFile file = csv_open("r1r2-copper-pairs.csv");
    for (int row = 0; row < file.rows; row++) {
        double line = 0;
        double protective = 0;
        ck_assert(conductor_resistance(cell(&file, row, "line_mm2"), &line));
        ck_assert(conductor_resistance(cell(&file, row, "cpc_mm2"), &protective));
        const double sum = 1000 * (line + protective);
        ck_assert_double_eq_tol(sum, cell(&file, row, "R1R2_20C"), 1e-9);
        ck_assert_double_le(fabs(1.20 * sum / cell(&file, row, "R1R2_70C") - 1), 0.0005);
        ck_assert_double_le(fabs(1.28 * sum / cell(&file, row, "R1R2_90C") - 1), 0.0005);
    }
    ck_assert_int_eq(file.rows, 33);
    printf("compared %3d cells of %s\n", 3 * file.rows, file.name);
    csv_close(&file);
}
END_TEST

Suite *suite_fault_conductors(void)
{
    Suite *suite = suite_create("conductors under fault");
    TCase *tests = tcase_create("conductors");
    tcase_add_test(tests, k_follows_from_temperatures);
    tcase_add_test(tests, k_equals_print);
    tcase_add_test(tests, k_of_no_insulation_is_the_lower);
    tcase_add_test(tests, protective_size_equals_print);
    tcase_add_test(tests, protective_size_of_nonsense_is_out_of_reach);
    tcase_add_test(tests, armour_by_table_54_7);
    tcase_add_test(tests, bonding_equals_print);
    tcase_add_test(tests, buried_earthing_equals_print);
    tcase_add_test(tests, harmonic_equals_print);
    tcase_add_test(tests, line_and_protective_pairs);
    suite_add_tcase(suite, tests);
    return suite;
}
