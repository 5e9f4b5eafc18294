/* The check of drawing in, on made-up ways. */
#include "mechanics_rig.h"
#include "said.h"

#include <math.h>
#include <string.h>

/* 3-core 10 mm2, 0.866 kg/m, 20 m level: 0.866 x 9.81 x 20 x 0.6 = 101.9 N; its copper stands 50 x 30 = 1500 N, less
 * than a stocking's 120 x 19.5 = 2340 N. */
START_TEST(level_and_straight)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    const struct Check check = mechanics_check(&rig, 10, "pull:path");
    ck_assert_int_eq(check.result, CHECK_PASS);
    ck_assert_double_eq_tol(check.value, 101.9, 0.05);
    ck_assert_double_eq_tol(check.limit, 1500, 1e-9);
    ck_assert_int_eq(check.unit, UNIT_N);
    text_has(plainly(check.text), "either end");
    text_has(plainly(check.text), "friction 0.60");
    rig.segments[0].length_m = surveyed(290);
    mechanics_passes(&rig, 10, "pull:path");
    rig.segments[0].length_m = surveyed(295);
    mechanics_fails(&rig, 10, "pull:path");
    const struct Check longer = mechanics_check(&rig, 10, "pull:path");
    text_has(plainly(longer.text), "With lubricant (friction 0.35) it takes 878 N, which the cable stands");
    text_has(plainly(longer.text), "draw pit about 148 m");
    mechanics_free(&rig);
}
END_TEST

/* Up a slope of 5 in 20 the drum belongs to the top. Down: 0.866 x 9.81 x 20 (0.6 cos a - 0.25) = 56.2 N; up 141.2 N.
 */
START_TEST(slope_decides_the_end)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    rig.segments[0].rise_m = surveyed(5);
    const double w = 0.866 * 9.81 * 20;
    const double cosine = sqrt(1 - 0.0625);
    struct Check check = mechanics_check(&rig, 10, "pull:path");
    ck_assert_double_eq_tol(check.value, w * (0.6 * cosine - 0.25), 1e-6);
    text_has(plainly(check.text), "the far end");
    text_has(plainly(check.text), "142 N, since it climbs");
    rig.segments[0].rise_m = surveyed(-5);
    check = mechanics_check(&rig, 10, "pull:path");
    ck_assert_double_eq_tol(check.value, w * (0.6 * cosine - 0.25), 1e-6);
    text_has(plainly(check.text), "the supply's end");
    mechanics_free(&rig);
}
END_TEST

/* Ducts one after the other are one pull: 40 m and a right angle, then 10 m. The bend early is the better way: from the
 * far end w 10 m, and, the place of the bend in its stretch not being known, w 40 m more and then the bend. */
START_TEST(ducts_in_a_row)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    rig.segments[0].length_m = surveyed(10);
    mechanics_add_segment(&rig, "lawn", WAY_DUCT, 40);
    mechanics_bend(&rig, 0, 90, 0.6);
    const double w = 0.866 * 9.81 * 0.6;
    const double bent = exp(0.6 * acos(-1) / 2);
    const struct Check check = mechanics_check(&rig, 10, "pull:path");
    ck_assert_double_eq_tol(check.value, w * 10 * bent + w * 40, 1e-6);
    text_has(plainly(check.text), "as far as lawn");
    text_has(plainly(check.text), "the supply's end");
    text_has(plainly(check.text), "since its bends come late that way");
    const struct Check second = mechanics_check(&rig, 10, "pull:lawn");
    ck_assert_int_eq(second.result, CHECK_NOT_DUE);
    ck_assert(!second.unknown);
    /* anything else between them and they are two pulls */
    rig.segments[1].way = WAY_BURIED;
    ck_assert_double_eq_tol(mechanics_check(&rig, 10, "pull:path").value, w * 10 * bent, 1e-6);
    mechanics_free(&rig);
}
END_TEST

/* All that the check has to say, in the order of the work: with whom, dry or wet, what it takes and stands, the bends,
 * the end, and what helps where it is too much. */
