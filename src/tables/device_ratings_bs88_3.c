/* Standard rated currents: fuses to BS 88-3, system C.
 *
 * Source: BS 7671:2018+A2:2022, Tables 41.2 and 41.4, whose rows are the ratings.
 * Trust:  from memory; 32 A seen.
 * Rows:   the listed ratings and no others. */
#include "tables_private.h"

static const double ratings_a[] = {5, 16, 20, 32, 45, 63, 80, 100};

const struct RatingList device_ratings_bs88_3 = {
    .ref = {TABLES_BS7671, "41.2, 41.4", "rated currents of BS 88-3 fuses", TRUST_FROM_MEMORY,
            "from memory, 32 A seen"},
    .ratings_a = ratings_a,
    .count = COUNT_OF(ratings_a),
};
