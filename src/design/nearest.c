/* Which checks of a run are nearest to their limits, and how much more cable or load brings them there. There is no
 * second calculation: the run is made longer or its load larger, and the check itself is made again. */
#include "design/terms/design_private.h"

#include <math.h>

/* ---- a run made longer, or its load larger ---- */

struct Growth {
    const struct RunDesign *run;
    const struct Trial *trial;    /* of its size */
    bool of_load;                 /* by amperes in the heaviest line; else by metres of cable */
    struct LineLoad *loads;       /* room for as many as the run has */
    const struct Choice *choices; /* what its stretches carry */
};

struct Grown {
    struct RunDesign run;
    struct Trial trial;
};

/* A separate protective conductor goes where the run goes. */
static struct Grown made_longer(const struct Growth *growth, double more_m)
{
    struct Grown longer = {*growth->run, rate_longer(growth->run, growth->trial, more_m)};
    longer.run.electrical_length_m += more_m;
    longer.run.separate_m = fmax(longer.run.separate_m + more_m, 0.001); /* read where there is one */
    return longer;
}

static struct Grown made_larger(const struct Growth *growth, double more_a)
{
    struct RunDesign larger = *growth->run;
    const double times = 1 + more_a / larger.demand.design_a;
    for (int i = 0; i < larger.loads.count; i++) {
        growth->loads[i] = larger.loads.loads[i];
        growth->loads[i].current_a *= times;
    }
    larger.loads.loads = growth->loads;
    larger.demand.design_a *= times;
    for (int line = 0; line < 3; line++) {
        larger.demand.currents.line_a[line] *= times;
    }
    larger.start_a = run_start_a(larger.run, &larger.demand);
    if (larger.phases == 3) {
        larger.neutral = neutral_of(&larger.loads, &larger.demand.currents, larger.terms.third_harmonic_percent);
    }
    return (struct Grown){larger, rate_chosen(&larger, growth->trial->size_mm2, growth->choices)};
}

enum { TENTHS = 10 };

static struct Grown grown(const struct Growth *growth, int tenths)
{
    const double more = (double)tenths / TENTHS;
    return growth->of_load ? made_larger(growth, more) : made_longer(growth, more);
}

/* ---- how much more ---- */

/* The part of the limit that is used; 0 where nothing is compared. */
static double used_of(const struct Check *check)
{
    if (check->value <= 0 || check->limit <= 0) {
        return 0;
    }
    return check->at_least ? check->limit / check->value : check->value / check->limit;
}

/* A length or a load, and the result of a check there. */
struct Point {
    int tenths; /* of a metre or an ampere more */
    bool passes;
    double used;
};

static struct Point look(const struct Grown *grown, int tenths, const char *id)
{
    struct Check check = {.result = CHECK_NOT_DUE};
    check_once(NULL, &grown->run, &grown->trial, id, &check);
    return (struct Point){tenths, check.result == CHECK_PASS, used_of(&check)};
}

static struct Point look_at(const struct Growth *growth, int tenths, const char *id)
{
    const struct Grown there = grown(growth, tenths);
    return look(&there, tenths, id);
}

/* Where between the two the limit would lie if what is used grew evenly; now and then the middle, since it need not. */
static int between(const struct Point *passing, const struct Point *failing, int step)
{
    const int apart = failing->tenths - passing->tenths;
    int ahead = apart / 2;
    if (step % 3 != 2 && passing->used > 0 && passing->used < 1 && failing->used > 1) {
        ahead = (int)(apart * (1 - passing->used) / (failing->used - passing->used));
    }
    return passing->tenths + (ahead < 1 ? 1 : ahead > apart - 1 ? apart - 1 : ahead);
}

/* Between one that passes and one that does not: more cable or load never helps a check. */
static double most_passing(const struct Growth *growth, const char *id, struct Point passing, struct Point failing)
{
    for (int step = 0; failing.tenths - passing.tenths > 1; step++) {
        const struct Point point = look_at(growth, between(&passing, &failing, step), id);
        *(point.passes ? &passing : &failing) = point;
    }
    return (double)passing.tenths / TENTHS;
}

/* The search goes up to four times as much again, and down to a hundredth. */
#define MOST_MORE 4.0
#define MOST_LESS 0.99

