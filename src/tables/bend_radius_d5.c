/* Least inside radius of a bend, as a multiple of the cable's overall diameter.
 *
 * Source: On-Site Guide to BS 7671, Table D5; for armoured cable also three makers' datasheets for BS 5467 (6 x up to
 *         16 mm2 circular, 8 x from 25 mm2).
 * Trust:  armoured two sources; without armour from memory. One maker asks 10 x for BS 6724 and for low smoke armoured
 *         cable at large: that is its own stricter rule, and 6 x and 8 x stand here; ask the maker of the cable bought.
 *         Single cores in conduit or duct may go tighter (2 x and 3 x), which is not used.
 * Rows:   armoured by size of the conductor, and between 16 and 25 mm2 the wider; without armour in bands of diameter,
 * "more than the last band, up to and including". */
#include "cable_kinds.h"
#include "tables_private.h"

#include <math.h>

static const double circular_to_mm2 = 16;
static const double circular_factor = 6;
static const double shaped_factor = 8;

static const struct {
    double up_to_mm, factor;
} plain_rows[] = {{10, 3}, {25, 4}, {HUGE_VAL, 6}};

static double plain_factor(double overall_mm)
{
    int row = 0;
    while (overall_mm > plain_rows[row].up_to_mm && !lookup_same(overall_mm, plain_rows[row].up_to_mm)) {
        row++;
    }
    return plain_rows[row].factor;
}

bool bend_radius_factor(enum CableType type, double size_mm2, double overall_mm, double *out)
{
    switch (cable_kind(type)->bend) {
    case BEND_ARMOURED:
        if (!(size_mm2 > 0) || !isfinite(size_mm2)) {
            return false;
        }
        *out = size_mm2 <= circular_to_mm2 || lookup_same(size_mm2, circular_to_mm2) ? circular_factor : shaped_factor;
        return true;
    case BEND_PLAIN:
        if (!(overall_mm > 0) || !isfinite(overall_mm)) {
            return false;
        }
        *out = plain_factor(overall_mm);
        return true;
    case BEND_DATA:
    case BEND_NONE: break;
    }
    return false;
}

enum Trust bend_radius_trust(enum CableType type)
{
    return cable_kind(type)->bend == BEND_ARMOURED ? TRUST_PUBLISHED : TRUST_FROM_MEMORY;
}

void bend_radius_cells(struct TextBuilder *out)
{
    text_add(out, "cable,mm2 to,overall mm to,radius over diameter\n");
    cells_text(out, "armoured", false);
    cells_row(out, (const double[]){circular_to_mm2, NOT_GIVEN, circular_factor}, 3);
    cells_text(out, "armoured", false);
    cells_row(out, (const double[]){HUGE_VAL, NOT_GIVEN, shaped_factor}, 3);
    for (int row = 0; row < COUNT_OF(plain_rows); row++) {
        cells_text(out, "without armour", false);
        cells_row(out, (const double[]){NOT_GIVEN, plain_rows[row].up_to_mm, plain_rows[row].factor}, 3);
    }
}

const struct TableRef *bend_radius_ref(void)
{
    static const struct TableRef ref = {
        .standard = "On-Site Guide to BS 7671",
        "D5",
        "least inside radius of a bend",
        TRUST_PARTLY_FROM_MEMORY,
        "armoured two sources, BS 6724 taken like BS 5467 though one maker asks 10 x; the "
        "others from memory"};
    return &ref;
}
