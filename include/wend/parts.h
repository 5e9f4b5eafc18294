/** What to order, counted from the plan. */
#ifndef WEND_PARTS_H
#define WEND_PARTS_H

#include "wend/base.h"
#include "wend/plan.h"

struct Part {
    const char *code;        /**< our own, stable: "cable-BS5467-3x10", "gland-CW-20" */
    const char *description; /**< size first, no maker */
    const char *standard;    /**< "BS 5467"; "" when none */
    double quantity;         /**< in `unit`, with spare */
    const char *unit;        /**< "m" | "each" | "pack" */
    double needed;           /**< without spare, in the same unit (pieces for packs) */
    int pack;                /**< pieces in a pack, 0 when sold singly */
    int packs;               /**< packs to buy, 0 when sold singly */
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
