/* The dead tests of the test sheet. At an island the fault path is the armour and nothing is joined at the far end, so
 * a lead stands in for the joint, and what must not touch the outbuilding's earth is measured apart from it. */
#include "papers_tests_private.h"

static const char *protective_name(enum Cpc cpc)
{
    switch (cpc) {
    case CPC_CORE: return "the protective core, end to end";
    case CPC_ARMOUR: return "the armour, gland to gland";
    case CPC_CORE_AND_ARMOUR: return "the protective core and the armour together, end to end";
    case CPC_SEPARATE: return "the separate protective conductor, end to end";
    case CPC_NONE:
    case CPC_COUNT: break;
    }
    return "";
}

/* Where nothing is joined at the far end, a lead does it for the test: from which conductor. */
static const char *lead_text(const struct Tests *tests)
{
    return *tests_stopped(tests) == '\0'
               ? ""
               : arena_print(tests->arena, "; at the far end by a lead on %s, for this test only",
                             earth_path_text(tests->plan, tests->run));
}

static void add_armour(struct Tests *tests)
{
    const struct TestRow armour = {"dead",
                                   "Continuity of the armour",
                                   "gland to gland, by a long lead",
                                   "low and steady",
                                   "a reading, not an open circuit",
                                   "BS 7671 643.2.1",
                                   "ohm",
                                   "Open: the armour is cut, or a clamp does not bite."};
    tests_add(tests, &armour);
}

/* The core that goes nowhere at the far end: it must be the right one, and whole, or it is no use to know it earthed.
 */
static void add_unused_core(struct Tests *tests)
{
    const bool separate = tests->run->surveyed->cable.cpc == CPC_SEPARATE;
    const struct TestRow core = {
        "dead",
        separate ? "The earth cable that is not used at the far end" : "The earth core that is not used at the far end",
        "supply earth bar to its far end, by a long lead, before it is capped",
        "low and steady: it is joined to earth at the supply end",
        "a reading, not an open circuit",
        "common practice, no source",
        "ohm|capped: yes / no",
        "Open: not joined at the supply end, or another core was taken for it. Cap and insulate it as soon as it is "
        "measured; it is no path that the plan counts on."};
    tests_add(tests, &core);
}

static void add_loop_dead(struct Tests *tests)
{
    struct Arena *arena = tests->arena;
    const struct Readings *readings = &tests->run->readings;
    const struct TestRow loop = {
        "dead",
        "R1 + R2",
        *tests_stopped(tests) == '\0'
            ? "line and protective conductor joined at the far end, measured at the supply end"
            : arena_print(arena,
                          "line and %s joined at the far end by a lead for this test only, measured at the "
                          "supply end",
                          earth_path_text(tests->plan, tests->run)),
        arena_print(arena, "%s at 20 degC (R1 %s)", tests_ohms(arena, readings->r1r2_20_ohm),
                    tests_ohms(arena, readings->r1_20_ohm)),
        "within a tenth of what is expected, leads nulled (common practice, no source)",
        "BS 7671 643.2.1, expected value worked out in the plan",
        "ohm|cable degC",
        *tests_stopped(tests) == '\0'
            ? "High: a bad joint or the wrong size. Half of what is expected: two cores are in parallel, or the length "
              "is not what was surveyed."
            : "High: a bad joint or the wrong size. Half of what is expected: two cores are in parallel, or the length "
              "is not what was surveyed. Take the lead off again: it must not stay."};
    tests_add(tests, &loop);
}

static void add_continuity(struct Tests *tests)
{
    struct Arena *arena = tests->arena;
    const struct Readings *readings = &tests->run->readings;
    const enum Cpc cpc = survey_fault_path(tests->plan->survey, tests->run->surveyed);
    if (*protective_name(cpc) == '\0') {
        return;
    }
    const struct TestRow r2 = {
        "dead",
        "Continuity of the protective conductor, R2",
        arena_print(arena, "%s%s", protective_name(cpc), lead_text(tests)),
        arena_print(arena, "%s at 20 degC", tests_ohms(arena, readings->r2_20_ohm)),
        "about what is expected; steady while the joints are moved",
        "BS 7671 643.2.1",
        "ohm|cable degC",
        "High or jumping: a gland, tag or terminal is loose, or the armour wires are not all in the clamp. Much lower "
        "than expected: another path is in parallel, such as a pipe or a second earth; take it off and test again."};
    tests_add(tests, &r2);
    if (survey_armoured(tests->run->surveyed->cable.type) && (cpc == CPC_CORE || cpc == CPC_SEPARATE)) {
        add_armour(tests);
    }
    if (earth_far_conductor(tests->plan, tests->run) == EARTH_STOPS && cpc == CPC_ARMOUR) {
        add_unused_core(tests);
    }
    add_loop_dead(tests);
}

static void add_bonding(struct Tests *tests)
{
    const struct Earthing *earthing = &tests->plan->survey->earthing;
    if (earthing->extraneous_parts_given && earthing->extraneous_parts) {
        const struct TestRow row = {"dead",
                                    "Continuity of main bonding",
                                    "earth bar to each metal service and part that can bring in a voltage",
                                    "low and steady: length times the ohms per metre of its size",
                                    "a reading, not an open circuit",
                                    "BS 7671 643.2.1",
                                    "ohm",
                                    "Open or high: a clamp on paint or rust, or a conductor cut along its way."};
        tests_add(tests, &row);
    }
}

