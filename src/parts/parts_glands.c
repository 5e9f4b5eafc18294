/* Glands: one at each end of an armoured cable that goes into something. */
#include "parts_private.h"

/* BS 6121 letters, as the trade still uses them: BW has no seal, CW seals the outer sheath, E1W both. */
static const char *const letters[PLACE_COUNT] = {
    [PLACE_INDOORS] = "BW",
    [PLACE_OUTDOORS] = "CW",
    [PLACE_WET] = "E1W",
};

static void count_end(struct Counting *counting, const struct PlanRun *run, const struct End *end, const char *which)
{
    struct Arena *arena = counting->arena;
    const struct Cable *cable = &run->surveyed->cable;
    if (end->into == INTO_FREE || !survey_armoured(cable->type)) {
        return;
    }
    struct CableDimensions dimensions;
    const bool known = cable_dimensions(cable->type, cable->cores, run->size_mm2, &dimensions);
    const char *letter = letters[end->place];
    const char *use = arena_print(arena, "%s %s", run->surveyed->name, which);
    const char *thread = "";
    if (known && dimensions.usual_gland[0] != '\0' && gland_thread(dimensions.usual_gland, &thread)) {
        const struct Part article = {
            .aisle = AISLE_TERMINATIONS,
            .code = arena_print(arena, "gland-%s-%s", letter, dimensions.usual_gland),
            .description =
                arena_print(arena, "Brass cable gland kit %s size %s (%s): two glands, locknuts, earth tags, shrouds",
                            letter, dimensions.usual_gland, thread),
            .standard = "BS EN 62444",
            .unit = "each",
            .pack = 2,
            .pack_word = "pack",
            .note = arena_print(arena, "for cable %s mm overall, %s mm under the armour; check the maker's sheet",
                                number_text(arena, dimensions.overall_mm, 1),
                                number_text(arena, dimensions.under_armour_mm, 1)),
        };
        parts_add(counting, &article, 1, use);
        return;
    }
    const struct Part article = {
        .aisle = AISLE_TERMINATIONS,
        .code = arena_print(arena, "gland-%s-%s-%s", letter, survey_word(WORDS_CABLE, (int)cable->type),
                            number_significant(arena, run->size_mm2, 4)),
        .description = arena_print(arena, "Brass cable gland kit %s for %s: two glands, locknuts, earth tags, shrouds",
                                   letter, parts_cable_name(arena, run)),
        .standard = "BS EN 62444",
        .unit = "each",
        .pack = 2,
        .pack_word = "pack",
        .note = "no dimensions held for this cable: size from the maker's sheet",
    };
    parts_add(counting, &article, 1, use);
}

void parts_count_glands(struct Counting *counting, const struct PlanRun *run)
{
    if (run->rated) {
        count_end(counting, run, &run->surveyed->start, "start");
        count_end(counting, run, &run->surveyed->finish, "finish");
    }
}
