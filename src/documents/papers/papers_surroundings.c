/* What the surroundings of a stretch ask for, and what no survey knows: short lines with a blank, so that it is decided
 * by somebody and written down. Common practice, no source. */
#include "papers_private.h"

#include <math.h>

static enum Saying how_beside(enum Arrangement arrangement)
{
    switch (arrangement) {
    case ARRANGEMENT_BUNCHED: return SAY_MAY_BE_BUNCHED;
    case ARRANGEMENT_SINGLE_LAYER: return SAY_KEEP_IN_ONE_LAYER;
    case ARRANGEMENT_SPACED: return SAY_KEEP_CLEAR_OF_IT;
    case ARRANGEMENT_DUCT_TOUCHING: return SAY_DUCT_MAY_TOUCH;
    case ARRANGEMENT_DUCT_SPACED: return SAY_DUCT_KEPT_APART;
    case ARRANGEMENT_COUNT: break;
    }
    return SAY_NOTHING;
}

/* Cables that lie there already, as an instruction: the rating counts on it. */
static const struct Say *beside_text(struct Arena *arena, const struct Beside *beside)
{
    return say(arena, SAY_LOADED_CABLES_HERE, say_count(beside->circuits), say_term(how_beside(beside->arrangement)));
}

void papers_surroundings(struct XmlOut *out, struct XmlElement *stretch, const struct Segment *segment)
{
    struct Arena *arena = xml_out_arena(out);
    if (segment->insulation == INSULATION_SURROUNDED) {
        papers_do(out, stretch, "mind",
                  say(arena, SAY_MIND_INSULATION_LENGTH, papers_millimetres(segment->insulated_length_m.value)));
    } else if (segment->insulation == INSULATION_ONE_SIDE) {
        papers_do(out, stretch, "mind", say(arena, SAY_MIND_INSULATION_ONE_SIDE));
    }
    if (segment->has_beside && segment->beside.circuits > 0) {
        papers_do(out, stretch, "mind", beside_text(arena, &segment->beside));
    }
    if (segment->lie == LIE_LAYER || segment->lie == LIE_SPACED) {
        papers_do(out, stretch, "mind", say(arena, segment->lie == LIE_LAYER ? SAY_MIND_LAYER : SAY_MIND_SPACED));
    }
    if (segment->fire_barrier) {
        papers_do(out, stretch, "mind", say(arena, SAY_MIND_FIRE_BARRIER));
    }
    if (*segment->notes != '\0') {
        papers_do(out, stretch, "note", say(arena, SAY_AS_IS, say_name(segment->notes)));
    }
}

/* The stretch before or after this one on the first run that follows it; NULL at an end. */
static const struct Segment *neighbour(const struct Plan *plan, int index, int step)
{
    for (int r = 0; r < plan->run_count; r++) {
        const struct Run *run = plan->runs[r].settled;
        for (int i = 0; i < run->along_count; i++) {
            if (run->along[i] == index) {
                const int at = i + step;
                return at < 0 || at >= run->along_count ? NULL : plan->segments[run->along[at]].surveyed;
            }
        }
    }
    return NULL;
}

/* Into or out of a roof void by no hole that was surveyed. */
static bool through_ceiling(const struct Segment *one, const struct Segment *other)
{
    return one != NULL && one->way != WAY_THROUGH_WALL && (one->way == WAY_LOFT_VOID) != (other->way == WAY_LOFT_VOID);
}

/* The run whose legs are told at a stretch: the first that follows it. */
static const struct PlanRun *follower(const struct Plan *plan, int index)
{
    for (int r = 0; r < plan->run_count; r++) {
        const struct Run *run = plan->runs[r].settled;
        for (int i = 0; i < run->along_count; i++) {
            if (run->along[i] == index) {
                return &plan->runs[r];
            }
        }
    }
    return NULL;
}

static void add_leg(struct XmlOut *out, struct XmlElement *stretch, const struct Plan *plan, const struct PlanLeg *leg)
{
    struct Arena *arena = xml_out_arena(out);
    const struct Segment *ground = plan->segments[leg->segment].surveyed;
    const struct Segment *other = leg->other < 0 ? NULL : plan->segments[leg->other].surveyed;
    const bool surface = other == NULL || !survey_in_ground(other->way);
    const enum Saying where = other == NULL ? (leg->down ? SAY_LEG_AT_START : SAY_LEG_AT_END)
                              : !surface    ? (leg->down ? SAY_LEG_DEEPER : SAY_LEG_SHALLOWER)
                                            : (leg->down ? SAY_LEG_DOWN : SAY_LEG_UP);
    const struct SayArg length = papers_metres(leg->length_m);
    const struct Say *text = say(arena, surface ? SAY_LEG_BEND_AND_GUARD : SAY_LEG_BEND,
                                 say_part(say(arena, where, say_name(other == NULL ? "" : other->name))));
    text = say_then(arena, text,
                    say(arena,
                        leg->included          ? SAY_LEG_SURVEYED
                        : surface && leg->down ? SAY_LEG_ORDERED_CUT_LAST
                                               : SAY_LEG_ORDERED,
                        length));
    if (!leg->down && other != NULL && other->way == WAY_THROUGH_WALL && ground->way == WAY_DUCT) {
        text = say_then(arena, text, say(arena, SAY_LEG_DUCT_ENDS));
    }
    papers_do(out, stretch, "aside", text);
}

static void add_legs(struct XmlOut *out, struct XmlElement *stretch, const struct Plan *plan, int index)
{
    const struct PlanRun *run = follower(plan, index);
    for (int i = 0; run != NULL && i < run->leg_count; i++) {
        if (run->legs[i].segment == index) {
            add_leg(out, stretch, plan, &run->legs[i]);
        }
    }
}

void papers_unknowns(struct XmlOut *out, struct XmlElement *stretch, const struct Plan *plan, int index)
{
    struct Arena *arena = xml_out_arena(out);
    const struct Segment *segment = plan->segments[index].surveyed;
    const struct Segment *before = neighbour(plan, index, -1);
    if (segment->way == WAY_THROUGH_WALL) {
        papers_do(out, stretch, "aside", say(arena, SAY_HOLE_WHERE));
        papers_do(out, stretch, "aside", say(arena, SAY_HOLE_STOP));
    }
    if (segment->way == WAY_FENCE) {
        papers_do(out, stretch, "aside", say(arena, SAY_FENCE_WHICH_RAIL));
    }
    if (segment->way == WAY_BEAM || segment->way == WAY_LOFT_VOID) {
        papers_do(out, stretch, "aside", say(arena, SAY_TIMBER_ACROSS));
    }
    if (segment->way != WAY_THROUGH_WALL && through_ceiling(before, segment)) {
        papers_do(out, stretch, "aside",
                  say(arena, segment->way == WAY_LOFT_VOID ? SAY_INTO_ROOF_VOID : SAY_OUT_OF_ROOF_VOID,
                      say_name(before->name)));
    }
    add_legs(out, stretch, plan, index);
}
