/* The <run> element of plan.xml: one cable with its ratings, checks and the sizes that were tried. */
#include "documents/shown_private.h"
#include "plan_xml_private.h"

static const char *segment_name(const struct Plan *plan, int index)
{
    return index >= 0 && index < plan->segment_count ? plan->segments[index].surveyed->name : "";
}

const char *plan_xml_result(enum CheckResult result)
{
    switch (result) {
    case CHECK_PASS: return "pass";
    case CHECK_FAIL: return "fail";
    case CHECK_NOT_DUE: return "not-due";
    }
    return "";
}

const char *plan_xml_verdict(enum Verdict verdict)
{
    switch (verdict) {
    case VERDICT_FAIL: return "fail";
    case VERDICT_OPEN: return "open";
    case VERDICT_PASS: return "pass";
    }
    return "";
}

static void add_decision(struct XmlOut *out, struct XmlElement *element, const struct PlanRun *run)
{
    const struct Run *surveyed = run->settled;
    xml_integer(out, element, "phases", run->currents.lines);
    xml_attribute(out, element, "verdict", plan_xml_verdict(run->verdict));
    xml_attribute(out, element, "size-given", run->size_was_given ? "yes" : "no");
    xml_number(out, element, "design-current-A", run->design_current_a);
    if (run->power_factor > 0) {
        xml_number(out, element, "power-factor", run->power_factor);
    }
    xml_attribute(out, element, "device", survey_word(WORDS_DEVICE, (int)run->device));
    if (run->has_curve) {
        xml_attribute(out, element, "curve", survey_word(WORDS_CURVE, (int)run->curve));
    }
    xml_number(out, element, "rating-A", run->rating_a);
    if (surveyed->device.residual_a.given) {
        xml_number(out, element, "residual-mA", surveyed->device.residual_a.value * 1000);
    }
    xml_say_attribute(out, element, "device-text", run->device_text);
}

static void add_outcome(struct XmlOut *out, struct XmlElement *element, const struct Plan *plan,
                        const struct PlanRun *run)
{
    if (run->governing >= 0 && run->governing < run->rating_count) {
        xml_attribute(out, element, "governing", segment_name(plan, run->ratings[run->governing].segment));
        xml_attribute_if(out, element, "governing-because", xml_said(out, run->governing_because));
    }
    xml_number(out, element, "capacity-A", run->capacity_a);
    xml_number(out, element, "voltage-V", run->voltage_v);
    xml_number(out, element, "drop-V", run->drop_v);
    xml_number(out, element, "drop-percent", run->drop_percent);
    xml_number(out, element, "drop-at-load-temperature-percent", run->drop_at_load_temperature_percent);
    xml_attribute_if(out, element, "drop-table", run->drop_table);
    xml_number(out, element, "drop-limit-percent", run->drop_limit_percent);
    xml_attribute_if(out, element, "why-not-smaller", xml_said(out, run->why_not_smaller));
}

/* What hangs on faults is known only when the supply's loop is. */
static void add_fault_results(struct XmlOut *out, struct XmlElement *element, const struct Readings *readings)
{
    if (readings->made) {
        plan_xml_known(out, element, "zs-ohm", readings->zs_hot_ohm);
        plan_xml_known(out, element, "fault-current-far-A", readings->fault_far_a);
        plan_xml_known(out, element, "expected-r1r2-at-20degC-ohm", readings->r1r2_20_ohm);
    }
}

static void add_readings(struct XmlOut *out, struct XmlElement *run_element, const struct Readings *readings)
{
    if (!readings->made) {
        return;
    }
    struct XmlElement *element = xml_child(out, run_element, "readings");
    plan_xml_known(out, element, "r1-at-20degC-ohm", readings->r1_20_ohm);
    plan_xml_known(out, element, "r2-at-20degC-ohm", readings->r2_20_ohm);
    plan_xml_known(out, element, "r1r2-at-20degC-ohm", readings->r1r2_20_ohm);
    plan_xml_known(out, element, "ze-ohm", readings->ze_ohm);
    plan_xml_known(out, element, "zs-at-20degC-ohm", readings->zs_20_ohm);
    plan_xml_known(out, element, "zs-hot-ohm", readings->zs_hot_ohm);
    plan_xml_known(out, element, "fault-current-origin-A", readings->fault_origin_a);
    plan_xml_known(out, element, "fault-current-far-A", readings->fault_far_a);
    plan_xml_known(out, element, "insulation-least-Mohm", readings->insulation_least_mohm);
    plan_xml_known(out, element, "insulation-test-V", readings->insulation_test_v);
    plan_xml_known(out, element, "residual-mA", readings->residual_a * 1000);
    plan_xml_known(out, element, "residual-shortest-ms", readings->residual_shortest_s * 1000);
    plan_xml_known(out, element, "residual-longest-ms", readings->residual_longest_s * 1000);
    xml_attribute_if(out, element, "note", xml_said(out, readings->note));
}

