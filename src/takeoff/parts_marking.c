/* What tells a core from another and a circuit from another: sleeving at the ends, labels. */
#include "parts_private.h"

/* BS 7671 514.3.1 and 514.4.2 for what a core is used for, 543.3.201 for one that is bare: from memory. The whole tail
 * is sleeved: common practice, no source. */
static void add_sleeving(struct Counting *counting, const struct PlanRun *run, const struct CoreRow *core)
{
    struct Arena *arena = counting->arena;
    const bool bare = core->colour == COLOUR_BARE;
    const bool blue = core->sleeve == COLOUR_BLUE;
    const char *size = number_significant(arena, run->size_mm2, 4);
    const enum Saying is = core->is == CORE_NEUTRAL ? SAY_CORE_NEUTRAL
                           : core->is == CORE_EARTH ? SAY_SLEEVED_EARTH
                                                    : SAY_SLEEVED_SPARE;
    const struct Article article = {
        .aisle = AISLE_TERMINATIONS,
        .code = arena_print(arena, "sleeving-%s-%s%s", blue ? "blue" : "green-and-yellow", size, bare ? "-bare" : ""),
        .description =
            say(arena, bare ? SAY_PART_SLEEVING_BARE : SAY_PART_SLEEVING,
                say_term(blue ? SAY_CORE_BLUE : SAY_GREEN_AND_YELLOW), say_digits(run->size_mm2, 4, UNIT_MM2)),
        .standard = bare ? "BS 7671 543.3.201" : "BS 7671 514.3.1",
        .sleeves_cores = true,
        .unit = "m",
        .note = say(arena, SAY_NOTE_SLEEVING, say_term(is)),
        .spare = SPARE_WHOLE};
    const struct Run *surveyed = run->settled;
    parts_add(counting, &article, surveyed->start.tail_m.value, parts_for_end(surveyed, PART_AT_START));
    parts_add(counting, &article, surveyed->finish.tail_m.value, parts_for_end(surveyed, PART_AT_FINISH));
}

static void add_all_sleeving(struct Counting *counting, const struct PlanRun *run)
{
    const struct CoreUse *use = survey_core_use(run->settled, run->currents.lines);
    if (use == NULL) {
        parts_not_counted(counting, UNCOUNTED_SLEEVING, parts_for_run(run->settled));
        return;
    }
    for (int i = 0; i < use->cores; i++) {
        if (use->rows[i].sleeve != COLOUR_NONE) {
            add_sleeving(counting, run, &use->rows[i]);
        }
    }
}

static void add_label(struct Counting *counting, const struct PlanRun *run, struct Article label, enum PartPlace place)
{
    label.aisle = AISLE_LABELS;
    parts_add(counting, &label, 1, parts_for_end(run->settled, place));
}

void parts_count_marking(struct Counting *counting, const struct PlanRun *run)
{
    const struct Run *surveyed = run->settled;
    const bool residual =
        surveyed->device.residual_a.given || survey_board_residual_a(&counting->plan->survey->earthing, surveyed) > 0;
    const struct Article circuit = {.code = "label-circuit",
                                    .description = say(counting->arena, SAY_PART_CIRCUIT_LABEL),
                                    .standard = "BS 7671 514.8.1",
                                    .note = say(counting->arena, SAY_NOTE_CIRCUIT_LABEL)};
    add_all_sleeving(counting, run);
    if (residual) {
        add_label(counting, run,
                  (struct Article){.code = "label-residual-test",
                                   .description = say(counting->arena, SAY_PART_RESIDUAL_LABEL),
                                   .standard = "BS 7671 514.12.2"},
                  PART_NOWHERE);
    }
    add_label(counting, run, circuit, PART_AT_START);
    if (surveyed->finish.into != INTO_FREE) {
        add_label(counting, run, circuit, PART_AT_FINISH);
    }
    if (surveyed->finish.into == INTO_ENCLOSURE && surveyed->feeds == FEEDS_EQUIPMENT) {
        add_label(counting, run,
                  (struct Article){.code = "label-isolator",
                                   .description = say(counting->arena, SAY_PART_ISOLATOR_LABEL),
                                   .standard = "BS 7671 514.1.1",
                                   .note = say(counting->arena, SAY_NOTE_ISOLATOR_LABEL)},
                  PART_AT_FINISH);
    }
}
