/* What one size carries, stretch by stretch, and what it drops. */
#include "rating_private.h"

#include <string.h>

/* What a size carries in one situation, in numbers. */
struct Carried {
    double tabulated_a;
    double capacity_a;
    double ambient, own; /* as in struct FactorSums */
    const struct Lack *lacks;
};

enum { GAPS_NAMED = 3 };
static const struct Lack no_capacity = {PHRASE_NO_CAPACITY, PHRASE_TAKE_LISTED_SIZE, SAY_NO_CAPACITY_FOR_SIZE};
static const struct Lack no_drop = {PHRASE_NO_DROP, PHRASE_TAKE_LISTED_SIZE, SAY_NO_DROP_FOR_SIZE};

/* A size while stretch after stretch is looked at, with what the table gave for each method last. */
struct Size {
    double mm2;
    struct Tabulated {
        bool looked_up, held;
        enum CapacityTable table;
        double a;
    } by_method[METHOD_COUNT];
};

static bool tabulated_a(const struct RunDesign *run, const struct Situation *situation, struct Size *size,
                        double *out_a)
{
    struct Tabulated *last = &size->by_method[situation->method];
    if (!last->looked_up || last->table != situation->table) {
        const int loaded = run->phases == 3 ? 3 : 2;
        *last = (struct Tabulated){.looked_up = true, .table = situation->table};
        last->held = capacity_amperes(run->edition, situation->table, size->mm2, situation->method, loaded, &last->a);
    }
    *out_a = last->a;
    return last->held;
}

static struct Carried carry(const struct RunDesign *run, const struct Situation *situation, struct Size *size)
{
    struct Carried carried = {0};
    if (!situation->covered) {
        carried.lacks = situation->lacks;
        return carried;
    }
    if (!tabulated_a(run, situation, size, &carried.tabulated_a)) {
        carried.lacks = &no_capacity;
        return carried;
    }
    const struct FactorSums sums = factor_sums(situation, &run->terms, size->mm2);
    carried.lacks = sums.lacks;
    carried.capacity_a = carried.tabulated_a * sums.product;
    carried.ambient = sums.ambient;
    carried.own = sums.own;
    return carried;
}

/* A hole through a wall is rated by the worst of its two neighbours and of what it passes through. */
struct Choice {
    const struct Situation *situation;
    int as_stretch; /* whose neighbour's situation it is; -1: its own */
    struct Carried carried;
    bool one_lacks; /* one of them has no figure, whichever was taken */
};

/* As hot as it may get where no table gives what it carries. */
static double degc_of(const struct RunDesign *run, const struct Choice *choice)
{
    const struct Situation *situation = choice->situation;
    const struct Carried *carried = &choice->carried;
    return carried->lacks != NULL
               ? situation->conductor_degc
               : conductor_temperature(situation->conductor_degc, situation->in_ground, run->demand.design_a,
                                       carried->tabulated_a, carried->ambient, carried->own);
}

/* What is too little for certain fails whatever another would carry; what is not known comes before what will do. */
static int badness(const struct RunDesign *run, const struct Carried *carried)
{
    return carried->lacks != NULL ? 1 : within(run->rating_a, carried->capacity_a) ? 0 : 2;
}

static bool is_worse(const struct RunDesign *run, const struct Carried *carried, const struct Carried *than)
{
    const int bad = badness(run, carried), before = badness(run, than);
    return bad > before || (bad == before && (carried->lacks != NULL || carried->capacity_a < than->capacity_a));
}

static void take_worse(struct Choice *choice, const struct RunDesign *run, const struct Situation *situation,
                       int as_stretch, struct Size *size)
{
    const struct Carried carried = carry(run, situation, size);
    choice->one_lacks = choice->one_lacks || carried.lacks != NULL;
    if (choice->situation == NULL || is_worse(run, &carried, &choice->carried)) {
        choice->situation = situation;
        choice->as_stretch = as_stretch;
        choice->carried = carried;
    }
}

