/* What must not be taken for granted. In each of these routes a figure that would decide was not surveyed, or two that
 * were surveyed contradict each other: a pass would say more than is known. */
#include "csv_file.h"
#include "fault_rig.h"
#include "said.h"

#define COUNT_OF(list) ((int)(sizeof(list) / sizeof(list)[0]))

/* TT: the fault current returns through the ground to the supply's own electrode, which adds about 21 ohm (ENA ER
 * P23/1:1991), whatever the installation's electrode reads. 230 V over 22 ohm is 10 A: no overcurrent device sees that.
 */
START_TEST(good_electrode_on_tt_is_no_metal_loop)
{
    static const char *const devices[] = {"kind: MCB, curve: B, rating: 16 A", "kind: MCB, curve: C, rating: 6 A",
                                          "kind: gG, rating: 16 A"};
    for (int i = 0; i < COUNT_OF(devices); i++) {
        const struct RigRoute route = {.supply = "system: TT, electrode-resistance: 1 ohm",
                                       .load = "current: 4 A",
                                       .device = devices[i],
                                       .segments = "{name: a, way: wall, length: 10 m}"};
        rig_route_result(&route, "disconnection", CHECK_FAIL);
    }
}
END_TEST

/* The same for a coarse residual device: 4 ohm x 10 A is 40 V, but 230 V over 21 + 4 ohm is 9.2 A and never trips 10 A.
 */
START_TEST(coarse_residual_device_on_tt_never_trips)
{
    const struct RigRoute route = {.supply = "system: TT, electrode-resistance: 4 ohm",
                                   .device = "kind: RCBO, curve: B, rating: 32 A, residual: 10 A",
                                   .segments = "{name: a, way: wall, length: 10 m}"};
    rig_route_result(&route, "disconnection", CHECK_FAIL);
}
END_TEST

/* A measured loop on TT is the whole loop. When it is given it must count, not only the electrode. */
START_TEST(measured_loop_on_tt_counts)
{
    const struct RigRoute route = {.supply = "system: TT, electrode-resistance: 2 ohm, loop-impedance: 94 ohm",
                                   .device = "kind: RCBO, curve: B, rating: 32 A, residual: 30 mA"};
    struct Wend *wend = rig_plan(&route);
    ck_assert_double_le(wend_result(wend)->runs[0].readings.fault_far_a, 230.0 / 94);
    wend_free(wend);
}
END_TEST

/* 722.531.3.101 rules out type AC. A type that was not told may be AC. */
START_TEST(charging_with_a_type_not_told)
{
    const struct RigRoute route = {.run = "use: charging",
                                   .load = "current: 30 A",
                                   .device = "kind: RCBO, curve: B, rating: 32 A, residual: 30 mA"};
    struct Wend *wend = rig_plan(&route);
    ck_assert_int_ne(rig_found(wend, "device-for-load")->result, CHECK_PASS);
    wend_free(wend);
}
END_TEST

/* A separate protective conductor has its own way: 200 m of 1.5 mm2 are 2.5 ohm, not the 0.13 ohm of the power run's 10
 * m. */
START_TEST(separate_conductor_has_its_own_length)
{
    const struct RigRoute route = {
        .run = "along: [a]",
        .cable = "type: BS5467, cores: 2, size: 6 mm2, cpc: separate",
        .runs = "  earth:\n    kind: earth\n    cable: {type: BS6004-single, size: 1.5 mm2}\n    along: [a, b]",
        .segments = "{name: a, way: wall, length: 10 m}\n  - {name: b, way: wall, length: 190 m}"};
    struct Wend *wend = rig_plan(&route);
    ck_assert_double_ge(wend_result(wend)->runs[0].readings.r2_20_ohm, 200 * 0.0121);
    rig_result(wend, "disconnection", CHECK_FAIL);
    wend_free(wend);
}
END_TEST

/* 543.1.1 (two sources): outside a cable 4 mm2 of copper where nothing protects it from knocks, 2.5 mm2 where something
 * does; 1.5 mm2 never. That hangs on no fault current. */
