/* Standard rated currents: circuit-breakers and circuit-breakers with residual current protection.
 *
 * Source: BS EN 60898-1 and BS EN 61009-1, preferred values of rated current, 6 A and up as the trade stocks them.
 * Trust:  from memory.
 * Rows:   the listed ratings and no others. */
#include "tables_private.h"

static const double ratings_a[] = {6, 10, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125};

const struct RatingList device_ratings_breaker = {
    .ref = {.standard = "BS EN 60898-1, BS EN 61009-1",
            "preferred values",
            "rated currents of circuit-breakers",
            TRUST_FROM_MEMORY,
            "from memory",
            .words = TABLE_OF_PREFERRED_RATINGS},
    .ratings_a = ratings_a,
    .count = COUNT_OF(ratings_a),
};
