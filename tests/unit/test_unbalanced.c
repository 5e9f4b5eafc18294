/* Unequal loads on three lines. Angles: V1 at 0, V2 at -120, V3 at +120 degrees, and the other order with V2 and V3
 * changed. One conductor z = r + jx; the neutral carries the sum of the lines; line k drops z (Ik + IN), of which the
 * part in step with Vk is compared with the limit. Every expected figure is worked by hand beside it or by complex
 * numbers here, with nothing of the program's own code. */
#include "run_suite.h"

#include "design/faults/fault_private.h"

#include <complex.h>
#include <math.h>

static const double pi = 3.14159265358979323846;
static const double u0_v = 230;

struct Case {
    double r, x, length_m; /* mohm/m of one conductor */
    struct LineLoad loads[3];
    struct {
        double neutral_a;
        double drop_v[3]; /* in step with its voltage */
    } order[2];
};

/* BS 7671 525 and Appendix 4, 6: A: 0.087 x (80 - 10) = 6.09 V. E: 50 A at 0.7 beside 50 A at 1: 79.6 A in the neutral
 * and 13.16 V in step, 13.09 V or 5.69 % as lengths, on the line with the better power factor. */
static const struct Case cases[] = {
    {1.45, 0, 60, {{40, 1, 0}, {20, 1, 1}, {0, 1, 2}}, {{34.64, {6.09, 1.74, -2.61}}, {34.64, {6.09, 1.74, -2.61}}}},
    {0.925,
     0.080,
     80,
     {{60, 0.80, 0}, {40, 1, 1}, {50, 0.95, 2}},
     {{28.05, {5.236, 3.525, 1.596}}, {35.91, {3.318, 0.918, 6.121}}}},
    {1.45, 0, 60, {{40, 1, 0}, {40, 1, 1}, {40, 1, 2}}, {{0, {3.48, 3.48, 3.48}}, {0, {3.48, 3.48, 3.48}}}},
    {1.45, 0, 60, {{40, 1, 0}, {0, 1, 1}, {0, 1, 2}}, {{40, {6.96, -1.74, -1.74}}, {40, {6.96, -1.74, -1.74}}}},
    {1.45,
     0,
     80,
     {{50, 0.7, 0}, {50, 1, 1}, {0, 1, 2}},
     {{79.64, {5.22, 13.157, -8.517}}, {12.56, {5.22, 5.983, -1.343}}}},
};
enum { CASES = (int)(sizeof cases / sizeof cases[0]) };

static double complex turned(double length, double degrees)
{
    return length * cexp(I * degrees * pi / 180);
}

static double complex voltage(int line, bool reversed)
{
    const double degrees = line == 0 ? 0 : (line == 1) != reversed ? -120 : 120;
    return turned(u0_v, degrees);
}

static double complex current(const struct LineLoad *load, int line, bool reversed)
{
    if (load->line != line && load->line != LOAD_ON_EVERY_LINE) {
        return 0;
    }
    return turned(load->current_a, -acos(load->power_factor) * 180 / pi) * voltage(line, reversed) / u0_v;
}

static double complex in_line(const struct LineLoad *loads, int count, int line, bool reversed)
{
    double complex sum = 0;
    for (int i = 0; i < count; i++) {
        sum += current(&loads[i], line, reversed);
    }
    return sum;
}

/* Drop of a metre of a line, mV, as a phasor. */
static double complex drop_of(double r, double x, const struct LineLoad *loads, int count, int line, bool reversed)
{
    double complex neutral = 0;
    for (int k = 0; k < 3; k++) {
        neutral += in_line(loads, count, k, reversed);
    }
    return (r + I * x) * (in_line(loads, count, line, reversed) + neutral);
}

static struct DropTerms to_neutral(const struct Case *at, int line, bool reversed)
{
    return (struct DropTerms){.of = DROP_TO_NEUTRAL,
                              .line = line,
                              .reversed = reversed,
                              .voltage_v = u0_v,
                              .figure = {.r = at->r, .x = at->x, .z = hypot(at->r, at->x), .split = at->x > 0}};
}

