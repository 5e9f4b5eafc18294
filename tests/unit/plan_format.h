/** The table that plan.xml is written from, as data: src/documents/xml/plan_elements.inc and plan_types.inc. */
#ifndef WEND_PLAN_FORMAT_H
#define WEND_PLAN_FORMAT_H

#include "survey/survey.h"

enum PlanType {
#define TYPE(symbol, name, form, schema, meaning)   TYPE_##symbol,
#define VALUES(symbol, name, form, values, meaning) TYPE_##symbol,
#define WORDS_OF(symbol, name, list, meaning)       TYPE_##symbol,
#include "documents/xml/plan_types.inc"
#undef TYPE
#undef VALUES
#undef WORDS_OF
    TYPES
};

/** One of the three is there: a pattern, the only values, or a list of the route language. */
struct FormatType {
    const char *name, *form, *schema, *values;
    enum WordList words; /**< WORDS_COUNT: no list */
    const char *meaning;
};
const struct FormatType *format_type(int type);

enum FormatKind {
    ROW_ROOT,
    ROW_ELEMENT,
    ROW_LIST,
    ROW_GROUP,
    ROW_END,
    ROW_ALWAYS,
    ROW_GIVEN,
    ROW_LATER,
    ROW_TEXT,
    ROW_ONE,
    ROW_MAYBE,
    ROW_EACH,
    ROW_SOME,
    ROW_LINES,
    ROW_SOME_LINES,
    ROW_PART,
    ROW_WHERE,
    ROW_END_WHERE,
    ROW_EITHER,
    ROW_OR,
    ROW_END_EITHER
};

struct FormatRow {
    enum FormatKind kind;
    const char *symbol;  /**< of an element or group, and of the child that a row names */
    const char *name;    /**< as it is written */
    int type;            /**< of an attribute */
    const char *list;    /**< of children, in JSON */
    const char *meaning; /**< of a condition: in words */
};
extern const struct FormatRow format_rows[];
extern const int format_row_count;

/** True for the rows that name an attribute, and for those that name a child that is an element of its own. */
bool format_is_attribute(const struct FormatRow *row);
bool format_is_child(const struct FormatRow *row);
/** The row that begins an element, list or group; it ends with a ROW_END. */
const struct FormatRow *format_begin(const char *symbol);
/** The elements and groups, each once, from the root down in the order of the rows; their number. */
int format_order(const struct FormatRow *order[], int most);
/** "A" of "rating-A"; "" where the name ends in no unit. */
const char *format_unit(const char *name);

#endif
