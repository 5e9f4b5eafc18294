/* Readings held against the plan: the figures against ones worked by hand and printed elsewhere; faults planted by lot,
 * found again or not; and that what is not as planned never fits. */
#include "run_suite.h"

#include "library/library_private.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { TEXT_MOST = 4096, PLANTED = 60 };

/* ---- routes ---- */

struct Built {
    double length_m, size_mm2;
    const char *cpc;  /* "core" or "armour" */
    const char *type; /* of cable */
    double degc;
    double percent, digits_ohm;
    double r1r2_ohm, r2_ohm, zs_ohm, ze_ohm; /* as read; under 0: not */
    const char *more;                        /* keys more of the readings */
    const char *device;                      /* NULL: an RCBO B 32 A, 30 mA, 6 kA */
};

static void put(char *text, size_t *at, const char *key, double ohm)
{
    if (ohm >= 0) {
        *at += (size_t)snprintf(text + *at, TEXT_MOST - *at, "    %s: %.4f ohm\n", key, ohm);
    }
}

/* TN-S, Ze 0.35 ohm, MCB B 32 A: the loop may be 230 x 0.95 / 160 = 1.36 ohm, read cold 1.09 ohm. */
static struct Wend *planned(const struct Built *built)
{
    char text[TEXT_MOST];
    size_t at = (size_t)snprintf(
        text, sizeof text,
        "wend: 1\njob: {title: Byre}\nsupply: {system: TN-S, loop-impedance: 0.35 ohm, fault-current: 1.2 kA}\n"
        "earthing: {far-end: export, extraneous-parts: no}\nruns:\n  byre:\n    load: {current: 20 A}\n"
        "    device: {%s}\n"
        "    cable: {type: %s, cores: 3, cpc: %s, size: %g mm2}\n    start: {tail: 0 m}\n    finish: {tail: 0 m}\n"
        "segments:\n  - {name: wall, way: wall, length: %.4f m}\nreadings:\n  byre:\n"
        "    cable-temperature: %.2f degC\n    meter: {percent: %.3f %%, ohm: %.4f ohm, leads-nulled: yes}\n%s",
        built->device != NULL ? built->device
                              : "kind: RCBO, curve: B, rating: 32 A, residual: 30 mA, breaking-capacity: 6 kA",
        built->type, built->cpc, built->size_mm2, built->length_m, built->degc, built->percent, built->digits_ohm,
        built->more);
    put(text, &at, "r1r2", built->r1r2_ohm);
    put(text, &at, "r2", built->r2_ohm);
    put(text, &at, "zs", built->zs_ohm);
    put(text, &at, "ze", built->ze_ohm);
    struct Wend *wend = wend_plan("byre", text, strlen(text));
    ck_assert_msg(wend_status(wend) <= WEND_CHECK_FAILS, "%s\n%s",
                  wend_diagnostics_printed(wend_diagnostics(wend), "f"), text);
    return wend;
}

static const struct Measured *reading_of(const struct Wend *wend, enum Reading what)
{
    const struct MeasuredRun *run = &wend_result(wend)->runs[0].measured;
    for (int i = 0; i < run->count; i++) {
        if (run->list[i].what == what) {
            return &run->list[i];
        }
    }
    ck_abort_msg("no reading %d", (int)what);
    return NULL;
}

static struct Built good_one(void)
{
    return (struct Built){.length_m = 40,
                          .size_mm2 = 6,
                          .cpc = "core",
                          .type = "BS5467",
                          .degc = 20,
                          .percent = 2,
                          .digits_ohm = 0.01,
                          .r1r2_ohm = -1,
                          .r2_ohm = -1,
                          .zs_ohm = -1,
                          .ze_ohm = -1,
                          .more = ""};
}

/* ---- against figures of others ---- */

/* R1 + R2 in milliohm per metre at 20 degC as testing guides print it for copper pairs of one size (seen in one), and
 * what the guides multiply it by at other temperatures of the cable: 0.94 at 5 degC ... 1.04 at 30 degC. */
static const struct {
    double size_mm2, mohm_per_m, degc, factor;
} published[] = {
    {4, 9.22, 20, 1},    {6, 6.16, 20, 1},    {10, 3.66, 20, 1},    {16, 2.30, 20, 1},
    {6, 6.16, 5, 0.94},  {6, 6.16, 10, 0.96}, {6, 6.16, 15, 0.98},  {6, 6.16, 25, 1.02},
    {6, 6.16, 30, 1.04}, {10, 3.66, 5, 0.94}, {16, 2.30, 30, 1.04},
};
enum { PUBLISHED = (int)(sizeof published / sizeof published[0]) };

