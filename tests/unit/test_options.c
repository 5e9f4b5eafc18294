/* Sizes side by side: what stands in the tables has to be what the same route, written that way in the first place,
 * comes to; and both answers when memory ends on the way. */
#include "explain_routes.h"
#include "printed_working.h"
#include "run_suite.h"
#include "said.h"
#include "sweep_depth.h"

#include "design/design.h"
#include "documents/documents.h"
#include "library/library_stages.h"
#include "read/read.h"
#include "wend/wend.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { TEXT_MOST = 2048 };

struct Made {
    const char *cpc, *size, *device;
    int current_ma; /* of the first load; the second is a power in the same proportion */
    int cores;
    bool three;
};

static struct Wend *planned(struct Made made)
{
    char text[TEXT_MOST];
    const int length = snprintf(
        text, sizeof text,
        "wend: 1\njob: {title: Forge}\nsupply: {system: TN-S, phases: %d, loop-impedance: 0.3 ohm, fault-current: 1.9 "
        "kA}\nruns:\n  forge:\n"
        "    load:\n      - {current: %d.%03d A, power-factor: 0.9%s}\n      - {power: %d W, power-factor: 1%s}\n"
        "    device: %s\n    cable: {type: BS5467, cores: %d, size: %s, cpc: %s}\n"
        "segments:\n  - {name: wall, way: wall, length: 31 m}\n  - {name: duct, way: duct, length: 44 m, duct: {size: "
        "63 mm}}\n",
        made.three ? 3 : 1, made.current_ma / 1000, made.current_ma % 1000, made.three ? ", phases: 1" : "",
        made.current_ma / 10, made.three ? ", phases: 1" : "", made.device, made.cores, made.size, made.cpc);
    struct Wend *wend = wend_plan("forge", text, (size_t)length);
    ck_assert_msg(wend_status(wend) <= WEND_CHECK_FAILS, "%s",
                  wend_diagnostics_printed(wend_diagnostics(wend), "forge"));
    return wend;
}

static const struct Made plain = {
    .cpc = "core", .size = "choose", .device = "{kind: MCB, curve: C, rating: 32 A}", .current_ma = 20000, .cores = 3};

static bool same(double a, double b)
{
    return isfinite(a) && isfinite(b) && fabs(a - b) <= 1e-12 * fmax(fabs(a), fabs(b));
}

static void same_options(const struct Option *a, int a_count, const struct Option *b, int b_count)
{
    ck_assert_int_eq(a_count, b_count);
    ck_assert_int_gt(a_count, 10);
    for (int i = 0; i < a_count; i++) {
        ck_assert(same(a[i].size_mm2, b[i].size_mm2));
        ck_assert(same(a[i].capacity_a, b[i].capacity_a));
        ck_assert(same(a[i].drop_percent, b[i].drop_percent));
        ck_assert(same(a[i].zs_ohm, b[i].zs_ohm));
        ck_assert(same(a[i].protective_needed_mm2, b[i].protective_needed_mm2));
        ck_assert_int_eq(a[i].pass, b[i].pass);
        ck_assert_int_eq(a[i].chosen, b[i].chosen);
        ck_assert_str_eq(plain_ids(&a[i].fails), plain_ids(&b[i].fails));
        ck_assert_str_eq(plainly(a[i].why), plainly(b[i].why));
    }
}

static const struct Alternative *alternative_of(const struct PlanRun *run, enum Cpc cpc)
{
    for (int i = 0; i < run->alternative_count; i++) {
        if (run->alternatives[i].cpc == cpc) {
            return &run->alternatives[i];
        }
    }
    return NULL;
}

/* One with all three choices, written each way: every plan shows the other two as those plans have them. */
static void alternatives_are_plans(struct Made made)
{
    static const struct {
        enum Cpc cpc;
        const char *word;
    } choices[] = {{CPC_CORE, "core"}, {CPC_ARMOUR, "armour"}, {CPC_CORE_AND_ARMOUR, "core-and-armour"}};
    for (size_t i = 0; i < 3; i++) {
        made.cpc = choices[i].word;
        struct Wend *wend = planned(made);
        const struct PlanRun *run = &wend_result(wend)->runs[0];
        ck_assert_int_eq(run->alternative_count, 2);
        ck_assert_ptr_null(alternative_of(run, choices[i].cpc));
        for (size_t j = 0; j < 3; j++) {
            if (j == i) {
                continue;
            }
            made.cpc = choices[j].word;
            struct Wend *written = planned(made);
            const struct PlanRun *other = &wend_result(written)->runs[0];
            const struct Alternative *alternative = alternative_of(run, choices[j].cpc);
            ck_assert_ptr_nonnull(alternative);
            same_options(alternative->options, alternative->option_count, other->options, other->option_count);
            ck_assert(same(alternative->size_mm2, other->size_mm2));
            ck_assert_int_eq(alternative->pass, other->pass);
            ck_assert_int_eq(alternative->lines, other->currents.lines);
            wend_free(written);
        }
        wend_free(wend);
    }
}

