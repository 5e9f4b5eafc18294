/* What must hold of any plan, whatever its figures: it is a plan or an error, its verdict is that of its checks, a
 * check's result is that of its numbers, the chosen size is the smallest that passes, readings agree with each other.
 * See sweep_case.h. */
#include "said.h"
#include "sweep_case.h"

#include <math.h>
#include <string.h>

void sweep_hold(bool holds, const struct SweepCase *point, const char *what)
{
    if (!holds) {
        char text[SWEEP_TEXT_MOST];
        sweep_write(point, text);
        ck_abort_msg("%s\n%s", what, text);
    }
}

static bool near(double a, double b)
{
    return isfinite(a) && isfinite(b) && fabs(a - b) <= 1e-9 * fmax(1e-3, fmax(fabs(a), fabs(b)));
}

/* Not over, with room for the last digits. */
static bool at_most(double value, double limit)
{
    return value <= limit + 1e-9 * fabs(limit);
}

/* Whether `word` stands in `text` between spaces or at its ends: "load" is not in "device-for-load". */
static bool has_word(const char *text, const char *word)
{
    const size_t length = strlen(word);
    for (const char *at = strstr(text, word); at != NULL; at = strstr(at + 1, word)) {
        const bool begins = at == text || at[-1] == ' ';
        if (begins && (at[length] == ' ' || at[length] == '\0')) {
            return true;
        }
    }
    return false;
}

static size_t errors_told(const struct Wend *wend)
{
    size_t errors = 0;
    for (size_t i = 0; i < wend_diagnostics_count(wend_diagnostics(wend)); i++) {
        errors += wend_diagnostic_severity(wend_diagnostics(wend), i) == WEND_ERROR;
    }
    return errors;
}

/* A check that fails though its value keeps to its limit has to say what else it is about. */
static bool fails_for_another_reason(const char *text)
{
    static const char *const reasons[] = {"cannot be shown", "Neither part", "charging point", "residual device",
                                          "neither measured"};
    for (size_t i = 0; i < sizeof reasons / sizeof reasons[0]; i++) {
        if (strstr(text, reasons[i]) != NULL) {
            return true;
        }
    }
    return false;
}

static void check_holds(const struct SweepCase *point, const struct Plan *plan, const struct Check *check)
{
    sweep_hold(plainly(check->text)[0] != '\0' && plain_source(check)[0] != '\0', point, "a check without its words");
    sweep_hold(check->unit != UNIT_NONE || (check->value == 0 && check->limit == 0), point, "figures without a unit");
    sweep_hold(strchr(plainly(check->text), '?') == NULL, point, "a check's text has a number that is none");
    const bool keeps = check->at_least ? at_most(check->limit, check->value) : at_most(check->value, check->limit);
    sweep_hold(check->result != CHECK_PASS || keeps, point, "a check passes against its own numbers");
    sweep_hold(check->result != CHECK_FAIL || !keeps || fails_for_another_reason(plainly(check->text)), point,
               "a check fails within its limit and does not say why");
    sweep_hold(!check->unknown || check->result == CHECK_NOT_DUE, point, "a check is unknown and yet decided");
    bool listed = false;
    for (int i = 0; i < plan->not_checked_count; i++) {
        listed = listed || text_same(plan->not_checked[i].id, check->id);
    }
    sweep_hold(listed == check->unknown, point, "what was not checked is not what is listed as such");
}

/* The verdicts of check, run, plan and status are one. */
static void verdict_holds(const struct SweepCase *point, const struct Wend *wend)
{
    const struct Plan *plan = wend_result(wend);
    const struct PlanRun *run = &plan->runs[0];
    bool pass = true;
    bool open = false;
    for (int i = 0; i < run->check_count; i++) {
        check_holds(point, plan, &run->checks[i]);
        const bool fails = run->checks[i].result == CHECK_FAIL;
        pass = pass && !fails;
        open = open || run->checks[i].open;
        sweep_hold(!run->checks[i].open ||
                       text_same(settled_by(plan->open[0].settles), settled_by(run->checks[i].settles)) ||
                       plan->open_count > 1,
                   point, "what would settle a check is not in the plan");
        sweep_hold(!fails || has_word(plainly(plan->verdict_text), run->checks[i].id), point,
                   "a failed check is not in the verdict");
    }
    sweep_hold(run->pass == pass && plan->pass == pass, point, "the verdict is not that of the checks");
    sweep_hold(wend_status(wend) == (pass ? WEND_PASSES : WEND_CHECK_FAILS), point, "the status is not the verdict");
    const enum Verdict due = !pass ? VERDICT_FAIL : open ? VERDICT_OPEN : VERDICT_PASS;
    sweep_hold(run->verdict == due && plan->verdict == due && (int)wend_verdict(wend) == (int)due, point,
               "the verdict of three is not that of the checks");
    sweep_hold(due != VERDICT_PASS ||
                   text_same(plainly(plan->verdict_text), "every check that applies was made and passes") ||
                   text_same(plainly(plan->verdict_text), "every check that matters was made and passes"),
               point, "a pass has another verdict");
}

