/** What the files of the library know of each other. */
#ifndef WEND_LIBRARY_PRIVATE_H
#define WEND_LIBRARY_PRIVATE_H

#include "documents/documents.h"
#include "wend/wend.h"

/** One route in memory. Everything but itself lives in `arena`. */
struct Wend {
    struct Arena *arena;
    struct Diag *diag;
    struct Bytes source;
    const struct Plan *plan; /**< NULL when the route is wrong or memory failed */
    const struct PartsList *parts;
    const struct WendTemplate *own; /**< the caller's */
    int own_count;
    bool papers_made; /**< all at once, when the first is asked for */
    struct Papers papers;
    struct Diag *prices_diag; /**< NULL until a price list was handed in */
    struct Bytes prices_source;
    const struct PriceList *prices; /**< NULL until a good one was handed in */
};

/** One of the HTML papers. */
struct Bytes library_paper(struct Wend *wend, enum Paper paper);

#endif
