/* What each stretch takes of work, for the brief and whoever reads plan.xml. */
#include "plan_xml_private.h"

enum { MM = 1000 };

static void add_fixings(struct XmlOut *out, struct XmlElement *element, const struct PartsWay *way)
{
    if (way->end_fixings > 0) {
        xml_integer(out, element, "end-fixings", way->end_fixings);
    }
    if (way->fixings == 0) {
        return;
    }
    xml_integer(out, element, "fixings", way->fixings);
    xml_number(out, element, "spacing-mm", way->spacing_m * MM);
    xml_number(out, element, "pitch-mm", way->pitch_m * MM);
    xml_number(out, element, "first-mm", way->first_m * MM);
    xml_say_attribute(out, element, "fixing", way->fixing);
    xml_attribute(out, element, "fixing-code", way->fixing_code);
    xml_attribute_if(out, element, "grip", xml_said(out, way->grip));
}

static void add_digging(struct XmlOut *out, struct XmlElement *element, const struct PartsWay *way)
{
    if (way->trench_m > 0) {
        xml_number(out, element, "trench-m", way->trench_m);
        xml_number(out, element, "trench-width-m", way->trench_width_m);
        xml_number(out, element, "trench-depth-m", way->trench_depth_m);
        xml_number(out, element, "sand-m3", way->sand_m3);
        xml_number(out, element, "spoil-m3", way->spoil_m3);
    }
}

void plan_xml_works(struct XmlOut *out, struct XmlElement *plan_element, const struct Plan *plan,
                    const struct PartsList *list)
{
    struct XmlElement *works = xml_child(out, plan_element, "way-works");
    for (int i = 0; list != NULL && i < list->way_count; i++) {
        const struct PartsWay *way = &list->ways[i];
        struct XmlElement *element = xml_child(out, works, "way-work");
        xml_attribute(out, element, "segment", plan->segments[way->segment].surveyed->name);
        if (way->run >= 0) {
            xml_attribute(out, element, "run", plan->runs[way->run].settled->name);
        }
        add_fixings(out, element, way);
        if (way->hole_mm > 0) {
            xml_number(out, element, "hole-mm", way->hole_mm);
            xml_number(out, element, "drill-mm", way->drill_mm);
        }
        add_digging(out, element, way);
        for (int k = 0; k < way->text_count; k++) {
            xml_say(out, xml_child(out, element, "say"), way->texts[k].said);
        }
    }
}
