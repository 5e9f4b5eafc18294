/* A motor that starts: whether the device lets it, and what the run drops meanwhile. */
#include "fault_private.h"

double starting_power_factor(const struct RunDesign *run, const struct DropFigure *figure)
{
    const double low = design_practice()->start_low_factor, high = design_practice()->start_high_factor;
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

static const struct Say *word_drop(struct Arena *arena, const struct RunDesign *run, const struct Starting *starting)
{
    const struct SayArg drop = say_fixed(starting->drop_percent, 1, UNIT_PERCENT);
    const struct SayArg factor = say_digits(starting->power_factor, 3, UNIT_NONE);
    return run->run->start_power_factor.given ? say(arena, SAY_STARTING_DROPS, drop, factor)
                                              : say(arena, SAY_STARTING_DROPS_ASSUMED, drop, factor,
                                                    say_fixed(starting->most_percent, 1, UNIT_PERCENT));
}

static void start_behind_fuse(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                              struct Check *out)
{
    const struct Starting starting = starting_of(run, trial);
    check_unsettled(out, settles_reading(SAY_SETTLED_BY_FUSE_CURVE),
                    say_then(arena, say(arena, SAY_STARTING_BEHIND_FUSE), word_drop(arena, run, &starting)));
    work_starting(arena, run, trial, &starting, 0, out);
}

void check_starting(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    const struct Device *device = &run->run->device;
    const double start_a = run->start_a;
    if (run->run->use != USE_MOTOR) {
        out->result = CHECK_NOT_DUE;
        out->text = say(arena, SAY_STARTING_NOT_A_MOTOR);
        return;
    }
    if (start_a <= 0) {
        check_unsettled(out, (struct Settles){.key = "start-current", .or_key = "start-multiple"},
                        say(arena, SAY_STARTING_CURRENT_NOT_GIVEN));
        return;
    }
    out->value = start_a;
    if (device->kind != DEVICE_MCB && device->kind != DEVICE_RCBO) {
        start_behind_fuse(arena, run, trial, out);
        return;
    }
    const double multiple = breaker_holds(device->curve);
    out->limit = multiple * run->rating_a;
    out->result = within(start_a, out->limit) ? CHECK_PASS : CHECK_FAIL;
    const struct Starting starting = starting_of(run, trial);
    out->text = say_then(arena,
                         say(arena, SAY_STARTING_DRAWS, say_fixed(start_a, 0, UNIT_A),
                             say_word(WORDS_CURVE, (int)device->curve), say_digits(run->rating_a, 4, UNIT_A),
                             say_fixed(out->limit, 0, UNIT_A)),
                         word_drop(arena, run, &starting));
    work_starting(arena, run, trial, &starting, multiple, out);
}
