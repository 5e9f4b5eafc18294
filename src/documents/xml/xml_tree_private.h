/** A document that is built as a tree of libxml2, for xml_out.c. */
#ifndef WEND_XML_TREE_PRIVATE_H
#define WEND_XML_TREE_PRIVATE_H

#include "xml_private.h"

struct XmlTree;

/** NULL when memory fails. xml_tree_end() it. */
struct XmlTree *xml_tree_new(struct Arena *arena);
/** The outermost element and a new last child; NULL when memory fails. */
struct XmlElement *xml_tree_root(struct XmlTree *tree, const char *name);
struct XmlElement *xml_tree_child(struct XmlElement *parent, const char *name);
/** False when memory fails. */
bool xml_tree_attribute(struct XmlElement *element, const char *name, const char *value);
bool xml_tree_text(struct XmlTree *tree, struct XmlElement *element, const char *text);
/** The document of libxml2, which the caller frees; NULL where it is not whole. */
void *xml_tree_end(struct XmlTree *tree, bool whole);

#endif
