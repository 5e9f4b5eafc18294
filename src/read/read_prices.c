/* The user's own price list: which column is which, then a price a line. Amounts are read digit by digit into whole
 * numbers; nothing is rounded, and what is not a plain price is refused with its place. */
#include "csv_rows_private.h"
#include "order_fields_private.h"
#include "read_private.h"

#include <stdlib.h>
#include <string.h>

enum Column { COLUMN_CODE, COLUMN_UNIT, COLUMN_PRICE, COLUMN_CURRENCY, COLUMN_COUNT };
static const char *const column_names[COLUMN_COUNT] = {"code", "unit", "price", "currency"};

enum { UNIT_LONGEST = 20, WHOLE_DIGITS_MOST = 4 };

struct PricesWalk {
    struct Arena *arena;
    struct Diag *diag;
    const struct CsvRow *head;
    int at[COLUMN_COUNT]; /* where each column stands, -1 when it does not */
    struct PriceCurrency currencies[PRICES_CURRENCIES_MOST];
    int currency_count;
    struct Price *prices;
    int *decimals; /* that each price is written with */
    int count;
};

static void tell(const struct PricesWalk *walk, enum DiagCode code, const struct CsvCell *cell, const char *word)
{
    diag_report(walk->diag, code, cell->mark, cell->width, word != NULL ? DIAG_WORDS(word) : DIAG_NO_WORDS);
}

static const char *head_text(const void *list, size_t index)
{
    return ((const struct CsvRow *)list)->cells[index].text;
}

static int find_column(const struct PricesWalk *walk, const char *name)
{
    for (int i = 0; i < walk->head->count; i++) {
        if (text_same(walk->head->cells[i].text, name)) {
            return i;
        }
    }
    return -1;
}

/* A column that is not one of ours may be one with a slip in it. */
static void report_missing(const struct PricesWalk *walk, const char *name)
{
    const char *near = suggest_near(name, walk->head, (size_t)walk->head->count, head_text);
    for (int i = 0; near != NULL && i < walk->head->count; i++) {
        const struct CsvCell *cell = &walk->head->cells[i];
        if (cell->text == near) {
            diag_report(walk->diag, MSG_PRICES_COLUMN_MISSPELT, cell->mark, cell->width, DIAG_WORDS(name, near));
            return;
        }
    }
    diag_report(walk->diag, MSG_PRICES_COLUMN_MISSING, walk->head->mark, 1, DIAG_WORDS(name));
}

/* The program's own lists of parts have all four columns too, but there `unit` is not what the price is for: a pack
 * would be taken for one. */
static bool is_parts_list(const struct PricesWalk *walk)
{
    static const char *const theirs[] = {"price-unit", "needed", "quantity"};
    for (size_t i = 0; i < sizeof theirs / sizeof theirs[0]; i++) {
        const int at = find_column(walk, theirs[i]);
        const bool sure = i == 0 || find_column(walk, "line") >= 0;
        if (at >= 0 && sure) {
            tell(walk, MSG_PRICES_PARTS_LIST, &walk->head->cells[at], theirs[i]);
            return true;
        }
    }
    return false;
}

static bool read_head(struct PricesWalk *walk)
{
    const struct CsvCell *first = &walk->head->cells[0];
    if (walk->head->spoilt) {
        return false;
    }
    if (walk->head->count == 1 && (strchr(first->text, ';') != NULL || strchr(first->text, '\t') != NULL)) {
        tell(walk, MSG_PRICES_SEMICOLON, first, strchr(first->text, ';') != NULL ? "semicolons" : "tabs");
        return false;
    }
    if (is_parts_list(walk)) {
        return false;
    }
    bool good = true;
    for (int c = 0; c < COLUMN_COUNT; c++) {
        walk->at[c] = find_column(walk, column_names[c]);
        if (walk->at[c] < 0) {
            report_missing(walk, column_names[c]);
            good = false;
        }
        for (int i = walk->at[c] + 1; walk->at[c] >= 0 && i < walk->head->count; i++) {
            if (text_same(walk->head->cells[i].text, column_names[c])) {
                tell(walk, MSG_PRICES_COLUMN_TWICE, &walk->head->cells[i], column_names[c]);
                good = false;
            }
        }
    }
    return good;
}

