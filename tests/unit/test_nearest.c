/* What stands nearest to its limit, and how much more cable or load it takes to get there: the whole route, surveyed
 * that much longer or with that much more load, must come to the same. */
#include "explain_routes.h"
#include "made_route.h"
#include "read_route.h"
#include "run_suite.h"
#include "said.h"

#include "design/design.h"

#include <math.h>
#include <string.h>

static const char *const files[] = {"bell-tower",   "cider-barn", "grain-auger", "joinery-shed",
                                    "lambing-shed", "pottery",    "well-pump"};
enum { FILES = (int)(sizeof files / sizeof files[0]), MADE = 120 };

static const struct Plan *plan_of(struct ReadRoute *route, const struct Survey *survey)
{
    const struct Plan *plan = design_plan(route->arena, diag_new(route->arena), survey, "route");
    ck_assert_ptr_nonnull(plan);
    return plan;
}

/* ---- the same route with more cable or more load ---- */

struct More {
    int run;
    double cable_m, load_a;
};

/* Sizes and devices stay as they were decided. */
static void hold_decision(struct Run *run, const struct PlanRun *planned)
{
    if (planned->rated) {
        run->device = planned->settled->device;
        run->device.given = run->device.kind_given = run->device.curve_given = true;
        run->device.rating_a = (struct Quantity){.value = planned->rating_a, .given = true};
        run->cable.size_mm2 = (struct Quantity){.value = planned->size_mm2, .given = true};
    }
}

static void load_more(struct ReadRoute *route, struct Run *run, double times)
{
    struct Load *loads = arena_array(route->arena, (size_t)run->load_count, sizeof *loads);
    for (int i = 0; i < run->load_count; i++) {
        loads[i] = run->loads[i];
        loads[i].current_a.value *= times;
        loads[i].power_w.value *= times;
    }
    run->loads = loads;
}

static const struct Plan *plan_with(struct ReadRoute *route, const struct Plan *plan, struct More more)
{
    struct Survey survey = *route->survey;
    struct Run *runs = arena_array(route->arena, (size_t)survey.run_count, sizeof *runs);
    for (int r = 0; r < survey.run_count; r++) {
        runs[r] = survey.runs[r];
        hold_decision(&runs[r], &plan->runs[r]);
    }
    struct Run *run = &runs[more.run];
    run->finish.tail_m.value += more.cable_m;
    if (run->cable.cpc == CPC_SEPARATE) { /* it goes where the run goes */
        runs[run->cable.cpc_run].finish.tail_m.value += more.cable_m;
    }
    load_more(route, run, 1 + more.load_a / plan->runs[more.run].design_current_a);
    struct Survey *changed = arena_alloc(route->arena, sizeof *changed);
    survey.runs = runs;
    *changed = survey;
    return plan_of(route, changed);
}

static bool passes_with(struct ReadRoute *route, const struct Plan *plan, const char *id, struct More more)
{
    const struct PlanRun *run = &plan_with(route, plan, more)->runs[more.run];
    for (int i = 0; i < run->check_count; i++) {
        if (strcmp(run->checks[i].id, id) == 0) {
            return run->checks[i].result == CHECK_PASS;
        }
    }
    ck_abort_msg("%s is gone", id);
    return false;
}

static void hold_growth(struct ReadRoute *route, const struct Plan *plan, int r, const struct Nearest *near)
{
    const char *id = plan->runs[r].checks[near->check].id;
    const double tenth = 0.1;
    if (near->by_length) {
        ck_assert_msg(passes_with(route, plan, id, (struct More){r, near->more_m, 0}), "%s %g m", id, near->more_m);
        ck_assert_msg(!passes_with(route, plan, id, (struct More){r, near->more_m + tenth, 0}), "%s past %g m", id,
                      near->more_m);
    }
    if (near->by_load) {
        ck_assert_msg(passes_with(route, plan, id, (struct More){r, 0, near->more_a}), "%s %g A", id, near->more_a);
        ck_assert_msg(!passes_with(route, plan, id, (struct More){r, 0, near->more_a + tenth}), "%s past %g A", id,
                      near->more_a);
    }
}

