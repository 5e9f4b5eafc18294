/** Drawings for the papers: what they show is what the files of the diagram hold. */
#ifndef WEND_SVG_PRIVATE_H
#define WEND_SVG_PRIVATE_H

#include "plan/plan.h"
#include "takeoff/parts.h"
#include "words/words.h"

/** How many sheets the papers take: each is a drawing of its own there. */
enum { DIAGRAM_SHEETS_MOST = 400 };

/** Who takes the diagram's sheets, each as a drawing of its own that shows its part of the whole. */
struct SvgTaker {
    void (*take)(void *context, struct Bytes drawing); /**< there until it returns; data is NULL without memory */
    void *context;
    int sheets_most; /**< of more nothing is made */
};
struct SvgSheets {
    int count;         /**< 0 without memory */
    struct Bytes file; /**< the whole diagram; data is NULL when memory fails, and of more sheets than are taken */
};
/** Lays the diagram out and writes it, a sheet at a time. `taker` may be NULL. */
struct SvgSheets svg_sheets(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                            enum Language language, const char *mark, const struct SvgTaker *taker);
/** The drawing for a phone, as papers have it; data is NULL without memory. */
struct Bytes svg_narrow(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                        enum Language language);

#endif
