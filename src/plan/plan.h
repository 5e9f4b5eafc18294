/** The decision: what design_plan() makes and every document reads. Const once made. What it has to
 * say is data (struct Say); src/words makes the sentences. */
#ifndef WEND_PLAN_H
#define WEND_PLAN_H

#include "base/base.h"
#include "base/diag.h"
#include "say.h"
#include "survey/survey.h"

#include <stdint.h>

/** What a rating factor is taken for. */
enum FactorCause {
    FACTOR_AIR,
    FACTOR_GROUND,
    FACTOR_SUN,
    FACTOR_GROUPING,
    FACTOR_INSULATION,
    FACTOR_SOIL,
    FACTOR_DEPTH,
    FACTOR_OVERLOAD_BURIED,
    FACTOR_BS3036,
    FACTOR_HARMONICS,
    FACTOR_CAUSES
};

/** How the circuits of a group lie. */
enum Grouped { GROUPED_BUNCHED, GROUPED_IN_LAYER, GROUPED_APART, GROUPED_IN_GROUND, GROUPED_IN_DUCTS };

/** One rating factor that applies to a segment. */
struct Factor {
    enum FactorCause cause;
    const char *symbol; /**< the standard's: Ca Cg Ci Cc Cf Cd Cs, or Sun */
    double value;
    const struct Say *source;  /**< "BS 7671 Table 52.2"; factor_source_said() says what is derived from it */
    const char *numbers;       /**< what it was calculated from, as in struct Step; "" for a figure of a table */
    const struct Say *because; /**< "200 mm surrounded by insulation": the figures below in words */
    union {                    /**< the figures of its cause; a row is the table's that was read */
        struct {               /**< FACTOR_AIR, FACTOR_GROUND; FACTOR_SUN: the air that 20 K are added to, and no row */
            double ambient_degc, row_degc;
            const char *air_as; /**< segment whose air a hole takes; NULL: its own */
        };
        struct { /**< FACTOR_GROUPING */
            enum Grouped grouped;
            int circuits;               /**< loaded ones, its own among them; of ducts: in its own duct */
            int ducts;                  /**< loaded ones side by side, its own among them; 0 where none is */
            bool unlike;                /**< in size, so that the formula was taken */
            double least_mm2, most_mm2; /**< of those sizes; 0 where not all are known */
        };
        struct {                      /**< FACTOR_INSULATION */
            double insulated_mm;      /**< with what may meet it in the next segments */
            double insulated_here_mm; /**< of it in this segment */
            bool past_table;          /**< the table has no such size: half is taken */
        };
        struct { /**< FACTOR_SOIL; FACTOR_DEPTH has the depth and `no_gain` */
            double soil_k_m_per_w, soil_row_k_m_per_w;
            double depth_m, depth_row_m;
            bool no_gain; /**< the table's figure is above 1 and was not taken */
        };
        struct {                           /**< FACTOR_HARMONICS */
            double third_harmonic_percent; /**< of the line current */
            bool neutral_carries_most;     /**< the cable is sized on it */
        };
    };
};
#define RATING_FACTORS_MOST 10
/** "BS 7671 Table 52.2"; "derived from IEC 60287-1-1, solar term" of FACTOR_SUN. */
const struct Say *factor_source_said(struct Arena *arena, const struct Factor *factor);

/** One line of the working of a figure, as an inspector would write it with a pocket calculator. */
struct Step {
    const struct Say *what;    /**< "loop impedance at the far end, Zs" */
    const struct Say *formula; /**< "Ze + R1 + R2"; for what is looked up or surveyed, where and why; NULL nothing */
    const char *numbers;       /**< "0.35 + 0.141 + 0.141": figures, + - x / ^ ( ) sqrt ln pi and nothing else; "" when
                                  nothing is calculated */
    struct SayArg result;      /**< 0.632 ohm: a figure of say_digits(); words where it is none */
    const struct Say *source;  /**< "IEC 60228 Table 2", "as surveyed"; NULL nothing */
};

