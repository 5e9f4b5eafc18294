/* Figures by which parts are counted where no other table has them.
 *
 * Source: rods: a manufacturer's table. Pulling compound: a trade page gives half a litre to one for 30 m, the
 *         larger is taken. Main switch: as the largest cut-out of a house has it. The lead to the bar: 3.5 m clear
 *         of the supply's metal, which comes into the same building, and 1.5 m in. A cable is upright within 30
 *         degrees. The others are common practice, no source.
 * Trust:  rods and compound seen; the others from memory.
 * Rows:   one figure each. */
#include "tables_private.h"
#include "takeoff_tables.h"

static const struct TakeoffPractice practice = {
    .rigid_duct_from_mm = 110,
    .compound_m_per_litre = 30,
    .rod_section_m = 1.2,
    .earth_lead_m = 5,
    .main_switch_a = 100,
    .longer_conduit_m = 3.75,
    .upright_slope = 0.866,
    .thinnest_armoured_mm = 12,
    .thinnest_mm = 5,
    .makes_differ = 0.05,
    .shaped_first_mm2 = 25,
    .shaped_last_mm2 = 35,
};

const struct TakeoffPractice *takeoff_practice(void)
{
    return &practice;
}

void takeoff_practice_cells(struct TextBuilder *out)
{
    cells_figures(
        out,
        (const struct OneFigure[]){
            {"duct comes in rigid lengths from", practice.rigid_duct_from_mm, "mm"},
            {"a litre of pulling compound does for", practice.compound_m_per_litre, "m"},
            {"a section of an earth rod", practice.rod_section_m, "m"},
            {"from the nearest rod to the bar where nobody measured it", practice.earth_lead_m, "m"},
            {"main switch", practice.main_switch_a, "A"},
            {"steel conduit also comes in lengths of", practice.longer_conduit_m, "m"},
            {"a cable counts as upright where it rises at least", practice.upright_slope, "m/m"},
            {"armoured cable of a diameter nobody knows is fixed as one of", practice.thinnest_armoured_mm, "mm"},
            {"any other as one of", practice.thinnest_mm, "mm"},
            {"cables of one size differ between makers by", practice.makes_differ, "times"},
            {"some makes have shaped conductors and some round ones at", practice.shaped_first_mm2, "mm2"},
            {"and at", practice.shaped_last_mm2, "mm2"},
        },
        12);
}

const struct TableRef *takeoff_practice_ref(void)
{
    static const struct TableRef ref = {.standard = "common practice, no source",
                                        "parts",
                                        "figures by which parts are counted",
                                        TRUST_COMMON_PRACTICE,
                                        "rods and compound seen, the others from memory",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
