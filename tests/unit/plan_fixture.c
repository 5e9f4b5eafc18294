/* Builds a whole plan from a scene: survey, way, runs with ratings, checks and sizes. The figures add up, but no table
 * was asked for them. */
#include "fixture_scene.h"
#include "said.h"

#include <math.h>

static struct Quantity given(double value)
{
    return (struct Quantity){.value = value, .given = true};
}

static struct Quantity defaulted(double value)
{
    return (struct Quantity){.value = value};
}

/* ---- from a scene to a plan ---- */

static struct Segment *build_segments(struct Arena *arena, const struct Scene *scene)
{
    struct Segment *segments = arena_array(arena, (size_t)scene->stretch_count, sizeof *segments);
    for (int i = 0; segments != NULL && i < scene->stretch_count; i++) {
        const struct Stretch *stretch = &scene->stretches[i];
        segments[i] = (struct Segment){
            .name = stretch->name,
            .way = stretch->way,
            .length_m = given(stretch->length_m),
            .rise_m = stretch->rise_m != 0 ? given(stretch->rise_m) : defaulted(0),
            .fixed_to = SURFACE_COUNT,
            .air_degc = defaulted(30),
            .ground_degc = defaulted(20),
            .soil_thermal_k_m_per_w = defaulted(2.5),
            .sun = stretch->sun,
            .insulation = stretch->insulation,
            .insulation_given = stretch->insulation != INSULATION_NONE,
            .has_beside = stretch->beside > 0,
            .beside = {.circuits = stretch->beside},
            .notes = "",
            .wall = WALL_COUNT,
            .material = MATERIAL_COUNT,
            .under = UNDER_COUNT,
            .dig = DIG_COUNT,
            .depth_m = survey_in_ground(stretch->way) ? given(stretch->depth_m) : defaulted(0),
        };
    }
    return segments;
}

static struct Run *build_runs(struct Arena *arena, const struct Scene *scene)
{
    struct Run *runs = arena_array(arena, (size_t)scene->course_count, sizeof *runs);
    for (int i = 0; runs != NULL && i < scene->course_count; i++) {
        const struct Course *course = &scene->courses[i];
        int count = course->last - course->first + 1;
        int *along = arena_array(arena, (size_t)count, sizeof *along);
        for (int k = 0; along != NULL && k < count; k++) {
            along[k] = course->first + k;
        }
        bool power = course->kind == RUN_POWER;
        runs[i] = (struct Run){
            .name = course->name,
            .kind = course->kind,
            .serves = course->serves,
            .cable = {.type = power                      ? CABLE_BS5467
                              : course->kind == RUN_DATA ? CABLE_EN50288
                                                         : CABLE_BS6004_SINGLE,
                      .cores = power ? (scene->lines == 3 ? 5 : 3) : 0,
                      .cpc_run = -1},
            .device = {.given = power, .kind = DEVICE_RCBO, .residual_a = power ? given(0.03) : defaulted(0)},
            .along_count = along == NULL ? 0 : count,
            .along = along,
            .start = {.place = PLACE_INDOORS, .tail_m = given(0.6)},
            .finish = {.into = power ? INTO_ENCLOSURE : INTO_TERMINAL_BOX,
                       .place = PLACE_OUTDOORS,
                       .tail_m = given(0.8),
                       .loop_m = given(0.5)},
        };
    }
    return runs;
}

static struct PlanSegment *build_way(struct Arena *arena, const struct Scene *scene, const struct Segment *segments)
{
    struct PlanSegment *way = arena_array(arena, (size_t)scene->stretch_count, sizeof *way);
    double at_m = 0, height_m = 0;
    for (int i = 0; way != NULL && i < scene->stretch_count; i++) {
        way[i] = (struct PlanSegment){.surveyed = &segments[i],
                                      .from_m = at_m,
                                      .to_m = at_m + segments[i].length_m.value,
                                      .height_from_m = height_m,
                                      .height_to_m = height_m + segments[i].rise_m.value,
                                      .depth_m = segments[i].depth_m.value};
        at_m = way[i].to_m;
        height_m = way[i].height_to_m;
        for (int k = 0; k < scene->course_count; k++) {
            way[i].run_count += scene->courses[k].first <= i && i <= scene->courses[k].last;
        }
    }
    return way;
}

