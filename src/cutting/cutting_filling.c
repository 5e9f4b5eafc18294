/* Every way worth trying to fill the bin that holds the longest piece left.
 *
 * Worth trying means: no other piece still to be cut fits into what stays over, and none fits in place of a shorter one
 * that is in it. Any plan can be changed, piece for piece and without another bin, until that is so. A way that was
 * tried before, here or higher up while the same length was the longest left, need not be tried again: bins have no
 * order. Ways that leave more over than the target can bear are passed over, and the bound remembers by how much. */
#include "cutting_private.h"

#include <limits.h>
#include <string.h>

enum { TAKE_EFFORT = 2000 };

struct Filling {
    struct CuttingSearch *search;
    struct CuttingLevel *level;
    int depth, class_index;
    int64_t slack_mm; /* that may stay over */
};

int64_t cutting_slack_mm(const struct CuttingSearch *search, const struct CuttingLevel *level)
{
    const struct CuttingCase *problem = search->problem;
    int64_t bought_mm = 0, free_mm = 0;
    for (int c = 0; c < problem->class_count; c++) {
        const struct CuttingClass *class = &problem->classes[c];
        *(class->bought ? &bought_mm : &free_mm) += (int64_t)level->high[c] * class->length_mm;
    }
    const int64_t units = problem->side_count > 0 ? level->side_left[0] : search->target - level->spent;
    const int64_t payable_mm = units < bought_mm / problem->mm_in_unit ? units * problem->mm_in_unit : bought_mm;
    return payable_mm + free_mm - level->left_mm;
}

void cutting_miss(struct CuttingSearch *search, int64_t short_mm)
{
    if (search->problem->side_count == 0) {
        const int64_t units = (short_mm + search->problem->mm_in_unit - 1) / search->problem->mm_in_unit;
        const int64_t bound = search->target + (units > 0 ? units : 1);
        search->next = bound < search->next ? bound : search->next;
    }
}

/* The programme's answer goes on to the level below, less the one bin that was cut by pattern `share`. */
static void hand_down(struct CuttingLevel *to, int share)
{
    to->share[share] -= 1;
    to->known = true;
}

/* Explores the filling that stands in level->filling. `share`: the share it came from, or -1. */
static void try_filling(struct CuttingSearch *search, int depth, int class_index, int share)
{
    const int types = search->problem->type_count;
    struct CuttingLevel *level = search->levels[depth];
    for (int t = level->tried_from; t < search->tried.count; t++) {
        if (cutting_pool_same(&search->tried, t, class_index, types, level->filling)) {
            return;
        }
    }
    struct CuttingLevel *below = cutting_descend(search, depth, class_index, level->filling);
    if (below != NULL) {
        if (share >= 0 && level->share[share] >= 1 - 1e-7) {
            hand_down(below, share);
        }
        cutting_search_node(search, depth + 1);
    }
    /* Only now: below it the same filling may be used again. */
    cutting_pool_add(&search->tried, class_index, types, level->filling);
}

/* Puts the pattern into level->filling and fills up what stays over. False when the longest piece is not in it. */
static bool fill_up(const struct CuttingSearch *search, struct CuttingLevel *level, int pattern_index)
{
    const struct CuttingCase *problem = search->problem;
    const struct CuttingPattern *pattern = &search->pool->patterns[pattern_index];
    memset(level->filling, 0, (size_t)problem->type_count * sizeof *level->filling);
    int left_mm = problem->classes[pattern->class_index].length_mm;
    for (int e = pattern->start; e < pattern->start + pattern->entries; e++) {
        const int type = search->pool->type[e];
        const int copies =
            search->pool->copies[e] < level->wanted[type] ? search->pool->copies[e] : level->wanted[type];
        level->filling[type] = copies;
        left_mm -= copies * problem->length_mm[type];
    }
    if (level->filling[level->longest] == 0) {
        return false;
    }
    for (int type = 0; type < problem->type_count; type++) {
        const int fit = left_mm / problem->length_mm[type], free = level->wanted[type] - level->filling[type];
        const int more = fit < free ? fit : free;
        level->filling[type] += more;
        left_mm -= more * problem->length_mm[type];
    }
    return true;
}

