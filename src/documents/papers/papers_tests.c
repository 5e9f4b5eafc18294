/* The test sheet: what to measure, in the order of BS 7671 part 6, what to expect, what is allowed, and what a bad
 * reading usually means. What is not known is left open, never guessed. The rows are test_rows.inc; here are the facts
 * that decide which of them are due, and the figures that stand in them. */
#include "documents/earth_ends_private.h"
#include "papers_private.h"

#include <math.h>

/* Facts that rows are due by. */
enum Fact {
    STOPPED = 1 << 0,       /* something carries the supply's earth to an island and must not touch the island's */
    PATH = 1 << 1,          /* the cable has a protective conductor */
    ARMOUR_BESIDE = 1 << 2, /* armour that is not counted on as protective conductor */
    EARTH_UNUSED = 1 << 3,  /* an earth core or cable that is not used at the far end */
    SEPARATE = 1 << 4,
    EXTRANEOUS = 1 << 5,
    THREE = 1 << 6,
    NEUTRAL = 1 << 7,
    OLD_REPLACED = 1 << 8,
    CORES_NAMED = 1 << 9,
    ELECTRODE = 1 << 10,
    ELECTRODE_DEVICE = 1 << 11, /* a residual device that the electrode is held against */
    RESIDUAL = 1 << 12,
    BOARD_RESIDUAL = 1 << 13,
    ANY_RESIDUAL = 1 << 14
};

enum Figure {
    NO_FIGURE,
    WHOLE_PATH,
    PATH_NAME,
    STOPPED_PARTS,
    R1,
    R2,
    R1R2,
    INSULATION_LEAST,
    ELECTRODE_EXPECTED,
    ELECTRODE_MOST,
    TOUCH_OHM,
    ELECTRODE_MA,
    EARTH_VOLTS,
    LINE_VOLTS,
    ZE,
    ZS_COLD,
    ZS_MOST,
    FAULT_ORIGIN,
    FAULT_FAR,
    FAULT_MOST,
    RESIDUAL_MA,
    RESIDUAL_TIME,
    BOARD_MA,
    BOARD_MS,
    FIGURES
};

struct Cell {
    enum Saying says;
    enum Figure figures[2];
};

struct TestRow {
    const char *group;
    unsigned where, unless;
    struct Cell name, between, expect, limit;
    struct {
        enum Saying says;
        const char *clause, *table; /* "": none */
    } source;
    enum Saying blanks, bad;
};

#define DEAD "dead"
#define LIVE "live"
#define T(saying)                                                                                                      \
    {                                                                                                                  \
        .says = (saying)                                                                                               \
    }
#define W(saying, ...)                                                                                                 \
    {                                                                                                                  \
        .says = (saying), .figures = { __VA_ARGS__ }                                                                   \
    }
#define S(saying, at, in_table)                                                                                        \
    {                                                                                                                  \
        .says = (saying), .clause = (at), .table = (in_table)                                                          \
    }
#define TEST(...) {__VA_ARGS__},
static const struct TestRow rows[] = {
#include "test_rows.inc"
};

struct Tests {
    struct XmlOut *out;
    struct XmlElement *element;
    struct Arena *arena;
    const struct Plan *plan;
    const struct PlanRun *run;
    struct SayArg figures[FIGURES];
};

static struct SayArg ohms(double ohm)
{
    return ohm > 0 ? say_fixed(ohm, ohm < 10 ? 3 : 1, UNIT_OHM) : say_term(SAY_NOT_KNOWN);
}

static struct SayArg milliamperes(double current_a)
{
    return say_digits(current_a * 1000, 4, UNIT_MA);
}

static struct SayArg milliseconds(double time_s)
{
    return say_fixed(time_s * 1000, 0, UNIT_MS);
}

static struct SayArg touch_limit(const struct Tests *tests, double residual_a)
{
    return say_fixed(readings_touch_ohm(&tests->run->readings, residual_a), 0, UNIT_OHM);
}

/* The residual current that the electrode is held against: the outbuilding's own device, else the run's. */
static double electrode_device_a(const struct Tests *tests)
{
    const struct Quantity *board = &tests->plan->survey->earthing.board_residual_a;
    return board->given ? board->value : tests->run->readings.residual_a;
}

