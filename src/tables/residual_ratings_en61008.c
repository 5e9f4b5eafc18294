/* Rated residual currents that devices are sold with, those that protect a circuit.
 *
 * Source: BS EN 61008-1 and BS EN 61009-1, preferred values; 6 and 10 mA are for single outlets and left out.
 * Trust:  from memory.
 * Rows:   these and no others. */
#include "fault_tables_private.h"

static const double ratings_a[] = {0.03, 0.1, 0.3, 0.5};

int residual_ratings(const double **out_a)
{
    *out_a = ratings_a;
    return COUNT_OF(ratings_a);
}

void residual_rating_cells(struct TextBuilder *out)
{
    text_add(out, "residual current A\n");
    for (int row = 0; row < COUNT_OF(ratings_a); row++) {
        cells_row(out, &ratings_a[row], 1);
    }
}

const struct TableRef *residual_rating_ref(void)
{
    static const struct TableRef ref = {.standard = "BS EN 61008-1",
                                        "residual currents",
                                        "rated residual currents of devices",
                                        TRUST_FROM_MEMORY,
                                        "from memory",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
