/* The live tests of the test sheet. */
#include "papers_tests_private.h"

#include <math.h>

/* Before anything is energised: a supply whose line and neutral are crossed makes every single-pole device switch the
 * wrong one. */
static void add_supply_polarity(struct Tests *tests)
{
    const bool three = tests->run->currents.lines == 3;
    const bool neutral = survey_neutral(tests->run->surveyed, tests->run->currents.lines);
    const double u0_v = tests->plan->survey->supply.voltage_v.value;
    const char *earth_v = number_text(tests->arena, u0_v, 0);
    const char *line_v = number_text(tests->arena, sqrt(3) * u0_v, 0);
    const char *expect =
        !three ? arena_print(tests->arena, "line to neutral and line to earth %s V, neutral to earth near 0", earth_v)
        : neutral ? arena_print(tests->arena,
                                "line to line %s V; each line to neutral and to earth %s V; neutral to earth near 0",
                                line_v, earth_v)
                  : arena_print(tests->arena, "line to line %s V, each line to earth %s V", line_v, earth_v);
    const struct TestRow row = {
        "live",
        "Polarity of the supply, before this run is energised",
        "at the incoming terminals where the run begins, its device off",
        expect,
        "right",
        "BS 7671 643.6",
        three ? "line to line V|line to earth V" : "L-N V|L-E V|N-E V",
        "Wrong, or a line that is missing: stop. Nothing is switched on; a fault of the supply is for "
        "the network operator."};
    tests_add(tests, &row);
}

static void add_origin(struct Tests *tests)
{
    struct Arena *arena = tests->arena;
    const struct Readings *readings = &tests->run->readings;
    const struct TestRow ze = {"live",
                               "Ze, where this run begins",
                               "line and earth of the supply, main switch off, earthing conductor apart",
                               tests_ohms(arena, readings->ze_ohm),
                               "not above what the plan was made with",
                               "BS 7671 643.7.3",
                               "ohm",
                               "Higher than in the plan: plan again with this reading before the run is used. Join the "
                               "earthing conductor again "
                               "at once."};
    tests_add(tests, &ze);
}

static const struct Check *find_check(const struct PlanRun *run, const char *id)
{
    for (int i = 0; i < run->check_count; i++) {
        if (text_same(run->checks[i].id, id)) {
            return &run->checks[i];
        }
    }
    return NULL;
}

/* A loop measured cold is held against 0.8 of the limit: BS 7671 Appendix 3 (from memory). */
static const double cold_part = 0.8;

/* Cut, not rounded: a limit on paper is never more than the limit. */
static const char *limit_text(struct Arena *arena, double ohm)
{
    return number_text(arena, floor(ohm * 100 + 1e-9) / 100, 2);
}

/* The limit of the loop: by the overcurrent part where the check compared ohms, else by the residual part. */
static const char *loop_limit(const struct Tests *tests)
{
    struct Arena *arena = tests->arena;
    const struct Check *check = find_check(tests->run, "disconnection");
    if (check == NULL || check->result == CHECK_NOT_DUE) {
        return "not known";
    }
    if (check->unit != NULL && text_same(check->unit, "ohm")) {
        return arena_print(arena, "%s ohm as a fault finds it; read cold, at most %s ohm",
                           limit_text(arena, check->limit), limit_text(arena, cold_part * check->limit));
    }
    const double residual_a = tests->run->readings.residual_a;
    return residual_a > 0
               ? arena_print(arena, "%s ohm by the residual part (50 V / %s mA)", tests_touch_limit(arena, residual_a),
                             number_significant(arena, residual_a * 1000, 4))
               : "not known";
}

static void add_loop(struct Tests *tests)
{
    struct Arena *arena = tests->arena;
    const struct Readings *readings = &tests->run->readings;
    const struct TestRow zs = {
        "live",
        "Zs at the far end of the run",
        *tests_stopped(tests) == '\0'
            ? "line and earth at the far end"
            : arena_print(arena, "line and %s at the far end, by a probe, not the outbuilding's earth",
                          earth_path_text(tests->plan, tests->run)),
        readings->zs_20_ohm > 0 ? arena_print(arena, "%s cold (20 degC)", tests_ohms(arena, readings->zs_20_ohm))
                                : "not known",
        loop_limit(tests),
        "BS 7671 643.7.3, 411.4; 0.8 for a cold reading: Appendix 3 (from memory)",
        "ohm",
        "High while R1 + R2 was right: a bad joint upstream, or the supply has changed. The device trips during the "
        "test: use the meter's no-trip range."};
    tests_add(tests, &zs);
    const bool neutral = survey_neutral(tests->run->surveyed, tests->run->currents.lines);
    const struct TestRow fault = {
        "live",
        "Prospective fault current",
        neutral ? "line to neutral and line to earth, at the origin and at the far end"
                : "line to line and line to earth, at the origin and at the far end: this run has no neutral",
        arena_print(arena, "origin at most %s; far end at least %s",
                    readings->fault_origin_a > 0
                        ? arena_print(arena, "%s kA", number_text(arena, readings->fault_origin_a / 1000, 2))
                        : "(not known)",
                    readings->fault_far_a > 0
                        ? arena_print(arena, "%s A, hot", number_text(arena, readings->fault_far_a, 0))
                        : "(not known)"),
        tests->run->surveyed->device.breaking_capacity_a.given
            ? arena_print(arena, "at most the device's %s kA",
                          number_significant(arena, tests->run->surveyed->device.breaking_capacity_a.value / 1000, 4))
            : "at most what is marked on the device",
        "BS 7671 643.7.3.201, 434.5.1",
        "origin kA|far end kA",
        !neutral
            ? "Over the device's marking: it must not stay. A fault of all three lines draws 1.16 times the line to "
              "line reading (2 / sqrt 3)."
        : tests->run->currents.lines == 3 ? "Over the device's marking: it must not stay. On three lines take twice "
                                            "the line to neutral reading (common "
                                            "practice)."
                                          : "Over the device's marking: it must not stay."};
    tests_add(tests, &fault);
}

