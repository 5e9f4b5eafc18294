/* The printed working is followed with a calculator of its own: every expression has to come to the figure printed
 * below it, every figure that is carried over has to be printed somewhere before, and the last of them has to be what
 * the plan holds. */
#include "calculator.h"
#include "explain_routes.h"
#include "printed_working.h"
#include "run_suite.h"
#include "said.h"

#include "library/library_stages.h"
#include "wend/wend.h"

#include <ctype.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

static const char *const files[] = {"bell-tower", "cider-barn", "joinery-shed", "well-pump"};
enum { FILES = (int)(sizeof files / sizeof files[0]), ROUTES = FILES + EXPLAIN_ROUTES, FILE_MOST = 65536 };

static struct Wend *planned(int route)
{
    static const char folder[] = ROUTES_FOLDER;
    char text[FILE_MOST];
    char path[512];
    if (route >= FILES) {
        const struct ExplainRoute *made = &explain_routes[route - FILES];
        return wend_plan(made->name, made->text, strlen(made->text));
    }
    snprintf(path, sizeof path, "%s/%s.yaml", folder, files[route]);
    FILE *file = fopen(path, "rb");
    ck_assert_msg(file != NULL, "%s", path);
    const size_t length = fread(text, 1, sizeof text, file);
    fclose(file);
    return wend_plan(files[route], text, length);
}

static const char *fault_of(const struct WendAnswer *answer)
{
    return wend_diagnostics_printed(wend_answer_diagnostics(answer), "not read");
}

static int explain(struct Wend *wend, const char *check, const char *run, struct PrintedStep steps[PRINTED_STEPS_MOST])
{
    const struct WendAnswer *answer = wend_explain(wend, check, run);
    const struct WendBytes text = wend_answer_text(answer);
    ck_assert_msg(text.data != NULL, "%s of %s: %s", check, run, fault_of(answer));
    ck_assert_int_eq(wend_answer_status(answer), wend_status(wend));
    ck_assert_str_eq(fault_of(answer), "");
    ck_assert_uint_eq(strlen(text.data), text.length);
    ck_assert_msg(printed_columns(text.data) <= 80, "%s", text.data);
    ck_assert_ptr_null(strchr(text.data, '?'));
    return printed_steps(text.data, steps);
}

static bool near(double a, double b)
{
    return isfinite(a) && isfinite(b) && fabs(a - b) <= 1e-6 * fmax(fabs(a), fabs(b)) + 1e-9;
}

/* Whether a printed result is this figure. */
static bool is_printed(const struct PrintedStep *steps, int count, double figure)
{
    double printed;
    for (int i = 0; i < count; i++) {
        if (calculator_figure(steps[i].result, &printed) && near(printed, figure)) {
            return true;
        }
    }
    return false;
}

static int follow(const struct PrintedStep *steps, int count, const char *where)
{
    int followed = 0;
    for (int i = 0; i < count; i++) {
        double figure;
        ck_assert_msg(steps[i].result[0] != '\0', "%s: %s has no result", where, steps[i].what);
        if (steps[i].numbers[0] == '\0') {
            continue;
        }
        ck_assert_msg(calculator_figure(steps[i].result, &figure), "%s: %s = %s", where, steps[i].what,
                      steps[i].result);
        ck_assert_msg(calculator_agrees(steps[i].numbers, figure), "%s: %s: %s is not %s", where, steps[i].what,
                      steps[i].numbers, steps[i].result);
        followed++;
    }
    return followed;
}

START_TEST(the_calculator_calculates)
{
    double value;
    ck_assert(calculator_agrees("1 + 2 x 3", 7));
    ck_assert(calculator_agrees("(1 + 2) x 3 / 4", 2.25));
    ck_assert(calculator_agrees("10 - 2 - 3", 5));
    ck_assert(calculator_agrees("2 x 3^2", 18));
    ck_assert(calculator_agrees("sqrt((3)^2 + 4^2)", 5));
    ck_assert(calculator_agrees("100 / (2 x pi x 2.4) x (ln(8 x 2.4 / 0.016) - 1)", 40.386078));
    ck_assert(calculator_agrees("143^2 x 300^2", 1840410000.0));
    ck_assert(!calculator_agrees("1 + 2 x 3", 9));
    ck_assert(!calculator_agrees("4.42053 x 22.21739 x 70.54 / 1000", 6.928));
    ck_assert(!calculator_value("3 apples", &value));
    ck_assert(!calculator_value("3 x", &value));
    ck_assert(!calculator_value("sqrt(3", &value));
    ck_assert(!calculator_value("", &value));
    ck_assert(calculator_figure("1840.41 x 10^6 A2 s", &value) && near(value, 1840410000.0));
}
END_TEST

