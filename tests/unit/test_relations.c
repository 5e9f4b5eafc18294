/* Relations that hold whatever the figures are, over routes made up at random with a fixed seed:
 * a longer run never drops less; one stretch more never raises the capacity; the order of stretches never changes it,
 * but for the way into the ground and out of it;
 * cutting a stretch in two changes nothing; a loaded circuit more, of the file or beside it, never helps any run; the
 * order of the runs in the file says nothing of their sizes; a larger cable and a load
 * less never drop more; a chosen size passes every check and the next smaller one does not. */
#include "made_route.h"
#include "run_suite.h"
#include "said.h"
#include "sweep_depth.h"

#include "library/library_stages.h"
#include "wend/wend.h"

#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>

#define ROUTES sweep_depth(200, 400)

struct Result {
    double capacity_a, drop_percent, expected_percent;
};

static struct Wend *plan_made(const struct MadeRoute *made)
{
    char text[MADE_TEXT_MOST];
    made_write(made, text);
    struct Wend *wend = wend_plan("made", text, strlen(text));
    ck_assert_msg(wend_result(wend) != NULL, "%s\n%s", wend_diagnostics_printed(wend_diagnostics(wend), "made.yaml"),
                  text);
    const char *fault = plan_check(wend_result(wend));
    ck_assert_msg(fault == NULL, "%s\n%s", fault, text);
    return wend;
}

static struct Result result_of(const struct MadeRoute *made)
{
    struct Wend *wend = plan_made(made);
    const struct PlanRun *run = &wend_result(wend)->runs[0];
    const struct Result result = {run->capacity_a, run->drop_percent, run->drop_at_load_temperature_percent};
    wend_free(wend);
    return result;
}

static void same(double a, double b, const char *what, int seed)
{
    ck_assert_msg(isfinite(a) && isfinite(b) && fabs(a - b) <= 1e-9 * fmax(fabs(a), fabs(b)),
                  "route %d: %s: %.12g and %.12g", seed, what, a, b);
}