static void add_factor(struct Arena *arena, struct Rating *rating, struct Factor factor, const char *because)
{
    factor.source = as_is(arena, "a made-up table");
    factor.because = as_is(arena, because);
    struct Factor *factors = arena_array(arena, (size_t)rating->factor_count + 1, sizeof *factors);
    if (factors == NULL) {
        return;
    }
    for (int i = 0; i < rating->factor_count; i++) {
        factors[i] = rating->factors[i];
    }
    factors[rating->factor_count++] = factor;
    rating->factors = factors;
    rating->factor *= factor.value;
}

static struct Rating build_rating(struct Arena *arena, const struct Segment *segment, int index, double size_mm2)
{
    bool ground = survey_in_ground(segment->way);
    struct Rating rating = {.segment = index,
                            .method = ground                          ? "D"
                                      : segment->way == WAY_STUD_WALL ? "A"
                                                                      : "C",
                            .table = "4D4A",
                            .because = as_is(arena, "made up for a test"),
                            .tabulated_a = floor(20 + size_mm2 * 4.5),
                            .factor = 1,
                            .conductor_degc = 52,
                            .electrical_length_m = segment->length_m.value};
    if (segment->insulation == INSULATION_SURROUNDED) {
        const struct Factor factor = {
            .cause = FACTOR_INSULATION, .symbol = "Ci", .value = 0.78, .insulated_mm = 200, .insulated_here_mm = 200};
        add_factor(arena, &rating, factor, "200 mm surrounded by insulation");
    } else if (segment->insulation == INSULATION_ONE_SIDE) {
        const struct Factor factor = {.cause = FACTOR_INSULATION, .symbol = "Ci", .value = 0.88};
        add_factor(arena, &rating, factor, "insulation on one side");
    }
    if (segment->has_beside) {
        const struct Factor factor = {.cause = FACTOR_GROUPING,
                                      .symbol = "Cg",
                                      .value = 0.8,
                                      .grouped = GROUPED_BUNCHED,
                                      .circuits = segment->beside.circuits + 1};
        add_factor(arena, &rating, factor, arena_print(arena, "%d circuits, bunched", factor.circuits));
    }
    if (segment->sun == SUN_FULL) {
        const struct Factor factor = {.cause = FACTOR_SUN, .symbol = "Sun", .value = 0.91, .ambient_degc = 30};
        add_factor(arena, &rating, factor, "air taken 20 K hotter in full sun");
    }
    if (ground && segment->depth_m.value > 0.7) {
        const struct Factor factor = {
            .cause = FACTOR_DEPTH, .symbol = "Cd", .value = 0.97, .depth_m = 0.75, .depth_row_m = 1};
        add_factor(arena, &rating, factor, "depth 0.75 m");
    }
    rating.capacity_a = rating.tabulated_a * rating.factor;
    return rating;
}

static const struct CheckRef failing[] = {{"capacity", SAY_TITLE_CAPACITY, NULL}, {"drop", SAY_TITLE_DROP, NULL}};

static struct Check build_check(const char *id, enum CheckResult result, double value, double limit, enum Unit unit)
{
    return (struct Check){.id = id,
                          .kind = id,
                          .title = SAY_TITLE_LOAD,
                          .result = result,
                          .value = value,
                          .limit = limit,
                          .unit = unit,
                          .cite = {BS_7671, .clause = "433.1.1"}};
}

