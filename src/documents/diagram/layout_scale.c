/* Scales, widths and strips. Scales are those of a scale rule, 1:1, 1:2, 1:2.5 and 1:5 and their tens; the finest is
 * taken with which the run needs no more strips than its boxes do. A stretch too short to hold its number is drawn
 * wider, and one so long that nothing else could be seen is drawn with a break: both are declared in the legend. */
#include "layout_private.h"

#include <math.h>

static const double broken_width_mm = 84; /* a stretch with a break */
static const double dull_share = 0.4;     /* of the whole route, from which a break may be */
static const double comfort_mm = 15;      /* what the shortest stretches get when there is room to spare */

double layout_standard_scale(int step)
{
    static const double leads[] = {1, 2, 2.5, 5};
    int tens = step / 4;
    return leads[step % 4] * pow(10, tens);
}

/* Room for a number and half an end's square at either side. */
static double least_width(const struct RouteLayout *layout)
{
    return 2 * layout->sign_radius_mm + 2 * END_HALF + 0.8;
}

/* What a scale makes of a stretch. */
struct Widths {
    double scale, whole_m, least_mm;
    bool with_break;
};

static void set_width(struct Stretch *stretch, const struct Widths *widths)
{
    double most_mm = WAY_RIGHT - WAY_LEFT, width_mm = stretch->length_m * 1000 / widths->scale;
    stretch->widened = width_mm < widths->least_mm;
    stretch->shortened =
        widths->with_break && stretch->length_m > dull_share * widths->whole_m && width_mm > broken_width_mm;
    width_mm = stretch->shortened ? broken_width_mm : fmax(width_mm, widths->least_mm);
    stretch->width_mm = fmin(width_mm, most_mm + 1); /* one too wide fits nowhere, whatever the scale */
}

static void set_widths(struct RouteLayout *layout, const struct Widths *widths)
{
    for (int i = 0; i < layout->stretch_count; i++) {
        set_width(&layout->stretches[i], widths);
    }
}

/* Boxes that a stretch brings: its own, and one for each end at its far boundary (at its near one for the first). */
static int labels_of(const struct RouteLayout *layout, int index)
{
    return 1 + (index == 0 && layout_end_at(layout, 0) >= 0) + (layout_end_at(layout, index + 1) >= 0);
}

/* Fills strips from the left; with `strips` NULL only counts them. 0 when a stretch fits in no strip. */
static int fill_strips(const struct RouteLayout *layout, int labels_most, struct Strip *strips)
{
    int count = 0, labels = 0;
    double used_mm = 0;
    for (int i = 0; i < layout->stretch_count; i++) {
        double width_mm = layout->stretches[i].width_mm;
        if (width_mm > WAY_RIGHT - WAY_LEFT) {
            return 0;
        }
        bool fresh =
            count == 0 || used_mm + width_mm > WAY_RIGHT - WAY_LEFT || labels + labels_of(layout, i) > labels_most;
        if (fresh) {
            count++;
            used_mm = 0;
            labels = 0;
        }
        used_mm += width_mm;
        labels += labels_of(layout, i);
        if (strips != NULL) {
            if (fresh) {
                strips[count - 1].first = i;
            }
            strips[count - 1].last = i;
            strips[count - 1].label_count = labels;
        }
    }
    return count;
}

/* The finest scale with which `strips_most` strips are enough; sets the widths. */
static bool finest_scale(struct RouteLayout *layout, struct Widths *widths, int strips_most)
{
    for (int step = SCALE_FIRST; step < SCALE_STEPS; step++) {
        widths->scale = layout_standard_scale(step);
        set_widths(layout, widths);
        int count = fill_strips(layout, layout->labels_most, NULL);
        if (count > 0 && count <= strips_most) {
            return true;
        }
    }
    return false;
}

static int widened_count(const struct RouteLayout *layout)
{
    int count = 0;
    for (int i = 0; i < layout->stretch_count; i++) {
        count += layout->stretches[i].widened;
    }
    return count;
}

