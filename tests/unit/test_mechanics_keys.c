/* The keys that say how a cable is drawn and what room its ends have, on whole routes. */
#include "mechanics_route.h"
#include "said.h"
#include "tables/tables.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const char sloping[] = "  - {name: path, way: duct, length: 20 m, rise: 5 m, duct: {size: 63 mm}}\n";
static const char ten[] = "{type: BS5467, cores: 3, size: 10 mm2}";
static const double newton_per_m = 0.866 * 9.81; /* 3-core 10 mm2 */

/* 20 m and 5 m up: 0.866 x 9.81 x 20 (0.6 cos a +- 0.25), sin a = 0.25. */
START_TEST(the_end_as_surveyed)
{
    const double level = 0.6 * sqrt(1 - 0.0625);
    struct Wend *wend = mechanics_plan(&(struct MechanicsRoute){.cable = ten, .segments = sloping});
    const struct PlanPull *pull = &wend_result(wend)->runs[0].pulls[0];
    ck_assert(pull->worked && pull->from_far && !pull->either);
    ck_assert_double_eq_tol(pull->tension_n, newton_per_m * 20 * (level - 0.25), 1e-6);
    ck_assert_double_eq_tol(pull->other_end_n, newton_per_m * 20 * (level + 0.25), 1e-6);
    ck_assert_double_eq_tol(pull->limit_n, 1500, 1e-9);
    ck_assert(
        said_has(pull->because, "Put the drum at the far end: from the other one it takes 142 N, since it climbs"));
    wend_free(wend);
    wend =
        mechanics_plan(&(struct MechanicsRoute){.cable = ten, .run = "    pull: {from: start}\n", .segments = sloping});
    pull = &wend_result(wend)->runs[0].pulls[0];
    ck_assert(!pull->from_far);
    ck_assert_double_eq_tol(pull->tension_n, newton_per_m * 20 * (level + 0.25), 1e-6);
    ck_assert(said_has(pull->because, "as surveyed; from the other one it would take 57 N"));
    wend_free(wend);
}
END_TEST

START_TEST(friction_and_lubricant)
{
    static const struct {
        const char *keys;
        double friction;
        const char *says;
    } cases[] = {{"", 0.6, "dry (friction 0.60)"},
                 {"    pull: {lubricant: yes}\n", 0.35, "with lubricant (friction 0.35)"},
                 {"    pull: {friction: 0.42}\n", 0.42, "dry (friction 0.42 as surveyed)"}};
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        struct Wend *wend = mechanics_plan(&(struct MechanicsRoute){.cable = ten, .run = cases[i].keys});
        const struct PlanPull *pull = &wend_result(wend)->runs[0].pulls[0];
        ck_assert_double_eq_tol(pull->friction, cases[i].friction, 1e-9);
        ck_assert_double_eq_tol(pull->tension_n, newton_per_m * 20 * cases[i].friction, 1e-6);
        ck_assert(said_has(pull->text, cases[i].says));
        wend_free(wend);
    }
}
END_TEST

/* A 63 mm duct has 47 mm at least; one that was measured has what was measured: 19.5^2 / 50^2 = 15.21 %. */
START_TEST(the_bore_as_surveyed)
{
    struct Wend *wend = mechanics_plan(&(struct MechanicsRoute){
        .cable = ten, .segments = "  - {name: path, way: duct, length: 20 m, duct: {size: 63 mm, bore: 50 mm}}\n"});
    const struct Check *fill = route_check(wend, 0, "duct-fill:path");
    ck_assert_double_eq_tol(fill->value, 15.21, 1e-9);
    route_says(plainly(fill->text), "50 mm bore of the duct");
    wend_free(wend);
    /* alone it will do as well */
    wend = mechanics_plan(&(struct MechanicsRoute){
        .cable = ten, .segments = "  - {name: path, way: duct, length: 20 m, duct: {bore: 24 mm}}\n"});
    ck_assert_int_eq(route_check(wend, 0, "duct-fill:path")->result, CHECK_FAIL);
    wend_free(wend);
}
END_TEST