static const struct Step *build_steps(struct Arena *arena)
{
    struct Step *steps = arena_array(arena, 2, sizeof *steps);
    if (steps != NULL) {
        steps[0] = (struct Step){.what = as_is(arena, "loop at the far end, Zs"),
                                 .formula = as_is(arena, "Ze + R1 + R2"),
                                 .numbers = "0.35 + 0.141 + 0.141",
                                 .result = say_digits(0.632, 7, UNIT_OHM),
                                 .source = as_is(arena, "made up for a test")};
        steps[1] =
            (struct Step){.what = as_is(arena, "time allowed"), .numbers = "", .result = say_digits(0.4, 7, UNIT_S)};
    }
    return steps;
}

static struct Check *build_checks(struct Arena *arena, const struct PlanRun *run, bool fails, int *count)
{
    struct Check *checks = arena_array(arena, 5, sizeof *checks);
    if (checks == NULL) {
        return NULL;
    }
    checks[0] = build_check("load", CHECK_PASS, run->design_current_a, run->rating_a, UNIT_A);
    checks[0].text = as_is(arena, "the load of 26 A is not more than the device's 32 A");
    checks[1] = build_check("capacity", CHECK_PASS, run->capacity_a, run->rating_a, UNIT_A);
    checks[1].at_least = true;
    checks[1].text =
        as_is(arena, "in its worst stretch the cable carries at least the device's 32 A, after every factor that the "
                     "surroundings there cost it");
    checks[2] =
        build_check("drop", fails ? CHECK_FAIL : CHECK_PASS, run->drop_percent, run->drop_limit_percent, UNIT_PERCENT);
    checks[2].title = SAY_TITLE_DROP;
    checks[2].text = as_is(arena, "voltage drop against its limit");
    checks[2].steps = build_steps(arena);
    checks[2].step_count = checks[2].steps != NULL ? 2 : 0;
    checks[3] = build_check("breaking-capacity", CHECK_NOT_DUE, 0, 0, UNIT_KA);
    checks[3].text = as_is(arena, "the fault current at the origin was not surveyed");
    checks[4] = build_check("live-conductors", CHECK_PASS, 1.2e4, 2.0449e9, UNIT_A2_S);
    checks[4].text = as_is(arena, "the conductors stand what the device lets through");
    *count = 5;
    return checks;
}

static struct Option *build_options(struct Arena *arena, const struct PlanRun *run, const char *governing, int *count)
{
    struct Option *options = arena_array(arena, 3, sizeof *options);
    if (options == NULL) {
        return NULL;
    }
    for (int i = 0; i < 3; i++) {
        options[i] = (struct Option){.size_mm2 = run->size_mm2 * (i == 0 ? 0.5 : i),
                                     .verdict = i > 0 ? VERDICT_PASS : VERDICT_FAIL,
                                     .pass = i > 0,
                                     .chosen = i == 1,
                                     .capacity_a = i == 0 ? 0 : run->capacity_a * i,
                                     .governing = governing,
                                     .drop_percent = run->drop_percent,
                                     .fails = {failing, i == 0 ? 2 : 0},
                                     .why = i == 0 ? as_is(arena, "drops 5.6 %") : NULL,
                                     .zs_ohm = i == 2 ? 0.5 : 0,
                                     .gland = i == 2 ? "20S" : ""};
    }
    *count = 3;
    return options;
}

