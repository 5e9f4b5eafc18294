/* Loaded before a program (LD_PRELOAD): strikes at one of its calls that change files, or at all of some.
 *
 *   STRIKE_ON=rename,mkdir  calls that count; left out: all below
 *   STRIKE_AT=17            at the 17th of them; left out: at each
 *   STRIKE=kill             the program is killed before the call
 *   STRIKE=28               the call fails with this errno
 *   STRIKE_KILL_AT=19       and the program is killed before this one of them
 *   STRIKE=pause            the call comes some milliseconds late
 *   STRIKE_COUNT=FILE       how many there were, at the end */
#define _GNU_SOURCE /* NOLINT(bugprone-reserved-identifier): asked for by that name */
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

static long counted;

static int counts(const char *call)
{
    const char *on = getenv("STRIKE_ON");
    const size_t length = strlen(call);
    for (const char *at = on == NULL ? NULL : strstr(on, call); at != NULL; at = strstr(at + 1, call)) {
        if ((at == on || at[-1] == ',') && (at[length] == ',' || at[length] == '\0')) {
            return 1;
        }
    }
    return on == NULL;
}

/* True: the call is to fail, errno says with what. */
static int struck(const char *call)
{
    const char *what = getenv("STRIKE");
    const char *at = getenv("STRIKE_AT");
    if (what == NULL || !counts(call)) {
        counted += what == NULL && counts(call);
        return 0;
    }
    counted++;
    const char *kill_at = getenv("STRIKE_KILL_AT");
    if (kill_at != NULL && atol(kill_at) == counted) {
        kill(getpid(), SIGKILL);
    }
    if (at != NULL && atol(at) != counted) {
        return 0;
    }
    if (strcmp(what, "kill") == 0) {
        kill(getpid(), SIGKILL);
    }
    if (strcmp(what, "pause") == 0) {
        nanosleep(&(struct timespec){.tv_nsec = 7 * 1000 * 1000}, NULL);
        return 0;
    }
    errno = atoi(what);
    return 1;
}

__attribute__((destructor)) static void tell(void)
{
    const char *path = getenv("STRIKE_COUNT");
    FILE *file = path == NULL ? NULL : fopen(path, "w");
    if (file != NULL) {
        fprintf(file, "%ld\n", counted);
        fclose(file);
    }
}

/* NOLINTBEGIN(readability-inconsistent-declaration-parameter-name): the C library's names are reserved */
#define NEXT(type, name) ((type)dlsym(RTLD_NEXT, name))

int rename(const char *from, const char *to)
{
    return struck("rename") ? -1 : NEXT(int (*)(const char *, const char *), "rename")(from, to);
}

int link(const char *from, const char *to)
{
    return struck("link") ? -1 : NEXT(int (*)(const char *, const char *), "link")(from, to);
}

int unlink(const char *path)
{
    return struck("unlink") ? -1 : NEXT(int (*)(const char *), "unlink")(path);
}

int rmdir(const char *path)
{
    return struck("rmdir") ? -1 : NEXT(int (*)(const char *), "rmdir")(path);
}

int mkdir(const char *path, mode_t mode)
{
    return struck("mkdir") ? -1 : NEXT(int (*)(const char *, mode_t), "mkdir")(path, mode);
}

int fsync(int descriptor)
{
    return struck("fsync") ? -1 : NEXT(int (*)(int), "fsync")(descriptor);
}

int flock(int descriptor, int operation)
{
    return struck("flock") ? -1 : NEXT(int (*)(int, int), "flock")(descriptor, operation);
}

ssize_t write(int descriptor, const void *bytes, size_t size)
{
    return descriptor > 2 && struck("write")
               ? -1
               : NEXT(ssize_t(*)(int, const void *, size_t), "write")(descriptor, bytes, size);
}

int open(const char *path, int flags, ...)
{
    mode_t mode = 0;
    if ((flags & O_CREAT) != 0) {
        va_list more;
        va_start(more, flags);
        mode = va_arg(more, mode_t);
        va_end(more);
        if (struck("open")) {
            return -1;
        }
    }
    return NEXT(int (*)(const char *, int, ...), "open")(path, flags, mode);
}
/* NOLINTEND(readability-inconsistent-declaration-parameter-name) */
