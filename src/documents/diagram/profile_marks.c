/* What stands on the profile: ends, numbers, heights of risers, landmarks, each where there is room. A number without
 * room is left to the fan and the head of its column. */
#include "profile_private.h"

#include <math.h>

enum { PLACES_MOST = 7 };

static const double radius_mm = 2.4, end_half_mm = 2.7, end_reach_mm = 4.2, landmark_scale = 0.5;

static const struct Pen rule_pen = {INK_BLACK, WIDTH_RULE, DASH_NONE};
static const struct TextStyle figure_style = {.size_mm = TYPE_PLAIN, .ink = INK_BLACK};

static double distance_to_cable(const struct Profile *profile, double x_mm, double y_mm)
{
    double least_mm = INFINITY;
    for (int i = 0; i + 1 < profile->point_count; i++) {
        const struct Point a = profile->points[i], b = profile->points[i + 1];
        const double dx = b.x_mm - a.x_mm, dy = b.y_mm - a.y_mm, squared = dx * dx + dy * dy;
        const double part = squared > 0 ? fmin(fmax(((x_mm - a.x_mm) * dx + (y_mm - a.y_mm) * dy) / squared, 0), 1) : 0;
        least_mm = fmin(least_mm, hypot(x_mm - a.x_mm - part * dx, y_mm - a.y_mm - part * dy));
    }
    return least_mm;
}

static bool overlaps_taken(const struct Profile *profile, struct DrawBox box)
{
    for (int i = 0; i < profile->box_count; i++) {
        const struct DrawBox *other = &profile->boxes[i];
        if (box.left_mm < other->right_mm && other->left_mm < box.right_mm && box.top_mm < other->bottom_mm &&
            other->top_mm < box.bottom_mm) {
            return true;
        }
    }
    return box.top_mm < profile->top_mm || box.bottom_mm > profile->bottom_mm || box.left_mm < CELLS_LEFT ||
           box.right_mm > FRAME_RIGHT;
}

static bool is_free(const struct Profile *profile, struct DrawBox box)
{
    if (overlaps_taken(profile, box)) {
        return false;
    }
    const double x_mm = (box.left_mm + box.right_mm) / 2, y_mm = (box.top_mm + box.bottom_mm) / 2;
    const double half_mm = (box.right_mm - box.left_mm) / 2;
    for (int i = -2; i <= 2; i++) { /* along its middle */
        const double at = half_mm * i / 2;
        if (distance_to_cable(profile, x_mm + at, y_mm) <
            (box.bottom_mm - box.top_mm) / 2 + 0.4 + layout_cable_spread(profile->layout)) {
            return false;
        }
    }
    return true;
}

static struct DrawBox around(double x_mm, double y_mm, double half_mm)
{
    return (struct DrawBox){x_mm - half_mm, y_mm - half_mm, x_mm + half_mm, y_mm + half_mm};
}

/* Where the number of a stretch would like to be, best first. */
static int wanted_places(const struct Profile *profile, const struct Stretch *stretch, struct Point *places)
{
    const double x_mm = profile_middle(stretch), y1 = profile_level(profile, stretch->from_m),
                 y2 = profile_level(profile, stretch->to_m);
    const double aside_mm = radius_mm + 1.4 + layout_cable_spread(profile->layout), top_mm = fmin(y1, y2);
    const enum Way way = stretch->segment->surveyed->way;
    const double over_mm =
        way == WAY_FENCE          ? 5.4
        : way == WAY_LOFT_VOID    ? 2
        : way == WAY_THROUGH_WALL ? 3.5
        : stretch->ground == GROUND_KNOWN
            ? top_mm - profile_level(profile, fmax(stretch->ground_from_m, stretch->ground_to_m)) + 0.6
            : 0;
    const double high_mm = top_mm - fmax(aside_mm, over_mm + radius_mm), low_mm = fmax(y1, y2) + aside_mm + 1;
    if (layout_is_riser(stretch)) {
        const struct Point riser[] = {{x_mm - aside_mm, (y1 + y2) / 2}, {x_mm, top_mm - aside_mm},
                                      {x_mm - aside_mm, top_mm - 1},    {x_mm, low_mm},
                                      {x_mm + aside_mm, top_mm - 1},    {x_mm - aside_mm, low_mm - 2},
                                      {x_mm + aside_mm, low_mm - 2}};
        for (int i = 0; i < PLACES_MOST; i++) {
            places[i] = riser[i];
        }
        return PLACES_MOST;
    }
    const double shifts[] = {0, -1.8, 1.8, -3.6};
    for (int i = 0; i < 4; i++) {
        places[i] = (struct Point){x_mm + shifts[i], (y1 + y2) / 2 - top_mm + high_mm};
    }
    places[4] = (struct Point){x_mm, high_mm};
    places[5] = (struct Point){x_mm, low_mm};
    places[6] = (struct Point){x_mm - 3, low_mm};
    return PLACES_MOST;
}