/* What carries the supply's earth out to an island and must not touch the outbuilding's. */
static enum Saying stopped_parts(const struct Tests *tests)
{
    const bool armour = earth_far_armour(tests->plan, tests->run) == EARTH_STOPS;
    const bool separate = tests->run->settled->cable.cpc == CPC_SEPARATE;
    if (earth_far_conductor(tests->plan, tests->run) != EARTH_STOPS) {
        return armour ? SAY_PATH_ARMOUR : SAY_NOTHING;
    }
    return armour     ? (separate ? SAY_ARMOUR_AND_EARTH_CABLE : SAY_ARMOUR_AND_EARTH_CORE)
           : separate ? SAY_THE_EARTH_CABLE
                      : SAY_THE_EARTH_CORE;
}

static enum Saying whole_path(enum Cpc cpc)
{
    switch (cpc) {
    case CPC_CORE: return SAY_WHOLE_CORE;
    case CPC_ARMOUR: return SAY_WHOLE_ARMOUR;
    case CPC_CORE_AND_ARMOUR: return SAY_WHOLE_BOTH;
    case CPC_SEPARATE: return SAY_WHOLE_SEPARATE;
    case CPC_NONE:
    case CPC_COUNT: break;
    }
    return SAY_NOTHING;
}

static unsigned facts_of(const struct Tests *tests)
{
    const struct PlanRun *run = tests->run;
    const struct Earthing *earthing = &tests->plan->survey->earthing;
    const enum Cpc path = survey_fault_path(tests->plan->survey, run->settled);
    const bool beside = survey_armoured(run->settled->cable.type) && (path == CPC_CORE || path == CPC_SEPARATE);
    const struct {
        bool holds;
        enum Fact fact;
    } facts[] = {
        {stopped_parts(tests) != SAY_NOTHING, STOPPED},
        {whole_path(path) != SAY_NOTHING, PATH},
        {beside, ARMOUR_BESIDE},
        {earth_far_conductor(tests->plan, run) == EARTH_STOPS && path == CPC_ARMOUR, EARTH_UNUSED},
        {run->settled->cable.cpc == CPC_SEPARATE, SEPARATE},
        {earthing->extraneous_parts_given && earthing->extraneous_parts, EXTRANEOUS},
        {run->currents.lines == 3, THREE},
        {survey_neutral(run->settled, run->currents.lines), NEUTRAL},
        {earthing->existing_given && earthing->existing == EXISTING_REPLACED, OLD_REPLACED},
        {papers_names_cores(tests->plan, run), CORES_NAMED},
        {tests->plan->electrode.due, ELECTRODE},
        {electrode_device_a(tests) > 0, ELECTRODE_DEVICE},
        {run->readings.residual_a > 0, RESIDUAL},
        {run->readings.board_residual_a > 0, BOARD_RESIDUAL},
        {papers_residual(tests->plan, run), ANY_RESIDUAL},
    };
    unsigned held = 0;
    for (size_t i = 0; i < sizeof facts / sizeof facts[0]; i++) {
        held |= facts[i].holds ? (unsigned)facts[i].fact : 0;
    }
    return held;
}

static struct SayArg insulation_least(struct Arena *arena, const struct Readings *readings)
{
    return readings->insulation_least_mohm > 0
               ? say_part(say(arena, SAY_INSULATION_AT_LEAST,
                              say_digits(readings->insulation_least_mohm, 3, UNIT_MEGOHM),
                              say_digits(readings->insulation_test_v, 4, UNIT_V)))
               : say_term(SAY_NOT_KNOWN);
}

static struct SayArg electrode_expected(struct Arena *arena, const struct PlanElectrode *electrode)
{
    return electrode->used_ohm > 0
               ? say_part(say(arena, electrode->measured_ohm > 0 ? SAY_ELECTRODE_MEASURED : SAY_ELECTRODE_ESTIMATE,
                              say_fixed(electrode->used_ohm, 1, UNIT_OHM)))
               : say_term(SAY_NOT_KNOWN);
}

