/* Least bore of buried ducts by their nominal outside size.
 *
 * Source: BS EN 61386-24, least inside diameter, about 75 % of the outside.
 * Trust:  from memory, not verified. Real ducts are wider: makers sell 63 mm outside with a bore of about 50 mm.
 * Whoever knows the bore of the duct bought has more room than this says. Rows:   nominal sizes; what lies between two
 * takes the smaller one's bore, which is the safer, beyond the last the last one's; below the first no figure. */
#include "mechanics_tables.h"
#include "tables_private.h"

/* clang-format off */
static const double nominal[] = {25, 32, 40, 50, 63, 75, 90, 110, 125, 160, 180, 200};
static const double bores[]   = {18, 24, 30, 37, 47, 56, 67,  82,  94, 120, 135, 150};
/* clang-format on */
_Static_assert(COUNT_OF(nominal) == COUNT_OF(bores), "a bore for every size");

bool duct_bore(double nominal_mm, struct Figure *out)
{
    int found = -1;
    while (found + 1 < COUNT_OF(nominal) &&
           (nominal[found + 1] <= nominal_mm || lookup_same(nominal[found + 1], nominal_mm))) {
        found++;
    }
    if (found < 0) {
        return false;
    }
    *out = (struct Figure){.value = bores[found], .row = nominal[found]};
    return true;
}

int duct_sizes(const double **nominal_mm)
{
    *nominal_mm = nominal;
    return COUNT_OF(nominal);
}

void duct_bore_cells(struct TextBuilder *out)
{
    text_add(out, "outside mm,least bore mm\n");
    for (int row = 0; row < COUNT_OF(nominal); row++) {
        cells_row(out, (const double[]){nominal[row], bores[row]}, 2);
    }
}

const struct TableRef *duct_bore_ref(void)
{
    static const struct TableRef ref = {.standard = "BS EN 61386-24",
                                        "least inside diameter",
                                        "bore of buried ducts",
                                        TRUST_FROM_MEMORY,
                                        "from memory, cautious: ducts as sold are wider",
                                        .words = TABLE_OF_LEAST_BORES};
    return &ref;
}