START_TEST(the_sheet_is_read_back)
{
    static const char sheet[] =
        "drop of x, 6 mm2\n  Result    PASS: 1. of 2\n            3. of 4\n  1.  first\n        a formula that\n"
        "        goes on\n      = 1 + 2\n        + 3\n      = 6 V  [BS 1\n        Table 2]\n  2.  second\n"
        "      = 7 V\n  Compared  6 V\n";
    struct PrintedStep steps[PRINTED_STEPS_MOST];
    ck_assert_int_eq(printed_steps(sheet, steps), 2);
    ck_assert_str_eq(steps[0].what, "first");
    ck_assert_str_eq(steps[0].formula, "a formula that goes on");
    ck_assert_str_eq(steps[0].numbers, "1 + 2 + 3");
    ck_assert_str_eq(steps[0].result, "6 V");
    ck_assert_str_eq(steps[1].numbers, "");
    ck_assert_str_eq(steps[1].result, "7 V");
    ck_assert_uint_eq(printed_columns("ab\n\xC3\xA9\xC3\xA9\xC3\xA9\n"), 3);
}
END_TEST

/* Limits that are no result of a working: surveyed, or fixed by the rule. */
static bool limit_is_given(const struct Check *check)
{
    static const char *const given[] = {"drop", "terminals", "electrode", "residual-position", "device-for-load"};
    for (size_t i = 0; i < sizeof given / sizeof given[0]; i++) {
        if (strcmp(check->id, given[i]) == 0) {
            return true;
        }
    }
    return strcmp(check->id, "disconnection") == 0 && check->unit == UNIT_V;
}

static void compare(const struct Check *check, const struct PrintedStep *steps, int count, const char *where)
{
    /* where nothing is compared (no unit), or by a list of rules, value and limit say nothing */
    const bool by_rule = strcmp(check->id, "device-for-load") == 0 || check->unit == UNIT_NONE;
    const bool of_device = strcmp(check->id, "capacity") == 0; /* In is compared; `load` has it */
    ck_assert_msg(by_rule || of_device || is_printed(steps, count, check->value), "%s: the value is not printed",
                  where);
    ck_assert_msg(by_rule || limit_is_given(check) || is_printed(steps, count, check->limit),
                  "%s: the limit is not printed", where);
}

START_TEST(every_check_can_be_followed)
{
    struct Wend *wend = planned(_i);
    const struct Plan *plan = wend_result(wend);
    static struct PrintedStep steps[PRINTED_STEPS_MOST];
    int followed = 0;
    ck_assert_ptr_nonnull(plan);
    for (int r = 0; r < plan->run_count; r++) {
        const struct PlanRun *run = &plan->runs[r];
        for (int i = 0; i < run->check_count; i++) {
            const struct Check *check = &run->checks[i];
            char where[256];
            snprintf(where, sizeof where, "%s: %s of %s", plan->route, check->id, run->settled->name);
            const int count = explain(wend, check->id, run->settled->name, steps);
            followed += follow(steps, count, where);
            if (check->result == CHECK_NOT_DUE) {
                ck_assert_int_eq(count, 0);
            } else if (count == 0) {
                ck_assert_msg(strstr(plainly(check->text), "cannot be shown") != NULL, "%s has no working", where);
            } else {
                compare(check, steps, count, where);
            }
        }
    }
    ck_assert_int_ge(followed, 8);
    wend_free(wend);
}
END_TEST

