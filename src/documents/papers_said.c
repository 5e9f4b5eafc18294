/* What is being built, said to someone who was not at the survey; and what is connected at the two ends. */
#include "papers_private.h"

static const char *far_place(const struct PlanRun *run)
{
    return *run->surveyed->serves != '\0' ? run->surveyed->serves : "the far end";
}

static void say(struct XmlOut *out, struct XmlElement *said, const char *text)
{
    xml_text(out, xml_child(out, said, "sentence"), text);
}

/* "a 3-core 10 mm2 BS5467 cable to Press room board, and a ..." */
static const char *cables(struct Arena *arena, const struct Plan *plan)
{
    struct TextBuilder text = text_builder(arena);
    for (int i = 0; i < plan->run_count; i++) {
        const struct PlanRun *run = &plan->runs[i];
        const char *join = i == 0 ? "" : i + 1 == plan->run_count ? " and " : ", ";
        const char *kind = run->surveyed->kind == RUN_EARTH  ? "an earth conductor"
                           : run->surveyed->kind == RUN_DATA ? "a data cable"
                                                             : papers_cable(arena, run);
        text_print(&text, "%s%s%s", join, run->rated ? "one " : "", kind);
        if (*run->surveyed->serves != '\0') {
            text_print(&text, " to %s", far_place(run));
        }
    }
    return text_done(&text);
}

static const char *feed_sentence(struct Arena *arena, const struct Plan *plan)
{
    struct TextBuilder text = text_builder(arena);
    bool first = true;
    for (int i = 0; i < plan->run_count; i++) {
        const struct PlanRun *run = &plan->runs[i];
        if (run->rated) {
            text_print(&text, "%s%s is fed through its own %s and is meant for %s A", first ? "" : "; ",
                       run->surveyed->name, run->device_text, number_text(arena, run->design_current_a, 1));
            first = false;
        }
    }
    text_add(&text, ".");
    return text_done(&text);
}

static const char *earth_sentence(struct Arena *arena, const struct Plan *plan)
{
    const struct Earthing *earthing = &plan->survey->earthing;
    const bool island = plan->electrode.due || (earthing->given && earthing->far_end == FAR_END_ISLAND);
    if (!island) {
        return earthing->given ? "The far end uses the supply's earth, which goes out with the cable."
                               : "How the far end is earthed was not written down at the survey: settle it before "
                                 "anything is connected there.";
    }
    const char *rods = !earthing->has_electrode || !earthing->rods.given ? "an electrode of its own"
                       : earthing->rods.value <= 1                       ? "one earth rod of its own"
                                                   : arena_print(arena, "%s earth rods of its own",
                                                                 number_text(arena, earthing->rods.value, 0));
    return arena_print(arena,
                       "The far end is an island: it has %s, and the supply's earth must not reach it, not even "
                       "through the armour.",
                       rods);
}

void papers_said(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    struct Arena *arena = xml_out_arena(out);
    struct XmlElement *said = xml_child(out, papers, "said");
    const double length_m = plan->segment_count > 0 ? plan->segments[plan->segment_count - 1].to_m : 0;
    say(out, said,
        arena_print(arena, "We are running %s, over %d stretch%s and %s from end to end.", cables(arena, plan),
                    plan->segment_count, plan->segment_count == 1 ? "" : "es", papers_metres(arena, length_m)));
    say(out, said, feed_sentence(arena, plan));
    say(out, said, earth_sentence(arena, plan));
}

static const char *armour_word(enum Armour armour)
{
    switch (armour) {
    case ARMOUR_CONNECTED: return "CONNECTED";
    case ARMOUR_ISOLATED: return "ISOLATED";
    case ARMOUR_UNDECIDED: return "ASK FIRST";
    case ARMOUR_NONE: return "";
    }
    return "";
}

static const char *far_advice(enum Armour armour)
{
    switch (armour) {
    case ARMOUR_CONNECTED: return "Gland, earth tag and lead: the armour joins the earth bar here.";
    case ARMOUR_ISOLATED:
        return "No earth tag, no metal box on this earth: an insulated gland or an all-insulating box, and no bare "
               "armour within reach.";
    case ARMOUR_UNDECIDED: return "Not written down at the survey. Leave the armour unconnected until it is settled.";
    case ARMOUR_NONE: return "The cable has no armour.";
    }
    return "";
}

