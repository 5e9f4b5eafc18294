/* Price lists: read strictly, added up exactly, and told apart where something is missing. */
#include "run_suite.h"
#include "said.h"

#include "buying/buying.h"
#include "library/library_stages.h"
#include "read/read.h"
#include "wend/wend.h"

#include <limits.h>
#include <stddef.h>
#include <string.h>

#define COUNT(list) ((int)(sizeof(list) / sizeof(list)[0]))

static const struct PriceList *read_text(struct Arena *arena, const char *text, struct Diag **diag)
{
    *diag = diag_new(arena);
    return read_prices(arena, *diag, (struct Bytes){text, strlen(text)});
}

START_TEST(a_list_is_read_into_whole_numbers)
{
    struct Arena *arena = arena_new();
    struct Diag *diag;
    const struct PriceList *list = read_text(arena,
                                             "\xEF\xBB\xBF"
                                             "mine, currency ,price,unit,code\r\n"
                                             "\"a \"\"b\"\",\nc\",EUR,12.5,m,cable\r\n"
                                             "\r\n"
                                             ",EUR,0.0425,each,\" clip \"\n"
                                             ",JPY,1200,pack,gland\n"
                                             ",,,,not-priced\n"
                                             ",NOK,7.5,roll,tape",
                                             &diag);
    ck_assert_msg(list != NULL, "%s", diag_print(diag, arena, "p.csv", (struct Bytes){NULL, 0}));
    static const struct {
        const char *code, *unit, *currency;
        int decimals;
        int64_t amount;
    } due[] = {{"cable", "m", "EUR", 4, 125000},
               {"clip", "each", "EUR", 4, 425},
               {"gland", "pack", "JPY", 0, 1200},
               {"tape", "roll", "NOK", 2, 750}};
    ck_assert_int_eq(list->count, COUNT(due));
    for (int i = 0; i < COUNT(due); i++) {
        ck_assert_str_eq(list->prices[i].code, due[i].code);
        ck_assert_str_eq(list->prices[i].unit, due[i].unit);
        ck_assert_str_eq(list->currencies[list->prices[i].currency].code, due[i].currency);
        ck_assert_int_eq(list->currencies[list->prices[i].currency].decimals, due[i].decimals);
        ck_assert_int_eq(list->prices[i].amount, due[i].amount);
    }
    ck_assert_int_eq(list->prices[1].mark.line, 5); /* a line break within quotes counts */
    arena_free(arena);
}
END_TEST

