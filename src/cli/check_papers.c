/* Whether the papers that lie in a folder belong together, and to the route as it is now: by the sheet mark that stands
 * in each of them, and of plan.xml by every byte. */
#include "cli_private.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

enum { MARK_LENGTH = 9, BEGINNING_BYTES = 4096, PAPER_MOST_BYTES = 256 * 1024 * 1024 };

static bool is_mark(const char *text)
{
    for (int i = 0; i < MARK_LENGTH; i++) {
        const bool digit = (text[i] >= '0' && text[i] <= '9') || (text[i] >= 'A' && text[i] <= 'F');
        if (i == MARK_LENGTH / 2 ? text[i] != '-' : !digit) {
            return false;
        }
    }
    return true;
}

static const char *find(const char *text, size_t length, const char *word)
{
    const size_t size = strlen(word);
    for (size_t at = 0; at + size <= length; at++) {
        if (memcmp(text + at, word, size) == 0) {
            return text + at;
        }
    }
    return NULL;
}

/* In an attribute, a <metadata> or a <meta>, soon after its own name; "" none. */
static void read_mark(const struct SourceFile *file, char mark[MARK_LENGTH + 1])
{
    enum { BETWEEN_MOST = 16 };
    const size_t length = file->length < BEGINNING_BYTES ? file->length : BEGINNING_BYTES;
    const char *end = file->data + length;
    const char *at = find(file->data, length, "sheet-mark");
    *mark = '\0';
    for (int i = 0; at != NULL && i < BETWEEN_MOST; i++) {
        const char *from = at + strlen("sheet-mark") + i;
        if (end - from >= MARK_LENGTH && is_mark(from)) {
            memcpy(mark, from, MARK_LENGTH);
            mark[MARK_LENGTH] = '\0';
            return;
        }
    }
}

/* The last cell of every row but the head; "" where one has none, or another than those before. */
static void read_mark_of_list(const struct SourceFile *file, char mark[MARK_LENGTH + 1])
{
    const char *end = file->data + file->length;
    const char *at = find(file->data, file->length, ",sheet-mark\r\n");
    *mark = '\0';
    at = at == NULL ? end : at + strlen(",sheet-mark\r\n");
    while (at < end) {
        const char *next = find(at, (size_t)(end - at), "\r\n");
        const char *cell = next == NULL || next - at < MARK_LENGTH ? "" : next - MARK_LENGTH;
        if (*cell == '\0' || !is_mark(cell) || (*mark != '\0' && memcmp(mark, cell, MARK_LENGTH) != 0)) {
            *mark = '\0';
            return;
        }
        memcpy(mark, cell, MARK_LENGTH);
        mark[MARK_LENGTH] = '\0';
        at = next + 2;
    }
}

struct Looked {
    int of_this, missing, of_other, unknown;
    char other[MARK_LENGTH + 1]; /**< the mark that those of another plan have, "" where they have several */
};

static void note_other(struct Looked *looked, const char *mark)
{
    if (looked->of_other++ == 0) {
        snprintf(looked->other, sizeof looked->other, "%s", mark);
    } else if (strcmp(looked->other, mark) != 0) {
        *looked->other = '\0';
    }
}

/* One file of the set; `due` when this plan has it. */
static void look_at(const struct OutFolder *folder, const struct OutName *name, bool due, struct WendBytes whole,
                    const char *now, struct Looked *looked)
{
    char path[OUT_PATH_BYTES];
    char mark[MARK_LENGTH + 1];
    struct SourceFile file = {.data = NULL};
    struct stat there;
    outfile_path(path, folder, "", name->name);
    if (lstat(path, &there) != 0) {
        if (due) {
            looked->missing++;
            print_shown(stdout, "%s: missing\n", path);
        }
        return;
    }
    const bool read = source_file_read(path, PAPER_MOST_BYTES, &file);
    *mark = '\0';
    if (read && strcmp(name->mark, MARK_CSV) == 0) {
        read_mark_of_list(&file, mark);
    } else if (read) {
        read_mark(&file, mark);
    }
    const bool same =
        strcmp(mark, now) == 0 &&
        (whole.data == NULL || (file.length == whole.length && memcmp(file.data, whole.data, whole.length) == 0));
    if (!read) {
        looked->unknown++;
        print_shown(stdout, "%s: could not be read: %s\n", path, source_file_why());
    } else if (*mark == '\0') {
        looked->unknown++;
        print_shown(stdout, "%s: carries no sheet mark, or more than one\n", path);
    } else if (strcmp(mark, now) != 0) {
        note_other(looked, mark);
        print_shown(stdout, "%s: of another plan: its sheet mark is %s, this plan's is %s\n", path, mark, now);
    } else if (!same || !due) {
        looked->unknown++;
        print_shown(stdout, "%s: %s\n", path,
                    due ? "not as this wend writes it: changed, or of another version"
                        : "not of this plan, whose list has another name");
    } else {
        looked->of_this++;
    }
    free(file.data);
}

static bool steps_are_there(const struct OutFolder *folder)
{
    char path[OUT_PATH_BYTES];
    struct stat there;
    outfile_path(path, folder, ".", "");
    if (lstat(path, &there) != 0) {
        return false;
    }
    print_shown(stdout, "%s: a run that wrote papers did not come to its end\n", path);
    return true;
}

bool check_papers(struct Planned *planned, const char *path, bool quiet)
{
    struct OutSet set;
    const struct OutFolder folder = {.path = path, .set = &set};
    const char *now = wend_sheet_mark(planned->wend);
    const struct WendBytes plan = wend_document(planned->wend, WEND_PLAN_XML);
    if (strlen(path) >= OUT_FOLDER_MOST || *now == '\0' || plan.data == NULL || !plan_files_set(planned->stem, &set)) {
        planned->status = EXIT_SYSTEM;
        report_not_made();
        return false;
    }
    struct Looked looked = {.of_this = 0};
    for (int i = 0; i < set.count; i++) {
        look_at(&folder, &set.names[i], plan_files_due(planned, i), i == 0 ? plan : (struct WendBytes){NULL, 0}, now,
                &looked);
    }
    const bool ended = !steps_are_there(&folder);
    const bool good = ended && looked.missing + looked.of_other + looked.unknown == 0;
    if (good && !quiet) {
        print_shown(stdout, "%s: the %d papers of %s belong together and to the route as it is now: sheet mark %s\n",
                    path, looked.of_this, set.stem, now);
    } else if (!good && ended && looked.of_this + looked.missing + looked.unknown == 0 && *looked.other != '\0') {
        print_shown(stdout, "%s: the papers of %s belong together, but not to the route as it is now: plan it again\n",
                    path, set.stem);
    } else if (!good) {
        print_shown(stdout, "%s: the papers of %s are no whole set of the route as it is now: plan it again\n", path,
                    set.stem);
    }
    return good;
}
