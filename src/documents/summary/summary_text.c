/* The summary for a terminal: the decision first, then each run, then everything that was taken for granted. */
#include "documents/documents.h"

#include "documents/shown_private.h"
#include "summary_private.h"

static void add_job(struct SummaryPage *page, const struct Plan *plan)
{
    struct Arena *arena = page->arena;
    const struct Job *job = &plan->survey->job;
    summary_heading(page, job->title);
    const struct SayArg parts[] = {say_name(job->site), say_name(job->reference),
                                   say_part(job->surveyed != NULL && *job->surveyed != '\0'
                                                ? say(arena, SAY_JOB_SURVEYED, say_name(job->surveyed))
                                                : NULL)};
    const struct Say *line = NULL;
    for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++) {
        line = say_list(arena, SAY_COMMA, line, parts[i]);
    }
    if (line != NULL) {
        summary_line(page, 0, 2, SAY_NOTHING, TINT_NONE, line);
    }
    summary_verdict(page, plan, 9);
    for (int i = 0; i < plan->warning_count; i++) {
        summary_item(page, 0, 9, summary_term(page, SAY_LEAD_WARNING), TINT_STRONG,
                     diag_sentence(arena, plan->warnings[i].code, plan->warnings[i].words));
    }
    summary_line(page, 0, 9, SAY_LEAD_RULES, TINT_NONE, plan->rules_text);
}

static const struct Say *article_said(struct Arena *arena, const struct Part *part)
{
    const struct Say *article =
        say(arena, SAY_ARTICLE_WITH_STANDARD, say_part(part->description), say_name(part->standard));
    const char *packs = arena_print(arena, "%s%s", part->pack_word, part->packs == 1 ? "" : "s");
    return part->pack <= 0 ? article
                           : say(arena, SAY_PACKS_OF, say_part(article), say_count(part->packs), say_name(packs),
                                 say_count(part->pack));
}

static void add_parts(struct SummaryPage *page, const struct PartsList *parts)
{
    summary_gap(page);
    summary_head(page, SAY_HEAD_ORDER);
    for (int i = 0; i < parts->count; i++) {
        const struct Part *part = &parts->parts[i];
        const char *count =
            arena_print(page->arena, "%s %s", number_significant(page->arena, part->quantity, 6), part->unit);
        summary_item(page, 2, 13, count, TINT_NONE, shown_said(page->arena, article_said(page->arena, part)));
    }
    for (int i = 0; i < parts->note_count; i++) {
        summary_line(page, 2, 13, SAY_LEAD_NOT_IN_IT, TINT_NONE, parts->notes[i]);
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
        summary_head(page, SAY_HEAD_ASSUMED);
    }
    for (int i = 0; i < plan->assumption_count; i++) {
        add_remark(page, plan->assumptions[i].where, shown_said(page->arena, plan->assumptions[i].text));
    }
    if (plan->not_checked_count > 0) {
        summary_gap(page);
        summary_head(page, SAY_HEAD_NOT_CHECKED);
    }
    for (int i = 0; i < plan->open_count; i++) {
        summary_item(page, 2, 4, "-", TINT_STRONG,
                     shown_said(page->arena, say(page->arena, SAY_OPEN_MARKED, say_part(plan->open[i].text))));
    }
    for (int i = 0; i < plan->not_checked_count; i++) {
        add_remark(page, plan->not_checked[i].id, shown_said(page->arena, plan->not_checked[i].text));
    }
    if (plan->caution_count > 0) {
        summary_gap(page);
        summary_head(page, SAY_HEAD_CAUTIONS);
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
