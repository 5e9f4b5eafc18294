/* What a rating factor was taken for: its cause and its figures as data, and the words that are made of them, in files
 * and on the drawing. Whole routes are planned, so that the figures are those of the survey. */
#include "fault_rig.h"
#include "run_suite.h"
#include "said.h"

#include <string.h>

static const struct Factor *factor_of(const struct Wend *wend, int stretch, enum FactorCause cause)
{
    const struct Rating *rating = &wend_result(wend)->runs[0].ratings[stretch];
    for (int i = 0; i < rating->factor_count; i++) {
        if (rating->factors[i].cause == cause) {
            return &rating->factors[i];
        }
    }
    ck_abort_msg("no factor of cause %d", (int)cause);
    return NULL;
}

static void says(const struct Say *say, const char *text)
{
    struct Arena *arena = arena_new();
    ck_assert_str_eq(said(arena, say), text);
    arena_free(arena);
}

START_TEST(air_is_told_with_the_row_that_was_read)
{
    const struct RigRoute route = {.segments = "{name: a, way: wall, length: 10 m, air: 33 degC}\n"
                                               "  - {name: b, way: wall, length: 10 m, air: 40 degC}"};
    struct Wend *wend = rig_plan(&route);
    const struct Factor *factor = factor_of(wend, 0, FACTOR_AIR);
    ck_assert_double_eq(factor->ambient_degc, 33);
    ck_assert_double_eq(factor->row_degc, 35);
    ck_assert_ptr_null(factor->air_as);
    says(factor->because, "air at 33 degC (row 35 degC)");
    factor = factor_of(wend, 1, FACTOR_AIR);
    ck_assert_double_eq(factor->row_degc, 40);
    says(factor->because, "air at 40 degC");
    wend_free(wend);
}
END_TEST

/* A hole of 0.4 m of stone is rated by itself where its neighbours carry more; its air is that of the warmer one. */
START_TEST(air_of_a_hole_names_the_stretch_it_is_from)
{
    const struct RigRoute route = {.segments = "{name: yard, way: wall, length: 10 m, air: 25 degC}\n"
                                               "  - {name: hole, way: through-wall, wall: stone, length: 0.4 m}\n"
                                               "  - {name: boiler, way: tray, length: 10 m, air: 45 degC}"};
    struct Wend *wend = rig_plan(&route);
    const struct Factor *factor = factor_of(wend, 1, FACTOR_AIR);
    ck_assert_double_eq(factor->ambient_degc, 45);
    ck_assert_str_eq(factor->air_as, "boiler");
    says(factor->because, "air at 45 degC, as in boiler");
    wend_free(wend);
}
END_TEST

START_TEST(insulation_counts_what_meets_it_in_the_next_segments)
{
    const struct RigRoute route = {
        .segments = "{name: a, way: loft-void, length: 0.2 m, insulation: surrounded, insulated-length: 0.2 m}\n"
                    "  - {name: b, way: loft-void, length: 0.1 m, insulation: surrounded, insulated-length: 0.1 m}\n"
                    "  - {name: c, way: wall, length: 10 m}\n"
                    "  - {name: d, way: loft-void, length: 3 m, insulation: surrounded, insulated-length: 0.1 m}"};
    struct Wend *wend = rig_plan(&route);
    const struct Factor *factor = factor_of(wend, 0, FACTOR_INSULATION);
    ck_assert_double_eq_tol(factor->insulated_mm, 300, 1e-9);
    ck_assert_double_eq_tol(factor->insulated_here_mm, 200, 1e-9);
    ck_assert(!factor->past_table);
    says(factor->because, "300 mm with what may meet it in the next segments, surrounded by insulation");
    factor = factor_of(wend, 1, FACTOR_INSULATION);
    ck_assert_double_eq_tol(factor->insulated_mm, 300, 1e-9);
    ck_assert_double_eq_tol(factor->insulated_here_mm, 100, 1e-9);
    factor = factor_of(wend, 3, FACTOR_INSULATION);
    ck_assert_double_eq_tol(factor->insulated_mm, 100, 1e-9);
    ck_assert_double_eq_tol(factor->insulated_here_mm, 100, 1e-9);
    says(factor->because, "100 mm surrounded by insulation");
    wend_free(wend);
}
END_TEST

