/** What the conductors that carry the supply's earth are at the two ends of a run: the armour, and the protective core
 * or the earth cable alongside. One place decides it, so that brief, test sheet and diagram cannot differ. */
#ifndef WEND_EARTH_ENDS_PRIVATE_H
#define WEND_EARTH_ENDS_PRIVATE_H

#include "plan/plan.h"

enum EarthEnd {
    EARTH_ABSENT, /**< the run has no such conductor */
    EARTH_CONNECTED,
    EARTH_STOPS, /**< not connected: nothing there may join it to the outbuilding's earth */
    EARTH_ASK,   /**< how the far end is earthed was not surveyed */
};

/** "CONNECTED", "NOT CONNECTED", "ASK FIRST"; "" when there is none. */
const char *earth_end_word(enum EarthEnd end);
/** The armour at the far end; at the supply end it is connected wherever there is one. */
enum EarthEnd earth_far_armour(const struct Plan *plan, const struct PlanRun *run);
/** The protective core or the earth cable alongside, at the far end; at the supply end it is connected. */
enum EarthEnd earth_far_conductor(const struct Plan *plan, const struct PlanRun *run);
/** "Earth core", "Earth cable alongside"; "" when the run has neither. */
const char *earth_conductor_name(const struct PlanRun *run);
/** What a fault on the cable returns through, in words; "" when there is none. */
const char *earth_path_text(const struct Plan *plan, const struct PlanRun *run);

#endif
