/* The CSV reader of the tests: comment lines first, one line of heads, quotes where a cell has a comma. */
#include "csv_file.h"

#include <check.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { FILE_BYTES_MOST = 64 * 1024, CELLS_MOST = 4096, CELL_BYTES_MOST = 1024 };

static char *whole_file(const char *name, struct Arena *arena)
{
    FILE *stream = fopen(arena_print(arena, "%s/published/%s", TESTS_FOLDER, name), "rb");
    ck_assert_msg(stream != NULL, "%s cannot be opened", name);
    char *bytes = arena_alloc(arena, FILE_BYTES_MOST + 1);
    ck_assert_ptr_nonnull(bytes);
    const size_t length = fread(bytes, 1, FILE_BYTES_MOST + 1, stream);
    ck_assert_msg(length > 0 && length <= FILE_BYTES_MOST, "%s is empty or too long", name);
    ck_assert_int_eq(ferror(stream), 0);
    ck_assert_int_eq(fclose(stream), 0);
    ck_assert_msg(bytes[length - 1] == '\n', "%s: the last line does not end", name);
    bytes[length] = '\0';
    return bytes;
}

/* Takes one cell; *at is left on the comma or line end after it. */
static const char *take_cell(struct Arena *arena, const char **at)
{
    char cell[CELL_BYTES_MOST];
    size_t length = 0;
    const bool quoted = **at == '"';
    const char *from = *at + (quoted ? 1 : 0);
    while (*from != '\0' && (quoted || (*from != ',' && *from != '\n'))) {
        if (quoted && *from == '"') {
            if (from[1] != '"') {
                from++;
                break;
            }
            from++;
        }
        ck_assert_uint_lt(length, sizeof cell);
        cell[length++] = *from++;
    }
    ck_assert_msg(*from == ',' || *from == '\n', "text after a closing quote");
    *at = from;
    return arena_text(arena, cell, length);
}

struct CsvFile csv_open(const char *name)
{
    struct CsvFile file = {.arena = arena_new(), .name = name, .rows = -1};
    ck_assert_ptr_nonnull(file.arena);
    file.cells = arena_array(file.arena, CELLS_MOST, sizeof *file.cells);
    ck_assert_ptr_nonnull(file.cells);
    const char *at = whole_file(name, file.arena);
    ck_assert_msg(strncmp(at, "# ", 2) == 0, "%s does not open with its source", name);
    while (*at == '#') {
        at = strchr(at, '\n') + 1;
    }
    int cells = 0;
    while (*at != '\0') {
        int columns = 0;
        for (bool more = true; more; at++) {
            ck_assert_int_lt(cells, CELLS_MOST);
            file.cells[cells++] = take_cell(file.arena, &at);
            columns++;
            more = *at == ',';
        }
        file.rows++;
        if (file.rows == 0) {
            file.columns = columns;
        }
        ck_assert_msg(columns == file.columns, "%s: row %d has %d cells", name, file.rows, columns);
    }
    ck_assert_msg(file.rows > 0, "%s has no rows", name);
    ck_assert(!arena_failed(file.arena));
    return file;
}

void csv_close(struct CsvFile *file)
{
    arena_free(file->arena);
    file->arena = NULL;
}

const char *csv_text(const struct CsvFile *file, int row, int column)
{
    ck_assert(row >= 0 && row < file->rows && column >= 0 && column < file->columns);
    return file->cells[(row + 1) * file->columns + column];
}

const char *csv_head(const struct CsvFile *file, int column)
{
    ck_assert(column >= 0 && column < file->columns);
    return file->cells[column];
}

int csv_column(const struct CsvFile *file, const char *head)
{
    for (int column = 0; column < file->columns; column++) {
        if (text_same(csv_head(file, column), head)) {
            return column;
        }
    }
    ck_abort_msg("%s has no column %s", file->name, head);
    return -1;
}

bool csv_blank(const struct CsvFile *file, int row, int column)
{
    return csv_text(file, row, column)[0] == '\0';
}

double csv_number(const struct CsvFile *file, int row, int column)
{
    const char *text = csv_text(file, row, column);
    double value = 0;
    ck_assert_msg(number_read(text, strlen(text), &value), "%s: \"%s\" is not a number", file->name, text);
    return value;
}

int csv_find(const struct CsvFile *file, int column, double number)
{
    for (int row = 0; row < file->rows; row++) {
        if (csv_same(csv_number(file, row, column), number)) {
            return row;
        }
    }
    return -1;
}

bool csv_same(double a, double b)
{
    return isfinite(a) && isfinite(b) && fabs(a - b) <= 1e-12 * fmax(1.0, fmax(fabs(a), fabs(b)));
}