static void rate_run(struct Arena *arena, struct PlanRun *run, const struct Segment *segments, bool fails)
{
    struct Rating *ratings = arena_array(arena, (size_t)run->settled->along_count, sizeof *ratings);
    if (ratings == NULL) {
        return;
    }
    run->ratings = ratings;
    run->rating_count = run->settled->along_count;
    for (int i = 0; i < run->rating_count; i++) {
        ratings[i] = build_rating(arena, &segments[run->settled->along[i]], run->settled->along[i], run->size_mm2);
        if (ratings[i].capacity_a < ratings[run->governing].capacity_a) {
            run->governing = i;
        }
    }
    run->capacity_a = ratings[run->governing].capacity_a;
    run->drop_percent = fails ? 6.25 : 2.5;
    run->drop_v = run->voltage_v * run->drop_percent / 100;
    run->drop_at_load_temperature_percent = run->drop_percent * 0.94;
    for (int i = 0; i < run->rating_count; i++) {
        ratings[i].drop_share = ratings[i].electrical_length_m / run->route_length_m;
        ratings[i].drop_v = run->drop_v * ratings[i].drop_share;
        ratings[i].drop_percent = run->drop_percent * ratings[i].drop_share;
        ratings[i].drop_expected_v = ratings[i].drop_v * 0.94;
    }
    const char *governing = segments[ratings[run->governing].segment].name;
    run->checks = build_checks(arena, run, fails, &run->check_count);
    run->options = build_options(arena, run, governing, &run->option_count);
}

static struct PlanRun build_run(struct Arena *arena, const struct Scene *scene, const struct Segment *segments,
                                const struct Run *surveyed, const struct Course *course)
{
    struct PlanRun run = {.settled = surveyed,
                          .rated = course->kind == RUN_POWER,
                          .drop_table = "",
                          .verdict = course->fails ? VERDICT_FAIL : VERDICT_PASS,
                          .pass = !course->fails};
    for (int i = 0; i < surveyed->along_count; i++) {
        run.route_length_m += segments[surveyed->along[i]].length_m.value;
    }
    run.electrical_length_m = run.route_length_m + 1.9;
    run.order_length_m = (int)ceil(run.electrical_length_m * 1.05);
    if (!run.rated) {
        return run;
    }
    run.size_mm2 = 6;
    run.currents = (struct LineCurrents){.lines = scene->lines, .line_a = {26, 24, 21}};
    run.design_current_a = 26;
    run.device = DEVICE_RCBO;
    run.has_curve = true;
    run.rating_a = 32;
    run.device_text = as_is(arena, "RCBO B 32 A 30 mA");
    run.voltage_v = scene->lines == 3 ? 398.37 : 230;
    run.drop_limit_percent = 5;
    run.drop_table = "4D4B";
    run.governing_because = as_is(arena, "thermal insulation all round leaves 0.78 of the table's figure");
    run.readings = (struct Readings){.made = true,
                                     .r1_per_k = 0.004,
                                     .touch_v = 50,
                                     .cold_part = 0.8,
                                     .r1r2_20_ohm = 0.4512,
                                     .zs_hot_ohm = 0.93,
                                     .zs_20_ohm = 0.8,
                                     .ze_ohm = 0.35,
                                     .fault_far_a = 235,
                                     .insulation_least_mohm = 1,
                                     .insulation_test_v = 500,
                                     .residual_a = 0.03,
                                     .residual_longest_s = 0.3};
    run.why_not_smaller = as_is(arena, "4 mm2 would drop 5.6 %, more than the limit of 5 %");
    rate_run(arena, &run, segments, course->fails);
    return run;
}

static void fill_survey(struct Survey *survey, const struct Scene *scene)
{
    survey->job = (struct Job){.title = scene->title,
                               .site = "Mill Lane, Otterbrook",
                               .reference = "R-0142",
                               .customer = "",
                               .surveyor = "",
                               .surveyed = "2026-05-14",
                               .notes = ""};
    survey->supply = (struct Supply){.system = SYSTEM_TN_C_S,
                                     .phases = scene->lines,
                                     .voltage_v = defaulted(230),
                                     .loop_ohm = given(0.35),
                                     .drop_before_percent = defaulted(0)};
    survey->conditions = (struct Conditions){.air_degc = defaulted(30),
                                             .ground_degc = defaulted(20),
                                             .soil_thermal_k_m_per_w = defaulted(2.5),
                                             .soil_electrical_ohm_m = defaulted(100),
                                             .terminals_degc = defaulted(70)};
    survey->earthing = (struct Earthing){.given = true, .far_end = FAR_END_EXPORT};
    survey->run_count = scene->course_count;
    survey->segment_count = scene->stretch_count;
}

