/* Terminations: what each cable goes in through, by the cable's own diameters and where the end is. */
#include "parts_private.h"

#include "tables/cable_kinds.h"

#include <math.h>

/* BS 6121 letters, as the trade still uses them: BW has no seal, CW seals the outer sheath, E1W both. */
static const char *const letters[PLACE_COUNT] = {
    [PLACE_INDOORS] = "BW",
    [PLACE_OUTDOORS] = "CW",
    [PLACE_WET] = "E1W",
};
/* The trade still asks by the first, the box says the second. */
static const char gland_standard[] = "BS 6121, BS EN 62444";

struct Termination {
    struct Counting *counting;
    const struct PlanRun *run;
    const struct End *end;
    enum PartPlace place;
    bool insulated; /* the armour stops here, kept off the outbuilding's earth */
};

static void add(const struct Termination *at, struct Article article)
{
    article.aisle = AISLE_TERMINATIONS;
    parts_add(at->counting, &article, 1, parts_for_end(at->run->settled, at->place));
}

/* NULL: the size is beyond doubt; else why the cable is to be measured before the gland is bought. */
static const struct Say *why_measure(struct Arena *arena, const struct PlanRun *run, const char *size,
                                     const struct CableDimensions *cable, bool seals_inside)
{
    struct GlandRange range;
    /* From 25 mm2 some makes have shaped conductors and some round ones: their diameters are far apart. */
    if (fabs(run->size_mm2 - takeoff_practice()->shaped_first_mm2) < 0.1 ||
        fabs(run->size_mm2 - takeoff_practice()->shaped_last_mm2) < 0.1) {
        return say(arena, SAY_MEASURE_MAKES_DIFFER);
    }
    if (!gland_range(size, &range)) {
        return say(arena, SAY_MEASURE);
    }
    if (run->settled->cable.diameter_mm.given) {
        return say(arena, SAY_MEASURE_UNDER_ARMOUR);
    }
    const double over = 1 + takeoff_practice()->makes_differ;
    const double under = 1 - takeoff_practice()->makes_differ;
    const bool outside =
        cable->overall_mm * over > range.outer_max_mm || cable->overall_mm * under < range.outer_min_mm;
    const bool inside = cable->under_armour_mm * over > range.inner_max_mm ||
                        (seals_inside && cable->under_armour_mm * under < range.inner_min_mm);
    if (outside) {
        return say(arena, SAY_MEASURE_OVERALL_CLOSE, say_name(size), say_fixed(range.outer_min_mm, 1, UNIT_MM),
                   say_fixed(range.outer_max_mm, 1, UNIT_MM));
    }
    if (inside) {
        return say(arena, SAY_MEASURE_INSIDE_CLOSE, say_name(size), say_fixed(range.inner_max_mm, 1, UNIT_MM));
    }
    return NULL;
}

static const struct Say *note_of(const struct Termination *at, const char *size, const struct CableDimensions *cable)
{
    struct Arena *arena = at->counting->arena;
    const struct Say *measure = why_measure(arena, at->run, size, cable, at->end->place == PLACE_WET);
    return say(arena, SAY_NOTE_GLAND, say_fixed(cable->overall_mm, 1, UNIT_MM),
               say_fixed(cable->under_armour_mm, 1, UNIT_MM),
               measure != NULL ? say_part(measure) : say_term(SAY_CHECK_MAKERS_SHEET));
}

/* The armour stops at the far end of an island: nothing there may join it to the outbuilding's earth. What a counter
 * has for that is a plastic gland that grips the sheath: no metal of the cable stands outside the box, and inside it
 * the armour is cut back and covered. A gland with an armour clamp in a plastic body is made, but hardly stocked, and
 * would bring the supply's earth to its clamp. Common practice, no source. The sheath alone is held, not the armour: so
 * the cable is fixed close to the box. */
