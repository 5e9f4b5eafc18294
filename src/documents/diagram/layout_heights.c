/* Heights along the run and the ground under and over it.
 *
 * The survey gives rises along the cable and, for what lies in the ground, its cover. Where `legs: included` says that
 * the surveyed lengths hold the way into the trench, the rises of the neighbours may be what goes down to it. Of each
 * buried piece:
 *   - they are, when both neighbours are steep, go down far enough and stay above that ground: then the cable is drawn
 *     through, and the ground lies above it by the cover;
 *   - else the surveyed heights are those of the ground there, and the cable steps down by the cover; the legend says
 * so. */
#include "layout_private.h"

#include <math.h>

/* A cover is drawn at least this deep, so that what lies in the ground stands apart from its surface. */
static const double least_cover_mm = 3.8;
/* Small differences are slips of the tape. */
static const double tolerance_m = 0.05;
/* A wall is drawn over a level ground as far as a cable on it can be reached from a ladder. */
static const double reach_m = 4.0;

static bool buried(const struct RouteLayout *layout, int index)
{
    return index >= 0 && index < layout->stretch_count &&
           survey_in_ground(layout->stretches[index].segment->surveyed->way);
}

/* A neighbour whose rise takes the cable into the ground: steep, and at least as far as the cover. */
static bool goes_under(const struct Stretch *stretch, double fall_m, double cover_m)
{
    return fall_m >= cover_m - tolerance_m && fall_m >= stretch->length_m / 2;
}

static bool rises_include_depth(const struct RouteLayout *layout, int first, int last)
{
    const struct Stretch *stretches = layout->stretches;
    if (stretches[first].segment->surveyed->legs != LEGS_INCLUDED) {
        return false;
    }
    double cover_m = stretches[first].segment->depth_m; /* as surveyed: what is drawn deeper changes no reading */
    for (int i = first; i <= last; i++) {
        if (fabs(stretches[i].segment->depth_m - cover_m) > 0.005) {
            return false;
        }
    }
    if (first > 0) {
        double ground_m = stretches[first].from_m + cover_m;
        if (!goes_under(&stretches[first - 1], stretches[first - 1].from_m - stretches[first - 1].to_m, cover_m)) {
            return false;
        }
        for (int i = first - 1; i >= 0 && !buried(layout, i); i--) {
            if (stretches[i].from_m < ground_m - tolerance_m) {
                return false;
            }
        }
    }
    if (last + 1 < layout->stretch_count) {
        const struct Stretch *next = &stretches[last + 1];
        return goes_under(next, next->length_m, cover_m);
    }
    return first > 0;
}

static void place_group(struct RouteLayout *layout, int first, int last)
{
    bool through = rises_include_depth(layout, first, last);
    for (int i = first; i <= last; i++) {
        struct Stretch *stretch = &layout->stretches[i];
        double scaled_m = least_cover_mm * layout->up / 1000;
        double cover_m = fmax(stretch->segment->depth_m, scaled_m);
        layout->deepened = layout->deepened || cover_m > stretch->segment->depth_m;
        stretch->ground = GROUND_KNOWN;
        stretch->ground_from_m = stretch->from_m + (through ? cover_m : 0);
        stretch->ground_to_m = stretch->to_m + (through ? cover_m : 0);
        stretch->from_m = through ? stretch->from_m : stretch->ground_from_m - cover_m;
        stretch->to_m = through ? stretch->to_m : stretch->ground_to_m - cover_m;
    }
    layout->known_ground = true;
    layout->stepped = layout->stepped || !through;
}

/* Carries a level on from a buried piece while the cable stays near and above it. */
static void carry_level(struct RouteLayout *layout, int start, int step, double level_m)
{
    for (int i = start; i >= 0 && i < layout->stretch_count; i += step) {
        struct Stretch *stretch = &layout->stretches[i];
        double far_m = step > 0 ? stretch->to_m : stretch->from_m;
        double near_m = step > 0 ? stretch->from_m : stretch->to_m;
        bool near_fits = near_m <= level_m + reach_m && (i == start || near_m >= level_m - tolerance_m);
        if (stretch->ground != GROUND_NONE || !near_fits || far_m < level_m - tolerance_m ||
            far_m > level_m + reach_m) {
            return;
        }
        stretch->ground = GROUND_LEVEL;
        stretch->ground_from_m = stretch->ground_to_m = level_m;
        layout->level_ground = true;
    }
}

void layout_heights(struct RouteLayout *layout)
{
    layout->known_ground = layout->level_ground = layout->stepped = layout->deepened = false;
    for (int i = 0; i < layout->stretch_count; i++) {
        struct Stretch *stretch = &layout->stretches[i];
        stretch->from_m = stretch->segment->height_from_m;
        stretch->to_m = stretch->segment->height_to_m;
        stretch->ground = GROUND_NONE;
    }
    for (int i = 0; i < layout->stretch_count; i++) {
        if (buried(layout, i)) {
            int last = i;
            while (buried(layout, last + 1)) {
                last++;
            }
            place_group(layout, i, last);
            i = last;
        }
    }
    for (int i = 0; i < layout->stretch_count; i++) {
        const struct Stretch *stretch = &layout->stretches[i];
        if (stretch->ground == GROUND_KNOWN) {
            carry_level(layout, i - 1, -1, stretch->ground_from_m);
            carry_level(layout, i + 1, 1, stretch->ground_to_m);
        }
    }
}
