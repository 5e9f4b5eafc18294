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
    const char *unit;        /**< "m" | "each" | "pack" */
    double needed;           /**< without spare, in the same unit (pieces for packs) */
    int pack;                /**< pieces in a pack, 0 when sold singly */
    int packs;               /**< packs to buy, 0 when sold singly */
    const char *pack_word;   /**< what a pack is called: "pack" | "coil" | "length" | "roll" | "bag" | "tub" */
    double length_m;         /**< of one piece, for cables; 0 else */
    const char *use;         /**< which runs and segments: "feeder: gable, roof-void" */
    const char *note;
};

struct PartsList {
    int count;
    const struct Part *parts; /**< in order of picking: cable, terminations, fixings, duct */
    int note_count;
    const char *const *notes; /**< what the list does not count, and why */
};

/** NULL when memory failed. */
const struct PartsList *parts_count(struct Arena *arena, const struct Plan *plan);

#endif
