/** A pocket calculator for printed working: + - x / ^ ( ) sqrt ln pi and decimal numbers. */
#ifndef WEND_TESTS_CALCULATOR_H
#define WEND_TESTS_CALCULATOR_H

#include <stdbool.h>

/** The value of a whole expression; false when it is not one. */
bool calculator_value(const char *text, double *out);
/** True when the expression comes to the figure, but for seven digits of rounding in either. */
bool calculator_agrees(const char *text, double figure);
/** The figure that a text begins with; false when it begins with none. */
bool calculator_figure(const char *text, double *out);

#endif
