/** What the files of the design stage know of each other. Calculations here are pure: arguments in, result out. */
#ifndef WEND_DESIGN_PRIVATE_H
#define WEND_DESIGN_PRIVATE_H

#include "base/base.h"
#include "base/diag.h"
#include "plan/plan.h"
#include "plan/say.h"
#include "survey/survey.h"
#include "tables/cable_kinds.h"
#include "tables/tables.h"

#include <stdint.h>

/** What is known of the conductors of the power runs that share a segment; a run of -1 and sizes of 0: nothing. */
struct Sharers {
    double least_mm2, next_least_mm2, most_mm2, next_most_mm2;
    int least_run, most_run; /**< indexes into Survey.runs */
    bool unlike;             /**< they are further apart than the grouping tables are for, or once were */
};
/** Sizes from the least to the most; 0: none is known. */
struct Span {
    double least_mm2, most_mm2;
};

/** What a design in the making holds. */
struct Design {
    const struct Edition *edition;
    enum PlanExtent extent;
    struct Arena *arena;
    struct Diag *diag;
    const struct Survey *survey;
    int *loaded_runs;             /**< for each segment of the survey: power runs that follow it */
    double *coolest_degc;         /**< for each segment: the lowest insulation temperature of those runs */
    int *coolest_run;             /**< and the run that has it */
    bool *idle_holes;             /**< for each segment: a hole whose own air and neighbours have no effect */
    struct Sharers *sharers;      /**< for each segment: the sizes of those runs, as far as they are known */
    uint64_t *followers;          /**< for each segment: the runs that follow it, a bit each */
    const struct Survey *decided; /**< the survey with the sizes that are decided so far given; NULL: none is */
    struct Run *decided_runs;     /**< its runs */
    struct RunDesign *works;      /**< one a run of the survey; of a power run filled once its size is chosen */
};

/** `value` within `limit`, with room for the last digit of a double. */
bool within(double value, double limit);

/* ---- load.c ---- */
/** Current of one load in each line that it uses, ampere. `u0_v` is line to neutral, V; a three-phase load is taken as
 * balanced: I = P / (3 U0 cos phi). */
double load_current_a(const struct Load *load, double u0_v);
/** What all runs for generation may give to one line, ampere: no survey says which lines they are on, so all are taken
 * to be on the same; 0 without any. */
double load_generated_a(const struct Survey *survey);
/** What a run's lines carry, and with which power factor. */
struct Demand {
    struct LineCurrents currents;
    int heaviest;        /**< line index; the first of equals */
    double design_a;     /**< Ib: current of the heaviest line */
    double power_factor; /**< of the heaviest line; 0 when any load on it does not say */
};
/** Adds a run's loads up in file order; a single-phase load on three lines goes to the least loaded one. */
struct Demand load_demand(const struct Run *run, int phases, double u0_v);
enum { LOAD_ON_EVERY_LINE = -1 };
/** A load as it stands on the lines of its run. */
struct LineLoad {
    double current_a;    /**< in each line that it uses */
    double power_factor; /**< 0 when it does not say */
    int line;            /**< that load_demand() puts it on, or LOAD_ON_EVERY_LINE */
};
void load_on_lines(const struct Run *run, int phases, double u0_v, struct LineLoad *out);

/* ---- device.c ---- */
/** Smallest standard rating of `kind` not below `current_a`; false when there is none. */
bool device_smallest(enum DeviceKind kind, double current_a, double *out_a);
/** Starting current of a motor, A: as surveyed, or its multiple of the design current; 0 not known. */
double run_start_a(const struct Run *run, const struct Demand *demand);
/** The run with its device settled: where none was chosen, a residual part where one is required; where no curve was,
 * the first that lets the motor start. `because` says why, NULL where nothing was added. NULL without memory. */
const struct Run *device_settle(const struct Design *design, const struct Run *run, const struct Say **because);
/** "RCBO B 32 A 30 mA"; a residual current of 0 is left out. */
const struct Say *device_said(struct Arena *arena, const struct Device *device, double rating_a, double residual_a);
/** Decides In; false (reported) when no standard rating carries the load. */
bool device_rating(const struct Design *design, const struct Run *run, double design_a, double *out_a);

