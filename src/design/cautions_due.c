/* Which cautions a route calls for, and where. Their sources are a table (tables/cautions.inc), what they say is
 * words/en/cautions.inc. */
#include "design/terms/design_private.h"
#include "tables/fault_tables.h"
#include "tables/mechanics_tables.h"

struct Sayings {
    enum Saying full, shortly, flag;
};

static const struct Sayings sayings[CAUTION_COUNT] = {
#define CAUTION(symbol, where, trust, source)                                                                          \
    [CAUTION_##symbol] = {SAY_CAUTION_##symbol, SAY_SHORT_##symbol, SAY_FLAG_##symbol},
#include "tables/cautions.inc"
#undef CAUTION
};

struct List {
    struct Caution *items;
    int count;
    const char *where[CAUTION_COUNT]; /* the first place that called for it */
    bool due[CAUTION_COUNT];
    int segments;
    bool *at; /* a row a caution: the stretches that called for it */
};

/* For the whole job or a run. */
static void call(struct List *list, enum CautionId id, const char *where)
{
    if (!list->due[id]) {
        list->due[id] = true;
        list->where[id] = where;
    }
}

/* The stretch that asks for cautions. */
struct Asking {
    struct List *list;
    const struct Segment *segment;
    int index;
};

static void call_at(const struct Asking *asking, enum CautionId id)
{
    call(asking->list, id, asking->segment->name);
    asking->list->at[(int)id * asking->list->segments + asking->index] = true;
}

/* How deep the trench gets: the cover, what lies in it and the bed under that. */
static double trench_depth_m(const struct Segment *segment)
{
    const double lies_m =
        segment->duct_size_mm.given ? segment->duct_size_mm.value / 1000 : site_practice()->thickest_cable_m;
    return segment->depth_m.value + lies_m + trench_practice()->bed_m;
}

static void for_ground(const struct Asking *asking, enum Location location)
{
    const struct Segment *segment = asking->segment;
    if (location == LOCATION_FARM) {
        call_at(asking, CAUTION_FARM_DEPTH);
    }
    const bool digs = survey_dug(segment);
    if (digs) {
        call_at(asking, CAUTION_DIG_PLANS);
        call_at(asking, CAUTION_DIG_HAND);
        call_at(asking, CAUTION_DIG_FOUND);
        call_at(asking, CAUTION_DIG_GAS);
        if (trench_depth_m(segment) >= trench_practice()->brace_m) {
            call_at(asking, CAUTION_DIG_DEEP);
        }
    }
    if (digs && segment->under == UNDER_DRIVE) {
        call_at(asking, CAUTION_DRIVE);
    }
}

/* A duct whose neighbour in the file belongs to a building, or that begins or ends the way, leads into one. */
static bool enters_building(const struct Survey *survey, int index)
{
    const struct Segment *segments = survey->segments;
    if (!survey_duct(segments[index].way)) {
        return false;
    }
    return index == 0 || index + 1 == survey->segment_count || survey_way(segments[index - 1].way)->of_building ||
           survey_way(segments[index + 1].way)->of_building;
}

static void for_wall(const struct Asking *asking)
{
    const struct Segment *segment = asking->segment;
    call_at(asking, CAUTION_DRILL_WALL);
    call_at(asking, CAUTION_ASBESTOS);
    if (segment->wall == WALL_CAVITY || segment->wall == WALL_INSULATED_CAVITY) {
        call_at(asking, CAUTION_CAVITY);
    }
    if (segment->fire_barrier) {
        call_at(asking, CAUTION_FIRE_SEAL);
    }
}

static void cautions_for_segment(const struct Asking *asking, enum Location location)
{
    const struct Segment *segment = asking->segment;
    switch (survey_way(segment->way)->calls) {
    case CALLS_GROUND: for_ground(asking, location); break;
    case CALLS_HOLE: for_wall(asking); break;
    case CALLS_LOFT:
        call_at(asking, CAUTION_LOFT_STAND);
        call_at(asking, CAUTION_LOFT_INSULATION);
        call_at(asking, CAUTION_LOFT_HOT);
        call_at(asking, CAUTION_LOFT_BATS);
        call_at(asking, CAUTION_ASBESTOS);
        call_at(asking, CAUTION_METAL_FIXINGS);
        break;
    case CALLS_SPAN:
        call_at(asking, CAUTION_OVERHEAD_LINES);
        call_at(asking, location == LOCATION_FARM ? CAUTION_FARM_HEIGHT : CAUTION_SPAN_HEIGHT);
        call_at(asking, CAUTION_HEIGHT);
        break;
    case CALLS_STUDS: call_at(asking, CAUTION_WALL_SHALLOW); break;
    case CALLS_FIXINGS: call_at(asking, CAUTION_METAL_FIXINGS); break;
    case CALLS_NOTHING: break;
    }
    if (survey_drawn(segment)) {
        call_at(asking, CAUTION_PULLING);
    }
    if (segment->sun == SUN_FULL) {
        call_at(asking, CAUTION_SUN);
    }
}

static void for_run(struct List *list, const struct Run *run)
{
    if (run->kind == RUN_POWER && survey_armoured(run->cable.type)) {
        call(list, CAUTION_ARMOUR_ENDS, run->name);
        call(list, CAUTION_GLAND_PLASTIC, run->name);
        call(list, CAUTION_COLD, run->name);
    }
}

static void for_earthing(struct List *list, const struct Survey *survey)
{
    const bool tn_c_s = survey->supply.system == SYSTEM_TN_C_S;
    if (survey->earthing.far_end == FAR_END_ISLAND) {
        call(list, CAUTION_ISLAND_ARMOUR, "");
        call(list, CAUTION_ISLAND_DISTANCE, "");
        call(list, CAUTION_EARTH_LABEL, "");
    } else if (tn_c_s) {
        call(list, CAUTION_SUPPLY_EARTH_OUTDOORS, "");
        call(list, CAUTION_EXPORT_NOT_FOR, "");
    }
    if (survey->earthing.extraneous_parts) {
        call(list, CAUTION_EARTH_LABEL, "");
    }
    for (int i = 0; i < survey->run_count; i++) {
        if (survey->runs[i].use == USE_CHARGING && survey->runs[i].kind == RUN_POWER && tn_c_s) {
            call(list, CAUTION_CHARGING_EARTH, survey->runs[i].name);
        }
    }
}

static void for_generation(struct List *list, const struct Survey *survey)
{
    /* EREC G98 goes as far as that; beyond it G99 holds */
    const bool notify = within(load_generated_a(survey), design_practice()->notify_up_to_a);
    for (int i = 0; i < survey->run_count; i++) {
        if (survey->runs[i].use == USE_GENERATION && survey->runs[i].kind == RUN_POWER) {
            call(list, notify ? CAUTION_GENERATION_NOTIFY : CAUTION_GENERATION_APPLY, survey->runs[i].name);
        }
    }
}

static void for_feed(struct List *list, const struct Run *run)
{
    const struct Quantity *tails = &run->start.tails_m;
    if (run->kind != RUN_POWER || run->start.from == FROM_EXISTING_WAY) {
        return;
    }
    call(list, CAUTION_TAILS_DEAD, run->name);
    if (!tails->given || !within(tails->value, tails_practice()->ask_over_m)) {
        call(list, CAUTION_TAILS_ASK, run->name);
    }
    if (tails->given && !within(tails->value, tails_practice()->protect_over_m)) {
        call(list, CAUTION_TAILS_PROTECT, run->name);
    }
}

/* What the owner decides, and what the outbuilding has already. */
static void for_owner(struct List *list, const struct Survey *survey)
{
    if (survey->earthing.existing_given && survey->earthing.existing != EXISTING_NONE) {
        call(list, survey->earthing.existing == EXISTING_KEPT ? CAUTION_OLD_SUPPLY_STAYS : CAUTION_OLD_SUPPLY_GOES, "");
    }
    if (survey->supply.surge == SURGE_COUNT) {
        call(list, CAUTION_SURGE_UNDECIDED, "");
    } else if (survey->supply.surge == SURGE_PLANNED) {
        call(list, CAUTION_SURGE_FIT, "");
    }
    if (survey->supply.selectivity == SELECTIVITY_COUNT) {
        call(list, CAUTION_SELECTIVITY_UNDECIDED, "");
    }
}

/* For the whole job; what bites on a stretch is called with it. */
static void for_location(struct List *list, const struct Survey *survey)
{
    switch (survey->job.location) {
    case LOCATION_FARM:
        call(list, CAUTION_FARM_ANIMALS, "");
        call(list, CAUTION_FARM_PAPERS, "");
        break;
    case LOCATION_BUILDING_SITE: call(list, CAUTION_SITE_CABLES, ""); break;
    case LOCATION_CARAVAN_PARK: call(list, CAUTION_PARK_CABLES, ""); break;
    case LOCATION_MARINA: call(list, CAUTION_MARINA_CABLES, ""); break;
    case LOCATION_POOL: call(list, CAUTION_POOL_ZONES, ""); break;
    case LOCATION_OUTDOOR_LIGHTING: call(list, CAUTION_OUTDOOR_LIGHTING, ""); break;
    case LOCATION_EVENT: call(list, CAUTION_EVENT_ORIGIN, ""); break;
    case LOCATION_ORDINARY:
    case LOCATION_DWELLING:
    case LOCATION_WORKSHOP:
    case LOCATION_FUEL_POINT:
    case LOCATION_MEDICAL:
    case LOCATION_COUNT: break;
    }
}

static void gather(const struct Design *design, const struct Plan *plan, struct List *list)
{
    const struct Survey *survey = design->survey;
    call(list, CAUTION_RULES, "");
    call(list, CAUTION_DEAD_WORKING, "");
    call(list, CAUTION_CUT_OUT, "");
    call(list, CAUTION_SECOND_SOURCE, "");
    for_generation(list, survey);
    for_earthing(list, survey);
    for_owner(list, survey);
    for_location(list, survey);
    for (int i = 0; i < survey->segment_count; i++) {
        const struct PlanSegment *segment = &plan->segments[i];
        const struct Asking asking = {list, segment->surveyed, i};
        cautions_for_segment(&asking, survey->job.location);
        if (enters_building(survey, i)) {
            call_at(&asking, CAUTION_DUCT_SEAL);
        }
        if (!survey_in_ground(segment->surveyed->way) &&
            (segment->height_from_m > site_practice()->high_m || segment->height_to_m > site_practice()->high_m)) {
            call_at(&asking, CAUTION_HEIGHT);
        }
    }
    for (int r = 0; r < survey->run_count; r++) {
        for_run(list, &survey->runs[r]);
        for_feed(list, &survey->runs[r]);
        if (plan->runs[r].cable_facts.heavy) {
            call(list, CAUTION_LIFT, survey->runs[r].name);
        }
    }
    call(list, CAUTION_TOOLS, "");
    call(list, CAUTION_FIRST_TEST, "");
    call(list, CAUTION_NOTIFY, "");
}

enum { SEPARATIONS_MOST = 16 };

static bool separated_alike(const struct Plan *plan, int one, int other)
{
    return say_same(plan->segments[one].separation, plan->segments[other].separation);
}

/* Only what lies side by side can be kept at a distance. */
static struct Sayings separation_sayings(const struct PlanSegment *segment)
{
    const enum Saying full = segment->separation->id;
    switch (full) {
    case SAY_DATA_KEPT_OUT: return (struct Sayings){full, SAY_SHORT_DATA_OUT, SAY_FLAG_DATA_OUT};
    case SAY_DATA_SHARES_WITH_POWER: return (struct Sayings){full, SAY_SHORT_DATA_SHARES, SAY_FLAG_DATA_SHARES};
    case SAY_DATA_APART_THROUGH_WALL: return (struct Sayings){full, SAY_SHORT_DATA_HOLE, SAY_FLAG_DATA_HOLE};
    default: return (struct Sayings){full, SAY_SHORT_DATA_APART, SAY_FLAG_DATA_APART};
    }
}

static const struct Say *separation_said(struct Arena *arena, const struct PlanSegment *segment, enum Saying id)
{
    return id == SAY_SHORT_DATA_OUT || id == SAY_SHORT_DATA_SHARES || id == SAY_FLAG_DATA_OUT ||
                   id == SAY_FLAG_DATA_SHARES
               ? say(arena, id)
               : say(arena, id, say_fixed(segment->separation_mm, 0, UNIT_MM));
}

/* The same distance is required on many segments: it is said once, for all of them. */
static void add_separations(const struct Design *design, const struct Plan *plan, struct List *list)
{
    int said = 0;
    for (int i = 0; i < plan->segment_count && said < SEPARATIONS_MOST; i++) {
        bool known = plan->segments[i].separation == NULL;
        for (int k = 0; k < i && !known; k++) {
            known = separated_alike(plan, k, i);
        }
        int *stretches =
            known ? NULL : arena_array(design->arena, (size_t)(plan->segment_count - i), sizeof *stretches);
        if (stretches == NULL) {
            continue;
        }
        int count = 0;
        for (int k = i; k < plan->segment_count; k++) {
            if (separated_alike(plan, k, i)) {
                stretches[count++] = k;
            }
        }
        said++;
        const struct Sayings sayings_here = separation_sayings(&plan->segments[i]);
        list->items[list->count++] =
            (struct Caution){.where = plan->segments[i].surveyed->name,
                             .source = "BS EN 50174-2; BS 7671 528",
                             .trust = separation_ref()->trust,
                             .text = plan->segments[i].separation,
                             .stretch_count = count,
                             .stretches = stretches,
                             .shortly = separation_said(design->arena, &plan->segments[i], sayings_here.shortly),
                             .flag = separation_said(design->arena, &plan->segments[i], sayings_here.flag),
                             .drawn = true};
    }
}

/* The stretches of one row, rising; 0 when none called for it. */
static int stretches_of(struct Arena *arena, const struct List *list, int id, const int **out)
{
    int count = 0;
    for (int i = 0; i < list->segments; i++) {
        count += list->at[id * list->segments + i];
    }
    int *stretches = count > 0 ? arena_array(arena, (size_t)count, sizeof *stretches) : NULL;
    *out = stretches;
    if (stretches == NULL) {
        return 0;
    }
    count = 0;
    for (int i = 0; i < list->segments; i++) {
        if (list->at[id * list->segments + i]) {
            stretches[count++] = i;
        }
    }
    return count;
}

/* The card is the same for every job. */
static void list_card(struct Arena *arena, struct Plan *plan)
{
    static const enum Saying headings[CAUTION_PLACES] = {
        [CARD_DEAD] = SAY_CARD_DEAD,   [CARD_DIG] = SAY_CARD_DIG,     [CARD_HIGH] = SAY_CARD_HIGH,
        [CARD_DRILL] = SAY_CARD_DRILL, [CARD_CABLE] = SAY_CARD_CABLE, [CARD_FINISH] = SAY_CARD_FINISH,
    };
    struct CardLine *card = arena_array(arena, CAUTION_COUNT, sizeof *card);
    for (int place = CARD_DEAD; card != NULL && place < CAUTION_PLACES; place++) {
        for (int id = 0; id < CAUTION_COUNT; id++) {
            if ((int)caution_place((enum CautionId)id) == place) {
                card[plan->card_count++] = (struct CardLine){headings[place], say(arena, sayings[id].shortly)};
            }
        }
    }
    plan->card = card;
}

/* As its row has it. */
static struct Caution caution_of(struct Arena *arena, enum CautionId id, const char *where)
{
    const bool every_job = caution_place(id) != OF_ROUTE;
    return (struct Caution){.where = where,
                            .source = caution_source(id),
                            .trust = caution_trust(id),
                            .text = say(arena, sayings[id].full),
                            .shortly = say(arena, sayings[id].shortly),
                            .flag = say(arena, sayings[id].flag),
                            .every_job = every_job,
                            .drawn = !every_job || caution_has(id, DRAWN_TOO),
                            .at_stopped_armour = caution_has(id, AT_STOPPED_ARMOUR),
                            .at_rods = caution_has(id, AT_RODS),
                            .asks_before = caution_has(id, ASKS_BEFORE)};
}

bool list_cautions(const struct Design *design, struct Plan *plan)
{
    const int segments = design->survey->segment_count;
    struct List list = {.items = arena_array(design->arena, CAUTION_COUNT + SEPARATIONS_MOST, sizeof *list.items),
                        .segments = segments,
                        .at = arena_array(design->arena, (size_t)CAUTION_COUNT * (size_t)segments, sizeof *list.at)};
    if (list.items == NULL || list.at == NULL) {
        return false;
    }
    gather(design, plan, &list);
    list_card(design->arena, plan);
    for (int id = 0; id < CAUTION_COUNT; id++) {
        if (id == CAUTION_FIRST_TEST) {
            add_separations(design, plan, &list); /* with the work, before the handing over */
        }
        if (list.due[id]) {
            struct Caution *caution = &list.items[list.count++];
            *caution = caution_of(design->arena, (enum CautionId)id, list.where[id]);
            caution->stretch_count = stretches_of(design->arena, &list, id, &caution->stretches);
        }
    }
    plan->cautions = list.items;
    plan->caution_count = list.count;
    return true;
}