static struct SayArg loop_most(const struct Tests *tests)
{
    const struct LoopLimit limit = readings_loop_limit(tests->run);
    if (!limit.known) {
        return say_term(SAY_NOT_KNOWN);
    }
    return say_part(limit.residual ? say(tests->arena, SAY_LIMIT_ZS_RESIDUAL, say_fixed(limit.ohm, 0, UNIT_OHM),
                                         milliamperes(tests->run->readings.residual_a))
                                   : say(tests->arena, SAY_LIMIT_ZS, say_fixed(limit.ohm, 2, UNIT_OHM),
                                         say_fixed(limit.cold_ohm, 2, UNIT_OHM)));
}

static struct SayArg residual_time(struct Arena *arena, const struct Readings *readings)
{
    const double shortest_s = readings->residual_shortest_s, longest_s = readings->residual_longest_s;
    return !(longest_s > 0) ? say_term(SAY_NOT_KNOWN)
                            : say_part(shortest_s > 0 ? say(arena, SAY_LIMIT_RESIDUAL_DELAYED, milliseconds(longest_s),
                                                            milliseconds(shortest_s))
                                                      : say(arena, SAY_LIMIT_AT_MOST, milliseconds(longest_s)));
}

static void find_path(struct Tests *tests)
{
    const enum Saying stopped = stopped_parts(tests), path = earth_path(tests->plan, tests->run);
    tests->figures[WHOLE_PATH] = say_term(whole_path(survey_fault_path(tests->plan->survey, tests->run->settled)));
    tests->figures[PATH_NAME] = say_term(path != SAY_NOTHING ? path : stopped);
    tests->figures[STOPPED_PARTS] = say_term(stopped);
}

static void find_electrode(struct Tests *tests)
{
    struct Arena *arena = tests->arena;
    const double device_a = electrode_device_a(tests);
    tests->figures[ELECTRODE_EXPECTED] = electrode_expected(arena, &tests->plan->electrode);
    tests->figures[ELECTRODE_MOST] = say_term(SAY_ELECTRODE_NO_DEVICE);
    if (device_a > 0) {
        tests->figures[TOUCH_OHM] = touch_limit(tests, device_a);
        tests->figures[ELECTRODE_MA] = milliamperes(device_a);
        tests->figures[ELECTRODE_MOST] =
            say_part(say(arena, SAY_ELECTRODE_AT_MOST, touch_limit(tests, device_a), milliamperes(device_a)));
    }
}

static void find_fault(struct Tests *tests)
{
    struct Arena *arena = tests->arena;
    const struct Readings *readings = &tests->run->readings;
    const struct Quantity *breaks_a = &tests->run->settled->device.breaking_capacity_a;
    tests->figures[FAULT_ORIGIN] = readings->fault_origin_a > 0 ? say_fixed(readings->fault_origin_a / 1000, 2, UNIT_KA)
                                                                : say_term(SAY_NOT_KNOWN_ASIDE);
    tests->figures[FAULT_FAR] = readings->fault_far_a > 0
                                    ? say_part(say(arena, SAY_EXPECT_HOT, say_fixed(readings->fault_far_a, 0, UNIT_A)))
                                    : say_term(SAY_NOT_KNOWN_ASIDE);
    tests->figures[FAULT_MOST] =
        breaks_a->given ? say_part(say(arena, SAY_LIMIT_FAULT, say_digits(breaks_a->value / 1000, 4, UNIT_KA)))
                        : say_term(SAY_LIMIT_FAULT_MARKED);
}

static void find_figures(struct Tests *tests)
{
    const struct Readings *readings = &tests->run->readings;
    const double u0_v = tests->plan->survey->supply.voltage_v.value;
    struct SayArg *figures = tests->figures;
    find_path(tests);
    find_electrode(tests);
    find_fault(tests);
    figures[R1] = ohms(readings->r1_20_ohm);
    figures[R2] = ohms(readings->r2_20_ohm);
    figures[R1R2] = ohms(readings->r1r2_20_ohm);
    figures[INSULATION_LEAST] = insulation_least(tests->arena, readings);
    figures[EARTH_VOLTS] = say_fixed(u0_v, 0, UNIT_V);
    figures[LINE_VOLTS] = say_fixed(sqrt(3) * u0_v, 0, UNIT_V);
    figures[ZE] = ohms(readings->ze_ohm);
    figures[ZS_COLD] = readings->zs_20_ohm > 0 ? say_part(say(tests->arena, SAY_EXPECT_COLD, ohms(readings->zs_20_ohm)))
                                               : say_term(SAY_NOT_KNOWN);
    figures[ZS_MOST] = loop_most(tests);
    figures[RESIDUAL_MA] = milliamperes(readings->residual_a);
    figures[RESIDUAL_TIME] = residual_time(tests->arena, readings);
    figures[BOARD_MA] = milliamperes(readings->board_residual_a);
    figures[BOARD_MS] = milliseconds(readings->board_residual_longest_s);
}

