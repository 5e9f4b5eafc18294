/* Greatest spacing of supports along rigid conduit.
 *
 * Source: On-Site Guide, Table D3, rigid metal and rigid insulating conduit.
 * Trust:  insulating two sources (a conduit maker's page prints the same); metal from memory.
 * Rows:   bands by nominal size, "more than the last band, up to and including". */
#include "tables_private.h"
#include "takeoff_tables.h"

#include <math.h>

struct ConduitRow {
    double up_to_mm, horizontal_m, vertical_m;
};
/* clang-format off */
static const struct ConduitRow metal[]      = {{16, 0.75, 1.0}, {25, 1.75, 2.0},  {40, 2.0, 2.25}, {HUGE_VAL, 2.25, 2.5}};
static const struct ConduitRow insulating[] = {{16, 0.75, 1.0}, {25, 1.5,  1.75}, {40, 1.75, 2.0}, {HUGE_VAL, 2.0,  2.0}};
/* clang-format on */

_Static_assert(COUNT_OF(metal) == COUNT_OF(insulating), "the same bands");

static double spacing_in(const struct ConduitRow *rows, double size_mm, bool vertical)
{
    while (rows->up_to_mm < size_mm) {
        rows++;
    }
    return vertical ? rows->vertical_m : rows->horizontal_m;
}

bool conduit_spacing(enum Material material, double size_mm, bool vertical, double *out_m)
{
    if (!(size_mm > 0) || size_mm > 1000) {
        return false;
    }
    const double steel_m = spacing_in(metal, size_mm, vertical);
    const double plastic_m = spacing_in(insulating, size_mm, vertical);
    *out_m = material == MATERIAL_STEEL ? steel_m : material == MATERIAL_PLASTIC ? plastic_m : fmin(steel_m, plastic_m);
    return true;
}

void conduit_spacing_cells(struct TextBuilder *out)
{
    text_add(out, "size to mm,metal horizontal m,metal vertical m,insulating horizontal m,insulating vertical m\n");
    for (int row = 0; row < COUNT_OF(metal); row++) {
        cells_row(out,
                  (const double[]){metal[row].up_to_mm, metal[row].horizontal_m, metal[row].vertical_m,
                                   insulating[row].horizontal_m, insulating[row].vertical_m},
                  5);
    }
}

const struct TableRef *conduit_spacing_ref(void)
{
    static const struct TableRef ref = {.standard = "On-Site Guide to BS 7671",
                                        "D3",
                                        "spacing of conduit supports",
                                        TRUST_PARTLY_FROM_MEMORY,
                                        "insulating two sources, metal from memory"};
    return &ref;
}
