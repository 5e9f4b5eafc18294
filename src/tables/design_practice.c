/* Figures that design takes from other papers than the wiring rules, and some of its own.
 *
 * Source: IEC 60364-5-52, note to 523.8: what is cooled otherwise only through a wall under 0.35 m may be taken as
 *         the rest of the run. ENA ER P23/1:1991: 21 ohm for the supply's own electrode on TT, a planning value.
 *         EREC G98: generation to 16 A a line. BS EN 50160: a supply may stand a tenth high. BS EN 50174-2:
 *         circuits of 20 A. BS EN 61008-1: 100 mA is the least that devices of type S are made for. Guides on
 *         fault loops leave out the reactance of copper up to 35 mm2. Half a cycle is that of 50 Hz. Full sun:
 *         derived from the solar term of IEC 60287-1-1, absorption 0.6 and 0.9, 1000 W/m2, cables of 1.5 to 95 mm2
 *         on a wall or clear of it, up to 40 degC air. Power factors of cage motors started direct on line, and
 *         how deep a rod is driven: common practice, no source. That a conductor is taken to stand a fault by
 *         Table 54.7 only where the equation is not beyond it by 0.5 % is a judgement of this program.
 * Trust:  ER P23 seen quoted, EREC G98 two sources; the others from memory.
 * Rows:   one figure each. */
#include "fault_tables_private.h"

static const struct DesignPractice practice = {
    .thick_wall_m = 0.35,
    .supply_electrode_ohm = 21,
    .reactance_above_mm2 = 35,
    .clear_margin = 1.005,
    .half_cycle_s = 0.01,
    .start_low_factor = 0.3,
    .start_high_factor = 0.4,
    .selective_residual_a = 0.1,
    .rod_deepest_m = 30,
    .notify_up_to_a = 16,
    .supply_most = 1.1,
    .separated_circuit_a = 20,
    .sun_rise_k = 20,
    .sun_hottest_degc = 40,
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
                      {"half a cycle of 50 Hz", practice.half_cycle_s, "s"},
                      {"power factor of a motor that starts: from", practice.start_low_factor, ""},
                      {"power factor of a motor that starts: to", practice.start_high_factor, ""},
                      {"BS EN 61008-1: selective residual device", practice.selective_residual_a, "A"},
                      {"a rod is driven no deeper than", practice.rod_deepest_m, "m"},
                      {"EREC G98: generation is notified afterwards to", practice.notify_up_to_a, "A"},
                      {"BS EN 50160: a supply may stand at", practice.supply_most, "times"},
                      {"BS EN 50174-2: a circuit counts for each", practice.separated_circuit_a, "A"},
                      {"IEC 60287-1-1: full sun warms the air by", practice.sun_rise_k, "K"},
                      {"IEC 60287-1-1: worked out for air to", practice.sun_hottest_degc, "degC"},
                  },
                  14);
}

const struct TableRef *design_practice_ref(void)
{
    static const struct TableRef ref = {.standard = "IEC 60364-5-52 and others",
                                        "design",
                                        "walls, the supply's electrode, reactance, margins, motors and sun",
                                        TRUST_PARTLY_FROM_MEMORY,
                                        "ER P23 and EREC G98 seen, the others from memory",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
