/* Longest time within which a fault to earth must be cut off, alternating current.
 *
 * Source: BS 7671:2018+A2:2022, Table 41.1 for final circuits; regulations 411.3.2.3 and 411.3.2.4 for the others.
 * Trust:  120 to 230 V and the 5 and 1 s two sources, the other bands seen.
 * Rows:   the printed bands of U0, each up to and including its end; the table starts above 50 V, and up to that the
 *         first band stands. A voltage that is no number gets the shortest time. */
#include "edition_private.h"

/* One printed row a line */
/* clang-format off */
const struct DisconnectionTimes disconnection_times_41_1 = {
    .ref = {TABLES_BS7671, "41.1", "longest disconnection times", TRUST_PUBLISHED, "120 to 230 V two sources, other voltages seen"},
    .up_to_v = {120, 230, 400},
    .final_s = {
        /*      U0, V      TN    TT */
        /*  50 to 120 */ {0.8,  0.3},
        /* 120 to 230 */ {0.4,  0.2},
        /* 230 to 400 */ {0.2, 0.07},
        /*   over 400 */ {0.1, 0.04},
    },
    .distribution_s = {5, 1},
};
/* clang-format on */

double disconnection_time_s(const struct Edition *edition, bool tt, bool final_circuit, double u0_v)
{
    const struct DisconnectionTimes *times = edition->disconnection;
    const int column = tt ? 1 : 0;
    if (!final_circuit) {
        return times->distribution_s[column];
    }
    int row = DISCONNECTION_BANDS - 1; /* above the last end the last row stands */
    (void)lookup_next_up(times->up_to_v, DISCONNECTION_BANDS - 1, u0_v, &row);
    return times->final_s[row][column];
}

const struct TableRef *disconnection_time_ref(const struct Edition *edition)
{
    return &edition->disconnection->ref;
}
