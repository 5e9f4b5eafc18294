/* Scenes drawn by lot, and one whose every text is hostile; parts lists for both. */
#include "fixture_scene.h"
#include "said.h"

static const char *const names[FIXTURE_COUNT] = {
    "two",  "eight",     "twenty-five", "underground", "tower",   "long-dull",
    "hill", "every-way", "runs",        "two-hundred", "hostile",
};

const char *fixture_name(enum FixtureKind kind)
{
    return names[kind];
}

/* ---- chance, the same on every machine ---- */

static unsigned draw(unsigned *state, unsigned below)
{
    *state = *state * 1664525U + 1013904223U;
    return (*state >> 8) % below;
}

/* ---- scenes drawn by lot ---- */

static struct Stretch random_stretch(struct Arena *arena, unsigned *state, int index)
{
    static const char *const words[] = {"hall",       "yard",
                                        "north wall", "store",
                                        "lane",       "wall of the old dairy",
                                        "barn",       "shed 2",
                                        "loft",       "a very long name for a quite short stretch of cable"};
    struct Stretch stretch = {.way = (enum Way)draw(state, WAY_COUNT)};
    stretch.name = arena_print(arena, "%s %d", words[draw(state, sizeof words / sizeof words[0])], index + 1);
    stretch.length_m = draw(state, 3) == 0 ? 0.2 + draw(state, 20) * 0.05 : 0.5 + draw(state, 400) * 0.1;
    if (draw(state, 12) == 0) {
        stretch.length_m *= 20;
    }
    if (draw(state, 3) == 0) {
        stretch.rise_m = stretch.length_m * ((double)draw(state, 21) - 10) / 10;
    }
    stretch.depth_m = survey_in_ground(stretch.way) ? 0.45 + draw(state, 10) * 0.05 : 0;
    stretch.insulation =
        survey_in_ground(stretch.way) ? INSULATION_NONE : (enum Insulation)draw(state, INSULATION_COUNT);
    stretch.beside = draw(state, 2) == 0 ? (int)draw(state, 6) : 0;
    stretch.sun = (enum Sun)draw(state, SUN_COUNT);
    return stretch;
}

const struct Plan *fixture_random(struct Arena *arena, int segments, unsigned seed)
{
    unsigned state = seed * 2654435761U + (unsigned)segments;
    struct Stretch *stretches = arena_array(arena, (size_t)segments, sizeof *stretches);
    enum { COURSES_MOST = 6 };
    int courses = 1 + (int)draw(&state, COURSES_MOST);
    struct Course *list = arena_array(arena, COURSES_MOST, sizeof *list);
    if (stretches == NULL || list == NULL) {
        return NULL;
    }
    for (int i = 0; i < segments; i++) {
        stretches[i] = random_stretch(arena, &state, i);
    }
    for (int i = 0; i < courses; i++) {
        int first = i == 0 ? 0 : (int)draw(&state, (unsigned)segments);
        int last = i == 0 ? segments - 1 : first + (int)draw(&state, (unsigned)(segments - first));
        list[i] = (struct Course){.name = arena_print(arena, "run %d", i + 1),
                                  .serves = draw(&state, 2) == 0 ? "a board at the far end" : "",
                                  .kind = i == 0 ? RUN_POWER : (enum RunKind)draw(&state, RUN_KIND_COUNT),
                                  .first = first,
                                  .last = last,
                                  .fails = draw(&state, 4) == 0};
    }
    struct Scene scene = {"A route drawn by lot", segments, stretches, courses, list, draw(&state, 2) == 0 ? 1 : 3};
    struct Plan *plan = fixture_build(arena, &scene);
    if (plan != NULL && seed % 3 > 0) { /* the others stay as sparse as a first survey */
        fixture_enrich(arena, plan, seed);
    }
    return arena_failed(arena) ? NULL : plan;
}

/* ---- hostile texts ---- */

const char *fixture_hostile_text(struct Arena *arena, unsigned index)
{
    static const char *const texts[] = {
        "<script>alert(1)</script>",
        "]]> &amp; <![CDATA[ & \"quoted\" 'single' -->",
        "\xE2\x80\xAE"
        "drawkcab \xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D \xE2\x80\xAC\xE2\x81\xA6x",
        "\xF0\x9F\x94\x8C\xF0\x9F\x8F\xA0 \xF0\x9F\x91\xA9\xE2\x80\x8D\xF0\x9F\x94\xA7 plug",
        "=1+1\xE2\x80\xA6 \"a,b\"; @sum",
        "\xE9\x85\x8D\xE7\x94\xB5\xE7\xAE\xB1 "
        "\xE9\x80\x9A\xE5\x90\x91\xE8\x88\xB9\xE5\xB1\x8B\xE7\x9A\x84\xE7\x94\xB5\xE7\xBC\x86",
        "\xEF\xBC\x9D"
        "full width",
        "e\xCC\x81\xCC\x82\xCC\x83\xCC\x84"
        "combining o\xCC\x88",
        "%s%n {} ${x} `id` $(id) \\033[31m",
        "  =cmd",
    };
    enum { PLAIN = (int)(sizeof texts / sizeof texts[0]), LONG = 500 };
    if (index % (PLAIN + 2) < PLAIN) {
        return texts[index % (PLAIN + 2)];
    }
    struct TextBuilder text = text_builder(arena);
    for (int i = 0; i < LONG; i++) { /* 500 characters, with and without blanks */
        text_add(&text, index % (PLAIN + 2) == PLAIN ? "W" : i % 9 == 8 ? " " : "\xC3\xA9");
    }
    return text_done(&text);
}

