/** libxml2 and libxslt, loaded when the first document is written that needs them: with the ten libraries that they
 * bring along they are nearly all of a start, and most commands write no XML. Whoever includes this uses their
 * functions by their own names. A function that is new here needs a row in late_xml.inc and a line below; without
 * either the program does not build. Without WEND_LATE_XML they are linked as any library. */
#ifndef WEND_LATE_XML_H
#define WEND_LATE_XML_H

#include <libxml/HTMLtree.h>
#include <libxml/parser.h>
#include <libxml/parserInternals.h>
#include <libxml/tree.h>
#include <libxml/xmlerror.h>
#include <libxml/xmlmemory.h>
#include <libxml/xpathInternals.h>
#include <libxslt/security.h>
#include <libxslt/transform.h>
#include <libxslt/xsltInternals.h>
#include <libxslt/xsltutils.h>

#include <stdbool.h>

/** Loads them; NULL, or why they cannot be used. Once, from documents_begin(). */
const char *late_xml_load(void);

#ifdef WEND_LATE_XML

/* the names of variables are macros in some versions of libxml2 */
#undef xmlFree
#undef xmlStringText
struct LateXml {
#define LATE(library, name) __typeof__(name) *late_##name;
#include "late_xml.inc"
#undef LATE
};
/** Written once, before anything of it is used. */
extern struct LateXml late_xml;

#define htmlNodeDumpFormatOutput   (*late_xml.late_htmlNodeDumpFormatOutput)
#define xmlAddChild                (*late_xml.late_xmlAddChild)
#define xmlAddPrevSibling          (*late_xml.late_xmlAddPrevSibling)
#define xmlAllocOutputBuffer       (*late_xml.late_xmlAllocOutputBuffer)
#define xmlCleanupParser           (*late_xml.late_xmlCleanupParser)
#define xmlCtxtReadMemory          (*late_xml.late_xmlCtxtReadMemory)
#define xmlDictCreate              (*late_xml.late_xmlDictCreate)
#define xmlDocCopyNode             (*late_xml.late_xmlDocCopyNode)
#define xmlDocGetRootElement       (*late_xml.late_xmlDocGetRootElement)
#define xmlDocSetRootElement       (*late_xml.late_xmlDocSetRootElement)
#define xmlFreeDoc                 (*late_xml.late_xmlFreeDoc)
#define xmlFreeNode                (*late_xml.late_xmlFreeNode)
#define xmlFreeNsList              (*late_xml.late_xmlFreeNsList)
#define xmlFreeParserCtxt          (*late_xml.late_xmlFreeParserCtxt)
#define xmlGetLineNo               (*late_xml.late_xmlGetLineNo)
#define xmlGetNoNsProp             (*late_xml.late_xmlGetNoNsProp)
#define xmlInitParser              (*late_xml.late_xmlInitParser)
#define xmlMemGet                  (*late_xml.late_xmlMemGet)
#define xmlMemSetup                (*late_xml.late_xmlMemSetup)
#define xmlNewChild                (*late_xml.late_xmlNewChild)
#define xmlNewDoc                  (*late_xml.late_xmlNewDoc)
#define xmlNewDocNode              (*late_xml.late_xmlNewDocNode)
#define xmlNewDocText              (*late_xml.late_xmlNewDocText)
#define xmlNewNs                   (*late_xml.late_xmlNewNs)
#define xmlNewParserCtxt           (*late_xml.late_xmlNewParserCtxt)
#define xmlNewProp                 (*late_xml.late_xmlNewProp)
#define xmlNewTextChild            (*late_xml.late_xmlNewTextChild)
#define xmlOutputBufferClose       (*late_xml.late_xmlOutputBufferClose)
#define xmlOutputBufferFlush       (*late_xml.late_xmlOutputBufferFlush)
#define xmlOutputBufferGetContent  (*late_xml.late_xmlOutputBufferGetContent)
#define xmlOutputBufferGetSize     (*late_xml.late_xmlOutputBufferGetSize)
#define xmlOutputBufferWriteString (*late_xml.late_xmlOutputBufferWriteString)
#define xmlReadMemory              (*late_xml.late_xmlReadMemory)
#define xmlSearchNs                (*late_xml.late_xmlSearchNs)
#define xmlSetGenericErrorFunc     (*late_xml.late_xmlSetGenericErrorFunc)
#define xmlSetNs                   (*late_xml.late_xmlSetNs)
#define xmlSetProp                 (*late_xml.late_xmlSetProp)
#define xmlSetStructuredErrorFunc  (*late_xml.late_xmlSetStructuredErrorFunc)
#define xmlStrEqual                (*late_xml.late_xmlStrEqual)
#define xmlUnlinkNode              (*late_xml.late_xmlUnlinkNode)
#define xmlUnsetProp               (*late_xml.late_xmlUnsetProp)
/* libxml2 has its four handlers by functions of these names */
/* NOLINTBEGIN(bugprone-reserved-identifier) */
#define __xmlGenericError           (*late_xml.late___xmlGenericError)
#define __xmlGenericErrorContext    (*late_xml.late___xmlGenericErrorContext)
#define __xmlStructuredError        (*late_xml.late___xmlStructuredError)
#define __xmlStructuredErrorContext (*late_xml.late___xmlStructuredErrorContext)
/* NOLINTEND(bugprone-reserved-identifier) */
#define xmlFree                   (*late_xml.late_xmlFree)
#define xmlStringText             (*late_xml.late_xmlStringText)
#define xsltApplyStylesheetUser   (*late_xml.late_xsltApplyStylesheetUser)
#define xsltCleanupGlobals        (*late_xml.late_xsltCleanupGlobals)
#define xsltFreeSecurityPrefs     (*late_xml.late_xsltFreeSecurityPrefs)
#define xsltFreeStylesheet        (*late_xml.late_xsltFreeStylesheet)
#define xsltFreeTransformContext  (*late_xml.late_xsltFreeTransformContext)
#define xsltInit                  (*late_xml.late_xsltInit)
#define xsltNewSecurityPrefs      (*late_xml.late_xsltNewSecurityPrefs)
#define xsltNewTransformContext   (*late_xml.late_xsltNewTransformContext)
#define xsltParseStylesheetDoc    (*late_xml.late_xsltParseStylesheetDoc)
#define xsltSecurityForbid        (*late_xml.late_xsltSecurityForbid)
#define xsltSetCtxtSecurityPrefs  (*late_xml.late_xsltSetCtxtSecurityPrefs)
#define xsltSetGenericErrorFunc   (*late_xml.late_xsltSetGenericErrorFunc)
#define xsltSetSecurityPrefs      (*late_xml.late_xsltSetSecurityPrefs)
#define xsltSetTransformErrorFunc (*late_xml.late_xsltSetTransformErrorFunc)
#define xsltGenericError          (*late_xml.late_xsltGenericError)
#define xsltGenericErrorContext   (*late_xml.late_xsltGenericErrorContext)

#endif
#endif
