/* Fixings: spacing of On-Site Guide Table D1, none double at joins, bends, terminations, what each goes into. */
#include "said.h"
#include "takeoff_rig.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* One straight wall of each cable and direction: length over the spacing of Table D1, rounded up, and one.
 * Diameters by the cables' datasheets: 3 x 1.5 mm2 12.6 mm, 3 x 10 mm2 19.5 mm, 3 x 50 mm2 28.5 mm. */
static const struct {
    const char *cable;
    const char *rise;
    const char *code;
    double spacing_m; /* Table D1 */
    double fixings;   /* of 9 m */
} rows[] = {
    {"{type: BS5467, cores: 3, size: 1.5 mm2}", "0 m", "fixing-hook-5", 0.35, 27},
    {"{type: BS5467, cores: 3, size: 1.5 mm2}", "9 m", "fixing-hook-5", 0.45, 21},
    {"{type: BS5467, cores: 3, size: 10 mm2}", "0 m", "fixing-hook-8", 0.4, 24},
    {"{type: BS5467, cores: 3, size: 10 mm2}", "-9 m", "fixing-hook-8", 0.55, 18},
    {"{type: BS5467, cores: 3, size: 50 mm2}", "0 m", "fixing-hook-12", 0.45, 21},
    {"{type: BS5467, cores: 3, size: 50 mm2}", "9 m", "fixing-hook-12", 0.6, 16},
    {"{type: BS6004-multicore, cores: 3, size: 2.5 mm2, diameter: 9 mm}", "0 m", "fixing-clip-9.0", 0.25, 37},
    {"{type: BS6004-multicore, cores: 3, size: 2.5 mm2, diameter: 12 mm}", "0 m", "fixing-clip-12.0", 0.3, 31},
    {"{type: BS6004-multicore, cores: 3, size: 2.5 mm2, diameter: 16 mm}", "9 m", "fixing-clip-16.0", 0.45, 21},
    {"{type: BS6004-multicore, cores: 3, size: 2.5 mm2, diameter: 22 mm}", "0 m", "fixing-clip-22.0", 0.4, 24},
    /* within 30 degrees of upright counts as vertical: 9 m x cos 30 = 7.79 m */
    {"{type: BS5467, cores: 3, size: 10 mm2}", "7.85 m", "fixing-hook-8", 0.55, 18},
    {"{type: BS5467, cores: 3, size: 10 mm2}", "7.7 m", "fixing-hook-8", 0.4, 24},
};

START_TEST(spacing_by_diameter_and_direction)
{
    char run[256];
    char segments[256];
    snprintf(run, sizeof run, "    load: {current: 2 A}\n    cable: %s\n", rows[_i].cable);
    snprintf(segments, sizeof segments, "- {name: a, way: wall, length: 9 m, rise: %s, fixed-to: brick}\n",
             rows[_i].rise);
    struct TakeOff takeoff = takeoff_with(run, segments, "");
    ck_assert_double_eq(takeoff_needed(&takeoff, rows[_i].code), rows[_i].fixings);
    const struct PartsWay *way = takeoff_way(&takeoff, "a", 0);
    ck_assert_int_eq(way->fixings, (int)rows[_i].fixings);
    ck_assert_double_eq_tol(way->spacing_m, rows[_i].spacing_m, 1e-9);
    ck_assert_double_le(way->pitch_m, way->spacing_m + 1e-9);
    ck_assert_str_eq(way->fixing_code, rows[_i].code);
    takeoff_free(&takeoff);
}
END_TEST

/* The last spacing is rounded up: 4.0 m takes ten spaces of 400 mm, a millimetre more takes eleven. */
START_TEST(last_spacing_rounded_up)
{
    struct TakeOff whole = takeoff_of("- {name: a, way: wall, length: 4 m}\n");
    struct TakeOff more = takeoff_of("- {name: a, way: wall, length: 4.01 m}\n");
    ck_assert_double_eq(takeoff_needed(&whole, "fixing-hook-8"), 11);
    ck_assert_double_eq(takeoff_needed(&more, "fixing-hook-8"), 12);
    takeoff_free(&whole);
    takeoff_free(&more);
}
END_TEST

