/* The sink for faults: order, limit, what may be printed, excerpts; and that every message text is well made. */
#include "test_diag.h"

#include "base/diag.h"

#include <signal.h>
#include <stdio.h>
#include <string.h>

static struct Bytes bytes_of(const char *text)
{
    return (struct Bytes){text, strlen(text)};
}

START_TEST(reports_come_sorted_by_place)
{
    struct Arena *arena = arena_new();
    struct Diag *diag = diag_new(arena);
    diag_report(diag, MSG_RUNS_NOT_MAPPING, (struct Mark){3, 1}, 4, DIAG_NO_WORDS);
    diag_report(diag, MSG_LOAD_BOTH, (struct Mark){2, 9}, 1, DIAG_NO_WORDS);
    diag_report(diag, MSG_LOAD_NEITHER, (struct Mark){2, 9}, 1, DIAG_NO_WORDS);
    diag_report(diag, MSG_RODS_CLOSE, (struct Mark){2, 3}, 0, DIAG_NO_WORDS);
    diag_report(diag, MSG_FILE_TOO_LARGE, (struct Mark){0, 0}, 1, DIAG_NO_WORDS);
    static const enum DiagCode order[] = {MSG_FILE_TOO_LARGE, MSG_RODS_CLOSE, MSG_LOAD_BOTH, MSG_LOAD_NEITHER,
                                          MSG_RUNS_NOT_MAPPING};
    ck_assert_uint_eq(diag_count(diag), 5);
    ck_assert_uint_eq(diag_errors(diag), 4);
    for (size_t i = 0; i < 5; i++) {
        ck_assert_int_eq(diag_at(diag, i)->code, order[i]);
        ck_assert_int_ge(diag_at(diag, i)->width, 1);
    }
    ck_assert_ptr_null(diag_at(diag, 5));
    ck_assert_int_eq(diag_at(diag, 1)->severity, DIAG_WARNING);
    diag_report(diag, MSG_SECOND_COLON, (struct Mark){1, 1}, 1, DIAG_NO_WORDS);
    ck_assert_int_eq(diag_at(diag, 1)->code, MSG_SECOND_COLON); /* sorted again */
    arena_free(arena);
}
END_TEST

START_TEST(the_hundredth_is_the_last_kept)
{
    struct Arena *arena = arena_new();
    struct Diag *diag = diag_new(arena);
    for (int i = 1; i <= DIAG_LIMIT; i++) {
        diag_report(diag, MSG_LOAD_BOTH, (struct Mark){i, 1}, 1, DIAG_NO_WORDS);
    }
    ck_assert_uint_eq(diag_count(diag), DIAG_LIMIT);
    for (int i = 1; i <= 23; i++) {
        diag_report(diag, MSG_LOAD_BOTH, (struct Mark){1000, 1}, 1, DIAG_NO_WORDS);
    }
    ck_assert_uint_eq(diag_count(diag), DIAG_LIMIT + 1);
    ck_assert_uint_eq(diag_errors(diag), DIAG_LIMIT + 23);
    const struct Diagnostic *last = diag_at(diag, DIAG_LIMIT);
    ck_assert_int_eq(last->code, MSG_TOO_MANY_FAULTS);
    ck_assert_int_eq(last->severity, DIAG_ERROR);
    ck_assert_str_eq(last->text, "23 more faults are not shown; mend these first");
    ck_assert_int_eq(diag_at(diag, DIAG_LIMIT - 1)->mark.line, DIAG_LIMIT);
    arena_free(arena);
}
END_TEST

START_TEST(warnings_make_room_for_errors)
{
    struct Arena *arena = arena_new();
    struct Diag *diag = diag_new(arena);
    for (int i = 1; i <= DIAG_LIMIT + 5; i++) {
        diag_report(diag, MSG_RODS_CLOSE, (struct Mark){i, 1}, 1, DIAG_NO_WORDS);
    }
    ck_assert_uint_eq(diag_errors(diag), 0);
    ck_assert_int_eq(diag_at(diag, DIAG_LIMIT)->severity, DIAG_WARNING); /* nothing but warnings was left out */
    diag_report(diag, MSG_LOAD_BOTH, (struct Mark){500, 1}, 1, DIAG_NO_WORDS);
    ck_assert_int_eq(diag_at(diag, DIAG_LIMIT - 1)->code, MSG_LOAD_BOTH);
    ck_assert_int_eq(diag_at(diag, DIAG_LIMIT - 2)->mark.line, DIAG_LIMIT - 1);
    ck_assert_str_eq(diag_at(diag, DIAG_LIMIT)->text, "6 more faults are not shown; mend these first");
    ck_assert_int_eq(diag_at(diag, DIAG_LIMIT)->severity, DIAG_ERROR);
    arena_free(arena);
}
END_TEST