/* How much more length or load each check of a run passes with. */
struct Limits {
    bool given[CHECKS_MOST]; /* as many as check_all() makes; checks of one segment have none */
    double more[CHECKS_MOST];
};

static struct Limits limits_of(const struct Growth *growth, const struct PlanRun *run)
{
    struct Limits limits = {{false}, {0}};
    const double of = growth->of_load ? growth->run->demand.design_a : growth->run->electrical_length_m;
    const int most = (int)ceil(MOST_MORE * of * TENTHS);
    const int least = (int)ceil(-MOST_LESS * of * TENTHS);
    const struct Grown large = grown(growth, most);
    const struct Grown now = grown(growth, 0);
    const struct Grown small = run->pass ? now : grown(growth, least);
    for (int i = 0; i < run->check_count && i < CHECKS_MOST; i++) {
        const struct Check *check = &run->checks[i];
        if (check->result == CHECK_NOT_DUE || check->segment != NULL) {
            continue;
        }
        const bool passes = check->result == CHECK_PASS;
        const struct Point low = passes ? look(&now, 0, check->id) : look(&small, least, check->id);
        const struct Point high = passes ? look(&large, most, check->id) : look(&now, 0, check->id);
        if (low.passes && !high.passes) {
            limits.given[i] = true;
            limits.more[i] = most_passing(growth, check->id, low, high);
        }
    }
    return limits;
}

/* ---- which ---- */

/* A standard size or rating that exactly meets its rule was chosen to: it is not close to failing. */
static bool met_by_choice(const struct Check *check)
{
    static const char *const chosen[] = {"protective-conductor", "bonding", "residual-protection", "device-for-load"};
    for (size_t i = 0; i < sizeof chosen / sizeof chosen[0]; i++) {
        if (text_same(check->id, chosen[i])) {
            return within(check->value, check->limit) && within(check->limit, check->value);
        }
    }
    return false;
}

static bool is_compared(const struct Check *check)
{
    return check->result != CHECK_NOT_DUE && check->unit != UNIT_NONE && used_of(check) > 0 && !met_by_choice(check);
}

static bool same_kind(const struct Check *a, const struct Check *b)
{
    return text_same(a->kind, b->kind);
}

static bool nearer(const struct Check *a, const struct Check *b)
{
    if ((a->result == CHECK_FAIL) != (b->result == CHECK_FAIL)) {
        return a->result == CHECK_FAIL;
    }
    return used_of(a) > used_of(b);
}

/* Inserts a check in order, the nearest first; of each kind only the nearest is kept. */
static void insert(struct PlanRun *run, int check)
{
    struct Nearest *list = run->nearest;
    int at = 0;
    while (at < run->nearest_count && !nearer(&run->checks[check], &run->checks[list[at].check])) {
        if (same_kind(&run->checks[check], &run->checks[list[at].check])) {
            return;
        }
        at++;
    }
    int end = at; /* of those that move down by one */
    while (end < run->nearest_count && !same_kind(&run->checks[check], &run->checks[list[end].check])) {
        end++;
    }
    if (end == run->nearest_count && run->nearest_count < NEAREST_MOST) {
        run->nearest_count++;
    }
    for (int i = end < NEAREST_MOST ? end : NEAREST_MOST - 1; i > at; i--) {
        list[i] = list[i - 1];
    }
    if (at < NEAREST_MOST) {
        list[at] = (struct Nearest){.check = check};
    }
}

static void find_nearest(struct PlanRun *run)
{
    for (int i = 0; i < run->check_count; i++) {
        if (is_compared(&run->checks[i])) {
            insert(run, i);
        }
    }
    for (int i = 0; i < run->nearest_count; i++) {
        struct Nearest *near = &run->nearest[i];
        const struct Check *check = &run->checks[near->check];
        near->used = used_of(check);
        near->margin = check->at_least ? check->value - check->limit : check->limit - check->value;
    }
}

/* ---- in words ---- */

/* As many digits as it takes to see that a value is on the wrong side of its limit. */
static int digits_of(struct Arena *arena, const struct Check *check)
{
    int digits = 4;
    while (
        digits < 9 && !within(used_of(check), 1) &&
        text_same(number_significant(arena, check->value, digits), number_significant(arena, check->limit, digits))) {
        digits++;
    }
    return digits;
}

