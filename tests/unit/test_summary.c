/* The terminal summary: 80 columns by the C library's own measure, words for every verdict, colour only when asked. */
#define _XOPEN_SOURCE 700 /* NOLINT(bugprone-reserved-identifier): asked for by that name, wcwidth() is not C17 */
#include "document_suites.h"
#include "plan_fixture.h"

#include <locale.h>
#include <string.h>
#include <wchar.h>

static struct Bytes summary_of(struct Arena *arena, enum FixtureKind kind, bool colour)
{
    const struct Plan *plan = fixture_plan(arena, kind);
    struct Bytes text = document_summary_text(arena, plan, fixture_parts(arena, plan), colour);
    ck_assert_ptr_nonnull(text.data);
    ck_assert_uint_eq(strlen(text.data), text.length);
    return text;
}

static struct Bytes decision_of(struct Arena *arena, enum FixtureKind kind, bool colour)
{
    const struct Plan *plan = fixture_plan(arena, kind);
    struct Setting setting = {.run = -1, .segment = -1, .below = "air", .value = "35 degC", .key = "conditions.air"};
    const struct Decisive decisive = {
        .planned = true, .verdict = VERDICT_OPEN, .verdict_changes = true, .order_lines = 2, .settings = {1, &setting}};
    const struct Decisives decisives = {.tried = 3, .count = plan->assumption_count > 0, .list = &decisive};
    struct Bytes text =
        document_decision_text(arena, plan, fixture_parts(arena, plan), &decisives, "out/job.plan.xml", colour);
    ck_assert_ptr_nonnull(text.data);
    ck_assert_uint_eq(strlen(text.data), text.length);
    return text;
}

typedef struct Bytes text_of(struct Arena *arena, enum FixtureKind kind, bool colour);
static text_of *const texts[] = {summary_of, decision_of};
enum { TEXTS = 2 };

/* Columns of the line at `line`, by wcwidth(); *next is the line after it. */
static int columns_of(const char *line, const char **next)
{
    int columns = 0;
    mbstate_t state;
    memset(&state, 0, sizeof state);
    while (*line != '\0' && *line != '\n') {
        wchar_t letter = 0;
        size_t bytes = mbrtowc(&letter, line, 8, &state);
        ck_assert_msg(bytes > 0 && bytes < 8, "not UTF-8: %.20s", line);
        int wide = wcwidth(letter);
        ck_assert_msg(wide >= 0, "unprintable character %#lx", (unsigned long)letter);
        columns += wide;
        line += bytes;
    }
    *next = *line == '\n' ? line + 1 : line;
    return columns;
}

START_TEST(fits_eighty_columns)
{
    ck_assert_ptr_nonnull(setlocale(LC_CTYPE, "C.UTF-8"));
    struct Arena *arena = arena_new();
    const char *line = texts[_i % TEXTS](arena, (enum FixtureKind)(_i / TEXTS), false).data;
    for (const char *next = line; *line != '\0'; line = next) {
        int columns = columns_of(line, &next);
        ck_assert_msg(columns <= 80, "%d columns: %.*s", columns, (int)(next - line), line);
    }
    arena_free(arena);
}
END_TEST

/* With the escape sequences taken out, the coloured text is the plain one. */
START_TEST(colour_adds_nothing_else)
{
    struct Arena *arena = arena_new();
    struct Bytes plain = texts[_i % TEXTS](arena, (enum FixtureKind)(_i / TEXTS), false);
    struct Bytes coloured = texts[_i % TEXTS](arena, (enum FixtureKind)(_i / TEXTS), true);
    ck_assert_ptr_null(strchr(plain.data, '\033'));
    ck_assert_ptr_nonnull(strchr(coloured.data, '\033'));
    struct TextBuilder stripped = text_builder(arena);
    for (const char *at = coloured.data; *at != '\0'; at++) {
        if (*at == '\033') {
            at = strchr(at, 'm');
            ck_assert_ptr_nonnull(at);
        } else {
            text_add_char(&stripped, *at);
        }
    }
    ck_assert_str_eq(text_done(&stripped), plain.data);
    arena_free(arena);
}
END_TEST

