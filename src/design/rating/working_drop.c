/* The working of the voltage drop, of the run and of one stretch of it. */
#include "rating_private.h"

#include <math.h>

static const char source_of_method[] = "BS 7671 Appendix 4, 6";

/* mV per ampere and metre: one figure up to 16 mm2, r and x above it, z where the power factor is not known. */
static double add_figure(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial, const char *what)
{
    struct Arena *arena = steps->arena;
    const struct DropFigure *figure = &trial->drop.figure;
    const double cosine = run->loads.loads[0].power_factor;
    const double mv = drop_effective_mv(figure, cosine);
    const char *source = steps_source(steps, drop_ref(run->drop_table));
    const char *cos_text = steps_number(steps, cosine);
    const char *r = steps_number(steps, figure->r);
    const char *size = steps_number(steps, trial->size_mm2);
    if (cosine <= 0) {
        steps_figure(steps, what, arena_print(arena, "z of %s mm2: the power factor is not known", size), "", mv,
                     "mV/A/m", source);
    } else if (figure->x <= 0) {
        steps_figure(steps, what, arena_print(arena, "r cos, with r of %s mm2", size),
                     arena_print(arena, "%s x %s", r, cos_text), mv, "mV/A/m", source);
    } else {
        steps_figure(
            steps, what, arena_print(arena, "r cos + x sin, with r and x of %s mm2", size),
            arena_print(arena, "%s x %s + %s x sqrt(1 - %s^2)", r, cos_text, steps_number(steps, figure->x), cos_text),
            mv, "mV/A/m", source);
    }
    return mv;
}

static const char *drop_of_run(const struct Trial *trial)
{
    return trial->drop.of == DROP_OF_BALANCED ? "drop of the run, line to line" : "drop of the run";
}

static void add_one_load(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial)
{
    const double mv = add_figure(steps, run, trial,
                                 trial->drop.of == DROP_OF_BALANCED ? "drop of a metre and an ampere, three-phase"
                                                                    : "drop of a metre and an ampere");
    steps_figure(steps, drop_of_run(trial), "mV/A/m x Ib x length / 1000",
                 arena_print(steps->arena, "%s x %s x %s / 1000", steps_number(steps, mv),
                             steps_number(steps, run->loads.loads[0].current_a),
                             steps_number(steps, run->electrical_length_m)),
                 trial->drop_v, "V", source_of_method);
}

/* A figure of the table as it stands there. */
static void add_printed(struct Steps *steps, const struct RunDesign *run, double size_mm2, const char *symbol,
                        int phases, double value)
{
    steps_figure(steps, arena_print(steps->arena, "%s, %s", symbol, phases == 1 ? "single-phase" : "three-phase"),
                 arena_print(steps->arena, "as printed for %s mm2", steps_number(steps, size_mm2)), "", value, "mV/A/m",
                 steps_source(steps, drop_ref(run->drop_table)));
}

static void add_several_loads(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial)
{
    const struct DropTerms *terms = &trial->drop;
    const int phases = terms->of == DROP_OF_BALANCED ? 3 : 1;
    steps_load_sums(steps, run, terms, LOADS_OF_ANY_LINE, "");
    add_printed(steps, run, trial->size_mm2, "r", phases, terms->figure.r);
    if (terms->figure.x > 0 && fabs(terms->reactive_a) > 0) {
        add_printed(steps, run, trial->size_mm2, "x", phases, terms->figure.x);
    }
    if (terms->unknown_a > 0) {
        add_printed(steps, run, trial->size_mm2, "z", phases, terms->figure.z);
    }
    steps_drop_of_metre(steps, terms, "drop of a metre", source_of_method);
    steps_drop_of_length(steps, run, terms, drop_of_run(trial), trial->drop_v);
}

static void add_percent(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial, double drop_v,
                        double percent)
{
    const bool between = trial->drop.of == DROP_OF_BALANCED;
    steps_figure(steps, "as a part of the voltage", between ? "100 x drop / (sqrt 3 U0)" : "100 x drop / U0",
                 arena_print(steps->arena, between ? "100 x %s / (sqrt(3) x %s)" : "100 x %s / %s",
                             steps_number(steps, drop_v), steps_number(steps, run->u0_v)),
                 percent, "%", "BS 7671 525");
}

void work_drop(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    if (run->brief) {
        return;
    }
    struct Steps steps = steps_begin(arena);
    if (trial->drop.of == DROP_TO_NEUTRAL) {
        work_drop_of_lines(&steps, run, trial);
    } else if (run->loads.count > 1) {
        add_several_loads(&steps, run, trial);
    } else {
        add_one_load(&steps, run, trial);
    }
    add_percent(&steps, run, trial, trial->drop_v, trial->drop_percent);
    if (run->drop_before_percent > 0) {
        steps_figure(&steps, "with what is dropped before this run", "the two added",
                     arena_print(arena, "%s + %s", steps_number(&steps, trial->drop_percent),
                                 steps_number(&steps, run->drop_before_percent)),
                     trial->drop_percent + run->drop_before_percent, "%", "BS 7671 Appendix 4, 6.4");
    }
    if (trial->rise_v > 0) {
        work_rise(&steps, run, trial);
    }
    steps_end(&steps, out);
}

