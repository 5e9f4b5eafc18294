/* What a list of parts costs by the user's own price list. Amounts are whole numbers and stay so: a quantity becomes
 * thousandths, and only a line's total is rounded, half up, to the smallest part that the currency is priced in. */
#include "buying.h"

#include <limits.h>
#include <math.h>
#include <string.h>

static const int64_t thousand = 1000;

static int64_t power_of_ten(int exponent)
{
    int64_t power = 1;
    for (int i = 0; i < exponent; i++) {
        power *= 10;
    }
    return power;
}

const char *parts_money_text(struct Arena *arena, int64_t amount, int decimals, int coin_decimals)
{
    while (decimals > coin_decimals && amount % 10 == 0) {
        amount /= 10;
        decimals--;
    }
    const int64_t parts = power_of_ten(decimals);
    return decimals > 0
               ? arena_print(arena, "%lld.%0*lld", (long long)(amount / parts), decimals, (long long)(amount % parts))
               : arena_print(arena, "%lld", (long long)amount);
}

int64_t parts_money_in_coin(int64_t amount, int decimals, int coin_decimals)
{
    const int64_t parts = power_of_ten(decimals > coin_decimals ? decimals - coin_decimals : 0);
    return amount / parts + (2 * (amount % parts) >= parts && parts > 1 ? 1 : 0);
}

/* amount * thousandths / 1000, rounded half up. False when it does not fit. */
static bool multiply_thousandths(int64_t amount, int64_t thousandths, int64_t *out)
{
    const int64_t whole = thousandths / thousand, rest = thousandths % thousand;
    if (amount > INT64_MAX / (2 * thousand) || (amount > 0 && whole > INT64_MAX / 2 / amount)) {
        return false;
    }
    *out = amount * whole + (amount * rest + thousand / 2) / thousand;
    return true;
}

