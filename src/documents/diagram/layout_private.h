/** From a plan to a drawing: an alignment sheet. What depends on metres is drawn in metres (profile, voltage, the bar
 * that is route and scale at once); what depends on the segment stands below in cells of equal width (way, conditions,
 * capacity, ground, cautions). Between them a fan of thin lines leads from each break on the bar to the edge of its
 * column, and nothing else is drawn there. So a short segment costs nothing, keeps its true place and has its label.
 *
 * The order of work: heights and ground (layout_heights), strips of one sheet each (layout_strips), what the cells say
 * (cells_*), then sheets from top to bottom (sheet_*): heading, profile block, bands, ends, flags, signs. */
#ifndef WEND_LAYOUT_PRIVATE_H
#define WEND_LAYOUT_PRIVATE_H

#include "drawing_private.h"

#include "plan/plan.h"
#include "plan/say.h"
#include "takeoff/parts.h"

/* ---- the sheet, A4 lying, mm ---- */
#define SHEET_WIDTH  297.0
#define SHEET_HEIGHT 210.0
#define SHEET_MARGIN 5.0
#define FRAME_LEFT   SHEET_MARGIN
#define FRAME_RIGHT  (SHEET_WIDTH - SHEET_MARGIN)
#define CELLS_LEFT   29.5 /* left of it the bands' names */
#define CELLS_WIDTH  (FRAME_RIGHT - CELLS_LEFT)
#define AXIS_LEFT    (CELLS_LEFT + 8.0) /* where the true axis begins, and how far it may go */
#define AXIS_WIDTH   (FRAME_RIGHT - 25.0 - AXIS_LEFT)

#define TYPE_PLAIN 2.7
#define TYPE_LARGE 3.2
#define LINE_PITCH 3.35 /* browsers round the height of a line up to whole dots */
#define CELL_PAD   1.0

/* ---- strokes: three clear weights, the cable loudest ---- */
#define WIDTH_CABLE 1.2
#define WIDTH_THING 0.5
#define WIDTH_RULE  0.18

enum Ground { GROUND_NONE, GROUND_KNOWN, GROUND_LEVEL };

/** A segment as it is drawn. */
struct Stretch {
    const struct PlanSegment *segment;
    int number; /**< from 1, as in the circle */
    double length_m;
    double from_m, to_m; /**< heights as drawn, above the level of the start */
    enum Ground ground;
    double ground_from_m, ground_to_m; /**< level of the ground over or under it */
    double x_mm, width_mm;             /**< on the true axis of its sheet */
    double cell_mm;                    /**< left edge of its column */
};

/** A boundary at which at least one run begins or ends. */
struct RouteEnd {
    int boundary;       /**< 0 before the first stretch, n behind the n-th */
    const char *letter; /**< A, B, ... as in the square */
};

/** How much of a strip is on its own sheet; the rest is on the next. */
enum StripHolds {
    HOLDS_ITSELF, /**< profile and columns */
    HOLDS_KEYS,   /**< with its cautions and the signs used */
    HOLDS_RUNS,   /**< with the rows of the other runs too */
    HOLDS_ALL     /**< with its ends too */
};

/** Stretches drawn in one line from left to right, on a sheet of their own. */
struct Strip {
    int first, last; /**< stretches */
    enum StripHolds holds;
    double across; /**< its scale: 1 to this */
    double column_mm;
    double rest_mm;       /**< what the sheet holds below the profile */
    double profile_mm;    /**< height that is left for it */
    double low_m, high_m; /**< of everything drawn in it */
};

struct RouteLayout {
    struct Arena *arena;
    const struct Plan *plan;
    const struct PartsList *parts; /**< NULL: not counted */
    const char *mark;              /**< of the plan's sheets; NULL none */
    enum Language language;
    int stretch_count;
    struct Stretch *stretches;
    int end_count;
    struct RouteEnd *ends;
    int strip_count;
    struct Strip *strips;
    int main_run; /**< whose conditions, capacity and voltage are drawn: the power run with the least room, -1 none */
    int *first_like;   /**< of each run the first, but for the main run, that has the same figures, itself else */
    struct View *view; /**< the way seen from above, NULL when no heading was surveyed */
    double up;         /**< the scale of heights: 1 to this */
    bool known_ground, level_ground;
    bool stepped;  /**< the rises in the file leave out the way into the ground */
    bool deepened; /**< a cover is drawn deeper than the scale */
    bool narrow;   /**< for a phone: what there is room for is said in words */
    bool failed;
};