/* Up to there every check has the result that it has now, and past it that one has not. */
static void hold_headroom(struct ReadRoute *route, const struct Plan *plan, int r, bool of_load)
{
    const struct PlanRun *run = &plan->runs[r];
    const struct Headroom *headroom = of_load ? &run->more_load : &run->more_cable;
    if (!headroom->known) {
        return;
    }
    const double past = headroom->more + 0.1;
    const struct More there = {r, of_load ? 0 : headroom->more, of_load ? headroom->more : 0};
    const struct More beyond = {r, of_load ? 0 : past, of_load ? past : 0};
    const struct PlanRun *now = &plan_with(route, plan, there)->runs[r];
    for (int i = 0; i < now->check_count; i++) {
        ck_assert_msg(now->checks[i].result == run->checks[i].result || run->checks[i].segment != NULL, "%s",
                      run->checks[i].id);
    }
    ck_assert(!passes_with(route, plan, run->checks[headroom->check].id, beyond));
}

/* ---- what must hold of any plan ---- */

static double used(const struct Check *check)
{
    return check->at_least ? check->limit / check->value : check->value / check->limit;
}

static bool is_of(const char *id, const char *kind)
{
    return strcmp(id, kind) == 0;
}

/* None that is left out is nearer than the last one listed, but one of a kind that is listed, or that was chosen to
 * meet its limit and does so exactly. */
static void hold_order(const struct PlanRun *run)
{
    const struct Nearest *last = run->nearest_count > 0 ? &run->nearest[run->nearest_count - 1] : NULL;
    for (int i = 0; i < run->check_count; i++) {
        const struct Check *check = &run->checks[i];
        bool listed =
            check->result == CHECK_NOT_DUE || check->unit == UNIT_NONE || check->value <= 0 || check->limit <= 0;
        for (int n = 0; n < run->nearest_count; n++) {
            const char *id = run->checks[run->nearest[n].check].id;
            listed = listed || strncmp(id, check->id, strcspn(check->id, ":") + 1) == 0;
        }
        const bool met = fabs(check->value - check->limit) < 1e-6 &&
                         (is_of(check->id, "protective-conductor") || is_of(check->id, "bonding") ||
                          is_of(check->id, "residual-protection") || is_of(check->id, "device-for-load"));
        if (!listed && !met) {
            ck_assert_msg(last != NULL && run->nearest_count == NEAREST_MOST, "%s is missing", check->id);
            ck_assert_msg(used(check) <= last->used || run->checks[last->check].result == CHECK_FAIL,
                          "%s is nearer than %s", check->id, run->checks[last->check].id);
            ck_assert_msg(check->result != CHECK_FAIL || run->checks[last->check].result == CHECK_FAIL,
                          "%s fails and is not listed", check->id);
        }
    }
}

static void hold_run(struct Arena *arena, const struct PlanRun *run)
{
    hold_order(run);
    for (int i = 0; i < run->nearest_count; i++) {
        const struct Nearest *near = &run->nearest[i];
        const struct Check *check = &run->checks[near->check];
        ck_assert(check->result != CHECK_NOT_DUE);
        ck_assert_double_eq_tol(near->used, used(check), 1e-12);
        ck_assert_double_eq_tol(fabs(near->margin), fabs(check->value - check->limit), 1e-9);
        ck_assert(check->result == CHECK_FAIL || near->margin >= -1e-9 * check->limit);
        ck_assert((near->by_length || near->more_m == 0) && (near->by_load || near->more_a == 0));
        ck_assert(check->result == CHECK_PASS ? near->more_m >= 0 && near->more_a >= 0
                                              : near->more_m <= 0 && near->more_a <= 0);
        const char *words = said(arena, near->text);
        ck_assert_msg(strstr(words, check->at_least ? "at least" : "at most") != NULL, "%s", words);
        ck_assert_msg((strstr(words, "of cable") != NULL) == near->by_length, "%s", words);
        ck_assert_msg((strstr(words, "of load") != NULL) == near->by_load, "%s", words);
    }
}

static int hold_route(struct ReadRoute route, int *grows)
{
    int fails = 0;
    ck_assert_msg(route.survey != NULL, "%s", read_route_reports(&route));
    const struct Plan *plan = design_plan(route.arena, route.diag, route.survey, "route");
    for (int r = 0; plan != NULL && r < plan->run_count; r++) {
        const struct PlanRun *run = &plan->runs[r];
        hold_run(route.arena, run);
        hold_headroom(&route, plan, r, false);
        hold_headroom(&route, plan, r, true);
        ck_assert(run->pass || (!run->more_cable.known && !run->more_load.known));
        *grows += run->more_cable.known + run->more_load.known;
        for (int i = 0; i < plan->runs[r].nearest_count; i++) {
            const struct Nearest *near = &plan->runs[r].nearest[i];
            hold_growth(&route, plan, r, near);
            *grows += near->by_length + near->by_load;
            fails += near->more_m < 0 || near->more_a < 0;
        }
    }
    read_route_free(&route);
    return fails;
}

