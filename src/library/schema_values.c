/* What one value of the route language may look like, for its schema: patterns of numbers with units, words, texts. */
#include "schema_private.h"

#include <math.h>
#include <string.h>

/* Control characters, and those that turn round the order of letters. */
#define REFUSED                                                                                                        \
    "\\u0000-\\u0008\\u000B\\u000C\\u000E-\\u001F\\u007F-\\u009F\\u2028\\u2029\\u202A-\\u202E\\u2066-"                 \
    "\\u2069\\uFFFE\\uFFFF"
#define DIGITS "(?:0|[1-9][0-9]*)(?:\\.[0-9]+)?"

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
    const double most = fmax(fabs(field->least), fabs(field->most));
    double worth = 1;
    for (int i = 0; quantity_spelling(field->unit, i) != NULL; i++) {
        worth = fmin(worth, quantity_spelling_worth(field->unit, i));
    }
    return 1 + (int)floor(log10(fmax(1, most / worth)) + 1e-9);
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

static void number_pattern(const struct SchemaWriter *writer, struct JsonNode *node, const struct Field *field)
{
    struct TextBuilder pattern = text_builder(writer->arena);
    text_add(&pattern, "^ *");
    add_number(&pattern, field);
    add_units(&pattern, field->unit);
    text_add(&pattern, " *$");
    json_text(writer->out, node, "type", "string");
    json_text(writer->out, node, "pattern", text_done(&pattern));
}

static void two_sizes_pattern(const struct SchemaWriter *writer, struct JsonNode *node, const struct Field *field)
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

static void pattern(const struct SchemaWriter *writer, struct JsonNode *node, const char *text)
{
    json_text(writer->out, node, "type", "string");
    json_text(writer->out, node, "pattern", text);
}

/* ---- values ---- */

void schema_bare_number(const struct SchemaWriter *writer, struct JsonNode *node, const struct Field *field)
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

static void add_words(const struct SchemaWriter *writer, struct JsonNode *node, const struct Field *field)
{
    struct JsonNode *list = json_list(writer->out, node, "enum");
    struct JsonNode *meanings = json_list(writer->out, node, "enumDescriptions");
    for (int i = 0; i < survey_word_count(field->words); i++) {
        json_text(writer->out, list, "", survey_word(field->words, i));
        json_text(writer->out, meanings, "", survey_meaning(field->words, i));
    }
}

/* A number, or one of the words that may stand for it. */
static void words_or_number(const struct SchemaWriter *writer, struct JsonNode *node, const struct Field *field)
{
    struct JsonNode *any = json_list(writer->out, node, "anyOf");
    struct JsonNode *words = json_list(writer->out, json_object(writer->out, any, ""), "enum");
    if (field->kind == FIELD_SIZE) {
        json_text(writer->out, words, "", "choose");
    }
    for (int i = 0; field->kind == FIELD_HEADING && field_compass_point(i) != NULL; i++) {
        json_text(writer->out, words, "", field_compass_point(i));
    }
    number_pattern(writer, json_object(writer->out, any, ""), field);
}

static void add_text(const struct SchemaWriter *writer, struct JsonNode *node, const struct Field *field)
{
    struct JsonNode *types = json_list(writer->out, node, "type");
    json_text(writer->out, types, "", "string");
    json_text(writer->out, types, "", "number");
    json_text(writer->out, types, "", "boolean");
    json_number(writer->out, node, "minLength", 1);
    json_text(writer->out, node, "pattern",
              field->kind == FIELD_NAME ? "^[^" REFUSED "\\t\\n\\r]*$" : "^[^" REFUSED "]*$");
    if (field->kind == FIELD_NAME) { /* a text's line breaks become one space before it is measured */
        json_number(writer->out, node, "maxLength", (double)field->longest);
    }
}

void schema_value(const struct SchemaWriter *writer, struct JsonNode *node, const struct Field *field)
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
            schema_bare_number(writer, node, field);
        } else {
            number_pattern(writer, node, field);
        }
        return;
    case FIELD_WORD: add_words(writer, node, field); return;
    case FIELD_YES: json_words(writer->out, node, "enum", "yes no", false); return;
    case FIELD_HEADING:
    case FIELD_SIZE: words_or_number(writer, node, field); return;
    case FIELD_TWO_SIZES: two_sizes_pattern(writer, node, field); return;
    case FIELD_MAP:
    case FIELD_OWN: return;
    }
}
