/* The tasks of a plan, each with what the take-off counts of it, and what waits for what: the order of the day that the
 * brief has. Common practice, no source, but for the hold points, which are the brief's own. */
#include "work_private.h"

#include <string.h>

enum { NO_TASK = -1 };

/* What a run passes. */
struct Passes {
    bool dug, new_duct, buried, hole, fixed;
};

static struct Passes passes_of(const struct Plan *plan, const struct Run *run)
{
    struct Passes passes = {false, false, false, false, false};
    for (int i = 0; i < run->along_count; i++) {
        const struct Segment *segment = plan->segments[run->along[i]].surveyed;
        passes.dug = passes.dug || survey_dug(segment);
        passes.new_duct = passes.new_duct || (survey_dug(segment) && survey_duct(segment->way));
        passes.buried = passes.buried || segment->way == WAY_BURIED;
        passes.hole = passes.hole || survey_hole(segment->way);
        passes.fixed = passes.fixed || (!survey_in_ground(segment->way) && !survey_hole(segment->way));
    }
    return passes;
}

static enum Unit unit_of(enum TaskKind kind)
{
    switch (kind) {
    case TASK_SET_OUT:
    case TASK_DUCT:
    case TASK_DRAW: return UNIT_M;
    case TASK_DIG:
    case TASK_REINSTATE: return UNIT_M3;
    default: return UNIT_NONE;
    }
}

static enum Saying amount_of(enum TaskKind kind)
{
    switch (kind) {
    case TASK_DRILL: return SAY_WORK_HOLES;
    case TASK_FIX: return SAY_CELL_FIXINGS_SHORT;
    case TASK_RODS: return SAY_WORK_RODS;
    case TASK_GLAND: return SAY_WORK_GLANDS;
    case TASK_TERMINATE: return SAY_WORK_CORES;
    case TASK_TEST: return SAY_WORK_RUNS;
    case TASK_LABEL: return SAY_WORK_LABELS;
    default: return SAY_AS_IS;
    }
}

static const struct Say *amount_said(struct Arena *arena, enum TaskKind kind, double quantity)
{
    const enum Unit unit = unit_of(kind);
    return unit == UNIT_NONE ? say(arena, amount_of(kind), say_count((int)quantity))
                             : say(arena, SAY_AS_IS, say_fixed(quantity, unit == UNIT_M3 ? 2 : 1, unit));
}

static const struct Say *hold_said(struct Arena *arena, enum TaskKind kind, enum PartPlace end)
{
    switch (kind) {
    case TASK_SET_OUT: return say(arena, SAY_HOLD_SAID_BACK);
    case TASK_DIG: return say(arena, SAY_HOLD_SERVICES);
    case TASK_GLAND:
    case TASK_TERMINATE: return end == PART_AT_START ? say(arena, SAY_HOLD_DEAD) : NULL;
    case TASK_TEST: return say(arena, SAY_HOLD_BOTH_ENDS);
    default: return NULL;
    }
}

static const struct Say *title_said(const struct Gathering *all, enum TaskKind kind, int run, enum PartPlace end)
{
    const struct Say *name = run < 0 ? NULL : say(all->arena, SAY_AS_IS, say_name(all->plan->runs[run].settled->name));
    const enum Saying where = end == PART_AT_START ? SAY_END_SUPPLY : end == PART_AT_FINISH ? SAY_END_FAR : SAY_NOTHING;
    return say(all->arena, SAY_WORK_TITLE, say_term(work_kind_said(kind)), say_part(name), say_term(where));
}

static bool machine_digs(const struct Plan *plan)
{
    bool any = false;
    for (int i = 0; i < plan->segment_count; i++) {
        const struct Segment *segment = plan->segments[i].surveyed;
        any = any || (survey_dug(segment) && segment->dig == DIG_MACHINE);
    }
    return any;
}

/* Long work of one hand is shared out between all: so many shares. */
static int shares_of(const struct Gathering *all, enum TaskKind kind, double quantity)
{
    enum { LONG_MIN = 60 };
    const struct LabourFigure *figure = &all->labour->tasks[kind];
    const bool long_work = figure->given && figure->likely_min.value * quantity >= LONG_MIN;
    const bool of_one = labour_hands(all->labour, kind) == 1 && !labour_electrician(all->labour, kind) &&
                        !(kind == TASK_DIG && machine_digs(all->plan)); /* one machine */
    const bool whole = unit_of(kind) == UNIT_NONE;
    return !long_work || !of_one ? 1 : whole && quantity < all->hands ? (int)quantity : all->hands;
}

