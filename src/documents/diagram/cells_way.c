/* What a segment is: what it runs on or in, fixings, hole, trench, bends, how the cable is drawn in. The figures of
 * work are those that the parts list was counted from. */
#include "layout_private.h"

#include <math.h>

static struct SayArg mm(double length_mm)
{
    return say_digits(length_mm, 4, UNIT_MM);
}

/* With the run's name before what is of one run alone where several run together. */
static const struct Say *of_run(const struct RouteLayout *layout, int run, const struct Say *said)
{
    return layout->plan->run_count > 1 && run >= 0
               ? say(layout->arena, SAY_COLON, say_name(layout->plan->runs[run].settled->name), say_part(said))
               : said;
}

/* What the way into the ground and out of it adds to the longest cable on a segment. */
static double most_legs_m(const struct Plan *plan, int segment)
{
    double most_m = 0;
    for (int r = 0; r < plan->run_count; r++) {
        double run_m = 0;
        for (int i = 0; i < plan->runs[r].leg_count; i++) {
            const struct PlanLeg *leg = &plan->runs[r].legs[i];
            run_m += leg->segment == segment && !leg->included ? leg->length_m : 0;
        }
        most_m = fmax(most_m, run_m);
    }
    return most_m;
}

/* What it runs on or in; the shorter form leaves the unit to the band's name. */
static const struct Say *surface_said(struct Arena *arena, const struct Segment *surveyed, enum Unit unit)
{
    const struct Say *way = say(arena, sign_word(way_sign(surveyed->way)));
    if (surveyed->way == WAY_THROUGH_WALL && surveyed->wall != WALL_COUNT) {
        way = say(arena, SAY_CELL_WALL, say_word(WORDS_WALL, (int)surveyed->wall));
    }
    if (surveyed->thickness_m.given) {
        way = say(arena, SAY_SPACE, say_part(way), say_digits(surveyed->thickness_m.value * 1000, 4, unit));
    }
    if (surveyed->duct_size_mm.given) {
        way = say(arena, SAY_CELL_DUCT, say_part(way), say_digits(surveyed->duct_size_mm.value, 4, unit),
                  say_word(WORDS_LAID, (int)surveyed->duct_laid));
    }
    const struct SayArg size = say_digits(surveyed->size_mm.value, 4, UNIT_NONE);
    if (surveyed->size_mm.given) {
        way = surveyed->height_mm.given
                  ? say(arena, SAY_CELL_SECTION, say_part(way), size, say_digits(surveyed->height_mm.value, 4, unit))
                  : say(arena, SAY_SPACE, say_part(way), say_digits(surveyed->size_mm.value, 4, unit));
    }
    if (surveyed->material != MATERIAL_COUNT && surveyed->size_mm.given) {
        way = say_list(arena, SAY_COMMA, way, say_word(WORDS_MATERIAL, (int)surveyed->material));
    }
    return surveyed->fixed_to == SURFACE_COUNT
               ? way
               : say_list(arena, SAY_COMMA, way, say_word(WORDS_SURFACE, (int)surveyed->fixed_to));
}

static void put_surface(struct Cell *cell, const struct Segment *surveyed)
{
    struct Arena *arena = cell->layout->arena;
    cell_put_fitting(cell, SIGN_NONE, surface_said(arena, surveyed, UNIT_MM), surface_said(arena, surveyed, UNIT_NONE),
                     false);
}

static void put_fixings(struct Cell *cell, const struct PartsWay *way)
{
    struct Arena *arena = cell->layout->arena;
    const struct SayArg count = say_count(way->fixings), every = mm(way->pitch_m * 1000);
    const bool spaced = way->pitch_m > 0;
    const struct Say *shorter =
        spaced ? say(arena, SAY_CELL_FIXINGS_SHORT_EVERY, count, every) : say(arena, SAY_CELL_FIXINGS_SHORT, count);
    const struct Say *longer = way->fixing_short == NULL ? shorter
                               : spaced ? say(arena, SAY_CELL_FIXINGS_EVERY, count, say_part(way->fixing_short), every)
                                        : say(arena, SAY_CELL_FIXINGS, count, say_part(way->fixing_short));
    if (way->fixings > 0) {
        cell_put_fitting(cell, SIGN_NONE, of_run(cell->layout, way->run, longer),
                         of_run(cell->layout, way->run, shorter), false);
    }
    if (way->end_fixings > 0) {
        const enum Saying more = way->fixings > 0 ? SAY_CELL_END_FIXINGS : SAY_CELL_END_FIXINGS_ALONE;
        cell_put(cell, of_run(cell->layout, way->run, say(arena, more, say_count(way->end_fixings))), false);
    }
}

