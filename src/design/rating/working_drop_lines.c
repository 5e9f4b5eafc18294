/* The working of unequal lines: every current turned to the angle at which it meets the voltage that is looked at, by
 * halves and square roots of three. */
#include "rating_private.h"

#include <math.h>

static const char source[] = "BS 7671 525; currents added as phasors";

/* How a line's current counts: `cosine` and `sine` of the turn, as often as it flows. */
struct Turn {
    int line;
    const char *cosine, *sine; /* "" when nothing of it counts */
    bool sine_minus, cosine_minus;
    const char *times;
};

enum { TURNS = 4 };

static int line_behind(const struct DropTerms *terms, int steps)
{
    return (terms->line + (terms->reversed ? 3 - steps : steps)) % 3;
}

static void turns_of(const struct DropTerms *terms, struct Turn turns[TURNS])
{
    const int behind = line_behind(terms, 1);
    const int ahead = line_behind(terms, 2);
    const bool drop = terms->of == DROP_TO_NEUTRAL;
    turns[0] = (struct Turn){.line = terms->line, .cosine = drop ? "2" : "1", .sine = "", .times = drop ? "2" : "1"};
    turns[1] =
        (struct Turn){.line = LOAD_ON_EVERY_LINE, .cosine = drop ? "1" : "", .sine = "", .times = drop ? "1" : ""};
    turns[2] = (struct Turn){behind, "0.5", "sqrt(3) / 2", true, true, "1"};
    turns[3] = (struct Turn){ahead, "0.5", "sqrt(3) / 2", false, true, "1"};
    for (int i = 0; i < TURNS && terms->rise; i++) {
        turns[i].cosine_minus = !turns[i].cosine_minus;
        turns[i].sine_minus = !turns[i].sine_minus;
    }
}

/* " - sqrt(3) / 2 x 24"; an expression does not begin with a sign before a word. */
static void add_part(struct TextBuilder *numbers, const struct Steps *steps, const char *factor, bool minus,
                     double current_a)
{
    if (*factor == '\0' || fabs(current_a) <= 0) {
        return;
    }
    const char *sign = minus ? numbers->length > 0 ? " - " : "0 - " : numbers->length > 0 ? " + " : "";
    text_print(numbers, "%s%s x %s", sign, factor, steps_number(steps, current_a));
}

static const char *line_name(const struct Steps *steps, int line)
{
    return line == LOAD_ON_EVERY_LINE ? "the three-phase loads" : arena_print(steps->arena, "L%d", line + 1);
}

void steps_phasors(struct Steps *steps, const struct RunDesign *run, const struct DropTerms *terms)
{
    struct Turn turns[TURNS];
    struct TextBuilder active = text_builder(steps->arena);
    struct TextBuilder reactive = text_builder(steps->arena);
    struct TextBuilder unknown = text_builder(steps->arena);
    turns_of(terms, turns);
    for (int i = 0; i < TURNS; i++) {
        const struct Turn *turn = &turns[i];
        const struct LoadSums sums = steps_load_sums(steps, run, terms, turn->line,
                                                     arena_print(steps->arena, ", %s", line_name(steps, turn->line)));
        add_part(&active, steps, turn->cosine, turn->cosine_minus, sums.active_a);
        add_part(&active, steps, turn->sine, turn->sine_minus, sums.reactive_a);
        add_part(&reactive, steps, turn->cosine, turn->cosine_minus, sums.reactive_a);
        add_part(&reactive, steps, turn->sine, !turn->sine_minus, sums.active_a);
        add_part(&unknown, steps, turn->times, false, sums.unknown_a);
    }
    static const char own_and_others[] =
        "its own loads out and back, those of the other lines by the neutral, 120 degrees away";
    const char *seen = terms->of == CURRENT_IN_NEUTRAL ? "the other lines' currents are 120 degrees away"
                       : terms->rise                   ? "by the neutral, 120 degrees away, against the voltage"
                                                       : own_and_others;
    if (active.length > 0) {
        steps_figure(steps, "all of them, in step with the voltage looked at", seen, text_done(&active),
                     terms->active_a, "A", source);
    }
    if (reactive.length > 0 && fabs(terms->figure.x) > 0) {
        steps_figure(steps, "all of them, a quarter turn behind it", "the same, turned", text_done(&reactive),
                     terms->reactive_a, "A", source);
    }
    if (unknown.length > 0) {
        steps_figure(steps, "not known, at whatever angle is worst", "each as often as it flows", text_done(&unknown),
                     terms->unknown_a, "A", source);
    }
}

