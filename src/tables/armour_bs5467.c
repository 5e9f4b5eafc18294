/* Steel wire armour of BS 5467 cable as a conductor: area of all its wires and resistance at 20 degC.
 *
 * Source: BS 5467 (BS 6724 is built to the same dimensions): makers' datasheets for the areas; Guide to the Wiring
 *         Regulations 17th ed., Appendix 4 Table 4.4, for the resistances of 1.5 to 6 mm2; forum threads that quote
 *         the resistance table of BS 5467 for 4 x 16 and 4 x 25 mm2. The last column is 155 ohm mm2/km over the area
 *         of the whole number of wires that fits: steel 138, and 12 % for lay, tolerance and zinc.
 * Trust:  areas: two cores two sources to 150 mm2 and seen above, 4 x 2.5 and 4 x 70 mm2 seen, the rest from memory
 *         and checked by counting wires. Resistances: 1.5 to 6 mm2 and 4 x 16 mm2 seen, the rest from memory and
 *         checked by area. Where what was remembered did not fit the area the cell is blank, and 10 % over the last
 *         column stands for it: that is arithmetic, not print.
 * Rows:   exact sizes only. Of the makes of 25 and 35 mm2 the one with shaped conductors has all figures; it has the
 *         thinner armour, so its area and greatest resistance are the safer ones. The make with compacted round
 *         conductors has the lower resistance, by its estimated area (printed 2.1 for 4 x 25 mm2): that is the last
 *         column of those rows, as there the lower is the safer. Five cores have no area in any source: no row. */
#include "cable_kinds.h"
#include "fault_tables_private.h"

#include <math.h>

struct ArmourRow {
    int cores;
    double size_mm2;
    double area_mm2, greatest_ohm_per_km, by_area_ohm_per_km;
};

/* clang-format off */
static const struct ArmourRow rows[] = {
    /* cores, mm2, area mm2, greatest ohm/km, by area ohm/km */
    {2, 1.5,  15,      10.2, 10.15},
    {2, 2.5,  17,       8.8,  9.02},
    {2,   4,  19,       7.9,  8.12},
    {2,   6,  22,       7.0,  7.17},
    {2,  10,  26,       6.0,  5.94},
    {2,  16,  42,       3.7,  3.71},
    {2,  25,  42,       3.7,  3.71},
    {2,  35,  60,       2.6,  2.57},
    {2,  50,  68,       2.3,  2.27},
    {2,  70,  80,       2.0,  1.93},
    {2,  95, 113,       1.4,  1.37},
    {2, 120, 125,       1.3,  1.23},
    {2, 150, 138, NOT_GIVEN,  1.12},
    {2, 185, 191,      0.82,  0.81},
    {2, 240, 215,      0.73,  0.72},
    {2, 300, 235,      0.67,  0.66},
    {3, 1.5,  16,       9.5,  9.75},
    {3, 2.5,  19,       8.2,  8.12},
    {3,   4,  20,       7.5,  7.61},
    {3,   6,  23,       6.7,  6.77},
    {3,  10,  39,       4.0,  3.95},
    {3,  16,  45,       3.5,  3.41},
    {3,  25,  62,       2.5,  2.3}, /* shaped 2.49 */
    {3,  35,  68,       2.3,  2.1}, /* shaped 2.27 */
    {3,  50,  78,       2.0,  1.98},
    {3,  70,  90,       1.8,  1.71},
    {3,  95, 128, NOT_GIVEN,  1.2},
    {3, 120, 141, NOT_GIVEN,  1.1},
    {3, 150, 201,      0.78,  0.77},
    {3, 185, 220,      0.71,  0.70},
    {3, 240, 250,      0.63,  0.62},
    {3, 300, 269,      0.58,  0.57},
    {4, 1.5,  17,       8.8,  9.02},
    {4, 2.5,  20,       7.7,  7.61},
    {4,   4,  22,       6.8,  6.96},
    {4,   6,  36,       4.3,  4.21},
    {4,  10,  42,       3.7,  3.71},
    {4,  16,  50,       3.1,  3.08},
    {4,  25,  70,       2.3,  2.1}, /* shaped 2.2 */
    {4,  35,  78,       2.0,  1.9}, /* shaped 1.98 */
    {4,  50,  90,       1.8,  1.71},
    {4,  70, 131,       1.2,  1.17},
    {4,  95, 147,       1.1,  1.05},
    {4, 120, 206,      0.76,  0.75},
    {4, 150, 230,      0.68,  0.67},
    {4, 185, 255,      0.61,  0.61},
    {4, 240, 289,      0.54,  0.54},
    {4, 300, 319,      0.49,  0.49},
};
/* clang-format on */

_Static_assert(COUNT_OF(rows) == 3 * 16, "sixteen sizes of two, three and four cores");

/* Over the resistance by area, where the print's own is not known. */
static const double for_a_blank = 1.10;

static struct Armour figures_of(const struct ArmourRow *row)
{
    double greatest_ohm_per_km = for_a_blank * row->by_area_ohm_per_km;
    (void)lookup_cell(row->greatest_ohm_per_km, &greatest_ohm_per_km); /* a blank leaves it */
    return (struct Armour){
        .area_mm2 = row->area_mm2,
        .max_ohm_per_m = greatest_ohm_per_km / 1000,
        .min_ohm_per_m = fmin(greatest_ohm_per_km, row->by_area_ohm_per_km) / 1000,
    };
}

bool armour_figures(enum CableType type, int cores, double size_mm2, struct Armour *out)
{
    if (cable_kind(type)->figures != FIGURES_BS5467) {
        return false;
    }
    for (int index = 0; index < COUNT_OF(rows); index++) {
        if (rows[index].cores == cores && lookup_same(rows[index].size_mm2, size_mm2)) {
            *out = figures_of(&rows[index]);
            return true;
        }
    }
    return false;
}

void armour_cells(struct TextBuilder *out)
{
    text_add(out, "cores,mm2,area mm2,greatest ohm/km,least ohm/km\n");
    for (int index = 0; index < COUNT_OF(rows); index++) {
        const struct ArmourRow *row = &rows[index];
        const struct Armour armour = figures_of(row);
        cells_row(out,
                  (const double[]){row->cores, row->size_mm2, armour.area_mm2, armour.max_ohm_per_m * 1000,
                                   armour.min_ohm_per_m * 1000},
                  5);
    }
}

const struct TableRef *armour_ref(void)
{
    static const struct TableRef ref = {.standard = "BS 5467, makers' datasheets",
                                        "armour",
                                        "area and resistance of steel wire armour",
                                        TRUST_PARTLY_FROM_MEMORY,
                                        "two cores two sources, 1.5 to 6 mm2 resistance seen, rest from memory and "
                                        "checked by wire count",
                                        .words = TABLE_OF_ARMOUR};
    return &ref;
}