static void add_remarks(struct Arena *arena, struct Plan *plan)
{
    struct Assumption *assumptions = arena_array(arena, 2, sizeof *assumptions);
    struct Caution *cautions = arena_array(arena, 2, sizeof *cautions);
    struct NotChecked *unchecked = arena_array(arena, 1, sizeof *unchecked);
    if (assumptions == NULL || cautions == NULL || unchecked == NULL) {
        return;
    }
    assumptions[0] =
        (struct Assumption){"conditions.air", as_is(arena, "air taken as 30 degC"), -1, true, as_is(arena, "35 degC")};
    assumptions[1] = (struct Assumption){
        "parts.spare-cable", as_is(arena, "spare cable taken as 5 %, a habit and not a rule"), -1, false, NULL};
    static const int first_stretch[] = {0};
    cautions[0] = (struct Caution){
        .drawn = true, .where = "", .source = "common practice, no source", .text = say(arena, SAY_CAUTION_RULES)};
    cautions[1] = (struct Caution){.drawn = true,
                                   .where = plan->segments[0].surveyed->name,
                                   .source = "common practice, no source",
                                   .text = as_is(arena, "look for other services before drilling"),
                                   .stretch_count = 1,
                                   .stretches = first_stretch};
    unchecked[0] =
        (struct NotChecked){"disconnection", "feeder", as_is(arena, "whether the device trips in time at the far end"),
                            say(arena, SAY_TITLE_DISCONNECTION)};
    plan->assumptions = assumptions;
    plan->assumption_count = 2;
    plan->cautions = cautions;
    plan->caution_count = 2;
    plan->not_checked = unchecked;
    plan->not_checked_count = 1;
}

struct Plan *fixture_build(struct Arena *arena, const struct Scene *scene)
{
    struct Plan *plan = arena_alloc(arena, sizeof *plan);
    struct Survey *survey = arena_alloc(arena, sizeof *survey);
    struct Segment *segments = build_segments(arena, scene);
    struct Run *runs = build_runs(arena, scene);
    struct PlanRun *decided = arena_array(arena, (size_t)scene->course_count, sizeof *decided);
    if (plan == NULL || survey == NULL || segments == NULL || runs == NULL || decided == NULL) {
        return NULL;
    }
    fill_survey(survey, scene);
    survey->segments = segments;
    survey->runs = runs;
    *plan = (struct Plan){.route = "fixture",
                          .survey = survey,
                          .verdict = VERDICT_PASS,
                          .pass = true,
                          .verdict_text = say(arena, SAY_EVERY_CHECK_PASSES),
                          .segment_count = scene->stretch_count,
                          .segments = build_way(arena, scene, segments),
                          .run_count = scene->course_count,
                          .runs = decided,
                          .electrode = {.due = scene->lines == 3,
                                        .estimate_ohm = 41.5,
                                        .used_ohm = 41.5,
                                        .text = as_is(arena, "two rods come to about 41.5 ohm")},
                          .rules_edition = "BS 7671:2018+A2:2022",
                          .rules_text = as_is(arena, "BS 7671:2018+A2:2022; later ones are not covered")};
    for (int i = 0; i < scene->course_count; i++) {
        decided[i] = build_run(arena, scene, segments, &runs[i], &scene->courses[i]);
        if (scene->courses[i].fails) {
            plan->pass = false;
            plan->verdict = VERDICT_FAIL;
            plan->verdict_text = say(arena, SAY_CHECK_FAILS, say_name("drop"), say_name(runs[i].name));
        }
    }
    if (plan->segments != NULL) {
        add_remarks(arena, plan);
    }
    return arena_failed(arena) ? NULL : plan;
}
