/* Sums worked by hand on BS 5467 cable, and what must hold of any pull, from statics. No source but the formulas and
 * the cable's published dimensions; each figure is given to the digits that it was worked to. */
#include "mechanics_rig.h"

#include <math.h>

#define COUNT_OF(list) ((int)(sizeof(list) / sizeof(list)[0]))

static struct PullPiece straight(double length_m, double slope_deg)
{
    return (struct PullPiece){
        .length = length_m, .rise = length_m * sin(slope_deg * acos(-1) / 180), .crowd = 1, .pressed = 1};
}

static struct PullPiece bend(double angle_deg, double radius_m)
{
    return (struct PullPiece){.bend_deg = angle_deg, .radius = radius_m, .crowd = 1, .pressed = 1};
}

static void both_ways(const struct PullPiece *pieces, int count, double kg_per_m, double friction,
                      const double expected[4])
{
    const struct PullLoad load = {.weight = kg_per_m * PULL_GRAVITY, .friction = friction};
    const struct Pull forth = pull_through(pieces, count, &load);
    const struct Pull back = pull_back_through(pieces, count, &load);
    ck_assert_double_eq_tol(forth.tension, expected[0], 0.5);
    ck_assert_double_eq_tol(back.tension, expected[2], 0.5);
    ck_assert(expected[1] <= 0 || fabs(forth.sidewall - expected[1]) <= 0.5);
    ck_assert(expected[3] <= 0 || fabs(back.sidewall - expected[3]) <= 0.5);
}

/* 4-core 25 mm2 (26.1 mm, 2.16 kg/m): 40 m, 90 degrees at 0.6 m, 15 m. Lubricated 0.30: 503 N and 679 N/m, from the
 * other end 407 N and 255 N/m; dry 0.52: 1163 N, 1663 N/m; 815 N, 623 N/m. Limits 5000, 3132 and 6131 N. */
START_TEST(four_core_25)
{
    const struct PullPiece pieces[] = {straight(40, 0), bend(90, 0.6), straight(15, 0)};
    both_ways(pieces, 3, 2.16, 0.30, (const double[]){503, 679, 407, 255});
    both_ways(pieces, 3, 2.16, 0.52, (const double[]){1163, 1663, 815, 623});
    const struct PullLimit limit = pull_limit(true, 4 * 25, 26.1, 1);
    ck_assert_double_eq_tol(limit.copper_n, 5000, 1e-9);
    ck_assert_double_eq_tol(limit.stocking_n, 3132, 1e-9);
    ck_assert_double_eq_tol(limit.armour_n, 6131, 0.5);
    ck_assert_double_eq_tol(limit.least_n, 3132, 1e-9);
}
END_TEST

/* 4-core 95 mm2 (41.7 mm, 5.60 kg/m): 60 m level, 45 degrees at 0.9 m, 50 m up at 5 degrees, 90 degrees at 0.9 m, 10 m.
 * From the foot dry 9884 N with 10.7 kN/m, lubricated 3868 N with 4115 N/m; from the top 4467 N and 3.1 kN/m, 2059 N
 * and 1189 N/m. Dry from the foot breaks both limits, 5004 N and 4.4 kN/m; from the top it is within them. */
START_TEST(four_core_95_uphill)
{
    const struct PullPiece pieces[] = {straight(60, 0), bend(45, 0.9), straight(50, 5), bend(90, 0.9), straight(10, 0)};
    both_ways(pieces, 5, 5.60, 0.30, (const double[]){3868, 4115, 2059, 1189});
    both_ways(pieces, 5, 5.60, 0.52, (const double[]){9884, 0, 4467, 0});
    const struct PullLoad dry = {.weight = 5.60 * PULL_GRAVITY, .friction = 0.52};
    const struct Pull forth = pull_through(pieces, 5, &dry);
    const struct Pull back = pull_back_through(pieces, 5, &dry);
    ck_assert_double_eq_tol(forth.sidewall, 10700, 50);
    ck_assert_double_eq_tol(back.sidewall, 3100, 50);
    const struct PullLimit limit = pull_limit(true, 4 * 95, 41.7, 1);
    const struct PullStrength strength = {limit.least_n, pull_limits()->sidewall_n_per_m, pull_limits()->bends_deg};
    ck_assert_double_eq_tol(limit.least_n, 5004, 1e-9);
    ck_assert_double_gt(pull_strain(&forth, &strength), 2);
    ck_assert_double_lt(pull_strain(&back, &strength), 1);
    ck_assert_double_eq_tol(pull_strain(&back, &strength), 4467.0 / 5004, 0.001);
}
END_TEST

