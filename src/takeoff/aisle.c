/* The aisles of a store, in the order in which a list is picked. */
#include "parts.h"

static const char *const words[AISLE_COUNT] = {
    [AISLE_CABLE] = "Cable",
    [AISLE_TERMINATIONS] = "Glands and terminations",
    [AISLE_FIXINGS] = "Fixings",
    [AISLE_CONTAINMENT] = "Conduit, trunking, tray and catenary",
    [AISLE_GROUNDWORK] = "Duct and trench",
    [AISLE_ENCLOSURES] = "Enclosures and devices",
    [AISLE_EARTHING] = "Earthing",
    [AISLE_LABELS] = "Labels",
    [AISLE_SUNDRIES] = "Sundries",
};

const char *parts_aisle_word(enum Aisle aisle)
{
    return (int)aisle >= 0 && aisle < AISLE_COUNT ? words[aisle] : "";
}
