/* What a list of parts costs by the user's own price list. Amounts are whole numbers and stay so: a quantity becomes
 * thousandths, and only a line's total is rounded, half up, to the smallest part that the currency is priced in. */
#include "wend/parts.h"

#include <math.h>
#include <string.h>

static const int64_t thousand = 1000;
static const char not_listed[] = "no price in the list";

const char *parts_money_text(struct Arena *arena, int64_t amount, int decimals)
{
    int64_t parts = 1;
    for (int i = 0; i < decimals; i++) {
        parts *= 10;
    }
    return decimals > 0
               ? arena_print(arena, "%lld.%0*lld", (long long)(amount / parts), decimals, (long long)(amount % parts))
               : arena_print(arena, "%lld", (long long)amount);
}

/* amount * thousandths / 1000, rounded half up. False when it does not fit. */
static bool times(int64_t amount, int64_t thousandths, int64_t *out)
{
    const int64_t whole = thousandths / thousand, rest = thousandths % thousand;
    if (amount > INT64_MAX / (2 * thousand) || (amount > 0 && whole > INT64_MAX / 2 / amount)) {
        return false;
    }
    *out = amount * whole + (amount * rest + thousand / 2) / thousand;
    return true;
}

static const struct Price *find_price(const struct PriceList *list, const char *code)
{
    int low = 0, high = list->count;
    while (low < high) {
        const int middle = low + (high - low) / 2;
        if (strcmp(list->prices[middle].code, code) < 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low < list->count && text_same(list->prices[low].code, code) ? &list->prices[low] : NULL;
}

/* How many of the price's unit the line buys, in thousandths; -1 when the article is not sold so. Whole packs are paid
 * for, also where the price is for what is in them. */
static int64_t bought(const struct Part *part, const char *unit)
{
    const bool packed = part->pack > 0;
    const bool by_pack =
        text_same(unit, "pack") || (packed && part->pack_word != NULL && text_same(unit, part->pack_word));
    if (packed && by_pack) {
        return part->packs * thousand;
    }
    if (!text_same(unit, part->unit)) {
        return -1;
    }
    return packed ? thousand * part->packs * part->pack : llround(part->quantity * 1000);
}

static struct PartPrice price_line(struct Arena *arena, const struct Part *part, const struct PriceList *list)
{
    struct PartPrice line = {.why = not_listed, .unit = "", .each_text = "", .total_text = ""};
    const struct Price *price = find_price(list, parts_article(part));
    price = price != NULL ? price : find_price(list, part->code); /* a line's own code does as well */
    if (!(part->quantity > 0)) {
        line.why = "";
        return line;
    }
    if (price == NULL) {
        return line;
    }
    const int64_t thousandths = bought(part, price->unit);
    if (thousandths < 0) {
        line.why = arena_print(arena, "its price is for \"%s\", but it is sold by \"%s\"", price->unit,
                               part->pack > 0 && part->pack_word != NULL ? part->pack_word : part->unit);
    } else if (!times(price->amount, thousandths, &line.total)) {
        line.why = "its total is too large to be added up";
    } else {
        const int decimals = list->currencies[price->currency].decimals;
        line = (struct PartPrice){.known = true,
                                  .why = "",
                                  .currency = price->currency,
                                  .each = price->amount,
                                  .total = line.total,
                                  .unit = price->unit,
                                  .each_text = parts_money_text(arena, price->amount, decimals),
                                  .total_text = parts_money_text(arena, line.total, decimals)};
    }
    return line;
}

/* Adds the line to its total; the line loses its price when the sum would not fit. */
static void add_up(struct PartPrice *line, struct PartsTotal *totals)
{
    struct PartsTotal *total = &totals[line->currency];
    if (line->total > INT64_MAX - total->amount) {
        *line = (struct PartPrice){
            .why = "its total is too large to be added up", .unit = "", .each_text = "", .total_text = ""};
        return;
    }
    total->amount += line->total;
    total->lines++;
}

/* Each article once, however many lines it has. */
static void add_unpriced(struct Arena *arena, struct PartsList *out, const char **unpriced, const char *article,
                         const char *why)
{
    const char *text = why == not_listed ? article : arena_print(arena, "%s (%s)", article, why);
    for (int i = 0; i < out->unpriced_count; i++) {
        if (text_same(unpriced[i], text)) {
            return;
        }
    }
    unpriced[out->unpriced_count++] = text;
}

static const char *unpriced_text(struct Arena *arena, int count, const char *const *unpriced)
{
    struct TextBuilder text = text_builder(arena);
    for (int i = 0; i < count; i++) {
        text_print(&text, "%s%s", i > 0 ? ", " : "not in any total: ", unpriced[i]);
    }
    return text_done(&text);
}

const struct PartsList *parts_priced(struct Arena *arena, const struct PartsList *list, const struct PriceList *prices)
{
    struct PartsList *out = arena_alloc(arena, sizeof *out);
    struct PartPrice *lines = arena_array(arena, (size_t)list->count + 1, sizeof *lines);
    struct PartsTotal *totals = arena_array(arena, (size_t)prices->currency_count + 1, sizeof *totals);
    const char **unpriced = arena_array(arena, (size_t)list->count + 1, sizeof *unpriced);
    if (out == NULL || lines == NULL || totals == NULL || unpriced == NULL) {
        return NULL;
    }
    *out = *list;
    out->prices_note = NULL;
    out->unpriced_count = 0;
    for (int i = 0; i < list->count; i++) {
        const struct Part *part = &list->parts[i];
        lines[i] = price_line(arena, part, prices);
        if (lines[i].known) {
            add_up(&lines[i], totals);
        }
        if (!lines[i].known && *lines[i].why != '\0') {
            add_unpriced(arena, out, unpriced, parts_article(part), lines[i].why);
        }
    }
    for (int c = 0; c < prices->currency_count; c++) {
        totals[c].currency = prices->currencies[c].code;
        totals[c].decimals = prices->currencies[c].decimals;
        totals[c].text = parts_money_text(arena, totals[c].amount, totals[c].decimals);
    }
    out->prices = lines;
    out->totals = totals;
    out->total_count = prices->currency_count;
    out->unpriced = unpriced;
    out->unpriced_text = unpriced_text(arena, out->unpriced_count, unpriced);
    return arena_failed(arena) ? NULL : out;
}
