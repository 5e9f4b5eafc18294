/** What differs between two plans, before it is printed in one form or another. */
#ifndef WEND_DIFF_PRIVATE_H
#define WEND_DIFF_PRIVATE_H

#include "documents/documents.h"

enum DiffWhat {
    DIFF_VERDICT, /**< always there */
    DIFF_CABLE,
    DIFF_DEVICE,
    DIFF_LENGTH,
    DIFF_DROP,
    DIFF_CHECK, /**< another result */
    DIFF_FETCH,
    DIFF_BACK,
    DIFF_WHATS
};
struct DiffRow {
    enum DiffWhat what;
    const char *name;      /**< the run, the run and the check, or the article's code; "" the whole plan */
    const char *old, *now; /**< "" where there is none; of parts `now` alone */
};
struct DiffRows {
    int count;
    const struct DiffRow *list; /**< NULL without memory */
};
struct DiffRows diff_rows(struct Arena *arena, const struct DiffSide *old, const struct DiffSide *now);

#endif
