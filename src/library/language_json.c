/* The route language as JSON: what forms, pages and other programs ask by. Made from the rows that the reader reads by.
 */
#include "library_private.h"

#include "design/design.h"
#include "documents/json/json_out.h"
#include "read/language.h"

static const char *kind_of(const struct Field *field)
{
    switch (field->kind) {
    case FIELD_TEXT: return "text";
    case FIELD_NAME: return "name";
    case FIELD_FILE: return "file";
    case FIELD_DATE: return "date";
    case FIELD_QUANTITY: return "quantity";
    case FIELD_WHOLE:
    case FIELD_WHOLE_QUANTITY: return "whole";
    case FIELD_WORD: return "word";
    case FIELD_YES: return "yes-or-no";
    case FIELD_HEADING: return "heading";
    case FIELD_SIZE: return "size-or-choose";
    case FIELD_TWO_SIZES: return "two-sizes";
    case FIELD_MAP:
    case FIELD_OWN: return "keys";
    }
    return "";
}

static const char *shape_of(enum FieldShape shape)
{
    static const char *const shapes[] = {[SHAPE_MAP] = "one",
                                         [SHAPE_LIST] = "list",
                                         [SHAPE_ONE_OR_LIST] = "one-or-list",
                                         [SHAPE_COUNT_LIST] = "count-or-list",
                                         [SHAPE_BY_NAME] = "by-name"};
    return shapes[shape];
}

static void add_contexts(struct JsonOut *out, struct JsonNode *node, const char *name, enum WordList words,
                         unsigned contexts)
{
    if (contexts == 0 || contexts == FIELD_ALWAYS) {
        return;
    }
    struct JsonNode *list = json_list(out, node, name);
    for (int i = 0; i < survey_word_count(words); i++) {
        if ((contexts >> i & 1U) != 0) {
            json_text(out, list, "", survey_word(words, i));
        }
    }
}

static void add_range(struct JsonOut *out, struct JsonNode *node, const struct Field *field)
{
    if (field->allowed_count > 0) {
        struct JsonNode *list = json_list(out, node, "allowed");
        for (int i = 0; i < field->allowed_count; i++) {
            json_number(out, list, "", field->allowed[i]);
        }
    } else if (field->least < field->most) {
        json_number(out, node, "least", field->least);
        json_number(out, node, "most", field->most);
    }
    if (field->longest > 0) {
        json_number(out, node, "longest", (double)field->longest);
    }
}

/* The first is the one that messages show. `worth` is in the unit that least and most are in. */
static void add_units(struct JsonOut *out, struct JsonNode *node, enum Measure unit)
{
    if (quantity_spelling(unit, 0) == NULL) {
        return;
    }
    struct JsonNode *list = json_list(out, node, "units");
    for (int i = 0; quantity_spelling(unit, i) != NULL; i++) {
        struct JsonNode *one = json_object(out, list, "");
        json_text(out, one, "unit", quantity_spelling(unit, i));
        json_number(out, one, "worth", quantity_spelling_worth(unit, i));
    }
}

static void add_words(struct JsonOut *out, struct JsonNode *node, enum WordList words)
{
    struct JsonNode *list = json_list(out, node, "words");
    for (int i = 0; i < survey_word_count(words); i++) {
        struct JsonNode *one = json_object(out, list, "");
        json_text(out, one, "word", survey_word(words, i));
        json_text(out, one, "meaning", survey_meaning(words, i));
    }
}

static void add_value(struct JsonOut *out, struct JsonNode *node, const struct Field *field)
{
    json_text(out, node, "kind", kind_of(field));
    add_range(out, node, field);
    add_units(out, node, field->unit);
    if (field->kind == FIELD_WORD) {
        add_words(out, node, field->words);
    }
}

static void add_field(struct JsonOut *out, struct Arena *arena, struct JsonNode *list, const struct FieldTable *table,
                      const struct Field *field)
{
    struct JsonNode *node = json_object(out, list, "");
    json_text(out, node, "key", field->key);
    add_value(out, node,
              field->kind == FIELD_OWN && field->item != NULL && field->of == TABLE_TOP ? field->item : field);
    json_text(out, node, "help", field->help);
    if (field->kind == FIELD_OWN) {
        json_text(out, node, "shape", shape_of(field->shape));
    }
    const struct FieldTable *inner = field->of != TABLE_TOP ? survey_fields(field->of) : field->inner;
    json_text_if(out, node, "keys-of", inner != NULL ? inner->title : NULL);
    if (field->list_most > 0) {
        json_number(out, node, "list-most", field->list_most);
    }
    json_yes(out, node, "required", field->required == FIELD_ALWAYS);
    add_contexts(out, node, "required-for", table->contexts, field->required);
    add_contexts(out, node, "goes-with", table->contexts, field->applies);
    json_text_if(out, node, "default", field_default(arena, field));
    json_yes(out, node, "default-is-value",
             field->has_default && field->default_text == NULL && field->kind != FIELD_MAP);
}

