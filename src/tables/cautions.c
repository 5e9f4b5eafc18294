/* The cautions of the trade, by number, and where each comes from. What they say is in words/en/cautions.inc. */
#include "tables.h"

static const struct {
    unsigned where; /* a place, and of enum CautionTrait what holds */
    enum Trust trust;
    const char *source;
} cautions[] = {
#define CAUTION(symbol, where, trust, source) [CAUTION_##symbol] = {(where), trust, source},
#include "cautions.inc"
#undef CAUTION
};

_Static_assert(sizeof cautions / sizeof cautions[0] == CAUTION_COUNT, "a row for each caution");

static bool known(enum CautionId id)
{
    return (int)id >= 0 && id < CAUTION_COUNT;
}

const char *caution_source(enum CautionId id)
{
    return known(id) ? cautions[id].source : NULL;
}

enum Trust caution_trust(enum CautionId id)
{
    return known(id) ? cautions[id].trust : TRUST_COMMON_PRACTICE;
}

enum CautionPlace caution_place(enum CautionId id)
{
    return known(id) ? (enum CautionPlace)(cautions[id].where % DRAWN_TOO) : OF_ROUTE;
}

bool caution_has(enum CautionId id, enum CautionTrait trait)
{
    return known(id) && (cautions[id].where & (unsigned)trait) != 0;
}
