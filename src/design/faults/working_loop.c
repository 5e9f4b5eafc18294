/* The working of disconnection: the loop piece by piece, what the device allows, and its residual part. */
#include "fault_private.h"

static const struct Cite source_of_heat = {BS_7671, .appendix = "3"};

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

/* "1.1 x R2 x (1 + 0.0045 x (t - 20))": the same in letters. */
static struct SayArg hot_formula(const struct Steps *steps, const char *factor, const char *letters, double per_k)
{
    return say_calculation(
        arena_print(steps->arena, "%s%s x (1 + %s x (t - 20))", factor, letters, steps_number(steps, per_k)));
}

static void add_line(struct Steps *steps, const struct RunDesign *run, const struct Loop *loop)
{
    steps_figure(steps, say_term(SAY_STEP_LINE_AT_20), say_term(SAY_STEP_OHM_PER_KM),
                 over_length(steps, run->electrical_length_m, loop->line_ohm_per_m), loop->line_20_ohm, UNIT_OHM,
                 steps_source(steps, conductor_resistance_ref()));
    steps_figure(steps, say_term(SAY_STEP_LINE_HOT), hot_formula(steps, "", "R1", clause_figures()->copper_per_k),
                 heated(steps, "", loop->line_20_ohm, clause_figures()->copper_per_k, run->terms.conductor_degc),
                 loop->line_hot_ohm, UNIT_OHM, steps_cite(steps, source_of_heat));
}

/* Copper, and armour, of the protective path; the result is the hot resistance, ohm, 0 where there is none. */
static double add_copper(struct Steps *steps, const struct RunDesign *run, const struct Loop *loop)
{
    const double cold_ohm = loop->copper_ohm_per_m * loop->protective_m;
    const bool separate = run->fault_cpc == CPC_SEPARATE;
    if (cold_ohm <= 0) {
        return 0;
    }
    steps_figure(steps, say_term(separate ? SAY_STEP_SEPARATE_AT_20 : SAY_STEP_CORE_AT_20),
                 say_term(SAY_STEP_OHM_PER_KM), over_length(steps, loop->protective_m, loop->copper_ohm_per_m),
                 cold_ohm, UNIT_OHM, steps_source(steps, conductor_resistance_ref()));
    const double hot_ohm = copper_at(cold_ohm, loop->copper_degc);
    steps_figure(steps, say_term(SAY_STEP_SAME_HOT), hot_formula(steps, "", "R2", clause_figures()->copper_per_k),
                 heated(steps, "", cold_ohm, clause_figures()->copper_per_k, loop->copper_degc), hot_ohm, UNIT_OHM,
                 steps_cite(steps, source_of_heat));
    return hot_ohm;
}

static double add_armour(struct Steps *steps, const struct RunDesign *run, const struct Loop *loop)
{
    const double cold_ohm = loop->armour_ohm_per_m * run->electrical_length_m;
    if (cold_ohm <= 0) {
        return 0;
    }
    steps_figure(steps, say_term(SAY_STEP_ARMOUR_AT_20), say_term(SAY_STEP_OHM_PER_KM),
                 over_length(steps, run->electrical_length_m, loop->armour_ohm_per_m), cold_ohm, UNIT_OHM,
                 steps_source(steps, armour_ref()));
    const double hot_ohm = armour_loop()->lay * armour_at(cold_ohm, loop->armour_degc);
    const char *lay = arena_print(steps->arena, "%s x ", steps_number(steps, armour_loop()->lay));
    steps_figure(steps, say_term(SAY_STEP_ARMOUR_HOT), hot_formula(steps, lay, "R2", armour_loop()->per_k),
                 heated(steps, lay, cold_ohm, armour_loop()->per_k, loop->armour_degc), hot_ohm, UNIT_OHM,
                 steps_source(steps, armour_loop_ref()));
    return hot_ohm;
}

