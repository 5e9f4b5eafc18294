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
