/* In which order one asks on site: the supply with the meter in hand, the load, then as one walks, the far end, and who
 * it is for in the van. First what costs most when it is guessed wrong and can be seen standing there. What is in no
 * row is asked by nobody: its default is printed with the plan. The order is common practice, no source. */
#include "field_values_private.h"

#define AT_RUN      TABLE_RUN, "runs.NAME"
#define AT_LOAD     TABLE_LOAD, "runs.NAME.load"
#define AT_DEVICE   TABLE_DEVICE, "runs.NAME.device"
#define AT_CABLE    TABLE_CABLE, "runs.NAME.cable"
#define AT_START    TABLE_END, "runs.NAME.start"
#define AT_FINISH   TABLE_END, "runs.NAME.finish"
#define AT_SEGMENT  TABLE_SEGMENT, "segments[]"
#define AT_DUCT     TABLE_DUCT, "segments[].duct"
#define W(way)      (1U << (WAY_##way))
#define EVERYWHERE  0
#define IN_AIR_SEEN (W(WALL) | W(BEAM) | W(LOFT_VOID) | W(UNDER_FLOOR) | W(STUD_WALL) | W(CEILING))

/* clang-format off */
static const struct Asked rows[] = {
    {CARD_SUPPLY, TABLE_SUPPLY, "supply", "system", "system", "Which earthing system is it?", EVERYWHERE, NULL},
    {CARD_SUPPLY, TABLE_SUPPLY, "supply", "phases", "phases", "One line or three?", EVERYWHERE, NULL},
    {CARD_SUPPLY, TABLE_SUPPLY, "supply", "loop-impedance", "Ze", "Earth fault loop, read here (Ze)?", EVERYWHERE, NULL},
    {CARD_SUPPLY, TABLE_SUPPLY, "supply", "electrode-resistance", "RA", "TT: what does its electrode read?", EVERYWHERE,
     "system=TT"},
    {CARD_SUPPLY, TABLE_SUPPLY, "supply", "fault-current", "fault current", "Fault current, read here?", EVERYWHERE,
     NULL},
    {CARD_SUPPLY, AT_START, "from", "fed from", "What feeds it?", EVERYWHERE, NULL},
    {CARD_SUPPLY, AT_START, "enclosure", "enclosure here", "What is the box here made of?", EVERYWHERE, NULL},
    {CARD_SUPPLY, AT_START, "tail", "tail here", "How much cable inside it?", EVERYWHERE, NULL},

    {CARD_LOAD, AT_LOAD, "power", "load", "What does it draw?", EVERYWHERE, NULL},
    {CARD_LOAD, AT_LOAD, "current", "or current", "Or in amperes?", EVERYWHERE, "power=-"},
    {CARD_LOAD, AT_LOAD, "power-factor", "power factor", "Its power factor, if you know?", EVERYWHERE, NULL},
    {CARD_LOAD, AT_RUN, "use", "use", "What is it used for?", EVERYWHERE, NULL},
    {CARD_LOAD, AT_RUN, "start-current", "starting current", "Motor: what does it draw starting?", EVERYWHERE,
     "use=motor"},
    {CARD_LOAD, AT_RUN, "feeds", "feeds", "What kind of circuit is it?", EVERYWHERE, NULL},
    {CARD_LOAD, AT_DEVICE, "kind", "device", "Which device will protect it?", EVERYWHERE, NULL},
    {CARD_LOAD, AT_DEVICE, "residual", "residual current", "RCBO: its residual current?", EVERYWHERE, "kind=RCBO"},
    {CARD_LOAD, AT_DEVICE, "residual-type", "residual type", "RCBO: which type?", EVERYWHERE, "kind=RCBO"},
    {CARD_LOAD, AT_DEVICE, "breaking-capacity", "breaking capacity", "What fault current does it break?", EVERYWHERE,
     NULL},
    {CARD_LOAD, AT_CABLE, "type", "cable", "Which cable?", EVERYWHERE, NULL},
    {CARD_LOAD, AT_CABLE, "cores", "cores", "How many cores?", EVERYWHERE, NULL},

    {CARD_SEGMENT, AT_SEGMENT, "way", "way", "How does the cable run here?", EVERYWHERE, NULL},
    {CARD_SEGMENT, AT_SEGMENT, "name", "name", "What do you call this piece?", EVERYWHERE, NULL},
    {CARD_SEGMENT, AT_SEGMENT, "length", "length", "How long is it?", EVERYWHERE, NULL},
    {CARD_SEGMENT, AT_SEGMENT, "rise", "rise", "How far up, or down with a minus?", EVERYWHERE, NULL},
    {CARD_SEGMENT, AT_SEGMENT, "thickness", "thickness", "How thick is the wall?", W(THROUGH_WALL), NULL},
    {CARD_SEGMENT, AT_SEGMENT, "wall", "wall", "What is the wall made of?", W(THROUGH_WALL), NULL},
    {CARD_SEGMENT, AT_SEGMENT, "bends", "bends", "How many right angles?",
     ~(W(THROUGH_WALL) | W(BURIED) | W(CATENARY)), NULL},
    {CARD_SEGMENT, AT_DUCT, "size", "duct", "Which size of duct?", W(DUCT), NULL},
    {CARD_SEGMENT, AT_DUCT, "laid", "duct is", "Is it there already?", W(DUCT), NULL},
    {CARD_SEGMENT, AT_DUCT, "rope", "rope", "Is there a draw rope in it?", W(DUCT), "laid=existing"},
    {CARD_SEGMENT, AT_SEGMENT, "size", "size", "Which size is it?", W(CONDUIT) | W(TRUNKING) | W(TRAY) | W(LADDER), NULL},
    {CARD_SEGMENT, AT_SEGMENT, "material", "material", "Steel or plastic?", W(CONDUIT), NULL},
    {CARD_SEGMENT, AT_SEGMENT, "depth", "depth", "How deep will it lie?", W(DUCT) | W(BURIED), NULL},
    {CARD_SEGMENT, AT_SEGMENT, "under", "under", "What lies above it?", W(DUCT) | W(BURIED), NULL},
    {CARD_SEGMENT, AT_SEGMENT, "fixed-to", "fixed to", "What is it fixed to?", W(WALL) | W(CONDUIT) | W(TRUNKING), NULL},
    {CARD_SEGMENT, AT_SEGMENT, "insulation", "insulation", "Does insulation touch it?", IN_AIR_SEEN, NULL},
    {CARD_SEGMENT, AT_SEGMENT, "insulated-length", "insulated", "How much of it is in insulation?", IN_AIR_SEEN,
     "insulation=one-side,surrounded"},
    {CARD_SEGMENT, AT_SEGMENT, "air", "air", "How hot does the air get?", W(LOFT_VOID), NULL},
    {CARD_SEGMENT, AT_SEGMENT, "sun", "sun", "Does the sun shine on it?", W(FENCE) | W(CATENARY), NULL},
    {CARD_SEGMENT, AT_SEGMENT, "hidden", "hidden", "How deep in the wall is it?", W(STUD_WALL), NULL},
    {CARD_SEGMENT, AT_SEGMENT, "notes", "note", "A note for the crew?", EVERYWHERE, NULL},

    {CARD_FAR_END, AT_FINISH, "place", "place", "Where does it end?", EVERYWHERE, NULL},
    {CARD_FAR_END, AT_FINISH, "enclosure", "enclosure there", "What is the box there made of?", EVERYWHERE, NULL},
    {CARD_FAR_END, AT_FINISH, "tail", "tail there", "How much cable inside it?", EVERYWHERE, NULL},
    {CARD_FAR_END, TABLE_EARTHING, "earthing", "far-end", "earth there", "What becomes of the supply's earth?",
     EVERYWHERE, NULL},
    {CARD_FAR_END, TABLE_ELECTRODE, "earthing.electrode", "rods", "rods", "How many rods?", EVERYWHERE,
     "far-end=island"},
    {CARD_FAR_END, TABLE_ELECTRODE, "earthing.electrode", "length", "rod length", "How long is a rod?", EVERYWHERE,
     "far-end=island"},
    {CARD_FAR_END, TABLE_ELECTRODE, "earthing.electrode", "diameter", "rod diameter", "How thick is a rod?", EVERYWHERE,
     "far-end=island"},
    {CARD_FAR_END, TABLE_EARTHING, "earthing", "extraneous-parts", "metal coming in", "Does metal come into the building?",
     EVERYWHERE, NULL},
    {CARD_FAR_END, TABLE_EARTHING, "earthing", "existing", "supply there", "Has it a supply already?", EVERYWHERE, NULL},
    {CARD_FAR_END, TABLE_EARTHING, "earthing", "board-residual", "residual there", "Residual device at its board?",
     EVERYWHERE, "far-end=island"},

    {CARD_JOB, TABLE_JOB, "job", "title", "title", "What is the job?", EVERYWHERE, NULL},
    {CARD_JOB, TABLE_JOB, "job", "customer", "customer", "For whom?", EVERYWHERE, NULL},
    {CARD_JOB, TABLE_JOB, "job", "site", "site", "Where is it?", EVERYWHERE, NULL},
    {CARD_JOB, TABLE_JOB, "job", "location", "kind of place", "What kind of place is fed?", EVERYWHERE, NULL},
    {CARD_JOB, TABLE_JOB, "job", "surveyor", "surveyor", "Who measured?", EVERYWHERE, NULL},
    {CARD_JOB, TABLE_JOB, "job", "surveyed", "surveyed", "On which day (2026-05-14)?", EVERYWHERE, NULL},
};
/* clang-format on */
enum { ROWS = (int)(sizeof rows / sizeof rows[0]) };

const char *asked_card(enum AskedCard card)
{
    static const char *const cards[CARD_COUNT] = {[CARD_SUPPLY] = "supply",
                                                  [CARD_LOAD] = "load",
                                                  [CARD_SEGMENT] = "segment",
                                                  [CARD_FAR_END] = "far end",
                                                  [CARD_JOB] = "job"};
    return (unsigned)card < CARD_COUNT ? cards[card] : "";
}

const struct Asked *asked_at(int index)
{
    return index >= 0 && index < ROWS ? &rows[index] : NULL;
}

const struct Field *asked_field(const struct Asked *asked, unsigned context)
{
    const struct FieldTable *table = survey_fields(asked->table);
    for (int i = 0; i < table->count; i++) {
        const struct Field *field = &table->fields[i];
        if (text_same(field->key, asked->key) && field_applies(field, context)) {
            return field;
        }
    }
    return NULL;
}
