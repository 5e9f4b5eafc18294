/* The tree. A node leaves pieces to cut and says how many bins of each class may be opened. Where the linear programme
 * opens a broken number of bins of a class that counts, two nodes follow: no more than its whole part, and at least one
 * more. Where all are whole, the longest piece left must lie in some bin: one node for each way to fill that bin, those
 * that the programme uses first. A node whose bound is above the target is dropped. */
#include "cutting_private.h"

#include <math.h>
#include <string.h>

static bool make_level(struct CuttingSearch *search, struct CuttingLevel *level)
{
    const size_t types = (size_t)search->problem->type_count, classes = (size_t)search->problem->class_count;
    level->share_room = search->lp.rows_room;
    level->wanted = arena_array(search->arena, types, sizeof *level->wanted);
    level->type = arena_array(search->arena, types, sizeof *level->type);
    level->copies = arena_array(search->arena, types, sizeof *level->copies);
    level->filling = arena_array(search->arena, types, sizeof *level->filling);
    level->rest_mm = arena_array(search->arena, types + 1, sizeof *level->rest_mm);
    level->low = arena_array(search->arena, classes, sizeof *level->low);
    level->high = arena_array(search->arena, classes, sizeof *level->high);
    level->share_pattern = arena_array(search->arena, (size_t)level->share_room, sizeof *level->share_pattern);
    level->share = arena_array(search->arena, (size_t)level->share_room, sizeof *level->share);
    return !arena_failed(search->arena);
}

struct CuttingLevel *cutting_level(struct CuttingSearch *search, int depth)
{
    if (depth >= search->level_room) {
        const int room = 2 * depth + 64;
        struct CuttingLevel **levels = arena_array(search->arena, (size_t)room, sizeof(struct CuttingLevel *));
        if (levels == NULL) {
            return NULL;
        }
        if (search->level_room > 0) {
            memcpy(levels, search->levels, (size_t)search->level_room * sizeof(struct CuttingLevel *));
        }
        search->levels = levels;
        search->level_room = room;
    }
    if (search->levels[depth] == NULL) {
        struct CuttingLevel *level = arena_alloc(search->arena, sizeof *level);
        if (level == NULL || !make_level(search, level)) {
            return NULL;
        }
        search->levels[depth] = level;
    }
    return search->levels[depth];
}

void cutting_draft_path(struct CuttingSearch *search, int depth)
{
    search->draft.count = search->draft.entries = 0;
    for (int d = 0; d <= depth; d++) {
        const struct CuttingLevel *level = search->levels[d];
        if (level->fixed) {
            cutting_bins_open(&search->draft, level->class_index);
            for (int e = 0; e < level->entries; e++) {
                cutting_bins_put(&search->draft, level->type[e], level->copies[e]);
            }
        }
    }
}

/* The bins of the best plan as patterns: the linear programme then begins with a plan that it can mend. */
static void pool_best(struct CuttingSearch *search)
{
    const size_t types = (size_t)search->problem->type_count;
    const struct CuttingBins *bins = &search->best;
    for (int bin = 0; bin < bins->count; bin++) {
        memset(search->pattern, 0, types * sizeof *search->pattern);
        for (int e = bins->start[bin]; e < cutting_bins_end(bins, bin); e++) {
            search->pattern[bins->type[e]] += bins->copies[e];
        }
        cutting_pool_new(search->pool, bins->class_index[bin], search->problem->type_count, search->pattern);
    }
}

void cutting_record(struct CuttingSearch *search)
{
    const int64_t cost = cutting_bins_cost(&search->draft, search->problem, search->scratch_types);
    if (cost < search->best_cost) {
        search->best_cost = cost;
        cutting_bins_copy(&search->best, &search->draft);
        pool_best(search);
    }
    search->found = search->found || search->best_cost <= search->target;
}

void cutting_spend(struct CuttingSearch *search, int64_t effort)
{
    search->effort += effort + search->lp.effort;
    search->lp.effort = 0;
    search->steps += search->effort / CUTTING_EFFORT_IN_STEP;
    search->effort %= CUTTING_EFFORT_IN_STEP;
    search->ended = search->ended || search->steps > search->most_steps || arena_failed(search->arena);
}

/* The level below, with the same left to do and nothing known; NULL when memory failed. */
static struct CuttingLevel *copy_down(struct CuttingSearch *search, int depth)
{
    struct CuttingLevel *to = cutting_level(search, depth + 1);
    if (to == NULL) {
        return NULL;
    }
    const struct CuttingLevel *from = search->levels[depth];
    memcpy(to->wanted, from->wanted, (size_t)search->problem->type_count * sizeof *to->wanted);
    memcpy(to->low, from->low, (size_t)search->problem->class_count * sizeof *to->low);
    memcpy(to->high, from->high, (size_t)search->problem->class_count * sizeof *to->high);
    memcpy(to->side_left, from->side_left, sizeof to->side_left);
    to->spent = from->spent;
    to->left = from->left;
    to->left_mm = from->left_mm;
    to->share_count = from->share_count;
    memcpy(to->share_pattern, from->share_pattern, (size_t)from->share_count * sizeof *to->share_pattern);
    memcpy(to->share, from->share, (size_t)from->share_count * sizeof *to->share);
    to->fixed = false;
    to->known = false;
    to->tried_from = from->tried_from;
    to->longest = from->longest;
    return to;
}

