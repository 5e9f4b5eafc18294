/* Worked examples that others published on faults and electrodes, put through the program's own functions. The figures,
 * their sources and tolerances are the files in tests/published/cases/; each test names its source again. */
#include "csv_file.h"
#include "fault_rig.h"

#include <math.h>

static double cell(const struct CsvFile *file, int row, const char *head)
{
    return csv_number(file, row, csv_column(file, head));
}

/* "Handbook of Electrical Engineering for practitioners in the oil, gas and petrochemical industry", 2003, 9.4.3 step
 * i), Table 9.35: armour as protective conductor, five sizes; loops to 0.0002 ohm. Resistances are the book's, the sum
 * is ours. The book knows resistance and reactance of its transformer too, so all of it is one loop here; told only the
 * magnitude of what stands before the run, the program must not come out lower. The program speaks of
 * no touch voltage along a loop; what it makes of one is the share that the protective conductor has, to 0.06 V. */
START_TEST(armour_loop_of_five_sizes)
{
    struct CsvFile file = csv_open("cases/loop-armour-handbook.csv");
    for (int row = 0; row < file.rows; row++) {
        const double before_r_ohm = cell(&file, row, "source_r_ohm") + cell(&file, row, "other_r_ohm");
        const double before_x_ohm = cell(&file, row, "source_x_ohm");
        struct Loop loop = {.line_hot_ohm = before_r_ohm + cell(&file, row, "r_line_ohm"),
                            .protective_hot_ohm = cell(&file, row, "r_armour_ohm"),
                            .reactance_ohm = cell(&file, row, "x_ohm") + before_x_ohm};
        const double zs_ohm = loop_far_ohm(0, &loop);
        ck_assert_double_eq_tol(zs_ohm, cell(&file, row, "expected_z_ohm"), cell(&file, row, "tolerance_ohm"));
        const double touch_v = cell(&file, row, "line_v") / sqrt(3.0) / zs_ohm *
                               (loop.protective_hot_ohm + cell(&file, row, "other_r_ohm"));
        ck_assert_double_eq_tol(touch_v, cell(&file, row, "expected_touch_v"), cell(&file, row, "tolerance_v"));
        loop.line_hot_ohm -= before_r_ohm;
        loop.reactance_ohm -= before_x_ohm;
        ck_assert_double_ge(loop_far_ohm(hypot(before_r_ohm, before_x_ohm), &loop), zs_ohm * (1 - 1e-12));
    }
    ck_assert_int_eq(file.rows, 5);
    csv_close(&file);
}
END_TEST

/* Same book, 9.4.3 step j), Table 9.36: the largest loop for four moulded-case breakers is U over their 5 s current, to
 * 0.00006 ohm. The program holds no such breaker; a type B of a fifth of that current has the same one. The book is
 * older than Cmin: its loop is ours over 0.95. */
START_TEST(longest_loop_of_four_breakers)
{
    struct CsvFile file = csv_open("cases/longest-loop-handbook.csv");
    struct Rig rig;
    rig_make(&rig);
    for (int row = 0; row < file.rows; row++) {
        rig.design.u0_v = cell(&file, row, "line_v") / sqrt(3.0);
        rig_device(&rig, DEVICE_MCB, CURVE_B, cell(&file, row, "trip_a") / 5);
        const struct Check check = rig_check(&rig, check_disconnection, 6);
        ck_assert_int_eq(check.unit, UNIT_OHM);
        ck_assert_double_eq_tol(check.limit / voltage_factor_least(edition_held()), cell(&file, row, "expected_ohm"),
                                cell(&file, row, "tolerance"));
    }
    ck_assert_int_eq(file.rows, 4);
    csv_close(&file);
    rig_free(&rig);
}
END_TEST

/* Same book, 9.4.3.5.1, Table 9.27: what a cable of 143 x 70 withstands for six times, in kA to the last printed digit.
 * The program compares energies: its limit is the square of the book's current times the time. */
