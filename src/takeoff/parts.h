/** What to order, counted from the plan. */
#ifndef WEND_PARTS_H
#define WEND_PARTS_H

#include "base/base.h"
#include "plan/plan.h"

#include <stdint.h>

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
/** "Glands and terminations"; NULL out of range. */
const struct Say *parts_aisle_said(enum Aisle aisle);

/** Whom an article is for. */
enum PartFor {
    PART_FOR_ALL, /**< the job, not one run */
    PART_FOR_RUN,
    PART_FOR_ELECTRODE,
    PART_FOR_BONDING,
    PART_FOR_PIECE /**< a length that is cut from it */
};
enum PartPlace { PART_NOWHERE, PART_AT_START, PART_AT_FINISH, PART_ON_SEGMENT };

/** One place that an article goes to. */
struct PartUse {
    enum PartFor whom;
    const struct Run *run; /**< of PART_FOR_RUN */
    enum PartPlace place;
    const struct Segment *segment; /**< of PART_ON_SEGMENT */
    const struct PartPiece *piece; /**< of PART_FOR_PIECE */
};

struct Part {
    enum Aisle aisle;
    const char *code;              /**< our own, stable: "cable-BS5467-3x10", "gland-CW-20" */
    const struct Say *description; /**< size first, no maker */
    const struct Say *fitted;      /**< in few words, for who fits it; NULL: `description` */
    const char *standard;          /**< "BS 5467"; "" when none */
    double quantity;               /**< in `unit`, with spare */
    const char *unit;              /**< a code: "m" | "each" | "pack" | "kg" */
    double needed;                 /**< without spare, in the same unit (pieces for packs) */
    int pack;                      /**< pieces in a pack, 0 when sold singly */
    int packs;                     /**< packs to buy, 0 when sold singly */
    const char *pack_word;         /**< a code: "pack" | "kit" | "coil" | "length" | "roll" | "bag" | "box" | "tub" */
    double length_m;               /**< of one piece, for cables; 0 else */
    int use_count;
    const struct PartUse *uses; /**< all of them, each once; what goes to one run stands together */
    const struct Say *note;     /**< NULL: none */
    const char *article;        /**< the code that it is cut and priced by; NULL: `code` itself */
    const struct Say *gland;    /**< of a gland what a drawing calls it, "BW-20"; NULL: none */
    bool sleeves_cores;         /**< it marks what a core is for */
};

/** A length of an article that is wanted in one piece. */
struct PartPiece {
    const char *name; /**< the run, or the stretches of duct, that it is for: "yard + slope" */
    double length_m;
    int part, parts; /**< of a duct longer than any length: which of how many that are coupled; 0 in one piece */
};

/** One drum, coil or offcut that is opened, and what is cut from it. */
struct PartOpened {
    bool bought; /**< false: an offcut at hand */
    double length_m, used_m, left_m;
    int piece_count;
    const int *pieces;            /**< indexes into PartsCut.pieces, longest first */
    const struct Say *what;       /**< "drum of 100 m", "offcut of 12 m" */
    const struct Say *piece_text; /**< "feeder 67 m, kiln 30 m" */
    const struct Say *left_text;  /**< "3 m" */
};

/** What a whole length is called. */
enum PartWhole { PART_DRUMS, PART_LENGTHS };

/** How one article is cut: what was asked, and what was decided. Joints are never planned. */
struct PartsCut {
    /* asked */
    const char *code;              /**< of the article, as Part.article */
    const struct Say *description; /**< as Part.description */
    enum PartWhole whole;          /**< what a whole length is called */
    int piece_count;
    const struct PartPiece *pieces;
    int length_count;
    const double *lengths_m; /**< of whole drums, coils or lengths that can be bought */
    const int *have;         /**< how many of each, 0: as many as are wanted; NULL: of all as many as are wanted */
    int offcut_count;
    const double *offcuts_m; /**< at hand, one of each */

