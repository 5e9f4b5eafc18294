/* The rating factors that apply to one run in one place, each with its reason and its table. */
#include "rating_private.h"
#include "tables/fault_tables.h"

#include <math.h>
#include <string.h>

/* Table 4B3 holds for laying depths up to this. */
static const double soil_table_deepest_m = 0.8;

double sun_factor(double conductor_degc, double air_degc)
{
    const double left_k = conductor_degc - air_degc - SUN_RISE_K;
    return left_k > 0 ? sqrt(left_k / (conductor_degc - air_degc)) : 0;
}

/* While factors are gathered. */
struct Gather {
    struct Arena *arena; /* NULL: no texts */
    const struct Situation *situation;
    const struct RunTerms *terms;
    double size_mm2;
    struct Factors factors;
};

const char *table_source(struct Arena *arena, const struct TableRef *ref)
{
    const int name = (int)strcspn(ref->standard, ":"); /* the edition is said once for the whole plan */
    const bool numbered = ref->table[0] >= '0' && ref->table[0] <= '9';
    const bool lettered = ref->table[0] >= 'A' && ref->table[0] <= 'Z';
    const char *between = numbered || lettered ? " Table " : ", "; /* "makers' guides, drawing in" */
    return arena == NULL ? NULL : arena_print(arena, "%.*s%s%s", name, ref->standard, between, ref->table);
}

static void add(struct Gather *gather, const char *symbol, double value, const char *source, const char *because)
{
    struct Factors *factors = &gather->factors;
    factors->list[factors->count++] =
        (struct Factor){.symbol = symbol, .value = value, .source = source, .because = because, .numbers = ""};
    factors->product *= value;
}

static bool lacking(struct Gather *gather, const char *lacks, const char *advice)
{
    gather->factors.lacks = lacks;
    gather->factors.advice = advice;
    return false;
}

static const char *number(const struct Gather *gather, double value)
{
    return number_significant(gather->arena, value, 6);
}

/* "air at 33 degC (row 35 degC)": the row is named only where it is not the value itself. */
static const char *with_row(const struct Gather *gather, const char *what, double value, double row, const char *unit)
{
    if (gather->arena == NULL) {
        return NULL;
    }
    if (within(value, row) && within(row, value)) {
        return arena_print(gather->arena, "%s %s %s", what, number(gather, value), unit);
    }
    return arena_print(gather->arena, "%s %s %s (row %s %s)", what, number(gather, value), unit, number(gather, row),
                       unit);
}

static const char *air_text(const struct Gather *gather, double degc, double row_degc)
{
    const char *text = with_row(gather, "air at", degc, row_degc, "degC");
    const char *as = gather->situation->air_as;
    return text != NULL && as != NULL ? arena_print(gather->arena, "%s, as in %s", text, as) : text;
}

static bool add_ambient(struct Gather *gather)
{
    const struct Situation *situation = gather->situation;
    const double degc = situation->ambient_degc;
    struct Figure figure;
    if (situation->in_ground) {
        if (!ambient_ground(gather->situation->conductor_degc, degc, &figure)) {
            return lacking(gather, "Table 4B2 permits no cable in ground so warm",
                           "lay it elsewhere or use 90 degC terminals");
        }
        add(gather, "Ca", figure.value, table_source(gather->arena, ambient_ground_ref()),
            with_row(gather, "ground at", degc, figure.row, "degC"));
    } else {
        if (!ambient_air(gather->situation->conductor_degc, degc, &figure)) {
            return lacking(gather, "Table 4B1 permits no cable in air so warm",
                           "run it elsewhere or use 90 degC terminals");
        }
        add(gather, "Ca", figure.value, table_source(gather->arena, ambient_air_ref()),
            air_text(gather, degc, figure.row));
    }
    gather->factors.ambient *= figure.value;
    return true;
}

static bool add_sun(struct Gather *gather)
{
    const struct Situation *situation = gather->situation;
    if (!situation->full_sun) {
        return true;
    }
    const double value = sun_factor(gather->situation->conductor_degc, situation->ambient_degc);
    if (value <= 0) {
        return lacking(gather, "full sun on air so warm leaves nothing to carry current with", "shade the cable");
    }
    const char *because = NULL;
    if (gather->arena != NULL) {
        because = arena_print(gather->arena, "in full sun: a calculation, not a table: 20 K added to air at %s degC",
                              number(gather, situation->ambient_degc));
    }
    add(gather, "Sun", value, "derived from IEC 60287-1-1, solar term", because);
    gather->factors.ambient *= value;
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
        return lacking(gather, "the grouping tables end at 20 circuits", "split the group");
    }
    if (factor.symbol != NULL) {
        add(gather, factor.symbol, factor.value, factor.source, factor.because);
        gather->factors.list[gather->factors.count - 1].numbers = factor.numbers;
        gather->factors.ambient *= factor.value;
    }
    return true;
}

