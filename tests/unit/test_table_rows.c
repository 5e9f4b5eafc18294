/* Factor tables: every cell against the published copies both ways, and what a value between two rows gets. The sweep
 * below states the rule on its own: the first row that is not on the unsafe side, or no figure. */
#include "csv_file.h"
#include "table_suites.h"
#include "tables/tables.h"

#include <math.h>
#include <stdio.h>

static bool ask_air(int column, double key, struct Figure *out)
{
    return ambient_air(edition_held(), column == 0 ? 70 : 90, key, out);
}

static bool ask_ground(int column, double key, struct Figure *out)
{
    return ambient_ground(edition_held(), column == 0 ? 70 : 90, key, out);
}

static bool ask_soil(int column, double key, struct Figure *out)
{
    return soil_resistivity(edition_held(), key, column == 0, out);
}

static bool ask_depth(int column, double key, struct Figure *out)
{
    return laying_depth(edition_held(), key, column == 1, out);
}

static bool ask_insulation(int column, double key, struct Figure *out)
{
    (void)column;
    return insulation_length(edition_held(), key, out);
}

static bool ask_group(int column, double key, struct Figure *out)
{
    static const enum GroupAir order[] = {GROUP_BUNCHED, GROUP_WALL_LAYER, GROUP_CEILING_LAYER, GROUP_TRAY_LAYER,
                                          GROUP_LADDER_LAYER};
    return grouping_air(edition_held(), order[column], (int)key, out);
}

static bool ask_buried(int column, double key, struct Figure *out)
{
    static const enum GroupBuried order[] = {BURIED_TOUCHING, BURIED_ONE_DIAMETER, BURIED_125_MM, BURIED_250_MM,
                                             BURIED_500_MM};
    return grouping_buried(edition_held(), order[column], (int)key, out);
}

static bool ask_ducts(int column, double key, struct Figure *out)
{
    static const enum GroupDucts order[] = {DUCTS_TOUCHING, DUCTS_250_MM, DUCTS_500_MM, DUCTS_1000_MM};
    return grouping_ducts(edition_held(), order[column], (int)key, out);
}

static const struct FactorCopy {
    const char *file;
    const char *heads[5]; /* in the order that `ask` counts them */
    bool (*ask)(int column, double key, struct Figure *out);
    double step, from, to; /* of the sweep */
    bool counts;           /* whole numbers from 1; a row 1 that the print lacks is 1 by definition */
    bool endless;          /* the last row stands for everything beyond */
    int cells;             /* counted on paper */
} copies[] = {
    {"factor-ambient-air-4B1.csv",
     {"thermoplastic_70C", "thermosetting_90C"},
     ask_air,
     0.5,
     -40,
     120,
     false,
     false,
     24},
    {"factor-ambient-ground-4B2.csv",
     {"thermoplastic_70C", "thermosetting_90C"},
     ask_ground,
     0.5,
     -20,
     120,
     false,
     false,
     30},
    {"factor-soil-resistivity-4B3.csv", {"in_buried_ducts", "buried_direct"}, ask_soil, 0.0625, 0, 6, false, false, 14},
    {"factor-depth-4B4.csv", {"buried_direct", "in_buried_ducts"}, ask_depth, 0.0625, 0, 6, false, false, 18},
    {"factor-insulation-52.2.csv", {"factor_Ci"}, ask_insulation, 0.5, 0.5, 2000, false, true, 5},
    {"factor-grouping-4C1.csv",
     {"bunched_or_enclosed", "single_layer_wall_floor_or_unperforated_tray", "single_layer_under_ceiling",
      "single_layer_perforated_tray", "single_layer_ladder_or_cleats"},
     ask_group,
     1,
     -3,
     50,
     true,
     false,
     60},
    {"factor-grouping-buried-4C2.csv",
     {"touching", "one_cable_diameter", "clear_0.125m", "clear_0.25m", "clear_0.5m"},
     ask_buried,
     1,
     -3,
     50,
     true,
     false,
     55},
    {"factor-grouping-ducts-4C3-multicore.csv",
     {"ducts_touching", "clear_0.25m", "clear_0.5m", "clear_1.0m"},
     ask_ducts,
     1,
     -3,
     50,
     true,
     false,
     76},
};
enum { COPIES = sizeof copies / sizeof copies[0] };

