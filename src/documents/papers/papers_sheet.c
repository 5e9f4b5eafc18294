/* The designer's and inspector's figures of one run, each rounded once, here, for the whole column that it stands in.
 */
#include "documents/shown_private.h"
#include "documents/xml/plan_xml_private.h"
#include "papers_private.h"

#include <math.h>
#include <string.h>

/* `again`: on paper a table below says it. */
static void add_fact(struct XmlOut *out, struct XmlElement *sheet, const struct Say *name, struct SayArg text,
                     bool again)
{
    const char *words = xml_said(out, say(xml_out_arena(out), SAY_AS_IS, text));
    if (*words != '\0') {
        struct XmlElement *element = xml_child(out, sheet, "fact");
        xml_say_attribute(out, element, "name", name);
        xml_attribute_if(out, element, "on-screen", again ? "yes" : "");
        xml_text(out, element, words);
    }
}

static void fact(struct XmlOut *out, struct XmlElement *sheet, const struct Say *name, struct SayArg text)
{
    add_fact(out, sheet, name, text, false);
}

static const struct Say *load_text(struct Arena *arena, const struct Load *load)
{
    const bool factor = load->power_factor.given, diversity = load->diversity.given;
    const struct SayArg size =
        load->power_w.given ? say_digits(load->power_w.value / 1000, 4, load->power_is_apparent ? UNIT_KVA : UNIT_KW)
                            : say_digits(load->current_a.value, 4, UNIT_A);
    return say(
        arena, SAY_LOAD_OF_RUN, size,
        say_part(factor ? say(arena, SAY_POWER_FACTOR, say_digits(load->power_factor.value, 3, UNIT_NONE)) : NULL),
        say_part(diversity ? say(arena, SAY_DIVERSITY, say_digits(load->diversity.value * 100, 3, UNIT_PERCENT))
                           : NULL),
        say_term(load->phases == 3 ? SAY_THREE_PHASE : SAY_NOTHING));
}

static void add_loads(struct XmlOut *out, struct XmlElement *sheet, const struct PlanRun *run)
{
    struct Arena *arena = xml_out_arena(out);
    const struct Run *surveyed = run->settled;
    for (int i = 0; i < surveyed->load_count; i++) {
        fact(out, sheet,
             surveyed->load_count == 1 ? say(arena, SAY_FACT_LOAD) : say(arena, SAY_FACT_LOAD_OF, say_count(i + 1)),
             say_part(load_text(arena, &surveyed->loads[i])));
    }
    for (int i = 0; run->currents.lines == 3 && i < 3; i++) {
        fact(out, sheet, say(arena, SAY_FACT_LINE, say_count(i + 1)), say_fixed(run->currents.line_a[i], 1, UNIT_A));
    }
}

static void add_facts(struct XmlOut *out, struct XmlElement *sheet, const struct PlanRun *run)
{
    struct Arena *arena = xml_out_arena(out);
    const struct Run *surveyed = run->settled;
    const struct SayArg from = say_meaning(WORDS_FROM, (int)surveyed->start.from);
    const struct Say *drop =
        say(arena, SAY_DROP_OF_RUN, say_fixed(run->drop_v, 2, UNIT_V), say_fixed(run->drop_percent, 2, UNIT_PERCENT),
            say_name(run->drop_table), say_fixed(run->drop_at_load_temperature_percent, 2, UNIT_PERCENT));
    const struct Say *length =
        say(arena, SAY_LENGTH_OF_RUN, say_fixed(run->route_length_m, 2, UNIT_M), say_part(papers_legs(arena, run)),
            say_fixed(run->electrical_length_m, 2, UNIT_M), say_fixed(run->order_length_m, 0, UNIT_M));
    const struct {
        enum Saying name;
        struct SayArg text;
    } facts[] = {
        {SAY_FACT_DESIGN_CURRENT, say_fixed(run->design_current_a, 1, UNIT_A)},
        {SAY_FACT_FED_FROM, surveyed->start.from_given ? from : say_part(say(arena, SAY_TAKEN_NOT_SURVEYED, from))},
        {SAY_FACT_DEVICE, papers_device(run)},
        {SAY_FACT_WHY_DEVICE, say_part(run->device_because)},
        {SAY_FACT_CABLE, say_part(papers_cable(arena, run))},
        {SAY_FACT_SIZE, say_term(run->size_was_given ? SAY_SIZE_GIVEN : SAY_SIZE_CHOSEN)},
        {SAY_FACT_WHY_NOT_SMALLER, say_part(run->why_not_smaller)},
        {SAY_FACT_PROTECTIVE, say_meaning(WORDS_CPC, (int)surveyed->cable.cpc)},
        {SAY_FACT_CARRIES, say_fixed(run->capacity_a, 1, UNIT_A)},
        {SAY_FACT_GOVERNED_BY, say_part(run->governing_because)},
        {SAY_FACT_DROP, say_part(drop)},
        {SAY_FACT_LENGTH, say_part(length)},
    };
    add_loads(out, sheet, run);
    for (size_t i = 0; i < sizeof facts / sizeof facts[0]; i++) {
        add_fact(out, sheet, say(arena, facts[i].name), facts[i].text,
                 facts[i].name == SAY_FACT_WHY_NOT_SMALLER && run->option_count > 0);
    }
}