#define HEAD "code,unit,price,currency\n"
static const struct {
    const char *text, *fault;
    int line, column;
} faults[] = {
    {"", "prices-empty", 1, 1},
    {"\n\r\n", "prices-empty", 1, 1},
    {"code;unit;price;currency\na;m;1;EUR\n", "prices-semicolon", 1, 1},
    {"code\tunit\tprice\tcurrency\n", "prices-semicolon", 1, 1},
    {"line,quantity,unit,description,standard,for,note,needed,pack,packs,length-m,code,price,price-unit,currency,"
     "total\n",
     "prices-parts-list", 1, 88},
    {"line,quantity,unit,code,price,currency\n1,1,each,gland-BW-20S,9.40,GBP\n", "prices-parts-list", 1, 6},
    {"unit,price,currency\n", "prices-column-missing", 1, 1},
    {"code,unit,prices,currency\n", "prices-column-misspelt", 1, 11},
    {"Code,unit,price,currency\n", "prices-column-misspelt", 1, 1},
    {"code,unit,price,currency,price\n", "prices-column-twice", 1, 26},
    {HEAD "a,m,1\n", "prices-cell-count", 2, 1},
    {HEAD "a,m,1,EUR,\n", "prices-cell-count", 2, 1},
    {HEAD "a,m,\"1,EUR\n", "prices-quote-open", 2, 5},
    {HEAD "a,m,\"1\"2,EUR\n", "prices-quote-after", 2, 8},
    {HEAD "a\"b,m,1,EUR\n", "prices-quote-inside", 2, 2},
    {HEAD ",m,1,EUR\n", "prices-code-empty", 2, 1},
    {HEAD "a,m,1,EUR\nb,m,1,EUR\na,m,2,EUR\n", "prices-code-twice", 4, 1},
    {HEAD "a,,1,EUR\n", "prices-unit", 2, 3},
    {HEAD "a,100 m,1,EUR\n", "prices-unit", 2, 3},
    {HEAD "a,m,\"4,35\",EUR\n", "prices-comma", 2, 5},
    {HEAD "a,m,\"1,250.00\",EUR\n", "prices-comma", 2, 5},
    {HEAD "a,m,-1,EUR\n", "prices-amount", 2, 5},
    {HEAD "a,m,+1,EUR\n", "prices-amount", 2, 5},
    {HEAD "a,m,1e3,EUR\n", "prices-amount", 2, 5},
    {HEAD "a,m,.5,EUR\n", "prices-amount", 2, 5},
    {HEAD "a,m,5.,EUR\n", "prices-amount", 2, 5},
    {HEAD "a,m,05,EUR\n", "prices-amount", 2, 5},
    {HEAD "a,m,1.2.3,EUR\n", "prices-amount", 2, 5},
    {HEAD "a,m,1.00001,EUR\n", "prices-amount", 2, 5},
    {HEAD "a,m,1234567890,EUR\n", "prices-amount", 2, 5},
    {HEAD "a,m,EUR 4.35,EUR\n", "prices-amount", 2, 5},
    {HEAD "a,m,=1+1,EUR\n", "prices-amount", 2, 5},
    {HEAD "a,m,0x10,EUR\n", "prices-amount", 2, 5},
    {HEAD "a,m,1 0,EUR\n", "prices-amount", 2, 5},
    {HEAD "a,m,1,eur\n", "prices-currency-capitals", 2, 7},
    {HEAD "a,m,1,AAA\n", "prices-currency", 2, 7},
    {HEAD "a,m,1,XAU\n", "prices-currency", 2, 7},
    {HEAD "a,m,1,\xE2\x82\xAC\n", "prices-currency", 2, 7},
    {HEAD "a,m,1,EURO\n", "prices-currency", 2, 7},
    {HEAD "a\xFF,m,1,EUR\n", "prices-encoding", 2, 2},
    {HEAD "a\x01,m,1,EUR\n", "prices-control", 2, 2},
    {HEAD "a\xE2\x80\xAE,m,1,EUR\n", "prices-control", 2, 2},
    {HEAD "a,m,1,EUR\rb,m,1,EUR\n", "prices-control", 2, 10},
};

START_TEST(each_fault_is_told_with_its_place)
{
    struct Arena *arena = arena_new();
    struct Diag *diag;
    const struct PriceList *list = read_text(arena, faults[_i].text, &diag);
    ck_assert_ptr_null(list);
    ck_assert_msg(diag_count(diag) == 1, "%s: %s", faults[_i].fault,
                  diag_print(diag, arena, "p.csv", (struct Bytes){NULL, 0}));
    ck_assert_str_eq(diag_name(diag_at(diag, 0)->code), faults[_i].fault);
    ck_assert_int_eq(diag_at(diag, 0)->mark.line, faults[_i].line);
    ck_assert_int_eq(diag_at(diag, 0)->mark.column, faults[_i].column);
    arena_free(arena);
}
END_TEST

START_TEST(every_message_of_price_lists_has_a_row)
{
    for (int code = MSG_PRICES_EMPTY; code < MSG_PRICES_CURRENCIES_MANY; code++) { /* the two others: below */
        bool has = false;
        for (int i = 0; i < COUNT(faults); i++) {
            has = has || text_same(faults[i].fault, diag_name((enum DiagCode)code));
        }
        ck_assert_msg(has, "%s has no row", diag_name((enum DiagCode)code));
    }
}
END_TEST

START_TEST(too_much_is_refused)
{
    struct Arena *arena = arena_new();
    struct TextBuilder text = text_builder(arena);
    text_add(&text, HEAD);
    static const char many[] = "AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BHD BIF BMD BND BOB BRL BSD";
    for (int i = 0; i <= PRICES_CURRENCIES_MOST; i++) {
        text_print(&text, "a%d,m,1,%.3s\n", i, many + (ptrdiff_t)4 * i);
    }
    struct Diag *diag;
    ck_assert_ptr_null(read_text(arena, text_done(&text), &diag));
    ck_assert_uint_eq(diag_count(diag), 1);
    ck_assert_int_eq(diag_at(diag, 0)->code, MSG_PRICES_CURRENCIES_MANY);
    char *large = arena_array(arena, READ_LIMIT_BYTES + 1, 1);
    ck_assert_ptr_nonnull(large);
    memset(large, 'a', READ_LIMIT_BYTES + 1);
    diag = diag_new(arena);
    ck_assert_ptr_null(read_prices(arena, diag, (struct Bytes){large, READ_LIMIT_BYTES + 1}));
    ck_assert_int_eq(diag_at(diag, 0)->code, MSG_PRICES_TOO_LARGE);
    arena_free(arena);
}
END_TEST

