/* Catenaries: the wire with its ends once, and what binds each cable to it. */
#include "parts_private.h"

#include <math.h>

static bool same_span(const struct Segment *a, const struct Segment *b)
{
    return parts_there_already(a) == parts_there_already(b);
}

static void add_wire(struct Counting *counting, const struct Chain *chain, const char *place)
{
    static const struct {
        const char *code, *description, *note;
        double each_end, each_span;
    } ends[] = {
        {"catenary-eye", "Eye bolt M10, galvanised, with nut and plate washers", "through the wall or post, not a plug",
         1, 0},
        {"catenary-thimble", "Thimble for catenary wire", "", 1, 0},
        {"catenary-grip", "Wire rope grip for catenary wire", "two at each end; makers of heavier wire ask for more", 2,
         0},
        {"catenary-strainer", "Straining screw, eye to eye, galvanised", "one to a span", 0, 1},
    };
    static const struct Article wire = {.aisle = AISLE_CONTAINMENT,
                                        .code = "catenary-wire",
                                        .description = "Catenary wire, galvanised steel",
                                        .standard = "",
                                        .unit = "m",
                                        .note =
                                            "each span and its turned ends; size by span, sag and the cable's weight",
                                        .spare = SPARE_WHOLE};
    parts_add(counting, &wire, chain->length_m + 2 * containment_practice()->catenary_end_m, "", place);
    for (size_t i = 0; i < sizeof ends / sizeof ends[0]; i++) {
        const struct Article article = {.aisle = AISLE_CONTAINMENT,
                                        .code = ends[i].code,
                                        .description = ends[i].description,
                                        .standard = "",
                                        .unit = "each",
                                        .note = ends[i].note};
        parts_add(counting, &article, 2 * ends[i].each_end + ends[i].each_span, "", place);
    }
}

/* A run's binding over all stretches of a catenary that it passes one after the other. */
static void bind_run(struct Counting *counting, int run)
{
    static const struct Article tie = {.aisle = AISLE_FIXINGS,
                                       .code = "tie-stainless",
                                       .description =
                                           "Stainless steel cable tie, coated, to bind cable to a catenary wire",
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
            parts_add(counting, &tie, draft->way.fixings, planned->surveyed->name, segment->name);
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
            parts_not_counted(counting, UNCOUNTED_THERE_ALREADY, "", first->name);
        } else if (chains[i].cables > 0) {
            add_wire(counting, &chains[i], first->name);
        }
    }
    for (int r = 0; r < counting->plan->run_count; r++) {
        bind_run(counting, r);
    }
}
