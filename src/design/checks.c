/* The checks that a run has to pass. To add one: write a function here or in a file of its own, and one line in
 * `checks`. */
#include "design.h"
#include "design/faults/fault_private.h"
#include "design/mechanics/mechanics_private.h"
#include "design/rating/rating_private.h"

typedef void check_function(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                            struct Check *out);

/* With as many decimals as it takes to see that it lies on the wrong side of the limit; `limit` and `value` change
 * places where the value has to reach it. */
static struct SayArg beside(struct Arena *arena, double shown, double value, double limit, int decimals, enum Unit unit)
{
    while (decimals < 6 && !within(value, limit) &&
           text_same(number_text(arena, value, decimals), number_text(arena, limit, decimals))) {
        decimals++;
    }
    return say_fixed(shown, decimals, unit);
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
    rate_with_working(arena, run, trial, trial->governing, &rating);
    out->steps = rating.steps;
    out->step_count = rating.step_count > 0 ? rating.step_count - 1 : 0;
}

static void work_terminals(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                           struct Check *out)
{
    struct Rating rating;
    rate_with_working(arena, run, trial, trial->hottest_end, &rating);
    out->steps = rating.steps;
    out->step_count = rating.step_count;
}

static void work_load_of(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    (void)trial;
    work_load(arena, run, out);
}

static void check_load(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    (void)trial;
    decide(out, run->demand.design_a, run->rating_a);
    out->text =
        say(arena, SAY_LOAD, beside(arena, run->demand.design_a, run->demand.design_a, run->rating_a, 1, UNIT_A),
            say_term(run->phases == 3 ? SAY_IN_THE_HEAVIEST_LINE : SAY_NOTHING), say_digits(run->rating_a, 4, UNIT_A));
}

static void check_capacity(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                           struct Check *out)
{
    decide(out, run->rating_a, trial->capacity_a);
    out->text = say(arena, SAY_CAPACITY, say_digits(run->rating_a, 4, UNIT_A), say_digits(trial->size_mm2, 4, UNIT_MM2),
                    beside(arena, trial->capacity_a, run->rating_a, trial->capacity_a, 1, UNIT_A));
    if (trial->gaps > 0) {
        open_by_gaps(arena, run, trial, out);
    }
}

/* Where single-phase loads share a run. */
static const struct Say *of_unequal_lines(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial)
{
    if (trial->drop.of != DROP_TO_NEUTRAL) {
        return NULL;
    }
    const struct Say *said = say(arena, SAY_DROPS_WORST_OF_LOADS);
    if (trial->drop.unknown_a > 0) {
        said = say_then(arena, said, say(arena, SAY_DROPS_AT_WORST_ANGLE));
    }
    if (trial->rise_v > 0) {
        const double supply_v = run->u0_v * design_practice()->supply_most;
        said = say_then(arena, said,
                        say(arena, SAY_LINE_RISES, say_count(trial->rise.line + 1), say_fixed(trial->rise_v, 2, UNIT_V),
                            say_fixed(supply_v + trial->rise_v, 1, UNIT_V), say_digits(supply_v, 4, UNIT_V)));
    }
    return said;
}

static const struct Say *word_drop(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                                   double total)
{
    const bool of_line = trial->drop.of == DROP_TO_NEUTRAL;
    const struct SayArg line = say_count(trial->drop.line + 1);
    const struct SayArg drop = say_fixed(trial->drop_v, 2, UNIT_V);
    const struct SayArg voltage = say_digits(trial->drop.voltage_v, 4, UNIT_V);
    const struct SayArg before = say_digits(run->drop_before_percent, 4, UNIT_PERCENT);
    const struct SayArg sum = beside(arena, total, total, run->drop_limit_percent, 2, UNIT_PERCENT);
    const struct SayArg limit = say_digits(run->drop_limit_percent, 4, UNIT_PERCENT);
    if (run->drop_before_percent > 0) {
        const struct SayArg own = say_fixed(trial->drop_percent, 2, UNIT_PERCENT);
        return of_line ? say(arena, SAY_LINE_DROPS_WITH_BEFORE, line, drop, voltage, own, before, sum, limit)
                       : say(arena, SAY_DROPS_WITH_BEFORE, drop, voltage, own, before, sum, limit);
    }
    return of_line ? say(arena, SAY_LINE_DROPS, line, drop, voltage, sum, limit)
                   : say(arena, SAY_DROPS, drop, voltage, sum, limit);
}

