/* Whether an earth fault at the far end is cut off in time, and by what.
 *
 * TN: the device itself, when the loop is low enough (Zs not over 0.95 U0 / Ia, 411.4.4); else its residual part (50 V
 * over the rated residual current, and its time). TT: the residual part with the electrode (411.5.3). */
#include "fault_private.h"

/* The time that the maker's curve is asked for. */
static const double maker_s = 5;

static bool small_sockets(const struct RunDesign *run)
{
    return run->run->feeds == FEEDS_SOCKETS && within(run->rating_a, 63);
}

static bool small_equipment(const struct RunDesign *run)
{
    return run->run->feeds == FEEDS_EQUIPMENT && within(run->rating_a, 32);
}

bool run_is_final(const struct RunDesign *run)
{
    return run->run->use == USE_CHARGING || small_sockets(run) || small_equipment(run);
}

double run_disconnection_s(const struct RunDesign *run)
{
    return disconnection_time_s(run->tt, run_is_final(run), run->u0_v);
}

bool run_trip_current(const struct RunDesign *run, double time_s, double *out_a)
{
    const struct Device *device = &run->run->device;
    if (device->trip_5_s_a.given && within(maker_s, time_s)) {
        *out_a = device->trip_5_s_a.value;
        return true;
    }
    return device_trip_current(device->kind, device->curve, run->rating_a, time_s, out_a);
}

/* Time of the residual part at the current that flows: the greatest multiple of its rated current that is reached. */
static double residual_acts_s(const struct RunDesign *run, double fault_current_a)
{
    const struct Device *device = &run->run->device;
    const double multiple = fault_current_a / device->residual_a.value;
    double time_s = 1e9;
    residual_time_s(device->time_delayed, multiple >= 5 ? 5 : multiple >= 2 ? 2 : 1, &time_s);
    return multiple < 1 ? 1e9 : time_s;
}

/* The outcome of one way of cutting off. */
struct Cut {
    bool works;
    double value, limit;
    const char *unit;
};

static struct Cut by_overcurrent(const struct RunDesign *run, double zs_ohm, double time_s, double *trip_a)
{
    struct Cut cut = {.value = zs_ohm, .unit = "ohm"};
    if (run_trip_current(run, time_s, trip_a)) {
        cut.limit = VOLTAGE_FACTOR_LEAST * run->u0_v / *trip_a;
        cut.works = within(zs_ohm, cut.limit);
    }
    return cut;
}

static struct Cut by_residual(const struct RunDesign *run, double path_ohm, double zs_ohm, double time_s)
{
    struct Cut cut = {.unit = "V", .limit = TOUCH_LIMIT_V};
    if (run->run->device.residual_a.given) {
        cut.value = path_ohm * run->run->device.residual_a.value;
        cut.works = within(cut.value, cut.limit) && within(residual_acts_s(run, run->u0_v / zs_ohm), time_s);
    }
    return cut;
}

static void take(struct Check *out, const struct Cut *cut)
{
    out->value = cut->value;
    out->limit = cut->limit;
    out->unit = cut->unit;
    out->result = cut->works ? CHECK_PASS : CHECK_FAIL;
}

static void word_result(struct Arena *arena, const struct RunDesign *run, struct Check *out, const struct Cut *trip,
                        const struct Cut *residual, double time_s, double zs_ohm)
{
    const char *time = number_significant(arena, time_s, 3);
    const char *zs = number_text(arena, zs_ohm, 3);
    if (trip->works) {
        out->text = say(arena, SAY_AS_IS,
                        say_name(arena_print(
                            arena, "The loop at the far end is %s ohm; %s ohm lets the device itself cut off in %s s.",
                            zs, number_text(arena, trip->limit, 3), time)));
    } else if (residual->works) {
        out->text = say(
            arena, SAY_AS_IS,
            say_name(arena_print(
                arena,
                "The residual part of the device does the job: %s V of 50 V, in %s s at most; the loop of %s ohm is "
                "too high for its overcurrent part.",
                number_text(arena, residual->value, 1), time, zs)));
    } else if (run->run->device.residual_a.given) {
        out->text = say(
            arena, SAY_AS_IS,
            say_name(arena_print(
                arena,
                "Neither part of the device cuts off in %s s: the loop is %s ohm, and the residual part leaves %s V "
                "of 50 V or is too slow.",
                time, zs, number_text(arena, residual->value, 1))));
    } else if (trip->limit > 0) {
        out->text = say(
            arena, SAY_AS_IS,
            say_name(arena_print(
                arena,
                "The loop at the far end is %s ohm and must not exceed %s ohm for the device to cut off in %s s; it "
                "has no residual part.",
                zs, number_text(arena, trip->limit, 3), time)));
    } else {
        out->text =
            say(arena, SAY_AS_IS,
                say_name(arena_print(
                    arena, "No tripping current is held for this device at %s s, and it has no residual part.", time)));
    }
}

