/* Greatest loop impedance with a fuse to BS 88-3, system C, from which its tripping current is read back.
 *
 * Source: BS 7671:2018+A2:2022, Tables 41.2 (0.4 s) and 41.4 (5 s); ohm at U0 230 V with Cmin 0.95.
 * Trust:  from memory; 32 A at 0.4 s seen (a trade journal prints 0.8 of it).
 * Rows:   the listed ratings and no others. The current is read back from two printed digits, so it is no better than
 *         they are; held against 0.95 U0 at 230 V it gives back the printed impedance. */
#include "edition_private.h"

/* clang-format off */
static const struct FuseRow rows[] = {
    /* A,    0.4 s,   5 s */
    {  5,     9.93, 14.60},
    { 16,     2.30,  3.90},
    { 20,     1.93,  3.20},
    { 32,     0.91,  1.60},
    { 45,     0.57,  1.00},
    { 63,     0.36,  0.68},
    { 80, NOT_GIVEN, 0.51},
    {100, NOT_GIVEN, 0.38},
};
/* clang-format on */

const struct FuseLimits device_trip_bs88_3 = {
    .ref = {TABLES_BS7671, "41.2, 41.4", "tripping current of BS 88-3 fuses", TRUST_FROM_MEMORY,
            "from memory, 32 A at 0.4 s seen"},
    .rows = rows,
    .count = COUNT_OF(rows),
};