/* 2-core 10 mm2 (18.0 mm, 0.648 kg/m): 25 m, 90 degrees at 0.45 m, 6 m, the same again, 1 m straight up. 147 and 66 N
 * lubricated, 475 and 128 N dry; the copper stands 1000 N. */
START_TEST(two_core_10)
{
    const struct PullPiece pieces[] = {straight(25, 0), bend(90, 0.45), straight(6, 0), bend(90, 0.45),
                                       straight(1, 90)};
    both_ways(pieces, 5, 0.648, 0.30, (const double[]){147, 0, 66, 0});
    both_ways(pieces, 5, 0.648, 0.52, (const double[]){475, 0, 128, 0});
    ck_assert_double_eq_tol(pull_limit(true, 2 * 10, 18.0, 1).least_n, 1000, 1e-9);
}
END_TEST

/* Without armour there is no rule for it; beyond three cables 80 % is left. */
START_TEST(other_limits)
{
    const struct PullLimit plain = pull_limit(false, 3 * 6, 12, 1);
    ck_assert_double_eq(plain.armour_n, 0);
    ck_assert_double_eq_tol(plain.least_n, 900, 1e-9);
    ck_assert_double_eq_tol(plain.stocking_n, 1440, 1e-9);
    ck_assert_double_eq_tol(pull_limit(true, 20, 18, 3).least_n, 1000, 1e-9);
    ck_assert_double_eq_tol(pull_limit(true, 20, 18, 4).least_n, 800, 1e-9);
    /* of a thin cable the armour's rule is the strictest: 9 x 10^2 */
    ck_assert_double_eq_tol(pull_limit(true, 1000, 10, 1).least_n, 900, 1e-9);
    /* the two stocking rules meet at 13.3 mm */
    const struct PullLimit meet = pull_limit(true, 1000, 120.0 / 9, 1);
    ck_assert_double_eq_tol(meet.stocking_n, meet.armour_n, 1e-9);
}
END_TEST

/* Down a slope steep enough the cable runs by itself: no tension, and no less. */
START_TEST(never_below_nothing)
{
    const struct PullLoad load = {.weight = 10, .friction = 0.5};
    ck_assert_double_eq(pull_straight(0, &load, 10, -10, 1), 0);
    ck_assert_double_eq_tol(pull_straight(150, &load, 10, -10, 1), 50, 1e-9);
    ck_assert_double_eq_tol(pull_straight(0, &load, 10, 10, 1), 100, 1e-9);
    ck_assert_double_eq_tol(pull_straight(0, &load, 5, 3, 1), 10 * 5 * (0.5 * 0.8 + 0.6), 1e-9);
    ck_assert_double_eq(pull_straight(7, &load, 0, 0, 1), 7);
}
END_TEST

/* Where the place of a bend is not known, no place gives more than what is taken. */
START_TEST(worst_place_is_the_worst)
{
    const struct PullLoad load = {.weight = 8.5, .friction = 0.6};
    for (int rise = -20; rise <= 20; rise++) {
        for (int start = 0; start <= 400; start += 100) {
            struct PullLoad begun = load;
            begun.start = start;
            struct PullPiece unknown = {
                .length = 20, .rise = rise, .bend_deg = 90, .crowd = 1, .pressed = 1, .anywhere = true};
            const double forth = pull_through(&unknown, 1, &begun).tension;
            const double back = pull_back_through(&unknown, 1, &begun).tension;
            double greatest = 0;
            double greatest_back = 0;
            for (int place = 0; place <= 20; place++) {
                const struct PullPiece known[] = {
                    {.length = place, .rise = rise * place / 20.0, .bend_deg = 90, .crowd = 1, .pressed = 1},
                    {.length = 20 - place, .rise = rise * (20 - place) / 20.0, .crowd = 1, .pressed = 1}};
                greatest = fmax(greatest, pull_through(known, 2, &begun).tension);
                greatest_back = fmax(greatest_back, pull_back_through(known, 2, &begun).tension);
            }
            ck_assert_double_eq_tol(forth, greatest, 1e-9 * (1 + greatest));
            ck_assert_double_eq_tol(back, greatest_back, 1e-9 * (1 + greatest_back));
        }
    }
}
END_TEST

static struct Bunch equal(int count, double overall_mm)
{
    struct Bunch bunch = {0};
    for (int i = 0; i < count; i++) {
        bunch_add(&bunch, overall_mm);
    }
    return bunch;
}

/* Three 2-core 16 mm2 (20.4 mm): in 50 mm of bore 49.9 %, in 61 mm 33.6 % and a ratio of 2.99 (3.14 in a bend), which
 * jams; in 75 mm 22.2 %, 3.68 and a weight correction of 1.186. */
