/** The parts of many jobs as one order.
 *
 * What a job's own list asks for, its spare included, goes whole into the order: each bag must be complete at its own
 * job, however far the others are. Only the rounding to whole packs is done anew, over all jobs, so that merging never
 * takes more packs than ordering apart, and often fewer. Lines are one article only when everything that the counter
 * picks by is the same; equal codes with different descriptions stay apart. Pieces of cable are listed one by one: each
 * is a length without a joint, and their sum is not. Where a job names what they can be cut from, those of all jobs are
 * cut together (see cutting/cutting.h): whole lengths that one names serve all, offcuts that two name are the same
 * ones. Prices are put on the merged lines, so that an order pays for what it buys and not for what the jobs would buy
 * apart.
 *
 * Pure functions; everything lives in the arena, or in the lists that were merged. */
#ifndef WEND_ORDER_LIST_H
#define WEND_ORDER_LIST_H

#include "base/base.h"
#include "plan/plan.h"
#include "prices.h"
#include "takeoff/parts.h"

/** One job whose parts are ordered. */
struct OrderJob {
    const char *name;                     /**< on the bag's label; in the merged order no two are the same */
    const char *title, *site, *reference; /**< "" when not given */
    enum Verdict verdict;                 /**< of its plan */
    bool pass;                            /**< no check of its plan fails */
    const struct Say *verdict_text;
    const struct PartsList *parts;
    const struct PriceList *prices; /**< of the route's own; NULL without one */
};

/** One length without a joint. */
struct OrderPiece {
    int job;
    double length_m;
    const struct PartUse *use; /**< which run; NULL: not said */
};

/** One article of the order. */
struct OrderLine {
    enum Aisle aisle;
    const char *code;
    const struct Say *description;
    const char *standard, *unit;
    double needed;    /**< without spare, all jobs */
    double quantity;  /**< with each job's own spare, all jobs; in `unit` */
    double buy;       /**< to buy, in whole packs where it comes in packs; in `unit` */
    double at_hand;   /**< cut from offcuts, so that it is not bought; in `unit` */
    double over;      /**< buy and at_hand less quantity: what no job asked for */
    int pack;         /**< in a pack, 0 when sold singly */
    long packs;       /**< packs to buy, 0 when sold singly */
    long packs_apart; /**< packs that the jobs would buy each for itself; never fewer */
    const char *pack_word;
    double *by_job;  /**< `quantity` split: one number a job; their sum is `quantity` */
    int piece_count; /**< of cable; 0 for what is counted */
    const struct OrderPiece *pieces;
    const struct PartsCut *plan; /**< over all jobs; NULL where nothing is cut from whole lengths */
    int whole_lengths;           /**< drums, coils or lengths to buy by the cutting plan; 0 without one */
    const struct Say *buy_text;  /**< "1 drum of 100 m", where a cutting plan says so; NULL */
    const struct Say *cut; /**< "cut 67 m (barn: feeder), 41 m (shed: feeder), each one length without a joint"; NULL */
    const struct Say *note; /**< what the jobs' lists remark, each remark once; NULL: nothing */
    bool by_package;        /**< unit_quantity counts packs of `pack`; else it is `buy` */
    const char *unit_code;  /**< UN/ECE Rec 20 or 21 for unit_quantity; "" when no code is known here */
    double unit_quantity;   /**< to buy, counted in unit_code */
};

struct OrderList {
    int job_count;
    const struct OrderJob *jobs;
    enum Verdict verdict; /**< the worst of its plans' */
    bool pass;            /**< no plan fails a check */
    int count;
    const struct OrderLine *lines; /**< in order of picking, then as they first come up */
    int note_count;
    const struct Say *const *notes; /**< what the lists do not count, each once */
    const struct PartPrice *prices; /**< one a line; NULL when neither the order nor any route has a price list */
    int total_count;
    const struct PartsTotal *totals; /**< one a currency; documents leave out those without a line */
    int unpriced_count;
    const struct Say *unpriced_text; /**< what is in no total; NULL when nothing, or without a price list */
    const struct Say *prices_note;   /**< which price lists were not read; NULL when all were */
};

/** The order's own price list. */
struct OrderPrices {
    const struct PriceList *list; /**< NULL: none */
    const struct Say *note;       /**< why the list that the order names is not here; NULL */
};

/** NULL when memory failed. `jobs` may go afterwards; the lists of parts and the texts must stay. `prices` (NULL: none)
 * overrides the jobs' own price lists, article by article; what two of those price differently has no price. */
const struct OrderList *order_merge(struct Arena *arena, const struct OrderJob *jobs, int count,
                                    const struct OrderPrices *prices);

#endif
