/** What was surveyed, in SI units, with nothing of YAML in it.
 *
 * Built by read_survey(), const ever after. Every value that may be left out is a Quantity whose `given` says
 * whether the surveyor wrote it; where the language has a default, `value` holds the default when not given.
 * Texts are clean UTF-8 without control characters; an absent text is "". */
#ifndef WEND_SURVEY_H
#define WEND_SURVEY_H

#include "base/base.h"

#include <stdint.h>

/* clang-format off */
#define LIST(of, type) enum type {
#define KIND(symbol, word, meaning) symbol,
#define END(of) of##_COUNT };
#include "survey_kinds.inc"

/** The fixed sets of words, for survey_word() and the reader. */
enum WordList {
#define LIST(of, type) WORDS_##of,
#include "survey_kinds.inc"
    WORDS_COUNT
};
/* clang-format on */
/** How many words a list has. */
int survey_word_count(enum WordList list);
/** The word for an enum value ("loft-void"), "" out of range. */
const char *survey_word(enum WordList list, int value);
/** What the word means, in plain English. */
const char *survey_meaning(enum WordList list, int value);

enum WayPlace { WAY_IN_AIR, WAY_IN_OPEN, WAY_IN_GROUND };
enum WayRound { ROUND_NOTHING, ROUND_STUDS, ROUND_WALL, ROUND_PIPE, ROUND_TRUNKING, ROUND_DUCT };
enum WayHeld { HELD_CLIPPED, HELD_TRAY, HELD_LADDER, HELD_HIDDEN, HELD_HUNG, HELD_LAID };
enum WayCalls { CALLS_NOTHING, CALLS_FIXINGS, CALLS_LOFT, CALLS_STUDS, CALLS_HOLE, CALLS_SPAN, CALLS_GROUND };
/** What follows from a way alone; its columns are explained in way_kinds.inc. */
struct WayKind {
    enum WayPlace place;
    enum WayRound round;
    enum WayHeld held;
    bool on_timber, of_building;
    enum WayCalls calls;
};
/** The row of a way; that of WAY_WALL when out of range. */
const struct WayKind *survey_way(enum Way way);
/** True for the ways that lie in the ground (duct, buried). */
bool survey_in_ground(enum Way way);
/** True for a hole through a wall. */
bool survey_hole(enum Way way);
/** True for the ways that enclose the cable in air (conduit, trunking). */
bool survey_enclosed(enum Way way);
/** True for a duct in the ground. */
bool survey_duct(enum Way way);
/** True for conduit, trunking and duct, which cables share. */
bool survey_shut_in(enum Way way);
/** True for the armoured cable types. */
bool survey_armoured(enum CableType type);
/** What lies round the cores, under the sheath. */
enum CableCover { COVER_PLAIN, COVER_SCREEN, COVER_ARMOUR };
enum CableCover survey_cable_cover(enum CableType type);
/** The kind of run that takes a type of cable. */
enum RunKind survey_cable_run(enum CableType type);
/** How its cores are coloured. */
enum CoreColours { COLOURED_ARMOURED, COLOURED_ROUND, COLOURED_FLAT };
enum CoreColours survey_cable_colours(enum CableType type);

/** A number as surveyed; the unit is in the member's name. */
struct Quantity {
    double value;
    bool given; /**< false: `value` is the language's default (or 0 where it has none) */
    struct Mark mark;
};

struct Job {
    const char *title, *site, *reference, *customer, *surveyor, *surveyed, *notes;
    enum Location location;
    bool location_given;        /**< false: an ordinary place is assumed */
    const char *laid_by, *laid; /**< who laid the cable, and on which day it was done; "" not said */
};

struct Supply {
    struct Mark mark;
    enum System system;
    int phases;                /**< 1 or 3 */
    struct Quantity voltage_v; /**< U0, line to neutral */
    struct Quantity loop_ohm;  /**< Ze; not given only on TT */
    struct Quantity fault_current_a;
    struct Quantity drop_before_percent;
    struct Quantity electrode_ohm;
    struct Quantity neutral_mm2;            /**< copper size of the supply's neutral, for Table 54.8; default 35 */
    struct Quantity earthing_conductor_mm2; /**< of the installation; default 16 */
    enum Surge surge;                       /**< SURGE_COUNT: nobody decided */
    const char *surge_declined_by;
    enum Selectivity selectivity; /**< SELECTIVITY_COUNT: nobody decided */
};

struct Conditions {
    struct Quantity air_degc, ground_degc, soil_thermal_k_m_per_w, soil_electrical_ohm_m;
    struct Quantity terminals_degc; /**< 70 or 90 */
};

