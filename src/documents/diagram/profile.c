/* The profile: metres along the cable across, heights up. A riser is level, upright, level; the ground lies over what
 * is in it; a step that no surveyed length holds is dashed. Numbers stand where there is room; one without room is left
 * to the fan and the head of its column. */
#include "layout_private.h"

#include <math.h>

enum { PLACES_MOST = 7, POINTS_A_STRETCH = 6 };

static const double above_mm = 9, below_mm = 3.4, radius_mm = 2.4, end_half_mm = 2.7, end_reach_mm = 4.2;

static const struct Pen rule_pen = {INK_BLACK, WIDTH_RULE, DASH_NONE};
static const struct Pen pale_pen = {INK_PALE, WIDTH_RULE, DASH_NONE};
static const struct Pen thing_pen = {INK_BLACK, WIDTH_THING, DASH_NONE};
static const struct TextStyle figure_style = {.size_mm = TYPE_PLAIN, .ink = INK_BLACK};

struct Point {
    double x_mm, y_mm;
};

struct Profile {
    const struct RouteLayout *layout;
    struct Drawing *drawing;
    const struct Strip *strip;
    double top_mm, zero_mm, bottom_mm;
    int point_count, box_count;
    struct Point *points;  /* of the cable, from left to right */
    struct DrawBox *boxes; /* what is taken */
};

double profile_pads(const struct RouteLayout *layout)
{
    return above_mm + below_mm + 2 * layout_cable_spread(layout);
}

bool layout_is_riser(const struct Stretch *stretch)
{
    const double rise_m = fabs(stretch->to_m - stretch->from_m);
    switch (stretch->segment->surveyed->way) {
    case WAY_WALL:
    case WAY_CONDUIT:
    case WAY_TRUNKING:
    case WAY_TRAY:
    case WAY_LADDER:
    case WAY_STUD_WALL: return rise_m >= 0.2 && rise_m >= 0.3 * stretch->length_m;
    case WAY_FENCE:
    case WAY_BEAM:
    case WAY_LOFT_VOID:
    case WAY_UNDER_FLOOR:
    case WAY_CEILING:
    case WAY_THROUGH_WALL:
    case WAY_CATENARY:
    case WAY_DUCT:
    case WAY_BURIED:
    case WAY_COUNT: break;
    }
    return rise_m > 0 && rise_m >= 0.8 * stretch->length_m;
}

static double level(const struct Profile *profile, double height_m)
{
    return profile->zero_mm - layout_up_mm(profile->layout, height_m);
}

static double middle(const struct Stretch *stretch)
{
    return stretch->x_mm + stretch->width_mm / 2;
}

/* ---- what lies behind the cable ---- */

/* The finest of 1, 2, 5 and their tens that keeps figures apart. */
static double axis_step(const struct RouteLayout *layout, int *decimals)
{
    for (int step = 0;; step++) {
        const double step_m = layout_round_step(step);
        if (layout_up_mm(layout, step_m) >= 4.4 || step > 24) {
            *decimals = step < 3 ? 1 : 0;
            return step_m;
        }
    }
}

static void draw_axis(const struct Profile *profile)
{
    static const struct TextStyle style = {.size_mm = TYPE_PLAIN, .ink = INK_BLACK, .anchor = ANCHOR_RIGHT};
    struct Drawing *drawing = profile->drawing;
    int decimals = 0;
    const double step_m = axis_step(profile->layout, &decimals);
    double first_mm = 0, last_mm = 0;
    for (double k = ceil(profile->strip->low_m / step_m); k * step_m <= profile->strip->high_m + 1e-9; k++) {
        const double y_mm = level(profile, k * step_m);
        struct TextBuilder text = text_builder(drawing->arena);
        text_add(&text, k > 0 ? "+" : k < 0 ? "\xE2\x88\x92" : "");
        number_add(&text, fabs(k * step_m), k < 0 || k > 0 ? decimals : 0);
        drawing_line(drawing, pale_pen, CELLS_LEFT, y_mm, FRAME_RIGHT, y_mm);
        drawing_line(drawing, thing_pen, CELLS_LEFT - 1.6, y_mm, CELLS_LEFT, y_mm);
        drawing_text(drawing, style, CELLS_LEFT - 2.4, y_mm + 1, text_done(&text));
        first_mm = last_mm > 0 ? first_mm : y_mm;
        last_mm = y_mm;
    }
    if (first_mm > last_mm) {
        drawing_line(drawing, thing_pen, CELLS_LEFT, first_mm, CELLS_LEFT, last_mm);
    }
}

