/* The cells of the brief's table: what one stretch takes of fixings, holes and ground, in the figures that the parts
 * list was counted from. Common practice, no source, but for those figures. */
#include "papers_private.h"

#include <math.h>

enum Cell { CELL_COUNT, CELL_FIRST, CELL_WITH, CELLS };

static struct SayArg mm(double length_m)
{
    return papers_millimetres(length_m);
}

/* ---- fixings ---- */

/* "8 at 371 mm + 2 at the bend": never a sum that reads as one more figure. */
static const struct Say *fixings(struct Arena *arena, const struct PartsWay *way, const struct Segment *segment)
{
    const int bends = way->fixings > 0 ? segment->bend_count : 0;
    const int even = way->fixings - 2 * bends;
    const struct Say *all = even > 1    ? say(arena, SAY_ROW_EVEN, say_count(even), mm(way->pitch_m))
                            : even == 1 ? say(arena, SAY_ROW_ONE)
                                        : NULL;
    if (bends > 0) {
        all = say_list(arena, SAY_STEP_ADDED, all,
                       say_part(say(arena, SAY_ROW_AT_BENDS, say_count(2 * bends), say_count(bends))));
    }
    return way->end_fixings == 0
               ? all
               : say_list(arena, SAY_STEP_ADDED, all,
                          say_part(say(arena, SAY_ROW_AT_END, say_count(way->end_fixings), mm(way->near_m))));
}

/* Where the first of them is; nothing where the spacing simply goes on. */
static const struct Say *first_fixing(struct Arena *arena, const struct PartsWay *way)
{
    const bool goes_on = fabs(way->first_m - way->pitch_m) < 0.0005;
    return way->fixings == 0 || goes_on ? NULL
           : way->first_m <= 0          ? say(arena, SAY_ROW_FIRST_NEAR, mm(way->near_m))
                                        : say(arena, SAY_ROW_FIRST, mm(way->first_m));
}

/* "hook cleat no. 8, brick: nylon plug 7 mm and woodscrew"; fixing and grip only where the heading does not name them
 */
static const struct Say *held_by(struct Arena *arena, const struct PapersTable *table, const struct PartsWay *way)
{
    const struct Segment *segment = table->plan->segments[way->segment].surveyed;
    const struct Say *common = table->fixings == NULL ? NULL : table->fixings[way->run];
    const struct SayArg surface = say_word(WORDS_SURFACE, (int)segment->fixed_to);
    const struct Say *grip = way->grip != NULL
                                 ? (papers_grip_above(table, way) ? say_alone(arena, surface)
                                                                  : say(arena, SAY_COLON, surface, say_part(way->grip)))
                             : segment->fixed_to == SURFACE_COUNT && way->fixings > 0 && segment->way != WAY_TRAY &&
                                     segment->way != WAY_LADDER
                                 ? say(arena, SAY_ROW_SURFACE_OPEN)
                                 : NULL;
    const bool named = way->fixings == 0 || (common != NULL && say_same(common, way->fixing_short));
    return named ? grip : say_list(arena, SAY_COMMA, way->fixing_short, say_part(grip));
}

/* ---- holes ---- */

static const struct Say *hole(struct Arena *arena, const struct PartsWay *way)
{
    return way->hole_mm > 0
               ? say(arena, SAY_ROW_HOLE, say_digits(way->hole_mm, 4, UNIT_MM), say_fixed(way->drill_mm, 0, UNIT_MM))
           : way->text_count > 0 ? say(arena, SAY_ROW_HOLE_OPEN)
                                 : say(arena, SAY_ROW_ONE_HOLE);
}

static const struct Say *sleeve(struct Arena *arena, const struct PartsWay *way, const struct Segment *segment)
{
    const struct Say *said = way->sleeve_mm > 0
                                 ? say(arena, segment->fire_barrier ? SAY_ROW_STEEL_SLEEVE : SAY_ROW_SLEEVE,
                                       say_digits(way->sleeve_mm, 4, UNIT_MM))
                             : segment->sleeve ? say(arena, SAY_ROW_SLEEVE_OPEN)
                                               : NULL;
    return way->fall_mm > 0 ? say_list(arena, SAY_COMMA, said,
                                       say_part(say(arena, SAY_ROW_FALL, say_fixed(way->fall_mm, 0, UNIT_MM))))
                            : said;
}

/* ---- one cell, for every run that shares the stretch ---- */

static const struct Say *cell(struct Arena *arena, const struct PapersTable *table, const struct PartsWay *way,
                              enum Cell which)
{
    const struct Segment *segment = table->plan->segments[way->segment].surveyed;
    const bool wall = segment->way == WAY_THROUGH_WALL;
    switch (which) {
    case CELL_COUNT: return wall ? hole(arena, way) : fixings(arena, way, segment);
    case CELL_FIRST: return wall ? NULL : first_fixing(arena, way);
    case CELL_WITH: return wall ? sleeve(arena, way, segment) : held_by(arena, table, way);
    case CELLS: break;
    }
    return NULL;
}

