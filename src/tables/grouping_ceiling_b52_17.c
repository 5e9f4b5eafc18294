/* Rating factor Cg for a single layer fixed directly under a ceiling.
 *
 * Source: IEC 60364-5-52, Table B.52.17 item 3; BS 7671 Table 4C1 has no such column. One circuit already counts 0.95.
 * Trust:  from memory. Beyond 9 circuits there is no further reduction: rows 12 to 20 repeat row 9.
 * Rows:   the next larger number of circuits; beyond 20 no figure. */
#include "edition_private.h"

enum { COLUMNS = 1 };

static const double keys[] = {1, 2, 3, 4, 5, 6, 7, 8, 9, 12, 16, 20};

/* One printed row a line */
/* clang-format off */
static const double cells[] = {
    /*           ceiling */
    /*    1 */      0.95,
    /*    2 */      0.81,
    /*    3 */      0.72,
    /*    4 */      0.68,
    /*    5 */      0.66,
    /*    6 */      0.64,
    /*    7 */      0.63,
    /*    8 */      0.62,
    /*    9 */      0.61,
    /*   12 */      0.61,
    /*   16 */      0.61,
    /*   20 */      0.61,
};
/* clang-format on */

_Static_assert(COUNT_OF(cells) == COUNT_OF(keys) * COLUMNS, "a cell for each row and column");

const struct FactorTable grouping_ceiling_b52_17 = {
    .ref = {.edition = "2009",
            .standard = "IEC 60364-5-52",
            "B.52.17 item 3",
            "grouping factor Cg under a ceiling",
            TRUST_FROM_MEMORY,
            "from memory",
            .words = TABLE_B_52_17_ITEM_3},
    .keys = keys,
    .rows = COUNT_OF(keys),
    .cells = cells,
    .columns = COLUMNS,
};
