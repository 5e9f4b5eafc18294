/* The ground floor: numbers, text, memory. The sink for faults is in test_diag.c; this file has main() for both. */
#include "base/base.h"
#include "run_suite.h"
#include "test_diag.h"

#include <math.h>
#include <stdint.h>
#include <string.h>

struct Shown {
    double value;
    int decimals;
    const char *text;
};

static const struct Shown shown[] = {
    {0, 0, "0"},
    {0, 3, "0.000"},
    {-0.0, 1, "0.0"},
    {-0.04, 1, "0.0"},
    {-0.05, 1, "-0.1"},
    {0.5, 0, "1"},
    {1.5, 0, "2"},
    {2.5, 0, "3"},
    {-0.5, 0, "-1"},
    {-2.5, 0, "-3"},
    {0.49999999, 0, "0"},
    {0.125, 2, "0.13"},
    {0.375, 2, "0.38"},
    {2.675, 2, "2.68"}, /* stored a little below */
    {1.005, 2, "1.01"},
    {0.285, 2, "0.29"},
    {9.995, 2, "10.00"},
    {999.9996, 3, "1000.000"},
    {999.9994, 3, "999.999"},
    {1e9, 0, "1000000000"},
    {123456.789012345, 9, "123456.789012345"}, /* 15 digits */
    {999999.999999999, 9, "999999.999999999"},
    {99999999999.0 / 1e5, 5, "999999.99999"},
    {0.1, 9, "0.100000000"},
    {0.000000001, 9, "0.000000001"},
    {230, -3, "230"},
    {0.3333333333, 20, "0.333333333"},
    {1.1e9, 0, "?"},
    {INFINITY, 2, "?"},
    {-INFINITY, 2, "?"},
    {NAN, 2, "?"},
};

START_TEST(number_text_rounds_half_away_from_zero)
{
    struct Arena *arena = arena_new();
    const struct Shown *row = &shown[_i];
    ck_assert_str_eq(number_text(arena, row->value, row->decimals), row->text);
    arena_free(arena);
}
END_TEST

static const struct Shown significant[] = {
    {0, 3, "0"},        {4, 3, "4"},       {12.4, 3, "12.4"},         {12.44, 3, "12.4"},
    {12.45, 3, "12.5"}, {0.35, 3, "0.35"}, {0.000312, 3, "0.000312"}, {1234.5, 3, "1235"},
    {-0.6, 9, "-0.6"},  {100, 2, "100"},   {0.45, 9, "0.45"},         {2.4, 9, "2.4"},
    {99.96, 3, "100"},  {1e-12, 3, "0"},   {1500, 9, "1500"},         {NAN, 3, "?"},
};

START_TEST(number_significant_keeps_digits)
{
    struct Arena *arena = arena_new();
    const struct Shown *row = &significant[_i];
    ck_assert_str_eq(number_significant(arena, row->value, row->decimals), row->text);
    arena_free(arena);
}
END_TEST

struct Read {
    const char *text;
    double value;
};

static const struct Read good_numbers[] = {
    {"0", 0},
    {"7", 7},
    {"12.4", 12.4},
    {"-1.2", -1.2},
    {"0.35", 0.35},
    {"0.000000000001", 1e-12},
    {"100", 100},
    {"999999999999999", 999999999999999.0},
    {"123456789.012345", 123456789.012345},
    {"0.1", 0.1},
    {"2.675", 2.675},
    {"10.0", 10},
};

START_TEST(number_read_takes_plain_decimals)
{
    double value = -99;
    const struct Read *row = &good_numbers[_i];
    ck_assert(number_read(row->text, strlen(row->text), &value));
    ck_assert(!(value < row->value) && !(value > row->value));
}
END_TEST

static const char *const bad_numbers[] = {
    "",
    "-",
    "+1",
    "--1",
    "08",
    "00",
    "-08",
    "1.",
    ".5",
    "-.5",
    "1.2.3",
    "1,5",
    "1e3",
    "1E3",
    "0x1F",
    "0o7",
    "inf",
    "nan",
    ".inf",
    " 1",
    "1 ",
    "1 m",
    "1_000",
    "1:30",
    "1-",
    "\xEF\xBC\x91",
    "1234567890123456",
    "0.1234567890123456",
    "1/2",
};

