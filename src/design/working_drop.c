/* The working of the voltage drop, of the run and of one stretch of it. */
#include "steps_private.h"

static const char source_of_method[] = "BS 7671 Appendix 4, 6";

/* mV per ampere and metre: one figure up to 16 mm2, r and x above it, z where the power factor is not known. */
static double add_figure(struct Steps *steps, const struct RunDesign *run, double size_mm2, int phases,
                         const char *what)
{
    struct DropFigure figure;
    if (!drop_figure(run->drop_table, size_mm2, phases, &figure)) {
        return 0;
    }
    struct Arena *arena = steps->arena;
    const double cosine = run->demand.power_factor;
    const double mv = drop_effective_mv(&figure, cosine);
    const char *source = steps_source(steps, drop_ref(run->drop_table));
    const char *cos_text = steps_number(steps, cosine);
    const char *r = steps_number(steps, figure.r);
    const char *size = steps_number(steps, size_mm2);
    if (cosine <= 0) {
        steps_figure(steps, what, arena_print(arena, "z of %s mm2: the power factor is not known", size), "", mv,
                     "mV/A/m", source);
    } else if (figure.x <= 0) {
        steps_figure(steps, what, arena_print(arena, "r cos, with r of %s mm2", size),
                     arena_print(arena, "%s x %s", r, cos_text), mv, "mV/A/m", source);
    } else {
        steps_figure(
            steps, what, arena_print(arena, "r cos + x sin, with r and x of %s mm2", size),
            arena_print(arena, "%s x %s + %s x sqrt(1 - %s^2)", r, cos_text, steps_number(steps, figure.x), cos_text),
            mv, "mV/A/m", source);
    }
    return mv;
}

static void add_single_phase(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial)
{
    const double mv = add_figure(steps, run, trial->size_mm2, 1, "drop of a metre and an ampere");
    steps_figure(steps, "drop of the run", "mV/A/m x Ib x length / 1000",
                 arena_print(steps->arena, "%s x %s x %s / 1000", steps_number(steps, mv),
                             steps_number(steps, run->demand.design_a), steps_number(steps, run->electrical_length_m)),
                 trial->drop_v, "V", source_of_method);
}

/* What the other two lines balance drops by the three-phase figure; the rest returns through the neutral. */
static void add_three_phase(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial)
{
    struct Arena *arena = steps->arena;
    const struct Demand *demand = &run->demand;
    const double rest_a = demand->design_a - demand->balanced_a;
    const char *length = steps_number(steps, run->electrical_length_m);
    const char *balanced = steps_number(steps, demand->balanced_a);
    const double *line_a = demand->currents.line_a;
    steps_figure(steps, "part of Ib that the other two lines balance", "(L1 + L2 + L3 - Ib) / 2",
                 arena_print(arena, "(%s + %s + %s - %s) / 2", steps_number(steps, line_a[0]),
                             steps_number(steps, line_a[1]), steps_number(steps, line_a[2]),
                             steps_number(steps, demand->design_a)),
                 demand->balanced_a, "A", source_of_method);
    const double three_mv = add_figure(steps, run, trial->size_mm2, 3, "drop of a metre and an ampere, three-phase");
    if (within(rest_a, 0)) {
        steps_figure(steps, "drop of the run, line to line", "mV/A/m x Ib x length / 1000",
                     arena_print(arena, "%s x %s x %s / 1000", steps_number(steps, three_mv), balanced, length),
                     trial->drop_v, "V", source_of_method);
        return;
    }
    const double single_mv = add_figure(steps, run, trial->size_mm2, 1, "the same, single-phase");
    steps_figure(steps, "drop of the run, line to line",
                 "(three-phase mV x balanced + sqrt 3 x single-phase mV x the rest of Ib) x length / 1000",
                 arena_print(arena, "(%s x %s + sqrt(3) x %s x (%s - %s)) x %s / 1000", steps_number(steps, three_mv),
                             balanced, steps_number(steps, single_mv), steps_number(steps, demand->design_a), balanced,
                             length),
                 trial->drop_v, "V", source_of_method);
}

static const char *voltage(const struct Steps *steps, const struct RunDesign *run)
{
    const char *u0 = steps_number(steps, run->u0_v);
    return run->phases == 3 ? arena_print(steps->arena, "(sqrt(3) x %s)", u0) : u0;
}

void work_drop(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    if (run->brief) {
        return;
    }
    struct Steps steps = steps_begin(arena);
    work_power_factor(&steps, run);
    if (run->phases == 3) {
        add_three_phase(&steps, run, trial);
    } else {
        add_single_phase(&steps, run, trial);
    }
    steps_figure(&steps, "as a part of the voltage", run->phases == 3 ? "100 x drop / (sqrt 3 U0)" : "100 x drop / U0",
                 arena_print(arena, "100 x %s / %s", steps_number(&steps, trial->drop_v), voltage(&steps, run)),
                 trial->drop_percent, "%", "BS 7671 525");
    if (run->drop_before_percent > 0) {
        steps_figure(&steps, "with what is dropped before this run", "the two added",
                     arena_print(arena, "%s + %s", steps_number(&steps, trial->drop_percent),
                                 steps_number(&steps, run->drop_before_percent)),
                     trial->drop_percent + run->drop_before_percent, "%", "BS 7671 Appendix 4, 6.4");
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
    steps_figure(&steps, "as a part of the voltage", run->phases == 3 ? "100 x drop / (sqrt 3 U0)" : "100 x drop / U0",
                 arena_print(arena, "100 x %s / %s", steps_number(&steps, out->drop_v), voltage(&steps, run)),
                 out->drop_percent, "%", "BS 7671 525");
    if (trial->drop_v > 0) {
        steps_figure(
            &steps, "its share of the run's drop", "100 x drop of the stretch / drop of the run",
            arena_print(arena, "100 x %s / %s", steps_number(&steps, out->drop_v), steps_number(&steps, trial->drop_v)),
            100 * out->drop_share, "%", "");
    }
    if (out->drop_expected_v < out->drop_v) {
        const char *inverse = steps_number(&steps, COPPER_INVERSE_DEGC);
        steps_figure(&steps, "with the conductor as warm as Ib makes it there",
                     "drop x (230 + t) / (230 + temperature of the table)",
                     arena_print(arena, "%s x (%s + %s) / (%s + %s)", steps_number(&steps, out->drop_v), inverse,
                                 steps_number(&steps, out->conductor_degc), inverse,
                                 steps_number(&steps, drop_degc(run->drop_table))),
                     out->drop_expected_v, "V", "BS 7671 Appendix 4, 6.1");
    }
    out->drop_step_count = steps.count;
    out->drop_steps = steps.list;
}
