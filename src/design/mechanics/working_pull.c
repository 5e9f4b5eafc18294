/* The working of the check of drawing in, stretch by stretch from the better end. */
#include "mechanics_private.h"

#include <math.h>

static const struct Segment *segment_at(const struct RunDesign *run, int stretch)
{
    return &run->segments[run->run->along[stretch]];
}

/* "x 1.2 x 0.6": the weight correction shows only where there is one. */
static const char *rubs(const struct Steps *steps, const struct PullPiece *piece, double friction)
{
    const char *coefficient = steps_number(steps, friction);
    return piece->crowd > 1 ? arena_print(steps->arena, "%s x %s", steps_number(steps, piece->crowd), coefficient)
                            : coefficient;
}

static void step_straight(struct Steps *steps, const struct PullLoad *load, const struct PullPiece *piece,
                          double before, double after, const char *name)
{
    struct Arena *arena = steps->arena;
    const char *rub = rubs(steps, piece, load->friction);
    const char *length = steps_number(steps, piece->length);
    const char *start =
        arena_print(arena, "%s + %s x %s", steps_number(steps, before), steps_number(steps, load->weight), length);
    const char *numbers;
    const struct SayArg what = say_part(say(arena, SAY_STEP_AFTER_STRAIGHT, say_name(name)));
    const struct SayArg statics = say_term(SAY_STEP_STATICS_AND_FRICTION);
    if (!(after > 0)) {
        steps_figure(steps, what, say_term(SAY_STEP_SLOPE_CARRIES), "", after, UNIT_N, statics);
        return;
    }
    if (fabs(piece->rise) > 0) {
        const char *rise = steps_number(steps, fabs(piece->rise));
        numbers = arena_print(arena, "%s x (%s x sqrt(1 - (%s / %s) ^ 2) %s %s / %s)", start, rub, rise, length,
                              piece->rise > 0 ? "+" : "-", rise, length);
    } else {
        numbers = arena_print(arena, "%s x %s", start, rub);
    }
    steps_figure(steps, what, say_term(SAY_STEP_STRAIGHT_FORMULA), numbers, after, UNIT_N, statics);
}

static void step_bend(struct Steps *steps, const struct PullLoad *load, const struct PullPiece *piece, double before,
                      double after, const char *name)
{
    struct Arena *arena = steps->arena;
    if (!(piece->bend_deg > 0)) {
        return;
    }
    steps_figure(steps, say_part(say(arena, SAY_STEP_AFTER_BENDS, say_name(name))), say_term(SAY_STEP_BENDS_FORMULA),
                 arena_print(arena, "%s x 10 ^ (%s x %s x pi / 180 / ln(10))", steps_number(steps, before),
                             rubs(steps, piece, load->friction), steps_number(steps, piece->bend_deg)),
                 after, UNIT_N, say_term(SAY_STEP_STATICS_AND_FRICTION));
    if (piece->radius > 0) {
        steps_figure(steps, say_part(say(arena, SAY_STEP_PRESSURE, say_name(name))),
                     piece->pressed > 1 ? say_term(SAY_STEP_PRESSURE_OF_SEVERAL) : say_name("T / R"),
                     piece->pressed > 1 ? arena_print(arena, "%s x %s / %s", steps_number(steps, piece->pressed),
                                                      steps_number(steps, after), steps_number(steps, piece->radius))
                                        : arena_print(arena, "%s / %s", steps_number(steps, after),
                                                      steps_number(steps, piece->radius)),
                     piece->pressed * after / piece->radius, UNIT_N_PER_M, say_term(SAY_STEP_STATICS));
    }
}

/* One stretch, in the order in which the pull meets its straight and its bends. */
static void step_piece(struct Steps *steps, const struct PullLoad *load, struct PullPiece piece, bool backwards,
                       double before, const char *name)
{
    piece.rise = backwards ? -piece.rise : piece.rise;
    if (pull_straight(0, load, piece.length, piece.rise, piece.crowd) > 0) {
        const double between = pull_straight(before, load, piece.length, piece.rise, piece.crowd);
        step_straight(steps, load, &piece, before, between, name);
        step_bend(steps, load, &piece, between, pull_bend(between, load->friction, piece.bend_deg, piece.crowd), name);
    } else {
        const double between = pull_bend(before, load->friction, piece.bend_deg, piece.crowd);
        step_bend(steps, load, &piece, before, between, name);
        step_straight(steps, load, &piece, between, pull_straight(between, load, piece.length, piece.rise, piece.crowd),
                      name);
    }
}

