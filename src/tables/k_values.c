/* k of the adiabatic equation by conductor. The figures are in k_values_*.c, a file a table. */
#include "edition_private.h"

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

double k_value(const struct Edition *edition, enum KTable table, double degc)
{
    return k_at(edition->k[table], degc);
}

const struct TableRef *k_value_ref(const struct Edition *edition, enum KTable table)
{
    return &edition->k[table]->ref;
}
