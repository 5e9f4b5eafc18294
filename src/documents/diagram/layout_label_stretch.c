/* What the box of a stretch says: its way and length, what it is fixed to or lies in, its bends, how it is drawn in,
 * and of the one that governs what it carries and why no more. */
#include "layout_writing_private.h"

#include "documents/shown_private.h"

#include <math.h>

static int segment_index(const struct Label *label)
{
    return label->stretch->number - 1;
}

/* What the way into the ground and out of it adds to the longest cable on a stretch. */
static double most_legs_m(const struct Plan *plan, int segment)
{
    double most_m = 0;
    for (int r = 0; r < plan->run_count; r++) {
        double run_m = 0;
        for (int i = 0; i < plan->runs[r].leg_count; i++) {
            const struct PlanLeg *leg = &plan->runs[r].legs[i];
            run_m += leg->segment == segment && !leg->included ? leg->length_m : 0;
        }
        most_m = fmax(most_m, run_m);
    }
    return most_m;
}

static void put_way(const struct RouteLayout *layout, const struct Writing *writing)
{
    const struct Stretch *stretch = writing->label->stretch;
    const struct Segment *surveyed = stretch->segment->surveyed;
    struct TextBuilder text = text_builder(layout->arena);
    text_print(&text, "%s, %s" NO_BREAK "m", survey_word(WORDS_WAY, (int)surveyed->way),
               layout_metres(layout, stretch->length_m));
    if (survey_in_ground(surveyed->way)) {
        text_print(&text, ", %s" NO_BREAK "m" NO_BREAK "deep",
                   number_significant(layout->arena, stretch->segment->depth_m, 3));
    }
    double rise_m = surveyed->rise_m.value;
    if (rise_m > 0 || rise_m < 0) {
        text_print(&text, ", %s" NO_BREAK "%s" NO_BREAK "m", rise_m > 0 ? "up" : "down",
                   layout_metres(layout, rise_m > 0 ? rise_m : -rise_m));
    }
    const double legs_m = most_legs_m(layout->plan, segment_index(writing->label));
    if (legs_m > 0) {
        text_print(&text, ", and %s" NO_BREAK "m in" NO_BREAK "and" NO_BREAK "out", layout_metres(layout, legs_m));
    }
    layout_put_line(writing, text_done(&text), LINES_FOR_LONG_TEXT);
}

/* What it lies in: the wall, the duct, the trunking, what the trench is under. */
static const char *surrounding_text(const struct RouteLayout *layout, const struct Segment *surveyed)
{
    struct TextBuilder text = text_builder(layout->arena);
    if (surveyed->way == WAY_THROUGH_WALL) {
        if (surveyed->wall != WALL_COUNT) {
            text_print(&text, "%s wall", survey_word(WORDS_WALL, (int)surveyed->wall));
        }
        if (surveyed->thickness_m.given) {
            text_print(&text, "%s%s thick", text.length > 0 ? NO_BREAK : "",
                       layout_millimetres(layout, surveyed->thickness_m.value * 1000));
        }
        text_print(&text, "%s%s", text.length > 0 && surveyed->sleeve ? ", " : "", surveyed->sleeve ? "sleeve" : "");
        text_add(&text, surveyed->fire_barrier ? ", fire seal" : "");
    }
    if (surveyed->duct_size_mm.given) {
        text_print(&text, "duct" NO_BREAK "%s" NO_BREAK "mm, %s%s",
                   number_significant(layout->arena, surveyed->duct_size_mm.value, 4),
                   survey_word(WORDS_LAID, (int)surveyed->duct_laid), surveyed->duct_rope ? ", rope" : "");
    }
    if (surveyed->size_mm.given && surveyed->height_mm.given) {
        text_print(&text, "%s" NO_BREAK TIMES NO_BREAK "%s" NO_BREAK "mm",
                   number_significant(layout->arena, surveyed->size_mm.value, 4),
                   number_significant(layout->arena, surveyed->height_mm.value, 4));
    } else if (surveyed->size_mm.given) {
        text_print(&text, "size" NO_BREAK "%s" NO_BREAK "mm",
                   number_significant(layout->arena, surveyed->size_mm.value, 4));
    }
    if (surveyed->material != MATERIAL_COUNT && surveyed->size_mm.given) {
        text_print(&text, ", %s", survey_word(WORDS_MATERIAL, (int)surveyed->material));
    }
    if (surveyed->under != UNDER_COUNT) {
        text_print(&text, "%sunder" NO_BREAK "%s", text.length > 0 ? ", " : "",
                   survey_word(WORDS_UNDER, (int)surveyed->under));
    }
    if (surveyed->dig != DIG_COUNT) {
        text_print(&text, "%sdig by %s", text.length > 0 ? ", " : "", survey_word(WORDS_DIG, (int)surveyed->dig));
    }
    return text_done(&text);
}

