/* The energy of a fault: what a class is credited with and where that ends, how an estimate grows with the current, and
 * how the far end of a run decides for a fuse. Every figure is worked by hand beside it. */
#include "csv_file.h"
#include "fault_rig.h"
#include "said.h"

#include <math.h>
#include <stdio.h>

#define COUNT_OF(list) ((int)(sizeof(list) / sizeof(list)[0]))

static void breaks(struct Rig *rig, double current_a)
{
    rig->run.device.breaking_capacity_a = (struct Quantity){.value = current_a, .given = current_a > 0};
}

static struct Energy energy_at(const struct Rig *rig, double near_a, double far_a, bool short_circuit)
{
    return fault_energy(&rig->design,
                        &(struct FaultRange){.near_a = near_a, .far_a = far_a, .short_circuit = short_circuit});
}

/* i(t) = sqrt 2 (sin(w t + a - phi) - sin(a - phi) e^(-t / tau)) for an r.m.s. current of 1, closed at the angle a:
 * its square over time up to the first zero, against that of half a cycle. The worst of many a. */
static double first_loop_integrated(double power_factor)
{
    const double pi = acos(-1.0);
    const double phi = acos(power_factor);
    const double tau_s = tan(phi) / (2 * pi * 50);
    const double step_s = 1e-5;
    double worst = 0;
    for (int angle = 1; angle < 180; angle++) {
        const double at_start = angle * pi / 180 - phi;
        double sum = 0;
        double before = 0;
        for (int step = 1; step < 2000; step++) {
            const double t_s = step * step_s;
            const double now = sqrt(2.0) * (sin(2 * pi * 50 * t_s + at_start) - sin(at_start) * exp(-t_s / tau_s));
            if (now * before < 0) {
                break;
            }
            sum += now * now * step_s;
            before = now;
        }
        worst = fmax(worst, sum / 0.01);
    }
    return worst;
}

START_TEST(first_loop_equals_copy_and_physics)
{
    struct CsvFile file = csv_open("first-loop.csv");
    double before = 1;
    for (int row = 0; row < file.rows; row++) {
        const double printed = csv_number(&file, row, csv_column(&file, "factor"));
        const int end = csv_column(&file, "up_to_A");
        const double end_a = csv_blank(&file, row, end) ? 200000 : csv_number(&file, row, end);
        ck_assert(csv_same(first_loop_factor(csv_number(&file, row, csv_column(&file, "over_A")) + 0.5), printed));
        ck_assert(csv_same(first_loop_factor(end_a), printed));
        const double worked = first_loop_integrated(csv_number(&file, row, csv_column(&file, "power_factor")));
        ck_assert_msg(worked <= printed && worked > printed - 0.012, "%g integrated, %g printed", worked, printed);
        ck_assert_double_gt(printed, before);
        before = printed;
    }
    ck_assert_int_eq(file.rows, 6);
    ck_assert(csv_same(first_loop_factor(NAN), 3.13)); /* the most that there is */
    printf("compared %3d cells of %s\n", file.rows, file.name);
    csv_close(&file);
}
END_TEST

/* B 20 A: 1000^2 x 0.01 x 1.03 = 10 300; 5000^2 x 0.01 x 1.36 = 340 000, over the 45 000 of class 3 at 6 kA and the
 * 90 000 at 10 kA. Type D has no class: 10 000^2 x 0.01 x 1.83 = 1 830 000. */
START_TEST(lesser_of_class_and_first_loop)
{
    struct Rig rig;
    rig_make(&rig);
    rig_device(&rig, DEVICE_MCB, CURVE_B, 20);
    breaks(&rig, 6000);
    ck_assert_double_eq_tol(energy_at(&rig, 1000, 0, true).a2s, 10300, 1e-6);
    ck_assert_int_eq(energy_at(&rig, 1000, 0, true).assumes, SAY_NOTHING);
    ck_assert_double_eq_tol(energy_at(&rig, 5000, 0, true).a2s, 45000, 1e-6);
    ck_assert_int_eq(energy_at(&rig, 5000, 0, true).assumes, SAY_ASSUMES_CLASS_3);
    breaks(&rig, 0);
    ck_assert_double_eq_tol(energy_at(&rig, 5000, 0, true).a2s, 90000, 1e-6);
    ck_assert_int_eq(energy_at(&rig, 5000, 0, true).assumes, SAY_ASSUMES_CLASS_3_TO_10_KA);
    rig_device(&rig, DEVICE_MCB, CURVE_D, 20);
    ck_assert_double_eq_tol(energy_at(&rig, 10000, 0, false).a2s, 1830000, 1e-6);
    ck_assert_double_eq_tol(energy_at(&rig, 10000, 0, false).factor, 1.83, 1e-9);
    rig_free(&rig);
}
END_TEST