START_TEST(expects_what_is_printed)
{
    struct Built built = good_one();
    built.size_mm2 = published[_i].size_mm2;
    built.degc = published[_i].degc;
    built.r1r2_ohm = 0.1;
    struct Wend *wend = planned(&built);
    const double ohm = published[_i].mohm_per_m * 40 / 1000 * published[_i].factor;
    ck_assert_msg(fabs(reading_of(wend, READING_R1R2)->expected - ohm) < 0.0015 * ohm, "%g", ohm);
    wend_free(wend);
}
END_TEST

/* Flat cable with its smaller protective conductor: mohm/m at 20 degC as Guide to the Wiring Regulations, 17th ed.,
 * App. 4 prints it (seen), and what the 16th edition's guide multiplies a reading at other temperatures by to have it
 * at 20 degC (seen; two places). The two were printed apart, and neither is the program's coefficient. */
static const struct {
    double size_mm2, mohm_per_m;
} flat_pairs[] = {{1.5, 30.2}, {2.5, 19.51}, {4, 16.71}, {6, 10.49}};
static const struct {
    double degc, to_20;
} corrections[] = {{5, 1.06}, {10, 1.04}, {15, 1.02}, {20, 1.00}, {25, 0.98}};
enum {
    FLAT_PAIRS = (int)(sizeof flat_pairs / sizeof *flat_pairs),
    CORRECTIONS = sizeof corrections / sizeof *corrections
};

START_TEST(expects_of_flat_cable_what_is_printed)
{
    for (size_t t = 0; t < CORRECTIONS; t++) {
        struct Built built = good_one();
        built.type = "BS6004-flat";
        built.size_mm2 = flat_pairs[_i].size_mm2;
        built.degc = corrections[t].degc;
        built.r1r2_ohm = 0.1;
        struct Wend *wend = planned(&built);
        const double at_20 = reading_of(wend, READING_R1R2)->expected * corrections[t].to_20;
        const double ohm = flat_pairs[_i].mohm_per_m * 40 / 1000;
        ck_assert_msg(fabs(at_20 - ohm) < 0.006 * ohm, "%g mm2 at %g degC: %g, not %g", built.size_mm2, built.degc,
                      at_20, ohm);
        wend_free(wend);
    }
}
END_TEST

/* Zs = Ze + (R1 + R2), and what parts from it, as IET Guidance Note 3 tells (from memory), on 20 m of flat
 * 2.5/1.5 mm2 by the figures of Guide to the Wiring Regulations, 17th ed., App. 4 (seen): R1 + R2 19.51 mohm/m, of
 * 4/1.5 mm2 16.71; of the cores alone 7.41 and 12.10 (IEC 60228). Ze is 0.35 ohm. */
static const struct {
    const char *of;
    double r1r2_ohm, r2_ohm, zs_ohm; /* under 0: not read */
    enum Reading what;
    enum Fit fit;
    int cause; /* CAUSES: none may be named */
} told[] = {
    {"the sum", 0.39, 0.24, 0.74, READING_ZS, FIT_FITS, CAUSES},
    {"a path beside the protective conductor lowers the loop", 0.39, -1, 0.58, READING_ZS, FIT_DIFFERS, CAUSE_PARALLEL},
    {"and with it joined R1 + R2 too, never under R1", 0.25, -1, -1, READING_R1R2, FIT_DIFFERS, CAUSE_PARALLEL},
    {"20 m of 4/1.5 mm2: 0.334 ohm", 0.334, 0.242, -1, READING_R1R2, FIT_DIFFERS, CAUSE_SIZE},
    {"the line's core taken for the protective one: 0.148 ohm", 0.39, 0.148, -1, READING_R2, FIT_DIFFERS,
     CAUSE_SWAPPED},
    {"32 m where 20 m were planned: 0.624 ohm", 0.624, 0.387, -1, READING_R1R2, FIT_DIFFERS, CAUSE_LENGTH},
    {"a loose terminal of 0.3 ohm", 0.69, 0.24, -1, READING_R1R2, FIT_DIFFERS, CAUSE_JOINT},
};
enum { TOLD = (int)(sizeof told / sizeof told[0]) };

