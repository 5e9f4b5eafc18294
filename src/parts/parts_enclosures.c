/* The device at the supply end and what the run ends in. The enclosure that the device goes into is the installation's
 * own. */
#include "parts_private.h"

static const char *const standards[DEVICE_COUNT] = {
    [DEVICE_MCB] = "BS EN 60898-1", [DEVICE_RCBO] = "BS EN 61009-1", [DEVICE_GG] = "BS 88-2",
    [DEVICE_BS88_3] = "BS 88-3",    [DEVICE_BS3036] = "BS 3036",
};

/* "RCBO B 32 A 30 mA" as a code: "device-RCBO-B-32-A-30-mA". */
static const char *code_of(struct Arena *arena, const char *text)
{
    struct TextBuilder code = text_builder(arena);
    text_add(&code, "device-");
    for (const char *at = text; *at != '\0'; at++) {
        const unsigned char c = (unsigned char)*at;
        const bool plain =
            c >= 0x80 || c == '.' || (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
        if (plain || (code.length > 0 && code.data[code.length - 1] != '-')) {
            text_add_bytes(&code, plain ? at : "-", 1);
        }
    }
    return text_done(&code);
}

static void add(struct Counting *counting, const struct PlanRun *run, struct Article article, const char *place)
{
    article.unit = "each";
    article.aisle = AISLE_ENCLOSURES;
    parts_add(counting, &article, 1, run->surveyed->name, place);
}

static void add_device(struct Counting *counting, const struct PlanRun *run)
{
    const bool fuse = run->device != DEVICE_MCB && run->device != DEVICE_RCBO;
    add(counting, run,
        (struct Article){.code = code_of(counting->arena, run->device_text),
                         .description = arena_print(counting->arena, "Protective device %s", run->device_text),
                         .standard = standards[run->device],
                         .note = fuse ? "the fuse alone: its holder is not counted"
                                      : "of the make and type that the board at the supply end takes"},
        "start");
    if (fuse) {
        parts_not_counted(counting, UNCOUNTED_FUSE_HOLDER, run->surveyed->name, "");
    }
}

/* What a distribution circuit ends in. The residual device that the survey puts there comes with it. */
static void add_board(struct Counting *counting, const struct PlanRun *run)
{
    struct Arena *arena = counting->arena;
    const struct Quantity *residual = &counting->plan->survey->earthing.board_residual_a;
    const char *rating = number_significant(arena, run->rating_a, 4);
    const bool three = run->currents.lines == 3;
    const char *milliamps = number_significant(arena, residual->value * 1000, 4);
    add(counting, run,
        (struct Article){.code = residual->given
                                     ? arena_print(arena, "board-%s-%d-%smA", rating, run->currents.lines, milliamps)
                                     : arena_print(arena, "board-%s-%d", rating, run->currents.lines),
                         .description = arena_print(arena, "Distribution board%s, main switch not below %s A%s%s%s",
                                                    three ? ", three-phase" : "", rating,
                                                    residual->given ? ", residual device " : "",
                                                    residual->given ? milliamps : "", residual->given ? " mA" : ""),
                         .standard = "BS EN 61439-3",
                         .note = "its ways and their devices by what it feeds: not in the survey"},
        "finish");
}

static void add_finish(struct Counting *counting, const struct PlanRun *run)
{
    struct Arena *arena = counting->arena;
    const struct Run *surveyed = run->surveyed;
    const char *rating = number_significant(arena, run->rating_a, 4);
    const int poles = run->currents.lines == 3 ? 4 : 2;
    if (surveyed->finish.into == INTO_TERMINAL_BOX) {
        add(counting, run,
            (struct Article){.code = arena_print(arena, "terminal-box-%s", parts_cable_code(arena, run)),
                             .description = arena_print(arena, "Terminal box for %s", parts_cable_name(arena, run)),
                             .standard = "",
                             .note = "room for the cable's bend; sealed where it is wet"},
            "finish");
    } else if (surveyed->finish.into == INTO_ENCLOSURE && surveyed->feeds == FEEDS_BOARD) {
        add_board(counting, run);
    } else if (surveyed->finish.into == INTO_ENCLOSURE && surveyed->feeds == FEEDS_EQUIPMENT) {
        add(counting, run,
            (struct Article){
                .code = arena_print(arena, "isolator-%dp-%s", poles, rating),
                .description = arena_print(arena, "Isolator, %d-pole, not below %s A, in an enclosure", poles, rating),
                .standard = "BS EN 60947-3",
                .note = "unless the equipment has its own"},
            "finish");
    }
}

static void add_labels(struct Counting *counting, const struct PlanRun *run)
{
    const bool residual = run->surveyed->device.residual_a.given ||
                          survey_board_residual_a(&counting->plan->survey->earthing, run->surveyed) > 0;
    static const struct Article label = {.aisle = AISLE_LABELS,
                                         .code = "label-residual-test",
                                         .description = "Notice: test the residual current device regularly",
                                         .standard = "BS 7671 514.12.2",
                                         .unit = "each",
                                         .note = ""};
    if (residual) {
        parts_add(counting, &label, 1, run->surveyed->name, "");
    }
}

void parts_count_enclosures(struct Counting *counting, const struct PlanRun *run)
{
    if (!run->rated) {
        if (run->surveyed->finish.into != INTO_FREE || run->surveyed->start.into != INTO_FREE) {
            parts_not_counted(counting, UNCOUNTED_OTHER_ENDS, run->surveyed->name, "");
        }
        return;
    }
    add_device(counting, run);
    add_finish(counting, run);
    add_labels(counting, run);
    parts_not_counted(counting, UNCOUNTED_BOARD, run->surveyed->name, "");
    if (run->surveyed->finish.into == INTO_ACCESSORY || run->surveyed->feeds == FEEDS_SOCKETS) {
        parts_not_counted(counting, UNCOUNTED_ACCESSORY, run->surveyed->name, "");
    }
}
