/* One sum made least. A lower bound is set as target, and the whole tree under it is searched for a plan that costs no
 * more. When there is none, the least bound that was met above the target is the next target: it is proved by then that
 * no plan costs less. The first plan that meets its target is therefore the best there is. */
#include "cutting_private.h"

#include <limits.h>
#include <string.h>

static bool make_search(struct Arena *arena, struct CuttingSearch *search, const struct CuttingCase *problem)
{
    const size_t types = (size_t)problem->type_count, classes = (size_t)problem->class_count;
    *search = (struct CuttingSearch){
        .arena = arena,
        .problem = problem,
        .pool = {.arena = arena},
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
           cutting_bins_make(arena, &search->draft, problem->pieces) &&
           cutting_lp_make(arena, &search->lp, problem, &search->pool);
}

/* The top of the tree, for plans that cost no more than `most_cost`. False when memory failed. */
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
    root->longest = -1;
    root->tried_from = 0;
    search->tried.count = search->tried.used = 0;
    return true;
}

static void search_up(struct CuttingSearch *search, int64_t *bound)
{
    while (search->best_cost > *bound && !search->ended && !arena_failed(search->arena)) {
        *bound = cutting_reach_sum(search->arena, search->problem, *bound, search->best_cost);
        search->target = *bound;
        search->next = cutting_none;
        search->found = false;
        if (*bound >= search->best_cost || !set_root(search, *bound)) {
            return;
        }
        cutting_explore(search, 0);
        if (!search->found && !search->ended) {
            *bound = search->next < search->best_cost ? search->next : search->best_cost;
        }
    }
}

bool cutting_solve(struct Arena *arena, const struct CuttingCase *problem, const struct CuttingBins *start,
                   int64_t most_nodes, struct CuttingAnswer *answer)
{
    struct CuttingSearch search;
    if (!make_search(arena, &search, problem)) {
        return false;
    }
    search.most_nodes = most_nodes;
    if (start != NULL) {
        cutting_bins_copy(&search.draft, start);
        cutting_record(&search);
    }
    cutting_greedy_start(&search);
    const int64_t length_bound = cutting_reach_length(problem);
    int64_t bound = length_bound > problem->bound ? length_bound : problem->bound;
    search_up(&search, &bound);
    *answer = (struct CuttingAnswer){
        .solved = search.best_cost < cutting_none,
        .cost = search.best_cost,
        .bound = bound < search.best_cost ? bound : search.best_cost,
        .bins = search.best,
        .nodes = search.nodes,
    };
    return !arena_failed(arena);
}

bool cutting_quick(struct Arena *arena, const struct CuttingCase *problem, struct CuttingBins *bins)
{
    struct CuttingSearch search;
    if (!make_search(arena, &search, problem)) {
        return false;
    }
    cutting_greedy_start(&search);
    if (search.best_cost == cutting_none) {
        return false;
    }
    cutting_bins_copy(bins, &search.best);
    return true;
}
