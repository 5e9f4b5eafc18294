/** The way as seen from above: worked out by layout_view.c, drawn by view_draw.c. */
#ifndef WEND_VIEW_PRIVATE_H
#define WEND_VIEW_PRIVATE_H

#include "layout_private.h"

enum { NOTES_MOST = 12, NOTE_LINES_MOST = 24 };

struct MapPoint {
    double east_m, north_m;
};

struct View {
    struct MapPoint *from, *to; /* of each stretch, from the start of the way; a branch begins where it leaves */
    double west_m, south_m, width_m, height_m;
    double scale;
    double field_wide_mm, field_high_mm;
    bool under;     /* the words stand under the field, not beside it */
    int unsurveyed; /* stretches without a heading */
    int note_count, line_count;
    const char *notes[NOTES_MOST];      /* each in one piece */
    const char *lines[NOTE_LINES_MOST]; /* broken for their place */
};

/** Where a landmark stands: along the stretch as it is on the map, and off it to the left or right. */
struct MapPoint view_landmark_at(const struct RouteLayout *layout, const struct View *view, int stretch,
                                 const struct Landmark *landmark);
/** Where an end stands. */
struct MapPoint view_end_at(const struct RouteLayout *layout, const struct View *view, int end);

static const double view_heading_mm = 6, view_words_gap_mm = 8;
/** North and the bar, over the words beside the field or left of those under it. */
static const double view_key_wide_mm = 70, view_key_high_mm = 22;

#endif
