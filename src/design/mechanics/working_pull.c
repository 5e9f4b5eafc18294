/* The working of the check of drawing in, stretch by stretch from the better end. */
#include "mechanics_private.h"

#include <math.h>

static const char statics[] = "statics; friction round a bend";

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
    const char *what = arena_print(arena, "tension after the straight of %s", name);
    if (!(after > 0)) {
        steps_figure(steps, what, "T + w L (c mu cos a + sin a), never below 0: the slope carries it", "", after, "N",
                     statics);
        return;
    }
    if (fabs(piece->rise) > 0) {
        const char *rise = steps_number(steps, fabs(piece->rise));
        numbers = arena_print(arena, "%s x (%s x sqrt(1 - (%s / %s) ^ 2) %s %s / %s)", start, rub, rise, length,
                              piece->rise > 0 ? "+" : "-", rise, length);
    } else {
        numbers = arena_print(arena, "%s x %s", start, rub);
    }
    steps_figure(steps, what, "T + w L (c mu cos a + sin a)", numbers, after, "N", statics);
}

static void step_bend(struct Steps *steps, const struct PullLoad *load, const struct PullPiece *piece, double before,
                      double after, const char *name)
{
    struct Arena *arena = steps->arena;
    if (!(piece->bend_deg > 0)) {
        return;
    }
    steps_figure(steps, arena_print(arena, "tension after the bends of %s", name),
                 "T x e^(c mu theta), theta in radians; e^x as 10^(x / ln 10)",
                 arena_print(arena, "%s x 10 ^ (%s x %s x pi / 180 / ln(10))", steps_number(steps, before),
                             rubs(steps, piece, load->friction), steps_number(steps, piece->bend_deg)),
                 after, "N", statics);
    if (piece->radius > 0) {
        steps_figure(steps, arena_print(arena, "pressure in the tightest bend of %s", name),
                     piece->pressed > 1 ? "p T / R, p for the cables that press each other" : "T / R",
                     piece->pressed > 1 ? arena_print(arena, "%s x %s / %s", steps_number(steps, piece->pressed),
                                                      steps_number(steps, after), steps_number(steps, piece->radius))
                                        : arena_print(arena, "%s / %s", steps_number(steps, after),
                                                      steps_number(steps, piece->radius)),
                     piece->pressed * after / piece->radius, "N/m", "statics");
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
    const char *source = table_source(arena, pull_limits_ref());
    const char *overall = steps_number(steps, work->body.overall_mm);
    steps_figure(steps, "limit of the copper", "N/mm2 x cores x S",
                 arena_print(arena, "%s x %d x %s", steps_number(steps, rules->copper_n_per_mm2), run->run->cable.cores,
                             steps_number(steps, trial->size_mm2)),
                 work->limit.copper_n, "N", source);
    steps_figure(steps, "limit of a stocking", "N/mm x D",
                 arena_print(arena, "%s x %s", steps_number(steps, rules->stocking_n_per_mm), overall),
                 work->limit.stocking_n, "N", source);
    if (work->limit.armour_n > 0) {
        steps_figure(steps, "limit of a stocking on the armour", "N/mm2 x D^2",
                     arena_print(arena, "%s x %s ^ 2", steps_number(steps, rules->stocking_armour_n_per_mm2), overall),
                     work->limit.armour_n, "N", source);
    }
    steps_figure(steps, "least of them", work->limit.part < 1 ? "and 80 % of it, for so many cables together" : "", "",
                 work->limit.least_n, "N", source);
}

static void step_load(struct Steps *steps, const struct PullWork *work)
{
    const char *formula =
        work->other != NULL ? "kg/m x g, of the heaviest cable in the duct whose weight is held" : "kg/m x g";
    steps_figure(steps, "weight of a metre, w", formula,
                 arena_print(steps->arena, "%s x %s", steps_number(steps, work->heaviest_kg_per_m),
                             steps_number(steps, PULL_GRAVITY)),
                 work->load.weight, "N/m", cable_dimensions_ref()->standard);
    const char *band = work->lubricated ? "lubricated, in plastic duct, the top of the band"
                                        : "dry, in plastic duct, the top of the band";
    steps_figure(steps, "friction, mu", work->friction_surveyed ? "as surveyed" : band, "", work->load.friction, "",
                 work->friction_surveyed ? "as surveyed" : table_source(steps->arena, pull_friction_ref()));
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
            steps_figure(steps, arena_print(steps->arena, "weight correction in %s, c", name),
                         "cables side by side wedge in the round of the bore", "", piece.crowd, "", "statics");
        }
        if (piece.pressed > 1 && piece.radius > 0) {
            steps_figure(steps, arena_print(steps->arena, "cables on each other in the bends of %s, p", name),
                         "on the one that is worst off", "", piece.pressed, "", "statics");
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
    const char *source = table_source(steps->arena, pull_limits_ref());
    if (!within(pull->bends_deg, work->strength.bends_deg)) {
        steps_figure(steps, "bends in one pull", "added up", "", pull->bends_deg, "deg", "as surveyed");
        steps_figure(steps, "most in one pull", "rule of thumb", "", work->strength.bends_deg, "deg", source);
    } else if (pull->sidewall > 0) {
        steps_figure(steps, "pressure that the cable stands in a bend", "", "", work->strength.sidewall, "N/m", source);
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
    if (within(pull->bends_deg, work->strength.bends_deg)) { /* beyond that the tension is past all reckoning */
        step_load(&steps, work);
        step_way(&steps, survey, run, trial, work);
        step_limits(&steps, run, trial, work);
    }
    step_bends_limit(&steps, pull, work);
    steps_end(&steps, out);
}
