/* What may not be written over: a file that was read for what is being written, and one that is not ours. Ours is told
 * by a mark near its beginning that every document of its kind carries. */
#include "cli_private.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

enum { BEGINNING_BYTES = 4096 };

struct FileId file_id_of(int descriptor)
{
    struct stat now;
    if (fstat(descriptor, &now) != 0) {
        return (struct FileId){.known = false};
    }
    return (struct FileId){.known = true, .device = now.st_dev, .inode = now.st_ino};
}

bool file_id_same(const struct FileId *a, const struct FileId *b)
{
    return a->known && b->known && a->device == b->device && a->inode == b->inode;
}

/* How much was read; -1 with errno set. */
static ssize_t read_beginning(int descriptor, char *bytes)
{
    size_t length = 0;
    for (ssize_t got = 1; got != 0 && length < BEGINNING_BYTES;) {
        got = read(descriptor, bytes + length, BEGINNING_BYTES - length);
        if (got < 0 && errno != EINTR) {
            return -1;
        }
        length += got > 0 ? (size_t)got : 0;
    }
    return (ssize_t)length;
}

static bool holds(const char *bytes, size_t length, const char *mark)
{
    const size_t mark_length = strlen(mark);
    for (size_t at = 0; at + mark_length <= length; at++) {
        if (memcmp(bytes + at, mark, mark_length) == 0) {
            return true;
        }
    }
    return false;
}

static bool refuse(const char *path, const char *why)
{
    print_shown(stderr, "wend: error: %s %s; nothing is written\n", path, why);
    return false;
}

/* An empty file has nothing to lose. */
static bool ours(int descriptor, const char *path, const char *mark)
{
    char bytes[BEGINNING_BYTES];
    const ssize_t length = read_beginning(descriptor, bytes);
    if (length < 0) {
        print_shown(stderr, "wend: error: %s could not be read: %s\n", path, strerror(errno));
        return false;
    }
    return length == 0 || holds(bytes, (size_t)length, mark) ||
           refuse(path, "is there and was not written by wend: move it away, or write elsewhere with --out");
}

bool outfile_may_replace(const char *path, const char *mark, struct Inputs inputs)
{
    struct stat now;
    if (lstat(path, &now) != 0 || !S_ISREG(now.st_mode)) {
        return true; /* what is no plain file is refused where it is met */
    }
    const struct FileId there = {.known = true, .device = now.st_dev, .inode = now.st_ino};
    for (int i = 0; i < inputs.count; i++) {
        if (file_id_same(&there, &inputs.ids[i])) {
            return refuse(path, "was read for this and would be written over: give it another name, or write "
                                "elsewhere with --out");
        }
    }
    if (mark == NULL) {
        return true;
    }
    const int descriptor = open(path, O_RDONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK);
    if (descriptor < 0) {
        print_shown(stderr, "wend: error: %s could not be read: %s\n", path, strerror(errno));
        return false;
    }
    const bool good = ours(descriptor, path, mark);
    close(descriptor);
    return good;
}

bool outfile_is_ours(const char *path, const char *mark, struct Inputs inputs)
{
    char bytes[BEGINNING_BYTES];
    const int descriptor = open(path, O_RDONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK);
    if (descriptor < 0) {
        return false;
    }
    struct stat now;
    const struct FileId there = file_id_of(descriptor);
    bool good = fstat(descriptor, &now) == 0 && S_ISREG(now.st_mode);
    for (int i = 0; good && i < inputs.count; i++) {
        good = !file_id_same(&there, &inputs.ids[i]);
    }
    const ssize_t length = good ? read_beginning(descriptor, bytes) : -1;
    close(descriptor);
    return length > 0 && holds(bytes, (size_t)length, mark);
}
