/* Greatest loop impedance with a fuse to BS 3036, from which its tripping current is read back.
 *
 * Source: BS 7671:2018+A2:2022, Tables 41.2 (0.4 s) and 41.4 (5 s); ohm at U0 230 V with Cmin 0.95.
 * Trust:  from memory; each is 0.95 of what the edition before printed, as the voltage factor asks.
 * Rows:   the listed ratings and no others. The current is read back from two printed digits, so it is no better than
 *         they are; held against 0.95 U0 at 230 V it gives back the printed impedance. */
#include "edition_private.h"

/* clang-format off */
static const struct FuseRow rows[] = {
    /* A,    0.4 s,   5 s */
    {  5,     9.10, 16.80},
    { 15,     2.42,  5.08},
    { 20,     1.68,  3.64},
    { 30,     1.03,  2.50},
    { 45, NOT_GIVEN, 1.51},
    { 60, NOT_GIVEN, 1.07},
    {100, NOT_GIVEN, 0.50},
};
/* clang-format on */

const struct FuseLimits device_trip_bs3036 = {
    .ref = {TABLES_BS7671, "41.2, 41.4", "tripping current of BS 3036 fuses", TRUST_FROM_MEMORY, "from memory"},
    .rows = rows,
    .count = COUNT_OF(rows),
};
