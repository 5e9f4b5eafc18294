/* What an order costs. The order's own price list overrides those of the routes, article by article; where two routes
 * price an article differently none of them is taken, because nobody here knows which counter the order goes to. The
 * lists are put together as one, and the lines of the order are priced by it just as a list of parts is. */
#include "order_private.h"

#include <stdlib.h>
#include <string.h>

/* A price of one of the lists, and which list that is: 0 is the order's own. */
struct Found {
    struct Price price;
    int list;
};

struct Gathered {
    struct PriceCurrency currencies[PRICES_CURRENCIES_MOST];
    int currency_count;
    struct Found *found;
    int count;
    bool too_many; /* currencies */
};

static int currency_at(struct Gathered *all, const struct PriceCurrency *wanted)
{
    int at = 0;
    while (at < all->currency_count && !text_same(all->currencies[at].code, wanted->code)) {
        at++;
    }
    if (at == PRICES_CURRENCIES_MOST) {
        all->too_many = true;
        return -1;
    }
    if (at == all->currency_count) {
        all->currencies[all->currency_count++] = *wanted;
    }
    if (all->currencies[at].decimals < wanted->decimals) {
        all->currencies[at].decimals = wanted->decimals;
    }
    return at;
}

/* Takes the prices on with the decimals that they are written with; level() makes them alike. */
static void gather(struct Gathered *all, const struct PriceList *list, int number)
{
    for (int i = 0; list != NULL && i < list->count; i++) {
        const int currency = currency_at(all, &list->currencies[list->prices[i].currency]);
        if (currency >= 0) {
            struct Found *found = &all->found[all->count++];
            *found = (struct Found){.price = list->prices[i], .list = number};
            found->price.currency = currency;
        }
    }
}

static void level(struct Gathered *all, const struct PriceList *const *lists)
{
    for (int i = 0; i < all->count; i++) {
        struct Price *price = &all->found[i].price;
        const struct PriceList *list = lists[all->found[i].list];
        const struct PriceCurrency *now = &all->currencies[price->currency];
        int decimals = now->decimals;
        for (int c = 0; c < list->currency_count; c++) {
            decimals = text_same(list->currencies[c].code, now->code) ? list->currencies[c].decimals : decimals;
        }
        for (; decimals < now->decimals; decimals++) {
            price->amount *= 10; /* up to 9 digits and 4 decimals: far from the most that fits */
        }
    }
}

static int by_code(const void *left, const void *right)
{
    const struct Found *a = left, *b = right;
    const int code = strcmp(a->price.code, b->price.code);
    if (code != 0) {
        return code;
    }
    if (a->list != b->list && (a->list == 0 || b->list == 0)) {
        return a->list == 0 ? -1 : 1;
    }
    if (a->price.whole_m != b->price.whole_m) {
        return a->price.whole_m < b->price.whole_m ? -1 : 1;
    }
    return a->list < b->list ? -1 : a->list > b->list;
}

static bool same_price(const struct Price *a, const struct Price *b)
{
    return a->currency == b->currency && a->amount == b->amount && (a->whole_m > 0 || text_same(a->unit, b->unit));
}

/* One price for each article and length. */
static int settle(const struct Gathered *all, struct Price *prices)
{
    int count = 0;
    bool own = false; /* the order's own list prices the article at hand */
    for (int i = 0; i < all->count; i++) {
        const struct Found *found = &all->found[i];
        const bool same_code = count > 0 && text_same(prices[count - 1].code, found->price.code);
        own = same_code ? own : found->list == 0;
        if (own && found->list != 0) {
            continue;
        }
        if (!same_code || prices[count - 1].whole_m != found->price.whole_m) {
            prices[count++] = found->price;
        } else if (!same_price(&prices[count - 1], &found->price)) {
            prices[count - 1].disputed = true;
        }
    }
    return count;
}