START_TEST(three_cables_in_a_bore)
{
    const struct Bunch three = equal(3, 20.4);
    ck_assert_double_eq_tol(duct_fill_percent(&three, 50), 49.9, 0.05);
    ck_assert_double_eq_tol(duct_fill_percent(&three, 61), 33.6, 0.05);
    ck_assert_double_eq_tol(duct_fill_percent(&three, 75), 22.2, 0.05);
    ck_assert_double_eq_tol(duct_jam_ratio(&three, 61), 2.99, 0.005);
    ck_assert_double_eq_tol(duct_jam_ratio(&three, 61) * duct_jam().bent, 3.14, 0.005);
    ck_assert_double_eq_tol(duct_jam_ratio(&three, 75), 3.68, 0.005);
    ck_assert(!duct_takes(&three, 50, false) && !duct_takes(&three, 61, false) && duct_takes(&three, 75, false));
    ck_assert(!duct_takes(&three, 50, true) && !duct_takes(&three, 61, true) && duct_takes(&three, 75, true));
    double crowd = 0;
    ck_assert(pull_crowd(&three, 75, &crowd));
    ck_assert_double_eq_tol(crowd, 1.186, 0.0005);
}
END_TEST

/* The band and its edges; a bend widens it downwards. Two and four cables do not jam. */
START_TEST(jamming)
{
    static const struct {
        double ratio;
        bool straight, bent;
    } rows[] = {{2.6, false, false}, {2.70, false, true}, {2.79, false, true},  {2.80, true, true},
                {3.0, true, true},   {3.19, true, true},  {3.21, false, false}, {3.5, false, false}};
    for (int i = 0; i < COUNT_OF(rows); i++) {
        const struct Bunch three = equal(3, 20);
        ck_assert_int_eq(duct_jams(&three, rows[i].ratio * 20, false), rows[i].straight);
        ck_assert_int_eq(duct_jams(&three, rows[i].ratio * 20, true), rows[i].bent);
        for (int count = 1; count <= 5; count++) {
            const struct Bunch other = equal(count, 20);
            ck_assert(count == 3 || !duct_jams(&other, rows[i].ratio * 20, true));
        }
    }
    /* unequal ones wedge when their row spans the bore: 10 + 20 + 30 in 60 mm */
    struct Bunch row = equal(1, 10);
    bunch_add(&row, 20);
    bunch_add(&row, 30);
    ck_assert(duct_jams(&row, 60, false) && !duct_jams(&row, 70, false));
}
END_TEST

/* The smallest duct, and one size less would not do. One 26.1 mm cable: 37 mm are 49.8 % of 53. */
START_TEST(smallest_duct)
{
    const struct Bunch one = equal(1, 26.1);
    double size_mm = 0;
    ck_assert(duct_smallest(&one, false, &size_mm));
    ck_assert_double_eq(size_mm, 50);
    const double *sizes_mm;
    const int sizes = duct_sizes(&sizes_mm);
    for (int count = 1; count <= 6; count++) {
        for (int mm = 5; mm <= 60; mm++) {
            const struct Bunch bunch = equal(count, mm);
            const bool found = duct_smallest(&bunch, true, &size_mm);
            for (int i = 0; i < sizes; i++) {
                struct Figure bore;
                ck_assert(duct_bore(sizes_mm[i], &bore));
                ck_assert(found ? sizes_mm[i] >= size_mm || !duct_takes(&bunch, bore.value, true)
                                : !duct_takes(&bunch, bore.value, true));
            }
        }
    }
}
END_TEST

/* Statics of the wedge, worked apart from the formulas: forces of the wall over the weight. */
static double cradle_by_statics(double d_mm, double bore_mm)
{
    const double angle = asin(d_mm / (bore_mm - d_mm));
    const double between = 2 * sin(angle);
    return (2 + 1 + 2 * between * sin(angle)) / 3;
}