START_TEST(parts_from_the_sum_as_guides_tell)
{
    struct Built built = good_one();
    built.type = "BS6004-flat";
    built.size_mm2 = 2.5;
    built.length_m = 20;
    built.device = "kind: RCBO, curve: B, rating: 20 A, residual: 30 mA, breaking-capacity: 6 kA";
    built.r1r2_ohm = told[_i].r1r2_ohm;
    built.r2_ohm = told[_i].r2_ohm;
    built.zs_ohm = told[_i].zs_ohm;
    struct Wend *wend = planned(&built);
    const struct Measured *reading = reading_of(wend, told[_i].what);
    ck_assert_msg(reading->fit == told[_i].fit, "%s: %d, expected %g", told[_i].of, (int)reading->fit,
                  reading->expected);
    ck_assert_msg(told[_i].cause == CAUSES ? reading->causes == 0 : (reading->causes >> told[_i].cause & 1U) != 0,
                  "%s: causes %x", told[_i].of, reading->causes);
    wend_free(wend);
}
END_TEST

/* Steel rises by 0.0045 per kelvin: 40 m of 6 mm2, its armour 4.6 ohm/km or whatever the plan has at 20 degC. */
START_TEST(armour_and_copper_rise_apart)
{
    struct Built built = good_one();
    built.cpc = "armour";
    built.r2_ohm = 0.1;
    struct Wend *cold = planned(&built);
    built.degc = 5;
    struct Wend *colder = planned(&built);
    const double at_20 = reading_of(cold, READING_R2)->expected, at_5 = reading_of(colder, READING_R2)->expected;
    ck_assert_double_eq_tol(at_5 / at_20, 1 - 15 * 0.0045, 1e-9);
    ck_assert_double_eq_tol(at_20, wend_result(cold)->runs[0].readings.r2_20_ohm, 1e-12);
    wend_free(cold);
    wend_free(colder);
}
END_TEST

/* ---- what is thought of a reading, by hand: 40 m of 6 mm2 at 20 degC, R1 + R2 0.2464 ohm, Zs 0.5964 ohm ---- */

