/* Rating factor Ca for the temperature of the air; 1 at 30 degC.
 *
 * Source: BS 7671:2018+A2:2022, Table 4B1.
 * Trust:  70 degC column from 25 to 55 degC seen, the rest from memory; from 30 degC up every figure is
 *         sqrt((Tc - Ta) / (Tc - 30)) to its last digit (tests). The 25 degC row is printed lower than that.
 * Rows:   the next hotter row; below the coolest row no further gain. A blank cell: that insulation may not be used. */
#include "edition_private.h"

enum { COLUMNS = 2 };

static const double keys[] = {25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80};

/* One printed row a line */
/* clang-format off */
static const double cells[] = {
    /* degC      70 degC    90 degC */
    /*   25 */      1.03,      1.02,
    /*   30 */      1.00,      1.00,
    /*   35 */      0.94,      0.96,
    /*   40 */      0.87,      0.91,
    /*   45 */      0.79,      0.87,
    /*   50 */      0.71,      0.82,
    /*   55 */      0.61,      0.76,
    /*   60 */      0.50,      0.71,
    /*   65 */ NOT_GIVEN,      0.65,
    /*   70 */ NOT_GIVEN,      0.58,
    /*   75 */ NOT_GIVEN,      0.50,
    /*   80 */ NOT_GIVEN,      0.41,
};
/* clang-format on */

_Static_assert(COUNT_OF(cells) == COUNT_OF(keys) * COLUMNS, "a cell for each row and column");

const struct FactorTable ambient_air_4b1 = {
    .ref = {TABLES_BS7671, "4B1", "air temperature factor Ca", TRUST_PARTLY_FROM_MEMORY,
            "a part seen, rest from memory; equals its formula"},
    .keys = keys,
    .rows = COUNT_OF(keys),
    .cells = cells,
    .columns = COLUMNS,
};
