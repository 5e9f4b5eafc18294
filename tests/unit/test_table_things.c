/* Conductors, devices, cables, glands, supports and cleats against the published copies both ways, and the list of all
 * tables. */
#include "csv_file.h"
#include "survey/survey.h"
#include "table_suites.h"
#include "tables/tables.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

START_TEST(resistance_equals_print)
{
    struct CsvFile file = csv_open("conductor-resistance-iec60228.csv");
    const int column = csv_column(&file, "cu_class2_plain_ohm_per_km");
    int cells = 0;
    for (int step = 1; step <= 2000; step++) { /* every quarter of a mm2, so the program has no size of its own */
        const double size_mm2 = step / 4.0;
        const int row = csv_find(&file, 0, size_mm2);
        double ohm_per_m = -7;
        ck_assert_int_eq(conductor_resistance(size_mm2, &ohm_per_m), row >= 0);
        ck_assert(csv_same(ohm_per_m, row >= 0 ? csv_number(&file, row, column) / 1000 : -7));
        cells += row >= 0;
    }
    ck_assert_int_eq(cells, 20);
    ck_assert_int_eq(cells, file.rows);
    printf("compared %3d cells of %s\n", cells, file.name);
    csv_close(&file);
}
END_TEST

START_TEST(ratings_equal_print)
{
    struct CsvFile file = csv_open("device-ratings.csv");
    int row = 0;
    for (int kind = 0; kind < DEVICE_COUNT; kind++) {
        const double *ratings_a = NULL;
        const int count = device_ratings((enum DeviceKind)kind, &ratings_a);
        ck_assert_int_gt(count, 0);
        for (int at = 0; at < count; at++, row++) {
            ck_assert_str_eq(csv_text(&file, row, 0), survey_word(WORDS_DEVICE, kind));
            ck_assert(csv_same(ratings_a[at], csv_number(&file, row, 1)));
            ck_assert(at == 0 || ratings_a[at] > ratings_a[at - 1]);
        }
        ck_assert_ptr_nonnull(device_ratings_ref((enum DeviceKind)kind));
    }
    ck_assert_int_eq(row, 63);
    ck_assert_int_eq(row, file.rows);
    const double *none = NULL;
    ck_assert_int_eq(device_ratings(DEVICE_COUNT, &none), 0);
    ck_assert_ptr_null(device_ratings_ref(DEVICE_COUNT));
    printf("compared %3d cells of %s\n", row, file.name);
    csv_close(&file);
}
END_TEST

/* Largest figure of a column over the makes of one cable; 0 when no make gives one, -1 when there is no such cable. */
static double largest(const struct CsvFile *file, int cores, double size_mm2, const char *head)
{
    double most = -1;
    for (int row = 0; row < file->rows; row++) {
        if (csv_same(csv_number(file, row, 0), cores) && csv_same(csv_number(file, row, 1), size_mm2)) {
            const int column = csv_column(file, head);
            most = fmax(most, csv_blank(file, row, column) ? 0 : csv_number(file, row, column));
        }
    }
    return most;
}

