/* Drawing a cable through straights, slopes and bends, from each end, and what it stands. Nothing is rounded between
 * steps: a published example loses up to 6 % that way. */
#include "mechanics_private.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

double pull_straight(double tension, const struct PullLoad *load, double length, double rise, double crowd)
{
    if (!(length > 0)) {
        return tension;
    }
    const double sine = fmax(-1, fmin(1, rise / length));
    const double cosine = sqrt(1 - sine * sine);
    return fmax(0, tension + load->weight * length * (crowd * load->friction * cosine + sine));
}

double pull_bend(double tension, double friction, double bend_deg, double crowd)
{
    return tension * exp(crowd * friction * bend_deg * pi / 180);
}

struct Pull pull_begin(const struct PullLoad *load)
{
    return (struct Pull){.tension = load->start};
}

static void go_straight(struct Pull *pull, const struct PullLoad *load, const struct PullPiece *piece)
{
    pull->tension = pull_straight(pull->tension, load, piece->length, piece->rise, piece->crowd);
}

static void go_round(struct Pull *pull, const struct PullLoad *load, const struct PullPiece *piece)
{
    if (!(piece->bend_deg > 0)) {
        return;
    }
    pull->tension = pull_bend(pull->tension, load->friction, piece->bend_deg, piece->crowd);
    pull->bends_deg += piece->bend_deg;
    if (piece->radius > 0) {
        pull->sidewall = fmax(pull->sidewall, piece->pressed * pull->tension / piece->radius);
    }
    if (piece->open) {
        pull->open = fmax(pull->open, piece->pressed * pull->tension);
    }
}

/* Straight, then bend; or the other way about. Where the bend's place is not known a straight that adds tension is
 * worst before it, and one that takes some off is worst after it. */
static void go_over(struct Pull *pull, const struct PullLoad *load, const struct PullPiece *piece, bool bend_first)
{
    const double alone = piece->anywhere ? pull_straight(0, load, piece->length, piece->rise, piece->crowd) : 0;
    if (piece->anywhere ? !(alone > 0) : bend_first) {
        go_round(pull, load, piece);
        go_straight(pull, load, piece);
    } else {
        go_straight(pull, load, piece);
        go_round(pull, load, piece);
    }
}

void pull_over(struct Pull *pull, const struct PullLoad *load, const struct PullPiece *piece)
{
    go_over(pull, load, piece, false);
}

void pull_back_over(struct Pull *pull, const struct PullLoad *load, const struct PullPiece *piece)
{
    struct PullPiece turned = *piece;
    turned.rise = -piece->rise;
    go_over(pull, load, &turned, true);
}

struct Pull pull_through(const struct PullPiece *pieces, int count, const struct PullLoad *load)
{
    struct Pull pull = pull_begin(load);
    for (int i = 0; i < count; i++) {
        pull_over(&pull, load, &pieces[i]);
    }
    return pull;
}

struct Pull pull_back_through(const struct PullPiece *pieces, int count, const struct PullLoad *load)
{
    struct Pull pull = pull_begin(load);
    for (int i = count - 1; i >= 0; i--) {
        pull_back_over(&pull, load, &pieces[i]);
    }
    return pull;
}

double pull_strain(const struct Pull *pull, const struct PullStrength *strength)
{
    return fmax(pull->tension / strength->tension, pull->sidewall / strength->sidewall);
}

struct PullLimit pull_limit(bool armoured, double copper_mm2, double overall_mm, int cables)
{
    const struct PullLimits *rules = pull_limits();
    struct PullLimit limit = {.copper_n = rules->copper_n_per_mm2 * copper_mm2,
                              .stocking_n = rules->stocking_n_per_mm * overall_mm,
                              .armour_n = armoured ? rules->stocking_armour_n_per_mm2 * overall_mm * overall_mm : 0,
                              .part = cables > rules->many_over ? rules->many : 1};
    limit.least_n = fmin(limit.copper_n, limit.stocking_n);
    if (armoured) {
        limit.least_n = fmin(limit.least_n, limit.armour_n);
    }
    limit.least_n *= limit.part;
    return limit;
}

/* 1 / cos of half the angle that two touching cables make at the middle of the bore. However they lie, the two forces
 * of the wall hold up their weight and stand at that angle to each other, so their sum is this much of the weight at
 * most. */
static bool crowd_of_two(double a_mm, double b_mm, double bore_mm, double *out)
{
    const double to_a = (bore_mm - a_mm) / 2;
    const double to_b = (bore_mm - b_mm) / 2;
    const double apart = (a_mm + b_mm) / 2;
    if (!(to_a > 0) || !(to_b > 0) || apart >= to_a + to_b) {
        return false;
    }
    const double cosine = fmin(1, (to_a * to_a + to_b * to_b - apart * apart) / (2 * to_a * to_b));
    *out = 1 / sqrt((1 + cosine) / 2);
    return true;
}

