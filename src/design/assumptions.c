/* What was taken for granted: the language's defaults that bear on this route, and what the design itself took. */
#include "design/faults/fault_private.h"
#include "design/mechanics/mechanics_private.h"

struct List {
    struct Arena *arena;
    struct Assumption *items;
    int count;
};

static void add(struct List *list, const char *where, const struct Say *text)
{
    list->items[list->count++] = (struct Assumption){.where = where, .text = text, .assumed = -1};
}

/* What was added last, a survey can say. */
static void by_survey(struct List *list)
{
    list->items[list->count - 1].surveyable = true;
}

static void add_term(struct List *list, const char *where, enum Saying text)
{
    add(list, where, say(list->arena, text));
}

/* Which kinds of place the route has: a default that nothing on it looks at is noise. */
struct Places {
    bool air, ground;
};

static struct Places places_of(const struct Survey *survey)
{
    struct Places places = {0};
    for (int i = 0; i < survey->segment_count; i++) {
        const bool in_ground = survey_in_ground(survey->segments[i].way);
        places.ground = places.ground || in_ground;
        places.air = places.air || !in_ground;
    }
    return places;
}

static bool bears(const struct Survey *survey, struct Places places, enum AssumedWhat what)
{
    switch (what) {
    case ASSUMED_DEVICE_KIND:
    case ASSUMED_CURVE: return false; /* add_device() has one line for both */
    case ASSUMED_AIR: return places.air;
    case ASSUMED_GROUND:
    case ASSUMED_SOIL_THERMAL: return places.ground;
    case ASSUMED_SOIL_ELECTRICAL: return survey->earthing.has_electrode;
    case ASSUMED_NEUTRAL_SIZE: return survey->earthing.extraneous_parts && survey->supply.system == SYSTEM_TN_C_S;
    case ASSUMED_EARTHING_CONDUCTOR: return survey->earthing.extraneous_parts && survey->supply.system != SYSTEM_TN_C_S;
    default: return true;
    }
}

static const char *run_path(const struct Design *design, const struct Run *run, const char *key)
{
    return arena_print(design->arena, "runs.%s.%s", run->name, key);
}

/* One line for all that was taken of the device; the reader's own lines on its kind and curve stand back for it. */
static void add_device(const struct Design *design, const struct PlanRun *planned, struct List *list)
{
    const struct Device *device = &planned->settled->device;
    const struct SayArg because = say_part(planned->device_because);
    const char *where = run_path(design, planned->settled, "device");
    if (!device->rating_a.given) {
        add(list, where,
            say(list->arena, SAY_DEVICE_SMALLEST_TAKEN, say_part(planned->device_text),
                say_fixed(planned->design_current_a, 1, UNIT_A), because));
    } else if (!device->kind_given || (planned->has_curve && !device->curve_given)) {
        add(list, where, say(list->arena, SAY_DEVICE_TAKEN, say_part(planned->device_text), because));
    }
}

/* One line for both ends where neither was surveyed. */
static void add_ends(const struct Design *design, const struct PlanRun *planned, struct List *list)
{
    const struct Run *run = planned->settled;
    const bool start = planned->start_end.needs_mm > 0 && !run->start.room_m.given;
    const bool finish = planned->finish_end.needs_mm > 0 && !run->finish.room_m.given;
    if (start || finish) {
        const double needs_mm = start ? planned->start_end.needs_mm : planned->finish_end.needs_mm;
        add(list,
            run_path(design, run,
                     start && finish ? "start, finish"
                     : start         ? "start"
                                     : "finish"),
            say(list->arena, SAY_ROOM_TAKEN, say_needed_mm(needs_mm)));
    }
}

static void add_mechanics(const struct Design *design, const struct PlanRun *planned, struct List *list)
{
    const struct Say *drawn = mechanics_assumption(design->arena, design->survey, planned->settled);
    bool worked = false;
    for (int i = 0; i < planned->pull_count; i++) {
        worked = worked || planned->pulls[i].worked;
    }
    if (worked) {
        add(list, run_path(design, planned->settled, "pull"), drawn);
    }
    add_ends(design, planned, list);
}

/* On an island a protective core or earth run that the survey asked for is not used at the far end. */
static void add_unused_earth(const struct Design *design, const struct Run *run, struct List *list)
{
    if (!survey_earth_stops(design->survey, run)) {
        return;
    }
    const bool armoured = survey_armoured(run->cable.type);
    const bool separate = run->cable.cpc == CPC_SEPARATE;
    const enum Saying separate_stops = armoured ? SAY_SEPARATE_STOPS_ARMOURED : SAY_SEPARATE_STOPS;
    const enum Saying core_stops = armoured ? SAY_CORE_STOPS_ARMOURED : SAY_CORE_STOPS;
    add_term(list, run_path(design, run, "cable.cpc"), separate ? separate_stops : core_stops);
}

