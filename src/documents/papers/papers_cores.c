/* The core table: what each core of a run does at either end. */
#include "papers_private.h"

#include "documents/earth_ends_private.h"

#include <string.h>

static const char *supply_use(const struct CoreRow *row)
{
    switch (row->kind) {
    case CORE_LIVE: return row->is;
    case CORE_EARTH: return "earth bar";
    case CORE_SPARE: return "spare: earth bar";
    }
    return "";
}

static const char *far_use(const struct CoreRow *row, enum EarthEnd far)
{
    static const char stops[] = "NOT connected: cut back, cap and insulate; do NOT join it to the earth here";
    if (row->kind == CORE_LIVE) {
        return row->is;
    }
    if (row->kind == CORE_SPARE) {
        return stops;
    }
    switch (far) {
    case EARTH_STOPS: return stops;
    case EARTH_ASK: return "ASK FIRST: leave it capped and insulated until it is settled";
    case EARTH_CONNECTED:
    case EARTH_ABSENT: break;
    }
    return "earth bar";
}

static void add_core(struct XmlOut *out, struct XmlElement *element, const struct CoreRow *row, enum EarthEnd far)
{
    struct XmlElement *core = xml_child(out, element, "core");
    xml_attribute(out, core, "colour", row->colour);
    xml_attribute(out, core, "sleeve", row->sleeve);
    xml_attribute(out, core, "supply", supply_use(row));
    xml_attribute(out, core, "far", far_use(row, far));
}

/* The core that protects is always told, whatever its colour, where it is not the same at both ends. */
void papers_cores(struct XmlOut *out, struct XmlElement *element, const struct Plan *plan, const struct PlanRun *run)
{
    static const struct CoreRow earth_core = {"the earth core", "earth", "green-and-yellow", CORE_EARTH};
    const enum EarthEnd far = earth_far_conductor(plan, run);
    const struct CoreUse *use = survey_core_use(run->surveyed, run->currents.lines);
    for (int k = 0; use != NULL && k < use->count; k++) {
        add_core(out, element, &use->rows[k], far);
    }
    const bool core = strcmp(earth_conductor_name(run), "Earth core") == 0;
    if (use == NULL && core && far != EARTH_CONNECTED) {
        add_core(out, element, &earth_core, far);
    }
}

bool papers_names_cores(const struct Plan *plan, const struct PlanRun *run)
{
    const bool core = strcmp(earth_conductor_name(run), "Earth core") == 0;
    return survey_core_use(run->surveyed, run->currents.lines) != NULL ||
           (core && earth_far_conductor(plan, run) != EARTH_CONNECTED);
}