/* Two clipped stretches of different character share the fixing where they meet; a hole between them parts them. */
START_TEST(none_double_at_joins)
{
    struct TakeOff joined =
        takeoff_of("- {name: a, way: wall, length: 4 m, fixed-to: brick}\n- {name: b, way: beam, length: 4 m}\n");
    struct TakeOff parted =
        takeoff_of("- {name: a, way: wall, length: 4 m, fixed-to: brick}\n- {name: h, way: through-wall, "
                   "length: 300 mm}\n- {name: b, way: beam, length: 4 m}\n");
    ck_assert_double_eq(takeoff_needed(&joined, "fixing-hook-8"), 21);
    ck_assert_double_eq(takeoff_needed(&joined, "screw-wood-10x50"), 11);
    ck_assert_double_eq(takeoff_needed(&joined, "screw-wood-10x40-zinc"), 10);
    ck_assert_double_eq(takeoff_needed(&parted, "fixing-hook-8"), 22);
    takeoff_free(&joined);
    takeoff_free(&parted);
}
END_TEST

/* Three stretches that are one wall: counted as one, and the stretches' own fixings add up to it wherever it was cut.
 */
START_TEST(a_wall_cut_in_three_is_one_wall)
{
    struct TakeOff takeoff = takeoff_of("- {name: a, way: wall, length: 0.1 m, fixed-to: brick}\n"
                                        "- {name: b, way: wall, length: 3.33 m, fixed-to: brick}\n"
                                        "- {name: c, way: wall, length: 0.17 m, fixed-to: brick}\n");
    ck_assert_double_eq(takeoff_needed(&takeoff, "fixing-hook-8"), 10); /* 3.6 m / 0.4 m + 1 */
    int fixings = 0;
    for (int i = 0; i < takeoff.parts->way_count; i++) {
        fixings += takeoff.parts->ways[i].fixings;
    }
    ck_assert_int_eq(fixings, 10);
    ck_assert_double_eq_tol(takeoff_way(&takeoff, "b", 0)->first_m, 0.3, 1e-9);
    ck_assert_double_eq_tol(takeoff_way(&takeoff, "a", 0)->first_m, 0, 1e-9);
    takeoff_free(&takeoff);
}
END_TEST

/* One on either side of each bend (Hong Kong code of practice for wiring, saddles and cleats: within 150 mm). */
START_TEST(bends_take_two_more)
{
    for (int bends = 0; bends <= 3; bends++) {
        char segments[128];
        snprintf(segments, sizeof segments, "- {name: a, way: wall, length: 4 m, bends: %d, fixed-to: brick}\n", bends);
        struct TakeOff takeoff = takeoff_of(segments);
        ck_assert_double_eq(takeoff_needed(&takeoff, "fixing-hook-8"), 11 + 2 * bends);
        ck_assert_double_eq(takeoff_needed(&takeoff, "plug-7"), 11 + 2 * bends);
        ck_assert_int_eq(takeoff_way(&takeoff, "a", 0)->bend_fixings, 2 * bends); /* apart from those at the pitch */
        ck_assert_int_eq(takeoff_says(takeoff_way(&takeoff, "a", 0), "150 mm from it"), bends > 0);
        takeoff_free(&takeoff);
    }
}
END_TEST

/* Near a termination: the clipped part's own first one does it; out of the ground or by a loop there is one more. */
START_TEST(one_near_each_termination)
{
    static const char run[] = "    load: {current: 10 A}\n    cable: {type: BS5467, cores: 3, size: 10 mm2}\n"
                              "    finish: {loop: 0.5 m, tail: 0.3 m}\n";
    struct TakeOff looped = takeoff_with(run, "- {name: a, way: wall, length: 4 m, fixed-to: brick}\n", "");
    struct TakeOff ground = takeoff_of("- {name: a, way: buried, length: 4 m, under: lawn}\n");
    struct TakeOff free_ends =
        takeoff_with("    load: {current: 10 A}\n    cable: {type: BS5467, cores: 3, size: 10 mm2}\n"
                     "    start: {into: free}\n    finish: {into: free}\n",
                     "- {name: a, way: buried, length: 4 m, under: lawn}\n", "");
    ck_assert_double_eq(takeoff_needed(&looped, "fixing-hook-8"), 12);
    ck_assert_double_eq(takeoff_needed(&looped, "plug-7"), 12);
    ck_assert_double_eq(takeoff_needed(&ground, "fixing-hook-8"), 2);
    ck_assert(takeoff_notes(&ground, "fixing by the termination"));
    ck_assert_double_eq(takeoff_needed(&free_ends, "fixing-hook-8"), 0);
    takeoff_free(&looped);
    takeoff_free(&ground);
    takeoff_free(&free_ends);
}
END_TEST

