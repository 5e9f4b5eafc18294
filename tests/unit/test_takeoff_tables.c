/* The tables of the take-off against their copies in tests/published/, and what must hold of habits that have none. */
#include "csv_file.h"
#include "tables/takeoff_tables.h"
#include "takeoff_rig.h"

#include <math.h>

START_TEST(conduit_equals_print)
{
    struct CsvFile file = csv_open("conduit-spacing-d3.csv");
    int cells = 0;
    for (int row = 0; row < file.rows; row++) {
        const bool metal = text_same(csv_text(&file, row, 0), "rigid metal conduit");
        const double over_mm = csv_number(&file, row, 1);
        const double to_mm = csv_number(&file, row, 2);
        for (int vertical = 0; vertical <= 1; vertical++) {
            const double print_m =
                csv_number(&file, row, csv_column(&file, vertical ? "max_vertical" : "max_horizontal"));
            const double within_mm[] = {over_mm + 0.01, (over_mm + to_mm) / 2, to_mm};
            for (int at = 0; at < 3; at++) {
                double spacing_m = -7;
                ck_assert(conduit_spacing(metal ? MATERIAL_STEEL : MATERIAL_PLASTIC, within_mm[at], vertical == 1,
                                          &spacing_m));
                ck_assert(csv_same(spacing_m, print_m));
                double closer_m = -7;
                ck_assert(conduit_spacing(MATERIAL_COUNT, within_mm[at], vertical == 1, &closer_m));
                ck_assert_double_le(closer_m, spacing_m);
            }
            cells++;
        }
    }
    ck_assert_int_eq(cells, 16);
    double spacing_m = 0;
    ck_assert(!conduit_spacing(MATERIAL_STEEL, 0, false, &spacing_m));
    ck_assert(!conduit_spacing(MATERIAL_STEEL, NAN, false, &spacing_m));
    ck_assert(conduit_spacing(MATERIAL_STEEL, 1000, false, &spacing_m) && csv_same(spacing_m, 2.25));
    ck_assert(!conduit_spacing(MATERIAL_STEEL, 1000.1, false, &spacing_m)); /* a metre across is no conduit */
    csv_close(&file);
}
END_TEST

/* Each row of the print allows what the program gives, and one of the two of each band is what it gives. */
START_TEST(trunking_equals_print)
{
    struct CsvFile file = csv_open("trunking-spacing-d4.csv");
    int equal = 0;
    for (int row = 0; row < file.rows; row++) {
        const double within_mm2 = (csv_number(&file, row, 1) + csv_number(&file, row, 2)) / 2;
        for (int vertical = 0; vertical <= 1; vertical++) {
            const double print_m =
                csv_number(&file, row, csv_column(&file, vertical ? "max_vertical" : "max_horizontal"));
            double spacing_m = 0;
            ck_assert(trunking_spacing(within_mm2, vertical == 1, &spacing_m));
            ck_assert_double_le(spacing_m, print_m + 1e-9);
            equal += csv_same(spacing_m, print_m);
            double at_top_m = 0;
            ck_assert(trunking_spacing(csv_number(&file, row, 2), vertical == 1, &at_top_m));
            ck_assert(csv_same(at_top_m, spacing_m));
        }
    }
    ck_assert_int_eq(file.rows, 10);
    ck_assert_int_eq(equal, 10); /* the insulating column is the closer in every band */
    double spacing_m = 0;
    ck_assert(!trunking_spacing(300, false, &spacing_m));
    ck_assert(!trunking_spacing(0, true, &spacing_m));
    csv_close(&file);
}
END_TEST

START_TEST(gland_ranges_equal_print)
{
    struct CsvFile file = csv_open("gland-size.csv");
    for (int row = 0; row < file.rows; row++) {
        struct GlandRange range;
        ck_assert(gland_range(csv_text(&file, row, 0), &range));
        ck_assert(csv_same(range.inner_min_mm, csv_number(&file, row, csv_column(&file, "inner_min_mm"))));
        ck_assert(csv_same(range.inner_max_mm, csv_number(&file, row, csv_column(&file, "inner_max_mm"))));
        ck_assert(csv_same(range.outer_min_mm, csv_number(&file, row, csv_column(&file, "outer_min_mm"))));
        ck_assert(csv_same(range.outer_max_mm, csv_number(&file, row, csv_column(&file, "outer_max_mm"))));
    }
    struct GlandRange range;
    ck_assert_int_eq(file.rows, 12);
    ck_assert(!gland_range("20s", &range));
    csv_close(&file);
}
END_TEST

