/* The drop of a run by phasors: every load on its line, the neutral with what they do not cancel.
 *
 * With a conductor z = r + jx, line k drops z (Ik + IN). Looked at in step with the line's own voltage, which is the
 * larger of the two usual readings by a little and what r cos + x sin is, that is a sum over the loads: each one's part
 * stands by itself. So the worst that any of them being on or off can do is the sum of the parts that add, and a load
 * more never lessens it. A load whose power factor is not known counts with z, whatever its angle. */
#include "rating_private.h"

#include <math.h>

static const double half_sqrt_3 = 0.86602540378443864676;

bool drop_of_conductor(const struct Edition *edition, enum DropTable table, double size_mm2, struct DropFigure *out)
{
    struct DropFigure pair;
    struct DropFigure between;
    if (!drop_figure(edition, table, size_mm2, 1, &pair) || !drop_figure(edition, table, size_mm2, 3, &between)) {
        return false;
    }
    *out = (struct DropFigure){.r = fmax(pair.r / 2, between.r / sqrt(3.0)),
                               .x = fmax(pair.x / 2, between.x / sqrt(3.0)),
                               .z = fmax(pair.z / 2, between.z / sqrt(3.0)),
                               .split = pair.split || between.split};
    out->z = fmax(out->z, hypot(out->r, out->x));
    return true;
}

/* Where a load's current stands beside the voltage looked at: how often it flows, and that times cosine and sine of the
 * angle by which the voltage that drives it leads. */
struct Stand {
    double times, cosine, sine;
};

/* 1: the line whose voltage follows that of `line` by 120 degrees; 2: the one that is ahead of it. */
static int behind_by(const struct DropTerms *terms, int line)
{
    const int steps = (line - terms->line + 3) % 3;
    return terms->reversed ? (3 - steps) % 3 : steps;
}

static struct Stand drop_to_neutral(const struct DropTerms *terms, int line)
{
    if (line == LOAD_ON_EVERY_LINE) {
        return (struct Stand){1, 1, 0}; /* the three cancel in the neutral */
    }
    switch (behind_by(terms, line)) {
    case 0: return (struct Stand){2, 2, 0}; /* out by the line, back by the neutral */
    case 1: return (struct Stand){1, -0.5, -half_sqrt_3};
    default: return (struct Stand){1, -0.5, half_sqrt_3};
    }
}

/* A rise is a drop below nothing: what flows in the line's own conductor has no part in it. */
static struct Stand stand_to_neutral(const struct DropTerms *terms, int line)
{
    const struct Stand drop = drop_to_neutral(terms, line);
    if (!terms->rise) {
        return drop;
    }
    const bool by_neutral = line != LOAD_ON_EVERY_LINE && line != terms->line;
    return (struct Stand){by_neutral ? drop.times : 0, -drop.cosine, -drop.sine};
}

static struct Stand stand_in_neutral(const struct DropTerms *terms, int line)
{
    if (line == LOAD_ON_EVERY_LINE) {
        return (struct Stand){0, 0, 0};
    }
    return line == terms->line ? (struct Stand){1, 1, 0} : drop_to_neutral(terms, line);
}

static struct Stand stand_of(const struct DropTerms *terms, const struct LineLoad *load)
{
    switch (terms->of) {
    case DROP_TO_NEUTRAL: return stand_to_neutral(terms, load->line);
    case CURRENT_IN_NEUTRAL: return stand_in_neutral(terms, load->line);
    case DROP_OF_PAIR:
    case DROP_OF_BALANCED: break;
    }
    return (struct Stand){1, 1, 0}; /* the figure holds the way back already */
}

void drop_share(const struct DropTerms *terms, const struct LineLoad *load, double *out_active_a,
                double *out_reactive_a, double *out_unknown_a)
{
    const struct Stand stand = stand_of(terms, load);
    const double cosine = load->power_factor;
    *out_active_a = *out_reactive_a = *out_unknown_a = 0;
    if (cosine <= 0) {
        *out_unknown_a = stand.times * load->current_a;
        return;
    }
    const double sine = sqrt(1 - cosine * cosine);
    *out_active_a = load->current_a * (stand.cosine * cosine + stand.sine * sine);
    *out_reactive_a = load->current_a * (stand.cosine * sine - stand.sine * cosine);
}

static double mv_of(const struct DropFigure *figure, double active_a, double reactive_a, double unknown_a)
{
    return figure->r * active_a + figure->x * reactive_a + figure->z * unknown_a;
}

bool drop_adds(const struct DropTerms *terms, const struct LineLoad *load)
{
    double active_a;
    double reactive_a;
    double unknown_a;
    drop_share(terms, load, &active_a, &reactive_a, &unknown_a);
    return mv_of(&terms->figure, active_a, reactive_a, unknown_a) > 0;
}

