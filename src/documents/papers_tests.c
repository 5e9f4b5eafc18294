/* The test sheet: what to measure, in the order of BS 7671 part 6, what to expect, what is allowed, and what a bad
 * reading usually means. What is not known is left open, never guessed. */
#include "papers_private.h"

#include <math.h>

struct TestRow {
    const char *group, *name, *between, *expect, *limit, *source, *blanks, *bad;
};

struct Tests {
    struct XmlOut *out;
    struct XmlElement *element;
    struct Arena *arena;
    const struct Plan *plan;
    const struct PlanRun *run;
    int number;
};

static void add(struct Tests *tests, const struct TestRow *row)
{
    struct XmlElement *test = xml_child(tests->out, tests->element, "test");
    xml_integer(tests->out, test, "number", ++tests->number);
    xml_attribute(tests->out, test, "group", row->group);
    xml_attribute(tests->out, test, "name", row->name);
    xml_attribute(tests->out, test, "between", row->between);
    xml_attribute(tests->out, test, "expect", row->expect);
    xml_attribute(tests->out, test, "limit", row->limit);
    xml_attribute(tests->out, test, "source", row->source);
    /* what to write into, divided by | */
    xml_attribute(tests->out, test, "blanks", row->blanks);
    xml_text(tests->out, test, row->bad);
}

static const char *ohms(struct Arena *arena, double ohm)
{
    return ohm > 0 ? arena_print(arena, "%s ohm", number_text(arena, ohm, ohm < 10 ? 3 : 1)) : "not known";
}

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

static void add_continuity(struct Tests *tests)
{
    struct Arena *arena = tests->arena;
    const struct Readings *readings = &tests->run->readings;
    const enum Cpc cpc = tests->run->surveyed->cable.cpc;
    if (*protective_name(cpc) == '\0') {
        return;
    }
    const struct TestRow r2 = {
        "dead",
        "Continuity of the protective conductor, R2",
        protective_name(cpc),
        arena_print(arena, "%s at 20 degC", ohms(arena, readings->r2_20_ohm)),
        "about what is expected; steady while the joints are moved",
        "BS 7671 643.2.1",
        "ohm|cable degC",
        "High or jumping: a gland, tag or terminal is loose, or the armour wires are not all in the clamp. Much lower "
        "than expected: another path is in parallel, such as a pipe or a second earth; take it off and test again."};
    add(tests, &r2);
    if (survey_armoured(tests->run->surveyed->cable.type) && (cpc == CPC_CORE || cpc == CPC_SEPARATE)) {
        const struct TestRow armour = {"dead",
                                       "Continuity of the armour",
                                       "gland to gland, far end joined by a lead for this test only",
                                       "low and steady",
                                       "a reading, not an open circuit",
                                       "BS 7671 643.2.1",
                                       "ohm",
                                       "Open: the armour is cut, or a clamp does not bite. Take the lead off again "
                                       "where the far end is ISOLATED."};
        add(tests, &armour);
    }
    const struct TestRow loop = {"dead",
                                 "R1 + R2",
                                 "line and protective conductor joined at the far end, measured at the supply end",
                                 arena_print(arena, "%s at 20 degC (R1 %s)", ohms(arena, readings->r1r2_20_ohm),
                                             ohms(arena, readings->r1_20_ohm)),
                                 "within a tenth of what is expected, leads nulled (common practice, no source)",
                                 "BS 7671 643.2.1, expected value worked out in the plan",
                                 "ohm|cable degC",
                                 "High: a bad joint or the wrong size. Half of what is expected: two cores are in "
                                 "parallel, or the length is not "
                                 "what was surveyed."};
    add(tests, &loop);
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
        add(tests, &row);
    }
}

static void add_insulation(struct Tests *tests)
{
    struct Arena *arena = tests->arena;
    const struct Readings *readings = &tests->run->readings;
    const char *limit = readings->insulation_least_mohm > 0
                            ? arena_print(arena, "at least %s Mohm at %s V d.c.",
                                          number_significant(arena, readings->insulation_least_mohm, 3),
                                          number_significant(arena, readings->insulation_test_v, 4))
                            : "not known";
    const bool three = tests->run->currents.lines == 3;
    const struct TestRow row = {
        "dead",
        "Insulation resistance",
        three ? "each line to each other line, to neutral and to earth; neutral to earth; armour to earth bar where it "
                "is ISOLATED"
              : "line to neutral, line to earth, neutral to earth; armour to earth bar where it is ISOLATED",
        "a new dry cable: hundreds of Mohm",
        limit,
        "BS 7671 643.3, Table 64",
        three ? "L-L Mohm|L-N Mohm|L-E Mohm|N-E Mohm" : "L-N Mohm|L-E Mohm|N-E Mohm",
        "Below the limit: something is still connected (a lamp, surge protection, electronics), or the cable is nicked "
        "or wet. Open the far end and test the cable alone."};
    add(tests, &row);
}

static void add_polarity(struct Tests *tests)
{
    const struct TestRow row = {
        "dead",
        "Polarity",
        "each core from end to end, one at a time",
        "each core where the core table says",
        "right",
        "BS 7671 643.6",
        "right / wrong",
        "Wrong: cores were swapped at one end. In a 3-core cable look first at which core was sleeved as neutral."};
    add(tests, &row);
}