START_TEST(weight_correction_by_statics)
{
    double crowd = 0;
    for (int bore_mm = 56; bore_mm <= 150; bore_mm++) {
        const struct Bunch two = equal(2, 20.4);
        const struct Bunch three = equal(3, 20.4);
        const struct Bunch four = equal(4, 20.4);
        const double x = 20.4 / (bore_mm - 20.4);
        ck_assert(pull_crowd(&two, bore_mm, &crowd));
        ck_assert_double_eq_tol(crowd, 1 / sqrt(1 - x * x), 1e-9);
        ck_assert(pull_crowd(&three, bore_mm, &crowd));
        ck_assert_double_eq_tol(crowd, cradle_by_statics(20.4, bore_mm), 1e-9);
        ck_assert_double_ge(crowd, 1 / sqrt(1 - x * x)); /* the triangle is never worse than the cradle */
        ck_assert_double_ge(pull_pressed(&three, bore_mm, crowd), 3 * crowd - 2);
        ck_assert_double_ge(pull_pressed(&three, bore_mm, crowd), 1.5);
        ck_assert(pull_crowd(&four, bore_mm, &crowd));
        ck_assert_double_eq_tol(crowd, 1 + 2 * x * x, 1e-9);
    }
    const struct Bunch one = equal(1, 20.4);
    const struct Bunch five = equal(5, 10);
    const struct Bunch tight = equal(2, 24);
    ck_assert(pull_crowd(&one, 30, &crowd));
    ck_assert_double_eq(crowd, 1);
    ck_assert_double_eq(pull_pressed(&one, 30, 1), 1);
    ck_assert(!pull_crowd(&five, 100, &crowd));
    /* one thick cable and thin ones: no worse than where three or four just fit, which is 2 */
    struct Bunch mixed = equal(2, 7.5);
    bunch_add(&mixed, 30);
    ck_assert(pull_crowd(&mixed, 47, &crowd));
    ck_assert_double_eq_tol(crowd, 2, 1e-9);
    ck_assert_double_eq_tol(pull_pressed(&mixed, 47, crowd), 4, 1e-9);
    bunch_add(&mixed, 7.5);
    ck_assert(pull_crowd(&mixed, 47, &crowd));
    ck_assert_double_eq_tol(crowd, 2, 1e-9);
    ck_assert_double_eq_tol(pull_pressed(&mixed, 47, crowd), 8, 1e-9);
    ck_assert(!pull_crowd(&tight, 47, &crowd));
}
END_TEST

/* Two unequal cables: the forces of the wall hold the weight up at any angle at which the pair may lie, and come to no
 * more than the correction times the weight. A thin one beside a thick one crowds less than two thick ones. */
START_TEST(weight_correction_of_a_pair)
{
    struct Bunch pair = equal(1, 19.5);
    bunch_add(&pair, 7.5);
    double crowd = 0;
    ck_assert(pull_crowd(&pair, 47, &crowd));
    const double a = (47 - 19.5) / 2, b = (47 - 7.5) / 2, s = (19.5 + 7.5) / 2;
    const double angle = acos((a * a + b * b - s * s) / (2 * a * b));
    double greatest = 0;
    for (int i = 0; i <= 100; i++) {
        const double lie = angle * i / 100;
        greatest = fmax(greatest, (sin(angle - lie) + sin(lie)) / sin(angle));
    }
    ck_assert_double_eq_tol(crowd, greatest, 1e-9);
    const struct Bunch thick = equal(2, 19.5);
    double more = 0;
    ck_assert(pull_crowd(&thick, 47, &more));
    ck_assert(crowd > 1 && crowd < more);
    /* 1 + (7.5 / 19.5)^2 = 1.148; two alike press each other with both */
    ck_assert_double_eq_tol(pull_pressed(&pair, 47, crowd), 1.148, 0.0005);
    ck_assert_double_eq_tol(pull_pressed(&thick, 60, 1.2), 2, 1e-9);
}
END_TEST

/* 200 m level with a right angle half way, 10 N/m at 0.5: 500 e^(pi / 4) + 500 = 1597 N, too much for 600 N. A pit at
 * half way leaves 500 N before it, and after it the bend comes first, at no tension. */
START_TEST(where_a_pit_helps)
{
    const struct PullLoad load = {.weight = 10, .friction = 0.5};
    const struct PullPiece pieces[] = {{.length = 100, .bend_deg = 90, .crowd = 1, .pressed = 1},
                                       {.length = 100, .crowd = 1, .pressed = 1}};
    const struct PullStrength strength = {600, 4400, 360};
    double at_m = 0;
    double tension_n = 0;
    ck_assert_double_eq_tol(pull_through(pieces, 2, &load).tension, 500 * exp(acos(-1) / 4) + 500, 1e-6);
    ck_assert(pull_pit(pieces, 2, &load, &strength, &at_m, &tension_n));
    ck_assert_double_eq_tol(at_m, 100, 2);
    ck_assert_double_eq_tol(tension_n, 500, 10);
    const struct PullStrength weak = {400, 4400, 360};
    ck_assert(!pull_pit(pieces, 2, &load, &weak, &at_m, &tension_n));
    /* 90 degrees at most: a pit before the bend and one after it both leave the whole bend in one part, and none is cut
     * away */
    const struct PullStrength just = {600, 4400, 90};
    const struct PullStrength stiff = {600, 4400, 89};
    ck_assert(pull_pit(pieces, 2, &load, &just, &at_m, &tension_n));
    ck_assert(!pull_pit(pieces, 2, &load, &stiff, &at_m, &tension_n));
}
END_TEST

