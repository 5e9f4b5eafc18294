/* Voltage drop: armoured multicore, 90 degC thermosetting insulation, copper.
 *
 * Source: BS 7671:2018+A2:2022, Table 4E4B.
 * Trust:  two sources agree but for three cells. The figures rejected: 95 mm2 three-phase r 0.473, 120 mm2
 *         three-phase z 0.38, 35 mm2 single-phase z 1.365; none of them goes with its own r, x and z.
 * Rows:   exact sizes only; a size between the rows has no figure. Up to 16 mm2 the print has one figure a column. */
#include "edition_private.h"

static const double sizes_mm2[] = {1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300};

/* One printed row a line. mV per ampere and metre. */
/* clang-format off */
static const struct DropRow rows[] = {
    /*   mm2     d.c.   single-phase r, x, z  three-phase r, x, z */
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
    /*   120 */ {  0.39,  0.40, 0.145,  0.42,   0.34, 0.130,  0.37},
    /*   150 */ {  0.31,  0.32, 0.145,  0.35,   0.28, 0.125,  0.30},
    /*   185 */ {  0.25,  0.26, 0.145,  0.29,   0.22, 0.125,  0.26},
    /*   240 */ { 0.195,  0.20, 0.140,  0.24,  0.175, 0.125,  0.21},
    /*   300 */ { 0.155,  0.16, 0.140,  0.21,  0.140, 0.120, 0.185},
};
/* clang-format on */

_Static_assert(COUNT_OF(rows) == COUNT_OF(sizes_mm2), "a row for each size");

const struct DropData voltdrop_4e4b = {
    .ref = {TABLES_BS7671, "4E4B", "voltage drop of armoured multicore cables, 90 degC", TRUST_PUBLISHED,
            "two sources"},
    .degc = 90,
    .sizes_mm2 = sizes_mm2,
    .sizes = COUNT_OF(sizes_mm2),
    .rows = rows,
};
