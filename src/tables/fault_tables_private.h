/** What the files of the fault tables share: figures that one public look-up gathers from several published tables. */
#ifndef WEND_FAULT_TABLES_PRIVATE_H
#define WEND_FAULT_TABLES_PRIVATE_H

#include "fault_tables.h"
#include "tables_private.h"

/* ---- tripping currents, gathered by device_trip.c ---- */
/** Greatest loop impedance, ohm, at the nominal 230 V with Cmin 0.95; NOT_GIVEN where the print has none. */
struct FuseRow {
    double rating_a;
    double within_0_4_s_ohm, within_5_s_ohm;
};
struct FuseLimits {
    struct TableRef ref;
    const struct FuseRow *rows;
    int count;
};
/** The multiple of its rating at which a circuit-breaker is sure to open at once. */
struct BreakerLimits {
    struct TableRef ref;
    double multiples[CURVE_COUNT];
};

/* ---- disconnection_times_41_1.c ---- */
enum { DISCONNECTION_BANDS = 4 };
struct DisconnectionTimes {
    struct TableRef ref;
    double up_to_v[DISCONNECTION_BANDS - 1]; /**< ends of the bands of U0, the last of which has none */
    double final_s[DISCONNECTION_BANDS][2];  /**< TN, TT */
    double distribution_s[2];
};

/* ---- k of the adiabatic equation, gathered by k_values.c ---- */
/** A s^0.5 / mm2, one material, by the temperature that the insulation allows in service. */
struct KFigures {
    struct TableRef ref;
    double at_70_degc, at_90_degc;
};

/* ---- residual_loop_limit_41_5.c ---- */
struct ResidualLoop {
    struct TableRef ref;
    double touch_v;
};

/* ---- protective_size_54_7.c ---- */
struct ProtectiveBands {
    struct TableRef ref;
    double same_up_to_mm2, constant_up_to_mm2; /**< of the line; above the second half of it */
};

/* ---- bonding_tn_c_s_54_8.c ---- */
enum { BONDING_BANDS = 5 };
struct BondingBands {
    struct TableRef ref;
    double neutral_up_to_mm2[BONDING_BANDS], bonding_mm2[BONDING_BANDS];
};

/* ---- buried_earthing_54_1.c ---- */
struct BuriedEarthing {
    struct TableRef ref;
    double copper_mm2[2][2]; /**< bare, sheathed; mechanically unprotected, protected */
};

/* ---- location_rules.c ---- */
struct LocationRules {
    struct TableRef ref;
    const struct LocationRule *rows;
    int count;
};

/* ---- voltage_factors.c ---- */
struct VoltageFactors {
    struct TableRef ref;
    double least, greatest;
};

#endif
