/* A finished plan that breaks an invariant is never printed: each invariant broken once, and named. */
#include "run_suite.h"

#include "library/library_private.h"
#include "wend/wend.h"

#include <math.h>
#include <string.h>

static const char route[] =
    "wend: 1\n"
    "job: {title: Shed}\n"
    "supply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
    "runs:\n"
    "  feeder:\n"
    "    load: {current: 26 A}\n"
    "    cable: {type: BS5467, cores: 3}\n"
    "segments:\n"
    "  - {name: wall, way: wall, length: 2 m}\n"
    "  - {name: loft, way: loft-void, length: 9 m, insulation: surrounded, insulated-length: 0.1 m}\n";

enum { RATINGS_MOST = 4, CHECKS_MOST = 60, OPTIONS_MOST = 30 };

/* A plan of one run that may be changed; the first stretch governs or the second. */
struct Changed {
    struct Plan plan;
    struct PlanRun run;
    struct Rating ratings[RATINGS_MOST];
    struct Factor factors[RATINGS_MOST][RATING_FACTORS_MOST];
    struct Check checks[CHECKS_MOST];
    struct Option options[OPTIONS_MOST];
    int chosen, larger; /* options */
};

static void copy_of(const struct Plan *plan, struct Changed *out)
{
    const struct PlanRun *run = &plan->runs[0];
    ck_assert(run->rating_count <= RATINGS_MOST && run->check_count <= CHECKS_MOST &&
              run->option_count <= OPTIONS_MOST);
    *out = (struct Changed){.plan = *plan, .run = *run};
    memcpy(out->ratings, run->ratings, (size_t)run->rating_count * sizeof *out->ratings);
    for (int i = 0; i < run->rating_count; i++) {
        for (int k = 0; k < run->ratings[i].factor_count; k++) {
            out->factors[i][k] = run->ratings[i].factors[k];
        }
        out->ratings[i].factors = out->factors[i];
    }
    memcpy(out->checks, run->checks, (size_t)run->check_count * sizeof *out->checks);
    memcpy(out->options, run->options, (size_t)run->option_count * sizeof *out->options);
    out->plan.runs = &out->run;
    out->run.ratings = out->ratings;
    out->run.checks = out->checks;
    out->run.options = out->options;
    while (!out->options[out->chosen].chosen) {
        out->chosen++;
    }
    out->larger = out->chosen + 1;
    ck_assert(out->chosen > 0 && out->larger < run->option_count && out->options[out->larger].pass);
}

static const struct Say unheld = {.id = SAY_NOTHING};

static void not_held(struct Changed *it, int stretch)
{
    struct Rating *rating = &it->ratings[stretch];
    rating->lacks = &unheld;
    rating->capacity_a = rating->tabulated_a = 0;
    rating->factor_count = 0;
}

#define BREAKS(name, change)                                                                                           \
    static void name(struct Changed *it)                                                                               \
    {                                                                                                                  \
        change;                                                                                                        \
    }
BREAKS(factor_nan, it->factors[0][0].value = NAN)
BREAKS(factor_none, it->factors[1][0].value = 0)
BREAKS(factor_silent, it->factors[1][0].because = NULL)
BREAKS(factor_unsourced, it->factors[1][0].source = NULL)
BREAKS(product_other, it->ratings[1].factor *= 1.001)
BREAKS(product_endless, it->ratings[1].factor = HUGE_VAL)
BREAKS(capacity_other, it->ratings[1 - it->run.governing].capacity_a *= 1.001)
BREAKS(capacity_nan, it->ratings[1 - it->run.governing].capacity_a = NAN)
BREAKS(capacity_endless,
       it->ratings[1 - it->run.governing].capacity_a = it->ratings[1 - it->run.governing].tabulated_a = HUGE_VAL)
BREAKS(tabulated_none, it->ratings[0].tabulated_a = it->ratings[0].capacity_a = 0)
BREAKS(figure_unheld_capacity, it->ratings[0].lacks = &unheld; it->ratings[0].tabulated_a = 0;
       it->ratings[0].factor_count = 0)
