/* <labels>: headings and labels, for a template to find by name. */
#include "papers_private.h"

#include <string.h>

static const struct Label {
    enum Saying id;
    const char *name;
} labels[] = {
#define WORD(id, text) {(id), #id},
#include "words/en/labels.inc"
#undef WORD
};

/* "two-ends" of "SAY_LABEL_TWO_ENDS" */
static const char *label_name(struct Arena *arena, const char *id)
{
    struct TextBuilder name = text_builder(arena);
    for (const char *at = id + strlen("SAY_LABEL_"); *at != '\0'; at++) {
        text_add_char(&name, (char)(*at == '_' ? '-' : *at >= 'A' && *at <= 'Z' ? *at - 'A' + 'a' : *at));
    }
    return text_done(&name);
}

static void add_label(struct XmlOut *out, struct XmlElement *list, const char *name, const char *text)
{
    struct XmlElement *label = xml_child(out, list, "label");
    xml_attribute(out, label, "name", name);
    xml_text(out, label, text);
}

/* Which text governs stands on a paper in both languages. */
static const char *in_english(struct Arena *arena, enum Saying id)
{
    static const struct Words english = {.language = LANGUAGE_ENGLISH, .medium = MEDIUM_SIGNS};
    return arena == NULL ? "" : words_said(arena, &english, say(arena, id));
}

void papers_labels(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    struct Arena *arena = xml_out_arena(out);
    struct XmlElement *list = xml_child(out, papers, "labels");
    for (size_t i = 0; arena != NULL && i < sizeof labels / sizeof labels[0]; i++) {
        add_label(out, list, label_name(arena, labels[i].name), xml_said(out, say(arena, labels[i].id)));
    }
    add_label(out, list, "in-english", in_english(arena, SAY_LABEL_ENGLISH_GOVERNS));
    add_label(out, list, "warnings", xml_said(out, say(arena, SAY_WARNINGS_COUNTED, say_count(plan->warning_count))));
}