/** Warns where the run's residual device and the outbuilding board's do not discriminate. */
void warn_of_residual_series(const struct Design *design, const struct Run *run);
/** Warns of each separate earth conductor that goes to an outbuilding with its own electrode. */
void warn_of_island_earth(const struct Design *design);
/** The legs of a run: what they add to its cable, and each of them. */
void describe_legs(const struct Design *design, const struct Run *run, struct PlanRun *out);
/** Asks about a surveyed rise that may be a leg once more. False: out of memory. */
bool warn_of_legs(const struct Design *design);

/* ---- neighbours.c, reference_method.c ---- */
/** A figure that no table gives: what is said of the survey, with what to do, and what is said of a size. */
struct Lack {
    enum DiagPhrase message, advice;
    enum Saying said;
};

/** What the factors of a place come to. */
struct FactorSums {
    double product;           /**< of all */
    double ambient;           /**< Ca x Sun x Cg: what stands as a warmer surrounding */
    double own;               /**< Ci x Cs x Cd: what keeps the cable's own heat in */
    const struct Lack *lacks; /**< set when a table has no figure: which; then the rest is not to be used */
};
/** How one segment's surroundings bear on one run, whatever the size. */
struct Situation {
    const struct Edition *edition;
    bool covered; /**< false: no table covers it, and `lacks` says what */
    const struct Lack *lacks;
    enum Method method;
    enum CapacityTable table;
    enum Saying because;    /**< why this method */
    enum Saying judgement;  /**< what was taken because no table gives it; SAY_NOTHING: a table gives it */
    double conductor_degc;  /**< that it is rated for */
    const char *cooler_run; /**< the run whose insulation holds that down; NULL: none does */
    bool in_ground, in_duct;
    double ambient_degc;
    bool full_sun;
    const char *air_as;       /**< the stretch whose air a hole takes; NULL: its own */
    double insulated_mm;      /**< length surrounded, 0 none */
    double insulated_here_mm; /**< of it in this stretch */
    double depth_m, soil_k_m_per_w;
    int beside;                   /**< loaded circuits that are no runs of this file */
    bool beside_unlike;           /**< surveyed as unlike in size */
    enum Arrangement arrangement; /**< of those */
    int other_runs;               /**< power runs of this file that share the segment */
    enum Lie own_lie;             /**< of the runs of this file to each other */
    struct Span others;           /**< sizes of those other runs, as far as they are known */
    bool own_unlike;              /**< the runs of this file are unlike in size, whatever this one's size */
    double gap_m;                 /**< 0 when not given */
    enum Way way;
    bool two_sums; /**< of the size only insulation asks: whether its table, which ends at 10 mm2, speaks of it */
    struct FactorSums thin, thick; /**< ... and these are theirs */
};
/** What of a stretch depends on the stretches that it lies between. */
struct Extent {
    double surrounded_m; /**< insulation round the cable that may be without a break, over as many stretches as it goes
                            on; 0 none */
    double insulated_m;  /**< of it in this stretch */
    double wall_m;       /**< thickness of the wall that a hole goes through */
    double pipe_m;       /**< length of conduit, trunking and holes without a break */
    double warmest_degc; /**< air of a hole that does not say: the warmer of its neighbours' and the route's own */
    const char *air_as;  /**< the neighbour that has it; NULL: the route's own */
    int other_runs;      /**< power runs of this file that share the stretch */
};
/** Fills one Extent a stretch of the run. */
void place_extents(const struct Survey *survey, const struct Run *run, const int *loaded_runs, struct Extent *out);
/** Rates the run's conductors at `conductor_degc`. Holes through a wall are met by place_wall() besides. */
struct Situation place_segment(const struct Edition *edition, const struct Segment *segment,
                               const struct CableKind *kind, double conductor_degc, const struct Extent *extent);
/** What a hole through a wall adds to its neighbours: insulation, or a wall of 0.35 m and over. False: nothing. */
bool place_wall(const struct Edition *edition, const struct Segment *segment, const struct CableKind *kind,
                double conductor_degc, const struct Extent *extent, struct Situation *out);