START_TEST(every_stretch_can_be_followed)
{
    struct Wend *wend = planned(_i);
    const struct Plan *plan = wend_result(wend);
    static struct PrintedStep steps[PRINTED_STEPS_MOST];
    for (int r = 0; r < plan->run_count; r++) {
        const struct PlanRun *run = &plan->runs[r];
        for (int i = 0; i < run->rating_count; i++) {
            const struct Rating *rating = &run->ratings[i];
            const char *segment = plan->segments[rating->segment].surveyed->name;
            char asked[256];
            snprintf(asked, sizeof asked, "capacity:%s", segment);
            int count = explain(wend, asked, run->settled->name, steps);
            ck_assert_int_ge(follow(steps, count, asked), 2);
            ck_assert_int_eq(count, rating->factor_count + 3);
            ck_assert(is_printed(steps, count, rating->tabulated_a));
            ck_assert(is_printed(steps, count, rating->capacity_a));
            ck_assert(is_printed(steps, count, rating->conductor_degc));
            snprintf(asked, sizeof asked, "drop:%s", segment);
            count = explain(wend, asked, run->settled->name, steps);
            ck_assert_int_ge(follow(steps, count, asked), 5);
            ck_assert(is_printed(steps, count, run->drop_v));
            ck_assert(is_printed(steps, count, rating->electrical_length_m));
            ck_assert(is_printed(steps, count, rating->drop_v));
            ck_assert(is_printed(steps, count, 100 * rating->drop_share));
            if (rating->drop_expected_v < rating->drop_v) {
                ck_assert(is_printed(steps, count, rating->drop_expected_v));
            }
        }
    }
    wend_free(wend);
}
END_TEST

static void follow_typed(struct Arena *arena, const struct Step *steps, int count, const char *where)
{
    for (int i = 0; i < count; i++) {
        const struct Step *step = &steps[i];
        const char *result = said_result(arena, step);
        const bool typed = step->result.kind == SAY_ARG_DIGITS;
        double printed;
        ck_assert_msg(step->what != NULL && *result != '\0', "%s: step %d", where, i + 1);
        ck_assert_msg(typed || step->numbers[0] == '\0', "%s: %s is worked out and no figure", where, result);
        ck_assert_msg(!typed || (calculator_figure(result, &printed) && near(printed, step->result.value)),
                      "%s: %s is not %.9g", where, result, step->result.value);
        ck_assert_msg(step->numbers[0] == '\0' || calculator_agrees(step->numbers, step->result.value),
                      "%s: %s is not %.9g", where, step->numbers, step->result.value);
    }
}

/* What a plan holds of a working: a figure with its unit, which is the one that is printed. */
START_TEST(results_are_figures)
{
    struct Wend *wend = planned(_i);
    const struct Plan *plan = wend_result(wend);
    struct Arena *arena = arena_new();
    int steps = 0;
    for (int r = 0; r < plan->run_count; r++) {
        for (int i = 0; i < plan->runs[r].check_count; i++) {
            const struct Check *check = &plan->runs[r].checks[i];
            follow_typed(arena, check->steps, check->step_count, check->id);
            steps += check->step_count;
        }
    }
    ck_assert_int_ge(steps, 8);
    ck_assert(!arena_failed(arena));
    arena_free(arena);
    wend_free(wend);
}
END_TEST

/* Everything printed about a run, to find where a figure was carried over from. */
struct Sheet {
    struct PrintedStep steps[PRINTED_STEPS_MOST * 4];
    int count;
};

static void add_to(struct Sheet *sheet, struct Wend *wend, const char *asked, const char *run)
{
    ck_assert_int_le(sheet->count + PRINTED_STEPS_MOST, (int)(sizeof sheet->steps / sizeof sheet->steps[0]));
    sheet->count += explain(wend, asked, run, sheet->steps + sheet->count);
}

/* Seven digits in a row, the point left out: a figure that was worked and not one that was surveyed or printed in a
 * table. */
static size_t worked_figure(const char *text)
{
    size_t digits = 0;
    size_t at = 0;
    for (; isdigit((unsigned char)text[at]) || text[at] == '.'; at++) {
        digits += text[at] != '.' && (digits > 0 || text[at] != '0') ? 1 : 0;
    }
    return digits >= 7 ? at : 0;
}

static bool was_result(const struct Sheet *sheet, const char *figure, size_t length)
{
    for (int i = 0; i < sheet->count; i++) {
        const char *result = sheet->steps[i].result;
        result += *result == '-' ? 1 : 0; /* a sign is carried over as one */
        if (strncmp(result, figure, length) == 0 && !isdigit((unsigned char)result[length]) && result[length] != '.') {
            return true;
        }
    }
    return false;
}