START_TEST(said_in_whole)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    mechanics_add_run(&rig, "pump", RUN_POWER, CABLE_BS5467, 3)->cable.size_mm2 = surveyed(10);
    rig.segments[0].duct_size_mm = surveyed(110);
    rig.segments[0].length_m = surveyed(90);
    mechanics_bend(&rig, 0, 90, 0.5);
    mechanics_add_segment(&rig, "lawn", WAY_DUCT, 30)->duct_size_mm = surveyed(110);
    mechanics_bend(&rig, 1, 90, 0);
    ck_assert_str_eq(
        plainly(mechanics_check(&rig, 10, "pull:path").text),
        "Drawn in as far as lawn, with pump, dry (friction 0.60), it takes 2473 N; it stands 1500 N "
        "(copper 1500 N, stocking 2340 N or, on the armour, 3422 N by another rule: its maker decides). "
        "In the bends it is pressed with 9890 N/m; 4400 N/m is allowed. "
        "Bends without a surveyed radius need 198 mm to the inside. "
        "Put the drum at the far end: from the other one it takes 3946 N, since its bends come late that way. "
        "With lubricant (friction 0.35) it takes 802 N, which the cable stands. "
        "A draw pit about 60 m from the start of the pull would bring it to 459 N.");
    rig.runs[0].pull = (struct PullRules){.given = true, .lubricant = true, .from = DRUM_FINISH};
    ck_assert_str_eq(
        plainly(mechanics_check(&rig, 10, "pull:path").text),
        "Drawn in as far as lawn, with pump, with lubricant (friction 0.35), it takes 802 N; it stands 1500 N "
        "(copper 1500 N, stocking 2340 N or, on the armour, 3422 N by another rule: its maker decides). "
        "In the bends it is pressed with 3205 N/m; 4400 N/m is allowed. "
        "Bends without a surveyed radius need 117 mm to the inside. "
        "The drum stands at the far end as surveyed; from the other one it would take 1064 N.");
    rig.runs[0].pull = (struct PullRules){.given = true, .friction = surveyed(0.2), .from = DRUM_COUNT};
    ck_assert_str_eq(
        plainly(mechanics_check(&rig, 10, "pull:path").text),
        "Drawn in as far as lawn, with pump, dry (friction 0.20 as surveyed), it takes 387 N; it stands 1500 N "
        "(copper 1500 N, stocking 2340 N or, on the armour, 3422 N by another rule: its maker decides). "
        "In the bends it is pressed with 897 N/m; 4400 N/m is allowed. "
        "Bends without a surveyed radius need 176 mm to the inside. "
        "Put the drum at the supply's end: from the other one it takes 328 N, but is pressed harder in the bends.");
    mechanics_free(&rig);
}
END_TEST

/* The whole must not depend on where a straight duct is cut in two. */
START_TEST(cutting_changes_nothing)
{
    struct MechanicsRig whole;
    struct MechanicsRig cut;
    mechanics_make(&whole);
    mechanics_make(&cut);
    whole.segments[0].length_m = surveyed(50);
    whole.segments[0].rise_m = surveyed(5);
    cut.segments[0].length_m = surveyed(20);
    cut.segments[0].rise_m = surveyed(2);
    mechanics_add_segment(&cut, "rest", WAY_DUCT, 30)->rise_m = surveyed(3);
    ck_assert_double_eq_tol(mechanics_check(&whole, 16, "pull:path").value,
                            mechanics_check(&cut, 16, "pull:path").value, 1e-6);
    mechanics_free(&whole);
    mechanics_free(&cut);
}
END_TEST

/* 60 m and a right angle of 0.15 m: 305.8 e^(0.3 pi) = 784.9 N, within 1500, but 784.9 / 0.15 = 5232 N/m, over 4400. At
 * 0.18 m it is 4360. */
START_TEST(pressed_in_a_bend)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    rig.segments[0].length_m = surveyed(60);
    mechanics_bend(&rig, 0, 90, 0.15);
    mechanics_fails(&rig, 10, "pull:path");
    const struct Check check = mechanics_check(&rig, 10, "pull:path");
    ck_assert_int_eq(check.unit, UNIT_N_PER_M);
    ck_assert_double_eq_tol(check.value, 5232, 2);
    ck_assert_double_eq_tol(check.limit, 4400, 1e-9);
    rig.bends[0][0].radius_m.value = 0.18;
    mechanics_passes(&rig, 10, "pull:path");
    /* not surveyed: the text says what it must be, 784.9 / 4400 = 179 mm, more than the 117 mm that the cable needs to
     * lie */
    rig.bends[0][0].radius_m = (struct Quantity){0};
    mechanics_passes(&rig, 10, "pull:path");
    text_has(plainly(mechanics_check(&rig, 10, "pull:path").text), "need 179 mm");
    mechanics_free(&rig);
}
END_TEST

