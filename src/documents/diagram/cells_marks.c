/* What stands on or beside a segment: its sign, and where it is as one comes from the supply end. */
#include "documents/shown_private.h"
#include "layout_private.h"

void cells_marks(struct Cell *cell, int segment)
{
    struct Arena *arena = cell->layout->arena;
    const struct Segment *surveyed = cell->layout->stretches[segment].segment->surveyed;
    for (int i = 0; i < surveyed->landmark_count; i++) {
        const struct Landmark *landmark = &surveyed->landmarks[i];
        const enum Sign sign = landmark_sign(landmark->what);
        const struct Say *place = landmark_place_said(arena, landmark);
        const bool noted = landmark->note != NULL && *landmark->note != '\0';
        const bool noun = noted && landmark->what == LANDMARK_OTHER; /* the note says what it is */
        const struct Say *named =
            say(arena, SAY_SPACE, noun ? say_name(landmark->note) : say_term(sign_word(sign)), say_part(place));
        cell_put_fitting(cell, sign, named, noun ? named : place, false);
        if (noted && !noun) {
            cell_put(cell, say_alone(arena, say_name(landmark->note)), false);
        }
    }
}
