/* Cg: other loaded circuits that warm the cable. */
#include "design_private.h"

/* Cables spaced in air by more than two diameters of the larger need no factor (Table 4C1, notes). Where the gap was
 * measured and the diameter is known this is looked at; "spaced" without a gap is taken at its word. */
static bool spaced_enough(const struct Situation *situation, double diameter_mm)
{
    return situation->gap_m <= 0 || (diameter_mm > 0 && situation->gap_m * 1000 > 2 * diameter_mm);
}

static enum GroupAir air_column(const struct Situation *situation)
{
    if (situation->way == WAY_CONDUIT || situation->way == WAY_TRUNKING ||
        situation->arrangement == ARRANGEMENT_BUNCHED) {
        return GROUP_BUNCHED;
    }
    switch (situation->way) {
    case WAY_CEILING: return GROUP_CEILING_LAYER;
    case WAY_TRAY: return GROUP_TRAY_LAYER;
    case WAY_LADDER: return GROUP_LADDER_LAYER;
    case WAY_WALL:
    case WAY_FENCE:
    case WAY_BEAM:
    case WAY_LOFT_VOID:
    case WAY_UNDER_FLOOR:
    case WAY_STUD_WALL:
    case WAY_THROUGH_WALL:
    case WAY_CONDUIT:
    case WAY_TRUNKING:
    case WAY_CATENARY:
    case WAY_DUCT:
    case WAY_BURIED:
    case WAY_COUNT: break;
    }
    return GROUP_WALL_LAYER;
}

static enum GroupBuried buried_column(const struct Situation *situation, double diameter_mm)
{
    const bool apart =
        situation->arrangement == ARRANGEMENT_SPACED || situation->arrangement == ARRANGEMENT_DUCT_SPACED;
    if (!apart) {
        return BURIED_TOUCHING;
    }
    const double gap_m = situation->gap_m;
    if (gap_m <= 0) {
        return BURIED_ONE_DIAMETER;
    }
    if (within(0.5, gap_m)) {
        return BURIED_500_MM;
    }
    if (within(0.25, gap_m)) {
        return BURIED_250_MM;
    }
    if (within(0.125, gap_m)) {
        return BURIED_125_MM;
    }
    return diameter_mm > 0 && within(diameter_mm, gap_m * 1000) ? BURIED_ONE_DIAMETER : BURIED_TOUCHING;
}

static enum GroupDucts ducts_column(const struct Situation *situation)
{
    const bool apart =
        situation->arrangement == ARRANGEMENT_SPACED || situation->arrangement == ARRANGEMENT_DUCT_SPACED;
    const double gap_m = apart ? situation->gap_m : 0;
    if (within(1.0, gap_m)) {
        return DUCTS_1000_MM;
    }
    if (within(0.5, gap_m)) {
        return DUCTS_500_MM;
    }
    return within(0.25, gap_m) ? DUCTS_250_MM : DUCTS_TOUCHING;
}

/* Cables in one duct count as bunched (4C1), ducts beside each other by 4C3; with both, both. */
static bool group_in_ducts(struct Arena *arena, const struct Situation *situation, struct Factor *out)
{
    const int beside = situation->circuits_beside - situation->other_runs;
    const bool beside_in_own_ducts = situation->arrangement == ARRANGEMENT_DUCT_TOUCHING ||
                                     situation->arrangement == ARRANGEMENT_DUCT_SPACED ||
                                     situation->arrangement == ARRANGEMENT_SPACED;
    const int in_duct = situation->circuits_in_duct + (beside_in_own_ducts ? 0 : beside);
    const int ducts = 1 + (beside_in_own_ducts ? beside : 0);
    struct Figure together = {.value = 1, .row = 1};
    struct Figure apart = {.value = 1, .row = 1};
    if ((in_duct > 1 && !grouping_air(GROUP_BUNCHED, in_duct, &together)) ||
        (ducts > 1 && !grouping_ducts(ducts_column(situation), ducts, &apart))) {
        return false;
    }
    out->value = together.value * apart.value;
    if (arena == NULL) {
        return true;
    }
    if (ducts == 1) {
        out->source = table_source(arena, grouping_air_ref(GROUP_BUNCHED));
        out->because = arena_print(arena, "%d loaded circuits in one duct, taken as bunched", in_duct);
    } else if (in_duct == 1) {
        out->source = table_source(arena, grouping_ducts_ref());
        out->because = arena_print(arena, "%d loaded ducts side by side", ducts);
    } else {
        out->source = arena_print(arena, "%s and %s", table_source(arena, grouping_air_ref(GROUP_BUNCHED)),
                                  table_source(arena, grouping_ducts_ref()));
        out->because = arena_print(arena, "%d loaded circuits in this duct and %d ducts side by side", in_duct, ducts);
    }
    return true;
}

bool grouping_factor(struct Arena *arena, const struct Situation *situation, double diameter_mm, struct Factor *out)
{
    const int circuits = 1 + situation->circuits_beside;
    if (circuits == 1) {
        *out = (struct Factor){.value = 1};
        return true;
    }
    *out = (struct Factor){.symbol = "Cg", .value = 1};
    if (situation->in_duct) {
        return group_in_ducts(arena, situation, out);
    }
    struct Figure figure;
    if (situation->in_ground) {
        if (!grouping_buried(buried_column(situation, diameter_mm), circuits, &figure)) {
            return false;
        }
        out->value = figure.value;
        if (arena != NULL) {
            out->source = table_source(arena, grouping_buried_ref());
            out->because = arena_print(arena, "%d loaded circuits laid together in the ground", circuits);
        }
        return true;
    }
    if (situation->arrangement == ARRANGEMENT_SPACED && situation->other_runs == 0 &&
        spaced_enough(situation, diameter_mm)) {
        if (arena != NULL) {
            out->source = table_source(arena, grouping_air_ref(GROUP_WALL_LAYER));
            out->because = arena_print(arena, "%d loaded circuits, more than two cable diameters apart", circuits);
        }
        return true;
    }
    const enum GroupAir column = air_column(situation);
    if (!grouping_air(column, circuits, &figure)) {
        return false;
    }
    out->value = figure.value;
    if (arena != NULL) {
        out->source = table_source(arena, grouping_air_ref(column));
        out->because =
            arena_print(arena, "%d loaded circuits %s", circuits, column == GROUP_BUNCHED ? "bunched" : "in one layer");
    }
    return true;
}
