/* The route language as a JSON Schema (2020-12), for editors that complete and check while one types. It refuses no
 * file that the reader takes; what takes figures of several keys to tell is left to the reader. Made from the same
 * rows. */
#include "documents/documents.h"

#include "read/language.h"

#include "json_private.h"

#include <math.h>
#include <string.h>

/* Control characters, and those that turn round the order of letters. */
#define REFUSED                                                                                                        \
    "\\u0000-\\u0008\\u000B\\u000C\\u000E-\\u001F\\u007F-\\u009F\\u2028\\u2029\\u202A-\\u202E\\u2066-"                 \
    "\\u2069\\uFFFE\\uFFFF"
#define DIGITS "(?:0|[1-9][0-9]*)(?:\\.[0-9]+)?"

struct Writer {
    struct JsonOut *out;
    struct Arena *arena;
};

/* ---- patterns ---- */

static void add_literal(struct TextBuilder *pattern, const char *text)
{
    for (; *text != '\0'; text++) {
        if (strchr(".+*?()[]{}|^$\\", *text) != NULL) {
            text_add_char(pattern, '\\');
        }
        text_add_char(pattern, *text);
    }
}

static void add_units(struct TextBuilder *pattern, enum Measure unit)
{
    for (int i = 0; quantity_spelling(unit, i) != NULL; i++) {
        text_add(pattern, i == 0 ? " *(?:" : "|");
        add_literal(pattern, quantity_spelling(unit, i));
    }
    text_add(pattern, quantity_spelling(unit, 0) != NULL ? ")" : "");
}

/* "70" may be written 70.0, and 2.5 as 2.50. */
static void add_allowed(struct TextBuilder *pattern, const struct Field *field)
{
    for (int i = 0; i < field->allowed_count; i++) {
        const char *number = number_significant(pattern->arena, field->allowed[i], 9);
        text_add(pattern, i == 0 ? "(?:" : "|");
        add_literal(pattern, number);
        text_add(pattern, strchr(number, '.') != NULL ? "0*" : "(?:\\.0+)?");
    }
    text_add(pattern, ")");
}

/* Digits before the point of the largest that is taken, in the unit that is written with the most. */
static int digits_most(const struct Field *field)
{
    double most = fmax(fabs(field->least), fabs(field->most));
    double worth = 1;
    for (int i = 0; quantity_spelling(field->unit, i) != NULL; i++) {
        worth = fmin(worth, quantity_spelling_worth(field->unit, i));
    }
    int digits = 1;
    for (most /= worth; most >= 10; most /= 10) {
        digits++;
    }
    return digits;
}

static void add_number(struct TextBuilder *pattern, const struct Field *field)
{
    if (field->allowed_count > 0) {
        add_allowed(pattern, field);
        return;
    }
    text_add(pattern, field->least > 0 ? "(?=[0.]*[1-9])" : "");
    text_add(pattern, field->signed_number ? "[+-]?" : field->least < 0 ? "-?" : "");
    text_print(pattern, "(?![0-9]{%d})" DIGITS, digits_most(field) + 1);
}

static void number_pattern(const struct Writer *writer, struct JsonNode *node, const struct Field *field)
{
    struct TextBuilder pattern = text_builder(writer->arena);
    text_add(&pattern, "^ *");
    add_number(&pattern, field);
    add_units(&pattern, field->unit);
    text_add(&pattern, " *$");
    json_text(writer->out, node, "type", "string");
    json_text(writer->out, node, "pattern", text_done(&pattern));
}

static void two_sizes_pattern(const struct Writer *writer, struct JsonNode *node, const struct Field *field)
{
    struct TextBuilder pattern = text_builder(writer->arena);
    text_add(&pattern, "^ *" DIGITS "(?:");
    add_units(&pattern, field->unit);
    text_add(&pattern, ")? *[x\xC3\x97] *" DIGITS);
    add_units(&pattern, field->unit);
    text_add(&pattern, " *$");
    json_text(writer->out, node, "type", "string");
    json_text(writer->out, node, "pattern", text_done(&pattern));
}

static void pattern(const struct Writer *writer, struct JsonNode *node, const char *text)
{
    json_text(writer->out, node, "type", "string");
    json_text(writer->out, node, "pattern", text);
}

/* ---- values ---- */

