/* Every table that the program holds, for --tables and the self-check. A new table is added here once. */
#include "edition_private.h"
#include "mechanics_tables.h"
#include "takeoff_tables.h"

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

/* Those of an edition, in their order here; the others follow. */
static const struct TableRef *of_edition(const struct Edition *edition, int index)
{
    const struct TableRef *const by_device[] = {&edition->disconnection->ref, &edition->breakers->ref,
                                                &edition->bs88_2->ref,        &edition->bs88_3->ref,
                                                &edition->bs1361->ref,        &edition->bs3036->ref};
    if (index < CAPACITY_COUNT) {
        return capacity_ref(edition, (enum CapacityTable)index);
    }
    if (index < CAPACITY_COUNT + DROP_COUNT) {
        return drop_ref(edition, (enum DropTable)(index - CAPACITY_COUNT));
    }
    index -= CAPACITY_COUNT + DROP_COUNT;
    return index < FACTORS_COUNT ? factors_ref(edition, (enum FactorTables)index) : by_device[index - FACTORS_COUNT];
}
enum { OF_EDITION = CAPACITY_COUNT + DROP_COUNT + FACTORS_COUNT + 6 };

static const struct TableRef *(*const others[])(void) = {
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
    return OF_EDITION + COUNT_OF(others);
}

const struct TableRef *tables_at(int index)
{
    if (index < 0 || index >= tables_count()) {
        return NULL;
    }
    return index < OF_EDITION ? of_edition(edition_held(), index) : others[index - OF_EDITION]();
}
