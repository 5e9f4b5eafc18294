/* Several runs on one way: separation of data from power, order of drawing in, fill with all of them, grouping. */
#include "mechanics_route.h"
#include "said.h"

#include <stdio.h>
#include <string.h>

static const char link[] = "  link:\n    kind: data\n    cable: {type: EN50288, diameter: 7.5 mm}\n";

/* In the ground 300 mm, once seen. In air BS EN 50174-2 from memory: 300 mm x 0.2 for up to three circuits of 20 A;
 * 80 A and what lies beside it are 4 + 3 = 7 circuits: x 0.6. */
START_TEST(data_keeps_away)
{
    static const struct {
        const char *load, *segment;
        double distance_mm;
    } cases[] = {
        {"{current: 16 A}", "  - {name: a, way: buried, length: 5 m}\n", 300},
        {"{current: 16 A}", "  - {name: a, way: wall, length: 5 m}\n", 60},
        {"{current: 32 A}", "  - {name: a, way: fence, length: 5 m}\n", 60},
        {"{current: 80 A}", "  - {name: a, way: tray, length: 5 m, beside: {circuits: 3}}\n", 180},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        struct Wend *wend =
            mechanics_plan(&(struct MechanicsRoute){.load = cases[i].load, .runs = link, .segments = cases[i].segment});
        const struct Plan *plan = wend_result(wend);
        ck_assert_double_eq_tol(plan->segments[0].separation_mm, cases[i].distance_mm, 1e-9);
        ck_assert(said_has(plan->segments[0].separation, "link"));
        int cautions = 0;
        for (int c = 0; c < plan->caution_count; c++) {
            cautions += say_same(plan->cautions[c].text, plan->segments[0].separation);
        }
        ck_assert_int_eq(cautions, 1);
        wend_free(wend);
    }
}
END_TEST

/* BS 7671 528.1: in one duct, conduit or trunking with power a data cable is insulated for the highest voltage there,
 * on three lines that between two of them, 398.4 V. Without its maker's figure the check is not made, and then no paper
 * says that it is drawn in with power; with it no paper says that it needs a duct of its own. */
START_TEST(may_data_share)
{
    static const struct {
        const char *insulated, *segment;
        enum CheckResult result;
        bool unknown;
    } rows[] = {
        {"", "way: duct, duct: {size: 110 mm}", CHECK_NOT_DUE, true},
        {", insulated-for: 230 V", "way: duct, duct: {size: 110 mm}", CHECK_PASS, false},
        {", insulated-for: 229 V", "way: duct, duct: {size: 110 mm}", CHECK_FAIL, false},
        {", insulated-for: 60 V", "way: trunking, size: 100 x 100 mm", CHECK_FAIL, false},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char runs[200], segments[120];
        snprintf(runs, sizeof runs, "  link:\n    kind: data\n    cable: {type: EN50288, diameter: 7.5 mm%s}\n",
                 rows[i].insulated);
        snprintf(segments, sizeof segments, "  - {name: a, length: 5 m, %s}\n", rows[i].segment);
        struct Wend *wend = mechanics_plan(&(struct MechanicsRoute){
            .cable = i < 3 ? "{type: BS5467, cores: 3, size: 6 mm2}"
                           : "{type: BS6004-multicore, cores: 3, size: 6 mm2, diameter: 13 mm}",
            .runs = runs,
            .segments = segments});
        const struct Plan *plan = wend_result(wend);
        const struct Check *check = route_check(wend, 1, "segregation:a");
        ck_assert_int_eq(check->result, rows[i].result);
        ck_assert_int_eq(check->unknown, rows[i].unknown);
        ck_assert_int_eq(plan->pass, rows[i].result != CHECK_FAIL);
        const bool together = said_has(plan->segments[0].drawing_in, "link");
        const bool apart = said_has(plan->segments[0].separation, "of its own");
        ck_assert_int_eq(apart, rows[i].result != CHECK_PASS);
        ck_assert(!(together && apart));
        ck_assert_double_le(plan->segments[0].separation_mm, 0);
        /* in few words too: no distance where none can be kept */
        const struct Say *shortly = NULL;
        for (int c = 0; c < plan->caution_count; c++) {
            shortly =
                say_same(plan->cautions[c].text, plan->segments[0].separation) ? plan->cautions[c].shortly : shortly;
        }
        ck_assert_ptr_nonnull(shortly);
        ck_assert_int_eq((int)shortly->id, (int)(apart ? SAY_SHORT_DATA_OUT : SAY_SHORT_DATA_SHARES));
        wend_free(wend);
    }
}
END_TEST

START_TEST(power_alone_keeps_from_nothing)
{
    struct Wend *wend = mechanics_plan(&(struct MechanicsRoute){
        .runs = "  second:\n    load: {current: 10 A}\n    cable: {type: BS5467, cores: 3}\n"});
    ck_assert_double_le(wend_result(wend)->segments[0].separation_mm, 0);
    ck_assert_ptr_null(wend_result(wend)->segments[0].separation);
    wend_free(wend);
}
END_TEST