/** What becomes of the sheets of a drawing: each is handed on when it is done, and what lies on it is then forgotten,
 * so that of a long way no more than a sheet is in memory at a time. */
struct SheetsTaken {
    /** Before the first: how large the whole is, but for the height of that for a phone, and what it is called. False
     * ends it there. */
    bool (*begin)(void *context, const struct Drawing *whole, int sheet_count);
    void (*sheet)(void *context, const struct Drawing *sheet, int number);
    void *context;
};
/** False when memory failed, or begin() ended it. */
bool layout_sheets(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts, enum Language language,
                   const char *mark, const struct SheetsTaken *taken);
/** The whole drawing, with the mark of the plan's sheets at its foot (NULL none); NULL when memory failed. */
const struct Drawing *layout_drawing(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                     enum Language language, const char *mark);
/** The same facts for a phone: one segment under the other, 360 dots wide. NULL when memory failed. */
const struct Drawing *layout_narrow(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                    enum Language language);
/** It by segments, in place of sheets; its height is known when it is done. */
bool layout_narrow_parts(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                         enum Language language, const struct SheetsTaken *taken, double *height);
/** Stretches, ends, main run: what both drawings begin with. False when memory failed. */
bool layout_begin(struct RouteLayout *layout, struct Arena *arena, const struct Plan *plan,
                  const struct PartsList *parts, enum Language language);
/** What a drawing is called and what it shows, for those who do not see it. */
void layout_describe(const struct RouteLayout *layout, struct Drawing *drawing);

/** Fills in the stretches' heights and the ground; covers are drawn no shallower than `layout->up` lets one see. */
void layout_heights(struct RouteLayout *layout);
/** Finds the ends. */
void layout_ends(struct RouteLayout *layout);
/** Breaks the way into strips, each with its scale, and chooses the scale of heights. */
void layout_strips(struct RouteLayout *layout);
/** 0.1, 0.2, 0.5, 1, 2, 5, 10 and on: what a bar or an axis counts by. */
double layout_round_step(int step);
/** The standard scale with which `length_m` takes at most `room_mm`, no finer than 1 to `least`. */
double layout_fitting_scale(double length_m, double room_mm, double least);
/** Drawn size of a height difference, mm. */
double layout_up_mm(const struct RouteLayout *layout, double height_m);
/** Index of the end at a boundary, -1 when no run begins or ends there. */
int layout_end_at(const struct RouteLayout *layout, int boundary);
/** The boundary at which a run begins or ends. */
int layout_run_boundary(const struct Run *run, bool finish);
/** True when the segment governs the run. */
bool layout_governs(const struct PlanRun *run, int segment);
/** True when it governs the main run. */
bool layout_main_governs(const struct RouteLayout *layout, int segment);
/** The rating of a run in a segment, NULL when it has none there. */
const struct Rating *layout_rating_at(const struct PlanRun *run, int segment);
/** True when the run follows the segment. */
bool layout_follows(const struct RouteLayout *layout, int run, int segment);
/** True when a cable climbs a surface here: drawn level, upright, level. */
bool layout_is_riser(const struct Stretch *stretch);

/** What a plan says, in the signs of paper; a figure and its unit stay on one line. */
const char *layout_said(const struct RouteLayout *layout, const struct Say *said);
/** A whole saying without arguments. */
const char *layout_term(const struct RouteLayout *layout, enum Saying id);
/** A length of the way: two decimals at most. */
struct SayArg layout_metres(double value_m);

/* ---- cells: what is said of a segment in one band ---- */

/** Small drawings of our own, each in a box of 8 by 6. */
enum Sign {
    SIGN_NONE,
#define SIGN(id, word, strokes) id,
#include "signs.inc"
#undef SIGN
    SIGN_COUNT
};

enum { CELL_LINES_MOST = 24 };

struct CellLine {
    const char *text;
    bool bold;
    enum Sign sign; /**< before it */
};
struct Cell {
    const struct RouteLayout *layout;
    double width_mm, size_mm;
    double pitch_mm; /**< from line to line */
    int count;
    struct CellLine lines[CELL_LINES_MOST];
};