static void draw_ordinates(const struct Profile *profile)
{
    const struct RouteLayout *layout = profile->layout;
    for (int i = profile->strip->first; i <= profile->strip->last + 1; i++) {
        const bool last = i > profile->strip->last;
        const struct Stretch *stretch = &layout->stretches[last ? i - 1 : i];
        const double x_mm = stretch->x_mm + (last ? stretch->width_mm : 0);
        drawing_line(profile->drawing, pale_pen, x_mm, level(profile, last ? stretch->to_m : stretch->from_m), x_mm,
                     profile->bottom_mm);
    }
}

static void draw_ground(const struct Profile *profile, const struct Stretch *stretch)
{
    const double x1 = stretch->x_mm, x2 = x1 + stretch->width_mm;
    double y1 = level(profile, stretch->ground_from_m), y2 = level(profile, stretch->ground_to_m);
    if (stretch->ground == GROUND_LEVEL) {
        if (fabs(y1 - level(profile, stretch->from_m)) < 1.6 || fabs(y1 - level(profile, stretch->to_m)) < 1.6) {
            y1 += 1.8; /* where it would lie on the cable */
            y2 += 1.8;
        }
        drawing_line(profile->drawing, (struct Pen){INK_BLACK, WIDTH_THING, DASH_LONG}, x1, y1, x2, y2);
        return;
    }
    drawing_line(profile->drawing, thing_pen, x1, y1, x2, y2);
    drawing_path(profile->drawing, rule_pen, INK_NONE);
    drawing_move(profile->drawing, x1, y1);
    for (int i = 0; x1 + 1.4 + 2.2 * i < x2; i++) {
        const double x = x1 + 1.4 + 2.2 * i;
        const double y = y1 + (y2 - y1) * (x - x1) / (x2 - x1);
        drawing_move(profile->drawing, x, y);
        drawing_to(profile->drawing, fmax(x - 1, x1), y + 1.4);
    }
}

static void draw_surroundings(const struct Profile *profile)
{
    const struct RouteLayout *layout = profile->layout;
    for (int i = profile->strip->first; i <= profile->strip->last; i++) {
        const struct Stretch *stretch = &layout->stretches[i];
        const double y1 = level(profile, stretch->from_m), y2 = level(profile, stretch->to_m);
        struct WayPiece place = {stretch->x_mm, y1, stretch->x_mm + stretch->width_mm, y2, 0, 1};
        if (stretch->ground != GROUND_NONE) {
            draw_ground(profile, stretch);
        }
        if (stretch->ground == GROUND_KNOWN) {
            place.cover_mm = y1 - level(profile, stretch->ground_from_m);
        }
        if (layout_is_riser(stretch)) { /* the upright alone, what it stands on to its right */
            place.x1_mm = place.x2_mm = middle(stretch);
            place.y1_mm = fmax(y1, y2);
            place.y2_mm = fmin(y1, y2);
        }
        dress_way(profile->drawing, stretch->segment->surveyed->way, place);
    }
}

static void take(struct Profile *profile, struct DrawBox box)
{
    profile->boxes[profile->box_count++] = box;
}

