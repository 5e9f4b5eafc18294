/* What a thorough survey adds to a scene drawn by lot: surfaces, walls, ducts, bends, headings, draw pits, pulls, room
 * at the ends and a caution at every turn. For the documents that have to find room for all of it. */
#include "fixture_scene.h"
#include "said.h"

#include <math.h>

struct Lot {
    struct Arena *arena;
    unsigned state;
};

static unsigned draw(struct Lot *lot, unsigned below)
{
    lot->state = lot->state * 1664525U + 1013904223U;
    return (lot->state >> 8) % below;
}

static struct Quantity given(double value)
{
    return (struct Quantity){.value = value, .given = true};
}

static void enrich_wall(struct Lot *lot, struct Segment *segment)
{
    segment->wall = (enum WallKind)draw(lot, WALL_COUNT);
    segment->thickness_m = given(0.1 + draw(lot, 30) * 0.025);
    segment->sleeve = draw(lot, 2) == 0;
    segment->fire_barrier = draw(lot, 4) == 0;
}

static void enrich_ground(struct Lot *lot, struct Segment *segment)
{
    segment->under = (enum Under)draw(lot, UNDER_COUNT + 1);
    segment->dig = (enum Dig)draw(lot, DIG_COUNT + 1);
    if (segment->way == WAY_DUCT) {
        segment->duct_size_mm = given(draw(lot, 2) == 0 ? 63 : 110);
        segment->duct_laid = (enum Laid)draw(lot, LAID_COUNT);
        segment->duct_rope = draw(lot, 2) == 0;
    }
}

static void enrich_landmarks(struct Lot *lot, struct Segment *segment)
{
    const int count = draw(lot, 4) == 0 ? 1 + (int)draw(lot, 2) : 0;
    struct Landmark *landmarks = count == 0 ? NULL : arena_array(lot->arena, (size_t)count, sizeof *landmarks);
    for (int i = 0; landmarks != NULL && i < count; i++) {
        landmarks[i] = (struct Landmark){.what = (enum LandmarkKind)draw(lot, LANDMARK_COUNT),
                                         .at_m = given(segment->length_m.value * draw(lot, 5) / 4),
                                         .note = draw(lot, 3) == 0 ? "old, not on any drawing" : ""};
        landmarks[i].side_given = draw(lot, 2) == 0;
        landmarks[i].side = landmarks[i].side_given ? (enum Side)draw(lot, SIDE_COUNT) : SIDE_COUNT;
        landmarks[i].off_m = landmarks[i].side_given ? given(0.5 + draw(lot, 5)) : (struct Quantity){.given = false};
    }
    segment->landmarks = landmarks;
    segment->landmark_count = landmarks == NULL ? 0 : count;
}

static void enrich_segment(struct Lot *lot, struct Segment *segment, bool headings)
{
    if (headings && draw(lot, 3) > 0) {
        segment->heading_deg = given(draw(lot, 24) * 15.0);
    }
    if (survey_in_ground(segment->way)) {
        enrich_ground(lot, segment);
    } else if (segment->way == WAY_THROUGH_WALL) {
        enrich_wall(lot, segment);
    } else {
        segment->fixed_to = (enum Surface)draw(lot, SURFACE_COUNT);
    }
    if (draw(lot, 3) == 0) {
        int count = 1 + (int)draw(lot, 3);
        struct Bend *bends = arena_array(lot->arena, (size_t)count, sizeof *bends);
        for (int i = 0; bends != NULL && i < count; i++) {
            bends[i] = (struct Bend){.angle_deg = 90};
        }
        segment->bends = bends;
        segment->bend_count = bends == NULL ? 0 : count;
    }
    segment->pits = (enum Pits)draw(lot, PITS_COUNT);
    segment->shelter = SHELTER_COUNT;
    enrich_landmarks(lot, segment);
}

static struct PlanBend *make_bends(struct Lot *lot, const struct Survey *survey, const struct Run *run, int *count)
{
    struct PlanBend *bends = arena_array(lot->arena, (size_t)run->along_count, sizeof *bends);
    for (int i = 0; bends != NULL && i < run->along_count; i++) {
        const struct Segment *segment = &survey->segments[run->along[i]];
        if (segment->bend_count > 0) {
            bends[(*count)++] = (struct PlanBend){.segment = run->along[i],
                                                  .count = segment->bend_count,
                                                  .total_deg = segment->bend_count * 90.0,
                                                  .tightest_mm = draw(lot, 2) == 0 ? 250 : 0,
                                                  .least_mm = 117,
                                                  .result = draw(lot, 3) == 0 ? CHECK_FAIL : CHECK_PASS,
                                                  .text = as_is(lot->arena, "made up for a test")};
        }
    }
    return bends;
}