/* ---- grouping.c ---- */
/** The grouping factor of a conductor of `size_mm2` in a situation; symbol is NULL when the cable stands alone.
 * `diameter_mm` 0 when not known. Texts are made only with an arena. False: the table has no such number of circuits.
 */
bool grouping_factor(struct Arena *arena, const struct Situation *situation, double size_mm2, double diameter_mm,
                     struct Factor *out);

/* ---- likeness.c ---- */
/** Fills design->sharers, deciding sizes as often as that takes. False: no memory. */
bool likeness_settle(struct Design *design);
/** The same from the sizes of a plan. */
void likeness_as_planned(struct Design *design, const struct Plan *plan);
/** Sizes of the other power runs that share a segment with `run`. */
struct Span likeness_of_others(const struct Design *design, const struct Run *run, int segment);

/* ---- factors.c ---- */
/** What of a run bears on its factors. */
struct RunTerms {
    double conductor_degc; /**< that the rating is for */
    bool semi_enclosed;    /**< protected by a BS 3036 fuse */
    enum CableType type;
    int cores;
    double diameter_mm;            /**< as surveyed, 0 when not */
    double third_harmonic_percent; /**< of the line current, 0 when not surveyed */
};
/** Every factor that applies to a conductor of `size_mm2` there, into `list`, of which `*out_count` are filled; NULL:
 * what they come to alone. With `arena` NULL no texts are made and `because`, `source` are NULL. */
struct FactorSums segment_factors(struct Arena *arena, const struct Situation *situation, const struct RunTerms *terms,
                                  double size_mm2, struct Factor list[RATING_FACTORS_MOST], int *out_count);
/** Fills what the factors come to of a place without other runs and a measured gap, once for all sizes. */
void factors_by_size(const struct RunTerms *terms, struct Situation *situation);
/** What the factors come to there for a size. */
struct FactorSums factor_sums(const struct Situation *situation, const struct RunTerms *terms, double size_mm2);
/** "BS 7671 Table 4B1", and whether it was only remembered; NULL without an arena. */
const struct Say *table_said(struct Arena *arena, const struct TableRef *ref);
/** The same of a row that is surer, or less sure, than the table at large. */
const struct Say *table_row_said(struct Arena *arena, const struct TableRef *ref, enum Trust trust);
/** The sun's factor, a calculation after IEC 60287-1-1: 20 K added to the air. 0 when nothing is left. */
double sun_factor(double conductor_degc, double air_degc);

/** The surroundings that the capacity tables are printed for, degC. */
double temperature_base_degc(bool in_ground);
/** Conductor temperature at `current_a`, degC: BS 7671 Appendix 4, 6.1, widened to Ci, Cs and Cd as loss of cooling. */
double conductor_temperature(double conductor_degc, bool in_ground, double current_a, double tabulated_a,
                             double ambient, double own);
/** Resistance at `at_degc` as a part of that at `table_degc`, copper: (230 + t) / (230 + table), at most 1. */
double resistance_ratio(double at_degc, double table_degc);

/* ---- drop.c ---- */
/** mV per ampere and metre that counts: r cos + x sin, or r cos where the table has one figure, or z when the power
 * factor is not known (0); BS 7671 Appendix 4, 6.2. */
double drop_effective_mv(const struct DropFigure *figure, double power_factor);
/** Volts over `length_m` at `current_a`: mV x A x m / 1000. */
double drop_volts(double mv_per_a_m, double current_a, double length_m);

/** What loads do to a voltage: its drop is r active + x reactive + z unknown, in mV a metre. Currents count as often as
 * they flow through a conductor of `figure`. */
struct DropTerms {
    enum {
        DROP_OF_PAIR,      /**< line and neutral of a single-phase run */
        DROP_OF_BALANCED,  /**< line to line, three-phase loads alone */
        DROP_TO_NEUTRAL,   /**< of `line`, with what the neutral carries */
        CURRENT_IN_NEUTRAL /**< no drop: amperes, as they stand to the voltage of `line` */
    } of;
    int line;
    bool rise;                /**< it is the rise that is looked at, mV above 0 */
    bool reversed;            /**< worst where the lines turn L1 L3 L2 */
    double voltage_v;         /**< that the drop is a part of */
    struct DropFigure figure; /**< of the pair, line to line, or of one conductor */
    double active_a;          /**< in step with that voltage */
    double reactive_a;        /**< a quarter turn behind it */
    double unknown_a;         /**< of loads that do not say their power factor */
    double mv_per_m;
};
/** The loads of a run, and the supply that they are on. */
struct DropLoads {
    const struct LineLoad *loads;
    int count, phases;
    double u0_v;
};
/** One conductor: half the single-phase figure, or the three-phase one over sqrt 3 where that is larger. */
bool drop_of_conductor(const struct Edition *edition, enum DropTable table, double size_mm2, struct DropFigure *out);
/** The line that drops most while any of the loads are on, the others off, in either order of the lines. False: the
 * table has no such size. */