/* Shown larger than it is rather than smaller: 5.0974 N/m x 1965 m = 10 016 N, and 58 m before a right angle of 0.15 m
 * press with 5058.1 N/m. */
START_TEST(shown_to_the_careful_side)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    rig.segments[0].length_m = surveyed(1965);
    text_has(plainly(mechanics_check(&rig, 10, "pull:path").text), "it takes 10.1 kN; it stands 1500 N");
    rig.segments[0].length_m = surveyed(58);
    mechanics_bend(&rig, 0, 90, 0.15);
    text_has(plainly(mechanics_check(&rig, 10, "pull:path").text), "pressed with 5059 N/m; 4400 N/m is allowed");
    mechanics_free(&rig);
}
END_TEST

/* Where there is hardly any tension the cable's own radius is what a bend needs. With a second cable of its kind in it
 * the bend presses twice: 20 m: 101.9 x c x e^(0.3 pi c), c = 1.051, 0.2 m. */
START_TEST(pressed_by_a_second)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    mechanics_bend(&rig, 0, 90, 0);
    text_has(plainly(mechanics_check(&rig, 10, "pull:path").text), "need 117 mm");
    rig.segments[0].duct_size_mm = surveyed(110);
    rig.bends[0][0].radius_m = surveyed(0.2);
    mechanics_add_run(&rig, "second", RUN_POWER, CABLE_BS5467, 3);
    const double x = 19.5 / (82 - 19.5);
    const double c = 1 / sqrt(1 - x * x);
    const double tension_n = 0.866 * 9.81 * 20 * 0.6 * c * exp(c * 0.6 * acos(-1) / 2);
    const struct PullWork work = pull_work(&rig.design, &(struct Trial){.size_mm2 = 10}, 0);
    ck_assert_double_eq_tol(work.forth.tension, tension_n, 1e-6);
    ck_assert_double_eq_tol(work.forth.sidewall, 2 * tension_n / 0.2, 1e-6);
    mechanics_free(&rig);
}
END_TEST

/* What shares only the first of two ducts presses and weighs in the whole pull, though it crowds in the first alone. */
START_TEST(shared_in_part)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    mechanics_add_segment(&rig, "lawn", WAY_DUCT, 20);
    struct Run *heavy = mechanics_add_run(&rig, "heavy", RUN_POWER, CABLE_BS5467, 3);
    heavy->cable.size_mm2 = surveyed(16);
    heavy->along_count = 1;
    rig.segments[0].duct_size_mm = rig.segments[1].duct_size_mm = surveyed(110);
    const struct PullWork work = pull_work(&rig.design, &(struct Trial){.size_mm2 = 10}, 0);
    ck_assert_int_eq(work.lacks, SAY_NOTHING);
    ck_assert_double_eq_tol(work.load.weight, 1.152 * 9.81, 1e-9);
    ck_assert_int_eq(work.cables, 2);
    ck_assert_ptr_eq(work.other, heavy);
    ck_assert_double_gt(work.forth.tension, 1.152 * 9.81 * 40 * 0.6);
    ck_assert_double_lt(work.forth.tension, 1.152 * 9.81 * 40 * 0.6 * 1.05);
    mechanics_free(&rig);
}
END_TEST

/* 120 m that fall by 12 and have two right angles: for the pit three pieces of 40 m that fall by 4 each. */
START_TEST(pit_in_words)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    rig.segments[0].length_m = surveyed(120);
    rig.segments[0].rise_m = surveyed(-12);
    mechanics_bend(&rig, 0, 90, 0.9);
    mechanics_bend(&rig, 0, 90, 0.9);
    mechanics_fails(&rig, 10, "pull:path");
    struct PullPiece pieces[3];
    for (int i = 0; i < 3; i++) {
        pieces[i] = (struct PullPiece){
            .length = 40, .rise = -4, .bend_deg = i < 2 ? 90 : 0, .radius = 0.9, .crowd = 1, .pressed = 1};
    }
    const struct PullLoad load = {.weight = 0.866 * 9.81, .friction = 0.6};
    const struct PullStrength strength = {1500, 4400, 360};
    double at_m = 0;
    double tension_n = 0;
    ck_assert(pull_pit(pieces, 3, &load, &strength, &at_m, &tension_n));
    text_has(plainly(mechanics_check(&rig, 10, "pull:path").text),
             arena_print(rig.arena, "draw pit about %s m from the start of the duct would bring it to %s N",
                         number_text(rig.arena, at_m, 0), number_text(rig.arena, tension_n, 0)));
    mechanics_free(&rig);
}
END_TEST

