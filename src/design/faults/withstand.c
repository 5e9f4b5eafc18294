/* Whether protective and live conductors stand the energy of a fault, and whether the device can break it.
 *
 * S = sqrt(I^2 t) / k, BS 7671 543.1.3 and 434.5.2. The equation holds from 0.1 to 5 s; what is cut off sooner goes by
 * the energy that the device lets through. */
#include "fault_private.h"

#include <math.h>

static void add_core(const struct RunDesign *run, double size_mm2, struct Part54 *parts, int *count)
{
    double area_mm2;
    if (protective_core_mm2(run->terms.type, size_mm2, &area_mm2)) {
        parts[(*count)++] = (struct Part54){SAY_PART_CORE, area_mm2,
                                            k_value(run->edition, K_CORE, cable_kind(run->terms.type)->insulation_degc),
                                            protective_core_ref(run->terms.type), k_value_ref(run->edition, K_CORE)};
    }
}

static void add_armour(const struct RunDesign *run, double size_mm2, struct Part54 *parts, int *count)
{
    struct Armour armour;
    if (armour_figures(run->terms.type, run->terms.cores, size_mm2, &armour)) {
        parts[(*count)++] =
            (struct Part54){SAY_PART_ARMOUR, armour.area_mm2,
                            k_value(run->edition, K_ARMOUR, cable_kind(run->terms.type)->insulation_degc), armour_ref(),
                            k_value_ref(run->edition, K_ARMOUR)};
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
            parts[count++] =
                run->separate_bunched
                    ? (struct Part54){SAY_PART_SEPARATE, run->separate_mm2, k_value(run->edition, K_CORE, 70), NULL,
                                      k_value_ref(run->edition, K_CORE)}
                    : (struct Part54){SAY_PART_SEPARATE, run->separate_mm2, k_value(run->edition, K_SEPARATE, 70), NULL,
                                      k_value_ref(run->edition, K_SEPARATE)};
        }
        break;
    case CPC_NONE:
    case CPC_COUNT: break;
    }
    return count;
}

static void fail_for(struct Arena *arena, struct Check *out, enum Saying lacks)
{
    out->result = CHECK_FAIL;
    out->unit = UNIT_NONE;
    out->value = out->limit = 0;
    out->text = say(arena, SAY_STANDS_NOT_SHOWN, say_term(lacks));
}

/* No energy to work with: not made where a survey could have given it, else not shown. */
static void lacks_energy(struct Arena *arena, const struct Energy *energy, struct Check *out)
{
    if (settles_something(&energy->settles)) {
        check_unsettled(out, energy->settles, say(arena, SAY_STANDS_NOT_MADE, say_term(energy->lacks)));
    } else {
        fail_for(arena, out, energy->lacks);
    }
}

/* Where no current was surveyed the ceiling of a class may be far over what flows: standing it is enough, not standing
 * it shows nothing. Where more flows than may be broken it is the other way round. */
static bool shows_nothing(struct Arena *arena, const struct RunDesign *run, const struct Energy *energy,
                          struct Check *out)
{
    if (energy->capacity_decides && out->result == CHECK_PASS) {
        check_unsettled(
            out, settles_key("device: breaking-capacity"),
            say(arena, SAY_LET_THROUGH_BEYOND_BREAKING, say_fixed(fault_current_any_a(run) / 1000, 2, UNIT_KA)));
        return true;
    }
    if (out->result != CHECK_FAIL || energy->assumes == SAY_NOTHING || fault_current_any_a(run) > 0) {
        return false;
    }
    check_unsettled(out, settles_key("supply: fault-current"),
                    say(arena, SAY_LET_THROUGH_MAY_BE_LESS, say_energy(arena, energy->a2s), say_term(energy->from)));
    return true;
}

static bool by_table(const struct RunDesign *run, double size_mm2, const struct Part54 *part, double *needed_mm2)
{
    const double k_line = k_value(run->edition, K_LIVE, cable_kind(run->terms.type)->insulation_degc);
    *needed_mm2 = protective_by_table_mm2(run->edition, size_mm2, k_line, part->k);
    /* met by less it is inside the wires' own tolerance, so the equation decides */
    return within(*needed_mm2 * design_practice()->clear_margin, part->area_mm2) ||
           (part->k >= k_line && within(*needed_mm2, part->area_mm2));
}

