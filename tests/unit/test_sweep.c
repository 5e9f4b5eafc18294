/* A sweep through everything a short route can be: every cable, core count and protective conductor, every standard
 * device, every system, lengths of 5 to 200 m, sizes chosen and given. Of each plan all that must hold of any is held
 * (see sweep_holds.c); between plans, what physics says: longer is worse, thicker is better, a lower loop never harms
 * disconnection, and a larger device, a slower curve or a larger fault current never make do with a smaller cable. */
#include "run_suite.h"
#include "sweep_case.h"
#include "sweep_depth.h"

#include <math.h>

#define COUNT_OF(list) ((int)(sizeof(list) / sizeof(list)[0]))

/* The loops go through their points in strides that share no factor with what they are made of, so that everything
 * meets nearly everything else; the sample takes every eleventh of these, and with WEND_SWEEP=all they leave out none.
 */
enum { SAMPLE = 11 };

static int stride(int usual)
{
    return sweep_every_point() ? 1 : usual * sweep_depth(SAMPLE, 1);
}

static void tell(const char *name, const struct SweepCounts *counts, long least)
{
    const long plans = counts->passed + counts->failed + counts->refused;
    printf("%s: %ld plans: %ld pass, %ld fail a check, %ld refused\n", name, plans, counts->passed, counts->failed,
           counts->refused);
    ck_assert_int_ge(plans, least / sweep_depth(SAMPLE, 1)); /* else the loops have shrunk */
    ck_assert_int_gt(counts->passed, plans / 50);
    ck_assert_int_gt(counts->failed, plans / 50);
    ck_assert_int_eq(counts->refused, 0); /* every point is a route that can be planned */
}

static bool rises(double before, double after)
{
    return after > before * (1 + 1e-9);
}

static bool falls_or_stays(double before, double after)
{
    return after <= before * (1 + 1e-9);
}

static const enum System systems[] = {SYSTEM_TN_S, SYSTEM_TN_C_S, SYSTEM_TT};

/* The loop before the run that a system usually has, mohm. */
static int usual_before_mohm(enum System system)
{
    return system == SYSTEM_TN_S ? 800 : system == SYSTEM_TN_C_S ? 350 : 60000;
}

static bool same_family(const struct SweepDevice *a, const struct SweepDevice *b)
{
    return a->kind == b->kind && a->curve == b->curve;
}

/* Sizes chosen for every cable, device and system. Along one kind and curve the ratings rise. */
START_TEST(choose_for_every_device)
{
    static const int lengths_mm[] = {5000, 70000, 200000};
    const struct SweepCable *cables;
    const struct SweepDevice *devices;
    const int cable_count = sweep_cables(&cables);
    const int device_count = sweep_devices(&devices);
    const int step = stride(2);
    struct SweepCounts counts = {0};
    struct SweepCase point = sweep_ordinary();
    point.load_ma = 2000;
    for (int at = 0; at < cable_count * COUNT_OF(systems) * COUNT_OF(lengths_mm); at += step) {
        point.cable = cables[at / (COUNT_OF(systems) * COUNT_OF(lengths_mm))];
        point.system = systems[at / COUNT_OF(lengths_mm) % COUNT_OF(systems)];
        point.before_mohm = usual_before_mohm(point.system);
        point.length_mm = lengths_mm[at % COUNT_OF(lengths_mm)];
        double needed_mm2 = 0;
        for (int i = 0; i < device_count; i++) {
            point.device = devices[i];
            point.residual_ma = devices[i].kind == DEVICE_RCBO ? 30 : 0;
            const struct SweepFacts facts = sweep_plan(&counts, &point);
            needed_mm2 = i > 0 && same_family(&devices[i], &devices[i - 1]) ? needed_mm2 : 0;
            if (facts.pass) {
                sweep_hold(facts.size_mm2 >= needed_mm2, &point, "a larger device makes do with a smaller cable");
                needed_mm2 = facts.size_mm2;
            }
        }
    }
    tell("choose for every device", &counts, 18000);
}
END_TEST

/* A size fails with a device and passes with the next larger one: never, but for the load that the smaller cannot
 * carry. */
