/* Voltage drop: armoured multicore, 70 degC thermoplastic insulation, copper.
 *
 * Source: BS 7671:2018+A2:2022, Table 4D4B.
 * Trust:  from memory; up to 16 mm2 equal to the figures of Table 4D1B, which were seen. r is checked against
 *         IEC 60228 and z against r and x (tests). The last digit of 185 to 300 mm2 is the least certain.
 * Rows:   exact sizes only; a size between the rows has no figure. Up to 16 mm2 the print has one figure a column. */
#include "edition_private.h"

static const double sizes_mm2[] = {1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300};

/* One printed row a line. mV per ampere and metre. */
/* clang-format off */
static const struct DropRow rows[] = {
    /*   mm2     d.c.   single-phase r, x, z  three-phase r, x, z */
    /*   1.5 */ {    29, ONE_FIGURE(29),       ONE_FIGURE(25)},
    /*   2.5 */ {    18, ONE_FIGURE(18),       ONE_FIGURE(15)},
    /*     4 */ {    11, ONE_FIGURE(11),       ONE_FIGURE(9.5)},
    /*     6 */ {   7.3, ONE_FIGURE(7.3),      ONE_FIGURE(6.4)},
    /*    10 */ {   4.4, ONE_FIGURE(4.4),      ONE_FIGURE(3.8)},
    /*    16 */ {   2.8, ONE_FIGURE(2.8),      ONE_FIGURE(2.4)},
    /*    25 */ {  1.75,  1.75, 0.170,  1.75,   1.50, 0.145,  1.50},
    /*    35 */ {  1.25,  1.25, 0.165,  1.25,   1.10, 0.145,  1.10},
    /*    50 */ {  0.93,  0.93, 0.165,  0.94,   0.80, 0.140,  0.81},
    /*    70 */ {  0.63,  0.63, 0.160,  0.65,   0.55, 0.140,  0.57},
    /*    95 */ {  0.46,  0.47, 0.155,  0.50,   0.41, 0.135,  0.43},
    /*   120 */ {  0.36,  0.38, 0.155,  0.41,   0.33, 0.135,  0.35},
    /*   150 */ {  0.29,  0.30, 0.155,  0.34,   0.26, 0.130,  0.29},
    /*   185 */ {  0.23,  0.25, 0.150,  0.29,   0.21, 0.130,  0.25},
    /*   240 */ { 0.180, 0.190, 0.150,  0.24,  0.165, 0.130,  0.21},
    /*   300 */ { 0.145, 0.155, 0.145,  0.21,  0.135, 0.130, 0.185},
};
/* clang-format on */

_Static_assert(COUNT_OF(rows) == COUNT_OF(sizes_mm2), "a row for each size");

const struct DropData voltdrop_4d4b = {
    .ref = {TABLES_BS7671, "4D4B", "voltage drop of armoured multicore cables, 70 degC", TRUST_FROM_MEMORY,
            "from memory; checked by physics"},
    .degc = 70,
    .sizes_mm2 = sizes_mm2,
    .sizes = COUNT_OF(sizes_mm2),
    .rows = rows,
};
