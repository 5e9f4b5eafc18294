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
        clause_figures_ref(),
        design_practice_ref(),
        clause_ratings_ref(),
        breaker_holds_ref(),
        residual_rating_ref(),
        meter_errors_ref(),
        reading_practice_ref(),
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

struct Named {
    const char *name;
    double figure;
};

static void equal_copy(const char *copy, const struct Named *figures, int count)
{
    struct CsvFile file = csv_open(copy);
    ck_assert_int_eq(file.rows, count);
    for (int row = 0; row < count; row++) {
        ck_assert_str_eq(csv_text(&file, row, csv_column(&file, "name")), figures[row].name);
        ck_assert_msg(csv_same(csv_number(&file, row, csv_column(&file, "figure")), figures[row].figure), "%s",
                      figures[row].name);
    }
    csv_close(&file);
}

START_TEST(single_figures_equal_copy)
{
    const struct ClauseFigures *clause = clause_figures();
    const struct DesignPractice *practice = design_practice();
    const struct Named clauses[] = {
        {"adiabatic from s", clause->adiabatic_from_s},
        {"adiabatic to s", clause->adiabatic_to_s},
        {"fuse short s", clause->fuse_short_s},
        {"separate bare mm2", clause->separate_bare_mm2},
        {"separate enclosed mm2", clause->separate_enclosed_mm2},
        {"separate bunched degC", clause->separate_bunched_degc},
        {"separate apart degC", clause->separate_apart_degc},
        {"bond 1 mm2", clause->bond_mm2[0]},
        {"bond 2 mm2", clause->bond_mm2[1]},
        {"bond 3 mm2", clause->bond_mm2[2]},
        {"bond 4 mm2", clause->bond_mm2[3]},
        {"additional residual A", clause->additional_residual_a},
        {"charging residual A", clause->charging_residual_a},
        {"insulation Mohm", clause->insulation_least_mohm},
        {"insulation test V", clause->insulation_test_v},
        {"fuse long s", clause->fuse_long_s},
        {"final sockets A", clause->final_sockets_a},
        {"final equipment A", clause->final_equipment_a},
        {"electrode steady ohm", clause->electrode_steady_ohm},
        {"copper per K", clause->copper_per_k},
        {"armour cooler K", clause->armour_cooler_k},
        {"cold part", clause->cold_part},
    };
    const struct Named others[] = {
        {"thick wall m", practice->thick_wall_m},
        {"supply electrode ohm", practice->supply_electrode_ohm},
        {"reactance above mm2", practice->reactance_above_mm2},
        {"clear margin", practice->clear_margin},
        {"half cycle s", practice->half_cycle_s},
        {"start factor low", practice->start_low_factor},
        {"start factor high", practice->start_high_factor},
        {"selective residual A", practice->selective_residual_a},
        {"rod deepest m", practice->rod_deepest_m},
        {"notify to A", practice->notify_up_to_a},
        {"supply most", practice->supply_most},
        {"separated circuit A", practice->separated_circuit_a},
        {"sun rise K", practice->sun_rise_k},
        {"sun hottest degC", practice->sun_hottest_degc},
    };
    equal_copy("clause-figures.csv", clauses, (int)(sizeof clauses / sizeof clauses[0]));
    equal_copy("design-practice.csv", others, (int)(sizeof others / sizeof others[0]));
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
    tcase_add_test(tests, single_figures_equal_copy);
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
