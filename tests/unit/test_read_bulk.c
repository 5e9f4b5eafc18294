/* The reader and time: a route of ten thousand segments, and input made to be slow or to fill the memory. */
#include "read_route.h"
#include "test_read.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

struct Big {
    char *data;
    size_t length, room;
};

static void big_add(struct Big *big, const char *text)
{
    size_t length = strlen(text);
    if (length == 0) {
        return;
    }
    if (big->length + length > big->room) {
        big->room = (big->room + length) * 2;
        char *larger = realloc(big->data, big->room);
        ck_assert_ptr_nonnull(larger);
        big->data = larger;
    }
    memcpy(big->data + big->length, text, length);
    big->length += length;
}

static void big_repeat(struct Big *big, const char *text, int count)
{
    for (int i = 0; i < count; i++) {
        big_add(big, text);
    }
}

static const char *const head = "wend: 1\njob: {title: t}\nsupply: {system: TT}\n";
static const char *const a_run = "runs:\n  f: {load: {current: 1 A}, cable: {type: BS5467, cores: 3}";

static void big_route(struct Big *big, int segments, bool backwards)
{
    char line[96];
    big_add(big, head);
    big_add(big, a_run);
    big_add(big, ", along: [");
    for (int i = 0; i < segments; i++) {
        snprintf(line, sizeof line, "%ss%d", i > 0 ? ", " : "", backwards ? segments - 1 - i : i);
        big_add(big, line);
    }
    big_add(big, "]}\nsegments:\n");
    for (int i = 0; i < segments; i++) {
        snprintf(line, sizeof line, "- {name: s%d, way: fence, length: 1.5 m, rise: 0.1 m, bends: 1}\n", i);
        big_add(big, line);
    }
}

#if defined(__OPTIMIZE__) && !defined(__SANITIZE_ADDRESS__)
enum { SECONDS_MOST = 2 };
#else
enum { SECONDS_MOST = 20 }; /* what is measured then is mostly the build */
#endif

/* Reads within the seconds of processor time that anyone would wait. */
static struct ReadRoute read_big(const struct Big *big, const char *what)
{
    clock_t start = clock();
    struct ReadRoute route = read_route((struct Bytes){big->data, big->length});
    const char *reports = read_route_reports(&route);
    double seconds = (double)(clock() - start) / CLOCKS_PER_SEC;
    ck_assert_msg(seconds < SECONDS_MOST, "%s took too long", what);
    ck_assert((route.survey == NULL) == (*reports != '\0' && diag_errors(route.diag) > 0));
    return route;
}

START_TEST(ten_thousand_segments)
{
    struct Big big = {NULL, 0, 0};
    big_route(&big, 10000, _i == 1);
    struct ReadRoute route = read_big(&big, "ten thousand segments");
    ck_assert_msg(route.survey != NULL, "%s", read_route_reports(&route));
    ck_assert_int_eq(route.survey->segment_count, 10000);
    ck_assert_int_eq(route.survey->runs[0].along_count, 10000);
    ck_assert_int_eq(route.survey->runs[0].along[10], _i == 1 ? 9989 : 10);
    ck_assert_int_eq(read_route_told(&route, "along-order"), _i);
    ck_assert_int_eq(route.survey->runs[0].along_rises, _i == 0); /* whichever way it goes, it follows them all */
    for (int segment = 0; segment < 10000; segment += 999) {
        ck_assert(survey_follows(&route.survey->runs[0], segment));
    }
    ck_assert(!survey_follows(&route.survey->runs[0], 10000));
    ck_assert_int_lt(route.survey->assumed_count, 60);
    read_route_free(&route);
    free(big.data);
}
END_TEST

struct BigRow {
    const char *before, *again, *after;
    int count;
    const char *told;
};

