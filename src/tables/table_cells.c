/* The figures of tables as rows of cells, for `wend tables`: from the look-ups that the design uses, or from the same
 * arrays. Tables of another form are not listed. */
#include "edition_private.h"

enum { DIGITS = 9 };
static const double sizes_mm2[] = {0.5, 0.75, 1,  1.5, 2.5, 4,   6,   10,  16,  25,
                                   35,  50,   70, 95,  120, 150, 185, 240, 300, 400};
static const int cores[] = {2, 3, 4, 5, 7, 12, 19, 27, 37};

static void add(struct TextBuilder *out, const char *text, bool last)
{
    text_add(out, text);
    text_add(out, last ? "\n" : ",");
}

static void add_number(struct TextBuilder *out, double value, bool last)
{
    add(out, lookup_same(value, NOT_GIVEN) ? "" : number_significant(out->arena, value, DIGITS), last);
}

static void list_capacity(enum CapacityTable table, struct TextBuilder *out)
{
    const double *sizes = NULL;
    const int count = capacity_sizes(edition_held(), table, &sizes);
    text_add(out, "mm2");
    for (int row = -1; row < count; row++) {
        if (row >= 0) {
            text_add(out, number_significant(out->arena, sizes[row], DIGITS));
        }
        for (int method = 0; method < METHOD_COUNT; method++) {
            for (int loaded = 2; loaded <= 3; loaded++) {
                double amperes = NOT_GIVEN;
                if (!capacity_has_method(edition_held(), table, (enum Method)method, loaded)) {
                    continue;
                }
                if (row < 0) {
                    text_print(out, ",%s %d loaded A", method_name((enum Method)method), loaded);
                } else {
                    text_add(out, ",");
                    text_add(out,
                             capacity_amperes(edition_held(), table, sizes[row], (enum Method)method, loaded, &amperes)
                                 ? number_significant(out->arena, amperes, DIGITS)
                                 : "");
                }
            }
        }
        text_add(out, "\n");
    }
}

static void list_drop(enum DropTable table, struct TextBuilder *out)
{
    const struct DropData *data = edition_held()->drop[table];
    text_add(out, "mm2,mV/A/m dc,r 1-phase,x 1-phase,z 1-phase,r 3-phase,x 3-phase,z 3-phase\n");
    for (int i = 0; data != NULL && i < data->sizes; i++) {
        const struct DropRow *row = &data->rows[i];
        const double cells[] = {data->sizes_mm2[i], row->dc, row->r1, row->x1, row->z1, row->r3, row->x3, row->z3};
        for (int c = 0; c < COUNT_OF(cells); c++) {
            add_number(out, cells[c], c + 1 == COUNT_OF(cells));
        }
    }
}

static void list_factors(const struct FactorTable *table, const char *head, struct TextBuilder *out)
{
    text_print(out, "%s\n", head);
    for (int row = 0; row < table->rows; row++) {
        add_number(out, table->keys[row], false);
        for (int c = 0; c < table->columns; c++) {
            add_number(out, table->cells[row * table->columns + c], c + 1 == table->columns);
        }
    }
}

static void list_ratings(enum DeviceKind kind, struct TextBuilder *out)
{
    const double *ratings = NULL;
    const int count = device_ratings(kind, &ratings);
    text_add(out, "A\n");
    for (int i = 0; i < count; i++) {
        add_number(out, ratings[i], true);
    }
}

static void list_resistance(struct TextBuilder *out)
{
    double ohm_per_m = 0;
    text_add(out, "mm2,ohm/km\n");
    for (int i = 0; i < COUNT_OF(sizes_mm2); i++) {
        if (conductor_resistance(sizes_mm2[i], &ohm_per_m)) {
            add_number(out, sizes_mm2[i], false);
            add_number(out, ohm_per_m * 1000, true);
        }
    }
}

static void list_dimensions(struct TextBuilder *out)
{
    struct CableDimensions cable;
    text_add(out, "cores,mm2,under armour mm,overall mm,wire mm,kg/km,usual gland\n");
    for (int i = 0; i < COUNT_OF(sizes_mm2) * COUNT_OF(cores); i++) {
        const double size_mm2 = sizes_mm2[i % COUNT_OF(sizes_mm2)];
        const int core_count = cores[i / COUNT_OF(sizes_mm2)];
        if (cable_dimensions(CABLE_BS5467, core_count, size_mm2, &cable)) {
            const double weight = cable.weight_kg_per_km > 0 ? cable.weight_kg_per_km : NOT_GIVEN;
            const double cells[] = {core_count,       size_mm2,      cable.under_armour_mm,
                                    cable.overall_mm, cable.wire_mm, weight};
            for (int c = 0; c < COUNT_OF(cells); c++) {
                add_number(out, cells[c], false);
            }
            add(out, cable.usual_gland, true);
        }
    }
}

static void list_armour(struct TextBuilder *out)
{
    struct Armour armour;
    text_add(out, "cores,mm2,area mm2,greatest ohm/km,least ohm/km\n");
    for (int i = 0; i < COUNT_OF(sizes_mm2) * COUNT_OF(cores); i++) {
        const double size_mm2 = sizes_mm2[i % COUNT_OF(sizes_mm2)];
        const int core_count = cores[i / COUNT_OF(sizes_mm2)];
        if (armour_figures(CABLE_BS5467, core_count, size_mm2, &armour)) {
            add_number(out, core_count, false);
            add_number(out, size_mm2, false);
            add_number(out, armour.area_mm2, false);
            add_number(out, armour.max_ohm_per_m * 1000, false);
            add_number(out, armour.min_ohm_per_m * 1000, true);
        }
    }
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
static const enum DeviceKind devices[] = {DEVICE_MCB, DEVICE_GG, DEVICE_BS88_3, DEVICE_BS1361, DEVICE_BS3036};

bool tables_cells(int index, struct TextBuilder *out)
{
    const struct TableRef *ref = tables_at(index);
    if (index >= 0 && index < CAPACITY_COUNT) {
        list_capacity((enum CapacityTable)index, out);
        return true;
    }
    if (index >= 0 && index < CAPACITY_COUNT + DROP_COUNT) {
        list_drop((enum DropTable)(index - CAPACITY_COUNT), out);
        return true;
    }
    for (int i = 0; ref != NULL && i < FACTORS_COUNT; i++) {
        if (ref == factors_ref(edition_held(), (enum FactorTables)i)) {
            list_factors(edition_held()->factors[i], factor_heads[i], out);
            return true;
        }
    }
    for (int i = 0; ref != NULL && i < COUNT_OF(devices); i++) {
        if (ref == device_ratings_ref(devices[i])) {
            list_ratings(devices[i], out);
            return true;
        }
    }
    if (ref != NULL && (ref == conductor_resistance_ref() || ref == cable_dimensions_ref() || ref == armour_ref())) {
        (ref == conductor_resistance_ref() ? list_resistance
         : ref == cable_dimensions_ref()   ? list_dimensions
                                           : list_armour)(out);
        return true;
    }
    return false;
}