/* "1 bend, radius 250 mm, least 117 mm": the least is that of the stiffest cable that goes round. */
static const char *bends_text(const struct RouteLayout *layout, int segment)
{
    const struct Segment *surveyed = layout->stretches[segment].segment->surveyed;
    double least_mm = 0, tightest_mm = 0;
    bool fails = false;
    for (int i = 0; i < layout->plan->run_count; i++) {
        const struct PlanRun *run = &layout->plan->runs[i];
        for (int k = 0; k < run->bend_count; k++) {
            if (run->bends[k].segment == segment) {
                least_mm = fmax(least_mm, run->bends[k].least_mm);
                tightest_mm = run->bends[k].tightest_mm;
                fails = fails || run->bends[k].result == CHECK_FAIL;
            }
        }
    }
    if (surveyed->bend_count == 0) {
        return "";
    }
    struct TextBuilder text = text_builder(layout->arena);
    text_print(&text, "%d" NO_BREAK "bend%s", surveyed->bend_count, surveyed->bend_count > 1 ? "s" : "");
    if (tightest_mm > 0) {
        text_print(&text, ", radius" NO_BREAK "%s", layout_millimetres(layout, tightest_mm));
    }
    if (least_mm > 0) {
        text_print(&text, ", least %s%s", tightest_mm > 0 ? "" : "radius" NO_BREAK,
                   layout_millimetres(layout, ceil(least_mm)));
    }
    text_add(&text, fails ? ": too tight" : "");
    return text_done(&text);
}

/* At the first stretch of a pull in the order of the way: "drawn in with 21 N, stands 1500 N". */
static void put_pulls(const struct RouteLayout *layout, const struct Writing *writing)
{
    int segment = segment_index(writing->label);
    for (int i = 0; i < layout->plan->run_count; i++) {
        const struct PlanRun *run = &layout->plan->runs[i];
        for (int k = 0; k < run->pull_count; k++) {
            const struct PlanPull *pull = &run->pulls[k];
            int a = run->settled->along[pull->first], b = run->settled->along[pull->first + pull->count - 1];
            if ((a < b ? a : b) != segment) {
                continue;
            }
            struct TextBuilder text = text_builder(layout->arena);
            text_print(&text, "%s%sdraw in%s", layout->plan->run_count > 1 ? run->settled->name : "",
                       layout->plan->run_count > 1 ? ": " : "", pull->result == CHECK_FAIL ? " FAILS" : "");
            if (pull->worked) {
                text_print(&text, ": %s" NO_BREAK "N (%s" NO_BREAK "kg), stands %s" NO_BREAK "N (%s" NO_BREAK "kg)",
                           number_text(layout->arena, ceil(pull->tension_n), 0),
                           number_text(layout->arena, ceil(pull->tension_n / 9.81), 0),
                           number_text(layout->arena, floor(pull->limit_n), 0),
                           number_text(layout->arena, floor(pull->limit_n / 9.81), 0));
            } else {
                text_add(&text, ": force not worked out");
            }
            if (pull->pit_at_m > 0) {
                text_print(&text, ", pit at %s" NO_BREAK "m of it", layout_metres(layout, pull->pit_at_m));
            }
            layout_put_line(writing, text_done(&text), LINES_FOR_LONG_TEXT);
        }
    }
}

static void put_work(const struct RouteLayout *layout, const struct Writing *writing)
{
    const struct Segment *surveyed = writing->label->stretch->segment->surveyed;
    bool fixed = layout_put_work(layout, writing, segment_index(writing->label));
    if (!fixed && surveyed->fixed_to != SURFACE_COUNT) {
        layout_put_line(writing,
                        arena_print(layout->arena, "fix to %s", survey_word(WORDS_SURFACE, (int)surveyed->fixed_to)),
                        LINES_FOR_ONE_TEXT);
    }
    layout_put_line(writing, surrounding_text(layout, surveyed), LINES_FOR_LONG_TEXT);
    layout_put_line(writing, bends_text(layout, segment_index(writing->label)), LINES_FOR_LONG_TEXT);
    put_pulls(layout, writing);
    double apart_mm = writing->label->stretch->segment->separation_mm;
    if (apart_mm > 0) {
        layout_put_line(writing,
                        arena_print(layout->arena, "power and data %s apart", layout_millimetres(layout, apart_mm)),
                        LINES_FOR_ONE_TEXT);
    }
}

/* The rating with the least room over its device, of all power runs in a stretch; NULL when there is none. */
static const struct Rating *worst_rating(const struct Plan *plan, int segment, bool *all_same)
{
    const struct Rating *worst = NULL;
    double worst_device_a = 0;
    *all_same = true;
    for (int i = 0; i < plan->run_count; i++) {
        const struct Rating *rating = layout_rating_at(&plan->runs[i], segment);
        if (rating == NULL) {
            continue;
        }
        *all_same = *all_same && (worst == NULL || fabs(rating->capacity_a - worst->capacity_a) < 0.05);
        if (worst == NULL || rating->capacity_a * worst_device_a < worst->capacity_a * plan->runs[i].rating_a) {
            worst = rating;
            worst_device_a = plan->runs[i].rating_a;
        }
    }
    return worst;
}