/** What one run can carry in one segment. */
struct Rating {
    int segment;                 /**< index into Plan.segments */
    const char *method;          /**< "C", "D", "100" */
    const char *table;           /**< "4D4A" */
    double table_degc;           /**< conductor temperature of that table */
    const struct Say *because;   /**< why this method and table */
    const struct Say *judgement; /**< part of it: what was taken where no table gives this; NULL where one does */
    const struct Say *lacks; /**< why no table gives a figure here; NULL where one does. With it method and table are
                                "", the capacity and its figures 0, and the conductor as hot as it may get */
    double tabulated_a;      /**< It */
    int factor_count;
    const struct Factor *factors;
    double factor;              /**< their product */
    double capacity_a;          /**< tabulated_a * factor */
    double conductor_degc;      /**< at the design current */
    double electrical_length_m; /**< the segment and, at an end, its tail and loop */
    double drop_v;              /**< at the table's temperature */
    double drop_percent;        /**< of the voltage */
    double drop_share;          /**< of the run's own drop, 0..1 */
    double drop_expected_v;     /**< at conductor_degc */
    const struct Say *warning;  /**< where the tables fall short, NULL nowhere */
    /* only in what design_working() gives, 0 and NULL in a plan: a long run has many stretches that nobody asks about
     */
    int step_count;
    const struct Step
        *steps; /**< the working of the capacity, and as the last one that of the conductor's temperature */
    int drop_step_count;
    const struct Step *drop_steps; /**< the working of this segment's part of the drop */
};

enum CheckResult { CHECK_PASS, CHECK_FAIL, CHECK_NOT_DUE };

/** What checks come to together. The worst is the least, so that a verdict nobody gave is no pass. */
enum Verdict {
    VERDICT_FAIL, /**< a check fails */
    VERDICT_OPEN, /**< none fails, but one that matters could not be made from this survey */
    VERDICT_PASS, /**< every check that applies and matters was made and passes */
};
/** "PASS", "OPEN", "FAIL". */
const char *verdict_word(enum Verdict verdict);

/** What would settle a check that could not be made. All of it may be none: then nothing would. */
struct Settles {
    const char *key;     /**< a key of the route file with its path, "device: breaking-capacity"; NULL none */
    const char *value;   /**< that alone would do of it; NULL any */
    const char *or_key;  /**< another that does as well; NULL none */
    enum Saying reading; /**< a reading or an answer, alone or in place of the key; SAY_NOTHING none */
};
/** By a key, by a reading. */
struct Settles settles_key(const char *key);
struct Settles settles_reading(enum Saying reading);
bool settles_something(const struct Settles *settles);
/** NULL for nothing. */
const struct Say *settles_said(struct Arena *arena, const struct Settles *settles);

/** A place in a standard. Each text is a number or a name of that standard, of no language, and NULL where there is
 * none; cite_said() puts the words between them. */
struct Cite {
    const char *standard; /**< "BS 7671" */
    const char *appendix; /**< "4" */
    const char *annex;    /**< "E" */
    const char *clause;   /**< "433.1.1", "523.6, 524.2", of an appendix "6.4" */
    const char *table;    /**< "41.5" */
    bool note;            /**< the note to that clause */
};
/** struct Cite cite = {BS_7671, .clause = "433.1.1"}; */
#define BS_7671 .standard = "BS 7671"
/** "BS 7671 411.4.204, Table 41.5", "BS 7671 Appendix 4, 6.4"; NULL for none. */
const struct Say *cite_said(struct Arena *arena, const struct Cite *cite);

struct Check {
    const char *id;      /**< "capacity", "drop", "bend:gable": kind and segment in one word, for machines */
    const char *kind;    /**< "bend": static text */
    enum Saying title;   /**< what it is called on paper */
    const char *segment; /**< that it is made for, by name; NULL: for the run */
    enum CheckResult result;
    double value, limit;
    bool at_least;    /**< true: value must reach the limit; false: must not exceed it */
    enum Unit unit;   /**< UNIT_NONE when a rule decides and nothing is compared: value and limit say nothing then */
    struct Cite cite; /**< check_source_said() says all that is known of it */
    enum Trust trust; /**< that the rule says what it is taken to say, and of the rows of tables that decided */
    enum Saying
        rule; /**< of several in one clause the one meant, with its source in it; SAY_NOTHING: the clause alone */
    const struct Say *text;
    const struct Say *assumes; /**< what passing takes for granted; NULL nothing */
    bool unknown; /**< CHECK_NOT_DUE only because something was not surveyed; the plan lists it as not checked */
    struct Settles settles; /**< of an unknown one */
    bool open;              /**< unknown, and it matters: nobody may say that the plan passes */
    int step_count;
    const struct Step *steps; /**< the working; made by the same code that decided */
};

