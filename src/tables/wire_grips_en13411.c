/* Wire rope grips (U-bolts) for an eye: how many, and how tight their nuts.
 *
 * Source: a rope firm's fitting note that prints the figures of EN 13411-5 type 1 (nominal sizes 5 to 40 mm, torque
 * with greased threads); an inspector's course page gives the same 4 grips for 8 to 18 mm and 9 Nm at 10 mm. Trust: two
 * sources for 8 to 18 mm, one for the rest; the standard itself was not seen. Not for spiral ropes, that is strand such
 * as 1x7 and 1x19: the same note says so. Rows:   between two sizes the next larger, beyond the largest no figure. Wire
 * thinner than the first row takes that row: the note begins there. */
#include "tables_private.h"
#include "takeoff_tables.h"

/* clang-format off */
static const struct { double size_mm; struct WireGrips grips; } rows[] = {
    { 5.0, {3,   2.0}},
    { 6.5, {3,   3.5}},
    { 8.0, {4,   6.0}},
    {10.0, {4,   9.0}},
    {12.0, {4,  20.0}},
    {14.0, {4,  33.0}},
    {16.0, {4,  49.0}},
    {19.0, {4,  67.7}},
    {22.0, {5, 107.0}},
    {26.0, {5, 147.0}},
    {30.0, {6, 212.0}},
    {34.0, {6, 296.0}},
    {40.0, {6, 363.0}},
};
/* clang-format on */

bool wire_grips(double wire_mm, struct WireGrips *out)
{
    for (int i = 0; wire_mm > 0 && i < COUNT_OF(rows); i++) {
        if (rows[i].size_mm > wire_mm || lookup_same(rows[i].size_mm, wire_mm)) {
            *out = rows[i].grips;
            return true;
        }
    }
    return false;
}

void wire_grips_cells(struct TextBuilder *out)
{
    text_add(out, "wire to mm,grips,torque Nm\n");
    for (int row = 0; row < COUNT_OF(rows); row++) {
        cells_row(out, (const double[]){rows[row].size_mm, rows[row].grips.count, rows[row].grips.torque_nm}, 3);
    }
}

const struct TableRef *wire_grips_ref(void)
{
    static const struct TableRef ref = {.standard = "EN 13411-5",
                                        "wire rope grips",
                                        "grips of an eye and the torque of their nuts",
                                        TRUST_PUBLISHED,
                                        "seen in a rope firm's note; 8 to 18 mm in two sources",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
