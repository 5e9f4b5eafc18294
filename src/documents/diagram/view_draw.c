/* Draws the way as layout_view.c has worked it out. */
#include "view_private.h"

#include "documents/shown_private.h"

#include <math.h>

enum { PLACES = 21 };

static const double radius_mm = 2.4, end_half_mm = 2.5;
static const struct TextStyle text_style = {.size_mm = TYPE_PLAIN, .ink = INK_BLACK};
static const struct Pen tick_pen = {INK_BLACK, WIDTH_RULE, DASH_NONE};
static const struct Pen leader_pen = {INK_GREY, WIDTH_RULE, DASH_NONE};

struct Map {
    const struct RouteLayout *layout;
    struct Drawing *drawing;
    const struct View *view;
    double left_mm, top_mm, width_mm, height_mm; /* the field */
    double x_mm, y_mm;                           /* of the start */
    int box_count;
    struct DrawBox *boxes; /* what is taken already; first the signs of the landmarks that found a place */
    const char **notes;    /* of each of these signs */
    struct DrawBox *found; /* of each end and then of each number; empty where there was no room */
};

static double map_x(const struct Map *map, struct MapPoint point)
{
    return map->x_mm + point.east_m * 1000 / map->view->scale;
}

static double map_y(const struct Map *map, struct MapPoint point)
{
    return map->y_mm - point.north_m * 1000 / map->view->scale;
}

static bool is_free(const struct Map *map, struct DrawBox box)
{
    if (box.left_mm < map->left_mm || box.right_mm > map->left_mm + map->width_mm || box.top_mm < map->top_mm ||
        box.bottom_mm > map->top_mm + map->height_mm) {
        return false;
    }
    for (int i = 0; i < map->box_count; i++) {
        const struct DrawBox *other = &map->boxes[i];
        if (box.left_mm < other->right_mm && other->left_mm < box.right_mm && box.top_mm < other->bottom_mm &&
            other->top_mm < box.bottom_mm) {
            return false;
        }
    }
    return true;
}

static double distance_to_line(const struct Map *map, int stretch, double x_mm, double y_mm)
{
    double x1 = map_x(map, map->view->from[stretch]), y1 = map_y(map, map->view->from[stretch]);
    double dx = map_x(map, map->view->to[stretch]) - x1, dy = map_y(map, map->view->to[stretch]) - y1;
    double squared = dx * dx + dy * dy;
    double part = squared > 0 ? fmin(fmax(((x_mm - x1) * dx + (y_mm - y1) * dy) / squared, 0), 1) : 0;
    return hypot(x_mm - x1 - part * dx, y_mm - y1 - part * dy);
}

/* A number that stands aside must not stand on another stretch. */
static bool off_the_way(const struct Map *map, double x_mm, double y_mm, double half_mm)
{
    double least_mm = half_mm + 0.6 + layout_cable_spread(map->layout);
    for (int i = 0; i < map->layout->stretch_count; i++) {
        if (distance_to_line(map, i, x_mm, y_mm) < least_mm) {
            return false;
        }
    }
    return true;
}

/* Nearest free place around a point: on it, be it on the way or not, then on rings around it. */
static bool find_place(struct Map *map, double x_mm, double y_mm, double half_mm, bool on_way, struct DrawBox *found)
{
    for (int place = 0; place < PLACES; place++) {
        double ring_mm = place == 0 ? 0 : (place - 1) / 10 == 0 ? 6.5 : 11;
        double angle = (place - 1) % 10 * acos(-1) / 5 - acos(-1) / 2;
        double x = x_mm + ring_mm * cos(angle), y = y_mm + ring_mm * sin(angle);
        struct DrawBox box = {x - half_mm, y - half_mm, x + half_mm, y + half_mm};
        if (is_free(map, box) && ((place == 0 && on_way) || off_the_way(map, x, y, half_mm))) {
            map->boxes[map->box_count++] = box;
            *found = box;
            return true;
        }
    }
    return false;
}

