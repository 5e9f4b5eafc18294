/** What to order, counted from the plan. */
#ifndef WEND_PARTS_H
#define WEND_PARTS_H

#include "wend/base.h"
#include "wend/plan.h"

/** Where in the store an article lies: the order in which a list is picked. */
enum Aisle {
    AISLE_CABLE,
    AISLE_TERMINATIONS, /**< glands, shrouds, lugs, ferrules */
    AISLE_FIXINGS,
    AISLE_CONTAINMENT, /**< conduit, trunking, tray, ladder, catenary */
    AISLE_GROUNDWORK,  /**< duct, tape, sand, rope */
    AISLE_ENCLOSURES,  /**< enclosures and devices */
    AISLE_EARTHING,
    AISLE_LABELS,
    AISLE_SUNDRIES,
    AISLE_COUNT
};
/** "Glands and terminations"; "" out of range. */
const char *parts_aisle_word(enum Aisle aisle);

struct Part {
    enum Aisle aisle;
    const char *code;        /**< our own, stable: "cable-BS5467-3x10", "gland-CW-20" */
    const char *description; /**< size first, no maker */
    const char *standard;    /**< "BS 5467"; "" when none */
    double quantity;         /**< in `unit`, with spare */
    const char *unit;        /**< "m" | "each" | "pack" | "kg" */
    double needed;           /**< without spare, in the same unit (pieces for packs) */
    int pack;                /**< pieces in a pack, 0 when sold singly */
    int packs;               /**< packs to buy, 0 when sold singly */
    const char *pack_word;   /**< what a pack is called: "pack" | "coil" | "length" | "roll" | "bag" | "tub" */
    double length_m;         /**< of one piece, for cables; 0 else */
    const char *use;         /**< which runs and segments: "feeder: gable, roof-void" */
    const char *note;
    const char *article; /**< the code that it is cut and priced by; NULL: `code` itself */
};

/** What one stretch takes of work, in the very figures that the list was counted from, for the drawing and the brief.
 * A figure of 0 and a text of "": none of it. */
struct PartsWay {
    int segment;             /**< index into Plan.segments */
    int run;                 /**< index into Plan.runs; -1: what the stretch takes once, whoever follows it */
    int fixings;             /**< on this stretch, without spare */
    int end_fixings;         /**< more of them near a termination; all of both add up to the list's */
    double spacing_m;        /**< greatest distance between two of them */
    double pitch_m;          /**< the even distance that the count comes to, never above spacing_m */
    double first_m;          /**< from the start of the stretch to the first of them */
    const char *fixing_code; /**< Part.code of what is fixed with */
    const char *fixing;      /**< "Hook cleat no. 8" */
    const char *grip;        /**< what holds it in the surface: "nylon plug 7 mm and woodscrew no. 10 x 50 mm" */
    double hole_mm;          /**< diameter of the hole through the wall */
    double drill_mm;         /**< least length of the drill that makes it */
    double trench_m;         /**< length */
    double trench_width_m, trench_depth_m; /**< depth to the bottom, under the bed of sand */
    double sand_m3;                        /**< in place, not what is bought */
    double spoil_m3;                       /**< left over and loose */
    int text_count;
    const char *const *texts; /**< finished sentences, in the order of the work */
};

struct PartsList {
    int count;
    const struct Part *parts; /**< in order of picking, aisle by aisle */
    int way_count;
    const struct PartsWay *ways; /**< by stretch; what it takes once before the runs that follow it */
    int note_count;
    const char *const *notes; /**< what the list does not count, and why */
};

/** NULL when memory failed. */
const struct PartsList *parts_count(struct Arena *arena, const struct Plan *plan);

#endif