START_TEST(insulation_of_a_size_past_the_table)
{
    const struct RigRoute route = {
        .cable = "type: BS5467, cores: 3, size: 16 mm2",
        .segments = "{name: a, way: loft-void, length: 3 m, insulation: surrounded, insulated-length: 0.1 m}"};
    struct Wend *wend = rig_plan(&route);
    const struct Factor *factor = factor_of(wend, 0, FACTOR_INSULATION);
    ck_assert(factor->past_table);
    ck_assert_double_eq(factor->value, 0.5);
    says(factor->because, "100 mm surrounded by insulation: the table ends at 10 mm2, so half is taken");
    wend_free(wend);
}
END_TEST

static const struct GroupedRow {
    const char *segment;
    enum Grouped grouped;
    int circuits, ducts;
    bool unlike;
    const char *because;
} grouped_rows[] = {
    {"way: wall, beside: {circuits: 2, arrangement: bunched}", GROUPED_BUNCHED, 3, 0, false,
     "3 loaded circuits bunched"},
    {"way: wall, beside: {circuits: 2, arrangement: single-layer}", GROUPED_IN_LAYER, 3, 0, false,
     "3 loaded circuits in one layer"},
    {"way: wall, beside: {circuits: 2, arrangement: spaced}", GROUPED_APART, 3, 0, false,
     "3 loaded circuits, more than two cable diameters apart"},
    {"way: wall, beside: {circuits: 2, arrangement: bunched, unlike: yes}", GROUPED_BUNCHED, 3, 0, true,
     "3 loaded circuits bunched, taken as unlike in size: 1 / sqrt(3)"},
    {"way: buried, depth: 0.7 m, beside: {circuits: 1, arrangement: bunched}", GROUPED_IN_GROUND, 2, 0, false,
     "2 loaded circuits laid together in the ground"},
    {"way: duct, depth: 0.7 m, beside: {circuits: 1, arrangement: bunched}", GROUPED_IN_DUCTS, 2, 1, false,
     "2 loaded circuits in one duct, taken as bunched"},
    {"way: duct, depth: 0.7 m, beside: {circuits: 1, arrangement: bunched, unlike: yes}", GROUPED_IN_DUCTS, 2, 1, true,
     "2 loaded circuits in one duct, taken as unlike in size: 1 / sqrt(2)"},
    {"way: duct, depth: 0.7 m, beside: {circuits: 2, arrangement: duct-touching}", GROUPED_IN_DUCTS, 1, 3, false,
     "3 loaded ducts side by side"},
    {"way: duct, depth: 0.7 m, beside: {circuits: 1, arrangement: duct-touching, unlike: yes}", GROUPED_IN_DUCTS, 1, 2,
     true, "2 loaded ducts side by side, taken as unlike in size"},
};

START_TEST(grouping_tells_how_many_lie_how)
{
    const struct GroupedRow *row = &grouped_rows[_i];
    char segment[200];
    ck_assert_int_lt(snprintf(segment, sizeof segment, "{name: a, length: 10 m, %s}", row->segment),
                     (int)sizeof segment);
    const struct RigRoute route = {.segments = segment};
    struct Wend *wend = rig_plan(&route);
    const struct Factor *factor = factor_of(wend, 0, FACTOR_GROUPING);
    ck_assert_int_eq(factor->grouped, row->grouped);
    ck_assert_int_eq(factor->circuits, row->circuits);
    ck_assert_int_eq(factor->ducts, row->ducts);
    ck_assert_int_eq(factor->unlike, row->unlike);
    says(factor->because, row->because);
    wend_free(wend);
}
END_TEST

/* Two runs of the file, 2.5 and 16 mm2, in one trunking: more than three neighbouring sizes. */
START_TEST(grouping_tells_the_sizes_that_are_unlike)
{
    const struct RigRoute route = {
        .cable = "type: BS5467, cores: 3, size: 2.5 mm2",
        .load = "current: 2 A",
        .device = "kind: MCB, curve: B, rating: 6 A",
        .runs = "  other:\n    load: {current: 20 A}\n    device: {kind: MCB, curve: B, rating: 32 A}\n"
                "    cable: {type: BS5467, cores: 3, size: 16 mm2}",
        .segments = "{name: a, way: trunking, length: 10 m}"};
    struct Wend *wend = rig_plan(&route);
    const struct Factor *factor = factor_of(wend, 0, FACTOR_GROUPING);
    ck_assert(factor->unlike);
    ck_assert_double_eq(factor->least_mm2, 2.5);
    ck_assert_double_eq(factor->most_mm2, 16);
    says(factor->because,
         "2 loaded circuits bunched, from 2.5 to 16 mm2, more than three neighbouring sizes: 1 / sqrt(2)");
    wend_free(wend);
}
END_TEST

