/** A table of cells read strictly by RFC 4180; for the readers of this folder. */
#ifndef WEND_CSV_ROWS_PRIVATE_H
#define WEND_CSV_ROWS_PRIVATE_H

#include "base/base.h"
#include "base/diag.h"

struct CsvCell {
    struct Mark mark; /**< its first character, the quote of a quoted one */
    int width;        /**< characters on its first line, at least 1 */
    const char *text; /**< without quotes, without blanks around it; NUL-terminated, "" when empty */
};

struct CsvRow {
    struct Mark mark;
    int count;
    const struct CsvCell *cells;
    bool spoilt; /**< a fault in it was reported: its cells say nothing */
};

struct CsvRows {
    int count;
    const struct CsvRow *rows; /**< lines without any character are left out */
};

/** Divides `source` into rows; faults of its form go to `diag`. False when memory failed or no row can be trusted: not
 * UTF-8, or a quote that is never closed. */
bool csv_rows(struct Arena *arena, struct Diag *diag, struct Bytes source, struct CsvRows *out);

#endif
