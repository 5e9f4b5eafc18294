/* What an order comes to, for whoever wants to tell it. */
#include "library_private.h"

const struct OrderList *wend_order_lines(const struct WendOrder *order)
{
    return wend_order_status(order) > WEND_CHECK_FAILS ? NULL : order->list;
}

enum WendVerdict wend_order_verdict(const struct WendOrder *order)
{
    const struct OrderList *list = wend_order_lines(order);
    return list == NULL ? WEND_FAIL : (enum WendVerdict)list->verdict;
}

int wend_order_job_count(const struct WendOrder *order)
{
    const struct OrderList *list = wend_order_lines(order);
    return list == NULL ? 0 : list->job_count;
}

static const struct OrderJob *job_at(const struct WendOrder *order, int index)
{
    return index >= 0 && index < wend_order_job_count(order) ? &order->list->jobs[index] : NULL;
}

const char *wend_order_job_name(const struct WendOrder *order, int index)
{
    const struct OrderJob *job = job_at(order, index);
    return job == NULL ? "" : job->name;
}

enum WendVerdict wend_order_job_verdict(const struct WendOrder *order, int index)
{
    const struct OrderJob *job = job_at(order, index);
    return job == NULL ? WEND_FAIL : (enum WendVerdict)job->verdict;
}

const char *wend_order_job_verdict_text(const struct WendOrder *order, int index)
{
    const struct OrderJob *job = job_at(order, index);
    return job == NULL ? "" : document_words(order->arena, job->verdict_text);
}

int wend_order_line_count(const struct WendOrder *order)
{
    const struct OrderList *list = wend_order_lines(order);
    return list == NULL ? 0 : list->count;
}

long wend_order_packs(const struct WendOrder *order)
{
    long packs = 0;
    for (int i = 0; i < wend_order_line_count(order); i++) {
        packs += order->list->lines[i].packs;
    }
    return packs;
}

long wend_order_packs_apart(const struct WendOrder *order)
{
    long packs = 0;
    for (int i = 0; i < wend_order_line_count(order); i++) {
        packs += order->list->lines[i].packs_apart;
    }
    return packs;
}

/* Currencies of a price list that no line came to are not counted. */
static const struct PartsTotal *total_at(const struct WendOrder *order, int index, int *count)
{
    const struct OrderList *list = wend_order_lines(order);
    const struct PartsTotal *found = NULL;
    *count = 0;
    for (int i = 0; list != NULL && i < list->total_count; i++) {
        if (list->totals[i].lines > 0) {
            found = *count == index ? &list->totals[i] : found;
            ++*count;
        }
    }
    return found;
}

int wend_order_total_count(const struct WendOrder *order)
{
    int count = 0;
    total_at(order, -1, &count);
    return count;
}

int wend_order_total_lines(const struct WendOrder *order, int index)
{
    int count = 0;
    const struct PartsTotal *total = total_at(order, index, &count);
    return total == NULL ? 0 : total->lines;
}

const char *wend_order_total_currency(const struct WendOrder *order, int index)
{
    int count = 0;
    const struct PartsTotal *total = total_at(order, index, &count);
    return total == NULL ? "" : total->currency;
}

const char *wend_order_total_amount(const struct WendOrder *order, int index)
{
    int count = 0;
    const struct PartsTotal *total = total_at(order, index, &count);
    return total == NULL ? "" : total->text;
}

const char *wend_order_total_in_coin(const struct WendOrder *order, int index)
{
    int count = 0;
    const struct PartsTotal *total = total_at(order, index, &count);
    return total == NULL ? "" : total->coin_text;
}

int wend_order_unpriced_count(const struct WendOrder *order)
{
    const struct OrderList *list = wend_order_lines(order);
    return list == NULL ? 0 : list->unpriced_count;
}

const char *wend_order_prices_note(const struct WendOrder *order)
{
    const struct OrderList *list = wend_order_lines(order);
    return list == NULL ? "" : document_words(order->arena, list->prices_note);
}
