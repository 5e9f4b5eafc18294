/* What is said of readings: the figures as a meter shows them, what is thought of them, and what they may come from. */
#include "measured_said_private.h"

#include <math.h>

static const struct {
    enum Saying name;
    const char *key;
} readings[READINGS] = {
    [READING_ZE] = {SAY_READ_ZE, "ze"},
    [READING_FAULT] = {SAY_READ_FAULT, "fault-current"},
    [READING_R1R2] = {SAY_TEST_R1R2, "r1r2"},
    [READING_R2] = {SAY_READ_R2, "r2"},
    [READING_INSULATION] = {SAY_READ_INSULATION, "insulation"},
    [READING_POLARITY] = {SAY_TEST_POLARITY, "polarity"},
    [READING_ZS] = {SAY_READ_ZS, "zs"},
    [READING_TRIP] = {SAY_READ_TRIP, "trip-time"},
    [READING_TRIP_5] = {SAY_READ_TRIP_5, "trip-time-5x"},
};

static const struct {
    enum Saying said;
    const char *word;
} fits[] = {
    [FIT_FAR_OFF] = {SAY_FIT_FAR_OFF, "far-off"}, [FIT_BEYOND] = {SAY_FIT_BEYOND, "beyond-limit"},
    [FIT_DIFFERS] = {SAY_FIT_DIFFERS, "differs"}, [FIT_OPEN] = {SAY_FIT_OPEN, "open"},
    [FIT_MISSING] = {SAY_FIT_MISSING, "missing"}, [FIT_FITS] = {SAY_FIT_FITS, "fits"},
};

const char *measured_key(enum Reading what)
{
    return readings[what].key;
}

const char *measured_fit_word(enum Fit fit)
{
    return fits[fit].word;
}

const char *measured_cause_word(enum Cause cause)
{
    static const char *const words[CAUSES] = {
        [CAUSE_LENGTH] = "wrong-length", [CAUSE_SIZE] = "wrong-size",       [CAUSE_PARALLEL] = "parallel-path",
        [CAUSE_JOINT] = "loose-joint",   [CAUSE_SWAPPED] = "cores-swapped", [CAUSE_SUPPLY] = "other-supply-loop",
    };
    return words[cause];
}

/* As a meter shows it: ohms to a hundredth of the least that matters, seconds in milliseconds. */
static struct SayArg figure(const struct Measured *reading, double value)
{
    switch (reading->unit) {
    case UNIT_OHM: return say_fixed(value, value < 10 ? 3 : 1, UNIT_OHM);
    case UNIT_S: return say_fixed(value * 1000, 0, UNIT_MS);
    case UNIT_A: return reading->value >= 1000 ? say_fixed(value / 1000, 2, UNIT_KA) : say_fixed(value, 0, UNIT_A);
    default: return say_digits(value, 4, reading->unit);
    }
}

static const struct Say *known(struct Arena *arena, const struct Measured *reading, double value)
{
    return value > 0 ? say(arena, SAY_AS_IS, figure(reading, value)) : NULL;
}

static const struct Say *value_said(struct Arena *arena, const struct Measured *reading)
{
    if (!reading->given) {
        return NULL;
    }
    if (reading->what == READING_POLARITY) {
        return say(arena, reading->value > 0 ? SAY_EXPECT_RIGHT : SAY_READ_WRONG);
    }
    const struct SayArg value = figure(reading, reading->value);
    return isfinite(reading->error) && reading->error > 0
               ? say(arena, SAY_READ_PLUS_MINUS, value, figure(reading, reading->error))
               : say(arena, SAY_AS_IS, value);
}

/* A limit on paper is never more than the limit. */
static double cut(double limit)
{
    return floor(limit * 1000 + 1e-6) / 1000;
}

static const struct Say *limit_said(struct Arena *arena, const struct Measured *reading)
{
    if (reading->what == READING_POLARITY) {
        return say(arena, SAY_EXPECT_RIGHT);
    }
    return reading->limit > 0 ? say(arena, reading->at_least ? SAY_LIMIT_AT_LEAST : SAY_LIMIT_AT_MOST,
                                    figure(reading, reading->at_least ? reading->limit : cut(reading->limit)))
                              : NULL;
}

static const struct Say *causes_said(struct Arena *arena, const struct Measured *reading)
{
    const struct Say *all = NULL;
    for (int i = 0; i < reading->cause_count; i++) {
        all = say_list(arena, SAY_CAUSE_OR, all, say_part(reading->cause_list[i]));
    }
    return all == NULL ? NULL : say(arena, SAY_CAUSES_MAY_BE, say_part(all));
}

struct MeasuredSaid measured_said(struct Arena *arena, const struct Measured *reading)
{
    return (struct MeasuredSaid){.name = say(arena, readings[reading->what].name),
                                 .value = value_said(arena, reading),
                                 .expected = known(arena, reading, reading->expected),
                                 .limit = limit_said(arena, reading),
                                 .fit = say(arena, fits[reading->fit].said),
                                 .remark = say_then(arena, reading->text, causes_said(arena, reading))};
}

static const struct Say *meter_said(struct Arena *arena, const struct MeterError *meter)
{
    if (!meter->percent.given) {
        return say(arena, SAY_READINGS_METER_UNKNOWN);
    }
    return say(arena, SAY_READINGS_METER, say_digits(meter->percent.value, 3, UNIT_PERCENT),
               meter->ohm.given
                   ? say_part(say(arena, SAY_READINGS_METER_DIGITS, say_digits(meter->ohm.value, 3, UNIT_OHM)))
                   : say_part(NULL));
}

static const struct Say *name_said(struct Arena *arena, enum Saying as, const char *name)
{
    return name == NULL || *name == '\0' ? NULL : say(arena, as, say_name(name));
}

const struct Say *measured_run_said(struct Arena *arena, const struct PlanRun *run)
{
    const struct Measurements *read = &run->settled->measured;
    const struct Say *degc = say(arena, run->measured.degc_given ? SAY_AS_IS : SAY_READINGS_RUN_COLD_AS,
                                 say_digits(run->measured.degc, 3, UNIT_DEGC));
    const struct Say *who = name_said(arena, SAY_READINGS_BY, read->by);
    who = say_list(arena, SAY_COMMA, who, say_part(name_said(arena, SAY_READINGS_ON, read->date)));
    return say(arena, SAY_READINGS_TAKEN, say_part(degc), say_part(meter_said(arena, &read->meter)), say_part(who));
}

const struct Say *measured_why(struct Arena *arena, const struct Plan *plan)
{
    const enum Verdict alone = readings_verdict_alone(plan);
    const struct Say *of_plan = plan_verdict_said(plan);
    if (!plan->survey->has_readings) {
        return say(arena, SAY_READINGS_NONE);
    }
    const struct Say *own = say(arena, alone == VERDICT_FAIL   ? SAY_READINGS_FAIL
                                       : alone == VERDICT_OPEN ? SAY_READINGS_OPEN
                                                               : SAY_READINGS_PASS);
    return plan->verdict == VERDICT_PASS
               ? own
               : say_list(arena, SAY_SEMICOLON, own,
                          say_part(say(arena,
                                       plan->verdict == VERDICT_FAIL ? SAY_READINGS_PLAN_FAILS : SAY_READINGS_PLAN_OPEN,
                                       say_part(of_plan))));
}
