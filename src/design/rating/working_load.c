/* The working of the design current: each load and each line. */
#include "rating_private.h"

static bool lies_on(int line_of_load, int line)
{
    return line_of_load == LOAD_ON_EVERY_LINE || line_of_load == line;
}

static struct SayArg load_named(const struct Steps *steps, const struct RunDesign *run, int index, int line)
{
    struct Arena *arena = steps->arena;
    const struct SayArg number = say_count(index + 1);
    return say_part(run->phases != 3             ? say(arena, SAY_STEP_LOAD, number)
                    : line == LOAD_ON_EVERY_LINE ? say(arena, SAY_STEP_LOAD_ON_EACH_LINE, number)
                                                 : say(arena, SAY_STEP_LOAD_PUT_ON_LINE, number, say_count(line + 1)));
}

/* "2000 / (230 x 0.9) x 0.6" */
static void add_load(struct Steps *steps, const struct RunDesign *run, int index, int line)
{
    const struct Load *load = &run->run->loads[index];
    struct SayArg formula = say_term(SAY_STEP_CURRENT_SURVEYED);
    struct TextBuilder numbers = text_builder(steps->arena);
    if (!load->power_w.given) {
        text_add(&numbers, load->diversity.value < 1 ? steps_number(steps, load->current_a.value) : "");
    } else if (load->power_is_apparent) {
        formula = say_name(load->phases == 3 ? "S / (3 U0)" : "S / U0");
        text_print(&numbers, load->phases == 3 ? "%s / (3 x %s)" : "%s / %s", steps_number(steps, load->power_w.value),
                   steps_number(steps, run->u0_v));
    } else {
        formula = say_name(load->phases == 3 ? "P / (3 U0 cos)" : "P / (U0 cos)");
        text_print(&numbers, load->phases == 3 ? "%s / (3 x %s x %s)" : "%s / (%s x %s)",
                   steps_number(steps, load->power_w.value), steps_number(steps, run->u0_v),
                   steps_number(steps, load->power_factor.value));
    }
    if (load->diversity.value < 1) {
        formula = say_part(say(steps->arena, SAY_STEP_TIMES_DIVERSITY, formula));
        text_print(&numbers, " x %s", steps_number(steps, load->diversity.value));
    }
    steps_figure(steps, load_named(steps, run, index, line), formula, text_done(&numbers),
                 load_current_a(load, run->u0_v), UNIT_A, steps_clause(steps, "311.1"));
}

static void add_line(struct Steps *steps, const struct RunDesign *run, int line)
{
    struct TextBuilder numbers = text_builder(steps->arena);
    int count = 0;
    for (int i = 0; i < run->run->load_count; i++) {
        if (lies_on(run->loads.loads[i].line, line)) {
            text_print(&numbers, "%s%s", count++ > 0 ? " + " : "", steps_number(steps, run->loads.loads[i].current_a));
        }
    }
    const struct SayArg what = run->phases == 3 ? say_part(say(steps->arena, SAY_STEP_LINE, say_count(line + 1)))
                                                : say_term(SAY_STEP_DESIGN_CURRENT);
    const enum Saying formula = count > 1 ? SAY_STEP_LOADS_ADDED : count == 1 ? SAY_STEP_ONE_LOAD : SAY_STEP_NO_LOAD;
    steps_figure(steps, what, say_term(formula), count > 1 ? text_done(&numbers) : "",
                 run->demand.currents.line_a[line], UNIT_A, steps_clause(steps, "311.1"));
}

void work_load(struct Arena *arena, const struct RunDesign *run, struct Check *out)
{
    struct Steps steps = steps_begin(arena);
    for (int i = 0; i < run->run->load_count; i++) {
        add_load(&steps, run, i, run->loads.loads[i].line);
    }
    for (int line = 0; line < run->demand.currents.lines; line++) {
        add_line(&steps, run, line);
    }
    if (run->phases == 3) {
        steps_figure(&steps, say_term(SAY_STEP_DESIGN_CURRENT),
                     say_part(say(arena, SAY_STEP_HEAVIEST_LINE, say_count(run->demand.heaviest + 1))), "",
                     run->demand.design_a, UNIT_A, steps_clause(&steps, "311.1"));
    }
    const bool given = run->run->device.rating_a.given;
    steps_figure(&steps, say_term(SAY_STEP_DEVICE_RATING),
                 say_term(given ? SAY_STEP_AS_SURVEYED : SAY_STEP_SMALLEST_RATING), "", run->rating_a, UNIT_A,
                 steps_source(&steps, device_ratings_ref(run->run->device.kind)));
    steps_end(&steps, out);
}
