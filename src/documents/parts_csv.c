/* The parts list as RFC 4180: what a wholesaler's counter types in or a spreadsheet opens.
 *
 * Every row has every column. A row with a line number is an article; a row without one is a remark on what the list
 * does not count, in the note column, so that whoever orders from the file alone is still told.
 * Spreadsheets run a cell that begins like a formula, and names in it are the surveyor's: such cells are defused. */
#include "wend/documents.h"

#include "shown_private.h"

#include <string.h>

enum { QUANTITY_DIGITS = 9 };

static const char head[] = "line,quantity,unit,description,standard,for,note,needed,pack,packs,length-m,code\r\n";

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
static void add_text(struct TextBuilder *csv, const char *raw)
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

static void add_number(struct TextBuilder *csv, double value)
{
    text_add(csv, number_significant(csv->arena, value, QUANTITY_DIGITS));
}

static void add_part(struct TextBuilder *csv, int line, const struct Part *part)
{
    text_print(csv, "%d,", line);
    add_number(csv, part->quantity);
    const char *const texts[] = {part->unit, part->description, part->standard, part->use, part->note};
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        text_add_char(csv, ',');
        add_text(csv, texts[i]);
    }
    text_add_char(csv, ',');
    add_number(csv, part->needed);
    text_add_char(csv, ',');
    if (part->pack > 0) {
        text_print(csv, "%d,%d,", part->pack, part->packs);
    } else {
        text_add(csv, ",,");
    }
    if (part->length_m > 0) {
        add_number(csv, part->length_m);
    }
    text_add_char(csv, ',');
    add_text(csv, part->code);
    text_add(csv, "\r\n");
}

struct Bytes document_parts_csv(struct Arena *arena, const struct PartsList *parts)
{
    struct TextBuilder csv = text_builder(arena);
    text_add(&csv, head);
    for (int i = 0; i < parts->count; i++) {
        add_part(&csv, i + 1, &parts->parts[i]);
    }
    for (int i = 0; i < parts->note_count; i++) {
        text_add(&csv, ",,,,,,");
        add_text(&csv, parts->notes[i]);
        text_add(&csv, ",,,,,\r\n");
    }
    const char *text = text_done(&csv);
    if (csv.failed || arena_failed(arena)) {
        return (struct Bytes){NULL, 0};
    }
    return (struct Bytes){text, csv.length};
}
