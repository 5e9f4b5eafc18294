/* Disconnection times and protective devices against the published copies both ways, and against what is known of fuses
 * and circuit-breakers at large. */
#include "csv_file.h"
#include "fault_suites.h"
#include "tables/fault_tables.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static double cell(const struct CsvFile *file, int row, const char *head)
{
    return csv_number(file, row, csv_column(file, head));
}

static bool blank(const struct CsvFile *file, int row, const char *head)
{
    return csv_blank(file, row, csv_column(file, head));
}

START_TEST(disconnection_times_equal_print)
{
    struct CsvFile file = csv_open("disconnection-times-41.1.csv");
    int cells = 0;
    for (int row = 0; row < file.rows; row++) {
        const double over_v = cell(&file, row, "over_v");
        const double end_v = blank(&file, row, "up_to_v") ? 1000 : cell(&file, row, "up_to_v");
        const double points_v[] = {over_v + 0.01, (over_v + end_v) / 2, end_v};
        for (int at = 0; at < 3; at++) {
            ck_assert(
                csv_same(disconnection_time_s(edition_held(), false, true, points_v[at]), cell(&file, row, "TN_s")));
            ck_assert(
                csv_same(disconnection_time_s(edition_held(), true, true, points_v[at]), cell(&file, row, "TT_s")));
            ck_assert(csv_same(disconnection_time_s(edition_held(), false, false, points_v[at]), 5));
            ck_assert(csv_same(disconnection_time_s(edition_held(), true, false, points_v[at]), 1));
        }
        cells += 2;
    }
    ck_assert_int_eq(cells, 8);
    printf("compared %3d cells of %s\n", cells, file.name);
    csv_close(&file);
    ck_assert(csv_same(disconnection_time_s(edition_held(), false, true, NAN), 0.1)); /* the shortest that there is */
    ck_assert(csv_same(disconnection_time_s(edition_held(), true, true, NAN), 0.04));
    ck_assert(csv_same(disconnection_time_s(edition_held(), true, true, 230), 0.2));
    ck_assert(csv_same(disconnection_time_s(edition_held(), true, true, 240), 0.07));
}
END_TEST

/* What a row of the loop limits is about. */
struct LimitRow {
    enum DeviceKind kind;
    enum Curve curve;
    bool breaker;
};

static struct LimitRow limit_row(const struct CsvFile *file, int row)
{
    static const struct {
        const char *device;
        struct LimitRow is;
    } devices[] = {
        {"circuit-breaker/RCBO type B", {DEVICE_MCB, CURVE_B, true}},
        {"circuit-breaker/RCBO type C", {DEVICE_MCB, CURVE_C, true}},
        {"circuit-breaker/RCBO type D", {DEVICE_RCBO, CURVE_D, true}},
        {"fuse BS 88-2 (gG) systems E and G", {DEVICE_GG, CURVE_COUNT, false}},
        {"fuse BS 88-3 (system C)", {DEVICE_BS88_3, CURVE_COUNT, false}},
        {"fuse BS 1361", {DEVICE_BS1361, CURVE_COUNT, false}},
    };
    for (size_t at = 0; at < sizeof devices / sizeof devices[0]; at++) {
        if (text_same(csv_text(file, row, 0), devices[at].device)) {
            return devices[at].is;
        }
    }
    ck_abort_msg("%s: what is %s?", file->name, csv_text(file, row, 0));
    return devices[0].is;
}