START_TEST(routes_of_the_house)
{
    char path[512];
    int grows = 0;
    snprintf(path, sizeof path, "%s/%s.yaml", ROUTES_FOLDER, files[_i]);
    struct Bytes source = read_route_file(path);
    ck_assert_int_eq(hold_route(read_route(source), &grows), 0);
    free(read_route_own(source));
    ck_assert_int_ge(grows, 2);
}
END_TEST

START_TEST(routes_with_every_working)
{
    int grows = 0;
    for (int i = 0; i < EXPLAIN_ROUTES; i++) {
        hold_route(read_route_text(explain_routes[i].text), &grows);
    }
    ck_assert_int_ge(grows, 2 * EXPLAIN_ROUTES);
}
END_TEST

START_TEST(routes_at_random)
{
    static char text[MADE_TEXT_MOST];
    int grows = 0;
    int fails = 0;
    for (uint32_t seed = 1; seed <= MADE; seed++) {
        struct MadeRoute made = made_route(seed);
        made.size = seed % 4 == 0 ? 4 : made.size;
        made_write(&made, text);
        fails += hold_route(read_route_text(text), &grows);
    }
    ck_assert_int_ge(grows, MADE);
    ck_assert_int_ge(fails, 1); /* else no route was too long or too loaded */
}
END_TEST

/* ---- by hand ---- */

static const struct Nearest *of(const struct PlanRun *run, const char *id)
{
    for (int i = 0; i < run->nearest_count; i++) {
        if (strcmp(run->checks[run->nearest[i].check].id, id) == 0) {
            return &run->nearest[i];
        }
    }
    ck_abort_msg("%s is not among the nearest", id);
    return NULL;
}

#define DROP_ROUTE(length, limit)                                                                                      \
    "wend: 1\njob: {title: Byre}\nsupply: {system: TN-S, phases: 1, voltage: 230 V, loop-impedance: 0.2 ohm, "         \
    "fault-current: 1.2 kA}\nruns:\n  byre:\n    load: {current: 20 A, power-factor: 1}\n    device: {kind: MCB, "     \
    "curve: B, rating: 32 A}\n    cable: {type: BS5467, cores: 3, size: 6 mm2}\n    drop-limit: " limit                \
    "\n    start: {tail: 1 m, loop: 0 m}\n    finish: {tail: 1 m, loop: 0 m}\nsegments:\n  - {name: wall, way: wall, " \
    "length: " length "}\n"

/* Table 4E4B, 6 mm2, two cores: 7.9 mV/A/m; 3 % of 230 V at 20 A: 6.9 x 1000 / (7.9 x 20) = 43.67 m; of 40 m there are
 * 3.67 m to spare. At 40 m: 6.9 x 1000 / (7.9 x 40) = 21.83 A, 1.83 A more. */
START_TEST(drop_by_hand)
{
    struct ReadRoute route = read_route_text(DROP_ROUTE("38 m", "3 %"));
    const struct Plan *plan = plan_of(&route, route.survey);
    const struct Nearest *drop = of(&plan->runs[0], "drop");
    ck_assert_double_eq_tol(drop->more_m, 3.6, 1e-9);
    ck_assert_double_eq_tol(drop->more_a, 1.8, 1e-9);
    ck_assert_double_eq_tol(drop->used, 7.9 * 20 * 40 / 1000 / 6.9, 1e-9);
    ck_assert_str_eq(
        said(route.arena, drop->text),
        "Voltage drop: 2.748 %, at most 3 %: with more than 3.6 m of cable or 1.8 A of load more it fails");
    read_route_free(&route);
}
END_TEST