START_TEST(another_protective_conductor_is_another_plan)
{
    alternatives_are_plans(plain);
}
END_TEST

/* Four cores on three lines: with a core for the protective conductor three are left, a single-phase run; with the
 * armour four. */
START_TEST(a_core_set_free_may_change_the_lines)
{
    struct Made made = plain;
    made.three = true;
    made.cores = 4;
    alternatives_are_plans(made);
    struct Wend *wend = planned(made);
    const struct PlanRun *run = &wend_result(wend)->runs[0];
    ck_assert_int_eq(run->currents.lines, 1);
    ck_assert_int_eq(alternative_of(run, CPC_ARMOUR)->lines, 3);
    ck_assert_int_eq(alternative_of(run, CPC_CORE_AND_ARMOUR)->lines, 1);
    wend_free(wend);
}
END_TEST

START_TEST(two_cores_leave_no_choice)
{
    struct Made made = plain;
    made.cores = 2;
    made.cpc = "armour";
    struct Wend *wend = planned(made);
    ck_assert_int_eq(wend_result(wend)->runs[0].alternative_count, 0);
    wend_free(wend);
}
END_TEST

static struct Wend *with_strap(const char *cpc, const char *along)
{
    char text[TEXT_MOST];
    const int length = snprintf(text, sizeof text,
                                "wend: 1\njob: {title: Forge}\nsupply: {system: TN-S, loop-impedance: 0.3 ohm}\n"
                                "runs:\n  forge:\n    load: {current: 20 A}\n"
                                "    cable: {type: BS5467, cores: 3, cpc: %s}\n"
                                "  strap: {kind: earth, along: [%s], cable: {type: BS6004-single, size: 10 mm2}}\n"
                                "segments:\n  - {name: wall, way: wall, length: 31 m}\n"
                                "  - {name: duct, way: duct, length: 44 m, duct: {size: 63 mm}}\n",
                                cpc, along);
    struct Wend *wend = wend_plan("forge", text, (size_t)length);
    ck_assert_msg(wend_status(wend) <= WEND_CHECK_FAILS, "%s",
                  wend_diagnostics_printed(wend_diagnostics(wend), "forge"));
    return wend;
}

/* An earth run of its own is a protective conductor where it goes all the way beside the run, and on no part of it. */
START_TEST(an_earth_run_beside_all_of_it_is_a_choice)
{
    struct Wend *wend = with_strap("core", "wall, duct");
    const struct Alternative *beside = alternative_of(&wend_result(wend)->runs[0], CPC_SEPARATE);
    struct Wend *written = with_strap("separate, cpc-run: strap", "wall, duct");
    const struct PlanRun *run = &wend_result(written)->runs[0];
    ck_assert_ptr_nonnull(beside);
    same_options(beside->options, beside->option_count, run->options, run->option_count);
    ck_assert_ptr_null(alternative_of(run, CPC_SEPARATE));
    wend_free(written);
    wend_free(wend);
    static const char *const parts[] = {"wall", "duct"};
    for (int i = 0; i < 2; i++) {
        wend = with_strap("core", parts[i]);
        ck_assert_ptr_null(alternative_of(&wend_result(wend)->runs[0], CPC_SEPARATE));
        ck_assert_ptr_nonnull(alternative_of(&wend_result(wend)->runs[0], CPC_ARMOUR));
        wend_free(wend);
    }
}
END_TEST

START_TEST(a_given_size_still_shows_the_others)
{
    struct Made made = plain;
    struct Wend *chosen = planned(made);
    made.size = "6 mm2";
    struct Wend *given = planned(made);
    const struct PlanRun *run = &wend_result(given)->runs[0];
    const struct PlanRun *free_run = &wend_result(chosen)->runs[0];
    ck_assert_int_eq(run->option_count, 1);
    ck_assert_int_eq(run->alternative_count, 3);
    ck_assert_int_eq(run->alternatives[0].cpc, CPC_CORE);
    same_options(run->alternatives[0].options, run->alternatives[0].option_count, free_run->options,
                 free_run->option_count);
    const struct WendAnswer *answer = wend_options(given, "forge", 0);
    const struct WendBytes text = wend_answer_text(answer);
    ck_assert_ptr_nonnull(strstr(text.data, "\n>    6 "));
    wend_free(chosen);
    wend_free(given);
}
END_TEST

static int count_of(const char *text, const char *part)
{
    int count = 0;
    for (const char *at = strstr(text, part); at != NULL; at = strstr(at + 1, part)) {
        count++;
    }
    return count;
}

