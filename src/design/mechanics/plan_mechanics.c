/* What the plan says of the cable as a thing, its bends, its pulls and its ends, for whoever carries and draws it. */
#include "mechanics_private.h"

/* Above this a lift wants two people; HSE INDG143, as the caution has it. */
static const double heavy_kg = 25;

static const struct Segment *segment_at(const struct RunDesign *run, int stretch)
{
    return &run->segments[run->run->along[stretch]];
}

static const struct Say *say_cable(struct Arena *arena, int order_length_m, const struct PlanCable *cable)
{
    if (!(cable->overall_mm > 0)) {
        return say(arena, SAY_THICKNESS_NOT_HELD);
    }
    const struct Say *armour = NULL, *radius = NULL, *weight = NULL, *heavy = NULL;
    if (cable->under_armour_mm > 0) {
        armour = say(arena, SAY_UNDER_THE_ARMOUR, say_digits(cable->under_armour_mm, 4, UNIT_MM));
    }
    if (cable->bend_radius_mm > 0) {
        radius = say(arena, SAY_BEND_NO_TIGHTER, say_needed_mm(cable->bend_radius_mm));
    }
    if (cable->weight_kg_per_m > 0) {
        weight = say(arena, SAY_WEIGHT_TO_ORDER, say_digits(cable->weight_kg_per_m, 3, UNIT_KG),
                     say_fixed(cable->order_weight_kg, 0, UNIT_KG), say_fixed(order_length_m, 0, UNIT_M));
    }
    if (cable->heavy) {
        heavy = say(arena, SAY_TOO_HEAVY_FOR_ONE);
    }
    return say_then(arena,
                    say(arena, SAY_CABLE_AS_A_THING, say_digits(cable->overall_mm, 4, UNIT_MM), say_part(armour),
                        say_part(radius), say_part(weight)),
                    heavy);
}

struct PlanCable plan_cable(struct Arena *arena, const struct RunDesign *run, double size_mm2, int order_length_m)
{
    struct PlanCable out = {.source = ""};
    struct CableBody body;
    if (mechanics_body(&run->run->cable, size_mm2, &body)) {
        out.overall_mm = body.overall_mm;
        out.under_armour_mm = body.under_armour_mm;
        out.weight_kg_per_m = body.weight_kg_per_m;
        out.source = body.source;
        out.order_weight_kg = body.weight_kg_per_m * order_length_m;
        out.heavy = out.order_weight_kg > heavy_kg;
        if (!bend_least_radius_mm(run->run->cable.type, size_mm2, body.overall_mm, &out.bend_radius_mm)) {
            out.bend_radius_mm = 0;
        }
    }
    out.text = say_cable(arena, order_length_m, &out);
    return out;
}

const struct PlanBend *plan_bends(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                                  int *out_count)
{
    int count = 0;
    for (int i = 0; i < run->run->along_count; i++) {
        count += segment_at(run, i)->bend_count > 0;
    }
    struct PlanBend *list = arena_array(arena, (size_t)count + 1, sizeof *list);
    *out_count = 0;
    for (int i = 0; list != NULL && i < run->run->along_count; i++) {
        const struct Segment *segment = segment_at(run, i);
        if (segment->bend_count == 0) {
            continue;
        }
        const struct Bends bends = bend_look(segment);
        struct Check check = {.result = CHECK_NOT_DUE};
        struct RunDesign brief = *run;
        brief.brief = true;
        check_bend(arena, &brief, trial, i, &check);
        list[(*out_count)++] = (struct PlanBend){.segment = run->run->along[i],
                                                 .count = segment->bend_count,
                                                 .total_deg = bends.total_deg,
                                                 .tightest_mm = bends.tightest_m * 1000,
                                                 .least_mm = check.limit,
                                                 .result = check.result,
                                                 .unknown = check.unknown,
                                                 .text = check.text};
    }
    return list;
}

/* ---- pulls ---- */

/* Two right angles between draw-in boxes of a conduit: common practice, no source. */
static const double conduit_most_deg = 180;

