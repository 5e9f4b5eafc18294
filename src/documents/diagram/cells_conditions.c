/* What a segment carries and why: the method with the table's figure, then each thing that is not as the table has it.
 * A sign stands before what costs capacity; what adds to it has none. */
#include "layout_private.h"

const struct Rating *layout_rating_at(const struct PlanRun *run, int segment)
{
    for (int i = 0; run->rated && i < run->rating_count; i++) {
        if (run->ratings[i].segment == segment) {
            return &run->ratings[i];
        }
    }
    return NULL;
}

/* In as few words as name it: the whole reason stands in the plan and the summary. */
static const struct Say *cause_said(struct Arena *arena, const struct Factor *factor)
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

const struct Say *condition_said(struct Arena *arena, const struct Factor *factor)
{
    return say(arena, SAY_COSTS, say_part(cause_said(arena, factor)), say_fixed(factor->value, 2, UNIT_NONE));
}

void cells_conditions(struct Cell *cell, int segment)
{
    const struct RouteLayout *layout = cell->layout;
    const struct Rating *rating =
        layout->main_run < 0 ? NULL : layout_rating_at(&layout->plan->runs[layout->main_run], segment);
    if (rating == NULL) {
        return;
    }
    if (rating->lacks != NULL) {
        cell_put(cell, rating->lacks, true);
        return;
    }
    cell_put(cell, say(layout->arena, SAY_COLON, say_name(rating->method), say_digits(rating->tabulated_a, 4, UNIT_A)),
             false);
    for (int i = 0; i < rating->factor_count && i < RATING_FACTORS_MOST; i++) {
        const struct Factor *factor = &rating->factors[i];
        if (factor->value < 1) {
            cell_put_fitting(cell, condition_sign(factor), condition_said(layout->arena, factor),
                             say(layout->arena, SAY_COSTS_SHORT, say_fixed(factor->value, 2, UNIT_NONE)), false);
        } else if (factor->value > 1) {
            cell_put(cell, condition_said(layout->arena, factor), false);
        }
    }
}
