/* Small signs of our own for what costs a stretch capacity. The rating factors say which there are; the plan and the
 * working say how much each costs. */
#include "layout_private.h"

#include <math.h>

static const struct Pen sign_pen = {INK_BLACK, WIDTH_THIN, DASH_NONE};

static enum Condition condition_of(const struct Factor *factor)
{
    switch (factor->cause) {
    case FACTOR_AIR:
    case FACTOR_GROUND: return CONDITION_WARM;
    case FACTOR_SUN: return CONDITION_SUN;
    case FACTOR_GROUPING: return CONDITION_GROUPED;
    case FACTOR_INSULATION: return CONDITION_INSULATION;
    case FACTOR_SOIL:
    case FACTOR_DEPTH:
    case FACTOR_OVERLOAD_BURIED: return CONDITION_GROUND;
    case FACTOR_BS3036: return CONDITION_FUSE;
    case FACTOR_HARMONICS:
    case FACTOR_CAUSES: break;
    }
    return CONDITION_COUNT;
}

int layout_conditions(const struct Rating *rating, enum Condition *conditions, int most)
{
    double cost[CONDITION_COUNT]; /* what is left of the capacity by each */
    for (int c = 0; c < CONDITION_COUNT; c++) {
        cost[c] = 1;
    }
    for (int i = 0; i < rating->factor_count && i < RATING_FACTORS_MOST; i++) {
        enum Condition condition = condition_of(&rating->factors[i]);
        if (condition != CONDITION_COUNT && rating->factors[i].value < 1) {
            cost[condition] *= rating->factors[i].value;
        }
    }
    int count = 0;
    for (; count < most; count++) {
        int worst = 0;
        for (int c = 1; c < CONDITION_COUNT; c++) {
            worst = cost[c] < cost[worst] ? c : worst;
        }
        if (cost[worst] >= 1) {
            break;
        }
        conditions[count] = (enum Condition)worst;
        cost[worst] = 1;
    }
    return count;
}

enum Saying layout_condition_word(enum Condition condition)
{
    switch (condition) {
    case CONDITION_SUN: return SAY_SIGN_SUN;
    case CONDITION_INSULATION: return SAY_SIGN_INSULATION;
    case CONDITION_GROUPED: return SAY_SIGN_GROUPED;
    case CONDITION_WARM: return SAY_SIGN_WARM;
    case CONDITION_GROUND: return SAY_SIGN_GROUND;
    case CONDITION_FUSE: return SAY_SIGN_FUSE;
    case CONDITION_COUNT: break;
    }
    return SAY_NOTHING;
}

static void draw_sun(struct Drawing *drawing, double x, double y)
{
    enum { RAYS = 8 };
    drawing_circle(drawing, sign_pen, INK_NONE, x, y, 0.85);
    drawing_path(drawing, sign_pen, INK_NONE);
    for (int i = 0; i < RAYS; i++) {
        double angle = i * acos(-1) * 2 / RAYS;
        drawing_move(drawing, x + 1.15 * cos(angle), y + 1.15 * sin(angle));
        drawing_to(drawing, x + 1.75 * cos(angle), y + 1.75 * sin(angle));
    }
}

/* a cable between two layers of quilt */
static void draw_quilt(struct Drawing *drawing, double x, double y)
{
    for (int side = -1; side <= 1; side += 2) {
        drawing_path(drawing, sign_pen, INK_NONE);
        for (int i = 0; i <= 4; i++) {
            (i == 0 ? drawing_move : drawing_to)(drawing, x - 1.6 + i * 0.8, y + side * (i % 2 == 0 ? 0.7 : 1.6));
        }
    }
    drawing_line(drawing, (struct Pen){INK_BLACK, WIDTH_BOLD, DASH_NONE}, x - 1.7, y, x + 1.7, y);
}

/* one cable among others, seen from their end */
static void draw_neighbours(struct Drawing *drawing, double x, double y)
{
    for (int i = -1; i <= 1; i++) {
        drawing_circle(drawing, sign_pen, i == 0 ? INK_BLACK : INK_WHITE, x + i * 1.15, y, 0.57);
    }
}

/* a thermometer */
static void draw_warm(struct Drawing *drawing, double x, double y)
{
    drawing_path(drawing, sign_pen, INK_WHITE);
    drawing_move(drawing, x - 0.45, y + 0.6);
    drawing_to(drawing, x - 0.45, y - 1.7);
    drawing_to(drawing, x + 0.45, y - 1.7);
    drawing_to(drawing, x + 0.45, y + 0.6);
    drawing_circle(drawing, sign_pen, INK_BLACK, x, y + 1, 0.72);
    drawing_line(drawing, (struct Pen){INK_BLACK, WIDTH_PLAIN, DASH_NONE}, x, y - 0.9, x, y + 0.6);
    for (int i = 0; i < 3; i++) {
        drawing_line(drawing, sign_pen, x + 0.8, y - 1.3 + i * 0.7, x + 1.4, y - 1.3 + i * 0.7);
    }
}

/* a cable under the ground line */
static void draw_under(struct Drawing *drawing, double x, double y)
{
    drawing_line(drawing, sign_pen, x - 1.7, y - 0.9, x + 1.7, y - 0.9);
    drawing_path(drawing, (struct Pen){INK_BLACK, WIDTH_HAIR, DASH_NONE}, INK_NONE);
    for (int i = 0; i < 4; i++) {
        drawing_move(drawing, x - 0.9 + i * 0.8, y - 0.9);
        drawing_to(drawing, x - 1.6 + i * 0.8, y - 0.2);
    }
    drawing_circle(drawing, sign_pen, INK_BLACK, x, y + 1, 0.55);
}

/* the fuse of the standard's symbols: a box with the conductor through it */
static void draw_fuse(struct Drawing *drawing, double x, double y)
{
    drawing_rect(drawing, sign_pen, INK_WHITE, x - 1.2, y - 0.6, 2.4, 1.2);
    drawing_line(drawing, sign_pen, x - 1.7, y, x + 1.7, y);
}

void layout_draw_condition(struct Drawing *drawing, enum Condition condition, double x_mm, double y_mm)
{
    switch (condition) {
    case CONDITION_SUN: draw_sun(drawing, x_mm, y_mm); break;
    case CONDITION_INSULATION: draw_quilt(drawing, x_mm, y_mm); break;
    case CONDITION_GROUPED: draw_neighbours(drawing, x_mm, y_mm); break;
    case CONDITION_WARM: draw_warm(drawing, x_mm, y_mm); break;
    case CONDITION_GROUND: draw_under(drawing, x_mm, y_mm); break;
    case CONDITION_FUSE: draw_fuse(drawing, x_mm, y_mm); break;
    case CONDITION_COUNT: break;
    }
}