static void draw_walls(struct Profile *profile)
{
    for (int i = profile->strip->first; i <= profile->strip->last; i++) {
        const struct Stretch *stretch = &profile->layout->stretches[i];
        if (stretch->segment->surveyed->way != WAY_THROUGH_WALL || layout_is_riser(stretch)) {
            continue;
        }
        const double y1 = level(profile, stretch->from_m), y2 = level(profile, stretch->to_m);
        const double half_mm = fmax(stretch->width_mm, 2.6) / 2, x_mm = middle(stretch);
        const struct DrawBox box = {x_mm - half_mm, fmin(y1, y2) - 3, x_mm + half_mm, fmax(y1, y2) + 3.4};
        dress_wall(profile->drawing, stretch->segment->surveyed->wall, box);
        take(profile, box);
    }
}

/* ---- the cable ---- */

static void add_point(struct Profile *profile, double x_mm, double y_mm)
{
    profile->points[profile->point_count++] = (struct Point){x_mm, y_mm};
}

static void trace_cable(struct Profile *profile)
{
    for (int i = profile->strip->first; i <= profile->strip->last; i++) {
        const struct Stretch *stretch = &profile->layout->stretches[i];
        const double y1 = level(profile, stretch->from_m), y2 = level(profile, stretch->to_m);
        add_point(profile, stretch->x_mm, y1);
        if (layout_is_riser(stretch)) {
            add_point(profile, middle(stretch), y1);
            add_point(profile, middle(stretch), y2);
        }
        add_point(profile, stretch->x_mm + stretch->width_mm, y2);
    }
}

/* One run, beside the others that it lies with; upright pieces lie beside each other too. */
static void draw_run(const struct Profile *profile, int run, struct Pen pen)
{
    const struct RouteLayout *layout = profile->layout;
    const double off_mm = layout_cable_offset(layout, run);
    bool on = false;
    double at_m = 0;
    for (int i = profile->strip->first; i <= profile->strip->last; i++) {
        const struct Stretch *stretch = &layout->stretches[i];
        if (!layout_follows(layout, run, i)) {
            on = false;
            continue;
        }
        const double y1 = level(profile, stretch->from_m) + off_mm, y2 = level(profile, stretch->to_m) + off_mm;
        if (!on || fabs(at_m - stretch->from_m) > 1e-6) {
            drawing_path(profile->drawing, pen, INK_NONE);
            drawing_is_cable(profile->drawing);
            drawing_move(profile->drawing, stretch->x_mm, y1);
        }
        if (layout_is_riser(stretch)) {
            const double x_mm = middle(stretch) + (y2 > y1 ? -off_mm : off_mm);
            drawing_to(profile->drawing, x_mm, y1);
            drawing_to(profile->drawing, x_mm, y2);
        }
        drawing_to(profile->drawing, stretch->x_mm + stretch->width_mm, y2);
        on = true;
        at_m = stretch->to_m;
    }
}

/* Into the ground and out of it: in no surveyed length. */
static void draw_steps(const struct Profile *profile)
{
    const struct RouteLayout *layout = profile->layout;
    for (int i = profile->strip->first + 1; i <= profile->strip->last; i++) {
        const struct Stretch *before = &layout->stretches[i - 1], *stretch = &layout->stretches[i];
        if (fabs(before->to_m - stretch->from_m) > 1e-6) {
            drawing_line(profile->drawing, (struct Pen){INK_BLACK, WIDTH_CABLE, DASH_SHORT}, stretch->x_mm,
                         level(profile, before->to_m), stretch->x_mm, level(profile, stretch->from_m));
        } else {
            const double y_mm = level(profile, stretch->from_m);
            drawing_line(profile->drawing, thing_pen, stretch->x_mm, y_mm - 1.7, stretch->x_mm, y_mm + 1.7);
        }
    }
}