/* The four or five columns of one time; gives the number of cells compared. */
static int compare_limits(const struct CsvFile *file, int row, bool within_5_s)
{
    const struct LimitRow is = limit_row(file, row);
    const char *const loop = within_5_s ? "Zs_5s_ohm" : "Zs_0.4s_ohm";
    double trip_a = -7;
    const double rating_a = cell(file, row, "rating_A");
    const bool has = device_trip_current(edition_held(), is.kind, is.curve, rating_a, within_5_s ? 5 : 0.4, &trip_a);
    ck_assert_int_eq(has, !blank(file, row, loop));
    if (!has) {
        ck_assert(csv_same(trip_a, -7));
        return 3; /* the loop, the current and the test value, all blank */
    }
    const double loop_ohm = 0.95 * 230 / trip_a;
    const double printed_a = cell(file, row, within_5_s ? "Ia_5s_A" : "Ia_0.4s_A");
    const double printed_test = cell(file, row, within_5_s ? "test_80pct_5s_ohm" : "test_80pct_0.4s_ohm");
    if (is.breaker && is.curve == CURVE_D && within_5_s &&
        rating_a > 32) { /* 20 In for the print's 10: half the loop */
        ck_assert(csv_same(trip_a, 2 * printed_a));
        ck_assert_double_eq_tol(2 * loop_ohm, cell(file, row, loop), 0.005 + 1e-9);
        ck_assert_double_le(loop_ohm * 0.8, printed_test);
        return 3;
    }
    /* A breaker's loop is computed and rounded in print; a fuse's is printed and its current computed and rounded. */
    ck_assert_double_eq_tol(loop_ohm, cell(file, row, loop), is.breaker ? 0.005 + 1e-9 : 1e-9);
    ck_assert_double_eq_tol(trip_a, printed_a, is.breaker ? 1e-9 : 0.05 + 1e-9);
    ck_assert_double_eq_tol(floor(80 * loop_ohm + 1e-9) / 100, printed_test, 1e-9);
    if (is.breaker && !within_5_s) {
        ck_assert_double_eq_tol(loop_ohm, cell(file, row, "Zs_0.4s_unrounded_ohm"), 0.00005 + 1e-9);
        return 4;
    }
    return 3;
}

START_TEST(trip_currents_equal_print)
{
    struct CsvFile file = csv_open("loop-limits.csv");
    int cells = 0;
    for (int row = 0; row < file.rows; row++) {
        cells += compare_limits(&file, row, false);
        cells += compare_limits(&file, row, true);
    }
    ck_assert_int_eq(file.rows, 13 + 12 + 12 + 16 + 8 + 1);
    ck_assert_int_eq(cells, 37 * 7 + 25 * 6);
    printf("compared %3d cells of %s\n", cells, file.name);
    csv_close(&file);
}
END_TEST

/* The row of the loop limits for a fuse, or -1. */
static int fuse_row(const struct CsvFile *file, enum DeviceKind kind, double rating_a)
{
    for (int row = 0; row < file->rows; row++) {
        const struct LimitRow is = limit_row(file, row);
        if (!is.breaker && is.kind == kind && csv_same(cell(file, row, "rating_A"), rating_a)) {
            return row;
        }
    }
    return -1;
}

START_TEST(fuses_of_other_ratings_have_no_figure)
{
    struct CsvFile file = csv_open("loop-limits.csv");
    int known = 0;
    for (int step = 1; step <= 500; step++) {
        const double rating_a = step / 2.0;
        for (int kind = DEVICE_GG; kind <= DEVICE_BS1361; kind++) {
            const int row = fuse_row(&file, (enum DeviceKind)kind, rating_a);
            double trip_a = -7;
            ck_assert_int_eq(device_trip_current(edition_held(), (enum DeviceKind)kind, CURVE_B, rating_a, 5, &trip_a),
                             row >= 0);
            ck_assert(row >= 0 || csv_same(trip_a, -7));
            known += row >= 0;
        }
    }
    ck_assert_int_eq(known, 16 + 8 + 1);
    csv_close(&file);
}
END_TEST

/* The tripping current, or -7 for none. */
static double trip(enum DeviceKind kind, enum Curve curve, double rating_a, double time_s)
{
    double trip_a = -9;
    const bool has = device_trip_current(edition_held(), kind, curve, rating_a, time_s, &trip_a);
    ck_assert_int_eq(has, !csv_same(trip_a, -9)); /* a figure, or untouched */
    return has ? trip_a : -7;
}

