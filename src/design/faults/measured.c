/* Readings held against the plan: expected at the cable's temperature, a limit, and the meter's error on the side that
 * counts. What passes within that error only is open. */
#include "measured_private.h"

#include <math.h>

double measured_error(const struct MeterError *meter, enum Unit unit, double value)
{
    const double given = meter->percent.given ? meter->percent.value / 100 : -1;
    const double share = given >= 0 ? given : unit == UNIT_S ? meter_errors()->of_time : meter_errors()->of_resistance;
    return share * value + (unit == UNIT_OHM && meter->ohm.given ? meter->ohm.value : 0);
}

/* A meter finds the current from a loop, and the loop may be less than it shows. */
static double most_current_a(const struct MeterError *meter, double u0_v, double current_a)
{
    const double loop_ohm = u0_v / current_a;
    const double least_ohm = loop_ohm - measured_error(meter, UNIT_OHM, loop_ohm);
    return least_ohm > 0 ? u0_v / least_ohm : INFINITY;
}

double measured_leads_ohm(const struct MeterError *meter)
{
    return meter->leads_nulled ? 0 : reading_practice()->leads_ohm;
}

bool measured_may_be(const struct Measured *reading, double ohm, double extra_ohm)
{
    const double band = reading_practice()->band;
    return reading->value + reading->error >= (1 - band) * ohm &&
           reading->value - reading->error <= (1 + band) * ohm + extra_ohm;
}

/* ---- one reading ---- */

struct Holding {
    struct Arena *arena;
    const struct RunDesign *run;
    const struct PlanRun *planned;
    const struct Measurements *read;
    struct Measured list[READINGS];
};

static struct Measured begun(enum Reading what, const struct Quantity *value, enum Unit unit)
{
    return (struct Measured){.what = what,
                             .given = value->given,
                             .value = value->given ? value->value : 0,
                             .unit = unit,
                             .fit = FIT_MISSING};
}

static struct Measured begun_with_error(const struct Holding *holding, enum Reading what, const struct Quantity *value,
                                        enum Unit unit)
{
    struct Measured reading = begun(what, value, unit);
    reading.error = reading.given ? measured_error(&holding->read->meter, unit, reading.value) : 0;
    return reading;
}

static void judge(struct Measured *reading, enum Fit fit, const struct Say *text)
{
    reading->fit = fit;
    reading->text = text;
}

/* Against what must not be passed. False: judged. */
static bool within_limit(struct Arena *arena, struct Measured *reading)
{
    const double value = reading->value, limit = reading->limit;
    const bool past = reading->at_least ? value < limit : value > limit;
    const bool may_be_past = reading->at_least ? value - reading->error < limit : value + reading->error > limit;
    if (past) {
        judge(reading, FIT_BEYOND, say(arena, SAY_READING_BEYOND));
    } else if (may_be_past) {
        judge(reading, FIT_OPEN, say(arena, SAY_READING_LIMIT_WITHIN_ERROR));
    }
    return !past && !may_be_past;
}

struct Band {
    double low, high;       /* within them it fits, whatever the temperature */
    double lowest, highest; /* outside of them at no temperature */
};

/* Against what is expected. What is over it counts with the meter's error; what is under is on the safe side of every
 * limit, and open where the error alone may make it low. */
static void hold_in_band(struct Arena *arena, const struct Band *held, struct Measured *reading)
{
    const double value = reading->value, error = reading->error;
    const struct Say *within = say(arena, SAY_READING_WITHIN_ERROR);
    if (value > held->highest || value + error < held->lowest) {
        judge(reading, FIT_DIFFERS, say(arena, value > held->highest ? SAY_READING_HIGH : SAY_READING_LOW));
    } else if (value < held->lowest || value + error > held->highest) {
        judge(reading, FIT_OPEN, within);
    } else if (value < held->low || value + error > held->high) {
        judge(reading, FIT_OPEN, say(arena, SAY_READING_TEMPERATURE_NEEDED));
    } else {
        judge(reading, FIT_FITS, NULL);
    }
}

/* ---- resistances ---- */

static double of(const struct ReadingsAt *at, enum Reading what)
{
    return what == READING_R1R2 ? at->r1r2_ohm : what == READING_R2 ? at->r2_ohm : at->zs_ohm;
}

static struct Band band_of(const struct Holding *holding, enum Reading what)
{
    const struct Quantity *degc = &holding->read->cable_degc;
    const struct ReadingPractice *practice = reading_practice();
    const double band = practice->band;
    const double extra_ohm = what == READING_ZS ? 0 : measured_leads_ohm(&holding->read->meter);
    const struct ReadingsAt cold =
        readings_at(&holding->planned->readings, degc->given ? degc->value : practice->coldest_degc);
    const struct ReadingsAt warm =
        readings_at(&holding->planned->readings, degc->given ? degc->value : practice->warmest_degc);
    return (struct Band){.low = (1 - band) * of(&warm, what),
                         .high = (1 + band) * of(&cold, what) + extra_ohm,
                         .lowest = (1 - band) * of(&cold, what),
                         .highest = (1 + band) * of(&warm, what) + extra_ohm};
}

