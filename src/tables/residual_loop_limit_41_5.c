/* Greatest loop impedance, or electrode resistance, that a residual current device can protect.
 *
 * Source: BS 7671:2018+A2:2022, Table 41.5 and regulation 411.5.3: RA times I delta n at most 50 V.
 * Trust:  the rule two sources; the table's own figures (1667, 500, 167 and 100 ohm for 30, 100, 300 and 500 mA) from
 *         memory, and equal to the rule.
 * Rows:   the rule, so any rated residual current, and not rounded: the print rounds 1666.7 and 166.7 up. Without a
 *         rating there is nothing to protect with: 0 ohm. */
#include "edition_private.h"

const struct ResidualLoop residual_loop_limit_41_5 = {
    .ref = {TABLES_BS7671, "41.5", "greatest loop impedance with a residual current device", TRUST_PARTLY_FROM_MEMORY,
            "rule two sources, table from memory"},
    .touch_v = 50,
};

double touch_limit_v(const struct Edition *edition)
{
    return edition->residual_loop->touch_v;
}

void residual_loop_limit_cells(const struct Edition *edition, struct TextBuilder *out)
{
    static const double ratings_a[] = {0.03, 0.1, 0.3, 0.5}; /* as printed */
    text_add(out, "rated residual current A,ohm\n");
    for (int row = 0; row < COUNT_OF(ratings_a); row++) {
        cells_row(out, (const double[]){ratings_a[row], residual_loop_limit_ohm(edition, ratings_a[row])}, 2);
    }
}

double residual_loop_limit_ohm(const struct Edition *edition, double residual_a)
{
    return residual_a > 0 ? touch_limit_v(edition) / residual_a : 0;
}

const struct TableRef *residual_loop_limit_ref(const struct Edition *edition)
{
    return &edition->residual_loop->ref;
}
