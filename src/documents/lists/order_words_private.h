/** Sentences that every form of an order holds. */
#ifndef WEND_ORDER_WORDS_PRIVATE_H
#define WEND_ORDER_WORDS_PRIVATE_H

#include "documents/documents.h"

/** What must stand at the top: that a job's plan fails a check, or is open. "" for a job that passes. */
const char *order_warning(struct Arena *arena, const struct OrderList *list, int index);
/** "barn: Cider barn supply; Mill Lane; job 42": what a name on a bag stands for. */
const char *order_job_words(struct Arena *arena, const struct OrderJob *job);
/** "barn: A range was surveyed: ...": what its figures are enough for; "" where none was. */
const char *order_range_words(struct Arena *arena, const struct OrderJob *job);
/** Why the order's prices are not those of the list that it names; "" when they are. */
const char *order_not_priced(struct Arena *arena, const struct OrderList *list);
/** What is bought of an article: whole packs, or with packs 0 the amount. */
struct Bought {
    long packs;
    int pack;
    const char *pack_word;
    double amount;
    const char *unit;
};
/** "2 packs of 50", "2 coils of 50 m" for what comes in packs; else "150 m", "12". */
const char *bought_words(struct Arena *arena, const struct Bought *bought);
/** The same of a line of an order. */
const char *order_buy_words(struct Arena *arena, const struct OrderLine *line);

#endif