/* Nothing of what comes to nothing; `quantity` under 0 is not known. */
static int add(struct Gathering *all, enum TaskKind kind, int run, enum PartPlace end, double quantity)
{
    if (!(quantity > 0 || quantity < 0) || all->count == all->room) {
        return NO_TASK;
    }
    const bool counted = quantity > 0;
    all->tasks[all->count] = (struct WorkTask){.kind = kind,
                                               .run = run,
                                               .end = end,
                                               .counted = counted,
                                               .quantity = counted ? quantity : 0,
                                               .title = title_said(all, kind, run, end),
                                               .amount = counted ? amount_said(all->arena, kind, quantity) : NULL,
                                               .hold = hold_said(all->arena, kind, end)};
    return all->count++;
}

static void wait_for(struct Gathering *all, int task, int other)
{
    if (task != NO_TASK && other != NO_TASK) {
        all->waits[(size_t)task * (size_t)all->room + (size_t)other] = true;
    }
}

/* ---- how much ---- */

static double way_m(const struct Plan *plan)
{
    double sum = 0;
    for (int i = 0; i < plan->segment_count; i++) {
        sum += plan->segments[i].run_count > 0 ? plan->segments[i].surveyed->length_m.value : 0;
    }
    return sum;
}

static double new_duct_m(const struct Plan *plan)
{
    double sum = 0;
    for (int i = 0; i < plan->segment_count; i++) {
        const struct Segment *segment = plan->segments[i].surveyed;
        sum += plan->segments[i].run_count > 0 && survey_duct(segment->way) && survey_dug(segment)
                   ? segment->length_m.value
                   : 0;
    }
    return sum;
}

static double trench_m3(const struct PartsList *parts)
{
    double sum = 0;
    for (int i = 0; i < parts->way_count; i++) {
        const struct PartsWay *way = &parts->ways[i];
        sum += way->trench_m * way->trench_width_m * way->trench_depth_m;
    }
    return sum;
}

static double holes(const struct PartsList *parts)
{
    int count = 0;
    for (int i = 0; i < parts->way_count; i++) {
        count += parts->ways[i].hole_mm > 0;
    }
    return count;
}

static double fixings(const struct PartsList *parts)
{
    int count = 0;
    for (int i = 0; i < parts->way_count; i++) {
        count += parts->ways[i].fixings + parts->ways[i].end_fixings;
    }
    return count;
}

static double labels(const struct PartsList *parts)
{
    double sum = 0;
    for (int i = 0; i < parts->count; i++) {
        sum += parts->parts[i].aisle == AISLE_LABELS ? parts->parts[i].needed : 0;
    }
    return sum;
}

static double rods(const struct Plan *plan)
{
    const struct Earthing *earthing = &plan->survey->earthing;
    return !plan->electrode.due ? 0 : earthing->rods.given ? earthing->rods.value : -1;
}

static double glands(const struct Gathering *all, const struct PlanRun *run, enum PartPlace end)
{
    static const char gland[] = "gland-";
    for (int i = 0; i < all->parts->count; i++) {
        const struct Part *part = &all->parts->parts[i];
        if (strncmp(part->code, gland, sizeof gland - 1) == 0 && parts_used_at(part, run->settled, end)) {
            return 1;
        }
    }
    return 0;
}

/* ---- what waits for what ---- */

/* A task of the whole job, in shares. */
struct Shared {
    int count;
    int tasks[LABOUR_HANDS_MOST];
};
struct Site {
    struct Shared set_out, dig, duct, drill, fix, rods, reinstate, label;
};

static struct Shared add_shared(struct Gathering *all, enum TaskKind kind, double quantity)
{
    struct Shared shared = {.count = 0};
    const int shares = shares_of(all, kind, quantity);
    for (int i = 0; i < shares; i++) {
        const int whole = ((int)quantity * (i + 1)) / shares - ((int)quantity * i) / shares;
        const double part = unit_of(kind) == UNIT_NONE && quantity > 0 ? whole : quantity / shares;
        const int task = add(all, kind, -1, PART_NOWHERE, part);
        if (task != NO_TASK) {
            shared.tasks[shared.count++] = task;
            all->tasks[task].share = shares == 1 ? 0 : i + 1;
            all->tasks[task].title = shares == 1 ? all->tasks[task].title
                                                 : say(all->arena, SAY_WORK_SHARE, say_part(all->tasks[task].title),
                                                       say_count(i + 1), say_count(shares));
        }
    }
    return shared;
}

static void all_wait_for(struct Gathering *all, const struct Shared *tasks, int other)
{
    for (int i = 0; i < tasks->count; i++) {
        wait_for(all, tasks->tasks[i], other);
    }
}

