/* The outbuilding's own electrode: rods, what joins and drives them, pits, clamps, the conductor between them, labels.
 */
#include "parts_private.h"

#include <math.h>

static const struct PartUse electrode = {.whom = PART_FOR_ELECTRODE};

/* Extensible rods are sold in this length; others too. Seen in a manufacturer's table. */
static const double section_m = 1.2;

/* From the nearest rod to the bar where nobody measured it: 3.5 m clear of the supply's metal, which comes into the
 * same building, and 1.5 m in. Common practice, no source. */
static const double to_bar_least_m = 5;

static void add_to(struct Counting *counting, enum Aisle aisle, struct Article article, double pieces)
{
    article.aisle = aisle;
    article.standard = article.standard != NULL ? article.standard : "";
    article.note = article.note != NULL ? article.note : "";
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
    const double sections = parts_pieces(earthing->rod_length_m.value, section_m);
    const char *size =
        earthing->rod_diameter_mm.given ? number_significant(arena, earthing->rod_diameter_mm.value, 4) : "";
    const char *of = size[0] != '\0' ? arena_print(arena, " %s mm", size) : "";
    add(counting,
        (struct Article){.code = arena_print(arena, "earth-rod-%s", size),
                         .description =
                             arena_print(arena, "Earth rod%s, copper bonded steel, extensible, 1.2 m section", of),
                         .standard = "BS EN 62561-2",
                         .unit = "each",
                         .note = arena_print(arena, "%s to each rod driven %s m", number_text(arena, sections, 0),
                                             number_significant(arena, earthing->rod_length_m.value, 4))},
        rods * sections);
    add(counting,
        (struct Article){.code = arena_print(arena, "earth-rod-coupler-%s", size),
                         .description = arena_print(arena, "Earth rod coupler%s", of),
                         .standard = "BS EN 62561-2",
                         .unit = "each"},
        rods * (sections - 1));
    add(counting,
        (struct Article){.code = arena_print(arena, "earth-rod-stud-%s", size),
                         .description = arena_print(arena, "Driving stud for earth rod%s", of),
                         .unit = "each",
                         .note = "used again for each rod"},
        1);
    add(counting,
        (struct Article){.code = arena_print(arena, "earth-clamp-%s", size),
                         .description = arena_print(arena, "Earth rod clamp%s", of),
                         .standard = "BS EN 62561-1",
                         .unit = "each"},
        rods);
}

static void add_conductor(struct Counting *counting, const struct Earthing *earthing)
{
    struct Arena *arena = counting->arena;
    const double size_mm2 = counting->plan->electrode.earthing_conductor_mm2;
    const double spacing_m =
        earthing->rod_spacing_m.given ? earthing->rod_spacing_m.value : earthing->rod_length_m.value;
    const double between_m = (earthing->rods.value - 1) * spacing_m;
    const double to_bar_m = earthing->conductor_m.given ? earthing->conductor_m.value : to_bar_least_m;
    const char *size =
        size_mm2 > 0 ? arena_print(arena, "%s mm2", number_significant(arena, size_mm2, 4)) : "size open";
    add(counting,
        (struct Article){.code = arena_print(arena, "earthing-conductor-%s", number_significant(arena, size_mm2, 4)),
                         .description = arena_print(arena, "Earthing conductor, copper, green and yellow, %s", size),
                         .standard = "BS 6004",
                         .unit = "m",
                         .note =
                             earthing->conductor_m.given
                                 ? "between the rods, and to the bar as surveyed"
                                 : "between the rods, and 5 m to the bar: 3.5 m that a rod keeps clear of the supply's "
                                   "metal and 1.5 m into the building, an allowance (common practice, no source); "
                                   "measure it: conductor-length",
                         .spare = SPARE_WHOLE},
        between_m + to_bar_m);
}

/* Armour that stops short of the outbuilding's earth: as many as parts_glands.c insulates. */
static int insulated_ends(const struct Plan *plan)
{
    int ends = 0;
    for (int r = 0; r < plan->run_count; r++) {
        const struct Run *run = plan->runs[r].surveyed;
        ends += run->kind != RUN_EARTH && survey_armoured(run->cable.type) && run->finish.into != INTO_FREE;
    }
    return ends;
}

static void add_armour_labels(struct Counting *counting)
{
    add_to(counting, AISLE_LABELS,
           (struct Article){.code = "label-armour",
                            .description =
                                "Label: armour earthed at the supply end only, do not join it to the earth here",
                            .unit = "each",
                            .note = "written on the job; at each insulating gland"},
           insulated_ends(counting->plan));
}

static void add_earth_labels(struct Counting *counting, double labels, struct PartUse use, const char *note)
{
    const struct Article article = {.aisle = AISLE_LABELS,
                                    .code = "label-earth",
                                    .description = "Label: \"Safety Electrical Connection - do not remove\"",
                                    .standard = "BS 7671 514.13.1",
                                    .unit = "each",
                                    .note = note,
                                    .sold = PACK_LABELS};
    parts_add(counting, &article, labels, use);
}

void parts_count_earthing(struct Counting *counting)
{
    const struct Earthing *earthing = &counting->plan->survey->earthing;
    if (!counting->plan->electrode.due) {
        if (earthing->extraneous_parts) {
            add_earth_labels(
                counting, 1, (struct PartUse){.whom = PART_FOR_BONDING},
                "at the outbuilding's earthing terminal; one more, with its clamp and bonding conductor, to "
                "each metal service or frame: the survey does not say how many");
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
                         .description = "Earth rod inspection pit",
                         .standard = "BS EN 62561-5",
                         .unit = "each",
                         .note = "one to each rod"},
        rods);
    add_conductor(counting, earthing);
    add(counting,
        (struct Article){.code = "earth-terminal",
                         .description = "Main earthing terminal bar with disconnecting link, on an insulated base",
                         .unit = "each",
                         .note = "for the outbuilding"},
        1);
    add(counting,
        (struct Article){.code = "grease-tape",
                         .description = "Petrolatum tape for earth clamps",
                         .unit = "each",
                         .note = "a roll does all of them"},
        1);
    add_earth_labels(counting, rods + 1, electrode, "at each rod clamp and at the earthing terminal");
    add_armour_labels(counting);
}
