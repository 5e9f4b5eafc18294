/* Walks a plan by plan_elements.inc and gives what is in it to a document. What was not surveyed is left out, never
 * written as 0. */
#include "plan_write_private.h"

#include "base/diag.h"
#include "documents/measured_said_private.h"
#include "documents/shown_private.h"

#include <math.h>

struct PlanWriter {
    struct Arena *arena;
    const struct Words *words;
    const struct Plan *plan;
    const struct PartsList *list; /**< empty where nothing was counted */
    const char *mark;
    const struct PlanSink *sink;
    void *document;
};

/* ---- what an element is made from, where that is more than one struct of the plan ---- */

struct RunEnd {
    const struct End *surveyed;
    const struct PlanEnd *planned;
};
struct RunNearest {
    const struct Check *check;
    const struct Nearest *nearest;
};
struct RunPull {
    const struct Run *run;
    const struct PlanPull *pull;
};
struct RunLine {
    int number;
    double current_a;
};
struct PartLine {
    const struct Part *part;
    const struct PartPrice *price; /**< NULL: none is known */
};
struct CutOpened {
    const struct PartsCut *cut;
    const struct PartOpened *opened;
};
struct NumberedCaution {
    int number;
    const struct Caution *caution;
};
#define RUN_END(end)            (&(const struct RunEnd){&it->settled->end, &it->end##_end})
#define RUN_NEAREST(it, i)      (&(const struct RunNearest){&(it)->checks[(it)->nearest[i].check], &(it)->nearest[i]})
#define RUN_PULL(it, i)         (&(const struct RunPull){(it)->settled, &(it)->pulls[i]})
#define RUN_LINE(it, i)         (&(const struct RunLine){(i) + 1, (it)->currents.line_a[i]})
#define PART_LINE(it, i)        (&(const struct PartLine){&(it)->parts[i], known_price(it, i)})
#define CUT_OPENED(it, i)       (&(const struct CutOpened){it, &(it)->opened[i]})
#define NUMBERED_CAUTION(it, i) (&(const struct NumberedCaution){(i) + 1, &(it)->cautions[i]})

static const struct PartPrice *known_price(const struct PartsList *list, int index)
{
    return list->prices != NULL && list->prices[index].known ? &list->prices[index] : NULL;
}

static const struct Check *worked(const struct Check *check)
{
    return check->step_count > 0 && check->steps != NULL ? check : NULL;
}

/* ---- values ---- */

#define WORD(list, member)    survey_word(WORDS_##list, (int)(member))
#define SO(condition, number) ((struct Quantity){.value = (number), .given = (condition)})

static const char *yes_no(bool yes)
{
    return yes ? "yes" : "no";
}

static struct Quantity in_thousandths(struct Quantity quantity)
{
    quantity.value *= 1000;
    return quantity;
}

static const char *result_word(enum CheckResult result)
{
    switch (result) {
    case CHECK_PASS: return "pass";
    case CHECK_FAIL: return "fail";
    case CHECK_NOT_DUE: return "not-due";
    }
    return "";
}

const char *plan_xml_verdict(enum Verdict verdict)
{
    switch (verdict) {
    case VERDICT_FAIL: return "fail";
    case VERDICT_OPEN: return "open";
    case VERDICT_PASS: return "pass";
    }
    return "";
}

static const char *pits_word(const struct Segment *segment)
{
    return segment->pits != PITS_NONE && survey_drawn(segment) ? WORD(PITS, segment->pits) : "";
}

static bool has_check(const struct PlanRun *run, const char *id, bool open)
{
    for (int i = 0; i < run->check_count; i++) {
        const struct Check *check = &run->checks[i];
        if (text_same(check->id, id) && (open ? check->open : check->result == CHECK_FAIL)) {
            return true;
        }
    }
    return false;
}