START_TEST(number_read_refuses_the_rest)
{
    double value = 5;
    ck_assert_msg(!number_read(bad_numbers[_i], strlen(bad_numbers[_i]), &value), "\"%s\" was taken", bad_numbers[_i]);
}
END_TEST

START_TEST(number_read_uses_the_length)
{
    double value = 0;
    ck_assert(number_read("12.4 m", 4, &value));
    ck_assert(value > 12.39 && value < 12.41);
    ck_assert(!number_read("1\0002", 3, &value));
    ck_assert(number_read("-0", 2, &value));
    ck_assert(signbit(value) != 0 && !(value < 0));
}
END_TEST

struct Utf8 {
    const char *bytes;
    size_t length;
    int expected;
    unsigned long code;
};

static const struct Utf8 utf8_rows[] = {
    {"a", 1, 1, 'a'},
    {"\x7F", 1, 1, 0x7F},
    {"\xC2\x80", 2, 2, 0x80},
    {"\xDF\xBF", 2, 2, 0x7FF},
    {"\xE0\xA0\x80", 3, 3, 0x800},
    {"\xED\x9F\xBF", 3, 3, 0xD7FF},
    {"\xEE\x80\x80", 3, 3, 0xE000},
    {"\xEF\xBF\xBD", 3, 3, 0xFFFD},
    {"\xF0\x90\x80\x80", 4, 4, 0x10000},
    {"\xF4\x8F\xBF\xBF", 4, 4, 0x10FFFF},
    {"", 0, 0, 0},
    {"\x80", 1, 0, 0},     /* a second byte alone */
    {"\xC0\x80", 2, 0, 0}, /* overlong */
    {"\xC1\xBF", 2, 0, 0},
    {"\xE0\x9F\xBF", 3, 0, 0},
    {"\xF0\x8F\xBF\xBF", 4, 0, 0},
    {"\xED\xA0\x80", 3, 0, 0}, /* surrogate half */
    {"\xF4\x90\x80\x80", 4, 0, 0},
    {"\xF5\x80\x80\x80", 4, 0, 0},
    {"\xFF", 1, 0, 0},
    {"\xC3", 1, 0, 0}, /* cut off */
    {"\xE2\x82", 2, 0, 0},
    {"\xC3\x28", 2, 0, 0},
    {"\xE2\x28\xA1", 3, 0, 0},
};

START_TEST(utf8_is_checked)
{
    const struct Utf8 *row = &utf8_rows[_i];
    ck_assert_int_eq(utf8_length(row->bytes, row->length), row->expected);
    if (row->expected > 0) {
        ck_assert_uint_eq(utf8_code(row->bytes), row->code);
    }
}
END_TEST

START_TEST(utf8_counts_characters)
{
    ck_assert_uint_eq(utf8_count(""), 0);
    ck_assert_uint_eq(utf8_count("abc"), 3);
    ck_assert_uint_eq(utf8_count("\xC3\xA9t\xC3\xA9"), 3);
    ck_assert_uint_eq(utf8_count("\xF0\x9F\x94\xA7"), 1);
}
END_TEST

START_TEST(arena_gives_zeroed_aligned_memory)
{
    struct Arena *arena = arena_new();
    for (size_t size = 1; size < 3000; size = size * 2 + 1) {
        unsigned char *memory = arena_alloc(arena, size);
        ck_assert_ptr_nonnull(memory);
        ck_assert_uint_eq((uintptr_t)memory % _Alignof(max_align_t), 0);
        for (size_t i = 0; i < size; i++) {
            ck_assert_uint_eq(memory[i], 0);
        }
        memset(memory, 0xA5, size);
    }
    unsigned char *large = arena_alloc(arena, 1 << 20);
    ck_assert_ptr_nonnull(large);
    ck_assert_uint_eq(large[(1 << 20) - 1], 0);
    ck_assert(!arena_failed(arena));
    arena_free(arena);
    arena_free(NULL);
}
END_TEST