static const struct {
    const char *keys;
    enum Reading what;
    enum Fit fit;
} judged[] = {
    /* a tenth is 0.2710; 0.25 x 1.02 + 0.01 = 0.265 */
    {"    r1r2: 0.25 ohm\n", READING_R1R2, FIT_FITS},
    /* 0.262 x 1.02 + 0.01 = 0.27724: over it within the meter's error */
    {"    r1r2: 0.262 ohm\n", READING_R1R2, FIT_OPEN},
    {"    r1r2: 0.275 ohm\n", READING_R1R2, FIT_DIFFERS},
    /* a tenth under is 0.2218; 0.215 x 1.02 + 0.01 = 0.2293 reaches it */
    {"    r1r2: 0.215 ohm\n", READING_R1R2, FIT_OPEN},
    {"    r1r2: 0.2 ohm\n", READING_R1R2, FIT_DIFFERS},
    {"    r1r2: 0 ohm\n", READING_R1R2, FIT_FAR_OFF},
    {"    r1r2: 9 ohm\n", READING_R1R2, FIT_FAR_OFF},
    /* Zs at most 0.8 x 1.365 = 1.09 */
    {"    zs: 0.6 ohm\n", READING_ZS, FIT_FITS},
    {"    zs: 1.05 ohm\n", READING_ZS, FIT_DIFFERS},
    {"    zs: 1.07 ohm\n", READING_ZS, FIT_OPEN}, /* 1.1014 with the error */
    {"    zs: 1.10 ohm\n", READING_ZS, FIT_BEYOND},
    {"    insulation: 1.01 Mohm\n", READING_INSULATION, FIT_OPEN}, /* 0.9898 */
    {"    insulation: 0.99 Mohm\n", READING_INSULATION, FIT_BEYOND},
    {"    insulation: 99 Mohm\n", READING_INSULATION, FIT_DIFFERS},
    {"    insulation: 100 Mohm\n", READING_INSULATION, FIT_FITS},
    {"    polarity: right\n", READING_POLARITY, FIT_FITS},
    {"    polarity: wrong\n", READING_POLARITY, FIT_BEYOND},
    /* EN 61008-1: 300 ms, at five times 40 ms */
    {"    trip-time: 290 ms\n", READING_TRIP, FIT_FITS},
    {"    trip-time: 296 ms\n", READING_TRIP, FIT_OPEN},
    {"    trip-time: 301 ms\n", READING_TRIP, FIT_BEYOND},
    {"    trip-time-5x: 39 ms\n", READING_TRIP_5, FIT_FITS},
    {"    trip-time-5x: 41 ms\n", READING_TRIP_5, FIT_BEYOND},
    /* 230 V / 1.1 kA = 0.2091 ohm, less 0.0142: 1.18 kA */
    {"    fault-current: 1.1 kA\n", READING_FAULT, FIT_FITS},
    {"    fault-current: 1.3 kA\n", READING_FAULT, FIT_DIFFERS},
    {"    fault-current: 5 kA\n", READING_FAULT, FIT_OPEN},
    {"    fault-current: 6.1 kA\n", READING_FAULT, FIT_BEYOND},
    {"    ze: 0.35 ohm\n", READING_ZE, FIT_FITS},
    {"    ze: 0.36 ohm\n", READING_ZE, FIT_OPEN},
    {"    ze: 0.4 ohm\n", READING_ZE, FIT_DIFFERS},
    {"    ze: 1.2 ohm\n", READING_ZE, FIT_BEYOND},
    /* 230 V / (0.1 x 1.02 + 0.01) = 2054 A that Ze lets flow, less a tenth 1848 A; 1.05 kA is 1.13 kA at most */
    {"    ze: 0.1 ohm\n    fault-current: 1.05 kA\n", READING_FAULT, FIT_OPEN},
    {"    ze: 0 ohm\n    fault-current: 1.05 kA\n", READING_FAULT, FIT_OPEN},
    {"    ze: 0.35 ohm\n    fault-current: 0.3 kA\n", READING_FAULT, FIT_OPEN},
    {"    ze: 0.35 ohm\n    fault-current: 0.6 kA\n", READING_FAULT, FIT_FITS},
    {"    r1r2: 0.25 ohm\n", READING_ZS, FIT_MISSING},
};
enum { JUDGED = (int)(sizeof judged / sizeof judged[0]) };

START_TEST(is_judged_as_by_hand)
{
    struct Built built = good_one();
    built.more = judged[_i].keys;
    struct Wend *wend = planned(&built);
    const struct Measured *reading = reading_of(wend, judged[_i].what);
    ck_assert_msg(reading->fit == judged[_i].fit, "%s: %d, not %d; expected %g, limit %g, error %g", judged[_i].keys,
                  (int)reading->fit, (int)judged[_i].fit, reading->expected, reading->limit, reading->error);
    /* what is due is told before it is taken */
    ck_assert(reading->what != READING_ZS || fabs(reading->limit - 1.09) < 1e-9);
    /* what is there of it decides, and what is missing leaves it open at best */
    ck_assert_int_eq(wend_readings_verdict(wend) == WEND_FAIL, judged[_i].fit <= FIT_BEYOND);
    ck_assert_int_ne(wend_readings_verdict(wend), WEND_PASS);
    wend_free(wend);
}
END_TEST

/* EN 61008-1: a delayed one opens in 130 to 500 ms, at five times its current in 50 to 150 ms; the meter is 2 % out at
 * most. What is not known of the device leaves its reading open, whatever it says. */
static const char delayed[] =
    "kind: RCBO, curve: B, rating: 32 A, residual: 100 mA, time-delayed: yes, breaking-capacity: 6 kA";
