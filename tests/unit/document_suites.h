/** The suites of the program `test_documents`, a file each; main() is in test_documents.c. */
#ifndef DOCUMENT_SUITES_H
#define DOCUMENT_SUITES_H

#include "documents/documents.h"

#include <check.h>

Suite *suite_plan_xml(void);
Suite *suite_parts_csv(void);
Suite *suite_summary(void);
Suite *suite_diagram(void);
Suite *suite_diagram_svg(void);
Suite *suite_document_faults(void);
Suite *suite_papers(void);

#endif
