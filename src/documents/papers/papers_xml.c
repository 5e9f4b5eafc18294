/* <papers>: puts together what the papers print, in the order in which they print it. */
#include "documents/xml/plan_xml_private.h"
#include "papers_private.h"

#include <math.h>

const char *papers_metres(struct Arena *arena, double length_m)
{
    return arena_print(arena, "%s m", number_significant(arena, floor(length_m * 100 + 0.5) / 100, 9));
}

const char *papers_millimetres(struct Arena *arena, double length_m)
{
    return arena_print(arena, "%s mm", number_text(arena, length_m * 1000, 0));
}

const char *papers_cable(struct Arena *arena, const struct PlanRun *run)
{
    const struct Cable *cable = &run->surveyed->cable;
    const char *cores = cable->cores > 0 ? arena_print(arena, "%d-core ", cable->cores) : "";
    const char *size =
        run->size_mm2 > 0 ? arena_print(arena, "%s mm2 ", number_significant(arena, run->size_mm2, 4)) : "";
    return arena_print(arena, "%s%s%scable %s", cores, size, survey_armoured(cable->type) ? "armoured " : "",
                       survey_word(WORDS_CABLE, (int)cable->type));
}

static void add_papers(struct XmlOut *out, const struct Plan *plan, const struct PartsList *parts)
{
    struct XmlElement *papers = xml_child(out, xml_root(out), "papers");
    papers_said(out, papers, plan);
    papers_ends(out, papers, plan, parts);
    papers_rods(out, papers, plan);
    papers_pulling(out, papers, plan);
    papers_work(out, papers, plan, parts);
    papers_day(out, papers, plan);
    papers_tools(out, papers, plan, parts);
    papers_articles(out, papers, parts);
    for (int i = 0; i < plan->run_count; i++) {
        if (plan->runs[i].rated || plan->runs[i].check_count > 0) {
            papers_sheet(out, papers, plan, &plan->runs[i]);
        }
    }
    for (int i = 0; i < plan->run_count; i++) {
        if (plan->runs[i].rated) {
            papers_tests(out, papers, plan, &plan->runs[i]);
        }
    }
}

struct Bytes papers_xml(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts)
{
    struct XmlOut *out = plan_xml_tree(arena, plan, parts);
    if (out != NULL) {
        add_papers(out, plan, parts);
    }
    return xml_out_finish(out);
}
