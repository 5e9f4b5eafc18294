/** From what is needed to what is bought: what each article is cut from, and what it costs. */
#ifndef WEND_BUYING_H
#define WEND_BUYING_H

#include "prices.h"
#include "takeoff/parts.h"

/** The counted list with every cut that it asks for decided and in its lines. NULL when memory failed. */
const struct PartsList *parts_bought(struct Arena *arena, const struct PartsList *counted);

/** Decides how to cut what the first half of `asked` asks for; the second half is not read. Of all plans the one that
 * buys the least length, then the fewest whole lengths (see cutting/cutting.h). Pure; texts and arrays lie in the arena
 * or are those of `asked`. False when memory failed. */
bool parts_cut(struct Arena *arena, const struct PartsCut *asked, struct PartsCut *out);
/** The list with the lines of each article that has a cutting plan made one, which orders what the plan opens; what no
 * drum reaches for stays a line by the metre. The cuts are handed on with the list. NULL when memory failed. */
const struct PartsList *parts_with_cuts(struct Arena *arena, const struct PartsList *list, int cut_count,
                                        const struct PartsCut *cuts);

/** The list with prices: packs by the pack or by what is in them, metres by the metre, each line by its article. What
 * is cut from whole lengths pays for the whole lengths: each by its own price where there is one ("drum-100"), else by
 * the metre. Pure; works on any list. NULL when memory failed. */
const struct PartsList *parts_priced(struct Arena *arena, const struct PartsList *list, const struct PriceList *prices);
/** "12.50" for 12500 with 3 decimals of which the coin has 2; "12.505" for 12505: noughts behind the coin's own
 * decimals are left out, nothing else. */
const char *parts_money_text(struct Arena *arena, int64_t amount, int decimals, int coin_decimals);
/** The amount in coin_decimals, rounded half up. */
int64_t parts_money_in_coin(int64_t amount, int decimals, int coin_decimals);

/** A line of the order that one list has more or less of than another, in packs or, of what is sold singly, in its
 * unit.
 */
struct PartsDifference {
    const struct Part *part; /**< of the new list; of the old one where the new has none */
    double fetch, back;      /**< one of them is 0 */
};
struct PartsDifferences {
    int count;
    const struct PartsDifference *list; /**< NULL without memory */
};
/** What to fetch and what can be brought back when `now` takes the place of `old`, which was bought. */
struct PartsDifferences parts_differ(struct Arena *arena, const struct PartsList *old, const struct PartsList *now);

#endif
