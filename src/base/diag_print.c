/* Faults as text for a terminal: one line that editors can jump to, then the line of the file with the fault
 * underlined. Nothing from the file is passed on raw that a terminal could act on. */
#include "diag.h"

#include <string.h>

#define WORD_NAME "--set" /* what such a word follows */

enum {
    WINDOW_CHARACTERS = 100, /* of a line longer than that only a window is shown */
    WINDOW_BEFORE = 40       /* characters shown before the fault when the line is cut on the left */
};

/* The bytes of one line, found by the same line breaks as the YAML reader: LF, CR LF, lone CR. */
static bool find_line(struct Bytes source, int line, struct Bytes *out)
{
    size_t at = 0;
    if (source.length >= 3 && memcmp(source.data, "\xEF\xBB\xBF", 3) == 0) {
        at = 3; /* a byte order mark has no column */
    }
    for (int number = 1; at < source.length; number++) {
        size_t end = at;
        while (end < source.length && source.data[end] != '\n' && source.data[end] != '\r') {
            end++;
        }
        if (number == line) {
            *out = (struct Bytes){source.data + at, end - at};
            return true;
        }
        if (end + 1 < source.length && source.data[end] == '\r' && source.data[end + 1] == '\n') {
            end++;
        }
        at = end + 1;
    }
    return false;
}

static bool shown_as_is(unsigned long code)
{
    return code >= 0x20 && !text_code_refused(code);
}

static size_t step(struct Bytes line, size_t at)
{
    int bytes = utf8_length(line.data + at, line.length - at);
    return bytes > 0 ? (size_t)bytes : 1;
}

static size_t count_characters(struct Bytes line)
{
    size_t count = 0;
    for (size_t at = 0; at < line.length; at += step(line, at)) {
        count++;
    }
    return count;
}

/* One character of the file takes one column here, so that the underline stays below it. */
static void add_window(struct TextBuilder *out, struct Bytes line, size_t from, size_t to)
{
    size_t number = 0;
    for (size_t at = 0; at < line.length && number < to; number++) {
        size_t bytes = step(line, at);
        if (number >= from) {
            bool good = utf8_length(line.data + at, line.length - at) > 0;
            unsigned long code = good ? utf8_code(line.data + at) : 0;
            if (code == '\t') {
                text_add_char(out, ' ');
            } else if (good && shown_as_is(code)) {
                text_add_bytes(out, line.data + at, bytes);
            } else {
                text_add_char(out, '?');
            }
        }
        at += bytes;
    }
}

static void add_repeated(struct TextBuilder *out, char character, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        text_add_char(out, character);
    }
}

/* The fault's line, which is a line of the file or a word beside it, with the fault underlined. */
static void add_excerpt(struct TextBuilder *out, const char *lead, struct Bytes line, const struct Diagnostic *fault)
{
    size_t length = count_characters(line);
    size_t column = fault->mark.column > 0 ? (size_t)fault->mark.column - 1 : 0;
    if (column > length) {
        column = length;
    }
    size_t from = 0;
    size_t to = length;
    if (length > WINDOW_CHARACTERS) {
        from = column > WINDOW_BEFORE ? column - WINDOW_BEFORE : 0;
        to = from + WINDOW_CHARACTERS < length ? from + WINDOW_CHARACTERS : length;
    }
    text_print(out, "%5s |", lead);
    if (length > 0) {
        text_add(out, from > 0 ? " ..." : " ");
        add_window(out, line, from, to);
        text_add(out, to < length ? "..." : "");
    }
    text_add(out, "\n      | ");
    add_repeated(out, ' ', column - from + (from > 0 ? 3 : 0));
    text_add_char(out, '^');
    size_t room = to > column ? to - column : 1;
    size_t width = (size_t)fault->width < room ? (size_t)fault->width : room;
    add_repeated(out, '~', width > 0 ? width - 1 : 0);
    text_add_char(out, '\n');
}

const char *diag_print(struct Diag *diag, struct Arena *arena, const char *file, struct Bytes source)
{
    struct TextBuilder out = text_builder(arena);
    struct Bytes name = {file, strlen(file)};
    for (size_t i = 0; i < diag_count(diag); i++) {
        const struct Diagnostic *fault = diag_at(diag, i);
        const char *word = diag_word_at(diag, fault->mark);
        if (word != NULL) {
            text_print(&out, "%s:%d", WORD_NAME, fault->mark.column);
        } else {
            add_window(&out, name, 0, name.length);
        }
        if (word == NULL && fault->mark.line > 0) {
            text_print(&out, ":%d:%d", fault->mark.line, fault->mark.column);
        }
        text_add(&out, fault->severity == DIAG_ERROR ? ": error: " : ": warning: ");
        text_add(&out, fault->text);
        text_print(&out, " [%s]\n", diag_name(fault->code));
        struct Bytes line;
        if (word != NULL) {
            add_excerpt(&out, "", (struct Bytes){word, strlen(word)}, fault);
        } else if (fault->mark.line > 0 && source.data != NULL && find_line(source, fault->mark.line, &line)) {
            add_excerpt(&out, arena_print(arena, "%d", fault->mark.line), line, fault);
        }
    }
    return text_done(&out);
}
