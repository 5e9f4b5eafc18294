/* Voltage drop: multicore without armour, 90 degC thermosetting insulation, copper.
 *
 * Source: BS 7671:2018+A2:2022, Table 4E2B.
 * Trust:  from memory: equal to Table 4E4B, which has two sources, with the 1 mm2 row as seen in Table 4E1B.
 * Rows:   exact sizes only; a size between the rows has no figure. Up to 16 mm2 the print has one figure a column. */
#include "edition_private.h"

static const double sizes_mm2[] = {1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95};

/* One printed row a line. mV per ampere and metre. */
/* clang-format off */
static const struct DropRow rows[] = {
    /*   mm2     d.c.   single-phase r, x, z  three-phase r, x, z */
    /*     1 */ {    46, ONE_FIGURE(46),       ONE_FIGURE(40)},
    /*   1.5 */ {    31, ONE_FIGURE(31),       ONE_FIGURE(27)},
    /*   2.5 */ {    19, ONE_FIGURE(19),       ONE_FIGURE(16)},
    /*     4 */ {    12, ONE_FIGURE(12),       ONE_FIGURE(10)},
    /*     6 */ {   7.9, ONE_FIGURE(7.9),      ONE_FIGURE(6.8)},
    /*    10 */ {   4.7, ONE_FIGURE(4.7),      ONE_FIGURE(4.0)},
    /*    16 */ {   2.9, ONE_FIGURE(2.9),      ONE_FIGURE(2.5)},
    /*    25 */ {  1.85,  1.85, 0.160,  1.90,   1.60, 0.140,  1.65},
    /*    35 */ {  1.35,  1.35, 0.155,  1.35,   1.15, 0.135,  1.15},
    /*    50 */ {  0.98,  0.99, 0.155,  1.00,   0.86, 0.135,  0.87},
    /*    70 */ {  0.67,  0.67, 0.150,  0.69,   0.59, 0.130,  0.60},
    /*    95 */ {  0.49,  0.50, 0.150,  0.52,   0.43, 0.130,  0.45},
};
/* clang-format on */

_Static_assert(COUNT_OF(rows) == COUNT_OF(sizes_mm2), "a row for each size");

const struct DropData voltdrop_4e2b = {
    .ref = {TABLES_BS7671, "4E2B", "voltage drop of multicore cables without armour, 90 degC", TRUST_FROM_MEMORY,
            "from memory; equal to 4E4B, which has two sources"},
    .degc = 90,
    .sizes_mm2 = sizes_mm2,
    .sizes = COUNT_OF(sizes_mm2),
    .rows = rows,
};
