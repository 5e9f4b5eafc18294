/* Rating factor Ci for a length of cable wholly inside thermal insulation, conductors up to 10 mm2.
 *
 * Source: BS 7671:2018+A2:2022, Table 52.2 and regulation 523.9. Multiplies the method C capacity.
 * Trust:  100 mm two sources; 200 and 500 mm seen; 50 and 400 mm from memory. (An older edition printed 0.89, 0.81,
 *         0.68 and 0.55.)
 * Rows:   the next longer row; shorter than the first row takes the first row; 500 mm stands for all longer lengths. */
#include "edition_private.h"

enum { COLUMNS = 1 };

static const double keys[] = {50, 100, 200, 400, 500};

/* One printed row a line */
/* clang-format off */
static const double cells[] = {
    /*   mm           Ci */
    /*   50 */      0.88,
    /*  100 */      0.78,
    /*  200 */      0.63,
    /*  400 */      0.51,
    /*  500 */      0.50,
};
/* clang-format on */

_Static_assert(COUNT_OF(cells) == COUNT_OF(keys) * COLUMNS, "a cell for each row and column");

const struct FactorTable insulation_length_52_2 = {
    .ref = {TABLES_BS7671, "52.2", "thermal insulation factor Ci", TRUST_PARTLY_FROM_MEMORY,
            "100 mm two sources, 50 and 400 mm from memory, rest seen"},
    .keys = keys,
    .rows = COUNT_OF(keys),
    .cells = cells,
    .columns = COLUMNS,
};
