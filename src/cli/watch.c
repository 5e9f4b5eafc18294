/* wend watch: plans again whenever the route, or the price list or labour figures beside it, are saved, and prints what
 * that changed. */
#include "cli_private.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>

enum { PAUSE_MS = 200, FILES = 1 + BESIDE_COUNT };

/* How a file looks from outside; it differs once somebody has saved it. */
struct Look {
    bool there;
    struct timespec saved;
    off_t size;
    ino_t inode;
};

static struct Look look(const char *path)
{
    struct stat now;
    if (path == NULL || stat(path, &now) != 0) {
        return (struct Look){.there = false};
    }
    return (struct Look){.there = true, .saved = now.st_mtim, .size = now.st_size, .inode = now.st_ino};
}

static bool same(const struct Look *a, const struct Look *b)
{
    return a->there == b->there && a->size == b->size && a->inode == b->inode && a->saved.tv_sec == b->saved.tv_sec &&
           a->saved.tv_nsec == b->saved.tv_nsec;
}

static void pause_a_little(void)
{
    const struct timespec time = {.tv_nsec = PAUSE_MS * 1000000L};
    nanosleep(&time, NULL);
}

static bool has_line(const char *text, const char *line, size_t length)
{
    for (const char *at = text; *at != '\0';) {
        const size_t here = strcspn(at, "\n");
        if (here == length && memcmp(at, line, length) == 0) {
            return true;
        }
        at += here + (at[here] == '\n');
    }
    return false;
}

/* The lines of `text` that the other does not have; how many. */
static int print_lines(const char *mark, const char *text, const char *other)
{
    int count = 0;
    for (const char *at = text; *at != '\0';) {
        const size_t length = strcspn(at, "\n");
        if (length > 0 && !has_line(other, at, length)) {
            printf("%s %.*s\n", mark, (int)length, at);
            count++;
        }
        at += length + (at[length] == '\n');
    }
    return count;
}

static void print_change(const char *path, const char *before, const char *now)
{
    print_shown(stdout, "\n%s was saved\n", path);
    const int gone = print_lines("-", before, now);
    if (print_lines("+", now, before) + gone == 0) {
        puts("  the same plan");
    }
}

/* The file that the plan named last, beside the route; NULL none. True when it is another than before. */
static bool note_beside(char **known, char *named)
{
    const bool other = named != NULL && (*known == NULL || strcmp(*known, named) != 0);
    if (other) {
        free(*known);
        *known = named;
    } else {
        free(named);
    }
    return other;
}

/* The route, and what lies beside it. */
static void look_at_all(const char *path, char *const beside[BESIDE_COUNT], struct Look looks[FILES])
{
    looks[0] = look(path);
    for (int i = 0; i < BESIDE_COUNT; i++) {
        looks[1 + i] = look(beside[i]);
    }
}

static bool all_same(const struct Look a[FILES], const struct Look b[FILES])
{
    bool alike = true;
    for (int i = 0; i < FILES; i++) {
        alike = alike && same(&a[i], &b[i]);
    }
    return alike;
}

int run_watch(const struct Options *options)
{
    const char *path = options->files[0];
    char *before = NULL;
    char *beside[BESIDE_COUNT] = {NULL};
    int status = EXIT_SYSTEM;
    struct Options mine =
        *options; /* from the first papers on those that are there are this file's, whatever its title */
    if (strcmp(path, "-") == 0) {
        fputs("wend: error: standard input cannot be watched; name a file\n", stderr);
        return EXIT_USAGE;
    }
    for (bool first = true;; first = false) {
        struct Look seen[FILES];
        look_at_all(path, beside, seen);
        char *named[BESIDE_COUNT];
        char *now = plan_again(&mine, &status, named);
        mine.replace = mine.replace || (now != NULL && status <= WEND_CHECK_FAILS);
        for (int i = 0; i < BESIDE_COUNT; i++) {
            if (note_beside(&beside[i], named[i])) { /* else what was saved while the plan was made is seen */
                seen[1 + i] = look(beside[i]);
            }
        }
        if (first && status == EXIT_SYSTEM) {
            break; /* there is nothing to watch, or nowhere to write */
        }
        if (now == NULL) {
            print_shown(stdout, "\n%s: nothing was planned\n", path);
        } else if (before == NULL) {
            printf("%s\n", now);
        } else {
            print_change(path, before, now);
        }
        if (now != NULL) {
            free(before);
            before = now;
        }
        if (first) {
            print_shown(stdout, "watching %s; end with Ctrl-C\n", path);
        }
        if (fflush(stdout) != 0) {
            break;
        }
        struct Look later[FILES];
        do {
            pause_a_little();
            look_at_all(path, beside, later);
        } while (all_same(seen, later) || !later[0].there);
        pause_a_little(); /* an editor may still be writing */
    }
    free(before);
    for (int i = 0; i < BESIDE_COUNT; i++) {
        free(beside[i]);
    }
    return status;
}
