/** What an edition of the wiring rules is made of: a row of the tables that it prints. */
#ifndef WEND_EDITION_PRIVATE_H
#define WEND_EDITION_PRIVATE_H

#include "fault_tables_private.h"

enum { EDITION_BEYOND = 2 };
/** A further edition is a further row, and a file for each table that it prints otherwise. Tables that are no part of
 * the rules, and those that no edition has changed so far, are asked without one. */
struct Edition {
    const char *name, *beyond[EDITION_BEYOND];
    const struct CapacityData *capacity[CAPACITY_COUNT];
    const struct DropData *drop[DROP_COUNT];
    const struct FactorTable *factors[FACTORS_COUNT];
    const struct DisconnectionTimes *disconnection;
    const struct BreakerLimits *breakers;
    const struct FuseLimits *bs88_2, *bs88_3, *bs1361, *bs3036;
    const struct KFigures *k[K_COUNT];
    const struct ResidualLoop *residual_loop;
    const struct ProtectiveBands *protective;
    const struct BondingBands *bonding;
    const struct BuriedEarthing *buried_earthing;
    const struct LocationRules *locations;
    const struct VoltageFactors *voltage;
};

extern const struct CapacityData capacity_4d2a, capacity_4d4a, capacity_4d5, capacity_4e2a, capacity_4e4a;
extern const struct DropData voltdrop_4d2b, voltdrop_4d4b, voltdrop_4d5, voltdrop_4e2b, voltdrop_4e4b;
extern const struct FactorTable ambient_air_4b1, ambient_ground_4b2, soil_resistivity_4b3, laying_depth_4b4,
    insulation_length_52_2, grouping_air_4c1, grouping_ceiling_b52_17, grouping_buried_4c2, grouping_ducts_4c3;
extern const struct DisconnectionTimes disconnection_times_41_1;
extern const struct BreakerLimits device_trip_breaker_41_3;
extern const struct FuseLimits device_trip_bs88_2, device_trip_bs88_3, device_trip_bs1361, device_trip_bs3036;
extern const struct KFigures k_values_43_1, k_values_54_2, k_values_54_3, k_values_54_4;
extern const struct ResidualLoop residual_loop_limit_41_5;
extern const struct ProtectiveBands protective_size_54_7;
extern const struct BondingBands bonding_tn_c_s_54_8;
extern const struct BuriedEarthing buried_earthing_54_1;
extern const struct LocationRules location_rules_part_7;
extern const struct VoltageFactors voltage_factors;

/* ---- figures as cells, in table_cells.c ---- */
/** By the index of tables_at(), which has those of an edition first. */
void cells_of_edition(const struct Edition *edition, int index, struct TextBuilder *out);
void cells_of_ratings(const struct RatingList *list, struct TextBuilder *out);
void cells_of_k(const struct KFigures *figures, struct TextBuilder *out);
/** Of device_trip_breaker_41_3.c, which has type D's second limit too. */
void breaker_cells(const struct BreakerLimits *limits, struct TextBuilder *out);

#endif
