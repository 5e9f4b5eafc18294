/* The aisles of a store, in the order in which a list is picked. */
#include "parts.h"

#include "plan/say.h"

static const struct Say words[AISLE_COUNT] = {
    [AISLE_CABLE] = {.id = SAY_AISLE_CABLE},           [AISLE_TERMINATIONS] = {.id = SAY_AISLE_TERMINATIONS},
    [AISLE_FIXINGS] = {.id = SAY_AISLE_FIXINGS},       [AISLE_CONTAINMENT] = {.id = SAY_AISLE_CONTAINMENT},
    [AISLE_GROUNDWORK] = {.id = SAY_AISLE_GROUNDWORK}, [AISLE_ENCLOSURES] = {.id = SAY_AISLE_ENCLOSURES},
    [AISLE_EARTHING] = {.id = SAY_AISLE_EARTHING},     [AISLE_LABELS] = {.id = SAY_AISLE_LABELS},
    [AISLE_SUNDRIES] = {.id = SAY_AISLE_SUNDRIES},
};

const struct Say *parts_aisle_said(enum Aisle aisle)
{
    return (int)aisle >= 0 && aisle < AISLE_COUNT ? &words[aisle] : NULL;
}
