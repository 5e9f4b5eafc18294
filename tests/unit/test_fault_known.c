/* One more known value. What a survey leaves out is taken at its worst; told that worst value, a check that passed
 * passes still and one that failed fails still, and a check that was not made may go either way. Over routes made up at
 * random with a fixed seed. */
#include "fault_rig.h"
#include "said.h"

#include <stdio.h>

enum { ROUTES = 600 };

static uint32_t next(uint32_t *state)
{
    *state ^= *state << 13;
    *state ^= *state >> 17;
    *state ^= *state << 5;
    return *state;
}

static int between(uint32_t *state, int low, int high)
{
    return low + (int)(next(state) % (uint32_t)(high - low + 1));
}

/* A route whose supply and device may leave out the fault current, the breaking capacity and the let-through. */
struct Known {
    char supply[200], device[200], cable[120], segments[80];
    int fault_a, breaks_a, let_through_a2s; /* 0: left out */
    int loop_mohm, rating_a, curve, size;
    bool residual, armour;
};

static struct Known known_route(uint32_t seed)
{
    static const int ratings_a[] = {6, 16, 20, 32, 40, 63};
    static const int breaks_a[] = {0, 0, 3000, 6000, 10000, 16000};
    uint32_t state = seed * 2654435761U + 1;
    struct Known made = {.loop_mohm = between(&state, 50, 900),
                         .rating_a = ratings_a[between(&state, 0, 5)],
                         .curve = between(&state, 0, 2),
                         .size = between(&state, 0, 5),
                         .residual = between(&state, 0, 1) == 0,
                         .armour = between(&state, 0, 1) == 0,
                         .breaks_a = breaks_a[between(&state, 0, 5)]};
    made.fault_a = between(&state, 0, 2) == 0 ? 0 : between(&state, 6, 250) * 100;
    snprintf(made.segments, sizeof made.segments, "{name: a, way: wall, length: %d m}", between(&state, 3, 90));
    return made;
}

static struct Wend *plan_known(struct Known *made)
{
    static const char *const sizes[] = {"1.5", "2.5", "4", "6", "16", "35"};
    char fault[60] = "";
    char device[120] = "";
    int at = 0;
    if (made->fault_a > 0) {
        snprintf(fault, sizeof fault, ", fault-current: %d A", made->fault_a);
    }
    if (made->residual) {
        at += snprintf(device + at, sizeof device - (size_t)at, ", residual: 30 mA");
    }
    if (made->breaks_a > 0) {
        at += snprintf(device + at, sizeof device - (size_t)at, ", breaking-capacity: %d A", made->breaks_a);
    }
    if (made->let_through_a2s > 0) {
        snprintf(device + at, sizeof device - (size_t)at, ", let-through: %d A2s", made->let_through_a2s);
    }
    snprintf(made->supply, sizeof made->supply, "system: TN-S, loop-impedance: %d mohm%s", made->loop_mohm, fault);
    snprintf(made->device, sizeof made->device, "kind: %s, curve: %c, rating: %d A%s", made->residual ? "RCBO" : "MCB",
             "BCD"[made->curve], made -> rating_a, device);
    snprintf(made->cable, sizeof made->cable, "type: BS5467, cores: 3, size: %s mm2, cpc: %s", sizes[made->size],
             made->armour ? "armour" : "core");
    const struct RigRoute route = {.supply = made->supply,
                                   .load = "current: 5 A",
                                   .device = made->device,
                                   .cable = made->cable,
                                   .segments = made->segments};
    return rig_plan(&route);
}

/* Checks that the value bears on. */
static const char *const checks[] = {"disconnection", "protective-conductor", "live-conductors", "breaking-capacity"};
enum { CHECKS = (int)(sizeof checks / sizeof checks[0]) };

struct Turns {
    int kept_pass, kept_fail, settled;
};

/* No pass of `before` is a fail of `after`, and no fail a pass. */
static void holds(uint32_t seed, const struct Wend *before, const struct Wend *after, struct Turns *turns)
{
    for (int i = 0; i < CHECKS; i++) {
        const struct Check *was = rig_found(before, checks[i]);
        const struct Check *is = rig_found(after, checks[i]);
        ck_assert_msg(was->unknown || was->result == is->result, "route %u, %s: %s\nthen: %s", seed, checks[i],
                      plainly(was->text), plainly(is->text));
        turns->kept_pass += !was->unknown && is->result == CHECK_PASS;
        turns->kept_fail += !was->unknown && is->result == CHECK_FAIL;
        turns->settled += was->unknown && !is->unknown;
    }
}

