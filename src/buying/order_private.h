/** What the files that make an order know of each other. */
#ifndef WEND_ORDER_PRIVATE_H
#define WEND_ORDER_PRIVATE_H

#include "buying.h"
#include "order_list.h"
#include "plan/say.h"

/** The code of a unit of Part.unit, or ""; see the head of unit_codes.c. */
const char *order_unit_code(const char *unit);
/** The code of a package of Part.pack_word, or "". */
const char *order_package_code(const char *pack_word);

/** A part with the job it comes from, while lines are made of them. */
struct OrderSource {
    const struct Part *part;
    int job;
    int line; /**< index of the line it went into */
};

/** How many lengths a part stands for; 0 for what is counted and not cut. */
int order_pieces_of(const struct Part *part);
/** What the length is for: a run, or stretches of duct; "" where that is not said. */
const char *order_piece_name(const struct OrderPiece *piece);
/** Fills in `cut` and `note` of a line from all `count` parts that went into it. */
void order_words(struct Arena *arena, const struct OrderJob *jobs, struct OrderLine *line,
                 const struct OrderSource *from, int count);
/** Copies of the jobs with names that differ: "shed", "shed (2)". NULL when memory failed. */
struct OrderJob *order_name_jobs(struct Arena *arena, const struct OrderJob *jobs, int count);
/** The list with the lengths that were asked for instead of the whole ones that it orders. NULL when memory failed. */
const struct PartsList *order_uncut(struct Arena *arena, const struct PartsList *list);
/** Cuts the pieces of a line anew over all jobs, where any of them names what to cut from: `buy`, `at_hand`, `over`,
 * `whole_lengths`, `buy_text` and `cut`. Else leaves it as it is. */
void order_cut(struct Arena *arena, const struct OrderList *list, struct OrderLine *line);
/** What the lines cost, into `list`: by the order's own list (NULL: none), then by those of the jobs. `own_note` is why
 * the order's own list was not read, or NULL. */
void order_price(struct Arena *arena, struct OrderList *list, const struct PriceList *own, const struct Say *own_note);
/** The remarks of all lists, each once, into `list`. */
void order_collect_notes(struct Arena *arena, struct OrderList *list);

#endif