static const char plain[] = "kind: MCB, curve: B, rating: 32 A";
static const char no_figure[] = "kind: BS1361, rating: 30 A";
static const struct {
    const char *device, *keys;
    enum Reading what;
    enum Fit fit;
} of_device[] = {
    {delayed, "    trip-time: 129 ms\n", READING_TRIP, FIT_BEYOND},
    {delayed, "    trip-time: 131 ms\n", READING_TRIP, FIT_OPEN}, /* 128.4 */
    {delayed, "    trip-time: 133 ms\n", READING_TRIP, FIT_FITS}, /* 130.3 */
    {delayed, "    trip-time: 490 ms\n", READING_TRIP, FIT_FITS}, /* 499.8 */
    {delayed, "    trip-time: 491 ms\n", READING_TRIP, FIT_OPEN}, /* 500.8 */
    {delayed, "    trip-time: 501 ms\n", READING_TRIP, FIT_BEYOND},
    {delayed, "    trip-time-5x: 49 ms\n", READING_TRIP_5, FIT_BEYOND},
    {delayed, "    trip-time-5x: 51 ms\n", READING_TRIP_5, FIT_OPEN}, /* 49.98 */
    {delayed, "    trip-time-5x: 52 ms\n", READING_TRIP_5, FIT_FITS},
    {delayed, "    trip-time-5x: 147 ms\n", READING_TRIP_5, FIT_FITS},
    {delayed, "    trip-time-5x: 148 ms\n", READING_TRIP_5, FIT_OPEN}, /* 150.96 */
    {delayed, "    trip-time-5x: 151 ms\n", READING_TRIP_5, FIT_BEYOND},
    {plain, "    fault-current: 0.9 kA\n", READING_FAULT, FIT_OPEN},
    {no_figure, "    zs: 0.6 ohm\n", READING_ZS, FIT_OPEN}, /* no current that opens it in 5 s is held */
    {no_figure, "    ze: 0.3 ohm\n", READING_ZE, FIT_OPEN},
};
enum { OF_DEVICE = (int)(sizeof of_device / sizeof of_device[0]) };

START_TEST(is_judged_by_what_is_known_of_the_device)
{
    struct Built built = good_one();
    built.device = of_device[_i].device;
    built.more = of_device[_i].keys;
    struct Wend *wend = planned(&built);
    const struct Measured *reading = reading_of(wend, of_device[_i].what);
    ck_assert_msg(reading->fit == of_device[_i].fit, "%s: %d, not %d; limit %g, error %g", of_device[_i].keys,
                  (int)reading->fit, (int)of_device[_i].fit, reading->limit, reading->error);
    ck_assert_int_ne(wend_readings_verdict(wend), WEND_PASS);
    wend_free(wend);
}
END_TEST

static const char whole[] =
    "    ze: 0.33 ohm\n    fault-current: 0.9 kA\n    r1r2: 0.25 ohm\n    insulation: 200 Mohm\n"
    "    polarity: right\n    zs: 0.59 ohm\n    trip-time: 28 ms\n";

START_TEST(passes_with_all_that_is_due)
{
    struct Built built = good_one();
    built.more = whole;
    struct Wend *wend = planned(&built);
    ck_assert_int_eq(wend_readings_verdict(wend), WEND_PASS);
    wend_free(wend);
    built.length_m = 400; /* no plan that fails is put right by a meter */
    wend = planned(&built);
    ck_assert_int_eq(wend_verdict(wend), WEND_FAIL);
    ck_assert_int_eq(wend_readings_verdict(wend), WEND_FAIL);
    wend_free(wend);
}
END_TEST

/* Without a word on the meter 30 % counts: 0.25 may be 0.325. Without the temperature 0.2464 x 0.96 ... x 1.04. */
START_TEST(what_is_not_known_counts_against_it)
{
    static const char head[] = "wend: 1\njob: {title: Byre}\nsupply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
                               "runs:\n  byre:\n    load: {current: 20 A}\n"
                               "    device: {kind: MCB, rating: 32 A}\n"
                               "    cable: {type: BS5467, cores: 3, size: 6 mm2}\n    start: {tail: 0 m}\n"
                               "    finish: {tail: 0 m}\nsegments:\n  - {name: wall, way: wall, length: 40 m}\n"
                               "readings:\n  byre:\n    r1r2: %s ohm\n    meter: {leads-nulled: yes%s}\n%s";
    static const struct {
        const char *ohm, *meter, *degc;
        enum Fit fit;
    } rows[] = {
        {"0.25", "", "    cable-temperature: 20 degC\n", FIT_OPEN},
        {"0.25", ", percent: 2 %", "    cable-temperature: 20 degC\n", FIT_FITS},
        {"0.245", ", percent: 2 %", "", FIT_FITS}, /* 0.2316 x 1.1 = 0.2548 at 5 degC */
        {"0.25", ", percent: 3 %", "", FIT_OPEN},
        {"0.30", ", percent: 3 %", "", FIT_DIFFERS},
    };
    char text[TEXT_MOST];
    snprintf(text, sizeof text, head, rows[_i].ohm, rows[_i].meter, rows[_i].degc);
    struct Wend *wend = wend_plan("byre", text, strlen(text));
    ck_assert_msg(wend_result(wend) != NULL, "%s", wend_diagnostics_printed(wend_diagnostics(wend), "f"));
    ck_assert_int_eq(reading_of(wend, READING_R1R2)->fit, rows[_i].fit);
    wend_free(wend);
}
END_TEST

