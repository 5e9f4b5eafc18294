/* Copper area of the protective core of flat cable, mm2, for the size of its line cores.
 *
 * Source: BS 6004 Table 8.
 * Trust:  from memory; that such pairs are made is seen in the R1 + R2 tables that the trade prints.
 * Rows:   the printed sizes and no others. */
#include "fault_tables_private.h"

/* clang-format off */
static const struct { double line_mm2, core_mm2; } rows[] = {
    {1,   1},
    {1.5, 1},
    {2.5, 1.5},
    {4,   1.5},
    {6,   2.5},
    {10,  4},
    {16,  6},
};
/* clang-format on */

bool flat_protective_core_mm2(double line_mm2, double *out_mm2)
{
    for (int index = 0; index < COUNT_OF(rows); index++) {
        if (lookup_same(rows[index].line_mm2, line_mm2)) {
            *out_mm2 = rows[index].core_mm2;
            return true;
        }
    }
    return false;
}

void flat_protective_core_cells(struct TextBuilder *out)
{
    text_add(out, "line mm2,protective core mm2\n");
    for (int index = 0; index < COUNT_OF(rows); index++) {
        cells_row(out, (const double[]){rows[index].line_mm2, rows[index].core_mm2}, 2);
    }
}

const struct TableRef *flat_protective_core_ref(void)
{
    static const struct TableRef ref = {
        .standard = "BS 6004", "8", "protective conductor", TRUST_FROM_MEMORY, "from memory"};
    return &ref;
}
