/** Documents made from a plan. Each writer builds one whole document in memory and touches no file.
 * The bytes live in `arena`; data is NULL when memory failed. Same plan, same bytes. */
#ifndef WEND_DOCUMENTS_H
#define WEND_DOCUMENTS_H

#include "wend/base.h"
#include "wend/order.h"
#include "wend/order_list.h"
#include "wend/parts.h"
#include "wend/plan.h"

/** plan.xml as plan-format.md says; valid against templates/plan.rng. */
struct Bytes document_plan_xml(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts);
/** The run diagram, SVG 1.1. */
struct Bytes document_diagram_svg(struct Arena *arena, const struct Plan *plan);
/** The parts list, RFC 4180, UTF-8. */
struct Bytes document_parts_csv(struct Arena *arena, const struct PartsList *parts);
/** An order of many jobs' parts, RFC 4180, UTF-8. `order` may be NULL: no order file. */
struct Bytes document_order_csv(struct Arena *arena, const struct Order *order, const struct OrderList *list);
/** The same as an OASIS UBL 2.1 Order. The schema wants at least one line, a reference and a date. */
struct Bytes document_order_ubl(struct Arena *arena, const struct Order *order, const struct OrderList *list);
/** The summary for a terminal, 80 columns; `colour` adds escape sequences. */
struct Bytes document_summary_text(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                   bool colour);

/** What would become of a plan if every load were larger. */
struct Growth {
    double percent;
    const struct Plan *plan; /**< with the devices as surveyed; NULL when none can be designed */
    const struct Plan
        *any_device;   /**< with the smallest standard devices that carry it; NULL when none can be designed: */
    const char *fault; /**< why not; "" otherwise */
};
/** The sizes that were tried for a power run, side by side, in 80 columns; for all power runs with `run` -1. `growth`
 * may be NULL: not asked. */
struct Bytes document_options_text(struct Arena *arena, const struct Plan *plan, int run, const struct Growth *growth);

/** One figure to be explained: a check of a run, and a stretch where it is worked by stretches. */
struct Question {
    int run, check;               /**< indexes */
    const struct Rating *stretch; /**< with its working; NULL none */
};
/** The working of figures, step by step, in 80 columns. */
struct Bytes document_explain_text(struct Arena *arena, const struct Plan *plan, const struct Question *questions,
                                   int count);

/** "The checks are: load, capacity, ..." wrapped to 80 columns, each name made fit for a terminal. */
struct Bytes document_name_list(struct Arena *arena, const char *lead, const char *const *names, int count);

/** Makes libxml2 call `give_up` (which must not return) instead of going on without memory. Call once, first, from a
 * program that owns the process; a library user leaves it and gets data == NULL instead. */
void documents_guard_memory(void (*give_up)(void));

#endif
