/* The order of the decision: loads, device, situation of every stretch, size. Reads like a hand calculation. */
#include "design.h"

#include "design/faults/fault_private.h"
#include "design/mechanics/mechanics_private.h"

#include <math.h>
#include <string.h>

/* What shares each stretch: how many power runs, and the coolest insulation among them. */
static bool look_over_segments(struct Design *design)
{
    const struct Survey *survey = design->survey;
    const size_t count = (size_t)survey->segment_count;
    design->loaded_runs = arena_array(design->arena, count, sizeof *design->loaded_runs);
    design->coolest_degc = arena_array(design->arena, count, sizeof *design->coolest_degc);
    design->coolest_run = arena_array(design->arena, count, sizeof *design->coolest_run);
    design->idle_holes = arena_array(design->arena, count, sizeof *design->idle_holes);
    design->followers = mechanics_followers(design->arena, survey);
    if (design->loaded_runs == NULL || design->coolest_degc == NULL || design->coolest_run == NULL ||
        design->idle_holes == NULL || design->followers == NULL) {
        return false;
    }
    for (int r = 0; r < survey->run_count; r++) {
        const struct Run *run = &survey->runs[r];
        const double degc = cable_kind(run->cable.type)->insulation_degc;
        for (int i = 0; run->kind == RUN_POWER && i < run->along_count; i++) {
            const int segment = run->along[i];
            const bool first = design->loaded_runs[segment]++ == 0;
            if (first || degc < design->coolest_degc[segment]) {
                design->coolest_degc[segment] = degc;
                design->coolest_run[segment] = r;
            }
        }
    }
    return true;
}

/* Conductor temperature to rate for: the insulation's or the terminals', whichever is lower. Where a power run of
 * cooler insulation lies with it, that stretch is rated for the cooler one (BS 7671 523.5). */
static double rating_degc(const struct Design *design, const struct Run *run)
{
    return fmin(cable_kind(run->cable.type)->insulation_degc, design->survey->conditions.terminals_degc.value);
}

/* A tail or loop counts with its own end's stretch, a leg with the stretch in the ground that it leads to. */
static bool electrical_lengths(const struct Design *design, struct RunDesign *out)
{
    const struct Run *run = out->run;
    double *lengths = arena_array(design->arena, (size_t)run->along_count, sizeof *lengths);
    if (lengths == NULL) {
        return false;
    }
    for (int i = 0; i < run->along_count; i++) {
        lengths[i] = design->survey->segments[run->along[i]].length_m.value + survey_leg_m(design->survey, run, i);
    }
    lengths[0] += run->start.tail_m.value + run->start.loop_m.value;
    lengths[run->along_count - 1] += run->finish.tail_m.value + run->finish.loop_m.value;
    for (int i = 0; i < run->along_count; i++) {
        out->electrical_length_m += lengths[i];
    }
    out->electrical_m = lengths;
    return true;
}

/* For every stretch, the nearest before and after it that is not itself a hole through a wall. */
static bool find_neighbours(const struct Design *design, struct RunDesign *out)
{
    const struct Run *run = out->run;
    int *before = arena_array(design->arena, (size_t)run->along_count, sizeof *before);
    int *after = arena_array(design->arena, (size_t)run->along_count, sizeof *after);
    if (before == NULL || after == NULL) {
        return false;
    }
    int last = -1;
    for (int i = 0; i < run->along_count; i++) {
        before[i] = last;
        last = survey_hole(out->situations[i].way) ? last : i;
    }
    last = -1;
    for (int i = run->along_count - 1; i >= 0; i--) {
        after[i] = last;
        last = survey_hole(out->situations[i].way) ? last : i;
    }
    out->before = before;
    out->after = after;
    return true;
}

/* What the other runs there are, and whether their insulation holds this one down. */
static void add_sharers(const struct Design *design, const struct RunDesign *run, int segment,
                        struct Situation *situation)
{
    situation->others = likeness_of_others(design, run->run, segment);
    situation->own_unlike = design->sharers[segment].unlike;
    if (situation->conductor_degc < run->terms.conductor_degc) {
        situation->cooler_run = design->survey->runs[design->coolest_run[segment]].name;
    }
}

/* What the wall adds to what lies before and after it; NULL: nothing, and without memory. */
static const struct Situation *place_hole(const struct Design *design, const struct RunDesign *run, int index,
                                          double degc, const struct Extent *extent)
{
    const struct Segment *segment = &design->survey->segments[index];
    struct Situation wall;
    if (!place_wall(design->edition, segment, run->kind, degc, extent, &wall)) {
        design->idle_holes[index] = segment->air_degc.given || segment->has_beside;
        return NULL;
    }
    add_sharers(design, run, index, &wall);
    factors_by_size(&run->terms, &wall);
    struct Situation *kept = arena_alloc(design->arena, sizeof *kept);
    if (kept != NULL) {
        *kept = wall;
    }
    return kept;
}