/* Each once, in the order of the runs: those that fail, or those that are open. */
static const char *check_ids(struct Arena *arena, const struct Plan *plan, bool open)
{
    struct TextBuilder ids = text_builder(arena);
    for (int r = 0; r < plan->run_count; r++) {
        for (int i = 0; i < plan->runs[r].check_count; i++) {
            const struct Check *check = &plan->runs[r].checks[i];
            bool due = open ? check->open : check->result == CHECK_FAIL;
            for (int earlier = 0; due && earlier < r; earlier++) {
                due = !has_check(&plan->runs[earlier], check->id, open);
            }
            if (due) {
                text_print(&ids, "%s%s", ids.length > 0 ? " " : "", check->id);
            }
        }
    }
    return text_done(&ids);
}

static const struct Say *open_said(struct Arena *arena, const struct OpenQuestion *open)
{
    return say(arena, SAY_CHECK_OPEN, say_part(open->title), say_name(open->run),
               say_part(settles_said(arena, &open->settles)));
}

static const char *segment_name(const struct PlanWriter *w, int index)
{
    return index >= 0 && index < w->plan->segment_count ? w->plan->segments[index].surveyed->name : "";
}

static const char *pull_segment(const struct PlanWriter *w, const struct RunPull *it, int index)
{
    return segment_name(w, it->run->along[it->pull->first + index]);
}

static const char *governing_name(const struct PlanWriter *w, const struct PlanRun *run)
{
    return run->governing >= 0 && run->governing < run->rating_count
               ? segment_name(w, run->ratings[run->governing].segment)
               : "";
}

/* The stretches as the diagram numbers them: "7 8 9". */
static const char *stretch_numbers(struct Arena *arena, const struct Caution *caution)
{
    struct TextBuilder text = text_builder(arena);
    for (int i = 0; i < caution->stretch_count; i++) {
        text_print(&text, "%s%d", i > 0 ? " " : "", caution->stretches[i] + 1);
    }
    return text_done(&text);
}

static const char *number_shown(struct PlanWriter *w, double value)
{
    return shown_figure(w->arena, value);
}

static const char *integer_shown(struct PlanWriter *w, int value)
{
    return arena_print(w->arena, "%d", value);
}

static const char *yes_shown(struct PlanWriter *w, bool yes)
{
    (void)w;
    return yes_no(yes);
}

static const char *text_shown(struct PlanWriter *w, const char *text)
{
    (void)w;
    return text;
}

static const char *say_shown(struct PlanWriter *w, const struct Say *said)
{
    return words_said(w->arena, w->words, said);
}

/* The same, NULL where the value counts as not given. */
static const char *number_given(struct PlanWriter *w, double value)
{
    return value > 0 ? number_shown(w, value) : NULL;
}

static const char *integer_given(struct PlanWriter *w, int value)
{
    return value > 0 ? integer_shown(w, value) : NULL;
}

static const char *yes_given(struct PlanWriter *w, bool yes)
{
    return yes ? yes_shown(w, yes) : NULL;
}

static const char *text_given(struct PlanWriter *w, const char *text)
{
    (void)w;
    return text != NULL && *text != '\0' ? text : NULL;
}

static const char *say_given(struct PlanWriter *w, const struct Say *said)
{
    return text_given(w, say_shown(w, said));
}

static const char *quantity_given(struct PlanWriter *w, struct Quantity quantity)
{
    return quantity.given ? number_shown(w, quantity.value) : NULL;
}

#define value_text(value)                                                                                              \
    _Generic((value), double: number_shown, int: integer_shown, bool: yes_shown, const char *: text_shown,             \
        char *: text_shown, const struct Say *: say_shown)(w, value)
#define value_given(value)                                                                                             \
    _Generic((value), double: number_given, int: integer_given, bool: yes_given, const char *: text_given,             \
        char *: text_given, const struct Say *: say_given, struct Quantity: quantity_given)(w, value)

/* ---- the rows ---- */

enum PlanType {
#define TYPE(symbol, name, form, schema, meaning)   TYPE_##symbol,
#define VALUES(symbol, name, form, values, meaning) TYPE_##symbol,
#define WORDS_OF(symbol, name, list, meaning)       TYPE_##symbol,
#include "plan_types.inc"
#undef TYPE
#undef VALUES
#undef WORDS_OF
};

static const enum PlanForm forms[] = {
#define TYPE(symbol, name, form, schema, meaning)   FORM_##form,
#define VALUES(symbol, name, form, values, meaning) FORM_##form,
#define WORDS_OF(symbol, name, list, meaning)       FORM_TEXT,
#include "plan_types.inc"
};

