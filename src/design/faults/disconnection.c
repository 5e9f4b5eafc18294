/* Whether an earth fault at the far end is cut off in time, and by what.
 *
 * TN: the device itself, when the loop is low enough (Zs not over 0.95 U0 / Ia, 411.4.4); else its residual part (50 V
 * over the rated residual current, and its time). TT: the residual part with the electrode (411.5.3). */
#include "fault_private.h"

static bool small_sockets(const struct RunDesign *run)
{
    return run->run->feeds == FEEDS_SOCKETS && within(run->rating_a, clause_figures()->final_sockets_a);
}

static bool small_equipment(const struct RunDesign *run)
{
    return run->run->feeds == FEEDS_EQUIPMENT && within(run->rating_a, clause_figures()->final_equipment_a);
}

bool run_is_final(const struct RunDesign *run)
{
    return run->run->use == USE_CHARGING || small_sockets(run) || small_equipment(run);
}

double run_disconnection_s(const struct RunDesign *run)
{
    return disconnection_time_s(run->edition, run->tt, run_is_final(run), run->u0_v);
}

bool run_trip_current(const struct RunDesign *run, double time_s, double *out_a)
{
    const struct Device *device = &run->run->device;
    if (device->trip_5_s_a.given && within(clause_figures()->fuse_long_s, time_s)) {
        *out_a = device->trip_5_s_a.value;
        return true;
    }
    return device_trip_current(run->edition, device->kind, device->curve, run->rating_a, time_s, out_a);
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
    enum Unit unit;
};

static struct Cut by_overcurrent(const struct RunDesign *run, double zs_ohm, double time_s, double *trip_a)
{
    struct Cut cut = {.value = zs_ohm, .unit = UNIT_OHM};
    if (run_trip_current(run, time_s, trip_a)) {
        cut.limit = voltage_factor_least(run->edition) * run->u0_v / *trip_a;
        cut.works = within(zs_ohm, cut.limit);
    }
    return cut;
}

static struct Cut by_residual(const struct RunDesign *run, double path_ohm, double zs_ohm, double time_s)
{
    struct Cut cut = {.unit = UNIT_V, .limit = touch_limit_v(run->edition)};
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

static const struct Say *word_result(struct Arena *arena, const struct RunDesign *run, const struct Cut *trip,
                                     const struct Cut *residual, double time_s, double zs_ohm)
{
    const struct SayArg time = say_digits(time_s, 3, UNIT_S);
    const struct SayArg zs = say_fixed(zs_ohm, 3, UNIT_OHM);
    const struct SayArg limit = say_fixed(trip->limit, 3, UNIT_OHM);
    const struct SayArg touch = say_fixed(residual->value, 1, UNIT_V);
    const struct SayArg touch_most = say_digits(touch_limit_v(run->edition), 4, UNIT_V);
    if (trip->works) {
        return say(arena, SAY_CUT_OFF_BY_OVERCURRENT, zs, limit, time);
    }
    if (residual->works) {
        return say(arena, SAY_CUT_OFF_BY_RESIDUAL, touch, touch_most, time, zs);
    }
    if (run->run->device.residual_a.given) {
        return say(arena, SAY_CUT_OFF_BY_NEITHER, time, zs, touch, touch_most);
    }
    return trip->limit > 0 ? say(arena, SAY_CUT_OFF_LOOP_TOO_HIGH, zs, limit, time)
                           : say(arena, SAY_CUT_OFF_CURRENT_NOT_HELD, time);
}

/* Where the maker's curve would show what no table does: there is no figure at all, or a type D over 32 A that its
 * overload part has to open. BS 7671 Table 41.3 has 10 In for that, BS EN 60898-1 gives it 8 s. */
static bool curve_decides(struct Arena *arena, const struct RunDesign *run, const struct Cut *trip, double time_s,
                          double zs_ohm, struct Check *out)
{
    const struct Device *device = &run->run->device;
    double late_a;
    double late_s;
    if (device->trip_5_s_a.given || !within(clause_figures()->fuse_long_s, time_s)) {
        return false;
    }
    if (trip->limit <= 0) {
        check_unsettled(out, settles_key("device: trip-5-s"),
                        say(arena, SAY_CUT_OFF_ASKS_MAKERS_CURVE, say_word(WORDS_DEVICE, (int)device->kind),
                            say_digits(run->rating_a, 4, UNIT_A), say_digits(time_s, 3, UNIT_S)));
        return true;
    }
    const bool breaker = device->kind == DEVICE_MCB || device->kind == DEVICE_RCBO;
    if (!breaker || !device_trip_late(device->curve, run->rating_a, &late_a, &late_s) ||
        !within(zs_ohm, voltage_factor_least(run->edition) * run->u0_v / late_a)) {
        return false;
    }
    check_unsettled(out, settles_key("device: trip-5-s"),
                    say(arena, SAY_CUT_OFF_TYPE_D_MAY_BE_LATE, say_fixed(zs_ohm, 3, UNIT_OHM),
                        say_fixed(voltage_factor_least(run->edition) * run->u0_v / late_a, 3, UNIT_OHM),
                        say_digits(clause_figures()->fuse_long_s, 3, UNIT_S), say_digits(late_s, 3, UNIT_S),
                        say_fixed(trip->limit, 3, UNIT_OHM)));
    return true;
}

/* On TT the clause alone decides, on TN the table that has its figures. */
static void by_touch_voltage(const struct RunDesign *run, struct Check *out)
{
    if (run->tt) {
        out->cite.clause = "411.5.3";
        return;
    }
    const struct TableRef *ref = residual_loop_limit_ref(run->edition);
    out->cite.clause = "411.4.204";
    out->cite.table = ref->table;
    out->trust = ref->trust;
}

void check_disconnection(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    const struct Loop loop = loop_of_run(run, trial->size_mm2);
    out->unit = UNIT_OHM;
    if (loop.lacks != SAY_NOTHING || run->before_ohm <= 0) {
        out->result = CHECK_FAIL;
        out->unit = UNIT_NONE;
        out->text = say(arena, SAY_CUT_OFF_NOT_SHOWN,
                        say_term(loop.lacks != SAY_NOTHING ? loop.lacks : SAY_LACKS_ELECTRODE_RESISTANCE));
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
        by_touch_voltage(run, out);
    }
    if (!trip.works && !residual.works && curve_decides(arena, run, &trip, time_s, zs_ohm, out)) {
        return;
    }
    out->text = word_result(arena, run, &trip, &residual, time_s, zs_ohm);
    struct CutOff cut = {
        .time_s = time_s, .zs_ohm = zs_ohm, .trip_a = trip_a, .limit_ohm = trip.limit, .path_ohm = path_ohm};
    if (run->run->device.residual_a.given) {
        cut.multiple = run->u0_v / zs_ohm / run->run->device.residual_a.value;
        cut.acts_s = residual_acts_s(run, run->u0_v / zs_ohm);
    }
    work_disconnection(arena, run, &loop, &cut, out);
}
