/* What an order costs: whose list goes first, what two lists say differently, and that ordering together never costs
 * more than ordering apart. */
#include "order_rig.h"
#include "said.h"

#include "documents/documents.h"
#include "library/library_stages.h"
#include "wend/wend.h"

#include <string.h>

enum { ROUNDS = 10, SEEDS_A_ROUND = 30 };

static const struct PriceCurrency euro_cents = {"EUR", 2, 2}, euro_fine = {"EUR", 4, 2}, pounds = {"GBP", 2, 2};

#define LIST(currency, prices)                                                                                         \
    {                                                                                                                  \
        1, &(currency), (int)(sizeof(prices) / sizeof(prices)[0]), prices                                              \
    }
static const struct Price barn_prices[] = {{.code = "clip", .unit = "each", .amount = 50},
                                           {.code = "gland", .unit = "each", .amount = 400},
                                           {.code = "rod", .unit = "each", .amount = 900}};
static const struct Price shed_prices[] = {{.code = "clip", .unit = "each", .amount = 5000},
                                           {.code = "gland", .unit = "each", .amount = 41000},
                                           {.code = "rod", .unit = "each", .amount = 95000}};
static const struct Price own_prices[] = {{.code = "rod", .unit = "each", .amount = 1000}};
static const struct PriceList barn_list = LIST(euro_cents, barn_prices), shed_list = LIST(euro_fine, shed_prices),
                              own_list = LIST(pounds, own_prices);

static const struct PartPrice *price_of(const struct OrderList *list, const char *code)
{
    for (int i = 0; i < list->count; i++) {
        if (text_same(list->lines[i].code, code)) {
            return &list->prices[i];
        }
    }
    ck_abort_msg("no line of %s", code);
}

/* Clips cost 0.50 by both lists, one of which writes 0.5000; glands 4.00 by one and 4.10 by the other; rods are in the
 * order's own list as well, in pounds. */
START_TEST(the_orders_own_list_goes_first)
{
    struct Arena *arena = arena_new();
    const struct Part parts[] = {
        order_part(arena, AISLE_FIXINGS, "clip", "Clip", 3), order_part(arena, AISLE_TERMINATIONS, "gland", "Gland", 2),
        order_part(arena, AISLE_EARTHING, "rod", "Rod", 1), order_part(arena, AISLE_LABELS, "label", "Label", 1)};
    struct OrderJob jobs[] = {order_job(arena, "barn", parts, 4), order_job(arena, "shed", parts, 4)};
    jobs[0].prices = &barn_list;
    jobs[1].prices = &shed_list;
    const struct OrderPrices own = {&own_list, NULL};
    const struct OrderList *list = order_merge(arena, jobs, 2, &own);
    ck_assert_str_eq(price_of(list, "clip")->total_text, "3.00");
    ck_assert(!price_of(list, "gland")->known);
    ck_assert_str_eq(price_of(list, "rod")->total_text, "20.00");
    ck_assert_str_eq(list->totals[price_of(list, "rod")->currency].currency, "GBP");
    ck_assert_str_eq(said(arena, list->unpriced_text),
                     "not in any total: gland (the routes' lists price it differently; price it in "
                     "the order's own list), label");
    list = order_merge(arena, jobs, 1, NULL); /* barn alone: nothing is in doubt */
    ck_assert_str_eq(price_of(list, "gland")->total_text, "8.00");
    ck_assert_str_eq(price_of(list, "rod")->total_text, "9.00");
    jobs[0].prices = NULL;
    list = order_merge(arena, jobs, 1, NULL);
    ck_assert_ptr_null(list->prices);
    ck_assert_ptr_null(list->unpriced_text);
    arena_free(arena);
}
END_TEST

