/* What was taken for granted: the language's defaults that bear on this route, and what the design itself took. */
#include "design/faults/fault_private.h"
#include "design/mechanics/mechanics_private.h"

#include <math.h>
#include <string.h>

enum { JUDGEMENTS_MOST = 6 };

struct List {
    struct Assumption *items;
    int count;
};

static void add(struct List *list, const char *where, const char *text)
{
    list->items[list->count++] = (struct Assumption){.where = where, .text = text};
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

static bool ends_in(const char *text, const char *ending)
{
    const size_t length = strlen(text);
    const size_t tail = strlen(ending);
    return length >= tail && strcmp(text + length - tail, ending) == 0;
}

static bool bears(const struct Survey *survey, struct Places places, const char *where)
{
    if (ends_in(where, ".device.kind") || ends_in(where, ".device.curve")) {
        return false;
    }
    if (text_same(where, "conditions.air")) {
        return places.air;
    }
    if (text_same(where, "conditions.ground") || text_same(where, "conditions.soil-thermal")) {
        return places.ground;
    }
    if (text_same(where, "conditions.soil-electrical")) {
        return survey->earthing.has_electrode;
    }
    if (text_same(where, "supply.neutral-size")) {
        return survey->earthing.extraneous_parts && survey->supply.system == SYSTEM_TN_C_S;
    }
    if (text_same(where, "supply.earthing-conductor")) {
        return survey->earthing.extraneous_parts && survey->supply.system != SYSTEM_TN_C_S;
    }
    return true;
}

static const char *run_path(const struct Design *design, const struct Run *run, const char *key)
{
    return arena_print(design->arena, "runs.%s.%s", run->name, key);
}

/* One line for all that was taken of the device; the reader's own lines on its kind and curve stand back for it. */
static void add_device(const struct Design *design, const struct PlanRun *planned, struct List *list)
{
    const struct Device *device = &planned->surveyed->device;
    const char *because = planned->device_because;
    const char *comma = because[0] != '\0' ? "; " : "";
    const char *where = run_path(design, planned->surveyed, "device");
    if (!device->rating_a.given) {
        add(list, where,
            arena_print(design->arena, "%s taken: the smallest standard rating that carries %s A%s%s",
                        planned->device_text, number_text(design->arena, planned->design_current_a, 1), comma,
                        because));
    } else if (!device->kind_given || (planned->has_curve && !device->curve_given)) {
        add(list, where,
            arena_print(design->arena, "%s taken: its kind or curve was not given%s%s", planned->device_text, comma,
                        because));
    }
}

/* One line for both ends where neither was surveyed. */
static void add_ends(const struct Design *design, const struct PlanRun *planned, struct List *list)
{
    const struct Run *run = planned->surveyed;
    const bool start = planned->start_end.needs_mm > 0 && !run->start.room_m.given;
    const bool finish = planned->finish_end.needs_mm > 0 && !run->finish.room_m.given;
    if (start || finish) {
        const double needs_mm = start ? planned->start_end.needs_mm : planned->finish_end.needs_mm;
        add(list,
            run_path(design, run,
                     start && finish ? "start and finish"
                     : start         ? "start"
                                     : "finish"),
            arena_print(design->arena,
                        "%s mm of room in front of the entry taken to be there: the cable's least radius and the cable",
                        number_text(design->arena, ceil(needs_mm - 1e-9), 0)));
    }
}

static void add_mechanics(const struct Design *design, const struct PlanRun *planned, struct List *list)
{
    const char *drawn = mechanics_assumption(design->arena, design->survey, planned->surveyed);
    bool worked = false;
    for (int i = 0; i < planned->pull_count; i++) {
        worked = worked || planned->pulls[i].worked;
    }
    if (worked) {
        add(list, run_path(design, planned->surveyed, "pull"), drawn);
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
    const char *what = separate ? "the separate protective conductor" : "the protective core";
    add(list, run_path(design, run, "cable.cpc"),
        arena_print(design->arena,
                    "the far end is an island: %s is taken to be joined to earth at the supply end only, cut back and "
                    "insulated at the far end and never joined to the outbuilding's earth; a fault on the cable is "
                    "worked through %s%s",
                    what, armoured ? "the armour" : "it",
                    armoured && !separate ? ", so that cpc: armour and one core less would do" : ""));
}

enum { NAMES_SHOWN = 12 };

/* One more name of a list that is cut short; `count` is how many there were before. */
static void name_one(struct TextBuilder *names, int count, const char *name)
{
    if (count < NAMES_SHOWN) {
        text_print(names, "%s%s", count > 0 ? ", " : "", name);
    }
}

static const char *names_done(struct TextBuilder *names, int count)
{
    if (count > NAMES_SHOWN) {
        text_print(names, " and %d more", count - NAMES_SHOWN);
    }
    return text_done(names);
}

/* Each judgement of a run once, with the stretches that it is made for. */
static void add_judgements(const struct Design *design, const struct PlanRun *planned, struct List *list)
{
    const char *said[JUDGEMENTS_MOST];
    int said_count = 0;
    for (int i = 0; i < planned->rating_count; i++) {
        const char *judgement = planned->ratings[i].judgement;
        bool again = judgement == NULL || said_count == JUDGEMENTS_MOST;
        for (int k = 0; k < said_count && !again; k++) {
            again = text_same(said[k], judgement);
        }
        if (again) {
            continue;
        }
        struct TextBuilder names = text_builder(design->arena);
        int count = 0;
        for (int j = i; j < planned->rating_count; j++) {
            const char *other = planned->ratings[j].judgement;
            if (other != NULL && text_same(other, judgement)) {
                name_one(&names, count++, design->survey->segments[planned->ratings[j].segment].name);
            }
        }
        add(list, run_path(design, planned->surveyed, "segments"),
            arena_print(design->arena, "%s: %s", judgement, names_done(&names, count)));
        said[said_count++] = judgement;
    }
}

static void add_run(const struct Design *design, const struct PlanRun *planned, struct List *list)
{
    const struct Run *run = planned->surveyed;
    add_mechanics(design, planned, list);
    if (!planned->rated) {
        return;
    }
    add_device(design, planned, list);
    if (!run->start.from_given) {
        add(list, run_path(design, run, "start.from"),
            "a spare way of the board that is there taken (existing-way): that one is free, that the board's maker "
            "allows "
            "the device (536.4.203) and that its main switch carries it was not surveyed; nothing else is counted "
            "there");
    }
    if (planned->power_factor <= 0) {
        add(list, run_path(design, run, "load"),
            "power factor not known for all of the load: the drop is worked with the table's z, its worst case");
    }
    if (cable_kind(run->cable.type)->insulation_degc > 70 && design->survey->conditions.terminals_degc.value <= 70) {
        add(list, run_path(design, run, "cable"),
            "terminals stand 70 degC: the 90 degC cable is rated by the 70 degC table, its drop by its own 90 degC "
            "figures");
    }
    add_judgements(design, planned, list);
    add_unused_earth(design, run, list);
    add(list, run_path(design, run, "load"),
        "the device protects the cable against overload: In, not Ib, is compared with what it carries");
}

/* Each thing that a check takes for granted, once. */
static void add_checks(const struct Design *design, const struct PlanRun *planned, struct List *list)
{
    const char *said = NULL;
    for (int i = 0; i < planned->check_count; i++) {
        const char *assumes = planned->checks[i].assumes;
        if (assumes != NULL && (said == NULL || !text_same(said, assumes))) {
            add(list, run_path(design, planned->surveyed, "device"), assumes);
            said = assumes;
        }
    }
    if (survey_fault_path(design->survey, planned->surveyed) == CPC_CORE_AND_ARMOUR) {
        struct Armour armour;
        const struct Cable *cable = &planned->surveyed->cable;
        const bool held = armour_figures(cable->type, cable->cores, planned->size_mm2, &armour);
        add(list, run_path(design, planned->surveyed, "cable.cpc"),
            !held
                ? "no figure is held for the armour of this cable: the core is taken as the only way back of a fault, "
                  "which is the higher loop, and the armour's own share of it is not checked"
                : "core and armour share a fault as plain resistances do; measured, the core carries less and the loop "
                  "may "
                  "read "
                  "higher than worked here, up to that with the core alone");
    }
}

/* Whether an enclosure earths the armour decides what goes with the gland: one line for all ends that do not say. */
static void add_enclosures(const struct Design *design, struct List *list)
{
    struct TextBuilder ends = text_builder(design->arena);
    for (int r = 0; r < design->survey->run_count; r++) {
        const struct Run *run = &design->survey->runs[r];
        const struct End *const both[] = {&run->start, &run->finish};
        for (int i = 0; i < 2 && survey_armoured(run->cable.type); i++) {
            if (both[i]->into != INTO_FREE && !both[i]->enclosure_given) {
                text_print(&ends, "%s%s %s", ends.length > 0 ? ", " : "", run->name, i == 0 ? "start" : "finish");
            }
        }
    }
    if (ends.length > 0) {
        add(list, "runs.enclosure",
            arena_print(design->arena, "taken as plastic, which does not earth the armour: %s", text_done(&ends)));
    }
}

enum { LEGS_SHOWN = 12 };

static void say_leg(const struct Design *design, const struct PlanRun *run, const struct PlanLeg *leg,
                    struct TextBuilder *text)
{
    const struct Segment *segments = design->survey->segments;
    const char *ground = segments[leg->segment].name;
    const char *other = leg->other >= 0 ? segments[leg->other].name : leg->down ? "its start" : "its end";
    text_print(text, "%s %s m %s to %s", run->surveyed->name, number_significant(design->arena, leg->length_m, 4),
               leg->down ? other : ground, leg->down ? ground : other);
}

/* What is added for the way into the ground and out of it where the survey says nothing: one line for all runs. */
static void add_legs(const struct Design *design, const struct Plan *plan, struct List *list)
{
    struct TextBuilder text = text_builder(design->arena);
    int count = 0;
    for (int r = 0; r < plan->run_count; r++) {
        for (int i = 0; i < plan->runs[r].leg_count; i++) {
            const struct PlanLeg *leg = &plan->runs[r].legs[i];
            if (design->survey->segments[leg->segment].legs_given || leg->included || count++ >= LEGS_SHOWN) {
                continue;
            }
            text_add(&text, count > 1 ? ", " : "");
            say_leg(design, &plan->runs[r], leg, &text);
        }
    }
    if (count > LEGS_SHOWN) {
        text_print(&text, " and %d more", count - LEGS_SHOWN);
    }
    if (count > 0) {
        add(list, "segments.legs",
            arena_print(design->arena,
                        "taken to be in no surveyed length or rise and added to the cable, as deep as it lies and no "
                        "further than the surface: %s",
                        text_done(&text)));
    }
}

/* Lofts are hotter than the rest of a house: one line for all of them that do not say. */
static void add_lofts(const struct Design *design, struct List *list)
{
    for (int i = 0; i < design->survey->segment_count; i++) {
        const struct Segment *segment = &design->survey->segments[i];
        if (segment->way == WAY_LOFT_VOID && !segment->air_degc.given) {
            add(list, arena_print(design->arena, "segments.%s.air", segment->name),
                arena_print(design->arena,
                            "air in the roof void taken as %s degC; in summer it reaches 40 degC and more (common "
                            "practice, no source)",
                            number_significant(design->arena, segment->air_degc.value, 4)));
            return;
        }
    }
}

static void add_location(const struct Design *design, const struct Plan *plan, struct List *list)
{
    if (design->survey->job.location_given) {
        return;
    }
    const char *change = location_would_change(design->arena, design->survey, plan);
    add(list, "job.location",
        *change == '\0'
            ? "an ordinary place assumed; no other kind of place would ask more of this plan, but read its "
              "section of BS 7671 Part 7"
            : arena_print(design->arena, "an ordinary place assumed; other kinds ask for more: %s", change));
}

/* How the route's own runs lie to each other: one line for all stretches that do not say. */
static void add_lie(const struct Design *design, struct List *list)
{
    struct TextBuilder names = text_builder(design->arena);
    int count = 0;
    for (int i = 0; i < design->survey->segment_count; i++) {
        const struct Segment *segment = &design->survey->segments[i];
        const bool loose = survey_way(segment->way)->round == ROUND_NOTHING;
        if (design->loaded_runs[i] > 1 && loose && !segment->lie_given) {
            name_one(&names, count++, segment->name);
        }
    }
    if (count > 0) {
        add(list, "segments.arrangement",
            arena_print(design->arena, "power runs of this route taken as bunched, where they share a stretch: %s",
                        names_done(&names, count)));
    }
}

/* What was surveyed of a thin wall and is not looked at. */
static void add_idle_holes(const struct Design *design, struct List *list)
{
    struct TextBuilder names = text_builder(design->arena);
    int count = 0;
    for (int i = 0; i < design->survey->segment_count; i++) {
        if (design->idle_holes[i]) {
            name_one(&names, count++, design->survey->segments[i].name);
        }
    }
    if (count > 0) {
        add(list, "segments.air and beside",
            arena_print(
                design->arena,
                "not used in a hole through a wall under 0.35 m, which is rated as its neighbours (BS 7671 523.8, "
                "note): %s",
                names_done(&names, count)));
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
    struct List list = {.items = arena_array(design->arena, most_assumptions(survey, plan), sizeof *list.items)};
    if (list.items == NULL) {
        return false;
    }
    const struct Places places = places_of(survey);
    for (int i = 0; i < survey->assumed_count; i++) {
        if (bears(survey, places, survey->assumed[i].where)) {
            add(&list, survey->assumed[i].where, survey->assumed[i].text);
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
