/* The working of what conductors stand and devices break: currents, energies, areas. */
#include "fault_private.h"

static void add_largest_current(struct Steps *steps, const struct RunDesign *run, double current_a)
{
    if (run->fault_current_a > 0 && within(current_a, run->fault_current_a)) {
        steps_figure(steps, say_term(SAY_STEP_LARGEST_FAULT), say_term(SAY_STEP_AS_SURVEYED), "", current_a, UNIT_A,
                     say_term(SAY_STEP_AS_SURVEYED));
        return;
    }
    const char *greatest = steps_number(steps, voltage_factor_greatest(run->edition));
    steps_figure(
        steps, say_term(SAY_STEP_LARGEST_FAULT),
        run->tt ? say_part(say(steps->arena, SAY_STEP_LARGEST_FAULT_TT,
                               steps_value(voltage_factor_greatest(run->edition), UNIT_NONE)))
                : say_calculation(arena_print(steps->arena, "%s x U0 / Ze", greatest)),
        arena_print(steps->arena, "%s x %s / %s", greatest, steps_number(steps, run->u0_v),
                    steps_number(steps, run->before_ohm)),
        current_a, UNIT_A,
        say_part(table_row_said(steps->arena, voltage_factor_ref(run->edition), voltage_factor_greatest_trust())));
}

/* The current that the energy is worked from, and the energy. */
static void add_energy(struct Steps *steps, const struct RunDesign *run, const struct Energy *energy, double largest_a)
{
    const struct SayArg what = say_term(SAY_STEP_LET_THROUGH);
    if (energy->time_s <= 0) {
        steps_figure(steps, what, say_term(energy->from), "", energy->a2s, UNIT_A2_S,
                     steps_source(steps, let_through_ref()));
        return;
    }
    if (within(energy->current_a, largest_a) && within(largest_a, energy->current_a)) {
        add_largest_current(steps, run, largest_a);
    } else {
        const struct SayArg acts_in = steps_value(energy->acts_in_s, UNIT_S);
        steps_figure(steps, say_part(say(steps->arena, SAY_STEP_CURRENT_FOR_TIME, acts_in)),
                     say_term(SAY_STEP_DEVICES_OWN_FIGURE), "", energy->current_a, UNIT_A,
                     run->run->device.trip_5_s_a.given &&
                             within(run->run->device.trip_5_s_a.value, energy->current_a) &&
                             within(energy->current_a, run->run->device.trip_5_s_a.value)
                         ? say_term(SAY_STEP_AS_SURVEYED)
                         : steps_source(steps, device_trip_ref(run->edition, run->run->device.kind)));
    }
    const char *numbers = arena_print(steps->arena, "%s^2 x %s", steps_number(steps, energy->current_a),
                                      steps_number(steps, energy->time_s));
    if (energy->factor > 0) {
        steps_figure(steps, say_term(SAY_STEP_FIRST_LOOP), say_term(SAY_STEP_BAND_OF_CURRENT), "", energy->factor,
                     UNIT_TIMES, steps_source(steps, first_loop_ref()));
        numbers = arena_print(steps->arena, "%s x %s", numbers, steps_number(steps, energy->factor));
    }
    steps_figure(steps, what, say_term(energy->from), numbers, energy->a2s, UNIT_A2_S, steps_clause(steps, "434.5.2"));
}

static void add_area(struct Steps *steps, const struct Part54 *part)
{
    const struct SayArg what = say_part(say(steps->arena, SAY_STEP_AREA, say_term(part->name)));
    if (part->area_ref == NULL) {
        steps_figure(steps, what, say_term(SAY_STEP_BY_ITS_SIZE), "", part->area_mm2, UNIT_MM2,
                     say_term(SAY_STEP_AS_SURVEYED_OR_CHOSEN));
    } else {
        steps_figure(steps, what, say_term(SAY_STEP_BY_CABLE_SIZE), "", part->area_mm2, UNIT_MM2,
                     steps_source(steps, part->area_ref));
    }
}

/* "Table 43.1", where the standard was named before. */
static struct SayArg by_number(struct Arena *arena, const struct TableRef *ref)
{
    return say_part(say(arena, SAY_TABLE_ALONE, say_name(ref->table)));
}

