/* What cables drawn in together do to each other: they wedge in the round of the bore, and press each other in bends.
 */
#include "mechanics_private.h"

#include <math.h>

/* 1 / cos of half the angle that two touching cables make at the middle of the bore. However they lie, the two forces
 * of the wall hold up their weight and stand at that angle to each other, so their sum is this much of the weight at
 * most. */
static bool crowd_of_two(double a_mm, double b_mm, double bore_mm, double *out)
{
    const double to_a = (bore_mm - a_mm) / 2;
    const double to_b = (bore_mm - b_mm) / 2;
    const double apart = (a_mm + b_mm) / 2;
    if (!(to_a > 0) || !(to_b > 0) || apart >= to_a + to_b) {
        return false;
    }
    const double cosine = fmin(1, (to_a * to_a + to_b * to_b - apart * apart) / (2 * to_a * to_b));
    *out = 1 / sqrt((1 + cosine) / 2);
    return true;
}

/* d / (D - d) of the largest, no more than where `just_fit` cables of one diameter fill the bore. */
static double crowded(const struct Bunch *bunch, double bore_mm, double just_fit)
{
    const double room_mm = bore_mm - bunch->largest_mm;
    return room_mm > 0 ? fmin(just_fit, bunch->largest_mm / room_mm) : just_fit;
}

static double three_crowded(const struct Bunch *bunch, double bore_mm)
{
    return crowded(bunch, bore_mm, sqrt(3.0) / 2); /* their middles on a triangle of side d */
}

static double four_crowded(const struct Bunch *bunch, double bore_mm)
{
    return crowded(bunch, bore_mm, sqrt(0.5)); /* on a square of side d */
}

bool pull_crowd(const struct Bunch *bunch, double bore_mm, double *out)
{
    double x;
    switch (bunch->count) {
    case 1: *out = 1; return true;
    case 2: return crowd_of_two(bunch->largest_mm, bunch->sum_mm - bunch->largest_mm, bore_mm, out);
    case 3:
        x = three_crowded(bunch, bore_mm);
        *out = 1 + 4.0 / 3 * x * x;
        return true;
    case 4:
        x = four_crowded(bunch, bore_mm);
        *out = 1 + 2 * x * x;
        return true;
    default: return false;
    }
}

double pull_pressed(const struct Bunch *bunch, double bore_mm, double crowd)
{
    if (bunch->count <= 1) {
        return 1;
    }
    if (bunch->count == 2) {
        /* the second lies on the first, with a force that goes with its weight, as the square of its diameter */
        const double both = bunch->squares_mm2 / (bunch->largest_mm * bunch->largest_mm);
        return both * fmax(1, crowd / sqrt(2.0)); /* steeper than a right angle they wedge */
    }
    if (bunch->count == 3) {
        const double x = three_crowded(bunch, bore_mm);
        return fmax(3 * crowd - 2, 1.5 / sqrt(1 - x * x));
    }
    return bunch->count * crowd;
}