/** One text broken into lines; NULL writes nothing. */
void cell_put(struct Cell *cell, const struct Say *said, bool bold);
/** The longer form where it fits into one line, else the shorter; behind a sign, if any. */
void cell_put_fitting(struct Cell *cell, enum Sign sign, const struct Say *longer, const struct Say *shorter,
                      bool bold);
double cell_height(const struct Cell *cell);
/** Draws the lines from `top_mm` down. */
void cell_draw(const struct Cell *cell, struct Drawing *drawing, double left_mm, double top_mm);

/** What it runs on or in, fixings, hole, bends, drawing in. */
void cells_way(struct Cell *cell, int segment);
/** The table's figure, and each thing that is not as the table has it. */
void cells_conditions(struct Cell *cell, int segment);
/** Surface, cover, trench. */
void cells_ground(struct Cell *cell, int segment);
/** What stands on or beside the segment, and where. */
void cells_marks(struct Cell *cell, int segment);
/** Numbers of the cautions that bite here. */
void cells_flags(struct Cell *cell, int segment);
/** SAY_END_SUPPLY and the like. */
enum Saying end_name(const struct RouteLayout *layout, int boundary);
/** What an end is and has: enclosure, gland, earth, device. */
void cells_end(struct Cell *cell, int end);
/** "1 bend, radius 250 mm": of the run through it that needs most; NULL without a bend. */
const struct Say *cells_bend(const struct RouteLayout *layout, int segment, bool *fails);

/** What costs capacity in a few words, "air at 40 °C ×0.87", and its sign. */
const struct Say *condition_said(struct Arena *arena, const struct Factor *factor);
enum Sign condition_sign(const struct Factor *factor);
enum Sign way_sign(enum Way way);
enum Sign landmark_sign(enum LandmarkKind what);

/* ---- cautions ---- */

/** The numbers of what bites at a segment (`run` NULL) or on a run, "8–11, 21"; "" when nothing does. */
const char *flag_numbers(const struct RouteLayout *layout, const struct Run *run, int segment);
/** How many. */
int flag_count(const struct RouteLayout *layout, const struct Run *run, int segment);
/** True when the drawing has a caution at a segment. */
bool flag_at(const struct Caution *caution, int segment);
/** True when it has one for a whole run. */
bool flag_of_run(const struct Caution *caution, const struct Run *run);
/** What a caution says in a few words. */
const struct Say *flag_short(const struct RouteLayout *layout, int index);
/** True when it bites between two segments, or on a run that begins or ends there. */
bool flag_in_strip(const struct RouteLayout *layout, int caution, int first, int last);

/* ---- drawing ---- */

/** A sign with its upper left corner at the place, `scale` times its box. */
void sign_draw(struct Drawing *drawing, enum Sign sign, double x_mm, double y_mm, double scale);
enum Saying sign_word(enum Sign sign);

/** A piece of a way. */
struct WayPiece {
    double x1_mm, y1_mm, x2_mm, y2_mm;
    double cover_mm; /**< of ground over it as drawn, 0 none */
    double scale;    /**< 1 on the sheet */
};
/** What lies along a way of this kind, without the cable. */
void dress_way(struct Drawing *drawing, enum Way way, struct WayPiece place);
/** A wall in section, upright, with the hole's place left to the cable; `kind` may be WALL_COUNT. */
void dress_wall(struct Drawing *drawing, enum WallKind kind, struct DrawBox box);
/** Of the circle about a number: three figures need a larger one. */
double number_radius(double radius_mm, int number);
/** The numbered circle. */
void draw_number(struct Drawing *drawing, double x_mm, double y_mm, double radius_mm, int number, bool governs);
/** The square of an end with its letter, centred. */
void draw_end(struct Drawing *drawing, const char *letter, double x_mm, double y_mm, double half_mm);
/** A word in a frame, as on a plate; black where `alarm`, dashed where `asks`. Returns its width. */
double draw_plate(struct Drawing *drawing, double x_mm, double base_mm, double size_mm, const char *word, bool alarm,
                  bool asks);
/** Text on white paper of its own. */
void draw_text_on_white(struct Drawing *drawing, struct TextStyle style, double x_mm, double y_mm, const char *text);
/** Armour and earth core at an end, each with its plate, on one line. Returns where it ends. */
double draw_earth_plates(const struct RouteLayout *layout, struct Drawing *drawing, const struct PlanRun *run,
                         bool finish, double x_mm, double base_mm, double size_mm);

