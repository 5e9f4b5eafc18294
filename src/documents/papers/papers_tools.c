/* What to load: only what this route needs, by its stretches and by what the parts list was counted from. Common
 * practice, no source. */
#include "papers_private.h"

#include <math.h>

struct Needs {
    bool digs, machine, drive, ground, drawn, loft, high, hole, fixes, armour, catenary;
};

static void look_at(struct Needs *needs, const struct Segment *segment)
{
    const bool digs = survey_dug(segment);
    needs->digs = needs->digs || digs;
    needs->machine = needs->machine || (digs && segment->dig == DIG_MACHINE);
    needs->drive = needs->drive || (digs && segment->under == UNDER_DRIVE);
    needs->ground = needs->ground || survey_in_ground(segment->way);
    needs->drawn = needs->drawn || survey_drawn(segment);
    needs->loft = needs->loft || segment->way == WAY_LOFT_VOID;
    needs->hole = needs->hole || segment->way == WAY_THROUGH_WALL;
    needs->catenary = needs->catenary || segment->way == WAY_CATENARY;
    needs->fixes = needs->fixes || !survey_in_ground(segment->way);
}

static struct Needs needs_of(const struct Plan *plan)
{
    struct Needs needs = {0};
    double lowest_m = 0, highest_m = 0;
    for (int i = 0; i < plan->segment_count; i++) {
        const struct PlanSegment *place = &plan->segments[i];
        look_at(&needs, place->surveyed);
        lowest_m = fmin(lowest_m, place->height_to_m);
        highest_m = fmax(highest_m, place->height_to_m);
    }
    needs.high = highest_m - lowest_m > 1.5 || needs.loft || needs.catenary;
    for (int i = 0; i < plan->run_count; i++) {
        needs.armour = needs.armour || survey_armoured(plan->runs[i].settled->cable.type);
    }
    return needs;
}

/* Each size of hole once, with the longest drill that it wants. */
static const struct Say *hole_drills(struct Arena *arena, const struct PartsList *parts)
{
    const struct Say *drills = NULL;
    for (int i = 0; parts != NULL && i < parts->way_count; i++) {
        const double hole_mm = parts->ways[i].hole_mm;
        double longest_mm = 0;
        bool told = hole_mm <= 0;
        for (int k = 0; k < parts->way_count; k++) {
            const bool same = fabs(parts->ways[k].hole_mm - hole_mm) < 0.01;
            told = told || (same && k < i);
            longest_mm = same ? fmax(longest_mm, parts->ways[k].drill_mm) : longest_mm;
        }
        if (!told) {
            const struct Say *drill = say(arena, hole_mm > 40 ? SAY_TOOL_CORE_BIT : SAY_TOOL_DRILL,
                                          say_digits(hole_mm, 4, UNIT_MM), say_fixed(longest_mm, 0, UNIT_MM));
            drills = say_list(arena, SAY_SEMICOLON, drills, say_part(drill));
        }
    }
    return drills;
}

void papers_tools(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan, const struct PartsList *parts)
{
    struct Arena *arena = xml_out_arena(out);
    const struct Needs needs = needs_of(plan);
    const struct Say *holes = hole_drills(arena, parts);
    const struct {
        bool due;
        enum Saying text;
        const struct Say *sizes;
    } tools[] = {
        {true, SAY_TOOL_INDICATOR, NULL},
        {true, SAY_TOOL_TESTER, NULL},
        {true, SAY_TOOL_TAPE, NULL},
        {needs.armour, SAY_TOOL_HACKSAW, NULL},
        {true, SAY_TOOL_CUTTERS, NULL},
        {needs.fixes, SAY_TOOL_HAMMER, NULL},
        {needs.hole && holes != NULL, SAY_TOOL_WALL_DRILLS, holes},
        {needs.hole && holes == NULL, SAY_TOOL_LONG_DRILL, NULL},
        {needs.hole, SAY_TOOL_DUST, NULL},
        {needs.digs, SAY_TOOL_LOCATOR, NULL},
        {needs.machine, SAY_TOOL_DIGGER, NULL},
        {needs.digs, SAY_TOOL_RAMMER, NULL},
        {needs.drive, SAY_TOOL_CONES, NULL},
        {plan->electrode.due, SAY_TOOL_ROD_DRIVER, NULL},
        {needs.drawn, SAY_TOOL_FISH_TAPE, NULL},
        {needs.loft, SAY_TOOL_BOARDS, NULL},
        {needs.high, SAY_TOOL_LADDER, NULL},
        {needs.catenary, SAY_TOOL_TENSIONER, NULL},
        {true, SAY_TOOL_DRUM_STAND, NULL},
    };
    struct XmlElement *element = xml_child(out, papers, "tools");
    for (size_t i = 0; i < sizeof tools / sizeof tools[0]; i++) {
        if (tools[i].due) {
            xml_say(out, xml_child(out, element, "tool"), say(arena, tools[i].text, say_part(tools[i].sizes)));
        }
    }
}
