/* Greatest spacing of clips and cleats along a cable.
 *
 * Source: On-Site Guide, Table D1, armoured and non-armoured sheathed columns.
 * Trust:  non-armoured two sources; armoured from memory, to be checked against the print. Armoured lies between
 *         non-armoured and mineral insulated in every band, as it must.
 * Rows:   bands by overall diameter, "more than the last band, up to and including"; a diameter beyond the last band
 *         or in a blank one has no figure. */
#include "tables_private.h"

struct SpacingRow {
    double up_to_mm;                   /* overall diameter of the cable */
    double horizontal_mm, vertical_mm; /* as printed */
};

static const struct SpacingRow armoured_rows[] = {
    {9, NOT_GIVEN, NOT_GIVEN},
    {15, 350, 450},
    {20, 400, 550},
    {40, 450, 600},
};

static const struct SpacingRow plain_rows[] = {
    {9, 250, 400},
    {15, 300, 400},
    {20, 350, 450},
    {40, 400, 550},
};

_Static_assert(COUNT_OF(armoured_rows) == COUNT_OF(plain_rows), "the same bands");

bool support_spacing(bool armoured, double overall_mm, bool vertical, double *out_m)
{
    const struct SpacingRow *rows = armoured ? armoured_rows : plain_rows;
    const int count = armoured ? COUNT_OF(armoured_rows) : COUNT_OF(plain_rows);
    if (!(overall_mm > 0)) {
        return false;
    }
    for (int index = 0; index < count; index++) {
        if (overall_mm <= rows[index].up_to_mm || lookup_same(overall_mm, rows[index].up_to_mm)) {
            double spacing_mm = 0;
            if (!lookup_cell(vertical ? rows[index].vertical_mm : rows[index].horizontal_mm, &spacing_mm)) {
                return false;
            }
            *out_m = spacing_mm / 1000;
            return true;
        }
    }
    return false;
}

void support_spacing_cells(struct TextBuilder *out)
{
    text_add(out, "diameter to mm,armoured horizontal mm,armoured vertical mm,other horizontal mm,other vertical mm\n");
    for (int row = 0; row < COUNT_OF(armoured_rows); row++) {
        const struct SpacingRow *armoured = &armoured_rows[row];
        const struct SpacingRow *plain = &plain_rows[row];
        cells_row(out,
                  (const double[]){armoured->up_to_mm, armoured->horizontal_mm, armoured->vertical_mm,
                                   plain->horizontal_mm, plain->vertical_mm},
                  5);
    }
}

const struct TableRef *support_spacing_ref(void)
{
    static const struct TableRef ref = {.standard = "On-Site Guide to BS 7671",
                                        "D1",
                                        "spacing of cable supports",
                                        TRUST_PARTLY_FROM_MEMORY,
                                        "non-armoured two sources, armoured from memory"};
    return &ref;
}