static void add_rating(struct XmlOut *out, struct XmlElement *run_element, const struct Plan *plan,
                       const struct Rating *rating)
{
    struct XmlElement *element = xml_child(out, run_element, "rating");
    xml_attribute(out, element, "segment", segment_name(plan, rating->segment));
    xml_attribute(out, element, "method", rating->method);
    xml_attribute(out, element, "table", rating->table);
    xml_number(out, element, "tabulated-A", rating->tabulated_a);
    xml_number(out, element, "factor", rating->factor);
    xml_number(out, element, "capacity-A", rating->capacity_a);
    xml_number(out, element, "conductor-degC", rating->conductor_degc);
    xml_number(out, element, "electrical-length-m", rating->electrical_length_m);
    xml_number(out, element, "drop-V", rating->drop_v);
    xml_number(out, element, "drop-percent", rating->drop_percent);
    xml_number(out, element, "drop-share", rating->drop_share);
    xml_number(out, element, "drop-at-load-temperature-V", rating->drop_expected_v);
    xml_attribute_if(out, element, "because", xml_said(out, rating->because));
    xml_attribute_if(out, element, "warning", xml_said(out, rating->warning));
    for (int i = 0; i < rating->factor_count && i < RATING_FACTORS_MOST; i++) {
        struct XmlElement *factor = xml_child(out, element, "factor");
        xml_attribute(out, factor, "symbol", rating->factors[i].symbol);
        xml_number(out, factor, "value", rating->factors[i].value);
        xml_attribute(out, factor, "source", rating->factors[i].source);
        xml_say_attribute(out, factor, "because", rating->factors[i].because);
    }
}

static void add_check(struct XmlOut *out, struct XmlElement *run_element, const struct Check *check)
{
    struct Arena *arena = xml_out_arena(out);
    struct XmlElement *element = xml_child(out, run_element, "check");
    xml_attribute(out, element, "id", check->id);
    xml_attribute(out, element, "result", plan_xml_result(check->result));
    if (check->result != CHECK_NOT_DUE && check->unit != UNIT_NONE) {
        xml_number(out, element, "value", check->value);
        xml_number(out, element, "limit", check->limit);
        xml_attribute(out, element, "unit", shown_unit(arena, check->unit));
        if (check->at_least) { /* bigger is better: the value must reach the limit */
            xml_attribute(out, element, "at-least", "yes");
        }
    }
    if (check->unknown) { /* not made because the survey lacks something */
        xml_attribute(out, element, "unknown", "yes");
        xml_attribute_if(out, element, "settles", xml_said(out, settles_said(arena, &check->settles)));
    }
    if (check->open) {
        xml_attribute(out, element, "open", "yes");
    }
    xml_attribute(out, element, "source", check->source);
    xml_say(out, element, check->text);
}

/* The working stands beside the checks, not in them: a check's content is its sentence. */
static void add_working(struct XmlOut *out, struct XmlElement *run_element, const struct Check *check)
{
    if (check->step_count == 0 || check->steps == NULL) {
        return;
    }
    struct Arena *arena = xml_out_arena(out);
    struct XmlElement *working = xml_child(out, run_element, "working");
    xml_attribute(out, working, "check", check->id);
    for (int i = 0; i < check->step_count; i++) {
        const struct Step *step = &check->steps[i];
        struct XmlElement *element = xml_child(out, working, "step");
        xml_say_attribute(out, element, "what", step->what);
        xml_attribute_if(out, element, "formula", xml_said(out, step->formula));
        xml_attribute_if(out, element, "numbers", xml_said(out, say_alone(arena, say_calculation(step->numbers))));
        xml_attribute_if(out, element, "result", xml_said(out, say_alone(arena, step->result)));
        xml_attribute_if(out, element, "source", xml_said(out, step->source));
    }
}

static void add_option(struct XmlOut *out, struct XmlElement *run_element, const struct Option *option)
{
    struct XmlElement *element = xml_child(out, run_element, "option");
    xml_number(out, element, "size-mm2", option->size_mm2);
    xml_attribute(out, element, "verdict", plan_xml_verdict(option->verdict));
    xml_attribute(out, element, "chosen", option->chosen ? "yes" : "no");
    if (option->capacity_a > 0) { /* 0: a table lacks a figure for this size */
        xml_number(out, element, "capacity-A", option->capacity_a);
        xml_number(out, element, "drop-percent", option->drop_percent);
    }
    plan_xml_known(out, element, "zs-ohm", option->zs_ohm);
    plan_xml_known(out, element, "protective-needed-mm2", option->protective_needed_mm2);
    plan_xml_known(out, element, "weight-kg-per-km", option->weight_kg_per_km);
    xml_attribute_if(out, element, "gland", option->gland);
    xml_attribute_if(out, element, "governing", option->governing);
    xml_attribute_if(out, element, "fails", option->fails);
    xml_attribute_if(out, element, "open", option->open);
    xml_attribute_if(out, element, "why", xml_said(out, option->why));
}

