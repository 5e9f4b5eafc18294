/** Sets up runs and routes for the tests on faults and earthing: a run in numbers for one calculation, a route as text
 * for the whole program. Every function fails the running test when it cannot do what is asked. */
#ifndef WEND_FAULT_RIG_H
#define WEND_FAULT_RIG_H

#include "design/faults/fault_private.h"
#include "library/library_stages.h"
#include "wend/wend.h"

#include <check.h>

/** A run that one check is made on. Change what the test is about, then ask. Must not be copied: parts point at it. */
struct Rig {
    struct Arena *arena;
    struct Run run;
    struct Earthing earthing;
    struct RunDesign design;
};
/** 40 m of 3-core BS 5467, a core as protective conductor, 90 degC, behind an MCB B 32 A that feeds a board; TN-S,
 * 230 V, loop before it 0.35 ohm. */
void rig_make(struct Rig *rig);
void rig_free(struct Rig *rig);
/** The device, its rating told in both places that hold it. */
void rig_device(struct Rig *rig, enum DeviceKind kind, enum Curve curve, double rating_a);
/** Its residual part, ampere. */
void rig_residual(struct Rig *rig, double residual_a, bool time_delayed);
/** The cable: type, cores, what a fault returns through, temperature at fault. */
void rig_cable(struct Rig *rig, enum CableType type, int cores, enum Cpc cpc, double degc);
/** Makes the far end an island whose electrode was measured. */
void rig_electrode(struct Rig *rig, double measured_ohm);

typedef void rig_check_function(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                                struct Check *out);
/** Makes one check on one size, with its text; the texts live as long as the rig. */
struct Check rig_check(const struct Rig *rig, rig_check_function *check, double size_mm2);
void rig_passes(const struct Rig *rig, rig_check_function *check, double size_mm2, const char *what);
void rig_fails(const struct Rig *rig, rig_check_function *check, double size_mm2, const char *what);

/** A route of one power run, "feeder", along one stretch, without tails. NULL takes the default in the comment. */
struct RigRoute {
    const char *supply;   /**< "system: TN-S, loop-impedance: 350 mohm" */
    const char *top;      /**< further keys at the top of the file, none */
    const char *run;      /**< further keys of the run on one line, "feeds: board" */
    const char *load;     /**< "current: 20 A" */
    const char *device;   /**< "kind: MCB, curve: B, rating: 32 A" */
    const char *cable;    /**< "type: BS5467, cores: 3" */
    const char *runs;     /**< further runs, none */
    const char *segments; /**< "{name: a, way: wall, length: 40 m}" */
};
/** Plans it; free with wend_free(). rig_plan() wants a plan, rig_plan_any() takes what comes. */
struct Wend *rig_plan(const struct RigRoute *route);
struct Wend *rig_plan_any(const struct RigRoute *route);
/** A check of the first run by its id. */
const struct Check *rig_found(const struct Wend *wend, const char *id);
/** That check's result, with its text in the message when it is another. */
void rig_result(const struct Wend *wend, const char *id, enum CheckResult result);
/** Plans, compares one result and frees. */
void rig_route_result(const struct RigRoute *route, const char *id, enum CheckResult result);
bool rig_says(const char *text, const char *part);

TCase *fault_published(void);
TCase *fault_worked(void);
TCase *fault_devices(void);
TCase *fault_rules(void);
TCase *fault_trade(void);
TCase *fault_cautious(void);
TCase *fault_energies(void);
TCase *fault_known(void);
TCase *fault_said(void);

#endif
