/** What a template and a page may hold; knows libxml2's trees, so only xslt_run.c includes it. */
#ifndef WEND_TEMPLATE_TREE_H
#define WEND_TEMPLATE_TREE_H

#include "documents/xml/late_xml.h"
#include "template_private.h"

#define VET_XSLT "http://www.w3.org/1999/XSL/Transform"
#define VET_SVG  "http://www.w3.org/2000/svg"

/** False with *fault filled when the template reads, writes, fetches or runs something. */
bool template_vet(struct Arena *arena, xmlDoc *tree, const char *file, struct TemplateFault *fault);
/** What the program puts into a page whatever its template does. */
struct PageFacts {
    const char *mark; /**< of the plan's sheets */
    const char *own;  /**< what is said at the end of templates that are not built in; NULL nothing */
};
/** The page as HTML in UTF-8, with a policy in its head that lets a browser run and fetch nothing. data is NULL with
 * *fault filled when it holds what no policy forbids, or with fault->file "" when memory failed. Changes the tree. */
struct Bytes page_save(struct Arena *arena, xmlDocPtr page, const struct PageFacts *facts, struct TemplateFault *fault);
/** Puts under `place` what page_whole() puts the drawings in place of, `number` being theirs. False without memory. */
bool page_stand_in(xmlNodePtr place, int number);
/** True for an element that no page may hold, whatever its namespace. */
bool page_refuses_element(const char *name);

/** Reads a file as XML and vets it. NULL with *fault filled, or with fault->file "" when memory failed. The caller
 * frees the tree. */
xmlDocPtr template_tree_read(struct Arena *arena, const struct Template *file, struct TemplateFault *fault);
/** Reads the main file and puts the files that it includes in their places. Errors as before. */
xmlDocPtr template_tree_whole(struct Arena *arena, const struct TemplateSet *set, const char *main_file,
                              struct TemplateFault *fault);
/** Takes the includes out: a file that is tried alone stands for itself. */
void template_tree_alone(xmlDocPtr tree);
/** The name of the file that a node of a whole tree came from. */
const char *template_tree_file(const xmlNode *node, const char *main_file);

#endif