static void turned(const struct Turns *turns)
{
    ck_assert_int_gt(turns->kept_pass, 20);
    ck_assert_int_gt(turns->kept_fail, 5);
    ck_assert_int_gt(turns->settled, 5);
}

/* Without a breaking capacity 10 kA is taken at most, where no more than that flows. */
START_TEST(breaking_capacity_at_its_worst)
{
    struct Turns turns = {0};
    for (uint32_t seed = 1; seed <= ROUTES; seed++) {
        struct Known made = known_route(seed);
        made.breaks_a = 0;
        if (made.fault_a > 10000) {
            continue;
        }
        struct Wend *before = plan_known(&made);
        made.breaks_a = 10000;
        struct Wend *after = plan_known(&made);
        holds(seed, before, after, &turns);
        wend_free(before);
        wend_free(after);
    }
    turned(&turns);
}
END_TEST

/* Without a fault current as much is taken as the device breaks; a large one, of which a class says nothing else. */
START_TEST(fault_current_at_its_worst)
{
    struct Turns turns = {0};
    for (uint32_t seed = 1; seed <= ROUTES; seed++) {
        struct Known made = known_route(seed);
        made.fault_a = 0;
        struct Wend *before = plan_known(&made);
        made.fault_a = made.breaks_a > 0 ? made.breaks_a : 10000;
        struct Wend *after = plan_known(&made);
        if (1.1 * 230 / made.loop_mohm * 1000 <= made.fault_a) {
            holds(seed, before, after, &turns);
        }
        wend_free(before);
        wend_free(after);
    }
    ck_assert_int_gt(turns.kept_pass, 20);
    ck_assert_int_gt(turns.settled, 5);
}
END_TEST

/* Told as the maker's figure what the check was made with, the check comes out as it was. */
START_TEST(let_through_at_its_worst)
{
    struct Turns turns = {0};
    for (uint32_t seed = 1; seed <= ROUTES; seed++) {
        struct Known made = known_route(seed);
        struct Wend *before = plan_known(&made);
        const struct Check *live = rig_found(before, "live-conductors");
        if (live->unknown || live->value < 100 || live->value > 100e6) {
            wend_free(before);
            continue;
        }
        made.let_through_a2s = (int)(live->value + 0.5);
        struct Wend *after = plan_known(&made);
        ck_assert_int_eq(rig_found(after, "live-conductors")->result, live->result);
        turns.kept_pass += live->result == CHECK_PASS;
        turns.kept_fail += live->result == CHECK_FAIL;
        wend_free(before);
        wend_free(after);
    }
    ck_assert_int_gt(turns.kept_pass, 20);
    ck_assert_int_gt(turns.kept_fail, 5);
}
END_TEST

/* More fault current never turns a fail into anything else, nor what could not be shown into a pass. */
START_TEST(more_fault_current_never_helps)
{
    for (uint32_t seed = 1; seed <= ROUTES; seed++) {
        struct Known made = known_route(seed);
        made.fault_a = made.fault_a > 0 ? made.fault_a : 1500;
        struct Wend *before = plan_known(&made);
        made.fault_a += made.fault_a / 3 + 1;
        struct Wend *after = plan_known(&made);
        for (int i = 0; i < CHECKS; i++) {
            const struct Check *was = rig_found(before, checks[i]);
            const struct Check *is = rig_found(after, checks[i]);
            ck_assert_msg(was->result != CHECK_FAIL || is->result == CHECK_FAIL, "route %u, %s: %s\nthen: %s", seed,
                          checks[i], plainly(was->text), plainly(is->text));
            ck_assert_msg(!was->unknown || is->result != CHECK_PASS, "route %u, %s: %s\nthen: %s", seed, checks[i],
                          plainly(was->text), plainly(is->text));
        }
        wend_free(before);
        wend_free(after);
    }
}
END_TEST

TCase *fault_known(void)
{
    TCase *tests = tcase_create("one more known value");
    tcase_set_timeout(tests, 120);
    tcase_add_test(tests, breaking_capacity_at_its_worst);
    tcase_add_test(tests, fault_current_at_its_worst);
    tcase_add_test(tests, let_through_at_its_worst);
    tcase_add_test(tests, more_fault_current_never_helps);
    return tests;
}
