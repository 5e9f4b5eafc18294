/* The armoured tables against an independent thermal model of the same cables (tests/published/oracle_table.csv), 66
 * cables in three places. Cells that lie more than 6 % apart are listed, each with its reason, in
 * oracle_differences.csv: one that is not listed, or listed and no longer apart, is a fault. Figures and model share
 * their physics, so agreement speaks for the remembered digits rather than for the physics. */
#include "csv_file.h"
#include "table_suites.h"
#include "tables/tables.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const double apart = 0.06;

static const struct {
    const char *head; /* of the model's column */
    enum Method method;
} places[] = {{"free30", METHOD_E}, {"wall30", METHOD_C}, {"duct75_2.5_20_0.7", METHOD_D}};
enum { PLACES = sizeof places / sizeof places[0] };

/* The line of oracle_differences.csv that a cell is due, without the reason; "" when model and print agree. */
static const char *difference(const struct CsvFile *oracle, int row, int place)
{
    const bool xlpe = text_same(csv_text(oracle, row, csv_column(oracle, "ins")), "xlpe");
    ck_assert(xlpe || text_same(csv_text(oracle, row, csv_column(oracle, "ins")), "pvc"));
    const int cores = (int)csv_number(oracle, row, csv_column(oracle, "cores"));
    const double size_mm2 = csv_number(oracle, row, csv_column(oracle, "csa"));
    const double model_a = csv_number(oracle, row, csv_column(oracle, places[place].head));
    double print_a = 0;
    ck_assert(capacity_amperes(edition_held(), xlpe ? CAPACITY_4E4A : CAPACITY_4D4A, size_mm2, places[place].method,
                               cores == 2 ? 2 : 3, &print_a));
    const double ratio = model_a / print_a - 1;
    if (fabs(ratio) <= apart) {
        return "";
    }
    struct TextBuilder line = text_builder(oracle->arena);
    text_print(&line, "%s,%d,", xlpe ? "xlpe" : "pvc", cores);
    text_add(&line, number_significant(oracle->arena, size_mm2, 6));
    text_print(&line, ",%s,", method_name(places[place].method));
    number_add(&line, model_a, 1);
    text_add(&line, ",");
    text_add(&line, number_significant(oracle->arena, print_a, 6));
    text_add(&line, ",");
    number_add(&line, 100 * ratio, 1);
    return text_done(&line);
}

/* A listed line without its reason, in the same form. */
static const char *listed_line(const struct CsvFile *listed, int row)
{
    struct TextBuilder line = text_builder(listed->arena);
    for (int column = 0; column < listed->columns - 1; column++) {
        text_add(&line, column > 0 ? "," : "");
        text_add(&line, csv_text(listed, row, column));
    }
    return text_done(&line);
}

START_TEST(oracle_bounds)
{
    struct CsvFile oracle = csv_open("oracle_table.csv");
    struct CsvFile listed = csv_open("oracle_differences.csv");
    int cells = 0;
    int differences = 0;
    for (int row = 0; row < oracle.rows; row++) {
        for (int place = 0; place < PLACES; place++) {
            const char *line = difference(&oracle, row, place);
            cells++;
            if (line[0] == '\0') {
                continue;
            }
            ck_assert_msg(differences < listed.rows, "more than 6 %% apart and not listed: %s", line);
            ck_assert_str_eq(line, listed_line(&listed, differences));
            const char *reason = csv_text(&listed, differences, csv_column(&listed, "reason"));
            ck_assert_msg(strlen(reason) > 20, "no reason for %s", line);
            differences++;
        }
    }
    ck_assert_int_eq(cells, 66 * PLACES);
    ck_assert_int_eq(differences, listed.rows); /* the rest of the list would no longer differ */
    printf("compared %3d cells of %s, %d listed as apart\n", cells, oracle.name, differences);
    csv_close(&listed);
    csv_close(&oracle);
}
END_TEST

/* Slips that hide within 6 % of one cell show in a column: each column's mean lies closer than its worst cell. */
START_TEST(oracle_means)
{
    struct CsvFile oracle = csv_open("oracle_table.csv");
    for (int place = 0; place < PLACES; place++) {
        for (int cores = 2; cores <= 4; cores++) {
            double sum = 0;
            int count = 0;
            for (int row = 0; row < oracle.rows; row++) {
                if ((int)csv_number(&oracle, row, 0) != cores) {
                    continue;
                }
                const bool xlpe = text_same(csv_text(&oracle, row, 2), "xlpe");
                double print_a = 0;
                ck_assert(capacity_amperes(edition_held(), xlpe ? CAPACITY_4E4A : CAPACITY_4D4A,
                                           csv_number(&oracle, row, 1), places[place].method, cores == 2 ? 2 : 3,
                                           &print_a));
                sum += csv_number(&oracle, row, csv_column(&oracle, places[place].head)) / print_a;
                count++;
            }
            ck_assert_int_eq(count, 22);
            ck_assert_double_le(fabs(sum / count - 1), cores == 4 ? 0.04 : 0.02);
        }
    }
    csv_close(&oracle);
}
END_TEST

Suite *suite_table_oracle(void)
{
    Suite *suite = suite_create("oracle");
    TCase *tests = tcase_create("oracle bounds");
    tcase_add_test(tests, oracle_bounds);
    tcase_add_test(tests, oracle_means);
    suite_add_tcase(suite, tests);
    return suite;
}