START_TEST(cable_withstands_for_six_times)
{
    struct CsvFile file = csv_open("cases/withstand-handbook.csv");
    struct Rig rig;
    rig_make(&rig);
    rig.design.fault_current_a = 1000;
    for (int row = 0; row < file.rows; row++) {
        const struct Check check = rig_check(&rig, check_live_conductors, cell(&file, row, "size_mm2"));
        ck_assert_double_eq_tol(sqrt(check.limit / cell(&file, row, "time_s")) / 1000, cell(&file, row, "expected_ka"),
                                cell(&file, row, "tolerance"));
    }
    ck_assert_int_eq(file.rows, 6);
    csv_close(&file);
    rig_free(&rig);
}
END_TEST

/* BS 7671 Tables 43.1 and 54.2 to 54.4 with the formula of IEC 60364-5-54 Annex A: that the k of the check on live
 * conductors is the one the temperatures give, to 0.51 (rounding). The other k are held against the same file with the
 * tables; aluminium, armour of it and conductors over 300 mm2 are not in the program. */
START_TEST(k_from_start_and_end)
{
    struct CsvFile file = csv_open("cases/k-from-temperatures.csv");
    struct Rig rig;
    rig_make(&rig);
    rig.design.fault_current_a = 1000;
    int found = 0;
    for (int row = 0; row < file.rows; row++) {
        const bool at_70 = text_same(csv_text(&file, row, 0), "live_core_70");
        if (!at_70 && !text_same(csv_text(&file, row, 0), "live_core_90")) {
            continue;
        }
        rig_cable(&rig, at_70 ? CABLE_BS6346 : CABLE_BS5467, 3, CPC_CORE, 70);
        const struct Check check = rig_check(&rig, check_live_conductors, 1);
        const double k =
            226 * sqrt(log((cell(&file, row, "end_degc") + 234.5) / (cell(&file, row, "start_degc") + 234.5)));
        ck_assert_double_eq_tol(sqrt(check.limit), k, cell(&file, row, "tolerance"));
        found++;
    }
    ck_assert_int_eq(found, 2);
    csv_close(&file);
    rig_free(&rig);
}
END_TEST

/* Same handbook, 9.4.3.5.2: one transformer and its busbar, 460 V. Impedance and fault current; ours is 1.10 times the
 * book's, which takes the no-load voltage as it is. X/R, the doubling factor and the peak current are not in the
 * program: breaking capacities are in r.m.s. amperes. */
START_TEST(fault_behind_a_transformer)
{
    struct CsvFile file = csv_open("cases/prospective-fault-handbook.csv");
    struct Rig rig;
    rig_make(&rig);
    int made = 0;
    double printed_ohm = 0;
    for (int row = 0; row < file.rows; row++) {
        const char *const quantity = csv_text(&file, row, csv_column(&file, "quantity"));
        const struct Loop loop = {.line_hot_ohm = cell(&file, row, "r_ohm"),
                                  .reactance_ohm = cell(&file, row, "x_ohm")};
        rig.design.u0_v = cell(&file, row, "line_v") / sqrt(3.0);
        rig.design.before_ohm = loop_far_ohm(0, &loop);
        double ours = 0;
        if (text_same(quantity, "z_ohm")) {
            ours = rig.design.before_ohm;
            printed_ohm = cell(&file, row, "expected");
        } else if (text_same(quantity, "fault_a")) {
            rig.design.before_ohm = printed_ohm; /* the book goes on with the rounded impedance */
            ours = fault_current_earth_a(&rig.design) / voltage_factor_greatest(edition_held());
        } else {
            continue;
        }
        ck_assert_double_eq_tol(ours, cell(&file, row, "expected"), cell(&file, row, "tolerance"));
        made++;
    }
    ck_assert_int_eq(made, 2);
    csv_close(&file);
    rig_free(&rig);
}
END_TEST

/* An earthing calculation report to BS 7430 (17.12 ohm), and MIL-HDBK-419A (1987), volume II, 1.2.2.2 (32 ohm by its
 * nomogram); tolerances in the file. */
START_TEST(one_rod)
{
    struct CsvFile file = csv_open("cases/electrode-one-rod.csv");
    for (int row = 0; row < file.rows; row++) {
        const double ohm = electrode_rod_ohm(cell(&file, row, "soil_ohm_m"), cell(&file, row, "length_m"),
                                             cell(&file, row, "diameter_mm") / 1000);
        ck_assert_double_eq_tol(ohm, cell(&file, row, "expected_ohm"), cell(&file, row, "tolerance"));
    }
    ck_assert_int_eq(file.rows, 2);
    csv_close(&file);
}
END_TEST

