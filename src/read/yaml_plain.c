/* The YAML library's own faults in plain words. Its wording is for those who know the grammar, and its place is often
 * the line after the mistake; the line itself mostly shows what was meant. */
#include "tree_private.h"

#include <string.h>

struct Line {
    const char *data;
    size_t length;
    size_t indent;
};

static struct Line line_of(struct Bytes source, int number)
{
    size_t start = source_offset(source, (struct Mark){number, 1});
    struct Line line = {source.data + start, 0, 0};
    while (start + line.length < source.length && line.data[line.length] != '\n' && line.data[line.length] != '\r') {
        line.length++;
    }
    while (line.indent < line.length && line.data[line.indent] == ' ') {
        line.indent++;
    }
    return line;
}

static bool line_says_nothing(const struct Line *line)
{
    return line->indent == line->length || line->data[line->indent] == '#';
}

static char character_at(struct Bytes source, struct Mark mark)
{
    size_t at = source_offset(source, mark);
    if (at >= source.length) {
        return '\0';
    }
    return source.data[at];
}

/* A colon with a space, a tab or the line's end behind it, before byte `end`. */
static bool has_key_colon(const struct Line *line, size_t end)
{
    for (size_t i = 0; i < end && i < line->length; i++) {
        bool last = i + 1 == line->length;
        if (line->data[i] == ':' && (last || line->data[i + 1] == ' ' || line->data[i + 1] == '\t')) {
            return true;
        }
    }
    return false;
}

/* A line that should hold "key: value" and does not. */
static void report_line_without_key(struct Diag *diag, struct Bytes source, int number)
{
    struct Line line = line_of(source, number);
    const char *colon = line.length > 0 ? memchr(line.data, ':', line.length) : NULL;
    if (colon != NULL) {
        int column = 1;
        for (const char *at = line.data; at < colon; at++) {
            column += ((unsigned char)*at & 0xC0) != 0x80;
        }
        diag_report(diag, MSG_COLON_SPACE, (struct Mark){number, column}, 1, DIAG_NO_WORDS);
    } else {
        diag_report(diag, MSG_LINE_WITHOUT_COLON, (struct Mark){number, (int)line.indent + 1}, 1, DIAG_NO_WORDS);
    }
}

/* "mapping values are not allowed in this context" has four usual causes. */
static void report_colon(struct Diag *diag, struct Bytes source, struct Mark mark)
{
    struct Line line = line_of(source, mark.line);
    size_t colon = source_offset(source, mark) - source_offset(source, (struct Mark){mark.line, 1});
    if (has_key_colon(&line, colon)) {
        diag_report(diag, MSG_SECOND_COLON, mark, 1, DIAG_NO_WORDS);
        return;
    }
    int above = mark.line - 1;
    struct Line before = line_of(source, above);
    while (above > 1 && line_says_nothing(&before)) {
        before = line_of(source, --above);
    }
    if (above >= 1 && !line_says_nothing(&before) && !has_key_colon(&before, before.length)) {
        report_line_without_key(diag, source, above);
    } else {
        diag_report(diag, MSG_INDENT_DEEPER, (struct Mark){mark.line, (int)line.indent + 1}, 1, DIAG_NO_WORDS);
    }
}

/* "did not find expected key": a wrong indent, a list item among keys, or text behind a closed value. */
static void report_no_key(struct Diag *diag, struct Bytes source, struct Mark mark)
{
    struct Line line = line_of(source, mark.line);
    if (mark.column > (int)line.indent + 1) {
        diag_report(diag, MSG_TEXT_AFTER_VALUE, mark, 1, DIAG_NO_WORDS);
    } else if (character_at(source, mark) == ':') {
        diag_report(diag, MSG_KEY_EMPTY, mark, 1, DIAG_NO_WORDS);
    } else if (character_at(source, mark) == '-') {
        diag_report(diag, MSG_ITEM_AMONG_KEYS, mark, 1, DIAG_NO_WORDS);
    } else {
        diag_report(diag, MSG_INDENT_UNEVEN, mark, 1, DIAG_NO_WORDS);
    }
}