bool drop_worst(const struct Edition *edition, enum DropTable table, double size_mm2, const struct DropLoads *loads,
                struct DropTerms *out);
/** True when a load adds to the drop of these terms: then it is in them, else it is taken as off. */
bool drop_adds(const struct DropTerms *terms, const struct LineLoad *load);
/** Adds up the loads that add to these terms. */
void drop_add_up(struct DropTerms *terms, const struct DropLoads *loads);
/** The same voltage with every load on. */
struct DropTerms drop_all_on(const struct DropTerms *terms, const struct DropLoads *loads);
/** What the current of a load amounts to in the voltage that `terms` look at: its parts in step and behind, A. */
void drop_share(const struct DropTerms *terms, const struct LineLoad *load, double *out_active_a,
                double *out_reactive_a, double *out_unknown_a);
/** The line that rises most above the supply's voltage while loads on the others are on. False: none does. */
bool drop_rise(const struct Edition *edition, enum DropTable table, double size_mm2, const struct DropLoads *loads,
               struct DropTerms *out);
/** mV a metre at another temperature: `ratio` is on r alone (Appendix 4, 6.1 and 6.2). */
double drop_mv_at(const struct DropTerms *terms, double ratio);

/* ---- neutral.c ---- */
/** The most that the neutral of unequal lines carries while any of the loads are on, in either order of the lines. */
struct Neutral {
    struct DropTerms terms;
    double third_a;    /**< third harmonic of all lines, which adds up there */
    double known_a;    /**< without the loads that do not say their power factor */
    double most_a;     /**< with them, at whatever angle */
    double as_three_a; /**< in each of three conductors: warms a cable like the lines and that neutral */
};
struct Neutral neutral_of(const struct DropLoads *loads, const struct LineCurrents *currents,
                          double third_harmonic_percent);

/* ---- rating.c ---- */
/** A run while sizes are tried on it. */
struct RunDesign {
    const struct Edition *edition;
    bool unsaid; /**< nobody reads its sentences and workings: PlanExtent */
    const struct Run *run;
    int phases;
    const struct CableKind *kind;
    enum DropTable drop_table;
    struct Demand demand;
    struct DropLoads loads;
    struct Neutral neutral; /**< of three lines */
    double rating_a;        /**< In */
    double drop_before_percent;
    double drop_limit_percent;
    double terminals_degc;
    struct RunTerms terms;
    /* faults and earthing */
    double u0_v;
    bool tt, tn_c_s;
    double before_ohm;         /**< loop before the run: Ze; on TT the installation's electrode; 0 not known */
    double fault_current_a;    /**< at the origin as surveyed, 0 not */
    enum Cpc fault_cpc;        /**< what a fault on this run returns through */
    double separate_mm2;       /**< size of the separate protective conductor, 0 none */
    double separate_m;         /**< its own electrical length */
    bool separate_bunched;     /**< it lies along the run somewhere, and so as warm as its cores */
    bool separate_enclosed;    /**< it lies in conduit, trunking or duct all along, holes aside */
    double electrode_here_ohm; /**< TT: RA of the installation; where only the loop was measured that; 0 not known */
    const struct Earthing *earthing;
    double electrode_ohm; /**< of the outbuilding, 0 none or not known */
    double supply_neutral_mm2, earthing_conductor_mm2;
    enum Location location;
    bool location_given;
    enum Surge surge;
    const char *surge_declined_by;
    enum Selectivity selectivity;
    double start_a;                 /**< starting current of a motor, 0 not known */
    double soil_ohm_m;              /**< electrical resistivity, for the electrode */
    bool charging_shares;           /**< more than one load, or diversity, where a charging point must stand alone */
    const struct Survey *survey;    /**< sizes of runs that were decided before this one count as given */
    const struct SizedCable *own;   /**< its cable in the one size that is looked at; NULL: to be looked up */
    const uint64_t *followers;      /**< for each segment of the survey, a bit a run; NULL: to be looked up */
    const struct Segment *segments; /**< of the whole survey */
    int count;                      /**< stretches of the run */
    const struct Situation *situations;   /**< one a stretch */
    const struct Situation *const *walls; /**< what a through-wall stretch adds; NULL: nothing */
    const int *before, *after;            /**< nearest stretch that is no wall, -1 none */
    const double *electrical_m;           /**< one a stretch, tails and loops in */
    double electrical_length_m;
};
/** Where sentences of a run are made: NULL where nobody reads them. */
struct Arena *said_in(struct Arena *arena, const struct RunDesign *run);

