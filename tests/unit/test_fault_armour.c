/* The armour table against its published copy both ways, and against the physics of a layer of steel wires. */
#include "csv_file.h"
#include "fault_suites.h"
#include "tables/fault_tables.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

static const double pi = 3.14159265358979323846;

static double cell(const struct CsvFile *file, int row, const char *head)
{
    return csv_number(file, row, csv_column(file, head));
}

/* The figure at the start of a cell such as "2.3 est"; 0 for a blank one. */
static double estimate(const struct CsvFile *file, int row, const char *head)
{
    return strtod(csv_text(file, row, csv_column(file, head)), NULL);
}

START_TEST(loop_through_armour_equals_copy)
{
    struct CsvFile file = csv_open("armour-loop-50480.csv");
    ck_assert_int_eq(file.rows, 1);
    ck_assert(csv_same(armour_loop()->lay, cell(&file, 0, "lay_factor")));
    ck_assert(csv_same(armour_loop()->reactance_ohm_per_m * 1000, cell(&file, 0, "reactance_mohm_per_m")));
    ck_assert(csv_same(armour_loop()->per_k, cell(&file, 0, "rise_per_K")));
    csv_close(&file);
}
END_TEST

/* Every size that there is, held or not; what is not in the copy has no figure and leaves the result alone. */
START_TEST(flat_cores_equal_copy)
{
    struct CsvFile file = csv_open("flat-protective-core.csv");
    int found = 0;
    for (int tenths = 0; tenths <= 4000; tenths++) {
        const int row = csv_find(&file, csv_column(&file, "line_mm2"), tenths / 10.0);
        double core_mm2 = -7;
        ck_assert_int_eq(flat_protective_core_mm2(tenths / 10.0, &core_mm2), row >= 0);
        ck_assert(csv_same(core_mm2, row >= 0 ? cell(&file, row, "core_mm2") : -7));
        found += row >= 0;
    }
    ck_assert_int_eq(found, file.rows);
    ck_assert_int_eq(found, 7);
    csv_close(&file);
}
END_TEST

static bool row_is(const struct CsvFile *file, int row, int cores, double size_mm2)
{
    return csv_same(cell(file, row, "cores"), cores) && csv_same(cell(file, row, "csa_mm2"), size_mm2);
}

/* The make of a cable that has an area in print, or -1. */
static int make_with_area(const struct CsvFile *file, int cores, double size_mm2)
{
    int found = -1;
    for (int row = 0; row < file->rows; row++) {
        if (row_is(file, row, cores, size_mm2) && !csv_blank(file, row, csv_column(file, "armour_area_gross_mm2"))) {
            ck_assert_int_eq(found, -1); /* two would leave open which one is meant */
            found = row;
        }
    }
    return found;
}

/* Lowest resistance by area over the makes of a cable, estimates too. */
static double lowest_by_area(const struct CsvFile *file, int cores, double size_mm2)
{
    double lowest = INFINITY;
    for (int row = 0; row < file->rows; row++) {
        const double ohm_per_km = estimate(file, row, "armour_R20_calc_ohm_per_km");
        if (row_is(file, row, cores, size_mm2) && ohm_per_km > 0) {
            lowest = fmin(lowest, ohm_per_km);
        }
    }
    return lowest;
}

/* Compares one cable with its row; gives the number of cells that decide its figures. A resistance by area above the
 * printed greatest one decides nothing, the lower being taken. */
static int compare_armour(const struct CsvFile *file, int row, const struct Armour *armour)
{
    const int cores = (int)cell(file, row, "cores");
    const double by_area = lowest_by_area(file, cores, cell(file, row, "csa_mm2"));
    const int printed = csv_column(file, "armour_R20_max_ohm_per_km");
    const bool blank = csv_blank(file, row, printed);
    const double greatest = blank ? 1.10 * by_area : csv_number(file, row, printed);
    ck_assert_msg(csv_same(armour->area_mm2, cell(file, row, "armour_area_gross_mm2")), "area of row %d", row);
    ck_assert_msg(csv_same(armour->max_ohm_per_m, greatest / 1000), "greatest resistance of row %d", row);
    ck_assert_msg(csv_same(armour->min_ohm_per_m, fmin(greatest, by_area) / 1000), "least resistance of row %d", row);
    return 1 + (blank ? 0 : 1) + (by_area <= greatest ? 1 : 0);
}