/* The fillings that the linear programme uses, the largest share first. */
static void try_shares(struct CuttingSearch *search, int depth)
{
    struct CuttingLevel *level = search->levels[depth];
    double below = 1e30;
    int after = -1; /* of equal shares the first comes first */
    for (int n = 0; n < level->share_count && !search->found && !search->ended; n++) {
        int next = -1;
        for (int i = 0; i < level->share_count; i++) {
            const bool later = level->share[i] < below || (level->share[i] <= below && i > after);
            if (later && (next < 0 || level->share[i] > level->share[next])) {
                next = i;
            }
        }
        if (next < 0) {
            return;
        }
        below = level->share[next];
        after = next;
        const int pattern = level->share_pattern[next];
        if (pattern >= 0 && below > 1e-6 && fill_up(search, level, pattern)) {
            try_filling(search, depth, search->pool->patterns[pattern].class_index, next);
        }
    }
}

/* Takes from `type` on. What stays over must be below `limit_mm`; `leave_mm` is the shortest piece before `type` of
 * which one is not in the bin. */
static void fill_from(const struct Filling *filling, int type, int left_mm, int limit_mm, int leave_mm)
{
    struct CuttingSearch *search = filling->search;
    const struct CuttingCase *problem = search->problem;
    struct CuttingLevel *level = filling->level;
    while (type < problem->type_count && (level->wanted[type] == 0 || problem->length_mm[type] > left_mm)) {
        leave_mm = level->wanted[type] > 0 ? problem->length_mm[type] : leave_mm;
        type++;
    }
    cutting_spend(search, TAKE_EFFORT);
    const int64_t over_mm = left_mm - level->rest_mm[type];
    if (search->ended || search->found || over_mm >= limit_mm) {
        return;
    }
    if (over_mm > filling->slack_mm) {
        cutting_miss(search, over_mm - filling->slack_mm);
        return;
    }
    if (type == problem->type_count) {
        try_filling(search, filling->depth, filling->class_index, -1);
        return;
    }
    const int length_mm = problem->length_mm[type], wanted = level->wanted[type];
    const int fit = left_mm / length_mm;
    for (int take = fit < wanted ? fit : wanted; take >= (type == level->longest ? 1 : 0); take--) {
        int limit = take > 0 && leave_mm - length_mm < limit_mm ? leave_mm - length_mm : limit_mm;
        limit = take < wanted && length_mm < limit ? length_mm : limit;
        level->filling[type] = take;
        fill_from(filling, type + 1, left_mm - take * length_mm, limit, take < wanted ? length_mm : leave_mm);
    }
    level->filling[type] = 0;
}

void cutting_try_fillings(struct CuttingSearch *search, int depth)
{
    const struct CuttingCase *problem = search->problem;
    struct CuttingLevel *level = search->levels[depth];
    try_shares(search, depth);
    level->rest_mm[problem->type_count] = 0;
    for (int type = problem->type_count - 1; type >= 0; type--) {
        level->rest_mm[type] = level->rest_mm[type + 1] + (int64_t)level->wanted[type] * problem->length_mm[type];
    }
    memset(level->filling, 0, (size_t)problem->type_count * sizeof *level->filling);
    for (int c = 0; c < problem->class_count && !search->found && !search->ended; c++) {
        if (level->high[c] > 0 && problem->classes[c].length_mm >= problem->length_mm[level->longest]) {
            const struct Filling filling = {search, level, depth, c, cutting_slack_mm(search, level)};
            fill_from(&filling, level->longest, problem->classes[c].length_mm, INT_MAX, INT_MAX);
        }
    }
}
