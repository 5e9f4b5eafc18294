/* The steps that put a set in place, taken by the run that wrote it or, where that died, by the next one. */
#include "cli_private.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

void outfile_path(char path[OUT_PATH_BYTES], const struct OutFolder *folder, const char *part, const char *name)
{
    if (*part == '\0') {
        snprintf(path, OUT_PATH_BYTES, "%s/%s", folder->path, name);
    } else if (strcmp(part, ".") == 0) {
        snprintf(path, OUT_PATH_BYTES, "%s/.%s.wend", folder->path, folder->set->stem);
    } else {
        snprintf(path, OUT_PATH_BYTES, "%s/.%s.wend/%s%s", folder->path, folder->set->stem, part, name);
    }
}

static bool is_there(const struct OutFolder *folder, const char *part, const char *name)
{
    char path[OUT_PATH_BYTES];
    struct stat now;
    outfile_path(path, folder, part, name);
    return lstat(path, &now) == 0;
}

static bool move(const struct OutFolder *folder, const char *from, const char *to, const char *name)
{
    char source[OUT_PATH_BYTES];
    char target[OUT_PATH_BYTES];
    outfile_path(source, folder, from, name);
    outfile_path(target, folder, to, name);
    return rename(source, target) == 0;
}

/* What stands in the folder of the steps belongs to whoever they are taken for. */
static void sync_steps(const struct OutFolder *folder)
{
    char path[OUT_PATH_BYTES];
    outfile_path(path, folder, ".", "");
    outfolder_sync(path);
    outfolder_sync(folder->path);
}

/* False when the folder is there still. */
static bool remove_folder(const struct OutFolder *folder, const char *part)
{
    char path[OUT_PATH_BYTES];
    outfile_path(path, folder, part, "");
    return rmdir(path) == 0 || errno == ENOENT;
}

static void remove_new(const struct OutFolder *folder, const char *part)
{
    char path[OUT_PATH_BYTES];
    for (int i = 0; i < folder->set->count; i++) {
        outfile_path(path, folder, part, folder->set->names[i].name);
        unlink(path);
    }
    remove_folder(folder, part);
}

void outfile_discard(const struct OutFolder *folder)
{
    const int why = errno;
    remove_new(folder, "new/");
    remove_folder(folder, "old/");
    remove_folder(folder, ".");
    errno = why;
}

/* All of the old set out of sight: what the new one has a file for, and what it has none for, such as the list under
 * the name of another verdict, if it is ours. */
static bool hide_old(const struct OutFolder *folder)
{
    for (int i = 0; i < folder->set->count; i++) {
        const struct OutName *name = &folder->set->names[i];
        char path[OUT_PATH_BYTES];
        outfile_path(path, folder, "", name->name);
        const bool replaced = is_there(folder, "ready/", name->name);
        if (!is_there(folder, "", name->name) ||
            (!replaced && (name->mark == NULL || !outfile_is_ours(path, name->mark, folder->inputs)))) {
            continue;
        }
        if (replaced && !outfile_may_replace(path, name->mark, folder->inputs)) {
            return false;
        }
        if (!move(folder, "", "old/", name->name)) {
            return outfile_tell(path, "kept for the case of a failure");
        }
    }
    return true;
}

static bool place_new(const struct OutFolder *folder)
{
    for (int i = 0; i < folder->set->count; i++) {
        const char *name = folder->set->names[i].name;
        if (!is_there(folder, "placing/", name)) {
            continue;
        }
        char path[OUT_PATH_BYTES];
        outfile_path(path, folder, "", name);
        if (!outfile_may_replace(path, folder->set->names[i].mark, folder->inputs)) {
            return false;
        }
        if (!move(folder, "placing/", "", name)) {
            return outfile_tell(path, "put in place");
        }
    }
    return true;
}

/* What the new set took the place of goes; what it has no file for is kept under another name. */
static bool clear_old(const struct OutFolder *folder)
{
    for (int i = 0; i < folder->set->count; i++) {
        const char *name = folder->set->names[i].name;
        char path[OUT_PATH_BYTES];
        outfile_path(path, folder, "old/", name);
        if (is_there(folder, "", name)) {
            unlink(path);
        } else if (is_there(folder, "old/", name)) {
            outfile_keep_aside(folder->path, name, path);
        }
    }
    return remove_folder(folder, "old/") && remove_folder(folder, "placing/") && remove_folder(folder, ".");
}

static bool become(const struct OutFolder *folder, const char *part, const char *next)
{
    char from[OUT_PATH_BYTES];
    char to[OUT_PATH_BYTES];
    outfile_path(from, folder, part, "");
    outfile_path(to, folder, next, "");
    sync_steps(folder);
    const bool done = rename(from, to) == 0 || outfile_tell(from, "kept for the case of a failure");
    sync_steps(folder);
    return done;
}

