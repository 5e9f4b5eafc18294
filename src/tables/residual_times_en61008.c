/* Operating times of residual current devices: general and time-delayed (S), at 1, 2 and 5 times their rating.
 *
 * Source: BS EN 61008-1 and BS EN 61009-1, limits of break time and non-actuating time.
 * Trust:  two sources; the shortest time of a delayed one at twice its rating from memory.
 * Rows:   the three printed multiples and no others. */
#include "fault_tables_private.h"

struct ResidualRow {
    int multiple;
    double general_s, delayed_s, delayed_shortest_s;
};

/* clang-format off */
static const struct ResidualRow rows[] = {
    /* times, general, delayed, delayed not before */
    {1,         0.300,   0.500,              0.130},
    {2,         0.150,   0.200,              0.060},
    {5,         0.040,   0.150,              0.050},
};
/* clang-format on */

static const struct ResidualRow *row_of(int multiple)
{
    for (int index = 0; index < COUNT_OF(rows); index++) {
        if (rows[index].multiple == multiple) {
            return &rows[index];
        }
    }
    return NULL;
}

bool residual_time_s(bool time_delayed, int multiple, double *out_s)
{
    const struct ResidualRow *row = row_of(multiple);
    if (row == NULL) {
        return false;
    }
    *out_s = time_delayed ? row->delayed_s : row->general_s;
    return true;
}

bool residual_shortest_s(int multiple, double *out_s)
{
    const struct ResidualRow *row = row_of(multiple);
    if (row == NULL) {
        return false;
    }
    *out_s = row->delayed_shortest_s;
    return true;
}

void residual_time_cells(struct TextBuilder *out)
{
    text_add(out, "times its rating,general s,delayed s,delayed not before s\n");
    for (int index = 0; index < COUNT_OF(rows); index++) {
        const struct ResidualRow *row = &rows[index];
        cells_row(out, (const double[]){row->multiple, row->general_s, row->delayed_s, row->delayed_shortest_s}, 4);
    }
}

const struct TableRef *residual_time_ref(void)
{
    static const struct TableRef ref = {.standard = "BS EN 61008-1, BS EN 61009-1",
                                        "operating times",
                                        "operating times of residual current devices",
                                        TRUST_PARTLY_FROM_MEMORY,
                                        "two sources, 0.06 s from memory",
                                        .words = TABLE_OF_OPERATING_TIMES};
    return &ref;
}
