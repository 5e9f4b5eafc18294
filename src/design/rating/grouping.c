/* Cg: other loaded circuits that warm the cable.
 *
 * What lies beside the route says nothing of how the runs of the route's own file lie to each other, so a circuit more
 * never makes the group cooler: all that touch count, in the closest arrangement that any of them has. */
#include "rating_private.h"

#include <math.h>

/* The group as the tables ask for it. */
struct Group {
    int circuits; /**< this one among them */
    bool bunched; /**< in air: else in one layer */
    bool unlike;  /**< sizes further apart than the tables are for */
};

/* Cables spaced in air by so many diameters of the larger need no factor. Where the gap was
 * measured and the diameter is known this is looked at; "spaced" without a gap is taken at its word. */
static bool spaced_enough(const struct Situation *situation, double diameter_mm)
{
    return situation->gap_m <= 0 ||
           (diameter_mm > 0 && situation->gap_m * 1000 > clause_ratings()->spaced_diameters * diameter_mm);
}

/* Side by side in one layer. */
static const enum GroupAir layers[] = {
#define WAY_KIND(symbol, word, meaning, place, round, held, on_timber, of_building, calls, method, because, layer)     \
    GROUP_##layer,
#include "survey/way_kinds.inc"
#undef WAY_KIND
};

static bool sizes_unlike(const struct Situation *situation, double size_mm2)
{
    const struct Span *others = &situation->others;
    if (situation->own_unlike) {
        return true;
    }
    return others->least_mm2 > 0 && !grouping_sizes_alike(size_mm2 < others->least_mm2 ? size_mm2 : others->least_mm2,
                                                          size_mm2 > others->most_mm2 ? size_mm2 : others->most_mm2);
}

static struct Group group_in_air(const struct Situation *situation, double size_mm2, double diameter_mm)
{
    const bool pipe = survey_enclosed(situation->way);
    const bool own = situation->other_runs > 0;
    const bool own_close = own && (pipe || situation->own_lie != LIE_SPACED);
    const bool beside_close = situation->beside > 0 &&
                              !(situation->arrangement == ARRANGEMENT_SPACED && spaced_enough(situation, diameter_mm));
    struct Group group = {.circuits = 1};
    if (own_close || beside_close) {
        group.circuits += situation->other_runs + (beside_close ? situation->beside : 0);
        group.bunched = pipe || (own && situation->own_lie == LIE_BUNCHED) ||
                        (beside_close && situation->arrangement != ARRANGEMENT_SINGLE_LAYER &&
                         situation->arrangement != ARRANGEMENT_SPACED);
        group.unlike = (own && sizes_unlike(situation, size_mm2)) || (beside_close && situation->beside_unlike);
    }
    return group;
}

static enum GroupBuried buried_by_gap(double gap_m, double diameter_mm)
{
    if (gap_m <= 0) {
        return BURIED_ONE_DIAMETER;
    }
    const double *columns_m = clause_ratings()->buried_gap_m;
    if (within(columns_m[2], gap_m)) {
        return BURIED_500_MM;
    }
    if (within(columns_m[1], gap_m)) {
        return BURIED_250_MM;
    }
    if (within(columns_m[0], gap_m)) {
        return BURIED_125_MM;
    }
    return diameter_mm > 0 && within(diameter_mm, gap_m * 1000) ? BURIED_ONE_DIAMETER : BURIED_TOUCHING;
}

static bool beside_apart(const struct Situation *situation)
{
    return situation->arrangement == ARRANGEMENT_SPACED || situation->arrangement == ARRANGEMENT_DUCT_SPACED;
}

/* The columns of Table 4C2 stand from the closest to the widest. */
static enum GroupBuried buried_column(const struct Situation *situation, double diameter_mm)
{
    enum GroupBuried column = BURIED_500_MM;
    if (situation->other_runs > 0) {
        column = situation->own_lie == LIE_SPACED ? BURIED_ONE_DIAMETER : BURIED_TOUCHING;
    }
    if (situation->beside > 0) {
        const enum GroupBuried beside =
            beside_apart(situation) ? buried_by_gap(situation->gap_m, diameter_mm) : BURIED_TOUCHING;
        column = beside < column ? beside : column;
    }
    return column;
}

static enum GroupDucts ducts_column(const struct Situation *situation)
{
    const double gap_m = beside_apart(situation) ? situation->gap_m : 0;
    const double *columns_m = clause_ratings()->ducts_gap_m;
    if (within(columns_m[2], gap_m)) {
        return DUCTS_1000_MM;
    }
    if (within(columns_m[1], gap_m)) {
        return DUCTS_500_MM;
    }
    return within(columns_m[0], gap_m) ? DUCTS_250_MM : DUCTS_TOUCHING;
}

/* Where the sizes are unlike the tables do not hold; the formula is the lower, but that is not left to chance. */
static double lower_if_unlike(bool unlike, int circuits, double table)
{
    const double formula = grouping_unlike(circuits);
    return unlike && formula < table ? formula : table;
}