static void draw_lines(const struct Map *map)
{
    const struct RouteLayout *layout = map->layout;
    for (int run = 0; run < layout->plan->run_count; run++) {
        double off = layout_cable_offset(layout, run);
        bool on = false;
        for (int i = 0; i < layout->stretch_count; i++) {
            double x1 = map_x(map, map->view->from[i]), y1 = map_y(map, map->view->from[i]);
            double x2 = map_x(map, map->view->to[i]), y2 = map_y(map, map->view->to[i]);
            double length = hypot(x2 - x1, y2 - y1);
            on = on && survey_before(layout->plan->survey, i) == i - 1;
            if (!layout_follows(layout, run, i)) {
                on = false;
                continue;
            }
            if (length < 0.01) { /* straight up: nothing of it on a map */
                continue;
            }
            double nx = -(y2 - y1) / length * off, ny = (x2 - x1) / length * off;
            if (!on) {
                drawing_path(map->drawing, layout_cable_pen(layout, run), INK_NONE);
                drawing_is_cable(map->drawing);
            }
            (on ? drawing_to : drawing_move)(map->drawing, x1 + nx, y1 + ny);
            drawing_to(map->drawing, x2 + nx, y2 + ny);
            on = true;
        }
    }
    for (int i = 1; i < layout->stretch_count; i++) { /* a dot at each boundary would hide short stretches: a tick */
        double x = map_x(map, map->view->from[i]), y = map_y(map, map->view->from[i]);
        drawing_line(map->drawing, tick_pen, x - 0.9, y - 0.9, x + 0.9, y + 0.9);
    }
}

/* What stands beside the way, where it stands: one that is off the line too little to be seen apart from it stands
 * aside at the end of a thin line, as a number does. Returns how many found no room. */
static int draw_landmarks(struct Map *map)
{
    static const double sign_scale = 0.55, half_mm = 2.4;
    const struct RouteLayout *layout = map->layout;
    int left_out = 0;
    for (int i = 0; i < layout->stretch_count; i++) {
        const struct Segment *surveyed = layout->stretches[i].segment->surveyed;
        for (int k = 0; k < surveyed->landmark_count; k++) {
            const struct MapPoint at = view_landmark_at(layout, map->view, i, &surveyed->landmarks[k]);
            const double x = map_x(map, at), y = map_y(map, at);
            struct DrawBox found;
            if (!find_place(map, x, y, half_mm, false, &found)) {
                left_out++;
                continue;
            }
            const enum Sign sign = landmark_sign(surveyed->landmarks[k].what);
            const char *note = surveyed->landmarks[k].note;
            map->notes[map->box_count - 1] =
                note == NULL || *note == '\0' ? layout_term(layout, sign_word(sign)) : shown_text(layout->arena, note);
            const double sign_x = (found.left_mm + found.right_mm) / 2, sign_y = (found.top_mm + found.bottom_mm) / 2;
            if (hypot(sign_x - x, sign_y - y) >= 0.01) {
                drawing_line(map->drawing, leader_pen, x, y, sign_x, sign_y);
            }
            drawing_rect(map->drawing, (struct Pen){INK_NONE, 0, DASH_NONE}, INK_WHITE, sign_x - 4 * sign_scale,
                         sign_y - 3 * sign_scale, 8 * sign_scale, 6 * sign_scale);
            sign_draw(map->drawing, sign, sign_x - 4 * sign_scale, sign_y - 3 * sign_scale, sign_scale);
        }
    }
    return left_out;
}