static void draw_stretch_number(struct Profile *profile, const struct Stretch *stretch)
{
    const struct RouteLayout *layout = profile->layout;
    struct Point places[PLACES_MOST];
    const int count = wanted_places(profile, stretch, places);
    const double half_mm = number_radius(radius_mm, stretch->number);
    for (int i = 0; i < count; i++) {
        const struct DrawBox box = around(places[i].x_mm, places[i].y_mm, half_mm + 0.4);
        if (is_free(profile, box)) {
            draw_number(profile->drawing, places[i].x_mm, places[i].y_mm, radius_mm, stretch->number,
                        layout_main_governs(layout, stretch->number - 1));
            profile_take(profile, box);
            return;
        }
    }
}

/* The arrow keeps clear of the cable by half the height of its figure and of what the cable is fixed to. */
static const double arrow_aside_mm = 3.2, arrow_most_mm = 5;

static void draw_arrow(struct Drawing *drawing, double x_mm, double y_mm, double half_mm, double tip)
{
    drawing_line(drawing, rule_pen, x_mm, y_mm - tip * half_mm, x_mm, y_mm + tip * half_mm);
    drawing_path(drawing, (struct Pen){INK_NONE, 0, DASH_NONE}, INK_BLACK);
    drawing_move(drawing, x_mm, y_mm + tip * half_mm);
    drawing_to(drawing, x_mm - 0.7, y_mm + tip * (half_mm - 1.6));
    drawing_to(drawing, x_mm + 0.7, y_mm + tip * (half_mm - 1.6));
    drawing_close(drawing);
}

/* An arrow beside the upright and its height: to its right, else to its left. */
static void draw_rise(struct Profile *profile, const struct Stretch *stretch)
{
    const double y1 = profile_level(profile, stretch->from_m), y2 = profile_level(profile, stretch->to_m),
                 rise_mm = fabs(y1 - y2);
    const double y_mm = (y1 + y2) / 2;
    const char *text = layout_said(
        profile->layout, say_alone(profile->layout->arena, layout_metres(fabs(stretch->to_m - stretch->from_m))));
    const double width_mm = type_width_mm(text, TYPE_PLAIN, false);
    for (int side = 1; side >= -1 && rise_mm >= 4; side -= 2) {
        const double x_mm = profile_middle(stretch) + side * (arrow_aside_mm + layout_cable_spread(profile->layout));
        const double far_mm = x_mm + side * (1.2 + width_mm), near_mm = x_mm - side * 0.8;
        const struct DrawBox box = {fmin(near_mm, far_mm), y_mm - 1.8, fmax(near_mm, far_mm), y_mm + 1.8};
        if (is_free(profile, box)) {
            struct TextStyle style = figure_style;
            style.anchor = side > 0 ? ANCHOR_LEFT : ANCHOR_RIGHT;
            draw_arrow(profile->drawing, x_mm, y_mm, fmin(rise_mm / 2 - 0.6, arrow_most_mm), y2 < y1 ? -1 : 1);
            draw_text_on_white(profile->drawing, style, x_mm + side * 1.2, y_mm + 1, text);
            profile_take(profile, box);
            return;
        }
    }
}

/* At the ends of the way the square stands before the cable, else over it or under it, at the end of a thin line: the
 * nearest place that is free, as far along the sheet as many ends close together need. */
static struct Point end_place(const struct Profile *profile, int boundary, struct Point at)
{
    static const double step_mm = 6.4, up_steps[] = {-1, 1, -2, 2};
    enum { HEIGHTS = 4, COLUMNS = 81 }; /* to either edge of the sheet */
    if (boundary == 0 || boundary == profile->layout->stretch_count) {
        return (struct Point){at.x_mm + (boundary == 0 ? -end_reach_mm : end_reach_mm), at.y_mm};
    }
    for (int i = 0; i < COLUMNS * HEIGHTS; i++) {
        const int column = i / HEIGHTS, steps = (column + 1) / 2; /* 0, 1, -1, 2, -2 ... */
        const struct Point place = {at.x_mm + (column % 2 == 1 ? steps : -steps) * step_mm,
                                    at.y_mm + up_steps[i % HEIGHTS] * step_mm};
        if (!overlaps_taken(profile, around(place.x_mm, place.y_mm, end_half_mm + 0.4))) {
            return place;
        }
    }
    return (struct Point){at.x_mm, at.y_mm - step_mm};
}