static void add_protective(struct Steps *steps, const struct RunDesign *run, const struct Loop *loop)
{
    const double copper_ohm = add_copper(steps, run, loop);
    const double armour_ohm = add_armour(steps, run, loop);
    if (copper_ohm > 0 && armour_ohm > 0) {
        const char *a = steps_number(steps, copper_ohm);
        const char *b = steps_number(steps, armour_ohm);
        steps_figure(steps, say_term(SAY_STEP_SIDE_BY_SIDE), say_term(SAY_STEP_A_B),
                     arena_print(steps->arena, "%s x %s / (%s + %s)", a, b, a, b), loop->protective_hot_ohm, UNIT_OHM,
                     say_term(SAY_STEP_OHMS_LAW));
    }
}

static void add_loop(struct Steps *steps, const struct RunDesign *run, const struct Loop *loop, double zs_ohm)
{
    struct Arena *arena = steps->arena;
    const char *run_sum = arena_print(arena, "%s + %s", steps_number(steps, loop->line_hot_ohm),
                                      steps_number(steps, loop->protective_hot_ohm));
    const char *before_ohm = steps_number(steps, run->before_ohm);
    const struct SayArg what = say_term(SAY_STEP_ZS);
    if (loop->reactance_ohm <= 0) {
        steps_figure(steps, what, say_name(run->tt ? "RA + R1 + R2" : "Ze + R1 + R2"),
                     arena_print(arena, "%s + %s", before_ohm, run_sum), zs_ohm, UNIT_OHM,
                     steps_clause(steps, "411.4.4"));
        return;
    }
    const bool of_armour = loop->armour_ohm_per_m > 0;
    steps_figure(steps, say_term(SAY_STEP_REACTANCE),
                 say_term(of_armour ? SAY_STEP_REACTANCE_OF_ARMOUR : SAY_STEP_REACTANCE_OF_PAIR),
                 over_length(steps, run->electrical_length_m, loop->reactance_ohm_per_m), loop->reactance_ohm, UNIT_OHM,
                 of_armour ? steps_source(steps, armour_loop_ref())
                           : steps_source(steps, drop_ref(run->edition, run->drop_table)));
    steps_figure(
        steps, what, say_part(say(arena, SAY_STEP_ZS_WITH_REACTANCE, say_name(run->tt ? "RA" : "Ze"))),
        arena_print(arena, "%s + sqrt((%s)^2 + %s^2)", before_ohm, run_sum, steps_number(steps, loop->reactance_ohm)),
        zs_ohm, UNIT_OHM, steps_clause(steps, "411.4.4"));
}

/* A circuit-breaker trips at a multiple of its rating; a fuse's current is read back from the loop that is printed for
 * it. */
static void add_limit(struct Steps *steps, const struct RunDesign *run, const struct CutOff *cut)
{
    struct Arena *arena = steps->arena;
    const struct Device *device = &run->run->device;
    const char *least = steps_number(steps, voltage_factor_least(run->edition));
    const enum Saying circuit = run_is_final(run) ? SAY_STEP_FINAL_CIRCUIT : SAY_STEP_DISTRIBUTION_CIRCUIT;
    steps_figure(steps, say_term(SAY_STEP_TIME_ALLOWED), say_part(say(arena, circuit, say_name(run->tt ? "TT" : "TN"))),
                 "", cut->time_s, UNIT_S,
                 steps_cite(steps, (struct Cite){BS_7671, .clause = "411.3.2", .table = "41.1"}));
    if (cut->trip_a <= 0) {
        return;
    }
    const struct SayArg source = steps_source(steps, device_trip_ref(run->edition, device->kind));
    const struct SayArg what = say_term(SAY_STEP_CUTS_OFF);
    if (device->trip_5_s_a.given && within(device->trip_5_s_a.value, cut->trip_a) &&
        within(cut->trip_a, device->trip_5_s_a.value)) {
        steps_figure(steps, what, say_term(SAY_STEP_MAKERS_CURVE), "", cut->trip_a, UNIT_A,
                     say_term(SAY_STEP_AS_SURVEYED));
    } else if (device->kind == DEVICE_MCB || device->kind == DEVICE_RCBO) {
        steps_figure(steps, what,
                     say_part(say(arena, SAY_STEP_MULTIPLE_OF_TYPE, say_word(WORDS_CURVE, (int)device->curve))),
                     arena_print(arena, "%s x %s", steps_number(steps, cut->trip_a / run->rating_a),
                                 steps_number(steps, run->rating_a)),
                     cut->trip_a, UNIT_A, source);
    } else if (device->kind == DEVICE_BS1361) {
        steps_figure(steps, what, say_term(SAY_STEP_CURVE_AS_QUOTED), "", cut->trip_a, UNIT_A, source);
    } else {
        const double printed_ohm = voltage_factor_least(run->edition) * 230 / cut->trip_a;
        steps_figure(
            steps, what,
            say_part(say(arena, SAY_STEP_READ_BACK, steps_value(voltage_factor_least(run->edition), UNIT_NONE))),
            arena_print(arena, "%s x 230 / %s", least, steps_number(steps, printed_ohm)), cut->trip_a, UNIT_A, source);
    }
    steps_figure(
        steps, say_term(SAY_STEP_LARGEST_LOOP), say_calculation(arena_print(arena, "%s x U0 / Ia", least)),
        arena_print(arena, "%s x %s / %s", least, steps_number(steps, run->u0_v), steps_number(steps, cut->trip_a)),
        cut->limit_ohm, UNIT_OHM, steps_clause(steps, "411.4.4"));
}