/* ---- faults planted by lot ---- */

static double drawn(unsigned *state, double from, double to)
{
    *state = *state * 1664525U + 1013904223U;
    return from + (to - from) * (double)(*state >> 8) / (double)(1U << 24);
}

/* What a meter shows of a true figure: as far out as it may be. */
static double shown(const struct Built *built, double ohm, unsigned *state)
{
    const double out = drawn(state, -1, 1);
    return fmax((ohm + out * built->digits_ohm) / (1 - out * built->percent / 100), 0);
}

/* Milliohm per metre at 20 degC, IEC 60228, keyed here once more. */
static const struct {
    double mm2, mohm_per_m;
} sizes[] = {{2.5, 7.41}, {4, 4.61}, {6, 3.08}, {10, 1.83}, {16, 1.15}, {25, 0.727}};
enum { SIZES = (int)(sizeof sizes / sizeof sizes[0]) };

/* One run with the cause in it, its true figures worked here apart; false: what was drawn is no fault to see. */
static bool plant(enum Cause cause, unsigned *state, struct Built *built)
{
    const int index = 1 + (int)drawn(state, 0, 3.999);
    *built = good_one();
    built->size_mm2 = sizes[index].mm2;
    built->degc = drawn(state, 5, 30);
    built->length_m = drawn(state, 30, 90);
    built->digits_ohm = 0.005;
    const double rise = 1 + 0.004 * (built->degc - 20);
    const double core = sizes[index].mohm_per_m / 1000 * rise * built->length_m;
    double line = core, earth = core, before = 0.35;
    switch (cause) {
    case CAUSE_LENGTH: {
        const double times = drawn(state, 0, 1) < 0.5 ? drawn(state, 0.55, 0.75) : drawn(state, 1.3, 1.9);
        line = earth = core * times;
        break;
    }
    case CAUSE_SIZE: {
        const int other = drawn(state, 0, 1) < 0.5 ? index - 1 : index + 1;
        line = earth = core * sizes[other].mohm_per_m / sizes[index].mohm_per_m;
        break;
    }
    case CAUSE_PARALLEL: {
        const double beside = core * drawn(state, 0.3, 1.5);
        earth = core * beside / (core + beside);
        break;
    }
    case CAUSE_JOINT: earth = core + drawn(state, 0.12, 0.45); break;
    case CAUSE_SUPPLY: before = drawn(state, 0.45, 0.8); break;
    case CAUSE_SWAPPED:
    case CAUSES: return false;
    }
    built->r1r2_ohm = shown(built, line + earth, state);
    built->r2_ohm = shown(built, earth, state);
    built->zs_ohm = shown(built, before + line + earth, state);
    built->ze_ohm = cause == CAUSE_SUPPLY ? shown(built, before, state) : shown(built, 0.35, state);
    const double planned_ohm = cause == CAUSE_SUPPLY ? 0.35 + 2 * core : 2 * core;
    const double true_ohm = cause == CAUSE_SUPPLY ? before + 2 * core : line + earth;
    const double error = 2 * (true_ohm * built->percent / 100 + built->digits_ohm);
    return fabs(true_ohm - planned_ohm) > 0.1 * planned_ohm + 2 * error;
}

/* The share found again, in a hundred, under what was seen: a cause may be hidden behind the meter's error. */
static const struct {
    enum Cause cause;
    const char *name;
    int floor_percent;
} planted[] = {{CAUSE_LENGTH, "wrong length", 98},
               {CAUSE_SIZE, "wrong size", 98},
               {CAUSE_PARALLEL, "parallel path", 98},
               {CAUSE_JOINT, "loose joint", 98},
               {CAUSE_SUPPLY, "other loop before it", 95}};
enum { PLANTED_CAUSES = (int)(sizeof planted / sizeof planted[0]) };