/* Where the maker's curve would show what no table does: there is no figure at all, or a type D over 32 A that its
 * overload part has to open. BS 7671 Table 41.3 has 10 In for that, BS EN 60898-1 gives it 8 s. */
static bool curve_decides(struct Arena *arena, const struct RunDesign *run, const struct Cut *trip, double time_s,
                          double zs_ohm, struct Check *out)
{
    const struct Device *device = &run->run->device;
    double late_a;
    double late_s;
    if (device->trip_5_s_a.given || !within(maker_s, time_s)) {
        return false;
    }
    if (trip->limit <= 0) {
        check_unsettled(
            out, settles_key("device: trip-5-s"),
            say(arena, SAY_AS_IS,
                say_name(arena == NULL ? ""
                                       : arena_print(arena,
                                                     "Not made: no current is held that makes a %s of %s A cut off in "
                                                     "%s s; its maker's curve has it (device: trip-5-s).",
                                                     survey_word(WORDS_DEVICE, (int)device->kind),
                                                     number_significant(arena, run->rating_a, 4),
                                                     number_significant(arena, time_s, 3)))));
        return true;
    }
    const bool breaker = device->kind == DEVICE_MCB || device->kind == DEVICE_RCBO;
    if (!breaker || !device_trip_late(device->curve, run->rating_a, &late_a, &late_s) ||
        !within(zs_ohm, VOLTAGE_FACTOR_LEAST * run->u0_v / late_a)) {
        return false;
    }
    check_unsettled(
        out, settles_key("device: trip-5-s"),
        say(arena, SAY_AS_IS,
            say_name(
                arena == NULL
                    ? ""
                    : arena_print(arena,
                                  "Not made: the loop at the far end is %s ohm. At 10 In, %s ohm, Table 41.3 lets a "
                                  "type D cut off in 5 s, but over 32 A its own standard gives it %s s: its maker's "
                                  "curve decides (device: trip-5-s). At once it cuts off at %s ohm.",
                                  number_text(arena, zs_ohm, 3),
                                  number_text(arena, VOLTAGE_FACTOR_LEAST * run->u0_v / late_a, 3),
                                  number_significant(arena, late_s, 3), number_text(arena, trip->limit, 3)))));
    return true;
}

void check_disconnection(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    const struct Loop loop = loop_of_run(run, trial->size_mm2);
    out->unit = "ohm";
    if (loop.lacks != NULL || run->before_ohm <= 0) {
        out->result = CHECK_FAIL;
        out->unit = "";
        const char *lacks =
            loop.lacks != NULL ? loop.lacks : "the electrode's resistance is not known (supply: electrode-resistance)";
        out->text =
            say(arena, SAY_AS_IS,
                say_name(arena == NULL ? ""
                                       : arena_print(arena, "It cannot be shown that a fault is cut off: %s.", lacks)));
        return;
    }
    const double time_s = run_disconnection_s(run);
    const double zs_ohm = loop_far_ohm(run->before_ohm, &loop);
    double trip_a = 0;
    const struct Cut trip = by_overcurrent(run, zs_ohm, time_s, &trip_a);
    /* TT: electrode and protective conductor; TN: the whole loop stands for it (411.4.204, Table 41.5) */
    const double path_ohm = run->tt ? run->electrode_here_ohm + loop.protective_hot_ohm : zs_ohm;
    const struct Cut residual = by_residual(run, path_ohm, zs_ohm, time_s);
    const bool residual_decides = !trip.works && run->run->device.residual_a.given;
    take(out, residual_decides ? &residual : &trip);
    if (residual_decides) {
        out->source = run->tt ? "BS 7671 411.5.3" : "BS 7671 411.4.204 and Table 41.5";
    }
    if (!trip.works && !residual.works && curve_decides(arena, run, &trip, time_s, zs_ohm, out)) {
        return;
    }
    if (arena == NULL) {
        return;
    }
    word_result(arena, run, out, &trip, &residual, time_s, zs_ohm);
    struct CutOff cut = {
        .time_s = time_s, .zs_ohm = zs_ohm, .trip_a = trip_a, .limit_ohm = trip.limit, .path_ohm = path_ohm};
    if (run->run->device.residual_a.given) {
        cut.multiple = run->u0_v / zs_ohm / run->run->device.residual_a.value;
        cut.acts_s = residual_acts_s(run, run->u0_v / zs_ohm);
    }
    work_disconnection(arena, run, &loop, &cut, out);
}