static const char *insulation_limit(const struct Tests *tests)
{
    const struct Readings *readings = &tests->run->readings;
    return readings->insulation_least_mohm > 0
               ? arena_print(tests->arena, "at least %s Mohm at %s V d.c.",
                             number_significant(tests->arena, readings->insulation_least_mohm, 3),
                             number_significant(tests->arena, readings->insulation_test_v, 4))
               : "not known";
}

static void add_insulation(struct Tests *tests)
{
    const bool three = tests->run->currents.lines == 3;
    const bool neutral = survey_neutral(tests->run->surveyed, tests->run->currents.lines);
    const struct TestRow row = {
        "dead",
        "Insulation resistance",
        !neutral ? "each line to each other line and to earth"
        : three  ? "each line to each other line, to neutral and to earth; neutral to earth"
                 : "line to neutral, line to earth, neutral to earth",
        "a new dry cable: hundreds of Mohm",
        insulation_limit(tests),
        "BS 7671 643.3, Table 64",
        !neutral ? "L-L Mohm|L-E Mohm"
        : three  ? "L-L Mohm|L-N Mohm|L-E Mohm|N-E Mohm"
                 : "L-N Mohm|L-E Mohm|N-E Mohm",
        "Below the limit: something is still connected (a lamp, surge protection, electronics), or the cable is nicked "
        "or wet. Open the far end and test the cable alone."};
    tests_add(tests, &row);
}

/* That the two earths are apart can only be seen while the cable's own is off the supply's bar, for both lie in the
 * ground: so it is the first test, before the supply end is made off. */
static void add_separation(struct Tests *tests)
{
    const char *stopped = tests_stopped(tests);
    if (*stopped == '\0') {
        return;
    }
    const struct TestRow row = {
        "dead",
        "The two earths apart",
        arena_print(
            tests->arena,
            "at the far end: %s to the outbuilding's earth bar, before the supply end of %s is made off, or with "
            "it off its earth bar for this test",
            stopped, stopped),
        "hundreds of Mohm",
        insulation_limit(tests),
        "common practice, no source; the limit as in BS 7671 Table 64",
        "Mohm|joined at the supply end after it: yes / no",
        "Low: an earth tag, a metal box or a core joins them, or the sheath is damaged in the ground. Find it before "
        "the supply end is made off. What was taken off its bar goes back on, and R2 is measured after that."};
    tests_add(tests, &row);
}

/* An old supply whose earth stays joined somewhere brings that earth into the outbuilding. */
static void add_old_supply(struct Tests *tests)
{
    const struct Earthing *earthing = &tests->plan->survey->earthing;
    if (!earthing->existing_given || earthing->existing != EXISTING_REPLACED) {
        return;
    }
    const struct TestRow apart = {
        "dead",
        "The old supply's earth off",
        "at the outbuilding: the old cable's earth, and its armour, to the outbuilding's earth bar",
        "hundreds of Mohm",
        insulation_limit(tests),
        "common practice, no source; the limit as in BS 7671 Table 64",
        "Mohm|off at both ends: yes / no",
        "Low: a core, an armour, a bond or a pipe still joins the two. Find it before anything is switched on."};
    tests_add(tests, &apart);
    const struct TestRow moved = {
        "dead",
        "Circuits moved from the old supply",
        "each of the outbuilding's circuits: continuity, insulation, polarity; live, its Zs and its residual device",
        "as for a new circuit",
        "as for a new circuit, with the outbuilding's new earth",
        "BS 7671 643, 644.1 (from memory)",
        "circuits|all tested: yes / no",
        "A circuit that fails stays off until it is mended: the old earth may have hidden it."};
    tests_add(tests, &moved);
}

static void add_polarity(struct Tests *tests)
{
    const struct TestRow row = {"dead",
                                "Polarity",
                                "each core from end to end, one at a time",
                                papers_names_cores(tests->plan, tests->run)
                                    ? "each core where the core table below says"
                                    : "each core the same, and marked the same, at both ends",
                                "right",
                                "BS 7671 643.6",
                                "right / wrong",
                                "Wrong: cores were swapped at one end. Look first at those that are sleeved."};
    tests_add(tests, &row);
}

static void add_electrode(struct Tests *tests)
{
    struct Arena *arena = tests->arena;
    const struct PlanElectrode *electrode = &tests->plan->electrode;
    if (!electrode->due) {
        return;
    }
    const double residual_a = tests_electrode_a(tests);
    const char *limit =
        residual_a > 0
            ? arena_print(arena, "at most %s ohm (50 V / %s mA); over 200 ohm it may not be steady",
                          tests_touch_limit(arena, residual_a), number_significant(arena, residual_a * 1000, 4))
            : "no residual device is known to hold it against";
    const struct TestRow row = {
        "dead",
        "Earth electrode, RA",
        "electrode to remote earth, its earthing conductor taken off",
        electrode->used_ohm > 0
            ? arena_print(arena, "%s ohm %s", number_text(arena, electrode->used_ohm, 1),
                          electrode->measured_ohm > 0 ? "(measured at the survey)"
                                                      : "(estimate from the soil: half or double is no surprise)")
            : "not known",
        limit,
        "BS 7671 643.7.2, 411.5.3",
        "ohm|soil wet / dry",
        "High: dry or stony soil, a rod not driven home, a loose clamp. Far lower than expected: it touches other "
        "buried metal. Connect it again before anything is switched on."};
    tests_add(tests, &row);
}

void tests_dead(struct Tests *tests)
{
    add_separation(tests);
    add_continuity(tests);
    add_bonding(tests);
    add_insulation(tests);
    add_old_supply(tests);
    add_polarity(tests);
    add_electrode(tests);
}