/* The same where no size is given: those that were chosen count, and are chosen anew until nothing changes. */
START_TEST(grouping_finds_chosen_sizes_unlike)
{
    const struct RigRoute route = {
        .cable = "type: BS5467, cores: 3",
        .load = "current: 2 A",
        .device = "kind: MCB, curve: B, rating: 6 A",
        .runs = "  other:\n    load: {current: 80 A}\n    device: {kind: MCB, curve: B, rating: 80 A}\n"
                "    cable: {type: BS5467, cores: 3}",
        .segments = "{name: a, way: trunking, length: 10 m}"};
    struct Wend *wend = rig_plan(&route);
    const struct Factor *factor = factor_of(wend, 0, FACTOR_GROUPING);
    ck_assert(factor->unlike);
    ck_assert_double_eq_tol(factor->value, 0.7071, 0.0001);
    ck_assert_double_eq(factor->least_mm2, wend_result(wend)->runs[0].size_mm2);
    ck_assert_double_eq(factor->most_mm2, wend_result(wend)->runs[1].size_mm2);
    ck_assert_double_ge(factor->most_mm2, 16);
    wend_free(wend);
}
END_TEST

/* Shallow and dry enough for no gain, and deep in wet soil for none either. */
START_TEST(ground_tells_soil_and_depth)
{
    const struct RigRoute route = {.top = "conditions: {ground: 22 degC, soil-thermal: 1.2 K.m/W}",
                                   .segments = "{name: a, way: duct, length: 10 m, depth: 0.75 m}\n"
                                               "  - {name: b, way: duct, length: 10 m, depth: 0.5 m}\n"
                                               "  - {name: c, way: duct, length: 10 m, depth: 1.2 m}"};
    struct Wend *wend = rig_plan(&route);
    const struct Factor *ground = factor_of(wend, 0, FACTOR_GROUND);
    ck_assert_double_eq(ground->ambient_degc, 22);
    ck_assert_double_eq(ground->row_degc, 25);
    says(ground->because, "ground at 22 degC (row 25 degC)");
    const struct Factor *soil = factor_of(wend, 0, FACTOR_SOIL);
    ck_assert_double_eq(soil->soil_k_m_per_w, 1.2);
    ck_assert_double_eq(soil->soil_row_k_m_per_w, 1.5);
    ck_assert(!soil->no_gain);
    says(soil->because, "soil of 1.2 K.m/W (row 1.5 K.m/W)");
    const struct Factor *depth = factor_of(wend, 0, FACTOR_DEPTH);
    ck_assert_double_eq(depth->depth_m, 0.75);
    ck_assert_double_eq(depth->depth_row_m, 1);
    says(depth->because, "laid at 0.75 m (row 1 m)");
    says(factor_of(wend, 0, FACTOR_OVERLOAD_BURIED)->because, "in the ground, protected against overload");
    depth = factor_of(wend, 1, FACTOR_DEPTH);
    ck_assert(depth->no_gain);
    says(depth->because, "laid at less than 0.7 m: no gain taken");
    soil = factor_of(wend, 2, FACTOR_SOIL);
    ck_assert(soil->no_gain);
    ck_assert_double_eq(soil->value, 1);
    says(soil->because, "Table 4B3 is for depths to 0.8 m: no gain taken deeper");
    wend_free(wend);
}
END_TEST

START_TEST(sun_and_fuse_tell_themselves)
{
    const struct RigRoute route = {.device = "kind: BS3036, rating: 30 A",
                                   .segments = "{name: a, way: wall, length: 10 m, sun: full, air: 35 degC}"};
    struct Wend *wend = rig_plan(&route);
    const struct Factor *factor = factor_of(wend, 0, FACTOR_SUN);
    ck_assert_double_eq(factor->ambient_degc, 35);
    says(factor->because, "in full sun: a calculation, not a table: 20 K added to air at 35 degC");
    says(factor_of(wend, 0, FACTOR_BS3036)->because, "protected by a BS 3036 fuse");
    wend_free(wend);
}
END_TEST

