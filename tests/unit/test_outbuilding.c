/* What the outbuilding itself brings: what stands ahead of its residual device, its metalwork, its old supply; and what
 * the owner and the network operator have a say in. Each rule with its clause of BS 7671:2018+A2:2022. */
#include "documents/documents.h"
#include "location_rig.h"
#include "printed.h"
#include "run_suite.h"
#include "said.h"

#include <stdio.h>
#include <string.h>

#define COUNT_OF(list) ((int)(sizeof(list) / sizeof(list)[0]))

/* 531.3.5.3.2, 412: what stands ahead of an island's only residual device. 40 ohm at 100 mA leaves 4 V, at 2 A 80 V. */
static const struct {
    const char *device, *finish, *top;
    enum CheckResult result;
    bool unknown;
    double value_v;
} position_rows[] = {
    {NULL, "enclosure: metal", ISLAND "}", CHECK_FAIL, false, 0},
    {NULL, "enclosure: painted", ISLAND "}", CHECK_FAIL, false, 0},
    {NULL, "enclosure: plastic", ISLAND "}", CHECK_PASS, false, 0},
    {NULL, "place: wet", ISLAND "}", CHECK_NOT_DUE, true, 0},
    {RESIDUAL(100, ", time-delayed: yes"), "enclosure: metal", ISLAND "}", CHECK_PASS, false, 4},
    {"kind: RCBO, rating: 16 A, residual: 2 A", "enclosure: metal", ISLAND "}", CHECK_FAIL, false, 80},
    /* the cable's armour, earthed at a TN supply, is cleared by the overcurrent device */
    {NULL, "enclosure: metal", EXPORT "}", CHECK_NOT_DUE, false, 0},
};

START_TEST(metal_ahead_of_the_residual_device)
{
    char run[128];
    snprintf(run, sizeof run, "feeds: board\n    finish: {%s}", position_rows[_i].finish);
    struct Wend *wend = plan_at("workshop", run, position_rows[_i].device, NULL, position_rows[_i].top, NULL);
    const struct Check *check = rig_found(wend, "residual-position");
    ck_assert_msg(check->result == position_rows[_i].result && check->unknown == position_rows[_i].unknown,
                  "result %d: %s", (int)check->result, plainly(check->text));
    ck_assert_int_eq(check->unknown, settles_something(&check->settles));
    ck_assert_double_eq_tol(check->value, position_rows[_i].value_v, 1e-9);
    if (check->step_count == 1) { /* a rule that is met or not: its working is as sure of the clause as the check */
        ck_assert_str_eq(plainly(check->steps[0].source), "BS 7671 531.3.5.3.2, 412 (from memory)");
    }
    rig_result(wend, "disconnection", CHECK_PASS); /* of the cable itself */
    wend_free(wend);
}
END_TEST

/* 411.5: on a TT supply no overcurrent device clears a fault of the cable's armour, island or not. */
START_TEST(tt_supply_and_a_plain_breaker)
{
    static const char *const tt = "system: TT, electrode-resistance: 62 ohm";
    static const char *const run = "feeds: board\n    finish: {enclosure: plastic}";
    struct Wend *wend = plan_at("workshop", run, NULL, tt, ISLAND "}", NULL);
    rig_result(wend, "disconnection", CHECK_FAIL);
    wend_free(wend);
    wend = plan_at("workshop", run, RESIDUAL(100, ", time-delayed: yes"), tt, ISLAND "}", NULL);
    rig_result(wend, "disconnection", CHECK_PASS);
    wend_free(wend);
}
END_TEST

/* 544.1: a pipe that nobody looked for is an open question, not none; a motor of one installation asks none. */
START_TEST(bonding_not_surveyed)
{
    static const struct {
        const char *run, *top;
        bool unknown;
    } rows[] = {
        {"feeds: board", NULL, true},
        {"feeds: board", "earthing: {far-end: export}", true},
        {"feeds: sockets", "earthing: {far-end: export}", true},
        {"feeds: equipment", "earthing: {far-end: export}", true},
        {"feeds: equipment", NULL, false},
        {"feeds: board", EXPORT "}", false},
        {"feeds: board", ISLAND "}", false},
    };
    for (int i = 0; i < COUNT_OF(rows); i++) {
        struct Wend *wend = plan_at("workshop", rows[i].run, RESIDUAL(30, ""), TN_C_S, rows[i].top, NULL);
        const struct Check *check = rig_found(wend, "bonding");
        ck_assert_int_eq(check->result, CHECK_NOT_DUE);
        ck_assert_msg(check->unknown == rows[i].unknown, "row %d: %s", i, plainly(check->text));
        ck_assert_int_eq(rig_says(plainly(check->text), "as surveyed"), i == 5);
        if (rows[i].unknown) {
            ck_assert_str_eq(settled_by(check->settles), "earthing: extraneous-parts");
        }
        wend_free(wend);
    }
}
END_TEST

