/** What the conductors that carry the supply's earth are at the two ends of a run: the armour, and the protective core
 * or the earth cable alongside. One place decides it, so that brief, test sheet and diagram cannot differ. */
#ifndef WEND_EARTH_ENDS_PRIVATE_H
#define WEND_EARTH_ENDS_PRIVATE_H

#include "plan/plan.h"
#include "plan/say.h"

enum EarthEnd {
    EARTH_ABSENT, /**< the run has no such conductor */
    EARTH_CONNECTED,
    EARTH_STOPS, /**< not connected: nothing there may join it to the outbuilding's earth */
    EARTH_ASK,   /**< how the far end is earthed was not surveyed */
};

/** SAY_CONNECTED, SAY_NOT_CONNECTED, SAY_ASK_FIRST; SAY_NOTHING when there is none. */
enum Saying earth_end_state(enum EarthEnd end);
/** The armour at the far end; at the supply end it is connected wherever there is one. */
enum EarthEnd earth_far_armour(const struct Plan *plan, const struct PlanRun *run);
/** The protective core or the earth cable alongside, at the far end; at the supply end it is connected. */
enum EarthEnd earth_far_conductor(const struct Plan *plan, const struct PlanRun *run);
/** SAY_EARTH_CORE, SAY_EARTH_CABLE_ALONGSIDE; SAY_NOTHING when the run has neither. */
enum Saying earth_conductor(const struct PlanRun *run);
/** What a fault on the cable returns through, "the armour"; SAY_NOTHING when there is none. */
enum Saying earth_path(const struct Plan *plan, const struct PlanRun *run);

#endif