/* 434.5.2, BS EN 60898-1 annex ZA: a class holds up to the device's own breaking capacity, and there is none but at 3,
 * 4.5, 6 and 10 kA. 15 kA: 9000^2 x 0.01 x 1.83 = 1 482 300. */
START_TEST(class_ends_at_the_breaking_capacity)
{
    static const double no_class_a[] = {1500, 15000, 20000, 25000};
    struct Rig rig;
    rig_make(&rig);
    rig_device(&rig, DEVICE_RCBO, CURVE_C, 32);
    for (int i = 0; i < COUNT_OF(no_class_a); i++) {
        breaks(&rig, no_class_a[i]);
        ck_assert_int_eq(energy_at(&rig, 0.9 * no_class_a[i], 0, true).assumes, SAY_NOTHING);
        ck_assert(rig_says(settled_by(energy_at(&rig, 0, 0, true).settles), "fault-current"));
    }
    breaks(&rig, 15000);
    ck_assert_double_eq_tol(energy_at(&rig, 9000, 0, true).a2s, 1482300, 1e-6);
    breaks(&rig, 6000);
    ck_assert_int_eq(energy_at(&rig, 6000, 0, true).lacks, SAY_NOTHING);
    const struct Energy over = energy_at(&rig, 6001, 0, true);
    ck_assert(over.lacks == SAY_LACKS_BREAKING_OF_CURRENT && !settles_something(&over.settles));
    rig.run.device.let_through_a2s = (struct Quantity){.value = 60000, .given = true}; /* of a proved pair (434.5.1) */
    ck_assert_double_eq_tol(energy_at(&rig, 6001, 0, true).a2s, 60000, 1e-6);
    rig_free(&rig);
}
END_TEST

/* No breaking capacity given: up to 10 kA class 3 may be taken for granted, and is said; above it nothing passes,
 * whatever the conductor stands. 16 kA: 16 000^2 x 0.01 x 3.13 = 8 012 800 A2 s, sqrt of which over 143 is 19.8 mm2. */
START_TEST(nothing_passes_above_what_is_known_to_be_broken)
{
    struct Rig rig;
    rig_make(&rig);
    rig_device(&rig, DEVICE_MCB, CURVE_B, 32);
    rig.design.fault_current_a = 10000;
    rig_passes(&rig, check_live_conductors, 4, "10 kA: 90 000 of class 3, 4 mm2 stands 327 184");
    rig.design.fault_current_a = 16000;
    rig_fails(&rig, check_live_conductors, 16, "16 kA: 16 mm2 stands 5 234 944");
    struct Check check = rig_check(&rig, check_live_conductors, 25);
    ck_assert(check.result == CHECK_NOT_DUE && check.unknown);
    ck_assert_str_eq(settled_by(check.settles), "device: breaking-capacity");
    breaks(&rig, 25000);
    rig_passes(&rig, check_live_conductors, 25, "16 kA, 25 kA broken");
    breaks(&rig, 10000);
    rig_fails(&rig, check_live_conductors, 25, "16 kA, 10 kA broken");
    rig_fails(&rig, check_breaking_capacity, 25, "16 kA, 10 kA broken");
    /* the armour of 2-core 16 mm2, 42 mm2, misses Table 54.7 and would stand 46^2 x 42^2 = 3 732 624 */
    rig_cable(&rig, CABLE_BS5467, 2, CPC_ARMOUR, 90);
    rig_fails(&rig, check_protective_conductor, 16, "armour, 10 kA broken");
    breaks(&rig, 0);
    rig_fails(&rig, check_protective_conductor, 16, "armour, not known what is broken");
    rig.design.fault_current_a = 10500; /* 10 500^2 x 0.01 x 3.13 = 3 450 825 */
    check = rig_check(&rig, check_protective_conductor, 16);
    ck_assert(check.result == CHECK_NOT_DUE && check.unknown);
    rig_free(&rig);
}
END_TEST

/* gG 40 A: 168.1 A in 5 s, 291.3 A in 0.4 s (218.5 / 1.30, / 0.75): 141 249 and 33 950 A2 s. A far end of 362 A is cut
 * off in 0.4 s (434.5.2), and so is every fault nearer by; 2.5 mm2 stands 127 806. */