struct Word {
    const char *word, *printed;
};
static const struct Word words[] = {
    {"gable", "gable"},
    {"caf\xC3\xA9 \xCE\xA9", "caf\xC3\xA9 \xCE\xA9"},
    {"a\x1B[2J", "a\\x1B[2J"},
    {"a\nb\tc", "a\\x0Ab\\x09c"},
    {"\x7F", "\\x7F"},
    {"\xC2\x9B", "\\x9B"},
    {"\xE2\x80\xAE", "\\u202E"},
    {"\xE2\x80\xA8", "\\u2028"},
    {"\xEF\xBB\xBF", "\\uFEFF"},
    {"caf\xE9", "caf\\xE9"}, /* not UTF-8 */
    {"{}", "{}"},
    {"%s%n", "%s%n"},
};

START_TEST(words_are_made_printable)
{
    struct Arena *arena = arena_new();
    struct Diag *diag = diag_new(arena);
    diag_report(diag, MSG_SEGMENT_UNUSED, (struct Mark){1, 1}, 1, DIAG_WORDS(words[_i].word));
    const char *text = arena_print(arena, "no run follows the segment \"%s\"", words[_i].printed);
    ck_assert_str_eq(diag_at(diag, 0)->text, text);
    ck_assert_str_eq(diag_at(diag, 0)->words[0], words[_i].printed);
    ck_assert_ptr_null(diag_at(diag, 0)->words[1]);
    ck_assert_str_eq(diag_sentence(arena, MSG_SEGMENT_UNUSED, diag_at(diag, 0)->words), text);
    arena_free(arena);
}
END_TEST

/* Whoever looks for what a report speaks of need not read it; what names nothing speaks of the file. */
START_TEST(a_report_knows_its_subject)
{
    struct Arena *arena = arena_new();
    struct Diag *diag = diag_new(arena);
    diag_report(diag, MSG_LOAD_BOTH, (struct Mark){1, 1}, 1, DIAG_NO_WORDS);
    diag_report_of(diag, DIAG_RUN(3), MSG_LOAD_BOTH, (struct Mark){2, 1}, 1, DIAG_NO_WORDS);
    diag_report_of(diag, DIAG_SEGMENT(7), MSG_LOAD_BOTH, (struct Mark){3, 1}, 1, DIAG_NO_WORDS);
    ck_assert_int_eq(diag_at(diag, 0)->subject.of, DIAG_OF_FILE);
    ck_assert_int_eq(diag_at(diag, 1)->subject.of, DIAG_OF_RUN);
    ck_assert_int_eq(diag_at(diag, 1)->subject.index, 3);
    ck_assert_int_eq(diag_at(diag, 2)->subject.of, DIAG_OF_SEGMENT);
    ck_assert_int_eq(diag_at(diag, 2)->subject.index, 7);
    arena_free(arena);
}
END_TEST

START_TEST(long_words_are_cut_between_characters)
{
    struct Arena *arena = arena_new();
    struct Diag *diag = diag_new(arena);
    struct TextBuilder word = text_builder(arena);
    struct TextBuilder cut = text_builder(arena);
    for (int i = 0; i < 241; i++) {
        text_add(&word, "\xC3\xA9");
        text_add(&cut, i < 240 ? "\xC3\xA9" : "...");
    }
    diag_report(diag, MSG_SEGMENT_UNUSED, (struct Mark){1, 1}, 1, DIAG_WORDS(text_done(&word)));
    ck_assert_ptr_nonnull(strstr(diag_at(diag, 0)->text, text_done(&cut)));
    arena_free(arena);
}
END_TEST

static const char *print_one(struct Arena *arena, const char *source, int line, int column, int width)
{
    struct Diag *diag = diag_new(arena);
    diag_report(diag, MSG_LOAD_BOTH, (struct Mark){line, column}, width, DIAG_NO_WORDS);
    return diag_print(diag, arena, "r.yaml", source != NULL ? bytes_of(source) : (struct Bytes){NULL, 0});
}

