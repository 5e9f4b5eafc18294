/** What the checks on bends, ducts and drawing in know of each other. Calculations are pure: arguments in, result out,
 * no rounding on the way. Those of pull.c keep to no system of units: force, and force per length, in
 * whatever the caller has, lengths to match; angles in degrees. */
#ifndef WEND_MECHANICS_PRIVATE_H
#define WEND_MECHANICS_PRIVATE_H

#include "design/terms/steps_private.h"
#include "tables/mechanics_tables.h"

/* ---- mechanics_cable.c: the cable as a thing ---- */
struct CableBody {
    double overall_mm;
    double under_armour_mm; /**< 0 when not held, or without armour */
    double weight_kg_per_m; /**< 0 when not held */
    enum Saying source;     /**< of the diameter */
};
/** As surveyed, else as makers print it; BS 6724 is built to the dimensions of BS 5467. False: no diameter is known. */
bool mechanics_body(const struct Cable *cable, double size_mm2, struct CableBody *out);

/** What is known of a cable in one size. */
struct SizedCable {
    bool known;
    struct CableBody body; /**< where it is known */
    double least_mm;       /**< what it measures at least, else; 0 not even that */
};
struct SizedCable mechanics_sized(const struct Cable *cable, double size_mm2);
/** Of the run's own cable: where many stretches are looked at in one size it was looked up before. */
struct SizedCable mechanics_own(const struct RunDesign *run, double size_mm2);

/** Cables that lie in one bore together. */
enum { THICKEST_KEPT = 3 };
struct Bunch {
    int count;
    double squares_mm2; /**< diameters squared, added up */
    double sum_mm;      /**< diameters added up */
    double largest_mm;
    double thickest_mm[THICKEST_KEPT]; /**< the thickest of them, the thickest first */
};
/** One cable more. */
void bunch_add(struct Bunch *bunch, double overall_mm);
/** The `count` thickest of them, up to three; all of a bunch that has no more. */
struct Bunch bunch_thickest(const struct Bunch *bunch, int count);

/** What lies in a duct with a run. */
struct Sharing {
    struct Bunch bunch;       /**< the run itself first */
    struct Bunch least;       /**< the same with what each has at least where its diameter is not known */
    double heaviest_kg_per_m; /**< of those whose weight is held, the run itself among them */
    const struct Run *other;  /**< another run in it, the last one; NULL: the run is alone */
    const struct Run
        *lacking;        /**< the first run whose diameter is not known, NULL none; then the rest is not to be used */
    bool cables_unknown; /**< others lie in it already, of sizes that were not surveyed */
};
/** Who shares the duct `segment` (index into the survey) with the run. A run whose size is still to be chosen is taken
 * with this trial's size. */
struct Sharing mechanics_sharing(const struct RunDesign *design, double size_mm2, int segment);
/** What a cable measures at least over all, mm, where its own diameter is not known: as much as the next smaller one of
 * its kind that is held, and no less than its copper laid into one round bar; 0 not even that. */
double mechanics_least_mm(const struct Cable *cable, double size_mm2);
/** For each segment the runs that follow it, a bit each (a route has 50 runs at most); NULL without memory. */
uint64_t *mechanics_followers(struct Arena *arena, const struct Survey *survey);

/* ---- bends.c ---- */
/** Least inside radius of a cable, mm: factor x diameter. False where no table has a factor. */
bool bend_least_radius_mm(enum CableType type, double size_mm2, double overall_mm, double *out_mm);
/** The bends of a segment. */
struct Bends {
    double total_deg;   /**< of them all */
    int surveyed, open; /**< with and without a radius */
    double tightest_m;  /**< of those with one; 0 none */
};
struct Bends bend_look(const struct Segment *segment);
/** "117 mm": what is needed is shown no smaller than it is, and what there is no larger. */
struct SayArg say_needed_mm(double value_mm);
struct SayArg say_there_mm(double value_mm);
void decide_bend(const struct RunDesign *run, const struct Trial *trial, int stretch, struct Check *out);
void say_bend(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int stretch,
              struct Check *out);
/** What the plan says of the bends of a run. */
const struct PlanBend *plan_bends(struct Arena *arena, const struct RunDesign *run, const struct PlanRun *planned,
                                  int *out_count);

/* ---- duct_fill.c ---- */
/** Whether they may wedge in a duct of which the least bore and the outside are known: as sold it has any bore between.
 */
