/* The check of drawing in: one pull through all that is drawn and follows each other without a break or a pit,
 * from the end that was surveyed or the better one. */
#include "mechanics_private.h"
#include "tables/takeoff_tables.h"

#include <math.h>

static bool is_drawn(const struct RunDesign *run, int stretch)
{
    return stretch >= 0 && stretch < run->run->along_count && survey_drawn(segment_at(run, stretch));
}

bool pull_goes_on(const struct RunDesign *run, int stretch)
{
    if (!is_drawn(run, stretch - 1) || !is_drawn(run, stretch)) {
        return false;
    }
    const enum Pits before = segment_at(run, stretch - 1)->pits;
    const enum Pits here = segment_at(run, stretch)->pits;
    return before != PITS_END && before != PITS_BOTH && here != PITS_START && here != PITS_BOTH;
}

const struct Pull *pull_taken(const struct PullWork *work)
{
    return work->from_far ? &work->back : &work->forth;
}

/* Why a duct cannot be pulled through in figures, SAY_NOTHING when it can. */
static enum Saying look_into_duct(const struct RunDesign *run, int stretch, const struct Sharing *sharing,
                                  struct PullWork *work)
{
    struct Check fill = {.result = CHECK_NOT_DUE};
    struct DuctBore bore;
    double crowd;
    decide_fill_of(run, sharing, stretch, &fill);
    if (fill.unknown) {
        work->unknown = true;
        work->settles = fill.settles;
        return duct_fill_lacks(run, sharing, stretch);
    }
    if (fill.result == CHECK_FAIL) {
        return SAY_PULL_CABLES_DO_NOT_FIT;
    }
    if (!mechanics_bore(segment_at(run, stretch), &bore) || !pull_crowd(&sharing->bunch, bore.mm, &crowd)) {
        work->unknown = true;
        work->settles = settles_reading(SAY_SETTLED_BY_OWN_DUCT);
        return SAY_PULL_OVER_FOUR_CABLES;
    }
    return SAY_NOTHING;
}

/* Friction is published for plastic only. */
static enum Saying look_at_surface(const struct RunDesign *run, int stretch, struct Settles *settles)
{
    const struct Segment *segment = segment_at(run, stretch);
    if (run->run->pull.friction.given || survey_duct(segment->way)) {
        return SAY_NOTHING;
    }
    if (survey_way(segment->way)->round == ROUND_PIPE) {
        *settles = (struct Settles){.key = "material", .or_key = "pull: friction"};
        return segment->material == MATERIAL_PLASTIC ? SAY_NOTHING : SAY_PULL_FRICTION_OF_CONDUIT;
    }
    *settles = settles_key("pull: friction");
    return SAY_PULL_FRICTION_OF_SURFACE;
}

/* Why a stretch cannot be pulled through in figures, SAY_NOTHING when it can; adds what lies in it to `work`. */
static enum Saying look_at(const struct RunDesign *run, const struct Trial *trial, int stretch, struct PullWork *work)
{
    const struct Sharing sharing = mechanics_sharing(run, trial->size_mm2, run->run->along[stretch]);
    const enum WayRound round = survey_way(segment_at(run, stretch)->way)->round;
    enum Saying lacks = look_at_surface(run, stretch, &work->settles);
    if (lacks == SAY_NOTHING && round == ROUND_PIPE && sharing.other != NULL) {
        work->settles = settles_reading(SAY_SETTLED_BY_OWN_CONDUIT);
        lacks = SAY_PULL_SEVERAL_IN_CONDUIT;
    }
    if (lacks != SAY_NOTHING) {
        work->unknown = true;
        return lacks;
    }
    if (round == ROUND_DUCT) {
        lacks = look_into_duct(run, stretch, &sharing, work);
    }
    if (lacks != SAY_NOTHING) {
        return lacks;
    }
    work->heaviest_kg_per_m = fmax(work->heaviest_kg_per_m, sharing.heaviest_kg_per_m);
    if (sharing.bunch.count > work->cables) {
        work->cables = sharing.bunch.count;
        work->other = sharing.other;
    }
    return SAY_NOTHING;
}

struct PullPiece pull_piece(const struct RunDesign *run, const struct Trial *trial, int stretch)
{
    const struct Segment *segment = segment_at(run, stretch);
    const struct Sharing sharing = mechanics_sharing(run, trial->size_mm2, run->run->along[stretch]);
    const struct Bends bends = bend_look(segment);
    struct DuctBore bore;
    struct PullPiece piece = {.length = segment->length_m.value,
                              .rise = segment->rise_m.value,
                              .bend_deg = bends.total_deg,
                              .radius = bends.tightest_m,
                              .open = bends.open > 0,
                              .anywhere = true,
                              .crowd = 1,
                              .pressed = 1};
    if (survey_duct(segment->way) && mechanics_bore(segment, &bore) &&
        pull_crowd(&sharing.bunch, bore.mm, &piece.crowd)) {
        piece.pressed = pull_pressed(&sharing.bunch, bore.mm, piece.crowd);
    }
    return piece;
}

