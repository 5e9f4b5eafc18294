/* Relations that hold whatever the figures are, over routes made up at random with a fixed seed:
 * a longer run never drops less; one stretch more never raises the capacity; the order of stretches never changes it;
 * cutting a stretch in two changes nothing; a larger cable never drops more; a chosen size passes every check and the
 * next smaller one does not. */
#include "run_suite.h"

#include "wend/wend.h"

#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

enum { ROUTES = 400, STRETCHES_MOST = 14, TEXT_MOST = 16384 };

struct Stretch {
    const char *way;
    int length_mm, air_degc, insulated; /* insulated: whole length surrounded */
    int beside, depth_mm, sun;
    const char *wall;
};
struct Made {
    int count;
    struct Stretch stretches[STRETCHES_MOST + 1];
    int current_a, cores, phases, size; /* size 0: choose */
    int power_factor_percent;           /* 0: not given */
    int terminals;
};

static uint32_t random_next(uint32_t *state)
{
    *state ^= *state << 13;
    *state ^= *state >> 17;
    *state ^= *state << 5;
    return *state;
}

static int between(uint32_t *state, int low, int high)
{
    return low + (int)(random_next(state) % (uint32_t)(high - low + 1));
}

static struct Stretch make_stretch(uint32_t *state)
{
    static const char *const ways[] = {"wall",   "fence",    "beam", "loft-void", "tray",
                                       "ladder", "catenary", "duct", "buried",    "through-wall"};
    static const char *const walls[] = {"brick", "cavity", "insulated-cavity", "stone"};
    struct Stretch made = {.way = ways[between(state, 0, 9)],
                           .length_mm = between(state, 200, 40000),
                           .air_degc = between(state, 20, 40),
                           .wall = walls[between(state, 0, 3)]};
    const bool in_ground = strcmp(made.way, "duct") == 0 || strcmp(made.way, "buried") == 0;
    if (strcmp(made.way, "through-wall") == 0) {
        made.length_mm = between(state, 100, 900);
    }
    if (in_ground) {
        made.depth_mm = between(state, 450, 1500);
    } else {
        made.sun = strcmp(made.way, "fence") == 0 && between(state, 0, 2) == 0;
    }
    /* At half a metre and over the factor no longer depends on the length, so the order of stretches cannot matter. */
    made.insulated = strcmp(made.way, "loft-void") == 0 && made.length_mm >= 1000 && between(state, 0, 1) == 0;
    made.beside = strcmp(made.way, "through-wall") == 0 ? 0 : between(state, 0, 3);
    return made;
}

static struct Made make_route(uint32_t seed)
{
    uint32_t state = seed * 2654435761U + 1;
    struct Made made = {.count = between(&state, 1, STRETCHES_MOST)};
    for (int i = 0; i < made.count; i++) {
        made.stretches[i] = make_stretch(&state);
    }
    made.current_a = between(&state, 1, 60);
    made.phases = between(&state, 0, 2) == 0 ? 3 : 1;
    made.cores = made.phases == 3 ? 4 : 3;
    made.power_factor_percent = between(&state, 0, 1) == 0 ? 0 : between(&state, 60, 100);
    made.terminals = between(&state, 0, 1) == 0 ? 70 : 90;
    return made;
}