/* ---- device_words.c ---- */
/** The device in the words, the code and the remarks of the counter, once In and its short text stand. */
void device_describe(const struct Design *design, const struct RunDesign *work, struct PlanRun *out);

/** What one size comes to. */
struct Trial {
    double size_mm2;
    const struct Lack *lacks; /**< a figure that is missing for this size; then nothing else is set */
    int lacks_at;             /**< stretch */
    int gaps;                 /**< stretches that no table gives a figure for; the rest is of those that have one */
    int gaps_behind;          /**< holes that are too much for it by one neighbour, while another has no figure */
    const struct Lack *gap;   /**< what the first of them lacks */
    int gap_at;
    bool gap_at_end; /**< a terminal is in one of them */
    double capacity_a;
    int governing;
    bool governing_inherits; /**< its figure is its neighbour's */
    double hottest_end_degc; /**< conductor at the warmer end of the run */
    int hottest_end;         /**< stretch */
    struct DropTerms drop;
    double v_per_m; /**< drop of a metre of the run, V */
    struct DropTerms rise;
    double rise_v; /**< of the line that rises most, 0 none */
    double drop_v, drop_percent;
};
/** Sizes that were tried already, rising: what does not depend on the protective conductor. */
struct MechanicsCount;
struct MechanicsDue;
struct RatedSize {
    struct Trial trial;
    const struct MechanicsCount *mechanics;
};
struct RatedSizes {
    const struct RatedSize *sizes;
    int count;
    const struct MechanicsDue *due; /**< as they are for every size; NULL: not looked at */
};
/** Tries a size: numbers only, no texts. */
struct Trial rate_size(const struct RunDesign *run, double size_mm2);
/** What each stretch carries with a size, whatever flows there: for rate_chosen(). NULL without memory. */
struct Choice;
const struct Choice *rate_choices(struct Arena *arena, const struct RunDesign *run, double size_mm2);
/** rate_size() of what was rated before, with another load. */
struct Trial rate_chosen(const struct RunDesign *run, double size_mm2, const struct Choice *choices);
/** What a stretch lacks for the size of a trial; NULL where a table gives it. */
const struct Lack *rate_lack(const struct RunDesign *run, const struct Trial *trial, int stretch);
/** "No table gives ... at yard"; NULL without a gap. */
const struct Say *gaps_said(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial);
/** A check that passes on the stretches that have a figure cannot be made for the others. */
void open_by_gaps(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out);
/** The same size on a run with `more_m` metres more of cable, under 0 less. */
struct Trial rate_longer(const struct RunDesign *run, const struct Trial *trial, double more_m);
/** The full rating of one stretch for the size of a trial, texts and all. */
void rate_stretch(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int stretch,
                  struct Rating *out);
/** The same with the working of its figures. */
void rate_with_working(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int stretch,
                       struct Rating *out);
/** rate_stretch() for every stretch of the run, without factors and texts where it is unsaid; NULL when memory failed.
 */
const struct Rating *rate_fully(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial);

/* ---- checks.c ---- */
enum { CHECKS_MOST = 32 };
/** Makes every check there is on a whole run, without the workings that cost the most; returns how many. Those on
 * single stretches are in mechanics.c. */
