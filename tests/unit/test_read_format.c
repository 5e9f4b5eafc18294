/* routes/route-format.md, the reference manual: held against the field tables, row by row, both ways; its example is
 * read. */
#include "read/read_private.h"
#include "read_route.h"
#include "test_read.h"

#include <stdlib.h>
#include <string.h>

#define MANUAL ROUTES_FOLDER "/route-format.md"

/* The part of the page from a heading to the next of its rank; NULL without it. */
static const char *section_of(struct Arena *arena, const char *page, const char *heading)
{
    const char *line = arena_print(arena, "\n### %s\n", heading);
    const char *found = strstr(page, line);
    if (found == NULL) {
        return NULL;
    }
    const char *from = found + strlen(line);
    const char *to = strstr(from, "\n### ");
    return arena_text(arena, from, to != NULL ? (size_t)(to - from) + 1 : strlen(from));
}

/* "`runs.NAME.start`, `runs.NAME.finish`" of "runs.NAME.start, runs.NAME.finish". */
static const char *heading_of(struct Arena *arena, enum SurveyTable table)
{
    struct TextBuilder heading = text_builder(arena);
    if (table == TABLE_TOP) {
        return "The top of the file";
    }
    text_add(&heading, "`");
    for (const char *at = survey_fields(table)->title; *at != '\0'; at++) {
        if (at[0] == ',' && at[1] == ' ') {
            text_add(&heading, "`, `");
            at++;
        } else {
            text_add_char(&heading, *at);
        }
    }
    text_add(&heading, "`");
    return text_done(&heading);
}

/* The row of a key: the `number`th, where a key stands twice for different ways. NULL without it. */
static const char *row_of(struct Arena *arena, const char *section, const char *key, int number)
{
    const char *begin = arena_print(arena, "\n| `%s` |", key);
    const char *found = strstr(section, begin);
    for (int i = 0; i < number && found != NULL; i++) {
        found = strstr(found + 1, begin);
    }
    return found == NULL ? NULL : arena_text(arena, found + 1, strcspn(found + 1, "\n"));
}

static void holds(const char *text, const char *part, const char *key)
{
    ck_assert_msg(strstr(text, part) != NULL, "%s: \"%s\" is lacking in: %s", key, part, text);
}

static bool has_range(const struct Field *field)
{
    return (field->kind == FIELD_QUANTITY || field->kind == FIELD_WHOLE || field->kind == FIELD_WHOLE_QUANTITY ||
            field->kind == FIELD_TWO_SIZES) &&
           field->allowed_count == 0;
}

static void check_row(struct Arena *arena, const char *section, const char *row, const struct FieldTable *table,
                      const struct Field *field)
{
    if (has_range(field)) {
        holds(row,
              arena_print(arena, "%s to %s", quantity_show(arena, field->least, field->unit),
                          quantity_show(arena, field->most, field->unit)),
              field->key);
    }
    if (field->kind == FIELD_TEXT || field->kind == FIELD_NAME) {
        holds(row, arena_print(arena, "up to %zu characters", field->longest), field->key);
    }
    for (int i = 0; i < field->allowed_count; i++) {
        holds(row, number_significant(arena, field->allowed[i], 9), field->key);
    }
    for (int i = 0; field->kind == FIELD_WORD && i < survey_word_count(field->words); i++) {
        const char *word = arena_print(arena, "`%s`", survey_word(field->words, i));
        holds(row, word, field->key);
        holds(section, arena_print(arena, "%s %s", word, survey_meaning(field->words, i)), field->key);
    }
    for (int i = 0; field->applies != 0 && i < survey_word_count(table->contexts); i++) {
        if ((field->applies >> i & 1U) != 0) {
            holds(row, arena_print(arena, "`%s`", survey_word(table->contexts, i)), field->key);
        }
    }
    if (field->required != 0) {
        holds(row, "required", field->key);
    }
    if (field->default_text != NULL) {
        holds(row, field->default_text, field->key);
    } else if (field->has_default && field->kind == FIELD_WORD) {
        holds(row, arena_print(arena, "| %s |", survey_word(field->words, (int)field->fallback)), field->key);
    } else if (field->has_default && field->kind != FIELD_MAP) {
        holds(row, arena_print(arena, "| %s |", quantity_show(arena, field->fallback, field->unit)), field->key);
    }
}

static int rows_in(const char *section)
{
    int rows = 0;
    for (const char *at = strstr(section, "\n| `"); at != NULL; at = strstr(at + 1, "\n| `")) {
        rows++;
    }
    return rows;
}

START_TEST(the_page_is_the_field_tables)
{
    struct Bytes file = read_route_file(MANUAL);
    struct Arena *arena = arena_new();
    const char *page = arena_text(arena, file.data, file.length);
    const struct FieldTable *table = survey_fields((enum SurveyTable)_i);
    const char *section = section_of(arena, page, heading_of(arena, (enum SurveyTable)_i));
    ck_assert_msg(section != NULL, "no section %s", heading_of(arena, (enum SurveyTable)_i));
    for (int i = 0; i < table->count; i++) {
        int before = 0;
        for (int j = 0; j < i; j++) {
            before += text_same(table->fields[j].key, table->fields[i].key);
        }
        const char *row = row_of(arena, section, table->fields[i].key, before);
        ck_assert_msg(row != NULL, "%s: no row for %s", table->title, table->fields[i].key);
        check_row(arena, section, row, table, &table->fields[i]);
    }
    ck_assert_int_eq(rows_in(section), table->count);
    arena_free(arena);
    free(read_route_own(file));
}
END_TEST

START_TEST(the_page_s_example_is_read)
{
    struct Bytes file = read_route_file(MANUAL);
    struct Arena *arena = arena_new();
    const char *page = arena_text(arena, file.data, file.length);
    const char *from = strstr(page, "```yaml\n");
    ck_assert_ptr_nonnull(from);
    from += strlen("```yaml\n");
    const char *to = strstr(from, "```");
    ck_assert_ptr_nonnull(to);
    struct ReadRoute route = read_route_text(arena_text(arena, from, (size_t)(to - from)));
    ck_assert_str_eq(read_route_reports(&route), "");
    ck_assert_ptr_nonnull(route.survey);
    ck_assert_int_eq(route.survey->segment_count, 3);
    read_route_free(&route);
    arena_free(arena);
    free(read_route_own(file));
}
END_TEST

TCase *read_format_tests(void)
{
    TCase *tests = tcase_create("format");
    tcase_add_loop_test(tests, the_page_is_the_field_tables, 0, TABLE_COUNT);
    tcase_add_test(tests, the_page_s_example_is_read);
    return tests;
}
