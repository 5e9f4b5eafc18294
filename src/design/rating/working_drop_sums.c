/* The rows that every drop of several loads has: their currents added up, a metre of it, the run. */
#include "rating_private.h"

#include <math.h>

static bool belongs(const struct DropTerms *terms, const struct LineLoad *load, int line)
{
    return (line == LOADS_OF_ANY_LINE || load->line == line) && drop_adds(terms, load);
}

static void add_row(struct Steps *steps, struct TextBuilder *numbers, enum Saying what, enum Saying formula,
                    const struct Say *of, double value)
{
    if (numbers->length > 0 && value > 0) {
        steps_figure(steps, say_part(say(steps->arena, what, say_part(of))), say_term(formula), text_done(numbers),
                     value, UNIT_A, steps_appendix_4(steps, "6"));
    }
}

/* "30 x 0.8 + 12": the loads of a line added up, as many rows as it takes. */
struct LoadSums steps_load_sums(struct Steps *steps, const struct RunDesign *run, const struct DropTerms *terms,
                                int line, const struct Say *of)
{
    struct LoadSums sums = {0};
    struct TextBuilder active = text_builder(steps->arena);
    struct TextBuilder reactive = text_builder(steps->arena);
    struct TextBuilder unknown = text_builder(steps->arena);
    for (int i = 0; i < run->loads.count; i++) {
        const struct LineLoad *load = &run->loads.loads[i];
        if (!belongs(terms, load, line)) {
            continue;
        }
        const double cosine = load->power_factor;
        const char *current = steps_number(steps, load->current_a);
        sums.count++;
        if (cosine <= 0) {
            text_print(&unknown, "%s%s", unknown.length > 0 ? " + " : "", current);
            sums.unknown_a += load->current_a;
            continue;
        }
        const char *cos_text = steps_number(steps, cosine);
        text_print(&active, "%s%s x %s", active.length > 0 ? " + " : "", current, cos_text);
        text_print(&reactive, "%s%s x sqrt(1 - %s^2)", reactive.length > 0 ? " + " : "", current, cos_text);
        sums.active_a += load->current_a * cosine;
        sums.reactive_a += load->current_a * sqrt(1 - cosine * cosine);
    }
    add_row(steps, &active, SAY_STEP_IN_STEP, SAY_STEP_I_COS_ADDED, of, sums.active_a);
    add_row(steps, &reactive, SAY_STEP_BEHIND, SAY_STEP_I_SIN_ADDED, of, sums.reactive_a);
    add_row(steps, &unknown, SAY_STEP_NOT_KNOWN, SAY_STEP_I_ADDED, of, sums.unknown_a);
    return sums;
}

/* "r x active + x x reactive + z x unknown" without the parts that are nothing. */
void steps_drop_of_metre(struct Steps *steps, const struct DropTerms *terms, enum Saying what, struct SayArg source)
{
    const struct {
        double figure, current_a;
        enum Saying product;
    } parts[] = {{terms->figure.r, terms->active_a, SAY_STEP_R_IN_STEP},
                 {terms->figure.x, terms->reactive_a, SAY_STEP_X_BEHIND},
                 {terms->figure.z, terms->unknown_a, SAY_STEP_Z_NOT_KNOWN}};
    const struct Say *formula = NULL;
    struct TextBuilder numbers = text_builder(steps->arena);
    for (int i = 0; i < 3; i++) {
        if (fabs(parts[i].figure * parts[i].current_a) > 0) {
            formula = say_list(steps->arena, SAY_STEP_ADDED, formula, say_term(parts[i].product));
            text_print(&numbers, "%s%s x %s", numbers.length > 0 ? " + " : "", steps_number(steps, parts[i].figure),
                       steps_number(steps, parts[i].current_a));
        }
    }
    steps_figure(steps, say_term(what), say_part(formula), text_done(&numbers), terms->mv_per_m, UNIT_MV_PER_M, source);
}

void steps_drop_of_length(struct Steps *steps, const struct RunDesign *run, const struct DropTerms *terms,
                          enum Saying what, double volts)
{
    steps_figure(steps, say_term(what), say_term(SAY_STEP_DROP_BY_METRES),
                 arena_print(steps->arena, "%s x %s / 1000", steps_number(steps, terms->mv_per_m),
                             steps_number(steps, run->electrical_length_m)),
                 volts, UNIT_V, steps_appendix_4(steps, "6"));
}
