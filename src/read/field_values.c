/* One value of a mapping by its field: texts, dates, words, numbers with units. Quoted and plain values are read the
 * same, because people quote at random; line breaks and tabs in a text become one space. */
#include "field_values_private.h"

#include <math.h>
#include <string.h>

enum { QUOTED_MOST = 60 };

_Static_assert(sizeof(enum Way) == sizeof(int) && sizeof(enum CableType) == sizeof(int), "words are stored as int");

const char *fields_quote(struct Reader *reader, const char *text)
{
    size_t at = 0;
    size_t length = strlen(text);
    for (int characters = 0; at < length; characters++) {
        if (characters == QUOTED_MOST) {
            return arena_print(reader->arena, "%.*s...", (int)at, text);
        }
        int bytes = utf8_length(text + at, length - at);
        at += bytes > 0 ? (size_t)bytes : 1;
    }
    return text;
}

bool fields_node_empty(const struct TreeNode *node)
{
    return node->kind == TREE_SCALAR && node->plain && (node->length == 0 || text_same(node->text, "~"));
}

static void *at_offset(const struct Field *field, void *out)
{
    return (char *)out + field->offset;
}

static void store_int(const struct Field *field, void *out, int value)
{
    memcpy(at_offset(field, out), &value, sizeof value);
}

static void store_quantity(const struct Field *field, void *out, struct Quantity value)
{
    memcpy(at_offset(field, out), &value, sizeof value);
}

static void store_text(const struct Field *field, void *out, const char *text)
{
    memcpy(at_offset(field, out), &text, sizeof text);
}

void field_value_given(const struct Field *field, void *out)
{
    bool given = true;
    if (field->given_offset != 0) {
        memcpy((char *)out + field->given_offset, &given, sizeof given);
    }
}

void field_value_unknown(const struct Field *field, void *out)
{
    const struct Quantity unknown = {.value = NAN};
    switch (field->kind) {
    case FIELD_TEXT:
    case FIELD_NAME:
    case FIELD_FILE:
    case FIELD_DATE: store_text(field, out, NULL); break;
    case FIELD_QUANTITY:
    case FIELD_WHOLE_QUANTITY:
    case FIELD_HEADING:
    case FIELD_SIZE: store_quantity(field, out, unknown); break;
    case FIELD_TWO_SIZES:
        store_quantity(field, out, unknown);
        memcpy((char *)out + field->given_offset, &unknown, sizeof unknown);
        break;
    case FIELD_WHOLE: store_int(field, out, -1); break;
    case FIELD_WORD: store_int(field, out, survey_word_count(field->words)); break;
    case FIELD_MAP: fields_unknown(field->inner, at_offset(field, out)); break;
    case FIELD_YES:
    case FIELD_OWN: break;
    }
}

void field_value_absent(const struct Field *field, void *out)
{
    if (field->kind == FIELD_TEXT || field->kind == FIELD_NAME || field->kind == FIELD_FILE ||
        field->kind == FIELD_DATE) {
        store_text(field, out, "");
    } else if (field->kind == FIELD_WORD) {
        store_int(field, out, field->has_default ? (int)field->fallback : survey_word_count(field->words));
    } else if (field->kind == FIELD_MAP) {
        fields_absent(field->inner, at_offset(field, out));
    }
}

void field_value_default(const struct Field *field, void *out)
{
    if (field->kind == FIELD_WORD || field->kind == FIELD_WHOLE) {
        store_int(field, out, (int)field->fallback);
    } else if (field->kind == FIELD_QUANTITY || field->kind == FIELD_WHOLE_QUANTITY) {
        store_quantity(field, out, (struct Quantity){.value = field->fallback});
    }
}

/* A single, non-empty value, or NULL (reported where nothing was reported before). */
static const struct TreeNode *single_value(struct Reader *reader, const char *key, const struct TreeNode *node)
{
    if (node->kind == TREE_LIST || node->kind == TREE_MAP) {
        reader_report(reader, MSG_VALUE_NOT_SINGLE, node, DIAG_WORDS(key));
        return NULL;
    }
    if (node->kind == TREE_SCALAR && fields_node_empty(node)) {
        reader_report(reader, MSG_VALUE_EMPTY, node, DIAG_WORDS(key));
        return NULL;
    }
    return node->kind == TREE_SCALAR ? node : NULL;
}

static const char *fold_breaks(struct Arena *arena, const char *text)
{
    if (strpbrk(text, "\n\r\t") == NULL) {
        return read_trimmed(arena, text);
    }
    struct TextBuilder folded = text_builder(arena);
    bool gap = false;
    for (; *text != '\0'; text++) {
        if (*text == '\n' || *text == '\r' || *text == '\t') {
            gap = true;
            continue;
        }
        if (gap && *text != ' ' && folded.length > 0 && folded.data[folded.length - 1] != ' ') {
            text_add_char(&folded, ' ');
        }
        if (folded.length > 0 || *text != ' ') {
            text_add_char(&folded, *text);
        }
        gap = false;
    }
    while (!folded.failed && folded.length > 0 && folded.data[folded.length - 1] == ' ') {
        folded.data[--folded.length] = '\0';
    }
    return text_done(&folded);
}