/* 50 m: 43.67 m pass, so 6.33 m have to go, to whole tenths 6.4 m; 6.9 x 1000 / (7.9 x 50) = 17.468 A: 2.6 A less. */
START_TEST(too_long_by_hand)
{
    struct ReadRoute route = read_route_text(DROP_ROUTE("48 m", "3 %"));
    const struct Plan *plan = plan_of(&route, route.survey);
    const struct Nearest *drop = of(&plan->runs[0], "drop");
    ck_assert_int_eq(plan->runs[0].nearest[0].check, drop->check);
    ck_assert_double_eq_tol(drop->more_m, -6.4, 1e-9);
    ck_assert_double_eq_tol(drop->more_a, -2.6, 1e-9);
    ck_assert_double_lt(drop->margin, 0);
    ck_assert(said_has(drop->text, "with 6.4 m of cable or 2.6 A of load less it would pass"));
    read_route_free(&route);
}
END_TEST

/* 43.676 m: 7.9 x 20 x 43.676 / 1000 = 6.9008 V, 3.00035 % of 230 V; to four digits it would seem to be the limit. */
START_TEST(just_too_long_by_hand)
{
    struct ReadRoute route = read_route_text(DROP_ROUTE("41.676 m", "3 %"));
    const struct Plan *plan = plan_of(&route, route.survey);
    const struct Nearest *drop = of(&plan->runs[0], "drop");
    ck_assert_double_lt(drop->margin, 0);
    ck_assert_msg(said_has(drop->text, "Voltage drop: 3.0004 %, at most 3 %"), "%s", plainly(drop->text));
    read_route_free(&route);
}
END_TEST

/* Three lines of 40 A, 30 % of it third harmonic: one of them alone is 40 A in the neutral, the harmonic 0.3 x 120 = 36
 * A, together hypot(40, 36) = 53.81 A. The release in the neutral opens at 63 A: 40 x 63 / 53.81 = 46.83 A, 6.8 A more.
 */
START_TEST(neutral_by_hand)
{
    static const char text[] =
        "wend: 1\njob: {title: Lamps}\nsupply: {system: TN-S, phases: 3, loop-impedance: 0.1 ohm, fault-current: 2.5 "
        "kA}\n"
        "runs:\n  lamps:\n    load:\n      - {current: 40 A, phases: 1, power-factor: 1}\n"
        "      - {current: 40 A, phases: 1, power-factor: 1}\n      - {current: 40 A, phases: 1, power-factor: 1}\n"
        "    third-harmonic: 30 %\n    device: {kind: MCB, curve: B, rating: 63 A, senses-neutral: yes, "
        "breaking-capacity: "
        "10 kA}\n    cable: {type: BS5467, cores: 5, size: 16 mm2}\n"
        "segments:\n  - {name: wall, way: ladder, length: 20 m}\n";
    struct ReadRoute route = read_route_text(text);
    const struct Plan *plan = design_plan(route.arena, route.diag, route.survey, "route");
    const struct PlanRun *run = &plan->runs[0];
    const struct Nearest *near = of(run, "neutral");
    ck_assert_double_eq_tol(run->checks[near->check].value, 53.814, 1e-3);
    ck_assert_double_eq(run->checks[near->check].limit, 63);
    ck_assert(near->by_load);
    ck_assert_double_eq_tol(near->more_a, 6.8, 1e-9);
    int grows = 0;
    hold_route(route, &grows);
}
END_TEST

/* The load alone bears on what the device carries: 32 A less 20 A, cable or not. */
START_TEST(load_by_hand)
{
    struct ReadRoute route = read_route_text(DROP_ROUTE("8 m", "5 %"));
    const struct Plan *plan = plan_of(&route, route.survey);
    const struct Nearest *load = of(&plan->runs[0], "load");
    ck_assert(!load->by_length && load->by_load);
    ck_assert_double_eq_tol(load->more_a, 12, 1e-9);
    const struct Nearest *capacity = of(&plan->runs[0], "capacity"); /* the device as it is: neither bears on it */
    ck_assert(!capacity->by_length && !capacity->by_load);
    read_route_free(&route);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("nearest");
    TCase *cases = tcase_create("nearest");
    tcase_set_timeout(cases, 120);
    tcase_add_loop_test(cases, routes_of_the_house, 0, FILES);
    tcase_add_test(cases, routes_with_every_working);
    tcase_add_test(cases, routes_at_random);
    tcase_add_test(cases, drop_by_hand);
    tcase_add_test(cases, too_long_by_hand);
    tcase_add_test(cases, just_too_long_by_hand);
    tcase_add_test(cases, load_by_hand);
    tcase_add_test(cases, neutral_by_hand);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