struct CuttingLevel *cutting_descend(struct CuttingSearch *search, int depth, int class_index,
                                     const int *copies_of_type)
{
    const struct CuttingCase *problem = search->problem;
    const struct CuttingClass *class = &problem->classes[class_index];
    struct CuttingLevel *level = copy_down(search, depth);
    if (level == NULL || level->high[class_index] == 0) {
        return NULL;
    }
    level->high[class_index]--;
    level->low[class_index] -= level->low[class_index] > 0 ? 1 : 0;
    level->spent += class->cost;
    for (int side = 0; side < problem->side_count; side++) {
        level->side_left[side] -= class->side[side];
        if (level->side_left[side] < 0) {
            return NULL;
        }
    }
    level->fixed = true;
    level->class_index = class_index;
    level->entries = 0;
    for (int type = 0; type < problem->type_count; type++) {
        if (copies_of_type[type] > 0) {
            level->type[level->entries] = type;
            level->copies[level->entries++] = copies_of_type[type];
            level->wanted[type] -= copies_of_type[type];
            level->left -= copies_of_type[type];
            level->left_mm -= (int64_t)copies_of_type[type] * problem->length_mm[type];
        }
    }
    return level;
}

/* Bins of the class that the programme opens. */
static double opened(const struct CuttingSearch *search, const struct CuttingLevel *level, int class_index)
{
    double sum = 0;
    for (int i = 0; i < level->share_count; i++) {
        const int pattern = level->share_pattern[i];
        sum += (pattern < 0 ? -1 - pattern : search->pool->patterns[pattern].class_index) == class_index
                   ? level->share[i]
                   : 0;
    }
    return sum;
}

/* The class that counts and whose number is most broken, or -1. *whole: its whole part. */
static int broken_class(const struct CuttingSearch *search, const struct CuttingLevel *level, int *whole)
{
    const struct CuttingCase *problem = search->problem;
    double most = 1e-5;
    int chosen = -1;
    for (int c = 0; c < problem->class_count; c++) {
        const struct CuttingClass *class = &problem->classes[c];
        if (class->cost == 0 && class->side[0] == 0 && class->side[1] == 0) {
            continue;
        }
        const double number = opened(search, level, c);
        const double broken = fmin(number - floor(number), ceil(number) - number);
        if (broken > most && level->low[c] <= floor(number) && floor(number) < level->high[c]) {
            most = broken;
            chosen = c;
            *whole = (int)floor(number);
        }
    }
    return chosen;
}

static void branch_on_class(struct CuttingSearch *search, int depth, int class_index, int whole)
{
    for (int more = 1; more >= 0 && !search->found && !search->ended; more--) {
        struct CuttingLevel *level = copy_down(search, depth);
        if (level == NULL) {
            return;
        }
        if (more == 1) {
            level->low[class_index] = whole + 1;
        } else {
            level->high[class_index] = whole;
        }
        cutting_search_node(search, depth + 1);
    }
}

/* Whether the least numbers of bins alone break a limit or the target. */
static bool least_breaks(struct CuttingSearch *search, const struct CuttingLevel *level)
{
    const struct CuttingCase *problem = search->problem;
    int64_t cost = level->spent;
    int64_t side[CUTTING_SIDES] = {0};
    for (int c = 0; c < problem->class_count; c++) {
        cost += level->low[c] * problem->classes[c].cost;
        for (int s = 0; s < problem->side_count; s++) {
            side[s] += level->low[c] * problem->classes[c].side[s];
        }
    }
    for (int s = 0; s < problem->side_count; s++) {
        if (side[s] > level->side_left[s]) {
            return true;
        }
    }
    if (cost > search->target && cost < search->next) {
        search->next = cost;
    }
    return cost > search->target;
}

/* The share of a pattern falls by one where the step to this level cut it: the rest of the answer then still stands. */
static void branch_on_filling(struct CuttingSearch *search, int depth)
{
    struct CuttingLevel *level = search->levels[depth];
    int longest = 0;
    while (level->wanted[longest] == 0) {
        longest++;
    }
    const int tried = search->tried.count, used = search->tried.used;
    if (level->longest != longest) {
        level->longest = longest;
        level->tried_from = tried;
    }
    cutting_try_fillings(search, depth);
    search->tried.count = tried;
    search->tried.used = used;
}

/* What needs no linear programme to be seen: too little length in stock, or too many bins to be opened. */
static bool out_of_reach(struct CuttingSearch *search, const struct CuttingLevel *level)
{
    const int64_t slack_mm = cutting_slack_mm(search, level);
    if (slack_mm < 0) {
        cutting_miss(search, -slack_mm);
        return true;
    }
    return least_breaks(search, level);
}

/* Asks the linear programme; true also when its answer, rounded, is a plan that meets the target. */
static bool bound_out_of_reach(struct CuttingSearch *search, int depth)
{
    const int64_t bound = cutting_bound(search, search->levels[depth], depth == 0);
    if (bound > search->target) {
        search->next = bound < search->next ? bound : search->next;
        return true;
    }
    if (!search->problem->no_quick_plans) {
        cutting_greedy_round(search, depth);
    }
    return search->found;
}

void cutting_search_node(struct CuttingSearch *search, int depth)
{
    struct CuttingLevel *level = search->levels[depth];
    cutting_spend(search, CUTTING_EFFORT_IN_STEP);
    if (search->ended) {
        return;
    }
    if (level->left == 0) {
        cutting_draft_path(search, depth);
        cutting_record(search);
        return;
    }
    if (!level->known &&
        (out_of_reach(search, level) || (!search->problem->no_programme && bound_out_of_reach(search, depth)))) {
        return;
    }
    int whole = 0;
    const int class_index = broken_class(search, level, &whole);
    if (class_index >= 0) {
        branch_on_class(search, depth, class_index, whole);
    } else {
        branch_on_filling(search, depth);
    }
}