START_TEST(factors_equal_print)
{
    const struct FactorCopy *copy = &copies[_i];
    struct CsvFile file = csv_open(copy->file);
    int cells = 0;
    for (int row = 0; row < file.rows; row++) {
        const double key = csv_number(&file, row, 0);
        for (int at = 0; at < file.columns - 1; at++) {
            const int column = csv_column(&file, copy->heads[at]);
            struct Figure figure = {.value = -7};
            const bool has = copy->ask(at, key, &figure);
            ck_assert_msg(has == !csv_blank(&file, row, column), "%s row %s", file.name, csv_text(&file, row, 0));
            if (has) {
                ck_assert_msg(csv_same(figure.value, csv_number(&file, row, column)) && csv_same(figure.row, key),
                              "%s row %s: the print has %s", file.name, csv_text(&file, row, 0),
                              csv_text(&file, row, column));
            } else {
                ck_assert(csv_same(figure.value, -7));
            }
            cells++;
        }
    }
    ck_assert_int_eq(cells, file.rows * (file.columns - 1));
    ck_assert_int_eq(cells, copy->cells);
    printf("compared %3d cells of %s\n", cells, file.name);
    csv_close(&file);
}
END_TEST

/* The row of the copy that a value has to get, or -1 for none. */
static int row_due(const struct FactorCopy *copy, const struct CsvFile *file, double wanted)
{
    if (copy->counts && wanted < 1) {
        return -1;
    }
    for (int row = 0; row < file->rows; row++) {
        if (csv_number(file, row, 0) >= wanted) {
            return row;
        }
    }
    return copy->endless ? file->rows - 1 : -1;
}

START_TEST(between_rows_the_safer)
{
    const struct FactorCopy *copy = &copies[_i];
    struct CsvFile file = csv_open(copy->file);
    int answered = 0;
    int refused = 0;
    const int steps = (int)floor((copy->to - copy->from) / copy->step + 1e-9);
    for (int step = 0; step <= steps; step++) {
        const double wanted = copy->from + step * copy->step;
        const int row = row_due(copy, &file, wanted);
        for (int at = 0; at < file.columns - 1; at++) {
            const int column = csv_column(&file, copy->heads[at]);
            struct Figure figure = {.value = -7, .row = -7};
            const bool has = copy->ask(at, wanted, &figure);
            if (copy->counts && csv_same(wanted, 1) && csv_find(&file, 0, 1) < 0) {
                ck_assert(has && csv_same(figure.value, 1) && csv_same(figure.row, 1));
                answered++;
            } else if (row < 0 || csv_blank(&file, row, column)) {
                ck_assert(!has && csv_same(figure.value, -7) && csv_same(figure.row, -7));
                refused++;
            } else {
                ck_assert(has && csv_same(figure.value, csv_number(&file, row, column)));
                ck_assert(csv_same(figure.row, csv_number(&file, row, 0)));
                answered++;
            }
        }
    }
    ck_assert_int_gt(answered, 10);
    ck_assert(refused > 10 || copy->endless);
    csv_close(&file);
}
END_TEST

static void gives(bool has, const struct Figure *figure, double value, double row)
{
    ck_assert(has);
    ck_assert_double_eq_tol(figure->value, value, 1e-12);
    ck_assert_double_eq_tol(figure->row, row, 1e-12);
}

