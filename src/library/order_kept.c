/* A route of which an order alone is still wanted: its plan, which is large, goes, and what it orders stays. */
#include "library_private.h"

enum { KEPT_BLOCK_BYTES = 4096 }; /* a list takes some twenty thousand */

/* As much of a plan and its survey as an order asks for. */
static const struct Plan *plan_kept(struct Arena *arena, const struct Plan *plan)
{
    struct Plan *kept = arena_alloc(arena, sizeof *kept);
    struct Survey *survey = arena_alloc(arena, sizeof *survey);
    if (kept == NULL || survey == NULL) {
        return NULL;
    }
    survey->job.title = text_kept(arena, plan->survey->job.title);
    survey->job.site = text_kept(arena, plan->survey->job.site);
    survey->job.reference = text_kept(arena, plan->survey->job.reference);
    survey->parts.prices = text_kept(arena, plan->survey->parts.prices);
    kept->survey = survey;
    kept->route = text_kept(arena, plan->route);
    kept->verdict = plan->verdict;
    kept->pass = plan->pass;
    kept->verdict_text = say_kept(arena, plan_verdict_said(plan));
    return kept;
}

static const struct PriceList *prices_kept(struct Arena *arena, const struct PriceList *prices)
{
    struct PriceList *kept = arena_alloc(arena, sizeof *kept);
    struct PriceCurrency *currencies = arena_array(arena, (size_t)prices->currency_count, sizeof *currencies);
    struct Price *list = arena_array(arena, (size_t)prices->count, sizeof *list);
    if (kept == NULL || currencies == NULL || list == NULL) {
        return NULL;
    }
    for (int i = 0; i < prices->currency_count; i++) {
        currencies[i] = prices->currencies[i];
        currencies[i].code = text_kept(arena, currencies[i].code);
    }
    for (int i = 0; i < prices->count; i++) {
        list[i] = prices->prices[i];
        list[i].code = text_kept(arena, list[i].code);
        list[i].unit = text_kept(arena, list[i].unit);
    }
    *kept = (struct PriceList){prices->currency_count, currencies, prices->count, list};
    return kept;
}

void wend_keep_order(struct Wend *wend)
{
    if (wend == NULL || wend->kept_for_order || wend_status(wend) > WEND_CHECK_FAILS || wend->parts == NULL) {
        return;
    }
    struct Arena *arena = arena_new_of(KEPT_BLOCK_BYTES);
    const struct Plan *plan = arena == NULL ? NULL : plan_kept(arena, wend->plan);
    const struct PartsList *parts = arena == NULL ? NULL : parts_kept(arena, wend->parts);
    const struct PriceList *prices = arena == NULL || wend->prices == NULL ? NULL : prices_kept(arena, wend->prices);
    if (arena == NULL || arena_failed(arena)) {
        arena_free(arena); /* as it is it will do */
        return;
    }
    arena_free(wend->arena);
    *wend = (struct Wend){.arena = arena, .plan = plan, .parts = parts, .prices = prices, .kept_for_order = true};
}
