/* By how much the voltage may lie off its nominal value in a fault calculation.
 *
 * Source: BS 7671:2018+A2:2022, Appendix 3.
 * Trust:  the least as the loop impedances of Tables 41.2 to 41.4 are printed with it; the greatest from memory.
 * Rows:   the least where a current must be large enough, for disconnection; the greatest where it must not be too
 *         large, for breaking and withstand. */
#include "edition_private.h"

const struct VoltageFactors voltage_factors = {.least = 0.95, .greatest = 1.10};

double voltage_factor_least(const struct Edition *edition)
{
    return edition->voltage->least;
}

double voltage_factor_greatest(const struct Edition *edition)
{
    return edition->voltage->greatest;
}
