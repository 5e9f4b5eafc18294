/* Greatest energy that a circuit-breaker of energy limiting class 3 lets through at its own breaking capacity.
 *
 * Source: BS EN 60898-1, annex ZA, types B and C up to 40 A. The maker's own curve comes before it.
 * Trust:  from memory, all of it; seen are only the types, ratings and breaking capacities that the classes are for.
 * The 40 A rows are 1.2 times those before them. Rows:   the printed bands of ratings; a rating between two bands gets
 * the next band up, which lets more through. Breaking capacities as listed and no others. */
#include "fault_tables_private.h"

#include <stddef.h>

enum { CURVES = 2 };

static const double ratings_a[] = {16, 32, 40}; /* the upper ends of the bands: up to 16, 20 to 32, 40 */
static const double capacities_a[] = {3000, 4500, 6000, 10000};

/* One printed row a line, A2 s */
/* clang-format off */
static const double let_through_a2s[] = {
    /*  rating          3000   4500   6000   10000 A */
    /* B up to 16 */   15000, 25000, 35000,  70000,
    /* B 20 to 32 */   18000, 32000, 45000,  90000,
    /* B       40 */   21600, 38400, 54000, 108000,
    /* C up to 16 */   18000, 30000, 42000,  84000,
    /* C 20 to 32 */   22000, 39000, 55000, 110000,
    /* C       40 */   26400, 46800, 66000, 132000,
};
/* clang-format on */

_Static_assert(COUNT_OF(let_through_a2s) == CURVES * COUNT_OF(ratings_a) * COUNT_OF(capacities_a), "no cell missing");

bool let_through_class_3(enum Curve curve, double rating_a, double breaking_capacity_a, double *out_a2s)
{
    int band = 0;
    int capacity = 0;
    if ((curve != CURVE_B && curve != CURVE_C) || !(rating_a > 0) ||
        !lookup_next_up(ratings_a, COUNT_OF(ratings_a), rating_a, &band) ||
        !lookup_exact(capacities_a, COUNT_OF(capacities_a), breaking_capacity_a, &capacity)) {
        return false;
    }
    const int row = (curve == CURVE_C ? COUNT_OF(ratings_a) : 0) + band;
    *out_a2s = let_through_a2s[row * COUNT_OF(capacities_a) + capacity];
    return true;
}

void let_through_cells(struct TextBuilder *out)
{
    text_add(out, "type,rating to A");
    for (int capacity = 0; capacity < COUNT_OF(capacities_a); capacity++) {
        text_print(out, ",A2 s at %s A", number_significant(out->arena, capacities_a[capacity], 6));
    }
    text_add(out, "\n");
    for (int row = 0; row < CURVES * COUNT_OF(ratings_a); row++) {
        cells_text(out, row < COUNT_OF(ratings_a) ? "B" : "C", false);
        cells_number(out, ratings_a[row % COUNT_OF(ratings_a)], false);
        cells_row(out, let_through_a2s + (ptrdiff_t)row * COUNT_OF(capacities_a), COUNT_OF(capacities_a));
    }
}

const struct TableRef *let_through_ref(void)
{
    static const struct TableRef ref = {.standard = "BS EN 60898-1",
                                        "annex ZA",
                                        "let-through energy of class 3 circuit-breakers",
                                        TRUST_FROM_MEMORY,
                                        "from memory",
                                        .words = TABLE_IN_ANNEX_ZA};
    return &ref;
}
