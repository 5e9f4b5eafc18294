/* How much of a duct's bore cables may take up.
 *
 * Source: a distributor's guide, with the figures of the American code: 53 % for one cable, 31 % for two, 40 % for
 * three and more. The same guide advises to take 15 % off where the duct bends. No British standard gives a figure for
 * ducts. Trust:  53, 31 and 40 % two sources; the 15 % seen once. Rows:   by number of cables, exact. */
#include "mechanics_tables.h"
#include "tables_private.h"

static const double allowed_percent[] = {53, 31, 40};

bool duct_fill_allowed(int cables, double *out_percent)
{
    if (cables < 1) {
        return false;
    }
    const int last = COUNT_OF(allowed_percent);
    *out_percent = allowed_percent[(cables < last ? cables : last) - 1];
    return true;
}

double duct_fill_bent(void)
{
    return 0.85;
}

void duct_fill_cells(struct TextBuilder *out)
{
    text_add(out, "cables,share of the bore %,share where it bends %\n");
    for (int row = 0; row < COUNT_OF(allowed_percent); row++) {
        text_print(out, "%d%s,", row + 1, row + 1 < COUNT_OF(allowed_percent) ? "" : " or more");
        cells_row(out, (const double[]){allowed_percent[row], allowed_percent[row] * duct_fill_bent()}, 2);
    }
}

const struct TableRef *duct_fill_ref(void)
{
    static const struct TableRef ref = {.standard = "distributor's guide",
                                        "duct fill",
                                        "share of a duct's bore that cables may fill",
                                        TRUST_PUBLISHED,
                                        "two sources, American figures; no British one is known",
                                        .words = TABLE_OF_DUCT_FILL};
    return &ref;
}
