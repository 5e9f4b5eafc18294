/* Catenaries: the wire with its ends once, and what binds each cable to it. */
#include "parts_private.h"

#include <math.h>

static bool same_span(const struct Segment *a, const struct Segment *b)
{
    return parts_there_already(a) == parts_there_already(b) && a->wire == b->wire &&
           fabs(a->wire_mm.value - b->wire_mm.value) < 0.01;
}

static void add_end(struct Counting *counting, const char *code, const struct Say *description, const struct Say *note,
                    double pieces, const struct Segment *segment)
{
    const struct Article article = {.aisle = AISLE_CONTAINMENT, .code = code, .description = description, .note = note};
    parts_add(counting, &article, pieces, parts_for_segment(NULL, segment));
}

/* What makes the eye at either end. Grips hold on wire rope only; strand takes ends that are made for it. As long as
 * the wire is not known, grips are counted as for wire of 8 to 19 mm, and the list asks. */
static void add_eyes(struct Counting *counting, const struct Segment *segment)
{
    struct Arena *arena = counting->arena;
    struct WireGrips grips = {.count = containment_practice()->catenary_grips};
    const bool sized = segment->wire_mm.given && wire_grips(segment->wire_mm.value, &grips);
    const char *size = segment->wire_mm.given ? number_significant(arena, segment->wire_mm.value, 3) : "";
    if (segment->wire == WIRE_STRAND) {
        add_end(counting,
                segment->wire_mm.given ? arena_print(arena, "catenary-dead-end-%s", size) : "catenary-dead-end",
                say(arena, SAY_PART_DEAD_END), say(arena, SAY_NOTE_DEAD_END), 2, segment);
        return;
    }
    if (segment->wire != WIRE_ROPE || !sized) {
        parts_not_counted(counting, UNCOUNTED_WIRE, parts_for_segment(NULL, segment));
    }
    add_end(counting, sized ? arena_print(arena, "catenary-grip-%s", size) : "catenary-grip",
            sized ? say(arena, SAY_PART_WIRE_GRIP, say_digits(segment->wire_mm.value, 3, UNIT_MM))
                  : say(arena, SAY_PART_WIRE_GRIP_OPEN),
            sized ? say(arena, SAY_NOTE_WIRE_GRIP, say_count(grips.count), say_fixed(grips.torque_nm, 1, UNIT_NM))
                  : say(arena, SAY_NOTE_WIRE_GRIP_OPEN, say_count(grips.count)),
            2.0 * grips.count, segment);
}

static void add_wire(struct Counting *counting, const struct Chain *chain, const struct Segment *first)
{
    struct Arena *arena = counting->arena;
    const char *size = first->wire_mm.given ? number_significant(arena, first->wire_mm.value, 3) : "";
    const char *made = first->wire < WIRE_COUNT ? survey_word(WORDS_WIRE, (int)first->wire) : "";
    const struct Article wire = {
        .aisle = AISLE_CONTAINMENT,
        .code = arena_print(arena, "catenary-wire%s%s%s%s", made[0] != '\0' ? "-" : "", made,
                            size[0] != '\0' ? "-" : "", size),
        .description = say(arena, SAY_PART_CATENARY_WIRE,
                           first->wire < WIRE_COUNT ? say_word(WORDS_WIRE, (int)first->wire) : say_part(NULL),
                           first->wire_mm.given ? say_digits(first->wire_mm.value, 3, UNIT_MM) : say_part(NULL)),
        .unit = "m",
        .note = say(arena, SAY_NOTE_CATENARY_WIRE),
        .spare = SPARE_WHOLE};
    parts_add(counting, &wire, chain->length_m + 2 * containment_practice()->catenary_end_m,
              parts_for_segment(NULL, first));
    add_end(counting, "catenary-eye", say(arena, SAY_PART_EYE_BOLT), say(arena, SAY_NOTE_EYE_BOLT), 2, first);
    add_end(counting, "catenary-thimble", say(arena, SAY_PART_THIMBLE), NULL, 2, first);
    add_eyes(counting, first);
    add_end(counting, "catenary-strainer", say(arena, SAY_PART_STRAINER), say(arena, SAY_NOTE_STRAINER), 1, first);
}

/* A run's binding over all stretches of a catenary that it passes one after the other. */
static void bind_run(struct Counting *counting, int run)
{
    struct Arena *arena = counting->arena;
    const struct Article tie = parts_tie(arena);
    const struct PlanRun *planned = &counting->plan->runs[run];
    const bool armoured = survey_armoured(planned->settled->cable.type);
    const double known_mm = parts_diameter_mm(planned);
    double spacing_m = 0;
    if (!support_spacing(armoured,
                         known_mm > 0 ? known_mm
                         : armoured   ? takeoff_practice()->thinnest_armoured_mm
                                      : takeoff_practice()->thinnest_mm,
                         false, &spacing_m)) {
        return; /* parts_fixings.c has said so */
    }
    for (int step = 0; step < planned->settled->along_count;) {
        double length_m = 0;
        int to = step;
        while (to < planned->settled->along_count &&
               survey_way(parts_segment(counting, run, to)->way)->held == HELD_HUNG) {
            length_m += parts_segment(counting, run, to++)->length_m.value;
        }
        const double pitch_m = length_m > 0 ? length_m / parts_pieces(length_m, spacing_m) : 1;
        double from_m = 0;
        for (; step < to; step++) {
            const struct Segment *segment = parts_segment(counting, run, step);
            struct PartsWay *way = parts_way(counting, run, step);
            const double to_m = from_m + segment->length_m.value;
            const double before = floor(from_m / pitch_m + 1e-6);
            way->fixings = (int)(floor(to_m / pitch_m + 1e-6) - before + (from_m <= 0));
            way->spacing_m = spacing_m;
            way->pitch_m = floor(pitch_m * 1000 + 1e-6) / 1000;
            way->first_m = from_m <= 0 ? 0 : round(((before + 1) * pitch_m - from_m) * 1000) / 1000;
            way->fixing = tie.description;
            way->fixing_short = say(arena, SAY_TIE_SHORT);
            way->fixing_code = tie.code;
            parts_add(counting, &tie, way->fixings, parts_for_segment(planned->settled, segment));
            if (way->fixings > 0) {
                parts_way_say(
                    counting, way,
                    say(arena, SAY_TIES_ALONG, say_count(way->fixings), say_fixed(spacing_m * 1000, 0, UNIT_MM)));
            }
            from_m = to_m;
        }
        step = to > step ? to : step + 1;
    }
}

void parts_count_catenary(struct Counting *counting)
{
    struct Chain *chains = NULL;
    int *member = NULL;
    const int count = parts_chains(counting, WAY_CATENARY, same_span, &chains, &member);
    for (int i = 0; i < count; i++) {
        const struct Segment *first = counting->plan->segments[chains[i].first].surveyed;
        if (parts_there_already(first)) {
            parts_not_counted(counting, UNCOUNTED_THERE_ALREADY, parts_for_segment(NULL, first));
        } else if (chains[i].cables > 0) {
            add_wire(counting, &chains[i], first);
        }
    }
    for (int r = 0; r < counting->plan->run_count; r++) {
        bind_run(counting, r);
    }
}
