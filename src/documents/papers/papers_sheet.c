/* The designer's and inspector's figures of one run, each rounded once, here, for the whole column that it stands in.
 */
#include "documents/shown_private.h"
#include "documents/xml/plan_xml_private.h"

#include "documents/shown_private.h"
#include "papers_private.h"

#include <math.h>
#include <string.h>

static void fact(struct XmlOut *out, struct XmlElement *sheet, const char *name, const char *text)
{
    if (*text != '\0') {
        struct XmlElement *element = xml_child(out, sheet, "fact");
        xml_attribute(out, element, "name", name);
        xml_text(out, element, text);
    }
}

static const char *load_text(struct Arena *arena, const struct Load *load)
{
    struct TextBuilder text = text_builder(arena);
    if (load->power_w.given) {
        text_print(&text, "%s %s", number_significant(arena, load->power_w.value / 1000, 4),
                   load->power_is_apparent ? "kVA" : "kW");
    } else {
        text_print(&text, "%s A", number_significant(arena, load->current_a.value, 4));
    }
    if (load->power_factor.given) {
        text_print(&text, ", power factor %s", number_significant(arena, load->power_factor.value, 3));
    }
    if (load->diversity.given) {
        text_print(&text, ", diversity %s %%", number_significant(arena, load->diversity.value * 100, 3));
    }
    if (load->phases == 3) {
        text_add(&text, ", three-phase");
    }
    return text_done(&text);
}

static void add_facts(struct XmlOut *out, struct XmlElement *sheet, const struct PlanRun *run)
{
    struct Arena *arena = xml_out_arena(out);
    const struct Run *surveyed = run->surveyed;
    for (int i = 0; i < surveyed->load_count; i++) {
        fact(out, sheet, surveyed->load_count == 1 ? "Load" : arena_print(arena, "Load %d", i + 1),
             load_text(arena, &surveyed->loads[i]));
    }
    for (int i = 0; run->currents.lines == 3 && i < 3; i++) {
        fact(out, sheet, arena_print(arena, "Line L%d", i + 1),
             arena_print(arena, "%s A", number_text(arena, run->currents.line_a[i], 1)));
    }
    fact(out, sheet, "Design current, Ib", arena_print(arena, "%s A", number_text(arena, run->design_current_a, 1)));
    fact(out, sheet, "Fed from",
         arena_print(arena, "%s%s", survey_meaning(WORDS_FROM, (int)surveyed->start.from),
                     surveyed->start.from_given ? "" : " (taken, not surveyed)"));
    fact(out, sheet, "Device, In", shown_said(arena, run->device_full != NULL ? run->device_full : run->device_text));
    fact(out, sheet, "Why this device", shown_said(arena, run->device_because));
    fact(out, sheet, "Cable", papers_cable(arena, run));
    fact(out, sheet, "Size", run->size_was_given ? "given by the surveyor" : "chosen: the smallest that passes");
    fact(out, sheet, "Why not the next smaller", shown_said(arena, run->why_not_smaller));
    fact(out, sheet, "Protective conductor", survey_meaning(WORDS_CPC, (int)surveyed->cable.cpc));
    fact(out, sheet, "Carries, Iz, at the worst place",
         arena_print(arena, "%s A", number_text(arena, run->capacity_a, 1)));
    fact(out, sheet, "Governed by", shown_said(arena, run->governing_because));
    fact(out, sheet, "Voltage drop",
         arena_print(arena, "%s V, %s %% by Table %s; %s %% with the conductors as warm as this load makes them",
                     number_text(arena, run->drop_v, 2), number_text(arena, run->drop_percent, 2), run->drop_table,
                     number_text(arena, run->drop_at_load_temperature_percent, 2)));
    fact(out, sheet, "Length",
         arena_print(arena, "route %s m; with tails and loops%s %s m; to order %d m",
                     number_text(arena, run->route_length_m, 2), papers_legs(arena, run),
                     number_text(arena, run->electrical_length_m, 2), run->order_length_m));
}

