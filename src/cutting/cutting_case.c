/* One sum made least. A lower bound is set as target, and the whole tree under it is searched for a plan that costs no
 * more. When there is none, the least bound that was met above the target is the next target: it is proved by then that
 * no plan costs less. The first plan that meets its target is therefore the best there is. */
#include "cutting_private.h"

#include <limits.h>
#include <string.h>

static bool make_search(struct Arena *arena, struct CuttingSearch *search, const struct CuttingCase *problem,
                        struct CuttingPool *pool)
{
    const size_t types = (size_t)problem->type_count, classes = (size_t)problem->class_count;
    *search = (struct CuttingSearch){
        .arena = arena,
        .problem = problem,
        .pool = pool,
        .tried = {.arena = arena},
        .scratch_types = arena_array(arena, types, sizeof *search->scratch_types),
        .scratch_classes = arena_array(arena, classes, sizeof *search->scratch_classes),
        .pattern = arena_array(arena, types, sizeof *search->pattern),
        .worth = arena_array(arena, types, sizeof *search->worth),
        .knapsack.items = arena_array(arena, types, sizeof *search->knapsack.items),
        .best_cost = cutting_none,
        .target = -1,
    };
    int64_t dearest = 1;
    for (int c = 0; c < problem->class_count; c++) {
        dearest = problem->classes[c].cost > dearest ? problem->classes[c].cost : dearest;
    }
    search->cost_unit = (double)dearest;
    return !arena_failed(arena) && cutting_bins_make(arena, &search->best, problem->pieces) &&
           cutting_bins_make(arena, &search->draft, problem->pieces);
}

/* The top of the tree, for all plans that cost no more than `most_cost`. False when memory failed. */
static bool set_root(struct CuttingSearch *search, int64_t most_cost)
{
    const struct CuttingCase *problem = search->problem;
    struct CuttingLevel *root = cutting_level(search, 0);
    if (root == NULL) {
        return false;
    }
    memcpy(root->wanted, problem->wanted, (size_t)problem->type_count * sizeof *root->wanted);
    for (int c = 0; c < problem->class_count; c++) {
        const struct CuttingClass *class = &problem->classes[c];
        int64_t most = class->most;
        if (class->cost > 0 && most_cost / class->cost < most) {
            most = most_cost / class->cost;
        }
        for (int side = 0; side < problem->side_count; side++) {
            if (class->side[side] > 0 && problem->side_most[side] / class->side[side] < most) {
                most = problem->side_most[side] / class->side[side];
            }
        }
        root->low[c] = 0;
        root->high[c] = (int)most;
    }
    memcpy(root->side_left, problem->side_most, sizeof root->side_left);
    root->spent = 0;
    root->left = problem->pieces;
    root->left_mm = 0;
    for (int type = 0; type < problem->type_count; type++) {
        root->left_mm += (int64_t)problem->wanted[type] * problem->length_mm[type];
    }
    root->fixed = root->known = false;
    root->share_count = 0;
    root->longest = -1;
    root->tried_from = 0;
    search->tried.count = search->tried.used = 0;
    return true;
}

/* Sets the first target; false when memory failed. */
static bool first_bound(struct CuttingSearch *search, int64_t *bound)
{
    const struct CuttingCase *problem = search->problem;
    const int64_t most = problem->side_count > 0 ? problem->side_most[0] : search->best_cost;
    if (!cutting_reach_make(search->arena, problem, most, &search->reach)) {
        return false;
    }
    *bound = cutting_reach_length(problem);
    if (problem->fills_first && search->reach.most == most && search->reach.fewest[most] > *bound) {
        *bound = search->reach.fewest[most];
    }
    return true;
}

/* Searches the tree for a plan of at most `target`, in no more than `most_steps` steps. False when the steps ran out;
 * else a better plan was found or the bound has risen. */
static bool look_for(struct CuttingSearch *search, int64_t target, int64_t most_steps, int64_t *bound)
{
    search->target = target;
    search->next = cutting_none;
    search->found = search->ended = false;
    search->most_steps = most_steps;
    /* The tree leaves out plans no better than the best, but not those above the target: bounds must hold for them. */
    if (!set_root(search, search->best_cost - 1)) {
        return false;
    }
    cutting_search_node(search, 0);
    if (!search->found && !search->ended) {
        *bound = search->next < search->best_cost ? search->next : search->best_cost;
    }
    return !search->ended;
}

/* What only the tree needs; false when memory failed, or would be too much for lengths as many as these. */
static bool make_tree(struct CuttingSearch *search)
{
    const struct CuttingCase *problem = search->problem;
    return problem->type_count + problem->class_count <= CUTTING_KINDS_MOST &&
           cutting_lp_make(search->arena, &search->lp, problem, search->pool);
}

/* The lowest target first; where that takes long a plan half way or just better than the best is looked for, and then
 * the lowest again with all the steps that are left. */
static void search_up(struct CuttingSearch *search, int64_t most_steps, int64_t *bound)
{
    const bool by_length = search->problem->side_count == 0;
    bool ready = false;
    while (search->best_cost > *bound && search->steps < most_steps && !arena_failed(search->arena)) {
        *bound = by_length ? cutting_reach_sum(&search->reach, *bound) : *bound;
        search->target = *bound;
        if (search->best_cost <= *bound) {
            return;
        }
        if (!ready && !make_tree(search)) {
            return;
        }
        ready = true;
        const int64_t best = search->best_cost < cutting_none ? search->best_cost : *bound + 1;
        const int64_t targets[] = {*bound, *bound + (best - *bound) / 2, best - 1, *bound};
        for (int try = 0; try < 4; try++) {
            const int64_t left = most_steps - search->steps;
            if (try > 0 && try < 3 && targets[try] <= targets[try - 1]) {
                continue;
            }
            if (look_for(search, targets[try], search->steps + (try == 3 ? left : left / 6 + 1), bound)) {
                break;
            }
        }
    }
}

bool cutting_solve(struct Arena *arena, const struct CuttingCase *problem, const struct CuttingBins *start,
                   struct CuttingPool *pool, int64_t most_steps, struct CuttingAnswer *answer)
{
    struct CuttingSearch search;
    int64_t bound = 0;
    if (!make_search(arena, &search, problem, pool)) {
        return false;
    }
    if (start != NULL) {
        cutting_bins_copy(&search.draft, start);
        cutting_record(&search);
    }
    if (!problem->no_quick_plans) {
        cutting_greedy_start(&search);
    }
    if (!first_bound(&search, &bound)) {
        return false;
    }
    search_up(&search, most_steps, &bound);
    *answer = (struct CuttingAnswer){
        .solved = search.best_cost < cutting_none,
        .cost = search.best_cost,
        .bound = bound < search.best_cost ? bound : search.best_cost,
        .bins = search.best,
        .steps = search.steps,
    };
    return !arena_failed(arena);
}

bool cutting_quick(struct Arena *arena, const struct CuttingCase *problem, struct CuttingBins *bins)
{
    struct CuttingSearch search;
    struct CuttingPool pool = {.arena = arena};
    if (!make_search(arena, &search, problem, &pool)) {
        return false;
    }
    cutting_greedy_start(&search);
    if (search.best_cost == cutting_none) {
        return false;
    }
    cutting_bins_copy(bins, &search.best);
    return true;
}
