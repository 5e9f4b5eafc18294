/* Voltage drop by the mV/A/m figures of BS 7671 Appendix 4. */
#include "rating_private.h"

#include <math.h>

double drop_effective_mv(const struct DropFigure *figure, double power_factor)
{
    if (power_factor <= 0) {
        return figure->z; /* not known: the worst that any power factor gives */
    }
    const double sine = sqrt(1.0 - power_factor * power_factor);
    return figure->r * power_factor + figure->x * sine;
}

double drop_volts(double mv_per_a_m, double current_a, double length_m)
{
    return mv_per_a_m * current_a * length_m / 1000.0;
}