/** A check among the nearest to their limits, and what would bring it there: the run made longer, or its load larger,
 * and the check itself made again. */
struct Nearest {
    int check;              /**< index into the run's checks */
    double used;            /**< of what is allowed: 1 at the limit; over 1 it fails, as it may by a rule under that */
    double margin;          /**< to the limit, in the check's unit; under 0 past it */
    bool by_length;         /**< more cable stops it passing, or less makes it pass */
    double more_m;          /**< of cable that it passes with, rounded down; under 0: that much less and it passes */
    bool by_load;           /**< the same of the load, all of it larger in proportion and the device as it is */
    double more_a;          /**< in the heaviest line */
    const struct Say *text; /**< "Voltage drop 2.9 %, at most 3 %: fails with more than 0.6 m more cable" */
};
enum { NEAREST_MOST = 3 };

/** How much more a run allows before a check that passes now no longer does. Checks that this survey leaves open are
 * not looked at. */
struct Headroom {
    bool known;  /**< false: all still pass at four times as much again, or one fails already */
    int check;   /**< that fails first, index into the run's checks */
    double more; /**< metres of cable, amperes in the heaviest line; rounded down */
};

/** "BS 7671 433.1.1 (Ib not over In)", "BS 7671 551, 712 (from memory)". */
const struct Say *check_source_said(struct Arena *arena, const struct Check *check);
/** A source and how sure it is; what rests on common practice has none to name. */
const struct Say *source_said(struct Arena *arena, const struct Say *source, enum Trust trust);
/** Of what rests on both. */
enum Trust trust_of_both(enum Trust a, enum Trust b);

/** Checks by what they are of, the first that was made first. */
struct CheckRef {
    const char *kind;    /**< as Check.kind; "no-figure": none was made, for a table lacks the size */
    enum Saying title;   /**< as Check.title */
    const char *segment; /**< as Check.segment; NULL also: of any */
};
struct CheckList {
    const struct CheckRef *list;
    int count;
};
/** "drop bend:gable"; "" for none. */
const char *check_list_ids(struct Arena *arena, const struct CheckList *list);
/** "Voltage drop", "Bends, gable". */
const struct Say *check_ref_said(struct Arena *arena, const struct CheckRef *ref);

/** One size that was tried. */
struct Option {
    double size_mm2;
    enum Verdict verdict;
    bool pass; /**< may be taken: no check fails it, and it leaves open nothing that another size answers */
    bool chosen;
    double capacity_a;     /**< in its own governing segment; 0 when a table lacks a figure for it */
    const char *governing; /**< segment name */
    double drop_percent;
    struct CheckList fails;       /**< that failed it */
    struct CheckList open;        /**< that matter and could not be made */
    const struct Say *why;        /**< of the first that failed it, else of the first open; NULL when none */
    double zs_ohm;                /**< earth fault loop at the far end; 0 when not known */
    double protective_needed_mm2; /**< by the check of the protective conductor; 0 when not known */
    const char *gland;            /**< usual gland, "" when not held */
    double weight_kg_per_km;      /**< 0 when not held */
};

/** The sizes as they would stand with another protective conductor; of a run whose size was given also with its own,
 * which then shows the sizes that were not asked for. */
struct Alternative {
    enum Cpc cpc;
    int lines; /**< 1 or 3: a core that is set free may turn a single-phase run into one on three lines */
    int option_count;
    const struct Option *options; /**< rising */
    enum Verdict verdict;         /**< of the size that would be chosen */
    bool pass;                    /**< no check fails it */
    double size_mm2;              /**< that would be chosen */
};

/** One line's current on a run: index 0 is L1. */
struct LineCurrents {
    int lines; /**< 1 or 3 */
    double line_a[3];
};