BREAKS(figure_unheld_tabulated, it->ratings[0].lacks = &unheld; it->ratings[0].capacity_a = 0;
       it->ratings[0].factor_count = 0)
BREAKS(figure_unheld_factor, it->ratings[0].lacks = &unheld; it->ratings[0].capacity_a = 0;
       it->ratings[0].tabulated_a = 0)
BREAKS(unheld_governs, not_held(it, it->run.governing); it->run.capacity_a = 0)
BREAKS(unheld_passes, not_held(it, 1 - it->run.governing); it->run.verdict = VERDICT_PASS)
BREAKS(less_elsewhere, it->ratings[1 - it->run.governing].tabulated_a *= 0.1;
       it->ratings[1 - it->run.governing].capacity_a *= 0.1)
BREAKS(warmth_nan, it->ratings[0].conductor_degc = NAN)
BREAKS(drop_nan, it->ratings[0].drop_v = NAN)
BREAKS(drop_negative, it->ratings[0].drop_v = -it->ratings[0].drop_v)
BREAKS(drop_expected_more, it->ratings[0].drop_expected_v = 1.01 * it->ratings[0].drop_v)
BREAKS(table_too_hot, it->ratings[0].table_degc = it->run.rated_for_degc + 1)
BREAKS(governing_other, it->run.governing = 1 - it->run.governing)
BREAKS(governing_beyond, it->run.governing = it->run.rating_count)
BREAKS(governing_negative, it->run.governing = -1)
BREAKS(capacity_of_run, it->run.capacity_a += 0.1)
BREAKS(drop_of_run, it->run.drop_v += 0.01)
BREAKS(percent_of_run, it->run.drop_percent -= 0.01)
BREAKS(percent_nan, it->run.drop_percent = NAN)
BREAKS(length_of_run, it->run.electrical_length_m += 0.01)
BREAKS(order_too_short, it->run.order_length_m = 1)
BREAKS(route_too_long, it->run.route_length_m = it->run.electrical_length_m + 1)
BREAKS(length_nan, it->run.route_length_m = NAN)
BREAKS(check_untitled, it->checks[1].title = SAY_NOTHING)
BREAKS(check_nan, it->checks[0].limit = NAN)
BREAKS(check_endless, it->checks[0].value = HUGE_VAL)
BREAKS(check_open_for_nothing, (it->checks[0].open = true, it->checks[0].unknown = false))
BREAKS(check_open_unsettled, it->checks[0].open = it->checks[0].unknown = true;
       it->checks[0].settles = (struct Settles){.key = NULL})
BREAKS(check_fails_unheard, it->checks[0].result = CHECK_FAIL)
BREAKS(run_passes_unproved, (it->run.verdict = VERDICT_PASS))
BREAKS(run_fails_alone, (it->run.pass = false))
BREAKS(options_fall, it->options[1].size_mm2 = it->options[0].size_mm2)
BREAKS(chosen_of_other_size, it->run.size_mm2 = it->options[it->larger].size_mm2)
BREAKS(chosen_of_other_verdict, it->options[it->chosen].verdict = VERDICT_FAIL)
BREAKS(chosen_fails, (it->options[it->chosen].pass = false))
BREAKS(smaller_passes, it->options[it->chosen - 1].pass = true)
BREAKS(none_chosen, it->options[it->chosen].chosen = false)
BREAKS(two_chosen, (it->options[it->larger] = it->options[it->chosen], it->options[it->larger].size_mm2 *= 1 + 1e-10))
BREAKS(plan_passes, (it->plan.pass = !it->plan.pass))
BREAKS(plan_better, it->plan.verdict = VERDICT_PASS)
BREAKS(plan_worse, it->plan.verdict = VERDICT_FAIL)

