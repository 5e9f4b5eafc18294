/* Rating factor Ca for the temperature of the ground; 1 at 20 degC.
 *
 * Source: BS 7671:2018+A2:2022, Table 4B2.
 * Trust:  from memory; every figure is sqrt((Tc - Tg) / (Tc - 20)) to its last digit (tests).
 * Rows:   the next hotter row; below the coolest row no further gain. A blank cell: that insulation may not be used. */
#include "edition_private.h"

enum { COLUMNS = 2 };

static const double keys[] = {10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80};

/* One printed row a line */
/* clang-format off */
static const double cells[] = {
    /* degC      70 degC    90 degC */
    /*   10 */      1.10,      1.07,
    /*   15 */      1.05,      1.04,
    /*   20 */      1.00,      1.00,
    /*   25 */      0.95,      0.96,
    /*   30 */      0.89,      0.93,
    /*   35 */      0.84,      0.89,
    /*   40 */      0.77,      0.85,
    /*   45 */      0.71,      0.80,
    /*   50 */      0.63,      0.76,
    /*   55 */      0.55,      0.71,
    /*   60 */      0.45,      0.65,
    /*   65 */ NOT_GIVEN,      0.60,
    /*   70 */ NOT_GIVEN,      0.53,
    /*   75 */ NOT_GIVEN,      0.46,
    /*   80 */ NOT_GIVEN,      0.38,
};
/* clang-format on */

_Static_assert(COUNT_OF(cells) == COUNT_OF(keys) * COLUMNS, "a cell for each row and column");

const struct FactorTable ambient_ground_4b2 = {
    .ref = {TABLES_BS7671, "4B2", "ground temperature factor Ca", TRUST_FROM_MEMORY, "from memory; equals its formula"},
    .keys = keys,
    .rows = COUNT_OF(keys),
    .cells = cells,
    .columns = COLUMNS,
};
