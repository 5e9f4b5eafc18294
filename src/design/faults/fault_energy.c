/* The energy that a device lets through before it has cut off: the worst of every fault from the far end to the origin.
 *
 * Near end: the most that flows. The maker's figure where it is given; for a circuit-breaker the lesser of class 3 and
 * the first loop of the current. Far end: the least that flows, and with it the longest time. */
#include "fault_private.h"

static bool is_breaker(const struct RunDesign *run)
{
    return run->run->device.kind == DEVICE_MCB || run->run->device.kind == DEVICE_RCBO;
}

/* A wire in the open, or a breaker, does little to the current; a cartridge is full of sand, and the more flows the
 * less it lets through: there the far end decides. */
static bool limits_current(const struct RunDesign *run)
{
    return !is_breaker(run) && run->run->device.kind != DEVICE_BS3036;
}

/* Class 3 at the breaking capacity given; without one at the highest that is held, which lets the most through. */
static bool class_energy(const struct RunDesign *run, struct Energy *out)
{
    const struct Device *device = &run->run->device;
    const bool given = device->breaking_capacity_a.given;
    const double capacity_a = given ? device->breaking_capacity_a.value : LET_THROUGH_HIGHEST_A;
    *out = (struct Energy){.from = given ? SAY_ENERGY_BY_CLASS_3 : SAY_ENERGY_BY_CLASS_3_TO_10_KA,
                           .assumes = given ? SAY_ASSUMES_CLASS_3 : SAY_ASSUMES_CLASS_3_TO_10_KA};
    return is_breaker(run) && let_through_class_3(device->curve, run->rating_a, capacity_a, &out->a2s);
}

static struct Energy first_loop(double current_a)
{
    const double factor = first_loop_factor(current_a);
    return (struct Energy){.a2s = current_a * current_a * design_practice()->half_cycle_s * factor,
                           .from = SAY_ENERGY_OF_FIRST_LOOP,
                           .current_a = current_a,
                           .time_s = design_practice()->half_cycle_s,
                           .factor = factor};
}

static struct Energy near_not_surveyed(const struct RunDesign *run)
{
    struct Energy class_3;
    return class_energy(run, &class_3)
               ? class_3
               : (struct Energy){.lacks = SAY_LACKS_CURRENT_AND_LET_THROUGH,
                                 .settles = {.key = "supply: fault-current", .or_key = "device: let-through"}};
}

/* A class, and an estimate too, hold for what the device breaks and for nothing above. */
static struct Energy near_end(const struct RunDesign *run, double current_a)
{
    const struct Device *device = &run->run->device;
    const struct Quantity *breaks_a = &device->breaking_capacity_a;
    if (device->let_through_a2s.given) {
        return (struct Energy){.a2s = device->let_through_a2s.value, .from = SAY_ENERGY_BY_MAKER};
    }
    if (limits_current(run)) {
        return (struct Energy){0};
    }
    if (current_a <= 0) {
        return near_not_surveyed(run);
    }
    if (breaks_a->given && !within(current_a, breaks_a->value)) {
        return (struct Energy){.lacks = SAY_LACKS_BREAKING_OF_CURRENT};
    }
    struct Energy loop = first_loop(current_a);
    struct Energy class_3;
    loop.capacity_decides = !breaks_a->given && !within(current_a, LET_THROUGH_HIGHEST_A);
    return !loop.capacity_decides && class_energy(run, &class_3) && class_3.a2s < loop.a2s ? class_3 : loop;
}

/* At a current and over, a device has cut off within a time. Its energy is the most at that current: what melts or
 * bends by heat needs the less the shorter it takes. */
enum { PROMISES_MOST = 3 };

static void promise(struct Energy *out, int *count, double current_a, double time_s, enum Saying from)
{
    out[(*count)++] = (struct Energy){.a2s = current_a * current_a * time_s,
                                      .from = from,
                                      .current_a = current_a,
                                      .time_s = time_s,
                                      .acts_in_s = time_s};
}

