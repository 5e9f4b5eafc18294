/* Says what a rating factor was taken for, from its figures alone. */
#include "rating_private.h"

static struct SayArg figure(double value, enum Unit unit)
{
    return say_digits(value, 6, unit);
}

/* "(row 35 degC)": the row is named only where it is not the value itself. */
static struct SayArg row_of(struct Arena *arena, double value, double row, enum Unit unit)
{
    const bool same = within(value, row) && within(row, value);
    return say_part(same ? NULL : say(arena, SAY_TABLE_ROW, figure(row, unit)));
}

static const struct Say *ambient(struct Arena *arena, const struct Factor *factor)
{
    const struct SayArg degc = figure(factor->ambient_degc, UNIT_DEGC);
    const struct SayArg row = row_of(arena, factor->ambient_degc, factor->row_degc, UNIT_DEGC);
    if (factor->cause == FACTOR_GROUND) {
        return say(arena, SAY_GROUND_AT, degc, row);
    }
    const struct Say *as = factor->air_as == NULL ? NULL : say(arena, SAY_AS_IN_SEGMENT, say_name(factor->air_as));
    return say(arena, SAY_AIR_AT, degc, row, say_part(as));
}

/* What the sizes of a group are, as far as they are known. */
static const struct Say *unlike(struct Arena *arena, const struct Factor *factor, const char *formula)
{
    return factor->most_mm2 > 0 ? say(arena, SAY_UNLIKE_SIZES, say_digits(factor->least_mm2, 4, UNIT_MM2),
                                      say_digits(factor->most_mm2, 4, UNIT_MM2), say_name(formula))
                                : say(arena, SAY_TAKEN_AS_UNLIKE, say_name(formula));
}

static const struct Say *grouped_in_ducts(struct Arena *arena, const struct Factor *factor)
{
    const struct SayArg circuits = say_count(factor->circuits);
    if (factor->ducts < 2) {
        return say(arena, SAY_CIRCUITS_IN_DUCT, circuits,
                   factor->unlike ? say_part(unlike(arena, factor, factor->numbers)) : say_term(SAY_TAKEN_AS_BUNCHED));
    }
    const struct SayArg sizes = say_part(factor->unlike ? unlike(arena, factor, NULL) : NULL);
    return factor->circuits > 1 ? say(arena, SAY_CIRCUITS_IN_DUCTS, circuits, say_count(factor->ducts), sizes)
                                : say(arena, SAY_DUCTS_SIDE_BY_SIDE, say_count(factor->ducts), sizes);
}

static const struct Say *grouped(struct Arena *arena, const struct Factor *factor)
{
    const struct SayArg circuits = say_count(factor->circuits);
    const struct SayArg sizes = say_part(factor->unlike ? unlike(arena, factor, factor->numbers) : NULL);
    switch (factor->grouped) {
    case GROUPED_BUNCHED: return say(arena, SAY_CIRCUITS_BUNCHED, circuits, sizes);
    case GROUPED_IN_LAYER: return say(arena, SAY_CIRCUITS_IN_LAYER, circuits, sizes);
    case GROUPED_APART: return say(arena, SAY_CIRCUITS_APART, circuits);
    case GROUPED_IN_GROUND: return say(arena, SAY_CIRCUITS_IN_GROUND, circuits, sizes);
    case GROUPED_IN_DUCTS: break;
    }
    return grouped_in_ducts(arena, factor);
}

static const struct Say *insulated(struct Arena *arena, const struct Factor *factor)
{
    const bool met = !within(factor->insulated_mm, factor->insulated_here_mm);
    const struct Say *half =
        factor->past_table ? say(arena, SAY_HALF_PAST_TABLE, say_digits(insulation_length_largest_mm2(), 4, UNIT_MM2))
                           : NULL;
    return say(arena, met ? SAY_INSULATED_WITH_NEXT : SAY_INSULATED, figure(factor->insulated_mm, UNIT_MM),
               say_part(half));
}

static const struct Say *soil(struct Arena *arena, const struct Edition *edition, const struct Factor *factor)
{
    if (factor->no_gain) {
        return say(arena, SAY_NO_GAIN_DEEPER, say_name(factors_ref(edition, FACTORS_SOIL)->table),
                   say_digits(clause_ratings()->soil_deepest_m, 3, UNIT_M));
    }
    return say(arena, SAY_SOIL_OF, figure(factor->soil_k_m_per_w, UNIT_K_M_PER_W),
               row_of(arena, factor->soil_k_m_per_w, factor->soil_row_k_m_per_w, UNIT_K_M_PER_W));
}

static const struct Say *depth(struct Arena *arena, const struct Factor *factor)
{
    if (factor->no_gain) {
        return say(arena, SAY_NO_GAIN_SHALLOWER, say_digits(clause_ratings()->laying_base_m, 3, UNIT_M));
    }
    return say(arena, SAY_LAID_AT, figure(factor->depth_m, UNIT_M),
               row_of(arena, factor->depth_m, factor->depth_row_m, UNIT_M));
}

const struct Say *factor_because(struct Arena *arena, const struct Edition *edition, const struct Factor *factor)
{
    switch (factor->cause) {
    case FACTOR_AIR:
    case FACTOR_GROUND: return ambient(arena, factor);
    case FACTOR_SUN:
        return say(arena, SAY_FULL_SUN, say_digits(design_practice()->sun_rise_k, 3, UNIT_K),
                   figure(factor->ambient_degc, UNIT_DEGC));
    case FACTOR_GROUPING: return grouped(arena, factor);
    case FACTOR_INSULATION: return insulated(arena, factor);
    case FACTOR_SOIL: return soil(arena, edition, factor);
    case FACTOR_DEPTH: return depth(arena, factor);
    case FACTOR_OVERLOAD_BURIED: return say(arena, SAY_BURIED_AND_OVERLOAD);
    case FACTOR_BS3036: return say(arena, SAY_BS3036_FUSE);
    case FACTOR_HARMONICS:
        return say(arena, factor->neutral_carries_most ? SAY_THIRD_HARMONIC_IN_NEUTRAL : SAY_THIRD_HARMONIC,
                   figure(factor->third_harmonic_percent, UNIT_PERCENT));
    case FACTOR_CAUSES: break;
    }
    return NULL;
}
