/* The sizes that were tried, side by side: what a designer looks over before taking the next larger one after all. */
#include "documents/documents.h"

#include "documents/shown_private.h"
#include "summary_private.h"
#include "words/words.h"

enum { RESULT_AT = 60, RESULT_COLUMNS = SUMMARY_COLUMNS - RESULT_AT, NAME_COLUMNS = 12 };

/* One table: the sizes with one protective conductor. */
struct Table {
    enum Cpc cpc;
    int lines;
    int option_count;
    const struct Option *options;
    double chosen_mm2;
    bool given;       /* the size was given */
    bool pass;        /* of the chosen size */
    double first_mm2; /* first that passes, 0 none */
};

static double first_passing(const struct Option *options, int count)
{
    for (int i = 0; i < count; i++) {
        if (options[i].pass) {
            return options[i].size_mm2;
        }
    }
    return 0;
}

static struct Table surveyed_table(const struct PlanRun *run)
{
    struct Table table = {.cpc = run->settled->cable.cpc,
                          .lines = run->currents.lines,
                          .option_count = run->option_count,
                          .options = run->options,
                          .chosen_mm2 = run->size_mm2,
                          .given = run->size_was_given,
                          .pass = run->pass};
    /* a size that was given was the only one tried; the others stand among the alternatives */
    if (run->alternative_count > 0 && run->alternatives[0].cpc == table.cpc) {
        table.options = run->alternatives[0].options;
        table.option_count = run->alternatives[0].option_count;
    }
    table.first_mm2 = first_passing(table.options, table.option_count);
    return table;
}

/* The surveyed one first, then the others; returns how many. `out` has room for one more than the alternatives. */
static int tables_of(const struct PlanRun *run, struct Table *out)
{
    int count = 0;
    out[count++] = surveyed_table(run);
    for (int i = 0; i < run->alternative_count; i++) {
        const struct Alternative *other = &run->alternatives[i];
        if (other->cpc != out[0].cpc) {
            out[count++] = (struct Table){.cpc = other->cpc,
                                          .lines = other->lines,
                                          .option_count = other->option_count,
                                          .options = other->options,
                                          .chosen_mm2 = other->size_mm2,
                                          .pass = other->pass,
                                          .first_mm2 = other->pass ? other->size_mm2 : 0};
        }
    }
    return count;
}

static bool is_first(const struct Table *table)
{
    return table->first_mm2 >= table->chosen_mm2 && table->first_mm2 <= table->chosen_mm2;
}

static bool is_chosen(const struct Table *table, const struct Option *option)
{
    return option->size_mm2 >= table->chosen_mm2 && option->size_mm2 <= table->chosen_mm2;
}

/* In the place of a figure that is not held; the legend says so. */
static const char not_known[] = "-";

static const char *known(struct Arena *arena, double value, int decimals)
{
    return value > 0 ? number_text(arena, value, decimals) : not_known;
}

static const char *unit_text(enum Unit unit)
{
    static const struct Words plain = {.language = LANGUAGE_ENGLISH, .medium = MEDIUM_PLAIN};
    return words_unit(&plain, unit);
}

static void add_head(struct SummaryPage *page)
{
    static const struct {
        enum Saying name;
        int before; /* blanks */
        int columns;
        enum Unit unit;
    } columns[] = {
        {SAY_COLUMN_SIZE, 0, -6, UNIT_MM2},
        {SAY_COLUMN_CARRIES, 0, -8, UNIT_A},
        {SAY_COLUMN_AT, 2, NAME_COLUMNS, 0},
        {SAY_COLUMN_DROP, 0, -6, UNIT_PERCENT},
        {SAY_COLUMN_LOOP, 0, -6, UNIT_OHM},
        {SAY_COLUMN_PROTECTIVE, 0, -6, UNIT_MM2},
        {SAY_COLUMN_GLAND, 2, 5, 0},
        {SAY_COLUMN_WEIGHT, 0, -5, 0},
        {SAY_COLUMN_RESULT, 2, RESULT_COLUMNS, 0},
    };
    for (int line = 0; line < 2; line++) {
        for (size_t i = 0; i < sizeof columns / sizeof columns[0]; i++) {
            summary_cell(page, "", columns[i].before);
            summary_cell(page, line == 0 ? summary_term(page, columns[i].name) : unit_text(columns[i].unit),
                         columns[i].columns);
        }
        while (page->text.length > 0 && page->text.data[page->text.length - 1] == ' ') {
            page->text.length--;
        }
        summary_gap(page);
    }
}

