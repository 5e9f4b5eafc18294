/** The suites of the program `test_tables`, a file each; main() is in test_tables.c. */
#ifndef WEND_TEST_TABLE_SUITES_H
#define WEND_TEST_TABLE_SUITES_H

#include <check.h>

Suite *suite_table_rows(void);
Suite *suite_table_things(void);
Suite *suite_table_cells(void);
Suite *suite_table_physics(void);
Suite *suite_factor_physics(void);
Suite *suite_table_oracle(void);
Suite *suite_table_cases(void);
Suite *suite_table_cautions(void);

#endif
