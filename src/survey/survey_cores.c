/* How cores are coloured and what each is for. */
#include "survey.h"

/* What each core is used for. Colours: BS 5467, BS 6004 and BS 7671 Table 51; which of them takes which part in a
 * single-phase run, and that a spare core is earthed at the supply end: common practice, no source. Only for the cables
 * and connections that leave no choice open. */

/* clang-format off */
#define C(colour, is, sleeve) {COLOUR_##colour, CORE_##is, COLOUR_##sleeve}
static const struct CoreUse core_uses[] = {
    /* cable, cores, lines, one protects; colour, use, sleeve */
    {COLOURED_ARMOURED, 2, 1, false, {C(BROWN, LINE, NONE), C(BLUE, NEUTRAL, NONE)}},
    {COLOURED_ARMOURED, 3, 1, true,
     {C(BROWN, LINE, NONE), C(GREY, NEUTRAL, BLUE), C(BLACK, EARTH, GREEN_AND_YELLOW)}},
    {COLOURED_ARMOURED, 3, 1, false,
     {C(BROWN, LINE, NONE), C(GREY, NEUTRAL, BLUE), C(BLACK, SPARE, GREEN_AND_YELLOW)}},
    {COLOURED_ARMOURED, 3, 3, false, {C(BROWN, L1, NONE), C(BLACK, L2, NONE), C(GREY, L3, NONE)}},
    {COLOURED_ARMOURED, 4, 3, true,
     {C(BROWN, L1, NONE), C(BLACK, L2, NONE), C(GREY, L3, NONE), C(BLUE, EARTH, GREEN_AND_YELLOW)}},
    {COLOURED_ARMOURED, 4, 3, false,
     {C(BROWN, L1, NONE), C(BLACK, L2, NONE), C(GREY, L3, NONE), C(BLUE, NEUTRAL, NONE)}},
    {COLOURED_ARMOURED, 5, 3, true,
     {C(BROWN, L1, NONE), C(BLACK, L2, NONE), C(GREY, L3, NONE), C(BLUE, NEUTRAL, NONE),
      C(GREEN_AND_YELLOW, EARTH, NONE)}},
    {COLOURED_ROUND, 3, 1, true, {C(BROWN, LINE, NONE), C(BLUE, NEUTRAL, NONE), C(GREEN_AND_YELLOW, EARTH, NONE)}},
    {COLOURED_ROUND, 4, 3, true,
     {C(BROWN, L1, NONE), C(BLACK, L2, NONE), C(GREY, L3, NONE), C(GREEN_AND_YELLOW, EARTH, NONE)}},
    {COLOURED_ROUND, 5, 3, true,
     {C(BROWN, L1, NONE), C(BLACK, L2, NONE), C(GREY, L3, NONE), C(BLUE, NEUTRAL, NONE),
      C(GREEN_AND_YELLOW, EARTH, NONE)}},
    {COLOURED_FLAT, 3, 1, true, {C(BROWN, LINE, NONE), C(BLUE, NEUTRAL, NONE), C(BARE, EARTH, GREEN_AND_YELLOW)}},
};
#undef C
/* clang-format on */

const struct CoreUse *survey_core_use(const struct Run *run, int lines)
{
    const struct Cable *cable = &run->cable;
    const bool protects = cable->cpc == CPC_CORE || cable->cpc == CPC_CORE_AND_ARMOUR;
    for (size_t i = 0; i < sizeof core_uses / sizeof core_uses[0]; i++) {
        const struct CoreUse *use = &core_uses[i];
        if (use->colours == survey_cable_colours(cable->type) && use->cores == cable->cores && use->lines == lines &&
            use->core_protects == protects) {
            return use;
        }
    }
    return NULL;
}