START_TEST(longer_never_drops_less)
{
    for (int seed = 1; seed <= ROUTES; seed++) {
        struct MadeRoute made = made_route((uint32_t)seed);
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
        struct MadeRoute made = made_route((uint32_t)seed);
        made.size = 10;
        const struct Result before = result_of(&made);
        uint32_t state = (uint32_t)seed * 977 + 5;
        const int at = made_between(&state, 0, made.count);
        memmove(&made.stretches[at + 1], &made.stretches[at], (size_t)(made.count - at) * sizeof made.stretches[0]);
        made.stretches[at] = made_stretch(&state);
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
        struct MadeRoute made = made_route((uint32_t)seed);
        made.size = 16;
        for (int i = 0; i < made.count; i++) { /* what lies beside what decides how often the cable goes down and up */
            made.stretches[i].more = made.stretches[i].depth_mm > 0 ? ", legs: included" : NULL;
        }
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
            const int j = made_between(&state, 0, i);
            const struct MadeStretch kept = made.stretches[i];
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
        struct MadeRoute made = made_route((uint32_t)seed);
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

/* Insulation that was cut with its stretch: a part in each half, or all of it in one. */
START_TEST(cutting_insulation_never_helps)
{
    for (int seed = 1; seed <= ROUTES; seed += 2) {
        struct MadeRoute made = made_route((uint32_t)seed);
        uint32_t state = (uint32_t)seed * 131 + 11;
        char whole[64];
        char part[2][64];
        const int insulated_mm = made_between(&state, 60, 700);
        const int first_mm = made_between(&state, 1, insulated_mm - 1);
        struct MadeStretch *cut = &made.stretches[made.count];
        *cut =
            (struct MadeStretch){.way = "loft-void", .length_mm = 3000, .air_degc = 30, .wall = "brick", .more = whole};
        snprintf(whole, sizeof whole, ", insulation: surrounded, insulated-length: %d mm", insulated_mm);
        made.size = 6;
        made.count++;
        const struct Result before = result_of(&made);
        if (made.count > MADE_STRETCHES_MOST) {
            continue;
        }
        cut[1] = cut[0];
        cut[0].length_mm = cut[1].length_mm = 1500;
        for (int i = 0; i < 2; i++) {
            snprintf(part[i], sizeof part[i], ", insulation: surrounded, insulated-length: %d mm",
                     i == 0 ? first_mm : insulated_mm - first_mm);
            cut[i].more = part[i];
        }
        made.count++;
        same(before.capacity_a, result_of(&made).capacity_a, "capacity of insulation in two", seed);
    }
}
END_TEST

START_TEST(larger_never_drops_more)
{
    static const int sizes[] = {4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300};
    for (int seed = 1; seed <= ROUTES; seed += 5) {
        struct MadeRoute made = made_route((uint32_t)seed);
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

/* What a check says of a run, from bad to good; one that is open is unsettled, whatever else stands there. */
static enum Verdict says(const struct Check *check)
{
    return check->result == CHECK_FAIL ? VERDICT_FAIL : check->open ? VERDICT_OPEN : VERDICT_PASS;
}

static const struct Check *check_of(const struct PlanRun *run, const char *id)
{
    for (int i = 0; i < run->check_count; i++) {
        if (strcmp(run->checks[i].id, id) == 0) {
            return &run->checks[i];
        }
    }
    return NULL;
}

/* How hard it pulls is not asked where the cables do not go in: then the fill fails in its place. */
static bool is_past_pulling(const struct PlanRun *run, const char *id)
{
    bool fills = false;
    for (int i = 0; i < run->check_count; i++) {
        fills = fills || (run->checks[i].result == CHECK_FAIL && strncmp(run->checks[i].id, "duct-fill:", 10) == 0);
    }
    return fills && strncmp(id, "pull:", 5) == 0;
}

/* Further runs along the whole route, of given sizes: were they chosen too, a neighbour might have one taken larger,
 * which makes the sizes of the group alike and the rest carry more (Appendix 4, 2.3.3). */
static void write_runs(char *text, size_t room, int count, uint32_t *state)
{
    static const int sizes[] = {4, 6, 10, 16, 35};
    int at = 0;
    text[0] = '\0';
    for (int i = 0; i < count; i++) {
        at += snprintf(text + at, room - (size_t)at,
                       "  more%d: {load: {current: %d A}, cable: {type: BS5467, cores: 4, size: %d mm2}}\n", i,
                       made_between(state, 1, 40), sizes[made_between(state, 0, 4)]);
    }
}

static void write_beside(char *text, size_t room, const char *way, int circuits, uint32_t *state)
{
    static const char *const in_air[] = {"bunched", "single-layer", "spaced"};
    static const char *const in_ground[] = {"bunched", "spaced", "duct-touching", "duct-spaced, gap: 300 mm"};
    static const char *const lies[] = {"bunched", "single-layer", "spaced"};
    const bool duct = strcmp(way, "duct") == 0;
    const bool pipe = strcmp(way, "conduit") == 0 || strcmp(way, "trunking") == 0;
    const bool ground = duct || strcmp(way, "buried") == 0;
    const char *arrangement = ground ? in_ground[made_between(state, 0, 3)] : in_air[made_between(state, 0, 2)];
    const char *lie = lies[made_between(state, 0, 2)];
    int at = 0;
    text[0] = '\0';
    const int diameter_mm = made_between(state, 0, 20); /* under 5: not surveyed */
    if (pipe) {
        static const int sizes_mm[] = {32, 40, 50, 63};
        const int size_mm = sizes_mm[made_between(state, 0, 3)];
        at = strcmp(way, "conduit") == 0 ? snprintf(text, room, ", size: %d mm", size_mm)
                                         : snprintf(text, room, ", size: %d x %d mm", size_mm, size_mm);
    } else if (!duct) {
        at = snprintf(text, room, ", arrangement: %s", lie);
    }
    if (circuits > 0) {
        at += snprintf(text + at, room - (size_t)at, ", beside: {circuits: %d, arrangement: %s", circuits, arrangement);
        at += (duct || pipe) && diameter_mm >= 5
                  ? snprintf(text + at, room - (size_t)at, ", diameter: %d mm", diameter_mm)
                  : 0;
        snprintf(text + at, room - (size_t)at, "}");
    }
}

struct Compared {
    const struct PlanRun *before, *after;
    const char *what;
    int seed;
};

/* Of one size: a larger one that the neighbour makes the program take may drop less, and fill more. */
static void no_check_is_helped(const struct Compared *runs)
{
    const struct PlanRun *before = runs->before;
    ck_assert_msg(runs->after->capacity_a <= before->capacity_a + 1e-9, "route %d, %s, run %s: %.9g, then %.9g",
                  runs->seed, runs->what, before->settled->name, before->capacity_a, runs->after->capacity_a);
    for (int i = 0; i < before->check_count; i++) {
        const struct Check *was = &before->checks[i];
        const struct Check *is = check_of(runs->after, was->id);
        ck_assert_msg(is != NULL, "route %d, %s: %s is no longer made", runs->seed, runs->what, was->id);
        ck_assert_msg(is_past_pulling(runs->after, was->id) || says(is) <= says(was),
                      "route %d, %s, run %s: %s\n%s\nthen %s", runs->seed, runs->what, before->settled->name, was->id,
                      plainly(was->text), plainly(is->text));
    }
}

/* A size that did not pass does not now, and the size that is taken is no smaller. */
static void no_size_is_helped(const struct Compared *runs)
{
    const struct PlanRun *before = runs->before;
    for (int i = 0; i < before->option_count; i++) {
        ck_assert_msg(runs->after->options[i].verdict <= before->options[i].verdict,
                      "route %d, %s, run %s, %g mm2: %s %s, then %s %s", runs->seed, runs->what, before->settled->name,
                      before->options[i].size_mm2, plain_ids(&before->options[i].fails),
                      plain_ids(&before->options[i].open), plain_ids(&runs->after->options[i].fails),
                      plain_ids(&runs->after->options[i].open));
    }
    /* where none passes, the one that fails least is shown and not taken */
    ck_assert_msg(!runs->after->pass || runs->after->size_mm2 >= before->size_mm2, "route %d, %s, run %s: %g, then %g",
                  runs->seed, runs->what, before->settled->name, before->size_mm2, runs->after->size_mm2);
}

static void none_is_helped(const struct Plan *before, const struct Plan *after, const char *what, int seed)
{
    for (int r = 0; r < before->run_count; r++) {
        struct Compared runs = {&before->runs[r], NULL, what, seed};
        for (int i = 0; i < after->run_count; i++) {
            if (strcmp(after->runs[i].settled->name, runs.before->settled->name) == 0) {
                runs.after = &after->runs[i];
            }
        }
        ck_assert_ptr_nonnull(runs.after);
        if (!runs.before->rated || runs.before->size_was_given) {
            no_check_is_helped(&runs);
        } else {
            no_size_is_helped(&runs);
        }
        ck_assert_msg(runs.after->verdict <= runs.before->verdict, "route %d, %s, run %s: the verdict", seed, what,
                      runs.before->settled->name);
    }
    ck_assert_msg(after->verdict <= before->verdict, "route %d, %s: the verdict of the plan", seed, what);
}

/* A stretch that cables are drawn or laid into, in the place of what was made; the other ducts hold nothing else. */
static void enclose(struct MadeRoute *made, struct MadeStretch *at, int kind)
{
    static const char *const ways[3] = {"conduit", "trunking", "duct"};
    if (kind >= 3) {
        return;
    }
    *at = (struct MadeStretch){.way = ways[kind], .length_mm = at->length_mm, .air_degc = at->air_degc};
    at->depth_mm = kind == 2 ? 600 : 0;
    for (int i = 0; i < made->count; i++) {
        if (strcmp(made->stretches[i].way, "duct") == 0) {
            made->stretches[i].beside = 0;
        }
    }
}

enum { LASTS = 4 };

START_TEST(one_more_neighbour_never_helps)
{
    static const char *const lasts[LASTS] = {
        "  last: {load: {current: 9 A}, cable: {type: BS5467, cores: 4, size: 10 mm2}}\n",
        "  last: {load: {current: 9 A}, cable: {type: BS5467, cores: 4, size: 95 mm2}}\n",
        "  last: {load: {current: 2 A, phases: 1}, cable: {type: BS5467, cores: 3, size: 1.5 mm2}}\n",
        "  last: {kind: data, cable: {type: EN50288, cores: 8, diameter: 7.5 mm}}\n"};
    int lowered = 0;
    int failed = 0;
    for (int seed = 1; seed <= ROUTES; seed++) {
        struct MadeRoute made = made_route((uint32_t)seed);
        uint32_t state = (uint32_t)seed * 7919 + 3;
        char runs[600];
        char more_runs[800];
        char beside[200];
        char more_beside[200];
        const int others = made_between(&state, 0, 3);
        const int circuits = made_between(&state, 0, 4);
        struct MadeStretch *at = &made.stretches[made_between(&state, 0, made.count - 1)];
        if (strcmp(at->way, "through-wall") == 0) {
            continue;
        }
        enclose(&made, at, made_between(&state, 0, 4));
        made.size = seed % 3 == 0 ? 0 : 10;
        write_runs(runs, sizeof runs, others, &state);
        made.more_runs = runs;
        uint32_t same = state;
        write_beside(beside, sizeof beside, at->way, circuits, &state);
        write_beside(more_beside, sizeof more_beside, at->way, circuits + 1, &same);
        at->beside = 0;
        at->more = beside;
        struct Wend *before = plan_made(&made);
        at->more = more_beside;
        struct Wend *neighbour = plan_made(&made);
        none_is_helped(wend_result(before), wend_result(neighbour), "a circuit beside", seed);
        at->more = beside;
        snprintf(more_runs, sizeof more_runs, "%s%s", runs, lasts[seed % LASTS]);
        made.more_runs = more_runs;
        struct Wend *run = plan_made(&made);
        none_is_helped(wend_result(before), wend_result(run), lasts[seed % LASTS], seed);
        const double carried_a = wend_result(before)->runs[0].capacity_a;
        lowered += made.size > 0 && wend_result(neighbour)->runs[0].capacity_a < carried_a &&
                   wend_result(run)->runs[0].capacity_a < carried_a;
        failed += wend_result(before)->verdict == VERDICT_FAIL;
        wend_free(before);
        wend_free(neighbour);
        wend_free(run);
    }
    ck_assert_int_gt(lowered, ROUTES / 10); /* else the neighbours made here warm nothing */
    ck_assert_int_gt(failed, ROUTES / 10);  /* else there is nothing to be helped */
}
END_TEST

/* Sizes of three runs to be chosen, that share a trunking and a duct; by their names, whatever their order. */
static void sizes_in_order(const int order[3], const int current_a[3], double out_mm2[3])
{
    char text[2000];
    int at = snprintf(text, sizeof text,
                      "wend: 1\njob: {title: order}\nsupply: {system: TN-S, loop-impedance: 0.05 ohm}\nruns:\n");
    for (int i = 0; i < 3; i++) {
        at += snprintf(text + at, sizeof text - (size_t)at,
                       "  r%d: {load: {current: %d A}, cable: {type: BS6004-multicore, cores: 3, diameter: 20 mm}}\n",
                       order[i], current_a[order[i]]);
    }
    snprintf(text + at, sizeof text - (size_t)at,
             "segments:\n  - {name: a, way: trunking, length: 5 m}\n  - {name: b, way: wall, length: 3 m}\n");
    struct Wend *wend = wend_plan("order", text, strlen(text));
    ck_assert_msg(wend_result(wend) != NULL, "%s\n%s", wend_diagnostics_printed(wend_diagnostics(wend), "order.yaml"),
                  text);
    for (int i = 0; i < 3; i++) {
        out_mm2[order[i]] = wend_result(wend)->runs[i].size_mm2;
    }
    wend_free(wend);
}

START_TEST(order_of_runs_says_nothing_of_their_sizes)
{
    static const int orders[][3] = {{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}};
    uint32_t state = 20261127;
    int unlike = 0;
    for (int route = 0; route < 40; route++) {
        int current_a[3];
        double first[3];
        for (int i = 0; i < 3; i++) {
            current_a[i] = made_between(&state, 2, i == 0 ? 90 : 40);
        }
        sizes_in_order(orders[0], current_a, first);
        unlike += first[0] / first[1] > 4 || first[1] / first[0] > 4;
        for (int o = 1; o < 6; o++) {
            double again[3];
            sizes_in_order(orders[o], current_a, again);
            for (int i = 0; i < 3; i++) {
                same(first[i], again[i], "size", route);
            }
        }
    }
    ck_assert_int_gt(unlike, 5);
}
END_TEST

enum { LOADS_MOST = 5, LOADS_TEXT_MOST = 512 };

/* "[{current: 12 A, phases: 1, power-factor: 0.71}, ...]" of the first `count` loads of a seed. */
static void write_loads(uint32_t seed, int count, int phases, char text[LOADS_TEXT_MOST])
{
    uint32_t state = seed * 7919 + 3;
    int at = snprintf(text, LOADS_TEXT_MOST, "[");
    for (int i = 0; i < count; i++) {
        const int on = phases == 3 && made_between(&state, 0, 3) == 0 ? 3 : 1;
        at += snprintf(text + at, (size_t)(LOADS_TEXT_MOST - at), "%s{current: %d A, phases: %d", i > 0 ? ", " : "",
                       made_between(&state, 1, 12), on);
        const int percent = made_between(&state, 20, 100);
        if (percent >= 30) {
            at += snprintf(text + at, (size_t)(LOADS_TEXT_MOST - at), ", power-factor: %d.%02d", percent / 100,
                           percent % 100);
        }
        at += snprintf(text + at, (size_t)(LOADS_TEXT_MOST - at), "}");
    }
    snprintf(text + at, (size_t)(LOADS_TEXT_MOST - at), "]");
}

START_TEST(a_load_more_never_drops_less)
{
    static const int sizes[] = {10, 25, 95};
    for (int seed = 1; seed <= ROUTES / 2; seed++) {
        struct MadeRoute made = made_route((uint32_t)seed);
        char loads[LOADS_TEXT_MOST];
        made.size = sizes[seed % 3];
        made.cores = made.phases == 3 ? 5 : 3;
        made.loads = loads;
        double before = 0;
        for (int count = 1; count <= LOADS_MOST; count++) {
            write_loads((uint32_t)seed, count, made.phases, loads);
            const double drop = result_of(&made).drop_percent;
            ck_assert_msg(drop >= before * (1 - 1e-12), "route %d: %s drops %g after %g", seed, loads, drop, before);
            before = drop;
        }
    }
}
END_TEST

START_TEST(chosen_passes_and_next_smaller_does_not)
{
    int passed = 0;
    for (int seed = 1; seed <= ROUTES; seed++) {
        struct MadeRoute made = made_route((uint32_t)seed);
        struct Wend *wend = plan_made(&made);
        const struct PlanRun *run = &wend_result(wend)->runs[0];
        ck_assert_int_eq(run->option_count, 16);
        ck_assert_int_eq(wend_status(wend), run->pass ? WEND_PASSES : WEND_CHECK_FAILS);
        for (int i = 0; i < run->option_count; i++) {
            const struct Option *option = &run->options[i];
            ck_assert_msg((option->verdict == VERDICT_FAIL) == (option->fails.count > 0), "route %d", seed);
            if (run->pass && option->size_mm2 < run->size_mm2) {
                ck_assert_msg(!option->pass && option->why != NULL, "route %d", seed);
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
    tcase_add_test(relations, cutting_insulation_never_helps);
    tcase_add_test(relations, larger_never_drops_more);
    tcase_add_test(relations, one_more_neighbour_never_helps);
    tcase_add_test(relations, order_of_runs_says_nothing_of_their_sizes);
    tcase_add_test(relations, a_load_more_never_drops_less);
    tcase_add_test(relations, chosen_passes_and_next_smaller_does_not);
    suite_add_tcase(suite, relations);
    return run_suite(suite);
}
