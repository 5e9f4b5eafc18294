/* What the check of drawing in says: from which end, how hard, and what helps where it is too hard. */
#include "mechanics_private.h"

#include <math.h>

static double rise_of(const struct RunDesign *run, const struct PullWork *work)
{
    double rise_m = 0;
    for (int i = 0; i < work->count; i++) {
        rise_m += segment_at(run, work->first + i)->rise_m.value;
    }
    return rise_m;
}

/* To the careful side, as on every paper: what a pull takes up, what the cable stands down, so that where the check
 * fails the two never read alike. In whole newtons, from ten thousand on in tenths of a kilonewton. */
static struct SayArg say_up(double value, enum Unit unit, enum Unit thousands)
{
    return value < 10000 ? say_fixed(ceil(value - 1e-6), 0, unit)
                         : say_fixed(ceil(value / 100 - 1e-6) / 10, 1, thousands);
}

static struct SayArg say_down(double value, enum Unit unit, enum Unit thousands)
{
    return value < 10000 ? say_fixed(floor(value + 1e-6), 0, unit)
                         : say_fixed(floor(value / 100 + 1e-6) / 10, 1, thousands);
}

static struct SayArg say_takes(double newton)
{
    return say_up(newton, UNIT_N, UNIT_KN);
}

static struct SayArg say_stands(double newton)
{
    return say_down(newton, UNIT_N, UNIT_KN);
}

/* Why the drum does not go to the other end: it takes more from there, or less and yet comes nearer to what the cable
 * stands in its bends. */
static enum Saying drum_at(const struct RunDesign *run, const struct PullWork *work, const struct Pull *other)
{
    if (!(other->tension > pull_taken(work)->tension)) {
        return SAY_DRUM_SINCE_PRESSED_LESS;
    }
    const double uphill_m = work->from_far ? rise_of(run, work) : -rise_of(run, work);
    if (other->bends_deg > 0) {
        return uphill_m > 0 ? SAY_DRUM_SINCE_CLIMB_OR_LATE_BENDS : SAY_DRUM_SINCE_LATE_BENDS;
    }
    return SAY_DRUM_SINCE_CLIMB;
}

const struct Say *word_pull_end(struct Arena *arena, const struct RunDesign *run, const struct PullWork *work)
{
    const struct Pull *other = work->from_far ? &work->forth : &work->back;
    const enum Saying id = work->worse    ? SAY_DRUM_SURVEYED_AT_WORSE_END
                           : work->bound  ? SAY_DRUM_SURVEYED_AT
                           : work->either ? SAY_DRUM_AT_EITHER_END
                                          : drum_at(run, work, other);
    return work->either && !work->bound
               ? say(arena, id)
               : say(arena, id, say_term(work->from_far ? SAY_THE_FAR_END : SAY_THE_SUPPLY_END),
                     say_takes(other->tension));
}

static const struct Say *stocking(struct Arena *arena, const struct PullLimit *limit)
{
    return limit->armour_n > 0 ? say(arena, SAY_PULL_LIMITS_BY_RULE, say_stands(limit->copper_n),
                                     say_stands(limit->stocking_n), say_stands(limit->armour_n))
                               : NULL;
}

/* Bends whose radius nobody surveyed: what they need for the cable not to be crushed. */
static const struct Say *open_bends(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                                    const struct PullWork *work)
{
    const struct Pull *pull = pull_taken(work);
    double least_mm = 0;
    if (!(pull->open > 0)) {
        return NULL;
    }
    bend_least_radius_mm(run->run->cable.type, trial->size_mm2, work->body.overall_mm, &least_mm);
    const double radius_mm = fmax(least_mm, pull->open / work->strength.sidewall * 1000);
    return say(arena, SAY_PULL_OPEN_BENDS_NEED, say_needed_mm(radius_mm));
}