/* "12.50" -> 1250 with 2 decimals. */
static bool read_amount(const char *text, int64_t *amount, int *decimals)
{
    const size_t whole = strspn(text, "0123456789");
    const size_t behind = text[whole] == '.' ? strspn(text + whole + 1, "0123456789") : 0;
    const bool pointed = text[whole] == '.';
    if (whole == 0 || whole > PRICES_DIGITS_MOST || (whole > 1 && text[0] == '0') || (pointed && behind == 0) ||
        behind > PRICES_DECIMALS_MOST || text[whole + behind + (pointed ? 1 : 0)] != '\0') {
        return false;
    }
    *amount = 0;
    for (const char *at = text; *at != '\0'; at++) {
        *amount = *at == '.' ? *amount : 10 * *amount + (*at - '0');
    }
    *decimals = (int)behind;
    return true;
}

/* A word: what it may say is decided by the articles, which know what they are sold in. */
static bool unit_good(const char *text)
{
    const size_t length = strlen(text);
    return length > 0 && length <= UNIT_LONGEST && strspn(text, "abcdefghijklmnopqrstuvwxyz0123456789-") == length;
}

/* 100 of "drum-100", "coil-100" and "length-100"; 0 of what is no whole length. */
static int whole_metres(const char *unit)
{
    static const char *const words[] = {"drum-", "coil-", "length-"};
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++) {
        const size_t before = strlen(words[i]);
        const char *digits = unit + before;
        if (strncmp(unit, words[i], before) == 0 && *digits != '0' && strlen(digits) <= WHOLE_DIGITS_MOST &&
            strspn(digits, "0123456789") == strlen(digits)) {
            return (int)strtol(digits, NULL, 10);
        }
    }
    return 0;
}

/* True for a code of ISO 4217; else tells what is wrong with it. */
static bool currency_good(const struct PricesWalk *walk, const struct CsvCell *cell)
{
    const char *meant = code_in_capitals(walk->arena, currency_codes(), cell->text);
    const bool good = code_listed(currency_codes(), cell->text);
    if (!good && meant != NULL) {
        diag_report(walk->diag, MSG_PRICES_CURRENCY_CAPITALS, cell->mark, cell->width, DIAG_WORDS(cell->text, meant));
    } else if (!good) {
        tell(walk, MSG_PRICES_CURRENCY, cell, cell->text);
    }
    return good;
}

/* Index of the currency, taken on when it is new; -1 when there are too many. */
static int currency_at(struct PricesWalk *walk, const char *code)
{
    for (int i = 0; i < walk->currency_count; i++) {
        if (text_same(walk->currencies[i].code, code)) {
            return i;
        }
    }
    if (walk->currency_count == PRICES_CURRENCIES_MOST) {
        return -1;
    }
    const int coin_decimals = currency_coin_decimals(code);
    walk->currencies[walk->currency_count] =
        (struct PriceCurrency){.code = code, .decimals = coin_decimals, .coin_decimals = coin_decimals};
    return walk->currency_count++;
}

static bool row_good(const struct PricesWalk *walk, const struct CsvRow *row)
{
    if (row->spoilt) {
        return false;
    }
    if (row->count != walk->head->count) {
        diag_report(
            walk->diag, MSG_PRICES_CELL_COUNT, row->mark, 1,
            DIAG_WORDS(arena_print(walk->arena, "%d", row->count), arena_print(walk->arena, "%d", walk->head->count)));
        return false;
    }
    return *row->cells[walk->at[COLUMN_PRICE]].text != '\0';
}

static void read_price(struct PricesWalk *walk, const struct CsvRow *row)
{
    if (!row_good(walk, row)) {
        return;
    }
    const struct CsvCell *code = &row->cells[walk->at[COLUMN_CODE]], *unit = &row->cells[walk->at[COLUMN_UNIT]];
    const struct CsvCell *amount = &row->cells[walk->at[COLUMN_PRICE]];
    const struct CsvCell *currency = &row->cells[walk->at[COLUMN_CURRENCY]];
    struct Price price = {.code = code->text, .unit = unit->text, .mark = code->mark};
    price.whole_m = whole_metres(unit->text);
    int decimals = 0;
    if (*code->text == '\0') {
        tell(walk, MSG_PRICES_CODE_EMPTY, code, NULL);
    } else if (!unit_good(unit->text)) {
        tell(walk, MSG_PRICES_UNIT, unit, unit->text);
    } else if (!read_amount(amount->text, &price.amount, &decimals)) {
        tell(walk, strchr(amount->text, ',') != NULL ? MSG_PRICES_COMMA : MSG_PRICES_AMOUNT, amount, amount->text);
    } else if (!currency_good(walk, currency)) {
        return;
    } else if ((price.currency = currency_at(walk, currency->text)) < 0) {
        tell(walk, MSG_PRICES_CURRENCIES_MANY, currency, NULL);
    } else {
        struct PriceCurrency *used = &walk->currencies[price.currency];
        used->decimals = decimals > used->decimals ? decimals : used->decimals;
        walk->decimals[walk->count] = decimals;
        walk->prices[walk->count++] = price;
    }
}