#define HEAD(place) "r.yaml:" place ": error: a load takes current or power, not both [load-both]\n"

START_TEST(the_line_is_shown_and_underlined)
{
    struct Arena *arena = arena_new();
    const char *two = HEAD("2:4") "    2 | b: two\n      |    ^~~\n";
    ck_assert_str_eq(print_one(arena, "a: 1\nb: two\nc: 3\n", 2, 4, 3), two);
    ck_assert_str_eq(print_one(arena, "a: 1\r\nb: two\r\nc: 3\r\n", 2, 4, 3), two);
    ck_assert_str_eq(print_one(arena, "a: 1\rb: two\rc: 3\r", 2, 4, 3), two);
    ck_assert_str_eq(print_one(arena,
                               "\xEF\xBB\xBF"
                               "a: 1\nb: two",
                               2, 4, 99),
                     two); /* no wider than the line */
    ck_assert_str_eq(print_one(arena,
                               "\xEF\xBB\xBF"
                               "a: 1\n",
                               1, 1, 1),
                     HEAD("1:1") "    1 | a: 1\n      | ^\n");
    ck_assert_str_eq(print_one(arena, "\xC3\xA9\xC3\xA9: x\n", 1, 5, 1),
                     HEAD("1:5") "    1 | \xC3\xA9\xC3\xA9: x\n      |     ^\n");
    ck_assert_str_eq(print_one(arena, "a\n\nb\n", 2, 1, 1), HEAD("2:1") "    2 |\n      | ^\n");
    ck_assert_str_eq(print_one(arena, "a\n", 1, 50, 3), HEAD("1:50") "    1 | a\n      |  ^\n");
    ck_assert_str_eq(print_one(arena, "a\n", 2, 1, 1), HEAD("2:1")); /* behind the end */
    ck_assert_str_eq(print_one(arena, NULL, 2, 1, 1), HEAD("2:1"));
    arena_free(arena);
}
END_TEST

START_TEST(nothing_raw_from_the_file_is_shown)
{
    struct Arena *arena = arena_new();
    ck_assert_str_eq(print_one(arena, "a\tb\x1B[2J\x7F\xC2\x9B\xFF\xE2\x80\xAE!\n", 1, 3, 1),
                     HEAD("1:3") "    1 | a b?[2J???"
                                 "?!\n      |   ^\n");
    struct Diag *diag = diag_new(arena);
    diag_report(diag, MSG_FILE_TOO_LARGE, (struct Mark){0, 0}, 1, DIAG_NO_WORDS);
    ck_assert_str_eq(
        diag_print(diag, arena,
                   "a\x1B"
                   "b.yaml",
                   bytes_of("a")),
        "a?b.yaml: error: the file is larger than 4 MiB, which no route or order needs [file-too-large]\n");
    arena_free(arena);
}
END_TEST

START_TEST(a_long_line_is_shown_as_a_window)
{
    struct Arena *arena = arena_new();
    char line[1002];
    memset(line, 'x', sizeof line);
    line[499] = 'F';
    line[1000] = '\n';
    line[1001] = '\0';
    const char *printed = print_one(arena, line, 1, 500, 1000);
    const char *excerpt = strstr(printed, "\n    1 | ...");
    ck_assert_ptr_nonnull(excerpt);
    const char *caret_line = strchr(excerpt + 1, '\n') + 1;
    ck_assert_uint_eq((size_t)(caret_line - excerpt), 1 + 8 + 3 + 100 + 3 + 1);
    const char *fault = strchr(excerpt, 'F');
    const char *caret = strchr(caret_line, '^');
    ck_assert_uint_eq((size_t)(fault - excerpt - 1), (size_t)(caret - caret_line));
    ck_assert_uint_eq(strlen(caret), 60 + 1); /* the underline ends with the window */
    ck_assert_ptr_nonnull(strstr(print_one(arena, line, 1, 1, 1), "\n    1 | xxx"));
    ck_assert_ptr_nonnull(strstr(print_one(arena, line, 1, 1000, 1), "xxx\n      | "));
    arena_free(arena);
}
END_TEST

