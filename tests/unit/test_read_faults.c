/* The reader under strain: a good route cut, mixed and spoilt in a thousand ways, and memory that fails at each point.
 * Whatever comes in, there is either a survey or an error with a place, and nothing raw from the file in its text. */
#include "read_route.h"
#include "sweep_depth.h"
#include "test_read.h"

#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define GOOD TESTS_FOLDER "/unit/read_good.yaml"

/* Either a survey without errors, or errors with places; the printed text is clean. */
static void check_answer(struct Bytes source, const char *what, long number)
{
    struct ReadRoute route = read_route(source);
    size_t errors = diag_errors(route.diag);
    ck_assert_msg((route.survey != NULL) == (errors == 0), "%s %ld: %s, %zu errors", what, number,
                  route.survey != NULL ? "a survey" : "no survey", errors);
    for (size_t i = 0; i < diag_count(route.diag); i++) {
        const struct Diagnostic *told = diag_at(route.diag, i);
        bool placed = told->mark.line >= 1 && told->mark.column >= 1;
        ck_assert_msg(placed || told->code == MSG_TOO_MANY_FAULTS || told->code == MSG_FILE_TOO_LARGE,
                      "%s %ld: [%s] has no place", what, number, diag_name(told->code));
    }
    for (const char *at = read_route_reports(&route); *at != '\0'; at++) {
        unsigned char byte = (unsigned char)*at;
        ck_assert_msg((byte >= ' ' || byte == '\n') && byte != 0x7F, "%s %ld: a raw control character", what, number);
    }
    read_route_free(&route);
}

static struct Bytes copy_of(struct Bytes source)
{
    char *data = malloc(source.length + 1);
    ck_assert_ptr_nonnull(data);
    memcpy(data, source.data, source.length);
    return (struct Bytes){data, source.length};
}

static void drop(struct Bytes bytes)
{
    free(read_route_own(bytes));
}

START_TEST(cut_off_at_each_byte)
{
    struct Bytes good = read_route_file(GOOD);
    for (size_t length = 0; length < good.length; length += (size_t)sweep_depth(3, 1)) {
        struct Bytes cut = copy_of((struct Bytes){good.data, length}); /* its own block: overreads show */
        check_answer(cut, "cut at", (long)length);
        drop(cut);
    }
    drop(good);
}
END_TEST

/* The bytes of line `number` (from 0), with its line end. */
static struct Bytes line_at(struct Bytes source, int number)
{
    size_t at = 0;
    for (; number > 0 && at < source.length; at++) {
        number -= source.data[at] == '\n';
    }
    size_t end = at;
    while (end < source.length && source.data[end++] != '\n') {
    }
    return (struct Bytes){source.data + at, end - at};
}

static int line_count(struct Bytes source)
{
    int count = 0;
    for (size_t at = 0; at < source.length; at++) {
        count += source.data[at] == '\n';
    }
    return count;
}

/* The source with two lines replaced by others. */
static struct Bytes swap_lines(struct Bytes source, int first, int second, bool twice)
{
    char *data = malloc(source.length * 2);
    ck_assert_ptr_nonnull(data);
    size_t length = 0;
    int count = line_count(source);
    for (int i = 0; i < count; i++) {
        int from = i == first ? second : i == second && !twice ? first : i;
        struct Bytes line = line_at(source, from);
        memcpy(data + length, line.data, line.length);
        length += line.length;
    }
    return (struct Bytes){data, length};
}

START_TEST(each_line_left_out)
{
    struct Bytes good = read_route_file(GOOD);
    int count = line_count(good);
    ck_assert_int_gt(count, 80);
    for (int i = 0; i < count; i++) {
        struct Bytes line = line_at(good, i);
        struct Bytes without = copy_of(good);
        size_t at = (size_t)(line.data - good.data);
        memmove(read_route_own(without) + at, without.data + at + line.length, good.length - at - line.length);
        without.length -= line.length;
        check_answer(without, "without line", i + 1);
        drop(without);
    }
    drop(good);
}
END_TEST

/* A fixed sequence: the same mutations on every machine. */
static uint32_t next_random(uint32_t *state)
{
    *state = *state * 1664525U + 1013904223U;
    return *state >> 8;
}

START_TEST(lines_swapped_and_doubled)
{
    struct Bytes good = read_route_file(GOOD);
    uint32_t state = 20260514;
    int count = line_count(good);
    for (int round = 0; round < sweep_depth(401, 2000); round++) {
        int first = (int)(next_random(&state) % (uint32_t)count);
        int second = (int)(next_random(&state) % (uint32_t)count);
        struct Bytes swapped = swap_lines(good, first, second, round % 2 == 1);
        check_answer(swapped, "round", round);
        drop(swapped);
    }
    drop(good);
}
END_TEST

START_TEST(bytes_spoilt)
{
    static const char bad[] = "\0\t\n\r \"'#%&*-,:?@[]`{|}!<>~\x01\x7F\x80\xC3\xED\xF4\xFF"
                              "09azAZ";
    struct Bytes good = read_route_file(GOOD);
    uint32_t state = 5467 + (uint32_t)_i;
    for (int round = 0; round < sweep_depth(600, 3000); round++) {
        struct Bytes spoilt = copy_of(good);
        for (uint32_t i = next_random(&state) % 4; i < 4; i++) {
            read_route_own(spoilt)[next_random(&state) % good.length] = bad[next_random(&state) % (sizeof bad - 1)];
        }
        check_answer(spoilt, "round", round);
        drop(spoilt);
    }
    drop(good);
}
END_TEST

