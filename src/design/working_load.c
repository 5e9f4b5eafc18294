/* The working of the design current: each load, each line, and the power factor that several loads come to. */
#include "steps_private.h"

#include <math.h>

static const char source_of_demand[] = "BS 7671 311.1";

/* The lines that the loads of a run lie on; NULL without memory. */
static const int *lines_of(struct Arena *arena, const struct RunDesign *run)
{
    int *lines = arena_array(arena, (size_t)run->run->load_count, sizeof *lines);
    if (lines != NULL) {
        load_lines(run->run, run->phases, run->u0_v, lines);
    }
    return lines;
}

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

static void add_line(struct Steps *steps, const struct RunDesign *run, const int *lines, int line)
{
    struct TextBuilder numbers = text_builder(steps->arena);
    int count = 0;
    for (int i = 0; i < run->run->load_count; i++) {
        if (lies_on(lines[i], line)) {
            text_print(&numbers, "%s%s", count++ > 0 ? " + " : "",
                       steps_number(steps, load_current_a(&run->run->loads[i], run->u0_v)));
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
    const int *lines = lines_of(arena, run);
    struct Steps steps = steps_begin(arena);
    if (lines == NULL) {
        return;
    }
    for (int i = 0; i < run->run->load_count; i++) {
        add_load(&steps, run, i, lines[i]);
    }
    for (int line = 0; line < run->demand.currents.lines; line++) {
        add_line(&steps, run, lines, line);
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

/* Currents add up as arrows: what is in step with the voltage, and what is a quarter turn behind it. */
void work_power_factor(struct Steps *steps, const struct RunDesign *run)
{
    const int *lines = run->demand.power_factor > 0 ? lines_of(steps->arena, run) : NULL;
    struct TextBuilder active = text_builder(steps->arena);
    struct TextBuilder reactive = text_builder(steps->arena);
    double active_a = 0;
    double reactive_a = 0;
    int count = 0;
    for (int i = 0; lines != NULL && i < run->run->load_count; i++) {
        if (!lies_on(lines[i], run->demand.heaviest)) {
            continue;
        }
        const double current_a = load_current_a(&run->run->loads[i], run->u0_v);
        const double cosine = run->run->loads[i].power_factor.value;
        const char *current = steps_number(steps, current_a);
        text_print(&active, "%s%s x %s", count > 0 ? " + " : "", current, steps_number(steps, cosine));
        text_print(&reactive, "%s%s x sqrt(1 - %s^2)", count > 0 ? " + " : "", current, steps_number(steps, cosine));
        active_a += current_a * cosine;
        reactive_a += current_a * sqrt(1 - cosine * cosine);
        count++;
    }
    if (count < 2) {
        return;
    }
    static const char source[] = "BS 7671 Appendix 4, 6.2";
    steps_figure(steps, "current in step with the voltage", "I cos of each load, added up", text_done(&active),
                 active_a, "A", source);
    steps_figure(steps, "current a quarter turn behind it", "I sin of each load, added up", text_done(&reactive),
                 reactive_a, "A", source);
    steps_figure(steps, "power factor of them together, cos", "in step / sqrt(in step^2 + behind^2)",
                 arena_print(steps->arena, "%s / sqrt(%s^2 + %s^2)", steps_number(steps, active_a),
                             steps_number(steps, active_a), steps_number(steps, reactive_a)),
                 run->demand.power_factor, "", source);
}
