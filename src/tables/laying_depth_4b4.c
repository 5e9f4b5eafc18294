/* Rating factor Cd for the depth of laying; 1 at 0.7 m.
 *
 * Source: BS 7671:2018+A2:2022, Table 4B4.
 * Trust:  from memory only, the least certain table here; it follows the external thermal resistance ln(4 L / D)
 *         within 0.02 (tests).
 * Rows:   the next deeper row; shallower than the first row takes the first row, deeper than the last no figure. */
#include "edition_private.h"

enum { DIRECT, IN_DUCT, COLUMNS };

static const double keys[] = {0.5, 0.7, 1.0, 1.25, 1.5, 1.75, 2.0, 2.5, 3.0};

/* One printed row a line */
/* clang-format off */
static const double cells[] = {
    /*    m       direct   in ducts */
    /*  0.5 */      1.03,      1.02,
    /*  0.7 */      1.00,      1.00,
    /*  1.0 */      0.97,      0.98,
    /* 1.25 */      0.95,      0.96,
    /*  1.5 */      0.94,      0.95,
    /* 1.75 */      0.93,      0.94,
    /*  2.0 */      0.92,      0.93,
    /*  2.5 */      0.90,      0.92,
    /*  3.0 */      0.89,      0.91,
};
/* clang-format on */

_Static_assert(COUNT_OF(cells) == COUNT_OF(keys) * COLUMNS, "a cell for each row and column");

const struct FactorTable laying_depth_4b4 = {
    .ref = {TABLES_BS7671, "4B4", "depth of laying factor Cd", TRUST_FROM_MEMORY,
            "from memory only; follows a model within 0.02"},
    .keys = keys,
    .rows = COUNT_OF(keys),
    .cells = cells,
    .columns = COLUMNS,
};