/* Values of the good route put where others stood. */
START_TEST(values_swapped)
{
    struct Bytes good = read_route_file(GOOD);
    uint32_t state = 6724;
    int tried = 0;
    const int rounds = sweep_depth(600, 3000);
    for (int round = 0; round < rounds; round++) {
        size_t from = next_random(&state) % good.length;
        size_t to = next_random(&state) % good.length;
        size_t from_end = from + strcspn(good.data + from, ",}]\n");
        size_t to_end = to + strcspn(good.data + to, ",}]\n");
        struct Bytes swapped = {malloc(good.length * 2), 0};
        ck_assert_ptr_nonnull(swapped.data);
        memcpy(read_route_own(swapped), good.data, to);
        memcpy(read_route_own(swapped) + to, good.data + from, from_end - from);
        memcpy(read_route_own(swapped) + to + from_end - from, good.data + to_end, good.length - to_end);
        swapped.length = to + from_end - from + good.length - to_end;
        check_answer(swapped, "round", round);
        drop(swapped);
        tried++;
    }
    ck_assert_int_eq(tried, rounds);
    drop(good);
}
END_TEST

/* ---- memory ---- */

/* True once reading needed no more memory than was left. */
static bool read_with(struct Bytes source, size_t used_up, long blocks)
{
    struct Arena *diag_arena = arena_new();
    struct Diag *diag = diag_new(diag_arena);
    struct Arena *arena = arena_new();
    arena_fail_after(arena, blocks);
    for (size_t left = used_up; left > 0;) { /* of the first block, in parts that do not get one of their own */
        size_t part = left > 8000 ? 8000 : left;
        ck_assert_ptr_nonnull(arena_alloc(arena, part));
        left -= part;
    }
    const struct Survey *survey = read_survey(arena, diag, source);
    bool whole = survey != NULL;
    ck_assert_msg(whole != arena_failed(arena), "with %zu bytes gone and %ld blocks left", used_up, blocks);
    arena_free(arena);
    arena_free(diag_arena);
    return whole;
}

START_TEST(memory_fails_at_each_point)
{
    struct Bytes good = read_route_file(GOOD);
    ck_assert(!read_with(good, 0, 0));
    long blocks = 1;
    int failed = 0;
    for (; !read_with(good, 0, blocks); blocks++) {
        ck_assert_int_lt((int)blocks, 100);
        /* The last of these blocks runs out at every size of allocation. */
        size_t most = blocks == 1 ? 65000 : 16000;
        for (size_t used_up = 16; used_up < most; used_up += 16) {
            failed += !read_with(good, used_up, blocks);
        }
    }
    ck_assert_int_gt(failed, 3900);
    ck_assert_int_ge((int)blocks, 2);
    drop(good);
}
END_TEST

/* Without room for the sink's own texts nothing is lost but the texts. */
START_TEST(memory_fails_in_the_sink)
{
    const char *bad = "wend: 1\njob: 1\nsupply: 1\nruns: 1\nsegments: 1\n";
    for (size_t used_up = 16; used_up < 16000; used_up += 48) {
        struct Arena *arena = arena_new();
        struct Diag *diag = diag_new(arena);
        arena_alloc(arena, used_up);
        arena_fail_after(arena, 0);
        ck_assert_ptr_null(read_survey(arena, diag, (struct Bytes){bad, strlen(bad)}));
        for (size_t i = 0; i < diag_count(diag); i++) {
            ck_assert_ptr_nonnull(diag_at(diag, i)->text);
        }
        arena_free(arena);
    }
}
END_TEST

START_TEST(noise)
{
    static const char yaml_letters[] = " \n-:,[]{}a1'\"#&*!|>%@`?";
    uint32_t state = (uint32_t)_i + 1;
    struct Bytes bytes = {malloc(1 << 20), 1 << 20};
    ck_assert_ptr_nonnull(bytes.data);
    for (size_t i = 0; i < bytes.length; i++) {
        uint32_t random = next_random(&state);
        read_route_own(bytes)[i] = _i == 0   ? (char)random
                                   : _i == 1 ? yaml_letters[random % (sizeof yaml_letters - 1)]
                                             : '\0';
    }
    check_answer(bytes, "noise", _i);
    for (size_t length = 1; length < 2000; length += 7) {
        struct Bytes part = copy_of((struct Bytes){bytes.data + length * 100, length});
        check_answer(part, "a part of the noise", (long)length);
        drop(part);
    }
    drop(bytes);
}
END_TEST

TCase *read_faults_tests(void)
{
    TCase *tests = tcase_create("faults");
    tcase_set_timeout(tests, 120);
    tcase_add_test(tests, cut_off_at_each_byte);
    tcase_add_test(tests, each_line_left_out);
    tcase_add_test(tests, lines_swapped_and_doubled);
    tcase_add_loop_test(tests, bytes_spoilt, 0, 2);
    tcase_add_test(tests, values_swapped);
    tcase_add_test(tests, memory_fails_at_each_point);
    tcase_add_test(tests, memory_fails_in_the_sink);
    tcase_add_loop_test(tests, noise, 0, 3);
    return tests;
}
