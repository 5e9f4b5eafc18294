/* The decision in about twenty lines: what was chosen, what limits it and what stands nearest to its limit, what is
 * open, what to order; the verdict last, where the eye is. */
#include "documents/documents.h"

#include "documents/measured_said_private.h"
#include "documents/shown_private.h"
#include "summary_private.h"

enum { LABEL_AT = 2, TEXT_AT = 11, LISTED_MOST = 3 };

static void add(struct SummaryPage *page, enum Saying label, const struct Say *said)
{
    if (said != NULL) {
        summary_line(page, LABEL_AT, TEXT_AT, label, TINT_NONE, said);
    }
}

static void add_job(struct SummaryPage *page, const struct Plan *plan)
{
    struct Arena *arena = page->arena;
    const struct Job *job = &plan->survey->job;
    const bool dated = job->surveyed != NULL && *job->surveyed != '\0';
    const struct Say *surveyed = dated ? say(arena, SAY_JOB_SURVEYED, say_name(job->surveyed)) : NULL;
    summary_heading(page, shown_said(arena, say(arena, SAY_SHORT_JOB, say_name(job->title), say_name(job->site),
                                                say_name(job->reference), say_part(surveyed))));
}

/* ---- a run ---- */

static const struct Say *lengths_said(struct Arena *arena, const struct PlanRun *run)
{
    return say(arena, SAY_SHORT_LENGTHS, say_digits(run->route_length_m, 6, UNIT_M),
               say_digits(run->electrical_length_m, 6, UNIT_M), say_digits(run->order_length_m, 9, UNIT_M));
}

static const struct Say *limit_said(struct Arena *arena, const struct Plan *plan, const struct PlanRun *run)
{
    if (run->governing < 0 || run->governing >= run->rating_count) {
        return NULL;
    }
    const double spare_a = run->capacity_a - run->rating_a;
    const char *where = plan->segments[run->ratings[run->governing].segment].surveyed->name;
    if (run->gaps > 0 && spare_a >= 0) {
        return say(arena, SAY_LIMITED_BY_OF_KNOWN, say_name(where), say_fixed(run->capacity_a, 1, UNIT_A),
                   say_digits(run->rating_a, 4, UNIT_A));
    }
    return say(arena, spare_a >= 0 ? SAY_LIMITED_BY : SAY_LIMITED_BY_TOO_LITTLE, say_name(where),
               say_fixed(run->capacity_a, 1, UNIT_A), say_digits(run->rating_a, 4, UNIT_A),
               say_fixed(spare_a >= 0 ? spare_a : -spare_a, 1, UNIT_A));
}

static const struct Say *smaller_said(struct Arena *arena, const struct PlanRun *run)
{
    if (run->size_was_given) {
        return say(arena, SAY_SIZE_WAS_GIVEN, say_digits(run->size_mm2, 4, UNIT_MM2));
    }
    return run->why_not_smaller != NULL ? run->why_not_smaller : say(arena, SAY_SMALLEST_OF_TABLE);
}

static const struct Say *more_said(struct Arena *arena, const struct PlanRun *run)
{
    const struct Headroom *const both[] = {&run->more_cable, &run->more_load};
    static const enum Saying sayings[] = {SAY_MORE_CABLE, SAY_MORE_LOAD};
    static const enum Unit units[] = {UNIT_M, UNIT_A};
    const struct Say *list = NULL;
    for (int i = 0; i < 2; i++) {
        if (both[i]->known && run->verdict == VERDICT_PASS) { /* one that was not made may fail sooner */
            list = say_list(arena, SAY_SEMICOLON, list,
                            say_part(say(arena, sayings[i], say_digits(both[i]->more, 5, units[i]),
                                         say_term(run->checks[both[i]->check].title))));
        }
    }
    return list;
}