START_TEST(fuse_by_the_time_at_its_far_end)
{
    struct Rig rig;
    rig_make(&rig);
    rig_device(&rig, DEVICE_GG, CURVE_B, 40);
    ck_assert_double_eq_tol(energy_at(&rig, 3000, 362, true).a2s, 33950, 1);
    ck_assert_double_eq_tol(energy_at(&rig, 3000, 291.4, true).a2s, 33950, 1);
    ck_assert_double_eq_tol(energy_at(&rig, 3000, 291.2, true).a2s, 141249, 1);
    ck_assert_double_eq_tol(energy_at(&rig, 3000, 150, true).a2s, 141249, 1);
    ck_assert_double_eq_tol(energy_at(&rig, 3000, 0, true).a2s, 141249, 1); /* not known */
    /* 0.35 ohm and 2 x 2.5 mm2 at 90 degC: 218.5 / 362 = 0.6036 = 0.35 + 2 x 7.41 x 1.28 x L / 1000, L 13.37 m */
    rig.design.electrical_length_m = 13.37;
    rig_passes(&rig, check_live_conductors, 2.5, "362 A at the far end");
    rig.design.electrical_length_m = 22; /* 285 A */
    rig_fails(&rig, check_live_conductors, 2.5, "285 A at the far end");
    rig_device(&rig, DEVICE_GG, CURVE_B, 80); /* no figure for 0.4 s: 397.3^2 x 5 */
    ck_assert_double_eq_tol(energy_at(&rig, 3000, 2000, true).a2s, 789128, 5);
    rig_free(&rig);
}
END_TEST

/* What a fuse lets through of a large current, by melting and arcing, is less than what the least current brings that
 * it clears in 0.4 s: so the far end bounds the near one too. */
START_TEST(fuse_lets_through_less_nearer_by)
{
    struct CsvFile file = csv_open("fuse-energy-gg.csv");
    struct Rig rig;
    rig_make(&rig);
    for (int row = 0; row < file.rows; row++) {
        rig_device(&rig, DEVICE_GG, CURVE_B, csv_number(&file, row, csv_column(&file, "rating_A")));
        const double total_a2s = csv_number(&file, row, csv_column(&file, "total_A2s"));
        ck_assert_double_gt(energy_at(&rig, 50000, 50000, true).a2s, total_a2s);
        ck_assert_double_gt(total_a2s, csv_number(&file, row, csv_column(&file, "prearcing_max_A2s")));
    }
    ck_assert_int_eq(file.rows, 12);
    csv_close(&file);
    rig_free(&rig);
}
END_TEST

/* A rewirable fuse does nothing to the current: its near end counts as a breaker's does. BS 3036 30 A: 212.1 A in 0.4
 * s, 18 000 A2 s; 4 kA at the origin: 4000^2 x 0.01 x 1.20 = 192 000. */
START_TEST(wire_in_the_open_limits_nothing)
{
    struct Rig rig;
    rig_make(&rig);
    rig_device(&rig, DEVICE_BS3036, CURVE_B, 30);
    ck_assert_double_eq_tol(energy_at(&rig, 500, 400, true).a2s, 18000, 5);
    ck_assert_double_eq_tol(energy_at(&rig, 4000, 400, true).a2s, 192000, 1e-6);
    ck_assert(rig_says(settled_by(energy_at(&rig, 0, 400, true).settles), "fault-current"));
    breaks(&rig, 2000);
    ck_assert_int_ne(energy_at(&rig, 4000, 400, true).lacks, SAY_NOTHING);
    rig_free(&rig);
}
END_TEST

/* A selective residual part waits for an earth fault and sees nothing of a short circuit between line and neutral. RCBO
 * D 63 A: (20 x 63)^2 x 0.15 = 238 140, x 0.1 = 158 760. */
START_TEST(delay_is_for_earth_faults_alone)
{
    struct Rig rig;
    rig_make(&rig);
    rig_device(&rig, DEVICE_RCBO, CURVE_D, 63);
    rig_residual(&rig, 0.1, true);
    ck_assert_double_eq_tol(energy_at(&rig, 1000, 3000, false).a2s, 238140, 1e-6);
    ck_assert_double_eq_tol(energy_at(&rig, 1000, 3000, true).a2s, 158760, 1e-6);
    rig_residual(&rig, 0.1, false);
    ck_assert_double_eq_tol(energy_at(&rig, 1000, 3000, false).a2s, 158760, 1e-6);
    rig_free(&rig);
}
END_TEST

/* Below 20 In a type D is opened by its overload part, so the energy is that of 10 In for 5 s, over 32 A for 8 s. D 32:
 * 320^2 x 5 = 512 000, which asks for 15.6 mm2 of armour (k 46) and 6.2 mm2 of copper (k 115); 640^2 x 0.1 = 40 960. D
 * 50: 500^2 x 8 = 2 000 000; by a maker's 480 A, 480^2 x 5 = 1 152 000. */
