/* Standard rated currents: fuses to BS 1361, type I up to 45 A and type II above.
 *
 * Source: BS 1361:1971, withdrawn; old cut-outs and consumer units hold them.
 * Trust:  from memory.
 * Rows:   the listed ratings and no others. */
#include "tables_private.h"

static const double ratings_a[] = {5, 15, 20, 30, 45, 60, 80, 100};

const struct RatingList device_ratings_bs1361 = {
    .ref = {.standard = "BS 1361",
            "types I and II",
            "rated currents of BS 1361 fuses",
            TRUST_FROM_MEMORY,
            "from memory",
            .words = TABLE_OF_FUSE_TYPES},
    .ratings_a = ratings_a,
    .count = COUNT_OF(ratings_a),
};
