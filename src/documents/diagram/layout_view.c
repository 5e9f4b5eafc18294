/* The way seen from above, to scale, when headings were surveyed. A stretch without one goes on in the last; what rises
 * is drawn as long as it is on the map. The line is open: nothing closes it, so its error cannot be known, and the
 * words beside it say only where its end lies from its start. */
#include "view_private.h"

#include <math.h>

static const double field_least_mm = 96, field_beside_mm = 176, field_pad_mm = 9, gap_mm = 3;
static const struct TextStyle text_style = {.size_mm = TYPE_PLAIN, .ink = INK_BLACK};

static int first_heading(const struct RouteLayout *layout)
{
    for (int i = 0; i < layout->stretch_count; i++) {
        if (layout->stretches[i].segment->surveyed->heading_deg.given) {
            return i;
        }
    }
    return -1;
}

struct MapPoint view_landmark_at(const struct RouteLayout *layout, const struct View *view, int stretch,
                                 const struct Landmark *landmark)
{
    const struct MapPoint *from = &view->from[stretch], *to = &view->to[stretch];
    const double length_m = layout->stretches[stretch].length_m;
    const double part = length_m > 0 ? fmin(landmark->at_m.value / length_m, 1) : 0;
    const double east_m = to->east_m - from->east_m, north_m = to->north_m - from->north_m;
    const double flat_m = hypot(east_m, north_m);
    const double off_m = landmark->side_given && flat_m > 0 ? landmark->off_m.value : 0;
    const double right_m = landmark->side == SIDE_RIGHT ? off_m : -off_m;
    return (struct MapPoint){from->east_m + part * east_m + (flat_m > 0 ? right_m * north_m / flat_m : 0),
                             from->north_m + part * north_m - (flat_m > 0 ? right_m * east_m / flat_m : 0)};
}

static bool ends_on(const struct Plan *plan, int segment)
{
    for (int i = 0; i < plan->run_count; i++) {
        const struct Run *run = plan->runs[i].settled;
        if (run->along_count > 0 && (run->along[0] == segment || run->along[run->along_count - 1] == segment)) {
            return true;
        }
    }
    return false;
}

struct MapPoint view_end_at(const struct RouteLayout *layout, const struct View *view, int end)
{
    const int boundary = layout->ends[end].boundary;
    const bool behind = boundary == layout->stretch_count || (boundary > 0 && ends_on(layout->plan, boundary - 1));
    return behind ? view->to[boundary - 1] : view->from[boundary];
}

static void survey_points(struct RouteLayout *layout, struct View *view, int first)
{
    double heading_deg = layout->stretches[first].segment->surveyed->heading_deg.value;
    double east_most_m = 0, north_most_m = 0;
    for (int i = 0; i < layout->stretch_count; i++) {
        const struct Segment *surveyed = layout->stretches[i].segment->surveyed;
        heading_deg = surveyed->heading_deg.given ? surveyed->heading_deg.value : heading_deg;
        view->unsurveyed += !surveyed->heading_deg.given;
        double length_m = layout->stretches[i].length_m, rise_m = surveyed->rise_m.value;
        double flat_m = fabs(rise_m) < length_m ? sqrt(length_m * length_m - rise_m * rise_m) : 0;
        double angle = heading_deg * acos(-1) / 180;
        const int before = survey_before(layout->plan->survey, i);
        view->from[i] = before < 0 ? (struct MapPoint){0, 0} : view->to[before];
        view->to[i] =
            (struct MapPoint){view->from[i].east_m + flat_m * sin(angle), view->from[i].north_m + flat_m * cos(angle)};
        for (int k = -1; k < surveyed->landmark_count; k++) {
            const struct MapPoint point =
                k < 0 ? view->to[i] : view_landmark_at(layout, view, i, &surveyed->landmarks[k]);
            view->west_m = fmin(view->west_m, point.east_m);
            view->south_m = fmin(view->south_m, point.north_m);
            east_most_m = fmax(east_most_m, point.east_m);
            north_most_m = fmax(north_most_m, point.north_m);
        }
    }
    view->width_m = east_most_m - view->west_m;
    view->height_m = north_most_m - view->south_m;
}

static void add_note(const struct RouteLayout *layout, struct View *view, const struct Say *said)
{
    if (view->note_count < NOTES_MOST) {
        view->notes[view->note_count++] = layout_said(layout, said);
    }
}

