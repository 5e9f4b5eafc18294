/* How cores are coloured and what each is for. */
#include "survey.h"

/* What each core is used for. Colours: BS 5467, BS 6004 and BS 7671 Table 51; which of them takes which part in a
 * single-phase run, and that a spare core is earthed at the supply end: common practice, no source. Only for the cables
 * and connections that leave no choice open. */

static const struct CoreUse core_uses[] = {
    {COLOURED_ARMOURED,
     2,
     1,
     false,
     2,
     {{COLOUR_BROWN, CORE_LINE, COLOUR_NONE}, {COLOUR_BLUE, CORE_NEUTRAL, COLOUR_NONE}}},
    {COLOURED_ARMOURED,
     3,
     1,
     true,
     3,
     {{COLOUR_BROWN, CORE_LINE, COLOUR_NONE},
      {COLOUR_GREY, CORE_NEUTRAL, COLOUR_BLUE},
      {COLOUR_BLACK, CORE_EARTH, COLOUR_GREEN_AND_YELLOW}}},
    {COLOURED_ARMOURED,
     3,
     1,
     false,
     3,
     {{COLOUR_BROWN, CORE_LINE, COLOUR_NONE},
      {COLOUR_GREY, CORE_NEUTRAL, COLOUR_BLUE},
      {COLOUR_BLACK, CORE_SPARE, COLOUR_GREEN_AND_YELLOW}}},
    {COLOURED_ARMOURED,
     3,
     3,
     false,
     3,
     {{COLOUR_BROWN, CORE_L1, COLOUR_NONE}, {COLOUR_BLACK, CORE_L2, COLOUR_NONE}, {COLOUR_GREY, CORE_L3, COLOUR_NONE}}},
    {COLOURED_ARMOURED,
     4,
     3,
     true,
     4,
     {{COLOUR_BROWN, CORE_L1, COLOUR_NONE},
      {COLOUR_BLACK, CORE_L2, COLOUR_NONE},
      {COLOUR_GREY, CORE_L3, COLOUR_NONE},
      {COLOUR_BLUE, CORE_EARTH, COLOUR_GREEN_AND_YELLOW}}},
    {COLOURED_ARMOURED,
     4,
     3,
     false,
     4,
     {{COLOUR_BROWN, CORE_L1, COLOUR_NONE},
      {COLOUR_BLACK, CORE_L2, COLOUR_NONE},
      {COLOUR_GREY, CORE_L3, COLOUR_NONE},
      {COLOUR_BLUE, CORE_NEUTRAL, COLOUR_NONE}}},
    {COLOURED_ARMOURED,
     5,
     3,
     true,
     5,
     {{COLOUR_BROWN, CORE_L1, COLOUR_NONE},
      {COLOUR_BLACK, CORE_L2, COLOUR_NONE},
      {COLOUR_GREY, CORE_L3, COLOUR_NONE},
      {COLOUR_BLUE, CORE_NEUTRAL, COLOUR_NONE},
      {COLOUR_GREEN_AND_YELLOW, CORE_EARTH, COLOUR_NONE}}},
    {COLOURED_ROUND,
     3,
     1,
     true,
     3,
     {{COLOUR_BROWN, CORE_LINE, COLOUR_NONE},
      {COLOUR_BLUE, CORE_NEUTRAL, COLOUR_NONE},
      {COLOUR_GREEN_AND_YELLOW, CORE_EARTH, COLOUR_NONE}}},
    {COLOURED_ROUND,
     4,
     3,
     true,
     4,
     {{COLOUR_BROWN, CORE_L1, COLOUR_NONE},
      {COLOUR_BLACK, CORE_L2, COLOUR_NONE},
      {COLOUR_GREY, CORE_L3, COLOUR_NONE},
      {COLOUR_GREEN_AND_YELLOW, CORE_EARTH, COLOUR_NONE}}},
    {COLOURED_ROUND,
     5,
     3,
     true,
     5,
     {{COLOUR_BROWN, CORE_L1, COLOUR_NONE},
      {COLOUR_BLACK, CORE_L2, COLOUR_NONE},
      {COLOUR_GREY, CORE_L3, COLOUR_NONE},
      {COLOUR_BLUE, CORE_NEUTRAL, COLOUR_NONE},
      {COLOUR_GREEN_AND_YELLOW, CORE_EARTH, COLOUR_NONE}}},
    {COLOURED_FLAT,
     3,
     1,
     true,
     3,
     {{COLOUR_BROWN, CORE_LINE, COLOUR_NONE},
      {COLOUR_BLUE, CORE_NEUTRAL, COLOUR_NONE},
      {COLOUR_BARE, CORE_EARTH, COLOUR_GREEN_AND_YELLOW}}},
};

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
