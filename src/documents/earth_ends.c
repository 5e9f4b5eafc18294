/* What armour, protective core and earth cable are at the far end: see the header. */
#include "earth_ends_private.h"

/* As the parts list decides on the gland. */
static enum EarthEnd far_end(const struct Plan *plan, const struct PlanRun *run)
{
    const struct Earthing *earthing = &plan->survey->earthing;
    if (plan->electrode.due || earthing->far_end == FAR_END_ISLAND) {
        return EARTH_STOPS;
    }
    return survey_far_earth_known(plan->survey, run->settled) ? EARTH_CONNECTED : EARTH_ASK;
}

enum EarthEnd earth_far_armour(const struct Plan *plan, const struct PlanRun *run)
{
    return survey_armoured(run->settled->cable.type) ? far_end(plan, run) : EARTH_ABSENT;
}

enum Saying earth_conductor(const struct PlanRun *run)
{
    switch (run->settled->cable.cpc) {
    case CPC_CORE:
    case CPC_CORE_AND_ARMOUR: return SAY_EARTH_CORE;
    case CPC_SEPARATE: return SAY_EARTH_CABLE_ALONGSIDE;
    case CPC_ARMOUR:
    case CPC_NONE:
    case CPC_COUNT: break;
    }
    return SAY_NOTHING;
}

enum EarthEnd earth_far_conductor(const struct Plan *plan, const struct PlanRun *run)
{
    return earth_conductor(run) == SAY_NOTHING ? EARTH_ABSENT : far_end(plan, run);
}

enum Saying earth_path(const struct Plan *plan, const struct PlanRun *run)
{
    switch (survey_fault_path(plan->survey, run->settled)) {
    case CPC_CORE: return SAY_PATH_CORE;
    case CPC_ARMOUR: return SAY_PATH_ARMOUR;
    case CPC_CORE_AND_ARMOUR: return SAY_PATH_BOTH;
    case CPC_SEPARATE: return SAY_PATH_SEPARATE;
    case CPC_NONE:
    case CPC_COUNT: break;
    }
    return SAY_NOTHING;
}

enum Saying earth_end_state(enum EarthEnd end)
{
    switch (end) {
    case EARTH_CONNECTED: return SAY_CONNECTED;
    case EARTH_STOPS: return SAY_NOT_CONNECTED;
    case EARTH_ASK: return SAY_ASK_FIRST;
    case EARTH_ABSENT: break;
    }
    return SAY_NOTHING;
}