static struct PlanPull *make_pulls(struct Lot *lot, const struct Survey *survey, const struct Run *run, int *count)
{
    struct PlanPull *pulls = arena_array(lot->arena, (size_t)run->along_count, sizeof *pulls);
    for (int i = 0; pulls != NULL && i < run->along_count; i++) {
        int first = i;
        double length_m = 0;
        while (i < run->along_count && survey_drawn(&survey->segments[run->along[i]])) {
            length_m += survey->segments[run->along[i++]].length_m.value;
        }
        if (i == first) {
            continue;
        }
        bool worked = draw(lot, 4) > 0;
        pulls[(*count)++] = (struct PlanPull){.first = first,
                                              .count = i - first,
                                              .length_m = length_m,
                                              .bends_most_deg = 360,
                                              .bends_text = as_is(lot->arena, "made up for a test"),
                                              .worked = worked,
                                              .from_far = draw(lot, 2) == 0,
                                              .either = draw(lot, 4) == 0,
                                              .friction = worked ? 0.6 : 0,
                                              .tension_n = worked ? 10.0 + draw(lot, 40000) : 0,
                                              .limit_n = worked ? 3400 : 0,
                                              .other_end_n = worked ? 99 : 0,
                                              .sidewall_limit_n_per_m = 4400,
                                              .result = draw(lot, 3) == 0 ? CHECK_FAIL : CHECK_PASS,
                                              .pit_at_m = draw(lot, 2) == 0 ? length_m / 3 : 0,
                                              .pit_tension_n = 50,
                                              .because = worked ? as_is(lot->arena, "made up") : NULL,
                                              .text = as_is(lot->arena, "made up for a test")};
    }
    return pulls;
}

static struct PlanRun *enrich_runs(struct Lot *lot, const struct Plan *plan)
{
    struct PlanRun *runs = arena_array(lot->arena, (size_t)plan->run_count, sizeof *runs);
    for (int i = 0; runs != NULL && i < plan->run_count; i++) {
        runs[i] = plan->runs[i];
        runs[i].bends = make_bends(lot, plan->survey, runs[i].settled, &runs[i].bend_count);
        runs[i].pulls = make_pulls(lot, plan->survey, runs[i].settled, &runs[i].pull_count);
        runs[i].cable_facts = (struct PlanCable){.overall_mm = 19.5,
                                                 .weight_kg_per_m = 0.866,
                                                 .bend_radius_mm = 117,
                                                 .order_weight_kg = 0.866 * runs[i].order_length_m,
                                                 .heavy = runs[i].order_length_m > 28,
                                                 .source = SAY_STEP_AS_SURVEYED,
                                                 .text = as_is(lot->arena, "made up for a test")};
        runs[i].start_end = (struct PlanEnd){.needs_mm = 136.5};
        runs[i].finish_end = (struct PlanEnd){.needs_mm = 136.5, .room_mm = 100, .tight = true};
    }
    return runs;
}

/* Every stretch has up to five, and so have the runs. */
static void add_cautions(struct Lot *lot, struct Plan *plan)
{
    enum { EACH_MOST = 5 };
    static const char brief[] = "look out";
    static const char lengthy[] =
        "a caution that needs more than one line to say what there is to look out for at this "
        "place, and what to do about it when it is met there";
    int places = plan->segment_count + plan->run_count, count = plan->caution_count;
    struct Caution *cautions = arena_array(lot->arena, (size_t)places * EACH_MOST + (size_t)count, sizeof *cautions);
    if (cautions == NULL) {
        return;
    }
    for (int i = 0; i < count; i++) {
        cautions[i] = plan->cautions[i];
    }
    for (int i = 0; i < places; i++) {
        const char *where = i < plan->segment_count ? plan->segments[i].surveyed->name
                                                    : plan->runs[i - plan->segment_count].settled->name;
        for (unsigned more = draw(lot, 8); more > 0 && more <= EACH_MOST; more--) {
            int *at = arena_array(lot->arena, 1, sizeof *at);
            if (at == NULL) {
                return;
            }
            *at = i;
            cautions[count++] = (struct Caution){.drawn = true,
                                                 .where = where,
                                                 .source = "common practice, no source",
                                                 .text = as_is(lot->arena, draw(lot, 2) == 0 ? brief : lengthy),
                                                 .stretch_count = i < plan->segment_count ? 1 : 0,
                                                 .stretches = at};
        }
    }
    plan->cautions = cautions;
    plan->caution_count = count;
}

