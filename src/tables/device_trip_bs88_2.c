/* Greatest loop impedance with a gG fuse to BS 88-2, systems E and G, from which its tripping current is read back.
 *
 * Source: BS 7671:2018+A2:2022, Tables 41.2 (0.4 s) and 41.4 (5 s); ohm at U0 230 V with Cmin 0.95.
 * Trust:  from memory. 80 and 100 A the less certain rows; 160 A is out of line with its neighbours (5.1 In, where
 *         125 A has 5.5 and 200 A 6.1).
 * Rows:   the listed ratings and no others. The current is read back from two printed digits, so it is no better than
 *         they are; held against 0.95 U0 at 230 V it gives back the printed impedance. */
#include "edition_private.h"

/* clang-format off */
static const struct FuseRow rows[] = {
    /* A,    0.4 s,   5 s */
    {  2,    33.10, 44.00},
    {  4,    15.60, 21.00},
    {  6,     7.80, 12.00},
    { 10,     4.65,  6.80},
    { 16,     2.43,  4.00},
    { 20,     1.68,  2.80},
    { 25,     1.29,  2.20},
    { 32,     0.99,  1.70},
    { 40,     0.75,  1.30},
    { 50,     0.57,  0.99},
    { 63,     0.44,  0.78},
    { 80, NOT_GIVEN, 0.55},
    {100, NOT_GIVEN, 0.42},
    {125, NOT_GIVEN, 0.32},
    {160, NOT_GIVEN, 0.27},
    {200, NOT_GIVEN, 0.18},
};
/* clang-format on */

const struct FuseLimits device_trip_bs88_2 = {
    .ref = {TABLES_BS7671, "41.2, 41.4", "tripping current of BS 88-2 fuses", TRUST_FROM_MEMORY,
            "from memory, 80, 100 and 160 A less certain"},
    .rows = rows,
    .count = COUNT_OF(rows),
};