START_TEST(worked_examples_in_both_orders)
{
    for (int c = 0; c < CASES; c++) {
        const struct Case *at = &cases[c];
        const struct DropLoads loads = {at->loads, 3, 3, u0_v};
        for (int order = 0; order < 2; order++) {
            for (int line = 0; line < 3; line++) {
                const double complex volts =
                    drop_of(at->r, at->x, at->loads, 3, line, order == 1) * at->length_m / 1000;
                const double complex v = voltage(line, order == 1);
                const struct DropTerms terms = to_neutral(at, line, order == 1);
                const double in_step_v = creal(volts * conj(v)) / u0_v;
                ck_assert_double_eq_tol(in_step_v, at->order[order].drop_v[line], 0.006);
                ck_assert_double_eq_tol(u0_v - cabs(v - volts), in_step_v, 0.4);
                ck_assert_double_eq_tol(drop_all_on(&terms, &loads).mv_per_m * at->length_m / 1000, in_step_v, 1e-9);
                ck_assert_double_le(u0_v - cabs(v - volts), in_step_v + 1e-12); /* the part in step is the larger */
            }
        }
    }
}
END_TEST

START_TEST(unlike_power_factors_drop_more_than_twice_the_heaviest_line_s_own_rule)
{
    const struct Case *at = &cases[CASES - 1];
    const double complex volts = drop_of(at->r, at->x, at->loads, 3, 1, false) * at->length_m / 1000;
    const double exact_v = u0_v - cabs(voltage(1, false) - volts);
    ck_assert_double_eq_tol(100 * exact_v / u0_v, 5.69, 0.005);
    /* the program: 4E4B has 2.9 single-phase and 2.5 three-phase for 16 mm2, so 1.45 mohm/m; 13.16 V in step */
    const struct DropLoads loads = {at->loads, 2, 3, u0_v};
    struct DropTerms worst;
    ck_assert(drop_worst(edition_held(), DROP_4E4B, 16, &loads, &worst));
    ck_assert_int_eq(worst.of, DROP_TO_NEUTRAL);
    ck_assert_int_eq(worst.line, 1);
    ck_assert_double_eq(worst.voltage_v, u0_v);
    ck_assert_double_eq_tol(worst.mv_per_m * at->length_m / 1000, 13.16, 0.005);
    struct DropTerms rise;
    ck_assert(drop_rise(edition_held(), DROP_4E4B, 16, &loads, &rise));
    ck_assert_int_eq(rise.line, 2);
    ck_assert_double_eq_tol(rise.mv_per_m * at->length_m / 1000, 8.52, 0.005);
}
END_TEST

/* 70 mm2, 120 m, 100 A at 0.85, 60 A at 0.9 leading, 20 A at 1: 7.59 V in step on L1 by r 0.335 and x 0.075. A leading
 * factor cannot be written; left out it has to be bounded. */
START_TEST(a_leading_load_is_within_the_bound)
{
    const struct LineLoad loads[] = {{100, 0.85, 0}, {60, 0, 1}, {20, 1, 2}};
    struct DropTerms worst;
    ck_assert(drop_worst(edition_held(), DROP_4E4B, 70, &(struct DropLoads){loads, 3, 3, u0_v}, &worst));
    ck_assert_double_ge(worst.mv_per_m * 120 / 1000, 7.59);
}
END_TEST

START_TEST(conductor_takes_the_larger_column)
{
    struct DropFigure one;
    ck_assert(drop_of_conductor(edition_held(), DROP_4E4B, 16, &one)); /* 2.9 / 2 = 1.45, 2.5 / sqrt 3 = 1.443 */
    ck_assert_double_eq_tol(one.r, 1.45, 1e-12);
    ck_assert_double_eq(one.x, 0);
    ck_assert(drop_of_conductor(edition_held(), DROP_4E4B, 70, &one)); /* 0.67 / 2 = 0.335, 0.59 / sqrt 3 = 0.3406 */
    ck_assert_double_eq_tol(one.r, 0.59 / sqrt(3.0), 1e-12);
    ck_assert_double_eq_tol(one.x, 0.15 / 2, 0.0011); /* 0.130 / sqrt 3 = 0.0751 */
    ck_assert(!drop_of_conductor(edition_held(), DROP_4E4B, 17, &one));
}
END_TEST