static void add_row(struct SummaryPage *page, const struct Table *table, const struct Option *option)
{
    struct Arena *arena = page->arena;
    summary_cell(page, is_chosen(table, option) ? ">" : "", 2);
    summary_cell(page, number_significant(arena, option->size_mm2, 4), -4);
    summary_cell(page, known(arena, option->capacity_a, 1), -8);
    summary_cell(page, "", 2);
    summary_cell(page, option->governing, NAME_COLUMNS);
    summary_cell(page, known(arena, option->drop_percent, 2), -6);
    summary_cell(page, known(arena, option->zs_ohm, option->zs_ohm < 10 ? 3 : 1), -6);
    summary_cell(page, known(arena, option->protective_needed_mm2, 1), -6);
    summary_cell(page, "", 2);
    summary_cell(page, *option->gland != '\0' ? option->gland : not_known, 5);
    summary_cell(page, known(arena, option->weight_kg_per_km / 1000, 2), -5);
    summary_cell(page, "", 2);
    const char *rest =
        option->verdict == VERDICT_PASS ? verdict_word(VERDICT_PASS)
        : option->verdict == VERDICT_FAIL
            ? check_list_ids(arena, &option->fails)
            : shown_said(arena, say(arena, SAY_OPEN_MARKED, say_name(check_list_ids(arena, &option->open))));
    for (bool first = true; *rest != '\0'; first = false) {
        size_t next = 0;
        const size_t bytes = shown_line(rest, RESULT_COLUMNS, &next);
        summary_cell(page, "", first ? 0 : RESULT_AT);
        text_add_bytes(&page->text, rest, bytes);
        summary_gap(page);
        rest += next;
    }
}

/* Without the remarks that follow. */
static const char *first_said(struct Arena *arena, const struct Say *why)
{
    struct Say first = why != NULL ? *why : (struct Say){0};
    first.next = NULL;
    return shown_said(arena, &first);
}

static void add_reasons(struct SummaryPage *page, const struct Table *table)
{
    for (int i = 0; i < table->option_count; i++) {
        const struct Option *option = &table->options[i];
        if (option->size_mm2 <= table->chosen_mm2 && option->verdict != VERDICT_PASS) {
            summary_item(
                page, 2, 12,
                shown_said(page->arena, say(page->arena, SAY_AS_IS, say_digits(option->size_mm2, 4, UNIT_MM2))),
                TINT_NONE, first_said(page->arena, option->why));
        }
    }
}

static bool same_checks(const struct CheckList *a, const struct CheckList *b)
{
    bool same = a->count == b->count;
    for (int i = 0; same && i < a->count; i++) {
        same = text_same(a->list[i].kind, b->list[i].kind);
    }
    return same;
}

static bool same_option(const struct Option *a, const struct Option *b)
{
    const double pairs[][2] = {{a->size_mm2, b->size_mm2},
                               {a->capacity_a, b->capacity_a},
                               {a->drop_percent, b->drop_percent},
                               {a->zs_ohm, b->zs_ohm},
                               {a->protective_needed_mm2, b->protective_needed_mm2}};
    bool same = a->pass == b->pass && a->verdict == b->verdict && same_checks(&a->fails, &b->fails) &&
                same_checks(&a->open, &b->open) && text_same(a->governing, b->governing);
    for (size_t i = 0; i < sizeof pairs / sizeof pairs[0]; i++) {
        same = same && pairs[i][0] >= pairs[i][1] && pairs[i][0] <= pairs[i][1];
    }
    return same;
}

/* On an island a fault returns through the armour whatever goes with the cable, so nothing changes. */
static bool same_table(const struct Table *a, const struct Table *b)
{
    bool same = a->option_count == b->option_count && a->chosen_mm2 >= b->chosen_mm2 && a->chosen_mm2 <= b->chosen_mm2;
    for (int i = 0; same && i < a->option_count; i++) {
        same = same_option(&a->options[i], &b->options[i]);
    }
    return same;
}

static const struct Table *table_with(const struct Table *tables, int count, enum Cpc cpc)
{
    for (int i = 0; i < count; i++) {
        if (tables[i].cpc == cpc) {
            return &tables[i];
        }
    }
    return NULL;
}

/* The smallest size that passes today and with the larger load; 0 when there is none. */
static double first_of_both(const struct Table *now, const struct Table *later)
{
    for (int i = 0; i < now->option_count; i++) {
        for (int j = 0; j < later->option_count; j++) {
            const bool same = now->options[i].size_mm2 >= later->options[j].size_mm2 &&
                              now->options[i].size_mm2 <= later->options[j].size_mm2;
            if (same && now->options[i].pass && later->options[j].pass) {
                return now->options[i].size_mm2;
            }
        }
    }
    return 0;
}

/* What keeps the largest size from passing. */
static const char *last_obstacle(struct Arena *arena, const struct Table *table)
{
    return table->option_count > 0 ? check_list_ids(arena, &table->options[table->option_count - 1].fails) : "";
}

static double later_size(struct Arena *arena, const struct Table *now, const struct PlanRun *run, const char **obstacle)
{
    struct Table *tables = arena_array(arena, (size_t)run->alternative_count + 1, sizeof *tables);
    const struct Table *later = tables == NULL ? NULL : table_with(tables, tables_of(run, tables), now->cpc);
    if (later == NULL) {
        *obstacle = "";
        return 0;
    }
    *obstacle = last_obstacle(arena, later);
    return first_of_both(now, later);
}

