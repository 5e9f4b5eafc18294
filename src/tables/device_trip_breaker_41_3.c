/* The multiple of its rating at which a circuit-breaker is sure to open at once: types B, C and D.
 *
 * Source: BS 7671:2018+A2:2022, Table 41.3 (Zs = Cmin U0 / (k In), Cmin 0.95), by the upper limits of BS EN 60898-1.
 * Trust:  the formula and types B and C seen, type D from memory.
 * Rows:   a rule, so any rating. The print lets a type D open within 5 s at 10 In; that is only remembered, so the
 *         20 In of the short time stand for every time, which asks for the larger fault current. */
#include "fault_tables_private.h"

#include <math.h>

static const double multiples[] = {[CURVE_B] = 5, [CURVE_C] = 10, [CURVE_D] = 20};

_Static_assert(COUNT_OF(multiples) == CURVE_COUNT, "a multiple for each type");

bool device_trip_breaker(enum Curve curve, double rating_a, double *out_a)
{
    const int row = (int)curve;
    if (row < 0 || row >= CURVE_COUNT || !isfinite(rating_a) || !(rating_a > 0)) {
        return false;
    }
    *out_a = multiples[row] * rating_a;
    return true;
}

const struct TableRef *device_trip_breaker_ref(void)
{
    static const struct TableRef ref = {TABLES_BS7671, "41.3", "tripping current of circuit-breakers",
                                        "types B and C seen, type D from memory"};
    return &ref;
}
