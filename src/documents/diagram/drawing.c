/* The drawing list: append only, in the order in which things are painted. */
#include "drawing_private.h"

#include <stdint.h>
#include <string.h>

/* Above the base line rise accents, below it hang tails: parts of the type's size, the larger of the common faces. */
static const double rise = 0.95, hang = 0.25;

struct Drawing drawing_new(struct Arena *arena)
{
    return (struct Drawing){.arena = arena, .title = "", .description = ""};
}

void drawing_forget(struct Drawing *drawing)
{
    drawing->count = drawing->point_count = 0;
}

/* Doubles a list; what was there is copied, since an arena cannot grow in place. */
static void *grown(struct Drawing *drawing, void *old, size_t count, size_t *room, size_t size)
{
    if (count < *room) {
        return old;
    }
    size_t larger = *room == 0 ? 256 : *room * 2;
    void *fresh = arena_array(drawing->arena, larger, size);
    if (fresh == NULL) {
        drawing->failed = true;
        return NULL;
    }
    if (count > 0) {
        memcpy(fresh, old, count * size);
    }
    *room = larger;
    return fresh;
}

static struct DrawItem *add_item(struct Drawing *drawing, enum DrawKind kind)
{
    if (drawing->failed) {
        return NULL;
    }
    if (drawing->count > 0 && drawing->items[drawing->count - 1].kind == DRAW_PATH &&
        drawing->items[drawing->count - 1].point_count == 0) {
        drawing->count--; /* a path that got no point is none */
    }
    struct DrawItem *items = grown(drawing, drawing->items, drawing->count, &drawing->room, sizeof *items);
    if (items == NULL) {
        return NULL;
    }
    drawing->items = items;
    items[drawing->count] = (struct DrawItem){.kind = kind, .text = "", .id = ""};
    return &items[drawing->count++];
}

void drawing_group(struct Drawing *drawing, const char *id, const char *title)
{
    struct DrawItem *item = add_item(drawing, DRAW_GROUP);
    if (item != NULL) {
        item->id = id;
        item->text = title;
    }
}

void drawing_group_end(struct Drawing *drawing)
{
    add_item(drawing, DRAW_GROUP_END);
}

void drawing_path(struct Drawing *drawing, struct Pen pen, enum Ink fill)
{
    struct DrawItem *item = add_item(drawing, DRAW_PATH);
    if (item != NULL) {
        item->pen = pen;
        item->fill = fill;
        item->first_point = drawing->point_count;
    }
}

static void add_point(struct Drawing *drawing, double x_mm, double y_mm, bool move)
{
    if (drawing->failed || drawing->count == 0) {
        return;
    }
    struct DrawPoint *points =
        grown(drawing, drawing->points, drawing->point_count, &drawing->point_room, sizeof *points);
    if (points == NULL) {
        return;
    }
    drawing->points = points;
    points[drawing->point_count++] = (struct DrawPoint){x_mm, y_mm, move};
    drawing->items[drawing->count - 1].point_count++;
}

void drawing_move(struct Drawing *drawing, double x_mm, double y_mm)
{
    add_point(drawing, x_mm, y_mm, true);
}

void drawing_to(struct Drawing *drawing, double x_mm, double y_mm)
{
    add_point(drawing, x_mm, y_mm, false);
}

void drawing_close(struct Drawing *drawing)
{
    if (!drawing->failed && drawing->count > 0) {
        drawing->items[drawing->count - 1].closed = true;
    }
}

void drawing_is_cable(struct Drawing *drawing)
{
    if (!drawing->failed && drawing->count > 0) {
        drawing->items[drawing->count - 1].cable = true;
    }
}

void drawing_line(struct Drawing *drawing, struct Pen pen, double x1_mm, double y1_mm, double x2_mm, double y2_mm)
{
    drawing_path(drawing, pen, INK_NONE);
    drawing_move(drawing, x1_mm, y1_mm);
    drawing_to(drawing, x2_mm, y2_mm);
}

void drawing_rect(struct Drawing *drawing, struct Pen pen, enum Ink fill, double x_mm, double y_mm, double width_mm,
                  double height_mm)
{
    drawing_path(drawing, pen, fill);
    drawing_move(drawing, x_mm, y_mm);
    drawing_to(drawing, x_mm + width_mm, y_mm);
    drawing_to(drawing, x_mm + width_mm, y_mm + height_mm);
    drawing_to(drawing, x_mm, y_mm + height_mm);
    drawing_close(drawing);
}

void drawing_circle(struct Drawing *drawing, struct Pen pen, enum Ink fill, double x_mm, double y_mm, double radius_mm)
{
    struct DrawItem *item = add_item(drawing, DRAW_CIRCLE);
    if (item != NULL) {
        item->pen = pen;
        item->fill = fill;
        item->x_mm = x_mm;
        item->y_mm = y_mm;
        item->radius_mm = radius_mm;
    }
}

void drawing_text(struct Drawing *drawing, struct TextStyle style, double x_mm, double y_mm, const char *text)
{
    if (*text == '\0') {
        return;
    }
    struct DrawItem *item = add_item(drawing, DRAW_TEXT);
    if (item != NULL) {
        item->style = style;
        item->x_mm = x_mm;
        item->y_mm = y_mm;
        item->text = text;
        item->width_mm = type_width_mm(text, style.size_mm, style.bold);
        item->fitted = !type_known(text);
    }
}

struct DrawBox drawing_text_box(const struct DrawItem *item)
{
    double left = item->x_mm;
    switch (item->style.anchor) {
    case ANCHOR_LEFT: break;
    case ANCHOR_MIDDLE: left -= item->width_mm / 2; break;
    case ANCHOR_RIGHT: left -= item->width_mm; break;
    }
    return (struct DrawBox){left, item->y_mm - rise * item->style.size_mm, left + item->width_mm,
                            item->y_mm + hang * item->style.size_mm};
}
