/* What follows from the type of a cable alone. */
#include "survey.h"

static const struct {
    enum RunKind run;
    enum CableCover cover;
    enum CoreColours colours;
} kinds[] = {
#define CABLE_KIND(symbol, word, meaning, run, cover, colours, ...) {RUN_##run, COVER_##cover, COLOURED_##colours},
#include "cable_kinds.inc"
#undef CABLE_KIND
};

static bool known(enum CableType type)
{
    return (unsigned)type < CABLE_COUNT;
}

enum RunKind survey_cable_run(enum CableType type)
{
    return known(type) ? kinds[type].run : RUN_POWER;
}

enum CableCover survey_cable_cover(enum CableType type)
{
    return known(type) ? kinds[type].cover : COVER_PLAIN;
}

enum CoreColours survey_cable_colours(enum CableType type)
{
    return known(type) ? kinds[type].colours : COLOURED_ROUND;
}

bool survey_armoured(enum CableType type)
{
    return survey_cable_cover(type) == COVER_ARMOUR;
}
