/** The profile while it is drawn: shared by what draws the way (profile.c) and what stands on it (profile_marks.c). */
#ifndef WEND_PROFILE_PRIVATE_H
#define WEND_PROFILE_PRIVATE_H

#include "layout_private.h"

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

/** Where a height lies on the sheet. */
double profile_level(const struct Profile *profile, double height_m);
/** The middle of a stretch along the sheet. */
double profile_middle(const struct Stretch *stretch);
/** Nothing else is put here. */
void profile_take(struct Profile *profile, struct DrawBox box);
/** The squares of the ends. */
void profile_ends(struct Profile *profile);
/** Numbers of stretches, heights of risers, landmarks. */
void profile_marks(struct Profile *profile);

#endif
