/* Inside radius of the bends that a cable is drawn through, as a multiple of its diameter.
 *
 * Source: data cable: practice of ISO/IEC 11801 and EN 50174. Armoured: one overseas maker's table (12 x for what
 * stays, 18 x while it is laid); datasheets of British low voltage cable give one radius only, so 12 x is to warn by.
 * Trust:  data from memory; armoured seen once.
 * Rows:   by kind of cable; the others have no figure. */
#include "cable_kinds.h"
#include "tables_private.h"

bool bend_radius_drawn_factor(enum CableType type, double *out)
{
    if (cable_kind(type)->bend == BEND_DATA) {
        *out = 8;
        return true;
    }
    if (cable_kind(type)->bend == BEND_ARMOURED) {
        *out = 12;
        return true;
    }
    return false;
}

const struct TableRef *bend_radius_drawn_ref(void)
{
    static const struct TableRef ref = {
        "makers' and cabling practice", "drawing in", "inside radius of bends that a cable is drawn through",
        TRUST_PARTLY_FROM_MEMORY, "armoured seen once, overseas: a warning only; data from memory"};
    return &ref;
}