START_TEST(armour_equals_print)
{
    struct CsvFile file = csv_open("armour-bs5467.csv");
    int cables = 0;
    int cells = 0;
    for (int cores = 0; cores <= 8; cores++) {
        for (int step = 1; step <= 650; step++) { /* every half mm2, so the program has no size of its own */
            const double size_mm2 = step / 2.0;
            struct Armour armour = {-7, -7, -7};
            const int row = make_with_area(&file, cores, size_mm2);
            ck_assert_int_eq(armour_figures(CABLE_BS5467, cores, size_mm2, &armour), row >= 0);
            if (row < 0) {
                ck_assert(csv_same(armour.area_mm2, -7) && csv_same(armour.max_ohm_per_m, -7));
                continue;
            }
            cables++;
            cells += compare_armour(&file, row, &armour);
        }
    }
    ck_assert_int_eq(cables, 48);
    ck_assert_int_eq(cells, 48 + 45 + 37);   /* three greatest ones blank, eleven by area above the greatest */
    ck_assert_int_eq(file.rows, 48 + 7 + 9); /* seven other makes and nine of five cores have no area in print */
    printf("compared %3d cells of %s (%d cables)\n", cells, file.name, cables);
    csv_close(&file);
}
END_TEST

START_TEST(armour_only_where_there_is_any)
{
    struct Armour armour = {-7, -7, -7};
    for (int type = 0; type <= CABLE_COUNT; type++) {
        const bool same_as_bs5467 = type == CABLE_BS5467 || type == CABLE_BS6724;
        ck_assert_int_eq(armour_figures((enum CableType)type, 3, 6, &armour), same_as_bs5467);
    }
    struct Armour low_smoke;
    ck_assert(armour_figures(CABLE_BS5467, 4, 70, &armour) && armour_figures(CABLE_BS6724, 4, 70, &low_smoke));
    ck_assert(csv_same(armour.area_mm2, low_smoke.area_mm2) &&
              csv_same(armour.max_ohm_per_m, low_smoke.max_ohm_per_m) &&
              csv_same(armour.min_ohm_per_m, low_smoke.min_ohm_per_m));
    ck_assert(!armour_figures(CABLE_BS5467, 5, 6, &armour));
    ck_assert(!armour_figures(CABLE_BS5467, 3, NAN, &armour));
}
END_TEST

/* A whole number of round wires makes the area, and they fill their ring as far as a laid-up layer can. */
START_TEST(area_is_whole_wires)
{
    struct CsvFile file = csv_open("armour-bs5467.csv");
    int cables = 0;
    for (int row = 0; row < file.rows; row++) {
        struct Armour armour;
        if (csv_blank(&file, row, csv_column(&file, "armour_wires_inferred"))) {
            continue;
        }
        ck_assert(armour_figures(CABLE_BS5467, (int)cell(&file, row, "cores"), cell(&file, row, "csa_mm2"), &armour));
        const double wires = cell(&file, row, "armour_wires_inferred");
        const double wire_mm = cell(&file, row, "armour_wire_dia_mm");
        const double area_mm2 = wires * pi * wire_mm * wire_mm / 4;
        ck_assert_double_le(fabs(armour.area_mm2 / area_mm2 - 1), 0.03);
        const double ring_mm = pi * (cell(&file, row, "dia_under_armour_derived_mm") + wire_mm);
        ck_assert_double_le(fabs(wires * wire_mm / ring_mm - 0.84), 0.06);
        cables++;
    }
    ck_assert_int_eq(cables, 48);
    csv_close(&file);
}
END_TEST

/* Steel has 138 ohm mm2/km; lay, tolerance and zinc bring the print to about 155. Never below bare steel. */
START_TEST(resistance_is_that_of_steel)
{
    struct CsvFile file = csv_open("armour-bs5467.csv");
    int printed = 0;
    int blank = 0;
    for (int row = 0; row < file.rows; row++) {
        struct Armour armour;
        if (csv_blank(&file, row, csv_column(&file, "armour_wires_inferred"))) {
            continue;
        }
        ck_assert(armour_figures(CABLE_BS5467, (int)cell(&file, row, "cores"), cell(&file, row, "csa_mm2"), &armour));
        const double wire_mm = cell(&file, row, "armour_wire_dia_mm");
        const double area_mm2 = cell(&file, row, "armour_wires_inferred") * pi * wire_mm * wire_mm / 4;
        const double resistivity = 1000 * armour.max_ohm_per_m * area_mm2;
        if (csv_blank(&file, row, csv_column(&file, "armour_R20_max_ohm_per_km"))) {
            ck_assert_double_le(fabs(resistivity / (1.10 * 155) - 1), 0.02);
            blank++;
        } else {
            ck_assert_double_le(fabs(resistivity / 155 - 1), 0.06);
            printed++;
        }
        ck_assert_double_gt(resistivity, 138);
        ck_assert_double_gt(1000 * armour.min_ohm_per_m * area_mm2, 138);
        ck_assert_double_le(armour.min_ohm_per_m, armour.max_ohm_per_m);
        ck_assert_double_ge(armour.min_ohm_per_m, 0.85 * armour.max_ohm_per_m);
    }
    ck_assert_int_eq(printed, 45);
    ck_assert_int_eq(blank, 3);
    csv_close(&file);
}
END_TEST

