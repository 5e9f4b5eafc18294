/* The order of the day with its hold points, and what to load: only what this route needs. Common practice, no source,
 * but for the isolation and digging guidance named in the cautions. */
#include "papers_private.h"

#include "earth_ends_private.h"

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

static const char *state(enum EarthEnd end)
{
    switch (end) {
    case EARTH_CONNECTED: return "CONNECTED";
    case EARTH_STOPS: return "NOT CONNECTED";
    case EARTH_ASK: return "ASK FIRST";
    case EARTH_ABSENT: break;
    }
    return "";
}

/* " armour and earth core CONNECTED at the supply end, NOT CONNECTED at the far end." */
static const char *joined_text(struct Arena *arena, const struct Plan *plan, const struct PlanRun *run)
{
    const enum EarthEnd armour = run->rated ? earth_far_armour(plan, run) : EARTH_ABSENT;
    const enum EarthEnd conductor = run->rated ? earth_far_conductor(plan, run) : EARTH_ABSENT;
    if (armour == EARTH_ABSENT && conductor == EARTH_ABSENT) {
        return "";
    }
    const bool both = armour != EARTH_ABSENT && conductor != EARTH_ABSENT;
    const char *core = run->surveyed->cable.cpc == CPC_SEPARATE ? "earth cable" : "earth core";
    return arena_print(arena, "%s%s%s CONNECTED at the supply end, %s at the far end.",
                       armour == EARTH_ABSENT ? "" : "armour", both ? " and " : "",
                       conductor == EARTH_ABSENT ? "" : core, state(armour != EARTH_ABSENT ? armour : conductor));
}

/* What the second hand is to say back: each thing once, with the runs that it holds for. */
static const char *said_back(struct Arena *arena, const struct Plan *plan)
{
    struct TextBuilder text = text_builder(arena);
    for (int i = 0; i < plan->run_count; i++) {
        const char *joined = joined_text(arena, plan, &plan->runs[i]);
        struct TextBuilder names = text_builder(arena);
        bool said = *joined == '\0';
        for (int k = 0; k < plan->run_count; k++) {
            const bool same = text_same(joined_text(arena, plan, &plan->runs[k]), joined);
            said = said || (same && k < i);
            if (same && !said) {
                text_print(&names, "%s%s", names.length > 0 ? ", " : "", plan->runs[k].surveyed->name);
            }
        }
        if (!said) {
            text_print(&text, " %s: %s", text_done(&names), joined);
        }
    }
    return text_done(&text);
}

static bool stops(const struct Plan *plan)
{
    bool any = false;
    for (int i = 0; i < plan->run_count; i++) {
        any = any || (plan->runs[i].rated && (earth_far_armour(plan, &plan->runs[i]) == EARTH_STOPS ||
                                              earth_far_conductor(plan, &plan->runs[i]) == EARTH_STOPS));
    }
    return any;
}

void papers_day(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    struct Arena *arena = xml_out_arena(out);
    const struct Needs needs = needs_of(plan);
    const bool island = stops(plan);
    const char *back = said_back(arena, plan);
    struct XmlElement *day = xml_child(out, papers, "day");
    step(out, day, true, "Far-end earthing said back",
         arena_print(arena, "Read the first pages together. The second hand says back, without looking:%s", back));
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
    step(out, day, plan->electrode.due, "Electrode reading written down",
         "Earth rods: drive them, measure them, write the reading down (the earth rods' own list).");
    step(out, day, true, "Laid cable tested",
         needs.digs ? "Test the laid cable for continuity and insulation before it is covered."
                    : "Test the laid cable for continuity and insulation.");
    step(out, day, needs.digs, "", "Cover, marker tape, backfill in layers. Photograph the tape.");
    step(out, day, true, needs.armour ? "Both ends seen" : "",
         needs.armour
             ? arena_print(arena, "Terminate: far end first, supply end last. Pull on each gland. Seen:%s", back)
             : "Terminate: far end first, supply end last. Pull on each gland.");
    step(out, day, island, "Two earths apart: ____ Mohm",
         "Prove that nothing that carries the supply's earth touches the outbuilding's: the test sheet, The two earths "
         "apart.");
    step(out, day, true, "Switching on allowed by (name)",
         "All dead tests of the finished run, the test sheet line by line. A licensed electrician reads them and "
         "allows the first switching on.");
    step(out, day, true, "", "Switch on. Live tests: the test sheet, line by line.");
    step(out, day, true, "", "Labels at both ends, chart at the board. Clear up. Show the customer the test button.");
    add_tools(out, papers, &needs);
}
