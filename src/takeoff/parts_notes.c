/* What the list does not count and why: each once, with the places that it holds for. */
#include "parts_private.h"

static const struct {
    enum Saying id;
    bool named; /* with the runs and places */
} sayings[UNCOUNTED_COUNT] = {
    [UNCOUNTED_SURFACE] = {SAY_UNCOUNTED_SURFACE, true},
    [UNCOUNTED_END_SURFACE] = {SAY_UNCOUNTED_END_SURFACE, true},
    [UNCOUNTED_SPACING] = {SAY_UNCOUNTED_SPACING, true},
    [UNCOUNTED_HIDDEN] = {SAY_UNCOUNTED_HIDDEN, true},
    [UNCOUNTED_HELD_SIZE] = {SAY_UNCOUNTED_HELD_SIZE, true},
    [UNCOUNTED_THERE_ALREADY] = {SAY_UNCOUNTED_THERE_ALREADY, true},
    [UNCOUNTED_HOLE] = {SAY_UNCOUNTED_HOLE, true},
    [UNCOUNTED_LYING] = {SAY_UNCOUNTED_LYING, true},
    [UNCOUNTED_ELECTRODE] = {SAY_UNCOUNTED_ELECTRODE, false},
    [UNCOUNTED_WIRE] = {SAY_UNCOUNTED_WIRE, true},
    [UNCOUNTED_FAR_EARTH] = {SAY_UNCOUNTED_FAR_EARTH, true},
    [UNCOUNTED_SLEEVING] = {SAY_UNCOUNTED_SLEEVING, true},
    [UNCOUNTED_ACCESSORY] = {SAY_UNCOUNTED_ACCESSORY, true},
    [UNCOUNTED_FUSE_HOLDER] = {SAY_UNCOUNTED_FUSE_HOLDER, true},
    [UNCOUNTED_OTHER_ENDS] = {SAY_UNCOUNTED_OTHER_ENDS, true},
    [UNCOUNTED_LUGS] = {SAY_UNCOUNTED_LUGS, false},
    [UNCOUNTED_TAILS] = {SAY_UNCOUNTED_TAILS, true},
    [UNCOUNTED_BOARD] = {SAY_UNCOUNTED_BOARD, false},
};

void parts_not_counted(struct Counting *counting, enum Uncounted what, struct PartUse use)
{
    parts_use_add(counting->arena, &counting->uncounted[what], use);
}

void parts_notes(struct Counting *counting, struct PartsList *list)
{
    struct Arena *arena = counting->arena;
    const struct Say **notes =
        arena_array(arena, UNCOUNTED_COUNT, sizeof *notes); /* NOLINT(bugprone-sizeof-expression): of pointers */
    for (int i = 0; notes != NULL && i < UNCOUNTED_COUNT; i++) {
        const struct PartUse *uses = NULL;
        const int count = parts_uses(counting, &counting->uncounted[i], &uses);
        if (count > 0) {
            notes[list->note_count++] = sayings[i].named
                                            ? say(arena, sayings[i].id, say_part(parts_uses_said(arena, count, uses)))
                                            : say(arena, sayings[i].id);
        }
    }
    list->notes = notes;
}
