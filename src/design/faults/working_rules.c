/* The working of what the kind of load asks of its device. */
#include "fault_private.h"

static void add_start(struct Steps *steps, const struct RunDesign *run)
{
    const struct Run *surveyed = run->run;
    if (surveyed->start_current_a.given && surveyed->load_count > 1) {
        steps_figure(steps, say_term(SAY_STEP_START_AND_ALL), say_term(SAY_STEP_START_AND_IB),
                     arena_print(steps->arena, "%s + %s", steps_number(steps, surveyed->start_current_a.value),
                                 steps_number(steps, run->demand.design_a)),
                     run->start_a, UNIT_A, say_term(SAY_STEP_AS_SURVEYED));
    } else if (surveyed->start_current_a.given) {
        steps_figure(steps, say_term(SAY_STEP_START), say_term(SAY_STEP_AS_SURVEYED), "", run->start_a, UNIT_A,
                     say_term(SAY_STEP_AS_SURVEYED));
    } else {
        steps_figure(steps, say_term(SAY_STEP_START), say_term(SAY_STEP_MULTIPLE_OF_IB),
                     arena_print(steps->arena, "%s x %s", steps_number(steps, surveyed->start_multiple.value),
                                 steps_number(steps, run->demand.design_a)),
                     run->start_a, UNIT_A, say_term(SAY_STEP_AS_SURVEYED));
    }
}

/* mV of an ampere and a metre, and what that comes to with the run's voltage. */
static void add_start_drop(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial,
                           const struct Starting *starting)
{
    struct Arena *arena = steps->arena;
    const struct DropFigure *figure = &trial->drop.figure;
    const char *cosine = steps_number(steps, starting->power_factor);
    const double mv = drop_effective_mv(figure, starting->power_factor);
    const struct SayArg source =
        say_term(run->run->start_power_factor.given ? SAY_STEP_AS_SURVEYED : SAY_STEP_START_POWER_FACTOR_WORSE);
    steps_figure(steps, say_term(SAY_STEP_START_POWER_FACTOR), source, "", starting->power_factor, UNIT_NONE, source);
    steps_figure(steps, say_term(SAY_STEP_START_METRE), say_term(SAY_STEP_START_METRE_FORMULA),
                 arena_print(arena, "%s x %s + %s x sqrt(1 - %s^2)", steps_number(steps, figure->r), cosine,
                             steps_number(steps, figure->x), cosine),
                 mv, UNIT_MV_PER_A_M, steps_source(steps, drop_ref(run->edition, run->drop_table)));
    steps_figure(steps, say_term(SAY_STEP_START_DROP), say_term(SAY_STEP_START_DROP_FORMULA),
                 arena_print(arena, "%s + 100 x %d x %s x %s x %s / 1000 / %s",
                             steps_number(steps, starting->others_percent), starting->times, steps_number(steps, mv),
                             steps_number(steps, starting->motor_a), steps_number(steps, run->electrical_length_m),
                             run->phases == 3 && trial->drop.of == DROP_OF_BALANCED
                                 ? arena_print(arena, "(sqrt(3) x %s)", steps_number(steps, run->u0_v))
                                 : steps_number(steps, run->u0_v)),
                 starting->drop_percent, UNIT_PERCENT, steps_appendix_4(steps, "6"));
}

void work_starting(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                   const struct Starting *starting, double multiple, struct Check *out)
{
    struct Steps steps = steps_begin(arena);
    add_start(&steps, run);
    if (multiple > 0) {
        steps_figure(&steps, say_term(SAY_STEP_LEAST_TRIP),
                     say_part(say(arena, SAY_STEP_LEAST_MULTIPLE, say_word(WORDS_CURVE, (int)run->run->device.curve))),
                     arena_print(arena, "%s x %s", steps_number(&steps, multiple), steps_number(&steps, run->rating_a)),
                     out->limit, UNIT_A, steps_cite(&steps, (struct Cite){.standard = "BS EN 60898-1"}));
    }
    add_start_drop(&steps, run, trial, starting);
    steps_end(&steps, out);
}

void work_rule(struct Arena *arena, struct SayArg what, struct SayArg found, struct Check *out)
{
    struct Steps steps = steps_begin(arena);
    steps_add(&steps, what, say_term(SAY_STEP_AS_SURVEYED), found, say_part(check_source_said(arena, out)));
    steps_end(&steps, out);
}

/* A rule is met or not; there is nothing to calculate. */
void work_device_for_load(struct Arena *arena, const struct RunDesign *run, struct Check *out)
{
    const struct Device *device = &run->run->device;
    struct Steps steps = steps_begin(arena);
    const struct SayArg surveyed = say_term(SAY_STEP_AS_SURVEYED);
    steps_add(&steps, say_part(say(arena, SAY_RULE_CHARGING_RESIDUAL, steps_value(out->limit, UNIT_MA))), surveyed,
              device->residual_a.given ? steps_value(device->residual_a.value * 1000, UNIT_MA)
                                       : say_term(SAY_FOUND_NONE),
              steps_clause(&steps, "722.531.3"));
    steps_add(&steps, say_term(SAY_RULE_NO_DELAY), surveyed,
              say_term(device->time_delayed ? SAY_FOUND_DELAYED : SAY_FOUND_NOT_DELAYED),
              steps_clause(&steps, "415.1.1"));
    steps_add(&steps, say_term(SAY_RULE_TYPE_A), surveyed,
              say_part(say(arena, SAY_FOUND_TYPE, say_word(WORDS_RESIDUAL_TYPE, (int)device->residual_type))),
              steps_clause(&steps, "722.531.3.101"));
    steps_add(&steps, say_term(SAY_RULE_OWN_CIRCUIT), surveyed,
              say_term(run->charging_shares ? SAY_FOUND_NO : SAY_FOUND_YES), steps_clause(&steps, "722.311"));
    steps_end(&steps, out);
}