/* Why it is rated so. That a cable for 90 degC goes by the table for 70 degC for the sake of its terminals is assumed
 * once, not a stretch at a time. */
static const struct Say *rated_so(struct Arena *arena, const struct Say *because)
{
    const struct Say *cooler = because != NULL && because->id == SAY_RATED_BY ? because->args[2].part : NULL;
    return cooler != NULL && cooler->id == SAY_COOLER_FOR_TERMINALS
               ? say(arena, SAY_RATED_BY, because->args[0], because->args[1], say_part(NULL))
               : because;
}

/* A factor that two decimals would print as 1.00 has a third: it stands with its reason, or nothing is left of it. */
static struct SayArg factor_value(double value)
{
    return say_fixed(value, fabs(value - 1) < 0.005 && fabs(value - 1) >= 0.0005 ? 3 : 2, UNIT_NONE);
}

static void figure_or_dash(struct XmlOut *out, struct XmlElement *element, const char *name, bool known, double value,
                           int decimals)
{
    papers_attribute(out, element, name, known ? say_fixed(value, decimals, UNIT_NONE) : say_term(SAY_DASH));
}

static void add_row(struct XmlOut *out, struct XmlElement *sheet, const struct Plan *plan, const struct PlanRun *run,
                    int index)
{
    const struct Rating *rating = &run->ratings[index];
    struct XmlElement *row = xml_child(out, sheet, "row");
    xml_integer(out, row, "number", rating->segment + 1);
    xml_attribute(out, row, "name", plan->segments[rating->segment].surveyed->name);
    xml_attribute(out, row, "way", survey_word(WORDS_WAY, (int)plan->segments[rating->segment].surveyed->way));
    papers_attribute(out, row, "length", say_fixed(rating->electrical_length_m, 2, UNIT_NONE));
    const bool held = rating->lacks == NULL;
    papers_attribute(out, row, "method", held ? say_name(rating->method) : say_term(SAY_DASH));
    papers_attribute(out, row, "table", held ? say_name(rating->table) : say_term(SAY_DASH));
    figure_or_dash(out, row, "tabulated", held, rating->tabulated_a, 1);
    figure_or_dash(out, row, "factor", held, rating->factor, 3);
    figure_or_dash(out, row, "capacity", held, rating->capacity_a, 1);
    figure_or_dash(out, row, "margin", held, rating->capacity_a - run->rating_a, 1);
    figure_or_dash(out, row, "conductor", held, rating->conductor_degc, 0);
    papers_attribute(out, row, "drop", say_fixed(rating->drop_v, 2, UNIT_NONE));
    papers_attribute(out, row, "share", say_fixed(rating->drop_share * 100, 0, UNIT_NONE));
    papers_attribute(out, row, "because",
                     say_part(held ? rated_so(xml_out_arena(out), rating->because) : rating->lacks));
    papers_attribute(out, row, "warning", say_part(rating->warning));
    if (index == run->governing) {
        xml_attribute(out, row, "governs", "yes");
    }
    for (int i = 0; i < rating->factor_count; i++) {
        struct XmlElement *factor = xml_child(out, row, "factor");
        xml_attribute(out, factor, "symbol", rating->factors[i].symbol);
        papers_attribute(out, factor, "value", factor_value(rating->factors[i].value));
        xml_say_attribute(out, factor, "source", factor_source_said(xml_out_arena(out), &rating->factors[i]));
        xml_say(out, factor, rating->factors[i].because);
    }
}

static const char *result_of(const struct Check *check)
{
    switch (check->result) {
    case CHECK_PASS: return "pass";
    case CHECK_FAIL: return "fail";
    case CHECK_NOT_DUE: return check->open ? "open" : check->unknown ? "unknown" : "not due";
    }
    return "";
}

/* Large figures whole, small ones with three digits. */
static struct SayArg figure(double value, enum Unit unit)
{
    const bool whole = fabs(value) >= 1000 && fabs(value) < 1e9; /* from there on it is said in millions */
    return whole ? say_fixed(value, 0, unit) : say_digits(value, fabs(value) < 1000 ? 3 : 4, unit);
}

/* What is left before the limit; what is too much comes out negative. */
static struct SayArg margin_of(struct Arena *arena, const struct Check *check)
{
    const double margin = check->at_least ? check->value - check->limit : check->limit - check->value;
    const double percent = fabs(check->limit) > 1e-12 ? 100 * margin / fabs(check->limit) : 0;
    const struct SayArg left = figure(margin, check->unit);
    return fabs(percent) >= 1000 ? left : say_part(say(arena, SAY_BRACKETS, left, say_fixed(percent, 0, UNIT_PERCENT)));
}

