/* Several files into a folder, all of them or none, and never some of this run's beside some of another's.
 *
 * Beside the files of the set "barn" stands, while they are written, a folder ".barn.wend". In it each file is written
 * whole and forced to disk, in "new". Then "new" becomes "ready": from here on the new set is what will be. What is
 * there of the old set is moved out of sight, into "old"; once all of it is, "ready" becomes "placing", and the new
 * files are moved to where they belong. So at any moment there are files of one set alone in sight, and whichever of
 * these steps a run died at, the next one knows from the three names what was done, and ends it. No file system moves
 * several files at once: a run that is killed between the moves leaves some of a set in sight, and the rest in
 * ".barn.wend". */
#include "cli_private.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

bool outfile_write_whole(int descriptor, struct WendBytes bytes)
{
    for (size_t done = 0; done < bytes.length;) {
        ssize_t wrote = write(descriptor, bytes.data + done, bytes.length - done);
        if (wrote < 0 && errno == EINTR) {
            continue;
        }
        if (wrote <= 0) { /* nothing at all is written of something where a device is broken */
            errno = wrote == 0 ? EIO : errno;
            return false;
        }
        done += (size_t)wrote;
    }
    return true;
}

/* Some file systems have nothing to force: what can be done is done. */
bool outfile_forced(int descriptor)
{
    return fsync(descriptor) == 0 || errno == EINVAL || errno == ENOSYS || errno == EOPNOTSUPP;
}

static bool write_new(const struct OutFolder *folder, const struct OutFile *file)
{
    char path[OUT_PATH_BYTES];
    char target[OUT_PATH_BYTES];
    outfile_path(target, folder, "", file->name);
    outfile_path(path, folder, "new/", file->name);
    const int descriptor = open(path, O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0666);
    if (descriptor < 0) {
        return outfile_tell(target, "written");
    }
    const char *before = file->before != NULL ? file->before : "";
    bool whole = outfile_write_whole(descriptor, (struct WendBytes){before, strlen(before)}) &&
                 outfile_write_whole(descriptor, file->bytes) && outfile_forced(descriptor);
    const int why = errno;
    if (close(descriptor) != 0) {
        whole = false;
    } else {
        errno = why;
    }
    return whole || outfile_tell(target, "written");
}

static bool make_one(const struct OutFolder *folder, const char *part)
{
    char path[OUT_PATH_BYTES];
    outfile_path(path, folder, part, "");
    return mkdir(path, 0777) == 0 || outfile_tell(path, "made");
}

static bool write_all_new(const struct OutFolder *folder, const struct OutFile *files, int count)
{
    if (!make_one(folder, ".") || !make_one(folder, "new/") || !make_one(folder, "old/")) {
        return false;
    }
    for (int i = 0; i < count; i++) {
        if (!write_new(folder, &files[i])) {
            return false;
        }
    }
    return true;
}

/* Before anything is written. */
static bool may_replace_all(const struct OutFolder *folder, const struct OutFile *files, int count)
{
    bool good = true;
    for (int i = 0; i < count; i++) {
        char target[OUT_PATH_BYTES];
        outfile_path(target, folder, "", files[i].name);
        good = outfile_may_replace(target, files[i].mark, folder->inputs) && good;
        struct stat now;
        if (lstat(target, &now) == 0 && !S_ISREG(now.st_mode)) {
            errno = EEXIST;
            good = outfile_tell(target, "replaced (it is no plain file)");
        }
    }
    return good;
}

bool outfile_write_all(struct OutFolder *folder, const struct OutFile *files, int count)
{
    if (!may_replace_all(folder, files, count)) {
        return false;
    }
    const bool whole = write_all_new(folder, files, count);
    if (!whole) {
        outfile_discard(folder);
        return false;
    }
    return outfile_commit(folder);
}
