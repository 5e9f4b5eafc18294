/** Published figures on faults, earthing and protective devices. The same rules as in tables.h: the safer row, nothing
 * interpolated, `false` where the table has no such figure. */
#ifndef WEND_FAULT_TABLES_H
#define WEND_FAULT_TABLES_H

#include "base/base.h"
#include "survey/survey.h"
#include "tables.h"

/** Steel wire armour of a BS 5467 cable (BS 6724 is built to the same dimensions). */
struct Armour {
    double area_mm2;      /**< gross, of all wires */
    double max_ohm_per_m; /**< greatest resistance at 20 degC */
    double min_ohm_per_m; /**< what the area gives at 20 degC; the lower of the two, for the largest fault current */
};
bool armour_figures(enum CableType type, int cores, double size_mm2, struct Armour *out);
const struct TableRef *armour_ref(void);
/** Of a fault loop through armour: rise of its resistance per kelvin over 20 degC, the factor for lay and magnetism,
 * and the reactance of the whole loop. */
struct ArmourLoop {
    double per_k, lay, reactance_ohm_per_m;
};
const struct ArmourLoop *armour_loop(void);
const struct TableRef *armour_loop_ref(void);
/** Copper area of the protective core of flat cable. False for a size that is not in print. */
bool flat_protective_core_mm2(double line_mm2, double *out_mm2);
const struct TableRef *flat_protective_core_ref(void);

/** Longest disconnection time, s; BS 7671 Table 41.1 for final circuits and 411.3.2.3, 411.3.2.4 for the others. */
double disconnection_time_s(const struct Edition *edition, bool tt, bool final_circuit, double u0_v);
const struct TableRef *disconnection_time_ref(const struct Edition *edition);

/** Current that makes the device cut off within `time_s` (0.4 or 5 s, the shorter serves any shorter time of a
 * circuit-breaker, down to 0.1 s), ampere: k In for circuit-breakers (type D up to 32 A 10 In within 5 s), read back
 * from the printed Zs for fuses. False where there is none. */
bool device_trip_current(const struct Edition *edition, enum DeviceKind kind, enum Curve curve, double rating_a,
                         double time_s, double *out_a);
/** Current from which a type D opens by its overload part, ampere, and within which time, s: 10 In in 5 s, above 32 A
 * in 8 s. False for other types. */
bool device_trip_late(enum Curve curve, double rating_a, double *out_a, double *out_s);
const struct TableRef *device_trip_ref(const struct Edition *edition, enum DeviceKind kind);

/** k of the adiabatic equation, A s^0.5 / mm2; Tables 43.1, 54.2 to 54.4. `degc` is the insulation's 70 or 90;
 * any other gets the lower of the two figures. */
enum KTable {
    K_LIVE,     /**< copper of a live conductor */
    K_SEPARATE, /**< copper of a protective conductor outside a cable that is not bunched */
    K_CORE,     /**< the same as a core, or bunched */
    K_ARMOUR,   /**< steel wire */
    K_COUNT
};
double k_value(const struct Edition *edition, enum KTable table, double degc);
const struct TableRef *k_value_ref(const struct Edition *edition, enum KTable table);

/** Least protective conductor for a line conductor, mm2, by size alone; Table 54.7 with k1 over k2, which
 * counts as 1 where it is less. Infinity for what is no size or no k. */
double protective_by_table_mm2(const struct Edition *edition, double line_mm2, double k1, double k2);
const struct TableRef *protective_by_table_ref(const struct Edition *edition);

/** Least main bonding conductor, mm2 copper, on a TN-C-S supply, by the copper size of the supply's neutral;
 * Table 54.8. */
bool bonding_tn_c_s(const struct Edition *edition, double supply_neutral_mm2, double *out_mm2);
const struct TableRef *bonding_tn_c_s_ref(const struct Edition *edition);

/** Least buried earthing conductor, mm2 copper; Table 54.1. */
double buried_earthing_mm2(const struct Edition *edition, bool sheathed, bool mechanically_protected);
const struct TableRef *buried_earthing_ref(const struct Edition *edition);

/** Greatest let-through energy of an energy limiting class 3 circuit-breaker at its own breaking capacity, A2 s. False
 * where there is no class: type D, over 40 A, other capacities. */
/** The highest breaking capacity that let_through_class_3() has, A. */
#define LET_THROUGH_HIGHEST_A 10000.0
bool let_through_class_3(enum Curve curve, double rating_a, double breaking_capacity_a, double *out_a2s);
const struct TableRef *let_through_ref(void);

