/* What is being built, said to someone who was not at the survey. */
#include "papers_private.h"

#include <math.h>

static void add_said(struct XmlOut *out, struct XmlElement *said, const char *about, const struct Say *text)
{
    if (text != NULL) {
        struct XmlElement *sentence = xml_child(out, said, "sentence");
        xml_attribute(out, sentence, "about", about);
        xml_say(out, sentence, text);
    }
}

/* "one 3-core 10 mm2 cable BS5467 to Press room board" */
static const struct Say *cable_to(struct Arena *arena, const struct PlanRun *run)
{
    const struct Say *kind = run->settled->kind == RUN_EARTH  ? say(arena, SAY_AN_EARTH_CONDUCTOR)
                             : run->settled->kind == RUN_DATA ? say(arena, SAY_A_DATA_CABLE)
                                                              : papers_cable(arena, run);
    kind = run->rated ? say(arena, SAY_ONE_OF, say_part(kind)) : kind;
    return *run->settled->serves == '\0' ? kind
                                         : say(arena, SAY_TO_PLACE, say_part(kind), say_name(run->settled->serves));
}

static const struct Say *cables(struct Arena *arena, const struct Plan *plan)
{
    const struct Say *list = NULL;
    for (int i = 0; i < plan->run_count; i++) {
        list = say_list(arena, i + 1 == plan->run_count ? SAY_AND : SAY_COMMA, list,
                        say_part(cable_to(arena, &plan->runs[i])));
    }
    return say(arena, SAY_SENTENCE, say_part(list));
}

/* With the run's name where there are several. */
static const struct Say *of_run(struct Arena *arena, const struct Plan *plan, const struct PlanRun *run,
                                const struct Say *said)
{
    return plan->run_count > 1 ? say(arena, SAY_COLON, say_name(run->settled->name), say_part(said)) : said;
}

static const struct Say *feed_sentence(struct Arena *arena, const struct Plan *plan)
{
    const struct Say *list = NULL;
    for (int i = 0; i < plan->run_count; i++) {
        const struct PlanRun *run = &plan->runs[i];
        if (run->rated) {
            const struct Say *fed =
                say(arena, SAY_RUN_IS_FED, say_part(run->device_text), say_fixed(run->design_current_a, 1, UNIT_A));
            list = say_list(arena, SAY_SEMICOLON, list, say_part(of_run(arena, plan, run, fed)));
        }
    }
    return list == NULL ? NULL : say(arena, SAY_SENTENCE, say_part(list));
}

static bool far_earth_known(const struct Plan *plan)
{
    bool known = true;
    for (int i = 0; i < plan->run_count; i++) {
        known = known && (!plan->runs[i].rated || survey_far_earth_known(plan->survey, plan->runs[i].settled));
    }
    return known;
}

static const struct Say *earth_sentence(struct Arena *arena, const struct Plan *plan)
{
    const struct Earthing *earthing = &plan->survey->earthing;
    if (!plan->electrode.due && !(earthing->given && earthing->far_end == FAR_END_ISLAND)) {
        return say(arena, far_earth_known(plan) ? SAY_FAR_END_EXPORT : SAY_FAR_END_NOT_SURVEYED);
    }
    const bool rods = earthing->has_electrode && earthing->rods.given;
    const struct Say *electrode = rods ? say(arena, earthing->rods.value <= 1 ? SAY_ONE_EARTH_ROD : SAY_EARTH_RODS,
                                             say_fixed(earthing->rods.value, 0, UNIT_NONE))
                                       : say(arena, SAY_AN_ELECTRODE);
    return say(arena, SAY_FAR_END_ISLAND, say_part(electrode));
}

const struct Say *papers_legs(struct Arena *arena, const struct PlanRun *run)
{
    return run->legs_m > 0 ? say(arena, SAY_LENGTH_LEGS, papers_metres(run->legs_m)) : NULL;
}

static struct SayArg known(struct Arena *arena, bool is, enum Saying what, struct SayArg figure)
{
    return say_part(is ? say(arena, what, figure) : NULL);
}

/* How long, how heavy, how thick, how tight it may be bent: as far as it is known. The length that the drop was worked
 * out for is on the design sheet. */
static const struct Say *cable_facts(struct Arena *arena, const struct PlanRun *run)
{
    const struct PlanCable *cable = &run->cable_facts;
    const bool thick = cable->overall_mm > 0;
    return say(arena, SAY_LENGTHS, papers_metres(run->route_length_m),
               known(arena, run->order_length_m > 0, SAY_LENGTH_TO_ORDER, say_fixed(run->order_length_m, 0, UNIT_M)),
               known(arena, thick && cable->order_weight_kg > 0, SAY_AS_IS,
                     say_fixed(ceil(cable->order_weight_kg - 1e-6), 0, UNIT_KG)),
               known(arena, thick, SAY_THICK, say_digits(cable->overall_mm, 4, UNIT_MM)),
               known(arena, thick && cable->bend_radius_mm > 0, SAY_CABLE_BENDS,
                     say_fixed(ceil(cable->bend_radius_mm - 1e-6), 0, UNIT_MM)));
}

/* What the network operator has to hear of, the first that applies. Seen: the networks association's form for charging
 * points and heat pumps, and a network operator's page. */
static void say_notice(struct XmlOut *out, struct XmlElement *said, const struct Plan *plan)
{
    struct Arena *arena = xml_out_arena(out);
    enum Saying lead = SAY_NOTHING;
    for (int i = 0; i < plan->run_count && lead == SAY_NOTHING; i++) {
        const struct Run *run = plan->runs[i].settled;
        lead = run->kind != RUN_POWER      ? SAY_NOTHING
               : run->use == USE_CHARGING  ? SAY_NOTICE_CHARGING
               : run->use == USE_HEAT_PUMP ? SAY_NOTICE_HEAT_PUMP
                                           : SAY_NOTHING;
    }
    if (lead == SAY_NOTHING) {
        return;
    }
    struct XmlElement *sentence = xml_child(out, said, "sentence");
    xml_attribute(out, sentence, "about", "notice");
    xml_say_attribute(out, sentence, "lead", say(arena, lead));
    xml_say_attribute(out, sentence, "strong", say(arena, SAY_NOTICE_BEFORE));
    xml_say(out, sentence, say(arena, SAY_NOTICE));
}

void papers_summary(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    struct Arena *arena = xml_out_arena(out);
    struct XmlElement *said = xml_child(out, papers, "said");
    add_said(out, said, "cables", cables(arena, plan));
    for (int i = 0; i < plan->run_count; i++) {
        add_said(out, said, "cable", of_run(arena, plan, &plan->runs[i], cable_facts(arena, &plan->runs[i])));
    }
    add_said(out, said, "feed", feed_sentence(arena, plan));
    add_said(out, said, "far-end", earth_sentence(arena, plan));
    say_notice(out, said, plan);
}
