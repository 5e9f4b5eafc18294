/** What the papers of a plan print, as its templates find it. */
#ifndef WEND_PRINTED_H
#define WEND_PRINTED_H

#include "documents/papers/papers_private.h"
#include "library/library_stages.h"

/** Lives as long as the test. */
static inline struct Bytes printed(const struct Wend *wend)
{
    static struct Arena *kept;
    static const struct Words plain = {.language = LANGUAGE_ENGLISH, .medium = MEDIUM_PLAIN};
    kept = kept != NULL ? kept : arena_new();
    return papers_xml(kept, wend_result(wend), wend_parts(wend), &plain);
}

#endif