/** What a meter should show once the run is built. Values of 0 are not known. */
struct Readings {
    bool made;
    double r1r2_20_ohm, r2_20_ohm, r1_20_ohm; /**< cold, end to end */
    double reactance_ohm;                     /**< of the run, where it counts */
    double r1_per_k, r2_per_k;                /**< rise of R1 and R2 per kelvin, of their values at 20 degC */
    double touch_v;                           /**< that a residual device must not leave standing */
    double cold_part;                         /**< of a loop's limit, for one measured cold */
    double zs_20_ohm;                         /**< Ze and the cold run */
    double zs_hot_ohm;                        /**< as compared with the limit */
    double ze_ohm;
    double fault_origin_a;        /**< largest */
    double fault_far_a;           /**< least, hot */
    double insulation_least_mohm; /**< megohm; BS 7671 Table 64 */
    double insulation_test_v;
    double residual_a;                                  /**< 0: none */
    double residual_longest_s, residual_shortest_s;     /**< at its rated residual current */
    double residual_longest_5_s, residual_shortest_5_s; /**< at five times that */
    double board_residual_a;                            /**< of the outbuilding's own device; 0: none serves this run */
    double board_residual_longest_s, board_residual_longest_5_s;
    const struct Say *note; /**< why a meter may show other than this, NULL nothing */
};

/** The same with the cable at another temperature; 0 where it is not known. */
struct ReadingsAt {
    double r1_ohm, r2_ohm, r1r2_ohm, zs_ohm;
};
struct ReadingsAt readings_at(const struct Readings *readings, double degc);

struct PlanRun;
/** What the loop at the far end is held against. */
struct LoopLimit {
    bool known;
    bool residual;   /**< by the residual part alone: there is no other figure for a cold reading */
    double ohm;      /**< as a fault finds it; cut, never rounded up */
    double cold_ohm; /**< of a cold reading; the same by the residual part */
};
struct LoopLimit readings_loop_limit(const struct PlanRun *run);
/** The ohms at which that residual current leaves `touch_v`, cut so that no reading over the limit passes. */
double readings_touch_ohm(const struct Readings *readings, double residual_a);

/** What is read, in the order of a schedule of test results (from memory). */
enum Reading {
    READING_ZE,
    READING_FAULT,
    READING_R1R2,
    READING_R2,
    READING_INSULATION,
    READING_POLARITY,
    READING_ZS,
    READING_TRIP,
    READING_TRIP_5,
    READINGS
};

/** What is to be thought of a reading, what is worst first. */
enum Fit {
    FIT_FAR_OFF, /**< no cause that is known here fits it: something else is wrong */
    FIT_BEYOND,  /**< past its limit */
    FIT_DIFFERS, /**< no limit is passed, but it is not what was planned */
    FIT_OPEN,    /**< it passes within the meter's error only, or there is nothing to hold it against */
    FIT_MISSING, /**< due, and not taken */
    FIT_FITS
};

/** What may make a reading other than expected: a bit each. */
enum Cause {
    CAUSE_LENGTH,   /**< the cable is longer or shorter than planned */
    CAUSE_SIZE,     /**< its conductors are of another size */
    CAUSE_PARALLEL, /**< another path beside the one that is meant */
    CAUSE_JOINT,    /**< a loose joint or gland: ohms that come on top */
    CAUSE_SWAPPED,  /**< cores are swapped, or another pair was measured */
    CAUSE_SUPPLY,   /**< the loop before the run is other than planned */
    CAUSES
};

/** One reading held against the plan. Figures of 0 are not known, but for `value`. */
struct Measured {
    enum Reading what;
    bool given;
    enum Fit fit;
    double value;
    double error;    /**< how far the meter may be out, on the side that counts */
    double expected; /**< at the cable's temperature where that bears on it */
    double limit;
    bool at_least;   /**< the reading must reach the limit */
    enum Unit unit;  /**< UNIT_NONE of polarity */
    unsigned causes; /**< those that fit its size and sign */
    const struct Say *cause_list[CAUSES];
    int cause_count;
    const struct Say *text; /**< what is wrong with it, or what it lacks; NULL where it fits */
};
/** The readings of a run. */
struct MeasuredRun {
    enum Verdict verdict; /**< PASS: all that are due were taken and fit */
    double degc;          /**< of the cable, and whether it was given */
    bool degc_given, meter_given;
    int count;
    const struct Measured *list;
};
struct Plan;
/** What the readings of all power runs come to; OPEN without any. Alone, and no better than the plan's own. */
enum Verdict readings_verdict_alone(const struct Plan *plan);
enum Verdict readings_verdict(const struct Plan *plan);
/** True when what was read leaves the run as it was planned. */
bool fit_is_good(enum Fit fit);