START_TEST(message_texts_are_well_made)
{
    for (int code = 0; code < MSG_COUNT; code++) {
        const char *name = diag_name((enum DiagCode)code);
        const char *text = diag_template((enum DiagCode)code);
        ck_assert_msg(strspn(name, "abcdefghijklmnopqrstuvwxyz0123456789-") == strlen(name) && strlen(name) > 3,
                      "%s is no stable name", name);
        ck_assert_msg(strlen(text) > 10 && strpbrk(text, "\n\t") == NULL && text[strlen(text) - 1] != '.',
                      "%s: one sentence without a full stop", name);
        ck_assert_msg(strchr(text, '%') == NULL || strstr(text, "%s") == NULL, "%s: holes are {}", name);
        enum DiagSeverity severity = diag_severity((enum DiagCode)code);
        ck_assert(severity == DIAG_ERROR || severity == DIAG_WARNING);
        for (int other = 0; other < code; other++) {
            ck_assert_str_ne(name, diag_name((enum DiagCode)other));
        }
    }
}
END_TEST

/* As many words as holes: each message can be filled, and the words all show. */
START_TEST(every_hole_takes_a_word)
{
    static const char *const many[] = {"w1", "w2", "w3", "w4", "w5", "w6", "w7", "w8"};
    struct Arena *arena = arena_new();
    for (int code = 0; code < MSG_COUNT; code++) {
        const char *given[9] = {NULL};
        int holes = 0;
        for (const char *hole = strstr(diag_template((enum DiagCode)code), "{}"); hole != NULL;
             hole = strstr(hole + 2, "{}")) {
            ck_assert_int_lt(holes, 8);
            given[holes] = many[holes];
            holes++;
        }
        struct Diag *diag = diag_new(arena);
        diag_report(diag, (enum DiagCode)code, (struct Mark){1, 1}, 1, holes > 0 ? given : DIAG_NO_WORDS);
        const char *text = diag_at(diag, 0)->text;
        ck_assert_ptr_null(strstr(text, "{}"));
        for (int i = 0; i < holes; i++) {
            ck_assert_ptr_nonnull(strstr(text, many[i]));
        }
    }
    arena_free(arena);
}
END_TEST

#ifndef NDEBUG
START_TEST(a_word_too_few_is_caught)
{
    struct Arena *arena = arena_new();
    diag_report(diag_new(arena), MSG_KEY_TWICE, (struct Mark){1, 1}, 1, DIAG_WORDS("title"));
}
END_TEST

START_TEST(a_word_too_many_is_caught)
{
    struct Arena *arena = arena_new();
    diag_report(diag_new(arena), MSG_LOAD_BOTH, (struct Mark){1, 1}, 1, DIAG_WORDS("title"));
}
END_TEST
#endif

START_TEST(no_memory_still_counts)
{
    struct Arena *arena = arena_new();
    struct Diag *diag = diag_new(arena);
    while (arena_alloc(arena, 1024) != NULL) { /* use up the first block */
        arena_fail_after(arena, 0);
    }
    diag_report(diag, MSG_KEY_TWICE, (struct Mark){1, 1}, 1, DIAG_WORDS("a", "b"));
    ck_assert_uint_eq(diag_errors(diag), 1);
    ck_assert_ptr_nonnull(diag_at(diag, 0)->text);
    arena_free(arena);
    arena = arena_new();
    arena_fail_after(arena, 0);
    ck_assert_ptr_null(diag_new(arena));
    arena_free(arena);
}
END_TEST

TCase *diag_tests(void)
{
    TCase *tests = tcase_create("faults");
    tcase_add_test(tests, reports_come_sorted_by_place);
    tcase_add_test(tests, the_hundredth_is_the_last_kept);
    tcase_add_test(tests, warnings_make_room_for_errors);
    tcase_add_loop_test(tests, words_are_made_printable, 0, (int)(sizeof words / sizeof words[0]));
    tcase_add_test(tests, a_report_knows_its_subject);
    tcase_add_test(tests, long_words_are_cut_between_characters);
    tcase_add_test(tests, the_line_is_shown_and_underlined);
    tcase_add_test(tests, nothing_raw_from_the_file_is_shown);
    tcase_add_test(tests, a_long_line_is_shown_as_a_window);
    tcase_add_test(tests, message_texts_are_well_made);
    tcase_add_test(tests, every_hole_takes_a_word);
#ifndef NDEBUG
    tcase_add_test_raise_signal(tests, a_word_too_few_is_caught, SIGABRT);
    tcase_add_test_raise_signal(tests, a_word_too_many_is_caught, SIGABRT);
#endif
    tcase_add_test(tests, no_memory_still_counts);
    return tests;
}
