/* What makes a fault loop through steel wire armour more than the armour's resistance at 20 degC.
 *
 * Source: PD CLC/TR 50480: Z1 + Z2 = (R1 + 1.1 R2a) + j0.3 mohm/m; steel rises by 0.0045 of its resistance per kelvin.
 * Trust:  seen as quoted by guides; a published worked loop comes out by them.
 * Rows:   one for all sizes. */
#include "fault_tables_private.h"

static const struct ArmourLoop figures = {.per_k = 0.0045, .lay = 1.1, .reactance_ohm_per_m = 0.0003};

const struct ArmourLoop *armour_loop(void)
{
    return &figures;
}

void armour_loop_cells(struct TextBuilder *out)
{
    cells_figures(out,
                  (const struct OneFigure[]){
                      {"rise of resistance over 20 degC", figures.per_k, "per kelvin"},
                      {"lay and magnetism", figures.lay, "times the resistance"},
                      {"reactance of the loop", figures.reactance_ohm_per_m, "ohm/m"},
                  },
                  3);
}

const struct TableRef *armour_loop_ref(void)
{
    static const struct TableRef ref = {.standard = "PD CLC/TR 50480",
                                        "armour",
                                        "fault loop through steel wire armour",
                                        TRUST_PUBLISHED,
                                        "seen quoted",
                                        .words = TABLE_STANDARD_ALONE};
    return &ref;
}
