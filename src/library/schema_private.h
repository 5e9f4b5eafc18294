/** Between the files that write the schema of the route file. */
#ifndef WEND_SCHEMA_PRIVATE_H
#define WEND_SCHEMA_PRIVATE_H

#include "documents/json/json_out.h"
#include "read/language.h"

struct SchemaWriter {
    struct JsonOut *out;
    struct Arena *arena;
};

/** What one value of the field may look like; nothing for one that holds keys. */
void schema_value(const struct SchemaWriter *writer, struct JsonNode *node, const struct Field *field);
/** A number without a unit, in quotes or not. */
void schema_bare_number(const struct SchemaWriter *writer, struct JsonNode *node, const struct Field *field);

#endif
