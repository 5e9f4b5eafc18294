/* The lower bound of a node: the linear programme over all patterns, which are made as they are needed (Gilmore and
 * Gomory, "A linear programming approach to the cutting-stock problem", Operations Research 9, 1961; the method is from
 * memory, as is the bound below, known as Lagrange's).
 *
 * For any prices p >= 0 of the types, q >= 0 of the side limits, with v(c) the most that a bin of class c can be worth:
 *
 *   cost of any plan >= sum p wanted - sum q left + sum over c of least over y in low..high of (cost + q side - v) y
 *
 * so the bound does not rest on the simplex method having come to its end. Each sum of doubles is taken with the sum of
 * its terms' sizes, and a share of that far above the rounding is taken off before the bound is believed. */
#include "cutting_private.h"

#include <math.h>
#include <string.h>

static const double gain_least = 1e-9;      /* of a pattern, in the dearest bin */
static const double rounding_share = 1e-11; /* doubles lose less than 1e-13 of the sum of sizes here */
static const double missing_none = 1e-5;
static const double missing_cost_first = 8, missing_cost_step = 16, missing_cost_most = 3e4;
enum { ROUNDS_MOST = 3000, KNAPSACK_STEPS_MOST = 200000 };

/* A sum and how much of it may be rounding. */
struct Sum {
    double value, size;
};

static void sum_add(struct Sum *sum, double term)
{
    sum->value += term;
    sum->size += fabs(term);
}

static double side_price(const struct CuttingLp *lp, int side)
{
    const double price = -lp->price[cutting_lp_side_row(lp, side)];
    return price > 0 ? price : 0;
}

/* Fills search->pattern from the knapsack's best. */
static void take_best(struct CuttingSearch *search)
{
    memset(search->pattern, 0, (size_t)search->problem->type_count * sizeof *search->pattern);
    for (int i = 0; i < search->knapsack.count; i++) {
        search->pattern[search->knapsack.items[i].type] = search->knapsack.items[i].best;
    }
}

/* Prices every class with the programme's prices: adds the patterns that gain and gives the bound by them, in cost
 * units. *added counts the patterns. */
static double price_classes(struct CuttingSearch *search, const struct CuttingLevel *level, int *added)
{
    struct CuttingLp *lp = &search->lp;
    const struct CuttingCase *problem = search->problem;
    struct Sum bound = {0, 0};
    for (int type = 0; type < problem->type_count; type++) {
        const int row = lp->row_of_type[type];
        search->worth[type] = row >= 0 && lp->price[row] > 0 ? lp->price[row] : 0;
        sum_add(&bound, search->worth[type] * level->wanted[type]);
    }
    for (int side = 0; side < problem->side_count; side++) {
        sum_add(&bound, -side_price(lp, side) * lp->limit[cutting_lp_side_row(lp, side)]);
    }
    cutting_knapsack_load(&search->knapsack, problem, level->wanted, search->worth);
    *added = 0;
    for (int c = 0; c < problem->class_count; c++) {
        if (level->high[c] == 0) {
            continue;
        }
        double cost = lp->cost_of_class[c];
        for (int side = 0; side < problem->side_count; side++) {
            cost += side_price(lp, side) * lp->side_of_class[c * CUTTING_SIDES + side];
        }
        const double floor = cost - lp->price[lp->type_rows + c];
        bool found;
        const double most = cutting_knapsack_most(&search->knapsack, problem->classes[c].length_mm,
                                                  (floor > 0 ? floor : 0) + gain_least, KNAPSACK_STEPS_MOST, &found);
        if (found) {
            take_best(search);
            const int pattern = cutting_pool_add(&search->pool, c, problem->type_count, search->pattern);
            if (pattern < 0 || !cutting_lp_add(search->arena, lp, pattern)) {
                return NAN;
            }
            (*added)++;
        }
        sum_add(&bound, (cost - most) * (cost < most ? level->high[c] : level->low[c]));
        bound.size += (cost + most) * (cost < most ? level->high[c] : level->low[c]);
    }
    return (bound.value - rounding_share * bound.size) * search->cost_unit;
}

/* Whether a pattern can be cut from what a level still has. */
static bool pattern_fits(const struct CuttingSearch *search, const struct CuttingLevel *level,
                         const struct CuttingPattern *pattern)
{
    if (level->high[pattern->class_index] == 0) {
        return false;
    }
    for (int e = pattern->start; e < pattern->start + pattern->entries; e++) {
        if (search->pool.copies[e] > level->wanted[search->pool.type[e]]) {
            return false;
        }
    }
    return true;
}

static bool begin(struct CuttingSearch *search, const struct CuttingLevel *level, double missing_cost)
{
    if (!cutting_lp_begin(search->arena, &search->lp, search->problem, level, search->cost_unit, missing_cost)) {
        return false;
    }
    for (int p = 0; p < search->pool.count; p++) {
        if (pattern_fits(search, level, &search->pool.patterns[p]) && !cutting_lp_add(search->arena, &search->lp, p)) {
            return false;
        }
    }
    return true;
}

/* Keeps what the programme opens, for the choice of the next step. */
static void keep_shares(const struct CuttingLp *lp, struct CuttingLevel *level)
{
    level->share_count = 0;
    for (int row = 0; row < lp->rows; row++) {
        const struct LpColumn *column = &lp->column[lp->basis[row]];
        if ((column->kind == LP_PATTERN || column->kind == LP_EMPTY) && lp->truth[row] > 1e-9 &&
            level->share_count < level->share_room) {
            level->share_pattern[level->share_count] = column->kind == LP_PATTERN ? column->index : -1 - column->index;
            level->share[level->share_count++] = lp->truth[row];
        }
    }
    level->known = true;
}

/* The bound in cost units as a whole cost, spent part included; 0 where doubles no longer tell. */
static int64_t whole_cost(const struct CuttingLevel *level, double bound)
{
    if (!isfinite(bound) || bound < 0) {
        return level->spent;
    }
    return bound > 1e15 ? cutting_none : level->spent + (int64_t)ceil(bound);
}

int64_t cutting_bound(struct CuttingSearch *search, struct CuttingLevel *level, bool thorough)
{
    struct CuttingLp *lp = &search->lp;
    double missing_cost = missing_cost_first;
    int64_t best = level->spent;
    level->share_count = 0;
    level->known = true;
    if (!begin(search, level, missing_cost)) {
        return best;
    }
    for (int round = 0; round < ROUNDS_MOST && !arena_failed(search->arena); round++) {
        cutting_lp_solve(lp);
        const bool complete = cutting_lp_missing(lp) < missing_none;
        const double sum = (double)level->spent + cutting_lp_sum(lp) * search->cost_unit;
        if (complete && sum <= (double)search->target) {
            break;
        }
        int added = 0;
        const int64_t bound = whole_cost(level, price_classes(search, level, &added));
        best = bound > best ? bound : best;
        if ((!thorough && best > search->target) || (complete && ceil(sum - 1e-6) <= (double)best)) {
            break;
        }
        if (added == 0) {
            if (complete || missing_cost > missing_cost_most) {
                break;
            }
            missing_cost *= missing_cost_step;
            cutting_lp_missing_cost(lp, missing_cost);
        }
    }
    keep_shares(lp, level);
    return best;
}