static struct Choice carry_stretch(const struct RunDesign *run, int stretch, struct Size *size)
{
    struct Choice choice = {.as_stretch = -1};
    const struct Situation *own = &run->situations[stretch];
    if (!survey_hole(own->way)) {
        choice.situation = own;
        choice.carried = carry(run, own, size);
        return choice;
    }
    if (run->before[stretch] >= 0) {
        take_worse(&choice, run, &run->situations[run->before[stretch]], run->before[stretch], size);
    }
    if (run->after[stretch] >= 0) {
        take_worse(&choice, run, &run->situations[run->after[stretch]], run->after[stretch], size);
    }
    if (run->walls[stretch] != NULL) {
        take_worse(&choice, run, run->walls[stretch], -1, size);
    }
    if (choice.situation == NULL) { /* a run of nothing but a hole: as clipped to the wall */
        take_worse(&choice, run, own, -1, size);
    }
    return choice;
}

/* Drop of a metre at the conductor's own temperature; BS 3036 fuses get no credit (Appendix 4, 6.1). */
static double expected_v_per_m(const struct RunDesign *run, const struct Trial *trial, double conductor_degc)
{
    return run->terms.semi_enclosed
               ? trial->v_per_m
               : drop_mv_at(&trial->drop, resistance_ratio(conductor_degc, drop_degc(run->edition, run->drop_table))) /
                     1000;
}

/* Of stretches that carry the same, one with a figure of its own governs, not the hole that takes it from there. */
static bool governs(const struct Trial *trial, const struct Choice *choice)
{
    if (trial->governing < 0 || choice->carried.capacity_a < trial->capacity_a) {
        return true;
    }
    return trial->governing_inherits && choice->as_stretch < 0 && within(choice->carried.capacity_a, trial->capacity_a);
}

/* Once the drops are added up. */
static void drop_as_part(const struct RunDesign *run, double length_m, struct Trial *trial)
{
    trial->drop_percent = trial->drop_v / trial->drop.voltage_v * 100;
    if (drop_rise(run->edition, run->drop_table, trial->size_mm2, &run->loads, &trial->rise)) {
        trial->rise_v = trial->rise.mv_per_m * length_m / 1000;
    }
}

static void add_gap(const struct RunDesign *run, struct Trial *trial, const struct Lack *lacks, int stretch)
{
    if (trial->gaps++ == 0) {
        trial->gap = lacks;
        trial->gap_at = stretch;
    }
    trial->gap_at_end = trial->gap_at_end || stretch == 0 || stretch == run->count - 1;
}

const struct Choice *rate_choices(struct Arena *arena, const struct RunDesign *run, double size_mm2)
{
    struct Size size = {.mm2 = size_mm2};
    struct Choice *choices = arena_array(arena, (size_t)run->count, sizeof *choices);
    for (int i = 0; choices != NULL && i < run->count; i++) {
        choices[i] = carry_stretch(run, i, &size);
    }
    return choices;
}

static void take_end(const struct RunDesign *run, const struct Choice *choice, int stretch, struct Trial *trial)
{
    const double degc = degc_of(run, choice);
    if (stretch == 0 || degc > trial->hottest_end_degc) {
        trial->hottest_end_degc = degc;
        trial->hottest_end = stretch;
    }
}

struct Trial rate_size(const struct RunDesign *run, double size_mm2)
{
    return rate_chosen(run, size_mm2, NULL);
}

struct Trial rate_chosen(const struct RunDesign *run, double size_mm2, const struct Choice *choices)
{
    struct Trial trial = {.size_mm2 = size_mm2, .governing = -1};
    struct Size size = {.mm2 = size_mm2};
    if (!drop_worst(run->edition, run->drop_table, size_mm2, &run->loads, &trial.drop)) {
        trial.lacks = &no_drop;
        return trial;
    }
    trial.v_per_m = trial.drop.mv_per_m / 1000;
    for (int i = 0; i < run->count; i++) {
        const struct Choice choice = choices != NULL ? choices[i] : carry_stretch(run, i, &size);
        const struct Carried *carried = &choice.carried;
        trial.gaps_behind += choice.one_lacks && carried->lacks == NULL;
        if (carried->lacks != NULL) {
            add_gap(run, &trial, carried->lacks, i);
        } else if (governs(&trial, &choice)) {
            trial.capacity_a = carried->capacity_a;
            trial.governing = i;
            trial.governing_inherits = choice.as_stretch >= 0;
        }
        if (i == 0 || i == run->count - 1) {
            take_end(run, &choice, i, &trial);
        }
        trial.drop_v += trial.v_per_m * run->electrical_m[i];
    }
    drop_as_part(run, run->electrical_length_m, &trial);
    if (trial.governing < 0) { /* then there is nothing to say of the rest */
        trial.lacks = trial.gap;
        trial.lacks_at = trial.gap_at;
    }
    return trial;
}