bool duct_may_jam(const struct Bunch *bunch, double least_bore_mm, double outside_mm, bool bent);
/** Share of the bore that the cables take up, percent: squares of diameters over the bore's square. */
double duct_fill_percent(const struct Bunch *bunch, double bore_mm);
/** What decides the fill: the two thickest where they alone are more than two may be, since two may fill less than
 * three and what is too much does not become less by one more; else all. */
struct Bunch duct_fullest(const struct Bunch *bunch, double bore_mm);
/** Bore over diameter; over their mean where they differ, since what wedges is the row of them across the bore. */
double duct_jam_ratio(const struct Bunch *bunch, double bore_mm);
/** Whether they may wedge. In a duct that bends the straight parts and the bends both count. */
bool duct_jams(const struct Bunch *bunch, double bore_mm, bool bent);
/** Whether they go in: fill and jamming. */
bool duct_takes(const struct Bunch *bunch, double bore_mm, bool bent);
/** Smallest nominal size of the standard's list that takes them; false when none does. */
bool duct_smallest(const struct Bunch *bunch, bool bent, double *out_nominal_mm);

/** The bore of a duct. */
struct DuctBore {
    double mm;
    double row_mm; /**< nominal size of the standard's list that it is the least bore of; 0: as surveyed */
};
/** As surveyed, else the least that the standard asks of its size. False: neither is known, or no bore is held for a
 * duct so small. */
bool mechanics_bore(const struct Segment *segment, struct DuctBore *out);

/* ---- check_duct.c ---- */
void decide_duct_fill(const struct RunDesign *run, const struct Trial *trial, int stretch, struct Check *out);
void say_duct_fill(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int stretch,
                   struct Check *out);
/** The same, given what lies in it. */
void decide_fill_of(const struct RunDesign *run, const struct Sharing *sharing, int stretch, struct Check *out);
/** Why the check of a duct could not be made, of one that it leaves unknown. */
enum Saying duct_fill_lacks(const struct RunDesign *run, const struct Sharing *sharing, int stretch);

/* ---- check_enclosed.c ---- */
/** Of a stretch of which survey_enclosed() is true. */
void decide_enclosed_fill(const struct RunDesign *run, const struct Trial *trial, int stretch, struct Check *out);
void say_enclosed_fill(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int stretch,
                       struct Check *out);

/* ---- check_segregation.c ---- */
/** True for a data run in a duct, conduit or trunking that power lies in. */
bool segregation_due(const struct Survey *survey, const struct Run *run, int segment);
/** Whether the data cable is known to be insulated for that power. */
bool segregation_passes(const struct Survey *survey, const struct Run *run);
void decide_segregation(const struct RunDesign *run, const struct Trial *trial, int stretch, struct Check *out);
void say_segregation(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int stretch,
                     struct Check *out);

/* ---- pull.c ---- */
/** Standard gravity as the published sums take it, m/s2. */
#define PULL_GRAVITY 9.81
/** A piece of the way that the cable is drawn through, from the supply on: a straight, then a bend; either may be
 * nothing. */
struct PullPiece {
    double length;
    double rise; /**< over that length, + up */
    double bend_deg;
    double radius;  /**< inside radius of the bend, 0 not known */
    bool open;      /**< the radius of some of it is not known */
    bool anywhere;  /**< where the bend lies in the straight is not known: taken where it is worst */
    double crowd;   /**< weight correction for cables side by side, 1 for one cable */
    double pressed; /**< force on a cable in a bend as a multiple of tension over radius, 1 for one cable */
};
/** What is drawn. */
struct PullLoad {
    double weight;   /**< force per length */
    double friction; /**< coefficient */
    double start;    /**< tension at the drum, 0 when fed by hand */
};
struct Pull {
    double tension;  /**< at the rope; it is greatest at the end */
    double sidewall; /**< greatest force per length in a bend of known radius, 0 none */
    double open;     /**< greatest tension x `pressed` out of a bend of unknown radius, 0 none */
    double bends_deg;
};
/** T + w L (c mu cos a + sin a), never below 0. */
double pull_straight(double tension, const struct PullLoad *load, double length, double rise, double crowd);
/** T e^(c mu theta). */
double pull_bend(double tension, double friction, double bend_deg, double crowd);
struct Pull pull_begin(const struct PullLoad *load);
/** Over one piece in the order that the way has, straight and then bend; pull_back_over() the other way about, uphill
 * turned into downhill. */
