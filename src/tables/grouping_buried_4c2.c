/* Rating factor Cg for multicore cables laid direct in the ground, by the clear distance between them.
 *
 * Source: BS 7671:2018+A2:2022, Table 4C2 (as IEC 60364-5-52 Table B.52.18); soil 2.5 K.m/W, 0.7 m deep.
 * Trust:  from memory; 0.80 at 0.5 m from 4 circuits seen. Rows 7 to 20 are less certain than 2 to 6.
 * Rows:   the next larger number of circuits; beyond 20 no figure. The print begins at two: one circuit is not
 *         grouped, its factor is 1 by definition, row 1. */
#include "edition_private.h"

enum { COLUMNS = 5 };

static const double keys[] = {2, 3, 4, 5, 6, 7, 8, 9, 12, 16, 20};

/* One printed row a line */
/* clang-format off */
static const double cells[] = {
    /*          touching  one diam.    0.125 m     0.25 m      0.5 m */
    /*    2 */      0.75,      0.80,      0.85,      0.90,      0.90,
    /*    3 */      0.65,      0.70,      0.75,      0.80,      0.85,
    /*    4 */      0.60,      0.60,      0.70,      0.75,      0.80,
    /*    5 */      0.55,      0.55,      0.65,      0.70,      0.80,
    /*    6 */      0.50,      0.55,      0.60,      0.70,      0.80,
    /*    7 */      0.45,      0.51,      0.59,      0.67,      0.76,
    /*    8 */      0.43,      0.48,      0.57,      0.65,      0.75,
    /*    9 */      0.41,      0.46,      0.55,      0.63,      0.74,
    /*   12 */      0.36,      0.42,      0.51,      0.59,      0.71,
    /*   16 */      0.32,      0.38,      0.47,      0.56,      0.68,
    /*   20 */      0.29,      0.35,      0.44,      0.53,      0.66,
};
/* clang-format on */

_Static_assert(COUNT_OF(cells) == COUNT_OF(keys) * COLUMNS, "a cell for each row and column");

const struct FactorTable grouping_buried_4c2 = {
    .ref = {TABLES_BS7671, "4C2", "grouping factor Cg of buried cables", TRUST_FROM_MEMORY,
            "from memory, rows 7 to 20 the less certain"},
    .keys = keys,
    .rows = COUNT_OF(keys),
    .cells = cells,
    .columns = COLUMNS,
};