/* What is said of one run; of none in particular where `run` is negative. */
struct OfRun {
    int run;
    const struct Say *said;
};

/* What several runs have alike is said once, with their names unless all have it. */
static void add_shared(const struct PapersTable *table, struct XmlElement *line, const char *kind, enum Saying joint,
                       const struct OfRun *all, int count)
{
    struct Arena *arena = xml_out_arena(table->out);
    for (int i = 0; all != NULL && i < count; i++) {
        const struct Say *names = NULL;
        bool told = all[i].said == NULL;
        int of = all[i].run < 0 ? table->plan->run_count : 0;
        for (int k = 0; k < count && !told && all[i].run >= 0; k++) {
            if (all[k].run >= 0 && say_same(all[k].said, all[i].said)) {
                told = k < i;
                of++;
                names = say_list(arena, SAY_COMMA, names, say_name(table->plan->runs[all[k].run].settled->name));
            }
        }
        if (!told) {
            papers_do(table->out, line, kind,
                      of < table->plan->run_count ? say(arena, joint, say_part(names), say_part(all[i].said))
                                                  : all[i].said);
        }
    }
}

static void add_of_runs(const struct PapersTable *table, struct XmlElement *line, int index, const char *kind,
                        enum Cell which)
{
    struct Arena *arena = xml_out_arena(table->out);
    const struct PartsList *parts = table->parts;
    struct OfRun *all = arena_array(arena, parts == NULL ? 1 : (size_t)parts->way_count + 1, sizeof *all);
    int count = 0;
    for (int i = 0; all != NULL && parts != NULL && i < parts->way_count; i++) {
        const struct PartsWay *way = &parts->ways[i];
        if (way->segment == index && way->run >= 0) {
            all[count++] = (struct OfRun){way->run, cell(arena, table, way, which)};
        }
    }
    add_shared(table, line, kind, SAY_COLON, all, count);
}

/* ---- in the ground ---- */

static const struct PartsWay *trench_of(const struct PartsList *parts, int index)
{
    for (int i = 0; parts != NULL && i < parts->way_count; i++) {
        if (parts->ways[i].segment == index && parts->ways[i].run < 0) {
            return &parts->ways[i];
        }
    }
    return NULL;
}

static void add_trench(const struct PapersTable *table, struct XmlElement *line, int index)
{
    struct XmlOut *out = table->out;
    struct Arena *arena = xml_out_arena(out);
    const struct PartsWay *way = trench_of(table->parts, index);
    const struct PlanSegment *planned = &table->plan->segments[index];
    const struct Segment *segment = planned->surveyed;
    if (way == NULL || !(way->trench_m > 0)) {
        if (segment->shares_trench > 0) {
            papers_do(out, line, "count", say(arena, SAY_LIES_IN_TRENCH_OF, say_name(segment->trench)));
        }
        return;
    }
    papers_do(out, line, "count",
              say(arena, SAY_ROW_TRENCH, mm(way->trench_width_m),
                  say_fixed(ceil(way->trench_depth_m * 100 - 1e-6) * 10, 0, UNIT_MM),
                  say_term(segment->dig == DIG_MACHINE ? SAY_BY_MACHINE
                           : segment->dig == DIG_HAND  ? SAY_BY_HAND
                                                       : SAY_BY_HAND_NOT_SAID)));
    papers_do(out, line, "first", say(arena, SAY_ROW_COVER, mm(planned->depth_m)));
    papers_do(out, line, "with",
              way->sand_m3 > 0
                  ? say(arena, SAY_ROW_SAND, mm(way->bed_m), mm(way->over_m), say_fixed(way->sand_m3, 2, UNIT_M3))
                  : say(arena, SAY_ROW_EARTH));
    if (!papers_tape_above(table)) {
        papers_do(out, line, "with", say(arena, SAY_ROW_TAPE, mm(way->tape_m)));
    }
    papers_do(out, line, "watch",
              say(arena, SAY_ROW_TOP,
                  segment->under == UNDER_COUNT ? say_term(SAY_NOT_WRITTEN_DOWN)
                                                : say_meaning(WORDS_UNDER, (int)segment->under)));
    if (way->usual_cover_m > 0) {
        papers_do(out, line, "watch", say(arena, SAY_ROW_COVER_LESS, mm(way->usual_cover_m)));
    }
}

static void add_laying(const struct PapersTable *table, struct XmlElement *line, const struct Segment *segment)
{
    struct Arena *arena = xml_out_arena(table->out);
    const bool sized = segment->duct_size_mm.given || segment->duct_size_mm.value > 0;
    papers_do(table->out, line, "with",
              segment->way == WAY_BURIED       ? say(arena, SAY_ROW_BURIED)
              : segment->duct_laid != LAID_NEW ? say(arena, SAY_ROW_DUCT_THERE)
              : sized ? say(arena, SAY_ROW_NEW_DUCT, say_digits(segment->duct_size_mm.value, 4, UNIT_MM))
                      : say(arena, SAY_ROW_NEW_DUCT_OPEN));
}

