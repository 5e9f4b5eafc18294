/* The working of what a stretch carries, factor by factor, and of how warm the conductor gets in it. */
#include "rating_private.h"

#include <string.h>

/* What a factor was calculated from; "" for one that stands in a table. */
static const char *factor_numbers(const struct Steps *steps, const struct RunDesign *run,
                                  const struct Situation *situation, const struct Factor *factor)
{
    if (text_same(factor->symbol, "Sun")) {
        const char *degc = steps_number(steps, situation->conductor_degc);
        const char *air = steps_number(steps, situation->ambient_degc);
        return arena_print(steps->arena, "sqrt((%s - %s - %s) / (%s - %s))", degc, air, steps_number(steps, SUN_RISE_K),
                           degc, air);
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

/* In brackets where it is more than one figure. */
static const char *bracketed(const struct Steps *steps, const char *product)
{
    return strchr(product, ' ') == NULL ? product : arena_print(steps->arena, "(%s)", product);
}

static void add_temperature(struct Steps *steps, const struct RunDesign *run, const struct Situation *situation,
                            const struct Rating *rating)
{
    const char *degc = steps_number(steps, situation->conductor_degc);
    const char *tabulated = steps_number(steps, rating->tabulated_a);
    steps_figure(
        steps, "temperature of the conductor at Ib",
        "tp - ((Ca x Sun x Cg)^2 - (Ib / (It x Ci x Cs x Cd x Ch))^2) x (tp - t0), with the factors that apply",
        arena_print(steps->arena, "%s - (%s^2 - (%s / %s)^2) x (%s - %s)", degc,
                    bracketed(steps, product_of(steps, rating, "", SHARE_AMBIENT)),
                    steps_number(steps, run->demand.design_a),
                    bracketed(steps, product_of(steps, rating, tabulated, SHARE_OWN)), degc,
                    steps_number(steps, temperature_base_degc(situation->in_ground))),
        rating->conductor_degc, "degC", "BS 7671 Appendix 4, 6.1");
}

/* The reason of the step that was added last. */
static void give_reason(const struct Steps *steps, const struct Say *why)
{
    if (steps->list != NULL && steps->count > 0) {
        steps->list[steps->count - 1].why = why;
    }
}

void work_rating(struct Arena *arena, const struct RunDesign *run, const struct Situation *situation,
                 struct Rating *out)
{
    struct Steps steps = steps_begin(arena);
    steps_figure(&steps, "tabulated capacity, It", "", "", out->tabulated_a, "A",
                 steps_source(&steps, capacity_ref(situation->table)));
    give_reason(&steps, say(arena, SAY_METHOD_FOR_LOADED, say_name(out->method), say_count(run->phases == 3 ? 3 : 2),
                            say_part(out->because)));
    for (int i = 0; i < out->factor_count; i++) {
        const struct Factor *factor = &out->factors[i];
        steps_figure(&steps, arena_print(arena, "factor %s", factor->symbol), "",
                     factor_numbers(&steps, run, situation, factor), factor->value, "", factor->source);
        give_reason(&steps, factor->because);
    }
    steps_figure(&steps, "what it carries", "It x factors",
                 product_of(&steps, out, steps_number(&steps, out->tabulated_a), SHARE_NONE), out->capacity_a, "A",
                 "BS 7671 433.1.1");
    add_temperature(&steps, run, situation, out);
    out->step_count = steps.count;
    out->steps = steps.list;
}