static void add_row(struct XmlOut *out, struct XmlElement *sheet, const struct Plan *plan, const struct PlanRun *run,
                    int index)
{
    struct Arena *arena = xml_out_arena(out);
    const struct Rating *rating = &run->ratings[index];
    struct XmlElement *row = xml_child(out, sheet, "row");
    xml_integer(out, row, "number", rating->segment + 1);
    xml_attribute(out, row, "name", plan->segments[rating->segment].surveyed->name);
    xml_attribute(out, row, "way", survey_word(WORDS_WAY, (int)plan->segments[rating->segment].surveyed->way));
    xml_attribute(out, row, "length", number_text(arena, rating->electrical_length_m, 2));
    xml_attribute(out, row, "method", rating->method);
    xml_attribute(out, row, "table", rating->table);
    xml_attribute(out, row, "tabulated", number_text(arena, rating->tabulated_a, 1));
    xml_attribute(out, row, "factor", number_text(arena, rating->factor, 3));
    xml_attribute(out, row, "capacity", number_text(arena, rating->capacity_a, 1));
    xml_attribute(out, row, "margin", number_text(arena, rating->capacity_a - run->rating_a, 1));
    xml_attribute(out, row, "conductor", number_text(arena, rating->conductor_degc, 0));
    xml_attribute(out, row, "drop", number_text(arena, rating->drop_v, 2));
    xml_attribute(out, row, "share", number_text(arena, rating->drop_share * 100, 0));
    xml_attribute_if(out, row, "because", shown_said(arena, rating->because));
    xml_attribute_if(out, row, "warning", shown_said(arena, rating->warning));
    if (index == run->governing) {
        xml_attribute(out, row, "governs", "yes");
    }
    for (int i = 0; i < rating->factor_count; i++) {
        struct XmlElement *factor = xml_child(out, row, "factor");
        xml_attribute(out, factor, "symbol", rating->factors[i].symbol);
        xml_attribute(out, factor, "value", number_text(arena, rating->factors[i].value, 2));
        xml_attribute(out, factor, "source", rating->factors[i].source);
        xml_text(out, factor, shown_said(arena, rating->factors[i].because));
    }
}

