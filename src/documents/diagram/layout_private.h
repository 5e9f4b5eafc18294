/** From a plan to a drawing: the run as an unfolded elevation, distance along the cable across and height up.
 *
 * The order of work: heights and ground (layout_heights), widths, scale and strips (layout_scale), what the boxes say
 * (layout_labels, layout_label_stretch, _work, _end), where the boxes go (layout_slots), the scale up (layout_up), then
 * blocks on sheets from top to bottom (layout_blocks): strips with their pulls and ribbon, the way seen from above
 * (layout_view), the legend, other ribbons, the cautions (layout_flags). */
#ifndef WEND_LAYOUT_PRIVATE_H
#define WEND_LAYOUT_PRIVATE_H

#include "drawing_private.h"

#include "plan/plan.h"
#include "plan/say.h"
#include "takeoff/parts.h"

/* ---- the sheet, A4 lying, mm ---- */
#define SHEET_WIDTH  297.0
#define SHEET_HEIGHT 210.0
#define SHEET_MARGIN 10.0
#define FRAME_LEFT   SHEET_MARGIN
#define FRAME_RIGHT  (SHEET_WIDTH - SHEET_MARGIN)
#define INNER_LEFT   (FRAME_LEFT + 3.0)
#define INNER_RIGHT  (FRAME_RIGHT - 3.0)
/* where the run itself may be drawn; left of it the height axis and the start, right of it the end */
#define WAY_LEFT  (INNER_LEFT + 23.0)
#define WAY_RIGHT (INNER_RIGHT - 10.0)

#define TYPE_SMALL 2.8
#define TYPE_PLAIN 3.0
#define LINE_PITCH 3.6 /* for small type */
#define NAME_PITCH 3.8 /* for plain type: browsers round the height of a line up to whole dots */
/* label boxes */
#define BOX_PAD_TOP    1.6
#define BOX_PAD_BOTTOM 2.0
#define FLAG_INDENT    3.8 /* from a flag to its numbers */
/* an end's square: half its side, and how far from the way's own end it stands */
#define END_HALF  2.4
#define END_REACH 6.5

enum Ground { GROUND_NONE, GROUND_KNOWN, GROUND_LEVEL };

/** A segment as it is drawn. */
struct Stretch {
    const struct PlanSegment *segment;
    int number; /**< from 1, as in the circle */
    double length_m;
    double from_m, to_m; /**< heights as drawn, above the level of the start */
    enum Ground ground;
    double ground_from_m, ground_to_m; /**< level of the ground over or under it */
    double width_mm;
    bool widened, shortened; /**< not to scale: too short to draw, or cut by a break */
    double x_mm;             /**< left end on its sheet */
};

/** A boundary at which at least one run begins or ends. */
struct RouteEnd {
    int boundary;       /**< 0 before the first stretch, n behind the n-th */
    const char *letter; /**< A, B, ... as in the square */
};

#define LABEL_LINES_MOST 21
#define FLAG_LINES_MOST  2
/* Boxes side by side in one row, and with a second row hung below through gaps in the first. */
#define ONE_ROW_MOST  8
#define TWO_ROWS_MOST 14

/** The box that says what a stretch or an end is. */
struct Label {
    bool is_end;
    const struct Stretch *stretch; /**< of a stretch's box */
    const struct RouteEnd *end;    /**< of an end's box */
    const char *sign;              /**< number or letter */
    bool governs;
    int name_count, line_count;
    int strong_count; /**< of the lines, how many at the end are in strong type */
    bool cut;         /**< there was no room for some line */
    int flag_count;   /**< lines of flag numbers */
    const char *flags[FLAG_LINES_MOST];
    const char *names[2];
    const char *lines[LABEL_LINES_MOST];
    int row;         /**< 0 or 1 */
    double at_mm;    /**< where on the run its leader begins */
    double left_mm;  /**< the box */
    double entry_mm; /**< where the leader meets the box */
};

