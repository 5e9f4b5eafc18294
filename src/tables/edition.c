/* The editions of the wiring rules that are held, and which tables each of them prints. */
#include "edition_private.h"

static const struct Edition bs7671_2018_a2 = {
    .name = "BS 7671:" EDITION_BS7671,
    .beyond = {"2024", "2026"},
#define TABLE(name, figures) [CAPACITY_##name] = &(figures),
    .capacity = {CAPACITY_TABLES(TABLE)},
#undef TABLE
#define TABLE(name, figures) [DROP_##name] = &(figures),
    .drop = {DROP_TABLES(TABLE)},
#undef TABLE
#define TABLE(name, figures) [FACTORS_##name] = &(figures),
    .factors = {FACTOR_TABLES(TABLE)},
#undef TABLE
    .disconnection = &disconnection_times_41_1,
    .breakers = &device_trip_breaker_41_3,
    .bs88_2 = &device_trip_bs88_2,
    .bs88_3 = &device_trip_bs88_3,
    .bs1361 = &device_trip_bs1361,
    .bs3036 = &device_trip_bs3036,
    .k = {[K_LIVE] = &k_values_43_1,
          [K_SEPARATE] = &k_values_54_2,
          [K_CORE] = &k_values_54_3,
          [K_ARMOUR] = &k_values_54_4},
    .residual_loop = &residual_loop_limit_41_5,
    .protective = &protective_size_54_7,
    .bonding = &bonding_tn_c_s_54_8,
    .buried_earthing = &buried_earthing_54_1,
    .locations = &location_rules_part_7,
    .voltage = &voltage_factors,
};

const struct Edition *edition_held(void)
{
    return &bs7671_2018_a2;
}

const char *edition_name(const struct Edition *edition)
{
    return edition->name;
}

const char *edition_beyond(const struct Edition *edition, int index)
{
    return index >= 0 && index < EDITION_BEYOND ? edition->beyond[index] : NULL;
}