static struct SayArg touch_cited(const struct Steps *steps, const struct RunDesign *run)
{
    if (run->tt) {
        return steps_clause(steps, "411.5.3");
    }
    const struct TableRef *ref = residual_loop_limit_ref(run->edition);
    const struct Cite cite = {BS_7671, .clause = "411.4.204", .table = ref->table};
    return say_part(source_said(steps->arena, cite_said(steps->arena, &cite), ref->trust));
}

static void add_residual(struct Steps *steps, const struct RunDesign *run, const struct Loop *loop,
                         const struct CutOff *cut)
{
    struct Arena *arena = steps->arena;
    const double residual_a = run->run->device.residual_a.value;
    const char *residual = steps_number(steps, residual_a);
    const char *zs = steps_number(steps, cut->zs_ohm);
    const struct SayArg touch_source = touch_cited(steps, run);
    if (run->tt) {
        steps_figure(steps, say_term(SAY_STEP_TOUCH_WITH_RESIDUAL),
                     say_part(say(arena, SAY_STEP_TOUCH_TT, steps_value(touch_limit_v(run->edition), UNIT_V))),
                     arena_print(arena, "(%s + %s) x %s", steps_number(steps, run->electrode_here_ohm),
                                 steps_number(steps, loop->protective_hot_ohm), residual),
                     cut->path_ohm * residual_a, UNIT_V, touch_source);
    } else {
        steps_figure(steps, say_term(SAY_STEP_TOUCH_WITH_RESIDUAL),
                     say_part(say(arena, SAY_STEP_TOUCH_TN, steps_value(touch_limit_v(run->edition), UNIT_V))),
                     arena_print(arena, "%s x %s", zs, residual), cut->path_ohm * residual_a, UNIT_V, touch_source);
    }
    steps_figure(steps, say_term(SAY_STEP_FAULT_IN_RESIDUAL), say_term(SAY_STEP_FAULT_IN_RESIDUAL_FORMULA),
                 arena_print(arena, "%s / %s / %s", steps_number(steps, run->u0_v), zs, residual), cut->multiple,
                 UNIT_TIMES, say_term(SAY_NOTHING));
    if (cut->multiple >= 1) {
        steps_figure(steps, say_term(SAY_STEP_RESIDUAL_WITHIN), say_term(SAY_STEP_RESIDUAL_WITHIN_FORMULA), "",
                     cut->acts_s, UNIT_S, steps_source(steps, residual_time_ref()));
    } else {
        steps_add(steps, say_term(SAY_STEP_RESIDUAL_ACTS), say_term(SAY_STEP_LESS_THAN_RESIDUAL),
                  say_term(SAY_STEP_NEVER), steps_source(steps, residual_time_ref()));
    }
}

void work_disconnection(struct Arena *arena, const struct RunDesign *run, const struct Loop *loop,
                        const struct CutOff *cut, struct Check *out)
{
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
