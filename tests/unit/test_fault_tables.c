/* The list of the fault tables, and main() for all their suites. */
#include "csv_file.h"
#include "fault_suites.h"
#include "tables/fault_tables.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static int times_listed(const struct TableRef *ref)
{
    int found = 0;
    for (int at = 0; at < tables_count(); at++) {
        found += tables_at(at) == ref;
    }
    return found;
}

START_TEST(every_fault_table_is_listed_once)
{
    const struct TableRef *const refs[] = {
        armour_ref(),
        armour_loop_ref(),
        flat_protective_core_ref(),
        disconnection_time_ref(edition_held()),
        device_trip_ref(edition_held(), DEVICE_MCB),
        device_trip_ref(edition_held(), DEVICE_GG),
        device_trip_ref(edition_held(), DEVICE_BS88_3),
        protective_by_table_ref(edition_held()),
        bonding_tn_c_s_ref(edition_held()),
        buried_earthing_ref(edition_held()),
        let_through_ref(),
        first_loop_ref(),
        residual_time_ref(),
        residual_loop_limit_ref(edition_held()),
        harmonic_ref(),
        voltage_factor_ref(edition_held()),
    };
    for (size_t at = 0; at < sizeof refs / sizeof refs[0]; at++) {
        ck_assert_ptr_nonnull(refs[at]);
        ck_assert_msg(times_listed(refs[at]) == 1, "%s", refs[at]->table);
    }
    ck_assert_ptr_eq(device_trip_ref(edition_held(), DEVICE_RCBO), device_trip_ref(edition_held(), DEVICE_MCB));
    ck_assert_ptr_nonnull(device_trip_ref(edition_held(), DEVICE_BS3036));
    ck_assert_ptr_nonnull(device_trip_ref(edition_held(), DEVICE_BS1361));
    ck_assert_ptr_null(device_trip_ref(edition_held(), DEVICE_COUNT));
    ck_assert_str_eq(disconnection_time_ref(edition_held())->table, "41.1");
    ck_assert_str_eq(protective_by_table_ref(edition_held())->table, "54.7");
    ck_assert_str_eq(bonding_tn_c_s_ref(edition_held())->table, "54.8");
    ck_assert_str_eq(buried_earthing_ref(edition_held())->table, "54.1");
    ck_assert_str_eq(residual_loop_limit_ref(edition_held())->table, "41.5");
}
END_TEST

START_TEST(k_tables_are_listed_one_by_one)
{
    static const char *const tables[] = {"43.1", "54.2", "54.3", "54.4"};
    for (size_t wanted = 0; wanted < sizeof tables / sizeof tables[0]; wanted++) {
        int found = 0;
        for (int at = 0; at < tables_count(); at++) {
            found += text_same(tables_at(at)->table, tables[wanted]);
        }
        ck_assert_int_eq(found, 1);
    }
    ck_assert_str_eq(k_value_ref(edition_held(), K_LIVE)->table, "43.1");
}
END_TEST

/* What nobody has checked against print must say so where `wend tables` shows it. */
START_TEST(remembered_tables_say_so)
{
    const struct TableRef *const remembered[] = {
        let_through_ref(),
        harmonic_ref(),
        device_trip_ref(edition_held(), DEVICE_GG),
        device_trip_ref(edition_held(), DEVICE_BS88_3),
        armour_ref(),
        flat_protective_core_ref(),
    };
    for (size_t at = 0; at < sizeof remembered / sizeof remembered[0]; at++) {
        ck_assert_ptr_nonnull(strstr(remembered[at]->seen, "from memory"));
        ck_assert_int_ne(remembered[at]->trust, TRUST_PUBLISHED);
    }
}
END_TEST

static Suite *suite_fault_list(void)
{
    Suite *suite = suite_create("list of fault tables");
    TCase *tests = tcase_create("list");
    tcase_add_test(tests, every_fault_table_is_listed_once);
    tcase_add_test(tests, k_tables_are_listed_one_by_one);
    tcase_add_test(tests, remembered_tables_say_so);
    suite_add_tcase(suite, tests);
    return suite;
}

int main(void)
{
    SRunner *runner = srunner_create(suite_fault_list());
    srunner_add_suite(runner, suite_fault_armour());
    srunner_add_suite(runner, suite_fault_conductors());
    srunner_add_suite(runner, suite_fault_devices());
    srunner_add_suite(runner, suite_fault_cases());
    srunner_run_all(runner, CK_NORMAL);
    const int ran = srunner_ntests_run(runner);
    const int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    if (ran == 0) {
        fputs("no test ran\n", stderr);
    }
    return ran > 0 && failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
