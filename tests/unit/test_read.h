/** Groups of reader tests, for the program that runs them. */
#ifndef WEND_TEST_READ_H
#define WEND_TEST_READ_H

#include <check.h>

TCase *read_good_tests(void);
TCase *read_defaults_tests(void);
TCase *read_values_tests(void);
TCase *read_ranges_tests(void);
TCase *read_faults_tests(void);
TCase *read_bulk_tests(void);
TCase *read_format_tests(void);
TCase *read_digest_tests(void);

#endif
