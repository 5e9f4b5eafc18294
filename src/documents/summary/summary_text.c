/* The summary for a terminal: the decision first, then each run, then everything that was taken for granted. */
#include "documents/documents.h"

#include "documents/shown_private.h"
#include "summary_private.h"

/* ", 1 warning"; "" when there is none */
static const char *warnings_counted(struct Arena *arena, int count)
{
    return count == 0 ? "" : arena_print(arena, ", %d warning%s", count, count == 1 ? "" : "s");
}

static void add_job(struct SummaryPage *page, const struct Plan *plan)
{
    const struct Job *job = &plan->survey->job;
    summary_heading(page, job->title);
    struct TextBuilder line = text_builder(page->arena);
    const char *const texts[] = {job->site, job->reference, job->surveyed};
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        if (texts[i] != NULL && *texts[i] != '\0') {
            text_print(&line, "%s%s%s", line.length > 0 ? ", " : "", i == 2 ? "surveyed " : "", texts[i]);
        }
    }
    if (line.length > 0) {
        summary_item(page, 0, 2, "", TINT_NONE, text_done(&line));
    }
    const char *verdict =
        arena_print(page->arena, "%s%s: %s", verdict_word(plan->verdict),
                    warnings_counted(page->arena, plan->warning_count), shown_said(page->arena, plan->verdict_text));
    summary_item(page, 0, 9, "Verdict", summary_verdict_tint(plan->verdict), verdict);
    for (int i = 0; i < plan->warning_count; i++) {
        summary_item(page, 0, 9, "Warning", TINT_STRONG,
                     diag_sentence(page->arena, plan->warnings[i].code, plan->warnings[i].words));
    }
    summary_item(page, 0, 9, "Rules", TINT_NONE, shown_said(page->arena, plan->rules_text));
}

static void add_parts(struct SummaryPage *page, const struct PartsList *parts)
{
    summary_gap(page);
    summary_heading(page, "To order");
    for (int i = 0; i < parts->count; i++) {
        const struct Part *part = &parts->parts[i];
        const char *count =
            arena_print(page->arena, "%s %s", number_significant(page->arena, part->quantity, 6), part->unit);
        struct TextBuilder text = text_builder(page->arena);
        text_add(&text, shown_said(page->arena, part->description));
        if (*part->standard != '\0') {
            text_print(&text, ", %s", part->standard);
        }
        if (part->pack > 0) {
            text_print(&text, " (%d %s%s of %d)", part->packs, part->pack_word, part->packs == 1 ? "" : "s",
                       part->pack);
        }
        summary_item(page, 2, 13, count, TINT_NONE, text_done(&text));
    }
    for (int i = 0; i < parts->note_count; i++) {
        summary_item(page, 2, 13, "not in it", TINT_NONE, shown_said(page->arena, parts->notes[i]));
    }
    summary_cutting(page, parts);
    summary_prices(page, parts);
}

static void add_remark(struct SummaryPage *page, const char *where, const char *text)
{
    bool placed = where != NULL && *where != '\0';
    summary_item(page, 2, 4, "-", TINT_NONE, placed ? arena_print(page->arena, "%s: %s", where, text) : text);
}

static void add_remarks(struct SummaryPage *page, const struct Plan *plan)
{
    if (plan->assumption_count > 0) {
        summary_gap(page);
        summary_heading(page, "Taken for granted (not surveyed)");
    }
    for (int i = 0; i < plan->assumption_count; i++) {
        add_remark(page, plan->assumptions[i].where, shown_said(page->arena, plan->assumptions[i].text));
    }
    if (plan->not_checked_count > 0) {
        summary_gap(page);
        summary_heading(page, "Not checked");
    }
    for (int i = 0; i < plan->open_count; i++) {
        summary_item(page, 2, 4, "-", TINT_STRONG,
                     arena_print(page->arena, "OPEN: %s", shown_said(page->arena, plan->open[i].text)));
    }
    for (int i = 0; i < plan->not_checked_count; i++) {
        add_remark(page, plan->not_checked[i].id, shown_said(page->arena, plan->not_checked[i].text));
    }
    if (plan->caution_count > 0) {
        summary_gap(page);
        summary_heading(page, "Cautions");
    }
    for (int i = 0; i < plan->caution_count; i++) {
        add_remark(page, caution_places(page->arena, plan, &plan->cautions[i]),
                   shown_said(page->arena, plan->cautions[i].text));
    }
}

struct Bytes document_summary_text(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                   bool colour)
{
    struct SummaryPage page = {.arena = arena, .text = text_builder(arena), .colour = colour};
    add_job(&page, plan);
    for (int i = 0; i < plan->run_count; i++) {
        summary_run(&page, plan, &plan->runs[i]);
    }
    if (parts != NULL) {
        add_parts(&page, parts);
    }
    add_remarks(&page, plan);
    return summary_finish(&page);
}
