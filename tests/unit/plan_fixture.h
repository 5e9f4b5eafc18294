/** Plans made by hand, so that documents can be tested without the stages before them. The figures are plausible, not
 * decided: sums hold, but no table was asked. */
#ifndef PLAN_FIXTURE_H
#define PLAN_FIXTURE_H

#include "plan/plan.h"
#include "takeoff/parts.h"

enum FixtureKind {
    FIXTURE_TWO,   /**< a wall and a duct */
    FIXTURE_EIGHT, /**< eight stretches, six ways */
    FIXTURE_TWENTY_FIVE,
    FIXTURE_UNDERGROUND, /**< nothing but duct and buried */
    FIXTURE_TOWER,       /**< 19 m straight up */
    FIXTURE_LONG_DULL,   /**< one stretch far longer than the others */
    FIXTURE_HILL,        /**< falls with the ground, in and out of it twice */
    FIXTURE_EVERY_WAY,   /**< all fifteen ways */
    FIXTURE_RUNS,        /**< four runs, three phases, ends on the way, checks that fail */
    FIXTURE_TWO_HUNDRED,
    FIXTURE_HOSTILE, /**< markup, control-like and very long texts in every text field */
    FIXTURE_COUNT
};

/** A file-name-like word for a kind: "eight". */
const char *fixture_name(enum FixtureKind kind);
/** NULL when memory fails. */
const struct Plan *fixture_plan(struct Arena *arena, enum FixtureKind kind);
/** A plan of `segments` stretches drawn by lot from `seed`: ways, lengths, rises, names and runs. */
/** What the stretches of a plan take, made up; NULL when memory fails. */
const struct PartsList *fixture_work(struct Arena *arena, const struct Plan *plan);
const struct Plan *fixture_random(struct Arena *arena, int segments, unsigned seed);
/** A parts list that goes with it; hostile when the plan is. */
const struct PartsList *fixture_parts(struct Arena *arena, const struct Plan *plan);
/** Texts that are out to break a writer; `index` counts round. */
const char *fixture_hostile_text(struct Arena *arena, unsigned index);

#endif
