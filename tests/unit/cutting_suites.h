/** The parts of test_cutting. */
#ifndef WEND_CUTTING_SUITES_H
#define WEND_CUTTING_SUITES_H

#include "run_suite.h"

void add_cutting_tiny(Suite *suite);
void add_cutting_chance(Suite *suite);

#endif