/* Every amount of a currency in the same parts of it: 7.5 with two decimals is 750. */
static void level_decimals(struct PricesWalk *walk)
{
    for (int i = 0; i < walk->count; i++) {
        for (int d = walk->decimals[i]; d < walk->currencies[walk->prices[i].currency].decimals; d++) {
            walk->prices[i].amount *= 10;
        }
    }
}

static int by_code(const void *left, const void *right)
{
    const struct Price *a = left, *b = right;
    const int order = strcmp(a->code, b->code);
    if (order == 0 && a->whole_m != b->whole_m) {
        return a->whole_m < b->whole_m ? -1 : 1;
    }
    return order != 0 ? order : a->mark.line != b->mark.line ? (a->mark.line < b->mark.line ? -1 : 1) : 0;
}

static void tell_twice(const struct PricesWalk *walk)
{
    for (int i = 1; i < walk->count; i++) {
        const struct Price *price = &walk->prices[i];
        if (text_same(price->code, walk->prices[i - 1].code) && price->whole_m == walk->prices[i - 1].whole_m) {
            diag_report(walk->diag, MSG_PRICES_CODE_TWICE, price->mark, (int)utf8_count(price->code),
                        DIAG_WORDS(price->code, arena_print(walk->arena, "%d", walk->prices[i - 1].mark.line)));
        }
    }
}

static const struct PriceList *finish(struct PricesWalk *walk, size_t errors_before)
{
    struct PriceList *list = arena_alloc(walk->arena, sizeof *list);
    struct PriceCurrency *currencies = arena_array(walk->arena, (size_t)walk->currency_count + 1, sizeof *currencies);
    if (list == NULL || currencies == NULL || arena_failed(walk->arena)) {
        return NULL;
    }
    qsort(walk->prices, (size_t)walk->count, sizeof *walk->prices, by_code);
    tell_twice(walk);
    memcpy(currencies, walk->currencies, (size_t)walk->currency_count * sizeof *currencies);
    *list = (struct PriceList){walk->currency_count, currencies, walk->count, walk->prices};
    return diag_errors(walk->diag) > errors_before || arena_failed(walk->arena) ? NULL : list;
}

const struct PriceList *read_prices(struct Arena *arena, struct Diag *diag, struct Bytes source)
{
    const size_t errors_before = diag_errors(diag);
    struct PricesWalk walk = {.arena = arena, .diag = diag};
    struct CsvRows rows = {0};
    if (source.length > READ_LIMIT_BYTES) {
        diag_report(diag, MSG_PRICES_TOO_LARGE, (struct Mark){0, 0}, 1, DIAG_NO_WORDS);
        return NULL;
    }
    if (!csv_rows(arena, diag, source, &rows)) {
        return NULL;
    }
    if (rows.count == 0) {
        diag_report(diag, MSG_PRICES_EMPTY, (struct Mark){1, 1}, 1, DIAG_NO_WORDS);
        return NULL;
    }
    walk.head = &rows.rows[0];
    walk.prices = arena_array(arena, (size_t)rows.count, sizeof *walk.prices);
    walk.decimals = arena_array(arena, (size_t)rows.count, sizeof *walk.decimals);
    if (arena_failed(arena) || !read_head(&walk)) {
        return NULL;
    }
    for (int i = 1; i < rows.count; i++) {
        read_price(&walk, &rows.rows[i]);
    }
    level_decimals(&walk); /* before sorting: decimals stand in the order of the file */
    return finish(&walk, errors_before);
}
