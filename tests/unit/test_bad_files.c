/* tests/bad: one fault a file. NAME.yaml or NAME_variant.yaml holds the fault whose message has the stable name NAME;
 * the .diag beside it is all that is told of it, to the letter. Every message of the reader has such a file.
 *
 * With WEND_RECORD set in the environment the .diag files are written anew and the test fails: look at the difference,
 * then run it without. */
#include "read_route.h"
#include "run_suite.h"

#include <dirent.h>
#include <string.h>

#define BAD TESTS_FOLDER "/bad"

enum { FILES_MOST = 400, NAME_MOST = 100 };

struct Names {
    int count;
    char names[FILES_MOST][NAME_MOST]; /* without ending */
};

static int compare_names(const void *a, const void *b)
{
    return strcmp(a, b);
}

static struct Names *find_files(void)
{
    struct Names *found = calloc(1, sizeof *found);
    DIR *folder = opendir(BAD);
    if (found == NULL || folder == NULL) {
        fputs("cannot list " BAD "\n", stderr);
        exit(EXIT_FAILURE);
    }
    for (struct dirent *entry = readdir(folder); entry != NULL; entry = readdir(folder)) {
        const char *ending = strstr(entry->d_name, ".yaml");
        if (ending == NULL || ending[5] != '\0' || ending - entry->d_name >= NAME_MOST || found->count == FILES_MOST) {
            continue;
        }
        memcpy(found->names[found->count++], entry->d_name, (size_t)(ending - entry->d_name));
    }
    closedir(folder);
    qsort(found->names, (size_t)found->count, NAME_MOST, compare_names);
    return found;
}

/* "key-missing" of "key-missing_cores". */
static const char *message_of(const char *name, char message[NAME_MOST])
{
    size_t length = strcspn(name, "_");
    memcpy(message, name, length);
    message[length] = '\0';
    return message;
}

static void record(const char *path, const char *printed)
{
    FILE *file = fopen(path, "wb");
    ck_assert_ptr_nonnull(file);
    ck_assert_int_ge(fputs(printed, file), 0);
    ck_assert_int_eq(fclose(file), 0);
    ck_abort_msg("%s was recorded: look at the difference", path);
}

START_TEST(one_fault_is_told_once)
{
    struct Names *files = find_files();
    const char *name = files->names[_i];
    char message[NAME_MOST];
    char path[512];
    snprintf(path, sizeof path, "%s/%s.yaml", BAD, name);
    struct Bytes source = read_route_file(path);
    struct ReadRoute route = read_route(source);
    char shown[NAME_MOST + 8];
    snprintf(shown, sizeof shown, "%s.yaml", name);
    const char *printed = diag_print(route.diag, route.arena, shown, source);
    ck_assert_msg(diag_count(route.diag) == 1, "one fault, one report; got\n%s", printed);
    ck_assert_str_eq(diag_name(diag_at(route.diag, 0)->code), message_of(name, message));
    ck_assert((route.survey == NULL) == (diag_at(route.diag, 0)->severity == DIAG_ERROR));
    snprintf(path, sizeof path, "%s/%s.diag", BAD, name);
    if (getenv("WEND_RECORD") != NULL) {
        record(path, printed);
    }
    struct Bytes expected = read_route_file(path);
    ck_assert_msg(strlen(printed) == expected.length && memcmp(printed, expected.data, expected.length) == 0,
                  "%s.diag differs; told is\n%s", name, printed);
    free(read_route_own(expected));
    read_route_free(&route);
    free(read_route_own(source));
    free(files);
}
END_TEST

/* Those that need a large file or no memory; test_read_bulk.c and test_diag.c make them. */
static const enum DiagCode told_elsewhere[] = {MSG_TOO_MANY_FAULTS, MSG_FILE_TOO_LARGE, MSG_TOO_MANY_VALUES};

static bool is_told_elsewhere(int code)
{
    for (size_t i = 0; i < sizeof told_elsewhere / sizeof told_elsewhere[0]; i++) {
        if ((int)told_elsewhere[i] == code) {
            return true;
        }
    }
    return false;
}

START_TEST(every_message_of_the_reader_has_a_file)
{
    struct Names *files = find_files();
    int lacking = 0;
    for (int code = 0; code <= MSG_READINGS_NOT_MAPPING; code++) { /* the last one of the reader */
        bool has = false;
        for (int i = 0; i < files->count; i++) {
            char message[NAME_MOST];
            has = has || text_same(message_of(files->names[i], message), diag_name((enum DiagCode)code));
        }
        if (has == is_told_elsewhere(code)) {
            fprintf(stderr, "%s: %s\n", diag_name((enum DiagCode)code),
                    has ? "is said to have no file" : "has no file");
            lacking++;
        }
    }
    ck_assert_int_eq(lacking, 0);
    ck_assert_int_gt(files->count, MSG_READINGS_NOT_MAPPING - 4);
    free(files);
}
END_TEST

int main(void)
{
    struct Names *files = find_files();
    Suite *suite = suite_create("bad files");
    TCase *tests = tcase_create("bad files");
    tcase_add_loop_test(tests, one_fault_is_told_once, 0, files->count);
    tcase_add_test(tests, every_message_of_the_reader_has_a_file);
    suite_add_tcase(suite, tests);
    free(files);
    return run_suite(suite);
}
