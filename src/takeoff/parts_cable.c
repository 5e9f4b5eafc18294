/* Cable by the metre: each run is one piece without a joint. */
#include "parts_private.h"

struct CableWords {
    const char *description, *standard;
};
static const struct CableWords cable_words[CABLE_COUNT] = {
    [CABLE_BS5467] = {"armoured cable, copper, XLPE insulated, steel wire armour, PVC sheath", "BS 5467"},
    [CABLE_BS6724] = {"armoured cable, copper, XLPE insulated, steel wire armour, low smoke sheath", "BS 6724"},
    [CABLE_BS6346] = {"armoured cable, copper, PVC insulated, steel wire armour, PVC sheath", "BS 6346"},
    [CABLE_BS6004_FLAT] = {"flat twin cable with protective conductor, copper, PVC", "BS 6004"},
    [CABLE_BS6004_MULTICORE] = {"round multicore cable, copper, PVC", "BS 6004"},
    [CABLE_BS7211_MULTICORE] = {"round multicore cable, copper, thermosetting insulation, low smoke sheath", "BS 7211"},
    [CABLE_BS8436] = {"screened cable for walls and partitions, copper", "BS 8436"},
    [CABLE_EN50288] = {"data cable", "BS EN 50288"},
    [CABLE_BS6004_SINGLE] = {"single-core conductor, copper, green and yellow", "BS 6004"},
};

const char *parts_cable_name(struct Arena *arena, const struct PlanRun *run)
{
    const struct Cable *cable = &run->surveyed->cable;
    struct TextBuilder name = text_builder(arena);
    if (cable->cores > 0) {
        text_print(&name, "%d-core ", cable->cores);
    }
    if (run->size_mm2 > 0) {
        text_print(&name, "%s mm2 ", number_significant(arena, run->size_mm2, 4));
    }
    text_add(&name, cable_words[cable->type].description);
    if (run->size_mm2 <= 0 && parts_diameter_mm(run) > 0) {
        text_print(&name, ", %s mm overall", number_text(arena, parts_diameter_mm(run), 1));
    }
    return text_done(&name);
}

const char *parts_cable_code(struct Arena *arena, const struct PlanRun *run)
{
    const struct Cable *cable = &run->surveyed->cable;
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
        .code = arena_print(arena, "cable-%s-%s", parts_cable_code(arena, run), run->surveyed->name),
        .description = parts_cable_name(arena, run),
        .standard = cable_words[run->surveyed->cable.type].standard,
        .unit = "m",
        .article = arena_print(arena, "cable-%s", parts_cable_code(arena, run)),
        .length_m = run->order_length_m,
        .note = arena_print(arena, "one length, no joint; needs %s m, spare %s %%%s",
                            number_text(arena, run->electrical_length_m, 1),
                            number_significant(arena, counting->plan->survey->parts.spare_cable_percent.value, 4),
                            run->surveyed->kind == RUN_DATA ? "; say which kind: the survey does not" : ""),
    };
    parts_add(counting, &article, run->order_length_m, parts_for_run(run->surveyed));
}
