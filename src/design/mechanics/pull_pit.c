/* Where a draw pit helps: the way is cut in two, and each part is drawn from its better end. */
#include "mechanics_private.h"

#include <math.h>

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
