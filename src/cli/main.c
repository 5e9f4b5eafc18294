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

/* How many bytes follow the first one of a character. */
static int following(unsigned char first)
{
    return first >= 0xF0 ? 3 : first >= 0xE0 ? 2 : first >= 0xC2 ? 1 : 0;
}

/* What a terminal acts on, or what turns the text round: an answer that repeats it could show what is not so. A byte
 * that belongs to no character is one too where it is a control in the sets of eight bits. */
bool may_be_shown(const char *text)
{
    int due = 0;
    for (const unsigned char *at = (const unsigned char *)text; *at != '\0'; at++) {
        const bool continues = due > 0 && (*at & 0xC0) == 0x80;
        due = continues ? due - 1 : following(*at);
        const bool alone = !continues && *at >= 0x80 && *at <= 0x9F;
        const bool control = *at < 0x20 || *at == 0x7F || (*at == 0xC2 && at[1] >= 0x80 && at[1] <= 0x9F);
        const bool turns = *at == 0xE2 && ((at[1] == 0x80 && at[2] >= 0xA8 && at[2] <= 0xAE) ||
                                           (at[1] == 0x81 && at[2] >= 0xA6 && at[2] <= 0xA9));
        if (control || turns || alone) {
            return false;
        }
    }
    return true;
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
