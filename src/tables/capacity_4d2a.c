/* Current-carrying capacity: multicore without armour, 70 degC thermoplastic insulation, copper.
 *
 * Source: BS 7671:2018+A2:2022, Table 4D2A. Air 30 degC.
 * Trust:  from memory, all but ten or so cells: B with three loaded from 4 mm2 up, A with two
 *         loaded to 6 mm2 and C 2.5 mm2 were seen in secondary sources. The whole is checked by physics (tests).
 * Rows:   exact sizes only; a size between the rows has no figure. */
#include "edition_private.h"

static const double sizes_mm2[] = {1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95};

static const struct CapacityColumn columns[] = {{METHOD_A, 2}, {METHOD_A, 3}, {METHOD_B, 2}, {METHOD_B, 3},
                                                {METHOD_C, 2}, {METHOD_C, 3}, {METHOD_E, 2}, {METHOD_E, 3}};

/* One printed row a line. Ampere; the heads name method and loaded conductors. */
/* clang-format off */
static const double cells_a[] = {
    /*   mm2       A 2     A 3     B 2     B 3     C 2     C 3     E 2     E 3 */
    /*     1 */     11,     10,     13,   11.5,     15,   13.5,     17,   14.5,
    /*   1.5 */     14,     13,   16.5,     15,   19.5,   17.5,     22,   18.5,
    /*   2.5 */   18.5,   17.5,     23,     20,     27,     24,     30,     25,
    /*     4 */     25,     23,     30,     27,     36,     32,     40,     34,
    /*     6 */     32,     29,     38,     34,     46,     41,     51,     43,
    /*    10 */     43,     39,     52,     46,     63,     57,     70,     60,
    /*    16 */     57,     52,     69,     62,     85,     76,     94,     80,
    /*    25 */     75,     68,     90,     80,    112,     96,    119,    101,
    /*    35 */     92,     83,    111,     99,    138,    119,    148,    126,
    /*    50 */    110,     99,    133,    118,    168,    144,    180,    153,
    /*    70 */    139,    125,    168,    149,    213,    184,    232,    196,
    /*    95 */    167,    150,    201,    179,    258,    223,    282,    238,
};
/* clang-format on */

_Static_assert(COUNT_OF(cells_a) == COUNT_OF(sizes_mm2) * COUNT_OF(columns), "a cell for each size and column");

const struct CapacityData capacity_4d2a = {
    .ref = {TABLES_BS7671, "4D2A", "capacity of multicore cables without armour, 70 degC", TRUST_FROM_MEMORY,
            "from memory, a part seen; checked by physics"},
    .degc = 70,
    .sizes_mm2 = sizes_mm2,
    .sizes = COUNT_OF(sizes_mm2),
    .columns = columns,
    .column_count = COUNT_OF(columns),
    .cells_a = cells_a,
};
