/* The only file that builds trees by libxml2: plans for templates. What is dangerous in that is kept here: functions
 * that take their content as markup are not used, and since a failed allocation can leave an element without name or a
 * text without content, every node is looked at as it is made. */
#include "late_xml.h"
#include "xml_tree_private.h"

#include "documents/documents.h"

struct XmlTree {
    xmlDocPtr document;
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

/* libxml2 would write its own complaints to the terminal; ours is NULL in place of a tree. */
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

struct XmlTree *xml_tree_new(struct Arena *arena)
{
    struct XmlTree *tree = documents_begin() ? arena_alloc(arena, sizeof *tree) : NULL;
    if (tree == NULL) {
        return NULL;
    }
    *tree = (struct XmlTree){NULL, xmlStructuredError, xmlStructuredErrorContext};
    xmlSetStructuredErrorFunc(NULL, stay_quiet);
    tree->document = xmlNewDoc(to_xml("1.0"));
    if (tree->document != NULL) {
        tree->document->dict = xmlDictCreate(); /* the same few names again and again: each is kept once */
    }
    return tree;
}

struct XmlElement *xml_tree_root(struct XmlTree *tree, const char *name)
{
    xmlDocPtr document = tree->document;
    xmlNodePtr node =
        document == NULL || document->dict == NULL ? NULL : xmlNewDocNode(document, NULL, to_xml(name), NULL);
    if (node == NULL || !named(node->name, name)) {
        xmlFreeNode(node);
        return NULL;
    }
    xmlDocSetRootElement(document, node);
    return as_element(node);
}

struct XmlElement *xml_tree_child(struct XmlElement *parent, const char *name)
{
    xmlNodePtr node = xmlNewTextChild(as_node(parent), NULL, to_xml(name), NULL);
    return node == NULL || !named(node->name, name) ? NULL : as_element(node);
}

bool xml_tree_attribute(struct XmlElement *element, const char *name, const char *value)
{
    xmlAttrPtr attribute = xmlNewProp(as_node(element), to_xml(name), to_xml(value));
    return attribute != NULL && named(attribute->name, name) &&
           (*value == '\0' || (attribute->children != NULL && named(attribute->children->content, value)));
}

bool xml_tree_text(struct XmlTree *tree, struct XmlElement *element, const char *text)
{
    xmlNodePtr node = xmlNewDocText(tree->document, to_xml(text));
    if (node == NULL || !named(node->content, text) || xmlAddChild(as_node(element), node) == NULL) {
        xmlFreeNode(node);
        return false;
    }
    return true;
}

void *xml_tree_end(struct XmlTree *tree, bool whole)
{
    xmlDocPtr document = tree->document;
    if (!whole) {
        xmlFreeDoc(document);
        document = NULL;
    }
    tree->document = NULL;
    xmlSetStructuredErrorFunc(tree->old_context, tree->old_handler); /* whoever had it has it again */
    return document;
}
