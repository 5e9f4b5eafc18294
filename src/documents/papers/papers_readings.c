/* The readings of a built job, in the order of a schedule of test results, to copy from. */
#include "documents/documents.h"
#include "documents/measured_said_private.h"
#include "papers_private.h"

static void add_reading(struct XmlOut *out, struct XmlElement *run, const struct Measured *measured)
{
    struct Arena *arena = xml_out_arena(out);
    const struct MeasuredSaid said = measured_said(arena, measured);
    struct XmlElement *element = xml_child(out, run, "reading");
    xml_say_attribute(out, element, "name", said.name);
    papers_attribute(out, element, "value", say_part(said.value));
    papers_attribute(out, element, "expected", say_part(said.expected));
    papers_attribute(out, element, "limit", say_part(said.limit));
    xml_say_attribute(out, element, "fit", said.fit);
    xml_attribute(out, element, "state", measured_fit_word(measured->fit));
    if (said.remark != NULL) {
        xml_say(out, element, said.remark);
    }
}

static void add_run(struct XmlOut *out, struct XmlElement *papers, const struct PlanRun *run)
{
    struct Arena *arena = xml_out_arena(out);
    const struct Measurements *read = &run->settled->measured;
    struct XmlElement *element = xml_child(out, papers, "read");
    xml_attribute(out, element, "run", run->settled->name);
    xml_attribute_if(out, element, "serves", run->settled->serves);
    xml_say_attribute(out, element, "cable", papers_cable(arena, run));
    papers_attribute(out, element, "device", papers_device(run));
    xml_attribute(out, element, "verdict", verdict_word(run->measured.verdict));
    xml_say_attribute(out, element, "taken", measured_run_said(arena, run));
    xml_attribute_if(out, element, "by", read->by);
    xml_attribute_if(out, element, "date", read->date);
    xml_attribute_if(out, element, "instrument", read->meter_name);
    papers_attribute(out, element, "note", say_part(run->readings.note));
    for (int i = 0; i < run->measured.count; i++) {
        add_reading(out, element, &run->measured.list[i]);
    }
}

void papers_readings(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    if (!paper_is_due(plan, PAPER_READINGS)) {
        return;
    }
    struct Arena *arena = xml_out_arena(out);
    struct XmlElement *outcome = xml_child(out, papers, "readings-outcome");
    xml_attribute(out, outcome, "verdict", verdict_word(readings_verdict(plan)));
    xml_say(out, outcome, measured_why(arena, plan));
    for (int i = 0; i < plan->run_count; i++) {
        if (plan->runs[i].rated && plan->runs[i].measured.list != NULL) {
            add_run(out, papers, &plan->runs[i]);
        }
    }
}
