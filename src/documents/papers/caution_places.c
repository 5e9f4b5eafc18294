/* The places of a caution in words. */
#include "documents/shown_private.h"

enum { NAMED = 4 };

const char *caution_places(struct Arena *arena, const struct Plan *plan, const struct Caution *caution)
{
    if (caution->stretch_count == 0) {
        return caution->where;
    }
    struct TextBuilder text = text_builder(arena);
    for (int i = 0; i < caution->stretch_count && i < NAMED; i++) {
        text_print(&text, "%s%s", i > 0 ? ", " : "", plan->segments[caution->stretches[i]].surveyed->name);
    }
    if (caution->stretch_count > NAMED) {
        text_print(&text, " and %d more", caution->stretch_count - NAMED);
    }
    return text_done(&text);
}