static void put(struct PlanWriter *w, void *element, const char *name, enum PlanType type, const char *text)
{
    w->sink->attribute(w->document, element, name, forms[type], text);
}

static void put_given(struct PlanWriter *w, void *element, const char *name, enum PlanType type, const char *text)
{
    if (text != NULL) {
        put(w, element, name, type, text);
    }
}

static void announce(struct PlanWriter *w, void *element, const char *list)
{
    if (w->sink->announce != NULL && *list != '\0') {
        w->sink->announce(w->document, element, list);
    }
}

static void *begin(struct PlanWriter *w, void *parent, const char *name, const char *list, bool is_list)
{
    return is_list ? w->sink->open_list(w->document, parent, name) : w->sink->open(w->document, parent, name, list);
}

static bool wanted(const struct PlanWriter *w, const char *name)
{
    return w->sink->wants == NULL || w->sink->wants(name);
}

#define BEGINS(symbol, name, type, is_list)                                                                            \
    static void rows_##symbol(struct PlanWriter *w, void *e, const type *it);                                          \
    static void write_##symbol(struct PlanWriter *w, void *parent, const char *list, const type *it)                   \
    {                                                                                                                  \
        if (it != NULL && wanted(w, name)) {                                                                           \
            rows_##symbol(w, begin(w, parent, name, list, is_list), it);                                               \
        }                                                                                                              \
    }                                                                                                                  \
    static void rows_##symbol(struct PlanWriter *w, void *e, const type *it)                                           \
    {
#define ELEMENT(symbol, name, type, meaning) BEGINS(symbol, name, type, false)
#define LIST(symbol, name, type, meaning)    BEGINS(symbol, name, type, true)
#define ROOT(symbol, name, type, meaning)                                                                              \
    static void rows_##symbol(struct PlanWriter *w, void *e, const type *it)                                           \
    {
#define GROUP(symbol, type)                                                                                            \
    static void group_##symbol(struct PlanWriter *w, void *e, const type *it)                                          \
    {
#define END                                }
#define ALWAYS(name, type, value, meaning) put(w, e, name, TYPE_##type, value_text(value));
#define GIVEN(name, type, value, meaning)  put_given(w, e, name, TYPE_##type, value_given(value));
#define LATER(name, type, meaning)
#define TEXT(value, meaning) w->sink->text(w->document, e, value_text(value));
#define ONE(symbol, item)    write_##symbol(w, e, NULL, item);
#define MAYBE(symbol, item)  write_##symbol(w, e, NULL, item);
#define PART(symbol, item)   group_##symbol(w, e, item);
#define EACH(symbol, list, count, item)                                                                                \
    announce(w, e, list);                                                                                              \
    for (int i = 0; i < (count); i++) {                                                                                \
        write_##symbol(w, e, list, item);                                                                              \
    }
#define SOME(symbol, list, count, item) EACH(symbol, list, count, item)
#define LINES(name, list, count, value, meaning)                                                                       \
    announce(w, e, list);                                                                                              \
    for (int i = 0; i < (count); i++) {                                                                                \
        w->sink->line(w->document, e, name, list, value_text(value));                                                  \
    }
#define SOME_LINES(name, list, count, value, meaning) LINES(name, list, count, value, meaning)
#define WHERE(condition, meaning)                     if (condition) {
#define END_WHERE                                     }
#define EITHER(condition, meaning)                    if (condition) {
#define OR(meaning)                                                                                                    \
    }                                                                                                                  \
    else                                                                                                               \
    {
#define END_EITHER }
#include "plan_elements.inc"

void plan_write(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts, const struct Words *words,
                const char *mark, const struct PlanSink *sink, void *document, void *root)
{
    static const struct PartsList nothing;
    struct PlanWriter writer = {.arena = arena,
                                .words = words,
                                .plan = plan,
                                .list = parts != NULL ? parts : &nothing,
                                .mark = mark,
                                .sink = sink,
                                .document = document};
    rows_plan(&writer, root, plan);
}
