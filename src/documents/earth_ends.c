/* What armour, protective core and earth cable are at the far end: see the header. */
#include "earth_ends_private.h"

/* As the parts list decides on the gland. */
static enum EarthEnd far_end(const struct Plan *plan, const struct PlanRun *run)
{
    const struct Earthing *earthing = &plan->survey->earthing;
    if (plan->electrode.due || earthing->far_end == FAR_END_ISLAND) {
        return EARTH_STOPS;
    }
    return survey_far_earth_known(plan->survey, run->surveyed) ? EARTH_CONNECTED : EARTH_ASK;
}

enum EarthEnd earth_far_armour(const struct Plan *plan, const struct PlanRun *run)
{
    return survey_armoured(run->surveyed->cable.type) ? far_end(plan, run) : EARTH_ABSENT;
}

const char *earth_conductor_name(const struct PlanRun *run)
{
    switch (run->surveyed->cable.cpc) {
    case CPC_CORE:
    case CPC_CORE_AND_ARMOUR: return "Earth core";
    case CPC_SEPARATE: return "Earth cable alongside";
    case CPC_ARMOUR:
    case CPC_NONE:
    case CPC_COUNT: break;
    }
    return "";
}

enum EarthEnd earth_far_conductor(const struct Plan *plan, const struct PlanRun *run)
{
    return *earth_conductor_name(run) == '\0' ? EARTH_ABSENT : far_end(plan, run);
}

const char *earth_path_text(const struct Plan *plan, const struct PlanRun *run)
{
    switch (survey_fault_path(plan->survey, run->surveyed)) {
    case CPC_CORE: return "the protective core";
    case CPC_ARMOUR: return "the armour";
    case CPC_CORE_AND_ARMOUR: return "the protective core and the armour together";
    case CPC_SEPARATE: return "the separate protective conductor";
    case CPC_NONE:
    case CPC_COUNT: break;
    }
    return "";
}

const char *earth_end_word(enum EarthEnd end)
{
    switch (end) {
    case EARTH_CONNECTED: return "CONNECTED";
    case EARTH_STOPS: return "NOT CONNECTED";
    case EARTH_ASK: return "ASK FIRST";
    case EARTH_ABSENT: break;
    }
    return "";
}
