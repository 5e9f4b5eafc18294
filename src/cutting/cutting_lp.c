/* The linear programme of a node, by the primal simplex method with an explicit inverse of the basis.
 *
 *   least  sum of the costs of bins opened
 *   rows   each type:  pieces cut - surplus + missing  = pieces left        (missing is dear)
 *          each class: bins opened + room              = bins at most       (room at most: most less least)
 *          each side:  what bins take + room           = what is left
 *
 * Prices may come out slightly wrong where doubles round; nothing is believed on their account, cutting_bound.c proves
 * its bound for whatever prices it is given. The
 * pivots themselves are in cutting_simplex.c. */
#include "cutting_private.h"

#include <math.h>
#include <string.h>

static const double pivot_tolerance = 1e-9;
static const double hair = 1e-6;
static const double golden = 0.6180339887498949; /* its multiples fall evenly between whole numbers */

bool cutting_lp_make(struct Arena *arena, struct CuttingLp *lp, const struct CuttingCase *problem,
                     const struct CuttingPool *pool)
{
    const size_t rows = (size_t)problem->type_count + (size_t)problem->class_count + (size_t)problem->side_count;
    const size_t classes = (size_t)problem->class_count;
    *lp = (struct CuttingLp){
        .pool = pool,
        .rows_room = (int)rows,
        .class_count = problem->class_count,
        .side_count = problem->side_count,
        .row_of_type = arena_array(arena, (size_t)problem->type_count, sizeof *lp->row_of_type),
        .side_of_class = arena_array(arena, classes * CUTTING_SIDES, sizeof *lp->side_of_class),
        .cost_of_class = arena_array(arena, classes, sizeof *lp->cost_of_class),
        .row_length_mm = arena_array(arena, rows, sizeof *lp->row_length_mm),
        .limit = arena_array(arena, rows, sizeof *lp->limit),
        .eased = arena_array(arena, rows, sizeof *lp->eased),
        .truth = arena_array(arena, rows, sizeof *lp->truth),
        .inverse = arena_array(arena, rows * rows, sizeof *lp->inverse),
        .work = arena_array(arena, rows * rows, sizeof *lp->work),
        .basis = arena_array(arena, rows, sizeof *lp->basis),
        .value = arena_array(arena, rows, sizeof *lp->value),
        .price = arena_array(arena, rows, sizeof *lp->price),
        .entering = arena_array(arena, rows, sizeof *lp->entering),
    };
    for (int side = 0; side < problem->side_count; side++) {
        lp->side_unit[side] = 1;
        for (int c = 0; c < problem->class_count; c++) {
            lp->side_unit[side] = fmax(lp->side_unit[side], (double)problem->classes[c].side[side]);
        }
    }
    return !arena_failed(arena);
}

static bool add_column(struct Arena *arena, struct CuttingLp *lp, enum LpKind kind, int index, double cost, double most)
{
    if (lp->columns == lp->column_room) {
        const int room = lp->column_room == 0 ? 512 : 2 * lp->column_room;
        struct LpColumn *column = arena_array(arena, (size_t)room, sizeof *column);
        if (column == NULL) {
            return false;
        }
        if (lp->columns > 0) {
            memcpy(column, lp->column, (size_t)lp->columns * sizeof *column);
        }
        lp->column = column;
        lp->column_room = room;
    }
    lp->column[lp->columns++] =
        (struct LpColumn){.kind = kind, .index = index, .place = LP_LOW, .cost = cost, .most = most, .weight = 1};
    return true;
}

bool cutting_lp_add(struct Arena *arena, struct CuttingLp *lp, int pattern)
{
    const int class_index = lp->pool->patterns[pattern].class_index;
    return add_column(arena, lp, LP_PATTERN, pattern, lp->cost_of_class[class_index], INFINITY);
}

int cutting_lp_side_row(const struct CuttingLp *lp, int side)
{
    return lp->type_rows + lp->class_count + side;
}

/* factors * column, where factors are one figure a row. */
double cutting_lp_times(const struct CuttingLp *lp, const double *factors, const struct LpColumn *column)
{
    int class_index = column->index;
    double sum = 0;
    switch (column->kind) {
    case LP_SURPLUS: return -factors[column->index];
    case LP_MISSING: return factors[column->index];
    case LP_ROOM: return factors[lp->type_rows + column->index];
    case LP_SIDE_ROOM: return factors[cutting_lp_side_row(lp, column->index)];
    case LP_PATTERN: {
        const struct CuttingPattern *pattern = &lp->pool->patterns[column->index];
        for (int e = pattern->start; e < pattern->start + pattern->entries; e++) {
            sum += factors[lp->row_of_type[lp->pool->type[e]]] * lp->pool->copies[e];
        }
        class_index = pattern->class_index;
        break;
    }
    case LP_EMPTY: break;
    }
    sum += factors[lp->type_rows + class_index];
    for (int side = 0; side < lp->side_count; side++) {
        sum += factors[cutting_lp_side_row(lp, side)] * lp->side_of_class[class_index * CUTTING_SIDES + side];
    }
    return sum;
}

