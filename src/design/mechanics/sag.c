/* A light cable between two supports of one height. Its weight is taken as spread along the span, which makes a
 * parabola of the catenary: good where the sag is a tenth of the span or less. Statics; units are the caller's. */
#include "mechanics_private.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

double sag_tension(double weight, double span, double sag)
{
    return weight * span * span / (8 * sag);
}

double sag_depth(double weight, double span, double tension)
{
    return weight * span * span / (8 * tension);
}

double sag_support_tension(double weight, double span, double sag)
{
    return hypot(sag_tension(weight, span, sag), weight * span / 2);
}

double sag_slope_deg(double span, double sag)
{
    return atan(4 * sag / span) * 180 / pi;
}

double sag_cable_length(double span, double sag)
{
    return span * (1 + 8.0 / 3 * (sag / span) * (sag / span));
}
