/* One run in the terminal summary: what was chosen and why, the stretches in a table, the checks in sentences. */
#include "summary_private.h"

#include "documents/shown_private.h"

#include <string.h>

enum { LEAD_AT = 2, TEXT_AT = 13, NAME_COLUMNS = 18, WAY_COLUMNS = 12, FACTOR_COLUMNS = 17, CHECK_COLUMNS = 22 };

static const char *segment_name(const struct Plan *plan, int index)
{
    return index >= 0 && index < plan->segment_count ? plan->segments[index].surveyed->name : "";
}

static void add_cable(struct SummaryPage *page, const struct PlanRun *run)
{
    const struct Cable *cable = &run->settled->cable;
    struct TextBuilder text = text_builder(page->arena);
    if (cable->cores > 0) {
        text_print(&text, "%d-core ", cable->cores);
    }
    if (run->size_mm2 > 0) {
        text_print(&text, "%s ", shown_size(page->arena, run));
    }
    text_add(&text, survey_word(WORDS_CABLE, (int)cable->type));
    if (run->rated) {
        text_print(&text, ", protective conductor: %s", survey_word(WORDS_CPC, (int)cable->cpc));
        text_add(&text, run->size_was_given ? "; size as surveyed" : "; size chosen");
    }
    summary_item(page, LEAD_AT, TEXT_AT, "Cable", TINT_NONE, text_done(&text));
}

static void add_lengths(struct SummaryPage *page, const struct PlanRun *run)
{
    struct TextBuilder text = text_builder(page->arena);
    text_add(&text, "route ");
    text_add(&text, number_significant(page->arena, run->route_length_m, 6));
    text_add(&text, " m; electrical, with tails and loops");
    if (run->legs_m > 0) {
        text_print(&text, " and %s m into and out of the ground", number_significant(page->arena, run->legs_m, 6));
    }
    text_add(&text, ", ");
    text_add(&text, number_significant(page->arena, run->electrical_length_m, 6));
    text_print(&text, " m; to order, with spare, %d m", run->order_length_m);
    summary_item(page, LEAD_AT, TEXT_AT, "Lengths", TINT_NONE, text_done(&text));
}

static void add_drop(struct SummaryPage *page, const struct PlanRun *run)
{
    double expected_v = 0;
    for (int i = 0; i < run->rating_count; i++) {
        expected_v += run->ratings[i].drop_expected_v;
    }
    struct TextBuilder text = text_builder(page->arena);
    number_add(&text, run->drop_v, 2);
    text_add(&text, " V, ");
    number_add(&text, run->drop_percent, 2);
    text_print(&text, " %% at the temperature of Table %s; limit ", run->drop_table);
    text_add(&text, number_significant(page->arena, run->drop_limit_percent, 6));
    text_add(&text, " %");
    summary_item(page, LEAD_AT, TEXT_AT, "Drop", TINT_NONE, text_done(&text));
    text = text_builder(page->arena);
    number_add(&text, expected_v, 2);
    text_add(&text, " V, ");
    number_add(&text, run->drop_at_load_temperature_percent, 2);
    text_add(&text, " % as expected, with the conductors as warm as this load makes them");
    summary_item(page, LEAD_AT, TEXT_AT, "", TINT_NONE, text_done(&text));
}

static void add_governing(struct SummaryPage *page, const struct Plan *plan, const struct PlanRun *run)
{
    if (run->governing < 0 || run->governing >= run->rating_count) {
        return;
    }
    struct TextBuilder text = text_builder(page->arena);
    text_print(&text, "%s governs: it carries ", segment_name(plan, run->ratings[run->governing].segment));
    number_add(&text, run->capacity_a, 1);
    text_print(&text, " A%s%s", run->governing_because != NULL ? ": " : "",
               shown_said(page->arena, run->governing_because));
    summary_item(page, LEAD_AT, TEXT_AT, "Governing", TINT_NONE, text_done(&text));
}

static void add_choice(struct SummaryPage *page, const struct Plan *plan, const struct PlanRun *run)
{
    struct TextBuilder load = text_builder(page->arena);
    number_add(&load, run->design_current_a, 1);
    text_add(&load, " A design current");
    if (run->currents.lines > 1) {
        text_add(&load, " (");
        for (int i = 0; i < run->currents.lines && i < 3; i++) {
            text_print(&load, "%sL%d ", i > 0 ? ", " : "", i + 1);
            number_add(&load, run->currents.line_a[i], 1);
            text_add(&load, " A");
        }
        text_add(&load, ")");
    }
    summary_item(page, LEAD_AT, TEXT_AT, "Load", TINT_NONE, text_done(&load));
    summary_item(page, LEAD_AT, TEXT_AT, "Device", TINT_NONE, shown_said(page->arena, run->device_text));
    if (run->why_not_smaller != NULL) {
        summary_item(page, LEAD_AT, TEXT_AT, "This size", TINT_NONE, shown_said(page->arena, run->why_not_smaller));
    } else if (!run->size_was_given) {
        summary_item(page, LEAD_AT, TEXT_AT, "This size", TINT_NONE, "the smallest that the table has");
    }
    add_governing(page, plan, run);
    add_drop(page, run);
}

static const char *factors_text(struct SummaryPage *page, const struct Rating *rating)
{
    struct TextBuilder text = text_builder(page->arena);
    for (int i = 0; i < rating->factor_count && i < RATING_FACTORS_MOST; i++) {
        text_print(&text, "%s%s ", i > 0 ? " " : "", rating->factors[i].symbol);
        number_add(&text, rating->factors[i].value, 2);
    }
    return rating->factor_count == 0 ? "none" : text_done(&text);
}

