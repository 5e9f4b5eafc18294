/** The way as seen from above: worked out by layout_view.c, drawn by view_draw.c. */
#ifndef WEND_VIEW_PRIVATE_H
#define WEND_VIEW_PRIVATE_H

#include "layout_private.h"

enum { NOTE_LINES_MOST = 24 };

struct MapPoint {
    double east_m, north_m;
};

struct View {
    struct MapPoint *from, *to; /* of each stretch, from the start of the way; a branch begins where it leaves */
    double west_m, south_m, width_m, height_m;
    double scale, field_mm; /* field_mm: the most that it may be high */
    int unsurveyed;         /* stretches without a heading */
    int note_count;
    const char *notes[NOTE_LINES_MOST];
};

/** Where a landmark stands: along the stretch as it is on the map, and off it to the left or right. */
struct MapPoint view_landmark_at(const struct RouteLayout *layout, const struct View *view, int stretch,
                                 const struct Landmark *landmark);
/** Where an end stands. */
struct MapPoint view_end_at(const struct RouteLayout *layout, const struct View *view, int end);
/** Height of the field. */
double view_drawn_height(const struct View *view);

static const double view_field_width_mm = 176, view_heading_mm = 6, view_words_left_mm = FRAME_LEFT + 184;

#endif