/* Words right of a sign, left of it, over or under it, or at a corner, where they cover nothing. */
static void draw_beside(struct Map *map, struct DrawBox sign, const char *text)
{
    static const double high_mm = 1.6, apart_mm = 0.8, lift_mm = 3;
    const double width_mm = type_width_mm(text, TYPE_PLAIN, false);
    const double x_mm = (sign.left_mm + sign.right_mm) / 2, y_mm = (sign.top_mm + sign.bottom_mm) / 2;
    const double right_mm = sign.right_mm + apart_mm, left_of_mm = sign.left_mm - width_mm - apart_mm;
    const struct {
        double left_mm, y_mm;
    } places[] = {{right_mm, y_mm},
                  {left_of_mm, y_mm},
                  {x_mm - width_mm / 2, sign.top_mm - high_mm - apart_mm},
                  {x_mm - width_mm / 2, sign.bottom_mm + high_mm + apart_mm},
                  {right_mm, y_mm - lift_mm},
                  {right_mm, y_mm + lift_mm},
                  {left_of_mm, y_mm - lift_mm},
                  {left_of_mm, y_mm + lift_mm}};
    for (size_t place = 0; place < sizeof places / sizeof places[0] && width_mm > 0; place++) {
        const double left_mm = places[place].left_mm, middle_mm = places[place].y_mm;
        const struct DrawBox box = {left_mm, middle_mm - high_mm, left_mm + width_mm, middle_mm + high_mm};
        bool clear = is_free(map, box);
        for (int mm = 0; mm <= (int)width_mm + 1; mm++) {
            clear = clear && off_the_way(map, left_mm + fmin(mm, width_mm), middle_mm, high_mm);
        }
        if (clear) {
            map->boxes[map->box_count++] = box;
            draw_text_on_white(map->drawing, text_style, left_mm, middle_mm + 1.1, text);
            return;
        }
    }
}

/* What a landmark is called, and how far and which way a stretch goes: the columns have it in any case. */
static void draw_words_beside(struct Map *map, int signs)
{
    const struct RouteLayout *layout = map->layout;
    for (int i = 0; i < signs; i++) {
        draw_beside(map, map->boxes[i], map->notes[i]);
    }
    for (int i = 0; i < layout->stretch_count; i++) {
        const struct Stretch *stretch = &layout->stretches[i];
        const struct Quantity *heading_deg = &stretch->segment->surveyed->heading_deg;
        const struct DrawBox number = map->found[layout->end_count + i];
        if (heading_deg->given && number.right_mm > number.left_mm) {
            const struct Say *length = say_alone(layout->arena, layout_metres(stretch->length_m));
            draw_beside(map, number,
                        layout_said(layout, say_list(layout->arena, SAY_COMMA, length,
                                                     say_digits(heading_deg->value, 4, UNIT_DEG))));
        }
    }
}

/* Places first, then leaders, then signs: no leader is drawn over a sign. */
static int draw_signs(struct Map *map)
{
    const struct RouteLayout *layout = map->layout;
    int count = layout->end_count + layout->stretch_count, left_out = 0;
    struct DrawBox *found = map->found;
    for (int pass = 0; pass < 3; pass++) {
        for (int i = 0; i < count; i++) {
            bool is_end = i < layout->end_count;
            int stretch = i - layout->end_count;
            struct MapPoint at = is_end ? view_end_at(layout, map->view, i) : map->view->from[stretch];
            if (!is_end) {
                const struct MapPoint *next = &map->view->to[stretch];
                at = (struct MapPoint){(at.east_m + next->east_m) / 2, (at.north_m + next->north_m) / 2};
            }
            double x = map_x(map, at), y = map_y(map, at);
            if (pass == 0) {
                left_out +=
                    !find_place(map, x, y, is_end ? end_half_mm + 0.3 : number_radius(radius_mm, stretch + 1) + 0.2,
                                true, &found[i]);
            } else if (found[i].right_mm > found[i].left_mm) {
                double sign_x = (found[i].left_mm + found[i].right_mm) / 2;
                double sign_y = (found[i].top_mm + found[i].bottom_mm) / 2;
                if (pass == 1 && hypot(sign_x - x, sign_y - y) < 0.01) {
                    continue; /* it stands on the way itself */
                }
                if (pass == 1) {
                    drawing_line(map->drawing, leader_pen, x, y, sign_x, sign_y);
                } else if (is_end) {
                    draw_end(map->drawing, layout->ends[i].letter, sign_x, sign_y, end_half_mm);
                } else {
                    draw_number(map->drawing, sign_x, sign_y, radius_mm, stretch + 1,
                                layout_main_governs(layout, stretch));
                }
            }
        }
    }
    return left_out;
}

