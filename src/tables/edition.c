/* The editions of the wiring rules that are held, and which tables each of them prints. */
#include "edition_private.h"

static const struct Edition bs7671_2018_a2 = {
    .name = TABLES_BS7671,
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
