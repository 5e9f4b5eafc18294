/** Reads the printed answers back, as somebody with the sheet in hand would. */
#ifndef WEND_TESTS_PRINTED_WORKING_H
#define WEND_TESTS_PRINTED_WORKING_H

#include <stddef.h>

enum { PRINTED_STEPS_MOST = 64, PRINTED_TEXT_MOST = 1024 };

struct PrintedStep {
    char what[PRINTED_TEXT_MOST], formula[PRINTED_TEXT_MOST];
    char numbers[PRINTED_TEXT_MOST]; /* "" when nothing is calculated */
    char result[PRINTED_TEXT_MOST];  /* with its unit, without its source */
};

/** Takes the steps out of a printed explanation; returns how many. */
int printed_steps(const char *text, struct PrintedStep steps[PRINTED_STEPS_MOST]);
/** Characters of the longest line. */
size_t printed_columns(const char *text);

#endif