struct Pull pull_lubricated(const struct RunDesign *run, const struct Trial *trial, const struct PullWork *work)
{
    struct PullLoad wet = work->load;
    wet.friction = work->wet.high;
    struct Pull pull = pull_begin(&wet);
    for (int i = 0; i < work->count; i++) {
        const int stretch = work->first + (work->from_far ? work->count - 1 - i : i);
        const struct PullPiece piece = pull_piece(run, trial, stretch);
        (work->from_far ? pull_back_over : pull_over)(&pull, &wet, &piece);
    }
    return pull;
}

static bool better(const struct Pull *a, const struct Pull *b, const struct PullStrength *strength)
{
    return !within(pull_strain(b, strength), pull_strain(a, strength));
}

/* From the end that was surveyed, else from the better one. */
static void draw_both_ways(const struct RunDesign *run, const struct Trial *trial, struct PullWork *work)
{
    const enum Drum from = run->run->pull.from;
    work->forth = work->back = pull_begin(&work->load);
    for (int i = 0; i < work->count; i++) {
        const int back = work->count - 1 - i;
        const struct PullPiece next = pull_piece(run, trial, work->first + i);
        const struct PullPiece last = back == i ? next : pull_piece(run, trial, work->first + back);
        pull_over(&work->forth, &work->load, &next);
        pull_back_over(&work->back, &work->load, &last);
    }
    const bool far_better = better(&work->back, &work->forth, &work->strength);
    work->either = !far_better && !better(&work->forth, &work->back, &work->strength);
    work->bound = run->run->pull.given && from != DRUM_COUNT;
    work->from_far = work->bound ? from == DRUM_FINISH : far_better;
    work->worse = work->bound && !work->either && work->from_far != far_better;
}

/* As surveyed, else the top of the published band. */
static void take_friction(const struct RunDesign *run, struct PullWork *work)
{
    const struct PullRules *rules = &run->run->pull;
    const enum PullSheath sheath = cable_kind(run->run->cable.type)->sheath;
    pull_friction(sheath, false, &work->dry);
    pull_friction(sheath, true, &work->wet);
    work->friction_trust = pull_friction_trust(sheath);
    work->friction_surveyed = rules->given && rules->friction.given;
    work->lubricated = rules->given && rules->lubricant;
    work->load.friction = work->friction_surveyed ? rules->friction.value
                          : work->lubricated      ? work->wet.high
                                                  : work->dry.high;
}

struct PullWork pull_work(const struct RunDesign *run, const struct Trial *trial, int stretch)
{
    struct PullWork work = {.first = stretch};
    const struct Cable *cable = &run->run->cable;
    while (pull_goes_on(run, work.first)) {
        work.first--;
    }
    work.count = 1;
    while (pull_goes_on(run, work.first + work.count)) {
        work.count++;
    }
    for (int i = 0; i < work.count && work.lacks == SAY_NOTHING; i++) {
        work.lacks = look_at(run, trial, work.first + i, &work);
    }
    if (work.lacks != SAY_NOTHING) {
        return work;
    }
    const struct SizedCable own = mechanics_own(run, trial->size_mm2);
    work.body = own.body;
    if (!own.known || !(own.body.weight_kg_per_m > 0)) {
        work.lacks = SAY_PULL_WEIGHT_NOT_HELD;
        work.unknown = true;
        work.settles = settles_reading(SAY_SETTLED_BY_CABLE_WEIGHT);
        return work;
    }
    work.load.weight = work.heaviest_kg_per_m * PULL_GRAVITY;
    take_friction(run, &work);
    work.limit =
        pull_limit(survey_armoured(cable->type), cable->cores * trial->size_mm2, work.body.overall_mm, work.cables);
    work.strength = (struct PullStrength){.tension = work.limit.least_n,
                                          .sidewall = pull_limits()->sidewall_n_per_m,
                                          .bends_deg = pull_limits()->bends_deg};
    draw_both_ways(run, trial, &work);
    return work;
}

static void compare(struct Check *out, double value, double limit, enum Unit unit)
{
    out->value = value;
    out->limit = limit;
    out->unit = unit;
    out->result = within(value, limit) ? CHECK_PASS : CHECK_FAIL;
}

