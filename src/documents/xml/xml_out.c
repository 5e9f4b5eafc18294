/* Documents of elements, attributes and text. A file is written as it is built: nothing is kept of it but its bytes and
 * which elements are open. What templates read is built as a tree (xml_tree.c). */
#include "xml_tree_private.h"

#include "documents/shown_private.h"

#include <string.h>

struct XmlOut {
    struct Arena *arena;
    struct Words words;
    struct XmlTree *tree;         /* NULL: it is a file */
    struct XmlElement *root;      /* of a tree it is the library's */
    struct XmlElement *innermost; /* of those that are open in a file */
    struct TextBuilder bytes;     /* of a file */
    bool indented, shown, failed; /* shown: what people see of a text is what is written */
    size_t size;                  /* of a tree, about */
};

/* In a file. */
struct XmlElement {
    struct XmlElement *parent; /* NULL of the outermost */
    const char *name;
    int depth;
    bool in_tag, closed;
    bool has_children;
    bool in_line; /* text stands in it or around it, where a line break would be seen */
};

/* Within the parent, which is the innermost. */
static struct XmlElement *open_element(struct XmlOut *out, struct XmlElement *parent, const char *name)
{
    struct XmlElement *element = arena_alloc(out->arena, sizeof *element);
    if (element == NULL) {
        return NULL;
    }
    *element = (struct XmlElement){.parent = parent,
                                   .name = name,
                                   .depth = parent == NULL ? 0 : parent->depth + 1,
                                   .in_tag = true,
                                   .in_line = !out->indented || (parent != NULL && parent->in_line)};
    text_add_char(&out->bytes, '<');
    text_add(&out->bytes, name);
    out->innermost = element;
    return element;
}

static struct XmlOut *begin(struct Arena *arena)
{
    struct XmlOut *out = arena_alloc(arena, sizeof *out);
    if (out != NULL) {
        *out = (struct XmlOut){.arena = arena, .words = {.language = LANGUAGE_ENGLISH, .medium = MEDIUM_PLAIN}};
    }
    return out;
}

static struct XmlOut *begin_file(struct Arena *arena, const char *root, const char *before, bool indented)
{
    struct XmlOut *out = begin(arena);
    if (out != NULL) {
        out->bytes = text_builder(arena);
        out->indented = indented;
        text_add(&out->bytes, before);
        out->root = open_element(out, NULL, root);
        out->failed = out->root == NULL;
    }
    return out;
}

struct XmlOut *xml_out_new(struct Arena *arena, const char *root, const char *remark)
{
    static const char declared[] = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
    return begin_file(arena, root, remark == NULL ? declared : arena_print(arena, "%s<!--%s-->\n", declared, remark),
                      true);
}

struct XmlOut *xml_out_new_piece(struct Arena *arena, const char *root)
{
    return begin_file(arena, root, "", false);
}

struct XmlOut *xml_out_new_tree(struct Arena *arena, const char *root)
{
    struct XmlOut *out = begin(arena);
    if (out != NULL) {
        out->tree = xml_tree_new(arena);
        out->root = out->tree == NULL ? NULL : xml_tree_root(out->tree, root);
        out->failed = out->root == NULL;
    }
    return out;
}

struct XmlElement *xml_root(struct XmlOut *out)
{
    return out == NULL ? NULL : out->root;
}

struct Arena *xml_out_arena(const struct XmlOut *out)
{
    return out == NULL ? NULL : out->arena;
}

static void break_line(struct XmlOut *out, int depth)
{
    text_add_char(&out->bytes, '\n');
    for (int i = 0; i < depth; i++) {
        text_add_bytes(&out->bytes, "  ", 2);
    }
}

static void close_innermost(struct XmlOut *out)
{
    struct XmlElement *element = out->innermost;
    if (element->in_tag) {
        text_add_bytes(&out->bytes, "/>", 2);
    } else {
        if (element->has_children && !element->in_line) {
            break_line(out, element->depth);
        }
        text_add_bytes(&out->bytes, "</", 2);
        text_add(&out->bytes, element->name);
        text_add_char(&out->bytes, '>');
    }
    element->closed = true;
    out->innermost = element->parent;
}

