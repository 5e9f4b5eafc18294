/* The language as rows: what is asked, and what keys ask of each other, names keys that there are. */
#include "read/read_private.h"

#include <check.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

enum { LABEL_MOST = 18, QUESTION_MOST = 38, ASKED_OF_A_WAY_MOST = 13 };

static const struct Field *field_of(enum SurveyTable table, const char *key)
{
    const struct FieldTable *fields = survey_fields(table);
    for (int i = 0; i < fields->count; i++) {
        if (strcmp(fields->fields[i].key, key) == 0) {
            return &fields->fields[i];
        }
    }
    return NULL;
}

START_TEST(what_is_asked_is_a_key)
{
    int count = 0;
    for (const struct Asked *asked; (asked = asked_at(count)) != NULL; count++) {
        ck_assert_msg(asked_field(asked, 0) != NULL, "%s: %s is no key", asked->path, asked->key);
        ck_assert_msg(utf8_count(asked->label) <= LABEL_MOST, "%s is too long", asked->label);
        ck_assert_msg(utf8_count(asked->question) <= QUESTION_MOST, "%s is too long", asked->question);
        for (int i = 0; i < count; i++) {
            const struct Asked *before = asked_at(i);
            ck_assert_msg(strcmp(before->path, asked->path) != 0 || strcmp(before->key, asked->key) != 0,
                          "%s: %s is asked twice", asked->path, asked->key);
            ck_assert_msg(before->card <= asked->card, "%s: %s is asked when one has walked on", asked->path,
                          asked->key);
        }
        for (int way = 0; asked->card == CARD_SEGMENT && way < WAY_COUNT; way++) {
            const bool asks = asked->contexts != 0 && (asked->contexts >> way & 1U) != 0;
            const struct Field *field = asked_field(asked, 0);
            ck_assert_msg(!asks || asked->table != TABLE_SEGMENT || asked_field(asked, 1U << way) != NULL,
                          "%s does not go with %s", field->key, survey_word(WORDS_WAY, way));
        }
    }
    ck_assert_int_gt(count, 40);
    ck_assert_ptr_null(asked_at(-1));
}
END_TEST

/* Whoever answers every question has a file that lacks no key that must be there always. */
START_TEST(what_must_be_there_is_asked)
{
    static const enum SurveyTable tables[] = {TABLE_JOB,  TABLE_SUPPLY, TABLE_EARTHING,
                                              TABLE_LOAD, TABLE_CABLE,  TABLE_SEGMENT};
    for (size_t t = 0; t < sizeof tables / sizeof tables[0]; t++) {
        const struct FieldTable *table = survey_fields(tables[t]);
        for (int f = 0; f < table->count; f++) {
            bool asked = table->fields[f].required != FIELD_ALWAYS;
            for (int i = 0; asked_at(i) != NULL; i++) {
                asked =
                    asked || (asked_at(i)->table == tables[t] && strcmp(asked_at(i)->key, table->fields[f].key) == 0);
            }
            ck_assert_msg(asked, "%s: %s is required and asked by nobody", table->title, table->fields[f].key);
        }
    }
}
END_TEST

START_TEST(no_way_asks_too_much)
{
    for (int way = 0; way < WAY_COUNT; way++) {
        int count = 0;
        for (int i = 0; asked_at(i) != NULL; i++) {
            const struct Asked *asked = asked_at(i);
            count += asked->card == CARD_SEGMENT && (asked->contexts == 0 || (asked->contexts >> way & 1U) != 0);
        }
        ck_assert_msg(count >= 5 && count <= ASKED_OF_A_WAY_MOST, "%s asks %d things", survey_word(WORDS_WAY, way),
                      count);
    }
}
END_TEST

/* "far-end=island,export" of a key that is asked before. */
START_TEST(what_waits_waits_for_an_earlier_answer)
{
    for (int i = 0; asked_at(i) != NULL; i++) {
        const char *when = asked_at(i)->when;
        if (when == NULL) {
            continue;
        }
        const size_t length = strcspn(when, "=");
        const struct Field *field = NULL;
        for (int before = 0; before < i; before++) {
            const struct Asked *earlier = asked_at(before);
            if (strlen(earlier->key) == length && strncmp(earlier->key, when, length) == 0) {
                field = asked_field(earlier, 0);
            }
        }
        ck_assert_msg(field != NULL && when[length] == '=', "%s: nothing asked before it decides", when);
        for (const char *at = when + length; *at != '\0'; at += 1 + strcspn(at + 1, ",")) {
            const size_t word_length = strcspn(at + 1, ",");
            bool known = word_length == 1 && at[1] == '-';
            for (int w = 0; field->kind == FIELD_WORD && w < survey_word_count(field->words); w++) {
                const char *word = survey_word(field->words, w);
                known = known || (strlen(word) == word_length && strncmp(word, at + 1, word_length) == 0);
            }
            ck_assert_msg(known, "%s is no answer", when);
        }
    }
}
END_TEST

