/* Reads any mapping of the language by its field table: unknown and missing keys, keys of other ways, defaults and the
 * assumptions they make. How one value is read is in field_values.c. */
#include "field_values_private.h"

#include <string.h>

const struct TreeEntry *fields_find(const struct TreeNode *map, const char *key)
{
    if (map == NULL || map->kind != TREE_MAP) {
        return NULL;
    }
    for (const struct TreeEntry *entry = map->first; entry != NULL; entry = entry->next) {
        if (text_same(entry->key->text, key)) {
            return entry;
        }
    }
    return NULL;
}

unsigned fields_context(const struct TreeNode *map, const char *key, enum WordList words, unsigned absent)
{
    const struct TreeEntry *entry = fields_find(map, key);
    if (entry == NULL) {
        return unknown_key_near(map, key) ? 0 : absent;
    }
    for (int i = 0; i < survey_word_count(words); i++) {
        if (entry->value->kind == TREE_SCALAR && text_same(entry->value->text, survey_word(words, i))) {
            return 1U << i;
        }
    }
    return 0;
}

bool field_applies(const struct Field *field, unsigned context)
{
    return field->applies == 0 || context == 0 || (field->applies & context) != 0;
}

/* One key may stand twice in a table, for different contexts. */
static int find_field(const struct FieldTable *table, const char *key, unsigned context)
{
    int elsewhere = -1;
    for (int i = 0; i < table->count; i++) {
        if (!text_same(table->fields[i].key, key)) {
            continue;
        }
        if (field_applies(&table->fields[i], context)) {
            return i;
        }
        elsewhere = i;
    }
    return elsewhere;
}

/* "wall, fence or beam": the contexts in which a key holds. */
static const char *context_words(struct Reader *reader, const struct FieldTable *table, const char *key)
{
    unsigned mask = 0;
    for (int i = 0; i < table->count; i++) {
        mask |= text_same(table->fields[i].key, key) ? table->fields[i].applies : 0;
    }
    struct TextBuilder list = text_builder(reader->arena);
    int count = survey_word_count(table->contexts);
    for (int i = 0; i < count; i++) {
        if ((mask >> i & 1U) == 0) {
            continue;
        }
        text_add(&list, survey_word(table->contexts, i));
        mask &= ~(1U << i);
        bool more = (mask & ((1U << count) - 1U)) != 0;
        bool last = (mask & (mask - 1U)) == 0;
        text_add(&list, more ? (last ? " or " : ", ") : "");
    }
    return text_done(&list);
}

static void report_wrong_context(struct Reader *reader, const struct FieldTable *table, const struct TreeNode *key,
                                 unsigned context)
{
    int number = 0;
    while ((context >> number & 1U) == 0) {
        number++;
    }
    enum DiagCode code = table->contexts == WORDS_WAY ? MSG_KEY_OF_OTHER_WAY : MSG_KEY_OF_OTHER_KIND;
    reader_report(reader, code, key,
                  DIAG_WORDS(key->text, survey_word(table->contexts, number), context_words(reader, table, key->text)));
}

static void collect(struct Reader *reader, const struct FieldTable *table, const struct TreeNode *map, unsigned context,
                    const struct TreeEntry *found[FIELDS_MOST])
{
    const struct UnknownKeys keys = {reader, table, map, context};
    struct TreeEntry *before = NULL;
    for (struct TreeEntry *entry = map->first; entry != NULL; before = entry, entry = entry->next) {
        int index = find_field(table, entry->key->text, context);
        if (index < 0 && unknown_key_report(&keys, before, entry)) {
            index = find_field(table, entry->key->text, context);
        }
        if (index < 0) {
            continue;
        }
        if (!field_applies(&table->fields[index], context)) {
            report_wrong_context(reader, table, entry->key, context);
        } else {
            found[index] = entry;
        }
    }
}

static void assume_default(struct Reader *reader, const struct Field *field, struct Spot place)
{
    const bool word = field->kind == FIELD_WORD;
    reader_assume(reader, (struct Assumed){.where = reader_path(reader, place.path, field->key),
                                           .what = field->assumed,
                                           .value = word ? 0 : field->fallback,
                                           .word = word ? (int)field->fallback : 0});
}

