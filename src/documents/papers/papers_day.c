/* The order of the day with its hold points: only what this route needs. Common practice, no source,
 * but for the isolation and digging guidance named in the cautions. */
#include "papers_private.h"

#include "documents/earth_ends_private.h"

#include <math.h>

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

/* The stretches of a trade by their numbers: "7, 8, 9". */
static const struct Say *numbers(struct Arena *arena, const struct Plan *plan, enum Group one, enum Group other)
{
    const struct Say *list = NULL;
    for (int i = 0; i < plan->segment_count; i++) {
        const enum Group group = papers_group_of(plan->segments[i].surveyed);
        list = group == one || group == other ? say_list(arena, SAY_COMMA, list, say_count(i + 1)) : list;
    }
    return list;
}

/* One step of the day, and what is signed once it is done. */
struct DayStep {
    bool due;
    enum Saying hold, reading, text;
    enum Group first, last; /* whose stretches the text names */
};

struct Day {
    struct XmlOut *out;
    const struct Plan *plan;
    struct XmlElement *holds;
    int count; /* of holds so far */
};

static void add_hold(struct Day *day, const struct Say *name, const struct Say *reading)
{
    struct XmlElement *hold = xml_child(day->out, day->holds, "hold");
    xml_integer(day->out, hold, "number", ++day->count);
    xml_say_attribute(day->out, hold, "name", name);
    papers_attribute(day->out, hold, "reading", say_part(reading));
}

/* What a device has to break, rounded up; NULL where no fault current is known. */
static const struct Say *fault_current(struct Arena *arena, const struct PlanRun *run)
{
    const double fault_ka = ceil(run->readings.fault_origin_a / 10 - 1e-6) / 100;
    return fault_ka > 0 ? say(arena, SAY_LIMIT_AT_LEAST, say_fixed(fault_ka, 2, UNIT_KA)) : NULL;
}

/* What the survey left open and can be seen on site: settled before anything else is done. */
static void add_open(struct Day *day)
{
    struct Arena *arena = xml_out_arena(day->out);
    for (int r = 0; r < day->plan->run_count; r++) {
        const struct PlanRun *run = &day->plan->runs[r];
        for (int i = 0; i < run->check_count; i++) {
            const enum Saying site = papers_settled_on_site(&run->checks[i]);
            if (site != SAY_NOTHING) {
                const struct Say *title = check_title_said(arena, &run->checks[i]);
                add_hold(day,
                         day->plan->run_count == 1
                             ? title
                             : say(arena, SAY_COLON_SMALL, say_name(run->settled->name), say_part(title)),
                         say(arena, site, say_part(fault_current(arena, run))));
            }
        }
    }
}

static const struct Say *least_insulation(struct Arena *arena, const struct Plan *plan)
{
    double least_mohm = 0; /* data runs have none */
    for (int r = 0; r < plan->run_count; r++) {
        least_mohm = fmax(least_mohm, plan->runs[r].readings.insulation_least_mohm);
    }
    return least_mohm > 0 ? say(arena, SAY_LIMIT_AT_LEAST, say_digits(least_mohm, 3, UNIT_MEGOHM)) : NULL;
}

static void add_holds(struct Day *day, const struct DayStep *step)
{
    struct Arena *arena = xml_out_arena(day->out);
    if (step->hold != SAY_NOTHING) {
        const struct SayArg aim = step->hold == SAY_HOLD_LAID_CABLE
                                      ? say_part(least_insulation(arena, day->plan))
                                      : say_digits(day->plan->electrode.target_ohm, 4, UNIT_OHM);
        add_hold(day, say(arena, step->hold), say(arena, step->reading, aim));
    }
    if (step->hold == SAY_HOLD_SAID_BACK) {
        add_open(day);
    }
}

/* Its holds are those after `before`, up to `last`. */
static void add_step(struct Day *day, struct XmlElement *steps, const struct DayStep *step, int before, int last)
{
    struct Arena *arena = xml_out_arena(day->out);
    struct XmlElement *element = xml_child(day->out, steps, "step");
    const struct Say *holds = NULL;
    for (int i = before + 1; i <= last; i++) {
        holds = say_list(arena, SAY_COMMA, holds, say_count(i));
    }
    papers_attribute(day->out, element, "hold", say_part(holds));
    const struct Say *names = step->first == GROUPS ? NULL : numbers(arena, day->plan, step->first, step->last);
    xml_say(day->out, element, say(arena, step->text, say_part(names)));
}