static void add_check(struct XmlOut *out, struct XmlElement *sheet, const struct Check *check)
{
    struct Arena *arena = xml_out_arena(out);
    struct XmlElement *element = xml_child(out, sheet, "check");
    xml_attribute(out, element, "id", check->id);
    xml_say_attribute(out, element, "title", check_title_said(arena, check));
    xml_attribute(out, element, "result", result_of(check));
    if (check->result != CHECK_NOT_DUE && check->unit != UNIT_NONE) {
        /* a pull is one figure on every paper: whole newtons, to the careful side; so is how it presses in a bend */
        const bool force = check->unit == UNIT_N || check->unit == UNIT_N_PER_M;
        const struct SayArg limit =
            force ? say_fixed(floor(check->limit + 1e-6), 0, check->unit) : figure(check->limit, check->unit);
        papers_attribute(out, element, "value",
                         force ? say_fixed(ceil(check->value - 1e-6), 0, check->unit)
                               : figure(check->value, check->unit));
        xml_say_attribute(out, element, "limit",
                          say(arena, check->at_least ? SAY_LIMIT_AT_LEAST : SAY_LIMIT_AT_MOST, limit));
        papers_attribute(out, element, "margin", margin_of(arena, check));
    }
    xml_say_attribute(out, element, "source", check_source_said(arena, check));
    papers_attribute(out, element, "assumes", say_part(check->assumes));
    papers_attribute(out, element, "settles", say_part(settles_said(arena, &check->settles)));
    xml_say(out, element, check->text);
}

static void add_option(struct XmlOut *out, struct XmlElement *sheet, const struct Option *option)
{
    struct XmlElement *element = xml_child(out, sheet, "size");
    papers_attribute(out, element, "size", say_digits(option->size_mm2, 4, UNIT_NONE));
    xml_attribute(out, element, "result", option->chosen ? "taken" : plan_xml_verdict(option->verdict));
    figure_or_dash(out, element, "capacity", option->capacity_a > 0, option->capacity_a, 1);
    figure_or_dash(out, element, "drop", option->capacity_a > 0, option->drop_percent, 2);
    figure_or_dash(out, element, "zs", option->zs_ohm > 0, option->zs_ohm, 3);
    figure_or_dash(out, element, "weight", option->weight_kg_per_km > 0, option->weight_kg_per_km, 0);
    const bool gland = option->gland != NULL && *option->gland != '\0';
    papers_attribute(out, element, "gland", gland ? say_name(option->gland) : say_term(SAY_DASH));
    papers_attribute(out, element, "why", say_part(option->why));
}

/* All but what names the run. */
static void fill_sheet(struct XmlOut *out, struct XmlElement *sheet, const struct Plan *plan, const struct PlanRun *run)
{
    for (int i = 0; i < run->nearest_count; i++) {
        xml_say(out, xml_child(out, sheet, "nearest"), run->nearest[i].text);
    }
    if (run->rated) {
        add_facts(out, sheet, run);
    }
    for (int i = 0; i < run->rating_count; i++) {
        add_row(out, sheet, plan, run, i);
    }
    for (int i = 0; i < run->check_count; i++) {
        add_check(out, sheet, &run->checks[i]);
    }
    for (int i = 0; i < run->option_count; i++) {
        add_option(out, sheet, &run->options[i]);
    }
    papers_chart(out, sheet, run);
}

/* What stands on it, to be compared; data is NULL without memory. */
static struct Bytes sheet_alone(struct Arena *arena, const struct Words *words, const struct Plan *plan,
                                const struct PlanRun *run)
{
    struct XmlOut *out = xml_out_new_piece(arena, "sheet");
    xml_out_speak(out, words);
    fill_sheet(out, xml_root(out), plan, run);
    return xml_out_finish(out);
}

/* The first sheet with the same on it, at most itself. */
static int first_alike(const struct Bytes *alone, int index)
{
    const struct Bytes own = alone[index];
    for (int i = 0; i < index && own.data != NULL; i++) {
        if (alone[i].data != NULL && alone[i].length == own.length &&
            memcmp(alone[i].data, own.data, own.length) == 0) {
            return i;
        }
    }
    return index;
}

void papers_sheets(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    struct Arena *aside = arena_apart(xml_out_arena(out));
    struct Bytes *alone = aside == NULL ? NULL : arena_array(aside, (size_t)plan->run_count, sizeof *alone);
    for (int i = 0; alone != NULL && i < plan->run_count; i++) {
        const struct PlanRun *run = &plan->runs[i];
        if (!run->rated && run->check_count == 0) {
            continue;
        }
        if (plan->run_count > 1) {
            alone[i] = sheet_alone(aside, xml_out_words(out), plan, run);
        }
        const int like = first_alike(alone, i);
        struct XmlElement *sheet = xml_child(out, papers, "sheet");
        xml_attribute(out, sheet, "run", run->settled->name);
        xml_attribute_if(out, sheet, "serves", run->settled->serves);
        xml_attribute(out, sheet, "result", plan_xml_verdict(run->verdict));
        xml_attribute_if(out, sheet, "like", like < i ? plan->runs[like].settled->name : "");
        fill_sheet(out, sheet, plan, run);
    }
    arena_free(aside);
}
