/* Standard ratings by kind of device. The lists are in device_ratings_*.c, a file a standard. */
#include "tables_private.h"

static const struct RatingList *list_of(enum DeviceKind kind)
{
    switch (kind) {
    case DEVICE_MCB:
    case DEVICE_RCBO: return &device_ratings_breaker;
    case DEVICE_GG: return &device_ratings_bs88_2;
    case DEVICE_BS88_3: return &device_ratings_bs88_3;
    case DEVICE_BS1361: return &device_ratings_bs1361;
    case DEVICE_BS3036: return &device_ratings_bs3036;
    case DEVICE_COUNT: break;
    }
    return NULL;
}

int device_ratings(enum DeviceKind kind, const double **ratings_a)
{
    const struct RatingList *list = list_of(kind);
    if (list == NULL) {
        return 0;
    }
    *ratings_a = list->ratings_a;
    return list->count;
}

const struct TableRef *device_ratings_ref(enum DeviceKind kind)
{
    const struct RatingList *list = list_of(kind);
    return list != NULL ? &list->ref : NULL;
}
