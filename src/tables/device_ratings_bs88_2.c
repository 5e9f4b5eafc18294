/* Standard rated currents: gG fuses to BS 88-2, systems E and G.
 *
 * Source: BS 7671:2018+A2:2022, Tables 41.2 and 41.4, whose rows are the ratings.
 * Trust:  from memory; 80 and 100 A the less certain rows.
 * Rows:   the listed ratings and no others. */
#include "tables_private.h"

static const double ratings_a[] = {2, 4, 6, 10, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200};

const struct RatingList device_ratings_bs88_2 = {
    .ref = {TABLES_BS7671, "41.2, 41.4", "rated currents of BS 88-2 fuses", TRUST_FROM_MEMORY, "from memory"},
    .ratings_a = ratings_a,
    .count = COUNT_OF(ratings_a),
};