static void draw_north(struct Drawing *drawing, double x_mm, double y_mm, const char *north)
{
    static const struct TextStyle style = {.size_mm = 3.4, .bold = true, .ink = INK_BLACK, .anchor = ANCHOR_MIDDLE};
    static const struct Pen pen = {INK_BLACK, WIDTH_THING, DASH_NONE};
    drawing_text(drawing, style, x_mm, y_mm + 3, north);
    drawing_path(drawing, pen, INK_BLACK);
    drawing_move(drawing, x_mm, y_mm + 4.4);
    drawing_to(drawing, x_mm + 1.6, y_mm + 8.4);
    drawing_to(drawing, x_mm - 1.6, y_mm + 8.4);
    drawing_close(drawing);
    drawing_line(drawing, pen, x_mm, y_mm + 8.4, x_mm, y_mm + 14);
}

/* 1, 2 or 5 times ten metres, about 40 mm long. */
static double bar_length(const struct View *view)
{
    double bar_m = 1;
    for (int step = 3; step < 27 && layout_round_step(step) * 1000 / view->scale <= 48; step++) {
        bar_m = layout_round_step(step);
    }
    return bar_m;
}

static void draw_scale_bar(const struct Map *map, double x_mm, double y_mm)
{
    static const struct TextStyle middle_style = {.size_mm = TYPE_PLAIN, .ink = INK_BLACK, .anchor = ANCHOR_MIDDLE};
    static const struct Pen pen = {INK_BLACK, WIDTH_THING, DASH_NONE};
    const double bar_m = bar_length(map->view), bar_mm = bar_m * 1000 / map->view->scale;
    drawing_line(map->drawing, pen, x_mm, y_mm, x_mm + bar_mm, y_mm);
    for (int i = 0; i <= 2; i++) {
        drawing_line(map->drawing, pen, x_mm + i * bar_mm / 2, y_mm - 1, x_mm + i * bar_mm / 2, y_mm + 1);
    }
    drawing_text(map->drawing, middle_style, x_mm, y_mm - 2, "0");
    drawing_text(map->drawing, middle_style, x_mm + bar_mm, y_mm - 2,
                 layout_said(map->layout, say_alone(map->layout->arena, say_digits(bar_m, 6, UNIT_M))));
    drawing_text(map->drawing, text_style, x_mm, y_mm + 5,
                 layout_said(map->layout, say(map->layout->arena, SAY_VIEW_CROSSES, say_digits(bar_m / 2, 6, UNIT_M))));
}

/* Half the bar apart, from the start on: by them a thing found on site is drawn in where it lies. */
static void draw_crosses(const struct Map *map)
{
    static const struct Pen pen = {INK_PALE, WIDTH_RULE, DASH_NONE};
    static const double half_mm = 1;
    const double step_mm = bar_length(map->view) * 500 / map->view->scale;
    const double right_mm = map->left_mm + map->width_mm, bottom_mm = map->top_mm + map->height_mm;
    drawing_path(map->drawing, pen, INK_NONE);
    const int left = -(int)floor((map->x_mm - map->left_mm - 2) / step_mm);
    const int top = -(int)floor((map->y_mm - map->top_mm - 2) / step_mm);
    for (int across = left; map->x_mm + across * step_mm < right_mm - 2; across++) {
        const double x = map->x_mm + across * step_mm;
        for (int down = top; map->y_mm + down * step_mm < bottom_mm - 2; down++) {
            const double y = map->y_mm + down * step_mm;
            drawing_move(map->drawing, x - half_mm, y);
            drawing_to(map->drawing, x + half_mm, y);
            drawing_move(map->drawing, x, y - half_mm);
            drawing_to(map->drawing, x, y + half_mm);
        }
    }
}

