/* What several counters ask: of a cable, of a stretch, of stretches that belong together. */
#include "parts_private.h"

#include <math.h>

double parts_diameter_mm(const struct PlanRun *run)
{
    return run->cable_facts.overall_mm; /* the one that the checks went by: as surveyed, else as held */
}

const struct Segment *parts_segment(const struct Counting *counting, int run, int step)
{
    return &counting->plan->survey->segments[counting->plan->runs[run].settled->along[step]];
}

bool parts_upright(const struct Segment *segment)
{
    return fabs(segment->rise_m.value) >= takeoff_practice()->upright_slope * segment->length_m.value;
}

bool parts_clipped(enum Way way)
{
    const enum WayHeld held = survey_way(way)->held;
    return held == HELD_CLIPPED || held == HELD_TRAY || held == HELD_LADDER;
}

bool parts_there_already(const struct Segment *segment)
{
    return segment->laid_given ? segment->laid == LAID_EXISTING : segment->has_beside && segment->beside.circuits > 0;
}

double parts_pieces(double length, double piece)
{
    return ceil(length / piece - 1e-9);
}

static const struct {
    enum Saying words, screw, plug, remark;
} grip_words[GRIP_COUNT] = {
    [GRIP_BRICK] = {SAY_GRIP_BRICK, SAY_PART_SCREW_BRICK, SAY_PART_PLUG_BRICK, SAY_GRIP_REMARK_BRICK},
    [GRIP_BLOCK] = {SAY_GRIP_BLOCK, SAY_PART_SCREW_BLOCK, SAY_NOTHING, SAY_GRIP_REMARK_BLOCK},
    [GRIP_STONE] = {SAY_GRIP_STONE, SAY_PART_SCREW_STONE, SAY_PART_PLUG_STONE, SAY_GRIP_REMARK_STONE},
    [GRIP_CONCRETE] = {SAY_GRIP_CONCRETE, SAY_PART_SCREW_CONCRETE, SAY_NOTHING, SAY_GRIP_REMARK_CONCRETE},
    [GRIP_TIMBER] = {SAY_GRIP_TIMBER, SAY_PART_SCREW_TIMBER, SAY_NOTHING, SAY_GRIP_REMARK_TIMBER},
    [GRIP_STEEL] = {SAY_GRIP_STEEL, SAY_PART_SCREW_STEEL, SAY_NOTHING, SAY_GRIP_REMARK_STEEL},
    [GRIP_PLASTERBOARD] = {SAY_GRIP_PLASTERBOARD, SAY_PART_SCREW_PLASTERBOARD, SAY_NOTHING,
                           SAY_GRIP_REMARK_PLASTERBOARD},
    [GRIP_FENCE_TIMBER] = {SAY_GRIP_FENCE_TIMBER, SAY_PART_SCREW_FENCE_TIMBER, SAY_NOTHING,
                           SAY_GRIP_REMARK_FENCE_TIMBER},
    [GRIP_FENCE_CONCRETE] = {SAY_GRIP_FENCE_CONCRETE, SAY_PART_SCREW_FENCE_CONCRETE, SAY_NOTHING,
                             SAY_GRIP_REMARK_FENCE_CONCRETE},
};

const struct Say *parts_grip_said(struct Arena *arena, enum Way way, enum Surface surface)
{
    const struct SurfaceGrip *grip = NULL;
    return surface_grip(way, surface, &grip) ? say(arena, grip_words[grip->kind].words) : NULL;
}

const struct Say *parts_grip_remark(struct Arena *arena, const struct SurfaceGrip *grip)
{
    return say(arena, grip_words[grip->kind].remark);
}

void parts_count_grips(struct Counting *counting, const struct Segment *segment, enum Way way, double fixings,
                       const struct Run *run)
{
    const struct SurfaceGrip *grip = NULL;
    if (!(fixings > 0)) {
        return;
    }
    if (!surface_grip(way, segment->fixed_to, &grip)) {
        parts_not_counted(counting, UNCOUNTED_SURFACE, parts_for_segment(run, segment));
        return;
    }
    struct Arena *arena = counting->arena;
    const struct PartUse use = parts_for_segment(run, segment);
    const struct Article screw = {.aisle = AISLE_FIXINGS,
                                  .code = grip->screw_code,
                                  .description = say(arena, grip_words[grip->kind].screw),
                                  .note = say(arena, grip_words[grip->kind].remark),
                                  .sold = grip->screw_pack,
                                  .spare = SPARE_FIXINGS};
    parts_add(counting, &screw, fixings, use);
    if (grip->plug_code[0] != '\0') {
        const struct Article plug = {.aisle = AISLE_FIXINGS,
                                     .code = grip->plug_code,
                                     .description = say(arena, grip_words[grip->kind].plug),
                                     .note = say(arena, SAY_NOTE_PLUG, say_digits(grip->drill_mm, 3, UNIT_MM)),
                                     .sold = PACK_PLUGS,
                                     .spare = SPARE_FIXINGS};
        parts_add(counting, &plug, fixings, use);
    }
}

