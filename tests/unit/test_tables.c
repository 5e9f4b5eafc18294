/* Every cell of the size tables against the published copies in tests/published/, both ways: each cell of the copy is
 * what the program says, and the program says nothing that the copy lacks. The factor tables and the things are in
 * test_table_rows.c and test_table_things.c; this file also has main() for all of them. */
#include "csv_file.h"
#include "table_suites.h"
#include "tables/tables.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* The column of the copy for a method and a number of loaded conductors, or -1. */
static int capacity_column(const struct CsvFile *file, enum Method method, int loaded)
{
    char core[32];
    char flat[32];
    snprintf(core, sizeof core, "%s_%score", method_name(method), loaded == 2 ? "2" : "3or4");
    snprintf(flat, sizeof flat, "method_%s", method_name(method));
    for (int column = 1; column < file->columns; column++) {
        const char *head = csv_head(file, column);
        /* Table 4D5 has one column a method, all of them for two loaded conductors. */
        if ((loaded == 2 || loaded == 3) && (text_same(head, core) || (loaded == 2 && text_same(head, flat)))) {
            return column;
        }
    }
    return -1;
}

static int compare_capacity_cell(enum CapacityTable table, const struct CsvFile *file, int row, enum Method method,
                                 int loaded)
{
    const int column = capacity_column(file, method, loaded);
    double amperes = -7;
    const bool has = capacity_amperes(edition_held(), table, csv_number(file, row, 0), method, loaded, &amperes);
    ck_assert_int_eq(capacity_has_method(edition_held(), table, method, loaded), column >= 0);
    if (column < 0 || csv_blank(file, row, column)) {
        ck_assert_msg(!has && csv_same(amperes, -7), "%s row %d: a figure that the print lacks", file->name, row);
        return column >= 0;
    }
    ck_assert_msg(has && csv_same(amperes, csv_number(file, row, column)), "%s: %s mm2, %s: the print has %s",
                  file->name, csv_text(file, row, 0), csv_head(file, column), csv_text(file, row, column));
    return 1;
}

static const struct {
    const char *file;
    double degc;
    int cells; /* counted on paper: rows times columns */
} capacity_copies[CAPACITY_COUNT] = {
    [CAPACITY_4D2A] = {"capacity-4D2A.csv", 70, 12 * 8}, [CAPACITY_4D4A] = {"capacity-4D4A.csv", 70, 16 * 6},
    [CAPACITY_4D5] = {"capacity-4D5.csv", 70, 7 * 6},    [CAPACITY_4E2A] = {"capacity-4E2A.csv", 90, 12 * 8},
    [CAPACITY_4E4A] = {"capacity-4E4A.csv", 90, 16 * 6},
};

START_TEST(capacity_equals_print)
{
    const enum CapacityTable table = (enum CapacityTable)_i;
    struct CsvFile file = csv_open(capacity_copies[table].file);
    const double *sizes_mm2 = NULL;
    ck_assert_int_eq(capacity_sizes(edition_held(), table, &sizes_mm2), file.rows);
    int cells = 0;
    for (int row = 0; row < file.rows; row++) {
        ck_assert(csv_same(sizes_mm2[row], csv_number(&file, row, 0)));
        for (int method = 0; method < METHOD_COUNT; method++) {
            for (int loaded = 0; loaded <= 5; loaded++) {
                cells += compare_capacity_cell(table, &file, row, (enum Method)method, loaded);
            }
        }
    }
    ck_assert_int_eq(cells, file.rows * (file.columns - 1));
    ck_assert_int_eq(cells, capacity_copies[table].cells);
    ck_assert(csv_same(capacity_degc(edition_held(), table), capacity_copies[table].degc));
    printf("compared %3d cells of %s\n", cells, file.name);
    csv_close(&file);
}
END_TEST