/** Energy of a fault's first loop over that of half a cycle of its steady current; at most what a device lets through
 * that opens at the end of it. Rises with the current. */
double first_loop_factor(double current_a);
const struct TableRef *first_loop_ref(void);

/** Longest operating time of a residual device at 1, 2 or 5 times its rated residual current, s. */
bool residual_time_s(bool time_delayed, int multiple, double *out_s);
/** Shortest (non-actuating) time of a delayed one there, s. */
bool residual_shortest_s(int multiple, double *out_s);
const struct TableRef *residual_time_ref(void);

/** Greatest electrode resistance or loop impedance with a residual device, ohm; Table 41.5: the touch voltage over
 * I delta n. */
double residual_loop_limit_ohm(const struct Edition *edition, double residual_a);
/** Touch voltage that a residual device and an electrode may leave, V; 411.5.3, which that table is made of. */
double touch_limit_v(const struct Edition *edition);
const struct TableRef *residual_loop_limit_ref(const struct Edition *edition);

enum { CLAUSE_BONDS = 4 };
/** Figures that stand alone in a clause of the wiring rules. */
struct ClauseFigures {
    double adiabatic_from_s, adiabatic_to_s;           /**< where I2t = k2S2 holds */
    double fuse_short_s;                               /**< the shorter of the times that a fuse is read at */
    double separate_bare_mm2, separate_enclosed_mm2;   /**< least conductor outside a cable */
    double separate_bunched_degc, separate_apart_degc; /**< how warm a fault finds it */
    double bond_mm2[CLAUSE_BONDS]; /**< main bonds, the least first, the last need not be exceeded */
    double fuse_long_s;            /**< the longer of the times that a fuse is read at, and a curve asked for */
    double final_sockets_a, final_equipment_a; /**< to which a circuit is a final one with a short time */
    double armour_cooler_k;                    /**< than the conductor, when a fault begins */
    double electrode_steady_ohm;               /**< above it one may not stay what it was through drought and frost */
    double copper_per_k; /**< rise of copper's resistance: its factors 1.20 at 70 and 1.28 at 90 degC */
    double additional_residual_a, charging_residual_a; /**< the most that may leak */
    double insulation_least_mohm, insulation_test_v;
    double cold_part; /**< of a loop's limit, that a reading taken cold is held against */
};
const struct ClauseFigures *clause_figures(void);
const struct TableRef *clause_figures_ref(void);

/** Figures that design takes from other papers, and one of its own. */
struct DesignPractice {
    double thick_wall_m;         /**< from there a wall is a place of its own */
    double supply_electrode_ohm; /**< on TT, where nobody measured it */
    double reactance_above_mm2;
    double clear_margin;     /**< of Table 54.7 over the equation, times */
    double half_cycle_s;     /**< of 50 Hz */
    double start_low_factor; /**< power factors of a motor that starts: the worse of the two is taken */
    double start_high_factor;
    double selective_residual_a; /**< where another device follows */
    double rod_deepest_m;        /**< nobody drives one deeper */
    double notify_up_to_a;       /**< generation a line that is fitted and then notified */
    double supply_most;          /**< of its nominal voltage, times */
    double separated_circuit_a;  /**< as separation from data counts circuits */
    double sun_rise_k;           /**< full sun on a cable: the air is taken this much warmer */
    double sun_hottest_degc;     /**< air to which that was worked out */
};
const struct DesignPractice *design_practice(void);
const struct TableRef *design_practice_ref(void);

enum { GAP_COLUMNS = 3 };
/** Figures that stand alone in a clause on ratings, or under the title of a table. */
struct ClauseRatings {
    double overload_semi_enclosed, overload_buried; /**< Cf and Cc: not about heat */
    double surrounded, surrounded_from_mm;          /**< by insulation, for a length of that and over */
    double surrounded_enough_mm;                    /**< where that factor falls short */
    double ceiling_thin_m;                          /**< insulation that counts as thin, to */
    double soil_deepest_m, laying_base_m;           /**< the depths that Tables 4B3 and 4B4 are printed for */
    double air_degc, ground_degc;                   /**< the surroundings that capacities are printed for */
    double buried_gap_m[GAP_COLUMNS], ducts_gap_m[GAP_COLUMNS]; /**< clearances of the columns of Tables 4C2 and 4C3 */
    double copper_inverse_degc; /**< inverse temperature coefficient of copper at 0 degC */
    double spaced_diameters;    /**< a clearance in air of more of the larger cable's makes no group */
    double terminals_more_degc; /**< the more of the two temperatures that terminals are made for */
};
const struct ClauseRatings *clause_ratings(void);
const struct TableRef *clause_ratings_ref(void);