/* What a check is called on paper; one that is not listed keeps its id. */
static const char *check_title(struct Arena *arena, const char *id)
{
    static const struct {
        const char *id, *title;
    } titles[] = {
        {"load", "Load against device"},
        {"capacity", "Device against cable"},
        {"drop", "Voltage drop"},
        {"terminals", "Terminal temperature"},
        {"disconnection", "Disconnection"},
        {"protective-conductor", "Protective conductor in a fault"},
        {"live-conductors", "Live conductors in a fault"},
        {"breaking-capacity", "Breaking capacity"},
        {"electrode", "Earth electrode"},
        {"residual-position", "Where the outbuilding's residual device stands"},
        {"bonding", "Main bonding"},
        {"residual-protection", "Residual device, by what is fed and where"},
        {"location-earth", "The supply's earth in this kind of place"},
        {"location-depth", "Depth in this kind of place"},
        {"hidden-cable", "Cable hidden in a wall"},
        {"existing-supply", "A supply that is there already"},
        {"surge-protection", "Surge protection"},
        {"selectivity", "Selectivity"},
        {"device-for-load", "Device for this kind of load"},
        {"charging-earth", "Earth of a charging point"},
        {"generation", "Generation"},
        {"starting", "Starting current"},
        {"bend", "Bend radius"},
        {"duct-fill", "Room in the duct"},
        {"segregation", "Data beside power"},
        {"pull", "Pulling force"},
    };
    const size_t length = strcspn(id, ":");
    for (size_t i = 0; i < sizeof titles / sizeof titles[0]; i++) {
        if (strlen(titles[i].id) == length && strncmp(titles[i].id, id, length) == 0) {
            return id[length] == ':' ? arena_print(arena, "%s, %s", titles[i].title, id + length + 1) : titles[i].title;
        }
    }
    return id;
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
static const char *figure(struct Arena *arena, double value)
{
    if (fabs(value) >= 1e9) {
        return arena_print(arena, "%s x 10^6", number_significant(arena, value / 1e6, 4));
    }
    return fabs(value) >= 1000 ? number_text(arena, value, 0) : number_significant(arena, value, 3);
}

/* What is left before the limit; what is too much comes out negative. */
static const char *margin_text(struct Arena *arena, const struct Check *check)
{
    const double margin = check->at_least ? check->value - check->limit : check->limit - check->value;
    const double part = fabs(check->limit) > 1e-12 ? 100 * margin / fabs(check->limit) : 0;
    const char *percent = fabs(part) >= 1000 ? "" : arena_print(arena, " (%s %%)", number_text(arena, part, 0));
    const char *unit = check->unit == NULL ? "" : check->unit;
    return arena_print(arena, "%s %s%s", figure(arena, margin), unit, percent);
}

static void add_check(struct XmlOut *out, struct XmlElement *sheet, const struct Check *check)
{
    struct Arena *arena = xml_out_arena(out);
    const char *unit = check->unit == NULL ? "" : check->unit;
    struct XmlElement *element = xml_child(out, sheet, "check");
    xml_attribute(out, element, "id", check->id);
    xml_attribute(out, element, "title", check_title(arena, check->id));
    xml_attribute(out, element, "result", result_of(check));
    if (check->result != CHECK_NOT_DUE && *unit != '\0') {
        xml_attribute(out, element, "value", arena_print(arena, "%s %s", figure(arena, check->value), unit));
        xml_attribute(out, element, "limit",
                      arena_print(arena, "%s %s %s", check->at_least ? "at least" : "at most",
                                  figure(arena, check->limit), unit));
        xml_attribute(out, element, "margin", margin_text(arena, check));
    }
    xml_attribute(out, element, "source", check->source);
    xml_attribute_if(out, element, "assumes", shown_said(arena, check->assumes));
    xml_attribute_if(out, element, "settles", shown_said(arena, settles_said(arena, &check->settles)));
    xml_text(out, element, shown_said(arena, check->text));
}

static const char *or_dash(struct Arena *arena, double value, int decimals)
{
    return value > 0 ? number_text(arena, value, decimals) : "-";
}

static void add_option(struct XmlOut *out, struct XmlElement *sheet, const struct Option *option)
{
    struct Arena *arena = xml_out_arena(out);
    struct XmlElement *element = xml_child(out, sheet, "size");
    xml_attribute(out, element, "size", number_significant(arena, option->size_mm2, 4));
    xml_attribute(out, element, "result", option->chosen ? "taken" : plan_xml_verdict(option->verdict));
    xml_attribute(out, element, "capacity", or_dash(arena, option->capacity_a, 1));
    xml_attribute(out, element, "drop", option->capacity_a > 0 ? number_text(arena, option->drop_percent, 2) : "-");
    xml_attribute(out, element, "zs", or_dash(arena, option->zs_ohm, 3));
    xml_attribute(out, element, "weight", or_dash(arena, option->weight_kg_per_km, 0));
    xml_attribute(out, element, "gland", option->gland == NULL || *option->gland == '\0' ? "-" : option->gland);
    xml_attribute_if(out, element, "why", shown_said(arena, option->why));
}

void papers_sheet(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan, const struct PlanRun *run)
{
    struct XmlElement *sheet = xml_child(out, papers, "sheet");
    xml_attribute(out, sheet, "run", run->surveyed->name);
    xml_attribute_if(out, sheet, "serves", run->surveyed->serves);
    xml_attribute(out, sheet, "result", plan_xml_verdict(run->verdict));
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
