/* Current-carrying capacity: flat cable with protective conductor, 70 degC thermoplastic insulation, copper.
 *
 * Source: BS 7671:2018+A2:2022, Table 4D5. Air 30 degC. The voltage drop column of
 *         the same table is in voltdrop_4d5.c.
 * Trust:  rows 1 and 1.5 and the 16 mm2 figure of method 100 seen; the rest from memory. Method 103 is half of
 *         method C but for 4 mm2, where 17.5 is lower than the half: kept, it is the safer.
 * Rows:   exact sizes only; a size between the rows has no figure. */
#include "edition_private.h"

static const double sizes_mm2[] = {1, 1.5, 2.5, 4, 6, 10, 16};

static const struct CapacityColumn columns[] = {{METHOD_100, 2}, {METHOD_101, 2}, {METHOD_102, 2},
                                                {METHOD_103, 2}, {METHOD_C, 2},   {METHOD_A, 2}};

/* One printed row a line. Ampere; the heads name method and loaded conductors. */
/* clang-format off */
static const double cells_a[] = {
    /*   mm2       100     101     102     103       C       A */
    /*     1 */     13,   10.5,     13,      8,     16,   11.5,
    /*   1.5 */     16,     13,     16,     10,     20,   14.5,
    /*   2.5 */     21,     17,     21,   13.5,     27,     20,
    /*     4 */     27,     22,     27,   17.5,     37,     26,
    /*     6 */     34,     27,     35,   23.5,     47,     32,
    /*    10 */     45,     36,     47,     32,     64,     44,
    /*    16 */     57,     46,     63,   42.5,     85,     57,
};
/* clang-format on */

_Static_assert(COUNT_OF(cells_a) == COUNT_OF(sizes_mm2) * COUNT_OF(columns), "a cell for each size and column");

const struct CapacityData capacity_4d5 = {
    .ref = {TABLES_BS7671, "4D5", "capacity of flat cable with protective conductor, 70 degC", TRUST_FROM_MEMORY,
            "from memory, rows 1 and 1.5 seen"},
    .degc = 70,
    .sizes_mm2 = sizes_mm2,
    .sizes = COUNT_OF(sizes_mm2),
    .columns = columns,
    .column_count = COUNT_OF(columns),
    .cells_a = cells_a,
};