START_TEST(dimensions_are_the_larger_of_print)
{
    struct CsvFile file = csv_open("cable-dims.csv");
    int cables = 0;
    int makes = 0;
    for (int cores = 0; cores <= 8; cores++) {
        double thickest_mm = 0;
        for (int step = 1; step <= 400; step++) {
            const double size_mm2 = step / 2.0;
            struct CableDimensions dims = {.overall_mm = -7};
            const bool has = cable_dimensions(CABLE_BS5467, cores, size_mm2, &dims);
            ck_assert(csv_same(has ? dims.overall_mm : -1, largest(&file, cores, size_mm2, "overall_mm")));
            if (!has) {
                ck_assert(csv_same(dims.overall_mm, -7));
                continue;
            }
            cables++;
            thickest_mm = fmax(thickest_mm, dims.overall_mm);
            ck_assert(csv_same(cable_thickest_up_to(CABLE_BS5467, cores, size_mm2), thickest_mm));
            ck_assert(csv_same(dims.under_armour_mm, largest(&file, cores, size_mm2, "under_armour_mm")));
            ck_assert(csv_same(dims.wire_mm, largest(&file, cores, size_mm2, "armour_wire_mm")));
            ck_assert(csv_same(dims.weight_kg_per_km, largest(&file, cores, size_mm2, "weight_kg_per_km")));
        }
    }
    for (int row = 0; row < file.rows; row++) { /* no row of the copy may name a size that the steps jump over */
        struct CableDimensions dims;
        ck_assert(cable_dimensions(CABLE_BS5467, (int)csv_number(&file, row, 0), csv_number(&file, row, 1), &dims));
        makes++;
    }
    ck_assert_int_eq(cables, 41);
    ck_assert_int_eq(makes, 48);
    printf("compared %3d cells of %s (%d makes of %d cables)\n", 4 * cables, file.name, makes, cables);
    csv_close(&file);
}
END_TEST

START_TEST(dimensions_only_where_there_are_any)
{
    struct CableDimensions dims;
    for (int type = 0; type < CABLE_COUNT; type++) {
        /* BS 6724 is built to the dimensions of BS 5467 */
        ck_assert_int_eq(cable_dimensions((enum CableType)type, 3, 6, &dims),
                         type == CABLE_BS5467 || type == CABLE_BS6724);
    }
    ck_assert(!cable_dimensions(CABLE_BS5467, 3, 5, &dims));
    ck_assert(!cable_dimensions(CABLE_BS5467, 3, 120, &dims));
    ck_assert(!cable_dimensions(CABLE_BS5467, 7, 6, &dims));
    ck_assert(csv_same(cable_thickest_up_to(CABLE_BS5467, 3, 120), 37));
    ck_assert(csv_same(cable_thickest_up_to(CABLE_BS5467, 2, 50), 27.7)); /* of 35 mm2, which is the thicker */
    ck_assert(csv_same(cable_thickest_up_to(CABLE_BS5467, 3, 1), 0));
}
END_TEST

START_TEST(usual_glands_equal_print)
{
    struct CsvFile file = csv_open("gland-for-cable.csv");
    int cells = 0;
    for (int row = 0; row < file.rows; row++) {
        struct CableDimensions dims;
        const char *thread = NULL;
        ck_assert(cable_dimensions(CABLE_BS5467, (int)csv_number(&file, row, 0), csv_number(&file, row, 1), &dims));
        ck_assert_str_eq(dims.usual_gland, csv_text(&file, row, csv_column(&file, "usual_gland")));
        ck_assert_msg(gland_thread(dims.usual_gland, &thread), "no thread for %s", dims.usual_gland);
        cells++;
    }
    ck_assert_int_eq(cells, 41); /* as many as there are cables, so no cable has one that the copy lacks */
    printf("compared %3d cells of %s\n", cells, file.name);
    csv_close(&file);
}
END_TEST

START_TEST(gland_threads_equal_print)
{
    struct CsvFile file = csv_open("gland-size.csv");
    const char *thread = NULL;
    int cells = 0;
    for (int row = 0; row < file.rows; row++) {
        ck_assert(gland_thread(csv_text(&file, row, 0), &thread));
        ck_assert_str_eq(thread, csv_text(&file, row, csv_column(&file, "entry_thread")));
        cells++;
    }
    ck_assert_int_eq(cells, 12);
    int known = 0;
    for (int size = 1; size <= 200; size++) { /* every mark of the forms 20, 20S and 20S16 */
        for (int form = 0; form < 3; form++) {
            char mark[16];
            snprintf(mark, sizeof mark, form == 0 ? "%d" : form == 1 ? "%dS" : "%dS16", size);
            known += gland_thread(mark, &thread);
        }
    }
    ck_assert_int_eq(known, cells);
    ck_assert(!gland_thread("", &thread));
    ck_assert(!gland_thread("20s", &thread));
    printf("compared %3d cells of %s\n", cells, file.name);
    csv_close(&file);
}
END_TEST