START_TEST(times_between_the_printed_ones)
{
    static const double short_s[] = {0.4, 0.1 * 4, 0.5, 1, 4.99};
    static const double long_s[] = {5, 0.5 * 10, 7, 100};
    static const double too_short_s[] = {0.39, 0.2, 0.07, 0, -1, NAN};
    for (size_t at = 0; at < sizeof short_s / sizeof short_s[0]; at++) {
        ck_assert_double_eq_tol(trip(DEVICE_GG, CURVE_B, 32, short_s[at]), 218.5 / 0.99, 1e-9);
        ck_assert_double_eq_tol(trip(DEVICE_BS88_3, CURVE_B, 32, short_s[at]), 218.5 / 0.91, 1e-9);
        ck_assert(csv_same(trip(DEVICE_GG, CURVE_B, 80, short_s[at]), -7)); /* no figure for 0.4 s */
    }
    for (size_t at = 0; at < sizeof long_s / sizeof long_s[0]; at++) {
        ck_assert_double_eq_tol(trip(DEVICE_GG, CURVE_B, 32, long_s[at]), 218.5 / 1.70, 1e-9);
        ck_assert_double_eq_tol(trip(DEVICE_BS88_3, CURVE_B, 80, long_s[at]), 218.5 / 0.51, 1e-9);
        ck_assert(csv_same(trip(DEVICE_MCB, CURVE_D, 32, long_s[at]), 320));
        ck_assert(csv_same(trip(DEVICE_MCB, CURVE_D, 40, long_s[at]), long_s[at] < 8 ? 800 : 400));
    }
    for (size_t at = 0; at < sizeof too_short_s / sizeof too_short_s[0]; at++) {
        ck_assert(csv_same(trip(DEVICE_GG, CURVE_B, 32, too_short_s[at]), -7));
        ck_assert(csv_same(trip(DEVICE_BS88_3, CURVE_B, 32, too_short_s[at]), -7));
    }
}
END_TEST

/* BS 3036: from memory, as the table says; no print of ours to compare with, so typed a second time, and held against
 * the edition before (17th, from memory), whose figures the voltage factor 0.95 brings down to these. */
START_TEST(semi_enclosed_fuses)
{
    static const struct {
        double rating_a, short_ohm, long_ohm, before_short_ohm, before_long_ohm; /* 0: none */
    } rows[] = {
        {5, 9.10, 16.80, 9.58, 17.7}, {15, 2.42, 5.08, 2.55, 5.35}, {20, 1.68, 3.64, 1.77, 3.83},
        {30, 1.03, 2.50, 1.09, 2.64}, {45, 0, 1.51, 0, 1.59},       {60, 0, 1.07, 0, 1.12},
        {100, 0, 0.50, 0, 0.53},
    };
    for (size_t at = 0; at < sizeof rows / sizeof rows[0]; at++) {
        ck_assert_double_eq_tol(trip(DEVICE_BS3036, CURVE_B, rows[at].rating_a, 5), 218.5 / rows[at].long_ohm, 1e-9);
        ck_assert_double_eq_tol(rows[at].long_ohm, 0.95 * rows[at].before_long_ohm, 0.02);
        const double short_a = trip(DEVICE_BS3036, CURVE_B, rows[at].rating_a, 0.4);
        if (rows[at].short_ohm > 0) {
            ck_assert_double_eq_tol(short_a, 218.5 / rows[at].short_ohm, 1e-9);
            ck_assert_double_eq_tol(rows[at].short_ohm, 0.95 * rows[at].before_short_ohm, 0.01);
        } else {
            ck_assert(csv_same(short_a, -7));
        }
    }
    ck_assert(csv_same(trip(DEVICE_BS3036, CURVE_B, 32, 5), -7));
}
END_TEST

START_TEST(breakers_open_at_once)
{
    static const double in_time_s[] = {0.1, 0.2, 0.4, 1, 5, 60};
    static const double too_short_s[] = {0.09, 0.07, 0.04, 0, NAN};
    for (int kind = DEVICE_MCB; kind <= DEVICE_RCBO; kind++) {
        for (size_t at = 0; at < sizeof in_time_s / sizeof in_time_s[0]; at++) {
            ck_assert(csv_same(trip((enum DeviceKind)kind, CURVE_B, 32, in_time_s[at]), 160));
            ck_assert(csv_same(trip((enum DeviceKind)kind, CURVE_C, 32, in_time_s[at]), 320));
            ck_assert(csv_same(trip((enum DeviceKind)kind, CURVE_D, 32, in_time_s[at]), in_time_s[at] < 5 ? 640 : 320));
            ck_assert(csv_same(trip((enum DeviceKind)kind, CURVE_C, 13, in_time_s[at]), 130)); /* any rating */
            ck_assert(csv_same(trip((enum DeviceKind)kind, CURVE_C, 0.5, in_time_s[at]), 5));
        }
        for (size_t at = 0; at < sizeof too_short_s / sizeof too_short_s[0]; at++) {
            ck_assert(csv_same(trip((enum DeviceKind)kind, CURVE_B, 32, too_short_s[at]), -7));
        }
        ck_assert(csv_same(trip((enum DeviceKind)kind, CURVE_B, 0, 5), -7));
        ck_assert(csv_same(trip((enum DeviceKind)kind, CURVE_B, -6, 5), -7));
        ck_assert(csv_same(trip((enum DeviceKind)kind, CURVE_B, NAN, 5), -7));
        ck_assert(csv_same(trip((enum DeviceKind)kind, CURVE_B, INFINITY, 5), -7));
        ck_assert(csv_same(trip((enum DeviceKind)kind, CURVE_COUNT, 32, 5), -7));
    }
    ck_assert(csv_same(trip(DEVICE_COUNT, CURVE_B, 32, 5), -7));
}
END_TEST

