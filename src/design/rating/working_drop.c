/* The working of the voltage drop, of the run and of one stretch of it. */
#include "rating_private.h"

#include <math.h>

/* mV per ampere and metre: one figure up to 16 mm2, r and x above it, z where the power factor is not known. */
static double add_figure(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial, enum Saying what)
{
    struct Arena *arena = steps->arena;
    const struct DropFigure *figure = &trial->drop.figure;
    const double cosine = run->loads.loads[0].power_factor;
    const double mv = drop_effective_mv(figure, cosine);
    const struct SayArg source = steps_source(steps, drop_ref(run->edition, run->drop_table));
    const char *cos_text = steps_number(steps, cosine);
    const char *r = steps_number(steps, figure->r);
    const struct SayArg size = steps_value(trial->size_mm2, UNIT_MM2);
    if (cosine <= 0) {
        steps_figure(steps, say_term(what), say_part(say(arena, SAY_STEP_Z_ALONE, size)), "", mv, UNIT_MV_PER_A_M,
                     source);
    } else if (figure->x <= 0) {
        steps_figure(steps, say_term(what), say_part(say(arena, SAY_STEP_R_COS, size)),
                     arena_print(arena, "%s x %s", r, cos_text), mv, UNIT_MV_PER_A_M, source);
    } else {
        steps_figure(
            steps, say_term(what), say_part(say(arena, SAY_STEP_R_COS_X_SIN, size)),
            arena_print(arena, "%s x %s + %s x sqrt(1 - %s^2)", r, cos_text, steps_number(steps, figure->x), cos_text),
            mv, UNIT_MV_PER_A_M, source);
    }
    return mv;
}

static enum Saying drop_of_run(const struct Trial *trial)
{
    return trial->drop.of == DROP_OF_BALANCED ? SAY_STEP_DROP_OF_RUN_BETWEEN : SAY_STEP_DROP_OF_RUN;
}

static void add_one_load(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial)
{
    const double mv = add_figure(steps, run, trial,
                                 trial->drop.of == DROP_OF_BALANCED ? SAY_STEP_DROP_OF_METRE_AND_AMPERE_3
                                                                    : SAY_STEP_DROP_OF_METRE_AND_AMPERE);
    steps_figure(steps, say_term(drop_of_run(trial)), say_term(SAY_STEP_DROP_BY_AMPERE_METRES),
                 arena_print(steps->arena, "%s x %s x %s / 1000", steps_number(steps, mv),
                             steps_number(steps, run->loads.loads[0].current_a),
                             steps_number(steps, run->electrical_length_m)),
                 trial->drop_v, UNIT_V, steps_appendix_4(steps, "6"));
}

/* A figure of the table as it stands there. */
static void add_printed(struct Steps *steps, const struct RunDesign *run, double size_mm2, const char *symbol,
                        int phases, double value)
{
    const enum Saying of = phases == 1 ? SAY_STEP_FIGURE_SINGLE_PHASE : SAY_STEP_FIGURE_THREE_PHASE;
    steps_figure(steps, say_part(say(steps->arena, of, say_name(symbol))),
                 say_part(say(steps->arena, SAY_STEP_AS_PRINTED_FOR, steps_value(size_mm2, UNIT_MM2))), "", value,
                 UNIT_MV_PER_A_M, steps_source(steps, drop_ref(run->edition, run->drop_table)));
}

static void add_several_loads(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial)
{
    const struct DropTerms *terms = &trial->drop;
    const int phases = terms->of == DROP_OF_BALANCED ? 3 : 1;
    steps_load_sums(steps, run, terms, LOADS_OF_ANY_LINE, NULL);
    add_printed(steps, run, trial->size_mm2, "r", phases, terms->figure.r);
    if (terms->figure.x > 0 && fabs(terms->reactive_a) > 0) {
        add_printed(steps, run, trial->size_mm2, "x", phases, terms->figure.x);
    }
    if (terms->unknown_a > 0) {
        add_printed(steps, run, trial->size_mm2, "z", phases, terms->figure.z);
    }
    steps_drop_of_metre(steps, terms, SAY_STEP_DROP_OF_METRE, steps_appendix_4(steps, "6"));
    steps_drop_of_length(steps, run, terms, drop_of_run(trial), trial->drop_v);
}

