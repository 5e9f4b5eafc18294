/* The brass gland size that usually goes with a BS 5467 armoured cable.
 *
 * Source: suppliers' cable lists with a gland column, each pick held against the gland ranges: where a list names a
 *         gland that does not take the cable, or lists differ, the size that fits was taken.
 * Trust:  two lists agree for 4 to 10, 25, 35 and 70 mm2 with two cores; the rest one list and the fit; 3 x 1.5 and
 *         4 x 2.5 mm2 the fit alone. Ranges differ by about 1 mm between makers: the maker's sheet has the last word.
 * Rows:   exact sizes only; "" for any other cable. */
#include "tables_private.h"

struct GlandRow {
    int cores;
    double size_mm2;
    const char *gland;
};

/* clang-format off */
static const struct GlandRow rows[] = {
    {2, 1.5, "20S"},
    {2, 2.5, "20S"},
    {2,   4, "20S"},
    {2,   6, "20"},
    {2,  10, "20"},
    {2,  16, "25"},
    {2,  25, "25"},
    {2,  35, "25"},
    {2,  50, "32"},
    {2,  70, "32"},
    {2,  95, "32"},
    {3, 1.5, "20S"},
    {3, 2.5, "20S"},
    {3,   4, "20S"},
    {3,   6, "20"},
    {3,  10, "20"},
    {3,  16, "25"},
    {3,  25, "25"},
    {3,  35, "32"},
    {3,  50, "32"},
    {3,  70, "32"},
    {3,  95, "40"},
    {4, 1.5, "20S"},
    {4, 2.5, "20S"},
    {4,   4, "20"},
    {4,   6, "20"},
    {4,  10, "25"},
    {4,  16, "25"},
    {4,  25, "32"},
    {4,  35, "32"},
    {4,  50, "32"},
    {4,  70, "40"},
    {4,  95, "50S"},
    {5, 1.5, "20S"},
    {5, 2.5, "20"},
    {5,   4, "20"},
    {5,   6, "25"},
    {5,  10, "25"},
    {5,  16, "32"},
    {5,  25, "32"},
    {5,  35, "40"},
};
/* clang-format on */

const char *gland_usual(int cores, double size_mm2)
{
    int low = 0;
    for (int high = COUNT_OF(rows); low < high;) {
        const int middle = low + (high - low) / 2;
        const int order = lookup_order(rows[middle].cores, rows[middle].size_mm2, cores, size_mm2);
        if (order == 0) {
            return rows[middle].gland;
        }
        if (order < 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return "";
}

void gland_usual_cells(struct TextBuilder *out)
{
    text_add(out, "cores,mm2,gland\n");
    for (int index = 0; index < COUNT_OF(rows); index++) {
        cells_number(out, rows[index].cores, false);
        cells_number(out, rows[index].size_mm2, false);
        cells_text(out, rows[index].gland, true);
    }
}

const struct TableRef *gland_usual_ref(void)
{
    static const struct TableRef ref = {.standard = "suppliers' cable lists",
                                        "gland column",
                                        "usual gland size of armoured cable",
                                        TRUST_PUBLISHED,
                                        "one or two lists, each held against the gland's range",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
