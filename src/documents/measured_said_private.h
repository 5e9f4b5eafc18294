/** A reading in finished sayings, for the terminal and for paper alike. */
#ifndef WEND_MEASURED_SAID_PRIVATE_H
#define WEND_MEASURED_SAID_PRIVATE_H

#include "plan/plan.h"

/** NULL where there is nothing to say. */
struct MeasuredSaid {
    const struct Say *name, *value, *expected, *limit, *fit;
    const struct Say *remark; /**< what is wrong with it, and what it may be */
};
struct MeasuredSaid measured_said(struct Arena *arena, const struct Measured *reading);
/** "cable at 12 degC; by ...; meter out by 2 % + 0.02 ohm": under what the readings of a run were taken. */
const struct Say *measured_run_said(struct Arena *arena, const struct PlanRun *run);
/** Why the readings come to what they do, the plan's own verdict counted in. */
const struct Say *measured_why(struct Arena *arena, const struct Plan *plan);
/** "r1r2", as the route file has it. */
const char *measured_key(enum Reading what);
/** "beyond-limit" */
const char *measured_fit_word(enum Fit fit);
/** "wrong-length" */
const char *measured_cause_word(enum Cause cause);

#endif