START_TEST(nothing_comes_from_nowhere)
{
    struct Wend *wend = planned(_i);
    const struct Plan *plan = wend_result(wend);
    static struct Sheet sheet;
    for (int r = 0; r < plan->run_count; r++) {
        const struct PlanRun *run = &plan->runs[r];
        sheet.count = 0;
        for (int i = 0; i < run->check_count; i++) {
            add_to(&sheet, wend, run->checks[i].id, run->settled->name);
        }
        for (int i = 0; i < sheet.count; i++) {
            const char *numbers = sheet.steps[i].numbers;
            for (const char *at = numbers; *at != '\0'; at++) {
                const bool begins = at == numbers || (!isdigit((unsigned char)at[-1]) && at[-1] != '.');
                const size_t length = begins ? worked_figure(at) : 0;
                ck_assert_msg(length == 0 || was_result(&sheet, at, length), "%s: %s of %s in %s", plan->route, at,
                              sheet.steps[i].what, run->settled->name);
            }
        }
    }
    wend_free(wend);
}
END_TEST

/* The figures that the plan holds besides its checks. */
START_TEST(workings_end_in_the_figures_of_the_plan)
{
    struct Wend *wend = planned(_i);
    const struct Plan *plan = wend_result(wend);
    static struct PrintedStep steps[PRINTED_STEPS_MOST];
    for (int r = 0; r < plan->run_count; r++) {
        const struct PlanRun *run = &plan->runs[r];
        if (!run->rated) {
            continue;
        }
        int count = explain(wend, "load", run->settled->name, steps);
        ck_assert(is_printed(steps, count, run->design_current_a));
        count = explain(wend, "drop", run->settled->name, steps);
        ck_assert(is_printed(steps, count, run->drop_v));
        ck_assert(is_printed(steps, count, run->drop_percent));
        count = explain(wend, "capacity", run->settled->name, steps);
        ck_assert(is_printed(steps, count, run->capacity_a));
        count = explain(wend, "disconnection", run->settled->name, steps);
        if (run->readings.zs_hot_ohm > 0) {
            ck_assert(is_printed(steps, count, run->readings.r1_20_ohm));
            ck_assert(is_printed(steps, count, run->readings.zs_hot_ohm));
        }
        count = explain(wend, "electrode", run->settled->name, steps);
        if (plan->electrode.due && plan->electrode.used_ohm > 0) {
            ck_assert(is_printed(steps, count, plan->electrode.used_ohm));
        }
    }
    wend_free(wend);
}
END_TEST

/* Each kind of working is met by some route: a test that never sees one would not notice its fault. */
START_TEST(the_routes_meet_every_kind_of_working)
{
    static const char *const met[] = {"on each line",
                                      "put on line L1",
                                      "S / U0",
                                      "P / (3 U0 cos)",
                                      "r cos + x sin",
                                      "z of",
                                      "current in step with the voltage",
                                      "current a quarter turn behind it",
                                      "current whose power factor is not known",
                                      "r of one conductor",
                                      "x of one conductor",
                                      "z of one conductor",
                                      "line that drops most",
                                      "loads taken as off",
                                      "all of them, a quarter turn behind it",
                                      "not known, at whatever angle is worst",
                                      "rise at the far end",
                                      "the most that the neutral carries",
                                      "third harmonic of all lines",
                                      "the same warmth in three conductors alike",
                                      "factor Sun",
                                      "factor Ch",
                                      "factor Ci",
                                      "separate protective conductor",
                                      "core and armour side by side",
                                      "reactance of the run",
                                      "read back from the loop",
                                      "sqrt(I2 t) / k",
                                      "least area x k1 / k2",
                                      "half a cycle",
                                      "energy limiting class 3",
                                      "1.1 x U0 / Ze",
                                      "as measured",
                                      "the rods together",
                                      "the next size up",
                                      "the row for a supply neutral",
                                      "conducts as well as the armour",
                                      "multiple x Ib",
                                      "a circuit of its own",
                                      "(RA + R2) x I delta n",
                                      "x 10^6"};
    bool seen[sizeof met / sizeof met[0]] = {false};
    struct Arena *arena = arena_new();
    for (int route = 0; route < ROUTES; route++) {
        struct Wend *wend = planned(route);
        const struct Plan *plan = wend_result(wend);
        for (int r = 0; r < plan->run_count; r++) {
            for (int i = 0; i < plan->runs[r].check_count; i++) {
                const struct Check *check = &plan->runs[r].checks[i];
                for (int s = 0; s < check->step_count; s++) {
                    for (size_t m = 0; m < sizeof met / sizeof met[0]; m++) {
                        const struct Step *step = &check->steps[s];
                        seen[m] = seen[m] || said_has(step->what, met[m]) || said_has(step->formula, met[m]) ||
                                  strstr(said_result(arena, step), met[m]) != NULL;
                    }
                }
            }
        }
        wend_free(wend);
    }
    ck_assert(!arena_failed(arena));
    arena_free(arena);
    for (size_t m = 0; m < sizeof met / sizeof met[0]; m++) {
        ck_assert_msg(seen[m], "no route works \"%s\"", met[m]);
    }
}
END_TEST

