/** The tests of the sink for faults, for the program that runs those of the ground floor. */
#ifndef WEND_TEST_DIAG_H
#define WEND_TEST_DIAG_H

#include <check.h>

TCase *diag_tests(void);

#endif
