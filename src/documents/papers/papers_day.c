/* The order of the day with its hold points: only what this route needs. Common practice, no source,
 * but for the isolation and digging guidance named in the cautions. */
#include "papers_private.h"

#include "documents/earth_ends_private.h"

/* What a route has in it. */
struct Needs {
    bool digs, buried, ducts, hole, fixes, armour;
    bool cable_in_sand, duct_in_sand; /* some of them */
};

static struct Needs needs_of(const struct Plan *plan)
{
    struct Needs needs = {0};
    for (int i = 0; i < plan->segment_count; i++) {
        const struct Segment *segment = plan->segments[i].surveyed;
        needs.digs = needs.digs || survey_dug(segment);
        needs.buried = needs.buried || segment->way == WAY_BURIED;
        needs.ducts = needs.ducts || (survey_dug(segment) && segment->way == WAY_DUCT);
        needs.cable_in_sand = needs.cable_in_sand || (segment->way == WAY_BURIED && survey_bedded(segment));
        needs.duct_in_sand =
            needs.duct_in_sand || (survey_dug(segment) && segment->way == WAY_DUCT && survey_bedded(segment));
        needs.hole = needs.hole || segment->way == WAY_THROUGH_WALL;
        needs.fixes = needs.fixes || !survey_in_ground(segment->way);
    }
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
                       conductor == EARTH_ABSENT ? "" : core,
                       earth_end_word(armour != EARTH_ABSENT ? armour : conductor));
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
            text_print(&text, " Run %s: %s", text_done(&names), joined);
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

bool papers_residual(const struct Plan *plan, const struct PlanRun *run)
{
    return run->rated && (run->surveyed->device.residual_a.given || run->surveyed->device.kind == DEVICE_RCBO ||
                          survey_board_residual_a(&plan->survey->earthing, run->surveyed) > 0);
}

static bool any_residual(const struct Plan *plan)
{
    bool any = false;
    for (int i = 0; i < plan->run_count; i++) {
        any = any || papers_residual(plan, &plan->runs[i]);
    }
    return any;
}

/* The building keeps its supply until the supply end is opened. What only shows while the cable is off the supply's
 * earth is measured before that. */
static void add_ends(struct XmlOut *out, struct XmlElement *day, const struct Plan *plan, const struct Needs *needs,
                     const char *back)
{
    step(out, day, true, "", needs->armour ? "Terminate the far end. Pull on each gland." : "Terminate the far end.");
    step(out, day, stops(plan), "Two earths apart: ____ Mohm",
         "Prove that nothing that carries the supply's earth touches the outbuilding's, while the supply end is still "
         "loose: "
         "the test sheet, The two earths apart.");
    step(out, day, true, "Dead proved",
         "Now the supply end: isolate, lock off, keep the key. Prove dead. Nothing there is opened before.");
    step(out, day, true, needs->armour ? "Both ends seen" : "",
         needs->armour ? arena_print(xml_out_arena(out), "Terminate the supply end. Pull on each gland. Seen:%s", back)
                       : "Terminate the supply end.");
}

void papers_day(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    struct Arena *arena = xml_out_arena(out);
    const struct Needs needs = needs_of(plan);
    const char *back = said_back(arena, plan);
    struct XmlElement *day = xml_child(out, papers, "day");
    step(out, day, true, "Far-end earthing said back",
         arena_print(arena, "Read the first pages together. The second hand says back, without looking:%s", back));
    step(out, day, needs.digs, "Service marks agreed",
         "Services: plans in hand, locate, mark on the ground. Then barriers and spoil sheet.");
    step(out, day, needs.hole, "", "Walls: scan, drill from the safer side, falling to the outside; sleeve.");
    step(out, day, needs.fixes, "",
         "Fixings: set out and fit them stretch by stretch, first those at the two ends of each, then those between.");
    step(out, day, needs.digs, "Trench photographed",
         "Trench: depth stick every 2 m, stones out, bed. Photograph it with a tape measure in it.");
    step(out, day, needs.ducts, "",
         arena_print(arena,
                     "Ducts: lay them with a rope in, ends stopped; %smarker tape, backfill in layers. Photograph the "
                     "tape. The way is open again before the cable is drawn.",
                     needs.duct_in_sand ? "sand where it is asked for, " : ""));
    step(out, day, true, "Metre marks written down",
         "Cable: pay it off the drum, one feeds, one pulls, agree a stop word. Write down the metre mark at each end: "
         "____ and ____.");
    step(out, day, plan->electrode.due, "Electrode reading written down",
         "Earth rods: drive them, measure them, write the reading down (the earth rods' own list).");
    step(out, day, true, "Laid cable tested",
         needs.buried ? "Test the laid cable for continuity and insulation before it is covered."
                      : "Test the laid cable for continuity and insulation.");
    step(out, day, needs.buried, "",
         arena_print(arena,
                     "Cover what lies in the ground without a duct: %smarker tape, backfill in layers. Photograph the "
                     "tape.",
                     needs.cable_in_sand ? "sand, " : ""));
    step(out, day, plan->survey->earthing.existing_given && plan->survey->earthing.existing == EXISTING_REPLACED,
         "Old supply dead, its earth off at both ends",
         "Old supply: isolate it, prove it dead, take its live conductors and its earth off at both ends. Its circuits "
         "move to the outbuilding's new earth; each is tested again before it is switched on.");
    add_ends(out, day, plan, &needs, back);
    step(out, day, true, "Switching on allowed by (name)",
         "All dead tests of the finished run, the test sheet line by line. A licensed electrician reads them and "
         "allows the first switching on.");
    step(out, day, true, "",
         "Check the polarity of the supply, then switch on. Live tests: the test sheet, line by line.");
    step(out, day, true, "",
         any_residual(plan) ? "Labels at both ends, chart at the board. Clear up. Show the customer the test button."
                            : "Labels at both ends, chart at the board. Clear up.");
}