static const struct Plan *hostile_plan(struct Arena *arena)
{
    enum { STRETCHES = 14 };
    struct Stretch *stretches = arena_array(arena, STRETCHES, sizeof *stretches);
    struct Course *course = arena_array(arena, 2, sizeof *course);
    if (stretches == NULL || course == NULL) {
        return NULL;
    }
    for (unsigned i = 0; i < STRETCHES; i++) {
        stretches[i] = fixture_scene(FIXTURE_EVERY_WAY)->stretches[i];
        stretches[i].name = fixture_hostile_text(arena, i);
        stretches[i].insulation = INSULATION_SURROUNDED;
    }
    course[0] =
        (struct Course){fixture_hostile_text(arena, 10), fixture_hostile_text(arena, 0), RUN_POWER, 0, 13, true};
    course[1] = (struct Course){fixture_hostile_text(arena, 2), fixture_hostile_text(arena, 11), RUN_DATA, 3, 9, false};
    struct Scene scene = {fixture_hostile_text(arena, 11), STRETCHES, stretches, 2, course, 1};
    struct Plan *plan = fixture_build(arena, &scene);
    if (plan == NULL) {
        return NULL;
    }
    /* What is left are texts that a surveyor writes or that carry his words. */
    struct Survey *survey = arena_alloc(arena, sizeof *survey);
    struct Caution *cautions = arena_array(arena, 2, sizeof *cautions);
    struct Assumption *assumptions = arena_array(arena, 2, sizeof *assumptions);
    struct NotChecked *unchecked = arena_array(arena, 1, sizeof *unchecked);
    struct PlanRun *runs = arena_array(arena, 2, sizeof *runs);
    if (survey == NULL || cautions == NULL || assumptions == NULL || unchecked == NULL || runs == NULL) {
        return NULL;
    }
    *survey = *plan->survey;
    survey->job = (struct Job){fixture_hostile_text(arena, 0),
                               fixture_hostile_text(arena, 1),
                               fixture_hostile_text(arena, 2),
                               fixture_hostile_text(arena, 3),
                               fixture_hostile_text(arena, 4),
                               "2026-05-14",
                               fixture_hostile_text(arena, 11),
                               LOCATION_ORDINARY,
                               false,
                               fixture_hostile_text(arena, 2),
                               "2026-06-02"};
    plan->survey = survey;
    plan->route = fixture_hostile_text(arena, 1);
    plan->verdict_text = as_is(arena, fixture_hostile_text(arena, 10));
    cautions[0] = (struct Caution){.drawn = true,
                                   .where = fixture_hostile_text(arena, 3),
                                   .source = fixture_hostile_text(arena, 4),
                                   .text = as_is(arena, fixture_hostile_text(arena, 11))};
    cautions[1] = (struct Caution){.drawn = true,
                                   .where = "",
                                   .source = fixture_hostile_text(arena, 5),
                                   .text = as_is(arena, fixture_hostile_text(arena, 0))};
    assumptions[0] = (struct Assumption){fixture_hostile_text(arena, 6), as_is(arena, fixture_hostile_text(arena, 10)),
                                         -1, true, as_is(arena, fixture_hostile_text(arena, 9))};
    assumptions[1] = (struct Assumption){fixture_hostile_text(arena, 7), as_is(arena, fixture_hostile_text(arena, 8)),
                                         -1, false, NULL};
    unchecked[0] = (struct NotChecked){.id = "disconnection",
                                       .run = fixture_hostile_text(arena, 3),
                                       .text = as_is(arena, fixture_hostile_text(arena, 1)),
                                       .title = as_is(arena, fixture_hostile_text(arena, 6))};
    runs[0] = plan->runs[0];
    runs[1] = plan->runs[1];
    runs[0].governing_because = as_is(arena, fixture_hostile_text(arena, 10));
    runs[0].why_not_smaller = as_is(arena, fixture_hostile_text(arena, 2));
    runs[0].device_text = as_is(arena, fixture_hostile_text(arena, 5));
    struct Rating *ratings = arena_array(arena, (size_t)runs[0].rating_count, sizeof *ratings);
    if (ratings == NULL) {
        return NULL;
    }
    for (int i = 0; i < runs[0].rating_count; i++) {
        ratings[i] = runs[0].ratings[i];
        ratings[i].because = as_is(arena, fixture_hostile_text(arena, (unsigned)i + 1));
        ratings[i].warning = as_is(arena, fixture_hostile_text(arena, (unsigned)i + 3));
        struct Factor *factors = arena_array(arena, (size_t)ratings[i].factor_count, sizeof *factors);
        for (int k = 0; factors != NULL && k < ratings[i].factor_count; k++) {
            factors[k] = ratings[i].factors[k];
            factors[k].because = as_is(arena, fixture_hostile_text(arena, (unsigned)(i + k + 2)));
        }
        ratings[i].factors = factors;
    }
    runs[0].ratings = ratings;
    plan->runs = runs;
    plan->cautions = cautions;
    plan->assumptions = assumptions;
    plan->not_checked = unchecked;
    return arena_failed(arena) ? NULL : plan;
}

