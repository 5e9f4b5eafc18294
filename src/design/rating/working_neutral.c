/* The working of what the neutral carries. */
#include "rating_private.h"

#include <math.h>

static const char source[] = "BS 7671 523.6; currents added as phasors";

static void add_third(struct Steps *steps, const struct RunDesign *run, const struct Neutral *neutral, double without_a)
{
    struct Arena *arena = steps->arena;
    const double *line_a = run->demand.currents.line_a;
    steps_figure(steps, "third harmonic of all lines, which adds up in the neutral", "its part of L1 + L2 + L3",
                 arena_print(arena, "%s / 100 x (%s + %s + %s)", steps_number(steps, run->terms.third_harmonic_percent),
                             steps_number(steps, line_a[0]), steps_number(steps, line_a[1]),
                             steps_number(steps, line_a[2])),
                 neutral->third_a, "A", "IEC 60364-5-52 Annex E");
    steps_figure(
        steps, "the most that the neutral carries", "sqrt(without it^2 + third harmonic^2)",
        arena_print(arena, "sqrt(%s^2 + %s^2)", steps_number(steps, without_a), steps_number(steps, neutral->third_a)),
        neutral->most_a, "A", source);
}

static void add_most(struct Steps *steps, const struct RunDesign *run, const struct Neutral *neutral)
{
    struct Arena *arena = steps->arena;
    const struct DropTerms *terms = &neutral->terms;
    const double without_a = hypot(terms->active_a, terms->reactive_a) + terms->unknown_a;
    const bool third = neutral->third_a > 0;
    const char *root = arena_print(arena, "sqrt(%s^2 + %s^2)", steps_number(steps, fabs(terms->active_a)),
                                   steps_number(steps, fabs(terms->reactive_a)));
    steps_figure(steps, third ? "the neutral without the third harmonic" : "the most that the neutral carries",
                 terms->unknown_a > 0 ? "sqrt(in step^2 + behind^2) + what is not known"
                                      : "sqrt(in step^2 + behind^2), signs left out",
                 terms->unknown_a > 0 ? arena_print(arena, "%s + %s", root, steps_number(steps, terms->unknown_a))
                                      : root,
                 without_a, "A", source);
    if (third) {
        add_third(steps, run, neutral, without_a);
    }
}

static void add_limit(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial, double limit_a)
{
    const bool more = limit_a > trial->capacity_a;
    steps_figure(steps, "what a conductor carries at the worst place",
                 more ? "capacity of the lines x 3 x third harmonic: Ch took it off for the neutral"
                      : "the capacity of the run, as under capacity",
                 more ? arena_print(steps->arena, "%s x 3 x %s / 100", steps_number(steps, trial->capacity_a),
                                    steps_number(steps, run->terms.third_harmonic_percent))
                      : "",
                 limit_a, "A", "BS 7671 524.2");
}

void work_neutral(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                  const struct Neutral *neutral, struct Check *out)
{
    if (arena == NULL || run->brief) {
        return;
    }
    struct Steps steps = steps_begin(arena);
    const double *line_a = run->demand.currents.line_a;
    steps_left_off(&steps, run, &neutral->terms);
    steps_phasors(&steps, run, &neutral->terms);
    add_most(&steps, run, neutral);
    if (neutral->third_a <= 0) {
        steps_figure(&steps, "the same warmth in three conductors alike", "sqrt((L1^2 + L2^2 + L3^2 + N^2) / 3)",
                     arena_print(arena, "sqrt((%s^2 + %s^2 + %s^2 + %s^2) / 3)", steps_number(&steps, line_a[0]),
                                 steps_number(&steps, line_a[1]), steps_number(&steps, line_a[2]),
                                 steps_number(&steps, neutral->most_a)),
                     neutral->as_three_a, "A", "common practice, no source");
    }
    steps_figure(&steps, "the neutral with the lines at the device's In", "the most that the neutral carries x In / Ib",
                 arena_print(arena, "%s x %s / %s", steps_number(&steps, neutral->most_a),
                             steps_number(&steps, run->rating_a), steps_number(&steps, run->demand.design_a)),
                 neutral->most_a * run->rating_a / run->demand.design_a, "A", "BS 7671 431.2");
    add_limit(&steps, run, trial, out->limit);
    steps_end(&steps, out);
}