/* BS 7671 Table 41.3, 5 s column (seen), and BS EN 60898-1 Table 7 (from memory): 10 In opens a type D up to 32 A in 5
 * s, a larger one in 8 s. Types B and C open at once from their own multiple on, and are reckoned with from there
 * alone. */
START_TEST(type_d_opens_late_from_ten_times)
{
    static const double rows[][3] = {{6, 60, 5}, {32, 320, 5}, {32.5, 325, 8}, {40, 400, 8}, {125, 1250, 8}};
    double current_a = -7;
    double time_s = -7;
    ck_assert(!device_trip_late(CURVE_B, 32, &current_a, &time_s) &&
              !device_trip_late(CURVE_C, 32, &current_a, &time_s));
    ck_assert(!device_trip_late(CURVE_D, 0, &current_a, &time_s) &&
              !device_trip_late(CURVE_D, NAN, &current_a, &time_s));
    ck_assert(csv_same(current_a, -7) && csv_same(time_s, -7));
    for (size_t at = 0; at < sizeof rows / sizeof rows[0]; at++) {
        ck_assert(device_trip_late(CURVE_D, rows[at][0], &current_a, &time_s));
        ck_assert(csv_same(current_a, rows[at][1]) && csv_same(time_s, rows[at][2]));
    }
}
END_TEST

/* A larger fuse needs more current, a shorter time more again; none melts in 5 s at its conventional fusing current of
 * 1.6 In (from memory), which takes an hour or longer. The print's times differ by a factor of 1.3 to 1.9. */
START_TEST(fuses_behave_like_fuses)
{
    struct CsvFile file = csv_open("loop-limits.csv");
    double before_a = 0;
    enum DeviceKind before = DEVICE_MCB;
    int pairs = 0;
    for (int row = 0; row < file.rows; row++) {
        const struct LimitRow is = limit_row(&file, row);
        if (is.breaker) {
            continue;
        }
        const double rating_a = cell(&file, row, "rating_A");
        const double slow_a = trip(is.kind, CURVE_B, rating_a, 5);
        const double fast_a = trip(is.kind, CURVE_B, rating_a, 0.4);
        ck_assert_double_gt(slow_a, 1.6 * rating_a);
        ck_assert_double_lt(slow_a, 6.5 * rating_a);
        ck_assert(is.kind != before || slow_a > before_a);
        if (fast_a > 0) {
            ck_assert_double_ge(fast_a / slow_a, 1.3);
            ck_assert_double_le(fast_a / slow_a, 1.9);
            pairs++;
        }
        before_a = slow_a;
        before = is.kind;
    }
    ck_assert_int_eq(pairs, 11 + 6);
    csv_close(&file);
}
END_TEST

/* The ratings of a band as the copy writes them. */
static int band_ratings(const char *band, double ratings_a[4])
{
    static const double low[] = {1, 6, 10, 16};
    static const double middle[] = {20, 25, 32};
    static const double top[] = {40};
    if (text_same(band, "<=16")) {
        memcpy(ratings_a, low, sizeof low);
        return 4;
    }
    if (text_same(band, "20-32")) {
        memcpy(ratings_a, middle, sizeof middle);
        return 3;
    }
    ck_assert_str_eq(band, "40");
    memcpy(ratings_a, top, sizeof top);
    return 1;
}

