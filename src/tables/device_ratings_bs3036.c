/* Standard rated currents: semi-enclosed (rewirable) fuses to BS 3036.
 *
 * Source: BS 7671:2018+A2:2022, Tables 41.2 and 41.4, whose rows are the ratings.
 * Trust:  from memory.
 * Rows:   the listed ratings and no others. */
#include "tables_private.h"

static const double ratings_a[] = {5, 15, 20, 30, 45, 60, 100};

const struct RatingList device_ratings_bs3036 = {
    .ref = {TABLES_BS7671, "41.2, 41.4", "rated currents of BS 3036 fuses", TRUST_FROM_MEMORY, "from memory"},
    .ratings_a = ratings_a,
    .count = COUNT_OF(ratings_a),
};
