/* Cells and rows of a CSV file by RFC 4180: commas, quotes that are doubled within quotes, line breaks allowed there.
 * Line ends may be CR LF or LF. What the standard does not allow is reported, with its place, and never guessed at. */
#include "csv_rows_private.h"

#include "tree_private.h"

#include <stdio.h>
#include <string.h>

struct CsvWalk {
    struct Arena *arena;
    struct Diag *diag;
    struct Bytes source;
    size_t at;
    struct Mark mark;
    struct CsvCell *cells; /* of the row at hand, grown as needed */
    int cell_count, cell_room;
    struct CsvRow *rows;
    int row_count, row_room;
    bool spoilt; /* the row at hand */
    bool lost;   /* nothing after this can be trusted */
};

/* Every byte is UTF-8 and can be printed. One report, because the rest is likely the same mistake. */
static bool bytes_good(struct Diag *diag, struct Bytes source)
{
    struct Mark mark = {1, 1};
    for (size_t at = 0; at < source.length;) {
        const int bytes = utf8_length(source.data + at, source.length - at);
        if (bytes == 0) {
            diag_report(diag, MSG_PRICES_ENCODING, mark, 1, DIAG_NO_WORDS);
            return false;
        }
        const unsigned long code = utf8_code(source.data + at);
        const bool pair = code == '\r' && at + 1 < source.length && source.data[at + 1] == '\n';
        if ((text_code_refused(code) && !(at == 0 && code == 0xFEFF)) || (code == '\r' && !pair)) {
            char name[16];
            snprintf(name, sizeof name, "U+%04lX", code);
            diag_report(diag, MSG_PRICES_CONTROL, mark, 1, DIAG_WORDS(name));
            return false;
        }
        at += (size_t)bytes;
        mark.column += at == 3 && code == 0xFEFF ? 0 : 1; /* a byte order mark has no column */
        if (code == '\n') {
            mark = (struct Mark){mark.line + 1, 1};
        }
    }
    return true;
}

static bool ended(const struct CsvWalk *walk)
{
    return walk->at >= walk->source.length;
}

static char here(const struct CsvWalk *walk)
{
    if (ended(walk)) {
        return '\0';
    }
    return walk->source.data[walk->at];
}

/* One character on; a line break begins a new line. */
static void step(struct CsvWalk *walk)
{
    const int bytes = utf8_length(walk->source.data + walk->at, walk->source.length - walk->at);
    const bool broken = here(walk) == '\n';
    walk->at += (size_t)bytes;
    walk->mark = broken ? (struct Mark){walk->mark.line + 1, 1} : (struct Mark){walk->mark.line, walk->mark.column + 1};
}

static void fault(struct CsvWalk *walk, enum DiagCode code, struct Mark mark)
{
    if (!walk->spoilt) {
        diag_report(walk->diag, code, mark, 1, DIAG_NO_WORDS);
    }
    walk->spoilt = true;
}

static bool at_end_of_cell(const struct CsvWalk *walk)
{
    return ended(walk) || here(walk) == ',' || here(walk) == '\n' || here(walk) == '\r';
}

static const char *trimmed(struct Arena *arena, const char *text, size_t length)
{
    while (length > 0 && (*text == ' ' || *text == '\t')) {
        text++;
        length--;
    }
    while (length > 0 && (text[length - 1] == ' ' || text[length - 1] == '\t')) {
        length--;
    }
    return arena_text(arena, text, length);
}

/* The text between quotes; doubled ones stand for one. The walk is behind the closing quote then. */
static const char *read_quoted(struct CsvWalk *walk)
{
    const struct Mark open = walk->mark;
    struct TextBuilder text = text_builder(walk->arena);
    for (step(walk); !ended(walk);) {
        const size_t from = walk->at;
        const bool quote = here(walk) == '"';
        step(walk);
        if (quote && here(walk) != '"') {
            return trimmed(walk->arena, text_done(&text), text.length);
        }
        text_add_bytes(&text, walk->source.data + from, walk->at - from);
        if (quote) {
            step(walk);
        }
    }
    fault(walk, MSG_PRICES_QUOTE_OPEN, open);
    walk->lost = true;
    return "";
}

