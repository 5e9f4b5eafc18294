/* What is connected at the two ends of a run: the armour, the earth that goes with the cable, and every core. At the
 * far end of an island nothing that carries the supply's earth may be joined to the outbuilding's, so each end is said
 * by itself. */
#include "papers_private.h"

#include "documents/earth_ends_private.h"

#include <math.h>

/* With the cautions that bite where it stops: see papers_cautions(). */
static const struct Say *armour_stops(struct Arena *arena, const struct Plan *plan, const struct End *end)
{
    const struct Say *text =
        say(arena, end->enclosure == ENCLOSURE_PLASTIC ? SAY_ARMOUR_STOPS_IN_PLASTIC : SAY_ARMOUR_STOPS_AT_METAL);
    for (int i = 0; i < plan->caution_count; i++) {
        if (plan->cautions[i].at_stopped_armour) {
            text = say_then(arena, text, plan_caution_shortly(&plan->cautions[i]));
        }
    }
    return text;
}

static const struct Say *armour_advice(struct Arena *arena, enum EarthEnd armour, const struct Plan *plan,
                                       const struct End *end)
{
    switch (armour) {
    case EARTH_CONNECTED: return say(arena, SAY_ARMOUR_JOINS);
    case EARTH_STOPS: return armour_stops(arena, plan, end);
    case EARTH_ASK: return say(arena, SAY_ARMOUR_ASK);
    case EARTH_ABSENT: break;
    }
    return NULL;
}

/* That the earth goes to the supply's earth bar and is insulated at the far end: common practice, no source. The
 * alternative, to leave it loose at both ends, leaves a conductor that nobody can tell from a live one. */
static enum Saying conductor_advice(enum EarthEnd far, bool at_far_end)
{
    switch (far) {
    case EARTH_CONNECTED: return SAY_EARTH_JOINS;
    case EARTH_STOPS: return at_far_end ? SAY_EARTH_CUT_BACK : SAY_EARTH_JOINS_HERE_ALONE;
    case EARTH_ASK: return at_far_end ? SAY_EARTH_LEAVE : SAY_EARTH_JOINS;
    case EARTH_ABSENT: break;
    }
    return SAY_NOTHING;
}

/* What the parts list has to end the cable with; NULL where it names none. */
static const struct Say *fitted(struct Arena *arena, const struct PartsList *parts, const struct Run *run,
                                enum PartPlace place)
{
    const struct Say *all = NULL;
    for (int i = 0; parts != NULL && i < parts->count; i++) {
        const struct Part *part = &parts->parts[i];
        /* what marks the cores is named with the cores */
        if (part->aisle == AISLE_TERMINATIONS && !part->sleeves_cores && parts_used_at(part, run, place)) {
            all =
                say_list(arena, SAY_SEMICOLON, all, say_part(part->fitted != NULL ? part->fitted : part->description));
        }
    }
    return all;
}

/* To be fitted there, on one line; or a line to write it on. */
static void add_fitted(struct XmlOut *out, struct XmlElement *end, const struct Say *all)
{
    struct Arena *arena = xml_out_arena(out);
    papers_do(out, end, "main", say(arena, SAY_CAPITAL, say_part(all != NULL ? all : say(arena, SAY_FIT_BY_THE_LIST))));
}

/* One end: what is there is described alike for both, what is joined is not. */
struct EndText {
    const struct Plan *plan;
    const struct End *end;
    const struct PlanEnd *planned;
    enum EarthEnd armour, conductor;
    bool far;
    bool cores; /* the core table has a row for the earth core */
};

static void add_joined(struct XmlOut *out, struct XmlElement *end, enum Saying what, enum EarthEnd state,
                       const struct Say *advice, bool told)
{
    if (state != EARTH_ABSENT) {
        struct XmlElement *joined = xml_child(out, end, "joined");
        papers_attribute(out, joined, "what", say_term(what));
        papers_attribute(out, joined, "state", say_term(earth_end_state(state)));
        xml_attribute(out, joined, "plate",
                      state == EARTH_CONNECTED ? "joined-yes"
                      : state == EARTH_STOPS   ? "joined-no"
                                               : "joined-ask");
        if (told) {
            xml_attribute(out, joined, "told", "core");
        }
        xml_say(out, joined, advice);
    }
}

/* How the feed is taken, in the order of the work. Common practice, no source, but for 536.4.203. */
static void add_feed_order(struct XmlOut *out, struct XmlElement *element, const struct End *start)
{
    enum { STEPS = 3 };
    static const enum Saying way[STEPS] = {SAY_FEED_WAY_ISOLATE, SAY_FEED_WAY_FREE};
    static const enum Saying split[STEPS] = {SAY_FEED_BLOCKS_FIRST, SAY_FEED_LINK, SAY_FEED_SPLIT_TAILS};
    static const enum Saying board[STEPS] = {SAY_FEED_BOARD_FIRST, SAY_FEED_LINK, SAY_FEED_MOVE_CIRCUITS};
    const enum Saying *steps = start->from == FROM_METER_TAILS ? split : start->from == FROM_NEW_BOARD ? board : way;
    for (int i = 0; i < STEPS && steps[i] != SAY_NOTHING; i++) {
        papers_do(out, element, "order", say(xml_out_arena(out), steps[i]));
    }
}

/* Where the room was surveyed and is too little, all that the plan says. */
static const struct Say *room(struct Arena *arena, const struct PlanEnd *end)
{
    return end->tight || !(end->needs_mm > 0)
               ? end->text
               : say(arena, SAY_END_ROOM, say_fixed(ceil(end->needs_mm - 1e-6), 0, UNIT_MM));
}