const struct Lack *rate_lack(const struct RunDesign *run, const struct Trial *trial, int stretch)
{
    struct Size size = {.mm2 = trial->size_mm2};
    return carry_stretch(run, stretch, &size).carried.lacks;
}

const struct Say *gaps_said(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial)
{
    const struct Say *names = NULL;
    for (int i = 0, named = 0; trial->gaps > 0 && i < run->count && named < GAPS_NAMED; i++) {
        if (rate_lack(run, trial, i) != NULL) {
            names = say_list(arena, SAY_COMMA, names, say_name(run->segments[run->run->along[i]].name));
            named++;
        }
    }
    if (names == NULL) {
        return NULL;
    }
    if (trial->gaps > GAPS_NAMED) {
        names = say(arena, SAY_AND_MORE, say_part(names), say_count(trial->gaps - GAPS_NAMED));
    }
    return say(arena, SAY_NO_FIGURE_AT, say_part(names), say_term(trial->gap->said));
}

void open_by_gaps(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    const struct Say *text = say_then(arena, out->text, gaps_said(arena, run, trial));
    if (out->result == CHECK_PASS) {
        check_unsettled(out, settles_reading(SAY_SETTLED_BY_HELD_FIGURE), text);
    } else if (out->result == CHECK_FAIL) {
        out->text = text;
    }
}

struct Trial rate_longer(const struct RunDesign *run, const struct Trial *trial, double more_m)
{
    struct Trial longer = *trial;
    longer.drop_v += trial->v_per_m * more_m;
    drop_as_part(run, run->electrical_length_m + more_m, &longer);
    return longer;
}

/* IEC 60364-5-52 and insulation that is thick and long: beyond a metre the half that Table 52.2 ends with falls short.
 */
static const struct Say *warning_of(struct Arena *arena, const struct Situation *situation)
{
    if (situation->insulated_mm > clause_ratings()->surrounded_enough_mm) {
        return say(arena, SAY_MUCH_INSULATION, say_digits(clause_ratings()->surrounded_enough_mm / 1000, 1, UNIT_M),
                   say_fixed(clause_ratings()->surrounded, 2, UNIT_NONE));
    }
    if (situation->full_sun && situation->ambient_degc > design_practice()->sun_hottest_degc) {
        return say(arena, SAY_SUN_ON_HOT_AIR, say_digits(design_practice()->sun_hottest_degc, 3, UNIT_DEGC),
                   say_digits(design_practice()->sun_rise_k, 3, UNIT_K));
    }
    return NULL;
}

static const struct Say *cooler_table(struct Arena *arena, const struct Situation *situation,
                                      const struct RunTerms *terms)
{
    if (terms->conductor_degc < cable_kind(terms->type)->insulation_degc) {
        return say(arena, SAY_COOLER_FOR_TERMINALS);
    }
    return situation->cooler_run == NULL ? NULL : say(arena, SAY_COOLER_FOR_RUN, say_name(situation->cooler_run));
}

static const struct Say *reason(struct Arena *arena, const struct Choice *choice, const struct RunDesign *run)
{
    const struct Situation *situation = choice->situation;
    struct SayArg place = say_term(situation->because);
    if (choice->as_stretch >= 0) {
        const char *beside = run->segments[run->run->along[choice->as_stretch]].name;
        place = say_part(say(arena, SAY_AS_BESIDE_WALL, say_name(beside), place));
    }
    return say(arena, SAY_RATED_BY, place, say_term(situation->judgement),
               say_part(cooler_table(arena, situation, &run->terms)));
}

static void fill_drop(const struct RunDesign *run, const struct Trial *trial, int stretch, struct Rating *out)
{
    out->electrical_length_m = run->electrical_m[stretch];
    out->drop_v = trial->v_per_m * run->electrical_m[stretch];
    out->drop_percent = out->drop_v / trial->drop.voltage_v * 100;
    out->drop_share = trial->drop_v > 0 ? out->drop_v / trial->drop_v : 0;
    out->drop_expected_v = expected_v_per_m(run, trial, out->conductor_degc) * run->electrical_m[stretch];
}

