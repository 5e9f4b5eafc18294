/* The working of the design current: each load and each line. */
#include "rating_private.h"

static const char source_of_demand[] = "BS 7671 311.1";

static bool lies_on(int line_of_load, int line)
{
    return line_of_load == LOAD_ON_EVERY_LINE || line_of_load == line;
}

/* "2000 / (230 x 0.9) x 0.6" */
static void add_load(struct Steps *steps, const struct RunDesign *run, int index, int line)
{
    const struct Load *load = &run->run->loads[index];
    struct TextBuilder what = text_builder(steps->arena);
    struct TextBuilder formula = text_builder(steps->arena);
    struct TextBuilder numbers = text_builder(steps->arena);
    text_print(&what, "load %d", index + 1);
    if (run->phases == 3 && line == LOAD_ON_EVERY_LINE) {
        text_add(&what, ", on each line");
    } else if (run->phases == 3) {
        text_print(&what, ", put on line L%d", line + 1);
    }
    if (!load->power_w.given) {
        text_add(&formula, "the current surveyed");
        text_add(&numbers, load->diversity.value < 1 ? steps_number(steps, load->current_a.value) : "");
    } else if (load->power_is_apparent) {
        text_add(&formula, load->phases == 3 ? "S / (3 U0)" : "S / U0");
        text_print(&numbers, load->phases == 3 ? "%s / (3 x %s)" : "%s / %s", steps_number(steps, load->power_w.value),
                   steps_number(steps, run->u0_v));
    } else {
        text_add(&formula, load->phases == 3 ? "P / (3 U0 cos)" : "P / (U0 cos)");
        text_print(&numbers, load->phases == 3 ? "%s / (3 x %s x %s)" : "%s / (%s x %s)",
                   steps_number(steps, load->power_w.value), steps_number(steps, run->u0_v),
                   steps_number(steps, load->power_factor.value));
    }
    if (load->diversity.value < 1) {
        text_add(&formula, " times diversity");
        text_print(&numbers, " x %s", steps_number(steps, load->diversity.value));
    }
    steps_figure(steps, text_done(&what), text_done(&formula), text_done(&numbers), load_current_a(load, run->u0_v),
                 "A", source_of_demand);
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
    const char *what = run->phases == 3 ? arena_print(steps->arena, "line L%d", line + 1) : "design current, Ib";
    const char *formula = count > 1 ? "the loads added up" : count == 1 ? "the one load on it" : "no load on it";
    steps_figure(steps, what, formula, count > 1 ? text_done(&numbers) : "", run->demand.currents.line_a[line], "A",
                 source_of_demand);
}

void work_load(struct Arena *arena, const struct RunDesign *run, struct Check *out)
{
    if (run->brief) {
        return;
    }
    struct Steps steps = steps_begin(arena);
    for (int i = 0; i < run->run->load_count; i++) {
        add_load(&steps, run, i, run->loads.loads[i].line);
    }
    for (int line = 0; line < run->demand.currents.lines; line++) {
        add_line(&steps, run, line);
    }
    if (run->phases == 3) {
        steps_figure(&steps, "design current, Ib",
                     arena_print(arena, "the heaviest line, L%d", run->demand.heaviest + 1), "", run->demand.design_a,
                     "A", source_of_demand);
    }
    steps_figure(&steps, "rating of the device, In",
                 run->run->device.rating_a.given ? "as surveyed" : "the smallest standard one that carries Ib", "",
                 run->rating_a, "A", steps_source(&steps, device_ratings_ref(run->run->device.kind)));
    steps_end(&steps, out);
}
