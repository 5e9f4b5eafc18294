/* The rating factors that apply to one run in one place, each with its reason and its table. */
#include "rating_private.h"
#include "tables/fault_tables.h"

#include <math.h>

double sun_factor(double conductor_degc, double air_degc)
{
    const double left_k = conductor_degc - air_degc - design_practice()->sun_rise_k;
    return left_k > 0 ? sqrt(left_k / (conductor_degc - air_degc)) : 0;
}

/* While factors are gathered. */
struct Gather {
    struct Arena *arena; /* NULL: no texts */
    const struct Situation *situation;
    const struct RunTerms *terms;
    double size_mm2;
    struct Factor *list; /* NULL: not kept */
    int count;
    struct FactorSums sums;
};

/* `numbers` is "" where a factor leaves it out. */
static void add(struct Gather *gather, struct Factor factor)
{
    gather->sums.product *= factor.value;
    if (gather->list != NULL) {
        factor.numbers = factor.numbers != NULL ? factor.numbers : "";
        factor.because = factor_because(gather->arena, gather->situation->edition, &factor);
        gather->list[gather->count++] = factor;
    }
}

static const struct Lack ground_too_warm = {PHRASE_GROUND_TOO_WARM, PHRASE_LAY_ELSEWHERE, SAY_GROUND_TOO_WARM};
static const struct Lack air_too_warm = {PHRASE_AIR_TOO_WARM, PHRASE_RUN_ELSEWHERE, SAY_AIR_TOO_WARM};
static const struct Lack sun_too_warm = {PHRASE_SUN_TOO_WARM, PHRASE_SHADE_IT, SAY_SUN_TOO_WARM};
static const struct Lack group_too_large = {PHRASE_GROUP_TOO_LARGE, PHRASE_SPLIT_GROUP, SAY_GROUP_TOO_LARGE};
static const struct Lack soil_too_dry = {PHRASE_SOIL_TOO_DRY, PHRASE_LOOK_AT_SOIL, SAY_SOIL_TOO_DRY};
static const struct Lack laid_too_deep = {PHRASE_TOO_DEEP, PHRASE_LAY_LESS_DEEP, SAY_TOO_DEEP};

static bool lacking(struct Gather *gather, const struct Lack *lacks)
{
    gather->sums.lacks = lacks;
    return false;
}

static bool add_ambient(struct Gather *gather)
{
    const struct Situation *situation = gather->situation;
    const double degc = situation->ambient_degc;
    struct Figure figure;
    if (situation->in_ground && !ambient_ground(situation->edition, situation->conductor_degc, degc, &figure)) {
        return lacking(gather, &ground_too_warm);
    }
    if (!situation->in_ground && !ambient_air(situation->edition, situation->conductor_degc, degc, &figure)) {
        return lacking(gather, &air_too_warm);
    }
    add(gather, (struct Factor){.cause = situation->in_ground ? FACTOR_GROUND : FACTOR_AIR,
                                .symbol = "Ca",
                                .value = figure.value,
                                .source = table_said(gather->arena,
                                                     factors_ref(situation->edition,
                                                                 situation->in_ground ? FACTORS_GROUND : FACTORS_AIR)),
                                .ambient_degc = degc,
                                .row_degc = figure.row,
                                .air_as = situation->in_ground ? NULL : situation->air_as});
    gather->sums.ambient *= figure.value;
    return true;
}

static bool add_sun(struct Gather *gather)
{
    const struct Situation *situation = gather->situation;
    if (!situation->full_sun) {
        return true;
    }
    const double value = sun_factor(situation->conductor_degc, situation->ambient_degc);
    if (value <= 0) {
        return lacking(gather, &sun_too_warm);
    }
    add(gather, (struct Factor){.cause = FACTOR_SUN,
                                .symbol = "Sun",
                                .value = value,
                                .source = cite_said(gather->arena, &(struct Cite){.standard = "IEC 60287-1-1"}),
                                .ambient_degc = situation->ambient_degc});
    gather->sums.ambient *= value;
    return true;
}

static bool add_grouping(struct Gather *gather)
{
    struct CableDimensions dimensions;
    double diameter_mm = gather->terms->diameter_mm;
    if (diameter_mm <= 0 && gather->situation->gap_m > 0 &&
        cable_dimensions(gather->terms->type, gather->terms->cores, gather->size_mm2, &dimensions)) {
        diameter_mm = dimensions.overall_mm;
    }
    struct Factor factor;
    if (!grouping_factor(gather->arena, gather->situation, gather->size_mm2, diameter_mm, &factor)) {
        return lacking(gather, &group_too_large);
    }
    if (factor.symbol != NULL) {
        add(gather, factor);
        gather->sums.ambient *= factor.value;
    }
    return true;
}

static void add_insulation(struct Gather *gather)
{
    const struct Situation *situation = gather->situation;
    struct Figure figure = {.value = clause_ratings()->surrounded, .row = clause_ratings()->surrounded_from_mm};
    if (situation->insulated_mm <= 0) {
        return;
    }
    const bool table_speaks = within(gather->size_mm2, insulation_length_largest_mm2());
    if (table_speaks && !insulation_length(situation->edition, situation->insulated_mm, &figure)) {
        return;
    }
    add(gather,
        (struct Factor){.cause = FACTOR_INSULATION,
                        .symbol = "Ci",
                        .value = figure.value,
                        .source = table_said(gather->arena, factors_ref(situation->edition, FACTORS_INSULATION)),
                        .insulated_mm = situation->insulated_mm,
                        .insulated_here_mm = situation->insulated_here_mm,
                        .past_table = !table_speaks});
    gather->sums.own *= figure.value;
}

