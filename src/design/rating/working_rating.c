/* The working of what a stretch carries, factor by factor, and of how warm the conductor gets in it. */
#include "rating_private.h"

/* What a factor was calculated from; "" for one that stands in a table. */
static const char *factor_numbers(const struct Steps *steps, const struct RunDesign *run,
                                  const struct Situation *situation, const struct Factor *factor)
{
    if (text_same(factor->symbol, "Sun")) {
        const char *degc = steps_number(steps, situation->conductor_degc);
        const char *air = steps_number(steps, situation->ambient_degc);
        return arena_print(steps->arena, "sqrt((%s - %s - %s) / (%s - %s))", degc, air,
                           steps_number(steps, design_practice()->sun_rise_k), degc, air);
    }
    if (text_same(factor->symbol, "Ch")) {
        bool on_neutral = false;
        const double percent = run->terms.third_harmonic_percent;
        const double printed = harmonic_factor(percent, &on_neutral);
        if (on_neutral && 3 * percent > 100) {
            return arena_print(steps->arena, "%s / (3 x %s / 100)", steps_number(steps, printed),
                               steps_number(steps, percent));
        }
    }
    return factor->numbers != NULL ? factor->numbers : "";
}

/* Ca, Sun and Cg stand as a warmer surrounding; Ci, Cs, Cd and Ch keep the cable's own heat in; Cc and Cf are no heat.
 */
enum Share { SHARE_AMBIENT, SHARE_OWN, SHARE_NONE };

static enum Share share_of(const char *symbol)
{
    if (text_same(symbol, "Ca") || text_same(symbol, "Sun") || text_same(symbol, "Cg")) {
        return SHARE_AMBIENT;
    }
    return text_same(symbol, "Cc") || text_same(symbol, "Cf") ? SHARE_NONE : SHARE_OWN;
}

/* "67 x 0.87 x 0.78": a figure and the factors of one share; all of them with SHARE_NONE. "" for no figure to begin
 * with. */
static const char *product_of(const struct Steps *steps, const struct Rating *rating, const char *figure,
                              enum Share share)
{
    struct TextBuilder text = text_builder(steps->arena);
    text_add(&text, figure);
    for (int i = 0; i < rating->factor_count; i++) {
        if (share == SHARE_NONE || share_of(rating->factors[i].symbol) == share) {
            text_print(&text, "%s%s", text.length > 0 ? " x " : "", steps_number(steps, rating->factors[i].value));
        }
    }
    return text_done(&text);
}

/* The same in brackets where it is more than one figure. */
static const char *bracketed(const struct Steps *steps, const struct Rating *rating, const char *figure,
                             enum Share share)
{
    int figures = *figure != '\0';
    for (int i = 0; i < rating->factor_count; i++) {
        figures += share_of(rating->factors[i].symbol) == share;
    }
    const char *product = product_of(steps, rating, figure, share);
    return figures > 1 ? arena_print(steps->arena, "(%s)", product) : product;
}

static void add_temperature(struct Steps *steps, const struct RunDesign *run, const struct Situation *situation,
                            const struct Rating *rating)
{
    const char *degc = steps_number(steps, situation->conductor_degc);
    const char *tabulated = steps_number(steps, rating->tabulated_a);
    steps_figure(steps, say_term(SAY_STEP_CONDUCTOR_TEMPERATURE), say_term(SAY_STEP_TEMPERATURE_FORMULA),
                 arena_print(steps->arena, "%s - (%s^2 - (%s / %s)^2) x (%s - %s)", degc,
                             bracketed(steps, rating, "", SHARE_AMBIENT), steps_number(steps, run->demand.design_a),
                             bracketed(steps, rating, tabulated, SHARE_OWN), degc,
                             steps_number(steps, temperature_base_degc(situation->in_ground))),
                 rating->conductor_degc, UNIT_DEGC, steps_appendix_4(steps, "6.1"));
}

void work_rating(struct Arena *arena, const struct RunDesign *run, const struct Situation *situation,
                 struct Rating *out)
{
    struct Steps steps = steps_begin(arena);
    const struct Say *method = say(arena, SAY_METHOD_FOR_LOADED, say_name(out->method),
                                   say_count(run->phases == 3 ? 3 : 2), say_part(out->because));
    steps_figure(&steps, say_term(SAY_STEP_TABULATED), say_part(method), "", out->tabulated_a, UNIT_A,
                 steps_source(&steps, capacity_ref(run->edition, situation->table)));
    for (int i = 0; i < out->factor_count; i++) {
        const struct Factor *factor = &out->factors[i];
        steps_figure(&steps, say_part(say(arena, SAY_STEP_FACTOR, say_name(factor->symbol))), say_part(factor->because),
                     factor_numbers(&steps, run, situation, factor), factor->value, UNIT_NONE,
                     say_part(factor_source_said(steps.arena, factor)));
    }
    steps_figure(&steps, say_term(SAY_STEP_CARRIES), say_term(SAY_STEP_TABULATED_TIMES_FACTORS),
                 product_of(&steps, out, steps_number(&steps, out->tabulated_a), SHARE_NONE), out->capacity_a, UNIT_A,
                 steps_clause(&steps, "433.1.1"));
    add_temperature(&steps, run, situation, out);
    out->step_count = steps.count;
    out->steps = steps.list;
}