/* Bends of 90 degrees at 30 and 60 of 90 m, 100 degrees allowed, 10 N/m at 0.5: the pit belongs between them. Each part
 * is drawn so that its bend comes early: 15 m, the bend, 30 m: 75 e^(pi / 4) + 150 = 314.5 N. */
START_TEST(pit_between_bends)
{
    const struct PullLoad load = {.weight = 10, .friction = 0.5};
    struct PullPiece pieces[3];
    for (int i = 0; i < 3; i++) {
        pieces[i] = (struct PullPiece){.length = 30, .bend_deg = i < 2 ? 90 : 0, .crowd = 1, .pressed = 1};
    }
    const struct PullStrength strength = {330, 4400, 100};
    double at_m = 0;
    double tension_n = 0;
    ck_assert(pull_pit(pieces, 3, &load, &strength, &at_m, &tension_n));
    ck_assert_double_eq_tol(at_m, 45, 0.5);
    ck_assert_double_eq_tol(tension_n, 75 * exp(acos(-1) / 4) + 150, 8);
}
END_TEST

/* 100 m that rise 20: drawn downhill 10 x 100 (0.5 cos a - 0.2) = 290 N. A pit half way leaves half of it, each part
 * drawn downhill. */
START_TEST(pit_on_a_slope)
{
    const struct PullLoad load = {.weight = 10, .friction = 0.5};
    const struct PullPiece rising = {.length = 100, .rise = 20, .crowd = 1, .pressed = 1};
    const struct PullStrength strength = {200, 4400, 360};
    double at_m = 0;
    double tension_n = 0;
    ck_assert(pull_pit(&rising, 1, &load, &strength, &at_m, &tension_n));
    ck_assert_double_eq_tol(at_m, 50, 1e-9);
    ck_assert_double_eq_tol(tension_n, 10 * 50 * (0.5 * sqrt(0.96) - 0.2), 1e-6);
}
END_TEST

/* 4 x 95 mm2 is the thickest of four cores that is held, 41.7 mm; so 120 and 300 mm2 are no thinner. Copper alone: 4 x
 * 300 mm2 in one round bar sqrt(4 x 1200 / pi) = 39.09 mm, less than 41.7; of a kind that is not held at all
 * 4 x 120 mm2 sqrt(4 x 480 / pi) = 24.72 mm. What is held is its own bound: 4 x 25 mm2 28.9 mm. */
START_TEST(no_thinner_than)
{
    struct Cable cable = {.type = CABLE_BS5467, .cores = 4};
    ck_assert_double_eq_tol(mechanics_least_mm(&cable, 120), 41.7, 1e-9);
    ck_assert_double_eq_tol(mechanics_least_mm(&cable, 300), 41.7, 1e-9);
    ck_assert_double_eq_tol(mechanics_least_mm(&cable, 25), 28.9, 1e-9);
    cable.type = CABLE_BS7211_MULTICORE;
    ck_assert_double_eq_tol(mechanics_least_mm(&cable, 120), 24.72, 0.005);
    ck_assert_double_eq_tol(mechanics_least_mm(&cable, 300), 39.09, 0.005);
    cable.cores = 0; /* a data cable */
    ck_assert_double_eq_tol(mechanics_least_mm(&cable, 0), 0, 1e-12);
}
END_TEST

Suite *suite_mechanics_worked(void)
{
    Suite *suite = suite_create("drawing in worked by hand");
    TCase *tests = tcase_create("worked");
    tcase_add_test(tests, four_core_25);
    tcase_add_test(tests, four_core_95_uphill);
    tcase_add_test(tests, two_core_10);
    tcase_add_test(tests, other_limits);
    tcase_add_test(tests, never_below_nothing);
    tcase_add_test(tests, worst_place_is_the_worst);
    tcase_add_test(tests, three_cables_in_a_bore);
    tcase_add_test(tests, jamming);
    tcase_add_test(tests, smallest_duct);
    tcase_add_test(tests, weight_correction_by_statics);
    tcase_add_test(tests, weight_correction_of_a_pair);
    tcase_add_test(tests, where_a_pit_helps);
    tcase_add_test(tests, pit_between_bends);
    tcase_add_test(tests, pit_on_a_slope);
    tcase_add_test(tests, no_thinner_than);
    suite_add_tcase(suite, tests);
    return suite;
}