/* Gives what the wall of a hole adds, NULL for nothing. */
static const struct Situation *place_stretch(const struct Design *design, const struct RunDesign *run, int index,
                                             const struct Extent *extent, struct Situation *situation)
{
    const struct Segment *segment = &design->survey->segments[index];
    const double degc = fmin(run->terms.conductor_degc, design->coolest_degc[index]);
    *situation = place_segment(design->edition, segment, run->kind, degc, extent);
    add_sharers(design, run, index, situation);
    factors_by_size(&run->terms, situation);
    return survey_hole(segment->way) ? place_hole(design, run, index, degc, extent) : NULL;
}

static bool place_run(const struct Design *design, struct RunDesign *out)
{
    const struct Run *run = out->run;
    struct Situation *situations = arena_array(design->arena, (size_t)run->along_count, sizeof *situations);
    const struct Situation **walls = arena_array(design->arena, (size_t)run->along_count,
                                                 sizeof *walls); /* NOLINT(bugprone-sizeof-expression): of pointers */
    struct Arena *apart = arena_apart(design->arena);
    struct Extent *extents = arena_array(apart, (size_t)run->along_count, sizeof *extents);
    if (situations == NULL || walls == NULL || extents == NULL) {
        arena_free(apart);
        return false;
    }
    place_extents(design->survey, run, design->loaded_runs, extents);
    for (int i = 0; i < run->along_count; i++) {
        walls[i] = place_stretch(design, out, run->along[i], &extents[i], &situations[i]);
    }
    arena_free(apart);
    out->situations = situations;
    out->walls = walls;
    out->count = run->along_count;
    return !arena_failed(design->arena) && find_neighbours(design, out);
}

static bool is_uncovered(const struct Situation *situation)
{
    return !situation->covered && !survey_hole(situation->way);
}

/* Where a table covers none of the way there is nothing to decide: reports every stretch, not only the first. Else the
 * rest is decided, and the plan is open where one is not covered. */
static bool some_stretch_covered(const struct Design *design, const struct RunDesign *run)
{
    for (int i = 0; i < run->count; i++) {
        if (!is_uncovered(&run->situations[i]) && !survey_hole(run->situations[i].way)) {
            return true;
        }
    }
    bool covered = true;
    for (int i = 0; i < run->count; i++) {
        const struct Situation *situation = &run->situations[i];
        if (!is_uncovered(situation)) {
            continue;
        }
        const struct Segment *segment = &design->survey->segments[run->run->along[i]];
        diag_report(
            design->diag, MSG_NO_CAPACITY_FIGURE, segment->mark, (int)utf8_count(segment->name),
            DIAG_WORDS(segment->name, diag_phrase(situation->lacks->message), diag_phrase(situation->lacks->advice)));
        covered = false;
    }
    return covered;
}

static void describe_lengths(const struct Design *design, const struct Run *run, struct PlanRun *out)
{
    for (int i = 0; i < run->along_count; i++) {
        out->route_length_m += design->survey->segments[run->along[i]].length_m.value;
    }
    out->electrical_length_m = survey_electrical_m(design->survey, run);
    const double with_spare = out->electrical_length_m * (1 + design->survey->parts.spare_cable_percent.value / 100);
    out->order_length_m = (int)ceil(with_spare - 1e-9 * with_spare); /* 78.0000000001 m is 78 m */
}

static bool cable_has_tables(const struct Design *design, const struct Run *run, int phases)
{
    const struct Cable *cable = &run->cable;
    if (cable_kind(cable->type)->family == FAMILY_NONE) {
        diag_report(design->diag, MSG_NO_TABLE_FOR_CABLE, cable->mark, 1,
                    DIAG_WORDS(survey_word(WORDS_CABLE, (int)cable->type)));
        return false;
    }
    if (cable_kind(cable->type)->family == FAMILY_FLAT && phases == 3) {
        diag_report(design->diag, MSG_FLAT_THREE_PHASE, cable->mark, 1, DIAG_NO_WORDS);
        return false;
    }
    return true;
}

static bool loads_on_lines(const struct Design *design, struct RunDesign *out)
{
    const struct Run *run = out->run;
    struct LineLoad *loads = arena_array(design->arena, (size_t)run->load_count, sizeof *loads);
    if (loads == NULL) {
        return false;
    }
    load_on_lines(run, out->phases, out->u0_v, loads);
    out->loads = (struct DropLoads){loads, run->load_count, out->phases, out->u0_v};
    if (out->phases == 3) {
        out->neutral = neutral_of(&out->loads, &out->demand.currents, out->terms.third_harmonic_percent);
    }
    return true;
}