static void check_drop(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    const double total = trial->drop_percent + run->drop_before_percent;
    decide(out, total, run->drop_limit_percent);
    out->text = say_then(arena, word_drop(arena, run, trial, total), of_unequal_lines(arena, run, trial));
}

static void check_terminals(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                            struct Check *out)
{
    decide(out, trial->hottest_end_degc, run->terminals_degc);
    out->text = say(arena, SAY_TERMINALS_STAND, say_fixed(trial->hottest_end_degc, 0, UNIT_DEGC),
                    say_digits(run->terminals_degc, 4, UNIT_DEGC));
    if (trial->gap_at_end && out->result == CHECK_PASS) { /* how warm it gets there is as little known */
        check_unsettled(out, settles_reading(SAY_SETTLED_BY_HELD_FIGURE), gaps_said(arena, run, trial));
    }
}

/* In the order in which a designer makes them. */
#define PUBLISHED(clauses)   {BS_7671, .clause = (clauses)}, TRUST_PUBLISHED, SAY_NOTHING
#define FROM_MEMORY(clauses) {BS_7671, .clause = (clauses)}, TRUST_FROM_MEMORY, SAY_NOTHING
#define RULE(which, ...)     {__VA_ARGS__}, TRUST_PUBLISHED, which
static const struct {
    const char *id;
    enum Saying title;
    enum Unit unit;
    struct Cite cite;
    enum Trust trust;
    enum Saying rule;
    check_function *make;
} checks[] = {
    {"survey-complete", SAY_TITLE_SURVEY_COMPLETE, UNIT_NONE, RULE(SAY_RULE_THE_SURVEY, 0), check_survey_complete},
    {"load", SAY_TITLE_LOAD, UNIT_A, RULE(SAY_RULE_IB_NOT_OVER_IN, BS_7671, .clause = "433.1.1"), check_load},
    {"capacity", SAY_TITLE_CAPACITY, UNIT_A, RULE(SAY_RULE_IN_NOT_OVER_IZ, BS_7671, .clause = "433.1.1"),
     check_capacity},
    {"drop", SAY_TITLE_DROP, UNIT_PERCENT, RULE(SAY_RULE_DROP, BS_7671, .clause = "525"), check_drop},
    {"neutral", SAY_TITLE_NEUTRAL, UNIT_A, PUBLISHED("523.6, 524.2, 431.2"), check_neutral},
    {"terminals", SAY_TITLE_TERMINALS, UNIT_DEGC, PUBLISHED("512.1.5"), check_terminals},
    {"disconnection", SAY_TITLE_DISCONNECTION, UNIT_OHM, PUBLISHED("411.4.4"), check_disconnection},
    {"protective-conductor", SAY_TITLE_PROTECTIVE_CONDUCTOR, UNIT_MM2, PUBLISHED("543.1"), check_protective_conductor},
    {"live-conductors", SAY_TITLE_LIVE_CONDUCTORS, UNIT_A2_S, PUBLISHED("434.5.2"), check_live_conductors},
    {"breaking-capacity", SAY_TITLE_BREAKING_CAPACITY, UNIT_KA, PUBLISHED("434.5.1"), check_breaking_capacity},
    {"electrode", SAY_TITLE_ELECTRODE, UNIT_V, PUBLISHED("411.5.3"), check_electrode},
    {"residual-position", SAY_TITLE_RESIDUAL_POSITION, UNIT_V, FROM_MEMORY("531.3.5.3.2, 412"),
     check_residual_position},
    {"bonding", SAY_TITLE_BONDING, UNIT_MM2, PUBLISHED("544.1.1"), check_bonding},
    {"residual-protection", SAY_TITLE_RESIDUAL_PROTECTION, UNIT_MA, PUBLISHED("411.3.3"), check_residual_protection},
    {"location-earth", SAY_TITLE_LOCATION_EARTH, UNIT_NONE, RULE(SAY_RULE_PART_7, BS_7671), check_location_earth},
    {"location-depth", SAY_TITLE_LOCATION_DEPTH, UNIT_M, PUBLISHED("522.8.10"), check_location_depth},
    {"hidden-cable", SAY_TITLE_HIDDEN_CABLE, UNIT_NONE, PUBLISHED("522.6.202, 522.6.203"), check_hidden_cable},
    {"existing-supply", SAY_TITLE_EXISTING_SUPPLY, UNIT_NONE, PUBLISHED("411.3.1.1, 132.16"), check_existing_supply},
    {"device-for-load", SAY_TITLE_DEVICE_FOR_LOAD, UNIT_MA, PUBLISHED("722.531.3"), check_device_for_load},
    {"charging-earth", SAY_TITLE_CHARGING_EARTH, UNIT_NONE, PUBLISHED("722.411.4.1"), check_charging_earth},
    {"generation", SAY_TITLE_GENERATION, UNIT_NONE, FROM_MEMORY("551, 712"), check_generation},
    {"starting", SAY_TITLE_STARTING, UNIT_A, RULE(SAY_RULE_LEAST_TRIPPING, .standard = "BS EN 60898-1"),
     check_starting},
    {"surge-protection", SAY_TITLE_SURGE_PROTECTION, UNIT_NONE, PUBLISHED("443.4.1"), check_surge_protection},
    {"selectivity", SAY_TITLE_SELECTIVITY, UNIT_NONE, PUBLISHED("536.4"), check_selectivity},
};
#undef PUBLISHED
#undef FROM_MEMORY
#undef RULE
enum { CHECK_KINDS = (int)(sizeof checks / sizeof checks[0]) };
_Static_assert((int)CHECK_KINDS <= (int)CHECKS_MOST, "room for every check");