static void add_tables(struct JsonOut *out, struct Arena *arena)
{
    struct JsonNode *list = json_list(out, json_root(out), "tables");
    for (int t = 0; t < TABLE_COUNT; t++) {
        const struct FieldTable *table = survey_fields((enum SurveyTable)t);
        struct JsonNode *node = json_object(out, list, "");
        json_text(out, node, "title", table->title);
        json_text(out, node, "help", table->help);
        if (table->contexts != WORDS_COUNT) {
            json_text(out, node, "goes-by", table->contexts == WORDS_WAY ? "way" : "kind");
        }
        struct JsonNode *fields = json_list(out, node, "fields");
        for (int i = 0; i < table->count; i++) {
            add_field(out, arena, fields, table, &table->fields[i]);
        }
    }
}

/* The words of the key that decides. */
static enum WordList words_of(const struct Relation *relation)
{
    const struct FieldTable *table = survey_fields(relation->table);
    for (int i = 0; i < table->count; i++) {
        if (relation->when != NULL && text_same(table->fields[i].key, relation->when)) {
            return table->fields[i].words;
        }
    }
    return WORDS_COUNT;
}

static void add_relations(struct JsonOut *out)
{
    static const char *const kinds[] = {
        [RELATION_NEEDS] = "needs", [RELATION_REFUSES] = "refuses", [RELATION_ONE_OF] = "one-of"};
    struct JsonNode *list = json_list(out, json_root(out), "relations");
    for (int i = 0; relation_at(i) != NULL; i++) {
        const struct Relation *relation = relation_at(i);
        struct JsonNode *node = json_object(out, list, "");
        json_text(out, node, "table", survey_fields(relation->table)->title);
        json_text_if(out, node, "when", relation->when);
        if (relation->when != NULL) {
            add_contexts(out, node, "is", words_of(relation), relation->words);
        }
        json_text(out, node, "relation", kinds[relation->kind]);
        struct JsonNode *keys = json_list(out, node, "keys");
        for (int k = 0; k < 4 && relation->keys[k] != NULL; k++) {
            json_text(out, keys, "", relation->keys[k]);
        }
        json_text(out, node, "message", diag_name(relation->code));
    }
}

static void add_asked(struct JsonOut *out)
{
    struct JsonNode *list = json_list(out, json_root(out), "asked");
    for (int i = 0; asked_at(i) != NULL; i++) {
        const struct Asked *asked = asked_at(i);
        struct JsonNode *node = json_object(out, list, "");
        json_number(out, node, "rank", i + 1);
        json_text(out, node, "card", asked_card(asked->card));
        json_text(out, node, "in", asked->path);
        json_text(out, node, "key", asked->key);
        json_text(out, node, "label", asked->label);
        json_text(out, node, "question", asked->question);
        add_contexts(out, node, "ways", WORDS_WAY, asked->contexts);
        json_text_if(out, node, "when", asked->when);
    }
}

/* Which kinds of cable a table rates, way by way. */
static void add_ways(struct JsonOut *out)
{
    struct JsonNode *list = json_list(out, json_root(out), "ways");
    for (int way = 0; way < WAY_COUNT; way++) {
        struct JsonNode *node = json_object(out, list, "");
        json_text(out, node, "way", survey_word(WORDS_WAY, way));
        struct JsonNode *cables = json_list(out, node, "rates");
        for (int type = 0; type < CABLE_COUNT; type++) {
            if (design_way_rates((enum Way)way, (enum CableType)type)) {
                json_text(out, cables, "", survey_word(WORDS_CABLE, type));
            }
        }
    }
}

struct Bytes language_json(struct Arena *arena)
{
    struct JsonOut *out = json_out_new(arena);
    json_number(out, json_root(out), "wend", 1);
    add_tables(out, arena);
    add_relations(out);
    add_asked(out);
    add_ways(out);
    return json_out_finish(out);
}
