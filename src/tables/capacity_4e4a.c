/* Current-carrying capacity: armoured multicore, 90 degC thermosetting insulation, copper.
 *
 * Source: BS 7671:2018+A2:2022, Table 4E4A. Air 30 degC; ground 20 degC,
 *         2.5 K.m/W, 0.7 m deep.
 * Trust:  two sources agree in every cell but one: D, two loaded, 4 mm2 is 46 in one and 43 in the other. 43 lies on
 *         the curve of the column and is the safer.
 * Rows:   exact sizes only; a size between the rows has no figure. */
#include "edition_private.h"

static const double sizes_mm2[] = {1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300};

static const struct CapacityColumn columns[] = {{METHOD_C, 2}, {METHOD_C, 3}, {METHOD_E, 2},
                                                {METHOD_E, 3}, {METHOD_D, 2}, {METHOD_D, 3}};

/* One printed row a line. Ampere; the heads name method and loaded conductors. */
/* clang-format off */
static const double cells_a[] = {
    /*   mm2       C 2     C 3     E 2     E 3     D 2     D 3 */
    /*   1.5 */     27,     23,     29,     25,     25,     21,
    /*   2.5 */     36,     31,     39,     33,     33,     28,
    /*     4 */     49,     42,     52,     44,     43,     36,
    /*     6 */     62,     53,     66,     56,     53,     44,
    /*    10 */     85,     73,     90,     78,     71,     58,
    /*    16 */    110,     94,    115,     99,     91,     75,
    /*    25 */    146,    124,    152,    131,    116,     96,
    /*    35 */    180,    154,    188,    162,    139,    115,
    /*    50 */    219,    187,    228,    197,    164,    135,
    /*    70 */    279,    238,    291,    251,    203,    167,
    /*    95 */    338,    289,    354,    304,    239,    197,
    /*   120 */    392,    335,    410,    353,    271,    223,
    /*   150 */    451,    386,    472,    406,    306,    251,
    /*   185 */    515,    441,    539,    463,    343,    281,
    /*   240 */    607,    520,    636,    546,    395,    324,
    /*   300 */    698,    599,    732,    628,    446,    365,
};
/* clang-format on */

_Static_assert(COUNT_OF(cells_a) == COUNT_OF(sizes_mm2) * COUNT_OF(columns), "a cell for each size and column");

const struct CapacityData capacity_4e4a = {
    .ref = {TABLES_BS7671, "4E4A", "capacity of armoured multicore cables, 90 degC", TRUST_PUBLISHED, "two sources"},
    .degc = 90,
    .sizes_mm2 = sizes_mm2,
    .sizes = COUNT_OF(sizes_mm2),
    .columns = columns,
    .column_count = COUNT_OF(columns),
    .cells_a = cells_a,
};
