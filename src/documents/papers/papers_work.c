/* The second hand's page: stretch by stretch what to do with the hands, in plain words and without symbols. */
#include "papers_private.h"

#include <math.h>

/* What the way asks for, in one sentence. */
static enum Saying task_of(const struct Segment *segment)
{
    switch (segment->way) {
    case WAY_WALL:
    case WAY_BEAM: return SAY_TASK_FIX_TO;
    case WAY_FENCE: return SAY_TASK_FENCE;
    case WAY_LOFT_VOID: return SAY_TASK_LOFT;
    case WAY_UNDER_FLOOR: return SAY_TASK_FLOOR;
    case WAY_STUD_WALL: return SAY_TASK_STUD_WALL;
    case WAY_CEILING: return SAY_TASK_CEILING;
    case WAY_THROUGH_WALL: return segment->thickness_m.given ? SAY_TASK_HOLE : SAY_TASK_HOLE_OPEN;
    case WAY_CONDUIT: return SAY_TASK_CONDUIT;
    case WAY_TRUNKING: return SAY_TASK_TRUNKING;
    case WAY_TRAY: return SAY_TASK_TRAY;
    case WAY_LADDER: return SAY_TASK_LADDER;
    case WAY_CATENARY: return SAY_TASK_CATENARY;
    case WAY_DUCT: return segment->duct_laid == LAID_NEW ? SAY_TASK_NEW_DUCT : SAY_TASK_DUCT;
    case WAY_BURIED: return SAY_TASK_BURIED;
    case WAY_COUNT: break;
    }
    return SAY_NOTHING;
}

static const struct Say *main_task(struct Arena *arena, const struct Segment *segment)
{
    if (segment->way == WAY_THROUGH_WALL) {
        const struct SayArg wall =
            segment->wall == WALL_COUNT ? say_term(SAY_WALL_NOT_WRITTEN) : say_meaning(WORDS_WALL, (int)segment->wall);
        return say(arena, task_of(segment), wall, papers_millimetres(segment->thickness_m.value));
    }
    return say(arena, task_of(segment),
               segment->fixed_to == SURFACE_COUNT ? say_term(SAY_WHAT_IS_THERE)
                                                  : say_word(WORDS_SURFACE, (int)segment->fixed_to));
}

/* What is said of one run on a stretch: which sentence of which entry. */
static bool says(const struct PartsWay *way, int segment, const struct Say *said)
{
    for (int k = 0; way->segment == segment && k < way->text_count; k++) {
        if (say_same(way->texts[k].said, said)) {
            return true;
        }
    }
    return false;
}

/* Every run of which the sentence holds; NULL when an earlier entry has said it for this one too. */
static const struct Say *whose(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts, int at,
                               const struct Say *said)
{
    const struct Say *names = NULL;
    for (int i = 0; i < parts->way_count; i++) {
        const struct PartsWay *way = &parts->ways[i];
        if (way->run < 0 || !says(way, parts->ways[at].segment, said)) {
            continue;
        }
        if (i < at) {
            return NULL;
        }
        names = say_list(arena, SAY_COMMA, names, say_name(plan->runs[way->run].settled->name));
    }
    return names;
}

/* Which of a stretch's sentences: in the ground those before the cable goes in, and those after; of a duct what fills
 * the trench over it, and what is done once the cable is drawn. */
enum Due { BEFORE_CABLE, AFTER_CABLE, OVER_DUCT, ONCE_DRAWN };

static bool is_due(const struct PartsWay *way, int text, bool ground, enum Due due)
{
    const bool after = ground && text >= way->open_text_count;
    const bool drawn = after && text >= way->filled_text_count;
    switch (due) {
    case BEFORE_CABLE: return !after;
    case AFTER_CABLE: return after;
    case OVER_DUCT: return after && !drawn;
    case ONCE_DRAWN: return drawn;
    }
    return false;
}

/* The take-off's own sentences, in the order of the work; with several runs each says whose it is, and what holds for
 * several is said once. */
static void add_counted(struct XmlOut *out, struct XmlElement *stretch, const struct Plan *plan,
                        const struct PartsList *parts, int index, enum Due due)
{
    struct Arena *arena = xml_out_arena(out);
    for (int i = 0; parts != NULL && i < parts->way_count; i++) {
        const struct PartsWay *way = &parts->ways[i];
        const bool ground = way->run < 0 && survey_in_ground(plan->segments[index].surveyed->way);
        for (int k = 0; way->segment == index && k < way->text_count; k++) {
            const bool several = way->run >= 0 && plan->run_count > 1;
            const struct Say *names = several ? whose(arena, plan, parts, i, way->texts[k].said) : NULL;
            const struct Say *text = way->texts[k].said;
            if (is_due(way, k, ground, due) && (!several || names != NULL)) {
                papers_do(out, stretch, way->texts[k].aside ? "aside" : "count",
                          several ? say(arena, SAY_RUN_COLON, say_part(names), say_part(text)) : text);
            }
        }
    }
}

