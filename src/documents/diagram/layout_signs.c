/* The signs of our own for each way: what a cable lies on, in or under, drawn along the cable's line. Pattern and shape
 * carry the meaning; colour repeats it. */
#include "layout_private.h"

#include <math.h>

/* Runs along the line: `along` mm from its start, `off` mm to its lower side. */
struct Line {
    struct Drawing *drawing;
    double x_mm, y_mm; /* start */
    double ux, uy;     /* direction */
    double length_mm;
    double tape_mm, spread_mm;
};

/* What lies beside the cable makes room for others that lie beside it too. */
static double aside(const struct Line *line, double off)
{
    return off > 0 ? off + line->spread_mm : off < 0 ? off - line->spread_mm : 0;
}

static void move(const struct Line *line, double along, double off)
{
    off = aside(line, off);
    drawing_move(line->drawing, line->x_mm + line->ux * along - line->uy * off,
                 line->y_mm + line->uy * along + line->ux * off);
}

static void to(const struct Line *line, double along, double off)
{
    off = aside(line, off);
    drawing_to(line->drawing, line->x_mm + line->ux * along - line->uy * off,
               line->y_mm + line->uy * along + line->ux * off);
}

static void begin(const struct Line *line, enum Ink ink, double width_mm, enum Dash dash)
{
    drawing_path(line->drawing, (struct Pen){ink, width_mm, dash}, INK_NONE);
}

static void parallel(const struct Line *line, enum Ink ink, double width_mm, enum Dash dash, double off)
{
    begin(line, ink, width_mm, dash);
    move(line, 0.4, off);
    to(line, line->length_mm - 0.4, off);
}

/* How many things `pitch` apart fit along the line, with equal room at both ends; *first is the first one's place. */
static int repeats(const struct Line *line, double pitch, double *first)
{
    int count = (int)floor((line->length_mm - 0.8) / pitch);
    count = count < 1 ? 1 : count;
    *first = (line->length_mm - (count - 1) * pitch) / 2;
    return count;
}

static void strokes(const struct Line *line, enum Ink ink, double width_mm, double pitch, double from_off,
                    double to_off)
{
    double first = 0;
    int count = repeats(line, pitch, &first);
    begin(line, ink, width_mm, DASH_NONE);
    for (int i = 0; i < count; i++) {
        move(line, first + i * pitch, from_off);
        to(line, first + i * pitch, to_off);
    }
}

static void draw_wall(const struct Line *line)
{
    strokes(line, INK_BLACK, WIDTH_PLAIN, 4, -1.3, 1.3);
}

/* posts stand upright, whatever the slope of the cable */
static void draw_fence(const struct Line *line)
{
    double first = 0;
    int count = repeats(line, 8, &first);
    begin(line, INK_GROUND, WIDTH_BOLD, DASH_NONE);
    for (int i = 0; i < count; i++) {
        double x = line->x_mm + line->ux * (first + i * 8), y = line->y_mm + line->uy * (first + i * 8);
        drawing_move(line->drawing, x, y - 1.6);
        drawing_to(line->drawing, x, y + 4.6);
    }
    parallel(line, INK_GROUND, WIDTH_HAIR, DASH_NONE, 2.6);
}

static void draw_beam(const struct Line *line)
{
    parallel(line, INK_BLACK, WIDTH_THIN, DASH_NONE, 1.3);
    parallel(line, INK_BLACK, WIDTH_THIN, DASH_NONE, 3.3);
    strokes(line, INK_BLACK, WIDTH_THIN, 5, 0, 1.3);
}

static void draw_loft(const struct Line *line)
{
    double first = 0, pitch = 7;
    int count = repeats(line, pitch, &first);
    begin(line, INK_BLACK, WIDTH_THIN, DASH_NONE);
    for (int i = 0; i < count; i++) {
        double middle = first + i * pitch;
        move(line, middle - 2.6, -1.2);
        to(line, middle, -3.8);
        to(line, middle + 2.6, -1.2);
    }
}

static void draw_floor(const struct Line *line)
{
    parallel(line, INK_BLACK, WIDTH_THIN, DASH_NONE, -1.9);
    parallel(line, INK_BLACK, WIDTH_THIN, DASH_NONE, -3.1);
    strokes(line, INK_BLACK, WIDTH_THIN, 6, -3.1, -1.9);
}