static void put(struct Tests *tests, struct XmlElement *test, const char *name, const struct Cell *cell)
{
    const struct SayArg args[] = {tests->figures[cell->figures[0]], tests->figures[cell->figures[1]]};
    xml_say_attribute(tests->out, test, name, say(tests->arena, cell->says, args[0], args[1]));
}

static struct SayArg where_in_standard(struct Arena *arena, const struct TestRow *row)
{
    const struct SayArg clause = say_name(row->source.clause), table = say_name(row->source.table);
    return *row->source.table == '\0'    ? clause
           : *row->source.clause == '\0' ? say_part(say(arena, SAY_TABLE_ALONE, table))
                                         : say_part(say(arena, SAY_CLAUSE_AND_TABLE, clause, table));
}

static void add_test(struct Tests *tests, const struct TestRow *row, int number)
{
    struct XmlOut *out = tests->out;
    struct XmlElement *test = xml_child(out, tests->element, "test");
    xml_integer(out, test, "number", number);
    xml_attribute(out, test, "group", row->group);
    put(tests, test, "name", &row->name);
    put(tests, test, "between", &row->between);
    put(tests, test, "expect", &row->expect);
    put(tests, test, "limit", &row->limit);
    xml_say_attribute(out, test, "source", say(tests->arena, row->source.says, where_in_standard(tests->arena, row)));
    /* what to write into, divided by | */
    xml_say_attribute(out, test, "blanks", say(tests->arena, row->blanks));
    xml_say(out, test, say(tests->arena, row->bad));
}

static void add_tests(struct Tests *tests)
{
    const unsigned facts = facts_of(tests);
    int number = 0;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        if ((facts & rows[i].where) == rows[i].where && (facts & rows[i].unless) == 0) {
            add_test(tests, &rows[i], ++number);
        }
    }
}

/* A length of conductor by its temperature, for a reading on a cold morning. */
static void add_temperatures(const struct Tests *tests)
{
    const struct Readings *readings = &tests->run->readings;
    if (!(readings->r1_20_ohm > 0) || !(readings->r2_20_ohm > 0)) {
        return;
    }
    for (int degc = 0; degc <= 40; degc += 10) {
        struct XmlElement *at = xml_child(tests->out, tests->element, "at");
        const struct ReadingsAt cold = readings_at(readings, degc);
        xml_integer(tests->out, at, "cable", degc);
        papers_attribute(tests->out, at, "r1", say_fixed(cold.r1_ohm, 3, UNIT_NONE));
        papers_attribute(tests->out, at, "r2", say_fixed(cold.r2_ohm, 3, UNIT_NONE));
        papers_attribute(tests->out, at, "r1r2", say_fixed(cold.r1r2_ohm, 3, UNIT_NONE));
    }
}

void papers_tests(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan, const struct PlanRun *run)
{
    struct Tests tests = {.out = out, .arena = xml_out_arena(out), .plan = plan, .run = run};
    tests.element = xml_child(out, papers, "tests");
    xml_attribute(out, tests.element, "run", run->settled->name);
    xml_attribute_if(out, tests.element, "serves", run->settled->serves);
    xml_say_attribute(out, tests.element, "cable", papers_cable(tests.arena, run));
    papers_attribute(out, tests.element, "device", papers_device(run));
    xml_attribute_if(out, tests.element, "note", xml_said(out, run->readings.note));
    find_figures(&tests);
    add_tests(&tests);
    papers_cores(out, tests.element, plan, run);
    add_temperatures(&tests);
}
