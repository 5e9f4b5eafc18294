/** A route of a few lines, planned and counted, for the tests of the take-off. */
#ifndef WEND_TEST_TAKEOFF_RIG_H
#define WEND_TEST_TAKEOFF_RIG_H

#include "library/library_stages.h"
#include "wend/wend.h"

#include <check.h>

struct TakeOff {
    struct Wend *wend;
    const struct Plan *plan;
    const struct PartsList *parts;
    struct Arena *arena; /* of the words */
};

/** An ordinary three-core 10 mm2 BS 5467 cable (19.5 mm overall) on TN-S with these segments ("- {name: a, ...}", one a
 * line); its ends have no loop. */
struct TakeOff takeoff_of(const char *segments);
/** The same with the run's lines of the caller's own ("    cable: ..." and what follows) and a piece for the top of the
 * file ("earthing: ..." or ""). */
struct TakeOff takeoff_with(const char *run, const char *segments, const char *top);
/** A whole route file. */
struct TakeOff takeoff_text(const char *text);
void takeoff_free(struct TakeOff *takeoff);

/** The line of that code; NULL when there is none. */
const struct Part *takeoff_part(const struct TakeOff *takeoff, const char *code);
/** What is needed of it; 0 when it is not listed. */
double takeoff_needed(const struct TakeOff *takeoff, const char *code);
/** The work on a stretch, of run 0; with run -1 of the stretch itself. Fails the test when there is none. */
const struct PartsWay *takeoff_way(const struct TakeOff *takeoff, const char *segment, int run);
/** True when a sentence of it has that text in it. */
bool takeoff_says(const struct PartsWay *way, const char *text);
/** What it is called, and what is remarked on it. */
const char *takeoff_described(const struct TakeOff *takeoff, const struct Part *part);
const char *takeoff_note(const struct TakeOff *takeoff, const struct Part *part);
/** What it is said to be for. */
const char *takeoff_uses(const struct TakeOff *takeoff, const char *code);
/** True when a note on what is not counted has that text in it. */
bool takeoff_notes(const struct TakeOff *takeoff, const char *text);

Suite *suite_takeoff_tables(void);
Suite *suite_takeoff_fixings(void);
Suite *suite_takeoff_ends(void);
Suite *suite_takeoff_devices(void);
Suite *suite_takeoff_supply(void);
Suite *suite_takeoff_ground(void);
Suite *suite_takeoff_held(void);

#endif