/** The cable of a run as a thing to carry and to bend. A figure of 0 is not held. */
struct PlanCable {
    double overall_mm, under_armour_mm;
    double weight_kg_per_m;
    double bend_radius_mm;  /**< least, to the inside of the bend */
    double order_weight_kg; /**< of the length to order, without its drum */
    bool heavy;             /**< more than one person should lift at once: over 25 kg */
    enum Saying source;     /**< of the diameter; SAY_NOTHING when none is known */
    const struct Say *text; /**< what is held */
};

/** The bends of one stretch of a run. */
struct PlanBend {
    int segment; /**< index into Plan.segments */
    int count;
    double total_deg;
    double tightest_mm; /**< inside radius of the tightest as surveyed, 0 when none was */
    double least_mm;    /**< that the cable needs, 0 not known */
    enum CheckResult result;
    bool unknown;
    const struct Say *text; /**< of the check */
};

/** One pull: ducts, conduits and what else is drawn, as they follow each other without a break or a draw pit. */
struct PlanPull {
    int first, count; /**< stretches: indexes into the run's `along` */
    double length_m;
    double bends_deg;      /**< all bends between the two pulling points */
    double bends_most_deg; /**< by the rule of thumb for what it is drawn through */
    const struct Say *bends_text;
    bool worked;           /**< false: `text` says why there are no forces; then the following are 0 */
    bool from_far, either; /**< the drum stands at the far end; it may stand at either */
    bool lubricant;
    double friction;
    double tension_n, limit_n, other_end_n;          /**< at the rope; what the cable stands; from the other end */
    double sidewall_n_per_m, sidewall_limit_n_per_m; /**< in the tightest surveyed bend; 0 none */
    enum CheckResult result;
    double pit_at_m, pit_tension_n; /**< where one draw pit would do, from the start of the pull; 0: none needed or not
                                       enough */
    const struct Say *because;      /**< which end the drum goes to and why; NULL when not worked */
    const struct Say *text;         /**< of the check */
};

/** An end of a run: whether the cable can turn into what it ends in. */
struct PlanEnd {
    double needs_mm;        /**< room in front of the entry for a right angle at the least radius; 0 not known */
    double room_mm;         /**< as surveyed, 0 when not */
    bool tight;             /**< surveyed, and too little */
    const struct Say *text; /**< what to do; NULL when there is nothing to say */
};

/** Where a run goes into the ground, comes out of it or changes its depth. */
struct PlanLeg {
    int segment; /**< in the ground, that its cable counts with: index into Plan.segments */
    int other;   /**< on its other side; -1: an end of the run */
    double length_m;
    bool down;     /**< in the direction of the run */
    bool included; /**< in the surveyed lengths, as the survey says: nothing was added */
};

