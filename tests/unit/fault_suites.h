/** The suites of the program `test_fault_tables`, a file each; main() is in test_fault_tables.c. */
#ifndef WEND_TEST_FAULT_SUITES_H
#define WEND_TEST_FAULT_SUITES_H

#include <check.h>

Suite *suite_fault_armour(void);
Suite *suite_fault_conductors(void);
Suite *suite_fault_devices(void);
Suite *suite_fault_cases(void);

#endif