static const struct Say *word_protective(struct Arena *arena, const struct Part54 *part, bool table, double needed_mm2,
                                         const struct Energy *energy)
{
    const struct SayArg name = say_term(part->name);
    const struct SayArg area = say_digits(part->area_mm2, 4, UNIT_MM2);
    const struct SayArg needed = say_fixed(needed_mm2, 1, UNIT_MM2);
    return table ? say(arena, SAY_PROTECTIVE_BY_TABLE, name, area, needed)
                 : say(arena, SAY_PROTECTIVE_BY_ENERGY, name, area, needed, say_term(energy->from));
}

/* Whatever a fault asks for, and whether its current was surveyed or not, a conductor outside a cable has a least size
 * of its own. */
static bool too_thin(struct Arena *arena, const struct RunDesign *run, struct Check *out)
{
    const struct ClauseFigures *clause = clause_figures();
    const double least_mm2 = run->separate_enclosed ? clause->separate_enclosed_mm2 : clause->separate_bare_mm2;
    if (run->fault_cpc != CPC_SEPARATE || within(least_mm2, run->separate_mm2)) {
        return false;
    }
    out->value = run->separate_mm2;
    out->limit = least_mm2;
    out->cite.clause = "543.1.1";
    out->result = CHECK_FAIL;
    out->text = say(arena, run->separate_enclosed ? SAY_SEPARATE_TOO_THIN_ENCLOSED : SAY_SEPARATE_TOO_THIN,
                    say_digits(run->separate_mm2, 4, UNIT_MM2), say_digits(least_mm2, 4, UNIT_MM2));
    return true;
}

/* One part of the protective conductor: by the table where that is enough, else by the energy. */
static void check_part(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                       const struct Part54 *part, struct Check *out)
{
    double needed_mm2;
    const struct FaultRange fault = {.near_a = fault_current_any_a(run),
                                     .far_a = earth_fault_far_a(run, trial->size_mm2)};
    /* The table was not made for a breaker that takes seconds. */
    const bool table = by_table(run, trial->size_mm2, part, &needed_mm2) && !fault_opens_late(run, &fault);
    struct Energy energy = {0};
    if (!table) {
        energy = fault_energy(run, &fault);
        if (energy.lacks != SAY_NOTHING) {
            lacks_energy(arena, &energy, out);
            return;
        }
        needed_mm2 = sqrt(energy.a2s) / part->k;
    }
    out->value = part->area_mm2;
    out->limit = needed_mm2;
    out->cite.clause = table ? "543.1.4" : "543.1.3";
    out->cite.table = table ? protective_by_table_ref(run->edition)->table : NULL;
    out->trust = table ? protective_by_table_ref(run->edition)->trust : part->k_ref->trust;
    out->assumes = energy.assumes == SAY_NOTHING ? NULL : say(arena, energy.assumes);
    out->result = within(needed_mm2, part->area_mm2) ? CHECK_PASS : CHECK_FAIL;
    if (shows_nothing(arena, run, &energy, out)) {
        return;
    }
    out->text = word_protective(arena, part, table, needed_mm2, &energy);
    if (table) {
        work_protective_by_table(arena, run, trial, part, needed_mm2, out);
    } else {
        work_protective_by_energy(arena, run, part, &energy, needed_mm2, out);
    }
}

/* Of two parts the one that fails stands for both, else the one that could not be checked, else the nearer to its
 * limit. */
static bool is_worse(const struct Check *a, const struct Check *b)
{
    const int rank_a = a->result == CHECK_FAIL ? 2 : a->unknown ? 1 : 0;
    const int rank_b = b->result == CHECK_FAIL ? 2 : b->unknown ? 1 : 0;
    return rank_a != rank_b ? rank_a > rank_b : a->value * b->limit < b->value * a->limit;
}

void check_protective_conductor(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                                struct Check *out)
{
    out->at_least = true;
    struct Part54 parts[2];
    const int count = protective_parts(run, trial->size_mm2, parts);
    if (count == 0) {
        fail_for(arena, out, run->fault_cpc == CPC_NONE ? SAY_LACKS_PROTECTIVE_CONDUCTOR : SAY_LACKS_PROTECTIVE_AREA);
        return;
    }
    if (too_thin(arena, run, out)) {
        return;
    }
    const struct Check blank = *out;
    for (int i = 0; i < count; i++) {
        struct Check made = blank;
        check_part(arena, run, trial, &parts[i], &made);
        if (i == 0 || is_worse(&made, out)) {
            *out = made;
        }
    }
    if (run->fault_cpc == CPC_CORE_AND_ARMOUR && count == 1) {
        out->text = say_then(arena, out->text, say(arena, SAY_ARMOUR_BESIDE_NOT_HELD));
    }
}

