/* The places of a caution in words. */
#include "documents/shown_private.h"

enum { NAMED = 4 };

const char *caution_places(struct Arena *arena, const struct Plan *plan, const struct Caution *caution)
{
    if (caution->stretch_count == 0) {
        return caution->where;
    }
    const struct Say *places = NULL;
    for (int i = 0; i < caution->stretch_count && i < NAMED; i++) {
        places = say_list(arena, SAY_COMMA, places, say_name(plan->segments[caution->stretches[i]].surveyed->name));
    }
    if (caution->stretch_count > NAMED) {
        places = say(arena, SAY_AND_MORE, say_part(places), say_count(caution->stretch_count - NAMED));
    }
    return shown_said(arena, places);
}