START_TEST(slower_curves_need_no_less)
{
    static const int ratings_a[] = {6, 16, 32, 63};
    static const int lengths_mm[] = {5000, 40000, 100000, 200000};
    const struct SweepCable *cables;
    const int cable_count = sweep_cables(&cables);
    struct SweepCounts counts = {0};
    struct SweepCase point = sweep_ordinary();
    for (int at = 0; at < cable_count * COUNT_OF(ratings_a) * COUNT_OF(lengths_mm); at += stride(1)) {
        point.cable = cables[at / (COUNT_OF(ratings_a) * COUNT_OF(lengths_mm))];
        point.length_mm = lengths_mm[at % COUNT_OF(lengths_mm)];
        double needed_mm2 = 0;
        bool passed = true;
        for (int curve = 0; curve < CURVE_COUNT; curve++) {
            point.device = (struct SweepDevice){DEVICE_MCB, (enum Curve)curve,
                                                ratings_a[at / COUNT_OF(lengths_mm) % COUNT_OF(ratings_a)]};
            const struct SweepFacts facts = sweep_plan(&counts, &point);
            sweep_hold(passed || !facts.pass || !facts.planned, &point,
                       "a slower curve passes where a quicker one does not");
            sweep_hold(!facts.pass || facts.size_mm2 >= needed_mm2, &point,
                       "a slower curve makes do with a smaller cable");
            passed = facts.pass;
            needed_mm2 = facts.size_mm2;
        }
    }
    tell("curves", &counts, 1500);
}
END_TEST

/* Holds a plan with a given size against the option of that size in the plan that chooses. */
static void option_is(const struct SweepCase *point, const struct SweepFacts *chosen, const struct SweepFacts *given)
{
    for (int i = 0; i < chosen->option_count; i++) {
        if (chosen->options[i].size_mm2 == point->size_mm2) {
            sweep_hold(fabs(chosen->options[i].drop_percent - given->drop_percent) < 1e-9 &&
                           fabs(chosen->options[i].capacity_a - given->capacity_a) < 1e-9 &&
                           fabs(chosen->options[i].zs_ohm - given->readings.zs_hot_ohm) < 1e-9 &&
                           chosen->options[i].pass == given->pass,
                       point, "a size is planned otherwise when it is given than when it is tried");
            return;
        }
    }
    sweep_hold(false, point, "a size of the table was not tried");
}

static void longer_is_worse(const struct SweepCase *point, const struct SweepFacts *shorter,
                            const struct SweepFacts *longer)
{
    sweep_hold(rises(shorter->drop_percent, longer->drop_percent), point, "a longer run drops no more");
    sweep_hold(rises(shorter->readings.r1_20_ohm, longer->readings.r1_20_ohm), point, "R1 does not rise with length");
    sweep_hold(longer->readings.zs_hot_ohm <= 0 || rises(shorter->readings.zs_hot_ohm, longer->readings.zs_hot_ohm),
               point, "Zs does not rise with length");
    sweep_hold(falls_or_stays(shorter->capacity_a, longer->capacity_a), point, "a longer run carries more");
    sweep_hold(shorter->disconnection == CHECK_PASS || longer->disconnection != CHECK_PASS, point,
               "a longer run is cut off, a shorter one not");
}

static void thicker_is_better(const struct SweepCase *point, const struct SweepFacts *thinner,
                              const struct SweepFacts *thicker)
{
    sweep_hold(falls_or_stays(thinner->drop_percent, thicker->drop_percent), point, "a larger core drops more");
    sweep_hold(rises(thinner->capacity_a, thicker->capacity_a), point, "a larger core carries no more");
    const double before = thinner->readings.zs_hot_ohm;
    const double after = thicker->readings.zs_hot_ohm;
    sweep_hold(before <= 0 || after <= 0 || falls_or_stays(before, after), point, "a larger core has a higher loop");
    sweep_hold(point->cable.cpc != CPC_CORE || rises(after, before), point,
               "Zs does not fall with the size of line and core");
    sweep_hold(thinner->disconnection != CHECK_PASS || thicker->disconnection == CHECK_PASS, point,
               "a larger core spoils disconnection");
}

START_TEST(every_size_and_length)
{
    static const int lengths_mm[] = {5000, 10000, 20000, 40000, 80000, 120000, 160000, 200000};
    static const struct SweepDevice devices[] = {
        {DEVICE_MCB, CURVE_B, 16}, {DEVICE_RCBO, CURVE_C, 32}, {DEVICE_MCB, CURVE_D, 63}, {DEVICE_GG, CURVE_B, 100}};
    const struct SweepCable *cables;
    const int cable_count = sweep_cables(&cables);
    const int step = stride(5);
    struct SweepCounts counts = {0};
    struct SweepCase point = sweep_ordinary();
    for (int at = 0; at < cable_count * COUNT_OF(devices) * COUNT_OF(systems); at += step) {
        point.cable = cables[at / (COUNT_OF(devices) * COUNT_OF(systems))];
        point.device = devices[at / COUNT_OF(systems) % COUNT_OF(devices)];
        point.residual_ma = point.device.kind == DEVICE_RCBO ? 100 : 0;
        point.system = systems[at % COUNT_OF(systems)];
        point.before_mohm = usual_before_mohm(point.system);
        point.load_ma = point.device.rating_a * 800;
        const double *sizes_mm2;
        const int size_count = sweep_sizes(&point.cable, &sizes_mm2);
        struct SweepFacts thinner[COUNT_OF(lengths_mm)] = {{0}};
        struct SweepFacts chosen[COUNT_OF(lengths_mm)];
        point.size_mm2 = 0;
        for (int i = 0; i < COUNT_OF(lengths_mm); i++) {
            point.length_mm = lengths_mm[i];
            chosen[i] = sweep_plan(&counts, &point);
            ck_assert_int_eq(chosen[i].option_count, size_count);
        }
        for (int size = 0; size < size_count; size++) {
            point.size_mm2 = sizes_mm2[size];
            struct SweepFacts shorter = {0};
            for (int i = 0; i < COUNT_OF(lengths_mm); i++) {
                point.length_mm = lengths_mm[i];
                const struct SweepFacts facts = sweep_plan(&counts, &point);
                sweep_hold(facts.planned, &point, "no plan");
                option_is(&point, &chosen[i], &facts);
                if (i > 0) {
                    longer_is_worse(&point, &shorter, &facts);
                }
                if (size > 0) {
                    thicker_is_better(&point, &thinner[i], &facts);
                }
                shorter = thinner[i] = facts;
            }
        }
    }
    tell("sizes and lengths", &counts, 12000);
}
END_TEST