START_TEST(what_is_not_there_is_refused)
{
    struct Wend *wend = planned(1);
    static const struct {
        const char *check, *run, *told, *listed;
    } wrong[] = {
        {"drip", "", "did you mean \"drop\"? [check-misspelt]", "protective-conductor"},
        {"colour", "", "there is no check named \"colour\" [check-unknown]", "breaking-capacity"},
        {"drop:orchad", "", "did you mean \"orchard\"? [stretch-misspelt]", "press-room"},
        {"drop:moon", "feeder", "[stretch-unknown]", "meter-room"},
        {"drop:", "", "[stretch-unknown]", "orchard"},
        {"load:loft", "", "[check-not-by-stretch]", "terminals"},
        {"drop", "feder", "did you mean \"feeder\"? [run-misspelt]", "feeder"},
        {"drop", "tap", "there is no run named \"tap\" [run-unknown]", "feeder"},
    };
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
        const struct WendAnswer *answer = wend_explain(wend, wrong[i].check, wrong[i].run);
        const char *fault = fault_of(answer);
        ck_assert_int_eq(wend_answer_status(answer), WEND_INPUT_WRONG);
        ck_assert_ptr_null(wend_answer_text(answer).data);
        ck_assert_msg(strstr(fault, wrong[i].told) != NULL, "%s", fault);
        ck_assert_msg(strstr(fault, wrong[i].listed) != NULL, "%s", fault);
        ck_assert_uint_eq(wend_diagnostics_count(wend_answer_diagnostics(answer)), 1);
    }
    ck_assert_int_eq(wend_answer_status(wend_options(wend, "feder", 0)), WEND_INPUT_WRONG);
    wend_free(wend);
    ck_assert_int_eq(wend_answer_status(wend_explain(NULL, "drop", "")), WEND_NO_MEMORY);
    wend = planned(2);
    ck_assert_ptr_nonnull(strstr(fault_of(wend_explain(wend, "drop", "office-link")), "of kind data"));
    wend_free(wend);
    wend = wend_plan("x", "wend: 2\n", 8);
    ck_assert_int_eq(wend_answer_status(wend_explain(wend, "drop", "")), WEND_INPUT_WRONG);
    ck_assert_ptr_null(wend_answer_text(wend_options(wend, "", 0)).data);
    wend_free(wend);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("explain");
    TCase *tools = tcase_create("tools");
    tcase_add_test(tools, the_calculator_calculates);
    tcase_add_test(tools, the_sheet_is_read_back);
    suite_add_tcase(suite, tools);
    TCase *working = tcase_create("working");
    tcase_set_timeout(working, 60);
    tcase_add_loop_test(working, every_check_can_be_followed, 0, ROUTES);
    tcase_add_loop_test(working, every_stretch_can_be_followed, 0, ROUTES);
    tcase_add_loop_test(working, results_are_figures, 0, ROUTES);
    tcase_add_loop_test(working, nothing_comes_from_nowhere, 0, ROUTES);
    tcase_add_loop_test(working, workings_end_in_the_figures_of_the_plan, 0, ROUTES);
    tcase_add_test(working, the_routes_meet_every_kind_of_working);
    tcase_add_test(working, what_is_not_there_is_refused);
    suite_add_tcase(suite, working);
    return run_suite(suite);
}
