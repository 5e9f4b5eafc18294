/* What follows from the way of a cable alone. */
#include "survey.h"

static const struct WayKind kinds[] = {
#define WAY_KIND(symbol, word, meaning, place, round, held, on_timber, of_building)                                    \
    {WAY_IN_##place, ROUND_##round, HELD_##held, on_timber, of_building},
#include "way_kinds.inc"
#undef WAY_KIND
};

const struct WayKind *survey_way(enum Way way)
{
    return &kinds[(unsigned)way < WAY_COUNT ? way : WAY_WALL];
}

bool survey_in_ground(enum Way way)
{
    return survey_way(way)->place == WAY_IN_GROUND;
}

bool survey_enclosed(enum Way way)
{
    return survey_way(way)->round == ROUND_PIPE;
}

bool survey_dug(const struct Segment *segment)
{
    return survey_in_ground(segment->way) &&
           (survey_way(segment->way)->round != ROUND_DUCT || segment->duct_laid != LAID_EXISTING);
}

bool survey_drawn(const struct Segment *segment)
{
    return segment->way == WAY_DUCT || segment->way == WAY_CONDUIT || segment->drawn;
}

bool survey_bedded(const struct Segment *segment)
{
    return segment->bedding_given ? segment->bedding : segment->way == WAY_BURIED;
}