static void read_inner(struct Reader *reader, const struct Field *field, const struct TreeEntry *entry,
                       struct Spot place, void *out)
{
    const struct TreeNode *node = entry != NULL ? entry->value : NULL;
    struct Spot inner = {reader_path(reader, place.path, field->key), place.mark, place.width};
    if (entry != NULL) {
        inner.mark = entry->key->mark;
        inner.width = entry->key->width;
        field_value_given(field, out);
    }
    fields_read(reader, field->inner, node, inner, 0, (char *)out + field->offset);
}

static void read_field(struct Reader *reader, const struct Field *field, const struct TreeEntry *entry,
                       struct Spot place, unsigned context, void *out)
{
    bool required = context == 0 ? field->required == FIELD_ALWAYS : (field->required & context) != 0;
    if (entry == NULL && required) {
        diag_report(
            reader->diag, MSG_KEY_MISSING, place.mark, place.width,
            DIAG_WORDS(*place.path == '\0' ? "the file" : fields_quote(reader, place.path), field->key, field->help));
        field_value_unknown(field, out);
    } else if (field->kind == FIELD_MAP) {
        if (entry != NULL || field->has_default) {
            read_inner(reader, field, entry, place, out);
        } else {
            field_value_absent(field, out);
        }
    } else if (entry != NULL) {
        field_value_read(reader, field, entry, out);
    } else if (field->has_default) {
        field_value_default(field, out);
        if (field->assumed != ASSUMED_NOTHING) {
            assume_default(reader, field, place);
        }
    } else {
        field_value_absent(field, out);
    }
}

void fields_absent(const struct FieldTable *table, void *out)
{
    for (int i = 0; i < table->count; i++) {
        field_value_absent(&table->fields[i], out);
    }
}

void fields_unknown(const struct FieldTable *table, void *out)
{
    for (int i = 0; i < table->count; i++) {
        field_value_unknown(&table->fields[i], out);
    }
}

/* "title:Shed" is a text to YAML; the column of its colon, 0 when it has none on its first line. */
static int column_of_colon(const struct TreeNode *node)
{
    int column = node->mark.column;
    for (const char *at = node->text; *at != '\0' && *at != ':'; at++) {
        column += ((unsigned char)at[1] & 0xC0) != 0x80;
    }
    return strchr(node->text, ':') != NULL && column < node->mark.column + node->width ? column : 0;
}

static void report_not_mapping(struct Reader *reader, const struct FieldTable *table, const struct TreeNode *node,
                               struct Spot place)
{
    const char *path = fields_quote(reader, place.path);
    if (node->kind == TREE_REFUSED) {
        return;
    }
    int colon = node->kind == TREE_SCALAR && node->plain ? column_of_colon(node) : 0;
    if (colon > 0) {
        struct Mark mark = {node->mark.line, colon};
        diag_report(reader->diag, MSG_COLON_SPACE, mark, 1, DIAG_NO_WORDS);
    } else if (fields_node_empty(node)) {
        diag_report(reader->diag, MSG_VALUE_EMPTY, place.mark, place.width, DIAG_WORDS(path));
    } else {
        reader_report(reader, MSG_VALUE_NOT_MAPPING, node, DIAG_WORDS(path, table->fields[0].key));
    }
}

void fields_read(struct Reader *reader, const struct FieldTable *table, const struct TreeNode *map, struct Spot place,
                 unsigned context, void *out)
{
    const struct TreeEntry *found[FIELDS_MOST] = {NULL};
    if (map != NULL && map->kind != TREE_MAP) {
        report_not_mapping(reader, table, map, place);
        fields_unknown(table, out);
        return;
    }
    if (map != NULL) {
        collect(reader, table, map, context, found);
    }
    for (int i = 0; i < table->count; i++) {
        const struct Field *field = &table->fields[i];
        if (context == 0 && field->applies != 0) {
            field_value_unknown(field, out); /* what it would mean is not known */
        } else if (field_applies(field, context)) {
            read_field(reader, field, found[i], place, context, out);
        } else {
            field_value_absent(field, out);
        }
    }
    if (map != NULL) {
        relations_check(reader, table, map, place);
    }
}