START_TEST(balanced_and_single_loads_keep_the_printed_columns)
{
    /* 4D4B 10 mm2: 3.8 line to line, 4.4 single-phase. */
    const struct LineLoad balanced = {20, 1, LOAD_ON_EVERY_LINE};
    const struct LineLoad alone = {20, 1, 0};
    struct DropTerms worst;
    ck_assert(drop_worst(edition_held(), DROP_4D4B, 10, &(struct DropLoads){&balanced, 1, 3, u0_v}, &worst));
    ck_assert_double_eq_tol(worst.mv_per_m, 3.8 * 20, 1e-12);
    ck_assert_double_eq_tol(worst.voltage_v, 230 * sqrt(3.0), 1e-9);
    ck_assert(!drop_rise(edition_held(), DROP_4D4B, 10, &(struct DropLoads){&balanced, 1, 3, u0_v}, &worst));
    ck_assert(drop_worst(edition_held(), DROP_4D4B, 10, &(struct DropLoads){&alone, 1, 3, u0_v}, &worst));
    ck_assert_double_eq_tol(worst.mv_per_m, 4.4 * 20, 1e-12);
    ck_assert_double_eq(worst.voltage_v, 230);
    ck_assert(drop_worst(edition_held(), DROP_4D4B, 10, &(struct DropLoads){&alone, 1, 1, u0_v}, &worst));
    ck_assert_double_eq_tol(worst.mv_per_m, 4.4 * 20, 1e-12);
}
END_TEST

/* 50 mm2 of 4E4B, single-phase r 0.99, x 0.155: 10 A at 0.8 and 5 A at 1 are 13 A in step and 6 A behind. */
START_TEST(several_loads_add_as_phasors)
{
    const struct LineLoad loads[] = {{10, 0.8, 0}, {5, 1, 0}};
    struct DropTerms worst;
    ck_assert(drop_worst(edition_held(), DROP_4E4B, 50, &(struct DropLoads){loads, 2, 1, u0_v}, &worst));
    ck_assert_double_eq_tol(worst.mv_per_m, 0.99 * 13 + 0.155 * 6, 1e-12);
    /* Ct 0.9 is on r alone: BS 7671 Appendix 4, 6.2 */
    ck_assert_double_eq_tol(drop_mv_at(&worst, 0.9), 0.9 * 0.99 * 13 + 0.155 * 6, 1e-12);
}
END_TEST

/* 300 mm2, r 0.160, x 0.140, power factor 0.6: Ct 0.8 leaves 0.128 x 0.6 + 0.14 x 0.8 = 0.1888 of 0.208, not 0.1664. */
START_TEST(warmth_bears_on_resistance_alone)
{
    const struct LineLoad load = {1, 0.6, 0};
    const struct LineLoad unknown = {1, 0, 0};
    struct DropTerms worst;
    ck_assert(drop_worst(edition_held(), DROP_4E4B, 300, &(struct DropLoads){&load, 1, 1, u0_v}, &worst));
    ck_assert_double_eq_tol(worst.mv_per_m, 0.208, 1e-12);
    ck_assert_double_eq_tol(drop_mv_at(&worst, 0.8), 0.1888, 1e-12);
    ck_assert(drop_worst(edition_held(), DROP_4E4B, 300, &(struct DropLoads){&unknown, 1, 1, u0_v}, &worst));
    ck_assert_double_eq_tol(drop_mv_at(&worst, 0.8), worst.mv_per_m * hypot(0.128, 0.14) / hypot(0.16, 0.14), 1e-12);
}
END_TEST

static unsigned next_random(unsigned *state)
{
    *state = *state * 1664525U + 1013904223U;
    return *state >> 8;
}

static double random_between(unsigned *state, double low, double high)
{
    return low + (high - low) * (next_random(state) % 10001) / 10000.0;
}

enum { LOADS_MOST = 6, RANDOM_CASES = 300 };

/* Some loads on random lines; `unknown` of the cases leave some power factors out. */
static int random_loads(unsigned *state, bool unknown, struct LineLoad loads[LOADS_MOST])
{
    const int count = 1 + (int)(next_random(state) % LOADS_MOST);
    for (int i = 0; i < count; i++) {
        const int line = (int)(next_random(state) % 4) - 1;
        const bool silent = unknown && next_random(state) % 2 == 0;
        loads[i] = (struct LineLoad){random_between(state, 1, 60), silent ? 0 : random_between(state, 0.3, 1), line};
    }
    return count;
}

static bool on_a_line(const struct LineLoad *loads, int count, int line)
{
    for (int i = 0; i < count; i++) {
        if (loads[i].line == line) {
            return true;
        }
    }
    return false;
}

