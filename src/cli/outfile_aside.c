/* A file from an earlier run, when the route had another verdict or was not wrong yet, must not lie there as if it were
 * this one's. */
#include "cli_private.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

enum { OLD_MOST = 99, AFTER_BYTES = 16 };

static bool is_there(const char *path)
{
    struct stat now;
    return lstat(path, &now) == 0;
}

/* Where `path` goes; false when every such name is taken. */
static bool find_aside(const char *path, char *aside, size_t size, const char *over, struct Inputs inputs)
{
    snprintf(aside, size, "%s.old", path);
    if (over != NULL && outfile_is_ours(aside, over, inputs)) {
        return true;
    }
    for (int number = 2; is_there(aside) && number <= OLD_MOST; number++) {
        snprintf(aside, size, "%s.old%d", path, number);
    }
    return !is_there(aside);
}

/* False when nothing of ours was there; *aside is "" when it could not be moved. The caller frees both. */
static bool set_aside(const char *folder, const char *name, const char *mark, struct Inputs inputs, char **path,
                      char **aside)
{
    const size_t size = strlen(folder) + strlen(name) + AFTER_BYTES + 2;
    *path = malloc(size);
    *aside = malloc(size);
    if (*path == NULL || *aside == NULL) {
        return false;
    }
    snprintf(*path, size, "%s/%s", folder, name);
    if (!outfile_is_ours(*path, mark, inputs)) {
        return false;
    }
    if (!find_aside(*path, *aside, size, mark, inputs) || rename(*path, *aside) != 0) {
        **aside = '\0';
    }
    return true;
}

void outfile_keep_aside(const char *folder, const char *name, const char *path)
{
    const size_t size = strlen(folder) + strlen(name) + AFTER_BYTES + 2;
    char *was = malloc(size);
    char *aside = malloc(size);
    bool kept = was != NULL && aside != NULL;
    if (kept) {
        snprintf(was, size, "%s/%s", folder, name);
        kept = find_aside(was, aside, size, NULL, (struct Inputs){NULL, 0}) && rename(path, aside) == 0;
    }
    if (kept) {
        print_shown(stderr, "wend: note: %s, of an earlier run, is now %s\n", was, aside);
    } else {
        print_shown(stderr, "wend: warning: %s is of an earlier run and could not be set aside\n", path);
    }
    free(was);
    free(aside);
}

bool outfile_set_stale_aside(const char *folder, const char *name, const char *mark, struct Inputs inputs)
{
    char *path = NULL;
    char *aside = NULL;
    const bool there = set_aside(folder, name, mark, inputs, &path, &aside);
    const bool done = there && *aside != '\0';
    if (there && !done) {
        print_shown(stderr, "wend: warning: %s is older than the fault in the file and could not be set aside\n", path);
    }
    free(path);
    free(aside);
    return done;
}