/** Stretches drawn in one line from left to right. */
struct Strip {
    int first, last; /**< stretches */
    double across;   /**< its scale: 1 to this */
    int label_count;
    struct Label *labels; /**< in order along the run: stretches, and the ends that lie in the strip */
    double box_width_mm;
    int row_count;
    double row_height_mm[2];
    int chainage_rows;    /**< 1 or 2 rows of running metres */
    double low_m, high_m; /**< of everything drawn in it */
};

struct RouteLayout {
    struct Arena *arena;
    const struct Plan *plan;
    const struct PartsList *parts; /**< NULL: not counted */
    enum Language language;
    int stretch_count;
    struct Stretch *stretches;
    int end_count;
    struct RouteEnd *ends;
    int labels_most; /**< boxes in a strip */
    int strip_count;
    struct Strip *strips;
    int ribbon_run;         /**< whose ribbon stands within the strips, -1 none: the power run with the least room */
    bool ribbon_apart;      /**< there is no room for it within the strips: it stands in blocks of its own */
    bool too_high;          /**< a strip is higher than a sheet all the same */
    struct View *view;      /**< the way seen from above, NULL when no heading was surveyed */
    double *caution_row_mm; /**< heights of the rows of the list of cautions, two cautions in each */
    double across, up;      /**< the scales: 1 to this; across: of the coarsest strip */
    double sign_radius_mm;  /**< of the numbered circles */
    bool known_ground, level_ground;
    bool stepped;  /**< the rises in the file leave out the way into the ground */
    bool deepened; /**< a cover is drawn deeper than the scale */
    bool widened, shortened;
    bool failed;
};

/** The whole drawing; NULL when memory failed. */
const struct Drawing *layout_drawing(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                     enum Language language);

/** Fills in the stretches' heights and the ground; covers are drawn no shallower than `layout->up` lets one see. */
void layout_heights(struct RouteLayout *layout);
/** Finds the ends. */
void layout_ends(struct RouteLayout *layout);
/** Chooses the scale across and breaks the run into strips of at most `layout->labels_most` boxes. */
void layout_scale(struct RouteLayout *layout);
/** Chooses the scale up: the finest with which no more sheets are needed. False when a strip is higher than a sheet. */
bool layout_scale_up(struct RouteLayout *layout);
/** True when the first strip stands under the table of runs. */
bool layout_begins_on_first_sheet(const struct RouteLayout *layout);
/** Sheets that the drawing needs with its present scales. */
int layout_sheet_count(const struct RouteLayout *layout);
/** Writes the boxes' texts and breaks them into lines. */
void layout_labels(struct RouteLayout *layout, struct Strip *strip);
/** Height of the names at the head of a box, beside its number or letter. */
double layout_box_head(const struct RouteLayout *layout, const struct Label *label);
/** Gives each box its place. No two overlap and no two leaders cross. */
void layout_slots(struct Strip *strip);
/** The scales in order: 1, 2, 2.5, 5, 10, 20, 25, 50 ... for steps from 0. */
double layout_standard_scale(int step);
enum { SCALE_FIRST = 5, SCALE_STEPS = 29 }; /* from 1:20 */
/** Drawn size of a height difference, mm. */
double layout_up_mm(const struct RouteLayout *layout, double height_m);
/** Index of the end at a boundary, -1 when no run begins or ends there. */
int layout_end_at(const struct RouteLayout *layout, int boundary);
/** The boundary at which a run begins or ends. */
int layout_run_boundary(const struct Run *run, bool finish);
/** True when the segment governs any run. */
bool layout_governs(const struct Plan *plan, int segment);
/** "12.4", with the decimals that the route needs; metres. */
const char *layout_metres(const struct RouteLayout *layout, double value_m);
/** What a plan says, in the signs of paper; a figure and its unit stay on one line. */
const char *layout_said(const struct RouteLayout *layout, const struct Say *said);

