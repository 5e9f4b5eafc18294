/* The public face: a route in memory, no files; and what happens when memory ends. */
#include "run_suite.h"

#include "library/library_stages.h"
#include "said.h"
#include "wend/wend.h"

#include <pthread.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char route[] =
    "wend: 1\n"
    "job: {title: Shed}\n"
    "supply: {system: TN-S, loop-impedance: 0.35 ohm, drop-before: 0.5 %}\n"
    "runs:\n"
    "  feeder:\n"
    "    load: {current: 26 A}\n"
    "    device: {kind: RCBO, curve: B, rating: 32 A, residual: 30 mA}\n"
    "    cable: {type: BS5467, cores: 3, size: choose, cpc: core}\n"
    "segments:\n"
    "  - {name: plant-room, way: wall, length: 1.8 m, rise: 1.8 m}\n"
    "  - {name: roof-void, way: loft-void, length: 9 m, insulation: surrounded, insulated-length: 100 mm}\n"
    "  - {name: track, way: duct, length: 20 m, duct: {size: 50 mm}, depth: 600 mm}\n";

START_TEST(plans_and_hands_out_documents)
{
    struct Wend *wend = wend_plan("shed", route, strlen(route));
    ck_assert_int_eq(wend_status(wend), WEND_PASSES);
    const struct Plan *plan = wend_result(wend);
    ck_assert_ptr_nonnull(plan);
    ck_assert_str_eq(plan->route, "shed");
    ck_assert_ptr_null(plan_check(plan));
    for (int i = 0; i < WEND_DOCUMENT_COUNT; i++) {
        const struct WendBytes document = wend_document(wend, (enum WendDocument)i);
        ck_assert((document.data != NULL) == wend_has_document(wend, (enum WendDocument)i));
        ck_assert(document.data == NULL || document.length > 200);
    }
    ck_assert_int_gt(wend_parts(wend)->count, 3);
    wend_free(wend);
}
END_TEST

/* The duct governs: 4D4A, D, two loaded: 6 mm2 46 A x 0.9 = 41.4 A; loft C 49 x 0.78 = 38.2 A, which is less. */
START_TEST(decides_as_by_hand)
{
    struct Wend *wend = wend_plan("shed", route, strlen(route));
    const struct PlanRun *run = &wend_result(wend)->runs[0];
    ck_assert_double_eq(run->size_mm2, 6);
    ck_assert_double_eq_tol(run->capacity_a, 49 * 0.78, 1e-9);
    ck_assert_str_eq(wend_result(wend)->segments[run->ratings[run->governing].segment].surveyed->name, "roof-void");
    ck_assert_double_eq_tol(run->ratings[2].capacity_a, 46 * 0.9, 1e-9);
    ck_assert_double_eq_tol(run->route_length_m, 30.8, 1e-9);
    ck_assert_double_eq_tol(run->electrical_length_m, 33, 1e-9); /* 0.6 m down, 0.6 m up, two tails */
    ck_assert_int_eq(run->order_length_m, 35);                   /* 34.65 */
    ck_assert_double_eq_tol(run->drop_v, 7.9 * 26 * 33 / 1000, 1e-9);
    ck_assert_double_eq_tol(run->drop_percent, 7.9 * 26 * 33 / 1000 / 230 * 100, 1e-9);
    int drops = 0;
    for (int i = 0; i < run->check_count; i++) { /* and 0.5 % before the run */
        if (strcmp(run->checks[i].id, "drop") == 0) {
            ck_assert_double_eq_tol(run->checks[i].value, 7.9 * 26 * 33 / 1000 / 230 * 100 + 0.5, 1e-9);
            drops++;
        }
    }
    ck_assert_int_eq(drops, 1);
    /* 4 mm2: loft 38 x 0.78 = 29.6 A is less than 32 A */
    ck_assert_str_eq(plain_ids(&run->options[2].fails), "capacity");
    /* conductor in the loft: 30 + 40 (26 / 38.22)^2 */
    ck_assert_double_eq_tol(run->ratings[1].conductor_degc, 30 + 40 * (26 / 38.22) * (26 / 38.22), 1e-6);
    wend_free(wend);
}
END_TEST