static void wait_for_all(struct Gathering *all, int task, const struct Shared *others)
{
    for (int i = 0; i < others->count; i++) {
        wait_for(all, task, others->tasks[i]);
    }
}

static void each_waits_for(struct Gathering *all, const struct Shared *tasks, const struct Shared *others)
{
    for (int i = 0; i < tasks->count; i++) {
        wait_for_all(all, tasks->tasks[i], others);
    }
}

static struct Site add_site(struct Gathering *all)
{
    struct Site site;
    site.set_out = add_shared(all, TASK_SET_OUT, way_m(all->plan));
    site.dig = add_shared(all, TASK_DIG, trench_m3(all->parts));
    site.duct = add_shared(all, TASK_DUCT, new_duct_m(all->plan));
    site.drill = add_shared(all, TASK_DRILL, holes(all->parts));
    site.fix = add_shared(all, TASK_FIX, fixings(all->parts));
    site.rods = add_shared(all, TASK_RODS, rods(all->plan));
    site.reinstate = add_shared(all, TASK_REINSTATE, trench_m3(all->parts));
    each_waits_for(all, &site.dig, &site.set_out);
    each_waits_for(all, &site.duct, &site.dig);
    each_waits_for(all, &site.drill, &site.set_out);
    each_waits_for(all, &site.fix, &site.set_out);
    each_waits_for(all, &site.rods, &site.set_out);
    each_waits_for(all, &site.reinstate, &site.dig);
    each_waits_for(all, &site.reinstate, &site.duct);
    site.label = add_shared(all, TASK_LABEL, labels(all->parts));
    return site;
}

/* An end: its gland before its cores. The one that is done last. */
static int add_end(struct Gathering *all, int run, enum PartPlace end, int after)
{
    const struct PlanRun *planned = &all->plan->runs[run];
    const int cores = planned->settled->cable.cores;
    const int gland = add(all, TASK_GLAND, run, end, glands(all, planned, end));
    const int cores_at = add(all, TASK_TERMINATE, run, end,
                             cores > 0                             ? cores
                             : planned->settled->kind == RUN_EARTH ? 1
                                                                   : -1);
    wait_for(all, gland, after);
    wait_for(all, cores_at, after);
    wait_for(all, cores_at, gland);
    return cores_at;
}

static void add_run(struct Gathering *all, const struct Site *site, int run)
{
    const struct PlanRun *planned = &all->plan->runs[run];
    const struct Passes passes = passes_of(all->plan, planned->settled);
    const int draw = add(all, TASK_DRAW, run, PART_NOWHERE, survey_electrical_m(all->plan->survey, planned->settled));
    static const struct Shared none = {.count = 0};
    wait_for_all(all, draw, &site->set_out);
    wait_for_all(all, draw, passes.dug ? &site->dig : &none);
    wait_for_all(all, draw, passes.new_duct ? &site->duct : &none);
    wait_for_all(all, draw, passes.hole ? &site->drill : &none);
    wait_for_all(all, draw, passes.fixed ? &site->fix : &none);
    for (int i = 0; passes.buried && i < site->reinstate.count; i++) {
        wait_for(all, site->reinstate.tasks[i], draw);
        all->tasks[site->reinstate.tasks[i]].hold = say(all->arena, SAY_HOLD_LAID_CABLE); /* before it is covered */
    }
    const int far_end = add_end(all, run, PART_AT_FINISH, draw);
    const int supply_end = add_end(all, run, PART_AT_START, far_end == NO_TASK ? draw : far_end);
    const int test = add(all, TASK_TEST, run, PART_NOWHERE, 1);
    wait_for(all, test, supply_end);
    wait_for(all, test, far_end);
    wait_for(all, test, draw);
    wait_for_all(all, test, &site->rods);
    all_wait_for(all, &site->label, supply_end);
    all_wait_for(all, &site->label, far_end);
}

bool work_gather(struct Gathering *all)
{
    enum { OF_SITE = 8 * LABOUR_HANDS_MOST, OF_RUN = 6 };
    all->room = OF_SITE + OF_RUN * all->plan->run_count;
    all->tasks = arena_array(all->arena, (size_t)all->room, sizeof *all->tasks);
    all->waits = arena_array(all->arena, (size_t)all->room * (size_t)all->room, sizeof *all->waits);
    if (all->tasks == NULL || all->waits == NULL) {
        return false;
    }
    const struct Site site = add_site(all);
    for (int i = 0; i < all->plan->run_count; i++) {
        add_run(all, &site, i);
    }
    return true;
}