/* Bends evenly spread over their stretch, as good a guess as any for where to dig a pit. */
bool pull_pit_for(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                  const struct PullWork *work, double *out_at_m, double *out_tension_n)
{
    int most = 0;
    int count = 0;
    for (int i = 0; i < work->count; i++) {
        most += segment_at(run, work->first + i)->bend_count + 1;
    }
    struct PullPiece *pieces = arena_array(arena, (size_t)most, sizeof *pieces);
    for (int i = 0; pieces != NULL && i < work->count; i++) {
        const struct Segment *segment = segment_at(run, work->first + i);
        struct PullPiece part = pull_piece(run, trial, work->first + i);
        part.length /= segment->bend_count + 1;
        part.rise /= segment->bend_count + 1;
        part.anywhere = false;
        for (int b = 0; b <= segment->bend_count; b++) {
            part.bend_deg = b < segment->bend_count ? segment->bends[b].angle_deg : 0;
            pieces[count++] = part;
        }
    }
    return pieces != NULL && pull_pit(pieces, count, &work->load, &work->strength, out_at_m, out_tension_n);
}

static const struct Say *say_pit(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                                 const struct PullWork *work)
{
    double at_m = 0;
    double tension_n = 0;
    if (!pull_pit_for(arena, run, trial, work, &at_m, &tension_n)) {
        return say(arena, SAY_PULL_ONE_PIT_NOT_ENOUGH);
    }
    const bool duct = work->count == 1 && survey_duct(segment_at(run, work->first)->way);
    return say(arena, duct ? SAY_PULL_PIT_IN_DUCT : SAY_PULL_PIT, say_fixed(at_m, 0, UNIT_M), say_takes(tension_n));
}

static const struct Say *lubricated(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                                    const struct PullWork *work)
{
    if (work->friction_surveyed || work->lubricated) {
        return NULL;
    }
    const struct Pull wet = pull_lubricated(run, trial, work);
    const bool stands =
        within(pull_strain(&wet, &work->strength), 1) && within(wet.bends_deg, work->strength.bends_deg);
    return say(arena, stands ? SAY_PULL_LUBRICANT_WOULD_DO : SAY_PULL_LUBRICANT_NOT_ENOUGH,
               say_fixed(work->wet.high, 2, UNIT_NONE), say_takes(wet.tension));
}

static const struct Say *with_others(struct Arena *arena, const struct RunDesign *run, const struct PullWork *work)
{
    const struct SayArg last = say_name(segment_at(run, work->first + work->count - 1)->name);
    if (work->other == NULL) {
        return work->count > 1 ? say(arena, SAY_PULL_AS_FAR_AS, last) : NULL;
    }
    const struct SayArg name = say_name(work->other->name);
    const struct SayArg other = work->cables > 2 ? say_part(say(arena, SAY_AND_OTHERS, name)) : name;
    return work->count > 1 ? say(arena, SAY_PULL_AS_FAR_AS_WITH, last, other) : say(arena, SAY_PULL_WITH, other);
}

static const struct Say *say_forces(struct Arena *arena, const struct RunDesign *run, const struct PullWork *work)
{
    const struct Pull *pull = pull_taken(work);
    const struct Say *takes =
        say(arena, work->lubricated ? SAY_PULL_LUBRICATED_TAKES : SAY_PULL_DRY_TAKES,
            say_part(with_others(arena, run, work)), say_fixed(work->load.friction, 2, UNIT_NONE),
            say_term(work->friction_surveyed ? SAY_PULL_FRICTION_AS_SURVEYED : SAY_NOTHING), say_takes(pull->tension),
            say_stands(work->strength.tension), say_part(stocking(arena, &work->limit)));
    return pull->sidewall > 0
               ? say_then(arena, takes,
                          say(arena, SAY_PULL_PRESSED_IN_BENDS, say_up(pull->sidewall, UNIT_N_PER_M, UNIT_KN_PER_M),
                              say_down(work->strength.sidewall, UNIT_N_PER_M, UNIT_KN_PER_M)))
               : takes;
}