static const struct Check *check_of(const struct PlanRun *run, const char *id)
{
    for (int i = 0; i < run->check_count; i++) {
        if (text_same(run->checks[i].id, id)) {
            return &run->checks[i];
        }
    }
    return NULL;
}

/* Every one in an option's `fails` is a check of the run. */
static bool names_checks(const struct PlanRun *run, const struct CheckList *fails)
{
    if (fails->count == 1 && text_same(fails->list[0].kind, "no-figure")) {
        return true;
    }
    for (int i = 0; i < fails->count; i++) {
        if (fails->list[i].segment != NULL || check_of(run, fails->list[i].kind) == NULL) {
            return false;
        }
    }
    return true;
}

static bool names(const struct CheckList *list, const char *kind)
{
    for (int i = 0; i < list->count; i++) {
        if (text_same(list->list[i].kind, kind)) {
            return true;
        }
    }
    return false;
}

static void options_hold(const struct SweepCase *point, const struct PlanRun *run)
{
    int chosen = 0;
    for (int i = 0; i < run->option_count; i++) {
        const struct Option *option = &run->options[i];
        sweep_hold((option->verdict == VERDICT_FAIL) == (option->fails.count > 0) &&
                       (option->verdict == VERDICT_PASS) == (option->why == NULL) &&
                       (option->verdict != VERDICT_OPEN || option->open.count > 0),
                   point, "an option without a reason, or a pass with one");
        sweep_hold(!option->pass || option->verdict != VERDICT_FAIL, point, "an option that fails may be taken");
        sweep_hold(names_checks(run, &option->fails), point, "an option fails by what is no check");
        sweep_hold(!option->pass || run->pass, point, "a size passes and yet the run fails");
        sweep_hold(!option->pass || option->size_mm2 >= run->size_mm2, point, "a smaller size passes");
        if (!option->chosen) {
            continue;
        }
        chosen++;
        sweep_hold(option->size_mm2 == run->size_mm2 && near(option->capacity_a, run->capacity_a) &&
                       near(option->drop_percent, run->drop_percent) && near(option->zs_ohm, run->readings.zs_hot_ohm),
                   point, "the chosen option is not the run");
        for (int k = 0; k < run->check_count; k++) {
            const bool named = names(&option->fails, run->checks[k].kind);
            sweep_hold(named == (run->checks[k].result == CHECK_FAIL), point,
                       "the chosen option fails by other checks");
        }
    }
    sweep_hold(chosen == 1, point, "not one option is chosen");
    sweep_hold(point->size_mm2 <= 0 || (run->option_count == 1 && run->size_mm2 == point->size_mm2), point,
               "a given size is not the one that is planned");
}

static void readings_hold(const struct SweepCase *point, const struct PlanRun *run)
{
    const struct Readings *readings = &run->readings;
    sweep_hold(readings->made && readings->r1_20_ohm > 0, point, "no reading to expect");
    if (readings->r1r2_20_ohm <= 0) { /* nothing to return through: then nothing may pass by it */
        sweep_hold(check_of(run, "disconnection")->result == CHECK_FAIL && readings->zs_hot_ohm <= 0, point,
                   "a fault is cut off through nothing");
        return;
    }
    sweep_hold(near(readings->r1_20_ohm + readings->r2_20_ohm, readings->r1r2_20_ohm), point,
               "R1 and R2 are not R1 + R2");
    if (readings->ze_ohm <= 0) {
        sweep_hold(check_of(run, "disconnection")->result == CHECK_FAIL, point,
                   "a fault is cut off by what is not known");
        return;
    }
    sweep_hold(at_most(readings->ze_ohm + readings->r1r2_20_ohm, readings->zs_20_ohm), point,
               "Zs is less than its parts");
    sweep_hold(at_most(readings->zs_20_ohm, readings->zs_hot_ohm), point, "the loop is lower hot than cold");
    sweep_hold(at_most(readings->fault_far_a, 0.95 * 230 / readings->zs_hot_ohm), point,
               "more flows than the loop lets");
}

