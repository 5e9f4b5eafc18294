/* Bounds that need no patterns: how much length the pieces need at least, and which sums whole bins can come to. They
 * cost next to nothing, and where there are many pieces to a drum they often are the answer. */
#include "cutting_private.h"

/* Larger tables are not made; the bounds then are weaker, never wrong. */
enum { REACH_STEPS_MOST = 10000000 };

/* Length that costs nothing: all bins without cost, bought ones as far as the first side limit pays for them. */
static int64_t free_mm(const struct CuttingCase *problem)
{
    int64_t sum_mm = 0, bought_mm = 0;
    for (int c = 0; c < problem->class_count; c++) {
        const struct CuttingClass *class = &problem->classes[c];
        if (class->cost == 0) {
            *(class->bought ? &bought_mm : &sum_mm) += (int64_t) class->most * class->length_mm;
        }
    }
    if (problem->side_count > 0 && bought_mm / problem->mm_in_unit > problem->side_most[0]) {
        bought_mm = problem->side_most[0] * problem->mm_in_unit;
    }
    return sum_mm + bought_mm;
}

int64_t cutting_reach_length(const struct CuttingCase *problem)
{
    int64_t needed_mm = -free_mm(problem), cost = 0;
    for (int type = 0; type < problem->type_count; type++) {
        needed_mm += (int64_t)problem->wanted[type] * problem->length_mm[type];
    }
    /* Classes stand longest first, so that none after gives more length for its cost. */
    for (int c = 0; c < problem->class_count && needed_mm > 0; c++) {
        const struct CuttingClass *class = &problem->classes[c];
        const int64_t all_mm = (int64_t) class->most * class->length_mm;
        if (class->cost > 0) {
            cost += all_mm < needed_mm ? class->most * class->cost
                                       : (needed_mm * class->cost + class->length_mm - 1) / class->length_mm;
            needed_mm -= all_mm;
        }
    }
    return cost;
}

bool cutting_reach_make(struct Arena *arena, const struct CuttingCase *problem, int64_t most,
                        struct CuttingReach *reach)
{
    *reach = (struct CuttingReach){.most = -1};
    if (most < 0 || most > REACH_STEPS_MOST / (problem->class_count + 1)) {
        return true;
    }
    reach->fewest = arena_array(arena, (size_t)most + 1, sizeof *reach->fewest);
    if (reach->fewest == NULL) {
        return false;
    }
    reach->most = most;
    for (int64_t sum = 1; sum <= most; sum++) {
        reach->fewest[sum] = cutting_reach_never;
        for (int c = 0; c < problem->class_count; c++) {
            const int64_t units = problem->classes[c].length_mm / problem->mm_in_unit;
            if (problem->classes[c].bought && units <= sum && reach->fewest[sum - units] + 1 < reach->fewest[sum]) {
                reach->fewest[sum] = reach->fewest[sum - units] + 1;
            }
        }
    }
    return true;
}

int64_t cutting_reach_sum(const struct CuttingReach *reach, int64_t from)
{
    int64_t sum = from;
    while (sum >= 0 && sum <= reach->most && reach->fewest[sum] >= cutting_reach_never) {
        sum++;
    }
    return sum > reach->most ? from : sum;
}