static bool add_ground(struct Gather *gather)
{
    const struct Situation *situation = gather->situation;
    if (!situation->in_ground) {
        return true;
    }
    struct Figure soil;
    if (!soil_resistivity(situation->edition, situation->soil_k_m_per_w, situation->in_duct, &soil)) {
        return lacking(gather, &soil_too_dry);
    }
    const bool too_deep = soil.value > 1 && !within(situation->depth_m, clause_ratings()->soil_deepest_m);
    soil.value = too_deep ? 1 : soil.value;
    add(gather, (struct Factor){.cause = FACTOR_SOIL,
                                .symbol = "Cs",
                                .value = soil.value,
                                .source = table_said(gather->arena, factors_ref(situation->edition, FACTORS_SOIL)),
                                .soil_k_m_per_w = situation->soil_k_m_per_w,
                                .soil_row_k_m_per_w = soil.row,
                                .depth_m = situation->depth_m,
                                .no_gain = too_deep});
    struct Figure depth;
    if (!laying_depth(situation->edition, situation->depth_m, situation->in_duct, &depth)) {
        return lacking(gather, &laid_too_deep);
    }
    const bool shallow = depth.value > 1; /* shallow ground is warmer ground: no gain is taken for it */
    depth.value = shallow ? 1 : depth.value;
    add(gather, (struct Factor){.cause = FACTOR_DEPTH,
                                .symbol = "Cd",
                                .value = depth.value,
                                .source = table_said(gather->arena, factors_ref(situation->edition, FACTORS_DEPTH)),
                                .depth_m = situation->depth_m,
                                .depth_row_m = depth.row,
                                .no_gain = shallow});
    gather->sums.own *= soil.value * depth.value;
    return true;
}

/* Not about heat: they keep the device's tripping current below 1.45 times what the cable carries. */
static void add_overload(struct Gather *gather)
{
    if (gather->situation->in_ground) {
        add(gather,
            (struct Factor){.cause = FACTOR_OVERLOAD_BURIED,
                            .symbol = "Cc",
                            .value = clause_ratings()->overload_buried,
                            .source = cite_said(gather->arena, &(struct Cite){BS_7671, .clause = "433.1.203"})});
    }
    if (gather->terms->semi_enclosed) {
        add(gather,
            (struct Factor){.cause = FACTOR_BS3036,
                            .symbol = "Cf",
                            .value = clause_ratings()->overload_semi_enclosed,
                            .source = cite_said(gather->arena, &(struct Cite){BS_7671, .clause = "433.1.202"})});
    }
}

/* Third-harmonic current adds up in the neutral. Where the neutral carries more than a line, the cable is sized on it.
 */
static void add_harmonics(struct Gather *gather)
{
    const double percent = gather->terms->third_harmonic_percent;
    bool on_neutral = false;
    double value = harmonic_factor(percent, &on_neutral);
    if (percent <= 0) {
        return;
    }
    const double neutral = 3 * percent / 100; /* of the line current */
    if (on_neutral && neutral > 1) {
        value /= neutral;
    }
    add(gather, (struct Factor){.cause = FACTOR_HARMONICS,
                                .symbol = "Ch",
                                .value = value,
                                .source = table_said(gather->arena, harmonic_ref()),
                                .third_harmonic_percent = percent,
                                .neutral_carries_most = on_neutral});
    gather->sums.own *= value;
}

struct FactorSums segment_factors(struct Arena *arena, const struct Situation *situation, const struct RunTerms *terms,
                                  double size_mm2, struct Factor list[RATING_FACTORS_MOST], int *out_count)
{
    struct Gather gather = {
        .arena = arena,
        .situation = situation,
        .terms = terms,
        .size_mm2 = size_mm2,
        .list = list,
        .sums = {.product = 1, .ambient = 1, .own = 1},
    };
    if (add_ambient(&gather) && add_sun(&gather) && add_grouping(&gather) && add_ground(&gather)) {
        add_insulation(&gather);
        add_harmonics(&gather);
        add_overload(&gather);
    }
    if (list != NULL) {
        *out_count = gather.count;
    }
    return gather.sums;
}

static struct FactorSums sums_of(const struct Situation *situation, const struct RunTerms *terms, double size_mm2)
{
    return segment_factors(NULL, situation, terms, size_mm2, NULL, NULL);
}

void factors_by_size(const struct RunTerms *terms, struct Situation *situation)
{
    const double thin_mm2 = insulation_length_largest_mm2();
    situation->two_sums = situation->covered && situation->other_runs == 0 && situation->gap_m <= 0;
    if (situation->two_sums) {
        situation->thin = sums_of(situation, terms, thin_mm2);
        situation->thick = situation->insulated_mm > 0 ? sums_of(situation, terms, 2 * thin_mm2) : situation->thin;
    }
}

struct FactorSums factor_sums(const struct Situation *situation, const struct RunTerms *terms, double size_mm2)
{
    if (!situation->two_sums) {
        return sums_of(situation, terms, size_mm2);
    }
    return within(size_mm2, insulation_length_largest_mm2()) ? situation->thin : situation->thick;
}