/* The residual current that the electrode is held against: the outbuilding's own device, else the run's. */
static double electrode_residual_a(const struct Tests *tests)
{
    const struct Quantity *board = &tests->plan->survey->earthing.board_residual_a;
    return board->given ? board->value : tests->run->readings.residual_a;
}

static void add_electrode(struct Tests *tests)
{
    struct Arena *arena = tests->arena;
    const struct PlanElectrode *electrode = &tests->plan->electrode;
    if (!electrode->due) {
        return;
    }
    const double residual_a = electrode_residual_a(tests);
    const char *limit =
        residual_a > 0
            ? arena_print(arena, "at most %s ohm (50 V / %s mA); over 200 ohm it may not be steady",
                          number_text(arena, 50 / residual_a, 0), number_significant(arena, residual_a * 1000, 4))
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
    add(tests, &row);
}

static void add_origin(struct Tests *tests)
{
    struct Arena *arena = tests->arena;
    const struct Readings *readings = &tests->run->readings;
    const struct TestRow ze = {"live",
                               "Ze, where this run begins",
                               "line and earth of the supply, main switch off, earthing conductor apart",
                               ohms(arena, readings->ze_ohm),
                               "not above what the plan was made with",
                               "BS 7671 643.7.3",
                               "ohm",
                               "Higher than in the plan: plan again with this reading before the run is used. Join the "
                               "earthing conductor again "
                               "at once."};
    add(tests, &ze);
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
               ? arena_print(arena, "%s ohm by the residual part (50 V / %s mA)",
                             number_text(arena, 50 / residual_a, 0), number_significant(arena, residual_a * 1000, 4))
               : "not known";
}

static void add_loop(struct Tests *tests)
{
    struct Arena *arena = tests->arena;
    const struct Readings *readings = &tests->run->readings;
    const struct TestRow zs = {
        "live",
        "Zs at the far end of the run",
        papers_far_armour(tests->plan, tests->run) == ARMOUR_ISOLATED
            ? "line and the cable's own earth at the far end, not the electrode's"
            : "line and earth at the far end",
        readings->zs_20_ohm > 0 ? arena_print(arena, "%s cold (20 degC)", ohms(arena, readings->zs_20_ohm))
                                : "not known",
        loop_limit(tests),
        "BS 7671 643.7.3, 411.4; 0.8 for a cold reading: Appendix 3 (from memory)",
        "ohm",
        "High while R1 + R2 was right: a bad joint upstream, or the supply has changed. The device trips during the "
        "test: use the meter's no-trip range."};
    add(tests, &zs);
    const struct TestRow fault = {
        "live",
        "Prospective fault current",
        "line to neutral and line to earth, at the origin and at the far end",
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
        "Over the device's marking: it must not stay. On three lines take twice the line to neutral reading (common "
        "practice)."};
    add(tests, &fault);
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
        add(tests, &row);
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
    add(tests, &row);
}

static void add_function(struct Tests *tests)
{
    const struct TestRow row = {"live",
                                "Function",
                                "switches, isolator, test button of each residual device, every load once",
                                "works",
                                "works",
                                "BS 7671 643.10",
                                "works / does not",
                                "A test button that does nothing: the device is not fed, or is broken."};
    add(tests, &row);
}

/* A length of conductor by its temperature, for a reading on a cold morning. Copper 0.004, armour 0.0045 per kelvin. */
static void add_temperatures(struct Tests *tests)
{
    const struct Readings *readings = &tests->run->readings;
    const double rise = tests->run->surveyed->cable.cpc == CPC_ARMOUR ? 0.0045 : 0.004;
    if (!(readings->r1_20_ohm > 0) || !(readings->r2_20_ohm > 0)) {
        return;
    }
    for (int degc = 0; degc <= 40; degc += 10) {
        struct XmlElement *at = xml_child(tests->out, tests->element, "at");
        const double r1_ohm = readings->r1_20_ohm * (1 + 0.004 * (degc - 20));
        const double r2_ohm = readings->r2_20_ohm * (1 + rise * (degc - 20));
        xml_integer(tests->out, at, "cable", degc);
        xml_attribute(tests->out, at, "r1", number_text(tests->arena, r1_ohm, 3));
        xml_attribute(tests->out, at, "r2", number_text(tests->arena, r2_ohm, 3));
        xml_attribute(tests->out, at, "r1r2", number_text(tests->arena, r1_ohm + r2_ohm, 3));
    }
}

void papers_tests(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan, const struct PlanRun *run)
{
    struct Tests tests = {.out = out, .arena = xml_out_arena(out), .plan = plan, .run = run};
    tests.element = xml_child(out, papers, "tests");
    xml_attribute(out, tests.element, "run", run->surveyed->name);
    xml_attribute_if(out, tests.element, "serves", run->surveyed->serves);
    xml_attribute(out, tests.element, "cable", papers_cable(tests.arena, run));
    xml_attribute(out, tests.element, "device", run->device_text);
    xml_attribute_if(out, tests.element, "note", run->readings.note);
    add_continuity(&tests);
    add_bonding(&tests);
    add_insulation(&tests);
    add_polarity(&tests);
    add_electrode(&tests);
    add_origin(&tests);
    add_loop(&tests);
    add_residual(&tests);
    add_sequence(&tests);
    add_function(&tests);
    add_temperatures(&tests);
}