static void bare_number(const struct Writer *writer, struct JsonNode *node, const struct Field *field)
{
    struct JsonNode *any = json_list(writer->out, node, "anyOf");
    struct JsonNode *number = json_object(writer->out, any, "");
    const bool whole = field->kind == FIELD_WHOLE || field->kind == FIELD_WHOLE_QUANTITY;
    json_text(writer->out, number, "type", whole ? "integer" : "number");
    if (field->allowed_count > 0) {
        struct JsonNode *list = json_list(writer->out, number, "enum");
        for (int i = 0; i < field->allowed_count; i++) {
            json_number(writer->out, list, "", field->allowed[i]);
        }
    } else {
        json_number(writer->out, number, "minimum", field->least);
        json_number(writer->out, number, "maximum", field->most);
    }
    number_pattern(writer, json_object(writer->out, any, ""), field);
}

static void add_words(const struct Writer *writer, struct JsonNode *node, const struct Field *field)
{
    struct JsonNode *list = json_list(writer->out, node, "enum");
    struct JsonNode *meanings = json_list(writer->out, node, "enumDescriptions");
    for (int i = 0; i < survey_word_count(field->words); i++) {
        json_text(writer->out, list, "", survey_word(field->words, i));
        json_text(writer->out, meanings, "", survey_meaning(field->words, i));
    }
}

static void words_or_number(const struct Writer *writer, struct JsonNode *node, const struct Field *field,
                            const char *words)
{
    struct JsonNode *any = json_list(writer->out, node, "anyOf");
    json_words(writer->out, json_object(writer->out, any, ""), "enum", words, false);
    number_pattern(writer, json_object(writer->out, any, ""), field);
}

static void add_text(const struct Writer *writer, struct JsonNode *node, const struct Field *field)
{
    json_words(writer->out, node, "type", "string number boolean", false);
    json_number(writer->out, node, "minLength", 1);
    json_text(writer->out, node, "pattern",
              field->kind == FIELD_NAME ? "^[^" REFUSED "\\t\\n\\r]*$" : "^[^" REFUSED "]*$");
    if (field->kind == FIELD_NAME) { /* a text's line breaks become one space before it is measured */
        json_number(writer->out, node, "maxLength", (double)field->longest);
    }
}

static void add_value(const struct Writer *writer, struct JsonNode *node, const struct Field *field)
{
    switch (field->kind) {
    case FIELD_TEXT:
    case FIELD_NAME: add_text(writer, node, field); return;
    case FIELD_FILE: pattern(writer, node, "^ *[^ .\\-/\\\\:][^/\\\\:]*$"); return;
    case FIELD_DATE:
        pattern(writer, node,
                "^ *(?!0000)[0-9]{4}-(?:(?:0[13578]|1[02])-(?:0[1-9]|[12][0-9]|3[01])|"
                "(?:0[469]|11)-(?:0[1-9]|[12][0-9]|30)|02-(?:0[1-9]|[12][0-9])) *$");
        return;
    case FIELD_QUANTITY:
    case FIELD_WHOLE:
    case FIELD_WHOLE_QUANTITY:
        if (field->unit == MEASURE_NONE) {
            bare_number(writer, node, field);
        } else {
            number_pattern(writer, node, field);
        }
        return;
    case FIELD_WORD: add_words(writer, node, field); return;
    case FIELD_YES: json_words(writer->out, node, "enum", "yes no", false); return;
    case FIELD_HEADING:
        words_or_number(writer, node, field, "N NNE NE ENE E ESE SE SSE S SSW SW WSW W WNW NW NNW");
        return;
    case FIELD_SIZE: words_or_number(writer, node, field, "choose"); return;
    case FIELD_TWO_SIZES: two_sizes_pattern(writer, node, field); return;
    case FIELD_MAP:
    case FIELD_OWN: return;
    }
}

/* ---- mappings ---- */

static const char *name_of(const struct FieldTable *table)
{
    static const char *const names[TABLE_COUNT] = {[TABLE_TOP] = "route",
                                                   [TABLE_JOB] = "job",
                                                   [TABLE_SUPPLY] = "supply",
                                                   [TABLE_CONDITIONS] = "conditions",
                                                   [TABLE_EARTHING] = "earthing",
                                                   [TABLE_ELECTRODE] = "electrode",
                                                   [TABLE_RUN] = "run",
                                                   [TABLE_LOAD] = "load",
                                                   [TABLE_DEVICE] = "device",
                                                   [TABLE_CABLE] = "cable",
                                                   [TABLE_END] = "end",
                                                   [TABLE_PULL] = "pull",
                                                   [TABLE_SEGMENT] = "segment",
                                                   [TABLE_BEND] = "bend",
                                                   [TABLE_BESIDE] = "beside",
                                                   [TABLE_DUCT] = "duct",
                                                   [TABLE_PARTS] = "parts",
                                                   [TABLE_STOCK] = "stock",
                                                   [TABLE_STOCK_LENGTH] = "stock-length"};
    for (int i = 0; i < TABLE_COUNT; i++) {
        if (survey_fields((enum SurveyTable)i) == table) {
            return names[i];
        }
    }
    return "";
}

