/* Bounds that need no patterns: how much length the pieces need at least, and which sums whole bins can come to. They
 * cost next to nothing, and where there are many pieces to a drum they often are the answer. */
#include "cutting_private.h"

/* Sums above this are not tabulated; the bounds then are weaker, never wrong. */
enum { REACH_MOST = 1000000 };

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

int64_t cutting_reach_sum(struct Arena *arena, const struct CuttingCase *problem, int64_t from, int64_t most)
{
    if (from <= 0 || from >= most || most > REACH_MOST) {
        return from;
    }
    bool *reached = arena_array(arena, (size_t)most + 1, sizeof *reached);
    if (reached == NULL) {
        return from;
    }
    reached[0] = true;
    for (int64_t sum = 1; sum <= most; sum++) {
        for (int c = 0; c < problem->class_count && !reached[sum]; c++) {
            const int64_t cost = problem->classes[c].cost;
            reached[sum] = cost > 0 && cost <= sum && reached[sum - cost];
        }
    }
    while (from < most && !reached[from]) {
        from++;
    }
    return from;
}

int64_t cutting_reach_fewest(struct Arena *arena, const struct CuttingCase *problem)
{
    const int64_t exact = problem->side_count > 0 ? problem->side_most[0] : 0;
    int *fewest = exact > 0 && exact <= REACH_MOST ? arena_array(arena, (size_t)exact + 1, sizeof *fewest) : NULL;
    if (fewest == NULL) {
        return 0;
    }
    for (int64_t sum = 1; sum <= exact; sum++) {
        fewest[sum] = CUTTING_PIECES_MOST + 1;
        for (int c = 0; c < problem->class_count; c++) {
            const int64_t side = problem->classes[c].side[0];
            if (side > 0 && side <= sum && fewest[sum - side] + 1 < fewest[sum]) {
                fewest[sum] = fewest[sum - side] + 1;
            }
        }
    }
    return fewest[exact];
}
