/* The check of bends, on made-up ways. */
#include "mechanics_rig.h"
#include "said.h"

#include <string.h>

/* 3-core 10 mm2 is 19.5 mm: 6 x 19.5 = 117 mm; 3-core 25 mm2 is 25.5 mm, shaped cores not ruled out: 8 x 25.5 = 204 mm.
 */
START_TEST(edge_of_the_radius)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    mechanics_add_segment(&rig, "gable", WAY_WALL, 4);
    mechanics_bend(&rig, 1, 90, 0.117);
    const struct Check check = mechanics_check(&rig, 10, "bend:gable");
    ck_assert_int_eq(check.result, CHECK_PASS);
    ck_assert(check.at_least);
    ck_assert_double_eq_tol(check.limit, 117, 1e-9);
    ck_assert_double_eq_tol(check.value, 117, 1e-9);
    ck_assert_int_eq(check.unit, UNIT_MM);
    text_has(plainly(check.text), "117 mm");
    mechanics_fails(&rig, 16, "bend:gable");
    rig.bends[1][0].radius_m.value = 0.1169;
    mechanics_fails(&rig, 10, "bend:gable");
    rig.bends[1][0].radius_m.value = 0.204;
    mechanics_passes(&rig, 25, "bend:gable");
    rig.bends[1][0].radius_m.value = 0.203;
    mechanics_fails(&rig, 25, "bend:gable");
    mechanics_free(&rig);
}
END_TEST

START_TEST(tightest_decides)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    mechanics_bend(&rig, 0, 45, 0.6);
    mechanics_bend(&rig, 0, 90, 0.11);
    mechanics_bend(&rig, 0, 30, 0.9);
    mechanics_fails(&rig, 10, "bend:path");
    rig.bends[0][1].radius_m.value = 0.2;
    mechanics_passes(&rig, 10, "bend:path");
    const struct Bends bends = bend_look(&rig.segments[0]);
    ck_assert_double_eq_tol(bends.total_deg, 165, 1e-9);
    ck_assert_double_eq_tol(bends.tightest_m, 0.2, 1e-9);
    ck_assert_int_eq(bends.surveyed, 3);
    ck_assert_int_eq(bends.open, 0);
    mechanics_free(&rig);
}
END_TEST

/* Table D5: armoured by two sources, without armour from memory; data cable from memory altogether. */
START_TEST(as_sure_as_the_row_is)
{
    static const struct {
        enum CableType type;
        enum Trust trust;
    } rows[] = {{CABLE_BS5467, TRUST_PUBLISHED},
                {CABLE_BS6724, TRUST_PUBLISHED},
                {CABLE_BS6004_FLAT, TRUST_FROM_MEMORY},
                {CABLE_EN50288, TRUST_FROM_MEMORY}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct MechanicsRig rig;
        mechanics_make(&rig);
        rig.runs[0].cable.type = rows[i].type;
        rig.runs[0].cable.diameter_mm = surveyed(12);
        mechanics_add_segment(&rig, "gable", WAY_WALL, 4);
        mechanics_bend(&rig, 1, 90, 0.3);
        const struct Check check = mechanics_check(&rig, 10, "bend:gable");
        ck_assert_int_eq(check.result, CHECK_PASS);
        ck_assert_int_eq(check.trust, rows[i].trust);
        ck_assert_int_eq(strstr(plain_source(&check), "(from memory)") != NULL, rows[i].trust == TRUST_FROM_MEMORY);
        mechanics_free(&rig);
    }
}
END_TEST

/* In the open, and where the duct is yet to be laid, whoever lays it chooses; what is there already has to be surveyed.
 */