/* The overload part of a breaker, where a fault is too weak for it to open at once. */
static void overload_promises(const struct RunDesign *run, struct Energy *out, int *count)
{
    const struct Device *device = &run->run->device;
    double current_a;
    double time_s;
    const int first = *count;
    if (device->trip_5_s_a.given) {
        promise(out, count, device->trip_5_s_a.value, clause_figures()->adiabatic_to_s, SAY_ENERGY_BY_MAKERS_CURVE);
    }
    if (device_trip_late(device->curve, run->rating_a, &current_a, &time_s)) {
        promise(out, count, current_a, time_s,
                time_s > clause_figures()->adiabatic_to_s ? SAY_ENERGY_TYPE_D_TO_8_S : SAY_ENERGY_TYPE_D_TO_5_S);
    }
    for (int i = first; i < *count; i++) {
        out[i].late = true;
    }
}

/* An earth fault too weak to open it at once is left to the residual part, where there is one; a short circuit to the
 * overload part, which serves where In is not over Iz (435.1). Type D is different: its overload part counts from
 * 10 In up. */
static int breaker_promises(const struct RunDesign *run, bool short_circuit, struct Energy out[PROMISES_MOST])
{
    const struct Device *device = &run->run->device;
    const bool residual = !short_circuit && device->residual_a.given;
    const bool delayed = residual && device->time_delayed;
    double current_a;
    double acts_s = clause_figures()->adiabatic_from_s;
    int count = 0;
    if (delayed) {
        residual_time_s(true, 5, &acts_s); /* an earth fault is five times its rated current and over */
    }
    if (device_trip_current(run->edition, device->kind, device->curve, run->rating_a,
                            clause_figures()->adiabatic_from_s, &current_a)) {
        promise(out, &count, current_a, acts_s,
                delayed ? SAY_ENERGY_FOR_RESIDUAL_DELAY : SAY_ENERGY_OF_BREAKER_AT_ONCE);
        out[0].acts_in_s = clause_figures()->adiabatic_from_s;
    }
    if (!residual && (!short_circuit || device->curve == CURVE_D)) {
        overload_promises(run, out, &count);
    }
    return count;
}

static int fuse_promises(const struct RunDesign *run, struct Energy out[PROMISES_MOST])
{
    const struct Device *device = &run->run->device;
    double current_a;
    int count = 0;
    if (device_trip_current(run->edition, device->kind, device->curve, run->rating_a, clause_figures()->fuse_short_s,
                            &current_a)) {
        promise(out, &count, current_a, clause_figures()->fuse_short_s, SAY_ENERGY_OF_FUSE_IN_0_4_S);
    }
    if (run_trip_current(run, clause_figures()->adiabatic_to_s, &current_a)) {
        promise(out, &count, current_a, clause_figures()->adiabatic_to_s,
                device->trip_5_s_a.given ? SAY_ENERGY_BY_MAKERS_CURVE : SAY_ENERGY_OF_FUSE_IN_5_S);
    }
    return count;
}

/* The least that is promised at the far end's current; where that is under all of them, or not known, the most. */
static struct Energy far_end(const struct RunDesign *run, double current_a, bool short_circuit)
{
    struct Energy promises[PROMISES_MOST];
    const int count = is_breaker(run) ? breaker_promises(run, short_circuit, promises) : fuse_promises(run, promises);
    struct Energy least = {.lacks = SAY_LACKS_CURRENT_FOR_5_S, .settles = settles_key("device: trip-5-s")};
    struct Energy most = least;
    for (int i = 0; i < count; i++) {
        if (most.lacks != SAY_NOTHING || promises[i].a2s > most.a2s) {
            most = promises[i];
        }
        if (within(promises[i].current_a, current_a) && (least.lacks != SAY_NOTHING || promises[i].a2s < least.a2s)) {
            least = promises[i];
        }
    }
    return least.lacks == SAY_NOTHING ? least : most;
}

bool fault_opens_late(const struct RunDesign *run, const struct FaultRange *fault)
{
    return far_end(run, fault->far_a, fault->short_circuit).late;
}

struct Energy fault_energy(const struct RunDesign *run, const struct FaultRange *fault)
{
    const struct Energy near = near_end(run, fault->near_a);
    const struct Energy far = far_end(run, fault->far_a, fault->short_circuit);
    if (near.lacks != SAY_NOTHING) {
        return near;
    }
    return far.lacks == SAY_NOTHING && near.a2s >= far.a2s ? near : far;
}
