/* The working of the outbuilding's electrode and of its main bond. */
#include "fault_private.h"

#include <math.h>

static const char source_of_rods[] = "BS 7430";

/* "2 x (2 / 1 + 1 / 2) / 3": the group factor of rods in line. */
static const char *lambda_numbers(const struct Steps *steps, int count)
{
    struct TextBuilder text = text_builder(steps->arena);
    text_add(&text, "2 x (");
    for (int k = 1; k < count; k++) {
        text_print(&text, "%s%d / %d", k > 1 ? " + " : "", count - k, k);
    }
    text_print(&text, ") / %d", count);
    return text_done(&text);
}

static void add_rods(struct Steps *steps, const struct RunDesign *run)
{
    struct Arena *arena = steps->arena;
    const struct Earthing *earthing = run->earthing;
    const int count = (int)earthing->rods.value;
    const double diameter_m = earthing->rod_diameter_mm.value / 1000;
    const double rod_ohm = electrode_rod_ohm(run->soil_ohm_m, earthing->rod_length_m.value, diameter_m);
    const char *soil = steps_number(steps, run->soil_ohm_m);
    const char *length = steps_number(steps, earthing->rod_length_m.value);
    steps_figure(steps, count > 1 ? "one rod, R1" : "the rod, RA", "rho / (2 pi L) x (ln(8 L / d) - 1)",
                 arena_print(arena, "%s / (2 x pi x %s) x (ln(8 x %s / %s) - 1)", soil, length, length,
                             steps_number(steps, diameter_m)),
                 rod_ohm, "ohm", source_of_rods);
    if (count < 2) {
        return;
    }
    const double spacing_m = electrode_spacing_m(earthing);
    const double lambda = electrode_line_lambda(count);
    const double a = electrode_influence(run->soil_ohm_m, rod_ohm, spacing_m);
    steps_figure(steps, "group factor of the rods in line, lambda", "2 x (sum of (n - k) / k) / n",
                 lambda_numbers(steps, count), lambda, "", source_of_rods);
    steps_figure(steps, "how near the rods stand, a", "rho / (2 pi R1 s)",
                 arena_print(arena, "%s / (2 x pi x %s x %s)", soil, steps_number(steps, rod_ohm),
                             steps_number(steps, spacing_m)),
                 a, "", source_of_rods);
    steps_figure(steps, "the rods together, RA", "R1 x (1 + lambda x a) / n",
                 arena_print(arena, "%s x (1 + %s x %s) / %d", steps_number(steps, rod_ohm),
                             steps_number(steps, lambda), steps_number(steps, a), count),
                 run->electrode_ohm, "ohm", source_of_rods);
}

void work_electrode(struct Arena *arena, const struct RunDesign *run, double residual_a, struct Check *out)
{
    if (run->brief) {
        return;
    }
    struct Steps steps = steps_begin(arena);
    if (run->earthing->measured_ohm.given) {
        steps_figure(&steps, "resistance of the electrode, RA", "as measured", "", run->electrode_ohm, "ohm",
                     "as surveyed");
    } else {
        add_rods(&steps, run);
    }
    steps_figure(
        &steps, "touch voltage", "RA x I delta n",
        arena_print(arena, "%s x %s", steps_number(&steps, run->electrode_ohm), steps_number(&steps, residual_a)),
        out->value, "V", "BS 7671 411.5.3");
    steps_end(&steps, out);
}

static void add_due(struct Steps *steps, const struct RunDesign *run, double due_mm2)
{
    if (run->tn_c_s) {
        steps_figure(steps, "least main bond",
                     arena_print(steps->arena, "the row for a supply neutral of %s mm2",
                                 steps_number(steps, run->supply_neutral_mm2)),
                     "", due_mm2, "mm2", steps_source(steps, bonding_tn_c_s_ref()));
        return;
    }
    steps_figure(steps, "half the earthing conductor", "S / 2",
                 arena_print(steps->arena, "%s / 2", steps_number(steps, run->earthing_conductor_mm2)),
                 run->earthing_conductor_mm2 / 2, "mm2", "BS 7671 544.1.1");
    steps_figure(steps, "least main bond", "the next size up from that, 6 mm2 at least and 25 mm2 at most", "", due_mm2,
                 "mm2", "BS 7671 544.1.1");
}

void work_bonding(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    struct Armour armour;
    double ten_ohm_per_m;
    if (run->brief) {
        return;
    }
    struct Steps steps = steps_begin(arena);
    add_due(&steps, run, out->limit);
    if (run->run->cable.cpc == CPC_ARMOUR &&
        armour_figures(run->terms.type, run->terms.cores, trial->size_mm2, &armour) &&
        conductor_resistance(10, &ten_ohm_per_m)) {
        steps_figure(&steps, "copper that conducts as well as the armour",
                     "10 mm2 x ohm/km of 10 mm2 copper / ohm/km of the armour",
                     arena_print(arena, "10 x %s / %s", steps_number(&steps, ten_ohm_per_m * 1000),
                                 steps_number(&steps, armour.max_ohm_per_m * 1000)),
                     out->value, "mm2",
                     arena_print(arena, "IEC 60228 Table 2; %s", steps_source(&steps, armour_ref())));
    } else {
        steps_figure(&steps, "copper of the protective conductor",
                     run->run->cable.cpc == CPC_SEPARATE ? "the separate conductor, as surveyed"
                                                         : "the protective core",
                     "", out->value, "mm2", "as surveyed");
    }
    steps_end(&steps, out);
}
