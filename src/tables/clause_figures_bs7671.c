/* Figures that stand alone in a clause: the times that the adiabatic equation holds for and that fuses are read
 * at, the least separate conductor, final circuits, residual currents, copper that warms.
 *
 * Source: BS 7671:2018+A2:2022: 434.5.2 (the adiabatic equation holds from 0.1 to 5 s), Appendix 3 (fuses are read
 *         at 0.4 and 5 s; a loop measured cold is held against 0.8 of its limit), 543.1.1 (a protective conductor
 * outside a cable), 544.1.1 (main bonds), Tables 54.2 and 54.3 (how warm a separate conductor is when a fault begins),
 * Table 54.4 (armour at 60 degC in a cable of 70, at 80 in one of 90), 415.1.1 and 722.531.3 (30 mA), Table 64
 * (insulation), 411.3.2.2 (final circuits), Table 41.5, note (electrodes), Appendix 4 (copper that warms, by its
 * factors 1.20 at 70 and 1.28 at 90 degC). Trust:  543.1.1 two sources that agree; the others from memory. Rows:   one
 * figure each. */
#include "fault_tables_private.h"

static const struct ClauseFigures figures = {
    .adiabatic_from_s = 0.1,
    .adiabatic_to_s = 5,
    .fuse_short_s = 0.4,
    .separate_bare_mm2 = 4,
    .separate_enclosed_mm2 = 2.5,
    .separate_bunched_degc = 70,
    .separate_apart_degc = 30,
    .bond_mm2 = {6, 10, 16, 25},
    .additional_residual_a = 0.03,
    .charging_residual_a = 0.03,
    .insulation_least_mohm = 1,
    .insulation_test_v = 500,
    .fuse_long_s = 5,
    .final_sockets_a = 63,
    .final_equipment_a = 32,
    .electrode_steady_ohm = 200,
    .copper_per_k = 0.004,
    .armour_cooler_k = 10,
    .cold_part = 0.8,
};

const struct ClauseFigures *clause_figures(void)
{
    return &figures;
}

void clause_figures_cells(struct TextBuilder *out)
{
    cells_figures(out,
                  (const struct OneFigure[]){
                      {"434.5.2: the adiabatic equation holds from", figures.adiabatic_from_s, "s"},
                      {"434.5.2: and to", figures.adiabatic_to_s, "s"},
                      {"Appendix 3: the shorter time that a fuse is read at", figures.fuse_short_s, "s"},
                      {"543.1.1: separate conductor that nothing protects", figures.separate_bare_mm2, "mm2"},
                      {"543.1.1: separate conductor that is protected", figures.separate_enclosed_mm2, "mm2"},
                      {"Table 54.3: bunched with cables it starts at", figures.separate_bunched_degc, "degC"},
                      {"Table 54.2: away from cables it starts at", figures.separate_apart_degc, "degC"},
                      {"544.1.1: least main bond", figures.bond_mm2[0], "mm2"},
                      {"544.1.1: the next", figures.bond_mm2[1], "mm2"},
                      {"544.1.1: the next", figures.bond_mm2[2], "mm2"},
                      {"544.1.1: main bond need not be over", figures.bond_mm2[CLAUSE_BONDS - 1], "mm2"},
                      {"415.1.1: residual current of additional protection", figures.additional_residual_a, "A"},
                      {"722.531.3: residual current at a charging point", figures.charging_residual_a, "A"},
                      {"Table 64: least insulation resistance", figures.insulation_least_mohm, "megohm"},
                      {"Table 64: tested with", figures.insulation_test_v, "V d.c."},
                      {"Appendix 3: the longer time that a fuse is read at", figures.fuse_long_s, "s"},
                      {"411.3.2.2: final circuit of sockets to", figures.final_sockets_a, "A"},
                      {"411.3.2.2: final circuit of equipment to", figures.final_equipment_a, "A"},
                      {"Table 41.5: an electrode may not stay steady above", figures.electrode_steady_ohm, "ohm"},
                      {"Appendix 4: copper rises by", figures.copper_per_k, "1/K"},
                      {"Table 54.4: armour is cooler than the conductor by", figures.armour_cooler_k, "K"},
                      {"Appendix 3: a loop measured cold is held against", figures.cold_part, "times the limit"},
                  },
                  22);
}

const struct TableRef *clause_figures_ref(void)
{
    static const struct TableRef ref = {TABLES_BS7671, "clauses", "figures of single clauses on faults",
                                        TRUST_PARTLY_FROM_MEMORY, "543.1.1 seen twice, the others from memory"};
    return &ref;
}