START_TEST(radius_not_surveyed)
{
    static const struct {
        enum Way way;
        enum Laid laid;
        bool there;
    } rows[] = {{WAY_WALL, LAID_NEW, false},   {WAY_LADDER, LAID_NEW, false},   {WAY_BURIED, LAID_NEW, false},
                {WAY_DUCT, LAID_NEW, false},   {WAY_DUCT, LAID_EXISTING, true}, {WAY_CONDUIT, LAID_NEW, true},
                {WAY_TRUNKING, LAID_NEW, true}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct MechanicsRig rig;
        mechanics_make(&rig);
        mechanics_add_segment(&rig, "turn", rows[i].way, 6);
        rig.segments[1].duct_laid = rows[i].laid;
        mechanics_bend(&rig, 1, 90, 0);
        if (rows[i].there) {
            mechanics_unknown(&rig, 10, "bend:turn", "117 mm");
        } else {
            const struct Check check = mechanics_check(&rig, 10, "bend:turn");
            ck_assert_int_eq(check.result, CHECK_NOT_DUE);
            ck_assert(!check.unknown);
            text_has(plainly(check.text), "117 mm");
        }
        rig.bends[1][0].radius_m = surveyed(0.2);
        mechanics_passes(&rig, 10, "bend:turn");
        rig.bends[1][0].radius_m = (struct Quantity){0};
        /* one tight bend that was surveyed is enough to fail, whatever the others are */
        mechanics_bend(&rig, 1, 90, 0.05);
        mechanics_fails(&rig, 10, "bend:turn");
        mechanics_free(&rig);
    }
}
END_TEST

START_TEST(cable_not_held)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    mechanics_bend(&rig, 0, 90, 0.3);
    rig.runs[0].cable.type = CABLE_BS6346;
    mechanics_unknown(&rig, 10, "bend:path", "diameter");
    rig.runs[0].cable.diameter_mm = surveyed(20);
    mechanics_passes(&rig, 10, "bend:path");
    ck_assert_double_eq_tol(mechanics_check(&rig, 10, "bend:path").limit, 120, 1e-9);
    ck_assert_double_eq_tol(mechanics_check(&rig, 25, "bend:path").limit, 160, 1e-9);
    rig.runs[0].cable.type = CABLE_BS8436;
    mechanics_unknown(&rig, 2.5, "bend:path", "maker");
    rig.runs[0].cable.type = CABLE_BS6004_FLAT;
    rig.runs[0].cable.diameter_mm = surveyed(13.2);
    ck_assert_double_eq_tol(mechanics_check(&rig, 4, "bend:path").limit, 4 * 13.2, 1e-9);
    mechanics_free(&rig);
}
END_TEST

/* BS 6724 is built to the dimensions of BS 5467. A surveyed diameter is taken before any table's. */
START_TEST(diameters)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    mechanics_bend(&rig, 0, 90, 0.3);
    const double by_table = mechanics_check(&rig, 6, "bend:path").limit;
    ck_assert_double_eq_tol(by_table, 6 * 16.6, 1e-9);
    rig.runs[0].cable.type = CABLE_BS6724;
    ck_assert_double_eq(mechanics_check(&rig, 6, "bend:path").limit, by_table);
    rig.runs[0].cable.diameter_mm = surveyed(17.5);
    ck_assert_double_eq_tol(mechanics_check(&rig, 6, "bend:path").limit, 6 * 17.5, 1e-9);
    mechanics_free(&rig);
}
END_TEST

/* One overseas maker asks 12 x while armoured cable is drawn through a bend: a word of warning, and no more. */
START_TEST(drawn_through_a_bend)
{
    struct MechanicsRig rig;
    mechanics_make(&rig);
    mechanics_bend(&rig, 0, 90, 0.2);
    const struct Check check = mechanics_check(&rig, 10, "bend:path");
    ck_assert_int_eq(check.result, CHECK_PASS);
    text_has(plainly(check.text), "234 mm");
    rig.bends[0][0].radius_m.value = 0.234;
    ck_assert_ptr_null(strstr(plainly(mechanics_check(&rig, 10, "bend:path").text), "maker"));
    mechanics_free(&rig);
}
END_TEST

Suite *suite_mechanics_bends(void)
{
    Suite *suite = suite_create("check of bends");
    TCase *tests = tcase_create("bends");
    tcase_add_test(tests, edge_of_the_radius);
    tcase_add_test(tests, tightest_decides);
    tcase_add_test(tests, radius_not_surveyed);
    tcase_add_test(tests, as_sure_as_the_row_is);
    tcase_add_test(tests, cable_not_held);
    tcase_add_test(tests, diameters);
    tcase_add_test(tests, drawn_through_a_bend);
    suite_add_tcase(suite, tests);
    return suite;
}