static void says(const char *text, const char *words)
{
    ck_assert_msg(strstr(text, words) != NULL, "the summary does not say \"%s\"", words);
}

START_TEST(says_what_it_must)
{
    struct Arena *arena = arena_new();
    const char *text = summary_of(arena, FIXTURE_RUNS, false).data;
    says(text, "Boathouse, four cables\n");
    says(text, "FAIL: drop fails on yard-light");
    says(text, "PASS: every check that matters was made on this run and passes");
    says(text, "5-core 6 mm2 BS5467");
    says(text, "RCBO B 32 A 30 mA");
    says(text, "4 mm2 would drop 5.6 %");
    says(text, "roof-void over the sail store governs: it carries 29.3 A");
    says(text, "  > roof-void over th\xE2\x80\xA6 loft-void      9.20 m  C   Ci 0.78 Cg 0.80");
    says(text, "24.90 V, 6.25 % at the temperature of Table 4D4B; limit 5 %");
    says(text, "23.40 V, 5.88 % as expected");
    says(text, "route 73.33 m; electrical, with tails and loops, 75.23 m; to order");
    says(text, "  FAIL     drop:");
    says(text, "  PASS     load:");
    says(text, "  n/a      breaking-capacity: the fault");
    says(text, "conditions.air: air taken as 30 degC");
    says(text, "disconnection: whether the device trips");
    says(text, "This is a plan, not a certificate.");
    says(text, "groundwork: sand and spoil are not counted");
    ck_assert_ptr_null(strstr(text, "safe"));
    ck_assert_ptr_null(strstr(text, "complian"));
    arena_free(arena);
}
END_TEST

START_TEST(says_it_in_short)
{
    struct Arena *arena = arena_new();
    const char *text = decision_of(arena, FIXTURE_RUNS, false).data;
    says(text, "Boathouse, four cables");
    says(text, "  Cable    5-core 6 mm2 BS5467; cpc: ");
    says(text, "RCBO B 32 A 30 mA for ");
    says(text, "  Lengths  route 73.33 m; with tails and loops 75.23 m; to order ");
    says(text, "  Limit    roof-void over the sail store carries 29.3 A, the device is rated");
    says(text, "  Smaller  4 mm2 would drop 5.6 %");
    says(text, " not surveyed (--full); of 3 tried at another value 1 decides\n");
    says(text, "           - conditions.air; were it 35 degC: the plan would be OPEN, 2 lines");
    says(text, "Papers     out/job.plan.xml\n");
    const char *last = strstr(text, "\nVerdict    ");
    ck_assert_ptr_nonnull(last);
    says(last, "FAIL: drop fails on yard-light");
    for (const char *at = last + 1; (at = strchr(at, '\n')) != NULL; at++) {
        ck_assert_msg(at[1] == '\0' || at[1] == ' ', "something stands below the verdict: %s", at);
    }
    ck_assert_ptr_null(strstr(text, "safe"));
    ck_assert_ptr_null(strstr(text, "complian"));
    arena_free(arena);
}
END_TEST

/* The marker stands in front of the governing stretch alone. */
START_TEST(marks_the_governing_stretch)
{
    struct Arena *arena = arena_new();
    const char *text = summary_of(arena, FIXTURE_EIGHT, false).data;
    int marked = 0;
    for (const char *at = strstr(text, "\n  > "); at != NULL; at = strstr(at + 1, "\n  > ")) {
        marked++;
    }
    ck_assert_int_eq(marked, 1);
    arena_free(arena);
}
END_TEST

Suite *suite_summary(void)
{
    Suite *suite = suite_create("summary");
    TCase *tests = tcase_create("text");
    tcase_set_timeout(tests, 60);
    tcase_add_loop_test(tests, fits_eighty_columns, 0, TEXTS * FIXTURE_COUNT);
    tcase_add_loop_test(tests, colour_adds_nothing_else, 0, TEXTS * FIXTURE_COUNT);
    tcase_add_test(tests, says_what_it_must);
    tcase_add_test(tests, says_it_in_short);
    tcase_add_test(tests, marks_the_governing_stretch);
    suite_add_tcase(suite, tests);
    return suite;
}