static void draw_stud_wall(const struct Line *line)
{
    parallel(line, INK_BLACK, WIDTH_HAIR, DASH_LONG, -2.2);
    parallel(line, INK_BLACK, WIDTH_HAIR, DASH_LONG, 2.2);
    strokes(line, INK_BLACK, WIDTH_BOLD, 7, -2.2, 2.2);
}

static void draw_ceiling(const struct Line *line)
{
    parallel(line, INK_BLACK, WIDTH_BOLD, DASH_NONE, 2.2);
    strokes(line, INK_BLACK, WIDTH_HAIR, 3, 2.2, 3.4);
}

static void draw_conduit(const struct Line *line)
{
    parallel(line, INK_BLACK, WIDTH_THIN, DASH_NONE, -1.2);
    parallel(line, INK_BLACK, WIDTH_THIN, DASH_NONE, 1.2);
}

static void draw_trunking(const struct Line *line)
{
    double end = line->length_mm - 0.5;
    begin(line, INK_BLACK, WIDTH_PLAIN, DASH_NONE);
    move(line, 0.5, -1.9);
    to(line, end, -1.9);
    to(line, end, 1.9);
    to(line, 0.5, 1.9);
    drawing_close(line->drawing);
    parallel(line, INK_BLACK, WIDTH_HAIR, DASH_NONE, -1.3);
}

static void draw_tray(const struct Line *line)
{
    double first = 0, pitch = 4.4;
    int count = repeats(line, pitch, &first);
    begin(line, INK_BLACK, WIDTH_THIN, DASH_NONE);
    for (int i = 0; i < count; i++) {
        double middle = first + i * pitch;
        move(line, middle - 1.6, 0.9);
        to(line, middle + 1.6, 0.9);
        to(line, middle + 1.6, 2.3);
        to(line, middle - 1.6, 2.3);
    }
    drawing_close(line->drawing);
}

static void draw_ladder(const struct Line *line)
{
    parallel(line, INK_BLACK, WIDTH_THIN, DASH_NONE, 1);
    parallel(line, INK_BLACK, WIDTH_THIN, DASH_NONE, 3.4);
    strokes(line, INK_BLACK, WIDTH_THIN, 2.6, 1, 3.4);
}

/* The wire hangs from a support at each end; the cable hangs from the wire. */
static void draw_catenary(const struct Line *line)
{
    enum { PIECES = 16 };
    double high = -4.2, low = -1.1;
    begin(line, INK_OVERHEAD, WIDTH_PLAIN, DASH_NONE);
    for (int i = 0; i <= PIECES; i++) {
        double part = (double)i / PIECES, sag = 4 * part * (1 - part);
        (i == 0 ? move : to)(line, 0.8 + part * (line->length_mm - 1.6), high + (low - high) * sag);
    }
    double first = 0;
    int count = repeats(line, 5, &first);
    begin(line, INK_OVERHEAD, WIDTH_HAIR, DASH_NONE);
    for (int i = 0; i < count; i++) {
        double along = first + i * 5, part = (along - 0.8) / (line->length_mm - 1.6);
        if (part > 0.02 && part < 0.98) {
            move(line, along, 0);
            to(line, along, high + (low - high) * 4 * part * (1 - part));
        }
    }
    for (int end = 0; end < 2; end++) {
        double along = end == 0 ? 0.8 : line->length_mm - 0.8;
        drawing_circle(line->drawing, (struct Pen){INK_OVERHEAD, WIDTH_THIN, DASH_NONE}, INK_WHITE,
                       line->x_mm + line->ux * along - line->uy * aside(line, high),
                       line->y_mm + line->uy * along + line->ux * aside(line, high), 0.7);
    }
}

static void draw_tape(const struct Line *line)
{
    if (line->tape_mm > 0) {
        begin(line, INK_OVERHEAD, WIDTH_PLAIN, DASH_LONG);
        drawing_move(line->drawing, line->x_mm + 0.6, line->y_mm - line->tape_mm);
        drawing_to(line->drawing, line->x_mm + line->ux * line->length_mm - 0.6,
                   line->y_mm + line->uy * line->length_mm - line->tape_mm);
    }
}

static void draw_duct(const struct Line *line)
{
    parallel(line, INK_DUCT, WIDTH_PLAIN, DASH_NONE, -1.3);
    parallel(line, INK_DUCT, WIDTH_PLAIN, DASH_NONE, 1.3);
    draw_tape(line);
}