START_TEST(capacity_knows_no_other_size)
{
    const enum CapacityTable table = (enum CapacityTable)_i;
    struct CsvFile file = csv_open(capacity_copies[table].file);
    int known = 0;
    /* a quarter apart, so that a size slipped by a decimal or swapped for its neighbour cannot hide */
    for (int step = 1; step <= 2000; step++) {
        const double size_mm2 = step / 4.0;
        double amperes = 0;
        if (capacity_amperes(edition_held(), table, size_mm2, METHOD_C, 2, &amperes)) {
            ck_assert_int_ge(csv_find(&file, 0, size_mm2), 0);
            known++;
        }
    }
    ck_assert_int_eq(known, file.rows);
    csv_close(&file);
}
END_TEST

static const struct {
    const char *file;
    double degc;
    int cells;
} drop_copies[DROP_COUNT] = {
    [DROP_4D2B] = {"voltdrop-4D2B.csv", 70, 12 * 7}, [DROP_4D4B] = {"voltdrop-4D4B.csv", 70, 16 * 7},
    [DROP_4D5] = {"voltdrop-4D5.csv", 70, 7},        [DROP_4E2B] = {"voltdrop-4E2B.csv", 90, 12 * 7},
    [DROP_4E4B] = {"voltdrop-4E4B.csv", 90, 16 * 7},
};

/* r, x and z of one row for 1 or 3 phases; gives the number of cells compared. */
static int compare_drop_column(enum DropTable table, const struct CsvFile *file, int row, int phases)
{
    const int r = csv_column(file, phases == 1 ? "ac1_r" : "ac3_r");
    const int x = csv_column(file, phases == 1 ? "ac1_x" : "ac3_x");
    const int z = csv_column(file, phases == 1 ? "ac1_z" : "ac3_z");
    struct DropFigure figure;
    ck_assert(drop_figure(edition_held(), table, csv_number(file, row, 0), phases, &figure));
    ck_assert_msg(csv_same(figure.r, csv_number(file, row, r)), "%s: r of %s mm2", file->name, csv_text(file, row, 0));
    ck_assert_msg(csv_same(figure.z, csv_number(file, row, z)), "%s: z of %s mm2", file->name, csv_text(file, row, 0));
    ck_assert_int_eq(figure.split, !csv_blank(file, row, x));
    if (figure.split) {
        ck_assert(csv_same(figure.x, csv_number(file, row, x)));
    } else {
        ck_assert(csv_same(figure.x, 0));
        ck_assert(csv_same(figure.r, figure.z));
    }
    /* the promise of the interface, and the print's own division */
    ck_assert_int_eq(figure.split, csv_number(file, row, 0) > 16);
    return 3;
}

START_TEST(drop_equals_print)
{
    const enum DropTable table = (enum DropTable)_i;
    struct CsvFile file = csv_open(drop_copies[table].file);
    int cells = 0;
    for (int row = 0; row < file.rows; row++) {
        const double size_mm2 = csv_number(&file, row, 0);
        double dc = 0;
        ck_assert(drop_figure_dc(edition_held(), table, size_mm2, &dc));
        ck_assert_msg(csv_same(dc, csv_number(&file, row, 1)), "%s: d.c. of %s", file.name, csv_text(&file, row, 0));
        cells++;
        struct DropFigure figure;
        if (table == DROP_4D5) { /* one figure serves d.c. and single-phase, none three-phase */
            ck_assert(drop_figure(edition_held(), table, size_mm2, 1, &figure));
            ck_assert(csv_same(figure.r, dc) && csv_same(figure.z, dc) && csv_same(figure.x, 0) && !figure.split);
            ck_assert(!drop_figure(edition_held(), table, size_mm2, 3, &figure));
        } else {
            cells += compare_drop_column(table, &file, row, 1);
            cells += compare_drop_column(table, &file, row, 3);
        }
        ck_assert(!drop_figure(edition_held(), table, size_mm2, 0, &figure));
        ck_assert(!drop_figure(edition_held(), table, size_mm2, 2, &figure));
    }
    ck_assert_int_eq(cells, file.rows * (file.columns - 1));
    ck_assert_int_eq(cells, drop_copies[table].cells);
    ck_assert(csv_same(drop_degc(edition_held(), table), drop_copies[table].degc));
    printf("compared %3d cells of %s\n", cells, file.name);
    csv_close(&file);
}
END_TEST

