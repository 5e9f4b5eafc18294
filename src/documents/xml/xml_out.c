/* The only file that builds trees by libxml2 to write them. What is dangerous in that is kept here: functions that take
 * their content as markup are not used, and since a failed allocation can leave an element without name or a text
 * without content and still be saved, every node is looked at as it is made. */
#include "late_xml.h"
#include "xml_private.h"

#include "documents/documents.h"
#include "documents/shown_private.h"

#include <string.h>

struct XmlOut {
    struct Arena *arena;
    struct Words words;
    xmlDocPtr tree;
    bool failed;
    bool shown;                         /* what people see of a text is what is written */
    size_t size;                        /* of what was written so far, about */
    xmlStructuredErrorFunc old_handler; /* put back at the end: the handler is the process's, not ours */
    void *old_context;
};

/* xmlChar is unsigned char; these two are the only casts. */
static const xmlChar *to_xml(const char *text)
{
    return (const xmlChar *)text;
}

static struct XmlElement *as_element(xmlNodePtr node)
{
    return (struct XmlElement *)(void *)node;
}

static xmlNodePtr as_node(struct XmlElement *element)
{
    return (xmlNodePtr)(void *)element;
}

/* libxml2 would write its own complaints to the terminal; ours is data == NULL. */
#if LIBXML_VERSION >= 21200
static void stay_quiet(void *context, const xmlError *error)
#else
static void stay_quiet(void *context, xmlErrorPtr error)
#endif
{
    (void)context;
    (void)error;
}

static bool named(const xmlChar *found, const char *wanted)
{
    return found != NULL && xmlStrEqual(found, to_xml(wanted));
}

struct XmlOut *xml_out_new(struct Arena *arena, const char *root)
{
    struct XmlOut *out = documents_begin() ? arena_alloc(arena, sizeof *out) : NULL;
    if (out == NULL) {
        return NULL;
    }
    out->arena = arena;
    out->words = (struct Words){.language = LANGUAGE_ENGLISH, .medium = MEDIUM_PLAIN};
    out->old_handler = xmlStructuredError;
    out->old_context = xmlStructuredErrorContext;
    xmlSetStructuredErrorFunc(NULL, stay_quiet);
    out->tree = xmlNewDoc(to_xml("1.0"));
    if (out->tree != NULL) {
        out->tree->dict = xmlDictCreate();                /* the same few names again and again: each is kept once */
        out->tree->encoding = xmlStrdup(to_xml("UTF-8")); /* else what is no ASCII is written by numbers */
    }
    xmlNodePtr node = out->tree == NULL ? NULL : xmlNewDocNode(out->tree, NULL, to_xml(root), NULL);
    if (node == NULL || !named(node->name, root) || out->tree->dict == NULL || out->tree->encoding == NULL) {
        out->failed = true;
        xmlFreeNode(node);
        return out;
    }
    xmlDocSetRootElement(out->tree, node);
    return out;
}

struct XmlElement *xml_root(struct XmlOut *out)
{
    return out == NULL || out->tree == NULL ? NULL : as_element(xmlDocGetRootElement(out->tree));
}

struct Arena *xml_out_arena(const struct XmlOut *out)
{
    return out == NULL ? NULL : out->arena;
}

void xml_remark(struct XmlOut *out, const char *words)
{
    if (out == NULL) {
        return;
    }
    xmlNodePtr root = out->tree == NULL ? NULL : xmlDocGetRootElement(out->tree);
    xmlNodePtr remark = root == NULL ? NULL : xmlNewDocComment(out->tree, to_xml(words));
    if (remark == NULL || !named(remark->content, words) || xmlAddPrevSibling(root, remark) == NULL) {
        xmlFreeNode(remark);
        out->failed = true;
    }
}

struct XmlElement *xml_child(struct XmlOut *out, struct XmlElement *parent, const char *name)
{
    if (out == NULL) {
        return NULL;
    }
    if (parent == NULL || out->failed) {
        out->failed = true;
        return NULL;
    }
    xmlNodePtr node = xmlNewTextChild(as_node(parent), NULL, to_xml(name), NULL);
    if (node == NULL || !named(node->name, name)) {
        out->failed = true;
        return NULL;
    }
    out->size += 2 * strlen(name) + sizeof "<></>";
    return as_element(node);
}

void xml_space(struct XmlOut *out, struct XmlElement *element, const char *uri)
{
    if (out == NULL) {
        return;
    }
    xmlNsPtr space = out->failed || element == NULL ? NULL : xmlNewNs(as_node(element), to_xml(uri), NULL);
    if (space == NULL || !named(space->href, uri)) {
        out->failed = true;
        return;
    }
    xmlSetNs(as_node(element), space);
}

/* XML has no character for some, and people see none of others. */
static const char *written(const struct XmlOut *out, const char *text)
{
    return out->shown ? shown_text(out->arena, text) : shown_clean(out->arena, text);
}

void xml_attribute(struct XmlOut *out, struct XmlElement *element, const char *name, const char *value)
{
    if (out == NULL || out->failed || element == NULL || value == NULL) {
        if (out != NULL) {
            out->failed = true;
        }
        return;
    }
    const char *clean = written(out, value);
    out->size += strlen(name) + strlen(clean) + sizeof " =\"\"";
    xmlAttrPtr attribute = xmlNewProp(as_node(element), to_xml(name), to_xml(clean));
    if (attribute == NULL || !named(attribute->name, name) ||
        (*clean != '\0' && (attribute->children == NULL || !named(attribute->children->content, clean)))) {
        out->failed = true;
    }
}

