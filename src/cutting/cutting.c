/* The order of the sums: least uncut, least bought length, fewest drums, fewest offcuts. Each is made least by a search
 * of its own, with the sums before it as limits and the plan that reached them to begin from. */
#include "cutting_private.h"

#include <string.h>

/* All that the searches of one job share. */
struct Work {
    struct Arena *arena;
    const struct CuttingJob *job;
    struct CuttingKinds kinds;
    struct CuttingClass *classes; /* with the costs of the search at hand */
    struct CuttingCase problem;
    struct CuttingPool pool;
    struct CuttingBins bins; /* the plan so far */
    int *uncut;              /* of each type */
    int64_t mm_in_unit;
    int64_t steps, most_steps;
    bool proved;
};

static bool fault(struct CuttingPlan *plan, enum CuttingFault kind, int index)
{
    plan->fault = kind;
    plan->fault_index = index;
    return false;
}

static bool length_good(int length_mm)
{
    return length_mm >= 1 && length_mm <= CUTTING_LENGTH_MOST_MM;
}

static bool check_job(const struct CuttingJob *job, struct CuttingPlan *plan)
{
    if (job->piece_count < 0 || job->piece_count > CUTTING_PIECES_MOST || job->stock_count < 0 ||
        job->stock_count > CUTTING_STOCK_MOST || job->offcut_count < 0 || job->offcut_count > CUTTING_OFFCUTS_MOST) {
        return fault(plan, CUTTING_TOO_MANY, 0);
    }
    if (job->most_steps < 0) {
        return fault(plan, CUTTING_NEGATIVE_STEPS, 0);
    }
    for (int i = 0; i < job->piece_count; i++) {
        if (!length_good(job->pieces[i].length_mm)) {
            return fault(plan, CUTTING_PIECE_LENGTH, i);
        }
    }
    for (int i = 0; i < job->stock_count; i++) {
        const struct CuttingStock *stock = &job->stock[i];
        if (!length_good(stock->length_mm)) {
            return fault(plan, CUTTING_STOCK_LENGTH, i);
        }
        if ((stock->available < 0 && stock->available != CUTTING_UNLIMITED) ||
            (stock->price < 0 && stock->price != CUTTING_PRICE_UNKNOWN)) {
            return fault(plan, CUTTING_STOCK_COUNT, i);
        }
    }
    for (int i = 0; i < job->offcut_count; i++) {
        if (!length_good(job->offcuts[i].length_mm)) {
            return fault(plan, CUTTING_OFFCUT_LENGTH, i);
        }
    }
    return true;
}