START_TEST(separate_conductor_has_a_least_size)
{
    static const struct {
        double size_mm2;
        bool enclosed, enough;
    } rows[] = {{1.5, false, false}, {2.5, false, false}, {4, false, true},
                {1.5, true, false},  {2.5, true, true},   {4, true, true}};
    struct Rig rig;
    rig_make(&rig);
    rig_cable(&rig, CABLE_BS5467, 2, CPC_SEPARATE, 90);
    for (int i = 0; i < COUNT_OF(rows) * 2; i++) {
        rig_device(&rig, DEVICE_MCB, i % 2 == 0 ? CURVE_B : CURVE_D, 6); /* type D: no energy without a current */
        rig.design.separate_mm2 = rows[i / 2].size_mm2;
        rig.design.separate_enclosed = rows[i / 2].enclosed;
        const struct Check check = rig_check(&rig, check_protective_conductor, 1.5);
        ck_assert_msg((check.result == CHECK_FAIL) == !rows[i / 2].enough, "row %d: %s", i / 2, plainly(check.text));
        ck_assert(rows[i / 2].enough || rig_says(check.cite.clause, "543.1.1"));
    }
    rig_free(&rig);
}
END_TEST

/* Conduit, trunking and duct keep knocks off, and a hole in a wall between them does not undo it; clipped to the wall
 * for a stretch, it lies bare. */
START_TEST(what_keeps_knocks_off_a_separate_conductor)
{
    static const char *const segments[] = {
        "{name: a, way: trunking, length: 4 m}\n  - {name: b, way: through-wall, wall: brick, length: 0.3 m}\n"
        "  - {name: c, way: conduit, length: 2 m}",
        "{name: a, way: trunking, length: 4 m}\n  - {name: b, way: wall, length: 0.3 m}"};
    for (int i = 0; i < COUNT_OF(segments); i++) {
        const struct RigRoute route = {.load = "current: 5 A",
                                       .device = "kind: MCB, curve: B, rating: 6 A",
                                       .cable =
                                           "type: BS6004-multicore, cores: 2, size: 2.5 mm2, cpc: separate, cpc-run: e",
                                       .runs = "  e: {kind: earth, cable: {type: BS6004-single, size: 2.5 mm2}}",
                                       .segments = segments[i]};
        rig_route_result(&route, "protective-conductor", i == 0 ? CHECK_PASS : CHECK_FAIL);
    }
}
END_TEST

/* Ze is the greatest loop of the supply, the safe figure for disconnection. For the greatest current the least is
 * wanted: a service declared at 0.35 ohm may be 16 kA at its cut-out (from memory). Without a fault current the
 * breaking capacity cannot be passed. */
START_TEST(greatest_loop_is_no_greatest_current)
{
    const struct RigRoute route = {.supply = "system: TN-C-S, loop-impedance: 350 mohm",
                                   .device = "kind: MCB, curve: B, rating: 32 A, breaking-capacity: 1500 A"};
    struct Wend *wend = rig_plan(&route);
    ck_assert_int_ne(rig_found(wend, "breaking-capacity")->result, CHECK_PASS);
    wend_free(wend);
}
END_TEST

/* Between lines more flows than to earth: about twice (on-site approximation, from memory; sqrt 3 exactly). A loop of
 * 0.35 ohm to earth so means 1.25 kA and more on three phases, not 0.72. */
START_TEST(three_phases_draw_more_than_one)
{
    const struct RigRoute route = {.supply = "system: TN-C-S, loop-impedance: 350 mohm, phases: 3",
                                   .device = "kind: MCB, curve: B, rating: 32 A, breaking-capacity: 1 kA",
                                   .cable = "type: BS5467, cores: 5"};
    struct Wend *wend = rig_plan(&route);
    ck_assert_int_ne(rig_found(wend, "breaking-capacity")->result, CHECK_PASS);
    wend_free(wend);
}
END_TEST

/* A surveyed current under what the surveyed loop lets flow is a slip: 230 V over 0.1 ohm is 2.3 kA, not 0.1. The
 * larger of the two has to be broken. */
START_TEST(current_and_loop_contradict_each_other)
{
    const struct RigRoute route = {.supply = "system: TN-C-S, loop-impedance: 100 mohm, fault-current: 100 A",
                                   .device = "kind: MCB, curve: B, rating: 32 A, breaking-capacity: 1500 A"};
    struct Wend *wend = rig_plan_any(&route);
    if (wend_result(wend) != NULL) { /* or refused, which would do as well */
        rig_result(wend, "breaking-capacity", CHECK_FAIL);
    }
    wend_free(wend);
}
END_TEST

