/* One run in the terminal summary: what was chosen and why, the stretches in a table, the checks in sentences. */
#include "summary_private.h"

#include "documents/shown_private.h"

enum { LEAD_AT = 2, TEXT_AT = 13, NAME_COLUMNS = 18, WAY_COLUMNS = 12, FACTOR_COLUMNS = 17 };

static const char *segment_name(const struct Plan *plan, int index)
{
    return index >= 0 && index < plan->segment_count ? plan->segments[index].surveyed->name : "";
}

const struct Say *summary_cable(struct Arena *arena, const struct PlanRun *run)
{
    const struct Cable *cable = &run->settled->cable;
    const struct Say *said = cable->cores > 0 ? say(arena, SAY_CORES_OF, say_count(cable->cores)) : NULL;
    if (run->size_mm2 > 0) {
        said = say_list(arena, SAY_SPACE, said, say_digits(run->size_mm2, 4, UNIT_MM2));
    }
    return say_list(arena, SAY_SPACE, said, say_word(WORDS_CABLE, (int)cable->type));
}

static void add_cable(struct SummaryPage *page, const struct PlanRun *run)
{
    struct Arena *arena = page->arena;
    const struct Say *cable = summary_cable(arena, run);
    if (run->rated) {
        cable = say(arena, run->size_was_given ? SAY_CABLE_SIZE_GIVEN : SAY_CABLE_SIZE_CHOSEN, say_part(cable),
                    say_word(WORDS_CPC, (int)run->settled->cable.cpc));
    }
    summary_line(page, LEAD_AT, TEXT_AT, SAY_FACT_CABLE, TINT_NONE, cable);
}

static void add_lengths(struct SummaryPage *page, const struct PlanRun *run)
{
    summary_line(page, LEAD_AT, TEXT_AT, SAY_LEAD_LENGTHS, TINT_NONE,
                 say(page->arena, run->legs_m > 0 ? SAY_LENGTHS_WITH_LEGS : SAY_LENGTHS_OF_RUN,
                     say_digits(run->route_length_m, 6, UNIT_M), say_digits(run->electrical_length_m, 6, UNIT_M),
                     say_digits(run->order_length_m, 9, UNIT_M), say_digits(run->legs_m, 6, UNIT_M)));
}

static void add_drop(struct SummaryPage *page, const struct PlanRun *run)
{
    struct Arena *arena = page->arena;
    double expected_v = 0;
    for (int i = 0; i < run->rating_count; i++) {
        expected_v += run->ratings[i].drop_expected_v;
    }
    summary_line(page, LEAD_AT, TEXT_AT, SAY_LEAD_DROP, TINT_NONE,
                 say(arena, SAY_DROP_BY_TABLE, say_fixed(run->drop_v, 2, UNIT_V),
                     say_fixed(run->drop_percent, 2, UNIT_PERCENT), say_name(run->drop_table),
                     say_digits(run->drop_limit_percent, 6, UNIT_PERCENT)));
    summary_line(page, LEAD_AT, TEXT_AT, SAY_NOTHING, TINT_NONE,
                 say(arena, SAY_DROP_EXPECTED, say_fixed(expected_v, 2, UNIT_V),
                     say_fixed(run->drop_at_load_temperature_percent, 2, UNIT_PERCENT)));
}

static void add_governing(struct SummaryPage *page, const struct Plan *plan, const struct PlanRun *run)
{
    if (run->governing < 0 || run->governing >= run->rating_count) {
        return;
    }
    summary_line(page, LEAD_AT, TEXT_AT, SAY_LEAD_GOVERNING, TINT_NONE,
                 say(page->arena, SAY_GOVERNS, say_name(segment_name(plan, run->ratings[run->governing].segment)),
                     say_fixed(run->capacity_a, 1, UNIT_A), say_part(run->governing_because)));
}

static const struct Say *load_said(struct Arena *arena, const struct PlanRun *run)
{
    const struct SayArg design = say_fixed(run->design_current_a, 1, UNIT_A);
    const double *line_a = run->currents.line_a;
    return run->currents.lines > 1 ? say(arena, SAY_DESIGN_CURRENT_OF_LINES, design, say_fixed(line_a[0], 1, UNIT_A),
                                         say_fixed(line_a[1], 1, UNIT_A), say_fixed(line_a[2], 1, UNIT_A))
                                   : say(arena, SAY_DESIGN_CURRENT, design);
}

