/** plan.xml as a tree that more may be added to. */
#ifndef WEND_PLAN_XML_PRIVATE_H
#define WEND_PLAN_XML_PRIVATE_H

#include "plan_write_private.h"
#include "xml_private.h"

/** The whole of plan.xml, not finished yet, in `words`; `shown` as people see it (xml_out_show()). NULL when memory
 * fails. */
struct XmlOut *plan_xml_tree(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                             const struct Words *words, const char *mark, bool shown);

#endif
