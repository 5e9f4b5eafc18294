/* The working of disconnection: the loop piece by piece, what the device allows, and its residual part. */
#include "fault_private.h"

static const char source_of_heat[] = "BS 7671 Appendix 3";
static const char source_of_armour[] = "PD CLC/TR 50480";

/* "1.83 x 70.54 / 1000": the standards print ohm per kilometre. */
static const char *over_length(const struct Steps *steps, double length_m, double ohm_per_m)
{
    return arena_print(steps->arena, "%s x %s / 1000", steps_number(steps, ohm_per_m * 1000),
                       steps_number(steps, length_m));
}

static const char *heated(const struct Steps *steps, const char *factor, double ohm, double per_k, double degc)
{
    return arena_print(steps->arena, "%s%s x (1 + %s x (%s - 20))", factor, steps_number(steps, ohm),
                       steps_number(steps, per_k), steps_number(steps, degc));
}

static void add_line(struct Steps *steps, const struct RunDesign *run, const struct Loop *loop)
{
    steps_figure(steps, "line conductor at 20 degC, R1", "ohm/km x length / 1000",
                 over_length(steps, run->electrical_length_m, loop->line_ohm_per_m), loop->line_20_ohm, "ohm",
                 "IEC 60228 Table 2");
    steps_figure(steps, "line conductor as warm as a fault finds it", "R1 x (1 + 0.004 x (t - 20))",
                 heated(steps, "", loop->line_20_ohm, COPPER_PER_K, run->terms.conductor_degc), loop->line_hot_ohm,
                 "ohm", source_of_heat);
}

/* Copper, and armour, of the protective path; the result is the hot resistance, ohm, 0 where there is none. */
static double add_copper(struct Steps *steps, const struct RunDesign *run, const struct Loop *loop)
{
    const double cold_ohm = loop->copper_ohm_per_m * loop->protective_m;
    const bool separate = run->fault_cpc == CPC_SEPARATE;
    if (cold_ohm <= 0) {
        return 0;
    }
    steps_figure(steps, separate ? "separate protective conductor at 20 degC, R2" : "protective core at 20 degC, R2",
                 "ohm/km x length / 1000", over_length(steps, loop->protective_m, loop->copper_ohm_per_m), cold_ohm,
                 "ohm", "IEC 60228 Table 2");
    const double hot_ohm = copper_at(cold_ohm, loop->copper_degc);
    steps_figure(steps, "the same as warm as a fault finds it", "R2 x (1 + 0.004 x (t - 20))",
                 heated(steps, "", cold_ohm, COPPER_PER_K, loop->copper_degc), hot_ohm, "ohm", source_of_heat);
    return hot_ohm;
}

static double add_armour(struct Steps *steps, const struct RunDesign *run, const struct Loop *loop)
{
    const double cold_ohm = loop->armour_ohm_per_m * run->electrical_length_m;
    if (cold_ohm <= 0) {
        return 0;
    }
    steps_figure(steps, "armour at 20 degC, R2", "ohm/km x length / 1000",
                 over_length(steps, run->electrical_length_m, loop->armour_ohm_per_m), cold_ohm, "ohm",
                 steps_source(steps, armour_ref()));
    const double hot_ohm = ARMOUR_LAY * armour_at(cold_ohm, loop->armour_degc);
    const char *lay = arena_print(steps->arena, "%s x ", steps_number(steps, ARMOUR_LAY));
    steps_figure(steps, "armour as warm as a fault finds it", "1.1 x R2 x (1 + 0.0045 x (t - 20))",
                 heated(steps, lay, cold_ohm, STEEL_PER_K, loop->armour_degc), hot_ohm, "ohm", source_of_armour);
    return hot_ohm;
}

static void add_protective(struct Steps *steps, const struct RunDesign *run, const struct Loop *loop)
{
    const double copper_ohm = add_copper(steps, run, loop);
    const double armour_ohm = add_armour(steps, run, loop);
    if (copper_ohm > 0 && armour_ohm > 0) {
        const char *a = steps_number(steps, copper_ohm);
        const char *b = steps_number(steps, armour_ohm);
        steps_figure(steps, "core and armour side by side", "a x b / (a + b)",
                     arena_print(steps->arena, "%s x %s / (%s + %s)", a, b, a, b), loop->protective_hot_ohm, "ohm",
                     "Ohm's law");
    }
}

static void add_loop(struct Steps *steps, const struct RunDesign *run, const struct Loop *loop, double zs_ohm)
{
    struct Arena *arena = steps->arena;
    const char *run_sum = arena_print(arena, "%s + %s", steps_number(steps, loop->line_hot_ohm),
                                      steps_number(steps, loop->protective_hot_ohm));
    const char *before_ohm = steps_number(steps, run->before_ohm);
    const char *before = run->tt ? "RA" : "Ze";
    const char *what = "loop at the far end, Zs";
    if (loop->reactance_ohm <= 0) {
        steps_figure(steps, what, arena_print(arena, "%s + R1 + R2", before),
                     arena_print(arena, "%s + %s", before_ohm, run_sum), zs_ohm, "ohm", "BS 7671 411.4.4");
        return;
    }
    const bool of_armour = loop->armour_ohm_per_m > 0;
    steps_figure(steps, "reactance of the run, X",
                 of_armour ? "0.3 ohm/km for a loop through armour" : "x of the drop table, for a pair",
                 over_length(steps, run->electrical_length_m, loop->reactance_ohm_per_m), loop->reactance_ohm, "ohm",
                 of_armour ? source_of_armour : steps_source(steps, drop_ref(run->drop_table)));
    steps_figure(
        steps, what,
        arena_print(arena, "%s + sqrt((R1 + R2)^2 + X^2), magnitudes added: of %s no angle is known", before, before),
        arena_print(arena, "%s + sqrt((%s)^2 + %s^2)", before_ohm, run_sum, steps_number(steps, loop->reactance_ohm)),
        zs_ohm, "ohm", "BS 7671 411.4.4");
}

