/* How warm the conductor runs, and what that does to its resistance. */
#include "rating_private.h"

/* BS 7671 Appendix 4, 6.1 has  t = tp - (Ca^2 Cg^2 - (Ib/It)^2) (tp - t0).  Ca and Cg (and the sun) stand as a warmer
 * surrounding. Insulation, soil and depth keep in the heat that the cable makes itself, so there Ib is compared with
 * It Ci Cs Cd; without them this is the printed formula. At Ib = It Ca Cg Ci Cs Cd it gives tp. */
double temperature_base_degc(bool in_ground)
{
    return in_ground ? 20.0 : 30.0;
}

double conductor_temperature(double conductor_degc, bool in_ground, double current_a, double tabulated_a,
                             double ambient, double own)
{
    const double base_degc = temperature_base_degc(in_ground);
    const double load = current_a / (tabulated_a * own);
    return conductor_degc - (ambient * ambient - load * load) * (conductor_degc - base_degc);
}

double resistance_ratio(double at_degc, double table_degc)
{
    const double ratio = (COPPER_INVERSE_DEGC + at_degc) / (COPPER_INVERSE_DEGC + table_degc);
    return ratio < 1.0 ? ratio : 1.0;
}
