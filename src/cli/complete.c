/* What may come next on the command line, for the shells' completion: one word a line, ":yaml" for a file and ":folder"
 * for a folder, which the shell finds itself. Nothing is ever printed on standard error. */
#include "options_private.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void offer(const char *word, const char *begun)
{
    if (strncmp(word, begun, strlen(begun)) == 0) {
        puts(word);
    }
}

static void offer_commands(const char *begun)
{
    static const char *const others[] = {"help", "--help", "--version"};
    for (int i = 0; command_row(i) != NULL; i++) {
        if (*command_row(i)->summary != '\0') {
            offer(command_row(i)->word, begun);
        }
    }
    for (size_t i = 0; i < sizeof others / sizeof others[0]; i++) {
        offer(others[i], begun);
    }
}

static void offer_options(enum Command command, const char *begun)
{
    for (int i = 0; option_row(i) != NULL; i++) {
        if ((option_row(i)->commands >> command & 1U) != 0) {
            offer(option_row(i)->word, begun);
        }
    }
}

/* The option of this command that a word is; NULL when it is none that takes a value. */
static const struct OptionRow *waiting(enum Command command, const char *word)
{
    for (int i = 0; option_row(i) != NULL; i++) {
        const struct OptionRow *row = option_row(i);
        if ((row->commands >> command & 1U) != 0 && row->value != VALUE_NONE &&
            (strcmp(word, row->word) == 0 || strcmp(word, row->letter) == 0)) {
            return row;
        }
    }
    return NULL;
}

static void offer_value(const struct OptionRow *row, const char *begun)
{
    switch (row->value) {
    case VALUE_FOLDER: puts(":folder"); break;
    case VALUE_FILE: puts(":yaml"); break;
    case VALUE_PERCENT: offer("25%", begun); break;
    case VALUE_NUMBER: offer("2", begun); break;
    case VALUE_FORMAT: offer("json", begun); break;
    case VALUE_LANGUAGE:
        for (int i = 0; *wend_language(i) != '\0'; i++) {
            offer(wend_language(i), begun);
        }
        break;
    case VALUE_HANDS: offer("1", begun), offer("2", begun), offer("3", begun), offer("4", begun); break;
    case VALUE_DATE:
    case VALUE_WHOLE:
    case VALUE_KEY:
    case VALUE_NONE: break;
    }
}

/* Names within the route at hand; of a file that is wrong there are none. */
static void offer_names(const char *path, bool checks, const char *begun)
{
    struct SourceFile source = {.data = NULL};
    if (strcmp(path, "-") != 0 && source_file_read(path, WEND_TEXT_MOST_BYTES, &source)) {
        struct Wend *wend = wend_plan("route", source.data, source.length);
        for (int i = 0; !checks && i < wend_run_count(wend); i++) {
            offer(wend_run_name(wend, i), begun);
        }
        for (int i = 0; checks && i < wend_check_count(wend); i++) {
            offer(wend_check_name(wend, i), begun);
        }
        wend_free(wend);
    }
    free(source.data);
}

static void offer_words(const struct CommandRow *row, int place, const char *file, const char *begun)
{
    if (command_takes_file(row) &&
        (place == 0 || row->most == ANY_NUMBER || (row->command == COMMAND_DIFF && place == 1))) {
        puts(":yaml");
    } else if (row->command == COMMAND_OPTIONS && place == 1) {
        offer_names(file, false, begun);
    } else if (row->command == COMMAND_EXPLAIN && place <= 2) {
        offer_names(file, place == 1, begun);
    } else if (row->command == COMMAND_TABLE && place == 0) {
        for (int i = 0; i < wend_table_count(); i++) {
            offer(wend_table_name(i), begun);
        }
    } else if (row->command == COMMAND_CABLE && place == 0) {
        for (int i = 0; *wend_cable_kind(i) != '\0'; i++) {
            offer(wend_cable_kind(i), begun);
        }
    }
}

int complete_print(char *const *words, int count)
{
    const char *begun = count > 0 ? words[count - 1] : "";
    if (count <= 1 || strcmp(words[0], "help") == 0) {
        offer_commands(begun);
        return 0;
    }
    const struct CommandRow *row = command_find(words[0]);
    if (row == NULL) {
        return 0;
    }
    const char *file = "";
    int place = 0;
    const struct OptionRow *option = NULL;
    for (int i = 1; i < count - 1; i++) {
        if (option != NULL) {
            option = NULL;
        } else if (words[i][0] == '-' && words[i][1] != '\0') {
            option = waiting(row->command, words[i]);
        } else {
            file = place++ == 0 ? words[i] : file;
        }
    }
    if (option != NULL) {
        offer_value(option, begun);
    } else if (begun[0] == '-' && begun[1] != '\0') {
        offer_options(row->command, begun);
    } else {
        offer_words(row, place, file, begun);
    }
    return 0;
}