void pull_over(struct Pull *pull, const struct PullLoad *load, const struct PullPiece *piece);
void pull_back_over(struct Pull *pull, const struct PullLoad *load, const struct PullPiece *piece);
/** Through all of them, from the first to the last, or from the last to the first. */
struct Pull pull_through(const struct PullPiece *pieces, int count, const struct PullLoad *load);
struct Pull pull_back_through(const struct PullPiece *pieces, int count, const struct PullLoad *load);
/** Weight correction: 1 / cos of half the angle between two cables as they lie in the bore (for two of one diameter
 * 1 / sqrt(1 - (d / (D - d))^2)), 1 + 4/3 (d / (D - d))^2 for three in a cradle, 1 + 2 (d / (D - d))^2 for four, with
 * the largest diameter, and no more than where so many just fit, 2. False beyond four, and when two do not fit. */
bool pull_crowd(const struct Bunch *bunch, double bore_mm, double *out);
/** Force on the cable worst off in a bend, over the heaviest one's tension by radius: 1 alone; of two both, by the
 * squares of their diameters; of three the middle one of a cradle, 3c - 2, or one of a triangle, 3/2 of its own c; of
 * four all on one. */
double pull_pressed(const struct Bunch *bunch, double bore_mm, double crowd);

/** What the cable stands. */
struct PullStrength {
    double tension, sidewall, bends_deg;
};
/** How near the worse of tension and pressure comes to its limit: over 1 does not stand. */
double pull_strain(const struct Pull *pull, const struct PullStrength *strength);
/** Where one draw pit helps most: its distance from the start, and the greater tension of the two parts, each drawn
 * from its better end. A bend at the pit counts for the second part. False when with one pit it does not stand either.
 */
bool pull_pit(const struct PullPiece *pieces, int count, const struct PullLoad *load,
              const struct PullStrength *strength, double *out_at, double *out_tension);
/** Limits of one cable, N, by rule; mm2 and mm in. */
struct PullLimit {
    double copper_n, stocking_n;
    double armour_n; /**< 0 without wire armour */
    double part;     /**< 0.8 where many are drawn in together, else 1 */
    double least_n;  /**< of them, times `part` */
};
struct PullLimit pull_limit(bool armoured, double copper_mm2, double overall_mm, int cables);

/* ---- check_pull.c, pull_words.c ---- */
/** All that the check comes from. */
struct PullWork {
    enum Saying lacks;      /**< why it is not made, SAY_NOTHING when it is */
    bool unknown;           /**< ... for want of a figure */
    struct Settles settles; /**< ... and what would settle it */
    int first, count;       /**< stretches of one pull: ducts without a break */
    struct CableBody body;
    struct PullLoad load; /**< N/m */
    struct PullFriction dry, wet;
    bool friction_surveyed, lubricated;
    enum Trust friction_trust; /**< of the published one */
    struct PullLimit limit;
    struct PullStrength strength;
    struct Pull forth, back; /**< drum at the supply's end, drum at the far end */
    bool from_far;           /**< the drum stands at the far end: as surveyed, else because that takes less */
    bool either;             /**< the ends do not differ */
    bool bound;              /**< the end was surveyed */
    bool worse;              /**< ... and the other one would take less */
    const struct Run *other; /**< drawn in with it, NULL none */
    int cables;
    double heaviest_kg_per_m;
};
struct PullWork pull_work(const struct RunDesign *run, const struct Trial *trial, int stretch);
/** The same pull with a lubricant. */
struct Pull pull_lubricated(const struct RunDesign *run, const struct Trial *trial, const struct PullWork *work);
/** Whether the cable goes on from the stretch before into this one in the same pull: both are drawn, and no pit lies
 * between. */
bool pull_goes_on(const struct RunDesign *run, int stretch);
/** The pull from the end that the drum stands at. */
const struct Pull *pull_taken(const struct PullWork *work);
/** A stretch as a piece of the pull. */
struct PullPiece pull_piece(const struct RunDesign *run, const struct Trial *trial, int stretch);
void decide_pull(const struct RunDesign *run, const struct Trial *trial, int stretch, struct Check *out);
void say_pull(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int stretch,
              struct Check *out);