static void draw_words(const struct Map *map, int left_out)
{
    const struct View *view = map->view;
    const double key_left_mm = view->under ? map->left_mm : map->left_mm + map->width_mm + view_words_gap_mm;
    const double key_top_mm = map->top_mm + (view->under ? map->height_mm + 2 : 0);
    const double left_mm = key_left_mm + (view->under ? view_key_wide_mm : 0);
    double y_mm = key_top_mm + (view->under ? 2.75 : view_key_high_mm);
    draw_north(map->drawing, key_left_mm + 4, key_top_mm + 1, layout_term(map->layout, SAY_VIEW_NORTH));
    draw_scale_bar(map, key_left_mm + 16, key_top_mm + 11);
    for (int i = 0; i < view->line_count; i++, y_mm += LINE_PITCH) {
        drawing_text(map->drawing, text_style, left_mm, y_mm, view->lines[i]);
    }
    if (left_out > 0) {
        drawing_text(map->drawing, text_style, left_mm, y_mm,
                     layout_said(map->layout, say(map->layout->arena, SAY_VIEW_LEFT_OUT, say_count(left_out))));
    }
}

void layout_draw_view(struct RouteLayout *layout, struct Drawing *drawing, double top_mm)
{
    static const struct TextStyle heading_style = {.size_mm = 3.4, .bold = true, .ink = INK_BLACK};
    const struct View *view = layout->view;
    struct Map map = {.layout = layout,
                      .drawing = drawing,
                      .view = view,
                      .left_mm = FRAME_LEFT,
                      .top_mm = top_mm + view_heading_mm,
                      .width_mm = view->field_wide_mm,
                      .height_mm = view->field_high_mm};
    double width_mm = view->width_m * 1000 / view->scale, height_mm = view->height_m * 1000 / view->scale;
    map.x_mm = map.left_mm + (map.width_mm - width_mm) / 2 - view->west_m * 1000 / view->scale;
    map.y_mm = map.top_mm + (map.height_mm + height_mm) / 2 + view->south_m * 1000 / view->scale;
    const size_t signs_most = (size_t)layout->end_count + (size_t)layout->stretch_count;
    size_t most = signs_most + (size_t)layout->stretch_count;
    for (int i = 0; i < layout->stretch_count; i++) {
        most += 2 * (size_t)layout->stretches[i].segment->surveyed->landmark_count;
    }
    map.boxes = arena_array(layout->arena, most, sizeof *map.boxes);
    map.notes = arena_array(layout->arena, most, sizeof *map.notes);
    map.found = arena_array(layout->arena, signs_most, sizeof *map.found);
    if (map.boxes == NULL || map.notes == NULL || map.found == NULL) {
        layout->failed = true;
        return;
    }
    drawing_group(drawing, "view", layout_term(layout, SAY_VIEW));
    drawing_text(drawing, heading_style, FRAME_LEFT, top_mm + 3.6,
                 layout_said(layout, say(layout->arena, SAY_VIEW_SCALE, say_fixed(view->scale, 0, UNIT_NONE))));
    drawing_rect(drawing, (struct Pen){INK_PALE, WIDTH_RULE, DASH_NONE}, INK_NONE, map.left_mm, map.top_mm,
                 map.width_mm, map.height_mm);
    draw_crosses(&map);
    draw_lines(&map);
    const int landmarks_left_out = draw_landmarks(&map), signs = map.box_count;
    const int left_out = draw_signs(&map) + landmarks_left_out;
    draw_words_beside(&map, signs);
    draw_words(&map, left_out);
    drawing_group_end(drawing);
}