/* The price of the article: by its usual unit with whole_m 0, else of one whole length. NULL when there is none. */
static const struct Price *find_price(const struct PriceList *list, const char *code, int whole_m)
{
    int low = 0, high = list->count;
    while (low < high) {
        const int middle = low + (high - low) / 2;
        const struct Price *price = &list->prices[middle];
        const int order = strcmp(price->code, code);
        if (order < 0 || (order == 0 && price->whole_m < whole_m)) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    const struct Price *found = low < list->count ? &list->prices[low] : NULL;
    return found != NULL && text_same(found->code, code) && found->whole_m == whole_m ? found : NULL;
}

/* By the article, or else by the line's own code. */
static const struct Price *price_of(const struct PriceList *list, const struct Part *part, double whole_m)
{
    const int whole =
        whole_m < INT_MAX && floor(whole_m) >= whole_m ? (int)whole_m : -1; /* none is of part of a metre */
    const struct Price *price = find_price(list, parts_article(part), whole);
    return price != NULL ? price : find_price(list, part->code, whole);
}

static bool by_the_pack(const struct Part *part, const struct Price *price)
{
    return part->pack > 0 &&
           (text_same(price->unit, "pack") || (part->pack_word != NULL && text_same(price->unit, part->pack_word)) ||
            (price->whole_m == part->pack && text_same(part->unit, "m")));
}

/* How many of the price's unit the line buys, in thousandths; -1 when the article is not sold so. Whole packs are paid
 * for, also where the price is for what is in them. */
static int64_t bought(const struct Part *part, const struct Price *price, int64_t thousandths)
{
    if (by_the_pack(part, price)) {
        return part->packs * thousand;
    }
    if (!text_same(price->unit, part->unit)) {
        return -1;
    }
    return part->pack > 0 ? thousand * part->packs * part->pack : thousandths;
}

/* What a line comes to while its whole lengths and the rest of it are added up. */
struct Sum {
    const struct PriceList *list;
    const struct Part *part;
    const struct Price *first; /* the price that was used first */
    bool several;              /* and another one */
    int64_t total;
    enum Saying why;             /* that there is no sum; SAY_NOTHING */
    const struct Price *unit_of; /* of SAY_PRICE_BY_OTHER_UNIT */
};

static void add_amount(struct Sum *sum, const struct Price *price, int64_t thousandths)
{
    int64_t amount = 0;
    if (price->disputed) {
        sum->why = SAY_PRICES_DIFFER;
    } else if (sum->first != NULL && sum->first->currency != price->currency) {
        sum->why = SAY_TWO_CURRENCIES;
    } else if (!multiply_thousandths(price->amount, thousandths, &amount) || amount > INT64_MAX - sum->total) {
        sum->why = SAY_TOTAL_TOO_LARGE;
    } else {
        sum->total += amount;
        sum->several = sum->several || (sum->first != NULL && sum->first != price);
        sum->first = sum->first != NULL ? sum->first : price;
    }
}

/* Whole lengths that have a price of their own. Gives what is left to be paid by the metre, in thousandths. */
static int64_t add_whole_lengths(struct Sum *sum, const struct PartsCut *cut, int64_t thousandths)
{
    for (int i = 0; i < cut->opened_count && sum->why == SAY_NOTHING; i++) {
        const struct PartOpened *opened = &cut->opened[i];
        const struct Price *price = opened->bought ? price_of(sum->list, sum->part, opened->length_m) : NULL;
        if (price != NULL) {
            add_amount(sum, price, thousand);
            thousandths -= llround(opened->length_m * 1000);
        }
    }
    return thousandths;
}

static void add_rest(struct Sum *sum, int64_t thousandths)
{
    const struct Part *part = sum->part;
    const struct Price *price = price_of(sum->list, part, 0);
    if (price == NULL && part->pack > 0) {
        price = price_of(sum->list, part, part->pack); /* a coil of 25 m by "coil-25" */
    }
    const int64_t count = price != NULL ? bought(part, price, thousandths) : 0;
    if (price == NULL && sum->first != NULL) {
        sum->why = SAY_NO_METRE_PRICE;
    } else if (price == NULL) {
        sum->why = SAY_NO_PRICE;
    } else if (count < 0) {
        sum->why = SAY_PRICE_BY_OTHER_UNIT;
        sum->unit_of = price;
    } else {
        add_amount(sum, price, count);
    }
}

static const struct Say *why_said(struct Arena *arena, const struct Sum *sum)
{
    const struct Part *part = sum->part;
    if (sum->why != SAY_PRICE_BY_OTHER_UNIT) {
        return sum->why == SAY_NOTHING ? NULL : say(arena, sum->why);
    }
    const char *sold = part->pack > 0 && part->pack_word != NULL ? part->pack_word : part->unit;
    return say(arena, sum->why, say_name(sum->unit_of->unit), say_name(sold));
}

static double base_of(const struct Sum *sum, const struct Part *part)
{
    return sum->several                    ? part->quantity
           : by_the_pack(part, sum->first) ? (text_same(part->unit, "pack") ? 1 : part->pack)
           : sum->first->whole_m > 0       ? sum->first->whole_m
                                           : 1;
}

static struct PartPrice price_line(struct Arena *arena, const struct PartsList *parts, const struct Part *part,
                                   const struct PriceList *list)
{
    struct PartPrice line = {.unit = "", .each_text = "", .total_text = ""};
    if (!(part->quantity > 0)) {
        return line;
    }
    struct Sum sum = {.list = list, .part = part};
    const struct PartsCut *cut = parts_cut_of(parts, part);
    int64_t thousandths = llround(part->quantity * 1000);
    thousandths = cut != NULL ? add_whole_lengths(&sum, cut, thousandths) : thousandths;
    if (sum.why == SAY_NOTHING && (thousandths > 0 || sum.first == NULL)) {
        add_rest(&sum, thousandths);
    }
    line.why = why_said(arena, &sum);
    if (sum.why == SAY_NOTHING && sum.first != NULL) {
        const struct PriceCurrency *currency = &list->currencies[sum.first->currency];
        line.known = true;
        line.currency = sum.first->currency;
        line.total = sum.total;
        line.each = sum.several ? sum.total : sum.first->amount;
        line.unit = sum.several ? "line" : sum.first->unit;
        line.base = base_of(&sum, part);
        line.each_text = parts_money_text(arena, line.each, currency->decimals, currency->coin_decimals);
        line.total_text = parts_money_text(arena, line.total, currency->decimals, currency->coin_decimals);
    }
    return line;
}

/* Adds the line to its total; the line loses its price when the sum would not fit. */
static void add_up(struct Arena *arena, struct PartPrice *line, struct PartsTotal *totals)
{
    struct PartsTotal *total = &totals[line->currency];
    if (line->total > INT64_MAX - total->amount) {
        *line =
            (struct PartPrice){.why = say(arena, SAY_TOTAL_TOO_LARGE), .unit = "", .each_text = "", .total_text = ""};
        return;
    }
    total->amount += line->total;
    total->lines++;
}

static void word_total(struct Arena *arena, const struct PriceCurrency *currency, struct PartsTotal *total)
{
    const int coin_decimals = currency->coin_decimals;
    const int64_t coins = parts_money_in_coin(total->amount, currency->decimals, coin_decimals);
    total->currency = currency->code;
    total->decimals = currency->decimals;
    total->coin_decimals = coin_decimals;
    total->text = parts_money_text(arena, total->amount, total->decimals, coin_decimals);
    const char *in_coin = parts_money_text(arena, coins, coin_decimals, coin_decimals);
    const int64_t rounding = coins * power_of_ten(currency->decimals - coin_decimals) - total->amount;
    const char *size = parts_money_text(arena, rounding < 0 ? -rounding : rounding, currency->decimals, coin_decimals);
    total->coin_text = rounding != 0 ? in_coin : "";
    total->rounding_text = rounding == 0 ? "" : arena_print(arena, "%s%s", rounding < 0 ? "-" : "", size);
}

/* Each article once, however many lines it has; that it is not listed goes without saying. */
static void add_unpriced(struct Arena *arena, struct PartsList *out, const struct Say **unpriced, const char *article,
                         const struct Say *why)
{
    const struct Say *text = why->id == SAY_NO_PRICE ? say(arena, SAY_AS_IS, say_name(article))
                                                     : say(arena, SAY_BRACKETS, say_name(article), say_part(why));
    for (int i = 0; i < out->unpriced_count; i++) {
        if (say_same(unpriced[i], text)) {
            return;
        }
    }
    unpriced[out->unpriced_count++] = text;
}

static const struct Say *unpriced_text(struct Arena *arena, int count, const struct Say *const *unpriced)
{
    const struct Say *all = count > 0 ? unpriced[count - 1] : NULL;
    for (int i = count - 2; i >= 0; i--) {
        all = say_then(arena, say(arena, SAY_NAME_AND_MORE, say_part(unpriced[i])), all);
    }
    return all == NULL ? NULL : say(arena, SAY_NOT_IN_ANY_TOTAL, say_part(all));
}

const struct PartsList *parts_priced(struct Arena *arena, const struct PartsList *list, const struct PriceList *prices)
{
    struct PartsList *out = arena_alloc(arena, sizeof *out);
    struct PartPrice *lines = arena_array(arena, (size_t)list->count + 1, sizeof *lines);
    struct PartsTotal *totals = arena_array(arena, (size_t)prices->currency_count + 1, sizeof *totals);
    const struct Say **unpriced = arena_array(arena, (size_t)list->count + 1, sizeof(struct Say *));
    if (out == NULL || lines == NULL || totals == NULL || unpriced == NULL) {
        return NULL;
    }
    *out = *list;
    out->prices_note = NULL;
    out->unpriced_count = 0;
    for (int i = 0; i < list->count; i++) {
        const struct Part *part = &list->parts[i];
        lines[i] = price_line(arena, list, part, prices);
        if (lines[i].known) {
            add_up(arena, &lines[i], totals);
        }
        if (!lines[i].known && lines[i].why != NULL) {
            add_unpriced(arena, out, unpriced, parts_article(part), lines[i].why);
        }
    }
    for (int c = 0; c < prices->currency_count; c++) {
        word_total(arena, &prices->currencies[c], &totals[c]);
    }
    out->prices = lines;
    out->totals = totals;
    out->total_count = prices->currency_count;
    out->unpriced = unpriced;
    out->unpriced_text = unpriced_text(arena, out->unpriced_count, unpriced);
    return arena_failed(arena) ? NULL : out;
}
