/* Trenches: each stretch in the ground once, however many cables lie in it. Sand, warning tape, cover, spoil. */
#include "parts_private.h"
#include "tables/mechanics_tables.h"

#include <math.h>

/* What lies in a trench. */
struct Lying {
    int count;
    bool unknown;      /* how thick one of them is */
    double diameter_m; /* of the thickest */
    double area_m2;    /* of all */
    double length_m;   /* of the longest */
    double depth_m;    /* over the deepest */
    bool bedded;       /* one of them is to lie in sand */
};

static void lay(struct Lying *lying, double diameter_m)
{
    const double pi = 3.14159265358979;
    lying->count++;
    lying->unknown = lying->unknown || !(diameter_m > 0);
    lying->diameter_m = fmax(lying->diameter_m, diameter_m);
    lying->area_m2 += pi * diameter_m * diameter_m / 4;
}

static void lay_all(struct Lying *lying, const struct Plan *plan, int index)
{
    const struct Segment *segment = plan->segments[index].surveyed;
    lying->length_m = fmax(lying->length_m, segment->length_m.value);
    lying->depth_m = fmax(lying->depth_m, plan->segments[index].depth_m);
    lying->bedded = lying->bedded || survey_bedded(segment);
    if (survey_duct(segment->way)) {
        lay(lying, segment->duct_size_mm.value / 1000);
        return;
    }
    for (int r = 0; r < plan->run_count; r++) {
        if (survey_follows(plan->runs[r].settled, index)) {
            lay(lying, parts_diameter_mm(&plan->runs[r]) / 1000);
        }
    }
}

/* For each segment the first of those that lie in its trench, and the next one in the same; 0 none, else its index and
 * 1. NULL without memory. */
struct InTrench {
    int first, next;
};
static struct InTrench *in_trenches(const struct Counting *counting)
{
    const struct Plan *plan = counting->plan;
    struct InTrench *in = arena_array(counting->arena, (size_t)plan->segment_count, sizeof *in);
    for (int i = plan->segment_count - 1; in != NULL && i >= 0; i--) {
        const int host = plan->segments[i].surveyed->shares_trench;
        if (host > 0 && plan->segments[i].run_count > 0) {
            in[i].next = in[host - 1].first;
            in[host - 1].first = i + 1;
        }
    }
    return in;
}

/* Of its own and of what else was surveyed as lying in this trench. */
static struct Lying lying_in(const struct Plan *plan, const struct InTrench *in, int index)
{
    struct Lying lying = {0};
    lay_all(&lying, plan, index);
    for (int i = in[index].first; i > 0; i = in[i - 1].next) {
        lay_all(&lying, plan, i - 1);
    }
    return lying;
}

static void size_trench(struct PartsWay *way, const struct PlanSegment *planned, const struct Lying *lying)
{
    const struct TrenchPractice *practice = trench_practice();
    const bool machine = planned->surveyed->dig == DIG_MACHINE;
    const double length_m = lying->length_m;
    const double usual_m = (machine ? practice->machine_width_m : practice->hand_width_m) +
                           practice->more_width_m * (lying->count > 1 ? lying->count - 1 : 0);
    const struct Quantity *surveyed_m = &planned->surveyed->trench_width_m;
    const double width_m = surveyed_m->given ? surveyed_m->value : usual_m;
    const double bed_m = lying->bedded ? practice->bed_m : 0;
    const double sanded_m = lying->bedded ? bed_m + lying->diameter_m + practice->top_m : 0;
    way->trench_m = length_m;
    way->trench_width_m = width_m;
    way->trench_depth_m = lying->depth_m + lying->diameter_m + bed_m;
    way->sand_m3 = fmax(0, length_m * (width_m * sanded_m - lying->area_m2));
    way->bed_m = bed_m;
    way->over_m = lying->bedded ? practice->top_m : 0;
    way->tape_m = fmax(0, planned->depth_m - practice->tape_above_m);
    const double usual_cover_m = trench_cover(planned->surveyed->under);
    way->usual_cover_m = planned->depth_m < usual_cover_m - 1e-9 ? usual_cover_m : 0;
    way->spoil_m3 = practice->bulking * (way->sand_m3 + length_m * lying->area_m2);
}

static void say_trench(struct Counting *counting, struct PartsWay *way, const struct PlanSegment *planned)
{
    struct Arena *arena = counting->arena;
    const struct TrenchPractice *practice = trench_practice();
    const struct Segment *segment = planned->surveyed;
    const enum Saying how = segment->dig == DIG_MACHINE ? SAY_BY_MACHINE
                            : segment->dig == DIG_HAND  ? SAY_BY_HAND
                                                        : SAY_BY_HAND_NOT_SAID;
    parts_way_say(counting, way,
                  say(arena, SAY_DIG, say_digits(floor(way->trench_m * 100 + 0.5) / 100, 9, UNIT_M), say_term(how),
                      say_fixed(way->trench_width_m * 1000, 0, UNIT_MM),
                      say_fixed(ceil(way->trench_depth_m * 100 - 1e-6) * 10, 0, UNIT_MM),
                      say_fixed(planned->depth_m * 1000, 0, UNIT_MM)));
    if (way->usual_cover_m > 0) {
        parts_way_tell(counting, way,
                       say(arena, segment->under == UNDER_COUNT ? SAY_COVER_LESS_UNSAID : SAY_COVER_LESS,
                           say_fixed(way->usual_cover_m * 1000, 0, UNIT_MM)));
    }
    if (way->trench_depth_m > practice->brace_m) {
        parts_way_say(counting, way, say(arena, SAY_SUPPORT_SIDES));
    }
    parts_way_tell(counting, way, say(arena, SAY_SPOIL, say_fixed(way->spoil_m3, 2, UNIT_M3)));
    parts_way_say(counting, way,
                  way->sand_m3 > 0 ? say(arena, SAY_BED_OF_SAND, say_fixed(practice->bed_m * 1000, 0, UNIT_MM))
                                   : say(arena, SAY_BED_OF_EARTH));
}