/* Annex E: 33 % and less by the lines, above it by the neutral, which carries 3 x 40 % = 120 % of a line. */
START_TEST(harmonics_tell_what_carries_most)
{
    const struct RigRoute route = {.run = "third-harmonic: 40 %",
                                   .load = "current: 20 A, phases: 3",
                                   .supply = "system: TN-S, loop-impedance: 350 mohm, phases: 3",
                                   .cable = "type: BS5467, cores: 5"};
    struct Wend *wend = rig_plan(&route);
    const struct Factor *factor = factor_of(wend, 0, FACTOR_HARMONICS);
    ck_assert_double_eq(factor->third_harmonic_percent, 40);
    ck_assert(factor->neutral_carries_most);
    says(factor->because, "40 % third harmonic: the neutral carries most, and the cable is sized on it");
    wend_free(wend);
}
END_TEST

/* The sentence on what governs has every factor that is not 1, with its cause, and no other. */
START_TEST(what_governs_is_said_with_its_factors)
{
    const struct RigRoute route = {
        .cable = "type: BS5467, cores: 3, size: 6 mm2",
        .segments = "{name: a, way: wall, length: 10 m, air: 40 degC, beside: {circuits: 2, arrangement: bunched}}\n"
                    "  - {name: b, way: wall, length: 10 m}"};
    struct Wend *wend = rig_plan(&route);
    const struct PlanRun *run = &wend_result(wend)->runs[0];
    ck_assert_int_eq(run->governing, 0);
    /* Table 4D4A, 6 mm2, method C, two loaded: 49 A; x 0.87 x 0.70 = 29.8 A */
    says(run->governing_because,
         "method C of Table 4D4A gives 49 A, Ca 0.87 (air at 40 degC), Cg 0.70 (3 loaded circuits bunched): 29.8 A");
    says(run->ratings[1].because, "clipped direct to a wall; 90 degC cable by the 70 degC table, for the terminals");
    wend_free(wend);
}
END_TEST

static int assumed(const struct Plan *plan, const char *text)
{
    struct Arena *arena = arena_new();
    int count = 0;
    for (int i = 0; i < plan->assumption_count; i++) {
        count += text_same(said(arena, plan->assumptions[i].text), text);
    }
    arena_free(arena);
    return count;
}

/* What no table gives is part of the reason, and taken for granted once for all stretches that it is taken on. */
START_TEST(a_judgement_is_told_once_with_its_stretches)
{
    const struct RigRoute route = {.segments = "{name: a, way: trunking, length: 10 m}\n"
                                               "  - {name: b, way: wall, length: 10 m, insulation: one-side}\n"
                                               "  - {name: c, way: under-floor, length: 10 m}\n"
                                               "  - {name: d, way: wall, length: 10 m}"};
    struct Wend *wend = rig_plan(&route);
    const struct Rating *ratings = wend_result(wend)->runs[0].ratings;
    ck_assert_int_eq(ratings[0].judgement->id, SAY_JUDGED_ENCLOSED_AS_UNARMOURED);
    ck_assert_int_eq(ratings[1].judgement->id, SAY_JUDGED_ONE_SIDE_AS_ALL_ROUND);
    ck_assert_int_eq(ratings[2].judgement->id, SAY_JUDGED_ENCLOSED_AS_UNARMOURED);
    ck_assert_ptr_null(ratings[3].judgement);
    says(ratings[1].because, "thermal insulation on one side; no table gives armoured cable with insulation on one "
                             "side: taken as all round (a judgement, not a table); 90 degC cable by the 70 degC table, "
                             "for the terminals");
    ck_assert_int_eq(assumed(wend_result(wend),
                             "no table gives armoured cable enclosed or lying free in a void: the figure of the same "
                             "cable without armour is taken (a judgement, not a table): a, c"),
                     1);
    ck_assert_int_eq(assumed(wend_result(wend), "no table gives armoured cable with insulation on one side: taken as "
                                                "all round (a judgement, not a table): b"),
                     1);
    ck_assert_int_eq(ratings[1].warning->id, SAY_MUCH_INSULATION); /* 10 m of it */
    says(ratings[1].warning, "More than 1 m surrounded by insulation: the table's 0.50 is known to be too high where "
                             "the insulation is thick. Have it calculated, or take the cable out of the insulation.");
    ck_assert_ptr_null(ratings[0].warning);
    wend_free(wend);
}
END_TEST

