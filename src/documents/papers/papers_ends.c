/* What is connected at the two ends of a run: the armour, the earth that goes with the cable, and every core. At the
 * far end of an island nothing that carries the supply's earth may be joined to the outbuilding's, so each end is said
 * by itself. */
#include "papers_private.h"

#include "documents/earth_ends_private.h"
#include "documents/shown_private.h"

static const char *armour_advice(enum EarthEnd armour, const struct End *end)
{
    switch (armour) {
    case EARTH_CONNECTED: return "Gland, earth tag and lead: the armour joins the earth bar here.";
    case EARTH_STOPS:
        return end->enclosure != ENCLOSURE_PLASTIC
                   ? "Plastic gland on the sheath, no earth tag: the metal box here is on the outbuilding's earth, and "
                     "the armour "
                     "must touch neither the box nor anything joined to it. No bare armour within reach."
                   : "Plastic gland on the sheath, in an all-insulating box, no earth tag. No bare armour within reach "
                     "of anything "
                     "on the outbuilding's earth.";
    case EARTH_ASK: return "Not written down at the survey. Leave the armour unconnected until it is settled.";
    case EARTH_ABSENT: break;
    }
    return "The cable has no armour.";
}

/* That the earth goes to the supply's earth bar and is insulated at the far end: common practice, no source. The
 * alternative, to leave it loose at both ends, leaves a conductor that nobody can tell from a live one. */
static const char *conductor_advice(enum EarthEnd far, bool at_far_end)
{
    switch (far) {
    case EARTH_CONNECTED: return "Joins the earth bar here.";
    case EARTH_STOPS:
        return at_far_end ? "Cut back, cap and insulate it, and mark it: earth of the supply. Do NOT join it to the "
                            "earth here."
                          : "Joins the earth bar here and nowhere else; sleeve it green-and-yellow (common practice).";
    case EARTH_ASK:
        return at_far_end ? "Leave it unconnected, capped and insulated, until it is settled."
                          : "Joins the earth bar here.";
    case EARTH_ABSENT: break;
    }
    return "";
}

/* What the parts list has for the end, to be fitted there; where it names none, a line to write it on. */
static void add_fitted(struct XmlOut *out, struct XmlElement *end, const struct PartsList *parts, const struct Run *run,
                       enum PartPlace place)
{
    bool any = false;
    for (int i = 0; parts != NULL && i < parts->count; i++) {
        const struct Part *part = &parts->parts[i];
        const bool ending = part->aisle == AISLE_TERMINATIONS;
        if ((ending || part->aisle == AISLE_ENCLOSURES) && parts_used_at(part, run, place)) {
            papers_do(out, end, "main", shown_said(xml_out_arena(out), part->description));
            any = any || ending;
        }
    }
    if (!any) {
        papers_do(out, end, "main", "what the parts list has under glands and terminations: ____");
    }
}

/* One end as it is told: what is there is the same for both ends, what is joined is not. */
struct EndText {
    const char *which;
    const struct End *end;
    const struct PlanEnd *planned;
    enum EarthEnd armour, conductor;
    bool far;
};

static void add_joined(struct XmlOut *out, struct XmlElement *end, const char *name, enum EarthEnd state,
                       const char *advice)
{
    if (state != EARTH_ABSENT) {
        struct XmlElement *joined = xml_child(out, end, "joined");
        xml_attribute(out, joined, "what", name);
        xml_attribute(out, joined, "state", earth_end_word(state));
        xml_text(out, joined, advice);
    }
}

/* How the feed is taken, in the order of the work. Common practice, no source, but for 536.4.203. */
static void add_feed_order(struct XmlOut *out, struct XmlElement *element, const struct End *start)
{
    static const char *const way[] = {
        "Main switch off and locked off, dead proved on the outgoing side; what comes in stays live behind its cover.",
        "The way is free, the device is of the board's own make and range (BS 7671 536.4.203), and the main switch is "
        "not "
        "loaded beyond its marking: seen on the board ____"};
    static const char *const split[] = {"First, with nothing joined to the tails: fix enclosure, isolator and "
                                        "connector blocks, wire from the blocks on, "
                                        "isolator off.",
                                        "Then the distributor or the supplier draws the link, or an isolator is there. "
                                        "Never draw it yourself, never cut a "
                                        "seal. Prove dead.",
                                        "Split the tails at the blocks, line to line and neutral to neutral, pull on "
                                        "each, close the covers. Whoever drew "
                                        "the link puts it back."};
    static const char *const board[] = {
        "First, with nothing joined to the tails: fix the new board, isolator and tails, isolator off. List the old "
        "board's "
        "circuits and their readings.",
        "Then the distributor or the supplier draws the link, or an isolator is there. Never draw it yourself, never "
        "cut a "
        "seal. Prove dead.",
        "Move the circuits over one at a time, each marked. The change of a board wants a certificate of its own."};
    const char *const *steps = start->from == FROM_METER_TAILS ? split : start->from == FROM_NEW_BOARD ? board : way;
    const int count = start->from == FROM_METER_TAILS || start->from == FROM_NEW_BOARD ? 3 : 2;
    for (int i = 0; i < count; i++) {
        papers_do(out, element, "order", steps[i]);
    }
}

