/* Whole files into memory. */
#include "cli_private.h"

#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static bool read_all(int descriptor, size_t most, struct SourceFile *out)
{
    size_t room = (size_t)64 * 1024;
    size_t length = 0;
    char *data = malloc(room);
    while (data != NULL) {
        if (length == room) {
            char *larger = realloc(data, room * 2);
            if (larger == NULL) {
                break;
            }
            data = larger;
            room *= 2;
        }
        ssize_t got = read(descriptor, data + length, room - length);
        if (got < 0 && errno == EINTR) {
            continue;
        }
        if (got < 0) {
            break;
        }
        length += (size_t)got;
        if (got == 0 || length > most) {
            *out = (struct SourceFile){data, length, file_id_of(descriptor)};
            return true;
        }
    }
    free(data);
    return false;
}

bool source_file_read(const char *path, size_t most, struct SourceFile *out)
{
    if (strcmp(path, "-") == 0) {
        return read_all(STDIN_FILENO, most, out);
    }
    const int descriptor =
        open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK); /* a pipe that nobody writes to opens at once */
    if (descriptor < 0) {
        return false;
    }
    struct stat state;
    const bool known = fstat(descriptor, &state) == 0;
    const bool file = known && S_ISREG(state.st_mode);
    const bool whole = file && read_all(descriptor, most, out);
    const int why = !known || file ? errno : S_ISDIR(state.st_mode) ? EISDIR : ENODEV;
    close(descriptor);
    errno = why;
    return whole;
}

const char *source_file_why(void)
{
    return errno == ENODEV ? "it is not a regular file (\"-\" is standard input)" : strerror(errno);
}

char *source_file_stem(const char *path)
{
    if (strcmp(path, "-") == 0) {
        return strdup("route");
    }
    const char *slash = strrchr(path, '/');
    char *stem = strdup(slash != NULL ? slash + 1 : path);
    if (stem == NULL) {
        return NULL;
    }
    char *dot = strrchr(stem, '.');
    if (dot != NULL && dot != stem && (strcmp(dot, ".yaml") == 0 || strcmp(dot, ".yml") == 0)) {
        *dot = '\0';
    }
    return stem;
}

char *source_file_beside(const char *path, const char *name)
{
    const char *slash = strcmp(path, "-") == 0 ? NULL : strrchr(path, '/');
    const size_t folder = slash != NULL ? (size_t)(slash - path) + 1 : 0;
    const size_t length = strlen(name) + 1;
    char *beside = malloc(folder + length);
    if (beside != NULL) {
        memcpy(beside, path, folder);
        memcpy(beside + folder, name, length);
    }
    return beside;
}
