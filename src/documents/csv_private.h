/** Cells of a CSV file (RFC 4180) that no spreadsheet runs as a formula. */
#ifndef WEND_CSV_PRIVATE_H
#define WEND_CSV_PRIVATE_H

#include "wend/base.h"

/** One text cell: cleaned to one line, quoted where it must be, defused where it begins like a formula. */
void csv_text(struct TextBuilder *csv, const char *raw);
/** One number cell, nine significant digits at most. */
void csv_number(struct TextBuilder *csv, double value);

#endif
