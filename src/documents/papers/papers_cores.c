/* The core table: what each core of a run does at either end. */
#include "papers_private.h"

#include "documents/earth_ends_private.h"

static const enum Saying colours[COLOUR_COUNT] = {
    [COLOUR_NONE] = SAY_CORE_UNSLEEVED, [COLOUR_BROWN] = SAY_CORE_BROWN,
    [COLOUR_BLACK] = SAY_CORE_BLACK,    [COLOUR_GREY] = SAY_CORE_GREY,
    [COLOUR_BLUE] = SAY_CORE_BLUE,      [COLOUR_GREEN_AND_YELLOW] = SAY_CORE_GREEN_AND_YELLOW,
    [COLOUR_BARE] = SAY_CORE_BARE,
};

/* For the style sheet: the colour of a core drawn. */
static const char *const wires[COLOUR_COUNT] = {
    [COLOUR_NONE] = "plain", [COLOUR_BROWN] = "brown", [COLOUR_BLACK] = "black",
    [COLOUR_GREY] = "grey",  [COLOUR_BLUE] = "blue",   [COLOUR_GREEN_AND_YELLOW] = "earth",
    [COLOUR_BARE] = "bare",
};

static enum Saying supply_use(enum CoreIs is)
{
    switch (is) {
    case CORE_LINE: return SAY_CORE_LINE;
    case CORE_L1: return SAY_CORE_L1;
    case CORE_L2: return SAY_CORE_L2;
    case CORE_L3: return SAY_CORE_L3;
    case CORE_NEUTRAL: return SAY_CORE_NEUTRAL;
    case CORE_EARTH: return SAY_CORE_TO_EARTH_BAR;
    case CORE_SPARE: return SAY_CORE_SPARE_TO_EARTH_BAR;
    }
    return SAY_NOTHING;
}

static enum Saying far_use(enum CoreIs is, enum EarthEnd far)
{
    if (is != CORE_EARTH) {
        return is == CORE_SPARE ? SAY_CORE_NOT_CONNECTED : supply_use(is);
    }
    switch (far) {
    case EARTH_STOPS: return SAY_CORE_NOT_CONNECTED;
    case EARTH_ASK: return SAY_CORE_ASK_FIRST;
    case EARTH_CONNECTED:
    case EARTH_ABSENT: break;
    }
    return SAY_CORE_TO_EARTH_BAR;
}

static void add_core(struct XmlOut *out, struct XmlElement *element, const struct CoreRow *row, enum Saying colour,
                     enum CoreColour wire, enum EarthEnd far)
{
    struct XmlElement *core = xml_child(out, element, "core");
    papers_attribute(out, core, "colour", say_term(colour));
    papers_attribute(out, core, "sleeve", say_term(colours[row->sleeve]));
    papers_attribute(out, core, "supply", say_term(supply_use(row->is)));
    papers_attribute(out, core, "far", say_term(far_use(row->is, far)));
    xml_attribute(out, core, "wire", wires[wire]);
    if (row->sleeve != COLOUR_NONE) {
        xml_attribute(out, core, "sleeved", "yes");
    }
}

/* The core that protects is always listed, whatever its colour, where it is not the same at both ends. */
void papers_cores(struct XmlOut *out, struct XmlElement *element, const struct Plan *plan, const struct PlanRun *run)
{
    static const struct CoreRow earth_core = {.is = CORE_EARTH, .sleeve = COLOUR_GREEN_AND_YELLOW};
    const enum EarthEnd far = earth_far_conductor(plan, run);
    const struct CoreUse *use = survey_core_use(run->settled, run->currents.lines);
    for (int k = 0; use != NULL && k < use->cores; k++) {
        add_core(out, element, &use->rows[k], colours[use->rows[k].colour], use->rows[k].colour, far);
    }
    if (use == NULL && earth_conductor(run) == SAY_EARTH_CORE && far != EARTH_CONNECTED) {
        add_core(out, element, &earth_core, SAY_THE_EARTH_CORE, COLOUR_NONE, far);
    }
}

bool papers_names_cores(const struct Plan *plan, const struct PlanRun *run)
{
    return survey_core_use(run->settled, run->currents.lines) != NULL ||
           (earth_conductor(run) == SAY_EARTH_CORE && earth_far_conductor(plan, run) != EARTH_CONNECTED);
}