const char *fields_text(struct Reader *reader, const char *key, const struct TreeNode *node, size_t longest,
                        bool one_line)
{
    node = single_value(reader, key, node);
    if (node == NULL) {
        return NULL;
    }
    if (one_line && strpbrk(node->text, "\n\r\t") != NULL) {
        reader_report(reader, MSG_NAME_ON_ONE_LINE, node, DIAG_WORDS(key));
        return NULL;
    }
    const char *text = fold_breaks(reader->arena, node->text);
    if (text_order_seen(text, "") == 0) { /* blanks of any width, or nothing that is seen */
        reader_report(reader, MSG_VALUE_EMPTY, node, DIAG_WORDS(key));
        return NULL;
    }
    if (utf8_count(text) > longest) {
        reader_report(reader, MSG_TEXT_TOO_LONG, node, DIAG_WORDS(key, arena_print(reader->arena, "%zu", longest)));
        return NULL;
    }
    return text;
}

struct Words {
    enum WordList list;
};

static const char *word_at(const void *list, size_t index)
{
    return survey_word(((const struct Words *)list)->list, (int)index);
}

static const char *all_words(struct Arena *arena, enum WordList words)
{
    struct TextBuilder list = text_builder(arena);
    int count = survey_word_count(words);
    for (int i = 0; i < count; i++) {
        text_add(&list, survey_word(words, i));
        text_add(&list, i + 2 < count ? ", " : i + 2 == count ? " or " : "");
    }
    return text_done(&list);
}

int fields_word(struct Reader *reader, const char *key, const struct TreeNode *node, enum WordList words)
{
    int count = survey_word_count(words);
    node = single_value(reader, key, node);
    if (node == NULL) {
        return count;
    }
    for (int i = 0; i < count; i++) {
        if (text_same(survey_word(words, i), node->text)) {
            return i;
        }
    }
    const char *means = spoken_means(node->text, key);
    if (means != NULL) {
        reader_report(reader, MSG_WORD_SPOKEN, node, DIAG_WORDS(key, fields_quote(reader, node->text), means));
        return count;
    }
    const struct Words list = {words};
    const char *near = suggest_near(node->text, &list, (size_t)count, word_at);
    const char *quoted = fields_quote(reader, node->text);
    if (near != NULL) {
        reader_report(reader, MSG_WORD_MISSPELT, node, DIAG_WORDS(key, quoted, near));
    } else {
        reader_report(reader, MSG_WORD_UNKNOWN, node, DIAG_WORDS(key, quoted, all_words(reader->arena, words)));
    }
    return count;
}

static bool days_fit(int year, int month, int day)
{
    static const int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    if (month < 1 || month > 12 || day < 1) {
        return false;
    }
    bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    return day <= days[month - 1] + (leap && month == 2 ? 1 : 0);
}

bool fields_is_date(const char *text)
{
    if (strlen(text) != 10) {
        return false;
    }
    for (int i = 0; i < 10; i++) {
        bool dash = i == 4 || i == 7;
        if (dash ? text[i] != '-' : text[i] < '0' || text[i] > '9') {
            return false;
        }
    }
    int year = (text[0] - '0') * 1000 + (text[1] - '0') * 100 + (text[2] - '0') * 10 + (text[3] - '0');
    return year > 0 && days_fit(year, (text[5] - '0') * 10 + text[6] - '0', (text[8] - '0') * 10 + text[9] - '0');
}

static bool is_plain_file(const char *text)
{
    return *text != '.' && *text != '-' && strpbrk(text, "/\\:") == NULL;
}

static void read_text(struct Reader *reader, const struct Field *field, const struct TreeNode *node, void *out)
{
    const char *text = fields_text(reader, field->key, node, field->longest, field->kind != FIELD_TEXT);
    if (text != NULL && field->kind == FIELD_DATE && !fields_is_date(text)) {
        reader_report(reader, MSG_DATE_WRONG, node, DIAG_WORDS(field->key, fields_quote(reader, text)));
        text = NULL;
    }
    if (text != NULL && field->kind == FIELD_FILE && !is_plain_file(text)) {
        reader_report(reader, MSG_FILE_NAME_PLAIN, node, DIAG_WORDS(field->key));
        text = NULL;
    }
    store_text(field, out, text);
}

static void read_yes(struct Reader *reader, const struct Field *field, const struct TreeNode *node, void *out)
{
    node = single_value(reader, field->key, node);
    if (node == NULL) {
        return;
    }
    bool yes = text_same(node->text, "yes");
    if (!yes && !text_same(node->text, "no")) {
        reader_report(reader, MSG_YES_OR_NO, node, DIAG_WORDS(field->key, fields_quote(reader, node->text)));
        return;
    }
    memcpy(at_offset(field, out), &yes, sizeof yes);
    field_value_given(field, out);
}

void field_value_read(struct Reader *reader, const struct Field *field, const struct TreeEntry *entry, void *out)
{
    switch (field->kind) {
    case FIELD_TEXT:
    case FIELD_NAME:
    case FIELD_FILE:
    case FIELD_DATE: read_text(reader, field, entry->value, out); break;
    case FIELD_WORD:
        store_int(field, out, fields_word(reader, field->key, entry->value, field->words));
        field_value_given(field, out);
        break;
    case FIELD_YES: read_yes(reader, field, entry->value, out); break;
    case FIELD_QUANTITY:
    case FIELD_WHOLE:
    case FIELD_WHOLE_QUANTITY:
    case FIELD_HEADING:
    case FIELD_SIZE:
    case FIELD_TWO_SIZES: {
        const struct TreeNode *node = single_value(reader, field->key, entry->value);
        if (node != NULL) {
            field_number_read(reader, field, node, out);
        } else {
            field_value_unknown(field, out);
        }
        break;
    }
    case FIELD_MAP:
    case FIELD_OWN: break;
    }
}
