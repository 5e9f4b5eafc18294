/* Duct to be laid: each stretch once, however many cables go through it. */
#include "parts_private.h"

#include <math.h>

void parts_count_ducts(struct Counting *counting)
{
    struct Arena *arena = counting->arena;
    for (int i = 0; i < counting->plan->segment_count; i++) {
        const struct Segment *segment = counting->plan->segments[i].surveyed;
        if (segment->way != WAY_DUCT || segment->duct_laid != LAID_NEW) {
            continue;
        }
        const bool sized = segment->duct_size_mm.given;
        const char *size = number_significant(arena, segment->duct_size_mm.value, 4);
        const struct Part article = {
            .aisle = AISLE_GROUNDWORK,
            .code = sized ? arena_print(arena, "duct-%s", size) : "duct",
            .description = sized ? arena_print(arena, "Cable duct %s mm, black, for buried electricity cables", size)
                                 : "Cable duct, black, for buried electricity cables",
            .standard = "BS EN 61386-24",
            .unit = "m",
            .note = sized ? "length as laid; couplers and cutting waste not in it" : "size not surveyed",
        };
        parts_add(counting, &article, ceil(segment->length_m.value - 1e-9), segment->name);
    }
}