/* What is done once the cable lies there. */
static void say_filling(struct Counting *counting, struct PartsWay *way, const struct PlanSegment *planned)
{
    struct Arena *arena = counting->arena;
    const struct TrenchPractice *practice = trench_practice();
    const struct SayArg over = say_term(survey_duct(planned->surveyed->way) ? SAY_THE_DUCT : SAY_THE_CABLE);
    parts_way_say(counting, way,
                  way->sand_m3 > 0 ? say(arena, SAY_SAND_OVER, say_fixed(practice->top_m * 1000, 0, UNIT_MM), over,
                                         say_fixed(way->sand_m3, 2, UNIT_M3))
                                   : say(arena, SAY_SOIL_ROUND, over));
    parts_way_say(counting, way,
                  say(arena, SAY_TAPE_AND_FILL, say_fixed(way->tape_m * 1000, 0, UNIT_MM),
                      say_fixed(practice->tape_above_m * 1000, 0, UNIT_MM), over));
}

static void add_material(struct Counting *counting, const struct PartsWay *way, const struct Segment *segment)
{
    struct Arena *arena = counting->arena;
    const struct Article sand = {.aisle = AISLE_GROUNDWORK,
                                 .code = "sand",
                                 .description = say(arena, SAY_PART_SAND),
                                 .unit = "kg",
                                 .note = say(arena, SAY_NOTE_SAND),
                                 .sold = PACK_SAND,
                                 .spare = SPARE_SAND};
    const struct Article tape = {.aisle = AISLE_GROUNDWORK,
                                 .code = "warning-tape",
                                 .description = say(arena, SAY_PART_WARNING_TAPE),
                                 .standard = "BS EN 12613",
                                 .unit = "m",
                                 .note = say(arena, SAY_NOTE_WARNING_TAPE),
                                 .sold = PACK_WARNING_TAPE,
                                 .spare = SPARE_TAPE};
    const struct Article cover = {.aisle = AISLE_GROUNDWORK,
                                  .code = "cable-cover",
                                  .description = say(arena, SAY_PART_CABLE_COVER),
                                  .unit = "m",
                                  .note = say(arena, SAY_NOTE_CABLE_COVER),
                                  .spare = SPARE_TAPE};
    const struct PartUse use = parts_for_segment(NULL, segment);
    parts_add(counting, &sand, way->sand_m3 * trench_practice()->sand_kg_per_m3, use);
    parts_add(counting, &tape, way->trench_m, use);
    const bool worked = segment->under == UNDER_BED || segment->under == UNDER_DRIVE || segment->under == UNDER_FIELD;
    if (!survey_duct(segment->way) && worked) {
        parts_add(counting, &cover, way->trench_m, use);
    }
}

static bool is_dug(const struct PlanSegment *planned)
{
    const struct Segment *segment = planned->surveyed;
    return planned->run_count > 0 && segment->shares_trench == 0 && survey_dug(segment);
}

void parts_count_trenches(struct Counting *counting)
{
    const struct InTrench *in = in_trenches(counting);
    for (int i = 0; in != NULL && i < counting->plan->segment_count; i++) {
        const struct PlanSegment *planned = &counting->plan->segments[i];
        struct PartsWay *way = parts_way(counting, -1, i);
        if (planned->surveyed->shares_trench > 0 && planned->run_count > 0) {
            parts_way_say(counting, way,
                          say(counting->arena, SAY_LIES_IN_TRENCH_OF, say_name(planned->surveyed->trench)));
        }
        if (!is_dug(planned)) {
            continue;
        }
        const struct Lying lying = lying_in(counting->plan, in, i);
        size_trench(way, planned, &lying);
        if (lying.unknown) {
            parts_not_counted(counting, UNCOUNTED_LYING, parts_for_segment(NULL, planned->surveyed));
        }
        add_material(counting, way, planned->surveyed);
        say_trench(counting, way, planned);
    }
}

void parts_close_trenches(struct Counting *counting)
{
    for (int i = 0; i < counting->plan->segment_count; i++) {
        const struct PlanSegment *planned = &counting->plan->segments[i];
        struct PartsWay *way = parts_way(counting, -1, i);
        way->open_text_count = way->text_count;
        if (is_dug(planned)) {
            say_filling(counting, way, planned);
        }
        way->filled_text_count = way->text_count;
        if (survey_duct(planned->surveyed->way) && planned->run_count > 0) {
            parts_way_say(counting, way, say(counting->arena, SAY_BUNG_ROUND, say_count(planned->run_count)));
        }
    }
}