/* What the outbuilding's own earth lets a fault be seen through: its electrode and its residual device. */
static void add_island_loop(struct Tests *tests)
{
    const double residual_a = tests_electrode_a(tests);
    if (!tests->plan->electrode.due || !(residual_a > 0)) {
        return;
    }
    const struct TestRow row = {
        "live",
        "Zs at the outbuilding's board",
        "line and the outbuilding's earth bar, by its own electrode",
        "a little more than the electrode's reading",
        arena_print(tests->arena, "at most %s ohm (50 V / %s mA)", tests_touch_limit(tests->arena, residual_a),
                    number_significant(tests->arena, residual_a * 1000, 4)),
        "BS 7671 411.5.3, Table 41.5",
        "ohm",
        "Far lower than the electrode read: the two earths are joined somewhere. Switch off, find the joint. Higher: a "
        "loose clamp at the rod or a broken earthing conductor."};
    tests_add(tests, &row);
}

static void add_sequence(struct Tests *tests)
{
    if (tests->run->currents.lines == 3) {
        const struct TestRow row = {"live",
                                    "Phase sequence",
                                    "L1, L2, L3 at the origin and at the far end",
                                    "the same at both",
                                    "the same at both",
                                    "BS 7671 643.9",
                                    "origin|far end",
                                    "Different: motors run backwards. Swap two lines at the far end."};
        tests_add(tests, &row);
    }
}

static const char *milliseconds(struct Arena *arena, double time_s)
{
    return number_text(arena, time_s * 1000, 0);
}

static void add_residual(struct Tests *tests)
{
    struct Arena *arena = tests->arena;
    const struct Readings *readings = &tests->run->readings;
    if (!(readings->residual_a > 0)) {
        return;
    }
    const char *longest = readings->residual_longest_s > 0
                              ? arena_print(arena, "at most %s ms at its rated residual current%s",
                                            milliseconds(arena, readings->residual_longest_s),
                                            readings->residual_shortest_s > 0
                                                ? arena_print(arena, ", and not before %s ms",
                                                              milliseconds(arena, readings->residual_shortest_s))
                                                : "")
                              : "not known";
    const struct TestRow row = {
        "live",
        arena_print(arena, "Residual device, %s mA", number_significant(arena, readings->residual_a * 1000, 4)),
        "an a.c. test at its rated residual current, loads off",
        "trips",
        longest,
        "BS 7671 643.8",
        "ms",
        "Slow or no trip: replace it. Trips before its time: a load is still on, or neutral and earth touch "
        "downstream."};
    tests_add(tests, &row);
}

/* At an island it is the only thing that cuts off a fault in the outbuilding, whatever stands at the supply end. */
static void add_board_residual(struct Tests *tests)
{
    struct Arena *arena = tests->arena;
    const struct Readings *readings = &tests->run->readings;
    if (!(readings->board_residual_a > 0)) {
        return;
    }
    const bool island = tests->plan->electrode.due;
    const struct TestRow row = {
        "live",
        arena_print(arena, "Residual device at the outbuilding's board, %s mA",
                    number_significant(arena, readings->board_residual_a * 1000, 4)),
        island ? "an a.c. test at its rated residual current, to the outbuilding's own earth, loads off"
               : "an a.c. test at its rated residual current, loads off",
        "trips",
        arena_print(arena, "at most %s ms at its rated residual current",
                    milliseconds(arena, readings->board_residual_longest_s)),
        island ? "BS 7671 643.8, 411.5.3" : "BS 7671 643.8",
        "ms",
        island ? "Slow or no trip: replace it before anything is used; nothing else there cuts off a fault in time. If "
                 "the device at the supply end trips too, the two are not selective."
               : "Slow or no trip: replace it. If the device at the supply end trips too, the two are not selective."};
    tests_add(tests, &row);
}

static void add_function(struct Tests *tests)
{
    const struct TestRow row = {"live",
                                "Function",
                                papers_residual(tests->plan, tests->run)
                                    ? "switches, isolator, test button of each residual device, every load once"
                                    : "switches, isolator, every load once",
                                "works",
                                "works",
                                "BS 7671 643.10",
                                "works / does not",
                                papers_residual(tests->plan, tests->run)
                                    ? "A test button that does nothing: the device is not fed, or is broken."
                                    : "What does not work is found before the run is handed over."};
    tests_add(tests, &row);
}

void tests_live(struct Tests *tests)
{
    add_supply_polarity(tests);
    add_origin(tests);
    add_loop(tests);
    add_island_loop(tests);
    add_residual(tests);
    add_board_residual(tests);
    add_sequence(tests);
    add_function(tests);
}