static struct SayArg more(bool known, double value, enum Unit unit)
{
    return known ? say_digits(fabs(value), 5, unit) : say_part(NULL);
}

static const struct Say *and_then(struct Arena *arena, const struct Nearest *near, bool passes)
{
    const struct SayArg by_length = more(near->by_length, near->more_m, UNIT_M);
    const struct SayArg by_load = more(near->by_load, near->more_a, UNIT_A);
    if (!near->by_length && !near->by_load) {
        return NULL;
    }
    if (near->by_length && near->by_load) {
        return say(arena, passes ? SAY_FAILS_WITH_MORE_OF_EITHER : SAY_PASSES_WITH_LESS_OF_EITHER, by_length, by_load);
    }
    const bool any = passes && fabs(near->by_length ? near->more_m : near->more_a) < 1e-9;
    if (any) {
        return say(arena, near->by_length ? SAY_FAILS_WITH_ANY_MORE_CABLE : SAY_FAILS_WITH_ANY_MORE_LOAD);
    }
    if (near->by_length) {
        return say(arena, passes ? SAY_FAILS_WITH_MORE_CABLE : SAY_PASSES_WITH_LESS_CABLE, by_length);
    }
    return say(arena, passes ? SAY_FAILS_WITH_MORE_LOAD : SAY_PASSES_WITH_LESS_LOAD, by_load);
}

static const struct Say *nearest_said(struct Arena *arena, const struct Nearest *near, const struct Check *check)
{
    const int digits = digits_of(arena, check);
    return say(arena, check->at_least ? SAY_NEAREST_AT_LEAST : SAY_NEAREST_AT_MOST, say_term(check->title),
               check->segment != NULL ? say_name(check->segment) : say_part(NULL),
               say_digits(check->value, digits, check->unit), say_digits(check->limit, digits, check->unit),
               say_part(and_then(arena, near, check->result == CHECK_PASS)));
}

/* ---- all runs ---- */

static struct Headroom headroom_of(const struct Limits *limits, const struct PlanRun *run)
{
    struct Headroom headroom = {0};
    for (int i = 0; run->pass && i < run->check_count && i < CHECKS_MOST; i++) {
        if (limits->given[i] && (!headroom.known || limits->more[i] < headroom.more)) {
            headroom = (struct Headroom){true, i, limits->more[i]};
        }
    }
    return headroom;
}

static void give_limits(const struct Limits *length, const struct Limits *load, struct PlanRun *out)
{
    out->more_cable = headroom_of(length, out);
    out->more_load = headroom_of(load, out);
    for (int i = 0; i < out->nearest_count; i++) {
        struct Nearest *near = &out->nearest[i];
        if (near->check < CHECKS_MOST) {
            near->by_length = length->given[near->check];
            near->more_m = length->more[near->check];
            near->by_load = load->given[near->check];
            near->more_a = load->more[near->check];
        }
    }
}

static bool find_limits(const struct Design *design, const struct RunDesign *run, struct PlanRun *out)
{
    struct Arena *apart = arena_apart(design->arena);
    const struct Choice *choices = rate_choices(apart, run, out->size_mm2);
    const struct Trial trial = rate_chosen(run, out->size_mm2, choices);
    struct Growth growth = {.run = run, .trial = &trial, .choices = choices};
    growth.loads = arena_array(apart, (size_t)run->loads.count, sizeof *growth.loads);
    if (growth.loads == NULL) {
        arena_free(apart);
        return false;
    }
    const struct Limits length = limits_of(&growth, out);
    growth.of_load = true;
    const struct Limits load = limits_of(&growth, out);
    give_limits(&length, &load, out);
    arena_free(apart);
    return true;
}

bool list_nearest(const struct Design *design, struct PlanRun *runs, int count)
{
    for (int r = 0; r < count; r++) {
        struct PlanRun *run = &runs[r];
        find_nearest(run);
        if (run->rated && !find_limits(design, &design->works[r], run)) {
            return false;
        }
        for (int i = 0; i < run->nearest_count; i++) {
            run->nearest[i].text = nearest_said(design->arena, &run->nearest[i], &run->checks[run->nearest[i].check]);
        }
    }
    return true;
}
