/* Least protective conductor by the size of the line conductor alone, without calculating.
 *
 * Source: BS 7671:2018+A2:2022, Table 54.7 (regulation 543.1.4).
 * Trust:  two sources.
 * Rows:   the printed bands: up to 16 mm2 the same size, up to 35 mm2 16, above that half; times k1 over k2 for another
 *         material. For the same material the print has no k, so a k1/k2 under 1 (a separate conductor, which starts
 *         cooler) counts as 1. What is no size or no k has no conductor large enough: infinity. */
#include "edition_private.h"

#include <math.h>

const struct ProtectiveBands protective_size_54_7 = {
    .ref = {TABLES_BS7671, "54.7", "protective conductor by the line's size", TRUST_PUBLISHED, "two sources"},
    .same_up_to_mm2 = 16,
    .constant_up_to_mm2 = 35,
};

static bool up_to(double size_mm2, double end_mm2)
{
    return size_mm2 <= end_mm2 || lookup_same(size_mm2, end_mm2);
}

static bool is_figure(double value)
{
    return isfinite(value) && value > 0;
}

double protective_by_table_mm2(const struct Edition *edition, double line_mm2, double k1, double k2)
{
    if (!is_figure(line_mm2) || !is_figure(k1) || !is_figure(k2)) {
        return INFINITY;
    }
    const struct ProtectiveBands *bands = edition->protective;
    const double ratio = fmax(1, k1 / k2);
    if (up_to(line_mm2, bands->same_up_to_mm2)) {
        return ratio * line_mm2;
    }
    return ratio * (up_to(line_mm2, bands->constant_up_to_mm2) ? bands->same_up_to_mm2 : line_mm2 / 2);
}

void protective_by_table_cells(const struct Edition *edition, struct TextBuilder *out)
{
    text_add(out, "line mm2,protective conductor of the same material mm2\n");
    const struct ProtectiveBands *bands = edition->protective;
    text_print(out, "up to %s,as the line\n", number_significant(out->arena, bands->same_up_to_mm2, 3));
    text_print(out, "up to %s,", number_significant(out->arena, bands->constant_up_to_mm2, 3));
    cells_number(out, bands->same_up_to_mm2, true);
    text_add(out, "above,half the line\n");
}

const struct TableRef *protective_by_table_ref(const struct Edition *edition)
{
    return &edition->protective->ref;
}
