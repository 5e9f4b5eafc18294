/** The parts that plan.xml is made of, one function for each element that is more than a few lines. */
#ifndef WEND_PLAN_XML_PRIVATE_H
#define WEND_PLAN_XML_PRIVATE_H

#include "plan/plan.h"
#include "takeoff/parts.h"
#include "xml_private.h"

/** The whole of plan.xml, not finished yet, in `words`; NULL: in files' own. NULL when memory fails. */
struct XmlOut *plan_xml_tree(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                             const struct Words *words);

/** <run>, with everything decided for it. */
void plan_xml_run(struct XmlOut *out, struct XmlElement *plan_element, const struct Plan *plan,
                  const struct PlanRun *run);
/** <way-works>, what each stretch takes. `list` may be NULL. */
void plan_xml_works(struct XmlOut *out, struct XmlElement *plan_element, const struct Plan *plan,
                    const struct PartsList *list);
/** The price of line `index` as attributes of its <part>; nothing without one. */
void plan_xml_part_price(struct XmlOut *out, struct XmlElement *part, const struct PartsList *list, int index);
/** <cutting> for each article that is cut from whole lengths, then <prices>, at the end of <parts>. */
void plan_xml_cutting_and_prices(struct XmlOut *out, struct XmlElement *parts, const struct PartsList *list);
/** An attribute only for a quantity that the surveyor wrote. */
void plan_xml_given(struct XmlOut *out, struct XmlElement *element, const char *name, const struct Quantity *quantity);

/** "pass", "open" or "fail". */
const char *plan_xml_verdict(enum Verdict verdict);
/** "pass", "fail" or "not-due". */
/** A figure that is 0 where it is not known: nothing then. */
void plan_xml_known(struct XmlOut *out, struct XmlElement *element, const char *name, double value);
const char *plan_xml_result(enum CheckResult result);
/** plan_xml_mechanics.c: an end of a run; the cable as a thing, its bends and pulls. */
void plan_xml_end(struct XmlOut *out, struct XmlElement *run_element, const char *name, const struct End *end,
                  const struct PlanEnd *planned);
void plan_xml_mechanics(struct XmlOut *out, struct XmlElement *run_element, const struct Plan *plan,
                        const struct PlanRun *run);

#endif