const struct Say *word_pull(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                            const struct PullWork *work, enum CheckResult result)
{
    const struct Pull *pull = pull_taken(work);
    if (!within(pull->bends_deg, work->strength.bends_deg)) {
        return say_then(arena,
                        say(arena, SAY_PULL_TURNS_TOO_OFTEN, say_fixed(pull->bends_deg, 0, UNIT_DEG),
                            say_fixed(work->strength.bends_deg, 0, UNIT_DEG)),
                        say_pit(arena, run, trial, work));
    }
    const struct Say *text = say_forces(arena, run, work);
    text = say_then(arena, text, open_bends(arena, run, trial, work));
    text = say_then(arena, text, word_pull_end(arena, run, work));
    if (result == CHECK_FAIL) {
        text = say_then(arena, text, lubricated(arena, run, trial, work));
        text = say_then(arena, text, say_pit(arena, run, trial, work));
    }
    return text;
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
                     piece->pressed > 1 ? say_term(SAY_STEP_PRESSURE_OF_SEVERAL) : say_calculation("T / R"),
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
    const struct SayArg source = steps_source(steps, pull_limits_ref());
    const char *overall = steps_number(steps, work->body.overall_mm);
    steps_figure(steps, say_term(SAY_STEP_LIMIT_OF_COPPER), say_term(SAY_STEP_LIMIT_OF_COPPER_FORMULA),
                 arena_print(arena, "%s x %d x %s", steps_number(steps, rules->copper_n_per_mm2), run->run->cable.cores,
                             steps_number(steps, trial->size_mm2)),
                 work->limit.copper_n, UNIT_N, source);
    steps_figure(steps, say_term(SAY_STEP_LIMIT_OF_STOCKING), say_calculation("N/mm x D"),
                 arena_print(arena, "%s x %s", steps_number(steps, rules->stocking_n_per_mm), overall),
                 work->limit.stocking_n, UNIT_N, source);
    if (work->limit.armour_n > 0) {
        steps_figure(steps, say_term(SAY_STEP_LIMIT_ON_ARMOUR), say_term(SAY_STEP_LIMIT_ON_ARMOUR_FORMULA),
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
                 work->other != NULL ? say_term(SAY_STEP_WEIGHT_OF_HEAVIEST) : say_calculation("kg/m x g"),
                 arena_print(steps->arena, "%s x %s", steps_number(steps, work->heaviest_kg_per_m),
                             steps_number(steps, PULL_GRAVITY)),
                 work->load.weight, UNIT_N_PER_M, steps_source(steps, cable_dimensions_ref()));
    const struct SayArg surveyed = say_term(SAY_STEP_AS_SURVEYED);
    const struct SayArg band = say_term(work->lubricated ? SAY_STEP_LUBRICATED : SAY_STEP_DRY);
    steps_figure(steps, say_term(SAY_STEP_FRICTION), work->friction_surveyed ? surveyed : band, "", work->load.friction,
                 UNIT_NONE,
                 work->friction_surveyed
                     ? surveyed
                     : say_part(table_row_said(steps->arena, pull_friction_ref(), work->friction_trust)));
}

/* Every stretch from the drum on. */
static void step_way(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial,
                     const struct PullWork *work)
{
    struct Pull so_far = pull_begin(&work->load);
    for (int i = 0; i < work->count; i++) {
        const int stretch = work->first + (work->from_far ? work->count - 1 - i : i);
        const char *name = segment_at(run, stretch)->name;
        const struct PullPiece piece = pull_piece(run, trial, stretch);
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
    const struct SayArg source = steps_source(steps, pull_limits_ref());
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

void work_pull(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, const struct PullWork *work,
               struct Check *out)
{
    const struct Pull *pull = pull_taken(work);
    struct Steps steps = steps_begin(arena);
    if (within(pull->bends_deg, work->strength.bends_deg)) { /* beyond that the tension cannot be worked out */
        step_load(&steps, work);
        step_way(&steps, run, trial, work);
        step_limits(&steps, run, trial, work);
    }
    step_bends_limit(&steps, pull, work);
    steps_end(&steps, out);
}
