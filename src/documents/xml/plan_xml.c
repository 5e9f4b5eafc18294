/* plan.xml: the one machine-readable result, as plan_elements.inc lists it. */
#include "documents/documents.h"
#include "plan_xml_private.h"

static void *open(void *document, void *parent, const char *name, const char *list)
{
    (void)list;
    return xml_child(document, parent, name);
}

static void *open_list(void *document, void *parent, const char *name)
{
    return xml_child(document, parent, name);
}

static void attribute(void *document, void *element, const char *name, enum PlanForm form, const char *text)
{
    (void)form;
    xml_attribute(document, element, name, text);
}

static void text(void *document, void *element, const char *text)
{
    xml_text(document, element, text);
}

static void line(void *document, void *parent, const char *name, const char *list, const char *text)
{
    (void)list;
    xml_text(document, xml_child(document, parent, name), text);
}

/* Three quarters of a long plan are these. */
static bool read_by_papers(const char *name)
{
    return !text_same(name, "rating") && !text_same(name, "way-along") && !text_same(name, "way-works");
}

static const struct PlanSink to_xml = {
    .open = open, .open_list = open_list, .attribute = attribute, .text = text, .line = line};
static const struct PlanSink to_papers = {
    .wants = read_by_papers, .open = open, .open_list = open_list, .attribute = attribute, .text = text, .line = line};

struct XmlOut *plan_xml_tree(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                             const struct Words *words, const char *mark, enum PlanSeen seen)
{
    struct XmlOut *out = seen == PLAN_IN_FILE ? xml_out_new(arena, "plan", NULL) : xml_out_new_tree(arena, "plan");
    if (out != NULL) {
        xml_out_speak(out, words);
        if (seen != PLAN_IN_FILE) {
            xml_out_show(out);
        }
        plan_write(arena, plan, parts, words, mark, seen == PLAN_READ_BY_PAPERS ? &to_papers : &to_xml, out,
                   xml_root(out));
    }
    return out;
}

struct Bytes document_plan_xml(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts)
{
    return document_plan_xml_marked(arena, plan, parts, document_mark(arena, plan, parts));
}

struct Bytes document_plan_xml_marked(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                      const char *mark)
{
    static const struct Words files = {.language = LANGUAGE_ENGLISH, .medium = MEDIUM_PLAIN};
    return xml_out_finish(plan_xml_tree(arena, plan, parts, &files, mark, PLAN_IN_FILE));
}