/* From a weak supply to a stiff one: what was cut off in time still is. */
START_TEST(lower_loop_never_spoils_disconnection)
{
    static const int before_mohm[] = {900000, 400000, 60000, 8000, 2000, 1000, 500, 350, 200, 100, 50, 10};
    static const int lengths_mm[] = {5000, 50000, 200000};
    const struct SweepCable *cables;
    const struct SweepDevice *devices;
    const int cable_count = sweep_cables(&cables);
    const int device_count = sweep_devices(&devices);
    const int step = stride(5);
    struct SweepCounts counts = {0};
    struct SweepCase point = sweep_ordinary();
    for (int at = 0; at < cable_count * device_count; at += step) {
        point.cable = cables[at / device_count];
        point.device = devices[at % device_count];
        point.size_mm2 = 10;
        point.length_mm = lengths_mm[at % COUNT_OF(lengths_mm)];
        point.system = systems[at / COUNT_OF(lengths_mm) % COUNT_OF(systems)];
        point.feeds = (enum Feeds)(at / 9 % FEEDS_COUNT);
        point.residual_ma = point.device.kind == DEVICE_RCBO ? (at % 2 == 0 ? 30 : 300) : 0;
        point.time_delayed = at % 4 == 1;
        bool cut_off = false;
        double current_a = 0;
        for (int i = 0; i < COUNT_OF(before_mohm); i++) {
            if (point.system == SYSTEM_TT && before_mohm[i] < 100) {
                continue; /* no electrode is that good, and the reader refuses it */
            }
            point.before_mohm = before_mohm[i];
            const struct SweepFacts facts = sweep_plan(&counts, &point);
            sweep_hold(!cut_off || facts.disconnection == CHECK_PASS, &point, "a lower loop spoils disconnection");
            sweep_hold(facts.readings.zs_hot_ohm <= 0 || facts.readings.fault_far_a > current_a, &point,
                       "a lower loop lets less flow");
            cut_off = facts.disconnection == CHECK_PASS;
            current_a = facts.readings.fault_far_a;
        }
    }
    tell("loops before the run", &counts, 8000);
}
END_TEST

/* A larger fault current never makes do with a smaller cable, and never passes where a smaller one failed. */
START_TEST(larger_fault_current_never_helps)
{
    static const int fault_a[] = {1000, 1500, 3000, 6000, 10000, 16000, 50000};
    static const int breaking_a[] = {0, 6000, 10000};
    const struct SweepCable *cables;
    const struct SweepDevice *devices;
    const int cable_count = sweep_cables(&cables);
    const int device_count = sweep_devices(&devices);
    const int step = stride(5);
    struct SweepCounts counts = {0};
    struct SweepCase point = sweep_ordinary();
    for (int at = 0; at < cable_count * device_count; at += step) {
        point.cable = cables[at / device_count];
        point.device = devices[at % device_count];
        point.system = at % 3 == 0 ? SYSTEM_TN_S : SYSTEM_TN_C_S;
        point.residual_ma = point.device.kind == DEVICE_RCBO ? 30 : 0;
        point.breaking_a = breaking_a[at / 2 % COUNT_OF(breaking_a)];
        point.load_ma = 1000;
        double needed_mm2 = 0;
        bool passed = true;
        for (int i = 0; i < COUNT_OF(fault_a); i++) {
            point.fault_a = fault_a[i];
            const struct SweepFacts facts = sweep_plan(&counts, &point);
            sweep_hold(passed || !facts.pass, &point, "a larger fault current passes where a smaller one does not");
            sweep_hold(!facts.pass || facts.size_mm2 >= needed_mm2, &point,
                       "a larger fault current makes do with less");
            passed = facts.pass;
            needed_mm2 = facts.pass ? facts.size_mm2 : needed_mm2;
        }
    }
    tell("fault currents", &counts, 5000);
}
END_TEST

