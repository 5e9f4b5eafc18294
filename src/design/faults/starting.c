/* A motor that starts: whether the device lets it, and what the run drops meanwhile. */
#include "fault_private.h"

#include <math.h>

double starting_power_factor(const struct RunDesign *run, const struct DropFigure *figure)
{
    static const double low = 0.3; /* from memory: cage motors, direct on line */
    static const double high = 0.4;
    const struct Quantity *given = &run->run->start_power_factor;
    if (given->given) {
        return given->value;
    }
    return drop_effective_mv(figure, low) > drop_effective_mv(figure, high) ? low : high;
}

struct Starting starting_of(const struct RunDesign *run, const struct Trial *trial)
{
    const struct Run *surveyed = run->run;
    const struct DropFigure *figure = &trial->drop.figure;
    const bool others_run = surveyed->start_current_a.given && surveyed->load_count > 1;
    struct Starting starting = {
        .power_factor = starting_power_factor(run, figure),
        .motor_a = others_run ? surveyed->start_current_a.value : run->start_a,
        .times = trial->drop.of == DROP_TO_NEUTRAL ? 2 : 1,
        .others_percent = others_run ? trial->drop_percent : 0,
    };
    const double percent_per_mv =
        starting.times * starting.motor_a * run->electrical_length_m / 1000 / trial->drop.voltage_v * 100;
    starting.drop_percent = starting.others_percent + drop_effective_mv(figure, starting.power_factor) * percent_per_mv;
    starting.most_percent = starting.others_percent + figure->z * percent_per_mv;
    return starting;
}

/* "While starting the run drops about 9.1 %, at a power factor of 0.4 ..." */
static const char *drop_words(struct Arena *arena, const struct RunDesign *run, const struct Starting *starting)
{
    const char *drop = number_text(arena, starting->drop_percent, 1);
    const char *factor = number_significant(arena, starting->power_factor, 3);
    return run->run->start_power_factor.given
               ? arena_print(arena, "While starting the run drops about %s %%, at a power factor of %s.", drop, factor)
               : arena_print(arena,
                             "While starting the run drops about %s %% at a power factor of %s, which is assumed, from "
                             "memory (start-power-factor), and at most %s %% at any.",
                             drop, factor, number_text(arena, starting->most_percent, 1));
}

static void start_behind_fuse(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                              struct Check *out)
{
    check_unsettled(out, settles_reading(SAY_SETTLED_BY_FUSE_CURVE),
                    say(arena, SAY_AS_IS,
                        say_name("Not made: whether a fuse stands the starting current is for its maker's curve.")));
    if (arena != NULL) {
        const struct Starting starting = starting_of(run, trial);
        out->text = say_then(arena, out->text, say(arena, SAY_AS_IS, say_name(drop_words(arena, run, &starting))));
        work_starting(arena, run, trial, &starting, 0, out);
    }
}

void check_starting(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    const struct Device *device = &run->run->device;
    const double start_a = run->start_a;
    if (run->run->use != USE_MOTOR) {
        out->result = CHECK_NOT_DUE;
        out->text = say(arena, SAY_AS_IS, say_name("The run feeds no motor."));
        return;
    }
    if (start_a <= 0) {
        check_unsettled(
            out, (struct Settles){.key = "start-current", .or_key = "start-multiple"},
            say(arena, SAY_AS_IS,
                say_name("Not made: the motor's starting current was not given (start-current or start-multiple).")));
        return;
    }
    out->value = start_a;
    if (device->kind != DEVICE_MCB && device->kind != DEVICE_RCBO) {
        start_behind_fuse(arena, run, trial, out);
        return;
    }
    const double multiple = device_least_trip_multiple(device->curve);
    out->limit = multiple * run->rating_a;
    out->result = within(start_a, out->limit) ? CHECK_PASS : CHECK_FAIL;
    if (arena != NULL) {
        const struct Starting starting = starting_of(run, trial);
        out->text =
            say(arena, SAY_AS_IS,
                say_name(arena_print(arena, "Starting draws %s A; a %s %s A device may trip at once from %s A on. %s",
                                     number_text(arena, start_a, 0), survey_word(WORDS_CURVE, (int)device->curve),
                                     number_significant(arena, run->rating_a, 4), number_text(arena, out->limit, 0),
                                     drop_words(arena, run, &starting))));
        work_starting(arena, run, trial, &starting, multiple, out);
    }
}
