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
extern const struct KFigures k_values_43_1, k_values_54_2, k_values_54_3, k_values_54_4;

#endif
