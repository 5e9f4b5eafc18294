/* The checks that a run has to pass. To add one: write a function here or in a file of its own, and one line in
 * `checks`. */
#include "design/faults/fault_private.h"
#include "design/rating/rating_private.h"

typedef void check_function(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                            struct Check *out);

static const char *number(struct Arena *arena, double value, int decimals)
{
    return number_text(arena, value, decimals);
}

/* With as many decimals as it takes to see that it lies on the wrong side of the limit; `limit` and `value` change
 * places where the value has to reach it. */
static const char *beside(struct Arena *arena, double shown, double value, double limit, int decimals)
{
    while (decimals < 6 && !within(value, limit) &&
           text_same(number_text(arena, value, decimals), number_text(arena, limit, decimals))) {
        decimals++;
    }
    return number_text(arena, shown, decimals);
}

static void decide(struct Check *check, double value, double limit)
{
    check->value = value;
    check->limit = limit;
    check->result = within(value, limit) ? CHECK_PASS : CHECK_FAIL;
}

/* The rating of a stretch brings its working with it; the last step, the conductor's temperature, is no part of
 * capacity. */
static void work_capacity(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                          struct Check *out)
{
    struct Rating rating;
    if (run->brief) {
        return;
    }
    rate_with_working(arena, run, trial, trial->governing, &rating);
    out->steps = rating.steps;
    out->step_count = rating.step_count > 0 ? rating.step_count - 1 : 0;
}

static void work_terminals(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                           struct Check *out)
{
    struct Rating rating;
    if (run->brief) {
        return;
    }
    rate_with_working(arena, run, trial, trial->hottest_end, &rating);
    out->steps = rating.steps;
    out->step_count = rating.step_count;
}

static void check_load(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    (void)trial;
    decide(out, run->demand.design_a, run->rating_a);
    if (arena != NULL) {
        out->text =
            say(arena, SAY_AS_IS,
                say_name(arena_print(arena, "The load draws %s A%s; the device is rated %s A.",
                                     beside(arena, run->demand.design_a, run->demand.design_a, run->rating_a, 1),
                                     run->phases == 3 ? " in the heaviest line" : "",
                                     number_significant(arena, run->rating_a, 4))));
        work_load(arena, run, out);
    }
}

static void check_capacity(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                           struct Check *out)
{
    decide(out, run->rating_a, trial->capacity_a);
    if (arena != NULL) {
        out->text = say(arena, SAY_AS_IS,
                        say_name(arena_print(arena, "The device is rated %s A; %s mm2 carries %s A at the worst place.",
                                             number_significant(arena, run->rating_a, 4),
                                             number_significant(arena, trial->size_mm2, 4),
                                             beside(arena, trial->capacity_a, run->rating_a, trial->capacity_a, 1))));
        work_capacity(arena, run, trial, out);
    }
}

/* A supply may stand a tenth above its nominal voltage, 253 V (BS EN 50160). */
#define SUPPLY_AT_MOST 1.1

/* Where single-phase loads share a run. */
static const char *of_unequal_lines(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial)
{
    struct TextBuilder text = text_builder(arena);
    if (trial->drop.of != DROP_TO_NEUTRAL) {
        return "";
    }
    text_add(&text,
             " That is the worst while any of the loads are off; what always draws evenly from all three lines is "
             "one load with phases: 3.");
    if (trial->drop.unknown_a > 0) {
        text_add(&text, " A load without a power-factor counts at its worst angle, in the neutral too: give it.");
    }
    if (trial->rise_v > 0) {
        const double supply_v = run->u0_v * SUPPLY_AT_MOST;
        text_print(&text, " Line L%d may rise by %s V, to %s V where the supply stands at its most, %s V.",
                   trial->rise.line + 1, number(arena, trial->rise_v, 2), number(arena, supply_v + trial->rise_v, 1),
                   number_significant(arena, supply_v, 4));
    }
    return text_done(&text);
}