/* Any bytes at all end in a list or in faults, never in both or neither. Half of the tries are rows of four cells, so
 * that some are read; the others are anything. */
START_TEST(hostile_bytes_are_read_or_refused)
{
    static const char *const cells[4][4] = {
        {"a", "b", "\"x,\"", ""}, {"m", "each", "pack", "m"}, {"4.35", "7", "0.5", ""}, {"EUR", "CHF", "EUR", "EUR"}};
    static const char *const scraps[] = {"\"",   "\"\"", ",",    "\r\n", "\n",   "\r", "code",
                                         "4.35", "EUR",  "\xFF", "\t",   "\xEF", ";",  "m"};
    unsigned chance = 12345;
    int read = 0, refused = 0;
    for (int try = 0; try < 20000; try++) {
        char text[512] = HEAD;
        size_t length = try % 2 == 0 ? strlen(HEAD) : 0;
        for (int i = 0; i < 8 + try % 9; i++) {
            chance = chance * 1664525U + 1013904223U;
            const unsigned lot = chance >> 16;
            const char *scrap =
                try % 2 == 0 && lot % 11 != 0 ? cells[i % 4][lot % 4] : scraps[lot % (unsigned)COUNT(scraps)];
            for (const char *from = scrap; *from != '\0'; from++) {
                text[length++] = *from;
            }
            if (try % 2 == 0) {
                text[length++] = i % 4 == 3 ? '\n' : ',';
            }
        }
        struct Arena *arena = arena_new();
        struct Diag *diag = diag_new(arena);
        const struct PriceList *list = read_prices(arena, diag, (struct Bytes){text, length});
        ck_assert((list == NULL) == (diag_errors(diag) > 0));
        for (size_t i = 0; i < diag_count(diag); i++) {
            ck_assert_int_ge(diag_at(diag, i)->mark.line, 1);
        }
        read += list != NULL ? 1 : 0;
        refused += list == NULL ? 1 : 0;
        arena_free(arena);
    }
    ck_assert_int_gt(read, 100);
    ck_assert_int_gt(refused, 1000);
}
END_TEST

static const struct Part parts[] = {
    {.code = "cable-x-feeder", .article = "cable-x", .quantity = 67, .unit = "m"},
    {.code = "gland", .quantity = 3, .unit = "each", .pack = 2, .packs = 2, .pack_word = "pack"},
    {.code = "duct", .quantity = 30, .unit = "m", .pack = 25, .packs = 2, .pack_word = "coil"},
    {.code = "clip", .quantity = 11, .unit = "each"},
    {.code = "rope", .quantity = 12.345, .unit = "m"},
    {.code = "spare", .quantity = 0, .unit = "m"},
};
static const struct PartsList parts_list = {.count = COUNT(parts), .parts = parts};

static const struct PartsList *priced(struct Arena *arena, const char *rows)
{
    struct Diag *diag;
    const struct PriceList *prices = read_text(arena, arena_print(arena, HEAD "%s", rows), &diag);
    ck_assert_ptr_nonnull(prices);
    const struct PartsList *list = parts_priced(arena, &parts_list, prices);
    ck_assert_ptr_nonnull(list);
    return list;
}

/* 67 x 6.355 = 425.785; 2 packs x 9.40 = 18.80; 2 coils of 25 m x 1.10 = 55.00 (whole coils are paid for); 12.345 x 0.5
 * = 6.1725, rounded half up to 6.173: 505.758. The clips are in francs. */
