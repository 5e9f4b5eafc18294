/* Fault currents, greatest and least. What energy they bring is in fault_energy.c. */
#include "fault_private.h"

#include <math.h>

double fault_current_earth_a(const struct RunDesign *run)
{
    /* Ze is the greatest loop of the supply, so what it lets flow is no upper bound; but less than that cannot be. */
    const double by_loop_a =
        run->before_ohm > 0 ? voltage_factor_greatest(run->edition) * run->u0_v / run->before_ohm : 0;
    return fmax(run->fault_current_a, by_loop_a);
}

double fault_current_any_a(const struct RunDesign *run)
{
    return run->fault_current_a > 0 ? fault_current_earth_a(run) : 0;
}

/* number_text() ends at a thousand million. */
static struct SayArg energy_in(struct Arena *arena, double a2s, enum Unit unit, enum Saying million)
{
    return a2s < 1e9 ? say_fixed(a2s, 0, unit) : say_part(say(arena, million, say_fixed(a2s / 1e6, 0, UNIT_NONE)));
}

struct SayArg say_energy(struct Arena *arena, double a2s)
{
    return energy_in(arena, a2s, UNIT_A2_S, SAY_MILLION_A2_S);
}

struct SayArg say_energy_bare(struct Arena *arena, double a2s)
{
    return energy_in(arena, a2s, UNIT_NONE, SAY_MILLION);
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
    struct DropFigure figure;
    const double pair_ohm = drop_figure(run->edition, run->drop_table, size_mm2, 1, &figure) && figure.x > 0
                                ? hypot(both_ohm, figure.x / 1000 * run->electrical_length_m)
                                : both_ohm;
    return voltage_factor_least(run->edition) * run->u0_v / (source_ohm + pair_ohm);
}

double earth_fault_far_a(const struct RunDesign *run, double size_mm2)
{
    const struct Loop loop = loop_of_run(run, size_mm2);
    return loop.lacks != SAY_NOTHING || run->before_ohm <= 0
               ? 0
               : voltage_factor_least(run->edition) * run->u0_v / loop_far_ohm(run->before_ohm, &loop);
}
