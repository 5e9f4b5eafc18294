/* Earth electrodes by BS 7430: rods, rods together, and what a measured value changes. */
#include "fault_private.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

double electrode_rod_ohm(double soil_ohm_m, double length_m, double diameter_m)
{
    return soil_ohm_m / (2 * pi * length_m) * (log(8 * length_m / diameter_m) - 1);
}

double electrode_line_lambda(int count)
{
    double sum = 0;
    for (int k = 1; k < count; k++) {
        sum += (double)(count - k) / k;
    }
    return 2 * sum / count;
}

double electrode_influence(double soil_ohm_m, double rod_ohm, double spacing_m)
{
    return soil_ohm_m / (2 * pi * rod_ohm * spacing_m);
}

double electrode_spacing_m(const struct Earthing *earthing)
{
    return earthing->rod_spacing_m.value > 0 ? earthing->rod_spacing_m.value : earthing->rod_length_m.value;
}

/* R (1 + lambda a) / N. */
static double together_ohm(double soil_ohm_m, double rod_ohm, double lambda, int count, double spacing_m)
{
    return rod_ohm * (1 + lambda * electrode_influence(soil_ohm_m, rod_ohm, spacing_m)) / count;
}

double electrode_rods_ohm(double soil_ohm_m, double length_m, double diameter_m, int count, double spacing_m)
{
    const double rod_ohm = electrode_rod_ohm(soil_ohm_m, length_m, diameter_m);
    if (count <= 1) {
        return rod_ohm;
    }
    return together_ohm(soil_ohm_m, rod_ohm, electrode_line_lambda(count), count, spacing_m);
}

/* The mean over all rods of the sum of spacing over distance to every other one. */
double electrode_square_ohm(double soil_ohm_m, double rod_ohm, int side, double spacing_m)
{
    const int count = 4 * (side - 1);
    double sum = 0;
    for (int i = 0; i < side * side; i++) {
        const int xi = i % side, yi = i / side;
        if (xi > 0 && xi < side - 1 && yi > 0 && yi < side - 1) {
            continue;
        }
        for (int j = 0; j < side * side; j++) {
            const int xj = j % side, yj = j / side;
            const bool inside = xj > 0 && xj < side - 1 && yj > 0 && yj < side - 1;
            if (i != j && !inside) {
                sum += 1 / hypot(xi - xj, yi - yj);
            }
        }
    }
    return together_ohm(soil_ohm_m, rod_ohm, sum / count, count, spacing_m);
}

double electrode_soil_ohm_m(double spacing_m, double reading_ohm)
{
    return 2 * pi * spacing_m * reading_ohm;
}

enum { RODS_MOST = 20 };

int electrode_rods_for(double soil_ohm_m, double length_m, double diameter_m, double spacing_m, double target_ohm)
{
    for (int count = 1; count <= RODS_MOST; count++) {
        if (within(electrode_rods_ohm(soil_ohm_m, length_m, diameter_m, count, spacing_m), target_ohm)) {
            return count;
        }
    }
    return 0;
}

double electrode_depth_for_m(double soil_ohm_m, double length_m, double diameter_m, double target_ohm)
{
    for (int count = 1; within(count * length_m, design_practice()->rod_deepest_m); count++) {
        if (within(electrode_rod_ohm(soil_ohm_m, count * length_m, diameter_m), target_ohm)) {
            return count * length_m;
        }
    }
    return 0;
}

static void estimate(const struct Survey *survey, struct PlanElectrode *out)
{
    const struct Earthing *earthing = &survey->earthing;
    if (!earthing->rods.given || !earthing->rod_length_m.given) {
        return;
    }
    const double soil = survey->conditions.soil_electrical_ohm_m.value;
    const double length_m = earthing->rod_length_m.value;
    const double diameter_m = earthing->rod_diameter_mm.value / 1000;
    const double spacing_m = electrode_spacing_m(earthing);
    out->one_rod_ohm = electrode_rod_ohm(soil, length_m, diameter_m);
    out->estimate_ohm = electrode_rods_ohm(soil, length_m, diameter_m, (int)earthing->rods.value, spacing_m);
    /* Once it was measured the soil is what the reading says it is. */
    const double reading = earthing->measured_ohm.given ? earthing->measured_ohm.value / out->estimate_ohm : 1;
    out->rods_for_steady =
        electrode_rods_for(soil * reading, length_m, diameter_m, spacing_m, clause_figures()->electrode_steady_ohm);
    out->rods_for_target = electrode_rods_for(soil * reading, length_m, diameter_m, spacing_m, out->target_ohm);
    out->depth_for_target_m = electrode_depth_for_m(soil * reading, length_m, diameter_m, out->target_ohm);
}

