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
    &device_ratings_bs1361.ref,  &device_ratings_bs3036.ref,
};

/* Of an edition, or the same in all of them. */
static const struct {
    const struct TableRef *(*of)(const struct Edition *edition);
    const struct TableRef *(*ref)(void);
} others[] = {
    {.ref = grouping_unlike_ref},
    {.ref = conductor_resistance_ref},
    {.ref = cable_dimensions_ref},
    {.ref = gland_usual_ref},
    {.ref = gland_ref},
    {.ref = support_spacing_ref},
    {.ref = hook_cleat_ref},
    {.ref = armour_ref},
    {.ref = armour_loop_ref},
    {.ref = flat_protective_core_ref},
    {.of = protective_by_table_ref},
    {.of = bonding_tn_c_s_ref},
    {.of = buried_earthing_ref},
    {.ref = let_through_ref},
    {.ref = first_loop_ref},
    {.ref = residual_time_ref},
    {.of = residual_loop_limit_ref},
    {.of = location_rule_ref},
    {.ref = harmonic_ref},
    {.ref = bend_radius_ref},
    {.ref = bend_radius_data_ref},
    {.ref = bend_radius_drawn_ref},
    {.ref = duct_bore_ref},
    {.ref = duct_fill_ref},
    {.ref = trunking_fill_ref},
    {.ref = duct_jam_ref},
    {.ref = pull_limits_ref},
    {.ref = pull_friction_ref},
    {.ref = separation_ref},
    {.ref = pack_size_ref},
    {.ref = order_allowances_ref},
    {.ref = surface_grip_ref},
    {.ref = conduit_spacing_ref},
    {.ref = trunking_spacing_ref},
    {.ref = containment_practice_ref},
    {.ref = wire_grips_ref},
    {.ref = gland_range_ref},
    {.ref = trench_practice_ref},
    {.ref = tails_practice_ref},
    {.ref = wall_hole_ref},
};

int tables_count(void)
{
    return OF_EDITION + COUNT_OF(parts) + K_COUNT + COUNT_OF(others);
}

const struct TableRef *tables_at(int index)
{
    const struct Edition *edition = edition_held();
    if (index < 0 || index >= tables_count()) {
        return NULL;
    }
    if (index < OF_EDITION) {
        return of_edition(edition, index);
    }
    index -= OF_EDITION;
    if (index < COUNT_OF(parts)) {
        return parts[index];
    }
    index -= COUNT_OF(parts);
    if (index < K_COUNT) {
        return k_value_ref(edition, (enum KTable)index);
    }
    index -= K_COUNT;
    return others[index].of != NULL ? others[index].of(edition) : others[index].ref();
}
