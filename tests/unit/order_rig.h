/** Orders made up for tests: lists drawn by lot, an order file with a given text in every field, a CSV read back. */
#ifndef WEND_ORDER_RIG_H
#define WEND_ORDER_RIG_H

#include "buying/buying.h"
#include "buying/order.h"
#include "buying/order_list.h"

#include <check.h>

/** Chance, the same on every machine. */
unsigned order_draw(unsigned *state, unsigned below);
/** A job whose list is drawn by lot: counted, packed, measured, and lengths of cable; some articles of a few. */
struct OrderJob order_random_job(struct Arena *arena, unsigned *state, const char *name);
/** `count` jobs drawn by lot from `seed`. */
struct OrderJob *order_random_jobs(struct Arena *arena, int count, unsigned seed);
/** A part of a made-up article, sold singly. */
struct Part order_part(struct Arena *arena, enum Aisle aisle, const char *code, const char *description,
                       double quantity);
/** What goes to that run, on no stretch of its own. */
const struct PartUse *order_use(struct Arena *arena, const char *run);
/** One job of the given parts, passing. */
struct OrderJob order_job(struct Arena *arena, const char *name, const struct Part *parts, int count);
/** Everything filled in; `text` in each field that takes free text. */
struct Order order_details(const char *text);
/** An arena of which `used_up` bytes are gone already and that gets `blocks` blocks more. A block is 64 KiB or less, so
 * that stepping `used_up` by 16 ends the last one at every allocation. */
struct Arena *order_arena_short(size_t used_up, long blocks);
enum { ORDER_USED_UP_LEAST = 16, ORDER_USED_UP_MOST = 65000 };
/** A price list for the jobs' articles: with a price for each of them in `currency` when `whole`, else some of them in
 * that or in yen; by the unit, by the pack, and for parts of a coin. */
const struct PriceList *order_random_prices(struct Arena *arena, unsigned *state, const struct OrderJob *jobs,
                                            int count, const char *currency, bool whole);
/** "each", "XPK"... the codes of Recommendation 20 that an order may hold. */
bool order_code_known(const char *unit_code);

Suite *suite_order_merge(void);
Suite *suite_order_cut(void);
Suite *suite_order_prices(void);
Suite *suite_order_read(void);
Suite *suite_order_documents(void);
Suite *suite_order_library(void);

#endif
