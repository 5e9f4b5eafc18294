/** The working of a figure, written down while it is worked. Without an arena nothing is kept.
 *
 * A step whose `numbers` are not "" is meant to be typed into a calculator: it holds figures and signs only, and gives
 * the figure in `result`. What is looked up or surveyed has "" there and says in `formula` where from. */
#ifndef WEND_STEPS_PRIVATE_H
#define WEND_STEPS_PRIVATE_H

#include "design_private.h"

struct Steps {
    struct Arena *arena;
    struct Step *list;
    int count, room;
};

/* ---- steps.c ---- */
struct Steps steps_begin(struct Arena *arena);
/** One line more; texts are kept, not copied. */
void steps_add(struct Steps *steps, const char *what, const char *formula, const char *numbers, const char *result,
               const char *source);
/** The same, with a figure and its unit for a result; `unit` may be "". */
void steps_figure(struct Steps *steps, const char *what, const char *formula, const char *numbers, double value,
                  const char *unit, const char *source);
/** Hands the steps to the check. */
void steps_end(struct Steps *steps, struct Check *out);
/** A figure as a working shows it: seven significant digits, which for what was surveyed or printed is the figure
 * itself. */
const char *steps_number(const struct Steps *steps, double value);

/** Where a printed figure is from, and whether it was only remembered. */
const char *steps_source(const struct Steps *steps, const struct TableRef *ref);

#endif