/* The moves that were made are undone, those of the new set first; what cannot be undone is left to the next run. */
static void undo(const struct OutFolder *folder)
{
    bool undone = true;
    if (is_there(folder, "placing/", "")) {
        for (int i = 0; i < folder->set->count; i++) {
            const char *name = folder->set->names[i].name;
            const bool placed = folder->is_new[i] && !is_there(folder, "placing/", name);
            undone = (!placed || move(folder, "", "placing/", name)) && undone;
        }
        undone = undone && become(folder, "placing/", "ready/");
    }
    for (int i = 0; undone && i < folder->set->count; i++) {
        const char *name = folder->set->names[i].name;
        undone = !is_there(folder, "old/", name) || move(folder, "old/", "", name);
    }
    /* no longer what will be: were it removed as it is, a run that died at that would leave a part to put in place */
    if (undone && become(folder, "ready/", "new/")) {
        outfile_discard(folder);
    } else {
        char path[OUT_PATH_BYTES];
        outfile_path(path, folder, ".", "");
        print_shown(stderr, "wend: error: some papers are in %s; plan again to have them in place\n", path);
    }
}

static bool finish(const struct OutFolder *folder)
{
    if (!place_new(folder)) {
        return false;
    }
    outfolder_sync(folder->path);
    if (!clear_old(folder)) {
        char path[OUT_PATH_BYTES];
        outfile_path(path, folder, ".", "");
        print_shown(stderr, "wend: warning: %s could not be removed: %s\n", path, strerror(errno));
    }
    return true;
}

bool outfile_commit(struct OutFolder *folder)
{
    if (!become(folder, "new/", "ready/")) {
        outfile_discard(folder);
        return false;
    }
    for (int i = 0; i < folder->set->count; i++) {
        folder->is_new[i] = is_there(folder, "ready/", folder->set->names[i].name);
    }
    const bool done = hide_old(folder) && become(folder, "ready/", "placing/") && finish(folder);
    if (!done) {
        undo(folder);
    }
    return done;
}

/* A folder itself, no link to one, and in it what may be put in place: plain files. */
static bool is_of_files(int parent, const char *name)
{
    struct stat now;
    const int descriptor = openat(parent, name, O_RDONLY | O_DIRECTORY | O_NOFOLLOW | O_CLOEXEC);
    DIR *folder = descriptor < 0 ? NULL : fdopendir(descriptor);
    bool good = folder != NULL;
    for (const struct dirent *entry = good ? readdir(folder) : NULL; good && entry != NULL; entry = readdir(folder)) {
        const bool dots = strcmp(entry->d_name, ".") == 0 || strcmp(entry->d_name, "..") == 0;
        good = dots || (fstatat(descriptor, entry->d_name, &now, AT_SYMLINK_NOFOLLOW) == 0 && S_ISREG(now.st_mode));
    }
    if (folder != NULL) {
        closedir(folder);
    } else if (descriptor >= 0) {
        close(descriptor);
    }
    return good;
}

static bool is_step(int parent, const char *name)
{
    static const char *const parts[] = {"new", "ready", "placing", "old"};
    for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++) {
        if (strcmp(name, parts[i]) == 0) {
            return is_of_files(parent, name);
        }
    }
    return strcmp(name, ".") == 0 || strcmp(name, "..") == 0;
}

/* Nothing but what the steps make: a folder of the user's own stays as it is. */
static bool is_of_steps(const char *path)
{
    DIR *folder = opendir(path);
    bool good = folder != NULL;
    for (const struct dirent *entry = good ? readdir(folder) : NULL; good && entry != NULL; entry = readdir(folder)) {
        good = is_step(dirfd(folder), entry->d_name);
    }
    if (folder != NULL) {
        closedir(folder);
    }
    return good;
}

static bool end_steps(const struct OutFolder *folder)
{
    const bool ready = is_there(folder, "ready/", "");
    const bool placing = is_there(folder, "placing/", "");
    if (!ready && !placing) {
        outfile_discard(folder);
        return true;
    }
    if (ready && (!hide_old(folder) || !become(folder, "ready/", "placing/"))) {
        return false;
    }
    if (!finish(folder)) {
        return false;
    }
    print_shown(
        stderr,
        "wend: note: an earlier run did not come to its end; the papers of %s that it had made in %s are whole now\n",
        folder->set->stem, folder->path);
    return true;
}

bool outfile_recover(const struct OutFolder *folder)
{
    char path[OUT_PATH_BYTES];
    outfile_path(path, folder, ".", "");
    struct stat now;
    if (lstat(path, &now) != 0) {
        return true;
    }
    const bool ours = S_ISDIR(now.st_mode) && is_of_steps(path);
    if (ours && !end_steps(folder)) {
        return false; /* told */
    }
    if (ours && lstat(path, &now) != 0) {
        return true;
    }
    print_shown(
        stderr,
        "wend: error: %s is there and holds what was not written by wend: move it away, or write elsewhere with "
        "--out; nothing is written\n",
        path);
    return false;
}
