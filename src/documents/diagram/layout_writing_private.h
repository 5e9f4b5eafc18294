/** How the boxes under a strip get their lines; shared by what writes stretches and what writes ends. */
#ifndef WEND_LAYOUT_WRITING_PRIVATE_H
#define WEND_LAYOUT_WRITING_PRIVATE_H

#include "layout_private.h"

/* keeps a number and its unit on one line */
#define NO_BREAK "\xC2\xA0"
#define DEGREES  "\xC2\xB0\x43" /* the last byte is the C */
#define TIMES    "\xC3\x97"

enum { LINES_FOR_ONE_TEXT = 2, LINES_FOR_LONG_TEXT = 3, STRETCH_LINES_MOST = 14, END_LINES_MOST = 20 };

/** A box being filled. */
struct Writing {
    struct Arena *arena;
    struct Label *label;
    double width_mm;
    double name_indent_mm; /**< room for the number */
    int kept_lines;        /**< for what comes last */
};

/** The name at the head; cut when it needs more than two lines. */
void layout_put_name(const struct Writing *writing, const char *name);
/** One text, broken into at most `lines_most` lines; "" writes nothing. */
void layout_put_line(const struct Writing *writing, const char *text, int lines_most);
/** The same in strong type. */
void layout_put_strong(const struct Writing *writing, const char *text, int lines_most);
/** The numbers of flags, behind a flag, below all lines. */
void layout_put_flags(const struct Writing *writing, const char *numbers);
/** "250 mm" */
const char *layout_millimetres(const struct RouteLayout *layout, double length_mm);

/** What a stretch takes of work, as the parts list counted it. True when its fixings are among it. */
bool layout_put_work(const struct RouteLayout *layout, const struct Writing *writing, int segment);
/** What the box of a stretch says. */
void layout_write_stretch(const struct RouteLayout *layout, const struct Writing *writing);
/** What the box of an end says. */
void layout_write_end(const struct RouteLayout *layout, const struct Writing *writing);

#endif
