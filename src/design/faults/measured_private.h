/** Readings held against the plan, and what may have made them what they are. */
#ifndef WEND_MEASURED_PRIVATE_H
#define WEND_MEASURED_PRIVATE_H

#include "fault_private.h"

/** How far the meter may be out at a reading, in its unit; of ohms its digits too. */
double measured_error(const struct MeterError *meter, enum Unit unit, double value);
/** What is allowed for leads and terminals. */
double measured_leads_ohm(const struct MeterError *meter);
/** Whether what was read may have been `ohm`, with the meter's error and the band that is allowed either way. */
bool measured_may_be(const struct Measured *reading, double ohm, double extra_ohm);

/* ---- measured_causes.c ---- */
struct MeasuredCauses {
    struct Arena *arena;
    const struct RunDesign *run;
    const struct PlanRun *planned;
    const struct Measurements *read;
    struct Measured *list; /**< READINGS of them */
    double degc;           /**< of the cable, or 20 */
};
/** Names for each resistance that is not as expected what fits its size and sign; one that nothing fits is far off. */
void measured_find_causes(const struct MeasuredCauses *causes);

#endif
