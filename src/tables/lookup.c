/* The searches that all tables share. None of them interpolates or extrapolates: a table answers with a printed
 * figure and the row that it stands in, or it does not answer. */
#include "tables_private.h"

bool lookup_exact(const double *keys, int count, double wanted, int *out_row)
{
    int low = 0;
    for (int high = count; low < high;) {
        const int middle = low + (high - low) / 2;
        if (lookup_same(keys[middle], wanted)) {
            *out_row = middle;
            return true;
        }
        if (keys[middle] < wanted) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return false;
}

bool lookup_next_up(const double *keys, int count, double wanted, int *out_row)
{
    for (int row = 0; row < count; row++) {
        if (keys[row] >= wanted || lookup_same(keys[row], wanted)) {
            *out_row = row;
            return true;
        }
    }
    return false;
}

bool lookup_cell(double cell, double *out)
{
    /* All figures are positive; testing for that needs no == on doubles and refuses a slipped minus sign as well. */
    if (!(cell > 0)) {
        return false;
    }
    *out = cell;
    return true;
}

bool lookup_factor(const struct FactorTable *table, double wanted, int column, struct Figure *out)
{
    int row = 0;
    if (column < 0 || column >= table->columns || !lookup_next_up(table->keys, table->rows, wanted, &row)) {
        return false;
    }
    double value = 0;
    if (!lookup_cell(table->cells[row * table->columns + column], &value)) {
        return false;
    }
    *out = (struct Figure){.value = value, .row = table->keys[row]};
    return true;
}