static int64_t common_divisor(int64_t a, int64_t b)
{
    while (b != 0) {
        const int64_t rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

/* What one search may take: three quarters of the steps that are left, so that later sums have some too. */
static int64_t share_of_steps(const struct Work *work)
{
    const int64_t left = work->most_steps - work->steps;
    return left > 0 ? left - left / 4 : 0;
}

/* Runs one search and keeps its plan. *bound: the proved bound, in units of the cost. False when memory failed. */
static bool run(struct Work *work, int64_t *bound)
{
    struct CuttingAnswer answer;
    if (!cutting_solve(work->arena, &work->problem, &work->bins, &work->pool, share_of_steps(work), &answer)) {
        return false;
    }
    work->steps += answer.steps;
    cutting_bins_copy(&work->bins, &answer.bins);
    work->proved = work->proved && answer.bound >= answer.cost;
    *bound = answer.bound;
    return true;
}

/* A bin for each piece alone, from a class that costs what the piece is long: what such a bin holds stays uncut. */
static bool set_uncut_case(struct Work *work, struct CuttingCase *problem)
{
    const struct CuttingKinds *kinds = &work->kinds;
    const int types = kinds->type_count;
    struct CuttingClass *classes =
        arena_array(work->arena, (size_t)types + (size_t)kinds->class_count, sizeof *classes);
    if (classes == NULL) {
        return false;
    }
    int64_t unit = 0;
    for (int type = 0; type < types; type++) {
        unit = common_divisor(unit, kinds->length_mm[type]);
    }
    unit = unit > 0 ? unit : 1;
    for (int type = 0; type < types; type++) {
        classes[type] = (struct CuttingClass){.length_mm = kinds->length_mm[type],
                                              .most = kinds->wanted[type],
                                              .bought = true,
                                              .cost = kinds->length_mm[type] / unit};
    }
    for (int c = 0; c < kinds->class_count; c++) {
        classes[types + c] = kinds->classes[c];
        classes[types + c].bought = false;
    }
    *problem = work->problem;
    problem->classes = classes;
    problem->class_count = types + kinds->class_count;
    problem->mm_in_unit = unit;
    return true;
}

/* Takes what the stand-in bins hold off the job, and the rest over as the plan so far. */
static void take_uncut(struct Work *work, const struct CuttingBins *bins)
{
    const int types = work->kinds.type_count;
    work->bins.count = work->bins.entries = 0;
    for (int bin = 0; bin < bins->count; bin++) {
        const bool stands_in = bins->class_index[bin] < types;
        if (!stands_in) {
            cutting_bins_open(&work->bins, bins->class_index[bin] - types);
        }
        for (int e = bins->start[bin]; e < cutting_bins_end(bins, bin); e++) {
            if (stands_in) {
                work->uncut[bins->type[e]] += bins->copies[e];
            } else {
                cutting_bins_put(&work->bins, bins->type[e], bins->copies[e]);
            }
        }
    }
}

/* Pieces less those uncut, as the case of the later sums; types of which none is left stay, with none wanted. */
static bool set_wanted(struct Work *work)
{
    int *wanted = arena_array(work->arena, (size_t)work->kinds.type_count + 1, sizeof *wanted);
    if (wanted == NULL) {
        return false;
    }
    work->problem.pieces = 0;
    for (int type = 0; type < work->kinds.type_count; type++) {
        wanted[type] = work->kinds.wanted[type] - work->uncut[type];
        work->problem.pieces += wanted[type];
    }
    work->problem.wanted = wanted;
    return true;
}

/* First sum: nothing stays uncut where the quick rules find room for all; else the search decides. */
static bool least_uncut(struct Work *work, struct CuttingPlan *plan)
{
    if (cutting_quick(work->arena, &work->problem, &work->bins)) {
        return true;
    }
    struct CuttingCase problem;
    struct CuttingAnswer answer;
    struct CuttingPool pool = {.arena = work->arena};
    if (arena_failed(work->arena) || !set_uncut_case(work, &problem) ||
        !cutting_solve(work->arena, &problem, NULL, &pool, share_of_steps(work), &answer)) {
        return false;
    }
    work->steps += answer.steps;
    work->proved = answer.bound >= answer.cost;
    plan->bound_uncut_mm = answer.bound * problem.mm_in_unit;
    take_uncut(work, &answer.bins);
    return set_wanted(work);
}

static bool least_bought(struct Work *work, struct CuttingPlan *plan)
{
    work->mm_in_unit = 0;
    for (int c = 0; c < work->kinds.class_count; c++) {
        if (work->classes[c].bought) {
            work->mm_in_unit = common_divisor(work->mm_in_unit, work->classes[c].length_mm);
        }
    }
    work->mm_in_unit = work->mm_in_unit > 0 ? work->mm_in_unit : 1;
    work->problem.mm_in_unit = work->mm_in_unit;
    for (int c = 0; c < work->kinds.class_count; c++) {
        work->classes[c].cost = work->classes[c].bought ? work->classes[c].length_mm / work->mm_in_unit : 0;
    }
    int64_t bound;
    if (!run(work, &bound)) {
        return false;
    }
    plan->bound_mm = bound * work->mm_in_unit;
    return true;
}

/* What the plan so far takes of a cost that `work->classes` holds. */
static int64_t sum_of(const struct Work *work)
{
    int64_t sum = 0;
    for (int bin = 0; bin < work->bins.count; bin++) {
        sum += work->classes[work->bins.class_index[bin]].cost;
    }
    return sum;
}

/* The sum just made least becomes a limit. */
static void hold_sum(struct Work *work)
{
    const int side = work->problem.side_count++;
    work->problem.side_most[side] = sum_of(work);
    for (int c = 0; c < work->kinds.class_count; c++) {
        work->classes[c].side[side] = work->classes[c].cost;
    }
}

/* The next sum counts bins: bought ones, or offcuts. */
static bool fewest(struct Work *work, bool bought, int *bound)
{
    int64_t found = 0;
    hold_sum(work);
    for (int c = 0; c < work->kinds.class_count; c++) {
        work->classes[c].cost = work->classes[c].bought == bought ? 1 : 0;
    }
    /* Where the length bought is the least there is, every plan within it buys exactly that. */
    work->problem.fills_first = bought && work->proved;
    if (sum_of(work) > 0 && !run(work, &found)) {
        return false;
    }
    *bound = (int)found;
    return true;
}

static bool start(struct Work *work)
{
    const struct CuttingJob *job = work->job;
    if (!cutting_kinds(work->arena, job, &work->kinds)) {
        return false;
    }
    const size_t classes = (size_t)work->kinds.class_count;
    work->classes = arena_array(work->arena, classes + 1, sizeof *work->classes);
    work->uncut = arena_array(work->arena, (size_t)work->kinds.type_count + 1, sizeof *work->uncut);
    if (arena_failed(work->arena) || !cutting_bins_make(work->arena, &work->bins, work->kinds.pieces)) {
        return false;
    }
    memcpy(work->classes, work->kinds.classes, classes * sizeof *work->classes);
    work->problem = (struct CuttingCase){
        .type_count = work->kinds.type_count,
        .length_mm = work->kinds.length_mm,
        .wanted = work->kinds.wanted,
        .pieces = work->kinds.pieces,
        .class_count = work->kinds.class_count,
        .classes = work->classes,
        .mm_in_unit = 1,
    };
    work->most_steps = job->most_steps > 0 ? job->most_steps : CUTTING_STEPS_USUAL;
    work->proved = true;
    return true;
}

const struct CuttingPlan *cutting_plan(struct Arena *arena, const struct CuttingJob *job)
{
    struct CuttingPlan *plan = arena_alloc(arena, sizeof *plan);
    if (plan == NULL || !check_job(job, plan)) {
        return plan;
    }
    struct Work work = {.arena = arena, .job = job, .pool = {.arena = arena}};
    if (!start(&work)) {
        return NULL;
    }
    if (work.problem.pieces > 0 &&
        (!least_uncut(&work, plan) || !least_bought(&work, plan) || !fewest(&work, true, &plan->bound_drums) ||
         !fewest(&work, false, &plan->bound_offcuts))) {
        return NULL;
    }
    if (!cutting_result(arena, job, &work.kinds, &work.bins, work.uncut, plan)) {
        return NULL;
    }
    plan->impossible = work.kinds.impossible;
    plan->impossible_count = work.kinds.impossible_count;
    plan->steps = work.steps;
    plan->proved = work.proved;
    return arena_failed(arena) ? NULL : plan;
}