const struct Plan *fixture_plan(struct Arena *arena, enum FixtureKind kind)
{
    switch (kind) {
    case FIXTURE_TWENTY_FIVE: return fixture_random(arena, 25, 3);
    case FIXTURE_TWO_HUNDRED: return fixture_random(arena, 200, 5);
    case FIXTURE_HOSTILE: return hostile_plan(arena);
    case FIXTURE_TWO:
    case FIXTURE_EIGHT:
    case FIXTURE_UNDERGROUND:
    case FIXTURE_TOWER:
    case FIXTURE_LONG_DULL:
    case FIXTURE_HILL:
    case FIXTURE_EVERY_WAY:
    case FIXTURE_RUNS: return fixture_build(arena, fixture_scene(kind));
    case FIXTURE_COUNT: break;
    }
    return NULL;
}

/* ---- parts ---- */

static const struct Run feeder = {.name = "feeder"};
static const struct Segment gable = {.name = "gable"}, roof_void = {.name = "roof-void"};
static const struct PartUse plain_uses[] = {
    {.whom = PART_FOR_RUN, .run = &feeder, .place = PART_ON_SEGMENT, .segment = &gable},
    {.whom = PART_FOR_RUN, .run = &feeder, .place = PART_ON_SEGMENT, .segment = &roof_void}};

static const struct PartUse *hostile_use(struct Arena *arena, unsigned number)
{
    struct Run *run = arena_alloc(arena, sizeof *run);
    struct PartUse *use = arena_alloc(arena, sizeof *use);
    if (run == NULL || use == NULL) {
        return NULL;
    }
    *run = (struct Run){.name = fixture_hostile_text(arena, number)};
    *use = (struct PartUse){.whom = PART_FOR_RUN, .run = run};
    return use;
}

const struct PartsList *fixture_parts(struct Arena *arena, const struct Plan *plan)
{
    enum { PARTS = 14 };
    static const char *const plain[] = {"cable 3-core 6 mm2, armoured", "gland, 20S, brass, pack of 2",
                                        "cleat, No. 8, black", "warning tape, \"electric cable below\", 150 mm"};
    struct PartsList *list = arena_alloc(arena, sizeof *list);
    struct Part *parts = arena_array(arena, PARTS, sizeof *parts);
    const struct Say **notes =
        arena_array(arena, 2, sizeof *notes); /* NOLINT(bugprone-sizeof-expression): of pointers */
    if (list == NULL || parts == NULL || notes == NULL) {
        return NULL;
    }
    bool hostile = plan->survey->job.title == fixture_hostile_text(arena, 0);
    for (unsigned i = 0; i < PARTS; i++) {
        bool packed = i % 3 == 1;
        parts[i] = (struct Part){.aisle = (enum Aisle)(i % AISLE_COUNT),
                                 .code = arena_print(arena, "part-%u", i + 1),
                                 .description = as_is(arena, hostile ? fixture_hostile_text(arena, i) : plain[i % 4]),
                                 .standard = hostile      ? fixture_hostile_text(arena, i + 1)
                                             : i % 2 == 0 ? "BS 5467"
                                                          : "",
                                 .quantity = packed ? 2 : 12.5 + i,
                                 .unit = packed       ? "pack"
                                         : i % 2 == 0 ? "m"
                                                      : "each",
                                 .needed = packed ? 143 : 12.5 + i,
                                 .pack = packed ? 100 : 0,
                                 .pack_word = packed ? "pack" : "",
                                 .packs = packed ? 2 : 0,
                                 .length_m = i == 0 ? 12.5 : 0,
                                 .use_count = hostile ? 1 : 2,
                                 .uses = hostile ? hostile_use(arena, i + 2) : plain_uses,
                                 .note = hostile ? as_is(arena, fixture_hostile_text(arena, i + 3)) : NULL};
    }
    notes[0] = as_is(arena, hostile ? fixture_hostile_text(arena, 4) : "groundwork: sand and spoil are not counted");
    notes[1] = as_is(arena, "screws and plugs are not counted");
    *list = (struct PartsList){.count = PARTS, .parts = parts, .note_count = 2, .notes = notes};
    return fixture_money(arena, list, hostile) && !arena_failed(arena) ? list : NULL;
}
