/* Invariants of a finished plan. A plan that breaks one is a fault of this program, not of the survey. */
#include "plan.h"

#include <math.h>

static bool near(double a, double b)
{
    return isfinite(a) && isfinite(b) && fabs(a - b) <= 1e-9 * fmax(1.0, fmax(fabs(a), fabs(b)));
}

/* A plan that is not whole has no factors one by one. */
static const char *rating_fault(const struct Rating *rating, enum PlanExtent extent)
{
    if (rating->lacks != NULL && (rating->capacity_a > 0 || rating->tabulated_a > 0 || rating->factor_count > 0)) {
        return "a figure where none is held";
    }
    double product = 1;
    for (int i = 0; i < rating->factor_count; i++) {
        const struct Factor *factor = &rating->factors[i];
        if (!isfinite(factor->value) || factor->value <= 0 || factor->because == NULL || factor->source == NULL) {
            return "a factor without value, reason or source";
        }
        product *= factor->value;
    }
    if (rating->lacks == NULL && extent == PLAN_WHOLE && !near(product, rating->factor)) {
        return "the factors do not multiply to their product";
    }
    if (rating->lacks == NULL && (!isfinite(rating->capacity_a) || rating->tabulated_a <= 0 ||
                                  !near(rating->tabulated_a * rating->factor, rating->capacity_a))) {
        return "the capacity is not the tabulated one times its factors";
    }
    if (!isfinite(rating->conductor_degc) || !isfinite(rating->drop_v) || rating->drop_v < 0 ||
        rating->drop_expected_v > rating->drop_v * (1 + 1e-9)) {
        return "a temperature or a drop out of range";
    }
    return NULL;
}

static const char *rated_fault(const struct PlanRun *run, enum PlanExtent extent)
{
    double drop_v = 0;
    double length_m = 0;
    if (run->governing < 0 || run->governing >= run->rating_count ||
        !near(run->capacity_a, run->ratings[run->governing].capacity_a)) {
        return "what the run carries is not what its governing segment does";
    }
    for (int i = 0; i < run->rating_count; i++) {
        const char *fault = rating_fault(&run->ratings[i], extent);
        if (fault != NULL) {
            return fault;
        }
        if (run->ratings[i].table_degc > run->rated_for_degc) {
            return "a rating by a table hotter than insulation and terminals allow";
        }
        if (run->ratings[i].lacks != NULL && (run->verdict == VERDICT_PASS || i == run->governing)) {
            return "a pass, or what governs, where no figure is held";
        }
        if (run->ratings[i].lacks == NULL && run->ratings[i].capacity_a < run->ratings[run->governing].capacity_a) {
            return "another segment carries less than the governing one";
        }
        drop_v += run->ratings[i].drop_v;
        length_m += run->ratings[i].electrical_length_m;
    }
    if (!near(drop_v, run->drop_v) || !near(run->drop_v / run->voltage_v * 100, run->drop_percent)) {
        return "the drops of the segments do not add up";
    }
    if (!near(length_m, run->electrical_length_m)) {
        return "the lengths of the segments do not add up";
    }
    return NULL;
}

static const char *verdict_fault(const struct PlanRun *run)
{
    bool pass = true;
    bool open = false;
    for (int i = 0; i < run->check_count; i++) {
        const struct Check *check = &run->checks[i];
        if (check->open && (!check->unknown || !settles_something(&check->settles))) {
            return "an open check without what would settle it";
        }
        if (check->title == SAY_NOTHING) {
            return "untitled check";
        }
        open = open || check->open;
        if (!isfinite(check->value) || !isfinite(check->limit)) {
            return "a check of something that is not a number";
        }
        pass = pass && check->result != CHECK_FAIL;
    }
    if (pass != run->pass || run->verdict != (!pass ? VERDICT_FAIL : open ? VERDICT_OPEN : VERDICT_PASS)) {
        return "a run's verdict is not that of its checks";
    }
    int chosen = 0;
    for (int i = 0; i < run->option_count; i++) {
        const struct Option *option = &run->options[i];
        if (i > 0 && option->size_mm2 <= run->options[i - 1].size_mm2) {
            return "the options are not in rising order";
        }
        if (option->chosen &&
            (option->verdict != run->verdict || option->pass != run->pass || !near(option->size_mm2, run->size_mm2))) {
            return "the chosen option is not the run's size";
        }
        if (option->pass && run->pass && option->size_mm2 < run->size_mm2) {
            return "a smaller size passes every check";
        }
        chosen += option->chosen;
    }
    return chosen == 1 ? NULL : "not exactly one option is chosen";
}

const char *plan_check(const struct Plan *plan)
{
    enum Verdict worst = VERDICT_PASS;
    bool pass = true;
    for (int r = 0; r < plan->run_count; r++) {
        const struct PlanRun *run = &plan->runs[r];
        pass = pass && run->pass;
        worst = run->verdict < worst ? run->verdict : worst;
        if (!(run->order_length_m >= run->electrical_length_m - 1e-6 &&
              run->electrical_length_m >= run->route_length_m)) {
            return "a length shorter than the one it is made from";
        }
        if (!run->rated) {
            continue;
        }
        const char *fault = rated_fault(run, plan->extent);
        fault = fault != NULL ? fault : verdict_fault(run);
        if (fault != NULL) {
            return fault;
        }
    }
    return pass == plan->pass && worst == plan->verdict ? NULL : "the plan's verdict is not that of its runs";
}
