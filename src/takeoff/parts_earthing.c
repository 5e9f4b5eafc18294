/* The outbuilding's own electrode: rods, what joins and drives them, pits, clamps, the conductor between them, labels.
 */
#include "parts_private.h"

#include <math.h>

static const struct PartUse electrode = {.whom = PART_FOR_ELECTRODE};

static void add_to(struct Counting *counting, enum Aisle aisle, struct Article article, double pieces)
{
    article.aisle = aisle;
    parts_add(counting, &article, pieces, electrode);
}

static void add(struct Counting *counting, struct Article article, double pieces)
{
    add_to(counting, AISLE_EARTHING, article, pieces);
}

static void add_rods(struct Counting *counting, const struct Earthing *earthing)
{
    struct Arena *arena = counting->arena;
    const double rods = earthing->rods.value;
    const double size_mm2 = counting->plan->electrode.earthing_conductor_mm2;
    const double sections = parts_pieces(earthing->rod_length_m.value, takeoff_practice()->rod_section_m);
    const char *size =
        earthing->rod_diameter_mm.given ? number_significant(arena, earthing->rod_diameter_mm.value, 4) : "";
    const struct SayArg of =
        earthing->rod_diameter_mm.given ? say_digits(earthing->rod_diameter_mm.value, 4, UNIT_MM) : say_part(NULL);
    add(counting,
        (struct Article){.code = arena_print(arena, "earth-rod-%s", size),
                         .description = say(arena, SAY_PART_ROD, of),
                         .standard = "BS EN 62561-2",
                         .note = say(arena, SAY_NOTE_ROD, say_fixed(sections, 0, UNIT_NONE),
                                     say_digits(earthing->rod_length_m.value, 4, UNIT_M))},
        rods * sections);
    add(counting,
        (struct Article){
            .code = arena_print(arena, "earth-rod-coupler-%s", size),
            .description = say(arena, SAY_PART_ROD_COUPLER, of),
            .standard = "BS EN 62561-2",
        },
        rods * (sections - 1));
    add(counting,
        (struct Article){.code = arena_print(arena, "earth-rod-stud-%s", size),
                         .description = say(arena, SAY_PART_ROD_STUD, of),
                         .note = say(arena, SAY_NOTE_ROD_STUD)},
        1);
    add(counting,
        (struct Article){
            .code = arena_print(arena, "earth-clamp-%s", size),
            .description = say(arena, SAY_PART_ROD_CLAMP, of),
            .standard = "BS EN 62561-1",
            .note = size_mm2 > 0 ? say(arena, SAY_NOTE_ROD_CLAMP, say_digits(size_mm2, 4, UNIT_MM2)) : NULL,
        },
        rods);
}

static void add_conductor(struct Counting *counting, const struct Earthing *earthing)
{
    struct Arena *arena = counting->arena;
    const double size_mm2 = counting->plan->electrode.earthing_conductor_mm2;
    const double spacing_m =
        earthing->rod_spacing_m.given ? earthing->rod_spacing_m.value : earthing->rod_length_m.value;
    const double between_m = (earthing->rods.value - 1) * spacing_m;
    const double to_bar_m =
        earthing->conductor_m.given ? earthing->conductor_m.value : takeoff_practice()->earth_lead_m;
    const struct SayArg size = size_mm2 > 0 ? say_digits(size_mm2, 4, UNIT_MM2) : say_term(SAY_SIZE_OPEN);
    add(counting,
        (struct Article){
            .code = arena_print(arena, "earthing-conductor-%s", number_significant(arena, size_mm2, 4)),
            .description = say(arena, SAY_PART_EARTHING_CONDUCTOR, size),
            .standard = "BS 6004",
            .unit = "m",
            .note = say(arena, earthing->conductor_m.given ? SAY_NOTE_CONDUCTOR_SURVEYED : SAY_NOTE_CONDUCTOR_ALLOWED),
            .spare = SPARE_WHOLE},
        between_m + to_bar_m);
}

/* Armour that stops short of the outbuilding's earth: as many as parts_glands.c insulates. */
static int insulated_ends(const struct Plan *plan)
{
    int ends = 0;
    for (int r = 0; r < plan->run_count; r++) {
        const struct Run *run = plan->runs[r].settled;
        ends += run->kind != RUN_EARTH && survey_armoured(run->cable.type) && run->finish.into != INTO_FREE;
    }
    return ends;
}

static void add_armour_labels(struct Counting *counting)
{
    add_to(counting, AISLE_LABELS,
           (struct Article){.code = "label-armour",
                            .description = say(counting->arena, SAY_PART_ARMOUR_LABEL),
                            .note = say(counting->arena, SAY_NOTE_ARMOUR_LABEL)},
           insulated_ends(counting->plan));
}

static void add_earth_labels(struct Counting *counting, double labels, struct PartUse use, enum Saying note)
{
    const struct Article article = {.aisle = AISLE_LABELS,
                                    .code = "label-earth",
                                    .description = say(counting->arena, SAY_PART_EARTH_LABEL),
                                    .standard = "BS 7671 514.13.1",
                                    .note = say(counting->arena, note),
                                    .sold = PACK_LABELS};
    parts_add(counting, &article, labels, use);
}

void parts_count_earthing(struct Counting *counting)
{
    const struct Earthing *earthing = &counting->plan->survey->earthing;
    if (!counting->plan->electrode.due) {
        if (earthing->extraneous_parts) {
            add_earth_labels(counting, 1, (struct PartUse){.whom = PART_FOR_BONDING}, SAY_NOTE_BOND_LABEL);
        }
        return;
    }
    if (!earthing->rods.given || !earthing->rod_length_m.given) {
        parts_not_counted(counting, UNCOUNTED_ELECTRODE, electrode);
        add_armour_labels(counting);
        return;
    }
    const double rods = earthing->rods.value;
    add_rods(counting, earthing);
    add(counting,
        (struct Article){.code = "earth-pit",
                         .description = say(counting->arena, SAY_PART_ROD_PIT),
                         .standard = "BS EN 62561-5",
                         .note = say(counting->arena, SAY_NOTE_ROD_PIT)},
        rods);
    add_conductor(counting, earthing);
    add(counting,
        (struct Article){.code = "earth-terminal",
                         .description = say(counting->arena, SAY_PART_EARTH_BAR),
                         .note = say(counting->arena, SAY_NOTE_EARTH_BAR)},
        1);
    add(counting,
        (struct Article){.code = "grease-tape",
                         .description = say(counting->arena, SAY_PART_GREASE_TAPE),
                         .note = say(counting->arena, SAY_NOTE_GREASE_TAPE)},
        1);
    add_earth_labels(counting, rods + 1, electrode, SAY_NOTE_ROD_LABEL);
    add_armour_labels(counting);
}
