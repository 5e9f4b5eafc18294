/* Lengths of conduit, tray, trunking and duct that are cut up for stretches which do not meet: what is left of one
 * length serves another stretch only where it is long enough. A stretch longer than a length takes whole ones first,
 * as its couplers are counted. First fit, longest first: never too few. */
#include "parts_private.h"

#include <math.h>

void parts_add_stretch(struct Counting *counting, const char *code, double length_m)
{
    for (int i = 0; i < counting->count; i++) {
        struct Tally *tally = &counting->tallies[i];
        if (text_same(tally->article.code, code)) {
            struct Stretch *stretch = arena_alloc(counting->arena, sizeof *stretch);
            if (stretch != NULL) {
                *stretch = (struct Stretch){.length_m = length_m, .next = tally->stretches};
                tally->stretches = stretch;
                tally->stretch_count++;
            }
            return;
        }
    }
}

/* Falling. */
static void sort(double *pieces, int count)
{
    for (int i = 1; i < count; i++) {
        const double piece = pieces[i];
        int at = i;
        for (; at > 0 && pieces[at - 1] < piece; at--) {
            pieces[at] = pieces[at - 1];
        }
        pieces[at] = piece;
    }
}

static int first_fit(const double *pieces, int count, double whole_m, double *left_m)
{
    int used = 0;
    for (int i = 0; i < count; i++) {
        int at = 0;
        while (at < used && left_m[at] < pieces[i] - 1e-9) {
            at++;
        }
        if (at == used) {
            left_m[used++] = whole_m;
        }
        left_m[at] -= pieces[i];
    }
    return used;
}

int parts_lengths(struct Arena *arena, const struct Tally *tally, double whole_m, double more)
{
    double *pieces = arena_array(arena, (size_t)tally->stretch_count + 1, sizeof *pieces);
    double *left_m = arena_array(arena, (size_t)tally->stretch_count + 1, sizeof *left_m);
    if (pieces == NULL || left_m == NULL) {
        return 0;
    }
    int whole = 0;
    int count = 0;
    for (const struct Stretch *stretch = tally->stretches; stretch != NULL; stretch = stretch->next) {
        const double length_m = stretch->length_m * more;
        const double lengths = floor(length_m / whole_m + 1e-9);
        whole += (int)lengths;
        const double rest_m = length_m - lengths * whole_m;
        if (rest_m > 1e-6) {
            pieces[count++] = rest_m;
        }
    }
    sort(pieces, count);
    return whole + first_fit(pieces, count, whole_m, left_m);
}
