/* How cores are coloured and what each is for. */
#include "survey.h"

/* What each core is used for. Colours: BS 5467, BS 6004 and BS 7671 Table 51; which of them takes which part in a
 * single-phase run, and that a spare core is earthed at the supply end: common practice, no source. Only for the cables
 * and connections that leave no choice open. */

static const struct CoreUse core_uses[] = {
    {COLOURED_ARMOURED, 2, 1, false, 2, {{"brown", "line", "none", CORE_LIVE}, {"blue", "neutral", "none", CORE_LIVE}}},
    {COLOURED_ARMOURED,
     3,
     1,
     true,
     3,
     {{"brown", "line", "none", CORE_LIVE},
      {"grey", "neutral", "blue", CORE_LIVE},
      {"black", "earth", "green-and-yellow", CORE_EARTH}}},
    {COLOURED_ARMOURED,
     3,
     1,
     false,
     3,
     {{"brown", "line", "none", CORE_LIVE},
      {"grey", "neutral", "blue", CORE_LIVE},
      {"black", "spare", "green-and-yellow", CORE_SPARE}}},
    {COLOURED_ARMOURED,
     3,
     3,
     false,
     3,
     {{"brown", "L1", "none", CORE_LIVE}, {"black", "L2", "none", CORE_LIVE}, {"grey", "L3", "none", CORE_LIVE}}},
    {COLOURED_ARMOURED,
     4,
     3,
     true,
     4,
     {{"brown", "L1", "none", CORE_LIVE},
      {"black", "L2", "none", CORE_LIVE},
      {"grey", "L3", "none", CORE_LIVE},
      {"blue", "earth", "green-and-yellow", CORE_EARTH}}},
    {COLOURED_ARMOURED,
     4,
     3,
     false,
     4,
     {{"brown", "L1", "none", CORE_LIVE},
      {"black", "L2", "none", CORE_LIVE},
      {"grey", "L3", "none", CORE_LIVE},
      {"blue", "neutral", "none", CORE_LIVE}}},
    {COLOURED_ARMOURED,
     5,
     3,
     true,
     5,
     {{"brown", "L1", "none", CORE_LIVE},
      {"black", "L2", "none", CORE_LIVE},
      {"grey", "L3", "none", CORE_LIVE},
      {"blue", "neutral", "none", CORE_LIVE},
      {"green-and-yellow", "earth", "none", CORE_EARTH}}},
    {COLOURED_ROUND,
     3,
     1,
     true,
     3,
     {{"brown", "line", "none", CORE_LIVE},
      {"blue", "neutral", "none", CORE_LIVE},
      {"green-and-yellow", "earth", "none", CORE_EARTH}}},
    {COLOURED_ROUND,
     4,
     3,
     true,
     4,
     {{"brown", "L1", "none", CORE_LIVE},
      {"black", "L2", "none", CORE_LIVE},
      {"grey", "L3", "none", CORE_LIVE},
      {"green-and-yellow", "earth", "none", CORE_EARTH}}},
    {COLOURED_ROUND,
     5,
     3,
     true,
     5,
     {{"brown", "L1", "none", CORE_LIVE},
      {"black", "L2", "none", CORE_LIVE},
      {"grey", "L3", "none", CORE_LIVE},
      {"blue", "neutral", "none", CORE_LIVE},
      {"green-and-yellow", "earth", "none", CORE_EARTH}}},
    {COLOURED_FLAT,
     3,
     1,
     true,
     3,
     {{"brown", "line", "none", CORE_LIVE},
      {"blue", "neutral", "none", CORE_LIVE},
      {"bare", "earth", "green-and-yellow", CORE_EARTH}}},
};

const struct CoreUse *survey_core_use(const struct Run *run, int lines)
{
    const struct Cable *cable = &run->cable;
    const bool protects = cable->cpc == CPC_CORE || cable->cpc == CPC_CORE_AND_ARMOUR;
    for (size_t i = 0; i < sizeof core_uses / sizeof core_uses[0]; i++) {
        const struct CoreUse *use = &core_uses[i];
        if (use->family == (int)survey_cable_colours(cable->type) && use->cores == cable->cores &&
            use->lines == lines && use->core_protects == protects) {
            return use;
        }
    }
    return NULL;
}
