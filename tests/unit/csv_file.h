/** Reads a small CSV file of tests/published/ for a test. Any fault in the file fails the running test. */
#ifndef WEND_TEST_CSV_FILE_H
#define WEND_TEST_CSV_FILE_H

#include "base/base.h"

struct CsvFile {
    struct Arena *arena;
    const char *name;
    int rows; /**< without the comment lines and the heads */
    int columns;
    const char **cells; /**< heads first, then row after row */
};

/** Opens `name` under tests/published/. Its first line must be a comment that names the source; csv_close() frees it.
 */
struct CsvFile csv_open(const char *name);
void csv_close(struct CsvFile *file);
const char *csv_text(const struct CsvFile *file, int row, int column);
const char *csv_head(const struct CsvFile *file, int column);
/** The column with that head; fails the test when there is none. */
int csv_column(const struct CsvFile *file, const char *head);
bool csv_blank(const struct CsvFile *file, int row, int column);
/** The cell as a number; fails the test when it is not one. */
double csv_number(const struct CsvFile *file, int row, int column);
/** The row whose cell in `column` is this number, or -1. */
int csv_find(const struct CsvFile *file, int column, double number);
/** Equal but for the last digits that two ways of reading a decimal may leave. */
bool csv_same(double a, double b);

#endif