/* BS 7671 433.1.1: the design current is not over the device's rating; at the rating it is not. */
START_TEST(device_below_the_load_fails)
{
    static const char *const currents[] = {"32 A", "32.1 A", "40 A"};
    for (int i = 0; i < 3; i++) {
        char text[600];
        snprintf(text, sizeof text,
                 "wend: 1\n"
                 "job: {title: Shed}\n"
                 "supply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
                 "runs:\n"
                 "  feeder:\n"
                 "    load: {current: %s}\n"
                 "    device: {kind: MCB, curve: B, rating: 32 A}\n"
                 "    cable: {type: BS5467, cores: 3}\n"
                 "segments:\n"
                 "  - {name: plant-room, way: wall, length: 10 m}\n",
                 currents[i]);
        struct Wend *wend = wend_plan("shed", text, strlen(text));
        const struct PlanRun *run = &wend_result(wend)->runs[0];
        ck_assert_str_eq(run->checks[0].id, "load");
        ck_assert_int_eq(run->checks[0].result, i == 0 ? CHECK_PASS : CHECK_FAIL);
        ck_assert_int_eq(wend_verdict(wend) == WEND_FAIL, i != 0);
        wend_free(wend);
    }
}
END_TEST

/* Each warning carries the run or the segment that it speaks of, wherever in the file that is written. */
START_TEST(warnings_know_what_they_speak_of)
{
    static const char warned[] = "wend: 1\n"
                                 "job: {title: Shed}\n"
                                 "supply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
                                 "runs:\n"
                                 "  lathe:\n"
                                 "    along: [bench]\n"
                                 "    load: {current: 10 A}\n"
                                 "    device: {kind: MCB, curve: B, rating: 16 A}\n"
                                 "    cable: {type: BS5467, cores: 3}\n"
                                 "  saw:\n"
                                 "    along: [bench]\n"
                                 "    load: {current: 10 A}\n"
                                 "    device:\n"
                                 "      kind: RCBO\n"
                                 "      curve: B\n"
                                 "      rating: 33 A\n"
                                 "    cable: {type: BS5467, cores: 3}\n"
                                 "segments:\n"
                                 "  - {name: bench, way: wall, length: 4 m, as-laid: {length: 4.5 m}}\n"
                                 "  - name: pit\n"
                                 "    way: buried\n"
                                 "    length: 4 m\n";
    static const struct {
        const char *name, *where;
        int run, segment;
    } expected[] = {
        {"as-laid", "", -1, -1},
        {"rcbo-without-residual", "saw", 1, -1},
        {"device-not-standard", "saw", 1, -1},
        {"segment-unused", "pit", -1, 1},
    };
    struct Wend *wend = wend_plan("shed", warned, strlen(warned));
    const struct Plan *plan = wend_result(wend);
    ck_assert_msg(plan != NULL, "%s", wend_diagnostics_printed(wend_diagnostics(wend), "shed"));
    ck_assert_int_eq(plan->warning_count, (int)(sizeof expected / sizeof expected[0]));
    for (int i = 0; i < plan->warning_count; i++) {
        const struct PlanWarning *warning = &plan->warnings[i];
        ck_assert_str_eq(diag_name(warning->code), expected[i].name);
        ck_assert_str_eq(warning->where, expected[i].where);
        ck_assert_int_eq(warning->run, expected[i].run);
        ck_assert_int_eq(warning->segment, expected[i].segment);
    }
    wend_free(wend);
}
END_TEST

START_TEST(wrong_input_is_told_not_planned)
{
    static const char wrong[] = "wend: 1\njob: {title: x}\nsupply: {system: TN}\n";
    struct Wend *wend = wend_plan("x", wrong, strlen(wrong));
    ck_assert_int_eq(wend_status(wend), WEND_INPUT_WRONG);
    ck_assert_ptr_null(wend_result(wend));
    ck_assert_ptr_null(wend_document(wend, WEND_PLAN_XML).data);
    ck_assert_uint_gt(wend_diagnostics_count(wend_diagnostics(wend)), 1);
    ck_assert_int_ge(wend_diagnostic_line(wend_diagnostics(wend), 0), 1);
    ck_assert_ptr_nonnull(strstr(wend_diagnostics_printed(wend_diagnostics(wend), "x.yaml"), "x.yaml:3:"));
    wend_free(wend);
}
END_TEST

START_TEST(nothing_is_a_null_route)
{
    ck_assert_int_eq(wend_status(NULL), WEND_NO_MEMORY);
    struct Wend *wend = wend_plan("empty", "", 0);
    ck_assert_int_eq(wend_status(wend), WEND_INPUT_WRONG);
    wend_free(wend);
    wend_free(NULL);
}
END_TEST

