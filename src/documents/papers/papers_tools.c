/* What to load: only what this route needs, by its stretches and by what the parts list was counted from. Common
 * practice, no source. */
#include "papers_private.h"

#include "documents/shown_private.h"

#include <math.h>
#include <string.h>

struct Needs {
    bool digs, machine, drive, ground, drawn, loft, high, hole, fixes, armour, catenary, always;
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
    struct Needs needs = {.always = true};
    double lowest_m = 0, highest_m = 0;
    for (int i = 0; i < plan->segment_count; i++) {
        const struct PlanSegment *place = &plan->segments[i];
        look_at(&needs, place->surveyed);
        lowest_m = fmin(lowest_m, place->height_to_m);
        highest_m = fmax(highest_m, place->height_to_m);
    }
    needs.high = highest_m - lowest_m > 1.5 || needs.loft || needs.catenary;
    for (int i = 0; i < plan->run_count; i++) {
        needs.armour = needs.armour || survey_armoured(plan->runs[i].surveyed->cable.type);
    }
    return needs;
}

static void tool(struct XmlOut *out, struct XmlElement *tools, bool due, const char *text)
{
    if (due) {
        xml_text(out, xml_child(out, tools, "tool"), text);
    }
}

/* "35 mm, at least 510 mm long": each size of hole once, with the longest drill that it wants. */
static const char *hole_drills(struct Arena *arena, const struct PartsList *parts)
{
    struct TextBuilder text = text_builder(arena);
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
            text_print(&text, "%s%s mm%s, at least %s mm long", text.length > 0 ? "; " : "",
                       number_significant(arena, hole_mm, 4), hole_mm > 40 ? " (core bit)" : "",
                       number_text(arena, longest_mm, 0));
        }
    }
    return text_done(&text);
}

/* What the fixings are held by, each once: the bits go by it. */
static const char *grips(struct Arena *arena, const struct PartsList *parts)
{
    struct TextBuilder text = text_builder(arena);
    for (int i = 0; parts != NULL && i < parts->way_count; i++) {
        const struct Say *grip = parts->ways[i].grip;
        bool told = grip == NULL;
        for (int k = 0; k < i; k++) {
            told = told || say_same(parts->ways[k].grip, grip);
        }
        if (!told) {
            text_print(&text, "%s%s", text.length > 0 ? "; " : "", shown_said(arena, grip));
        }
    }
    return text_done(&text);
}

static void add_drills(struct XmlOut *out, struct XmlElement *tools, const struct Needs *needs,
                       const struct PartsList *parts)
{
    struct Arena *arena = xml_out_arena(out);
    const char *holes = hole_drills(arena, parts);
    const char *held = grips(arena, parts);
    tool(out, tools, needs->fixes, "Drill, hammer, level or chalk line");
    tool(out, tools, *held != '\0', arena_print(arena, "Bits and drivers for: %s", held));
    tool(out, tools, needs->hole && *holes != '\0', arena_print(arena, "For the walls, drill: %s", holes));
    tool(out, tools, needs->hole && *holes == '\0', "For the walls: core or long drill");
    tool(out, tools, needs->hole, "Dust extraction, cable and pipe detector");
}

static void add_digging(struct XmlOut *out, struct XmlElement *tools, const struct Needs *needs)
{
    tool(out, tools, needs->digs, "Cable locator with signal generator, service plans, insulated spades, barriers");
    tool(out, tools, needs->machine, "Digger with a narrow bucket, and who may drive it: ____");
    tool(out, tools, needs->digs, "Rammer, depth stick marked at the depths below, sheet for the spoil");
    tool(out, tools, needs->drive, "Cones and signs for the drive, plates to drive over the open trench");
}

void papers_tools(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan, const struct PartsList *parts)
{
    const struct Needs needs = needs_of(plan);
    struct XmlElement *tools = xml_child(out, papers, "tools");
    tool(out, tools, needs.always, "Voltage indicator and proving unit; lock, tag and notice");
    tool(out, tools, needs.always, "Multifunction tester with charged batteries, long lead, this pack's test sheet");
    tool(out, tools, needs.always, "Tape measure, marker, phone or camera, first-aid kit");
    tool(out, tools, needs.armour, "Fine hacksaw or armour cutter, gland spanners, gloves and glasses");
    tool(out, tools, needs.always, "Cutters, strippers, crimps, sleeving, labels");
    add_drills(out, tools, &needs, parts);
    add_digging(out, tools, &needs);
    tool(out, tools, plan->electrode.due,
         "Driver for the earth rods and a head for it; earth electrode tester with its leads and spikes");
    tool(out, tools, needs.drawn,
         "Fish tape or rods to bring the draw rope in, draw rope, pulling grip, spring balance");
    tool(out, tools, needs.loft, "Boards for the joists, torch, masks");
    tool(out, tools, needs.high, "Ladder or tower, with footing or ties");
    tool(out, tools, needs.catenary, "Tensioner and wire grips for the catenary");
    tool(out, tools, needs.always, "Stand or jacks to pay the cable off its drum or coil");
}