/* Two rods that were reckoned at 23 ohm and read 300: the reckoning is refuted, so it cannot promise that one rod does.
 */
START_TEST(refuted_estimate_gives_no_advice)
{
    const struct RigRoute route = {
        .top = "earthing: {far-end: island, electrode: {rods: 2, length: 2.4 m, diameter: 16 mm, "
               "measured: 300 ohm}, board-residual: 30 mA}"};
    struct Wend *wend = rig_plan(&route);
    const char *const text = plainly(wend_result(wend)->electrode.text);
    ck_assert(rig_says(text, "Over 200 ohm"));
    ck_assert_msg(!rig_says(text, "1 such rods"), "%s", text);
    wend_free(wend);
}
END_TEST

static bool is_said(const struct Plan *plan, const char *part)
{
    bool said = false;
    for (int i = 0; i < plan->runs[0].check_count; i++) {
        said = said || rig_says(plainly(plan->runs[0].checks[i].text), part) ||
               rig_says(plain_source(&plan->runs[0].checks[i]), part);
    }
    for (int i = 0; i < plan->caution_count; i++) {
        said = said || said_has(plan->cautions[i].text, part) || rig_says(plan->cautions[i].source, part);
    }
    for (int i = 0; i < plan->not_checked_count; i++) {
        said = said || rig_says(plainly(plan->not_checked[i].text), part);
    }
    return said;
}

/* 411.3.3 (seen): socket-outlets up to 32 A want 30 mA of additional protection, or a written reason why not. The
 * program need not decide that, but must not pass over it. */
START_TEST(sockets_without_additional_protection)
{
    const struct RigRoute route = {.run = "feeds: sockets", .segments = "{name: a, way: wall, length: 10 m}"};
    struct Wend *wend = rig_plan(&route);
    ck_assert_msg(is_said(wend_result(wend), "411.3.3"), "nothing is said of 411.3.3");
    wend_free(wend);
}
END_TEST

/* IEC 60364-5-52 Annex E is for cables of four and five cores with four loaded conductors. On two the neutral carries
 * what the line carries, harmonics and all, which is in the current already. */
START_TEST(harmonics_on_one_phase_have_no_factor)
{
    const struct RigRoute route = {.run = "third-harmonic: 40 %"};
    struct Wend *wend = rig_plan(&route);
    const struct Rating *rating = &wend_result(wend)->runs[0].ratings[0];
    for (int i = 0; i < rating->factor_count; i++) {
        ck_assert_int_ne(rating->factors[i].cause, FACTOR_HARMONICS);
    }
    wend_free(wend);
}
END_TEST

static bool is_assumed(const struct Plan *plan, const char *part)
{
    bool said = false;
    for (int i = 0; i < plan->assumption_count; i++) {
        said = said || said_has(plan->assumptions[i].text, part);
    }
    return said;
}

/* Ze bounds the current from below only. The armour of 2-core 10 mm2, 26 mm2, misses Table 54.7 (31.1), so energy
 * decides: with no fault current surveyed the ceiling of class 3 is taken and said, and where there is no class nothing
 * can be shown. */
START_TEST(energy_of_a_current_not_surveyed)
{
    static const char cable[] = "type: BS5467, cores: 2, size: 10 mm2, cpc: armour";
    const struct RigRoute with_class = {.device = "kind: RCBO, curve: B, rating: 40 A, residual: 100 mA",
                                        .cable = cable};
    struct Wend *wend = rig_plan(&with_class);
    const struct Check *check = rig_found(wend, "protective-conductor");
    ck_assert_int_eq(check->result, CHECK_PASS);
    ck_assert_double_eq_tol(check->limit, 7.14, 0.01); /* sqrt(108000) / 46, class 3 at 10 kA, from memory */
    ck_assert(is_assumed(wend_result(wend), "class 3"));
    wend_free(wend);
    const struct RigRoute without = {.device = "kind: RCBO, curve: D, rating: 40 A, residual: 100 mA", .cable = cable};
    wend = rig_plan(&without);
    ck_assert_int_eq(rig_found(wend, "protective-conductor")->result, CHECK_NOT_DUE);
    ck_assert_int_eq(rig_found(wend, "live-conductors")->result, CHECK_NOT_DUE);
    ck_assert(is_said(wend_result(wend), "let-through"));
    wend_free(wend);
}
END_TEST

