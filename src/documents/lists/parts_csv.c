/* The parts list as RFC 4180: what a wholesaler's counter types in or a spreadsheet opens.
 *
 * Every row has every column. A row with a line number is an article; a row without one is a remark on what the list
 * does not count, in the note column, for whoever orders from the file alone, or what is cut from one drum, or
 * a total of the prices. `quantity` is what is bought, in whole packs and whole lengths, and `buy` says that in words;
 * `asked` is what the job asks for, spare included, whatever it is sold in. The counter sees nothing but this file: the
 * last two columns of every row are the verdict of the plan, PASS, OPEN or FAIL, and the mark of its sheets. */
#include "documents/documents.h"
#include "documents/shown_private.h"

#include "csv_private.h"
#include "order_words_private.h"

static const char head[] = "line,quantity,unit,description,standard,for,note,needed,pack,packs,length-m,code,"
                           "price,price-unit,currency,total,buy,asked\r\n";

static double bought_of(const struct Part *part)
{
    return part->packs <= 0                ? part->quantity
           : text_same(part->unit, "pack") ? part->packs
                                           : (double)part->pack * part->packs;
}

/* In words, and what it is bought for. */
static void add_bought(struct TextBuilder *csv, const struct Part *part, const struct PartsCut *cut)
{
    const struct Bought bought = {part->packs, part->pack, part->pack_word, bought_of(part), part->unit};
    text_add_char(csv, ',');
    csv_out_text(csv, cut != NULL ? shown_said(csv->arena, cut->buy_text) : bought_words(csv->arena, &bought));
    text_add_char(csv, ',');
    csv_out_number(csv, cut != NULL ? part->needed : part->quantity);
    text_add(csv, "\r\n");
}

static void add_part(struct TextBuilder *csv, int line, const struct PartsList *list)
{
    const struct Part *part = &list->parts[line - 1];
    text_print(csv, "%d,", line);
    const struct PartsCut *cut = parts_cut_of(list, part);
    csv_out_number(csv, bought_of(part));
    const char *const texts[] = {part->unit, shown_said(csv->arena, part->description), part->standard,
                                 shown_uses(csv->arena, part), shown_said(csv->arena, part->note)};
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        text_add_char(csv, ',');
        csv_out_text(csv, texts[i]);
    }
    text_add_char(csv, ',');
    csv_out_number(csv, part->needed);
    text_add_char(csv, ',');
    if (part->pack > 0) {
        text_print(csv, "%d,%d,", part->pack, part->packs);
    } else {
        text_add(csv, ",,");
    }
    if (part->length_m > 0) {
        csv_out_number(csv, part->length_m);
    }
    text_add_char(csv, ',');
    csv_out_text(csv, part->code);
    csv_out_price(csv, list->prices != NULL ? &list->prices[line - 1] : NULL, list->totals);
    add_bought(csv, part, cut);
}

/* A row that is no article: what it is, whom it is for, a remark, the code that it speaks of; any may be "". */
static void add_remark(struct TextBuilder *csv, const char *what, const char *use, const char *note, const char *code)
{
    text_add(csv, ",,,");
    csv_out_text(csv, what);
    text_add(csv, ",,");
    csv_out_text(csv, use);
    text_add_char(csv, ',');
    csv_out_text(csv, note);
    text_add(csv, ",,,,,");
    csv_out_text(csv, code);
    text_add(csv, ",,,,,,\r\n");
}

static void add_cut(struct TextBuilder *csv, const struct PartsCut *cut)
{
    if (!cut->planned) {
        if (cut->note != NULL) {
            add_remark(csv, "", "", shown_said(csv->arena, cut->note), cut->code);
        }
        return;
    }
    struct Arena *arena = csv->arena;
    add_remark(csv, shown_said(arena, say(arena, SAY_CUTTING_PLAN, say_part(cut->description))), "",
               shown_said(arena, say_list(arena, SAY_SEMICOLON, cut->result_text, say_part(cut->note))), cut->code);
    for (int i = 0; i < cut->opened_count; i++) {
        const struct PartOpened *opened = &cut->opened[i];
        const enum Saying from = opened->bought ? SAY_CUT_FROM_WHOLE : SAY_CUT_FROM_OFFCUT;
        add_remark(csv, shown_said(arena, say(arena, from, say_part(opened->what))),
                   shown_said(arena, opened->piece_text),
                   shown_said(arena, say(arena, SAY_LEFT_OVER, say_part(opened->left_text))), cut->code);
    }
}

/* A total stands in the columns of the lines' totals, in a row without a line number. */
static void add_totals(struct TextBuilder *csv, const struct PartsList *list)
{
    for (int i = 0; i < list->total_count; i++) {
        const struct PartsTotal *total = &list->totals[i];
        if (total->lines == 0) {
            continue;
        }
        text_print(csv, ",,,%s,,,,,,,,,,,%s,%s,,\r\n", csv_out_total_words(csv->arena, total, list->count),
                   total->currency, total->text);
    }
    if (list->unpriced_text != NULL) {
        add_remark(csv, "", "", shown_said(csv->arena, list->unpriced_text), "");
    }
    if (list->prices_note != NULL) {
        add_remark(csv, "", "", shown_said(csv->arena, list->prices_note), "");
    }
}

struct Bytes document_parts_csv(struct Arena *arena, const struct PartsList *parts, enum Verdict verdict,
                                const char *mark)
{
    struct TextBuilder csv = text_builder(arena);
    text_add(&csv, head);
    for (int i = 0; i < parts->count; i++) {
        add_part(&csv, i + 1, parts);
    }
    if (parts->range_note != NULL) {
        add_remark(&csv, "", "", shown_said(arena, parts->range_note), "");
    }
    for (int i = 0; i < parts->note_count; i++) {
        add_remark(&csv, "", "", shown_said(arena, parts->notes[i]), "");
    }
    for (int i = 0; i < parts->cut_count; i++) {
        add_cut(&csv, &parts->cuts[i]);
    }
    add_totals(&csv, parts);
    const char *last = mark == NULL ? NULL : arena_print(arena, "%s,%s", verdict_word(verdict), mark);
    return last == NULL ? (struct Bytes){NULL, 0} : csv_out_column(arena, &csv, "plan,sheet-mark", last);
}