/* "    16    79.0  duct  ..." of each option, and why the smaller ones fail. */
START_TEST(the_page_holds_the_plan)
{
    struct Wend *wend = planned(plain);
    const struct PlanRun *run = &wend_result(wend)->runs[0];
    const struct WendAnswer *answer = wend_options(wend, "", 0);
    const struct WendBytes text = wend_answer_text(answer);
    const char *second = strstr(text.data, "were it that instead");
    ck_assert_int_eq(wend_answer_status(answer), wend_status(wend));
    ck_assert_uint_le(printed_columns(text.data), 80);
    ck_assert_int_eq(count_of(text.data, "\n> "), 4); /* three tables and the legend */
    ck_assert_ptr_nonnull(second);
    ck_assert_ptr_null(strchr(text.data, '\033'));
    for (int i = 0; i < run->option_count; i++) {
        const struct Option *option = &run->options[i];
        char row[128];
        const int whole = (int)option->size_mm2;
        const int tenths = (int)lround(option->size_mm2 * 10) % 10;
        const int capacity_tenths = (int)lround(option->capacity_a * 10);
        char size[16];
        snprintf(size, sizeof size, tenths > 0 ? "%d.%d" : "%d", whole, tenths);
        snprintf(row, sizeof row, "\n%c %4s %5d.%d  %s", option->chosen ? '>' : ' ', size, capacity_tenths / 10,
                 capacity_tenths % 10, option->governing);
        const char *at = strstr(text.data, row);
        ck_assert_msg(at != NULL && at < second, "no row%s", row);
        const size_t length = strcspn(at + 1, "\n");
        char line[128];
        snprintf(line, sizeof line, "%.*s", (int)length, at + 1);
        char first_fault[64];
        snprintf(first_fault, sizeof first_fault, "%s", option->fails.count > 0 ? option->fails.list[0].kind : "");
        ck_assert_ptr_nonnull(strstr(line, option->verdict == VERDICT_PASS   ? "  PASS"
                                           : option->verdict == VERDICT_OPEN ? "  OPEN:"
                                                                             : first_fault));
        snprintf(row, sizeof row, "\n  %s mm2 ", size);
        const char *reason = strstr(text.data, row);
        ck_assert_int_eq(reason != NULL && reason < second,
                         option->size_mm2 <= run->size_mm2 && option->verdict != VERDICT_PASS);
    }
    wend_free(wend);
}
END_TEST

/* The sentence on growth without its line breaks, up to the end of the table. */
static void growth_of(struct Wend *wend, double percent, char *joined, size_t room)
{
    const struct WendAnswer *answer = wend_options(wend, "forge", percent);
    const struct WendBytes text = wend_answer_text(answer);
    ck_assert_ptr_nonnull(text.data);
    ck_assert_uint_le(printed_columns(text.data), 80);
    const char *growth = strstr(text.data, "\n  growth    ");
    ck_assert_ptr_nonnull(growth);
    const char *end = strstr(growth, "\n\n");
    size_t to = 0;
    for (const char *at = growth; at < end && to + 1 < room; at++) {
        const bool gap = *at == '\n' || *at == ' ';
        if (!gap || (to > 0 && joined[to - 1] != ' ')) {
            joined[to++] = (char)(gap ? ' ' : *at);
        }
    }
    joined[to] = '\0';
}

/* First of the sizes that pass today and in the plan with the larger loads, printed as the page prints it. */
static void expect_growth(struct Made made, double percent, const char *device_then)
{
    struct Wend *now = planned(made);
    char joined[512];
    growth_of(now, percent, joined, sizeof joined);
    made.current_ma = (int)lround(made.current_ma * (1 + percent / 100));
    made.device = device_then;
    struct Wend *then = planned(made);
    const struct PlanRun *today = &wend_result(now)->runs[0];
    const struct PlanRun *later = &wend_result(then)->runs[0];
    int first = 0;
    while (first < today->option_count && !(today->options[first].pass && later->options[first].pass)) {
        first++;
    }
    ck_assert_int_lt(first, today->option_count);
    char sentence_end[48];
    snprintf(sentence_end, sizeof sentence_end, "passes as well is %d mm2.", (int)today->options[first].size_mm2);
    ck_assert_msg(strstr(joined, sentence_end) != NULL, "%s; not %s", joined, sentence_end);
    struct Arena *arena = arena_new();
    const char *device = said(arena, later->device_text);
    ck_assert_msg(strstr(joined, device) != NULL, "%s; not %s", joined, device);
    arena_free(arena);
    wend_free(then);
    wend_free(now);
}

