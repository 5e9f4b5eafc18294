/** A drawing list as SVG in two pieces that are put together as bytes: what is drawn, and all around it. So no more
 * than a sheet of a long way is a tree at a time, and its text is the same in the file and in the papers. */
#ifndef WEND_WRITE_SVG_PRIVATE_H
#define WEND_WRITE_SVG_PRIVATE_H

#include "documents/xml/xml_private.h"
#include "drawing_private.h"

/** What is drawn, each thing on a line of its own. data is NULL when memory failed. */
struct Bytes svg_items(struct Arena *arena, const struct Drawing *drawing);

/** Of what stands around it. */
struct SvgShape {
    const char *mark;               /**< of the plan's sheets; NULL none */
    int sheet;                      /**< the part of the whole that it shows; 0: all of it */
    int lines_before, lines_behind; /**< empty ones, where the other sheets of the whole are */
};
/** `before.data` is NULL when memory failed. */
struct SvgAround {
    struct Bytes before, behind;
};
/** Size and names are those of `drawing`; what it draws is not asked. */
struct SvgAround svg_around(struct Arena *arena, const struct Drawing *drawing, const struct SvgShape *shape);

#endif