static void add_row(struct SummaryPage *page, const struct Plan *plan, const struct Rating *rating, bool governs)
{
    const struct PlanSegment *segment = &plan->segments[rating->segment];
    struct Arena *arena = page->arena;
    summary_tint(page, governs ? TINT_STRONG : TINT_NONE);
    summary_cell(page, governs ? "  >" : "", 4);
    summary_cell(page, segment->surveyed->name, NAME_COLUMNS);
    text_add_char(&page->text, ' ');
    summary_cell(page, survey_word(WORDS_WAY, (int)segment->surveyed->way), WAY_COLUMNS);
    double length_m = segment->surveyed->length_m.value;
    summary_cell(page, arena_print(arena, "%s m", number_text(arena, length_m, length_m < 1000 ? 2 : 1)), -9);
    text_add(&page->text, "  ");
    summary_cell(page, rating->method, 4);
    const char *factors = factors_text(page, rating);
    size_t next = 0;
    size_t bytes = shown_line(factors, FACTOR_COLUMNS, &next);
    summary_cell(page, arena_text(arena, factors, bytes), FACTOR_COLUMNS);
    summary_cell(page, arena_print(arena, "%s A", number_text(arena, rating->capacity_a, 1)), -8);
    summary_cell(page, arena_print(arena, "%s %%", number_text(arena, rating->drop_share * 100, 0)), -5);
    summary_tint(page, TINT_NONE);
    text_add_char(&page->text, '\n');
    for (factors += next; *factors != '\0'; factors += next) { /* factors that one line does not hold */
        bytes = shown_line(factors, FACTOR_COLUMNS, &next);
        summary_cell(page, "", 50);
        text_add_bytes(&page->text, factors, bytes);
        text_add_char(&page->text, '\n');
    }
}

static void add_table(struct SummaryPage *page, const struct Plan *plan, const struct PlanRun *run)
{
    summary_gap(page);
    summary_cell(page, "", 4);
    summary_cell(page, "stretch", NAME_COLUMNS + 1);
    summary_cell(page, "way", WAY_COLUMNS);
    summary_cell(page, "length", -9);
    summary_cell(page, "  ref", 6); /* reference method */
    summary_cell(page, "factors", FACTOR_COLUMNS);
    summary_cell(page, "carries", -8);
    summary_cell(page, "drop", -5);
    text_add_char(&page->text, '\n');
    for (int i = 0; i < run->rating_count; i++) {
        add_row(page, plan, &run->ratings[i], i == run->governing);
    }
    for (int i = 0; i < run->rating_count; i++) {
        if (run->ratings[i].warning != NULL) {
            summary_item(page, 4, 6, "!", TINT_STRONG,
                         arena_print(page->arena, "%s: %s", plan->segments[run->ratings[i].segment].surveyed->name,
                                     shown_said(page->arena, run->ratings[i].warning)));
        }
    }
}

/* The verdict in a word of its own; a check that lacks a surveyed figure is told from one that is not called for. */
static const char *result_word(const struct Check *check)
{
    switch (check->result) {
    case CHECK_PASS: return "PASS";
    case CHECK_FAIL: return "FAIL";
    case CHECK_NOT_DUE: return check->open ? "OPEN" : check->unknown ? "unknown" : "not due";
    }
    return "";
}

static enum Tint result_tint(const struct Check *check)
{
    return check->result == CHECK_PASS   ? TINT_GOOD
           : check->result == CHECK_FAIL ? TINT_BAD
           : check->open                 ? TINT_STRONG
                                         : TINT_NONE;
}

enum Tint summary_verdict_tint(enum Verdict verdict)
{
    return verdict == VERDICT_PASS ? TINT_GOOD : verdict == VERDICT_FAIL ? TINT_BAD : TINT_STRONG;
}

/* Of one run. */
static const char *verdict_line(enum Verdict verdict)
{
    switch (verdict) {
    case VERDICT_FAIL: return "FAIL: see the checks marked FAIL";
    case VERDICT_OPEN: return "OPEN: none fails, but those marked OPEN could not be made";
    case VERDICT_PASS: break;
    }
    return "PASS: every check that matters was made on this run and passes";
}

static void add_checks(struct SummaryPage *page, const struct PlanRun *run)
{
    summary_gap(page);
    for (int i = 0; i < run->check_count; i++) {
        const struct Check *check = &run->checks[i];
        struct TextBuilder text = text_builder(page->arena);
        text_print(&text, "%s: %s", check->id, shown_said(page->arena, check->text));
        if (*check->source != '\0') {
            text_print(&text, " [%s]", check->source);
        }
        summary_item(page, 2, 11, result_word(check), result_tint(check), text_done(&text));
    }
}

void summary_run(struct SummaryPage *page, const struct Plan *plan, const struct PlanRun *run)
{
    struct TextBuilder head = text_builder(page->arena);
    text_print(&head, "%s", run->settled->name);
    if (run->settled->serves != NULL && *run->settled->serves != '\0') {
        text_print(&head, ": %s", run->settled->serves);
    }
    summary_gap(page);
    summary_heading(page, text_done(&head));
    if (run->rated) {
        summary_item(page, LEAD_AT, TEXT_AT, "Result", summary_verdict_tint(run->verdict), verdict_line(run->verdict));
    }
    add_cable(page, run);
    if (run->rated) {
        add_choice(page, plan, run);
    }
    add_lengths(page, run);
    if (run->rated) {
        add_table(page, plan, run);
    }
    if (run->check_count > 0) {
        add_checks(page, run);
    }
}
