#include "schema_rig.h"

#include <check.h>
#include <libxml/parser.h>
#include <libxml/relaxng.h>

static void stay_quiet(void *context, const char *format, ...)
{
    (void)context;
    (void)format;
}

xmlDocPtr schema_document(const char *data, size_t length)
{
    ck_assert_ptr_nonnull(data);
    xmlDocPtr document =
        xmlReadMemory(data, (int)length, "plan.xml", NULL, XML_PARSE_NONET | XML_PARSE_NOERROR | XML_PARSE_NOWARNING);
    ck_assert_ptr_nonnull(document);
    return document;
}

int schema_file_says(const char *file, xmlDocPtr document)
{
    xmlRelaxNGParserCtxtPtr parser = xmlRelaxNGNewParserCtxt(file);
    xmlRelaxNGPtr schema = xmlRelaxNGParse(parser);
    ck_assert_ptr_nonnull(schema);
    xmlRelaxNGValidCtxtPtr validator = xmlRelaxNGNewValidCtxt(schema);
    xmlRelaxNGSetValidErrors(validator, stay_quiet, stay_quiet, NULL);
    int result = xmlRelaxNGValidateDoc(validator, document);
    xmlRelaxNGFreeValidCtxt(validator);
    xmlRelaxNGFree(schema);
    xmlRelaxNGFreeParserCtxt(parser);
    return result;
}