struct PlanRun {
    const struct Run *settled; /**< as surveyed, its device settled where the survey left that open */
    bool rated;                /**< true for power runs; earth and data runs carry lengths only */
    double size_mm2;           /**< chosen or given; for other runs as surveyed, 0 when not given */
    bool size_was_given;
    struct LineCurrents currents;
    double design_current_a; /**< Ib */
    double power_factor;     /**< of the line that designs; 0 when not known */
    double rated_for_degc;   /**< conductor temperature that insulation and terminals allow; 0 when not rated */
    enum DeviceKind device;
    bool has_curve;
    enum Curve curve;
    double rating_a;                  /**< In */
    const struct Say *device_because; /**< why the device is more than the plain one, NULL when it is not */
    const struct Say *device_text;    /**< "RCBO B 32 A 30 mA"; NULL in a run that is not rated */
    /* as it is asked for at a counter; NULL in a run that is not rated */
    const struct Say *device_full; /**< "RCBO B 32 A 30 mA, type A, 1-pole and neutral, breaking capacity: ask" */
    const char *device_code;       /**< "RCBO-B-32-A-30-mA-A-1pn-open": names the device alone */
    const struct Say *device_note; /**< its marks, what stands in for it, what the survey does not say */
    double route_length_m, electrical_length_m;
    int order_length_m;
    double legs_m; /**< of the electrical length: what the legs add */
    int leg_count;
    const struct PlanLeg *legs; /**< in the order of the run */
    int rating_count;
    const struct Rating *ratings;        /**< in the order the run follows the segments */
    int gaps;                            /**< stretches that no table gives a figure for */
    int governing;                       /**< index into ratings; of those that have a figure */
    const struct Say *governing_because; /**< NULL in a run that is not rated */
    double capacity_a;                   /**< ratings[governing].capacity_a */
    double voltage_v;                    /**< that the percentage is of: U0, or sqrt 3 U0 on three phases */
    double drop_v, drop_percent, drop_at_load_temperature_percent;
    const char *drop_table; /**< "4E4B" */
    double drop_limit_percent;
    int check_count;
    const struct Check *checks;
    int nearest_count;
    struct Nearest nearest[NEAREST_MOST];  /**< those that fail first, then the nearest to its limit; of a kind one */
    struct Headroom more_cable, more_load; /**< the load larger in proportion, the device as it is */
    enum Verdict verdict;
    bool pass; /**< no check fails */
    int option_count;
    const struct Option *options; /**< every size tried, rising */
    int alternative_count;
    const struct Alternative *alternatives; /**< other protective conductors that the cable allows */
    const struct Say *why_not_smaller;      /**< NULL when the smallest was taken */
    struct Readings readings;
    struct MeasuredRun measured; /**< without a list where nothing was measured on any run */
    struct PlanCable cable_facts;
    int bend_count;
    const struct PlanBend *bends; /**< one a stretch that has bends */
    int pull_count;
    const struct PlanPull *pulls; /**< in the order of the run */
    struct PlanEnd start_end, finish_end;
};

/** The outbuilding's own electrode. */
struct PlanElectrode {
    bool due;            /**< the far end is an island */
    double estimate_ohm; /**< by BS 7430 from the soil; 0 when the rods are not known */
    double measured_ohm; /**< 0 when not measured yet */
    double used_ohm;     /**< measured where it is, else the estimate */
    double one_rod_ohm;
    double target_ohm;             /**< to come to, as surveyed or 200 */
    int rods_for_target;           /**< rods like these that bring the estimate there; 0: more than 20 */
    double depth_for_target_m;     /**< to which one rod, lengthened by its own length, comes there; 0: over 30 m */
    int rods_for_steady;           /**< rods like these that bring the estimate to 200 ohm; 0: more than 20 */
    double earthing_conductor_mm2; /**< least, buried, sheathed and not mechanically protected; Table 54.1 */
    const struct Say *text;        /**< NULL where none is needed */
};

/** A stretch of the way, with its place along it. */
struct PlanSegment {
    const struct Segment *surveyed;
    double from_m, to_m;               /**< distance along the way from the supply end */
    double height_from_m, height_to_m; /**< above the start of the way, from the rises added up */
    double depth_m;                    /**< cover in the ground as used, 0 for ways in air */
    int run_count;                     /**< runs that follow it */
    double separation_mm;              /**< clear distance required between power and data here, 0 none */
    const struct Say *separation;      /**< what it asks for, with its source; NULL none */
    const struct Say *drawing_in;      /**< in which order the runs are drawn in; NULL where no two are */
    bool unlike_sizes;                 /**< power runs share it whose sizes no grouping table is for */
};

/** Something that was taken for granted. */
struct Assumption {
    const char *where; /**< key path, "conditions.air" */
    const struct Say *text;
    int assumed;     /**< index into Survey.assumed; -1: the design's own, of which the air in lofts
                         alone has another value */
    bool surveyable; /**< a look, a measurement or a question on site would settle it; else it is a choice of who
                        designs, or a rule */
    const struct Say *other; /**< another plausible value: "35 degC", "brick"; NULL: none is held */
};

/** A value beside the route file, of a run, a segment or, with neither, of the file. */
struct Setting {
    int run, segment;  /**< -1 none */
    const char *below; /**< the key within it, "start.place" */
    const char *value; /**< as it is typed, "outdoors" */
    const char *key;   /**< all of it, "runs.feeder.start.place"; NULL: its name does not let it be typed */
};
struct Settings {
    int count;
    struct Setting *list;
};

