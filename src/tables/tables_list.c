/* Every table that the program holds, for `wend tables` and the self-check. A new table is added here once. */
#include "edition_private.h"
#include "mechanics_tables.h"
#include "takeoff_tables.h"

/* Those of an edition, in their order here; then those that have no look-up of their own, and the others. */
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

static const struct TableRef *const parts[] = {
    &device_ratings_breaker.ref, &device_ratings_bs88_2.ref, &device_ratings_bs88_3.ref,
    &device_ratings_bs1361.ref,  &device_ratings_bs3036.ref, &k_values_43_1.ref,
    &k_values_54_2.ref,          &k_values_54_3.ref,         &k_values_54_4.ref,
};

static const struct TableRef *(*const others[])(void) = {
    grouping_unlike_ref,
    conductor_resistance_ref,
    cable_dimensions_ref,
    gland_usual_ref,
    gland_ref,
    support_spacing_ref,
    hook_cleat_ref,
    armour_ref,
    armour_loop_ref,
    flat_protective_core_ref,
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
    return OF_EDITION + COUNT_OF(parts) + COUNT_OF(others);
}

const struct TableRef *tables_at(int index)
{
    if (index < 0 || index >= tables_count()) {
        return NULL;
    }
    if (index < OF_EDITION) {
        return of_edition(edition_held(), index);
    }
    index -= OF_EDITION;
    return index < COUNT_OF(parts) ? parts[index] : others[index - COUNT_OF(parts)]();
}