START_TEST(supports_equal_print)
{
    struct CsvFile file = csv_open("support-spacing-d1.csv");
    int cells = 0;
    for (int row = 0; row < file.rows; row++) {
        const bool armoured = text_same(csv_text(&file, row, 0), "armoured cable");
        const double over_mm = csv_number(&file, row, 1);
        const double to_mm = csv_number(&file, row, 2);
        for (int vertical = 0; vertical <= 1; vertical++) {
            const int column = csv_column(&file, vertical ? "max_vertical" : "max_horizontal");
            const double within_mm[] = {over_mm + 0.01, (over_mm + to_mm) / 2, to_mm};
            for (int at = 0; at < 3; at++) {
                double spacing_m = -7;
                const bool has = support_spacing(armoured, within_mm[at], vertical == 1, &spacing_m);
                ck_assert_int_eq(has, !csv_blank(&file, row, column));
                ck_assert(csv_same(spacing_m, has ? csv_number(&file, row, column) / 1000 : -7));
            }
            cells++;
        }
    }
    ck_assert_int_eq(cells, 16);
    double spacing_m = 0;
    for (int armoured = 0; armoured <= 1; armoured++) {
        ck_assert(!support_spacing(armoured == 1, 40.1, false, &spacing_m));
        ck_assert(!support_spacing(armoured == 1, 0, true, &spacing_m));
        ck_assert(!support_spacing(armoured == 1, -12, true, &spacing_m));
        ck_assert(!support_spacing(armoured == 1, NAN, true, &spacing_m));
    }
    printf("compared %3d cells of %s\n", cells, file.name);
    csv_close(&file);
}
END_TEST

START_TEST(cleats_equal_print)
{
    struct CsvFile file = csv_open("hook-cleat.csv");
    int number = 0;
    for (int row = 0; row < file.rows; row++) {
        const int size = (int)csv_number(&file, row, 0);
        const double bore_mm = 2.54 * size;
        /* the printed bands are the bores to one decimal; half a tenth either side belongs to neither number */
        ck_assert_double_le(fabs(csv_number(&file, row, 2) - bore_mm), 0.05 + 1e-9);
        ck_assert(hook_cleat(csv_number(&file, row, 1) + 0.06, &number) && number == size);
        ck_assert(hook_cleat(csv_number(&file, row, 2) - 0.06, &number) && number == size);
        ck_assert(hook_cleat(bore_mm, &number) && number == size);
        ck_assert_int_eq(hook_cleat(bore_mm + 0.001, &number), row + 1 < file.rows);
    }
    ck_assert_int_eq(file.rows, 13);
    ck_assert(!hook_cleat(0, &number));
    ck_assert(!hook_cleat(-1, &number));
    ck_assert(!hook_cleat(NAN, &number));
    printf("compared %3d cells of %s\n", file.rows, file.name);
    csv_close(&file);
}
END_TEST

START_TEST(cleats_equal_a_supplier)
{
    struct CsvFile file = csv_open("hook-cleat-codes.csv");
    for (int row = 0; row < file.rows; row++) {
        int number = 0;
        ck_assert(hook_cleat(csv_number(&file, row, 2), &number));
        ck_assert_int_eq(number, (int)csv_number(&file, row, 3));
    }
    ck_assert_int_eq(file.rows, 33);
    printf("compared %3d cells of %s\n", file.rows, file.name);
    csv_close(&file);
}
END_TEST

static bool has_text(const char *text)
{
    return text != NULL && text[0] != '\0';
}