static double degc_of(const struct Holding *holding)
{
    return holding->read->cable_degc.given ? holding->read->cable_degc.value : 20;
}

static void hold_resistance(struct Holding *holding, enum Reading what, const struct Quantity *value)
{
    struct Measured *reading = &holding->list[what];
    const struct ReadingsAt at = readings_at(&holding->planned->readings, degc_of(holding));
    *reading = begun_with_error(holding, what, value, UNIT_OHM);
    reading->expected = of(&at, what);
    const struct LoopLimit limit = readings_loop_limit(holding->planned);
    reading->limit = what == READING_ZS && limit.known ? limit.cold_ohm : 0;
    if (!reading->given) {
        return;
    }
    if (what == READING_ZS) {
        if (!limit.known) {
            judge(reading, FIT_OPEN, say(holding->arena, SAY_READING_NO_LIMIT));
            return;
        }
        if (!within_limit(holding->arena, reading)) {
            return;
        }
    }
    if (!(reading->expected > 0)) {
        judge(reading, FIT_OPEN, say(holding->arena, SAY_READING_NOTHING_EXPECTED));
        return;
    }
    const struct Band held = band_of(holding, what);
    hold_in_band(holding->arena, &held, reading);
}

/* Not above what the plan was made with; it may rise until the loop at the far end is at its limit. */
static void hold_ze(struct Holding *holding)
{
    struct Arena *arena = holding->arena;
    const struct Readings *readings = &holding->planned->readings;
    const struct LoopLimit limit = readings_loop_limit(holding->planned);
    struct Measured *reading = &holding->list[READING_ZE];
    *reading = begun_with_error(holding, READING_ZE, &holding->read->ze_ohm, UNIT_OHM);
    reading->expected = readings->ze_ohm;
    reading->limit =
        limit.known && readings->zs_hot_ohm > 0 ? limit.ohm - (readings->zs_hot_ohm - readings->ze_ohm) : 0;
    if (!reading->given) {
        return;
    }
    if (!(reading->expected > 0) || !(reading->limit > 0)) {
        judge(reading, FIT_OPEN, say(arena, SAY_READING_NO_LIMIT));
    } else if (within_limit(arena, reading)) {
        if (reading->value <= reading->expected) {
            judge(reading, FIT_FITS, NULL);
        } else if (reading->value - reading->error <= reading->expected) {
            judge(reading, FIT_OPEN, say(arena, SAY_READING_WITHIN_ERROR));
        } else {
            judge(reading, FIT_DIFFERS, say(arena, SAY_READING_PLAN_WITH_ZE, say_digits(reading->value, 4, UNIT_OHM)));
        }
    }
}

/* ---- the others ---- */

/* Ze alone lets so much flow, and the largest current is no less: then one of the two readings is wrong. */
static bool less_than_loop(const struct Holding *holding, double most_a)
{
    const struct Measured *ze = &holding->list[READING_ZE];
    return ze->given && most_a < (1 - reading_practice()->band) * holding->run->u0_v / (ze->value + ze->error);
}

static void hold_fault_current(struct Holding *holding)
{
    struct Arena *arena = holding->arena;
    const struct Quantity *breaks_a = &holding->planned->settled->device.breaking_capacity_a;
    struct Measured *reading = &holding->list[READING_FAULT];
    *reading = begun(READING_FAULT, &holding->read->fault_current_a, UNIT_A);
    reading->expected = holding->planned->readings.fault_origin_a;
    reading->limit = breaks_a->given ? breaks_a->value : 0;
    if (!reading->given) {
        return;
    }
    const double most_a = most_current_a(&holding->read->meter, holding->run->u0_v, reading->value);
    reading->error = most_a - reading->value;
    if (!(reading->limit > 0)) {
        judge(reading, FIT_OPEN, say(arena, SAY_READING_BREAKING_UNKNOWN));
    } else if (within_limit(arena, reading)) {
        const bool less = less_than_loop(holding, most_a);
        const bool more = reading->expected > 0 && reading->value > reading->expected;
        judge(reading,
              less   ? FIT_OPEN
              : more ? FIT_DIFFERS
                     : FIT_FITS,
              less   ? say(arena, SAY_READING_LESS_THAN_LOOP)
              : more ? say(arena, SAY_READING_PLAN_WITH_FAULT, say_digits(reading->value, 4, UNIT_A))
                     : NULL);
    }
}

static void hold_insulation(struct Holding *holding)
{
    struct Measured *reading = &holding->list[READING_INSULATION];
    *reading = begun_with_error(holding, READING_INSULATION, &holding->read->insulation_mohm, UNIT_MEGOHM);
    reading->limit = holding->planned->readings.insulation_least_mohm;
    reading->expected = reading_practice()->new_cable_mohm;
    reading->at_least = true;
    if (!reading->given) {
        return;
    }
    if (within_limit(holding->arena, reading)) {
        const bool low = reading->value < reading_practice()->new_cable_mohm;
        judge(reading, low ? FIT_DIFFERS : FIT_FITS, low ? say(holding->arena, SAY_READING_INSULATION_LOW) : NULL);
    } else if (reading->fit == FIT_BEYOND) {
        reading->text = say(holding->arena, SAY_BAD_INSULATION);
    }
}

