/* Figures that design takes from other papers than the wiring rules, and one of its own.
 *
 * Source: IEC 60364-5-52, note to 523.8: what is cooled otherwise only through a wall under 0.35 m may be taken as the
 *         rest of the run. ENA ER P23/1:1991: 21 ohm for the supply's own electrode on TT, a planning value. Guides on
 *         fault loops leave out the reactance of copper up to 35 mm2. That a conductor is taken to stand a fault by
 *         Table 54.7 only where the equation is not beyond it by 0.5 % is a judgement of this program.
 * Trust:  ER P23 seen quoted; the others from memory.
 * Rows:   one figure each. */
#include "fault_tables_private.h"

static const struct DesignPractice practice = {
    .thick_wall_m = 0.35,
    .supply_electrode_ohm = 21,
    .reactance_above_mm2 = 35,
    .clear_margin = 1.005,
};

const struct DesignPractice *design_practice(void)
{
    return &practice;
}

void design_practice_cells(struct TextBuilder *out)
{
    cells_figures(out,
                  (const struct OneFigure[]){
                      {"IEC 60364-5-52: a wall is crossed as the rest of the run below", practice.thick_wall_m, "m"},
                      {"ENA ER P23/1: the supply's electrode on TT", practice.supply_electrode_ohm, "ohm"},
                      {"reactance of copper counts above", practice.reactance_above_mm2, "mm2"},
                      {"clear of Table 54.7 by", practice.clear_margin, "times"},
                  },
                  4);
}

const struct TableRef *design_practice_ref(void)
{
    static const struct TableRef ref = {.standard = "IEC 60364-5-52 and others",
                                        "design",
                                        "walls, the supply's electrode, reactance and margin",
                                        TRUST_PARTLY_FROM_MEMORY,
                                        "ER P23 seen quoted, the others from memory",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
