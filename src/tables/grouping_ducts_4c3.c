/* Rating factor Cg for multicore cables, one in each buried duct, by the clear distance between the ducts.
 *
 * Source: BS 7671:2018+A2:2022, Table 4C3, multicore (as IEC 60364-5-52 Table B.52.19 part A).
 * Trust:  from memory. Rows 7 to 20 are less certain than 2 to 6.
 * Rows:   the next larger number of circuits; beyond 20 no figure. The print begins at two: one circuit is not
 *         grouped, its factor is 1 by definition, row 1. */
#include "edition_private.h"

enum { COLUMNS = 4 };

static const double keys[] = {2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20};

/* One printed row a line */
/* clang-format off */
static const double cells[] = {
    /*          touching     0.25 m      0.5 m      1.0 m */
    /*    2 */      0.85,      0.90,      0.95,      0.95,
    /*    3 */      0.75,      0.85,      0.90,      0.95,
    /*    4 */      0.70,      0.80,      0.85,      0.90,
    /*    5 */      0.65,      0.80,      0.85,      0.90,
    /*    6 */      0.60,      0.80,      0.80,      0.90,
    /*    7 */      0.57,      0.76,      0.80,      0.88,
    /*    8 */      0.54,      0.74,      0.78,      0.88,
    /*    9 */      0.52,      0.73,      0.77,      0.87,
    /*   10 */      0.49,      0.72,      0.76,      0.86,
    /*   11 */      0.47,      0.70,      0.75,      0.86,
    /*   12 */      0.45,      0.69,      0.74,      0.85,
    /*   13 */      0.44,      0.68,      0.73,      0.85,
    /*   14 */      0.42,      0.68,      0.72,      0.84,
    /*   15 */      0.41,      0.67,      0.72,      0.84,
    /*   16 */      0.39,      0.66,      0.71,      0.83,
    /*   17 */      0.38,      0.65,      0.70,      0.83,
    /*   18 */      0.37,      0.65,      0.70,      0.83,
    /*   19 */      0.35,      0.64,      0.69,      0.82,
    /*   20 */      0.34,      0.63,      0.68,      0.82,
};
/* clang-format on */

_Static_assert(COUNT_OF(cells) == COUNT_OF(keys) * COLUMNS, "a cell for each row and column");

const struct FactorTable grouping_ducts_4c3 = {
    .ref = {TABLES_BS7671, "4C3", "grouping factor Cg of buried ducts", TRUST_FROM_MEMORY,
            "from memory, rows 7 to 20 the less certain"},
    .keys = keys,
    .rows = COUNT_OF(keys),
    .cells = cells,
    .columns = COLUMNS,
};