struct Earthing {
    struct Mark mark;
    bool given;
    enum FarEnd far_end;
    bool has_electrode;
    struct Quantity rods, rod_length_m, rod_diameter_mm, rod_spacing_m, measured_ohm;
    struct Quantity conductor_m;          /**< from the nearest rod to the outbuilding's bar; not given: an allowance */
    struct Quantity electrode_target_ohm; /**< that the electrode is to come to; default 200 */
    struct Quantity board_residual_a;
    bool extraneous_parts;
    bool extraneous_parts_given;
    enum Existing existing; /**< supply that the outbuilding already has */
    bool existing_given;
    bool floor_grid, floor_grid_given; /**< a metal grid in the floor, bonded */
};

struct Load {
    struct Mark mark;
    struct Quantity current_a; /**< either this ... */
    struct Quantity power_w;   /**< ... or this; volt-amperes when power_is_apparent */
    bool power_is_apparent;
    struct Quantity power_factor; /**< default 1 for power; not given: the drop takes the table's z */
    int phases;                   /**< 1 or 3 */
    struct Quantity diversity;    /**< ratio 0..1, default 1 */
};

struct Device {
    struct Mark mark;
    bool given; /**< the mapping was there at all */
    enum DeviceKind kind;
    bool kind_given;
    enum Curve curve; /**< MCB and RCBO */
    bool curve_given;
    struct Quantity rating_a;   /**< not given: the smallest standard one */
    struct Quantity residual_a; /**< not given: no residual protection */
    enum ResidualType residual_type;
    bool residual_type_given;
    bool time_delayed;
    bool senses_neutral; /**< an overcurrent release of its own in the neutral */
    bool senses_neutral_given;
    struct Quantity breaking_capacity_a;
    struct Quantity trip_5_s_a;      /**< that makes it cut off in 5 s, by its maker's curve */
    struct Quantity let_through_a2s; /**< I2 t, as the device's maker gives it; not given: class 3 or an estimate */
};

struct Cable {
    struct Mark mark;
    enum CableType type;
    int cores;                /**< in total; 0 for data and earth runs that do not say */
    struct Quantity size_mm2; /**< not given: choose */
    enum Cpc cpc;
    int cpc_run; /**< index of the earth run for CPC_SEPARATE, else -1 */
    struct Quantity diameter_mm;
    struct Quantity insulated_for_v; /**< data: highest voltage that its insulation is made for */
};

struct End {
    struct Mark mark;
    enum Into into;
    enum Place place;
    enum EnclosureKind enclosure; /**< plastic, the safer, when not given */
    bool enclosure_given;
    enum FedFrom from;       /**< what feeds the run; a supply end's only */
    bool from_given;         /**< false: taken as a spare way */
    struct Quantity tails_m; /**< meter tails, from the meter to the first device; a supply end's only */
    struct Quantity tail_m;
    struct Quantity loop_m;
    struct Quantity room_m; /**< clear straight space before the entry; not given: not known */
    enum Entry entry;       /**< face that the cable goes in by; ENTRY_COUNT when not given */
};

/** How a run is drawn in, where it is. */
struct PullRules {
    bool given;
    enum Drum from;           /**< DRUM_COUNT when not given: the better end */
    struct Quantity friction; /**< coefficient; not given: as published */
    bool lubricant, lubricant_given;
};

/** How far a meter may be out, to either side. */
struct MeterError {
    struct Quantity percent; /**< of the reading */
    struct Quantity ohm;     /**< its digits, in ohms, which come on top; readings in ohms only */
    bool leads_nulled;
};

/** What was measured on a run once it was built. */
struct Measurements {
    bool given;
    struct Mark mark;
    const char *by, *date, *meter_name;
    struct Quantity ze_ohm, fault_current_a, r1r2_ohm, r2_ohm, insulation_mohm;
    enum Polarity polarity;
    bool polarity_given;
    struct Quantity zs_ohm, trip_s, trip_5_s; /**< times at once and five times the rated residual current */
    struct Quantity cable_degc;               /**< while R1 + R2, R2 and Zs were read */
    struct MeterError meter;
};