/* Three right angles of 20 m each are more than one pull of this kind stands; with a pit after each it is three. */
START_TEST(a_pit_ends_a_pull)
{
    static const char *const pits[] = {"none", "end"};
    double tension_n[2];
    for (int with = 0; with < 2; with++) {
        struct Arena *arena = arena_new();
        struct TextBuilder segments = text_builder(arena);
        for (int i = 0; i < 3; i++) {
            text_print(&segments,
                       "  - {name: d%d, way: duct, length: 20 m, duct: {size: 63 mm}, draw-pits: %s, "
                       "bends: [{angle: 90 deg, radius: 600 mm}]}\n",
                       i, pits[with]);
        }
        struct Wend *wend = mechanics_plan(&(struct MechanicsRoute){.cable = ten, .segments = text_done(&segments)});
        const struct PlanRun *run = &wend_result(wend)->runs[0];
        ck_assert_int_eq(run->pull_count, with ? 3 : 1);
        ck_assert_double_eq_tol(run->pulls[0].bends_deg, with ? 90 : 270, 1e-9);
        tension_n[with] = run->pulls[0].tension_n;
        ck_assert_int_eq(run->pulls[0].result, with ? CHECK_PASS : CHECK_FAIL);
        ck_assert((run->pulls[0].pit_at_m > 0) == !with);
        wend_free(wend);
        arena_free(arena);
    }
    ck_assert_double_lt(tension_n[1], tension_n[0] / 3);
    ck_assert_double_eq_tol(tension_n[1], newton_per_m * 20 * 0.6 * exp(0.6 * acos(-1) / 2), 1e-6);
}
END_TEST

/* Over timber no friction is published: the check is not made until it is written down. */
START_TEST(drawn_through_a_roof)
{
    static const char roof[] = "  - {name: loft, way: loft-void, length: 9 m, drawn: yes, bends: 1}\n";
    struct Wend *wend = mechanics_plan(&(struct MechanicsRoute){.cable = ten, .segments = roof});
    ck_assert(route_check(wend, 0, "pull:loft")->unknown);
    ck_assert(route_not_checked(wend, "pull:loft", "feeder"));
    const struct PlanPull *pull = &wend_result(wend)->runs[0].pulls[0];
    ck_assert(!pull->worked);
    ck_assert_double_eq_tol(pull->bends_deg, 90, 1e-9); /* that much is known all the same */
    ck_assert(said_has(pull->text, "pull: friction"));
    wend_free(wend);
    wend =
        mechanics_plan(&(struct MechanicsRoute){.cable = ten, .run = "    pull: {friction: 0.5}\n", .segments = roof});
    pull = &wend_result(wend)->runs[0].pulls[0];
    ck_assert_double_eq_tol(pull->tension_n, newton_per_m * 9 * 0.5 * exp(0.5 * acos(-1) / 2), 1e-6);
    wend_free(wend);
    wend = mechanics_plan(&(struct MechanicsRoute){
        .cable = ten, .segments = "  - {name: loft, way: loft-void, length: 9 m, bends: 1}\n"});
    ck_assert_int_eq(wend_result(wend)->runs[0].pull_count, 0); /* laid, not drawn */
    wend_free(wend);
}
END_TEST

/* Between two draw-in boxes of a conduit two right angles are the habit (common practice, no source). */
START_TEST(degrees_in_conduit)
{
    struct Wend *wend = mechanics_plan(&(struct MechanicsRoute){
        .cable = "{type: BS6004-multicore, cores: 3, diameter: 9 mm}",
        .segments = "  - {name: up, way: conduit, length: 3 m, size: 25 mm, material: plastic, bends: 2}\n"
                    "  - {name: over, way: conduit, length: 3 m, size: 25 mm, material: plastic, bends: 1}\n"});
    const struct PlanRun *run = &wend_result(wend)->runs[0];
    ck_assert_int_eq(run->pull_count, 1);
    ck_assert_double_eq_tol(run->pulls[0].bends_deg, 270, 1e-9);
    ck_assert_double_eq_tol(run->pulls[0].bends_most_deg, 180, 1e-9);
    ck_assert(said_has(run->pulls[0].bends_text, "Put a draw-in box"));
    wend_free(wend);
}
END_TEST

