/* The last step of a paper: the program, not the template, writes the page. It is always HTML in UTF-8, and before
 * anything else it forbids the browser to run or fetch anything (a Content-Security-Policy that allows styles within
 * the page and pictures within it). What such a policy cannot forbid is refused here. */
#include "template_tree.h"

#include <string.h>
#include <strings.h>

static const char policy[] = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; "
                             "form-action 'none'";

static const char *as_text(const xmlChar *text)
{
    return text == NULL ? "" : (const char *)text;
}

static const xmlChar *to_xml(const char *text)
{
    return (const xmlChar *)text;
}

/* A list of words in small letters. */
static bool is_one_of(const char *word, const char *const *list, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        if ((word[0] | 0x20) == list[i][0] && strcasecmp(word, list[i]) == 0) {
            return true;
        }
    }
    return false;
}

bool page_refuses_element(const char *name)
{
    /* The policy stops a script too: it is refused so that its author learns of it. The others send nothing under the
     * policy, yet a browser connects to where they point, which no policy forbids. */
    static const char *const refused[] = {"script", "link", "iframe", "form"};
    return is_one_of(name, refused, sizeof refused / sizeof refused[0]);
}

/* A handler on <html> would be made before the policy is read; a page that leads away by itself obeys no policy. */
static bool attribute_refused(const char *element, const xmlAttr *attribute)
{
    const char *name = as_text(attribute->name);
    return strncasecmp(name, "on", 2) == 0 || (strcasecmp(name, "http-equiv") == 0 && strcasecmp(element, "meta") == 0);
}

static bool refuse(struct Arena *arena, struct TemplateFault *fault, const char *element, const xmlAttr *attribute)
{
    fault->code = MSG_TEMPLATE_PAGE;
    fault->detail = attribute == NULL ? arena_print(arena, "<%s>", element)
                                      : arena_print(arena, "<%s %s=\"...\">", element, as_text(attribute->name));
    return false;
}

/* The text of a style is written as it stands, so it must not be able to end the style. */
static bool style_stays_one(const xmlNode *text)
{
    return text->parent == NULL || strcasecmp(as_text(text->parent->name), "style") != 0 ||
           strchr(as_text(text->content), '<') == NULL;
}

static bool node_allowed(struct Arena *arena, const xmlNode *node, struct TemplateFault *fault)
{
    if (node->type == XML_TEXT_NODE && !style_stays_one(node)) {
        fault->code = MSG_TEMPLATE_STYLE;
        fault->detail = "<";
        return false;
    }
    if (node->type != XML_ELEMENT_NODE) {
        return true;
    }
    if (page_refuses_element(as_text(node->name))) {
        return refuse(arena, fault, as_text(node->name), NULL);
    }
    for (const xmlAttr *attribute = node->properties; attribute != NULL; attribute = attribute->next) {
        if (attribute_refused(as_text(node->name), attribute)) {
            return refuse(arena, fault, as_text(node->name), attribute);
        }
    }
    return true;
}

/* Where a line may begin without a blank being seen: blocks, rows, and what an SVG drawing is made of. */
static bool begins_line(const xmlNode *node)
{
    static const char *const blocks[] = {
        "head",       "body",    "meta",       "title",   "style", "header",  "main",    "footer", "nav",
        "section",    "article", "aside",      "div",     "p",     "h1",      "h2",      "h3",     "h4",
        "h5",         "h6",      "ul",         "ol",      "li",    "dl",      "dt",      "dd",     "table",
        "tr",         "th",      "td",         "thead",   "tbody", "tfoot",   "caption", "col",    "figure",
        "figcaption", "hr",      "blockquote", "details", "g",     "path",    "rect",    "circle", "line",
        "polyline",   "polygon", "text",       "use",     "defs",  "pattern", "marker",  "symbol", "clipPath"};
    return node->type == XML_ELEMENT_NODE && node->parent != NULL && node->parent->type == XML_ELEMENT_NODE &&
           is_one_of(as_text(node->name), blocks, sizeof blocks / sizeof blocks[0]);
}

/* Text beside a block is part of a sentence: no line is broken there. */
static bool among_text(const xmlNode *node)
{
    return (node->prev != NULL && node->prev->type == XML_TEXT_NODE) ||
           (node->next != NULL && node->next->type == XML_TEXT_NODE);
}

static xmlNode *following(xmlNode *node, const xmlNode *root)
{
    if (node->type == XML_ELEMENT_NODE && node->children != NULL) {
        return node->children;
    }
    while (node != root && node->next == NULL) {
        node = node->parent;
    }
    return node == root ? NULL : node->next;
}

/* Plain text in place of CDATA and of text that was not to be escaped; comments and the like are left out, but for the
 * marks that page_whole() takes out. */
static xmlNode *tidy(xmlNode *node, const xmlNode *root, bool marked)
{
    if (node->type == XML_CDATA_SECTION_NODE || node->type == XML_TEXT_NODE) {
        node->type = XML_TEXT_NODE;
        node->name = xmlStringText;
        return following(node, root);
    }
    if (node->type == XML_ELEMENT_NODE || (marked && node->type == XML_COMMENT_NODE)) {
        return following(node, root);
    }
    xmlNode *next = node->next;
    xmlNode *parent = node->parent;
    xmlUnlinkNode(node);
    xmlFreeNode(node);
    if (next != NULL) {
        return next;
    }
    while (parent != root && parent->next == NULL) {
        parent = parent->parent;
    }
    return parent == root ? NULL : parent->next;
}