/* The weakest short circuit whose energy counts. */
static bool weakest_current(const struct RunDesign *run, double *out_a)
{
    const struct Device *device = &run->run->device;
    const bool breaker = device->kind == DEVICE_MCB || device->kind == DEVICE_RCBO;
    double late_s;
    return (breaker && device_trip_late(device->curve, run->rating_a, out_a, &late_s)) ||
           run_trip_current(run, breaker ? clause_figures()->adiabatic_from_s : clause_figures()->adiabatic_to_s,
                            out_a);
}

/* What becomes of a short circuit at the far end that is too weak for any figure held: residual parts do not see it. */
static const struct Say *word_short_circuit(struct Arena *arena, const struct RunDesign *run, double size_mm2)
{
    const struct Device *device = &run->run->device;
    const double far_a = short_circuit_far_a(run, size_mm2);
    const bool breaker = device->kind == DEVICE_MCB || device->kind == DEVICE_RCBO;
    double trip_a;
    if (far_a <= 0 || !weakest_current(run, &trip_a) || within(trip_a, far_a)) {
        return NULL;
    }
    const struct SayArg far = say_fixed(far_a, 0, UNIT_A);
    const struct SayArg trip = say_digits(trip_a, 4, UNIT_A);
    return !breaker
               ? say(arena, SAY_SHORT_CIRCUIT_UNDER_FUSE, far, trip,
                     say_digits(clause_figures()->adiabatic_to_s, 4, UNIT_S))
               : say(arena, device->curve == CURVE_D ? SAY_SHORT_CIRCUIT_UNDER_TYPE_D : SAY_SHORT_CIRCUIT_UNDER_TRIP,
                     far, trip);
}

void check_live_conductors(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                           struct Check *out)
{
    /* What a TT supply's loop between line and neutral is at most, nobody has surveyed. */
    const struct FaultRange fault = {.near_a = fault_current_any_a(run),
                                     .far_a = run->tt ? 0 : short_circuit_far_a(run, trial->size_mm2),
                                     .short_circuit = true};
    const struct Energy energy = fault_energy(run, &fault);
    const double k = k_value(run->edition, K_LIVE, cable_kind(run->terms.type)->insulation_degc);
    if (energy.lacks != SAY_NOTHING) {
        lacks_energy(arena, &energy, out);
        return;
    }
    out->limit = k * k * trial->size_mm2 * trial->size_mm2;
    out->value = energy.a2s;
    out->result = within(out->value, out->limit) ? CHECK_PASS : CHECK_FAIL;
    if (shows_nothing(arena, run, &energy, out)) {
        return;
    }
    out->assumes = energy.assumes == SAY_NOTHING ? NULL : say(arena, energy.assumes);
    out->text = say_then(arena,
                         say(arena, SAY_LET_THROUGH, say_energy(arena, energy.a2s), say_term(energy.from),
                             say_digits(trial->size_mm2, 4, UNIT_MM2), say_energy_bare(arena, out->limit)),
                         word_short_circuit(arena, run, trial->size_mm2));
    work_live_conductors(arena, run, trial, &energy, k, out);
}

void check_breaking_capacity(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                             struct Check *out)
{
    (void)trial;
    const double current_a = fault_current_any_a(run);
    const struct Quantity *given = &run->run->device.breaking_capacity_a;
    if (!given->given) {
        check_unsettled(out, settles_key("device: breaking-capacity"), say(arena, SAY_BREAKS_NOT_GIVEN));
        return;
    }
    if (current_a <= 0) {
        check_unsettled(out, settles_key("supply: fault-current"), say(arena, SAY_BREAKS_CURRENT_NOT_SURVEYED));
        return;
    }
    out->at_least = true;
    out->value = given->value / 1000;
    out->limit = current_a / 1000;
    out->result = within(out->limit, out->value) ? CHECK_PASS : CHECK_FAIL;
    out->text = say(arena, out->result == CHECK_FAIL ? SAY_BREAKS_TOO_LITTLE : SAY_BREAKS,
                    say_digits(out->value, 4, UNIT_KA), say_fixed(out->limit, 2, UNIT_KA));
    work_breaking_capacity(arena, run, out);
}