/* Bends first: beyond that the tension cannot be worked out. */
static void decide(const struct PullWork *work, struct Check *out)
{
    const struct Pull *pull = pull_taken(work);
    compare(out, pull->bends_deg, work->strength.bends_deg, UNIT_DEG);
    if (out->result == CHECK_FAIL) {
        return;
    }
    if (within(pull->tension, work->strength.tension)) {
        compare(out, pull->sidewall, work->strength.sidewall, UNIT_N_PER_M);
    }
    if (out->result == CHECK_PASS) {
        compare(out, pull->tension, work->strength.tension, UNIT_N);
    }
}

/* Too many degrees of bend are too many whatever the cable weighs and the surface is like. */
static bool turns_too_often(const struct RunDesign *run, const struct PullWork *work, struct Check *out)
{
    double bends_deg = 0;
    for (int i = 0; i < work->count; i++) {
        bends_deg += bend_look(segment_at(run, work->first + i)).total_deg;
    }
    if (within(bends_deg, pull_limits()->bends_deg)) {
        return false;
    }
    compare(out, bends_deg, pull_limits()->bends_deg, UNIT_DEG);
    return true;
}

void decide_pull(const struct RunDesign *run, const struct Trial *trial, int stretch, struct Check *out)
{
    if (pull_goes_on(run, stretch)) {
        return;
    }
    const struct PullWork work = pull_work(run, trial, stretch);
    if (work.lacks == SAY_NOTHING) {
        if (!work.friction_surveyed) {
            out->trust = trust_of_both(pull_limits_ref()->trust, work.friction_trust);
        }
        decide(&work, out);
    } else if (!turns_too_often(run, &work, out) && work.unknown) {
        check_unsettled(out, work.settles, NULL);
    }
}

void say_pull(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int stretch,
              struct Check *out)
{
    if (pull_goes_on(run, stretch)) {
        out->text = say(arena, SAY_PULL_WITH_STRETCH_BEFORE);
        return;
    }
    const struct PullWork work = pull_work(run, trial, stretch);
    if (work.lacks == SAY_NOTHING) {
        out->text = word_pull(arena, run, trial, &work, out->result);
        work_pull(arena, run, trial, &work, out);
    } else if (out->result == CHECK_FAIL) {
        out->text = say_then(arena,
                             say(arena, SAY_PULL_TURNS_TOO_OFTEN, say_fixed(out->value, 0, UNIT_DEG),
                                 say_fixed(out->limit, 0, UNIT_DEG)),
                             say(arena, SAY_PULL_PIT_BETWEEN_NOT_WORKED));
    } else {
        out->text = say(arena, work.lacks);
    }
}

static void count_degrees(struct Arena *arena, const struct RunDesign *run, struct PlanPull *out)
{
    bool conduit = false;
    for (int i = 0; i < out->count; i++) {
        const struct Segment *segment = segment_at(run, out->first + i);
        out->length_m += segment->length_m.value;
        out->bends_deg += bend_look(segment).total_deg;
        conduit = conduit || survey_way(segment->way)->round == ROUND_PIPE;
    }
    out->bends_most_deg = conduit ? containment_practice()->draw_bends_deg : pull_limits()->bends_deg;
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
    if (out->result == CHECK_FAIL && !pull_pit_for(arena, run, trial, work, &out->pit_at_m, &out->pit_tension_n)) {
        out->pit_at_m = out->pit_tension_n = 0;
    }
}

static struct PlanPull pull_from(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int first,
                                 const struct Check *check)
{
    struct PlanPull out = {.first = first, .count = 1, .result = check->result, .text = check->text};
    while (pull_goes_on(run, first + out.count)) {
        out.count++;
    }
    count_degrees(arena, run, &out);
    const struct PullWork work = pull_work(run, trial, first);
    /* with more bends than the rule of thumb the tension can no longer be worked out */
    if (work.lacks == SAY_NOTHING && within(pull_taken(&work)->bends_deg, work.strength.bends_deg)) {
        take_forces(arena, run, trial, &work, &out);
    }
    return out;
}

const struct PlanPull *plan_pulls(struct Arena *arena, const struct RunDesign *run, const struct PlanRun *planned,
                                  int *out_count)
{
    const struct Trial trial = {.size_mm2 = planned->size_mm2};
    struct PlanPull *list = arena_array(arena, (size_t)run->run->along_count + 1, sizeof *list);
    int at = 0;
    *out_count = 0;
    for (int i = 0; list != NULL && i < run->run->along_count; i++) {
        const struct Check *check = survey_drawn(segment_at(run, i)) ? mechanics_next(planned, "pull", &at) : NULL;
        if (check != NULL && !pull_goes_on(run, i)) {
            list[(*out_count)++] = pull_from(arena, run, &trial, i, check);
        }
    }
    return list;
}
