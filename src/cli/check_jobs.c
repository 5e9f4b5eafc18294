/* wend check over many files with several processes. A route is a pure function of its files, so each file is checked
 * by whoever comes to it; what is printed is the same, byte for byte, as one process prints, in the same order.
 *
 * The files are dealt out before anything is checked, so that each process has as many bytes to read as another. Each
 * checks its own in their order, into files without a name, and hands the text of each over by a pipe. The pipes are
 * read in the order of the files, so none waits for another for ever. A file whose process ended before it handed it
 * over is checked here, as without --jobs. Standard input is read here alone: what a process that ended had read of it
 * would be missing. */
#include "cli_private.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

static bool is_piped(const struct Options *options, int index)
{
    return strcmp(options->files[index], "-") == 0;
}

struct Process {
    pid_t id; /* 0: there is none */
    int from; /* the end of its pipe that is read */
};

/* ---- who checks what ---- */

enum { BEGUN_BYTES = 2048 }; /* what a file costs before its first segment is as much as so many bytes of segments */
struct Weight {
    int file;
    long long bytes;
};

static int heavier_first(const void *a, const void *b)
{
    const struct Weight *one = a, *other = b;
    return one->bytes != other->bytes ? (one->bytes < other->bytes ? 1 : -1) : one->file - other->file;
}

/* The heaviest first, each to the process that has least so far. */
static void deal(struct Weight *weights, int count, int jobs, int *who)
{
    long long has[JOBS_MOST] = {0};
    qsort(weights, (size_t)count, sizeof *weights, heavier_first);
    for (int i = 0; i < count; i++) {
        int least = 0;
        for (int job = 1; job < jobs; job++) {
            least = has[job] < has[least] ? job : least;
        }
        has[least] += weights[i].bytes;
        who[weights[i].file] = least;
    }
}

/* Which process checks each file; the caller frees it. NULL without memory. */
static int *dealt(const struct Options *options, int jobs)
{
    const size_t count = (size_t)options->file_count;
    int *who = calloc(count, sizeof *who);
    struct Weight *weights = calloc(count, sizeof *weights);
    for (int i = 0; weights != NULL && i < options->file_count; i++) {
        struct stat file;
        const bool there = !is_piped(options, i) && stat(options->files[i], &file) == 0;
        weights[i] = (struct Weight){i, BEGUN_BYTES + (there ? (long long)file.st_size : 0)};
    }
    if (who != NULL && weights != NULL) {
        deal(weights, options->file_count, jobs, who);
    }
    free(weights);
    return who;
}

/* What a process says of one file: this, then what it printed on stderr, then on stdout. */
struct Told {
    int status;
    size_t errors, output;
};

static bool write_whole(int to, const void *bytes, size_t length)
{
    const char *at = bytes;
    while (length > 0) {
        const ssize_t wrote = write(to, at, length);
        if (wrote <= 0) {
            return false;
        }
        at += wrote;
        length -= (size_t)wrote;
    }
    return true;
}

static bool read_whole(int from, void *bytes, size_t length)
{
    char *at = bytes;
    while (length > 0) {
        const ssize_t got = read(from, at, length);
        if (got <= 0) {
            return false;
        }
        at += got;
        length -= (size_t)got;
    }
    return true;
}

/* ---- in a process of its own ---- */

static bool hand_over(int printed, size_t length, int to)
{
    char bytes[4096];
    if (length == 0) {
        return true;
    }
    for (size_t at = 0; at < length;) {
        const ssize_t got = pread(printed, bytes, sizeof bytes, (off_t)at);
        if (got <= 0 || !write_whole(to, bytes, (size_t)got)) {
            return false;
        }
        at += (size_t)got;
    }
    return ftruncate(printed, 0) == 0 && lseek(printed, 0, SEEK_SET) == 0;
}

static bool tell(int status, int to)
{
    if (fflush(stdout) != 0 || fflush(stderr) != 0) {
        return false;
    }
    const off_t errors = lseek(STDERR_FILENO, 0, SEEK_CUR);
    const off_t output = lseek(STDOUT_FILENO, 0, SEEK_CUR);
    if (errors < 0 || output < 0) {
        return false;
    }
    const struct Told told = {.status = status, .errors = (size_t)errors, .output = (size_t)output};
    return write_whole(to, &told, sizeof told) && hand_over(STDERR_FILENO, told.errors, to) &&
           hand_over(STDOUT_FILENO, told.output, to);
}

static bool print_into(int stream)
{
    FILE *file = tmpfile();
    return file != NULL && dup2(fileno(file), stream) == stream;
}

static void work(const struct Options *options, check_one_file *check, const int *who, int number, int to)
{
    if (!print_into(STDOUT_FILENO) || !print_into(STDERR_FILENO)) {
        return;
    }
    for (int i = 0; i < options->file_count; i++) {
        if (who[i] == number && !is_piped(options, i) && !tell(check(options, i), to)) {
            return;
        }
    }
}

/* ---- in the one that was started ---- */

/* False, with nothing printed, when it is not all there. */
static bool take(int from, int *status)
{
    struct Told told;
    if (!read_whole(from, &told, sizeof told)) {
        return false;
    }
    char *errors = malloc(told.errors + 1);
    char *output = malloc(told.output + 1);
    const bool whole = errors != NULL && output != NULL && read_whole(from, errors, told.errors) &&
                       read_whole(from, output, told.output);
    if (whole) {
        fwrite(errors, 1, told.errors, stderr);
        fwrite(output, 1, told.output, stdout); /* main() asks ferror() at the end */
        *status = told.status;
    }
    free(errors);
    free(output);
    return whole;
}

static void leave(struct Process *process)
{
    if (process->id > 0) {
        close(process->from);
        waitpid(process->id, NULL, 0);
        process->id = 0;
    }
}

static void begin(const struct Options *options, check_one_file *check, const int *who, struct Process *all, int number)
{
    int ends[2];
    fflush(NULL); /* or it would be printed twice */
    if (pipe(ends) != 0) {
        return;
    }
    const pid_t id = fork();
    if (id == 0) {
        for (int i = 0; i < number; i++) {
            if (all[i].id > 0) {
                close(all[i].from);
            }
        }
        close(ends[0]);
        work(options, check, who, number, ends[1]);
        _exit(EXIT_SUCCESS);
    }
    close(ends[1]);
    if (id < 0) {
        close(ends[0]);
        return;
    }
    all[number] = (struct Process){id, ends[0]};
}

int check_each_file(const struct Options *options, check_one_file *check)
{
    struct Process all[JOBS_MOST] = {{0, 0}};
    const int jobs = options->jobs < options->file_count ? options->jobs : options->file_count;
    int worst = WEND_PASSES;
    int *who = jobs > 1 ? dealt(options, jobs) : NULL;
    for (int i = 0; who != NULL && i < jobs; i++) {
        begin(options, check, who, all, i);
    }
    for (int i = 0; i < options->file_count; i++) {
        struct Process *process = who != NULL ? &all[who[i]] : NULL;
        int status = WEND_PASSES;
        if (is_piped(options, i) || process == NULL || process->id == 0) {
            status = check(options, i);
        } else if (!take(process->from, &status)) {
            leave(process);
            status = check(options, i);
        }
        worst = status > worst ? status : worst;
    }
    for (int i = 0; i < JOBS_MOST; i++) {
        leave(&all[i]);
    }
    free(who);
    return worst;
}
