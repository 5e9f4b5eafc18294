/* The pivots of the simplex method on the programme that cutting_lp.c sets up. Each goes to the column that gains most
 * for its weight, a rough measure of how far all changes with it (Harris's "devex" rule, from memory); when no pivot
 * has gained for long, the rows that stand at nothing are eased by a hair each, so that they cannot stop the next ones.
 */
#include "cutting_private.h"

#include <math.h>

static const double price_tolerance = 1e-10; /* of the highest price */
static const double pivot_tolerance = 1e-8;
static const double value_slip = 1e-9;
static const double weight_most = 1e6; /* when weights begin anew */
enum { PIVOTS_BETWEEN_INVERSIONS = 300, IDLE_PIVOTS_MOST = 20, PIVOTS_MOST_A_ROW = 30 };

static void find_prices(struct CuttingLp *lp)
{
    for (int row = 0; row < lp->rows; row++) {
        lp->price[row] = 0;
    }
    for (int row = 0; row < lp->rows; row++) {
        const double cost = lp->column[lp->basis[row]].cost;
        const double *inverse = lp->inverse + (size_t)row * (size_t)lp->rows;
        if (cost > 0) {
            for (int k = 0; k < lp->rows; k++) {
                lp->price[k] += cost * inverse[k];
            }
        }
    }
}

/* What a unit of each column saves, by the prices. */
static void find_savings(struct CuttingLp *lp)
{
    find_prices(lp);
    for (int j = 0; j < lp->columns; j++) {
        struct LpColumn *column = &lp->column[j];
        column->saved = column->place == LP_BASIC ? 0 : cutting_lp_times(lp, lp->price, column) - column->cost;
    }
}

/* The column to bring in, or -1. */
static int choose_column(const struct CuttingLp *lp)
{
    double most = 0, highest = 1;
    int chosen = -1;
    for (int row = 0; row < lp->rows; row++) {
        highest = fmax(highest, fabs(lp->price[row]));
    }
    for (int j = 0; j < lp->columns; j++) {
        const struct LpColumn *column = &lp->column[j];
        const double gain = column->place == LP_LOW ? column->saved : -column->saved;
        if (column->place == LP_BASIC || column->most <= 0 || gain <= price_tolerance * highest) {
            continue;
        }
        if (gain * gain > most * column->weight) {
            most = gain * gain / column->weight;
            chosen = j;
        }
    }
    return chosen;
}

struct Step {
    int row; /* -1: the column only changes its side */
    double length;
    bool leaves_high;
};

/* How far the column could go for this row if the row might give way by `slip`; infinite where it sets no end. */
static double row_allows(const struct CuttingLp *lp, int row, double change, double slip)
{
    if (change > pivot_tolerance) {
        return (lp->value[row] + slip) / change;
    }
    const double most = lp->column[lp->basis[row]].most;
    if (change < -pivot_tolerance && isfinite(most)) {
        return fmax(most + slip - lp->value[row], 0) / -change;
    }
    return INFINITY;
}

/* How far the column can go, and what stops it. `way` is 1 from below, -1 from above. Of the rows that stop it within a
 * slip of each other the one with the largest pivot is taken, which keeps the inverse sound (Harris's rule, from
 * memory). */
static struct Step find_step(const struct CuttingLp *lp, int entering, double way)
{
    double end = INFINITY, pivot = 0;
    for (int row = 0; row < lp->rows; row++) {
        end = fmin(end, row_allows(lp, row, way * lp->entering[row], value_slip));
    }
    struct Step step = {.row = -1, .length = lp->column[entering].most};
    if (step.length <= end) {
        return step;
    }
    for (int row = 0; row < lp->rows; row++) {
        const double change = way * lp->entering[row];
        const double length = row_allows(lp, row, change, 0);
        if (length <= end && fabs(change) > pivot) {
            step = (struct Step){row, length, change < 0};
            pivot = fabs(change);
        }
    }
    return step;
}

static void update_inverse(struct CuttingLp *lp, int pivot_row)
{
    const size_t rows = (size_t)lp->rows;
    double *top = lp->inverse + (size_t)pivot_row * rows;
    const double pivot = lp->entering[pivot_row];
    for (size_t k = 0; k < rows; k++) {
        top[k] /= pivot;
    }
    for (int row = 0; row < lp->rows; row++) {
        const double factor = lp->entering[row];
        double *inverse = lp->inverse + (size_t)row * rows;
        if (row != pivot_row && (factor > 0 || factor < 0)) {
            for (size_t k = 0; k < rows; k++) {
                inverse[k] -= factor * top[k];
            }
        }
    }
}

