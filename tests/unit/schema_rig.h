/** Holds XML against a RELAX NG schema, for tests. */
#ifndef WEND_SCHEMA_RIG_H
#define WEND_SCHEMA_RIG_H

#include "base/base.h"

#include <libxml/tree.h>

/** Reads XML back; fails the test when it cannot be read. xmlFreeDoc() it. */
xmlDocPtr schema_document(const char *data, size_t length);
/** Complaints of the validator with the schema in `file`; 0 is valid. */
int schema_file_says(const char *file, xmlDocPtr document);

#endif
