/* The working of what the kind of load asks of its device. */
#include "steps_private.h"

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

void work_starting(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, double multiple,
                   double drop_percent, struct Check *out)
{
    if (run->brief) {
        return;
    }
    struct Steps steps = steps_begin(arena);
    add_start(&steps, run);
    steps_figure(
        &steps, "least current that may trip the device at once",
        arena_print(arena, "least multiple of type %s x In", survey_word(WORDS_CURVE, (int)run->run->device.curve)),
        arena_print(arena, "%s x %s", steps_number(&steps, multiple), steps_number(&steps, run->rating_a)), out->limit,
        "A", "BS EN 60898-1");
    steps_figure(&steps, "drop while starting, at the running power factor", "drop of the run x starting current / Ib",
                 arena_print(arena, "%s x %s / %s", steps_number(&steps, trial->drop_percent),
                             steps_number(&steps, run->start_a), steps_number(&steps, run->demand.design_a)),
                 drop_percent, "%", "BS 7671 Appendix 4, 6");
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