static const struct BigRow big_rows[] = {
    {"wend: 1\njob: {title: ", "[", "", 100000, "too-deep"},
    {"wend: 1\njob: {title: ", "{a: ", "", 100000, "too-deep"},
    {"wend: 1\njob:\n  ", "- ", "a\n", 100000, "too-deep"},
    {"wend: 1\njob: {title: ", "? ", "a}\n", 100000, "character-start"},
    {"wend: 1\njob: {title: [", "*a,", "]}\n", 1000000, "alias-refused"},
    {"wend: 1\njob: {title: [", "&a x,", "]}\n", 300000, "anchor-refused"},
    {"wend: 1\njob: {title: [", "!!str x,", "]}\n", 300000, "tag-refused"},
    {"wend: 1\njob: {title: '", "x", "'}\n", 4000000, "text-too-long"},
    {"wend: 1\njob: {title: x", "x", "}\n", 5000000, "file-too-large"},
    {"wend: 1\njob: {title: \"", "\\x01", "\"}\n", 500000, "text-control"},
    {"wend: 1\n", "a: 1\n", "", 150000, "key-twice"},
    {"wend: 1\n", "# c\n", "job: 1\n", 1000000, "value-not-mapping"},
    {"", "\n", "job: 1\n", 4000000, "version-missing"},
    {"", "%TAG !a! tag:x,2000:\n", "---\nwend: 1\n", 150000, "file-directive"},
    {"wend: 1\njob: {title: t", "\xE2\x80\xAE", "}\n", 100000, "file-bidi"},
    {"wend: 1\njob:\n  title: |\n", "   x\n", "", 700000, "text-too-long"},
    {"wend: 1\njob: {title: t, surveyed: ", "9", "}\n", 1000000, "text-too-long"},
    {"wend: 1\nsegments: [{length: ", "9", " m}]\n", 1000000, "number-odd"},
    {"wend: 1\nsegments: [", "{},", "]\n", 300000, "key-missing"},
    {"wend: 1\nsegments: [", "{name: a, way: wall, length: 1 m},", "]\n", 50000, "segment-twice"},
    {"wend: 1\nsegments: [", "{lenght: 1},", "]\n", 90000, "key-misspelt"},
    {"wend: 1\nsegments: [", "1,", "]\n", 390000, "value-not-mapping"},
    {"wend: 1\nruns: {a: {load: [", "{},", "]}}\n", 300000, "list-too-long"},
    {"wend: 1\nruns: {a: {along: [", "q,", "]}}\n", 390000, "key-missing"},
    {"wend: 1\nsegments: [{bends: [", "1,", "]}]\n", 390000, "list-too-long"},
    {"wend: 1\n? ", "k", "\n: v\n", 3000, "key-unknown"},
    {"wend: 1\n\"", "k", "\": v\n", 900, "key-unknown"},
    {"wend: 1\njob: {site: \"", "x\\\n", "\"}\n", 900000, "text-too-long"},
    {"", "--- a\n", "", 600000, "second-document"},
    {"", "{", "", 3000, "too-deep"},
    {"wend: 1\njob: {title: \"", "x", "\n", 2000000, "quote-open"},
    {"wend: 1\njob: [", "a, ", "", 190000, "bracket-open"},
};

START_TEST(hostile_in_the_large)
{
    const struct BigRow *row = &big_rows[_i];
    struct Big big = {NULL, 0, 0};
    big_add(&big, row->before);
    big_repeat(&big, row->again, row->count);
    big_add(&big, row->after);
    struct ReadRoute route = read_big(&big, row->told);
    ck_assert_ptr_null(route.survey);
    ck_assert_msg(read_route_told(&route, row->told) >= 1, "wanted %s, got\n%.2000s", row->told,
                  read_route_reports(&route));
    ck_assert_uint_lt(strlen(read_route_reports(&route)), 80000);
    read_route_free(&route);
    free(big.data);
}
END_TEST

START_TEST(two_hundred_thousand_keys)
{
    struct Big big = {NULL, 0, 0};
    char line[32];
    big_add(&big, "wend: 1\n");
    for (int i = 0; i < 190000; i++) {
        snprintf(line, sizeof line, "k%d: 1\n", i);
        big_add(&big, line);
    }
    struct ReadRoute route = read_big(&big, "190000 keys");
    ck_assert_int_ge(read_route_told(&route, "key-unknown"), 90);
    ck_assert_int_eq(read_route_told(&route, "too-many-faults"), 1);
    read_route_free(&route);
    for (int i = 0; i < 60000; i++) {
        snprintf(line, sizeof line, "m%d: 1\n", i);
        big_add(&big, line);
    }
    route = read_big(&big, "250000 keys");
    ck_assert_int_eq(read_route_told(&route, "too-many-values"), 1);
    read_route_free(&route);
    free(big.data);
}
END_TEST

