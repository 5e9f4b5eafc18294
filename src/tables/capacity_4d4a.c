/* Current-carrying capacity: armoured multicore, 70 degC thermoplastic insulation, copper.
 *
 * Source: BS 7671:2018+A2:2022, Table 4D4A. Air 30 degC; ground 20 degC,
 *         2.5 K.m/W, 0.7 m deep.
 * Trust:  from memory; one cell seen (10 mm2 E, three loaded). Every cell keeps a regular ratio to Table 4E4A, and
 *         an independent thermal model comes to the same figures (tests).
 * Rows:   exact sizes only; a size between the rows has no figure. */
#include "edition_private.h"

static const double sizes_mm2[] = {1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300};

static const struct CapacityColumn columns[] = {{METHOD_C, 2}, {METHOD_C, 3}, {METHOD_E, 2},
                                                {METHOD_E, 3}, {METHOD_D, 2}, {METHOD_D, 3}};

/* One printed row a line. Ampere; the heads name method and loaded conductors. */
/* clang-format off */
static const double cells_a[] = {
    /*   mm2       C 2     C 3     E 2     E 3     D 2     D 3 */
    /*   1.5 */     21,     18,     22,     19,     22,     18,
    /*   2.5 */     28,     25,     31,     26,     29,     24,
    /*     4 */     38,     33,     41,     35,     37,     30,
    /*     6 */     49,     42,     53,     45,     46,     38,
    /*    10 */     67,     58,     72,     62,     60,     50,
    /*    16 */     89,     77,     97,     83,     78,     64,
    /*    25 */    118,    102,    128,    110,     99,     82,
    /*    35 */    145,    125,    157,    135,    119,     98,
    /*    50 */    175,    151,    190,    163,    140,    116,
    /*    70 */    222,    192,    241,    207,    173,    143,
    /*    95 */    269,    231,    291,    251,    204,    169,
    /*   120 */    310,    267,    336,    290,    231,    192,
    /*   150 */    356,    306,    386,    332,    261,    217,
    /*   185 */    405,    348,    439,    378,    292,    243,
    /*   240 */    476,    409,    516,    445,    336,    280,
    /*   300 */    547,    469,    592,    510,    379,    316,
};
/* clang-format on */

_Static_assert(COUNT_OF(cells_a) == COUNT_OF(sizes_mm2) * COUNT_OF(columns), "a cell for each size and column");

const struct CapacityData capacity_4d4a = {
    .ref = {TABLES_BS7671, "4D4A", "capacity of armoured multicore cables, 70 degC", TRUST_FROM_MEMORY,
            "from memory; checked by physics"},
    .degc = 70,
    .sizes_mm2 = sizes_mm2,
    .sizes = COUNT_OF(sizes_mm2),
    .columns = columns,
    .column_count = COUNT_OF(columns),
    .cells_a = cells_a,
};