/* The largest part of its voltage that any line with single-phase loads drops, or any two lines where there are
 * three-phase ones, with exactly the loads of `on` drawing current. */
static double worst_part(const struct DropFigure *one, const struct LineLoad *on, int on_count,
                         const struct LineLoad *all, int all_count)
{
    double worst = 0;
    for (int order = 0; order < 2; order++) {
        const bool reversed = order == 1;
        for (int line = 0; line < 3; line++) {
            const double complex v = voltage(line, reversed);
            const double complex d = drop_of(one->r, one->x, on, on_count, line, reversed);
            if (on_a_line(all, all_count, line)) {
                worst = fmax(worst, creal(d * conj(v)) / u0_v / u0_v);
            }
            const int other = (line + 1) % 3;
            const double complex between = v - voltage(other, reversed);
            const double complex lost = d - drop_of(one->r, one->x, on, on_count, other, reversed);
            if (on_a_line(all, all_count, LOAD_ON_EVERY_LINE)) {
                worst = fmax(worst, creal(lost * conj(between)) / cabs(between) / cabs(between));
            }
        }
    }
    return worst;
}

/* Every way of having some loads on and the others off, by complex numbers. */
static double worst_of_all_ways(const struct DropFigure *one, const struct LineLoad *loads, int count)
{
    double worst = 0;
    for (unsigned ways = 1; ways < 1U << count; ways++) {
        struct LineLoad on[LOADS_MOST];
        int on_count = 0;
        for (int i = 0; i < count; i++) {
            if ((ways >> i & 1U) != 0) {
                on[on_count++] = loads[i];
            }
        }
        worst = fmax(worst, worst_part(one, on, on_count, loads, count));
    }
    return worst;
}

static const double sizes_mm2[] = {1.5, 10, 16, 25, 70, 120, 300};
enum { SIZES = (int)(sizeof sizes_mm2 / sizeof sizes_mm2[0]) };

START_TEST(worst_is_that_of_every_way_of_being_on)
{
    unsigned state = 7;
    int unequal = 0;
    for (int i = 0; i < RANDOM_CASES; i++) {
        struct LineLoad loads[LOADS_MOST];
        const int count = random_loads(&state, false, loads);
        const double size = sizes_mm2[i % SIZES];
        struct DropFigure one;
        struct DropTerms worst;
        ck_assert(drop_of_conductor(edition_held(), DROP_4E4B, size, &one));
        ck_assert(drop_worst(edition_held(), DROP_4E4B, size, &(struct DropLoads){loads, count, 3, u0_v}, &worst));
        if (worst.of != DROP_TO_NEUTRAL) {
            continue;
        }
        unequal++;
        ck_assert_double_eq_tol(worst.mv_per_m / worst.voltage_v, worst_of_all_ways(&one, loads, count), 1e-9);
    }
    ck_assert_int_gt(unequal, RANDOM_CASES / 2);
}
END_TEST

/* A power factor that is not given: none that could be put there, lagging or (by its angle changed) leading, drops
 * more. */
START_TEST(unknown_power_factors_are_bounded)
{
    unsigned state = 11;
    int bounded = 0;
    for (int i = 0; i < RANDOM_CASES; i++) {
        struct LineLoad loads[LOADS_MOST];
        const int count = random_loads(&state, true, loads);
        const double size = sizes_mm2[i % SIZES];
        struct DropFigure one;
        struct DropTerms worst;
        ck_assert(drop_of_conductor(edition_held(), DROP_4E4B, size, &one));
        ck_assert(drop_worst(edition_held(), DROP_4E4B, size, &(struct DropLoads){loads, count, 3, u0_v}, &worst));
        if (worst.unknown_a <= 0 || worst.of != DROP_TO_NEUTRAL) {
            continue;
        }
        bounded++;
        for (int guess = 0; guess < 40; guess++) {
            struct LineLoad guessed[LOADS_MOST];
            for (int j = 0; j < count; j++) {
                guessed[j] = loads[j];
                if (loads[j].power_factor <= 0) {
                    guessed[j].power_factor = random_between(&state, 0.01, 1);
                }
            }
            ck_assert_double_le(worst_part(&one, guessed, count, loads, count),
                                worst.mv_per_m / worst.voltage_v + 1e-12);
        }
    }
    ck_assert_int_gt(bounded, RANDOM_CASES / 4);
}
END_TEST