/** What the plan says of the pulls of a run. */
const struct PlanPull *plan_pulls(struct Arena *arena, const struct RunDesign *run, const struct PlanRun *planned,
                                  int *out_count);
/** What the check says, given how it went. */
const struct Say *word_pull(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                            const struct PullWork *work, enum CheckResult result);
/** Which end the drum goes to and why. */
const struct Say *word_pull_end(struct Arena *arena, const struct RunDesign *run, const struct PullWork *work);
/** Where one draw pit helps most: metres from the start of the pull, and the tension that is left. False when one is
 * not enough, or the pull needs none. */
bool pull_pit_for(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                  const struct PullWork *work, double *out_at_m, double *out_tension_n);
void work_pull(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, const struct PullWork *work,
               struct Check *out);

/* ---- mechanics.c ---- */
const struct Segment *segment_at(const struct RunDesign *run, int stretch);
/** Of the kinds of those checks one of each name, as design_check_kind() gives it. */
bool mechanics_kind(int index, struct Check *out);
/** How many checks check_mechanics() makes for a run, whatever the size. */
int mechanics_count(const struct RunDesign *run);
/** One check for each segment with bends ("bend:NAME") and two for each duct ("duct-fill:NAME", "pull:NAME"), the
 * first for conduit and trunking too, the second for what else is drawn; returns how many, `most` at most. */
int check_mechanics(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out,
                    int most);
/** Of the checks of a planned run the next of that kind ("bend"), counted from `*at`: they are in the order of the
 * stretches. NULL: no more. */
const struct Check *mechanics_next(const struct PlanRun *run, const char *kind, int *at);
/** How those checks went with one size, and which was the first of a run to go that way. */
enum { MECHANICS_KINDS = 5 };
struct MechanicsWent {
    int count;
    bool of_kind[MECHANICS_KINDS];
    int first_kind, first_stretch; /**< where count > 0 */
};
struct MechanicsCount {
    struct MechanicsWent failed, open;
};
/** Which of those checks are made of a run, whatever the size; without memory none. */
struct MechanicsDue {
    const struct CheckDue {
        int kind, stretch;
    } * list;
    int count;
};
struct MechanicsDue mechanics_due(struct Arena *arena, const struct RunDesign *run);
struct MechanicsCount mechanics_failures(const struct RunDesign *run, const struct Trial *trial,
                                         struct MechanicsDue due);
/** What decides against a size: which checks, and the sentence of the first of them. */
enum { STRETCH_CHECKS_MOST = 8, AGAINST_MOST = CHECKS_MOST + STRETCH_CHECKS_MOST };
struct Against {
    struct CheckRef list[AGAINST_MOST];
    int count;
    const struct Say *why;
};
void against_add(struct Against *against, const char *kind, enum Saying title);
struct CheckList against_list(struct Arena *arena, const struct Against *against);
/** Adds the kinds of those checks that fail and that are open ("bend", once each), and the sentence of the first of
 * them where there is none yet; `count` is what mechanics_failures() found. */
void mechanics_against(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                       const struct MechanicsCount *count, struct Against *fails, struct Against *open);
/** What the checks on drawing in take for granted of a run; NULL when it follows no duct. */
const struct Say *mechanics_assumption(struct Arena *arena, const struct Survey *survey, const struct Run *run);

/* ---- plan_cable.c: what the plan says of it ---- */
struct PlanCable plan_cable(struct Arena *arena, const struct RunDesign *run, double size_mm2, int order_length_m);
/** `stiff`: the cable is armoured. */
struct PlanEnd plan_end(struct Arena *arena, const struct End *end, const struct PlanCable *cable, bool stiff);

/* ---- recheck.c ---- */
/** Begins design->decided: the survey with the sizes that are decided. False: no memory. */
bool decided_begin(struct Design *design);
void decided_size(struct Design *design, int run, double size_mm2);
/** Once every size is decided: repeats the checks that depend on other runs' sizes, makes those of runs without a
 * choice, and fills what the plan says of cable, bends, pulls and ends. False: no memory. */
bool recheck_mechanics(const struct Design *design, struct PlanRun *runs, int count);

/* ---- shared_segments.c ---- */
/** Separation of data from power and the order of drawing in, for every segment. False: no memory. */
bool list_together(const struct Design *design, const struct PlanRun *runs, int count, struct PlanSegment *segments);

#endif
