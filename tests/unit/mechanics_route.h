/** Whole routes for the tests of bends, ducts and drawing in: a smallest file with one part changed. */
#ifndef WEND_MECHANICS_ROUTE_H
#define WEND_MECHANICS_ROUTE_H

#include "library/library_stages.h"
#include "wend/wend.h"

#include <check.h>

/** What the file is made of; texts of YAML, NULL for what stands by itself. */
struct MechanicsRoute {
    const char *load;     /**< "{current: 16 A}" */
    const char *cable;    /**< "{type: BS5467, cores: 3}" */
    const char *run;      /**< further keys of the run, each on a line of its own, indented by four */
    const char *runs;     /**< further runs, indented by two */
    const char *segments; /**< the whole list, indented by two; 20 m of new 63 mm duct named path */
};
/** Plans it; fails the test when there is no plan. wend_free() it. */
struct Wend *mechanics_plan(const struct MechanicsRoute *route);
/** Plans it, whatever comes of it. */
struct Wend *mechanics_try(const struct MechanicsRoute *route);
/** The run's check with this id; fails the test without. */
const struct Check *route_check(const struct Wend *wend, int run, const char *id);
/** Whether something with this stable name was told. */
bool route_told(const struct Wend *wend, const char *name);
void route_says(const char *text, const char *part);
/** Whether the plan lists this as not checked, of this run. */
bool route_not_checked(const struct Wend *wend, const char *id, const char *run);

TCase *mechanics_choice_tests(void);
TCase *mechanics_keys_tests(void);
TCase *mechanics_legs_tests(void);
TCase *mechanics_together_tests(void);

#endif