START_TEST(a_load_more_never_lessens_the_drop)
{
    unsigned state = 13;
    for (int i = 0; i < RANDOM_CASES; i++) {
        struct LineLoad loads[LOADS_MOST];
        const int count = random_loads(&state, i % 3 == 0, loads);
        const double size = sizes_mm2[i % SIZES];
        double before = 0;
        for (int some = 1; some <= count; some++) {
            struct DropTerms worst;
            ck_assert(drop_worst(edition_held(), DROP_4E4B, size, &(struct DropLoads){loads, some, 3, u0_v}, &worst));
            const double part = worst.mv_per_m / worst.voltage_v;
            ck_assert_msg(part >= before * (1 - 1e-12), "case %d, %d loads: %g after %g", i, some, part, before);
            before = part;
        }
    }
}
END_TEST

/* ---- the neutral's current; BS 7671 523.6, 524.2 ---- */

static struct LineCurrents currents_of(const struct LineLoad *loads, int count)
{
    struct LineCurrents currents = {.lines = 3};
    for (int i = 0; i < count; i++) {
        for (int line = 0; line < 3; line++) {
            const bool on = loads[i].line == line || loads[i].line == LOAD_ON_EVERY_LINE;
            currents.line_a[line] += on ? loads[i].current_a : 0;
        }
    }
    return currents;
}

static double most_in_neutral(const struct LineLoad *loads, int count)
{
    const struct LineCurrents currents = currents_of(loads, count);
    return neutral_of(&(struct DropLoads){loads, count, 3, u0_v}, &currents, 0).most_a;
}

static double complex in_neutral(const struct LineLoad *loads, int count, bool reversed)
{
    double complex sum = 0;
    for (int line = 0; line < 3; line++) {
        sum += in_line(loads, count, line, reversed);
    }
    return sum;
}

START_TEST(neutral_of_the_worked_examples)
{
    /* A: 40 and 20 A leave 34.64 A, but with the 20 A off the whole 40 A come back. */
    ck_assert_double_eq_tol(cabs(in_neutral(cases[0].loads, 3, false)), 34.64, 0.005);
    ck_assert_double_eq_tol(most_in_neutral(cases[0].loads, 3), 40, 1e-9);
    /* E: 50 A at 0.7 lag at -45.6 degrees, 50 A at -120: sqrt(10.0^2 + 79.0^2) */
    ck_assert_double_eq_tol(most_in_neutral(cases[CASES - 1].loads, 2), 79.64, 0.005);
    for (int c = 0; c < CASES; c++) {
        for (int order = 0; order < 2; order++) {
            ck_assert_double_eq_tol(cabs(in_neutral(cases[c].loads, 3, order == 1)), cases[c].order[order].neutral_a,
                                    0.006);
        }
    }
    /* three-phase loads leave nothing; what is not known adds as it is: example C with the leading load unknown */
    const struct LineLoad balanced = {30, 0.8, LOAD_ON_EVERY_LINE};
    ck_assert_double_eq_tol(most_in_neutral(&balanced, 1), 0, 1e-12);
    const struct LineLoad leading[] = {{100, 0.85, 0}, {60, 0, 1}, {20, 1, 2}};
    ck_assert_double_ge(most_in_neutral(leading, 3), 118.6);
    /* 20 % third harmonic of lines that add up to 100 A beside 79.64 A: sqrt(79.64^2 + 20^2) */
    const struct LineCurrents currents = currents_of(cases[CASES - 1].loads, 2);
    const struct DropLoads loads = {cases[CASES - 1].loads, 2, 3, u0_v};
    ck_assert_double_eq_tol(neutral_of(&loads, &currents, 20).most_a, 82.11, 0.005);
}
END_TEST

