/* Inside radius of the bends that a cable is drawn through, as a multiple of its diameter.
 *
 * Source: data cable: practice of ISO/IEC 11801 and EN 50174. Armoured: one overseas maker's table (12 x for what
 * stays, 18 x while it is laid); datasheets of British low voltage cable give one radius only, so 12 x is to warn by.
 * Trust:  data from memory; armoured seen once.
 * Rows:   by kind of cable; the others have no figure. */
#include "cable_kinds.h"
#include "tables_private.h"

static const double data_factor = 8;
static const double armoured_factor = 12;

bool bend_radius_drawn_factor(enum CableType type, double *out)
{
    if (cable_kind(type)->bend == BEND_DATA) {
        *out = data_factor;
        return true;
    }
    if (cable_kind(type)->bend == BEND_ARMOURED) {
        *out = armoured_factor;
        return true;
    }
    return false;
}

void bend_radius_drawn_cells(struct TextBuilder *out)
{
    text_add(out, "cable,radius over diameter\ndata,");
    cells_number(out, data_factor, true);
    text_add(out, "armoured,");
    cells_number(out, armoured_factor, true);
}

const struct TableRef *bend_radius_drawn_ref(void)
{
    static const struct TableRef ref = {.standard = "makers' and cabling practice",
                                        "drawing in",
                                        "inside radius of bends that a cable is drawn through",
                                        TRUST_PARTLY_FROM_MEMORY,
                                        "armoured seen once, overseas: a warning only; data from memory",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
