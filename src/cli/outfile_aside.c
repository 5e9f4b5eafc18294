/* A list from an earlier run, when the plan had another verdict, must not lie there as if it were this one's. */
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

void outfile_set_aside(const char *folder, const char *name, const char *mark, struct Inputs inputs)
{
    const size_t size = strlen(folder) + strlen(name) + AFTER_BYTES + 2;
    char *path = malloc(size);
    char *aside = malloc(size);
    if (path != NULL && aside != NULL) {
        snprintf(path, size, "%s/%s", folder, name);
    }
    if (path != NULL && aside != NULL && outfile_is_ours(path, mark, inputs)) {
        snprintf(aside, size, "%s.old", path);
        for (int number = 2; is_there(aside) && number <= OLD_MOST; number++) {
            snprintf(aside, size, "%s.old%d", path, number);
        }
        if (!is_there(aside) && rename(path, aside) == 0) {
            fprintf(stderr, "wend: note: %s, of a plan with another verdict, is now %s\n", path, aside);
        } else {
            fprintf(stderr, "wend: warning: %s is of a plan with another verdict and could not be set aside\n", path);
        }
    }
    free(path);
    free(aside);
}