/* The maker's figure comes before any other: 2 million A2 s ask for 30.7 mm2 of armour, sqrt(2000000) / 46. */
START_TEST(ceiling_that_is_missed_shows_nothing)
{
    /* class 3, B 20 A at 10 kA: 90000 A2 s; 2.5 mm2 of 70 degC copper stands (115 x 2.5)^2 = 82656 */
    const struct RigRoute route = {.load = "current: 16 A",
                                   .device = "kind: RCBO, curve: B, rating: 20 A, residual: 30 mA",
                                   .cable = "type: BS6004-flat, size: 2.5 mm2",
                                   .segments = "{name: a, way: wall, length: 10 m}"};
    struct Wend *wend = rig_plan(&route);
    ck_assert(rig_found(wend, "live-conductors")->unknown);
    ck_assert(is_said(wend_result(wend), "does not stand 90000 A2 s"));
    wend_free(wend);
    const struct RigRoute surveyed = {.supply = "system: TN-C-S, loop-impedance: 0.35 ohm, fault-current: 6 kA",
                                      .load = "current: 16 A",
                                      .device = "kind: RCBO, curve: B, rating: 20 A, residual: 30 mA, "
                                                "breaking-capacity: 10 kA",
                                      .cable = "type: BS6004-flat, size: 2.5 mm2",
                                      .segments = "{name: a, way: wall, length: 10 m}"};
    rig_route_result(&surveyed, "live-conductors", CHECK_FAIL);
}
END_TEST

START_TEST(let_through_of_the_maker_decides)
{
    const struct RigRoute route = {.device =
                                       "kind: RCBO, curve: B, rating: 40 A, residual: 100 mA, let-through: 2000000 A2s",
                                   .cable = "type: BS5467, cores: 2, size: 10 mm2, cpc: armour"};
    struct Wend *wend = rig_plan(&route);
    rig_result(wend, "protective-conductor", CHECK_FAIL);
    ck_assert_double_eq_tol(rig_found(wend, "protective-conductor")->limit, 30.74, 0.01);
    ck_assert(!is_assumed(wend_result(wend), "class 3"));
    wend_free(wend);
}
END_TEST

/* No residual part sees a short circuit between line and neutral. At the end of 200 m of 10 mm2, 0.88 ohm at 70 degC,
 * and 0.35 ohm of supply no more than 178 A flow, and a C 40 A breaker trips at once from 400 A on. */
START_TEST(far_short_circuit_is_the_overload_part_s)
{
    const struct RigRoute route = {.supply = "system: TN-C-S, loop-impedance: 0.35 ohm, fault-current: 1.6 kA",
                                   .device = "kind: RCBO, curve: C, rating: 40 A, residual: 30 mA",
                                   .cable = "type: BS5467, cores: 3, size: 10 mm2",
                                   .segments = "{name: a, way: wall, length: 200 m}"};
    struct Wend *wend = rig_plan(&route);
    const char *const text = plainly(rig_found(wend, "live-conductors")->text);
    ck_assert_msg(rig_says(text, "435.1") && rig_says(text, "about 178 A") && rig_says(text, "400 A"), "%s", text);
    wend_free(wend);
}
END_TEST

/* Core and armour together: each has to stand the whole. 3 x 95 mm2 has a core that Table 54.7 lets pass (47.5 mm2) and
 * 128 mm2 of armour, of which the table asks 143 / 46 x 47.5 = 148 mm2; so energy decides (BS 7671 543.1.3): of
 * 60000000 A2 s it needs sqrt(60000000) / 46 = 168.4 mm2, of 30000000 A2 s 119.1 mm2. */
