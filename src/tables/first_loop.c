/* How much more energy the first loop of a fault lets through than half a cycle of its steady current.
 *
 * A fault does not begin where its current would: the first loop is larger and longer than half a sine, the more so the
 * less resistance is in the circuit. A breaker without a published class that opens at the first zero lets that much
 * through, if it does nothing to the current.
 *
 * Source: computed, worst moment of the cycle, for the lower of the power factors that BS EN 60898-1 Table 17 pairs
 * with a test current: 0.93, 0.85, 0.75, 0.65, 0.45, 0.20. Each is rounded up to two decimals; a test integrates them
 *         anew.
 * Trust:  computed; the pairs of current and power factor from memory. Measured breakers limit the current above 1 to
 *         2 kA, so that less gets through.
 * Rows:   the upper end of each band of current; beyond 10 kA the last row stands. */
#include "fault_tables_private.h"

#include <math.h>

static const double up_to_a[] = {1500, 3000, 4500, 6000, 10000};
static const double factors[] = {1.03, 1.09, 1.20, 1.36, 1.83};
static const double beyond = 3.13;

_Static_assert(COUNT_OF(up_to_a) == COUNT_OF(factors), "a factor for each band");

double first_loop_factor(double current_a)
{
    int row = 0;
    return lookup_next_up(up_to_a, COUNT_OF(up_to_a), current_a, &row) ? factors[row] : beyond;
}

void first_loop_cells(struct TextBuilder *out)
{
    text_add(out, "current to A,times\n");
    for (int row = 0; row < COUNT_OF(factors); row++) {
        cells_row(out, (const double[]){up_to_a[row], factors[row]}, 2);
    }
    cells_row(out, (const double[]){HUGE_VAL, beyond}, 2);
}

const struct TableRef *first_loop_ref(void)
{
    static const struct TableRef ref = {.standard = "BS EN 60898-1",
                                        "17",
                                        "energy of the first loop of a fault over half a cycle's",
                                        TRUST_PARTLY_FROM_MEMORY,
                                        "computed; its power factors from memory"};
    return &ref;
}
