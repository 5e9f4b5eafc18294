/* tests/hostile: input made to do harm. other/ holds files of another format with the same faults: none may be read as
 * a route. route/ holds route files; expected.tsv says of each what must become of it, and was written by hand. Each
 * file has 2 seconds of processor time and 256 MiB. */
#include "read_route.h"
#include "run_suite.h"

#include <dirent.h>
#include <string.h>
#include <sys/resource.h>

#define HOSTILE TESTS_FOLDER "/hostile"

enum { ROWS_MOST = 400, CELL_MOST = 80 };

struct Row {
    char file[CELL_MOST], answer[CELL_MOST], message[CELL_MOST];
    int line;
};

struct Rows {
    int count;
    struct Row rows[ROWS_MOST];
};

static void stop(const char *why)
{
    fprintf(stderr, "%s\n", why);
    exit(EXIT_FAILURE);
}

static struct Rows *read_expected(void)
{
    struct Rows *expected = calloc(1, sizeof *expected);
    FILE *file = fopen(HOSTILE "/expected.tsv", "r");
    if (expected == NULL || file == NULL) {
        stop("cannot read " HOSTILE "/expected.tsv");
    }
    char line[512];
    while (fgets(line, sizeof line, file) != NULL) {
        struct Row *row = &expected->rows[expected->count];
        if (*line == '#') {
            continue;
        }
        if (expected->count == ROWS_MOST ||
            sscanf(line, "%79[^\t]\t%79[^\t]\t%79[^\t]\t%d", row->file, row->answer, row->message, &row->line) != 4) {
            stop("expected.tsv: a row without its four cells");
        }
        expected->count++;
    }
    fclose(file);
    return expected;
}

/* Only where a child process runs the test, and where no sanitizer needs the address space. */
static void set_limits(void)
{
    const char *fork_mode = getenv("CK_FORK");
    if (fork_mode != NULL && strcmp(fork_mode, "no") == 0) {
        return;
    }
#if !defined(__SANITIZE_ADDRESS__)
    const struct rlimit space = {256U << 20, 256U << 20};
    const struct rlimit seconds = {2, 2};
    ck_assert_int_eq(setrlimit(RLIMIT_AS, &space), 0);
    ck_assert_int_eq(setrlimit(RLIMIT_CPU, &seconds), 0);
#endif
}

static void check_clean(const char *printed)
{
    ck_assert_uint_gt(strlen(printed), 0);
    size_t length = strlen(printed);
    for (size_t at = 0; at < length;) {
        int bytes = utf8_length(printed + at, length - at);
        ck_assert_int_gt(bytes, 0);
        unsigned long code = utf8_code(printed + at);
        ck_assert_msg((code >= ' ' || code == '\n') && !(code >= 0x7F && code < 0xA0), "a raw control character");
        ck_assert_msg(!(code >= 0x202A && code <= 0x202E), "a raw change of direction");
        at += (size_t)bytes;
    }
}

START_TEST(route_files)
{
    struct Rows *expected = read_expected();
    const struct Row *row = &expected->rows[_i];
    char path[512];
    snprintf(path, sizeof path, "%s/route/%s", HOSTILE, row->file);
    struct Bytes source = read_route_file(path);
    set_limits();
    struct ReadRoute route = read_route(source);
    if (text_same(row->answer, "reject")) {
        ck_assert_msg(route.survey == NULL, "%s was read", row->file);
        check_clean(read_route_reports(&route));
        bool found = false;
        for (size_t i = 0; i < diag_count(route.diag); i++) {
            const struct Diagnostic *told = diag_at(route.diag, i);
            found = found || (text_same(diag_name(told->code), row->message) && told->mark.line == row->line);
        }
        ck_assert_msg(found, "%s: wanted %s on line %d, got\n%.2000s", row->file, row->message, row->line,
                      read_route_reports(&route));
    } else {
        ck_assert_msg(text_same(row->answer, "accept") || text_same(row->answer, "accept-inert"), "%s", row->answer);
        ck_assert_msg(route.survey != NULL && diag_count(route.diag) == 0, "%s: %s", row->file,
                      read_route_reports(&route));
    }
    read_route_free(&route);
    free(read_route_own(source));
    free(expected);
}
END_TEST

