/* plan.xml: the one machine-readable result. What was not surveyed is left out, never written as 0. */
#include "documents/documents.h"
#include "plan_xml_private.h"

void plan_xml_given(struct XmlOut *out, struct XmlElement *element, const char *name, const struct Quantity *quantity)
{
    if (quantity->given) {
        xml_number(out, element, name, quantity->value);
    }
}

static void add_job(struct XmlOut *out, struct XmlElement *root, const struct Job *job)
{
    struct XmlElement *element = xml_child(out, root, "job");
    xml_attribute(out, element, "title", job->title);
    xml_attribute_if(out, element, "site", job->site);
    if (job->location_given) {
        xml_attribute(out, element, "location", survey_word(WORDS_LOCATION, (int)job->location));
    }
    xml_attribute_if(out, element, "reference", job->reference);
    xml_attribute_if(out, element, "customer", job->customer);
    xml_attribute_if(out, element, "surveyor", job->surveyor);
    xml_attribute_if(out, element, "surveyed", job->surveyed);
    xml_attribute_if(out, element, "notes", job->notes);
}

static void add_supply(struct XmlOut *out, struct XmlElement *root, const struct Supply *supply)
{
    struct XmlElement *element = xml_child(out, root, "supply");
    xml_attribute(out, element, "system", survey_word(WORDS_SYSTEM, (int)supply->system));
    xml_integer(out, element, "phases", supply->phases);
    xml_number(out, element, "voltage-V", supply->voltage_v.value);
    plan_xml_given(out, element, "loop-impedance-ohm", &supply->loop_ohm);
    plan_xml_given(out, element, "fault-current-A", &supply->fault_current_a);
    plan_xml_given(out, element, "drop-before-percent", &supply->drop_before_percent);
    plan_xml_given(out, element, "electrode-resistance-ohm", &supply->electrode_ohm);
    xml_attribute_if(out, element, "surge-protection", survey_word(WORDS_SURGE, (int)supply->surge));
    xml_attribute_if(out, element, "surge-declined-by", supply->surge_declined_by);
    xml_attribute_if(out, element, "selectivity", survey_word(WORDS_SELECTIVITY, (int)supply->selectivity));
}

/* These have defaults in the language, and the design used the value either way. */
static void add_conditions(struct XmlOut *out, struct XmlElement *root, const struct Conditions *conditions)
{
    struct XmlElement *element = xml_child(out, root, "conditions");
    xml_number(out, element, "air-degC", conditions->air_degc.value);
    xml_number(out, element, "ground-degC", conditions->ground_degc.value);
    xml_number(out, element, "soil-thermal-K-m-per-W", conditions->soil_thermal_k_m_per_w.value);
    plan_xml_given(out, element, "soil-electrical-ohm-m", &conditions->soil_electrical_ohm_m);
    xml_number(out, element, "terminals-degC", conditions->terminals_degc.value);
}

static void add_earthing(struct XmlOut *out, struct XmlElement *root, const struct Earthing *earthing)
{
    if (!earthing->given) {
        return;
    }
    struct XmlElement *element = xml_child(out, root, "earthing");
    xml_attribute(out, element, "far-end", survey_word(WORDS_FAR_END, (int)earthing->far_end));
    if (earthing->has_electrode) {
        plan_xml_given(out, element, "rods", &earthing->rods);
        plan_xml_given(out, element, "rod-length-m", &earthing->rod_length_m);
        plan_xml_given(out, element, "rod-diameter-mm", &earthing->rod_diameter_mm);
        plan_xml_given(out, element, "rod-spacing-m", &earthing->rod_spacing_m);
        plan_xml_given(out, element, "measured-ohm", &earthing->measured_ohm);
    }
    if (earthing->board_residual_a.given) {
        xml_number(out, element, "board-residual-mA", earthing->board_residual_a.value * 1000);
    }
    if (earthing->extraneous_parts_given) {
        xml_attribute(out, element, "extraneous-parts", earthing->extraneous_parts ? "yes" : "no");
    }
    if (earthing->existing_given) {
        xml_attribute(out, element, "existing", survey_word(WORDS_EXISTING, (int)earthing->existing));
    }
    if (earthing->floor_grid_given) {
        xml_attribute(out, element, "floor-grid", earthing->floor_grid ? "yes" : "no");
    }
}

