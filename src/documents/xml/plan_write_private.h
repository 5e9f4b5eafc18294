/** What the plan is as a tree of elements, whatever it is written as: plan_elements.inc, walked once. */
#ifndef WEND_PLAN_WRITE_PRIVATE_H
#define WEND_PLAN_WRITE_PRIVATE_H

#include "plan/plan.h"
#include "takeoff/parts.h"
#include "words/words.h"

/** What a value is, where the document can tell (plan_types.inc). */
enum PlanForm { FORM_TEXT, FORM_NUMBER, FORM_YES, FORM_TEXTS, FORM_NUMBERS };

/** A document that a plan is written to. An element is whatever its functions take it for; NULL where one failed. */
struct PlanSink {
    /** Whether elements of that name are to be written. NULL: all of them are. */
    bool (*wants)(const char *name);
    /** A new last child. `list` is what its parent calls all of them, "" in a list; NULL: there is only one. */
    void *(*open)(void *document, void *parent, const char *name, const char *list);
    /** A new last child that is itself nothing but a list. */
    void *(*open_list)(void *document, void *parent, const char *name);
    /** Children follow that the element calls `list`, perhaps none. NULL: the document need not know. */
    void (*announce)(void *document, void *element, const char *list);
    /** `text` is NULL where it could not be made. */
    void (*attribute)(void *document, void *element, const char *name, enum PlanForm form, const char *text);
    void (*text)(void *document, void *element, const char *text);
    /** A child that is text alone. */
    void (*line)(void *document, void *parent, const char *name, const char *list, const char *text);
};

/** Writes all that is in <plan> to `root`, in `words`, with the mark of its sheets. `parts` may be NULL. */
void plan_write(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts, const struct Words *words,
                const char *mark, const struct PlanSink *sink, void *document, void *root);

/** "pass", "open" or "fail". */
const char *plan_xml_verdict(enum Verdict verdict);

#endif