struct Run {
    const char *name;
    struct Mark mark;
    enum RunKind kind;
    const char *serves;
    enum Feeds feeds;
    bool feeds_given;
    enum Use use;
    const char *risk_assessment; /**< sockets: why they have no residual device; "" none */
    int load_count;
    const struct Load *loads;
    struct Device device;
    struct Cable cable;
    struct Quantity drop_limit_percent;
    struct Quantity third_harmonic_percent; /**< of the line current */
    struct Quantity start_current_a;        /**< motors: either this ... */
    struct Quantity start_multiple;         /**< ... or this times the design current */
    struct Quantity start_power_factor;     /**< while starting; not given: 0.3 to 0.4 */
    int along_count;
    const int *along; /**< indexes into Survey.segments, in the order that the run follows them */
    bool along_rises; /**< known to be the order of the file */
    struct End start, finish;
    struct PullRules pull;
    struct Measurements measured;
};

struct Bend {
    struct Mark mark;
    double angle_deg;
    struct Quantity radius_m; /**< not given: the cable's smallest */
};

/** What stands on or beside the way. */
struct Landmark {
    struct Mark mark;
    enum LandmarkKind what;
    struct Quantity at_m;  /**< along the segment, from its start */
    struct Quantity off_m; /**< 0: on the line */
    enum Side side;        /**< SIDE_COUNT when not given */
    bool side_given;
    const char *note; /**< "" none */
};

struct Beside {
    struct Mark mark;
    int circuits;                 /**< OTHER loaded circuits already there */
    enum Arrangement arrangement; /**< default bunched */
    bool arrangement_given;
    struct Quantity gap_m;
    bool unlike; /**< their sizes lie further from the runs' here than the grouping tables are for */
    bool unlike_given;
    struct Quantity diameter_mm; /**< of the thickest of their cables */
};

/** What a segment became when it was built. The segment itself holds what was laid; here is what it was before. */
struct AsLaid {
    bool given;
    struct Quantity length_m, depth_m;
    enum Way way;
    bool way_given;
    struct Quantity metre_start_m, metre_end_m; /**< printed on the cable at the start and the end of the segment */
    const char *found, *photo;                  /**< "" none */
    const char *was_length, *was_depth;         /**< as the survey has it, "24 m"; NULL where that still holds */
    enum Way was_way;                           /**< WAY_COUNT where it is still that */
};

struct Segment {
    const char *name;
    struct Mark mark;
    enum Way way;
    struct Quantity length_m, rise_m;
    struct Quantity heading_deg; /**< clockwise from north */
    int bend_count;
    const struct Bend *bends;
    enum Surface fixed_to; /**< SURFACE_COUNT when not given */
    struct Quantity air_degc, ground_degc,
        soil_thermal_k_m_per_w; /**< `given` only when set on this segment; value always filled */
    enum Shelter shelter;       /**< SHELTER_COUNT when not given: by its way alone, survey_outside() */
    enum Sun sun;
    enum Insulation insulation;
    bool insulation_given;
    struct Quantity insulated_length_m; /**< not given: value is the segment's length */
    bool has_beside;
    struct Beside beside;
    enum Lie lie; /**< of the runs of this file that share it; default bunched */
    bool lie_given;
    const char *notes;
    struct Quantity thickness_m; /**< of the wall (through-wall) or of the insulation (ceiling) */
    enum WallKind wall;
    bool fire_barrier, sleeve;
    struct Quantity size_mm;   /**< conduit diameter, trunking width */
    struct Quantity height_mm; /**< trunking height */
    enum Material material;
    struct Quantity duct_size_mm; /**< nominal outside size of the duct */
    struct Quantity duct_bore_mm; /**< its bore, where it is known */
    enum Laid duct_laid;
    bool duct_rope;
    struct Quantity depth_m;
    enum Hidden hidden; /**< how a cable lies in a stud wall; HIDDEN_COUNT when not given */
    enum Under under;
    enum Dig dig;
    enum Legs legs; /**< whether the surveyed lengths hold the cable's way into and out of the ground here */
    bool legs_given;
    bool bedding, bedding_given;    /**< in sand; not given: what is laid direct is, a duct is not */
    const char *trench;             /**< segment whose trench it lies in; "" one of its own */
    int shares_trench;              /**< 1 and that segment's index; 0 none */
    struct Quantity trench_width_m; /**< as it will be dug; not given: as usual */
    struct Quantity wire_mm;        /**< of a catenary: diameter of its wire */
    enum Wire wire;                 /**< WIRE_COUNT when not given */
    enum Laid laid;                 /**< of conduit, trunking, tray, ladder and catenary */
    bool laid_given;
    bool drawn;     /**< drawn through, not laid; a duct and a conduit always are */
    enum Pits pits; /**< where on it a cable can be got at to draw it */
    int landmark_count;
    const struct Landmark *landmarks;
    struct AsLaid as_laid;
    bool measure_again;        /**< before anything is ordered */
    enum HowMeasured measured; /**< how its length was; MEASURED_COUNT when not given */
    int photo_count;
    const char *const *photos; /**< plain file names */
};
/** Its length is to be measured before it is ordered by: it was marked so, or nobody has measured it. */
bool survey_to_measure(const struct Segment *segment);