static void add_electrode(struct XmlOut *out, struct XmlElement *root, const struct PlanElectrode *electrode)
{
    if (!electrode->due) {
        return;
    }
    struct XmlElement *element = xml_child(out, root, "electrode");
    const struct {
        const char *name;
        double value;
    } figures[] = {{"estimate-ohm", electrode->estimate_ohm},
                   {"measured-ohm", electrode->measured_ohm},
                   {"used-ohm", electrode->used_ohm},
                   {"one-rod-ohm", electrode->one_rod_ohm},
                   {"target-ohm", electrode->target_ohm},
                   {"rods-for-target", electrode->rods_for_target},
                   {"depth-for-target-m", electrode->depth_for_target_m},
                   {"rods-for-steady", electrode->rods_for_steady},
                   {"earthing-conductor-mm2", electrode->earthing_conductor_mm2}};
    for (size_t i = 0; i < sizeof figures / sizeof figures[0]; i++) {
        if (figures[i].value > 0) { /* 0: not known */
            xml_number(out, element, figures[i].name, figures[i].value);
        }
    }
    xml_say(out, element, electrode->text);
}

static void add_way(struct XmlOut *out, struct XmlElement *root, const struct Plan *plan)
{
    struct XmlElement *way = xml_child(out, root, "way-along");
    for (int i = 0; i < plan->segment_count; i++) {
        const struct PlanSegment *segment = &plan->segments[i];
        struct XmlElement *element = xml_child(out, way, "segment");
        xml_attribute(out, element, "name", segment->surveyed->name);
        xml_attribute(out, element, "way", survey_word(WORDS_WAY, (int)segment->surveyed->way));
        xml_number(out, element, "from-m", segment->from_m);
        xml_number(out, element, "to-m", segment->to_m);
        plan_xml_given(out, element, "rise-m", &segment->surveyed->rise_m);
        xml_number(out, element, "height-from-m", segment->height_from_m);
        xml_number(out, element, "height-to-m", segment->height_to_m);
        if (survey_in_ground(segment->surveyed->way)) {
            xml_number(out, element, "depth-m", segment->depth_m);
        }
        plan_xml_given(out, element, "heading-deg", &segment->surveyed->heading_deg);
        xml_attribute_if(out, element, "trench", segment->surveyed->shares_trench > 0 ? segment->surveyed->trench : "");
        xml_integer(out, element, "runs", segment->run_count);
        if (segment->surveyed->pits != PITS_NONE && survey_drawn(segment->surveyed)) {
            xml_attribute(out, element, "draw-pits", survey_word(WORDS_PITS, (int)segment->surveyed->pits));
        }
        if (segment->surveyed->drawn) {
            xml_attribute(out, element, "drawn", "yes");
        }
        if (segment->separation_mm > 0) {
            xml_number(out, element, "separation-mm", segment->separation_mm);
        }
        xml_attribute_if(out, element, "separation", xml_said(out, segment->separation));
        xml_attribute_if(out, element, "drawing-in", xml_said(out, segment->drawing_in));
    }
}

static void add_parts(struct XmlOut *out, struct XmlElement *root, const struct PartsList *list)
{
    struct Arena *arena = xml_out_arena(out);
    struct XmlElement *parts = xml_child(out, root, "parts");
    for (int i = 0; list != NULL && i < list->count; i++) {
        const struct Part *part = &list->parts[i];
        struct XmlElement *element = xml_child(out, parts, "part");
        xml_attribute(out, element, "code", part->code);
        xml_say_attribute(out, element, "aisle", parts_aisle_said(part->aisle));
        xml_number(out, element, "quantity", part->quantity);
        xml_attribute(out, element, "unit", part->unit);
        xml_number(out, element, "needed", part->needed);
        if (part->pack > 0) {
            xml_integer(out, element, "pack", part->pack);
            xml_integer(out, element, "packs", part->packs);
            xml_attribute(out, element, "pack-word", part->pack_word);
        }
        if (part->length_m > 0) {
            xml_number(out, element, "length-m", part->length_m);
        }
        xml_attribute_if(out, element, "for", xml_said(out, parts_uses_said(arena, part->use_count, part->uses)));
        xml_attribute_if(out, element, "standard", part->standard);
        xml_attribute_if(out, element, "note", xml_said(out, part->note));
        plan_xml_part_price(out, element, list, i);
        xml_say(out, element, part->description);
    }
    for (int i = 0; list != NULL && i < list->note_count; i++) {
        xml_say(out, xml_child(out, parts, "not-counted"), list->notes[i]);
    }
    if (list != NULL) {
        plan_xml_cutting_and_prices(out, parts, list);
    }
}