static bool break_lines(xmlNode *root)
{
    for (xmlNode *node = root; node != NULL; node = following(node, root)) {
        if (!among_text(node) && begins_line(node)) {
            xmlNode *line_break = xmlNewDocText(node->doc, to_xml("\n"));
            if (line_break == NULL || xmlAddPrevSibling(node, line_break) == NULL) {
                xmlFreeNode(line_break);
                return false;
            }
        }
    }
    return true;
}

static xmlNode *first_in(xmlNode *parent, const char *name)
{
    xmlNode *node = xmlNewDocNode(parent->doc, NULL, to_xml(name), NULL);
    if (node != NULL && parent->children != NULL) {
        return xmlAddPrevSibling(parent->children, node);
    }
    return node == NULL ? NULL : xmlAddChild(parent, node);
}

static bool add_meta(xmlNode *meta, const char *name, const char *content)
{
    return xmlNewProp(meta, to_xml("name"), to_xml(name)) != NULL &&
           xmlNewProp(meta, to_xml("content"), to_xml(content)) != NULL;
}

static bool add_policy(xmlNode *root, const char *mark)
{
    xmlNode *head = root->children;
    while (head != NULL && strcasecmp(as_text(head->name), "head") != 0) {
        head = head->next;
    }
    /* what stood before the head would be read before the policy */
    if (head != NULL) {
        xmlUnlinkNode(head);
        head = root->children == NULL ? xmlAddChild(root, head) : xmlAddPrevSibling(root->children, head);
    } else {
        head = first_in(root, "head");
    }
    xmlNode *sheet = head == NULL ? NULL : first_in(head, "meta");
    xmlNode *generator = sheet == NULL ? NULL : first_in(head, "meta");
    xmlNode *forbids = generator == NULL ? NULL : first_in(head, "meta");
    xmlNode *encoding = forbids == NULL ? NULL : first_in(head, "meta");
    return encoding != NULL && xmlNewProp(encoding, to_xml("charset"), to_xml("UTF-8")) != NULL &&
           xmlNewProp(forbids, to_xml("http-equiv"), to_xml("Content-Security-Policy")) != NULL &&
           xmlNewProp(forbids, to_xml("content"), to_xml(policy)) != NULL && add_meta(generator, "generator", "Wend") &&
           add_meta(sheet, "sheet-mark", mark);
}

/* A template of a firm's own may leave out what it likes; that the paper was made with it stands at its end, with a
 * style of its own that no style sheet can hide. */
static bool add_own(xmlNode *root, const char *own)
{
    xmlNode *said = xmlNewDocNode(root->doc, NULL, to_xml("p"), NULL);
    xmlNode *body = root->children;
    while (body != NULL && strcasecmp(as_text(body->name), "body") != 0) {
        body = body->next;
    }
    xmlNode *text = said == NULL ? NULL : xmlNewDocText(root->doc, to_xml(own));
    if (text == NULL || xmlAddChild(said, text) == NULL ||
        xmlNewProp(said, to_xml("style"),
                   to_xml("all:revert!important;display:block!important;visibility:visible!important")) == NULL ||
        xmlAddChild(body != NULL ? body : root, said) == NULL) {
        xmlFreeNode(said);
        return false;
    }
    return true;
}

static bool allowed(struct Arena *arena, xmlNode *root, bool marked, struct TemplateFault *fault)
{
    for (xmlNode *node = root; node != NULL; node = tidy(node, root, marked)) {
    }
    for (xmlNode *node = root; node != NULL; node = following(node, root)) {
        if (!node_allowed(arena, node, fault)) {
            return false;
        }
    }
    return true;
}

static struct Bytes dumped(struct Arena *arena, xmlNode *node, const char *before, const char *after)
{
    struct Bytes bytes = {NULL, 0};
    xmlOutputBufferPtr out = xmlAllocOutputBuffer(NULL);
    if (out == NULL) {
        return bytes;
    }
    xmlOutputBufferWriteString(out, before);
    htmlNodeDumpFormatOutput(out, node->doc, node, NULL, 0);
    xmlOutputBufferWriteString(out, after);
    if (out->error == 0 && xmlOutputBufferFlush(out) >= 0) {
        const size_t length = xmlOutputBufferGetSize(out);
        const char *text = arena_text(arena, as_text(xmlOutputBufferGetContent(out)), length);
        bytes = arena_failed(arena) ? bytes : (struct Bytes){text, length};
    }
    xmlOutputBufferClose(out);
    return bytes;
}

struct Bytes page_save(struct Arena *arena, xmlDocPtr page, const struct PageFacts *facts, struct TemplateFault *fault)
{
    const struct Bytes none = {NULL, 0};
    xmlNode *root = xmlDocGetRootElement(page);
    if (root == NULL || strcmp(as_text(root->name), "html") != 0) {
        fault->code = MSG_TEMPLATE_RUN;
        fault->detail = diag_phrase(PHRASE_NO_PAGE);
        return none;
    }
    if (!allowed(arena, root, facts->own == NULL, fault)) {
        return none;
    }
    fault->file = "";
    if (!add_policy(root, facts->mark) || (facts->own != NULL && !add_own(root, facts->own)) || !break_lines(root)) {
        return none;
    }
    page->type = XML_HTML_DOCUMENT_NODE; /* whatever the template asked for */
    return dumped(arena, root, "<!DOCTYPE html>\n", "\n");
}