/** A whole drum, coil or length that can be bought. */
struct StockLength {
    struct Quantity length_m;
    struct Quantity have; /**< how many are in stock; not given: as many as are wanted */
};

/** Lengths that one article can be cut from. Of `run` and `duct_size_mm` one is written. */
struct Stock {
    struct Mark mark;
    int run;                      /**< index of the run whose cable it is, and that of every run like it; -1: a duct */
    struct Quantity duct_size_mm; /**< nominal outside size of the duct */
    int length_count;
    const struct StockLength *lengths;
    int offcut_count;
    const double *offcuts_m; /**< at hand already, one of each */
};

/** True for a stretch in the ground that is bedded in sand. */
bool survey_bedded(const struct Segment *segment);
/** True where the sun may be on it: as surveyed, else as its way has it by itself. */
bool survey_outside(const struct Segment *segment);
/** True where this job digs: for cable in the ground, and for a duct that is not there already. */
bool survey_dug(const struct Segment *segment);
/** True for a stretch that cable is drawn through: a duct, a conduit, and what was surveyed as drawn. */
bool survey_drawn(const struct Segment *segment);

struct PartsRules {
    struct Quantity spare_cable_percent, spare_fixings_percent;
    const char *prices; /**< a file beside the route file, "" when none */
    const char *labour; /**< likewise, of labour figures */
    int stock_count;
    const struct Stock *stock;
};

/** What the language fills in where the surveyor wrote nothing. */
enum AssumedWhat {
    ASSUMED_NOTHING,
    /* a figure, or a word of the route language, of one key */
    ASSUMED_PHASES,
    ASSUMED_VOLTAGE,
    ASSUMED_DROP_BEFORE,
    ASSUMED_NEUTRAL_SIZE,
    ASSUMED_EARTHING_CONDUCTOR,
    ASSUMED_AIR,
    ASSUMED_GROUND,
    ASSUMED_SOIL_THERMAL,
    ASSUMED_SOIL_ELECTRICAL,
    ASSUMED_TERMINALS,
    ASSUMED_ELECTRODE_TARGET,
    ASSUMED_ROD_SPACING, /**< one rod's length */
    ASSUMED_SPARE_CABLE,
    ASSUMED_SPARE_FIXINGS,
    ASSUMED_DIVERSITY,
    ASSUMED_POWER_FACTOR,
    ASSUMED_DROP_LIMIT,
    ASSUMED_DROP_LIMIT_LIGHTING,
    ASSUMED_CORES,
    ASSUMED_TAIL,
    ASSUMED_LOOP,
    ASSUMED_FEEDS,
    ASSUMED_USE,
    ASSUMED_DEVICE_KIND,
    ASSUMED_CURVE,
    ASSUMED_CPC,
    ASSUMED_INTO,
    ASSUMED_PLACE,
    /* what is said of a run is in the run */
    ASSUMED_START,
    ASSUMED_FINISH,
    ASSUMED_CPC_RUN,
    ASSUMED_EXPORT, /**< the supply's earth goes with the cable */
    /* on stretches */
    ASSUMED_TIMBER,
    ASSUMED_SHADED,
    ASSUMED_NEW_DUCT,
    ASSUMED_BESIDE_BUNCHED,
    ASSUMED_BESIDE_ALIKE,
    ASSUMED_ONE_SIDE,
    ASSUMED_DEPTH,
    ASSUMED_COUNT
};

/** A value the surveyor did not write and the language filled in. */
struct Assumed {
    const char *where; /**< key path: "conditions.air", "runs.feeder.start.tail", "segments.gable.fixed-to" */
    enum AssumedWhat what;
    double value; /**< of a figure, in the unit that the survey holds it in */
    int word;     /**< of a word: its place in its list */
    int run;      /**< index into Survey.runs, -1 none */
    int segment_count;
    const int *segments; /**< indexes into Survey.segments */
};

/** A quantity that was surveyed as a range, which is read at one point of it. */
struct SurveyRange {
    const char *where;      /**< key path: "segments.field.length" */
    const char *named;      /**< where that is on paper: "field length" */
    const char *text;       /**< as written: "18 m to 22 m" */
    const char *at;         /**< what was read in its place: "22 m" */
    const char *low, *high; /**< its ends: "18 m", "22 m" */
};
enum { SURVEY_RANGES_MOST = 3 };

