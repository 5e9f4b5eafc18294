/* When three equal cables wedge in a duct: bore over diameter.
 *
 * Source: American code note on jamming, 2.8 to 3.2, with 5 % added to the bore of a bend, which is not quite round.
 * Trust:  two sources; some guides end the band at 3.0, the wider one stands.
 * Rows:   one band. Four cables and more seldom jam. */
#include "mechanics_tables.h"
#include "tables_private.h"

struct DuctJam duct_jam(void)
{
    return (struct DuctJam){.low = 2.8, .high = 3.2, .bent = 1.05, .cables = 3};
}

void duct_jam_cells(struct TextBuilder *out)
{
    const struct DuctJam jam = duct_jam();
    cells_figures(out,
                  (const struct OneFigure[]){
                      {"wedges from", jam.low, "times the diameter"},
                      {"wedges no more from", jam.high, "times the diameter"},
                      {"bore of a bend", jam.bent, "times that of a straight duct"},
                      {"cables that wedge", jam.cables, ""},
                  },
                  4);
}

const struct TableRef *duct_jam_ref(void)
{
    static const struct TableRef ref = {.standard = "makers' guides and code note",
                                        "jam ratio",
                                        "bore over diameter at which three cables wedge",
                                        TRUST_PUBLISHED,
                                        "two sources",
                                        .words = TABLE_OF_JAM};
    return &ref;
}