/* 3-core 10 mm2: 6 x 19.5 = 117 mm to the inside and the cable's 19.5 mm: 136.5 mm. Common practice, no source: it is
 * stiff enough that an entry is set at an angle rather than kinking it. */
START_TEST(room_at_the_ends)
{
    struct Wend *wend = mechanics_plan(&(struct MechanicsRoute){
        .cable = ten,
        .run = "    start: {room: 120 mm, entry: bottom}\n    finish: {room: 140 mm}\n",
    });
    const struct PlanRun *run = &wend_result(wend)->runs[0];
    ck_assert_double_eq_tol(run->start_end.needs_mm, 136.5, 1e-9);
    ck_assert(run->start_end.tight && !run->finish_end.tight);
    ck_assert(said_has(run->start_end.text, "bottom entry has 120 mm in front of it and the cable needs 137 mm"));
    ck_assert(said_has(run->start_end.text, "at an angle"));
    ck_assert(route_told(wend, "end-tight"));
    wend_free(wend);
    wend = mechanics_plan(&(struct MechanicsRoute){.cable = ten});
    run = &wend_result(wend)->runs[0];
    ck_assert(!route_told(wend, "end-tight") && !run->start_end.tight);
    ck_assert(said_has(run->start_end.text, "This cable is stiff. Keep 137 mm"));
    ck_assert(said_has(run->start_end.text, "set the entry at an angle"));
    wend_free(wend);
}
END_TEST

/* 0.866 kg/m: 20 m, 0.6 m down and up, two tails of 0.5 m and 5 % are 23.31 m, 24 m to order, 20.8 kg; 40 m are 44.31,
 * 45 m and 39.0 kg. */
START_TEST(what_is_carried)
{
    struct Wend *wend = mechanics_plan(&(struct MechanicsRoute){.cable = ten});
    const struct PlanCable *cable = &wend_result(wend)->runs[0].cable_facts;
    ck_assert_double_eq_tol(cable->overall_mm, 19.5, 1e-9);
    ck_assert_double_eq_tol(cable->bend_radius_mm, 117, 1e-9);
    ck_assert_double_eq_tol(cable->order_weight_kg, 0.866 * 24, 1e-9);
    ck_assert(!cable->heavy);
    ck_assert(said_has(cable->text, "19.5 mm over all, 13.1 mm under the armour; bend it no tighter than 117 mm to the "
                                    "inside; 0.866 kg a metre, 21 kg for the 24 m to order, without the drum."));
    ck_assert(!said_has(cable->text, "more than one person"));
    wend_free(wend);
    wend = mechanics_plan(&(struct MechanicsRoute){
        .cable = ten, .segments = "  - {name: path, way: duct, length: 40 m, duct: {size: 63 mm}}\n"});
    cable = &wend_result(wend)->runs[0].cable_facts;
    ck_assert_double_eq_tol(cable->order_weight_kg, 0.866 * 45, 1e-9);
    ck_assert(cable->heavy && said_has(cable->text, "more than one person should lift"));
    bool cautioned = false;
    for (int i = 0; i < wend_result(wend)->caution_count; i++) {
        cautioned = cautioned || wend_result(wend)->cautions[i].text->id == SAY_CAUTION_LIFT;
    }
    ck_assert(cautioned);
    wend_free(wend);
}
END_TEST

/* Network operators' notes: 450 mm under paths and unmade ground, 600 mm under roads and dug ground; where nobody says
 * what lies above, the deeper. Ducts that lie there already are warned of too. */
