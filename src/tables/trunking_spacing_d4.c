/* Greatest spacing of fixings along trunking.
 *
 * Source: On-Site Guide, Table D4, metal and insulating trunking; a guide book to the 16th Edition prints it by size.
 * Trust:  two sources up to 2500 mm2; above that from memory, the lower of two figures where memory and book differ.
 * Rows:   bands by cross-section, "more than the last band, up to and including"; none up to 300 mm2. The route file
 * does not say what trunking is made of: the closer spacing of the two is given. */
#include "tables_private.h"
#include "takeoff_tables.h"

#include <math.h>

struct TrunkingRow {
    double up_to_mm2, metal_horizontal_m, metal_vertical_m, insulating_horizontal_m, insulating_vertical_m;
};
/* clang-format off */
static const struct TrunkingRow rows[] = {
    {300,      NOT_GIVEN, NOT_GIVEN, NOT_GIVEN, NOT_GIVEN},
    {700,      0.75, 1.0, 0.5,  0.5},
    {1500,     1.25, 1.5, 0.5,  0.5},
    {2500,     1.75, 2.0, 1.25, 1.25},
    {5000,     3.0,  3.0, 1.5,  2.0},
    {HUGE_VAL, 3.0,  3.0, 1.75, 2.0},
};
/* clang-format on */

bool trunking_spacing(double section_mm2, bool vertical, double *out_m)
{
    if (!(section_mm2 > 0)) {
        return false;
    }
    const struct TrunkingRow *row = rows;
    while (row->up_to_mm2 < section_mm2) {
        row++;
    }
    double metal_m = 0;
    double insulating_m = 0;
    if (!lookup_cell(vertical ? row->metal_vertical_m : row->metal_horizontal_m, &metal_m) ||
        !lookup_cell(vertical ? row->insulating_vertical_m : row->insulating_horizontal_m, &insulating_m)) {
        return false;
    }
    *out_m = fmin(metal_m, insulating_m);
    return true;
}

void trunking_spacing_cells(struct TextBuilder *out)
{
    text_add(out, "section to mm2,metal horizontal m,metal vertical m,insulating horizontal m,insulating vertical m\n");
    for (int index = 0; index < COUNT_OF(rows); index++) {
        const struct TrunkingRow *row = &rows[index];
        cells_row(out,
                  (const double[]){row->up_to_mm2, row->metal_horizontal_m, row->metal_vertical_m,
                                   row->insulating_horizontal_m, row->insulating_vertical_m},
                  5);
    }
}

const struct TableRef *trunking_spacing_ref(void)
{
    static const struct TableRef ref = {.standard = "On-Site Guide to BS 7671",
                                        "D4",
                                        "spacing of trunking fixings",
                                        TRUST_PARTLY_FROM_MEMORY,
                                        "two sources to 2500 mm2, above from memory"};
    return &ref;
}
