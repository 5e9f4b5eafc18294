/* Least main bonding conductor where the supply's neutral is also its earth (PME, TN-C-S), copper.
 *
 * Source: BS 7671:2018+A2:2022, Table 54.8 (regulation 544.1.1). The distributor may ask for more.
 * Trust:  two sources.
 * Rows:   the printed bands of the neutral's copper size, each up to and including its end; the last has no end. */
#include "edition_private.h"

#include <math.h>

const struct BondingBands bonding_tn_c_s_54_8 = {
    .ref = {TABLES_BS7671, "54.8", "main bonding conductor on a TN-C-S supply", TRUST_PUBLISHED, "two sources"},
    .neutral_up_to_mm2 = {35, 50, 95, 150, INFINITY},
    .bonding_mm2 = {10, 16, 25, 35, 50},
};

bool bonding_tn_c_s(const struct Edition *edition, double supply_neutral_mm2, double *out_mm2)
{
    const struct BondingBands *bands = edition->bonding;
    int row = 0;
    if (!isfinite(supply_neutral_mm2) || !(supply_neutral_mm2 > 0) ||
        !lookup_next_up(bands->neutral_up_to_mm2, BONDING_BANDS, supply_neutral_mm2, &row)) {
        return false;
    }
    *out_mm2 = bands->bonding_mm2[row];
    return true;
}

void bonding_tn_c_s_cells(const struct Edition *edition, struct TextBuilder *out)
{
    text_add(out, "neutral to mm2,bonding mm2\n");
    for (int row = 0; row < COUNT_OF(edition->bonding->bonding_mm2); row++) {
        cells_row(out, (const double[]){edition->bonding->neutral_up_to_mm2[row], edition->bonding->bonding_mm2[row]},
                  2);
    }
}

const struct TableRef *bonding_tn_c_s_ref(const struct Edition *edition)
{
    return &edition->bonding->ref;
}
