/* How far data cable keeps from power cable.
 *
 * Source: in air BS EN 50174-2, least separation without a metal barrier, class a (300 mm), times the factor for the
 *         number of power circuits; a circuit is one of 20 A at most between line and neutral, a larger one counts for
 *         as many as make up its current, one on three lines for three. In the ground the distances that a trade
 *         forum's note gives as BS EN 50174 practice.
 * Trust:  in air from memory; in the ground seen, once. Classes b to d, for data cable of known attenuation, and the
 *         shorter distances behind metal are not held: class a is the widest.
 * Rows:   by number of circuits, "up to and including"; beyond the last row its factor of 6 stands in print too. */
#include "mechanics_tables.h"
#include "tables_private.h"

#include <math.h>

static const double class_a_mm = 300;

/* clang-format off */
static const int    circuits_to[] = {  3,   6,   9,  12,  15,  30,  45,  60,  75};
static const double factors[]     = {0.2, 0.4, 0.6, 0.8, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0};
/* clang-format on */
_Static_assert(COUNT_OF(factors) == COUNT_OF(circuits_to) + 1, "a factor for every band and one beyond");

bool separation_in_air_mm(int circuits, double *out)
{
    if (circuits < 1) {
        return false;
    }
    int row = 0;
    while (row < COUNT_OF(circuits_to) && circuits > circuits_to[row]) {
        row++;
    }
    *out = class_a_mm * factors[row];
    return true;
}

struct SeparationInGround separation_in_ground(void)
{
    return (struct SeparationInGround){.earth_mm = 300, .masonry_mm = 100, .concrete_mm = 75};
}

void separation_cells(struct TextBuilder *out)
{
    const struct SeparationInGround ground = separation_in_ground();
    text_add(out, "where,power circuits to,mm\n");
    for (int row = 0; row < COUNT_OF(factors); row++) {
        cells_text(out, "in air", false);
        cells_number(out, row < COUNT_OF(circuits_to) ? circuits_to[row] : HUGE_VAL, false);
        cells_number(out, class_a_mm * factors[row], true);
    }
    text_add(out, "in the ground; earth between,,");
    cells_number(out, ground.earth_mm, true);
    text_add(out, "in the ground; masonry between,,");
    cells_number(out, ground.masonry_mm, true);
    text_add(out, "in the ground; concrete between,,");
    cells_number(out, ground.concrete_mm, true);
}

const struct TableRef *separation_ref(void)
{
    static const struct TableRef ref = {.standard = "BS EN 50174-2",
                                        "separation",
                                        "distance of data cable from power cable",
                                        TRUST_PARTLY_FROM_MEMORY,
                                        "in air from memory, widest class; in the ground seen once",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