/* Of the two plans with the larger load the one with today's device, else the one with a larger device. */
static const struct Say *growth_said(struct Arena *arena, const struct Table *now, int run, const struct Growth *growth)
{
    const char *obstacle = "";
    const struct SayArg percent = say_digits(growth->percent, 4, UNIT_PERCENT);
    const struct Plan *const plans[] = {growth->plan, growth->any_device};
    static const enum Saying passes[] = {SAY_GROWN_SIZE, SAY_GROWN_DEVICE};
    for (int i = 0; i < 2; i++) {
        const struct PlanRun *later = plans[i] != NULL ? &plans[i]->runs[run] : NULL;
        const double size_mm2 = later != NULL ? later_size(arena, now, later, &obstacle) : 0;
        if (later != NULL && size_mm2 > 0) {
            return say(arena, passes[i], percent, say_fixed(later->design_current_a, 1, UNIT_A),
                       say_part(later->device_text), say_digits(size_mm2, 4, UNIT_MM2));
        }
    }
    if (growth->any_device == NULL) {
        return say(arena, SAY_GROWN_NOT_PLANNED, percent, say_name(growth->fault));
    }
    return say(arena, SAY_GROWN_FAILS, percent,
               *obstacle != '\0' ? say_name(obstacle) : say_term(SAY_NO_FIGURE_FOR_IT));
}

static void add_verdict(struct SummaryPage *page, const struct Table *table)
{
    struct Arena *arena = page->arena;
    if (table->first_mm2 <= 0) {
        summary_line(page, 2, 12, SAY_LEAD_NO_SIZE, TINT_NONE,
                     say(arena, table->given ? SAY_NO_SIZE_PASSES : SAY_NO_SIZE_PASSES_LEAST));
    } else if (table->given && !is_first(table)) {
        summary_line(page, 2, 12, SAY_LEAD_FIRST, TINT_NONE,
                     say(arena, SAY_FIRST_THAT_PASSES, say_digits(table->chosen_mm2, 4, UNIT_MM2),
                         say_digits(table->first_mm2, 4, UNIT_MM2)));
    }
}

static void add_table(struct SummaryPage *page, const struct Table *table, const struct Table *surveyed, int run,
                      const struct Growth *growth)
{
    struct Arena *arena = page->arena;
    const struct Say *head =
        say(arena, table == surveyed ? SAY_TABLE_AS_SURVEYED : SAY_TABLE_INSTEAD, say_word(WORDS_CPC, (int)table->cpc),
            say_term(table->lines == 3 ? SAY_ON_THREE_LINES : SAY_NOTHING));
    summary_gap(page);
    if (table != surveyed && same_table(table, surveyed)) {
        summary_line(page, 0, 2, SAY_NOTHING, TINT_NONE, say(arena, SAY_SAME_FIGURES, say_part(head)));
        return;
    }
    summary_line(page, 0, 2, SAY_NOTHING, TINT_NONE, head);
    add_head(page);
    for (int i = 0; i < table->option_count; i++) {
        add_row(page, table, &table->options[i]);
    }
    add_reasons(page, table);
    add_verdict(page, table);
    if (growth != NULL) {
        summary_line(page, 2, 12, SAY_LEAD_GROWTH, TINT_NONE, growth_said(arena, table, run, growth));
    }
}

static void add_run(struct SummaryPage *page, const struct Plan *plan, int index, const struct Growth *growth)
{
    struct Arena *arena = page->arena;
    const struct PlanRun *run = &plan->runs[index];
    struct Table *tables = arena_array(arena, (size_t)run->alternative_count + 1, sizeof *tables);
    if (tables == NULL) {
        return;
    }
    const struct Cable *cable = &run->settled->cable;
    summary_heading(page, shown_said(arena, say(arena, SAY_SIZES_FOR, say_name(run->settled->name),
                                                say_word(WORDS_CABLE, (int)cable->type), say_count(cable->cores))));
    summary_line(page, 0, 2, SAY_NOTHING, TINT_NONE,
                 say(arena, run->size_was_given ? SAY_SIZES_GIVEN : SAY_SIZES_CHOSEN,
                     say_fixed(run->design_current_a, 1, UNIT_A), say_part(run->device_text),
                     say_digits(run->electrical_length_m, 6, UNIT_M), say_digits(run->size_mm2, 4, UNIT_MM2)));
    const int count = tables_of(run, tables);
    for (int i = 0; i < count; i++) {
        add_table(page, &tables[i], &tables[0], index, growth);
    }
}

struct Bytes document_options_text(struct Arena *arena, const struct Plan *plan, int run, const struct Growth *growth)
{
    struct SummaryPage page = {.arena = arena, .text = text_builder(arena)};
    summary_changes(&page, plan);
    for (int i = 0; i < plan->run_count; i++) {
        if ((run < 0 || run == i) && plan->runs[i].rated) {
            if (page.text.length > 0) {
                summary_gap(&page);
            }
            add_run(&page, plan, i, growth);
        }
    }
    summary_gap(&page);
    summary_item(&page, 0, 2, ">", TINT_NONE, summary_term(&page, SAY_SIZES_LEGEND));
    return summary_finish(&page);
}