/* MIL-HDBK-419A (1987), volume I, 2.6.2.2: 25 rods in a filled square one length apart have 0.112 of one rod's
 * resistance. The program fills no squares; its hollow one with five a side is the outer 16 of those rods, so it must
 * come out higher, though not by more than the rods that it has less. Volume II, 1.2.2.2: 26 rods round a building have
 * 0.055 of one, 1.76 ohm of 32. Its spacing is not told and 26 is no square: with 24 and 28 rods far apart ours has to
 * fall below 0.055, and one length apart to lie above it. */
START_TEST(many_rods)
{
    struct CsvFile file = csv_open("cases/electrode-many-rods.csv");
    ck_assert_int_eq(file.rows, 2);
    ck_assert_double_eq_tol(cell(&file, 0, "one_rod_ohm") * cell(&file, 0, "factor"), cell(&file, 0, "expected"),
                            cell(&file, 0, "tolerance"));
    const double filled = cell(&file, 1, "factor") / cell(&file, 1, "rods");
    ck_assert_double_eq_tol(filled, cell(&file, 1, "expected"), cell(&file, 1, "tolerance"));
    const double round_building = cell(&file, 0, "factor");
    csv_close(&file);

    const double rod_ohm = electrode_rod_ohm(100, 3, 0.019);
    const double outer = electrode_square_ohm(100, rod_ohm, 5, 3) / rod_ohm;
    ck_assert_msg(outer > filled && outer < filled * 25 / 16, "%g", outer);
    for (int side = 7; side <= 8; side++) { /* 24 and 28 rods */
        ck_assert_double_gt(electrode_square_ohm(100, rod_ohm, side, 3) / rod_ohm, round_building);
        ck_assert_double_lt(electrode_square_ohm(100, rod_ohm, side, 60) / rod_ohm, round_building);
    }
}
END_TEST

/* MIL-HDBK-419A (1987), volume II, 1.2.1, equation 1-1: 2 ohm with probes 20 ft apart; to 0.03 ohm.m, for the book's
 * pi. */
START_TEST(four_probe_soil)
{
    struct CsvFile file = csv_open("cases/soil-four-probe.csv");
    ck_assert_int_eq(file.rows, 1);
    ck_assert_double_eq_tol(electrode_soil_ohm_m(cell(&file, 0, "spacing_m"), cell(&file, 0, "resistance_ohm")),
                            cell(&file, 0, "expected_ohm_m"), cell(&file, 0, "tolerance"));
    csv_close(&file);
}
END_TEST

/* On-Site Guide, 17th edition era, and BS 7671 Table 41.5: the largest electrode for a residual device, to 0.5 ohm.
 * Both checks that use the rule must turn exactly there. */
START_TEST(largest_electrode_for_a_residual_device)
{
    struct CsvFile file = csv_open("cases/residual-limits-guide.csv");
    struct Rig rig;
    rig_make(&rig);
    for (int row = 0; row < file.rows; row++) {
        const double published_ohm = cell(&file, row, "expected_ohm");
        const double beside_ohm = cell(&file, row, "tolerance");
        rig.earthing.board_residual_a =
            (struct Quantity){.value = cell(&file, row, "residual_ma") / 1000, .given = true};
        rig_electrode(&rig, published_ohm - beside_ohm);
        rig_passes(&rig, check_electrode, 6, "under the published resistance");
        rig_electrode(&rig, published_ohm + beside_ohm);
        rig_fails(&rig, check_electrode, 6, "over the published resistance");
    }
    ck_assert_int_eq(file.rows, 5);
    csv_close(&file);
    rig_free(&rig);
}
END_TEST

TCase *fault_published(void)
{
    TCase *tests = tcase_create("published examples");
    tcase_add_test(tests, armour_loop_of_five_sizes);
    tcase_add_test(tests, longest_loop_of_four_breakers);
    tcase_add_test(tests, cable_withstands_for_six_times);
    tcase_add_test(tests, k_from_start_and_end);
    tcase_add_test(tests, fault_behind_a_transformer);
    tcase_add_test(tests, one_rod);
    tcase_add_test(tests, many_rods);
    tcase_add_test(tests, four_probe_soil);
    tcase_add_test(tests, largest_electrode_for_a_residual_device);
    return tests;
}