/* A tail or a loop counts with its own end's stretch, a leg with the stretch in the ground. */
static void add_length(struct Steps *steps, const struct RunDesign *run, int stretch)
{
    const struct Run *surveyed = run->run;
    const bool first = stretch == 0;
    const bool last = stretch == run->count - 1;
    const double legs_m = survey_leg_m(run->survey, surveyed, stretch);
    struct TextBuilder numbers = text_builder(steps->arena);
    text_add(&numbers, steps_number(steps, run->segments[surveyed->along[stretch]].length_m.value));
    if (legs_m > 0) {
        text_print(&numbers, " + %s", steps_number(steps, legs_m));
    }
    if (first) {
        text_print(&numbers, " + %s + %s", steps_number(steps, surveyed->start.tail_m.value),
                   steps_number(steps, surveyed->start.loop_m.value));
    }
    if (last) {
        text_print(&numbers, " + %s + %s", steps_number(steps, surveyed->finish.tail_m.value),
                   steps_number(steps, surveyed->finish.loop_m.value));
    }
    const char *ends = run->count == 1 ? ", tail and loop of both ends" : ", tail and loop of its end";
    const char *formula = arena_print(steps->arena, "stretch%s%s", legs_m > 0 ? ", way into and out of the ground" : "",
                                      first || last ? ends : "");
    const bool sum = first || last || legs_m > 0;
    steps_figure(steps, "electrical length of the stretch", sum ? formula : "no tail or loop in it",
                 sum ? text_done(&numbers) : "", run->electrical_m[stretch], "m", "as surveyed");
}

/* Ct bears on resistance alone: on r, and in z, which where it is printed beside r and x is the root of their squares.
 */
static void add_warm(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial,
                     const struct Rating *rating)
{
    struct Arena *arena = steps->arena;
    const struct DropTerms *terms = &trial->drop;
    const struct DropFigure *figure = &terms->figure;
    const double ratio = resistance_ratio(rating->conductor_degc, drop_degc(run->drop_table));
    const char *inverse = steps_number(steps, COPPER_INVERSE_DEGC);
    const char *ct = steps_number(steps, ratio);
    steps_figure(steps, "resistance with the conductor as warm as Ib makes it there, Ct",
                 "(230 + t) / (230 + temperature of the table)",
                 arena_print(arena, "(%s + %s) / (%s + %s)", inverse, steps_number(steps, rating->conductor_degc),
                             inverse, steps_number(steps, drop_degc(run->drop_table))),
                 ratio, "", "BS 7671 Appendix 4, 6.1");
    struct TextBuilder numbers = text_builder(arena);
    text_print(&numbers, "(%s x %s x %s", terms->active_a > 0 ? ct : "1", steps_number(steps, figure->r),
               steps_number(steps, terms->active_a));
    if (figure->x > 0) {
        text_print(&numbers, " + %s x %s", steps_number(steps, figure->x), steps_number(steps, terms->reactive_a));
    }
    if (terms->unknown_a > 0) {
        const char *r = steps_number(steps, figure->r);
        const char *x = steps_number(steps, figure->x);
        text_print(&numbers, " + %s x sqrt((%s x %s)^2 + %s^2) / sqrt(%s^2 + %s^2) x %s",
                   steps_number(steps, figure->z), ct, r, x, r, x, steps_number(steps, terms->unknown_a));
    }
    text_print(&numbers, ") x %s / 1000", steps_number(steps, rating->electrical_length_m));
    steps_figure(steps, "drop of the stretch then", "Ct on r alone, not on x", text_done(&numbers),
                 rating->drop_expected_v, "V", "BS 7671 Appendix 4, 6.2");
}

void work_drop_part(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int stretch,
                    struct Rating *out)
{
    struct Steps steps = steps_begin(arena);
    add_length(&steps, run, stretch);
    steps_figure(&steps, "drop of the stretch", "drop of the run x its length / length of the run",
                 arena_print(arena, "%s x %s / %s", steps_number(&steps, trial->drop_v),
                             steps_number(&steps, run->electrical_m[stretch]),
                             steps_number(&steps, run->electrical_length_m)),
                 out->drop_v, "V", source_of_method);
    add_percent(&steps, run, trial, out->drop_v, out->drop_percent);
    if (trial->drop_v > 0) {
        steps_figure(
            &steps, "its share of the run's drop", "100 x drop of the stretch / drop of the run",
            arena_print(arena, "100 x %s / %s", steps_number(&steps, out->drop_v), steps_number(&steps, trial->drop_v)),
            100 * out->drop_share, "%", "");
    }
    if (out->drop_expected_v < out->drop_v) {
        add_warm(&steps, run, trial, out);
    }
    out->drop_step_count = steps.count;
    out->drop_steps = steps.list;
}
