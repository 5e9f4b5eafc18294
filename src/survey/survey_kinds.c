/* The fixed words of the route language, and what follows from the way of a cable alone and from its type alone. */
#include "survey.h"

struct Word {
    const char *word;
    const char *meaning;
};
/* clang-format off */
#define LIST(of, type) static const struct Word of##_words[] = {
#define KIND(symbol, word, meaning) {word, meaning},
#define END(of) };
#include "survey_kinds.inc"

static const struct {
    const struct Word *words;
    int count;
} lists[WORDS_COUNT] = {
#define LIST(of, type) {of##_words, of##_COUNT},
#include "survey_kinds.inc"
};
/* clang-format on */

int survey_word_count(enum WordList list)
{
    return lists[list].count;
}

const char *survey_word(enum WordList list, int value)
{
    return value >= 0 && value < lists[list].count ? lists[list].words[value].word : "";
}

const char *survey_meaning(enum WordList list, int value)
{
    return value >= 0 && value < lists[list].count ? lists[list].words[value].meaning : "";
}

static const struct WayKind ways[] = {
#define WAY_KIND(symbol, word, meaning, place, round, held, on_timber, of_building, calls, ...)                        \
    {WAY_IN_##place, ROUND_##round, HELD_##held, on_timber, of_building, CALLS_##calls},
#include "way_kinds.inc"
#undef WAY_KIND
};

const struct WayKind *survey_way(enum Way way)
{
    return &ways[(unsigned)way < WAY_COUNT ? way : WAY_WALL];
}

bool survey_in_ground(enum Way way)
{
    return survey_way(way)->place == WAY_IN_GROUND;
}

bool survey_hole(enum Way way)
{
    return survey_way(way)->round == ROUND_WALL;
}

bool survey_enclosed(enum Way way)
{
    return survey_way(way)->round == ROUND_PIPE || survey_way(way)->round == ROUND_TRUNKING;
}

bool survey_duct(enum Way way)
{
    return survey_way(way)->round == ROUND_DUCT;
}

bool survey_shut_in(enum Way way)
{
    return survey_enclosed(way) || survey_duct(way);
}

bool survey_outside(const struct Segment *segment)
{
    return segment->shelter == SHELTER_COUNT ? survey_way(segment->way)->place == WAY_IN_OPEN
                                             : segment->shelter == SHELTER_OUTSIDE;
}

bool survey_dug(const struct Segment *segment)
{
    return survey_in_ground(segment->way) && !(survey_duct(segment->way) && segment->duct_laid == LAID_EXISTING);
}

bool survey_drawn(const struct Segment *segment)
{
    return survey_duct(segment->way) || survey_way(segment->way)->round == ROUND_PIPE || segment->drawn;
}

bool survey_to_measure(const struct Segment *segment)
{
    return segment->measure_again || segment->measured == MEASURED_PACED || segment->measured == MEASURED_GUESSED;
}

bool survey_bedded(const struct Segment *segment)
{
    return segment->bedding_given ? segment->bedding : survey_in_ground(segment->way) && !survey_duct(segment->way);
}

static const struct {
    enum RunKind run;
    enum CableCover cover;
    enum CoreColours colours;
} cables[CABLE_COUNT + 1] = {
#define CABLE_KIND(symbol, word, meaning, run, cover, colours, ...)                                                    \
    [symbol] = {RUN_##run, COVER_##cover, COLOURED_##colours},
#include "cable_kinds.inc"
#undef CABLE_KIND
    [CABLE_COUNT] = {RUN_POWER, COVER_PLAIN, COLOURED_ROUND},
};

/* The last row is of no type that there is. */
static unsigned row_of(enum CableType type)
{
    return (unsigned)type < CABLE_COUNT ? type : CABLE_COUNT;
}

enum RunKind survey_cable_run(enum CableType type)
{
    return cables[row_of(type)].run;
}

enum CableCover survey_cable_cover(enum CableType type)
{
    return cables[row_of(type)].cover;
}

enum CoreColours survey_cable_colours(enum CableType type)
{
    return cables[row_of(type)].colours;
}

bool survey_armoured(enum CableType type)
{
    return survey_cable_cover(type) == COVER_ARMOUR;
}
