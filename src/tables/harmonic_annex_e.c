/* Reduction for third-harmonic current in four- and five-core cables with four loaded conductors.
 *
 * Source: IEC 60364-5-52, Annex E, Table E.52.1.
 * Trust:  from memory.
 * Rows:   the printed bands of third harmonic in the line current, each up to and including its end. Where the neutral
 *         decides, the current to be carried is the neutral's. */
#include "fault_tables_private.h"

#include <math.h>

struct HarmonicRow {
    double factor;
    bool on_neutral;
};

static const double up_to_percent[] = {15, 33, 45};

/* clang-format off */
static const struct HarmonicRow rows[] = {
    /* up to 15 % */ {1.00, false},
    /* 15 to 33 % */ {0.86, false},
    /* 33 to 45 % */ {0.86,  true},
    /* over 45 %  */ {1.00,  true},
};
/* clang-format on */

_Static_assert(COUNT_OF(rows) == COUNT_OF(up_to_percent) + 1, "the last band has no end");

double harmonic_factor(double third_percent, bool *sized_on_neutral)
{
    int row = COUNT_OF(up_to_percent);
    (void)lookup_next_up(up_to_percent, COUNT_OF(up_to_percent), third_percent, &row);
    *sized_on_neutral = rows[row].on_neutral;
    return rows[row].factor;
}

void harmonic_cells(struct TextBuilder *out)
{
    text_add(out, "third harmonic to %,factor,sized on\n");
    for (int row = 0; row < COUNT_OF(rows); row++) {
        cells_number(out, row < COUNT_OF(up_to_percent) ? up_to_percent[row] : HUGE_VAL, false);
        cells_number(out, rows[row].factor, false);
        cells_text(out, rows[row].on_neutral ? "neutral" : "line", true);
    }
}

const struct TableRef *harmonic_ref(void)
{
    static const struct TableRef ref = {.standard = "IEC 60364-5-52",
                                        "E.52.1",
                                        "reduction for third-harmonic current",
                                        TRUST_FROM_MEMORY,
                                        "from memory"};
    return &ref;
}