/* "carries 29.3 A (feeder), 24.1 A (pump)"; one figure when it is the same for all. */
static const struct Rating *put_capacity(const struct RouteLayout *layout, const struct Writing *writing)
{
    const struct Plan *plan = layout->plan;
    bool all_same = false;
    const struct Rating *worst = worst_rating(plan, segment_index(writing->label), &all_same);
    if (worst == NULL) {
        return NULL;
    }
    struct TextBuilder text = text_builder(layout->arena);
    if (all_same) {
        text_print(&text, "carries %s" NO_BREAK "A", number_text(layout->arena, worst->capacity_a, 1));
    }
    for (int i = 0; i < plan->run_count && !all_same; i++) {
        const struct Rating *rating = layout_rating_at(&plan->runs[i], segment_index(writing->label));
        if (rating != NULL) {
            text_print(&text, "%s%s" NO_BREAK "A (%s)", text.length == 0 ? "carries " : ", ",
                       number_text(layout->arena, rating->capacity_a, 1), plan->runs[i].settled->name);
        }
    }
    layout_put_line(writing, text_done(&text), LINES_FOR_ONE_TEXT);
    return worst;
}

/* What costs capacity, in as few words as name it: the whole reason stands in the plan and the summary. */
static const struct Say *condition_said(struct Arena *arena, const struct Factor *factor)
{
    switch (factor->cause) {
    case FACTOR_AIR: return say(arena, SAY_COSTS_AIR, say_digits(factor->ambient_degc, 6, UNIT_DEGC));
    case FACTOR_GROUND: return say(arena, SAY_COSTS_GROUND, say_digits(factor->ambient_degc, 6, UNIT_DEGC));
    case FACTOR_SUN: return say(arena, SAY_COSTS_SUN);
    case FACTOR_GROUPING:
        return factor->circuits > 1 ? say(arena, SAY_COSTS_CIRCUITS, say_count(factor->circuits))
                                    : say(arena, SAY_COSTS_DUCTS, say_count(factor->ducts));
    case FACTOR_INSULATION: return say(arena, SAY_COSTS_INSULATION);
    case FACTOR_SOIL: return say(arena, SAY_COSTS_SOIL, say_digits(factor->soil_k_m_per_w, 6, UNIT_K_M_PER_W));
    case FACTOR_DEPTH: return say(arena, SAY_COSTS_DEPTH, say_digits(factor->depth_m, 6, UNIT_M));
    case FACTOR_OVERLOAD_BURIED: return say(arena, SAY_COSTS_BURIED);
    case FACTOR_BS3036: return say(arena, SAY_COSTS_BS3036);
    case FACTOR_HARMONICS:
        return say(arena, SAY_COSTS_HARMONICS, say_digits(factor->third_harmonic_percent, 6, UNIT_PERCENT));
    case FACTOR_CAUSES: break;
    }
    return NULL;
}

/* "insulation x0.78, 3 circuits x0.80" */
static void put_conditions(const struct RouteLayout *layout, const struct Writing *writing, const struct Rating *rating)
{
    struct Arena *arena = layout->arena;
    const struct Say *list = NULL;
    for (int i = 0; i < rating->factor_count && i < RATING_FACTORS_MOST; i++) {
        const struct Factor *factor = &rating->factors[i];
        if (factor->value < 1) {
            const struct Say *cost =
                say(arena, SAY_COSTS, say_part(condition_said(arena, factor)), say_fixed(factor->value, 2, UNIT_NONE));
            list = say_list(arena, SAY_COMMA, list, say_part(cost));
        }
    }
    layout_put_line(writing, layout_said(layout, list), LINES_FOR_LONG_TEXT);
}

/* What every stretch carries stands in the ribbon; the one that governs says it here too, and why. */
void layout_write_stretch(const struct RouteLayout *layout, const struct Writing *writing)
{
    const char *name = writing->label->stretch->segment->surveyed->name;
    layout_put_name(writing, name);
    put_way(layout, writing);
    struct Writing work = *writing;
    if (writing->label->governs) {
        work.kept_lines += LINES_FOR_LONG_TEXT + 1;
    }
    put_work(layout, &work);
    layout_put_flags(writing, layout_flag_numbers(layout, "", writing->label->stretch->number - 1));
    if (!writing->label->governs) {
        return;
    }
    const struct Rating *worst = put_capacity(layout, writing);
    if (worst != NULL) {
        put_conditions(layout, writing, worst);
    }
    struct TextBuilder text = text_builder(layout->arena);
    int governed = 0, rated = 0;
    for (int i = 0; i < layout->plan->run_count; i++) {
        const struct PlanRun *run = &layout->plan->runs[i];
        rated += run->rated;
        if (run->rated && run->governing >= 0 && run->governing < run->rating_count &&
            run->ratings[run->governing].segment == segment_index(writing->label)) {
            text_print(&text, "%s%s", governed++ > 0 ? ", " : "governs ", run->settled->name);
        }
    }
    struct Writing last = *writing;
    last.kept_lines = 0;
    layout_put_strong(&last, rated == 1 ? "governs" : text_done(&text), LINES_FOR_ONE_TEXT);
}