/* The rows of a drop or a rise, up to mV a metre. */
static void add_terms(struct Steps *steps, const struct RunDesign *run, const struct DropTerms *terms)
{
    steps_phasors(steps, run, terms);
    steps_drop_of_metre(steps, terms, terms->rise ? "rise of a metre" : "drop of a metre", source);
}

/* The larger of two columns, or for z what r and x come to. */
static void add_of_conductor(struct Steps *steps, const struct RunDesign *run, const char *symbol, double pair,
                             double between, double value)
{
    struct Arena *arena = steps->arena;
    const bool half = pair / 2 >= between / sqrt(3.0);
    steps_figure(steps, arena_print(arena, "%s of one conductor", symbol),
                 half ? "half the single-phase figure; the three-phase one over sqrt 3 is no larger"
                      : "the three-phase figure over sqrt 3; half the single-phase one is less",
                 half ? arena_print(arena, "%s / 2", steps_number(steps, pair))
                      : arena_print(arena, "%s / sqrt(3)", steps_number(steps, between)),
                 value, "mV/A/m", steps_source(steps, drop_ref(run->drop_table)));
}

static void add_conductor(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial)
{
    const struct DropFigure *one = &trial->drop.figure;
    struct DropFigure pair;
    struct DropFigure between;
    if (!drop_figure(run->drop_table, trial->size_mm2, 1, &pair) ||
        !drop_figure(run->drop_table, trial->size_mm2, 3, &between)) {
        return;
    }
    add_of_conductor(steps, run, "r", pair.r, between.r, one->r);
    if (one->x > 0) {
        add_of_conductor(steps, run, "x", pair.x, between.x, one->x);
    }
    if (trial->drop.unknown_a <= 0 && trial->rise.unknown_a <= 0) {
        return;
    }
    if (one->z > fmax(pair.z / 2, between.z / sqrt(3.0)) * (1 + 1e-12)) {
        steps_figure(
            steps, "z of one conductor", "sqrt(r^2 + x^2), more than the columns for z give",
            arena_print(steps->arena, "sqrt(%s^2 + %s^2)", steps_number(steps, one->r), steps_number(steps, one->x)),
            one->z, "mV/A/m", source);
    } else {
        add_of_conductor(steps, run, "z", pair.z, between.z, one->z);
    }
}

void steps_left_off(struct Steps *steps, const struct RunDesign *run, const struct DropTerms *terms)
{
    struct TextBuilder off = text_builder(steps->arena);
    for (int i = 0; i < run->loads.count; i++) {
        if (!drop_adds(terms, &run->loads.loads[i])) {
            text_print(&off, "%s%d", off.length > 0 ? ", " : "", i + 1);
        }
    }
    const char *turning = terms->reversed ? "L1 L3 L2" : "L1 L2 L3";
    steps_add(steps,
              terms->of == CURRENT_IN_NEUTRAL ? "line to whose voltage all is turned"
              : terms->rise                   ? "line that rises most"
                                              : "line that drops most",
              arena_print(steps->arena, "of the lines, in both orders: here they turn %s", turning), "",
              line_name(steps, terms->line), source);
    if (off.length > 0) {
        steps_add(steps, "loads taken as off", "they would lessen it, and any load may be off while others are on", "",
                  text_done(&off), source);
    }
}

void work_drop_of_lines(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial)
{
    add_conductor(steps, run, trial);
    steps_left_off(steps, run, &trial->drop);
    add_terms(steps, run, &trial->drop);
    steps_drop_of_length(steps, run, &trial->drop, "drop of the run", trial->drop_v);
}

void work_rise(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial)
{
    steps_left_off(steps, run, &trial->rise);
    add_terms(steps, run, &trial->rise);
    steps_drop_of_length(steps, run, &trial->rise, "rise at the far end", trial->rise_v);
}
