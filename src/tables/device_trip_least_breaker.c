/* The multiple of its rating up to which a circuit-breaker does not open at once: types B, C and D.
 *
 * Source: BS EN 60898-1, Table 7: the lower ends of the ranges of instantaneous tripping.
 * Trust:  from memory.
 * Rows:   the three types and no others. */
#include "fault_tables_private.h"

static const double multiples[] = {[CURVE_B] = 3, [CURVE_C] = 5, [CURVE_D] = 10};

_Static_assert(COUNT_OF(multiples) == CURVE_COUNT, "a multiple for each type");

double breaker_holds(enum Curve curve)
{
    return multiples[(int)curve >= 0 && curve < CURVE_COUNT ? curve : CURVE_B];
}

void breaker_holds_cells(struct TextBuilder *out)
{
    static const char *const curves[CURVE_COUNT] = {[CURVE_B] = "B", [CURVE_C] = "C", [CURVE_D] = "D"};
    text_add(out, "type,times its rating\n");
    for (int curve = 0; curve < CURVE_COUNT; curve++) {
        cells_text(out, curves[curve], false);
        cells_number(out, multiples[curve], true);
    }
}

const struct TableRef *breaker_holds_ref(void)
{
    static const struct TableRef ref = {.standard = "BS EN 60898-1",
                                        "7",
                                        "what a circuit-breaker lets start",
                                        TRUST_FROM_MEMORY,
                                        "from memory",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