static void hold_polarity(struct Holding *holding)
{
    struct Measured *reading = &holding->list[READING_POLARITY];
    const bool right = holding->read->polarity == POLARITY_RIGHT;
    *reading = (struct Measured){.what = READING_POLARITY, .given = holding->read->polarity_given, .fit = FIT_MISSING};
    if (reading->given) {
        reading->value = right;
        judge(reading, right ? FIT_FITS : FIT_BEYOND, right ? NULL : say(holding->arena, SAY_BAD_POLARITY));
        reading->causes = right ? 0 : 1U << CAUSE_SWAPPED;
    }
}

static void hold_trip(struct Holding *holding, enum Reading what, const struct Quantity *value)
{
    const struct Readings *readings = &holding->planned->readings;
    const bool own = readings->residual_a > 0;
    const bool once = what == READING_TRIP;
    const double longest_s = once  ? own ? readings->residual_longest_s : readings->board_residual_longest_s
                             : own ? readings->residual_longest_5_s
                                   : readings->board_residual_longest_5_s;
    const double shortest_s = !own ? 0 : once ? readings->residual_shortest_s : readings->residual_shortest_5_s;
    struct Measured *reading = &holding->list[what];
    *reading = begun_with_error(holding, what, value, UNIT_S);
    reading->limit = longest_s;
    if (!reading->given) {
        return;
    }
    if (!(longest_s > 0)) {
        judge(reading, FIT_OPEN, say(holding->arena, SAY_READING_NO_LIMIT));
    } else if (within_limit(holding->arena, reading)) {
        const bool soon = reading->value < shortest_s;
        const bool may_be_soon = reading->value - reading->error < shortest_s;
        judge(reading,
              soon          ? FIT_BEYOND
              : may_be_soon ? FIT_OPEN
                            : FIT_FITS,
              soon          ? say(holding->arena, SAY_READING_TOO_SOON, say_fixed(shortest_s * 1000, 0, UNIT_MS))
              : may_be_soon ? say(holding->arena, SAY_READING_LIMIT_WITHIN_ERROR)
                            : NULL);
    } else if (reading->fit == FIT_BEYOND) {
        reading->text = say(holding->arena, SAY_BAD_RESIDUAL);
    }
}

/* ---- all of a run ---- */

/* What a schedule of test results asks of every run; the others are held where they were taken. */
static bool is_due(const struct Holding *holding, enum Reading what)
{
    const struct Readings *readings = &holding->planned->readings;
    switch (what) {
    case READING_R1R2: return !holding->list[READING_R2].given;
    case READING_TRIP: return readings->residual_a > 0 || readings->board_residual_a > 0;
    case READING_R2:
    case READING_TRIP_5: return false;
    default: return true;
    }
}

static enum Verdict verdict_of(enum Fit fit)
{
    return fit <= FIT_BEYOND ? VERDICT_FAIL : fit_is_good(fit) ? VERDICT_PASS : VERDICT_OPEN;
}

static void collect(const struct Holding *holding, struct Measured *list, struct MeasuredRun *out)
{
    out->verdict = VERDICT_PASS;
    for (int i = 0; i < READINGS; i++) {
        if (!holding->list[i].given && !is_due(holding, (enum Reading)i)) {
            continue;
        }
        list[out->count++] = holding->list[i];
        const enum Verdict verdict = verdict_of(holding->list[i].fit);
        out->verdict = verdict < out->verdict ? verdict : out->verdict;
    }
    out->list = list;
}

struct MeasuredRun measured_of(struct Arena *arena, const struct RunDesign *run, const struct PlanRun *planned)
{
    struct Holding holding = {.arena = arena, .run = run, .planned = planned, .read = &run->run->measured};
    struct MeasuredRun out = {.degc = degc_of(&holding),
                              .degc_given = holding.read->cable_degc.given,
                              .meter_given = holding.read->meter.percent.given};
    struct Measured *list = run->survey->has_readings ? arena_array(arena, READINGS, sizeof *list) : NULL;
    if (list == NULL) {
        return out;
    }
    hold_ze(&holding);
    hold_fault_current(&holding);
    hold_resistance(&holding, READING_R1R2, &holding.read->r1r2_ohm);
    hold_resistance(&holding, READING_R2, &holding.read->r2_ohm);
    hold_insulation(&holding);
    hold_polarity(&holding);
    hold_resistance(&holding, READING_ZS, &holding.read->zs_ohm);
    hold_trip(&holding, READING_TRIP, &holding.read->trip_s);
    hold_trip(&holding, READING_TRIP_5, &holding.read->trip_5_s);
    const struct MeasuredCauses causes = {arena, run, planned, holding.read, holding.list, out.degc};
    measured_find_causes(&causes);
    collect(&holding, list, &out);
    return out;
}