struct Caution {
    const char *where;  /**< the first place: segment name, run name, or "" for the whole job */
    const char *source; /**< "" where it rests on common practice alone */
    enum Trust trust;
    const struct Say *text;
    int stretch_count;               /**< stretches that it is for; 0 when it is for a run or the whole job */
    const int *stretches;            /**< indexes into Plan.segments, rising */
    const struct Say *shortly;       /**< in few words, for the brief; NULL: `text` is short enough */
    const struct Say *flag;          /**< in fewest, for the drawing; NULL: `shortly` is short enough */
    bool every_job;                  /**< true of every job: it stands on the card, not on the brief */
    bool drawn;                      /**< on the drawing */
    bool at_stopped_armour, at_rods; /**< said at that place, where the job has one, not with its others */
    bool asks_before;                /**< somebody else must answer before the day */
};
/** A line of the card: what is true of every job, whatever this one calls for. */
struct CardLine {
    enum Saying heading; /**< lines under one heading stand together */
    const struct Say *text;
};
/** True when a caution is for a stretch. */
bool plan_caution_at(const struct Caution *caution, int segment);
/** What a check is called on paper: "Bend radius, gable". */
const struct Say *check_title_said(struct Arena *arena, const struct Check *check);
/** Why the verdict, each check by its title. */
const struct Say *plan_verdict_said(const struct Plan *plan);
/** What it says in few words. */
const struct Say *plan_caution_shortly(const struct Caution *caution);

/** A check that the survey leaves without what it needs. */
struct NotChecked {
    const char *id, *run;
    const struct Say *text;  /**< the run and what the check says */
    const struct Say *title; /**< what it is called on paper */
};

/** What reading the survey and planning it warned of: a part of the plan, on its papers too. */
struct PlanWarning {
    enum DiagCode code;
    const char *const *words; /**< of its message, as diag_sentence() takes them */
    const char *where;        /**< segment or run, "" when it is neither */
    int segment;              /**< index into Plan.segments, -1 when it is none */
    int run;                  /**< index into Plan.runs, -1 when it is none */
};

/** A check that matters and could not be made: the plan is not shown to pass without it. */
struct OpenQuestion {
    const char *id, *run;
    struct Settles settles;
    const struct Say *text;  /**< "breaking-capacity of feeder could not be checked: give device: breaking-capacity" */
    const struct Say *title; /**< what it is called on paper */
};

/** How much of a plan is made. Sizes, devices, checks, verdict and warnings are the same in each. */
enum PlanExtent {
    PLAN_WHOLE,
    PLAN_FOR_PARTS,   /**< without what only documents read: sentences and workings of the design, factors one by one,
                         assumptions, cautions, the nearest checks */
    PLAN_FOR_VERDICT, /**< also without what only the parts list asks: bends, pulls, other protective conductors */
};

struct Plan {
    enum PlanExtent extent;
    const char *route; /**< the file's name without folder and ending */
    const struct Survey *survey;
    enum Verdict verdict;
    bool pass;                        /**< no check fails */
    const struct Say *verdict_titled; /**< `verdict_text` with checks by title: plan_verdict_said(); NULL: the same */
    const struct Say *verdict_text; /**< "every check that applies was made and passes", "capacity fails on feeder", or
                               what could not be checked */
    int segment_count;
    const struct PlanSegment *segments;
    int run_count;
    const struct PlanRun *runs;
    int assumption_count;
    const struct Assumption *assumptions;
    int caution_count;
    const struct Caution *cautions;
    int card_count;
    const struct CardLine *card;
    int not_checked_count;
    const struct NotChecked *not_checked; /**< the open ones and those that do not matter to the verdict */
    int warning_count;
    const struct PlanWarning *warnings;
    int open_count;
    const struct OpenQuestion *open; /**< also in a plan that fails */
    struct PlanElectrode electrode;
    const struct Edition *edition; /**< of the wiring rules, that it was made by */
    const char *rules_edition;     /**< its name, "BS 7671:2018+A2:2022" */
    const struct Say *rules_text;  /**< that, and which later ones are not in it */
    uint64_t labour_digest;        /**< of the user's labour figures that papers go by; 0: there are none */
};

/** First fault found in a finished plan's numbers (sums, ranges, not finite), or NULL. Called by tests and debug
 * builds. */
const char *plan_check(const struct Plan *plan);

#endif