/** The same one under the other, left of `right_mm`. Returns their height. */
double draw_earth_column(const struct RouteLayout *layout, struct Drawing *drawing, const struct PlanRun *run,
                         bool finish, double x_mm, double top_mm, double size_mm, double right_mm);

/** The line that a run is drawn with: pattern tells them apart. */
struct Pen layout_cable_pen(const struct RouteLayout *layout, int run);
/** How far a run's line lies from the middle of them, mm, to the lower side. */
double layout_cable_offset(const struct RouteLayout *layout, int run);
/** Half the width of them all, mm; 0 for one run. */
double layout_cable_spread(const struct RouteLayout *layout);

/** Profile, between two heights on the sheet. */
void profile_draw(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip, double top_mm);
/** Height that it takes beside what is drawn to scale. */
double profile_pads(const struct RouteLayout *layout);

/** Volts on the main run behind a boundary; 0 where it does not go. */
double volts_at(const struct RouteLayout *layout, int boundary);

/** The strip's block: plates, profile, voltage, bar, fan, figures at the breaks, heads of the columns. */
double strip_block_height(const struct RouteLayout *layout, const struct Strip *strip);
void strip_block_draw(struct RouteLayout *layout, struct Drawing *drawing, int index, double top_mm);
/** The heads alone, where the bands go on on a further sheet. */
double strip_heads_height(const struct RouteLayout *layout, const struct Strip *strip);
void strip_heads_draw(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                      double top_mm);

/** Bands under a strip, one after the other; some have nothing to say of this strip and take no height. */
int bands_count(const struct RouteLayout *layout);
double band_height(const struct RouteLayout *layout, const struct Strip *strip, int band);
void band_draw(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip, int band,
               double top_mm);
/** The capacity of the main run as steps against its device. */
#define CAPACITY_HEIGHT 20.0
void capacity_draw(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip, double top_mm);

/** What stands under the bands: ends, short cautions, signs used with their counts. */
enum Below { BELOW_ENDS, BELOW_FLAGS, BELOW_SIGNS, BELOW_COUNT };
double below_height(const struct RouteLayout *layout, const struct Strip *strip, enum Below below);
void below_draw(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip, enum Below below,
                double top_mm);

/* ---- the way seen from above ---- */

/** Makes layout->view when a heading was surveyed. */
void layout_view(struct RouteLayout *layout);
/** Chooses its scale by the room for it, but for no less than it needs, and gives its height. */
double layout_view_height(struct RouteLayout *layout, double room_mm);
void layout_draw_view(struct RouteLayout *layout, struct Drawing *drawing, double top_mm);

/* ---- sheets ---- */

/** Sheets being filled from the top. */
struct SheetFlow {
    struct RouteLayout *layout;
    struct Drawing *drawing;
    const struct Strip *strip;       /**< that the sheet shows, NULL none */
    int sheet;                       /**< from 1; 0 before the first */
    int sheet_count;                 /**< 0 while it is not known */
    double y_mm;                     /**< where the next block goes, on the whole drawing */
    bool counts;                     /**< sheets alone: nothing is drawn */
    const struct SheetsTaken *taken; /**< NULL: the drawing keeps them all */
};
/** Heights of heading and foot. */
double sheet_heading_height(const struct RouteLayout *layout, bool first);
double sheet_foot_height(void);
/** Begins the next sheet: paper, heading and foot. */
void sheet_next(struct SheetFlow *flow);
/** True when a block of this height still has room on the sheet. */
bool sheet_has_room(const struct SheetFlow *flow, double height_mm);
/** What is left of it. */
double sheet_room(const struct SheetFlow *flow);
void sheet_end(struct SheetFlow *flow);
/** "DO NOT BUILD YET: ..." */
const struct Say *verdict_said(const struct RouteLayout *layout);
/** Cable, device, load, drop of the only run; how many lines there are. */
enum { FACTS_MOST = 6 };
struct Fact {
    enum Saying name;
    const char *text;
    bool bold;
};
int sheet_facts(const struct RouteLayout *layout, struct Fact *facts);
/** "feeder: 3-core 10 mm² BS5467, RCBO B 32 A, PASS" */
const struct Say *run_said(const struct RouteLayout *layout, const struct PlanRun *run);
/** The table of runs, where there are several. */
double runs_table_height(const struct RouteLayout *layout);
void runs_table_draw(const struct RouteLayout *layout, struct Drawing *drawing, double top_mm);

#endif
