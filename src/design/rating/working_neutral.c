/* The working of what the neutral carries. */
#include "rating_private.h"

#include <math.h>

static struct SayArg source(const struct Steps *steps)
{
    return say_part(say(steps->arena, SAY_STEP_PHASORS, steps_clause(steps, "523.6")));
}

static void add_third(struct Steps *steps, const struct RunDesign *run, const struct Neutral *neutral, double without_a)
{
    struct Arena *arena = steps->arena;
    const double *line_a = run->demand.currents.line_a;
    steps_figure(
        steps, say_term(SAY_STEP_THIRD_HARMONIC), say_term(SAY_STEP_PART_OF_LINES),
        arena_print(arena, "%s / 100 x (%s + %s + %s)", steps_number(steps, run->terms.third_harmonic_percent),
                    steps_number(steps, line_a[0]), steps_number(steps, line_a[1]), steps_number(steps, line_a[2])),
        neutral->third_a, UNIT_A, steps_cite(steps, (struct Cite){.standard = "IEC 60364-5-52", .annex = "E"}));
    steps_figure(
        steps, say_term(SAY_STEP_NEUTRAL_MOST), say_term(SAY_STEP_WITH_THIRD_FORMULA),
        arena_print(arena, "sqrt(%s^2 + %s^2)", steps_number(steps, without_a), steps_number(steps, neutral->third_a)),
        neutral->most_a, UNIT_A, source(steps));
}

static void add_most(struct Steps *steps, const struct RunDesign *run, const struct Neutral *neutral)
{
    struct Arena *arena = steps->arena;
    const struct DropTerms *terms = &neutral->terms;
    const double without_a = hypot(terms->active_a, terms->reactive_a) + terms->unknown_a;
    const bool third = neutral->third_a > 0;
    const char *root = arena_print(arena, "sqrt(%s^2 + %s^2)", steps_number(steps, fabs(terms->active_a)),
                                   steps_number(steps, fabs(terms->reactive_a)));
    steps_figure(steps, say_term(third ? SAY_STEP_NEUTRAL_WITHOUT_THIRD : SAY_STEP_NEUTRAL_MOST),
                 say_term(terms->unknown_a > 0 ? SAY_STEP_ROOT_AND_NOT_KNOWN : SAY_STEP_ROOT_WITHOUT_SIGNS),
                 terms->unknown_a > 0 ? arena_print(arena, "%s + %s", root, steps_number(steps, terms->unknown_a))
                                      : root,
                 without_a, UNIT_A, source(steps));
    if (third) {
        add_third(steps, run, neutral, without_a);
    }
}

static void add_limit(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial, double limit_a)
{
    const bool more = limit_a > trial->capacity_a;
    steps_figure(steps, say_term(SAY_STEP_CONDUCTOR_AT_WORST),
                 say_term(more ? SAY_STEP_CAPACITY_WITHOUT_CH : SAY_STEP_CAPACITY_OF_RUN),
                 more ? arena_print(steps->arena, "%s x 3 x %s / 100", steps_number(steps, trial->capacity_a),
                                    steps_number(steps, run->terms.third_harmonic_percent))
                      : "",
                 limit_a, UNIT_A, steps_clause(steps, "524.2"));
}

void work_neutral(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                  const struct Neutral *neutral, struct Check *out)
{
    struct Steps steps = steps_begin(arena);
    const double *line_a = run->demand.currents.line_a;
    steps_left_off(&steps, run, &neutral->terms);
    steps_phasors(&steps, run, &neutral->terms);
    add_most(&steps, run, neutral);
    if (neutral->third_a <= 0) {
        steps_figure(&steps, say_term(SAY_STEP_AS_WARM_AS_THREE),
                     say_calculation("sqrt((L1^2 + L2^2 + L3^2 + N^2) / 3)"),
                     arena_print(arena, "sqrt((%s^2 + %s^2 + %s^2 + %s^2) / 3)", steps_number(&steps, line_a[0]),
                                 steps_number(&steps, line_a[1]), steps_number(&steps, line_a[2]),
                                 steps_number(&steps, neutral->most_a)),
                     neutral->as_three_a, UNIT_A, say_term(SAY_COMMON_PRACTICE));
    }
    steps_figure(&steps, say_term(SAY_STEP_NEUTRAL_AT_IN), say_term(SAY_STEP_NEUTRAL_AT_IN_FORMULA),
                 arena_print(arena, "%s x %s / %s", steps_number(&steps, neutral->most_a),
                             steps_number(&steps, run->rating_a), steps_number(&steps, run->demand.design_a)),
                 neutral->most_a * run->rating_a / run->demand.design_a, UNIT_A, steps_clause(&steps, "431.2"));
    add_limit(&steps, run, trial, out->limit);
    steps_end(&steps, out);
}