/* The sum stands in the XML only when it is the sum of all lines in the order's currency. */
START_TEST(a_sum_only_of_all_lines)
{
    struct Arena *arena = arena_new();
    const struct Part parts[] = {order_part(arena, AISLE_FIXINGS, "clip", "Clip", 3),
                                 order_part(arena, AISLE_LABELS, "label", "Label", 1)};
    static const struct Price fine[] = {{.code = "clip", .unit = "each", .amount = 425}};
    static const struct PriceList fine_list = LIST(euro_fine, fine);
    const struct OrderPrices own = {&fine_list, NULL};
    struct Order order = order_details("x");
    struct OrderJob job = order_job(arena, "barn", parts, 1);
    order.currency = "EUR";
    const char *xml = document_order_ubl(arena, &order, order_merge(arena, &job, 1, &own)).data;
    ck_assert_ptr_nonnull(strstr(xml, "<cbc:PriceAmount currencyID=\"EUR\">0.0425<"));
    ck_assert_ptr_nonnull(strstr(xml, "<cbc:LineExtensionAmount currencyID=\"EUR\">0.1275<"));
    ck_assert_ptr_nonnull(strstr(xml, "<cbc:PayableRoundingAmount currencyID=\"EUR\">0.0025<"));
    ck_assert_ptr_nonnull(strstr(xml, "<cbc:PayableAmount currencyID=\"EUR\">0.13<"));
    ck_assert_ptr_null(strstr(xml, "No sum is given"));
    order.currency = "GBP";
    xml = document_order_ubl(arena, &order, order_merge(arena, &job, 1, &own)).data;
    ck_assert_ptr_null(strstr(xml, "PayableAmount"));
    ck_assert_ptr_nonnull(strstr(xml, "No sum is given: not every line has a price in GBP."));
    order.currency = "EUR";
    job = order_job(arena, "barn", parts, 2);
    xml = document_order_ubl(arena, &order, order_merge(arena, &job, 1, &own)).data;
    ck_assert_ptr_null(strstr(xml, "PayableAmount"));
    ck_assert_ptr_nonnull(strstr(xml, "0.1275<"));
    order.currency = "";
    xml = document_order_ubl(arena, &order, order_merge(arena, &job, 1, &own)).data;
    ck_assert_ptr_nonnull(strstr(xml, "No sum is given: the order names no currency."));
    arena_free(arena);
}
END_TEST

static int64_t sum_of(const struct OrderList *list)
{
    ck_assert_int_eq(list->unpriced_count, 0);
    ck_assert_int_eq(list->totals[1].lines, 0);
    return list->totals[0].amount;
}

/* With one list for all: never more money, and never more packs of any article, together than apart. */
static void check_together(unsigned seed)
{
    struct Arena *arena = arena_new();
    unsigned state = seed;
    const int count = 2 + (int)(seed % 4);
    const struct OrderJob *jobs = order_random_jobs(arena, count, seed);
    const struct OrderPrices prices = {order_random_prices(arena, &state, jobs, count, "EUR", true), NULL};
    const struct OrderList *together = order_merge(arena, jobs, count, &prices);
    int64_t apart = 0;
    long packs = 0, packs_apart = 0;
    for (int j = 0; j < count; j++) {
        const struct OrderList *alone = order_merge(arena, &jobs[j], 1, &prices);
        apart += sum_of(alone);
        for (int i = 0; i < alone->count; i++) {
            packs_apart += alone->lines[i].packs;
        }
    }
    for (int i = 0; i < together->count; i++) {
        packs += together->lines[i].packs;
        ck_assert_int_le(together->lines[i].packs, together->lines[i].packs_apart);
    }
    ck_assert_msg(sum_of(together) <= apart, "seed %u: dearer together", seed);
    ck_assert_msg(packs <= packs_apart, "seed %u: more packs together", seed);
    ck_assert_int_gt(apart, 0);
    arena_free(arena);
}

START_TEST(together_never_costs_more)
{
    for (int i = 0; i < SEEDS_A_ROUND; i++) {
        check_together((unsigned)(_i * SEEDS_A_ROUND + i));
    }
}
END_TEST

START_TEST(memory_runs_out)
{
    struct Arena *made = arena_new();
    unsigned state = 3;
    struct OrderJob *jobs = order_random_jobs(made, 2, 5);
    jobs[0].prices = order_random_prices(made, &state, jobs, 2, "EUR", false);
    const struct OrderPrices prices = {order_random_prices(made, &state, jobs, 2, "EUR", true), NULL};
    int failed = 0, done = 0;
    for (long blocks = 0; blocks < 3; blocks++) {
        for (size_t used_up = ORDER_USED_UP_LEAST; used_up < ORDER_USED_UP_MOST; used_up += 160) {
            struct Arena *arena = order_arena_short(used_up, blocks);
            const struct OrderList *list = order_merge(arena, jobs, 2, &prices);
            ck_assert((list != NULL) != arena_failed(arena));
            done += list != NULL;
            failed += list == NULL;
            arena_free(arena);
        }
    }
    ck_assert_int_gt(failed, 20);
    ck_assert_int_gt(done, 20);
    arena_free(made);
}
END_TEST

