/* The earth fault loop: resistances of line and protective conductor, cold and as warm as a fault finds them. */
#include "fault_private.h"

#include <math.h>

double copper_at(double ohm_20, double degc)
{
    return ohm_20 * (1 + clause_figures()->copper_per_k * (degc - 20));
}

double armour_at(double ohm_20, double degc)
{
    return ohm_20 * (1 + armour_loop()->per_k * (degc - 20));
}

double parallel_ohm(double a_ohm, double b_ohm)
{
    return a_ohm * b_ohm / (a_ohm + b_ohm);
}

bool protective_core_mm2(enum CableType type, double size_mm2, double *out_mm2)
{
    if (cable_kind(type)->family != FAMILY_FLAT) {
        *out_mm2 = size_mm2;
        return true;
    }
    return flat_protective_core_mm2(size_mm2, out_mm2);
}

const struct TableRef *protective_core_ref(enum CableType type)
{
    return cable_kind(type)->family == FAMILY_FLAT ? flat_protective_core_ref() : NULL;
}

/* Ohm per metre at 20 degC and at fault, and how warm that is; the reactance is that of the whole loop. */
struct Path {
    double cold, hot, degc, reactance;
};

static bool core_path(const struct RunDesign *run, double size_mm2, struct Path *out)
{
    double core_mm2;
    if (!protective_core_mm2(run->terms.type, size_mm2, &core_mm2) || !conductor_resistance(core_mm2, &out->cold)) {
        return false;
    }
    out->degc = run->terms.conductor_degc;
    out->hot = copper_at(out->cold, out->degc);
    return true;
}

static bool armour_path(const struct RunDesign *run, double size_mm2, struct Path *out)
{
    struct Armour armour;
    if (!armour_figures(run->terms.type, run->terms.cores, size_mm2, &armour)) {
        return false;
    }
    out->cold = armour.max_ohm_per_m;
    out->degc = run->terms.conductor_degc - clause_figures()->armour_cooler_k;
    out->hot = armour_loop()->lay * armour_at(armour.max_ohm_per_m, out->degc);
    out->reactance = armour_loop()->reactance_ohm_per_m;
    return true;
}

static bool separate_path(const struct RunDesign *run, struct Path *out)
{
    if (run->separate_mm2 <= 0 || !conductor_resistance(run->separate_mm2, &out->cold)) {
        return false;
    }
    out->degc = run->separate_bunched ? clause_figures()->separate_bunched_degc : clause_figures()->separate_apart_degc;
    out->hot = copper_at(out->cold, out->degc);
    return true;
}

/* The copper and the armour of the protective path; what is no part of it stays all 0. The result is what is missing.
 */
static enum Saying protective_path(const struct RunDesign *run, double size_mm2, struct Path *copper,
                                   struct Path *armour)
{
    switch (run->fault_cpc) {
    case CPC_CORE: return core_path(run, size_mm2, copper) ? SAY_NOTHING : SAY_LACKS_RESISTANCE_OF_CORE;
    case CPC_ARMOUR: return armour_path(run, size_mm2, armour) ? SAY_NOTHING : SAY_LACKS_RESISTANCE_OF_ARMOUR;
    case CPC_CORE_AND_ARMOUR:
        /* The core alone is the higher loop: where no figure is held for the armour it will do. */
        armour_path(run, size_mm2, armour);
        return core_path(run, size_mm2, copper) ? SAY_NOTHING : SAY_LACKS_RESISTANCE_OF_CORE;
    case CPC_SEPARATE: return separate_path(run, copper) ? SAY_NOTHING : SAY_LACKS_SIZE_OF_SEPARATE;
    case CPC_NONE:
    case CPC_COUNT: break;
    }
    return SAY_LACKS_PROTECTIVE_CONDUCTOR;
}

/* Side by side where there are two; the reactance of the armour is counted only where it is the whole path. */
static struct Path together(const struct Path *copper, const struct Path *armour)
{
    if (copper->cold <= 0 || armour->cold <= 0) {
        return copper->cold > 0 ? *copper : *armour;
    }
    return (struct Path){.cold = parallel_ohm(copper->cold, armour->cold),
                         .hot = parallel_ohm(copper->hot, armour->hot)};
}

struct Loop loop_of_run(const struct RunDesign *run, double size_mm2)
{
    struct Loop loop = {0};
    struct Path line = {0};
    struct Path copper = {0};
    struct Path armour = {0};
    loop.lacks = protective_path(run, size_mm2, &copper, &armour);
    if (!conductor_resistance(size_mm2, &line.cold)) {
        loop.lacks = SAY_LACKS_RESISTANCE_OF_SIZE;
    }
    const double length_m = run->electrical_length_m;
    loop.line_ohm_per_m = line.cold;
    loop.line_20_ohm = line.cold * length_m;
    loop.line_hot_ohm = copper_at(loop.line_20_ohm, run->terms.conductor_degc);
    if (loop.lacks != SAY_NOTHING) {
        return loop;
    }
    struct Path protective = together(&copper, &armour);
    struct DropFigure figure;
    if (protective.reactance <= 0 && size_mm2 > design_practice()->reactance_above_mm2 &&
        drop_figure(run->edition, run->drop_table, size_mm2, 1, &figure)) {
        protective.reactance = figure.x / 1000; /* the table's is for both conductors of the pair */
    }
    loop.protective_m = run->fault_cpc == CPC_SEPARATE && run->separate_m > 0 ? run->separate_m : length_m;
    loop.protective_20_ohm = protective.cold * loop.protective_m;
    loop.protective_hot_ohm = protective.hot * loop.protective_m;
    loop.reactance_ohm = protective.reactance * length_m;
    loop.copper_ohm_per_m = copper.cold;
    loop.armour_ohm_per_m = armour.cold;
    loop.reactance_ohm_per_m = protective.reactance;
    loop.copper_degc = copper.degc;
    loop.armour_degc = armour.degc;
    return loop;
}

double loop_far_ohm(double before_ohm, const struct Loop *loop)
{
    return before_ohm + hypot(loop->line_hot_ohm + loop->protective_hot_ohm, loop->reactance_ohm);
}