/* The test sheet has a trip test of the outbuilding's own device, which on an island is all that cuts off a fault. */
START_TEST(board_device_is_tested)
{
    static const struct {
        const char *run, *top;
        int rows;
    } cases[] = {{"feeds: board", ISLAND "}", 1},
                 {"feeds: board", EXPORT ", board-residual: 30 mA}", 1},
                 {"feeds: board", EXPORT "}", 0},
                 {"feeds: equipment", ISLAND "}", 0}};
    for (int i = 0; i < COUNT_OF(cases); i++) {
        struct Wend *wend =
            plan_at("workshop", cases[i].run, RESIDUAL(100, ", time-delayed: yes"), NULL, cases[i].top, NULL);
        const struct Bytes xml = printed(wend);
        const char *row = strstr(xml.data, "name=\"Residual device at the outbuilding's board, 30 mA\"");
        ck_assert_int_eq(row != NULL, cases[i].rows);
        ck_assert(row == NULL || strstr(row, "limit=\"at most 300 ms\"") != NULL);
        ck_assert(strstr(xml.data, "name=\"Residual device, 100 mA\"") != NULL);
        wend_free(wend);
    }
}
END_TEST

static bool cautioned(const struct Wend *wend, const char *part)
{
    const struct Plan *plan = wend_result(wend);
    for (int i = 0; i < plan->caution_count; i++) {
        if (said_has(plan->cautions[i].text, part)) {
            return true;
        }
    }
    return false;
}

/* 443.4.1 after A2: fitted unless the owner declines, and for a charging point taken as required. */
START_TEST(surge_protection_is_decided)
{
    static const struct {
        const char *run, *supply;
        enum CheckResult result;
        bool unknown;
        const char *says;
    } rows[] = {
        {"feeds: board", "", CHECK_NOT_DUE, false, "Not decided"},
        {"feeds: board", ", surge-protection: fitted", CHECK_PASS, false, "at the origin"},
        {"feeds: board", ", surge-protection: planned", CHECK_PASS, false, "with this job"},
        {"feeds: board", ", surge-protection: declined, surge-declined-by: the owner on 3 May", CHECK_NOT_DUE, false,
         "Declined by the owner (the owner on 3 May), who accepts the risk."},
        {"feeds: board", ", surge-protection: declined", CHECK_NOT_DUE, false,
         "Declined by the owner, who accepts the risk."},
        {"use: charging", "", CHECK_NOT_DUE, true, "required"},
        {"use: charging", ", surge-protection: declined", CHECK_NOT_DUE, true, "required"},
        {"use: charging", ", surge-protection: fitted", CHECK_PASS, false, "at the origin"},
    };
    for (int i = 0; i < COUNT_OF(rows); i++) {
        char supply[160];
        snprintf(supply, sizeof supply, "system: TN-S, loop-impedance: 0.3 ohm%s", rows[i].supply);
        struct Wend *wend = plan_at("dwelling", rows[i].run, RESIDUAL(30, ", residual-type: A"), supply, NULL, NULL);
        const struct Check *check = rig_found(wend, "surge-protection");
        ck_assert_int_eq(check->result, rows[i].result);
        ck_assert_int_eq(check->unknown, rows[i].unknown);
        ck_assert_int_eq(settles_something(&check->settles), rows[i].unknown);
        ck_assert_msg(rig_says(plainly(check->text), rows[i].says), "row %d: %s", i, plainly(check->text));
        ck_assert_int_eq(cautioned(wend, "Surge protection was not decided"), rows[i].supply[0] == '\0');
        wend_free(wend);
    }
}
END_TEST

/* 536.4 */
START_TEST(selectivity_is_decided)
{
    static const struct {
        const char *supply;
        enum CheckResult result;
    } rows[] = {{"", CHECK_NOT_DUE}, {", selectivity: shown", CHECK_PASS}, {", selectivity: accepted", CHECK_NOT_DUE}};
    for (int i = 0; i < COUNT_OF(rows); i++) {
        char supply[160];
        snprintf(supply, sizeof supply, "system: TN-S, loop-impedance: 0.3 ohm%s", rows[i].supply);
        struct Wend *wend = plan_at("workshop", "feeds: board", NULL, supply, NULL, NULL);
        const struct Check *check = rig_found(wend, "selectivity");
        ck_assert_int_eq(check->result, rows[i].result);
        ck_assert_int_eq(check->assumes != NULL, i == 0);
        ck_assert_int_eq(cautioned(wend, "ahead stays closed"), i == 0);
        wend_free(wend);
    }
}
END_TEST

