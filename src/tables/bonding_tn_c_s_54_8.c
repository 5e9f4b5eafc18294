/* Least main bonding conductor where the supply's neutral is also its earth (PME, TN-C-S), copper.
 *
 * Source: BS 7671:2018+A2:2022, Table 54.8 (regulation 544.1.1). The distributor may ask for more.
 * Trust:  two sources.
 * Rows:   the printed bands of the neutral's copper size, each up to and including its end; the last has no end. */
#include "fault_tables_private.h"

#include <math.h>

static const double neutral_up_to_mm2[] = {35, 50, 95, 150, INFINITY};
static const double bonding_mm2[] = {10, 16, 25, 35, 50};

_Static_assert(COUNT_OF(bonding_mm2) == COUNT_OF(neutral_up_to_mm2), "a size for each band");

bool bonding_tn_c_s(double supply_neutral_mm2, double *out_mm2)
{
    int row = 0;
    if (!isfinite(supply_neutral_mm2) || !(supply_neutral_mm2 > 0) ||
        !lookup_next_up(neutral_up_to_mm2, COUNT_OF(neutral_up_to_mm2), supply_neutral_mm2, &row)) {
        return false;
    }
    *out_mm2 = bonding_mm2[row];
    return true;
}

const struct TableRef *bonding_tn_c_s_ref(void)
{
    static const struct TableRef ref = {TABLES_BS7671, "54.8", "main bonding conductor on a TN-C-S supply",
                                        "two sources"};
    return &ref;
}