static void add_insulation(struct Gather *gather)
{
    const struct Situation *situation = gather->situation;
    struct Figure figure = {.value = 0.5, .row = 500};
    if (situation->insulated_mm <= 0) {
        return;
    }
    const bool table_speaks = within(gather->size_mm2, insulation_length_largest_mm2());
    if (table_speaks && !insulation_length(situation->insulated_mm, &figure)) {
        return;
    }
    const char *because = NULL;
    if (gather->arena != NULL) {
        const bool met = !within(situation->insulated_mm, situation->insulated_here_mm);
        const char *length = arena_print(gather->arena, "%s mm%s", number(gather, situation->insulated_mm),
                                         met ? " with what may meet it in the next stretches," : "");
        because = table_speaks
                      ? arena_print(gather->arena, "%s surrounded by insulation", length)
                      : arena_print(gather->arena,
                                    "%s surrounded by insulation: the table ends at 10 mm2, so half is taken", length);
    }
    add(gather, "Ci", figure.value, table_source(gather->arena, insulation_length_ref()), because);
    gather->factors.own *= figure.value;
}

static bool add_ground(struct Gather *gather)
{
    const struct Situation *situation = gather->situation;
    if (!situation->in_ground) {
        return true;
    }
    struct Figure soil;
    if (!soil_resistivity(situation->soil_k_m_per_w, situation->in_duct, &soil)) {
        return lacking(gather, "Table 4B3 ends at 3 K.m/W",
                       "have the soil's thermal resistivity looked at, or bed the cable");
    }
    const char *soil_because = with_row(gather, "soil of", situation->soil_k_m_per_w, soil.row, "K.m/W");
    if (soil.value > 1 && !within(situation->depth_m, soil_table_deepest_m)) {
        soil.value = 1;
        soil_because = "Table 4B3 is for depths to 0.8 m: no gain taken deeper";
    }
    add(gather, "Cs", soil.value, table_source(gather->arena, soil_resistivity_ref()), soil_because);
    struct Figure depth;
    if (!laying_depth(situation->depth_m, situation->in_duct, &depth)) {
        return lacking(gather, "Table 4B4 ends at 3 m", "lay it less deep");
    }
    const char *depth_because = with_row(gather, "laid at", situation->depth_m, depth.row, "m");
    if (depth.value > 1) {
        depth.value = 1; /* shallow ground is warmer ground: no gain is taken for it */
        depth_because = "laid at less than 0.7 m: no gain taken";
    }
    add(gather, "Cd", depth.value, table_source(gather->arena, laying_depth_ref()), depth_because);
    gather->factors.own *= soil.value * depth.value;
    return true;
}

/* Not about heat: they keep the device's tripping current below 1.45 times what the cable carries. */
static void add_overload(struct Gather *gather)
{
    if (gather->situation->in_ground) {
        add(gather, "Cc", 0.9, "BS 7671 433.1.203", "in the ground, protected against overload");
    }
    if (gather->terms->semi_enclosed) {
        add(gather, "Cf", 0.725, "BS 7671 433.1.202", "protected by a BS 3036 fuse");
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
    const char *because = NULL;
    if (gather->arena != NULL) {
        because = arena_print(gather->arena, "%s %% third harmonic%s", number(gather, percent),
                              on_neutral ? ": the neutral carries most, and the cable is sized on it" : "");
    }
    add(gather, "Ch", value, table_source(gather->arena, harmonic_ref()), because);
    gather->factors.own *= value;
}

struct Factors segment_factors(struct Arena *arena, const struct Situation *situation, const struct RunTerms *terms,
                               double size_mm2)
{
    struct Gather gather = {
        .arena = arena,
        .situation = situation,
        .terms = terms,
        .size_mm2 = size_mm2,
        .factors = {.product = 1, .ambient = 1, .own = 1},
    };
    if (add_ambient(&gather) && add_sun(&gather) && add_grouping(&gather) && add_ground(&gather)) {
        add_insulation(&gather);
        add_harmonics(&gather);
        add_overload(&gather);
    }
    return gather.factors;
}
