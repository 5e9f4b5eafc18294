/* The cautions of the trade, by number. Their words and sources are in cautions.inc. */
#include "tables.h"

static const struct CautionText texts[] = {
#define CAUTION(symbol, say, source) [CAUTION_##symbol] = {say, source},
#include "cautions.inc"
#undef CAUTION
};

_Static_assert(sizeof texts / sizeof texts[0] == CAUTION_COUNT, "a text for each caution");

const struct CautionText *caution_text(enum CautionId id)
{
    return (int)id >= 0 && id < CAUTION_COUNT ? &texts[id] : NULL;
}
