/* The most that one bin can be worth, each piece having its price: depth first, the best worth for its length first,
 * and no branch that cannot beat what is known. Worths are doubles; every comparison leaves room for their rounding on
 * the safe side, so that the figure given back is never below the true one. */
#include "cutting_private.h"

#include <limits.h>
#include <math.h>
#include <stdlib.h>

/* Far above what a few thousand additions of doubles lose, far below what decides anything. */
static const double rounding = 1e-12;

static int by_rate(const void *left, const void *right)
{
    const struct CuttingItem *a = left, *b = right;
    if (a->rate > b->rate || a->rate < b->rate) {
        return a->rate > b->rate ? -1 : 1;
    }
    return a->type < b->type ? -1 : 1;
}

void cutting_knapsack_load(struct CuttingKnapsack *knapsack, const struct CuttingCase *problem, const int *wanted,
                           const double *worth)
{
    knapsack->count = 0;
    for (int type = 0; type < problem->type_count; type++) {
        if (wanted[type] > 0 && worth[type] > 0) {
            knapsack->items[knapsack->count++] = (struct CuttingItem){
                .type = type,
                .length_mm = problem->length_mm[type],
                .most = wanted[type],
                .worth = worth[type],
                .rate = worth[type] / problem->length_mm[type],
            };
        }
    }
    qsort(knapsack->items, (size_t)knapsack->count, sizeof *knapsack->items, by_rate);
    int shortest_mm = INT_MAX;
    for (int i = knapsack->count - 1; i >= 0; i--) {
        struct CuttingItem *item = &knapsack->items[i];
        shortest_mm = item->length_mm < shortest_mm ? item->length_mm : shortest_mm;
        item->shortest_mm = shortest_mm;
    }
}

/* Whether items from `at` on could lift `value` above `best` if they could be cut to fit. */
static bool promising(const struct CuttingKnapsack *knapsack, int at, int left_mm, double value, double best)
{
    return at < knapsack->count && value + knapsack->items[at].rate * left_mm > best + rounding * (1 + fabs(best));
}

/* Takes all it can of every item from `at` on while that may help; gives where it stopped. */
static int take_all(struct CuttingKnapsack *knapsack, int at, int *left_mm, double *value, double best)
{
    while (promising(knapsack, at, *left_mm, *value, best) && *left_mm >= knapsack->items[at].shortest_mm) {
        struct CuttingItem *item = &knapsack->items[at];
        const int fit = *left_mm / item->length_mm;
        item->take = fit < item->most ? fit : item->most;
        item->before = *value;
        *value += item->take * item->worth;
        *left_mm -= item->take * item->length_mm;
        at++;
        knapsack->steps++;
    }
    return at;
}

/* Goes back to the last item of which one fewer may lead to more; gives the place after it, -1 when there is none. */
static int give_back(struct CuttingKnapsack *knapsack, int at, int *left_mm, double *value, double best)
{
    while (--at >= 0) {
        struct CuttingItem *item = &knapsack->items[at];
        while (item->take > 0) {
            const double value_less = item->before + (item->take - 1) * item->worth;
            knapsack->steps++;
            if (!promising(knapsack, at + 1, *left_mm + item->length_mm, value_less, best)) {
                break;
            }
            item->take--;
            *left_mm += item->length_mm;
            if (*left_mm >= knapsack->items[at + 1].shortest_mm) {
                *value = value_less;
                return at + 1;
            }
        }
        /* Fewer of it promise less still: what follows is no better for its length. */
        *left_mm += item->take * item->length_mm;
        *value = item->before;
        item->take = 0;
    }
    return -1;
}

double cutting_knapsack_most(struct CuttingKnapsack *knapsack, int capacity_mm, double floor, int64_t most_steps,
                             bool *found)
{
    const int64_t start = knapsack->steps;
    double best = floor, value = 0;
    int left_mm = capacity_mm;
    *found = false;
    for (int at = 0; at >= 0;) {
        at = take_all(knapsack, at, &left_mm, &value, best);
        if (value > best) {
            best = value;
            *found = true;
            for (int i = 0; i < knapsack->count; i++) {
                knapsack->items[i].best = i < at ? knapsack->items[i].take : 0;
            }
        }
        at = give_back(knapsack, at, &left_mm, &value, best);
        if (knapsack->steps - start > most_steps && at >= 0) {
            const double ceiling = knapsack->items[0].rate * capacity_mm;
            best = ceiling > best ? ceiling : best;
            break;
        }
    }
    return best + 4 * rounding * (1 + fabs(best));
}