START_TEST(growth_is_the_plan_with_larger_loads)
{
    struct Made made = plain;
    static const char residual[] = "{kind: RCBO, curve: C, rating: 32 A, residual: 100 mA}";
    static const char any_residual[] = "{kind: RCBO, curve: C, residual: 100 mA}";
    made.current_ma = 14000; /* 20.1 A together */
    made.device = residual;
    for (int percent = 10; percent <= 50; percent += 10) { /* up to 30.1 A on 32 A */
        expect_growth(made, percent, residual);
    }
    expect_growth(made, 100, any_residual); /* 40.2 A is more than the device of today carries */
    made.device = any_residual;
    expect_growth(made, 60, any_residual);
}
END_TEST

START_TEST(growth_that_nothing_carries_is_said)
{
    struct Wend *wend = planned(plain);
    char joined[512];
    growth_of(wend, 1000, joined, sizeof joined);
    ck_assert_msg(strstr(joined, "1000 % larger nothing can be planned: no standard MCB carries") != NULL, "%s",
                  joined);
    ck_assert_ptr_null(strstr(wend_answer_text(wend_options(wend, "forge", 0)).data, "growth"));
    wend_free(wend);
}
END_TEST

START_TEST(the_plan_document_has_them_too)
{
    struct Wend *wend = planned(plain);
    const struct WendBytes document = wend_document(wend, WEND_PLAN_XML);
    ck_assert_int_eq(count_of(document.data, "<alternatives cpc=\"armour\" phases=\"1\" "), 1);
    ck_assert_int_eq(count_of(document.data, "<alternatives cpc=\"core-and-armour\" "), 1);
    ck_assert_int_eq(count_of(document.data, "<option "), 3 * wend_result(wend)->runs[0].option_count);
    wend_free(wend);
}
END_TEST

/* The whole way from text to answers in one arena that ends after some blocks; `pad` moves where in a block that is. */
static bool answers_within(const struct ExplainRoute *route, long blocks, size_t pad)
{
    struct Arena *arena = arena_new();
    ck_assert_ptr_nonnull(arena);
    arena_fail_after(arena, blocks);
    (void)arena_alloc(arena, pad);
    struct Diag *diag = diag_new(arena);
    const struct Variant larger = {.load_ratio = 1.1, .any_size = true};
    const struct Survey *survey =
        diag == NULL ? NULL : read_survey(arena, diag, (struct Bytes){route->text, strlen(route->text)});
    const struct Plan *plan = survey == NULL ? NULL : design_plan(arena, diag, survey, route->name);
    const struct Survey *grown = plan == NULL ? NULL : design_variant(arena, survey, &larger);
    struct Bytes sizes = {NULL, 0};
    struct Bytes working = {NULL, 0};
    if (grown != NULL) {
        const struct Growth growth = {
            .percent = 10, .plan = design_plan(arena, diag, grown, route->name), .fault = "nothing"};
        sizes = document_options_text(arena, plan, -1, &growth);
        struct Question questions[2] = {{.run = 0, .check = 2}, {.run = 0, .check = 1}};
        questions[1].stretch = design_working(arena, plan, &plan->runs[0], 0);
        working = document_explain_text(arena, plan, questions, questions[1].stretch != NULL ? 2 : 1);
    }
    const bool failed = arena_failed(arena);
    ck_assert_msg(failed || (sizes.data != NULL && working.data != NULL), "%s: no answer though memory did not end",
                  route->name);
    ck_assert_msg(!failed || working.data == NULL, "%s: an answer though memory ended", route->name);
    arena_free(arena);
    return !failed;
}

START_TEST(memory_may_end_anywhere)
{
    const struct ExplainRoute *route = &explain_routes[_i];
    for (size_t pad = 0; pad < 60000; pad += (size_t)sweep_depth(12007, 3001)) {
        long blocks = 0;
        while (!answers_within(route, blocks, pad)) {
            ck_assert_int_lt(blocks++, 1000);
        }
        ck_assert_int_gt(blocks, 1);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("options");
    TCase *sizes = tcase_create("sizes");
    tcase_add_test(sizes, another_protective_conductor_is_another_plan);
    tcase_add_test(sizes, a_core_set_free_may_change_the_lines);
    tcase_add_test(sizes, two_cores_leave_no_choice);
    tcase_add_test(sizes, an_earth_run_beside_all_of_it_is_a_choice);
    tcase_add_test(sizes, a_given_size_still_shows_the_others);
    tcase_add_test(sizes, the_page_holds_the_plan);
    tcase_add_test(sizes, growth_is_the_plan_with_larger_loads);
    tcase_add_test(sizes, growth_that_nothing_carries_is_said);
    tcase_add_test(sizes, the_plan_document_has_them_too);
    suite_add_tcase(suite, sizes);
    TCase *memory = tcase_create("memory");
    tcase_set_timeout(memory, 60);
    tcase_add_loop_test(memory, memory_may_end_anywhere, 0, EXPLAIN_ROUTES);
    suite_add_tcase(suite, memory);
    return run_suite(suite);
}