/* Texts that mean something to a browser, a spreadsheet or printf arrive letter by letter. */
START_TEST(texts_arrive_as_written)
{
    static const char *const rows[][2] = {
        {"a0-script", "<script>alert(1)</script>"},
        {"a1-attr", "\"onload=\"alert(1)"},
        {"a2-cdata", "]]><script/>"},
        {"a4-entity", "&lt;b&gt; &amp; &#60; &xxe;"},
        {"a5-csv-equals", "=1+1"},
        {"a8-csv-at", "@SUM(1)"},
        {"a9-csv-tab", "=1+1"},
        {"b0-csv-quote", "a\",=1+1,\"b"},
        {"b1-csv-newline", "a =1+1"},
        {"b4-format", "%s%s%s%n"},
        {"b5-path", "../../etc/passwd"},
        {"b9-emoji", "\xF0\x9F\x91\xA9\xE2\x80\x8D\xF0\x9F\x94\xA7 e\xCC\x81 \xD7\x90"},
        {"96-norway", "no"},
        {"99-date", "2024-02-30"},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char path[512];
        snprintf(path, sizeof path, "%s/route/%s.yaml", HOSTILE, rows[i][0]);
        struct Bytes source = read_route_file(path);
        struct ReadRoute route = read_route(source);
        ck_assert_msg(route.survey != NULL, "%s", rows[i][0]);
        ck_assert_str_eq(route.survey->job.title, rows[i][1]);
        read_route_free(&route);
        free(read_route_own(source));
    }
}
END_TEST

static bool ends_in_yaml(const char *name)
{
    size_t length = strlen(name);
    return length > 5 && strcmp(name + length - 5, ".yaml") == 0;
}

START_TEST(files_of_another_format)
{
    DIR *folder = opendir(HOSTILE "/other");
    ck_assert_ptr_nonnull(folder);
    set_limits();
    int files = 0;
    for (struct dirent *entry = readdir(folder); entry != NULL; entry = readdir(folder)) {
        if (!ends_in_yaml(entry->d_name)) {
            continue;
        }
        char path[1024];
        snprintf(path, sizeof path, "%s/other/%s", HOSTILE, entry->d_name);
        struct Bytes source = read_route_file(path);
        struct ReadRoute route = read_route(source);
        ck_assert_msg(route.survey == NULL && diag_errors(route.diag) > 0, "%s was read", entry->d_name);
        for (size_t i = 0; i < diag_count(route.diag); i++) {
            ck_assert_msg(diag_at(route.diag, i)->mark.line >= 1, "%s: no place", entry->d_name);
        }
        check_clean(read_route_reports(&route));
        read_route_free(&route);
        free(read_route_own(source));
        files++;
    }
    closedir(folder);
    ck_assert_int_ge(files, 104);
}
END_TEST

START_TEST(every_file_has_a_row)
{
    struct Rows *expected = read_expected();
    DIR *folder = opendir(HOSTILE "/route");
    ck_assert_ptr_nonnull(folder);
    int files = 0;
    for (struct dirent *entry = readdir(folder); entry != NULL; entry = readdir(folder)) {
        files += ends_in_yaml(entry->d_name);
    }
    closedir(folder);
    ck_assert_int_eq(files, expected->count);
    free(expected);
}
END_TEST

int main(void)
{
    struct Rows *expected = read_expected();
    Suite *suite = suite_create("hostile");
    TCase *tests = tcase_create("hostile");
    tcase_set_timeout(tests, 30);
    tcase_add_loop_test(tests, route_files, 0, expected->count);
    tcase_add_test(tests, texts_arrive_as_written);
    tcase_add_test(tests, files_of_another_format);
    tcase_add_test(tests, every_file_has_a_row);
    suite_add_tcase(suite, tests);
    free(expected);
    return run_suite(suite);
}