static void add_percent(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial, double drop_v,
                        double percent)
{
    const bool between = trial->drop.of == DROP_OF_BALANCED;
    steps_figure(steps, say_term(SAY_STEP_PART_OF_VOLTAGE),
                 say_term(between ? SAY_STEP_PART_OF_LINE_VOLTAGE : SAY_STEP_PART_OF_U0),
                 arena_print(steps->arena, between ? "100 x %s / (sqrt(3) x %s)" : "100 x %s / %s",
                             steps_number(steps, drop_v), steps_number(steps, run->u0_v)),
                 percent, UNIT_PERCENT, steps_clause(steps, "525"));
}

void work_drop(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
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
        steps_figure(&steps, say_term(SAY_STEP_WITH_DROP_BEFORE), say_term(SAY_STEP_TWO_ADDED),
                     arena_print(arena, "%s + %s", steps_number(&steps, trial->drop_percent),
                                 steps_number(&steps, run->drop_before_percent)),
                     trial->drop_percent + run->drop_before_percent, UNIT_PERCENT, steps_appendix_4(&steps, "6.4"));
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
    static const enum Saying formulas[2][3] = {
        {SAY_STEP_LENGTH_ALONE, SAY_STEP_LENGTH_END, SAY_STEP_LENGTH_ENDS},
        {SAY_STEP_LENGTH_LEGS, SAY_STEP_LENGTH_LEGS_END, SAY_STEP_LENGTH_LEGS_ENDS},
    };
    const enum Saying formula = formulas[legs_m > 0][first + last];
    steps_figure(steps, say_term(SAY_STEP_ELECTRICAL_LENGTH), say_term(formula),
                 formula == SAY_STEP_LENGTH_ALONE ? "" : text_done(&numbers), run->electrical_m[stretch], UNIT_M,
                 say_term(SAY_STEP_AS_SURVEYED));
}

/* Ct bears on resistance alone: on r, and in z, which where it is printed beside r and x is the root of their squares.
 */
static void add_warm(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial,
                     const struct Rating *rating)
{
    struct Arena *arena = steps->arena;
    const struct DropTerms *terms = &trial->drop;
    const struct DropFigure *figure = &terms->figure;
    const double ratio = resistance_ratio(rating->conductor_degc, drop_degc(run->edition, run->drop_table));
    const char *inverse = steps_number(steps, clause_ratings()->copper_inverse_degc);
    const char *ct = steps_number(steps, ratio);
    steps_figure(steps, say_term(SAY_STEP_WARMTH_RATIO), say_term(SAY_STEP_WARMTH_RATIO_FORMULA),
                 arena_print(arena, "(%s + %s) / (%s + %s)", inverse, steps_number(steps, rating->conductor_degc),
                             inverse, steps_number(steps, drop_degc(run->edition, run->drop_table))),
                 ratio, UNIT_NONE, steps_appendix_4(steps, "6.1"));
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
    steps_figure(steps, say_term(SAY_STEP_DROP_THEN), say_term(SAY_STEP_RATIO_ON_R_ALONE), text_done(&numbers),
                 rating->drop_expected_v, UNIT_V, steps_appendix_4(steps, "6.2"));
}

void work_drop_part(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int stretch,
                    struct Rating *out)
{
    struct Steps steps = steps_begin(arena);
    add_length(&steps, run, stretch);
    steps_figure(&steps, say_term(SAY_STEP_DROP_OF_STRETCH), say_term(SAY_STEP_DROP_BY_LENGTH),
                 arena_print(arena, "%s x %s / %s", steps_number(&steps, trial->drop_v),
                             steps_number(&steps, run->electrical_m[stretch]),
                             steps_number(&steps, run->electrical_length_m)),
                 out->drop_v, UNIT_V, steps_appendix_4(&steps, "6"));
    add_percent(&steps, run, trial, out->drop_v, out->drop_percent);
    if (trial->drop_v > 0) {
        steps_figure(
            &steps, say_term(SAY_STEP_SHARE_OF_DROP), say_term(SAY_STEP_SHARE_FORMULA),
            arena_print(arena, "100 x %s / %s", steps_number(&steps, out->drop_v), steps_number(&steps, trial->drop_v)),
            100 * out->drop_share, UNIT_PERCENT, say_term(SAY_NOTHING));
    }
    if (out->drop_expected_v < out->drop_v) {
        add_warm(&steps, run, trial, out);
    }
    out->drop_step_count = steps.count;
    out->drop_steps = steps.list;
}