static bool strip_fits(struct RouteLayout *layout, const struct Strip *strip, const struct Widths *widths)
{
    double used_mm = 0;
    for (int i = strip->first; i <= strip->last; i++) {
        set_width(&layout->stretches[i], widths);
        used_mm += layout->stretches[i].width_mm;
    }
    return used_mm <= WAY_RIGHT - WAY_LEFT;
}

/* A strip with few metres in it gets a finer scale than the longest. Short stretches are not to scale anyhow: what is
 * then still free goes to them, so that their signs can be seen. */
static void enlarge_strip(struct RouteLayout *layout, struct Strip *strip, struct Widths widths)
{
    double coarsest = widths.scale, least_mm = widths.least_mm;
    for (int step = SCALE_FIRST; layout_standard_scale(step) < coarsest; step++) {
        widths.scale = layout_standard_scale(step);
        if (strip_fits(layout, strip, &widths)) {
            break;
        }
        widths.scale = coarsest;
    }
    strip->across = widths.scale;
    for (int half_mm = (int)(comfort_mm * 2); half_mm > least_mm * 2; half_mm--) {
        widths.least_mm = half_mm / 2.0;
        if (strip_fits(layout, strip, &widths)) {
            return;
        }
    }
    widths.least_mm = least_mm;
    strip_fits(layout, strip, &widths);
}

/* As many boxes in each strip as possible, but no more than needed: even strips. */
static void even_strips(struct RouteLayout *layout, int count)
{
    int least = layout->labels_most;
    while (least > 4 && fill_strips(layout, least - 1, NULL) <= count) {
        least--;
    }
    layout->strip_count = 0; /* there may be strips of an earlier try */
    layout->strips = arena_array(layout->arena, (size_t)count, sizeof *layout->strips);
    if (layout->strips == NULL) {
        layout->failed = true;
        return;
    }
    layout->strip_count = fill_strips(layout, least, layout->strips);
}

static void place_strip(struct RouteLayout *layout, struct Strip *strip)
{
    double x_mm = WAY_LEFT;
    strip->row_count = strip->label_count > ONE_ROW_MOST ? 2 : 1;
    for (int i = strip->first; i <= strip->last; i++) {
        struct Stretch *stretch = &layout->stretches[i];
        stretch->x_mm = x_mm;
        x_mm += stretch->width_mm;
        layout->widened = layout->widened || stretch->widened;
        layout->shortened = layout->shortened || stretch->shortened;
    }
}

void layout_scale(struct RouteLayout *layout)
{
    layout->sign_radius_mm = layout->stretch_count < 100 ? 2.6 : 3.4;
    struct Widths widths = {.scale = layout_standard_scale(SCALE_STEPS - 1), .least_mm = least_width(layout)};
    for (int i = 0; i < layout->stretch_count; i++) {
        widths.whole_m += layout->stretches[i].length_m;
    }
    set_widths(layout, &widths);
    int strips_most = fill_strips(layout, layout->labels_most, NULL);
    bool found = finest_scale(layout, &widths, strips_most);
    if (found && layout->stretch_count > 1 && widened_count(layout) * 2 > layout->stretch_count) {
        widths.with_break = true;
        found = finest_scale(layout, &widths, strips_most);
    }
    for (int i = 0; !found && i < layout->stretch_count; i++) { /* longer than the coarsest scale can show */
        layout->stretches[i].width_mm = widths.least_mm;
        layout->stretches[i].widened = true;
    }
    layout->across = widths.scale;
    layout->widened = layout->shortened = false;
    even_strips(layout, strips_most);
    for (int s = 0; s < layout->strip_count; s++) {
        layout->strips[s].across = widths.scale;
        if (found) {
            enlarge_strip(layout, &layout->strips[s], widths);
        }
        place_strip(layout, &layout->strips[s]);
    }
}
