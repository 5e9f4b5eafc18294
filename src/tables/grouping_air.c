/* Grouping in air under one look-up: Table 4C1 and the ceiling column that it lacks. */
#include "tables_private.h"

/* Where the figures of a GroupAir column are. */
struct Spot {
    const struct FactorTable *table;
    int column;
};

static struct Spot spot_of(enum GroupAir column)
{
    switch (column) {
    case GROUP_BUNCHED: return (struct Spot){grouping_air_4c1(), 0};
    case GROUP_WALL_LAYER: return (struct Spot){grouping_air_4c1(), 1};
    case GROUP_CEILING_LAYER: return (struct Spot){grouping_ceiling_b52_17(), 0};
    case GROUP_TRAY_LAYER: return (struct Spot){grouping_air_4c1(), 2};
    case GROUP_LADDER_LAYER: return (struct Spot){grouping_air_4c1(), 3};
    case GROUP_AIR_COUNT: break;
    }
    return (struct Spot){NULL, 0};
}

bool grouping_air(enum GroupAir column, int circuits, struct Figure *out)
{
    const struct Spot spot = spot_of(column);
    return spot.table != NULL && circuits >= 1 && lookup_factor(spot.table, circuits, spot.column, out);
}

const struct TableRef *grouping_air_ref(enum GroupAir column)
{
    const struct Spot spot = spot_of(column);
    return spot.table != NULL ? &spot.table->ref : NULL;
}