static void add_end(struct XmlOut *out, struct XmlElement *run, const char *which, const struct End *end,
                    const struct PlanEnd *planned, const char *armour, const char *advice)
{
    struct Arena *arena = xml_out_arena(out);
    struct XmlElement *element = xml_child(out, run, "end");
    xml_attribute(out, element, "which", which);
    xml_attribute(out, element, "into", survey_meaning(WORDS_INTO, (int)end->into));
    xml_attribute(out, element, "place", survey_meaning(WORDS_PLACE, (int)end->place));
    xml_attribute(out, element, "tail", papers_metres(arena, end->tail_m.value));
    if (end->loop_m.value > 0) {
        xml_attribute(out, element, "loop", papers_metres(arena, end->loop_m.value));
    }
    xml_attribute_if(out, element, "armour", armour);
    xml_attribute_if(out, element, "room", planned->text);
    xml_text(out, element, advice);
}

/* What each core is used for. Colours: BS 5467 and BS 7671 Table 51; which of them takes which part in a single-phase
 * run: common practice, no source. Only for the cables and connections that leave no choice open. */
struct CoreUse {
    int cores, lines;
    bool core_protects;
    int count;
    struct {
        const char *colour, *is, *sleeve;
    } rows[5];
};
static const struct CoreUse core_uses[] = {
    {2, 1, false, 2, {{"brown", "line", "none"}, {"blue", "neutral", "none"}}},
    {3, 1, true, 3, {{"brown", "line", "none"}, {"grey", "neutral", "blue"}, {"black", "earth", "green-and-yellow"}}},
    {4,
     3,
     false,
     4,
     {{"brown", "L1", "none"}, {"black", "L2", "none"}, {"grey", "L3", "none"}, {"blue", "neutral", "none"}}},
    {5,
     3,
     true,
     5,
     {{"brown", "L1", "none"},
      {"black", "L2", "none"},
      {"grey", "L3", "none"},
      {"blue", "neutral", "none"},
      {"green-and-yellow", "earth", "none"}}},
};

static void add_cores(struct XmlOut *out, struct XmlElement *element, const struct PlanRun *run)
{
    const struct Cable *cable = &run->surveyed->cable;
    const bool protects = cable->cpc == CPC_CORE || cable->cpc == CPC_CORE_AND_ARMOUR;
    for (size_t i = 0; survey_armoured(cable->type) && i < sizeof core_uses / sizeof core_uses[0]; i++) {
        const struct CoreUse *use = &core_uses[i];
        if (use->cores != cable->cores || use->lines != run->currents.lines || use->core_protects != protects) {
            continue;
        }
        for (int k = 0; k < use->count; k++) {
            struct XmlElement *core = xml_child(out, element, "core");
            xml_attribute(out, core, "colour", use->rows[k].colour);
            xml_attribute(out, core, "is", use->rows[k].is);
            xml_attribute(out, core, "sleeve", use->rows[k].sleeve);
        }
    }
}

void papers_ends(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    struct XmlElement *ends = xml_child(out, papers, "ends");
    for (int i = 0; i < plan->run_count; i++) {
        const struct PlanRun *run = &plan->runs[i];
        if (!run->rated) {
            continue;
        }
        const enum Armour far = papers_far_armour(plan, run);
        struct XmlElement *element = xml_child(out, ends, "run");
        xml_attribute(out, element, "name", run->surveyed->name);
        xml_attribute(out, element, "cable", papers_cable(xml_out_arena(out), run));
        xml_attribute(out, element, "protective", survey_meaning(WORDS_CPC, (int)run->surveyed->cable.cpc));
        add_end(out, element, "Supply end", &run->surveyed->start, &run->start_end,
                far == ARMOUR_NONE ? "" : "CONNECTED",
                far == ARMOUR_NONE ? "The cable has no armour."
                                   : "Gland, earth tag and lead: the armour joins the earth bar here.");
        add_end(out, element, "Far end", &run->surveyed->finish, &run->finish_end, armour_word(far), far_advice(far));
        add_cores(out, element, run);
        if (run->cable_facts.text != NULL) {
            xml_text(out, xml_child(out, element, "cable"), run->cable_facts.text);
        }
    }
}