START_TEST(planted_faults_are_found_again)
{
    unsigned state = 20260514U + (unsigned)_i;
    const enum Cause cause = planted[_i].cause;
    const enum Reading where = cause == CAUSE_SUPPLY ? READING_ZS : READING_R1R2;
    int tried = 0, found = 0, named = 0;
    for (int i = 0; tried < PLANTED && i < 40 * PLANTED; i++) {
        struct Built built;
        if (!plant(cause, &state, &built)) {
            continue;
        }
        struct Wend *wend = planned(&built);
        const struct Measured *reading = reading_of(wend, where);
        tried++;
        /* what is not as planned, and further from it than the meter may be out, never fits */
        ck_assert_msg(reading->fit != FIT_FITS, "%s: %g read, %g expected", planted[_i].name, reading->value,
                      reading->expected);
        ck_assert_int_ne(wend_readings_verdict(wend), WEND_PASS);
        found += (reading->causes >> cause & 1U) != 0;
        named += reading->cause_count;
        wend_free(wend);
    }
    ck_assert_int_eq(tried, PLANTED);
    printf("%s: found again %d of %d planted, %.2f causes named for each\n", planted[_i].name, found, tried,
           (double)named / tried);
    ck_assert_int_ge(100 * found, planted[_i].floor_percent * tried);
}
END_TEST

/* The line's core taken for the protective one, in a cable whose armour is that: 6 mm2, R1 0.1232 ohm in 40 m. */
START_TEST(swapped_cores_are_named)
{
    struct Built built = good_one();
    built.cpc = "armour";
    built.r2_ohm = 0.1232;
    built.r1r2_ohm = 0.2464;
    struct Wend *wend = planned(&built);
    const double armour_ohm = wend_result(wend)->runs[0].readings.r2_20_ohm;
    ck_assert(fabs(armour_ohm - 0.1232) > 0.03);
    ck_assert_uint_ne(reading_of(wend, READING_R2)->causes >> CAUSE_SWAPPED & 1U, 0);
    wend_free(wend);
}
END_TEST

/* Good runs are not called bad: what is true to the plan and read by a meter that may be out. */
START_TEST(good_runs_are_left_alone)
{
    unsigned state = 7;
    int fits = 0;
    for (int i = 0; i < PLANTED; i++) {
        struct Built built = good_one();
        built.length_m = drawn(&state, 30, 90);
        built.degc = drawn(&state, 5, 30);
        built.digits_ohm = 0.005;
        const double ohm = 2 * 0.00308 * built.length_m * (1 + 0.004 * (built.degc - 20));
        built.r1r2_ohm = shown(&built, ohm, &state);
        struct Wend *wend = planned(&built);
        const struct Measured *reading = reading_of(wend, READING_R1R2);
        ck_assert_int_ge(reading->fit, FIT_OPEN);
        ck_assert_uint_eq(reading->causes, 0);
        fits += reading->fit == FIT_FITS;
        wend_free(wend);
    }
    printf("good runs: %d of %d fit, the others are open within the meter's error\n", fits, PLANTED);
    ck_assert_int_ge(fits, PLANTED * 9 / 10);
}
END_TEST

/* Where each stretch was measured as laid, the length is not in question. */
START_TEST(a_laid_length_is_no_cause)
{
    static const char text[] = "wend: 1\njob: {title: Byre}\nsupply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
                               "runs:\n  byre:\n    load: {current: 20 A}\n    device: {kind: MCB, rating: 32 A}\n"
                               "    cable: {type: BS5467, cores: 3, size: 6 mm2}\nsegments:\n"
                               "  - {name: wall, way: wall, length: 40 m%s}\nreadings:\n  byre:\n    r1r2: 0.38 ohm\n"
                               "    cable-temperature: 20 degC\n    meter: {percent: 2 %%}\n";
    char made[TEXT_MOST];
    for (int laid = 0; laid < 2; laid++) {
        snprintf(made, sizeof made, text, laid ? ", as-laid: {length: 40 m}" : "");
        struct Wend *wend = wend_plan("byre", made, strlen(made));
        ck_assert_ptr_nonnull(wend_result(wend));
        ck_assert_int_eq((int)(reading_of(wend, READING_R1R2)->causes >> CAUSE_LENGTH & 1U), !laid);
        wend_free(wend);
    }
}
END_TEST

/* ---- as laid ---- */