static const char route[] = "wend: 1\n"
                            "job: {title: Shed}\n"
                            "supply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
                            "runs: {feeder: {load: {current: 10 A}, cable: {type: BS5467, cores: 3, size: 2.5 mm2}}}\n"
                            "segments: [{name: wall, way: wall, length: 19 m}]\n"
                            "parts: {prices: mine.csv, spare-cable: 0 %}\n";
static const char order_text[] = "wend-order: 1\n"
                                 "order: {reference: A, date: 2026-05-14, currency: EUR, prices: ours.csv}\n"
                                 "buyer: {name: B}\nseller: {name: S}\n";
#define HEAD "code,unit,price,currency\n"

/* 20 m at 2.15 by the route's list, at 2.00 by the order's. */
START_TEST(the_library_prices_an_order)
{
    static const char mine[] = HEAD "cable-BS5467-3x2.5,m,2.15,EUR\n", ours[] = HEAD "cable-BS5467-3x2.5,m,2,EUR\n",
                      bad[] = HEAD "cable-BS5467-3x2.5,m,2,Euro\n";
    struct Wend *wend = wend_plan("shed", route, strlen(route));
    struct WendOrder *order = wend_order(&wend, 1, order_text, strlen(order_text), "");
    ck_assert_str_eq(wend_order_prices_name(order), "ours.csv");
    ck_assert_ptr_null(wend_order_lines(order)->prices);
    ck_assert_str_eq(
        wend_order_prices_note(order),
        "the order's price list ours.csv was not read; shed: the price list mine.csv was not read: nothing "
        "is priced");
    ck_assert_ptr_nonnull(
        strstr(wend_order_document(order, WEND_ORDER_CSV).data, "Not priced: the order's price list"));
    ck_assert_ptr_nonnull(strstr(wend_order_document(order, WEND_ORDER_XML).data, "<cbc:Note>Not priced: the order"));
    wend_order_free(order);
    ck_assert_int_eq(wend_price(wend, mine, strlen(mine)), WEND_PASSES);
    order = wend_order(&wend, 1, order_text, strlen(order_text), "");
    ck_assert_str_eq(wend_order_lines(order)->prices[0].total_text, "43.00");
    ck_assert_int_eq(wend_order_price(order, ours, strlen(ours)), WEND_PASSES);
    ck_assert_str_eq(wend_order_lines(order)->prices[0].total_text, "40.00");
    ck_assert_str_eq(wend_order_prices_note(order), "");
    ck_assert_str_eq(wend_diagnostics_printed(wend_order_prices_diagnostics(order), "ours.csv"), "");
    ck_assert_int_eq(wend_order_price(order, bad, strlen(bad)), WEND_INPUT_WRONG);
    ck_assert_ptr_nonnull(strstr(wend_diagnostics_printed(wend_order_prices_diagnostics(order), "ours.csv"),
                                 "ours.csv:2:24: error: \"Euro\" is not a"));
    ck_assert_ptr_null(wend_order_document(order, WEND_ORDER_CSV).data);
    wend_order_free(order);
    wend_free(wend);
}
END_TEST

Suite *suite_order_prices(void)
{
    Suite *suite = suite_create("order: prices");
    TCase *tests = tcase_create("prices");
    tcase_set_timeout(tests, 120);
    tcase_add_test(tests, the_orders_own_list_goes_first);
    tcase_add_test(tests, a_sum_only_of_all_lines);
    tcase_add_loop_test(tests, together_never_costs_more, 0, ROUNDS);
    tcase_add_test(tests, memory_runs_out);
    tcase_add_test(tests, the_library_prices_an_order);
    suite_add_tcase(suite, tests);
    return suite;
}