/* Of a run on the same way, of the same cable and on as many lines. */
static void take_places(const struct RunDesign *like, struct RunDesign *out)
{
    out->electrical_m = like->electrical_m;
    out->electrical_length_m = like->electrical_length_m;
    out->situations = like->situations;
    out->walls = like->walls;
    out->before = like->before;
    out->after = like->after;
    out->count = like->count;
}

struct Arena *said_in(struct Arena *arena, const struct RunDesign *run)
{
    return run->unsaid ? NULL : arena;
}

bool design_run_terms(const struct Design *design, const struct Run *run, const struct RunDesign *like,
                      struct RunDesign *out)
{
    const struct Survey *survey = design->survey;
    const int phases = survey_run_phases(&survey->supply, run);
    if (!cable_has_tables(design, run, phases)) {
        return false;
    }
    const double u0_v = survey->supply.voltage_v.value;
    *out = (struct RunDesign){
        .edition = design->edition,
        .unsaid = design->extent != PLAN_WHOLE,
        .run = run,
        .phases = phases,
        .kind = cable_kind(run->cable.type),
        .drop_table = cable_kind(run->cable.type)->drop,
        .demand = load_demand(run, phases, u0_v),
        .drop_before_percent = survey->supply.drop_before_percent.value,
        .drop_limit_percent = run->drop_limit_percent.value,
        .terminals_degc = survey->conditions.terminals_degc.value,
        .terms = {.conductor_degc = rating_degc(design, run),
                  .semi_enclosed = run->device.kind == DEVICE_BS3036,
                  .type = run->cable.type,
                  .cores = run->cable.cores,
                  .diameter_mm = run->cable.diameter_mm.given ? run->cable.diameter_mm.value : 0,
                  .third_harmonic_percent = phases == 3 ? run->third_harmonic_percent.value : 0},
        .segments = survey->segments,
        .survey = design->decided != NULL ? design->decided : survey,
        .followers = design->followers,
    };
    design_fault_terms(survey, out);
    if (!loads_on_lines(design, out) || !device_rating(design, run, out->demand.design_a, &out->rating_a)) {
        return false;
    }
    if (like != NULL && like->phases == phases) {
        take_places(like, out);
        return true;
    }
    return electrical_lengths(design, out) && place_run(design, out) && some_stretch_covered(design, out);
}

static bool design_power_run(const struct Design *design, const struct Run *run, struct RunDesign *work,
                             struct PlanRun *out)
{
    if (!design_run_terms(design, run, NULL, work)) {
        return false;
    }
    warn_of_residual_series(design, run);
    out->rated = true;
    out->rated_for_degc = rating_degc(design, run);
    out->currents = work->demand.currents;
    out->design_current_a = work->demand.design_a;
    out->power_factor = work->demand.power_factor;
    out->device = run->device.kind;
    out->has_curve = run->device.kind == DEVICE_MCB || run->device.kind == DEVICE_RCBO;
    out->curve = run->device.curve;
    out->rating_a = work->rating_a;
    out->device_text = device_said(design->arena, &run->device, work->rating_a,
                                   run->device.residual_a.given ? run->device.residual_a.value : 0);
    device_describe(design, work, out);
    out->drop_table = drop_ref(design->edition, work->drop_table)->table;
    out->drop_limit_percent = work->drop_limit_percent;
    struct RatedSizes rated;
    return choose_size(design, work, out, &rated) &&
           (design->extent == PLAN_FOR_VERDICT || list_alternatives(design, work, rated, out));
}

bool design_size_alone(const struct Design *design, const struct Run *run, double *out_mm2)
{
    const struct Say *because;
    struct RunDesign work;
    const struct Run *settled = device_settle(design, run, &because);
    return settled != NULL && design_run_terms(design, settled, NULL, &work) &&
           choose_size_alone(design, &work, out_mm2);
}

static bool design_run(const struct Design *design, int r, struct PlanRun *out)
{
    const struct Run *run = &design->survey->runs[r];
    out->settled = run;
    out->governing = -1;
    out->drop_table = "";
    describe_lengths(design, run, out);
    describe_legs(design, run, out);
    if (run->kind == RUN_POWER) {
        out->settled = device_settle(design, run, &out->device_because);
        return out->settled != NULL && design_power_run(design, out->settled, &design->works[r], out);
    }
    out->pass = true;
    out->verdict = VERDICT_PASS;
    if (run->cable.size_mm2.given) {
        out->size_mm2 = run->cable.size_mm2.value;
        out->size_was_given = true;
    }
    return true;
}