/* Writes a column into a matrix column, for the inversion. */
static void spread_column(const struct CuttingLp *lp, const struct LpColumn *column, double *matrix, int at)
{
    const size_t rows = (size_t)lp->rows;
    int class_index = column->index;
    switch (column->kind) {
    case LP_SURPLUS: matrix[(size_t)column->index * rows + (size_t)at] = -1; return;
    case LP_MISSING: matrix[(size_t)column->index * rows + (size_t)at] = 1; return;
    case LP_ROOM: matrix[(size_t)(lp->type_rows + column->index) * rows + (size_t)at] = 1; return;
    case LP_SIDE_ROOM: matrix[(size_t)cutting_lp_side_row(lp, column->index) * rows + (size_t)at] = 1; return;
    case LP_PATTERN: {
        const struct CuttingPattern *pattern = &lp->pool->patterns[column->index];
        for (int e = pattern->start; e < pattern->start + pattern->entries; e++) {
            matrix[(size_t)lp->row_of_type[lp->pool->type[e]] * rows + (size_t)at] = lp->pool->copies[e];
        }
        class_index = pattern->class_index;
        break;
    }
    case LP_EMPTY: break;
    }
    matrix[(size_t)(lp->type_rows + class_index) * rows + (size_t)at] = 1;
    for (int side = 0; side < lp->side_count; side++) {
        matrix[(size_t)cutting_lp_side_row(lp, side) * rows + (size_t)at] =
            lp->side_of_class[class_index * CUTTING_SIDES + side];
    }
}

static void swap_rows(double *matrix, size_t rows, size_t a, size_t b)
{
    for (size_t k = 0; k < rows; k++) {
        const double kept = matrix[a * rows + k];
        matrix[a * rows + k] = matrix[b * rows + k];
        matrix[b * rows + k] = kept;
    }
}

void cutting_lp_values(struct CuttingLp *lp, const double *limits, double *values)
{
    double *limit = lp->entering;
    memcpy(limit, limits, (size_t)lp->rows * sizeof *limit);
    for (int j = 0; j < lp->columns; j++) {
        if (lp->column[j].place == LP_HIGH) { /* only room of classes has a most */
            limit[lp->type_rows + lp->column[j].index] -= lp->column[j].most;
        }
    }
    for (int row = 0; row < lp->rows; row++) {
        const double *inverse = lp->inverse + (size_t)row * (size_t)lp->rows;
        double sum = 0;
        for (int k = 0; k < lp->rows; k++) {
            sum += inverse[k] * limit[k];
        }
        values[row] = sum > 0 ? sum : 0;
    }
}

/* Inverts the basis afresh by elimination; false, with the old inverse spoilt, when it cannot. */
bool cutting_lp_invert(struct CuttingLp *lp)
{
    const size_t rows = (size_t)lp->rows;
    lp->pivots_since = 0;
    memset(lp->work, 0, rows * rows * sizeof *lp->work);
    memset(lp->inverse, 0, rows * rows * sizeof *lp->inverse);
    for (size_t row = 0; row < rows; row++) {
        lp->inverse[row * rows + row] = 1;
        spread_column(lp, &lp->column[lp->basis[row]], lp->work, (int)row);
    }
    for (size_t at = 0; at < rows; at++) {
        size_t best = at;
        for (size_t row = at + 1; row < rows; row++) {
            best = fabs(lp->work[row * rows + at]) > fabs(lp->work[best * rows + at]) ? row : best;
        }
        if (fabs(lp->work[best * rows + at]) < pivot_tolerance) {
            return false;
        }
        if (best != at) {
            swap_rows(lp->work, rows, at, best);
            swap_rows(lp->inverse, rows, at, best);
        }
        const double pivot = lp->work[at * rows + at];
        for (size_t k = 0; k < rows; k++) {
            lp->work[at * rows + k] /= pivot;
            lp->inverse[at * rows + k] /= pivot;
        }
        for (size_t row = 0; row < rows; row++) {
            const double factor = lp->work[row * rows + at];
            if (row != at && (factor > 0 || factor < 0)) {
                for (size_t k = 0; k < rows; k++) {
                    lp->work[row * rows + k] -= factor * lp->work[at * rows + k];
                    lp->inverse[row * rows + k] -= factor * lp->inverse[at * rows + k];
                }
            }
        }
    }
    cutting_lp_values(lp, lp->eased, lp->value);
    return true;
}

