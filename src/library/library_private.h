/** What the files of the library know of each other. */
#ifndef WEND_LIBRARY_PRIVATE_H
#define WEND_LIBRARY_PRIVATE_H

#include "wend/wend.h"

/** One route in memory. Everything but itself lives in `arena`. */
struct Wend {
    struct Arena *arena;
    struct Diag *diag;
    struct Bytes source;
    const struct Plan *plan; /**< NULL when the route is wrong or memory failed */
    const struct PartsList *parts;
};

#endif
