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
static const double rate_first = 1.25, rate_step = 4, rate_most = 1e3; /* times what a millimetre costs */
enum { ROUNDS_MOST = 3000, KNAPSACK_STEPS_MOST = 200000, KNAPSACK_STEP_EFFORT = 20 };

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
static void copy_best_filling(struct CuttingSearch *search)
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
            copy_best_filling(search);
            const int pattern = cutting_pool_add(search->pool, c, problem->type_count, search->pattern);
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
        if (search->pool->copies[e] > level->wanted[search->pool->type[e]]) {
            return false;
        }
    }
    return true;
}

/* The dearest that a millimetre of bins is, in the cost of the dearest bin. */
static double dearest_rate(const struct CuttingSearch *search)
{
    double rate = 0;
    for (int c = 0; c < search->problem->class_count; c++) {
        const struct CuttingClass *class = &search->problem->classes[c];
        rate = fmax(rate, (double)class->cost / search->cost_unit / class->length_mm);
    }
    return rate;
}

/* The patterns that the level above used, less what can no longer be cut from them. */
static bool add_hints(struct CuttingSearch *search, const struct CuttingLevel *level)
{
    const int types = search->problem->type_count;
    for (int i = 0; i < level->share_count; i++) {
        if (level->share_pattern[i] < 0) {
            continue;
        }
        const struct CuttingPattern pattern = search->pool->patterns[level->share_pattern[i]];
        int index = level->share_pattern[i];
        if (level->high[pattern.class_index] == 0) {
            continue;
        }
        if (!pattern_fits(search, level, &pattern)) {
            memset(search->pattern, 0, (size_t)types * sizeof *search->pattern);
            for (int e = pattern.start; e < pattern.start + pattern.entries; e++) {
                const int type = search->pool->type[e], copies = search->pool->copies[e];
                search->pattern[type] = copies < level->wanted[type] ? copies : level->wanted[type];
            }
            index = cutting_pool_new(search->pool, pattern.class_index, types, search->pattern);
        }
        if (index < 0 || !cutting_lp_add(search->arena, &search->lp, index)) {
            return false;
        }
    }
    return true;
}

/* Adds known patterns that gain by the programme's prices, those at least half as good as the best; gives how many. */
static int add_known(struct CuttingSearch *search, const struct CuttingLevel *level)
{
    struct CuttingLp *lp = &search->lp;
    double most = gain_least;
    int added = 0;
    for (int pass = 0; pass < 2; pass++) {
        const double enough = most / 2;
        for (int p = 0; p < search->pool->count; p++) {
            const struct CuttingPattern *pattern = &search->pool->patterns[p];
            if (!pattern_fits(search, level, pattern)) {
                continue;
            }
            const struct LpColumn column = {.kind = LP_PATTERN, .index = p};
            const double gain = cutting_lp_times(lp, lp->price, &column) - lp->cost_of_class[pattern->class_index];
            if (pass == 0) {
                most = gain > most ? gain : most;
            } else if (gain > gain_least && gain >= enough) {
                if (!cutting_lp_add(search->arena, lp, p)) {
                    return 0;
                }
                added++;
            }
        }
    }
    return added;
}

static bool begin(struct CuttingSearch *search, const struct CuttingLevel *level, double missing_rate)
{
    if (!cutting_lp_begin(search->arena, &search->lp, search->problem, level, search->cost_unit, missing_rate)) {
        return false;
    }
    if (level->share_count > 0) {
        return add_hints(search, level);
    }
    for (int p = 0; p < search->pool->count; p++) {
        if (pattern_fits(search, level, &search->pool->patterns[p]) && !cutting_lp_add(search->arena, &search->lp, p)) {
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
    const double rate = dearest_rate(search);
    double times = rate_first;
    int64_t best = level->spent;
    level->known = true;
    if (!begin(search, level, times * rate)) {
        return best;
    }
    for (int round = 0; round < ROUNDS_MOST && !search->ended; round++) {
        cutting_lp_solve(lp);
        const bool complete = cutting_lp_missing(lp) < missing_none;
        const double sum = (double)level->spent + cutting_lp_sum(lp) * search->cost_unit;
        if (complete && sum <= (double)search->target) {
            break;
        }
        int added = add_known(search, level);
        if (added > 0) {
            continue;
        }
        const int64_t before = search->knapsack.steps;
        const int64_t bound = whole_cost(level, price_classes(search, level, &added));
        cutting_spend(search, (search->knapsack.steps - before) * KNAPSACK_STEP_EFFORT);
        best = bound > best ? bound : best;
        if ((!thorough && best > search->target) || (complete && ceil(sum - 1e-6) <= (double)best)) {
            break;
        }
        if (added == 0) {
            if (complete || times > rate_most) {
                break;
            }
            times *= rate_step;
            cutting_lp_missing_rate(lp, times * rate);
        }
    }
    keep_shares(lp, level);
    return best;
}
