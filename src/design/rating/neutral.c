/* The neutral of unequal lines: what it carries, what it stands, and whether the device would notice (523.6, 524.2,
 * 431.2). */
#include "rating_private.h"

#include <math.h>

static const double pi = 3.14159265358979323846;
/* Just beside the directions at which a load changes sides; what it shifts is a part in a million. */
static const double aside = 1e-6;

/* The loads whose current has a part in this direction, and what they come to. A drop of a conductor that is all
 * direction asks the same of them. */
static struct DropTerms towards(const struct DropLoads *loads, bool reversed, double angle)
{
    struct DropTerms terms = {
        .of = CURRENT_IN_NEUTRAL, .reversed = reversed, .figure = {.r = cos(angle), .x = sin(angle), .z = 1}};
    drop_add_up(&terms, loads);
    return terms;
}

static double amperes(const struct DropTerms *terms)
{
    return hypot(terms->active_a, terms->reactive_a) + terms->unknown_a;
}

/* Which loads count changes only at right angles to one of them. */
static struct DropTerms worst_neutral(const struct DropLoads *loads)
{
    struct DropTerms worst = {.of = CURRENT_IN_NEUTRAL};
    for (int order = 0; order < 2; order++) {
        for (int i = 0; i < loads->count; i++) {
            struct DropTerms seen = {.of = CURRENT_IN_NEUTRAL, .reversed = order == 1};
            double active_a;
            double reactive_a;
            double unknown_a;
            drop_share(&seen, &loads->loads[i], &active_a, &reactive_a, &unknown_a);
            const double angle = atan2(reactive_a, active_a);
            for (int k = 0; k < 4; k++) {
                const double side = k < 2 ? pi / 2 : -pi / 2;
                const struct DropTerms tried = towards(loads, order == 1, angle + side + (k % 2 == 0 ? aside : -aside));
                if (amperes(&tried) > amperes(&worst) * (1 + 1e-9)) {
                    worst = tried;
                }
            }
        }
    }
    return worst;
}

struct Neutral neutral_of(const struct DropLoads *loads, const struct LineCurrents *currents,
                          double third_harmonic_percent)
{
    struct Neutral neutral = {.terms = worst_neutral(loads)};
    double sum_a = 0;
    double squares = 0;
    for (int line = 0; line < 3; line++) {
        sum_a += currents->line_a[line];
        squares += currents->line_a[line] * currents->line_a[line];
    }
    neutral.third_a = third_harmonic_percent / 100 * sum_a;
    neutral.known_a = hypot(hypot(neutral.terms.active_a, neutral.terms.reactive_a), neutral.third_a);
    neutral.most_a = hypot(amperes(&neutral.terms), neutral.third_a);
    neutral.as_three_a = sqrt((squares + neutral.most_a * neutral.most_a) / 3);
    return neutral;
}

/* What the neutral stands: where the cable was sized on it for its harmonics, what Ch took off for that comes back. */
static double neutral_limit_a(const struct RunDesign *run, const struct Trial *trial)
{
    bool on_neutral = false;
    harmonic_factor(run->terms.third_harmonic_percent, &on_neutral);
    const double of_line = 3 * run->terms.third_harmonic_percent / 100;
    return on_neutral && of_line > 1 ? trial->capacity_a * of_line : trial->capacity_a;
}

/* Annex E has the heat of a fourth conductor in its factor; without it the four share what the table gives three. */
static double neutral_heat_a(const struct RunDesign *run, const struct Neutral *neutral)
{
    return run->terms.third_harmonic_percent > 0 ? neutral->most_a : fmax(neutral->most_a, neutral->as_three_a);
}

static struct SayArg amps(double value)
{
    return say_fixed(value, 1, UNIT_A);
}

/* What is open only because a power factor was not given. */
static void open_by_factor(struct Arena *arena, const struct Neutral *neutral, struct Check *out)
{
    check_unsettled(out, settles_key("load: power-factor"),
                    say(arena, SAY_NEUTRAL_POWER_FACTOR_OPEN, amps(neutral->most_a), amps(out->limit)));
}