static void add_up(struct DropTerms *terms, const struct DropLoads *loads, bool all_on)
{
    terms->active_a = terms->reactive_a = terms->unknown_a = 0;
    for (int i = 0; i < loads->count; i++) {
        if (all_on || drop_adds(terms, &loads->loads[i])) {
            double active_a;
            double reactive_a;
            double unknown_a;
            drop_share(terms, &loads->loads[i], &active_a, &reactive_a, &unknown_a);
            terms->active_a += active_a;
            terms->reactive_a += reactive_a;
            terms->unknown_a += unknown_a;
        }
    }
    terms->mv_per_m = mv_of(&terms->figure, terms->active_a, terms->reactive_a, terms->unknown_a);
}

void drop_add_up(struct DropTerms *terms, const struct DropLoads *loads)
{
    add_up(terms, loads, false);
}

struct DropTerms drop_all_on(const struct DropTerms *terms, const struct DropLoads *loads)
{
    struct DropTerms all = *terms;
    add_up(&all, loads, true);
    return all;
}

static bool any_on(const struct DropLoads *loads, int line)
{
    for (int i = 0; i < loads->count; i++) {
        if (loads->loads[i].line == line) {
            return true;
        }
    }
    return false;
}

static bool any_on_one_line(const struct DropLoads *loads)
{
    return any_on(loads, 0) || any_on(loads, 1) || any_on(loads, 2);
}

/* Each line that feeds a single-phase load, against U0. What three-phase loads see between two lines is never the
 * larger part while power factors are 0.3 or more: the neutral has no share in it. */
static struct DropTerms worst_of_lines(const struct DropFigure *conductor, const struct DropLoads *loads)
{
    struct DropTerms worst = {.voltage_v = 0};
    for (int i = 0; i < 6; i++) {
        struct DropTerms tried = {
            .of = DROP_TO_NEUTRAL, .line = i % 3, .reversed = i >= 3, .figure = *conductor, .voltage_v = loads->u0_v};
        add_up(&tried, loads, false);
        if (any_on(loads, tried.line) && tried.mv_per_m > worst.mv_per_m * (1 + 1e-12)) {
            worst = tried;
        }
    }
    return worst;
}

bool drop_worst(const struct Edition *edition, enum DropTable table, double size_mm2, const struct DropLoads *loads,
                struct DropTerms *out)
{
    struct DropFigure conductor;
    if (loads->phases == 3 && any_on_one_line(loads)) {
        if (!drop_of_conductor(edition, table, size_mm2, &conductor)) {
            return false;
        }
        *out = worst_of_lines(&conductor, loads);
        return true;
    }
    struct DropTerms terms = {.of = loads->phases == 3 ? DROP_OF_BALANCED : DROP_OF_PAIR,
                              .voltage_v = loads->phases == 3 ? sqrt(3.0) * loads->u0_v : loads->u0_v};
    if (!drop_figure(edition, table, size_mm2, loads->phases, &terms.figure)) {
        return false;
    }
    add_up(&terms, loads, true);
    *out = terms;
    return true;
}

bool drop_rise(const struct Edition *edition, enum DropTable table, double size_mm2, const struct DropLoads *loads,
               struct DropTerms *out)
{
    struct DropTerms most = {.voltage_v = 0};
    struct DropFigure conductor;
    if (loads->phases != 3 || !any_on_one_line(loads) || !drop_of_conductor(edition, table, size_mm2, &conductor)) {
        return false;
    }
    for (int i = 0; i < 6; i++) {
        struct DropTerms tried = {.of = DROP_TO_NEUTRAL,
                                  .rise = true,
                                  .line = i % 3,
                                  .reversed = i >= 3,
                                  .figure = conductor,
                                  .voltage_v = loads->u0_v};
        add_up(&tried, loads, false);
        if (tried.mv_per_m > most.mv_per_m * (1 + 1e-12)) {
            most = tried;
        }
    }
    *out = most;
    return most.mv_per_m > 0;
}

double drop_mv_at(const struct DropTerms *terms, double ratio)
{
    const struct DropFigure *figure = &terms->figure;
    /* where r works against the drop its lesser resistance is no credit */
    const double r = terms->active_a > 0 ? figure->r * ratio : figure->r;
    const double z = figure->split ? figure->z * hypot(figure->r * ratio, figure->x) / hypot(figure->r, figure->x)
                                   : figure->z * (figure->r * ratio) / figure->r;
    return r * terms->active_a + figure->x * terms->reactive_a + z * terms->unknown_a;
}

double drop_effective_mv(const struct DropFigure *figure, double power_factor)
{
    if (power_factor <= 0) {
        return figure->z; /* not known: the worst that any power factor gives */
    }
    const double sine = sqrt(1.0 - power_factor * power_factor);
    return figure->r * power_factor + figure->x * sine;
}

double drop_volts(double mv_per_a_m, double current_a, double length_m)
{
    return mv_per_a_m * current_a * length_m / 1000.0;
}
