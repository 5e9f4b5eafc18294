/** What the counters of parts know of each other. */
#ifndef WEND_PARTS_PRIVATE_H
#define WEND_PARTS_PRIVATE_H

#include "parts.h"
#include "plan/say.h"
#include "tables/tables.h"
#include "tables/takeoff_tables.h"

/** What is ordered beyond what is counted. */
enum Spare {
    SPARE_NONE,
    SPARE_FIXINGS, /**< the route file's own percentage */
    SPARE_DUCT,
    SPARE_TAPE,
    SPARE_SAND,
    SPARE_COUPLERS,
    SPARE_GLANDS,
    SPARE_WHOLE /**< none; a part of one counts as one */
};

/** An article as its counter describes it; what was counted of it is kept in the list. */
struct Article {
    enum Aisle aisle;
    const char *code;
    const struct Say *description;
    const struct Say *fitted; /**< as Part.fitted */
    const char *standard;     /**< NULL: none */
    const char *unit;         /**< NULL: "each" */
    const struct Say *note;
    const char *article;     /**< as Part.article; NULL without one */
    const struct Say *gland; /**< as Part.gland */
    bool sleeves_cores;
    double length_m;
    enum PackKind sold;
    enum Spare spare;
};

/** What goes to one run, or to all of them, while it is counted: in the order in which it is met, perhaps more than
 * once. */
struct UseGroup {
    struct PartUse whose; /**< PART_NOWHERE */
    struct PartUse *places;
    int count, room;
    struct UseGroup *next;
};
struct UseGroups {
    struct UseGroup *first, *last;
};

/** One unbroken stretch that an article sold in lengths is cut for. */
struct Stretch {
    double length_m; /**< without spare */
    struct Stretch *next;
};

/** A line of the list while it grows. */
struct Tally {
    struct Article article;
    double needed;
    struct UseGroups uses;
    struct Stretch *stretches; /**< NULL: a sum is all that matters */
    int stretch_count;
};

/** What the list cannot count, each said once with the places that it holds for. */
enum Uncounted {
    UNCOUNTED_SURFACE,
    UNCOUNTED_END_SURFACE,
    UNCOUNTED_SPACING,
    UNCOUNTED_HIDDEN,
    UNCOUNTED_HELD_SIZE,
    UNCOUNTED_THERE_ALREADY,
    UNCOUNTED_HOLE,
    UNCOUNTED_LYING,
    UNCOUNTED_OTHER_ENDS,
    UNCOUNTED_ELECTRODE,
    UNCOUNTED_WIRE,      /**< of a catenary: how thick and how made */
    UNCOUNTED_FAR_EARTH, /**< how the far end is earthed, and so which gland it takes */
    UNCOUNTED_SLEEVING,  /**< what each core is for is open */
    UNCOUNTED_ACCESSORY,
    UNCOUNTED_FUSE_HOLDER,
    UNCOUNTED_BOARD,
    UNCOUNTED_LUGS,
    UNCOUNTED_TAILS, /**< how long they are */
    UNCOUNTED_COUNT
};

/** The list while it grows: articles of the same code are one line. */
struct Counting {
    struct Arena *arena;
    const struct Plan *plan;
    struct Tally *tallies;
    int count, room;
    struct PartsWay *ways; /**< stretch by stretch: what it takes itself, then of each run on it */
    int way_count;
    const int *way_at;    /**< where in `ways`: the stretches themselves, then run after run its own */
    const int *first_way; /**< by run: where its own begin in `way_at` */
    struct UseGroups uncounted[UNCOUNTED_COUNT];
};

/** Adds `pieces` of an article for a place; a new line when the code is new. Texts are kept by reference. */
void parts_add(struct Counting *counting, const struct Article *article, double pieces, struct PartUse use);
/* ---- parts_lengths.c ---- */
/** Notes that the article of this code, added before, is cut for an unbroken stretch of this length. */
void parts_add_stretch(struct Counting *counting, const char *code, double length_m);
/** Lengths of `whole_m` to buy so that each stretch, `more` times as long, can be cut from them; 0 without stretches or
 * memory. */
int parts_lengths(struct Arena *arena, const struct Tally *tally, double whole_m, double more);

/** Notes that this is not counted for a place. */
void parts_not_counted(struct Counting *counting, enum Uncounted what, struct PartUse use);
/** The notes of the finished list. */
void parts_notes(struct Counting *counting, struct PartsList *list);

/* ---- parts_use.c ---- */
/** What serves all. */
struct PartUse parts_for_all(void);
struct PartUse parts_for_run(const struct Run *run);
struct PartUse parts_for_end(const struct Run *run, enum PartPlace end);
/** On a stretch, for one run or, with NULL, for all. */
struct PartUse parts_for_segment(const struct Run *run, const struct Segment *segment);
void parts_use_add(struct Arena *arena, struct UseGroups *groups, struct PartUse use);
/** All that were added, each once: returns how many. */
int parts_uses(struct Counting *counting, const struct UseGroups *groups, const struct PartUse **out);