START_TEST(let_through_equals_print)
{
    struct CsvFile file = csv_open("energy-limiting-class3.csv");
    for (int row = 0; row < file.rows; row++) {
        const bool b = text_same(csv_text(&file, row, 0), "B");
        ck_assert(b || text_same(csv_text(&file, row, 0), "C"));
        double ratings_a[4];
        const int count = band_ratings(csv_text(&file, row, csv_column(&file, "rating_A")), ratings_a);
        for (int at = 0; at < count; at++) {
            double a2s = -7;
            ck_assert(let_through_class_3(b ? CURVE_B : CURVE_C, ratings_a[at], cell(&file, row, "Icn_A"), &a2s));
            ck_assert_msg(csv_same(a2s, cell(&file, row, "I2t_max_A2s")), "row %d", row);
        }
    }
    ck_assert_int_eq(file.rows, 24);
    printf("compared %3d cells of %s\n", file.rows, file.name);
    csv_close(&file);
}
END_TEST

START_TEST(let_through_only_where_there_is_a_class)
{
    double a2s = -7;
    int known = 0;
    for (int capacity_a = 500; capacity_a <= 25000; capacity_a += 500) {
        ck_assert(!let_through_class_3(CURVE_D, 16, capacity_a, &a2s));
        ck_assert(!let_through_class_3(CURVE_B, 50, capacity_a, &a2s));
        ck_assert(!let_through_class_3(CURVE_B, 0, capacity_a, &a2s));
        ck_assert(!let_through_class_3(CURVE_C, NAN, capacity_a, &a2s));
        ck_assert(!let_through_class_3(CURVE_COUNT, 16, capacity_a, &a2s));
        ck_assert(csv_same(a2s, -7));
        double any = 0;
        known += let_through_class_3(CURVE_B, 16, capacity_a, &any);
    }
    ck_assert_int_eq(known, 4);
    ck_assert(!let_through_class_3(CURVE_B, 16, NAN, &a2s));
    /* between two bands the next one up, which lets more through */
    ck_assert(let_through_class_3(CURVE_B, 18, 6000, &a2s) && csv_same(a2s, 45000));
    ck_assert(let_through_class_3(CURVE_B, 16.5, 6000, &a2s) && csv_same(a2s, 45000));
    ck_assert(let_through_class_3(CURVE_C, 32.5, 6000, &a2s) && csv_same(a2s, 66000));
    ck_assert(!let_through_class_3(CURVE_C, 40.5, 6000, &a2s) && csv_same(a2s, 66000));
}
END_TEST

/* More with type C, with a larger rating and with a stronger fault; the 40 A rows are 1.2 times the ones before; and
 * always far less than an unlimited half cycle of the breaking capacity, 10 ms, would bring. */
START_TEST(let_through_in_its_order)
{
    static const double ratings_a[] = {16, 32, 40};
    static const double capacities_a[] = {3000, 4500, 6000, 10000};
    for (int capacity = 0; capacity < 4; capacity++) {
        for (int rating = 0; rating < 3; rating++) {
            double b = 0;
            double c = 0;
            double other = 0;
            ck_assert(let_through_class_3(CURVE_B, ratings_a[rating], capacities_a[capacity], &b));
            ck_assert(let_through_class_3(CURVE_C, ratings_a[rating], capacities_a[capacity], &c));
            ck_assert_double_gt(c, b);
            ck_assert_double_lt(c, 0.35 * capacities_a[capacity] * capacities_a[capacity] * 0.010);
            if (rating > 0) {
                ck_assert(let_through_class_3(CURVE_B, ratings_a[rating - 1], capacities_a[capacity], &other));
                ck_assert_double_gt(b, other);
                ck_assert(rating < 2 || csv_same(b, 1.2 * other));
            }
            if (capacity > 0) {
                ck_assert(let_through_class_3(CURVE_C, ratings_a[rating], capacities_a[capacity - 1], &other));
                ck_assert_double_gt(c, other);
            }
        }
    }
}
END_TEST

