/* Reads the templates and puts them together, from memory: nothing is ever looked for on a disk. */
#include "template_tree.h"

#include <string.h>

enum { FILE_MOST_BYTES = 4 * 1024 * 1024 };

static const xmlChar *to_xml(const char *text)
{
    return (const xmlChar *)text;
}

const struct Template *template_find(const struct TemplateSet *set, const char *name)
{
    for (int i = 0; i < set->count; i++) {
        if (text_same(set->files[i].name, name)) {
            return &set->files[i];
        }
    }
    return NULL;
}

xmlDocPtr template_tree_read(struct Arena *arena, const struct Template *file, struct TemplateFault *fault)
{
    *fault = (struct TemplateFault){.file = file->name};
    xmlParserCtxtPtr parser = file->bytes.length > FILE_MOST_BYTES ? NULL : xmlNewParserCtxt();
    if (parser == NULL) {
        fault->file = "";
        return NULL;
    }
    xmlDocPtr tree = xmlCtxtReadMemory(parser, file->bytes.data, (int)file->bytes.length, file->name, "UTF-8",
                                       XML_PARSE_NONET | XML_PARSE_NOCDATA);
    if (tree == NULL) {
        const char *message = parser->lastError.message;
        fault->line = parser->lastError.line;
        fault->code = MSG_TEMPLATE_XML;
        fault->detail =
            message == NULL ? diag_phrase(PHRASE_NO_REASON) : arena_text(arena, message, strcspn(message, "\n"));
    } else if (template_vet(arena, tree, file->name, fault)) {
        xmlFreeParserCtxt(parser);
        return tree;
    }
    xmlFreeParserCtxt(parser);
    xmlFreeDoc(tree);
    return NULL;
}

static bool is_include(const xmlNode *node)
{
    return node->type == XML_ELEMENT_NODE && strcmp((const char *)node->name, "include") == 0 && node->ns != NULL &&
           strcmp((const char *)node->ns->href, VET_XSLT) == 0;
}

/* Puts the included file's children where the include stood; each remembers whose it is. */
static bool take_in(const struct Template *file, xmlNodePtr at, xmlDocPtr tree)
{
    const xmlNode *from = xmlDocGetRootElement(tree);
    xmlNodePtr root = xmlDocGetRootElement(at->doc);
    for (xmlNsPtr space = from->nsDef; space != NULL; space = space->next) {
        if (xmlSearchNs(at->doc, root, space->prefix) == NULL && xmlNewNs(root, space->href, space->prefix) == NULL) {
            return false;
        }
    }
    for (xmlNodePtr child = from->children; child != NULL; child = child->next) {
        if (child->type != XML_ELEMENT_NODE || is_include(child)) {
            continue;
        }
        xmlNodePtr copy = xmlDocCopyNode(child, at->doc, 1);
        if (copy == NULL) {
            return false;
        }
        memcpy(&copy->_private, &file->name, sizeof file->name); /* only ever read, though it is no const there */
        xmlAddPrevSibling(at, copy);
    }
    return true;
}

/* The main file's includes are taken from the set, by name; an include anywhere else is left out, since the main file
 * includes all there is. */
static bool include_all(struct Arena *arena, const struct TemplateSet *set, xmlDocPtr main_tree, const char *main_file,
                        struct TemplateFault *fault)
{
    xmlNodePtr next = NULL;
    for (xmlNodePtr node = xmlDocGetRootElement(main_tree)->children; node != NULL; node = next) {
        next = node->next;
        if (!is_include(node)) {
            continue;
        }
        xmlChar *wanted = xmlGetNoNsProp(node, to_xml("href"));
        const char *name = wanted == NULL ? "" : arena_text(arena, (const char *)wanted, strlen((const char *)wanted));
        xmlFree(wanted);
        const struct Template *file = template_find(set, name);
        if (file == NULL || text_same(name, main_file)) {
            *fault = (struct TemplateFault){main_file, (int)xmlGetLineNo(node), MSG_TEMPLATE_INCLUDE, name};
            return false;
        }
        xmlDocPtr tree = template_tree_read(arena, file, fault);
        if (tree == NULL) {
            return false;
        }
        const bool taken = take_in(file, node, tree);
        xmlFreeDoc(tree);
        if (!taken) {
            fault->file = "";
            return false;
        }
        xmlUnlinkNode(node);
        xmlFreeNode(node);
    }
    return true;
}

void template_tree_alone(xmlDocPtr tree)
{
    xmlNodePtr next = NULL;
    for (xmlNodePtr node = xmlDocGetRootElement(tree)->children; node != NULL; node = next) {
        next = node->next;
        if (is_include(node)) {
            xmlUnlinkNode(node);
            xmlFreeNode(node);
        }
    }
}

xmlDocPtr template_tree_whole(struct Arena *arena, const struct TemplateSet *set, const char *main_file,
                              struct TemplateFault *fault)
{
    const struct Template *file = template_find(set, main_file);
    xmlDocPtr tree = file == NULL ? NULL : template_tree_read(arena, file, fault);
    if (tree != NULL && !include_all(arena, set, tree, main_file, fault)) {
        xmlFreeDoc(tree);
        tree = NULL;
    }
    return tree;
}

const char *template_tree_file(const xmlNode *node, const char *main_file)
{
    for (; node != NULL && node->parent != NULL; node = node->parent) {
        if (node->type == XML_ELEMENT_NODE && node->_private != NULL) {
            return node->_private;
        }
    }
    return main_file;
}
