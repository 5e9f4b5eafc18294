/* The working of unequal lines: every current turned to the angle at which it meets the voltage that is looked at, by
 * halves and square roots of three. */
#include "rating_private.h"

#include <math.h>

static struct SayArg source(const struct Steps *steps)
{
    return say_part(say(steps->arena, SAY_STEP_PHASORS, steps_clause(steps, "525")));
}

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

static const struct Say *line_name(const struct Steps *steps, int line)
{
    return line == LOAD_ON_EVERY_LINE ? say(steps->arena, SAY_STEP_THREE_PHASE_LOADS)
                                      : say(steps->arena, SAY_STEP_LINE_NAME, say_count(line + 1));
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
        const struct LoadSums sums = steps_load_sums(steps, run, terms, turn->line, line_name(steps, turn->line));
        add_part(&active, steps, turn->cosine, turn->cosine_minus, sums.active_a);
        add_part(&active, steps, turn->sine, turn->sine_minus, sums.reactive_a);
        add_part(&reactive, steps, turn->cosine, turn->cosine_minus, sums.reactive_a);
        add_part(&reactive, steps, turn->sine, !turn->sine_minus, sums.active_a);
        add_part(&unknown, steps, turn->times, false, sums.unknown_a);
    }
    const enum Saying seen = terms->of == CURRENT_IN_NEUTRAL ? SAY_STEP_SEEN_IN_NEUTRAL
                             : terms->rise                   ? SAY_STEP_SEEN_IN_RISE
                                                             : SAY_STEP_SEEN_IN_DROP;
    if (active.length > 0) {
        steps_figure(steps, say_term(SAY_STEP_ALL_IN_STEP), say_term(seen), text_done(&active), terms->active_a, UNIT_A,
                     source(steps));
    }
    if (reactive.length > 0 && fabs(terms->figure.x) > 0) {
        steps_figure(steps, say_term(SAY_STEP_ALL_BEHIND), say_term(SAY_STEP_SAME_TURNED), text_done(&reactive),
                     terms->reactive_a, UNIT_A, source(steps));
    }
    if (unknown.length > 0) {
        steps_figure(steps, say_term(SAY_STEP_ALL_NOT_KNOWN), say_term(SAY_STEP_AS_OFTEN_AS_IT_FLOWS),
                     text_done(&unknown), terms->unknown_a, UNIT_A, source(steps));
    }
}

/* The rows of a drop or a rise, up to mV a metre. */
static void add_terms(struct Steps *steps, const struct RunDesign *run, const struct DropTerms *terms)
{
    steps_phasors(steps, run, terms);
    steps_drop_of_metre(steps, terms, terms->rise ? SAY_STEP_RISE_OF_METRE : SAY_STEP_DROP_OF_METRE, source(steps));
}

/* The larger of two columns, or for z what r and x come to. */
static void add_of_conductor(struct Steps *steps, const struct RunDesign *run, const char *symbol, double pair,
                             double between, double value)
{
    const bool half = pair / 2 >= between / sqrt(3.0);
    steps_figure(steps, say_part(say(steps->arena, SAY_STEP_OF_ONE_CONDUCTOR, say_name(symbol))),
                 say_term(half ? SAY_STEP_HALF_SINGLE_PHASE : SAY_STEP_THREE_PHASE_OVER_ROOT),
                 half ? arena_print(steps->arena, "%s / 2", steps_number(steps, pair))
                      : arena_print(steps->arena, "%s / sqrt(3)", steps_number(steps, between)),
                 value, UNIT_MV_PER_A_M, steps_source(steps, drop_ref(run->edition, run->drop_table)));
}

static void add_conductor(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial)
{
    const struct DropFigure *one = &trial->drop.figure;
    struct DropFigure pair;
    struct DropFigure between;
    if (!drop_figure(run->edition, run->drop_table, trial->size_mm2, 1, &pair) ||
        !drop_figure(run->edition, run->drop_table, trial->size_mm2, 3, &between)) {
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
            steps, say_part(say(steps->arena, SAY_STEP_OF_ONE_CONDUCTOR, say_name("z"))), say_term(SAY_STEP_Z_BY_ROOT),
            arena_print(steps->arena, "sqrt(%s^2 + %s^2)", steps_number(steps, one->r), steps_number(steps, one->x)),
            one->z, UNIT_MV_PER_A_M, source(steps));
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
    const enum Saying line = terms->of == CURRENT_IN_NEUTRAL ? SAY_STEP_LINE_OF_NEUTRAL
                             : terms->rise                   ? SAY_STEP_LINE_THAT_RISES
                                                             : SAY_STEP_LINE_THAT_DROPS;
    steps_add(steps, say_term(line), say_part(say(steps->arena, SAY_STEP_LINES_TURN, say_name(turning))),
              say_part(line_name(steps, terms->line)), source(steps));
    if (off.length > 0) {
        steps_add(steps, say_term(SAY_STEP_LOADS_OFF), say_term(SAY_STEP_WHY_OFF), say_name(text_done(&off)),
                  source(steps));
    }
}

void work_drop_of_lines(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial)
{
    add_conductor(steps, run, trial);
    steps_left_off(steps, run, &trial->drop);
    add_terms(steps, run, &trial->drop);
    steps_drop_of_length(steps, run, &trial->drop, SAY_STEP_DROP_OF_RUN, trial->drop_v);
}

void work_rise(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial)
{
    steps_left_off(steps, run, &trial->rise);
    add_terms(steps, run, &trial->rise);
    steps_drop_of_length(steps, run, &trial->rise, SAY_STEP_RISE_AT_FAR_END, trial->rise_v);
}