START_TEST(type_d_opens_late_and_lets_more_through)
{
    struct Rig rig;
    rig_make(&rig);
    rig_device(&rig, DEVICE_MCB, CURVE_D, 32);
    ck_assert_double_eq_tol(energy_at(&rig, 700, 640, false).a2s, 40960, 1e-6);
    ck_assert_double_eq_tol(energy_at(&rig, 700, 639, false).a2s, 512000, 1e-6);
    ck_assert_double_eq_tol(energy_at(&rig, 700, 639, true).a2s, 512000, 1e-6);
    ck_assert_double_eq_tol(energy_at(&rig, 700, 200, true).a2s, 512000, 1e-6);
    ck_assert_double_eq_tol(energy_at(&rig, 700, 0, true).a2s, 512000, 1e-6); /* not known */
    rig_residual(&rig, 0.03, false); /* an earth fault is the residual part's */
    ck_assert_double_eq_tol(energy_at(&rig, 700, 400, false).a2s, 40960, 1e-6);
    ck_assert_double_eq_tol(energy_at(&rig, 700, 400, true).a2s, 512000, 1e-6);
    rig.run.device.residual_a.given = false;
    rig_device(&rig, DEVICE_MCB, CURVE_D, 50);
    ck_assert_double_eq_tol(energy_at(&rig, 1100, 600, false).a2s, 2000000, 1e-6);
    rig.run.device.trip_5_s_a = (struct Quantity){.value = 480, .given = true};
    ck_assert_double_eq_tol(energy_at(&rig, 1100, 600, false).a2s, 1152000, 1e-6);
    ck_assert_double_eq_tol(energy_at(&rig, 1100, 470, false).a2s, 2000000, 1e-6);
    /* a loop that Table 41.3 lets pass within 5 s, and a core that does not stand what comes of it */
    rig.run.device.trip_5_s_a.given = false;
    rig_device(&rig, DEVICE_MCB, CURVE_D, 32);
    rig.design.before_ohm = 0.34;
    rig.design.fault_current_a = 1000;
    rig.design.electrical_length_m = 15;
    rig_cable(&rig, CABLE_BS6004_FLAT, 3, CPC_CORE, 70); /* 10 mm2 with a core of 4 */
    rig_passes(&rig, check_disconnection, 10, "0.34 + 0.116 ohm of 0.683");
    rig_fails(&rig, check_protective_conductor, 10, "core of 4 mm2 where 6.2 are due");
    ck_assert_double_eq_tol(rig_check(&rig, check_protective_conductor, 10).limit, 6.22, 0.005);
    /* Table 54.7 would let a core of 4 mm2 go with 4 mm2; sqrt(512000) / 143 = 5.0 */
    rig_cable(&rig, CABLE_BS5467, 3, CPC_CORE, 90);
    rig_fails(&rig, check_protective_conductor, 4, "core of 4 mm2 where 5.0 are due");
    rig_passes(&rig, check_protective_conductor, 6, "core of 6 mm2");
    rig_free(&rig);
}
END_TEST

/* More current at the origin or less at the far end never lets less through, nor turns a fail into anything else. */
START_TEST(more_range_never_lets_less_through)
{
    static const enum DeviceKind kinds[] = {DEVICE_MCB, DEVICE_GG, DEVICE_BS88_3, DEVICE_BS3036};
    static const double capacities_a[] = {0, 6000, 10000, 25000};
    struct Rig rig;
    rig_make(&rig);
    for (int at = 0; at < 4 * 4 * 3; at++) {
        rig_device(&rig, kinds[at % 4], (enum Curve)(at / 16), kinds[at % 4] == DEVICE_BS3036 ? 30 : 32);
        breaks(&rig, capacities_a[at / 4 % 4]);
        double before = 0;
        bool lacked = false;
        double near_a = 400;
        while (near_a < 60000) {
            const struct Energy energy = energy_at(&rig, near_a, 300, true);
            ck_assert(!lacked || energy.lacks != SAY_NOTHING);
            ck_assert(energy.lacks != SAY_NOTHING || energy.a2s >= before);
            ck_assert_double_le(energy_at(&rig, near_a, 300, true).a2s, energy_at(&rig, near_a, 100, true).a2s);
            lacked = energy.lacks != SAY_NOTHING;
            before = energy.a2s;
            near_a *= 1.1;
        }
    }
    rig_free(&rig);
}
END_TEST

TCase *fault_energies(void)
{
    TCase *tests = tcase_create("energy");
    tcase_add_test(tests, first_loop_equals_copy_and_physics);
    tcase_add_test(tests, lesser_of_class_and_first_loop);
    tcase_add_test(tests, class_ends_at_the_breaking_capacity);
    tcase_add_test(tests, nothing_passes_above_what_is_known_to_be_broken);
    tcase_add_test(tests, fuse_by_the_time_at_its_far_end);
    tcase_add_test(tests, fuse_lets_through_less_nearer_by);
    tcase_add_test(tests, wire_in_the_open_limits_nothing);
    tcase_add_test(tests, delay_is_for_earth_faults_alone);
    tcase_add_test(tests, type_d_opens_late_and_lets_more_through);
    tcase_add_test(tests, more_range_never_lets_less_through);
    return tests;
}