START_TEST(the_worse_of_core_and_armour_decides)
{
    static const struct {
        enum Cpc cpc;
        double let_through_a2s;
        enum CheckResult result;
        double there_mm2, needed_mm2;
    } rows[] = {{CPC_CORE, 60e6, CHECK_PASS, 95, 47.5},
                {CPC_ARMOUR, 60e6, CHECK_FAIL, 128, 168.391},
                {CPC_CORE_AND_ARMOUR, 60e6, CHECK_FAIL, 128, 168.391},
                {CPC_CORE_AND_ARMOUR, 30e6, CHECK_PASS, 128, 119.071}};
    for (int i = 0; i < COUNT_OF(rows); i++) {
        struct Rig rig;
        rig_make(&rig);
        rig_cable(&rig, CABLE_BS5467, 3, rows[i].cpc, 90);
        rig.run.device.let_through_a2s = (struct Quantity){.value = rows[i].let_through_a2s, .given = true};
        const struct Check check = rig_check(&rig, check_protective_conductor, 95);
        ck_assert_msg(check.result == rows[i].result, "row %d: %s", i, plainly(check.text));
        ck_assert_double_eq_tol(check.value, rows[i].there_mm2, 1e-9);
        ck_assert_double_eq_tol(check.limit, rows[i].needed_mm2, 1e-3);
        rig_free(&rig);
    }
}
END_TEST

/* Five cores, and BS 6346: no figure is held for their armour. The core alone is the higher loop, so it stands for
 * both, and that is said. */
START_TEST(core_alone_where_no_armour_is_held)
{
    static const struct {
        const char *cable, *core;
    } rows[] = {{"type: BS5467, cores: 5, size: 10 mm2, cpc: core-and-armour",
                 "type: BS5467, cores: 5, size: 10 mm2, cpc: core"},
                {"type: BS6346, cores: 3, size: 10 mm2, cpc: core-and-armour",
                 "type: BS6346, cores: 3, size: 10 mm2, cpc: core"}};
    for (int i = 0; i < COUNT_OF(rows); i++) {
        struct RigRoute route = {.supply =
                                     i == 0 ? "system: TN-S, loop-impedance: 0.35 ohm, fault-current: 1 kA, phases: 3"
                                            : "system: TN-S, loop-impedance: 0.35 ohm, fault-current: 1 kA",
                                 .cable = rows[i].core};
        struct Wend *core = rig_plan(&route);
        route.cable = rows[i].cable;
        struct Wend *both = rig_plan(&route);
        rig_result(both, "disconnection", CHECK_PASS);
        rig_result(both, "protective-conductor", CHECK_PASS);
        ck_assert_double_eq(wend_result(both)->runs[0].readings.zs_hot_ohm,
                            wend_result(core)->runs[0].readings.zs_hot_ohm);
        ck_assert(rig_says(plainly(rig_found(both, "protective-conductor")->text), "No figure is held for the armour"));
        ck_assert(is_assumed(wend_result(both), "no figure is held for the armour"));
        wend_free(core);
        wend_free(both);
    }
}
END_TEST

/* TT: 5 ohm of loop cannot lead through an electrode of 1700 ohm (411.5). The greater holds: 1700 x 0.03 = 51 V. */
START_TEST(loop_below_its_own_electrode)
{
    struct RigRoute route = {.supply = "system: TT, loop-impedance: 5 ohm, electrode-resistance: 1700 ohm",
                             .load = "current: 5 A",
                             .device = "kind: RCBO, curve: B, rating: 6 A, residual: 30 mA"};
    struct Wend *wend = rig_plan(&route);
    rig_result(wend, "disconnection", CHECK_FAIL);
    ck_assert_double_gt(wend_result(wend)->runs[0].readings.zs_hot_ohm, 1721);
    ck_assert_uint_eq(wend_diagnostics_count(wend_diagnostics(wend)), 1);
    wend_free(wend);
    route.supply = "system: TT, loop-impedance: 1620 ohm, electrode-resistance: 1600 ohm"; /* 48 V */
    wend = rig_plan(&route);
    rig_result(wend, "disconnection", CHECK_PASS);
    ck_assert_uint_eq(wend_diagnostics_count(wend_diagnostics(wend)), 0);
    wend_free(wend);
}
END_TEST

/* Table 54.3 is for a conductor bunched with cables: 115 and 70 degC at the start, where one by itself has 143 and 30
 * degC. */