/** Times its rating to which a circuit-breaker does not open at once; of no type the least. */
double breaker_holds(enum Curve curve);
const struct TableRef *breaker_holds_ref(void);

/** Rated residual currents, the least first; their count. */
int residual_ratings(const double **out_a);
const struct TableRef *residual_rating_ref(void);

/* ---- readings: meter_errors_en61557.c, reading_practice.c ---- */
/** Share of what it shows by which a meter may be out. */
struct MeterErrors {
    double of_resistance, of_time;
};
const struct MeterErrors *meter_errors(void);
const struct TableRef *meter_errors_ref(void);
struct ReadingPractice {
    double band;                            /**< share of what is expected within which a reading fits */
    double leads_ohm;                       /**< not nulled, and terminals */
    double coldest_degc, warmest_degc;      /**< of a cable whose temperature was not read */
    double new_cable_mohm;                  /**< insulation of a new dry one */
    double length_shortest, length_longest; /**< of a length that was written down wrongly, times */
    double joint_least_ohm, joint_most_ohm; /**< of a loose joint or gland */
    double unlike_from;                     /**< share from which two resistances count as unlike */
};
const struct ReadingPractice *reading_practice(void);
const struct TableRef *reading_practice_ref(void);

/** Voltage factors of a fault calculation, over the nominal voltage: the least for disconnection, the greatest for
 * breaking and withstand; Appendix 3. */
double voltage_factor_least(const struct Edition *edition);
double voltage_factor_greatest(const struct Edition *edition);
/** The least one has been seen, this one only remembered. */
enum Trust voltage_factor_greatest_trust(void);
const struct TableRef *voltage_factor_ref(const struct Edition *edition);

/** What a kind of place may demand of a feed. */
enum LocationTopic {
    TOPIC_SOCKETS,         /**< residual device for socket-outlets up to `up_to_a`, A */
    TOPIC_SOCKETS_LARGE,   /**< for those beyond, A */
    TOPIC_LIGHTING,        /**< for a circuit of luminaires, A */
    TOPIC_FINAL,           /**< for any other final circuit, A */
    TOPIC_FEED,            /**< for a feed to a board, A */
    TOPIC_EARTH,           /**< whether a TN-C-S supply's earth may be used: enum LocationEarth */
    TOPIC_DEPTH,           /**< least depth in the ground, m */
    TOPIC_DEPTH_FIELD,     /**< the same in ploughed or cultivated ground, m */
    TOPIC_HEIGHT_VEHICLES, /**< least height of a slung cable where vehicles go, m */
    TOPIC_HEIGHT,          /**< the same elsewhere, m */
    TOPIC_REFUSED,         /**< its rules are not held here at all */
    TOPIC_COUNT
};
enum LocationEarth { EARTH_REFUSED = 1, EARTH_WITH_GRID = 2 /**< only with a bonded metal grid in the floor */ };
/** What `clause` of a rule is. */
enum RuleBy { RULE_BY_CLAUSE, RULE_BY_NOTE, RULE_BY_STANDARD, RULE_BY_GUIDANCE };
struct LocationRule {
    enum Location location;
    enum LocationTopic topic;
    double value;
    double up_to_a;     /**< rating that it holds up to, 0 any */
    const char *clause; /**< of BS 7671, the note to one, another standard, or guidance alone: by `by` */
    enum Trust trust;
    enum RuleBy by;
};
int location_rule_count(const struct Edition *edition);
/** NULL out of range. */
const struct LocationRule *location_rule_at(const struct Edition *edition, int index);
/** The row of that very place; NULL when it has none. */
const struct LocationRule *location_rule(const struct Edition *edition, enum Location location,
                                         enum LocationTopic topic);
const struct TableRef *location_rule_ref(const struct Edition *edition);

/** Reduction for third-harmonic current; IEC 60364-5-52 Annex E. `sized_on_neutral` says which current is to be
 * carried. */
double harmonic_factor(double third_percent, bool *sized_on_neutral);
const struct TableRef *harmonic_ref(void);

#endif