START_TEST(cover_over_what_is_buried)
{
    static const struct {
        const char *ground;
        bool shallow;
    } rows[] = {
        {"way: buried, length: 9 m, depth: 450 mm, under: lawn", false},
        {"way: buried, length: 9 m, depth: 440 mm, under: path", true},
        {"way: buried, length: 9 m, depth: 590 mm, under: drive", true},
        {"way: buried, length: 9 m, depth: 600 mm, under: bed", false},
        {"way: buried, length: 9 m, depth: 500 mm", true},
        {"way: duct, length: 9 m, depth: 500 mm, under: drive, duct: {size: 63 mm, laid: existing}", true},
        {"way: duct, length: 9 m, duct: {size: 63 mm}", false},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char segments[160];
        snprintf(segments, sizeof segments, "  - {name: g, %s}\n", rows[i].ground);
        struct Wend *wend = mechanics_plan(&(struct MechanicsRoute){.cable = ten, .segments = segments});
        ck_assert_msg(route_told(wend, "cover-shallow") == rows[i].shallow, "%s", rows[i].ground);
        wend_free(wend);
    }
}
END_TEST

static bool cautioned(const struct Plan *plan, const char *text)
{
    for (int i = 0; i < plan->caution_count; i++) {
        if (said_has(plan->cautions[i].text, text)) {
            return true;
        }
    }
    return false;
}

/* A trench is dug deeper than its cover: 1.06 m and a 63 mm duct on 75 mm of sand come to 1.198 m, 1.07 m to 1.208. A
 * span is told how high it hangs. */
START_TEST(deep_trench_and_span)
{
    static const char *const grounds[] = {"way: duct, length: 9 m, depth: 1.06 m, duct: {size: 63 mm}",
                                          "way: duct, length: 9 m, depth: 1.07 m, duct: {size: 63 mm}",
                                          "way: catenary, length: 9 m"};
    for (int i = 0; i < 3; i++) {
        char segments[160];
        snprintf(segments, sizeof segments, "  - {name: g, %s}\n", grounds[i]);
        struct Wend *wend = mechanics_plan(&(struct MechanicsRoute){.cable = ten, .segments = segments});
        ck_assert_int_eq(cautioned(wend_result(wend), "A trench deeper than about 1.2 m"), i == 1);
        ck_assert_int_eq(cautioned(wend_result(wend), "5.8 m above the ground"), i == 2);
        wend_free(wend);
    }
}
END_TEST

/* Round cable of 20 mm. Trunking takes 45 % (textbook): 314.16 mm2 of 50 x 25 is 25.1 %, of 25 x 25 50.3 %; 25 x 16 and
 * 100 x 16 are too flat for it. A conduit's bore is not held: nothing passes, and what overfills its outside fails: one
 * cable 53 % (20^2 / 27^2 = 54.9 %, 20^2 / 28^2 = 51.0 %). */
START_TEST(room_in_conduit_and_trunking)
{
    static const struct {
        const char *way;
        enum CheckResult result;
        bool unknown;
        double value, limit;
    } rows[] = {
        {"way: trunking, size: 50 x 25 mm", CHECK_PASS, false, 25.13274, 45},
        {"way: trunking, size: 25 x 25 mm", CHECK_FAIL, false, 50.26548, 45},
        {"way: trunking, size: 100 x 16 mm", CHECK_FAIL, false, 20, 16},
        {"way: trunking, size: 50 x 25 mm, beside: {circuits: 1}", CHECK_NOT_DUE, true, 0, 0},
        {"way: trunking, size: 25 x 25 mm, beside: {circuits: 1}", CHECK_FAIL, false, 50.26548, 45},
        {"way: trunking", CHECK_NOT_DUE, true, 0, 0},
        {"way: conduit, size: 27 mm", CHECK_FAIL, false, 54.86968, 53},
        {"way: conduit, size: 28 mm", CHECK_NOT_DUE, true, 0, 0},
        {"way: conduit", CHECK_NOT_DUE, true, 0, 0},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char segments[160];
        snprintf(segments, sizeof segments, "  - {name: g, length: 4 m, %s}\n", rows[i].way);
        struct Wend *wend = mechanics_plan(&(struct MechanicsRoute){
            .cable = "{type: BS6004-multicore, cores: 3, size: 6 mm2, diameter: 20 mm}", .segments = segments});
        const struct Check *check = route_check(wend, 0, "duct-fill:g");
        ck_assert_msg(check->result == rows[i].result && check->unknown == rows[i].unknown, "%s: %s", rows[i].way,
                      plainly(check->text));
        ck_assert_msg(rows[i].unknown || (fabs(check->value - rows[i].value) < 1e-4 && check->limit == rows[i].limit),
                      "%s: %s", rows[i].way, plainly(check->text));
        ck_assert_int_eq(wend_result(wend)->pass, rows[i].result != CHECK_FAIL);
        ck_assert_int_eq(route_not_checked(wend, "duct-fill:g", "feeder"), rows[i].unknown);
        wend_free(wend);
    }
}
END_TEST

