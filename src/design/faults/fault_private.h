/** What the checks on faults and earthing know of each other. Calculations are pure: arguments in, result out. */
#ifndef WEND_FAULT_PRIVATE_H
#define WEND_FAULT_PRIVATE_H

#include "design/terms/steps_private.h"
#include "tables/fault_tables.h"

/* ---- fault_terms.c ---- */
/** Fills what the checks on faults and earthing ask of the survey; `work` holds run, demand and phases already. */
void design_fault_terms(const struct Survey *survey, struct RunDesign *work);

/* ---- loop.c: resistances of the fault path ---- */
/** Resistance at `degc` of a copper conductor of `ohm_20` at 20 degC: alpha 0.004 per kelvin as in BS 7671. */
double copper_at(double ohm_20, double degc);
/** The same for steel armour, by armour_loop(). */
double armour_at(double ohm_20, double degc);
/** Two paths side by side. */
double parallel_ohm(double a_ohm, double b_ohm);
/** Copper size of the protective core of a cable, mm2; flat cable has a thinner one. False where no table says. */
bool protective_core_mm2(enum CableType type, double size_mm2, double *out_mm2);
/** Where that is from; NULL where the core is as large as the others. */
const struct TableRef *protective_core_ref(enum CableType type);
/** The earth fault path of a run for one size. */
struct Loop {
    enum Saying lacks;        /**< a figure that is missing: only the line's are set then; else SAY_NOTHING */
    double line_20_ohm;       /**< R1 over the electrical length at 20 degC */
    double protective_m;      /**< length of the protective path */
    double protective_20_ohm; /**< R2 */
    double line_hot_ohm, protective_hot_ohm; /**< at fault: copper at its rated temperature, armour 10 degC below */
    double reactance_ohm;                    /**< of the run, where it counts */
    /* what they are made of, per metre at 20 degC; 0 none */
    double line_ohm_per_m;
    double copper_ohm_per_m; /**< of the protective path: a core or a separate conductor */
    double armour_ohm_per_m;
    double reactance_ohm_per_m;
    double copper_degc, armour_degc; /**< how warm a fault finds them */
};
struct Loop loop_of_run(const struct RunDesign *run, double size_mm2);
/** The loop before the run and the run. Of the first a meter gives the magnitude alone, so the two are added as such:
 * no angle between them makes more. */
double loop_far_ohm(double before_ohm, const struct Loop *loop);

/* ---- fault_level.c: currents and energies ---- */
/** Current of an earth fault at the origin: as surveyed, or greatest voltage over the loop where that is more; 0 not
 * known. */
double fault_current_earth_a(const struct RunDesign *run);
/** Largest current of any fault at the origin, as surveyed and not under the earth fault's; 0 where it was not
 * surveyed: Ze is the greatest loop, and a short circuit may draw more than an earth fault. */
double fault_current_any_a(const struct RunDesign *run);
/** Least current of a short circuit between line and neutral at the far end, hot, A; 0 not known. */
double short_circuit_far_a(const struct RunDesign *run, double size_mm2);
/** Least current of an earth fault at the far end, hot, A; 0 not known. */
double earth_fault_far_a(const struct RunDesign *run, double size_mm2);
/** "25600 A2 s", "1178 million A2 s". */
struct SayArg say_energy(struct Arena *arena, double a2s);
/** The same without the unit, where it stands in the sentence already. */
struct SayArg say_energy_bare(struct Arena *arena, double a2s);

/* ---- fault_energy.c ---- */
/** The currents of one kind of fault along a run, A: the most, at the near end, and the least, at the far end; 0 not
 * known. A residual part does not see a short circuit. */
