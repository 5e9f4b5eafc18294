/* What a meter should show, and what it is held against: the one place for the test sheet and for readings. */
#include "plan.h"

#include <math.h>

struct ReadingsAt readings_at(const struct Readings *readings, double degc)
{
    struct ReadingsAt at = {.r1_ohm = readings->r1_20_ohm * (1 + readings->r1_per_k * (degc - 20)),
                            .r2_ohm = readings->r2_20_ohm * (1 + readings->r2_per_k * (degc - 20))};
    if (readings->r2_20_ohm > 0) {
        at.r1r2_ohm = at.r1_ohm + at.r2_ohm;
        at.zs_ohm = readings->ze_ohm > 0 ? readings->ze_ohm + hypot(at.r1r2_ohm, readings->reactance_ohm) : 0;
    }
    return at;
}

double readings_touch_ohm(const struct Readings *readings, double residual_a)
{
    return residual_a > 0 ? floor(readings->touch_v / residual_a + 1e-9) : 0;
}

static const struct Check *find_check(const struct PlanRun *run, const char *id)
{
    for (int i = 0; i < run->check_count; i++) {
        if (text_same(run->checks[i].id, id)) {
            return &run->checks[i];
        }
    }
    return NULL;
}

/* Cut, not rounded: a limit on paper is never more than the limit. */
static double cut(double ohm)
{
    return floor(ohm * 100 + 1e-9) / 100;
}

/* By the overcurrent part where the check compared ohms, else by the residual part. */
struct LoopLimit readings_loop_limit(const struct PlanRun *run)
{
    const struct Check *check = find_check(run, "disconnection");
    const bool made = check != NULL && check->result != CHECK_NOT_DUE;
    if (made && check->unit == UNIT_OHM) {
        return (struct LoopLimit){
            .known = true, .ohm = cut(check->limit), .cold_ohm = cut(run->readings.cold_part * check->limit)};
    }
    const double touch_ohm = made ? readings_touch_ohm(&run->readings, run->readings.residual_a) : 0;
    return (struct LoopLimit){.known = touch_ohm > 0, .residual = true, .ohm = touch_ohm, .cold_ohm = touch_ohm};
}

bool fit_is_good(enum Fit fit)
{
    return fit == FIT_FITS;
}

enum Verdict readings_verdict_alone(const struct Plan *plan)
{
    enum Verdict worst = plan->survey->has_readings ? VERDICT_PASS : VERDICT_OPEN;
    for (int i = 0; i < plan->run_count; i++) {
        const struct PlanRun *run = &plan->runs[i];
        if (run->rated && run->measured.list != NULL && run->measured.verdict < worst) {
            worst = run->measured.verdict;
        }
    }
    return worst;
}

enum Verdict readings_verdict(const struct Plan *plan)
{
    const enum Verdict alone = readings_verdict_alone(plan);
    return plan->verdict < alone ? plan->verdict : alone;
}