START_TEST(arena_remembers_that_it_failed)
{
    struct Arena *arena = arena_new();
    ck_assert_ptr_null(arena_array(arena, SIZE_MAX / 2, 3));
    ck_assert(arena_failed(arena));
    arena_free(arena);
    arena = arena_new();
    ck_assert_ptr_null(arena_alloc(arena, SIZE_MAX - 4));
    ck_assert(arena_failed(arena));
    arena_free(arena);
    arena = arena_new();
    arena_fail_after(arena, 1);
    ck_assert_ptr_nonnull(arena_alloc(arena, 10));
    ck_assert(!arena_failed(arena));
    ck_assert_ptr_null(arena_alloc(arena, 1 << 20));
    ck_assert(arena_failed(arena));
    ck_assert_str_eq(arena_text(arena, "abc", 3), "abc"); /* there is room in the first block */
    ck_assert(arena_failed(arena));
    arena_free(arena);
}
END_TEST

/* Emptied at each call, and yet part of the arena that it belongs to: its memory and its failures are that one's. */
START_TEST(scratch_is_emptied)
{
    struct Arena *arena = arena_new();
    const char *kept = arena_text(arena, "kept", 4);
    const char *first = arena_text(arena_scratch(arena), "first", 5);
    ck_assert_str_eq(first, "first");
    const char *large = NULL;
    for (int i = 0; i < 1000; i++) {
        struct Arena *scratch = arena_scratch(arena);
        large = arena_array(scratch, 1 << 20, 1); /* a gigabyte, if it were not given back */
        ck_assert_ptr_nonnull(large);
        ck_assert_ptr_eq(arena_text(scratch, "again", 5), first);
    }
    ck_assert_str_eq(kept, "kept");
    ck_assert(!arena_failed(arena));
    struct Arena *scratch = arena_scratch(arena);
    arena_fail_after(arena, 0);
    ck_assert_ptr_null(arena_array(scratch, 1 << 20, 1));
    ck_assert(arena_failed(arena));
    arena_free(arena);
}
END_TEST

/* It goes when it is freed, whatever the other holds; what fails in it failed in the other too. */
START_TEST(one_apart_is_freed_alone)
{
    struct Arena *arena = arena_new();
    const char *kept = arena_text(arena, "kept", 4);
    for (int i = 0; i < 1000; i++) {
        struct Arena *apart = arena_apart(arena);
        ck_assert_ptr_nonnull(arena_array(apart, 1 << 20, 1)); /* a gigabyte, if it were not given back */
        ck_assert(!arena_failed(apart));
        arena_free(apart);
    }
    ck_assert_str_eq(kept, "kept");
    ck_assert(!arena_failed(arena));
    struct Arena *within = arena_apart(arena), *deeper = arena_apart(within);
    arena_fail_after(arena, 1); /* its own limit holds for both */
    ck_assert_ptr_nonnull(arena_alloc(within, 10));
    ck_assert_ptr_null(arena_alloc(deeper, 10));
    ck_assert(arena_failed(deeper) && arena_failed(arena));
    arena_free(deeper);
    arena_free(within);
    arena_free(arena);
    ck_assert_ptr_null(arena_apart(NULL));
}
END_TEST

START_TEST(texts_are_empty_without_memory)
{
    struct Arena *arena = arena_new();
    arena_fail_after(arena, 0);
    ck_assert_str_eq(arena_text(arena, "abc", 3), "");
    ck_assert_str_eq(arena_print(arena, "%d", 3), "");
    ck_assert_str_eq(number_text(arena, 1, 1), "");
    ck_assert_str_eq(number_significant(arena, 1, 1), "");
    struct TextBuilder builder = text_builder(arena);
    text_add(&builder, "abc");
    text_print(&builder, "%d", 3);
    ck_assert(builder.failed);
    ck_assert_str_eq(text_done(&builder), "");
    arena_free(arena);
}
END_TEST