/* The route as a surveyor would write it. */
static void write_route(const struct Made *made, char text[TEXT_MOST])
{
    int at = snprintf(text, TEXT_MOST,
                      "wend: 1\njob: {title: made}\nsupply: {system: TN-S, loop-impedance: 0.3 ohm, phases: %d}\n"
                      "conditions: {terminals: %d degC}\nruns:\n  feeder:\n    load: {current: %d A",
                      made->phases, made->terminals, made->current_a);
    if (made->power_factor_percent > 0) {
        at += snprintf(text + at, (size_t)(TEXT_MOST - at), ", power-factor: %d.%02d", made->power_factor_percent / 100,
                       made->power_factor_percent % 100);
    }
    at += snprintf(text + at, (size_t)(TEXT_MOST - at), "}\n    cable: {type: BS5467, cores: %d", made->cores);
    if (made->size > 0) {
        at += snprintf(text + at, (size_t)(TEXT_MOST - at), ", size: %d mm2", made->size);
    }
    at += snprintf(text + at, (size_t)(TEXT_MOST - at),
                   "}\n    start: {tail: 0 m}\n    finish: {tail: 0 m}\nsegments:\n");
    for (int i = 0; i < made->count; i++) {
        const struct Stretch *stretch = &made->stretches[i];
        at += snprintf(text + at, (size_t)(TEXT_MOST - at), "  - {name: s%d, way: %s, length: %d mm, air: %d degC%s%s",
                       i, stretch->way, stretch->length_mm, stretch->air_degc,
                       stretch->insulated ? ", insulation: surrounded" : "", stretch->sun ? ", sun: full" : "");
        if (stretch->depth_mm > 0) {
            at += snprintf(text + at, (size_t)(TEXT_MOST - at), ", depth: %d mm", stretch->depth_mm);
        }
        if (strcmp(stretch->way, "duct") == 0) {
            at += snprintf(text + at, (size_t)(TEXT_MOST - at), ", duct: {size: 63 mm}");
        }
        if (strcmp(stretch->way, "through-wall") == 0) {
            at += snprintf(text + at, (size_t)(TEXT_MOST - at), ", wall: %s", stretch->wall);
        }
        if (stretch->beside > 0) {
            at += snprintf(text + at, (size_t)(TEXT_MOST - at), ", beside: {circuits: %d}", stretch->beside);
        }
        at += snprintf(text + at, (size_t)(TEXT_MOST - at), "}\n");
    }
    ck_assert_int_lt(at, TEXT_MOST);
}

struct Result {
    double capacity_a, drop_percent, expected_percent;
};

static struct Wend *plan_made(const struct Made *made)
{
    char text[TEXT_MOST];
    write_route(made, text);
    struct Wend *wend = wend_plan("made", text, strlen(text));
    ck_assert_msg(wend_result(wend) != NULL, "%s\n%s", wend_diagnostics_text(wend, "made.yaml"), text);
    const char *fault = plan_check(wend_result(wend));
    ck_assert_msg(fault == NULL, "%s\n%s", fault, text);
    return wend;
}

static struct Result result_of(const struct Made *made)
{
    struct Wend *wend = plan_made(made);
    const struct PlanRun *run = &wend_result(wend)->runs[0];
    const struct Result result = {run->capacity_a, run->drop_percent, run->drop_at_load_temperature_percent};
    wend_free(wend);
    return result;
}

static void same(double a, double b, const char *what, int seed)
{
    ck_assert_msg(fabs(a - b) <= 1e-9 * fmax(fabs(a), fabs(b)), "route %d: %s: %.12g and %.12g", seed, what, a, b);
}

START_TEST(longer_never_drops_less)
{
    for (int seed = 1; seed <= ROUTES; seed++) {
        struct Made made = make_route((uint32_t)seed);
        made.size = 10;
        const struct Result before = result_of(&made);
        made.stretches[seed % made.count].length_mm += 1 + seed * 37 % 5000;
        const struct Result after = result_of(&made);
        ck_assert_msg(after.drop_percent > before.drop_percent, "route %d", seed);
    }
}
END_TEST

START_TEST(one_stretch_more_never_carries_more)
{
    for (int seed = 1; seed <= ROUTES; seed++) {
        struct Made made = make_route((uint32_t)seed);
        made.size = 10;
        const struct Result before = result_of(&made);
        uint32_t state = (uint32_t)seed * 977 + 5;
        const int at = between(&state, 0, made.count);
        memmove(&made.stretches[at + 1], &made.stretches[at], (size_t)(made.count - at) * sizeof made.stretches[0]);
        made.stretches[at] = make_stretch(&state);
        made.count++;
        const struct Result after = result_of(&made);
        ck_assert_msg(after.capacity_a <= before.capacity_a + 1e-9, "route %d: %.9g, then %.9g", seed,
                      before.capacity_a, after.capacity_a);
        ck_assert_msg(after.drop_percent > before.drop_percent, "route %d", seed);
    }
}
END_TEST

