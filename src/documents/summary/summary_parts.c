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
                     arena_print(page->arena, "%s; %s left over", shown_said(page->arena, opened->piece_text),
                                 shown_said(page->arena, opened->left_text)));
    }
    summary_item(page, INDENT, HANG, "buy", TINT_NONE, shown_said(page->arena, cut->buy_text));
    summary_item(page, INDENT, HANG, "result", TINT_NONE, shown_said(page->arena, cut->result_text));
}

void summary_cutting(struct SummaryPage *page, const struct PartsList *parts)
{
    bool begun = false;
    for (int i = 0; i < parts->cut_count; i++) {
        const struct PartsCut *cut = &parts->cuts[i];
        if (!begun && (cut->planned || cut->note != NULL)) {
            summary_gap(page);
            summary_heading(page, "Cutting plan");
            begun = true;
        }
        add_cut(page, cut);
        if (cut->note != NULL) {
            summary_item(page, INDENT, HANG, "note", TINT_NONE, shown_said(page->arena, cut->note));
        }
    }
}

void summary_prices(struct SummaryPage *page, const struct PartsList *parts)
{
    if (parts->prices == NULL && parts->prices_note == NULL) {
        return;
    }
    summary_gap(page);
    summary_heading(page, "Prices");
    for (int i = 0; i < parts->total_count; i++) {
        const struct PartsTotal *total = &parts->totals[i];
        if (total->lines == 0) {
            continue;
        }
        summary_item(page, INDENT, HANG, "total", TINT_STRONG,
                     arena_print(page->arena, "%s %s for %d of %d lines%s%s%s", total->currency, total->text,
                                 total->lines, parts->count, *total->coin_text != '\0' ? "; in coin " : "",
                                 total->coin_text, *total->coin_text != '\0' ? ", rounded half up" : ""));
    }
    if (parts->unpriced_count > 0) {
        summary_item(page, INDENT, HANG, "no price", TINT_NONE, parts->unpriced_text);
    }
    if (parts->prices_note != NULL) {
        summary_item(page, INDENT, HANG, "none", TINT_NONE, parts->prices_note);
    }
}