static const struct {
    const char *segment, *screw, *plug;
} surfaces[] = {
    {"way: wall, fixed-to: brick", "screw-wood-10x50", "plug-7"},
    {"way: wall, fixed-to: block", "screw-frame-8x80", ""},
    {"way: wall, fixed-to: concrete", "anchor-m6x50", ""},
    {"way: wall, fixed-to: timber", "screw-wood-10x40-zinc", ""},
    {"way: wall, fixed-to: steel", "clamp-girder-m6", ""},
    {"way: wall, fixed-to: plasterboard", "toggle-m5", ""},
    {"way: fence", "screw-wood-10x40", ""},
    {"way: fence, fixed-to: concrete", "band-post", ""},
    {"way: loft-void", "screw-wood-10x40-zinc", ""},
    {"way: wall, fixed-to: stone", "screw-wood-12x60", "plug-8"},
};

static void check_described(const struct TakeOff *takeoff, const char *code)
{
    ck_assert_msg(takeoff_described(takeoff, takeoff_part(takeoff, code))[0] != '\0', "%s has no name", code);
}

START_TEST(each_surface_has_its_own)
{
    char segments[128];
    snprintf(segments, sizeof segments, "- {name: a, %s, length: 4 m}\n", surfaces[_i].segment);
    struct TakeOff takeoff = takeoff_of(segments);
    ck_assert_double_eq(takeoff_needed(&takeoff, surfaces[_i].screw), 11);
    ck_assert_double_eq(takeoff_needed(&takeoff, "plug-7"), text_same(surfaces[_i].plug, "plug-7") ? 11 : 0);
    ck_assert_double_eq(takeoff_needed(&takeoff, "plug-8"), text_same(surfaces[_i].plug, "plug-8") ? 11 : 0);
    ck_assert(!takeoff_notes(&takeoff, "Screws and plugs"));
    const struct PartsWay *way = takeoff_way(&takeoff, "a", 0);
    ck_assert_str_ne(said(takeoff.arena, way->grip), "");
    ck_assert(takeoff_says(way, arena_print(takeoff.arena, "Each held by a %s.", said(takeoff.arena, way->grip))));
    ck_assert(!takeoff_says(way, "Note: ."));
    check_described(&takeoff, surfaces[_i].screw);
    if (surfaces[_i].plug[0] != '\0') {
        check_described(&takeoff, surfaces[_i].plug);
    }
    takeoff_free(&takeoff);
}
END_TEST

/* Fact of the trade (common practice, no source): fixings in a roof void are metal even where nobody could be caught by
 * them. BS 7671 521.10.202 asks it everywhere. */
START_TEST(every_fixing_is_metal)
{
    static const char *const ways[] = {"wall", "fence", "beam", "loft-void", "tray", "ladder", "catenary"};
    static const char *const cables[] = {"{type: BS5467, cores: 3, size: 10 mm2}",
                                         "{type: BS6004-multicore, cores: 3, size: 4 mm2, diameter: 11 mm}",
                                         "{type: BS6346, cores: 3, size: 4 mm2}"};
    for (int way = 0; way < 7; way++) {
        for (int cable = 0; cable < 3; cable++) {
            char run[160];
            char segments[96];
            snprintf(run, sizeof run, "    load: {current: 6 A}\n    cable: %s\n", cables[cable]);
            snprintf(segments, sizeof segments, "- {name: a, way: %s, length: 4 m}\n", ways[way]);
            struct TakeOff takeoff = takeoff_with(run, segments, "");
            int fixings = 0;
            for (int i = 0; i < takeoff.parts->count; i++) {
                const struct Part *part = &takeoff.parts->parts[i];
                const bool holds = strncmp(part->code, "fixing-", 7) == 0 || strncmp(part->code, "tie-", 4) == 0 ||
                                   strncmp(part->code, "cleat-", 6) == 0;
                if (holds) {
                    ck_assert_msg(strstr(takeoff_described(&takeoff, part), "etal") != NULL ||
                                      strstr(takeoff_described(&takeoff, part), "steel") != NULL,
                                  "%s: %s", ways[way], takeoff_described(&takeoff, part));
                    ck_assert_ptr_nonnull(strstr(takeoff_note(&takeoff, part), "521.10.202"));
                    fixings++;
                }
            }
            ck_assert_msg(fixings > 0, "%s: nothing holds it", ways[way]);
            const struct PartsWay *held = takeoff_way(&takeoff, "a", 0);
            ck_assert(takeoff_says(held, "metal") || takeoff_says(held, "stainless steel"));
            takeoff_free(&takeoff);
        }
    }
}
END_TEST

