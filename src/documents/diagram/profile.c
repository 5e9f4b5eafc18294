/* The profile: metres along the cable across, heights up. A riser is level, upright, level; the ground lies over what
 * is in it; a step that no surveyed length holds is dashed. What stands on it is in profile_marks.c. */
#include "profile_private.h"

#include <math.h>

enum { POINTS_A_STRETCH = 6 };

static const double above_mm = 9, below_mm = 3.4;

static const struct Pen rule_pen = {INK_BLACK, WIDTH_RULE, DASH_NONE};
static const struct Pen pale_pen = {INK_PALE, WIDTH_RULE, DASH_NONE};
static const struct Pen thing_pen = {INK_BLACK, WIDTH_THING, DASH_NONE};

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

double profile_level(const struct Profile *profile, double height_m)
{
    return profile->zero_mm - layout_up_mm(profile->layout, height_m);
}

double profile_middle(const struct Stretch *stretch)
{
    return stretch->x_mm + stretch->width_mm / 2;
}

/* ---- what lies behind the cable ---- */

/* The finest of 1, 2, 5 and their tens that keeps figures well apart; where that leaves one or two, just apart. */
static double axis_step(const struct RouteLayout *layout, double range_m, int *decimals)
{
    double apart_mm = 6;
    for (int step = 0;; step++) {
        const double step_m = layout_round_step(step);
        if (layout_up_mm(layout, step_m) >= apart_mm || step > 24) {
            if (apart_mm > 4 && range_m < 2 * step_m) {
                apart_mm = 3.7;
                step = -1;
                continue;
            }
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
    const double step_m = axis_step(profile->layout, profile->strip->high_m - profile->strip->low_m, &decimals);
    const double lowest = floor(profile->strip->low_m / step_m + 1e-9);
    double first_mm = 0, last_mm = 0;
    /* from the figure under everything to the one over it, where they have room: one figure alone is no scale */
    for (double k = lowest; (k - 1) * step_m < profile->strip->high_m - 1e-9 || k == lowest; k++) {
        const double y_mm = profile_level(profile, k * step_m);
        if (y_mm > profile->bottom_mm - 2.2 || y_mm < profile->top_mm + 4) {
            continue;
        }
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
        drawing_line(profile->drawing, pale_pen, x_mm, profile_level(profile, last ? stretch->to_m : stretch->from_m),
                     x_mm, profile->bottom_mm);
    }
}

static void draw_ground(const struct Profile *profile, const struct Stretch *stretch)
{
    const double x1 = stretch->x_mm, x2 = x1 + stretch->width_mm;
    double y1 = profile_level(profile, stretch->ground_from_m), y2 = profile_level(profile, stretch->ground_to_m);
    if (stretch->ground == GROUND_LEVEL) {
        if (fabs(y1 - profile_level(profile, stretch->from_m)) < 1.6 ||
            fabs(y1 - profile_level(profile, stretch->to_m)) < 1.6) {
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
        const double y1 = profile_level(profile, stretch->from_m), y2 = profile_level(profile, stretch->to_m);
        struct WayPiece place = {stretch->x_mm, y1, stretch->x_mm + stretch->width_mm, y2, 0, 1};
        if (stretch->ground != GROUND_NONE) {
            draw_ground(profile, stretch);
        }
        if (stretch->ground == GROUND_KNOWN) {
            place.cover_mm = y1 - profile_level(profile, stretch->ground_from_m);
        }
        if (layout_is_riser(stretch)) { /* the upright alone, what it stands on to its right */
            place.x1_mm = place.x2_mm = profile_middle(stretch);
            place.y1_mm = fmax(y1, y2);
            place.y2_mm = fmin(y1, y2);
        }
        dress_way(profile->drawing, stretch->segment->surveyed->way, place);
    }
}

void profile_take(struct Profile *profile, struct DrawBox box)
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
        const double y1 = profile_level(profile, stretch->from_m), y2 = profile_level(profile, stretch->to_m);
        const double half_mm = fmax(stretch->width_mm, 2.6) / 2, x_mm = profile_middle(stretch);
        const struct DrawBox box = {x_mm - half_mm, fmin(y1, y2) - 3, x_mm + half_mm, fmax(y1, y2) + 3.4};
        dress_wall(profile->drawing, stretch->segment->surveyed->wall, box);
        profile_take(profile, box);
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
        const double y1 = profile_level(profile, stretch->from_m), y2 = profile_level(profile, stretch->to_m);
        add_point(profile, stretch->x_mm, y1);
        if (layout_is_riser(stretch)) {
            add_point(profile, profile_middle(stretch), y1);
            add_point(profile, profile_middle(stretch), y2);
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
        const double y1 = profile_level(profile, stretch->from_m) + off_mm,
                     y2 = profile_level(profile, stretch->to_m) + off_mm;
        if (!on || fabs(at_m - stretch->from_m) > 1e-6) {
            drawing_path(profile->drawing, pen, INK_NONE);
            drawing_is_cable(profile->drawing);
            drawing_move(profile->drawing, stretch->x_mm, y1);
        }
        if (layout_is_riser(stretch)) {
            const double x_mm = profile_middle(stretch) + (y2 > y1 ? -off_mm : off_mm);
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
        if (survey_before(layout->plan->survey, i) != i - 1) {
            continue; /* a branch begins elsewhere: its column says where */
        }
        if (fabs(before->to_m - stretch->from_m) > 1e-6) {
            drawing_line(profile->drawing, (struct Pen){INK_BLACK, WIDTH_CABLE, DASH_SHORT}, stretch->x_mm,
                         profile_level(profile, before->to_m), stretch->x_mm, profile_level(profile, stretch->from_m));
        } else {
            const double y_mm = profile_level(profile, stretch->from_m);
            drawing_line(profile->drawing, thing_pen, stretch->x_mm, y_mm - 1.7, stretch->x_mm, y_mm + 1.7);
        }
    }
}

static size_t landmarks_of(const struct RouteLayout *layout, const struct Strip *strip)
{
    size_t count = 0;
    for (int i = strip->first; i <= strip->last; i++) {
        count += (size_t)layout->stretches[i].segment->surveyed->landmark_count;
    }
    return count;
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
    profile.boxes = arena_array(layout->arena, count * 4 + (size_t)layout->end_count + landmarks_of(layout, strip),
                                sizeof *profile.boxes);
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
    profile_ends(&profile);
    profile_marks(&profile);
}