struct Article parts_tie(struct Arena *arena)
{
    return (struct Article){.aisle = AISLE_FIXINGS,
                            .code = "tie-stainless",
                            .description = say(arena, SAY_PART_TIE),
                            .note = say(arena, SAY_NOTE_METAL),
                            .sold = PACK_TIES,
                            .spare = SPARE_FIXINGS};
}

/* ---- chains ---- */

/* The chain that a stretch belongs to by now; the lowest stretch of it stands for it. */
static int root_of(const int *parent, int segment)
{
    while (parent[segment] != segment) {
        segment = parent[segment];
    }
    return segment;
}

static void join(int *parent, int a, int b)
{
    const int root_a = root_of(parent, a);
    const int root_b = root_of(parent, b);
    if (root_a < root_b) {
        parent[root_b] = root_a;
    } else {
        parent[root_a] = root_b;
    }
}

/* Stretches that some run passes one after the other, and that are of one kind. */
static void join_all(const struct Counting *counting, enum Way way, ChainSame same, int *parent)
{
    const struct Survey *survey = counting->plan->survey;
    for (int r = 0; r < survey->run_count; r++) {
        const struct Run *run = &survey->runs[r];
        for (int i = 0; i + 1 < run->along_count; i++) {
            const struct Segment *a = &survey->segments[run->along[i]];
            const struct Segment *b = &survey->segments[run->along[i + 1]];
            if (a->way == way && b->way == way && same(a, b)) {
                join(parent, run->along[i], run->along[i + 1]);
            }
        }
    }
}

static void add_to_chain(struct Chain *chain, const struct PlanSegment *planned, int index)
{
    const struct Segment *segment = planned->surveyed;
    chain->first = chain->segment_count == 0 ? index : chain->first;
    chain->last = index;
    chain->segment_count++;
    chain->length_m += segment->length_m.value;
    chain->bends += segment->bend_count;
    for (int k = 0; k < segment->bend_count; k++) {
        chain->bend_deg += segment->bends[k].angle_deg;
    }
    chain->cables = planned->run_count > chain->cables ? planned->run_count : chain->cables;
}

int parts_chains(struct Counting *counting, enum Way way, ChainSame same, struct Chain **out, int **member)
{
    const struct Plan *plan = counting->plan;
    const size_t room = (size_t)plan->segment_count + 1;
    size_t most = 1;
    for (int i = 0; i < plan->segment_count; i++) {
        most += plan->segments[i].surveyed->way == way;
    }
    int *parent = arena_array(counting->arena, room, sizeof *parent);
    int *members = arena_array(counting->arena, room, sizeof *members);
    struct Chain *chains = arena_array(counting->arena, most, sizeof *chains);
    if (parent == NULL || members == NULL || chains == NULL) {
        return 0;
    }
    for (int i = 0; i < plan->segment_count; i++) {
        parent[i] = i;
    }
    join_all(counting, way, same, parent);
    int count = 0;
    for (int i = 0; i < plan->segment_count; i++) {
        members[i] = -1;
        if (plan->segments[i].surveyed->way == way) {
            const int root = root_of(parent, i);
            members[i] = root == i ? count++ : members[root];
            add_to_chain(&chains[members[i]], &plan->segments[i], i);
        }
    }
    *out = chains;
    *member = members;
    return count;
}

const struct PartsCut *parts_cut_of(const struct PartsList *list, const struct Part *part)
{
    for (int i = 0; i < list->cut_count; i++) {
        const struct PartsCut *cut = &list->cuts[i];
        if (cut->planned && cut->opened_count > 0 && text_same(cut->code, part->code)) {
            return cut;
        }
    }
    return NULL;
}

static const struct Say words[AISLE_COUNT] = {
    [AISLE_CABLE] = {.id = SAY_AISLE_CABLE},           [AISLE_TERMINATIONS] = {.id = SAY_AISLE_TERMINATIONS},
    [AISLE_FIXINGS] = {.id = SAY_AISLE_FIXINGS},       [AISLE_CONTAINMENT] = {.id = SAY_AISLE_CONTAINMENT},
    [AISLE_GROUNDWORK] = {.id = SAY_AISLE_GROUNDWORK}, [AISLE_ENCLOSURES] = {.id = SAY_AISLE_ENCLOSURES},
    [AISLE_EARTHING] = {.id = SAY_AISLE_EARTHING},     [AISLE_LABELS] = {.id = SAY_AISLE_LABELS},
    [AISLE_SUNDRIES] = {.id = SAY_AISLE_SUNDRIES},
};

const struct Say *parts_aisle_said(enum Aisle aisle)
{
    return (int)aisle >= 0 && aisle < AISLE_COUNT ? &words[aisle] : NULL;
}