START_TEST(neutral_is_that_of_every_way_of_being_on)
{
    unsigned state = 17;
    for (int i = 0; i < RANDOM_CASES; i++) {
        struct LineLoad loads[LOADS_MOST];
        const int count = random_loads(&state, i % 3 == 0, loads);
        double most_a = 0;
        double unknown_a = 0;
        for (unsigned ways = 1; ways < 1U << count; ways++) {
            struct LineLoad on[LOADS_MOST];
            int on_count = 0;
            unknown_a = 0;
            for (int j = 0; j < count; j++) {
                unknown_a += loads[j].power_factor <= 0 && loads[j].line >= 0 ? loads[j].current_a : 0;
                if ((ways >> j & 1U) != 0 && loads[j].power_factor > 0) {
                    on[on_count++] = loads[j];
                }
            }
            most_a = fmax(most_a, fmax(cabs(in_neutral(on, on_count, false)), cabs(in_neutral(on, on_count, true))));
        }
        ck_assert_double_eq_tol(most_in_neutral(loads, count), most_a + unknown_a, 1e-4);
    }
}
END_TEST

/* "Handbook of Electrical Engineering for practitioners in the oil, gas and petrochemical industry", 2003, 9.4.3 f):
 * 415 V motor, 460.74 A while starting at 0.45, 0.296 + j0.0268 ohm: 30.216 %. "Electrical Installation Guide", chapter
 * G (from memory): 35 mm2, 50 m, 500 A at 0.52 V/A/km: 13 V of 400. The figures stand in for those of the tables. */
START_TEST(a_motor_starts)
{
    struct Run surveyed = {.use = USE_MOTOR, .load_count = 1};
    struct RunDesign run = {
        .edition = edition_held(), .run = &surveyed, .phases = 3, .start_a = 460.74, .electrical_length_m = 1};
    struct Trial trial = {.drop = {.of = DROP_OF_BALANCED, .voltage_v = 415}};
    trial.drop.figure = (struct DropFigure){.r = 296 * sqrt(3.0), .x = 26.8 * sqrt(3.0), .z = 298 * sqrt(3.0)};
    surveyed.start_power_factor = (struct Quantity){.value = 0.45, .given = true};
    ck_assert_double_eq_tol(starting_of(&run, &trial).drop_percent, 30.216, 0.003);
    run.start_a = 500;
    run.electrical_length_m = 50;
    trial.drop = (struct DropTerms){
        .of = DROP_OF_BALANCED, .voltage_v = 400, .figure = {.r = 0.52 / 0.45, .x = 0, .z = 0.52 / 0.45}};
    ck_assert_double_eq_tol(starting_of(&run, &trial).drop_percent, 100 * 13 / 400.0, 1e-9);
    /* not given: 0.4 where resistance drops most, 0.3 where reactance does; at most what z gives */
    surveyed.start_power_factor.given = false;
    ck_assert_double_eq(starting_of(&run, &trial).power_factor, 0.4);
    trial.drop.figure = (struct DropFigure){.r = 0.1, .x = 0.5, .z = 0.51};
    ck_assert_double_eq(starting_of(&run, &trial).power_factor, 0.3);
    ck_assert_double_eq_tol(starting_of(&run, &trial).most_percent, 0.51 * 500 * 50 / 1000 / 400 * 100, 1e-9);
    /* all else runs on at its own drop; of unequal lines the motor's current may flow out and back */
    surveyed.load_count = 2;
    surveyed.start_current_a = (struct Quantity){.value = 200, .given = true};
    trial.drop.of = DROP_TO_NEUTRAL;
    trial.drop_percent = 2;
    ck_assert_double_eq_tol(starting_of(&run, &trial).most_percent, 2 + 2 * 0.51 * 200 * 50 / 1000 / 400 * 100, 1e-9);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("unbalanced");
    TCase *tests = tcase_create("unequal loads on three lines");
    tcase_add_test(tests, worked_examples_in_both_orders);
    tcase_add_test(tests, unlike_power_factors_drop_more_than_twice_the_heaviest_line_s_own_rule);
    tcase_add_test(tests, a_leading_load_is_within_the_bound);
    tcase_add_test(tests, conductor_takes_the_larger_column);
    tcase_add_test(tests, balanced_and_single_loads_keep_the_printed_columns);
    tcase_add_test(tests, several_loads_add_as_phasors);
    tcase_add_test(tests, warmth_bears_on_resistance_alone);
    tcase_add_test(tests, worst_is_that_of_every_way_of_being_on);
    tcase_add_test(tests, unknown_power_factors_are_bounded);
    tcase_add_test(tests, a_load_more_never_lessens_the_drop);
    tcase_add_test(tests, neutral_of_the_worked_examples);
    tcase_add_test(tests, neutral_is_that_of_every_way_of_being_on);
    tcase_add_test(tests, a_motor_starts);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
