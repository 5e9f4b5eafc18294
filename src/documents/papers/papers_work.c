/* The second hand's page: stretch by stretch what to do with the hands, in plain words and without symbols. */
#include "papers_private.h"

#include "documents/shown_private.h"

#include <math.h>

void papers_do(struct XmlOut *out, struct XmlElement *stretch, const char *kind, const char *text)
{
    if (*text != '\0') {
        struct XmlElement *element = xml_child(out, stretch, "do");
        xml_attribute(out, element, "kind", kind);
        xml_text(out, element, text);
    }
}

static const char *surface_of(const struct Segment *segment)
{
    return segment->fixed_to == SURFACE_COUNT ? "what is there" : survey_word(WORDS_SURFACE, (int)segment->fixed_to);
}

/* What the way asks for, in one sentence. */
static const char *main_task(struct Arena *arena, const struct PlanSegment *place)
{
    const struct Segment *segment = place->surveyed;
    switch (segment->way) {
    case WAY_WALL:
    case WAY_BEAM: return arena_print(arena, "Fix the cable to %s.", surface_of(segment));
    case WAY_FENCE: return arena_print(arena, "Fix the cable to the fence (%s).", surface_of(segment));
    case WAY_LOFT_VOID:
        return arena_print(arena, "Take the cable through the roof void and fix it to %s.", surface_of(segment));
    case WAY_UNDER_FLOOR: return "Take the cable through the floor void.";
    case WAY_STUD_WALL: return "Draw the cable through the insulated wall.";
    case WAY_CEILING: return "Lay the cable above the ceiling.";
    case WAY_THROUGH_WALL:
        return arena_print(
            arena,
            segment->thickness_m.given ? "Through the wall: %s, %s thick."
                                       : "Through the wall: %s, thickness not surveyed: %s.",
            segment->wall == WALL_COUNT ? "kind not written down" : survey_meaning(WORDS_WALL, (int)segment->wall),
            segment->thickness_m.given ? papers_millimetres(arena, segment->thickness_m.value) : "____ mm");
    case WAY_CONDUIT: return "Draw the cable into the conduit.";
    case WAY_TRUNKING: return "Lay the cable into the trunking and put the lid on.";
    case WAY_TRAY: return "Fix the cable to the tray.";
    case WAY_LADDER: return "Cleat the cable to the ladder, clear of the wall.";
    case WAY_CATENARY: return "Hang the cable from the catenary wire; leave it a drip loop at both ends.";
    case WAY_DUCT:
        return segment->duct_laid == LAID_NEW ? "Draw the cable into the new duct."
                                              : "Draw the cable into the duct that is already there.";
    case WAY_BURIED: return "Lay the cable on the bed without kinks.";
    case WAY_COUNT: break;
    }
    return "";
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

/* "Run feeder, pump: ", every run of which the sentence holds; "" when an earlier entry has said it for this one too.
 */
static const char *whose(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts, int at,
                         const struct Say *said)
{
    const int segment = parts->ways[at].segment;
    struct TextBuilder names = text_builder(arena);
    for (int i = 0; i < parts->way_count; i++) {
        const struct PartsWay *way = &parts->ways[i];
        if (way->run < 0 || !says(way, segment, said)) {
            continue;
        }
        if (i < at) {
            return "";
        }
        text_print(&names, "%s%s", names.length > 0 ? ", " : "Run ", plan->runs[way->run].surveyed->name);
    }
    text_add(&names, ": ");
    return text_done(&names);
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
    for (int i = 0; parts != NULL && i < parts->way_count; i++) {
        const struct PartsWay *way = &parts->ways[i];
        const bool ground = way->run < 0 && survey_in_ground(plan->segments[index].surveyed->way);
        for (int k = 0; way->segment == index && k < way->text_count; k++) {
            const bool several = way->run >= 0 && plan->run_count > 1;
            const char *names = several ? whose(xml_out_arena(out), plan, parts, i, way->texts[k].said) : "";
            if (is_due(way, k, ground, due) && (!several || *names != '\0')) {
                papers_do(
                    out, stretch, way->texts[k].aside ? "aside" : "count",
                    arena_print(xml_out_arena(out), "%s%s", names, shown_said(xml_out_arena(out), way->texts[k].said)));
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
                  arena_print(arena,
                              "Top: %s. Scan for services, and again as you go down. Make the top good with: ____",
                              segment->under == UNDER_COUNT ? "not written down"
                                                            : survey_meaning(WORDS_UNDER, (int)segment->under)));
    }
    add_counted(out, stretch, plan, parts, index, BEFORE_CABLE);
    papers_do(out, stretch, "aside",
              digs ? "Rock, water, a root or a service in the way: stop and ring. Least cover agreed: ____ mm." : "");
    papers_do(out, stretch, "dig", digs ? "Photograph the open trench with a tape measure in it." : "");
    const bool duct = segment->way == WAY_DUCT;
    if (duct) { /* the trench is filled over an empty duct, and open for no longer than that */
        add_counted(out, stretch, plan, parts, index, OVER_DUCT);
    }
    papers_bends(out, stretch, plan, index);
    papers_pulls(out, stretch, plan, index);
    papers_do(out, stretch, "main", main_task(arena, &plan->segments[index]));
    papers_unknowns(out, stretch, plan, index);
    papers_do(out, stretch, "dig",
              duct   ? "Test the cable once it is drawn in: continuity and insulation."
              : digs ? "Test the cable before it is covered: continuity and insulation."
                     : "");
    add_counted(out, stretch, plan, parts, index, duct ? ONCE_DRAWN : AFTER_CABLE);
}

static const char *height_text(struct Arena *arena, double height_m)
{
    const bool level = fabs(height_m) < 0.005;
    return arena_print(arena, "%s%s", height_m > 0 && !level ? "+" : "", papers_metres(arena, level ? 0 : height_m));
}

static const char *rise_text(struct Arena *arena, const struct Segment *segment)
{
    const double rise_m = segment->rise_m.value;
    if (!segment->rise_m.given || fabs(rise_m) < 0.0005) {
        return "";
    }
    return arena_print(arena, "%s %s%s", rise_m > 0 ? "rises" : "falls", papers_metres(arena, fabs(rise_m)),
                       survey_in_ground(segment->way) ? " (the cover in the ground stays the same)" : "");
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
    xml_attribute(out, stretch, "means", survey_meaning(WORDS_WAY, (int)segment->way));
    xml_attribute(out, stretch, "length", papers_metres(arena, place->to_m - place->from_m));
    xml_attribute(out, stretch, "from", papers_metres(arena, place->from_m));
    xml_attribute(out, stretch, "to", papers_metres(arena, place->to_m));
    xml_attribute_if(out, stretch, "rise", rise_text(arena, segment));
    xml_attribute(out, stretch, "height", height_text(arena, place->height_to_m));
    if (survey_in_ground(segment->way)) {
        add_ground_work(out, stretch, plan, parts, index);
    } else {
        papers_do(out, stretch, "main", main_task(arena, place));
        papers_unknowns(out, stretch, plan, index);
        add_counted(out, stretch, plan, parts, index, BEFORE_CABLE);
        papers_bends(out, stretch, plan, index);
        papers_pulls(out, stretch, plan, index);
    }
    papers_surroundings(out, stretch, segment);
    papers_do(out, stretch, "mind", shown_said(arena, place->separation));
    papers_do(out, stretch, "pull", shown_said(arena, place->drawing_in));
}

void papers_work(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan, const struct PartsList *parts)
{
    struct XmlElement *work = xml_child(out, papers, "work");
    for (int i = 0; i < plan->segment_count; i++) {
        add_stretch(out, work, plan, parts, i);
    }
}
