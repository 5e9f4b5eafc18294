/* The tables on bending, ducts and drawing in against the published copies, every cell both ways. */
#include "csv_file.h"
#include "mechanics_rig.h"

#include <math.h>

static int times_listed(const struct TableRef *ref)
{
    int found = 0;
    for (int at = 0; at < tables_count(); at++) {
        found += tables_at(at) == ref;
    }
    return found;
}

START_TEST(every_table_is_listed_once)
{
    const struct TableRef *const refs[] = {
        bend_radius_ref(),   bend_radius_data_ref(), bend_radius_drawn_ref(), duct_bore_ref(),     duct_fill_ref(),
        trunking_fill_ref(), duct_jam_ref(),         pull_limits_ref(),       pull_friction_ref(), separation_ref()};
    for (size_t at = 0; at < sizeof refs / sizeof refs[0]; at++) {
        ck_assert_msg(times_listed(refs[at]) == 1, "%s", refs[at]->title);
    }
}
END_TEST

/* The factor that the copy gives; 0 when it has no such cable. */
static double bend_in_print(const struct CsvFile *file, enum CableType type, double key)
{
    for (int row = 0; row < file->rows; row++) {
        if (text_same(csv_text(file, row, 0), survey_word(WORDS_CABLE, (int)type)) && key > csv_number(file, row, 1) &&
            (csv_blank(file, row, 2) || key <= csv_number(file, row, 2))) {
            return csv_number(file, row, 3);
        }
    }
    return 0;
}

START_TEST(bend_factors_equal_print)
{
    struct CsvFile file = csv_open("bend-radius.csv");
    int answers = 0;
    for (int type = 0; type < CABLE_COUNT; type++) {
        const bool armoured = survey_armoured((enum CableType)type);
        for (int half = 1; half <= 800; half++) { /* every half mm or mm2 */
            const double key = half / 2.0;
            const double print = bend_in_print(&file, (enum CableType)type, key);
            double factor = 0;
            const bool has = bend_radius_factor((enum CableType)type, armoured ? key : 6, armoured ? 20 : key, &factor);
            ck_assert_int_eq(has, print > 0);
            ck_assert_msg(csv_same(factor, print), "%s %g: %g", survey_word(WORDS_CABLE, type), key, factor);
            answers += has;
        }
    }
    ck_assert_int_eq(answers, 7 * 800);
    ck_assert_int_eq(file.rows, 18);
    double factor = -7;
    ck_assert(!bend_radius_factor(CABLE_BS5467, 0, 20, &factor));
    ck_assert(!bend_radius_factor(CABLE_BS5467, NAN, 20, &factor));
    ck_assert(!bend_radius_factor(CABLE_BS6004_MULTICORE, 6, 0, &factor));
    ck_assert(!bend_radius_factor(CABLE_BS6004_MULTICORE, 6, INFINITY, &factor));
    ck_assert(!bend_radius_factor(CABLE_COUNT, 6, 20, &factor));
    ck_assert(csv_same(factor, -7));
    csv_close(&file);
}
END_TEST

START_TEST(special_bends_equal_print)
{
    struct CsvFile file = csv_open("bend-radius-special.csv");
    int drawn = 0;
    for (int row = 0; row < file.rows; row++) {
        const double print = csv_number(&file, row, 2);
        const char *what = csv_text(&file, row, 1);
        if (!text_same(what, "drawn")) {
            ck_assert(csv_same(bend_radius_data_factor(text_same(what, "screened")), print));
            continue;
        }
        for (int type = 0; type < CABLE_COUNT; type++) {
            double factor = 0;
            if (text_same(csv_text(&file, row, 0), survey_word(WORDS_CABLE, type))) {
                ck_assert(bend_radius_drawn_factor((enum CableType)type, &factor) && csv_same(factor, print));
                drawn++;
            }
        }
    }
    ck_assert_int_eq(file.rows, 6);
    ck_assert_int_eq(drawn, 4);
    double factor = 0;
    ck_assert(!bend_radius_drawn_factor(CABLE_BS6004_FLAT, &factor));
    ck_assert(!bend_radius_drawn_factor(CABLE_BS6004_SINGLE, &factor));
    csv_close(&file);
}
END_TEST

START_TEST(bores_equal_print)
{
    struct CsvFile file = csv_open("duct-bore-en61386-24.csv");
    const double *sizes_mm = NULL;
    ck_assert_int_eq(duct_sizes(&sizes_mm), file.rows);
    for (int row = 0; row < file.rows; row++) {
        struct Figure bore = {0};
        const double size_mm = csv_number(&file, row, 0);
        ck_assert(csv_same(sizes_mm[row], size_mm));
        ck_assert(duct_bore(size_mm, &bore) && csv_same(bore.value, csv_number(&file, row, 1)) &&
                  csv_same(bore.row, size_mm));
        /* between this size and the next this one's bore, the safer */
        ck_assert(duct_bore(size_mm + 1, &bore) && csv_same(bore.row, size_mm));
        ck_assert_int_eq(duct_bore(size_mm - 1, &bore), row > 0);
        ck_assert(row == 0 || csv_same(bore.value, csv_number(&file, row - 1, 1)));
        /* "about 75 % of the outside" */
        ck_assert_double_eq_tol(csv_number(&file, row, 1) / size_mm, 0.75, 0.031);
    }
    struct Figure bore = {.value = -7};
    ck_assert(duct_bore(900, &bore) && csv_same(bore.value, 150));
    ck_assert(!duct_bore(0, &bore) && !duct_bore(NAN, &bore) && !duct_bore(-63, &bore));
    ck_assert_int_eq(file.rows, 12);
    csv_close(&file);
}
END_TEST

