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
        const struct Say *note = noted && !noun ? say_alone(arena, say_name(landmark->note)) : NULL;
        const struct Say *brief = noun ? named : place;
        cell_put_fitting(cell, sign, note == NULL ? named : say(arena, SAY_COLON, say_part(named), say_part(note)),
                         note == NULL ? brief : say(arena, SAY_COLON, say_part(brief), say_part(note)), false);
    }
}
