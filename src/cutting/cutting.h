/** A cutting plan: which drums, coils and offcuts to open for a list of pieces, and what to cut from each.
 *
 * Every piece is one length without a joint, and a cut takes no length away. Of all ways to cut the pieces the plan is,
 * in this order of weight:
 *  1. the one that leaves the least length of pieces uncut (only where limited stock runs out; else nothing is left);
 *  2. the one that buys the least length: the sum over the drums and coils opened of their whole lengths. Offcuts at
 *     hand cost nothing; what stays over of one is no waste. Waste is bought length less what is cut from it;
 *  3. the one with the fewest drums and coils;
 *  4. the one that uses the fewest offcuts.
 * Where 1 leaves pieces uncut, 2 to 4 hold for the pieces that are cut.
 *
 * The search is exact but bounded: `most_steps` sets an end to it, no clock is read. When it ends before all is proved,
 * the plan is the best one found, `proved` is false, and the bounds say how far from the best it may be.
 * The same job gives the same plan, and the order in which pieces or stock are listed changes none of the four sums.
 *
 * Pure functions; lengths are whole millimetres (any one whole unit does: the sums come in the same). */
#ifndef WEND_CUTTING_H
#define WEND_CUTTING_H

#include "base/base.h"

#include <stdint.h>

/** What a job may hold; more is a fault. */
enum {
    CUTTING_PIECES_MOST = 4000,
    CUTTING_STOCK_MOST = 100,
    CUTTING_OFFCUTS_MOST = 500,
    CUTTING_LENGTH_MOST_MM = 10000000,
    CUTTING_KINDS_MOST =
        1000, /**< different lengths, of pieces and stock together; with more only quick rules are tried */
    CUTTING_UNLIMITED = -1,
    CUTTING_PRICE_UNKNOWN = -1,
};

/** A piece that is wanted. */
struct CuttingPiece {
    const char *name; /**< whose it is; the plan speaks of pieces by index, the name is the caller's */
    int length_mm;    /**< 1..CUTTING_LENGTH_MOST_MM */
};

/** Drums, coils or duct lengths that can be bought. */
struct CuttingStock {
    const char *name;
    int length_mm; /**< of one, 1..CUTTING_LENGTH_MOST_MM */
    int available; /**< how many can be had, 0 or more, or CUTTING_UNLIMITED */
    int64_t price; /**< of one, in the smallest coin, 0 or more, or CUTTING_PRICE_UNKNOWN. Of stocks of the same length
                      the cheaper is opened first (unknown last, then as listed); nothing else depends on the price */
};

/** A length that is at hand: there is one of it, and it costs nothing. */
struct CuttingOffcut {
    const char *name;
    int length_mm; /**< 1..CUTTING_LENGTH_MOST_MM */
};

/** What is to be cut, and from what. All arrays belong to the caller. */
struct CuttingJob {
    int piece_count;
    const struct CuttingPiece *pieces;
    int stock_count;
    const struct CuttingStock *stock;
    int offcut_count;
    const struct CuttingOffcut *offcuts;
    int64_t most_steps; /**< of the search, 0 or more; 0 takes CUTTING_STEPS_USUAL. A step is a node of the tree, or as
                           much work in one as a node of an ordinary job takes */
};

/** Steps of the search when the job does not say: some seconds at the worst, for hundreds of pieces. */
enum { CUTTING_STEPS_USUAL = 20000 };

/** What is wrong with a job. */
enum CuttingFault {
    CUTTING_GOOD,
    CUTTING_TOO_MANY,       /**< more pieces, stock or offcuts than the limits above, or a negative count */
    CUTTING_PIECE_LENGTH,   /**< a piece's length is out of range; `fault_index` says which */
    CUTTING_STOCK_LENGTH,   /**< a stock's length is out of range */
    CUTTING_STOCK_COUNT,    /**< a stock's number or price is negative and not one of the two words for it */
    CUTTING_OFFCUT_LENGTH,  /**< an offcut's length is out of range */
    CUTTING_NEGATIVE_STEPS, /**< most_steps is negative */
};

/** One drum, coil or offcut that is opened, and what is cut from it. */
struct CuttingOpened {
    bool bought;       /**< true: `source` is an index into job->stock; false: into job->offcuts */
    int source;        /**< which stock or offcut */
    int length_mm;     /**< its whole length */
    int used_mm;       /**< sum of the pieces cut from it */
    int left_mm;       /**< length_mm - used_mm, never negative */
    int piece_count;   /**< at least 1 */
    const int *pieces; /**< indices into job->pieces, longest first, then in the order of the job */
};

/** The plan. All that it points to lies in the arena. */
struct CuttingPlan {
    enum CuttingFault fault; /**< CUTTING_GOOD, or all below is zero but `fault_index` */
    int fault_index;         /**< which piece, stock or offcut is at fault, from 0; 0 where that says nothing */

    int opened_count;
    const struct CuttingOpened *opened; /**< bought first, longest first; like ones together */

    int impossible_count;
    const int *impossible; /**< indices of pieces longer than any stock that can be had and any offcut */
    int uncut_count;
    const int *uncut; /**< indices of pieces that limited stock does not reach for, impossible ones not among them */

    int64_t uncut_mm;  /**< sum of the uncut pieces */
    int64_t bought_mm; /**< sum of the whole lengths bought */
    int64_t waste_mm;  /**< bought_mm less what is cut from bought lengths */
    int drums;         /**< how many drums and coils are bought */
    int offcuts_used;  /**< how many offcuts are opened */
    const int *buy;    /**< job->stock_count numbers: how many of each stock to buy */
    bool price_known;  /**< every stock that is bought has a price */
    int64_t price;     /**< of all that is bought, in the smallest coin; 0 when not known */

    bool proved;            /**< no better plan exists, in all four sums */
    int64_t bound_uncut_mm; /**< no plan leaves less uncut */
    int64_t bound_mm;       /**< no plan that cuts these pieces buys less than this */
    int bound_drums;        /**< none that buys bought_mm has fewer drums */
    int bound_offcuts;      /**< none with that length and number of drums uses fewer offcuts */
    int64_t steps;          /**< that the search took */
};

/** The best plan for the job, in the arena. NULL when memory failed. A faulty job gives a plan that names its fault. */
const struct CuttingPlan *cutting_plan(struct Arena *arena, const struct CuttingJob *job);

#endif