static void add_end(struct XmlOut *out, struct XmlElement *run, const struct PlanRun *planned,
                    const struct PartsList *parts, const struct EndText *text)
{
    const struct End *end = text->end;
    struct Arena *arena = xml_out_arena(out);
    struct XmlElement *element = xml_child(out, run, "end");
    papers_attribute(out, element, "which", say_term(text->far ? SAY_FAR_END : SAY_SUPPLY_END));
    papers_attribute(out, element, "into", say_word(WORDS_INTO, (int)end->into));
    papers_attribute(out, element, "place", say_word(WORDS_PLACE, (int)end->place));
    papers_attribute(out, element, "tail", papers_metres(end->tail_m.value));
    if (end->loop_m.value > 0) {
        papers_attribute(out, element, "loop", papers_metres(end->loop_m.value));
    }
    papers_attribute(out, element, "room", say_part(room(arena, text->planned)));
    const enum EarthEnd armour = text->far || text->armour == EARTH_ABSENT ? text->armour : EARTH_CONNECTED;
    const enum EarthEnd conductor = text->far || text->conductor == EARTH_ABSENT ? text->conductor : EARTH_CONNECTED;
    add_joined(out, element, SAY_ARMOUR, armour, armour_advice(arena, armour, text->plan, end), false);
    add_joined(out, element, earth_conductor(planned), conductor,
               say(arena, conductor_advice(text->conductor, text->far)), text->cores);
    if (!text->far && planned->rated) {
        add_feed_order(out, element, end);
    }
    add_fitted(out, element, fitted(arena, parts, planned->settled, text->far ? PART_AT_FINISH : PART_AT_START));
}

static bool same_end(struct Arena *arena, const struct PartsList *parts, const struct PlanRun *one,
                     const struct PlanRun *other, bool far)
{
    const struct End *a = far ? &one->settled->finish : &one->settled->start;
    const struct End *b = far ? &other->settled->finish : &other->settled->start;
    const enum PartPlace place = far ? PART_AT_FINISH : PART_AT_START;
    /* to the millimetre, as they are printed */
    return a->into == b->into && a->place == b->place && a->enclosure == b->enclosure && a->from == b->from &&
           fabs(a->tail_m.value - b->tail_m.value) < 0.0005 && fabs(a->loop_m.value - b->loop_m.value) < 0.0005 &&
           say_same(room(arena, far ? &one->finish_end : &one->start_end),
                    room(arena, far ? &other->finish_end : &other->start_end)) &&
           say_same(fitted(arena, parts, one->settled, place), fitted(arena, parts, other->settled, place));
}

/* True when every word of the two ends would be the same. */
static bool same_ends(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                      const struct PlanRun *one, const struct PlanRun *other)
{
    const bool rated = one->rated && other->rated;
    return one->rated == other->rated && one->settled->kind == other->settled->kind &&
           one->settled->cable.cpc == other->settled->cable.cpc &&
           say_same(papers_cable(arena, one), papers_cable(arena, other)) &&
           (!rated || (earth_far_armour(plan, one) == earth_far_armour(plan, other) &&
                       earth_far_conductor(plan, one) == earth_far_conductor(plan, other) &&
                       earth_conductor(one) == earth_conductor(other) &&
                       survey_core_use(one->settled, one->currents.lines) ==
                           survey_core_use(other->settled, other->currents.lines))) &&
           same_end(arena, parts, one, other, false) && same_end(arena, parts, one, other, true);
}

/* The names of all runs whose ends are as those of this one; NULL where an earlier one has said them. */
static const struct Say *names_alike(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                     int run)
{
    const struct Say *names = NULL;
    for (int i = 0; i < plan->run_count; i++) {
        const struct PlanRun *other = &plan->runs[i];
        if (other->settled->kind == RUN_EARTH || !same_ends(arena, plan, parts, &plan->runs[run], other)) {
            continue;
        }
        if (i < run) {
            return NULL;
        }
        names = say_list(arena, SAY_COMMA, names, say_name(other->settled->name));
    }
    return names;
}

void papers_ends(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan, const struct PartsList *parts)
{
    struct Arena *arena = xml_out_arena(out);
    struct XmlElement *ends = xml_child(out, papers, "ends");
    for (int i = 0; i < plan->run_count; i++) {
        const struct PlanRun *run = &plan->runs[i];
        const struct Say *names = run->settled->kind == RUN_EARTH ? NULL : names_alike(arena, plan, parts, i);
        if (names == NULL) {
            continue;
        }
        struct EndText text = {.plan = plan,
                               .end = &run->settled->start,
                               .planned = &run->start_end,
                               .armour = run->rated ? earth_far_armour(plan, run) : EARTH_ABSENT,
                               .conductor = run->rated ? earth_far_conductor(plan, run) : EARTH_ABSENT,
                               .cores = run->rated && run->settled->cable.cpc != CPC_SEPARATE &&
                                        papers_names_cores(plan, run)};
        struct XmlElement *element = xml_child(out, ends, "run");
        xml_say_attribute(out, element, "name", names);
        xml_say_attribute(out, element, "cable", papers_cable(arena, run));
        add_end(out, element, run, parts, &text);
        text.end = &run->settled->finish;
        text.planned = &run->finish_end;
        text.far = true;
        add_end(out, element, run, parts, &text);
        if (run->rated) {
            papers_cores(out, element, plan, run);
        }
    }
}