START_TEST(rows_by_hand)
{
    struct Figure f;
    gives(ambient_air(edition_held(), 70, 31, &f), &f, 0.94, 35);
    gives(ambient_air(edition_held(), 90, 10, &f), &f, 1.02, 25);            /* no gain below the coolest row */
    gives(ambient_air(edition_held(), 70, 0.1 * 3 * 100, &f), &f, 1.00, 30); /* 30 and a trace is still 30 */
    gives(ambient_ground(edition_held(), 70, 21, &f), &f, 0.95, 25);
    gives(ambient_ground(edition_held(), 90, -5, &f), &f, 1.07, 10);
    gives(soil_resistivity(edition_held(), 1.2, false, &f), &f, 1.28, 1.5);
    gives(soil_resistivity(edition_held(), 0.1, true, &f), &f, 1.28, 0.5);
    gives(laying_depth(edition_held(), 0.6, false, &f), &f, 1.00, 0.7);
    gives(laying_depth(edition_held(), 0.2, true, &f), &f, 1.02, 0.5);
    gives(insulation_length(edition_held(), 150, &f), &f, 0.63, 200);
    gives(insulation_length(edition_held(), 1, &f), &f, 0.88, 50);
    gives(insulation_length(edition_held(), 401, &f), &f, 0.50, 500);
    gives(insulation_length(edition_held(), 12000, &f), &f, 0.50, 500);
    gives(grouping_air(edition_held(), GROUP_BUNCHED, 10, &f), &f, 0.45, 12);
    gives(grouping_air(edition_held(), GROUP_CEILING_LAYER, 1, &f), &f, 0.95, 1);
    gives(grouping_buried(edition_held(), BURIED_TOUCHING, 10, &f), &f, 0.36, 12);
    gives(grouping_buried(edition_held(), BURIED_500_MM, 1, &f), &f, 1.00, 1);
    gives(grouping_ducts(edition_held(), DUCTS_TOUCHING, 1, &f), &f, 1.00, 1);
    ck_assert_double_eq_tol(insulation_length_largest_mm2(), 10, 1e-12);
}
END_TEST

START_TEST(beyond_the_table_no_figure)
{
    struct Figure f = {-7, -7};
    ck_assert(!ambient_air(edition_held(), 70, 60.5, &f)); /* a blank cell */
    ck_assert(!ambient_air(edition_held(), 90, 80.5, &f));
    ck_assert(!ambient_air(edition_held(), 80, 30, &f)); /* an insulation that has no column */
    ck_assert(!ambient_air(edition_held(), 70, NAN, &f));
    ck_assert(!ambient_air(edition_held(), 70, INFINITY, &f));
    ck_assert(!ambient_ground(edition_held(), 70, 61, &f));
    ck_assert(!ambient_ground(edition_held(), 60, 20, &f));
    ck_assert(!soil_resistivity(edition_held(), 3.01, true, &f));
    ck_assert(!soil_resistivity(edition_held(), NAN, false, &f));
    ck_assert(!laying_depth(edition_held(), 3.1, false, &f));
    ck_assert(!laying_depth(edition_held(), NAN, true, &f));
    ck_assert(!insulation_length(edition_held(), NAN, &f));
    ck_assert(!grouping_air(edition_held(), GROUP_BUNCHED, 21, &f));
    ck_assert(!grouping_air(edition_held(), GROUP_BUNCHED, 0, &f));
    ck_assert(!grouping_air(edition_held(), GROUP_AIR_COUNT, 2, &f));
    ck_assert(!grouping_buried(edition_held(), BURIED_TOUCHING, 21, &f));
    ck_assert(!grouping_buried(edition_held(), BURIED_TOUCHING, 0, &f));
    ck_assert(!grouping_buried(edition_held(), GROUP_BURIED_COUNT, 1, &f));
    ck_assert(!grouping_ducts(edition_held(), DUCTS_TOUCHING, 21, &f));
    ck_assert(!grouping_ducts(edition_held(), DUCTS_TOUCHING, -1, &f));
    ck_assert(!grouping_ducts(edition_held(), GROUP_DUCTS_COUNT, 1, &f));
    ck_assert(csv_same(f.value, -7) && csv_same(f.row, -7)); /* untouched throughout */
    ck_assert_ptr_null(grouping_air_ref(edition_held(), GROUP_AIR_COUNT));
}
END_TEST

Suite *suite_table_rows(void)
{
    Suite *suite = suite_create("factor tables");
    TCase *tests = tcase_create("rows");
    tcase_add_loop_test(tests, factors_equal_print, 0, COPIES);
    tcase_add_loop_test(tests, between_rows_the_safer, 0, COPIES);
    tcase_add_test(tests, rows_by_hand);
    tcase_add_test(tests, beyond_the_table_no_figure);
    suite_add_tcase(suite, tests);
    return suite;
}