static void add_end(struct XmlOut *out, struct XmlElement *run, const struct PlanRun *planned,
                    const struct PartsList *parts, const struct EndText *text)
{
    struct Arena *arena = xml_out_arena(out);
    const struct End *end = text->end;
    struct XmlElement *element = xml_child(out, run, "end");
    xml_attribute(out, element, "which", text->which);
    xml_attribute(out, element, "into", survey_meaning(WORDS_INTO, (int)end->into));
    xml_attribute(out, element, "place", survey_meaning(WORDS_PLACE, (int)end->place));
    xml_attribute(out, element, "tail", papers_metres(arena, end->tail_m.value));
    if (end->loop_m.value > 0) {
        xml_attribute(out, element, "loop", papers_metres(arena, end->loop_m.value));
    }
    xml_attribute_if(out, element, "room", shown_said(arena, text->planned->text));
    const enum EarthEnd armour = text->far || text->armour == EARTH_ABSENT ? text->armour : EARTH_CONNECTED;
    const enum EarthEnd conductor = text->far || text->conductor == EARTH_ABSENT ? text->conductor : EARTH_CONNECTED;
    add_joined(out, element, "Armour", armour, armour_advice(armour, end));
    add_joined(out, element, earth_conductor_name(planned), conductor, conductor_advice(text->conductor, text->far));
    if (!text->far && planned->rated) {
        add_feed_order(out, element, end);
    }
    add_fitted(out, element, parts, planned->surveyed, text->far ? PART_AT_FINISH : PART_AT_START);
}

/* "the armour; the earth core is joined at the supply end only" */
static const char *protective_text(struct Arena *arena, const struct Plan *plan, const struct PlanRun *run)
{
    const bool stops = earth_far_conductor(plan, run) == EARTH_STOPS || earth_far_armour(plan, run) == EARTH_STOPS;
    const char *path = earth_path_text(plan, run);
    if (!stops || *path == '\0') {
        return survey_meaning(WORDS_CPC, (int)run->surveyed->cable.cpc);
    }
    return arena_print(arena,
                       "a fault on the cable goes back to the supply through %s, joined at the supply end only; at the "
                       "far end everything is earthed by its own electrode",
                       path);
}

void papers_ends(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan, const struct PartsList *parts)
{
    struct Arena *arena = xml_out_arena(out);
    struct XmlElement *ends = xml_child(out, papers, "ends");
    for (int i = 0; i < plan->run_count; i++) {
        const struct PlanRun *run = &plan->runs[i];
        if (run->surveyed->kind == RUN_EARTH) {
            continue;
        }
        struct EndText text = {.which = "Supply end",
                               .end = &run->surveyed->start,
                               .planned = &run->start_end,
                               .armour = run->rated ? earth_far_armour(plan, run) : EARTH_ABSENT,
                               .conductor = run->rated ? earth_far_conductor(plan, run) : EARTH_ABSENT};
        struct XmlElement *element = xml_child(out, ends, "run");
        xml_attribute(out, element, "name", run->surveyed->name);
        xml_attribute(out, element, "cable", papers_cable(arena, run));
        if (run->rated) {
            xml_attribute(out, element, "protective", protective_text(arena, plan, run));
        }
        add_end(out, element, run, parts, &text);
        text.which = "Far end";
        text.end = &run->surveyed->finish;
        text.planned = &run->finish_end;
        text.far = true;
        add_end(out, element, run, parts, &text);
        if (run->rated) {
            papers_cores(out, element, plan, run);
        }
        if (run->cable_facts.text != NULL) {
            xml_text(out, xml_child(out, element, "cable"), shown_said(arena, run->cable_facts.text));
        }
    }
}
