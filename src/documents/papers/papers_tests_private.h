/** How the files of the test sheet speak to each other: a row is one test. */
#ifndef WEND_PAPERS_TESTS_PRIVATE_H
#define WEND_PAPERS_TESTS_PRIVATE_H

#include "documents/earth_ends_private.h"
#include "papers_private.h"

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

/** Adds the row as the next test. */
void tests_add(struct Tests *tests, const struct TestRow *row);
/** "0.123 ohm"; "not known" for what was not worked out. */
const char *tests_ohms(struct Arena *arena, double ohm);
/** "1666": the ohms at which that residual current leaves 50 V, cut and not rounded, so that no reading over the limit
 * passes. */
const char *tests_touch_limit(struct Arena *arena, double residual_a);
/** What carries the supply's earth out to an island and must not touch the outbuilding's: "the armour and the earth
 * core", "the armour", "the earth core"; "" when the far end is no island or nothing goes there. */
const char *tests_stopped(const struct Tests *tests);
/** The residual current that the electrode is held against: the outbuilding's own device, else the run's. In A. */
double tests_electrode_a(const struct Tests *tests);
/** Each part in its order. */
void tests_dead(struct Tests *tests);
void tests_live(struct Tests *tests);

#endif