/* Each judgement of a run once, with the stretches that it is made for. */
static void add_judgements(const struct Design *design, const struct PlanRun *planned, struct List *list)
{
    bool made[SAYINGS] = {false};
    for (int i = 0; i < planned->rating_count; i++) {
        const struct Say *judgement = planned->ratings[i].judgement;
        if (judgement == NULL || made[judgement->id]) {
            continue;
        }
        made[judgement->id] = true;
        struct Names names = {.arena = design->arena};
        for (int j = i; j < planned->rating_count; j++) {
            const struct Say *other = planned->ratings[j].judgement;
            if (other != NULL && other->id == judgement->id) {
                name_one(&names, say_name(design->survey->segments[planned->ratings[j].segment].name));
            }
        }
        add(list, run_path(design, planned->settled, "segments"),
            say(list->arena, SAY_COLON, say_part(judgement), names_done(&names)));
    }
}

static void add_run(const struct Design *design, const struct PlanRun *planned, struct List *list)
{
    const struct Run *run = planned->settled;
    add_mechanics(design, planned, list);
    if (!planned->rated) {
        return;
    }
    add_device(design, planned, list);
    if (!run->start.from_given) {
        add_term(list, run_path(design, run, "start.from"), SAY_SPARE_WAY_TAKEN);
        by_survey(list);
    }
    if (planned->power_factor <= 0) {
        add_term(list, run_path(design, run, "load"), SAY_POWER_FACTOR_WORST);
        by_survey(list);
    }
    if (cable_kind(run->cable.type)->insulation_degc > 70 && design->survey->conditions.terminals_degc.value <= 70) {
        add_term(list, run_path(design, run, "cable"), SAY_TERMINALS_70);
        by_survey(list);
    }
    add_judgements(design, planned, list);
    add_unused_earth(design, run, list);
    add_term(list, run_path(design, run, "load"), SAY_OVERLOAD_BY_DEVICE);
}

/* Each thing that a check takes for granted, once. */
static void add_checks(const struct Design *design, const struct PlanRun *planned, struct List *list)
{
    const struct Say *said = NULL;
    for (int i = 0; i < planned->check_count; i++) {
        const struct Say *assumes = planned->checks[i].assumes;
        if (assumes != NULL && !say_same(said, assumes)) {
            add(list, run_path(design, planned->settled, "device"), assumes);
            said = assumes;
        }
    }
    if (survey_fault_path(design->survey, planned->settled) == CPC_CORE_AND_ARMOUR) {
        struct Armour armour;
        const struct Cable *cable = &planned->settled->cable;
        const bool held = armour_figures(cable->type, cable->cores, planned->size_mm2, &armour);
        add_term(list, run_path(design, planned->settled, "cable.cpc"),
                 held ? SAY_SHARED_AS_RESISTANCES : SAY_SHARED_NO_FIGURE);
    }
}

/* Whether an enclosure earths the armour decides what goes with the gland: one line for all ends that do not say. */
static void add_enclosures(const struct Design *design, struct List *list)
{
    struct Names ends = {.arena = design->arena, .all = true};
    for (int r = 0; r < design->survey->run_count; r++) {
        const struct Run *run = &design->survey->runs[r];
        const struct End *const both[] = {&run->start, &run->finish};
        for (int i = 0; i < 2 && survey_armoured(run->cable.type); i++) {
            if (both[i]->into != INTO_FREE && !both[i]->enclosure_given) {
                name_one(&ends, say_part(say(list->arena, SAY_END_OF_RUN, say_name(run->name),
                                             say_name(i == 0 ? "start" : "finish"))));
            }
        }
    }
    if (ends.count > 0) {
        add(list, "runs.enclosure", say(list->arena, SAY_PLASTIC_TAKEN, names_done(&ends)));
        by_survey(list);
    }
}

static const struct Say *leg_said(const struct Design *design, const struct PlanRun *run, const struct PlanLeg *leg)
{
    const struct Segment *segments = design->survey->segments;
    const struct SayArg ground = say_name(segments[leg->segment].name);
    const struct SayArg other =
        leg->other >= 0 ? say_name(segments[leg->other].name) : say_term(leg->down ? SAY_ITS_START : SAY_ITS_END);
    return say(design->arena, SAY_LEG_FROM_TO, say_name(run->settled->name), say_digits(leg->length_m, 4, UNIT_M),
               leg->down ? other : ground, leg->down ? ground : other);
}