static void put_hole(struct Cell *cell, const struct PartsWay *way)
{
    struct Arena *arena = cell->layout->arena;
    if (way->hole_mm > 0) {
        const struct Say *hole = say(arena, SAY_CELL_HOLE, mm(way->hole_mm));
        const struct Say *both =
            way->drill_mm > 0 ? say(arena, SAY_CELL_HOLE_DRILL, mm(way->hole_mm), mm(way->drill_mm)) : hole;
        const struct Say *shorter = way->drill_mm > 0
                                        ? say(arena, SAY_CELL_HOLE_DRILL_SHORT, say_digits(way->hole_mm, 4, UNIT_NONE),
                                              say_digits(way->drill_mm, 4, UNIT_NONE))
                                        : hole;
        cell_put_fitting(cell, SIGN_NONE, of_run(cell->layout, way->run, both), of_run(cell->layout, way->run, shorter),
                         false);
    }
}

const struct Say *cells_bend(const struct RouteLayout *layout, int segment, bool *fails)
{
    const struct Segment *surveyed = layout->plan->segments[segment].surveyed;
    double least_mm = 0, tightest_mm = 0;
    *fails = false;
    for (int i = 0; i < layout->plan->run_count; i++) {
        const struct PlanRun *run = &layout->plan->runs[i];
        for (int k = 0; k < run->bend_count; k++) {
            if (run->bends[k].segment == segment) {
                least_mm = fmax(least_mm, run->bends[k].least_mm);
                tightest_mm = run->bends[k].tightest_mm;
                *fails = *fails || run->bends[k].result == CHECK_FAIL;
            }
        }
    }
    const struct SayArg count = say_count(surveyed->bend_count), least = mm(ceil(least_mm - 1e-6));
    return surveyed->bend_count == 0   ? NULL
           : tightest_mm > 0 && *fails ? say(layout->arena, SAY_CELL_BEND_BOTH, count, mm(tightest_mm), least)
           : tightest_mm > 0           ? say(layout->arena, SAY_CELL_BEND_IS, count, mm(tightest_mm))
           : least_mm > 0              ? say(layout->arena, SAY_CELL_BEND_LEAST, count, least)
                                       : say(layout->arena, SAY_CELL_BEND, count);
}

static void put_bends(struct Cell *cell, int segment)
{
    bool fails = false;
    const struct Say *bend = cells_bend(cell->layout, segment, &fails);
    cell_put(cell, fails ? say(cell->layout->arena, SAY_CELL_TOO_TIGHT, say_part(bend)) : bend, true);
}

/* At the first segment of a pull in the order of the way; the force as the brief rounds it. */
static const struct Say *pull_said(struct Arena *arena, const struct PlanPull *pull, bool shorter)
{
    const struct SayArg force = say_fixed(ceil(pull->tension_n - 1e-6), 0, UNIT_N);
    const struct SayArg limit = say_fixed(floor(pull->limit_n + 1e-6), 0, UNIT_N);
    if (!pull->worked) {
        return say(arena, pull->result == CHECK_FAIL ? SAY_CELL_PULL_FAILS : SAY_CELL_PULL_UNKNOWN);
    }
    return pull->result == CHECK_FAIL ? say(arena, SAY_CELL_PULL_TOO_HARD, force, limit)
           : shorter                  ? say(arena, SAY_CELL_PULL, force)
           : pull->either             ? say(arena, SAY_CELL_PULL_EITHER, force)
           : pull->from_far           ? say(arena, SAY_CELL_PULL_FROM_FAR, force)
                                      : say(arena, SAY_CELL_PULL_FROM_SUPPLY, force);
}

/* The pull of a run that a segment describes; NULL: none. */
static const struct PlanPull *pull_at(const struct PlanRun *run, int segment)
{
    for (int k = 0; k < run->pull_count; k++) {
        const int a = run->settled->along[run->pulls[k].first];
        const int b = run->settled->along[run->pulls[k].first + run->pulls[k].count - 1];
        if ((a < b ? a : b) == segment) {
            return &run->pulls[k];
        }
    }
    return NULL;
}

static bool same_pull(struct Arena *arena, const struct PlanPull *a, const struct PlanPull *b)
{
    return a != NULL && b != NULL && a->pit_at_m == b->pit_at_m &&
           say_same(pull_said(arena, a, false), pull_said(arena, b, false));
}

/* Runs that are drawn in alike have one line for all. */
static void put_pulls(struct Cell *cell, int segment)
{
    struct Arena *arena = cell->layout->arena;
    const struct Plan *plan = cell->layout->plan;
    for (int i = 0; i < plan->run_count; i++) {
        const struct PlanPull *pull = pull_at(&plan->runs[i], segment);
        const struct Say *names = NULL;
        bool told = false;
        for (int k = 0; pull != NULL && k < plan->run_count; k++) {
            if (same_pull(arena, pull, pull_at(&plan->runs[k], segment))) {
                told = told || k < i;
                names = say_list(arena, SAY_COMMA, names, say_name(plan->runs[k].settled->name));
            }
        }
        if (pull == NULL || told) {
            continue;
        }
        const struct Say *longer = pull_said(arena, pull, false), *shorter = pull_said(arena, pull, true);
        if (plan->run_count > 1) {
            longer = say(arena, SAY_COLON, say_part(names), say_part(longer));
            shorter = say(arena, SAY_COLON, say_part(names), say_part(shorter));
        }
        cell_put_fitting(cell, SIGN_NONE, longer, shorter, true);
        if (pull->pit_at_m > 0) {
            cell_put(cell, say(arena, SAY_CELL_PIT_WANTED, layout_metres(pull->pit_at_m)), true);
        }
    }
}