    /* decided */
    bool planned; /**< false: nothing was named to cut from, or `note` says why not; all below is zero, NULL */
    int opened_count;
    const struct PartOpened *opened; /**< bought first, longest first */
    int by_metre_count;
    const int *by_metre; /**< pieces that nothing named here reaches for, or too few of it: to be bought by the metre */
    double cut_m;        /**< sum of the pieces that are cut from what is opened */
    double bought_m;     /**< sum of the whole lengths bought */
    double waste_m;      /**< of what is bought; the rest of an offcut is none */
    double bound_m;      /**< no plan that cuts these pieces buys less */
    int whole_lengths;   /**< drums, coils or lengths bought */
    int offcuts_used;
    bool proved;                   /**< no plan buys less, or as much in fewer whole lengths */
    const struct Say *buy_text;    /**< "1 drum of 100 m, 2 drums of 50 m"; "nothing to buy" */
    const struct Say *result_text; /**< sums, and whether they are proved, in a sentence */
    const struct Say *note;        /**< what has to be bought by the metre, and why; NULL: nothing */
};

/** What a line of the list costs by the user's own price list. */
struct PartPrice {
    bool known;
    const struct Say *why;  /**< when not known: "no price in the list"; NULL when nothing has to be bought */
    int currency;           /**< index into PartsList.totals */
    int64_t each;           /**< for one `unit`, in 10^-decimals of the currency */
    int64_t total;          /**< for the line, rounded half up to that */
    const char *unit;       /**< what `each` is for: "m", "each", "pack", "drum-100"; "line" where prices for several
                               lengths come together, so that `each` is the total */
    double base;            /**< how much of Part.unit `each` is for: 100 of "drum-100", what is in one of "pack" */
    const char *each_text;  /**< "4.35" */
    const char *total_text; /**< "291.45" */
};

/** The sum of the lines priced in one currency; currencies are never mixed. */
struct PartsTotal {
    const char *currency;        /**< "EUR" */
    int decimals, coin_decimals; /**< as in struct PriceCurrency */
    int lines;                   /**< how many lines are in it */
    int64_t amount;              /**< in 10^-decimals */
    const char *text;            /**< "345.60"; "345.6045" where prices for parts of a coin come to a part of a coin */
    const char *coin_text;     /**< "345.60": rounded half up to the smallest coin; "" where `text` is in whole coins */
    const char *rounding_text; /**< coin_text less text: "-0.0045"; "" as well */
};

/** A sentence for the crew. */
struct PartsText {
    const struct Say *said;
    bool aside; /**< a fact, and no act to tick */
};

/** What one stretch takes of work, in the very figures that the list was counted from, for the drawing and the brief.
 * A figure of 0, a code of "" and nothing said: none of it. */
struct PartsWay {
    int segment;                    /**< index into Plan.segments */
    int run;                        /**< index into Plan.runs; -1: what the stretch takes once, whoever follows it */
    int fixings;                    /**< on this stretch, without spare */
    int bend_fixings;               /**< of them those at its bends, on either side of each; the rest is at the pitch */
    int end_fixings;                /**< more of them near a termination; all of both add up to the list's */
    double spacing_m;               /**< greatest distance between two of them */
    double pitch_m;                 /**< the even distance that the count comes to, never above spacing_m */
    double near_m;                  /**< within which those near an end or a bend lie */
    double first_m;                 /**< from the start of the stretch to the first of them */
    const char *fixing_code;        /**< Part.code of what is fixed with */
    const struct Say *fixing;       /**< Part.description of that: "Hook cleat no. 8, metal, bore 20.3 mm" */
    const struct Say *fixing_short; /**< "hook cleat no. 8" */
    const struct Say *grip;         /**< what holds it in the surface: "nylon plug 7 mm and woodscrew no. 10 x 50 mm" */
    double hole_mm;                 /**< diameter of the hole through the wall */
    double drill_mm;                /**< least length of the drill that makes it */
    double sleeve_mm;               /**< outside, 0: none */
    double fall_mm;                 /**< over the wall, to the outside */
    double trench_m;                /**< length */
    double trench_width_m, trench_depth_m; /**< depth to the bottom, under the bed of sand */
    double usual_cover_m;                  /**< over it, where it has less; 0: it has enough */
    double bed_m, over_m;                  /**< of sand, under and over what lies in it; 0: none */
    double tape_m;                         /**< from the surface to the warning tape */
    double sand_m3;                        /**< in place, not what is bought */
    double spoil_m3;                       /**< left over and loose */
    int text_count;
    const struct PartsText *texts; /**< in the order of the work */
    int filled_text_count;         /**< of a duct: the first of them, those due before the cable is drawn in */
    int open_text_count; /**< in the ground: the first of them, those due before a cable is laid or drawn in */
};