/* Nobody wants to read of a run without generation that none is there, nor of a whole survey that it is one; of the
 * other checks that they do not apply. */
static bool is_listed(check_function *make, const struct RunDesign *run)
{
    if (make == check_survey_complete) {
        return run->survey->complete_given && !run->survey->complete;
    }
    return make != check_generation || run->run->use == USE_GENERATION;
}

static struct Check undecided(int kind)
{
    return (struct Check){.id = checks[kind].id,
                          .kind = checks[kind].id,
                          .title = checks[kind].title,
                          .unit = checks[kind].unit,
                          .cite = checks[kind].cite,
                          .trust = checks[kind].trust,
                          .rule = checks[kind].rule};
}

bool design_check_kind(int index, struct Check *out)
{
    if (index >= CHECK_KINDS) {
        return mechanics_kind(index - CHECK_KINDS, out);
    }
    if (index >= 0) {
        *out = undecided(index);
    }
    return index >= 0;
}

static void make(int kind, struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                 struct Check *out)
{
    *out = undecided(kind);
    checks[kind].make(arena, run, trial, out);
    verdict_mark(out, run->run->kind);
}

int check_all(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
              struct Check out[CHECKS_MOST])
{
    int count = 0;
    for (int i = 0; i < CHECK_KINDS; i++) {
        if (is_listed(checks[i].make, run)) {
            make(i, arena, run, trial, &out[count++]);
        }
    }
    return count;
}

/* These workings cost more than the checks that they are of. */
static const struct {
    const char *id;
    check_function *work;
} workings[] = {
    {"load", work_load_of}, {"capacity", work_capacity}, {"drop", work_drop}, {"terminals", work_terminals}};

int check_taken(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                struct Check out[CHECKS_MOST])
{
    const int count = check_all(said_in(arena, run), run, trial, out);
    for (int i = 0; i < count && !run->unsaid; i++) {
        for (size_t k = 0; k < sizeof workings / sizeof workings[0]; k++) {
            if (text_same(out[i].id, workings[k].id)) {
                workings[k].work(arena, run, trial, &out[i]);
            }
        }
    }
    return count;
}

/* Without a load and a device nothing else of a whole run can be checked. */
int check_unrated(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    return is_listed(check_survey_complete, run) && check_once(arena, run, trial, "survey-complete", out) ? 1 : 0;
}

bool check_once(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, const char *id,
                struct Check *out)
{
    for (int i = 0; i < CHECK_KINDS; i++) {
        if (text_same(checks[i].id, id)) {
            make(i, arena, run, trial, out);
            return true;
        }
    }
    return false;
}