/** Finds out how many rows the running metres of a strip need. */
void layout_chainage_rows(const struct RouteLayout *layout, struct Strip *strip);
#define CHAINAGE_PITCH 3.6 /* between its rows, mm */
/** Draws them above the line at `line_mm`. */
void layout_draw_chainage(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                          double line_mm);
/** What lies where in a strip, mm from its top. */
struct StripPlaces {
    double heading_mm;   /**< base line of the heading */
    double chainage_mm;  /**< the line of running metres; the numbers stand above it */
    double bracket_mm;   /**< the bracket over a governing stretch */
    double elevation_mm; /**< top of the field that the run is drawn in */
    double zero_mm;      /**< where the level of the start would be, whether in the field or not */
    double field_end_mm; /**< bottom of that field: leaders begin to slant */
    double pulls_mm;     /**< top of the row of pulls */
    double ribbon_mm;    /**< top of the ribbon of capacity and voltage */
    double row_mm[2];    /**< tops of the rows of boxes */
    double end_mm;       /**< the strip's bottom */
};
struct StripPlaces layout_strip_places(const struct RouteLayout *layout, const struct Strip *strip);
/** Draws a strip with its top at `top_mm`. */
void layout_draw_strip(struct RouteLayout *layout, struct Drawing *drawing, int index, double top_mm);
/** Draws the leaders, which begin at `leader_top_mm`, one for each label, and the boxes. What is drawn after them may
 * cover a leader. */
void layout_draw_labels(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                        const struct StripPlaces *places, const double *leader_top_mm);

/** A piece of a way, drawn along the line from the first point to the second. */
struct SignPlace {
    double x1_mm, y1_mm, x2_mm, y2_mm;
    double tape_mm;   /**< how far above the cable the marker tape is drawn; 0: no room for it */
    double spread_mm; /**< half the width of the cables that lie side by side */
};
/** The sign of a way and of the insulation at it, without the cable. */
void layout_draw_sign(struct Drawing *drawing, enum Way way, enum Insulation insulation, struct SignPlace place);
/** The ground: a line with strokes below it when its level is known, a broken line when it is only drawn level. */
void layout_draw_ground(struct Drawing *drawing, enum Ground ground, double x1_mm, double y1_mm, double x2_mm,
                        double y2_mm, double stroke_mm);
/** The square of an end with its letter, centred; `into` decides what is drawn around it. */
void layout_draw_end(struct Drawing *drawing, const char *letter, double x_mm, double y_mm);
/** The numbered circle. */
void layout_draw_number(struct Drawing *drawing, double radius_mm, double x_mm, double y_mm, const char *number);
/** The gland in a wall at `wall_mm`, which lies on the `side` (-1 left, 1 right) of the cable. */
void layout_draw_gland(struct Drawing *drawing, double wall_mm, double y_mm, double side);
/** A break in the cable: two slanting strokes. */
void layout_draw_break(struct Drawing *drawing, double x_mm, double y_mm);

/* ---- cables that share the way ---- */

/** The line that a run is drawn with: pattern tells them apart. */
struct Pen layout_cable_pen(const struct RouteLayout *layout, int run);
/** How far a run's line lies from the middle of them, mm, to the lower side. */
double layout_cable_offset(const struct RouteLayout *layout, int run);
/** Half the width of them all, mm; 0 for one run. */
double layout_cable_spread(const struct RouteLayout *layout);
/** True when the run follows the segment. */
bool layout_follows(const struct RouteLayout *layout, int run, int segment);

/* ---- what costs capacity ---- */

enum Condition {
    CONDITION_SUN,
    CONDITION_INSULATION,
    CONDITION_GROUPED,
    CONDITION_WARM,
    CONDITION_GROUND,
    CONDITION_FUSE,
    CONDITION_COUNT
};
#define CONDITION_PITCH 4.0 /* between signs side by side, mm */
/** The costliest conditions first, each once; at most `most`. Returns how many. */
int layout_conditions(const struct Rating *rating, enum Condition *conditions, int most);
/** SAY_SIGN_SUN */
enum Saying layout_condition_word(enum Condition condition);
/** A sign of 3.5 mm by 3.5 mm around its centre. */
void layout_draw_condition(struct Drawing *drawing, enum Condition condition, double x_mm, double y_mm);