struct PartsList {
    int count;
    const struct Part *parts; /**< in order of picking, aisle by aisle */
    int way_count;
    const struct PartsWay *ways; /**< by stretch; what it takes once before the runs that follow it */
    int note_count;
    const struct Say *const *notes; /**< what the list does not count, and why */
    int cut_count;
    const struct PartsCut *cuts;    /**< every cable, and every duct for which lengths are named; also without a plan */
    const struct PartPrice *prices; /**< one a part; NULL when there is no price list */
    int total_count;
    const struct PartsTotal *totals; /**< one a currency of the price list; documents leave out those without a line */
    int unpriced_count;
    const struct Say *const
        *unpriced; /**< "gland-CW-20"; with the reason behind it where there is a price that does not fit */
    const struct Say *unpriced_text; /**< all of them in a sentence; NULL when none, or without a price list */
    const struct Say *range_note;    /**< that it was counted for all of a range; NULL else */
    const struct Say *prices_note;   /**< why a price list that the route names was not used; NULL else */
};

/** True when the part goes to this end of the run: PART_AT_START or PART_AT_FINISH. */
bool parts_used_at(const struct Part *part, const struct Run *run, enum PartPlace end);
/** The cutting plan that a line buys whole lengths by, or NULL. */
const struct PartsCut *parts_cut_of(const struct PartsList *list, const struct Part *part);
/** "76 m", "12": so much of an article, by the code of its unit (Part.unit); a code that is not ours stands as it is.
 */
const struct Say *parts_amount_said(struct Arena *arena, double amount, int digits, const char *unit);
/** "2 rolls": by the code of a pack (Part.pack_word). */
const struct Say *parts_packs_said(struct Arena *arena, int packs, const char *pack_word);
/** "feeder: gable, roof-void and 2 more; link: duct": the first places of the first runs, the others counted. NULL
 * without a use. */
const struct Say *parts_uses_said(struct Arena *arena, int count, const struct PartUse *uses);
/** The runs that it is for, without where on them: "feeder, camera". NULL where it is for none by itself. */
const struct Say *parts_runs_said(struct Arena *arena, int count, const struct PartUse *uses);
/** Whom it is for alone: "feeder". NULL for PART_FOR_ALL. */
const struct Say *parts_user_said(struct Arena *arena, const struct PartUse *use);
/** Part.article, or Part.code without one. */
const char *parts_article(const struct Part *part);

/** What a length is for: "feeder"; "yard + slope (1 of 3, coupled)". */
const struct Say *parts_piece_said(struct Arena *arena, const struct PartPiece *piece);

/** The least of two PartsCut.have, where 0 is as many as are wanted. */
int parts_least_have(int one, int other);

/** As much of a list as an order asks for, in memory of its own: no prices, no work, of each part the first use alone.
 * NULL when memory failed. */
const struct PartsList *parts_kept(struct Arena *arena, const struct PartsList *list);
/** Counts. What has to be cut to length is asked for in `cuts` and not decided yet. NULL when memory failed. */
const struct PartsList *parts_count(struct Arena *arena, const struct Plan *plan);

#endif