START_TEST(residual_times_equal_print)
{
    struct CsvFile file = csv_open("residual-times.csv");
    int cells = 0;
    for (int multiple = -1; multiple <= 20; multiple++) {
        const int row = csv_find(&file, 0, multiple);
        double general_s = -7;
        double delayed_s = -7;
        double shortest_s = -7;
        ck_assert_int_eq(residual_time_s(false, multiple, &general_s), row >= 0);
        ck_assert_int_eq(residual_time_s(true, multiple, &delayed_s), row >= 0);
        ck_assert_int_eq(residual_shortest_s(multiple, &shortest_s), row >= 0);
        if (row < 0) {
            ck_assert(csv_same(general_s, -7) && csv_same(delayed_s, -7) && csv_same(shortest_s, -7));
            continue;
        }
        ck_assert(csv_same(general_s, cell(&file, row, "general_longest_ms") / 1000));
        ck_assert(csv_same(delayed_s, cell(&file, row, "delayed_longest_ms") / 1000));
        ck_assert(csv_same(shortest_s, cell(&file, row, "delayed_shortest_ms") / 1000));
        ck_assert_double_lt(shortest_s, delayed_s);
        ck_assert_double_lt(general_s, delayed_s);
        cells += 3;
    }
    ck_assert_int_eq(cells, 9);
    ck_assert_int_eq(cells, 3 * file.rows);
    printf("compared %3d cells of %s\n", cells, file.name);
    csv_close(&file);
}
END_TEST

/* At five times its rating a delayed device waits longer than a general one needs, so the two discriminate there. */
START_TEST(delayed_waits_for_general)
{
    double shortest_s = 0;
    double general_s = 0;
    ck_assert(residual_shortest_s(5, &shortest_s) && residual_time_s(false, 5, &general_s));
    ck_assert_double_gt(shortest_s, general_s);
}
END_TEST

START_TEST(residual_limits_equal_print)
{
    struct CsvFile file = csv_open("residual-loop-limits-41.5.csv");
    for (int row = 0; row < file.rows; row++) {
        const double limit_ohm = residual_loop_limit_ohm(edition_held(), cell(&file, row, "residual_mA") / 1000);
        ck_assert_double_eq_tol(limit_ohm, cell(&file, row, "unrounded_ohm"), 0.05);
        ck_assert(csv_same(floor(limit_ohm + 0.5), cell(&file, row, "printed_ohm")));
    }
    ck_assert_int_eq(file.rows, 4);
    printf("compared %3d cells of %s\n", 2 * file.rows, file.name);
    csv_close(&file);
    ck_assert(csv_same(residual_loop_limit_ohm(edition_held(), 0.01), 5000)); /* not in print, the rule serves it */
    ck_assert(csv_same(residual_loop_limit_ohm(edition_held(), 0), 0));
    ck_assert(csv_same(residual_loop_limit_ohm(edition_held(), -0.03), 0));
    ck_assert(csv_same(residual_loop_limit_ohm(edition_held(), NAN), 0));
}
END_TEST

START_TEST(voltage_factors_equal_copy)
{
    struct CsvFile file = csv_open("voltage-factors.csv");
    ck_assert_int_eq(file.rows, 1);
    ck_assert(csv_same(voltage_factor_least(edition_held()), cell(&file, 0, "least")));
    ck_assert(csv_same(voltage_factor_greatest(edition_held()), cell(&file, 0, "greatest")));
    printf("compared %3d cells of %s\n", 2, file.name);
    csv_close(&file);
}
END_TEST

Suite *suite_fault_devices(void)
{
    Suite *suite = suite_create("protective devices");
    TCase *tests = tcase_create("devices");
    tcase_add_test(tests, disconnection_times_equal_print);
    tcase_add_test(tests, trip_currents_equal_print);
    tcase_add_test(tests, fuses_of_other_ratings_have_no_figure);
    tcase_add_test(tests, times_between_the_printed_ones);
    tcase_add_test(tests, breakers_open_at_once);
    tcase_add_test(tests, type_d_opens_late_from_ten_times);
    tcase_add_test(tests, semi_enclosed_fuses);
    tcase_add_test(tests, fuses_behave_like_fuses);
    tcase_add_test(tests, let_through_equals_print);
    tcase_add_test(tests, let_through_only_where_there_is_a_class);
    tcase_add_test(tests, let_through_in_its_order);
    tcase_add_test(tests, residual_times_equal_print);
    tcase_add_test(tests, delayed_waits_for_general);
    tcase_add_test(tests, residual_limits_equal_print);
    tcase_add_test(tests, voltage_factors_equal_copy);
    suite_add_tcase(suite, tests);
    return suite;
}
