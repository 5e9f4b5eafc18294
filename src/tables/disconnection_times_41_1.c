/* Longest time within which a fault to earth must be cut off, alternating current.
 *
 * Source: BS 7671:2018+A2:2022, Table 41.1 for final circuits; regulations 411.3.2.3 and 411.3.2.4 for the others.
 * Trust:  120 to 230 V and the 5 and 1 s two sources, the other bands seen.
 * Rows:   the printed bands of U0, each up to and including its end; the table starts above 50 V, and up to that the
 *         first band stands. A voltage that is no number gets the shortest time. */
#include "fault_tables_private.h"

enum { TN, TT, COLUMNS };

static const double up_to_v[] = {120, 230, 400};

/* One printed row a line */
/* clang-format off */
static const double times_s[] = {
    /*      U0, V      TN    TT */
    /*  50 to 120 */  0.8,  0.3,
    /* 120 to 230 */  0.4,  0.2,
    /* 230 to 400 */  0.2, 0.07,
    /*   over 400 */  0.1, 0.04,
};
/* clang-format on */

_Static_assert(COUNT_OF(times_s) == (COUNT_OF(up_to_v) + 1) * COLUMNS, "a time for each band and system");

static const double distribution_s[COLUMNS] = {[TN] = 5, [TT] = 1};

double disconnection_time_s(bool tt, bool final_circuit, double u0_v)
{
    const int column = tt ? TT : TN;
    if (!final_circuit) {
        return distribution_s[column];
    }
    int row = COUNT_OF(up_to_v);
    (void)lookup_next_up(up_to_v, COUNT_OF(up_to_v), u0_v, &row); /* above the last end the last row stands */
    return times_s[row * COLUMNS + column];
}

const struct TableRef *disconnection_time_ref(void)
{
    static const struct TableRef ref = {TABLES_BS7671, "41.1", "longest disconnection times",
                                        "120 to 230 V two sources, other voltages seen"};
    return &ref;
}