START_TEST(fifty_runs_and_one_more)
{
    struct Big big = {NULL, 0, 0};
    char line[96];
    big_add(&big, head);
    big_add(&big, "segments: [{name: a, way: wall, length: 1 m}]\nruns:\n");
    for (int i = 0; i < 50; i++) {
        snprintf(line, sizeof line, "  r%d: {load: {current: 1 A}, cable: {type: BS5467, cores: 3}}\n", i);
        big_add(&big, line);
    }
    struct ReadRoute route = read_big(&big, "50 runs");
    ck_assert_msg(route.survey != NULL, "%.2000s", read_route_reports(&route));
    ck_assert_int_eq(route.survey->run_count, 50);
    ck_assert_int_gt(route.survey->assumed_count, 400);
    ck_assert_str_eq(route.survey->assumed[route.survey->assumed_count - 3].where, "runs.r49.finish");
    read_route_free(&route);
    big_add(&big, "  one-more: {kind: data, cable: {type: EN50288}}\n");
    route = read_big(&big, "51 runs");
    ck_assert_int_eq(read_route_told(&route, "list-too-long"), 1);
    ck_assert_uint_eq(diag_count(route.diag), 1);
    read_route_free(&route);
    free(big.data);
}
END_TEST

/* What the page says of each list: so many are taken, and one more is told, not cut off. */
static const struct {
    const char *before, *item, *after;
    int most;
} lists[] = {
    {"  f: {load: [", "{current: 1 A}, ",
     "], cable: {type: BS5467, cores: 3}}\nsegments: [{name: a, way: wall, length: 1 m}]\n", 100},
    {"  f: {load: {current: 1 A}, cable: {type: BS5467, cores: 3}}\nsegments: [{name: a, way: wall, length: 1 m, "
     "photo: [",
     "a.jpg, ", "]}]\n", 20},
    {"  f: {load: {current: 1 A}, cable: {type: BS5467, cores: 3}}\nsegments: [{name: a, way: wall, length: 9 m, "
     "marks: [",
     "{at: 1 m, what: post}, ", "]}]\n", 20},
    {"  f: {load: {current: 1 A}, cable: {type: BS5467, cores: 3}}\nsegments: [{name: a, way: wall, length: 1 m}]\n"
     "parts: {stock: [",
     "{run: f, lengths: [50 m]}, ", "]}\n", 50},
    {"  f: {load: {current: 1 A}, cable: {type: BS5467, cores: 3}}\nsegments: [{name: a, way: wall, length: 1 m}]\n"
     "parts: {stock: [{run: f, lengths: [",
     "50 m, ", "]}]}\n", 20},
    {"  f: {load: {current: 1 A}, cable: {type: BS5467, cores: 3}}\nsegments: [{name: a, way: wall, length: 1 m}]\n"
     "parts: {stock: [{run: f, offcuts: [",
     "5 m, ", "]}]}\n", 100},
};

START_TEST(lists_end_where_the_page_says)
{
    for (int more = 0; more < 2; more++) {
        struct Big big = {NULL, 0, 0};
        big_add(&big, head);
        big_add(&big, "runs:\n");
        big_add(&big, lists[_i].before);
        big_repeat(&big, lists[_i].item, lists[_i].most + more);
        big_add(&big, lists[_i].after);
        struct ReadRoute route = read_big(&big, "a list");
        ck_assert_msg(read_route_told(&route, "list-too-long") == more, "%.2000s", read_route_reports(&route));
        ck_assert_msg((route.survey != NULL) == (more == 0), "%.2000s", read_route_reports(&route));
        read_route_free(&route);
        free(big.data);
    }
}
END_TEST

TCase *read_bulk_tests(void)
{
    TCase *tests = tcase_create("bulk");
    tcase_set_timeout(tests, 120);
    tcase_add_loop_test(tests, ten_thousand_segments, 0, 2);
    tcase_add_loop_test(tests, hostile_in_the_large, 0, (int)(sizeof big_rows / sizeof big_rows[0]));
    tcase_add_test(tests, two_hundred_thousand_keys);
    tcase_add_test(tests, fifty_runs_and_one_more);
    tcase_add_loop_test(tests, lists_end_where_the_page_says, 0, (int)(sizeof lists / sizeof lists[0]));
    return tests;
}
