/* What the surroundings of a stretch ask for, and what no survey knows: short lines with a blank, so that it is decided
 * by somebody and written down. Common practice, no source. */
#include "papers_private.h"

#include <math.h>

/* Cables that lie there already, as an instruction: the rating counts on it. */
static const char *beside_text(struct Arena *arena, const struct Beside *beside)
{
    const char *how = "";
    switch (beside->arrangement) {
    case ARRANGEMENT_BUNCHED: how = "ours may be bunched with it, and with nothing else"; break;
    case ARRANGEMENT_SINGLE_LAYER:
        how = "keep ours beside it, touching at most, in one layer: do not stack or cover it";
        break;
    case ARRANGEMENT_SPACED: how = "keep ours clear of it"; break;
    case ARRANGEMENT_DUCT_TOUCHING: how = "ours has a duct of its own, which may touch that one"; break;
    case ARRANGEMENT_DUCT_SPACED: how = "ours has a duct of its own, kept apart from that one"; break;
    case ARRANGEMENT_COUNT: break;
    }
    return arena_print(arena, "%d loaded cable%s here already: %s.", beside->circuits,
                       beside->circuits == 1 ? " lies" : "s lie", how);
}

void papers_surroundings(struct XmlOut *out, struct XmlElement *stretch, const struct Segment *segment)
{
    struct Arena *arena = xml_out_arena(out);
    if (segment->insulation == INSULATION_SURROUNDED) {
        papers_do(out, stretch, "mind",
                  arena_print(arena,
                              "The plan counts on no more than %s of the cable lying in insulation: keep the rest on "
                              "top of it.",
                              papers_millimetres(arena, segment->insulated_length_m.value)));
    } else if (segment->insulation == INSULATION_ONE_SIDE) {
        papers_do(out, stretch, "mind", "The plan counts on insulation on one side only: leave the other side open.");
    }
    if (segment->has_beside && segment->beside.circuits > 0) {
        papers_do(out, stretch, "mind", beside_text(arena, &segment->beside));
    }
    if (segment->lie == LIE_LAYER) {
        papers_do(out, stretch, "mind", "The plan counts on this job's own cables side by side in one layer here.");
    } else if (segment->lie == LIE_SPACED) {
        papers_do(out, stretch, "mind",
                  "The plan counts on this job's own cables clear of each other here: more than two diameters of the "
                  "thickest in air, one in the ground.");
    }
    if (segment->fire_barrier) {
        papers_do(out, stretch, "mind", "This is a fire barrier: make the hole good to the same rating at once.");
    }
    if (*segment->notes != '\0') {
        papers_do(out, stretch, "note", segment->notes);
    }
}

static void add_hole(struct XmlOut *out, struct XmlElement *stretch)
{
    papers_do(out, stretch, "aside",
              "Drill from: inside / outside (ring one). Centre ____ mm above ____, ____ mm from ____.");
    papers_do(out, stretch, "aside",
              "Stop and ring if the drill meets a cable, a pipe or steel, or the wall breaks out.");
}

/* The stretch before or after this one on the first run that follows it; NULL at an end. */
static const struct Segment *neighbour(const struct Plan *plan, int index, int step)
{
    for (int r = 0; r < plan->run_count; r++) {
        const struct Run *run = plan->runs[r].surveyed;
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
        const struct Run *run = plan->runs[r].surveyed;
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
    struct TextBuilder text = text_builder(arena);
    if (other == NULL) {
        text_add(&text, leg->down ? "Into the ground at the start" : "Out of the ground at the end");
    } else if (survey_in_ground(other->way)) {
        text_print(&text, "%s %s", leg->down ? "Down to this depth from" : "Up to the depth of", other->name);
    } else {
        text_print(&text, leg->down ? "From %s into the ground" : "Out of the ground to %s", other->name);
    }
    const bool surface = other == NULL || !survey_in_ground(other->way);
    text_add(&text, surface ? ": slow bend, guard ____" : ": slow bend");
    text_print(&text, leg->included ? ". These %s are in the surveyed length" : ". These %s are in the cable ordered",
               papers_metres(arena, leg->length_m));
    text_add(&text, surface && leg->down && !leg->included ? ": cut the cable last, after laying." : ".");
    if (!leg->down && other != NULL && other->way == WAY_THROUGH_WALL && ground->way == WAY_DUCT) {
        text_add(&text, " The duct ends ____ mm before the hole.");
    }
    papers_do(out, stretch, "aside", text_done(&text));
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
        add_hole(out, stretch);
    }
    if (segment->way == WAY_FENCE) {
        papers_do(out, stretch, "aside",
                  "Which rail: ____, which side: ____, height: ____ m. No rail all along: fit a batten, or ask.");
    }
    if (segment->way == WAY_BEAM || segment->way == WAY_LOFT_VOID) {
        papers_do(out, stretch, "aside", "Along the timber. Where it lies across: fit a batten first, or ask.");
    }
    if (segment->way != WAY_THROUGH_WALL && through_ceiling(before, segment)) {
        papers_do(out, stretch, "aside",
                  arena_print(arena, "From %s %s the roof void: hole ____ mm at ____, sealed with ____.", before->name,
                              segment->way == WAY_LOFT_VOID ? "into" : "out of"));
    }
    add_legs(out, stretch, plan, index);
}
