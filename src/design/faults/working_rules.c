/* The working of what the kind of load asks of its device. */
#include "fault_private.h"

static void add_start(struct Steps *steps, const struct RunDesign *run)
{
    const struct Run *surveyed = run->run;
    if (surveyed->start_current_a.given && surveyed->load_count > 1) {
        steps_figure(steps, "current while the motor starts and all else runs", "starting current + Ib",
                     arena_print(steps->arena, "%s + %s", steps_number(steps, surveyed->start_current_a.value),
                                 steps_number(steps, run->demand.design_a)),
                     run->start_a, "A", "as surveyed");
    } else if (surveyed->start_current_a.given) {
        steps_figure(steps, "starting current", "as surveyed", "", run->start_a, "A", "as surveyed");
    } else {
        steps_figure(steps, "starting current", "multiple x Ib",
                     arena_print(steps->arena, "%s x %s", steps_number(steps, surveyed->start_multiple.value),
                                 steps_number(steps, run->demand.design_a)),
                     run->start_a, "A", "as surveyed");
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
    const char *source = run->run->start_power_factor.given ? "as surveyed" : "from memory: 0.3 to 0.4, the worse";
    steps_add(steps, "power factor while starting", source, "", cosine, source);
    steps_figure(steps, "drop of a metre and an ampere then", "r cos + x sin",
                 arena_print(arena, "%s x %s + %s x sqrt(1 - %s^2)", steps_number(steps, figure->r), cosine,
                             steps_number(steps, figure->x), cosine),
                 mv, "mV/A/m", steps_source(steps, drop_ref(run->drop_table)));
    steps_figure(steps, "drop while starting",
                 "100 x mV/A/m x starting current x length / 1000 / voltage, and what else runs",
                 arena_print(arena, "%s + 100 x %d x %s x %s x %s / 1000 / %s",
                             steps_number(steps, starting->others_percent), starting->times, steps_number(steps, mv),
                             steps_number(steps, starting->motor_a), steps_number(steps, run->electrical_length_m),
                             run->phases == 3 && trial->drop.of == DROP_OF_BALANCED
                                 ? arena_print(arena, "(sqrt(3) x %s)", steps_number(steps, run->u0_v))
                                 : steps_number(steps, run->u0_v)),
                 starting->drop_percent, "%", "BS 7671 Appendix 4, 6");
}

void work_starting(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                   const struct Starting *starting, double multiple, struct Check *out)
{
    if (run->brief) {
        return;
    }
    struct Steps steps = steps_begin(arena);
    add_start(&steps, run);
    if (multiple > 0) {
        steps_figure(
            &steps, "least current that may trip the device at once",
            arena_print(arena, "least multiple of type %s x In", survey_word(WORDS_CURVE, (int)run->run->device.curve)),
            arena_print(arena, "%s x %s", steps_number(&steps, multiple), steps_number(&steps, run->rating_a)),
            out->limit, "A", "BS EN 60898-1");
    }
    add_start_drop(&steps, run, trial, starting);
    steps_end(&steps, out);
}

void work_rule(struct Arena *arena, const struct RunDesign *run, const char *what, const char *found, struct Check *out)
{
    if (arena == NULL || run->brief) {
        return;
    }
    struct Steps steps = steps_begin(arena);
    steps_add(&steps, what, "as surveyed", "", found, out->source);
    steps_end(&steps, out);
}

/* A rule is met or not; there is nothing to calculate. */
void work_device_for_load(struct Arena *arena, const struct RunDesign *run, struct Check *out)
{
    const struct Device *device = &run->run->device;
    if (arena == NULL || run->brief) {
        return;
    }
    struct Steps steps = steps_begin(arena);
    steps_add(&steps, "residual device of 30 mA or less", "as surveyed", "",
              device->residual_a.given
                  ? arena_print(arena, "%s mA", steps_number(&steps, device->residual_a.value * 1000))
                  : "none",
              "BS 7671 722.531.3");
    steps_add(&steps, "without time delay", "as surveyed", "", device->time_delayed ? "delayed" : "not delayed",
              "BS 7671 415.1.1");
    steps_add(&steps, "of type A at least, with protection against smooth direct current, or type B", "as surveyed", "",
              arena_print(arena, "type %s", survey_word(WORDS_RESIDUAL_TYPE, (int)device->residual_type)),
              "BS 7671 722.531.3.101");
    steps_add(&steps, "a circuit of its own, without diversity", "as surveyed", "", run->charging_shares ? "no" : "yes",
              "BS 7671 722.311");
    steps_end(&steps, out);
}
