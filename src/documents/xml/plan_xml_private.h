/** plan.xml as a tree that more may be added to. */
#ifndef WEND_PLAN_XML_PRIVATE_H
#define WEND_PLAN_XML_PRIVATE_H

#include "plan_write_private.h"
#include "xml_private.h"

/** What there is of it in a tree. */
enum PlanSeen {
    PLAN_IN_FILE,
    PLAN_SHOWN,         /**< the same as people see it (xml_out_show()) */
    PLAN_READ_BY_PAPERS /**< of that, what the templates that are built in read */
};
/** plan.xml, not finished yet, in `words`. NULL when memory fails. */
struct XmlOut *plan_xml_tree(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                             const struct Words *words, const char *mark, enum PlanSeen seen);

#endif
