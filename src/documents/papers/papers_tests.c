/* The test sheet: what to measure, in the order of BS 7671 part 6, what to expect, what is allowed, and what a bad
 * reading usually means. What is not known is left open, never guessed. */
#include "papers_tests_private.h"

#include "documents/shown_private.h"

#include <math.h>

void tests_add(struct Tests *tests, const struct TestRow *row)
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

const char *tests_ohms(struct Arena *arena, double ohm)
{
    return ohm > 0 ? arena_print(arena, "%s ohm", number_text(arena, ohm, ohm < 10 ? 3 : 1)) : "not known";
}

const char *tests_touch_limit(struct Arena *arena, double residual_a)
{
    return number_text(arena, floor(50 / residual_a + 1e-9), 0);
}

const char *tests_stopped(const struct Tests *tests)
{
    const bool armour = earth_far_armour(tests->plan, tests->run) == EARTH_STOPS;
    if (earth_far_conductor(tests->plan, tests->run) != EARTH_STOPS) {
        return armour ? "the armour" : "";
    }
    const bool separate = tests->run->surveyed->cable.cpc == CPC_SEPARATE;
    return armour     ? (separate ? "the armour and the earth cable" : "the armour and the earth core")
           : separate ? "the earth cable"
                      : "the earth core";
}

double tests_electrode_a(const struct Tests *tests)
{
    const struct Quantity *board = &tests->plan->survey->earthing.board_residual_a;
    return board->given ? board->value : tests->run->readings.residual_a;
}

/* A length of conductor by its temperature, for a reading on a cold morning. Copper 0.004, armour 0.0045 per kelvin. */
static void add_temperatures(struct Tests *tests)
{
    const struct Readings *readings = &tests->run->readings;
    const enum Cpc cpc = survey_fault_path(tests->plan->survey, tests->run->surveyed);
    const double rise = cpc == CPC_ARMOUR ? 0.0045 : 0.004;
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
    xml_attribute(out, tests.element, "device",
                  shown_said(tests.arena, run->device_full != NULL ? run->device_full : run->device_text));
    xml_attribute_if(out, tests.element, "note", run->readings.note);
    tests_dead(&tests);
    tests_live(&tests);
    papers_cores(out, tests.element, plan, run);
    add_temperatures(&tests);
}