/* sand under the cable */
static void draw_buried(const struct Line *line)
{
    double first = 0, pitch = 2.4;
    int count = repeats(line, pitch, &first);
    begin(line, INK_GROUND, WIDTH_PLAIN, DASH_NONE);
    for (int i = 0; i < count; i++) {
        double off = i % 2 == 0 ? 1.3 : 2.1;
        move(line, first + i * pitch - 0.25, off);
        to(line, first + i * pitch + 0.25, off);
    }
    draw_tape(line);
}

/* Two blocks of wall with the hole between them. */
static void draw_through_wall(const struct Line *line)
{
    double reach = 4.6, hole = 1.1, middle = line->length_mm / 2, half = fmin(middle - 0.6, 4.2);
    for (int side = -1; side <= 1; side += 2) {
        begin(line, INK_BLACK, WIDTH_PLAIN, DASH_NONE);
        move(line, middle - half, side * hole);
        to(line, middle + half, side * hole);
        to(line, middle + half, side * reach);
        to(line, middle - half, side * reach);
        drawing_close(line->drawing);
        begin(line, INK_BLACK, WIDTH_HAIR, DASH_NONE);
        int strokes_fit = (int)ceil((2 * half + reach - hole - 1.2) / 1.6);
        for (int i = 0; i < strokes_fit; i++) {
            /* a stroke at 45 degrees, kept within the block */
            double at = -half + 1.2 + i * 1.6, x1 = at, y1 = reach, x2 = at - (reach - hole), y2 = hole;
            if (x1 > half) {
                y1 -= x1 - half;
                x1 = half;
            }
            if (x2 < -half) {
                y2 += -half - x2;
                x2 = -half;
            }
            if (y1 > y2) {
                move(line, middle + x1, side * y1);
                to(line, middle + x2, side * y2);
            }
        }
    }
}

static void draw_zigzag(const struct Line *line, double inner, double outer)
{
    double pitch = 1.5;
    int count = (int)floor((line->length_mm - 1) / pitch);
    begin(line, INK_GREY, WIDTH_HAIR, DASH_NONE);
    for (int i = 0; i <= count; i++) {
        double along = (line->length_mm - count * pitch) / 2 + i * pitch;
        (i == 0 ? move : to)(line, along, i % 2 == 0 ? inner : outer);
    }
}

static void draw_insulation(const struct Line *line, enum Insulation insulation)
{
    switch (insulation) {
    case INSULATION_NONE:
    case INSULATION_COUNT: return;
    case INSULATION_SURROUNDED: draw_zigzag(line, -4.2, -5.8); break;
    case INSULATION_ONE_SIDE: break;
    }
    draw_zigzag(line, 3.6, 5.2);
}

static void draw_way(const struct Line *line, enum Way way)
{
    switch (way) {
    case WAY_WALL: draw_wall(line); break;
    case WAY_FENCE: draw_fence(line); break;
    case WAY_BEAM: draw_beam(line); break;
    case WAY_LOFT_VOID: draw_loft(line); break;
    case WAY_UNDER_FLOOR: draw_floor(line); break;
    case WAY_STUD_WALL: draw_stud_wall(line); break;
    case WAY_CEILING: draw_ceiling(line); break;
    case WAY_THROUGH_WALL: draw_through_wall(line); break;
    case WAY_CONDUIT: draw_conduit(line); break;
    case WAY_TRUNKING: draw_trunking(line); break;
    case WAY_TRAY: draw_tray(line); break;
    case WAY_LADDER: draw_ladder(line); break;
    case WAY_CATENARY: draw_catenary(line); break;
    case WAY_DUCT: draw_duct(line); break;
    case WAY_BURIED: draw_buried(line); break;
    case WAY_COUNT: break;
    }
}

void layout_draw_sign(struct Drawing *drawing, enum Way way, enum Insulation insulation, struct SignPlace place)
{
    double dx = place.x2_mm - place.x1_mm, dy = place.y2_mm - place.y1_mm, length = hypot(dx, dy);
    struct Line line = {drawing,     place.x1_mm, place.y1_mm,   dx / length,
                        dy / length, length,      place.tape_mm, place.spread_mm};
    if (way != WAY_THROUGH_WALL) { /* the wall's own blocks are where it would be; its box says so */
        draw_insulation(&line, insulation);
    }
    draw_way(&line, way);
}
