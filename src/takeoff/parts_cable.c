/* Cable by the metre: each run is one piece without a joint. */
#include "parts_private.h"
#include "tables/cable_kinds.h"

/* A kind without its words does not compile. */
static const enum Saying kind_words[] = {
#define CABLE_KIND(symbol, ...) SAY_##symbol,
#include "survey/cable_kinds.inc"
#undef CABLE_KIND
};

const struct Say *parts_cable_name(struct Arena *arena, const struct PlanRun *run)
{
    const struct Cable *cable = &run->settled->cable;
    const struct SayArg what = say_term(kind_words[cable->type]);
    const struct SayArg size = say_digits(run->size_mm2, 4, UNIT_MM2);
    if (run->size_mm2 > 0) {
        return cable->cores > 0 ? say(arena, SAY_CABLE_OF_CORES_AND_SIZE, say_count(cable->cores), size, what)
                                : say(arena, SAY_CABLE_OF_SIZE, size, what);
    }
    const double overall_mm = parts_diameter_mm(run);
    const struct SayArg overall =
        say_part(overall_mm > 0 ? say(arena, SAY_OVERALL, say_fixed(overall_mm, 1, UNIT_MM)) : NULL);
    return cable->cores > 0 ? say(arena, SAY_CABLE_OF_CORES, say_count(cable->cores), what, overall)
                            : say(arena, SAY_CABLE_OF_KIND, what, overall);
}

const struct Say *parts_cable_thick(struct Arena *arena, const struct PlanRun *run)
{
    const double overall_mm = parts_diameter_mm(run);
    return overall_mm > 0 ? say(arena, SAY_CABLE_OVERALL, say_fixed(overall_mm, 1, UNIT_MM))
                          : parts_cable_name(arena, run);
}

const char *parts_cable_code(struct Arena *arena, const struct PlanRun *run)
{
    const struct Cable *cable = &run->settled->cable;
    if (run->size_mm2 <= 0) {
        const char *diameter = number_significant(arena, parts_diameter_mm(run), 4);
        return arena_print(arena, "%s-%smm", survey_word(WORDS_CABLE, (int)cable->type), diameter);
    }
    return arena_print(arena, "%s-%dx%s", survey_word(WORDS_CABLE, (int)cable->type), cable->cores,
                       number_significant(arena, run->size_mm2, 4));
}

void parts_count_cable(struct Counting *counting, const struct PlanRun *run)
{
    struct Arena *arena = counting->arena;
    /* A run is one unjointed piece: two runs of one cable are two lines, each with its length. */
    const struct Article article = {
        .aisle = AISLE_CABLE,
        .code = arena_print(arena, "cable-%s-%s", parts_cable_code(arena, run), run->settled->name),
        .description = parts_cable_name(arena, run),
        .standard = cable_kind(run->settled->cable.type)->standard,
        .unit = "m",
        .article = arena_print(arena, "cable-%s", parts_cable_code(arena, run)),
        .length_m = run->order_length_m,
        .note = say(arena, run->settled->kind == RUN_DATA ? SAY_ONE_LENGTH_OF_SOME_KIND : SAY_ONE_LENGTH,
                    say_fixed(run->electrical_length_m, 1, UNIT_M),
                    say_digits(counting->plan->survey->parts.spare_cable_percent.value, 4, UNIT_PERCENT)),
    };
    parts_add(counting, &article, run->order_length_m, parts_for_run(run->settled));
}
