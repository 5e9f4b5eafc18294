/* What the route language takes for granted: each default as data, and the sentence that a plan has for it. */
#include "run_suite.h"
#include "said.h"

#include "design/terms/design_private.h"

static const int stretches[] = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13};
enum { STRETCHES = (int)(sizeof stretches / sizeof stretches[0]) };

static const struct {
    struct Assumed assumed;
    const char *says;
} rows[] = {
    {{.what = ASSUMED_PHASES, .value = 1}, "phases taken as 1"},
    {{.what = ASSUMED_VOLTAGE, .value = 230}, "voltage taken as 230 V"},
    {{.what = ASSUMED_DROP_BEFORE}, "voltage drop before these runs taken as 0 %"},
    {{.what = ASSUMED_NEUTRAL_SIZE, .value = 35}, "copper size of the supply's neutral taken as 35 mm2"},
    {{.what = ASSUMED_EARTHING_CONDUCTOR, .value = 16}, "earthing conductor of the installation taken as 16 mm2"},
    {{.what = ASSUMED_AIR, .value = 30}, "air taken as 30 degC"},
    {{.what = ASSUMED_GROUND, .value = 20}, "ground taken as 20 degC"},
    {{.what = ASSUMED_SOIL_THERMAL, .value = 2.5}, "thermal resistivity of the soil taken as 2.5 K.m/W"},
    {{.what = ASSUMED_SOIL_ELECTRICAL, .value = 100}, "electrical resistivity of the soil taken as 100 ohm.m"},
    {{.what = ASSUMED_TERMINALS, .value = 70}, "terminals taken as 70 degC"},
    {{.what = ASSUMED_ELECTRODE_TARGET, .value = 200}, "resistance that the electrode is to come to taken as 200 ohm"},
    {{.what = ASSUMED_ROD_SPACING, .value = 1.2}, "rod spacing taken as 1.2 m, one rod's length"},
    {{.what = ASSUMED_SPARE_CABLE, .value = 5}, "spare cable taken as 5 % (a habit and not a rule)"},
    {{.what = ASSUMED_SPARE_FIXINGS, .value = 10}, "spare fixings taken as 10 % (a habit and not a rule)"},
    {{.what = ASSUMED_DIVERSITY, .value = 1}, "diversity taken as 100 %"},
    {{.what = ASSUMED_POWER_FACTOR, .value = 1}, "power factor taken as 1"},
    {{.what = ASSUMED_DROP_LIMIT, .value = 5}, "drop limit taken as 5 %"},
    {{.what = ASSUMED_DROP_LIMIT_LIGHTING, .value = 3}, "drop limit taken as 3 % for lighting"},
    {{.what = ASSUMED_CORES, .value = 3}, "cores taken as 3"},
    {{.what = ASSUMED_TAIL, .value = 0.5}, "tail taken as 0.5 m"},
    {{.what = ASSUMED_LOOP}, "loop taken as 0 m"},
    {{.what = ASSUMED_FEEDS, .word = FEEDS_BOARD}, "taken to feed a distribution board"},
    {{.what = ASSUMED_USE, .word = USE_GENERAL}, "use taken as general"},
    {{.what = ASSUMED_DEVICE_KIND, .word = DEVICE_MCB}, "device taken as MCB"},
    {{.what = ASSUMED_CURVE, .word = CURVE_B}, "curve taken as B"},
    {{.what = ASSUMED_CPC, .word = CPC_CORE}, "protective conductor (cpc) taken as core"},
    {{.what = ASSUMED_INTO, .word = INTO_ENCLOSURE}, "end taken as enclosure"},
    {{.what = ASSUMED_PLACE, .word = PLACE_INDOORS}, "place taken as indoors"},
    {{.what = ASSUMED_START, .run = 1},
     "start taken as in an enclosure, indoors, with a tail of 0.5 m and a loop of 0 m"},
    {{.what = ASSUMED_FINISH, .run = 1},
     "finish taken as in an enclosure, outdoors, with a tail of 0.75 m and a loop of 2 m"},
    {{.what = ASSUMED_CPC_RUN, .run = 1}, "separate cpc taken as the run bond, the only earth run"},
    {{.what = ASSUMED_EXPORT}, "far end taken as export: the supply's earth goes with the cable"},
    {{.what = ASSUMED_TIMBER, .segment_count = 1, .segments = stretches}, "fixed to timber"},
    {{.what = ASSUMED_TIMBER, .segment_count = 2, .segments = &stretches[1]}, "fixed to timber: s1, s2"},
    {{.what = ASSUMED_SHADED, .segment_count = STRETCHES, .segments = stretches},
     "taken as shaded from the sun: s0, s1, s2, s3, s4, s5, s6, s7, s8, s9, s10, s11 and 2 more"},
    {{.what = ASSUMED_NEW_DUCT, .segment_count = 1, .segments = stretches}, "duct taken as new"},
    {{.what = ASSUMED_BESIDE_BUNCHED, .segment_count = 1, .segments = stretches},
     "circuits beside it taken as bunched"},
    {{.what = ASSUMED_BESIDE_ALIKE, .segment_count = 1, .segments = stretches},
     "circuits beside it taken as like the runs here: within three neighbouring sizes, insulation for no lower "
     "temperature"},
    {{.what = ASSUMED_ONE_SIDE, .segment_count = 1, .segments = stretches},
     "insulation taken as one-side, since its thickness is given"},
    {{.what = ASSUMED_DEPTH, .segment_count = 2, .segments = stretches},
     "depth taken as 600 mm (common practice, no source): s0, s1"},
};
enum { ROWS = (int)(sizeof rows / sizeof rows[0]) };

START_TEST(each_default_has_its_sentence)
{
    struct Arena *arena = arena_new();
    struct Segment segments[STRETCHES] = {0};
    for (int i = 0; i < STRETCHES; i++) {
        segments[i].name = arena_print(arena, "s%d", i);
    }
    const struct Run runs[] = {
        {.name = "bond"},
        {.name = "feeder",
         .cable = {.cpc_run = 0},
         .start = {.into = INTO_ENCLOSURE, .place = PLACE_INDOORS, .tail_m = {.value = 0.5}},
         .finish =
             {.into = INTO_ENCLOSURE, .place = PLACE_OUTDOORS, .tail_m = {.value = 0.75}, .loop_m = {.value = 2}}},
    };
    const struct Survey survey = {.run_count = 2, .runs = runs, .segment_count = STRETCHES, .segments = segments};
    ck_assert_str_eq(said(arena, assumed_said(arena, &survey, &rows[_i].assumed)), rows[_i].says);
    arena_free(arena);
}
END_TEST

/* A default that is added to the language gets its row here. */
START_TEST(no_default_is_left_out)
{
    bool listed[ASSUMED_COUNT] = {[ASSUMED_NOTHING] = true};
    for (int i = 0; i < ROWS; i++) {
        listed[rows[i].assumed.what] = true;
    }
    for (int what = 0; what < ASSUMED_COUNT; what++) {
        ck_assert_msg(listed[what], "default %d has no row", what);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("what is taken for granted");
    TCase *tests = tcase_create("defaults");
    tcase_add_loop_test(tests, each_default_has_its_sentence, 0, ROWS);
    tcase_add_test(tests, no_default_is_left_out);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
