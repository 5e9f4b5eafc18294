/* Least copper earthing conductor in the ground, by how it is protected.
 *
 * Source: BS 7671:2018+A2:2022, Table 54.1 (regulation 542.3.1). Besides it the conductor must stand the fault current.
 * Trust:  two sources.
 * Rows:   sheathed against corrosion or not, times mechanically protected or not. */
#include "edition_private.h"

/* clang-format off */
const struct BuriedEarthing buried_earthing_54_1 = {
    .ref = {TABLES_BS7671, "54.1", "earthing conductor in the ground", TRUST_PUBLISHED, "two sources"},
    .copper_mm2 = {
        /*             unprotected, protected */
        /* bare     */ {        25,        25},
        /* sheathed */ {        16,       2.5},
    },
};
/* clang-format on */

double buried_earthing_mm2(const struct Edition *edition, bool sheathed, bool mechanically_protected)
{
    return edition->buried_earthing->copper_mm2[sheathed ? 1 : 0][mechanically_protected ? 1 : 0];
}

void buried_earthing_cells(const struct Edition *edition, struct TextBuilder *out)
{
    static const char *const coverings[] = {"bare", "sheathed"};
    text_add(out, "conductor,unprotected mm2,protected mm2\n");
    for (int row = 0; row < COUNT_OF(coverings); row++) {
        cells_text(out, coverings[row], false);
        cells_row(out, edition->buried_earthing->copper_mm2[row], 2);
    }
}

const struct TableRef *buried_earthing_ref(const struct Edition *edition)
{
    return &edition->buried_earthing->ref;
}