static enum Saying pits_word(enum Pits pits)
{
    switch (pits) {
    case PITS_START: return SAY_CELL_PIT_START;
    case PITS_END: return SAY_CELL_PIT_END;
    case PITS_BOTH: return SAY_CELL_PIT_BOTH;
    case PITS_NONE:
    case PITS_COUNT: break;
    }
    return SAY_NOTHING;
}

void cells_way(struct Cell *cell, int segment)
{
    struct Arena *arena = cell->layout->arena;
    const struct PlanSegment *planned = &cell->layout->plan->segments[segment];
    const struct Segment *surveyed = planned->surveyed;
    const struct PartsList *parts = cell->layout->parts;
    put_surface(cell, surveyed);
    const int before = survey_before(cell->layout->plan->survey, segment);
    if (before >= 0 && before != segment - 1) {
        cell_put(cell,
                 say(arena, SAY_CELL_BRANCH, say_count(before + 1),
                     say_name(cell->layout->plan->segments[before].surveyed->name)),
                 true);
    }
    for (int i = 0; parts != NULL && i < parts->way_count; i++) {
        if (parts->ways[i].segment == segment) {
            put_fixings(cell, &parts->ways[i]);
            put_hole(cell, &parts->ways[i]);
        }
    }
    if (surveyed->sleeve || surveyed->fire_barrier) {
        cell_put(cell,
                 say(arena, surveyed->sleeve && surveyed->fire_barrier ? SAY_CELL_SLEEVE_FIRE_SEAL
                            : surveyed->sleeve                         ? SAY_CELL_SLEEVE
                                                                       : SAY_CELL_FIRE_SEAL),
                 false);
    }
    const double legs_m = most_legs_m(cell->layout->plan, segment);
    if (legs_m > 0) {
        cell_put_fitting(cell, SIGN_NONE, say(arena, SAY_CELL_LEGS, layout_metres(legs_m)),
                         say(arena, SAY_CELL_LEGS_SHORT, layout_metres(legs_m)), false);
    }
    if (pits_word(surveyed->pits) != SAY_NOTHING) {
        cell_put(cell, say(arena, pits_word(surveyed->pits)), false);
    }
    if (surveyed->as_laid.given) {
        cell_put(cell, say(arena, SAY_CELL_AS_LAID), true);
    }
    put_bends(cell, segment);
    put_pulls(cell, segment);
    if (planned->separation_mm > 0) {
        cell_put(cell, say(arena, SAY_CELL_APART, mm(planned->separation_mm)), false);
    }
}

/* To the next centimetre: nobody digs finer. */
static struct SayArg trench_mm(double length_m)
{
    return say_fixed(ceil(length_m * 100 - 1e-6) * 10, 0, UNIT_NONE);
}

void cells_ground(struct Cell *cell, int segment)
{
    struct Arena *arena = cell->layout->arena;
    const struct PlanSegment *planned = &cell->layout->plan->segments[segment];
    const struct Segment *surveyed = planned->surveyed;
    const struct PartsList *parts = cell->layout->parts;
    if (!survey_in_ground(surveyed->way)) {
        return;
    }
    const struct SayArg under = say_word(WORDS_UNDER, (int)surveyed->under);
    const struct SayArg dig = say_word(WORDS_DIG, (int)surveyed->dig);
    if (surveyed->under != UNDER_COUNT && surveyed->dig != DIG_COUNT) {
        cell_put_fitting(cell, SIGN_NONE, say(arena, SAY_CELL_UNDER_DIG, under, dig), say(arena, SAY_COMMA, under, dig),
                         false);
    } else if (surveyed->under != UNDER_COUNT) {
        cell_put(cell, say_alone(arena, under), false);
    } else if (surveyed->dig != DIG_COUNT) {
        cell_put(cell, say(arena, SAY_CELL_DIG, dig), false);
    }
    cell_put(cell, say(arena, SAY_CELL_COVER, say_digits(planned->depth_m * 1000, 4, UNIT_NONE)), true);
    for (int i = 0; parts != NULL && i < parts->way_count; i++) {
        const struct PartsWay *way = &parts->ways[i];
        if (way->segment == segment && way->trench_m > 0) {
            cell_put_fitting(
                cell, SIGN_NONE,
                say(arena, SAY_CELL_TRENCH, trench_mm(way->trench_width_m), trench_mm(way->trench_depth_m)),
                say(arena, SAY_CELL_TRENCH_SHORT, trench_mm(way->trench_width_m), trench_mm(way->trench_depth_m)),
                false);
        }
    }
}
