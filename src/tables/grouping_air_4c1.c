/* Rating factor Cg for circuits grouped in air. A ceiling is in grouping_ceiling_b52_17.c.
 *
 * Source: BS 7671:2018+A2:2022, Table 4C1.
 * Trust:  bunched and wall columns up to 9 circuits two sources; the rest from memory. Beyond 9 circuits the print
 *         gives the single layers no further reduction: rows 12 to 20 repeat row 9.
 * Rows:   the next larger number of circuits; beyond 20 no figure. */
#include "edition_private.h"

enum { COLUMNS = 4 };

static const double keys[] = {1, 2, 3, 4, 5, 6, 7, 8, 9, 12, 16, 20};

/* One printed row a line */
/* clang-format off */
static const double cells[] = {
    /*           bunched       wall       tray     ladder */
    /*    1 */      1.00,      1.00,      1.00,      1.00,
    /*    2 */      0.80,      0.85,      0.88,      0.87,
    /*    3 */      0.70,      0.79,      0.82,      0.82,
    /*    4 */      0.65,      0.75,      0.77,      0.80,
    /*    5 */      0.60,      0.73,      0.75,      0.80,
    /*    6 */      0.57,      0.72,      0.73,      0.79,
    /*    7 */      0.54,      0.72,      0.73,      0.79,
    /*    8 */      0.52,      0.71,      0.72,      0.78,
    /*    9 */      0.50,      0.70,      0.72,      0.78,
    /*   12 */      0.45,      0.70,      0.72,      0.78,
    /*   16 */      0.41,      0.70,      0.72,      0.78,
    /*   20 */      0.38,      0.70,      0.72,      0.78,
};
/* clang-format on */

_Static_assert(COUNT_OF(cells) == COUNT_OF(keys) * COLUMNS, "a cell for each row and column");

const struct FactorTable grouping_air_4c1 = {
    .ref = {TABLES_BS7671, "4C1", "grouping factor Cg in air", TRUST_PARTLY_FROM_MEMORY,
            "bunched and wall to 9 circuits two sources, rest from memory"},
    .keys = keys,
    .rows = COUNT_OF(keys),
    .cells = cells,
    .columns = COLUMNS,
};