struct Survey {
    bool complete, complete_given; /**< false and given: the way has not been surveyed to its far end */
    struct Job job;
    struct Supply supply;
    struct Conditions conditions;
    struct Earthing earthing;
    int run_count;
    const struct Run *runs;
    int segment_count;
    const struct Segment *segments;
    struct PartsRules parts;
    bool has_readings;
    int range_count;
    const struct SurveyRange *ranges;
    int change_count;
    const char *const *changes; /**< what was set otherwise than in the file, "segments.field.length=66 m" */
    int assumed_count;
    const struct Assumed *assumed; /**< in file order of the keys they stand for */
    uint64_t digest;               /**< of all that the file says, used or not; 0: it is of no file, or nobody asked */
};

/** Cores that carry current in service: all of them less the one that is the protective conductor. */
int survey_live_cores(const struct Cable *cable);
/** The protective conductor that a fault on the run's cable returns through. A cable to an island is earthed at its
 * supply end only, so an armoured one's is its armour, whatever the survey asked for. */
enum Cpc survey_fault_path(const struct Survey *survey, const struct Run *run);
/** True when the run's protective core or its earth run must not be joined to anything at the far end: the far end is
 * an island, and it has one. */
bool survey_earth_stops(const struct Survey *survey, const struct Run *run);
/** True when it is known how the far end is earthed: it was written, or the run goes to a piece of equipment, which
 * stands on its installation's earth. A charging point may not, so that has to be written. */
bool survey_far_earth_known(const struct Survey *survey, const struct Run *run);
/** Rated residual current of the device at the outbuilding's board as far as it serves this run, A; 0 none: what feeds
 * equipment or socket-outlets does not pass that board. */
double survey_board_residual_a(const struct Earthing *earthing, const struct Run *run);
/** True when the run brings a neutral to its far end on that many lines. */
bool survey_neutral(const struct Run *run, int lines);
/** The colour of a core, or of the sleeving that it gets. */
enum CoreColour {
    COLOUR_NONE, /**< no sleeving */
    COLOUR_BROWN,
    COLOUR_BLACK,
    COLOUR_GREY,
    COLOUR_BLUE,
    COLOUR_GREEN_AND_YELLOW,
    COLOUR_BARE,
    COLOUR_COUNT
};
/** What a core is for, at both ends alike but for where an earth stops; up to the neutral they are live. */
enum CoreIs { CORE_LINE, CORE_L1, CORE_L2, CORE_L3, CORE_NEUTRAL, CORE_EARTH, CORE_SPARE };
struct CoreRow {
    enum CoreColour colour;
    enum CoreIs is;
    enum CoreColour sleeve;
};
/** The cores of a cable in one use of it. */
struct CoreUse {
    enum CoreColours colours; /**< of the cables that it holds for */
    int cores, lines;
    bool core_protects;
    struct CoreRow rows[5];
};
/** The use of the run's cores on that many lines; NULL for cables and connections that leave a choice open. */
const struct CoreUse *survey_core_use(const struct Run *run, int lines);
/** Where a run goes into the ground, comes out of it or changes its depth. */
struct Leg {
    double length_m; /**< to the ground's surface, or between two depths */
    bool down;       /**< in the direction of the run */
    bool included;   /**< the surveyed lengths hold it: nothing is added for it */
    int stretch;     /**< it counts with: index into the run's `along` */
};
/** The segment at whose end this one begins: the one before it on the run that goes through both, so that a branch
 * begins where it leaves; else the one before it in the file. -1 for the first. */
int survey_before(const struct Survey *survey, int segment);
/** The leg between stretch `at` of the run and the one before it; 0 is the run's start, its along_count the end. An end
 * of the run lies at the surface. False: there is none. */
bool survey_leg(const struct Survey *survey, const struct Run *run, int at, struct Leg *out);
/** What the legs add to the cable on one stretch of the run, m. */
double survey_leg_m(const struct Survey *survey, const struct Run *run, int stretch);
/** All of the run's cable that is built in: stretches, legs, tails and loops, m. */
double survey_electrical_m(const struct Survey *survey, const struct Run *run);
/** The place of a segment on the run, an index into its `along`; -1 when it does not go along it. */
int survey_stretch(const struct Run *run, int segment);
/** Whether the run goes along a segment. */
bool survey_follows(const struct Run *run, int segment);
/** Whether any power run does. */
bool survey_powered(const struct Survey *survey, int segment);
/** 3 when the supply has three phases and the run has a three-phase load, or four live cores to share
 * single-phase loads between; else 1. */
int survey_run_phases(const struct Supply *supply, const struct Run *run);

#endif
