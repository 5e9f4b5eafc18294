/* What became of the way, segment by segment, for the owner and for whoever digs there next. */
#include "documents/documents.h"
#include "papers_private.h"

static struct SayArg metre_marks(struct Arena *arena, const struct AsLaid *laid)
{
    if (!laid->metre_start_m.given && !laid->metre_end_m.given) {
        return say_part(NULL);
    }
    const struct Say *from = laid->metre_start_m.given ? say(arena, SAY_AS_IS, papers_metres(laid->metre_start_m.value))
                                                       : say(arena, SAY_LAID_MARK_UNKNOWN);
    const struct Say *to = laid->metre_end_m.given ? say(arena, SAY_AS_IS, papers_metres(laid->metre_end_m.value))
                                                   : say(arena, SAY_LAID_MARK_UNKNOWN);
    return say_part(say(arena, SAY_LAID_FROM_TO, say_part(from), say_part(to)));
}

/* "length 31 m, depth 600 mm": what was surveyed and laid otherwise; texts of the file, as they were written. */
static const struct Say *was(struct Arena *arena, const struct AsLaid *laid)
{
    const struct Say *all = NULL;
    if (laid->was_way != WAY_COUNT) {
        all = say(arena, SAY_AS_IS, say_word(WORDS_WAY, (int)laid->was_way));
    }
    if (laid->was_length != NULL && *laid->was_length != '\0') {
        all = say_list(arena, SAY_COMMA, all, say_part(say(arena, SAY_LAID_WAS_LENGTH, say_name(laid->was_length))));
    }
    if (laid->was_depth != NULL && *laid->was_depth != '\0') {
        all = say_list(arena, SAY_COMMA, all, say_part(say(arena, SAY_LAID_WAS_DEPTH, say_name(laid->was_depth))));
    }
    return all;
}

static void add_runs(struct XmlOut *out, struct XmlElement *stretch, const struct Plan *plan, int index)
{
    struct Arena *arena = xml_out_arena(out);
    const struct Say *names = NULL;
    for (int r = 0; r < plan->run_count; r++) {
        if (survey_follows(plan->runs[r].settled, index)) {
            names = say_list(arena, SAY_COMMA, names, say_name(plan->runs[r].settled->name));
        }
    }
    papers_attribute(out, stretch, "runs", say_part(names));
}

static void add_stretch(struct XmlOut *out, struct XmlElement *sheet, const struct Plan *plan, int index)
{
    struct Arena *arena = xml_out_arena(out);
    const struct PlanSegment *planned = &plan->segments[index];
    const struct Segment *segment = planned->surveyed;
    struct XmlElement *stretch = xml_child(out, sheet, "stretch");
    xml_integer(out, stretch, "number", index + 1);
    xml_attribute(out, stretch, "name", segment->name);
    papers_attribute(out, stretch, "way", say_meaning(WORDS_WAY, (int)segment->way));
    papers_attribute(out, stretch, "length", papers_metres(segment->length_m.value));
    papers_attribute(out, stretch, "from", papers_metres(planned->from_m));
    papers_attribute(out, stretch, "to", papers_metres(planned->to_m));
    if (survey_in_ground(segment->way)) {
        papers_attribute(out, stretch, "depth", papers_millimetres(planned->depth_m));
    }
    add_runs(out, stretch, plan, index);
    xml_attribute(out, stretch, "laid", segment->as_laid.given ? "yes" : "no");
    papers_attribute(out, stretch, "was", say_part(was(arena, &segment->as_laid)));
    papers_attribute(out, stretch, "marks", metre_marks(arena, &segment->as_laid));
    xml_attribute_if(out, stretch, "found", segment->as_laid.found);
    xml_attribute_if(out, stretch, "photo", segment->as_laid.photo);
}

void papers_as_laid(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    if (!paper_is_due(plan, PAPER_AS_LAID)) {
        return;
    }
    struct XmlElement *sheet = xml_child(out, papers, "as-laid");
    xml_attribute_if(out, sheet, "by", plan->survey->job.laid_by);
    xml_attribute_if(out, sheet, "date", plan->survey->job.laid);
    for (int i = 0; i < plan->segment_count; i++) {
        add_stretch(out, sheet, plan, i);
    }
}
