/* Several files into a folder, all of them or none.
 *
 * Every file is first written beside its target under a temporary name and forced to disk. Only when all stand are they
 * renamed into place. What was there before is kept under a second name until the last rename has worked, and put back
 * when one fails. A machine that dies between two renames can leave a mixed set; every file in it is whole. */
#include "cli_private.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* Where one file is on its way. */
struct Way {
    char *temporary, *target, *former;
    bool written, kept, placed;
};

static bool tell(const char *path, const char *what)
{
    fprintf(stderr, "wend: error: %s could not be %s: %s%s\n", path, what, strerror(errno),
            errno == ENOMEM ? " [out-of-memory]" : "");
    return false;
}

static char *join(const char *folder, const char *before, const char *name, const char *after)
{
    const size_t length = strlen(folder) + strlen(before) + strlen(name) + strlen(after) + 2;
    char *path = malloc(length);
    if (path != NULL) {
        snprintf(path, length, "%s/%s%s%s", folder, before, name, after);
    }
    return path;
}

static bool write_whole(int descriptor, struct WendBytes bytes)
{
    for (size_t done = 0; done < bytes.length;) {
        ssize_t wrote = write(descriptor, bytes.data + done, bytes.length - done);
        if (wrote < 0 && errno == EINTR) {
            continue;
        }
        if (wrote < 0) {
            return false;
        }
        done += (size_t)wrote;
    }
    return true;
}

static bool write_temporary(struct Way *way, const struct OutFile *file)
{
    const int descriptor = mkstemp(way->temporary);
    if (descriptor < 0) {
        return tell(way->target, "written");
    }
    way->written = true;
    const mode_t mask = umask(0);
    umask(mask);
    const char *before = file->before != NULL ? file->before : "";
    bool whole = write_whole(descriptor, (struct WendBytes){before, strlen(before)}) &&
                 write_whole(descriptor, file->bytes) && fsync(descriptor) == 0 &&
                 fchmod(descriptor, 0666 & ~mask) == 0;
    const int why = errno;
    if (close(descriptor) != 0) {
        whole = false;
    } else {
        errno = why;
    }
    return whole || tell(way->target, "written");
}

static bool place(struct Way *way)
{
    struct stat now;
    if (lstat(way->target, &now) == 0) {
        if (!S_ISREG(now.st_mode)) {
            errno = EEXIST;
            return tell(way->target, "replaced (it is no plain file)");
        }
        unlink(way->former); /* left by a run that was killed */
        if (link(way->target, way->former) != 0) {
            return tell(way->target, "kept for the case of a failure");
        }
        way->kept = true;
    }
    if (rename(way->temporary, way->target) != 0) {
        return tell(way->target, "put in place");
    }
    way->placed = true;
    return true;
}

static void put_back(struct Way *way)
{
    if (way->placed && way->kept) {
        rename(way->former, way->target);
    } else if (way->placed) {
        unlink(way->target);
    }
}

static void sync_folder(const char *folder)
{
    const int descriptor = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (descriptor >= 0) {
        fsync(descriptor); /* not every file system knows this; the files themselves are on disk already */
        close(descriptor);
    }
}

static bool make_folder(const char *folder)
{
    char *path = strdup(folder);
    bool made = path != NULL;
    for (char *at = path; made && at != NULL;) {
        at = strchr(at + 1, '/');
        if (at != NULL) {
            *at = '\0';
        }
        made = mkdir(path, 0777) == 0 || errno == EEXIST;
        if (at != NULL) {
            *at = '/';
        }
    }
    free(path);
    struct stat now;
    if (made && stat(folder, &now) == 0 && !S_ISDIR(now.st_mode)) {
        errno = ENOTDIR;
        made = false;
    }
    return made || tell(folder, "made");
}

static bool write_and_place(struct Way *ways, const struct OutFile *files, int count)
{
    for (int i = 0; i < count; i++) {
        if (!write_temporary(&ways[i], &files[i])) {
            return false;
        }
    }
    for (int i = 0; i < count; i++) {
        if (!place(&ways[i])) {
            return false;
        }
    }
    return true;
}

/* Before anything is written. A name kept for the case of a failure is looked at too: a run that was killed leaves it.
 */
static bool may_replace_all(const struct Way *ways, const struct OutFile *files, int count, struct Inputs inputs)
{
    bool good = true;
    for (int i = 0; i < count; i++) {
        good = outfile_may_replace(ways[i].target, files[i].mark, inputs) && good;
        good = outfile_may_replace(ways[i].former, files[i].mark, inputs) && good;
    }
    return good;
}

bool outfile_write_all(const char *folder, const struct OutFile *files, int count, struct Inputs inputs)
{
    struct Way *ways = calloc((size_t)count, sizeof *ways);
    bool done = ways != NULL;
    for (int i = 0; done && i < count; i++) {
        ways[i].target = join(folder, "", files[i].name, "");
        ways[i].temporary = join(folder, ".", files[i].name, ".XXXXXX");
        ways[i].former = join(folder, ".", files[i].name, ".former");
        done = ways[i].target != NULL && ways[i].temporary != NULL && ways[i].former != NULL;
    }
    if (!done) {
        errno = ENOMEM;
        tell(folder, "written");
    } else {
        done =
            may_replace_all(ways, files, count, inputs) && make_folder(folder) && write_and_place(ways, files, count);
    }
    for (int i = 0; ways != NULL && i < count; i++) {
        if (!done) {
            put_back(&ways[i]);
        }
        if (ways[i].written && !ways[i].placed) {
            unlink(ways[i].temporary);
        }
        if (ways[i].kept) {
            unlink(ways[i].former); /* gone already when it was put back */
        }
        free(ways[i].target);
        free(ways[i].temporary);
        free(ways[i].former);
    }
    free(ways);
    if (done) {
        sync_folder(folder);
    }
    return done;
}
