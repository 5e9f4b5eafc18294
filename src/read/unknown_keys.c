/* A key that its table does not hold: what was most likely meant. A misspelt key is reported once: from then on it
 * stands for the key that was meant, with a value that is not known, so that it is not reported missing as well. */
#include "field_values_private.h"

#include <string.h>

static const struct TreeNode refused = {.kind = TREE_REFUSED, .width = 1, .text = ""};

struct Legal {
    const struct FieldTable *table;
    unsigned context;
};

static const char *legal_key(const void *list, size_t index)
{
    const struct Legal *legal = list;
    const struct Field *field = &legal->table->fields[index];
    return field_applies(field, legal->context) ? field->key : NULL;
}

static const char *only_word(const void *list, size_t index)
{
    (void)index;
    return list;
}

bool unknown_key_near(const struct TreeNode *map, const char *key)
{
    if (map == NULL || map->kind != TREE_MAP || map->count > FIELDS_MOST) {
        return false;
    }
    for (const struct TreeEntry *entry = map->first; entry != NULL; entry = entry->next) {
        if (suggest_near(entry->key->text, key, 1, only_word) != NULL) {
            return true;
        }
    }
    return false;
}

static unsigned long first_odd_letter(const char *text)
{
    for (; *text != '\0'; text++) {
        if ((unsigned char)*text >= 0x80) {
            return utf8_code(text);
        }
    }
    return 0;
}

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

/* In brackets "12,5 A" is 12 and a key "5 A" without a value. */
static bool is_decimal_comma(const struct TreeEntry *before, const struct TreeEntry *entry)
{
    return before != NULL && before->value->kind == TREE_SCALAR && before->value->plain && entry->key->plain &&
           before->value->length > 0 && is_digit(before->value->text[before->value->length - 1]) &&
           is_digit(entry->key->text[0]);
}

static void report_comma(const struct UnknownKeys *keys, struct TreeEntry *before, const struct TreeEntry *entry)
{
    struct Reader *reader = keys->reader;
    const char *whole = before->value->text;
    const char *rest = entry->key->text;
    const char *text = arena_print(reader->arena, "%s,%s", whole, rest);
    const char *written = fields_quote(reader, text);
    const char *advice = fields_quote(reader, quantity_without_comma(reader->arena, text));
    reader_report(reader, MSG_DECIMAL_COMMA, before->value, DIAG_WORDS(before->key->text, written, advice));
    before->value = &refused;
}

/* Where else a key of that name stands, if in one place alone. */
static const char *only_elsewhere(const char *key)
{
    const char *title = NULL;
    int tables = 0;
    for (int t = TABLE_TOP + 1; t < TABLE_COUNT; t++) {
        const struct FieldTable *table = survey_fields((enum SurveyTable)t);
        for (int i = 0; i < table->count; i++) {
            if (text_same(table->fields[i].key, key)) {
                title = table->title;
                tables++;
                break;
            }
        }
    }
    return tables == 1 ? title : NULL;
}

static bool is_of_routes(const struct FieldTable *table)
{
    for (int t = 0; t < TABLE_COUNT; t++) {
        if (survey_fields((enum SurveyTable)t) == table) {
            return true;
        }
    }
    return false; /* an order file has other keys */
}

/* What the trade calls it, or where there is such a key. */
static bool report_meant(const struct UnknownKeys *keys, const struct TreeNode *key, const char *quoted, bool near)
{
    struct Reader *reader = keys->reader;
    if (!is_of_routes(keys->table)) {
        return false;
    }
    const char *of = arena_print(reader->arena, "%s.", keys->table->name);
    const char *means = spoken_means(key->text, of);
    const char *elsewhere = near ? NULL : only_elsewhere(key->text);
    if (means != NULL) {
        reader_report(reader, MSG_KEY_SPOKEN, key, DIAG_WORDS(quoted, keys->table->name, means));
    } else if (elsewhere != NULL) {
        reader_report(reader, MSG_KEY_ELSEWHERE, key, DIAG_WORDS(quoted, keys->table->name, elsewhere));
    }
    return means != NULL || elsewhere != NULL;
}

/* From now on the entry is one of the key that was meant. */
static bool stand_for(const struct UnknownKeys *keys, struct TreeEntry *entry, const char *near)
{
    struct TreeNode *key = arena_alloc(keys->reader->arena, sizeof *key);
    if (key == NULL || fields_find(keys->map, near) != NULL) {
        return false;
    }
    *key = *entry->key;
    key->text = near;
    key->length = strlen(near);
    entry->key = key;
    entry->value = &refused;
    return true;
}

bool unknown_key_report(const struct UnknownKeys *keys, struct TreeEntry *before, struct TreeEntry *entry)
{
    struct Reader *reader = keys->reader;
    const struct TreeNode *key = entry->key;
    const char *quoted = fields_quote(reader, key->text);
    bool alone = keys->map->flow && fields_node_empty(entry->value);
    if (alone && is_decimal_comma(before, entry)) {
        report_comma(keys, before, entry);
        return false;
    }
    struct Legal legal = {keys->table, keys->context};
    const char *near = diag_errors(reader->diag) > DIAG_LIMIT
                           ? NULL /* it would not be shown */
                           : suggest_near(key->text, &legal, (size_t)keys->table->count, legal_key);
    unsigned long odd = first_odd_letter(key->text);
    if (!alone && odd == 0 && report_meant(keys, key, quoted, near != NULL)) {
        return false;
    }
    if (near == NULL) {
        if (alone) {
            reader_report(reader, MSG_TEXT_WITH_COMMA, key, DIAG_WORDS(quoted));
        } else {
            reader_report(reader, MSG_KEY_UNKNOWN, key, DIAG_WORDS(quoted, keys->table->name));
        }
        return false;
    }
    if (odd != 0) {
        const char *code = arena_print(reader->arena, "U+%04lX", odd);
        reader_report(reader, MSG_KEY_ODD_LETTER, key, DIAG_WORDS(quoted, code, near));
    } else {
        reader_report(reader, MSG_KEY_MISSPELT, key, DIAG_WORDS(quoted, keys->table->name, near));
    }
    return stand_for(keys, entry, near);
}