/* Scan, dig, bed, duct, photograph, draw or lay, test, sand, tape, fill, bung: nothing is covered before it is tested.
 */
static void add_ground_work(struct XmlOut *out, struct XmlElement *stretch, const struct Plan *plan,
                            const struct PartsList *parts, int index)
{
    struct Arena *arena = xml_out_arena(out);
    const struct Segment *segment = plan->segments[index].surveyed;
    const bool digs = survey_dug(segment);
    if (digs) {
        papers_do(out, stretch, "dig",
                  say(arena, SAY_DIG_TOP,
                      segment->under == UNDER_COUNT ? say_term(SAY_NOT_WRITTEN_DOWN)
                                                    : say_meaning(WORDS_UNDER, (int)segment->under)));
    }
    add_counted(out, stretch, plan, parts, index, BEFORE_CABLE);
    if (digs) {
        papers_do(out, stretch, "aside", say(arena, SAY_DIG_STOP));
        papers_do(out, stretch, "dig", say(arena, SAY_DIG_PHOTOGRAPH));
    }
    const bool duct = segment->way == WAY_DUCT;
    if (duct) { /* the trench is filled over an empty duct, and open for no longer than that */
        add_counted(out, stretch, plan, parts, index, OVER_DUCT);
    }
    papers_bends(out, stretch, plan, index);
    papers_pulls(out, stretch, plan, index);
    papers_do(out, stretch, "main", main_task(arena, segment));
    papers_unknowns(out, stretch, plan, index);
    if (duct || digs) {
        papers_do(out, stretch, "dig", say(arena, duct ? SAY_DIG_TEST_DRAWN_IN : SAY_DIG_TEST_LAID));
    }
    add_counted(out, stretch, plan, parts, index, duct ? ONCE_DRAWN : AFTER_CABLE);
}

static struct SayArg height_text(struct Arena *arena, double height_m)
{
    const bool level = fabs(height_m) < 0.005;
    return height_m > 0 && !level ? say_part(say(arena, SAY_HEIGHT_ABOVE, papers_metres(height_m)))
                                  : papers_metres(level ? 0 : height_m);
}

static struct SayArg rise_text(struct Arena *arena, const struct Segment *segment)
{
    const double rise_m = segment->rise_m.value;
    if (!segment->rise_m.given || fabs(rise_m) < 0.0005) {
        return say_part(NULL);
    }
    const bool ground = survey_in_ground(segment->way);
    return say_part(
        say(arena, rise_m > 0 ? (ground ? SAY_RISES_IN_GROUND : SAY_RISES) : (ground ? SAY_FALLS_IN_GROUND : SAY_FALLS),
            papers_metres(fabs(rise_m))));
}

static void add_stretch(struct XmlOut *out, struct XmlElement *work, const struct Plan *plan,
                        const struct PartsList *parts, int index)
{
    struct Arena *arena = xml_out_arena(out);
    const struct PlanSegment *place = &plan->segments[index];
    const struct Segment *segment = place->surveyed;
    struct XmlElement *stretch = xml_child(out, work, "stretch");
    xml_integer(out, stretch, "number", index + 1);
    xml_attribute(out, stretch, "name", segment->name);
    xml_attribute(out, stretch, "way", survey_word(WORDS_WAY, (int)segment->way));
    papers_attribute(out, stretch, "means", say_meaning(WORDS_WAY, (int)segment->way));
    papers_attribute(out, stretch, "length", papers_metres(place->surveyed->length_m.value));
    papers_attribute(out, stretch, "from", papers_metres(place->from_m));
    papers_attribute(out, stretch, "to", papers_metres(place->to_m));
    papers_attribute(out, stretch, "rise", rise_text(arena, segment));
    papers_attribute(out, stretch, "height", height_text(arena, place->height_to_m));
    if (survey_in_ground(segment->way)) {
        add_ground_work(out, stretch, plan, parts, index);
    } else {
        papers_do(out, stretch, "main", main_task(arena, segment));
        papers_unknowns(out, stretch, plan, index);
        add_counted(out, stretch, plan, parts, index, BEFORE_CABLE);
        papers_bends(out, stretch, plan, index);
        papers_pulls(out, stretch, plan, index);
    }
    papers_surroundings(out, stretch, segment);
    papers_do(out, stretch, "mind", place->separation);
    papers_do(out, stretch, "pull", place->drawing_in);
}

void papers_work(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan, const struct PartsList *parts)
{
    struct XmlElement *work = xml_child(out, papers, "work");
    for (int i = 0; i < plan->segment_count; i++) {
        add_stretch(out, work, plan, parts, i);
    }
}
