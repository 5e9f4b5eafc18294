/** The templates of the HTML papers: which files there are, and the narrow door to libxslt that runs them. */
#ifndef WEND_TEMPLATE_PRIVATE_H
#define WEND_TEMPLATE_PRIVATE_H

#include "base/diag.h"
#include "documents/documents.h"

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
/** Gives it the plan to print, in place of any before. False when memory failed or the bytes are not XML. */
bool xslt_run_load(struct XsltRun *run, struct Bytes plan_xml, struct Bytes diagram_svg, struct Bytes narrow_svg,
                   const char *mark, const char *own, enum Language language);
/** One page. data is NULL with *fault filled, or with fault->file "" when memory failed. */
struct Bytes xslt_run_page(struct XsltRun *run, const char *paper, struct TemplateFault *fault);
void xslt_run_free(struct XsltRun *run);

#endif