void xml_attribute_if(struct XmlOut *out, struct XmlElement *element, const char *name, const char *value)
{
    if (value != NULL && *value != '\0') {
        xml_attribute(out, element, name, value);
    }
}

void xml_number(struct XmlOut *out, struct XmlElement *element, const char *name, double value)
{
    if (out != NULL) {
        xml_attribute(out, element, name, shown_figure(out->arena, value));
    }
}

void xml_integer(struct XmlOut *out, struct XmlElement *element, const char *name, int value)
{
    if (out != NULL) {
        xml_attribute(out, element, name, arena_print(out->arena, "%d", value));
    }
}

void xml_text(struct XmlOut *out, struct XmlElement *element, const char *text)
{
    if (out == NULL || out->failed || element == NULL || text == NULL) {
        if (out != NULL) {
            out->failed = true;
        }
        return;
    }
    if (*text == '\0') {
        return;
    }
    const char *clean = written(out, text);
    out->size += strlen(clean);
    xmlNodePtr node = xmlNewDocText(out->tree, to_xml(clean));
    if (node == NULL || !named(node->content, clean) || xmlAddChild(as_node(element), node) == NULL) {
        out->failed = true;
        xmlFreeNode(node);
    }
}

void xml_out_show(struct XmlOut *out)
{
    if (out != NULL) {
        out->shown = true;
    }
}

size_t xml_out_size(const struct XmlOut *out)
{
    return out == NULL ? 0 : out->size;
}

void xml_out_speak(struct XmlOut *out, const struct Words *words)
{
    if (out != NULL) {
        out->words = *words;
    }
}

const struct Words *xml_out_words(const struct XmlOut *out)
{
    return &out->words;
}

const char *xml_said(const struct XmlOut *out, const struct Say *said)
{
    return out == NULL ? "" : words_said(out->arena, &out->words, said);
}

void xml_say(struct XmlOut *out, struct XmlElement *element, const struct Say *said)
{
    xml_text(out, element, xml_said(out, said));
}

void xml_say_attribute(struct XmlOut *out, struct XmlElement *element, const char *name, const struct Say *said)
{
    xml_attribute(out, element, name, xml_said(out, said));
}

/* Saving can be cut short without a word when memory fails under it: the closing tag tells. */
static bool ends_well(const struct XmlOut *out, const xmlNode *node, const xmlChar *bytes, size_t length)
{
    const char *close = arena_print(out->arena, node->children == NULL ? "/>" : "</%s>", (const char *)node->name);
    const size_t close_length = strlen(close);
    return bytes != NULL && close_length > 0 && length > close_length &&
           memcmp(bytes + length - close_length, close, close_length) == 0;
}

static struct Bytes kept(const struct XmlOut *out, const xmlChar *bytes, size_t length)
{
    const char *copy = arena_text(out->arena, (const char *)bytes, length);
    return arena_failed(out->arena) ? (struct Bytes){NULL, 0} : (struct Bytes){copy, length};
}

struct Bytes xml_saved(struct XmlOut *out, struct XmlElement *element)
{
    struct Bytes result = {NULL, 0};
    const bool whole = out != NULL && !out->failed && element != NULL && !arena_failed(out->arena);
    xmlOutputBufferPtr buffer = whole ? xmlAllocOutputBuffer(NULL) : NULL;
    if (buffer == NULL) {
        return result;
    }
    xmlNodeDumpOutput(buffer, out->tree, as_node(element), 0, 0, "UTF-8");
    if (buffer->error == 0 && xmlOutputBufferFlush(buffer) >= 0) {
        const xmlChar *bytes = xmlOutputBufferGetContent(buffer);
        const size_t length = xmlOutputBufferGetSize(buffer);
        if (ends_well(out, as_node(element), bytes, length)) {
            result = kept(out, bytes, length);
        }
    }
    xmlOutputBufferClose(buffer);
    return result;
}

/* Nothing is built any more: whoever had the process's handler has it again. */
static void leave(struct XmlOut *out)
{
    out->tree = NULL;
    xmlSetStructuredErrorFunc(out->old_context, out->old_handler);
}

void *xml_out_tree(struct XmlOut *out)
{
    if (out == NULL) {
        return NULL;
    }
    xmlDocPtr tree = out->tree;
    if (out->failed || arena_failed(out->arena)) {
        xmlFreeDoc(tree);
        tree = NULL;
    }
    leave(out);
    return tree;
}

void xml_out_drop(struct XmlOut *out)
{
    if (out != NULL) {
        xmlFreeDoc(out->tree);
        leave(out);
    }
}

struct Bytes xml_out_finish(struct XmlOut *out)
{
    struct Bytes result = {NULL, 0};
    if (out == NULL) {
        return result;
    }
    xmlChar *bytes = NULL;
    int length = 0;
    if (!out->failed && !arena_failed(out->arena)) {
        xmlDocDumpFormatMemoryEnc(out->tree, &bytes, &length, "UTF-8", 1);
        if (length > 0 && ends_well(out, xmlDocGetRootElement(out->tree), bytes, (size_t)length - 1)) {
            result = kept(out, bytes, (size_t)length); /* with its last line's end */
        }
    }
    if (bytes != NULL) {
        xmlFree(bytes);
    }
    xmlFreeDoc(out->tree);
    leave(out);
    return result;
}
