/* Holes through walls: each cable its own, the drill by its diameter and the wall's thickness, sleeve, seal. Stretches
 * through a wall one after the other are one hole. */
#include "parts_private.h"
#include "tables/mechanics_tables.h"

#include <math.h>

struct Hole {
    struct Counting *counting;
    int run;
    const struct Segment *segment; /* the first of it */
    struct PartsWay *way;
    double cable_mm, thickness_mm, drill_mm;
    double sleeve_mm, bore_mm; /* 0: no sleeve */
    bool sleeved, fire_barrier;
};

static void find_sleeve(struct Hole *hole)
{
    const double *sizes_mm = NULL;
    const int count = duct_sizes(&sizes_mm);
    struct Figure bore;
    for (int i = 0; i < count; i++) {
        if (duct_bore(sizes_mm[i], &bore) && bore.value >= wall_hole_mm(hole->cable_mm)) {
            hole->sleeve_mm = sizes_mm[i];
            hole->bore_mm = bore.value;
            return;
        }
    }
}

static void add(const struct Hole *hole, const struct Article *article, double pieces)
{
    parts_add(hole->counting, article, pieces,
              parts_for_segment(hole->counting->plan->runs[hole->run].settled, hole->segment));
}

static void add_seals(const struct Hole *hole)
{
    struct Arena *arena = hole->counting->arena;
    const struct Article fire = {.aisle = AISLE_SUNDRIES,
                                 .code = "fire-seal",
                                 .description = say(arena, SAY_PART_FIRE_SEAL),
                                 .note = say(arena, SAY_NOTE_FIRE_SEAL)};
    const struct Article sealant = {.aisle = AISLE_SUNDRIES,
                                    .code = "sealant",
                                    .description = say(arena, SAY_PART_SEALANT),
                                    .note = say(arena, SAY_NOTE_SEALANT),
                                    .spare = SPARE_WHOLE};
    const double pi = 3.14159265358979;
    const struct WallSeal *seal = wall_seal();
    if (hole->fire_barrier) {
        add(hole, &fire, 1);
        return;
    }
    const double ring_mm2 = pi / 4 * (hole->drill_mm * hole->drill_mm - hole->cable_mm * hole->cable_mm);
    add(hole, &sealant, ring_mm2 * 2 * seal->depth_mm / 1000 / seal->tube_ml);
}

static void add_sleeve(const struct Hole *hole)
{
    struct Arena *arena = hole->counting->arena;
    const char *size = number_significant(arena, hole->sleeve_mm, 4);
    const bool metal = hole->fire_barrier;
    const struct Article sleeve = {
        .aisle = AISLE_SUNDRIES,
        .code = arena_print(arena, "wall-sleeve-%s%s", metal ? "steel-" : "", size),
        .description = metal ? say(arena, SAY_PART_STEEL_SLEEVE, say_digits(hole->sleeve_mm, 4, UNIT_MM),
                                   say_digits(hole->bore_mm, 4, UNIT_MM))
                             : say(arena, SAY_PART_SLEEVE, say_digits(hole->sleeve_mm, 4, UNIT_MM)),
        .unit = "m",
        .note = say(arena, metal ? SAY_NOTE_STEEL_SLEEVE : SAY_NOTE_SLEEVE),
        .spare = SPARE_WHOLE};
    add(hole, &sleeve, ceil(hole->thickness_mm / 10 - 1e-9) / 100);
}

static void say_seal(const struct Hole *hole)
{
    parts_way_say(hole->counting, hole->way,
                  say(hole->counting->arena, hole->fire_barrier ? SAY_FIRE_BARRIER : SAY_SEAL_BOTH_FACES));
}

static void say_hole(const struct Hole *hole)
{
    struct Arena *arena = hole->counting->arena;
    const struct SayArg wall = say_fixed(hole->thickness_mm, 0, UNIT_MM);
    parts_way_say(hole->counting, hole->way,
                  say(arena, SAY_DRILL, say_digits(hole->drill_mm, 4, UNIT_MM),
                      say_term(hole->drill_mm > wall_seal()->core_above_mm ? SAY_CORE_DRILL : SAY_NOTHING),
                      say_fixed(hole->way->drill_mm, 0, UNIT_MM), wall, say_fixed(wall_seal()->fall, 0, UNIT_NONE),
                      say_fixed(hole->way->fall_mm, 0, UNIT_MM)));
    if (hole->sleeve_mm > 0) {
        parts_way_say(hole->counting, hole->way,
                      say(arena, hole->fire_barrier ? SAY_SLEEVE_WITH_STEEL : SAY_SLEEVE_WITH_DUCT,
                          say_digits(hole->sleeve_mm, 4, UNIT_MM), wall));
    }
    say_seal(hole);
}

/* However wide it gets: a fire wall is made good. */
static void leave_open(const struct Hole *hole)
{
    parts_not_counted(hole->counting, UNCOUNTED_HOLE,
                      parts_for_segment(hole->counting->plan->runs[hole->run].settled, hole->segment));
    if (hole->fire_barrier) {
        add_seals(hole);
    }
    say_seal(hole);
}

static void count_hole(struct Hole *hole)
{
    if (hole->sleeved && hole->cable_mm > 0) {
        find_sleeve(hole);
    }
    /* A sleeve that was asked for and is not sold leaves the hole open too, not narrower. */
    const bool sized = hole->cable_mm > 0 && (!hole->sleeved || hole->sleeve_mm > 0);
    const double least_mm =
        hole->sleeve_mm > 0 ? hole->sleeve_mm + wall_seal()->sleeve_play_mm : wall_hole_mm(hole->cable_mm);
    if (!sized || !wall_drill(least_mm, &hole->drill_mm)) {
        leave_open(hole);
        return;
    }
    hole->way->hole_mm = hole->drill_mm;
    hole->way->sleeve_mm = hole->sleeve_mm;
    hole->way->fall_mm = ceil(hole->thickness_mm / wall_seal()->fall);
    hole->way->drill_mm = ceil(wall_drill_mm(hole->thickness_mm) / 10 - 1e-9) * 10;
    if (hole->sleeve_mm > 0) {
        add_sleeve(hole);
    }
    add_seals(hole);
    say_hole(hole);
}

void parts_count_holes(struct Counting *counting, int run)
{
    const struct Run *surveyed = counting->plan->runs[run].settled;
    for (int step = 0; step < surveyed->along_count;) {
        struct Hole hole = {.counting = counting,
                            .run = run,
                            .segment = parts_segment(counting, run, step),
                            .way = parts_way(counting, run, step),
                            .cable_mm = parts_diameter_mm(&counting->plan->runs[run])};
        const int from = step;
        for (; step < surveyed->along_count && survey_hole(parts_segment(counting, run, step)->way); step++) {
            const struct Segment *segment = parts_segment(counting, run, step);
            const double through_m = segment->thickness_m.given ? segment->thickness_m.value : segment->length_m.value;
            hole.thickness_mm += through_m * 1000;
            hole.sleeved = hole.sleeved || segment->sleeve;
            hole.fire_barrier = hole.fire_barrier || segment->fire_barrier;
        }
        if (step > from) {
            count_hole(&hole);
        } else {
            step++;
        }
    }
}