START_TEST(text_builder_grows)
{
    struct Arena *arena = arena_new();
    struct TextBuilder builder = text_builder(arena);
    ck_assert_str_eq(text_done(&builder), "");
    for (int i = 0; i < 5000; i++) {
        text_print(&builder, "%d", i % 10);
    }
    text_add_char(&builder, '!');
    text_add_bytes(&builder, "abc", 2);
    text_add(&builder, "");
    const char *text = text_done(&builder);
    ck_assert_uint_eq(strlen(text), 5003);
    ck_assert_str_eq(text + 4998, "89!ab");
    ck_assert(text_same(arena_print(arena, "%s-%d", "a", 7), "a-7"));
    ck_assert(!text_same("a", "b"));
    arena_free(arena);
}
END_TEST

#define LOOP(tests, name, rows) tcase_add_loop_test(tests, name, 0, (int)(sizeof(rows) / sizeof(rows)[0]))

/* Names that look the same are the same name; those that do not are not. */
START_TEST(names_are_compared_as_they_look)
{
    static const char *const same[][2] = {{"back wall", "back\u00a0wall"},  {"back wall", "back\u2007wall"},
                                          {"back wall", "back\u202fwall"},  {"back wall", "back\u3000wall"},
                                          {"back wall", "back\u2003 wall"}, {"back wall", "back\u205fwall"},
                                          {"back wall", "back\u2800wall"},  {"back wall", "back\u1680wall"},
                                          {"back wall", "back  wall"},      {"back wall", "back\u200a\u200ewall"},
                                          {"wall", "wall\u00a0"},           {"wall", "\u200fwall"},
                                          {"wall", "wa\u061cll"},           {"wall", "wa\u200bll"},
                                          {"wall", "wall\u2060\u00ad"}};
    static const char *const other[][2] = {{"back wall", "backwall"},
                                           {"back wall", "back-wall"},
                                           {"a b", "a bc"},
                                           {"wall", " wall"},
                                           {"\u00e1", "a"},
                                           {"", "a"},
                                           {"\xff", ""},
                                           {"\xe2\x80", ""}};
    for (size_t i = 0; i < sizeof same / sizeof same[0]; i++) {
        ck_assert_msg(text_order_seen(same[i][0], same[i][1]) == 0, "row %zu", i);
        ck_assert_int_eq(text_order_seen(same[i][1], same[i][0]), 0);
    }
    for (size_t i = 0; i < sizeof other / sizeof other[0]; i++) {
        const int order = text_order_seen(other[i][0], other[i][1]);
        ck_assert_int_ne(order, 0);
        ck_assert_int_eq(order<0, text_order_seen(other[i][1], other[i][0])> 0);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("base");
    TCase *tests = tcase_create("numbers");
    LOOP(tests, number_text_rounds_half_away_from_zero, shown);
    LOOP(tests, number_significant_keeps_digits, significant);
    LOOP(tests, number_read_takes_plain_decimals, good_numbers);
    LOOP(tests, number_read_refuses_the_rest, bad_numbers);
    tcase_add_test(tests, number_read_uses_the_length);
    suite_add_tcase(suite, tests);
    tests = tcase_create("text and memory");
    LOOP(tests, utf8_is_checked, utf8_rows);
    tcase_add_test(tests, utf8_counts_characters);
    tcase_add_test(tests, arena_gives_zeroed_aligned_memory);
    tcase_add_test(tests, arena_remembers_that_it_failed);
    tcase_add_test(tests, scratch_is_emptied);
    tcase_add_test(tests, one_apart_is_freed_alone);
    tcase_add_test(tests, texts_are_empty_without_memory);
    tcase_add_test(tests, text_builder_grows);
    tcase_add_test(tests, names_are_compared_as_they_look);
    suite_add_tcase(suite, tests);
    suite_add_tcase(suite, diag_tests());
    return run_suite(suite);
}