static void add_ref(const struct Writer *writer, struct JsonNode *node, const struct FieldTable *table)
{
    json_text(writer->out, node, "$ref", arena_print(writer->arena, "#/$defs/%s", name_of(table)));
}

/* One of what a key of FIELD_OWN holds. */
static void add_one(const struct Writer *writer, struct JsonNode *node, const struct Field *field)
{
    const struct FieldTable *of = field->of != TABLE_TOP ? survey_fields(field->of) : NULL;
    if (of != NULL && field->item != NULL) {
        struct JsonNode *any = json_list(writer->out, node, "anyOf");
        add_value(writer, json_object(writer->out, any, ""), field->item);
        add_ref(writer, json_object(writer->out, any, ""), of);
    } else if (of != NULL) {
        add_ref(writer, node, of);
    } else if (field->item != NULL) {
        add_value(writer, node, field->item);
    } else {
        json_text(writer->out, node, "type", "object");
    }
}

static void add_list(const struct Writer *writer, struct JsonNode *node, const struct Field *field, int least)
{
    json_text(writer->out, node, "type", "array");
    json_number(writer->out, node, "minItems", least);
    if (field->list_most > 0) {
        json_number(writer->out, node, "maxItems", field->list_most);
    }
    add_one(writer, json_object(writer->out, node, "items"), field);
}

static void add_own(const struct Writer *writer, struct JsonNode *node, const struct Field *field)
{
    struct JsonNode *any;
    const struct Field count = {.key = "", .kind = FIELD_WHOLE, .least = 0, .most = field->list_most};
    switch (field->shape) {
    case SHAPE_MAP: add_one(writer, node, field); return;
    case SHAPE_LIST: add_list(writer, node, field, 1); return;
    case SHAPE_ONE_OR_LIST:
        any = json_list(writer->out, node, "anyOf");
        add_one(writer, json_object(writer->out, any, ""), field);
        add_list(writer, json_object(writer->out, any, ""), field, 1);
        return;
    case SHAPE_COUNT_LIST:
        any = json_list(writer->out, node, "anyOf");
        bare_number(writer, json_object(writer->out, any, ""), &count);
        add_list(writer, json_object(writer->out, any, ""), field, 0);
        return;
    case SHAPE_BY_NAME:
        json_text(writer->out, node, "type", "object");
        json_number(writer->out, node, "minProperties", 1);
        json_number(writer->out, node, "maxProperties", field->list_most);
        add_one(writer, json_object(writer->out, node, "additionalProperties"), field);
        return;
    }
}

static void add_field(const struct Writer *writer, struct JsonNode *node, const struct Field *field)
{
    json_text(writer->out, node, "description", field->help);
    if (field->kind == FIELD_MAP) {
        add_ref(writer, node, field->inner);
    } else if (field->kind == FIELD_OWN) {
        add_own(writer, node, field);
    } else {
        add_value(writer, node, field);
    }
}

static int count_of_key(const struct FieldTable *table, const char *key)
{
    int count = 0;
    for (int i = 0; i < table->count; i++) {
        count += text_same(table->fields[i].key, key);
    }
    return count;
}

static bool stands_before(const struct FieldTable *table, int index)
{
    for (int i = 0; i < index; i++) {
        if (text_same(table->fields[i].key, table->fields[index].key)) {
            return true;
        }
    }
    return false;
}

/* In every context; a key that stands twice takes what one of them takes. */
static void add_properties(const struct Writer *writer, struct JsonNode *node, const struct FieldTable *table)
{
    struct JsonNode *properties = json_object(writer->out, node, "properties");
    for (int i = 0; i < table->count; i++) {
        const struct Field *field = &table->fields[i];
        if (stands_before(table, i)) {
            continue;
        }
        struct JsonNode *property = json_object(writer->out, properties, field->key);
        if (count_of_key(table, field->key) == 1) {
            add_field(writer, property, field);
            continue;
        }
        struct JsonNode *any = json_list(writer->out, property, "anyOf");
        for (int k = i; k < table->count; k++) {
            if (text_same(table->fields[k].key, field->key)) {
                add_field(writer, json_object(writer->out, any, ""), &table->fields[k]);
            }
        }
    }
}