static void add_run(struct SummaryPage *page, const struct Plan *plan, const struct PlanRun *run, int nearest_shown)
{
    struct Arena *arena = page->arena;
    const struct Say *cable = summary_cable(arena, run);
    summary_heading(page, shown_said(arena, say(arena, SAY_RUN_AND_SERVES, say_name(run->settled->name),
                                                say_name(run->settled->serves))));
    if (!run->rated) {
        add(page, SAY_FACT_CABLE, say(arena, SAY_SEMICOLON, say_part(cable), say_part(lengths_said(arena, run))));
    } else {
        add(page, SAY_FACT_CABLE,
            say(arena, SAY_SHORT_CABLE, say_part(cable),
                say_part(say(arena, SAY_SHORT_EARTH, say_word(WORDS_CPC, (int)run->settled->cable.cpc))),
                say_part(run->device_text), say_fixed(run->design_current_a, 1, UNIT_A)));
        add(page, SAY_LEAD_LENGTHS, lengths_said(arena, run));
        add(page, SAY_LEAD_LIMIT, limit_said(arena, plan, run));
        add(page, SAY_LEAD_SMALLER, smaller_said(arena, run));
    }
    for (int i = 0; i < run->nearest_count && i < nearest_shown; i++) {
        add(page, i == 0 ? SAY_LEAD_NEAREST : SAY_NOTHING, run->nearest[i].text);
    }
    add(page, SAY_LEAD_MORE, more_said(arena, run));
}

/* ---- the whole plan ---- */

/* Of a list the first few, and how many more. */
static void add_list(struct SummaryPage *page, enum Saying label, int count,
                     const char *(*text)(struct SummaryPage *, const struct Plan *, int), const struct Plan *plan)
{
    for (int i = 0; i < count && i < LISTED_MOST; i++) {
        summary_item(page, 0, TEXT_AT, summary_term(page, i == 0 ? label : SAY_NOTHING), TINT_STRONG,
                     text(page, plan, i));
    }
    if (count > LISTED_MOST) {
        summary_line(page, 0, TEXT_AT, SAY_NOTHING, TINT_NONE,
                     say(page->arena, SAY_AND_FURTHER, say_count(count - LISTED_MOST)));
    }
}

static const char *open_text(struct SummaryPage *page, const struct Plan *plan, int i)
{
    return shown_said(page->arena, plan->open[i].text);
}

static const char *warning_text(struct SummaryPage *page, const struct Plan *plan, int i)
{
    return diag_sentence(page->arena, plan->warnings[i].code, plan->warnings[i].words);
}

static void add_order(struct SummaryPage *page, const struct PartsList *parts)
{
    struct Arena *arena = page->arena;
    const struct Say *rest = NULL;
    for (int i = 0; i < parts->total_count; i++) {
        rest = say_list(arena, SAY_SEMICOLON, rest, say_part(summary_total(arena, parts, &parts->totals[i])));
    }
    rest = say_list(arena, SAY_SEMICOLON, rest, say_part(parts->prices_note));
    if (parts->note_count > 0) {
        rest = say_list(arena, SAY_SEMICOLON, rest,
                        say_part(say(arena, SAY_ORDER_NOT_IN_IT, say_count(parts->note_count))));
    }
    summary_line(page, 0, TEXT_AT, SAY_LEAD_ORDER, TINT_NONE,
                 say(arena, SAY_ORDER_LINES, say_count(parts->count), say_part(rest)));
}

/* "segments.loft.fixed-to and 2 more". */
static struct SayArg keys_said(struct Arena *arena, const struct Settings *settings)
{
    const struct SayArg first = say_name(settings->list[0].key);
    return settings->count == 1 ? first
                                : say_part(say(arena, SAY_NAMES_AND_MORE, first, say_count(settings->count - 1)));
}

const struct Say *decisive_said(struct Arena *arena, const struct Plan *plan, const struct Decisive *decisive,
                                bool by_key)
{
    const struct Say *changes = NULL;
    if (!decisive->planned) {
        changes = say(arena, SAY_DECIDES_NO_PLAN);
    }
    if (decisive->verdict_changes) {
        changes = say(arena, SAY_DECIDES_VERDICT, say_name(verdict_word(decisive->verdict)));
    }
    if (decisive->cable_changes) {
        changes = say_list(arena, SAY_COMMA, changes, say_term(SAY_DECIDES_CABLE));
    }
    if (decisive->device_changes) {
        changes = say_list(arena, SAY_COMMA, changes, say_term(SAY_DECIDES_DEVICE));
    }
    if (decisive->order_lines > 0) {
        changes = say_list(arena, SAY_COMMA, changes,
                           say_part(say(arena, SAY_DECIDES_LINES, say_count(decisive->order_lines))));
    }
    if (decisive->assumption < 0) {
        const struct SurveyRange *range = &plan->survey->ranges[decisive->range];
        return say(arena, SAY_DECIDES, say_name(by_key ? range->where : range->named), say_name(decisive->at),
                   say_part(changes));
    }
    const struct Assumption *assumption = &plan->assumptions[decisive->assumption];
    return say(arena, SAY_DECIDES, by_key ? keys_said(arena, &decisive->settings) : say_part(assumption->text),
               say_part(assumption->other), say_part(changes));
}

