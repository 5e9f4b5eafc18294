/* wend new: a route to begin with, commented, in a file that was not there. */
#include "cli_private.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

enum { STARTERS_MOST = 32 };

static const struct Starter *find_starter(const char *name)
{
    for (int i = 0; starter_at(i) != NULL; i++) {
        if (strcmp(starter_at(i)->name, name) == 0) {
            return starter_at(i);
        }
    }
    return NULL;
}

static int tell_unknown(const char *name)
{
    const char *names[STARTERS_MOST];
    size_t count = 0;
    for (int i = 0; starter_at(i) != NULL && count < STARTERS_MOST; i++) {
        names[count++] = starter_at(i)->name;
    }
    const char *nearest = wend_nearest(name, names, count);
    if (*nearest != '\0') {
        print_shown(stderr, "wend: error: there is no starter %s; did you mean %s?\n", name, nearest);
        return EXIT_USAGE;
    }
    print_shown(stderr, "wend: error: there is no starter %s; there are", name);
    for (size_t i = 0; i < count; i++) {
        print_shown(stderr, "%s %s", i == 0 ? "" : ",", names[i]);
    }
    fputs("\n", stderr);
    return EXIT_USAGE;
}

int new_file_write(const char *path, const char *text, size_t length)
{
    const int descriptor = open(path, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (descriptor < 0 && errno == EEXIST) {
        print_shown(stderr, "wend: error: %s is there already and stays as it is; give another name\n", path);
        return EXIT_SYSTEM;
    }
    const bool whole = descriptor >= 0 && outfile_write_whole(descriptor, (struct WendBytes){text, length}) &&
                       outfile_forced(descriptor);
    const int why = errno;
    const bool closed = descriptor < 0 || close(descriptor) == 0;
    if (whole && closed) {
        return 0;
    }
    if (descriptor >= 0) {
        unlink(path);
    }
    print_shown(stderr, "wend: error: %s could not be written: %s\n", path, strerror(whole ? errno : why));
    return EXIT_SYSTEM;
}

int run_new(const struct Options *options)
{
    const bool named = options->file_count > 1;
    const char *path = options->files[named ? 1 : 0];
    if (options->ask) {
        if (named) {
            fputs("wend: error: --ask takes no starter; give a file alone\n", stderr);
            return EXIT_USAGE;
        }
        if (strcmp(path, "-") == 0) {
            fputs("wend: error: --ask keeps its answers in a file; name one\n", stderr);
            return EXIT_USAGE;
        }
        return run_new_asked(path);
    }
    const struct Starter *starter = named ? find_starter(options->files[0]) : starter_at(0);
    if (starter == NULL) {
        return tell_unknown(options->files[0]);
    }
    if (!named && find_starter(path) != NULL) {
        print_shown(stderr, "wend: error: %s is a starter; name the file too: wend new %s FILE.yaml\n", path, path);
        return EXIT_USAGE;
    }
    if (strcmp(path, "-") == 0) {
        fwrite(starter->text, 1, starter->length, stdout); /* main() asks ferror() at the end */
        return 0;
    }
    const int status = new_file_write(path, starter->text, starter->length);
    if (status == 0) {
        print_shown(stdout, "%s: put in what you measured, then: wend plan %s\n", path, path);
    }
    return status;
}
