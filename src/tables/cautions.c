/* The cautions of the trade, by number, and where each comes from. What they say is in words/en/cautions.inc. */
#include "tables.h"

static const char *const sources[] = {
#define CAUTION(symbol, source) [CAUTION_##symbol] = (source),
#include "cautions.inc"
#undef CAUTION
};

_Static_assert(sizeof sources / sizeof sources[0] == CAUTION_COUNT, "a source for each caution");

const char *caution_source(enum CautionId id)
{
    return (int)id >= 0 && id < CAUTION_COUNT ? sources[id] : NULL;
}
