/* Which cautions a route calls for, and where. The texts and their sources are a table (cautions.inc). */
#include "design_private.h"

struct List {
    struct Caution *items;
    int count;
    const char *where[CAUTION_COUNT]; /* the first place that called for it */
    bool due[CAUTION_COUNT];
};

static void call(struct List *list, enum CautionId id, const char *where)
{
    if (!list->due[id]) {
        list->due[id] = true;
        list->where[id] = where;
    }
}

static void for_ground(struct List *list, const struct Segment *segment)
{
    const bool digs = segment->way == WAY_BURIED || segment->duct_laid == LAID_NEW;
    if (digs) {
        call(list, CAUTION_DIG_PLANS, segment->name);
        call(list, CAUTION_DIG_HAND, segment->name);
        call(list, CAUTION_DIG_FOUND, segment->name);
        call(list, CAUTION_DIG_GAS, segment->name);
        if (segment->depth_m.value >= 1.2) {
            call(list, CAUTION_DIG_DEEP, segment->name);
        }
    }
    if (digs && segment->under == UNDER_DRIVE) {
        call(list, CAUTION_DRIVE, segment->name);
    }
    if (segment->way == WAY_DUCT) {
        call(list, CAUTION_DUCT_SEAL, segment->name);
    }
}

static void for_wall(struct List *list, const struct Segment *segment)
{
    call(list, CAUTION_DRILL_WALL, segment->name);
    call(list, CAUTION_ASBESTOS, segment->name);
    if (segment->wall == WALL_CAVITY || segment->wall == WALL_INSULATED_CAVITY) {
        call(list, CAUTION_CAVITY, segment->name);
    }
    if (segment->fire_barrier) {
        call(list, CAUTION_FIRE_SEAL, segment->name);
    }
}

static void for_segment(struct List *list, const struct Segment *segment)
{
    switch (segment->way) {
    case WAY_DUCT:
    case WAY_BURIED: for_ground(list, segment); break;
    case WAY_THROUGH_WALL: for_wall(list, segment); break;
    case WAY_LOFT_VOID:
        call(list, CAUTION_LOFT_STAND, segment->name);
        call(list, CAUTION_LOFT_INSULATION, segment->name);
        call(list, CAUTION_LOFT_HOT, segment->name);
        call(list, CAUTION_LOFT_BATS, segment->name);
        call(list, CAUTION_ASBESTOS, segment->name);
        call(list, CAUTION_METAL_FIXINGS, segment->name);
        break;
    case WAY_CATENARY:
        call(list, CAUTION_OVERHEAD_LINES, segment->name);
        call(list, CAUTION_HEIGHT, segment->name);
        break;
    case WAY_STUD_WALL: call(list, CAUTION_WALL_SHALLOW, segment->name); break;
    case WAY_WALL:
    case WAY_FENCE:
    case WAY_BEAM:
    case WAY_TRAY:
    case WAY_LADDER:
    case WAY_CONDUIT:
    case WAY_TRUNKING: call(list, CAUTION_METAL_FIXINGS, segment->name); break;
    case WAY_UNDER_FLOOR:
    case WAY_CEILING:
    case WAY_COUNT: break;
    }
    if (survey_drawn(segment)) {
        call(list, CAUTION_PULLING, segment->name);
    }
    if (segment->sun == SUN_FULL) {
        call(list, CAUTION_SUN, segment->name);
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

/* Work above this needs thought for the ladder (Work at Height Regulations 2005 name no height; common practice). */
static const double high_m = 2.0;

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

static void gather(const struct Design *design, const struct Plan *plan, struct List *list)
{
    const struct Survey *survey = design->survey;
    call(list, CAUTION_RULES, "");
    call(list, CAUTION_DEAD_WORKING, "");
    call(list, CAUTION_CUT_OUT, "");
    call(list, CAUTION_SECOND_SOURCE, "");
    for_earthing(list, survey);
    for (int i = 0; i < survey->segment_count; i++) {
        const struct PlanSegment *segment = &plan->segments[i];
        for_segment(list, segment->surveyed);
        if (!survey_in_ground(segment->surveyed->way) &&
            (segment->height_from_m > high_m || segment->height_to_m > high_m)) {
            call(list, CAUTION_HEIGHT, segment->surveyed->name);
        }
    }
    for (int r = 0; r < survey->run_count; r++) {
        for_run(list, &survey->runs[r]);
        if (plan->runs[r].cable_facts.heavy) {
            call(list, CAUTION_LIFT, survey->runs[r].name);
        }
    }
    call(list, CAUTION_TOOLS, "");
    call(list, CAUTION_FIRST_TEST, "");
    call(list, CAUTION_NOTIFY, "");
}

/* The same distance is due on many stretches: it is said once, at the first, with the names of the others. */
static const char *all_places(struct Arena *arena, const struct Plan *plan, int first)
{
    enum { NAMED = 6 };
    const struct PlanSegment *segment = &plan->segments[first];
    struct TextBuilder text = text_builder(arena);
    int others = 0;
    text_add(&text, segment->separation);
    for (int i = first + 1; i < plan->segment_count; i++) {
        if (text_same(plan->segments[i].separation, segment->separation) && others++ < NAMED) {
            text_print(&text, "%s%s", others == 1 ? " So too on " : ", ", plan->segments[i].surveyed->name);
        }
    }
    if (others > NAMED) {
        text_print(&text, " and %d more", others - NAMED);
    }
    text_add(&text, others > 0 ? "." : "");
    return text_done(&text);
}

enum { SEPARATIONS_MOST = 16 };

static void add_separations(const struct Design *design, const struct Plan *plan, struct List *list)
{
    int said[SEPARATIONS_MOST];
    int count = 0;
    for (int i = 0; i < plan->segment_count && count < SEPARATIONS_MOST; i++) {
        bool known = plan->segments[i].separation[0] == '\0';
        for (int s = 0; s < count && !known; s++) {
            known = text_same(plan->segments[said[s]].separation, plan->segments[i].separation);
        }
        if (!known) {
            said[count++] = i;
            list->items[list->count++] = (struct Caution){.where = plan->segments[i].surveyed->name,
                                                          .source = "BS EN 50174-2; BS 7671 528",
                                                          .text = all_places(design->arena, plan, i)};
        }
    }
}

bool list_cautions(const struct Design *design, struct Plan *plan)
{
    struct List list = {.items = arena_array(design->arena, CAUTION_COUNT + SEPARATIONS_MOST, sizeof *list.items)};
    if (list.items == NULL) {
        return false;
    }
    gather(design, plan, &list);
    for (int id = 0; id < CAUTION_COUNT; id++) {
        if (id == CAUTION_FIRST_TEST) {
            add_separations(design, plan, &list); /* with the work, before the handing over */
        }
        if (list.due[id]) {
            const struct CautionText *text = caution_text((enum CautionId)id);
            list.items[list.count++] =
                (struct Caution){.where = list.where[id], .source = text->source, .text = text->say};
        }
    }
    plan->cautions = list.items;
    plan->caution_count = list.count;
    return true;
}
