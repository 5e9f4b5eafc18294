/* Catenaries: the wire with its ends once, and what binds each cable to it. */
#include "parts_private.h"

#include <math.h>

static bool same_span(const struct Segment *a, const struct Segment *b)
{
    return parts_there_already(a) == parts_there_already(b) && a->wire == b->wire &&
           fabs(a->wire_mm.value - b->wire_mm.value) < 0.01;
}

static void add_end(struct Counting *counting, const char *code, const char *description, const char *note,
                    double pieces, const struct Segment *segment)
{
    const struct Article article = {.aisle = AISLE_CONTAINMENT,
                                    .code = code,
                                    .description = description,
                                    .standard = "",
                                    .unit = "each",
                                    .note = note};
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
                "Preformed dead-end or wedge clamp for strand",
                "to the maker's data for that strand; wire rope grips do not "
                "hold on strand (EN 13411-5)",
                2, segment);
        return;
    }
    if (segment->wire != WIRE_ROPE || !sized) {
        parts_not_counted(counting, UNCOUNTED_WIRE, parts_for_segment(NULL, segment));
    }
    add_end(counting, sized ? arena_print(arena, "catenary-grip-%s", size) : "catenary-grip",
            sized ? arena_print(arena, "Wire rope grip for wire rope %s mm", size) : "Wire rope grip for catenary wire",
            sized
                ? arena_print(arena,
                              "%d at each end, saddle on the loaded rope, nuts to %s Nm greased, tightened again after "
                              "loading (EN 13411-5)",
                              grips.count, number_text(arena, grips.torque_nm, 1))
                : arena_print(arena,
                              "%d at each end until the wire is known (EN 13411-5: 3 up to 6.5 mm, 4 from 8 to 19 mm)",
                              grips.count),
            2.0 * grips.count, segment);
}

static void add_wire(struct Counting *counting, const struct Chain *chain, const struct Segment *first)
{
    struct Arena *arena = counting->arena;
    const char *size = first->wire_mm.given ? number_significant(arena, first->wire_mm.value, 3) : "";
    const char *made = first->wire < WIRE_COUNT ? survey_word(WORDS_WIRE, (int)first->wire) : "";
    const struct Article wire = {.aisle = AISLE_CONTAINMENT,
                                 .code = arena_print(arena, "catenary-wire%s%s%s%s", made[0] != '\0' ? "-" : "", made,
                                                     size[0] != '\0' ? "-" : "", size),
                                 .description =
                                     arena_print(arena, "Catenary wire, galvanised steel%s%s%s%s",
                                                 made[0] != '\0' ? ", " : "", made, size[0] != '\0' ? ", " : "",
                                                 size[0] != '\0' ? arena_print(arena, "%s mm", size) : ""),
                                 .standard = "",
                                 .unit = "m",
                                 .note = "each span and its turned ends; size by span, sag and the cable's weight",
                                 .spare = SPARE_WHOLE};
    parts_add(counting, &wire, chain->length_m + 2 * containment_practice()->catenary_end_m,
              parts_for_segment(NULL, first));
    add_end(counting, "catenary-eye", "Eye bolt M10, galvanised, with nut and plate washers",
            "through the wall or post, not a plug", 2, first);
    add_end(counting, "catenary-thimble", "Thimble for catenary wire", "", 2, first);
    add_eyes(counting, first);
    add_end(counting, "catenary-strainer", "Straining screw, eye to eye, galvanised", "one to a span", 1, first);
}

/* A run's binding over all stretches of a catenary that it passes one after the other. */
static void bind_run(struct Counting *counting, int run)
{
    static const struct Article tie = {.aisle = AISLE_FIXINGS,
                                       .code = "tie-stainless",
                                       .description = "Stainless steel cable tie, coated",
                                       .standard = "",
                                       .unit = "each",
                                       .note = "metal: holds in a fire (BS 7671 521.10.202)",
                                       .sold = PACK_TIES,
                                       .spare = SPARE_FIXINGS};
    const struct PlanRun *planned = &counting->plan->runs[run];
    const bool armoured = survey_armoured(planned->surveyed->cable.type);
    const double known_mm = parts_diameter_mm(planned);
    double spacing_m = 0;
    if (!support_spacing(armoured, known_mm > 0 ? known_mm : armoured ? 12 : 5, false, &spacing_m)) {
        return; /* parts_fixings.c has said so */
    }
    for (int step = 0; step < planned->surveyed->along_count;) {
        double length_m = 0;
        int to = step;
        while (to < planned->surveyed->along_count && parts_segment(counting, run, to)->way == WAY_CATENARY) {
            length_m += parts_segment(counting, run, to++)->length_m.value;
        }
        const double pitch_m = length_m > 0 ? length_m / parts_pieces(length_m, spacing_m) : 1;
        double from_m = 0;
        for (; step < to; step++) {
            const struct Segment *segment = parts_segment(counting, run, step);
            struct WayDraft *draft = parts_way(counting, run, step);
            const double to_m = from_m + segment->length_m.value;
            const double before = floor(from_m / pitch_m + 1e-6);
            draft->way.fixings = (int)(floor(to_m / pitch_m + 1e-6) - before + (from_m <= 0));
            draft->way.spacing_m = spacing_m;
            draft->way.pitch_m = floor(pitch_m * 1000 + 1e-6) / 1000;
            draft->way.first_m = from_m <= 0 ? 0 : round(((before + 1) * pitch_m - from_m) * 1000) / 1000;
            draft->way.fixing = tie.description;
            draft->way.fixing_code = tie.code;
            parts_add(counting, &tie, draft->way.fixings, parts_for_segment(planned->surveyed, segment));
            if (draft->way.fixings > 0) {
                parts_way_say(draft,
                              arena_print(counting->arena, "%d metal ties, one every %s mm at most.",
                                          draft->way.fixings, number_text(counting->arena, spacing_m * 1000, 0)));
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
