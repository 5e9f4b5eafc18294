/* <papers>: puts together what the papers print, in the order in which they print it. */
#include "documents/documents.h"
#include "documents/xml/plan_xml_private.h"
#include "papers_private.h"

#include <math.h>

struct SayArg papers_metres(double length_m)
{
    return say_digits(floor(length_m * 100 + 0.5) / 100, 9, UNIT_M);
}

struct SayArg papers_millimetres(double length_m)
{
    return say_fixed(length_m * 1000, 0, UNIT_MM);
}

void papers_attribute(struct XmlOut *out, struct XmlElement *element, const char *name, struct SayArg said)
{
    xml_attribute_if(out, element, name, xml_said(out, say(xml_out_arena(out), SAY_AS_IS, said)));
}

void papers_do(struct XmlOut *out, struct XmlElement *stretch, const char *kind, const struct Say *text)
{
    if (text != NULL) {
        struct XmlElement *element = xml_child(out, stretch, "do");
        xml_attribute(out, element, "kind", kind);
        xml_say(out, element, text);
    }
}

struct SayArg papers_device(const struct PlanRun *run)
{
    return say_part(run->device_full != NULL ? run->device_full : run->device_text);
}

const struct Say *papers_cable(struct Arena *arena, const struct PlanRun *run)
{
    const struct Cable *cable = &run->settled->cable;
    const struct Say *said = say(arena, survey_armoured(cable->type) ? SAY_CABLE_ARMOURED : SAY_CABLE,
                                 say_word(WORDS_CABLE, (int)cable->type));
    if (run->size_mm2 > 0) {
        said = say(arena, SAY_CABLE_OF_SIZE, say_digits(run->size_mm2, 4, UNIT_MM2), say_part(said));
    }
    return cable->cores > 0 ? say(arena, SAY_CABLE_OF_CORES, say_count(cable->cores), say_part(said), say_part(NULL))
                            : said;
}

static void add_papers(struct XmlOut *out, const struct Plan *plan, const struct PartsList *parts,
                       struct PapersWith with)
{
    struct XmlElement *papers = xml_child(out, xml_root(out), "papers");
    papers_labels(out, papers, plan);
    papers_summary(out, papers, plan);
    papers_ends(out, papers, plan, parts);
    papers_cautions(out, papers, plan);
    papers_open(out, papers, plan);
    papers_given(out, papers, plan, with.decisives);
    papers_rods(out, papers, plan);
    papers_pulling(out, papers, plan);
    papers_work(out, papers, plan, parts);
    papers_day(out, papers, plan);
    papers_strip(out, papers, with.work);
    papers_quotation(out, papers, plan, parts, with.work);
    papers_tools(out, papers, plan, parts);
    papers_card(out, papers, plan);
    papers_articles(out, papers, parts);
    papers_sheets(out, papers, plan);
    for (int i = 0; i < plan->run_count; i++) {
        if (plan->runs[i].rated) {
            papers_tests(out, papers, plan, &plan->runs[i]);
        }
    }
    papers_readings(out, papers, plan);
    papers_as_laid(out, papers, plan);
}

static struct XmlOut *whole(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                            struct PapersWith with, const struct Words *words, const char *mark, enum PlanSeen seen)
{
    struct XmlOut *out = plan_xml_tree(arena, plan, parts, words, mark, seen);
    if (out != NULL) {
        add_papers(out, plan, parts, with);
    }
    return out;
}

struct Bytes papers_xml(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                        const struct Words *words)
{
    return xml_out_finish(whole(arena, plan, parts, (struct PapersWith){NULL, NULL}, words,
                                document_mark(arena, plan, parts), PLAN_IN_FILE));
}

/* A plan may hold marks that turn the reading direction; on paper a name must read as it stands. */
struct XmlOut *papers_tree(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                           struct PapersWith with, const struct Words *words, const char *mark, bool own)
{
    return whole(arena, plan, parts, with, words, mark, own ? PLAN_SHOWN : PLAN_READ_BY_PAPERS);
}
