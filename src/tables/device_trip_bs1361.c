/* Greatest loop impedance with a fuse to BS 1361, from which its tripping current is read back.
 *
 * Older cut-outs hold these links. They are not those of BS 88-3: an 80 A one needs 460 A for 5 s, where BS 88-3 needs
 * 428.
 *
 * Source: BS 7671, the time and current curves of Appendix 3 in the editions that had BS 1361, as a public forum quotes
 *         them: 80 A, 460 A for 5 s. The loop is 0.95 x 230 V over that current.
 * Trust:  80 A seen once; no other rating is held, since no source for one was found.
 * Rows:   the listed rating and no other: its maker's curve has the figure (device: trip-5-s). */
#include "edition_private.h"

/* clang-format off */
static const struct FuseRow rows[] = {
    /* A,    0.4 s,     5 s */
    { 80, NOT_GIVEN, 0.475},
};
/* clang-format on */

const struct FuseLimits device_trip_bs1361 = {
    .ref = {.standard = "BS 7671",
            "Appendix 3",
            "tripping current of BS 1361 fuses",
            TRUST_PUBLISHED,
            "80 A seen once, in a forum",
            .words = TABLE_IN_APPENDIX_3},
    .rows = rows,
    .count = COUNT_OF(rows),
};
