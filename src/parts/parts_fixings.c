/* Fixings along the ways where a cable is clipped: spacing of On-Site Guide Table D1 by diameter and direction. */
#include "parts_private.h"

#include <math.h>

/* A stretch counts as vertical when it is within 30 degrees of upright (On-Site Guide, notes to the table, from
 * memory). */
static const double vertical_slope = 0.866;
/* Where no diameter is known the closest spacing that the table gives is used: that of the thinnest cable in it. */
static const double thinnest_armoured_mm = 12;
static const double thinnest_mm = 5;

static bool is_clipped(enum Way way)
{
    return way == WAY_WALL || way == WAY_FENCE || way == WAY_BEAM || way == WAY_LOFT_VOID || way == WAY_TRAY ||
           way == WAY_LADDER;
}

static bool is_vertical(const struct Segment *segment)
{
    return fabs(segment->rise_m.value) >= vertical_slope * segment->length_m.value;
}

static struct Part fixing_article(const struct Counting *counting, const struct PlanRun *run, double diameter_mm)
{
    struct Arena *arena = counting->arena;
    const bool armoured = survey_armoured(run->surveyed->cable.type);
    int number = 0;
    if (diameter_mm <= 0) {
        return (struct Part){
            .aisle = AISLE_FIXINGS,
            .code = arena_print(arena, "fixing-%s", run->surveyed->name),
            .description = arena_print(arena, "Metal cable cleat or clip for %s", parts_cable_name(arena, run)),
            .standard = "",
            .unit = "each",
            .note = "overall diameter not known: closest spacing taken; size from the maker's sheet",
        };
    }
    if (armoured && hook_cleat(diameter_mm, &number)) {
        return (struct Part){
            .aisle = AISLE_FIXINGS,
            .code = arena_print(arena, "fixing-hook-%d", number),
            .description = arena_print(arena, "Hook cleat no. %d, metal, for cable %s mm overall", number,
                                       number_text(arena, diameter_mm, 1)),
            .standard = "",
            .unit = "each",
            .note = "metal: holds in a fire (BS 7671 521.10.202)",
        };
    }
    return (struct Part){
        .aisle = AISLE_FIXINGS,
        .code = arena_print(arena, "fixing-clip-%s", number_text(arena, diameter_mm, 1)),
        .description =
            arena_print(arena, "Metal one-hole clip for cable %s mm overall", number_text(arena, diameter_mm, 1)),
        .standard = "",
        .unit = "each",
        .note = "metal: holds in a fire (BS 7671 521.10.202)",
    };
}

void parts_count_fixings(struct Counting *counting, const struct PlanRun *run)
{
    const struct Run *surveyed = run->surveyed;
    const bool armoured = survey_armoured(surveyed->cable.type);
    const double known_mm = parts_diameter_mm(run);
    const double diameter_mm = known_mm > 0 ? known_mm : armoured ? thinnest_armoured_mm : thinnest_mm;
    const struct Part article = fixing_article(counting, run, known_mm);
    bool joined = false; /* the stretch before was clipped too: its last fixing is this one's first */
    for (int i = 0; i < surveyed->along_count; i++) {
        const struct Segment *segment = &counting->plan->survey->segments[surveyed->along[i]];
        double spacing_m;
        if (!is_clipped(segment->way) || !support_spacing(armoured, diameter_mm, is_vertical(segment), &spacing_m)) {
            joined = false;
            continue;
        }
        const double spaces = ceil(segment->length_m.value / spacing_m - 1e-9);
        const double pieces = spaces + (joined ? 0 : 1);
        parts_add(counting, &article, pieces,
                  arena_print(counting->arena, "%s: %s %s at %s mm", surveyed->name, segment->name,
                              number_text(counting->arena, pieces, 0),
                              number_text(counting->arena, spacing_m * 1000, 0)));
        joined = true;
    }
}