/* Brings savings and weights up to date after a pivot. */
static void update_savings(struct CuttingLp *lp, int pivot_row, double saved, double weight)
{
    const double *top = lp->inverse + (size_t)pivot_row * (size_t)lp->rows;
    double heaviest = 1;
    for (int j = 0; j < lp->columns; j++) {
        struct LpColumn *column = &lp->column[j];
        if (column->place == LP_BASIC) {
            column->saved = 0;
            continue;
        }
        const double ratio = cutting_lp_times(lp, top, column);
        column->saved -= saved * ratio;
        column->weight = fmax(column->weight, ratio * ratio * weight);
        heaviest = fmax(heaviest, column->weight);
    }
    for (int j = 0; heaviest > weight_most && j < lp->columns; j++) {
        lp->column[j].weight = 1;
    }
}

/* One pivot; gives how far it went, or -1 when nothing is to be gained or doubles no longer tell. */
static double pivot_once(struct CuttingLp *lp)
{
    const int entering = choose_column(lp);
    if (entering < 0) {
        return -1;
    }
    struct LpColumn *column = &lp->column[entering];
    const double way = column->place == LP_LOW ? 1 : -1;
    for (int row = 0; row < lp->rows; row++) {
        lp->entering[row] = cutting_lp_times(lp, lp->inverse + (size_t)row * (size_t)lp->rows, column);
    }
    const struct Step step = find_step(lp, entering, way);
    if (!isfinite(step.length)) {
        return -1;
    }
    for (int row = 0; row < lp->rows; row++) {
        const double value = lp->value[row] - way * step.length * lp->entering[row];
        lp->value[row] = value > 0 ? value : 0;
    }
    if (step.row < 0) {
        column->place = column->place == LP_LOW ? LP_HIGH : LP_LOW;
        return step.length;
    }
    struct LpColumn *leaving = &lp->column[lp->basis[step.row]];
    leaving->place = step.leaves_high ? LP_HIGH : LP_LOW;
    leaving->weight = 1;
    lp->value[step.row] = way > 0 ? step.length : column->most - step.length;
    lp->basis[step.row] = entering;
    column->place = LP_BASIC;
    update_inverse(lp, step.row);
    update_savings(lp, step.row, column->saved, column->weight);
    return step.length;
}

void cutting_lp_solve(struct CuttingLp *lp)
{
    const int64_t most = PIVOTS_MOST_A_ROW * (int64_t)(lp->rows + 10);
    int idle = 0;
    bool drifted = false;
    find_savings(lp);
    for (int64_t done = 0; done < most; done++) {
        const double length = pivot_once(lp);
        if (length < 0) {
            if (!drifted) {
                break;
            }
            find_savings(lp); /* what was kept up to date pivot by pivot may have drifted */
            drifted = false;
            continue;
        }
        drifted = true;
        lp->effort += (int64_t)lp->rows * lp->rows + 8 * (int64_t)lp->columns;
        idle = length > 1e-12 ? 0 : idle + 1;
        if (idle > IDLE_PIVOTS_MOST) {
            cutting_lp_ease(lp, (int)(done % 89));
            idle = 0;
        }
        if (++lp->pivots_since >= PIVOTS_BETWEEN_INVERSIONS) {
            lp->effort += (int64_t)lp->rows * lp->rows * lp->rows;
            if (!cutting_lp_invert(lp)) {
                break;
            }
            find_savings(lp);
        }
    }
    find_prices(lp);
    cutting_lp_values(lp, lp->limit, lp->truth);
}

double cutting_lp_sum(const struct CuttingLp *lp)
{
    double sum = 0;
    for (int row = 0; row < lp->rows; row++) {
        sum += lp->truth[row] * lp->column[lp->basis[row]].cost;
    }
    return sum;
}

double cutting_lp_missing(const struct CuttingLp *lp)
{
    double sum = 0;
    for (int row = 0; row < lp->rows; row++) {
        sum += lp->column[lp->basis[row]].kind == LP_MISSING ? lp->truth[row] : 0;
    }
    return sum;
}

void cutting_lp_missing_rate(struct CuttingLp *lp, double rate)
{
    for (int j = 0; j < lp->columns; j++) {
        if (lp->column[j].kind == LP_MISSING) {
            lp->column[j].cost = rate * lp->row_length_mm[lp->column[j].index];
        }
    }
}