/* How many, and the two that decide most. */
static void add_assumed(struct SummaryPage *page, const struct Plan *plan, const struct Decisives *decisives)
{
    enum { SHOWN = 2 };
    struct Arena *arena = page->arena;
    if (plan->assumption_count == 0) {
        return;
    }
    summary_line(page, 0, TEXT_AT, SAY_LEAD_ASSUMED, TINT_NONE,
                 say(arena, SAY_ASSUMED_COUNT, say_count(plan->assumption_count), say_count(decisives->tried),
                     say_count(decisives->count)));
    for (int i = 0; i < decisives->count && i < SHOWN; i++) {
        summary_item(page, TEXT_AT, TEXT_AT + 2, "-", TINT_NONE,
                     shown_said(arena, decisive_said(arena, plan, &decisives->list[i], true)));
    }
}

/* Those that lack a surveyed figure and do not bear on the verdict, the first by name: what they would have told is not
 * known. Both lists are in the order of the runs' checks. */
static void add_not_made(struct SummaryPage *page, const struct Plan *plan)
{
    struct Arena *arena = page->arena;
    const struct Say *named = NULL;
    int count = 0;
    for (int i = 0, open = 0; i < plan->not_checked_count; i++) {
        const struct NotChecked *one = &plan->not_checked[i];
        if (open < plan->open_count && text_same(plan->open[open].id, one->id) &&
            text_same(plan->open[open].run, one->run)) {
            open++;
            continue;
        }
        if (count++ < LISTED_MOST) {
            named = say_list(arena, SAY_COMMA, named,
                             say_part(say(arena, SAY_CHECK_OF_RUN, say_name(one->id), say_name(one->run))));
        }
    }
    if (count > LISTED_MOST) {
        named = say_list(arena, SAY_COMMA, named,
                         say_part(say(arena, SAY_CHECKS_OPEN_MORE, say_count(count - LISTED_MOST))));
    }
    if (count > 0) {
        summary_line(page, 0, TEXT_AT, SAY_LEAD_NOT_MADE, TINT_NONE,
                     say(arena, SAY_NOT_MADE, say_part(named), say_count(count)));
    }
}

struct Bytes document_decision_text(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                    const struct Decisives *decisives, const char *papers, bool colour)
{
    struct SummaryPage page = {.arena = arena, .text = text_builder(arena), .colour = colour};
    add_job(&page, plan);
    const int nearest_shown = plan->run_count == 1 ? NEAREST_MOST : 1;
    for (int i = 0; i < plan->run_count; i++) {
        add_run(&page, plan, &plan->runs[i], nearest_shown);
    }
    add_list(&page, SAY_LEAD_OPEN, plan->open_count, open_text, plan);
    add_list(&page, SAY_LEAD_WARNING, plan->warning_count, warning_text, plan);
    if (plan->survey->has_readings) {
        const enum Verdict verdict = readings_verdict(plan);
        summary_line(&page, 0, TEXT_AT, SAY_LABEL_READINGS_PAPER, summary_verdict_tint(verdict),
                     say(arena, SAY_COLON, say_name(verdict_word(verdict)), say_part(measured_why(arena, plan))));
    }
    add_not_made(&page, plan);
    add_assumed(&page, plan, decisives);
    if (parts != NULL) {
        add_order(&page, parts);
    }
    if (*papers != '\0') {
        summary_item(&page, 0, TEXT_AT, summary_term(&page, SAY_LEAD_PAPERS), TINT_NONE, papers);
    }
    if (plan->verdict == VERDICT_OPEN) { /* what is open stands above */
        summary_line(&page, 0, TEXT_AT, SAY_LEAD_VERDICT, summary_verdict_tint(plan->verdict),
                     say(arena, SAY_OPEN_ABOVE, say_name(verdict_word(plan->verdict)), say_count(plan->open_count)));
    } else {
        summary_verdict(&page, plan, TEXT_AT);
    }
    return summary_finish(&page);
}