/* A circuit-breaker trips at a multiple of its rating; a fuse's current is read back from the loop that is printed for
 * it. */
static void add_limit(struct Steps *steps, const struct RunDesign *run, const struct CutOff *cut)
{
    struct Arena *arena = steps->arena;
    const struct Device *device = &run->run->device;
    const char *least = steps_number(steps, VOLTAGE_FACTOR_LEAST);
    const char *circuit = run_is_final(run) ? "a final circuit" : "a distribution circuit";
    steps_figure(steps, "time allowed", arena_print(arena, "%s, %s", circuit, run->tt ? "TT" : "TN"), "", cut->time_s,
                 "s", "BS 7671 Table 41.1, 411.3.2");
    if (cut->trip_a <= 0) {
        return;
    }
    const char *source = steps_source(steps, device_trip_ref(device->kind));
    const char *what = "current that cuts off in that time, Ia";
    if (device->trip_5_s_a.given && within(device->trip_5_s_a.value, cut->trip_a) &&
        within(cut->trip_a, device->trip_5_s_a.value)) {
        steps_figure(steps, what, "by its maker's curve, as surveyed", "", cut->trip_a, "A", "as surveyed");
    } else if (device->kind == DEVICE_MCB || device->kind == DEVICE_RCBO) {
        steps_figure(steps, what,
                     arena_print(arena, "multiple of type %s x In", survey_word(WORDS_CURVE, (int)device->curve)),
                     arena_print(arena, "%s x %s", steps_number(steps, cut->trip_a / run->rating_a),
                                 steps_number(steps, run->rating_a)),
                     cut->trip_a, "A", source);
    } else if (device->kind == DEVICE_BS1361) {
        steps_figure(steps, what, "as its curve is quoted", "", cut->trip_a, "A", source);
    } else {
        const double printed_ohm = VOLTAGE_FACTOR_LEAST * 230 / cut->trip_a;
        steps_figure(steps, what, "read back from the loop that is printed for the fuse, 0.95 x 230 V / Zs",
                     arena_print(arena, "%s x 230 / %s", least, steps_number(steps, printed_ohm)), cut->trip_a, "A",
                     source);
    }
    steps_figure(
        steps, "largest loop for the overcurrent part", "0.95 x U0 / Ia",
        arena_print(arena, "%s x %s / %s", least, steps_number(steps, run->u0_v), steps_number(steps, cut->trip_a)),
        cut->limit_ohm, "ohm", "BS 7671 411.4.4");
}

static void add_residual(struct Steps *steps, const struct RunDesign *run, const struct Loop *loop,
                         const struct CutOff *cut)
{
    struct Arena *arena = steps->arena;
    const double residual_a = run->run->device.residual_a.value;
    const char *residual = steps_number(steps, residual_a);
    const char *zs = steps_number(steps, cut->zs_ohm);
    const char *touch_source = run->tt ? "BS 7671 411.5.3" : "BS 7671 411.4.204, Table 41.5";
    if (run->tt) {
        steps_figure(steps, "touch voltage with the residual part", "(RA + R2) x I delta n, not over 50 V",
                     arena_print(arena, "(%s + %s) x %s", steps_number(steps, run->electrode_here_ohm),
                                 steps_number(steps, loop->protective_hot_ohm), residual),
                     cut->path_ohm * residual_a, "V", touch_source);
    } else {
        steps_figure(steps, "touch voltage with the residual part", "Zs x I delta n, not over 50 V",
                     arena_print(arena, "%s x %s", zs, residual), cut->path_ohm * residual_a, "V", touch_source);
    }
    steps_figure(steps, "fault current in terms of I delta n", "U0 / Zs / I delta n",
                 arena_print(arena, "%s / %s / %s", steps_number(steps, run->u0_v), zs, residual), cut->multiple,
                 "times", "");
    if (cut->multiple >= 1) {
        steps_figure(steps, "the residual part acts within",
                     "at 5 times and over, at 2 or at 1 times I delta n, whichever is reached", "", cut->acts_s, "s",
                     steps_source(steps, residual_time_ref()));
    } else {
        steps_add(steps, "the residual part acts", "less than I delta n flows", "", "never",
                  steps_source(steps, residual_time_ref()));
    }
}

void work_disconnection(struct Arena *arena, const struct RunDesign *run, const struct Loop *loop,
                        const struct CutOff *cut, struct Check *out)
{
    if (run->brief) {
        return;
    }
    struct Steps steps = steps_begin(arena);
    add_line(&steps, run, loop);
    add_protective(&steps, run, loop);
    add_loop(&steps, run, loop, cut->zs_ohm);
    add_limit(&steps, run, cut);
    if (run->run->device.residual_a.given) {
        add_residual(&steps, run, loop, cut);
    }
    steps_end(&steps, out);
}
