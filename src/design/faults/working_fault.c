/* The working of what conductors stand and devices break: currents, energies, areas. */
#include "fault_private.h"

static const char source_of_energy[] = "BS 7671 434.5.2";

static void add_largest_current(struct Steps *steps, const struct RunDesign *run, double current_a)
{
    if (run->fault_current_a > 0 && within(current_a, run->fault_current_a)) {
        steps_figure(steps, "largest fault current at the origin", "as surveyed", "", current_a, "A", "as surveyed");
        return;
    }
    steps_figure(steps, "largest fault current at the origin",
                 run->tt ? "1.1 x U0 / the loop before the run" : "1.1 x U0 / Ze",
                 arena_print(steps->arena, "%s x %s / %s", steps_number(steps, VOLTAGE_FACTOR_GREATEST),
                             steps_number(steps, run->u0_v), steps_number(steps, run->before_ohm)),
                 current_a, "A", "BS 7671 Appendix 3");
}

/* The current that the energy is worked from, and the energy. */
static void add_energy(struct Steps *steps, const struct RunDesign *run, const struct Energy *energy, double largest_a)
{
    static const char what[] = "energy that the device lets through, I2 t";
    if (energy->time_s <= 0) {
        steps_figure(steps, what, energy->from, "", energy->a2s, "A2 s", steps_source(steps, let_through_ref()));
        return;
    }
    if (within(energy->current_a, largest_a) && within(largest_a, energy->current_a)) {
        add_largest_current(steps, run, largest_a);
    } else {
        steps_figure(steps,
                     arena_print(steps->arena, "current that just makes the device cut off in %s s",
                                 steps_number(steps, energy->acts_in_s)),
                     "the device's own figure", "", energy->current_a, "A",
                     run->run->device.trip_5_s_a.given &&
                             within(run->run->device.trip_5_s_a.value, energy->current_a) &&
                             within(energy->current_a, run->run->device.trip_5_s_a.value)
                         ? "as surveyed"
                         : steps_source(steps, device_trip_ref(run->run->device.kind)));
    }
    const char *numbers = arena_print(steps->arena, "%s^2 x %s", steps_number(steps, energy->current_a),
                                      steps_number(steps, energy->time_s));
    if (energy->factor > 0) {
        steps_figure(steps, "first loop of a fault current over half a cycle", "the band of the current", "",
                     energy->factor, "times", steps_source(steps, first_loop_ref()));
        numbers = arena_print(steps->arena, "%s x %s", numbers, steps_number(steps, energy->factor));
    }
    steps_figure(steps, what, energy->from, numbers, energy->a2s, "A2 s", source_of_energy);
}

static void add_area(struct Steps *steps, const struct Part54 *part)
{
    const char *what = arena_print(steps->arena, "area of the %s", part->name);
    if (part->area_ref == NULL) {
        steps_figure(steps, what, "by its size", "", part->area_mm2, "mm2", "as surveyed or chosen");
    } else {
        steps_figure(steps, what, "by the size of the cable", "", part->area_mm2, "mm2",
                     steps_source(steps, part->area_ref));
    }
}

/* The table's figure for the same material, times k1 / k2 where that is over 1: the very look-up that decided. */
void work_protective_by_table(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                              const struct Part54 *part, double needed_mm2, struct Check *out)
{
    if (run->brief) {
        return;
    }
    struct Steps steps = steps_begin(arena);
    const double k_line = k_live_copper(cable_kind(run->terms.type)->insulation_degc);
    const double same_mm2 = protective_by_table_mm2(trial->size_mm2, k_line, k_line);
    const char *source = "BS 7671 543.1.4, Table 54.7";
    add_area(&steps, part);
    steps_figure(&steps, "least area in the line conductor's own material",
                 arena_print(arena, "the row for a line conductor of %s mm2", steps_number(&steps, trial->size_mm2)),
                 "", same_mm2, "mm2", source);
    if (k_line > part->k) {
        steps_figure(&steps, arena_print(arena, "least area of the %s", part->name), "least area x k1 / k2",
                     arena_print(arena, "%s x %s / %s", steps_number(&steps, same_mm2), steps_number(&steps, k_line),
                                 steps_number(&steps, part->k)),
                     needed_mm2, "mm2", arena_print(arena, "%s; k: Table 43.1 and %s", source, part->k_source));
    }
    steps_end(&steps, out);
}

void work_protective_by_energy(struct Arena *arena, const struct RunDesign *run, const struct Part54 *part,
                               const struct Energy *energy, double needed_mm2, struct Check *out)
{
    if (run->brief) {
        return;
    }
    struct Steps steps = steps_begin(arena);
    add_area(&steps, part);
    add_energy(&steps, run, energy, fault_current_any_a(run));
    steps_figure(&steps, arena_print(arena, "least area of the %s", part->name), "sqrt(I2 t) / k",
                 arena_print(arena, "sqrt(%s) / %s", steps_number(&steps, energy->a2s), steps_number(&steps, part->k)),
                 needed_mm2, "mm2", arena_print(arena, "BS 7671 543.1.3; k: %s", part->k_source));
    steps_end(&steps, out);
}

void work_live_conductors(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                          const struct Energy *energy, double k, struct Check *out)
{
    if (run->brief) {
        return;
    }
    struct Steps steps = steps_begin(arena);
    add_energy(&steps, run, energy, fault_current_any_a(run));
    steps_figure(&steps, "energy that the conductor stands", "k2 S2",
                 arena_print(arena, "%s^2 x %s^2", steps_number(&steps, k), steps_number(&steps, trial->size_mm2)),
                 out->limit, "A2 s", "BS 7671 434.5.2, Table 43.1");
    steps_end(&steps, out);
}

void work_breaking_capacity(struct Arena *arena, const struct RunDesign *run, struct Check *out)
{
    if (run->brief) {
        return;
    }
    struct Steps steps = steps_begin(arena);
    const double current_a = fault_current_any_a(run);
    const double breaks_a = run->run->device.breaking_capacity_a.value;
    add_largest_current(&steps, run, current_a);
    steps_figure(&steps, "the same in kA", "A / 1000", arena_print(arena, "%s / 1000", steps_number(&steps, current_a)),
                 out->limit, "kA", "");
    steps_figure(&steps, "breaking capacity of the device", "as surveyed",
                 arena_print(arena, "%s / 1000", steps_number(&steps, breaks_a)), out->value, "kA", "as surveyed");
    steps_end(&steps, out);
}