/* A factor that the formula gives: for what sizes, as far as they are known, and its working. */
static void take_unlike(struct Arena *arena, const struct Situation *situation, double size_mm2, struct Factor *out)
{
    const double least_mm2 = fmin(size_mm2, situation->others.least_mm2);
    const double most_mm2 = fmax(size_mm2, situation->others.most_mm2);
    out->unlike = true;
    if (situation->others.least_mm2 > 0 && !situation->beside_unlike && !grouping_sizes_alike(least_mm2, most_mm2)) {
        out->least_mm2 = least_mm2;
        out->most_mm2 = most_mm2;
    }
    out->source = table_said(arena, grouping_unlike_ref());
    out->numbers = arena_print(arena, "1 / sqrt(%d)", out->circuits);
}

static const struct Say *ducts_source(struct Arena *arena, const struct Edition *edition, int in_duct, int ducts)
{
    const struct Say *here = table_said(arena, grouping_air_ref(edition, GROUP_BUNCHED));
    const struct Say *beside = table_said(arena, factors_ref(edition, FACTORS_GROUPED_DUCTS));
    return ducts == 1 ? here : in_duct == 1 ? beside : say(arena, SAY_AND, say_part(here), say_part(beside));
}

/* Cables in one duct count as bunched (4C1), ducts beside each other by 4C3; with both, both. */
static bool group_in_ducts(struct Arena *arena, const struct Situation *situation, double size_mm2, struct Factor *out)
{
    const bool own_ducts = situation->arrangement == ARRANGEMENT_DUCT_TOUCHING || beside_apart(situation);
    const int in_duct = 1 + situation->other_runs + (own_ducts ? 0 : situation->beside);
    const int ducts = 1 + (own_ducts ? situation->beside : 0);
    struct Figure together = {.value = 1, .row = 1};
    struct Figure apart = {.value = 1, .row = 1};
    if ((in_duct > 1 && !grouping_air(situation->edition, GROUP_BUNCHED, in_duct, &together)) ||
        (ducts > 1 && !grouping_ducts(situation->edition, ducts_column(situation), ducts, &apart))) {
        return false;
    }
    const bool unlike_here =
        (situation->other_runs > 0 && sizes_unlike(situation, size_mm2)) || (!own_ducts && situation->beside_unlike);
    const bool unlike_beside = own_ducts && situation->beside_unlike;
    const double here = lower_if_unlike(unlike_here, in_duct, together.value);
    const double beside = lower_if_unlike(unlike_beside, ducts, apart.value);
    out->value = here * beside;
    out->grouped = GROUPED_IN_DUCTS;
    out->circuits = in_duct;
    out->ducts = ducts;
    out->source = ducts_source(arena, situation->edition, in_duct, ducts);
    const struct Say *tables = out->source;
    if (unlike_here || unlike_beside) {
        take_unlike(arena, situation, size_mm2, out);
    }
    if (out->unlike && ducts > 1) {
        out->source = say(arena, SAY_AND, say_part(out->source), say_part(tables));
        out->numbers =
            arena_print(arena, "%s x %s", number_significant(arena, here, 12), number_significant(arena, beside, 12));
    }
    return true;
}

static bool group_in_ground(struct Arena *arena, const struct Situation *situation, double size_mm2, double diameter_mm,
                            struct Factor *out)
{
    const int circuits = 1 + situation->other_runs + situation->beside;
    const bool unlike = (situation->other_runs > 0 && sizes_unlike(situation, size_mm2)) || situation->beside_unlike;
    struct Figure figure;
    if (!grouping_buried(situation->edition, buried_column(situation, diameter_mm), circuits, &figure)) {
        return false;
    }
    out->value = lower_if_unlike(unlike, circuits, figure.value);
    out->grouped = GROUPED_IN_GROUND;
    out->circuits = circuits;
    out->source = table_said(arena, factors_ref(situation->edition, FACTORS_GROUPED_BURIED));
    if (out->value < figure.value) {
        take_unlike(arena, situation, size_mm2, out);
    }
    return true;
}

bool grouping_factor(struct Arena *arena, const struct Situation *situation, double size_mm2, double diameter_mm,
                     struct Factor *out)
{
    const int all = 1 + situation->other_runs + situation->beside;
    if (all == 1) {
        *out = (struct Factor){.value = 1};
        return true;
    }
    *out = (struct Factor){.cause = FACTOR_GROUPING, .symbol = "Cg", .value = 1};
    if (situation->in_duct) {
        return group_in_ducts(arena, situation, size_mm2, out);
    }
    if (situation->in_ground) {
        return group_in_ground(arena, situation, size_mm2, diameter_mm, out);
    }
    const struct Group group = group_in_air(situation, size_mm2, diameter_mm);
    if (group.circuits == 1) {
        out->grouped = GROUPED_APART;
        out->circuits = all;
        out->source = table_said(arena, grouping_air_ref(situation->edition, GROUP_WALL_LAYER));
        return true;
    }
    struct Figure figure;
    const enum GroupAir column = group.bunched ? GROUP_BUNCHED : layers[situation->way];
    if (!grouping_air(situation->edition, column, group.circuits, &figure)) {
        return false;
    }
    out->value = lower_if_unlike(group.unlike, group.circuits, figure.value);
    out->grouped = group.bunched ? GROUPED_BUNCHED : GROUPED_IN_LAYER;
    out->circuits = group.circuits;
    out->source = table_said(arena, grouping_air_ref(situation->edition, column));
    if (group.unlike) {
        take_unlike(arena, situation, size_mm2, out);
    }
    return true;
}
