/* The plan as JSON: the same list as plan.xml (plan_elements.inc). An element is an object and an attribute its member;
 * of an element that is there many times, its parent has a list; text is a member "text", or, where there is nothing
 * else, a string. */
#include "documents/documents.h"
#include "documents/xml/plan_write_private.h"

#include "json_out.h"

static void *open(void *document, void *parent, const char *name, const char *list)
{
    return json_object(document, list == NULL ? parent : json_list_of(document, parent, list), name);
}

static void *open_list(void *document, void *parent, const char *name)
{
    return json_list(document, parent, name);
}

static void announce(void *document, void *element, const char *list)
{
    json_list_of(document, element, list);
}

static void attribute(void *document, void *element, const char *name, enum PlanForm form, const char *text)
{
    switch (form) {
    case FORM_TEXT: json_text(document, element, name, text); break;
    case FORM_NUMBER: json_digits(document, element, name, text); break;
    case FORM_YES: json_yes(document, element, name, text != NULL && *text == 'y'); break;
    case FORM_TEXTS: json_words(document, element, name, text, false); break;
    case FORM_NUMBERS: json_words(document, element, name, text, true); break;
    }
}

static void text(void *document, void *element, const char *text)
{
    json_text_if(document, element, "text", text);
}

static void line(void *document, void *parent, const char *name, const char *list, const char *text)
{
    json_text(document, json_list_of(document, parent, list), name, text);
}

struct Bytes document_plan_json(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts)
{
    static const struct PlanSink to_json = {
        .open = open, .open_list = open_list, .announce = announce, .attribute = attribute, .text = text, .line = line};
    static const struct Words files = {.language = LANGUAGE_ENGLISH, .medium = MEDIUM_PLAIN};
    struct JsonOut *out = json_out_new(arena);
    if (out != NULL) {
        plan_write(arena, plan, parts, &files, document_mark(arena, plan, parts), &to_json, out, json_root(out));
    }
    return json_out_finish(out);
}
