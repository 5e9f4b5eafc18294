/* Marks: numbers, letters of ends, words on plates. */
#include "layout_private.h"

#include "documents/earth_ends_private.h"

#include <math.h>

static const struct Pen thing_pen = {INK_BLACK, WIDTH_THING, DASH_NONE};
static const struct Pen no_pen = {INK_NONE, 0, DASH_NONE};

double number_radius(double radius_mm, int number)
{
    return number > 99 ? 1.35 * radius_mm : radius_mm;
}

void draw_number(struct Drawing *drawing, double x_mm, double y_mm, double radius_mm, int number, bool governs)
{
    const char *text = arena_print(drawing->arena, "%d", number);
    struct TextStyle style = {.size_mm = TYPE_PLAIN * radius_mm / 2.4,
                              .bold = true,
                              .ink = governs ? INK_WHITE : INK_BLACK,
                              .anchor = ANCHOR_MIDDLE};
    radius_mm = number_radius(radius_mm, number);
    drawing_circle(drawing, (struct Pen){INK_BLACK, WIDTH_THING * radius_mm / 2.4, DASH_NONE},
                   governs ? INK_BLACK : INK_WHITE, x_mm, y_mm, radius_mm);
    drawing_text(drawing, style, x_mm, y_mm + 0.37 * style.size_mm, text);
}

void draw_end(struct Drawing *drawing, const char *letter, double x_mm, double y_mm, double half_mm)
{
    const struct TextStyle style = {.size_mm = half_mm * 1.35, .bold = true, .ink = INK_BLACK, .anchor = ANCHOR_MIDDLE};
    drawing_rect(drawing, (struct Pen){INK_BLACK, WIDTH_THING * half_mm / 2, DASH_NONE}, INK_WHITE, x_mm - half_mm,
                 y_mm - half_mm, 2 * half_mm, 2 * half_mm);
    drawing_text(drawing, style, x_mm, y_mm + 0.37 * style.size_mm, letter);
}

void draw_text_on_white(struct Drawing *drawing, struct TextStyle style, double x_mm, double y_mm, const char *text)
{
    const struct DrawItem item = {
        .x_mm = x_mm, .y_mm = y_mm, .style = style, .width_mm = type_width_mm(text, style.size_mm, style.bold)};
    const struct DrawBox box = drawing_text_box(&item);
    if (*text != '\0') {
        drawing_rect(drawing, no_pen, INK_WHITE, box.left_mm - 0.3, box.top_mm, box.right_mm - box.left_mm + 0.6,
                     box.bottom_mm - box.top_mm);
        drawing_text(drawing, style, x_mm, y_mm, text);
    }
}

double draw_plate(struct Drawing *drawing, double x_mm, double base_mm, double size_mm, const char *word, bool alarm,
                  bool asks)
{
    const struct TextStyle style = {.size_mm = size_mm, .bold = true, .ink = alarm ? INK_WHITE : INK_BLACK};
    const double pad_mm = 0.4 * size_mm, width_mm = type_width_mm(word, size_mm, true) + 2 * pad_mm;
    struct Pen pen = {INK_BLACK, thing_pen.width_mm * size_mm / TYPE_PLAIN, asks ? DASH_SHORT : DASH_NONE};
    drawing_rect(drawing, pen, alarm ? INK_BLACK : INK_WHITE, x_mm, base_mm - 1.03 * size_mm, width_mm, 1.36 * size_mm);
    drawing_text(drawing, style, x_mm + pad_mm, base_mm, word);
    return width_mm;
}

/* What carries the supply's earth at an end: name and state, at most two. Returns how many. */
struct EarthPlate {
    enum Saying name;
    enum EarthEnd end;
};
static int earth_plates(const struct RouteLayout *layout, const struct PlanRun *run, bool finish,
                        struct EarthPlate *plates)
{
    const struct EarthPlate both[] = {{SAY_ARMOUR, earth_far_armour(layout->plan, run)},
                                      {earth_conductor(run), earth_far_conductor(layout->plan, run)}};
    int count = 0;
    for (int i = 0; i < 2; i++) {
        if (both[i].end != EARTH_ABSENT) {
            plates[count] = both[i];
            plates[count].end = finish ? both[i].end : EARTH_CONNECTED;
            count++;
        }
    }
    return count;
}

/* A core that stops here is capped: bare it could meet what it must not. */
static double put_plate(const struct RouteLayout *layout, struct Drawing *drawing, struct EarthPlate plate, double x_mm,
                        double base_mm, double size_mm)
{
    const struct TextStyle style = {.size_mm = size_mm, .ink = INK_BLACK};
    const double plate_mm = draw_plate(drawing, x_mm, base_mm, size_mm, layout_term(layout, earth_end_state(plate.end)),
                                       plate.end == EARTH_STOPS, plate.end == EARTH_ASK);
    if (plate.end != EARTH_STOPS || plate.name == SAY_ARMOUR) {
        return plate_mm;
    }
    const char *cap = layout_term(layout, SAY_END_CAP_IT);
    drawing_text(drawing, style, x_mm + plate_mm + 0.5 * size_mm, base_mm, cap);
    return plate_mm + 0.5 * size_mm + type_width_mm(cap, size_mm, false);
}

double draw_earth_plates(const struct RouteLayout *layout, struct Drawing *drawing, const struct PlanRun *run,
                         bool finish, double x_mm, double base_mm, double size_mm)
{
    const struct TextStyle style = {.size_mm = size_mm, .ink = INK_BLACK};
    struct EarthPlate plates[2];
    const int count = earth_plates(layout, run, finish, plates);
    for (int i = 0; i < count; i++) {
        const char *name = layout_term(layout, plates[i].name);
        drawing_text(drawing, style, x_mm, base_mm, name);
        x_mm += type_width_mm(name, size_mm, false) + 0.4 * size_mm;
        x_mm += put_plate(layout, drawing, plates[i], x_mm, base_mm, size_mm) + size_mm;
    }
    return x_mm;
}

double draw_earth_column(const struct RouteLayout *layout, struct Drawing *drawing, const struct PlanRun *run,
                         bool finish, double x_mm, double top_mm, double size_mm, double right_mm)
{
    const struct TextStyle style = {.size_mm = size_mm, .ink = INK_BLACK};
    const double row_mm = 1.9 * size_mm;
    struct EarthPlate plates[2];
    double name_mm = 0, widest_mm = 0, base_mm = top_mm + 1.35 * size_mm;
    const int count = earth_plates(layout, run, finish, plates);
    struct Drawing nothing = drawing_new(layout->arena); /* drawn on it to learn how wide a plate is */
    for (int i = 0; i < count; i++) {
        name_mm = fmax(name_mm, type_width_mm(layout_term(layout, plates[i].name), size_mm, false) + 0.6 * size_mm);
        widest_mm = fmax(widest_mm, put_plate(layout, &nothing, plates[i], 0, 0, size_mm));
    }
    const bool beside = x_mm + name_mm + widest_mm <= right_mm;
    for (int i = 0; i < count; i++, base_mm += row_mm) {
        drawing_text(drawing, style, x_mm, base_mm, layout_term(layout, plates[i].name));
        base_mm += beside ? 0 : row_mm;
        put_plate(layout, drawing, plates[i], x_mm + (beside ? name_mm : 0), base_mm, size_mm);
    }
    return base_mm - top_mm - 1.35 * size_mm;
}
