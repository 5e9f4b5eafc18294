/* Cells of a CSV file. Spreadsheets run a cell that begins like a formula, and names in it are the surveyor's: such
 * cells are defused. */
#include "csv_private.h"

#include "documents/shown_private.h"

#include <string.h>

enum { QUANTITY_DIGITS = 9 };

/* Characters that show nothing or a blank at the start of a cell; spreadsheets look behind some of them. */
static bool is_blank(unsigned long code)
{
    return code <= 0x20 || code == 0xA0 || code == 0xAD || (code >= 0x2000 && code <= 0x200F) ||
           (code >= 0x2028 && code <= 0x202F) || (code >= 0x2060 && code <= 0x206F) || code == 0x3000 || code == 0xFEFF;
}

static bool begins_formula(unsigned long code)
{
    switch (code) {
    case '=':
    case '+':
    case '-':
    case '@':
    case 0xFF1D: /* the full-width forms of the same four */
    case 0xFF0B:
    case 0xFF0D:
    case 0xFF20: return true;
    default: return false;
    }
}

/* Where a spreadsheet set to semicolons would begin a new cell, the same danger begins again. */
void csv_out_text(struct TextBuilder *csv, const char *raw)
{
    const char *text = shown_text(csv->arena, raw); /* one line, nothing that turns the reading direction */
    size_t length = strlen(text);
    bool quote = strpbrk(text, ",\";") != NULL || text[0] == ' ' || (length > 0 && text[length - 1] == ' ');
    bool at_start = true;
    text_add(csv, quote ? "\"" : "");
    for (size_t at = 0; at < length;) {
        size_t bytes = (size_t)utf8_length(text + at, length - at);
        unsigned long code = utf8_code(text + at);
        if (at_start && begins_formula(code)) {
            text_add_char(csv, '\'');
        }
        at_start = code == ';' || (at_start && is_blank(code));
        text_add(csv, code == '"' ? "\"" : ""); /* a quote is doubled */
        text_add_bytes(csv, text + at, bytes);
        at += bytes;
    }
    text_add(csv, quote ? "\"" : "");
}

void csv_out_number(struct TextBuilder *csv, double value)
{
    text_add(csv, number_significant(csv->arena, value, QUANTITY_DIGITS));
}

const char *csv_out_total_words(struct Arena *arena, const struct PartsTotal *total, int lines)
{
    const bool in_coin = *total->coin_text != '\0';
    return shown_said(arena, say(arena, SAY_LIST_TOTAL, say_count(total->lines), say_count(lines),
                                 say_part(in_coin ? say(arena, SAY_TOTAL_IN_COIN, say_name(total->coin_text)) : NULL)));
}

void csv_out_price(struct TextBuilder *csv, const struct PartPrice *price, const struct PartsTotal *totals)
{
    if (price == NULL || !price->known) {
        text_add(csv, ",,,,");
        return;
    }
    text_print(csv, ",%s,", price->each_text);
    csv_out_text(csv, price->unit);
    text_print(csv, ",%s,%s", totals[price->currency].currency, price->total_text);
}

struct Bytes csv_out_column(struct Arena *arena, struct TextBuilder *csv, const char *head, const char *cell)
{
    struct TextBuilder wider = text_builder(arena);
    const char *more = head;
    for (const char *at = text_done(csv); *at != '\0';) {
        const char *end = strstr(at, "\r\n");
        const size_t length = end != NULL ? (size_t)(end - at) : strlen(at);
        text_add_bytes(&wider, at, length);
        text_print(&wider, ",%s\r\n", more);
        more = cell;
        at += length + (end != NULL ? 2 : 0);
    }
    const char *text = text_done(&wider);
    return csv->failed || wider.failed || arena_failed(arena) ? (struct Bytes){NULL, 0}
                                                              : (struct Bytes){text, wider.length};
}