static void add_insulated(const struct Termination *at)
{
    struct Arena *arena = at->counting->arena;
    const double overall_mm = parts_diameter_mm(at->run);
    const struct SayArg cable = say_part(parts_cable_thick(arena, at->run));
    const char *code = overall_mm > 0 ? arena_print(arena, "%smm", number_text(arena, overall_mm, 1))
                                      : parts_cable_code(arena, at->run);
    add(at, (struct Article){.code = arena_print(arena, "gland-insulating-%s", code),
                             .description = say(arena, SAY_PART_INSULATING_GLAND, cable),
                             .gland = say(arena, SAY_GLAND_INSULATING),
                             .fitted = say(arena, SAY_FIT_INSULATING_GLAND, cable),
                             .standard = gland_standard,
                             .note = say(arena, SAY_NOTE_INSULATING_GLAND)});
    add(at, (struct Article){.code = arena_print(arena, "armour-sleeve-%s", code),
                             .description = say(arena, SAY_PART_ARMOUR_SLEEVE, cable),
                             .fitted = say(arena, SAY_FIT_ARMOUR_SLEEVE),
                             .note = say(arena, SAY_NOTE_ARMOUR_SLEEVE)});
}

static void add_brass(const struct Termination *at, const char *size, const char *thread, const struct Say *note)
{
    struct Arena *arena = at->counting->arena;
    const char *letter = letters[at->end->place];
    add(at,
        (struct Article){.code = arena_print(arena, "gland-%s-%s", letter, size),
                         .description = say(arena, SAY_PART_GLAND, say_name(letter), say_name(size), say_name(thread)),
                         .gland = say_alone(arena, say_name(arena_print(arena, "%s-%s", letter, size))),
                         .fitted = say(arena, SAY_FIT_GLAND, say_name(letter), say_name(size), say_name(thread)),
                         .standard = gland_standard,
                         .note = note,
                         .sold = PACK_GLANDS,
                         .spare = SPARE_GLANDS});
}

/* What earths the armour where the enclosure cannot, and what keeps water out of the thread. */
static void add_round_gland(const struct Termination *at, const char *thread)
{
    struct Arena *arena = at->counting->arena;
    if (at->end->place != PLACE_INDOORS) {
        add(at, (struct Article){.code = thread[0] != '\0' ? arena_print(arena, "washer-%s", thread) : "washer-open",
                                 .description = thread[0] != '\0' ? say(arena, SAY_PART_WASHER, say_name(thread))
                                                                  : say(arena, SAY_PART_WASHER_OPEN),
                                 .note = say(arena, SAY_NOTE_WASHER),
                                 .fitted = say(arena, SAY_FIT_WASHER)});
    }
    if (at->end->enclosure == ENCLOSURE_METAL) {
        return;
    }
    const struct SayArg size = say_digits(at->run->size_mm2, 4, UNIT_MM2);
    add(at, (struct Article){.code = "banjo-bolt",
                             .description = say(arena, SAY_PART_EARTH_BOLT),
                             .fitted = say(arena, SAY_FIT_EARTH_BOLT),
                             .note = say(arena, SAY_NOTE_EARTH_BOLT)});
    add(at, (struct Article){
                .code = arena_print(arena, "crimp-ring-M6-%s", number_significant(arena, at->run->size_mm2, 4)),
                .description = say(arena, SAY_PART_CRIMP_RING, size),
                .fitted = say(arena, SAY_FIT_CRIMP_RING)});
    add(at,
        (struct Article){.code = arena_print(arena, "earth-lead-%s", number_significant(arena, at->run->size_mm2, 4)),
                         .description = say(arena, SAY_PART_EARTH_LEAD, size),
                         .fitted = say(arena, SAY_FIT_EARTH_LEAD, size),
                         .note = say(arena, SAY_NOTE_EARTH_LEAD)});
}

/* A surveyed diameter overrides the table's, and may not go into the gland that the table's does. */
static bool takes_surveyed(const struct PlanRun *run, const struct CableDimensions *cable)
{
    struct GlandRange range;
    return !run->settled->cable.diameter_mm.given ||
           (gland_range(cable->usual_gland, &range) && cable->overall_mm >= range.outer_min_mm &&
            cable->overall_mm <= range.outer_max_mm);
}

