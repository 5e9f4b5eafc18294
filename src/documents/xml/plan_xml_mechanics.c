/* The part of <run> in plan.xml that is about the cable as a thing: its dimensions, bends, pulls and ends. */
#include "plan_xml_private.h"

void plan_xml_known(struct XmlOut *out, struct XmlElement *element, const char *name, double value)
{
    if (value > 0) {
        xml_number(out, element, name, value);
    }
}

static void add_result(struct XmlOut *out, struct XmlElement *element, enum CheckResult result)
{
    xml_attribute(out, element, "result", plan_xml_result(result));
}

static void add_cable(struct XmlOut *out, struct XmlElement *run_element, const struct PlanCable *cable)
{
    if (cable->text == NULL) {
        return;
    }
    struct XmlElement *element = xml_child(out, run_element, "cable-facts");
    plan_xml_known(out, element, "diameter-mm", cable->overall_mm);
    plan_xml_known(out, element, "under-armour-mm", cable->under_armour_mm);
    plan_xml_known(out, element, "bend-radius-mm", cable->bend_radius_mm);
    plan_xml_known(out, element, "weight-kg-per-m", cable->weight_kg_per_m);
    plan_xml_known(out, element, "order-weight-kg", cable->order_weight_kg);
    xml_attribute(out, element, "heavy", cable->heavy ? "yes" : "no");
    xml_attribute_if(out, element, "source", cable->source);
    xml_say(out, element, cable->text);
}

static void add_bend(struct XmlOut *out, struct XmlElement *run_element, const struct Plan *plan,
                     const struct PlanBend *bend)
{
    struct XmlElement *element = xml_child(out, run_element, "bend");
    xml_attribute(out, element, "segment", plan->segments[bend->segment].surveyed->name);
    xml_integer(out, element, "count", bend->count);
    xml_number(out, element, "total-deg", bend->total_deg);
    plan_xml_known(out, element, "tightest-mm", bend->tightest_mm);
    plan_xml_known(out, element, "least-mm", bend->least_mm);
    add_result(out, element, bend->result);
    xml_say(out, element, bend->text);
}

static const char *drum_word(const struct PlanPull *pull)
{
    return pull->either ? "either" : pull->from_far ? "finish" : "start";
}

static void add_forces(struct XmlOut *out, struct XmlElement *element, const struct PlanPull *pull)
{
    xml_attribute(out, element, "drum-at", drum_word(pull));
    xml_number(out, element, "friction", pull->friction);
    xml_attribute(out, element, "lubricant", pull->lubricant ? "yes" : "no");
    xml_number(out, element, "tension-N", pull->tension_n);
    xml_number(out, element, "limit-N", pull->limit_n);
    xml_number(out, element, "other-end-N", pull->other_end_n);
    plan_xml_known(out, element, "sidewall-N-per-m", pull->sidewall_n_per_m);
    xml_number(out, element, "sidewall-limit-N-per-m", pull->sidewall_limit_n_per_m);
    if (pull->pit_at_m > 0) {
        xml_number(out, element, "pit-at-m", pull->pit_at_m);
        xml_number(out, element, "pit-tension-N", pull->pit_tension_n);
    }
    xml_attribute_if(out, element, "because", xml_said(out, pull->because));
}

static void add_pull(struct XmlOut *out, struct XmlElement *run_element, const struct Plan *plan,
                     const struct PlanRun *run, const struct PlanPull *pull)
{
    const int *along = run->settled->along;
    struct XmlElement *element = xml_child(out, run_element, "pull");
    xml_attribute(out, element, "first", plan->segments[along[pull->first]].surveyed->name);
    xml_attribute(out, element, "last", plan->segments[along[pull->first + pull->count - 1]].surveyed->name);
    xml_number(out, element, "length-m", pull->length_m);
    xml_number(out, element, "bends-deg", pull->bends_deg);
    xml_number(out, element, "bends-most-deg", pull->bends_most_deg);
    xml_attribute_if(out, element, "bends-text", xml_said(out, pull->bends_text));
    add_result(out, element, pull->result);
    if (pull->worked) {
        add_forces(out, element, pull);
    }
    xml_say(out, element, pull->text);
}

void plan_xml_mechanics(struct XmlOut *out, struct XmlElement *run_element, const struct Plan *plan,
                        const struct PlanRun *run)
{
    add_cable(out, run_element, &run->cable_facts);
    for (int i = 0; i < run->bend_count; i++) {
        add_bend(out, run_element, plan, &run->bends[i]);
    }
    for (int i = 0; i < run->pull_count; i++) {
        add_pull(out, run_element, plan, run, &run->pulls[i]);
    }
}

void plan_xml_end(struct XmlOut *out, struct XmlElement *run_element, const char *name, const struct End *end,
                  const struct PlanEnd *planned)
{
    struct XmlElement *element = xml_child(out, run_element, name);
    xml_attribute(out, element, "into", survey_word(WORDS_INTO, (int)end->into));
    xml_attribute(out, element, "place", survey_word(WORDS_PLACE, (int)end->place));
    if (end->from_given) {
        xml_attribute(out, element, "from", survey_word(WORDS_FROM, (int)end->from));
    }
    plan_xml_given(out, element, "tails-m", &end->tails_m);
    xml_number(out, element, "tail-m", end->tail_m.value);
    plan_xml_given(out, element, "loop-m", &end->loop_m);
    plan_xml_known(out, element, "room-mm", planned->room_mm);
    if (end->entry < ENTRY_COUNT && planned->room_mm > 0) {
        xml_attribute(out, element, "entry", survey_word(WORDS_ENTRY, (int)end->entry));
    }
    plan_xml_known(out, element, "needs-mm", planned->needs_mm);
    if (planned->tight) {
        xml_attribute(out, element, "tight", "yes");
    }
    xml_attribute_if(out, element, "advice", xml_said(out, planned->text));
}
