/* Whether protective and live conductors stand the energy of a fault, and whether the device can break it.
 *
 * S = sqrt(I^2 t) / k, BS 7671 543.1.3 and 434.5.2. The equation holds from 0.1 to 5 s; what is cut off sooner goes by
 * the energy that the device lets through. */
#include "steps_private.h"

#include <math.h>

/* Table 54.7 met by less than this is inside the wires' own tolerance, so the equation decides. */
static const double clear_margin = 1.005;
/* Outside a cable, where nothing protects it from knocks, mm2; BS 7671 543.1.1. */
static const double least_separate_mm2 = 4;

static void add_core(const struct RunDesign *run, double size_mm2, struct Part54 *parts, int *count)
{
    double area_mm2;
    if (protective_core_mm2(run->terms.type, size_mm2, &area_mm2)) {
        parts[(*count)++] = (struct Part54){"core", area_mm2, k_cpc_core_copper(cable_insulation_degc(run->terms.type)),
                                            protective_core_ref(run->terms.type), "Table 54.3"};
    }
}

static void add_armour(const struct RunDesign *run, double size_mm2, struct Part54 *parts, int *count)
{
    struct Armour armour;
    if (armour_figures(run->terms.type, run->terms.cores, size_mm2, &armour)) {
        parts[(*count)++] =
            (struct Part54){"armour", armour.area_mm2, k_armour_steel(cable_insulation_degc(run->terms.type)),
                            armour_ref(), "Table 54.4"};
    }
}

/* With core and armour together each is made to stand the whole current: how they share it is not certain. */
static int protective_parts(const struct RunDesign *run, double size_mm2, struct Part54 parts[2])
{
    int count = 0;
    switch (run->fault_cpc) {
    case CPC_CORE: add_core(run, size_mm2, parts, &count); break;
    case CPC_ARMOUR: add_armour(run, size_mm2, parts, &count); break;
    case CPC_CORE_AND_ARMOUR:
        add_core(run, size_mm2, parts, &count);
        add_armour(run, size_mm2, parts, &count);
        break;
    case CPC_SEPARATE:
        if (run->separate_mm2 > 0) {
            parts[count++] = run->separate_bunched ? (struct Part54){"separate conductor", run->separate_mm2,
                                                                     k_cpc_core_copper(70), NULL, "Table 54.3"}
                                                   : (struct Part54){"separate conductor", run->separate_mm2,
                                                                     k_cpc_separate_copper(70), NULL, "Table 54.2"};
        }
        break;
    case CPC_NONE:
    case CPC_COUNT: break;
    }
    return count;
}

static void fail_for(struct Arena *arena, struct Check *out, const char *lacks)
{
    out->result = CHECK_FAIL;
    out->unit = "";
    out->value = out->limit = 0;
    out->text = arena == NULL ? "" : arena_print(arena, "It cannot be shown that it stands a fault: %s.", lacks);
}

/* No energy to reckon with: not made where a survey could have given it, else not shown. */
static void lacks_energy(struct Arena *arena, const struct Energy *energy, struct Check *out)
{
    if (energy->unsurveyed) {
        check_unsettled(out, "supply: fault-current, or device: let-through",
                      arena == NULL ? "" : arena_print(arena, "Not made: %s.", energy->lacks));
    } else {
        fail_for(arena, out, energy->lacks);
    }
}

/* Where no current was surveyed the ceiling of a class may be far over what flows: standing it is enough, not standing
 * it shows nothing. */
static bool ceiling_missed(struct Arena *arena, const struct RunDesign *run, const struct Energy *energy,
                           struct Check *out)
{
    if (out->result != CHECK_FAIL || !energy->assumes || fault_current_any_a(run) > 0) {
        return false;
    }
    check_unsettled(out, "supply: fault-current",
                  arena == NULL
                           ? ""
                           : arena_print(arena,
                                         "Not made: it does not stand %s A2 s (%s), and the fault current at the "
                                         "origin, which may let less through, was not surveyed (supply: "
                                         "fault-current).",
                                         energy_text(arena, energy->a2s), energy->from));
    return true;
}

static const char class_assumed[] =
    "the device is of energy limiting class 3, a 3 in a square on its front, and breaks what flows at the origin";

static bool by_table(const struct RunDesign *run, double size_mm2, const struct Part54 *part, double *needed_mm2)
{
    const double k_line = k_live_copper(cable_insulation_degc(run->terms.type));
    *needed_mm2 = protective_by_table_mm2(size_mm2, k_line, part->k);
    return within(*needed_mm2 * clear_margin, part->area_mm2) ||
           (part->k >= k_line && within(*needed_mm2, part->area_mm2));
}

static void word_protective(struct Arena *arena, const struct Part54 *part, bool table, double needed_mm2,
                            const struct Energy *energy, struct Check *out)
{
    const char *area = number_significant(arena, part->area_mm2, 4);
    const char *needed = number_text(arena, needed_mm2, 1);
    if (table) {
        out->text = arena_print(arena, "The %s has %s mm2; Table 54.7 asks for %s mm2.", part->name, area, needed);
    } else {
        out->text = arena_print(arena, "The %s has %s mm2; the energy of a fault asks for %s mm2 (%s).", part->name,
                                area, needed, energy->from);
    }
}