/* The heavy one leads; the same distance on many stretches is one caution. */
START_TEST(drawn_in_together)
{
    struct Wend *wend = mechanics_plan(
        &(struct MechanicsRoute){.load = "{current: 5 A}",
                                 .runs = "  second:\n    load: {current: 50 A}\n    cable: {type: BS5467, cores: 3}\n"
                                         "  link:\n    kind: data\n    cable: {type: EN50288, diameter: 7.5 mm}\n",
                                 .segments = "  - {name: path, way: duct, length: 9 m, duct: {size: 110 mm}}\n"
                                             "  - {name: lawn, way: duct, length: 9 m, duct: {size: 110 mm}}\n"
                                             "  - {name: bed, way: buried, length: 9 m}\n"});
    const struct Plan *plan = wend_result(wend);
    ck_assert(said_has(plan->segments[0].drawing_in, "second, then feeder.")); /* link stays out: see may_data_share */
    ck_assert_ptr_null(plan->segments[2].drawing_in);
    const struct Check *fill = route_check(wend, 0, "duct-fill:path");
    double squares = 7.5 * 7.5;
    for (int r = 0; r < 2; r++) {
        squares += plan->runs[r].cable_facts.overall_mm * plan->runs[r].cable_facts.overall_mm;
    }
    route_says(plainly(fill->text), "3 cables fill");
    ck_assert_double_eq_tol(fill->value, squares / (82.0 * 82) * 100, 1e-9);
    int cautions = 0;
    for (int c = 0; c < plan->caution_count; c++) {
        if (text_same(plan->cautions[c].source, "BS EN 50174-2; BS 7671 528")) {
            cautions++;
            ck_assert(said_has(plan->cautions[c].text, "link"));
            ck_assert_int_eq(plan->cautions[c].stretch_count, text_same(plan->cautions[c].where, "bed") ? 1 : 2);
        }
    }
    ck_assert_int_eq(cautions, 2); /* of the ducts, and of the bed */
    wend_free(wend);
}
END_TEST

/* Two loaded circuits in one duct are bunched (Table 4C1: 0.80); a data cable loads nothing. */
START_TEST(only_power_groups)
{
    struct Wend *two = mechanics_plan(&(struct MechanicsRoute){
        .runs = "  second:\n    load: {current: 10 A}\n    cable: {type: BS5467, cores: 3}\n"});
    struct Wend *data = mechanics_plan(&(struct MechanicsRoute){.runs = link});
    struct Wend *alone = mechanics_plan(&(struct MechanicsRoute){0});
    const double factor = wend_result(alone)->runs[0].ratings[0].factor;
    ck_assert_double_eq_tol(wend_result(two)->runs[0].ratings[0].factor, factor * 0.8, 1e-9);
    ck_assert_double_eq_tol(wend_result(data)->runs[0].ratings[0].factor, factor, 1e-9);
    wend_free(two);
    wend_free(data);
    wend_free(alone);
}
END_TEST

/* The stretches of the caution that says `part`, as bits; 0 when none says it. */
static unsigned bites_on(const struct Plan *plan, const char *part)
{
    unsigned stretches = 0;
    for (int c = 0; c < plan->caution_count; c++) {
        for (int i = 0; i < plan->segment_count && said_has(plan->cautions[c].text, part); i++) {
            stretches |= (unsigned)plan_caution_at(&plan->cautions[c], i) << i;
        }
    }
    return stretches;
}

/* Whoever digs the third trench has not read the card of the first. Only the duct that meets the wall leads indoors. */
START_TEST(cautions_name_every_stretch)
{
    struct Wend *wend = mechanics_plan(&(struct MechanicsRoute){
        .segments = "  - {name: fence, way: fence, length: 5 m}\n"
                    "  - {name: path, way: duct, length: 5 m, duct: {size: 63 mm, laid: new}}\n"
                    "  - {name: lawn, way: buried, length: 5 m}\n"
                    "  - {name: foot, way: duct, length: 2 m, duct: {size: 63 mm, laid: new}}\n"
                    "  - {name: hole, way: through-wall, length: 0.4 m, wall: brick, thickness: 330 mm}\n"});
    const struct Plan *plan = wend_result(wend);
    ck_assert_uint_eq(bites_on(plan, "Before you dig"), 1U << 1 | 1U << 2 | 1U << 3);
    ck_assert_uint_eq(bites_on(plan, "Seal the duct"), 1U << 3);
    ck_assert_uint_eq(bites_on(plan, "Every fixing is metal"), 1U << 0);
    ck_assert_uint_eq(bites_on(plan, "Work dead"), 0);
    wend_free(wend);
}
END_TEST

TCase *mechanics_together_tests(void)
{
    TCase *tests = tcase_create("together");
    tcase_add_test(tests, data_keeps_away);
    tcase_add_test(tests, may_data_share);
    tcase_add_test(tests, power_alone_keeps_from_nothing);
    tcase_add_test(tests, drawn_in_together);
    tcase_add_test(tests, only_power_groups);
    tcase_add_test(tests, cautions_name_every_stretch);
    return tests;
}
