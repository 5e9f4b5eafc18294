/** Reads a route from memory, for the tests of the reader. */
#ifndef WEND_READ_ROUTE_H
#define WEND_READ_ROUTE_H

#include "read/read.h"

#include <check.h>

struct ReadRoute {
    struct Arena *arena;
    struct Diag *diag;
    struct Bytes source;
    const struct Survey *survey;
};

/** Ends with read_route_free(). `source` must outlive it. */
struct ReadRoute read_route(struct Bytes source);
struct ReadRoute read_route_text(const char *text);
void read_route_free(struct ReadRoute *route);
/** All reports, printed; for failure messages. */
const char *read_route_reports(struct ReadRoute *route);
/** Number of reports with a stable name. */
int read_route_told(struct ReadRoute *route, const char *name);
/** A whole file in malloc'ed memory; fails the test when it cannot be read. */
struct Bytes read_route_file(const char *path);
/** Those bytes, to be changed or freed. */
char *read_route_own(struct Bytes bytes);

/** Where a line can be put into the smallest good route. */
enum ReadSlot {
    SLOT_TOP,
    SLOT_JOB,
    SLOT_SUPPLY,
    SLOT_LOAD,   /**< instead of "current: 10 A" */
    SLOT_DEVICE, /**< instead of "rating: 16 A" */
    SLOT_CABLE,  /**< after type and cores, ", key: value" */
    SLOT_RUN,
    SLOT_RUNS,     /**< a further run */
    SLOT_SEGMENT,  /**< instead of "way: wall" */
    SLOT_SEGMENTS, /**< a further segment */
    SLOT_COUNT
};
/** The smallest good route with `text` in a slot. malloc'ed. */
char *read_route_with(enum ReadSlot slot, const char *text);

#endif
