/* The working of the outbuilding's electrode and of its main bond. */
#include "fault_private.h"

static const struct Cite source_of_rods = {.standard = "BS 7430"};

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
    steps_figure(steps, say_term(count > 1 ? SAY_STEP_ONE_ROD : SAY_STEP_THE_ROD), say_term(SAY_STEP_ROD_FORMULA),
                 arena_print(arena, "%s / (2 x pi x %s) x (ln(8 x %s / %s) - 1)", soil, length, length,
                             steps_number(steps, diameter_m)),
                 rod_ohm, UNIT_OHM, steps_cite(steps, source_of_rods));
    if (count < 2) {
        return;
    }
    const double spacing_m = electrode_spacing_m(earthing);
    const double lambda = electrode_line_lambda(count);
    const double a = electrode_influence(run->soil_ohm_m, rod_ohm, spacing_m);
    steps_figure(steps, say_term(SAY_STEP_RODS_LAMBDA), say_term(SAY_STEP_RODS_LAMBDA_FORMULA),
                 lambda_numbers(steps, count), lambda, UNIT_NONE, steps_cite(steps, source_of_rods));
    steps_figure(steps, say_term(SAY_STEP_RODS_NEAR), say_term(SAY_STEP_RODS_NEAR_FORMULA),
                 arena_print(arena, "%s / (2 x pi x %s x %s)", soil, steps_number(steps, rod_ohm),
                             steps_number(steps, spacing_m)),
                 a, UNIT_NONE, steps_cite(steps, source_of_rods));
    steps_figure(steps, say_term(SAY_STEP_RODS_TOGETHER), say_term(SAY_STEP_RODS_TOGETHER_FORMULA),
                 arena_print(arena, "%s x (1 + %s x %s) / %d", steps_number(steps, rod_ohm),
                             steps_number(steps, lambda), steps_number(steps, a), count),
                 run->electrode_ohm, UNIT_OHM, steps_cite(steps, source_of_rods));
}

void work_electrode(struct Arena *arena, const struct RunDesign *run, double residual_a, struct Check *out)
{
    struct Steps steps = steps_begin(arena);
    if (run->earthing->measured_ohm.given) {
        steps_figure(&steps, say_term(SAY_STEP_ELECTRODE), say_term(SAY_STEP_AS_MEASURED), "", run->electrode_ohm,
                     UNIT_OHM, say_term(SAY_STEP_AS_SURVEYED));
    } else {
        add_rods(&steps, run);
    }
    steps_figure(
        &steps, say_term(SAY_STEP_TOUCH), say_term(SAY_STEP_TOUCH_FORMULA),
        arena_print(arena, "%s x %s", steps_number(&steps, run->electrode_ohm), steps_number(&steps, residual_a)),
        out->value, UNIT_V, steps_clause(&steps, "411.5.3"));
    steps_end(&steps, out);
}

static void add_due(struct Steps *steps, const struct RunDesign *run, double due_mm2)
{
    if (run->tn_c_s) {
        steps_figure(
            steps, say_term(SAY_STEP_LEAST_BOND),
            say_part(say(steps->arena, SAY_STEP_ROW_OF_NEUTRAL, steps_value(run->supply_neutral_mm2, UNIT_MM2))), "",
            due_mm2, UNIT_MM2, steps_source(steps, bonding_tn_c_s_ref(run->edition)));
        return;
    }
    steps_figure(steps, say_term(SAY_STEP_HALF_EARTHING), say_calculation("S / 2"),
                 arena_print(steps->arena, "%s / 2", steps_number(steps, run->earthing_conductor_mm2)),
                 run->earthing_conductor_mm2 / 2, UNIT_MM2, steps_clause(steps, "544.1.1"));
    steps_figure(
        steps, say_term(SAY_STEP_LEAST_BOND),
        say_part(say(steps->arena, SAY_STEP_NEXT_SIZE_UP, steps_value(6, UNIT_MM2), steps_value(25, UNIT_MM2))), "",
        due_mm2, UNIT_MM2, steps_clause(steps, "544.1.1"));
}

void work_bonding(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    struct Armour armour;
    double ten_ohm_per_m;
    struct Steps steps = steps_begin(arena);
    add_due(&steps, run, out->limit);
    if (run->run->cable.cpc == CPC_ARMOUR &&
        armour_figures(run->terms.type, run->terms.cores, trial->size_mm2, &armour) &&
        conductor_resistance(10, &ten_ohm_per_m)) {
        steps_figure(&steps, say_term(SAY_STEP_AS_COPPER),
                     say_part(say(arena, SAY_STEP_AS_COPPER_FORMULA, steps_value(10, UNIT_MM2))),
                     arena_print(arena, "10 x %s / %s", steps_number(&steps, ten_ohm_per_m * 1000),
                                 steps_number(&steps, armour.max_ohm_per_m * 1000)),
                     out->value, UNIT_MM2,
                     say_part(say(arena, SAY_SEMICOLON, steps_source(&steps, conductor_resistance_ref()),
                                  steps_source(&steps, armour_ref()))));
    } else {
        steps_figure(
            &steps, say_term(SAY_STEP_PROTECTIVE_COPPER),
            say_term(run->run->cable.cpc == CPC_SEPARATE ? SAY_STEP_SEPARATE_SURVEYED : SAY_STEP_PROTECTIVE_CORE), "",
            out->value, UNIT_MM2, say_term(SAY_STEP_AS_SURVEYED));
    }
    steps_end(&steps, out);
}
