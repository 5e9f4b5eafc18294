/* Where the survey page is written: one file, or a folder for a host. */
#include "survey_page.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define MARK_WORKER   "/* Beside the survey page on a host:"
#define MARK_MANIFEST "\"name\": \"Cable run survey\""
#define MARK_ICON     "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 512 512\">"

static bool write_set(const char *folder_path, const struct OutFile *files, int count)
{
    struct OutSet set = {.count = count};
    snprintf(set.stem, sizeof set.stem, "%.*s", OUT_STEM_MOST - 1, files[0].name);
    for (int i = 0; i < count; i++) {
        snprintf(set.names[i].name, sizeof set.names[i].name, "%s", files[i].name);
        set.names[i].mark = files[i].mark;
    }
    struct OutFolder folder = {.path = folder_path, .set = &set};
    if (!outfolder_enter(&folder, true)) {
        return false;
    }
    const bool done = outfile_write_all(&folder, files, count);
    outfolder_leave(&folder);
    return done;
}

static void tell_written(const char *folder, const struct OutFile *files, int count)
{
    for (int i = 0; i < count; i++) {
        print_shown(stdout, "%s %s/%s\n", i == 0 ? "written:" : "        ", folder, files[i].name);
    }
    puts(survey_page_plans() ? "The page plans while it asks; wend plan FILE.yaml writes the same."
                             : "The page asks, keeps and saves the route file; it was built without the planner,\nso "
                               "wend plan FILE.yaml decides.");
}

static int print_page(void)
{
    const struct SurveyPage page = survey_page(false);
    if (page.data == NULL) {
        return report_not_made();
    }
    fwrite(page.data, 1, page.length, stdout); /* main() asks ferror() at the end */
    free(page.data);
    return 0;
}

int survey_page_write(const char *path)
{
    if (strcmp(path, "-") == 0) {
        return print_page();
    }
    const char *slash = strrchr(path, '/');
    char folder[OUT_FOLDER_MOST];
    const int length = slash == NULL   ? snprintf(folder, sizeof folder, ".")
                       : slash == path ? snprintf(folder, sizeof folder, "/")
                                       : snprintf(folder, sizeof folder, "%.*s", (int)(slash - path), path);
    const char *name = slash == NULL ? path : slash + 1;
    if (*name == '\0' || length < 0 || (size_t)length >= sizeof folder || strlen(name) >= OUT_STEM_MOST) {
        print_shown(stderr, "wend: error: %s is no name of a file; write wend form --out survey.html\n", path);
        return EXIT_USAGE;
    }
    const struct SurveyPage page = survey_page(false);
    if (page.data == NULL) {
        return report_not_made();
    }
    const struct OutFile file = {name, {page.data, page.length}, MARK_HTML, NULL};
    const bool done = write_set(folder, &file, 1);
    free(page.data);
    if (done) {
        tell_written(folder, &file, 1);
    }
    return done ? 0 : EXIT_SYSTEM;
}

/* FNV-1a: another page, another mark, and the phone takes the new one. */
static void mark_of(struct SurveyPage page, char mark[17])
{
    unsigned long long hash = 0xcbf29ce484222325ULL;
    for (size_t i = 0; i < page.length; i++) {
        hash = (hash ^ (unsigned char)page.data[i]) * 0x100000001b3ULL;
    }
    snprintf(mark, 17, "%016llx", hash);
}

/* The worker with the page's mark in it, malloc()ed. */
static char *worker_of(struct WendBytes worker, struct SurveyPage page, size_t *length)
{
    static const char place[] = "WEND-MARK";
    char mark[17];
    mark_of(page, mark);
    char *text = malloc(worker.length + sizeof mark);
    size_t at = 0;
    *length = 0;
    for (; text != NULL && at < worker.length; at++) {
        if (worker.length - at >= sizeof place - 1 && memcmp(worker.data + at, place, sizeof place - 1) == 0) {
            memcpy(text + *length, mark, sizeof mark - 1);
            *length += sizeof mark - 1;
            at += sizeof place - 2;
        } else {
            text[(*length)++] = worker.data[at];
        }
    }
    return text;
}

int survey_page_write_host(const char *folder)
{
    enum { FILES = 4 };
    const struct SurveyPage page = survey_page(true);
    size_t length = 0;
    char *worker =
        page.data == NULL ? NULL : worker_of(survey_file("survey-host/survey-worker.js")->bytes, page, &length);
    if (worker == NULL) {
        free(page.data);
        return report_not_made();
    }
    const struct OutFile files[FILES] = {
        {"index.html", {page.data, page.length}, MARK_HTML, NULL},
        {"survey-worker.js", {worker, length}, MARK_WORKER, NULL},
        {"survey.webmanifest", survey_file("survey-host/survey.webmanifest")->bytes, MARK_MANIFEST, NULL},
        {"survey-icon.svg", survey_file("survey-host/survey-icon.svg")->bytes, MARK_ICON, NULL}};
    const bool done = write_set(folder, files, FILES);
    if (done) {
        tell_written(folder, files, FILES);
    }
    free(page.data);
    free(worker);
    return done ? 0 : EXIT_SYSTEM;
}