/* A hole is rated as its worse neighbour, and says so; sun on air above 40 degC has a warning. */
START_TEST(a_hole_names_the_stretch_it_is_rated_as)
{
    const struct RigRoute route = {.segments = "{name: yard, way: wall, length: 10 m, air: 45 degC, sun: full}\n"
                                               "  - {name: hole, way: through-wall, wall: brick, length: 0.2 m}\n"
                                               "  - {name: hall, way: wall, length: 10 m}"};
    struct Wend *wend = rig_plan(&route);
    const struct Rating *ratings = wend_result(wend)->runs[0].ratings;
    says(ratings[1].because,
         "as yard beside the wall: clipped direct to a wall; 90 degC cable by the 70 degC table, for "
         "the terminals");
    says(ratings[0].warning,
         "Full sun on air above 40 degC: the 20 K that is added was derived for air up to 40 degC.");
    wend_free(wend);
}
END_TEST

static const struct DrawnRow {
    const char *segment, *drawn;
} drawn_rows[] = {
    {"way: wall, air: 40 degC", "air\u00a0at\u00a040\u00a0\u00b0C\u00a0\u00d70.87"},
    {"way: wall, beside: {circuits: 2, arrangement: bunched}", "3\u00a0circuits\u00a0\u00d70.70"},
    {"way: duct, depth: 0.7 m, beside: {circuits: 1, arrangement: duct-touching}", "2\u00a0ducts\u00a0\u00d70.85"},
    {"way: buried, depth: 0.7 m, soil-thermal: 3 K.m/W", "soil\u00a0of\u00a03\u00a0K\u00b7m/W\u00a0\u00d70.90"},
    {"way: buried, depth: 1 m", "laid\u00a0at\u00a01\u00a0m\u00a0\u00d70.97"},
    {"way: duct, depth: 0.7 m", "in\u00a0the\u00a0ground\u00a0\u00d70.90"},
    {"way: wall, sun: full", "full\u00a0sun\u00a0\u00d7"},
    {"way: loft-void, insulation: surrounded, insulated-length: 0.1 m", "insulation\u00a0\u00d70.78"},
};

/* The drawing has a few words for each cause, in the signs of paper, and does not cut them out of a sentence. */
START_TEST(the_drawing_names_the_cause_shortly)
{
    const struct DrawnRow *row = &drawn_rows[_i];
    char segment[200];
    ck_assert_int_lt(snprintf(segment, sizeof segment, "{name: a, length: 10 m, %s}", row->segment),
                     (int)sizeof segment);
    const struct RigRoute route = {.cable = "type: BS5467, cores: 3, size: 6 mm2", .segments = segment};
    struct Wend *wend = rig_plan(&route);
    const struct WendBytes svg = wend_document(wend, WEND_DIAGRAM_SVG);
    ck_assert_ptr_nonnull(svg.data);
    ck_assert_msg(strstr(svg.data, row->drawn) != NULL, "not drawn: %s", row->drawn);
    wend_free(wend);
}
END_TEST

#define ROWS(table) ((int)(sizeof(table) / sizeof(table)[0]))

int main(void)
{
    Suite *suite = suite_create("factors");
    TCase *tests = tcase_create("causes");
    tcase_add_test(tests, air_is_told_with_the_row_that_was_read);
    tcase_add_test(tests, air_of_a_hole_names_the_stretch_it_is_from);
    tcase_add_test(tests, insulation_counts_what_meets_it_in_the_next_segments);
    tcase_add_test(tests, insulation_of_a_size_past_the_table);
    tcase_add_loop_test(tests, grouping_tells_how_many_lie_how, 0, ROWS(grouped_rows));
    tcase_add_test(tests, grouping_tells_the_sizes_that_are_unlike);
    tcase_add_test(tests, grouping_finds_chosen_sizes_unlike);
    tcase_add_test(tests, ground_tells_soil_and_depth);
    tcase_add_test(tests, sun_and_fuse_tell_themselves);
    tcase_add_test(tests, harmonics_tell_what_carries_most);
    tcase_add_test(tests, what_governs_is_said_with_its_factors);
    tcase_add_test(tests, a_judgement_is_told_once_with_its_stretches);
    tcase_add_test(tests, a_hole_names_the_stretch_it_is_rated_as);
    tcase_add_loop_test(tests, the_drawing_names_the_cause_shortly, 0, ROWS(drawn_rows));
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
