/** A drawing as a list of simple things at places in millimetres: no SVG in it, so that tests can ask what lies where.
 * x runs to the right and y down, from the upper left corner of the first sheet. */
#ifndef WEND_DRAWING_PRIVATE_H
#define WEND_DRAWING_PRIVATE_H

#include "base/base.h"
#include "words/words.h"

/** Black and white is the design; the accent says again what black says already. What writes text has at least 4.5:1
 * against white; white writes on black alone. */
enum Ink { INK_NONE, INK_BLACK, INK_GREY, INK_PALE, INK_SHADE, INK_LOAD, INK_ACCENT, INK_WHITE };
enum Dash { DASH_NONE, DASH_SHORT, DASH_LONG, DASH_CHAIN };

struct Pen {
    enum Ink ink;
    double width_mm;
    enum Dash dash;
};

struct DrawPoint {
    double x_mm, y_mm;
    bool move; /**< begins a new line instead of going on from the point before */
};

enum Anchor { ANCHOR_LEFT, ANCHOR_MIDDLE, ANCHOR_RIGHT };

struct TextStyle {
    double size_mm; /**< height of the type: font-size */
    bool bold;
    enum Ink ink;
    enum Anchor anchor;
};

enum DrawKind { DRAW_PATH, DRAW_CIRCLE, DRAW_TEXT, DRAW_GROUP, DRAW_GROUP_END };

struct DrawItem {
    enum DrawKind kind;
    struct Pen pen;
    enum Ink fill;
    bool cable;  /**< a path that is the cable itself */
    bool closed; /**< a path whose lines are closed */
    size_t first_point, point_count;
    double x_mm, y_mm; /**< centre of a circle; anchor on the base line of a text */
    double radius_mm;
    const char *text; /**< of a text; the title of a group, "" for none */
    const char *id;   /**< of a group; "" for none */
    struct TextStyle style;
    double width_mm; /**< room reserved for a text, from a table of the widest common type */
    bool fitted;     /**< the text has letters that the table does not know: the writer forces it into the room */
};

struct Drawing {
    struct Arena *arena;
    double width_mm, height_mm; /**< of all sheets together; dots where `dots` */
    bool dots;                  /**< made for a screen: one unit is one dot, and no sheet is cut out of it */
    const char *title, *description;
    enum Language language; /**< of its words */
    size_t count, room;
    struct DrawItem *items;
    size_t point_count, point_room;
    struct DrawPoint *points;
    bool failed; /**< memory; the list is then not whole */
};

struct DrawBox {
    double left_mm, top_mm, right_mm, bottom_mm;
};

/** An empty drawing in `arena`. */
struct Drawing drawing_new(struct Arena *arena);
/** Takes off what was drawn; its size and its names stay. */
void drawing_forget(struct Drawing *drawing);
/** Opens a group; closed by drawing_group_end(). */
void drawing_group(struct Drawing *drawing, const char *id, const char *title);
void drawing_group_end(struct Drawing *drawing);
/** Begins a path; points follow with drawing_move() and drawing_to(). */
void drawing_path(struct Drawing *drawing, struct Pen pen, enum Ink fill);
void drawing_move(struct Drawing *drawing, double x_mm, double y_mm);
void drawing_to(struct Drawing *drawing, double x_mm, double y_mm);
/** Closes the lines of the path just drawn. */
void drawing_close(struct Drawing *drawing);
/** Marks the path just begun as the cable. */
void drawing_is_cable(struct Drawing *drawing);
void drawing_line(struct Drawing *drawing, struct Pen pen, double x1_mm, double y1_mm, double x2_mm, double y2_mm);
void drawing_rect(struct Drawing *drawing, struct Pen pen, enum Ink fill, double x_mm, double y_mm, double width_mm,
                  double height_mm);
void drawing_circle(struct Drawing *drawing, struct Pen pen, enum Ink fill, double x_mm, double y_mm, double radius_mm);
/** One line of text; "" draws nothing. The caller has made it fit (type_cut()). */
void drawing_text(struct Drawing *drawing, struct TextStyle style, double x_mm, double y_mm, const char *text);
/** The room that a text item takes, with what hangs below the line and what rises above capitals. */
struct DrawBox drawing_text_box(const struct DrawItem *item);

/* ---- type: how wide text is, taking the widest of the common sans-serif faces ---- */

/** Width of a text, mm. */
double type_width_mm(const char *text, double size_mm, bool bold);
/** True when every letter's width is known from a table and not merely estimated. */
bool type_known(const char *text);
/** Cut with an ellipsis to what `width_mm` holds. */
const char *type_cut(struct Arena *arena, const char *text, struct TextStyle style, double width_mm);
/** The widest piece that a line should not break: up to a blank, or behind a hyphen. */
double type_widest_piece_mm(struct Arena *arena, const char *text, double size_mm, bool bold);
/** Broken into at most `most` lines of `width_mm`; the last is cut when there is more. Returns how many. */
int type_wrap(struct Arena *arena, const char *text, struct TextStyle style, double width_mm, int most,
              const char **lines);

#endif