START_TEST(sums_are_exact)
{
    struct Arena *arena = arena_new();
    const struct PartsList *list = priced(arena, "cable-x,m,6.355,EUR\ngland,pack,9.40,EUR\nduct,m,1.10,EUR\n"
                                                 "clip,each,0.35,CHF\nrope,m,0.5,EUR\n");
    static const char *const totals[] = {"425.785", "18.80", "55.00", "3.85", "6.173", ""};
    for (int i = 0; i < COUNT(parts); i++) {
        ck_assert_str_eq(list->prices[i].total_text, totals[i]);
    }
    ck_assert_int_eq(list->total_count, 2);
    ck_assert_str_eq(list->totals[0].currency, "EUR");
    ck_assert_str_eq(list->totals[0].text, "505.758");
    ck_assert_int_eq(list->totals[0].lines, 4);
    ck_assert_str_eq(list->totals[1].text, "3.85");
    ck_assert_int_eq(list->unpriced_count, 0); /* nothing is bought of the last */
    arena_free(arena);
}
END_TEST

START_TEST(packs_by_the_pack_by_its_word_and_by_the_piece)
{
    struct Arena *arena = arena_new();
    const struct PartsList *list = priced(arena, "gland,each,4,EUR\nduct,coil,20,EUR\nclip,each,1,EUR\n");
    ck_assert_int_eq(list->prices[1].total, 1600); /* 2 packs of 2 at 4 */
    ck_assert_int_eq(list->prices[2].total, 4000);
    ck_assert_int_eq(list->prices[3].total, 1100);
    arena_free(arena);
}
END_TEST

/* Amounts with more decimals than the coin has: noughts behind the coin's go, all else stays; a total that is no whole
 * coin says what it is in coin. */
START_TEST(parts_of_a_coin_are_kept_and_said)
{
    static const struct {
        const char *rows, *each, *total, *sum, *coin;
    } rows[] = {
        {"clip,each,0.0425,EUR\n", "0.0425", "0.4675", "0.4675", "0.47"},
        {"clip,each,0.0400,EUR\n", "0.04", "0.44", "0.44", ""},
        {"clip,each,7,EUR\n", "7.00", "77.00", "77.00", ""},
        {"clip,each,7,JPY\n", "7", "77", "77", ""},
        {"clip,each,0.5,JPY\n", "0.5", "5.5", "5.5", "6"},
        {"clip,each,1.5,KWD\n", "1.500", "16.500", "16.500", ""},
        {"clip,each,0.0005,KWD\n", "0.0005", "0.0055", "0.0055", "0.006"},
    };
    for (int i = 0; i < COUNT(rows); i++) {
        struct Arena *arena = arena_new();
        const struct PartsList *list = priced(arena, rows[i].rows);
        ck_assert_str_eq(list->prices[3].each_text, rows[i].each);
        ck_assert_str_eq(list->prices[3].total_text, rows[i].total);
        ck_assert_str_eq(list->totals[0].text, rows[i].sum);
        ck_assert_str_eq(list->totals[0].coin_text, rows[i].coin);
        arena_free(arena);
    }
}
END_TEST

/* Drums of 100 m and 50 m are bought and 30 m by the metre. What has a price as a whole length is paid by it. */
START_TEST(whole_lengths_by_their_own_price)
{
    static const struct PartOpened opened[] = {{.bought = true, .length_m = 100},
                                               {.bought = true, .length_m = 50},
                                               {.bought = true, .length_m = 50},
                                               {.bought = false, .length_m = 100}};
    static const struct PartsCut cut = {
        .code = "cable-x", .planned = true, .whole_lengths = 3, .opened_count = COUNT(opened), .opened = opened};
    static const struct Part lines[] = {{.code = "cable-x", .article = "cable-x", .quantity = 200, .unit = "m"},
                                        {.code = "cable-x-metre", .article = "cable-x", .quantity = 30, .unit = "m"}};
    static const struct PartsList cut_list = {.count = 2, .parts = lines, .cut_count = 1, .cuts = &cut};
    static const struct {
        const char *rows, *total, *unit, *metre, *unpriced;
        double base;
    } rows[] = {
        {"cable-x,m,2,EUR\n", "400.00", "m", "60.00", "", 1},
        {"cable-x,m,2,EUR\ncable-x,drum-100,180,EUR\n", "380.00", "line", "60.00", "", 200},
        {"cable-x,m,2,EUR\ncable-x,drum-100,180,EUR\ncable-x,coil-50,95,EUR\n", "370.00", "line", "60.00", "", 200},
        {"cable-x,drum-100,180,EUR\n", "", "", "", "cable-x (no price by the metre for the rest of it)", 0},
        {"cable-x,drum-100,180,EUR\ncable-x,drum-50,95,GBP\n", "", "", "", "cable-x (its prices are in two currencies)",
         0},
    };
    for (int i = 0; i < COUNT(rows); i++) {
        struct Arena *arena = arena_new();
        struct Diag *diag;
        const struct PriceList *prices = read_text(arena, arena_print(arena, HEAD "%s", rows[i].rows), &diag);
        ck_assert_ptr_nonnull(prices);
        const struct PartsList *list = parts_priced(arena, &cut_list, prices);
        ck_assert_str_eq(list->prices[0].total_text, rows[i].total);
        ck_assert_str_eq(list->prices[0].unit, rows[i].unit);
        ck_assert_double_eq(list->prices[0].base, rows[i].base);
        ck_assert_str_eq(list->prices[1].total_text, rows[i].metre);
        ck_assert_str_eq(list->unpriced_count > 0 ? said(arena, list->unpriced[0]) : "", rows[i].unpriced);
        arena_free(arena);
    }
}
END_TEST

