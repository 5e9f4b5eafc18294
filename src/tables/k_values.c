/* k of the adiabatic equation by conductor. The figures are in k_values_*.c, a file a table. */
#include "fault_tables_private.h"

#include <math.h>

/* A temperature that is neither of the two gets the lower figure: it asks for the larger conductor. */
static double k_at(const struct KFigures *figures, double degc)
{
    if (lookup_same(degc, 70)) {
        return figures->at_70_degc;
    }
    if (lookup_same(degc, 90)) {
        return figures->at_90_degc;
    }
    return fmin(figures->at_70_degc, figures->at_90_degc);
}

double k_live_copper(double degc)
{
    return k_at(&k_values_43_1, degc);
}

double k_cpc_separate_copper(double degc)
{
    return k_at(&k_values_54_2, degc);
}

double k_cpc_core_copper(double degc)
{
    return k_at(&k_values_54_3, degc);
}

double k_armour_steel(double degc)
{
    return k_at(&k_values_54_4, degc);
}

/* For documents that speak of k at large; the list of tables has the four one by one. */
const struct TableRef *k_value_ref(void)
{
    static const struct TableRef ref = {TABLES_BS7671, "43.1, 54.2 to 54.4", "k of the adiabatic equation", "seen"};
    return &ref;
}