/* The plan of what was laid is that of a survey that says so. */
START_TEST(as_laid_is_as_if_surveyed)
{
    static const char text[] = "wend: 1\njob: {title: Byre}\nsupply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
                               "runs: {byre: {load: {current: 20 A}, cable: {type: BS5467, cores: 3}}}\nsegments:\n"
                               "  - {name: wall, way: wall, length: 6 m}\n  - {name: field, %s}\n";
    static const char *const laid = "way: duct, length: 30 m to 34 m, duct: {size: 63 mm}, depth: 600 mm, "
                                    "as-laid: {way: buried, length: 47 m, depth: 520 mm}";
    static const char *const surveyed = "way: buried, length: 47 m, depth: 520 mm";
    char made[TEXT_MOST], same[TEXT_MOST];
    snprintf(made, sizeof made, text, laid);
    snprintf(same, sizeof same, text, surveyed);
    struct Wend *one = wend_plan("byre", made, strlen(made)), *other = wend_plan("byre", same, strlen(same));
    ck_assert_msg(wend_result(one) != NULL, "%s", wend_diagnostics_printed(wend_diagnostics(one), "f"));
    const struct PlanRun *run = &wend_result(one)->runs[0], *then = &wend_result(other)->runs[0];
    ck_assert_double_eq(run->electrical_length_m, then->electrical_length_m);
    ck_assert_double_eq(run->drop_v, then->drop_v);
    ck_assert_double_eq(run->capacity_a, then->capacity_a);
    ck_assert_int_eq(wend_verdict(one), wend_verdict(other));
    const struct AsLaid *as_laid = &wend_result(one)->segments[1].surveyed->as_laid;
    ck_assert_int_eq(as_laid->was_way, WAY_DUCT);
    ck_assert_str_eq(as_laid->was_length, "30 m to 34 m");
    ck_assert_str_eq(as_laid->was_depth, "600 mm");
    ck_assert_int_eq(wend_result(one)->survey->range_count, 0);
    ck_assert_int_eq(wend_warning_count(one), wend_warning_count(other) + 1);
    wend_free(one);
    wend_free(other);
}
END_TEST

/* What is asked from outside the file is not lost behind what was laid. */
START_TEST(what_is_set_stays)
{
    static const char text[] = "wend: 1\njob: {title: Byre}\nsupply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
                               "runs: {byre: {load: {current: 20 A}, cable: {type: BS5467, cores: 3}}}\nsegments:\n"
                               "  - {name: wall, way: wall, length: 6 m, as-laid: {length: 8 m}}\n";
    static const char *const sets[][1] = {{"segments.wall.length=11 m"}, {"segments.wall.as-laid.length=9 m"}};
    static const double lengths_m[] = {11, 9};
    for (int i = 0; i < 2; i++) {
        struct Wend *wend = wend_plan_changed("byre", text, strlen(text), sets[i], 1);
        ck_assert_msg(wend_result(wend) != NULL, "%s", wend_diagnostics_printed(wend_diagnostics(wend), "f"));
        ck_assert_double_eq(wend_result(wend)->runs[0].route_length_m, lengths_m[i]);
        wend_free(wend);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("measured");
    TCase *cases = tcase_create("measured");
    tcase_set_timeout(cases, 60);
    tcase_add_loop_test(cases, expects_what_is_printed, 0, PUBLISHED);
    tcase_add_loop_test(cases, expects_of_flat_cable_what_is_printed, 0, FLAT_PAIRS);
    tcase_add_loop_test(cases, parts_from_the_sum_as_guides_tell, 0, TOLD);
    tcase_add_test(cases, armour_and_copper_rise_apart);
    tcase_add_loop_test(cases, is_judged_as_by_hand, 0, JUDGED);
    tcase_add_loop_test(cases, is_judged_by_what_is_known_of_the_device, 0, OF_DEVICE);
    tcase_add_test(cases, passes_with_all_that_is_due);
    tcase_add_loop_test(cases, what_is_not_known_counts_against_it, 0, 5);
    tcase_add_loop_test(cases, planted_faults_are_found_again, 0, PLANTED_CAUSES);
    tcase_add_test(cases, swapped_cores_are_named);
    tcase_add_test(cases, good_runs_are_left_alone);
    tcase_add_test(cases, a_laid_length_is_no_cause);
    tcase_add_test(cases, as_laid_is_as_if_surveyed);
    tcase_add_test(cases, what_is_set_stays);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