START_TEST(every_table_is_listed_with_its_source)
{
    ck_assert_int_eq(tables_count(), 84);
    for (int at = 0; at < tables_count(); at++) {
        const struct TableRef *ref = tables_at(at);
        ck_assert_ptr_nonnull(ref);
        ck_assert(has_text(ref->standard) && has_text(ref->table) && has_text(ref->title));
        ck_assert_msg(strstr(ref->seen, "two sources") || strstr(ref->seen, "seen") ||
                          strstr(ref->seen, "from memory") || strstr(ref->seen, "list"),
                      "%s does not say how far it is to be trusted", ref->table);
        /* what papers print of it says no more than who has seen it */
        ck_assert_msg((ref->trust == TRUST_PUBLISHED) == (strstr(ref->seen, "from memory") == NULL), "%s", ref->title);
        for (int other = 0; other < at; other++) {
            ck_assert_ptr_ne(ref, tables_at(other));
            ck_assert_str_ne(ref->title, tables_at(other)->title);
        }
    }
    ck_assert_ptr_null(tables_at(-1));
    ck_assert_ptr_null(tables_at(tables_count()));
}
END_TEST

static void is_listed(const struct TableRef *ref)
{
    int found = 0;
    for (int at = 0; at < tables_count(); at++) {
        found += tables_at(at) == ref;
    }
    ck_assert_ptr_nonnull(ref);
    ck_assert_msg(found == 1, "%s is listed %d times", ref->table, found);
}

START_TEST(every_reference_is_in_the_list)
{
    for (int table = 0; table < CAPACITY_COUNT; table++) {
        is_listed(capacity_ref(edition_held(), (enum CapacityTable)table));
    }
    for (int table = 0; table < DROP_COUNT; table++) {
        is_listed(drop_ref(edition_held(), (enum DropTable)table));
    }
    for (int column = 0; column < GROUP_AIR_COUNT; column++) {
        is_listed(grouping_air_ref(edition_held(), (enum GroupAir)column));
    }
    for (int kind = 0; kind < DEVICE_COUNT; kind++) {
        is_listed(device_ratings_ref((enum DeviceKind)kind));
    }
    const struct TableRef *const others[] = {
        factors_ref(edition_held(), FACTORS_AIR),
        factors_ref(edition_held(), FACTORS_GROUND),
        factors_ref(edition_held(), FACTORS_SOIL),
        factors_ref(edition_held(), FACTORS_DEPTH),
        factors_ref(edition_held(), FACTORS_INSULATION),
        factors_ref(edition_held(), FACTORS_GROUPED_BURIED),
        factors_ref(edition_held(), FACTORS_GROUPED_DUCTS),
        conductor_resistance_ref(),
        cable_dimensions_ref(),
        support_spacing_ref(),
        hook_cleat_ref(),
        gland_ref(),
    };
    for (size_t at = 0; at < sizeof others / sizeof others[0]; at++) {
        is_listed(others[at]);
    }
    ck_assert_str_eq(grouping_air_ref(edition_held(), GROUP_CEILING_LAYER)->table, "B.52.17 item 3");
    ck_assert_str_eq(grouping_air_ref(edition_held(), GROUP_BUNCHED)->table, "4C1");
    ck_assert_str_eq(capacity_ref(edition_held(), CAPACITY_4E4A)->table, "4E4A");
    ck_assert_str_eq(drop_ref(edition_held(), DROP_4E4B)->table, "4E4B");
}
END_TEST

Suite *suite_table_things(void)
{
    Suite *suite = suite_create("conductors, devices and things");
    TCase *tests = tcase_create("things");
    tcase_add_test(tests, resistance_equals_print);
    tcase_add_test(tests, ratings_equal_print);
    tcase_add_test(tests, dimensions_are_the_larger_of_print);
    tcase_add_test(tests, dimensions_only_where_there_are_any);
    tcase_add_test(tests, usual_glands_equal_print);
    tcase_add_test(tests, gland_threads_equal_print);
    tcase_add_test(tests, supports_equal_print);
    tcase_add_test(tests, cleats_equal_print);
    tcase_add_test(tests, cleats_equal_a_supplier);
    tcase_add_test(tests, every_table_is_listed_with_its_source);
    tcase_add_test(tests, every_reference_is_in_the_list);
    suite_add_tcase(suite, tests);
    return suite;
}