static void check_drop(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    const double total = trial->drop_percent + run->drop_before_percent;
    decide(out, total, run->drop_limit_percent);
    if (arena == NULL) {
        return;
    }
    work_drop(arena, run, trial, out);
    const char *own = arena_print(
        arena, "%s drops %s V of %s V, %s %%",
        trial->drop.of == DROP_TO_NEUTRAL ? arena_print(arena, "Line L%d", trial->drop.line + 1) : "The run",
        number(arena, trial->drop_v, 2), number_significant(arena, trial->drop.voltage_v, 4),
        run->drop_before_percent > 0 ? number(arena, trial->drop_percent, 2)
                                     : beside(arena, total, total, run->drop_limit_percent, 2));
    const char *limit = number_significant(arena, run->drop_limit_percent, 4);
    const char *more = of_unequal_lines(arena, run, trial);
    if (run->drop_before_percent > 0) {
        out->text =
            say(arena, SAY_AS_IS,
                say_name(arena_print(arena, "%s; with the %s %% before it that is %s %%, and %s %% is allowed.%s", own,
                                     number_significant(arena, run->drop_before_percent, 4),
                                     beside(arena, total, total, run->drop_limit_percent, 2), limit, more)));
    } else {
        out->text = say(arena, SAY_AS_IS, say_name(arena_print(arena, "%s; %s %% is allowed.%s", own, limit, more)));
    }
}

static void check_terminals(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                            struct Check *out)
{
    decide(out, trial->hottest_end_degc, run->terminals_degc);
    if (arena != NULL) {
        out->text =
            say(arena, SAY_AS_IS,
                say_name(arena_print(
                    arena, "The conductor reaches %s degC at the warmer end of the run; the terminals stand %s degC.",
                    number(arena, trial->hottest_end_degc, 0), number_significant(arena, run->terminals_degc, 4))));
        work_terminals(arena, run, trial, out);
    }
}

/* In the order in which a designer makes them. */
static const struct {
    const char *id, *unit, *source;
    check_function *make;
} checks[] = {
    {"load", "A", "BS 7671 433.1.1 (Ib not over In)", check_load},
    {"capacity", "A", "BS 7671 433.1.1 (In not over Iz)", check_capacity},
    {"drop", "%", "BS 7671 525 and Appendix 4, 6.4", check_drop},
    {"neutral", "A", "BS 7671 523.6, 524.2 and 431.2", check_neutral},
    {"terminals", "degC", "BS 7671 512.1.5", check_terminals},
    {"disconnection", "ohm", "BS 7671 411.4.4", check_disconnection},
    {"protective-conductor", "mm2", "BS 7671 543.1", check_protective_conductor},
    {"live-conductors", "A2s", "BS 7671 434.5.2", check_live_conductors},
    {"breaking-capacity", "kA", "BS 7671 434.5.1", check_breaking_capacity},
    {"electrode", "V", "BS 7671 411.5.3", check_electrode},
    {"residual-position", "V", "BS 7671 531.3.5.3.2, 412 (from memory)", check_residual_position},
    {"bonding", "mm2", "BS 7671 544.1.1", check_bonding},
    {"residual-protection", "mA", "BS 7671 411.3.3", check_residual_protection},
    {"location-earth", "", "BS 7671 Part 7", check_location_earth},
    {"location-depth", "m", "BS 7671 522.8.10", check_location_depth},
    {"hidden-cable", "", "BS 7671 522.6.202, 522.6.203", check_hidden_cable},
    {"existing-supply", "", "BS 7671 411.3.1.1, 132.16", check_existing_supply},
    {"device-for-load", "mA", "BS 7671 722.531.3", check_device_for_load},
    {"charging-earth", "", "BS 7671 722.411.4.1", check_charging_earth},
    {"generation", "", "BS 7671 551, 712 (from memory)", check_generation},
    {"starting", "A", "BS EN 60898-1, least tripping current", check_starting},
    {"surge-protection", "", "BS 7671 443.4.1", check_surge_protection},
    {"selectivity", "", "BS 7671 536.4", check_selectivity},
};
enum { CHECK_KINDS = (int)(sizeof checks / sizeof checks[0]) };
_Static_assert((int)CHECK_KINDS <= (int)CHECKS_MOST, "room for every check");

/* Nobody wants to read of a run without generation that none is there; of the other checks that they are not due. */
static bool is_listed(check_function *make, const struct RunDesign *run)
{
    return make != check_generation || run->run->use == USE_GENERATION;
}

int check_all(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
              struct Check out[CHECKS_MOST])
{
    int count = 0;
    for (int i = 0; i < CHECK_KINDS; i++) {
        if (is_listed(checks[i].make, run)) {
            struct Check *check = &out[count++];
            *check = (struct Check){.id = checks[i].id, .unit = checks[i].unit, .source = checks[i].source};
            checks[i].make(arena, run, trial, check);
            verdict_mark(check, run->run->kind);
        }
    }
    return count;
}
