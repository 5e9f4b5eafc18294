/* Wrapping, padding and tinting for the terminal summary. Escape sequences only ever come from here. */
#include "summary_private.h"

#include "documents/shown_private.h"

void summary_tint(struct SummaryPage *page, enum Tint tint)
{
    static const char *const sequences[] = {
        [TINT_NONE] = "\033[0m", [TINT_STRONG] = "\033[1m", [TINT_GOOD] = "\033[32m", [TINT_BAD] = "\033[1;31m"};
    if (page->colour) {
        text_add(&page->text, sequences[tint]);
    }
}

void summary_gap(struct SummaryPage *page)
{
    text_add_char(&page->text, '\n');
}

void summary_heading(struct SummaryPage *page, const char *text)
{
    summary_tint(page, TINT_STRONG);
    text_add(&page->text, shown_cut(page->arena, shown_text(page->arena, text), SUMMARY_COLUMNS));
    summary_tint(page, TINT_NONE);
    text_add_char(&page->text, '\n');
}

static void add_blanks(struct SummaryPage *page, int count)
{
    for (int i = 0; i < count; i++) {
        text_add_char(&page->text, ' ');
    }
}

void summary_cell(struct SummaryPage *page, const char *text, int columns)
{
    int room = columns < 0 ? -columns : columns;
    const char *cut = shown_cut(page->arena, shown_text(page->arena, text), room);
    int blanks = room - shown_columns(cut);
    if (columns < 0) {
        add_blanks(page, blanks);
    }
    text_add(&page->text, cut);
    if (columns > 0) {
        add_blanks(page, blanks);
    }
}

void summary_item(struct SummaryPage *page, int indent, int hang, const char *lead, enum Tint tint, const char *text)
{
    add_blanks(page, indent);
    if (tint != TINT_NONE) {
        summary_tint(page, tint);
    }
    const char *shown_lead = shown_cut(page->arena, shown_text(page->arena, lead), hang - indent - 1);
    text_add(&page->text, shown_lead);
    if (tint != TINT_NONE) {
        summary_tint(page, TINT_NONE);
    }
    const char *rest = shown_text(page->arena, text);
    int at = indent + shown_columns(shown_lead);
    if (*rest == '\0') {
        text_add_char(&page->text, '\n');
        return;
    }
    while (*rest != '\0') {
        size_t next = 0;
        size_t bytes = shown_line(rest, SUMMARY_COLUMNS - hang, &next);
        add_blanks(page, hang - at);
        text_add_bytes(&page->text, rest, bytes);
        text_add_char(&page->text, '\n');
        rest += next;
        at = 0;
    }
}

const char *summary_term(struct SummaryPage *page, enum Saying term)
{
    return shown_said(page->arena, &(struct Say){.id = term});
}

void summary_head(struct SummaryPage *page, enum Saying head)
{
    summary_heading(page, summary_term(page, head));
}

void summary_line(struct SummaryPage *page, int indent, int hang, enum Saying label, enum Tint tint,
                  const struct Say *said)
{
    summary_item(page, indent, hang, summary_term(page, label), tint, shown_said(page->arena, said));
}

void summary_changes(struct SummaryPage *page, const struct Plan *plan)
{
    enum { TEXT_AT = 9 };
    for (int i = 0; i < plan->survey->change_count; i++) {
        summary_line(page, 0, TEXT_AT, SAY_CHANGED_LEAD, TINT_STRONG,
                     say(page->arena, SAY_CHANGED_ROUTE, say_name(plan->survey->changes[i])));
    }
    for (int i = 0; i < plan->survey->range_count; i++) {
        const struct SurveyRange *range = &plan->survey->ranges[i];
        summary_line(
            page, 0, TEXT_AT, SAY_RANGE_LEAD, TINT_STRONG,
            say(page->arena, SAY_RANGE_AT, say_name(range->where), say_name(range->text), say_name(range->at)));
    }
}

enum Tint summary_verdict_tint(enum Verdict verdict)
{
    return verdict == VERDICT_PASS ? TINT_GOOD : verdict == VERDICT_FAIL ? TINT_BAD : TINT_STRONG;
}

void summary_verdict(struct SummaryPage *page, const struct Plan *plan, int hang)
{
    const struct SayArg word = say_name(verdict_word(plan->verdict));
    const struct SayArg why = say_part(plan->verdict_text);
    summary_line(page, 0, hang, SAY_LEAD_VERDICT, summary_verdict_tint(plan->verdict),
                 plan->warning_count == 0
                     ? say(page->arena, SAY_COLON, word, why)
                     : say(page->arena, SAY_VERDICT_AND_WARNINGS, word, say_count(plan->warning_count), why));
}

struct Bytes summary_finish(struct SummaryPage *page)
{
    const char *text = text_done(&page->text);
    if (page->text.failed || arena_failed(page->arena)) {
        return (struct Bytes){NULL, 0};
    }
    return (struct Bytes){text, page->text.length};
}