START_TEST(order_never_matters)
{
    for (int seed = 1; seed <= ROUTES; seed++) {
        struct Made made = make_route((uint32_t)seed);
        made.size = 16;
        /* A wall of two holes in a row is thicker than either: keep holes apart from each other in both orders. */
        int holes = 0;
        for (int i = 0; i < made.count; i++) {
            holes += strcmp(made.stretches[i].way, "through-wall") == 0;
        }
        if (holes > 1) {
            continue;
        }
        const struct Result before = result_of(&made);
        uint32_t state = (uint32_t)seed * 31 + 7;
        for (int i = made.count - 1; i > 0; i--) {
            const int j = between(&state, 0, i);
            const struct Stretch kept = made.stretches[i];
            made.stretches[i] = made.stretches[j];
            made.stretches[j] = kept;
        }
        const struct Result after = result_of(&made);
        same(before.capacity_a, after.capacity_a, "capacity", seed);
        same(before.drop_percent, after.drop_percent, "drop", seed);
    }
}
END_TEST

START_TEST(cutting_a_stretch_changes_nothing)
{
    for (int seed = 1; seed <= ROUTES; seed++) {
        struct Made made = make_route((uint32_t)seed);
        made.size = 6;
        const struct Result before = result_of(&made);
        const int at = seed % made.count;
        memmove(&made.stretches[at + 1], &made.stretches[at], (size_t)(made.count - at) * sizeof made.stretches[0]);
        made.stretches[at].length_mm /= 2;
        made.stretches[at + 1].length_mm -= made.stretches[at].length_mm;
        made.count++;
        const struct Result after = result_of(&made);
        same(before.capacity_a, after.capacity_a, "capacity", seed);
        same(before.drop_percent, after.drop_percent, "drop", seed);
        same(before.expected_percent, after.expected_percent, "expected drop", seed);
    }
}
END_TEST

START_TEST(larger_never_drops_more)
{
    static const int sizes[] = {4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300};
    for (int seed = 1; seed <= ROUTES; seed += 5) {
        struct Made made = make_route((uint32_t)seed);
        double before = 1e9;
        for (int i = 0; i < (int)(sizeof sizes / sizeof sizes[0]); i++) {
            made.size = sizes[i];
            const double drop = result_of(&made).drop_percent;
            ck_assert_msg(drop <= before, "route %d: %d mm2 drops %g after %g", seed, sizes[i], drop, before);
            before = drop;
        }
    }
}
END_TEST

START_TEST(chosen_passes_and_next_smaller_does_not)
{
    int passed = 0;
    for (int seed = 1; seed <= ROUTES; seed++) {
        struct Made made = make_route((uint32_t)seed);
        struct Wend *wend = plan_made(&made);
        const struct PlanRun *run = &wend_result(wend)->runs[0];
        ck_assert_int_eq(run->option_count, 16);
        ck_assert_int_eq(wend_status(wend), run->pass ? WEND_PASSES : WEND_CHECK_FAILS);
        for (int i = 0; i < run->option_count; i++) {
            const struct Option *option = &run->options[i];
            ck_assert_msg(option->pass == (option->fails[0] == '\0'), "route %d", seed);
            if (run->pass && option->size_mm2 < run->size_mm2) {
                ck_assert_msg(!option->pass && option->why[0] != '\0', "route %d", seed);
            }
        }
        passed += run->pass;
        wend_free(wend);
    }
    ck_assert_int_gt(passed, ROUTES / 2); /* else the routes made here test nothing */
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("relations");
    TCase *relations = tcase_create("relations");
    tcase_set_timeout(relations, 120);
    tcase_add_test(relations, longer_never_drops_less);
    tcase_add_test(relations, one_stretch_more_never_carries_more);
    tcase_add_test(relations, order_never_matters);
    tcase_add_test(relations, cutting_a_stretch_changes_nothing);
    tcase_add_test(relations, larger_never_drops_more);
    tcase_add_test(relations, chosen_passes_and_next_smaller_does_not);
    suite_add_tcase(suite, relations);
    return run_suite(suite);
}
