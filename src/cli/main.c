/* The command line and nothing else. */
#include "cli_private.h"

#include <stdio.h>
#include <unistd.h>

/* Before anything is written to disk all documents stand in memory, so ending here leaves the disk as it was. */
static void give_up(void)
{
    static const char words[] = "wend: error: there is not enough memory [out-of-memory]\n";
    ssize_t written = write(STDERR_FILENO, words, sizeof words - 1);
    (void)written; /* nothing is left to be done about it */
    _exit(EXIT_SYSTEM);
}

int main(int argc, char *argv[])
{
    for (int i = 1; i < argc; i++) {
        if (!may_be_shown(argv[i])) {
            fprintf(stderr, "wend: error: word %d of the command holds a control character; rename the file\n", i);
            return EXIT_USAGE;
        }
    }
    wend_guard_memory(give_up);
    struct Options options;
    int status = EXIT_USAGE;
    if (options_read(argc, argv, &options)) {
        status = run_command(&options);
    }
    wend_end();
    if (fflush(stdout) != 0 || ferror(stdout)) {
        fputs("wend: error: standard output could not be written\n", stderr);
        status = EXIT_SYSTEM;
    }
    return status;
}
