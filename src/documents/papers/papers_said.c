/* What is being built, said to someone who was not at the survey. */
#include "papers_private.h"

#include "documents/shown_private.h"

static const char *far_place(const struct PlanRun *run)
{
    return *run->surveyed->serves != '\0' ? run->surveyed->serves : "the far end";
}

static void add_said(struct XmlOut *out, struct XmlElement *said, const char *about, const char *text)
{
    struct XmlElement *sentence = xml_child(out, said, "sentence");
    xml_attribute(out, sentence, "about", about);
    xml_text(out, sentence, text);
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
            text_print(&text, "%s %s is fed through its own %s and is meant for %s A", first ? "Run" : "; run",
                       run->surveyed->name, shown_said(arena, run->device_text),
                       number_text(arena, run->design_current_a, 1));
            first = false;
        }
    }
    text_add(&text, ".");
    return text_done(&text);
}

static bool far_earth_known(const struct Plan *plan)
{
    bool known = true;
    for (int i = 0; i < plan->run_count; i++) {
        known = known && (!plan->runs[i].rated || survey_far_earth_known(plan->survey, plan->runs[i].surveyed));
    }
    return known;
}

static const char *earth_sentence(struct Arena *arena, const struct Plan *plan)
{
    const struct Earthing *earthing = &plan->survey->earthing;
    const bool island = plan->electrode.due || (earthing->given && earthing->far_end == FAR_END_ISLAND);
    if (!island) {
        return far_earth_known(plan)
                   ? "The far end uses the supply's earth, which goes out with the cable."
                   : "How the far end is earthed was not written down at the survey: settle it before "
                     "anything is connected there.";
    }
    const char *rods = !earthing->has_electrode || !earthing->rods.given ? "an electrode of its own"
                       : earthing->rods.value <= 1                       ? "one earth rod of its own"
                                                   : arena_print(arena, "%s earth rods of its own",
                                                                 number_text(arena, earthing->rods.value, 0));
    return arena_print(arena,
                       "The far end is an island: it has %s, and the supply's earth must not reach it, neither "
                       "through the armour nor through an earth core or cable.",
                       rods);
}

const char *papers_legs(struct Arena *arena, const struct PlanRun *run)
{
    return run->legs_m > 0 ? arena_print(arena, " and %s into and out of the ground", papers_metres(arena, run->legs_m))
                           : "";
}

/* "Run feeder goes over 11 stretches: 68.64 m along the way, ...": the three lengths that other sheets name, in words.
 */
static const char *lengths(struct Arena *arena, const struct PlanRun *run)
{
    struct TextBuilder text = text_builder(arena);
    text_print(&text, "Run %s goes over %d stretch%s: %s along the way", run->surveyed->name,
               run->surveyed->along_count, run->surveyed->along_count == 1 ? "" : "es",
               papers_metres(arena, run->route_length_m));
    if (run->electrical_length_m > 0) {
        text_print(&text, ", %s with the tails and loops at its ends%s", papers_metres(arena, run->electrical_length_m),
                   papers_legs(arena, run));
    }
    if (run->order_length_m > 0) {
        text_print(&text, ", %d m to order with the spare", run->order_length_m);
    }
    text_add(&text, ".");
    return text_done(&text);
}

/* What the network operator has to hear of, the first that applies. Seen: the networks association's form for charging
 * points and heat pumps, and a network operator's page. */
static void say_notice(struct XmlOut *out, struct XmlElement *said, const struct Plan *plan)
{
    const char *what = NULL;
    for (int i = 0; i < plan->run_count && what == NULL; i++) {
        const struct Run *run = plan->runs[i].surveyed;
        const bool power = run->kind == RUN_POWER;
        what = power && run->use == USE_CHARGING    ? "A charging point"
               : power && run->use == USE_HEAT_PUMP ? "A heat pump"
                                                    : NULL;
    }
    if (what == NULL) {
        return;
    }
    struct XmlElement *sentence = xml_child(out, said, "sentence");
    xml_attribute(out, sentence, "about", "notice");
    xml_attribute(out, sentence, "lead", arena_print(xml_out_arena(out), "%s: work out the new maximum demand", what));
    xml_attribute(out, sentence, "strong", "before");
    xml_text(out, sentence,
             "the work, by the network operator's form. Over 60 A in a house or over its cut-out, or with a cut-out "
             "that is looped, unsound or not known: apply, and connect when he agrees. Else connect and tell him "
             "within 28 days (networks association's form, one network operator's page).");
}

void papers_said(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    struct Arena *arena = xml_out_arena(out);
    struct XmlElement *said = xml_child(out, papers, "said");
    add_said(out, said, "cables", arena_print(arena, "We are running %s.", cables(arena, plan)));
    for (int i = 0; i < plan->run_count; i++) {
        add_said(out, said, "lengths", lengths(arena, &plan->runs[i]));
    }
    add_said(out, said, "feed", feed_sentence(arena, plan));
    add_said(out, said, "far-end", earth_sentence(arena, plan));
    say_notice(out, said, plan);
}
