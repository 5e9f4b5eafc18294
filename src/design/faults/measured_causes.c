/* What may have made a resistance other than expected: each cause is tried on the figures, and named where it fits
 * them all. Which there are: the patterns of testing practice. */
#include "measured_private.h"

#include <math.h>

static bool off(const struct Measured *reading)
{
    return reading->given && reading->expected > 0 && (reading->fit == FIT_DIFFERS || reading->fit == FIT_BEYOND);
}

static void name(struct Measured *reading, enum Cause cause, const struct Say *said)
{
    reading->causes |= 1U << cause;
    reading->cause_list[reading->cause_count++] = said;
}

/* Where each stretch was measured as laid the length is not in question. */
static bool all_laid(const struct RunDesign *run)
{
    for (int i = 0; i < run->run->along_count; i++) {
        if (!run->segments[run->run->along[i]].as_laid.length_m.given) {
            return false;
        }
    }
    return run->run->along_count > 0;
}

/* The other of R1 + R2 and R2. */
static const struct Measured *other_of(const struct MeasuredCauses *causes, const struct Measured *reading)
{
    return &causes->list[reading->what == READING_R2 ? READING_R1R2 : READING_R2];
}

static double extra_ohm(const struct MeasuredCauses *causes)
{
    return measured_leads_ohm(&causes->read->meter);
}

/* ---- length and size ---- */

/* `value` and `expected` are of the run alone, without the loop before it. */
static void try_length(const struct MeasuredCauses *causes, struct Measured *reading, double value, double expected)
{
    const struct Measured *other = other_of(causes, reading);
    const double ratio = expected > 0 ? value / expected : 0;
    const bool agrees = reading->what == READING_ZS || !other->given ||
                        measured_may_be(other, ratio * other->expected, extra_ohm(causes));
    if (ratio >= reading_practice()->length_shortest && ratio <= reading_practice()->length_longest && agrees &&
        !all_laid(causes->run)) {
        const double length_m = causes->run->electrical_length_m;
        name(reading, CAUSE_LENGTH,
             say(causes->arena, SAY_CAUSE_LENGTH, say_digits(ratio * length_m, 3, UNIT_M),
                 say_digits(length_m, 3, UNIT_M)));
    }
}

/* What a reading would be with another size. */
static bool of_size(const struct MeasuredCauses *causes, double size_mm2, struct ReadingsAt *out)
{
    const struct Readings made = readings_of(causes->arena, causes->run, size_mm2);
    *out = readings_at(&made, causes->degc);
    return out->r1r2_ohm > 0;
}

static bool size_fits(const struct MeasuredCauses *causes, const struct Measured *reading,
                      const struct ReadingsAt *with, double before_ohm)
{
    const struct Measured *other = other_of(causes, reading);
    if (reading->what == READING_ZS) {
        return measured_may_be(reading, before_ohm + with->r1r2_ohm, 0);
    }
    const bool is_r2 = reading->what == READING_R2;
    return measured_may_be(reading, is_r2 ? with->r2_ohm : with->r1r2_ohm, extra_ohm(causes)) &&
           (!other->given || measured_may_be(other, is_r2 ? with->r1r2_ohm : with->r2_ohm, extra_ohm(causes)));
}

/* The one that comes nearest, of those that fit. */
static void try_size(const struct MeasuredCauses *causes, struct Measured *reading, double before_ohm)
{
    const double *sizes = NULL;
    const int count = capacity_sizes(causes->run->edition,
                                     cable_capacity(causes->run->kind, causes->run->terms.conductor_degc), &sizes);
    double best_mm2 = 0, best_off = INFINITY;
    for (int i = 0; i < count; i++) {
        struct ReadingsAt with;
        if (fabs(sizes[i] - causes->planned->size_mm2) < 1e-9 || !of_size(causes, sizes[i], &with) ||
            !size_fits(causes, reading, &with, before_ohm)) {
            continue;
        }
        const double there = reading->what == READING_R2 ? with.r2_ohm : with.r1r2_ohm;
        const double away = fabs(log((reading->value - (reading->what == READING_ZS ? before_ohm : 0)) / there));
        if (away < best_off) {
            best_off = away;
            best_mm2 = sizes[i];
        }
    }
    if (best_mm2 > 0) {
        name(reading, CAUSE_SIZE,
             say(causes->arena, SAY_CAUSE_SIZE, say_digits(best_mm2, 4, UNIT_MM2),
                 say_digits(causes->planned->size_mm2, 4, UNIT_MM2)));
    }
}

/* ---- what comes beside and on top ---- */