static void report_bad_start(struct Diag *diag, struct Bytes source, struct Mark mark)
{
    char start[2] = {character_at(source, mark), '\0'};
    if (start[0] == '\t') {
        diag_report(diag, MSG_TAB_INDENT, mark, 1, DIAG_NO_WORDS);
    } else {
        diag_report(diag, MSG_CHARACTER_START, mark, 1, DIAG_WORDS(start));
    }
}

static void report_bracket(struct Diag *diag, struct Bytes source, const struct PlainFault *fault)
{
    char bracket[2] = {character_at(source, fault->context_mark), '\0'};
    if (fault->problem_mark.line == fault->context_mark.line) {
        diag_report(diag, MSG_COMMA_MISSING, fault->problem_mark, 1, DIAG_WORDS(bracket));
    } else {
        diag_report(diag, MSG_BRACKET_OPEN, fault->context_mark, 1, DIAG_WORDS(bracket));
    }
}

static void report_no_value(struct Diag *diag, struct Bytes source, const struct PlainFault *fault)
{
    char start[2] = {character_at(source, fault->problem_mark), '\0'};
    if (start[0] == '\0' && fault->bracket_mark.line > 0) { /* the file ends first */
        char bracket[2] = {character_at(source, fault->bracket_mark), '\0'};
        diag_report(diag, MSG_BRACKET_OPEN, fault->bracket_mark, 1, DIAG_WORDS(bracket));
    } else {
        diag_report(diag, MSG_CHARACTER_START, fault->problem_mark, 1, DIAG_WORDS(start));
    }
}

static bool holds(const char *text, const char *part)
{
    return text != NULL && strstr(text, part) != NULL;
}

static bool report_scanner(struct Diag *diag, struct Bytes source, const struct PlainFault *fault)
{
    if (holds(fault->problem, "cannot start any token")) {
        report_bad_start(diag, source, fault->problem_mark);
    } else if (holds(fault->problem, "tab character")) {
        diag_report(diag, MSG_TAB_INDENT, fault->problem_mark, 1, DIAG_NO_WORDS);
    } else if (holds(fault->problem, "mapping values are not allowed")) {
        report_colon(diag, source, fault->problem_mark);
    } else if (holds(fault->context, "simple key")) {
        report_line_without_key(diag, source, fault->context_mark.line);
    } else if (holds(fault->problem, "sequence entries are not allowed")) {
        diag_report(diag, MSG_ITEM_ON_KEY_LINE, fault->problem_mark, 1, DIAG_NO_WORDS);
    } else if (holds(fault->context, "scanning a quoted scalar")) {
        diag_report(diag, MSG_QUOTE_OPEN, fault->context_mark, 1, DIAG_NO_WORDS);
    } else if (holds(fault->context, "parsing a quoted scalar")) {
        diag_report(diag, MSG_ESCAPE_UNKNOWN, fault->problem_mark, 1, DIAG_NO_WORDS);
    } else if (holds(fault->context, "an alias") || holds(fault->context, "an anchor")) {
        report_bad_start(diag, source, fault->context_mark);
    } else if (holds(fault->context, "a tag") || holds(fault->problem, "tag handle")) {
        diag_report(diag, MSG_TAG_REFUSED, fault->problem_mark, 1, DIAG_WORDS("!"));
    } else {
        return false;
    }
    return true;
}

void plain_report(struct Diag *diag, struct Bytes source, const struct PlainFault *fault)
{
    if (report_scanner(diag, source, fault)) {
        return;
    }
    if (holds(fault->problem, "did not find expected key")) {
        report_no_key(diag, source, fault->problem_mark);
    } else if (holds(fault->problem, "'-' indicator")) {
        bool below_dash = fault->problem_mark.column == fault->context_mark.column;
        diag_report(diag, below_dash ? MSG_KEY_AMONG_ITEMS : MSG_INDENT_UNEVEN, fault->problem_mark, 1, DIAG_NO_WORDS);
    } else if (holds(fault->context, "flow sequence") || holds(fault->context, "flow mapping")) {
        report_bracket(diag, source, fault);
    } else if (holds(fault->problem, "node content")) {
        report_no_value(diag, source, fault);
    } else {
        diag_report(diag, MSG_YAML_FAULT, fault->problem_mark, 1,
                    DIAG_WORDS(fault->problem != NULL ? fault->problem : "no reason is known"));
    }
}
