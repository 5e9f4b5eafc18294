/* Which diameters a brass gland for armoured cable takes: under the armour and over the outer sheath, mm.
 *
 * Source: a gland maker's fitting sheet for the inner ranges of 20S16 to 32.
 * Trust:  those seen; outer ranges and larger sizes from memory. Makers differ by about 1 mm.
 * Rows:   exact size marks only. The least inner diameter bears on glands that seal inside (E1W) alone. */
#include "tables_private.h"
#include "takeoff_tables.h"

struct RangeRow {
    const char *gland;
    struct GlandRange range; /* inner least and most, outer least and most */
};

/* clang-format off */
static const struct RangeRow rows[] = {
    {"20S16", {3.1, 8.7, 6.1, 13.1}},
    {"20S", {6.1, 11.7, 9.5, 15.9}},
    {"20", {6.5, 14.0, 12.5, 20.9}},
    {"25", {11.1, 20.0, 18.2, 26.2}},
    {"32", {17.0, 26.3, 23.7, 33.9}},
    {"40", {22.0, 32.2, 27.9, 40.4}},
    {"50S", {29.5, 38.2, 35.2, 46.7}},
    {"50", {35.6, 44.1, 40.4, 53.1}},
    {"63S", {40.1, 50.0, 45.6, 59.4}},
    {"63", {47.2, 56.0, 54.6, 65.9}},
    {"75S", {52.8, 62.0, 59.0, 72.1}},
    {"75", {59.1, 68.0, 66.7, 78.5}},
};
/* clang-format on */

bool gland_range(const char *size, struct GlandRange *out)
{
    for (int index = 0; index < COUNT_OF(rows); index++) {
        if (text_same(rows[index].gland, size)) {
            *out = rows[index].range;
            return true;
        }
    }
    return false;
}

void gland_range_cells(struct TextBuilder *out)
{
    text_add(out, "gland,inner from mm,inner to mm,outer from mm,outer to mm\n");
    for (int row = 0; row < COUNT_OF(rows); row++) {
        const struct GlandRange *range = &rows[row].range;
        cells_text(out, rows[row].gland, false);
        cells_row(out,
                  (const double[]){range->inner_min_mm, range->inner_max_mm, range->outer_min_mm, range->outer_max_mm},
                  4);
    }
}

const struct TableRef *gland_range_ref(void)
{
    static const struct TableRef ref = {.standard = "a gland maker's fitting sheet",
                                        "ranges",
                                        "diameters that a gland takes",
                                        TRUST_PARTLY_FROM_MEMORY,
                                        "inner to size 32 seen, the rest from memory",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