static void count_degrees(struct Arena *arena, const struct RunDesign *run, struct PlanPull *out)
{
    bool conduit = false;
    for (int i = 0; i < out->count; i++) {
        const struct Segment *segment = segment_at(run, out->first + i);
        out->length_m += segment->length_m.value;
        out->bends_deg += bend_look(segment).total_deg;
        conduit = conduit || segment->way == WAY_CONDUIT;
    }
    out->bends_most_deg = conduit ? conduit_most_deg : pull_limits()->bends_deg;
    if (!(out->bends_deg > 0)) {
        out->bends_text = say(arena, SAY_NO_BEND_IN_THE_PULL);
        return;
    }
    out->bends_text =
        say_then(arena,
                 say(arena, conduit ? SAY_BENDS_IN_A_CONDUIT_PULL : SAY_BENDS_IN_THE_PULL,
                     say_fixed(out->bends_deg, 0, UNIT_DEG), say_fixed(out->bends_most_deg, 0, UNIT_DEG)),
                 within(out->bends_deg, out->bends_most_deg) ? NULL : say(arena, SAY_PUT_A_BOX_OR_PIT_BETWEEN));
}

static void take_forces(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                        const struct PullWork *work, struct PlanPull *out)
{
    const struct Pull *pull = pull_taken(work);
    out->worked = true;
    out->from_far = work->from_far;
    out->either = work->either && !work->bound;
    out->lubricant = work->lubricated;
    out->friction = work->load.friction;
    out->tension_n = pull->tension;
    out->other_end_n = (work->from_far ? &work->forth : &work->back)->tension;
    out->limit_n = work->strength.tension;
    out->sidewall_n_per_m = pull->sidewall;
    out->sidewall_limit_n_per_m = work->strength.sidewall;
    out->because = word_pull_end(arena, run, work);
    if (out->result == CHECK_FAIL &&
        !pull_pit_for(arena, run->survey, run, trial, work, &out->pit_at_m, &out->pit_tension_n)) {
        out->pit_at_m = out->pit_tension_n = 0;
    }
}

static struct PlanPull pull_from(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int first)
{
    struct PlanPull out = {.first = first, .count = 1, .result = CHECK_NOT_DUE};
    struct Check check = {.result = CHECK_NOT_DUE};
    struct RunDesign brief = *run;
    brief.brief = true;
    while (pull_goes_on(run, first + out.count)) {
        out.count++;
    }
    count_degrees(arena, run, &out);
    check_pull(arena, run->survey, &brief, trial, first, &check);
    out.result = check.result;
    out.text = check.text;
    const struct PullWork work = pull_work(run->survey, &brief, trial, first);
    /* with more bends than the rule of thumb the tension can no longer be worked out */
    if (work.lacks == SAY_NOTHING && within(pull_taken(&work)->bends_deg, work.strength.bends_deg)) {
        take_forces(arena, &brief, trial, &work, &out);
    }
    return out;
}

const struct PlanPull *plan_pulls(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                                  int *out_count)
{
    int count = 0;
    for (int i = 0; i < run->run->along_count; i++) {
        count += survey_drawn(segment_at(run, i)) && !pull_goes_on(run, i);
    }
    struct PlanPull *list = arena_array(arena, (size_t)count + 1, sizeof *list);
    *out_count = 0;
    for (int i = 0; list != NULL && i < run->run->along_count; i++) {
        if (survey_drawn(segment_at(run, i)) && !pull_goes_on(run, i)) {
            list[(*out_count)++] = pull_from(arena, run, trial, i);
        }
    }
    return list;
}

/* ---- ends ---- */

/* A right angle at the least radius, measured to the far side of the cable. */
struct PlanEnd plan_end(struct Arena *arena, const struct End *end, const struct PlanCable *cable, bool stiff)
{
    struct PlanEnd out = {0};
    if (end->into == INTO_FREE || !(cable->bend_radius_mm > 0) || !(cable->overall_mm > 0)) {
        return out;
    }
    out.needs_mm = cable->bend_radius_mm + cable->overall_mm;
    if (!end->room_m.given) {
        out.text = say_then(arena, stiff ? say(arena, SAY_CABLE_IS_STIFF) : NULL,
                            say(arena, SAY_KEEP_CLEAR_OF_THE_ENTRY, say_needed_mm(out.needs_mm)));
        return out;
    }
    out.room_mm = end->room_m.value * 1000;
    out.tight = !within(out.needs_mm, out.room_mm);
    out.text = say(arena, out.tight ? SAY_ENTRY_TOO_TIGHT : SAY_ENTRY_HAS_ROOM,
                   end->entry < ENTRY_COUNT ? say_word(WORDS_ENTRY, (int)end->entry) : say_term(SAY_NOTHING),
                   say_there_mm(out.room_mm), say_needed_mm(out.needs_mm));
    return out;
}
