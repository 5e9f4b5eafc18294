/* Voltage drop: flat cable with protective conductor, 70 degC thermoplastic insulation, copper.
 *
 * Source: BS 7671:2018+A2:2022, Table 4D5, its last column: one figure for d.c. and single-phase a.c.; the table has
 * none for three-phase. The capacities of the same table are in capacity_4d5.c. Trust:  rows 1 and 1.5 seen in this
 * table, all figures seen in Table 4D1B. Rows:   exact sizes only; a size between the rows has no figure. */
#include "edition_private.h"

static const double sizes_mm2[] = {1, 1.5, 2.5, 4, 6, 10, 16};

/* One printed row a line. mV per ampere and metre. */
/* clang-format off */
static const struct DropRow rows[] = {
    /*   mm2   d.c.  single-phase     three-phase */
    /*     1 */ {  44, ONE_FIGURE(44), NO_FIGURE},
    /*   1.5 */ {  29, ONE_FIGURE(29), NO_FIGURE},
    /*   2.5 */ {  18, ONE_FIGURE(18), NO_FIGURE},
    /*     4 */ {  11, ONE_FIGURE(11), NO_FIGURE},
    /*     6 */ { 7.3, ONE_FIGURE(7.3), NO_FIGURE},
    /*    10 */ { 4.4, ONE_FIGURE(4.4), NO_FIGURE},
    /*    16 */ { 2.8, ONE_FIGURE(2.8), NO_FIGURE},
};
/* clang-format on */

_Static_assert(COUNT_OF(rows) == COUNT_OF(sizes_mm2), "a row for each size");

const struct DropData voltdrop_4d5 = {
    .ref = {TABLES_BS7671, "4D5", "voltage drop of flat cable with protective conductor, 70 degC", TRUST_PUBLISHED,
            "seen"},
    .degc = 70,
    .sizes_mm2 = sizes_mm2,
    .sizes = COUNT_OF(sizes_mm2),
    .rows = rows,
};