START_TEST(two_at_once_do_not_meet)
{
    struct Wend *a = wend_plan("a", route, strlen(route));
    struct Wend *b = wend_plan("b", route, strlen(route));
    const struct WendBytes first = wend_document(a, WEND_PARTS_CSV);
    wend_free(b);
    const struct WendBytes second = wend_document(a, WEND_PARTS_CSV);
    ck_assert_uint_eq(first.length, second.length);
    ck_assert_mem_eq(first.data, second.data, first.length);
    wend_free(a);
}
END_TEST

enum { THREADS = 4, ROUNDS = 10 };

struct Worker {
    pthread_t thread;
    int number;
    struct Wend *wend;
    struct WendBytes pack;
    int good; /* rounds in which it heard of its own fault */
};

/* A template that is wrong by this number, after enough that is right for others to come meanwhile. */
static bool told_by_number(int number)
{
    static const char head[] = "<xsl:stylesheet version=\"1.0\" xmlns:xsl=\"http://www.w3.org/1999/XSL/Transform\">"
                               "<xsl:template match=\"plan\" mode=\"brief\">";
    static const char good[] = "<xsl:value-of select=\"job[1]/@title\"/>";
    static const char tail[] = "</xsl:template></xsl:stylesheet>";
    enum { GOOD = 2000, ROOM = GOOD * (int)sizeof good + 1024 };
    char *text = malloc(ROOM);
    char said[16];
    snprintf(said, sizeof said, "((%d", number);
    size_t length = text == NULL ? 0 : (size_t)snprintf(text, ROOM, "%s", head);
    for (int i = 0; text != NULL && i < GOOD; i++) {
        length += (size_t)snprintf(text + length, ROOM - length, "%s", good);
    }
    length += text == NULL
                  ? 0
                  : (size_t)snprintf(text + length, ROOM - length, "<xsl:for-each select=\"%s\"/>%s", said, tail);
    const struct WendTemplate file = {"brief.xsl", "own/brief.xsl", text, length};
    struct WendTemplates *templates = wend_templates(&file, 1);
    const struct WendDiagnostics *told = wend_templates_diagnostics(templates);
    const bool own = wend_diagnostics_count(told) == 1 && strstr(wend_diagnostic_text(told, 0), said) != NULL;
    wend_templates_free(templates);
    free(text);
    return own;
}

static void *work(void *argument)
{
    struct Worker *worker = argument;
    worker->wend = wend_plan("shed", route, strlen(route));
    worker->pack = wend_document(worker->wend, WEND_PACK_HTML);
    for (int i = 0; i < ROUNDS; i++) {
        worker->good += told_by_number(1000 * (worker->number + 1) + i);
    }
    return NULL;
}

/* All of them are the first to come to libxml2 and libxslt. */
START_TEST(threads_do_not_meet)
{
    struct Worker workers[THREADS] = {{.number = 0}};
    for (int i = 0; i < THREADS; i++) {
        workers[i].number = i;
        ck_assert_int_eq(pthread_create(&workers[i].thread, NULL, work, &workers[i]), 0);
    }
    for (int i = 0; i < THREADS; i++) {
        ck_assert_int_eq(pthread_join(workers[i].thread, NULL), 0);
        ck_assert_int_eq(workers[i].good, ROUNDS);
        ck_assert_uint_gt(workers[i].pack.length, 5000);
        ck_assert_uint_eq(workers[i].pack.length, workers[0].pack.length);
        ck_assert_mem_eq(workers[i].pack.data, workers[0].pack.data, workers[0].pack.length);
    }
    for (int i = 0; i < THREADS; i++) {
        wend_free(workers[i].wend);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("library");
    TCase *face = tcase_create("public face");
    tcase_add_test(face, plans_and_hands_out_documents);
    tcase_add_test(face, decides_as_by_hand);
    tcase_add_test(face, device_below_the_load_fails);
    tcase_add_test(face, warnings_know_what_they_speak_of);
    tcase_add_test(face, wrong_input_is_told_not_planned);
    tcase_add_test(face, nothing_is_a_null_route);
    tcase_add_test(face, two_at_once_do_not_meet);
    tcase_add_test(face, threads_do_not_meet);
    suite_add_tcase(suite, face);
    return run_suite(suite);
}
