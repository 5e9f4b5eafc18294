/* Kinds of cable with what the tables hold of each. The rows are in survey/cable_kinds.inc. */
#include "cable_kinds.h"

static const struct CableKind kinds[] = {
/* every column by name: a row that lacks one does not compile */
#define CABLE_KIND(symbol, word, meaning, run, cover, colours, degc, family_, c70, c90, e70, e90, drop_, figures_,     \
                   bend_, sheath_, standard_)                                                                          \
    {.family = FAMILY_##family_,                                                                                       \
     .insulation_degc = (degc),                                                                                        \
     .at_70 = CAPACITY_##c70,                                                                                          \
     .at_90 = CAPACITY_##c90,                                                                                          \
     .enclosed_at_70 = CAPACITY_##e70,                                                                                 \
     .enclosed_at_90 = CAPACITY_##e90,                                                                                 \
     .drop = DROP_##drop_,                                                                                             \
     .figures = FIGURES_##figures_,                                                                                    \
     .bend = BEND_##bend_,                                                                                             \
     .sheath = PULL_SHEATH_##sheath_,                                                                                  \
     .standard = (standard_)},
#include "survey/cable_kinds.inc"
#undef CABLE_KIND
};

const struct CableKind *cable_kind(enum CableType type)
{
    static const struct CableKind none = {.family = FAMILY_NONE,
                                          .insulation_degc = 70,
                                          .at_70 = CAPACITY_NONE,
                                          .at_90 = CAPACITY_NONE,
                                          .enclosed_at_70 = CAPACITY_NONE,
                                          .enclosed_at_90 = CAPACITY_NONE,
                                          .drop = DROP_NONE,
                                          .sheath = PULL_SHEATH_UNKNOWN,
                                          .standard = ""};
    return (unsigned)type < CABLE_COUNT ? &kinds[type] : &none;
}

enum CapacityTable cable_capacity(const struct CableKind *kind, double conductor_degc)
{
    return conductor_degc > 70 ? kind->at_90 : kind->at_70;
}

enum CapacityTable cable_capacity_enclosed(const struct CableKind *kind, double conductor_degc)
{
    return conductor_degc > 70 ? kind->enclosed_at_90 : kind->enclosed_at_70;
}
