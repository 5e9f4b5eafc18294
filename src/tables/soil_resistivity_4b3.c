/* Rating factor Cs for the thermal resistivity of the soil; 1 at 2.5 K.m/W.
 *
 * Source: BS 7671:2018+A2:2022, Table 4B3 (as IEC 60364-5-52 Table B.52.16); for depths to 0.8 m.
 * Trust:  from memory; no figure lies further from 1 than physics allows (tests). That 2.5 is the base was seen.
 * Rows:   the next drier row; wetter than the wettest row no further gain; drier than the driest no figure. */
#include "edition_private.h"

enum { IN_DUCT, DIRECT, COLUMNS };

static const double keys[] = {0.5, 0.7, 1.0, 1.5, 2.0, 2.5, 3.0};

/* One printed row a line */
/* clang-format off */
static const double cells[] = {
    /*          in ducts     direct */
    /*  0.5 */      1.28,      1.88,
    /*  0.7 */      1.20,      1.62,
    /*  1.0 */      1.18,      1.50,
    /*  1.5 */      1.10,      1.28,
    /*  2.0 */      1.05,      1.12,
    /*  2.5 */      1.00,      1.00,
    /*  3.0 */      0.96,      0.90,
};
/* clang-format on */

_Static_assert(COUNT_OF(cells) == COUNT_OF(keys) * COLUMNS, "a cell for each row and column");

const struct FactorTable soil_resistivity_4b3 = {
    .ref = {TABLES_BS7671, "4B3", "soil thermal resistivity factor Cs", TRUST_FROM_MEMORY,
            "from memory; bounded by physics"},
    .keys = keys,
    .rows = COUNT_OF(keys),
    .cells = cells,
    .columns = COLUMNS,
};