static void add_choice(struct SummaryPage *page, const struct Plan *plan, const struct PlanRun *run)
{
    summary_line(page, LEAD_AT, TEXT_AT, SAY_FACT_LOAD, TINT_NONE, load_said(page->arena, run));
    summary_line(page, LEAD_AT, TEXT_AT, SAY_LEAD_DEVICE, TINT_NONE, run->device_text);
    if (run->why_not_smaller != NULL || !run->size_was_given) {
        summary_line(page, LEAD_AT, TEXT_AT, SAY_LEAD_THIS_SIZE, TINT_NONE,
                     run->why_not_smaller != NULL ? run->why_not_smaller : say(page->arena, SAY_SMALLEST_OF_TABLE));
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
    if (rating->lacks != NULL) {
        return shown_said(page->arena, rating->lacks);
    }
    return rating->factor_count == 0 ? summary_term(page, SAY_NO_FACTORS) : text_done(&text);
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
    summary_cell(
        page, rating->lacks != NULL ? "?" : arena_print(arena, "%s A", number_text(arena, rating->capacity_a, 1)), -8);
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
    static const struct {
        enum Saying name;
        int columns;
    } head[] = {
        {SAY_COLUMN_STRETCH, NAME_COLUMNS + 1},
        {SAY_COLUMN_WAY, WAY_COLUMNS},
        {SAY_COLUMN_LENGTH, -9},
        {SAY_NOTHING, 2},
        {SAY_COLUMN_REFERENCE, 4},
        {SAY_COLUMN_FACTORS, FACTOR_COLUMNS},
        {SAY_COLUMN_CARRIES, -8},
        {SAY_COLUMN_DROP, -5},
    };
    summary_gap(page);
    summary_cell(page, "", 4);
    for (size_t i = 0; i < sizeof head / sizeof head[0]; i++) {
        summary_cell(page, summary_term(page, head[i].name), head[i].columns);
    }
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
static const char *result_word(struct SummaryPage *page, const struct Check *check)
{
    switch (check->result) {
    case CHECK_PASS: return verdict_word(VERDICT_PASS);
    case CHECK_FAIL: return verdict_word(VERDICT_FAIL);
    case CHECK_NOT_DUE: break;
    }
    return check->open ? verdict_word(VERDICT_OPEN)
                       : summary_term(page, check->unknown ? SAY_RESULT_UNKNOWN : SAY_RESULT_NOT_DUE);
}

static enum Tint result_tint(const struct Check *check)
{
    return check->result == CHECK_PASS   ? TINT_GOOD
           : check->result == CHECK_FAIL ? TINT_BAD
           : check->open                 ? TINT_STRONG
                                         : TINT_NONE;
}

/* Of one run. */
static enum Saying verdict_line(enum Verdict verdict)
{
    switch (verdict) {
    case VERDICT_FAIL: return SAY_RUN_FAILS;
    case VERDICT_OPEN: return SAY_RUN_OPEN;
    case VERDICT_PASS: break;
    }
    return SAY_RUN_PASSES;
}

static void add_checks(struct SummaryPage *page, const struct PlanRun *run)
{
    struct Arena *arena = page->arena;
    summary_gap(page);
    for (int i = 0; i < run->check_count; i++) {
        const struct Check *check = &run->checks[i];
        const struct Say *source = say(arena, SAY_SOURCE_IN_BRACKETS, say_part(check_source_said(arena, check)));
        summary_item(page, 2, 11, result_word(page, check), result_tint(check),
                     shown_said(arena, say(arena, SAY_CHECK_WITH_SOURCE, say_name(check->id), say_part(check->text),
                                           say_part(source))));
    }
}

void summary_run(struct SummaryPage *page, const struct Plan *plan, const struct PlanRun *run)
{
    summary_gap(page);
    summary_heading(page, shown_said(page->arena, say(page->arena, SAY_RUN_AND_SERVES, say_name(run->settled->name),
                                                      say_name(run->settled->serves))));
    if (run->rated) {
        summary_line(page, LEAD_AT, TEXT_AT, SAY_LEAD_OUTCOME, summary_verdict_tint(run->verdict),
                     say(page->arena, verdict_line(run->verdict)));
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