/* All lists as one; an empty one when there is none. NULL when memory failed. */
static const struct PriceList *put_together(struct Arena *arena, const struct PriceList *const *lists, int count,
                                            bool *too_many)
{
    struct PriceList *made = arena_alloc(arena, sizeof *made);
    struct Gathered *all = arena_alloc(arena, sizeof *all);
    size_t most = 1;
    for (int i = 0; i < count; i++) {
        most += lists[i] != NULL ? (size_t)lists[i]->count : 0;
    }
    struct Price *prices = arena_array(arena, most, sizeof *prices);
    if (all != NULL) {
        all->found = arena_array(arena, most, sizeof *all->found);
    }
    if (made == NULL || all == NULL || prices == NULL || all->found == NULL) {
        return NULL;
    }
    for (int i = 0; i < count; i++) {
        gather(all, lists[i], i);
    }
    level(all, lists);
    qsort(all->found, (size_t)all->count, sizeof *all->found, by_code);
    *made = (struct PriceList){.currency_count = all->currency_count, .currencies = all->currencies, .prices = prices};
    made->count = settle(all, prices);
    *too_many = all->too_many;
    return made;
}

/* The lines as parts, and their cutting plans: what is to buy is what is paid for. */
static const struct PartsList *as_parts(struct Arena *arena, const struct OrderList *list)
{
    struct PartsList *out = arena_alloc(arena, sizeof *out);
    struct Part *parts = arena_array(arena, (size_t)list->count + 1, sizeof *parts);
    struct PartsCut *cuts = arena_array(arena, (size_t)list->count + 1, sizeof *cuts);
    if (out == NULL || parts == NULL || cuts == NULL) {
        return NULL;
    }
    *out = (struct PartsList){.count = list->count, .parts = parts, .cuts = cuts};
    for (int i = 0; i < list->count; i++) {
        const struct OrderLine *line = &list->lines[i];
        parts[i] = (struct Part){.code = line->code,
                                 .quantity = line->buy,
                                 .unit = line->unit,
                                 .pack = line->plan == NULL ? line->pack : 0,
                                 .packs = line->plan == NULL ? (int)line->packs : 0,
                                 .pack_word = line->pack_word};
        if (line->plan != NULL) {
            cuts[out->cut_count++] = *line->plan;
        }
    }
    return out;
}

static const struct Say *note_of(struct Arena *arena, const struct OrderList *list, const struct Say *own_note,
                                 bool too_many)
{
    const struct Say *note = own_note;
    for (int j = 0; j < list->job_count; j++) {
        const struct Say *said = list->jobs[j].parts->prices_note;
        if (said != NULL) {
            const struct Say *whose = say(arena, SAY_COLON, say_name(list->jobs[j].name), say_part(said));
            note = say_list(arena, SAY_SEMICOLON, note, say_part(whose));
        }
    }
    if (too_many) {
        const struct Say *left_out = say(arena, SAY_CURRENCIES_LEFT_OUT, say_count(PRICES_CURRENCIES_MOST));
        note = say_list(arena, SAY_SEMICOLON, note, say_part(left_out));
    }
    return note;
}

void order_price(struct Arena *arena, struct OrderList *list, const struct PriceList *own, const struct Say *own_note)
{
    const int count = list->job_count + 1;
    const struct PriceList **lists =
        arena_array(arena, (size_t)count, sizeof *lists); /* NOLINT(bugprone-sizeof-expression): of pointers */
    bool any = own != NULL;
    bool too_many = false;
    if (lists == NULL) {
        return;
    }
    lists[0] = own;
    for (int j = 0; j < list->job_count; j++) {
        lists[j + 1] = list->jobs[j].prices;
        any = any || lists[j + 1] != NULL;
    }
    const struct PriceList *prices = put_together(arena, lists, count, &too_many);
    const struct PartsList *parts = as_parts(arena, list);
    const struct PartsList *priced = prices != NULL && parts != NULL ? parts_priced(arena, parts, prices) : NULL;
    list->prices_note = note_of(arena, list, own_note, too_many);
    if (priced == NULL || !any) {
        return;
    }
    list->prices = priced->prices;
    list->total_count = priced->total_count;
    list->totals = priced->totals;
    list->unpriced_count = priced->unpriced_count;
    list->unpriced_text = priced->unpriced_text;
}
