/* Least inside radius of a bend of a four-pair data cable in place, as a multiple of its diameter.
 *
 * Source: practice of ISO/IEC 11801 and EN 50174: 4 x without a screen, 8 x with one.
 * Trust:  from memory; many makers ask 4 to 6 x for screened cable.
 * Rows:   two, with and without a screen. */
#include "mechanics_tables.h"
#include "tables_private.h"

static const double unscreened_factor = 4;
static const double screened_factor = 8;

double bend_radius_data_factor(bool screened)
{
    return screened ? screened_factor : unscreened_factor;
}

void bend_radius_data_cells(struct TextBuilder *out)
{
    text_add(out, "cable,radius over diameter\nunscreened,");
    cells_number(out, unscreened_factor, true);
    text_add(out, "screened,");
    cells_number(out, screened_factor, true);
}

const struct TableRef *bend_radius_data_ref(void)
{
    static const struct TableRef ref = {.standard = "ISO/IEC 11801, EN 50174",
                                        "practice",
                                        "least inside radius of a bend of a data cable",
                                        TRUST_FROM_MEMORY,
                                        "from memory",
                                        .words = TABLE_OF_DATA_BENDS};
    return &ref;
}