static void check_separation_row(const struct CsvFile *file, int row)
{
    const struct SeparationInGround ground = separation_in_ground();
    const char *where = csv_text(file, row, 0);
    const double print = csv_number(file, row, 3);
    if (!text_same(where, "air")) {
        const double held = text_same(where, "earth")     ? ground.earth_mm
                            : text_same(where, "masonry") ? ground.masonry_mm
                                                          : ground.concrete_mm;
        ck_assert(csv_same(held, print));
        return;
    }
    const int to = csv_blank(file, row, 2) ? 200 : (int)csv_number(file, row, 2);
    for (int circuits = (int)csv_number(file, row, 1); circuits <= to; circuits++) {
        double distance_mm = 0;
        ck_assert(separation_in_air_mm(circuits, &distance_mm) && csv_same(distance_mm, print));
    }
}

START_TEST(separation_equals_print)
{
    struct CsvFile file = csv_open("separation-en50174-2.csv");
    ck_assert_int_eq(file.rows, 13);
    for (int row = 0; row < file.rows; row++) {
        check_separation_row(&file, row);
    }
    double distance_mm = -7;
    ck_assert(!separation_in_air_mm(0, &distance_mm) && csv_same(distance_mm, -7));
    csv_close(&file);
}
END_TEST

START_TEST(fill_equals_print)
{
    struct CsvFile file = csv_open("duct-fill.csv");
    for (int cables = 1; cables <= 30; cables++) {
        double percent = 0;
        bool found = false;
        ck_assert(duct_fill_allowed(cables, &percent));
        for (int row = 0; row < file.rows; row++) {
            if (cables >= csv_number(&file, row, 0) &&
                (csv_blank(&file, row, 1) || cables <= csv_number(&file, row, 1))) {
                ck_assert(csv_same(percent, csv_number(&file, row, 2)));
                found = true;
            }
        }
        ck_assert(found);
    }
    double percent = 0;
    ck_assert(!duct_fill_allowed(0, &percent) && !duct_fill_allowed(-1, &percent));
    ck_assert_int_eq(file.rows, 3);
    csv_close(&file);
}
END_TEST

START_TEST(limits_equal_print)
{
    const struct PullLimits *limits = pull_limits();
    const struct {
        const char *what;
        double value;
    } held[] = {{"copper", limits->copper_n_per_mm2},
                {"stocking", limits->stocking_n_per_mm},
                {"stocking on wire armour", limits->stocking_armour_n_per_mm2},
                {"sidewall", limits->sidewall_n_per_m},
                {"many", limits->many},
                {"many over", limits->many_over},
                {"bends", limits->bends_deg},
                {"jam low", duct_jam().low},
                {"jam high", duct_jam().high},
                {"jam bent", duct_jam().bent},
                {"fill bent", duct_fill_bent()}};
    struct CsvFile file = csv_open("pull-limits.csv");
    ck_assert_int_eq(file.rows, (int)(sizeof held / sizeof held[0]));
    for (int row = 0; row < file.rows; row++) {
        ck_assert_str_eq(csv_text(&file, row, 0), held[row].what);
        ck_assert_msg(csv_same(csv_number(&file, row, 1), held[row].value), "%s", held[row].what);
    }
    ck_assert_int_eq(duct_jam().cables, 3);
    csv_close(&file);
}
END_TEST

START_TEST(friction_equals_print)
{
    static const char *const sheaths[] = {"PVC", "PE", "low smoke", "unknown"};
    struct CsvFile file = csv_open("pull-friction.csv");
    ck_assert_int_eq(file.rows, 2 * PULL_SHEATH_COUNT);
    for (int row = 0; row < file.rows; row++) {
        struct PullFriction friction;
        ck_assert_str_eq(csv_text(&file, row, 0), sheaths[row / 2]);
        ck_assert_str_eq(csv_text(&file, row, 1), row % 2 ? "yes" : "no");
        ck_assert(pull_friction((enum PullSheath)(row / 2), row % 2 == 1, &friction));
        ck_assert(csv_same(friction.low, csv_number(&file, row, 2)) &&
                  csv_same(friction.high, csv_number(&file, row, 3)));
    }
    struct PullFriction friction;
    ck_assert(!pull_friction(PULL_SHEATH_COUNT, false, &friction));
    csv_close(&file);
}
END_TEST

Suite *suite_mechanics_tables(void)
{
    Suite *suite = suite_create("tables of bends, ducts and drawing in");
    TCase *tests = tcase_create("tables");
    tcase_add_test(tests, every_table_is_listed_once);
    tcase_add_test(tests, bend_factors_equal_print);
    tcase_add_test(tests, special_bends_equal_print);
    tcase_add_test(tests, bores_equal_print);
    tcase_add_test(tests, fill_equals_print);
    tcase_add_test(tests, separation_equals_print);
    tcase_add_test(tests, limits_equal_print);
    tcase_add_test(tests, friction_equals_print);
    suite_add_tcase(suite, tests);
    return suite;
}