void papers_day(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    const struct Needs needs = needs_of(plan);
    const struct Earthing *earthing = &plan->survey->earthing;
    const bool replaced = earthing->existing_given && earthing->existing == EXISTING_REPLACED;
    const struct DayStep steps[] = {
        {true, SAY_HOLD_SAID_BACK, SAY_READING_PLATES, SAY_DAY_SAY_BACK, GROUPS, GROUPS},
        {needs.digs, SAY_HOLD_SERVICES, SAY_READING_PLANS, SAY_DAY_SERVICES, GROUPS, GROUPS},
        {needs.hole, SAY_NOTHING, SAY_NOTHING, SAY_DAY_WALLS, GROUP_DRILL, GROUP_DRILL},
        {needs.fixes, SAY_NOTHING, SAY_NOTHING, SAY_DAY_FIXINGS, GROUP_FIX, GROUP_LAY_IN},
        {needs.digs, SAY_HOLD_TRENCH, SAY_READING_COVER, SAY_DAY_TRENCH, GROUP_DIG, GROUP_DIG},
        {needs.ducts, SAY_NOTHING, SAY_NOTHING, needs.duct_in_sand ? SAY_DAY_DUCTS_IN_SAND : SAY_DAY_DUCTS, GROUPS,
         GROUPS},
        {true, SAY_HOLD_METRE_MARKS, SAY_READING_MARKS, SAY_DAY_CABLE, GROUPS, GROUPS},
        {plan->electrode.due, SAY_HOLD_ELECTRODE, SAY_READING_ELECTRODE, SAY_DAY_ELECTRODE, GROUPS, GROUPS},
        {true, SAY_HOLD_LAID_CABLE, SAY_READING_INSULATION, needs.buried ? SAY_DAY_TEST_BEFORE_COVERED : SAY_DAY_TEST,
         GROUPS, GROUPS},
        {needs.buried, SAY_NOTHING, SAY_NOTHING, needs.cable_in_sand ? SAY_DAY_COVER_IN_SAND : SAY_DAY_COVER, GROUPS,
         GROUPS},
        {replaced, SAY_HOLD_OLD_SUPPLY, SAY_READING_BOTH_ENDS, SAY_DAY_OLD_SUPPLY, GROUPS, GROUPS},
        /* The building keeps its supply until the supply end is opened. What only shows while the cable is off the
         * supply's earth is measured before that. */
        {true, SAY_NOTHING, SAY_NOTHING, needs.armour ? SAY_DAY_FAR_END_GLANDS : SAY_DAY_FAR_END, GROUPS, GROUPS},
        {stops(plan), SAY_HOLD_EARTHS_APART, SAY_READING_MEGOHM, SAY_DAY_EARTHS_APART, GROUPS, GROUPS},
        {true, SAY_HOLD_DEAD, SAY_READING_KEY, SAY_DAY_ISOLATE, GROUPS, GROUPS},
        {needs.armour, SAY_HOLD_BOTH_ENDS, SAY_READING_PLATES, SAY_DAY_SUPPLY_END_GLANDS, GROUPS, GROUPS},
        {!needs.armour, SAY_NOTHING, SAY_NOTHING, SAY_DAY_SUPPLY_END, GROUPS, GROUPS},
        {true, SAY_HOLD_SWITCHING_ON, SAY_READING_NAME, SAY_DAY_DEAD_TESTS, GROUPS, GROUPS},
        {true, SAY_NOTHING, SAY_NOTHING, SAY_DAY_LIVE_TESTS, GROUPS, GROUPS},
        {true, SAY_NOTHING, SAY_NOTHING, any_residual(plan) ? SAY_DAY_CLEAR_UP_BUTTON : SAY_DAY_CLEAR_UP, GROUPS,
         GROUPS},
    };
    enum { STEPS = sizeof steps / sizeof steps[0] };
    struct Day day = {.out = out, .plan = plan, .holds = xml_child(out, papers, "holds")};
    int last[STEPS + 1] = {0}; /* hold of the steps before */
    for (int i = 0; i < STEPS; i++) {
        if (steps[i].due) {
            add_holds(&day, &steps[i]);
        }
        last[i + 1] = day.count;
    }
    struct XmlElement *element = xml_child(out, papers, "day");
    for (int i = 0; i < STEPS; i++) {
        if (steps[i].due) {
            add_step(&day, element, &steps[i], last[i], last[i + 1]);
        }
    }
}