/* Every cell both ways; between two sizes the larger, thinner than the first the first, thicker than the last none. */
START_TEST(wire_grips_equal_print)
{
    struct CsvFile file = csv_open("wire-grips-en13411-5.csv");
    struct WireGrips grips;
    double below_mm = 0;
    for (int row = 0; row < file.rows; row++) {
        const double size_mm = csv_number(&file, row, 0);
        const double between_mm = (below_mm + size_mm) / 2;
        ck_assert(wire_grips(size_mm, &grips));
        ck_assert(csv_same(grips.count, csv_number(&file, row, 1)) &&
                  csv_same(grips.torque_nm, csv_number(&file, row, 2)));
        ck_assert(wire_grips(between_mm, &grips));
        ck_assert(csv_same(grips.torque_nm, csv_number(&file, row, 2)));
        below_mm = size_mm;
    }
    ck_assert_int_eq(file.rows, 13);
    ck_assert(!wire_grips(40.1, &grips) && !wire_grips(0, &grips));
    csv_close(&file);
}
END_TEST

START_TEST(every_surface_has_a_grip)
{
    for (int way = 0; way < WAY_COUNT; way++) {
        for (int surface = 0; surface < SURFACE_COUNT; surface++) {
            const struct SurfaceGrip *grip = NULL;
            ck_assert(surface_grip((enum Way)way, (enum Surface)surface, &grip));
            ck_assert(grip->kind < GRIP_COUNT && grip->screw_code[0] != '\0');
            ck_assert(grip->plug_code[0] == '\0' || grip->drill_mm > 0);
            const bool fence = way == WAY_FENCE && (surface == SURFACE_TIMBER || surface == SURFACE_CONCRETE);
            ck_assert_int_eq(grip->kind == GRIP_FENCE_TIMBER || grip->kind == GRIP_FENCE_CONCRETE, fence);
        }
        const struct SurfaceGrip *grip = NULL;
        ck_assert(!surface_grip((enum Way)way, SURFACE_COUNT, &grip));
    }
}
END_TEST

/* The hole is never smaller than the cable and a fifth, and is always a drill that is listed. */
START_TEST(holes_take_their_cables)
{
    double last_mm = 0;
    for (int tenths = 30; tenths <= 1260; tenths++) {
        const double cable_mm = tenths / 10.0;
        double hole_mm = 0;
        ck_assert(wall_drill(wall_hole_mm(cable_mm), &hole_mm));
        ck_assert_double_ge(hole_mm, cable_mm * 1.2 - 1e-9);
        ck_assert_double_ge(hole_mm, last_mm);
        last_mm = hole_mm;
    }
    double hole_mm = -7;
    ck_assert(!wall_drill(152.1, &hole_mm));
    ck_assert(!wall_drill(0, &hole_mm));
    ck_assert_double_eq(hole_mm, -7);
    ck_assert_double_ge(wall_drill_mm(300), 350);
}
END_TEST

START_TEST(packs_are_whole)
{
    struct Arena *arena = arena_new();
    for (int kind = 0; kind < PACK_KIND_COUNT; kind++) {
        const struct PackSize pack = pack_size((enum PackKind)kind);
        const struct Say *packs = parts_packs_said(arena, 2, pack.word);
        ck_assert_msg(kind == PACK_SINGLE || packs->id != SAY_AMOUNT_BY_CODE, "\"%s\" is no pack in words", pack.word);
        ck_assert_msg((pack.pieces > 0) == (pack.word[0] != '\0'), "pack %d", kind);
        ck_assert_int_eq(pack.pieces > 0, kind != PACK_SINGLE);
    }
    ck_assert_int_eq(pack_size(PACK_GLANDS).pieces, 2);
    ck_assert_int_eq(pack_size(PACK_KIND_COUNT).pieces, 0);
    arena_free(arena);
}
END_TEST

Suite *suite_takeoff_tables(void)
{
    Suite *suite = suite_create("tables of the take-off");
    TCase *tests = tcase_create("tables");
    tcase_add_test(tests, conduit_equals_print);
    tcase_add_test(tests, trunking_equals_print);
    tcase_add_test(tests, gland_ranges_equal_print);
    tcase_add_test(tests, wire_grips_equal_print);
    tcase_add_test(tests, every_surface_has_a_grip);
    tcase_add_test(tests, holes_take_their_cables);
    tcase_add_test(tests, packs_are_whole);
    suite_add_tcase(suite, tests);
    return suite;
}