static void add_required(const struct Writer *writer, struct JsonNode *node, const struct FieldTable *table,
                         unsigned context)
{
    struct JsonNode *required = json_list(writer->out, node, "required");
    if (table == survey_fields(TABLE_TOP) && context == 0) {
        json_text(writer->out, required, "", "wend");
    }
    for (int i = 0; i < table->count; i++) {
        const unsigned of = table->fields[i].required;
        if (context == 0 ? of == FIELD_ALWAYS : of != FIELD_ALWAYS && (of & context) != 0) {
            json_text(writer->out, required, "", table->fields[i].key);
        }
    }
}

/* ---- what goes with a way, or with a kind of run ---- */

static void add_context(const struct Writer *writer, struct JsonNode *then, const struct FieldTable *table,
                        unsigned context)
{
    struct JsonNode *properties = json_object(writer->out, then, "properties");
    for (int i = 0; i < table->count; i++) {
        const struct Field *field = &table->fields[i];
        const bool applies = field->applies == 0 || (field->applies & context) != 0;
        const bool twice = count_of_key(table, field->key) > 1;
        if (applies && twice) {
            add_field(writer, json_object(writer->out, properties, field->key), field);
        } else if (!applies && !twice) {
            json_yes(writer->out, properties, field->key, false);
        }
    }
    add_required(writer, then, table, context);
}

/* A key that stands twice and in neither of its contexts. */
static void refuse_twice(const struct Writer *writer, struct JsonNode *then, const struct FieldTable *table,
                         unsigned context)
{
    struct JsonNode *refused = json_object(writer->out, then, "propertyNames");
    struct JsonNode *not_of = json_object(writer->out, refused, "not");
    struct JsonNode *list = json_list(writer->out, not_of, "enum");
    json_text(writer->out, list, "", "");
    for (int i = 0; i < table->count; i++) {
        bool any = false;
        for (int k = 0; k < table->count; k++) {
            const struct Field *field = &table->fields[k];
            any = any || (text_same(field->key, table->fields[i].key) &&
                          (field->applies == 0 || (field->applies & context) != 0));
        }
        if (!any && count_of_key(table, table->fields[i].key) > 1 && !stands_before(table, i)) {
            json_text(writer->out, list, "", table->fields[i].key);
        }
    }
}

/* One kind of cable is sold with one number of cores. */
static void need_cores(const struct Writer *writer, struct JsonNode *cable)
{
    struct JsonNode *any = json_list(writer->out, cable, "anyOf");
    struct JsonNode *flat = json_object(writer->out, json_object(writer->out, any, ""), "properties");
    json_text(writer->out, json_object(writer->out, flat, "type"), "const",
              survey_word(WORDS_CABLE, CABLE_BS6004_FLAT));
    json_words(writer->out, json_object(writer->out, any, ""), "required", "cores", false);
}

static void only_words_of(const struct Writer *writer, struct JsonNode *then, enum RunKind kind)
{
    struct JsonNode *cable = json_object(writer->out, json_object(writer->out, then, "properties"), "cable");
    struct JsonNode *both = json_list(writer->out, cable, "allOf");
    struct JsonNode *type =
        json_object(writer->out, json_object(writer->out, json_object(writer->out, both, ""), "properties"), "type");
    struct JsonNode *list = json_list(writer->out, type, "enum");
    for (int i = 0; i < CABLE_COUNT; i++) {
        if (survey_cable_run((enum CableType)i) == kind) {
            json_text(writer->out, list, "", survey_word(WORDS_CABLE, i));
        }
    }
    if (kind == RUN_POWER) {
        need_cores(writer, json_object(writer->out, both, ""));
    }
    struct JsonNode *of_kind = json_object(writer->out, both, "");
    add_context(writer, of_kind, survey_fields(TABLE_CABLE), 1U << kind);
    refuse_twice(writer, of_kind, survey_fields(TABLE_CABLE), 1U << kind);
}

/* "if the way is wall, then": one for each way, or kind of run, which where it is left out is power. */
static void add_contexts(const struct Writer *writer, struct JsonNode *all, const struct FieldTable *table,
                         const char *key)
{
    for (int i = 0; i < survey_word_count(table->contexts); i++) {
        struct JsonNode *one = json_object(writer->out, all, "");
        struct JsonNode *when = json_object(writer->out, one, "if");
        json_text(writer->out, json_object(writer->out, json_object(writer->out, when, "properties"), key), "const",
                  survey_word(table->contexts, i));
        if (table->contexts == WORDS_WAY || i != RUN_POWER) {
            json_words(writer->out, when, "required", key, false);
        }
        struct JsonNode *then = json_object(writer->out, one, "then");
        struct JsonNode *both = json_list(writer->out, then, "allOf");
        struct JsonNode *keys = json_object(writer->out, both, "");
        add_context(writer, keys, table, 1U << i);
        refuse_twice(writer, keys, table, 1U << i);
        if (table->contexts == WORDS_RUN_KIND) {
            only_words_of(writer, json_object(writer->out, both, ""), (enum RunKind)i);
        }
    }
}

