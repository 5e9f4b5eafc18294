/* The order of the day with its hold points, and what to load: only what this route needs. Common practice, no source,
 * but for the isolation and digging guidance named in the cautions. */
#include "papers_private.h"

/* What a route has in it. */
struct Needs {
    bool digs, ground, duct, loft, high, hole, fixes, armour, timber, catenary, always;
};

static void look_at(struct Needs *needs, const struct Segment *segment)
{
    const bool digs = segment->way == WAY_BURIED || (segment->way == WAY_DUCT && segment->duct_laid == LAID_NEW);
    needs->digs = needs->digs || digs;
    needs->ground = needs->ground || survey_in_ground(segment->way);
    needs->duct = needs->duct || segment->way == WAY_DUCT || segment->way == WAY_CONDUIT;
    needs->loft = needs->loft || segment->way == WAY_LOFT_VOID;
    needs->hole = needs->hole || segment->way == WAY_THROUGH_WALL;
    needs->catenary = needs->catenary || segment->way == WAY_CATENARY;
    needs->fixes = needs->fixes || !survey_in_ground(segment->way);
    needs->timber = needs->timber || segment->fixed_to == SURFACE_TIMBER;
}

static struct Needs needs_of(const struct Plan *plan)
{
    struct Needs needs = {.always = true};
    double lowest_m = 0, highest_m = 0;
    for (int i = 0; i < plan->segment_count; i++) {
        const struct PlanSegment *place = &plan->segments[i];
        look_at(&needs, place->surveyed);
        lowest_m = place->height_to_m < lowest_m ? place->height_to_m : lowest_m;
        highest_m = place->height_to_m > highest_m ? place->height_to_m : highest_m;
    }
    needs.high = highest_m - lowest_m > 1.5 || needs.loft || needs.catenary;
    for (int i = 0; i < plan->run_count; i++) {
        needs.armour = needs.armour || survey_armoured(plan->runs[i].surveyed->cable.type);
    }
    return needs;
}

static void step(struct XmlOut *out, struct XmlElement *day, bool due, const char *hold, const char *text)
{
    if (due) {
        struct XmlElement *element = xml_child(out, day, "step");
        xml_attribute_if(out, element, "hold", hold);
        xml_text(out, element, text);
    }
}

static void tool(struct XmlOut *out, struct XmlElement *tools, bool due, const char *text)
{
    if (due) {
        xml_text(out, xml_child(out, tools, "tool"), text);
    }
}

static void add_tools(struct XmlOut *out, struct XmlElement *papers, const struct Needs *needs)
{
    struct XmlElement *tools = xml_child(out, papers, "tools");
    tool(out, tools, needs->always, "Voltage indicator and proving unit; lock, tag and notice");
    tool(out, tools, needs->always, "Multifunction tester with charged batteries, long lead, this pack's test sheet");
    tool(out, tools, needs->always, "Tape measure, marker, phone or camera, first-aid kit");
    tool(out, tools, needs->armour, "Fine hacksaw or armour cutter, gland spanners, gloves and glasses");
    tool(out, tools, needs->always, "Cutters, strippers, crimps, sleeving, labels");
    tool(out, tools, needs->fixes, "Drill, bits for the surfaces named below, hammer, level or chalk line");
    tool(out, tools, needs->hole, "Core or long drill, dust extraction, cable and pipe detector, sleeve and sealant");
    tool(out, tools, needs->digs, "Cable locator with signal generator, service plans, insulated spades, barriers");
    tool(out, tools, needs->digs, "Depth stick marked at the depths below, sheet for the spoil, bedding, marker tape");
    tool(out, tools, needs->duct, "Draw rope or rods, pulling grip, lubricant that suits the sheath");
    tool(out, tools, needs->loft, "Boards for the joists, torch, masks");
    tool(out, tools, needs->high, "Ladder or tower, with footing or ties");
    tool(out, tools, needs->catenary, "Tensioner and wire grips for the catenary");
    tool(out, tools, needs->always, "Stand or jacks to pay the cable off its drum or coil");
}

void papers_day(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    const struct Needs needs = needs_of(plan);
    struct XmlElement *day = xml_child(out, papers, "day");
    step(out, day, true, "Far-end earthing said back",
         "Read this page together. The second hand says back what is connected at each end.");
    step(out, day, true, "Dead proved", "Isolate, lock off, keep the key. Prove dead.");
    step(out, day, needs.digs, "Service marks agreed",
         "Services: plans in hand, locate, mark on the ground. Then barriers and spoil sheet.");
    step(out, day, needs.hole, "", "Walls: scan, drill from the safer side, falling to the outside; sleeve.");
    step(out, day, needs.fixes, "", "Fixings: set out and fit them stretch by stretch, ends first.");
    step(out, day, needs.digs, "Trench photographed",
         "Trench: depth stick every 2 m, stones out, bed. Photograph it with a tape measure in it.");
    step(out, day, true, "Metre marks written down",
         "Cable: pay it off the drum, one feeds, one pulls, agree a stop word. Write down the metre mark at each end: "
         "____ and ____.");
    step(out, day, true, "Dead tests passed",
         needs.digs ? "Test the laid cable for continuity and insulation before it is covered."
                    : "Test the laid cable for continuity and insulation.");
    step(out, day, needs.digs, "", "Cover, marker tape, backfill in layers. Photograph the tape.");
    step(out, day, true, needs.armour ? "Armour seen at both ends" : "",
         "Terminate: far end first, supply end last. Pull on each gland.");
    step(out, day, true, "", "Dead tests, then switch on, then live tests: the test sheet, line by line.");
    step(out, day, true, "", "Labels at both ends, chart at the board. Clear up. Show the customer the test button.");
    add_tools(out, papers, &needs);
}