/* ---- parts_ways.c: what each stretch takes ---- */
/** Room for the work of every stretch and of every run on it; false when memory failed. */
bool parts_ways_begin(struct Counting *counting);
/** The work of run `run` on the `step`th stretch that it follows; with run -1 of stretch `step` itself. */
struct PartsWay *parts_way(struct Counting *counting, int run, int step);
/** Something for the crew to do. */
void parts_way_say(struct Counting *counting, struct PartsWay *way, const struct Say *said);
/** A fact for the crew, and no act to tick. */
void parts_way_tell(struct Counting *counting, struct PartsWay *way, const struct Say *said);
/** Those that have something to say, stretch by stretch. */
void parts_ways_end(struct Counting *counting, struct PartsList *list);

/* ---- parts_queries.c: what several counters ask of a plan ---- */
/** Overall diameter of a run's cable, mm; 0 when no table and no surveyor says. */
double parts_diameter_mm(const struct PlanRun *run);
/** "3-core 10 mm2 BS 5467" */
const struct Say *parts_cable_name(struct Arena *arena, const struct PlanRun *run);
/** "cable 19.5 mm overall"; the cable's name where that is not known. */
const struct Say *parts_cable_thick(struct Arena *arena, const struct PlanRun *run);
/** "BS5467-3x10": the cable in a code, the same in every route. */
const char *parts_cable_code(struct Arena *arena, const struct PlanRun *run);
/** True when the item is for ducts of this stretch's size. */
bool parts_stock_of_duct(const struct Stock *stock, const struct Segment *segment);
/** The longest length in which the survey says duct of this segment's size is sold; 0 when it says none. */
double parts_duct_whole_m(const struct Plan *plan, const struct Segment *segment);
/** Every article that is cut to length, with what the survey names to cut it from, into the list. False without memory.
 */
bool parts_ask_cuts(struct Counting *counting, struct PartsList *list);
/** The `step`th stretch that a run follows. */
const struct Segment *parts_segment(const struct Counting *counting, int run, int step);
/** Within 30 degrees of upright: On-Site Guide, notes to Table D1, from memory. */
bool parts_upright(const struct Segment *segment);
/** The metal tie that binds a cable to a tray, a ladder or a wire. */
struct Article parts_tie(struct Arena *arena);
/** What holds a fixing in a surface, for the crew; NULL for a surface that was not surveyed. */
const struct Say *parts_grip_said(struct Arena *arena, enum Way way, enum Surface surface);
/** What to mind about it. */
const struct Say *parts_grip_remark(struct Arena *arena, const struct SurfaceGrip *grip);
/** True for the ways along which a cable is clipped or cleated. */
bool parts_clipped(enum Way way);
/** True for conduit, trunking, tray, ladder and catenary that are there already: as surveyed, else where other circuits
 * lie beside. */
bool parts_there_already(const struct Segment *segment);
/** Whole pieces of at most `piece` that make up `length`, forgiving what arithmetic leaves behind. */
double parts_pieces(double length, double piece);
/** Screws, plugs or anchors for `fixings` fixings on a stretch: of cable on its own way, of containment as on a wall. A
 * note where the surface was not surveyed. */
void parts_count_grips(struct Counting *counting, const struct Segment *segment, enum Way way, double fixings,
                       const struct Run *run);

/** Ducts of one size that a cable passes one after the other are one, and so are stretches of one containment. */
struct Chain {
    int segment_count;
    int first, last; /**< segments, in file order */
    double length_m;
    int bends;
    double bend_deg;
    int cables; /**< most that follow one of its stretches */
};
typedef bool (*ChainSame)(const struct Segment *a, const struct Segment *b);
/** Chains over the segments of `way`: returns how many; `*out` is theirs, `member[segment]` the chain's index or -1. */
int parts_chains(struct Counting *counting, enum Way way, ChainSame same, struct Chain **out, int **member);
/** The ducts of a route, new and there already, in the same way. */
int parts_ducts(struct Counting *counting, struct Chain **out, int **member);

/* ---- parts_enclosures.c ---- */
/** What an enclosure keeps out, by its place: in words, in a code, and by which rule. */
struct PlaceWords {
    enum Saying words;
    const char *code;
    enum Saying source;
};
const struct PlaceWords *parts_place_words(const struct Counting *counting, enum Place place);
/** What an enclosure is made of, in a code and in words. */
struct MadeOf {
    const char *code;
    enum Saying words;
};
const struct MadeOf *parts_made_of(const struct End *end);
/** Poles that isolate a run: its lines and its neutral. */
int parts_isolating_poles(const struct PlanRun *run);

/* one counter a file */
void parts_count_cable(struct Counting *counting, const struct PlanRun *run);
void parts_count_glands(struct Counting *counting, const struct PlanRun *run);
void parts_count_fixings(struct Counting *counting, int run);
void parts_count_containment(struct Counting *counting);
void parts_count_catenary(struct Counting *counting);
void parts_count_ducts(struct Counting *counting);
void parts_count_trenches(struct Counting *counting);
/** What is done when the cables lie in the ground: after the ducts. */
void parts_close_trenches(struct Counting *counting);
void parts_count_holes(struct Counting *counting, int run);
void parts_count_enclosures(struct Counting *counting, const struct PlanRun *run);
/** What stands between the meter and the runs' devices, where the survey says that it is new. */
void parts_count_supply(struct Counting *counting);
/** Sleeving and labels of a power run. */
void parts_count_marking(struct Counting *counting, const struct PlanRun *run);
void parts_count_earthing(struct Counting *counting);

#endif