/* What is added for the way into the ground and out of it where the survey says nothing: one line for all runs. */
static void add_legs(const struct Design *design, const struct Plan *plan, struct List *list)
{
    struct Names legs = {.arena = design->arena};
    for (int r = 0; r < plan->run_count; r++) {
        for (int i = 0; i < plan->runs[r].leg_count; i++) {
            const struct PlanLeg *leg = &plan->runs[r].legs[i];
            if (!design->survey->segments[leg->segment].legs_given && !leg->included) {
                name_one(&legs, say_part(leg_said(design, &plan->runs[r], leg)));
            }
        }
    }
    if (legs.count > 0) {
        add(list, "segments.legs", say(list->arena, SAY_LEGS_TAKEN, names_done(&legs)));
        by_survey(list);
    }
}

/* Lofts alone are hotter than the rest of a house: one line for all without a figure of their own. */
static void add_lofts(const struct Design *design, struct List *list)
{
    for (int i = 0; i < design->survey->segment_count; i++) {
        const struct Segment *segment = &design->survey->segments[i];
        if (segment->way == WAY_LOFT_VOID && !segment->air_degc.given) {
            add(list, arena_print(design->arena, "segments.%s.air", segment->name),
                say(list->arena, SAY_ROOF_AIR_TAKEN, say_digits(segment->air_degc.value, 4, UNIT_DEGC)));
            by_survey(list);
            if (segment->air_degc.value < site_practice()->roof_summer_degc) {
                list->items[list->count - 1].other =
                    say(list->arena, SAY_AS_IS, say_digits(site_practice()->roof_summer_degc, 4, UNIT_DEGC));
            }
            return;
        }
    }
}

static void add_location(const struct Design *design, const struct Plan *plan, struct List *list)
{
    if (design->survey->job.location_given) {
        return;
    }
    const struct Say *change = location_would_change(design->arena, design->survey, plan);
    add(list, "job.location",
        change == NULL ? say(list->arena, SAY_ORDINARY_PLACE)
                       : say(list->arena, SAY_ORDINARY_PLACE_OTHERS_ASK, say_part(change)));
    by_survey(list);
}

/* How the route's own runs lie to each other: one line for all stretches that do not say. */
static void add_lie(const struct Design *design, struct List *list)
{
    struct Names names = {.arena = design->arena};
    for (int i = 0; i < design->survey->segment_count; i++) {
        const struct Segment *segment = &design->survey->segments[i];
        const bool loose = !survey_shut_in(segment->way) && !survey_hole(segment->way);
        if (design->loaded_runs[i] > 1 && loose && !segment->lie_given) {
            name_one(&names, say_name(segment->name));
        }
    }
    if (names.count > 0) {
        add(list, "segments.arrangement", say(list->arena, SAY_RUNS_BUNCHED, names_done(&names)));
    }
}

/* What was surveyed of a thin wall and is not looked at. */
static void add_idle_holes(const struct Design *design, struct List *list)
{
    struct Names names = {.arena = design->arena};
    for (int i = 0; i < design->survey->segment_count; i++) {
        if (design->idle_holes[i]) {
            name_one(&names, say_name(design->survey->segments[i].name));
        }
    }
    if (names.count > 0) {
        add(list, "segments.air and beside", say(list->arena, SAY_HOLE_UNUSED, names_done(&names)));
    }
}

/* Most that the design itself adds for the route and for one run, besides a line for each of its checks. */
enum { ASSUMED_FOR_ALL = 8, ASSUMED_PER_RUN = 16 };

static size_t most_assumptions(const struct Survey *survey, const struct Plan *plan)
{
    size_t most = ASSUMED_FOR_ALL + (size_t)survey->assumed_count;
    for (int r = 0; r < plan->run_count; r++) {
        most += ASSUMED_PER_RUN + (size_t)plan->runs[r].check_count;
    }
    return most;
}

bool list_assumptions(const struct Design *design, struct Plan *plan)
{
    const struct Survey *survey = design->survey;
    struct List list = {.arena = design->arena,
                        .items = arena_array(design->arena, most_assumptions(survey, plan), sizeof *list.items)};
    if (list.items == NULL) {
        return false;
    }
    const struct Places places = places_of(survey);
    for (int i = 0; i < survey->assumed_count; i++) {
        const struct Assumed *assumed = &survey->assumed[i];
        if (bears(survey, places, assumed->what)) {
            add(&list, assumed->where, assumed_said(list.arena, survey, assumed));
            list.items[list.count - 1].assumed = i;
            list.items[list.count - 1].surveyable = assumed_surveyable(assumed->what);
            list.items[list.count - 1].other = other_said(list.arena, design->edition, survey, assumed);
        }
    }
    add_location(design, plan, &list);
    add_lofts(design, &list);
    add_legs(design, plan, &list);
    add_enclosures(design, &list);
    add_lie(design, &list);
    add_idle_holes(design, &list);
    for (int r = 0; r < plan->run_count; r++) {
        add_run(design, &plan->runs[r], &list);
        add_checks(design, &plan->runs[r], &list);
    }
    plan->assumptions = list.items;
    plan->assumption_count = list.count;
    return true;
}