void fixture_enrich(struct Arena *arena, struct Plan *plan, unsigned seed)
{
    struct Lot lot = {arena, seed};
    struct Survey *survey = arena_alloc(arena, sizeof *survey);
    struct Segment *segments = arena_array(arena, (size_t)plan->segment_count, sizeof *segments);
    struct PlanSegment *way = arena_array(arena, (size_t)plan->segment_count, sizeof *way);
    if (survey == NULL || segments == NULL || way == NULL) {
        return;
    }
    bool headings = draw(&lot, 2) == 0;
    *survey = *plan->survey;
    for (int i = 0; i < plan->segment_count; i++) {
        segments[i] = survey->segments[i];
        enrich_segment(&lot, &segments[i], headings);
        way[i] = plan->segments[i];
        way[i].surveyed = &segments[i];
        way[i].separation_mm = draw(&lot, 5) == 0 ? 200 : 0;
        way[i].separation = way[i].separation_mm > 0 ? as_is(arena, "made up for a test") : NULL;
    }
    survey->segments = segments;
    plan->survey = survey;
    plan->segments = way;
    struct PlanRun *runs = enrich_runs(&lot, plan);
    if (runs != NULL) {
        plan->runs = runs;
    }
    add_cautions(&lot, plan);
}

/* What the stretches take, in figures that nobody counted: for the drawing alone. */
const struct PartsList *fixture_work(struct Arena *arena, const struct Plan *plan)
{
    struct PartsList *list = arena_alloc(arena, sizeof *list);
    struct Part *glands = arena_array(arena, 1, sizeof *glands);
    struct PartUse *uses = arena_array(arena, 2, sizeof *uses);
    struct PartsWay *ways =
        arena_array(arena, (size_t)plan->segment_count * ((size_t)plan->run_count + 1), sizeof *ways);
    if (list == NULL || glands == NULL || uses == NULL || ways == NULL) {
        return NULL;
    }
    for (int i = 0; i < 2; i++) {
        uses[i] = (struct PartUse){
            .whom = PART_FOR_RUN, .run = plan->runs[0].settled, .place = i == 0 ? PART_AT_START : PART_AT_FINISH};
    }
    glands[0] = (struct Part){.aisle = AISLE_TERMINATIONS,
                              .code = "gland-BW-20",
                              .gland = as_is(arena, "BW-20"),
                              .use_count = 2,
                              .uses = uses};
    *list = (struct PartsList){.count = 1, .parts = glands, .ways = ways};
    for (int i = 0; i < plan->segment_count; i++) {
        const struct Segment *segment = plan->segments[i].surveyed;
        bool ground = survey_in_ground(segment->way), hole = segment->way == WAY_THROUGH_WALL;
        for (int run = ground ? plan->run_count - 1 : 0; run < plan->run_count; run++) {
            ways[list->way_count++] =
                (struct PartsWay){.segment = i,
                                  .run = ground ? -1 : run,
                                  .fixings = ground || hole ? 0 : 3 + i % 90,
                                  .end_fixings = i % 4 == 0 && !ground && !hole ? 2 : 0,
                                  .pitch_m = 0.377,
                                  .fixing = say(arena, SAY_PART_HOOK_CLEAT, say_count(8), say_fixed(20.3, 1, UNIT_MM)),
                                  .fixing_short = say(arena, SAY_HOOK_CLEAT_SHORT, say_count(8)),
                                  .hole_mm = hole ? 35 : 0,
                                  .drill_mm = hole ? 360 : 0,
                                  .trench_m = ground ? segment->length_m.value : 0,
                                  .trench_width_m = 0.3,
                                  .trench_depth_m = 0.738};
        }
    }
    return list;
}
