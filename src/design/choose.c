/* Tries every size of the cable's table and takes the smallest that passes every check. */
#include "design/faults/fault_private.h"
#include "design/mechanics/mechanics_private.h"

#include <limits.h>

/* While sizes are tried. */
struct Tried {
    struct Trial trial;
    double protective_needed_mm2;
    int electrical;            /* checks on the whole run that fail */
    int open;                  /* ... and that matter and lack a figure */
    bool failing[CHECKS_MOST]; /* ... by their place among check_all()'s */
    bool lacking[CHECKS_MOST];
    struct CheckRef refs[CHECKS_MOST];
    int checks;
    bool capacity_first;             /* of those that fail, the one that `why` speaks of */
    struct MechanicsCount mechanics; /* of bends, ducts and drawing in */
    int doubt; /* of those that are open, the ones that a thinner size answers: no reason to prefer this one */
};

static bool passes(const struct Tried *tried)
{
    return tried->electrical == 0 && tried->mechanics.failed.count == 0;
}

static enum Verdict verdict_of_size(const struct Tried *tried)
{
    return !passes(tried) ? VERDICT_FAIL : tried->open + tried->mechanics.open.count > 0 ? VERDICT_OPEN : VERDICT_PASS;
}

static const struct RatedSize *rated_before(struct RatedSizes rated, double size_mm2)
{
    for (int i = 0; i < rated.count; i++) {
        if (within(rated.sizes[i].trial.size_mm2, size_mm2) && within(size_mm2, rated.sizes[i].trial.size_mm2)) {
            return &rated.sizes[i];
        }
    }
    return NULL;
}

/* The checks on the whole run, as figures. */
static void try_checks(const struct RunDesign *run, struct Tried *tried)
{
    struct Check checks[CHECKS_MOST];
    tried->checks = check_all(NULL, run, &tried->trial, checks);
    for (int i = 0; i < tried->checks; i++) {
        tried->capacity_first = tried->capacity_first || (tried->electrical == 0 && checks[i].result == CHECK_FAIL &&
                                                          text_same(checks[i].id, "capacity"));
        tried->refs[i] = (struct CheckRef){checks[i].kind, checks[i].title, NULL};
        tried->failing[i] = checks[i].result == CHECK_FAIL;
        tried->lacking[i] = checks[i].open;
        tried->electrical += tried->failing[i];
        tried->open += checks[i].open;
        if (text_same(checks[i].id, "protective-conductor")) {
            tried->protective_needed_mm2 = checks[i].limit;
        }
    }
}

static struct Tried try_size(const struct RunDesign *run, struct RatedSizes rated, double size_mm2)
{
    const struct RatedSize *before = rated_before(rated, size_mm2);
    struct Tried tried = {.trial = before != NULL ? before->trial : rate_size(run, size_mm2)};
    if (tried.trial.lacks != NULL) {
        tried.electrical = CHECKS_MOST;
        return tried;
    }
    try_checks(run, &tried);
    tried.mechanics = before != NULL ? *before->mechanics : mechanics_failures(run, &tried.trial, *rated.due);
    return tried;
}

static const char *segment_name(const struct Design *design, const struct RunDesign *run, int stretch)
{
    return stretch < 0 ? "" : design->survey->segments[run->run->along[stretch]].name;
}

/* What stands beside the checks in the table of options. */
static void add_facts(const struct RunDesign *run, const struct Tried *tried, struct Option *option)
{
    const struct Loop loop = loop_of_run(run, tried->trial.size_mm2);
    if (loop.lacks == SAY_NOTHING && run->before_ohm > 0) {
        option->zs_ohm = loop_far_ohm(run->before_ohm, &loop);
    }
    option->protective_needed_mm2 = tried->protective_needed_mm2;
    struct CableDimensions dimensions;
    if (cable_dimensions(run->terms.type, run->terms.cores, tried->trial.size_mm2, &dimensions)) {
        option->gland = dimensions.usual_gland;
        option->weight_kg_per_km = dimensions.weight_kg_per_km;
    }
}

/* One check more that decides against a size; what the first of them says is kept. */
static void take_against(const struct Design *design, const struct RunDesign *run, const struct Trial *trial,
                         struct CheckRef check, struct Against *against)
{
    struct Check worded = {.text = NULL};
    if (against->count == 0 && check_once(design->arena, run, trial, check.kind, &worded)) {
        against->why = worded.text;
    }
    against_add(against, check.kind, check.title);
}