/* Every use, kind of circuit, residual device, far end and bond, on every cable. */
START_TEST(every_use_and_earth)
{
    static const struct {
        int residual_ma;
        bool time_delayed;
        const char *type;
    } residuals[] = {{0, false, NULL}, {30, false, "A"}, {30, false, "AC"}, {100, true, NULL}, {300, false, "B"}};
    const struct SweepCable *cables;
    const int cable_count = sweep_cables(&cables);
    const int all = USE_COUNT * FEEDS_COUNT * COUNT_OF(residuals) * COUNT_OF(systems) * 2 * 2 * 2;
    const int step = stride(11);
    struct SweepCounts counts = {0};
    struct SweepCase point = sweep_ordinary();
    for (int at = 0; at < cable_count * all; at += step) {
        int rest = at % all;
        point.cable = cables[at / all];
        point.use = (enum Use)(rest % USE_COUNT);
        rest /= USE_COUNT;
        point.feeds = (enum Feeds)(rest % FEEDS_COUNT);
        rest /= FEEDS_COUNT;
        point.residual_ma = residuals[rest % COUNT_OF(residuals)].residual_ma;
        point.time_delayed = residuals[rest % COUNT_OF(residuals)].time_delayed;
        point.residual_type = residuals[rest % COUNT_OF(residuals)].type;
        point.device = (struct SweepDevice){point.residual_ma > 0 ? DEVICE_RCBO : DEVICE_MCB, CURVE_B, 20};
        rest /= COUNT_OF(residuals);
        point.system = systems[rest % COUNT_OF(systems)];
        point.before_mohm = usual_before_mohm(point.system);
        rest /= COUNT_OF(systems);
        point.island = rest % 2 == 1;
        point.extraneous = rest / 2 % 2 == 1;
        point.board_residual_ma = rest / 4 % 2 == 1 ? 30 : 0;
        point.size_mm2 = at % 7 == 0 ? 0 : 10;
        point.electrode_ohm = at % 5 == 0 ? 2000 : 40;
        (void)sweep_plan(&counts, &point);
    }
    tell("uses and earths", &counts, 6000);
}
END_TEST

/* Cables as no one would order them: every type, cores of 1 to 5, every protective conductor, on one and three lines.
 * Each is a plan or an error, and the types that no table rates are errors. */
START_TEST(every_cable_that_can_be_written)
{
    static const double sizes_mm2[] = {0, 1, 6, 300};
    const int all = CABLE_COUNT * 5 * CPC_COUNT * 2 * COUNT_OF(sizes_mm2);
    struct SweepCounts counts = {0};
    struct SweepCase point = sweep_ordinary();
    for (int at = 0; at < all; at++) {
        point.size_mm2 = sizes_mm2[at % COUNT_OF(sizes_mm2)];
        int rest = at / COUNT_OF(sizes_mm2);
        point.cable.phases = rest % 2 == 0 ? 1 : 3;
        point.cable.cpc = (enum Cpc)(rest / 2 % CPC_COUNT);
        rest /= 2 * CPC_COUNT;
        point.cable.cores = 1 + rest % 5;
        point.cable.type = (enum CableType)(rest / 5);
        const struct SweepFacts facts = sweep_plan(&counts, &point);
        const bool unrated = point.cable.type == CABLE_BS8436 || point.cable.type == CABLE_EN50288 ||
                             point.cable.type == CABLE_BS6004_SINGLE;
        sweep_hold(!facts.planned || !unrated, &point, "a cable that no table rates is planned");
        sweep_hold(!facts.planned || point.cable.cores >= 2, &point, "a single core feeds a building");
    }
    ck_assert_int_gt(counts.passed, 50);
    ck_assert_int_gt(counts.failed, 50);
    ck_assert_int_gt(counts.refused, all / 3);
    printf("cables: %d plans: %ld pass, %ld fail a check, %ld refused\n", all, counts.passed, counts.failed,
           counts.refused);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("sweep");
    TCase *sweeps = tcase_create("sweeps");
    tcase_set_timeout(sweeps, 300);
    tcase_add_test(sweeps, choose_for_every_device);
    tcase_add_test(sweeps, slower_curves_need_no_less);
    tcase_add_test(sweeps, every_size_and_length);
    tcase_add_test(sweeps, lower_loop_never_spoils_disconnection);
    tcase_add_test(sweeps, larger_fault_current_never_helps);
    tcase_add_test(sweeps, every_use_and_earth);
    tcase_add_test(sweeps, every_cable_that_can_be_written);
    suite_add_tcase(suite, sweeps);
    return run_suite(suite);
}
