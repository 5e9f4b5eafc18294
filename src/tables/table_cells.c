/* The figures of tables as rows of cells, for `wend table`: the families of an edition, and how a cell is written. What
 * is not of a family has its cells in its own file. */
#include "edition_private.h"

#include <math.h>
#include <stddef.h>

enum { DIGITS = 9 };

void cells_text(struct TextBuilder *out, const char *text, bool last)
{
    text_add(out, text);
    text_add(out, last ? "\n" : ",");
}

void cells_number(struct TextBuilder *out, double value, bool last)
{
    const bool given = !lookup_same(value, NOT_GIVEN);
    cells_text(out, !given ? "" : isinf(value) ? "beyond" : number_significant(out->arena, value, DIGITS), last);
}

void cells_row(struct TextBuilder *out, const double *cells, int count)
{
    for (int i = 0; i < count; i++) {
        cells_number(out, cells[i], i + 1 == count);
    }
}

void cells_figures(struct TextBuilder *out, const struct OneFigure *figures, int count)
{
    text_add(out, "what,figure,unit\n");
    for (int i = 0; i < count; i++) {
        cells_text(out, figures[i].what, false);
        cells_number(out, figures[i].value, false);
        cells_text(out, figures[i].unit, true);
    }
}

static void list_capacity(const struct CapacityData *data, struct TextBuilder *out)
{
    text_add(out, "mm2");
    for (int c = 0; c < data->column_count; c++) {
        text_print(out, ",%s %d loaded A", method_name(data->columns[c].method), data->columns[c].loaded);
    }
    text_add(out, "\n");
    for (int row = 0; row < data->sizes; row++) {
        cells_number(out, data->sizes_mm2[row], false);
        cells_row(out, data->cells_a + (ptrdiff_t)row * data->column_count, data->column_count);
    }
}

static void list_drop(const struct DropData *data, struct TextBuilder *out)
{
    text_add(out, "mm2,mV/A/m dc,r 1-phase,x 1-phase,z 1-phase,r 3-phase,x 3-phase,z 3-phase\n");
    for (int i = 0; i < data->sizes; i++) {
        const struct DropRow *row = &data->rows[i];
        cells_row(out,
                  (const double[]){data->sizes_mm2[i], row->dc, row->r1, row->x1, row->z1, row->r3, row->x3, row->z3},
                  8);
    }
}

static void list_factors(const struct FactorTable *table, const char *head, struct TextBuilder *out)
{
    text_print(out, "%s\n", head);
    for (int row = 0; row < table->rows; row++) {
        cells_number(out, table->keys[row], false);
        for (int c = 0; c < table->columns; c++) {
            cells_number(out, table->cells[row * table->columns + c], c + 1 == table->columns);
        }
    }
}

static void list_fuses(const struct FuseLimits *limits, struct TextBuilder *out)
{
    text_add(out, "A,ohm at 230 V within 0.4 s,ohm at 230 V within 5 s\n");
    for (int i = 0; i < limits->count; i++) {
        const struct FuseRow *row = &limits->rows[i];
        cells_row(out, (const double[]){row->rating_a, row->within_0_4_s_ohm, row->within_5_s_ohm}, 3);
    }
}

static void list_times(const struct DisconnectionTimes *times, struct TextBuilder *out)
{
    text_add(out, "circuit,U0 to V,TN s,TT s\n");
    for (int band = 0; band < DISCONNECTION_BANDS; band++) {
        cells_text(out, "final", false);
        cells_number(out, band < DISCONNECTION_BANDS - 1 ? times->up_to_v[band] : HUGE_VAL, false);
        cells_row(out, times->final_s[band], 2);
    }
    text_add(out, "distribution,,");
    cells_row(out, times->distribution_s, 2);
}

void cells_of_ratings(const struct RatingList *list, struct TextBuilder *out)
{
    text_add(out, "A\n");
    for (int i = 0; i < list->count; i++) {
        cells_number(out, list->ratings_a[i], true);
    }
}

void cells_of_k(const struct KFigures *figures, struct TextBuilder *out)
{
    text_add(out, "insulation degC,k\n");
    cells_row(out, (const double[]){70, figures->at_70_degc}, 2);
    cells_row(out, (const double[]){90, figures->at_90_degc}, 2);
}

static const char *const factor_heads[FACTORS_COUNT] = {
    [FACTORS_AIR] = "air degC,70 degC insulation,90 degC insulation",
    [FACTORS_GROUND] = "ground degC,70 degC insulation,90 degC insulation",
    [FACTORS_SOIL] = "K.m/W,in ducts,direct",
    [FACTORS_DEPTH] = "depth m,direct,in ducts",
    [FACTORS_INSULATION] = "length mm,Ci",
    [FACTORS_GROUPED_AIR] = "circuits,bunched,on a wall,on a tray,on a ladder",
    [FACTORS_GROUPED_CEILING] = "circuits,on a ceiling",
    [FACTORS_GROUPED_BURIED] = "circuits,touching,one diameter,125 mm,250 mm,500 mm",
    [FACTORS_GROUPED_DUCTS] = "circuits,touching,250 mm,500 mm,1000 mm",
};

static void list_by_device(const struct Edition *edition, int index, struct TextBuilder *out)
{
    const struct FuseLimits *const fuses[] = {edition->bs88_2, edition->bs88_3, edition->bs1361, edition->bs3036};
    if (index == 0) {
        list_times(edition->disconnection, out);
    } else if (index == 1) {
        breaker_cells(edition->breakers, out);
    } else {
        list_fuses(fuses[index - 2], out);
    }
}

void cells_of_edition(const struct Edition *edition, int index, struct TextBuilder *out)
{
    if (index < CAPACITY_COUNT) {
        list_capacity(edition->capacity[index], out);
    } else if (index < CAPACITY_COUNT + DROP_COUNT) {
        list_drop(edition->drop[index - CAPACITY_COUNT], out);
    } else if (index < CAPACITY_COUNT + DROP_COUNT + FACTORS_COUNT) {
        const int table = index - CAPACITY_COUNT - DROP_COUNT;
        list_factors(edition->factors[table], factor_heads[table], out);
    } else {
        list_by_device(edition, index - CAPACITY_COUNT - DROP_COUNT - FACTORS_COUNT, out);
    }
}
