/** Drawings for the papers: what they show is what the files of the diagram hold. */
#ifndef WEND_SVG_PRIVATE_H
#define WEND_SVG_PRIVATE_H

#include "documents/documents.h"
#include "plan/plan.h"
#include "takeoff/parts.h"
#include "words/words.h"

/** How many sheets the papers take. */
enum { DIAGRAM_SHEETS_MOST = 400 };

enum { SVG_SHEET_PIECES = 3 };
struct SvgSheets {
    int count;            /**< 0 without memory */
    struct Bytes file;    /**< the whole diagram; data is NULL when memory fails, and of more sheets than are wanted */
    struct Pieces papers; /**< the sheets one after the other, each a drawing of its own in SVG_SHEET_PIECES */
};
/** Lays the diagram out and writes it, a sheet at a time; nothing of more than `sheets_most`, 0: however many. */
struct SvgSheets svg_sheets(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                            enum Language language, const char *mark, int sheets_most);
/** How many it would have; 0 without memory. */
int svg_sheets_wanted(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                      enum Language language, const char *mark);
/** The drawing for a phone; no pieces without memory. */
struct SvgNarrow svg_narrow(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                            enum Language language, const char *mark);
/** Its file. */
struct Bytes svg_narrow_file(struct Arena *arena, const struct SvgNarrow *narrow);
/** Pieces together; data is NULL for none, or when memory failed. */
struct Bytes svg_joined(struct Arena *arena, struct Pieces pieces);

#endif