/* A coil of duct that comes 25 m a coil, priced as that; the same length twice is a slip. */
START_TEST(coils_by_their_length)
{
    struct Arena *arena = arena_new();
    const struct PartsList *list = priced(arena, "duct,coil-25,30,EUR\n");
    ck_assert_str_eq(list->prices[2].total_text, "60.00");
    ck_assert_double_eq(list->prices[2].base, 25);
    struct Diag *diag;
    ck_assert_ptr_null(read_text(arena, HEAD "a,drum-100,1,EUR\na,coil-100,2,EUR\n", &diag));
    ck_assert_str_eq(diag_name(diag_at(diag, 0)->code), "prices-code-twice");
    arena_free(arena);
}
END_TEST

START_TEST(what_has_no_price_is_listed)
{
    struct Arena *arena = arena_new();
    const struct PartsList *list = priced(arena, "cable-x,each,6,EUR\ngland,m,4,EUR\nduct,,,\nclip,pack,1,EUR\n");
    static const char *const due[] = {
        "cable-x (its price is for \"each\", but it is sold by \"m\")",
        "gland (its price is for \"m\", but it is sold by \"pack\")",
        "duct",
        "clip (its price is for \"pack\", but it is sold by \"each\")",
        "rope",
    };
    ck_assert_int_eq(list->unpriced_count, COUNT(due));
    for (int i = 0; i < COUNT(due); i++) {
        ck_assert_str_eq(said(arena, list->unpriced[i]), due[i]);
    }
    ck_assert_int_eq(list->totals[0].amount, 0);
    ck_assert_ptr_nonnull(strstr(said(arena, list->unpriced_text), "not in any total: cable-x (its price"));
    ck_assert_ptr_nonnull(strstr(said(arena, list->unpriced_text), ", duct, clip"));
    arena_free(arena);
}
END_TEST

/* What would not fit into a whole number is left out and said, line or total. */
START_TEST(too_large_is_said)
{
    const struct Part many[] = {{.code = "a", .quantity = 1e6, .unit = "m"},
                                {.code = "b", .quantity = 9e5, .unit = "m"}};
    const struct PartsList list = {.count = 2, .parts = many};
    const struct PriceCurrency currency = {"EUR", 4, 2};
    const struct Price prices[] = {{.code = "a", .unit = "m", .amount = 9999999999999},
                                   {.code = "b", .unit = "m", .amount = 5000000000000}};
    const struct PriceList price_list = {1, &currency, 2, prices};
    struct Arena *arena = arena_new();
    const struct PartsList *out = parts_priced(arena, &list, &price_list);
    ck_assert_int_eq(out->unpriced_count, 1);
    ck_assert_str_eq(said(arena, out->unpriced[0]), "a (its total is too large to be added up)");
    ck_assert_str_eq(out->totals[0].text, "450000000000000.00");
    arena_free(arena);
}
END_TEST

