/** Routes made up at random from a seed, the same on every machine, and how a surveyor would write them. */
#ifndef WEND_TEST_MADE_ROUTE_H
#define WEND_TEST_MADE_ROUTE_H

#include <stdint.h>

enum { MADE_STRETCHES_MOST = 14, MADE_TEXT_MOST = 16384 };

struct MadeStretch {
    const char *way;
    int length_mm, air_degc, insulated; /**< insulated: whole length surrounded */
    int beside, depth_mm, sun;
    const char *wall;
    /* what bears on the take-off alone; 0 and NULL as they are made */
    int rise_mm, bends;
    const char *fixed_to;
    const char *more; /**< further keys as text, with a comma before each; NULL none */
};
struct MadeRoute {
    int count;
    struct MadeStretch stretches[MADE_STRETCHES_MOST + 1];
    int current_a, cores, phases, size; /**< size 0: choose */
    int power_factor_percent;           /**< 0: not given */
    const char *loads;                  /**< in the place of the one load; NULL: that */
    int terminals;
    const char *cable;     /**< what the feeder is, as text, instead of BS5467 of `cores`; NULL: that */
    const char *more_runs; /**< further runs as text, NULL none */
};

/** A number from low to high, both in it. */
int made_between(uint32_t *state, int low, int high);
struct MadeStretch made_stretch(uint32_t *state);
struct MadeRoute made_route(uint32_t seed);
/** The route as a surveyor would write it. */
void made_write(const struct MadeRoute *made, char text[MADE_TEXT_MOST]);

#endif
