/* The reference manual of the route and order languages. All but the opening rules is made from the field tables, so
 * that it cannot differ from what the reader does. */
#include "labour_fields_private.h"
#include "order_fields_private.h"

#include <string.h>

enum { WIDTH = 78, KEY_COLUMN = 2, TEXT_COLUMN = 22, WORD_COLUMN = 24, MEANING_COLUMN = 42 };

static const char rules[] = "THE ROUTE FILE, VERSION 1\n"
                            "\n"
                            "A route file is YAML in UTF-8: one document, at most 4 MiB. Its first key is\n"
                            "\"wend: 1\". Indent with spaces. Keys and words are written as they stand here.\n"
                            "Anchors, aliases, merge keys, tags and keys given twice are refused.\n"
                            "\n"
                            "A number is a plain decimal with a point, and a unit where one is named; the\n"
                            "space before the unit may be left out. A value in quotes is read like one\n"
                            "without. Yes and no are the only words for true and false. Line breaks and tabs\n"
                            "in a text become one space; names stay on one line. Other control characters,\n"
                            "and those that turn round the order of letters, are refused everywhere.\n"
                            "\n"
                            "Each default that is used is listed with the plan as an assumption.\n";

static const char order_rules[] = "\n"
                                  "THE ORDER FILE, VERSION 1\n"
                                  "\n"
                                  "Who buys and who sells, for wend order. It is read by the rules of the route\n"
                                  "file; its first key is \"wend-order: 1\". What is ordered comes from the routes.\n";
static const char labour_rules[] = "\n"
                                   "LABOUR FIGURES\n"
                                   "\n"
                                   "How long work takes, for wend day: a file of your own that --labour or\n"
                                   "parts.labour of a route names. It is read by the rules of the route file; its\n"
                                   "first key is \"wend-labour: 1\". A task's time is that of one times how many the\n"
                                   "take-off counts. The program's own figures, to begin with, are those of\n"
                                   "routes/labour/labour.yaml: common practice, no source.\n";
static const char price_rules[] = "\nTHE PRICE LIST\n"
                                  "\n"
                                  "A file of your own that parts.prices of a route, or order.prices of an order\n"
                                  "file, names; no price is built in. It is CSV in UTF-8 with commas. Its first\n"
                                  "line names the columns, in any order; columns of other names are yours and are\n"
                                  "not read:\n"
                                  "\n"
                                  "  code,unit,price,currency\n"
                                  "  cable-BS5467-3x10,m,6.35,EUR\n"
                                  "  cable-BS5467-3x10,drum-100,580.00,EUR\n"
                                  "  gland-BW-20,pack,11.20,EUR\n"
                                  "\n"
                                  "  code      as in the column \"code\" of the parts list; of cable without the name\n"
                                  "            of its run\n"
                                  "  unit      what the price is for: m, each, or pack; an article in packs may be\n"
                                  "            priced by the pack or by what is in it, and whole packs are paid;\n"
                                  "            drum-100, coil-100 and length-100 for one whole length of 100 m\n"
                                  "  price     digits and a decimal point, no sign and no spaces; a line without a\n"
                                  "            price is left out\n"
                                  "  currency  three capital letters of ISO 4217; each currency has its own total\n"
                                  "\n"
                                  "Each code stands once, and once more for each whole length. What has no price\n"
                                  "is listed and is in no total. What is cut from whole drums pays for them whole:\n"
                                  "each by its own price where there is one, else by the metre.\n"
                                  "\n"
                                  "Amounts keep every decimal that the list has; where a total is no whole coin it\n"
                                  "is given as well, rounded half up to the smallest coin. A line's total is\n"
                                  "rounded half up to the smallest part that the list writes its prices in.\n"
                                  "\n"
                                  "In an order the list of the order file overrides those of the routes, article\n"
                                  "by article. Where routes price an article differently it is in no total, and\n"
                                  "the order says so.\n";

struct Page {
    struct TextBuilder out;
    size_t column;
};

static void move_to(struct Page *page, size_t column)
{
    while (page->column < column) {
        text_add_char(&page->out, ' ');
        page->column++;
    }
}

static void new_line(struct Page *page)
{
    text_add_char(&page->out, '\n');
    page->column = 0;
}

/* Words from `column` on, wrapped. */
static void add_wrapped(struct Page *page, size_t column, const char *text)
{
    if (page->column + 1 > column && page->column > 0) {
        new_line(page);
    }
    move_to(page, column);
    bool first = true;
    while (*text != '\0') {
        size_t length = strcspn(text, " ");
        size_t characters = 0;
        for (size_t i = 0; i < length; i++) {
            characters += ((unsigned char)text[i] & 0xC0) != 0x80;
        }
        if (!first && page->column + 1 + characters > WIDTH) {
            new_line(page);
            move_to(page, column);
        } else if (!first) {
            text_add_char(&page->out, ' ');
            page->column++;
        }
        text_add_bytes(&page->out, text, length);
        page->column += characters;
        first = false;
        text += length + (text[length] == ' ');
    }
}

