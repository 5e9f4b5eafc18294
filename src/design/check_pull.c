/* The check of drawing in: one pull through all the ducts that follow each other without a break, from the better end.
 */
#include "mechanics_private.h"

#include <math.h>

static const struct Segment *segment_at(const struct RunDesign *run, int stretch)
{
    return &run->segments[run->run->along[stretch]];
}

static bool is_duct(const struct RunDesign *run, int stretch)
{
    return stretch >= 0 && stretch < run->run->along_count && segment_at(run, stretch)->way == WAY_DUCT;
}

/* Why a stretch cannot be pulled through in figures, NULL when it can; adds what lies in it to `work`. */
static const char *look_at(const struct Survey *survey, const struct RunDesign *run, const struct Trial *trial,
                           int stretch, struct PullWork *work)
{
    struct Check fill = {.text = ""};
    check_duct_fill(NULL, survey, run, trial, stretch, &fill);
    if (fill.unknown) {
        work->unknown = true;
        return fill.text;
    }
    if (fill.result == CHECK_FAIL) {
        return "Not made: the cables do not go into the duct as they should; see its fill.";
    }
    const struct Sharing sharing = mechanics_sharing(survey, run, trial->size_mm2, run->run->along[stretch]);
    struct Figure bore;
    double crowd;
    if (!duct_bore(segment_at(run, stretch)->duct_size_mm.value, &bore) ||
        !pull_crowd(&sharing.bunch, bore.value, &crowd)) {
        work->unknown = true;
        return "Not made: how more than four cables press each other in a duct is not held.";
    }
    work->heaviest_kg_per_m = fmax(work->heaviest_kg_per_m, sharing.heaviest_kg_per_m);
    if (sharing.bunch.count > work->cables) {
        work->cables = sharing.bunch.count;
        work->other = sharing.other;
    }
    return NULL;
}

struct PullPiece pull_piece(const struct Survey *survey, const struct RunDesign *run, const struct Trial *trial,
                            int stretch)
{
    const struct Segment *segment = segment_at(run, stretch);
    const struct Sharing sharing = mechanics_sharing(survey, run, trial->size_mm2, run->run->along[stretch]);
    const struct Bends bends = bend_look(segment);
    struct Figure bore = {0};
    struct PullPiece piece = {.length = segment->length_m.value,
                              .rise = segment->rise_m.value,
                              .bend_deg = bends.total_deg,
                              .radius = bends.tightest_m,
                              .open = bends.open > 0,
                              .anywhere = true,
                              .crowd = 1,
                              .pressed = 1};
    if (duct_bore(segment->duct_size_mm.value, &bore) && pull_crowd(&sharing.bunch, bore.value, &piece.crowd)) {
        piece.pressed = pull_pressed(&sharing.bunch, bore.value, piece.crowd);
    }
    return piece;
}

static struct Pull draw(const struct Survey *survey, const struct RunDesign *run, const struct Trial *trial,
                        const struct PullWork *work, double friction, bool from_far)
{
    struct PullLoad load = work->load;
    load.friction = friction;
    struct Pull pull = pull_begin(&load);
    for (int i = 0; i < work->count; i++) {
        const int stretch = work->first + (from_far ? work->count - 1 - i : i);
        const struct PullPiece piece = pull_piece(survey, run, trial, stretch);
        if (from_far) {
            pull_back_over(&pull, &load, &piece);
        } else {
            pull_over(&pull, &load, &piece);
        }
    }
    return pull;
}

static bool better(const struct Pull *a, const struct Pull *b, const struct PullStrength *strength)
{
    return !within(pull_strain(b, strength), pull_strain(a, strength));
}

static void draw_both_ways(const struct Survey *survey, const struct RunDesign *run, const struct Trial *trial,
                           struct PullWork *work)
{
    work->forth = draw(survey, run, trial, work, work->dry.high, false);
    work->back = draw(survey, run, trial, work, work->dry.high, true);
    work->from_far = better(&work->back, &work->forth, &work->strength);
    work->either = !work->from_far && !better(&work->forth, &work->back, &work->strength);
    const struct Pull forth = draw(survey, run, trial, work, work->wet.high, false);
    const struct Pull back = draw(survey, run, trial, work, work->wet.high, true);
    work->wet_pull = better(&back, &forth, &work->strength) ? back : forth;
}

struct PullWork pull_work(const struct Survey *survey, const struct RunDesign *run, const struct Trial *trial,
                          int stretch)
{
    struct PullWork work = {.first = stretch};
    const struct Cable *cable = &run->run->cable;
    while (is_duct(run, work.first - 1)) {
        work.first--;
    }
    while (is_duct(run, work.first + work.count)) {
        work.count++;
    }
    for (int i = 0; i < work.count && work.lacks == NULL; i++) {
        work.lacks = look_at(survey, run, trial, work.first + i, &work);
    }
    if (work.lacks != NULL) {
        return work;
    }
    mechanics_body(cable, trial->size_mm2, &work.body); /* held, or the fill would not be known */
    if (!(work.body.weight_kg_per_m > 0)) {
        work.lacks = "Not made: the weight of this cable is not held; its maker has it.";
        work.unknown = true;
        return work;
    }
    const enum PullSheath sheath = mechanics_sheath(cable->type);
    pull_friction(sheath, false, &work.dry);
    pull_friction(sheath, true, &work.wet);
    work.load = (struct PullLoad){.weight = work.heaviest_kg_per_m * PULL_GRAVITY, .friction = work.dry.high};
    work.limit =
        pull_limit(survey_armoured(cable->type), cable->cores * trial->size_mm2, work.body.overall_mm, work.cables);
    work.strength = (struct PullStrength){.tension = work.limit.least_n,
                                          .sidewall = pull_limits()->sidewall_n_per_m,
                                          .bends_deg = pull_limits()->bends_deg};
    draw_both_ways(survey, run, trial, &work);
    return work;
}

static void compare(struct Check *out, double value, double limit, const char *unit)
{
    out->value = value;
    out->limit = limit;
    out->unit = unit;
    out->result = within(value, limit) ? CHECK_PASS : CHECK_FAIL;
}

/* Bends first: beyond that the tension is past all reckoning. */
static void decide(const struct PullWork *work, struct Check *out)
{
    const struct Pull *pull = work->from_far ? &work->back : &work->forth;
    compare(out, pull->bends_deg, work->strength.bends_deg, "deg");
    if (out->result == CHECK_FAIL) {
        return;
    }
    if (within(pull->tension, work->strength.tension)) {
        compare(out, pull->sidewall, work->strength.sidewall, "N/m");
    }
    if (out->result == CHECK_PASS) {
        compare(out, pull->tension, work->strength.tension, "N");
    }
}

void check_pull(struct Arena *arena, const struct Survey *survey, const struct RunDesign *run,
                const struct Trial *trial, int stretch, struct Check *out)
{
    if (is_duct(run, stretch - 1)) {
        out->result = CHECK_NOT_DUE;
        out->text = "Drawn in with the duct before it, in one pull; see there.";
        return;
    }
    const struct PullWork work = pull_work(survey, run, trial, stretch);
    if (work.lacks != NULL) {
        out->result = CHECK_NOT_DUE;
        out->unknown = work.unknown;
        out->text = work.lacks;
        return;
    }
    decide(&work, out);
    if (arena != NULL) {
        word_pull(arena, survey, run, trial, &work, out);
        work_pull(arena, survey, run, trial, &work, out);
    }
}