struct FaultRange {
    double near_a, far_a;
    bool short_circuit;
};
/** Energy that the device lets through, A2 s, the worst over the range, and where it is from. */
struct Energy {
    double a2s;
    enum Saying lacks;        /**< a figure that is missing, else SAY_NOTHING */
    struct Settles settles;   /**< what would have given it; nothing: no survey could */
    enum Saying from;         /**< "let-through of energy limiting class 3" ... */
    enum Saying assumes;      /**< what was taken for granted; SAY_NOTHING nothing */
    bool capacity_decides;    /**< more flows than is known to be broken: standing it shows nothing */
    bool late;                /**< the overload part of a breaker opens it, not at once */
    double current_a, time_s; /**< that it is worked from; 0 for one that is printed */
    double factor;            /**< on the square of the current times the time, 0 none: the first loop's */
    double acts_in_s;         /**< in which that current makes the device cut off; 0 for the largest current */
};
struct Energy fault_energy(const struct RunDesign *run, const struct FaultRange *fault);
/** Whether a breaker takes its time over the far end's fault. */
bool fault_opens_late(const struct RunDesign *run, const struct FaultRange *fault);

/* ---- disconnection.c ---- */
/** Current that makes the run's device cut off in `time_s`, A: by its maker's curve where that was surveyed, else by
 * device_trip_current(). */
bool run_trip_current(const struct RunDesign *run, double time_s, double *out_a);
/** Whether the run is a final circuit in the sense of 411.3.2.2. */
bool run_is_final(const struct RunDesign *run);
/** Longest disconnection time of the run, s. */
double run_disconnection_s(const struct RunDesign *run);
void check_disconnection(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                         struct Check *out);

/* ---- withstand.c ---- */
void check_protective_conductor(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                                struct Check *out);
void check_live_conductors(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                           struct Check *out);
void check_breaking_capacity(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                             struct Check *out);

/* ---- electrode.c: BS 7430 ---- */
/** One rod, top at the surface: R = rho / (2 pi L) (ln(8 L / d) - 1), ohm. */
double electrode_rod_ohm(double soil_ohm_m, double length_m, double diameter_m);
/** The group factor of `count` rods in line: lambda = (2 / n) sum (n - k) / k. */
double electrode_line_lambda(int count);
/** a = rho / (2 pi R s): how much rods `spacing_m` apart weigh on each other. */
double electrode_influence(double soil_ohm_m, double rod_ohm, double spacing_m);
/** Spacing of the rods: as surveyed, else one rod's length. */
double electrode_spacing_m(const struct Earthing *earthing);
/** `count` equal rods in line, `spacing_m` apart: R (1 + lambda a) / n with a = rho / (2 pi R s). */
double electrode_rods_ohm(double soil_ohm_m, double length_m, double diameter_m, int count, double spacing_m);
/** The same for a hollow square with `side` rods along each side. */
double electrode_square_ohm(double soil_ohm_m, double rod_ohm, int side, double spacing_m);
/** Soil resistivity from a four-probe reading: 2 pi a R, ohm metre. */
double electrode_soil_ohm_m(double spacing_m, double reading_ohm);
/** Rods like these that bring the estimate to `target_ohm`; 0 when 20 do not. */
int electrode_rods_for(double soil_ohm_m, double length_m, double diameter_m, double spacing_m, double target_ohm);
/** Depth to which one rod, made of whole lengths of `length_m`, comes to `target_ohm`, m; 0 when 30 m do not. */
double electrode_depth_for_m(double soil_ohm_m, double length_m, double diameter_m, double target_ohm);
/** Estimate, reading and what is used for the outbuilding's electrode, without what is said of it. */
struct PlanElectrode electrode_figures(const struct Edition *edition, const struct Survey *survey);
struct PlanElectrode electrode_of(struct Arena *arena, const struct Edition *edition, const struct Survey *survey);

/* ---- earthing.c ---- */
void check_electrode(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out);
void check_residual_position(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                             struct Check *out);
void check_bonding(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out);

/* ---- readings.c ---- */
/** What a meter should show. */
struct Readings readings_of(struct Arena *arena, const struct RunDesign *run, double size_mm2);

/* ---- measured.c ---- */
/** What was measured held against that; `planned` has its readings and checks. Without a list where nothing was. */
struct MeasuredRun measured_of(struct Arena *arena, const struct RunDesign *run, const struct PlanRun *planned);