/* Whatever a fault asks for, a conductor outside a cable has a least size of its own. */
static void fail_too_thin(struct Arena *arena, const struct Part54 *part, struct Check *out)
{
    out->limit = least_separate_mm2;
    out->source = "BS 7671 543.1.1";
    out->result = CHECK_FAIL;
    out->text = arena == NULL
                    ? ""
                    : arena_print(arena, "The separate conductor has %s mm2; outside a cable %s mm2 is the least.",
                                  number_significant(arena, part->area_mm2, 4),
                                  number_significant(arena, least_separate_mm2, 4));
}

void check_protective_conductor(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                                struct Check *out)
{
    out->at_least = true;
    struct Part54 parts[2];
    const int count = protective_parts(run, trial->size_mm2, parts);
    if (count == 0 || (run->fault_cpc == CPC_CORE_AND_ARMOUR && count < 2)) {
        fail_for(arena, out,
                 run->fault_cpc == CPC_NONE ? "the run has no protective conductor"
                                            : "the area of the protective conductor is not held here");
        return;
    }
    double worst = 1e9;
    for (int i = 0; i < count; i++) {
        double needed_mm2;
        const bool table = by_table(run, trial->size_mm2, &parts[i], &needed_mm2);
        struct Energy energy = {0};
        if (!table) {
            energy = fault_energy(run, fault_current_any_a(run), false);
            if (energy.lacks != NULL) {
                lacks_energy(arena, &energy, out);
                return;
            }
            needed_mm2 = sqrt(energy.a2s) / parts[i].k;
        }
        if (parts[i].area_mm2 / needed_mm2 >= worst) {
            continue;
        }
        worst = parts[i].area_mm2 / needed_mm2;
        const bool too_thin = run->fault_cpc == CPC_SEPARATE && !within(least_separate_mm2, parts[i].area_mm2);
        out->value = parts[i].area_mm2;
        out->limit = needed_mm2;
        if (too_thin) {
            fail_too_thin(arena, &parts[i], out);
            continue;
        }
        out->source = table ? "BS 7671 543.1.4, Table 54.7" : "BS 7671 543.1.3";
        out->assumes = energy.assumes ? class_assumed : NULL;
        out->result = within(needed_mm2, parts[i].area_mm2) ? CHECK_PASS : CHECK_FAIL;
        if (ceiling_missed(arena, run, &energy, out)) {
            continue;
        }
        if (arena != NULL) {
            word_protective(arena, &parts[i], table, needed_mm2, &energy, out);
            if (table) {
                work_protective_by_table(arena, run, trial, &parts[i], needed_mm2, out);
            } else {
                work_protective_by_energy(arena, run, &parts[i], &energy, needed_mm2, out);
            }
        }
    }
}

/* What becomes of a short circuit at the far end that the device does not cut off at once: residual parts do not see
 * it. */
static const char *short_circuit_text(struct Arena *arena, const struct RunDesign *run, double size_mm2)
{
    const struct Device *device = &run->run->device;
    const double far_a = short_circuit_far_a(run, size_mm2);
    double trip_a;
    if (far_a <= 0 ||
        !device_trip_current(device->kind, device->curve, run->rating_a, run_disconnection_s(run), &trip_a) ||
        within(trip_a, far_a)) {
        return "";
    }
    return arena_print(
        arena,
        " A short circuit at the far end draws no more than about %s A, under the %s A that trip at once: "
        "the overload part cuts it off later, which is allowed where In is not over Iz (435.1).",
        number_text(arena, far_a, 0), number_significant(arena, trip_a, 4));
}

void check_live_conductors(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                           struct Check *out)
{
    const struct Energy energy = fault_energy(run, fault_current_any_a(run), true);
    const double k = k_live_copper(cable_insulation_degc(run->terms.type));
    if (energy.lacks != NULL) {
        lacks_energy(arena, &energy, out);
        return;
    }
    out->limit = k * k * trial->size_mm2 * trial->size_mm2;
    out->value = energy.a2s;
    out->result = within(out->value, out->limit) ? CHECK_PASS : CHECK_FAIL;
    if (ceiling_missed(arena, run, &energy, out)) {
        return;
    }
    out->assumes = energy.assumes ? class_assumed : NULL;
    if (arena == NULL) {
        return;
    }
    out->text = arena_print(arena, "The device lets %s A2 s through (%s); %s mm2 stands %s.%s",
                            energy_text(arena, energy.a2s), energy.from, number_significant(arena, trial->size_mm2, 4),
                            energy_text(arena, out->limit), short_circuit_text(arena, run, trial->size_mm2));
    work_live_conductors(arena, run, trial, &energy, k, out);
}

void check_breaking_capacity(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                             struct Check *out)
{
    (void)trial;
    const double current_a = fault_current_any_a(run);
    const struct Quantity *given = &run->run->device.breaking_capacity_a;
    if (!given->given) {
        check_unsettled(out, "device: breaking-capacity",
                      "Not made: the device's breaking capacity was not given (device: breaking-capacity).");
        return;
    }
    if (current_a <= 0) {
        check_unsettled(out, "supply: fault-current",
                      "Not made: the fault current at the origin was not surveyed (supply: fault-current).");
        return;
    }
    out->at_least = true;
    out->value = given->value / 1000;
    out->limit = current_a / 1000;
    out->result = within(out->limit, out->value) ? CHECK_PASS : CHECK_FAIL;
    if (arena != NULL) {
        out->text = arena_print(
            arena, "The device breaks %s kA; a fault at the origin draws up to %s kA%s.",
            number_significant(arena, out->value, 4), number_text(arena, out->limit, 2),
            out->result == CHECK_FAIL ? "; only its maker can say that a fuse before it covers the rest" : "");
        work_breaking_capacity(arena, run, out);
    }
}