/* An outbuilding's old supply brings its old earth with it (411.3.1.1). */
START_TEST(old_supply)
{
    static const struct {
        const char *top;
        bool goes, stays, open;
    } rows[] = {
        {ISLAND "}", false, false, false},
        {ISLAND ", existing: none}", false, false, false},
        {ISLAND ", existing: replaced}", true, false, false},
        {EXPORT ", existing: replaced}", true, false, false},
        {EXPORT ", existing: kept}", false, true, false},
        {ISLAND ", existing: kept}", false, true, true},
    };
    for (int i = 0; i < COUNT_OF(rows); i++) {
        struct Wend *wend =
            plan_at("dwelling", "feeds: board\n    finish: {enclosure: plastic}", NULL, NULL, rows[i].top, NULL);
        const struct Check *check = rig_found(wend, "existing-supply");
        ck_assert_int_eq(check->unknown, rows[i].open);
        ck_assert_int_eq(settles_something(&check->settles), rows[i].open);
        ck_assert_int_eq(check->assumes != NULL, i == 0); /* nobody said */
        ck_assert_int_eq(cautioned(wend, "Nothing may join the old earth to the new one"), rows[i].goes);
        ck_assert_int_eq(cautioned(wend, "keeps its old supply"), rows[i].stays);
        const struct Bytes xml = printed(wend);
        ck_assert_int_eq(strstr(xml.data, "name=\"The old supply's earth off\"") != NULL, rows[i].goes);
        ck_assert_int_eq(strstr(xml.data, "name=\"Circuits moved from the old supply\"") != NULL, rows[i].goes);
        ck_assert_int_eq(strstr(xml.data, "name=\"Old supply dead, its earth off at both ends\"") != NULL,
                         rows[i].goes);
        wend_free(wend);
    }
}
END_TEST

/* The network operator hears of charging points and heat pumps before the work, and of nothing else here. */
START_TEST(the_network_operator_is_told)
{
    static const struct {
        const char *run, *says;
    } rows[] = {{"use: charging", "lead=\"A charging point: "},
                {"use: heat-pump\n    feeds: equipment", "lead=\"A heat pump: "},
                {"use: heating\n    feeds: equipment", NULL}};
    for (int i = 0; i < COUNT_OF(rows); i++) {
        struct Wend *wend = plan_at("dwelling", rows[i].run, RESIDUAL(30, ", residual-type: A"), NULL, NULL, NULL);
        const struct Bytes xml = printed(wend);
        ck_assert(rows[i].says == NULL || strstr(xml.data, rows[i].says) != NULL);
        ck_assert_int_eq(strstr(xml.data, "about=\"notice\"") != NULL, rows[i].says != NULL);
        const struct WendBytes brief = wend_document(wend, WEND_BRIEF_HTML);
        ck_assert_int_eq(strstr(brief.data, "maximum demand <strong>before</strong>") != NULL, rows[i].says != NULL);
        wend_free(wend);
    }
}
END_TEST

static struct Wend *plan_of_use(const char *use, const char *load, const char *supply, const char *runs)
{
    char run[80];
    snprintf(run, sizeof run, "feeds: equipment\n    use: %s", use);
    return rig_plan(&(struct RigRoute){
        .supply = supply != NULL ? supply : "system: TN-S, loop-impedance: 350 mohm, fault-current: 1 kA",
        .top = "earthing: {far-end: export, extraneous-parts: no}",
        .run = run,
        .load = load,
        .device = "kind: MCB, curve: B, rating: 40 A, breaking-capacity: 6 kA",
        .cable = "type: BS5467, cores: 5",
        .runs = runs,
        .segments = "{name: a, way: wall, length: 20 m}"});
}

static int count_of(const struct Wend *wend, const char *id)
{
    int count = 0;
    const struct PlanRun *run = &wend_result(wend)->runs[0];
    for (int i = 0; i < run->check_count; i++) {
        count += strcmp(run->checks[i].id, id) == 0;
    }
    return count;
}

