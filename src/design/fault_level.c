/* Fault currents, and the energy that the device lets through before it has cut off. */
#include "fault_private.h"

#include <math.h>

/* A half cycle of 50 Hz: what flows before a device without a published class has cut off. An estimate, and said so. */
static const double half_cycle_s = 0.01;
/* Where the adiabatic equation begins and ends to hold; a circuit-breaker that trips at once has cut off by then. */
static const double adiabatic_from_s = 0.1;
static const double adiabatic_to_s = 5;
/* A time-delayed residual device at five times its rated current and over, BS EN 61008-1. */
static const double delayed_acts_s = 0.15;

double fault_current_earth_a(const struct RunDesign *run)
{
    /* Ze is the greatest loop of the supply, so what it lets flow is no upper bound; but less than that cannot be. */
    const double by_loop_a = run->before_ohm > 0 ? VOLTAGE_FACTOR_GREATEST * run->u0_v / run->before_ohm : 0;
    return fmax(run->fault_current_a, by_loop_a);
}

double fault_current_any_a(const struct RunDesign *run)
{
    return run->fault_current_a > 0 ? fault_current_earth_a(run) : 0;
}

/* number_text() ends at a thousand million. */
const char *energy_text(struct Arena *arena, double a2s)
{
    return a2s < 1e9 ? number_text(arena, a2s, 0) : arena_print(arena, "%s million", number_text(arena, a2s / 1e6, 0));
}

void check_unsettled(struct Check *out, const char *settles, const char *text)
{
    check_unknown(out, text);
    out->settles = settles;
}

void check_unknown(struct Check *out, const char *text)
{
    out->result = CHECK_NOT_DUE;
    out->unknown = true;
    out->text = text;
}

static bool is_breaker(const struct RunDesign *run)
{
    return run->run->device.kind == DEVICE_MCB || run->run->device.kind == DEVICE_RCBO;
}

/* Class 3 at the breaking capacity given; without one at the highest that is held, which lets the most through. */
static bool class_energy(const struct RunDesign *run, struct Energy *out)
{
    const struct Device *device = &run->run->device;
    const bool given = device->breaking_capacity_a.given;
    const double capacity_a = given ? device->breaking_capacity_a.value : LET_THROUGH_HIGHEST_A;
    *out = (struct Energy){.from = given ? "let-through of energy limiting class 3"
                                         : "let-through of energy limiting class 3 at a breaking capacity of 10 kA",
                           .assumes = true};
    return is_breaker(run) && let_through_class_3(device->curve, run->rating_a, capacity_a, &out->a2s);
}

/* Near end: what the device lets through of the largest current. A fuse lets the less through the more flows, so its
 * far end decides. */
static struct Energy near_end(const struct RunDesign *run, double current_a)
{
    const struct Device *device = &run->run->device;
    struct Energy class_3;
    const bool has_class = class_energy(run, &class_3);
    if (device->let_through_a2s.given) {
        return (struct Energy){.a2s = device->let_through_a2s.value,
                               .from = "let-through as the device's maker gives it"};
    }
    if (!is_breaker(run)) {
        return (struct Energy){0};
    }
    if (current_a <= 0) {
        return has_class ? class_3
                         : (struct Energy){.lacks = "neither the fault current at the origin was surveyed (supply: "
                                                    "fault-current) nor what the device lets through (device: "
                                                    "let-through)",
                                           .unsurveyed = true};
    }
    const struct Energy estimate = {
        .a2s = current_a * current_a * half_cycle_s,
        .from = "half a cycle of the largest fault current, an estimate: hold it against the maker's figure (device: "
                "let-through)",
        .current_a = current_a,
        .time_s = half_cycle_s};
    const bool breaks = !device->breaking_capacity_a.given || within(current_a, device->breaking_capacity_a.value);
    return has_class && breaks && class_3.a2s < estimate.a2s ? class_3 : estimate;
}

/* The least current that still makes the device cut off in `time_s`, for that time. */
static struct Energy least_current(const struct RunDesign *run, double time_s)
{
    const struct Device *device = &run->run->device;
    double current_a;
    if (!device_trip_current(device->kind, device->curve, run->rating_a, time_s, &current_a)) {
        return (struct Energy){.lacks = "no tripping current is held for this device"};
    }
    if (!is_breaker(run)) {
        return (struct Energy){.a2s = current_a * current_a * time_s,
                               .from = "the least current that the fuse clears in its time",
                               .current_a = current_a,
                               .time_s = time_s,
                               .acts_in_s = time_s};
    }
    /* Below that current the residual part cuts an earth fault off; a delayed one takes longer than the breaker. */
    const double acts_s = device->residual_a.given && device->time_delayed ? delayed_acts_s : adiabatic_from_s;
    return (struct Energy){.a2s = current_a * current_a * acts_s,
                           .from = device->time_delayed
                                       ? "the least tripping current for the delay of the residual part"
                                       : "the least tripping current for 0.1 s",
                           .current_a = current_a,
                           .time_s = acts_s,
                           .acts_in_s = time_s};
}

struct Energy fault_energy(const struct RunDesign *run, double near_a, bool short_circuit)
{
    const struct Energy near = near_end(run, near_a);
    struct Energy far = least_current(run, run_disconnection_s(run));
    /* A short circuit may last as long as the equation holds, whatever time an earth fault is given (434.5.2). */
    const struct Energy longest = least_current(run, adiabatic_to_s);
    if (short_circuit && !is_breaker(run) && longest.lacks == NULL && longest.a2s > far.a2s) {
        far = longest;
    }
    if (near.lacks != NULL) {
        return near;
    }
    return near.a2s > 0 && (far.lacks != NULL || near.a2s >= far.a2s) ? near : far;
}

double short_circuit_far_a(const struct RunDesign *run, double size_mm2)
{
    double line_ohm_per_m;
    const double source_ohm = !run->tt                   ? run->before_ohm
                              : run->fault_current_a > 0 ? run->u0_v / run->fault_current_a
                                                         : 0;
    if (source_ohm <= 0 || !conductor_resistance(size_mm2, &line_ohm_per_m)) {
        return 0;
    }
    const double both_ohm = 2 * copper_at(line_ohm_per_m, run->terms.conductor_degc) * run->electrical_length_m;
    return VOLTAGE_FACTOR_LEAST * run->u0_v / (source_ohm + both_ohm);
}
