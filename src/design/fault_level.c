/* Fault currents, and the energy that the device lets through before it has cut off. */
#include "fault_private.h"

#include <math.h>

/* A half cycle of 50 Hz: what flows before a device without a published class has cut off. An estimate, and said so. */
static const double half_cycle_s = 0.01;
/* Where the adiabatic equation begins to hold; a circuit-breaker that trips at once has cut off by then. */
static const double adiabatic_from_s = 0.1;

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

/* Near end: the largest current, for as long as the device needs to cut that off. */
static struct Energy near_end(const struct RunDesign *run, double current_a)
{
    struct Energy energy = {.a2s = current_a * current_a * half_cycle_s,
                            .from = "half a cycle of the largest fault current, an estimate",
                            .current_a = current_a,
                            .time_s = half_cycle_s};
    const struct Device *device = &run->run->device;
    double class_a2s;
    if (is_breaker(run) && device->breaking_capacity_a.given && within(current_a, device->breaking_capacity_a.value) &&
        let_through_class_3(device->curve, run->rating_a, device->breaking_capacity_a.value, &class_a2s) &&
        class_a2s < energy.a2s) {
        energy.a2s = class_a2s;
        energy.from = "let-through of energy limiting class 3";
        energy.current_a = energy.time_s = 0;
    }
    return energy;
}

/* Far end: the least current that still makes the device cut off in its time, for that time. */
static struct Energy far_end(const struct RunDesign *run)
{
    double current_a;
    double time_s = run_disconnection_s(run);
    const struct Device *device = &run->run->device;
    if (!device_trip_current(device->kind, device->curve, run->rating_a, time_s, &current_a)) {
        return (struct Energy){.lacks = "no tripping current is held for this device"};
    }
    if (is_breaker(run)) {
        time_s = adiabatic_from_s;
    }
    return (struct Energy){.a2s = current_a * current_a * time_s,
                           .from = is_breaker(run) ? "the least tripping current for 0.1 s"
                                                   : "the least current that the fuse clears in its time",
                           .current_a = current_a,
                           .time_s = time_s};
}

struct Energy fault_energy(const struct RunDesign *run, double near_a)
{
    const struct Energy near = near_end(run, near_a);
    const struct Energy far = far_end(run);
    return far.lacks == NULL && near.a2s >= far.a2s ? near : far;
}