/* Whatever is open within it ends. */
static void go_on_in(struct XmlOut *out, struct XmlElement *element)
{
    while (out->innermost != element) {
        close_innermost(out);
    }
    if (element->in_tag) {
        text_add_char(&out->bytes, '>');
        element->in_tag = false;
    }
}

static struct XmlElement *child_in_file(struct XmlOut *out, struct XmlElement *parent, const char *name)
{
    if (parent->closed) {
        return NULL;
    }
    go_on_in(out, parent);
    parent->has_children = true;
    if (!parent->in_line) {
        break_line(out, parent->depth + 1);
    }
    return open_element(out, parent, name);
}

struct XmlElement *xml_child(struct XmlOut *out, struct XmlElement *parent, const char *name)
{
    if (out == NULL) {
        return NULL;
    }
    struct XmlElement *child = parent == NULL || out->failed ? NULL
                               : out->tree != NULL           ? xml_tree_child(parent, name)
                                                             : child_in_file(out, parent, name);
    out->failed = child == NULL;
    out->size += 2 * strlen(name) + sizeof "<></>";
    return child;
}

void xml_space(struct XmlOut *out, struct XmlElement *element, const char *uri)
{
    xml_attribute(out, element, "xmlns", uri);
}

static const char *escaped(char character, bool in_value)
{
    switch (character) {
    case '<': return "&lt;";
    case '>': return "&gt;";
    case '&': return "&amp;";
    case '\r': return "&#13;";
    case '"': return in_value ? "&quot;" : NULL;
    case '\n': return in_value ? "&#10;" : NULL;
    case '\t': return in_value ? "&#9;" : NULL;
    default: return NULL;
    }
}

static void add_escaped(struct TextBuilder *to, const char *text, bool in_value)
{
    const char *from = text;
    for (const char *at = text; *at != '\0'; at++) {
        const char *entity = *at > '>' ? NULL : escaped(*at, in_value);
        if (entity != NULL) {
            text_add_bytes(to, from, (size_t)(at - from));
            text_add(to, entity);
            from = at + 1;
        }
    }
    text_add(to, from);
}

static bool add_attribute(struct XmlOut *out, const struct XmlElement *element, const char *name, const char *value)
{
    if (!element->in_tag || element != out->innermost) {
        return false;
    }
    text_add_char(&out->bytes, ' ');
    text_add(&out->bytes, name);
    text_add_bytes(&out->bytes, "=\"", 2);
    add_escaped(&out->bytes, value, true);
    text_add_char(&out->bytes, '"');
    return true;
}

/* Text beside children in lines of their own would have to be known before them. */
static bool add_text(struct XmlOut *out, struct XmlElement *element, const char *text)
{
    if (element->closed || (element->has_children && !element->in_line)) {
        return false;
    }
    go_on_in(out, element);
    element->in_line = true;
    add_escaped(&out->bytes, text, false);
    return true;
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
    out->failed =
        !(out->tree != NULL ? xml_tree_attribute(element, name, clean) : add_attribute(out, element, name, clean));
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
    out->failed = !(out->tree != NULL ? xml_tree_text(out->tree, element, clean) : add_text(out, element, clean));
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

void *xml_out_tree(struct XmlOut *out)
{
    return out == NULL || out->tree == NULL ? NULL : xml_tree_end(out->tree, !out->failed && !arena_failed(out->arena));
}

struct Bytes xml_out_finish(struct XmlOut *out)
{
    if (out == NULL || out->failed) {
        return (struct Bytes){NULL, 0};
    }
    while (out->innermost != NULL) {
        close_innermost(out);
    }
    if (out->indented) {
        text_add_char(&out->bytes, '\n');
    }
    const char *text = text_done(&out->bytes);
    return (struct Bytes){arena_failed(out->arena) ? NULL : text, out->bytes.length};
}