START_TEST(separate_conductor_beside_the_cable_is_warm)
{
    struct Rig rig;
    rig_make(&rig);
    rig_cable(&rig, CABLE_BS5467, 2, CPC_SEPARATE, 90);
    rig.design.separate_mm2 = 4;
    rig.design.separate_m = 40;
    const struct Loop apart = loop_of_run(&rig.design, 6);
    rig.design.separate_bunched = true;
    const struct Loop bunched = loop_of_run(&rig.design, 6);
    ck_assert_double_eq_tol(bunched.protective_hot_ohm / bunched.protective_20_ohm, 1.20, 0.001);
    ck_assert_double_eq_tol(apart.protective_hot_ohm / apart.protective_20_ohm, 1.04, 0.001);
    rig_free(&rig);
}
END_TEST

/* BS 7671 722.411.4.1: on an exported TN-C-S earth the ways are named and none is taken for granted. */
START_TEST(charging_point_on_the_supply_s_earth)
{
    static const char device[] = "kind: RCBO, curve: B, rating: 32 A, residual: 30 mA, residual-type: A";
    const struct RigRoute exported = {.supply = "system: TN-C-S, loop-impedance: 0.35 ohm",
                                      .run = "use: charging\n    feeds: equipment",
                                      .load = "current: 30 A",
                                      .device = device};
    struct Wend *wend = rig_plan(&exported);
    ck_assert(is_said(wend_result(wend), "722.411.4.1"));
    ck_assert(rig_found(wend, "charging-earth")->unknown);
    wend_free(wend);
    const struct RigRoute island = {
        .supply = "system: TN-C-S, loop-impedance: 0.35 ohm",
        .top = "earthing: {far-end: island, board-residual: 30 mA, electrode: {measured: 60 ohm}}",
        .run = "use: charging\n    feeds: equipment",
        .load = "current: 30 A",
        .device = device};
    wend = rig_plan(&island);
    ck_assert(!rig_found(wend, "charging-earth")->unknown);
    wend_free(wend);
}
END_TEST

/* Which of several loads is the motor is not said: while it starts with 60 A, all 20 A of the run go on. */
START_TEST(start_beside_other_loads)
{
    const struct Demand demand = {.design_a = 20};
    struct Run run = {.load_count = 1, .start_current_a = {.value = 60, .given = true}};
    ck_assert(csv_same(run_start_a(&run, &demand), 60));
    run.load_count = 2;
    ck_assert(csv_same(run_start_a(&run, &demand), 80));
}
END_TEST

TCase *fault_cautious(void)
{
    TCase *tests = tcase_create("not for granted");
    tcase_add_test(tests, good_electrode_on_tt_is_no_metal_loop);
    tcase_add_test(tests, coarse_residual_device_on_tt_never_trips);
    tcase_add_test(tests, measured_loop_on_tt_counts);
    tcase_add_test(tests, charging_with_a_type_not_told);
    tcase_add_test(tests, separate_conductor_has_its_own_length);
    tcase_add_test(tests, separate_conductor_has_a_least_size);
    tcase_add_test(tests, what_keeps_knocks_off_a_separate_conductor);
    tcase_add_test(tests, greatest_loop_is_no_greatest_current);
    tcase_add_test(tests, three_phases_draw_more_than_one);
    tcase_add_test(tests, current_and_loop_contradict_each_other);
    tcase_add_test(tests, refuted_estimate_gives_no_advice);
    tcase_add_test(tests, sockets_without_additional_protection);
    tcase_add_test(tests, harmonics_on_one_phase_have_no_factor);
    tcase_add_test(tests, energy_of_a_current_not_surveyed);
    tcase_add_test(tests, ceiling_that_is_missed_shows_nothing);
    tcase_add_test(tests, let_through_of_the_maker_decides);
    tcase_add_test(tests, far_short_circuit_is_the_overload_part_s);
    tcase_add_test(tests, core_alone_where_no_armour_is_held);
    tcase_add_test(tests, the_worse_of_core_and_armour_decides);
    tcase_add_test(tests, loop_below_its_own_electrode);
    tcase_add_test(tests, separate_conductor_beside_the_cable_is_warm);
    tcase_add_test(tests, charging_point_on_the_supply_s_earth);
    tcase_add_test(tests, start_beside_other_loads);
    return tests;
}
