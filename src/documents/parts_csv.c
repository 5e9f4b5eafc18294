/* The parts list as RFC 4180: what a wholesaler's counter types in or a spreadsheet opens.
 *
 * Every row has every column. A row with a line number is an article; a row without one is a remark on what the list
 * does not count, in the note column, so that whoever orders from the file alone is still told. */
#include "wend/documents.h"

#include "csv_private.h"

static const char head[] = "line,quantity,unit,description,standard,for,note,needed,pack,packs,length-m,code\r\n";

static void add_part(struct TextBuilder *csv, int line, const struct Part *part)
{
    text_print(csv, "%d,", line);
    csv_number(csv, part->quantity);
    const char *const texts[] = {part->unit, part->description, part->standard, part->use, part->note};
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        text_add_char(csv, ',');
        csv_text(csv, texts[i]);
    }
    text_add_char(csv, ',');
    csv_number(csv, part->needed);
    text_add_char(csv, ',');
    if (part->pack > 0) {
        text_print(csv, "%d,%d,", part->pack, part->packs);
    } else {
        text_add(csv, ",,");
    }
    if (part->length_m > 0) {
        csv_number(csv, part->length_m);
    }
    text_add_char(csv, ',');
    csv_text(csv, part->code);
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
        csv_text(&csv, parts->notes[i]);
        text_add(&csv, ",,,,,\r\n");
    }
    const char *text = text_done(&csv);
    if (csv.failed || arena_failed(arena)) {
        return (struct Bytes){NULL, 0};
    }
    return (struct Bytes){text, csv.length};
}