/* What is known where no table gives what it carries. */
static void fill_gap(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int stretch,
                     const struct Choice *choice, struct Rating *out)
{
    *out = (struct Rating){.segment = run->run->along[stretch],
                           .method = "",
                           .table = "",
                           .lacks = say(arena, choice->carried.lacks->said),
                           .conductor_degc = choice->situation->conductor_degc};
    fill_drop(run, trial, stretch, out);
}

static void fill_rating(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int stretch,
                        const struct Choice *choice, struct Rating *out)
{
    if (choice->carried.lacks != NULL) {
        fill_gap(arena, run, trial, stretch, choice, out);
        return;
    }
    const struct Situation *situation = choice->situation;
    *out = (struct Rating){
        .segment = run->run->along[stretch],
        .method = method_name(situation->method),
        .table = capacity_ref(run->edition, situation->table)->table,
        .table_degc = capacity_degc(run->edition, situation->table),
        .tabulated_a = choice->carried.tabulated_a,
        .capacity_a = choice->carried.capacity_a,
        .conductor_degc = degc_of(run, choice),
    };
    fill_drop(run, trial, stretch, out);
    if (run->unsaid) {
        out->factor = factor_sums(situation, &run->terms, trial->size_mm2).product;
        return;
    }
    struct Factor factors[RATING_FACTORS_MOST];
    int count;
    out->factor = segment_factors(arena, situation, &run->terms, trial->size_mm2, factors, &count).product;
    out->because = reason(arena, choice, run);
    out->judgement = situation->judgement == SAY_NOTHING ? NULL : say(arena, situation->judgement);
    out->warning = warning_of(arena, situation);
    struct Factor *kept = arena_array(arena, (size_t)count, sizeof *kept);
    if (kept != NULL) {
        memcpy(kept, factors, (size_t)count * sizeof *kept);
        out->factors = kept;
        out->factor_count = count;
    }
}

void rate_stretch(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int stretch,
                  struct Rating *out)
{
    struct Size size = {.mm2 = trial->size_mm2};
    const struct Choice choice = carry_stretch(run, stretch, &size);
    fill_rating(arena, run, trial, stretch, &choice, out);
}

void rate_with_working(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int stretch,
                       struct Rating *out)
{
    struct Size size = {.mm2 = trial->size_mm2};
    const struct Choice choice = carry_stretch(run, stretch, &size);
    fill_rating(arena, run, trial, stretch, &choice, out);
    if (out->lacks == NULL) {
        work_rating(arena, run, choice.situation, out);
    }
    work_drop_part(arena, run, trial, stretch, out);
}

const struct Rating *rate_fully(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial)
{
    struct Rating *ratings = arena_array(arena, (size_t)run->count, sizeof *ratings);
    for (int i = 0; ratings != NULL && i < run->count; i++) {
        rate_stretch(arena, run, trial, i, &ratings[i]);
    }
    return ratings;
}

/* BS 7671 Appendix 4, 6.1 has  t = tp - (Ca^2 Cg^2 - (Ib/It)^2) (tp - t0).  Ca and Cg (and the sun) stand as a warmer
 * surrounding. Insulation, soil and depth keep in the heat that the cable makes itself, so there Ib is compared with
 * It Ci Cs Cd; without them this is the printed formula. At Ib = It Ca Cg Ci Cs Cd it gives tp. */
double temperature_base_degc(bool in_ground)
{
    return in_ground ? clause_ratings()->ground_degc : clause_ratings()->air_degc;
}

double conductor_temperature(double conductor_degc, bool in_ground, double current_a, double tabulated_a,
                             double ambient, double own)
{
    const double base_degc = temperature_base_degc(in_ground);
    const double load = current_a / (tabulated_a * own);
    return conductor_degc - (ambient * ambient - load * load) * (conductor_degc - base_degc);
}

double resistance_ratio(double at_degc, double table_degc)
{
    const double inverse_degc = clause_ratings()->copper_inverse_degc;
    const double ratio = (inverse_degc + at_degc) / (inverse_degc + table_degc);
    return ratio < 1.0 ? ratio : 1.0;
}