/* The table's figure for the same material, times k1 / k2 where that is over 1: the very look-up that decided. */
void work_protective_by_table(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                              const struct Part54 *part, double needed_mm2, struct Check *out)
{
    struct Steps steps = steps_begin(arena);
    const double k_line = k_value(run->edition, K_LIVE, cable_kind(run->terms.type)->insulation_degc);
    const double same_mm2 = protective_by_table_mm2(run->edition, trial->size_mm2, k_line, k_line);
    const struct SayArg source = say_part(say(arena, SAY_COMMA, steps_clause(&steps, "543.1.4"),
                                              by_number(arena, protective_by_table_ref(run->edition))));
    add_area(&steps, part);
    steps_figure(&steps, say_term(SAY_STEP_LEAST_AREA_SAME),
                 say_part(say(arena, SAY_STEP_ROW_OF_LINE, steps_value(trial->size_mm2, UNIT_MM2))), "", same_mm2,
                 UNIT_MM2, source);
    if (k_line > part->k) {
        steps_figure(&steps, say_part(say(arena, SAY_STEP_LEAST_AREA, say_term(part->name))),
                     say_term(SAY_STEP_LEAST_AREA_TIMES_K),
                     arena_print(arena, "%s x %s / %s", steps_number(&steps, same_mm2), steps_number(&steps, k_line),
                                 steps_number(&steps, part->k)),
                     needed_mm2, UNIT_MM2,
                     say_part(say(arena, SAY_STEP_SOURCES_OF_K, source,
                                  by_number(arena, k_value_ref(run->edition, K_LIVE)), by_number(arena, part->k_ref))));
    }
    steps_end(&steps, out);
}

void work_protective_by_energy(struct Arena *arena, const struct RunDesign *run, const struct Part54 *part,
                               const struct Energy *energy, double needed_mm2, struct Check *out)
{
    struct Steps steps = steps_begin(arena);
    add_area(&steps, part);
    add_energy(&steps, run, energy, fault_current_any_a(run));
    steps_figure(
        &steps, say_part(say(arena, SAY_STEP_LEAST_AREA, say_term(part->name))), say_term(SAY_STEP_LEAST_AREA_FORMULA),
        arena_print(arena, "sqrt(%s) / %s", steps_number(&steps, energy->a2s), steps_number(&steps, part->k)),
        needed_mm2, UNIT_MM2,
        say_part(say(arena, SAY_STEP_SOURCE_OF_K, steps_clause(&steps, "543.1.3"), by_number(arena, part->k_ref))));
    steps_end(&steps, out);
}

void work_live_conductors(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                          const struct Energy *energy, double k, struct Check *out)
{
    struct Steps steps = steps_begin(arena);
    add_energy(&steps, run, energy, fault_current_any_a(run));
    steps_figure(&steps, say_term(SAY_STEP_CONDUCTOR_STANDS), say_term(SAY_STEP_CONDUCTOR_STANDS_FORMULA),
                 arena_print(arena, "%s^2 x %s^2", steps_number(&steps, k), steps_number(&steps, trial->size_mm2)),
                 out->limit, UNIT_A2_S,
                 steps_cite(&steps, (struct Cite){BS_7671, .clause = "434.5.2", .table = "43.1"}));
    steps_end(&steps, out);
}

void work_breaking_capacity(struct Arena *arena, const struct RunDesign *run, struct Check *out)
{
    struct Steps steps = steps_begin(arena);
    const double current_a = fault_current_any_a(run);
    const double breaks_a = run->run->device.breaking_capacity_a.value;
    add_largest_current(&steps, run, current_a);
    steps_figure(&steps, say_term(SAY_STEP_IN_KA), say_calculation("A / 1000"),
                 arena_print(arena, "%s / 1000", steps_number(&steps, current_a)), out->limit, UNIT_KA,
                 say_term(SAY_NOTHING));
    steps_figure(&steps, say_term(SAY_STEP_BREAKING_CAPACITY), say_term(SAY_STEP_AS_SURVEYED),
                 arena_print(arena, "%s / 1000", steps_number(&steps, breaks_a)), out->value, UNIT_KA,
                 say_term(SAY_STEP_AS_SURVEYED));
    steps_end(&steps, out);
}