/* What passes as a load is open as generation, at every size; of other uses nothing is said of it. */
START_TEST(generation_is_never_a_pass)
{
    for (int use = 0; use < USE_COUNT; use++) {
        const bool generates = use == USE_GENERATION;
        struct Wend *wend = plan_of_use(survey_word(WORDS_USE, use), "current: 12 A", NULL, NULL);
        ck_assert_int_eq(count_of(wend, "generation"), generates);
        ck_assert_int_eq(cautioned(wend, "Generation in parallel"), generates);
        ck_assert(use != USE_GENERAL || wend_verdict(wend) == WEND_PASS);
        wend_free(wend);
    }
    struct Wend *wend = plan_of_use("generation", "current: 12 A", NULL, NULL);
    const struct Check *check = rig_found(wend, "generation");
    ck_assert(check->open && check->settles.reading == SAY_SETTLED_BY_DESIGN_OF_GENERATION &&
              said_has(check->text, "not designed here"));
    ck_assert_int_eq(wend_verdict(wend), VERDICT_OPEN);
    const struct PlanRun *run = &wend_result(wend)->runs[0];
    ck_assert_int_gt(run->option_count, 4);
    for (int i = 0; i < run->option_count; i++) {
        ck_assert_int_ne(run->options[i].verdict, VERDICT_PASS);
    }
    wend_free(wend);
}
END_TEST

/* EREC G98 up to 16 A in a phase, all of the premises' generation together; else G99. */
START_TEST(the_network_operator_is_told_of_generation)
{
#define THREE_PHASE  "system: TN-S, phases: 3, loop-impedance: 350 mohm"
#define MORE(use, a) "  more:\n    use: " use "\n    load: {current: " a "}\n    cable: {type: BS5467, cores: 3}\n"
    static const struct {
        const char *load, *supply, *runs;
        bool apply;
    } rows[] = {
        {"power: 3.68 kW", NULL, NULL, false}, /* 16 A at 230 V */
        {"power: 3.69 kW", NULL, NULL, true},
        {"current: 16.1 A", NULL, NULL, true},
        {"current: 20 A, diversity: 50 %", NULL, NULL, true}, /* 10 A at a time, and still 20 A */
        {"power: 11.04 kW", THREE_PHASE, NULL, false},
        {"power: 11.1 kW", THREE_PHASE, NULL, true},
        {"current: 9 A, phases: 1", THREE_PHASE, MORE("generation", "9 A, phases: 1"), true}, /* may be one line */
        {"current: 8 A", NULL, MORE("generation", "8 A"), false},
        {"current: 8 A", NULL, MORE("heating", "20 A"), false}, /* that is drawn */
    };
    for (int i = 0; i < COUNT_OF(rows); i++) {
        struct Wend *wend = plan_of_use("generation", rows[i].load, rows[i].supply, rows[i].runs);
        ck_assert_msg(cautioned(wend, "apply to the network operator before the work") == rows[i].apply, "row %d", i);
        ck_assert_msg(cautioned(wend, "within 28 days of commissioning (G98)") == !rows[i].apply, "row %d", i);
        const struct WendBytes brief = wend_document(wend, WEND_BRIEF_HTML);
        ck_assert(strstr(brief.data, rows[i].apply ? "(G99)" : "(G98)") != NULL);
        wend_free(wend);
    }
}
END_TEST

/* 705.522: 6 m for a slung cable on a farm, where the 3.5 m of other places does not hold. */
START_TEST(cautions_of_the_place)
{
    struct Wend *wend = plan_at("farm", "feeds: board", RESIDUAL(300, ""), NULL, NULL, "way: catenary");
    ck_assert(cautioned(wend, "hangs at least 6 m above"));
    ck_assert(!cautioned(wend, "and 3.5 m elsewhere"));
    ck_assert(cautioned(wend, "bond all metal that an animal can touch"));
    wend_free(wend);
    wend = plan_at("dwelling", "feeds: board", NULL, NULL, NULL, "way: catenary");
    ck_assert(cautioned(wend, "and 3.5 m elsewhere"));
    ck_assert(!cautioned(wend, "Farm: "));
    wend_free(wend);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("what the outbuilding brings");
    TCase *tests = tcase_create("outbuilding");
    tcase_set_timeout(tests, 60);
    tcase_add_loop_test(tests, metal_ahead_of_the_residual_device, 0, COUNT_OF(position_rows));
    tcase_add_test(tests, tt_supply_and_a_plain_breaker);
    tcase_add_test(tests, bonding_not_surveyed);
    tcase_add_test(tests, board_device_is_tested);
    tcase_add_test(tests, surge_protection_is_decided);
    tcase_add_test(tests, selectivity_is_decided);
    tcase_add_test(tests, old_supply);
    tcase_add_test(tests, the_network_operator_is_told);
    tcase_add_test(tests, generation_is_never_a_pass);
    tcase_add_test(tests, the_network_operator_is_told_of_generation);
    tcase_add_test(tests, cautions_of_the_place);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