static void too_much(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                     const struct Neutral *neutral, struct Check *out)
{
    const struct SayArg size = say_digits(trial->size_mm2, 4, UNIT_MM2);
    out->result = CHECK_FAIL;
    out->text = neutral->most_a > neutral->as_three_a || run->terms.third_harmonic_percent > 0
                    ? say(arena, SAY_NEUTRAL_TOO_THIN, amps(neutral->most_a), size, amps(out->limit))
                    : say(arena, SAY_NEUTRAL_WARMS_CABLE, amps(neutral->most_a), amps(neutral->as_three_a), size,
                          amps(out->limit));
}

static bool is_fuse(enum DeviceKind kind)
{
    return kind == DEVICE_GG || kind == DEVICE_BS88_3 || kind == DEVICE_BS3036;
}

/* The neutral carries more than any line, and with the lines at In more than it stands: only a device that looks at the
 * neutral acts. */
static void unnoticed(struct Arena *arena, const struct RunDesign *run, const struct Neutral *neutral, double with_in_a,
                      struct Check *out)
{
    const struct Device *device = &run->run->device;
    const bool seen = device->senses_neutral_given && device->senses_neutral && !is_fuse(device->kind);
    const bool unseen = is_fuse(device->kind) || (device->senses_neutral_given && !device->senses_neutral);
    const struct SayArg most = amps(neutral->most_a);
    const struct SayArg rating = say_digits(run->rating_a, 4, UNIT_A);
    const struct SayArg with_in = amps(with_in_a);
    const struct SayArg carries = amps(out->limit);
    const struct Say *more = say(arena, SAY_NEUTRAL_OVER_LINES, most, rating, with_in, carries);
    if (seen) {
        out->result = within(neutral->most_a, run->rating_a) ? CHECK_PASS : CHECK_FAIL;
        out->limit = run->rating_a;
        out->text = say_then(arena, more, say(arena, SAY_NEUTRAL_SENSED, rating));
    } else if (unseen) {
        out->result = CHECK_FAIL;
        out->value = with_in_a;
        out->text = say_then(arena, more, say(arena, SAY_NEUTRAL_NOT_SENSED));
    } else {
        check_unsettled(out, settles_key("device: senses-neutral"),
                        say(arena, SAY_NEUTRAL_SENSING_OPEN, most, rating, with_in, carries));
    }
}

static bool any_single_phase(const struct DropLoads *loads)
{
    for (int i = 0; i < loads->count; i++) {
        if (loads->loads[i].line != LOAD_ON_EVERY_LINE) {
            return true;
        }
    }
    return false;
}

static bool due(struct Arena *arena, const struct RunDesign *run, struct Check *out)
{
    out->result = CHECK_NOT_DUE;
    if (run->phases != 3) {
        out->text = say(arena, SAY_NEUTRAL_AS_LINE);
        return false;
    }
    if (!any_single_phase(&run->loads)) {
        out->text = say(arena, run->terms.third_harmonic_percent > 0 ? SAY_NEUTRAL_THIRD_HARMONIC_ALONE
                                                                     : SAY_NEUTRAL_WITHOUT_CURRENT);
        return false;
    }
    return true;
}

void check_neutral(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    if (!due(arena, run, out)) {
        return;
    }
    const struct Neutral neutral = run->neutral;
    const double with_in_a = neutral.most_a * run->rating_a / run->demand.design_a;
    out->value = neutral_heat_a(run, &neutral);
    out->limit = neutral_limit_a(run, trial);
    work_neutral(arena, run, trial, &neutral, out);
    if (!within(out->value, out->limit)) {
        if (neutral.terms.unknown_a > 0 && within(neutral.known_a, out->limit)) {
            open_by_factor(arena, &neutral, out);
        } else {
            too_much(arena, run, trial, &neutral, out);
        }
    } else if (neutral.most_a > run->demand.design_a * (1 + 1e-9) && !within(with_in_a, out->limit)) {
        if (within(neutral.known_a * run->rating_a / run->demand.design_a, out->limit)) {
            open_by_factor(arena, &neutral, out);
        } else {
            unnoticed(arena, run, &neutral, with_in_a, out);
        }
    } else {
        out->result = CHECK_PASS;
        out->text = say(arena, SAY_NEUTRAL_STANDS, amps(neutral.most_a), amps(out->limit));
    }
    if (trial->gaps > 0) {
        open_by_gaps(arena, run, trial, out);
    }
}
