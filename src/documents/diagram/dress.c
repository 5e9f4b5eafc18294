/* What lies along a way, as lines beside the cable and ticks across it: a row for each kind of way. Offsets are from
 * the middle of the cable, to the lower side of one that goes to the right. */
#include "layout_private.h"

#include <math.h>

enum { LINES_MOST = 3 };

static const struct Dress {
    struct {
        double offset_mm, width_mm;
        enum Dash dash;
    } lines[LINES_MOST];
    double pitch_mm, from_mm, to_mm, slant_mm, tick_mm; /* ticks; tick_mm is their width */
} dresses[WAY_COUNT] = {
    [WAY_WALL] = {{{1.6, WIDTH_THING, DASH_NONE}}, 2.2, 1.6, 2.9, -0.9, WIDTH_RULE},
    [WAY_FENCE] = {{{-4.2, WIDTH_RULE, DASH_NONE}, {-1.6, WIDTH_RULE, DASH_NONE}}, 6, -5, 1.6, 0, WIDTH_THING},
    [WAY_BEAM] = {{{1.5, WIDTH_THING, DASH_NONE}, {2.9, WIDTH_RULE, DASH_NONE}}, 6, 1.5, 2.9, 0, WIDTH_RULE},
    [WAY_LOFT_VOID] = {{{1.3, WIDTH_THING, DASH_NONE}}, 3.2, 1.3, 3.4, 0, WIDTH_RULE},
    [WAY_UNDER_FLOOR] =
        {{{-1.8, WIDTH_THING, DASH_NONE}, {-2.9, WIDTH_THING, DASH_NONE}}, 5, -2.9, -1.8, 0, WIDTH_RULE},
    [WAY_STUD_WALL] = {{{-2.2, WIDTH_THING, DASH_NONE}, {2.2, WIDTH_THING, DASH_NONE}}, 2.2, 0.9, 2.2, -1, WIDTH_RULE},
    [WAY_CEILING] = {{{1.8, WIDTH_THING, DASH_NONE}, {2.6, WIDTH_RULE, DASH_NONE}}, 6, -3, 1.8, 0, WIDTH_RULE},
    [WAY_CONDUIT] = {{{-1.4, WIDTH_THING, DASH_NONE}, {1.4, WIDTH_THING, DASH_NONE}}, 6, -1.9, 1.9, 0, WIDTH_THING},
    [WAY_TRUNKING] =
        {{{-1.6, WIDTH_THING, DASH_NONE}, {1.6, WIDTH_THING, DASH_NONE}, {-1.1, WIDTH_RULE, DASH_NONE}}, 0, 0, 0, 0, 0},
    [WAY_TRAY] = {{{1.3, WIDTH_THING, DASH_NONE}, {2, WIDTH_THING, DASH_SHORT}}, 0, 0, 0, 0, 0},
    [WAY_LADDER] = {{{-1.6, WIDTH_THING, DASH_NONE}, {1.6, WIDTH_THING, DASH_NONE}}, 2.6, -1.6, 1.6, 0, WIDTH_RULE},
    [WAY_CATENARY] = {{{-1.9, WIDTH_THING, DASH_NONE}}, 4, -1.9, 0, 0, WIDTH_RULE},
    [WAY_DUCT] = {{{-1.5, WIDTH_THING, DASH_NONE}, {1.5, WIDTH_THING, DASH_NONE}}, 0, 0, 0, 0, 0},
};

struct Along {
    struct Drawing *drawing;
    struct WayPiece place;
    double length_mm, dx, dy;
};

static double along_x(const struct Along *along, double at_mm, double off_mm)
{
    return along->place.x1_mm + along->dx * at_mm - along->dy * off_mm;
}

static double along_y(const struct Along *along, double at_mm, double off_mm)
{
    return along->place.y1_mm + along->dy * at_mm + along->dx * off_mm;
}

static void draw_lines(const struct Along *along, const struct Dress *dress)
{
    for (int i = 0; i < LINES_MOST && dress->lines[i].width_mm > 0; i++) {
        const struct Pen pen = {INK_BLACK, dress->lines[i].width_mm * along->place.scale, dress->lines[i].dash};
        const double off_mm = dress->lines[i].offset_mm * along->place.scale;
        drawing_line(along->drawing, pen, along_x(along, 0, off_mm), along_y(along, 0, off_mm),
                     along_x(along, along->length_mm, off_mm), along_y(along, along->length_mm, off_mm));
    }
}

static void draw_ticks(const struct Along *along, const struct Dress *dress)
{
    const double scale = along->place.scale, slant_mm = fabs(dress->slant_mm) * scale;
    const int count = dress->pitch_mm > 0 ? (int)((along->length_mm - slant_mm) / (dress->pitch_mm * scale)) : 0;
    const double step_mm = count > 0 ? (along->length_mm - slant_mm) / count : 0;
    if (count > 0) {
        drawing_path(along->drawing, (struct Pen){INK_BLACK, dress->tick_mm * scale, DASH_NONE}, INK_NONE);
    }
    for (int i = 0; i < count; i++) {
        const double at_mm = slant_mm + (i + 0.5) * step_mm;
        const double from_mm = dress->from_mm * scale, to_mm = dress->to_mm * scale;
        drawing_move(along->drawing, along_x(along, at_mm, from_mm), along_y(along, at_mm, from_mm));
        drawing_to(along->drawing, along_x(along, at_mm - slant_mm, to_mm), along_y(along, at_mm - slant_mm, to_mm));
    }
}