/* ---- what keys ask of each other ---- */

/* The condition; nothing where it holds always. */
static void add_when(const struct Writer *writer, struct JsonNode *one, const struct Relation *relation)
{
    const struct FieldTable *table = survey_fields(relation->table);
    const struct Field *field = NULL;
    for (int i = 0; i < table->count; i++) {
        field = text_same(table->fields[i].key, relation->when) ? &table->fields[i] : field;
    }
    struct JsonNode *when = json_object(writer->out, one, "if");
    struct JsonNode *key = json_object(writer->out, json_object(writer->out, when, "properties"), relation->when);
    struct JsonNode *words = json_list(writer->out, key, "enum");
    for (int i = 0; field != NULL && i < survey_word_count(field->words); i++) {
        if ((relation->words >> i & 1U) != 0) {
            json_text(writer->out, words, "", survey_word(field->words, i));
        }
    }
    if (field != NULL && !(field->has_default && (relation->words >> (int)field->fallback & 1U) != 0)) {
        json_words(writer->out, when, "required", relation->when, false);
    }
}

static void add_asks(const struct Writer *writer, struct JsonNode *then, const struct Relation *relation)
{
    struct JsonNode *properties, *list;
    switch (relation->kind) {
    case RELATION_NEEDS: json_words(writer->out, then, "required", relation->keys[0], false); return;
    case RELATION_REFUSES:
        properties = json_object(writer->out, then, "properties");
        for (int i = 0; i < 4 && relation->keys[i] != NULL; i++) {
            json_yes(writer->out, properties, relation->keys[i], false);
        }
        return;
    case RELATION_ONE_OF:
        if (relation->code_none == MSG_COUNT) {
            list = json_list(writer->out, json_object(writer->out, then, "not"), "required");
            json_text(writer->out, list, "", relation->keys[0]);
            json_text(writer->out, list, "", relation->keys[1]);
            return;
        }
        list = json_list(writer->out, then, "oneOf");
        json_words(writer->out, json_object(writer->out, list, ""), "required", relation->keys[0], false);
        json_words(writer->out, json_object(writer->out, list, ""), "required", relation->keys[1], false);
        return;
    }
}

static void add_relations(const struct Writer *writer, struct JsonNode *all, const struct FieldTable *table)
{
    for (int i = 0; relation_at(i) != NULL; i++) {
        const struct Relation *relation = relation_at(i);
        if (survey_fields(relation->table) != table || diag_severity(relation->code) != DIAG_ERROR) {
            continue;
        }
        struct JsonNode *one = json_object(writer->out, all, "");
        if (relation->when == NULL) {
            add_asks(writer, one, relation);
        } else {
            add_when(writer, one, relation);
            add_asks(writer, json_object(writer->out, one, "then"), relation);
        }
    }
}

static void add_table(const struct Writer *writer, struct JsonNode *node, const struct FieldTable *table)
{
    json_text(writer->out, node, "type", "object");
    json_text_if(writer->out, node, "description", table->help);
    json_yes(writer->out, node, "additionalProperties", false);
    add_properties(writer, node, table);
    add_required(writer, node, table, 0);
    struct JsonNode *all = json_list(writer->out, node, "allOf");
    json_yes(writer->out, all, "", true); /* the list may not be empty */
    if (table->contexts != WORDS_COUNT && table != survey_fields(TABLE_CABLE)) {
        add_contexts(writer, all, table, table->contexts == WORDS_WAY ? "way" : "kind");
    }
    add_relations(writer, all, table);
}

struct Bytes document_schema_json(struct Arena *arena)
{
    struct Writer writer = {json_out_new(arena), arena};
    struct JsonNode *root = json_root(writer.out);
    json_text(writer.out, root, "$schema", "https://json-schema.org/draft/2020-12/schema");
    json_text(writer.out, root, "title", "Wend route file, version 1");
    json_text(writer.out, root, "$ref", "#/$defs/route");
    struct JsonNode *defs = json_object(writer.out, root, "$defs");
    for (int i = 0; i < TABLE_COUNT; i++) {
        const struct FieldTable *table = survey_fields((enum SurveyTable)i);
        add_table(&writer, json_object(writer.out, defs, name_of(table)), table);
    }
    return json_out_finish(writer.out);
}