/* The stretches as the diagram numbers them: "7 8 9". */
static const char *stretch_numbers(struct Arena *arena, const struct Caution *caution)
{
    if (arena == NULL) { /* the document was lost already */
        return "";
    }
    struct TextBuilder text = text_builder(arena);
    for (int i = 0; i < caution->stretch_count; i++) {
        text_print(&text, "%s%d", i > 0 ? " " : "", caution->stretches[i] + 1);
    }
    return text_done(&text);
}

static void add_remarks(struct XmlOut *out, struct XmlElement *root, const struct Plan *plan)
{
    struct Arena *arena = xml_out_arena(out);
    struct XmlElement *assumptions = xml_child(out, root, "assumptions");
    for (int i = 0; i < plan->assumption_count; i++) {
        struct XmlElement *element = xml_child(out, assumptions, "assumption");
        xml_attribute(out, element, "where", plan->assumptions[i].where);
        xml_say(out, element, plan->assumptions[i].text);
    }
    struct XmlElement *unchecked = xml_child(out, root, "not-checked-list");
    for (int i = 0; i < plan->not_checked_count; i++) {
        struct XmlElement *element = xml_child(out, unchecked, "not-checked");
        xml_attribute(out, element, "id", plan->not_checked[i].id);
        xml_say(out, element, plan->not_checked[i].text);
    }
    for (int i = 0; i < plan->open_count; i++) {
        struct XmlElement *element = xml_child(out, unchecked, "open");
        xml_attribute(out, element, "id", plan->open[i].id);
        xml_attribute(out, element, "run", plan->open[i].run);
        xml_say_attribute(out, element, "settles", settles_said(arena, &plan->open[i].settles));
        xml_say(out, element, plan->open[i].text);
    }
    struct XmlElement *warnings = xml_child(out, root, "warnings");
    for (int i = 0; i < plan->warning_count; i++) {
        const struct PlanWarning *warning = &plan->warnings[i];
        struct XmlElement *element = xml_child(out, warnings, "warning");
        xml_attribute(out, element, "name", diag_name(warning->code));
        xml_attribute_if(out, element, "where", warning->where);
        if (warning->segment >= 0) {
            xml_integer(out, element, "stretch", warning->segment + 1);
        }
        xml_text(out, element, arena == NULL ? "" : diag_sentence(arena, warning->code, warning->words));
    }
    struct XmlElement *cautions = xml_child(out, root, "cautions");
    for (int i = 0; i < plan->caution_count; i++) {
        struct XmlElement *element = xml_child(out, cautions, "caution");
        xml_integer(out, element, "number", i + 1);
        xml_attribute_if(out, element, "where", plan->cautions[i].where);
        xml_attribute_if(out, element, "stretches", stretch_numbers(arena, &plan->cautions[i]));
        xml_attribute(out, element, "source", plan->cautions[i].source);
        xml_say(out, element, plan->cautions[i].text);
    }
}

struct XmlOut *plan_xml_tree(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                             const struct Words *words)
{
    struct XmlOut *out = xml_out_new(arena, "plan");
    if (words != NULL) {
        xml_out_speak(out, words);
    }
    struct XmlElement *root = xml_root(out);
    xml_attribute(out, root, "format", "1");
    xml_attribute(out, root, "route", plan->route);
    xml_attribute(out, root, "verdict", plan_xml_verdict(plan->verdict));
    xml_say_attribute(out, root, "verdict-text", plan->verdict_text);
    xml_attribute(out, root, "rules", plan->rules_edition);
    xml_say_attribute(out, root, "rules-text", plan->rules_text);
    add_job(out, root, &plan->survey->job);
    add_supply(out, root, &plan->survey->supply);
    add_conditions(out, root, &plan->survey->conditions);
    add_earthing(out, root, &plan->survey->earthing);
    add_electrode(out, root, &plan->electrode);
    add_way(out, root, plan);
    for (int i = 0; i < plan->run_count; i++) {
        plan_xml_run(out, root, plan, &plan->runs[i]);
    }
    add_parts(out, root, parts);
    plan_xml_works(out, root, plan, parts);
    add_remarks(out, root, plan);
    return out;
}

struct Bytes document_plan_xml(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts)
{
    return xml_out_finish(plan_xml_tree(arena, plan, parts, NULL));
}