START_TEST(sheaths)
{
    ck_assert_int_eq(cable_kind(CABLE_BS5467)->sheath, PULL_SHEATH_PVC);
    ck_assert_int_eq(cable_kind(CABLE_BS6346)->sheath, PULL_SHEATH_PVC);
    ck_assert_int_eq(cable_kind(CABLE_BS6724)->sheath, PULL_SHEATH_LOW_SMOKE);
    ck_assert_int_eq(cable_kind(CABLE_EN50288)->sheath, PULL_SHEATH_UNKNOWN);
}
END_TEST

/* Four right angles are the most in one pull. */
START_TEST(degrees_between_pulling_points)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    rig.segments[0].length_m = surveyed(4);
    for (int i = 0; i < 4; i++) {
        mechanics_bend(&rig, 0, 90, 0.6);
    }
    mechanics_passes(&rig, 10, "pull:path");
    mechanics_bend(&rig, 0, 5, 0.6);
    mechanics_fails(&rig, 10, "pull:path");
    const struct Check check = mechanics_check(&rig, 10, "pull:path");
    ck_assert_int_eq(check.unit, UNIT_DEG);
    ck_assert_double_eq_tol(check.value, 365, 1e-9);
    ck_assert_double_eq_tol(check.limit, 360, 1e-9);
    text_has(plainly(check.text), "draw pit");
    mechanics_free(&rig);
}
END_TEST

/* A second cable presses; a heavier one counts with its weight. Both need it held, the data cable's is not asked for.
 */
START_TEST(cables_together)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    rig.segments[0].duct_size_mm = surveyed(110);
    const double alone = mechanics_check(&rig, 10, "pull:path").value;
    struct Run *second = mechanics_add_run(&rig, "second", RUN_POWER, CABLE_BS5467, 3);
    const double x = 19.5 / (82 - 19.5);
    ck_assert_double_eq_tol(mechanics_check(&rig, 10, "pull:path").value, alone / sqrt(1 - x * x), 1e-6);
    second->cable.size_mm2 = surveyed(16);
    ck_assert_double_gt(mechanics_check(&rig, 10, "pull:path").value, alone * 1.152 / 0.866);
    second->cable.size_mm2 = surveyed(1.5);
    const struct Check lighter = mechanics_check(&rig, 10, "pull:path");
    ck_assert_double_gt(lighter.value, alone);
    ck_assert_double_lt(lighter.value, alone * 1.1);
    text_has(plainly(lighter.text), "with second");
    /* four together stand 80 %, of five nothing is held */
    mechanics_add_run(&rig, "third", RUN_POWER, CABLE_BS5467, 3);
    ck_assert_double_eq_tol(mechanics_check(&rig, 10, "pull:path").limit, 1500, 1e-9);
    mechanics_add_run(&rig, "fourth", RUN_POWER, CABLE_BS5467, 3);
    ck_assert_double_eq_tol(mechanics_check(&rig, 10, "pull:path").limit, 1200, 1e-9);
    mechanics_add_run(&rig, "fifth", RUN_POWER, CABLE_BS5467, 3);
    mechanics_unknown(&rig, 10, "pull:path", "four");
    mechanics_free(&rig);
}
END_TEST

START_TEST(weight_not_held)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    rig.runs[0].cable.type = CABLE_BS6346;
    rig.runs[0].cable.diameter_mm = surveyed(20);
    mechanics_passes(&rig, 10, "duct-fill:path");
    mechanics_unknown(&rig, 10, "pull:path", "weight");
    rig.runs[0].cable.type = CABLE_BS6724;
    mechanics_passes(&rig, 10, "pull:path");
    mechanics_free(&rig);
}
END_TEST