/* What fails a size and what it leaves open, and why the first of it does. */
static void say_fails(const struct Design *design, const struct RunDesign *run, const struct Tried *tried,
                      struct Option *option)
{
    struct Against fails = {.count = 0};
    struct Against open = {.count = 0};
    for (int i = 0; i < tried->checks; i++) {
        if (tried->failing[i]) {
            take_against(design, run, &tried->trial, tried->refs[i], &fails);
        }
        if (tried->lacking[i]) {
            take_against(design, run, &tried->trial, tried->refs[i], &open);
        }
    }
    mechanics_against(design->arena, run, &tried->trial, &tried->mechanics, &fails, &open);
    option->fails = against_list(design->arena, &fails);
    option->open = against_list(design->arena, &open);
    option->why = fails.why != NULL ? fails.why : open.why;
}

static struct Option option_of(const struct Design *design, const struct RunDesign *run, const struct Tried *tried,
                               bool chosen)
{
    struct Option option = {.size_mm2 = tried->trial.size_mm2, .governing = "", .gland = ""};
    if (tried->trial.lacks != NULL) {
        static const struct CheckRef no_figure = {.kind = "no-figure", .title = SAY_TITLE_NO_FIGURE};
        option.fails = (struct CheckList){&no_figure, 1};
        option.why = say(design->arena, SAY_LACKS_IN_STRETCH, say_term(tried->trial.lacks->said),
                         say_name(segment_name(design, run, tried->trial.lacks_at)));
        return option;
    }
    option.verdict = verdict_of_size(tried);
    option.pass = passes(tried) && (chosen || tried->doubt == 0);
    option.capacity_a = tried->trial.capacity_a;
    option.governing = segment_name(design, run, tried->trial.governing);
    option.drop_percent = tried->trial.drop_percent;
    add_facts(run, tried, &option);
    if (option.verdict != VERDICT_PASS && !run->unsaid) {
        say_fails(design, run, tried, &option);
    }
    return option;
}

static void report_missing(const struct Design *design, const struct RunDesign *run, const struct Trial *trial)
{
    const struct Segment *segment = &design->survey->segments[run->run->along[trial->lacks_at]];
    diag_report(design->diag, MSG_NO_CAPACITY_FIGURE, segment->mark, (int)utf8_count(segment->name),
                DIAG_WORDS(segment->name, diag_phrase(trial->lacks->message), diag_phrase(trial->lacks->advice)));
}

/* Sizes to try, and how many: the whole table, or the one that was given. */
static int sizes_to_try(const struct RunDesign *run, const double **sizes)
{
    if (run->run->cable.size_mm2.given) {
        *sizes = &run->run->cable.size_mm2.value;
        return 1;
    }
    return capacity_sizes(run->edition, cable_capacity(run->kind, run->terms.conductor_degc), sizes);
}

static bool table_has_size(const struct RunDesign *run, double size_mm2)
{
    const double *sizes;
    const int count = capacity_sizes(run->edition, cable_capacity(run->kind, run->terms.conductor_degc), &sizes);
    for (int i = 0; i < count; i++) {
        if (within(sizes[i], size_mm2) && within(size_mm2, sizes[i])) {
            return true;
        }
    }
    return false;
}

static void report_unknown_size(const struct Design *design, const struct RunDesign *run)
{
    const struct Quantity *size = &run->run->cable.size_mm2;
    diag_report(design->diag, MSG_NO_SUCH_SIZE, size->mark, 1,
                DIAG_WORDS(survey_word(WORDS_CABLE, (int)run->terms.type),
                           number_significant(design->arena, size->value, 4),
                           capacity_ref(run->edition, cable_capacity(run->kind, run->terms.conductor_degc))->table));
}

/* A cable that is too weak for its load is worse than one that a duct or a bend is too tight for: those can be changed.
 */
static bool fails_less(const struct Tried *a, const struct Tried *b)
{
    return a->electrical < b->electrical ||
           (a->electrical == b->electrical &&
            a->mechanics.failed.count + a->doubt < b->mechanics.failed.count + b->doubt);
}

/* The first that passes; when none does, the smallest of those that fail least. */
static int best_of(const struct Tried *tried, int count)
{
    int best = 0;
    for (int i = 1; i < count; i++) {
        best = fails_less(&tried[i], &tried[best]) ? i : best;
    }
    return best;
}

/* "method C of Table 4E4A gives 58 A, Ca 0.87 (air at 40 degC), Ci 0.78 (...): 39.4 A" */
static const struct Say *governing_because(struct Arena *arena, const struct Rating *rating)
{
    const struct Say *list = say(arena, SAY_METHOD_GIVES, say_name(rating->method), say_name(rating->table),
                                 say_digits(rating->tabulated_a, 4, UNIT_A));
    for (int i = 0; i < rating->factor_count; i++) {
        const struct Factor *factor = &rating->factors[i];
        if (factor->value < 1 || factor->value > 1) {
            list = say_list(arena, SAY_COMMA, list,
                            say_part(say(arena, SAY_FACTOR_TAKEN, say_name(factor->symbol),
                                         say_fixed(factor->value, 2, UNIT_NONE), say_part(factor->because))));
        }
    }
    return say(arena, SAY_COLON, say_part(list), say_fixed(rating->capacity_a, 1, UNIT_A));
}

