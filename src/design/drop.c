/* Voltage drop by the mV/A/m figures of BS 7671 Appendix 4. */
#include "design_private.h"

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

/* With lines a, b, c at unity power factor the neutral carries what they do not cancel, and line a drops
 * R (2 Ia - (Ib + Ic) / 2)  =  R b + 2 R (Ia - b)  with b = (Ib + Ic) / 2. The tables hold sqrt 3 R (three-phase) and
 * 2 R (single-phase), so the balanced part goes by the one and the rest by the other. */
bool drop_per_metre(enum DropTable table, double size_mm2, const struct Demand *demand, double *out_v_per_m)
{
    struct DropFigure single;
    if (!drop_figure(table, size_mm2, 1, &single)) {
        return false;
    }
    const double single_mv = drop_effective_mv(&single, demand->power_factor);
    if (demand->currents.lines == 1) {
        *out_v_per_m = drop_volts(single_mv, demand->design_a, 1.0);
        return true;
    }
    struct DropFigure three;
    if (!drop_figure(table, size_mm2, 3, &three)) {
        return false;
    }
    const double three_mv = drop_effective_mv(&three, demand->power_factor);
    *out_v_per_m = drop_volts(three_mv, demand->balanced_a, 1.0) +
                   sqrt(3.0) * drop_volts(single_mv, demand->design_a - demand->balanced_a, 1.0);
    return true;
}