START_TEST(drop_knows_no_other_size)
{
    const enum DropTable table = (enum DropTable)_i;
    struct CsvFile file = csv_open(drop_copies[table].file);
    int known = 0;
    for (int step = 1; step <= 2000; step++) {
        const double size_mm2 = step / 4.0;
        double dc = 0;
        struct DropFigure figure;
        const bool has = drop_figure_dc(edition_held(), table, size_mm2, &dc);
        ck_assert_int_eq(has, drop_figure(edition_held(), table, size_mm2, 1, &figure));
        ck_assert_int_eq(has, csv_find(&file, 0, size_mm2) >= 0);
        known += has;
    }
    ck_assert_int_eq(known, file.rows);
    csv_close(&file);
}
END_TEST

START_TEST(size_tables_refuse_nonsense)
{
    double value = -7;
    const double *sizes_mm2 = NULL;
    ck_assert(!capacity_amperes(edition_held(), CAPACITY_COUNT, 6, METHOD_C, 2, &value));
    ck_assert(!capacity_amperes(edition_held(), CAPACITY_4E4A, 6, METHOD_COUNT, 2, &value));
    ck_assert(!capacity_amperes(edition_held(), CAPACITY_4E4A, -6, METHOD_C, 2, &value));
    ck_assert(!capacity_amperes(edition_held(), CAPACITY_4E4A, 5, METHOD_C, 2, &value)); /* between two rows */
    ck_assert(!capacity_has_method(edition_held(), CAPACITY_COUNT, METHOD_C, 2));
    ck_assert_int_eq(capacity_sizes(edition_held(), CAPACITY_COUNT, &sizes_mm2), 0);
    ck_assert_ptr_null(capacity_ref(edition_held(), CAPACITY_COUNT));
    ck_assert(!drop_figure_dc(edition_held(), DROP_COUNT, 6, &value));
    ck_assert_ptr_null(drop_ref(edition_held(), DROP_COUNT));
    ck_assert(csv_same(value, -7)); /* untouched throughout */
    ck_assert_str_eq(method_name(METHOD_COUNT), "");
    ck_assert_str_eq(method_name(METHOD_103), "103");
    /* a size that arithmetic made, not a literal */
    ck_assert(capacity_amperes(edition_held(), CAPACITY_4E4A, 0.1 * 3 * 5, METHOD_C, 2, &value));
    ck_assert(csv_same(value, 27));
}
END_TEST

static Suite *suite_table_sizes(void)
{
    Suite *suite = suite_create("tables by size");
    TCase *tests = tcase_create("sizes");
    tcase_add_loop_test(tests, capacity_equals_print, 0, CAPACITY_COUNT);
    tcase_add_loop_test(tests, capacity_knows_no_other_size, 0, CAPACITY_COUNT);
    tcase_add_loop_test(tests, drop_equals_print, 0, DROP_COUNT);
    tcase_add_loop_test(tests, drop_knows_no_other_size, 0, DROP_COUNT);
    tcase_add_test(tests, size_tables_refuse_nonsense);
    tcase_set_timeout(tests, 60);
    suite_add_tcase(suite, tests);
    return suite;
}

int main(void)
{
    SRunner *runner = srunner_create(suite_table_sizes());
    srunner_add_suite(runner, suite_table_rows());
    srunner_add_suite(runner, suite_table_things());
    srunner_add_suite(runner, suite_table_cells());
    srunner_add_suite(runner, suite_table_physics());
    srunner_add_suite(runner, suite_factor_physics());
    srunner_add_suite(runner, suite_table_oracle());
    srunner_add_suite(runner, suite_table_cases());
    srunner_add_suite(runner, suite_table_cautions());
    srunner_run_all(runner, CK_NORMAL);
    const int ran = srunner_ntests_run(runner);
    const int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    if (ran == 0) {
        fputs("no test ran\n", stderr);
    }
    return ran > 0 && failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