static const struct {
    void (*change)(struct Changed *it);
    const char *told;
} rows[] = {
    {factor_nan, "a factor without value"},
    {factor_none, "a factor without value"},
    {factor_silent, "a factor without value"},
    {factor_unsourced, "a factor without value"},
    {product_other, "do not multiply"},
    {product_endless, "do not multiply"},
    {capacity_other, "the capacity is not"},
    {capacity_nan, "the capacity is not"},
    {capacity_endless, "the capacity is not"},
    {tabulated_none, "the capacity is not"},
    {figure_unheld_capacity, "a figure where none is held"},
    {figure_unheld_tabulated, "a figure where none is held"},
    {figure_unheld_factor, "a figure where none is held"},
    {unheld_governs, "where no figure is held"},
    {unheld_passes, "where no figure is held"},
    {less_elsewhere, "carries less than the governing"},
    {warmth_nan, "out of range"},
    {drop_nan, "out of range"},
    {drop_negative, "out of range"},
    {drop_expected_more, "out of range"},
    {table_too_hot, "hotter than insulation"},
    {governing_other, "governing"},
    {governing_beyond, "governing"},
    {governing_negative, "governing"},
    {capacity_of_run, "governing"},
    {drop_of_run, "the drops"},
    {percent_of_run, "the drops"},
    {percent_nan, "the drops"},
    {length_of_run, "the lengths"},
    {order_too_short, "shorter than the one"},
    {route_too_long, "shorter than the one"},
    {length_nan, "shorter than the one"},
    {check_untitled, "untitled"},
    {check_nan, "not a number"},
    {check_endless, "not a number"},
    {check_open_for_nothing, "without what would settle it"},
    {check_open_unsettled, "without what would settle it"},
    {check_fails_unheard, "a run's verdict"},
    {run_passes_unproved, "a run's verdict"},
    {run_fails_alone, "a run's verdict"},
    {options_fall, "rising order"},
    {chosen_of_other_size, "the chosen option"},
    {chosen_of_other_verdict, "the chosen option"},
    {chosen_fails, "the chosen option"},
    {smaller_passes, "a smaller size"},
    {none_chosen, "exactly one"},
    {two_chosen, "exactly one"},
    {plan_passes, "the plan's verdict"},
    {plan_better, "the plan's verdict"},
    {plan_worse, "the plan's verdict"},
};

/* What is told of the row's plan once it is broken. */
static const char *told_of(enum WendWanted wanted, int row)
{
    struct Wend *wend = wend_plan_wanted(wanted, "shed", route, sizeof route - 1, NULL, 0);
    ck_assert_int_eq(wend_verdict(wend), WEND_OPEN);
    struct Changed changed;
    copy_of(library_plan(wend), &changed);
    ck_assert_ptr_null(plan_check(&changed.plan));
    rows[row].change(&changed);
    const char *told = plan_check(&changed.plan);
    wend_free(wend);
    return told;
}

/* A plan for its verdict alone has no factors one by one; all else holds of it too. */
START_TEST(a_broken_plan_is_told)
{
    const char *told = told_of(WEND_WANT_DOCUMENTS, _i);
    ck_assert_msg(told != NULL && strstr(told, rows[_i].told) != NULL, "row %d: told is %s", _i,
                  told == NULL ? "nothing" : told);
    const bool of_factor = strstr(told, "a factor without value") != NULL || rows[_i].change == figure_unheld_factor;
    ck_assert_msg((told_of(WEND_WANT_VERDICT, _i) == NULL) == of_factor, "row %d, of a plan for its verdict", _i);
}
END_TEST

/* A stretch for which no figure is held breaks nothing where the run is open and another stretch governs. */
START_TEST(an_open_plan_may_lack_a_figure)
{
    struct Wend *wend = wend_plan("shed", route, sizeof route - 1);
    struct Changed changed;
    copy_of(wend_result(wend), &changed);
    not_held(&changed, 1 - changed.run.governing);
    ck_assert_ptr_null(plan_check(&changed.plan));
    wend_free(wend);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("plan check");
    TCase *tests = tcase_create("plan check");
    tcase_add_loop_test(tests, a_broken_plan_is_told, 0, (int)(sizeof rows / sizeof rows[0]));
    tcase_add_test(tests, an_open_plan_may_lack_a_figure);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
