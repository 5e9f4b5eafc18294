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

/* The next larger size that passes as the chosen one does, by the sizes that were tried; with a size that was given
 * those stand among the alternatives. NULL where none does. */
static const struct Option *next_size(const struct PlanRun *run)
{
    const bool given =
        run->size_was_given && run->alternative_count > 0 && run->alternatives[0].cpc == run->settled->cable.cpc;
    const struct Option *options = given ? run->alternatives[0].options : run->options;
    const int count = given ? run->alternatives[0].option_count : run->option_count;
    for (int i = 0; i < count; i++) {
        if (options[i].size_mm2 > run->size_mm2 && options[i].pass && options[i].verdict >= run->verdict) {
            return &options[i];
        }
    }
    return NULL;
}

/* What may be taken where the counter has not what is asked for: what changes with it is a new plan. */
static const struct Say *instead(struct Arena *arena, const struct PlanRun *run)
{
    const struct Option *option = run->rated && run->pass ? next_size(run) : NULL;
    if (option == NULL) {
        return NULL;
    }
    const struct Say *gland = *option->gland != '\0' ? say(arena, SAY_ITS_GLAND, say_name(option->gland)) : NULL;
    return say(arena, SAY_OR_NEXT_SIZE, say_digits(option->size_mm2, 4, UNIT_MM2), say_part(gland));
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
        .note = say_list(arena, SAY_SEMICOLON,
                         say(arena, run->settled->kind == RUN_DATA ? SAY_ONE_LENGTH_OF_SOME_KIND : SAY_ONE_LENGTH,
                             say_fixed(run->electrical_length_m, 1, UNIT_M),
                             say_digits(counting->plan->survey->parts.spare_cable_percent.value, 4, UNIT_PERCENT)),
                         say_part(instead(arena, run))),
    };
    parts_add(counting, &article, run->order_length_m, parts_for_run(run->settled));
}
