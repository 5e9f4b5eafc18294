/* A page must be inert: what it holds is known by a list of what is allowed, not of what is feared. It runs nothing,
 * asks for nothing, and leads nowhere by itself. */
#include "template_tree.h"

#include <string.h>
#include <strings.h>

static const char *const html_elements[] = {
    "html",    "head",  "meta",     "title", "style", "body",    "header",     "main",    "footer",  "nav",   "section",
    "article", "aside", "div",      "p",     "h1",    "h2",      "h3",         "h4",      "h5",      "h6",    "ul",
    "ol",      "li",    "dl",       "dt",    "dd",    "table",   "caption",    "thead",   "tbody",   "tfoot", "tr",
    "th",      "td",    "colgroup", "col",   "span",  "strong",  "em",         "b",       "i",       "small", "sub",
    "sup",     "br",    "hr",       "a",     "img",   "figure",  "figcaption", "details", "summary", "abbr",  "code",
    "mark",    "time",  "del",      "ins",   "wbr",   "address", "blockquote", "q",
};
static const char *const svg_elements[] = {
    "svg",      "g",      "title",    "desc",           "path",           "rect",  "circle",
    "ellipse",  "line",   "polyline", "polygon",        "text",           "tspan", "defs",
    "clipPath", "marker", "pattern",  "linearGradient", "radialGradient", "stop",  "use",
    "symbol",
};

static bool in_list(const char *word, const char *const *list, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        if (strcmp(word, list[i]) == 0) {
            return true;
        }
    }
    return false;
}

bool page_takes_element(const char *name, bool svg)
{
    return svg ? in_list(name, svg_elements, sizeof svg_elements / sizeof svg_elements[0])
               : in_list(name, html_elements, sizeof html_elements / sizeof html_elements[0]);
}

static const char *find_fold(const char *text, size_t length, const char *word)
{
    const size_t size = strlen(word);
    for (size_t at = 0; at + size <= length; at++) {
        if (strncasecmp(text + at, word, size) == 0) {
            return text + at;
        }
    }
    return NULL;
}

/* The word of a style that fetches something or could hide one that does; NULL when there is none. */
static const char *style_fault(const char *text, size_t length, const char **where)
{
    static const char *const words[] = {"@import", "@font-face", "image-set", "expression", "\\", "<"};
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++) {
        *where = find_fold(text, length, words[i]);
        if (*where != NULL) {
            return words[i];
        }
    }
    for (const char *at = find_fold(text, length, "url"); at != NULL;
         at = find_fold(at + 3, length - (size_t)(at + 3 - text), "url")) {
        const char *inside = at + 3;
        if (*inside == '(' && inside[1] != '#') {
            *where = at;
            return "url(";
        }
    }
    return NULL;
}

bool template_style_vet(const char *text, size_t length, struct TemplateFault *fault)
{
    const char *where = NULL;
    const char *word = style_fault(text, length, &where);
    if (word == NULL) {
        return true;
    }
    fault->code = MSG_TEMPLATE_STYLE;
    fault->detail = word;
    fault->line = 1;
    for (const char *at = text; at < where; at++) {
        fault->line += *at == '\n';
    }
    return false;
}

static bool begins(const char *text, const char *word)
{
    return strncasecmp(text, word, strlen(word)) == 0;
}

/* Where an address may lead: within the page; for a link that a reader follows also out of it. */
static bool address_allowed(const char *element, const char *value)
{
    if (value[0] == '#') {
        return true;
    }
    if (strcmp(element, "a") == 0) {
        return begins(value, "https://") || begins(value, "http://") || begins(value, "mailto:") ||
               begins(value, "tel:");
    }
    return strcmp(element, "img") == 0 && (begins(value, "data:image/png") || begins(value, "data:image/jpeg"));
}

static bool attribute_allowed(const char *element, const char *name, const char *value)
{
    static const char *const addresses[] = {"href",   "src",  "action",     "formaction", "poster",   "data",
                                            "srcset", "ping", "background", "cite",       "longdesc", "manifest"};
    static const char *const plain_words[] = {"title", "alt",  "id",    "class",  "content",
                                              "lang",  "name", "scope", "headers"};
    const char *where = NULL;
    if (begins(name, "on") || begins(name, "form")) {
        return false;
    }
    if (strcmp(name, "http-equiv") == 0) {
        return strcasecmp(value, "Content-Type") == 0;
    }
    if (in_list(name, addresses, sizeof addresses / sizeof addresses[0])) {
        return address_allowed(element, value);
    }
    if (begins(name, "aria-") || in_list(name, plain_words, sizeof plain_words / sizeof plain_words[0])) {
        return true;
    }
    return style_fault(value, strlen(value), &where) == NULL;
}

static const char *as_text(const xmlChar *text)
{
    return (const char *)text;
}

static bool refuse(struct Arena *arena, struct TemplateFault *fault, const char *element, const xmlAttr *attribute)
{
    fault->code = MSG_TEMPLATE_PAGE;
    fault->detail = attribute == NULL ? arena_print(arena, "<%s>", element)
                                      : arena_print(arena, "<%s %s=\"...\">", element, as_text(attribute->name));
    return false;
}

static bool element_allowed(struct Arena *arena, const xmlNode *node, struct TemplateFault *fault)
{
    const char *name = as_text(node->name);
    const bool svg = node->ns != NULL && node->ns->href != NULL && strcmp(as_text(node->ns->href), VET_SVG) == 0;
    if ((node->ns != NULL && !svg) || !page_takes_element(name, svg)) {
        return refuse(arena, fault, name, NULL);
    }
    for (const xmlAttr *attribute = node->properties; attribute != NULL; attribute = attribute->next) {
        const xmlNode *value = attribute->children;
        const char *text = value == NULL || value->content == NULL ? "" : as_text(value->content);
        if ((value != NULL && value->next != NULL) || !attribute_allowed(name, as_text(attribute->name), text)) {
            return refuse(arena, fault, name, attribute);
        }
    }
    return true;
}

bool page_vet(struct Arena *arena, const xmlNode *root, struct TemplateFault *fault)
{
    const xmlNode *node = root;
    while (node != NULL) {
        if (node->type == XML_ELEMENT_NODE) {
            if (!element_allowed(arena, node, fault)) {
                return false;
            }
        } else if (node->type == XML_TEXT_NODE || node->type == XML_CDATA_SECTION_NODE) {
            const char *parent = node->parent == NULL || node->parent->name == NULL ? "" : as_text(node->parent->name);
            /* libxslt marks text that is not to be escaped by its name */
            const bool raw = node->name != NULL && strcmp(as_text(node->name), "textnoenc") == 0;
            const char *text = node->content == NULL ? "" : as_text(node->content);
            if (raw || (strcmp(parent, "style") == 0 && !template_style_vet(text, strlen(text), fault))) {
                fault->line = 0; /* of the page, which nobody has seen */
                return raw ? refuse(arena, fault, "disable-output-escaping", NULL) : false;
            }
        } else if (node->type != XML_COMMENT_NODE && node->type != XML_DTD_NODE) {
            return refuse(arena, fault, "?", NULL);
        }
        if (node->type == XML_ELEMENT_NODE && node->children != NULL) {
            node = node->children;
            continue;
        }
        while (node != NULL && node != root && node->next == NULL) {
            node = node->parent;
        }
        node = node == NULL || node == root ? NULL : node->next;
    }
    return true;
}