static void step_limits(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial,
                        const struct PullWork *work)
{
    struct Arena *arena = steps->arena;
    const struct PullLimits *rules = pull_limits();
    const struct SayArg source = say_name(table_source(arena, pull_limits_ref()));
    const char *overall = steps_number(steps, work->body.overall_mm);
    steps_figure(steps, say_term(SAY_STEP_LIMIT_OF_COPPER), say_term(SAY_STEP_LIMIT_OF_COPPER_FORMULA),
                 arena_print(arena, "%s x %d x %s", steps_number(steps, rules->copper_n_per_mm2), run->run->cable.cores,
                             steps_number(steps, trial->size_mm2)),
                 work->limit.copper_n, UNIT_N, source);
    steps_figure(steps, say_term(SAY_STEP_LIMIT_OF_STOCKING), say_name("N/mm x D"),
                 arena_print(arena, "%s x %s", steps_number(steps, rules->stocking_n_per_mm), overall),
                 work->limit.stocking_n, UNIT_N, source);
    if (work->limit.armour_n > 0) {
        steps_figure(steps, say_term(SAY_STEP_LIMIT_ON_ARMOUR), say_name("N/mm2 x D^2"),
                     arena_print(arena, "%s x %s ^ 2", steps_number(steps, rules->stocking_armour_n_per_mm2), overall),
                     work->limit.armour_n, UNIT_N, source);
    }
    steps_figure(steps, say_term(SAY_STEP_LEAST_OF_THEM),
                 say_term(work->limit.part < 1 ? SAY_STEP_FOR_MANY_TOGETHER : SAY_NOTHING), "", work->limit.least_n,
                 UNIT_N, source);
}

static void step_load(struct Steps *steps, const struct PullWork *work)
{
    steps_figure(steps, say_term(SAY_STEP_WEIGHT),
                 work->other != NULL ? say_term(SAY_STEP_WEIGHT_OF_HEAVIEST) : say_name("kg/m x g"),
                 arena_print(steps->arena, "%s x %s", steps_number(steps, work->heaviest_kg_per_m),
                             steps_number(steps, PULL_GRAVITY)),
                 work->load.weight, UNIT_N_PER_M, say_name(cable_dimensions_ref()->standard));
    const struct SayArg surveyed = say_term(SAY_STEP_AS_SURVEYED);
    const struct SayArg band = say_term(work->lubricated ? SAY_STEP_LUBRICATED : SAY_STEP_DRY);
    steps_figure(steps, say_term(SAY_STEP_FRICTION), work->friction_surveyed ? surveyed : band, "", work->load.friction,
                 UNIT_NONE,
                 work->friction_surveyed ? surveyed : say_name(table_source(steps->arena, pull_friction_ref())));
}

/* Every stretch from the drum on. */
static void step_way(struct Steps *steps, const struct Survey *survey, const struct RunDesign *run,
                     const struct Trial *trial, const struct PullWork *work)
{
    struct Pull so_far = pull_begin(&work->load);
    for (int i = 0; i < work->count; i++) {
        const int stretch = work->first + (work->from_far ? work->count - 1 - i : i);
        const char *name = segment_at(run, stretch)->name;
        const struct PullPiece piece = pull_piece(survey, run, trial, stretch);
        if (piece.crowd > 1) {
            steps_figure(steps, say_part(say(steps->arena, SAY_STEP_WEIGHT_CORRECTION, say_name(name))),
                         say_term(SAY_STEP_CABLES_WEDGE), "", piece.crowd, UNIT_NONE, say_term(SAY_STEP_STATICS));
        }
        if (piece.pressed > 1 && piece.radius > 0) {
            steps_figure(steps, say_part(say(steps->arena, SAY_STEP_CABLES_ON_EACH_OTHER, say_name(name))),
                         say_term(SAY_STEP_WORST_OFF), "", piece.pressed, UNIT_NONE, say_term(SAY_STEP_STATICS));
        }
        step_piece(steps, &work->load, piece, work->from_far, so_far.tension, name);
        if (work->from_far) {
            pull_back_over(&so_far, &work->load, &piece);
        } else {
            pull_over(&so_far, &work->load, &piece);
        }
    }
}

static void step_bends_limit(struct Steps *steps, const struct Pull *pull, const struct PullWork *work)
{
    const struct SayArg source = say_name(table_source(steps->arena, pull_limits_ref()));
    if (!within(pull->bends_deg, work->strength.bends_deg)) {
        steps_figure(steps, say_term(SAY_STEP_BENDS_IN_PULL), say_term(SAY_STEP_ADDED_UP), "", pull->bends_deg,
                     UNIT_DEG, say_term(SAY_STEP_AS_SURVEYED));
        steps_figure(steps, say_term(SAY_STEP_MOST_IN_PULL), say_term(SAY_STEP_RULE_OF_THUMB), "",
                     work->strength.bends_deg, UNIT_DEG, source);
    } else if (pull->sidewall > 0) {
        steps_figure(steps, say_term(SAY_STEP_PRESSURE_STOOD), say_term(SAY_NOTHING), "", work->strength.sidewall,
                     UNIT_N_PER_M, source);
    }
}

void work_pull(struct Arena *arena, const struct Survey *survey, const struct RunDesign *run, const struct Trial *trial,
               const struct PullWork *work, struct Check *out)
{
    const struct Pull *pull = pull_taken(work);
    if (run->brief) {
        return;
    }
    struct Steps steps = steps_begin(arena);
    if (within(pull->bends_deg, work->strength.bends_deg)) { /* beyond that the tension cannot be worked out */
        step_load(&steps, work);
        step_way(&steps, survey, run, trial, work);
        step_limits(&steps, run, trial, work);
    }
    step_bends_limit(&steps, pull, work);
    steps_end(&steps, out);
}
