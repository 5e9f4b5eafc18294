/* The voltage drop tables under one look-up. The figures are in voltdrop_4*.c, a file a table. */
#include "edition_private.h"

static const struct DropData *data_of(const struct Edition *edition, enum DropTable table)
{
    return (unsigned)table < DROP_COUNT ? edition->drop[table] : NULL;
}

const struct TableRef *drop_ref(const struct Edition *edition, enum DropTable table)
{
    const struct DropData *data = data_of(edition, table);
    return data != NULL ? &data->ref : NULL;
}

double drop_degc(const struct Edition *edition, enum DropTable table)
{
    const struct DropData *data = data_of(edition, table);
    return data != NULL ? data->degc : 0;
}

static const struct DropRow *row_of(const struct Edition *edition, enum DropTable table, double size_mm2)
{
    const struct DropData *data = data_of(edition, table);
    int row = 0;
    if (data == NULL || !lookup_exact(data->sizes_mm2, data->sizes, size_mm2, &row)) {
        return NULL;
    }
    return &data->rows[row];
}

bool drop_figure(const struct Edition *edition, enum DropTable table, double size_mm2, int phases,
                 struct DropFigure *out)
{
    const struct DropRow *row = row_of(edition, table, size_mm2);
    if (row == NULL || (phases != 1 && phases != 3)) {
        return false;
    }
    struct DropFigure figure = {.x = 0};
    if (!lookup_cell(phases == 1 ? row->r1 : row->r3, &figure.r) ||
        !lookup_cell(phases == 1 ? row->z1 : row->z3, &figure.z)) {
        return false;
    }
    /* A blank x is the table's way of saying that one figure serves for r and z. */
    figure.split = lookup_cell(phases == 1 ? row->x1 : row->x3, &figure.x);
    *out = figure;
    return true;
}

bool drop_figure_dc(const struct Edition *edition, enum DropTable table, double size_mm2, double *out)
{
    const struct DropRow *row = row_of(edition, table, size_mm2);
    return row != NULL && lookup_cell(row->dc, out);
}