/* Table 52.2 ends at 10 mm2; above it half is taken however short the insulation is. */
static void say_if_thinner_carries_more(const struct Design *design, const struct Option *thinner,
                                        struct Option *option)
{
    const double table_end_mm2 = insulation_length_largest_mm2();
    if (option->capacity_a > 0 && option->capacity_a < thinner->capacity_a &&
        within(thinner->size_mm2, table_end_mm2) && !within(option->size_mm2, table_end_mm2)) {
        option->why =
            say_then(design->arena, option->why,
                     say(design->arena, SAY_CARRIES_LESS_THAN_THINNER, say_digits(thinner->size_mm2, 4, UNIT_MM2)));
    }
}

/* NULL without memory. */
static const struct Option *options_of(const struct Design *design, const struct RunDesign *run,
                                       const struct Tried *tried, int count, int best)
{
    struct Option *options = arena_array(design->arena, (size_t)count, sizeof *options);
    for (int i = 0; options != NULL && i < count; i++) {
        options[i] = option_of(design, run, &tried[i], i == best);
        options[i].chosen = i == best;
        if (i > 0 && tried[i].capacity_first && !run->unsaid) {
            say_if_thinner_carries_more(design, &options[i - 1], &options[i]);
        }
    }
    return options;
}

/* At the temperature that each stretch has by its load. */
static double expected_percent(const struct RunDesign *run, const struct Trial *trial, const struct Rating *ratings)
{
    double expected_v = 0;
    for (int i = 0; i < run->count; i++) {
        expected_v += ratings[i].drop_expected_v;
    }
    return expected_v / trial->drop.voltage_v * 100;
}

static bool fill(const struct Design *design, const struct RunDesign *run, const struct Tried *tried, int count,
                 int best, struct PlanRun *out)
{
    struct Arena *arena = design->arena;
    const struct Trial *trial = &tried[best].trial;
    const struct Option *options = options_of(design, run, tried, count, best);
    const int most = CHECKS_MOST + mechanics_count(run);
    struct Check *checks = arena_array(arena, (size_t)most, sizeof *checks);
    out->ratings = rate_fully(arena, run, trial);
    if (options == NULL || checks == NULL || out->ratings == NULL) {
        return false;
    }
    out->option_count = count;
    out->options = options;
    out->check_count = check_taken(arena, run, trial, checks);
    out->check_count += check_mechanics(arena, run, trial, checks + out->check_count, most - out->check_count);
    out->checks = checks;
    out->pass = passes(&tried[best]);
    out->verdict = verdict_of_size(&tried[best]);
    out->size_mm2 = trial->size_mm2;
    out->size_was_given = run->run->cable.size_mm2.given;
    out->rating_count = run->count;
    out->gaps = trial->gaps;
    out->governing = trial->governing;
    out->capacity_a = trial->capacity_a;
    out->governing_because = governing_because(said_in(arena, run), &out->ratings[trial->governing]);
    out->voltage_v = trial->drop.voltage_v;
    out->drop_v = trial->drop_v;
    out->drop_percent = trial->drop_percent;
    out->drop_at_load_temperature_percent = expected_percent(run, trial, out->ratings);
    out->readings = readings_of(arena, run, trial->size_mm2);
    out->measured = measured_of(arena, run, out);
    if (best > 0 && !run->unsaid) {
        out->why_not_smaller = say(arena, SAY_NOT_THE_SIZE, say_digits(options[best - 1].size_mm2, 4, UNIT_MM2),
                                   say_part(options[best - 1].why));
    }
    return true;
}

/* What no table says of a thick cable must not make it pass where a thin one was looked at and fails. */
static void weigh_doubts(struct Tried *tried, int count)
{
    int least = INT_MAX; /* of the thinner ones: a thick one that fails by a bound answers nothing for them */
    for (int i = 0; i < count; i++) {
        if (tried[i].trial.lacks == NULL) {
            const int open = tried[i].mechanics.open.count;
            least = open < least ? open : least;
            tried[i].doubt = open - least;
        }
    }
}

static int lacking_figures(const struct Trial *trial)
{
    return trial->gaps + trial->gaps_behind;
}

/* A size that lacks a figure where another has one is no better than one that no table has. */
static void drop_gaps(struct Tried *tried, int count)
{
    int least = INT_MAX;
    for (int i = 0; i < count; i++) {
        if (tried[i].trial.lacks == NULL) {
            const int gaps = lacking_figures(&tried[i].trial);
            least = gaps < least ? gaps : least;
        }
    }
    for (int i = 0; i < count; i++) {
        struct Trial *trial = &tried[i].trial;
        if (trial->lacks == NULL && trial->gap != NULL && lacking_figures(trial) > least) {
            trial->lacks = trial->gap;
            trial->lacks_at = trial->gap_at;
            tried[i] = (struct Tried){.trial = *trial, .electrical = CHECKS_MOST};
        }
    }
}

