/** Cells of a CSV file (RFC 4180) that no spreadsheet runs as a formula. */
#ifndef WEND_CSV_PRIVATE_H
#define WEND_CSV_PRIVATE_H

#include "base/base.h"
#include "takeoff/parts.h"

/** One text cell: cleaned to one line, quoted where it must be, defused where it begins like a formula. */
void csv_out_text(struct TextBuilder *csv, const char *raw);
/** One number cell, nine significant digits at most. */
void csv_out_number(struct TextBuilder *csv, double value);
/** The rows once more with one column after the others: `head` in the first row, `cell` in each that follows. No cell
 * holds a line end, so that each line is a row. */
struct Bytes csv_out_column(struct Arena *arena, struct TextBuilder *csv, const char *head, const char *cell);
/** "Total of 3 of 4 lines": what stands beside a total. */
const char *csv_out_total_words(struct Arena *arena, const struct PartsTotal *total, int lines);
/** Four cells of a line behind others: price, its unit, currency and total; empty when `price` is NULL or not
 * known. `totals` are those that price->currency points into. */
void csv_out_price(struct TextBuilder *csv, const struct PartPrice *price, const struct PartsTotal *totals);

#endif