static struct PlanSegment *lay_out_segments(const struct Design *design, struct Plan *plan)
{
    const struct Survey *survey = design->survey;
    struct PlanSegment *segments = arena_array(design->arena, (size_t)survey->segment_count, sizeof *segments);
    if (segments == NULL) {
        return NULL;
    }
    double at_m = 0;
    for (int i = 0; i < survey->segment_count; i++) {
        const struct Segment *surveyed = &survey->segments[i];
        const int before = survey_before(survey, i);
        const double height_m = before < 0 ? 0 : segments[before].height_to_m;
        segments[i].surveyed = surveyed;
        segments[i].from_m = at_m;
        segments[i].height_from_m = height_m;
        at_m += surveyed->length_m.value;
        segments[i].to_m = at_m;
        segments[i].height_to_m = height_m + surveyed->rise_m.value;
        segments[i].depth_m = survey_in_ground(surveyed->way) ? surveyed->depth_m.value : 0;
        segments[i].unlike_sizes = design->sharers[i].unlike;
    }
    for (int r = 0; r < survey->run_count; r++) {
        for (int i = 0; i < survey->runs[r].along_count; i++) {
            segments[survey->runs[r].along[i]].run_count++;
        }
    }
    plan->segment_count = survey->segment_count;
    plan->segments = segments;
    return segments;
}

static bool design_runs(struct Design *design, struct Plan *plan)
{
    const int count = design->survey->run_count;
    struct PlanRun *runs = arena_array(design->arena, (size_t)count, sizeof *runs);
    design->works = arena_array(design->arena, (size_t)count, sizeof *design->works);
    if (runs == NULL || design->works == NULL || !decided_begin(design) || !warn_of_legs(design)) {
        return false;
    }
    bool whole = true;
    warn_of_island_earth(design);
    for (int r = 0; r < count; r++) {
        whole = design_run(design, r, &runs[r]) && whole; /* report all faults, not only the first */
        decided_size(design, r, runs[r].size_mm2);
    }
    whole = whole && recheck_mechanics(design, runs, count) &&
            (design->extent != PLAN_WHOLE || list_nearest(design, runs, count));
    plan->run_count = count;
    plan->runs = runs;
    return whole;
}

const struct Rating *design_working(struct Arena *arena, const struct Plan *plan, const struct PlanRun *run,
                                    int stretch)
{
    struct Design design = {.edition = plan->edition, .arena = arena, .diag = diag_new(arena), .survey = plan->survey};
    struct Rating *rating = arena_alloc(arena, sizeof *rating);
    struct RunDesign work;
    if (rating == NULL || design.diag == NULL || !look_over_segments(&design)) {
        return NULL;
    }
    likeness_as_planned(&design, plan);
    if (arena_failed(arena) || !design_run_terms(&design, run->settled, NULL, &work)) {
        return NULL;
    }
    const struct Trial trial = rate_size(&work, run->size_mm2);
    rate_with_working(arena, &work, &trial, stretch, rating);
    return arena_failed(arena) ? NULL : rating;
}

const struct Plan *design_plan(struct Arena *arena, struct Diag *diag, const struct Survey *survey, const char *route)
{
    return design_plan_by(edition_held(), PLAN_WHOLE, arena, diag, survey, route);
}

const struct Plan *design_plan_by(const struct Edition *edition, enum PlanExtent extent, struct Arena *arena,
                                  struct Diag *diag, const struct Survey *survey, const char *route)
{
    struct Design design = {.edition = edition, .extent = extent, .arena = arena, .diag = diag, .survey = survey};
    struct Plan *plan = arena_alloc(arena, sizeof *plan);
    if (plan == NULL) {
        return NULL;
    }
    plan->extent = extent;
    plan->route = arena_text(arena, route, strlen(route));
    plan->survey = survey;
    give_edition(arena, edition, plan);
    struct PlanSegment *segments =
        look_over_segments(&design) && likeness_settle(&design) ? lay_out_segments(&design, plan) : NULL;
    if (segments == NULL || !design_runs(&design, plan) ||
        !list_together(&design, plan->runs, plan->run_count, segments)) {
        return NULL;
    }
    give_verdict(arena, plan);
    plan->electrode = electrode_of(arena, edition, survey);
    const bool told = extent != PLAN_WHOLE || (list_assumptions(&design, plan) && list_cautions(&design, plan));
    return told && list_warnings(&design, plan) && !arena_failed(arena) ? plan : NULL;
}