static void count_armoured(const struct Termination *at)
{
    struct Arena *arena = at->counting->arena;
    if (at->end == &at->run->settled->finish && !survey_far_earth_known(at->counting->plan->survey, at->run->settled)) {
        parts_not_counted(at->counting, UNCOUNTED_FAR_EARTH, parts_for_end(at->run->settled, at->place));
    }
    if (at->insulated) {
        add_insulated(at);
        return;
    }
    const struct Cable *cable = &at->run->settled->cable;
    struct CableDimensions dimensions = {.usual_gland = ""};
    const bool known = cable_dimensions(cable->type, cable->cores, at->run->size_mm2, &dimensions);
    const char *thread = "";
    dimensions.overall_mm = parts_diameter_mm(at->run);
    if (known && takes_surveyed(at->run, &dimensions) && gland_thread(dimensions.usual_gland, &thread)) {
        const struct Say *note = note_of(at, dimensions.usual_gland, &dimensions);
        add_brass(at, dimensions.usual_gland, thread, note);
        add_round_gland(at, thread);
        return;
    }
    const struct Say *unknown = known ? say(arena, SAY_NOTE_GLAND_TOO_SMALL, say_name(dimensions.usual_gland),
                                            say_fixed(dimensions.overall_mm, 1, UNIT_MM))
                                      : say(arena, SAY_NOTE_GLAND_OPEN);
    const char *letter = letters[at->end->place];
    add(at, (struct Article){.code = arena_print(arena, "gland-%s-%s", letter, parts_cable_code(arena, at->run)),
                             .description = say(arena, SAY_PART_GLAND_OPEN, say_name(letter),
                                                say_part(parts_cable_name(arena, at->run))),
                             .gland = say_alone(arena, say_name(letter)),
                             .fitted = say(arena, SAY_FIT_GLAND_OPEN, say_name(letter)),
                             .standard = gland_standard,
                             .note = unknown,
                             .sold = PACK_GLANDS,
                             .spare = SPARE_GLANDS});
    add_round_gland(at, "");
}

/* A conduit comes into the box by its adaptor, and the cable with it. */
static bool comes_in_conduit(const struct Termination *at)
{
    const struct Run *run = at->run->settled;
    if (run->along_count == 0) {
        return false;
    }
    const int segment = run->along[at->end == &run->finish ? run->along_count - 1 : 0];
    return survey_way(at->counting->plan->segments[segment].surveyed->way)->round == ROUND_PIPE;
}

/* Something has to grip a round cable where it enters a box, or its weight hangs on the terminals: BS 7671 522.8.5. */
static bool wants_grip(const struct Termination *at)
{
    const enum CableType type = at->run->settled->cable.type;
    const bool round = cable_kind(type)->family == FAMILY_MULTICORE;
    return at->end->place != PLACE_INDOORS || (round && at->end->into != INTO_ACCESSORY);
}

/* Cable without armour: a gland that grips and seals the sheath, or indoors for flat and data cable a grommet. */
static void count_sheathed(const struct Termination *at)
{
    struct Arena *arena = at->counting->arena;
    if (comes_in_conduit(at)) {
        return;
    }
    const double diameter_mm = parts_diameter_mm(at->run);
    const struct SayArg cable = say_part(parts_cable_thick(arena, at->run));
    const char *code = diameter_mm > 0 ? number_text(arena, diameter_mm, 1) : parts_cable_code(arena, at->run);
    if (wants_grip(at)) {
        add(at, (struct Article){.code = arena_print(arena, "gland-A2-%s", code),
                                 .description = say(arena, SAY_PART_STUFFING_GLAND, cable),
                                 .gland = say_alone(arena, say_name("A2")),
                                 .standard = gland_standard,
                                 .note = say(arena, SAY_NOTE_STUFFING_GLAND)});
    } else {
        add(at, (struct Article){.code = arena_print(arena, "grommet-%s", code),
                                 .description = say(arena, SAY_PART_GROMMET, cable),
                                 .note = say(arena, SAY_NOTE_GROMMET)});
    }
}

void parts_count_glands(struct Counting *counting, const struct PlanRun *run)
{
    const struct Run *surveyed = run->settled;
    const struct End *const ends[] = {&surveyed->start, &surveyed->finish};
    static const enum PartPlace places[] = {PART_AT_START, PART_AT_FINISH};
    for (int i = 0; i < 2; i++) {
        const struct Termination at = {.counting = counting,
                                       .run = run,
                                       .end = ends[i],
                                       .place = places[i],
                                       .insulated = i == 1 && counting->plan->electrode.due};
        if (ends[i]->into == INTO_FREE || surveyed->kind == RUN_EARTH) {
            continue;
        }
        if (survey_armoured(surveyed->cable.type)) {
            count_armoured(&at);
        } else {
            count_sheathed(&at);
        }
    }
}
