/* What the program knows without a route: the manual, the tables, a cable. */
#include "cli_private.h"

#include <stdio.h>
#include <string.h>

/* Frees the text. */
static int print_text(char *text)
{
    if (text == NULL) {
        return report_not_made();
    }
    fputs(text, stdout);
    wend_text_free(text);
    return 0;
}

int run_manual(void)
{
    return print_text(wend_manual());
}

int run_schema(void)
{
    return print_text(wend_schema());
}

int run_tables(void)
{
    for (int i = 0; i < wend_table_count(); i++) {
        char *line = wend_table_line(i);
        if (line == NULL) {
            return EXIT_SYSTEM;
        }
        printf("%s\n", line);
        wend_text_free(line);
    }
    return 0;
}

/* The figures, or which name is nearest to one that no table has. */
int run_table(const struct Options *options)
{
    enum { NAMES_MOST = 128 };
    const char *name = options->files[0];
    char *text = options->json ? wend_table_json(name) : wend_table_text(name, options->csv);
    if (text != NULL) {
        fputs(text, stdout);
        wend_text_free(text);
        return 0;
    }
    const char *names[NAMES_MOST];
    size_t count = 0;
    for (int i = 0; i < wend_table_count() && count < NAMES_MOST; i++) {
        names[count++] = wend_table_name(i);
    }
    const char *nearest = wend_nearest(name, names, count);
    if (*nearest != '\0') {
        print_shown(stderr, "wend: error: there is no table %s; did you mean %s?\n", name, nearest);
    } else {
        print_shown(stderr, "wend: error: there is no table %s; wend tables lists them\n", name);
    }
    return EXIT_USAGE;
}

int run_cable(const struct Options *options)
{
    enum { KINDS_MOST = 32 };
    const char *kinds[KINDS_MOST];
    size_t count = 0;
    bool there = false;
    char *text = options->json ? wend_cable_json(options->files[0], options->files[1])
                               : wend_cable_text(options->files[0], options->files[1]);
    if (text != NULL) {
        fputs(text, stdout);
        wend_text_free(text);
        return 0;
    }
    for (int i = 0; count < KINDS_MOST && *wend_cable_kind(i) != '\0'; i++) {
        kinds[count++] = wend_cable_kind(i);
        there = there || strcmp(options->files[0], wend_cable_kind(i)) == 0;
    }
    const char *nearest = there ? "" : wend_nearest(options->files[0], kinds, count);
    if (there) {
        print_shown(stderr, "wend: error: no figures are held of %s %s; write the size like 3x6\n", options->files[0],
                    options->files[1]);
    } else {
        print_shown(stderr, "wend: error: there is no cable %s; ", options->files[0]);
        print_shown(stderr, *nearest != '\0' ? "did you mean %s?\n" : "wend help type lists them%s\n", nearest);
    }
    return EXIT_USAGE;
}
