/* What is refused before a route file is parsed at all: files too large, other encodings than UTF-8, characters that
 * would show something else than the file says, and directives. Done on the bytes because the YAML library gives no
 * line for a bad byte, takes UTF-16 without a word, and slows down with the square of the number of %TAG lines. */
#include "read.h"
#include "tree_private.h"

#include <stdio.h>
#include <string.h>

struct Scan {
    struct Bytes source;
    size_t at;
    struct Mark mark;
    int told_line; /* one report a line: the rest of it is likely the same mistake */
    bool refused;
    struct Diag *diag;
};

size_t source_offset(struct Bytes source, struct Mark mark)
{
    size_t at = source.length >= 3 && memcmp(source.data, "\xEF\xBB\xBF", 3) == 0 ? 3 : 0;
    for (int line = 1; line < mark.line && at < source.length; at++) {
        bool pair = source.data[at] == '\r' && at + 1 < source.length && source.data[at + 1] == '\n';
        if ((source.data[at] == '\n' || source.data[at] == '\r') && !pair) {
            line++;
        }
    }
    for (int column = 1; column < mark.column && at < source.length; column++) {
        int bytes = utf8_length(source.data + at, source.length - at);
        at += bytes > 0 ? (size_t)bytes : 1;
    }
    return at;
}

static void refuse(struct Scan *scan, enum DiagCode code, const char *word)
{
    scan->refused = true;
    if (scan->told_line == scan->mark.line) {
        return;
    }
    scan->told_line = scan->mark.line;
    diag_report(scan->diag, code, scan->mark, 1, word != NULL ? DIAG_WORDS(word) : DIAG_NO_WORDS);
}

/* UTF-16 and UTF-32, with or without a byte order mark: in a route file every other byte would be zero. */
static const char *other_encoding(struct Bytes source)
{
    const unsigned char *b = (const unsigned char *)source.data;
    if (source.length < 2) {
        return NULL;
    }
    bool little = b[0] == 0xFF && b[1] == 0xFE;
    bool big = b[0] == 0xFE && b[1] == 0xFF;
    if (source.length >= 4 && ((little && b[2] == 0 && b[3] == 0) || (b[0] == 0 && b[1] == 0 && b[2] == 0xFE))) {
        return "UTF-32";
    }
    if (little || big || (b[0] != 0 && b[1] == 0) || (b[0] == 0 && b[1] != 0)) {
        return "UTF-16";
    }
    return NULL;
}

/* One that text_code_refused() names. */
static void refuse_code(struct Scan *scan, unsigned long code)
{
    char name[16];
    snprintf(name, sizeof name, "U+%04lX", code);
    if (text_code_turns(code)) {
        refuse(scan, MSG_FILE_BIDI, name);
    } else if (code == 0x85 || code == 0x2028 || code == 0x2029) {
        refuse(scan, MSG_FILE_LINE_BREAK, name);
    } else if (code == 0xFEFF) {
        refuse(scan, MSG_FILE_BOM_INSIDE, NULL);
    } else if (text_code_invisible(code)) {
        refuse(scan, MSG_FILE_INVISIBLE, name);
    } else {
        refuse(scan, MSG_FILE_CONTROL, name);
    }
}

/* %YAML 1.1 and 1.2 are the only directives taken. */
static void check_directive(struct Scan *scan)
{
    const char *line = scan->source.data + scan->at;
    size_t length = 0;
    while (scan->at + length < scan->source.length && line[length] != '\n' && line[length] != '\r') {
        length++;
    }
    bool version = length >= 6 && memcmp(line, "%YAML ", 6) == 0;
    if (!version) {
        refuse(scan, MSG_FILE_DIRECTIVE, NULL);
        return;
    }
    size_t end = 6;
    while (end < length && line[end] != ' ' && line[end] != '\t' && line[end] != '#') {
        end++;
    }
    if (end != 9 || (memcmp(line + 6, "1.1", 3) != 0 && memcmp(line + 6, "1.2", 3) != 0)) {
        refuse(scan, MSG_FILE_YAML_VERSION, NULL);
    }
}

/* Over the rest of a line, or as much of it as nothing can be wrong with: nearly all. */
static void skip_plain(struct Scan *scan)
{
    const char *const data = scan->source.data;
    size_t at = scan->at;
    while (at < scan->source.length && data[at] >= ' ' && data[at] <= '~' && data[at] != '%') {
        at++;
    }
    scan->mark.column += (int)(at - scan->at);
    scan->at = at;
}

static void scan_all(struct Scan *scan)
{
    for (skip_plain(scan); scan->at < scan->source.length; skip_plain(scan)) {
        int bytes = utf8_length(scan->source.data + scan->at, scan->source.length - scan->at);
        if (bytes == 0) {
            char byte[8];
            snprintf(byte, sizeof byte, "%02X", (unsigned)(unsigned char)scan->source.data[scan->at]);
            refuse(scan, MSG_FILE_NOT_UTF8, byte);
            return; /* what follows may be anything */
        }
        unsigned long code = utf8_code(scan->source.data + scan->at);
        if (code == '%' && scan->mark.column == 1) {
            check_directive(scan);
        } else if (text_code_refused(code)) {
            refuse_code(scan, code);
        }
        bool pair = code == '\r' && scan->at + 1 < scan->source.length && scan->source.data[scan->at + 1] == '\n';
        scan->at += (size_t)bytes;
        scan->mark.column++;
        if ((code == '\n' || code == '\r') && !pair) {
            scan->mark.line++;
            scan->mark.column = 1;
        }
    }
}

bool source_check(struct Diag *diag, struct Bytes source)
{
    struct Scan scan = {.source = source, .mark = {1, 1}, .diag = diag};
    if (source.length > READ_LIMIT_BYTES) {
        diag_report(diag, MSG_FILE_TOO_LARGE, (struct Mark){0, 0}, 0, DIAG_NO_WORDS);
        return false;
    }
    const char *encoding = other_encoding(source);
    if (encoding != NULL) {
        refuse(&scan, MSG_FILE_ENCODING, encoding);
        return false;
    }
    if (source.length >= 3 && memcmp(source.data, "\xEF\xBB\xBF", 3) == 0) {
        scan.at = 3;
    }
    scan_all(&scan);
    return !scan.refused;
}