static const char *read_plain(struct CsvWalk *walk)
{
    const size_t from = walk->at;
    while (!at_end_of_cell(walk)) {
        if (here(walk) == '"') {
            fault(walk, MSG_PRICES_QUOTE_INSIDE, walk->mark);
        }
        step(walk);
    }
    return trimmed(walk->arena, walk->source.data + from, walk->at - from);
}

/* Room for one more at the end of an array that is doubled when full; NULL, and the old one kept, without memory. */
static void *grown(struct Arena *arena, void *array, int count, int *room, size_t size)
{
    if (count < *room) {
        return array;
    }
    const int larger = *room > 0 ? 2 * *room : 8;
    void *moved = arena_array(arena, (size_t)larger, size);
    if (moved != NULL && count > 0) {
        memcpy(moved, array, (size_t)count * size);
    }
    *room = moved != NULL ? larger : *room;
    return moved;
}

static bool read_cell(struct CsvWalk *walk)
{
    struct CsvCell cell = {.mark = walk->mark};
    cell.text = here(walk) == '"' ? read_quoted(walk) : read_plain(walk);
    while (!at_end_of_cell(walk)) {
        fault(walk, MSG_PRICES_QUOTE_AFTER, walk->mark);
        step(walk);
    }
    const int width = walk->mark.line == cell.mark.line ? walk->mark.column - cell.mark.column : 1;
    cell.width = width > 1 ? width : 1;
    struct CsvCell *cells = grown(walk->arena, walk->cells, walk->cell_count, &walk->cell_room, sizeof *cells);
    if (cells == NULL) {
        return false;
    }
    walk->cells = cells;
    walk->cells[walk->cell_count++] = cell;
    return true;
}

static bool read_row(struct CsvWalk *walk)
{
    struct CsvRow row = {.mark = walk->mark};
    walk->cell_count = 0;
    walk->spoilt = false;
    bool more = true;
    while (more) {
        if (!read_cell(walk)) {
            return false;
        }
        more = here(walk) == ',';
        if (more) {
            step(walk);
        }
    }
    while (here(walk) == '\r' || here(walk) == '\n') {
        const bool last = here(walk) == '\n';
        step(walk);
        if (last) {
            break;
        }
    }
    if (walk->cell_count == 1 && *walk->cells[0].text == '\0' && !walk->spoilt) {
        return true; /* an empty line */
    }
    struct CsvCell *cells = arena_array(walk->arena, (size_t)walk->cell_count, sizeof *cells);
    struct CsvRow *rows = grown(walk->arena, walk->rows, walk->row_count, &walk->row_room, sizeof *rows);
    if (cells == NULL || rows == NULL) {
        return false;
    }
    memcpy(cells, walk->cells, (size_t)walk->cell_count * sizeof *cells);
    row.cells = cells;
    row.count = walk->cell_count;
    row.spoilt = walk->spoilt;
    walk->rows = rows;
    walk->rows[walk->row_count++] = row;
    return true;
}

bool csv_rows(struct Arena *arena, struct Diag *diag, struct Bytes source, struct CsvRows *out)
{
    struct CsvWalk walk = {.arena = arena, .diag = diag, .source = source, .mark = {1, 1}};
    if (!bytes_good(diag, source)) {
        return false;
    }
    if (source.length >= 3 && memcmp(source.data, "\xEF\xBB\xBF", 3) == 0) {
        walk.at = 3;
    }
    while (!ended(&walk) && !walk.lost) {
        if (!read_row(&walk)) {
            return false;
        }
    }
    *out = (struct CsvRows){walk.row_count, walk.rows};
    return !walk.lost && !arena_failed(arena);
}
