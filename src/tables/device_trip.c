/* The current that makes a device cut off in time. The figures are in device_trip_*.c, a file a kind of device. */
#include "edition_private.h"

#include <math.h>

/* The two times that the tables are printed for. */
static const double short_s = 0.4;
static const double long_s = 5;
/* Within which a circuit-breaker opens at its multiple: BS EN 60898-1, from memory. Nothing promises a shorter time. */
static const double at_once_s = 0.1;
/* The voltage that loop impedances are printed for, before the least voltage factor. */
static const double printed_for_v = 230;

static bool reaches(double time_s, double needed_s)
{
    return time_s >= needed_s || lookup_same(time_s, needed_s);
}

/* Between the two printed times the shorter's current serves; below the shorter a fuse has no figure. */
static bool fuse_current(const struct Edition *edition, const struct FuseLimits *limits, double rating_a, double time_s,
                         double *out_a)
{
    if (!reaches(time_s, short_s)) {
        return false;
    }
    for (int index = 0; index < limits->count; index++) {
        const struct FuseRow *row = &limits->rows[index];
        double loop_ohm = 0;
        if (lookup_same(row->rating_a, rating_a) &&
            lookup_cell(reaches(time_s, long_s) ? row->within_5_s_ohm : row->within_0_4_s_ohm, &loop_ohm)) {
            *out_a = voltage_factor_least(edition) * printed_for_v / loop_ohm;
            return true;
        }
    }
    return false;
}

/* At once from the upper end of its band on; a type D that may take so long also by its overload part. */
static bool breaker_current(const struct BreakerLimits *limits, enum Curve curve, double rating_a, double time_s,
                            double *out_a)
{
    double late_a;
    double late_s;
    if (device_trip_late(curve, rating_a, &late_a, &late_s) && reaches(time_s, late_s)) {
        *out_a = late_a;
        return true;
    }
    if (!reaches(time_s, at_once_s) || (unsigned)curve >= CURVE_COUNT || !isfinite(rating_a) || !(rating_a > 0)) {
        return false;
    }
    *out_a = limits->multiples[curve] * rating_a;
    return true;
}

bool device_trip_current(const struct Edition *edition, enum DeviceKind kind, enum Curve curve, double rating_a,
                         double time_s, double *out_a)
{
    switch (kind) {
    case DEVICE_MCB:
    case DEVICE_RCBO: return breaker_current(edition->breakers, curve, rating_a, time_s, out_a);
    case DEVICE_GG: return fuse_current(edition, edition->bs88_2, rating_a, time_s, out_a);
    case DEVICE_BS88_3: return fuse_current(edition, edition->bs88_3, rating_a, time_s, out_a);
    case DEVICE_BS1361: return fuse_current(edition, edition->bs1361, rating_a, time_s, out_a);
    case DEVICE_BS3036: return fuse_current(edition, edition->bs3036, rating_a, time_s, out_a);
    case DEVICE_COUNT: break;
    }
    return false;
}

const struct TableRef *device_trip_ref(const struct Edition *edition, enum DeviceKind kind)
{
    switch (kind) {
    case DEVICE_MCB:
    case DEVICE_RCBO: return &edition->breakers->ref;
    case DEVICE_GG: return &edition->bs88_2->ref;
    case DEVICE_BS88_3: return &edition->bs88_3->ref;
    case DEVICE_BS1361: return &edition->bs1361->ref;
    case DEVICE_BS3036: return &edition->bs3036->ref;
    case DEVICE_COUNT: break;
    }
    return NULL;
}