/* ---- marks ---- */

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
    const double x_mm = middle(stretch), y1 = level(profile, stretch->from_m), y2 = level(profile, stretch->to_m);
    const double aside_mm = radius_mm + 1.4 + layout_cable_spread(profile->layout), top_mm = fmin(y1, y2);
    const enum Way way = stretch->segment->surveyed->way;
    const double over_mm = way == WAY_FENCE          ? 5.4
                           : way == WAY_LOFT_VOID    ? 2
                           : way == WAY_THROUGH_WALL ? 3.5
                           : stretch->ground == GROUND_KNOWN
                               ? top_mm - level(profile, fmax(stretch->ground_from_m, stretch->ground_to_m)) + 0.6
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
            take(profile, box);
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
    const double y1 = level(profile, stretch->from_m), y2 = level(profile, stretch->to_m), rise_mm = fabs(y1 - y2);
    const double y_mm = (y1 + y2) / 2;
    const char *text = layout_said(
        profile->layout, say_alone(profile->layout->arena, layout_metres(fabs(stretch->to_m - stretch->from_m))));
    const double width_mm = type_width_mm(text, TYPE_PLAIN, false);
    for (int side = 1; side >= -1 && rise_mm >= 4; side -= 2) {
        const double x_mm = middle(stretch) + side * (arrow_aside_mm + layout_cable_spread(profile->layout));
        const double far_mm = x_mm + side * (1.2 + width_mm), near_mm = x_mm - side * 0.8;
        const struct DrawBox box = {fmin(near_mm, far_mm), y_mm - 1.8, fmax(near_mm, far_mm), y_mm + 1.8};
        if (is_free(profile, box)) {
            struct TextStyle style = figure_style;
            style.anchor = side > 0 ? ANCHOR_LEFT : ANCHOR_RIGHT;
            draw_arrow(profile->drawing, x_mm, y_mm, fmin(rise_mm / 2 - 0.6, arrow_most_mm), y2 < y1 ? -1 : 1);
            draw_text_on_white(profile->drawing, style, x_mm + side * 1.2, y_mm + 1, text);
            take(profile, box);
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
static void draw_ends(struct Profile *profile)
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
                                     level(profile, behind ? stretch->to_m : stretch->from_m)};
            if (pass == SQUARES) {
                draw_end(profile->drawing, layout->ends[e].letter, places[e].x_mm, places[e].y_mm, end_half_mm);
            } else if (fixed == (pass == FIXED)) {
                places[e] = end_place(profile, boundary, at);
                drawing_line(profile->drawing, fixed ? cable_pen : rule_pen, at.x_mm, at.y_mm, places[e].x_mm,
                             places[e].y_mm);
                take(profile, around(places[e].x_mm, places[e].y_mm, end_half_mm + 0.4));
            }
        }
    }
}

static void draw_marks(struct Profile *profile)
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
}

void profile_draw(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip, double top_mm)
{
    const size_t count = (size_t)strip->last - (size_t)strip->first + 1;
    struct Profile profile = {.layout = layout, .drawing = drawing, .strip = strip, .top_mm = top_mm};
    profile.bottom_mm = top_mm + strip->profile_mm;
    profile.zero_mm =
        top_mm + above_mm + layout_cable_spread(layout) +
        fmax(strip->profile_mm - profile_pads(layout) - layout_up_mm(layout, strip->high_m - strip->low_m), 0) / 2 +
        layout_up_mm(layout, strip->high_m);
    profile.points = arena_array(layout->arena, count * POINTS_A_STRETCH, sizeof *profile.points);
    profile.boxes = arena_array(layout->arena, count * 4 + (size_t)layout->end_count, sizeof *profile.boxes);
    if (profile.points == NULL || profile.boxes == NULL) {
        return;
    }
    trace_cable(&profile);
    draw_axis(&profile);
    draw_ordinates(&profile);
    draw_surroundings(&profile);
    draw_walls(&profile);
    for (int run = 0; run < layout->plan->run_count; run++) {
        struct Pen pen = layout_cable_pen(layout, run);
        draw_run(&profile, run, (struct Pen){INK_WHITE, pen.width_mm + 0.8, DASH_NONE});
        draw_run(&profile, run, pen);
    }
    draw_steps(&profile);
    draw_ends(&profile);
    draw_marks(&profile);
}
