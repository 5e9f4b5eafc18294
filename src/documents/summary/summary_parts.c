/* The end of the order in the terminal summary: what is cut from which drum, and what it costs. */
#include "summary_private.h"

#include "documents/documents.h"
#include "documents/shown_private.h"

enum { INDENT = 4, HANG = 22 };

static void add_cut(struct SummaryPage *page, const struct PartsCut *cut)
{
    if (!cut->planned) {
        return;
    }
    summary_item(page, 2, INDENT, "-", TINT_NONE, shown_said(page->arena, cut->description));
    for (int i = 0; i < cut->opened_count; i++) {
        const struct PartOpened *opened = &cut->opened[i];
        summary_item(page, INDENT, HANG, shown_said(page->arena, opened->what), TINT_NONE,
                     shown_said(page->arena, say(page->arena, SAY_PIECES_AND_LEFT, say_part(opened->piece_text),
                                                 say_part(opened->left_text))));
    }
    summary_line(page, INDENT, HANG, SAY_LEAD_BUY, TINT_NONE, cut->buy_text);
    summary_line(page, INDENT, HANG, SAY_LEAD_RESULT, TINT_NONE, cut->result_text);
}

void summary_cutting(struct SummaryPage *page, const struct PartsList *parts)
{
    bool begun = false;
    for (int i = 0; i < parts->cut_count; i++) {
        const struct PartsCut *cut = &parts->cuts[i];
        if (!begun && (cut->planned || cut->note != NULL)) {
            summary_gap(page);
            summary_head(page, SAY_HEAD_CUTTING);
            begun = true;
        }
        add_cut(page, cut);
        if (cut->note != NULL) {
            summary_line(page, INDENT, HANG, SAY_LEAD_NOTE, TINT_NONE, cut->note);
        }
    }
}

const struct Say *summary_total(struct Arena *arena, const struct PartsList *parts, const struct PartsTotal *total)
{
    return total->lines == 0 ? NULL
                             : say(arena, *total->coin_text != '\0' ? SAY_TOTAL_OF_LINES_IN_COIN : SAY_TOTAL_OF_LINES,
                                   say_name(total->currency), say_name(total->text), say_count(total->lines),
                                   say_count(parts->count), say_name(total->coin_text));
}

void summary_prices(struct SummaryPage *page, const struct PartsList *parts)
{
    if (parts->prices == NULL && parts->prices_note == NULL) {
        return;
    }
    summary_gap(page);
    summary_head(page, SAY_HEAD_PRICES);
    for (int i = 0; i < parts->total_count; i++) {
        const struct Say *total = summary_total(page->arena, parts, &parts->totals[i]);
        if (total != NULL) {
            summary_line(page, INDENT, HANG, SAY_LEAD_TOTAL, TINT_STRONG, total);
        }
    }
    if (parts->unpriced_count > 0) {
        summary_line(page, INDENT, HANG, SAY_LEAD_NO_PRICE, TINT_NONE, parts->unpriced_text);
    }
    if (parts->prices_note != NULL) {
        summary_line(page, INDENT, HANG, SAY_LEAD_NO_LIST, TINT_NONE, parts->prices_note);
    }
}