/* The sizes with another protective conductor stand apart, so that <option> right below <run> stays what was asked for.
 */
static void add_alternative(struct XmlOut *out, struct XmlElement *run_element, const struct Alternative *alternative)
{
    struct XmlElement *element = xml_child(out, run_element, "alternatives");
    xml_attribute(out, element, "cpc", survey_word(WORDS_CPC, (int)alternative->cpc));
    xml_integer(out, element, "phases", alternative->lines);
    xml_attribute(out, element, "verdict", plan_xml_verdict(alternative->verdict));
    xml_number(out, element, "size-mm2", alternative->size_mm2);
    for (int i = 0; i < alternative->option_count; i++) {
        add_option(out, element, &alternative->options[i]);
    }
}

static void add_checks(struct XmlOut *out, struct XmlElement *element, const struct PlanRun *run)
{
    for (int i = 0; i < run->check_count; i++) {
        add_check(out, element, &run->checks[i]);
    }
    for (int i = 0; i < run->check_count; i++) {
        add_working(out, element, &run->checks[i]);
    }
}

static void add_rated(struct XmlOut *out, struct XmlElement *element, const struct Plan *plan,
                      const struct PlanRun *run)
{
    for (int i = 0; i < run->currents.lines && i < 3; i++) {
        struct XmlElement *line = xml_child(out, element, "line");
        xml_integer(out, line, "number", i + 1);
        xml_number(out, line, "current-A", run->currents.line_a[i]);
    }
    for (int i = 0; i < run->rating_count; i++) {
        add_rating(out, element, plan, &run->ratings[i]);
    }
    add_checks(out, element, run);
    for (int i = 0; i < run->option_count; i++) {
        add_option(out, element, &run->options[i]);
    }
    for (int i = 0; i < run->alternative_count; i++) {
        add_alternative(out, element, &run->alternatives[i]);
    }
    add_readings(out, element, &run->readings);
}

/* Where the cable changes its depth. Left out: `other` where an end of the run lies there. */
static void add_leg(struct XmlOut *out, struct XmlElement *run_element, const struct Plan *plan,
                    const struct PlanLeg *leg)
{
    struct XmlElement *element = xml_child(out, run_element, "leg");
    xml_attribute(out, element, "segment", segment_name(plan, leg->segment));
    xml_attribute_if(out, element, "other", segment_name(plan, leg->other));
    xml_attribute(out, element, "goes", leg->down ? "down" : "up");
    xml_number(out, element, "length-m", leg->length_m);
    xml_attribute(out, element, "survey", survey_word(WORDS_LEGS, leg->included ? LEGS_INCLUDED : LEGS_ADDED));
}

void plan_xml_run(struct XmlOut *out, struct XmlElement *plan_element, const struct Plan *plan,
                  const struct PlanRun *run)
{
    const struct Run *surveyed = run->settled;
    struct XmlElement *element = xml_child(out, plan_element, "run");
    xml_attribute(out, element, "name", surveyed->name);
    xml_attribute(out, element, "kind", survey_word(WORDS_RUN_KIND, (int)surveyed->kind));
    xml_attribute_if(out, element, "serves", surveyed->serves);
    xml_attribute(out, element, "type", survey_word(WORDS_CABLE, (int)surveyed->cable.type));
    if (surveyed->cable.cores > 0) {
        xml_integer(out, element, "cores", surveyed->cable.cores);
    }
    if (run->size_mm2 > 0) {
        xml_number(out, element, "size-mm2", run->size_mm2);
    }
    if (run->rated) {
        xml_attribute(out, element, "cpc", survey_word(WORDS_CPC, (int)surveyed->cable.cpc));
        add_decision(out, element, run);
    }
    xml_number(out, element, "route-length-m", run->route_length_m);
    xml_number(out, element, "electrical-length-m", run->electrical_length_m);
    xml_integer(out, element, "order-length-m", run->order_length_m);
    plan_xml_known(out, element, "legs-m", run->legs_m);
    if (run->rated) {
        add_outcome(out, element, plan, run);
        add_fault_results(out, element, &run->readings);
    }
    struct XmlElement *along = xml_child(out, element, "along");
    for (int i = 0; i < surveyed->along_count; i++) {
        xml_text(out, xml_child(out, along, "through"), segment_name(plan, surveyed->along[i]));
    }
    for (int i = 0; i < run->leg_count; i++) {
        add_leg(out, element, plan, &run->legs[i]);
    }
    plan_xml_end(out, element, "start", &surveyed->start, &run->start_end);
    plan_xml_end(out, element, "finish", &surveyed->finish, &run->finish_end);
    plan_xml_mechanics(out, element, plan, run);
    if (run->rated) {
        add_rated(out, element, plan, run);
    } else {
        add_checks(out, element, run);
    }
}