/* A thicker cable has more armour. The one step without any is 2 x 16 to 2 x 25 mm2: round to shaped conductors. */
START_TEST(armour_grows_with_the_cable)
{
    static const double sizes_mm2[] = {1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300};
    enum { SIZES = sizeof sizes_mm2 / sizeof sizes_mm2[0] };
    int level = 0;
    for (int cores = 2; cores <= 4; cores++) {
        struct Armour before = {.area_mm2 = 0, .max_ohm_per_m = INFINITY, .min_ohm_per_m = INFINITY};
        for (int at = 0; at < SIZES; at++) {
            struct Armour armour;
            struct Armour fewer_cores;
            ck_assert(armour_figures(CABLE_BS5467, cores, sizes_mm2[at], &armour));
            ck_assert_double_ge(armour.area_mm2, before.area_mm2);
            ck_assert_double_le(armour.max_ohm_per_m, before.max_ohm_per_m);
            ck_assert_double_le(armour.min_ohm_per_m, before.min_ohm_per_m);
            level += csv_same(armour.area_mm2, before.area_mm2);
            if (cores > 2) {
                ck_assert(armour_figures(CABLE_BS5467, cores - 1, sizes_mm2[at], &fewer_cores));
                ck_assert_double_gt(armour.area_mm2, fewer_cores.area_mm2);
                ck_assert_double_lt(armour.min_ohm_per_m, fewer_cores.min_ohm_per_m);
            }
            before = armour;
        }
    }
    ck_assert_int_eq(level, 1);
}
END_TEST

/* Copper 8.89 and steel 7.85 g/cm3 with 2 % for lay: the metal is much of the cable's weight and never all of it. */
START_TEST(metal_within_the_weight)
{
    struct CsvFile file = csv_open("armour-bs5467.csv");
    const int weight = csv_column(&file, "weight_kg_per_km");
    int cables = 0;
    for (int row = 0; row < file.rows; row++) {
        const int cores = (int)cell(&file, row, "cores");
        struct Armour armour;
        double ohm_per_m = 0;
        if (csv_blank(&file, row, weight) || csv_blank(&file, row, csv_column(&file, "armour_area_gross_mm2"))) {
            continue;
        }
        ck_assert(armour_figures(CABLE_BS5467, cores, cell(&file, row, "csa_mm2"), &armour));
        ck_assert(conductor_resistance(cell(&file, row, "csa_mm2"), &ohm_per_m));
        const double copper_kg = cores * (17.241 / (1000 * ohm_per_m)) * 8.89;
        const double share = (copper_kg + armour.area_mm2 * 7.85 * 1.02) / csv_number(&file, row, weight);
        ck_assert_double_gt(share, 0.45);
        ck_assert_double_lt(share, 0.85);
        cables++;
    }
    ck_assert_int_eq(cables, 48);
    csv_close(&file);
}
END_TEST

/* A forum thread on exporting a TN-C-S earth: steel needs about nine times the area of 10 mm2 copper, which two cores
 * reach at 95 mm2. By the tables: the first cables whose armour conducts like 10 mm2 copper. */
START_TEST(armour_against_ten_mm2_copper)
{
    double copper_ohm_per_m = 0;
    ck_assert(conductor_resistance(10, &copper_ohm_per_m));
    static const struct {
        int cores;
        double last_short_mm2, first_enough_mm2;
    } due[] = {{2, 70, 95}, {3, 50, 70}, {4, 35, 50}};
    for (size_t at = 0; at < sizeof due / sizeof due[0]; at++) {
        struct Armour armour;
        ck_assert(armour_figures(CABLE_BS5467, due[at].cores, due[at].last_short_mm2, &armour));
        ck_assert_double_gt(armour.max_ohm_per_m, copper_ohm_per_m);
        ck_assert(armour_figures(CABLE_BS5467, due[at].cores, due[at].first_enough_mm2, &armour));
        ck_assert_double_le(armour.max_ohm_per_m, copper_ohm_per_m);
    }
}
END_TEST

Suite *suite_fault_armour(void)
{
    Suite *suite = suite_create("armour");
    TCase *tests = tcase_create("armour");
    tcase_add_test(tests, armour_equals_print);
    tcase_add_test(tests, loop_through_armour_equals_copy);
    tcase_add_test(tests, flat_cores_equal_copy);
    tcase_add_test(tests, armour_only_where_there_is_any);
    tcase_add_test(tests, area_is_whole_wires);
    tcase_add_test(tests, resistance_is_that_of_steel);
    tcase_add_test(tests, armour_grows_with_the_cable);
    tcase_add_test(tests, metal_within_the_weight);
    tcase_add_test(tests, armour_against_ten_mm2_copper);
    tcase_set_timeout(tests, 60);
    suite_add_tcase(suite, tests);
    return suite;
}
