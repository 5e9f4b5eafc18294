/** Survey to Plan. */
#ifndef WEND_DESIGN_H
#define WEND_DESIGN_H

#include "base/base.h"
#include "base/diag.h"
#include "plan/plan.h"
#include "survey/survey.h"

/** Decides. `route` is the name the plan carries. NULL when a figure is missing (reported to `diag`, at the segment
 * that lacks it) or memory failed. A check that fails is not an error: the plan then says so. */
const struct Plan *design_plan(struct Arena *arena, struct Diag *diag, const struct Survey *survey, const char *route);

/** The same by an edition of the wiring rules other than edition_held(), and as much of it as is asked for. */
const struct Plan *design_plan_by(const struct Edition *edition, enum PlanExtent extent, struct Arena *arena,
                                  struct Diag *diag, const struct Survey *survey, const char *route);

/** The rating of one stretch of a planned power run once more, now with the working of its figures; `stretch` indexes
 * run->ratings. NULL without memory. */
const struct Rating *design_working(struct Arena *arena, const struct Plan *plan, const struct PlanRun *run,
                                    int stretch);

/** The kinds of check that are made, in their order: their names, titles and rules, with nothing decided. False: there
 * is no such index. */
bool design_check_kind(int index, struct Check *out);
/** Whether a table held here rates a kind of cable that is run so, with nothing in its way. A hole is rated by what it
 * lies between. */
bool design_way_rates(enum Way way, enum CableType type);

/** What is to be different. */
struct Variant {
    double load_ratio; /**< every current, power and starting current times this */
    bool any_size;     /**< sizes that were given are chosen anew */
    bool any_device;   /**< ratings of devices that were given are chosen anew */
};
/** The survey with that changed; it shares the rest with `survey`. NULL without memory. */
const struct Survey *design_variant(struct Arena *arena, const struct Survey *survey, const struct Variant *variant);
/** The survey with the sizes and devices that `plan`, of the same runs, came to, so that none is chosen anew. */
const struct Survey *design_fixed(struct Arena *arena, const struct Survey *survey, const struct Plan *plan);
/** The survey with a segment so many metres longer. */
const struct Survey *design_longer(struct Arena *arena, const struct Survey *survey, int segment, double more_m);
/** The survey with the loads of one run so many times as large. */
const struct Survey *design_heavier(struct Arena *arena, const struct Survey *survey, int run, double times);
/** The survey with a power run's size given. */
const struct Survey *design_sized(struct Arena *arena, const struct Survey *survey, int run, double size_mm2);
/** The survey with the duct of a segment of that nominal size, and its bore as the standard asks. */
const struct Survey *design_ducted(struct Arena *arena, const struct Survey *survey, int segment, double nominal_mm);
/** A nominal size of duct, rising; 0 behind the last. */
double design_duct_size(int index);
/** What puts an assumption at its other value by that edition, without `key`; none where it has none. */
struct Settings design_settings(struct Arena *arena, const struct Edition *edition, const struct Survey *survey,
                                const struct Assumption *assumption);

#endif
