/* Hook (wraparound) cleats: which number takes a cable.
 *
 * Source: the trade's numbering, a cleat's number being its bore in tenths of an inch; numbers as suppliers list them.
 * Trust:  seen; the rule gives the cleat code of every cable in a supplier's BS 5467 table (tests). Numbers 4 and 20
 *         are derived from the rule.
 * Rows:   the smallest listed number whose bore is the cable's overall diameter or more; beyond the largest no figure.
 */
#include "tables_private.h"

static const int numbers[] = {4, 5, 6, 7, 8, 9, 10, 11, 12, 14, 16, 18, 20};
static const double bore_mm_per_number = 2.54;

bool hook_cleat(double overall_mm, int *out_number)
{
    if (!(overall_mm > 0)) {
        return false;
    }
    for (int index = 0; index < COUNT_OF(numbers); index++) {
        const double bore_mm = bore_mm_per_number * numbers[index];
        if (bore_mm >= overall_mm || lookup_same(bore_mm, overall_mm)) {
            *out_number = numbers[index];
            return true;
        }
    }
    return false;
}

void hook_cleat_cells(struct TextBuilder *out)
{
    text_add(out, "number,diameter to mm\n");
    for (int index = 0; index < COUNT_OF(numbers); index++) {
        cells_row(out, (const double[]){numbers[index], bore_mm_per_number * numbers[index]}, 2);
    }
}

const struct TableRef *hook_cleat_ref(void)
{
    static const struct TableRef ref = {.standard = "trade numbering",
                                        "hook cleats",
                                        "hook cleat number by cable diameter",
                                        TRUST_PUBLISHED,
                                        "seen; agrees with a supplier's table",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
