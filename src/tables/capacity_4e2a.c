/* Current-carrying capacity: multicore without armour, 90 degC thermosetting insulation, copper.
 *
 * Source: BS 7671:2018+A2:2022, Table 4E2A. Air 30 degC.
 * Trust:  from memory; A with two, B with three and C with two loaded of rows 1 and 1.5 seen. Every cell keeps a
 *         regular ratio to Table 4D2A (tests).
 * Rows:   exact sizes only; a size between the rows has no figure. */
#include "edition_private.h"

static const double sizes_mm2[] = {1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95};

static const struct CapacityColumn columns[] = {{METHOD_A, 2}, {METHOD_A, 3}, {METHOD_B, 2}, {METHOD_B, 3},
                                                {METHOD_C, 2}, {METHOD_C, 3}, {METHOD_E, 2}, {METHOD_E, 3}};

/* One printed row a line. Ampere; the heads name method and loaded conductors. */
/* clang-format off */
static const double cells_a[] = {
    /*   mm2       A 2     A 3     B 2     B 3     C 2     C 3     E 2     E 3 */
    /*     1 */   14.5,     13,     17,     15,     19,     17,     21,     18,
    /*   1.5 */   18.5,   16.5,     22,   19.5,     24,     22,     26,     23,
    /*   2.5 */     25,     22,     30,     26,     33,     30,     36,     32,
    /*     4 */     33,     30,     40,     35,     45,     40,     49,     42,
    /*     6 */     42,     38,     51,     44,     58,     52,     63,     54,
    /*    10 */     57,     51,     69,     60,     80,     71,     86,     75,
    /*    16 */     76,     68,     91,     80,    107,     96,    115,    100,
    /*    25 */     99,     89,    119,    105,    138,    119,    149,    127,
    /*    35 */    121,    109,    146,    128,    171,    147,    185,    158,
    /*    50 */    145,    130,    175,    154,    209,    179,    225,    192,
    /*    70 */    183,    164,    221,    194,    269,    229,    289,    246,
    /*    95 */    220,    197,    265,    233,    328,    278,    352,    298,
};
/* clang-format on */

_Static_assert(COUNT_OF(cells_a) == COUNT_OF(sizes_mm2) * COUNT_OF(columns), "a cell for each size and column");

const struct CapacityData capacity_4e2a = {
    .ref = {TABLES_BS7671, "4E2A", "capacity of multicore cables without armour, 90 degC", TRUST_FROM_MEMORY,
            "from memory, a part seen; checked by physics"},
    .degc = 90,
    .sizes_mm2 = sizes_mm2,
    .sizes = COUNT_OF(sizes_mm2),
    .columns = columns,
    .column_count = COUNT_OF(columns),
    .cells_a = cells_a,
};
