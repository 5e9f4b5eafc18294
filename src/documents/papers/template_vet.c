/* A template decides how a plan is printed and nothing else. What it could read, fetch, write or run with is refused
 * before it is compiled, so that it is reported by file and line; what gets past this is refused again when it runs. */
#include "template_tree.h"

#include <string.h>

static const char *as_text(const xmlChar *text)
{
    return (const char *)text;
}

/* `detail` must outlive the tree. */
static bool refuse(struct TemplateFault *fault, const xmlNode *node, enum DiagCode code, const char *detail)
{
    fault->line = node == NULL ? 0 : (int)xmlGetLineNo(node);
    fault->code = code;
    fault->detail = detail;
    return false;
}

static bool is_xslt(const xmlNode *node)
{
    return node->ns != NULL && node->ns->href != NULL && strcmp(as_text(node->ns->href), VET_XSLT) == 0;
}

/* A call of document(), with or without blanks before the bracket. */
static bool calls_document(const char *expression)
{
    for (const char *at = strstr(expression, "document"); at != NULL; at = strstr(at + 8, "document")) {
        const char *after = at + 8;
        while (*after == ' ' || *after == '\t' || *after == '\n' || *after == '\r') {
            after++;
        }
        if (*after == '(') {
            return true;
        }
    }
    return false;
}

static bool attributes_allowed(struct Arena *arena, const xmlNode *node, struct TemplateFault *fault)
{
    for (const xmlAttr *attribute = node->properties; attribute != NULL; attribute = attribute->next) {
        const char *name = as_text(attribute->name);
        const xmlNode *value = attribute->children;
        const char *text = value == NULL || value->content == NULL ? "" : as_text(value->content);
        if (strcmp(name, "extension-element-prefixes") == 0 || strcmp(name, "use-attribute-sets") == 0) {
            return refuse(fault, node, MSG_TEMPLATE_REFUSED, arena_print(arena, "%s", name));
        }
        if (strcmp(name, "disable-output-escaping") == 0 && strcmp(text, "yes") == 0) {
            return refuse(fault, node, MSG_TEMPLATE_REFUSED, arena_print(arena, "%s", name));
        }
        if (calls_document(text)) {
            return refuse(fault, node, MSG_TEMPLATE_REFUSED, "document()");
        }
    }
    return true;
}

/* XSLT 1.0 but for import; what is of a later version would be passed over in silence. */
static bool is_known_instruction(const char *name)
{
    static const char *const known[] = {
        "stylesheet",    "transform",      "include",        "template", "apply-templates",
        "call-template", "param",          "with-param",     "variable", "value-of",
        "copy",          "copy-of",        "for-each",       "if",       "choose",
        "when",          "otherwise",      "text",           "element",  "attribute",
        "comment",       "number",         "sort",           "output",   "key",
        "strip-space",   "preserve-space", "decimal-format", "message",  "fallback",
        "attribute-set", "namespace-alias"};
    for (size_t i = 0; i < sizeof known / sizeof known[0]; i++) {
        if (strcmp(name, known[i]) == 0) {
            return true;
        }
    }
    return false;
}

static bool element_allowed(struct Arena *arena, const xmlNode *node, struct TemplateFault *fault)
{
    const char *name = as_text(node->name);
    if (is_xslt(node)) {
        if (strcmp(name, "import") == 0 || strcmp(name, "document") == 0 || strcmp(name, "result-document") == 0) {
            return refuse(fault, node, MSG_TEMPLATE_REFUSED, arena_print(arena, "xsl:%s", name));
        }
        if (!is_known_instruction(name)) {
            return refuse(fault, node, MSG_TEMPLATE_XSLT,
                          arena_print(arena, "xsl:%s %s", name, diag_phrase(PHRASE_NOT_TAKEN)));
        }
        return attributes_allowed(arena, node, fault);
    }
    const bool svg = node->ns != NULL && node->ns->href != NULL && strcmp(as_text(node->ns->href), VET_SVG) == 0;
    if ((node->ns != NULL && !svg) || page_refuses_element(name)) { /* a foreign element may be an extension's */
        const char *prefix = node->ns == NULL || node->ns->prefix == NULL ? "" : as_text(node->ns->prefix);
        return refuse(fault, node, MSG_TEMPLATE_REFUSED,
                      arena_print(arena, "<%s%s%s>", prefix, *prefix == '\0' ? "" : ":", name));
    }
    return attributes_allowed(arena, node, fault);
}

bool template_vet(struct Arena *arena, xmlDoc *tree, const char *file, struct TemplateFault *fault)
{
    fault->file = file;
    const xmlNode *root = xmlDocGetRootElement(tree);
    if (tree->intSubset != NULL) {
        return refuse(fault, NULL, MSG_TEMPLATE_DOCTYPE, NULL);
    }
    if (root == NULL || !is_xslt(root) ||
        (strcmp(as_text(root->name), "stylesheet") != 0 && strcmp(as_text(root->name), "transform") != 0)) {
        return refuse(fault, root, MSG_TEMPLATE_NOT_XSLT, NULL);
    }
    for (const xmlNode *node = root; node != NULL;) {
        if (node->type == XML_ELEMENT_NODE && !element_allowed(arena, node, fault)) {
            return false;
        }
        if (node->type == XML_ELEMENT_NODE && node->children != NULL) {
            node = node->children;
            continue;
        }
        while (node != root && node->next == NULL) {
            node = node->parent;
        }
        node = node == root ? NULL : node->next;
    }
    fault->file = "";
    return true;
}