/* ---- bends ---- */

/* Rounded up: a bend is never printed tighter than it may be. */
static struct SayArg radius(double radius_mm)
{
    return say_fixed(ceil(radius_mm - 1e-6), 0, UNIT_MM);
}

/* The radius that every surveyed bend of the stretch has, mm; 0 when they differ or none was surveyed. */
static double surveyed_mm(const struct Segment *segment)
{
    const double first_mm = segment->bends[0].radius_m.given ? segment->bends[0].radius_m.value * 1000 : 0;
    for (int i = 1; i < segment->bend_count; i++) {
        if (!segment->bends[i].radius_m.given || fabs(segment->bends[i].radius_m.value * 1000 - first_mm) > 0.5) {
            return 0;
        }
    }
    return first_mm;
}

static const struct Say *bend(struct Arena *arena, const struct Segment *segment, double least_mm)
{
    const double made_mm = surveyed_mm(segment);
    return !(least_mm > 0)       ? say(arena, SAY_ROW_BEND_OPEN)
           : made_mm >= least_mm ? say(arena, SAY_ROW_BEND_TO, radius(made_mm), radius(least_mm))
                                 : say(arena, SAY_ROW_BEND_LEAST, radius(least_mm));
}

static void add_bends(const struct PapersTable *table, struct XmlElement *line, int index)
{
    struct Arena *arena = xml_out_arena(table->out);
    const struct Plan *plan = table->plan;
    const struct Segment *segment = plan->segments[index].surveyed;
    struct OfRun *all = arena_array(arena, (size_t)plan->run_count + 1, sizeof *all);
    int count = 0;
    for (int i = 0; all != NULL && segment->bend_count > 0 && i < plan->run_count; i++) {
        const struct PlanRun *run = &plan->runs[i];
        for (int k = 0; k < run->bend_count; k++) {
            if (run->bends[k].segment == index) {
                all[count++] = (struct OfRun){i, bend(arena, segment, run->bends[k].least_mm)};
                break;
            }
        }
    }
    add_shared(table, line, "bend", SAY_COLON, all, count);
}

/* What lies in pipes and voids or hangs: the take-off's own sentences. */
static void add_counted(const struct PapersTable *table, struct XmlElement *line, int index)
{
    const struct PartsList *parts = table->parts;
    size_t most = 1;
    for (int i = 0; parts != NULL && i < parts->way_count; i++) {
        most += parts->ways[i].segment == index ? (size_t)parts->ways[i].text_count : 0;
    }
    struct OfRun *all = arena_array(xml_out_arena(table->out), most, sizeof *all);
    int count = 0;
    for (int i = 0; all != NULL && parts != NULL && i < parts->way_count; i++) {
        const struct PartsWay *way = &parts->ways[i];
        for (int k = 0; way->segment == index && k < way->text_count; k++) {
            all[count++] = (struct OfRun){way->run, way->texts[k].said};
        }
    }
    add_shared(table, line, "with", SAY_COLON_SMALL, all, count);
}

void papers_cells(const struct PapersTable *table, struct XmlElement *line, int index)
{
    struct Arena *arena = xml_out_arena(table->out);
    const struct Segment *segment = table->plan->segments[index].surveyed;
    switch (papers_group_of(segment)) {
    case GROUP_DRILL:
        papers_do(
            table->out, line, "with",
            say(arena, segment->thickness_m.given ? SAY_ROW_WALL : SAY_SPACE,
                segment->wall == WALL_COUNT ? say_term(SAY_WALL_NOT_WRITTEN) : say_word(WORDS_WALL, (int)segment->wall),
                segment->thickness_m.given ? mm(segment->thickness_m.value) : say_term(SAY_THICKNESS_OPEN)));
        add_of_runs(table, line, index, "count", CELL_COUNT);
        add_of_runs(table, line, index, "with", CELL_WITH);
        if (segment->fire_barrier) { /* else both faces are sealed, as the heading says */
            papers_do(table->out, line, "bend", say(arena, SAY_ROW_FIRE_SEAL));
        }
        break;
    case GROUP_FIX:
        add_of_runs(table, line, index, "count", CELL_COUNT);
        add_of_runs(table, line, index, "first", CELL_FIRST);
        add_of_runs(table, line, index, "with", CELL_WITH);
        break;
    case GROUP_DIG:
    case GROUP_THERE:
        add_laying(table, line, segment);
        add_trench(table, line, index);
        break;
    case GROUP_LAY_IN:
    case GROUPS:
        papers_do(table->out, line, "count", say(arena, SAY_AS_IS, say_meaning(WORDS_WAY, (int)segment->way)));
        add_counted(table, line, index);
        break;
    }
    add_bends(table, line, index);
}
