/* The folder that files go into: made when it is missing, and one run's alone while it writes there. The lock is the
 * system's on the folder itself, so that it ends with the run that has it, however that ends; nothing is left of it. */
#include "cli_private.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

enum { WAITS_MOST = 200, WAIT_NS = 50 * 1000 * 1000 }; /* ten seconds; a set is written in far less than one */

bool outfile_tell(const char *path, const char *what)
{
    print_shown(stderr, "wend: error: %s could not be %s: %s%s\n", path, what, strerror(errno),
                errno == ENOMEM ? " [out-of-memory]" : "");
    return false;
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
    return made || outfile_tell(folder, "made");
}

static bool lock_folder(const struct OutFolder *folder)
{
    int locked = flock(folder->descriptor, LOCK_EX | LOCK_NB);
    for (int waits = 0; locked != 0 && (errno == EWOULDBLOCK || errno == EINTR) && waits < WAITS_MOST; waits++) {
        nanosleep(&(struct timespec){.tv_nsec = WAIT_NS}, NULL);
        locked = flock(folder->descriptor, LOCK_EX | LOCK_NB);
    }
    if (locked != 0 && errno == EWOULDBLOCK) {
        print_shown(stderr, "wend: error: another run of wend is writing into %s; nothing is written\n", folder->path);
        return false;
    }
    if (locked != 0) {
        print_shown(stderr,
                    "wend: note: %s cannot be locked (%s): plan into it one at a time, or papers of two plans mix\n",
                    folder->path, strerror(errno));
    }
    return true;
}

/* What ends a run from a keyboard waits until the set is whole; it takes no time that anyone would notice. */
static void hold_signals(struct OutFolder *folder)
{
    sigset_t held;
    sigemptyset(&held);
    sigaddset(&held, SIGINT);
    sigaddset(&held, SIGTERM);
    sigaddset(&held, SIGHUP);
    sigaddset(&held, SIGQUIT);
    pthread_sigmask(SIG_BLOCK, &held, &folder->signals);
    folder->held = true;
}

static bool enter(struct OutFolder *folder, bool make)
{
    if (strlen(folder->path) >= OUT_FOLDER_MOST) {
        errno = ENAMETOOLONG;
        return outfile_tell(folder->path, "made");
    }
    if (make && !make_folder(folder->path)) {
        return false;
    }
    folder->descriptor = open(folder->path, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (folder->descriptor < 0) {
        return (!make && errno == ENOENT) || outfile_tell(folder->path, "opened");
    }
    if (!lock_folder(folder)) {
        return false;
    }
    hold_signals(folder);
    return outfile_recover(folder);
}

bool outfolder_enter(struct OutFolder *folder, bool make)
{
    folder->descriptor = -1;
    folder->held = false;
    const bool entered = enter(folder, make);
    if (!entered) {
        outfolder_leave(folder);
    }
    return entered;
}

void outfolder_leave(struct OutFolder *folder)
{
    if (folder->descriptor >= 0) {
        close(folder->descriptor); /* and with it the lock */
        folder->descriptor = -1;
    }
    if (folder->held) {
        pthread_sigmask(SIG_SETMASK, &folder->signals, NULL);
        folder->held = false;
    }
}

void outfolder_sync(const char *path)
{
    const int descriptor = open(path, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (descriptor >= 0) {
        fsync(descriptor); /* not every file system knows this; the files themselves are on disk already */
        close(descriptor);
    }
}
