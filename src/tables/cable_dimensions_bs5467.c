/* BS 5467 armoured cable as a thing: diameters, armour wire and weight. Copper, 600/1000 V, nominal sizes.
 *
 * Source: makers' datasheets for BS 5467 cable, crossed with an independent maker's sheet for four cores.
 * Trust:  four cores to 16 mm2 two sources; the rest seen on one family of datasheets, some of it derived by
 *         geometry (overall = under armour + 2 x (wire + sheath)). Allow 5 % either way; weights differ by up to 15 %.
 *         BS 6724 is built to the same dimensions, its sheath alone being of another compound.
 * Rows:   exact sizes only. Where makers' cables differ (shaped or circular conductors at 25 and 35 mm2, another maker
 *         at 4 x 25 mm2) each member is the largest of them: a hole, a duct or a cleat must take whichever cable comes.
 *         No sheet gives the weight of the circular makes but one, so those weights are the shaped make's.
 *         5 x 4 mm2 is a doubtful row: its step in weight suggests a thicker armour wire. */
#include "cable_kinds.h"
#include "tables_private.h"

struct DimensionRow {
    int cores;
    double size_mm2, under_armour_mm, overall_mm, wire_mm, weight_kg_per_km;
};

/* clang-format off */
static const struct DimensionRow rows[] = {
    /* cores, mm2, under armour, overall, wire: mm; kg/km */
    {2, 1.5,  7.3, 12.1,  0.9,  302},
    {2, 2.5,  8.5, 13.6,  0.9,  346},
    {2,   4,  9.4, 14.7,  0.9,  410},
    {2,   6, 10.5, 15.9,  0.9,  499},
    {2,  10, 12.3, 18.0,  0.9,  648},
    {2,  16, 14.3, 20.4, 1.25,  978},
    {2,  25, 18.4, 24.1, 1.25, 1290},
    {2,  35, 21.1, 27.7,  1.6, 1500},
    {2,  50, 19.0, 25.8,  1.6, 1890},
    {2,  70, 22.0, 29.0,  1.6, 2450},
    {2,  95, 25.1, 33.1,  2.0, 3300},
    {3, 1.5,  7.8, 12.6,  0.9,  330},
    {3, 2.5,  9.2, 14.1,  0.9,  390},
    {3,   4, 10.0, 15.3,  0.9,  464},
    {3,   6, 11.2, 16.6,  0.9,  568},
    {3,  10, 13.1, 19.5, 1.25,  866},
    {3,  16, 15.3, 21.6, 1.25, 1152},
    {3,  25, 18.9, 25.5,  1.6, 1800},
    {3,  35, 21.3, 28.1,  1.6, 2230},
    {3,  50, 21.7, 28.5,  1.6, 2490},
    {3,  70, 25.2, 32.2,  1.6, 3290},
    {3,  95, 28.8, 37.0,  2.0, 4440},
    {4, 1.5,  8.5, 13.3,  0.9,  365},
    {4, 2.5,  9.9, 15.0,  0.9,  438},
    {4,   4, 11.0, 16.4,  0.9,  532},
    {4,   6, 12.3, 18.7, 1.25,  764},
    {4,  10, 14.5, 21.1, 1.25, 1013},
    {4,  16, 17.0, 23.4, 1.25, 1360},
    {4,  25, 22.3, 28.9,  1.6, 2160},
    {4,  35, 23.6, 30.4,  1.6, 2690},
    {4,  50, 25.0, 32.0,  1.6, 3130},
    {4,  70, 29.5, 37.7,  2.0, 4500},
    {4,  95, 33.3, 41.7,  2.0, 5600},
    {5, 1.5,  9.7, 14.3,  0.9,  410},
    {5, 2.5, 11.7, 16.1,  0.9,  470},
    {5,   4, 13.0, 17.8,  0.9,  710},
    {5,   6, 14.5, 20.0, 1.25,  876},
    {5,  10, 17.2, 22.9, 1.25, 1165},
    {5,  16, 20.0, 26.6,  1.6, 1742},
    {5,  25, 24.7, 31.5,  1.6, 2323},
    {5,  35, 27.8, 34.8,  1.6, 2932},
};
/* clang-format on */

static const struct DimensionRow *row_of(int cores, double size_mm2)
{
    int low = 0;
    for (int high = COUNT_OF(rows); low < high;) {
        const int middle = low + (high - low) / 2;
        const int order = lookup_order(rows[middle].cores, rows[middle].size_mm2, cores, size_mm2);
        if (order == 0) {
            return &rows[middle];
        }
        if (order < 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return NULL;
}

bool cable_dimensions(enum CableType type, int cores, double size_mm2, struct CableDimensions *out)
{
    /* no figures for other kinds: the surveyor gives the diameter */
    const struct DimensionRow *row = cable_kind(type)->figures == FIGURES_BS5467 ? row_of(cores, size_mm2) : NULL;
    if (row == NULL) {
        return false;
    }
    *out = (struct CableDimensions){
        .under_armour_mm = row->under_armour_mm,
        .overall_mm = row->overall_mm,
        .wire_mm = row->wire_mm,
        .weight_kg_per_km = row->weight_kg_per_km,
        .usual_gland = gland_usual(cores, size_mm2),
    };
    return true;
}

double cable_thickest_up_to(enum CableType type, int cores, double size_mm2)
{
    double thickest_mm = 0;
    for (int index = 0; cable_kind(type)->figures == FIGURES_BS5467 && index < COUNT_OF(rows); index++) {
        const struct DimensionRow *row = &rows[index];
        if (row->cores == cores && row->overall_mm > thickest_mm &&
            (row->size_mm2 <= size_mm2 || lookup_same(row->size_mm2, size_mm2))) {
            thickest_mm = row->overall_mm;
        }
    }
    return thickest_mm;
}

void cable_dimensions_cells(struct TextBuilder *out)
{
    text_add(out, "cores,mm2,under armour mm,overall mm,wire mm,kg/km\n");
    for (int index = 0; index < COUNT_OF(rows); index++) {
        const struct DimensionRow *row = &rows[index];
        cells_row(out,
                  (const double[]){row->cores, row->size_mm2, row->under_armour_mm, row->overall_mm, row->wire_mm,
                                   row->weight_kg_per_km},
                  6);
    }
}

const struct TableRef *cable_dimensions_ref(void)
{
    static const struct TableRef ref = {.standard = "makers' datasheets for BS 5467",
                                        "dimensions",
                                        "diameters and weight of armoured cable",
                                        TRUST_PUBLISHED,
                                        "seen, four cores to 16 mm2 two sources; the larger where makes differ",
                                        .words = TABLE_OF_DIMENSIONS};
    return &ref;
}

/* BS 6724 has no sheets of its own here: it says so. */
