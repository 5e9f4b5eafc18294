/* By how much the voltage may lie off its nominal value in a fault calculation.
 *
 * Source: BS 7671:2018+A2:2022, Appendix 3.
 * Trust:  the least as the loop impedances of Tables 41.2 to 41.4 are printed with it; the greatest from memory.
 * Rows:   the least where a current must be large enough, for disconnection; the greatest where it must not be too
 *         large, for breaking and withstand. */
#include "edition_private.h"

const struct VoltageFactors voltage_factors = {
    .ref = {TABLES_BS7671, "Appendix 3", "voltage factors of fault currents", TRUST_PARTLY_FROM_MEMORY,
            "the least seen in print, the greatest from memory", .words = TABLE_IN_APPENDIX_3},
    .least = 0.95,
    .greatest = 1.10,
};

double voltage_factor_least(const struct Edition *edition)
{
    return edition->voltage->least;
}

double voltage_factor_greatest(const struct Edition *edition)
{
    return edition->voltage->greatest;
}

enum Trust voltage_factor_greatest_trust(void)
{
    return TRUST_FROM_MEMORY;
}

void voltage_factor_cells(const struct Edition *edition, struct TextBuilder *out)
{
    cells_figures(out,
                  (const struct OneFigure[]){
                      {"least; for disconnection", edition->voltage->least, "times"},
                      {"greatest; for breaking and withstand", edition->voltage->greatest, "times"},
                  },
                  2);
}

const struct TableRef *voltage_factor_ref(const struct Edition *edition)
{
    return &edition->voltage->ref;
}