/* "1-3, 5", and no more than fits into a line or two */
static const struct Say *without_heading(const struct RouteLayout *layout)
{
    struct TextBuilder text = text_builder(layout->arena);
    int groups = 0;
    for (int i = 0; i < layout->stretch_count && groups < 7; i++) {
        int last = i;
        while (last < layout->stretch_count && !layout->stretches[last].segment->surveyed->heading_deg.given) {
            last++;
        }
        if (last == i || ++groups > 6) {
            continue;
        }
        text_print(&text, "%s%d", groups > 1 ? ", " : "", i + 1);
        if (last - i > 1) {
            text_print(&text, "\xE2\x80\x93%d", last);
        }
        i = last;
    }
    return say(layout->arena, groups > 6 ? SAY_VIEW_NO_HEADING_MORE : SAY_VIEW_NO_HEADING, say_name(text_done(&text)));
}

static const struct Say *offset_said(struct Arena *arena, double offset_m, enum Saying forth, enum Saying back)
{
    return say(arena, offset_m < 0 ? back : forth, say_fixed(fabs(offset_m), 1, UNIT_M));
}

/* How an end lies from the first. */
static const struct Say *end_lies(const struct RouteLayout *layout, const struct View *view, int number)
{
    struct Arena *arena = layout->arena;
    const struct MapPoint start = view_end_at(layout, view, 0), end = view_end_at(layout, view, number);
    const double east_m = end.east_m - start.east_m, north_m = end.north_m - start.north_m;
    return say(arena, SAY_VIEW_ENDS, say_name(layout->ends[number].letter),
               say_part(offset_said(arena, east_m, SAY_VIEW_EAST, SAY_VIEW_WEST)),
               say_part(offset_said(arena, north_m, SAY_VIEW_NORTHWARD, SAY_VIEW_SOUTH)),
               say_name(layout->ends[0].letter), say_fixed(hypot(east_m, north_m), 1, UNIT_M));
}

static void write_notes(struct RouteLayout *layout, struct View *view, int first)
{
    struct Arena *arena = layout->arena;
    for (int i = 1; i < layout->end_count && i < 6; i++) {
        add_note(layout, view, end_lies(layout, view, i));
    }
    add_note(layout, view, say(arena, SAY_VIEW_OPEN));
    if (view->unsurveyed > 0) {
        add_note(layout, view, without_heading(layout));
    }
    if (first > 0) {
        add_note(layout, view, say(arena, SAY_VIEW_BEFORE, say_count(first + 1)));
    }
    add_note(layout, view, say(arena, SAY_VIEW_HOW));
}

void layout_view(struct RouteLayout *layout)
{
    int first = first_heading(layout);
    if (first < 0) {
        return;
    }
    struct View *view = arena_alloc(layout->arena, sizeof *view);
    struct MapPoint *from = arena_array(layout->arena, (size_t)layout->stretch_count, sizeof *from);
    struct MapPoint *to = arena_array(layout->arena, (size_t)layout->stretch_count, sizeof *to);
    if (view == NULL || from == NULL || to == NULL) {
        layout->failed = true;
        return;
    }
    view->from = from;
    view->to = to;
    survey_points(layout, view, first);
    write_notes(layout, view, first);
    layout->view = view;
}

static void break_notes(const struct RouteLayout *layout, struct View *view, double width_mm)
{
    view->line_count = 0;
    for (int i = 0; i < view->note_count; i++) {
        view->line_count += type_wrap(layout->arena, view->notes[i], text_style, width_mm,
                                      NOTE_LINES_MOST - view->line_count, &view->lines[view->line_count]);
    }
}

/* The words beside the field, or under a wider one. */
static void arrange(const struct RouteLayout *layout, struct View *view, bool under, double high_mm)
{
    const double all_mm = FRAME_RIGHT - FRAME_LEFT;
    view->under = under;
    view->field_wide_mm = under ? all_mm : field_beside_mm;
    break_notes(layout, view, all_mm - (under ? view_key_wide_mm : field_beside_mm + view_words_gap_mm));
    /* a line more says how many found no room */
    const double words_mm = fmax((view->line_count + 1) * LINE_PITCH, view_key_high_mm) + gap_mm;
    view->field_high_mm = under ? high_mm - words_mm : high_mm;
    view->scale = fmax(layout_fitting_scale(view->width_m, view->field_wide_mm - 2 * field_pad_mm, 20),
                       layout_fitting_scale(view->height_m, view->field_high_mm - 2 * field_pad_mm, 20));
}

/* The field takes all the room: what else is found on site can be drawn into it. */
double layout_view_height(struct RouteLayout *layout, double room_mm)
{
    struct View *view = layout->view;
    const double high_mm = fmax(room_mm - view_heading_mm - gap_mm, field_least_mm);
    arrange(layout, view, true, high_mm);
    const double under_scale = view->scale;
    arrange(layout, view, false, high_mm);
    if (under_scale < view->scale || (under_scale == view->scale && view->width_m > view->height_m)) {
        arrange(layout, view, true, high_mm);
    }
    return view_heading_mm + high_mm + gap_mm;
}