static const char *range_of(struct Arena *arena, const struct Field *field)
{
    if (field->allowed_count > 0) {
        struct TextBuilder list = text_builder(arena);
        for (int i = 0; i < field->allowed_count; i++) {
            const char *between = i + 2 < field->allowed_count ? ", " : i + 2 == field->allowed_count ? " or " : "";
            bool last = i + 1 == field->allowed_count;
            text_add(&list, last ? quantity_show(arena, field->allowed[i], field->unit)
                                 : number_significant(arena, field->allowed[i], 9));
            text_add(&list, between);
        }
        return text_done(&list);
    }
    return arena_print(arena, "%s to %s", quantity_show(arena, field->least, field->unit),
                       quantity_show(arena, field->most, field->unit));
}

static const char *kind_of(struct Arena *arena, const struct Field *field)
{
    switch (field->kind) {
    case FIELD_TEXT: return arena_print(arena, "text of up to %zu characters", field->longest);
    case FIELD_NAME: return arena_print(arena, "text on one line, up to %zu characters", field->longest);
    case FIELD_FILE: return "a plain file name";
    case FIELD_DATE: return "a date";
    case FIELD_QUANTITY:
        return field->unit == MEASURE_NONE
                   ? arena_print(arena, "a number, %s", range_of(arena, field))
                   : arena_print(arena, "%s; in %s", range_of(arena, field), quantity_units(arena, field->unit));
    case FIELD_WHOLE:
    case FIELD_WHOLE_QUANTITY: return arena_print(arena, "a whole number, %s", range_of(arena, field));
    case FIELD_WORD: return "one of the words below";
    case FIELD_YES: return "yes or no";
    case FIELD_HEADING: return "a compass point, or 0 deg to 360 deg";
    case FIELD_SIZE: return arena_print(arena, "%s, or choose", range_of(arena, field));
    case FIELD_TWO_SIZES:
        return arena_print(arena, "%s each; in %s", range_of(arena, field), quantity_units(arena, field->unit));
    case FIELD_MAP: return "keys of its own";
    case FIELD_OWN: return field->inner != NULL ? "keys of its own" : NULL;
    }
    return NULL;
}

const char *field_default(struct Arena *arena, const struct Field *field)
{
    if (field->default_text != NULL) {
        return field->default_text;
    }
    if (field->kind == FIELD_MAP || !field->has_default) {
        return NULL;
    }
    return field->kind == FIELD_WORD ? survey_word(field->words, (int)field->fallback)
                                     : quantity_show(arena, field->fallback, field->unit);
}

static void add_contexts(struct Page *page, const struct FieldTable *table, const char *before, unsigned contexts)
{
    struct TextBuilder list = text_builder(page->out.arena);
    text_add(&list, before);
    for (int i = 0; i < survey_word_count(table->contexts); i++) {
        if ((contexts >> i & 1U) != 0) {
            text_add(&list, " ");
            text_add(&list, survey_word(table->contexts, i));
        }
    }
    add_wrapped(page, TEXT_COLUMN, text_done(&list));
}

static void add_words(struct Page *page, enum WordList words)
{
    for (int i = 0; i < survey_word_count(words); i++) {
        add_wrapped(page, WORD_COLUMN, survey_word(words, i));
        add_wrapped(page, MEANING_COLUMN, survey_meaning(words, i));
    }
}

static void add_field(struct Page *page, const struct FieldTable *table, const struct Field *field)
{
    struct Arena *arena = page->out.arena;
    add_wrapped(page, KEY_COLUMN, field->key);
    add_wrapped(page, TEXT_COLUMN, field->help);
    const char *kind = kind_of(arena, field);
    if (kind != NULL) {
        add_wrapped(page, TEXT_COLUMN, kind);
    }
    const char *default_text = field_default(arena, field);
    if (field->required == FIELD_ALWAYS) {
        add_wrapped(page, TEXT_COLUMN, "required");
    } else if (field->required != 0) {
        add_contexts(page, table, "required for", field->required);
    }
    if (default_text != NULL) {
        add_wrapped(page, TEXT_COLUMN, arena_print(arena, "default: %s", default_text));
    }
    if (field->applies != 0) {
        add_contexts(page, table, "goes with", field->applies);
    }
    if (field->kind == FIELD_WORD) {
        add_words(page, field->words);
    }
    new_line(page);
}

static void add_table(struct Page *page, const struct FieldTable *table)
{
    text_print(&page->out, "\n%s%s%s\n", table->title, *table->help != '\0' ? ": " : "", table->help);
    for (int i = 0; i < table->count; i++) {
        add_field(page, table, &table->fields[i]);
    }
}

const char *read_manual(struct Arena *arena)
{
    struct Page page = {.out = text_builder(arena)};
    text_add(&page.out, rules);
    for (int i = 0; i < TABLE_COUNT; i++) {
        add_table(&page, survey_fields((enum SurveyTable)i));
    }
    text_add(&page.out, order_rules);
    for (int i = 0; i < ORDER_TABLE_COUNT; i++) {
        add_table(&page, order_fields((enum OrderTable)i));
    }
    text_add(&page.out, price_rules);
    text_add(&page.out, labour_rules);
    for (int i = 0; i < LABOUR_TABLE_COUNT; i++) {
        add_table(&page, labour_fields((enum LabourTable)i));
    }
    return text_done(&page.out);
}