/* Where no table rates the cable that was taken. Holes go by their neighbours. */
static void warn_of_gaps(const struct Design *design, const struct RunDesign *run, const struct Trial *trial)
{
    for (int i = 0; trial->gaps > 0 && i < run->count; i++) {
        const struct Lack *lack = rate_lack(run, trial, i);
        const int index = run->run->along[i];
        const struct Segment *segment = &design->survey->segments[index];
        if (lack != NULL && !survey_hole(segment->way)) {
            diag_report_of(design->diag, DIAG_SEGMENT(index), MSG_CAPACITY_FIGURE_OPEN, segment->mark,
                           (int)utf8_count(segment->name),
                           DIAG_WORDS(segment->name, diag_phrase(lack->message), diag_phrase(lack->advice)));
        }
    }
}

/* Every size, and which is best; NULL without memory. */
static const struct Tried *try_all(const struct Design *design, const struct RunDesign *run, struct RatedSizes rated,
                                   int *out_count, int *out_best)
{
    const double *sizes;
    const int count = sizes_to_try(run, &sizes);
    struct Tried *tried = arena_array(design->arena, (size_t)count, sizeof *tried);
    if (tried == NULL || rated.due == NULL) {
        return NULL;
    }
    for (int i = 0; i < count; i++) {
        tried[i] = try_size(run, rated, sizes[i]);
    }
    drop_gaps(tried, count);
    weigh_doubts(tried, count);
    *out_count = count;
    *out_best = best_of(tried, count);
    return tried;
}

/* Of which no size is rated yet; NULL for what is due: no memory. */
static struct RatedSizes none_rated(const struct Design *design, const struct RunDesign *run)
{
    struct MechanicsDue *due = arena_alloc(design->arena, sizeof *due);
    if (due != NULL) {
        *due = mechanics_due(design->arena, run);
    }
    return (struct RatedSizes){.due = arena_failed(design->arena) ? NULL : due};
}

static struct RatedSizes trials_of(const struct Design *design, const struct Tried *tried, int count,
                                   const struct MechanicsDue *due)
{
    struct RatedSize *sizes = arena_array(design->arena, (size_t)count, sizeof *sizes);
    for (int i = 0; sizes != NULL && i < count; i++) {
        sizes[i] = (struct RatedSize){tried[i].trial, &tried[i].mechanics};
    }
    return (struct RatedSizes){sizes, sizes != NULL ? count : 0, due};
}

bool choose_size(const struct Design *design, const struct RunDesign *run, struct PlanRun *plan_run,
                 struct RatedSizes *out_rated)
{
    int count = 0;
    int best = 0;
    if (run->run->cable.size_mm2.given && !table_has_size(run, run->run->cable.size_mm2.value)) {
        report_unknown_size(design, run);
        return false;
    }
    const struct RatedSizes none = none_rated(design, run);
    const struct Tried *tried = try_all(design, run, none, &count, &best);
    if (tried == NULL) {
        return false;
    }
    *out_rated = trials_of(design, tried, count, none.due);
    if (tried[best].trial.lacks != NULL) {
        report_missing(design, run, &tried[best].trial);
        return false;
    }
    warn_of_gaps(design, run, &tried[best].trial);
    return fill(design, run, tried, count, best, plan_run);
}

bool choose_size_alone(const struct Design *design, const struct RunDesign *run, double *out_mm2)
{
    int count = 0;
    int best = 0;
    if (run->run->cable.size_mm2.given && !table_has_size(run, run->run->cable.size_mm2.value)) {
        return false;
    }
    const struct Tried *tried = try_all(design, run, none_rated(design, run), &count, &best);
    if (tried == NULL || tried[best].trial.lacks != NULL) {
        return false;
    }
    *out_mm2 = tried[best].trial.size_mm2;
    return true;
}

bool choose_alternative(const struct Design *design, const struct RunDesign *run, struct RatedSizes rated,
                        struct Alternative *out)
{
    int count = 0;
    int best = 0;
    const struct Tried *tried = try_all(design, run, rated, &count, &best);
    if (tried == NULL || tried[best].trial.lacks != NULL) {
        return false;
    }
    out->options = options_of(design, run, tried, count, best);
    out->option_count = out->options != NULL ? count : 0;
    out->pass = passes(&tried[best]);
    out->verdict = verdict_of_size(&tried[best]);
    out->size_mm2 = tried[best].trial.size_mm2;
    return out->options != NULL;
}
