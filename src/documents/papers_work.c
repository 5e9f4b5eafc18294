/* The second hand's page: stretch by stretch what to do with the hands, in plain words and without symbols. */
#include "papers_private.h"

#include <math.h>

/* Things to hold a bend against. Common practice, no source: measure yours. */
static const struct {
    double across_mm;
    const char *what;
} household[] = {
    {80, "a mug"},           {120, "a compact disc"}, {180, "a side plate"},  {260, "a dinner plate"},
    {300, "a bucket's rim"}, {450, "a dustbin lid"},  {600, "a car's wheel"}, {680, "a bicycle wheel"},
};

const char *papers_household(struct Arena *arena, double across_mm)
{
    for (size_t i = 0; i < sizeof household / sizeof household[0]; i++) {
        if (household[i].across_mm >= across_mm) {
            return arena_print(arena, "%s, %s mm", household[i].what, number_text(arena, household[i].across_mm, 0));
        }
    }
    return "";
}

static void item(struct XmlOut *out, struct XmlElement *stretch, const char *kind, const char *text)
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

static const char *hole_of(struct Arena *arena, const struct Segment *segment)
{
    const char *wall = segment->wall == WALL_COUNT ? "wall" : survey_meaning(WORDS_WALL, (int)segment->wall);
    return arena_print(arena, "Drill through the wall (%s, %s thick), falling to the outside%s.", wall,
                       papers_millimetres(arena, segment->thickness_m.value),
                       segment->sleeve ? "; sleeve it and seal both ends" : "; seal it afterwards");
}

static const char *duct_of(struct Arena *arena, const struct Segment *segment, double depth_m)
{
    const char *size = segment->duct_size_mm.given
                           ? arena_print(arena, "%s mm duct", number_significant(arena, segment->duct_size_mm.value, 4))
                           : "duct";
    return segment->duct_laid == LAID_NEW
               ? arena_print(arena, "Dig and lay the %s with %s of cover over it, then draw the cable in.", size,
                             papers_millimetres(arena, depth_m))
               : arena_print(arena, "Draw the cable into the %s that is already there, %s down.", size,
                             papers_millimetres(arena, depth_m));
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
    case WAY_THROUGH_WALL: return hole_of(arena, segment);
    case WAY_CONDUIT: return "Draw the cable into the conduit.";
    case WAY_TRUNKING: return "Lay the cable into the trunking and put the lid on.";
    case WAY_TRAY: return "Fix the cable to the tray.";
    case WAY_LADDER: return "Cleat the cable to the ladder, clear of the wall.";
    case WAY_CATENARY: return "Hang the cable from the catenary wire; leave it a drip loop at both ends.";
    case WAY_DUCT: return duct_of(arena, segment, place->depth_m);
    case WAY_BURIED:
        return arena_print(arena, "Dig, lay the cable on a fine bed with %s of cover, and bury marker tape above it.",
                           papers_millimetres(arena, place->depth_m));
    case WAY_COUNT: break;
    }
    return "";
}

static void add_ground(struct XmlOut *out, struct XmlElement *stretch, const struct Segment *segment)
{
    struct Arena *arena = xml_out_arena(out);
    const bool digs = segment->way == WAY_BURIED || (segment->way == WAY_DUCT && segment->duct_laid == LAID_NEW);
    if (segment->way == WAY_DUCT && segment->duct_rope) {
        item(out, stretch, "pull", "A draw rope is in the duct, or goes in with it.");
    }
    if (!digs) {
        return;
    }
    item(out, stretch, "dig",
         arena_print(arena, "Ground: %s; %s. Photograph the trench with a tape measure in it before it is covered.",
                     segment->under == UNDER_COUNT ? "cover not written down"
                                                   : survey_meaning(WORDS_UNDER, (int)segment->under),
                     segment->dig == DIG_COUNT ? "how to dig was not written down"
                                               : survey_meaning(WORDS_DIG, (int)segment->dig)));
}

static void add_bends(struct XmlOut *out, struct XmlElement *stretch, const struct Segment *segment)
{
    struct Arena *arena = xml_out_arena(out);
    for (int i = 0; i < segment->bend_count; i++) {
        const struct Bend *bend = &segment->bends[i];
        const char *angle = number_significant(arena, bend->angle_deg, 4);
        if (!bend->radius_m.given) {
            item(out, stretch, "bend", arena_print(arena, "One bend of %s degrees: as wide as it will go.", angle));
            continue;
        }
        const double across_mm = 2000 * bend->radius_m.value;
        const char *what = papers_household(arena, across_mm);
        item(out, stretch, "bend",
             arena_print(arena, "One bend of %s degrees, radius %s: no tighter than a circle %s mm across%s%s%s.", angle,
                         papers_millimetres(arena, bend->radius_m.value), number_text(arena, across_mm, 0),
                         *what == '\0' ? "" : " (", what, *what == '\0' ? "" : ", is wide enough)"));
    }
}

static void add_surroundings(struct XmlOut *out, struct XmlElement *stretch, const struct Segment *segment)
{
    struct Arena *arena = xml_out_arena(out);
    if (segment->insulation == INSULATION_SURROUNDED) {
        item(out, stretch, "mind",
             arena_print(arena,
                         "The plan counts on no more than %s of the cable lying in insulation: keep the rest on "
                         "top of it.",
                         papers_millimetres(arena, segment->insulated_length_m.value)));
    } else if (segment->insulation == INSULATION_ONE_SIDE) {
        item(out, stretch, "mind", "The plan counts on insulation on one side only: leave the other side open.");
    }
    if (segment->has_beside && segment->beside.circuits > 0) {
        item(out, stretch, "mind",
             arena_print(arena, "%d other loaded circuit%s here; the plan counts on: %s.", segment->beside.circuits,
                         segment->beside.circuits == 1 ? " lies" : "s lie",
                         survey_meaning(WORDS_ARRANGEMENT, (int)segment->beside.arrangement)));
    }
    if (segment->fire_barrier) {
        item(out, stretch, "mind", "This is a fire barrier: make the hole good to the same rating at once.");
    }
    if (*segment->notes != '\0') {
        item(out, stretch, "note", segment->notes);
    }
}

static const char *height_text(struct Arena *arena, double height_m)
{
    return arena_print(arena, "%s%s m", height_m > 0 ? "+" : "", number_text(arena, height_m, 2));
}

static void add_stretch(struct XmlOut *out, struct XmlElement *work, const struct Plan *plan, int index)
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
    if (segment->rise_m.given && fabs(segment->rise_m.value) > 0.0005) {
        xml_attribute(out, stretch, "rise",
                      arena_print(arena, "%s %s m", segment->rise_m.value > 0 ? "rises" : "falls",
                                  number_text(arena, fabs(segment->rise_m.value), 2)));
    }
    xml_attribute(out, stretch, "height", height_text(arena, place->height_to_m));
    item(out, stretch, "main", main_task(arena, place));
    add_ground(out, stretch, segment);
    add_bends(out, stretch, segment);
    add_surroundings(out, stretch, segment);
}

void papers_work(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    struct XmlElement *work = xml_child(out, papers, "work");
    for (int i = 0; i < plan->segment_count; i++) {
        add_stretch(out, work, plan, i);
    }
}
