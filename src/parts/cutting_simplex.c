/* The pivots of the simplex method on the programme that cutting_lp.c sets up. Each goes to the column that gains most
 * for a unit of it; when no pivot has gained for long, to the first that gains, which cannot go round in circles. */
#include "cutting_private.h"

#include <math.h>

static const double price_tolerance = 1e-10;
static const double pivot_tolerance = 1e-9;
enum { PIVOTS_BETWEEN_INVERSIONS = 300, IDLE_PIVOTS_MOST = 60, PIVOTS_MOST_A_ROW = 60 };

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

/* The column to bring in, or -1. *saved_most: what a unit of it saves (less than nothing where it should shrink). */
static int choose_column(const struct CuttingLp *lp, bool first, double *saved_most)
{
    double most = price_tolerance;
    int chosen = -1;
    for (int j = 0; j < lp->columns; j++) {
        const struct LpColumn *column = &lp->column[j];
        if (column->place == LP_BASIC || column->most <= 0) {
            continue;
        }
        const double saved = cutting_lp_times(lp, lp->price, column) - column->cost;
        const double gain = column->place == LP_LOW ? saved : -saved;
        if (gain > most) {
            most = gain;
            chosen = j;
            *saved_most = saved;
            if (first) {
                break;
            }
        }
    }
    return chosen;
}

struct Step {
    int row; /* -1: the column only changes its side */
    double length;
    bool leaves_high;
};

/* How far the column can go, and what stops it. `way` is 1 from below, -1 from above. */
static struct Step find_step(const struct CuttingLp *lp, int entering, double way)
{
    struct Step step = {.row = -1, .length = lp->column[entering].most};
    double pivot = 0;
    for (int row = 0; row < lp->rows; row++) {
        const double change = way * lp->entering[row];
        const double most = lp->column[lp->basis[row]].most;
        double length;
        if (change > pivot_tolerance) {
            length = lp->value[row] / change;
        } else if (change < -pivot_tolerance && isfinite(most)) {
            length = (most - lp->value[row]) / -change;
            length = length > 0 ? length : 0;
        } else {
            continue;
        }
        /* Of rows that stop it alike the largest pivot keeps the inverse sound. */
        const bool alike = step.row >= 0 && fabs(length - step.length) <= 1e-12 * (1 + step.length);
        if (alike ? fabs(change) > pivot : length < step.length) {
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

/* One pivot; gives how far it went, or -1 when nothing is to be gained or doubles no longer tell. */
static double pivot_once(struct CuttingLp *lp, bool first)
{
    double saved = 0;
    const int entering = choose_column(lp, first, &saved);
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
    lp->column[lp->basis[step.row]].place = step.leaves_high ? LP_HIGH : LP_LOW;
    lp->value[step.row] = way > 0 ? step.length : column->most - step.length;
    lp->basis[step.row] = entering;
    column->place = LP_BASIC;
    update_inverse(lp, step.row);
    const double *top = lp->inverse + (size_t)step.row * (size_t)lp->rows;
    for (int k = 0; k < lp->rows; k++) {
        lp->price[k] -= saved * top[k];
    }
    return step.length;
}

void cutting_lp_solve(struct CuttingLp *lp)
{
    const int64_t most = PIVOTS_MOST_A_ROW * (int64_t)(lp->rows + 10);
    int idle = 0;
    find_prices(lp);
    for (int64_t done = 0; done < most; done++) {
        const double length = pivot_once(lp, idle > IDLE_PIVOTS_MOST);
        if (length < 0) {
            break;
        }
        lp->pivots++;
        idle = length > 1e-12 ? 0 : idle + 1;
        if (++lp->pivots_since >= PIVOTS_BETWEEN_INVERSIONS) {
            if (!cutting_lp_invert(lp)) {
                break;
            }
            find_prices(lp);
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

void cutting_lp_missing_cost(struct CuttingLp *lp, double missing_cost)
{
    for (int j = 0; j < lp->columns; j++) {
        if (lp->column[j].kind == LP_MISSING) {
            lp->column[j].cost = missing_cost;
        }
    }
}
