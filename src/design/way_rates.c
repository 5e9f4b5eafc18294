/* Which ways a kind of cable can be rated in, before anything of them is surveyed. */
#include "design.h"
#include "design/terms/design_private.h"

bool design_way_rates(enum Way way, enum CableType type)
{
    const struct CableKind *kind = cable_kind(type);
    const struct Segment segment = {.way = way, .insulation = INSULATION_NONE, .wall = WALL_COUNT};
    const struct Extent extent = {.pipe_m = 1}; /* no short guard, which is rated as if it were not there */
    return kind->family != FAMILY_NONE &&
           (survey_hole(way) || place_segment(edition_held(), &segment, kind, kind->insulation_degc, &extent).covered);
}