/* How many rods, or how deep, for the target; the soil is what the reading says where there is one. */
static const struct Say *word_target(struct Arena *arena, const struct PlanElectrode *electrode)
{
    const bool read = electrode->measured_ohm > 0;
    const struct SayArg target = say_digits(electrode->target_ohm, 4, UNIT_OHM);
    const struct SayArg rods = say_count(electrode->rods_for_target);
    const struct SayArg depth = say_digits(electrode->depth_for_target_m, 4, UNIT_M);
    if (electrode->rods_for_target > 0 && electrode->depth_for_target_m > 0) {
        return say(arena, read ? SAY_TARGET_BY_EITHER_AS_READ : SAY_TARGET_BY_EITHER_ESTIMATED, target, rods, depth);
    }
    if (electrode->rods_for_target > 0) {
        return say(arena, read ? SAY_TARGET_BY_RODS_AS_READ : SAY_TARGET_BY_RODS_ESTIMATED, target, rods);
    }
    if (electrode->depth_for_target_m > 0) {
        return say(arena, read ? SAY_TARGET_BY_DEPTH_AS_READ : SAY_TARGET_BY_DEPTH_ESTIMATED, target, depth);
    }
    return say(arena, SAY_TARGET_BY_NEITHER, target, say_count(RODS_MOST),
               say_digits(design_practice()->rod_deepest_m, 4, UNIT_M));
}

static const struct Say *describe(struct Arena *arena, const struct Survey *survey,
                                  const struct PlanElectrode *electrode)
{
    const struct Earthing *earthing = &survey->earthing;
    const struct Say *said = NULL;
    if (electrode->estimate_ohm > 0) {
        said = say(arena, SAY_RODS_ESTIMATE, say_count((int)earthing->rods.value),
                   say_digits(earthing->rod_length_m.value, 4, UNIT_M),
                   say_digits(survey->conditions.soil_electrical_ohm_m.value, 4, UNIT_OHM_M),
                   say_fixed(electrode->estimate_ohm, 1, UNIT_OHM));
    }
    said = say_then(arena, said,
                    electrode->measured_ohm > 0
                        ? say(arena, SAY_RODS_MEASURED, say_digits(electrode->measured_ohm, 4, UNIT_OHM))
                        : say(arena, SAY_RODS_TO_BE_MEASURED));
    if (electrode->used_ohm > clause_figures()->electrode_steady_ohm) {
        said =
            say_then(arena, said,
                     say(arena, SAY_RODS_NOT_STEADY, say_digits(clause_figures()->electrode_steady_ohm, 4, UNIT_OHM)));
    }
    return electrode->estimate_ohm > 0 ? say_then(arena, said, word_target(arena, electrode)) : said;
}

struct PlanElectrode electrode_figures(const struct Edition *edition, const struct Survey *survey)
{
    const struct Earthing *earthing = &survey->earthing;
    struct PlanElectrode electrode = {.due = earthing->far_end == FAR_END_ISLAND};
    if (!electrode.due) {
        return electrode;
    }
    electrode.target_ohm = earthing->electrode_target_ohm.value;
    estimate(survey, &electrode);
    electrode.measured_ohm = earthing->measured_ohm.given ? earthing->measured_ohm.value : 0;
    electrode.used_ohm = electrode.measured_ohm > 0 ? electrode.measured_ohm : electrode.estimate_ohm;
    electrode.earthing_conductor_mm2 = buried_earthing_mm2(edition, true, false);
    return electrode;
}

struct PlanElectrode electrode_of(struct Arena *arena, const struct Edition *edition, const struct Survey *survey)
{
    struct PlanElectrode electrode = electrode_figures(edition, survey);
    electrode.text = electrode.due ? describe(arena, survey, &electrode) : NULL;
    return electrode;
}