/* A path beside the protective conductor takes nothing from the line's part. */
static void try_parallel(const struct MeasuredCauses *causes, struct Measured *reading)
{
    const struct ReadingsAt at = readings_at(&causes->planned->readings, causes->degc);
    const struct Measured *other = other_of(causes, reading);
    const double least = reading->what == READING_R2 ? 0 : at.r1_ohm;
    const double taken = reading->expected - reading->value, taken_there = other->expected - other->value;
    const double unlike_from = reading_practice()->unlike_from;
    const double doubt = reading->error + other->error + unlike_from * reading->expected;
    const bool agrees = reading->what == READING_ZS || !other->given || fabs(taken - taken_there) <= doubt;
    if (taken > 0 && agrees && reading->value + reading->error >= (1 - unlike_from) * least) {
        name(reading, CAUSE_PARALLEL, say(causes->arena, SAY_CAUSE_PARALLEL));
    }
}

static void try_joint(const struct MeasuredCauses *causes, struct Measured *reading)
{
    const struct Measured *other = other_of(causes, reading);
    const double added = reading->value - reading->expected;
    const double there = other->value - other->expected;
    const bool of_r2 = reading->what == READING_R2 && other->given;
    /* what R2 has on top R1 + R2 has too */
    const bool agrees =
        !of_r2 || there + other->error + reading->error + reading_practice()->unlike_from * other->expected >= added;
    if (added + reading->error >= reading_practice()->joint_least_ohm && added > 0 &&
        added - reading->error <= reading_practice()->joint_most_ohm && agrees) {
        name(reading, CAUSE_JOINT, say(causes->arena, SAY_CAUSE_JOINT, say_digits(added, 2, UNIT_OHM)));
    }
}

/* The line's core measured in place of the protective one: told where the two are unlike. */
static void try_swapped(const struct MeasuredCauses *causes, struct Measured *reading)
{
    const struct ReadingsAt at = readings_at(&causes->planned->readings, causes->degc);
    const bool unlike = fabs(at.r1_ohm - at.r2_ohm) > reading_practice()->unlike_from * fmax(at.r1_ohm, at.r2_ohm);
    const double then = reading->what == READING_R2 ? at.r1_ohm : 2 * at.r1_ohm;
    if (unlike && measured_may_be(reading, then, extra_ohm(causes))) {
        name(reading, CAUSE_SWAPPED, say(causes->arena, SAY_CAUSE_SWAPPED));
    }
}

/* ---- the loop at the far end ---- */

static void try_supply(const struct MeasuredCauses *causes, struct Measured *reading)
{
    const struct Measured *ze = &causes->list[READING_ZE], *r1r2 = &causes->list[READING_R1R2];
    const double run_ohm = reading->expected - causes->planned->readings.ze_ohm;
    const double then_ohm = ze->given ? ze->value : reading->value - run_ohm;
    const bool fits = ze->given ? fabs(ze->value - ze->expected) > ze->error &&
                                      measured_may_be(reading, ze->value + run_ohm, ze->error)
                                : r1r2->given && !off(r1r2);
    if (fits && then_ohm > 0) {
        name(reading, CAUSE_SUPPLY,
             say(causes->arena, SAY_CAUSE_SUPPLY, say_digits(then_ohm, 3, UNIT_OHM),
                 say_digits(causes->planned->readings.ze_ohm, 3, UNIT_OHM)));
    }
}

static void find_of_loop(const struct MeasuredCauses *causes, struct Measured *reading)
{
    const struct Measured *ze = &causes->list[READING_ZE], *r1r2 = &causes->list[READING_R1R2];
    const double planned_ohm = causes->planned->readings.ze_ohm;
    const double before_ohm = ze->given ? ze->value : planned_ohm;
    try_supply(causes, reading);
    if (!r1r2->given || (r1r2->causes >> CAUSE_LENGTH & 1U) != 0) {
        try_length(causes, reading, reading->value - before_ohm, reading->expected - planned_ohm);
    }
    if (!r1r2->given || (r1r2->causes >> CAUSE_SIZE & 1U) != 0) {
        try_size(causes, reading, before_ohm);
    }
    try_parallel(causes, reading);
    try_joint(causes, reading);
}

static void find_of_run(const struct MeasuredCauses *causes, struct Measured *reading)
{
    try_length(causes, reading, reading->value, reading->expected);
    try_size(causes, reading, 0);
    try_parallel(causes, reading);
    try_joint(causes, reading);
    try_swapped(causes, reading);
}

void measured_find_causes(const struct MeasuredCauses *causes)
{
    static const enum Reading readings[] = {READING_R1R2, READING_R2, READING_ZS};
    for (int i = 0; i < 3; i++) {
        struct Measured *reading = &causes->list[readings[i]];
        if (!off(reading)) {
            continue;
        }
        if (reading->what == READING_ZS) {
            find_of_loop(causes, reading);
        } else {
            find_of_run(causes, reading);
        }
        if (reading->cause_count == 0) {
            reading->fit = FIT_FAR_OFF;
            reading->text = say(causes->arena, SAY_READING_FAR_OFF);
        }
    }
}
