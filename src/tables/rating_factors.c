/* Rating factors: the look-ups of the tables that an edition prints. The columns of a table are in the order in which
 * they are counted here. */
#include "edition_private.h"

static bool ambient(const struct FactorTable *table, double insulation_degc, double degc, struct Figure *out)
{
    if (lookup_same(insulation_degc, 70)) {
        return lookup_factor(table, degc, 0, out);
    }
    return lookup_same(insulation_degc, 90) && lookup_factor(table, degc, 1, out);
}

bool ambient_air(const struct Edition *edition, double insulation_degc, double air_degc, struct Figure *out)
{
    return ambient(edition->factors[FACTORS_AIR], insulation_degc, air_degc, out);
}

bool ambient_ground(const struct Edition *edition, double insulation_degc, double ground_degc, struct Figure *out)
{
    return ambient(edition->factors[FACTORS_GROUND], insulation_degc, ground_degc, out);
}

/* In ducts, direct. */
bool soil_resistivity(const struct Edition *edition, double k_m_per_w, bool in_duct, struct Figure *out)
{
    return lookup_factor(edition->factors[FACTORS_SOIL], k_m_per_w, in_duct ? 0 : 1, out);
}

/* Direct, in ducts. */
bool laying_depth(const struct Edition *edition, double depth_m, bool in_duct, struct Figure *out)
{
    return lookup_factor(edition->factors[FACTORS_DEPTH], depth_m, in_duct ? 1 : 0, out);
}

/* "500 mm or longer": half of the method C capacity however long. */
bool insulation_length(const struct Edition *edition, double length_mm, struct Figure *out)
{
    const struct FactorTable *table = edition->factors[FACTORS_INSULATION];
    const double longest_mm = table->keys[table->rows - 1];
    return lookup_factor(table, length_mm > longest_mm ? longest_mm : length_mm, 0, out);
}

double insulation_length_largest_mm2(void)
{
    return 10;
}

/* Where the figures of a column are: Table 4C1 has none for a ceiling. */
struct Spot {
    enum FactorTables table;
    int column;
};

static struct Spot spot_of(enum GroupAir column)
{
    switch (column) {
    case GROUP_BUNCHED: return (struct Spot){FACTORS_GROUPED_AIR, 0};
    case GROUP_WALL_LAYER: return (struct Spot){FACTORS_GROUPED_AIR, 1};
    case GROUP_CEILING_LAYER: return (struct Spot){FACTORS_GROUPED_CEILING, 0};
    case GROUP_TRAY_LAYER: return (struct Spot){FACTORS_GROUPED_AIR, 2};
    case GROUP_LADDER_LAYER: return (struct Spot){FACTORS_GROUPED_AIR, 3};
    case GROUP_AIR_COUNT: break;
    }
    return (struct Spot){FACTORS_COUNT, 0};
}

bool grouping_air(const struct Edition *edition, enum GroupAir column, int circuits, struct Figure *out)
{
    const struct Spot spot = spot_of(column);
    return spot.table != FACTORS_COUNT && circuits >= 1 &&
           lookup_factor(edition->factors[spot.table], circuits, spot.column, out);
}

const struct TableRef *grouping_air_ref(const struct Edition *edition, enum GroupAir column)
{
    return factors_ref(edition, spot_of(column).table);
}

/* Those tables begin with two circuits. */
static bool grouped(const struct FactorTable *table, int column, int circuits, struct Figure *out)
{
    if (circuits == 1 && column >= 0 && column < table->columns) {
        *out = (struct Figure){.value = 1.0, .row = 1};
        return true;
    }
    return circuits > 1 && lookup_factor(table, circuits, column, out);
}

bool grouping_buried(const struct Edition *edition, enum GroupBuried column, int circuits, struct Figure *out)
{
    return grouped(edition->factors[FACTORS_GROUPED_BURIED], (int)column, circuits, out);
}

bool grouping_ducts(const struct Edition *edition, enum GroupDucts column, int circuits, struct Figure *out)
{
    return grouped(edition->factors[FACTORS_GROUPED_DUCTS], (int)column, circuits, out);
}

const struct TableRef *factors_ref(const struct Edition *edition, enum FactorTables table)
{
    return (unsigned)table < FACTORS_COUNT ? &edition->factors[table]->ref : NULL;
}