/* All pieces missing, all classes at their least number of bins. */
static bool starting_basis(struct CuttingLp *lp)
{
    for (int row = 0; row < lp->type_rows; row++) {
        lp->basis[row] = 2 * row + 1;
    }
    for (int c = 0; c < lp->class_count; c++) {
        const int room = 2 * (lp->type_rows + c);
        const bool least = lp->column[room].most < lp->limit[lp->type_rows + c];
        lp->column[room].place = least ? LP_HIGH : LP_BASIC;
        lp->basis[lp->type_rows + c] = least ? room + 1 : room;
    }
    for (int side = 0; side < lp->side_count; side++) {
        lp->basis[cutting_lp_side_row(lp, side)] = 2 * (lp->type_rows + lp->class_count) + side;
    }
    for (int row = 0; row < lp->rows; row++) {
        lp->column[lp->basis[row]].place = LP_BASIC;
    }
    return cutting_lp_invert(lp);
}

/* Every row another hair, the same in every run. */
static void ease_limits(struct CuttingLp *lp)
{
    double part = 0;
    for (int row = 0; row < lp->rows; row++) {
        part += golden;
        part -= part >= 1 ? 1 : 0;
        lp->eased[row] = lp->limit[row] + (row < lp->type_rows ? -hair : hair) * (1 + part);
    }
}

void cutting_lp_ease(struct CuttingLp *lp, int turn)
{
    const size_t rows = (size_t)lp->rows;
    double part = 0.0112 * turn;
    memset(lp->work, 0, rows * rows * sizeof *lp->work);
    for (int row = 0; row < lp->rows; row++) {
        part += golden;
        part -= part >= 1 ? 1 : 0;
        if (lp->value[row] > hair / 1000) {
            continue;
        }
        const double more = hair * (1 + part);
        lp->value[row] += more;
        spread_column(lp, &lp->column[lp->basis[row]], lp->work, row);
        for (size_t k = 0; k < rows; k++) {
            lp->eased[k] += more * lp->work[k * rows + (size_t)row];
        }
    }
}

bool cutting_lp_begin(struct Arena *arena, struct CuttingLp *lp, const struct CuttingCase *problem,
                      const struct CuttingLevel *level, double cost_unit, double missing_rate)
{
    lp->columns = 0;
    lp->type_rows = 0;
    for (int type = 0; type < problem->type_count; type++) {
        lp->row_of_type[type] = -1;
        if (level->wanted[type] > 0) {
            lp->limit[lp->type_rows] = level->wanted[type];
            lp->row_length_mm[lp->type_rows] = problem->length_mm[type];
            lp->row_of_type[type] = lp->type_rows;
            if (!add_column(arena, lp, LP_SURPLUS, lp->type_rows, 0, INFINITY) ||
                !add_column(arena, lp, LP_MISSING, lp->type_rows, 0, INFINITY)) {
                return false;
            }
            lp->type_rows++;
        }
    }
    for (int c = 0; c < lp->class_count; c++) {
        lp->cost_of_class[c] = (double)problem->classes[c].cost / cost_unit;
        for (int side = 0; side < lp->side_count; side++) {
            lp->side_of_class[c * CUTTING_SIDES + side] = (double)problem->classes[c].side[side] / lp->side_unit[side];
        }
        lp->limit[lp->type_rows + c] = level->high[c];
        if (!add_column(arena, lp, LP_ROOM, c, 0, level->high[c] - level->low[c]) ||
            !add_column(arena, lp, LP_EMPTY, c, lp->cost_of_class[c], INFINITY)) {
            return false;
        }
    }
    lp->rows = lp->type_rows + lp->class_count + lp->side_count;
    for (int side = 0; side < lp->side_count; side++) {
        lp->limit[cutting_lp_side_row(lp, side)] = (double)level->side_left[side] / lp->side_unit[side];
        if (!add_column(arena, lp, LP_SIDE_ROOM, side, 0, INFINITY)) {
            return false;
        }
    }
    cutting_lp_missing_rate(lp, missing_rate);
    ease_limits(lp);
    return starting_basis(lp);
}