/* Lines first: none of them goes over a square; and first of all the two ends of the way, which have one place each. */
void profile_ends(struct Profile *profile)
{
    enum { FIXED, FREE, SQUARES, PASSES };
    const struct RouteLayout *layout = profile->layout;
    const struct Pen cable_pen = {INK_BLACK, WIDTH_CABLE, DASH_NONE};
    struct Point *places = arena_array(layout->arena, (size_t)layout->end_count + 1, sizeof *places);
    for (int pass = 0; places != NULL && pass < PASSES; pass++) {
        for (int e = 0; e < layout->end_count; e++) {
            const int boundary = layout->ends[e].boundary;
            const bool behind = boundary == profile->strip->last + 1;
            const bool fixed = boundary == 0 || boundary == layout->stretch_count;
            if (boundary < profile->strip->first || boundary > profile->strip->last + 1) {
                continue;
            }
            const struct Stretch *stretch = &layout->stretches[behind ? boundary - 1 : boundary];
            const struct Point at = {stretch->x_mm + (behind ? stretch->width_mm : 0),
                                     profile_level(profile, behind ? stretch->to_m : stretch->from_m)};
            if (pass == SQUARES) {
                draw_end(profile->drawing, layout->ends[e].letter, places[e].x_mm, places[e].y_mm, end_half_mm);
            } else if (fixed == (pass == FIXED)) {
                places[e] = end_place(profile, boundary, at);
                drawing_line(profile->drawing, fixed ? cable_pen : rule_pen, at.x_mm, at.y_mm, places[e].x_mm,
                             places[e].y_mm);
                profile_take(profile, around(places[e].x_mm, places[e].y_mm, end_half_mm + 0.4));
            }
        }
    }
}

/* How high a landmark's sign may stand over the cable or under it, nearest first, and how far aside. */
static bool place_landmark(const struct Profile *profile, const struct Stretch *stretch, struct Point at,
                           struct DrawBox *sign)
{
    static const double asides[] = {0, -3, 3, -6, 6}, ups[] = {4, 6.5, -4.5, 9, -7};
    enum { ASIDES = 5, UPS = 5 };
    const double half_high_mm = 3 * landmark_scale, half_wide_mm = 4 * landmark_scale;
    const double part = stretch->width_mm > 0 ? (at.x_mm - stretch->x_mm) / stretch->width_mm : 0;
    const double ground_m = stretch->ground_from_m + part * (stretch->ground_to_m - stretch->ground_from_m);
    const double ground_mm = stretch->ground == GROUND_KNOWN ? fmax(at.y_mm - profile_level(profile, ground_m), 0) : 0;
    for (int i = 0; i < ASIDES * UPS; i++) {
        const double up_mm = ups[i / ASIDES] + (ups[i / ASIDES] > 0 ? ground_mm : 0);
        const double x_mm = at.x_mm + asides[i % ASIDES], y_mm = at.y_mm - up_mm;
        const struct DrawBox box = {x_mm - half_wide_mm, y_mm - half_high_mm, x_mm + half_wide_mm, y_mm + half_high_mm};
        const struct DrawBox line = {fmin(at.x_mm, x_mm) - 0.1, fmin(at.y_mm, y_mm), fmax(at.x_mm, x_mm) + 0.1,
                                     fmax(at.y_mm, y_mm)};
        if (is_free(profile, box) && !overlaps_taken(profile, line)) {
            *sign = box;
            return true;
        }
    }
    return false;
}

/* What stands on or beside the way, at its place along it; one without room stands in its band alone. */
static void draw_landmarks(struct Profile *profile, const struct Stretch *stretch)
{
    const struct Segment *surveyed = stretch->segment->surveyed;
    for (int i = 0; i < surveyed->landmark_count; i++) {
        const double part = stretch->length_m > 0 ? fmin(surveyed->landmarks[i].at_m.value / stretch->length_m, 1) : 0;
        const double y1 = profile_level(profile, stretch->from_m), y2 = profile_level(profile, stretch->to_m);
        const struct Point at = {stretch->x_mm + part * stretch->width_mm, y1 + part * (y2 - y1)};
        struct DrawBox sign;
        if (place_landmark(profile, stretch, at, &sign)) {
            const double y_mm = sign.top_mm > at.y_mm ? sign.top_mm : sign.bottom_mm;
            drawing_line(profile->drawing, rule_pen, at.x_mm, at.y_mm, (sign.left_mm + sign.right_mm) / 2, y_mm);
            sign_draw(profile->drawing, landmark_sign(surveyed->landmarks[i].what), sign.left_mm, sign.top_mm,
                      landmark_scale);
            profile_take(profile, sign);
        }
    }
}

void profile_marks(struct Profile *profile)
{
    const struct RouteLayout *layout = profile->layout;
    for (int pass = 0; pass < 3; pass++) { /* holes first, then heights of risers, then the rest */
        for (int i = profile->strip->first; i <= profile->strip->last; i++) {
            const struct Stretch *stretch = &layout->stretches[i];
            const bool hole = stretch->segment->surveyed->way == WAY_THROUGH_WALL;
            if (pass == 1 && layout_is_riser(stretch)) {
                draw_rise(profile, stretch);
            } else if (pass != 1 && hole == (pass == 0)) {
                draw_stretch_number(profile, stretch);
            }
        }
    }
    for (int i = profile->strip->first; i <= profile->strip->last; i++) {
        draw_landmarks(profile, &layout->stretches[i]);
    }
}
