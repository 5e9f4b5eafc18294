/* A firm's own templates: found in the folder named on the command line, else where users keep their configuration. */
#include "cli_private.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

enum { TEMPLATE_MOST_BYTES = 4 * 1024 * 1024, PATH_MOST = 4096 };

static bool is_folder(const char *path)
{
    struct stat status;
    return stat(path, &status) == 0 && S_ISDIR(status.st_mode);
}

/* $XDG_CONFIG_HOME/wend/templates, or ~/.config/wend/templates; false when there is no such folder. */
static bool user_folder(char path[PATH_MOST])
{
    const char *config = getenv("XDG_CONFIG_HOME");
    const char *home = getenv("HOME");
    int length = -1;
    if (config != NULL && config[0] == '/') {
        length = snprintf(path, PATH_MOST, "%s/wend/templates", config);
    } else if (home != NULL && home[0] == '/') {
        length = snprintf(path, PATH_MOST, "%s/.config/wend/templates", home);
    }
    return length > 0 && length < PATH_MOST && is_folder(path);
}

/* Files as they are read; `path` and `text` of each are malloc()ed. */
struct Read {
    int count;
    struct FileId ids[TEMPLATES_MOST];
    struct WendTemplate files[TEMPLATES_MOST];
    char *owned[2 * TEMPLATES_MOST];
};

static void read_free(struct Read *read)
{
    for (int i = 0; i < 2 * read->count; i++) {
        free(read->owned[i]);
    }
    read->count = 0;
}

/* One file; one that is not there is none of the user's own. */
static int read_one(const char *folder, const char *name, struct Read *read)
{
    char path[PATH_MOST];
    const int length = snprintf(path, sizeof path, "%s/%s", folder, name);
    if (length < 0 || (size_t)length >= sizeof path) {
        print_shown(stderr, "wend: error: the name %s is too long\n", folder);
        return EXIT_USAGE;
    }
    struct SourceFile source = {.data = NULL};
    if (!source_file_read(path, TEMPLATE_MOST_BYTES, &source)) {
        if (errno == ENOENT) {
            return 0;
        }
        print_shown(stderr, "wend: error: %s could not be read: %s\n", path, source_file_why());
        return EXIT_SYSTEM;
    }
    char *copy = strdup(path);
    if (copy == NULL) {
        free(source.data);
        return report_not_made();
    }
    const size_t at = 2 * (size_t)read->count;
    read->owned[at] = copy;
    read->owned[at + 1] = source.data;
    read->ids[read->count] = source.id;
    read->files[read->count++] = (struct WendTemplate){name, copy, source.data, source.length};
    return 0;
}

static int read_all(const char *folder, struct Read *read)
{
    struct WendTemplate built_in;
    int status = 0;
    for (int i = 0; status == 0 && i < TEMPLATES_MOST && wend_template(i, &built_in); i++) {
        status = read_one(folder, built_in.name, read);
    }
    return status;
}

/* The library has copies of its own. */
static int take(const struct Read *read, struct OwnTemplates *out)
{
    out->templates = wend_templates(read->files, read->count);
    const int status = (int)wend_templates_status(out->templates);
    if (status == WEND_NO_MEMORY) {
        return report_not_made();
    }
    fputs(wend_diagnostics_printed(wend_templates_diagnostics(out->templates), ""), stderr);
    out->count = read->count;
    memcpy(out->ids, read->ids, sizeof out->ids);
    return status;
}

int own_templates_read(const char *folder, struct OwnTemplates *out)
{
    *out = (struct OwnTemplates){.count = 0};
    char found[PATH_MOST];
    const bool named = folder != NULL;
    if (!named && !user_folder(found)) {
        return 0;
    }
    int status = 0;
    if (named && !is_folder(folder)) {
        print_shown(stderr, "wend: error: %s is no folder of templates\n", folder);
        status = EXIT_USAGE;
    }
    struct Read read = {.count = 0};
    status = status != 0 ? status : read_all(named ? folder : found, &read);
    if (status == 0 && named && read.count == 0) {
        print_shown(stderr, "wend: error: there is no template in %s; wend templates --out DIR writes all there are\n",
                    folder);
        status = EXIT_USAGE;
    }
    status = status != 0 ? status : read.count == 0 ? 0 : take(&read, out);
    if (out->count > 0) {
        snprintf(out->folder, sizeof out->folder, "%s", named ? folder : found);
    }
    read_free(&read);
    if (status != 0) {
        own_templates_free(out);
    }
    return status;
}

void own_templates_free(struct OwnTemplates *own)
{
    wend_templates_free(own->templates);
    *own = (struct OwnTemplates){.count = 0};
}

enum There { THERE_NOT, THERE_SAME, THERE_CHANGED };

/* What stands in the folder under the name of a built-in one; an exit status. */
static int look(const char *folder, const struct WendTemplate *built_in, enum There *there)
{
    struct Read found = {.count = 0};
    const int status = read_one(folder, built_in->name, &found);
    const struct WendTemplate *file = &found.files[0];
    const bool same =
        found.count == 1 && file->length == built_in->length && memcmp(file->text, built_in->text, file->length) == 0;
    *there = found.count == 0 ? THERE_NOT : same ? THERE_SAME : THERE_CHANGED;
    read_free(&found);
    return status;
}

static bool write_into(const char *path, const struct OutFile *files, int count)
{
    struct OutSet set = {.stem = "templates"};
    struct WendTemplate built_in;
    for (int i = 0; i < TEMPLATES_MOST && wend_template(i, &built_in); i++) {
        snprintf(set.names[set.count++].name, sizeof set.names[0].name, "%s", built_in.name);
    }
    struct OutFolder folder = {.path = path, .set = &set};
    if (!outfolder_enter(&folder, true)) {
        return false;
    }
    const bool done = outfile_write_all(&folder, files, count);
    outfolder_leave(&folder);
    return done;
}

int own_templates_write(const char *folder, bool force)
{
    struct OutFile files[TEMPLATES_MOST];
    const char *kept[TEMPLATES_MOST];
    int count = 0, kept_count = 0;
    struct WendTemplate built_in;
    for (int i = 0; i < TEMPLATES_MOST && wend_template(i, &built_in); i++) {
        enum There there = THERE_NOT;
        const int status = force ? 0 : look(folder, &built_in, &there);
        if (status != 0) {
            return status;
        }
        if (there == THERE_CHANGED) {
            kept[kept_count++] = built_in.name;
        } else {
            files[count++] = (struct OutFile){built_in.name, {built_in.text, built_in.length}, NULL, NULL};
        }
    }
    if (count > 0 && !write_into(folder, files, count)) {
        return EXIT_SYSTEM;
    }
    for (int i = 0; i < count; i++) {
        print_shown(stdout, "%s %s/%s\n", i == 0 ? "written:" : "        ", folder, files[i].name);
    }
    for (int i = 0; i < kept_count; i++) {
        print_shown(stdout, "%s %s/%s\n", i == 0 ? "kept:   " : "        ", folder, kept[i]);
    }
    if (kept_count > 0) {
        puts("What is kept is not as it is built in: it was changed, or is of another version. With\n--force it is "
             "written "
             "anew.");
    }
    return 0;
}
