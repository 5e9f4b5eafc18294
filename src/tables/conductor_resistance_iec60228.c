/* Greatest d.c. resistance at 20 degC of stranded plain annealed copper conductors.
 *
 * Source: IEC 60228 (BS EN 60228), Table 2, class 2, plain wires.
 * Trust:  two sources.
 * Rows:   exact sizes only; a size between the rows has no figure. */
#include "tables_private.h"

static const double sizes_mm2[] = {0.5, 0.75, 1,  1.5, 2.5, 4,   6,   10,  16,  25,
                                   35,  50,   70, 95,  120, 150, 185, 240, 300, 400};

/* One printed row a line. Ohm per kilometre, as printed. */
/* clang-format off */
static const double ohm_per_km[] = {
    /*  0.5 */ 36.0,
    /* 0.75 */ 24.5,
    /*    1 */ 18.1,
    /*  1.5 */ 12.1,
    /*  2.5 */ 7.41,
    /*    4 */ 4.61,
    /*    6 */ 3.08,
    /*   10 */ 1.83,
    /*   16 */ 1.15,
    /*   25 */ 0.727,
    /*   35 */ 0.524,
    /*   50 */ 0.387,
    /*   70 */ 0.268,
    /*   95 */ 0.193,
    /*  120 */ 0.153,
    /*  150 */ 0.124,
    /*  185 */ 0.0991,
    /*  240 */ 0.0754,
    /*  300 */ 0.0601,
    /*  400 */ 0.047,
};
/* clang-format on */

_Static_assert(COUNT_OF(ohm_per_km) == COUNT_OF(sizes_mm2), "a figure for each size");

bool conductor_resistance(double size_mm2, double *ohm_per_m)
{
    int row = 0;
    if (!lookup_exact(sizes_mm2, COUNT_OF(sizes_mm2), size_mm2, &row)) {
        return false;
    }
    *ohm_per_m = ohm_per_km[row] / 1000;
    return true;
}

void conductor_resistance_cells(struct TextBuilder *out)
{
    text_add(out, "mm2,ohm/km\n");
    for (int row = 0; row < COUNT_OF(sizes_mm2); row++) {
        cells_row(out, (const double[]){sizes_mm2[row], ohm_per_km[row]}, 2);
    }
}

const struct TableRef *conductor_resistance_ref(void)
{
    static const struct TableRef ref = {.standard = "IEC 60228",
                                        "2",
                                        "greatest conductor resistance at 20 degC, copper class 2",
                                        TRUST_PUBLISHED,
                                        "two sources"};
    return &ref;
}
