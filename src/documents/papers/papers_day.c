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
        needs.armour = needs.armour || survey_armoured(plan->runs[i].settled->cable.type);
    }
    return needs;
}

/* What armour and earth are at the two ends; NULL for neither. */
static const struct Say *joined_text(struct Arena *arena, const struct Plan *plan, const struct PlanRun *run)
{
    const enum EarthEnd armour = run->rated ? earth_far_armour(plan, run) : EARTH_ABSENT;
    const enum EarthEnd conductor = run->rated ? earth_far_conductor(plan, run) : EARTH_ABSENT;
    if (armour == EARTH_ABSENT && conductor == EARTH_ABSENT) {
        return NULL;
    }
    static const enum Saying whats[2][3] = {{SAY_BACK_ARMOUR, SAY_BACK_ARMOUR_AND_CORE, SAY_BACK_ARMOUR_AND_CABLE},
                                            {SAY_NOTHING, SAY_BACK_CORE, SAY_BACK_CABLE}};
    const int which = conductor == EARTH_ABSENT ? 0 : run->settled->cable.cpc == CPC_SEPARATE ? 2 : 1;
    return say(arena, SAY_BACK_JOINED, say_term(whats[armour == EARTH_ABSENT][which]),
               say_term(earth_end_state(armour != EARTH_ABSENT ? armour : conductor)));
}

/* What the second hand is to say back: each thing once, with the runs that it holds for. */
static const struct Say *said_back(struct Arena *arena, const struct Plan *plan)
{
    const struct Say *back = NULL;
    for (int i = 0; i < plan->run_count; i++) {
        const struct Say *joined = joined_text(arena, plan, &plan->runs[i]);
        const struct Say *names = NULL;
        bool told = joined == NULL;
        for (int k = 0; k < plan->run_count && !told; k++) {
            const bool same = say_same(joined_text(arena, plan, &plan->runs[k]), joined);
            told = same && k < i;
            names = same ? say_list(arena, SAY_COMMA, names, say_name(plan->runs[k].settled->name)) : names;
        }
        if (!told) {
            back = say_then(arena, back, say(arena, SAY_RUN_COLON, say_part(names), say_part(joined)));
        }
    }
    return back;
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
    return run->rated && (run->settled->device.residual_a.given || run->settled->device.kind == DEVICE_RCBO ||
                          survey_board_residual_a(&plan->survey->earthing, run->settled) > 0);
}

static bool any_residual(const struct Plan *plan)
{
    bool any = false;
    for (int i = 0; i < plan->run_count; i++) {
        any = any || papers_residual(plan, &plan->runs[i]);
    }
    return any;
}

void papers_day(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    struct Arena *arena = xml_out_arena(out);
    const struct Needs needs = needs_of(plan);
    const struct Earthing *earthing = &plan->survey->earthing;
    const bool replaced = earthing->existing_given && earthing->existing == EXISTING_REPLACED;
    const struct {
        bool due;
        enum Saying hold, text;
    } steps[] = {
        {true, SAY_HOLD_SAID_BACK, SAY_DAY_SAY_BACK},
        {needs.digs, SAY_HOLD_SERVICES, SAY_DAY_SERVICES},
        {needs.hole, SAY_NOTHING, SAY_DAY_WALLS},
        {needs.fixes, SAY_NOTHING, SAY_DAY_FIXINGS},
        {needs.digs, SAY_HOLD_TRENCH, SAY_DAY_TRENCH},
        {needs.ducts, SAY_NOTHING, needs.duct_in_sand ? SAY_DAY_DUCTS_IN_SAND : SAY_DAY_DUCTS},
        {true, SAY_HOLD_METRE_MARKS, SAY_DAY_CABLE},
        {plan->electrode.due, SAY_HOLD_ELECTRODE, SAY_DAY_ELECTRODE},
        {true, SAY_HOLD_LAID_CABLE, needs.buried ? SAY_DAY_TEST_BEFORE_COVERED : SAY_DAY_TEST},
        {needs.buried, SAY_NOTHING, needs.cable_in_sand ? SAY_DAY_COVER_IN_SAND : SAY_DAY_COVER},
        {replaced, SAY_HOLD_OLD_SUPPLY, SAY_DAY_OLD_SUPPLY},
        /* The building keeps its supply until the supply end is opened. What only shows while the cable is off the
         * supply's earth is measured before that. */
        {true, SAY_NOTHING, needs.armour ? SAY_DAY_FAR_END_GLANDS : SAY_DAY_FAR_END},
        {stops(plan), SAY_HOLD_EARTHS_APART, SAY_DAY_EARTHS_APART},
        {true, SAY_HOLD_DEAD, SAY_DAY_ISOLATE},
        {needs.armour, SAY_HOLD_BOTH_ENDS, SAY_DAY_SUPPLY_END_GLANDS},
        {!needs.armour, SAY_NOTHING, SAY_DAY_SUPPLY_END},
        {true, SAY_HOLD_SWITCHING_ON, SAY_DAY_DEAD_TESTS},
        {true, SAY_NOTHING, SAY_DAY_LIVE_TESTS},
        {true, SAY_NOTHING, any_residual(plan) ? SAY_DAY_CLEAR_UP_BUTTON : SAY_DAY_CLEAR_UP},
    };
    const struct Say *back = said_back(arena, plan);
    struct XmlElement *day = xml_child(out, papers, "day");
    for (size_t i = 0; i < sizeof steps / sizeof steps[0]; i++) {
        if (steps[i].due) {
            struct XmlElement *step = xml_child(out, day, "step");
            papers_attribute(out, step, "hold", say_term(steps[i].hold));
            xml_say(out, step, say(arena, steps[i].text, say_part(back)));
        }
    }
}
