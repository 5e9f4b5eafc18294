/* The walk from a tree to an Order. The field tables say what there may be; here is what they cannot: the version,
 * codes of countries and currencies, and days that must follow each other. All errors are reported together. */
#include "order_fields_private.h"

#include <string.h>

bool read_is_date(const char *text)
{
    return fields_is_date(text);
}

bool code_listed(const struct CodeList *list, const char *code)
{
    const size_t letters = (size_t)list->letters;
    if (strlen(code) != letters) {
        return false;
    }
    for (const char *at = list->codes; *at != '\0'; at += letters + (at[letters] == ' ')) {
        if (memcmp(at, code, letters) == 0) {
            return true;
        }
    }
    return false;
}

const char *code_in_capitals(struct Arena *arena, const struct CodeList *list, const char *written)
{
    char code[8] = "";
    for (int i = 0; i < list->letters && written[i] != '\0'; i++) {
        code[i] = written[i];
        if (written[i] >= 'a' && written[i] <= 'z') {
            code[i] = (char)(written[i] - 'a' + 'A');
        }
    }
    const bool only_letters = strlen(written) == (size_t)list->letters && code_listed(list, code);
    return only_letters ? arena_text(arena, code, strlen(code)) : NULL;
}

static void check_code(struct Reader *reader, const struct TreeNode *map, const char *key, const char *code,
                       const struct CodeList *list, enum DiagCode unknown)
{
    const struct TreeEntry *entry = fields_find(map, key);
    if (entry == NULL || code == NULL || *code == '\0' || code_listed(list, code)) {
        return;
    }
    const char *meant = code_in_capitals(reader->arena, list, code);
    const char *quoted = fields_quote(reader, code);
    if (meant != NULL) {
        reader_report(reader, MSG_WORD_MISSPELT, entry->value, DIAG_WORDS(key, quoted, meant));
    } else {
        reader_report(reader, unknown, entry->value, DIAG_WORDS(key, quoted));
    }
}

static const struct TreeNode *map_of(const struct TreeNode *root, const char *key)
{
    const struct TreeEntry *entry = fields_find(root, key);
    return entry != NULL ? entry->value : NULL;
}

static void check_parties(struct Reader *reader, const struct TreeNode *root, const struct Order *order)
{
    const struct {
        const char *key;
        const struct OrderParty *party;
    } parties[] = {{"buyer", &order->buyer}, {"seller", &order->seller}, {"delivery", &order->delivery}};
    for (size_t i = 0; i < sizeof parties / sizeof parties[0]; i++) {
        check_code(reader, map_of(root, parties[i].key), "country", parties[i].party->country, country_codes(),
                   MSG_COUNTRY_UNKNOWN);
    }
}

static bool is_given(const char *text)
{
    return text != NULL && *text != '\0';
}

/* A day may be given from outside the file, which then has the last word. */
static void check_days(struct Reader *reader, const struct TreeNode *root, const char *date, struct Order *order)
{
    const struct TreeEntry *details = fields_find(root, "order");
    if (is_given(date)) {
        order->date = arena_text(reader->arena, date, strlen(date));
    } else if (details != NULL && details->value->kind == TREE_MAP && order->date != NULL && *order->date == '\0') {
        reader_report(reader, MSG_KEY_MISSING, details->key,
                      DIAG_WORDS("order", "date", "the day the order is placed, or give it as --date"));
    }
    if (details != NULL && is_given(order->date) && is_given(order->delivery_date) &&
        strcmp(order->delivery_date, order->date) < 0) {
        const struct TreeEntry *entry = fields_find(details->value, "delivery-date");
        reader_report(reader, MSG_DELIVERY_BEFORE_ORDER, entry->value, DIAG_WORDS(order->delivery_date, order->date));
    }
}

const struct Order *read_order(struct Arena *arena, struct Diag *diag, struct Bytes source, const char *date)
{
    const size_t errors_before = diag_errors(diag);
    const struct TreeNode *root = tree_read(arena, diag, source);
    struct Order *order = arena_alloc(arena, sizeof *order);
    if (root == NULL || order == NULL || root->kind == TREE_REFUSED) {
        return NULL;
    }
    struct Reader reader = {.arena = arena, .diag = diag, .source = source};
    if (fields_node_empty(root) || (root->kind == TREE_SCALAR && root->plain && text_same(root->text, "null"))) {
        diag_report(diag, MSG_FILE_EMPTY, (struct Mark){1, 1}, 0, DIAG_NO_WORDS);
        return NULL;
    }
    if (root->kind != TREE_MAP) {
        reader_report(&reader, MSG_ORDER_TOP_NOT_MAPPING, root, DIAG_NO_WORDS);
        return NULL;
    }
    static const struct VersionKey version = {"wend-order", MSG_ORDER_VERSION_MISSING, MSG_ORDER_VERSION_UNKNOWN,
                                              MSG_ORDER_VERSION_NOT_FIRST};
    if (reader_version(&reader, root, &version) != VERSION_HOLDS) {
        return NULL;
    }
    fields_read(&reader, order_fields(ORDER_TABLE_TOP), root, (struct Spot){"", root->mark, 1}, 0, order);
    order->delivery.account = "";
    if (!arena_failed(arena)) {
        check_code(&reader, map_of(root, "order"), "currency", order->currency, currency_codes(), MSG_CURRENCY_UNKNOWN);
        check_parties(&reader, root, order);
        check_days(&reader, root, date, order);
    }
    return arena_failed(arena) || diag_errors(diag) > errors_before ? NULL : order;
}