/* Several runs on one way: each has its own. */
START_TEST(each_run_its_own)
{
    struct TakeOff takeoff =
        takeoff_text("wend: 1\njob: {title: t}\nsupply: {system: TN-S, loop-impedance: 0.3 ohm}\nruns:\n"
                     "  one: {load: {current: 9 A}, cable: {type: BS5467, cores: 3, size: 10 mm2}}\n"
                     "  two: {load: {current: 9 A}, cable: {type: BS5467, cores: 3, size: 10 mm2}}\n"
                     "  link: {kind: data, cable: {type: EN50288, diameter: 7 mm}}\n"
                     "segments:\n- {name: a, way: wall, length: 4 m, fixed-to: timber}\n");
    ck_assert_double_eq(takeoff_needed(&takeoff, "fixing-hook-8"), 22);
    ck_assert_double_eq(takeoff_needed(&takeoff, "fixing-clip-7.0"), 17);
    ck_assert_double_eq(takeoff_needed(&takeoff, "screw-wood-10x40-zinc"), 39);
    ck_assert_str_eq(takeoff_uses(&takeoff, "fixing-hook-8"), "one: a; two: a");
    ck_assert_int_eq(takeoff_way(&takeoff, "a", 2)->fixings, 17);
    takeoff_free(&takeoff);
}
END_TEST

/* A cable of unknown diameter is held at the closest spacing that the table gives, and the list says so. */
START_TEST(unknown_diameter_takes_the_closest)
{
    struct TakeOff takeoff = takeoff_with(
        "    load: {current: 6 A}\n    cable: {type: BS6346, cores: 3, size: 4 mm2}\n",
        "- {name: a, way: wall, length: 7 m}\n- {name: f, way: under-floor, length: 2 m, insulation: surrounded}\n",
        "");
    ck_assert_double_eq(takeoff_needed(&takeoff, "fixing-BS6346-3x4"), 21); /* 7 / 0.35 + 1 */
    ck_assert_ptr_nonnull(
        strstr(takeoff_note(&takeoff, takeoff_part(&takeoff, "fixing-BS6346-3x4")), "diameter not known"));
    ck_assert(takeoff_notes(&takeoff, "no fixings are counted"));
    takeoff_free(&takeoff);
}
END_TEST

Suite *suite_takeoff_fixings(void)
{
    Suite *suite = suite_create("fixings");
    TCase *tests = tcase_create("fixings");
    tcase_add_loop_test(tests, spacing_by_diameter_and_direction, 0, (int)(sizeof rows / sizeof rows[0]));
    tcase_add_test(tests, last_spacing_rounded_up);
    tcase_add_test(tests, none_double_at_joins);
    tcase_add_test(tests, a_wall_cut_in_three_is_one_wall);
    tcase_add_test(tests, bends_take_two_more);
    tcase_add_test(tests, one_near_each_termination);
    tcase_add_loop_test(tests, each_surface_has_its_own, 0, (int)(sizeof surfaces / sizeof surfaces[0]));
    tcase_add_test(tests, every_fixing_is_metal);
    tcase_add_test(tests, each_run_its_own);
    tcase_add_test(tests, unknown_diameter_takes_the_closest);
    suite_add_tcase(suite, tests);
    return suite;
}