/* ---- the ribbon: what each stretch carries against the device, and the voltage along the run ---- */

/** The rating of a run in a segment, NULL when it has none there. */
const struct Rating *layout_rating_at(const struct PlanRun *run, int segment);
/** The power run with the least room over its device, -1 when there is none. */
int layout_tightest_run(const struct Plan *plan);
/** Height of a run's ribbon under a strip, mm; 0 when the run is not in it. */
double layout_ribbon_height(const struct RouteLayout *layout, const struct Strip *strip, int run);
void layout_draw_ribbon(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip, int run,
                        double top_mm);
/** The same as a block of its own, with the numbers of the stretches. */
double layout_ribbon_block_height(const struct RouteLayout *layout, const struct Strip *strip, int run);
void layout_draw_ribbon_block(struct RouteLayout *layout, struct Drawing *drawing, int strip, int run, double top_mm);

/* ---- how the cable is drawn in ---- */

/** Height of the row of pulls in a strip, mm; 0 when nothing is drawn in there. */
double layout_pulls_height(const struct RouteLayout *layout, const struct Strip *strip);
void layout_draw_pulls(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                       double top_mm);
/** True when any run is drawn in anywhere. */
bool layout_any_pull(const struct Plan *plan);
/** An arrow along the row, from and to, mm. */
void layout_draw_arrow(struct Drawing *drawing, struct Pen pen, double from_mm, double to_mm, double y_mm);
/** A draw pit: one that is there, or one that would help. */
void layout_draw_pit(struct Drawing *drawing, double x_mm, double y_mm, bool surveyed);

/* ---- cautions ---- */

/** "8-11, 21": the numbers of the cautions for a place, "" when there are none. */
const char *layout_flag_numbers(const struct RouteLayout *layout, const char *run, int stretch);
/** A flag whose pole stands at the place. */
void layout_draw_flag(struct Drawing *drawing, double x_mm, double y_mm, double height_mm);
#define FLAG_HEIGHT 3.4
/** Measures the rows of the list of cautions. */
void layout_cautions(struct RouteLayout *layout);
int layout_caution_rows(const struct RouteLayout *layout);
#define CAUTION_HEAD 6.0
void layout_draw_caution_head(struct Drawing *drawing, double top_mm);
void layout_draw_caution_row(const struct RouteLayout *layout, struct Drawing *drawing, int row, double top_mm);

/* ---- the way seen from above ---- */

/** Makes layout->view when a heading was surveyed. */
void layout_view(struct RouteLayout *layout);
double layout_view_height(const struct RouteLayout *layout);
void layout_draw_view(struct RouteLayout *layout, struct Drawing *drawing, double top_mm);

double layout_legend_height(const struct RouteLayout *layout);
void layout_draw_legend(struct RouteLayout *layout, struct Drawing *drawing, double top_mm);

/** Sheets being filled from the top. */
struct SheetFlow {
    struct RouteLayout *layout;
    struct Drawing *drawing;
    int sheet;       /**< from 1; 0 before the first */
    int sheet_count; /**< 0 while it is not known */
    double y_mm;     /**< where the next block goes, on the whole drawing */
};
/** Begins the next sheet: paper, frame, heading and foot. */
void layout_next_sheet(struct SheetFlow *flow);
/** Makes room for a block: on this sheet if it fits, else on the next. Returns the block's top. */
double layout_place(struct SheetFlow *flow, double height_mm);
/** Room for blocks on a sheet, mm; the first has the larger heading. */
double layout_sheet_room(const struct RouteLayout *layout, bool first);
/** Height of a row of the table of runs, and of what stands below the table. */
#define RUN_ROW 4.7
#define RUN_GAP 3.0
/** The table of runs, row by row. */
void layout_draw_run_head(struct SheetFlow *flow);
void layout_draw_run(struct SheetFlow *flow, int run);
/** Draws everything, sheet by sheet. */
void layout_fill_sheets(struct SheetFlow *flow);
/** Ends the last sheet. */
void layout_end_sheet(struct SheetFlow *flow);

#endif
