/** The working of a figure, written down while it is worked.
 *
 * A step whose `numbers` are not "" is meant to be typed into a calculator: it holds figures and signs only, and gives
 * the figure in `result`. What is looked up or surveyed has "" there and says in `formula` where from.
 *
 * What a step says is handed over as say_term(), say_name() (symbols) or say_part(). */
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
/** One line more, with words for a result. */
void steps_add(struct Steps *steps, struct SayArg what, struct SayArg formula, struct SayArg result,
               struct SayArg source);
/** One line more, with a figure for a result; `numbers` are kept, not copied. */
void steps_figure(struct Steps *steps, struct SayArg what, struct SayArg formula, const char *numbers, double value,
                  enum Unit unit, struct SayArg source);
/** Hands the steps to the check. */
void steps_end(struct Steps *steps, struct Check *out);
/** A figure as a working shows it: seven significant digits, which for what was surveyed or printed is the figure
 * itself. */
const char *steps_number(const struct Steps *steps, double value);
/** The same within what a step says. */
struct SayArg steps_value(double value, enum Unit unit);

/** Where a printed figure is from, and whether it was only remembered. */
struct SayArg steps_source(const struct Steps *steps, const struct TableRef *ref);
/** A place in a standard; a clause of BS 7671, and one of its Appendix 4. */
struct SayArg steps_cite(const struct Steps *steps, struct Cite cite);
struct SayArg steps_clause(const struct Steps *steps, const char *clause);
struct SayArg steps_appendix_4(const struct Steps *steps, const char *clause);

#endif
