/* wend help WORD: whatever the word is: a command, an option, a key or a word of the route or order file, a table, a
 * check. What is said of keys and words is cut from the manual, whose columns are fixed. */
#include "options_private.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { WORD_COLUMN = 24, MEANING_COLUMN = 42, WORDS_MOST = 1024, LENGTH_MOST = 40 };

/* All that may be asked for, for the nearest. */
struct Known {
    char words[WORDS_MOST][LENGTH_MOST];
    const char *list[WORDS_MOST];
    int count;
};

static void know(struct Known *known, const char *word, size_t length)
{
    if (known->count < WORDS_MOST && length > 0 && length < LENGTH_MOST) {
        memcpy(known->words[known->count], word, length);
        known->words[known->count][length] = '\0';
        known->list[known->count] = known->words[known->count];
        known->count++;
    }
}

static size_t column_of(const char *line)
{
    return strspn(line, " ");
}

const char *next_line(const char *line)
{
    const size_t length = strcspn(line, "\n");
    return line + length + (line[length] == '\n');
}

static void print_line(const char *line)
{
    printf("%.*s\n", (int)strcspn(line, "\n"), line);
}

/* Whether the line is that of a key, or of a word that a key takes. */
static bool names(const char *line, size_t column)
{
    return column_of(line) == column && (column != WORD_COLUMN || strcspn(line, "\n") > MEANING_COLUMN ||
                                         column_of(next_line(line)) == MEANING_COLUMN);
}

/* The line and those that belong to it, which begin further to the right. */
static void print_entry(const char *line)
{
    const size_t column = column_of(line);
    print_line(line);
    for (line = next_line(line); column_of(line) > column && line[column_of(line)] != '\n'; line = next_line(line)) {
        print_line(line);
    }
}

/* Every place of the manual that is about the word. */
static bool print_from_manual(const char *manual, const char *word, struct Known *known)
{
    enum { KEY_COLUMN = 2 };
    bool found = false;
    const char *title = manual;
    const char *key = manual;
    for (const char *line = manual; *line != '\0'; line = next_line(line)) {
        title = column_of(line) == 0 && *line != '\n' ? line : title;
        const size_t column = names(line, KEY_COLUMN) ? KEY_COLUMN : WORD_COLUMN;
        if (!names(line, column)) {
            continue;
        }
        key = column == KEY_COLUMN ? line : key;
        const char *at = line + column;
        const size_t length = strcspn(at, " \n");
        know(known, at, length);
        if (length == strlen(word) && memcmp(at, word, length) == 0) {
            fputs(found ? "\n" : "", stdout);
            print_line(title);
            if (column == WORD_COLUMN) {
                print_line(key);
            }
            print_entry(line);
            found = true;
        }
    }
    return found;
}

static bool print_option(const char *word, struct Known *known)
{
    bool found = false;
    for (int i = 0; option_row(i) != NULL; i++) {
        const struct OptionRow *row = option_row(i);
        know(known, row->word, strlen(row->word));
        if (strcmp(word, row->word) != 0 && strcmp(word, row->letter) != 0) {
            continue;
        }
        found = true;
        printf("%s%s%s%s%s: %s\n\nGoes with:", row->letter, *row->letter != '\0' ? ", " : "", row->word,
               *row->takes != '\0' ? " " : "", row->takes, row->summary);
        for (int c = 0; command_row(c) != NULL; c++) {
            if (*command_row(c)->summary != '\0' && (row->commands >> command_row(c)->command & 1U) != 0) {
                printf(" %s", command_row(c)->word);
            }
        }
        puts("");
    }
    return found;
}

static bool print_table(const char *word, struct Known *known)
{
    for (int i = 0; i < wend_table_count(); i++) {
        know(known, wend_table_name(i), strlen(wend_table_name(i)));
    }
    char *table = wend_table_text(word, false);
    fputs(table != NULL ? table : "", stdout);
    wend_text_free(table);
    return table != NULL;
}

static bool print_check(const char *word, struct Known *known)
{
    for (int i = 0; *wend_check_kind(i) != '\0'; i++) {
        know(known, wend_check_kind(i), strlen(wend_check_kind(i)));
    }
    char *text = wend_check_kind_text(word);
    if (text != NULL) {
        printf("%s\n\nwend explain FILE %s prints how it was decided.\n", text, word);
    }
    wend_text_free(text);
    return text != NULL;
}

static bool print_message(const char *word)
{
    for (int i = 0; *wend_message_name(i) != '\0'; i++) {
        if (strcmp(word, wend_message_name(i)) == 0) {
            printf("%s, %s:\n  ", word, wend_message_warns(i) ? "a warning; it stands on the papers" : "an error");
            for (const char *at = wend_message_text(i); *at != '\0'; at++) {
                const bool hole = at[0] == '{' && at[1] == '}';
                fputs(hole ? "..." : "", stdout);
                at += hole ? 1 : 0;
                fwrite(at, 1, hole ? 0 : 1, stdout);
            }
            puts("");
            return true;
        }
    }
    return false;
}

/* Words of the command line that have no row. */
static bool print_other(const char *word)
{
    if (strcmp(word, "help") == 0) {
        puts("wend help [WORD]\n\nPrints what is known of WORD: a command, an option, a key or word of the route\n"
             "or order file, a table, a check, a verdict, or the name of a message; without\n"
             "WORD all commands.");
        return true;
    }
    if (strcmp(word, "no-figure") == 0) {
        puts("no-figure: in wend options and plan.xml a size of which no check was made, since\n"
             "a published table has no figure for it.");
        return true;
    }
    if (strcmp(word, "--version") == 0) {
        puts("--version: prints which version this is");
        return true;
    }
    return false;
}

static bool print_verdict(const char *word)
{
    static const char open_is[] = "OPEN: no check fails, but one that matters could not be made; the plan says what\n"
                                  "would settle it. Exit status 0, with --strict 1.\n";
    static const char *const said[] = {
        "FAIL: a check fails. Exit status 1.\n",
        open_is,
        "PASS: every check that matters was made and passes. Exit status 0.\n",
    };
    for (int verdict = WEND_FAIL; verdict <= WEND_PASS; verdict++) {
        if (strcmp(word, wend_verdict_word((enum WendVerdict)verdict)) == 0) {
            fputs(said[verdict], stdout);
            return true;
        }
    }
    return false;
}

static bool print_spoken(const char *word)
{
    if (*wend_spoken(word) == '\0') {
        return false;
    }
    printf("%s %s\n", word, wend_spoken(word));
    return true;
}

int help_on_word(const char *word)
{
    struct Known *known = calloc(1, sizeof *known);
    char *manual = wend_manual();
    int status = 0;
    if (known == NULL || manual == NULL) {
        status = report_not_made();
    } else if (!print_verdict(word) && !print_other(word) && !print_message(word)) {
        for (int i = 0; command_row(i) != NULL; i++) {
            know(known, command_row(i)->word, strlen(command_row(i)->word));
        }
        bool found = print_spoken(word);
        found = print_option(word, known) || found;
        found = print_check(word, known) || found;
        found = print_from_manual(manual, word, known) || found;
        found = found || print_table(word, known);
        const char *nearest = found ? "" : wend_nearest(word, known->list, (size_t)known->count);
        if (!found) {
            print_shown(stderr, "wend: error: nothing is known of %s; ", word);
            print_shown(stderr, *nearest != '\0' ? "did you mean %s?\n" : "wend manual lists all keys%s\n", nearest);
            status = EXIT_USAGE;
        }
    }
    wend_text_free(manual);
    free(known);
    return status;
}
