/* What the plan says of the cable as a thing, its bends, its pulls and its ends, for whoever carries and draws it. */
#include "mechanics_private.h"

#include <math.h>

/* Above this a lift wants two people; HSE INDG143, as the caution has it. */
static const double heavy_kg = 25;

static const struct Segment *segment_at(const struct RunDesign *run, int stretch)
{
    return &run->segments[run->run->along[stretch]];
}

static const char *whole(struct Arena *arena, double value)
{
    return number_text(arena, ceil(value - 1e-9), 0);
}

static void say_cable(struct Arena *arena, int order_length_m, struct PlanCable *out)
{
    struct TextBuilder text = text_builder(arena);
    if (!(out->overall_mm > 0)) {
        out->text = "How thick this cable is was not surveyed and is not held.";
        return;
    }
    text_print(&text, "%s mm over all", number_significant(arena, out->overall_mm, 4));
    if (out->under_armour_mm > 0) {
        text_print(&text, ", %s mm under the armour", number_significant(arena, out->under_armour_mm, 4));
    }
    if (out->bend_radius_mm > 0) {
        text_print(&text, "; bend it no tighter than %s mm to the inside", whole(arena, out->bend_radius_mm));
    }
    if (out->weight_kg_per_m > 0) {
        text_print(&text, "; %s kg a metre, %s kg for the %d m to order, without the drum",
                   number_significant(arena, out->weight_kg_per_m, 3), number_text(arena, out->order_weight_kg, 0),
                   order_length_m);
    }
    text_add(&text, ".");
    if (out->heavy) {
        text_add(&text, " That is more than one person should lift: roll it, or use a trolley or a machine.");
    }
    out->text = text_done(&text);
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
    say_cable(arena, order_length_m, &out);
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
        struct Check check = {.result = CHECK_NOT_DUE, .text = ""};
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
        out->bends_text = "No bend between its pulling points.";
        return;
    }
    out->bends_text = arena_print(
        arena, "%s degrees of bend between its pulling points; %s is %s.%s", number_text(arena, out->bends_deg, 0),
        number_text(arena, out->bends_most_deg, 0),
        conduit ? "the habit in conduit, two right angles (common practice, no source)" : "the rule of thumb",
        within(out->bends_deg, out->bends_most_deg) ? "" : " Put a draw-in box or a draw pit between.");
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
    struct PlanPull out = {.first = first, .count = 1, .result = CHECK_NOT_DUE, .because = ""};
    struct Check check = {.result = CHECK_NOT_DUE, .text = ""};
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
    /* with more bends than the rule of thumb the tension is past all reckoning */
    if (work.lacks == NULL && within(pull_taken(&work)->bends_deg, work.strength.bends_deg)) {
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
    struct PlanEnd out = {.text = ""};
    if (end->into == INTO_FREE || !(cable->bend_radius_mm > 0) || !(cable->overall_mm > 0)) {
        return out;
    }
    out.needs_mm = cable->bend_radius_mm + cable->overall_mm;
    out.room_mm = end->room_m.given ? end->room_m.value * 1000 : 0;
    const char *face = end->entry < ENTRY_COUNT && end->room_m.given ? survey_word(WORDS_ENTRY, (int)end->entry) : "";
    const char *at = arena_print(arena, "%s%sentry", face, face[0] != '\0' ? " " : "");
    const char *needs = whole(arena, out.needs_mm);
    if (!end->room_m.given) {
        out.text = arena_print(
            arena,
            "%sKeep %s mm clear in front of the entry hole: that much it takes to come along the wall "
            "and turn into it. With less, set the entry at an angle to meet the cable, or make the hole in the side "
            "that it comes from; never kink it.",
            stiff ? "This cable is stiff. " : "", needs);
        return out;
    }
    out.tight = !within(out.needs_mm, out.room_mm);
    out.text = out.tight
                   ? arena_print(arena,
                                 "Too tight: the %s has %s mm in front of it and the cable needs %s mm to turn a right "
                                 "angle. Set the entry at an angle, use another face, or move the enclosure.",
                                 at, number_text(arena, floor(out.room_mm + 1e-9), 0), needs)
                   : arena_print(arena, "The %s has %s mm in front of it; the cable needs %s mm to turn a right angle.",
                                 at, number_text(arena, floor(out.room_mm + 1e-9), 0), needs);
    return out;
}