/* d / (D - d) of the largest, no more than where `just_fit` cables of one diameter fill the bore. */
static double crowded(const struct Bunch *bunch, double bore_mm, double just_fit)
{
    const double room_mm = bore_mm - bunch->largest_mm;
    return room_mm > 0 ? fmin(just_fit, bunch->largest_mm / room_mm) : just_fit;
}

static double three_crowded(const struct Bunch *bunch, double bore_mm)
{
    return crowded(bunch, bore_mm, sqrt(3.0) / 2); /* their middles on a triangle of side d */
}

static double four_crowded(const struct Bunch *bunch, double bore_mm)
{
    return crowded(bunch, bore_mm, sqrt(0.5)); /* on a square of side d */
}

bool pull_crowd(const struct Bunch *bunch, double bore_mm, double *out)
{
    double x;
    switch (bunch->count) {
    case 1: *out = 1; return true;
    case 2: return crowd_of_two(bunch->largest_mm, bunch->sum_mm - bunch->largest_mm, bore_mm, out);
    case 3:
        x = three_crowded(bunch, bore_mm);
        *out = 1 + 4.0 / 3 * x * x;
        return true;
    case 4:
        x = four_crowded(bunch, bore_mm);
        *out = 1 + 2 * x * x;
        return true;
    default: return false;
    }
}

double pull_pressed(const struct Bunch *bunch, double bore_mm, double crowd)
{
    if (bunch->count <= 1) {
        return 1;
    }
    if (bunch->count == 2) {
        /* the second lies on the first, with a force that goes with its weight, as the square of its diameter */
        const double both = bunch->squares_mm2 / (bunch->largest_mm * bunch->largest_mm);
        return both * fmax(1, crowd / sqrt(2.0)); /* steeper than a right angle they wedge */
    }
    if (bunch->count == 3) {
        const double x = three_crowded(bunch, bore_mm);
        return fmax(3 * crowd - 2, 1.5 / sqrt(1 - x * x));
    }
    return bunch->count * crowd;
}

enum { PLACES = 100 }; /* that are tried, evenly along the way */

/* The part of a piece between two distances from its start. The bend at its end goes with the part that reaches the
 * end. */
static struct PullPiece part_of(const struct PullPiece *piece, double from, double to)
{
    struct PullPiece part = *piece;
    const double part_from = fmax(0, from);
    const double part_to = fmin(piece->length, to);
    const double share = piece->length > 0 ? fmax(0, part_to - part_from) / piece->length : 0;
    part.length = piece->length * share;
    part.rise = piece->rise * share;
    if (to <= piece->length || from > piece->length) {
        part.bend_deg = 0;
    }
    return part;
}

/* The better of both directions over the way between two distances. */
static struct Pull best_between(const struct PullPiece *pieces, int count, double from, double to,
                                const struct PullLoad *load, const struct PullStrength *strength)
{
    struct Pull forth = pull_begin(load);
    struct Pull back = pull_begin(load);
    double at = 0;
    for (int i = 0; i < count; i++) {
        const struct PullPiece part = part_of(&pieces[i], from - at, to - at);
        pull_over(&forth, load, &part);
        at += pieces[i].length;
    }
    for (int i = count - 1; i >= 0; i--) {
        at -= pieces[i].length;
        const struct PullPiece part = part_of(&pieces[i], from - at, to - at);
        pull_back_over(&back, load, &part);
    }
    return pull_strain(&back, strength) < pull_strain(&forth, strength) ? back : forth;
}

static double strain_and_bends(const struct Pull *pull, const struct PullStrength *strength)
{
    return fmax(pull_strain(pull, strength), pull->bends_deg / strength->bends_deg);
}

bool pull_pit(const struct PullPiece *pieces, int count, const struct PullLoad *load,
              const struct PullStrength *strength, double *out_at, double *out_tension)
{
    double length = 0;
    double least = HUGE_VAL;
    for (int i = 0; i < count; i++) {
        length += pieces[i].length;
    }
    for (int place = 1; place < PLACES; place++) {
        const double at = length * place / PLACES;
        const struct Pull before = best_between(pieces, count, 0, at, load, strength);
        const struct Pull after = best_between(pieces, count, at, HUGE_VAL, load, strength);
        const double strain = fmax(strain_and_bends(&before, strength), strain_and_bends(&after, strength));
        if (strain < least) {
            least = strain;
            *out_at = at;
            *out_tension = fmax(before.tension, after.tension);
        }
    }
    return within(least, 1);
}
