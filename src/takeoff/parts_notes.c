/* What the list does not count and why: each once, with the places that it holds for. */
#include "parts_private.h"

static const struct {
    const char *text;
    bool named; /* the runs and places follow after a colon */
} texts[UNCOUNTED_COUNT] = {
    [UNCOUNTED_SURFACE] = {"Screws and plugs are not counted where the survey does not say what the fixings go into",
                           true},
    [UNCOUNTED_END_SURFACE] =
        {"The screw and plug of the fixing by the termination are not counted: the survey does not say "
         "what it goes into",
         true},
    [UNCOUNTED_SPACING] = {"Fixings are not counted for a cable of a diameter that no table gives a spacing for", true},
    [UNCOUNTED_HIDDEN] =
        {"In floor voids, stud walls and above ceilings no fixings are counted: the building is taken to hold "
         "the cable; where it would fall with a ceiling it needs metal ones",
         true},
    [UNCOUNTED_HELD_SIZE] =
        {"Fixings of conduit and trunking are not counted where the size was not surveyed or no table has "
         "it",
         true},
    [UNCOUNTED_THERE_ALREADY] = {"Conduit, trunking, tray, ladder and catenary that are surveyed as existing, or that "
                                 "hold other circuits and are not "
                                 "surveyed as new (laid: new), are taken as there already and not counted",
                                 true},
    [UNCOUNTED_HOLE] =
        {"The hole is not worked out, nor its sleeve and its sealant: the cable's diameter is not known, "
         "or no usual drill "
         "or sleeve is large enough",
         true},
    [UNCOUNTED_LYING] = {"The depth of the trench, its sand and its spoil leave out a duct or cable whose size is not "
                         "known; dig deeper "
                         "by that much",
                         true},
    [UNCOUNTED_ELECTRODE] = {"The outbuilding's earth electrode is not counted: only its resistance was surveyed",
                             false},
    [UNCOUNTED_WIRE] =
        {"ASK which wire carries the cable before its grips are bought (wire: rope or strand, wire-size): "
         "grips hold on wire rope of several strands only, and their number goes by its diameter",
         true},
    [UNCOUNTED_FAR_EARTH] =
        {"ASK FIRST before this gland is bought: the survey does not say how the far end is earthed. A brass gland is "
         "counted, as for the supply's earth going out with the cable; an outbuilding with an electrode of its own "
         "takes a plastic gland on the sheath instead. Until it is settled the armour stays unconnected there",
         true},
    [UNCOUNTED_SLEEVING] = {"Sleeving is not counted where the cable leaves open which core does what", true},
    [UNCOUNTED_ACCESSORY] = {"The accessories that a run ends in are not counted: the survey does not name them", true},
    [UNCOUNTED_FUSE_HOLDER] = {"The holder or carrier that a fuse goes into is not counted: it is that of the board or "
                               "switch-fuse at the supply end",
                               true},
    [UNCOUNTED_OTHER_ENDS] = {"What data and earth cables end in is not counted, nor the lugs of an earth cable: the "
                              "survey does not name it",
                              true},
    [UNCOUNTED_LUGS] = {"Lugs, ferrules and repairs to the old board are not counted", false},
    [UNCOUNTED_TAILS] = {"Meter tails are not counted: the survey does not say how long they are (start: tails)", true},
    [UNCOUNTED_BOARD] =
        {"The board or enclosure at the supply end, spare ways in it, lugs and ferrules are not counted", false},
};

void parts_not_counted(struct Counting *counting, enum Uncounted what, const char *run, const char *place)
{
    parts_use_add(counting->arena, &counting->uncounted[what], run, place);
}

void parts_notes(struct Counting *counting, struct PartsList *list)
{
    const char **notes = arena_array(counting->arena, UNCOUNTED_COUNT, sizeof *notes);
    if (notes == NULL) {
        return;
    }
    for (int i = 0; i < UNCOUNTED_COUNT; i++) {
        const struct PartUse *first = counting->uncounted[i].first;
        if (first == NULL) {
            continue;
        }
        notes[list->note_count++] = texts[i].named ? arena_print(counting->arena, "%s: %s.", texts[i].text,
                                                                 parts_use_text(counting->arena, first))
                                                   : arena_print(counting->arena, "%s.", texts[i].text);
    }
    list->notes = notes;
}
