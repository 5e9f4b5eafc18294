/* Every table that the program holds, for --tables and the self-check. A new table is added here once. */
#include "fault_tables_private.h"
#include "mechanics_tables.h"
#include "takeoff_tables.h"

static const struct TableRef *air_4c1_ref(void)
{
    return &grouping_air_4c1()->ref;
}

static const struct TableRef *ceiling_ref(void)
{
    return &grouping_ceiling_b52_17()->ref;
}

static const struct TableRef *breaker_ref(void)
{
    return &device_ratings_breaker()->ref;
}

static const struct TableRef *bs88_2_ref(void)
{
    return &device_ratings_bs88_2()->ref;
}

static const struct TableRef *bs88_3_ref(void)
{
    return &device_ratings_bs88_3()->ref;
}

static const struct TableRef *bs1361_ref(void)
{
    return &device_ratings_bs1361()->ref;
}

static const struct TableRef *bs3036_ref(void)
{
    return &device_ratings_bs3036()->ref;
}

static const struct TableRef *trip_bs88_2_ref(void)
{
    return &device_trip_bs88_2()->ref;
}

static const struct TableRef *trip_bs1361_ref(void)
{
    return &device_trip_bs1361()->ref;
}

static const struct TableRef *trip_bs3036_ref(void)
{
    return &device_trip_bs3036()->ref;
}

static const struct TableRef *trip_bs88_3_ref(void)
{
    return &device_trip_bs88_3()->ref;
}

static const struct TableRef *k_43_1_ref(void)
{
    return &k_values_43_1()->ref;
}

static const struct TableRef *k_54_2_ref(void)
{
    return &k_values_54_2()->ref;
}

static const struct TableRef *k_54_3_ref(void)
{
    return &k_values_54_3()->ref;
}

static const struct TableRef *k_54_4_ref(void)
{
    return &k_values_54_4()->ref;
}

/* The capacity and voltage drop tables come first, by their enums; these follow. */
static const struct TableRef *(*const others[])(void) = {
    ambient_air_ref,
    ambient_ground_ref,
    soil_resistivity_ref,
    laying_depth_ref,
    insulation_length_ref,
    air_4c1_ref,
    ceiling_ref,
    grouping_buried_ref,
    grouping_ducts_ref,
    grouping_unlike_ref,
    conductor_resistance_ref,
    breaker_ref,
    bs88_2_ref,
    bs88_3_ref,
    bs1361_ref,
    bs3036_ref,
    cable_dimensions_ref,
    gland_usual_ref,
    gland_ref,
    support_spacing_ref,
    hook_cleat_ref,
    armour_ref,
    disconnection_time_ref,
    device_trip_breaker_ref,
    trip_bs88_2_ref,
    trip_bs88_3_ref,
    trip_bs1361_ref,
    trip_bs3036_ref,
    k_43_1_ref,
    k_54_2_ref,
    k_54_3_ref,
    k_54_4_ref,
    protective_by_table_ref,
    bonding_tn_c_s_ref,
    buried_earthing_ref,
    let_through_ref,
    first_loop_ref,
    residual_time_ref,
    residual_loop_limit_ref,
    location_rule_ref,
    harmonic_ref,
    bend_radius_ref,
    bend_radius_data_ref,
    bend_radius_drawn_ref,
    duct_bore_ref,
    duct_fill_ref,
    trunking_fill_ref,
    duct_jam_ref,
    pull_limits_ref,
    pull_friction_ref,
    separation_ref,
    pack_size_ref,
    order_allowances_ref,
    surface_grip_ref,
    conduit_spacing_ref,
    trunking_spacing_ref,
    containment_practice_ref,
    wire_grips_ref,
    gland_range_ref,
    trench_practice_ref,
    tails_practice_ref,
    wall_hole_ref,
};

int tables_count(void)
{
    return CAPACITY_COUNT + DROP_COUNT + COUNT_OF(others);
}

const struct TableRef *tables_at(int index)
{
    if (index < 0 || index >= tables_count()) {
        return NULL;
    }
    if (index < CAPACITY_COUNT) {
        return capacity_ref((enum CapacityTable)index);
    }
    if (index < CAPACITY_COUNT + DROP_COUNT) {
        return drop_ref((enum DropTable)(index - CAPACITY_COUNT));
    }
    return others[index - CAPACITY_COUNT - DROP_COUNT]();
}
