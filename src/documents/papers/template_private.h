/** The templates of the HTML papers: which files there are, and the narrow door to libxslt that runs them. */
#ifndef WEND_TEMPLATE_PRIVATE_H
#define WEND_TEMPLATE_PRIVATE_H

#include "base/diag.h"
#include "documents/documents.h"
#include "documents/xml/xml_private.h"

/** The built-in files, made from templates/ when the program is built. */
extern const struct Template template_built_in[];
extern const int template_built_in_count;

/** What is wrong with a template or the page it makes; `file` "" means nothing is. */
struct TemplateFault {
    const char *file; /**< a name of the set, such as "brief.xsl" */
    int line;         /**< 0: not known */
    enum DiagCode code;
    const char *detail; /**< the word for the message's hole; NULL when it has none */
};

/** All files of a set, own ones in place of the built-in. */
struct TemplateSet {
    int count;
    const struct Template *files;
};
/** The file of that name, NULL when there is none. */
const struct Template *template_find(const struct TemplateSet *set, const char *name);

/** Compiled templates with the plan that they are to print. */
struct XsltRun;
/** Vets and compiles the set. NULL with *fault filled, or with fault->file "" when memory failed. xslt_run_free() it.
 */
struct XsltRun *xslt_run_new(struct Arena *arena, const struct TemplateSet *set, struct TemplateFault *fault);
/** Compiles one file alone, so that what is wrong with it is reported by its own lines. */
bool xslt_run_try(struct Arena *arena, const struct Template *file, struct TemplateFault *fault);
/** What this program adds to a plan. */
struct PrintFacts {
    const char *mark; /**< of its sheets */
    const char *own;  /**< what is said of templates that are not built in; NULL there are none */
    enum Language language;
};
/** Begins what is to be printed, in place of any before: drawings are added, where templates are the user's own, and
 * then the plan. What fails makes the plan's loading fail. */
void xslt_run_begin(struct XsltRun *run, const struct PrintFacts *facts);
enum PrintPlace {
    PRINT_DIAGRAM, /**< a sheet of it */
    PRINT_NARROW
};
/** Adds a drawing; data is NULL where it failed. */
void xslt_run_draw(struct XsltRun *run, enum PrintPlace place, struct Bytes drawing);
/** Takes the plan over. False when memory failed for anything of what is to be printed. */
bool xslt_run_load(struct XsltRun *run, struct XmlOut *plan);
/** One page. data is NULL with *fault filled, or with fault->file "" when memory failed. */
struct Bytes xslt_run_page(struct XsltRun *run, const char *paper, struct TemplateFault *fault);
/** Frees the plan and the drawings: there are no more pages of them. */
void xslt_run_end(struct XsltRun *run);
void xslt_run_free(struct XsltRun *run);
/** What is written once and stands in several pages. */
struct PagePieces {
    const struct PaperDrawings *drawn;
    const char *const *names;     /**< of the papers */
    const struct Bytes *articles; /**< of each paper a page that holds its article */
};
/** A page of our own templates with what is stood in for. data is NULL when memory or a piece of it failed. */
struct Bytes page_whole(struct Arena *arena, const struct PagePieces *pieces, struct Bytes page);

#endif