START_TEST(what_keys_ask_of_each_other_names_keys)
{
    int count = 0;
    for (const struct Relation *relation; (relation = relation_at(count)) != NULL; count++) {
        const char *title = survey_fields(relation->table)->title;
        const struct Field *when = relation->when != NULL ? field_of(relation->table, relation->when) : NULL;
        ck_assert_msg(relation->when == NULL || (when != NULL && when->kind == FIELD_WORD), "%s: %s decides nothing",
                      title, relation->when != NULL ? relation->when : "");
        for (int i = 0; i < 4 && relation->keys[i] != NULL; i++) {
            ck_assert_msg(field_of(relation->table, relation->keys[i]) != NULL, "%s: %s is no key", title,
                          relation->keys[i]);
        }
        ck_assert_ptr_nonnull(relation->keys[0]);
        ck_assert(relation->kind != RELATION_ONE_OF || relation->keys[1] != NULL);
    }
    ck_assert_int_gt(count, 10);
}
END_TEST

/* What is no scalar says what stands in it, or may hold anything. */
START_TEST(what_a_key_holds_is_said)
{
    for (int t = 0; t < TABLE_COUNT; t++) {
        const struct FieldTable *table = survey_fields((enum SurveyTable)t);
        for (int i = 0; i < table->count; i++) {
            const struct Field *field = &table->fields[i];
            const bool said = field->item != NULL || field->of != TABLE_TOP || strcmp(field->key, "readings") == 0;
            ck_assert_msg(field->kind != FIELD_OWN || said, "%s: what does %s hold?", table->title, field->key);
        }
    }
}
END_TEST

enum Written { NO_WORD_KEY, WORD_THERE, WORD_NOT_THERE };

/* "type: BS5467" in what a spoken word means: whether that key takes that word. */
static enum Written written_as(const char *key, size_t key_length, const char *value, size_t value_length)
{
    enum Written result = NO_WORD_KEY;
    for (int t = 0; t < TABLE_COUNT; t++) {
        const struct FieldTable *table = survey_fields((enum SurveyTable)t);
        for (int i = 0; i < table->count; i++) {
            const struct Field *field = &table->fields[i];
            if (field->kind != FIELD_WORD || strlen(field->key) != key_length ||
                strncmp(field->key, key, key_length) != 0) {
                continue;
            }
            result = result == NO_WORD_KEY ? WORD_NOT_THERE : result;
            for (int w = 0; w < survey_word_count(field->words); w++) {
                const char *word = survey_word(field->words, w);
                if (strlen(word) == value_length && strncmp(word, value, value_length) == 0) {
                    return WORD_THERE;
                }
            }
        }
    }
    return result;
}

/* What is said of a word that people type sends nobody to a word that its key does not take. */
START_TEST(spoken_words_lead_to_what_can_be_written)
{
    int count = 0, written = 0;
    for (const char *word; (word = spoken_word(count)) != NULL; count++) {
        const char *means = read_spoken(word);
        ck_assert_msg(*means != '\0' && utf8_count(means) < 200, "%s: %s", word, means);
        for (const char *colon = strstr(means, ": "); colon != NULL; colon = strstr(colon + 2, ": ")) {
            const char *key = colon;
            while (key > means && key[-1] != ' ' && key[-1] != '(') {
                key--;
            }
            const enum Written as = written_as(key, (size_t)(colon - key), colon + 2, strcspn(colon + 2, " ,;:()"));
            ck_assert_msg(as != WORD_NOT_THERE, "%s: %s", word, means);
            written += as == WORD_THERE;
        }
    }
    ck_assert_int_gt(count, 80);
    ck_assert_int_gt(written, 50);
    ck_assert_str_eq(read_spoken("weather"), "");
    ck_assert_ptr_null(spoken_means("TT", "system"));
    ck_assert_ptr_nonnull(strstr(spoken_means("tt", "far-end"), "island"));
    ck_assert_ptr_nonnull(strstr(spoken_means("Cat 6", NULL), "EN50288"));
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("language");
    TCase *rows = tcase_create("rows");
    tcase_add_test(rows, what_is_asked_is_a_key);
    tcase_add_test(rows, what_must_be_there_is_asked);
    tcase_add_test(rows, no_way_asks_too_much);
    tcase_add_test(rows, what_waits_waits_for_an_earlier_answer);
    tcase_add_test(rows, what_keys_ask_of_each_other_names_keys);
    tcase_add_test(rows, what_a_key_holds_is_said);
    tcase_add_test(rows, spoken_words_lead_to_what_can_be_written);
    suite_add_tcase(suite, rows);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    const int failed = srunner_ntests_failed(runner) + (srunner_ntests_run(runner) == 0);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
