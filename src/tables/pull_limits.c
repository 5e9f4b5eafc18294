/* What cables stand while they are drawn in.
 *
 * Source: copper 50 N/mm2 a European maker after construction standards; stocking over any sheath 120 N per mm of
 * diameter a trade page of cable data; stocking on steel wire armour 9 D^2 N a European maker after a German rule;
 * pressure in a bend 300 lb/ft = 4.4 kN/m a maker's guide, for interlocked armour, the lowest that is printed for any
 * armoured cable; 80 % for more than three drawn in together two makers' guides; 360 degrees of bend in a pull an annex
 * of IEEE, a rule of thumb. Trust:  each seen. No British standard gives limits for a stocking, and makers differ up to
 * threefold: 70 N/mm2, 7.3 and 14.6 kN/m are printed too. The least stands here; the cable's maker has the last word.
 * Rows:   none; each figure stands alone. */
#include "mechanics_tables.h"
#include "tables_private.h"

const struct PullLimits *pull_limits(void)
{
    static const struct PullLimits limits = {.copper_n_per_mm2 = 50,
                                             .stocking_n_per_mm = 120,
                                             .stocking_armour_n_per_mm2 = 9,
                                             .sidewall_n_per_m = 4400,
                                             .many = 0.80,
                                             .many_over = 3,
                                             .bends_deg = 360};
    return &limits;
}

void pull_limits_cells(struct TextBuilder *out)
{
    const struct PullLimits *limits = pull_limits();
    cells_figures(out,
                  (const struct OneFigure[]){
                      {"tension on copper", limits->copper_n_per_mm2, "N/mm2"},
                      {"stocking on a sheath", limits->stocking_n_per_mm, "N per mm of diameter"},
                      {"stocking on wire armour", limits->stocking_armour_n_per_mm2, "N per mm2 of diameter squared"},
                      {"pressure in a bend", limits->sidewall_n_per_m, "N/m"},
                      {"of the limit where many are drawn in together", limits->many, "times"},
                      {"many are more than", limits->many_over, "cables"},
                      {"bends in one pull", limits->bends_deg, "deg"},
                  },
                  7);
}

const struct TableRef *pull_limits_ref(void)
{
    static const struct TableRef ref = {.standard = "makers' guides",
                                        "drawing in",
                                        "what a cable stands while it is drawn in",
                                        TRUST_PUBLISHED,
                                        "each figure seen; makers differ up to threefold, the least is taken",
                                        .words = TABLE_OF_PULL_LIMITS};
    return &ref;
}