/* Two cables of 20 mm are allowed 31 % of a bore: 800 mm2 of 50^2 is 32 %. One of them of unknown diameter: 16 %. */
START_TEST(two_in_one_conduit)
{
    static const char *const others[] = {"BS6004-single, size: 16 mm2, diameter: 20 mm", "BS6004-single, size: 16 mm2"};
    for (int i = 0; i < 2; i++) {
        char runs[160];
        snprintf(runs, sizeof runs, "  bond: {kind: earth, cable: {type: %s}}\n", others[i]);
        struct Wend *wend = mechanics_plan(
            &(struct MechanicsRoute){.cable = "{type: BS6004-multicore, cores: 3, size: 6 mm2, diameter: 20 mm}",
                                     .runs = runs,
                                     .segments = "  - {name: g, length: 4 m, way: conduit, size: 50 mm}\n"});
        const struct Check *check = route_check(wend, 0, "duct-fill:g");
        ck_assert_msg(check->result == (i == 0 ? CHECK_FAIL : CHECK_NOT_DUE), "%s", plainly(check->text));
        wend_free(wend);
    }
}
END_TEST

/* A data cable whose weight nobody knows turns too often all the same: five right angles of 360 degrees. */
START_TEST(bends_without_a_weight)
{
    static const struct {
        int bends;
        bool fails;
    } rows[] = {{4, false}, {5, true}};
    for (int i = 0; i < 2; i++) {
        char segments[160];
        snprintf(segments, sizeof segments,
                 "  - {name: g, way: duct, length: 9 m, duct: {size: 63 mm}, bends: %d}\n"
                 "  - {name: w, way: wall, length: 2 m}\n",
                 rows[i].bends);
        struct Wend *wend = mechanics_plan(&(struct MechanicsRoute){
            .cable = ten,
            .run = "    along: [w]\n",
            .runs = "  link: {kind: data, cable: {type: EN50288, diameter: 7 mm}, along: [g]}\n",
            .segments = segments});
        const struct Check *check = route_check(wend, 1, "pull:g");
        ck_assert_int_eq(check->result, rows[i].fails ? CHECK_FAIL : CHECK_NOT_DUE);
        ck_assert_int_eq(check->unknown, !rows[i].fails);
        ck_assert_int_eq(wend_result(wend)->pass, !rows[i].fails);
        wend_free(wend);
    }
}
END_TEST

TCase *mechanics_keys_tests(void)
{
    TCase *tests = tcase_create("keys");
    tcase_add_test(tests, the_end_as_surveyed);
    tcase_add_test(tests, friction_and_lubricant);
    tcase_add_test(tests, the_bore_as_surveyed);
    tcase_add_test(tests, a_pit_ends_a_pull);
    tcase_add_test(tests, drawn_through_a_roof);
    tcase_add_test(tests, degrees_in_conduit);
    tcase_add_test(tests, room_at_the_ends);
    tcase_add_test(tests, what_is_carried);
    tcase_add_test(tests, cover_over_what_is_buried);
    tcase_add_test(tests, deep_trench_and_span);
    tcase_add_test(tests, room_in_conduit_and_trunking);
    tcase_add_test(tests, two_in_one_conduit);
    tcase_add_test(tests, bends_without_a_weight);
    return tests;
}