/* Never so near to the cable or to the surface that it runs into it. */
static void draw_tape(const struct Along *along, bool duct)
{
    const double cover_mm = along->place.cover_mm;
    const double off_mm = -fmin(fmax(0.4 * cover_mm, duct ? 2.4 : 1.6), 0.74 * cover_mm);
    if (cover_mm > 2.2) {
        drawing_line(along->drawing, (struct Pen){INK_BLACK, WIDTH_THING, DASH_LONG}, along_x(along, 0, off_mm),
                     along_y(along, 0, off_mm), along_x(along, along->length_mm, off_mm),
                     along_y(along, along->length_mm, off_mm));
    }
}

/* A roof over the whole of it; the quilt is part of the row above. */
static void draw_roof(const struct Along *along)
{
    const struct WayPiece *place = &along->place;
    drawing_path(along->drawing, (struct Pen){INK_BLACK, WIDTH_THING, DASH_NONE}, INK_NONE);
    drawing_move(along->drawing, place->x1_mm, place->y1_mm - 2);
    drawing_to(along->drawing, (place->x1_mm + place->x2_mm) / 2, fmin(place->y1_mm, place->y2_mm) - 7);
    drawing_to(along->drawing, place->x2_mm, place->y2_mm - 2);
}

void dress_way(struct Drawing *drawing, enum Way way, struct WayPiece place)
{
    struct Along along = {.drawing = drawing, .place = place};
    const double across_mm = place.x2_mm - place.x1_mm, down_mm = place.y2_mm - place.y1_mm;
    along.length_mm = hypot(across_mm, down_mm);
    if (along.length_mm < 0.1 || way < 0 || way >= WAY_COUNT) {
        return;
    }
    along.dx = across_mm / along.length_mm;
    along.dy = down_mm / along.length_mm;
    draw_lines(&along, &dresses[way]);
    draw_ticks(&along, &dresses[way]);
    if (survey_in_ground(way)) {
        draw_tape(&along, way == WAY_DUCT);
    } else if (way == WAY_LOFT_VOID && place.scale <= 1) {
        draw_roof(&along);
    }
}

static void draw_leaf(struct Drawing *drawing, enum WallKind kind, struct DrawBox box)
{
    const struct Pen rule = {INK_BLACK, WIDTH_RULE, DASH_NONE}, edge = {INK_BLACK, 0.3, DASH_NONE};
    const double width_mm = box.right_mm - box.left_mm;
    drawing_path(drawing, rule, INK_NONE);
    const double first_mm = box.top_mm + 0.4, course_mm = kind == WALL_STONE ? 1.5 : 0.9;
    for (int course = 0; first_mm + course * course_mm < box.bottom_mm - 0.2; course++) {
        const double y = first_mm + course * course_mm;
        if (kind == WALL_STONE) {
            const double joint_mm = box.left_mm + width_mm * (course % 2 == 0 ? 0.68 : 0.35);
            drawing_move(drawing, box.left_mm, y);
            drawing_to(drawing, box.right_mm, y);
            drawing_move(drawing, joint_mm, y);
            drawing_to(drawing, joint_mm, fmin(y + 1.5, box.bottom_mm));
        } else if (y + width_mm < box.bottom_mm) {
            drawing_move(drawing, box.left_mm, y + width_mm);
            drawing_to(drawing, box.right_mm, kind == WALL_TIMBER ? y + width_mm : y);
        }
    }
    drawing_line(drawing, edge, box.left_mm, box.top_mm, box.left_mm, box.bottom_mm);
    drawing_line(drawing, edge, box.right_mm, box.top_mm, box.right_mm, box.bottom_mm);
}

void dress_wall(struct Drawing *drawing, enum WallKind kind, struct DrawBox box)
{
    const double width_mm = box.right_mm - box.left_mm, leaf_mm = 0.34 * width_mm;
    drawing_rect(drawing, (struct Pen){INK_NONE, 0, DASH_NONE}, INK_WHITE, box.left_mm, box.top_mm, width_mm,
                 box.bottom_mm - box.top_mm);
    if (kind != WALL_CAVITY && kind != WALL_INSULATED_CAVITY) {
        draw_leaf(drawing, kind, box);
        return;
    }
    draw_leaf(drawing, kind, (struct DrawBox){box.left_mm, box.top_mm, box.left_mm + leaf_mm, box.bottom_mm});
    draw_leaf(drawing, kind, (struct DrawBox){box.right_mm - leaf_mm, box.top_mm, box.right_mm, box.bottom_mm});
}
