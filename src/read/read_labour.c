/* The walk from a tree to labour figures. The field tables say what there may be; here is what they cannot: the
 * version, that low, likely and high rise, the time of day, and the currency. */
#include "labour_fields_private.h"
#include "order_fields_private.h"

static const struct TreeNode *value_of(const struct TreeNode *map, const char *key)
{
    const struct TreeEntry *entry = fields_find(map, key);
    return entry != NULL ? entry->value : NULL;
}

static void check_task(struct Reader *reader, const struct TreeNode *tasks, enum TaskKind kind,
                       struct LabourFigure *figure)
{
    const char *word =
        labour_fields(LABOUR_TABLE_TASKS)->fields[kind].key; /* its rows stand in the order of the kinds */
    const struct TreeEntry *entry = fields_find(tasks, word);
    figure->hands = figure->hands_q.given ? (int)figure->hands_q.value : 0;
    if (entry == NULL || !figure->given) {
        return;
    }
    figure->mark = entry->key->mark;
    const double low = figure->low_min.value, likely = figure->likely_min.value, high = figure->high_min.value;
    if (low > likely || likely > high) {
        reader_report(reader, MSG_LABOUR_ORDER, entry->key,
                      DIAG_WORDS(word, quantity_show(reader->arena, low, MEASURE_MINUTE),
                                 quantity_show(reader->arena, likely, MEASURE_MINUTE),
                                 quantity_show(reader->arena, high, MEASURE_MINUTE)));
    }
}

static bool digits(const char *text, int *out)
{
    const bool good = text[0] >= '0' && text[0] <= '9' && text[1] >= '0' && text[1] <= '9';
    *out = good ? 10 * (text[0] - '0') + (text[1] - '0') : 0;
    return good;
}

static void check_clock(struct Reader *reader, const struct TreeNode *root, struct Labour *labour)
{
    const struct TreeNode *node = value_of(value_of(root, "day"), "starts");
    int hours = 0, minutes = 0;
    if (labour->starts != NULL && *labour->starts == '\0') {
        labour->starts = "08:00";
    }
    if (labour->starts == NULL) {
        return;
    }
    const bool good = digits(labour->starts, &hours) && labour->starts[2] == ':' &&
                      digits(labour->starts + 3, &minutes) && labour->starts[5] == '\0' && hours < 24 && minutes < 60;
    labour->starts_min = 60 * hours + minutes;
    if (!good && node != NULL) {
        reader_report(reader, MSG_LABOUR_CLOCK, node, DIAG_WORDS(fields_quote(reader, labour->starts)));
    }
}

static void check_currency(struct Reader *reader, const struct TreeNode *root, struct LabourRates *rates)
{
    const struct TreeNode *node = value_of(value_of(root, "rates"), "currency");
    if (node == NULL || rates->currency == NULL || *rates->currency == '\0') {
        return;
    }
    const char *quoted = fields_quote(reader, rates->currency);
    const char *meant = code_in_capitals(reader->arena, currency_codes(), rates->currency);
    if (code_listed(currency_codes(), rates->currency)) {
        rates->coin_decimals = currency_coin_decimals(rates->currency);
    } else if (meant != NULL) {
        reader_report(reader, MSG_WORD_MISSPELT, node, DIAG_WORDS("currency", quoted, meant));
    } else {
        reader_report(reader, MSG_CURRENCY_UNKNOWN, node, DIAG_WORDS("currency", quoted));
    }
}

static void check_people(struct Reader *reader, const struct TreeNode *root, struct Labour *labour)
{
    const struct TreeNode *node = value_of(root, "electricians");
    if (labour->electricians.given && labour->electricians.value > labour->hands.value && node != NULL) {
        reader_report(reader, MSG_LABOUR_ELECTRICIANS, node,
                      DIAG_WORDS(number_text(reader->arena, labour->electricians.value, 0),
                                 number_text(reader->arena, labour->hands.value, 0)));
    }
}

const struct Labour *read_labour(struct Arena *arena, struct Diag *diag, struct Bytes source)
{
    const size_t errors_before = diag_errors(diag);
    const struct TreeNode *root = tree_read(arena, diag, source);
    struct Labour *labour = arena_alloc(arena, sizeof *labour);
    if (root == NULL || labour == NULL || root->kind == TREE_REFUSED) {
        return NULL;
    }
    struct Reader reader = {.arena = arena, .diag = diag, .source = source};
    if (fields_node_empty(root) || (root->kind == TREE_SCALAR && root->plain && text_same(root->text, "null"))) {
        diag_report(diag, MSG_FILE_EMPTY, (struct Mark){1, 1}, 0, DIAG_NO_WORDS);
        return NULL;
    }
    if (root->kind != TREE_MAP) {
        reader_report(&reader, MSG_LABOUR_TOP_NOT_MAPPING, root, DIAG_NO_WORDS);
        return NULL;
    }
    static const struct VersionKey version = {"wend-labour", MSG_LABOUR_VERSION_MISSING, MSG_LABOUR_VERSION_UNKNOWN,
                                              MSG_LABOUR_VERSION_NOT_FIRST};
    if (reader_version(&reader, root, &version) != VERSION_HOLDS) {
        return NULL;
    }
    fields_read(&reader, labour_fields(LABOUR_TABLE_TOP), root, (struct Spot){"", root->mark, 1}, 0, labour);
    for (int i = 0; i < TASK_KINDS && !arena_failed(arena); i++) {
        check_task(&reader, value_of(root, "tasks"), (enum TaskKind)i, &labour->tasks[i]);
    }
    if (!arena_failed(arena)) {
        check_clock(&reader, root, labour);
        check_currency(&reader, root, &labour->rates);
        check_people(&reader, root, labour);
    }
    return arena_failed(arena) || diag_errors(diag) > errors_before ? NULL : labour;
}