/* The plain checks once more, by other means than the program's. */
static void plain_checks_hold(const struct SweepCase *point, const struct PlanRun *run)
{
    static const double multiples[] = {5, 10, 20};
    const double rating_a = point->device.rating_a;
    const double most_percent = point->use == USE_LIGHTING ? 3 : 5;
    sweep_hold((check_of(run, "load")->result == CHECK_PASS) == at_most(point->load_ma / 1000.0, rating_a), point,
               "load");
    sweep_hold((check_of(run, "capacity")->result == CHECK_PASS) == at_most(rating_a, run->capacity_a), point,
               "capacity");
    sweep_hold((check_of(run, "drop")->result == CHECK_PASS) == at_most(run->drop_percent, most_percent), point,
               "drop");
    const bool breaker = point->device.kind == DEVICE_MCB || point->device.kind == DEVICE_RCBO;
    if (point->system == SYSTEM_TT || !breaker || run->readings.zs_hot_ohm <= 0) {
        return;
    }
    const double zs_ohm = run->readings.zs_hot_ohm;
    const bool at_once = at_most(zs_ohm, 0.95 * 230 / (multiples[point->device.curve] * rating_a));
    /* a type D up to 32 A within 5 s, Table 41.3 */
    const bool final_circuit = point->use == USE_CHARGING || (point->feeds == FEEDS_SOCKETS && rating_a <= 63) ||
                               (point->feeds == FEEDS_EQUIPMENT && rating_a <= 32);
    const bool late = point->device.curve == CURVE_D && rating_a <= 32 && !final_circuit &&
                      at_most(zs_ohm, 0.95 * 230 / (10 * rating_a));
    const bool by_residual = point->residual_ma > 0 && at_most(zs_ohm * point->residual_ma / 1000, 50);
    sweep_hold((check_of(run, "disconnection")->result == CHECK_PASS) == (at_once || late || by_residual), point,
               "disconnection");
}

void sweep_holds(const struct SweepCase *point, struct Wend *wend)
{
    const struct Plan *plan = wend_result(wend);
    sweep_hold(wend_status(wend) != WEND_NO_MEMORY, point, "no memory");
    if (plan == NULL) {
        sweep_hold(wend_status(wend) == WEND_INPUT_WRONG && errors_told(wend) > 0, point,
                   "neither a plan nor an error");
        return;
    }
    sweep_hold(errors_told(wend) == 0, point, "a plan and an error");
    const char *const fault = plan_check(plan);
    sweep_hold(fault == NULL, point, fault);
    verdict_holds(point, wend);
    options_hold(point, &plan->runs[0]);
    readings_hold(point, &plan->runs[0]);
    plain_checks_hold(point, &plan->runs[0]);
}

static struct SweepFacts facts_of(const struct PlanRun *run)
{
    struct SweepFacts facts = {.planned = true,
                               .pass = run->pass,
                               .size_mm2 = run->size_mm2,
                               .capacity_a = run->capacity_a,
                               .drop_percent = run->drop_percent,
                               .disconnection = check_of(run, "disconnection")->result,
                               .readings = run->readings,
                               .option_count = run->option_count};
    ck_assert_int_le(run->option_count, SWEEP_OPTIONS_MOST);
    for (int i = 0; i < run->option_count; i++) {
        facts.options[i].size_mm2 = run->options[i].size_mm2;
        facts.options[i].capacity_a = run->options[i].capacity_a;
        facts.options[i].drop_percent = run->options[i].drop_percent;
        facts.options[i].zs_ohm = run->options[i].zs_ohm;
        facts.options[i].pass = run->options[i].pass;
    }
    return facts;
}

/* Now and then every document is made as well. */
enum { DOCUMENTS_EVERY = 500 };

struct SweepFacts sweep_plan(struct SweepCounts *counts, const struct SweepCase *point)
{
    char text[SWEEP_TEXT_MOST];
    const int length = sweep_write(point, text);
    struct Wend *wend = wend_plan("sweep", text, (size_t)length);
    sweep_holds(point, wend);
    struct SweepFacts facts = {0};
    if (wend_result(wend) == NULL) {
        counts->refused++;
    } else {
        facts = facts_of(&wend_result(wend)->runs[0]);
        counts->passed += facts.pass;
        counts->failed += !facts.pass;
    }
    if (facts.planned && (counts->passed + counts->failed) % DOCUMENTS_EVERY == 0) {
        for (int i = 0; i < WEND_DOCUMENT_COUNT; i++) {
            sweep_hold((wend_document(wend, (enum WendDocument)i).length > 0) ==
                           wend_has_document(wend, (enum WendDocument)i),
                       point, "an empty document");
        }
    }
    wend_free(wend);
    return facts;
}
