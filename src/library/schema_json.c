/* The route language as a JSON Schema (2020-12), for editors that complete and check while one types. It refuses no
 * file that the reader takes; what takes figures of several keys to tell is left to the reader. Made from the same
 * rows. */
#include "library_private.h"
#include "schema_private.h"

/* ---- mappings ---- */

static const char *name_of(const struct FieldTable *table)
{
    static const char *const names[TABLE_COUNT] = {[TABLE_TOP] = "route",         [TABLE_JOB] = "job",
                                                   [TABLE_SUPPLY] = "supply",     [TABLE_CONDITIONS] = "conditions",
                                                   [TABLE_EARTHING] = "earthing", [TABLE_ELECTRODE] = "electrode",
                                                   [TABLE_RUN] = "run",           [TABLE_LOAD] = "load",
                                                   [TABLE_DEVICE] = "device",     [TABLE_CABLE] = "cable",
                                                   [TABLE_END] = "end",           [TABLE_PULL] = "pull",
                                                   [TABLE_SEGMENT] = "segment",   [TABLE_BEND] = "bend",
                                                   [TABLE_LANDMARK] = "mark",     [TABLE_BESIDE] = "beside",
                                                   [TABLE_DUCT] = "duct",         [TABLE_PARTS] = "parts",
                                                   [TABLE_STOCK] = "stock",       [TABLE_STOCK_LENGTH] = "stock-length",
                                                   [TABLE_READINGS] = "readings", [TABLE_METER] = "meter",
                                                   [TABLE_AS_LAID] = "as-laid"};
    for (int i = 0; i < TABLE_COUNT; i++) {
        if (survey_fields((enum SurveyTable)i) == table) {
            return names[i];
        }
    }
    return "";
}

static void add_ref(const struct SchemaWriter *writer, struct JsonNode *node, const struct FieldTable *table)
{
    json_text(writer->out, node, "$ref", arena_print(writer->arena, "#/$defs/%s", name_of(table)));
}

/* One of what a key of FIELD_OWN holds. */
static void add_one(const struct SchemaWriter *writer, struct JsonNode *node, const struct Field *field)
{
    const struct FieldTable *of = field->of != TABLE_TOP ? survey_fields(field->of) : NULL;
    if (of != NULL && field->item != NULL) {
        struct JsonNode *any = json_list(writer->out, node, "anyOf");
        schema_value(writer, json_object(writer->out, any, ""), field->item);
        add_ref(writer, json_object(writer->out, any, ""), of);
    } else if (of != NULL) {
        add_ref(writer, node, of);
    } else if (field->item != NULL) {
        schema_value(writer, node, field->item);
    } else {
        json_text(writer->out, node, "type", "object");
    }
}

static void add_list(const struct SchemaWriter *writer, struct JsonNode *node, const struct Field *field, int least)
{
    json_text(writer->out, node, "type", "array");
    json_number(writer->out, node, "minItems", least);
    if (field->list_most > 0) {
        json_number(writer->out, node, "maxItems", field->list_most);
    }
    add_one(writer, json_object(writer->out, node, "items"), field);
}

static void add_own(const struct SchemaWriter *writer, struct JsonNode *node, const struct Field *field)
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
        schema_bare_number(writer, json_object(writer->out, any, ""), &count);
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

static void add_field(const struct SchemaWriter *writer, struct JsonNode *node, const struct Field *field)
{
    json_text(writer->out, node, "description", field->help);
    if (field->kind == FIELD_MAP) {
        add_ref(writer, node, field->inner);
    } else if (field->kind == FIELD_OWN) {
        add_own(writer, node, field);
    } else {
        schema_value(writer, node, field);
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
static void add_properties(const struct SchemaWriter *writer, struct JsonNode *node, const struct FieldTable *table)
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

static void add_required(const struct SchemaWriter *writer, struct JsonNode *node, const struct FieldTable *table,
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

static void add_context(const struct SchemaWriter *writer, struct JsonNode *then, const struct FieldTable *table,
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
static void refuse_twice(const struct SchemaWriter *writer, struct JsonNode *then, const struct FieldTable *table,
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
static void need_cores(const struct SchemaWriter *writer, struct JsonNode *cable)
{
    struct JsonNode *any = json_list(writer->out, cable, "anyOf");
    struct JsonNode *flat = json_object(writer->out, json_object(writer->out, any, ""), "properties");
    json_text(writer->out, json_object(writer->out, flat, "type"), "const",
              survey_word(WORDS_CABLE, CABLE_BS6004_FLAT));
    json_words(writer->out, json_object(writer->out, any, ""), "required", "cores", false);
}

static void only_words_of(const struct SchemaWriter *writer, struct JsonNode *then, enum RunKind kind)
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
static void add_contexts(const struct SchemaWriter *writer, struct JsonNode *all, const struct FieldTable *table,
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
static void add_when(const struct SchemaWriter *writer, struct JsonNode *one, const struct Relation *relation)
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

static void add_asks(const struct SchemaWriter *writer, struct JsonNode *then, const struct Relation *relation)
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

static void add_relations(const struct SchemaWriter *writer, struct JsonNode *all, const struct FieldTable *table)
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

static void add_table(const struct SchemaWriter *writer, struct JsonNode *node, const struct FieldTable *table)
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

struct Bytes language_schema(struct Arena *arena)
{
    struct SchemaWriter writer = {json_out_new(arena), arena};
    struct JsonNode *root = json_root(writer.out);
    json_text(writer.out, root, "$schema", "https://json-schema.org/draft/2020-12/schema");
    json_text(writer.out, root, "title", "Wend route");
    json_text(writer.out, root, "$ref", "#/$defs/route");
    struct JsonNode *defs = json_object(writer.out, root, "$defs");
    for (int i = 0; i < TABLE_COUNT; i++) {
        const struct FieldTable *table = survey_fields((enum SurveyTable)i);
        add_table(&writer, json_object(writer.out, defs, name_of(table)), table);
    }
    return json_out_finish(writer.out);
}