/* Longer, more bent, steeper, heavier: never easier. */
START_TEST(harder_is_never_easier)
{
    double last = 0;
    for (int length_m = 1; length_m <= 100; length_m += 3) {
        double bent_last = 0;
        for (int angle = 0; angle <= 180; angle += 15) {
            struct MechanicsRig rig;
            mechanics_make(&rig);
            rig.segments[0].length_m = surveyed(length_m);
            mechanics_bend(&rig, 0, angle + 1, 2);
            const struct Trial trial = {.size_mm2 = 10};
            struct PullWork work = pull_work(&rig.design, &trial, 0);
            ck_assert_int_eq(work.lacks, SAY_NOTHING);
            ck_assert_double_gt(work.forth.tension, bent_last);
            ck_assert(angle > 0 || work.forth.tension > last);
            work.from_far = false;
            ck_assert_double_lt(pull_lubricated(&rig.design, &trial, &work).tension, work.forth.tension);
            bent_last = work.forth.tension;
            last = angle == 0 ? work.forth.tension : last;
            mechanics_free(&rig);
        }
    }
}
END_TEST

START_TEST(what_is_taken_for_granted)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    const char *text = said(rig.arena, mechanics_assumption(rig.arena, &rig.survey, &rig.runs[0]));
    text_has(text, "dry");
    text_has(text, "0.60");
    rig.segments[0].way = WAY_BURIED;
    ck_assert_ptr_null(mechanics_assumption(rig.arena, &rig.survey, &rig.runs[0]));
    ck_assert_int_eq(mechanics_count(&rig.design), 0);
    mechanics_free(&rig);
}
END_TEST

/* A list too short is filled and no more. */
START_TEST(no_more_than_room)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    mechanics_bend(&rig, 0, 90, 0.6);
    struct Check checks[3] = {
        {.id = "none", .kind = "none"}, {.id = "none", .kind = "none"}, {.id = "none", .kind = "none"}};
    const struct Trial trial = {.size_mm2 = 10};
    ck_assert_int_eq(mechanics_count(&rig.design), 3);
    ck_assert_int_eq(check_mechanics(rig.arena, &rig.design, &trial, checks, 2), 2);
    ck_assert_ptr_nonnull(strstr(checks[0].id, "bend:"));
    ck_assert_ptr_nonnull(strstr(checks[1].id, "duct-fill:"));
    ck_assert_str_eq(checks[2].id, "none");
    mechanics_free(&rig);
}
END_TEST

/* Without memory nothing breaks, and what decides stays. */
START_TEST(memory_fails)
{
    for (long blocks = 0; blocks < 12; blocks++) {
        struct MechanicsRig rig;
        mechanics_make(&rig);
        rig.segments[0].length_m = surveyed(400);
        mechanics_bend(&rig, 0, 90, 0.6);
        struct Check checks[3];
        const struct Trial trial = {.size_mm2 = 10};
        arena_fail_after(rig.arena, blocks);
        ck_assert_int_eq(check_mechanics(rig.arena, &rig.design, &trial, checks, 3), 3);
        ck_assert_int_eq(checks[2].result, CHECK_FAIL);
        mechanics_free(&rig);
    }
}
END_TEST

Suite *suite_mechanics_pulls(void)
{
    Suite *suite = suite_create("check of drawing in");
    TCase *tests = tcase_create("pulls");
    tcase_add_test(tests, level_and_straight);
    tcase_add_test(tests, slope_decides_the_end);
    tcase_add_test(tests, ducts_in_a_row);
    tcase_add_test(tests, said_in_whole);
    tcase_add_test(tests, cutting_changes_nothing);
    tcase_add_test(tests, pressed_in_a_bend);
    tcase_add_test(tests, shown_to_the_careful_side);
    tcase_add_test(tests, pressed_by_a_second);
    tcase_add_test(tests, shared_in_part);
    tcase_add_test(tests, pit_in_words);
    tcase_add_test(tests, sheaths);
    tcase_add_test(tests, degrees_between_pulling_points);
    tcase_add_test(tests, cables_together);
    tcase_add_test(tests, weight_not_held);
    tcase_add_test(tests, harder_is_never_easier);
    tcase_add_test(tests, what_is_taken_for_granted);
    tcase_add_test(tests, no_more_than_room);
    tcase_add_test(tests, memory_fails);
    suite_add_tcase(suite, tests);
    return suite;
}
