/* How much of a trunking's section cables may take up.
 *
 * Source: a textbook on space factors: 45 % of the section.
 * Trust:  seen once.
 * Rows:   one figure, whatever the number of cables. The section is taken as width times height as sold. */
#include "mechanics_tables.h"
#include "tables_private.h"

double trunking_fill_percent(void)
{
    return 45;
}

void trunking_fill_cells(struct TextBuilder *out)
{
    cells_figures(out,
                  (const struct OneFigure[]){
                      {"share of the section", trunking_fill_percent(), "%"},
                  },
                  1);
}

const struct TableRef *trunking_fill_ref(void)
{
    static const struct TableRef ref = {.standard = "textbook on space factors",
                                        "trunking fill",
                                        "share of a trunking's section that cables may fill",
                                        TRUST_PUBLISHED,
                                        "seen once",
                                        .words = TABLE_OF_TRUNKING_FILL};
    return &ref;
}
