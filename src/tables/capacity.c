/* The capacity tables under one look-up. The figures are in capacity_4*.c, a file a table. */
#include "edition_private.h"

static const struct CapacityData *data_of(const struct Edition *edition, enum CapacityTable table)
{
    return (unsigned)table < CAPACITY_COUNT ? edition->capacity[table] : NULL;
}

const struct TableRef *capacity_ref(const struct Edition *edition, enum CapacityTable table)
{
    const struct CapacityData *data = data_of(edition, table);
    return data != NULL ? &data->ref : NULL;
}

double capacity_degc(const struct Edition *edition, enum CapacityTable table)
{
    const struct CapacityData *data = data_of(edition, table);
    return data != NULL ? data->degc : 0;
}

int capacity_sizes(const struct Edition *edition, enum CapacityTable table, const double **sizes_mm2)
{
    const struct CapacityData *data = data_of(edition, table);
    if (data == NULL) {
        return 0;
    }
    *sizes_mm2 = data->sizes_mm2;
    return data->sizes;
}

static bool find_column(const struct CapacityData *data, enum Method method, int loaded, int *out_column)
{
    for (int column = 0; column < data->column_count; column++) {
        if (data->columns[column].method == method && data->columns[column].loaded == loaded) {
            *out_column = column;
            return true;
        }
    }
    return false;
}

bool capacity_has_method(const struct Edition *edition, enum CapacityTable table, enum Method method, int loaded)
{
    const struct CapacityData *data = data_of(edition, table);
    int column = 0;
    return data != NULL && find_column(data, method, loaded, &column);
}

bool capacity_amperes(const struct Edition *edition, enum CapacityTable table, double size_mm2, enum Method method,
                      int loaded, double *out_a)
{
    const struct CapacityData *data = data_of(edition, table);
    int row = 0;
    int column = 0;
    if (data == NULL || !find_column(data, method, loaded, &column) ||
        !lookup_exact(data->sizes_mm2, data->sizes, size_mm2, &row)) {
        return false;
    }
    return lookup_cell(data->cells_a[row * data->column_count + column], out_a);
}

const char *method_name(enum Method method)
{
    switch (method) {
    case METHOD_A: return "A";
    case METHOD_B: return "B";
    case METHOD_C: return "C";
    case METHOD_D: return "D";
    case METHOD_E: return "E";
    case METHOD_100: return "100";
    case METHOD_101: return "101";
    case METHOD_102: return "102";
    case METHOD_103: return "103";
    case METHOD_COUNT: break;
    }
    return "";
}