START_TEST(failing_memory_gives_nothing)
{
    struct Arena *texts = arena_new();
    struct TextBuilder text = text_builder(texts);
    text_add(&text, HEAD "cable-x,m,6.355,EUR\ngland,pack,9.40,EUR\n\"duct\",m,1.10,CHF\n");
    for (int i = 0; i < 3000; i++) {
        text_print(&text, "\"more-%d\",each,%d.50,EUR\n", i, i);
    }
    const struct Bytes source = {text_done(&text), text.length};
    int failed = 0;
    bool done = false;
    for (long blocks = 0; blocks < 1000 && !done; blocks++) {
        struct Arena *arena = arena_new();
        struct Diag *diag = diag_new(arena);
        arena_fail_after(arena, blocks);
        const struct PriceList *prices = read_prices(arena, diag, source);
        done = prices != NULL && parts_priced(arena, &parts_list, prices) != NULL;
        ck_assert(done != arena_failed(arena));
        failed += done ? 0 : 1;
        arena_free(arena);
    }
    ck_assert(done && failed > 3);
    arena_free(texts);
}
END_TEST

static const char route[] = "wend: 1\n"
                            "job: {title: Shed}\n"
                            "supply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
                            "runs:\n"
                            "  feeder:\n"
                            "    load: {current: 10 A}\n"
                            "    cable: {type: BS5467, cores: 3, size: 2.5 mm2}\n"
                            "segments:\n"
                            "  - {name: wall, way: wall, length: 19 m}\n"
                            "parts: {prices: mine.csv, spare-cable: 0 %}\n";

START_TEST(the_library_prices_a_route)
{
    static const char good[] = HEAD "cable-BS5467-3x2.5,m,2.15,EUR\n", bad[] = HEAD "cable,m,2;15,EUR\n";
    struct Wend *wend = wend_plan("shed", route, strlen(route));
    ck_assert_int_eq(wend_status(wend), WEND_PASSES);
    ck_assert_str_eq(wend_prices_name(wend), "mine.csv");
    ck_assert_ptr_null(wend_parts(wend)->prices);
    ck_assert_ptr_nonnull(strstr(wend_document(wend, WEND_PARTS_CSV).data, "the price list mine.csv was not read"));
    ck_assert_int_eq(wend_price(wend, good, strlen(good)), WEND_PASSES);
    ck_assert_str_eq(wend_parts(wend)->prices[0].total_text, "43.00"); /* 19 m and 2 x 0.5 m */
    ck_assert_ptr_null(strstr(wend_document(wend, WEND_PARTS_CSV).data, "was not read"));
    ck_assert_ptr_nonnull(strstr(wend_document(wend, WEND_PLAN_XML).data, "<total currency=\"EUR\" amount=\"43.00\""));
    ck_assert_str_eq(wend_diagnostics_printed(wend_prices_diagnostics(wend), "mine.csv"), "");
    ck_assert_int_eq(wend_price(wend, bad, strlen(bad)), WEND_INPUT_WRONG);
    ck_assert_ptr_nonnull(strstr(wend_diagnostics_printed(wend_prices_diagnostics(wend), "mine.csv"),
                                 "mine.csv:2:9: error: \"2;15\" is not a price"));
    ck_assert_ptr_null(wend_document(wend, WEND_PARTS_CSV).data);
    ck_assert_int_eq(wend_price(wend, good, strlen(good)), WEND_INPUT_WRONG); /* there is no plan any more */
    wend_free(wend);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("prices");
    TCase *tests = tcase_create("prices");
    tcase_add_test(tests, a_list_is_read_into_whole_numbers);
    tcase_add_loop_test(tests, each_fault_is_told_with_its_place, 0, COUNT(faults));
    tcase_add_test(tests, every_message_of_price_lists_has_a_row);
    tcase_add_test(tests, too_much_is_refused);
    tcase_add_test(tests, hostile_bytes_are_read_or_refused);
    tcase_add_test(tests, sums_are_exact);
    tcase_add_test(tests, packs_by_the_pack_by_its_word_and_by_the_piece);
    tcase_add_test(tests, parts_of_a_coin_are_kept_and_said);
    tcase_add_test(tests, whole_lengths_by_their_own_price);
    tcase_add_test(tests, coils_by_their_length);
    tcase_add_test(tests, what_has_no_price_is_listed);
    tcase_add_test(tests, too_large_is_said);
    tcase_add_test(tests, failing_memory_gives_nothing);
    tcase_add_test(tests, the_library_prices_a_route);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