int check_all(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
              struct Check out[CHECKS_MOST]);
/** The same for the size that is taken: with every working. */
int check_taken(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                struct Check out[CHECKS_MOST]);
/** The same of a run without a size to choose: none or one. */
int check_unrated(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out);
/** One of them by its id. False: no check has that id. */
bool check_once(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, const char *id,
                struct Check *out);

/* ---- nearest.c ---- */
/** Fills the nearest checks of every run, once all checks are made. False: no memory. */
bool list_nearest(const struct Design *design, struct PlanRun *runs, int count);

/* ---- choose.c ---- */
/** Fills size, options, ratings, checks and drops of `plan_run`. False when a figure is missing (reported) or no
 * memory. What was rated on the way goes to `out_rated`. */
bool choose_size(const struct Design *design, const struct RunDesign *run, struct PlanRun *plan_run,
                 struct RatedSizes *out_rated);
/** The size that choose_size() would take, numbers only. False when a figure is missing or no memory. */
bool choose_size_alone(const struct Design *design, const struct RunDesign *run, double *out_mm2);
/** Tries every size and fills options, verdict and size of `out`. Sizes in `rated` are not rated again: they have to be
 * of a run that differs in nothing but its protective conductor. False when a figure is missing for all, or no memory.
 */
bool choose_alternative(const struct Design *design, const struct RunDesign *run, struct RatedSizes rated,
                        struct Alternative *out);

/* ---- design.c ---- */
/** The part of a power run that no size changes. Where `like` is on as many lines its places are taken: it has to
 * differ in nothing but its protective conductor; NULL none. False when a figure is missing (reported) or no memory. */
bool design_run_terms(const struct Design *design, const struct Run *run, const struct RunDesign *like,
                      struct RunDesign *out);
/** The size that a power run comes to, as design_plan() would choose it. False when a figure is missing or no memory.
 */
bool design_size_alone(const struct Design *design, const struct Run *run, double *out_mm2);

/* ---- alternatives.c ---- */
/** Fills the alternatives of a power run: the other protective conductors that its cable allows. `rated` are the sizes
 * of the run itself, on `phases`. False: no memory. */
bool list_alternatives(const struct Design *design, const struct RunDesign *run, struct RatedSizes rated,
                       struct PlanRun *out);

/* ---- verdict.c ---- */
/** Marks a check as not made because of what was not surveyed. */
void check_unknown(struct Check *out, const struct Say *text);
/** The same, with the key or the reading that would settle it. */
void check_unsettled(struct Check *out, struct Settles settles, const struct Say *text);
/** Whether a check that was made, or could not be, leaves the plan open. */
void verdict_mark(struct Check *check, enum RunKind kind);
enum Verdict verdict_of_checks(const struct Check *checks, int count);
/** Which edition of the rules the plan is made by, and which are not looked at. */
void give_edition(struct Arena *arena, const struct Edition *edition, struct Plan *plan);
/** Fills the plan's verdict, its words and what could not be checked, from the checks of its runs. */
void give_verdict(struct Arena *arena, struct Plan *plan);

/* ---- assumed.c ---- */
/** Names one after the other; of many the last are only counted, unless `all` are wanted. */
struct Names {
    struct Arena *arena;
    bool all;
    const struct Say *said;
    int count;
};
void name_one(struct Names *names, struct SayArg name);
/** An empty part where there is none. */
struct SayArg names_done(const struct Names *names);
/** Whether a survey can say it at all: see struct Assumption. */
bool assumed_surveyable(enum AssumedWhat what);
/** "air taken as 30 degC". */
const struct Say *assumed_said(struct Arena *arena, const struct Survey *survey, const struct Assumed *assumed);

/* ---- otherwise.c ---- */
/** Another plausible value of something assumed; NULL: none is held. */
const struct Say *other_said(struct Arena *arena, const struct Edition *edition, const struct Survey *survey,
                             const struct Assumed *assumed);

/* ---- assumptions.c, cautions_due.c ---- */
bool list_assumptions(const struct Design *design, struct Plan *plan);
bool list_cautions(const struct Design *design, struct Plan *plan);

/** Fills plan->warnings with what was reported so far. */
bool list_warnings(const struct Design *design, struct Plan *plan);

#endif