/* ---- location.c: what the place demands ---- */
void check_residual_protection(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                               struct Check *out);
void check_location_earth(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                          struct Check *out);
void check_location_depth(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                          struct Check *out);
void check_hidden_cable(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out);
/** "30 mA": how much current works a residual device. */
struct SayArg residual_ma(double residual_a);
/** The rule on residual devices for what the run feeds in such a place; NULL none. */
const struct LocationRule *location_residual_rule(const struct Edition *edition, enum Location location,
                                                  const struct Run *run, double rating_a);
bool location_residual_met(const struct LocationRule *rule, const struct Device *device);
/** Whether a TN-C-S supply's earth may be used under that rule; NULL is no rule. */
bool location_takes_earth(const struct LocationRule *rule, const struct Earthing *earthing);
/** Whether the place asks for a depth anywhere. */
bool location_asks_depth(const struct Edition *edition, enum Location location);
/** The rule on depth for a stretch in the ground; NULL none. */
const struct LocationRule *location_depth_rule(const struct Edition *edition, enum Location location,
                                               const struct Segment *segment);

/* ---- owner_rules.c ---- */
void check_surge_protection(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                            struct Check *out);
void check_selectivity(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out);
/** Only of a survey that says itself that it is not complete. */
void check_survey_complete(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                           struct Check *out);
void check_existing_supply(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                           struct Check *out);

/* ---- location_assumed.c ---- */
/** Where no place was given: which kinds of place would ask for more than the plan has; NULL none. */
const struct Say *location_would_change(struct Arena *arena, const struct Survey *survey, const struct Plan *plan);

/* ---- load_rules.c: what the kind of load asks of the device ---- */
/** What a run drops while its motor starts. */
struct Starting {
    double power_factor; /**< as surveyed, or the worse of what is remembered */
    double motor_a;      /**< what starts */
    int times;           /**< that its current flows through a conductor of the figure: of unequal lines out and back */
    double others_percent; /**< what else runs meanwhile */
    double drop_percent;
    double most_percent; /**< at whatever power factor */
};
double starting_power_factor(const struct RunDesign *run, const struct DropFigure *figure);
struct Starting starting_of(const struct RunDesign *run, const struct Trial *trial);
void check_device_for_load(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                           struct Check *out);
void check_charging_earth(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                          struct Check *out);
/** Of a run that generation feeds back through: never more than open. */
void check_generation(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out);
void check_starting(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out);

/* ---- working_loop.c ---- */
/** How a fault at the far end is cut off, in figures. */
struct CutOff {
    double time_s; /**< allowed */
    double zs_ohm;
    double trip_a, limit_ohm; /**< of the overcurrent part; 0 none held */
    double path_ohm;          /**< that the residual current flows through */
    double multiple, acts_s;  /**< of the rated residual current at this fault, and the time of the device there; 0 no
                                 residual part */
};
void work_disconnection(struct Arena *arena, const struct RunDesign *run, const struct Loop *loop,
                        const struct CutOff *cut, struct Check *out);

/* ---- working_fault.c ---- */
/** A part of the protective conductor: a core, the armour, a separate conductor. */
struct Part54 {
    enum Saying name;
    double area_mm2;
    double k;
    const struct TableRef *area_ref; /**< NULL: as surveyed */
    const struct TableRef *k_ref;
};
void work_protective_by_table(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                              const struct Part54 *part, double needed_mm2, struct Check *out);
void work_protective_by_energy(struct Arena *arena, const struct RunDesign *run, const struct Part54 *part,
                               const struct Energy *energy, double needed_mm2, struct Check *out);
void work_live_conductors(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                          const struct Energy *energy, double k, struct Check *out);
void work_breaking_capacity(struct Arena *arena, const struct RunDesign *run, struct Check *out);

/* ---- working_earthing.c ---- */
void work_electrode(struct Arena *arena, const struct RunDesign *run, double residual_a, struct Check *out);
void work_bonding(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out);

/* ---- working_rules.c ---- */
void work_starting(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                   const struct Starting *starting, double multiple, struct Check *out);
/** One line of working for a rule that is met or not: what it looks at, and what was found. */
void work_rule(struct Arena *arena, struct SayArg what, struct SayArg found, struct Check *out);
void work_device_for_load(struct Arena *arena, const struct RunDesign *run, struct Check *out);

#endif
